//! What a tap can ask for.

use crate::measure::Length;
use crate::site::{Finish, OpeningKind, OpeningRule};
use crate::takeoff::{LineKey, PackKey};
use crate::trades::{paint, patch};

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
}

/// What the pad fills in.
#[derive(Clone, Debug, PartialEq)]
pub enum Slot {
    /// The job's name.
    JobName,
    /// A room's name.
    RoomName(usize),
    /// A wall's length.
    WallLength(usize, usize),
    /// The turn at a wall's end.
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
    /// The centre of a wall's first stud.
    FirstStud(usize, usize),
    /// A field of a patch.
    Patch(usize, patch::Field),
    /// A field of paint.
    Paint(usize, PaintSlot),
    /// A new line on the roll.
    Roll,
    /// A side of the square check.
    Square(usize),
    /// Things to space equally: the run, the count, the width of one.
    Spacing(usize),
    /// A price.
    Price(PackKey),
    /// Packs of a line, by hand.
    Packs(LineKey),
    /// A line by hand.
    HandLine,
}

/// A field of paint that the pad fills in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaintSlot {
    /// Width of a wall by hand.
    Width,
    /// Height of a wall by hand.
    Height,
    /// The label's spread rate of the primer.
    PrimerRate,
    /// The label's spread rate of the paint.
    FinishRate,
    /// Solids by volume of the paint, in per cent.
    Solids,
    /// Standing height of the person.
    Stature,
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
    /// Another wall at the end.
    AddWall(usize),
    /// One wall fewer.
    RemoveWall(usize, usize),
    /// The corner at a wall's end.
    Corner(usize, usize, i64),
    /// What a wall gets.
    WallFinish(usize, usize, Finish),
    /// What the ceiling gets.
    CeilingFinish(usize, Finish),
    /// An opening in a wall.
    AddOpening(usize, usize, OpeningKind),
    /// No opening there.
    RemoveOpening(usize, usize),
    /// Studs at a spacing, or none known.
    StudSpacing(usize, usize, Option<Length>),
    /// A new patch, on a wall or by hand.
    NewPatch(Option<(usize, usize)>),
    /// New paint, for a room or by hand.
    NewPaint(Option<usize>),
    /// Remove a figure.
    RemoveTask(usize),
    /// Put a figure's materials on the buying list, or take them off.
    OnList(usize, bool),
    /// A choice within a figure.
    Set(usize, Choice),
    /// Tick a line off.
    Tick(LineKey),
    /// Take a line's own count back.
    Unpack(LineKey),
    /// Cheapest, or least left over.
    Cheapest(bool),
    /// Packs in metric sizes.
    MetricPacks(bool),
    /// Remove a line by hand.
    RemoveHandLine(u32),
    /// Clear the roll.
    ClearRoll,
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
    /// The about sheet, shown or not.
    About(bool),
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
    /// Studs at a spacing for a quick patch.
    Studs(Option<Length>),
    /// Fire-rated wall.
    FireRated(bool),
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
}
