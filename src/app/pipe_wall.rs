//! A run of pipe on a wall of its room: where it starts, what it goes through, and its line on the elevation.

use super::pipe_rows::{pad, set};
use super::{App, Chip, Command, Here, PipeChoice, PipeSlot, Row, Slot, Tone};
use crate::drawing::{Scene, run_on_wall};
use crate::handbook::cautions::CUT_FRAMING;
use crate::handbook::pipe::Family;
use crate::measure::{Amount, Length};
use crate::site::{self, FixedKind, FixedPoint, On, Room, Studs, Wall};
use crate::takeoff::{Ask, PipeOn};
use crate::trades::Account;
use crate::trades::pipe::{self, Framed, Hole, Place, framed, sketch};

/// Depths of studs that are sold.
const DEPTHS: [(Length, &str); 3] = [
    (Length::in_64(2, 32), "2 × 3"),
    (Length::in_64(3, 32), "2 × 4"),
    (Length::in_64(5, 32), "2 × 6"),
];

/// Where its fittings are: by its figure, and else by what the tape said.
fn places(ask: &pipe::Ask) -> Vec<Place> {
    let known = pipe::figure(ask)
        .ok()
        .and_then(|figure| figure.places.into_iter().collect());
    known.unwrap_or_else(|| sketch(ask))
}

/// Where the fittings of all its lines are.
pub(super) fn lines(ask: &pipe::Ask) -> Vec<Vec<Place>> {
    pipe::beside(ask, &places(ask))
}

/// Measured points that pipe can start at: those on a wall, or all in the floor.
pub(super) fn points(room: &Room, on: On) -> impl Iterator<Item = &FixedPoint> {
    room.fixed.iter().filter(move |point| {
        let here = match on {
            On::Wall(_) => point.on == on,
            On::Floor(_) => matches!(point.on, On::Floor(_)),
        };
        here && point.kind.is_pipe() && point.from_left.is_some() && point.up.is_some()
    })
}

/// What a run starts on, and where: from the left corner, and up from the floor or out from the wall; `None` where that
/// was not said, or its point is gone.
pub(super) fn place_of(room: &Room, on: &PipeOn) -> Option<(On, (Length, Length))> {
    let point = points(room, on.on).find(|point| Some(point.id) == on.point);
    let own = (on.on, (on.spot.from_left, on.spot.up));
    point
        .and_then(|point| Some((point.on, point.from_left.zip(point.up)?)))
        .or_else(|| on.spot.from_left.is_positive().then_some(own))
}

/// A wall with the run's start on it; `None` where the wall is gone, or it runs under the floor.
fn framing(room: &Room, on: &PipeOn) -> Option<Framed> {
    let (On::Wall(at), start) = place_of(room, on)? else {
        return None;
    };
    let wall = room.walls.get(at)?;
    let (long, _) = site::sketch(room).walls.get(at).copied()?;
    let face = wall.studs.as_ref().map(|studs| {
        let (Studs::Spaced { face, .. } | Studs::Found { face, .. }) = studs;
        *face
    });
    Some(Framed {
        start,
        long,
        high: wall.height.or(room.ceiling),
        studs: wall
            .studs
            .as_ref()
            .map_or_else(Vec::new, |studs| studs.centres(long)),
        face: face.unwrap_or_default(),
        depth: on.depth,
        bearing: on.bearing,
    })
}

impl App {
    /// The wall that a run is on, and what it goes through.
    pub(super) fn pipe_holes(&self, at: usize) -> Option<(Framed, Vec<Hole>, Account)> {
        let task = self.job.tasks.get(at)?;
        let Ask::Pipe(ask, Some(on)) = &task.ask else {
            return None;
        };
        let room = self.job.rooms.get(task.room?)?;
        let wall = framing(room, on)?;
        let (holes, findings) = framed(ask, &lines(ask), &wall);
        let account = Account {
            findings,
            cautions: (!holes.is_empty())
                .then_some(&CUT_FRAMING)
                .into_iter()
                .collect(),
            ..Account::default()
        };
        Some((wall, holes, account))
    }

    /// Where a run starts on a wall of its room, and the holes that it needs.
    pub(super) fn pipe_wall_rows(&self, at: usize) -> Vec<Row> {
        let Some((task, room)) = self.job.tasks.get(at).and_then(|task| {
            let room = self.job.rooms.get(task.room?)?;
            Some((task, room))
        }) else {
            return self.lay_rows(at);
        };
        let Ask::Pipe(_, on) = &task.ask else {
            return Vec::new();
        };
        let now = on.as_ref().map(|on| on.on);
        let mut chips = vec![Chip::new(
            "No wall",
            now.is_none(),
            set(at, PipeChoice::Wall(None)),
        )];
        chips.extend((0..room.walls.len()).map(|wall| {
            Chip::new(
                format!("Wall {}", Wall::named(wall)),
                now == Some(On::Wall(wall)),
                set(at, PipeChoice::Wall(Some(wall))),
            )
        }));
        chips.push(Chip::new(
            "Under the floor",
            matches!(now, Some(On::Floor(_))),
            set(at, PipeChoice::Floor(now.map_or(0, On::wall))),
        ));
        let mut rows = vec![
            Row::Heading("Where it runs".into()),
            Row::choice("It runs in", chips),
        ];
        let Some(on) = on else {
            return rows;
        };
        if matches!(on.on, On::Floor(_)) {
            rows.extend(self.pipe_floor_rows(at, room, on));
            return rows;
        }
        rows.extend(self.start_rows_on_wall(at, room, on));
        let Some((wall, holes, account)) = self.pipe_holes(at) else {
            return rows;
        };
        rows.extend(self.warnings(&account));
        rows.extend(self.pipe_clash_rows(at));
        rows.extend(self.remarks(&account));
        if wall.studs.is_empty() {
            rows.push(Row::Text(
                "The studs of this wall are not known yet: find them, and the holes follow.".into(),
            ));
        }
        let unsure = self
            .estimated(at)
            .map_or_else(String::new, |mark| format!("; {mark}"));
        for hole in &holes {
            rows.push(Row::Figure {
                label: format!(
                    "Leg {}, stud {}{}",
                    hole.leg + 1,
                    hole.stud + 1,
                    line_word(hole.line)
                ),
                detail: format!(
                    "{} from the left, {} up, in the middle of the stud{unsure}",
                    self.show(hole.from_left),
                    self.show(hole.up)
                ),
                value: self.amount(Amount::Length(hole.across)),
                command: None,
            });
        }
        if let Some(room) = task.room {
            rows.push(Row::button(
                format!("Look at wall {}", Wall::named(on.on.wall())),
                Command::Go(Here::Wall(room, on.on.wall())),
            ));
        }
        rows
    }

    fn start_rows_on_wall(&self, at: usize, room: &Room, on: &PipeOn) -> Vec<Row> {
        let mut rows = self.starts_at(at, room, on);
        if on.point.is_none() {
            rows.extend(self.spot_rows(at, on, "Floor to its start"));
        }
        rows.push(Row::choice(
            "Studs are",
            DEPTHS.map(|(depth, name)| {
                Chip::new(
                    name,
                    on.depth == depth,
                    set(at, PipeChoice::StudDepth(depth)),
                )
            }),
        ));
        rows.push(Row::choice(
            "The wall is",
            [
                (true, "Bearing, outside or not known"),
                (false, "Bearing nothing"),
            ]
            .map(|(bearing, word)| {
                Chip::new(
                    word,
                    on.bearing == bearing,
                    set(at, PipeChoice::Bearing(bearing)),
                )
            }),
        ));
        rows
    }

    /// Where it starts by the tape.
    pub(super) fn spot_rows(&self, at: usize, on: &PipeOn, up: &str) -> [Row; 2] {
        [
            (
                "Left corner to its start",
                on.spot.from_left,
                PipeSlot::FromLeft,
            ),
            (up, on.spot.up, PipeSlot::UpFromFloor),
        ]
        .map(|(label, length, slot)| {
            let value = if on.is_said() {
                self.show(length)
            } else {
                "?".to_owned()
            };
            Row::yours(label, value, pad(at, slot))
        })
    }

    /// What is asked after the left corner where a run's start was not said yet: how high, or how far out.
    pub(super) fn start_asked_by(&self, slot: &Slot) -> Option<Slot> {
        let Slot::Pipe(at, PipeSlot::FromLeft) = *slot else {
            return None;
        };
        let asked = self.start_asked(at).is_some();
        asked.then_some(Slot::Pipe(at, PipeSlot::UpFromFloor))
    }

    /// What is missing until it is said where a run starts.
    pub(super) fn start_asked(&self, at: usize) -> Option<Row> {
        let task = self.job.tasks.get(at)?;
        let Ask::Pipe(_, Some(on)) = &task.ask else {
            return None;
        };
        let room = self.job.rooms.get(task.room?)?;
        if place_of(room, on).is_some() {
            return None;
        }
        let (place, follows) = match on.on {
            On::Wall(wall) => (
                format!("on wall {}", Wall::named(wall)),
                "Until then it is not on the drawing of its wall, and neither holes nor what is in its way are known.",
            ),
            On::Floor(_) => (
                "under the floor".to_owned(),
                "Until then it is not on the plan, and its holes are not known.",
            ),
        };
        let or = match points(room, on.on).next() {
            Some(_) => "Choose a measured point below, or measure",
            None => "Measure",
        };
        Some(Row::Note {
            tone: Tone::Note,
            text: format!(
                "Where {place} this run starts was not said yet. {or} from the left corner. {follows}"
            ),
            detail: String::new(),
            mend: Some(Chip::new("Measure it", false, pad(at, PipeSlot::FromLeft))),
        })
    }

    /// A supply that starts at a drain, or a drain at a supply.
    pub(super) fn start_doubted(&self, at: usize) -> Option<Row> {
        let task = self.job.tasks.get(at)?;
        let Ask::Pipe(ask, Some(on)) = &task.ask else {
            return None;
        };
        let room = self.job.rooms.get(task.room?)?;
        let point = points(room, on.on).find(|point| Some(point.id) == on.point)?;
        let family = ask.pipe.family();
        let odd = match point.kind {
            FixedKind::Drain => matches!(family, Family::Copper | Family::Cpvc | Family::Pex),
            _ => family.drains(),
        };
        odd.then(|| Row::Note {
            tone: Tone::Note,
            text: format!(
                "This run is of {} and starts at a {}. If that is not meant, choose its material, or another start.",
                ask.pipe.name(),
                point.kind.name().to_lowercase()
            ),
            detail: String::new(),
            mend: None,
        })
    }

    /// The fixed points that it may start at, or a place of its own; nothing where there is none.
    pub(super) fn starts_at(&self, at: usize, room: &Room, on: &PipeOn) -> Vec<Row> {
        let mut chips = vec![Chip::new(
            "A place of its own",
            on.point.is_none(),
            set(at, PipeChoice::Point(None)),
        )];
        chips.extend(points(room, on.on).map(|point| {
            let place = (
                point.from_left.unwrap_or_default(),
                point.up.unwrap_or_default(),
            );
            let name = point.kind.name();
            Chip::new(
                match point.on {
                    // There may be several drains in a floor.
                    On::Floor(wall) => format!(
                        "{name}, {} along wall {}, {} out",
                        self.show(place.0),
                        Wall::named(wall),
                        self.show(place.1)
                    ),
                    On::Wall(_) => name.to_owned(),
                },
                on.point == Some(point.id),
                set(at, PipeChoice::Point(Some(point.id))),
            )
        }));
        if chips.len() > 1 {
            vec![Row::choice("It starts at", chips)]
        } else {
            Vec::new()
        }
    }

    /// The runs of a wall on its elevation.
    pub(super) fn runs_on_wall(&self, room: usize, wall: usize, scene: &mut Scene<Command>) {
        for (at, task) in self.job.tasks.iter().enumerate() {
            let Ask::Pipe(ask, Some(on)) = &task.ask else {
                continue;
            };
            if task.room != Some(room) || on.on != On::Wall(wall) {
                continue;
            }
            if let Some((wall, holes, _)) = self.pipe_holes(at) {
                let go = Command::Go(Here::Task(at));
                run_on_wall(scene, (ask, &lines(ask)), (&wall, &holes), go);
            }
        }
    }
}

/// Which line, where it is not the first.
pub(super) fn line_word(line: usize) -> String {
    if line > 0 {
        format!(", line {}", line + 1)
    } else {
        String::new()
    }
}
