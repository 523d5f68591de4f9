//! A job: its rooms, the figures asked for, the tape roll and what is bought.

use chrono::{DateTime, FixedOffset};

use std::collections::BTreeMap;
use std::sync::Arc;

use super::{Buying, StepNote};
use crate::measure::{Length, Units};
use crate::photo::Photo;
use crate::site::{Fixture, FixtureKind, Id, On, OpeningRule, Room, Spot};
use crate::trades::{drain, grout, mortar, paint, patch, pipe, sheets, tape, tile, trim};

/// All that a person keeps about one job.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// What it is known by in every copy.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// When it was begun, in local time.
    pub begun: DateTime<FixedOffset>,
    /// How figures are shown, and what a bare number means.
    pub units: Units,
    /// The room profiles.
    pub rooms: Vec<Room>,
    /// The figures asked for, oldest first.
    pub tasks: Vec<Task>,
    /// Measures and sums, oldest first.
    pub roll: Vec<Arc<RollLine>>,
    /// What is bought.
    pub buying: Buying,
    /// What lies on the tape's bench.
    pub tape: TapeBench,
    /// The batch in the bucket.
    pub batch: Option<Batch>,
    /// The log of pictures, in the order in which they came in.
    pub photos: Vec<Arc<Photo>>,
    /// What was ticked and moved of the order of work, and steps of the person's own.
    pub steps: Vec<StepNote>,
    /// The figures whose outline was traced on a picture.
    pub traced: BTreeMap<Id, Traced>,
}

/// Where a figure's outline was traced: an estimate until a tape is put on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Traced {
    /// The picture.
    pub photo: Id,
    /// The mark on it, by its number.
    pub mark: u32,
    /// By how much its corners may be off, about 19 times in 20.
    pub give: Length,
}

/// A batch that was mixed: it rests, is stirred again, and is thrown away in time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Batch {
    /// When it was mixed.
    pub mixed: DateTime<FixedOffset>,
    /// Minutes that it rests before it is stirred again.
    pub rest: f64,
    /// Minutes after which it is thrown away.
    pub good: f64,
}

/// One figure that was asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct Task {
    /// What it is known by in every copy of its job.
    pub id: Id,
    /// The room that it stands in, counted from 0; `None` for a quick figure.
    pub room: Option<usize>,
    /// What was asked.
    pub ask: Ask,
    /// Whether its materials are on the buying list.
    pub on_list: bool,
}

/// What was asked of a trade.
#[derive(Clone, Debug, PartialEq)]
pub enum Ask {
    /// Paint, with the rule by which openings are deducted from a room's walls.
    Paint(Box<paint::Ask>, OpeningRule),
    /// A patch, on one wall of the room.
    Patch(Box<patch::Ask>, Option<usize>),
    /// Tile, by hand or on a surface of the room.
    Tile(Box<tile::Ask>, TileOn),
    /// Grout; the area, the joints and their depth by hand, or from the layout of the tile figure that is named.
    Grout(Box<grout::Ask>, Option<Id>),
    /// Mortar; the area and the tile by hand, or from the layout of the tile figure that is named.
    Mortar(Box<mortar::Ask>, Option<Id>),
    /// A run of pipe, and where it starts on a wall or in the floor of the room.
    Pipe(Box<pipe::Ask>, Option<PipeOn>),
    /// A drain.
    Drain(Box<drain::Ask>),
    /// Board in sheets, by hand or on a surface of the room; a ceiling has the outline of its floor.
    Sheets(Box<sheets::Ask>, TileOn),
    /// Trim, by hand or round a room, with what of the room it goes round.
    Trim(Box<trim::Ask>, TrimOn),
}

/// Where a run of pipe starts on a wall or in the floor of its room: at a fixed point, or at a place of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PipeOn {
    /// The wall, or the floor as it is measured from a wall; the run is seen facing that wall.
    pub on: On,
    /// The fixed point that it starts at; it goes before the place.
    pub point: Option<Id>,
    /// From the wall's left corner, and up from the floor; in the floor, out from the wall.
    pub spot: Spot,
    /// In the floor: how far below the finished floor it starts.
    pub below: Length,
    /// How deep the studs of the wall are.
    pub depth: Length,
    /// The wall carries something, or is an outside wall.
    pub bearing: bool,
}

impl PipeOn {
    /// On a wall, not said yet where; studs of 3 1/2 in, taken to bear until it is said that they do not.
    #[must_use]
    pub fn wall(wall: usize) -> PipeOn {
        PipeOn::at(On::Wall(wall))
    }

    /// The same on a wall or in the floor.
    #[must_use]
    pub fn at(on: On) -> PipeOn {
        PipeOn {
            on,
            point: None,
            spot: Spot::default(),
            below: Length::ZERO,
            depth: Length::in_64(3, 32),
            bearing: true,
        }
    }

    /// Whether it was said where it starts. Its centre is never at the corner itself, for a pipe has a thickness.
    #[must_use]
    pub fn is_said(&self) -> bool {
        self.point.is_some() || self.spot.from_left.is_positive()
    }
}

/// What of its room trim goes round.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TrimOn {
    /// Doors, windows and other openings are cased.
    pub cased: [bool; 3],
    /// Windows are cased on four sides, else on three.
    pub four: bool,
    /// Base runs along walls that get tile, too.
    pub tiled: bool,
    /// Fixtures of which the person said whether base stops at them.
    pub stops: Vec<(Id, bool)>,
}

impl Default for TrimOn {
    /// Doors and windows, windows on four sides.
    fn default() -> TrimOn {
        TrimOn {
            cased: [true, true, false],
            four: true,
            tiled: false,
            stops: Vec::new(),
        }
    }
}

impl TrimOn {
    /// Whether base stops at a fixture: at a tub and a shower unless it was said otherwise.
    #[must_use]
    pub fn stops_at(&self, fixture: &Fixture) -> bool {
        let said = self.stops.iter().find(|(id, _)| *id == fixture.id);
        said.map_or(
            matches!(fixture.kind, FixtureKind::Tub | FixtureKind::Shower),
            |(_, stops)| *stops,
        )
    }
}

/// What a tile layout lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TileOn {
    /// A rectangle by hand.
    Own,
    /// The room's floor.
    Floor,
    /// A wall of the room.
    Wall(usize),
}

/// One line of the tape roll: what was typed, exactly, and what it came to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RollLine {
    /// What it is known by in every copy of its job.
    pub id: Id,
    /// What it measures, or nothing.
    pub label: String,
    /// As typed.
    pub typed: String,
    /// What it came to.
    pub length: Length,
}

/// What was typed on the tape's bench: sides to square, things to space, a drawing to read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TapeBench {
    /// Two sides of a corner.
    pub sides: [Option<Length>; 2],
    /// The two diagonals of a room or a panel.
    pub diagonals: [Option<Length>; 2],
    /// The run that things are spaced over, halved or centred in.
    pub run: Option<Length>,
    /// How many things.
    pub count: u32,
    /// How wide one is; nothing for a mark.
    pub width: Option<Length>,
    /// Whether the first and the last stand at the ends.
    pub ends: tape::Ends,
    /// A drawing's scale: inches on paper to the foot.
    pub scale: Length,
    /// What was measured on the drawing.
    pub on_paper: Option<Length>,
    /// What is to be drawn.
    pub on_site: Option<Length>,
}

impl Default for TapeBench {
    /// Nothing measured; two marks between the ends; an inch to the foot.
    fn default() -> TapeBench {
        TapeBench {
            sides: [None; 2],
            diagonals: [None; 2],
            run: None,
            count: 2,
            width: None,
            ends: tape::Ends::Open,
            scale: Length::inches(1),
            on_paper: None,
            on_site: None,
        }
    }
}

impl Job {
    /// A job with nothing in it.
    #[must_use]
    pub fn new(name: impl Into<String>, begun: DateTime<FixedOffset>, units: Units) -> Job {
        Job {
            id: Id::fresh(),
            name: name.into(),
            begun,
            units,
            rooms: Vec::new(),
            tasks: Vec::new(),
            roll: Vec::new(),
            buying: Buying::default(),
            tape: TapeBench::default(),
            batch: None,
            photos: Vec::new(),
            steps: Vec::new(),
            traced: BTreeMap::new(),
        }
    }

    /// A room into the job, under a name that no other entry has.
    pub fn add_room(&mut self, room: Room) {
        self.rooms.push(Room {
            id: Id::fresh(),
            ..room
        });
    }

    /// Figures out of the job, with what is known of their outlines.
    pub fn keep_tasks(&mut self, keep: impl FnMut(&Task) -> bool) {
        self.tasks.retain(keep);
        let tasks = &self.tasks;
        let stands = |id: &Id| tasks.iter().any(|task| task.id == *id);
        self.traced.retain(|id, _| stands(id));
    }

    /// A figure into the job.
    pub fn add_task(&mut self, room: Option<usize>, ask: Ask) {
        self.tasks.push(Task {
            id: Id::fresh(),
            room,
            ask,
            on_list: false,
        });
    }

    /// A picture of the log, to change it.
    pub fn photo_mut(&mut self, at: usize) -> Option<&mut Photo> {
        self.photos.get_mut(at).map(Arc::make_mut)
    }

    /// A line onto the roll.
    pub fn add_to_roll(&mut self, label: String, typed: String, length: Length) {
        self.roll.push(Arc::new(RollLine {
            id: Id::fresh(),
            label,
            typed,
            length,
        }));
    }
}
