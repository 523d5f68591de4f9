//! The pipe screen: the run as it is built, its pieces as a list that is ticked as they are fitted dry, and the strip.

use super::{
    App, Chip, Choice, Command, Here, PipeChoice, PipeSlot, Row, Screen, Slot, Tone, pipe_words,
    view::Big, words,
};
use crate::drawing::{PipeTag, View, pipe_sketch, strip, strip_sheet};
use crate::handbook::pipe::support;
use crate::measure::{Amount, Figures, Length, Rounding};
use crate::takeoff::Ask;
use crate::trades::Account;
use crate::trades::pipe::{self, Figure};

/// Pieces that the strip of results has room for.
const SHOWN: usize = 3;

impl App {
    /// What is asked of a run.
    pub(super) fn pipe_ask(&self, at: usize) -> Option<&pipe::Ask> {
        match &self.job.tasks.get(at)?.ask {
            Ask::Pipe(ask, _) => Some(ask),
            _ => None,
        }
    }

    /// A new run, with the tools of the one before it.
    pub(super) fn new_pipe(&self) -> pipe::Ask {
        let before = (0..self.job.tasks.len())
            .rev()
            .find_map(|at| self.pipe_ask(at));
        before.map_or_else(pipe::Ask::default, |before| pipe::Ask {
            pipe: before.pipe,
            size: before.size,
            tape: before.tape,
            jaw: before.jaw,
            stick: before.stick,
            air: before.air,
            damp: before.damp,
            ..pipe::Ask::default()
        })
    }

    /// A run's last answer.
    pub(super) fn pipe_answer(&self, at: usize) -> String {
        match self.pipe_ask(at).map(pipe::figure) {
            Some(Ok(figure)) if figure.pieces.len() == 1 => self.show(figure.pieces[0].cut),
            Some(Ok(figure)) => format!("{} pieces", figure.pieces.len()),
            _ => "not figured yet".to_owned(),
        }
    }

    /// The pipe screen.
    pub(super) fn pipe_page(&self, at: usize, ask: &pipe::Ask) -> Screen {
        let room = self.job.tasks[at]
            .room
            .and_then(|room| self.job.rooms.get(room));
        let figured = pipe::figure(ask);
        let view = self.seen.unwrap_or_else(|| View::usual(ask));
        let picture = (!ask.legs.is_empty()).then(|| {
            pipe_sketch(ask, figured.as_ref().ok(), view, self.job.units).map_tags(|tag| {
                Command::Pad(Slot::Pipe(
                    at,
                    match tag {
                        PipeTag::Length(leg) => PipeSlot::Length(leg),
                        PipeTag::Set(leg) => PipeSlot::Set(leg),
                    },
                ))
            })
        });
        let mut rows = Vec::new();
        let (mut big, mut main) = (Vec::new(), None);
        match &figured {
            Err(problem) => rows.push(Row::Note {
                tone: if !ask.legs.is_empty() {
                    Tone::Stop
                } else {
                    Tone::Note
                },
                text: pipe_words::problem(problem, ask, self.job.units),
                detail: String::new(),
                mend: pipe_words::mend(at, problem),
            }),
            Ok(figure) => {
                main = Some(self.list_button(at));
                big = self.pipe_strip(figure);
            }
        }
        rows.extend(self.start_asked(at));
        rows.extend(self.start_doubted(at));
        let begins = self.pipe_begins(at, ask);
        if ask.legs.is_empty() {
            // Before the first leg its material is chosen.
            rows.extend(begins);
            rows.extend(self.leg_rows(at, ask));
        } else {
            // What the person works on, then what comes of it, each with what is to be said of it.
            rows.extend(self.leg_rows(at, ask));
            let seen = [
                (View::Isometric, "Isometric"),
                (View::Front, "From the front"),
                (View::Above, "From above"),
            ]
            .map(|(of, word)| Chip::new(word, view == of, Command::Seen(of)));
            rows.push(Row::choice("Seen", seen));
            if let Ok(figure) = &figured {
                rows.extend(self.cut_list(at, ask, figure));
                rows.extend(self.warnings(&figure.account));
            }
            rows.extend(self.leg_in_hand(at, ask));
            rows.extend(self.pipe_wall_rows(at));
            if let Ok(figure) = &figured {
                rows.extend(self.pipe_results(at, ask, figure));
                rows.extend(self.remarks(&figure.account));
            }
            rows.extend(begins);
        }
        rows.extend(self.pipe_work(at, ask));
        rows.extend(self.task_rows(at));
        Screen {
            crumb: room.map_or_else(|| "Quick, no room".to_owned(), |room| room.name.clone()),
            title: if ask.name.is_empty() {
                "Pipe".to_owned()
            } else {
                ask.name.clone()
            },
            back: Some(Here::Bench),
            picture,
            rows,
            strip: big,
            main,
            ..Screen::default()
        }
    }

    fn pipe_strip(&self, figure: &Figure) -> Vec<Big> {
        let big = |value: String, label: String| Big { value, label };
        if figure.pieces.len() <= SHOWN {
            return figure
                .pieces
                .iter()
                .map(|piece| {
                    let of = format!("piece {}, leg {}", piece.number, piece.leg + 1);
                    big(self.show(piece.cut), of)
                })
                .collect();
        }
        let all: Length = figure.totals.iter().map(|(_, length)| *length).sum();
        let joints: u32 = figure.joints.iter().map(|(_, count)| count).sum();
        vec![
            big(figure.pieces.len().to_string(), "pieces to cut".into()),
            big(self.show(all), "of pipe".into()),
            big(joints.to_string(), "joints".into()),
        ]
    }

    /// Every piece, to be ticked once it was cut and fitted dry.
    fn cut_list(&self, at: usize, ask: &pipe::Ask, figure: &Figure) -> Vec<Row> {
        let mut rows = vec![Row::Heading("Cut, then fit dry and tick".into())];
        for piece in &figure.pieces {
            let on = ask.fitted.contains(&piece.number);
            let choice = Choice::Pipe(PipeChoice::Fitted(piece.number, !on));
            let marks: Vec<String> = piece
                .marks
                .into_iter()
                .flatten()
                .map(|m| self.show(m))
                .collect();
            let line = if piece.line > 0 {
                format!(", line {}", piece.line + 1)
            } else {
                String::new()
            };
            rows.push(Row::Check {
                label: format!("Piece {}, leg {}{line}", piece.number, piece.leg + 1),
                detail: match marks.as_slice() {
                    [] => format!("{} {}", piece.size.name(), piece.pipe.name()),
                    marks => format!(
                        "{} {}, depth lines at {}",
                        piece.size.name(),
                        piece.pipe.name(),
                        marks.join(" and ")
                    ),
                },
                value: self.show(piece.cut),
                on,
                command: Command::Set(at, choice),
                more: None,
            });
        }
        rows
    }

    fn pipe_results(&self, at: usize, ask: &pipe::Ask, figure: &Figure) -> Vec<Row> {
        let mut rows = self.order_rows(figure);
        rows.push(Row::Heading("Where the end may come to lie".into()));
        rows.extend(self.swing_rows(figure));
        rows.push(Row::Heading("Joints and hangers".into()));
        for (size, count) in &figure.joints {
            rows.push(Row::ours(
                format!("Joints, {}", size.name()),
                count.to_string(),
            ));
        }
        for (item, count) in &figure.fittings {
            let name = item.kind.called(item.turn, item.street);
            let label = format!("{} {name}", item.size.by(item.other));
            rows.push(Row::ours(
                super::pipe_rows::capital(&label),
                count.to_string(),
            ));
        }
        if let Some(solder) = figure.solder {
            rows.push(Row::Figure {
                label: "Solder wire of 1/8 in".into(),
                detail: format!("{} of it goes into the joints", self.show(solder.wire)),
                value: self.show(solder.to_buy),
                command: None,
            });
        }
        if let Some((cement, primer)) = figure.cement {
            rows.push(Row::ours("Cement", self.amount(cement)));
            if ask.pipe.family() != crate::handbook::pipe::Family::AbsDrain {
                rows.push(Row::ours("Primer", self.amount(primer)));
            }
        }
        if let Some(cure) = figure.cure {
            rows.push(Row::Figure {
                label: "Wait before the test".into(),
                detail: format!(
                    "the longest published; the label governs. {}",
                    words::cite(&cure.cite)
                ),
                value: self.amount(Amount::Hours(cure.hours)),
                command: None,
            });
        }
        rows.extend(self.hanger_rows(ask, figure));
        if let Some(grows) = figure.grows {
            rows.push(Row::ours("Its longest leg grows by", self.show(grows)));
        }
        for (leg, offset) in &figure.offsets {
            let rolled = if offset.rolled > crate::measure::Angle::ZERO {
                format!(", rolled {:.1}° from its set", offset.rolled.in_degrees())
            } else {
                String::new()
            };
            rows.push(Row::Figure {
                label: format!("Leg {}, travel", leg + 1),
                detail: format!("comes forward {} meanwhile{rolled}", self.show(offset.run)),
                value: self.show(offset.travel),
                command: None,
            });
        }
        if figure.template.is_some() {
            rows.push(Row::button(
                "The strip to mark a cut by",
                Command::Go(Here::Strip(at)),
            ));
        }
        rows
    }

    /// Hangers, how far they may be apart, and where that stands.
    fn hanger_rows(&self, ask: &pipe::Ask, figure: &Figure) -> Vec<Row> {
        let legs = (0..ask.legs.len()).rev();
        let apart = legs
            .map(|leg| ask.size_of(leg))
            .find_map(|size| support(ask.pipe, size));
        let Some((apart, hangers)) = apart.zip(figure.hangers) else {
            return vec![Row::Text(
                "How far apart hangers of threaded steel are was not looked up: ask your code."
                    .into(),
            )];
        };
        let mut rows = vec![Row::Figure {
            label: "Hangers".into(),
            detail: format!(
                "level at most {} apart ({}), upright {} ({})",
                self.show(apart.level.value),
                words::cite(&apart.level.cite),
                self.show(apart.upright.value),
                words::cite(&apart.upright.cite)
            ),
            value: hangers.to_string(),
            command: None,
        }];
        for leg in 0..ask.legs.len() {
            let here = figure.held_at.iter().filter(|hanger| hanger.leg == leg);
            let at: Vec<String> = here.map(|hanger| self.show(hanger.at)).collect();
            if !at.is_empty() {
                rows.push(Row::Figure {
                    label: format!("Leg {}, hangers at", leg + 1),
                    detail: "from where the leg begins; the last one beside its fitting".into(),
                    value: at.join(", "),
                    command: None,
                });
            }
        }
        rows
    }

    /// The order of work; what joins stays shut until everything was fitted dry.
    fn order_rows(&self, figure: &Figure) -> Vec<Row> {
        let mut rows = vec![Row::Heading("In this order".into())];
        let shown = figure
            .order
            .iter()
            .filter(|step| figure.fits() || !step.joins);
        for (number, step) in shown.enumerate() {
            rows.push(Row::Text(format!(
                "{}. {}",
                number + 1,
                self.job.units.phrase(&step.does, Figures::Set)
            )));
        }
        if !figure.fits() {
            rows.push(Row::Note {
                tone: Tone::Caution,
                text: format!(
                    "Joining and testing open once every piece is ticked as fitted dry: {} of {}.",
                    figure.dry.0, figure.dry.1
                ),
                detail: words::cite(&pipe::DRY),
                mend: None,
            });
        }
        rows
    }

    fn swing_rows(&self, figure: &Figure) -> Vec<Row> {
        let words = ["Right or left", "Into the wall or out", "Up or down"];
        let axes = figure
            .swing
            .worst
            .axes()
            .into_iter()
            .zip(figure.swing.likely.axes());
        let mut rows: Vec<Row> = words
            .into_iter()
            .zip(axes)
            .filter(|(_, (worst, _))| worst.is_positive())
            .map(|(word, (worst, likely))| Row::Figure {
                label: word.into(),
                detail: format!("{} where cuts are off by chance", self.at_most(likely)),
                value: format!("± {}", self.at_most(worst)),
                command: None,
            })
            .collect();
        if let Some(end) = figure.places.last().copied().flatten() {
            let place = pipe_words::place(end, self.job.units);
            if !place.is_empty() {
                rows.push(Row::ours("It ends", place));
            }
        }
        rows
    }

    /// A small length, never rounded to nothing.
    fn at_most(&self, length: Length) -> String {
        let units = match self.job.units {
            crate::measure::Units::FeetInches { .. } => {
                crate::measure::Units::FeetInches { marks: 32 }
            }
            other => other,
        };
        units.length(length, Rounding::Cover, Figures::Set)
    }

    /// The strip of a run: as it lies flat, and its ordinates.
    pub(super) fn strip_page(&self, at: usize) -> Screen {
        let base = Screen {
            crumb: self.task_name(at),
            title: "Strip round the pipe".into(),
            back: Some(Here::Task(at)),
            ..Screen::default()
        };
        let Some((template, figure)) = self.strip_of(at) else {
            return base;
        };
        let mut rows = vec![Row::Text(
            "Wrap it round the pipe until its ends meet, its edge level with itself, and mark along the blue line. The packet has it as a sheet that prints at its own size; check the bar on it with your tape.".into(),
        )];
        // Only what is said of the strip.
        let about = Account {
            findings: figure
                .account
                .findings
                .iter()
                .filter(|finding| finding.says.text.contains("strip"))
                .cloned()
                .collect(),
            ..Account::default()
        };
        rows.extend(self.notes(&about));
        rows.push(Row::ours("Round the pipe", self.show(template.around)));
        rows.push(Row::ours(
            "A quarter round",
            self.show(template.around.divided(4)),
        ));
        rows.push(Row::Figure {
            label: "Cut back".into(),
            detail: words::cite(&pipe::CUT_BACK),
            value: self.show(template.cut_back),
            command: None,
        });
        if template.ordinates.iter().all(|(_, up)| *up == Length::ZERO) {
            rows.push(Row::Text(
                "A square cut: the blue line is level all the way round.".into(),
            ));
        } else {
            rows.push(Row::Heading(
                "Along the strip, and from its shortest line to the cut".into(),
            ));
            for (station, (along, up)) in template.ordinates.iter().enumerate() {
                rows.push(Row::ours(
                    format!("{}: {}", station + 1, self.show(*along)),
                    self.show(*up),
                ));
            }
        }
        Screen {
            picture: Some(strip(&template, self.job.units).map_tags(|()| Command::Back)),
            rows,
            ..base
        }
    }

    fn strip_of(&self, at: usize) -> Option<(pipe::Template, Figure)> {
        let figure = pipe::figure(self.pipe_ask(at)?).ok()?;
        Some((figure.template.clone()?, figure))
    }

    /// The strip as a file that prints at its own size.
    pub(super) fn strip_file(&self, at: usize) -> Option<String> {
        let (template, _) = self.strip_of(at)?;
        Some(strip_sheet(&template, self.job.units))
    }
}
