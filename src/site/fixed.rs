//! What is fixed on a wall or a floor: supplies, drains, valves, outlets, blocking.

use super::Id;
use crate::measure::Length;

/// A wall, or the floor before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum On {
    /// On a wall, counted from 0: from its left corner, and up from the floor.
    Wall(usize),
    /// On the floor: from the left corner of a wall along it, and out from that wall into the room.
    Floor(usize),
}

impl On {
    /// The wall that it is measured from.
    #[must_use]
    pub const fn wall(self) -> usize {
        match self {
            On::Wall(wall) | On::Floor(wall) => wall,
        }
    }

    /// The wall that it is measured from, to be put right where walls come and go.
    #[must_use]
    pub const fn wall_mut(&mut self) -> &mut usize {
        match self {
            On::Wall(wall) | On::Floor(wall) => wall,
        }
    }

    /// The same, measured from another wall.
    #[must_use]
    pub const fn with_wall(self, wall: usize) -> On {
        match self {
            On::Wall(_) => On::Wall(wall),
            On::Floor(_) => On::Floor(wall),
        }
    }
}

/// How a place is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Known {
    /// With the tape.
    #[default]
    Tape,
    /// From a picture, so much more or less.
    Picture(Length),
}

impl Known {
    /// How far it may be off beyond what a tape is read to.
    #[must_use]
    pub fn give(self) -> Length {
        match self {
            Known::Tape => Length::ZERO,
            Known::Picture(give) => give,
        }
    }
}

/// What a fixed point is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FixedKind {
    /// A hot supply.
    Hot,
    /// A cold supply.
    Cold,
    /// A drain or a waste.
    Drain,
    /// A valve.
    Valve,
    /// A socket for a plug.
    Outlet,
    /// A switch.
    Switch,
    /// A niche that is planned; one that is there is an opening.
    Niche,
    /// Wood between studs, to screw into.
    Blocking,
    /// A fan or a vent.
    Vent,
    /// A light.
    Light,
    /// A register or a heater's connection.
    Heat,
    /// Anything else: the note says what.
    Other,
}

impl FixedKind {
    /// Every kind, in the order of a list.
    pub const ALL: [FixedKind; 12] = [
        FixedKind::Hot,
        FixedKind::Cold,
        FixedKind::Drain,
        FixedKind::Valve,
        FixedKind::Outlet,
        FixedKind::Switch,
        FixedKind::Niche,
        FixedKind::Blocking,
        FixedKind::Vent,
        FixedKind::Light,
        FixedKind::Heat,
        FixedKind::Other,
    ];

    /// A run of pipe may begin or end at it.
    #[must_use]
    pub const fn is_pipe(self) -> bool {
        matches!(
            self,
            FixedKind::Hot | FixedKind::Cold | FixedKind::Drain | FixedKind::Valve
        )
    }

    /// What it is called on a screen.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            FixedKind::Hot => "Hot supply",
            FixedKind::Cold => "Cold supply",
            FixedKind::Drain => "Drain",
            FixedKind::Valve => "Valve",
            FixedKind::Outlet => "Outlet",
            FixedKind::Switch => "Switch",
            FixedKind::Niche => "Niche, planned",
            FixedKind::Blocking => "Blocking",
            FixedKind::Vent => "Vent",
            FixedKind::Light => "Light",
            FixedKind::Heat => "Heat",
            FixedKind::Other => "Other",
        }
    }
}

/// Something fixed on a wall or a floor, by its centre.
#[derive(Clone, Debug, PartialEq)]
pub struct FixedPoint {
    /// What it is known by in its room; a copy of the room keeps it.
    pub id: Id,
    /// What it is.
    pub kind: FixedKind,
    /// Where it is measured from.
    pub on: On,
    /// From the left corner of its wall to its centre; `None` until measured.
    pub from_left: Option<Length>,
    /// Up from the floor to its centre; on the floor, out from the wall. `None` until measured.
    pub up: Option<Length>,
    /// Across, where it has a size.
    pub width: Option<Length>,
    /// Up, where it has a size.
    pub height: Option<Length>,
    /// Behind the finished face, where that is known.
    pub depth: Option<Length>,
    /// What the person says of it.
    pub note: String,
    /// How its place is known.
    pub known: Known,
}

impl FixedPoint {
    /// One of a kind, nothing of it measured.
    #[must_use]
    pub fn new(kind: FixedKind, on: On) -> FixedPoint {
        FixedPoint {
            id: Id::fresh(),
            kind,
            on,
            from_left: None,
            up: None,
            width: None,
            height: None,
            depth: None,
            note: String::new(),
            known: Known::Tape,
        }
    }
}

/// What is behind the board.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HiddenKind {
    /// A pipe.
    Pipe,
    /// A cable.
    Cable,
    /// A stud or other framing.
    Stud,
    /// Wood between studs.
    Blocking,
    /// A valve's body.
    Valve,
    /// A duct.
    Duct,
    /// Anything else: the note says what.
    Other,
    /// An electric box: of an outlet, a switch, a light, or a junction under the board.
    ElectricBox,
}

impl HiddenKind {
    /// Every kind, in the order of a list.
    pub const LIST: [HiddenKind; 8] = [
        HiddenKind::Pipe,
        HiddenKind::Cable,
        HiddenKind::ElectricBox,
        HiddenKind::Stud,
        HiddenKind::Blocking,
        HiddenKind::Valve,
        HiddenKind::Duct,
        HiddenKind::Other,
    ];

    /// Every kind, in the order of the codes of a file: a new one comes last.
    pub const ALL: [HiddenKind; 8] = [
        HiddenKind::Pipe,
        HiddenKind::Cable,
        HiddenKind::Stud,
        HiddenKind::Blocking,
        HiddenKind::Valve,
        HiddenKind::Duct,
        HiddenKind::Other,
        HiddenKind::ElectricBox,
    ];

    /// Electricity runs in it.
    #[must_use]
    pub const fn is_live(self) -> bool {
        matches!(self, HiddenKind::Cable | HiddenKind::ElectricBox)
    }

    /// What it is called on a screen.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            HiddenKind::Pipe => "Pipe",
            HiddenKind::Cable => "Cable",
            HiddenKind::Stud => "Stud",
            HiddenKind::Blocking => "Blocking",
            HiddenKind::Valve => "Valve body",
            HiddenKind::Duct => "Duct",
            HiddenKind::Other => "Other",
            HiddenKind::ElectricBox => "Electric box",
        }
    }
}

/// A place on a wall or a floor.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Spot {
    /// From the left corner of the wall.
    pub from_left: Length,
    /// Up from the floor; on the floor, out from the wall.
    pub up: Length,
}

/// Something behind the face of a wall or under a floor: a point, or a line through points.
#[derive(Clone, Debug, PartialEq)]
pub struct Hidden {
    /// What it is known by in its room; a copy of the room keeps it.
    pub id: Id,
    /// What it is.
    pub kind: HiddenKind,
    /// Behind which surface.
    pub on: On,
    /// Its centre line, or the one place where it is.
    pub line: Vec<Spot>,
    /// Across, where that is known.
    pub width: Option<Length>,
    /// From the finished face to it, where that is known.
    pub depth: Option<Length>,
    /// What it is made of, in the person's words.
    pub material: String,
    /// What the person says of it.
    pub note: String,
    /// How its place is known.
    pub known: Known,
    /// The picture that shows it, by its name among the job's pictures.
    pub picture: Option<String>,
}

impl Hidden {
    /// One of a kind at no place yet.
    #[must_use]
    pub fn new(kind: HiddenKind, on: On) -> Hidden {
        Hidden {
            id: Id::fresh(),
            kind,
            on,
            line: Vec::new(),
            width: None,
            depth: None,
            material: String::new(),
            note: String::new(),
            known: Known::Tape,
            picture: None,
        }
    }
}
