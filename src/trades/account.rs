//! What every figure brings with it: its working, its findings, its cautions and its materials.

use crate::handbook::pipe::{Family, Kind, Pipe, Size, Turn};
use crate::handbook::{Cite, cautions::Caution};
use crate::measure::{Amount, Length, Phrase};

/// How a figure was arrived at and what goes with it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Account {
    /// The working, step by step, in the order it was figured.
    pub working: Vec<Step>,
    /// What is computed but deserves a remark, the heaviest first.
    pub findings: Vec<Finding>,
    /// What can hurt.
    pub cautions: Vec<&'static Caution>,
    /// What has to be there to do it, unpacked and unrounded.
    pub needs: Vec<Need>,
}

/// One step of the working: `what: sum = gives`, and where its rule stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What this step figures.
    pub what: Phrase,
    /// The sum as it would be written on a board; empty where a figure is simply taken.
    pub sum: Vec<Term>,
    /// What comes out.
    pub gives: Amount,
    /// The rule or the figure's source.
    pub cite: Cite,
}

impl Step {
    /// A step without figures in its words.
    pub(super) fn of(
        what: &'static str,
        sum: Vec<Term>,
        gives: impl Into<Amount>,
        cite: Cite,
    ) -> Step {
        Step {
            what: Phrase::plain(what),
            sum,
            gives: gives.into(),
            cite,
        }
    }
}

/// A piece of a sum: a figure, or a sign or word between figures.
#[derive(Clone, Debug, PartialEq)]
pub enum Term {
    /// A figure.
    Figure(Amount),
    /// A sign or a word.
    Word(&'static str),
}

impl<A: Into<Amount>> From<A> for Term {
    fn from(amount: A) -> Term {
        Term::Figure(amount.into())
    }
}

/// How much a finding weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// Worth knowing.
    Note,
    /// Look again before going on.
    Caution,
    /// Do not go on like this.
    Stop,
}

/// Computed, but: something about the figure that deserves a remark.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// How much it weighs.
    pub weight: Weight,
    /// What was found and what would mend it.
    pub says: Phrase,
    /// The rule that it comes from.
    pub rule: Cite,
}

/// Something to have on hand, before packs and rounding.
#[derive(Clone, Debug, PartialEq)]
pub struct Need {
    /// What it is; needs of an equal material are added up.
    pub material: Material,
    /// How much of it.
    pub amount: Amount,
    /// What it is for.
    pub why: Phrase,
}

/// A material, spelled out far enough that two of the same can be bought as one.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Material {
    /// Gypsum board; needed as pieces (`Amount::Size`, one need a piece).
    Board {
        /// Its thickness.
        thickness: Length,
    },
    /// Coarse-thread board screws, needed by count.
    Screws {
        /// Their length.
        length: Length,
    },
    /// Joint tape, needed by length.
    JointTape,
    /// Joint compound, needed by volume.
    Compound(Compound),
    /// A rigid self-adhesive patch, needed by count.
    AdhesivePatch {
        /// Its side.
        side: Length,
    },
    /// Boards for backing strips (1x3) or blocking and cleats (2x4), needed by length of each piece.
    Lumber {
        /// Actual thickness.
        thickness: Length,
        /// Actual width.
        width: Length,
    },
    /// Primer, needed by volume.
    Primer {
        /// What it goes on, in the person's words.
        label: String,
    },
    /// Tile of a size, needed by count; boxes hold `in_box` of them, nothing where they are sold singly.
    Tile {
        /// Its long side.
        long: Length,
        /// Its short side.
        short: Length,
        /// How many to a box.
        in_box: u32,
    },
    /// Paint, needed by volume.
    Paint {
        /// What it goes on and its colour, in the person's words.
        label: String,
    },
    /// Cement grout, needed by mass of powder.
    Grout {
        /// What sand is in it.
        kind: Grout,
        /// Its colour, in the person's words; empty where none was chosen.
        color: String,
    },
    /// Flexible sealant, needed by volume.
    Sealant {
        /// Its colour, in the person's words; empty where none was chosen.
        color: String,
    },
    /// Mortar that tile is set in with a notched trowel, needed by mass of powder.
    SettingMortar {
        /// For large and heavy tile, in a thicker bed.
        large_tile: bool,
    },
    /// Bagged cement and sand for a bed, needed by mass.
    BedMix,
    /// Portland cement, needed by mass.
    Cement,
    /// Sand for mortar, needed by mass when dry.
    Sand,
    /// Hydrated lime, needed by mass.
    Lime,
    /// Sheets of mosaic of a size, needed by count; boxes hold `in_box` of them, nothing where they are sold singly.
    MosaicSheet {
        /// Along its rows.
        long: Length,
        /// Across them.
        short: Length,
        /// How many to a box.
        in_box: u32,
    },
    /// A steel plate over pipe in a stud, needed by count.
    ShieldPlate,
    /// Pipe of a size, needed by length of each piece.
    Pipe {
        /// What it is made of.
        pipe: Pipe,
        /// Its size.
        size: Size,
        /// How long the sticks are that it is cut from.
        stick: Length,
    },
    /// A fitting, needed by count.
    PipeFitting {
        /// Whose fitting it is.
        family: Family,
        /// What it is.
        kind: Kind,
        /// How far it turns, where it is a bend.
        turn: Option<Turn>,
        /// Its larger size.
        size: Size,
        /// Its smaller size, the same where it does not reduce.
        other: Size,
        /// One end is a spigot.
        street: bool,
    },
    /// Solder without lead, needed by mass.
    Solder,
    /// Flux for it, needed by mass.
    Flux,
    /// Solvent cement, needed by volume.
    PipeCement {
        /// The pipe that it is for.
        family: Family,
    },
    /// Primer for it, needed by volume.
    PipePrimer,
    /// A hanger or strap, needed by count.
    PipeHanger {
        /// The pipe that it holds.
        family: Family,
        /// Its size.
        size: Size,
    },
    /// Board in sheets of a size, needed by count.
    Sheet {
        /// What it is.
        board: Board,
        /// Its long side.
        long: Length,
        /// Its short side.
        short: Length,
        /// Its thickness.
        thickness: Length,
    },
    /// Screws for cement board or plywood, needed by count.
    SheetScrews {
        /// What they hold.
        board: Board,
        /// Their length.
        length: Length,
    },
    /// Glass mesh tape for joints of cement board, needed by length.
    MeshTape,
    /// Trim of a profile, needed by length of each piece.
    Trim {
        /// What the person calls it; empty where it has no name.
        name: String,
        /// How thick, as measured.
        thickness: Length,
        /// How wide, as measured.
        width: Length,
    },
    /// Finishing nails, needed by count.
    FinishNails {
        /// Their length.
        length: Length,
    },
    /// Paintable caulk, needed by volume.
    Caulk,
}

/// What is laid in sheets.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Board {
    /// Gypsum board.
    Gypsum,
    /// Cement or fibre-cement board.
    Cement,
    /// Plywood.
    Plywood,
}

/// What sand is in a cement grout.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Grout {
    /// None: for narrow joints.
    Unsanded,
    /// Fine sand.
    Sanded,
    /// Heavier sand, for wide joints.
    HeavySand,
}

/// How a compound hardens.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Compound {
    /// Dries: ready mixed.
    Drying,
    /// Sets: powder, for filling deep.
    Setting,
}
