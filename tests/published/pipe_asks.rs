//! Runs as a page describes them, and fittings measured as a page prints them.

use storyrod::handbook::pipe::{Family, Kind, Pipe, Size, Turn};
use storyrod::measure::Length;
use storyrod::trades::pipe::{
    Ask, By, Direction, Figure, Fitting, Leg, Mark, Measured, Port, Shape, Way, figure,
};

/// A leg straight on, by the tape from a mark to a mark, to an elbow.
pub fn leg(way: Direction, length: Length, from: Mark, to: Mark) -> Leg {
    Leg {
        way: Way::Along(way),
        size: None,
        by: By::Tape { length, from, to },
        couplings: 0,
        end: Some(Fitting::of(Kind::Bend)),
    }
}

/// One piece between two fittings, the run turning at neither of them.
pub fn between(pipe: Pipe, size: Size, start: Kind, end: Kind, by: (Length, Mark, Mark)) -> Ask {
    let (length, from, to) = by;
    let mut leg = leg(Direction::Right, length, from, to);
    leg.end = Some(Fitting::of(end));
    Ask {
        pipe,
        size,
        start: Some(Fitting::of(start)),
        legs: vec![leg],
        ..Ask::default()
    }
}

/// A fitting by its take-off and the depth of its hub.
pub fn fitting(
    (family, kind, turn): (Family, Kind, Option<Turn>),
    size: Size,
    take_off: Length,
    depth: Length,
) -> Measured {
    Measured {
        shape: Shape {
            family,
            kind,
            turn,
            size,
            other: size,
            port: Port::Run,
        },
        face: take_off + depth,
        depth: Some(depth),
    }
}

/// The pieces of a run, in inches.
pub fn cuts(ask: &Ask) -> Vec<f64> {
    let figure: Figure = figure(ask).unwrap();
    let cuts = figure.pieces.iter().map(|piece| piece.cut.in_inches());
    cuts.collect()
}
