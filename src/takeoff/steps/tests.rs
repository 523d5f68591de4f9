use super::*;
use crate::measure::Units;
use crate::site::Room;
use crate::trades::{grout, paint, patch, pipe, tile};

fn at(text: &str) -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339(text).unwrap()
}

const MORNING: &str = "2026-03-14T07:40:00-05:00";

fn job() -> Job {
    let mut job = Job::new("Cabin", at(MORNING), Units::FeetInches { marks: 16 });
    job.add_room(Room::rectangle("Washroom"));
    job
}

fn ordered(job: &Job, figure: u64, order: Vec<Order>) -> Ordered {
    Ordered {
        figure: Id(figure),
        room: Some(job.rooms[0].id),
        wall: None,
        tile: None,
        order,
        dry: None,
        photographed: None,
    }
}

fn tile_and_grout(job: &Job, wait: f64) -> Vec<Ordered> {
    let mut ask = grout::Ask::default();
    ask.label.wait = Some(wait);
    let tile = tile::figure(&tile::Ask::default()).unwrap().order;
    let grout = grout::figure(&ask).unwrap().order;
    vec![
        ordered(job, 7, tile),
        Ordered {
            tile: Some(Id(7)),
            ..ordered(job, 8, grout)
        },
    ]
}

fn pipe_run(job: &Job, fitted: usize) -> Ordered {
    let leg = pipe::Leg {
        way: pipe::Way::Along(pipe::Direction::Up),
        size: None,
        by: pipe::By::Tape {
            length: crate::measure::Length::inches(40),
            from: pipe::Mark::End,
            to: pipe::Mark::End,
        },
        couplings: 0,
        end: None,
    };
    let ask = pipe::Ask {
        legs: vec![leg],
        ..pipe::Ask::default()
    };
    let figure = pipe::figure(&ask).unwrap();
    let of = figure.pieces.len();
    Ordered {
        dry: Some((fitted.min(of), of)),
        ..ordered(job, 3, figure.order)
    }
}

fn find(steps: &[Step], work: Work) -> &Step {
    let is = |s: &&Step| matches!(s.key, StepKey::Figure(_, w, _) if w == work);
    steps.iter().find(is).unwrap()
}

#[test]
fn grout_waits_as_long_as_the_bag_says_after_the_tile_was_set() {
    let mut job = job();
    let figures = tile_and_grout(&job, 24.0);
    let set = StepKey::Figure(Id(7), Work::SetTile, 0);
    let now = at("2026-03-14T18:00:00-05:00");
    let before = steps(&job, &figures, now);
    assert_eq!(
        find(&before, Work::Grout).state,
        State::Held(Hold::Before(set))
    );
    job.tick_step(StepKey::Figure(Id(7), Work::Chalk, 0), Some(at(MORNING)));
    job.tick_step(set, Some(at(MORNING)));
    let ticked = steps(&job, &figures, now);
    let State::Waits { until, hours, cite } = find(&ticked, Work::Grout).state else {
        unreachable!("grout waits: {ticked:?}")
    };
    assert_eq!((until, hours), (at("2026-03-15T07:40:00-05:00"), 24.0));
    assert!(cite.clause.contains("bag"));
    // From the very moment on it is open, wherever the clock is.
    let then = steps(&job, &figures, at("2026-03-15T12:40:00+00:00"));
    assert_eq!(find(&then, Work::Grout).state, State::Open);
    // Taken back: held again, and nothing is kept of it.
    job.tick_step(set, None);
    assert_eq!(job.steps.len(), 1);
    let back = steps(&job, &figures, now);
    assert_eq!(
        find(&back, Work::Grout).state,
        State::Held(Hold::Before(set))
    );
}

#[test]
fn joining_is_held_by_the_dry_fit_and_closing_by_the_test() {
    let mut job = job();
    let run = pipe_run(&job, 0);
    let of = run.dry.unwrap().1;
    let now = at(MORNING);
    let open = steps(&job, &[run], now);
    assert_eq!(
        find(&open, Work::Join).state,
        State::Held(Hold::DryFit(0, of))
    );
    assert_eq!(
        find(&open, Work::Close).state,
        State::Held(Hold::DryFit(0, of))
    );
    assert_eq!(open[0].state, State::Open);
    // Fitted: that step is done without a tick of ours, and what comes before it is still to be ticked.
    let run = [pipe_run(&job, of)];
    let fitted = steps(&job, &run, now);
    assert_eq!(find(&fitted, Work::FitDry).state, State::Done(None));
    for work in [
        Work::ShutOff,
        Work::CutPipe,
        Work::Mark,
        Work::TakeApart,
        Work::Join,
    ] {
        job.tick_step(StepKey::Figure(Id(3), work, 0), Some(at(MORNING)));
    }
    let joined = steps(&job, &run, at("2026-03-20T07:40:00-05:00"));
    let test = StepKey::Figure(Id(3), Work::Test, 0);
    assert_eq!(find(&joined, Work::Test).state, State::Open);
    assert_eq!(
        find(&joined, Work::Close).state,
        State::Held(Hold::Before(test))
    );
    assert_eq!(
        find(&joined, Work::Photograph).state,
        State::Held(Hold::Before(test))
    );
    job.tick_step(test, Some(at(MORNING)));
    let tested = steps(&job, &run, at("2026-03-20T07:40:00-05:00"));
    assert_eq!(find(&tested, Work::Close).state, State::Open);
    let place = |work| tested.iter().position(|s| s.key == find(&tested, work).key);
    assert!(
        place(Work::Photograph) < place(Work::Close),
        "a picture is suggested first"
    );
}

#[test]
fn a_patch_goes_in_after_the_tests_of_its_room_and_paint_after_the_patch() {
    let job = job();
    let run = pipe_run(&job, 99);
    let hole = patch::figure(&patch::Ask {
        method: Some(patch::Method::BackedPatch),
        ..patch::Ask::default()
    })
    .unwrap();
    let patch = ordered(&job, 4, hole.order);
    let paint = paint::figure(&paint::Ask::default()).unwrap();
    let paint = ordered(&job, 5, paint.order);
    // Figured in any order, done in this one.
    let all = steps(
        &job,
        &[paint.clone(), patch.clone(), run.clone()],
        at(MORNING),
    );
    let place = |work| all.iter().position(|s| s.key == find(&all, work).key);
    assert!(place(Work::Test) < place(Work::Board));
    assert!(place(Work::Sand) < place(Work::Walls));
    let test = StepKey::Figure(Id(3), Work::Test, 0);
    let sand = StepKey::Figure(Id(4), Work::Sand, 0);
    let walls = paint_first(&all);
    assert_eq!(walls.state, State::Held(Hold::Before(sand)));
    let mut job = job;
    job.tick_step(StepKey::Figure(Id(4), Work::OpenUp, 0), Some(at(MORNING)));
    let all = steps(&job, &[paint.clone(), patch.clone(), run], at(MORNING));
    assert_eq!(
        find(&all, Work::Board).state,
        State::Held(Hold::Before(test))
    );
    // Of a run on another wall nothing is held.
    let run = Ordered {
        wall: Some(2),
        ..pipe_run(&job, 99)
    };
    let patch = Ordered {
        wall: Some(1),
        ..patch
    };
    let all = steps(&job, &[paint, patch, run], at(MORNING));
    assert_eq!(find(&all, Work::Board).state, State::Open);
}

fn paint_first(steps: &[Step]) -> &Step {
    let of = |s: &&Step| matches!(s.key, StepKey::Figure(Id(5), ..));
    steps.iter().find(of).unwrap()
}

#[test]
fn a_coat_dries_before_the_next() {
    let mut job = job();
    let hole = patch::figure(&patch::Ask::default()).unwrap();
    let drying = hole.waits[1].hours;
    let figures = [ordered(&job, 4, hole.order.clone())];
    let coat = |nth| StepKey::Figure(Id(4), Work::Coat, nth);
    for order in &hole.order {
        if matches!(order.work, Work::OpenUp | Work::Board) {
            job.tick_step(StepKey::Figure(Id(4), order.work, 0), Some(at(MORNING)));
        }
    }
    job.tick_step(coat(0), Some(at(MORNING)));
    let all = steps(&job, &figures, at(MORNING));
    let second = all.iter().find(|s| s.key == coat(1)).unwrap();
    let State::Waits { hours, .. } = second.state else {
        unreachable!("the second coat waits: {second:?}")
    };
    assert_eq!(hours, drying);
    assert_eq!(second.of, 3);
}

#[test]
fn steps_are_moved_and_stay_moved() {
    let mut job = job();
    let figures = tile_and_grout(&job, 24.0);
    job.steps.push(StepNote::own(None, "Order the tile"));
    let own = job.steps[0].key();
    let keys = |job: &Job| -> Vec<(StepKey, i64)> {
        let all = steps(job, &figures, at(MORNING));
        all.iter().map(|s| (s.key, s.rank)).collect()
    };
    let before = keys(&job);
    assert_eq!(before.last().map(|(key, _)| *key), Some(own));
    for back in (0..before.len() - 1).rev() {
        job.move_step(&keys(&job), own, true);
        assert_eq!(keys(&job)[back].0, own);
    }
    // At the top it stays; down again it comes where it was.
    job.move_step(&keys(&job), own, true);
    assert_eq!(keys(&job)[0].0, own);
    for _ in 1..before.len() {
        job.move_step(&keys(&job), own, false);
    }
    let order = |keys: Vec<(StepKey, i64)>| keys.into_iter().map(|(k, _)| k).collect::<Vec<_>>();
    assert_eq!(order(keys(&job)), order(before));
    // However often two change places.
    for _ in 0..200 {
        job.move_step(&keys(&job), own, true);
        job.move_step(&keys(&job), own, false);
    }
    assert_eq!(keys(&job).last().map(|(key, _)| *key), Some(own));
}

#[test]
fn notes_of_one_step_have_one_name_in_every_copy_and_no_other_has_it() {
    let mut names = std::collections::BTreeSet::new();
    for figure in [1, 2, 3, u64::MAX] {
        for work in Work::ALL {
            for nth in 0..4 {
                let note = StepNote::figure(Id(figure), work, nth);
                assert_eq!(note.id, StepNote::figure(Id(figure), work, nth).id);
                assert!(names.insert(note.id));
            }
        }
    }
}

/// Old trim comes off before the walls are painted, casing goes on after that, and base after casing, paint and tile.
#[test]
fn trim_follows_the_paint_and_the_floor() {
    use crate::trades::trim;
    let job = job();
    let base = trim::Ask {
        old: true,
        ..trim::Ask::default()
    };
    let mut figures = tile_and_grout(&job, 24.0);
    figures.push(ordered(&job, 4, trim::figure(&base).unwrap().order));
    figures.push(ordered(
        &job,
        5,
        trim::figure(&trim::Ask::casing()).unwrap().order,
    ));
    let painted = paint::figure(&paint::Ask {
        surfaces: vec![paint::Surface {
            name: "Wall".into(),
            part: paint::Part::Wall,
            area: crate::measure::quantity::square_feet(100.0),
            height: None,
            width: None,
            kind: paint::Texture::Smooth,
            cut_in: crate::measure::Length::ZERO,
        }],
        ..paint::Ask::default()
    });
    figures.push(ordered(&job, 6, painted.unwrap().order));
    let all = steps(&job, &figures, at(MORNING));
    let first: Vec<Work> = all
        .iter()
        .filter(|step| step.state == State::Open)
        .filter_map(|step| match step.key {
            StepKey::Figure(_, work, _) => Some(work),
            StepKey::Own(_) => None,
        })
        .collect();
    assert!(first.contains(&Work::StripTrim), "{first:?}");
    let held = |figure: u64, work: Work| {
        let key = StepKey::Figure(Id(figure), work, 0);
        all.iter()
            .find(|step| step.key == key)
            .unwrap()
            .state
            .clone()
    };
    let before = |state: State| match state {
        State::Held(Hold::Before(StepKey::Figure(id, work, _))) => Some((id, work)),
        _ => None,
    };
    // What comes before it: one of those that have to be done.
    let paint = before(held(6, Work::Walls));
    assert_eq!(paint, Some((Id(4), Work::StripTrim)));
    assert_eq!(
        before(held(5, Work::CutTrim)).map(|held| held.0),
        Some(Id(6))
    );
    assert!(before(held(4, Work::CutTrim)).is_some());
    let place = |figure: u64, work: Work| {
        let key = StepKey::Figure(Id(figure), work, 0);
        all.iter().position(|step| step.key == key).unwrap()
    };
    assert!(place(4, Work::NailBase) > place(8, Work::Grout));
}
