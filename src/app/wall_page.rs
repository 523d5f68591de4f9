//! One wall of a room, seen from inside: its openings, studs and finish.

use super::{App, Chip, Command, Here, Row, Screen, Slot, room_page::finishes, view::Big};
use crate::drawing::{WallTag, wall as wall_sketch};
use crate::measure::{Angle, Figures, Length, Rounding, Units};
use crate::site::{self, OpeningKind, Studs, Wall};

impl App {
    /// One wall of a room.
    pub(super) fn wall_page(&self, at: usize, index: usize) -> Screen {
        let Some((room, wall)) = self
            .job
            .rooms
            .get(at)
            .and_then(|r| Some((r, r.walls.get(index)?)))
        else {
            return self.rooms_page();
        };
        let scene = wall_sketch(room, index, self.job.units).map_tags(|tag| match tag {
            WallTag::Length => Command::Pad(Slot::WallLength(at, index)),
            WallTag::Height if wall.height.is_some() => Command::Pad(Slot::WallHeight(at, index)),
            WallTag::Height => Command::Pad(Slot::Ceiling(at)),
            WallTag::OpeningFromLeft(opening) | WallTag::Opening(opening) => {
                Command::Pad(Slot::OpeningFromLeft(at, opening))
            }
            WallTag::OpeningWidth(opening) => Command::Pad(Slot::OpeningWidth(at, opening)),
            WallTag::OpeningHeight(opening) => Command::Pad(Slot::OpeningHeight(at, opening)),
            WallTag::OpeningSill(opening) => Command::Pad(Slot::OpeningSill(at, opening)),
            WallTag::FirstStud | WallTag::StudSpacing => Command::Pad(Slot::FirstStud(at, index)),
        });
        let drawn = site::sketch(room).walls.get(index).copied();
        let mut rows = self.clash_rows(room);
        rows.extend([
            self.wall_row(at, index, wall, drawn),
            Row::yours(
                "Ceiling height",
                self.show_or_ask(room.ceiling),
                Command::Pad(Slot::Ceiling(at)),
            ),
            Row::Figure {
                label: "Height of this wall alone".into(),
                detail: "only where it differs".into(),
                value: wall
                    .height
                    .map_or_else(|| "as the ceiling".to_owned(), |h| self.show(h)),
                command: Some(Command::Pad(Slot::WallHeight(at, index))),
            },
        ]);
        for (number, opening) in room
            .openings
            .iter()
            .enumerate()
            .filter(|(_, o)| o.wall == index)
        {
            rows.push(Row::Heading(kind_name(opening.kind).to_owned()));
            rows.push(Row::yours(
                "From left corner",
                self.show_or_ask(opening.from_left),
                Command::Pad(Slot::OpeningFromLeft(at, number)),
            ));
            rows.push(Row::yours(
                "Width",
                self.show_or_ask(opening.width),
                Command::Pad(Slot::OpeningWidth(at, number)),
            ));
            rows.push(Row::yours(
                "Height",
                self.show_or_ask(opening.height),
                Command::Pad(Slot::OpeningHeight(at, number)),
            ));
            if opening.kind != OpeningKind::Door {
                rows.push(Row::yours(
                    "Floor to its lower edge",
                    self.show_or_ask(opening.sill),
                    Command::Pad(Slot::OpeningSill(at, number)),
                ));
            }
            rows.push(Row::button(
                format!("Remove this {}", kind_name(opening.kind).to_lowercase()),
                Command::RemoveOpening(at, number),
            ));
        }
        rows.push(Row::choice(
            "Add an opening",
            [
                OpeningKind::Door,
                OpeningKind::Window,
                OpeningKind::Niche,
                OpeningKind::PassThrough,
            ]
            .map(|kind| Chip::new(kind_name(kind), false, Command::AddOpening(at, index, kind))),
        ));
        rows.extend(self.stud_rows(at, index, wall));
        rows.push(Row::choice(
            "This wall gets",
            finishes(wall.finish, |finish| Command::WallFinish(at, index, finish)),
        ));
        rows.push(Row::choice(
            "Corner at its right end",
            [("Inside, 90°", Angle::RIGHT), ("Juts in, 90°", Angle::LEFT)].map(|(label, turn)| {
                Chip::new(
                    label,
                    wall.turn == turn,
                    Command::Corner(at, index, turn.as_microdegrees()),
                )
            }),
        ));
        rows.push(Row::Button {
            label: "Patch a hole in this wall".into(),
            main: true,
            command: Command::NewPatch(Some((at, index))),
        });
        rows.push(Row::button(
            "Remove this wall",
            Command::RemoveWall(at, index),
        ));
        Screen {
            crumb: room.name.clone(),
            title: format!("Wall {}", Wall::named(index)),
            back: Some(Here::Room(at)),
            picture: Some(scene),
            rows,
            strip: self.wall_strip(at, index),
            ..Screen::default()
        }
    }

    fn wall_strip(&self, at: usize, index: usize) -> Vec<Big> {
        let room = &self.job.rooms[at];
        let Ok(shape) = site::shape(room) else {
            return Vec::new();
        };
        let Ok(areas) = site::wall_areas(room, &shape, site::OpeningRule::Net) else {
            return Vec::new();
        };
        let Some(wall) = areas.get(index) else {
            return Vec::new();
        };
        vec![
            Big {
                value: self.amount(wall.net),
                label: "less openings".into(),
            },
            Big {
                value: self.amount(wall.gross),
                label: "with openings".into(),
            },
        ]
    }

    fn stud_rows(&self, at: usize, index: usize, wall: &Wall) -> Vec<Row> {
        let metric = self.job.units.is_metric();
        let spacings: [Length; 4] = if metric {
            [
                Length::mm(300),
                Length::mm(400),
                Length::mm(600),
                Length::mm(625),
            ]
        } else {
            [
                Length::inches(12),
                Length::inches(16),
                Length::nm(487_680_000),
                Length::inches(24),
            ]
        };
        let now = match &wall.studs {
            Some(Studs::Spaced { spacing, .. }) => Some(*spacing),
            _ => None,
        };
        let mut chips = vec![Chip::new(
            "Not known",
            wall.studs.is_none(),
            Command::StudSpacing(at, index, None),
        )];
        let count = if metric { 3 } else { 4 };
        chips.extend(spacings.iter().take(count).map(|spacing| {
            let label = self.spacing(*spacing);
            Chip::new(
                label,
                now == Some(*spacing),
                Command::StudSpacing(at, index, Some(*spacing)),
            )
        }));
        let mut rows = vec![Row::choice("Studs, centre to centre", chips)];
        if let Some(Studs::Spaced { first, .. }) = wall.studs {
            rows.push(Row::yours(
                "Left corner to first stud centre",
                self.show(first),
                Command::Pad(Slot::FirstStud(at, index)),
            ));
        }
        rows
    }

    /// A stud spacing as the trade says it: 16″, 19.2″, 400 mm.
    pub(super) fn spacing(&self, spacing: Length) -> String {
        let units = if self.job.units.is_metric() {
            Units::Millimetres
        } else {
            Units::DecimalInches
        };
        units.length(spacing, Rounding::Nearest, Figures::Set)
    }
}

/// What an opening is called.
pub(super) fn kind_name(kind: OpeningKind) -> &'static str {
    match kind {
        OpeningKind::Door => "Door",
        OpeningKind::Window => "Window",
        OpeningKind::Niche => "Niche",
        OpeningKind::PassThrough => "Pass-through",
    }
}
