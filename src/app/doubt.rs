//! A measure that can hardly be: asked about once, with the unit that it was likely meant in.

use crate::measure::{Figures, Length, Rounding, Units, read};
use crate::site::{OpeningKind, Room, Size, What, sketch};

/// Why a measure is asked about, and what it likely is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Doubt {
    /// In words.
    pub text: String,
    /// What was likely meant, as it would be typed.
    pub instead: Option<String>,
}

/// The least and the most that a measure commonly is, in inches; common practice, no published source.
fn common(room: &Room, what: What) -> Option<(i64, i64)> {
    let kind = |at: usize| room.openings.get(at).map(|opening| opening.kind);
    Some(match what {
        What::Wall(_) => (2, 720),
        What::Diagonal(..) => (6, 1080),
        What::Ceiling => (78, 192),
        What::Height(_) => (36, 240),
        What::WallHeight(_) => (12, 240),
        What::Opening(at, Size::Width) if kind(at) == Some(OpeningKind::Door) => (16, 120),
        What::Opening(at, Size::Height) if kind(at) == Some(OpeningKind::Door) => (60, 144),
        What::Opening(_, Size::Width | Size::Height) => (3, 240),
        What::Opening(..) => (0, 720),
        What::Fixture(_, Size::Width | Size::Height | Size::Depth) => (4, 120),
        What::Fixed(_, Size::Width | Size::Height) => (0, 120),
        What::Fixed(_, Size::FromLeft) | What::Fixture(_, Size::FromLeft) => (0, 720),
        What::Fixed(_, Size::Up) => (0, 240),
        What::Level(_) => (0, 120),
        What::Lean(..) => (-6, 6),
        What::Gap(..) => (0, 12),
        What::Fixed(..) | What::Fixture(..) | What::Hidden(_) => return None,
    })
}

/// About how much it is, where the sketch or the trade knows.
fn about(room: &Room, what: What) -> Option<Length> {
    match what {
        What::Wall(wall) => room.walls.get(wall).map(|wall| wall.sketched),
        What::Diagonal(a, b) => {
            let corners = sketch(room).corners.points;
            Some(corners.get(a)?.distance(*corners.get(b)?))
        }
        What::Ceiling | What::Height(_) | What::WallHeight(_) => Some(Length::inches(96)),
        What::Opening(_, Size::Height) => Some(Length::inches(60)),
        What::Opening(_, Size::Width) => Some(Length::inches(30)),
        _ => None,
    }
}

const UNITS: [&str; 5] = ["m", "mm", "cm", "in", "ft"];

/// A text that is one plain number and at most one unit: the number, and the unit.
fn plain(typed: &str) -> Option<(&str, &str)> {
    let typed = typed.trim();
    let end = typed
        .find(|c: char| !(c.is_ascii_digit() || c == '.'))
        .unwrap_or(typed.len());
    let (number, unit) = (&typed[..end], typed[end..].trim());
    let known = unit.is_empty() || UNITS.contains(&unit) || unit == "\"" || unit == "'";
    (known && number.parse::<f64>().is_ok()).then_some((number, unit))
}

/// How many times one length is the other, without its way.
fn ratio(a: Length, b: Length) -> f64 {
    let (a, b) = (a.metres().abs().max(1e-6), b.metres().abs().max(1e-6));
    (a / b).ln().abs()
}

/// Whether a measure is asked about.
///
/// It is where it lies outside what is common; and where a number without a unit is more than four times off what the
/// sketch has, or is a decimal as a laser meter types it, and another unit comes nearer.
pub(super) fn doubt(
    room: &Room,
    what: What,
    typed: &str,
    length: Length,
    units: Units,
) -> Option<Doubt> {
    let (least, most) = common(room, what)?;
    let fits = |length: Length| length >= Length::inches(least) && length <= Length::inches(most);
    let guess = about(room, what);
    let number = plain(typed);
    let bare = number.filter(|(_, unit)| unit.is_empty());
    let far = |length: Length| guess.map_or(0.0, |guess| ratio(length, guess));
    let off = bare.is_some() && far(length) > 4.0_f64.ln();
    if fits(length) && !off {
        return None;
    }
    // The other units in which the number makes sense, the nearest to the sketch first.
    let mut others: Vec<(f64, String, Length)> = Vec::new();
    if let Some((number, unit)) = number {
        for other in UNITS.iter().filter(|other| **other != unit) {
            let text = format!("{number} {other}");
            if let Ok(is) = read::length(&text, units)
                && fits(is)
                && is != length
            {
                others.push((far(is), text, is));
            }
        }
    }
    others.sort_by(|a, b| a.0.total_cmp(&b.0));
    let best = others.into_iter().next();
    if fits(length)
        && best
            .as_ref()
            .is_none_or(|(far_off, ..)| *far_off + 0.7 > far(length))
    {
        return None;
    }
    let set = |length: Length| units.length(length, Rounding::Nearest, Figures::Set);
    let judged = if length < Length::inches(least) || guess.is_some_and(|guess| length < guess) {
        "little"
    } else {
        "much"
    };
    let text = match &best {
        Some((_, text, is)) => format!(
            "{} is very {judged} here. Is it {text}, {}? Enter takes that; to keep {}, type it again.",
            set(length),
            set(*is),
            set(length)
        ),
        None => format!(
            "{} is very {judged} here: commonly it is {} to {}. Enter once more keeps it.",
            set(length),
            set(Length::inches(least)),
            set(Length::inches(most))
        ),
    };
    Some(Doubt {
        text,
        instead: best.map(|(_, text, _)| text),
    })
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
