//! What the pad asks for, in words.

use super::{App, MixSlot, PaintSlot, Slot, StudsOf, TapeSlot, ThingField, TileSlot};
use crate::site::Wall;
use crate::trades::paint::Product;
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
                format!("Corner at the right end of wall {}", Wall::named(*wall))
            }
            Slot::Ceiling(_) => "Floor to ceiling".into(),
            Slot::WallHeight(_, wall) => format!("Wall {}, its own height", Wall::named(*wall)),
            Slot::OpeningFromLeft(room, at) => opening(room, at, "from left corner"),
            Slot::OpeningWidth(room, at) => opening(room, at, "width"),
            Slot::OpeningHeight(room, at) => opening(room, at, "height"),
            Slot::OpeningSill(room, at) => opening(room, at, "floor to lower edge"),
            Slot::FirstStud(of) => format!("{}left corner to first stud centre", wall_of(*of)),
            Slot::FoundStud(of, at) => {
                format!("{}left corner to centre of stud {}", wall_of(*of), at + 1)
            }
            Slot::StudFace(_) => "Face of a stud".into(),
            Slot::Patch(_, field) => patch_asks(*field).into(),
            Slot::Paint(_, field) => paint_asks(*field).into(),
            Slot::Roll => "Tape".into(),
            Slot::OtherHole(_, hole, field) => {
                format!("Hole {}: {}", hole + 2, patch_asks(*field).to_lowercase())
            }
            Slot::FromStud(_, _, stud) => format!("Centre of stud {} to the hole", stud + 1),
            Slot::AirWarmth(_) => "Warmth of the room".into(),
            Slot::AirHumidity(_) => "Humidity of the air".into(),
            Slot::Tile(_, field) => tile_asks(*field).into(),
            Slot::Mix(_, field) => mix_asks(*field).into(),
            Slot::Pipe(task, super::PipeSlot::UpFromFloor) if self.starts_in_floor(*task) => {
                "Wall out to its start".into()
            }
            Slot::Pipe(task, field) => super::pipe_words::asks(*field, self.pipe_ask(*task)),
            Slot::Tape(field) => tape_asks(*field).into(),
            Slot::Price(key) => format!("{}, price of one", self.pack_name(key)),
            Slot::Packs(key) => format!("{}, how many to buy", self.pack_name(key)),
            Slot::HandText(_) => "What to get".into(),
            Slot::HandCount(_) => "How many".into(),
            Slot::HandPrice(_) => "Price of one".into(),
            Slot::Drain(_, field) => super::drain_inputs::asks(*field).into(),
            Slot::Sheets(_, field) => super::sheets_inputs::asks(*field).into(),
            Slot::Trim(_, field) => super::trim_inputs::asks(*field),
            Slot::Cut(_, field) => super::cutting_page::asks(*field),
            Slot::Measure(room, what) => (self.job.rooms.get(*room))
                .map_or_else(String::new, |room| super::survey_words::asks(room, *what)),
            Slot::PlusMinus(room, what) => {
                self.job.rooms.get(*room).map_or_else(String::new, |room| {
                    format!(
                        "{}: more or less how much?",
                        super::survey_words::name(room, *what)
                    )
                })
            }
            Slot::Spot(_, _, at, crate::site::Size::FromLeft) => {
                format!("Place {}, from left corner", at + 1)
            }
            Slot::Spot(_, _, at, _) => format!("Place {}, up from the floor", at + 1),
            Slot::HiddenDepth(..) => "From the finished face to it".into(),
            Slot::RoomNote(_, super::NoteOf::Material(_)) => "What it is made of".into(),
            Slot::RoomNote(..) => "Note".into(),
            Slot::NewStep(_) | Slot::StepText(_) => "What is to be done".into(),
            Slot::Search => "Name contains".into(),
            Slot::Photo(at, field) => self.photo_asks(*at, *field),
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

/// "Wall A, " before what is asked of a wall's studs.
fn wall_of(of: StudsOf) -> String {
    match of {
        StudsOf::Wall(_, wall) => format!("Wall {}, ", Wall::named(wall)),
        StudsOf::Patch(_) => String::new(),
    }
}

fn paint_asks(field: PaintSlot) -> &'static str {
    match field {
        PaintSlot::Width(_) => "Width",
        PaintSlot::Height(_) => "Height",
        PaintSlot::TrimLength(_) => "Length of the trim",
        PaintSlot::TrimFace(_) => "Painted face of the trim",
        PaintSlot::Rate(Product::Primer) => "Spread on the primer's label",
        PaintSlot::Rate(_) => "Spread on the paint's label",
        PaintSlot::Solids(_) => "Solids by volume",
        PaintSlot::DryFilm(_) => "Dry film of one coat",
        PaintSlot::Label(_) => "What it is called",
        PaintSlot::Disturbed => "Old paint disturbed",
        PaintSlot::Stature => "How tall you are",
        PaintSlot::StandingOff => "How far off the wall",
        PaintSlot::SmallOpening => "Openings under",
    }
}

fn tape_asks(field: TapeSlot) -> &'static str {
    match field {
        TapeSlot::Side(0) => "One side",
        TapeSlot::Side(_) => "The other side",
        TapeSlot::Diagonal(0) => "One diagonal",
        TapeSlot::Diagonal(_) => "The other diagonal",
        TapeSlot::Run => "Over a length of",
        TapeSlot::Count => "How many",
        TapeSlot::Width => "How wide one is",
        TapeSlot::Scale => "On paper, for a foot",
        TapeSlot::OnPaper => "Measured on the drawing",
        TapeSlot::OnSite => "To be drawn",
    }
}

fn tile_asks(field: TileSlot) -> &'static str {
    match field {
        TileSlot::Width => "Width of the surface",
        TileSlot::Height => "Length or height of the surface",
        TileSlot::Long => "Tile, along the row",
        TileSlot::Short => "Tile, across the row",
        TileSlot::Small => "Small tile",
        TileSlot::Thickness => "Thickness of the tile",
        TileSlot::Joint => "Joint",
        TileSlot::Gap => "Gap at the edges",
        TileSlot::Kerf => "Saw cut",
        TileSlot::Spread => "Longest tile less the shortest",
        TileSlot::Warp => "Bow of an edge",
        TileSlot::Sight => "From the left to the line",
        TileSlot::Turn => "Pattern turned by",
        TileSlot::Box => "A box holds",
        TileSlot::Breakage => "Breakage",
        TileSlot::Attic => "Whole tiles kept for later",
        TileSlot::Hold => "From the left edge to the joint",
        TileSlot::SheetAlong => "Small tiles along a sheet",
        TileSlot::SheetRows => "Rows of a sheet",
        TileSlot::Shift => "Each row shifted by, of a tile",
        TileSlot::SightTop => "From the top to the line",
        TileSlot::HoldTop => "From the top edge to the joint",
        TileSlot::Thing(_, ThingField::Width) => "In the way: its width",
        TileSlot::Thing(_, ThingField::Height) => "In the way: its height",
        TileSlot::Thing(_, ThingField::Left) => {
            "From the left to its edge, or a round one's centre"
        }
        TileSlot::Thing(_, ThingField::Top) => "From the top to its edge, or a round one's centre",
    }
}

fn mix_asks(field: MixSlot) -> &'static str {
    match field {
        MixSlot::Area => "Area",
        MixSlot::TileA => "Tile, one side",
        MixSlot::TileB => "Tile, the other side",
        MixSlot::Width => "Joint",
        MixSlot::Depth => "Depth of the joint",
        MixSlot::Color => "Colour",
        MixSlot::Waste => "Beyond what is laid",
        MixSlot::Bag => "A bag holds",
        MixSlot::Covers => "A bag covers",
        MixSlot::Water => "Water for a bag",
        MixSlot::PotLife => "Good in the bucket for",
        MixSlot::Wait => "Grout after",
        MixSlot::NotchWidth => "Notch, wide",
        MixSlot::NotchDepth => "Notch, deep",
        MixSlot::BedAcross => "Bed, across",
        MixSlot::BedUp => "Bed, up",
        MixSlot::AtDrain => "Thick at the drain",
        MixSlot::Volume => "Mortar in place",
        MixSlot::SandParts => "Sand to one of cement",
        MixSlot::Makes => "A bag makes",
        MixSlot::Bucket => "The bucket holds",
        MixSlot::Fill => "Filled to",
        MixSlot::Pace => "Laid in an hour",
    }
}
