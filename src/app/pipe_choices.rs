//! What a tap changes in a run of pipe.

use super::pipe_inputs::{pipe_of, settle};
use super::{App, PipeChoice, PipeSlot, Slot, pipe_floor};
use crate::handbook::pipe::{Kind, Turn};
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
        self.edit("", |job| {
            if let Some(ask) = pipe_of(job, at) {
                let before = ask.clone();
                choose(ask, choice);
                settle(ask, &before, &shelf);
            }
        });
        let legs = pipe_of(&mut self.job, at).map_or(0, |ask| ask.legs.len());
        if matches!(choice, PipeChoice::Add(_) | PipeChoice::AddOffset(_)) && legs > 0 {
            self.leg = legs - 1;
            let slot = if matches!(choice, PipeChoice::Add(_)) {
                PipeSlot::Length(self.leg)
            } else {
                PipeSlot::Set(self.leg)
            };
            self.open_pad(Slot::Pipe(at, slot));
        }
        self.leg = self.leg.min(legs.saturating_sub(1));
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
            ask.pipe = pipe;
            let sizes = pipe.sizes();
            let nearest = |size| {
                sizes
                    .iter()
                    .copied()
                    .min_by_key(|own: &crate::handbook::pipe::Size| {
                        (own.nominal() - crate::handbook::pipe::Size::nominal(size)).abs()
                    })
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
mod tests {
    use super::*;
    use crate::app::{Choice, Command, Keeper, demo_job};
    use crate::trades::pipe::figure;

    /// The demo with its hot supply open.
    fn app() -> (App, usize) {
        let app = App::new(
            demo_job(chrono::DateTime::UNIX_EPOCH.fixed_offset()),
            Keeper::nowhere(),
        );
        let at = (0..app.job.tasks.len()).find(|at| app.pipe_ask(*at).is_some());
        (app, at.expect("the demo has runs"))
    }

    fn tap(app: &mut App, at: usize, choice: PipeChoice) {
        app.send(Command::Set(at, Choice::Pipe(choice)));
    }

    fn typed(app: &mut App, at: usize, slot: PipeSlot, text: &str) -> String {
        app.send(Command::Pad(Slot::Pipe(at, slot)));
        if let Some(pad) = &mut app.pad {
            pad.typed = text.to_owned();
            pad.fresh = false;
        }
        app.take();
        app.pad.take().map_or_else(String::new, |pad| pad.wrong)
    }

    fn ask(app: &App, at: usize) -> Ask {
        app.pipe_ask(at).expect("a run").clone()
    }

    #[test]
    fn ticks_stay_until_a_piece_may_be_another() {
        let (mut app, at) = app();
        tap(&mut app, at, PipeChoice::Fitted(1, true));
        tap(&mut app, at, PipeChoice::Fitted(3, true));
        typed(&mut app, at, PipeSlot::Name, "Hot");
        tap(&mut app, at, PipeChoice::Damp(true));
        assert_eq!(ask(&app, at).fitted, [1, 3]);
        typed(&mut app, at, PipeSlot::Length(0), "22");
        assert!(ask(&app, at).fitted.is_empty());
    }

    #[test]
    fn what_the_tape_was_held_to_follows_the_fitting() {
        let (mut app, at) = app();
        tap(&mut app, at, PipeChoice::Fitting(3, None));
        let by = ask(&app, at).legs[2].by;
        assert!(matches!(by, By::Tape { to: Mark::End, .. }), "{by:?}");
        assert!(figure(&ask(&app, at)).is_ok());
        tap(&mut app, at, PipeChoice::Fitting(3, Some(Kind::Bend)));
        let by = ask(&app, at).legs[2].by;
        assert!(
            matches!(
                by,
                By::Tape {
                    to: Mark::Centre,
                    ..
                }
            ),
            "{by:?}"
        );
        assert!(figure(&ask(&app, at)).is_ok());
    }

    #[test]
    fn a_street_end_leaves_its_leg_without_pipe_and_gives_it_back() {
        let (mut app, at) = app();
        tap(&mut app, at, PipeChoice::Street(1, Some(Side::After)));
        assert_eq!(ask(&app, at).legs[1].by, By::Fitted);
        tap(&mut app, at, PipeChoice::Street(1, None));
        assert!(matches!(
            ask(&app, at).legs[1].by,
            By::Tape {
                length: Length::ZERO,
                ..
            }
        ));
    }

    #[test]
    fn another_material_takes_its_nearest_size() {
        let (mut app, at) = app();
        tap(
            &mut app,
            at,
            PipeChoice::Pipe(crate::handbook::pipe::Pipe::PvcDrain),
        );
        assert_eq!(ask(&app, at).size, crate::handbook::pipe::Size::OneQuarter);
    }

    #[test]
    fn a_place_below_and_to_the_left_can_be_typed() {
        let (mut app, at) = app();
        tap(&mut app, at, PipeChoice::Closes(true));
        assert_eq!(typed(&mut app, at, PipeSlot::Closes(2), "-5"), "");
        let closes = ask(&app, at).closes.expect("at a place");
        assert_eq!(closes.up, Length::inches(-5));
    }

    #[test]
    fn a_hub_is_no_deeper_than_its_fitting() {
        let (mut app, at) = app();
        let shape = ask(&app, at).fittings[1].shape;
        assert!(typed(&mut app, at, PipeSlot::Depth(shape), "3").contains("no deeper"));
        assert!(typed(&mut app, at, PipeSlot::Face(shape), "1/4").contains("at least"));
        assert_eq!(typed(&mut app, at, PipeSlot::Face(shape), "15/16"), "");
        // It is on the shelf for the next run.
        let kept = app.keeper.fittings();
        assert_eq!(kept.len(), 1);
        assert_eq!(kept[0].face, Length::in_64(0, 60));
    }

    #[test]
    fn a_run_on_a_wall_bores_its_studs() {
        let (app, at) = app();
        let (_, holes, _) = app.pipe_holes(at + 1).expect("on a wall");
        // The cold one goes left past the stud at 32 in.
        assert_eq!(holes.len(), 1);
        assert_eq!(holes[0].from_left, Length::inches(32));
        assert!(
            app.pipe_holes(at)
                .is_some_and(|(_, holes, _)| holes.is_empty())
        );
    }

    /// From a fixed point of the wall the run starts where that is; the figure goes with it when it is measured again.
    #[test]
    fn a_run_starts_at_a_fixed_point() {
        use crate::site::{FixedKind, FixedPoint, On};
        let (mut app, at) = app();
        let mut point = FixedPoint::new(FixedKind::Cold, On::Wall(5));
        (point.from_left, point.up) = (Some(Length::inches(52)), Some(Length::inches(8)));
        let id = point.id;
        app.job.rooms[0].fixed.push(point);
        tap(&mut app, at + 1, PipeChoice::Point(Some(id)));
        let start = |app: &App| {
            app.pipe_holes(at + 1)
                .map(|(wall, holes, _)| (wall.start, holes))
        };
        let (from, holes) = start(&app).expect("on a wall");
        assert_eq!(from, (Length::inches(52), Length::inches(8)));
        // From 52 in over to 46 it passes the stud at 48.
        assert_eq!(holes[0].from_left, Length::inches(48));
        let point = app.job.rooms[0].fixed.last_mut().expect("it is there");
        point.from_left = Some(Length::inches(40));
        assert_eq!(start(&app).expect("on a wall").0.0, Length::inches(40));
        // A place that is typed goes before it from then on.
        typed(&mut app, at + 1, PipeSlot::FromLeft, "36");
        assert_eq!(start(&app).expect("on a wall").0.0, Length::inches(36));
    }

    /// The drain of the demo starts at a point in the floor: along wall A, across four joists that run along wall F.
    #[test]
    fn a_run_starts_at_a_fixed_point_in_the_floor() {
        let (mut app, at) = app();
        let drain = at + 2;
        let (holes, account) = app.pipe_joists(drain).expect("under the floor");
        let joists: Vec<(usize, usize)> = holes.iter().map(|hole| (hole.leg, hole.joist)).collect();
        // From 70 in out to 47 1/2, over 9 in at 45°, and on to 8 1/2: past 63, 47 has its bend, 31, 15.
        assert_eq!(joists, [(0, 3), (2, 0), (2, 1)]);
        assert!(holes.iter().all(|hole| hole.faults == Some(vec![])));
        assert!(
            account
                .findings
                .iter()
                .all(|found| found.weight == crate::trades::Weight::Note)
        );
        // 4 in below the floor is 6 in above the lower edge; 7 in on it has fallen 7/48 in.
        let fallen = Length::inches(6) - holes[0].centre;
        assert!((fallen.in_inches() - 7.0 / 48.0).abs() < 1e-6);
        // The point is measured again, and the run goes with it.
        app.job.rooms[0].fixed[0].from_left = Some(Length::inches(63));
        assert_ne!(app.pipe_joists(drain).expect("still there").0, holes);
        // Deeper than the joists are, nothing is bored.
        typed(&mut app, drain, PipeSlot::Below, "14");
        let (holes, _) = app.pipe_joists(drain).expect("under the floor");
        assert!(holes.iter().all(|hole| hole.faults.is_none()));
        typed(
            &mut app,
            drain,
            PipeSlot::Joists(crate::app::JoistSlot::Spacing),
            "24",
        );
        let joists = app.job.rooms[0].joists.expect("known");
        assert_eq!(joists.spacing, Length::inches(24));
        let joist = |of| PipeSlot::Joists(of);
        let wrong = typed(&mut app, drain, joist(crate::app::JoistSlot::Spacing), "1");
        assert!(wrong.contains("thick"), "{wrong}");
        tap(&mut app, drain, PipeChoice::Joists(None));
        assert!(app.pipe_joists(drain).is_none());
    }

    /// Three inches to the left of the hot one's riser the cold one would run through it; and an outlet in the way.
    #[test]
    fn what_a_run_meets_on_its_wall_is_named() {
        use crate::app::{Row, Tone};
        use crate::site::{FixedKind, FixedPoint, On};
        let (mut app, at) = app();
        let stops = |app: &App, at: usize| -> Vec<String> {
            let rows = app.pipe_clash_rows(at);
            rows.into_iter()
                .filter_map(|row| match row {
                    Row::Note {
                        tone: Tone::Stop,
                        text,
                        ..
                    } => Some(text),
                    _ => None,
                })
                .collect()
        };
        assert_eq!(stops(&app, at), Vec::<String>::new());
        assert_eq!(stops(&app, at + 1), Vec::<String>::new());
        typed(&mut app, at + 1, PipeSlot::Length(1), "10");
        let met = stops(&app, at);
        assert!(
            met.iter()
                .any(|text| text.starts_with("Leg 3 runs through “Cold")),
            "{met:?}"
        );
        typed(&mut app, at + 1, PipeSlot::Length(1), "6");
        let mut outlet = FixedPoint::new(FixedKind::Outlet, On::Wall(5));
        (outlet.from_left, outlet.up) = (Some(Length::inches(20)), Some(Length::inches(16)));
        (outlet.width, outlet.height) = (Some(Length::inches(3)), Some(Length::inches(4)));
        app.job.rooms[0].fixed.push(outlet);
        let met = crate::measure::plain(&stops(&app, at)[0]);
        let says = "Leg 1 runs through “Outlet”, 1' 8\" from the left, 1' 4\" up";
        assert!(met.starts_with(says), "{met}");
    }

    #[test]
    fn a_quick_run_is_laid_on_a_room_and_then_on_its_wall() {
        let (mut app, _) = app();
        app.send(Command::NewPipe(None));
        let new = app.job.tasks.len() - 1;
        assert!(app.pipe_holes(new).is_none());
        app.send(Command::Lay(new, 0, None));
        tap(&mut app, new, PipeChoice::Wall(Some(5)));
        tap(&mut app, new, PipeChoice::Add(Direction::Up));
        assert!(app.pipe_holes(new).is_some());
    }
}
