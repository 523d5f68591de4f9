//! What trim asks for: the profile, how it meets, what it goes round, sticks, nails and caulk.

use super::{App, Chip, Choice, Command, CutChoice, Kind, Row, Slot};
use crate::handbook::trim as book;
use crate::measure::{Figures, Length, Rounding};
use crate::site;
use crate::takeoff::{Ask, Job, Setup, TrimOn};
use crate::trades::trim::{self, Corner, Frame, Head, Inside, Opening};

/// A field of trim that the pad fills in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TrimSlot {
    /// What the profile is called.
    Name,
    /// A figure of the ask.
    Field(trim::Field),
    /// How many of a piece by hand, counted from 0.
    PieceCount(usize),
    /// How many of a frame by hand.
    FrameCount(usize),
}

/// A choice of trim.
#[derive(Clone, Debug, PartialEq)]
pub enum TrimChoice {
    /// Base or casing.
    Kind(trim::Kind),
    /// How inside corners meet.
    Inside(Inside),
    /// Walked against the clock.
    Backward(bool),
    /// How casing meets at the head.
    Head(Head),
    /// Doors, windows or other openings are cased.
    Cased(usize, bool),
    /// Windows on four sides, in a room.
    Four(bool),
    /// Base runs along tiled walls.
    Tiled(bool),
    /// Base stops at a fixture.
    Stops(site::Id, bool),
    /// One more piece by hand.
    AddPiece,
    /// One fewer.
    RemovePiece(usize),
    /// How an end of it meets.
    End(usize, usize, Corner),
    /// One more frame by hand.
    AddFrame(Opening),
    /// One fewer.
    RemoveFrame(usize),
    /// A window by hand on four sides.
    FourSides(usize, bool),
    /// A bead of caulk, or none.
    Caulk(bool),
    /// Old trim comes off first.
    Old(bool),
}

/// New trim: base knows the casing of its room, casing the reveal that base keeps.
pub(super) fn begun(job: &Job, room: Option<usize>, kind: trim::Kind) -> trim::Ask {
    let mut ask = usual(kind, job.units.is_metric());
    let others = job
        .tasks
        .iter()
        .filter(|task| task.room == room && room.is_some());
    for task in others {
        match &task.ask {
            Ask::Trim(other, _) if other.kind != kind => {
                ask.reveal = other.reveal;
                match kind {
                    trim::Kind::Base => ask.casing = other.width,
                    trim::Kind::Casing => ask.width = other.casing,
                }
            }
            _ => {}
        }
    }
    ask
}

/// Trim as is usual; in millimetres where the job is metric.
fn usual(kind: trim::Kind, metric: bool) -> trim::Ask {
    let ask = match kind {
        trim::Kind::Base => trim::Ask::default(),
        trim::Kind::Casing => trim::Ask::casing(),
    };
    if !metric {
        return ask;
    }
    let mm = Length::mm;
    let (listed, frame) = (ask.pieces[0], ask.frames[0]);
    trim::Ask {
        thickness: mm(12),
        width: mm(if kind == trim::Kind::Base { 90 } else { 60 }),
        casing: mm(60),
        reveal: mm(5),
        board: mm(12),
        nails: mm(400),
        caulk: Some(mm(3)),
        pieces: vec![trim::Listed {
            length: mm(2_400),
            ..listed
        }],
        frames: vec![Frame {
            width: mm(760),
            height: mm(2_030),
            ..frame
        }],
        ..ask
    }
}

/// What a field is called on the pad and in its row.
pub(super) fn asks(slot: TrimSlot) -> String {
    use trim::Field;
    match slot {
        TrimSlot::Name => "What the profile is called".into(),
        TrimSlot::Field(field) => match field {
            Field::Thickness => "Thickness, as measured".into(),
            Field::Width => "Width, as measured".into(),
            Field::Casing => "Casing at doors is wide".into(),
            Field::Reveal => "Reveal, jamb to casing".into(),
            Field::Board => "Board behind it".into(),
            Field::Nails => "Nails, at most apart".into(),
            Field::Bead => "Bead of caulk".into(),
            Field::Piece(n) => format!("Row {}, along the wall", n + 1),
            Field::FrameWidth(n) => format!("Opening {}, jamb to jamb", n + 1),
            Field::FrameHeight(n) => format!("Opening {}, floor or sill to head jamb", n + 1),
        },
        TrimSlot::PieceCount(n) => format!("Row {}, how many", n + 1),
        TrimSlot::FrameCount(n) => format!("Opening {}, how many", n + 1),
    }
}

/// Whether nothing is a figure there.
pub(super) fn may_be_nothing(slot: TrimSlot) -> bool {
    use trim::Field;
    matches!(
        slot,
        TrimSlot::Field(Field::Casing | Field::Reveal | Field::Board)
    )
}

/// The length that a field names.
fn length_of(ask: &mut trim::Ask, field: trim::Field) -> Option<&mut Length> {
    use trim::Field;
    Some(match field {
        Field::Thickness => &mut ask.thickness,
        Field::Width => &mut ask.width,
        Field::Casing => &mut ask.casing,
        Field::Reveal => &mut ask.reveal,
        Field::Board => &mut ask.board,
        Field::Nails => &mut ask.nails,
        Field::Bead => ask.caulk.as_mut()?,
        Field::Piece(n) => &mut ask.pieces.get_mut(n)?.length,
        Field::FrameWidth(n) => &mut ask.frames.get_mut(n)?.width,
        Field::FrameHeight(n) => &mut ask.frames.get_mut(n)?.height,
    })
}

/// Changes an ask; the sticks that were chosen for its profile go along when the profile is said better.
fn change(job: &mut Job, task: usize, to: impl FnOnce(&mut trim::Ask, &mut TrimOn)) {
    let Some(Ask::Trim(ask, on)) = job.tasks.get_mut(task).map(|task| &mut task.ask) else {
        return;
    };
    let before = ask.material();
    to(ask, on);
    let now = ask.material();
    if before == now {
        return;
    }
    let used = |task: &crate::takeoff::Task| matches!(&task.ask, Ask::Trim(ask, _) if ask.material() == before);
    let cutting = &mut job.buying.cutting;
    if let Some(setup) = cutting.get(&before).cloned() {
        cutting.entry(now).or_insert(setup);
        if !job.tasks.iter().any(used) {
            cutting.remove(&before);
        }
    }
}

/// A length into a field of trim.
pub(super) fn fill_length(job: &mut Job, task: usize, slot: TrimSlot, length: Length) {
    if let TrimSlot::Field(field) = slot {
        change(job, task, |ask, _| {
            if let Some(place) = length_of(ask, field) {
                *place = length;
            }
        });
    }
}

/// A count into a field of trim, or why it cannot stand there.
pub(super) fn fill_count(
    job: &mut Job,
    task: usize,
    slot: TrimSlot,
    count: u32,
) -> Result<(), String> {
    if !(1..=200).contains(&count) {
        return Err("From 1 to 200; or take the row away.".into());
    }
    change(job, task, |ask, _| match slot {
        TrimSlot::PieceCount(n) => {
            if let Some(piece) = ask.pieces.get_mut(n) {
                piece.count = count;
            }
        }
        TrimSlot::FrameCount(n) => {
            if let Some(frame) = ask.frames.get_mut(n) {
                frame.count = count;
            }
        }
        TrimSlot::Name | TrimSlot::Field(_) => {}
    });
    Ok(())
}

/// A name for the profile.
pub(super) fn fill_words(job: &mut Job, task: usize, text: String) {
    change(job, task, |ask, _| ask.name = text);
}

/// A choice of trim.
pub(super) fn choose(job: &mut Job, task: usize, choice: TrimChoice) {
    let metric = job.units.is_metric();
    change(job, task, |ask, on| match choice {
        TrimChoice::Kind(kind) => {
            let (was, now) = (usual(ask.kind, metric), usual(kind, metric));
            // What was not said of the profile is as is usual for the other kind.
            if ask.name == was.name {
                ask.name = now.name;
            }
            if (ask.thickness, ask.width) == (was.thickness, was.width) {
                (ask.thickness, ask.width) = (now.thickness, now.width);
            }
            ask.kind = kind;
        }
        TrimChoice::Inside(inside) => ask.inside = inside,
        TrimChoice::Backward(backward) => ask.backward = backward,
        TrimChoice::Head(head) => ask.head = head,
        TrimChoice::Cased(of, yes) => {
            if let Some(cased) = on.cased.get_mut(of) {
                *cased = yes;
            }
        }
        TrimChoice::Four(four) => on.four = four,
        TrimChoice::Tiled(tiled) => on.tiled = tiled,
        TrimChoice::Stops(id, stops) => {
            on.stops.retain(|(of, _)| *of != id);
            on.stops.push((id, stops));
        }
        TrimChoice::AddPiece => {
            let last = ask.pieces.last().copied();
            ask.pieces.push(last.unwrap_or_default());
        }
        TrimChoice::RemovePiece(n) if n < ask.pieces.len() => {
            ask.pieces.remove(n);
        }
        TrimChoice::End(n, side, corner) => {
            let piece = ask.pieces.get_mut(n);
            if let Some(end) = piece.and_then(|piece| piece.ends.get_mut(side)) {
                *end = corner;
            }
        }
        TrimChoice::AddFrame(opening) => ask.frames.push(match opening {
            Opening::Door => Frame::default(),
            Opening::Window => Frame {
                opening,
                width: Length::inches(24),
                height: Length::inches(36),
                four: true,
                ..Frame::default()
            },
        }),
        TrimChoice::RemoveFrame(n) if n < ask.frames.len() => {
            ask.frames.remove(n);
        }
        TrimChoice::FourSides(n, four) => {
            if let Some(frame) = ask.frames.get_mut(n) {
                frame.four = four;
            }
        }
        TrimChoice::Caulk(yes) => ask.caulk = yes.then_some(book::BEAD.value),
        TrimChoice::Old(old) => ask.old = old,
        TrimChoice::RemovePiece(_) | TrimChoice::RemoveFrame(_) => {}
    });
}

impl App {
    /// What a field of trim reads, and what stands there.
    pub(super) fn trim_stands(&self, task: usize, slot: TrimSlot) -> (Kind, String) {
        let Some((ask, _)) = self.trim_stored(task) else {
            return (Kind::Length, String::new());
        };
        let count = |count: Option<u32>| {
            let text = count.map_or_else(String::new, |count| count.to_string());
            (Kind::Number(""), text)
        };
        match slot {
            TrimSlot::Name => (Kind::Words, ask.name.clone()),
            TrimSlot::PieceCount(n) => count(ask.pieces.get(n).map(|piece| piece.count)),
            TrimSlot::FrameCount(n) => count(ask.frames.get(n).map(|frame| frame.count)),
            TrimSlot::Field(field) => {
                let length = length_of(&mut ask.clone(), field).copied();
                let units = self.job.units;
                let plain = length.map(|l| units.length(l, Rounding::Nearest, Figures::Plain));
                (Kind::Length, plain.unwrap_or_default())
            }
        }
    }

    /// The rows in which trim is asked for.
    pub(super) fn trim_inputs(&self, at: usize, ask: &trim::Ask, on: &TrimOn) -> Vec<Row> {
        let row = |field: trim::Field, length: Length| {
            let slot = TrimSlot::Field(field);
            Row::yours(
                asks(slot),
                self.show(length),
                Command::Pad(Slot::Trim(at, slot)),
            )
        };
        let mut rows = vec![
            one_of(
                at,
                "It is",
                [
                    ("Base along the floor", TrimChoice::Kind(trim::Kind::Base)),
                    ("Casing", TrimChoice::Kind(trim::Kind::Casing)),
                ],
                usize::from(ask.kind == trim::Kind::Casing),
            ),
            Row::yours(
                asks(TrimSlot::Name),
                if ask.name.is_empty() {
                    "no name"
                } else {
                    &ask.name
                },
                Command::Pad(Slot::Trim(at, TrimSlot::Name)),
            ),
            row(trim::Field::Thickness, ask.thickness),
            row(trim::Field::Width, ask.width),
        ];
        rows.extend(match ask.kind {
            trim::Kind::Base => self.base_inputs(at, ask, on),
            trim::Kind::Casing => self.casing_inputs(at, ask, on),
        });
        rows.push(Row::Heading("Sticks, nails, caulk".into()));
        rows.push(self.stick_choice(ask));
        rows.push(row(trim::Field::Board, ask.board));
        rows.push(row(trim::Field::Nails, ask.nails));
        rows.push(one_of(
            at,
            "Caulk at the wall",
            [
                ("Yes", TrimChoice::Caulk(true)),
                ("No", TrimChoice::Caulk(false)),
            ],
            usize::from(ask.caulk.is_none()),
        ));
        if let Some(bead) = ask.caulk {
            rows.push(row(trim::Field::Bead, bead));
        }
        rows.push(one_of(
            at,
            "Old trim comes off first",
            [
                ("No", TrimChoice::Old(false)),
                ("Yes", TrimChoice::Old(true)),
            ],
            usize::from(ask.old),
        ));
        rows
    }

    /// The sticks that its profile is sold in, as the cutting plan has them.
    fn stick_choice(&self, ask: &trim::Ask) -> Row {
        let material = ask.material();
        let Setup { sticks, .. } = self.setup(&material);
        let mut lengths: Vec<Length> = self.usual_lengths().to_vec();
        lengths.extend(&sticks);
        lengths.sort_unstable();
        lengths.dedup();
        Row::choice(
            "Sticks on sale, one or several",
            lengths.into_iter().map(|length| {
                let command = Command::Cut(material.clone(), CutChoice::Stick(length));
                Chip::new(self.show(length), sticks.contains(&length), command)
            }),
        )
    }

    fn base_inputs(&self, at: usize, ask: &trim::Ask, on: &TrimOn) -> Vec<Row> {
        let row = |slot: TrimSlot, value: String| {
            Row::yours(asks(slot), value, Command::Pad(Slot::Trim(at, slot)))
        };
        let field = |field, length| row(TrimSlot::Field(field), self.show(length));
        let mut rows = vec![one_of(
            at,
            "Inside corners",
            [
                ("Coped", TrimChoice::Inside(Inside::Coped)),
                ("Mitred", TrimChoice::Inside(Inside::Mitred)),
            ],
            usize::from(ask.inside == Inside::Mitred),
        )];
        if let Some((number, room)) = self.trim_room(at) {
            rows.push(one_of(
                at,
                "Go round the room",
                [
                    ("To the right", TrimChoice::Backward(false)),
                    ("To the left", TrimChoice::Backward(true)),
                ],
                usize::from(ask.backward),
            ));
            rows.push(field(trim::Field::Casing, ask.casing));
            rows.push(field(trim::Field::Reveal, ask.reveal));
            rows.extend(self.stop_rows(at, (number, room), on));
            return rows;
        }
        rows.push(Row::Heading(
            "Pieces, by their length along the wall".into(),
        ));
        for (n, piece) in ask.pieces.iter().enumerate() {
            rows.push(field(trim::Field::Piece(n), piece.length));
            rows.push(row(TrimSlot::PieceCount(n), piece.count.to_string()));
            for (side, word) in [(0, "left"), (1, "right")] {
                let ends = [
                    (Corner::Square, "Square"),
                    (Corner::Inside, "Inside corner"),
                    (Corner::Outside, "Outside corner"),
                ];
                let chips = ends.map(|(corner, word)| {
                    let choice = Choice::Trim(TrimChoice::End(n, side, corner));
                    Chip::new(word, piece.ends[side] == corner, Command::Set(at, choice))
                });
                rows.push(Row::choice(format!("Row {}, {word} end", n + 1), chips));
            }
        }
        rows.push(Row::button(
            "One more row",
            Command::Set(at, Choice::Trim(TrimChoice::AddPiece)),
        ));
        rows.extend(take_away(
            at,
            "Row",
            ask.pieces.len(),
            TrimChoice::RemovePiece,
        ));
        rows
    }

    /// What stands in the room, and whether base stops at it.
    fn stop_rows(&self, at: usize, (_, room): (usize, &site::Room), on: &TrimOn) -> Vec<Row> {
        let mut rows = Vec::new();
        let tile = (room.walls.iter()).any(|wall| wall.finish == site::Finish::Tile);
        if tile {
            rows.push(one_of(
                at,
                "Walls that get tile",
                [
                    ("No base there", TrimChoice::Tiled(false)),
                    ("Base as well", TrimChoice::Tiled(true)),
                ],
                usize::from(on.tiled),
            ));
        }
        let against = site::shape(room).map(|shape| site::against(room, &shape));
        let against = against.unwrap_or_default();
        for (n, fixture) in room.fixtures.iter().enumerate() {
            let stands = against.iter().any(|one| one.fixture == n);
            if !stands {
                if on.stops_at(fixture) {
                    rows.push(Row::Text(format!(
                        "{} in wall {}: not placed yet, or not against a wall. Base runs on behind it.",
                        fixture.kind.name(),
                        site::Wall::named(fixture.wall)
                    )));
                }
                continue;
            }
            rows.push(one_of(
                at,
                &format!(
                    "{}, wall {}",
                    fixture.kind.name(),
                    site::Wall::named(fixture.wall)
                ),
                [
                    ("Base stops at it", TrimChoice::Stops(fixture.id, true)),
                    ("Runs on behind", TrimChoice::Stops(fixture.id, false)),
                ],
                usize::from(!on.stops_at(fixture)),
            ));
        }
        rows
    }

    fn casing_inputs(&self, at: usize, ask: &trim::Ask, on: &TrimOn) -> Vec<Row> {
        let row = |slot: TrimSlot, value: String| {
            Row::yours(asks(slot), value, Command::Pad(Slot::Trim(at, slot)))
        };
        let field = |field, length| row(TrimSlot::Field(field), self.show(length));
        let mut rows = vec![
            field(trim::Field::Reveal, ask.reveal),
            one_of(
                at,
                "The head is",
                [
                    ("Mitred", TrimChoice::Head(Head::Mitred)),
                    ("On the legs, square", TrimChoice::Head(Head::Butted)),
                ],
                usize::from(ask.head == Head::Butted),
            ),
        ];
        let sides = [(true, "Four sides"), (false, "Three sides")];
        if self.trim_room(at).is_some() {
            for (of, word) in ["Doors", "Windows", "Other openings"]
                .into_iter()
                .enumerate()
            {
                rows.push(one_of(
                    at,
                    word,
                    [
                        ("Cased", TrimChoice::Cased(of, true)),
                        ("Not", TrimChoice::Cased(of, false)),
                    ],
                    usize::from(!on.cased[of]),
                ));
            }
            rows.push(one_of(
                at,
                "A window is cased on",
                sides.map(|(four, word)| (word, TrimChoice::Four(four))),
                usize::from(!on.four),
            ));
            return rows;
        }
        rows.push(Row::Heading("Openings, jamb to jamb".into()));
        for (n, frame) in ask.frames.iter().enumerate() {
            rows.push(field(trim::Field::FrameWidth(n), frame.width));
            rows.push(field(trim::Field::FrameHeight(n), frame.height));
            rows.push(row(TrimSlot::FrameCount(n), frame.count.to_string()));
            if frame.opening == Opening::Window {
                rows.push(one_of(
                    at,
                    &format!("Opening {}, a window", n + 1),
                    sides.map(|(four, word)| (word, TrimChoice::FourSides(n, four))),
                    usize::from(!frame.four),
                ));
            }
        }
        let add = |opening| Command::Set(at, Choice::Trim(TrimChoice::AddFrame(opening)));
        rows.push(Row::choice(
            "One more",
            [
                Chip::new("Door", false, add(Opening::Door)),
                Chip::new("Window", false, add(Opening::Window)),
            ],
        ));
        rows.extend(take_away(
            at,
            "Opening",
            ask.frames.len(),
            TrimChoice::RemoveFrame,
        ));
        rows
    }
}

/// One of several choices, the one that stands by its place.
fn one_of<const N: usize>(
    at: usize,
    label: &str,
    choices: [(&str, TrimChoice); N],
    now: usize,
) -> Row {
    let chips = choices.into_iter().enumerate().map(|(n, (word, choice))| {
        Chip::new(word, n == now, Command::Set(at, Choice::Trim(choice)))
    });
    Row::choice(label, chips)
}

/// The rows by hand that can be taken away.
fn take_away(at: usize, what: &str, count: usize, choice: fn(usize) -> TrimChoice) -> Option<Row> {
    let chips = (0..count).map(|n| {
        let label = format!("{what} {}", n + 1);
        Chip::new(label, false, Command::Set(at, Choice::Trim(choice(n))))
    });
    (count > 1).then(|| Row::choice("Take away", chips))
}
