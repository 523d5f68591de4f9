//! What can be done to a room beyond a figure typed into it, and what its screens remember while the program runs.

use super::{Placing, Slot};
use crate::drawing::PlanTag;
use crate::measure::Length;
use crate::site::{self, Asked, Passed, Room, What};

/// What is done to a room beyond a figure typed into it.
#[derive(Clone, Debug, PartialEq)]
pub enum RoomChoice {
    /// How much of it is measured.
    Much(Asked),
    /// Only what usually differs between two rooms that are built alike, or all of it.
    Short(bool),
    /// Something passed over, or not any longer.
    Pass(What, Option<Passed>),
    /// What was carried over holds here too.
    Confirm(What),
    /// All that was carried over does.
    ConfirmAll,
    /// A figure is an estimate, so much more or less; nothing: it was read.
    Estimate(What, Option<Length>),
    /// How close the person reads.
    ReadsTo(Length),
    /// Corners drawn so many times further out of square.
    Exaggerate(u8),
    /// The plan a quarter turn further.
    Turn,
    /// The room as its mirror.
    Mirror,
    /// Another room made from this one, mirrored or not.
    Second(bool),
    /// A fixed point.
    AddFixed(site::On, site::FixedKind),
    /// No fixed point there.
    RemoveFixed(usize),
    /// A fixture against a wall.
    AddFixture(usize, site::FixtureKind),
    /// No fixture there.
    RemoveFixture(usize),
    /// Something hidden.
    AddHidden(site::On, site::HiddenKind),
    /// Nothing hidden there.
    RemoveHidden(usize),
    /// One more place on the line of something hidden.
    AddSpot(usize),
    /// How a door hangs.
    Hinge(usize, site::Hinge),
    /// A wall is seen from behind.
    Behind(bool),
    /// The least rest of a stick that is worth keeping.
    LeastRest(Length),
    /// What the next tap on a wall's drawing places.
    Place(Option<Placing>),
    /// A wall's drawing shows the figures of what is fixed on it, in place of its openings'.
    Points(bool),
    /// A wall or a corner of the outline is chosen.
    Choose(Option<PlanTag>),
    /// The outline changed at what is chosen.
    Outline(Outline),
}

/// A change of the outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outline {
    /// The wall dragged out of the room by a length, or into it.
    Drag(Length),
    /// A step in the middle of the wall, out of the room.
    StepOut,
    /// A step in the middle of the wall, into the room.
    StepIn,
    /// The middle third of the wall set out.
    BumpOut,
    /// The middle third of the wall set in.
    BumpIn,
    /// The wall taken away.
    TakeWall,
    /// The corner taken out.
    TakeCorner,
    /// The corner cut off.
    CutCorner,
    /// The corner juts in.
    Jog,
}

/// What is likely misread, as it is said on the pad.
#[derive(Clone, Debug)]
pub(super) struct Told {
    /// In which room.
    pub at: usize,
    /// What is to be measured again.
    pub what: What,
    /// In words.
    pub text: String,
}

/// What a survey's screens remember while the program runs.
#[derive(Clone, Debug)]
pub(super) struct RoomsView {
    pub much: Asked,
    pub short: bool,
    pub exaggerated: u8,
    pub behind: bool,
    pub points: bool,
    pub chosen: Option<PlanTag>,
    /// What the next tap on a wall's drawing places, in which room.
    pub placing: Option<(usize, Placing)>,
    /// What was measured last, and in which room.
    pub last: Option<(usize, What)>,
    /// The least rest of a stick that is worth keeping.
    pub least: Length,
    /// What is looked for on the shelf.
    pub search: String,
    /// The profile that was taken off the shelf last.
    pub dropped: Option<Room>,
    /// What the pad goes on to: the figures of one thing, the first being the one that it is open on.
    pub walk: Vec<Slot>,
    /// What the figure typed last makes contradict itself, to be said on the pad.
    pub told: Option<Told>,
    /// The room as it was when a finger took hold of its wall.
    pub held: Option<Room>,
}

impl Default for RoomsView {
    fn default() -> RoomsView {
        RoomsView {
            much: Asked::Plan,
            short: true,
            exaggerated: 10,
            behind: false,
            points: false,
            chosen: None,
            placing: None,
            least: Length::feet(1),
            last: None,
            search: String::new(),
            dropped: None,
            walk: Vec::new(),
            told: None,
            held: None,
        }
    }
}
