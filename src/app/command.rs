//! What a tap can ask for.

use super::{PhotoCommand, RoomChoice, SheetsChoice, Slot, StepCommand, StudsOf, TrimChoice};
use crate::drawing::View;
use crate::geometry::Point;
use crate::handbook::pipe as book;
use crate::measure::Length;
use crate::site::{Finish, Id, OpeningKind, OpeningRule};
use crate::takeoff::{LineKey, Saw, StepKey, TileOn};
use crate::trades::sheets::Surface;
use crate::trades::trim;
use crate::trades::{Grout, Material, drain, mortar, paint, patch, pipe, tape, tile};

/// A place in the program.
#[derive(Clone, Debug, PartialEq, Default)]
pub enum Here {
    /// The rooms of the job.
    #[default]
    Rooms,
    /// A room's plan.
    Room(usize),
    /// One wall of a room, seen from inside.
    Wall(usize, usize),
    /// The bench of trades.
    Bench,
    /// A figure.
    Task(usize),
    /// How a figure was figured.
    Working(usize),
    /// The tape: its roll, spacing, scales, square.
    Tape,
    /// The buying list.
    Buy,
    /// One line of the buying list.
    Line(LineKey),
    /// The jobs in the folder, the shelf of profiles, and how it looks.
    More,
    /// The strip by which a cut of a run is marked.
    Strip(usize),
    /// A piece of a figure in sheets, as it is marked.
    Piece(usize, usize),
    /// Specs of one surface, side by side.
    Compare(usize),
    /// The earlier versions of the job.
    Versions,
    /// Handing the job over, and what was handed over to us.
    Sharing,
    /// The cutting plan of a material; of the first where none is named.
    Cutting(Option<Material>),
    /// A room being measured.
    Survey(usize),
    /// How square, plumb, flat and level a room is.
    Square(usize),
    /// A room's outline being changed.
    Outline(usize),
    /// The shelf of profiles.
    Profiles,
    /// Two rooms side by side.
    SideBySide(usize, usize),
    /// The log of pictures.
    Photos,
    /// What a camera sees.
    Camera,
    /// An outline traced on a picture: the picture, and the number of the mark.
    Traced(usize, u32),
    /// A picture.
    Photo(usize),
    /// The order of work.
    Steps,
    /// One step of it.
    Step(StepKey),
}

/// What a tap asks for.
#[derive(Clone, Debug, PartialEq)]
pub enum Command {
    /// Go somewhere.
    Go(Here),
    /// Go back.
    Back,
    /// Open the pad.
    Pad(Slot),
    /// The pad on each of these, one after the other: all that is measured of one thing.
    Walk(Vec<Slot>),
    /// Take back the last edit.
    Undo,
    /// Do it again.
    Redo,
    /// A new room of a shape.
    NewRoom(Shape),
    /// Remove a room.
    RemoveRoom(usize),
    /// Keep a copy of a room on the shelf.
    KeepRoom(usize),
    /// A room from the shelf into this job.
    TakeRoom(usize),
    /// Two more walls at a wall's right end, which juts in.
    Jog(usize, usize),
    /// One more wall, across the corner at a wall's right end.
    CutCorner(usize, usize),
    /// One wall fewer.
    RemoveWall(usize, usize),
    /// The turn at a wall's end, in millionths of a degree.
    Corner(usize, usize, i64),
    /// What a wall gets.
    WallFinish(usize, usize, Finish),
    /// What the ceiling gets.
    CeilingFinish(usize, Finish),
    /// What the floor gets.
    FloorFinish(usize, Finish),
    /// An opening in a wall.
    AddOpening(usize, usize, OpeningKind),
    /// No opening there.
    RemoveOpening(usize, usize),
    /// Studs at a spacing, or none known.
    StudSpacing(StudsOf, Option<Length>),
    /// Studs one by one, as they were found.
    StudsAsFound(StudsOf),
    /// A stud that was found and is none.
    RemoveStud(StudsOf, usize),
    /// A new patch, on a wall or by hand.
    NewPatch(Option<(usize, usize)>),
    /// New paint, for a room or by hand.
    NewPaint(Option<usize>),
    /// A quick figure onto a room, and onto a wall of it if it stands on one.
    Lay(usize, usize, Option<usize>),
    /// New tile, on a surface of a room or by hand.
    NewTile(Option<usize>, TileOn),
    /// New grout, for a tile figure or by hand.
    NewGrout(Option<Id>),
    /// New mortar, for a tile figure or by hand.
    NewMortar(Option<Id>),
    /// A new run of pipe, on a wall of a room or by hand.
    NewPipe(Option<(usize, usize)>),
    /// A leg of the run into hand.
    Leg(usize),
    /// How runs are looked at.
    Seen(View),
    /// The chalk lines of a figure as they were before the last edit moved them.
    KeepLines(usize),
    /// The tiles of a figure, slid so far.
    Nudge(usize, Point),
    /// Grout or mortar for a tile figure, in place of what was typed for it.
    MixFor(usize, Id),
    /// Another spec of the same surface.
    Twin(usize),
    /// A batch of a figure was mixed now.
    Mixed(usize),
    /// The bucket is empty.
    BatchDone,
    /// Remove a figure.
    RemoveTask(usize),
    /// Put a figure's materials on the buying list, or take them off.
    OnList(usize, bool),
    /// A choice within a figure.
    Set(usize, Choice),
    /// Tick a line off.
    Tick(LineKey),
    /// Take a line's own counts back.
    Unpack(LineKey),
    /// Cheapest, or least left over.
    Cheapest(bool),
    /// Packs in metric sizes.
    MetricPacks(bool),
    /// Remove a line by hand.
    RemoveHandLine(Id),
    /// Clear the roll.
    ClearRoll,
    /// A line of the roll into the hand, for the next figure that is tapped; or out of it.
    Hold(Option<Length>),
    /// Whether the first and the last thing stand at the ends.
    Ends(tape::Ends),
    /// A drawing's scale, in inches on paper to the foot.
    Scale(Length),
    /// Feet and inches, or metric.
    Units(crate::measure::Units),
    /// Day, night, sun.
    Theme(crate::drawing::Theme),
    /// Text size in per cent.
    TextSize(u16),
    /// A new job.
    NewJob,
    /// Open a job from the folder.
    OpenJob(std::path::PathBuf),
    /// Write a job that was only read.
    TakeOver,
    /// Save what is whole of a damaged job as a new one.
    Recover,
    /// Keep the job in another folder from now on.
    KeepElsewhere(std::path::PathBuf),
    /// Hand the job over as one file.
    Share,
    /// Take in a file that was handed over: brought together with this job, or as another one.
    TakeIn(std::path::PathBuf),
    /// Look on this device for a file that was handed over, where the activity around the program does that.
    Fetch,
    /// Write the job as plain JSON.
    WriteJson,
    /// Go back to an earlier version.
    Restore(std::path::PathBuf),
    /// The about sheet, shown or not.
    About(bool),
    /// A new drain, in a room or by hand.
    NewDrain(Option<usize>),
    /// New sheets, on a surface of a room or by hand.
    NewSheets(Option<usize>, TileOn, Surface),
    /// New trim, round a room or by hand.
    NewTrim(Option<usize>, trim::Kind),
    /// A choice of a material's cutting plan.
    Cut(Material, CutChoice),
    /// Something done to a room.
    Of(usize, RoomChoice),
    /// A room from the shelf into this job, mirrored.
    TakeMirrored(usize),
    /// A profile off the shelf.
    DropProfile(usize),
    /// The profile that was taken off last, back on the shelf.
    PutProfileBack,
    /// A picture or the log.
    Photo(PhotoCommand),
    /// The order of work.
    Step(StepCommand),
    /// What a room left of a material on hand for the others, or no longer.
    HandOver(usize, Material, Leftover, bool),
    /// All figures of a room off the buying list: what they need is bought.
    Bought(usize),
}

/// What is handed over from one room to the others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Leftover {
    /// A rest of a stick.
    Stick(Length),
    /// Off-cuts of one size: their sides, and how many.
    Pieces((Length, Length), u32),
    /// What is in opened packs.
    Part(f64),
}

/// The shape that a new room starts from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// Four walls.
    Rectangle,
    /// Six walls.
    L,
    /// Eight walls.
    Alcove,
    /// Three walls, to which more are added.
    Own,
}

/// A choice within a figure.
#[derive(Clone, Debug, PartialEq)]
pub enum Choice {
    /// How a hole is mended; `None` lets the figure decide.
    Method(Option<patch::Method>),
    /// A rectangular hole, or a round one.
    Round(bool),
    /// Board of a thickness.
    Board(Length),
    /// Fire-rated wall.
    FireRated(bool),
    /// One more hole in the same wall.
    AddHole,
    /// One hole fewer.
    RemoveHole(usize),
    /// Coats of paint.
    Coats(u8),
    /// Coats of primer.
    PrimerCoats(u8),
    /// Texture of what is painted.
    Texture(paint::Texture),
    /// Sheen of the paint.
    Sheen(paint::Sheen),
    /// When the house was built.
    Built(paint::Built),
    /// How openings are deducted.
    Openings(OpeningRule),
    /// One more wall or ceiling by hand.
    AddSurface(paint::Part),
    /// A surface fewer.
    RemoveSurface(usize),
    /// A run of trim, by its name.
    AddTrim(&'static str),
    /// A run of trim fewer.
    RemoveTrim(usize),
    /// The finish level of the board.
    Level(Option<u8>),
    /// What binds the paint.
    Binder(paint::Binder),
    /// Done for pay, or in a home that is rented out.
    Paid(bool),
    /// A choice of tile.
    Tile(TileChoice),
    /// A choice of grout or mortar.
    Mix(MixChoice),
    /// A choice of a run of pipe.
    Pipe(PipeChoice),
    /// A choice of a drain.
    Drain(DrainChoice),
    /// A choice of sheets.
    Sheets(SheetsChoice),
    /// A choice of trim.
    Trim(TrimChoice),
}

/// A choice of a run of pipe. Legs count from 0; node 0 is the start, node 1 the end of the first leg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PipeChoice {
    /// What it is made of.
    Pipe(book::Pipe),
    /// Its size at the start.
    Size(book::Size),
    /// One more leg, that way.
    Add(pipe::Direction),
    /// One more leg, an offset over that way.
    AddOffset(pipe::Direction),
    /// A leg fewer.
    Remove(usize),
    /// A leg straight that way.
    Way(usize, pipe::Direction),
    /// The fittings of an offset.
    Angle(usize, book::Turn),
    /// An offset over that way.
    Aside(usize, pipe::Direction),
    /// An offset that rolls over that way as well, or none that rolls.
    Over(usize, Option<pipe::Direction>),
    /// How a leg is measured; by the tape, with the marks that its ends have.
    By(usize, pipe::By),
    /// What the tape is held to at an end of a leg.
    Held(usize, pipe::Side, pipe::Mark),
    /// What stands at a node.
    Fitting(usize, Option<book::Kind>),
    /// On which side it has a street end.
    Street(usize, Option<pipe::Side>),
    /// On which side the run goes through its branch.
    Branch(usize, pipe::Side),
    /// How far a bend turns that the run starts or ends at.
    Turn(usize, book::Turn),
    /// The size of a leg.
    LegSize(usize, book::Size),
    /// Couplings within a leg.
    Couplings(usize, u32),
    /// Whether it has to end at a place.
    Closes(bool),
    /// Lines beside it, or none.
    Lines(Option<pipe::Direction>),
    /// In damp air.
    Damp(bool),
    /// The turn of a mitre that the strip marks, or a square cut.
    Mitre(Option<book::Turn>),
    /// A piece was fitted dry, or is to be fitted again.
    Fitted(u32, bool),
    /// The wall of its room that it starts on, or none.
    Wall(Option<usize>),
    /// It runs under the floor, measured from that wall.
    Floor(usize),
    /// The joists under that floor run along that wall, or are not known.
    Joists(Option<usize>),
    /// They are engineered joists or trusses.
    Engineered(bool),
    /// The fixed point that it starts at, or a place of its own.
    Point(Option<Id>),
    /// How deep the studs of that wall are.
    StudDepth(Length),
    /// That wall carries something.
    Bearing(bool),
}

/// A choice of grout or mortar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MixChoice {
    /// Which grout; by the joint where none.
    Grout(Option<Grout>),
    /// Sand scratches the face.
    Scratches(bool),
    /// What mortar is for: 0 tile, 1 board, 2 a sloped bed, 3 a volume.
    Work(u8),
    /// Dry or wet.
    Place(mortar::Place),
    /// Where the drain is.
    Drain(mortar::Drain),
    /// Mixed from cement and sand, not from bags.
    Site(bool),
    /// How sand is measured.
    Shrink(mortar::Shrink),
    /// An old floor is under it.
    OldFloor(bool),
}

/// A choice of tile.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TileChoice {
    /// A floor or a wall.
    On(tile::Surface),
    /// How tiles lie.
    Pattern(tile::Pattern),
    /// How far the pattern is turned.
    Turn(crate::measure::Angle),
    /// Where it starts.
    Start(tile::Start),
    /// How edges were made.
    Edge(tile::Edge),
    /// Where it lies.
    Run(tile::Run),
    /// The face has a direction.
    Grain(bool),
    /// By the other hand.
    OtherHand(bool),
    /// Off-cuts serve again.
    Reuse(bool),
    /// What a balanced start keeps to.
    Hold(Option<tile::Hold>),
    /// One more thing in the way, round or not.
    AddThing(bool),
    /// One fewer.
    RemoveThing(usize),
    /// How a box is counted: 0 not, 1 tiles, 2 faces, 3 laid.
    BoxKind(u8),
    /// It comes on sheets: mosaic.
    OnSheets(bool),
}

/// A choice of a drain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DrainChoice {
    /// The family of codes.
    Code(drain::Code),
    /// The official lets 3 in and larger fall 1/8 in a foot.
    Eighth(bool),
    /// The drain's size.
    Size(drain::Size),
    /// The least fall by the code.
    LeastFall,
    /// As high as it may stand.
    Highest,
    /// The usual hole.
    UsualHole,
    /// What it passes through: 0 nothing, 1 joists, 2 engineered joists, 3 studs.
    Through(u8),
    /// The wall bears.
    Bearing(bool),
    /// Each stud is doubled.
    Doubled(bool),
    /// A trap arm to check.
    Arm(bool),
    /// Its size.
    ArmSize(drain::Size),
    /// A closet flange to set.
    Flange(bool),
}

/// A choice of a material's cutting plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CutChoice {
    /// A length on sale, or no longer.
    Stick(Length),
    /// What cuts.
    Saw(Saw),
    /// An offcut fewer.
    RemoveOffcut(usize),
}
