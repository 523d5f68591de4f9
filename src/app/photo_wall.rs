//! From a picture onto its wall: what is hidden, in real coordinates.

use super::photo_page::name;
use super::{App, Command, PhotoCommand, Row};
use crate::measure::Length;
use crate::photo::{Mark, Photo, What};
use crate::site::{self, Hidden, Id, Known, On};

/// Why something hidden has no place on a wall yet.
type NotYet = &'static str;

impl App {
    /// A hidden mark as it stands behind its wall; or what is missing.
    fn behind_wall(&self, at: usize, photo: &Photo, mark: &Mark) -> Result<Hidden, NotYet> {
        let What::Hidden(behind) = &mark.what else {
            return Err("It is not hidden.");
        };
        let wall = photo.wall.ok_or("Say which wall the picture shows.")?;
        let mut hidden = Hidden {
            width: behind.width,
            depth: behind.depth.map(|depth| depth.length),
            material: behind.material.clone(),
            note: mark.note.clone(),
            picture: Some(photo.picture.clone()),
            ..Hidden::new(behind.kind, On::Wall(wall))
        };
        hidden.id = behind.pinned.unwrap_or(hidden.id);
        let spot = |left: f64, up: f64| -> Option<site::Spot> {
            Some(site::Spot {
                from_left: Length::from_metres(left)?,
                up: Length::from_metres(up)?,
            })
        };
        let view = self.view_of(at);
        let placed = view.as_ref().map(|view| {
            let places = mark.points.iter().map(|point| photo.on_wall(view, *point));
            places.collect::<Option<Vec<_>>>()
        });
        let placed = placed.flatten();
        if let Some([left, up]) = behind.at {
            hidden.line = vec![site::Spot {
                from_left: left,
                up,
            }];
            hidden.known = Known::Tape;
            if placed.is_none() {
                hidden.line = self.whole_way(photo, wall, mark, hidden.line[0])?;
            }
            // The rest of a line follows from the picture, from the point that was taped.
            if let Some(placed) = placed.filter(|placed| placed.len() > 1) {
                let first = placed[0].0;
                let mut most = 0.0_f64;
                for (place, give) in &placed[1..] {
                    let (x, y) = (place[0] - first[0], place[1] - first[1]);
                    most = most.max(*give);
                    hidden.line.extend(spot(left.metres() + x, up.metres() + y));
                }
                hidden.known = Known::Picture(Length::from_metres(most).unwrap_or_default());
            }
            return Ok(hidden);
        }
        let placed = placed.ok_or(if view.is_some() {
            "Mark one place on the wall (further down, “On the wall”), or tape this from corner and floor."
        } else {
            "Flatten the picture and mark one place on the wall, or tape it from corner and floor."
        })?;
        let most = placed.iter().map(|(_, give)| *give).fold(0.0, f64::max);
        hidden.known = Known::Picture(Length::from_metres(most).unwrap_or_default());
        hidden.line = placed
            .iter()
            .filter_map(|(place, _)| spot(place[0], place[1]))
            .collect();
        Ok(hidden)
    }

    /// What is known of a mark by one taped place alone. A line is taken to run the whole height or width of its wall, by
    /// which way it was drawn; anything else needs both figures.
    fn whole_way(
        &self,
        photo: &Photo,
        wall: usize,
        mark: &Mark,
        place: site::Spot,
    ) -> Result<Vec<site::Spot>, NotYet> {
        let (Some(first), Some(last)) = (mark.points.first(), mark.points.last()) else {
            return Ok(vec![place]);
        };
        let (across, up) = ((last[0] - first[0]).abs(), (last[1] - first[1]).abs());
        let known = |length: Length| length.is_positive();
        if mark.points.len() < 2 {
            return if known(place.from_left) && known(place.up) {
                Ok(vec![place])
            } else {
                Err("Tape both figures: from the left corner, and up from the floor.")
            };
        }
        let room = self
            .job
            .rooms
            .iter()
            .find(|room| Some(room.id) == photo.room);
        let room = room.ok_or("Say which room the picture shows.")?;
        let (from, to) = if up >= across {
            let (left, right) = room
                .heights_of(wall)
                .ok_or("Measure how high the wall is: the line is taken to run all the way up.")?;
            let end = |up| site::Spot {
                from_left: place.from_left,
                up,
            };
            (end(Length::ZERO), end(left.max(right)))
        } else {
            let long = room
                .drawn_length(wall)
                .ok_or("Measure the wall: the line is taken to run all along it.")?;
            let end = |from_left| site::Spot {
                from_left,
                up: place.up,
            };
            (end(Length::ZERO), end(long))
        };
        let taped = if up >= across {
            place.from_left
        } else {
            place.up
        };
        if known(taped) {
            Ok(vec![from, to])
        } else if up >= across {
            Err("Tape how far it is from the left corner.")
        } else {
            Err("Tape how far up from the floor it is.")
        }
    }

    /// Puts hidden marks onto their wall: one, or all that have a place.
    pub(super) fn pin(&mut self, at: usize, number: Option<u32>) {
        let Some(photo) = self.job.photos.get(at).cloned() else {
            return;
        };
        let wanted = photo.marks.iter().filter(|mark| {
            matches!(mark.what, What::Hidden(_))
                && number.is_none_or(|number| mark.number == number)
        });
        let (mut pinned, mut why) = (Vec::new(), None);
        for mark in wanted {
            match self.behind_wall(at, &photo, mark) {
                Ok(hidden) => pinned.push((mark.number, hidden)),
                Err(not_yet) => why = Some(not_yet),
            }
        }
        let room = self
            .job
            .rooms
            .iter()
            .position(|room| Some(room.id) == photo.room);
        let Some(room) = room else {
            self.said = "Say which room and wall the picture shows first.".to_owned();
            return;
        };
        if pinned.is_empty() {
            self.said = why.unwrap_or("Nothing hidden is marked on it.").to_owned();
            return;
        }
        let said = format!("{} behind the wall", pinned.len());
        self.edit(said, |job| {
            for (number, hidden) in pinned {
                if let Some(What::Hidden(behind)) = job
                    .photo_mut(at)
                    .and_then(|photo| photo.mark_mut(number))
                    .map(|mark| &mut mark.what)
                {
                    behind.pinned = Some(hidden.id);
                }
                let known = &mut job.rooms[room].hidden;
                match known.iter_mut().find(|old| old.id == hidden.id) {
                    Some(old) => *old = hidden,
                    None => known.push(hidden),
                }
            }
        });
    }

    /// The way onto the wall, of one mark or of all.
    pub(super) fn pin_rows(&self, at: usize, photo: &Photo, number: Option<u32>) -> Vec<Row> {
        let hidden: Vec<&Mark> = photo
            .marks
            .iter()
            .filter(|mark| matches!(mark.what, What::Hidden(_)))
            .filter(|mark| number.is_none_or(|number| mark.number == number))
            .collect();
        if hidden.is_empty() {
            return Vec::new();
        }
        let there = |id: Option<Id>| {
            let mut all = self.job.rooms.iter().flat_map(|room| &room.hidden);
            id.and_then(|id| all.find(|hidden| hidden.id == id))
        };
        let mut rows = Vec::new();
        for mark in &hidden {
            let What::Hidden(behind) = &mark.what else {
                continue;
            };
            match self.behind_wall(at, photo, mark) {
                Ok(hidden) => {
                    let place = hidden.line.first().copied().unwrap_or_default();
                    let give = match hidden.known {
                        Known::Tape => "by tape".to_owned(),
                        Known::Picture(give) => format!("from the picture, ±{}", self.give(give)),
                    };
                    let state = match there(behind.pinned) {
                        None => "not on the wall yet",
                        Some(pinned)
                            if pinned.line == hidden.line && pinned.known == hidden.known =>
                        {
                            "on the wall"
                        }
                        // A tape that came after it, or a point that was dragged.
                        Some(_) => "on the wall as it was known before: pin it again",
                    };
                    rows.push(Row::Figure {
                        label: format!("{}: from left, up", name(mark)),
                        detail: format!("{give}; {state}"),
                        value: format!("{}, {}", self.show(place.from_left), self.show(place.up)),
                        command: None,
                    });
                }
                Err(not_yet) => rows.push(Row::Text(format!("{}: {not_yet}", name(mark)))),
            }
        }
        if photo.room.is_none() || photo.wall.is_none() {
            // Asked here as well: where it is asked of every picture is far down on a phone.
            rows.extend(self.place_rows(at, photo));
        }
        let (label, what) = match number {
            Some(number) => ("Pin it to the wall", PhotoCommand::Pin(at, number)),
            None => ("Pin all hidden items to the wall", PhotoCommand::PinAll(at)),
        };
        rows.push(Row::Button {
            label: label.into(),
            main: number.is_some(),
            command: Command::Photo(what),
        });
        rows
    }

    /// What is hidden behind a wall, in words.
    pub(super) fn wall_hidden_rows(&self, room: usize, wall: usize) -> Vec<Row> {
        let Some(room) = self.job.rooms.get(room) else {
            return Vec::new();
        };
        let shown: Vec<Row> = (self.job.photos.iter().enumerate())
            .filter(|(_, photo)| photo.room == Some(room.id) && photo.wall == Some(wall))
            .take(12)
            .map(|(at, photo)| Row::Figure {
                label: if photo.title.is_empty() {
                    "Picture".into()
                } else {
                    photo.title.clone()
                },
                detail: photo
                    .stage
                    .map_or_else(String::new, |stage| stage.name().to_lowercase()),
                value: photo.when.format("%-d %b, %H:%M").to_string(),
                command: Some(Command::Go(super::Here::Photo(at))),
            })
            .collect();
        if shown.is_empty() {
            return shown;
        }
        let mut rows = vec![Row::Heading("Pictures of this wall".into())];
        rows.extend(shown);
        rows
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::Keeper;
    use crate::measure::Units;
    use crate::photo::Behind;
    use crate::site::{HiddenKind, Room};
    use crate::takeoff::Job;

    /// A wall of 96 in, 94 in high, and a picture of it that tells no scale.
    fn app() -> (App, Photo) {
        let mut room = Room::rectangle("Washroom");
        room.id = Id::fresh();
        room.walls[0].length = Some(Length::inches(96));
        room.walls[1].length = Some(Length::inches(60));
        room.ceiling = Some(Length::inches(94));
        let begun = chrono::DateTime::UNIX_EPOCH.fixed_offset();
        let mut photo = Photo::new("wall.jpg".into(), (2000, 1500), begun);
        (photo.room, photo.wall) = (Some(room.id), Some(0));
        let mut job = Job::new("Cabin", begun, Units::FeetInches { marks: 16 });
        job.rooms.push(room);
        (App::new(job, Keeper::nowhere()), photo)
    }

    #[test]
    fn a_line_known_by_one_tape_is_taken_to_run_the_whole_wall() {
        let (app, photo) = app();
        let inches = |from_left: i64, up: i64| site::Spot {
            from_left: Length::inches(from_left),
            up: Length::inches(up),
        };
        let upright = vec![[800.0, 100.0], [810.0, 900.0]];
        let level = vec![[100.0, 700.0], [1900.0, 720.0]];
        let dot = vec![[800.0, 700.0]];
        for (points, at, wanted) in [
            (&upright, [20, 0], Some(vec![inches(20, 0), inches(20, 94)])),
            (&level, [0, 12], Some(vec![inches(0, 12), inches(96, 12)])),
            (&dot, [20, 12], Some(vec![inches(20, 12)])),
            (&dot, [20, 0], None),
            (&upright, [0, 12], None),
            (&level, [20, 0], None),
        ] {
            let behind = Behind {
                at: Some(at.map(Length::inches)),
                ..Behind::new(HiddenKind::Pipe)
            };
            let mark = Mark {
                number: 1,
                points: points.clone(),
                note: String::new(),
                what: What::Hidden(Box::new(behind)),
            };
            let found = app.behind_wall(0, &photo, &mark);
            assert_eq!(found.ok().map(|hidden| hidden.line), wanted, "{at:?}");
        }
    }
}
