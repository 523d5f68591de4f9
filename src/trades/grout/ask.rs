//! What is asked of the grouting, and what can be wrong with it.

use crate::handbook::grout as book;
use crate::measure::quantity::{Area, Mass, MassDensity, Volume, square_feet};
use crate::measure::{Amount, Length};
use crate::trades::Grout;

/// Everything that the grout figure needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// The tiled area, tile and joints together.
    pub area: Area,
    /// What lies between the joints.
    pub joints: JointOf,
    /// How wide a joint is.
    pub width: Length,
    /// How deep it is filled: the thickness of the tile where the whole joint is open.
    pub depth: Length,
    /// Which grout; chosen by the joint where `None`.
    pub kind: Option<Grout>,
    /// The face of the tile can be scratched by sand.
    pub scratches: bool,
    /// Its colour, in the person's words.
    pub color: String,
    /// What its bag says.
    pub label: Label,
    /// Bought beyond the joints, as a share.
    pub waste: f64,
    /// Where sealant goes in place of grout.
    pub seams: Vec<Seam>,
}

impl Default for Ask {
    /// 40 ft² of 12 in tile, 3/8 in thick, with joints of 1/8 in.
    fn default() -> Ask {
        let side = Length::inches(12);
        Ask {
            area: square_feet(40.0),
            joints: JointOf::Grid { a: side, b: side },
            width: Length::in_64(0, 8),
            depth: Length::in_64(0, 24),
            kind: None,
            scratches: false,
            color: String::new(),
            label: Label::default(),
            waste: book::WASTE.value,
            seams: Vec::new(),
        }
    }
}

/// What lies between the joints.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum JointOf {
    /// Rectangles, in a grid or in a running bond.
    Grid {
        /// One side of the tile's face.
        a: Length,
        /// The other side.
        b: Length,
    },
    /// Regular hexagons.
    Hexagon {
        /// From one flat side to the opposite one.
        flats: Length,
    },
    /// The joints' own area, as a layout gives it.
    Area(Area),
}

/// What a bag says; it goes before every other figure.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Label {
    /// What is in the bag.
    pub bag: Option<Mass>,
    /// What it covers with this tile and joint.
    pub covers: Option<Area>,
    /// Powder in a volume of joint.
    pub density: Option<MassDensity>,
    /// Water for the bag, from and to.
    pub water: Option<(Volume, Volume)>,
    /// Minutes of rest, from and to.
    pub slake: Option<(f64, f64)>,
    /// Hours that a mix can be used.
    pub pot_life: Option<f64>,
    /// Hours between setting and grouting, on the mortar's bag.
    pub wait: Option<f64>,
}

/// A joint that is sealed, not grouted.
#[derive(Clone, Debug, PartialEq)]
pub struct Seam {
    /// What meets there.
    pub at: Meeting,
    /// How long it runs.
    pub length: Length,
    /// How wide it is.
    pub width: Length,
    /// How deep the sealant stands in it.
    pub depth: Length,
}

/// What meets at a seam.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meeting {
    /// Wall and wall, or wall and floor.
    PlaneChange,
    /// Tile and another material, round the field.
    Perimeter,
    /// Two parts of one field, at a movement joint.
    Movement,
}

/// A figure of the [`Ask`], by name; seams count from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// The tiled area.
    Area,
    /// A side of the tile, or a hexagon across its flats.
    Tile,
    /// The area of the joints.
    JointArea,
    /// The joint's width.
    Width,
    /// The joint's depth.
    Depth,
    /// The bag.
    Bag,
    /// What the bag covers.
    Covers,
    /// Powder in a volume of joint.
    Density,
    /// Water for the bag.
    Water,
    /// Minutes of rest.
    Slake,
    /// Hours that a mix can be used.
    PotLife,
    /// Hours before grouting.
    Wait,
    /// Bought beyond the joints.
    Waste,
    /// The length of a seam.
    SeamLength(usize),
    /// The width of a seam.
    SeamWidth(usize),
    /// The depth of a seam.
    SeamDepth(usize),
}

/// Why the grout cannot be figured.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// A figure is outside its limits, or not a number.
    Beyond {
        /// Which figure.
        field: Field,
        /// The least that is taken.
        least: Amount,
        /// The most that is taken.
        most: Amount,
    },
}
