//! The order of work as data: what is done one after the other, and what has to pass between.

use crate::handbook::Cite;
use crate::measure::Phrase;

/// What a step of the work is. New ones only at the end: a job keeps them by their place in [`Work::ALL`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Work {
    /// Water shut off and the line empty, or the open drain capped.
    ShutOff,
    /// Pipe cut and reamed.
    CutPipe,
    /// All of it put together dry.
    FitDry,
    /// Depth and clocking lines struck.
    Mark,
    /// Taken apart again.
    TakeApart,
    /// Joined for good.
    Join,
    /// Nothing is done: time passes.
    Wait,
    /// Filled and watched.
    Test,
    /// What is in the wall is covered.
    Close,
    /// A drain bored for and laid to its fall.
    LayDrain,
    /// The hole of a patch looked into and cut.
    OpenUp,
    /// Its piece put in.
    Board,
    /// A coat of compound.
    Coat,
    /// Sanded.
    Sand,
    /// A coat of primer.
    Prime,
    /// A coat on the ceiling.
    Ceiling,
    /// A coat on the walls.
    Walls,
    /// A coat on the trim.
    Trim,
    /// A bed of mortar laid.
    Bed,
    /// The lines of a layout chalked.
    Chalk,
    /// Tile set.
    SetTile,
    /// Joints filled.
    Grout,
    /// Seams closed with sealant.
    Seal,
    /// What is in the wall is photographed.
    Photograph,
    /// Sheets marked, cut and tried.
    CutSheets,
    /// Sheets fastened.
    FastenSheets,
    /// Old trim taken off.
    StripTrim,
    /// Trim cut and tried.
    CutTrim,
    /// Casing nailed.
    NailCasing,
    /// Base nailed.
    NailBase,
    /// Holes of trim filled, its edge caulked.
    CaulkTrim,
}

impl Work {
    /// All, in the order by which a job keeps them.
    pub const ALL: [Work; 31] = [
        Work::ShutOff,
        Work::CutPipe,
        Work::FitDry,
        Work::Mark,
        Work::TakeApart,
        Work::Join,
        Work::Wait,
        Work::Test,
        Work::Close,
        Work::LayDrain,
        Work::OpenUp,
        Work::Board,
        Work::Coat,
        Work::Sand,
        Work::Prime,
        Work::Ceiling,
        Work::Walls,
        Work::Trim,
        Work::Bed,
        Work::Chalk,
        Work::SetTile,
        Work::Grout,
        Work::Seal,
        Work::Photograph,
        Work::CutSheets,
        Work::FastenSheets,
        Work::StripTrim,
        Work::CutTrim,
        Work::NailCasing,
        Work::NailBase,
        Work::CaulkTrim,
    ];

    /// What it is called, briefly.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Work::ShutOff => "Shut off and cap",
            Work::CutPipe => "Cut the pipe",
            Work::FitDry => "Fit it dry",
            Work::Mark => "Mark the joints",
            Work::TakeApart => "Take it apart",
            Work::Join => "Join",
            Work::Wait => "Wait",
            Work::Test => "Test",
            Work::Close => "Close the wall",
            Work::LayDrain => "Lay the drain",
            Work::OpenUp => "Open up",
            Work::Board => "Put the piece in",
            Work::Coat => "Compound",
            Work::Sand => "Sand",
            Work::Prime => "Prime",
            Work::Ceiling => "Paint the ceiling",
            Work::Walls => "Paint the walls",
            Work::Trim => "Paint the trim",
            Work::Bed => "Lay the bed",
            Work::Chalk => "Chalk the lines",
            Work::SetTile => "Set the tile",
            Work::Grout => "Grout",
            Work::Seal => "Seal",
            Work::Photograph => "Photograph",
            Work::CutSheets => "Cut the sheets",
            Work::FastenSheets => "Fasten the sheets",
            Work::StripTrim => "Take off the old trim",
            Work::CutTrim => "Cut the trim",
            Work::NailCasing => "Nail the casing",
            Work::NailBase => "Nail the base",
            Work::CaulkTrim => "Fill and caulk",
        }
    }
}

/// A step of the work.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// What it is.
    pub work: Work,
    /// What is done, in words.
    pub does: Phrase,
    /// Where that stands.
    pub cite: Cite,
    /// It waits until every piece was fitted dry.
    pub joins: bool,
    /// Of a wait, how long; `None` where no figure is known.
    pub hours: Option<f64>,
}

impl Order {
    /// Something that is done.
    pub(super) fn of(work: Work, does: impl Into<Phrase>, cite: Cite) -> Order {
        Order {
            work,
            does: does.into(),
            cite,
            joins: false,
            hours: None,
        }
    }
    /// Time that passes.
    pub(super) fn wait(does: impl Into<Phrase>, hours: Option<f64>, cite: Cite) -> Order {
        Order {
            hours,
            ..Order::of(Work::Wait, does, cite)
        }
    }
}
