//! The words of a survey: what is measured, how it is asked, and what the measurements say.

use crate::measure::{Figures, Length, Rounding, Units};
use crate::site::{How, Misread, On, OpeningKind, Room, Side, Size, Third, Wall, What};

fn set(length: Length, units: Units) -> String {
    units.length(length, Rounding::Nearest, Figures::Set)
}

/// A corner by its two walls: "corner A–B".
pub(super) fn corner(room: &Room, at: usize) -> String {
    let count = room.walls.len().max(1);
    format!(
        "corner {}–{}",
        Wall::named((at + count - 1) % count),
        Wall::named(at)
    )
}

/// A diagonal by its corners.
pub(super) fn diagonal(room: &Room, (a, b): (usize, usize)) -> String {
    format!("Across from {} to {}", corner(room, a), corner(room, b))
}

pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// What is measured, as a line of a list.
pub(super) fn name(room: &Room, what: What) -> String {
    let size = |size: Size, floor: bool| match size {
        Size::FromLeft => "from left corner",
        Size::Up if floor => "out from the wall",
        Size::Up => "up from the floor",
        Size::Width => "width",
        Size::Height => "height",
        Size::Depth => "depth",
    };
    match what {
        What::Wall(wall) => format!("Wall {}", Wall::named(wall)),
        What::Diagonal(a, b) => diagonal(room, (a, b)),
        What::Ceiling => "Ceiling height".into(),
        What::WallHeight(wall) => format!("Wall {}, its own height", Wall::named(wall)),
        What::Height(at) => format!("Height in {}", corner(room, at)),
        What::Lean(wall, Side::Left) => {
            format!("Wall {}, plumb at its left end", Wall::named(wall))
        }
        What::Lean(wall, Side::Right) => {
            format!("Wall {}, plumb at its right end", Wall::named(wall))
        }
        What::Gap(wall, third) => format!(
            "Wall {}, line to face {}",
            Wall::named(wall),
            match third {
                Third::Left => "at its left end",
                Third::Middle => "in the middle",
                Third::Right => "at its right end",
            }
        ),
        What::Level(at) => format!("Level line to floor in {}", corner(room, at)),
        What::Opening(at, of) => room.openings.get(at).map_or_else(String::new, |opening| {
            let what = opening_name(opening.kind).to_lowercase();
            format!(
                "Wall {}, {what}: {}",
                Wall::named(opening.wall),
                size(of, false)
            )
        }),
        What::Fixed(at, of) => room.fixed.get(at).map_or_else(String::new, |point| {
            let floor = matches!(point.on, On::Floor(_));
            format!(
                "Wall {}, {}: {}",
                Wall::named(point.on.wall()),
                point.kind.name().to_lowercase(),
                size(of, floor)
            )
        }),
        What::Fixture(at, of) => room.fixtures.get(at).map_or_else(String::new, |fixture| {
            format!(
                "Wall {}, {}: {}",
                Wall::named(fixture.wall),
                fixture.kind.name().to_lowercase(),
                match of {
                    Size::FromLeft => "left corner to its middle",
                    Size::Up => "gap behind it",
                    Size::Depth => "back to front",
                    other => size(other, false),
                }
            )
        }),
        What::Hidden(at) => room.hidden.get(at).map_or_else(String::new, |hidden| {
            format!(
                "Wall {}, hidden: {}",
                Wall::named(hidden.on.wall()),
                hidden.kind.name().to_lowercase()
            )
        }),
    }
}

/// What is measured, in a word or two.
pub(super) fn short(room: &Room, what: What) -> String {
    let count = room.walls.len().max(1);
    let corner = |at: usize| {
        format!(
            "{}–{}",
            Wall::named((at + count - 1) % count),
            Wall::named(at)
        )
    };
    match what {
        What::Wall(wall) | What::WallHeight(wall) | What::Lean(wall, _) | What::Gap(wall, _) => {
            format!("Wall {}", Wall::named(wall))
        }
        What::Diagonal(..) => "Across".into(),
        What::Ceiling => "Ceiling".into(),
        What::Height(at) | What::Level(at) => corner(at),
        What::Opening(at, _) => room
            .openings
            .get(at)
            .map_or_else(String::new, |opening| opening_name(opening.kind).to_owned()),
        What::Fixed(at, _) => room
            .fixed
            .get(at)
            .map_or_else(String::new, |point| point.kind.name().to_owned()),
        What::Fixture(at, _) => room
            .fixtures
            .get(at)
            .map_or_else(String::new, |fixture| fixture.kind.name().to_owned()),
        What::Hidden(at) => room
            .hidden
            .get(at)
            .map_or_else(String::new, |hidden| hidden.kind.name().to_owned()),
    }
}

fn opening_name(kind: OpeningKind) -> &'static str {
    super::wall_page::kind_name(kind)
}

/// What the tape is to do: one sentence.
pub(super) fn asks(room: &Room, what: What) -> String {
    match what {
        What::Wall(wall) => format!("How long is wall {}, corner to corner?", Wall::named(wall)),
        What::Diagonal(a, b) => format!(
            "How far is it from {} across to {}?",
            corner(room, a),
            corner(room, b)
        ),
        What::Ceiling => "How high is the ceiling, floor to ceiling?".into(),
        What::WallHeight(wall) => format!("How high is wall {}?", Wall::named(wall)),
        What::Height(at) => format!("How high is the ceiling in {}?", corner(room, at)),
        What::Lean(wall, _) => format!(
            "{}: how far does its top lean into the room? Less than nothing where it leans out.",
            name(room, What::Lean(wall, lean_side(what)))
        ),
        What::Gap(..) => format!("{}: how far is it?", name(room, what)),
        What::Level(at) => format!(
            "How far is it from your level line down to the floor in {}?",
            corner(room, at)
        ),
        What::Hidden(_) => format!("{}: is it here as well?", name(room, what)),
        What::Opening(..) | What::Fixed(..) | What::Fixture(..) => {
            format!("{}?", name(room, what))
        }
    }
}

fn lean_side(what: What) -> Side {
    match what {
        What::Lean(_, side) => side,
        _ => Side::Left,
    }
}

/// What was most likely misread, and how, in one sentence.
pub(super) fn misread(room: &Room, found: &Misread, units: Units) -> String {
    let (what, read, likely) = (
        capital(&name(room, found.what)),
        set(found.read, units),
        set(found.likely, units),
    );
    let more = found.read > found.likely;
    match found.how {
        How::Foot => format!(
            "{what} reads {read}; the others say {likely}. Did you {} a foot?",
            if more { "add" } else { "miss" }
        ),
        How::TenCentimetres => format!(
            "{what} reads {read}; the others say {likely}. Is it ten centimetres too {}?",
            if more { "long" } else { "short" }
        ),
        How::Inch => format!(
            "{what} reads {read}; the others say {likely}. Is it an inch too {}?",
            if more { "long" } else { "short" }
        ),
        How::Exchanged => {
            format!("{what} reads {read}; the others say {likely}. Did two figures change places?")
        }
        How::SixForNine => format!(
            "{what} reads {read}; the others say {likely}. Did you read {}?",
            if more { "9 for 6" } else { "6 for 9" }
        ),
        How::Otherwise => format!(
            "{what} reads {read}; the others say {likely}, ± {}. Measure it again.",
            set(found.plus_minus, units)
        ),
    }
}
