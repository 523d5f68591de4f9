//! What is asked of trim, and what can be wrong with it.

use crate::handbook::trim as book;
use crate::measure::{Angle, Length};
use crate::site::FixtureKind;
use crate::trades::Material;

/// Everything that a cutting list of trim needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// Base or casing.
    pub kind: Kind,
    /// What the person calls the profile; empty where it has no name.
    pub name: String,
    /// How thick, as measured.
    pub thickness: Length,
    /// How wide, as measured: base is so high.
    pub width: Length,
    /// How base meets in an inside corner.
    pub inside: Inside,
    /// Walked against the clock, as seen from above; each piece is coped to the one before it.
    pub backward: bool,
    /// How wide the casing of doors is that base stops at.
    pub casing: Length,
    /// From the face of the jamb to the casing.
    pub reveal: Length,
    /// The walls of a room in their order, clockwise; nothing where pieces are listed by hand.
    pub walls: Option<Vec<Wall>>,
    /// Pieces of base by hand.
    pub pieces: Vec<Piece>,
    /// How casing meets under or at its head.
    pub head: Head,
    /// What is cased: of a room its openings, else those by hand.
    pub frames: Vec<Frame>,
    /// The longest stick that is to be had.
    pub stick: Length,
    /// The board behind it.
    pub board: Length,
    /// How far nails are apart, at most.
    pub nails: Length,
    /// The bead of caulk along its top, or along its outer edge; nothing where it gets none.
    pub caulk: Option<Length>,
    /// Old trim comes off first.
    pub old: bool,
}

impl Default for Ask {
    /// Base of 1/2 by 3 1/2 in, one piece of 8 ft between two inside corners.
    fn default() -> Ask {
        Ask {
            kind: Kind::Base,
            name: "Base".to_owned(),
            thickness: Length::in_64(0, 32),
            width: Length::in_64(3, 32),
            inside: Inside::Coped,
            backward: false,
            casing: Length::in_64(2, 16),
            reveal: book::REVEAL.value,
            walls: None,
            pieces: vec![Piece::default()],
            head: Head::Mitred,
            frames: vec![Frame::default()],
            stick: Length::feet(8),
            board: Length::in_64(0, 32),
            nails: book::NAILS_APART.value,
            caulk: Some(book::BEAD.value),
            old: false,
        }
    }
}

impl Ask {
    /// Casing of 1/2 by 2 1/4 in round one door.
    #[must_use]
    pub fn casing() -> Ask {
        Ask {
            kind: Kind::Casing,
            name: "Casing".to_owned(),
            width: Length::in_64(2, 16),
            ..Ask::default()
        }
    }
    /// What it is cut from.
    #[must_use]
    pub fn material(&self) -> Material {
        Material::Trim {
            name: self.name.clone(),
            thickness: self.thickness,
            width: self.width,
        }
    }
}

/// What kind of trim.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Along the floor.
    Base,
    /// Round doors and windows.
    Casing,
}

/// How base meets in an inside corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Inside {
    /// One runs square into the corner, the other is cut to its profile.
    Coped,
    /// Both are mitred.
    Mitred,
}

/// How casing meets at the head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Head {
    /// Mitred with the legs.
    Mitred,
    /// It lies on the legs, all ends square.
    Butted,
}

/// A wall of a room, as base runs along it.
#[derive(Clone, Debug, PartialEq)]
pub struct Wall {
    /// Corner to corner.
    pub length: Length,
    /// The turn at its right end: more than nothing at an inside corner.
    pub turn: Angle,
    /// Where base stops, in any order.
    pub gaps: Vec<Gap>,
    /// The centres of its studs from its left corner, where they are known.
    pub studs: Vec<Length>,
}

/// A stretch of a wall without base.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gap {
    /// From the wall's left corner: the face of the left jamb, or the fixture's edge.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// What is there.
    pub stop: Stop,
}

/// What base stops at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stop {
    /// The casing of a door or of an opening down to the floor.
    Cased,
    /// A fixture that covers the wall.
    Fixture(FixtureKind),
    /// Tile down to the floor.
    Tile,
}

/// A piece of base by hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Piece {
    /// Along the wall.
    pub length: Length,
    /// So many of them.
    pub count: u32,
    /// Its left and right end, as seen facing it.
    pub ends: [Corner; 2],
}

impl Default for Piece {
    fn default() -> Piece {
        Piece {
            length: Length::inches(96),
            count: 1,
            ends: [Corner::Square; 2],
        }
    }
}

/// What an end by hand comes to; its corner is square.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Corner {
    /// A casing, a fixture, or the corner itself.
    Square,
    /// An inside corner, coped or mitred as is chosen.
    Inside,
    /// An outside corner.
    Outside,
}

/// What is cased.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Frame {
    /// A door or a window.
    pub opening: Opening,
    /// From jamb to jamb.
    pub width: Length,
    /// From the floor, or from the sill, to the head jamb.
    pub height: Length,
    /// A window is cased on four sides, like a picture; a door never.
    pub four: bool,
    /// So many of them.
    pub count: u32,
    /// Its wall, and what is left of it beside the jambs, left and right; nothing by hand.
    pub on: Option<(usize, [Length; 2])>,
}

impl Default for Frame {
    fn default() -> Frame {
        Frame {
            opening: Opening::Door,
            width: Length::inches(30),
            height: Length::inches(80),
            four: false,
            count: 1,
            on: None,
        }
    }
}

/// What kind of opening is cased.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Opening {
    /// Its legs stand on the floor.
    Door,
    /// It has a sill.
    Window,
}

/// A figure of the [`Ask`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// The profile's thickness.
    Thickness,
    /// Its width.
    Width,
    /// The casing at doors.
    Casing,
    /// The reveal.
    Reveal,
    /// The board behind.
    Board,
    /// Between nails.
    Nails,
    /// The bead of caulk.
    Bead,
    /// The length of a piece by hand.
    Piece(usize),
    /// The width of a frame by hand.
    FrameWidth(usize),
    /// Its height.
    FrameHeight(usize),
}

/// Why there is no cutting list.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Problem {
    /// A figure is out of its range.
    Beyond {
        /// Which.
        field: Field,
        /// The least.
        least: Length,
        /// The most.
        most: Length,
    },
    /// There is nothing to cut: no wall is left, no piece and no frame is listed.
    Nothing,
    /// More pieces than are listed.
    TooMany {
        /// The most.
        most: usize,
    },
    /// A corner turns so far that no saw mitres it: the wall, and the turn at its right end.
    TooSharp {
        /// The wall.
        wall: usize,
        /// The turn.
        turn: Angle,
    },
    /// No stick holds even the shortest joint of a wall.
    StickTooShort {
        /// The longest stick.
        stick: Length,
        /// What it has to hold at least.
        least: Length,
    },
}

/// Most pieces of one figure.
pub(super) const MOST_PIECES: usize = 500;
/// The farthest turn that is mitred.
const SHARPEST: Angle = Angle::degrees(150);

/// Every figure within its limits.
pub(super) fn checked(ask: &Ask) -> Result<(), Problem> {
    let range = |field, is: Length, least, most| {
        if is >= least && is <= most {
            Ok(())
        } else {
            Err(Problem::Beyond { field, least, most })
        }
    };
    let inches = Length::inches;
    range(Field::Thickness, ask.thickness, Length::mm(2), inches(3))?;
    range(Field::Width, ask.width, Length::mm(10), inches(24))?;
    range(Field::Casing, ask.casing, Length::ZERO, inches(24))?;
    range(Field::Reveal, ask.reveal, Length::ZERO, inches(2))?;
    range(Field::Board, ask.board, Length::ZERO, inches(4))?;
    range(Field::Nails, ask.nails, inches(2), inches(48))?;
    if let Some(bead) = ask.caulk {
        range(Field::Bead, bead, Length::mm(1), Length::in_64(0, 48))?;
    }
    let least = book::LEAST_JOINED.value * 2;
    if ask.stick < least {
        let stick = ask.stick;
        return Err(Problem::StickTooShort { stick, least });
    }
    match (ask.kind, &ask.walls) {
        (Kind::Base, None) => {
            for (n, piece) in ask.pieces.iter().enumerate() {
                range(
                    Field::Piece(n),
                    piece.length,
                    Length::mm(10),
                    Length::feet(200),
                )?;
            }
        }
        (Kind::Base, Some(walls)) => {
            for (wall, one) in walls.iter().enumerate() {
                let turn = one.turn;
                if turn > SHARPEST || turn < -SHARPEST {
                    return Err(Problem::TooSharp { wall, turn });
                }
            }
        }
        (Kind::Casing, _) => {
            for (n, frame) in ask.frames.iter().enumerate() {
                let most = Length::feet(20);
                range(Field::FrameWidth(n), frame.width, inches(4), most)?;
                range(Field::FrameHeight(n), frame.height, inches(4), most)?;
            }
        }
    }
    Ok(())
}
