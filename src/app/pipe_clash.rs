//! What a run of pipe meets on its wall, in words.

use super::pipe_wall::{lines, place_of};
use super::{App, Chip, Command, Here, Row, Tone};
use crate::handbook::pipe::tube;
use crate::measure::Length;
use crate::site::{FixedKind, Hidden, HiddenKind, Known, On, OpeningKind, Room};
use crate::takeoff::Ask;
use crate::trades::pipe::{Body, Clash, Obstacle, Place, run_clashes};

/// Something on the wall: what it is called, where to look at it, what it is to a run.
struct Thing {
    name: String,
    more: String,
    go: Option<Command>,
    body: Obstacle,
}

impl App {
    /// Where the legs of a run come too near to what else is on its wall.
    pub(super) fn pipe_clash_rows(&self, at: usize) -> Vec<Row> {
        let Some((task, room)) = self.job.tasks.get(at).and_then(|task| {
            let room = self.job.rooms.get(task.room?)?;
            Some((task, room))
        }) else {
            return Vec::new();
        };
        let Ask::Pipe(ask, Some(on)) = &task.ask else {
            return Vec::new();
        };
        let Some((On::Wall(wall), start)) = place_of(room, on) else {
            return Vec::new();
        };
        let mut things = openings(room, wall, self.keeper.clear());
        things.extend(fixed(room, wall, self.keeper.clear()));
        things.extend(self.hidden_things(room, wall));
        things.extend(self.other_runs(at, wall));
        let bodies: Vec<Obstacle> = things.iter().map(|thing| thing.body.clone()).collect();
        let found = run_clashes(ask, &lines(ask), start, &bodies);
        let rows = found.iter().filter_map(|clash| {
            let thing = things.get(clash.with)?;
            Some(self.clash_row(clash, thing))
        });
        rows.collect()
    }

    fn clash_row(&self, clash: &Clash, thing: &Thing) -> Row {
        let place = format!(
            "{} from the left, {} up",
            self.show(clash.at.0),
            self.show(clash.at.1)
        );
        let (leg, name) = (clash.leg + 1, &thing.name);
        let run = matches!(thing.body.body, Body::Line(_));
        let (tone, text) = if clash.is_through() {
            (
                Tone::Stop,
                format!(
                    "Leg {leg} runs through {name}, {place}. Take it round, or move one of the two.{}",
                    thing.more
                ),
            )
        } else {
            (
                if run { Tone::Note } else { Tone::Caution },
                format!(
                    "Leg {leg} passes {} from {name}, {place}: less than {} clear.{}",
                    self.show(clash.clear),
                    self.show(thing.body.clear),
                    thing.more
                ),
            )
        };
        let detail = if clash.is_through() {
            "Computed: the pipe's outside against it."
        } else {
            "Common practice, no published source: how far clear is set with the pictures."
        };
        Row::Note {
            tone,
            text,
            detail: detail.into(),
            mend: thing
                .go
                .clone()
                .map(|go| Chip::new("Look at it", false, go)),
        }
    }

    /// What is hidden behind the wall.
    fn hidden_things(&self, room: &Room, wall: usize) -> Vec<Thing> {
        let here = room
            .hidden
            .iter()
            .filter(|hidden| hidden.on == On::Wall(wall));
        here.filter(|hidden| !matches!(hidden.kind, HiddenKind::Stud | HiddenKind::Blocking))
            .map(|hidden| Thing {
                name: format!("the hidden {}", hidden.kind.name().to_lowercase()),
                more: self.of_hidden(hidden),
                go: self
                    .picture_of(hidden)
                    .map(|photo| Command::Go(Here::Photo(photo))),
                body: behind(hidden, self.keeper.clear()),
            })
            .collect()
    }

    /// How well it is known where something hidden is, and what comes before work near it.
    fn of_hidden(&self, hidden: &Hidden) -> String {
        let mut more = String::new();
        if let Known::Picture(give) = hidden.known {
            more += &format!(" It is known from a picture to ±{}.", self.give(give));
        }
        more += " Look before you bore.";
        if hidden.kind.is_live() {
            more += " Its power is off before anything is bored near it: that is an electrician's word.";
        }
        more
    }

    /// The other runs of that wall.
    fn other_runs(&self, at: usize, wall: usize) -> Vec<Thing> {
        let mut found = Vec::new();
        let own = self.job.tasks.get(at).and_then(|task| task.room);
        for (other, task) in self.job.tasks.iter().enumerate() {
            let Ask::Pipe(ask, Some(on)) = &task.ask else {
                continue;
            };
            let room = task.room.and_then(|room| self.job.rooms.get(room));
            let Some(room) = room.filter(|_| other != at && task.room == own) else {
                continue;
            };
            let Some((_, start)) = place_of(room, on).filter(|(of, _)| *of == On::Wall(wall))
            else {
                continue;
            };
            let from = Place {
                right: start.0,
                forward: Length::ZERO,
                up: start.1,
            };
            let widest = (0..ask.legs.len())
                .filter_map(|leg| tube(ask.pipe, ask.size_of(leg)))
                .map(|tube| tube.outside.value)
                .max();
            found.extend(lines(ask).into_iter().map(|line| Thing {
                name: format!("“{}”", self.bare_name(other)),
                more: String::new(),
                go: Some(Command::Go(Here::Task(other))),
                body: Obstacle {
                    body: Body::Line(line.into_iter().map(|place| from.plus(place)).collect()),
                    half: widest.unwrap_or_default().half(),
                    clear: self.keeper.clear(),
                    joins: true,
                },
            }));
        }
        found
    }
}

fn openings(room: &Room, wall: usize, clear: Length) -> Vec<Thing> {
    let here = room.openings.iter().filter(|opening| opening.wall == wall);
    here.filter_map(|opening| {
        let low = if opening.kind == OpeningKind::Door {
            Length::ZERO
        } else {
            opening.sill?
        };
        let left = opening.from_left?;
        Some(Thing {
            name: match opening.kind {
                OpeningKind::Door => "the door",
                OpeningKind::Window => "the window",
                OpeningKind::Niche => "the niche",
                OpeningKind::PassThrough => "the pass-through",
            }
            .into(),
            more: String::new(),
            go: None,
            body: Obstacle {
                body: Body::Box([left, left + opening.width?, low, low + opening.height?]),
                half: Length::ZERO,
                clear,
                joins: false,
            },
        })
    })
    .collect()
}

/// Fixed points of a wall with a place: boxes as large as they are, else points.
fn fixed(room: &Room, wall: usize, clear: Length) -> Vec<Thing> {
    let here = room.fixed.iter().filter(|point| point.on == On::Wall(wall));
    here.filter_map(|point| {
        let (x, y) = point.from_left.zip(point.up)?;
        let half = |length: Option<Length>| length.unwrap_or_default().half();
        let (wide, high) = (half(point.width), half(point.height));
        let power = matches!(
            point.kind,
            FixedKind::Outlet | FixedKind::Switch | FixedKind::Light
        );
        Some(Thing {
            name: format!("“{}”", point.kind.name()),
            more: if power {
                " Keep water and wiring apart: the local code and an electrician say how.".into()
            } else {
                String::new()
            },
            go: None,
            body: Obstacle {
                body: Body::Box([x - wide, x + wide, y - high, y + high]),
                half: point.known.give(),
                clear,
                joins: point.kind.is_pipe(),
            },
        })
    })
    .collect()
}

/// Something hidden, as an obstacle.
fn behind(hidden: &Hidden, clear: Length) -> Obstacle {
    let line = hidden.line.iter().map(|spot| Place {
        right: spot.from_left,
        forward: Length::ZERO,
        up: spot.up,
    });
    Obstacle {
        body: Body::Flat(line.collect()),
        half: hidden.width.unwrap_or_default().half() + hidden.known.give(),
        clear,
        joins: matches!(hidden.kind, HiddenKind::Pipe | HiddenKind::Valve),
    }
}
