//! Whether there is room about the fixtures; the local code rules.

use super::{Fixture, FixtureKind, Room, Shape};
use crate::geometry::Point;
use crate::handbook::Cite;
use crate::handbook::fixtures::{BEFORE_A_FIXTURE, BESIDE_A_TOILET, SHOWER_INSIDE};
use crate::measure::Length;

/// What a fixture wants room for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wants {
    /// From its centre line to what is beside it.
    Beside,
    /// Before it.
    Before,
    /// Inside it.
    Inside,
    /// It reaches past the end of its wall.
    InItsWall,
    /// It stands in another fixture.
    OfItsOwn,
}

/// Where a fixture has less room than is commonly asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clearance {
    /// The fixture, counted from 0.
    pub fixture: usize,
    /// What for.
    pub wants: Wants,
    /// What there is.
    pub has: Length,
    /// What is asked for.
    pub asks: Length,
    /// Where that stands; `None` where nothing can stand so at all.
    pub rule: Option<Cite>,
}

/// The place on the plan that is so far along a wall from its left corner and so far out from it.
#[must_use]
pub fn off_wall(shape: &Shape, wall: usize, along: Length, out: Length) -> Option<Point> {
    let corners = &shape.corners.points;
    let from = *corners.get(wall)?;
    let to = corners[(wall + 1) % corners.len()];
    let long = from.distance(to).metres();
    if long < 1e-9 {
        return None;
    }
    let (x, y) = (
        (to.x - from.x).metres() / long,
        (to.y - from.y).metres() / long,
    );
    let (along, out) = (along.metres(), out.metres());
    let length = Length::from_metres;
    // Inside is to the right of the way along the wall.
    Some(from + Point::new(length(along * x - out * y)?, length(along * y + out * x)?))
}

/// The floor that a fixture takes, on the plan; `None` until it is measured.
#[must_use]
pub fn footprint(fixture: &Fixture, shape: &Shape) -> Option<[Point; 4]> {
    let (left, right) = fixture.reach()?;
    let (near, far) = (
        fixture.out.unwrap_or_default(),
        fixture.out.unwrap_or_default() + fixture.depth?,
    );
    let at = |along: Length, out: Length| off_wall(shape, fixture.wall, along, out);
    Some([
        at(left, near)?,
        at(right, near)?,
        at(right, far)?,
        at(left, far)?,
    ])
}

/// How far it is from a place along a way to the outline; `None` where the way meets nothing.
fn clear(shape: &Shape, from: (f64, f64), way: (f64, f64)) -> Option<f64> {
    let corners = &shape.corners.points;
    let mut least: Option<f64> = None;
    for (at, a) in corners.iter().enumerate() {
        let b = corners[(at + 1) % corners.len()];
        let (ax, ay) = (a.x.metres(), a.y.metres());
        let (dx, dy) = (b.x.metres() - ax, b.y.metres() - ay);
        let across = way.0 * dy - way.1 * dx;
        if across.abs() < 1e-12 {
            continue;
        }
        let (px, py) = (ax - from.0, ay - from.1);
        let along = (px * dy - py * dx) / across;
        let share = (px * way.1 - py * way.0) / across;
        if along > 1e-6 && (-1e-9..=1.0 + 1e-9).contains(&share) {
            least = Some(least.map_or(along, |least| least.min(along)));
        }
    }
    least
}

/// Everything that has less room than is commonly asked for.
///
/// # Inputs
/// The room and its outline; fixtures not measured yet are passed over.
/// # Gives
/// One for each want of each fixture, in order.
/// # Source
/// The one- and two-family code as copied; the local code rules.
/// # Example
/// ```
/// use storyrod::{measure::Length, site::{Fixture, FixtureKind, Room, clearances, shape}};
/// let mut room = Room::rectangle("Washroom");
/// room.walls[0].length = Some(Length::inches(96));
/// room.walls[1].length = Some(Length::inches(60));
/// let mut toilet = Fixture::new(FixtureKind::Toilet, 0);
/// toilet.from_left = Some(Length::inches(12));
/// toilet.width = Some(Length::inches(20));
/// toilet.depth = Some(Length::inches(28));
/// room.fixtures.push(toilet);
/// assert_eq!(clearances(&room, &shape(&room).unwrap()).len(), 1);
/// ```
#[must_use]
pub fn clearances(room: &Room, shape: &Shape) -> Vec<Clearance> {
    let mut found = Vec::new();
    for (at, fixture) in room.fixtures.iter().enumerate() {
        let (Some(reach), Some(&(long, _))) = (fixture.reach(), shape.walls.get(fixture.wall))
        else {
            continue;
        };
        let over = (-reach.0).max(reach.1 - long);
        if over.is_positive() {
            found.push(Clearance {
                fixture: at,
                wants: Wants::InItsWall,
                has: long,
                asks: long + over,
                rule: None,
            });
        }
        found.extend(beside(room, at, long));
        found.extend(before(room, shape, at));
        found.extend(inside(fixture).map(|has| Clearance {
            fixture: at,
            wants: Wants::Inside,
            has,
            asks: Length::inches(SHOWER_INSIDE.value),
            rule: Some(SHOWER_INSIDE.cite),
        }));
        found.extend(on_another(room, shape, at));
    }
    found
}

fn inside(fixture: &Fixture) -> Option<Length> {
    let has = fixture.width?.min(fixture.depth?);
    let short = fixture.kind == FixtureKind::Shower && has < Length::inches(SHOWER_INSIDE.value);
    short.then_some(has)
}

/// A toilet's centre line from the corners of its wall and from its neighbours on it.
fn beside(room: &Room, at: usize, long: Length) -> Option<Clearance> {
    let fixture = &room.fixtures[at];
    if fixture.kind != FixtureKind::Toilet {
        return None;
    }
    let centre = fixture.from_left?;
    let mut has = centre.min(long - centre);
    for (other, next) in room.fixtures.iter().enumerate() {
        if let Some((left, right)) = next
            .reach()
            .filter(|_| other != at && next.wall == fixture.wall)
        {
            let off = if left > centre {
                left - centre
            } else {
                centre - right
            };
            has = has.min(off);
        }
    }
    let asks = Length::inches(BESIDE_A_TOILET.value);
    (has < asks).then_some(Clearance {
        fixture: at,
        wants: Wants::Beside,
        has: has.max(Length::ZERO),
        asks,
        rule: Some(BESIDE_A_TOILET.cite),
    })
}

/// What is clear before a fixture's front, at its middle and its two front corners.
fn before(room: &Room, shape: &Shape, at: usize) -> Option<Clearance> {
    let fixture = &room.fixtures[at];
    if !matches!(
        fixture.kind,
        FixtureKind::Toilet | FixtureKind::Basin | FixtureKind::Tub
    ) {
        return None;
    }
    let [near, _, far, other] = footprint(fixture, shape)?;
    let metres = |point: Point| (point.x.metres(), point.y.metres());
    let ((nx, ny), (fx, fy), (ox, oy)) = (metres(near), metres(far), metres(other));
    let (dx, dy) = (ox - nx, oy - ny);
    let deep = dx.hypot(dy);
    if deep < 1e-9 {
        return None;
    }
    let way = (dx / deep, dy / deep);
    let front = [0.02, 0.5, 0.98].map(|share| (ox + (fx - ox) * share, oy + (fy - oy) * share));
    let has = front
        .into_iter()
        .filter_map(|from| clear(shape, from, way))
        .min_by(f64::total_cmp)?;
    let (has, asks) = (
        Length::from_metres(has)?,
        Length::inches(BEFORE_A_FIXTURE.value),
    );
    // A hair below is what rounding leaves of enough.
    (has + Length::nm(1_000) < asks).then_some(Clearance {
        fixture: at,
        wants: Wants::Before,
        has,
        asks,
        rule: Some(BEFORE_A_FIXTURE.cite),
    })
}

/// A fixture that stands in one before it.
fn on_another(room: &Room, shape: &Shape, at: usize) -> Option<Clearance> {
    let mine = footprint(&room.fixtures[at], shape)?;
    let hit = room.fixtures[..at]
        .iter()
        .filter_map(|other| footprint(other, shape))
        .any(|other| overlap(&mine, &other));
    hit.then_some(Clearance {
        fixture: at,
        wants: Wants::OfItsOwn,
        has: Length::ZERO,
        asks: Length::ZERO,
        rule: None,
    })
}

/// Whether two four-sided footprints share floor: no side of either keeps them apart.
fn overlap(a: &[Point; 4], b: &[Point; 4]) -> bool {
    let metres = |point: &Point| (point.x.metres(), point.y.metres());
    let apart = |one: &[Point; 4], other: &[Point; 4]| {
        (0..4).any(|side| {
            let ((ax, ay), (bx, by)) = (metres(&one[side]), metres(&one[(side + 1) % 4]));
            let away = |p: &Point| {
                let (x, y) = metres(p);
                (bx - ax) * (y - ay) - (by - ay) * (x - ax)
            };
            other.iter().all(|p| away(p) <= 1e-9)
        })
    };
    !apart(a, b) && !apart(b, a)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::shape;

    fn room(fixtures: &[(FixtureKind, usize, i64, i64, i64)]) -> Room {
        let mut room = Room::rectangle("a");
        room.walls[0].length = Some(Length::inches(96));
        room.walls[1].length = Some(Length::inches(60));
        for &(kind, wall, from_left, width, depth) in fixtures {
            let mut fixture = Fixture::new(kind, wall);
            fixture.from_left = Some(Length::inches(from_left));
            fixture.width = Some(Length::inches(width));
            fixture.depth = Some(Length::inches(depth));
            room.fixtures.push(fixture);
        }
        room
    }

    #[track_caller]
    fn check(fixtures: &[(FixtureKind, usize, i64, i64, i64)], wanted: &[(usize, Wants, i64)]) {
        let room = room(fixtures);
        let found = clearances(&room, &shape(&room).unwrap());
        let found: Vec<_> = found
            .iter()
            .map(|c| (c.fixture, c.wants, c.has.in_inches().round() as i64))
            .collect();
        assert_eq!(found, wanted);
    }

    #[test]
    fn room_beside_and_before_is_seen() {
        use FixtureKind::{Basin, Shower, Toilet, Tub};
        check(&[(Toilet, 0, 15, 20, 28)], &[]);
        check(&[(Toilet, 0, 14, 20, 28)], &[(0, Wants::Beside, 14)]);
        check(
            &[(Toilet, 0, 40, 20, 28), (Basin, 0, 64, 24, 18)],
            &[(0, Wants::Beside, 12)],
        );
        // 60 in from wall to wall leave 20 before a depth of 40.
        check(&[(Tub, 0, 40, 60, 40)], &[(0, Wants::Before, 20)]);
        check(&[(Shower, 1, 30, 28, 36)], &[(0, Wants::Inside, 28)]);
        check(&[(Basin, 0, 90, 24, 18)], &[(0, Wants::InItsWall, 96)]);
        check(
            &[(Basin, 0, 50, 24, 18), (Basin, 0, 60, 24, 18)],
            &[(1, Wants::OfItsOwn, 0)],
        );
    }
}
