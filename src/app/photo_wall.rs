//! From a picture onto its wall: what is hidden, in real coordinates; and what comes too near to it.

use super::photo_page::name;
use super::{App, Chip, Command, PhotoCommand, Row, Tone};
use crate::geometry::from_stretch;
use crate::measure::Length;
use crate::photo::{Mark, Photo, What};
use crate::site::{self, Hidden, HiddenKind, Id, Known, On};
use crate::takeoff::Ask;
use crate::trades::patch;

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
        let placed = placed.ok_or(
            "Flatten the picture and mark one place on the wall, or tape it from corner and floor.",
        )?;
        let most = placed.iter().map(|(_, give)| *give).fold(0.0, f64::max);
        hidden.known = Known::Picture(Length::from_metres(most).unwrap_or_default());
        hidden.line = placed
            .iter()
            .filter_map(|(place, _)| spot(place[0], place[1]))
            .collect();
        Ok(hidden)
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
                    let state = if there(behind.pinned).is_some() {
                        "on the wall"
                    } else {
                        "not on the wall yet"
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

    /// What of a patch on a wall comes too near to what is hidden behind it.
    pub(super) fn near_hidden(&self, task: usize) -> Vec<Row> {
        let Some(of) = self.job.tasks.get(task) else {
            return Vec::new();
        };
        let (Ask::Patch(_, Some(wall)), Some(room)) =
            (&of.ask, of.room.and_then(|room| self.job.rooms.get(room)))
        else {
            return Vec::new();
        };
        let Some(Ok(figure)) = self.patch_ask(task).map(|ask| patch::figure(&ask)) else {
            return Vec::new();
        };
        let mut areas: Vec<(&str, [f64; 4])> = Vec::new();
        let rect =
            |rect: &patch::Rect| [rect.left, rect.bottom, rect.right, rect.top].map(Length::metres);
        if !(figure.from_corner && figure.from_floor) {
            return Vec::new();
        }
        areas.extend(
            figure
                .opening
                .iter()
                .map(|opening| ("the cut-out", rect(opening))),
        );
        areas.extend(figure.backing.iter().map(|strip| {
            let what = match strip.kind {
                patch::StripKind::Blocking => "blocking",
                patch::StripKind::Backing => "a backing strip",
                patch::StripKind::Cleat => "a cleat",
            };
            (what, rect(&strip.at))
        }));
        let screws = figure
            .screws
            .iter()
            .map(|(x, y)| [*x, *y].map(Length::metres));
        let screws: Vec<[f64; 2]> = screws.collect();
        let clear = self.keeper.clear().metres();
        let mut rows = Vec::new();
        for hidden in room
            .hidden
            .iter()
            .filter(|hidden| hidden.on == On::Wall(*wall) && guarded(hidden.kind))
        {
            let give = match hidden.known {
                Known::Tape => 0.0,
                Known::Picture(give) => give.metres(),
            };
            let reach = clear + give + hidden.width.map_or(0.0, |width| width.metres() / 2.0);
            let line = line_of(hidden);
            let mut near: Vec<&str> = areas
                .iter()
                .filter(|(_, area)| from_area(&line, area) < reach)
                .map(|(what, _)| *what)
                .collect();
            if screws.iter().any(|screw| from_lines(&line, *screw) < reach) {
                near.push("a screw");
            }
            near.dedup();
            if near.is_empty() {
                continue;
            }
            rows.push(Row::Note {
                tone: Tone::Stop,
                text: format!(
                    "Too near, within {1} of a {2} behind this wall{3}: {0}. Look before you cut or screw; move the work, or shield it.",
                    near.join(", "),
                    self.show(self.keeper.clear()),
                    hidden.kind.name().to_lowercase(),
                    match hidden.known {
                        Known::Tape => String::new(),
                        Known::Picture(give) => format!(", known from a picture to ±{}", self.give(give)),
                    }
                ),
                detail: "Common practice, no published source. The local code and licensed people have the last word.".into(),
                mend: self.picture_of(hidden).map(|at| {
                    Chip::new("Show the picture", false, Command::Go(super::Here::Photo(at)))
                }),
            });
        }
        rows
    }

    pub(super) fn picture_of(&self, hidden: &Hidden) -> Option<usize> {
        let name = hidden.picture.as_ref()?;
        self.job
            .photos
            .iter()
            .position(|photo| photo.picture == *name)
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

/// Whether it is hurt, or hurts, where a saw or a screw meets it.
fn guarded(kind: HiddenKind) -> bool {
    !matches!(kind, HiddenKind::Stud | HiddenKind::Blocking)
}

fn line_of(hidden: &Hidden) -> Vec<[f64; 2]> {
    let places = hidden.line.iter();
    places
        .map(|spot| [spot.from_left, spot.up].map(Length::metres))
        .collect()
}

fn from_lines(line: &[[f64; 2]], at: [f64; 2]) -> f64 {
    let stretches = line
        .windows(2)
        .map(|pair| from_stretch(pair[0], pair[1], at));
    let single = line.first().map(|only| from_stretch(*only, *only, at));
    stretches.chain(single).fold(f64::INFINITY, f64::min)
}

/// How far a line is from a rectangle (left, bottom, right, top); nothing where it runs through it.
fn from_area(line: &[[f64; 2]], area: &[f64; 4]) -> f64 {
    let [left, bottom, right, top] = *area;
    let outside = |p: [f64; 2]| {
        let off = |at: f64, from: f64, to: f64| (from - at).max(at - to).max(0.0);
        off(p[0], left, right).hypot(off(p[1], bottom, top))
    };
    // A thousand steps of a wall's length are finer than any ± here.
    let steps = |pair: &[[f64; 2]]| {
        let (a, b) = (pair[0], pair[1]);
        (0..=1000).map(move |n| {
            let t = f64::from(n) / 1000.0;
            [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]
        })
    };
    let along = line.windows(2).flat_map(steps).map(outside);
    let points = line.iter().copied().map(outside);
    along.chain(points).fold(f64::INFINITY, f64::min)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pipe_through_or_beside_a_cut_is_that_far_from_it() {
        let cut = [1.0, 1.0, 2.0, 1.5];
        assert_eq!(from_area(&[[1.5, 0.0], [1.5, 3.0]], &cut), 0.0);
        let beside = from_area(&[[0.9, 0.0], [0.9, 3.0]], &cut);
        assert!((beside - 0.1).abs() < 1e-9, "{beside}");
        let corner = from_area(&[[2.3, 1.9]], &cut);
        assert!((corner - 0.5).abs() < 1e-9, "{corner}");
        assert_eq!(from_area(&[], &cut), f64::INFINITY);
        assert!((from_lines(&[[0.0, 0.0], [1.0, 0.0]], [0.5, 0.25]) - 0.25).abs() < 1e-12);
        assert!((from_lines(&[[0.0, 0.0]], [3.0, 4.0]) - 5.0).abs() < 1e-12);
    }
}
