//! A second room made from a first: its figures come along, what is handed turned to the other hand.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::{Ask, Job, PipeOn, Task, TileOn};
use crate::site::{Id, Room, Spot, surface};
use crate::trades::{patch, sheets, tile};

impl Job {
    /// Another room made from one of this job, mirrored or not: every measurement is carried over until it is confirmed,
    /// and its figures come along but for patches, for a hole is where it is. None of them is on the buying list.
    ///
    /// Gives the place of the new room; `None` where there is no such room.
    pub fn second_room(&mut self, from: usize, mirrored: bool) -> Option<usize> {
        let first = self.rooms.get(from)?;
        let mut room = if mirrored {
            first.mirrored()
        } else {
            first.clone()
        };
        room.carry_all();
        room.name = next_name(&self.rooms, &first.name, mirrored);
        let first = first.clone();
        self.add_room(room);
        let second = self.rooms.len() - 1;
        // Grout and mortar go by the layout of their tile: by the new one's then.
        let mut names: BTreeMap<Id, Id> = BTreeMap::new();
        let figures: Vec<Task> = self
            .tasks
            .iter()
            .filter(|t| t.room == Some(from))
            .cloned()
            .collect();
        for task in figures {
            let ask = match task.ask {
                Ask::Patch(..) => continue,
                Ask::Tile(ask, on) => {
                    let (ask, on) = if mirrored {
                        mirrored_tile(&first, *ask, on)
                    } else {
                        (*ask, on)
                    };
                    Ask::Tile(Box::new(ask), on)
                }
                Ask::Grout(ask, of) => Ask::Grout(ask, of.and_then(|of| names.get(&of).copied())),
                Ask::Mortar(ask, of) => Ask::Mortar(ask, of.and_then(|of| names.get(&of).copied())),
                Ask::Pipe(run, on) => {
                    let (mut run, on) = if mirrored {
                        (run.mirrored(), on.map(|on| mirrored_start(&first, on)))
                    } else {
                        (*run, on)
                    };
                    // Nothing of the second is fitted yet.
                    run.fitted.clear();
                    Ask::Pipe(Box::new(run), on)
                }
                Ask::Sheets(ask, on) => {
                    let (ask, on) = if mirrored {
                        mirrored_sheets(&first, *ask, on)
                    } else {
                        (*ask, on)
                    };
                    Ask::Sheets(Box::new(ask), on)
                }
                Ask::Trim(mut ask, on) => {
                    ask.backward ^= mirrored;
                    Ask::Trim(ask, on)
                }
                same @ (Ask::Paint(..) | Ask::Drain(..)) => same,
            };
            self.add_task(Some(second), ask);
            if let Some(new) = self.tasks.last() {
                names.insert(task.id, new.id);
                // An outline that was an estimate is one in the copy too.
                if let Some(traced) = self.traced.get(&task.id).copied() {
                    self.traced.insert(new.id, traced);
                }
            }
        }
        Some(second)
    }
}

impl Job {
    /// A room mirrored where it is, with the figures that stand in it: cut-outs, holes and layouts follow, and its
    /// pictures go to the walls that they were taken of.
    pub fn mirror_room(&mut self, at: usize) {
        let Some(room) = self.rooms.get(at).cloned() else {
            return;
        };
        self.rooms[at] = room.mirrored();
        let walls = room.walls.len().max(1);
        for task in self.tasks.iter_mut().filter(|task| task.room == Some(at)) {
            match &mut task.ask {
                Ask::Tile(ask, on) => {
                    let (now, now_on) = mirrored_tile(&room, (**ask).clone(), *on);
                    (**ask, *on) = (now, now_on);
                }
                Ask::Sheets(ask, on) => {
                    let (now, now_on) = mirrored_sheets(&room, (**ask).clone(), *on);
                    (**ask, *on) = (now, now_on);
                }
                Ask::Patch(ask, Some(wall)) => {
                    mirror_holes(&room, ask, *wall);
                    *wall = (walls - *wall % walls) % walls;
                }
                Ask::Pipe(run, on) => {
                    **run = run.mirrored();
                    *on = on.map(|on| mirrored_start(&room, on));
                }
                // It is walked the other way round; its pieces are the same then.
                Ask::Trim(ask, _) => ask.backward = !ask.backward,
                Ask::Patch(_, None)
                | Ask::Paint(..)
                | Ask::Grout(..)
                | Ask::Mortar(..)
                | Ask::Drain(..) => {}
            }
        }
        for photo in &mut self.photos {
            if let Some(wall) = photo.wall.filter(|_| photo.room == Some(room.id)) {
                let photo = Arc::make_mut(photo);
                photo.wall = Some((walls - wall % walls) % walls);
                // The picture is not turned over, so it would lie there the wrong way round.
                photo.laid = false;
                if let (Some(anchor), Some(long)) = (&mut photo.anchor, room.drawn_length(wall)) {
                    anchor.from_left = anchor.from_left.map(|left| long - left);
                }
            }
        }
    }
}

/// The holes of a patch from the other corner. One that was measured from a stud is so from that corner then.
fn mirror_holes(room: &Room, ask: &mut patch::Ask, wall: usize) {
    let long = room.drawn_length(wall).unwrap_or_default();
    let studs = room.walls.get(wall).and_then(|wall| wall.studs.as_ref());
    let centres = studs.map_or_else(Vec::new, |studs| studs.centres(long));
    for hole in std::iter::once(&mut ask.hole).chain(&mut ask.other_holes) {
        let from_stud = hole
            .from_stud
            .and_then(|(stud, off)| Some(*centres.get(stud)? + off));
        let wide = match hole.shape {
            patch::HoleShape::Rectangle { width, .. } => width,
            patch::HoleShape::Round { across } => across,
        };
        if let Some(from_left) = hole.from_left.or(from_stud) {
            hole.from_left = Some(long - from_left - wide);
            hole.from_stud = None;
        }
    }
}

/// A name that no other room has: the first one's, and what this one is.
fn next_name(rooms: &[Room], first: &str, mirrored: bool) -> String {
    let base = if mirrored {
        format!("{first}, mirrored")
    } else {
        format!("{first}, copy")
    };
    let taken = |name: &String| rooms.iter().any(|room| room.name == *name);
    let numbered = (2..).map(|n| format!("{base} {n}"));
    std::iter::once(base.clone())
        .chain(numbered)
        .find(|name| !taken(name))
        .unwrap_or(base)
}

/// Where a run starts on the mirrored wall or floor.
fn mirrored_start(room: &Room, on: PipeOn) -> PipeOn {
    let walls = room.walls.len().max(1);
    let wall = on.on.wall();
    let long = room.drawn_length(wall).unwrap_or_default();
    let from_left = on.spot.from_left;
    PipeOn {
        on: on.on.with_wall((walls - wall % walls) % walls),
        spot: Spot {
            // What was not said stays so.
            from_left: if from_left.is_positive() {
                long - from_left
            } else {
                from_left
            },
            ..on.spot
        },
        ..on
    }
}

/// Sheets for the mirrored surface: cut-outs and framing from the other edge, begun at the other end.
fn mirrored_sheets(room: &Room, mut ask: sheets::Ask, on: TileOn) -> (sheets::Ask, TileOn) {
    let walls = room.walls.len().max(1);
    let floor = || surface::floor(room).and_then(|region| region.bounds());
    let (wide, now) = match on {
        TileOn::Own => return (ask, on),
        TileOn::Floor => (floor().map(|(least, most)| most.x - least.x), on),
        TileOn::Wall(wall) => (
            room.drawn_length(wall),
            TileOn::Wall((walls - wall % walls) % walls),
        ),
    };
    let Some(wide) = wide else {
        return (ask, now);
    };
    for thing in &mut ask.things {
        thing.from_left = wide - thing.from_left;
    }
    ask.begin.right = !ask.begin.right;
    if let Some(framing) = ask.framing.as_mut().filter(|framing| framing.upright) {
        framing.studs = framing.studs.mirrored(wide);
    }
    (ask, now)
}

/// A layout for the mirrored surface: by the other hand, its start and all that it keeps to from the other edge.
fn mirrored_tile(room: &Room, ask: tile::Ask, on: TileOn) -> (tile::Ask, TileOn) {
    let walls = room.walls.len().max(1);
    let (region, now) = match on {
        TileOn::Own => return (ask, on),
        TileOn::Floor => (surface::floor(room), on),
        TileOn::Wall(wall) => (
            surface::wall(room, wall),
            TileOn::Wall((walls - wall % walls) % walls),
        ),
    };
    let Some(region) = region else {
        return (ask, now);
    };
    // What is kept of a surface by hand stays beside the room's own.
    let own = ask.surface.clone();
    let laid = tile::Ask {
        surface: region,
        ..ask
    };
    let mirrored = tile::Ask {
        surface: own,
        ..laid.mirrored()
    };
    (mirrored, now)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{Length, Units};
    use crate::photo::{Anchor, Photo};
    use crate::site::{OpeningRule, What};
    use crate::trades::tile::{Thing, ThingShape};
    use crate::trades::{grout, paint};
    use chrono::DateTime;

    #[test]
    fn figures_come_along_mirrored_and_patches_stay() {
        let mut job = Job::new(
            "Cabin",
            DateTime::UNIX_EPOCH.fixed_offset(),
            Units::FeetInches { marks: 16 },
        );
        let mut room = Room::rectangle("Washroom");
        for (wall, inches) in [(0, 96), (1, 60)] {
            room.measure(What::Wall(wall), Some(Length::inches(inches)), None);
        }
        job.add_room(room);
        let mut floor = tile::Ask::default();
        floor.things.push(Thing {
            shape: ThingShape::Rectangle {
                width: Length::inches(30),
                height: Length::inches(60),
            },
            from_left: Length::ZERO,
            from_top: Length::ZERO,
        });
        job.add_task(Some(0), Ask::Tile(Box::new(floor), TileOn::Floor));
        let tile = job.tasks.last().map(|task| task.id);
        job.add_task(Some(0), Ask::Grout(Box::<grout::Ask>::default(), tile));
        job.add_task(Some(0), Ask::Patch(Box::<patch::Ask>::default(), Some(1)));
        job.add_task(
            Some(0),
            Ask::Paint(Box::<paint::Ask>::default(), OpeningRule::Net),
        );
        assert_eq!(job.second_room(0, true), Some(1));
        assert_eq!(job.rooms[1].name, "Washroom, mirrored");
        assert_eq!(job.rooms[1].carried().count(), 2);
        let second: Vec<&Task> = job
            .tasks
            .iter()
            .filter(|task| task.room == Some(1))
            .collect();
        assert_eq!(second.len(), 3);
        let Ask::Tile(ask, TileOn::Floor) = &second[0].ask else {
            unreachable!("tile comes first")
        };
        assert_eq!(ask.things[0].from_left, Length::inches(66));
        assert!(matches!(&second[1].ask, Ask::Grout(_, of) if *of == Some(second[0].id)));
        assert_eq!(job.second_room(9, true), None);
        // Mirrored where it is, twice: all as it was.
        if let Ask::Patch(ask, _) = &mut job.tasks[2].ask {
            ask.hole.from_left = Some(Length::inches(7));
        }
        let mut photo = Photo::new("wall.jpg".into(), (40, 30), job.begun);
        (photo.room, photo.wall) = (Some(job.rooms[0].id), Some(1));
        photo.anchor = Some(Anchor {
            spot: [0.0, 0.0],
            from_left: Some(Length::inches(7)),
            up: None,
        });
        job.photos.push(Arc::new(photo));
        let before = job.clone();
        job.mirror_room(0);
        let anchor = job.photos[0].anchor.as_ref();
        assert_eq!(job.photos[0].wall, Some(3));
        assert_eq!(anchor.and_then(|at| at.from_left), Some(Length::inches(53)));
        let Ask::Patch(ask, Some(3)) = &job.tasks[2].ask else {
            unreachable!("the second wall is the last one in the mirror")
        };
        assert!(ask.hole.from_left > Some(Length::inches(40)));
        job.mirror_room(0);
        assert_eq!(job, before);
    }
}
