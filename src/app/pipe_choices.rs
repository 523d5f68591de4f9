//! What a tap changes in a run of pipe.

use super::pipe_inputs::{pipe_of, settle};
use super::{App, PipeChoice, PipeSlot, Slot, pipe_floor, pipe_wall};
use crate::handbook::pipe::{Kind, Size, Turn};
use crate::measure::Length;
use crate::site::On;
use crate::takeoff::{self, Job, PipeOn};
use crate::trades::pipe::{
    Ask, By, Direction, Fitting, Leg, Lines, Mark, Measured, Place, Side, Way,
};

/// A set to begin with, until it is measured.
const SET: Length = Length::inches(6);

impl App {
    /// A choice within a run; a new leg opens the pad on its length.
    pub(super) fn choose_pipe(&mut self, at: usize, choice: PipeChoice) {
        match choice {
            PipeChoice::Wall(_)
            | PipeChoice::Floor(_)
            | PipeChoice::Point(_)
            | PipeChoice::StudDepth(_)
            | PipeChoice::Bearing(_) => {
                self.edit("", |job| lay(job, at, choice));
                self.ask_start(at, choice);
                return;
            }
            PipeChoice::Joists(_) | PipeChoice::Engineered(_) => {
                self.edit("", |job| {
                    let room = job.tasks.get(at).and_then(|task| task.room);
                    if let Some(room) = room.and_then(|room| job.rooms.get_mut(room)) {
                        pipe_floor::choose(&mut room.joists, choice);
                    }
                });
                return;
            }
            _ => {}
        }
        let shelf = self.keeper.fittings().to_vec();
        let mut now_to_centre = None;
        self.edit("", |job| {
            if let Some(ask) = pipe_of(job, at) {
                let before = ask.clone();
                choose(ask, choice);
                settle(ask, &before, &shelf);
                now_to_centre = to_centre(&before, ask);
            }
        });
        let legs = pipe_of(&mut self.job, at).map_or(0, |ask| ask.legs.len());
        if matches!(choice, PipeChoice::Add(_) | PipeChoice::AddOffset(_)) && legs > 0 {
            self.leg = legs - 1;
            // What is said and asked next is asked there, by the picture.
            self.top += 1;
            let slot = if matches!(choice, PipeChoice::Add(_)) {
                PipeSlot::Length(self.leg)
            } else {
                PipeSlot::Set(self.leg)
            };
            self.open_pad(Slot::Pipe(at, slot));
            // Read before the next figure is typed; the leg's row has it from then on.
            if let (Some(leg), Some(pad)) = (now_to_centre, &mut self.pad) {
                pad.wrong = format!(
                    "Leg {} now reads to its fitting's centre, not to the pipe's end.",
                    leg + 1
                );
            }
        }
        self.leg = self.leg.min(legs.saturating_sub(1));
    }

    /// Asks where a run starts that was just put somewhere, unless a measured point may be chosen for it.
    fn ask_start(&mut self, at: usize, choice: PipeChoice) {
        let on = match self.job.tasks.get(at).map(|task| &task.ask) {
            Some(takeoff::Ask::Pipe(_, Some(on))) => on.on,
            _ => return,
        };
        let room = self.job.tasks[at].room;
        let room = room.and_then(|room| self.job.rooms.get(room));
        let pointed = room.is_some_and(|room| pipe_wall::points(room, on).next().is_some());
        let put = matches!(choice, PipeChoice::Wall(_) | PipeChoice::Floor(_));
        let own = choice == PipeChoice::Point(None);
        if self.start_asked(at).is_some() && (own || put && !pointed) {
            self.open_pad(Slot::Pipe(at, PipeSlot::FromLeft));
        }
    }

    /// Keeps a fitting that was measured on the shelf, for every job.
    pub(super) fn keep_fitting(&mut self, at: usize, shape: crate::trades::pipe::Shape) {
        let own = pipe_of(&mut self.job, at)
            .and_then(|ask| ask.fittings.iter().find(|own| own.shape == shape).copied());
        if let Some(own) = own
            && let Err(why) = self.keeper.keep_fitting(own)
        {
            self.said = why;
        }
    }
}

/// The leg that was measured to its open end and is read to the centre of a fitting now.
fn to_centre(before: &Ask, after: &Ask) -> Option<usize> {
    let read = |ask: &Ask, leg: usize| match ask.legs.get(leg)?.by {
        By::Tape { length, to, .. } => length.is_positive().then_some(to),
        _ => None,
    };
    (0..before.legs.len()).find(|leg| {
        read(before, *leg) == Some(Mark::End) && read(after, *leg) == Some(Mark::Centre)
    })
}

/// Where a run lies in its room.
fn lay(job: &mut Job, at: usize, choice: PipeChoice) {
    let Some(task) = job.tasks.get_mut(at) else {
        return;
    };
    let room = task.room.and_then(|room| job.rooms.get(room));
    let takeoff::Ask::Pipe(_, on) = &mut task.ask else {
        return;
    };
    match (choice, on.as_mut()) {
        (PipeChoice::Wall(wall), _) => *on = wall.map(PipeOn::wall),
        (PipeChoice::Floor(wall), Some(on)) => {
            // What was said of the wall stays, should it run there after all.
            (on.on, on.point) = (On::Floor(wall), None);
        }
        (PipeChoice::Floor(wall), None) => *on = Some(PipeOn::at(On::Floor(wall))),
        (PipeChoice::Point(point), Some(on)) => {
            on.point = point;
            // A point in the floor is measured from a wall of its own.
            let fixed = room.and_then(|room| room.fixed.iter().find(|of| Some(of.id) == point));
            on.on = fixed.map_or(on.on, |fixed| fixed.on);
        }
        (PipeChoice::StudDepth(depth), Some(on)) => on.depth = depth,
        (PipeChoice::Bearing(bearing), Some(on)) => on.bearing = bearing,
        _ => {}
    }
}

/// A fitting on the shelf takes the place of an older measurement of the same.
pub(super) fn onto_shelf(shelf: &mut Vec<Measured>, own: Measured) {
    shelf.retain(|other| other.shape != own.shape);
    shelf.push(own);
}

fn straight(way: Direction, from_fitting: bool) -> Leg {
    Leg {
        way: Way::Along(way),
        size: None,
        by: By::Tape {
            length: Length::ZERO,
            from: if from_fitting {
                Mark::Centre
            } else {
                Mark::End
            },
            to: Mark::End,
        },
        couplings: 0,
        end: None,
    }
}

/// The way that a run keeps at its end.
fn keeps(ask: &Ask) -> Direction {
    match ask.legs.last().map(|leg| leg.way) {
        Some(
            Way::Along(direction)
            | Way::Offset {
                along: direction, ..
            },
        ) => direction,
        None => Direction::Up,
    }
}

/// A leg more; where it turns off an open end an elbow stands, where it goes on a coupling.
fn add(ask: &mut Ask, leg: Leg, turns: bool) {
    let last = ask.legs.len();
    if last > 0 && ask.legs[last - 1].end.is_none() {
        let kind = if turns { Kind::Bend } else { Kind::Coupling };
        put(ask, last, Some(Fitting::of(kind)));
    }
    ask.legs.push(leg);
}

/// The fitting at a node: 0 the start, else the end of that leg. What the tape was held to follows.
fn put(ask: &mut Ask, node: usize, fitting: Option<Fitting>) {
    let had = if node == 0 {
        std::mem::replace(&mut ask.start, fitting)
    } else if let Some(leg) = ask.legs.get_mut(node - 1) {
        std::mem::replace(&mut leg.end, fitting)
    } else {
        return;
    };
    let held = |mark: &mut Mark| {
        *mark = match (fitting, had) {
            (None, _) => match *mark {
                Mark::Wall(beyond) => Mark::Wall(beyond),
                _ => Mark::End,
            },
            (Some(_), None) => Mark::Centre,
            (Some(_), Some(_)) => *mark,
        };
    };
    if let Some(By::Tape { to, .. }) = node
        .checked_sub(1)
        .and_then(|leg| ask.legs.get_mut(leg))
        .map(|leg| &mut leg.by)
    {
        held(to);
    }
    if let Some(By::Tape { from, .. }) = ask.legs.get_mut(node).map(|leg| &mut leg.by) {
        held(from);
    }
}

/// The fitting at a node.
pub(super) fn fitting_at(ask: &Ask, node: usize) -> Option<Fitting> {
    match node.checked_sub(1) {
        None => ask.start,
        Some(leg) => ask.legs.get(leg)?.end,
    }
}

/// How a leg is measured, with marks that its ends have.
fn tape(ask: &Ask, leg: usize) -> By {
    let mark = |node| fitting_at(ask, node).map_or(Mark::End, |_| Mark::Centre);
    By::Tape {
        length: Length::ZERO,
        from: mark(leg),
        to: mark(leg + 1),
    }
}

fn choose(ask: &mut Ask, choice: PipeChoice) {
    match choice {
        PipeChoice::Pipe(pipe) => {
            let drains = pipe.family().drains();
            if ask.legs.is_empty() && drains != ask.pipe.family().drains() {
                // A size of a drain says nothing about a supply.
                ask.size = if drains { Size::Two } else { Size::Half };
            }
            ask.pipe = pipe;
            let sizes = pipe.sizes();
            let nearest = |size: Size| {
                let off = |own: &Size| (own.nominal() - size.nominal()).abs();
                sizes.iter().copied().min_by_key(off)
            };
            ask.size = nearest(ask.size).unwrap_or(ask.size);
            for leg in &mut ask.legs {
                leg.size = leg.size.and_then(nearest);
            }
        }
        PipeChoice::Size(size) => ask.size = size,
        PipeChoice::Add(way) => {
            let from = ask.start.is_some() || !ask.legs.is_empty();
            let turns = keeps(ask) != way
                || matches!(ask.legs.last().map(|leg| leg.way), Some(Way::Offset { .. }));
            add(ask, straight(way, from), turns);
        }
        PipeChoice::AddOffset(to) => {
            let along = keeps(ask);
            let mut leg = straight(along, true);
            leg.way = Way::Offset {
                along,
                to,
                angle: Turn::Eighth.angle(),
                set: SET,
                over: None,
            };
            leg.by = By::Set;
            add(ask, leg, true);
        }
        PipeChoice::Remove(leg) if leg < ask.legs.len() => {
            ask.legs.remove(leg);
        }
        PipeChoice::Way(leg, way) => {
            if let Some(leg) = ask.legs.get_mut(leg) {
                leg.way = Way::Along(way);
                if leg.by == By::Set {
                    leg.by = By::Tape {
                        length: Length::ZERO,
                        from: Mark::Centre,
                        to: Mark::Centre,
                    };
                }
            }
        }
        PipeChoice::Fitting(node, kind) => put(ask, node, kind.map(Fitting::of)),
        PipeChoice::Street(node, side) => street(ask, node, side),
        PipeChoice::Branch(node, side) => {
            if let Some(fitting) = fitting_at(ask, node) {
                let fitting = Fitting {
                    branch: Some(side),
                    ..fitting
                };
                put(ask, node, Some(fitting));
            }
        }
        PipeChoice::Turn(node, turn) => {
            if let Some(fitting) = fitting_at(ask, node) {
                let fitting = Fitting {
                    turn: Some(turn),
                    ..fitting
                };
                put(ask, node, Some(fitting));
            }
        }
        PipeChoice::Closes(yes) => ask.closes = yes.then(Place::default),
        PipeChoice::Lines(to) => {
            ask.lines = to.map(|to| Lines {
                to,
                ..ask.lines.unwrap_or(Lines {
                    count: 2,
                    apart: Length::inches(3),
                    to,
                })
            });
        }
        PipeChoice::Damp(damp) => ask.damp = damp,
        PipeChoice::Mitre(turn) => {
            ask.mitre = turn.map_or(crate::measure::Angle::ZERO, Turn::angle);
        }
        PipeChoice::Fitted(number, yes) => {
            ask.fitted.retain(|other| *other != number);
            if yes {
                ask.fitted.push(number);
                ask.fitted.sort_unstable();
            }
        }
        other => choose_leg(ask, other),
    }
}

/// A street end takes no pipe on its side; without one the leg is measured again.
fn street(ask: &mut Ask, node: usize, side: Option<Side>) {
    let Some(fitting) = fitting_at(ask, node) else {
        return;
    };
    let leg_at = |side: Side| match side {
        Side::Before => node.checked_sub(1),
        Side::After => Some(node),
    };
    if let Some(leg) = fitting
        .street
        .and_then(leg_at)
        .filter(|leg| *leg < ask.legs.len())
    {
        ask.legs[leg].by = tape(ask, leg);
    }
    let fitting = Fitting {
        street: side,
        ..fitting
    };
    put(ask, node, Some(fitting));
    if let Some(leg) = side.and_then(leg_at).and_then(|leg| ask.legs.get_mut(leg)) {
        leg.by = By::Fitted;
    }
}

fn choose_leg(ask: &mut Ask, choice: PipeChoice) {
    match choice {
        PipeChoice::By(leg, by) if leg < ask.legs.len() => {
            ask.legs[leg].by = match by {
                By::Tape { .. } => tape(ask, leg),
                by => by,
            };
        }
        PipeChoice::Held(leg, side, mark) => {
            if let Some(By::Tape { from, to, .. }) = ask.legs.get_mut(leg).map(|leg| &mut leg.by) {
                *(if side == Side::Before { from } else { to }) = mark;
            }
        }
        PipeChoice::LegSize(leg, size) => {
            let before = leg
                .checked_sub(1)
                .map_or(ask.size, |before| ask.size_of(before));
            if leg == 0 {
                ask.size = size;
            } else if let Some(leg) = ask.legs.get_mut(leg) {
                leg.size = (size != before).then_some(size);
            }
        }
        PipeChoice::Couplings(leg, couplings) => {
            if let Some(leg) = ask.legs.get_mut(leg) {
                leg.couplings = couplings;
            }
        }
        PipeChoice::Angle(leg, turn) => {
            if let Some(Way::Offset { angle, .. }) = ask.legs.get_mut(leg).map(|leg| &mut leg.way) {
                *angle = turn.angle();
            }
        }
        PipeChoice::Aside(leg, aside) => {
            if let Some(Way::Offset { to, over, .. }) =
                ask.legs.get_mut(leg).map(|leg| &mut leg.way)
            {
                *to = aside;
                if over.is_some_and(|(over, _)| !over.across(aside)) {
                    *over = None;
                }
            }
        }
        PipeChoice::Over(leg, rolls) => {
            if let Some(Way::Offset { over, .. }) = ask.legs.get_mut(leg).map(|leg| &mut leg.way) {
                *over = rolls.map(|way| (way, over.map_or(SET, |(_, roll)| roll)));
            }
        }
        _ => {}
    }
}

#[cfg(test)]
mod tests;
