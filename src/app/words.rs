//! The words of messages: what is wrong, why, and what would be right.

use super::survey_words;
use crate::handbook::{Cite, Known};
use crate::measure::read::{Unreadable, Why};
use crate::measure::{Angle, Figures, Length, Rounding, Units};
use crate::site::{self, Clash, Misfit, Room, Wall};
use crate::trades::{Term, paint, patch, tape, tile};

fn show(length: Length, units: Units) -> String {
    units.length(length, Rounding::Nearest, Figures::Set)
}

/// Why a typed text is refused.
pub(super) fn unreadable(unreadable: &Unreadable, typed: &str) -> String {
    let at = typed
        .get(unreadable.at.clone())
        .unwrap_or("")
        .trim()
        .to_owned();
    match unreadable.why {
        Why::Empty => "Nothing is typed yet. Type what the tape says.".into(),
        Why::NotKnown if at.is_empty() => {
            "This does not read as a measure. Type it like 7' 4 1/2\" or 2245 mm.".into()
        }
        Why::NotKnown if at.contains('±') => {
            "How far a figure may be off is chosen in the survey, by the ± below the question. Type the figure alone."
                .into()
        }
        Why::NotKnown => {
            format!("“{at}” is no number, unit or sign. Units are ft, in, mm, cm and m.")
        }
        Why::NumberMissing => {
            "A number is missing at the end. Type it, or erase the last sign.".into()
        }
        Why::BracketOpen => "A bracket is opened and not closed. Close it, or erase it.".into(),
        Why::SignMissing => {
            format!("A sign is missing before “{at}”. Put + − × or ÷ between two figures.")
        }
        Why::DivideByZero => {
            format!("“{at}” divides by nothing. The lower number has to be at least 1.")
        }
        Why::LengthTimesLength => {
            "A length times a length is an area. Multiply by a plain number.".into()
        }
        Why::DivideByLength => {
            "A length over a length is no length. Divide by a plain number.".into()
        }
        Why::CommaUnclear => comma_unclear(&at),
        Why::NotAnAngle => {
            format!("“{at}” belongs to no angle. Type degrees, like 22.5 or 22 1/2.")
        }
        Why::TurnTooFar => "That is a whole turn or more. An angle is less than 360°.".into(),
        Why::NotAPrice => format!("“{at}” is no price. Type it like 12.50 or 1250."),
        Why::LessThanNothing => "A price is no less than nothing. Type it without a sign.".into(),
        Why::PartOfACent => {
            "A price has at most two places, like 12.50. Type thousands without a sign, like 1250."
                .into()
        }
        Why::PriceTooHigh => "That is more than 100000.00. Check the point.".into(),
        Why::TooLong => "That is more than 10 km. Check the unit.".into(),
        _ => "That is more than one measure takes. Make it shorter.".into(),
    }
}

/// Both ways that a number with a comma may be meant, as each would be typed.
fn comma_unclear(at: &str) -> String {
    let is_sign = |c: char| c == ',' || c == '.';
    let figures = |text: &str| text.replace(is_sign, "");
    let signs = at.matches(is_sign).collect::<Vec<_>>();
    match (signs.as_slice(), at.rsplit_once(is_sign)) {
        ([","], Some((whole, part))) => format!(
            "“{at}” can be read in two ways. Type {whole}{part}, or {whole}.{part} with a point."
        ),
        ([first, .., last], Some((whole, part))) if first != last => format!(
            "“{at}” has more than one point or comma. Type {}.{part}.",
            figures(whole)
        ),
        _ => format!(
            "“{at}” has more than one point or comma. Type {}, or one point.",
            figures(at)
        ),
    }
}

/// Where a figure stands, in one line.
pub(super) fn cite(cite: &Cite) -> String {
    let known = match cite.known {
        Known::Read => "",
        Known::Computed => "arithmetic",
        Known::CommonPractice => "common practice, no published source",
        Known::FromMemory => "from memory, not looked up",
    };
    let document = cite.document.map(|d| {
        if d.edition.is_empty() {
            d.title.to_owned()
        } else {
            format!("{} ({})", d.title, d.edition)
        }
    });
    let parts = [document.as_deref().unwrap_or(""), cite.clause, known];
    parts
        .into_iter()
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join("; ")
}

/// A sum as it would be written on a board.
pub(super) fn sum(terms: &[Term], units: Units) -> String {
    let words = terms.iter().map(|term| match term {
        Term::Figure(amount) => units.amount(amount, Figures::Set),
        Term::Word(word) => (*word).to_owned(),
    });
    words.collect::<Vec<_>>().join(" ")
}

/// Why a room has no shape.
pub(super) fn room_problem(problem: &site::Problem, room: &Room, units: Units) -> String {
    let name = Wall::named;
    match problem {
        site::Problem::TooFewWalls => "A room needs at least three walls. Add one.".into(),
        site::Problem::ZeroWall(wall) => {
            let read = room.walls.get(*wall).and_then(|wall| wall.length);
            format!(
                "Wall {} measures {}, and a wall is longer than nothing. Measure it again.",
                name(*wall),
                show(read.unwrap_or_default(), units)
            )
        }
        site::Problem::TurnsDoNotClose { sum } => {
            let left = 360.0 - sum.in_degrees();
            format!(
                "The corners turn {}°, and a room turns 360°. Change a corner by {left}°: of {} walls one turns the wrong way.",
                sum.in_degrees(),
                room.walls.len()
            )
        }
        site::Problem::TurnImpossible(wall) => format!(
            "The corner after wall {} turns {}°: back on itself. A corner turns less than 180°, 90° where it is square.",
            name(*wall),
            (room.walls.get(*wall)).map_or(0.0, |wall| wall.turn.in_degrees())
        ),
        site::Problem::WallsCross(a, b) => format!(
            "Walls {} and {} cross. Check their lengths and the corners between them.",
            survey_words::with_length(room, *a, units),
            survey_words::with_length(room, *b, units)
        ),
        site::Problem::ClosesBackwards { wall } => format!(
            "Wall {} would have to run backwards to close the room. Along it there are {}: one of these is too short or too long.",
            name(*wall),
            survey_words::along(room, *wall, units)
        ),
        site::Problem::NoTurn(wall) => format!(
            "Walls {} and {} run on in line: the corner between them turns 0°. Take the corner out, or say how far it turns.",
            survey_words::with_length(room, *wall, units),
            survey_words::with_length(room, (wall + 1) % room.walls.len(), units)
        ),
        site::Problem::DiagonalTooLong {
            corners,
            read,
            around,
        } => format!(
            "{} measures {}, and the walls from one corner to the other come to {} together: no triangle has that. Measure it again, or those walls.",
            survey_words::diagonal(room, *corners),
            show(*read, units),
            show(*around, units)
        ),
        site::Problem::DiagonalTooShort {
            corners,
            read,
            least,
        } => format!(
            "{} measures {}, and its two walls differ by {}: no triangle has that. Measure it again, or those walls.",
            survey_words::diagonal(room, *corners),
            show(*read, units),
            show(*least, units)
        ),
    }
}

/// By how much the walls miss one another.
pub(super) fn misfit(misfit: &Misfit, units: Units) -> String {
    format!(
        "The walls close within {}. Wall {} measures {}; the others leave {}.",
        show(misfit.gap, units),
        Wall::named(misfit.wall),
        show(misfit.measured, units),
        show(misfit.drawn, units)
    )
}

/// What clashes in a room, and what to check.
pub(super) fn clash(clash: &Clash, room: &Room, units: Units) -> String {
    let name = |opening: usize| {
        let opening = &room.openings[opening];
        let kind = super::wall_page::kind_name(opening.kind).to_lowercase();
        format!("{kind} in wall {}", Wall::named(opening.wall))
    };
    match *clash {
        Clash::OpeningPastWall { opening, by } => format!(
            "The {} reaches {} past the end of the wall. Check its width and its distance from the left corner.",
            name(opening),
            show(by, units)
        ),
        Clash::OpeningTooTall { opening, by } => {
            format!(
                "The {} reaches {} above the wall. Check its height and its sill.",
                name(opening),
                show(by, units)
            )
        }
        Clash::OpeningsOverlap(a, b) => {
            format!(
                "The {} and the {} lie over each other. Check their distances from the left corner.",
                name(a),
                name(b)
            )
        }
        Clash::StudBeyondCorner { wall, at } => {
            format!(
                "A stud of wall {} is said to stand at {}, beyond its right corner. Measure it again.",
                Wall::named(wall),
                show(at, units)
            )
        }
    }
}

/// A wall that closes a square-cornered room at a slant.
pub(super) fn slant(wall: usize, off: Length, units: Units) -> String {
    format!(
        "Wall {} closes the room {} out of square. If its corners are square, one of the walls is misread: measure the walls opposite it again.",
        Wall::named(wall),
        show(off, units)
    )
}

/// A wall that closes the room at other corners than were said.
pub(super) fn bend(bend: &site::Bend) -> String {
    let more = |turn: Angle| {
        let word = if turn > Angle::ZERO { "more" } else { "less" };
        format!("{:.1}° {word}", turn.in_degrees().abs())
    };
    format!(
        "Wall {} closes the room only if its left corner turns {} and its right corner {} than you said. Measure its corners and the other walls again.",
        Wall::named(bend.wall),
        more(bend.left),
        more(bend.right)
    )
}

pub(super) fn patch_field(field: patch::Field) -> &'static str {
    use patch::Field;
    match field {
        Field::HoleWidth => "The width of the hole",
        Field::HoleHeight => "The height of the hole",
        Field::HoleAcross => "The hole across",
        Field::FromLeft => "The distance from the left corner",
        Field::AboveFloor => "The height above the floor",
        Field::Board => "The board's thickness",
        Field::Gap => "The gap round the piece",
        Field::ScrewSpacing => "The screw spacing",
        Field::FirstStud => "The first stud",
        Field::StudSpacing => "The stud spacing",
        Field::StudFace => "The face of a stud",
        Field::WallLength => "The length of the wall",
        Field::WallHeight => "The height of the wall",
    }
}

/// Why a patch cannot be figured.
pub(super) fn patch_problem(problem: &patch::Problem, units: Units) -> String {
    use patch::Problem;
    match problem {
        Problem::Missing { field } => format!("{} is not measured yet. Tap its blue figure.", patch_field(*field)),
        Problem::TooSmall { field, is, least } => {
            format!("{} is {}; it has to be at least {}.", patch_field(*field), show(*is, units), show(*least, units))
        }
        Problem::TooLarge { field, is, most } => {
            format!("{} is {}; it can be at most {}.", patch_field(*field), show(*is, units), show(*most, units))
        }
        Problem::PastTheWall { field, reaches, limit, .. } => format!(
            "The hole reaches to {}, past the end of the wall ({}). Check: {}.",
            show(*reaches, units),
            show(*limit, units),
            patch_field(*field).to_lowercase()
        ),
        Problem::OverAnOpening { .. } => "The hole lies over an opening of this wall. Check its distance from the left corner and the opening's.".into(),
        Problem::NoSuchStud { named, known } => format!("Stud {} is not there: {known} are known.", named + 1),
        Problem::StudsOutOfOrder { at } => format!("Stud {} stands left of the one before it. Measure both again.", at + 1),
        Problem::GapLeavesNoPiece { gap, opening } => {
            format!("A gap of {} leaves no piece in an opening of {}. Make the gap smaller.", show(*gap, units), show(*opening, units))
        }
        Problem::ObstacleInsideOut { .. } => "An opening of this wall has no size. Measure its width and height again.".into(),
    }
}

/// Why paint cannot be figured.
pub(super) fn paint_problem(problem: &paint::Problem, units: Units) -> String {
    match problem {
        paint::Problem::Nothing => {
            "Nothing is to be painted: give a wall the finish Paint, or measure one by hand.".into()
        }
        paint::Problem::Beyond { least, most, .. } => {
            let (least, most) = (
                units.amount(least, Figures::Set),
                units.amount(most, Figures::Set),
            );
            format!("A figure is out of range: it has to be from {least} to {most}.")
        }
    }
}

/// Why there is no tile layout; `name` says what no tile lies under.
pub(super) fn tile_problem(
    problem: &tile::Problem,
    name: &dyn Fn(tile::Taken) -> String,
    units: Units,
) -> String {
    use tile::{Field, Problem};
    match problem {
        Problem::Beyond { field, least, most } => {
            let what = match field {
                Field::Long => "The tile along the row",
                Field::Short => "The tile across the row",
                Field::Small => "The small tile",
                Field::Joint => "The joint",
                Field::Gap => "The gap at the edges",
                Field::Kerf => "The saw cut",
                Field::Apart => "The least step of plank ends",
                Field::Box => "The box",
                Field::Breakage => "Breakage",
            };
            format!(
                "{what} has to be from {} to {}.",
                show(*least, units),
                show(*most, units)
            )
        }
        Problem::JointWiderThanTile => "The joint is wider than the tile. Make it narrower.".into(),
        Problem::LongSide { wants } => format!(
            "This pattern has an even joint only where the long side is twice the short one and a joint: {}. Change the tile, the joint or the pattern.",
            show(*wants, units)
        ),
        Problem::Crosses(ring, ..) => {
            let what = if *ring == 0 {
                "The outline"
            } else {
                "A hole in it"
            };
            format!("{what} crosses itself. Check the walls and corners of the room.")
        }
        Problem::Overlap(one, other) => format!(
            "{} and {} lie over each other. Check where they are and how large, or make one of them.",
            capital(&name(*one)),
            name(*other)
        ),
        Problem::Outside(what @ tile::Taken::Hole(_)) => format!(
            "{} reaches past the edge of the surface. Check where it is and how large.",
            capital(&name(*what))
        ),
        Problem::Outside(what @ tile::Taken::Thing(_)) => format!(
            "{} lies outside the surface. Check how far it is from the left and from the top.",
            capital(&name(*what))
        ),
        Problem::NothingLeft => {
            "The gap at the edges leaves nothing to tile. Make it smaller.".into()
        }
        Problem::LargerThanSurface => {
            "The tile is larger than the surface. Check the unit of both.".into()
        }
        Problem::TooMany { about, most } => format!(
            "That is about {about:.0} tiles; at most {most} are laid out. Check the unit of the tile and of the surface."
        ),
        Problem::NoSheets => {
            "Mosaic comes on sheets in a grid, in bond or as hexagons. Change the pattern, or let it come tile by tile.".into()
        }
        Problem::SheetOutOfRange { most } => {
            format!("A sheet has from 1 to {most} small tiles each way. Count those along one edge.")
        }
        Problem::RowsOfSheet { of } => format!(
            "This pattern repeats after {of} rows, and sheets meet only after a whole repeat. Give the rows of a sheet as a multiple of {of}."
        ),
        Problem::NoSuchBox => {
            "What a box holds is not given, or is nothing. Read it off the box.".into()
        }
    }
}

/// A sentence begins with a capital.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}

/// Why the tape gives nothing.
pub(super) fn tape_problem(problem: &tape::Problem, units: Units) -> String {
    match problem {
        tape::Problem::DoesNotFit { takes, there_is } => {
            format!(
                "They take {} and there is {}. Take fewer, or a longer run.",
                show(*takes, units),
                show(*there_is, units)
            )
        }
        _ => "This cannot be laid out. Check the length and the count.".into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::read;

    #[track_caller]
    fn check(typed: &str, expected: &str) {
        let refused = read::length(typed, Units::Millimetres).unwrap_err();
        assert_eq!(unreadable(&refused, typed), expected);
    }

    #[test]
    fn a_comma_that_may_part_thousands_is_shown_both_ways() {
        check(
            "10,000 mm",
            "“10,000” can be read in two ways. Type 10000, or 10.000 with a point.",
        );
        check(
            "1,234.5 mm",
            "“1,234.5” has more than one point or comma. Type 1234.5.",
        );
        check(
            "1,234,567",
            "“1,234,567” has more than one point or comma. Type 1234567, or one point.",
        );
    }
}
