//! The way that a run goes: its headings, the turns between them, and which opening of which fitting meets which leg.

use super::ask::{Ask, By, Place, Way};
use super::fitting::{Fitting, Port, Shape, Side};
use super::offset::offset;
use super::problem::Problem;
use crate::handbook::pipe::{Kind, Size, Turn};
use crate::measure::{Angle, Length};

/// Right, forward, up; of length one.
pub(super) type Heading = [f64; 3];

/// Between two legs, or at an end of the run.
#[derive(Clone, Copy, Debug)]
pub(super) struct Node {
    /// What is there.
    pub fitting: Option<Fitting>,
    /// How far the run turns.
    pub turn: Option<Turn>,
    /// The opening before and the one after.
    pub sides: [Option<Shape>; 2],
}

/// A run whose ways fit together.
#[derive(Clone, Debug)]
pub(super) struct Walk {
    /// Of each leg.
    pub headings: Vec<Heading>,
    /// One more than legs.
    pub nodes: Vec<Node>,
}

impl Walk {
    /// The openings that a leg stands between.
    pub fn ends(&self, leg: usize) -> [Option<Shape>; 2] {
        [self.nodes[leg].sides[1], self.nodes[leg + 1].sides[0]]
    }
}

pub(super) fn dot(a: Heading, b: Heading) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}
pub(super) fn cross(a: Heading, b: Heading) -> Heading {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}
pub(super) fn plus(a: Heading, b: Heading, times: f64) -> Heading {
    [
        a[0] + b[0] * times,
        a[1] + b[1] * times,
        a[2] + b[2] * times,
    ]
}

/// How far a length along a heading goes along each axis; exact where the heading is an axis.
pub(super) fn along(span: Length, heading: Heading) -> Place {
    Place::of(heading.map(|part| match part {
        0.0 => Length::ZERO,
        1.0 => span,
        -1.0 => -span,
        part => Length::from_metres(span.metres() * part).unwrap_or_default(),
    }))
}

/// The heading of a leg; `None` where an offset's ways are along one line.
pub(super) fn heading(way: Way) -> Option<Heading> {
    let (keeps, to, angle, set, over) = match way {
        Way::Along(direction) => return Some(direction.vector()),
        Way::Offset {
            along,
            to,
            angle,
            set,
            over,
        } => (along, to, angle, set, over),
    };
    if !keeps.across(to) {
        return None;
    }
    let aside = match over {
        None => to.vector(),
        Some((over, roll)) => {
            if !over.across(keeps) || !over.across(to) {
                return None;
            }
            let across = set.metres().hypot(roll.metres());
            if across <= 0.0 {
                return None;
            }
            let part = |length: Length| length.metres() / across;
            plus(
                to.vector().map(|axis| axis * part(set)),
                over.vector(),
                part(roll),
            )
        }
    };
    let (sine, cosine) = angle.sin_cos();
    Some(plus(keeps.vector().map(|axis| axis * cosine), aside, sine))
}

/// The heading of a leg; the way that it keeps where its offset has none.
pub(super) fn way_of(way: Way) -> Heading {
    let (Way::Along(keeps) | Way::Offset { along: keeps, .. }) = way;
    heading(way).unwrap_or(keeps.vector())
}

/// The turn from one heading to the next.
pub(super) fn turn_between(from: Heading, to: Heading) -> Angle {
    let across = cross(from, to);
    let degrees = dot(across, across).sqrt().atan2(dot(from, to)).to_degrees();
    Angle::from_degrees(degrees).unwrap_or_default()
}

/// Fittings turn as they are made; a hundredth of a degree is arithmetic.
const SAME: i64 = 10_000;

fn same(a: Angle, b: Angle) -> bool {
    (a - b).as_microdegrees().abs() <= SAME
}

/// The ways of a run, checked leg by leg.
pub(super) fn walk(ask: &Ask) -> Result<Walk, Problem> {
    let last = ask.legs.len().checked_sub(1).ok_or(Problem::NoLegs)?;
    let mut headings = Vec::new();
    for (leg, one) in ask.legs.iter().enumerate() {
        let heading = heading(one.way).ok_or(Problem::NotAside { leg })?;
        if one.by == By::Set && matches!(one.way, Way::Along(_)) {
            return Err(Problem::NotAside { leg });
        }
        headings.push(heading);
    }
    let mut nodes = vec![end(ask, ask.start, 0, Side::After)];
    for leg in 0..last {
        let fitting = ask.legs[leg].end.ok_or(Problem::NoFitting { leg })?;
        let angle = turn_between(headings[leg], headings[leg + 1]);
        let sizes = [ask.size_of(leg), ask.size_of(leg + 1)];
        nodes.push(between(ask, fitting, angle, sizes, leg + 1)?);
    }
    nodes.push(end(ask, ask.legs[last].end, last, Side::Before));
    Ok(Walk { headings, nodes })
}

fn shape(ask: &Ask, fitting: Fitting, turn: Option<Turn>, sizes: [Size; 2], side: Side) -> Shape {
    let port = if fitting.street == Some(side) {
        Port::Spigot
    } else if fitting.kind.branches() && fitting.branch == Some(side) {
        Port::Branch
    } else {
        Port::Run
    };
    let [size, other] = match side {
        Side::Before => sizes,
        Side::After => [sizes[1], sizes[0]],
    };
    Shape {
        family: ask.pipe.family(),
        kind: fitting.kind,
        turn,
        size,
        other,
        port,
    }
}

/// A fitting that a run starts or ends at.
fn end(ask: &Ask, fitting: Option<Fitting>, leg: usize, side: Side) -> Node {
    let turn = fitting.and_then(|fitting| {
        fitting
            .kind
            .bends()
            .then(|| fitting.turn.unwrap_or(Turn::Quarter))
    });
    let size = ask.size_of(leg);
    let opening = fitting.map(|fitting| shape(ask, fitting, turn, [size, size], side));
    Node {
        fitting,
        turn,
        sides: match side {
            Side::Before => [opening, None],
            Side::After => [None, opening],
        },
    }
}

/// A fitting between two legs; `leg` is the one after it.
fn between(
    ask: &Ask,
    fitting: Fitting,
    angle: Angle,
    sizes: [Size; 2],
    leg: usize,
) -> Result<Node, Problem> {
    let kind = fitting.kind;
    if matches!(kind, Kind::Cap | Kind::Flange | Kind::Trap) {
        return Err(Problem::EndsRun { leg: leg - 1, kind });
    }
    let straight = same(angle, Angle::ZERO);
    if kind.bends() && straight {
        return Err(Problem::NoTurn { leg });
    }
    let turns: &[Turn] = match kind {
        Kind::Bend => &Turn::ALL,
        Kind::LongBend | Kind::Tee | Kind::SanitaryTee | Kind::Valve => &[Turn::Quarter],
        Kind::Wye => &[Turn::Eighth],
        _ => &[],
    };
    let turn = turns.iter().find(|turn| same(turn.angle(), angle));
    if !straight && turn.is_none() {
        let off = |turn: &&Turn| (turn.angle() - angle).as_microdegrees().abs();
        let nearest = turns.iter().min_by_key(off);
        return Err(Problem::NoSuchTurn {
            leg,
            angle,
            nearest: nearest.map_or(Angle::ZERO, |turn| turn.angle()),
        });
    }
    // A tee that turns has the run in its branch on one side; straight through, on neither.
    let fitting = Fitting {
        branch: if kind.branches() && !straight {
            fitting.branch.or(Some(Side::After))
        } else {
            None
        },
        ..fitting
    };
    let reduces = matches!(kind, Kind::Reducer | Kind::Adapter) || fitting.branch.is_some();
    if sizes[0] != sizes[1] && !reduces {
        return Err(Problem::NoReducer {
            leg,
            from: sizes[0],
            to: sizes[1],
        });
    }
    let turn = turn.copied().filter(|_| kind.bends());
    let side = |side| Some(shape(ask, fitting, turn, sizes, side));
    Ok(Node {
        fitting: Some(fitting),
        turn,
        sides: [side(Side::Before), side(Side::After)],
    })
}

/// A foot, for a leg whose length is not known yet.
const UNKNOWN: Length = Length::feet(1);

/// About where every fitting is, for a sketch: also of a run that has no figure yet.
///
/// # Source
/// What the tape said, as if it were from centre to centre; nothing is cut by it.
/// # Example
/// ```
/// use storyrod::trades::pipe::{Ask, sketch};
/// assert_eq!(sketch(&Ask::default()).len(), 1);
/// ```
#[must_use]
pub fn sketch(ask: &Ask) -> Vec<Place> {
    let mut at = Place::default();
    let mut places = vec![at];
    for leg in &ask.legs {
        let span = match (leg.by, leg.way) {
            (By::Tape { length, .. }, _) if length.is_positive() => length,
            (
                By::Set,
                Way::Offset {
                    set, over, angle, ..
                },
            ) => {
                let roll = over.map_or(Length::ZERO, |(_, roll)| roll);
                offset(set, roll, angle).map_or(UNKNOWN, |offset| offset.travel)
            }
            _ => UNKNOWN,
        };
        at = at.plus(along(span, way_of(leg.way)));
        places.push(at);
    }
    places
}
