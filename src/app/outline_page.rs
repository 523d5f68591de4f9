//! The outline changed on the plan: a wall or a corner is tapped, then what becomes of it.

use super::rooms_view::Outline;
use super::survey_page::plan_command;
use super::{App, Chip, Command, Here, RoomChoice, Row, Screen, Slot};
use crate::drawing::{PlanLook, PlanTag, plan_seen};
use crate::geometry::Point;
use crate::measure::Length;
use crate::site::{self, Room, Wall, outward};
use crate::takeoff::{Ask, Job, TileOn};

impl App {
    /// The outline of one room, to be changed.
    pub(super) fn outline_page(&self, at: usize) -> Screen {
        let Some(room) = self.job.rooms.get(at) else {
            return self.rooms_page();
        };
        let chosen = self.rooms_view.chosen;
        let look = PlanLook {
            handles: true,
            chosen,
            ..PlanLook::default()
        };
        let picture =
            plan_seen(room, self.job.units, &look).map_tags(|tag| plan_command(at, room, tag));
        let act = |label: &str, outline| {
            Chip::new(label, false, Command::Of(at, RoomChoice::Outline(outline)))
        };
        let mut rows = Vec::new();
        if let Err(problem) = site::shape(room) {
            rows.push(Row::Note {
                tone: super::Tone::Stop,
                text: super::words::room_problem(&problem, room, self.job.units),
                detail: String::new(),
                mend: None,
            });
        }
        let mut slides = false;
        match chosen {
            Some(PlanTag::WallBody(wall)) if wall < room.walls.len() => {
                slides = room.can_drag(wall);
                rows.push(Row::Heading(format!("Wall {}", Wall::named(wall))));
                rows.push(Row::choice(
                    "Its middle",
                    [
                        act("Set out", Outline::BumpOut),
                        act("Set in", Outline::BumpIn),
                    ],
                ));
                rows.push(Row::choice(
                    "From its middle on",
                    [
                        act("Step out", Outline::StepOut),
                        act("Step in", Outline::StepIn),
                    ],
                ));
                if slides {
                    rows.push(Row::Text(
                        "Drag the wall on the drawing with a finger, or by steps:".into(),
                    ));
                    let step = |way: &str, n: i64| {
                        let by = self.drag_step() * n;
                        let label = format!("{way} {}", self.show(by.abs()));
                        act(&label, Outline::Drag(by))
                    };
                    rows.push(Row::choice(
                        "The wall goes",
                        [
                            step("Out", 6),
                            step("Out", 1),
                            step("In", -1),
                            step("In", -6),
                        ],
                    ));
                }
                rows.push(Row::yours(
                    format!("Wall {}", Wall::named(wall)),
                    self.show_or_ask(room.walls[wall].length),
                    Command::Pad(Slot::WallLength(at, wall)),
                ));
                rows.push(Row::button(
                    "Take this wall away",
                    Command::Of(at, RoomChoice::Outline(Outline::TakeWall)),
                ));
            }
            Some(PlanTag::Corner(corner)) if corner < room.walls.len() => {
                let before = (corner + room.walls.len() - 1) % room.walls.len();
                rows.push(Row::Heading(format!(
                    "Corner {}–{}",
                    Wall::named(before),
                    Wall::named(corner)
                )));
                rows.push(Row::choice(
                    "This corner",
                    [
                        act("Let it jut in", Outline::Jog),
                        act("Cut it off", Outline::CutCorner),
                        act("Take it out", Outline::TakeCorner),
                    ],
                ));
                rows.push(Row::Figure {
                    label: "Turns, inside the room".into(),
                    detail: "more than 180° where it juts in".into(),
                    value: format!("{}°", super::room_page::corner(room.walls[before].turn)),
                    command: Some(Command::Pad(Slot::WallTurn(at, before))),
                });
            }
            _ => rows.push(Row::Text(
                "Tap a wall or a corner on the drawing, or here.".into(),
            )),
        }
        let choose = |label: String, tag: PlanTag| {
            let command = Command::Of(at, RoomChoice::Choose(Some(tag)));
            Chip::new(label, chosen == Some(tag), command)
        };
        let count = room.walls.len();
        rows.push(Row::choice(
            "Wall",
            (0..count).map(|wall| choose(Wall::named(wall), PlanTag::WallBody(wall))),
        ));
        rows.push(Row::choice(
            "Corner",
            (0..count).map(|corner| {
                let before = Wall::named((corner + count - 1) % count);
                choose(
                    format!("{before}–{}", Wall::named(corner)),
                    PlanTag::Corner(corner),
                )
            }),
        ));
        Screen {
            crumb: room.name.clone(),
            title: "Outline".into(),
            back: Some(Here::Room(at)),
            picture: Some(picture),
            slides,
            rows,
            ..Screen::default()
        }
    }

    /// How far a wall is dragged at a tap.
    fn drag_step(&self) -> Length {
        if self.job.units.is_metric() {
            Length::mm(50)
        } else {
            Length::inches(2)
        }
    }

    /// Whether a finger is dragging a wall.
    pub(super) fn is_dragging(&self) -> bool {
        self.rooms_view.held.is_some()
    }

    /// The chosen wall follows a finger across the plan; `done` when it is lifted.
    pub(super) fn drag_wall(&mut self, by: Point, done: bool) {
        let Here::Outline(at) = self.here else { return };
        let Some(PlanTag::WallBody(wall)) = self.rooms_view.chosen else {
            return;
        };
        let Some(room) = self.job.rooms.get(at) else {
            return;
        };
        let held = self
            .rooms_view
            .held
            .get_or_insert_with(|| room.clone())
            .clone();
        let Some((x, y)) = outward(&held, wall) else {
            return;
        };
        let out = Length::from_metres(by.x.metres() * x + by.y.metres() * y).unwrap_or_default();
        let mark = if self.job.units.is_metric() {
            Length::mm(5)
        } else {
            Length::in_64(0, 16)
        };
        let out = out.rounded(mark, crate::measure::Rounding::Nearest);
        let mut dragged = held.clone();
        let went = dragged.drag_wall(wall, out);
        self.job.rooms[at] = if done { held } else { dragged.clone() };
        if done {
            self.rooms_view.held = None;
            if went {
                self.edit("Wall dragged", |job| job.rooms[at] = dragged);
            } else if out != Length::ZERO {
                self.said = stays(wall);
            }
        }
    }
}

/// A change of the outline at a wall or a corner; figures that stand on a wall stay on it.
pub(super) fn change(job: &mut Job, at: usize, chosen: PlanTag, outline: Outline) {
    let Some(room) = job.rooms.get_mut(at) else {
        return;
    };
    let count = room.walls.len();
    let (wall, corner) = match chosen {
        PlanTag::WallBody(wall) if wall < count => (wall, wall),
        PlanTag::Corner(corner) if corner < count => ((corner + count - 1) % count, corner),
        _ => return,
    };
    let long = room.drawn_length(wall).unwrap_or_default();
    match outline {
        Outline::Drag(out) => {
            room.drag_wall(wall, out);
        }
        Outline::StepOut => room.step_wall(wall, long.half(), false),
        Outline::StepIn => room.step_wall(wall, long.half(), true),
        Outline::BumpOut => bump(room, wall, long, false),
        Outline::BumpIn => bump(room, wall, long, true),
        Outline::TakeWall => room.remove_wall(wall),
        Outline::TakeCorner => room.remove_corner(corner),
        Outline::CutCorner => room.cut_corner(wall),
        Outline::Jog => room.add_jog(wall),
    }
    let now = room.walls.len();
    // Where a wall of before is now; `None` for one that is gone.
    let place = |old: usize| -> Option<usize> {
        if now > count {
            return Some(if old > wall { old + now - count } else { old });
        }
        let gone = if outline == Outline::TakeCorner {
            corner
        } else {
            wall
        };
        match (now < count, old == gone) {
            (true, true) if outline == Outline::TakeCorner => {
                let first = (corner + count - 1) % count;
                Some(if first > gone { first - 1 } else { first })
            }
            (true, true) => None,
            (true, false) if old > gone => Some((old - 1).min(now - 1)),
            _ => Some(old.min(now - 1)),
        }
    };
    for task in job.tasks.iter_mut().filter(|task| task.room == Some(at)) {
        let on = match &mut task.ask {
            Ask::Patch(_, Some(wall))
            | Ask::Tile(_, TileOn::Wall(wall))
            | Ask::Sheets(_, TileOn::Wall(wall)) => place(*wall),
            Ask::Pipe(_, Some(on)) => place(*on.on.wall_mut()),
            _ => continue,
        };
        match (&mut task.ask, on) {
            (Ask::Patch(_, wall), on) => *wall = on,
            (Ask::Tile(_, on_wall) | Ask::Sheets(_, on_wall), on) => {
                *on_wall = on.map_or(TileOn::Own, TileOn::Wall);
            }
            (Ask::Pipe(_, Some(run)), Some(wall)) => *run.on.wall_mut() = wall,
            (Ask::Pipe(_, run), None) => *run = None,
            _ => {}
        }
        if on.is_none() {
            task.room = None;
        }
    }
}

/// Why a wall that is dragged stays.
pub(super) fn stays(wall: usize) -> String {
    format!(
        "Wall {} stays where the tape puts it: the walls beside it follow from what was measured. Type their figures, or take out one that is wrong.",
        Wall::named(wall)
    )
}

/// The middle third of a wall set out or in.
fn bump(room: &mut Room, wall: usize, long: Length, into_the_room: bool) {
    let third = long.divided(3);
    let before = room.walls.len();
    room.step_wall(wall, third, into_the_room);
    if room.walls.len() > before {
        room.step_wall(wall + 2, third, !into_the_room);
    }
}
