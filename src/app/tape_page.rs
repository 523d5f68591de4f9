//! The tape: a roll of measures and sums, squareness, spacing, halves, drawing scales.

use super::{App, Chip, Command, Here, Row, Screen, Slot, TapeSlot, pad::set_typed, words};
use crate::measure::{Figures, Length};
use crate::takeoff::RollLine;
use crate::trades::{Step, tape};

/// Lines of the roll that are shown, the last first.
const SHOWN: usize = 100;

impl App {
    /// The tape.
    pub(super) fn tape_page(&self) -> Screen {
        let mut rows = vec![Row::Button {
            label: "New measure or sum".into(),
            main: true,
            command: Command::Pad(Slot::Roll),
        }];
        rows.push(Row::Heading("The roll".into()));
        rows.extend(self.roll_rows());
        rows.extend(self.square_rows());
        rows.extend(self.room_square_rows());
        rows.extend(self.spacing_rows());
        rows.extend(self.middle_rows());
        rows.extend(self.scale_rows());
        Screen {
            crumb: self.job.name.clone(),
            title: "Tape".into(),
            back: Some(Here::Bench),
            buttons: if self.job.roll.is_empty() {
                Vec::new()
            } else {
                vec![Chip::new("Clear roll", false, Command::ClearRoll)]
            },
            rows,
            ..Screen::default()
        }
    }

    fn roll_rows(&self) -> Vec<Row> {
        if self.job.roll.is_empty() {
            return vec![Row::Text(
                "Every measure and sum that you type is kept here, with what it was for. Tap one to take it to another figure.".into(),
            )];
        }
        let line = |line: &std::sync::Arc<RollLine>| {
            let typed = set_typed(&line.typed);
            let is_sum = [" + ", " − ", "×", "÷"]
                .iter()
                .any(|sign| typed.contains(sign));
            Row::Figure {
                label: line.label.clone(),
                detail: if is_sum {
                    typed
                } else {
                    self.job.units.other(line.length)
                },
                value: self.show(line.length),
                command: Some(Command::Hold(Some(line.length))),
            }
        };
        let mut rows: Vec<Row> = self.job.roll.iter().rev().take(SHOWN).map(line).collect();
        if self.job.roll.len() > SHOWN {
            rows.push(Row::Text(format!(
                "and {} before these, kept in the job",
                self.job.roll.len() - SHOWN
            )));
        }
        rows
    }

    /// A figure of the tape's bench.
    fn tape_row(&self, label: &str, value: Option<Length>, field: TapeSlot) -> Row {
        Row::yours(
            label,
            self.show_or_ask(value),
            Command::Pad(Slot::Tape(field)),
        )
    }

    /// What a step gives, with its sum beneath.
    fn step_row(&self, step: &Step) -> Row {
        Row::Figure {
            label: self.job.units.phrase(&step.what, Figures::Set),
            detail: format!(
                "{}; {}",
                words::sum(&step.sum, self.job.units),
                words::cite(&step.cite)
            ),
            value: self.amount(step.gives.clone()),
            command: None,
        }
    }

    fn problem_row(&self, problem: &tape::Problem) -> Row {
        Row::Text(words::tape_problem(problem, self.job.units))
    }

    /// Two sides: the diagonal that makes them square, and the largest 3-4-5 that fits.
    fn square_rows(&self) -> Vec<Row> {
        let sides = self.job.tape.sides;
        let mut rows = vec![
            Row::Heading("A square corner".into()),
            self.tape_row("One side", sides[0], TapeSlot::Side(0)),
            self.tape_row("The other side", sides[1], TapeSlot::Side(1)),
        ];
        let [Some(across), Some(along)] = sides else {
            return rows;
        };
        match tape::diagonal(across, along) {
            Ok((_, step)) => rows.push(self.step_row(&step)),
            Err(problem) => rows.push(self.problem_row(&problem)),
        }
        let unit = if self.job.units.is_metric() {
            Length::mm(100)
        } else {
            Length::inches(1)
        };
        if let Ok(Some(triangle)) = tape::three_four_five(across, along, unit) {
            rows.push(Row::Figure {
                label: "3-4-5: mark on the sides".into(),
                detail: "square when the tape between the two marks reads the diagonal below"
                    .into(),
                value: format!(
                    "{} and {}",
                    self.show(triangle.across),
                    self.show(triangle.along)
                ),
                command: None,
            });
            rows.push(Row::ours(
                "3-4-5: between the marks",
                self.show(triangle.between),
            ));
        }
        rows
    }

    /// Two diagonals of what has those sides: how far a corner is off.
    fn room_square_rows(&self) -> Vec<Row> {
        let (sides, diagonals) = (self.job.tape.sides, self.job.tape.diagonals);
        let mut rows = vec![
            Row::Heading("Is it square? Measure both diagonals".into()),
            self.tape_row("One diagonal", diagonals[0], TapeSlot::Diagonal(0)),
            self.tape_row("The other diagonal", diagonals[1], TapeSlot::Diagonal(1)),
        ];
        let ([Some(a), Some(b)], [Some(first), Some(second)]) = (sides, diagonals) else {
            rows.push(Row::Text(
                "It takes the two sides above and both diagonals.".into(),
            ));
            return rows;
        };
        match tape::out_of_square((a, b), (first, second)) {
            Err(problem) => rows.push(self.problem_row(&problem)),
            Ok(off) => {
                let degrees = (off.off.in_degrees().abs() * 100.0).round() / 100.0;
                rows.push(Row::ours("The corner is off by", format!("{degrees}°")));
                rows.push(Row::ours("Over the one side", self.show(off.over_across)));
                rows.push(Row::ours("Over the other side", self.show(off.over_along)));
                rows.extend(off.working.iter().map(|step| self.step_row(step)));
            }
        }
        rows
    }

    fn spacing_rows(&self) -> Vec<Row> {
        let bench = &self.job.tape;
        let ends = |label, ends| Chip::new(label, bench.ends == ends, Command::Ends(ends));
        let mut rows = vec![
            Row::Heading("Equal spacing, and the middle".into()),
            self.tape_row("Over a length of", bench.run, TapeSlot::Run),
            Row::yours(
                "How many",
                bench.count.to_string(),
                Command::Pad(Slot::Tape(TapeSlot::Count)),
            ),
            Row::Figure {
                label: "How wide one is".into(),
                detail: "nothing for a mark".into(),
                value: bench
                    .width
                    .map_or_else(|| "a mark".to_owned(), |width| self.show(width)),
                command: Some(Command::Pad(Slot::Tape(TapeSlot::Width))),
            },
            Row::choice(
                "The first and the last",
                [
                    ends("A space from the ends", tape::Ends::Open),
                    ends("At the ends", tape::Ends::Taken),
                ],
            ),
        ];
        let Some(run) = bench.run else { return rows };
        let width = bench.width.unwrap_or(Length::ZERO);
        match tape::spaced(run, bench.count, width, bench.ends) {
            Err(problem) => rows.push(self.problem_row(&problem)),
            Ok(spacing) => {
                rows.extend(spacing.working.iter().map(|step| self.step_row(step)));
                for (at, (near, centre)) in spacing.positions.iter().enumerate() {
                    let detail = if width.is_positive() {
                        format!("its near edge at {}", self.show(*near))
                    } else {
                        String::new()
                    };
                    rows.push(Row::Figure {
                        label: format!("Centre of no. {}", at + 1),
                        detail,
                        value: self.show(*centre),
                        command: None,
                    });
                }
            }
        }
        rows
    }

    fn middle_rows(&self) -> Vec<Row> {
        let Some(run) = self.job.tape.run else {
            return Vec::new();
        };
        let mut rows = Vec::new();
        if let Ok((_, step)) = tape::halved(run) {
            rows.push(self.step_row(&step));
        }
        if let Some(width) = self.job.tape.width.filter(|width| width.is_positive())
            && let Ok(centred) = tape::centred(run, width)
        {
            rows.extend(centred.working.iter().map(|step| self.step_row(step)));
        }
        rows
    }

    fn scale_rows(&self) -> Vec<Row> {
        let bench = &self.job.tape;
        let mut chips: Vec<Chip> = tape::USUAL_SCALES
            .iter()
            .filter(|(_, ratio)| [4, 8, 12, 16, 24, 48, 96].contains(ratio))
            .map(|(on_paper, ratio)| {
                let command = Command::Scale(*on_paper);
                Chip::new(format!("1:{ratio}"), bench.scale == *on_paper, command)
            })
            .collect();
        for ratio in [10, 20, 50] {
            if let Ok(scale) = tape::Scale::one_to(ratio) {
                let on_paper = scale.foot_on_paper();
                let command = Command::Scale(on_paper);
                chips.push(Chip::new(
                    format!("1:{ratio}"),
                    bench.scale == on_paper,
                    command,
                ));
            }
        }
        let mut rows = vec![
            Row::Heading("A drawing to scale".into()),
            Row::choice("Scale", chips),
            Row::Figure {
                label: "On paper, for a foot".into(),
                detail: "1 in to the foot is 1:12".into(),
                value: self.show(bench.scale),
                command: Some(Command::Pad(Slot::Tape(TapeSlot::Scale))),
            },
            self.tape_row("Measured on the drawing", bench.on_paper, TapeSlot::OnPaper),
        ];
        let scale = tape::Scale::to_the_foot(bench.scale);
        if let (Ok(scale), Some(length)) = (&scale, bench.on_paper) {
            rows.push(self.step_row(&scale.on_site(length).1));
        }
        rows.push(self.tape_row("To be drawn", bench.on_site, TapeSlot::OnSite));
        if let (Ok(scale), Some(length)) = (&scale, bench.on_site) {
            rows.push(self.step_row(&scale.on_paper(length).1));
        }
        rows
    }
}
