use super::*;
use crate::app::{Keeper, demo_job};

fn at(text: &str) -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339(text).unwrap()
}

fn demo() -> App {
    App::new(demo_job(at("2026-03-14T09:00:00-05:00")), Keeper::nowhere())
}

fn rows(app: &mut App) -> Vec<Row> {
    app.send(Command::Go(Here::Steps));
    app.screen().rows
}

fn ticks(rows: &[Row]) -> Vec<(String, String, String)> {
    rows.iter()
        .filter_map(|row| match row {
            Row::Check {
                label,
                detail,
                value,
                ..
            } => Some((label.clone(), detail.clone(), value.clone())),
            _ => None,
        })
        .collect()
}

#[test]
fn times_are_said_as_on_site() {
    let now = at("2026-03-14T18:00:00-05:00");
    for (when, said) in [
        ("2026-03-14T19:05:00-05:00", "19:05"),
        ("2026-03-15T07:40:00-05:00", "07:40 tomorrow"),
        ("2026-03-15T12:40:00+00:00", "07:40 tomorrow"),
        ("2026-03-13T23:59:00-05:00", "23:59 yesterday"),
        ("2026-03-16T09:10:00-05:00", "09:10 on Mon 16 Mar"),
    ] {
        assert_eq!(day(at(when), now), said);
    }
}

#[test]
fn the_demo_job_says_what_is_next_and_ticks_it() {
    let mut app = demo();
    let before = ticks(&rows(&mut app));
    let screen = app.screen();
    assert_eq!(screen.strip[0].value, "Shut off and cap");
    let left: usize = screen.strip[1].value.parse().unwrap();
    assert_eq!(left, before.len());
    let main = screen.main.unwrap().command;
    app.send(main);
    assert_eq!(app.said, "Shut off and cap: done");
    let after = app.screen();
    assert_eq!(after.strip[1].value, (left - 1).to_string());
    assert_eq!(app.job.steps.len(), 1);
    assert!(app.job.steps[0].done.is_some());
    app.send(Command::Undo);
    assert!(app.job.steps.is_empty());
}

#[test]
fn a_test_is_not_passed_over() {
    let mut app = demo();
    let now = Local::now().fixed_offset();
    let all = app.steps_at(now);
    let close = all.iter().find(|step| {
        matches!(step.key, StepKey::Figure(_, Work::Close, _))
            && matches!(step.state, State::Held(Hold::Before(_)))
    });
    let close = close.unwrap().key;
    app.send(Command::Step(StepCommand::Tick(close, true)));
    assert!(
        app.said.starts_with("The test is not ticked yet"),
        "{}",
        app.said
    );
    let join = all
        .iter()
        .find(|step| matches!(step.key, StepKey::Figure(_, Work::Join, _)));
    let join = join.unwrap().key;
    app.send(Command::Step(StepCommand::Tick(join, true)));
    assert!(app.said.contains("pieces are fitted dry"), "{}", app.said);
    assert!(app.job.steps.is_empty());
}

#[test]
fn a_picture_of_the_wall_closed_up_ticks_its_step() {
    let mut app = demo();
    let now = Local::now().fixed_offset();
    let photo_step = |app: &App| {
        let all = app.steps_at(now);
        let is = |s: &&Step| matches!(s.key, StepKey::Figure(_, Work::Photograph, _));
        all.iter().find(is).cloned().unwrap()
    };
    let step = photo_step(&app);
    assert!(!matches!(step.state, State::Done(_)));
    let task = app.step_task(step.key).unwrap();
    let wall = match &app.job.tasks[task].ask {
        Ask::Pipe(_, on) => on.map(|on| on.on.wall()),
        _ => None,
    };
    let mut photo = crate::photo::Photo::new(
        "0000000000000000000000000000000000000000000000000000000000000000.jpg".into(),
        (40, 30),
        now,
    );
    photo.room = step.room;
    photo.wall = wall;
    photo.stage = Some(Stage::ClosedUp);
    app.job.photos.push(std::sync::Arc::new(photo));
    assert_eq!(photo_step(&app).state, State::Done(Some(now)));
}

#[test]
fn an_own_step_is_written_put_in_a_room_moved_and_removed() {
    let mut app = demo();
    app.send(Command::Go(Here::Steps));
    app.send(Command::Pad(Slot::NewStep(None)));
    app.pad.as_mut().unwrap().typed = "Order the glass".into();
    app.take();
    let key = app.job.steps[0].key();
    let StepKey::Own(id) = key else {
        unreachable!("it is the person's own")
    };
    let room = app.job.rooms[1].id;
    app.send(Command::Go(Here::Step(key)));
    app.send(Command::Step(StepCommand::Room(id, Some(room))));
    app.send(Command::Step(StepCommand::Move(key, true)));
    let shown = |app: &mut App| {
        app.send(Command::Step(StepCommand::Show(Shown::Room(room))));
        ticks(&rows(app))
    };
    let listed = shown(&mut app);
    let place = listed
        .iter()
        .position(|(label, ..)| label == "Order the glass");
    assert_eq!(place, Some(listed.len() - 2));
    app.send(Command::Go(Here::Step(key)));
    app.send(Command::Step(StepCommand::PutBack(key)));
    let listed = shown(&mut app);
    assert_eq!(
        listed.last().map(|(label, ..)| label.as_str()),
        Some("Order the glass")
    );
    app.send(Command::Step(StepCommand::Remove(id)));
    assert!(app.job.steps.is_empty());
    app.send(Command::Undo);
    assert_eq!(app.own_step(id), "Order the glass");
}

#[test]
fn what_is_handed_over_has_every_step() {
    let mut app = demo();
    let all = app.steps_at(Local::now().fixed_offset());
    let files = app.packet().unwrap();
    let (_, bytes) = files.iter().find(|(name, _)| name == "steps.csv").unwrap();
    let text = String::from_utf8(bytes.clone()).unwrap();
    assert_eq!(text.matches("\r\n").count(), all.len() + 1);
}

/// What is ticked stays where it is, so that nothing moves under the finger; once the page was left it is among the done.
#[test]
fn a_ticked_step_stays_in_its_place_until_the_page_is_left() {
    let mut app = demo();
    let before = ticks(&rows(&mut app));
    let first = app.screen().rows.into_iter().find_map(|row| match row {
        Row::Check { command, .. } => Some(command),
        _ => None,
    });
    app.send(first.unwrap());
    let labels = |rows: &[Row]| -> Vec<String> {
        ticks(rows).into_iter().map(|(label, ..)| label).collect()
    };
    let now = app.screen().rows;
    let same: Vec<String> = before.iter().map(|(label, ..)| label.clone()).collect();
    assert_eq!(labels(&now), same);
    assert!(
        now.iter()
            .any(|row| matches!(row, Row::Check { on: true, .. }))
    );
    app.send(Command::Go(Here::Rooms));
    assert_eq!(labels(&rows(&mut app)), same[1..]);
}
