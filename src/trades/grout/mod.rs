//! Grout and sealant of a tiled area: how much is in the joints, what is mixed with it, and what is left to sealant.

mod answer;
mod ask;
mod findings;
mod joints;
pub mod limits;
mod order;
#[cfg(test)]
mod tests;

pub use answer::figure;
pub use ask::{Ask, Field, JointOf, Label, Meeting, Problem, Seam};
pub use joints::{
    grid_fraction, hexagon_fraction, job_mix, kind_for, mass_for, overstatement, product_fraction,
    sealant_for,
};

use crate::measure::quantity::{Area, Mass, MassDensity, Volume};
use crate::measure::{Amount, Length};
use crate::trades::{Account, Grout, Order};

/// What the grouting takes.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Which grout.
    pub kind: Grout,
    /// Share of the area that is joint, exact.
    pub fraction: f64,
    /// The same by the product form, as a cross-check; always more.
    pub product_fraction: Option<f64>,
    /// The joints' volume, net.
    pub volume: Volume,
    /// Powder in a volume of joint.
    pub density: MassDensity,
    /// Powder, net.
    pub net: Mass,
    /// Powder with the waste chosen.
    pub mass: Mass,
    /// The bag that coverage, count and water are said for.
    pub bag: Mass,
    /// What that bag covers, nothing wasted.
    pub bag_covers: Area,
    /// How many such bags, unrounded, with the waste.
    pub bags: f64,
    /// Water for one bag, from and to; `None` where only the bag tells.
    pub water: Option<(Volume, Volume)>,
    /// Minutes of rest before it is stirred again: `Amount::Range` of `Amount::Minutes`.
    pub slake: Amount,
    /// Hours that a mix can be used.
    pub pot_life: Amount,
    /// Hours between setting and grouting.
    pub wait: Amount,
    /// How deep the joint is open when grout goes in, at least.
    pub open: Length,
    /// Parts of fine sand to one of cement, where it is mixed on the job.
    pub job_mix: u8,
    /// Sealant of each seam, in their order, net.
    pub seams: Vec<Volume>,
    /// All sealant with the waste chosen.
    pub sealant: Volume,
    /// What is done, in this order.
    pub order: Vec<Order>,
    /// Working, findings, cautions, needs.
    pub account: Account,
}
