//! What a patch asks for: its holes, the studs, the board, the air, and the room that it is laid on.

use super::{App, Chip, Choice, Command, Row, Slot, StudsOf};
use crate::measure::{Amount, Length};
use crate::site::Wall;
use crate::takeoff::{Ask, Job};
use crate::trades::patch::{self, Field, Hole, HoleShape};
use crate::trades::sheets::Surface;

impl App {
    /// What a figure on the drawing fills in: studs of a room's wall are the wall's own.
    pub(super) fn patch_slot(&self, at: usize, field: Field) -> Slot {
        let of = match self.job.tasks.get(at).map(|task| (task.room, &task.ask)) {
            Some((Some(room), Ask::Patch(_, Some(wall)))) => StudsOf::Wall(room, *wall),
            _ => StudsOf::Patch(at),
        };
        match field {
            Field::FirstStud | Field::StudSpacing => Slot::FirstStud(of),
            Field::StudFace => Slot::StudFace(of),
            _ => Slot::Patch(at, field),
        }
    }

    pub(super) fn patch_inputs(
        &self,
        at: usize,
        ask: &patch::Ask,
        wall: Option<usize>,
    ) -> Vec<Row> {
        let field = |label: &str, field: Field| {
            Row::yours(
                label,
                self.show_or_ask(self.patch_field(at, field)),
                Command::Pad(Slot::Patch(at, field)),
            )
        };
        let round = matches!(ask.hole.shape, HoleShape::Round { .. });
        let mut rows = vec![Row::choice(
            "Its shape",
            [
                Chip::new("Rectangle", !round, Command::Set(at, Choice::Round(false))),
                Chip::new("Round", round, Command::Set(at, Choice::Round(true))),
            ],
        )];
        rows.extend(self.hole_rows(at, None, ask));
        for (number, _) in ask.other_holes.iter().enumerate() {
            rows.push(Row::Heading(format!(
                "Hole {} in the same wall",
                number + 2
            )));
            rows.extend(self.hole_rows(at, Some(number), ask));
            rows.push(Row::button(
                format!("Remove hole {}", number + 2),
                Command::Set(at, Choice::RemoveHole(number)),
            ));
        }
        rows.push(Row::button(
            "Another hole in this wall",
            Command::Set(at, Choice::AddHole),
        ));
        rows.push(Row::Heading("Behind it".into()));
        rows.extend(self.patch_studs(at, wall));
        rows.push(board_row(self, at, ask.board));
        rows.push(field("Gap all round", Field::Gap));
        rows.push(field("Screws at most apart", Field::ScrewSpacing));
        let rated = |label, rated| {
            Chip::new(
                label,
                ask.fire_rated == rated,
                Command::Set(at, Choice::FireRated(rated)),
            )
        };
        rows.push(Row::choice(
            "Fire-rated wall",
            [rated("No", false), rated("Yes", true)],
        ));
        rows.extend(self.air_rows(at, ask.air));
        rows
    }

    /// Studs: of the room's wall, where it knows them or may; else of this patch.
    fn patch_studs(&self, at: usize, wall: Option<usize>) -> Vec<Row> {
        let of_wall = self.job.tasks[at].room.zip(wall);
        let Some((room, wall)) = of_wall else {
            return self.stud_rows(StudsOf::Patch(at));
        };
        let mut rows = vec![Row::Figure {
            label: format!("Studs of wall {}", Wall::named(wall)),
            detail: "kept with the room; a change is one for every figure there".into(),
            value: String::new(),
            command: None,
        }];
        rows.extend(self.stud_rows(StudsOf::Wall(room, wall)));
        rows
    }

    /// Where a hole is and how large.
    fn hole_rows(&self, at: usize, other: Option<usize>, ask: &patch::Ask) -> Vec<Row> {
        let slot = |field| match other {
            None => Slot::Patch(at, field),
            Some(other) => Slot::OtherHole(at, other, field),
        };
        let field = |label: &str, field: Field| {
            Row::yours(
                label,
                self.show_or_ask(self.hole_field(at, other, field)),
                Command::Pad(slot(field)),
            )
        };
        let Some(hole) = self.hole(at, other) else {
            return Vec::new();
        };
        let mut rows = match hole.shape {
            HoleShape::Round { .. } => vec![field("Across", Field::HoleAcross)],
            HoleShape::Rectangle { .. } => vec![
                field("Width", Field::HoleWidth),
                field("Height", Field::HoleHeight),
            ],
        };
        // Measured from a stud, the corner is not asked for.
        rows.push(match hole.from_stud.filter(|_| hole.from_left.is_none()) {
            None => field("Left corner to the hole", Field::FromLeft),
            Some((stud, length)) => Row::Figure {
                label: format!("Centre of stud {} to the hole", stud + 1),
                detail: "less than nothing where the hole begins left of it".into(),
                value: self.show(length),
                command: Some(Command::Pad(Slot::FromStud(at, other, stud))),
            },
        });
        rows.push(field("Floor to the hole", Field::AboveFloor));
        let studs = ask.studs.as_ref().map_or(0, |studs| {
            let wall = ask.wall.length.unwrap_or(Length::feet(16));
            studs.centres(wall).len().min(12)
        });
        if studs > 0 {
            let measured = hole.from_stud.filter(|_| hole.from_left.is_none());
            let mut chips = vec![Chip::new(
                "Left corner",
                measured.is_none(),
                Command::Pad(slot(Field::FromLeft)),
            )];
            chips.extend((0..studs).map(|stud| {
                Chip::new(
                    format!("Stud {}", stud + 1),
                    measured.is_some_and(|(from, _)| from == stud),
                    Command::Pad(Slot::FromStud(at, other, stud)),
                )
            }));
            rows.push(Row::choice("Measure it from", chips));
        }
        rows
    }

    fn air_rows(&self, at: usize, air: patch::Air) -> Vec<Row> {
        let warmth = crate::measure::quantity::fahrenheit(air.fahrenheit);
        vec![
            Row::Heading("Air that compound dries in".into()),
            Row::yours(
                "Warmth",
                self.amount(Amount::Temperature(warmth)),
                Command::Pad(Slot::AirWarmth(at)),
            ),
            Row::yours(
                "Humidity",
                self.amount(Amount::Share(air.humidity / 100.0)),
                Command::Pad(Slot::AirHumidity(at)),
            ),
        ]
    }

    /// A quick figure can be laid on a room afterwards.
    pub(super) fn lay_rows(&self, at: usize) -> Vec<Row> {
        let task = &self.job.tasks[at];
        if task.room.is_some() || self.job.rooms.is_empty() {
            return Vec::new();
        }
        let mut rows = vec![Row::Heading("Lay it on a room".into())];
        for (number, room) in self.job.rooms.iter().enumerate() {
            let on_wall = matches!(&task.ask, Ask::Sheets(ask, _) if ask.on == Surface::Wall);
            if on_wall || matches!(task.ask, Ask::Patch(..) | Ask::Pipe(..)) {
                rows.push(Row::choice(
                    room.name.clone(),
                    (0..room.walls.len()).map(|wall| {
                        Chip::new(
                            format!("Wall {}", Wall::named(wall)),
                            false,
                            Command::Lay(at, number, Some(wall)),
                        )
                    }),
                ));
            } else {
                rows.push(Row::button(
                    room.name.clone(),
                    Command::Lay(at, number, None),
                ));
            }
        }
        rows
    }
}

fn board_row(app: &App, at: usize, board: Length) -> Row {
    let usual = [
        Length::in_64(0, 24),
        Length::in_64(0, 32),
        Length::in_64(0, 40),
    ];
    let mut chips: Vec<Chip> = usual
        .iter()
        .map(|b| {
            Chip::new(
                app.show(*b),
                board == *b,
                Command::Set(at, Choice::Board(*b)),
            )
        })
        .collect();
    let own = !usual.contains(&board);
    let label = if own {
        format!("{}, own", app.show(board))
    } else {
        "Own".to_owned()
    };
    chips.push(Chip::new(
        label,
        own,
        Command::Pad(Slot::Patch(at, Field::Board)),
    ));
    Row::choice("Board", chips)
}

/// A length into a field of a patch or of one of its holes.
pub(super) fn fill(job: &mut Job, slot: &Slot, length: Length) {
    let (Slot::Patch(task, _) | Slot::OtherHole(task, ..) | Slot::FromStud(task, ..)) = slot else {
        return;
    };
    let Some(Ask::Patch(ask, _)) = job.tasks.get_mut(*task).map(|task| &mut task.ask) else {
        return;
    };
    match slot {
        Slot::Patch(_, Field::Board) => ask.board = length,
        Slot::Patch(_, Field::Gap) => ask.gap = length,
        Slot::Patch(_, Field::ScrewSpacing) => ask.screw_spacing = length,
        Slot::Patch(_, Field::WallLength) => ask.wall.length = Some(length),
        Slot::Patch(_, Field::WallHeight) => ask.wall.height = Some(length),
        Slot::Patch(_, field) => fill_hole(&mut ask.hole, *field, length),
        Slot::OtherHole(_, other, field) => {
            if let Some(hole) = ask.other_holes.get_mut(*other) {
                fill_hole(hole, *field, length);
            }
        }
        Slot::FromStud(_, other, stud) => {
            let hole = match other {
                None => Some(&mut ask.hole),
                Some(other) => ask.other_holes.get_mut(*other),
            };
            if let Some(hole) = hole {
                hole.from_stud = Some((*stud, length));
                hole.from_left = None;
            }
        }
        _ => {}
    }
}

fn fill_hole(hole: &mut Hole, field: Field, length: Length) {
    match (field, &mut hole.shape) {
        (Field::HoleWidth, HoleShape::Rectangle { width, .. }) => *width = length,
        (Field::HoleHeight, HoleShape::Rectangle { height, .. }) => *height = length,
        (Field::HoleAcross, HoleShape::Round { across }) => *across = length,
        (Field::FromLeft, _) => hole.from_left = Some(length),
        (Field::AboveFloor, _) => hole.above_floor = Some(length),
        _ => {}
    }
}

/// The air of a patch, or why it is none.
pub(super) fn fill_air(
    job: &mut Job,
    task: usize,
    slot: &Slot,
    number: f64,
    metric: bool,
) -> Result<(), String> {
    let Some(Ask::Patch(ask, _)) = job.tasks.get_mut(task).map(|task| &mut task.ask) else {
        return Ok(());
    };
    if matches!(slot, Slot::AirHumidity(_)) {
        if number > 100.0 {
            return Err("Humidity is at most 100 %.".into());
        }
        ask.air.humidity = number;
        return Ok(());
    }
    let fahrenheit = if metric { number * 1.8 + 32.0 } else { number };
    if !(0.0..=130.0).contains(&fahrenheit) {
        return Err("No one works in air like that: give the warmth of the room.".into());
    }
    ask.air.fahrenheit = fahrenheit;
    Ok(())
}
