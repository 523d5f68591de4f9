//! How a job shows its figures.

use super::quantity::{
    in_celsius, in_cubic_feet, in_gallons, in_kilograms, in_kilograms_per_litre, in_litres,
    in_pounds, in_pounds_per_cubic_foot, in_square_feet, in_square_feet_per_gallon,
    in_square_metres, in_square_metres_per_litre,
};
use super::{Amount, Length, Phrase, Rounding};

/// The units that a job shows and in which a bare number is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Units {
    /// Feet, inches and a fraction; a bare number is inches.
    FeetInches {
        /// Marks to an inch: 2, 4, 8, 16, 32 or 64.
        marks: u8,
    },
    /// Decimal inches; a bare number is inches.
    DecimalInches,
    /// Whole or decimal millimetres.
    Millimetres,
    /// Centimetres.
    Centimetres,
    /// Metres.
    Metres,
}

/// How a fraction is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figures {
    /// `3' 7 5/16"`: for files, the clipboard and a screen reader.
    Plain,
    /// `3′ 7` and the stacked glyph of the embedded face: for screens and sheets.
    Set,
}

/// The stacked fraction of the embedded face: a private-use character for each n/d, d up to 64.
#[must_use]
pub fn fraction_glyph(over: u32, under: u32) -> char {
    char::from_u32(0xE000 + 64 * under.min(64) + over.min(63)).unwrap_or('?')
}

/// Set text in plain characters, for a screen reader or a file: ` 5/16` for a stacked fraction.
#[must_use]
pub fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match u32::from(c) {
            code @ 0xE000..=0xF040 => {
                let (over, under) = ((code - 0xE000) % 64, (code - 0xE000) / 64);
                if out.ends_with(|c: char| c.is_ascii_digit()) {
                    out.push(' ');
                }
                out.push_str(&format!("{over}/{under}"));
            }
            _ => out.push(match c {
                '′' => '\'',
                '″' => '"',
                '−' => '-',
                '\u{a0}' => ' ',
                other => other,
            }),
        }
    }
    out
}

/// Plain text with its fractions of an inch stacked: halves to sixty-fourths, alone or behind a whole number. What only
/// looks like one (`9/16/2021`, `12/4`, `1/3`) is left as it stands.
///
/// # Example
/// ```
/// use storyrod::measure::{fraction_glyph, stacked};
/// assert_eq!(stacked("a 1 1/2 in face"), format!("a 1{} in face", fraction_glyph(1, 2)));
/// ```
#[must_use]
pub fn stacked(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for (at, word) in text.split(' ').enumerate() {
        let end = word.trim_end_matches(|c: char| !c.is_ascii_digit()).len();
        let start = word.len() - word.trim_start_matches(['(', '[', '"']).len();
        let (bare, rest) = word.split_at(end);
        let glyph = bare
            .get(start..)
            .and_then(of_an_inch)
            .filter(|_| !rest.starts_with('/'));
        let whole = out.rsplit(' ').next().is_some_and(|w| {
            !w.is_empty()
                && w.trim_start_matches(['(', '['])
                    .bytes()
                    .all(|b| b.is_ascii_digit())
        });
        if at > 0 && !(glyph.is_some() && start == 0 && whole) {
            out.push(' ');
        }
        match glyph {
            Some(glyph) => {
                out.push_str(&word[..start]);
                out.push(glyph);
                out.push_str(rest);
            }
            None => out.push_str(word),
        }
    }
    out
}

/// Text in which a number and its unit stay on one line.
///
/// # Example
/// ```
/// use storyrod::measure::together;
/// assert_eq!(together("2 bags of 25 lb"), "2 bags of 25\u{a0}lb");
/// assert_eq!(together("No. 2 and 3"), "No. 2 and 3");
/// ```
#[must_use]
pub fn together(text: &str) -> String {
    const UNITS: [&str; 24] = [
        "mm", "cm", "m", "m²", "m³", "in", "ft", "ft²", "ft³", "lb", "kg", "g", "L", "mL", "gal",
        "qt", "°C", "°F", "%", "h", "min", "×", "oz", "mil",
    ];
    let mut out = String::with_capacity(text.len());
    for (n, word) in text.split(' ').enumerate() {
        if n > 0 {
            let number = |c: char| c.is_ascii_digit() || ('\u{e000}'..='\u{f8ff}').contains(&c);
            let unit = word.trim_end_matches(|c: char| ",.;:)".contains(c));
            let joined = out.ends_with(number) && UNITS.contains(&unit);
            out.push(if joined { '\u{a0}' } else { ' ' });
        }
        out.push_str(word);
    }
    out
}

/// The glyph of `n/d` where `d` is 2 to 64, a power of two, and `n` less than it.
fn of_an_inch(word: &str) -> Option<char> {
    let (over, under) = word.split_once('/')?;
    let digits = |s: &str| s.bytes().all(|b| b.is_ascii_digit());
    if !digits(over) || !digits(under) {
        return None;
    }
    let (over, under): (u32, u32) = (over.parse().ok()?, under.parse().ok()?);
    let marks = (2..=64).contains(&under) && under.is_power_of_two() && (1..under).contains(&over);
    marks.then(|| fraction_glyph(over, under))
}

impl Units {
    /// Millimetres, centimetres or metres.
    #[must_use]
    pub fn is_metric(self) -> bool {
        matches!(
            self,
            Units::Millimetres | Units::Centimetres | Units::Metres
        )
    }

    /// A length as this job shows it, to the mark that it shows.
    ///
    /// Feet and inches go to the job's mark, decimal inches to 0.001 in, metric to 0.1 mm.
    ///
    /// # Example
    /// ```
    /// use storyrod::measure::{Figures, Length, Rounding, Units};
    /// let units = Units::FeetInches { marks: 16 };
    /// assert_eq!(units.length(Length::in_64(88, 32), Rounding::Nearest, Figures::Plain), "7' 4 1/2\"");
    /// assert_eq!(Units::Centimetres.length(Length::mm(2245), Rounding::Nearest, Figures::Plain), "224.5 cm");
    /// ```
    #[must_use]
    pub fn length(self, length: Length, rounding: Rounding, figures: Figures) -> String {
        let minus = if figures == Figures::Set { "−" } else { "-" };
        let sign = |at: Length| if at.as_nm() < 0 { minus } else { "" };
        match self {
            Units::FeetInches { marks } => {
                let mut marks = i64::from(marks.clamp(1, 64));
                let mut at = length.rounded(Length::nm(25_400_000 / marks), rounding);
                // What is there is not shown as nothing where a finer mark can show it.
                while rounding == Rounding::Nearest
                    && at == Length::ZERO
                    && length != at
                    && marks < 64
                {
                    marks *= 2;
                    at = length.rounded(Length::nm(25_400_000 / marks), rounding);
                }
                format!("{}{}", sign(at), feet_inches(at.abs(), figures))
            }
            Units::DecimalInches => {
                let at = length.rounded(Length::nm(25_400), rounding);
                let inch = if figures == Figures::Set { '″' } else { '"' };
                format!(
                    "{}{}{inch}",
                    sign(at),
                    decimal(at.abs().as_nm() / 25_400, 3)
                )
            }
            Units::Millimetres | Units::Centimetres | Units::Metres => {
                let (places, unit) = match self {
                    Units::Millimetres => (1, "mm"),
                    Units::Centimetres => (2, "cm"),
                    _ => (4, "m"),
                };
                let at = length.rounded(Length::nm(100_000), rounding);
                format!(
                    "{}{} {unit}",
                    sign(at),
                    decimal(at.abs().as_nm() / 100_000, places)
                )
            }
        }
    }

    /// The marks that show a small limit of the trade as it is printed: 3/32 stays 3/32 where all else goes by sixteenths.
    fn exactly(self, length: Length) -> Units {
        let on_a_mark = length.as_nm() % Length::SIXTY_FOURTH.as_nm() == 0;
        match self {
            Units::FeetInches { .. } if on_a_mark && length.abs() < Length::in_64(0, 32) => {
                Units::FeetInches { marks: 64 }
            }
            other => other,
        }
    }

    /// A length in the other system, small beside the first.
    #[must_use]
    pub fn other(self, length: Length) -> String {
        let other = if self.is_metric() {
            Units::FeetInches { marks: 16 }
        } else {
            Units::Millimetres
        };
        other.length(length, Rounding::Nearest, Figures::Set)
    }

    /// Any figure as this job shows it, lengths to the nearest mark.
    #[must_use]
    pub fn amount(self, amount: &Amount, figures: Figures) -> String {
        let metric = self.is_metric();
        let number = |value: f64, places: usize| trimmed(value, places);
        match amount {
            Amount::Letter(at) => letter(*at),
            Amount::Length(length) => {
                self.exactly(*length)
                    .length(*length, Rounding::Nearest, figures)
            }
            Amount::Film(film) if metric => format!("{} µm", number(film.metres() * 1e6, 0)),
            Amount::Film(film) => format!("{} mil", number(film.in_inches() * 1000.0, 1)),
            Amount::Angle(angle) => format!("{}°", number(angle.in_degrees(), 2)),
            Amount::Area(area) if metric => format!("{} m²", number(in_square_metres(*area), 2)),
            Amount::Area(area) => {
                let feet = in_square_feet(*area);
                format!("{} ft²", number(feet, usize::from(feet < 99.95)))
            }
            Amount::Volume(volume) if metric => format!("{} L", number(in_litres(*volume), 2)),
            Amount::Volume(volume) if in_gallons(*volume).abs() < 0.1 => {
                format!("{} fl\u{a0}oz", number(in_gallons(*volume) * 128.0, 1))
            }
            Amount::Volume(volume) => format!("{} gal", number(in_gallons(*volume), 2)),
            Amount::Mass(mass) if metric => format!("{} kg", number(in_kilograms(*mass), 1)),
            Amount::Mass(mass) => format!("{} lb", number(in_pounds(*mass), 1)),
            Amount::Spread(rate) if metric => {
                format!("{} m²/L", number(in_square_metres_per_litre(*rate), 1))
            }
            Amount::Spread(rate) => {
                format!("{} ft²/gal", number(in_square_feet_per_gallon(*rate), 0))
            }
            Amount::Temperature(at) if metric => format!("{} °C", number(in_celsius(*at), 0)),
            Amount::Temperature(at) => format!("{} °F", number(in_celsius(*at) * 1.8 + 32.0, 0)),
            Amount::Hours(hours) if *hours >= 48.0 && hours % 24.0 == 0.0 => {
                format!("{} days", number(hours / 24.0, 0))
            }
            Amount::Hours(hours) => format!("{} h", number(*hours, 1)),
            Amount::Count(count) => count.to_string(),
            Amount::Number(value) => number(*value, 4),
            Amount::Share(share) => format!("{} %", number(share * 100.0, 1)),
            Amount::Size(across, up) => {
                format!(
                    "{} × {}",
                    self.length(*across, Rounding::Nearest, figures),
                    self.length(*up, Rounding::Nearest, figures)
                )
            }
            Amount::Bulk(volume) if metric => format!("{} L", number(in_litres(*volume), 1)),
            Amount::Bulk(volume) => {
                let feet = in_cubic_feet(*volume);
                format!("{} ft³", number(feet, if feet.abs() < 1.0 { 3 } else { 2 }))
            }
            Amount::Density(density) if metric => {
                format!("{} kg/L", number(in_kilograms_per_litre(*density), 2))
            }
            Amount::Density(density) => {
                format!("{} lb/ft³", number(in_pounds_per_cubic_foot(*density), 1))
            }
            Amount::Slope(slope) if metric => format!("{} %", number(slope * 100.0, 1)),
            Amount::Slope(slope) => format!("{} in/ft", number(slope * 12.0, 3)),
            Amount::Minutes(minutes) => format!("{} min", number(*minutes, 0)),
            Amount::Range(from, to) if !metric && spans_gallons(from, to) => {
                let gallons = |amount: &Amount| match amount {
                    Amount::Volume(volume) => number(in_gallons(*volume), 2),
                    other => self.amount(other, figures),
                };
                format!("{}–{} gal", gallons(from), gallons(to))
            }
            Amount::Range(from, to) => {
                range(&self.amount(from, figures), &self.amount(to, figures))
            }
        }
    }

    /// A sentence with its figures filled in.
    #[must_use]
    pub fn phrase(self, phrase: &Phrase, figures: Figures) -> String {
        let mut text = phrase.text.to_owned();
        for (at, amount) in phrase.amounts.iter().enumerate() {
            text = text.replace(&format!("{{{at}}}"), &self.amount(amount, figures));
        }
        text
    }
}

/// Volumes of which the greater is shown in gallons: then both are.
fn spans_gallons(from: &Amount, to: &Amount) -> bool {
    matches!((from, to), (Amount::Volume(_), Amount::Volume(most)) if in_gallons(*most) >= 0.1)
}

/// "5–10 gal": the unit once where both have it.
fn range(from: &str, to: &str) -> String {
    match (from.rsplit_once(' '), to.rsplit_once(' ')) {
        _ if from == to => from.to_owned(),
        (Some((least, unit)), Some((_, same)))
            if unit == same
                && !unit.contains(|c: char| c.is_ascii_digit() || "'\"′″".contains(c)) =>
        {
            format!("{least}–{to}")
        }
        _ => format!("{from} – {to}"),
    }
}

/// Feet, inches and a reduced fraction of a length that is no less than nothing.
fn feet_inches(at: Length, figures: Figures) -> String {
    let sixty_fourths = at.as_nm() / Length::SIXTY_FOURTH.as_nm();
    let (feet, inches, rest) = (
        sixty_fourths / 768,
        sixty_fourths % 768 / 64,
        sixty_fourths % 64,
    );
    let (foot, inch) = if figures == Figures::Set {
        ('′', '″')
    } else {
        ('\'', '"')
    };
    let mut text = if feet > 0 {
        format!("{feet}{foot}")
    } else {
        String::new()
    };
    if inches == 0 && rest == 0 && feet > 0 {
        return text;
    }
    if feet > 0 {
        // A measure is never broken over two lines.
        text.push(if figures == Figures::Set {
            '\u{a0}'
        } else {
            ' '
        });
    }
    // One foot and a half inch is written 1' 0 1/2", or it would be read as one and a half.
    let whole = inches > 0 || rest == 0 || feet > 0;
    if whole {
        text.push_str(&inches.to_string());
    }
    if rest > 0 {
        let shift = rest.trailing_zeros();
        let (over, under) = (rest >> shift, 64 >> shift);
        if figures == Figures::Set {
            text.push(fraction_glyph(over as u32, under));
        } else {
            let gap = if whole { " " } else { "" };
            text.push_str(&format!("{gap}{over}/{under}"));
        }
    }
    text.push(inch);
    text
}

/// A whole number of small units with its decimal point `places` from the right, trailing zeros dropped.
fn decimal(value: i64, places: u32) -> String {
    let unit = 10i64.pow(places);
    let text = format!(
        "{}.{:0width$}",
        value / unit,
        value % unit,
        width = places as usize
    );
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A number to so many places, trailing zeros dropped, never "-0".
fn trimmed(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    };
    if text == "-0" { "0".to_owned() } else { text }
}

/// A, B … Z, then A2, B2 …, counted from 0.
fn letter(at: usize) -> String {
    let letter = char::from(b'A' + (at % 26) as u8);
    match at / 26 {
        0 => letter.to_string(),
        round => format!("{letter}{}", round + 1),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::quantity::{cubic_feet, gallons, kilograms_per_litre, square_feet};

    #[track_caller]
    fn check(length: Length, units: Units, expected: &str) {
        assert_eq!(
            units.length(length, Rounding::Nearest, Figures::Plain),
            expected
        );
    }

    #[test]
    fn lengths_print_as_the_trade_writes_them() {
        let tape = Units::FeetInches { marks: 16 };
        check(Length::in_64(88, 32), tape, "7' 4 1/2\"");
        check(Length::feet(8), tape, "8'");
        check(Length::ZERO, tape, "0\"");
        check(Length::in_64(0, 32), tape, "1/2\"");
        check(Length::in_64(12, 32), tape, "1' 0 1/2\"");
        check(-Length::in_64(4, 16), tape, "-4 1/4\"");
        check(Length::in_64(88, 32), Units::DecimalInches, "88.5\"");
        check(Length::mm(2245), Units::Millimetres, "2245 mm");
        check(Length::nm(2_245_100_000), Units::Metres, "2.2451 m");
    }

    #[test]
    fn a_piece_that_must_fit_is_rounded_down_and_one_that_must_cover_up() {
        let (tape, third) = (
            Units::FeetInches { marks: 16 },
            Length::inches(1).divided(3),
        );
        assert_eq!(
            tape.length(third, Rounding::FitInside, Figures::Plain),
            "5/16\""
        );
        assert_eq!(tape.length(third, Rounding::Cover, Figures::Plain), "3/8\"");
    }

    #[test]
    fn set_text_reads_back_plain() {
        let tape = Units::FeetInches { marks: 16 };
        let set = tape.length(Length::in_64(43, 20), Rounding::Nearest, Figures::Set);
        assert_eq!(set, format!("3′\u{a0}7{}″", fraction_glyph(5, 16)));
        assert_eq!(plain(&set), "3' 7 5/16\"");
    }

    #[test]
    fn small_limits_are_shown_as_they_are() {
        let tape = Units::FeetInches { marks: 16 };
        let shown = |length: Length| tape.amount(&length.into(), Figures::Plain);
        assert_eq!(shown(Length::in_64(0, 2)), "1/32\"");
        assert_eq!(shown(Length::in_64(0, 6)), "3/32\"");
        assert_eq!(shown(Length::in_64(1, 2)), "1\"");
        assert_eq!(shown(Length::ZERO), "0\"");
        let nearest = |n| tape.length(Length::nm(n), Rounding::Nearest, Figures::Plain);
        assert_eq!(nearest(793_750), "1/32\"");
        assert_eq!(nearest(1_000), "0\"");
    }

    #[test]
    fn fractions_in_a_sentence_are_stacked_and_read_back() {
        let says = "Set the saw 1/8 in deep (3/4 in at most), 1 1/2 in. at a stud, 3/16\" at an edge, 1/3 of it";
        let set = stacked(says);
        assert_eq!(set.matches('/').count(), 1, "{set}");
        assert!(set.contains(&format!("1{} in. at", fraction_glyph(1, 2))));
        assert_eq!(plain(&set), says);
        for left in [
            "9/16/2021",
            "12/4",
            "1/3",
            "and/or",
            "5/",
            "/8",
            "1/8/",
            "",
            "  ",
            "2/2",
            "A1/2",
        ] {
            assert_eq!(stacked(left), left);
        }
    }

    #[test]
    fn amounts_carry_their_unit() {
        let (tape, set) = (Units::FeetInches { marks: 16 }, Figures::Set);
        assert_eq!(tape.amount(&square_feet(34.5).into(), set), "34.5 ft²");
        assert_eq!(tape.amount(&square_feet(201.2).into(), set), "201 ft²");
        let range = Amount::Range(
            Box::new(gallons(5.0).into()),
            Box::new(gallons(10.0).into()),
        );
        assert_eq!(tape.amount(&range, set), "5–10 gal");
        assert_eq!(
            tape.amount(&Amount::Bulk(cubic_feet(2.482)), set),
            "2.48 ft³"
        );
        assert_eq!(tape.amount(&Amount::Slope(1.0 / 48.0), set), "0.25 in/ft");
        assert_eq!(
            Units::Millimetres.amount(&kilograms_per_litre(1.6).into(), set),
            "1.6 kg/L"
        );
        let spanning = Amount::Range(
            Box::new(gallons(0.06).into()),
            Box::new(gallons(0.13).into()),
        );
        assert_eq!(tape.amount(&spanning, set), "0.06–0.13 gal");
        let small = Amount::Range(
            Box::new(gallons(0.02).into()),
            Box::new(gallons(0.04).into()),
        );
        assert_eq!(tape.amount(&small, set), "2.6–5.1 fl\u{a0}oz");
    }
}
