//! A measure that can hardly be: asked about once, with the unit that it was likely meant in.

use super::doubt_known::{Bound, Hint, bound, bound_of_spot, common, hints};
use crate::measure::{Figures, Length, Rounding, Units, read};
use crate::site::{On, Room, Size, What};

/// Why a measure is asked about, and what it likely is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Doubt {
    /// In words.
    pub text: String,
    /// What was likely meant, as it would be typed.
    pub instead: Option<String>,
}

const UNITS: [&str; 5] = ["m", "mm", "cm", "in", "ft"];
/// So many times off what is known of it a measure is asked about.
const OFF: f64 = 4.0;
/// So many times off what only the sketch that every room begins with, or custom, says.
const OFF_LOOSE: f64 = 6.0;
/// Another unit comes so many times nearer, or it is not asked about.
const NEARER: f64 = 2.0;
/// So many times where something firm is known of it.
const NEARER_FIRM: f64 = 1.25;
/// A difference that is no mistake of a unit.
const NEAR: Length = Length::inches(6);
/// A wall under this is short.
const SHORT: Length = Length::feet(1);
/// What a tape may be off beyond a wall's end.
const SLACK: Length = Length::in_64(0, 4);

/// A text that is one number and at most one unit: the number, and the unit; empty where there is none.
fn plain(typed: &str) -> Option<(&str, &'static str)> {
    let typed = typed.trim();
    let ends = [
        ("mm", "mm"),
        ("cm", "cm"),
        ("in", "in"),
        ("ft", "ft"),
        ("m", "m"),
        ("\"", "in"),
        ("″", "in"),
        ("'", "ft"),
        ("′", "ft"),
    ];
    let found = ends.iter().find_map(|(end, unit)| {
        let number = typed.strip_suffix(end)?;
        Some((number.trim(), *unit))
    });
    let (number, unit) = found.unwrap_or((typed, ""));
    let part = |c: char| c.is_ascii_digit() || ". /¼½¾⅛⅜⅝⅞".contains(c);
    (number.chars().all(part) && number.chars().any(|c| c.is_ascii_digit() || !c.is_ascii()))
        .then_some((number, unit))
}

/// How many times one length is the other, as a logarithm without its sign; nothing where they lie close together.
fn ratio(a: Length, b: Length) -> f64 {
    if (a - b).abs() <= NEAR {
        return 0.0;
    }
    let (a, b) = (a.metres().abs().max(1e-6), b.metres().abs().max(1e-6));
    (a / b).ln().abs()
}

/// What a measure is held against.
struct Against {
    least: Length,
    most: Length,
    hints: Vec<Hint>,
    bound: Option<Bound>,
}

impl Against {
    /// Common, and there is room for it.
    fn fits(&self, length: Length) -> bool {
        length >= self.least && length <= self.most && !self.is_past(length)
    }

    fn is_past(&self, length: Length) -> bool {
        let bound = self.bound.as_ref();
        bound.is_some_and(|bound| length > bound.most + SLACK)
    }

    /// How far off the hint that comes nearest, and that hint.
    fn nearest(&self, length: Length) -> (f64, Option<&Hint>) {
        let off = self
            .hints
            .iter()
            .map(|hint| (ratio(length, hint.length), hint));
        let nearest = off.min_by(|a, b| a.0.total_cmp(&b.0));
        nearest.map_or((0.0, None), |(off, hint)| (off, Some(hint)))
    }

    /// The same number in the unit in which it comes nearest: as it would be typed, and how far off.
    fn other_unit(
        &self,
        typed: &str,
        length: Length,
        units: Units,
    ) -> Option<(f64, String, Length)> {
        let (number, unit) = plain(typed)?;
        let feet = |unit: &str| matches!(unit, "in" | "ft");
        let others = UNITS.iter().filter(|other| **other != unit);
        let read = others.filter_map(|other| {
            let text = format!("{number} {other}");
            let is = read::length(&text, units).ok()?;
            // Inches are sooner meant for feet than for metres.
            let strange = !unit.is_empty() && feet(unit) != feet(other);
            let off = self.nearest(is).0;
            let weighed = off + if strange { NEARER.ln() } else { 0.0 };
            (self.fits(is) && is != length).then_some((weighed, (off, text, is)))
        });
        let best = read.min_by(|a, b| a.0.total_cmp(&b.0));
        best.map(|(_, best)| best)
    }
}

/// Whether a measure of a room is asked about, once; typed again it is taken.
///
/// It is where it lies outside what is common, or goes past the end or the top of its wall; and where nothing that is
/// known of it comes near: what it read before, what the other walls leave for it, a sketch that the person shaped. Four
/// times off is far then, with a unit or without, and where another unit comes no nearer the figure is asked about as it
/// is. A room that nobody shaped is weak evidence, and so is custom: with a unit typed it takes six times, or four and a
/// wall under a foot, and another unit that comes twice as near (a wall under a foot is asked about without one); without a
/// unit, as a laser meter types it, four times will do.
pub(super) fn doubt(
    room: &Room,
    what: What,
    typed: &str,
    length: Length,
    units: Units,
) -> Option<Doubt> {
    // What stands there was asked about already.
    if room.measured(what) == Some(length) {
        return None;
    }
    let (least, most) = common(room, what)?;
    let against = Against {
        least: Length::inches(least),
        most: Length::inches(most),
        hints: hints(room, what),
        bound: bound(room, what, units),
    };
    let short = matches!(what, What::Wall(_)) && length < SHORT;
    judge(&against, typed, length, short, units)
}

/// The same of a place of something hidden.
pub(super) fn doubt_spot(
    room: &Room,
    (on, size): (On, Size),
    typed: &str,
    length: Length,
    units: Units,
) -> Option<Doubt> {
    let against = Against {
        least: Length::ZERO,
        most: Length::inches(720),
        hints: Vec::new(),
        bound: bound_of_spot(room, on, size, units),
    };
    judge(&against, typed, length, false, units)
}

fn judge(
    against: &Against,
    typed: &str,
    length: Length,
    short: bool,
    units: Units,
) -> Option<Doubt> {
    let bare = plain(typed).is_some_and(|(_, unit)| unit.is_empty());
    let firm = against.hints.iter().any(|hint| hint.firm);
    let (off, hint) = against.nearest(length);
    let far = if firm || bare || short {
        OFF
    } else {
        OFF_LOOSE
    };
    let fits = against.fits(length);
    if fits && off <= far.ln() {
        return None;
    }
    let best = against.other_unit(typed, length, units);
    let alone = firm || short;
    let by = if firm { NEARER_FIRM } else { NEARER };
    let nearer = |(other, ..): &(f64, String, Length)| *other + by.ln() <= off + 1e-9;
    let strays = against.bound.as_ref().is_none_or(|bound| {
        // A little past the end is no mistake of a unit.
        !against.is_past(length) || length > bound.most * 2
    });
    let best = best.filter(|best| if fits { nearer(best) } else { strays });
    if fits && best.is_none() && (bare || !alone) {
        return None;
    }
    Some(asked(against, length, (hint, fits), best, units))
}

/// The question in words.
fn asked(
    against: &Against,
    length: Length,
    (hint, fits): (Option<&Hint>, bool),
    best: Option<(f64, String, Length)>,
    units: Units,
) -> Doubt {
    let set = |length: Length| units.length(length, Rounding::Nearest, Figures::Set);
    let is = set(length);
    let little = length < against.least || hint.is_some_and(|hint| length < hint.length);
    let judged = if little { "little" } else { "much" };
    let why = match (&against.bound, hint) {
        (Some(bound), _) if against.is_past(length) => {
            format!(
                "{}: {} at most fits, and not {is}.",
                bound.says,
                set(bound.most)
            )
        }
        (_, Some(hint)) if fits => {
            let says = hint.says.replace("{}", &set(hint.length));
            format!("{is} is very {judged}: {says}.")
        }
        _ if best.is_some() => format!("{is} is very {judged} here."),
        _ => format!(
            "{is} is very {judged} here: commonly it is {} to {}.",
            set(against.least),
            set(against.most)
        ),
    };
    let text = match &best {
        Some((_, text, other)) => {
            let same =
                set(*other).replace(['′', '″'], "") == text.replace(" ft", "").replace(" in", "");
            let other = if same {
                String::new()
            } else {
                format!(", {}", set(*other))
            };
            format!("{why} Is it {text}{other}? Enter takes that; to keep {is}, type it again.")
        }
        None => format!("{why} Enter once more keeps it."),
    };
    Doubt {
        text,
        instead: best.map(|(_, text, _)| text),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const FEET: Units = Units::FeetInches { marks: 16 };

    #[track_caller]
    fn check(what: What, typed: &str, units: Units, instead: Option<Option<&str>>) {
        let room = Room::rectangle("a");
        let length = read::length(typed, units).unwrap();
        let found = doubt(&room, what, typed, length, units);
        let found = found.map(|doubt| doubt.instead);
        assert_eq!(
            found,
            instead.map(|text| text.map(str::to_owned)),
            "{typed}"
        );
    }

    #[test]
    fn a_wrong_unit_is_asked_about() {
        // A laser meter that types metres into a job of inches, and the other way about.
        check(What::Wall(0), "2.438", FEET, Some(Some("2.438 m")));
        check(What::Wall(0), "2438", FEET, Some(Some("2438 mm")));
        check(What::Wall(0), "2438 m", FEET, Some(Some("2438 mm")));
        check(What::Wall(0), "8", FEET, Some(Some("8 ft")));
        check(
            What::Wall(0),
            "2.438",
            Units::Millimetres,
            Some(Some("2.438 m")),
        );
        check(What::Wall(0), "96", Units::Millimetres, Some(Some("96 in")));
        check(What::Ceiling, "8", FEET, Some(Some("8 ft")));
        check(What::Ceiling, "5'", FEET, Some(None));
    }

    /// What is asked of a figure typed into a room, in words; nothing where it is taken.
    #[track_caller]
    fn said(room: &Room, what: What, typed: &str, words: &str) {
        let length = read::length(typed, FEET).unwrap();
        let found = doubt(room, what, typed, length, FEET).map(|doubt| doubt.text);
        let found = found.unwrap_or_default().replace('\u{a0}', " ");
        assert_eq!(found, words, "{typed}");
    }

    #[test]
    fn a_unit_that_the_sketch_contradicts_is_asked_about() {
        let keep = "Enter takes that; to keep";
        let new = Room::rectangle("a");
        said(
            &new,
            What::Wall(0),
            "4 in",
            &format!("4″ is very little: the sketch has 8′. Is it 4 ft? {keep} 4″, type it again."),
        );
        check(What::Wall(0), "4 1/2\"", FEET, Some(Some("4 1/2 ft")));
        check(What::Wall(0), "60 ft", FEET, Some(Some("60 in")));
        // Every room begins with the same sketch: it is no reason to ask about 40 ft, or half of what is drawn.
        check(What::Wall(0), "40 ft", FEET, None);
        check(What::Wall(0), "2'", FEET, None);
        // A wall that the others leave no other length for, and one that was read before, are firm.
        let mut two = Room::rectangle("a");
        two.measure(What::Wall(0), Some(Length::inches(96)), None);
        said(
            &two,
            What::Wall(2),
            "40 ft",
            &format!(
                "40′ is very much: the other walls leave 8′. Is it 40 in, 3′ 4″? {keep} 40′, type it again."
            ),
        );
        said(
            &two,
            What::Wall(0),
            "1' 8\"",
            "1′ 8″ is very little: it read 8′ before. Enter once more keeps it.",
        );
        // And so is what was dragged to its length.
        let mut drawn = Room::rectangle("a");
        assert!(drawn.drag_wall(1, Length::inches(24)));
        said(
            &drawn,
            What::Wall(0),
            "48 ft",
            &format!(
                "48′ is very much: the sketch has 10′. Is it 48 in, 4′? {keep} 48′, type it again."
            ),
        );
        // What is kept is not asked about again.
        two.measure(What::Wall(1), Some(Length::inches(4)), None);
        said(&two, What::Wall(1), "4 in", "");
    }

    #[test]
    fn what_goes_past_its_wall_is_said_with_what_would_fit() {
        use crate::site::{FixedKind, FixedPoint, Fixture, FixtureKind, Opening};
        let mut room = Room::rectangle("a");
        room.measure(What::Wall(0), Some(Length::inches(96)), None);
        room.measure(What::Ceiling, Some(Length::inches(96)), None);
        let inches = |n| Some(Length::inches(n));
        room.openings.push(Opening {
            kind: crate::site::OpeningKind::Window,
            wall: 0,
            from_left: inches(84),
            width: None,
            height: None,
            sill: inches(48),
            hinge: None,
        });
        said(
            &room,
            What::Opening(0, Size::Width),
            "2' 6\"",
            "Wall A is 8′ long, the opening begins at 7′: 1′ at most fits, and not 2′ 6″. Enter once more keeps it.",
        );
        said(
            &room,
            What::Opening(0, Size::Height),
            "60",
            "Wall A is 8′ high, its sill is at 4′: 4′ at most fits, and not 5′. Enter once more keeps it.",
        );
        said(&room, What::Opening(0, Size::Width), "10 in", "");
        room.fixed
            .push(FixedPoint::new(FixedKind::Outlet, On::Wall(0)));
        let left = What::Fixed(0, Size::FromLeft);
        said(
            &room,
            left,
            "20 ft",
            "Wall A is 8′ long: 8′ at most fits, and not 20′. Is it 20 in, 1′ 8″? Enter takes that; to keep 20′, type it again.",
        );
        // Between two places near a corner there may be any number of times.
        room.measure(left, inches(1), inches(3));
        said(&room, left, "7 in", "");
        room.fixtures.push(Fixture::new(FixtureKind::Tub, 0));
        check_in(&room, What::Fixture(0, Size::Width), "60 ft", Some("60 in"));
        check_in(&room, What::Fixture(0, Size::Width), "5 in", Some("5 ft"));
        let spot = |typed: &str| {
            let length = read::length(typed, FEET).unwrap();
            doubt_spot(&room, (On::Wall(0), Size::FromLeft), typed, length, FEET)
        };
        assert_eq!(
            spot("20 ft").and_then(|d| d.instead).as_deref(),
            Some("20 in")
        );
        assert_eq!(spot("20 in"), None);
    }

    #[track_caller]
    fn check_in(room: &Room, what: What, typed: &str, instead: Option<&str>) {
        let length = read::length(typed, FEET).unwrap();
        let found = doubt(room, what, typed, length, FEET).and_then(|doubt| doubt.instead);
        assert_eq!(found.as_deref(), instead, "{typed}");
    }

    #[test]
    fn what_can_be_is_taken() {
        for typed in ["96", "8'", "88 1/2", "30", "8' 2 1/2\"", "2.438 m"] {
            check(What::Wall(0), typed, FEET, None);
        }
        check(What::Ceiling, "8'", FEET, None);
        check(What::Wall(0), "2438", Units::Millimetres, None);
        check(What::Wall(1), "1524.5", Units::Millimetres, None);
    }
}
