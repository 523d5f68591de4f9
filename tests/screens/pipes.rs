//! A run of pipe by a few taps: way, length, fitting measured; ticked dry; and the next run knows the fitting.

use storyrod::app::{App, Here, Row, start};
use storyrod::measure::Length;
use storyrod::takeoff::Ask;
use storyrod::trades::pipe::{self, figure};

use crate::harness::{desk, keys, labels, scroll, settle, shot, tap};

fn run(app: &App, at: usize) -> pipe::Ask {
    let Ask::Pipe(ask, _) = &app.job.tasks[at].ask else {
        panic!("a run was asked for");
    };
    (**ask).clone()
}

fn cuts(app: &App, at: usize) -> Vec<Length> {
    let figure = figure(&run(app, at)).unwrap();
    figure.pieces.iter().map(|piece| piece.cut).collect()
}

/// What the order of work says.
fn told(app: &App, what: &str) -> bool {
    let rows = app.screen().rows;
    rows.iter()
        .any(|row| matches!(row, Row::Text(text) if text.contains(what)))
}

#[test]
fn a_run_is_drawn_cut_and_fitted_dry_and_its_elbow_is_known_the_next_time() {
    let folder = tempfile::tempdir().unwrap();
    let open = || start(folder.path(), Some(&folder.path().join("a.site")), false).unwrap();
    let window = desk(open(), (412, 892));
    tap(&window, "Figure");
    tap(&window, "Pipe, runs, offsets, cut lengths");
    shot(&window, "pipe-new");
    tap(&window, "Copper tube, type M");
    // Up 24 in from an open end, then 36 in to the right: an elbow stands between them, and the pad asks for it.
    tap(&window, "Up");
    keys(&window, "24\n");
    // With a leg there the run stands first; farther down "Right" would turn the leg that is there.
    scroll(&window, 100_000.0);
    tap(&window, "Right");
    shot(&window, "pipe-pad");
    keys(&window, "36\n");
    shot(&window, "pipe-elbow");
    keys(&window, "7/8\n");
    window.with_app(|app| {
        assert_eq!(run(app, 0).legs.len(), 2);
        // 24 and 36 in, each less a take-off of 3/8 at the elbow; the cup is printed, 1/2 in.
        let cut = [Length::in_64(23, 40), Length::in_64(35, 40)];
        assert_eq!(cuts(app, 0), cut);
        assert!(!told(app, "Clean, flux and solder"));
    });
    shot(&window, "pipe-cut");
    // Joining opens once both pieces were fitted dry, and shuts when one of them changes.
    let about = "1/2 in copper tube, type M, depth lines at 1/2\"";
    tap(&window, &format!("Piece 1, leg 1, 1' 11 5/8\", {about}"));
    tap(&window, &format!("Piece 2, leg 2, 2' 11 5/8\", {about}"));
    window.with_app(|app| assert!(told(app, "Clean, flux and solder")));
    shot(&window, "pipe-dry");
    tap(&window, "Leg 2, 3'");
    keys(&window, "35 1/2\n");
    window.with_app(|app| {
        assert!(!told(app, "Clean, flux and solder"));
        assert!(run(app, 0).fitted.is_empty());
    });
    tap(&window, "Add to buying list");
    window.with_app(|app| {
        let lines = app.buying_lines();
        let titles: Vec<&str> = lines.iter().map(|line| &line.title[..]).collect();
        for title in [
            "1/2 in copper tube, type M",
            "1/2 in copper 90° elbow",
            "Solder without lead, wire of 1/8 in",
        ] {
            assert!(titles.contains(&title), "{title} in {titles:?}");
        }
    });
    drop(window);
    // Another job on the same device: the elbow comes from the shelf.
    let other = start(folder.path(), Some(&folder.path().join("b.site")), false).unwrap();
    let window = desk(other, (1180, 820));
    tap(&window, "Figure");
    tap(&window, "Pipe, runs, offsets, cut lengths");
    for (way, length) in [("Up", "20\n"), ("Left", "20\n")] {
        tap(&window, way);
        keys(&window, length);
    }
    window.with_app(|app| {
        assert_eq!(*app.here(), Here::Task(0));
        assert_eq!(cuts(app, 0), [Length::in_64(19, 40), Length::in_64(19, 40)]);
    });
    shot(&window, "pipe-shelf-tablet");
}

/// A leg too short says how long it has to be, and its tap leads to the figure.
#[test]
fn what_is_wrong_names_its_leg_and_leads_to_it() {
    let folder = tempfile::tempdir().unwrap();
    let app = start(folder.path(), Some(&folder.path().join("a.site")), false).unwrap();
    let window = desk(app, (820, 1180));
    tap(&window, "Figure");
    tap(&window, "Pipe, runs, offsets, cut lengths");
    for (way, length) in [("Up", "24\n"), ("Right", "1\n")] {
        tap(&window, way);
        keys(&window, length);
    }
    keys(&window, "7/8\n");
    tap(&window, "Up");
    keys(&window, "12\n");
    window.with_app(|app| {
        let rows = app.screen().rows;
        let Some(Row::Note { text, mend, .. }) = rows.first() else {
            panic!("{:?}", rows.first());
        };
        assert!(
            text.starts_with("Leg 2 is shorter than its fittings"),
            "{text}"
        );
        assert!(mend.is_some());
    });
    shot(&window, "pipe-short-upright");
    tap(&window, "Measure it again");
    keys(&window, "6\n");
    window.with_app(|app| assert_eq!(cuts(app, 0).len(), 3));
}

/// Coming back from the strip, a run stands where it was left, and a page that is gone on to begins at its top.
#[test]
fn a_page_stands_where_it_was_left_when_one_comes_back_to_it() {
    let folder = tempfile::tempdir().unwrap();
    let app = start(folder.path(), None, true).unwrap();
    let at = (0..app.job.tasks.len()).find(|at| matches!(app.job.tasks[*at].ask, Ask::Pipe(..)));
    let window = desk(app, (412, 892));
    window.act(|app| {
        app.send(storyrod::app::Command::Go(Here::Task(
            at.expect("the demo has runs"),
        )));
    });
    let settled = |window: &storyrod::gui::Desk| {
        settle();
        window.scrolled()
    };
    assert!(settled(&window).abs() < 0.5);
    tap(&window, "The strip to mark a cut by");
    assert!(settled(&window).abs() < 0.5);
    tap(&window, "Back");
    let back = settled(&window);
    assert!(back < -500.0, "{back}");
    let labels = labels(&window);
    assert!(
        labels
            .iter()
            .any(|label| label == "The strip to mark a cut by")
    );
}
