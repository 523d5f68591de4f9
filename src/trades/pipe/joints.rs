//! Joints: how many, what they take, how long they wait, and what holds the pipe.

use std::collections::BTreeMap;

use super::ask::Ask;
use super::fitting::Port;
use super::walk::Walk;
use crate::handbook::pipe::{
    CURE_TEXTBOOK, Cure, DAMP, FLUX_SHARE, Family, Kind, Pipe, SOLDER_DENSITY, SOLDER_SLACK, Size,
    Turn, cement_joints, cure_by, expansion, solder,
};
use crate::measure::Length;
use crate::measure::quantity::{Mass, Volume, gallons, pounds};

/// A fitting to have, as it is asked for over the counter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Item {
    /// Whose fitting it is.
    pub family: Family,
    /// What it is.
    pub kind: Kind,
    /// How far it turns, where it is a bend.
    pub turn: Option<Turn>,
    /// Its larger size.
    pub size: Size,
    /// Its smaller size, the same where it does not reduce.
    pub other: Size,
    /// One end is a spigot.
    pub street: bool,
}

/// Fittings of the run by kind. The one that it starts at belongs to what stands there, and a valve that it ends at
/// serves other runs as well: neither is among them.
pub(super) fn items(ask: &Ask, walk: &Walk, lines: u32) -> Vec<(Item, u32)> {
    let mut found: BTreeMap<Item, u32> = BTreeMap::new();
    for (at, node) in walk.nodes.iter().enumerate().skip(1) {
        let Some((fitting, shape)) = node.fitting.zip(node.sides[0]) else {
            continue;
        };
        if at + 1 == walk.nodes.len() && shape.kind == Kind::Valve {
            continue;
        }
        let item = Item {
            family: shape.family,
            kind: shape.kind,
            turn: node.turn,
            size: shape.size.max(shape.other),
            other: shape.size.min(shape.other),
            street: fitting.street.is_some(),
        };
        *found.entry(item).or_default() += lines;
    }
    for (leg, one) in ask.legs.iter().enumerate() {
        if one.couplings > 0 {
            let size = ask.size_of(leg);
            let item = Item {
                family: ask.pipe.family(),
                kind: Kind::Coupling,
                turn: None,
                size,
                other: size,
                street: false,
            };
            *found.entry(item).or_default() += one.couplings * lines;
        }
    }
    found.into_iter().collect()
}

/// Joints by size: every end in a hub is one, and a coupling within a leg makes two.
pub(super) fn joints(ask: &Ask, walk: &Walk, lines: u32) -> Vec<(Size, u32)> {
    let mut found: BTreeMap<Size, u32> = BTreeMap::new();
    for (leg, one) in ask.legs.iter().enumerate() {
        let ends = walk.ends(leg);
        let street = ends.iter().flatten().any(|end| end.port == Port::Spigot);
        let hubs = ends.iter().flatten().filter(|end| end.port != Port::Spigot);
        let made = hubs.count() as u32 + if street { 0 } else { 2 * one.couplings };
        *found.entry(ask.size_of(leg)).or_default() += made * lines;
    }
    found.retain(|_, count| *count > 0);
    found.into_iter().collect()
}

/// What soldered joints take.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SolderNeed {
    /// Wire of 1/8 in that goes into the joints.
    pub wire: Length,
    /// Wire to have.
    pub to_buy: Length,
    /// Its mass.
    pub mass: Mass,
    /// Flux for it.
    pub flux: Mass,
}

/// Solder and flux of copper joints: `Σ joints · wire of their size`, bought twice over; flux 2 oz to the pound.
///
/// `None` where a size has no cup printed.
///
/// # Source
/// Copper Tube Handbook, table 14.10; the second helping is its column for a gap of 0.010 in.
/// # Example
/// ```
/// use storyrod::{handbook::pipe::Size, trades::pipe::solder_for};
/// let need = solder_for(&[(Size::ThreeQuarters, 1)]).unwrap();
/// assert!((need.wire.in_inches() - 0.840).abs() < 0.0005);
/// ```
#[must_use]
pub fn solder_for(joints: &[(Size, u32)]) -> Option<SolderNeed> {
    let wires = joints
        .iter()
        .map(|(size, count)| Some(solder(*size)?.wire.value * i64::from(*count)));
    let wire: Length = wires.collect::<Option<Vec<_>>>()?.into_iter().sum();
    let to_buy = wire * SOLDER_SLACK.value;
    let section = std::f64::consts::FRAC_PI_4 / 64.0;
    let mass = pounds(to_buy.in_inches() * section * SOLDER_DENSITY.value);
    Some(SolderNeed {
        wire,
        to_buy,
        mass,
        flux: mass * FLUX_SHARE.value,
    })
}

/// Cement, and primer for it: `Σ joints ÷ joints a quart`; primer half of that. `None` where a size is not listed.
///
/// # Source
/// A maker's manual, p. 96; 1 1/4 in from memory.
/// # Example
/// ```
/// use storyrod::{handbook::pipe::Size, measure::quantity::in_gallons, trades::pipe::cement_for};
/// let (cement, primer) = cement_for(&[(Size::Two, 60)]).unwrap();
/// assert!((in_gallons(cement) - 0.25).abs() < 1e-9 && (in_gallons(primer) - 0.125).abs() < 1e-9);
/// ```
#[must_use]
pub fn cement_for(joints: &[(Size, u32)]) -> Option<(Volume, Volume)> {
    let shares = joints
        .iter()
        .map(|(size, count)| Some(f64::from(*count) / cement_joints(*size)?.value));
    let quarts: f64 = shares.collect::<Option<Vec<_>>>()?.into_iter().sum();
    Some((gallons(quarts / 4.0), gallons(quarts / 8.0)))
}

/// The longest published wait before a cemented joint is tested; half as long again in damp air by the makers' tables.
///
/// `None` outside the temperatures of the tables.
///
/// # Source
/// Two makers' tables, which differ by 4 to 96 times, and a textbook's 24 h; the label governs.
/// # Example
/// ```
/// use storyrod::{handbook::pipe::Size, trades::pipe::longest_cure};
/// assert_eq!(longest_cure(Size::Four, 30.0, true).unwrap().hours, 108.0);
/// ```
#[must_use]
pub fn longest_cure(size: Size, fahrenheit: f64, damp: bool) -> Option<Cure> {
    let longer = if damp { 1.0 + DAMP.value } else { 1.0 };
    let tables = cure_by(size, fahrenheit)?.map(|cure| Cure {
        hours: cure.hours * longer,
        ..cure
    });
    let longest = |a: Cure, b: Cure| if b.hours > a.hours { b } else { a };
    Some(tables.into_iter().fold(CURE_TEXTBOOK, longest))
}

/// How much a run grows: `α · length · warming`. `None` for a pipe whose figure was not looked up.
///
/// # Source
/// Copper Tube Handbook; guides to plastic pipe.
/// # Example
/// ```
/// use storyrod::{handbook::pipe::Pipe, measure::Length, trades::pipe::growth};
/// let copper = growth(Pipe::CopperL, Length::feet(100), 100.0).unwrap();
/// assert!((copper.in_inches() - 1.128).abs() < 0.0005);
/// ```
#[must_use]
pub fn growth(pipe: Pipe, length: Length, warms: f64) -> Option<Length> {
    Length::from_metres(length.metres() * expansion(pipe)?.value * warms)
}
