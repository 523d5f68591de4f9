//! The screen of trim: its plan, its pieces, each with its two cuts.

use super::mix_page::big;
use super::survey_page::plan_command;
use super::trim_ask::cased;
use super::{App, Chip, Command, Here, Row, Screen, Slot, Tone, TrimSlot, trim_inputs};
use crate::drawing::{TrimTag, base_by_hand, base_on_plan, casing_sketch};
use crate::measure::{Amount, Angle, Figures, plain};
use crate::packet::{Cell, csv};
use crate::site::{Id, Wall};
use crate::takeoff::{self, TrimOn};
use crate::trades::trim::{self, Cut, End, Field, Figure, Kind, Of, Part, Piece, Problem};

/// Pieces, counted in words.
pub(super) fn counted(count: usize) -> String {
    format!("{count} piece{}", if count == 1 { "" } else { "s" })
}

/// What a figure of trim is called.
pub(super) fn trim_name(ask: &trim::Ask) -> &'static str {
    match ask.kind {
        Kind::Base => "Base",
        Kind::Casing => "Casing",
    }
}

/// An angle to a tenth of a degree, as a saw is set.
fn set(angle: Angle) -> String {
    let tenths = (angle.in_degrees() * 10.0).round() / 10.0;
    Angle::from_degrees(tenths).map_or_else(String::new, |angle| angle.show(Figures::Set))
}

impl App {
    /// The screen of trim.
    pub(super) fn trim_page(&self, at: usize, stored: &trim::Ask, on: &TrimOn) -> Screen {
        let room = self.trim_room(at);
        let base = Screen {
            crumb: room.map_or_else(
                || "Quick, no room".to_owned(),
                |(_, room)| room.name.clone(),
            ),
            title: trim_name(stored).into(),
            back: Some(Here::Bench),
            ..Screen::default()
        };
        let (mut rows, mut strip, mut main) = (Vec::new(), Vec::new(), None);
        let (mut ask, mut figured) = (stored.clone(), None);
        match self.trim_ask(at) {
            Some(Ok(asked)) => {
                match trim::figure(&asked) {
                    Ok(figure) => {
                        main = Some(self.list_button(at));
                        strip = self.trim_strip(&asked, &figure);
                        rows.extend(self.warnings(&figure.account));
                        figured = Some(figure);
                    }
                    Err(problem) => rows.push(self.trim_problem(at, &asked, &problem)),
                }
                ask = asked;
            }
            Some(Err((text, there))) => rows.push(Row::Note {
                tone: Tone::Caution,
                text,
                detail: String::new(),
                mend: Some(Chip::new("Measure it", false, Command::Go(there))),
            }),
            None => return self.bench_page(),
        }
        let units = self.job.units;
        let pad = |field| Command::Pad(Slot::Trim(at, TrimSlot::Field(field)));
        let picture = match (stored.kind, room) {
            (Kind::Base, Some((_, room))) => base_on_plan(room, &ask, figured.as_ref(), units),
            (Kind::Base, None) => base_by_hand(&ask, figured.as_ref(), units),
            (Kind::Casing, _) => casing_sketch(&ask, figured.as_ref(), units),
        };
        // Of a room an opening is measured where it is.
        let opening = |n: usize| {
            let (number, room) = room?;
            Some((number, *cased(room, on).get(n)?))
        };
        let picture = picture.map_tags(|tag| match (tag, room) {
            (TrimTag::Piece(n), _) => pad(Field::Piece(n)),
            (TrimTag::FrameWidth(n), _) => opening(n).map_or_else(
                || pad(Field::FrameWidth(n)),
                |(room, n)| Command::Pad(Slot::OpeningWidth(room, n)),
            ),
            (TrimTag::FrameHeight(n), _) => opening(n).map_or_else(
                || pad(Field::FrameHeight(n)),
                |(room, n)| Command::Pad(Slot::OpeningHeight(room, n)),
            ),
            (TrimTag::Plan(tag), Some((number, room))) => plan_command(number, room, tag),
            (TrimTag::Plan(_), None) => Command::Go(Here::Task(at)),
        });
        rows.extend(self.trim_inputs(at, stored, on));
        if let Some(figure) = &figured {
            rows.extend(self.remarks(&figure.account));
            rows.extend(self.trim_results(at, &ask, figure));
        }
        rows.extend(self.lay_rows(at));
        rows.extend(self.task_rows(at));
        Screen {
            picture: Some(picture),
            rows,
            strip,
            main,
            ..base
        }
    }

    fn trim_strip(&self, ask: &trim::Ask, figure: &Figure) -> Vec<super::Big> {
        let count = figure.pieces.len();
        let mut strip = vec![big(
            count.to_string(),
            if count == 1 { "piece" } else { "pieces" },
        )];
        // Of this figure alone; the cutting plan takes all figures together.
        let pieces: Vec<takeoff::Piece> = (figure.pieces.iter())
            .map(|piece| takeoff::Piece {
                material: ask.material(),
                length: piece.long(),
                of: Id::NONE,
                number: piece.number,
            })
            .collect();
        let plan = takeoff::cutting(&pieces, &self.job.buying.cutting).pop();
        if let Some(cuts) = plan.filter(|cuts| !cuts.is_held()) {
            let label = match &cuts.bought[..] {
                [] => "sticks to buy: off-cuts do".to_owned(),
                [(length, 1)] => format!("stick of {}", self.show(*length)),
                [(length, _)] => format!("sticks of {}", self.show(*length)),
                _ => "sticks, as the cutting plan has them".to_owned(),
            };
            strip.push(big(cuts.count().to_string(), &label));
        }
        strip.push(big(self.show(figure.total), "in all"));
        strip
    }

    fn trim_problem(&self, at: usize, ask: &trim::Ask, problem: &Problem) -> Row {
        let change = |field| {
            let command = Command::Pad(Slot::Trim(at, TrimSlot::Field(field)));
            Some(Chip::new("Change it", false, command))
        };
        let (text, mend) = match *problem {
            Problem::Beyond { field, least, most } => (
                format!(
                    "“{}” is out of range: it has to be from {} to {}.",
                    trim_inputs::asks(TrimSlot::Field(field)),
                    self.show(least),
                    self.show(most)
                ),
                change(field),
            ),
            Problem::Nothing => match (ask.kind, self.trim_room(at)) {
                (Kind::Base, Some((number, _))) => (
                    "Doors and fixtures leave no wall for base. Say below where it runs on, or measure them again.".to_owned(),
                    Some(Chip::new("Look at the room", false, Command::Go(Here::Room(number)))),
                ),
                (Kind::Casing, Some((number, _))) => (
                    "There is no opening to case in this room. Add a door or a window to a wall, or say below which are cased.".to_owned(),
                    Some(Chip::new("Look at the room", false, Command::Go(Here::Room(number)))),
                ),
                (_, None) => ("Nothing is listed yet: add a row below.".to_owned(), None),
            },
            Problem::TooMany { most } => (
                format!("More than {most} pieces are not listed at once. Make two figures of it."),
                None,
            ),
            Problem::TooSharp { wall, turn } => (
                format!(
                    "The corner at the right end of wall {} turns by {}: no two pieces of trim are mitred there. Measure it again.",
                    Wall::named(wall),
                    set(turn)
                ),
                self.trim_room(at)
                    .map(|(number, _)| Chip::new("Look at it", false, Command::Go(Here::Wall(number, wall)))),
            ),
            Problem::StickTooShort { stick, least } => (
                format!(
                    "The longest stick is {}. Choose one of {} at least, so that what is joined reaches two studs.",
                    self.show(stick),
                    self.show(least)
                ),
                None,
            ),
        };
        Row::Note {
            tone: Tone::Stop,
            text,
            detail: String::new(),
            mend,
        }
    }

    fn trim_results(&self, at: usize, ask: &trim::Ask, figure: &Figure) -> Vec<Row> {
        let mut rows = vec![Row::Heading("Pieces in the order of work".into())];
        rows.push(Row::Text(
            match ask.kind {
                Kind::Base => "The large figure is what comes off the stick, from long point to long point. “Wall” is along the wall, “front” along the face that shows.",
                Kind::Casing => "The large figure is what comes off the stick, from long point to long point. “Inner” is along the edge at the opening, “outer” along the other one.",
            }
            .into(),
        ));
        for piece in &figure.pieces {
            rows.push(Row::Figure {
                label: format!("No. {}, {}", piece.number, self.piece_place(ask, piece)),
                detail: self.trim_piece_detail(ask.kind, piece),
                value: self.show(piece.long()),
                command: None,
            });
        }
        rows.push(Row::Heading("With it".into()));
        rows.push(Row::ours(
            match ask.kind {
                Kind::Base => "Along the walls",
                Kind::Casing => "Along the openings",
            },
            self.show(figure.run),
        ));
        if ask.walls.is_some() && ask.kind == Kind::Base {
            rows.push(Row::ours("Walls without base", self.show(figure.open)));
        }
        rows.push(Row::ours(
            format!("Finishing nails of {}", self.show(figure.nail)),
            figure.nails.to_string(),
        ));
        if let Some(caulk) = figure.caulk {
            rows.push(Row::ours("Caulk", self.amount(caulk)));
        }
        if self.job.tasks.get(at).is_some_and(|task| task.on_list) {
            let here = Here::Cutting(Some(ask.material()));
            rows.push(Row::button("See how the sticks are cut", Command::Go(here)));
        }
        rows
    }

    /// Where a piece goes.
    fn piece_place(&self, ask: &trim::Ask, piece: &Piece) -> String {
        match piece.of {
            Of::Wall(wall, from, to) => format!(
                "wall {}, {} to {}",
                Wall::named(wall),
                self.show(from),
                self.show(to)
            ),
            Of::Hand(n) => format!("row {}", n + 1),
            Of::Frame(n, part) => {
                let part = match part {
                    Part::Left => "left leg",
                    Part::Head => "head",
                    Part::Right => "right leg",
                    Part::Foot => "foot",
                };
                let wall = ask.frames.get(n).and_then(|frame| frame.on);
                match wall {
                    Some((wall, _)) => {
                        format!("opening {} in wall {}, {part}", n + 1, Wall::named(wall))
                    }
                    None => format!("opening {}, {part}", n + 1),
                }
            }
        }
    }

    /// Its lengths along both sides, and its two cuts.
    fn trim_piece_detail(&self, kind: Kind, piece: &Piece) -> String {
        let (back, front) = match kind {
            Kind::Base => ("wall", "front"),
            Kind::Casing => ("inner", "outer"),
        };
        let upright = matches!(piece.of, Of::Frame(_, Part::Left | Part::Right));
        let (first, second) = if upright {
            ("below", "above")
        } else {
            ("left", "right")
        };
        let lengths = if piece.back == piece.face() {
            String::new()
        } else {
            format!(
                "{back} {}, {front} {}; ",
                self.show(piece.back),
                self.show(piece.face())
            )
        };
        format!(
            "{lengths}{first} {}; {second} {}",
            end_words(&piece.ends[0]),
            end_words(&piece.ends[1])
        )
    }

    /// The pieces of a figure of trim as a table; `None` where it is none.
    pub(super) fn trim_csv(&self, at: usize) -> Option<String> {
        let ask = self.trim_ask(at)?.ok()?;
        let figure = self.trim_figure(at)?;
        let cell = |text: String| Cell::Ours(plain(&text));
        let head = [
            "Piece",
            "Where",
            "From the stick",
            "Along the wall or the inner edge",
            "In front or along the outer edge",
            "Left or lower end",
            "Right or upper end",
        ];
        let mut rows = vec![head.map(|head| cell(head.to_owned())).to_vec()];
        for piece in &figure.pieces {
            rows.push(
                [
                    format!("{} {}", trim_name(&ask), piece.number),
                    self.piece_place(&ask, piece),
                    self.show(piece.long()),
                    self.show(piece.back),
                    self.show(piece.face()),
                    end_words(&piece.ends[0]),
                    end_words(&piece.ends[1]),
                ]
                .map(cell)
                .to_vec(),
            );
        }
        let total = Amount::Length(figure.total);
        let mut last = vec![
            cell("In all".into()),
            cell(String::new()),
            cell(self.amount(total)),
        ];
        last.resize(head.len(), cell(String::new()));
        rows.push(last);
        Some(csv(&rows))
    }
}

/// How an end is cut, with what the saw shows.
fn end_words(end: &End) -> String {
    let saw = set(end.saw);
    match end.cut {
        Cut::Square => "square".into(),
        Cut::Coped => format!("coped, saw at {saw} first, long point at the wall"),
        Cut::Inside => format!("saw at {saw}, long point at the wall"),
        Cut::Outside => format!("saw at {saw}, short point at the wall"),
        Cut::ScarfUnder => format!("joined, saw at {saw}, long point at the wall"),
        Cut::ScarfOver => format!("joined, saw at {saw}, short point at the wall"),
        Cut::Face => format!("saw at {saw} across the face, long point outside"),
    }
}
