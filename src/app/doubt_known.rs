//! What is known of a measure before it is typed: what it commonly is, what is known of this one, and how much room
//! there is for it.

use crate::measure::{Figures, Length, Rounding, Units};
use crate::site::{
    FixedKind, FixtureKind, On, OpeningKind, Room, Shape, Size, Standing, Wall, What, sketch,
};

/// Something that says about how much a measure is.
pub(super) struct Hint {
    /// So much.
    pub length: Length,
    /// It was measured, or drawn by the person; otherwise it is what a room begins with, or what is common.
    pub firm: bool,
    /// In words, with the length for `{}`.
    pub says: &'static str,
}

/// The most that there is room for, and why.
pub(super) struct Bound {
    /// So much.
    pub most: Length,
    /// In words: what takes the rest.
    pub says: String,
}

fn inches(n: i64) -> Length {
    Length::inches(n)
}

fn hint(length: Length, firm: bool, says: &'static str) -> Hint {
    Hint { length, firm, says }
}

/// The least and the most that a measure commonly is, in inches; common practice, no published source.
pub(super) fn common(room: &Room, what: What) -> Option<(i64, i64)> {
    let door = |at: usize| {
        let kind = room.openings.get(at).map(|opening| opening.kind);
        kind == Some(OpeningKind::Door)
    };
    Some(match what {
        What::Wall(_) => (2, 720),
        What::Diagonal(..) => (6, 1080),
        What::Ceiling => (78, 192),
        What::Height(_) => (36, 240),
        What::WallHeight(_) => (12, 240),
        What::Opening(at, Size::Width) if door(at) => (16, 120),
        What::Opening(at, Size::Height) if door(at) => (60, 144),
        What::Opening(_, Size::Width | Size::Height) => (3, 240),
        What::Opening(..) => (0, 720),
        What::Fixture(at, size) => of_fixture(room.fixtures.get(at)?.kind, size),
        What::Fixed(_, Size::Width | Size::Height) => (0, 120),
        What::Fixed(_, Size::Depth) => (0, 24),
        What::Fixed(_, Size::FromLeft) => (0, 720),
        What::Fixed(at, Size::Up) => {
            let point = room.fixed.get(at)?;
            match point.on {
                On::Wall(_) => up_on_wall(point.kind),
                On::Floor(_) => (0, 720),
            }
        }
        What::Level(_) => (0, 120),
        What::Lean(..) => (-6, 6),
        What::Gap(..) => (0, 12),
        What::Hidden(_) => return None,
    })
}

/// How high a fixed point commonly is on a wall, in inches; common practice, no published source.
const fn up_on_wall(kind: FixedKind) -> (i64, i64) {
    match kind {
        FixedKind::Switch => (30, 72),
        FixedKind::Outlet => (3, 96),
        FixedKind::Light => (30, 240),
        FixedKind::Hot | FixedKind::Cold | FixedKind::Valve => (2, 108),
        _ => (0, 240),
    }
}

/// What a size of a fixture commonly is, in inches; common practice, no published source.
const fn of_fixture(kind: FixtureKind, size: Size) -> (i64, i64) {
    match (kind, size) {
        (_, Size::FromLeft) => (0, 720),
        (_, Size::Up) => (0, 24),
        (FixtureKind::Basin, Size::Width) => (8, 96),
        (FixtureKind::Basin, Size::Depth) => (6, 36),
        (FixtureKind::Toilet, Size::Width) => (12, 36),
        (FixtureKind::Toilet, Size::Depth) => (16, 40),
        (FixtureKind::Tub | FixtureKind::Shower, Size::Width | Size::Depth) => (24, 96),
        (FixtureKind::Heater, Size::Depth) => (1, 48),
        (_, Size::Height) => (4, 120),
        (FixtureKind::Heater, Size::Width) => (6, 120),
    }
}

/// All that says about how much a measure is: what it read before, what the rest leaves for it, what is drawn, what is
/// common.
pub(super) fn hints(room: &Room, what: What) -> Vec<Hint> {
    let mut all = Vec::new();
    let tapped = room.mark(what).estimate.is_some();
    all.extend(room.measured(what).map(|before| {
        let says = if tapped {
            "the estimate was {}"
        } else {
            "it read {} before"
        };
        hint(before, true, says)
    }));
    match what {
        What::Wall(wall) => all.extend(of_wall(room, wall)),
        What::Diagonal(a, b) => {
            let drawn = sketch(room);
            let corners = &drawn.corners.points;
            let firm = drawn.walls.iter().all(|wall| wall.1 != Standing::NotYet);
            if let (Some(a), Some(b)) = (corners.get(a), corners.get(b)) {
                all.push(hint(a.distance(*b), firm, "by the walls it is about {}"));
            }
        }
        What::Ceiling | What::Height(_) | What::WallHeight(_) => {
            let other = room.ceiling.filter(|_| what != What::Ceiling);
            let corners = room.survey.figures.iter();
            let corners = corners.filter(|(of, _)| matches!(of, What::Height(_)) && **of != what);
            let other = other.or_else(|| corners.map(|(_, high)| *high).next());
            all.push(match other {
                Some(high) => hint(high, true, "elsewhere it is {} high"),
                None => hint(inches(96), false, "commonly it is about {}"),
            });
        }
        What::Level(_) | What::Gap(..) => {
            let alike = |of: &What| {
                *of != what
                    && matches!(
                        (of, what),
                        (What::Level(_), What::Level(_)) | (What::Gap(..), What::Gap(..))
                    )
            };
            let other = room.survey.figures.iter().find(|(of, _)| alike(of));
            all.extend(other.map(|(_, other)| hint(*other, true, "elsewhere it is {}")));
        }
        What::Opening(at, size) => {
            let kind = room.openings.get(at).map(|opening| opening.kind);
            let usual = match (kind, size) {
                (Some(OpeningKind::Door), Size::Width) => Some(30),
                (Some(OpeningKind::Door), Size::Height) => Some(80),
                (Some(OpeningKind::Niche), Size::Width) => Some(14),
                (Some(OpeningKind::Niche), Size::Height) => Some(24),
                (_, Size::Width) => Some(30),
                (_, Size::Height) => Some(36),
                _ => None,
            };
            all.extend(usual.map(|n| hint(inches(n), false, "commonly it is about {}")));
        }
        _ => {}
    }
    all
}

/// What the other walls leave for a wall, or how it is drawn.
fn of_wall(room: &Room, wall: usize) -> Option<Hint> {
    let (drawn, standing) = *sketch(room).walls.get(wall)?;
    let sketched = room.walls.get(wall)?.sketched;
    let shaped = !room.is_as_begun();
    Some(match standing {
        Standing::Follows if drawn.is_positive() => hint(drawn, true, "the other walls leave {}"),
        Standing::NotYet if drawn.is_positive() => hint(drawn, shaped, "the sketch has {}"),
        _ => hint(sketched, shaped, "the sketch has {}"),
    })
}

/// How long a wall is, once that is known.
fn long(shape: &Shape, wall: usize) -> Option<Length> {
    let (long, standing) = *shape.walls.get(wall)?;
    (standing != Standing::NotYet && long.is_positive()).then_some(long)
}

/// How much room a wall, or its height, leaves for something on it.
pub(super) fn bound(room: &Room, what: What, units: Units) -> Option<Bound> {
    let show = |length: Length| units.length(length, Rounding::Nearest, Figures::Set);
    let shape = sketch(room);
    let across = |wall: usize, taken: Option<(Length, &str)>, halved: bool| {
        let long = long(&shape, wall)?;
        let name = Wall::named(wall);
        let mut says = format!("Wall {name} is {} long", show(long));
        let mut most = long;
        if let Some((taken, how)) = taken {
            most = (long - taken).max(Length::ZERO);
            says = format!("{says}, {how} {}", show(taken));
        }
        if halved {
            most = most.min(taken.map_or(long, |(taken, _)| taken)) * 2;
        }
        Some(Bound { most, says })
    };
    let upward = |wall: usize, taken: Option<(Length, &str)>| {
        let (left, right) = room.heights_of(wall)?;
        let high = left.max(right);
        let mut says = format!("Wall {} is {} high", Wall::named(wall), show(high));
        let mut most = high;
        if let Some((taken, how)) = taken {
            most = (high - taken).max(Length::ZERO);
            says = format!("{says}, {how} {}", show(taken));
        }
        Some(Bound { most, says })
    };
    match what {
        What::Opening(at, size) => {
            let opening = room.openings.get(at)?;
            let wall = opening.wall;
            match size {
                Size::FromLeft => across(
                    wall,
                    opening.width.map(|wide| (wide, "the opening takes")),
                    false,
                ),
                Size::Width => across(
                    wall,
                    opening
                        .from_left
                        .map(|left| (left, "the opening begins at")),
                    false,
                ),
                Size::Height => upward(wall, opening.sill.map(|sill| (sill, "its sill is at"))),
                Size::Up => upward(wall, opening.height.map(|high| (high, "the opening takes"))),
                Size::Depth => None,
            }
        }
        What::Fixed(at, size) => {
            let point = room.fixed.get(at)?;
            match (size, point.on) {
                (Size::FromLeft, on) => across(on.wall(), None, false),
                (Size::Up, On::Wall(wall)) => upward(wall, None),
                _ => None,
            }
        }
        What::Fixture(at, size) => {
            let fixture = room.fixtures.get(at)?;
            let half = fixture.width.map(Length::half);
            match size {
                Size::FromLeft => across(
                    fixture.wall,
                    half.map(|half| (half, "half the width is")),
                    false,
                ),
                Size::Width => across(
                    fixture.wall,
                    fixture.from_left.map(|left| (left, "its middle is at")),
                    fixture.from_left.is_some(),
                ),
                _ => None,
            }
        }
        _ => None,
    }
}

/// The same for a place of something hidden: along its wall, or up on it.
pub(super) fn bound_of_spot(room: &Room, on: On, size: Size, units: Units) -> Option<Bound> {
    let On::Wall(wall) = on else { return None };
    let show = |length: Length| units.length(length, Rounding::Nearest, Figures::Set);
    let name = Wall::named(wall);
    if size == Size::FromLeft {
        let most = long(&sketch(room), wall)?;
        let says = format!("Wall {name} is {} long", show(most));
        return Some(Bound { most, says });
    }
    let (left, right) = room.heights_of(wall)?;
    let most = left.max(right);
    let says = format!("Wall {name} is {} high", show(most));
    Some(Bound { most, says })
}
