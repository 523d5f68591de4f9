//! What the pad fills in.

use super::{PhotoSlot, SheetsSlot, TrimSlot};
use crate::site::{Id, Size, What};
use crate::takeoff::PackKey;
use crate::trades::{Material, drain, paint::Product, patch, pipe};

/// A figure of the person's own, by its place.
#[derive(Clone, Debug, PartialEq)]
pub enum Slot {
    /// The job's name.
    JobName,
    /// A room's name.
    RoomName(usize),
    /// A wall's length.
    WallLength(usize, usize),
    /// The corner at a wall's right end, measured inside the room.
    WallTurn(usize, usize),
    /// A room's ceiling height.
    Ceiling(usize),
    /// One wall's own height.
    WallHeight(usize, usize),
    /// An opening's left edge, from the wall's left corner.
    OpeningFromLeft(usize, usize),
    /// An opening's width.
    OpeningWidth(usize, usize),
    /// An opening's height.
    OpeningHeight(usize, usize),
    /// An opening's sill.
    OpeningSill(usize, usize),
    /// The centre of the first stud.
    FirstStud(StudsOf),
    /// The centre of a stud as it was found, counted from 0; one past the last is a new one.
    FoundStud(StudsOf, usize),
    /// Width of a stud's face.
    StudFace(StudsOf),
    /// A field of a patch, or of its first hole.
    Patch(usize, patch::Field),
    /// A field of one of a patch's other holes.
    OtherHole(usize, usize, patch::Field),
    /// From a stud's centre to a hole: the figure, the hole (`None` the first), the stud.
    FromStud(usize, Option<usize>, usize),
    /// The warmth of the air that compound dries in.
    AirWarmth(usize),
    /// Its humidity.
    AirHumidity(usize),
    /// A field of paint.
    Paint(usize, PaintSlot),
    /// A field of tile.
    Tile(usize, TileSlot),
    /// A field of grout or mortar.
    Mix(usize, MixSlot),
    /// A field of a run of pipe.
    Pipe(usize, PipeSlot),
    /// A new line on the roll.
    Roll,
    /// A field of the tape's bench.
    Tape(TapeSlot),
    /// A price.
    Price(PackKey),
    /// Packs to buy, by hand.
    Packs(PackKey),
    /// A new line by hand.
    HandLine,
    /// What a line by hand says.
    HandText(Id),
    /// How many of it.
    HandCount(Id),
    /// What one costs.
    HandPrice(Id),
    /// A field of a drain.
    Drain(usize, drain::Field),
    /// A field of sheets.
    Sheets(usize, SheetsSlot),
    /// A field of trim.
    Trim(usize, TrimSlot),
    /// A field of a material's cutting plan.
    Cut(Material, CutSlot),
    /// A measurement of a room.
    Measure(usize, What),
    /// How far a measurement of a room may be off.
    PlusMinus(usize, What),
    /// A place on the line of something hidden: the room, the thing, the place.
    Spot(usize, usize, usize, Size),
    /// How deep something hidden lies.
    HiddenDepth(usize, usize),
    /// Words about something in a room.
    RoomNote(usize, NoteOf),
    /// What is looked for on the shelf.
    Search,
    /// A field of a picture, of the log or of the camera.
    Photo(usize, PhotoSlot),
    /// A new step of the person's own, in a room or for the whole job.
    NewStep(Option<Id>),
    /// What such a step says.
    StepText(Id),
}

/// What words are about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoteOf {
    /// A fixed point.
    Fixed(usize),
    /// Something hidden.
    Hidden(usize),
    /// What something hidden is made of.
    Material(usize),
    /// A fixture.
    Fixture(usize),
}

/// Whose studs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StudsOf {
    /// Of a room's wall.
    Wall(usize, usize),
    /// Of a quick patch.
    Patch(usize),
}

/// A field of paint that the pad fills in; surfaces and trim count from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaintSlot {
    /// Width of a surface by hand; of a ceiling, its one side.
    Width(usize),
    /// Height of a surface by hand; of a ceiling, its other side.
    Height(usize),
    /// Length of a run of trim.
    TrimLength(usize),
    /// Its face.
    TrimFace(usize),
    /// The spread on a label.
    Rate(Product),
    /// Solids by volume, in per cent.
    Solids(Product),
    /// Dry film of one coat.
    DryFilm(Product),
    /// What a product is, in the person's words.
    Label(Product),
    /// Old paint scraped, sanded or cut.
    Disturbed,
    /// Standing height of the person.
    Stature,
    /// How far off the wall the person stands.
    StandingOff,
    /// Openings under this area are not taken off.
    SmallOpening,
}

/// A field of the tape's bench.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TapeSlot {
    /// One of two sides of a corner.
    Side(usize),
    /// One of two diagonals.
    Diagonal(usize),
    /// The run that is divided.
    Run,
    /// How many things.
    Count,
    /// How wide one is.
    Width,
    /// Inches on paper to the foot.
    Scale,
    /// Measured on the drawing.
    OnPaper,
    /// To be drawn.
    OnSite,
}

/// A field of tile.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TileSlot {
    /// Width of a surface by hand.
    Width,
    /// Its length or height.
    Height,
    /// The tile along the row.
    Long,
    /// The tile across the row.
    Short,
    /// The small square of two.
    Small,
    /// How thick.
    Thickness,
    /// The joint.
    Joint,
    /// The gap at the edges.
    Gap,
    /// The saw's cut.
    Kerf,
    /// By how much tiles differ.
    Spread,
    /// How far an edge is bowed.
    Warp,
    /// The line that the pattern is even about.
    Sight,
    /// How far the pattern is turned.
    Turn,
    /// What a box holds.
    Box,
    /// Breakage, in per cent.
    Breakage,
    /// Whole tiles kept.
    Attic,
    /// A joint held so far from the left edge.
    Hold,
    /// A field of something in the way, counted from 0.
    Thing(usize, ThingField),
    /// Small tiles along a sheet of mosaic.
    SheetAlong,
    /// Rows of a sheet.
    SheetRows,
    /// How far each row is shifted, in per cent of a tile.
    Shift,
    /// A joint held so far from the top edge.
    HoldTop,
    /// The line that the pattern is even about, from the top.
    SightTop,
}

/// A field of something in the way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThingField {
    /// Its width, or its diameter.
    Width,
    /// Its height.
    Height,
    /// From the left edge of the surface.
    Left,
    /// From the top edge of the surface.
    Top,
}

/// A field of grout or mortar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MixSlot {
    /// The area.
    Area,
    /// One side of the tile.
    TileA,
    /// The other.
    TileB,
    /// The joint.
    Width,
    /// Its depth.
    Depth,
    /// The colour.
    Color,
    /// What is bought or mixed beyond, in per cent.
    Waste,
    /// What a bag holds.
    Bag,
    /// What it covers.
    Covers,
    /// Water for a bag.
    Water,
    /// How long it is good in the bucket.
    PotLife,
    /// How long to wait before grouting.
    Wait,
    /// The trowel's notch, wide.
    NotchWidth,
    /// The trowel's notch, deep.
    NotchDepth,
    /// A bed, across.
    BedAcross,
    /// A bed, up.
    BedUp,
    /// How thick it is at the drain.
    AtDrain,
    /// Mortar in place.
    Volume,
    /// Parts of sand.
    SandParts,
    /// What a bag makes.
    Makes,
    /// What the bucket holds.
    Bucket,
    /// How full it is, in per cent.
    Fill,
    /// What is laid in an hour.
    Pace,
}

/// A field of a run of pipe; legs count from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PipeSlot {
    /// What it is called.
    Name,
    /// What the tape said of a leg.
    Length(usize),
    /// How far it goes on beyond the wall at one of its ends.
    Beyond(usize, pipe::Side),
    /// How far an offset is set over.
    Set(usize),
    /// How far it rolls.
    Roll(usize),
    /// A fitting, from its centre to its face.
    Face(pipe::Shape),
    /// How deep its hub is.
    Depth(pipe::Shape),
    /// How far off a cut may be.
    Tape,
    /// What the cutter takes.
    Jaw,
    /// How long a stick is.
    Stick,
    /// The air where joints are made.
    Air,
    /// By how much it is warmed in use.
    Warms,
    /// How far lines are apart.
    Apart,
    /// How many lines.
    Lines,
    /// Where it has to end: right, into the wall, up.
    Closes(usize),
    /// From the left corner of its wall to its start.
    FromLeft,
    /// From the floor to its start; under a floor, out from the wall.
    UpFromFloor,
    /// How far below the finished floor it starts.
    Below,
    /// A length of the joists under the floor of its room.
    Joists(JoistSlot),
}

/// A length of the joists under a floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JoistSlot {
    /// From the wall that they run along to the centre of the first.
    First,
    /// From centre to centre.
    Spacing,
    /// How thick one is.
    Face,
    /// From edge to edge.
    Depth,
    /// From the finished floor down to them.
    Deck,
}

/// A field of a material's cutting plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutSlot {
    /// What the saw takes.
    Kerf,
    /// An offcut on hand, counted from 0.
    Offcut(usize),
    /// One more.
    NewOffcut,
    /// One more length on sale.
    Stick,
}
