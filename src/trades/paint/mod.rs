//! Paint: how much of each, how thick, how far the roller reaches, and what to mind.

mod answer;
mod ask;
pub mod film;
mod findings;
pub mod limits;
mod lots;
mod order;
mod reach;
#[cfg(test)]
mod tests;

pub use answer::figure;
pub use lots::{counted_area, paint_for, painted_area};
pub use reach::pole;

pub use ask::{
    Ask, Binder, Built, Coats, Field, Part, Problem, Product, Reach, Sheen, Surface, Texture, Trim,
};

use crate::measure::quantity::{Area, SpreadRate, ThermodynamicTemperature, Volume};
use crate::measure::{Amount, Length};
use crate::trades::{Account, Order};

/// What the painting takes.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Primer, all of it.
    pub primer: Volume,
    /// Paint of the walls.
    pub walls: Volume,
    /// Paint of the ceilings.
    pub ceiling: Volume,
    /// Paint of the trim.
    pub trim: Volume,
    /// Each surface and product with its area, its rate and its share of the volumes.
    pub lots: Vec<Lot>,
    /// A coat of the finish just rolled out.
    pub wet_film: Option<Length>,
    /// The same coat when dry; known where the solids are.
    pub dry_film: Option<Length>,
    /// The pole for the highest surface, where a height is given.
    pub pole: Option<PoleAnswer>,
    /// Edges cut in with a brush, once round.
    pub cut_in: Length,
    /// Nap of the roller cover, from and to, for the roughest surface.
    pub nap: (Length, Length),
    /// Hours until the next coat: `Amount::Range` of `Amount::Hours`.
    pub recoat: Amount,
    /// Air and surface, from and to.
    pub temperature: (ThermodynamicTemperature, ThermodynamicTemperature),
    /// What is done, in this order.
    pub order: Vec<Order>,
    /// Working, findings, cautions, needs.
    pub account: Account,
}

/// What a lot of paint is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// Primer.
    Primer,
    /// Finish of a wall.
    Wall,
    /// Finish of a ceiling.
    Ceiling,
    /// Finish of trim.
    Trim,
}

/// One product on one surface.
#[derive(Clone, Debug, PartialEq)]
pub struct Lot {
    /// What it is for.
    pub purpose: Purpose,
    /// The surface's name.
    pub name: String,
    /// One coat's area.
    pub area: Area,
    /// How many coats.
    pub coats: u8,
    /// The rate that it is figured with.
    pub rate: SpreadRate,
    /// The least and the most that the sources give; equal where one figure stands.
    pub range: (SpreadRate, SpreadRate),
    /// All coats.
    pub volume: Volume,
    /// All coats at the most and at the least of `range`: the least and the most paint.
    pub volume_range: (Volume, Volume),
}

/// How far the roller has to go, and what holds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PoleAnswer {
    /// How high the surface is.
    pub height: Length,
    /// How high the hands are held.
    pub hands: Length,
    /// From hands to roller.
    pub reach: Length,
    /// The pole itself, the roller frame off.
    pub needed: Length,
    /// What to take.
    pub pole: Pole,
    /// Whether rolling it takes a ladder or a platform.
    pub ladder: bool,
}

/// Extension poles as they are sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pole {
    /// None: the arm and the frame are enough.
    None,
    /// 2 to 4 ft.
    Short,
    /// 4 to 8 ft.
    Long,
    /// Longer than 8 ft.
    Beyond,
}
