//! A run of pipe and the pad: what a field reads, and where what is typed goes.

use super::{App, JoistSlot, Kind, PipeSlot, pipe_floor};
use crate::measure::{Figures, Length, Rounding};
use crate::takeoff::{Ask, Job};
use crate::trades::pipe::{self, By, Measured, Place, Shape, Side, Way, openings};

/// The ask of a run.
pub(super) fn pipe_of(job: &mut Job, task: usize) -> Option<&mut pipe::Ask> {
    match job.tasks.get_mut(task).map(|task| &mut task.ask) {
        Some(Ask::Pipe(ask, _)) => Some(ask),
        _ => None,
    }
}

/// Takes a change of a run: what was fitted dry is to be fitted again where a piece may be another, and fittings that
/// were measured for another run come from the shelf.
pub(super) fn settle(ask: &mut pipe::Ask, before: &pipe::Ask, shelf: &[Measured]) {
    from_shelf(ask, shelf);
    let cuts = |ask: &pipe::Ask| pipe::Ask {
        // What no cut depends on.
        name: String::new(),
        fitted: Vec::new(),
        tape: Length::ZERO,
        jaw: None,
        air: 0.0,
        damp: false,
        warms: None,
        mitre: crate::measure::Angle::ZERO,
        ..ask.clone()
    };
    if cuts(before) != cuts(ask) {
        ask.fitted.clear();
    }
}

fn from_shelf(ask: &mut pipe::Ask, shelf: &[Measured]) {
    for (_, shape) in openings(ask).unwrap_or_default() {
        let known = |own: &&Measured| own.shape == shape;
        if ask.fittings.iter().any(|own| known(&own)) {
            continue;
        }
        if let Some(own) = shelf.iter().find(known) {
            ask.fittings.push(*own);
        }
    }
}

/// The mark at an end of a leg that is measured by the tape.
fn beyond(ask: &pipe::Ask, leg: usize, side: Side) -> Option<Length> {
    match ask.legs.get(leg)?.by {
        By::Tape { from, to, .. } => {
            let mark = if side == Side::Before { from } else { to };
            match mark {
                pipe::Mark::Wall(beyond) => Some(beyond),
                _ => None,
            }
        }
        _ => None,
    }
}

/// What stands in a field that reads a length.
fn held(ask: &pipe::Ask, slot: PipeSlot) -> Option<Length> {
    let own = |shape: Shape| ask.fittings.iter().find(|own| own.shape == shape);
    let way = |leg: usize| match ask.legs.get(leg)?.way {
        Way::Offset { set, over, .. } => Some((set, over)),
        Way::Along(_) => None,
    };
    match slot {
        PipeSlot::Length(leg) => match ask.legs.get(leg)?.by {
            By::Tape { length, .. } => Some(length).filter(|length| length.is_positive()),
            _ => None,
        },
        PipeSlot::Beyond(leg, side) => beyond(ask, leg, side),
        PipeSlot::Set(leg) => way(leg).map(|(set, _)| set),
        PipeSlot::Roll(leg) => way(leg).and_then(|(_, over)| Some(over?.1)),
        PipeSlot::Face(shape) => own(shape).map(|own| own.face),
        PipeSlot::Depth(shape) => own(shape).and_then(|own| own.depth),
        PipeSlot::Tape => Some(ask.tape),
        PipeSlot::Jaw => ask.jaw,
        PipeSlot::Stick => Some(ask.stick),
        PipeSlot::Apart => ask.lines.map(|lines| lines.apart),
        PipeSlot::Closes(axis) => ask.closes.map(|place| place.axes()[axis % 3]),
        _ => None,
    }
}

impl App {
    /// The run of a job that is to be taken, settled against the one that stands.
    pub(super) fn settle_pipe(&self, job: &mut Job, task: usize) {
        if let Some((ask, before)) = pipe_of(job, task).zip(self.pipe_ask(task)) {
            settle(ask, before, self.keeper.fittings());
        }
    }

    /// What a field of a run reads, and what stands there.
    pub(super) fn pipe_stands(&self, task: usize, slot: PipeSlot) -> (Kind, String) {
        let units = self.job.units;
        let plain = |length: Option<Length>| {
            let text = length.map(|l| units.length(l, Rounding::Nearest, Figures::Plain));
            (Kind::Length, text.unwrap_or_default())
        };
        let Some(Ask::Pipe(ask, on)) = self.job.tasks.get(task).map(|task| &task.ask) else {
            return plain(None);
        };
        let metric = units.is_metric();
        let number = |unit, value: Option<f64>| {
            let text = value.map(|n| format!("{}", (n * 100.0).round() / 100.0));
            (Kind::Number(unit), text.unwrap_or_default())
        };
        match slot {
            PipeSlot::Name => (Kind::Words, ask.name.clone()),
            PipeSlot::Air if metric => number("°C", Some((ask.air - 32.0) / 1.8)),
            PipeSlot::Air => number("°F", Some(ask.air)),
            PipeSlot::Warms if metric => number("°C", ask.warms.map(|warms| warms / 1.8)),
            PipeSlot::Warms => number("°F", ask.warms),
            PipeSlot::Lines => number("", ask.lines.map(|lines| f64::from(lines.count))),
            PipeSlot::Below => plain(on.map(|on| on.below)),
            PipeSlot::Joists(of) => {
                let room = self.job.tasks[task].room;
                let joists = room.and_then(|room| self.job.rooms.get(room)?.joists);
                plain(joists.map(|joists| pipe_floor::held(joists, of)))
            }
            PipeSlot::FromLeft => plain(on.map(|on| on.spot.from_left)),
            PipeSlot::UpFromFloor => plain(on.map(|on| on.spot.up)),
            _ => plain(held(ask, slot)),
        }
    }
}

/// Whether nothing, or less, may stand in a field.
pub(super) fn may_be_nothing(slot: PipeSlot) -> bool {
    matches!(
        slot,
        PipeSlot::Beyond(..)
            | PipeSlot::Closes(_)
            | PipeSlot::Tape
            | PipeSlot::Depth(_)
            | PipeSlot::FromLeft
            | PipeSlot::UpFromFloor
            | PipeSlot::Below
            | PipeSlot::Joists(JoistSlot::First | JoistSlot::Deck)
    )
}

/// A length into a field of a run, or why it cannot stand there.
pub(super) fn fill_length(
    job: &mut Job,
    task: usize,
    slot: PipeSlot,
    length: Length,
) -> Result<(), String> {
    if let PipeSlot::Joists(of) = slot {
        let room = job.tasks.get(task).and_then(|task| task.room);
        let joists = room.and_then(|room| job.rooms.get_mut(room)?.joists.as_mut());
        return joists.map_or(Ok(()), |joists| pipe_floor::fill(joists, of, length));
    }
    if let (PipeSlot::Below, Some(Ask::Pipe(_, Some(on)))) =
        (slot, job.tasks.get_mut(task).map(|task| &mut task.ask))
    {
        on.below = length;
        return Ok(());
    }
    if let (PipeSlot::FromLeft | PipeSlot::UpFromFloor, Some(Ask::Pipe(_, Some(on)))) =
        (slot, job.tasks.get_mut(task).map(|task| &mut task.ask))
    {
        if slot == PipeSlot::FromLeft {
            if !length.is_positive() {
                return Err("A pipe has a thickness: its centre is off the corner. Measure from the left corner to its centre.".into());
            }
            on.spot.from_left = length;
        } else {
            on.spot.up = length;
        }
        on.point = None;
        return Ok(());
    }
    let Some(ask) = pipe_of(job, task) else {
        return Ok(());
    };
    match slot {
        PipeSlot::Face(shape) => return fill_face(ask, shape, length),
        PipeSlot::Depth(shape) => return fill_depth(ask, shape, length),
        PipeSlot::Tape => ask.tape = length,
        PipeSlot::Jaw => ask.jaw = Some(length),
        PipeSlot::Stick => ask.stick = length,
        PipeSlot::Apart => {
            if let Some(lines) = &mut ask.lines {
                lines.apart = length;
            }
        }
        PipeSlot::Closes(axis) => {
            if let Some(place) = &mut ask.closes {
                let mut axes = place.axes();
                axes[axis % 3] = length;
                *place = Place::of(axes);
            }
        }
        PipeSlot::Length(leg)
        | PipeSlot::Beyond(leg, _)
        | PipeSlot::Set(leg)
        | PipeSlot::Roll(leg) => {
            if let Some(leg) = ask.legs.get_mut(leg) {
                fill_leg(leg, slot, length);
            }
        }
        _ => {}
    }
    Ok(())
}

fn fill_leg(leg: &mut pipe::Leg, slot: PipeSlot, to_be: Length) {
    match (slot, &mut leg.by, &mut leg.way) {
        (PipeSlot::Length(_), By::Tape { length, .. }, _) => *length = to_be,
        (PipeSlot::Beyond(_, side), By::Tape { from, to, .. }, _) => {
            let mark = if side == Side::Before { from } else { to };
            *mark = pipe::Mark::Wall(to_be);
        }
        (PipeSlot::Set(_), _, Way::Offset { set, .. }) => *set = to_be,
        (
            PipeSlot::Roll(_),
            _,
            Way::Offset {
                over: Some((_, roll)),
                ..
            },
        ) => *roll = to_be,
        _ => {}
    }
}

fn fill_face(ask: &mut pipe::Ask, shape: Shape, face: Length) -> Result<(), String> {
    match ask.fittings.iter_mut().find(|own| own.shape == shape) {
        Some(own) if own.depth.is_some_and(|depth| depth > face) => Err(
            "From centre to face is at least as much as the depth of the hub. Measure both again."
                .into(),
        ),
        Some(own) => {
            own.face = face;
            Ok(())
        }
        None => {
            ask.fittings.push(Measured {
                shape,
                face,
                depth: None,
            });
            Ok(())
        }
    }
}

fn fill_depth(ask: &mut pipe::Ask, shape: Shape, depth: Length) -> Result<(), String> {
    match ask.fittings.iter_mut().find(|own| own.shape == shape) {
        None => Err("Measure from the centre to the face first.".into()),
        Some(own) if depth > own.face || depth < Length::ZERO => {
            Err("The hub is no deeper than from its face to the centre. Measure both again.".into())
        }
        Some(own) => {
            own.depth = Some(depth);
            Ok(())
        }
    }
}

/// A number into a field of a run, or why it cannot stand there.
pub(super) fn fill_number(
    job: &mut Job,
    task: usize,
    slot: PipeSlot,
    number: f64,
    metric: bool,
) -> Result<(), String> {
    let Some(ask) = pipe_of(job, task) else {
        return Ok(());
    };
    match slot {
        PipeSlot::Air => ask.air = if metric { number * 1.8 + 32.0 } else { number },
        PipeSlot::Warms => ask.warms = Some(if metric { number * 1.8 } else { number }),
        PipeSlot::Lines => {
            if number.fract() != 0.0 || !(1.0..=12.0).contains(&number) {
                return Err("From 1 to 12 lines.".into());
            }
            if let Some(lines) = &mut ask.lines {
                lines.count = number as u32;
            }
        }
        _ => {}
    }
    Ok(())
}

/// The name of a run.
pub(super) fn fill_words(job: &mut Job, task: usize, text: String) {
    if let Some(ask) = pipe_of(job, task) {
        ask.name = text;
    }
}
