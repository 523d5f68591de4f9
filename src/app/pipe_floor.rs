//! A run of pipe under the floor of its room: where it starts, the joists that it goes through, its line on the plan.

use super::pipe_rows::{pad, set};
use super::pipe_wall::{line_word, lines, place_of};
use super::{App, Chip, Command, Here, JoistSlot, PipeChoice, PipeSlot, Row, pipe_words};
use crate::drawing::{Scene, joists_under, run_on_floor};
use crate::geometry::Point;
use crate::handbook::cautions::CUT_FRAMING;
use crate::measure::{Amount, Length};
use crate::site::{self, Fault, Joists, On, Room, Wall};
use crate::takeoff::{Ask, PipeOn};
use crate::trades::Account;
use crate::trades::pipe::{Bored, Floored, Place, floored};

/// What is asked of joists, in this order.
const LENGTHS: [JoistSlot; 5] = [
    JoistSlot::First,
    JoistSlot::Spacing,
    JoistSlot::Depth,
    JoistSlot::Face,
    JoistSlot::Deck,
];

/// The length that stands in a field of joists.
pub(super) fn held(joists: Joists, of: JoistSlot) -> Length {
    match of {
        JoistSlot::First => joists.first,
        JoistSlot::Spacing => joists.spacing,
        JoistSlot::Face => joists.face,
        JoistSlot::Depth => joists.depth,
        JoistSlot::Deck => joists.deck,
    }
}

/// A length into a field of joists, or why it cannot stand there.
pub(super) fn fill(joists: &mut Joists, of: JoistSlot, length: Length) -> Result<(), String> {
    let next = match of {
        JoistSlot::First => Joists {
            first: length,
            ..*joists
        },
        JoistSlot::Spacing => Joists {
            spacing: length,
            ..*joists
        },
        JoistSlot::Face => Joists {
            face: length,
            ..*joists
        },
        JoistSlot::Depth => Joists {
            depth: length,
            ..*joists
        },
        JoistSlot::Deck => Joists {
            deck: length,
            ..*joists
        },
    };
    if length < Length::ZERO {
        return Err("That is measured from the wall or the floor, and is nothing or more.".into());
    }
    if next.spacing < next.face {
        return Err(
            "From centre to centre is more than a joist is thick. Measure both again.".into(),
        );
    }
    *joists = next;
    Ok(())
}

/// A choice about the joists of a room.
pub(super) fn choose(joists: &mut Option<Joists>, choice: PipeChoice) {
    match choice {
        PipeChoice::Joists(wall) => {
            *joists = wall.map(|wall| Joists {
                wall,
                ..joists.unwrap_or(Joists::along(wall))
            });
        }
        PipeChoice::Engineered(engineered) => {
            if let Some(joists) = joists {
                joists.engineered = engineered;
            }
        }
        _ => {}
    }
}

impl App {
    /// What a run under a floor goes through; `None` where it does not run there, or the joists are not known.
    pub(super) fn pipe_joists(&self, at: usize) -> Option<(Vec<Bored>, Account)> {
        let task = self.job.tasks.get(at)?;
        let Ask::Pipe(ask, Some(on)) = &task.ask else {
            return None;
        };
        let room = self.job.rooms.get(task.room?)?;
        let (On::Floor(wall), (from_left, out)) = place_of(room, on)? else {
            return None;
        };
        let joists = room.joists_under()?;
        let (begins, along, per_out) = site::out_from(&site::sketch(room), wall, joists.wall)?;
        let step = |length: Length, share: f64| {
            Length::from_metres(length.metres() * share).unwrap_or_default()
        };
        let floor = Floored {
            start: begins + step(from_left, along) + step(out, per_out),
            // Forward is into the wall, out of the room.
            steps: [along, -per_out],
            below: on.below,
            joists,
        };
        let (holes, findings) = floored(ask, &lines(ask), &floor);
        let bored = holes.iter().any(|hole| hole.faults.is_some());
        let account = Account {
            findings,
            cautions: bored.then_some(&CUT_FRAMING).into_iter().collect(),
            ..Account::default()
        };
        Some((holes, account))
    }

    /// Whether a run is measured from a wall out.
    pub(super) fn starts_in_floor(&self, at: usize) -> bool {
        let ask = self.job.tasks.get(at).map(|task| &task.ask);
        matches!(ask, Some(Ask::Pipe(_, Some(on))) if matches!(on.on, On::Floor(_)))
    }

    /// Where a run starts in the floor, the joists, and the holes that it needs.
    pub(super) fn pipe_floor_rows(&self, at: usize, room: &Room, on: &PipeOn) -> Vec<Row> {
        let mut rows = self.starts_at(at, room, on);
        let wall = on.on.wall();
        if on.point.is_none() {
            rows.push(Row::choice(
                "Measured from, and seen facing",
                (0..room.walls.len()).map(|of| {
                    Chip::new(
                        format!("Wall {}", Wall::named(of)),
                        of == wall,
                        set(at, PipeChoice::Floor(of)),
                    )
                }),
            ));
            rows.extend(self.spot_rows(at, on, "Wall out to its start"));
        } else if let Some((of, _)) = place_of(room, on) {
            rows.push(Row::Text(format!(
                "Its ways are as seen facing wall {}.",
                Wall::named(of.wall())
            )));
        }
        rows.push(Row::yours(
            "Finished floor down to its start",
            self.show(on.below),
            pad(at, PipeSlot::Below),
        ));
        rows.extend(self.joist_rows(at, room));
        if let Some((holes, account)) = self.pipe_joists(at) {
            rows.extend(self.notes(&account));
            rows.extend(holes.iter().map(|hole| self.bored_row(hole)));
        }
        if let Some(room) = self.job.tasks.get(at).and_then(|task| task.room) {
            rows.push(Row::button(
                "Look at the plan",
                Command::Go(Here::Room(room)),
            ));
        }
        rows
    }

    /// The joists under the floor of a room.
    fn joist_rows(&self, at: usize, room: &Room) -> Vec<Row> {
        let joists = room.joists_under();
        let mut chips = vec![Chip::new(
            "Not known",
            joists.is_none(),
            set(at, PipeChoice::Joists(None)),
        )];
        chips.extend((0..room.walls.len()).map(|wall| {
            Chip::new(
                format!("Along wall {}", Wall::named(wall)),
                joists.is_some_and(|joists| joists.wall == wall),
                set(at, PipeChoice::Joists(Some(wall))),
            )
        }));
        let mut rows = vec![Row::choice("Joists under this floor run", chips)];
        let Some(joists) = joists else {
            rows.push(Row::Text(
                "Look from below or through a small hole which way the joists run; the holes follow.".into(),
            ));
            return rows;
        };
        rows.extend(LENGTHS.map(|of| {
            Row::yours(
                pipe_words::joist(of),
                self.show(held(joists, of)),
                pad(at, PipeSlot::Joists(of)),
            )
        }));
        rows.push(Row::choice(
            "They are",
            [(false, "Sawn wood"), (true, "Engineered, or trusses")].map(|(engineered, word)| {
                Chip::new(
                    word,
                    joists.engineered == engineered,
                    set(at, PipeChoice::Engineered(engineered)),
                )
            }),
        ));
        rows
    }

    fn bored_row(&self, hole: &Bored) -> Row {
        let fault = match &hole.faults {
            None => ", clear of it".to_owned(),
            Some(faults) => faults.iter().map(|fault| self.fault(*fault)).collect(),
        };
        Row::Figure {
            label: format!(
                "Leg {}, joist {}{}",
                hole.leg + 1,
                hole.joist + 1,
                line_word(hole.line)
            ),
            detail: format!(
                "its centre {} above the lower edge{fault}",
                self.show(hole.centre)
            ),
            value: if hole.faults.is_some() {
                self.amount(Amount::Length(hole.across))
            } else {
                "no hole".into()
            },
            command: None,
        }
    }

    /// The joists and the runs under a floor on its plan.
    pub(super) fn runs_under_floor(&self, at: usize, scene: &mut Scene<Command>) {
        let Some(room) = self.job.rooms.get(at) else {
            return;
        };
        let shape = site::sketch(room);
        // Over the floor itself, under all else.
        let under = joists_under(room, &shape);
        scene.marks.splice(1..1, under);
        for (task, of) in self.job.tasks.iter().enumerate() {
            let Ask::Pipe(ask, Some(on)) = &of.ask else {
                continue;
            };
            let Some((On::Floor(wall), start)) = place_of(room, on) else {
                continue;
            };
            if of.room != Some(at) {
                continue;
            }
            let point = |place: &Place| {
                site::off_wall(&shape, wall, start.0 + place.right, start.1 - place.forward)
            };
            let drawn: Vec<Vec<Point>> = lines(ask)
                .iter()
                .map(|line| line.iter().filter_map(point).collect())
                .collect();
            let holes = self.pipe_joists(task).map(|(holes, _)| holes);
            let holes: Vec<(Point, Length, bool)> = holes
                .unwrap_or_default()
                .iter()
                .filter_map(|hole| {
                    let faults: &Vec<Fault> = hole.faults.as_ref()?;
                    Some((point(&hole.at)?, hole.across, faults.is_empty()))
                })
                .collect();
            run_on_floor(scene, (ask, &drawn), &holes, &Command::Go(Here::Task(task)));
        }
    }
}
