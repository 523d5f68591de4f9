//! Gypsum board: what carries it, what holds it, what closes its joints, and how long that dries.

use super::{Cite, Sourced, documents as doc};
use crate::measure::Length;

/// Width of a stud's narrow face, dry.
pub const STUD_FACE: Sourced<Length> = Sourced::new(
    Length::in_64(1, 32),
    Cite::read(&doc::PS_20, "2x, dry, dressed"),
);
/// Least width of wood behind a joint of two boards.
pub const WOOD_AT_A_JOINT: Sourced<Length> = Sourced::new(
    Length::in_64(1, 32),
    Cite::read(&doc::BUILDING_HANDBOOK, "furring at joints"),
);
/// What each board gets of a stud's face where they meet at its centre.
pub const BEARING: Sourced<Length> = Sourced::new(
    Length::in_64(0, 48),
    Cite::computed("half of a 1 1/2 in face"),
);
/// Least distance of a screw from the board's edge.
pub const SCREW_EDGE: Sourced<Length> = Sourced::new(
    Length::in_64(0, 24),
    Cite::read(&doc::RESIDENTIAL_GUIDE, "edge distance of screws"),
);
/// Nails: from 3/8 in to 1 in from the board's edge.
pub const NAIL_EDGE: Sourced<(Length, Length)> = Sourced::new(
    (Length::in_64(0, 24), Length::inches(1)),
    Cite::read(&doc::RESIDENTIAL_GUIDE, "edge distance of nails"),
);
/// Least reach of a screw into wood.
pub const SCREW_PENETRATION: Sourced<Length> = Sourced::new(
    Length::in_64(0, 40),
    Cite::read(&doc::IRC, "R702.3.5.1, quoted copy"),
);
/// Most that screws are apart on a wall with studs at 16 in or less.
pub const WALL_SCREWS_CLOSE_STUDS: Sourced<Length> = Sourced::new(
    Length::inches(16),
    Cite::read(&doc::ONTARIO_CODE, "note on screws"),
);
/// Most that screws are apart on any other wall.
pub const WALL_SCREWS: Sourced<Length> = Sourced::new(
    Length::inches(12),
    Cite::read(&doc::ONTARIO_CODE, "note on screws"),
);
/// Most that screws are apart on a ceiling.
pub const CEILING_SCREWS: Sourced<Length> = Sourced::new(
    Length::inches(12),
    Cite::read(&doc::ONTARIO_CODE, "note on screws"),
);
/// The stricter guide: 12 in everywhere.
pub const GUIDE_SCREWS: Sourced<Length> = Sourced::new(
    Length::inches(12),
    Cite::read(&doc::RESIDENTIAL_GUIDE, "screw spacing"),
);
/// Single nailing on a wall.
pub const WALL_NAILS: Sourced<Length> = Sourced::new(
    Length::inches(8),
    Cite::read(&doc::GA_USING_GYPSUM_BOARD, "single nailing"),
);
/// Single nailing on a ceiling.
pub const CEILING_NAILS: Sourced<Length> = Sourced::new(
    Length::inches(7),
    Cite::read(&doc::GA_USING_GYPSUM_BOARD, "single nailing"),
);
/// Widest gap between boards and at cut-outs.
pub const WIDEST_GAP: Sourced<Length> = Sourced::new(
    Length::in_64(0, 16),
    Cite::read(&doc::RESIDENTIAL_GUIDE, "gaps between boards"),
);
/// Widest stud spacing on a wall for 3/8 in board.
pub const THREE_EIGHTHS_ON: Sourced<Length> = Sourced::new(
    Length::inches(16),
    Cite::read(&doc::ONTARIO_CODE, "maximum spacing of supports"),
);
/// Widest stud spacing on a wall for 1/2 in board and thicker.
pub const HALF_INCH_ON: Sourced<Length> = Sourced::new(
    Length::inches(24),
    Cite::read(&doc::ONTARIO_CODE, "maximum spacing of supports"),
);
/// Tape on 1000 ft² of board.
pub const TAPE_PER_1000_SQUARE_FEET: Sourced<Length> = Sourced::new(
    Length::feet(380),
    Cite::read(&doc::ESTIMATING, "materials for 1000 square feet"),
);
/// Gallons of ready-mixed compound on 1000 ft² of board, the textbook.
pub const COMPOUND_LEAST: Sourced<f64> = Sourced::new(
    5.0,
    Cite::read(&doc::ESTIMATING, "materials for 1000 square feet"),
);
/// Gallons of ready-mixed compound on 1000 ft² of board, a maker's 138 lb at about 14 lb a gallon, rounded up.
pub const COMPOUND_MOST: Sourced<f64> = Sourced::new(
    10.0,
    Cite::memory(&doc::GYPSUM_HANDBOOK, "138 lb for 1000 square feet"),
);
/// Least sound board under a self-adhesive patch, on each side.
pub const PATCH_OVERLAP: Sourced<Length> = Sourced::new(
    Length::in_64(1, 32),
    Cite::read(&doc::PATCH_SIZES, "overlap"),
);
/// Sides of the self-adhesive patches that are sold.
pub const PATCH_SIDES: Sourced<[Length; 3]> = Sourced::new(
    [Length::inches(4), Length::inches(6), Length::inches(8)],
    Cite::read(&doc::PATCH_SIZES, "sizes"),
);
/// A smaller hole than this is filled.
pub const FILL_BELOW: Sourced<Length> = Sourced::new(
    Length::in_64(1, 32),
    Cite::read(&doc::HOW_TO_PATCH, "classes of holes"),
);
/// The largest hole that a self-adhesive patch is said to be for.
pub const PATCH_UP_TO: Sourced<Length> = Sourced::new(
    Length::inches(6),
    Cite::read(&doc::HOW_TO_PATCH, "classes of holes"),
);
/// How much longer than the hole a backing strip is.
pub const STRIP_LONGER: Sourced<Length> = Sourced::new(
    Length::inches(4),
    Cite::read(&doc::BACKED_PATCH, "length of strips"),
);
/// Lowest temperature while joints are made and dry.
pub const COLDEST_FAHRENHEIT: Sourced<f64> = Sourced::new(
    50.0,
    Cite::read(&doc::GA_COLUMN, "room temperature for joint treatment"),
);
/// How long the room is at that temperature before.
pub const WARM_BEFORE_HOURS: Sourced<f64> = Sourced::new(
    48.0,
    Cite::read(&doc::GA_COLUMN, "room temperature for joint treatment"),
);
/// Lengths of coarse-thread board screws as they are sold.
pub const SCREWS_SOLD: Sourced<[Length; 6]> = Sourced::new(
    [
        Length::inches(1),
        Length::in_64(1, 16),
        Length::in_64(1, 40),
        Length::inches(2),
        Length::in_64(2, 32),
        Length::inches(3),
    ],
    Cite::practice("screw lengths as sold"),
);

/// Temperatures of [`DRYING_HOURS`], in °F.
pub const DRYING_FAHRENHEIT: [f64; 5] = [50.0, 60.0, 70.0, 80.0, 90.0];
/// Relative humidities of [`DRYING_HOURS`], in per cent, damp first.
pub const DRYING_HUMIDITY: [f64; 8] = [90.0, 80.0, 70.0, 60.0, 50.0, 40.0, 20.0, 0.0];
/// Hours that compound under tape dries, a row a humidity, a column a temperature.
///
/// Source: from memory of the association's table; its 70 °F and 50 % entry agrees with the 17 to 19 h band that was
/// read on the Drywall Finishing Council's chart.
pub const DRYING_HOURS: Sourced<[[f64; 5]; 8]> = Sourced::new(
    [
        [144.0, 108.0, 72.0, 49.0, 36.0],
        [78.0, 54.0, 38.0, 27.0, 19.0],
        [54.0, 38.0, 26.0, 19.0, 14.0],
        [42.0, 29.0, 20.0, 14.0, 10.0],
        [36.0, 24.0, 17.0, 12.0, 9.0],
        [29.0, 20.0, 14.0, 10.0, 7.0],
        [23.0, 16.0, 11.0, 8.0, 5.5],
        [19.0, 13.0, 9.0, 6.0, 4.5],
    ],
    Cite::memory(&doc::GA_236, "drying under tape"),
);

/// Hours that compound under tape dries at a temperature and a humidity between those of the table.
///
/// Straight lines between the four nearest entries: `h = h₀ + (h₁ − h₀)·t`, first across, then down.
///
/// # Inputs
/// `fahrenheit` from 50 to 90, `humidity` from 0 to 90 per cent.
///
/// # Gives
/// Hours; `None` outside the table, where nothing is known.
///
/// # Source
/// [`DRYING_HOURS`], from memory.
///
/// # Example
/// ```
/// use storyrod::handbook::gypsum::drying_hours;
/// assert_eq!(drying_hours(70.0, 50.0), Some(17.0));
/// assert_eq!(drying_hours(75.0, 50.0), Some(14.5));
/// assert_eq!(drying_hours(40.0, 50.0), None);
/// ```
#[must_use]
pub fn drying_hours(fahrenheit: f64, humidity: f64) -> Option<f64> {
    let (column, across) = between(&DRYING_FAHRENHEIT, fahrenheit)?;
    let (row, down) = between(&DRYING_HUMIDITY, humidity)?;
    let line = |row: usize| {
        let hours = DRYING_HOURS.value[row];
        hours[column] + (hours[column + 1] - hours[column]) * across
    };
    Some(line(row) + (line(row + 1) - line(row)) * down)
}

/// The step of `marks` that `value` lies in, and how far along it.
fn between(marks: &[f64], value: f64) -> Option<(usize, f64)> {
    marks.windows(2).enumerate().find_map(|(at, step)| {
        let along = (value - step[0]) / (step[1] - step[0]);
        (0.0..=1.0).contains(&along).then_some((at, along))
    })
}

/// The shortest board screw sold that goes through the board and far enough into wood.
///
/// `screw ≥ board + 5/8 in`, the next length sold.
///
/// # Inputs
/// `board`: thickness of the board, more than nothing.
///
/// # Gives
/// A length sold; `None` where none is long enough.
///
/// # Source
/// [`SCREW_PENETRATION`]; lengths sold are common practice.
///
/// # Example
/// ```
/// use storyrod::{handbook::gypsum::screw_to_buy, measure::Length};
/// assert_eq!(screw_to_buy(Length::in_64(0, 32)), Some(Length::in_64(1, 16)));
/// ```
#[must_use]
pub fn screw_to_buy(board: Length) -> Option<Length> {
    // 5/8 in board needs exactly 1 1/4 in, and the trade takes the next: nothing is left for a sunk head.
    let least = board + SCREW_PENETRATION.value;
    SCREWS_SOLD.value.into_iter().find(|sold| *sold > least)
}

/// Which way of a board follows a curve.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bent {
    /// Its length, as on a board laid level round a curved wall.
    Lengthwise,
    /// Its width, as on a board stood upright.
    Widthwise,
}

/// Thickness of a board, and the least radius to which it bends dry: its length, and its width where that is printed.
///
/// On framing at most 6 in on center.
pub const DRY_BENDS: Sourced<[(Length, Length, Option<Length>); 5]> = Sourced::new(
    [
        (
            Length::in_64(0, 16),
            Length::feet(5),
            Some(Length::feet(15)),
        ),
        (
            Length::in_64(0, 20),
            Length::inches(75),
            Some(Length::feet(20)),
        ),
        (
            Length::in_64(0, 24),
            Length::inches(90),
            Some(Length::feet(25)),
        ),
        (Length::in_64(0, 32), Length::feet(10), None),
        (Length::in_64(0, 40), Length::feet(15), None),
    ],
    Cite::read(&doc::GA_226, "table 1, bent dry"),
);

/// The least radius to which a board bends dry.
///
/// # Inputs
/// `board`: its thickness.
///
/// # Gives
/// A radius; `None` for a thickness that is not in the table and for one that does not bend that way dry.
///
/// # Source
/// [`DRY_BENDS`].
///
/// # Example
/// ```
/// use storyrod::{handbook::gypsum::{Bent, tightest_dry_bend}, measure::Length};
/// assert_eq!(tightest_dry_bend(Length::in_64(0, 16), Bent::Lengthwise), Some(Length::feet(5)));
/// ```
#[must_use]
pub fn tightest_dry_bend(board: Length, bent: Bent) -> Option<Length> {
    let (_, lengthwise, widthwise) = DRY_BENDS.value.into_iter().find(|row| row.0 == board)?;
    match bent {
        Bent::Lengthwise => Some(lengthwise),
        Bent::Widthwise => widthwise,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn warmer_or_drier_never_dries_slower() {
        for row in DRYING_HOURS.value {
            assert!(row.windows(2).all(|pair| pair[1] < pair[0]));
        }
        for rows in DRYING_HOURS.value.windows(2) {
            assert!((0..5).all(|column| rows[1][column] < rows[0][column]));
        }
    }

    #[test]
    fn nothing_is_known_outside_the_table() {
        for (fahrenheit, humidity) in [(49.0, 50.0), (91.0, 50.0), (70.0, 95.0), (f64::NAN, 50.0)] {
            assert_eq!(drying_hours(fahrenheit, humidity), None);
        }
    }

    #[test]
    fn a_screw_is_longer_than_board_and_penetration() {
        assert_eq!(
            screw_to_buy(Length::in_64(0, 40)),
            Some(Length::in_64(1, 40))
        );
        assert_eq!(screw_to_buy(Length::inches(3)), None);
    }
}
