//! What is taken, and what is not.

use super::ask::{Ask, By, Mark, Way};
use super::problem::{Field, Problem};
use crate::handbook::pipe::tube;
use crate::measure::quantity::fahrenheit;
use crate::measure::{Amount, Angle, Length};
use crate::trades::limits::{length, within};

/// The most legs of a run.
pub const MOST_LEGS: usize = 60;
/// The shortest and the longest that a tape says of a leg.
pub const LEG: (Length, Length) = (Length::nm(100_000), Length::feet(300));
/// How far a pipe goes on beyond a wall, or ends before it.
pub const BEYOND: (Length, Length) = (Length::inches(-24), Length::inches(24));
/// How far an offset is set over or rolled.
pub const SET: (Length, Length) = (Length::mm(1), Length::feet(40));
/// The most couplings in a leg.
pub const MOST_COUPLINGS: u32 = 20;
/// From the centre of a fitting to its face.
pub const FACE: (Length, Length) = (Length::ZERO, Length::inches(24));
/// How far off a cut may be.
pub const TAPE: (Length, Length) = (Length::ZERO, Length::inches(1));
/// What a hand cutter takes.
pub const JAW: (Length, Length) = (Length::mm(3), Length::inches(12));
/// How long a stick is, or a coil.
pub const STICK: (Length, Length) = (Length::feet(1), Length::feet(1_000));
/// °F where joints are made.
pub const AIR: (f64, f64) = (-20.0, 130.0);
/// By how many °F a pipe is warmed.
pub const WARMS: (f64, f64) = (0.0, 1_000.0);
/// How far lines are apart.
pub const APART: (Length, Length) = (Length::mm(3), Length::feet(4));
/// The most lines.
pub const MOST_LINES: u32 = 12;

/// Every figure of the ask within its limits.
pub(super) fn checked(ask: &Ask) -> Result<(), Problem> {
    let count = ask.legs.len();
    within(
        count <= MOST_LEGS,
        Field::Legs,
        Amount::Count(1),
        Amount::Count(MOST_LEGS as i64),
    )?;
    for leg in 0..count {
        leg_checked(ask, leg)?;
    }
    for (at, own) in ask.fittings.iter().enumerate() {
        length(Field::Face(at), own.face, FACE)?;
        if let Some(depth) = own.depth {
            length(Field::Depth(at), depth, (Length::ZERO, own.face))?;
        }
    }
    length(Field::Tape, ask.tape, TAPE)?;
    length(Field::Stick, ask.stick, STICK)?;
    if let Some(jaw) = ask.jaw {
        length(Field::Jaw, jaw, JAW)?;
    }
    within(
        (AIR.0..=AIR.1).contains(&ask.air),
        Field::Air,
        Amount::Temperature(fahrenheit(AIR.0)),
        Amount::Temperature(fahrenheit(AIR.1)),
    )?;
    if let Some(warms) = ask.warms {
        let inside = (WARMS.0..=WARMS.1).contains(&warms);
        within(
            inside,
            Field::Warms,
            Amount::Number(WARMS.0),
            Amount::Number(WARMS.1),
        )?;
    }
    if let Some(lines) = ask.lines {
        length(Field::Apart, lines.apart, APART)?;
        within(
            (1..=MOST_LINES).contains(&lines.count),
            Field::Lines,
            Amount::Count(1),
            Amount::Count(i64::from(MOST_LINES)),
        )?;
    }
    let inside = (Angle::ZERO..=Angle::RIGHT).contains(&ask.mitre);
    within(
        inside,
        Field::Mitre,
        Amount::Angle(Angle::ZERO),
        Amount::Angle(Angle::RIGHT),
    )
}

fn leg_checked(ask: &Ask, leg: usize) -> Result<(), Problem> {
    let one = ask.legs[leg];
    let (pipe, size) = (ask.pipe, ask.size_of(leg));
    if tube(pipe, size).is_none() {
        return Err(Problem::NoSuchSize { leg, pipe, size });
    }
    if let By::Tape {
        length: said,
        from,
        to,
    } = one.by
    {
        length(Field::Length(leg), said, LEG)?;
        for mark in [from, to] {
            if let Mark::Wall(beyond) = mark {
                length(Field::Beyond(leg), beyond, BEYOND)?;
            }
        }
    }
    if let Way::Offset {
        set, angle, over, ..
    } = one.way
    {
        length(Field::Set(leg), set, SET)?;
        if let Some((_, roll)) = over {
            length(Field::Roll(leg), roll, SET)?;
        }
        let least = Angle::degrees(1);
        let inside = (least..=Angle::RIGHT).contains(&angle);
        within(
            inside,
            Field::Angle(leg),
            Amount::Angle(least),
            Amount::Angle(Angle::RIGHT),
        )?;
    }
    within(
        one.couplings <= MOST_COUPLINGS,
        Field::Couplings(leg),
        Amount::Count(0),
        Amount::Count(i64::from(MOST_COUPLINGS)),
    )
}
