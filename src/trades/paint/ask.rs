//! What is asked of the painting, and what can be wrong with it.

use crate::measure::quantity::{Area, SpreadRate, square_metres};
use crate::measure::{Amount, Length};

/// Everything that the paint figure needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// Walls and ceilings, openings already off.
    pub surfaces: Vec<Surface>,
    /// Base, casing and other trim.
    pub trim: Vec<Trim>,
    /// Primer, on bare board and on patched spots.
    pub primer: Coats,
    /// The paint of walls and ceilings.
    pub finish: Coats,
    /// The paint of the trim.
    pub trim_finish: Coats,
    /// Who rolls, and from where.
    pub reach: Reach,
    /// When the building was built.
    pub built: Built,
    /// How much the finish shines.
    pub sheen: Sheen,
    /// The finish level of the drywall under it, 0 to 5, when known.
    pub level: Option<u8>,
    /// What binds the paint.
    pub binder: Binder,
    /// Patched spots, each primed before the finish.
    pub patched: Vec<Area>,
    /// Old paint scraped, sanded or cut in this room, all of it together.
    pub disturbed: Area,
    /// Done for pay, or in a home that is rented out.
    pub paid_job: bool,
}

impl Default for Ask {
    /// One smooth wall, 10 ft long and 8 ft high, in two coats of latex.
    fn default() -> Ask {
        Ask {
            surfaces: vec![Surface::wall(Length::feet(10), Length::feet(8))],
            trim: Vec::new(),
            primer: Coats::plain(1, "Primer"),
            finish: Coats::plain(2, "Wall paint"),
            trim_finish: Coats::plain(2, "Trim paint"),
            reach: Reach::default(),
            built: Built::Unknown,
            sheen: Sheen::Eggshell,
            level: None,
            binder: Binder::Latex,
            patched: Vec::new(),
            disturbed: square_metres(0.0),
            paid_job: false,
        }
    }
}

/// A wall or a ceiling.
#[derive(Clone, Debug, PartialEq)]
pub struct Surface {
    /// What it is called.
    pub name: String,
    /// Wall or ceiling.
    pub part: Part,
    /// What is painted of it, openings off.
    pub area: Area,
    /// How high its top is above the floor, for the reach.
    pub height: Option<Length>,
    /// How wide it is, for the record.
    pub width: Option<Length>,
    /// How it feels to the hand.
    pub kind: Texture,
    /// Length of its edges that are cut in with a brush.
    pub cut_in: Length,
}

impl Surface {
    /// A whole smooth wall, its four edges cut in.
    ///
    /// # Example
    /// ```
    /// use storyrod::{measure::{Length, quantity::in_square_feet}, trades::paint::Surface};
    /// let wall = Surface::wall(Length::feet(10), Length::feet(8));
    /// assert_eq!(in_square_feet(wall.area), 80.0);
    /// assert_eq!(wall.cut_in, Length::feet(36));
    /// ```
    #[must_use]
    pub fn wall(width: Length, height: Length) -> Surface {
        Surface {
            name: "Wall".to_owned(),
            part: Part::Wall,
            area: crate::measure::quantity::area(width, height),
            height: Some(height),
            width: Some(width),
            kind: Texture::Smooth,
            cut_in: (width + height) * 2,
        }
    }
}

/// A run of base, casing or other trim.
#[derive(Clone, Debug, PartialEq)]
pub struct Trim {
    /// What it is called.
    pub name: String,
    /// How long it runs.
    pub length: Length,
    /// How much face is painted, across the run.
    pub face: Length,
}

/// One product and how often it goes on.
#[derive(Clone, Debug, PartialEq)]
pub struct Coats {
    /// How many coats.
    pub coats: u8,
    /// Spread on its label; goes before every other figure.
    pub label_rate: Option<SpreadRate>,
    /// Its solids, as a share of its volume.
    pub volume_solids: Option<f64>,
    /// The dry film wanted of one coat.
    pub dry_film: Option<Length>,
    /// What it is, in the person's words.
    pub label: String,
}

impl Coats {
    /// So many coats, and nothing known from a label.
    #[must_use]
    pub fn plain(coats: u8, label: &str) -> Coats {
        Coats {
            coats,
            label_rate: None,
            volume_solids: None,
            dry_film: None,
            label: label.to_owned(),
        }
    }
}

/// Who rolls, and how far from the wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Reach {
    /// How tall, when given.
    pub stature: Option<Length>,
    /// How far the hands stand from the wall.
    pub standing_off: Length,
}

impl Default for Reach {
    /// Nobody in particular, 24 in off the wall.
    fn default() -> Reach {
        Reach {
            stature: None,
            standing_off: Length::inches(24),
        }
    }
}

/// Wall or ceiling.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// A wall.
    Wall,
    /// A ceiling.
    Ceiling,
}

/// How a surface feels, from least to most paint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Texture {
    /// Finished and painted before.
    Smooth,
    /// New drywall, no primer yet.
    BareBoard,
    /// Light texture: orange peel, sand.
    Textured,
    /// Brick, block, rough plaster.
    Masonry,
    /// Knockdown, popcorn, stucco.
    HeavyTexture,
}

/// When the building was built.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Built {
    /// Not known: taken as before 1978.
    Unknown,
    /// Before 1978.
    Before1978,
    /// In 1978 or later.
    From1978,
}

/// How much a finish shines.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sheen {
    /// None.
    Flat,
    /// Eggshell or satin.
    Eggshell,
    /// Semi-gloss.
    SemiGloss,
    /// Gloss.
    Gloss,
}

/// What binds the paint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Binder {
    /// Thinned with water.
    Latex,
    /// Oil or alkyd, thinned with solvent.
    Alkyd,
}

/// Which product a field belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Product {
    /// The primer.
    Primer,
    /// The paint of walls and ceilings.
    Finish,
    /// The paint of the trim.
    Trim,
}

/// A figure of the [`Ask`], by name; surfaces, trim and patches count from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// The area of a surface.
    SurfaceArea(usize),
    /// The height of a surface.
    SurfaceHeight(usize),
    /// The width of a surface.
    SurfaceWidth(usize),
    /// The edges of a surface.
    CutIn(usize),
    /// The length of a run of trim.
    TrimLength(usize),
    /// The face of a run of trim.
    TrimFace(usize),
    /// How many coats.
    Coats(Product),
    /// The spread on the label.
    LabelRate(Product),
    /// The solids by volume.
    VolumeSolids(Product),
    /// The dry film.
    DryFilm(Product),
    /// How tall.
    Stature,
    /// How far off the wall.
    StandingOff,
    /// The drywall's finish level.
    Level,
    /// A patched spot.
    Patched(usize),
    /// Old paint disturbed.
    Disturbed,
}

/// Why the paint cannot be figured.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// No surface, no trim and no patch.
    Nothing,
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
