//! The screen of sheets, and each piece by itself as it is marked.

use super::mix_page::big;
use super::{App, Chip, Command, Here, Row, Screen, SheetsSlot, Slot, Tone, sheets_inputs};
use crate::drawing::{SheetsTag, piece_sketch, sheets_sketch};
use crate::measure::{Amount, plain};
use crate::packet::{Cell, csv};
use crate::site::Wall;
use crate::takeoff::TileOn;
use crate::trades::sheets::{
    Ask, Cut, CutWay, Field, Figure, Hole, Piece, Problem, Surface, ThingShape,
};

/// Sheets, counted in words.
pub(super) fn counted(count: usize) -> String {
    format!("{count} sheet{}", if count == 1 { "" } else { "s" })
}

/// The field of the pad that a figure of the ask is.
fn slot_of(field: Field) -> SheetsSlot {
    use super::ThingField::Width;
    match field {
        Field::Long => SheetsSlot::Long,
        Field::Short => SheetsSlot::Short,
        Field::Thickness => SheetsSlot::Thickness,
        Field::Gap => SheetsSlot::Gap,
        Field::Edge => SheetsSlot::Edge,
        Field::OffFloor => SheetsSlot::OffFloor,
        Field::Stagger => SheetsSlot::Stagger,
        Field::EdgeScrews => SheetsSlot::EdgeScrews,
        Field::FieldScrews => SheetsSlot::FieldScrews,
        Field::Kerf => SheetsSlot::Kerf,
        Field::Thing(n) => SheetsSlot::Thing(n, Width),
        Field::Clear(n) => SheetsSlot::Clear(n),
    }
}

impl App {
    /// The screen of sheets.
    pub(super) fn sheets_page(&self, at: usize) -> Screen {
        let Some((stored, on)) = self.sheets_stored(at) else {
            return self.bench_page();
        };
        let task = &self.job.tasks[at];
        let room = task.room.and_then(|room| self.job.rooms.get(room));
        let base = Screen {
            crumb: match (room, on, stored.on) {
                (Some(room), TileOn::Wall(wall), _) => {
                    format!("Wall {}, {}", Wall::named(wall), room.name)
                }
                (Some(room), TileOn::Floor, Surface::Ceiling) => format!("Ceiling, {}", room.name),
                (Some(room), TileOn::Floor, _) => format!("Floor, {}", room.name),
                _ => "Quick, no room".to_owned(),
            },
            title: "Sheets".into(),
            back: Some(Here::Bench),
            ..Screen::default()
        };
        let Some(ask) = self.sheets_ask(at) else {
            let mut rows = vec![Row::Note {
                tone: Tone::Caution,
                text: "The room is not measured far enough: this surface needs its walls, its height and its openings.".into(),
                detail: String::new(),
                mend: task.room.map(|room| Chip::new("Measure the room", false, Command::Go(Here::Room(room)))),
            }];
            rows.extend(self.task_rows(at));
            return Screen { rows, ..base };
        };
        let figured = self.sheets_figure(&ask);
        let own = on == TileOn::Own;
        let picture = sheets_sketch(&ask, figured.as_ref().as_ref().ok(), own, self.job.units)
            .map_tags(|tag| match tag {
                SheetsTag::Width => Command::Pad(Slot::Sheets(at, SheetsSlot::Width)),
                SheetsTag::Height => Command::Pad(Slot::Sheets(at, SheetsSlot::Height)),
                SheetsTag::Piece(n) => Command::Go(Here::Piece(at, n)),
            });
        let mut rows = Vec::new();
        let (mut strip, mut main) = (Vec::new(), None);
        match figured.as_ref() {
            Err(problem) => rows.push(self.sheets_problem(at, &ask, problem)),
            Ok(figure) => {
                main = Some(self.list_button(at));
                strip = vec![
                    big(figure.to_buy.to_string(), "sheets"),
                    big(
                        figure.pieces.len().to_string(),
                        &format!("pieces, {} cut", figure.pieces.len() - figure.whole),
                    ),
                    big(figure.screws.to_string(), "screws"),
                    big(self.amount(Amount::Share(figure.left_over)), "left over"),
                ];
                // What can hurt stands right under the result, before its details.
                rows.extend(self.near_hidden(at));
                rows.extend(self.warnings(&figure.account));
                rows.extend(self.outline_notes(at));
            }
        }
        rows.extend(self.sheets_inputs(at, stored, on));
        if let Ok(figure) = figured.as_ref() {
            rows.extend(self.remarks(&figure.account));
            rows.extend(self.sheets_results(at, &ask, figure));
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

    fn sheets_problem(&self, at: usize, ask: &Ask, problem: &Problem) -> Row {
        let change = |slot| {
            let command = Command::Pad(Slot::Sheets(at, slot));
            Some(Chip::new("Change it", false, command))
        };
        let (text, mend) = match problem {
            Problem::Beyond { field, least, most } => (
                format!(
                    "“{}” is out of range: it has to be from {} to {}.",
                    sheets_inputs::asks(slot_of(*field)),
                    self.show(*least),
                    self.show(*most)
                ),
                change(slot_of(*field)),
            ),
            Problem::SidesExchanged => (
                format!(
                    "The long side, {}, is shorter than the short one, {}. Exchange them; which way it runs is chosen apart.",
                    self.show(ask.sheet.0),
                    self.show(ask.sheet.1)
                ),
                change(SheetsSlot::Long),
            ),
            Problem::Crosses(..) => (
                "The outline of this surface crosses itself: an opening reaches past an edge or over another. Measure them again.".to_owned(),
                None,
            ),
            Problem::Outside(n) => (
                format!(
                    "No. {} that board is cut out for lies off the surface. Measure it again from the left and from the top.",
                    n + 1
                ),
                change(SheetsSlot::Thing(*n, super::ThingField::Left)),
            ),
            Problem::NothingLeft => (
                "The gaps leave nothing to cover. Make them smaller, or measure the surface again.".to_owned(),
                change(SheetsSlot::Edge),
            ),
            Problem::TooMany { about, most } => (
                format!(
                    "This would be about {about:.0} sheets, and {most} are laid out at most. Take a larger sheet, or one room at a time."
                ),
                change(SheetsSlot::Long),
            ),
            Problem::NoFraming => (
                "Joints are to land on studs, but none stands here. Say where they are, or let joints fall where they come.".to_owned(),
                None,
            ),
            Problem::NoSuchWaste => (
                "Spoiled sheets are from 0 to 100 %.".to_owned(),
                change(SheetsSlot::Waste),
            ),
            Problem::NoSuchWeight => (
                "A sheet weighs more than nothing and less than a tonne: read its label again.".to_owned(),
                change(SheetsSlot::Weight),
            ),
        };
        Row::Note {
            tone: Tone::Stop,
            text,
            detail: String::new(),
            mend,
        }
    }

    fn sheets_results(&self, at: usize, ask: &Ask, figure: &Figure) -> Vec<Row> {
        let fewer = figure.taken - figure.at_least.min(figure.taken);
        let mut rows = vec![
            Row::Heading("Counts".into()),
            Row::ours("Covered", self.amount(figure.covered)),
            Row::ours("Sheets laid whole", figure.whole.to_string()),
            Row::Figure {
                label: "Sheets taken, off-cuts used again".into(),
                detail: match (ask.reuse, fewer) {
                    (false, _) => "off-cuts are thrown away".into(),
                    (true, 0) => "fewest possible".into(),
                    (true, n) => format!("at most {n} fewer may do"),
                },
                value: figure.taken.to_string(),
                command: None,
            },
            Row::ours(
                "Sheets, each piece from its own",
                figure.without_reuse.to_string(),
            ),
            Row::ours("Joints to tape", self.show(figure.joints)),
        ];
        if let Some((from, to)) = figure.weight {
            let weighs = if from == to {
                Amount::Mass(from)
            } else {
                Amount::range(Amount::Mass(from), Amount::Mass(to))
            };
            rows.push(Row::ours("A sheet weighs", self.amount(weighs)));
        }
        if let Some((number, thin)) = figure.narrowest {
            rows.push(Row::ours(
                format!("Narrowest, no. {number}"),
                self.show(thin),
            ));
        }
        rows.push(Row::Heading("Pieces in the order of laying".into()));
        for (n, piece) in figure.pieces.iter().enumerate() {
            rows.push(Row::Figure {
                label: format!("No. {}, from sheet {}", piece.number, piece.sheet + 1),
                detail: self.piece_detail(piece),
                value: self.amount(Amount::Size(piece.size.0, piece.size.1)),
                command: Some(Command::Go(Here::Piece(at, n))),
            });
        }
        rows
    }

    /// What is cut of a piece, in few words.
    fn piece_detail(&self, piece: &Piece) -> String {
        if piece.whole {
            return "whole".into();
        }
        let tapers = piece.cuts.iter().map(Cut::taper).max();
        let mut says = vec![match piece.cuts.len() {
            1 => "1 cut".to_owned(),
            n => format!("{n} cuts"),
        }];
        if let Some(taper) = tapers.filter(|taper| *taper >= crate::measure::Length::SIXTY_FOURTH) {
            says.push(format!("tapers by {}", self.show(taper)));
        }
        match piece.holes.len() {
            0 => {}
            1 => says.push("1 hole".into()),
            n => says.push(format!("{n} holes")),
        }
        says.join(", ")
    }

    /// One piece by itself: what is marked on its sheet, and on to the next.
    pub(super) fn piece_page(&self, at: usize, n: usize) -> Screen {
        let base = Screen {
            crumb: self.task_name(at),
            back: Some(Here::Task(at)),
            ..Screen::default()
        };
        let ask = self.sheets_ask(at);
        let figured = ask.as_ref().map(|ask| self.sheets_figure(ask));
        let (Some(ask), Some(Ok(figure))) = (&ask, figured.as_deref()) else {
            return Screen {
                title: "A piece".into(),
                rows: vec![Row::Text(
                    "There is no layout now: go back and see what is wrong.".into(),
                )],
                ..base
            };
        };
        let count = figure.pieces.len();
        let n = n.min(count.saturating_sub(1));
        let Some(piece) = figure.pieces.get(n) else {
            return base;
        };
        let next = Command::Go(Here::Piece(at, (n + 1) % count));
        let picture = piece_sketch(ask, piece, self.job.units).map_tags(|()| next.clone());
        let size = Amount::Size(piece.size.0, piece.size.1);
        let mut rows = vec![
            Row::ours("Its box", self.amount(size)),
            Row::Figure {
                label: format!("From sheet {}", piece.sheet + 1),
                detail: if piece.whole {
                    "as it comes".into()
                } else if piece.turned {
                    "turned by a quarter, clockwise".into()
                } else {
                    "as it lies; its box begins so far from the left and from the top".into()
                },
                value: format!(
                    "{}, {}",
                    self.show(piece.on_sheet.x),
                    self.show(piece.on_sheet.y)
                ),
                command: None,
            },
        ];
        if !piece.cuts.is_empty() {
            rows.push(Row::Heading("Lines to mark on the face, and cut".into()));
        }
        rows.extend(piece.cuts.iter().map(|cut| self.cut_row(cut)));
        if !piece.holes.is_empty() {
            rows.push(Row::Heading(
                "Holes, from the left and the top of its box".into(),
            ));
        }
        rows.extend(piece.holes.iter().map(|hole| self.hole_row(hole)));
        rows.push(Row::Heading("Corners, clockwise".into()));
        // The chords of a round notch say nothing to a saw.
        let plain_outline = piece.corners.len() <= 24;
        if plain_outline {
            for (number, (x, y)) in (1..).zip(&piece.corners) {
                rows.push(Row::ours(
                    format!("Corner {number}"),
                    format!("{}, {}", self.show(*x), self.show(*y)),
                ));
            }
        } else {
            rows.push(Row::Text(
                "Part of its edge is round: mark the hole by its centre, as above.".into(),
            ));
        }
        rows.push(Row::Text(
            "Seen on the face that shows. Marked on the back, left and right change places.".into(),
        ));
        Screen {
            title: format!("No. {} of {count}", piece.number),
            picture: Some(picture),
            rows,
            main: Some(Chip::new("Next piece", false, next)),
            ..base
        }
    }

    fn cut_row(&self, cut: &Cut) -> Row {
        let (a, b) = cut.measures();
        let (a, b) = (self.show(a), self.show(b));
        // What is the same at both ends is said once.
        let ends = |one: &str, other: &str| {
            if a == b {
                a.clone()
            } else {
                format!("{a} at its {one}, {b} at its {other}")
            }
        };
        let span =
            |from, to, way: &str| format!("from {} to {} {way}", self.show(from), self.show(to));
        let (label, detail, value) = match cut.way {
            CutWay::Upright => (
                "From the left edge",
                span(cut.from.1, cut.to.1, "down"),
                ends("top", "bottom"),
            ),
            CutWay::Level => (
                "From the top edge",
                span(cut.from.0, cut.to.0, "across"),
                ends("left", "right"),
            ),
        };
        Row::Figure {
            label: label.into(),
            detail,
            value,
            command: None,
        }
    }

    fn hole_row(&self, hole: &Hole) -> Row {
        let name = match (hole.kind, hole.thing) {
            (Some(kind), _) => kind.name().to_owned(),
            (None, Some(n)) => format!("No. {} cut out for", n + 1),
            (None, None) => "Opening".into(),
        };
        let to = match hole.shape {
            ThingShape::Round { .. } => "its centre",
            ThingShape::Rectangle { .. } => "its left and top edge",
        };
        Row::Figure {
            label: name,
            detail: format!("{}; to {to}", self.thing_size(hole.shape)),
            value: format!(
                "{}, {}",
                self.show(hole.from_left),
                self.show(hole.from_top)
            ),
            command: None,
        }
    }

    /// The pieces that are cut, each by its place and its number.
    pub(super) fn pieces_of(&self, at: usize) -> impl Iterator<Item = (usize, usize)> + use<> {
        let figured = self.sheets_ask(at).map(|ask| self.sheets_figure(&ask));
        let cut: Vec<(usize, usize)> = match figured.as_deref() {
            Some(Ok(figure)) => (figure.pieces.iter().enumerate())
                .filter(|(_, piece)| !piece.whole)
                .map(|(n, piece)| (n, piece.number))
                .collect(),
            _ => Vec::new(),
        };
        cut.into_iter()
    }

    /// The pieces of a figure in sheets as a table; `None` where it is none.
    pub(super) fn pieces_csv(&self, at: usize) -> Option<String> {
        let ask = self.sheets_ask(at)?;
        let figured = self.sheets_figure(&ask);
        let figure = figured.as_ref().as_ref().ok()?;
        let cell = |text: String| Cell::Ours(plain(&text));
        let mut rows = vec![
            [
                "Piece", "Sheet", "Across", "Down", "Corners", "Cuts", "Holes",
            ]
            .map(|head| cell(head.to_owned()))
            .to_vec(),
        ];
        for piece in &figure.pieces {
            let pair = |(x, y): &(crate::measure::Length, crate::measure::Length)| {
                format!("{}, {}", self.show(*x), self.show(*y))
            };
            let corners: Vec<String> = piece.corners.iter().map(pair).collect();
            let words = |row: Row| match row {
                Row::Figure {
                    label,
                    detail,
                    value,
                    ..
                } => format!("{label} {value} ({detail})"),
                _ => String::new(),
            };
            let cuts: Vec<String> = piece.cuts.iter().map(|c| words(self.cut_row(c))).collect();
            let holes: Vec<String> = piece
                .holes
                .iter()
                .map(|h| words(self.hole_row(h)))
                .collect();
            rows.push(vec![
                cell(piece.number.to_string()),
                cell((piece.sheet + 1).to_string()),
                cell(self.show(piece.size.0)),
                cell(self.show(piece.size.1)),
                cell(corners.join("; ")),
                cell(cuts.join("; ")),
                cell(holes.join("; ")),
            ]);
        }
        Some(csv(&rows))
    }
}
