//! What the pad asks for, in words.

use super::{App, PaintSlot, Slot};
use crate::site::Wall;
use crate::trades::patch::Field;

impl App {
    /// What a slot asks for, in words.
    pub(super) fn asks(&self, slot: &Slot) -> String {
        let opening = |room: &usize, at: &usize, what: &str| {
            let opening = self
                .job
                .rooms
                .get(*room)
                .and_then(|room| room.openings.get(*at));
            opening.map_or_else(String::new, |o| {
                format!(
                    "Wall {}, {}: {what}",
                    Wall::named(o.wall),
                    super::wall_page::kind_name(o.kind).to_lowercase()
                )
            })
        };
        match slot {
            Slot::JobName => "Name of the job".into(),
            Slot::RoomName(_) => "Name of the room".into(),
            Slot::HandLine => "What to get".into(),
            Slot::WallLength(_, wall) => format!("Wall {}, corner to corner", Wall::named(*wall)),
            Slot::WallTurn(_, wall) => {
                format!("Turn at the right end of wall {}", Wall::named(*wall))
            }
            Slot::Ceiling(_) => "Floor to ceiling".into(),
            Slot::WallHeight(_, wall) => format!("Wall {}, its own height", Wall::named(*wall)),
            Slot::OpeningFromLeft(room, at) => opening(room, at, "from left corner"),
            Slot::OpeningWidth(room, at) => opening(room, at, "width"),
            Slot::OpeningHeight(room, at) => opening(room, at, "height"),
            Slot::OpeningSill(room, at) => opening(room, at, "floor to lower edge"),
            Slot::FirstStud(_, wall) => format!(
                "Wall {}, left corner to first stud centre",
                Wall::named(*wall)
            ),
            Slot::Patch(_, field) => patch_asks(*field).into(),
            Slot::Paint(_, field) => paint_asks(*field).into(),
            Slot::Roll => "Tape".into(),
            Slot::Square(0) => "One side".into(),
            Slot::Square(_) => "The other side".into(),
            Slot::Spacing(2) => "How many".into(),
            Slot::Spacing(_) => "Spaced over".into(),
            Slot::Price(_) => "Price of one pack".into(),
            Slot::Packs(_) => "Packs to buy".into(),
        }
    }
}

fn patch_asks(field: Field) -> &'static str {
    match field {
        Field::HoleWidth => "Width of the hole",
        Field::HoleHeight => "Height of the hole",
        Field::HoleAcross => "Hole, across",
        Field::FromLeft => "Left corner to the hole",
        Field::AboveFloor => "Floor to the hole",
        Field::Board => "Thickness of the board",
        Field::Gap => "Gap all round",
        Field::ScrewSpacing => "Screws at most apart",
        Field::FirstStud => "Left corner to first stud centre",
        Field::StudSpacing => "Stud to stud",
        Field::StudFace => "Face of a stud",
        Field::WallLength => "Length of the wall",
        Field::WallHeight => "Height of the wall",
    }
}

fn paint_asks(field: PaintSlot) -> &'static str {
    match field {
        PaintSlot::Width => "Width",
        PaintSlot::Height => "Height",
        PaintSlot::PrimerRate => "Spread on the primer's label",
        PaintSlot::FinishRate => "Spread on the paint's label",
        PaintSlot::Solids => "Solids by volume",
        PaintSlot::Stature => "How tall you are",
    }
}
