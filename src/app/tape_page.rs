//! The tape: a roll of measures and sums, equal spacing, and the square check.

use super::{App, Chip, Command, Here, Row, Screen, Slot, pad::set_typed, words};
use crate::measure::{Figures, Length, Rounding};
use crate::trades::tape;

impl App {
    /// The tape.
    pub(super) fn tape_page(&self) -> Screen {
        let mut rows = vec![Row::Button {
            label: "New measure or sum".into(),
            main: true,
            command: Command::Pad(Slot::Roll),
        }];
        rows.push(Row::Heading("The roll".into()));
        if self.job.roll.is_empty() {
            rows.push(Row::Text(
                "Every measure and sum that you type is kept here, with what it was for.".into(),
            ));
        }
        for line in self.job.roll.iter().rev().take(100) {
            let value = self.show(line.length);
            let typed = set_typed(&line.typed);
            let detail = if typed.contains(" + ")
                || typed.contains(" − ")
                || typed.contains('×')
                || typed.contains('÷')
            {
                typed
            } else {
                self.job.units.other(line.length)
            };
            rows.push(Row::Figure {
                label: line.label.clone(),
                detail,
                value,
                command: None,
            });
        }
        rows.push(Row::Heading("Is it square?".into()));
        rows.push(Row::yours(
            "One side",
            self.show_or_ask(self.square[0]),
            Command::Pad(Slot::Square(0)),
        ));
        rows.push(Row::yours(
            "The other side",
            self.show_or_ask(self.square[1]),
            Command::Pad(Slot::Square(1)),
        ));
        if let [Some(a), Some(b)] = self.square {
            rows.push(Row::Figure {
                label: "Both diagonals of a square corner".into(),
                detail: "equal diagonals and equal opposite sides make a rectangle".into(),
                value: self
                    .job
                    .units
                    .length(a.diagonal(b), Rounding::Nearest, Figures::Set),
                command: None,
            });
        }
        rows.push(Row::Heading("Equal spacing".into()));
        rows.push(Row::yours(
            "Over a length of",
            self.show_or_ask(self.spacing[0]),
            Command::Pad(Slot::Spacing(0)),
        ));
        rows.push(Row::yours(
            "How many",
            self.spaced.to_string(),
            Command::Pad(Slot::Spacing(2)),
        ));
        rows.extend(self.spacing_rows());
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

    fn spacing_rows(&self) -> Vec<Row> {
        let Some(over) = self.spacing[0] else {
            return Vec::new();
        };
        match tape::spaced(over, self.spaced, Length::ZERO, tape::Ends::Open) {
            Ok(spacing) => spacing
                .positions
                .iter()
                .enumerate()
                .map(|(at, (_, centre))| Row::ours(format!("Mark {}", at + 1), self.show(*centre)))
                .collect(),
            Err(problem) => vec![Row::Text(words::tape_problem(&problem, self.job.units))],
        }
    }
}
