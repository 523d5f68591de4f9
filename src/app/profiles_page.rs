//! The shelf of profiles, and two rooms side by side.

use std::collections::BTreeMap;

use super::{App, Chip, Command, Here, RoomChoice, Row, Screen, Slot, Tone, survey_words};
use crate::drawing::plans_beside;
use crate::measure::Length;
use crate::site::{Room, differences};
use crate::takeoff::{Ask, Buying, Line, LineKey, Task};

impl App {
    /// The shelf of profiles: kept rooms, found by their name.
    pub(super) fn profiles_page(&self) -> Screen {
        let search = self.rooms_view.search.to_lowercase();
        let shelf = self.keeper.shelf();
        let mut rows = Vec::new();
        if let Some(gone) = &self.rooms_view.dropped {
            rows.push(Row::button(
                format!("Put {} back on the shelf", gone.name),
                Command::PutProfileBack,
            ));
        }
        if shelf.is_empty() {
            rows.push(Row::Text(
                "No profile is kept yet. Open a room and keep a copy of it on the shelf.".into(),
            ));
        } else {
            let value = if search.is_empty() {
                "any"
            } else {
                &self.rooms_view.search
            };
            rows.push(Row::yours(
                "Name contains",
                value,
                Command::Pad(Slot::Search),
            ));
        }
        let found = shelf
            .iter()
            .enumerate()
            .filter(|(_, room)| room.name.to_lowercase().contains(&search));
        let mut any = false;
        for (at, room) in found {
            any = true;
            rows.push(Row::Heading(room.name.clone()));
            rows.push(Row::ours(
                format!("{} walls", room.walls.len()),
                profile_size(self, room),
            ));
            rows.push(Row::choice(
                "Into this job",
                [
                    Chip::new("As it is", false, Command::TakeRoom(at)),
                    Chip::new("Mirrored", false, Command::TakeMirrored(at)),
                    Chip::new("Off the shelf", false, Command::DropProfile(at)),
                ],
            ));
        }
        if !any && !shelf.is_empty() {
            rows.push(Row::Text("No profile has that in its name.".into()));
        }
        Screen {
            crumb: self.job.name.clone(),
            title: "Shelf of profiles".into(),
            back: Some(Here::Rooms),
            rows,
            ..Screen::default()
        }
    }

    /// Two rooms side by side: their plans, what differs, and what of the first serves again.
    pub(super) fn rooms_compare_page(&self, first: usize, second: usize) -> Screen {
        let (Some(one), Some(other)) = (self.job.rooms.get(first), self.job.rooms.get(second))
        else {
            return self.rooms_page();
        };
        let picture = plans_beside([one, other], self.job.units).map_tags(|tag| match tag {
            0 => Command::Go(Here::Room(first)),
            _ => Command::Go(Here::Room(second)),
        });
        let mut rows = vec![Row::Text(format!(
            "On the left {}, on the right {}.",
            one.name, other.name
        ))];
        // A room that was made as a mirror is held against the mirror.
        let mirror = other.name.starts_with(&format!("{}, mirrored", one.name));
        let base = if mirror { one.mirrored() } else { one.clone() };
        rows.push(Row::Heading("What differs".into()));
        if base.walls.len() == other.walls.len() {
            let found = differences(&base, other);
            if found.is_empty() {
                rows.push(Row::Text("Nothing that was measured.".into()));
            }
            for difference in found {
                let by = match (difference.first, difference.second) {
                    (Some(a), Some(b)) if b > a => format!("{} more", self.show(b - a)),
                    (Some(a), Some(b)) => format!("{} less", self.show(a - b)),
                    (Some(_), None) => "not measured here".into(),
                    _ => "only here".into(),
                };
                rows.push(Row::Figure {
                    label: survey_words::name(other, difference.what),
                    detail: by,
                    value: format!(
                        "{}  |  {}",
                        self.show_or_none(difference.first),
                        self.show_or_none(difference.second)
                    ),
                    command: None,
                });
            }
        } else {
            rows.push(Row::Text(format!(
                "{} has {} walls, {} has {}.",
                one.name,
                one.walls.len(),
                other.name,
                other.walls.len()
            )));
        }
        let carried = other.carried().count();
        if carried > 0 {
            rows.push(Row::Note {
                tone: Tone::Caution,
                text: format!(
                    "{carried} figures of {} are carried over and not confirmed.",
                    other.name
                ),
                detail: String::new(),
                mend: Some(Chip::new(
                    "Confirm them",
                    false,
                    Command::Go(Here::Survey(second)),
                )),
            });
        }
        rows.extend(self.serves_again_rows(first, second));
        rows.extend(self.leftover_rows(first, &self.lines_in(&[first])));
        rows.push(Row::Heading("Settings".into()));
        rows.extend(self.settings_rows(first, second));
        Screen {
            crumb: self.job.name.clone(),
            title: "Side by side".into(),
            back: Some(Here::Room(second)),
            picture: Some(picture),
            rows,
            ..Screen::default()
        }
    }

    fn show_or_none(&self, length: Option<Length>) -> String {
        length.map_or_else(|| "none".to_owned(), |length| self.show(length))
    }

    /// The lines that rooms would put on a list, whether they are on it or not.
    pub(super) fn lines_in(&self, rooms: &[usize]) -> Vec<Line> {
        let buying = Buying {
            by_hand: Vec::new(),
            overrides: BTreeMap::default(),
            left: BTreeMap::default(),
            ..self.job.buying.clone()
        };
        let counts = |task: &Task| task.room.is_some_and(|room| rooms.contains(&room));
        self.lines_of(counts, &buying)
    }

    /// What the first room's packs leave for the second.
    fn serves_again_rows(&self, first: usize, second: usize) -> Vec<Row> {
        let (alone, both) = (self.lines_in(&[first]), self.lines_in(&[first, second]));
        let wanted = self.lines_in(&[second]);
        let mut rows = vec![Row::Heading(
            "Materials: first room alone, both rooms".into(),
        )];
        for line in wanted {
            let LineKey::Material(_) = line.key else {
                continue;
            };
            let of = |lines: &[Line]| lines.iter().find(|other| other.key == line.key).cloned();
            let Some(together) = of(&both) else { continue };
            let (value, detail) = match of(&alone) {
                None => (
                    format!("none  |  {}", self.packs(&together)),
                    "only the second room needs it".to_owned(),
                ),
                Some(one) => {
                    let more = together.packs != one.packs;
                    (
                        format!("{}  |  {}", self.packs(&one), self.packs(&together)),
                        if more {
                            "what the first room leaves is counted".to_owned()
                        } else {
                            "what the first room leaves is enough".to_owned()
                        },
                    )
                }
            };
            rows.push(Row::Figure {
                label: line.title.clone(),
                detail,
                value,
                command: None,
            });
        }
        if rows.len() == 1 {
            rows.push(Row::Text("The second room has no figures yet.".into()));
        }
        rows
    }

    /// Which figures both rooms have, and whether they are set alike.
    fn settings_rows(&self, first: usize, second: usize) -> Vec<Row> {
        let of = |room: usize, trade: &str| -> Vec<&Ask> {
            let tasks = self.job.tasks.iter().map(|task| (task.room, &task.ask));
            tasks
                .filter(|(stands, ask)| *stands == Some(room) && trade_of(ask) == trade)
                .map(|(_, ask)| ask)
                .collect()
        };
        let mut rows = Vec::new();
        for trade in [
            "Tile", "Sheets", "Grout", "Mortar", "Paint", "Patch", "Pipe", "Drain", "Trim",
        ] {
            let (one, other) = (of(first, trade), of(second, trade));
            let detail = match (one.first(), other.first()) {
                (None, None) => continue,
                (Some(_), None) => "only in the first room",
                (None, Some(_)) => "only in the second room",
                (Some(one), Some(other)) if alike(one, other) => {
                    "set alike: what is left serves again"
                }
                _ => "set differently",
            };
            rows.push(Row::Figure {
                label: trade.into(),
                detail: detail.into(),
                value: format!("{}  |  {}", one.len(), other.len()),
                command: None,
            });
        }
        if rows.is_empty() {
            rows.push(Row::Text("Neither room has figures yet.".into()));
        }
        rows
    }

    /// The commands that compare a room with each other one.
    pub(super) fn beside_row(&self, at: usize) -> Option<Row> {
        let chips: Vec<Chip> = (0..self.job.rooms.len())
            .filter(|other| *other != at)
            .map(|other| {
                let label = self.job.rooms[other].name.clone();
                Chip::new(label, false, Command::Go(Here::SideBySide(other, at)))
            })
            .collect();
        (!chips.is_empty()).then(|| Row::choice("Beside", chips))
    }

    /// What is made of a room.
    pub(super) fn second_row(at: usize) -> Row {
        let second = |mirrored| Command::Of(at, RoomChoice::Second(mirrored));
        Row::choice(
            "A second room from this one",
            [
                Chip::new("Mirrored", false, second(true)),
                Chip::new("The same way round", false, second(false)),
            ],
        )
    }
}

fn trade_of(ask: &Ask) -> &'static str {
    match ask {
        Ask::Patch(..) => "Patch",
        Ask::Paint(..) => "Paint",
        Ask::Tile(..) => "Tile",
        Ask::Grout(..) => "Grout",
        Ask::Mortar(..) => "Mortar",
        Ask::Pipe(..) => "Pipe",
        Ask::Drain(..) => "Drain",
        Ask::Sheets(..) => "Sheets",
        Ask::Trim(..) => "Trim",
    }
}

/// Whether two figures are of the same material, set the same way; where they lie does not count.
fn alike(one: &Ask, other: &Ask) -> bool {
    match (one, other) {
        (Ask::Tile(a, _), Ask::Tile(b, _)) => {
            (&a.tile, a.joint, a.box_of) == (&b.tile, b.joint, b.box_of)
        }
        (Ask::Paint(a, _), Ask::Paint(b, _)) => {
            (&a.primer, &a.finish, &a.trim_finish) == (&b.primer, &b.finish, &b.trim_finish)
        }
        (Ask::Grout(a, _), Ask::Grout(b, _)) => a == b,
        (Ask::Mortar(a, _), Ask::Mortar(b, _)) => a == b,
        (Ask::Patch(a, _), Ask::Patch(b, _)) => a.board == b.board,
        (Ask::Pipe(a, _), Ask::Pipe(b, _)) => {
            (a.pipe, a.size, a.stick) == (b.pipe, b.size, b.stick)
        }
        (Ask::Sheets(a, _), Ask::Sheets(b, _)) => {
            (a.board, a.sheet, a.thickness) == (b.board, b.sheet, b.thickness)
        }
        (Ask::Trim(a, _), Ask::Trim(b, _)) => a.material() == b.material(),
        (Ask::Drain(a), Ask::Drain(b)) => (a.code, a.size) == (b.code, b.size),
        _ => false,
    }
}

/// How large a profile is, in one line.
fn profile_size(app: &App, room: &Room) -> String {
    let drawn = crate::site::sketch(room);
    drawn
        .corners
        .bounds()
        .map_or_else(String::new, |(min, max)| {
            format!("{} × {}", app.show(max.x - min.x), app.show(max.y - min.y))
        })
}
