//! One picture of the log: when, where, at what stage, and what is marked on it.

use chrono::{DateTime, FixedOffset};

use crate::geometry::Spot;
use crate::measure::{Angle, Length};
use crate::site::{HiddenKind, Id};

/// A picture of the log.
#[derive(Clone, Debug, PartialEq)]
pub struct Photo {
    /// What it is known by in every copy of its job.
    pub id: Id,
    /// The name of its bytes as they came, among the job's pictures.
    pub picture: String,
    /// The name of the same picture without its place, under which it is shared.
    pub stripped: String,
    /// Pixels across and down of the original, upright.
    pub size: (u32, u32),
    /// When it was taken.
    pub when: DateTime<FixedOffset>,
    /// The focal length of a 35 mm camera that sees as much, where its camera wrote it.
    pub focal_35: Option<f64>,
    /// Its camera wrote where it was taken.
    pub located: bool,
    /// That is shared too, on purpose.
    pub place_shared: bool,
    /// The room that it shows.
    pub room: Option<Id>,
    /// The wall that it shows, counted from 0.
    pub wall: Option<usize>,
    /// How far the work was.
    pub stage: Option<Stage>,
    /// What the person calls it.
    pub title: String,
    /// What the person says of it.
    pub note: String,
    /// The picture of the same place before.
    pub before: Option<Id>,
    /// What is marked on it, oldest first.
    pub marks: Vec<Mark>,
    /// What tells the scale of its plane.
    pub flat: Option<Flat>,
    /// Where its plane stands on the wall.
    pub anchor: Option<Anchor>,
    /// It lies in the elevation of its wall.
    pub laid: bool,
}

/// How far the work was.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// Before anything was touched.
    AsFound,
    /// Bare framing.
    Stripped,
    /// Put together without glue or solder, to see that it fits.
    DryFitted,
    /// The board is on.
    ClosedUp,
    /// Done.
    Finished,
}

impl Stage {
    /// All, in the order of the work.
    pub const ALL: [Stage; 5] = [
        Stage::AsFound,
        Stage::Stripped,
        Stage::DryFitted,
        Stage::ClosedUp,
        Stage::Finished,
    ];
    /// What it is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Stage::AsFound => "As found",
            Stage::Stripped => "Stripped",
            Stage::DryFitted => "Dry-fitted",
            Stage::ClosedUp => "Closed up",
            Stage::Finished => "Finished",
        }
    }
}

/// A length read off a tape, and by how much it may be off either way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Taped {
    /// As read.
    pub length: Length,
    /// More or less; about 19 times in 20 the true length lies within.
    pub give: Length,
}

impl Taped {
    /// As a tape is read: to 1/16 in either way. Common practice, no published source.
    #[must_use]
    pub const fn read(length: Length) -> Taped {
        Taped {
            length,
            give: Length::in_64(0, 4),
        }
    }
}

/// Something marked on a picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// What it is told apart by on its picture, and shown by where it is hidden.
    pub number: u32,
    /// What it is.
    pub what: What,
    /// Its points, in pixels of the upright original.
    pub points: Vec<Spot>,
    /// What the person says of it.
    pub note: String,
}

/// What a mark is.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// A length between two points: measured, or else an estimate.
    Dimension(Option<Taped>),
    /// An angle at the second of three points: measured, with more or less, or else an estimate.
    Angle(Option<(Angle, Angle)>),
    /// An area within three points or more: measured, in square metres, with more or less; or else an estimate.
    Area(Option<(f64, f64)>),
    /// A line that is level.
    Level,
    /// An arrow from the first point to the second.
    Arrow,
    /// Words at a point.
    Note,
    /// A line by hand.
    Freehand,
    /// Something behind the board, at a point or along a line.
    Hidden(Box<Behind>),
}

/// Something behind the board.
#[derive(Clone, Debug, PartialEq)]
pub struct Behind {
    /// What it is.
    pub kind: HiddenKind,
    /// From the finished face to it.
    pub depth: Option<Taped>,
    /// Across.
    pub width: Option<Length>,
    /// What it is made of.
    pub material: String,
    /// Its first point by tape: from the wall's left corner, and up from the floor.
    pub at: Option<[Length; 2]>,
    /// What it is known by in its room, once it was pinned to the wall.
    pub pinned: Option<Id>,
}

impl Behind {
    /// One of a kind of which no more is known.
    #[must_use]
    pub fn new(kind: HiddenKind) -> Behind {
        Behind {
            kind,
            depth: None,
            width: None,
            material: String::new(),
            at: None,
            pinned: None,
        }
    }
}

/// Something of known shape in a picture: what tells the scale of its plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Flat {
    /// Its corners: upper left, upper right, lower right, lower left.
    pub corners: [Spot; 4],
    /// What it is.
    pub object: Object,
    /// Its width; of four points taped side by side the upper side.
    pub width: Option<Taped>,
    /// Its height; of four points taped side by side the left side.
    pub height: Option<Taped>,
    /// Its other sides, of four points taped by hand; they count where [`Sides::by`] says so.
    pub sides: Sides,
    /// Edges known to be straight, each by points along it.
    pub edges: Vec<Vec<Spot>>,
}

/// What else was taped between four points that need not be a rectangle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Sides {
    /// By what they are known.
    pub by: KnownBy,
    /// The right side.
    pub right: Option<Taped>,
    /// The lower side.
    pub lower: Option<Taped>,
    /// From the upper left corner to the lower right one.
    pub diagonal: Option<Taped>,
}

/// By what four points are known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum KnownBy {
    /// Width and height; all four corners are taken as square.
    #[default]
    Rectangle,
    /// Four sides; the upper left corner is square.
    Corner,
    /// Four sides and the diagonal from the upper left to the lower right.
    Diagonal,
}

impl KnownBy {
    /// All, in the order of a list.
    pub const ALL: [KnownBy; 3] = [KnownBy::Rectangle, KnownBy::Corner, KnownBy::Diagonal];
    /// What it is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            KnownBy::Rectangle => "A rectangle",
            KnownBy::Corner => "Four sides, upper left square",
            KnownBy::Diagonal => "Four sides and a diagonal",
        }
    }
}

impl Flat {
    /// A reference of which only its corners are known.
    #[must_use]
    pub fn new(corners: [Spot; 4], object: Object) -> Flat {
        Flat {
            corners,
            object,
            width: None,
            height: None,
            sides: Sides::default(),
            edges: Vec::new(),
        }
    }

    /// By what its corners are known: what is not taped by hand is a rectangle.
    #[must_use]
    pub fn known_by(&self) -> KnownBy {
        match self.object {
            Object::Taped => self.sides.by,
            _ => KnownBy::Rectangle,
        }
    }
}

/// What a reference is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Object {
    /// A tile.
    Tile,
    /// A door.
    Door,
    /// A sheet of US letter paper.
    Letter,
    /// A sheet of A4 paper.
    A4,
    /// A sheet of board.
    Board,
    /// Four points between which was taped by hand.
    Taped,
}

impl Object {
    /// All, in the order of a list.
    pub const ALL: [Object; 6] = [
        Object::Tile,
        Object::Door,
        Object::Letter,
        Object::A4,
        Object::Board,
        Object::Taped,
    ];
    /// What it is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Object::Tile => "Tile",
            Object::Door => "Door",
            Object::Letter => "Letter sheet",
            Object::A4 => "A4 sheet",
            Object::Board => "Sheet of board",
            Object::Taped => "Taped by hand",
        }
    }
    /// Its width and height upright, where they are the same everywhere.
    ///
    /// Source: ISO 216 (A4, 210 by 297 mm, tolerance 1.5 and 2 mm); ANSI/ASME Y14.1 (letter, 8.5 by 11 in), from memory.
    #[must_use]
    pub const fn size(self) -> Option<(Taped, Taped)> {
        const fn taped(length: Length) -> Taped {
            Taped {
                length,
                give: Length::mm(1),
            }
        }
        match self {
            Object::Letter => Some((taped(Length::in_64(8, 32)), taped(Length::inches(11)))),
            Object::A4 => Some((taped(Length::mm(210)), taped(Length::mm(297)))),
            _ => None,
        }
    }
}

/// Where a place of a picture is on its wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Anchor {
    /// The place.
    pub spot: Spot,
    /// From the wall's left corner.
    pub from_left: Option<Length>,
    /// Up from the floor.
    pub up: Option<Length>,
}

impl Photo {
    /// A picture just taken in.
    #[must_use]
    pub fn new(picture: String, size: (u32, u32), when: DateTime<FixedOffset>) -> Photo {
        Photo {
            id: Id::fresh(),
            stripped: picture.clone(),
            picture,
            size,
            when,
            focal_35: None,
            located: false,
            place_shared: false,
            room: None,
            wall: None,
            stage: None,
            title: String::new(),
            note: String::new(),
            before: None,
            marks: Vec::new(),
            flat: None,
            anchor: None,
            laid: false,
        }
    }

    /// A mark by its number.
    #[must_use]
    pub fn mark(&self, number: u32) -> Option<&Mark> {
        self.marks.iter().find(|mark| mark.number == number)
    }

    /// A mark by its number, to change it.
    pub fn mark_mut(&mut self, number: u32) -> Option<&mut Mark> {
        self.marks.iter_mut().find(|mark| mark.number == number)
    }

    /// A mark onto the picture; gives its number.
    pub fn add_mark(&mut self, what: What, points: Vec<Spot>) -> u32 {
        let number = self.marks.iter().map(|mark| mark.number).max().unwrap_or(0) + 1;
        self.marks.push(Mark {
            number,
            what,
            points,
            note: String::new(),
        });
        number
    }
}
