//! A room profile: its walls in order, its height, and what each surface gets.

use super::{FixedPoint, Fixture, Hidden, Id, Joists, Opening, Studs, Survey};
use crate::measure::{Amount, Angle, Figures, Length, Units};

/// A room as it was measured.
///
/// Walls run clockwise as seen from above, so that someone inside who faces wall 0 and turns right faces wall 1, and
/// the start of every wall is its left corner as seen from inside.
#[derive(Clone, Debug, PartialEq)]
pub struct Room {
    /// What it is known by in every copy of its job.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// The walls, in order.
    pub walls: Vec<Wall>,
    /// Floor to ceiling where a wall says nothing else; `None` until measured.
    pub ceiling: Option<Length>,
    /// Doors, windows, niches and pass-throughs.
    pub openings: Vec<Opening>,
    /// What the ceiling gets.
    pub ceiling_finish: Finish,
    /// What the floor gets.
    pub floor_finish: Finish,
    /// What is fixed on its walls and its floor.
    pub fixed: Vec<FixedPoint>,
    /// What is behind its walls and under its floor.
    pub hidden: Vec<Hidden>,
    /// Basin, toilet, tub and what else stands in it.
    pub fixtures: Vec<Fixture>,
    /// What the tape said beyond walls and openings, and how each measurement stands.
    pub survey: Survey,
    /// By how many quarter turns the plan is drawn turned, clockwise.
    pub facing: u8,
    /// The joists under its floor, where they are known.
    pub joists: Option<Joists>,
}

/// One wall of a room.
#[derive(Clone, Debug, PartialEq)]
pub struct Wall {
    /// Corner to corner; `None` until measured.
    pub length: Option<Length>,
    /// How long the sketch draws it while it is not measured.
    pub sketched: Length,
    /// The turn at its end (right corner) into the next wall: 90° at an inside corner, −90° where a corner juts in.
    pub turn: Angle,
    /// Its own height where it differs from the ceiling's.
    pub height: Option<Length>,
    /// Where its studs stand, if that is known.
    pub studs: Option<Studs>,
    /// What it gets.
    pub finish: Finish,
}

/// What a surface gets.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Finish {
    /// Primer and paint.
    #[default]
    Paint,
    /// Tile.
    Tile,
    /// Boards or panels.
    Boards,
    /// Left as it is.
    Leave,
}

impl Wall {
    /// A wall not measured yet, with a sketched length and the turn at its end.
    #[must_use]
    pub fn sketched(sketched: Length, turn: Angle) -> Wall {
        Wall {
            length: None,
            sketched,
            turn,
            height: None,
            studs: None,
            finish: Finish::Paint,
        }
    }
    /// A wall's letter: A, B … Z, then A2, B2 …
    #[must_use]
    pub fn named(index: usize) -> String {
        Units::Metres.amount(&Amount::Letter(index), Figures::Plain)
    }
}

impl Room {
    /// A room with nothing measured, from sketched inches and whole degrees of turn.
    fn template(name: &str, walls: &[(i64, i64)]) -> Room {
        let wall = |&(inches, turn): &(i64, i64)| {
            Wall::sketched(Length::inches(inches), Angle::degrees(turn))
        };
        Room {
            id: Id::NONE,
            name: name.to_owned(),
            walls: walls.iter().map(wall).collect(),
            ceiling: None,
            openings: Vec::new(),
            ceiling_finish: Finish::Paint,
            floor_finish: Finish::Tile,
            fixed: Vec::new(),
            hidden: Vec::new(),
            fixtures: Vec::new(),
            survey: Survey::default(),
            facing: 0,
            joists: None,
        }
    }
    /// Four walls, nothing measured.
    #[must_use]
    pub fn rectangle(name: &str) -> Room {
        Room::template(name, &[(96, 90), (60, 90), (96, 90), (60, 90)])
    }
    /// Six walls with one corner that juts in, nothing measured.
    #[must_use]
    pub fn l_shape(name: &str) -> Room {
        let walls = [(96, 90), (48, 90), (36, -90), (36, 90), (60, 90), (84, 90)];
        Room::template(name, &walls)
    }
}
