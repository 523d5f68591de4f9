//! The program on a job that is open twice, damaged, gone, or of another time: nothing is lost, and it says what is so.

use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use storyrod::app::{App, Command, Here, Kept, Reading, Row, Shape, start};
use storyrod::store::share::write_share;
use storyrod::store::{jobs_in, open_job};

fn at(folder: &Path) -> App {
    start(folder, Some(&folder.join("cabin.site")), false).unwrap()
}

/// Waits for the saver's thread, as long as a slow disk may take.
fn wait(app: &App, right: impl Fn(&Kept) -> bool) {
    let until = Instant::now() + Duration::from_secs(60);
    while !right(&app.kept()) {
        assert!(Instant::now() < until, "still {:?}", app.kept());
        std::thread::sleep(Duration::from_millis(5));
    }
}

/// The commands that rows offer to mend things with.
fn mends(app: &App) -> Vec<Command> {
    let rows = app.screen().rows;
    rows.into_iter()
        .flat_map(|row| match row {
            Row::Note { mend, .. } => mend.into_iter().map(|chip| chip.command).collect(),
            Row::Choice { chips, .. } => chips.into_iter().map(|chip| chip.command).collect(),
            _ => Vec::new(),
        })
        .collect()
}

#[test]
fn two_hundred_steps_of_undo_reach_across_a_restart() {
    let folder = tempfile::tempdir().unwrap();
    let mut app = at(folder.path());
    for _ in 0..220 {
        app.send(Command::NewRoom(Shape::Rectangle));
    }
    for _ in 0..10 {
        app.send(Command::Undo);
    }
    let last = app.job.clone();
    app.finish().unwrap();
    drop(app);
    let mut app = at(folder.path());
    assert_eq!(app.job, last);
    for _ in 0..10 {
        app.send(Command::Redo);
    }
    assert_eq!(app.job.rooms.len(), 220);
    assert!(!app.can_redo());
    for _ in 0..200 {
        assert!(app.can_undo());
        app.send(Command::Undo);
    }
    assert_eq!(app.job.rooms.len(), 20);
    assert!(!app.can_undo());
    app.finish().unwrap();
    drop(app);
    assert_eq!(at(folder.path()).job.rooms.len(), 20);
}

#[test]
fn the_second_window_reads_and_takes_over_when_the_first_is_gone() {
    let folder = tempfile::tempdir().unwrap();
    let mut first = at(folder.path());
    let mut second = at(folder.path());
    assert_eq!(second.kept(), Kept::Reading(Reading::Another));
    second.send(Command::NewRoom(Shape::L));
    assert!(
        second.job.rooms.is_empty(),
        "what is only read is not edited"
    );
    assert!(second.said.contains("only read"));
    assert!(mends(&second).contains(&Command::TakeOver));
    first.send(Command::NewRoom(Shape::Rectangle));
    second.send(Command::TakeOver);
    assert_eq!(second.kept(), Kept::Reading(Reading::Another));
    drop(first);
    second.send(Command::TakeOver);
    assert_eq!(second.job.rooms.len(), 1, "what the first wrote is there");
    second.send(Command::NewRoom(Shape::L));
    wait(&second, |kept| *kept == Kept::Yes);
    drop(second);
    assert_eq!(at(folder.path()).job.rooms.len(), 2);
}

#[test]
fn a_disk_that_is_gone_loses_no_edit() {
    let folder = tempfile::tempdir().unwrap();
    let (here, away) = (folder.path().join("cabin.site"), folder.path().join("away"));
    let mut app = at(folder.path());
    app.send(Command::NewRoom(Shape::Rectangle));
    wait(&app, |kept| *kept == Kept::Yes);
    // The card is pulled.
    fs::rename(&here, &away).unwrap();
    app.send(Command::NewRoom(Shape::L));
    wait(&app, |kept| matches!(kept, Kept::No(_)));
    assert_eq!(app.job.rooms.len(), 2, "the edit stays on the screen");
    assert!(
        mends(&app)
            .iter()
            .any(|mend| matches!(mend, Command::KeepElsewhere(_)))
    );
    app.send(Command::OpenJob(folder.path().join("other.site")));
    assert!(app.said.contains("not kept"), "{}", app.said);
    // It is put back: the saver tries again by itself.
    fs::rename(&away, &here).unwrap();
    wait(&app, |kept| *kept == Kept::Yes);
    assert_eq!(open_job(&here).unwrap().job.rooms.len(), 2);
}

#[test]
fn a_job_that_cannot_be_written_is_kept_in_another_place_with_its_history() {
    let folder = tempfile::tempdir().unwrap();
    let elsewhere = tempfile::tempdir().unwrap();
    let here = folder.path().join("cabin.site");
    let mut app = at(folder.path());
    app.send(Command::NewRoom(Shape::Rectangle));
    wait(&app, |kept| *kept == Kept::Yes);
    fs::rename(&here, folder.path().join("away")).unwrap();
    app.send(Command::NewRoom(Shape::L));
    wait(&app, |kept| matches!(kept, Kept::No(_)));
    app.send(Command::KeepElsewhere(elsewhere.path().to_owned()));
    wait(&app, |kept| *kept == Kept::Yes);
    app.send(Command::NewRoom(Shape::Alcove));
    app.finish().unwrap();
    let jobs = jobs_in(elsewhere.path());
    let kept = open_job(&jobs[0]).unwrap();
    assert_eq!((kept.job.rooms.len(), kept.done.len()), (3, 3));
}

#[test]
fn a_damaged_job_shows_what_is_whole_and_one_tap_saves_it() {
    let folder = tempfile::tempdir().unwrap();
    let mut app = at(folder.path());
    for shape in [Shape::Rectangle, Shape::L, Shape::Alcove] {
        app.send(Command::NewRoom(shape));
    }
    drop(app);
    let document = folder.path().join("cabin.site/job");
    fs::remove_dir_all(folder.path().join("cabin.site/versions")).unwrap();
    let mut bytes = fs::read(&document).unwrap();
    // In the first room's body: the header of the file, the head with its header, then the room's header.
    let head = u32::from_le_bytes(bytes[48..52].try_into().unwrap()) as usize;
    bytes[32 + 32 + head + 32 + 3] ^= 0xff;
    fs::write(&document, &bytes).unwrap();
    let mut app = at(folder.path());
    assert!(
        matches!(app.kept(), Kept::Reading(Reading::Damaged { .. })),
        "{:?}",
        app.kept()
    );
    assert_eq!(app.job.rooms.len(), 2);
    assert!(mends(&app).contains(&Command::Recover));
    app.send(Command::Recover);
    wait(&app, |kept| *kept == Kept::Yes);
    assert_eq!(app.job.rooms.len(), 2);
    assert_eq!(
        fs::read(&document).unwrap(),
        bytes,
        "the damaged one is left as it is"
    );
    app.send(Command::NewRoom(Shape::L));
    drop(app);
    assert_eq!(jobs_in(folder.path()).len(), 2);
}

#[test]
fn a_job_of_a_newer_program_is_said_and_left_alone() {
    let folder = tempfile::tempdir().unwrap();
    drop(at(folder.path()));
    let document = folder.path().join("cabin.site/job");
    let mut bytes = fs::read(&document).unwrap();
    bytes[8] = 9;
    fs::write(&document, &bytes).unwrap();
    let refused = start(
        folder.path(),
        Some(&folder.path().join("cabin.site")),
        false,
    );
    let said = refused.err().unwrap();
    assert!(said.contains("format 9"), "{said}");
    // As the last job, which nobody named, the window says it.
    let app = start(folder.path(), None, false).unwrap();
    assert!(matches!(app.kept(), Kept::Reading(Reading::Closed(_))));
    assert!(mends(&app).contains(&Command::Go(Here::More)));
    drop(app);
    assert_eq!(fs::read(&document).unwrap(), bytes);
}

#[test]
fn going_back_to_an_earlier_version_is_an_edit_that_can_be_undone() {
    let folder = tempfile::tempdir().unwrap();
    let mut app = at(folder.path());
    for _ in 0..3 {
        app.send(Command::NewRoom(Shape::Rectangle));
        wait(&app, |kept| *kept == Kept::Yes);
    }
    app.send(Command::Go(Here::Versions));
    let back: Vec<Command> = app
        .screen()
        .rows
        .into_iter()
        .filter_map(|row| match row {
            Row::Figure { command, .. } => command,
            _ => None,
        })
        .collect();
    assert_eq!(back.len(), 3);
    app.send(back[2].clone());
    assert_eq!(app.job.rooms.len(), 0);
    app.send(Command::Undo);
    assert_eq!(app.job.rooms.len(), 3);
}

#[test]
fn a_job_that_was_handed_over_is_taken_in_and_later_brought_together() {
    let (ours, theirs) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let mut app = at(ours.path());
    app.send(Command::NewRoom(Shape::Rectangle));
    wait(&app, |kept| *kept == Kept::Yes);
    // Handed over, and taken in on another device.
    let file = theirs.path().join("cabin.rodshare");
    let bytes = write_share(&ours.path().join("cabin.site")).unwrap().bytes;
    fs::write(&file, bytes).unwrap();
    let mut other = start(theirs.path(), Some(&file), false).unwrap();
    assert_eq!(other.job, app.job);
    // Both go on; the file comes back.
    other.send(Command::NewRoom(Shape::L));
    app.send(Command::NewRoom(Shape::Alcove));
    wait(&other, |kept| *kept == Kept::Yes);
    let theirs_at = jobs_in(theirs.path())
        .into_iter()
        .find(|job| open_job(job).is_ok_and(|known| known.job.id == app.job.id));
    let back = ours.path().join("back.rodshare");
    fs::write(&back, write_share(&theirs_at.unwrap()).unwrap().bytes).unwrap();
    app.send(Command::TakeIn(back.clone()));
    let walls: Vec<usize> = app.job.rooms.iter().map(|room| room.walls.len()).collect();
    assert_eq!(walls, [4, 8, 6], "{}", app.said);
    app.send(Command::TakeIn(back));
    assert_eq!(app.job.rooms.len(), 3, "the second time nothing is new");
    app.send(Command::Undo);
    assert_eq!(
        app.job.rooms.len(),
        2,
        "bringing together is an edit like any other"
    );
    app.send(Command::Redo);
    app.finish().unwrap();
    drop(app);
    assert_eq!(at(ours.path()).job.rooms.len(), 3);
}
