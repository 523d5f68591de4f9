//! What a run meets on its wall: openings, boxes, other runs, what is hidden.

use super::ask::{Ask, Place};
use crate::handbook::pipe::tube;
use crate::measure::Length;

/// Something that a run has to keep clear of. Places are from the wall's left corner, into the wall, and up from the floor.
#[derive(Clone, Debug, PartialEq)]
pub struct Obstacle {
    /// Where it is.
    pub body: Body,
    /// Half of how thick a line is, and how far its place may be off.
    pub half: Length,
    /// How far clear of it the run should stay.
    pub clear: Length,
    /// A run may begin or end there: a supply, a drain, a valve, another run.
    pub joins: bool,
}

/// The shape of an obstacle.
#[derive(Clone, Debug, PartialEq)]
pub enum Body {
    /// A rectangle on the wall, at any depth: left, right, low, high.
    Box([Length; 4]),
    /// A line at any depth.
    Flat(Vec<Place>),
    /// A line at its own depth.
    Line(Vec<Place>),
}

/// Where a leg comes too near to an obstacle; legs and obstacles count from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Clash {
    /// The leg.
    pub leg: usize,
    /// The obstacle.
    pub with: usize,
    /// Where on the wall, from its left corner and up from the floor.
    pub at: (Length, Length),
    /// Between their outsides; less than nothing where one runs through the other.
    pub clear: Length,
}

type Spot = [f64; 3];

/// Where the legs of a run come nearer to obstacles than they should.
///
/// # Inputs
/// The run, where the fittings of each of its lines are (from its start), where that start is on the wall (from its left
/// corner, up from the floor), and the obstacles.
/// # Gives
/// For each leg and obstacle the nearest place of all lines, where it is nearer than it should be; through before near.
/// # Source
/// Plane geometry; how far clear is the obstacle's own.
/// # Example
/// ```
/// use storyrod::trades::pipe::{Ask, run_clashes};
/// assert_eq!(run_clashes(&Ask::default(), &[], Default::default(), &[]), []);
/// ```
#[must_use]
pub fn run_clashes(
    ask: &Ask,
    lines: &[Vec<Place>],
    start: (Length, Length),
    obstacles: &[Obstacle],
) -> Vec<Clash> {
    let mut found = Vec::new();
    for leg in 0..ask.legs.len() {
        let Some(tube) = tube(ask.pipe, ask.size_of(leg)) else {
            continue;
        };
        let half = tube.outside.value.half();
        for (with, obstacle) in obstacles.iter().enumerate() {
            let nearest = lines
                .iter()
                .filter_map(|places| {
                    let wall: Vec<Spot> = places.iter().map(|place| spot(*place, start)).collect();
                    near(&wall, leg, obstacle, half)
                })
                .min_by(|a, b| a.0.total_cmp(&b.0));
            let Some((apart, at)) = nearest else {
                continue;
            };
            let length = |metres| Length::from_metres(metres).unwrap_or_default();
            let clear = length(apart) - half - obstacle.half;
            if clear < obstacle.clear.max(Length::nm(1)) {
                found.push(Clash {
                    leg,
                    with,
                    at: (length(at[0]), length(at[2])),
                    clear,
                });
            }
        }
    }
    found.sort_by_key(|clash| (!clash.is_through(), clash.leg));
    found
}

impl Clash {
    /// One runs through the other.
    #[must_use]
    pub fn is_through(&self) -> bool {
        self.clear < Length::ZERO
    }
}

fn spot(place: Place, start: (Length, Length)) -> Spot {
    [
        (start.0 + place.right).metres(),
        place.forward.metres(),
        (start.1 + place.up).metres(),
    ]
}

/// How near a leg of a line comes to an obstacle, and where on the leg.
fn near(wall: &[Spot], leg: usize, obstacle: &Obstacle, half: Length) -> Option<(f64, Spot)> {
    let ends = wall.get(leg..leg + 2)?;
    let flat = |spot: Spot| [spot[0], 0.0, spot[2]];
    let (mut from, mut to) = (ends[0], ends[1]);
    if !matches!(obstacle.body, Body::Line(_)) {
        (from, to) = (flat(from), flat(to));
    }
    let stretches = obstacle.body.stretches();
    // So near an end is joined; so far from the joint both are clear of each other.
    let reach = (half + obstacle.half + Length::inches(1)).metres();
    let apart = (half + obstacle.half + obstacle.clear.max(Length::inches(1))).metres();
    // What begins or ends at it is joined to it there; beyond the joint it may not come back.
    if obstacle.joins {
        let joined = |end: Spot| obstacle.body.holds(end) || off(end, &stretches) < reach;
        let (first, last) = (leg == 0, leg + 2 == wall.len());
        let inside = matches!(obstacle.body, Body::Box(_));
        let cut = if inside { f64::INFINITY } else { apart };
        if first && joined(from) {
            from = towards(from, to, cut)?;
        }
        if last && joined(to) {
            to = towards(to, from, cut)?;
        }
    }
    if let Some(at) = obstacle.body.entered(from, to) {
        return Some((0.0, at));
    }
    let ends = stretches.first().zip(stretches.last());
    let others: Vec<(Spot, Spot)> = stretches
        .iter()
        .filter_map(|(a, b)| {
            // Where the other one ends at this leg it is the other that is joined.
            let (mut a, mut b) = (*a, *b);
            if let (true, Body::Line(_), Some((first, last))) =
                (obstacle.joins, &obstacle.body, ends)
            {
                let on_leg = |end: Spot| off(end, &[(from, to)]) < reach;
                if a == first.0 && on_leg(a) {
                    a = towards(a, b, apart)?;
                }
                if b == last.1 && on_leg(b) {
                    b = towards(b, a, apart)?;
                }
            }
            Some((a, b))
        })
        .collect();
    others
        .into_iter()
        .map(|(a, b)| nearest((from, to), (a, b)))
        .min_by(|a, b| a.0.total_cmp(&b.0))
}

/// A step so long from a place towards another; `None` where that is beyond it.
fn towards(from: Spot, to: Spot, step: f64) -> Option<Spot> {
    let long = length(minus(to, from));
    (long > step).then(|| plus(from, minus(to, from), step / long))
}

/// How far a place is from stretches.
fn off(at: Spot, stretches: &[(Spot, Spot)]) -> f64 {
    let each = stretches.iter().map(|other| nearest((at, at), *other).0);
    each.fold(f64::INFINITY, f64::min)
}

impl Body {
    /// Its edges, or the parts of its line.
    fn stretches(&self) -> Vec<(Spot, Spot)> {
        match self {
            Body::Box(sides) => {
                let [left, right, low, high] = sides.map(Length::metres);
                let corners = [(left, low), (right, low), (right, high), (left, high)]
                    .map(|(x, y)| [x, 0.0, y]);
                (0..4)
                    .map(|at| (corners[at], corners[(at + 1) % 4]))
                    .collect()
            }
            Body::Flat(line) | Body::Line(line) => {
                let deep = matches!(self, Body::Line(_));
                let spots: Vec<Spot> = line
                    .iter()
                    .map(|place| {
                        let [x, y, z] = place.axes().map(Length::metres);
                        [x, if deep { y } else { 0.0 }, z]
                    })
                    .collect();
                match spots[..] {
                    [only] => vec![(only, only)],
                    _ => spots.windows(2).map(|ends| (ends[0], ends[1])).collect(),
                }
            }
        }
    }
    /// A place is inside it.
    fn holds(&self, at: Spot) -> bool {
        let Body::Box(sides) = self else {
            return false;
        };
        let [left, right, low, high] = sides.map(Length::metres);
        (left..=right).contains(&at[0]) && (low..=high).contains(&at[2])
    }
    /// The middle of what of a stretch is inside it.
    fn entered(&self, from: Spot, to: Spot) -> Option<Spot> {
        let Body::Box(sides) = self else {
            return None;
        };
        let [left, right, low, high] = sides.map(Length::metres);
        let (mut begins, mut ends) = (0.0f64, 1.0f64);
        for (axis, least, most) in [(0, left, right), (2, low, high)] {
            let run = to[axis] - from[axis];
            if run == 0.0 {
                if !(least..=most).contains(&from[axis]) {
                    return None;
                }
                continue;
            }
            let (a, b) = ((least - from[axis]) / run, (most - from[axis]) / run);
            begins = begins.max(a.min(b));
            ends = ends.min(a.max(b));
        }
        (begins <= ends).then(|| plus(from, minus(to, from), begins.midpoint(ends)))
    }
}

fn minus(a: Spot, b: Spot) -> Spot {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}
fn plus(a: Spot, way: Spot, times: f64) -> Spot {
    [
        a[0] + way[0] * times,
        a[1] + way[1] * times,
        a[2] + way[2] * times,
    ]
}
fn dot(a: Spot, b: Spot) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}
fn length(way: Spot) -> f64 {
    dot(way, way).sqrt()
}

/// How near two stretches come to each other, and where on the first.
fn nearest((a, b): (Spot, Spot), (c, d): (Spot, Spot)) -> (f64, Spot) {
    let (one, two, between) = (minus(b, a), minus(d, c), minus(a, c));
    let (long, other) = (dot(one, one), dot(two, two));
    let (across, along, beside) = (dot(one, two), dot(one, between), dot(two, between));
    let share = |top: f64, under: f64| {
        if under > 0.0 {
            (top / under).clamp(0.0, 1.0)
        } else {
            0.0
        }
    };
    let turned = long * other - across * across;
    // Where they run alike any place does: the first one's start, then as the second allows.
    let mut s = if turned > 1e-12 * long * other {
        share(across * beside - along * other, turned)
    } else {
        0.0
    };
    let t = share(across * s + beside, other);
    s = share(across * t - along, long);
    let at = plus(a, one, s);
    (length(minus(at, plus(c, two, t))), at)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handbook::pipe::{Pipe, Size};
    use crate::trades::pipe::{By, Direction, Leg, Mark, Way, sketch};

    fn run(legs: &[(Direction, i64)]) -> Ask {
        let leg = |(way, inches): &(Direction, i64)| Leg {
            way: Way::Along(*way),
            size: None,
            by: By::Tape {
                length: Length::inches(*inches),
                from: Mark::End,
                to: Mark::End,
            },
            couplings: 0,
            end: None,
        };
        Ask {
            pipe: Pipe::CopperL,
            size: Size::Half,
            legs: legs.iter().map(leg).collect(),
            ..Ask::default()
        }
    }

    fn place(right: i64, forward: i64, up: i64) -> Place {
        Place::of([right, forward, up].map(Length::inches))
    }

    fn obstacle(body: Body, joins: bool) -> Obstacle {
        Obstacle {
            body,
            half: Length::ZERO,
            clear: Length::in_64(1, 32),
            joins,
        }
    }

    /// From 10 in from the left and 20 in up; the pipe is 5/8 in across.
    fn looked(ask: &Ask, obstacle: Obstacle) -> Vec<Clash> {
        let start = (Length::inches(10), Length::inches(20));
        run_clashes(ask, &[sketch(ask)], start, &[obstacle])
    }

    fn window(left: i64, right: i64, low: i64, high: i64) -> Body {
        Body::Box([left, right, low, high].map(Length::inches))
    }

    #[test]
    fn a_leg_through_a_window_is_named_where_it_is_inside() {
        let ask = run(&[(Direction::Up, 12), (Direction::Right, 60)]);
        // At 32 in up from 10 to 70 in along.
        let clashes = looked(&ask, obstacle(window(40, 60, 30, 50), false));
        assert_eq!(clashes.len(), 1);
        assert_eq!(
            (clashes[0].leg, clashes[0].at),
            (1, (Length::inches(50), Length::inches(32)))
        );
        assert!(clashes[0].is_through());
        // An inch below its sill is too near, 3 in is not.
        let clashes = looked(&ask, obstacle(window(40, 60, 33, 50), false));
        assert_eq!(clashes[0].clear, Length::in_64(0, 44));
        assert!(!clashes[0].is_through());
        assert_eq!(looked(&ask, obstacle(window(40, 60, 35, 50), false)), []);
    }

    #[test]
    fn runs_cross_only_at_one_depth() {
        let ask = run(&[(Direction::Right, 40)]);
        let other = |forward| Body::Line(vec![place(30, forward, 0), place(30, forward, 40)]);
        let clashes = looked(&ask, obstacle(other(0), true));
        assert!(clashes[0].is_through());
        assert_eq!(clashes[0].at, (Length::inches(30), Length::inches(20)));
        assert_eq!(looked(&ask, obstacle(other(3), true)), []);
        // What is hidden may be at any depth.
        let flat = Body::Flat(vec![place(30, 3, 0), place(30, 3, 40)]);
        assert!(looked(&ask, obstacle(flat, false))[0].is_through());
    }

    /// A branch that starts on another run is joined to it and no clash, from either side; back through it, it is one.
    #[test]
    fn a_joint_is_no_clash() {
        let branch = run(&[(Direction::Up, 30)]);
        let main = Body::Line(vec![place(0, 0, 20), place(90, 0, 20)]);
        assert_eq!(looked(&branch, obstacle(main.clone(), true)), []);
        let main_run = run(&[(Direction::Right, 60)]);
        let up = Body::Line(vec![place(30, 0, 20), place(30, 0, 50)]);
        assert_eq!(looked(&main_run, obstacle(up, true)), []);
        let back = run(&[
            (Direction::Up, 8),
            (Direction::Right, 8),
            (Direction::Down, 20),
        ]);
        let clashes = looked(&back, obstacle(main, true));
        assert_eq!((clashes.len(), clashes[0].leg), (1, 2));
    }

    #[test]
    fn a_run_ends_in_its_own_valve_and_not_in_an_outlet() {
        let ask = run(&[(Direction::Up, 20)]);
        let valve = window(8, 12, 38, 46);
        assert_eq!(looked(&ask, obstacle(valve.clone(), true)), []);
        assert!(looked(&ask, obstacle(valve, false))[0].is_through());
        let point = Body::Flat(vec![place(11, 0, 30)]);
        assert_eq!(looked(&ask, obstacle(point, false)).len(), 1);
    }
}
