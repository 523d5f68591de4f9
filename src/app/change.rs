//! What each command changes in the job.

use super::{
    App, Choice, Command, Here, Shape, StudsOf, cutting_page, drain_inputs, fill::last_task,
    mix_inputs, sheets_inputs, studs, tile_fill, trim_inputs,
};
use crate::measure::quantity::square_metres;
use crate::measure::{Angle, Length};
use crate::site::{self, Opening, OpeningKind, Room};
use crate::takeoff::{self, Ask, Job, LineKey, TileOn};
use crate::trades::paint::{Part, Surface as Painted, Trim};
use crate::trades::patch::HoleShape;
use crate::trades::sheets::{self, Surface};
use crate::trades::{Board, paint, patch};

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
            Command::Nudge(task, by) => self.nudge(task, by),
            Command::MixFor(task, tile) => {
                let room = self.room_of(Some(tile));
                self.edit("For that tile", |job| {
                    if let Some(task) = job.tasks.get_mut(task)
                        && let Ask::Grout(_, of) | Ask::Mortar(_, of) = &mut task.ask
                    {
                        (*of, task.room) = (Some(tile), room);
                    }
                });
            }
            Command::KeepLines(task) => self.keep_lines(task),
            Command::Twin(task) => self.twin(task),
            Command::Mixed(task) => self.mixed(task),
            Command::BatchDone => self.edit("The bucket is empty", |job| job.batch = None),
            Command::NewGrout(of) => {
                let room = self.room_of(of);
                self.new_task(room, Ask::Grout(Box::default(), of));
            }
            Command::NewMortar(of) => {
                let room = self.room_of(of);
                self.new_task(room, Ask::Mortar(Box::default(), of));
            }
            Command::NewPipe(place) => {
                let ask = Box::new(self.new_pipe());
                self.leg = 0;
                let on = place.map(|(_, wall)| takeoff::PipeOn::wall(wall));
                self.new_task(place.map(|(room, _)| room), Ask::Pipe(ask, on));
            }
            Command::Set(task, Choice::Pipe(choice)) => self.choose_pipe(task, choice),
            Command::NewDrain(room) => self.new_task(room, Ask::Drain(Box::default())),
            Command::NewSheets(room, on, surface) => {
                let ask = match surface {
                    Surface::Floor => sheets::Ask::default(),
                    Surface::Wall => sheets::Ask::wall(),
                    Surface::Ceiling => sheets::Ask {
                        on: surface,
                        ..sheets::Ask::default()
                    }
                    .of(Board::Gypsum),
                };
                self.new_task(room, Ask::Sheets(Box::new(ask), on));
            }
            Command::NewTrim(room, kind) => {
                let ask = trim_inputs::begun(&self.job, room, kind);
                self.new_task(room, Ask::Trim(Box::new(ask), takeoff::TrimOn::default()));
            }
            Command::Set(task, Choice::Trim(choice)) => {
                self.edit("", |job| trim_inputs::choose(job, task, choice));
            }
            Command::Cut(material, choice) => {
                self.edit("", |job| cutting_page::choose(job, &material, choice));
            }
            Command::NewTile(room, on) => self.new_task(room, Ask::Tile(Box::default(), on)),
            Command::NewPaint(room) => {
                self.new_task(room, Ask::Paint(Box::default(), site::OpeningRule::Net));
            }
            Command::RemoveTask(task) => {
                self.edit("Figure removed", |job| {
                    if let Some(id) = job.tasks.get(task).map(|task| task.id) {
                        job.keep_tasks(|task| task.id != id);
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
            Command::Set(task, choice) => {
                let base = self.room_trim(task, &choice);
                self.edit("", |job| {
                    if let Some(task) = job.tasks.get_mut(task) {
                        choose(&mut task.ask, choice, base);
                    }
                });
            }
            Command::Lay(task, room, wall) => {
                self.edit("Laid on the room", |job| lay(job, task, room, wall));
            }
            Command::ClearRoll => self.edit("Roll cleared", |job| job.roll.clear()),
            Command::Ends(ends) => self.edit("", |job| job.tape.ends = ends),
            Command::Scale(scale) => self.edit("", |job| job.tape.scale = scale),
            Command::Units(units) => self.edit("", |job| job.units = units),
            Command::Tick(_)
            | Command::Unpack(_)
            | Command::Cheapest(_)
            | Command::MetricPacks(_)
            | Command::RemoveHandLine(_) => self.change_buying(command),
            other => self.change_room(other),
        }
    }

    /// The room that a figure stands in.
    fn room_of(&self, figure: Option<site::Id>) -> Option<usize> {
        let task = (self.job.tasks.iter()).find(|task| Some(task.id) == figure)?;
        task.room
    }

    fn new_task(&mut self, room: Option<usize>, ask: Ask) {
        if self.edited("", |job| job.add_task(room, ask)) {
            self.go(last_task(&self.job));
        }
    }

    fn change_rooms(&mut self, command: Command) {
        match command {
            Command::NewRoom(shape) => {
                let name = format!("Room {}", self.job.rooms.len() + 1);
                let room = match shape {
                    Shape::Rectangle => Room::rectangle(&name),
                    Shape::L => Room::l_shape(&name),
                    Shape::Alcove => Room::alcove(&name),
                    Shape::Own => Room::three_walls(&name),
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
                        job.keep_tasks(|task| task.room != Some(at));
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
        if self.edited("", |job| job.add_room(room)) {
            self.go(Here::Room(self.job.rooms.len() - 1));
        }
    }

    fn change_room(&mut self, command: Command) {
        let said = match command {
            Command::RemoveWall(..) => "Wall removed",
            Command::RemoveOpening(..) => "Opening removed",
            _ => "",
        };
        let metric = self.job.units.is_metric();
        let leaves = matches!(command, Command::RemoveWall(..));
        self.edit(said, |job| match command {
            Command::StudSpacing(of, spacing) => set_studs(job, of, |old, _| {
                spacing.map(|spacing| studs::spaced(old, spacing, metric))
            }),
            Command::StudsAsFound(of) => set_studs(job, of, |old, wall| {
                Some(studs::as_found(old, wall, metric))
            }),
            Command::RemoveStud(of, at) => {
                if let Some(Some(site::Studs::Found { centres, .. })) = studs::place(job, of)
                    && at < centres.len()
                {
                    centres.remove(at);
                }
            }
            Command::Jog(room, _)
            | Command::CutCorner(room, _)
            | Command::RemoveWall(room, _)
            | Command::Corner(room, ..)
            | Command::WallFinish(room, ..)
            | Command::CeilingFinish(room, _)
            | Command::FloorFinish(room, _)
            | Command::AddOpening(room, ..)
            | Command::RemoveOpening(room, _) => {
                if let Some(profile) = job.rooms.get_mut(room) {
                    let walls = profile.walls.len();
                    change_in_room(profile, &command);
                    let (walls, now) = (walls, profile.walls.len());
                    keep_patches_on_their_walls(job, room, &command, (walls, now));
                }
            }
            _ => {}
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
                    buying
                        .overrides
                        .retain(|pack, _| LineKey::Material(pack.material.clone()) != key);
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
fn change_in_room(room: &mut Room, command: &Command) {
    match *command {
        Command::Jog(_, wall) => room.add_jog(wall),
        Command::CutCorner(_, wall) => room.cut_corner(wall),
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
        Command::FloorFinish(_, finish) => room.floor_finish = finish,
        Command::AddOpening(_, wall, kind) => room.openings.push(Opening {
            kind,
            wall,
            from_left: None,
            width: None,
            height: None,
            sill: (kind == OpeningKind::Door).then_some(Length::ZERO),
            hinge: None,
        }),
        Command::RemoveOpening(_, opening) => room.remove_opening(opening),
        _ => {}
    }
}

/// Studs of a wall or a patch, changed; the wall's length is given where it is known.
fn set_studs(
    job: &mut Job,
    of: StudsOf,
    change: impl FnOnce(Option<&site::Studs>, Option<Length>) -> Option<site::Studs>,
) {
    let wall = match of {
        StudsOf::Wall(room, wall) => job
            .rooms
            .get(room)
            .and_then(|room| site::sketch(room).walls.get(wall).copied())
            .filter(|(_, standing)| *standing != site::Standing::NotYet)
            .map(|(length, _)| length),
        StudsOf::Patch(_) => None,
    };
    if let Some(place) = studs::place(job, of) {
        *place = change(place.as_ref(), wall);
    }
}

/// Patches of a room stay on their walls when walls come and go; a patch whose wall is gone stands on its own.
fn keep_patches_on_their_walls(
    job: &mut Job,
    room: usize,
    command: &Command,
    (before, now): (usize, usize),
) {
    let (Command::Jog(_, at) | Command::CutCorner(_, at) | Command::RemoveWall(_, at)) = *command
    else {
        return;
    };
    let of = job.rooms.get(room).map(|room| room.id);
    for photo in &mut job.photos {
        if let Some(wall) = photo.wall.filter(|_| photo.room == of) {
            let stays = !(now < before && wall == at);
            let shifted = if wall > at {
                (wall + now).saturating_sub(before)
            } else {
                wall
            };
            if !stays || shifted != wall {
                std::sync::Arc::make_mut(photo).wall = stays.then_some(shifted);
            }
        }
    }
    for task in &mut job.tasks {
        let wall = match &mut task.ask {
            Ask::Patch(_, Some(wall))
            | Ask::Tile(_, TileOn::Wall(wall))
            | Ask::Sheets(_, TileOn::Wall(wall)) => wall,
            Ask::Pipe(_, Some(on)) => on.on.wall_mut(),
            _ => continue,
        };
        if task.room != Some(room) {
            continue;
        }
        if now < before && *wall == at {
            task.room = None;
            match &mut task.ask {
                Ask::Patch(_, wall) => *wall = None,
                Ask::Tile(_, on) | Ask::Sheets(_, on) => *on = TileOn::Own,
                Ask::Pipe(_, on) => *on = None,
                Ask::Paint(..)
                | Ask::Grout(..)
                | Ask::Mortar(..)
                | Ask::Drain(..)
                | Ask::Trim(..) => {}
            }
        } else if *wall > at {
            *wall = (*wall + now).saturating_sub(before);
        }
    }
}

/// A quick figure onto a room. What the room knows takes the place of what was typed for it.
fn lay(job: &mut Job, task: usize, room: usize, wall: Option<usize>) {
    if room >= job.rooms.len() {
        return;
    }
    let Some(task) = job.tasks.get_mut(task) else {
        return;
    };
    task.room = Some(room);
    match &mut task.ask {
        Ask::Patch(_, place) => *place = wall,
        Ask::Tile(_, on) | Ask::Sheets(_, on) => {
            *on = wall.map_or(TileOn::Floor, TileOn::Wall);
        }
        Ask::Pipe(_, on) => {
            *on = wall.map(takeoff::PipeOn::wall);
        }
        Ask::Paint(..) | Ask::Grout(..) | Ask::Mortar(..) | Ask::Drain(..) | Ask::Trim(..) => {}
    }
}

impl App {
    /// The length of a run of trim that the room of a figure knows.
    fn room_trim(&self, task: usize, choice: &Choice) -> Option<Length> {
        if !matches!(choice, Choice::AddTrim("Base")) {
            return None;
        }
        let room = self.job.tasks.get(task)?.room?;
        let room = self.job.rooms.get(room)?;
        Some(site::baseboard(room, &site::shape(room).ok()?))
    }
}

/// A choice within a figure.
fn choose(ask: &mut Ask, choice: Choice, known: Option<Length>) {
    if let Choice::Mix(choice) = choice {
        mix_inputs::choose(ask, choice);
        return;
    }
    match ask {
        Ask::Patch(ask, _) => choose_patch(ask, choice),
        Ask::Tile(ask, _) => {
            if let Choice::Tile(choice) = choice {
                tile_fill::choose(ask, choice);
            }
        }
        Ask::Paint(ask, rule) => {
            if let Choice::Openings(chosen) = choice {
                *rule = chosen;
            } else {
                choose_paint(ask, choice, known);
            }
        }
        Ask::Drain(ask) => {
            if let Choice::Drain(choice) = choice {
                drain_inputs::choose(ask, choice);
            }
        }
        Ask::Sheets(ask, _) => {
            if let Choice::Sheets(choice) = choice {
                sheets_inputs::choose(ask, choice);
            }
        }
        Ask::Grout(..) | Ask::Mortar(..) | Ask::Pipe(..) | Ask::Trim(..) => {}
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
        Choice::FireRated(rated) => ask.fire_rated = rated,
        Choice::AddHole => ask.other_holes.push(patch::Hole {
            from_left: None,
            from_stud: None,
            above_floor: None,
            ..ask.hole.clone()
        }),
        Choice::RemoveHole(at) if at < ask.other_holes.len() => {
            ask.other_holes.remove(at);
        }
        _ => {}
    }
}

fn choose_paint(ask: &mut paint::Ask, choice: Choice, known: Option<Length>) {
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
        Choice::AddSurface(part) => {
            let kind = ask
                .surfaces
                .first()
                .map_or(paint::Texture::Smooth, |s| s.kind);
            ask.surfaces.push(Painted {
                name: match part {
                    Part::Wall => "Wall".into(),
                    Part::Ceiling => "Ceiling".into(),
                },
                part,
                area: square_metres(0.0),
                height: None,
                width: None,
                kind,
                cut_in: Length::ZERO,
            });
        }
        Choice::RemoveSurface(at) if at < ask.surfaces.len() => {
            ask.surfaces.remove(at);
        }
        Choice::AddTrim(name) => ask.trim.push(Trim {
            name: name.to_owned(),
            length: known.unwrap_or(Length::ZERO),
            face: Length::ZERO,
        }),
        Choice::RemoveTrim(at) if at < ask.trim.len() => {
            ask.trim.remove(at);
        }
        Choice::Level(level) => ask.level = level,
        Choice::Binder(binder) => ask.binder = binder,
        Choice::Paid(paid) => ask.paid_job = paid,
        _ => {}
    }
}
