//! What each command changes in the job.

use super::{App, Choice, Command, Here, Shape, fill::last_task};
use crate::measure::{Angle, Length};
use crate::site::{Opening, OpeningKind, Room, Studs};
use crate::takeoff::{self, Ask, LineKey, Task};
use crate::trades::patch::HoleShape;
use crate::trades::{paint, patch};

impl App {
    /// Commands that change the job.
    pub(super) fn change(&mut self, command: Command) {
        match command {
            Command::NewRoom(_)
            | Command::RemoveRoom(_)
            | Command::KeepRoom(_)
            | Command::TakeRoom(_) => self.change_rooms(command),
            Command::NewPatch(place) => {
                let ask = Ask::Patch(Box::default(), place.map(|(_, wall)| wall));
                self.new_task(place.map(|(room, _)| room), ask);
            }
            Command::NewPaint(room) => self.new_task(
                room,
                Ask::Paint(Box::default(), crate::site::OpeningRule::Net),
            ),
            Command::RemoveTask(task) => {
                self.edit("Figure removed", |job| {
                    if task < job.tasks.len() {
                        job.tasks.remove(task);
                    }
                });
                self.trail.clear();
                self.here = Here::Bench;
            }
            Command::OnList(task, on) => self.edit(
                if on {
                    "On the buying list"
                } else {
                    "Off the buying list"
                },
                |job| {
                    if let Some(task) = job.tasks.get_mut(task) {
                        task.on_list = on;
                    }
                },
            ),
            Command::Set(task, choice) => self.edit("", |job| {
                if let Some(task) = job.tasks.get_mut(task) {
                    choose(&mut task.ask, choice);
                }
            }),
            Command::ClearRoll => self.edit("Roll cleared", |job| job.roll.clear()),
            Command::Units(units) => self.edit("", |job| job.units = units),
            Command::Tick(_)
            | Command::Unpack(_)
            | Command::Cheapest(_)
            | Command::MetricPacks(_)
            | Command::RemoveHandLine(_) => self.change_buying(command),
            other => self.change_room(other),
        }
    }

    fn new_task(&mut self, room: Option<usize>, ask: Ask) {
        self.edit("", |job| {
            job.tasks.push(Task {
                room,
                ask,
                on_list: false,
            });
        });
        let here = last_task(&self.job);
        self.go(here);
    }

    fn change_rooms(&mut self, command: Command) {
        match command {
            Command::NewRoom(shape) => {
                let name = format!("Room {}", self.job.rooms.len() + 1);
                let room = match shape {
                    Shape::Rectangle => Room::rectangle(&name),
                    Shape::L => Room::l_shape(&name),
                    Shape::Alcove => Room::alcove(&name),
                };
                self.add_room(room);
            }
            Command::TakeRoom(at) => {
                if let Some(room) = self.keeper.shelf().get(at).cloned() {
                    self.add_room(room);
                }
            }
            Command::KeepRoom(at) => {
                if let Some(room) = self.job.rooms.get(at) {
                    self.said = match self.keeper.keep_room(room) {
                        Ok(()) => "A copy is on the shelf".to_owned(),
                        Err(why) => why,
                    };
                }
            }
            Command::RemoveRoom(at) => {
                self.edit("Room removed", |job| {
                    if at < job.rooms.len() {
                        job.rooms.remove(at);
                        job.tasks.retain(|task| task.room != Some(at));
                        for task in &mut job.tasks {
                            task.room = task
                                .room
                                .map(|room| if room > at { room - 1 } else { room });
                        }
                    }
                });
                self.trail.clear();
                self.here = Here::Rooms;
            }
            _ => {}
        }
    }

    fn add_room(&mut self, room: Room) {
        self.edit("", |job| job.rooms.push(room));
        self.go(Here::Room(self.job.rooms.len() - 1));
    }

    fn change_room(&mut self, command: Command) {
        let said = match command {
            Command::RemoveWall(..) => "Wall removed",
            Command::RemoveOpening(..) => "Opening removed",
            _ => "",
        };
        let metric = self.job.units.is_metric();
        let leaves = matches!(command, Command::RemoveWall(..));
        self.edit(said, |job| {
            let (Command::AddWall(room)
            | Command::RemoveWall(room, _)
            | Command::Corner(room, ..)
            | Command::WallFinish(room, ..)
            | Command::CeilingFinish(room, _)
            | Command::AddOpening(room, ..)
            | Command::RemoveOpening(room, _)
            | Command::StudSpacing(room, ..)) = command
            else {
                return;
            };
            if let Some(room) = job.rooms.get_mut(room) {
                change_in_room(room, &command, metric);
            }
        });
        if leaves {
            self.here = self.trail.pop().unwrap_or_default();
        }
        self.leave_what_is_gone();
    }

    fn change_buying(&mut self, command: Command) {
        self.edit("", |job| {
            let buying = &mut job.buying;
            match command {
                Command::Tick(key) => {
                    let was = buying.ticked.remove(&key);
                    if !was {
                        buying.ticked.insert(key);
                    }
                }
                Command::Unpack(key) => {
                    buying.overrides.remove(&key);
                }
                Command::Cheapest(yes) => {
                    buying.choice = if yes {
                        takeoff::Choice::Cheapest
                    } else {
                        takeoff::Choice::LeastLeftOver
                    }
                }
                Command::MetricPacks(metric) => {
                    buying.metric_packs = metric;
                    buying.prices.clear();
                }
                Command::RemoveHandLine(id) => {
                    buying.by_hand.retain(|line| line.id != id);
                    buying.ticked.remove(&LineKey::ByHand(id));
                }
                _ => {}
            }
        });
        if matches!(self.here, Here::Line(LineKey::ByHand(id)) if !self.job.buying.by_hand.iter().any(|line| line.id == id))
        {
            self.trail.clear();
            self.here = Here::Buy;
        }
    }
}

/// One change within a room.
fn change_in_room(room: &mut Room, command: &Command, metric: bool) {
    match *command {
        Command::AddWall(_) => room.add_jog(),
        Command::RemoveWall(_, wall) => room.remove_wall(wall),
        Command::Corner(_, wall, turn) => {
            if let Some(wall) = room.walls.get_mut(wall) {
                wall.turn = Angle::microdegrees(turn);
            }
        }
        Command::WallFinish(_, wall, finish) => {
            if let Some(wall) = room.walls.get_mut(wall) {
                wall.finish = finish;
            }
        }
        Command::CeilingFinish(_, finish) => room.ceiling_finish = finish,
        Command::AddOpening(_, wall, kind) => room.openings.push(Opening {
            kind,
            wall,
            from_left: None,
            width: None,
            height: None,
            sill: (kind == OpeningKind::Door).then_some(Length::ZERO),
        }),
        Command::RemoveOpening(_, opening) if opening < room.openings.len() => {
            room.openings.remove(opening);
        }
        Command::StudSpacing(_, wall, spacing) => {
            if let Some(wall) = room.walls.get_mut(wall) {
                wall.studs = spacing.map(|spacing| spaced(wall.studs.as_ref(), spacing, metric));
            }
        }
        _ => {}
    }
}

/// Studs at a spacing; where they start is kept if it was measured.
fn spaced(old: Option<&Studs>, spacing: Length, metric: bool) -> Studs {
    let face = if metric {
        Length::mm(38)
    } else {
        Length::in_64(1, 32)
    };
    match old {
        Some(Studs::Spaced { first, face, .. }) => Studs::Spaced {
            first: *first,
            spacing,
            face: *face,
        },
        _ => Studs::Spaced {
            first: spacing,
            spacing,
            face,
        },
    }
}

/// A choice within a figure.
fn choose(ask: &mut Ask, choice: Choice) {
    match ask {
        Ask::Patch(ask, _) => choose_patch(ask, choice),
        Ask::Paint(ask, rule) => {
            if let Choice::Openings(chosen) = choice {
                *rule = chosen;
            } else {
                choose_paint(ask, choice);
            }
        }
    }
}

fn choose_patch(ask: &mut patch::Ask, choice: Choice) {
    match choice {
        Choice::Method(method) => ask.method = method,
        Choice::Round(round) => {
            let (width, height) = ask.hole.shape.size();
            ask.hole.shape = if round {
                HoleShape::Round { across: width }
            } else {
                HoleShape::Rectangle { width, height }
            };
        }
        Choice::Board(board) => ask.board = board,
        Choice::Studs(spacing) => {
            ask.studs = spacing.map(|spacing| spaced(ask.studs.as_ref(), spacing, false));
        }
        Choice::FireRated(rated) => ask.fire_rated = rated,
        _ => {}
    }
}

fn choose_paint(ask: &mut paint::Ask, choice: Choice) {
    match choice {
        Choice::Coats(coats) => {
            ask.finish.coats = coats;
            ask.trim_finish.coats = coats;
        }
        Choice::PrimerCoats(coats) => ask.primer.coats = coats,
        Choice::Texture(kind) => {
            for surface in &mut ask.surfaces {
                surface.kind = kind;
            }
        }
        Choice::Sheen(sheen) => ask.sheen = sheen,
        Choice::Built(built) => ask.built = built,
        _ => {}
    }
}
