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

/// A wall with its length, where that was measured: "A, 8′".
pub(super) fn with_length(room: &Room, wall: usize, units: Units) -> String {
    let name = Wall::named(wall);
    match room.measured(What::Wall(wall)) {
        Some(length) => format!("{name}, {}", set(length, units)),
        None => name,
    }
}

/// The measured walls that run along another, each with its length.
pub(super) fn along(room: &Room, wall: usize, units: Units) -> String {
    let mut way = 0_i64;
    let ways: Vec<i64> = room
        .walls
        .iter()
        .map(|wall| {
            let now = way.rem_euclid(180_000_000);
            way = way.saturating_add(wall.turn.as_microdegrees());
            now
        })
        .collect();
    let these = (0..room.walls.len())
        .filter(|other| ways.get(*other) == ways.get(wall) && room.walls[*other].length.is_some());
    let these: Vec<String> = these.map(|other| with_length(room, other, units)).collect();
    if these.is_empty() {
        "walls that were not measured".to_owned()
    } else {
        these.join("; ")
    }
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
        What::Fixed(_, Size::Width | Size::Height | Size::Depth)
        | What::Fixture(_, Size::Height | Size::Up) => {
            format!("{}? It may be left out.", name(room, what))
        }
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

/// What was most likely misread, and how, in one sentence; what is asked at the figure itself has its own short name.
pub(super) fn misread(room: &Room, found: &Misread, if_square: bool, units: Units) -> String {
    misread_of(&capital(&name(room, found.what)), found, if_square, units)
}

/// The same at the pad, where the figure was typed just now or a moment ago.
pub(super) fn misread_here(
    room: &Room,
    found: &Misread,
    (last, if_square): (What, bool),
    units: Units,
) -> String {
    let name = match found.what {
        What::Diagonal(..) if found.what == last => "The diagonal just typed".into(),
        what => capital(&name(room, what)),
    };
    misread_of(&name, found, if_square, units)
}

fn misread_of(what: &str, found: &Misread, if_square: bool, units: Units) -> String {
    let (read, likely) = (set(found.read, units), set(found.likely, units));
    let says = if if_square {
        format!("{what} reads {read}; the others say {likely}, if the corners are square.")
    } else {
        format!("{what} reads {read}; the others say {likely}.")
    };
    let more = found.read > found.likely;
    match found.how {
        How::Foot => format!(
            "{says} Did you {} a foot?",
            if more { "add" } else { "miss" }
        ),
        How::TenCentimetres => format!(
            "{says} Is it ten centimetres too {}?",
            if more { "long" } else { "short" }
        ),
        How::Inch => format!(
            "{says} Is it an inch too {}?",
            if more { "long" } else { "short" }
        ),
        How::Exchanged => format!("{says} Did two figures change places?"),
        How::SixForNine => format!(
            "{says} Did you read {}?",
            if more { "9 for 6" } else { "6 for 9" }
        ),
        How::Otherwise => {
            let give = set(found.plus_minus, units);
            let says = says.replacen(&likely, &format!("{likely} ± {give}"), 1);
            format!("{says} Measure it again.")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::words::room_problem;
    use crate::site::{misreads, shape};

    const FEET: Units = Units::FeetInches { marks: 16 };

    fn bath(lengths: &[(usize, i64)]) -> Room {
        let mut room = Room::rectangle("Bath");
        for (wall, inches) in lengths {
            room.measure(What::Wall(*wall), Some(Length::inches(*inches)), None);
        }
        room
    }

    /// The measurements that contradict each other stand in the message.
    #[test]
    fn what_cannot_be_is_said_with_its_measurements() {
        let mut room = bath(&[(0, 96), (1, 60), (2, 96), (3, 60)]);
        room.measure(What::Diagonal(0, 2), Some(Length::inches(160)), None);
        let said = room_problem(&shape(&room).unwrap_err(), &room, FEET);
        assert_eq!(
            said.replace('\u{a0}', " "),
            "Across from corner D–A to corner B–C measures 13′ 4″, and the walls from one corner to the other come to 13′ together: no triangle has that. Measure it again, or those walls."
        );
        let mut ell = Room::l_shape("L");
        for (wall, inches) in [(0, 30), (2, 40)] {
            ell.measure(What::Wall(wall), Some(Length::inches(inches)), None);
        }
        let said = room_problem(&shape(&ell).unwrap_err(), &ell, FEET);
        let said = said.replace('\u{a0}', " ");
        assert!(said.contains("A, 2′ 6″; C, 3′ 4″"), "{said}");
    }

    /// Each way in which a room cannot be, and what is said of it.
    #[test]
    fn every_room_that_cannot_be_is_told_why_and_what_would_be_right() {
        let whole = || bath(&[(0, 96), (1, 60), (2, 96), (3, 60)]);
        let turned = |turns: [i64; 4]| {
            let mut room = whole();
            for (wall, turn) in room.walls.iter_mut().zip(turns) {
                wall.turn = crate::measure::Angle::degrees(turn);
            }
            room
        };
        let mut none = whole();
        none.walls[1].length = Some(Length::ZERO);
        let mut two = whole();
        two.walls.truncate(2);
        let mut short = whole();
        short.measure(What::Diagonal(0, 2), Some(Length::inches(30)), None);
        for (room, parts) in [
            (none, &["Wall B measures 0″", "Measure it again"][..]),
            (two, &["at least three walls"]),
            (turned([0, 180, 90, 90]), &["A, 8′", "B, 5′", "turns 0°"]),
            (
                turned([360, 90, 90, 90]),
                &["after wall A turns 360°", "less than 180°"],
            ),
            (
                turned([90, 90, 90, 45]),
                &["turn 315°", "turns 360°", "by 45°"],
            ),
            (
                short,
                &["corner B–C measures 2′ 6″", "differ by 3′", "no triangle"],
            ),
        ] {
            let said = room_problem(&shape(&room).unwrap_err(), &room, FEET);
            let said = said.replace('\u{a0}', " ");
            for part in parts {
                assert!(said.contains(part), "{part:?} is not in {said:?}");
            }
        }
    }

    /// On the pad a corner of 0°, 180° or 360° is refused at the figure, and nothing changes.
    #[test]
    fn a_corner_that_does_not_turn_is_refused_where_it_is_typed() {
        use crate::app::{App, Command, Here, Keeper, Slot};
        let begun = chrono::DateTime::UNIX_EPOCH.fixed_offset();
        let mut job = crate::takeoff::Job::new("Cabin", begun, FEET);
        job.add_room(bath(&[(0, 96), (1, 60)]));
        let mut app = App::new(job, Keeper::nowhere());
        app.send(Command::Go(Here::Wall(0, 1)));
        for typed in ["0", "180", "360"] {
            let before = app.job.rooms[0].clone();
            app.send(Command::Pad(Slot::WallTurn(0, 1)));
            let pad = app.pad.as_mut().unwrap();
            (pad.typed, pad.fresh) = (typed.into(), false);
            app.take();
            let wrong = app.pad.as_ref().map(|pad| pad.wrong.clone());
            assert!(wrong.is_some_and(|wrong| wrong.contains("360°")), "{typed}");
            assert_eq!(app.job.rooms[0], before);
        }
    }

    #[test]
    fn a_misreading_is_asked_about_in_words() {
        let mut room = bath(&[(0, 96), (1, 60), (2, 84), (3, 60)]);
        for (a, b) in [(0, 2), (1, 3)] {
            room.measure(What::diagonal(a, b), Some(Length::in_64(113, 13)), None);
        }
        let found = misreads(&room, FEET);
        assert_eq!(
            misread(&room, &found[0], false, FEET),
            "Wall C reads 7′; the others say 8′. Did you miss a foot?"
        );
    }
}
