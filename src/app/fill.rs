//! The pad opens on a slot, and what it reads goes back into the job.

use super::{App, Command, Here, Kind, Pad, PaintSlot, Row, Slot, words};
use crate::measure::quantity::{
    in_square_feet_per_gallon, in_square_metres_per_litre, square_feet_per_gallon,
    square_metres_per_litre,
};
use crate::measure::{Angle, Figures, Length, Money, Rounding, read};
use crate::site::Studs;
use crate::takeoff::{Ask, HandLine, Job, LineKey, RollLine};

/// What the pad read.
enum Value {
    Length(Length),
    Number(f64),
    Price(Money),
    Words(String),
}

impl App {
    /// Opens the pad on a slot, with what stands there.
    pub(super) fn open_pad(&mut self, slot: Slot) {
        let (kind, stands) = self.stands(&slot);
        let asks = self.asks(&slot);
        self.said.clear();
        self.pad = Some(Pad::open(slot, asks, kind, stands));
    }

    /// The slots of this screen in measuring order: the order of its list.
    #[must_use]
    pub fn slots(&self) -> Vec<(Slot, bool)> {
        let rows = self.screen().rows;
        rows.into_iter()
            .filter_map(|row| match row {
                Row::Figure {
                    value,
                    command: Some(Command::Pad(slot)),
                    ..
                } => Some((slot, value == "?")),
                _ => None,
            })
            .collect()
    }

    /// The next slot, or the one before, without taking what is typed.
    pub fn step_pad(&mut self, forward: bool) {
        let slots = self.slots();
        let Some(pad) = &self.pad else { return };
        let Some(at) = slots.iter().position(|(slot, _)| *slot == pad.slot) else {
            return;
        };
        let next = if forward {
            (at + 1) % slots.len()
        } else {
            (at + slots.len() - 1) % slots.len()
        };
        self.open_pad(slots[next].0.clone());
    }

    /// How far along the slots of this screen the pad is: "2 of 6".
    #[must_use]
    pub fn pad_progress(&self) -> String {
        let slots = self.slots();
        let at = self
            .pad
            .as_ref()
            .and_then(|pad| slots.iter().position(|(slot, _)| *slot == pad.slot));
        at.map_or_else(String::new, |at| format!("{} of {}", at + 1, slots.len()))
    }

    /// Takes what is typed and goes on to the next slot that still asks, or closes the pad.
    pub fn take(&mut self) {
        let Some(pad) = self.pad.clone() else { return };
        let units = self.job.units;
        if pad.typed.trim().is_empty() && pad.kind != Kind::Words {
            self.pad = None;
            return;
        }
        let value = match pad.kind {
            Kind::Words => Ok(Value::Words(pad.typed.trim().to_owned())),
            Kind::Number(_) if matches!(pad.slot, Slot::Price(_)) => {
                read::money(&pad.typed).map(Value::Price)
            }
            Kind::Number(_) => read::number(&pad.typed).map(Value::Number),
            Kind::Length => read::length(&pad.typed, units).map(Value::Length),
        };
        let outcome = match value {
            Err(unreadable) => Err(words::unreadable(&unreadable, &pad.typed)),
            Ok(value) => self.fill(&pad.slot, value, &pad),
        };
        if let Err(wrong) = outcome {
            if let Some(open) = &mut self.pad {
                open.wrong = wrong;
            }
            return;
        }
        let slots = self.slots();
        let at = slots
            .iter()
            .position(|(slot, _)| *slot == pad.slot)
            .unwrap_or(0);
        let next = slots
            .iter()
            .cycle()
            .skip(at + 1)
            .take(slots.len())
            .find(|(_, asked)| *asked);
        match next {
            Some((slot, _)) if *slot != pad.slot => self.open_pad(slot.clone()),
            _ => self.pad = None,
        }
    }

    /// Puts a value where it belongs, or says why it cannot stand there.
    fn fill(&mut self, slot: &Slot, value: Value, pad: &Pad) -> Result<(), String> {
        match value {
            Value::Length(length) => {
                if !length.is_positive()
                    && !matches!(
                        slot,
                        Slot::OpeningFromLeft(..)
                            | Slot::OpeningSill(..)
                            | Slot::Roll
                            | Slot::Patch(..)
                    )
                {
                    return Err("This has to be more than nothing. Measure it again.".to_owned());
                }
                let line = RollLine {
                    label: pad.asks.clone(),
                    typed: pad.typed.clone(),
                    length,
                };
                let slot = slot.clone();
                match slot {
                    Slot::Square(side) => self.square[side] = Some(length),
                    Slot::Spacing(side) => self.spacing[side] = Some(length),
                    _ => self.edit("", |job| {
                        job.roll.push(line);
                        fill_length(job, &slot, length);
                    }),
                }
                Ok(())
            }
            Value::Number(number) => self.fill_number(slot, number),
            Value::Price(price) => {
                if let Slot::Price(key) = slot.clone() {
                    self.edit("", |job| {
                        job.buying.prices.insert(key, price);
                    });
                }
                Ok(())
            }
            Value::Words(text) => {
                if text.is_empty() {
                    return Err("Give it a name of at least one letter.".to_owned());
                }
                let slot = slot.clone();
                self.edit("", |job| fill_words(job, &slot, text));
                Ok(())
            }
        }
    }

    fn fill_number(&mut self, slot: &Slot, number: f64) -> Result<(), String> {
        if !(0.0..=100_000.0).contains(&number) {
            return Err("This number is out of range: give one from 0 to 100000.".to_owned());
        }
        let metric = self.job.units.is_metric();
        match slot.clone() {
            Slot::Packs(key) => self.edit("", |job| {
                job.buying.overrides.insert(key, number.round() as u32);
            }),
            Slot::Spacing(_) => self.spaced = (number.round() as u32).clamp(1, 500),
            Slot::WallTurn(room, wall) => {
                let Some(turn) = Angle::from_degrees(number) else {
                    return Err("A corner turns less than 180°.".into());
                };
                if number <= 0.0 || number >= 180.0 {
                    return Err(
                        "A corner turns more than 0° and less than 180°; 90° is a square corner."
                            .into(),
                    );
                }
                self.edit("", |job| {
                    if let Some(wall) = job.rooms.get_mut(room).and_then(|r| r.walls.get_mut(wall))
                    {
                        wall.turn = turn;
                    }
                });
            }
            Slot::Paint(task, field) => {
                if number == 0.0 {
                    return Err("This has to be more than nothing.".into());
                }
                if field == PaintSlot::Solids && number > 100.0 {
                    return Err(
                        "Solids by volume are at most 100 %; the data sheet says how much.".into(),
                    );
                }
                let rate = if metric {
                    square_metres_per_litre(number)
                } else {
                    square_feet_per_gallon(number)
                };
                self.edit("", |job| {
                    let Some(Ask::Paint(ask, _)) = job.tasks.get_mut(task).map(|t| &mut t.ask)
                    else {
                        return;
                    };
                    match field {
                        PaintSlot::PrimerRate => ask.primer.label_rate = Some(rate),
                        PaintSlot::FinishRate => ask.finish.label_rate = Some(rate),
                        PaintSlot::Solids => ask.finish.volume_solids = Some(number / 100.0),
                        _ => {}
                    }
                });
            }
            _ => {}
        }
        Ok(())
    }

    /// What a slot reads, and what stands there now, as it could be typed again.
    fn stands(&self, slot: &Slot) -> (Kind, String) {
        let plain = |length: Option<Length>| {
            (
                Kind::Length,
                length
                    .map(|l| self.job.units.length(l, Rounding::Nearest, Figures::Plain))
                    .unwrap_or_default(),
            )
        };
        let wall =
            |room: usize, wall: usize| self.job.rooms.get(room).and_then(|r| r.walls.get(wall));
        let opening =
            |room: usize, at: usize| self.job.rooms.get(room).and_then(|r| r.openings.get(at));
        let metric = self.job.units.is_metric();
        match slot {
            Slot::JobName => (Kind::Words, self.job.name.clone()),
            Slot::RoomName(room) => (
                Kind::Words,
                self.job
                    .rooms
                    .get(*room)
                    .map(|r| r.name.clone())
                    .unwrap_or_default(),
            ),
            Slot::HandLine => (Kind::Words, String::new()),
            Slot::WallLength(room, at) => plain(wall(*room, *at).and_then(|w| w.length)),
            Slot::WallTurn(room, at) => (
                Kind::Number("°"),
                wall(*room, *at)
                    .map(|w| format!("{}", w.turn.in_degrees()))
                    .unwrap_or_default(),
            ),
            Slot::Ceiling(room) => plain(self.job.rooms.get(*room).and_then(|r| r.ceiling)),
            Slot::WallHeight(room, at) => plain(wall(*room, *at).and_then(|w| w.height)),
            Slot::OpeningFromLeft(room, at) => plain(opening(*room, *at).and_then(|o| o.from_left)),
            Slot::OpeningWidth(room, at) => plain(opening(*room, *at).and_then(|o| o.width)),
            Slot::OpeningHeight(room, at) => plain(opening(*room, *at).and_then(|o| o.height)),
            Slot::OpeningSill(room, at) => plain(opening(*room, *at).and_then(|o| o.sill)),
            Slot::FirstStud(room, at) => plain(wall(*room, *at).and_then(|w| match w.studs {
                Some(Studs::Spaced { first, .. }) => Some(first),
                _ => None,
            })),
            Slot::Patch(task, field) => plain(self.patch_field(*task, *field)),
            Slot::Paint(task, field) => self.paint_stands(*task, *field, metric),
            Slot::Roll => plain(None),
            Slot::Square(side) => plain(self.square[*side]),
            Slot::Spacing(2) => (Kind::Number(""), self.spaced.to_string()),
            Slot::Spacing(side) => plain(self.spacing[*side]),
            Slot::Price(key) => (
                Kind::Number("a pack"),
                self.job
                    .buying
                    .prices
                    .get(key)
                    .map(|p| format!("{:.2}", p.as_minor() as f64 / 100.0))
                    .unwrap_or_default(),
            ),
            Slot::Packs(key) => (
                Kind::Number("packs"),
                self.job
                    .buying
                    .overrides
                    .get(key)
                    .map(u32::to_string)
                    .unwrap_or_default(),
            ),
        }
    }

    fn paint_stands(&self, task: usize, field: PaintSlot, metric: bool) -> (Kind, String) {
        let Some(Ask::Paint(ask, _)) = self.job.tasks.get(task).map(|t| &t.ask) else {
            return (Kind::Length, String::new());
        };
        let unit = if metric { "m²/L" } else { "ft²/gal" };
        let rate = |rate: Option<crate::measure::quantity::SpreadRate>| {
            let number = rate.map(|r| {
                if metric {
                    in_square_metres_per_litre(r)
                } else {
                    in_square_feet_per_gallon(r)
                }
            });
            (
                Kind::Number(unit),
                number
                    .map(|n| format!("{}", (n * 100.0).round() / 100.0))
                    .unwrap_or_default(),
            )
        };
        let plain = |length: Option<Length>| {
            (
                Kind::Length,
                length
                    .map(|l| self.job.units.length(l, Rounding::Nearest, Figures::Plain))
                    .unwrap_or_default(),
            )
        };
        match field {
            PaintSlot::PrimerRate => rate(ask.primer.label_rate),
            PaintSlot::FinishRate => rate(ask.finish.label_rate),
            PaintSlot::Solids => (
                Kind::Number("%"),
                ask.finish
                    .volume_solids
                    .map(|s| format!("{}", s * 100.0))
                    .unwrap_or_default(),
            ),
            PaintSlot::Width => plain(ask.surfaces.first().and_then(|s| s.width)),
            PaintSlot::Height => plain(ask.surfaces.first().and_then(|s| s.height)),
            PaintSlot::Stature => plain(ask.reach.stature),
        }
    }
}

/// A length into the job.
fn fill_length(job: &mut Job, slot: &Slot, length: Length) {
    if let Slot::Patch(task, field) = slot {
        super::patch_page::fill(job, *task, *field, length);
        return;
    }
    if let Slot::Paint(task, field) = slot {
        super::paint_page::fill(job, *task, *field, length);
        return;
    }
    let (Slot::WallLength(room, at)
    | Slot::WallHeight(room, at)
    | Slot::OpeningFromLeft(room, at)
    | Slot::OpeningWidth(room, at)
    | Slot::OpeningHeight(room, at)
    | Slot::OpeningSill(room, at)
    | Slot::FirstStud(room, at)) = slot
    else {
        if let Slot::Ceiling(room) = slot
            && let Some(room) = job.rooms.get_mut(*room)
        {
            room.ceiling = Some(length);
        }
        return;
    };
    let Some(room) = job.rooms.get_mut(*room) else {
        return;
    };
    match slot {
        Slot::WallLength(..) | Slot::WallHeight(..) | Slot::FirstStud(..) => {
            let Some(wall) = room.walls.get_mut(*at) else {
                return;
            };
            match slot {
                Slot::WallLength(..) => wall.length = Some(length),
                Slot::WallHeight(..) => wall.height = Some(length),
                _ => {
                    if let Some(Studs::Spaced { first, .. }) = &mut wall.studs {
                        *first = length;
                    }
                }
            }
        }
        _ => {
            let Some(opening) = room.openings.get_mut(*at) else {
                return;
            };
            let field = match slot {
                Slot::OpeningFromLeft(..) => &mut opening.from_left,
                Slot::OpeningWidth(..) => &mut opening.width,
                Slot::OpeningHeight(..) => &mut opening.height,
                _ => &mut opening.sill,
            };
            *field = Some(length);
        }
    }
}

/// Words into the job.
fn fill_words(job: &mut Job, slot: &Slot, text: String) {
    match slot {
        Slot::JobName => job.name = text,
        Slot::RoomName(room) => {
            if let Some(room) = job.rooms.get_mut(*room) {
                room.name = text;
            }
        }
        Slot::HandLine => {
            let id = job
                .buying
                .by_hand
                .iter()
                .map(|line| line.id + 1)
                .max()
                .unwrap_or(1);
            job.buying.by_hand.push(HandLine { id, text });
        }
        _ => {}
    }
}

/// Kept for a line key's own name in words.
#[must_use]
pub(super) fn is_by_hand(key: &LineKey) -> bool {
    matches!(key, LineKey::ByHand(_))
}

/// Where a new figure or room opens.
#[must_use]
pub(super) fn last_task(job: &Job) -> Here {
    Here::Task(job.tasks.len().saturating_sub(1))
}
