//! What a tap on a picture, on the log or on their lists can ask for, and what the pad fills in there.

use std::path::PathBuf;

use crate::photo::{Filter, KnownBy, Object, Stage};
use crate::site::{HiddenKind, Id, OpeningKind};

/// What a tap asks of pictures. Pictures are told by their place in the job, marks by their number.
#[derive(Clone, Debug, PartialEq)]
pub enum PhotoCommand {
    /// Take these files in.
    Take(Vec<PathBuf>),
    /// Choose files to take in; the window asks which.
    Pick,
    /// Choose a folder to take in.
    PickFolder,
    /// Take in what is on the clipboard.
    Paste,
    /// Open the device's own camera and watch where it saves.
    Snap,
    /// Look through a camera in the window, where one is built in.
    Viewfinder,
    /// Take what it sees.
    Shutter,
    /// Stop taking in.
    Stop,
    /// The notes on what was not taken are read.
    Seen,
    /// Show only these.
    Filter(Filter),
    /// Remove a picture from the log; its bytes stay.
    Remove(usize),
    /// How far the work was.
    Stage(usize, Option<Stage>),
    /// Which room it shows.
    Room(usize, Option<Id>),
    /// Which wall.
    Wall(usize, Option<usize>),
    /// The picture of the same place before.
    Before(usize, Option<Id>),
    /// Beside the one before, or alone again.
    Beside(bool),
    /// Its place is shared too, on purpose.
    SharePlace(usize, bool),
    /// What a finger draws.
    Tool(Tool),
    /// The mark in hand.
    Select(Option<u32>),
    /// What is placed snaps to ends and edges, or stays under the finger.
    Snaps(bool),
    /// The next point of the mark in hand is nudged.
    NextPoint,
    /// The point in hand is moved by so many pixels of the screen.
    Nudge(i32, i32),
    /// What is drawn by taps is done.
    Done,
    /// What is drawn by taps is dropped.
    Drop,
    /// A mark is taken away.
    RemoveMark(usize, u32),
    /// A measurement is an estimate again.
    Untape(usize, u32),
    /// What is hidden.
    Kind(usize, u32, HiddenKind),
    /// What the reference is.
    Object(usize, Object),
    /// By what its four corners are known.
    KnownBy(usize, KnownBy),
    /// The reference is turned by a quarter: width and height change places.
    Upright(usize),
    /// No reference.
    ForgetFlat(usize),
    /// No straight edges.
    ForgetEdges(usize),
    /// Laid flat, or as it was taken.
    Flat(bool),
    /// Nearer, in steps; less than nothing farther.
    Nearer(i32),
    /// A hidden item onto its wall.
    Pin(usize, u32),
    /// All hidden items onto their wall.
    PinAll(usize),
    /// The picture under the elevation of its wall, or none.
    Lay(usize, bool),
    /// Write the picture with its marks: a PNG, or else a JPEG; as large as it came, or as a screen shows it.
    Export(usize, bool, bool),
    /// A traced outline as a drawing in real size.
    Trace(usize, u32),
    /// Tile within a traced outline.
    TileTrace(usize, u32),
    /// The outline of a figure was gone over with a tape.
    TapedTrace(usize),
    /// A traced outline as an opening of its wall.
    OpenTrace(usize, u32, OpeningKind),
}

/// What a finger draws on a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Tool {
    /// Nothing: it picks marks and moves the picture.
    #[default]
    Look,
    /// A length.
    Dimension,
    /// An angle.
    Angle,
    /// An area, or an outline to trace.
    Area,
    /// A level line.
    Level,
    /// An arrow.
    Arrow,
    /// Words.
    Note,
    /// A line by hand.
    Freehand,
    /// Something behind the board.
    Hidden,
    /// The corners of something of known size.
    Flatten,
    /// A straight edge, for the lens.
    Edge,
    /// A place whose position on the wall is known.
    Anchor,
}

impl Tool {
    /// Those of the bar under a picture, in order.
    pub const BAR: [Tool; 10] = [
        Tool::Look,
        Tool::Dimension,
        Tool::Angle,
        Tool::Area,
        Tool::Level,
        Tool::Arrow,
        Tool::Note,
        Tool::Freehand,
        Tool::Hidden,
        Tool::Flatten,
    ];

    /// What it is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Tool::Look => "Look",
            Tool::Dimension => "Dimension",
            Tool::Angle => "Angle",
            Tool::Area => "Area",
            Tool::Level => "Level",
            Tool::Arrow => "Arrow",
            Tool::Note => "Note",
            Tool::Freehand => "Freehand",
            Tool::Hidden => "Hidden",
            Tool::Flatten => "Flatten",
            Tool::Edge => "Straight edge",
            Tool::Anchor => "Place on wall",
        }
    }

    /// What to do with it, in one line.
    #[must_use]
    pub const fn asks(self) -> &'static str {
        match self {
            Tool::Look => "Tap a mark to change it; drag to move the picture.",
            Tool::Dimension => "Drag from one end to the other, or tap both.",
            Tool::Angle => "Tap a leg, the corner, the other leg.",
            Tool::Area => "Tap corner after corner; tap the first again, or Done.",
            Tool::Level => "Drag along something that is level.",
            Tool::Arrow => "Drag to what it points at.",
            Tool::Note => "Tap where the words belong.",
            Tool::Freehand => "Draw with the finger.",
            Tool::Hidden => "Tap where it is, or drag along a pipe or a stud.",
            Tool::Flatten => {
                "Tap the four corners of something of known size, or drag one that is marked."
            }
            Tool::Edge => "Tap three places along an edge that is straight.",
            Tool::Anchor => "Tap a place whose distance from corner and floor you know.",
        }
    }
}

/// What is measured of a reference.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Its width, or its upper side.
    Width,
    /// Its height, or its left side.
    Height,
    /// Its right side.
    Right,
    /// Its lower side.
    Lower,
    /// From its upper left corner to its lower right one.
    Diagonal,
}

/// A field of a picture or a mark that the pad fills in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PhotoSlot {
    /// What it is called.
    Title,
    /// What is said of it.
    Note,
    /// What is said of a mark.
    MarkNote(u32),
    /// A dimension by tape.
    Length(u32),
    /// Its ±.
    Give(u32),
    /// An angle as measured, in degrees.
    Angle(u32),
    /// Its ±.
    AngleGive(u32),
    /// An area as measured.
    Area(u32),
    /// Its ±.
    AreaGive(u32),
    /// How deep something is hidden.
    Depth(u32),
    /// Its ±.
    DepthGive(u32),
    /// How wide it is.
    Width(u32),
    /// What it is made of.
    Material(u32),
    /// Its first point by tape, from the left corner.
    FromLeft(u32),
    /// Its first point by tape, up from the floor.
    Up(u32),
    /// What the four corners belong to.
    Known,
    /// A side of the reference.
    Ref(Side),
    /// Its ±.
    RefGive(Side),
    /// From the left corner to the place that is known.
    AnchorLeft,
    /// Up from the floor to it.
    AnchorUp,
    /// Words to search for.
    Search,
    /// The command that opens the camera.
    Camera,
    /// The folder that the camera saves in.
    Watched,
    /// How near is too near to something hidden.
    Clear,
}
