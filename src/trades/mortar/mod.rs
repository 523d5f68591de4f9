//! Mortar: what tile is set in, sloped and level beds, what is mixed from cement, lime and sand, and batch by batch.

mod answer;
mod ask;
mod batch;
mod bed;
mod findings;
pub mod limits;
mod order;
mod setting;
mod site_mix;
#[cfg(test)]
mod tests;

pub use answer::figure;
pub use ask::{
    Ask, Batch, Bed, Drain, Fall, Field, Label, Mix, Notch, NotchShape, Parts, Place, Problem,
    Setting, Shrink, Under, Wall, Work,
};
pub use batch::{water_for, yields};
pub use bed::{linear_bed, point_bed};
pub use setting::{comb, coverage, ridge_bed, suggested_notch};
pub use site_mix::{absolute_factor, absolute_volume, factor, mixed};

use crate::measure::quantity::{Area, Mass, Volume};
use crate::measure::{Amount, Length};
use crate::trades::{Account, Order};

/// What the work takes.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Mortar in place, net.
    pub volume: Volume,
    /// The same with the waste chosen.
    pub mixed: Volume,
    /// What is mixed, with the waste chosen: dry things, by mass and by volume.
    pub dry: Vec<Measured>,
    /// Water for all of it, from and to; `None` where only bag or hand tells.
    pub water: Option<(Volume, Volume)>,
    /// Setting tile: comb, bed, contact.
    pub setting: Option<SettingFigure>,
    /// A bed: its depths and its falls.
    pub bed: Option<BedFigure>,
    /// Site-mixed: the ways of counting, side by side.
    pub conventions: Vec<Convention>,
    /// Batch by batch.
    pub batches: Batches,
    /// What is done, in this order.
    pub order: Vec<Order>,
    /// Working, findings, cautions, needs.
    pub account: Account,
}

/// One thing that is put into the mix.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// What.
    pub what: Ingredient,
    /// By weight; sand weighed dry.
    pub mass: Mass,
    /// By loose volume; sand as its convention measures it.
    pub volume: Volume,
}

/// What goes into a mix beside water.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ingredient {
    /// Setting mortar out of the bag.
    Powder,
    /// Bagged bed mix.
    BedMix,
    /// Portland cement.
    Cement,
    /// Hydrated lime.
    Lime,
    /// Sand.
    Sand,
}

/// Mortar under tile.
#[derive(Clone, Debug, PartialEq)]
pub struct SettingFigure {
    /// Mortar that the comb leaves at 90°, as a bed of even thickness.
    pub upright: Length,
    /// The same at 45°.
    pub leaning: Length,
    /// What a bag covers, the least and the most; equal where one figure stands.
    pub covers: (Area, Area),
    /// Where that stands.
    pub by: CoverageBy,
    /// What a bag covers by the comb at 45°, as a cross-check.
    pub by_comb: Area,
    /// Powder by the comb at 45°, skim and all, net.
    pub powder_by_comb: Mass,
    /// Powder, net: at the least coverage, with the skim.
    pub powder: Mass,
    /// The skim on the backs, its mortar.
    pub skim: Volume,
    /// Share of the tile that mortar has to touch.
    pub contact: f64,
}

/// What a bag's coverage is taken from, the best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CoverageBy {
    /// The bag itself.
    Label,
    /// How-to articles' table: low authority.
    BagTable,
    /// The comb at 45°.
    Comb,
}

/// A bed: how deep it is where, and how it falls.
#[derive(Clone, Debug, PartialEq)]
pub struct BedFigure {
    /// Its area.
    pub area: Area,
    /// How much higher the rim is than the drain.
    pub rise: Length,
    /// Thickness taken over the whole area.
    pub mean: Length,
    /// Drain, corners and sides with their depth, from the left near corner.
    pub spots: Vec<Spot>,
    /// The falls from corners and sides to the drain.
    pub runs: Vec<Run>,
}

/// A place on the bed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// Which place.
    pub what: SpotKind,
    /// From the left side.
    pub across: Length,
    /// From the near side.
    pub up: Length,
    /// How thick the bed is there.
    pub depth: Length,
}

/// What place it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpotKind {
    /// The drain, or an end of it.
    Drain,
    /// A corner.
    Corner,
    /// On a side, square across from the drain.
    Side,
}

/// A fall to the drain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Run {
    /// Where it starts: a place in [`BedFigure::spots`].
    pub from: usize,
    /// How far it is to the drain.
    pub length: Length,
    /// Rise over run.
    pub slope: f64,
}

/// A way of counting the dry volume of wet mortar, and what it comes to, net.
#[derive(Clone, Debug, PartialEq)]
pub struct Convention {
    /// Which.
    pub by: Shrink,
    /// Dry volume for one of wet mortar.
    pub factor: f64,
    /// Cement, lime where there is any, and sand.
    pub dry: Vec<Measured>,
    /// The one that is mixed and bought by.
    pub used: bool,
}

/// The mixing, batch by batch.
#[derive(Clone, Debug, PartialEq)]
pub struct Batches {
    /// How many.
    pub count: u32,
    /// Mortar of a full batch.
    pub each: Volume,
    /// Mortar of the last one.
    pub last: Volume,
    /// What sets the size of a batch.
    pub held_by: HeldBy,
    /// What a full batch is mixed from.
    pub dry: Vec<Measured>,
    /// Water for a full batch, from and to.
    pub water: Option<(Volume, Volume)>,
    /// The same on the scale.
    pub water_weighs: Option<(Mass, Mass)>,
    /// Area that a full batch does; `None` for a bare volume.
    pub area: Option<Area>,
    /// Minutes of work that one batch allows.
    pub minutes: f64,
    /// Minutes of rest before it is stirred again: `Amount::Range` of `Amount::Minutes`.
    pub slake: Amount,
    /// The fastest that the paddle turns, a minute.
    pub most_turns: i64,
}

/// What sets the size of a batch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeldBy {
    /// What the bucket holds.
    Bucket,
    /// What is laid before it stiffens.
    Time,
    /// Everything goes in one.
    All,
}
