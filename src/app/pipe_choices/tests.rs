//! Taps in a run of pipe, and what comes of them.

use super::*;
use crate::app::{Choice, Command, Here, Keeper, Row, demo_job};
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
    assert_eq!(ask(&app, at).size, Size::OneQuarter);
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
    // Where it starts is asked at once: the corner, then the floor; until then nothing is figured of the wall.
    let asked = |app: &App| app.pad.as_ref().map(|pad| pad.slot.clone());
    assert_eq!(asked(&app), Some(Slot::Pipe(new, PipeSlot::FromLeft)));
    tap(&mut app, new, PipeChoice::Add(Direction::Up));
    assert!(app.pipe_holes(new).is_none());
    let missing = |app: &App| {
        let rows = app.screen().rows;
        rows.iter()
            .any(|row| matches!(row, Row::Note { text, .. } if text.contains("was not said yet")))
    };
    app.send(Command::Go(Here::Task(new)));
    assert!(missing(&app));
    let wrong = typed(&mut app, new, PipeSlot::FromLeft, "0");
    assert!(wrong.starts_with("A pipe has a thickness"), "{wrong}");
    app.send(Command::Pad(Slot::Pipe(new, PipeSlot::FromLeft)));
    app.pad.as_mut().expect("open").typed = "20".into();
    app.take();
    assert_eq!(asked(&app), Some(Slot::Pipe(new, PipeSlot::UpFromFloor)));
    app.pad.as_mut().expect("open").typed = "0".into();
    app.take();
    assert!(!missing(&app));
    assert!(app.pipe_holes(new).is_some());
}

#[test]
fn a_figure_that_is_read_otherwise_once_a_leg_follows_is_said() {
    let (mut app, _) = app();
    app.send(Command::NewPipe(None));
    let new = app.job.tasks.len() - 1;
    app.send(Command::Go(Here::Task(new)));
    tap(&mut app, new, PipeChoice::Add(Direction::Up));
    typed(&mut app, new, PipeSlot::Length(0), "24");
    tap(&mut app, new, PipeChoice::Add(Direction::Right));
    let wrong = app.pad.take().map(|pad| pad.wrong).unwrap_or_default();
    assert_eq!(
        wrong,
        "Leg 1 now reads to its fitting's centre, not to the pipe's end."
    );
    // The next leg changes nothing of the first one.
    typed(&mut app, new, PipeSlot::Length(1), "30");
    tap(&mut app, new, PipeChoice::Fitting(1, Some(Kind::Tee)));
    assert!(app.pad.is_none());
}

#[test]
fn a_drain_becomes_a_supply_with_its_usual_size_and_a_supply_at_a_drain_is_asked_about() {
    use crate::handbook::pipe::Pipe;
    use crate::site::On;
    let (mut app, _) = app();
    app.send(Command::NewPipe(Some((0, 5))));
    let new = app.job.tasks.len() - 1;
    app.send(Command::Go(Here::Task(new)));
    tap(&mut app, new, PipeChoice::Pipe(Pipe::PvcDrain));
    assert_eq!(ask(&app, new).size, Size::Two);
    tap(&mut app, new, PipeChoice::Pipe(Pipe::CopperM));
    assert_eq!(ask(&app, new).size, Size::Half);
    let drain = (app.job.rooms[0].fixed.iter())
        .find(|point| matches!(point.on, On::Floor(_)))
        .map(|point| point.id);
    tap(&mut app, new, PipeChoice::Floor(0));
    tap(&mut app, new, PipeChoice::Point(drain));
    let doubted = |app: &App| {
        let rows = app.screen().rows;
        rows.iter()
            .any(|row| matches!(row, Row::Note { text, .. } if text.contains("starts at a drain")))
    };
    assert!(doubted(&app));
    tap(&mut app, new, PipeChoice::Pipe(Pipe::PvcDrain));
    assert!(!doubted(&app));
}
