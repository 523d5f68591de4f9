//! What is asked of the mortar, and what can be wrong with it.

use crate::handbook::mortar as book;
use crate::measure::quantity::{Area, Mass, MassDensity, Volume, cubic_feet, pounds, square_feet};
use crate::measure::{Amount, Length};

/// Everything that the mortar figure needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// What is done.
    pub work: Work,
    /// Mixed beyond the need, as a share.
    pub waste: f64,
    /// The bucket, the pace and the time.
    pub batch: Batch,
    /// There is floor covering that may be from the early 1980s or before.
    pub old_floor: bool,
}

impl Default for Ask {
    /// 40 ft² of 12 in tile on a dry floor, with a 1/4 by 3/8 in notch.
    fn default() -> Ask {
        Ask {
            work: Work::Setting(Setting::default()),
            waste: book::WASTE.value,
            batch: Batch::default(),
            old_floor: false,
        }
    }
}

/// What the mortar is for.
#[derive(Clone, Debug, PartialEq)]
pub enum Work {
    /// Tile or board set with a notched trowel.
    Setting(Setting),
    /// A bed, level or sloped to a drain.
    Bed(Bed, Mix),
    /// So much wet mortar.
    Volume(Volume, Mix),
}

/// Tile or board set with a notched trowel.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    /// How much.
    pub area: Area,
    /// What is set.
    pub under: Under,
    /// The trowel.
    pub notch: Notch,
    /// How wet it gets.
    pub place: Place,
    /// Natural stone.
    pub stone: bool,
    /// Mortar for large and heavy tile.
    pub large_tile: bool,
    /// A skim on the back of every tile.
    pub back_butter: Option<Length>,
    /// What its bag says.
    pub label: Label,
}

impl Default for Setting {
    fn default() -> Setting {
        let side = Length::inches(12);
        Setting {
            area: square_feet(40.0),
            under: Under::Tile { a: side, b: side },
            notch: Notch::square(Length::in_64(0, 16), Length::in_64(0, 24)),
            place: Place::Dry,
            stone: false,
            large_tile: false,
            back_butter: None,
            label: Label::default(),
        }
    }
}

/// What lies on the mortar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Under {
    /// Tile, side by side.
    Tile {
        /// One side.
        a: Length,
        /// The other.
        b: Length,
    },
    /// Backer board, embedded.
    Board,
}

/// The notches of a trowel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Notch {
    /// Their shape.
    pub shape: NotchShape,
    /// How wide a notch is.
    pub width: Length,
    /// How deep a notch is.
    pub depth: Length,
    /// The steel between two notches.
    pub land: Length,
}

impl Notch {
    /// A square notch on as much steel as it is wide.
    #[must_use]
    pub fn square(width: Length, depth: Length) -> Notch {
        Notch {
            shape: NotchShape::Square,
            width,
            depth,
            land: width,
        }
    }
}

/// The shape of a notch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotchShape {
    /// Square corners.
    Square,
    /// A half round at the bottom.
    U,
    /// A triangle.
    V,
}

/// How wet it gets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Indoors and dry.
    Dry,
    /// In a shower, or outdoors.
    Wet,
}

/// What a bag of mortar says; it goes before every other figure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Label {
    /// What is in the bag.
    pub bag: Mass,
    /// What it covers with this trowel.
    pub covers: Option<Area>,
    /// How much mortar it makes.
    pub makes: Option<Volume>,
    /// Water for the bag, from and to.
    pub water: Option<(Volume, Volume)>,
    /// Minutes of rest, from and to.
    pub slake: Option<(f64, f64)>,
    /// Hours that a mix can be used.
    pub pot_life: Option<f64>,
}

impl Default for Label {
    /// 50 lb, and nothing read from it.
    fn default() -> Label {
        Label {
            bag: pounds(50.0),
            covers: None,
            makes: None,
            water: None,
            slake: None,
            pot_life: None,
        }
    }
}

/// A bed of mortar on a rectangle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bed {
    /// Across, from left to right.
    pub across: Length,
    /// From near to far.
    pub up: Length,
    /// How thick it is at the drain, or all over without one.
    pub at_drain: Length,
    /// Where the water goes.
    pub drain: Drain,
    /// How it falls.
    pub fall: Fall,
}

impl Default for Bed {
    /// A shower of 36 by 60 in with a drain in the middle.
    fn default() -> Bed {
        Bed {
            across: Length::inches(36),
            up: Length::inches(60),
            at_drain: Length::in_64(1, 32),
            drain: Drain::Centre,
            fall: Fall::OnLongest(book::SHOWER_SLOPE.value.0),
        }
    }
}

/// Where the water goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Drain {
    /// Nowhere: the bed is level.
    None,
    /// To the middle, the rim level.
    Centre,
    /// To a point, from the left and from the near side, the rim level.
    At(Length, Length),
    /// To a channel along a whole wall.
    Along(Wall),
}

/// A side of the rectangle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wall {
    /// The left side.
    Left,
    /// The right side.
    Right,
    /// The near side.
    Near,
    /// The far side.
    Far,
}

/// How much the rim is above the drain; a slope is rise over run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fall {
    /// This slope on the longest run, so that no run has less.
    OnLongest(f64),
    /// This slope on the shortest run.
    OnShortest(f64),
    /// So much.
    Rise(Length),
}

/// What a bed is mixed from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Mix {
    /// Cement, lime and sand, mixed on site.
    Site(Parts),
    /// Bags that say what they make.
    Bags {
        /// What is in a bag.
        bag: Mass,
        /// What it makes.
        makes: Volume,
        /// Water for a bag, from and to.
        water: Option<(Volume, Volume)>,
    },
}

impl Mix {
    /// 80 lb bags that make 0.6 ft³.
    #[must_use]
    pub fn bags() -> Mix {
        let (bag, makes) = book::BAG_MAKES.value;
        Mix::Bags {
            bag: pounds(bag),
            makes: cubic_feet(makes),
            water: None,
        }
    }
}

/// Parts by loose volume, and how they are counted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parts {
    /// Cement.
    pub cement: f64,
    /// Hydrated lime.
    pub lime: f64,
    /// Sand.
    pub sand: f64,
    /// Which convention is mixed and bought by.
    pub by: Shrink,
    /// Loose cement, where it is not 94 lb/ft³.
    pub cement_weighs: Option<MassDensity>,
    /// Water to one of cement by mass, where it is chosen.
    pub water: Option<f64>,
}

impl Parts {
    /// Cement and sand, the sand measured damp and loose.
    #[must_use]
    pub fn sand(parts: f64) -> Parts {
        Parts {
            cement: 1.0,
            lime: 0.0,
            sand: parts,
            by: Shrink::Rule38,
            cement_weighs: None,
            water: None,
        }
    }
}

/// How much dry stuff makes one of wet mortar; it differs by how the sand is measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shrink {
    /// 38 ft³ for 27: sand damp and loose, on the safe side.
    Rule38,
    /// 1.33: sand damp and loose.
    Dry133,
    /// About 1.10, as Sabin measured it: sand dry and loose. For 1:3 to 1:5 without lime.
    DryLoose,
    /// The sand alone fills the mortar, cement and lime lie in its voids: masonry mortar.
    SandFills,
    /// A factor of the person's own.
    Own(f64),
}

/// The bucket, the pace and the time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Batch {
    /// What the bucket or tub holds to its rim.
    pub bucket: Volume,
    /// How full it is mixed, as a share.
    pub fill: f64,
    /// Area laid in an hour.
    pub pace: Area,
}

impl Default for Batch {
    /// 5 gal, 20 ft² an hour.
    fn default() -> Batch {
        Batch {
            bucket: crate::measure::quantity::gallons(5.0),
            fill: book::BUCKET_FILL.value,
            pace: square_feet(book::PACE.value),
        }
    }
}

/// A figure of the [`Ask`], by name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// The area set.
    Area,
    /// A side of the tile.
    Tile,
    /// The width of a notch.
    NotchWidth,
    /// The depth of a notch.
    NotchDepth,
    /// The steel between notches.
    Land,
    /// The skim on the back.
    BackButter,
    /// The bag.
    Bag,
    /// What the bag covers.
    Covers,
    /// What the bag makes.
    Makes,
    /// Water for the bag.
    Water,
    /// Minutes of rest.
    Slake,
    /// Hours that a mix can be used.
    PotLife,
    /// A side of the bed.
    BedSide,
    /// The thickness at the drain.
    AtDrain,
    /// The drain's place from the left.
    DrainAcross,
    /// The drain's place from the near side.
    DrainUp,
    /// The slope.
    Slope,
    /// The rise.
    Rise,
    /// The bare volume.
    Volume,
    /// Parts of cement.
    CementParts,
    /// Parts of lime.
    LimeParts,
    /// Parts of sand.
    SandParts,
    /// What cement weighs.
    CementWeighs,
    /// Water to one of cement.
    WaterCement,
    /// The factor of one's own.
    Factor,
    /// Mixed beyond the need.
    Waste,
    /// The bucket.
    Bucket,
    /// How full it is mixed.
    Fill,
    /// Area laid in an hour.
    Pace,
}

/// Why the mortar cannot be figured.
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
    /// The measured yields are for cement with 3, 4 or 5 parts of sand and no lime.
    NotMeasured,
}
