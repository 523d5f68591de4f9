//! The rooms of a job, and one room's plan.

use super::survey_page::plan_command;
use super::{
    App, Chip, Command, Here, RoomChoice, Row, Screen, Shape, Slot, Tone, view::Big, words,
};
use crate::drawing::{PlanTag, plan};
use crate::measure::{Angle, Length};
use crate::site::{self, Finish, OpeningRule, Room, Standing, Wall};
use crate::takeoff::{Job, TileOn};
use crate::trades::sheets::Surface;
use crate::trades::trim;

impl App {
    /// The rooms of the job.
    pub(super) fn rooms_page(&self) -> Screen {
        let mut rows: Vec<Row> = Vec::new();
        for (at, room) in self.job.rooms.iter().enumerate() {
            let missing = site::still_to_measure(room).len();
            let follow = (room.walls.iter())
                .filter(|wall| wall.length.is_none())
                .count();
            let detail = match missing {
                0 => match (room.carried().count(), follow) {
                    (0, 0) => "all measured".to_owned(),
                    (0, 1) => "measured, 1 wall follows from the others".to_owned(),
                    (0, n) => format!("measured, {n} walls follow from the others"),
                    (carried, _) => format!("{carried} carried over, not confirmed"),
                },
                1 => "1 still to measure".to_owned(),
                n => format!("{n} still to measure"),
            };
            rows.push(Row::Figure {
                label: room.name.clone(),
                detail,
                value: format!("{} walls", room.walls.len()),
                command: Some(Command::Go(Here::Room(at))),
            });
        }
        if rows.is_empty() {
            rows.push(Row::Text(
                "No room yet. Choose the shape that comes nearest; the tape decides the rest."
                    .into(),
            ));
        }
        rows.push(Row::choice(
            "New room",
            [
                Chip::new("Rectangle", false, Command::NewRoom(Shape::Rectangle)),
                Chip::new("L, six walls", false, Command::NewRoom(Shape::L)),
                Chip::new(
                    "Alcove, eight walls",
                    false,
                    Command::NewRoom(Shape::Alcove),
                ),
                Chip::new("Own outline", false, Command::NewRoom(Shape::Own)),
            ],
        ));
        let kept = self.keeper.shelf().len();
        if kept > 0 {
            rows.push(Row::Figure {
                label: "Shelf of profiles".into(),
                detail: "rooms kept from this job and others".into(),
                value: kept.to_string(),
                command: Some(Command::Go(Here::Profiles)),
            });
        }
        rows.extend(self.total_rows());
        rows.push(Row::Heading("Job".into()));
        rows.push(Row::yours(
            "Name",
            &self.job.name,
            Command::Pad(Slot::JobName),
        ));
        rows.push(Row::ours(
            "Begun",
            self.job.begun.format("%-d %b %Y, %H:%M").to_string(),
        ));
        Screen {
            crumb: self.job.name.clone(),
            title: "Rooms".into(),
            buttons: vec![Chip::new("More", false, Command::Go(Here::More))],
            rows,
            ..Screen::default()
        }
    }

    /// One room's plan.
    pub(super) fn room_page(&self, at: usize) -> Screen {
        let Some(room) = self.job.rooms.get(at) else {
            return self.rooms_page();
        };
        let scene = plan(room, self.job.units);
        let mut picture = scene.map_tags(|tag| match tag {
            PlanTag::Wall(wall) => Command::Pad(Slot::WallLength(at, wall)),
            PlanTag::Ceiling => Command::Pad(Slot::Ceiling(at)),
            PlanTag::WallFace(wall) => Command::Go(Here::Wall(at, wall)),
            other => plan_command(at, room, other),
        });
        self.runs_under_floor(at, &mut picture);
        let mut rows = self.closing_rows(at, room);
        rows.extend(self.clash_rows(room));
        rows.extend(self.near_on(room, site::Face::Floor));
        rows.extend(self.carried_row(at, room));
        rows.extend(self.clearance_rows(room));
        rows.push(Row::Heading("Walls, left to right from inside".into()));
        let drawn = site::sketch(room);
        for (index, wall) in room.walls.iter().enumerate() {
            rows.push(self.wall_row(at, index, wall, drawn.walls.get(index).copied()));
        }
        rows.push(Row::yours(
            "Ceiling height",
            self.show_or_ask(room.ceiling),
            Command::Pad(Slot::Ceiling(at)),
        ));
        rows.push(Row::choice(
            "This room",
            [
                Chip::new("Survey it", false, Command::Go(Here::Survey(at))),
                Chip::new("Change the outline", false, Command::Go(Here::Outline(at))),
                Chip::new("True shape", false, Command::Go(Here::Square(at))),
            ],
        ));
        rows.push(Row::Heading("Look at a wall".into()));
        rows.push(Row::choice(
            "Openings, studs, finish",
            room.walls.iter().enumerate().map(|(index, _)| {
                Chip::new(
                    format!("Wall {}", Wall::named(index)),
                    false,
                    Command::Go(Here::Wall(at, index)),
                )
            }),
        ));
        rows.push(Row::Button {
            label: "Paint this room".into(),
            main: true,
            command: Command::NewPaint(Some(at)),
        });
        rows.push(Row::Button {
            label: "Tile this floor".into(),
            main: true,
            command: Command::NewTile(Some(at), TileOn::Floor),
        });
        rows.push(Row::choice(
            "Board in sheets",
            [
                (Surface::Floor, "Under the floor"),
                (Surface::Ceiling, "On the ceiling"),
            ]
            .map(|(surface, word)| {
                let command = Command::NewSheets(Some(at), TileOn::Floor, surface);
                Chip::new(word, false, command)
            }),
        ));
        rows.push(Row::choice(
            "Trim this room",
            [
                (trim::Kind::Base, "Base"),
                (trim::Kind::Casing, "Casing of its openings"),
            ]
            .map(|(kind, word)| Chip::new(word, false, Command::NewTrim(Some(at), kind))),
        ));
        rows.push(Row::Heading("What each surface gets".into()));
        rows.push(Row::choice(
            "Ceiling gets",
            finishes(room.ceiling_finish, |finish| {
                Command::CeilingFinish(at, finish)
            }),
        ));
        rows.push(Row::choice(
            "Floor gets",
            finishes(room.floor_finish, |finish| Command::FloorFinish(at, finish)),
        ));
        rows.extend(self.area_rows(room));
        rows.push(Row::Heading("This profile".into()));
        rows.push(Row::yours(
            "Name",
            &room.name,
            Command::Pad(Slot::RoomName(at)),
        ));
        rows.push(Row::choice(
            "The plan",
            [
                Chip::new("Mirror it", false, Command::Of(at, RoomChoice::Mirror)),
                Chip::new("Turn it", false, Command::Of(at, RoomChoice::Turn)),
            ],
        ));
        rows.push(App::second_row(at));
        rows.extend(self.beside_row(at));
        rows.push(Row::button(
            "Keep a copy on the shelf",
            Command::KeepRoom(at),
        ));
        rows.push(Row::button("Remove this room", Command::RemoveRoom(at)));
        Screen {
            crumb: self.job.name.clone(),
            title: room.name.clone(),
            back: Some(Here::Rooms),
            picture: Some(picture),
            rows,
            strip: self.room_strip(room),
            main: self
                .next_to_measure(at, room)
                .map(|slot| Chip::new("Measure the next one", false, Command::Pad(slot))),
            ..Screen::default()
        }
    }

    /// A wall's length: measured, following from the others, or still asked for.
    pub(super) fn wall_row(
        &self,
        room: usize,
        index: usize,
        wall: &Wall,
        drawn: Option<(Length, Standing)>,
    ) -> Row {
        // A wall that follows is not asked for; the tape may check it.
        let value = match drawn {
            Some((_, Standing::Follows)) if wall.length.is_none() => "check it".to_owned(),
            _ => self.show_or_ask(wall.length),
        };
        let detail = match (wall.length, drawn) {
            (None, Some((length, Standing::Follows))) => {
                format!("{} follows from the others", self.show(length))
            }
            _ if wall.turn == Angle::LEFT => "ends at a corner that juts in".to_owned(),
            _ => String::new(),
        };
        Row::Figure {
            label: format!("Wall {}", Wall::named(index)),
            detail,
            value,
            command: Some(Command::Pad(Slot::WallLength(room, index))),
        }
    }

    /// What clashes in a room.
    pub(super) fn clash_rows(&self, room: &Room) -> Vec<Row> {
        let Ok(shape) = site::shape(room) else {
            return Vec::new();
        };
        let found = site::clashes(room, &shape);
        found
            .iter()
            .map(|clash| Row::Note {
                tone: Tone::Stop,
                text: words::clash(clash, room, self.job.units),
                detail: String::new(),
                mend: None,
            })
            .collect()
    }

    fn closing_rows(&self, at: usize, room: &Room) -> Vec<Row> {
        let note = |tone, text: String| Row::Note {
            tone,
            text,
            detail: String::new(),
            mend: None,
        };
        match site::shape(room) {
            Err(problem) => {
                let mut rows = vec![note(
                    Tone::Stop,
                    words::room_problem(&problem, room, self.job.units),
                )];
                if let site::Problem::TurnsDoNotClose { sum } = problem {
                    rows.push(Row::choice(
                        "A room's corners add up. Give the rest to",
                        rest_chips(at, room, sum),
                    ));
                }
                rows
            }
            Ok(shape) => {
                let unknown = shape
                    .walls
                    .iter()
                    .filter(|(_, standing)| *standing == Standing::NotYet)
                    .count();
                if unknown > 0 {
                    return vec![Row::Text(
                        "Tap a blue figure on the drawing and type what the tape says.".into(),
                    )];
                }
                if site::surveyed(room).is_some() {
                    return self.agreement_rows(at, room);
                }
                if let Some((wall, off)) = site::slant(room, &shape) {
                    return vec![note(Tone::Caution, words::slant(wall, off, self.job.units))];
                }
                // Whole degrees and a tape leave a little; half an inch is told.
                let bend = site::bend(room, &shape)
                    .filter(|bend| shape.misfit.is_none() && bend.off > Length::in_64(0, 32));
                if let Some(bend) = bend {
                    return vec![note(Tone::Caution, words::bend(&bend))];
                }
                match shape.misfit {
                    Some(misfit) if misfit.gap.is_positive() => vec![note(
                        if misfit.gap > Length::in_64(0, 32) {
                            Tone::Caution
                        } else {
                            Tone::Good
                        },
                        words::misfit(&misfit, self.job.units),
                    )],
                    Some(_) => vec![note(Tone::Good, "The walls close.".into())],
                    None => Vec::new(),
                }
            }
        }
    }

    /// Areas by each way of taking openings off, each with its source.
    fn area_rows(&self, room: &Room) -> Vec<Row> {
        let Ok(shape) = site::shape(room) else {
            return Vec::new();
        };
        let small = crate::measure::quantity::square_feet(100.0);
        let rules = [
            ("Walls, openings taken off", OpeningRule::Net),
            ("Walls, measured solid", OpeningRule::Solid),
            (
                "Walls, openings under 100 ft² not taken off",
                OpeningRule::SmallNotDeducted(small),
            ),
        ];
        let mut rows = Vec::new();
        for (label, rule) in rules {
            let Ok(areas) = site::wall_areas(room, &shape, rule) else {
                return Vec::new();
            };
            let none = crate::measure::quantity::square_metres(0.0);
            let net = areas.iter().fold(none, |sum, wall| sum + wall.net);
            rows.push(Row::Figure {
                label: label.into(),
                detail: words::cite(&rule.cite()),
                value: self.amount(net),
                command: None,
            });
        }
        rows.insert(0, Row::Heading("Areas, by three ways to count".into()));
        rows.push(Row::ours(
            "Base round the room, less doors",
            self.show(site::baseboard(room, &shape)),
        ));
        rows
    }

    fn room_strip(&self, room: &Room) -> Vec<Big> {
        let Ok(shape) = site::shape(room) else {
            return Vec::new();
        };
        if shape
            .walls
            .iter()
            .any(|(_, standing)| *standing == Standing::NotYet)
        {
            return Vec::new();
        }
        let unsure = site::floor_plus_minus(room);
        let mut strip = vec![Big {
            value: self.amount(shape.corners.area()),
            label: unsure.map_or_else(
                || "floor".to_owned(),
                |more_or_less| format!("floor, ± {}", self.fine_area(more_or_less)),
            ),
        }];
        if let Ok(areas) = site::wall_areas(room, &shape, OpeningRule::Net) {
            let net = areas
                .iter()
                .fold(crate::measure::quantity::square_metres(0.0), |sum, wall| {
                    sum + wall.net
                });
            strip.push(Big {
                value: self.amount(net),
                label: "walls, less openings".into(),
            });
        }
        strip.push(Big {
            value: self.show(shape.walls.iter().map(|(length, _)| *length).sum()),
            label: "round the room".into(),
        });
        if let Some(ceiling) = room.ceiling {
            strip.push(Big {
                value: self.show(ceiling),
                label: "ceiling".into(),
            });
        }
        strip
    }

    /// The first thing that is still to be measured, in walking order.
    fn next_to_measure(&self, at: usize, room: &Room) -> Option<Slot> {
        let drawn = site::sketch(room);
        let wall = room
            .walls
            .iter()
            .zip(&drawn.walls)
            .position(|(wall, (_, standing))| {
                wall.length.is_none() && *standing == Standing::NotYet
            });
        wall.map(|wall| Slot::WallLength(at, wall))
            .or_else(|| room.ceiling.is_none().then_some(Slot::Ceiling(at)))
    }
}

/// The finishes to choose from.
pub(super) fn finishes(now: Finish, command: impl Fn(Finish) -> Command) -> Vec<Chip> {
    [
        (Finish::Paint, "Paint"),
        (Finish::Tile, "Tile"),
        (Finish::Boards, "Boards"),
        (Finish::Leave, "Leave as it is"),
    ]
    .into_iter()
    .map(|(finish, label)| Chip::new(label, finish == now, command(finish)))
    .collect()
}

/// A corner as it is measured inside the room: 90° for a square one, 270° where it juts in.
pub(super) fn corner(turn: Angle) -> f64 {
    180.0 - turn.in_degrees()
}

/// The corners that could take what the turns lack, each with what it would then be.
fn rest_chips(at: usize, room: &Room, sum: Angle) -> Vec<Chip> {
    let lack = Angle::FULL.as_microdegrees() - sum.as_microdegrees();
    let mut chips = Vec::new();
    for (index, wall) in room.walls.iter().enumerate() {
        let turn = wall.turn.as_microdegrees().saturating_add(lack);
        if turn.unsigned_abs() < 180_000_000 && turn != 0 {
            let next = Wall::named((index + 1) % room.walls.len());
            let label = format!(
                "{}–{next}: {}°",
                Wall::named(index),
                corner(Angle::microdegrees(turn))
            );
            chips.push(Chip::new(label, false, Command::Corner(at, index, turn)));
        }
    }
    chips
}

/// A corner as it was measured inside the room, or why there is none such.
pub(super) fn fill_corner(
    job: &mut Job,
    room: usize,
    wall: usize,
    inside: Angle,
) -> Result<(), String> {
    let turn = 180_000_000 - inside.as_microdegrees();
    if turn == 0 || turn.unsigned_abs() >= 180_000_000 {
        return Err(
            "Inside a room a corner has more than 0° and less than 360°, and not 180°: 90 is square, 270 juts in."
                .into(),
        );
    }
    if let Some(wall) = job.rooms.get_mut(room).and_then(|r| r.walls.get_mut(wall)) {
        wall.turn = Angle::microdegrees(turn);
    }
    Ok(())
}
