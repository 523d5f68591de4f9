//! What is asked of trim, with what the room knows: its walls, corners, studs and openings, and what stands against it.

use super::{App, Here};
use crate::measure::Length;
use crate::site::{self, Finish, OpeningKind, Room, Standing, Wall};
use crate::takeoff::{Ask, TrimOn};
use crate::trades::trim::{self, Figure, Frame, Gap, Kind, Opening, Stop};

/// What of a room is not measured yet: in words, and where it is.
pub(super) type Wanting = (String, Here);

impl App {
    /// The stored ask of a figure of trim.
    pub(super) fn trim_stored(&self, at: usize) -> Option<(&trim::Ask, &TrimOn)> {
        match &self.job.tasks.get(at)?.ask {
            Ask::Trim(ask, on) => Some((ask, on)),
            _ => None,
        }
    }

    /// The room that trim goes round.
    pub(super) fn trim_room(&self, at: usize) -> Option<(usize, &Room)> {
        let room = self.job.tasks.get(at)?.room?;
        Some((room, self.job.rooms.get(room)?))
    }

    /// What is asked, with all that the room knows; or what of the room is still to be measured.
    pub(super) fn trim_ask(&self, at: usize) -> Option<Result<trim::Ask, Wanting>> {
        let (stored, on) = self.trim_stored(at)?;
        let sticks = self.setup(&stored.material()).sticks.into_iter();
        let mut ask = trim::Ask {
            stick: sticks.max().unwrap_or(stored.stick),
            ..stored.clone()
        };
        let Some((number, room)) = self.trim_room(at) else {
            return Some(Ok(ask));
        };
        match ask.kind {
            Kind::Base => match walls(number, room, on, ask.width) {
                Ok(walls) => ask.walls = Some(walls),
                Err(wanting) => return Some(Err(wanting)),
            },
            Kind::Casing => match frames(number, room, on) {
                Ok(frames) => ask.frames = frames,
                Err(wanting) => return Some(Err(wanting)),
            },
        }
        Some(Ok(ask))
    }

    /// The figure, where there is one.
    pub(super) fn trim_figure(&self, at: usize) -> Option<Figure> {
        trim::figure(&self.trim_ask(at)?.ok()?).ok()
    }

    /// Its last answer.
    pub(super) fn trim_answer(&self, at: usize) -> String {
        self.trim_figure(at).map_or_else(
            || "not figured yet".to_owned(),
            |figure| super::trim_page::counted(figure.pieces.len()),
        )
    }
}

/// The walls of a room as base runs along them.
fn walls(
    number: usize,
    room: &Room,
    on: &TrimOn,
    high: Length,
) -> Result<Vec<trim::Wall>, Wanting> {
    let Ok(shape) = site::shape(room) else {
        let text = "The walls of this room do not make a room yet. Look at its plan.";
        return Err((text.into(), Here::Room(number)));
    };
    let turns = site::true_turns(room);
    let against = site::against(room, &shape);
    let mut walls = Vec::new();
    for (at, wall) in room.walls.iter().enumerate() {
        let (length, standing) = shape.walls[at];
        if standing == Standing::NotYet {
            let text = format!("Wall {} is not measured yet.", Wall::named(at));
            return Err((text, Here::Room(number)));
        }
        let mut gaps = Vec::new();
        if wall.finish == Finish::Tile && !on.tiled {
            gaps.push(Gap {
                from: Length::ZERO,
                to: length,
                stop: Stop::Tile,
            });
        }
        for opening in room
            .openings
            .iter()
            .filter(|o| o.wall == at && stops(o, high))
        {
            let (Some(from), Some(width)) = (opening.from_left, opening.width) else {
                let text = format!(
                    "An opening in wall {} is not measured yet: base stops at it.",
                    Wall::named(at)
                );
                return Err((text, Here::Wall(number, at)));
            };
            gaps.push(Gap {
                from,
                to: from + width,
                stop: Stop::Cased,
            });
        }
        for one in against.iter().filter(|one| one.wall == at) {
            let fixture = &room.fixtures[one.fixture];
            if on.stops_at(fixture) {
                gaps.push(Gap {
                    from: one.from,
                    to: one.to,
                    stop: Stop::Fixture(fixture.kind),
                });
            }
        }
        let studs = wall.studs.as_ref();
        walls.push(trim::Wall {
            length,
            turn: turns[at],
            gaps,
            studs: studs.map_or_else(Vec::new, |studs| studs.centres(length)),
        });
    }
    Ok(walls)
}

/// Whether base of a height stops at an opening: a door, or one that comes down to it.
fn stops(opening: &site::Opening, high: Length) -> bool {
    match opening.kind {
        OpeningKind::Door => true,
        OpeningKind::Niche => false,
        OpeningKind::Window | OpeningKind::PassThrough => {
            opening.sill.is_some_and(|sill| sill < high)
        }
    }
}

/// The openings of a room that are cased, counted from 0.
pub(super) fn cased(room: &Room, on: &TrimOn) -> Vec<usize> {
    let [doors, windows, others] = on.cased;
    let is = |opening: &site::Opening| match opening.kind {
        OpeningKind::Door => doors,
        OpeningKind::Window => windows,
        OpeningKind::PassThrough => others,
        OpeningKind::Niche => false,
    };
    let openings = room.openings.iter().enumerate();
    openings
        .filter(|(_, opening)| is(opening))
        .map(|(n, _)| n)
        .collect()
}

/// Their frames.
fn frames(number: usize, room: &Room, on: &TrimOn) -> Result<Vec<Frame>, Wanting> {
    let mut frames = Vec::new();
    for opening in cased(room, on).into_iter().map(|n| &room.openings[n]) {
        let (Some(width), Some(height)) = (opening.width, opening.height) else {
            let text = format!(
                "An opening in wall {} is not measured yet: its casing needs its width and its height.",
                Wall::named(opening.wall)
            );
            return Err((text, Here::Wall(number, opening.wall)));
        };
        let on_floor = opening.kind == OpeningKind::Door
            || opening.kind == OpeningKind::PassThrough
                && opening.sill.unwrap_or_default() == Length::ZERO;
        let long = room.drawn_length(opening.wall).unwrap_or_default();
        frames.push(Frame {
            opening: if on_floor {
                Opening::Door
            } else {
                Opening::Window
            },
            width,
            height,
            four: on.four,
            count: 1,
            on: opening
                .from_left
                .map(|from| (opening.wall, [from, long - from - width])),
        });
    }
    Ok(frames)
}

#[cfg(test)]
mod tests;
