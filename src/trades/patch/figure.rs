//! What comes out: the method, the saw lines, the piece, what carries it and what it takes.

use super::{Field, Method};
use crate::handbook::Cite;
use crate::measure::quantity::Volume;
use crate::measure::{Length, Phrase};
use crate::trades::{Account, Order};

/// A rectangle in the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rect {
    /// Its left edge.
    pub left: Length,
    /// Its right edge.
    pub right: Length,
    /// Its lower edge.
    pub bottom: Length,
    /// Its upper edge.
    pub top: Length,
}

impl Rect {
    /// Across.
    #[must_use]
    pub fn width(&self) -> Length {
        self.right - self.left
    }
    /// Up.
    #[must_use]
    pub fn height(&self) -> Length {
        self.top - self.bottom
    }
    /// Both lie over one another by more than an edge.
    #[must_use]
    pub fn overlaps(&self, other: &Rect) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.bottom < other.top
            && other.bottom < self.top
    }
    /// `other` lies inside, edges allowed.
    #[must_use]
    pub fn covers(&self, other: &Rect) -> bool {
        self.left <= other.left
            && self.right >= other.right
            && self.bottom <= other.bottom
            && self.top >= other.top
    }
    /// Smaller by `by` on every side.
    #[must_use]
    pub fn inset(&self, by: Length) -> Rect {
        Rect {
            left: self.left + by,
            right: self.right - by,
            bottom: self.bottom + by,
            top: self.top - by,
        }
    }
    /// Its middle, across and up.
    #[must_use]
    pub fn middle(&self) -> (Length, Length) {
        (
            self.left + self.width().half(),
            self.bottom + self.height().half(),
        )
    }
    /// The smallest rectangle over both.
    #[must_use]
    pub fn with(&self, other: &Rect) -> Rect {
        Rect {
            left: self.left.min(other.left),
            right: self.right.max(other.right),
            bottom: self.bottom.min(other.bottom),
            top: self.top.max(other.top),
        }
    }
}

/// What a strip of wood behind the board is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StripKind {
    /// Behind the old board and the piece, screwed through both.
    Backing,
    /// Between two studs, behind an edge.
    Blocking,
    /// Along a corner or an opening, fixed to the framing there.
    Cleat,
}

/// A piece of wood to cut and where it goes.
#[derive(Clone, Debug, PartialEq)]
pub struct Strip {
    /// What it is.
    pub kind: StripKind,
    /// What it covers in the wall.
    pub at: Rect,
    /// Its length as cut.
    pub length: Length,
    /// It stands upright; otherwise it lies level.
    pub upright: bool,
    /// Actual thickness and width of the wood it is cut from.
    pub lumber: (Length, Length),
}

/// Time that has to pass.
#[derive(Clone, Debug, PartialEq)]
pub struct Wait {
    /// What is waited for.
    pub what: Phrase,
    /// How long, in hours.
    pub hours: f64,
    /// Where that stands.
    pub cite: Cite,
}

/// One look into the wall before the next larger one.
#[derive(Clone, Debug, PartialEq)]
pub struct Look {
    /// How large the hole to look through is.
    pub across: Length,
    /// Its middle, across and up.
    pub at: (Length, Length),
    /// What it is for.
    pub says: Phrase,
}

/// Small before large: the looks into the wall before the opening is cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Inspection {
    /// The looks, smallest first; none is larger than the opening.
    pub looks: Vec<Look>,
    /// Where that stands.
    pub cite: Cite,
}

/// How to mend one hole.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// How.
    pub method: Method,
    /// Why so.
    pub why: Phrase,
    /// What would work as well.
    pub also_possible: Vec<Method>,
    /// What has to be measured before there are saw lines; empty where all is known.
    pub missing: Vec<Field>,
    /// Distances across are from the wall's left corner; otherwise from the hole's left edge.
    pub from_corner: bool,
    /// Heights are from the floor; otherwise from the hole's lower edge.
    pub from_floor: bool,
    /// The damage, with every hole that one piece covers.
    pub damage: Rect,
    /// The saw lines.
    pub opening: Option<Rect>,
    /// The piece of board, across and up.
    pub piece: Option<(Length, Length)>,
    /// The side of a self-adhesive patch.
    pub patch_side: Option<Length>,
    /// Centres of the studs that carry an edge.
    pub studs_used: Vec<Length>,
    /// Centres of the studs that the opening crosses.
    pub studs_crossed: Vec<Length>,
    /// From the saw line to the far face of the stud, at the left and at the right.
    pub bearing: Option<(Length, Length)>,
    /// Strips, blocking and cleats.
    pub backing: Vec<Strip>,
    /// The screws, across and up.
    pub screws: Vec<(Length, Length)>,
    /// Length of a screw as bought.
    pub screw_length: Option<Length>,
    /// Tape along the joint.
    pub tape: Length,
    /// Compound, from the least to the most that the sources give.
    pub compound: Option<(Volume, Volume)>,
    /// Coats of compound.
    pub coats: u8,
    /// What has to pass before the next step, in order.
    pub waits: Vec<Wait>,
    /// How to look before cutting.
    pub inspection: Option<Inspection>,
    /// What is done, in this order.
    pub order: Vec<Order>,
    /// Working, findings, cautions and materials.
    pub account: Account,
}
