//! The pad opens on a slot, and what it reads goes back into the job.

use super::{
    App, Command, CutSlot, Here, Kind, Pad, PipeSlot, Row, Slot, TapeSlot, ThingField, TileSlot,
};
use super::{
    cutting_page, doubt, drain_inputs, mix_inputs, paint_inputs, patch_inputs, photo_change,
    pipe_inputs, room_page, sheets_inputs, steps_page, studs, survey_page, tile_fill, trim_inputs,
    wall_items, words,
};
use crate::measure::{Angle, Figures, Length, Money, Rounding, read};
use crate::site::{Id, Wall};
use crate::takeoff::{HandLine, Job};
use crate::trades::drain;

/// What the pad read.
pub(super) enum Value {
    Length(Length),
    Number(f64),
    Angle(Angle),
    Price(Money),
    Words(String),
}

impl App {
    /// Opens the pad on a slot, with what stands there, or with what is in the hand.
    pub(super) fn open_pad(&mut self, slot: Slot) {
        let (kind, stands) = self.stands(&slot);
        let asks = self.asks(&slot);
        self.said.clear();
        let mut pad = Pad::open(slot, asks, kind, stands);
        if kind == Kind::Length
            && let Some(held) = self.held.take()
        {
            pad.typed = self
                .job
                .units
                .length(held, Rounding::Nearest, Figures::Plain);
        }
        self.pad = Some(pad);
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

    /// The next slot, or the one before; what was typed is taken first.
    pub fn step_pad(&mut self, forward: bool) {
        let Some(pad) = self.pad.clone() else { return };
        if !pad.fresh && !pad.typed.trim().is_empty() && !self.take_typed(&pad) {
            return;
        }
        let slots = self.slots();
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

    /// What is typed for another slot than this is taken; gives whether it could be.
    pub(super) fn take_before(&mut self, slot: &Slot) -> bool {
        match self.pad.clone() {
            Some(pad) if pad.is_typed() && pad.slot != *slot && pad.kind != Kind::Words => {
                self.take_typed(&pad)
            }
            _ => true,
        }
    }

    /// After an undo: what was typed and not taken stays on its pad. Where there is no such place any more a length goes into
    /// the hand, for the figure that is tapped next.
    pub(super) fn keep_typed(&mut self, typed: Option<Pad>) {
        let Some(pad) = typed else { return };
        let held = pad.length(self.job.units);
        if self.is_there(&pad.slot) {
            self.pad = Some(pad);
        } else {
            self.held = held;
        }
    }

    /// Whether what a slot fills in is still there.
    fn is_there(&self, slot: &Slot) -> bool {
        if let Some((room, what)) = survey_page::what_of(slot) {
            return self.job.rooms.get(room).is_some_and(|room| room.has(what));
        }
        let alone = matches!(
            slot,
            Slot::Roll | Slot::HandLine | Slot::NewStep(_) | Slot::Search
        );
        alone || self.slots().iter().any(|(of, _)| of == slot)
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

    /// The pad on one figure after the other.
    pub(super) fn walk(&mut self, slots: Vec<Slot>) {
        let Some(first) = slots.first().cloned() else {
            return;
        };
        self.rooms_view.walk = slots;
        self.open_pad(first);
    }

    /// The figure after this one of the thing that is walked over, if it is.
    fn walk_on(&mut self, slot: &Slot) -> Option<Slot> {
        let walk = &mut self.rooms_view.walk;
        if walk.first() == Some(slot) {
            walk.remove(0);
        } else {
            walk.clear();
        }
        walk.first().cloned()
    }

    /// Whether a pad shows an estimate that nobody typed anew: Enter leaves it one.
    fn is_estimate(&self, pad: &Pad) -> bool {
        let stands = survey_page::what_of(&pad.slot).and_then(|(room, what)| {
            let room = self.job.rooms.get(room)?;
            room.mark(what).estimate
        });
        pad.fresh && pad.doubted.is_none() && stands.is_some()
    }

    /// Takes what is typed and goes on to the next slot that still asks, or closes the pad.
    pub fn take(&mut self) {
        let Some(pad) = self.pad.clone() else { return };
        let empty = pad.typed.trim().is_empty() && pad.kind != Kind::Words;
        let leaves = empty || self.is_estimate(&pad);
        let started = self.start_asked_by(&pad.slot).filter(|_| !empty);
        if !leaves && !self.take_typed(&pad) {
            return;
        }
        if let Some(up) = started {
            self.open_pad(up);
            return;
        }
        if let Some(next) = self.walk_on(&pad.slot) {
            self.open_pad(next);
            return;
        }
        if empty {
            self.pad = None;
            return;
        }
        let slots = self.slots();
        // What stands in no row of this screen, such as a sum on the roll, leads nowhere further.
        let Some(at) = slots.iter().position(|(slot, _)| *slot == pad.slot) else {
            self.pad = None;
            return;
        };
        let next = slots
            .iter()
            .cycle()
            .skip(at + 1)
            .take(slots.len())
            .find(|(_, asked)| *asked);
        match next {
            Some((slot, _)) if *slot != pad.slot => {
                self.open_pad(slot.clone());
                self.say_what_follows(&pad.slot);
            }
            _ => self.pad = None,
        }
    }

    /// Where the pad leaves the walls it says which of them it passed over, for they follow from the others.
    fn say_what_follows(&mut self, left: &Slot) {
        let Slot::WallLength(room, _) = *left else {
            return;
        };
        let Some(pad) = self.pad.as_mut() else { return };
        if matches!(pad.slot, Slot::WallLength(..)) {
            return;
        }
        let walls = self.job.rooms.get(room).map(|room| &room.walls[..]);
        let follow: Vec<String> = (walls.unwrap_or_default().iter().enumerate())
            .filter(|(_, wall)| wall.length.is_none())
            .map(|(number, _)| Wall::named(number))
            .collect();
        match follow.as_slice() {
            [] => {}
            [one] => pad.asks += &format!(". Wall {one} follows from the others"),
            [most @ .., last] => {
                pad.asks += &format!(
                    ". Walls {} and {last} follow from the others",
                    most.join(", ")
                );
            }
        }
    }

    /// Reads what is typed and puts it in its place; where it cannot stand, the pad says why and stays.
    fn take_typed(&mut self, pad: &Pad) -> bool {
        let value = match pad.kind {
            // Nothing is typed there: it is left by a tap on what it offers.
            Kind::Choice => {
                self.pad = None;
                return false;
            }
            Kind::Words => Ok(Value::Words(pad.typed.trim().to_owned())),
            Kind::Number(_) if matches!(pad.slot, Slot::Price(_) | Slot::HandPrice(_)) => {
                read::money(&pad.typed).map(Value::Price)
            }
            Kind::Number(_)
                if matches!(pad.slot, Slot::WallTurn(..) | Slot::Tile(_, TileSlot::Turn)) =>
            {
                read::angle(&pad.typed).map(Value::Angle)
            }
            Kind::Number(_) => read::number(&pad.typed).map(Value::Number),
            Kind::Length => read::length(&pad.typed, self.job.units).map(Value::Length),
        };
        let outcome = match value {
            Err(unreadable) => Err(words::unreadable(&unreadable, &pad.typed)),
            Ok(value) => self.fill(pad, value),
        };
        match outcome {
            Ok(()) => true,
            Err(wrong) => {
                if let Some(open) = &mut self.pad {
                    open.wrong = wrong;
                    // Nothing is to go on from it: the next key begins anew.
                    open.fresh |= open.typed.trim() == "0";
                }
                false
            }
        }
    }

    /// Puts a value where it belongs, or says why it cannot stand there.
    fn fill(&mut self, pad: &Pad, value: Value) -> Result<(), String> {
        let slot = &pad.slot;
        if let Slot::Photo(at, field) = *slot {
            if let Value::Length(length) = value
                && !length.is_positive()
                && !photo_change::may_be_nothing(field)
            {
                return Err("This has to be more than nothing. Measure it again.".to_owned());
            }
            if let Value::Length(length) = value
                && let Some(wrong) = self.doubted(pad, length)
            {
                return Err(wrong);
            }
            return self.fill_photo(at, field, value, (pad.asks.clone(), pad.typed.clone()));
        }
        let metric = self.job.units.is_metric();
        // Tried on a copy, so that a refusal leaves everything as it was.
        let mut job = self.job.clone();
        match value {
            Value::Length(length) => {
                let nothing = match slot {
                    Slot::Pipe(_, field) => pipe_inputs::may_be_nothing(*field),
                    Slot::Sheets(_, field) => sheets_inputs::may_be_nothing(*field),
                    Slot::Trim(_, field) => trim_inputs::may_be_nothing(*field),
                    slot => may_be_nothing(slot),
                };
                if !length.is_positive() && !nothing {
                    return Err("This has to be more than nothing. Measure it again.".to_owned());
                }
                if let Some(wrong) = self.doubted(pad, length) {
                    return Err(wrong);
                }
                job.add_to_roll(pad.asks.clone(), pad.typed.clone(), length);
                fill_length(&mut job, slot, length)?;
            }
            Value::Number(number) => {
                if !(0.0..=100_000.0).contains(&number)
                    && !matches!(slot, Slot::AirWarmth(_) | Slot::Pipe(_, PipeSlot::Air))
                {
                    return Err(
                        "This number is out of range: give one from 0 to 100000.".to_owned()
                    );
                }
                fill_number(&mut job, slot, number, metric)?;
            }
            Value::Angle(inside) => match slot {
                Slot::WallTurn(room, wall) => {
                    room_page::fill_corner(&mut job, *room, *wall, inside)?;
                }
                Slot::Tile(task, _) => tile_fill::fill_angle(&mut job, *task, inside),
                _ => {}
            },
            Value::Price(price) => fill_price(&mut job, slot, price),
            Value::Words(text) if *slot == Slot::Search => {
                self.rooms_view.search = text;
                return Ok(());
            }
            Value::Words(text) => {
                if text.is_empty() && !matches!(slot, Slot::RoomNote(..)) {
                    return Err("Give it a name of at least one letter.".to_owned());
                }
                fill_words(&mut job, slot, text);
            }
        }
        if let Slot::Pipe(task, _) = *slot {
            self.settle_pipe(&mut job, task);
        }
        let last = survey_page::what_of(slot);
        let read =
            |app: &App| last.and_then(|(room, what)| app.job.rooms.get(room)?.measured(what));
        let before = read(self);
        self.edit("", |open| *open = job);
        if let Slot::Pipe(task, PipeSlot::Face(shape) | PipeSlot::Depth(shape)) = *slot {
            self.keep_fitting(task, shape);
        }
        if let Some(last) = last {
            self.rooms_view.last = Some(last);
            self.tell_at_once(last, before.is_some() && before == read(self));
        }
        Ok(())
    }

    /// Why a measure is asked about, once; what was likely meant then stands on the pad.
    fn doubted(&mut self, pad: &Pad, length: Length) -> Option<String> {
        let typed = pad.typed.trim().to_owned();
        if pad.doubted.as_ref() == Some(&typed) {
            return None;
        }
        let units = self.job.units;
        let doubt = if let Slot::Photo(at, field) = pad.slot {
            self.photo_doubt(at, field, &typed, length)?
        } else if let Slot::Spot(room, at, _, size) = pad.slot {
            let room = self.job.rooms.get(room)?;
            let on = room.hidden.get(at)?.on;
            doubt::doubt_spot(room, (on, size), &typed, length, units)?
        } else {
            let (room, what) = survey_page::what_of(&pad.slot)?;
            doubt::doubt(self.job.rooms.get(room)?, what, &typed, length, units)?
        };
        let open = self.pad.as_mut()?;
        open.doubted = Some(typed);
        // The next key begins anew; the same once more keeps it.
        open.fresh = true;
        if let Some(instead) = doubt.instead {
            open.typed = instead;
        }
        Some(doubt.text)
    }
}

/// Whether nothing, or less, is a measure there: an edge at the corner, a sum on the roll.
fn may_be_nothing(slot: &Slot) -> bool {
    if let Slot::Measure(_, what) = slot {
        return what.may_be_nothing();
    }
    matches!(
        slot,
        Slot::OpeningFromLeft(..)
            | Slot::OpeningSill(..)
            | Slot::Roll
            | Slot::FirstStud(_)
            | Slot::FoundStud(..)
            | Slot::FromStud(..)
            | Slot::Patch(..)
            | Slot::OtherHole(..)
            | Slot::Tape(TapeSlot::Width)
            | Slot::Drain(
                _,
                drain::Field::Fall
                    | drain::Field::Start
                    | drain::Field::First
                    | drain::Field::ToCome
            )
            | Slot::Cut(_, CutSlot::Kerf)
            | Slot::PlusMinus(..)
            | Slot::Spot(..)
            | Slot::HiddenDepth(..)
            | Slot::Tile(
                _,
                TileSlot::Joint
                    | TileSlot::Gap
                    | TileSlot::Kerf
                    | TileSlot::Thing(_, ThingField::Left | ThingField::Top)
            )
    )
}

/// A length into the job.
fn fill_length(job: &mut Job, slot: &Slot, length: Length) -> Result<(), String> {
    match slot {
        Slot::Patch(..) | Slot::OtherHole(..) | Slot::FromStud(..) => {
            patch_inputs::fill(job, slot, length);
        }
        Slot::Paint(task, field) => paint_inputs::fill_length(job, *task, *field, length),
        Slot::Tile(task, field) => tile_fill::fill_length(job, *task, *field, length),
        Slot::Mix(task, field) => mix_inputs::fill_length(job, *task, *field, length),
        Slot::Pipe(task, field) => pipe_inputs::fill_length(job, *task, *field, length)?,
        Slot::Drain(task, field) => drain_inputs::fill_length(job, *task, *field, length),
        Slot::Sheets(task, field) => sheets_inputs::fill_length(job, *task, *field, length),
        Slot::Trim(task, field) => trim_inputs::fill_length(job, *task, *field, length),
        Slot::Cut(material, field) => cutting_page::fill(job, material, *field, length)?,
        Slot::FirstStud(of) | Slot::FoundStud(of, _) | Slot::StudFace(of) => {
            studs::fill(job, *of, slot, length)?;
        }
        Slot::Tape(field) => {
            let tape = &mut job.tape;
            let place = match field {
                TapeSlot::Side(at) => &mut tape.sides[at % 2],
                TapeSlot::Diagonal(at) => &mut tape.diagonals[at % 2],
                TapeSlot::Run => &mut tape.run,
                TapeSlot::Width => &mut tape.width,
                TapeSlot::OnPaper => &mut tape.on_paper,
                TapeSlot::OnSite => &mut tape.on_site,
                TapeSlot::Scale if length > Length::feet(1) => {
                    return Err(
                        "A drawing is no larger than life: at most 12 in to the foot.".into(),
                    );
                }
                TapeSlot::Scale => {
                    tape.scale = length;
                    return Ok(());
                }
                TapeSlot::Count => return Ok(()),
            };
            *place = Some(length);
        }
        Slot::Spot(..) | Slot::HiddenDepth(..) => wall_items::fill(job, slot, length),
        _ => survey_page::fill(job, slot, length),
    }
    Ok(())
}

/// A number into the job, or why it cannot stand there.
fn fill_number(job: &mut Job, slot: &Slot, number: f64, metric: bool) -> Result<(), String> {
    match slot {
        Slot::Packs(key) => {
            job.buying.overrides.insert(key.clone(), whole(number)?);
        }
        Slot::HandCount(id) => {
            let count = whole(number)?;
            if count == 0 {
                return Err("At least one; or remove the line.".into());
            }
            if let Some(line) = hand_line(job, *id) {
                line.count = count;
            }
        }
        Slot::Tape(_) => {
            let count = whole(number)?;
            if !(1..=500).contains(&count) {
                return Err("From 1 to 500 things.".into());
            }
            job.tape.count = count;
        }
        Slot::AirWarmth(task) | Slot::AirHumidity(task) => {
            patch_inputs::fill_air(job, *task, slot, number, metric)?;
        }
        Slot::Paint(task, field) => paint_inputs::fill_number(job, *task, *field, number, metric)?,
        Slot::Tile(task, field) => tile_fill::fill_number(job, *task, *field, number, metric)?,
        Slot::Mix(task, field) => mix_inputs::fill_number(job, *task, *field, number, metric)?,
        Slot::Pipe(task, field) => pipe_inputs::fill_number(job, *task, *field, number, metric)?,
        Slot::Sheets(task, field) => {
            sheets_inputs::fill_number(job, *task, *field, number, metric)?;
        }
        Slot::Trim(task, field) => {
            trim_inputs::fill_count(job, *task, *field, whole(number)?)?;
        }
        Slot::Drain(task, field) => {
            drain_inputs::fill_count(job, *task, *field, whole(number)?);
        }
        _ => {}
    }
    Ok(())
}

/// A price into the buying list.
fn fill_price(job: &mut Job, slot: &Slot, price: Money) {
    match slot {
        Slot::Price(key) => {
            job.buying.prices.insert(key.clone(), price);
        }
        Slot::HandPrice(id) => {
            if let Some(line) = hand_line(job, *id) {
                line.price = Some(price);
            }
        }
        _ => {}
    }
}

/// A whole count.
fn whole(number: f64) -> Result<u32, String> {
    if number.fract() == 0.0 && (0.0..=9_999.0).contains(&number) {
        Ok(number as u32)
    } else {
        Err("Give a whole number, up to 9999.".into())
    }
}

/// A line by hand.
fn hand_line(job: &mut Job, id: Id) -> Option<&mut HandLine> {
    job.buying.by_hand.iter_mut().find(|line| line.id == id)
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
        Slot::HandLine => job.buying.by_hand.push(HandLine {
            id: Id::fresh(),
            text,
            count: 1,
            price: None,
        }),
        Slot::HandText(id) => {
            if let Some(line) = hand_line(job, *id) {
                line.text = text;
            }
        }
        Slot::NewStep(_) | Slot::StepText(_) => steps_page::fill_words(job, slot, text),
        Slot::RoomNote(room, of) => wall_items::fill_words(job, *room, *of, text),
        Slot::Paint(task, field) => paint_inputs::fill_words(job, *task, *field, text),
        Slot::Mix(task, field) => mix_inputs::fill_words(job, *task, *field, text),
        Slot::Pipe(task, _) => pipe_inputs::fill_words(job, *task, text),
        Slot::Trim(task, _) => trim_inputs::fill_words(job, *task, text),
        _ => {}
    }
}

/// Where a new figure opens.
#[must_use]
pub(super) fn last_task(job: &Job) -> Here {
    Here::Task(job.tasks.len().saturating_sub(1))
}

#[cfg(test)]
mod tests;
