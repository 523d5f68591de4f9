//! What sheets ask for: the surface, the board, how it lies, what carries it, what it is cut out for.

use super::{App, Chip, Choice, Command, Kind, Row, Slot, StudsOf, ThingField};
use crate::geometry::Region;
use crate::measure::quantity::{in_kilograms, in_pounds, kilograms, pounds};
use crate::measure::{Amount, Figures, Length, Rounding};
use crate::site::Studs;
use crate::takeoff::{Ask, Job, TileOn};
use crate::trades::sheets::{self, Begin, Board, Framing, Surface, Thing, ThingShape, Way};

/// A field of sheets that the pad fills in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SheetsSlot {
    /// Width of a surface by hand.
    Width,
    /// Its length or height.
    Height,
    /// A sheet's long side.
    Long,
    /// Its short side.
    Short,
    /// Its thickness.
    Thickness,
    /// Between sheets.
    Gap,
    /// At walls.
    Edge,
    /// Over the floor.
    OffFloor,
    /// Between ends of neighbouring courses.
    Stagger,
    /// Between screws along edges.
    EdgeScrews,
    /// Between screws inside.
    FieldScrews,
    /// The saw's cut.
    Kerf,
    /// Sheets spoiled, in per cent.
    Waste,
    /// What a sheet weighs.
    Weight,
    /// The first stud or joist.
    First,
    /// From one to the next.
    Spacing,
    /// A measure of something cut out for, counted from 0.
    Thing(usize, ThingField),
    /// What is left free round it.
    Clear(usize),
}

/// A choice of sheets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SheetsChoice {
    /// What is laid, with what is usual for it.
    Board(Board),
    /// A size of sheet, long and short.
    Size(Length, Length),
    /// A thickness.
    Thick(Length),
    /// Which way the long side runs.
    Way(Way),
    /// Where the first sheet lies.
    Begin(Begin),
    /// A floor, a wall or a ceiling.
    On(Surface),
    /// No framing, upright, or across.
    Framing(Option<bool>),
    /// Joints land on it.
    Land(bool),
    /// Off-cuts serve again.
    Reuse(bool),
    /// They may be turned by a quarter.
    Quarter(bool),
    /// One more thing cut out for, round or not.
    AddThing(bool),
    /// One fewer.
    RemoveThing(usize),
    /// By the table again, not by the label.
    NoWeight,
}

/// What a field is called on the pad and in its row.
pub(super) fn asks(slot: SheetsSlot) -> &'static str {
    match slot {
        SheetsSlot::Width => "Width of the surface",
        SheetsSlot::Height => "Length or height of the surface",
        SheetsSlot::Long => "Sheet, long side",
        SheetsSlot::Short => "Sheet, short side",
        SheetsSlot::Thickness => "Thickness",
        SheetsSlot::Gap => "Gap between sheets",
        SheetsSlot::Edge => "Gap at walls and openings",
        SheetsSlot::OffFloor => "Off the floor",
        SheetsSlot::Stagger => "Ends of courses apart, at least",
        SheetsSlot::EdgeScrews => "Screws along edges, at most apart",
        SheetsSlot::FieldScrews => "Screws inside, at most apart",
        SheetsSlot::Kerf => "Saw cut; nothing where it is snapped",
        SheetsSlot::Waste => "Sheets spoiled",
        SheetsSlot::Weight => "A sheet weighs, by its label",
        SheetsSlot::First => "Corner to the centre of the first",
        SheetsSlot::Spacing => "From centre to centre",
        SheetsSlot::Thing(_, ThingField::Width) => "Cut out for: its width, or across",
        SheetsSlot::Thing(_, ThingField::Height) => "Cut out for: its height",
        SheetsSlot::Thing(_, ThingField::Left) => "From the left to its centre",
        SheetsSlot::Thing(_, ThingField::Top) => "From the top to its centre",
        SheetsSlot::Clear(_) => "Left free all round it",
    }
}

/// Whether nothing is a figure there.
pub(super) fn may_be_nothing(slot: SheetsSlot) -> bool {
    matches!(
        slot,
        SheetsSlot::Gap
            | SheetsSlot::Edge
            | SheetsSlot::OffFloor
            | SheetsSlot::Stagger
            | SheetsSlot::Kerf
            | SheetsSlot::First
            | SheetsSlot::Clear(_)
            | SheetsSlot::Thing(_, ThingField::Left | ThingField::Top)
    )
}

/// A board by its name.
pub(super) fn board_name(board: Board) -> &'static str {
    match board {
        Board::Gypsum => "Gypsum board",
        Board::Cement => "Cement board",
        Board::Plywood => "Plywood",
    }
}

/// The field of a thing that a slot names.
fn of_thing(thing: &mut Thing, field: ThingField) -> Option<&mut Length> {
    Some(match (field, &mut thing.shape) {
        (ThingField::Left, _) => &mut thing.from_left,
        (ThingField::Top, _) => &mut thing.from_top,
        (ThingField::Width, ThingShape::Round { across }) => across,
        (ThingField::Width, ThingShape::Rectangle { width, .. }) => width,
        (ThingField::Height, ThingShape::Rectangle { height, .. }) => height,
        (ThingField::Height, ThingShape::Round { .. }) => return None,
    })
}

/// The length that a slot names; `None` where it names none, or one that is not there.
fn length_of(ask: &mut sheets::Ask, slot: SheetsSlot) -> Option<&mut Length> {
    Some(match slot {
        SheetsSlot::Long => &mut ask.sheet.0,
        SheetsSlot::Short => &mut ask.sheet.1,
        SheetsSlot::Thickness => &mut ask.thickness,
        SheetsSlot::Gap => &mut ask.gap,
        SheetsSlot::Edge => &mut ask.edge,
        SheetsSlot::OffFloor => &mut ask.off_floor,
        SheetsSlot::Stagger => &mut ask.stagger,
        SheetsSlot::EdgeScrews => &mut ask.screws.0,
        SheetsSlot::FieldScrews => &mut ask.screws.1,
        SheetsSlot::Kerf => &mut ask.kerf,
        SheetsSlot::First | SheetsSlot::Spacing => match &mut ask.framing.as_mut()?.studs {
            Studs::Spaced { first, .. } if slot == SheetsSlot::First => first,
            Studs::Spaced { spacing, .. } => spacing,
            Studs::Found { .. } => return None,
        },
        SheetsSlot::Thing(n, field) => of_thing(ask.things.get_mut(n)?, field)?,
        SheetsSlot::Clear(n) => &mut ask.things.get_mut(n)?.clear,
        SheetsSlot::Width | SheetsSlot::Height | SheetsSlot::Waste | SheetsSlot::Weight => {
            return None;
        }
    })
}

fn ask_of(job: &mut Job, task: usize) -> Option<&mut sheets::Ask> {
    match &mut job.tasks.get_mut(task)?.ask {
        Ask::Sheets(ask, _) => Some(ask),
        _ => None,
    }
}

/// A length into a field of sheets.
pub(super) fn fill_length(job: &mut Job, task: usize, slot: SheetsSlot, length: Length) {
    let Some(ask) = ask_of(job, task) else { return };
    let size = ask.surface.bounds().map(|(least, most)| most - least);
    let (wide, high) = size.map_or((length, length), |size| (size.x, size.y));
    match slot {
        SheetsSlot::Width => ask.surface = Region::rectangle(length, high),
        SheetsSlot::Height => ask.surface = Region::rectangle(wide, length),
        slot => {
            if let Some(field) = length_of(ask, slot) {
                *field = length;
            }
        }
    }
}

/// A number into a field of sheets, or why it cannot stand there.
pub(super) fn fill_number(
    job: &mut Job,
    task: usize,
    slot: SheetsSlot,
    number: f64,
    metric: bool,
) -> Result<(), String> {
    let Some(ask) = ask_of(job, task) else {
        return Ok(());
    };
    match slot {
        SheetsSlot::Waste if number > 100.0 => {
            return Err("At most 100 % of the sheets are spoiled.".into());
        }
        SheetsSlot::Waste => ask.waste = number / 100.0,
        SheetsSlot::Weight if number <= 0.0 => {
            return Err("A sheet weighs more than nothing: see its label.".into());
        }
        SheetsSlot::Weight => {
            ask.weight = Some(if metric {
                kilograms(number)
            } else {
                pounds(number)
            });
        }
        _ => {}
    }
    Ok(())
}

/// A choice of sheets.
pub(super) fn choose(ask: &mut sheets::Ask, choice: SheetsChoice) {
    match choice {
        SheetsChoice::Board(board) => *ask = ask.clone().of(board),
        SheetsChoice::Size(long, short) => ask.sheet = (long, short),
        SheetsChoice::Thick(thickness) => ask.thickness = thickness,
        SheetsChoice::Way(way) => ask.way = way,
        SheetsChoice::Begin(begin) => ask.begin = begin,
        SheetsChoice::On(on) => {
            ask.on = on;
            *ask = ask.clone().of(ask.board);
        }
        SheetsChoice::Framing(upright) => {
            ask.framing = upright.map(|upright| usual_framing(upright, true));
        }
        SheetsChoice::Land(land) => match &mut ask.framing {
            Some(framing) => framing.land = land,
            // Of a room's wall the studs are its own; what is kept is whether joints land on them.
            framing => *framing = Some(usual_framing(true, land)),
        },
        SheetsChoice::Reuse(reuse) => ask.reuse = reuse,
        SheetsChoice::Quarter(quarter) => ask.quarter = quarter,
        SheetsChoice::AddThing(round) => ask.things.push(Thing {
            kind: None,
            shape: if round {
                ThingShape::Round {
                    across: Length::inches(4),
                }
            } else {
                ThingShape::Rectangle {
                    width: Length::inches(3),
                    height: Length::inches(4),
                }
            },
            from_left: Length::inches(12),
            from_top: Length::inches(12),
            clear: Length::in_64(0, 8),
        }),
        SheetsChoice::RemoveThing(n) if n < ask.things.len() => {
            ask.things.remove(n);
        }
        SheetsChoice::RemoveThing(_) => {}
        SheetsChoice::NoWeight => ask.weight = None,
    }
}

fn usual_framing(upright: bool, land: bool) -> Framing {
    Framing {
        upright,
        studs: Studs::Spaced {
            first: Length::inches(16),
            spacing: Length::inches(16),
            face: Length::in_64(1, 32),
        },
        land,
    }
}

impl App {
    /// What a field of sheets reads, and what stands there.
    pub(super) fn sheets_stands(&self, task: usize, slot: SheetsSlot) -> (Kind, String) {
        let units = self.job.units;
        let Some((ask, _)) = self.sheets_stored(task) else {
            return (Kind::Length, String::new());
        };
        let rounded = |n: f64| ((n * 100.0).round() / 100.0).to_string();
        match slot {
            SheetsSlot::Waste => return (Kind::Number("%"), rounded(ask.waste * 100.0)),
            SheetsSlot::Weight if units.is_metric() => {
                let kg = ask.weight.map(|w| rounded(in_kilograms(w)));
                return (Kind::Number("kg"), kg.unwrap_or_default());
            }
            SheetsSlot::Weight => {
                let lb = ask.weight.map(|w| rounded(in_pounds(w)));
                return (Kind::Number("lb"), lb.unwrap_or_default());
            }
            _ => {}
        }
        let size = ask.surface.bounds().map(|(least, most)| most - least);
        let length = match slot {
            SheetsSlot::Width => size.map(|size| size.x),
            SheetsSlot::Height => size.map(|size| size.y),
            slot => length_of(&mut ask.clone(), slot).copied(),
        };
        let plain = length.map(|l| units.length(l, Rounding::Nearest, Figures::Plain));
        (Kind::Length, plain.unwrap_or_default())
    }

    /// The rows in which sheets are asked for.
    pub(super) fn sheets_inputs(&self, at: usize, stored: &sheets::Ask, on: TileOn) -> Vec<Row> {
        let set = |choice| Command::Set(at, Choice::Sheets(choice));
        let pick = |label: &str, chips: Vec<(String, bool, SheetsChoice)>| {
            let chips = chips.into_iter();
            Row::choice(
                label,
                chips.map(|(word, on, choice)| Chip::new(word, on, set(choice))),
            )
        };
        let row = |slot: SheetsSlot, length: Length| {
            let command = Command::Pad(Slot::Sheets(at, slot));
            Row::yours(asks(slot), self.show(length), command)
        };
        let mut rows = Vec::new();
        if on == TileOn::Own {
            let size = stored.surface.bounds().map(|(least, most)| most - least);
            let (wide, high) = size.map_or_else(Default::default, |size| (size.x, size.y));
            rows.push(row(SheetsSlot::Width, wide));
            rows.push(row(SheetsSlot::Height, high));
        }
        let surfaces: &[(Surface, &str)] = match on {
            TileOn::Own => &[
                (Surface::Floor, "Floor"),
                (Surface::Wall, "Wall"),
                (Surface::Ceiling, "Ceiling"),
            ],
            TileOn::Floor => &[(Surface::Floor, "Floor"), (Surface::Ceiling, "Ceiling")],
            TileOn::Wall(_) => &[],
        };
        if !surfaces.is_empty() {
            let chips = surfaces.iter().map(|(surface, word)| {
                (
                    (*word).to_owned(),
                    *surface == stored.on,
                    SheetsChoice::On(*surface),
                )
            });
            rows.push(pick("It is a", chips.collect()));
        }
        rows.push(pick(
            "Board",
            [Board::Cement, Board::Gypsum, Board::Plywood]
                .map(|board| {
                    (
                        board_name(board).to_owned(),
                        board == stored.board,
                        SheetsChoice::Board(board),
                    )
                })
                .to_vec(),
        ));
        let feet = |long, short| (Length::feet(long), Length::feet(short));
        let metric = (Length::mm(2400), Length::mm(1200));
        let sizes = [feet(5, 3), feet(8, 4), feet(10, 4), feet(12, 4), metric].map(|size| {
            let word = format!("{} × {}", self.show(size.1), self.show(size.0));
            (
                word,
                stored.sheet == size,
                SheetsChoice::Size(size.0, size.1),
            )
        });
        rows.push(pick("Size of a sheet", sizes.to_vec()));
        rows.push(row(SheetsSlot::Long, stored.sheet.0));
        rows.push(row(SheetsSlot::Short, stored.sheet.1));
        rows.push(row(SheetsSlot::Thickness, stored.thickness));
        let ways = [
            (Way::Across, "From left to right"),
            (Way::Up, "Up and down"),
        ];
        rows.push(pick(
            "Its long side runs",
            ways.map(|(way, word)| (word.to_owned(), way == stored.way, SheetsChoice::Way(way)))
                .to_vec(),
        ));
        let corners = [
            (false, false, "Top left"),
            (true, false, "Top right"),
            (false, true, "Bottom left"),
            (true, true, "Bottom right"),
        ]
        .map(|(right, bottom, word)| {
            let begin = Begin { right, bottom };
            (
                word.to_owned(),
                begin == stored.begin,
                SheetsChoice::Begin(begin),
            )
        });
        rows.push(pick("The first sheet lies", corners.to_vec()));
        rows.push(row(SheetsSlot::Gap, stored.gap));
        rows.push(row(SheetsSlot::Edge, stored.edge));
        if stored.on == Surface::Wall || matches!(on, TileOn::Wall(_)) {
            rows.push(row(SheetsSlot::OffFloor, stored.off_floor));
        }
        rows.push(row(SheetsSlot::Stagger, stored.stagger));
        rows.extend(self.sheets_framing(at, stored, on));
        rows.extend(self.sheets_things(at, stored));
        rows.push(Row::Heading("Screws and off-cuts".into()));
        rows.push(row(SheetsSlot::EdgeScrews, stored.screws.0));
        rows.push(row(SheetsSlot::FieldScrews, stored.screws.1));
        rows.push(row(SheetsSlot::Kerf, stored.kerf));
        let yes_no = |label: &str, now: bool, choice: fn(bool) -> SheetsChoice| {
            let words = [(true, "Yes"), (false, "No")];
            let chips = words.map(|(yes, word)| (word.to_owned(), yes == now, choice(yes)));
            pick(label, chips.to_vec())
        };
        rows.push(yes_no(
            "Off-cuts serve again",
            stored.reuse,
            SheetsChoice::Reuse,
        ));
        rows.push(yes_no(
            "An off-cut may be turned by a quarter",
            stored.quarter,
            SheetsChoice::Quarter,
        ));
        rows.push(Row::yours(
            asks(SheetsSlot::Waste),
            self.amount(Amount::Share(stored.waste)),
            Command::Pad(Slot::Sheets(at, SheetsSlot::Waste)),
        ));
        let weight = stored.weight.map(|weight| self.amount(weight));
        rows.push(Row::yours(
            asks(SheetsSlot::Weight),
            weight.unwrap_or_else(|| "not read".into()),
            Command::Pad(Slot::Sheets(at, SheetsSlot::Weight)),
        ));
        if stored.weight.is_some() {
            rows.push(Row::button(
                "Back to the usual weight",
                set(SheetsChoice::NoWeight),
            ));
        }
        rows
    }

    /// What carries the sheets: a wall's own studs, or joists and studs by hand.
    fn sheets_framing(&self, at: usize, stored: &sheets::Ask, on: TileOn) -> Vec<Row> {
        let set = |choice| Command::Set(at, Choice::Sheets(choice));
        let mut rows = vec![Row::Heading("What carries it".into())];
        let land = stored.framing.as_ref().is_none_or(|framing| framing.land);
        if let (TileOn::Wall(wall), Some(room)) = (on, self.job.tasks[at].room) {
            rows.extend(self.stud_rows(StudsOf::Wall(room, wall)));
        } else {
            let now = stored.framing.as_ref().map(|framing| framing.upright);
            let ways = [
                (None, "Not known"),
                (Some(true), "Up and down"),
                (Some(false), "Across"),
            ];
            rows.push(Row::choice(
                "Studs or joists run",
                ways.map(|(way, word)| {
                    Chip::new(word, way == now, set(SheetsChoice::Framing(way)))
                }),
            ));
            for slot in [SheetsSlot::First, SheetsSlot::Spacing] {
                if let Some(length) = length_of(&mut stored.clone(), slot) {
                    rows.push(Row::yours(
                        asks(slot),
                        self.show(*length),
                        Command::Pad(Slot::Sheets(at, slot)),
                    ));
                }
            }
            if now.is_none() {
                return rows;
            }
        }
        rows.push(Row::choice(
            "Joints land on it",
            [(true, "Yes"), (false, "No")]
                .map(|(yes, word)| Chip::new(word, yes == land, set(SheetsChoice::Land(yes)))),
        ));
        rows
    }

    /// What board is cut out for, beyond what the room knows.
    fn sheets_things(&self, at: usize, stored: &sheets::Ask) -> Vec<Row> {
        let set = |choice| Command::Set(at, Choice::Sheets(choice));
        let mut rows = vec![Row::Heading("Cut out for".into())];
        let whole = self.sheets_ask(at);
        let of_room = whole
            .iter()
            .flat_map(|ask| &ask.things)
            .skip(stored.things.len());
        for thing in of_room {
            let name = thing.kind.map_or("Fixed point", |kind| kind.name());
            rows.push(Row::Figure {
                label: name.to_owned(),
                detail: format!(
                    "of the room: from the left {}, from the top {}",
                    self.show(thing.from_left),
                    self.show(thing.from_top)
                ),
                value: self.thing_size(thing.hole()),
                command: None,
            });
        }
        for (n, thing) in stored.things.iter().enumerate() {
            let mut field = |field, length: Length| {
                let slot = SheetsSlot::Thing(n, field);
                rows.push(Row::yours(
                    format!("No. {}: {}", n + 1, asks(slot).to_lowercase()),
                    self.show(length),
                    Command::Pad(Slot::Sheets(at, slot)),
                ));
            };
            match thing.shape {
                ThingShape::Round { across } => field(ThingField::Width, across),
                ThingShape::Rectangle { width, height } => {
                    field(ThingField::Width, width);
                    field(ThingField::Height, height);
                }
            }
            field(ThingField::Left, thing.from_left);
            field(ThingField::Top, thing.from_top);
            rows.push(Row::yours(
                format!("No. {}: left free all round it", n + 1),
                self.show(thing.clear),
                Command::Pad(Slot::Sheets(at, SheetsSlot::Clear(n))),
            ));
        }
        rows.push(Row::choice(
            "One more",
            [
                Chip::new(
                    "Round: drain, stub, valve",
                    false,
                    set(SheetsChoice::AddThing(true)),
                ),
                Chip::new("Box", false, set(SheetsChoice::AddThing(false))),
            ],
        ));
        if !stored.things.is_empty() {
            rows.push(Row::choice(
                "Take away",
                (0..stored.things.len()).map(|n| {
                    let label = format!("No. {}", n + 1);
                    Chip::new(label, false, set(SheetsChoice::RemoveThing(n)))
                }),
            ));
        }
        rows
    }

    /// The size of a hole, in words.
    pub(super) fn thing_size(&self, shape: ThingShape) -> String {
        match shape {
            ThingShape::Round { across } => format!("{} across", self.show(across)),
            ThingShape::Rectangle { width, height } => self.amount(Amount::Size(width, height)),
        }
    }
}
