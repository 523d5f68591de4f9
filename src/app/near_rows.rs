//! Warnings of work that comes too near to what is hidden behind a wall or under a floor.

use super::{App, Chip, Command, Here, Row, Tone};
use crate::geometry::{Form, Point};
use crate::measure::Length;
use crate::site::{self, Face, Hidden, Known, Near, On, Room, Work};
use crate::takeoff::{Ask, TileOn};
use crate::trades::tile::{Thing, ThingShape};
use crate::trades::{patch, sheets};

/// Lines of one warning.
const TOLD: usize = 4;

impl App {
    /// What of a wall's or a floor's own cut-outs, openings and screw lines comes too near to what is hidden there.
    pub(super) fn near_on(&self, room: &Room, face: Face) -> Vec<Row> {
        self.near_rows(room, face, &site::works(room, face))
    }

    /// The same of a figure's own work: a patch, tile with its holes, board with its screws. A run of pipe says it leg by leg.
    pub(super) fn near_hidden(&self, task: usize) -> Vec<Row> {
        let Some(of) = self.job.tasks.get(task) else {
            return Vec::new();
        };
        let Some(room) = of.room.and_then(|room| self.job.rooms.get(room)) else {
            return Vec::new();
        };
        let (face, works) = match &of.ask {
            Ask::Patch(_, Some(wall)) => (Face::Wall(*wall), self.patch_works(task)),
            Ask::Tile(_, TileOn::Wall(wall)) => {
                (Face::Wall(*wall), self.tile_works(task, room, Some(*wall)))
            }
            Ask::Tile(_, TileOn::Floor) => (Face::Floor, self.tile_works(task, room, None)),
            Ask::Sheets(_, TileOn::Wall(wall)) => (
                Face::Wall(*wall),
                self.sheets_works(task, room, Some(*wall)),
            ),
            Ask::Sheets(ask, TileOn::Floor) if ask.on != sheets::Surface::Ceiling => {
                (Face::Floor, self.sheets_works(task, room, None))
            }
            _ => return Vec::new(),
        };
        self.near_rows(room, face, &works)
    }

    fn patch_works(&self, task: usize) -> Vec<Work> {
        let figure = self.patch_ask(task).map(|ask| patch::figure(&ask));
        let Some(Ok(figure)) = figure.filter(|figure| {
            figure
                .as_ref()
                .is_ok_and(|figure| figure.from_corner && figure.from_floor)
        }) else {
            return Vec::new();
        };
        let area = |rect: &patch::Rect| {
            Form::rectangle(
                [rect.left, rect.bottom].map(Length::metres),
                [rect.right, rect.top].map(Length::metres),
            )
        };
        let opening = figure.opening.iter();
        let mut works: Vec<Work> = opening
            .map(|rect| Work::new("the cut-out", area(rect)))
            .collect();
        works.extend(figure.backing.iter().map(|strip| {
            let what = match strip.kind {
                patch::StripKind::Blocking => "blocking",
                patch::StripKind::Backing => "a backing strip",
                patch::StripKind::Cleat => "a cleat",
            };
            Work::new(what, area(&strip.at))
        }));
        works.extend(
            figure
                .screws
                .iter()
                .map(|(x, y)| Work::new("a screw", Form::round([*x, *y].map(Length::metres), 0.0))),
        );
        works
    }

    /// The lines that each piece of board is screwed along, and what is cut out of it.
    fn sheets_works(&self, task: usize, room: &Room, wall: Option<usize>) -> Vec<Work> {
        let Some(ask) = self.sheets_ask(task) else {
            return Vec::new();
        };
        let figured = self.sheets_figure(&ask);
        let Ok(figure) = figured.as_ref() else {
            return Vec::new();
        };
        // A wall is laid out from its top edge down; places on it count from the floor up.
        let top = wall.and_then(|wall| room.heights_of(wall));
        let top = top.map(|(left, right)| left.max(right));
        let place = |p: Point| Point::new(p.x, top.map_or(p.y, |top| top - p.y));
        let metres = |p: Point| [p.x, p.y].map(Length::metres);
        let mut works = Vec::new();
        // On a wall whose studs nobody knows yet nothing is said of screws.
        let known = ask.framing.is_some() || wall.is_none();
        for piece in figure.pieces.iter().filter(|_| known) {
            for (from, to) in sheets::screw_lines(&ask, piece) {
                let (from, to) = (place(from), place(to));
                let along = match (wall, from.x == to.x) {
                    (Some(_), true) => format!(" {} from the left corner", self.show(from.x)),
                    (Some(_), false) => format!(" {} up", self.show(from.y)),
                    (None, _) => String::new(),
                };
                works.push(Work::new(
                    format!("the line of screws{along} in piece {}", piece.number),
                    Form::line(vec![metres(from), metres(to)], 0.0),
                ));
            }
        }
        for thing in &ask.things {
            let centre = place(thing.centre(ask.origin()));
            let [x, y] = metres(centre);
            let form = match thing.hole() {
                sheets::ThingShape::Round { across } => Form::round([x, y], across.metres() / 2.0),
                sheets::ThingShape::Rectangle { width, height } => {
                    let (w, h) = (width.metres() / 2.0, height.metres() / 2.0);
                    Form::rectangle([x - w, y - h], [x + w, y + h])
                }
            };
            let name = thing.kind.map_or_else(
                || "the hole in the board".to_owned(),
                |kind| {
                    format!(
                        "the hole in the board for the {}",
                        kind.name().to_lowercase()
                    )
                },
            );
            works.push(Work {
                serves: thing.kind,
                ..Work::new(name, form)
            });
        }
        works
    }

    /// What is known to be hidden behind the wall of a patch.
    pub(super) fn behind_patch(&self, task: usize) -> Vec<&Hidden> {
        let Some(of) = self.job.tasks.get(task) else {
            return Vec::new();
        };
        let room = of.room.and_then(|room| self.job.rooms.get(room));
        match (&of.ask, room) {
            (Ask::Patch(_, Some(wall)), Some(room)) => {
                let here = room.hidden.iter();
                here.filter(|hidden| hidden.on == On::Wall(*wall)).collect()
            }
            _ => Vec::new(),
        }
    }

    /// What is cut out of tile, and so is cut or drilled on this surface.
    fn tile_works(&self, task: usize, room: &Room, wall: Option<usize>) -> Vec<Work> {
        let corner =
            |ask: &crate::trades::tile::Ask| Some((ask.surface.bounds()?.0, ask.things.clone()));
        let Some((corner, things)) = self.tile_ask(task).as_ref().and_then(corner) else {
            return Vec::new();
        };
        // A wall is laid out from its top edge down; places on it count from the floor up.
        let top = wall.and_then(|wall| room.heights_of(wall));
        let top = top.map(|(left, right)| left.max(right).metres());
        let upright = |[x, y]: [f64; 2]| [x, top.map_or(y, |top| top - y)];
        let form = |thing: &Thing| {
            let at = [corner.x + thing.from_left, corner.y + thing.from_top].map(Length::metres);
            match thing.shape {
                ThingShape::Round { across } => Form::round(upright(at), across.metres() / 2.0),
                ThingShape::Rectangle { width, height } => Form::rectangle(
                    upright([at[0], at[1] + height.metres()]),
                    upright([at[0] + width.metres(), at[1]]),
                ),
            }
        };
        let works = things.iter().enumerate();
        works
            .map(|(n, thing)| Work::new(format!("the hole in tile no. {}", n + 1), form(thing)))
            .collect()
    }

    /// One warning for each hidden thing, with what comes near it, the nearest first.
    fn near_rows(&self, room: &Room, face: Face, works: &[Work]) -> Vec<Row> {
        let clear = self.keeper.clear();
        let found = site::near(room, face, works, clear);
        let mut rows = Vec::new();
        for (n, hidden) in room.hidden.iter().enumerate() {
            let mut near: Vec<&Near> = found.iter().filter(|near| near.hidden == n).collect();
            near.sort_by_key(|near| near.apart);
            // A dozen screws are one line: the nearest.
            let mut told: Vec<&str> = Vec::new();
            near.retain(|near| {
                let what = works[near.work].what.as_str();
                let first = !told.contains(&what);
                told.push(what);
                first
            });
            if !near.is_empty() {
                rows.push(self.near_row(hidden, face, &near, works));
            }
        }
        rows
    }

    fn near_row(&self, hidden: &Hidden, face: Face, near: &[&Near], works: &[Work]) -> Row {
        let line = |near: &&Near| {
            let what = &works[near.work].what;
            let own = if near.own {
                ", which may be what it is made for"
            } else {
                ""
            };
            let where_ = if near.apart.is_positive() {
                format!("{} from it", self.show(near.apart))
            } else {
                "right over it".to_owned()
            };
            format!("{what} is {where_}{own}")
        };
        let mut lines: Vec<String> = near.iter().take(TOLD).map(line).collect();
        if near.len() > TOLD {
            lines.push(format!("{} more are near it", near.len() - TOLD));
        }
        let place = match face {
            Face::Wall(_) => "behind this wall",
            Face::Floor => "under this floor",
        };
        let known = match hidden.known {
            Known::Tape => String::new(),
            Known::Picture(give) => format!(", known from a picture to ±{}", self.give(give)),
        };
        let depth = hidden.depth.map_or_else(String::new, |depth| {
            format!(", said to be {} behind the face", self.show(depth))
        });
        Row::Note {
            tone: if near.iter().all(|near| near.own) {
                Tone::Caution
            } else {
                Tone::Stop
            },
            text: format!(
                "{} {place}{known}{depth}: {}. Look before you cut or screw; move the work, or shield it.",
                called(hidden),
                lines.join("; ")
            ),
            detail: format!(
                "Told from {} and what the places are uncertain by. Common practice, no published source. The local code and licensed people have the last word.",
                self.show(self.keeper.clear())
            ),
            mend: self
                .picture_of(hidden)
                .map(|at| Chip::new("Show the picture", false, Command::Go(Here::Photo(at)))),
        }
    }

    pub(super) fn picture_of(&self, hidden: &Hidden) -> Option<usize> {
        let name = hidden.picture.as_ref()?;
        let mut photos = self.job.photos.iter();
        photos.position(|photo| photo.picture == *name)
    }
}

/// A hidden thing by its kind, and by what the person says of it.
fn called(hidden: &Hidden) -> String {
    let words: Vec<&str> = [hidden.material.as_str(), hidden.note.as_str()]
        .into_iter()
        .filter(|words| !words.is_empty())
        .collect();
    if words.is_empty() {
        hidden.kind.name().to_owned()
    } else {
        format!("{} ({})", hidden.kind.name(), words.join(", "))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::Keeper;
    use crate::measure::Units;
    use crate::site::{FixedKind, FixedPoint, HiddenKind, Spot, Studs};
    use crate::takeoff::Job;

    const fn inches(n: i64) -> Length {
        Length::inches(n)
    }

    /// A room of 96 by 60 by 96 in with studs, and a cable behind its first wall, upright so far from the left.
    fn app(cable: i64) -> App {
        let mut room = Room::rectangle("Washroom");
        room.walls[0].length = Some(inches(96));
        room.walls[1].length = Some(inches(60));
        room.ceiling = Some(inches(96));
        room.walls[0].studs = Some(Studs::Spaced {
            first: inches(16),
            spacing: inches(16),
            face: Length::in_64(1, 32),
        });
        let at = |up| Spot {
            from_left: inches(cable),
            up: inches(up),
        };
        room.hidden.push(Hidden {
            line: vec![at(0), at(90)],
            material: "to the fan".into(),
            known: Known::Picture(Length::in_64(0, 32)),
            ..Hidden::new(HiddenKind::Cable, On::Wall(0))
        });
        let begun = chrono::DateTime::parse_from_rfc3339("2026-05-04T09:00:00+02:00").unwrap();
        let mut job = Job::new("Cabin", begun, Units::FeetInches { marks: 16 });
        job.rooms.push(room);
        App::new(job, Keeper::nowhere())
    }

    #[track_caller]
    fn check(rows: &[Row], wanted: &[&str]) {
        let texts: Vec<&String> = rows
            .iter()
            .filter_map(|row| match row {
                Row::Note { text, .. } => Some(text),
                _ => None,
            })
            .collect();
        assert_eq!(texts.is_empty(), wanted.is_empty(), "{texts:?}");
        for part in wanted {
            assert!(
                texts.iter().any(|text| text.contains(part)),
                "{texts:?} without {part}"
            );
        }
        if !wanted.is_empty() {
            assert!(texts[0].contains("Cable (to the fan)"), "{texts:?}");
            assert!(texts[0].contains("known from a picture to ±"), "{texts:?}");
            assert!(texts[0].contains("Look before you cut"), "{texts:?}");
        }
    }

    #[test]
    fn a_patch_says_what_of_it_is_near() {
        for (cable, wanted) in [(42, vec!["the cut-out is right over it"]), (90, vec![])] {
            let mut app = app(cable);
            app.send(Command::NewPatch(Some((0, 0))));
            if let Ask::Patch(ask, _) = &mut app.job.tasks[0].ask {
                ask.hole.from_left = Some(inches(36));
                ask.hole.above_floor = Some(inches(40));
            }
            check(&app.near_hidden(0), &wanted);
        }
    }

    #[test]
    fn tile_says_which_of_its_holes_is_near() {
        for (cable, wanted) in [
            // 40 in to its middle, 1 in to its edge.
            (42, vec!["the hole in tile no. 1 is 1″ from it"]),
            (60, vec![]),
        ] {
            let mut app = app(cable);
            app.send(Command::NewTile(Some(0), TileOn::Wall(0)));
            if let Ask::Tile(ask, _) = &mut app.job.tasks[0].ask {
                ask.things = vec![Thing {
                    shape: ThingShape::Round { across: inches(2) },
                    from_left: inches(40),
                    from_top: inches(50),
                }];
            }
            check(&app.near_hidden(0), &wanted);
        }
        // The cable ends 90 in up, 6 in from the top: a hole at the very top is clear of it.
        let mut app = app(40);
        app.send(Command::NewTile(Some(0), TileOn::Wall(0)));
        for (from_top, near) in [(2, 0), (90, 1)] {
            if let Ask::Tile(ask, _) = &mut app.job.tasks[0].ask {
                ask.things = vec![Thing {
                    shape: ThingShape::Round { across: inches(2) },
                    from_left: inches(40),
                    from_top: inches(from_top),
                }];
            }
            assert_eq!(app.near_hidden(0).len(), near, "{from_top}");
        }
    }

    #[test]
    fn board_says_which_piece_is_screwed_too_near_and_where() {
        for (cable, wanted) in [
            // The studs stand 16 in apart from the corner; the cable 1 in beside the third.
            (
                33,
                vec!["the line of screws 2′\u{a0}8″ from the left corner in piece 1 is 1″ from it"],
            ),
            (40, vec![]),
        ] {
            let mut app = app(cable);
            app.send(Command::NewSheets(
                Some(0),
                TileOn::Wall(0),
                sheets::Surface::Wall,
            ));
            check(&app.near_hidden(0), &wanted);
        }
    }

    #[test]
    fn a_patch_shows_what_runs_behind_its_opening() {
        let drawn = |cable| {
            let mut app = app(cable);
            app.send(Command::NewPatch(Some((0, 0))));
            if let Ask::Patch(ask, _) = &mut app.job.tasks[0].ask {
                ask.hole.from_left = Some(inches(36));
                ask.hole.above_floor = Some(inches(40));
            }
            let marks = app.screen().picture.unwrap().marks;
            marks
                .iter()
                .any(|mark| matches!(mark, crate::drawing::Mark::Text { text, .. } if text.contains("Cable")))
        };
        assert!(drawn(42));
        assert!(!drawn(90));
    }

    #[test]
    fn a_wall_says_what_of_its_own_is_near_also_after_it_is_closed() {
        let mut app = app(32);
        let mut outlet = FixedPoint::new(FixedKind::Outlet, On::Wall(0));
        outlet.from_left = Some(inches(33));
        outlet.up = Some(inches(42));
        app.job.rooms[0].fixed.push(outlet);
        let room = app.job.rooms[0].clone();
        let rows = app.near_on(&room, Face::Wall(0));
        check(
            &rows,
            &[
                "the hole for the outlet is",
                "the line of board screws in stud 2 is",
            ],
        );
        assert!(app.near_on(&room, Face::Wall(1)).is_empty());
        assert!(app.near_on(&room, Face::Floor).is_empty());
    }
}
