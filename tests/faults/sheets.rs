//! Board in sheets through the document and through JSON: every choice, what is missing, what is wrong.

use chrono::DateTime;
use storyrod::geometry::Region;
use storyrod::measure::quantity::kilograms;
use storyrod::measure::{Length, Units};
use storyrod::site::{FixedKind, Studs};
use storyrod::store::json::{from_json, to_json};
use storyrod::store::{Snapshot, create_job, open_job};
use storyrod::takeoff::{Ask, Job, LineKey, TileOn};
use storyrod::trades::Material;
use storyrod::trades::sheets::{self, Begin, Board, Framing, Surface, Thing, ThingShape, Way};

/// Sheets with something in every field.
pub fn sheets() -> sheets::Ask {
    let thing = |kind, shape| Thing {
        kind,
        shape,
        from_left: Length::mm(301),
        from_top: Length::mm(407),
        clear: Length::mm(4),
    };
    sheets::Ask {
        surface: Region::rectangle(Length::mm(2_222), Length::mm(3_333)),
        on: Surface::Ceiling,
        board: Board::Plywood,
        sheet: (Length::mm(2_501), Length::mm(1_249)),
        thickness: Length::mm(13),
        way: Way::Up,
        begin: Begin {
            right: true,
            bottom: false,
        },
        gap: Length::mm(2),
        edge: Length::mm(5),
        off_floor: Length::mm(11),
        stagger: Length::mm(307),
        framing: Some(Framing {
            upright: false,
            studs: Studs::Found {
                centres: vec![Length::mm(7), Length::mm(401)],
                face: Length::mm(39),
            },
            land: false,
        }),
        things: vec![
            thing(
                Some(FixedKind::Other),
                ThingShape::Round {
                    across: Length::mm(51),
                },
            ),
            thing(
                None,
                ThingShape::Rectangle {
                    width: Length::mm(61),
                    height: Length::mm(71),
                },
            ),
        ],
        screws: (Length::mm(149), Length::mm(199)),
        kerf: Length::mm(3),
        reuse: false,
        quarter: false,
        waste: 0.125,
        weight: Some(kilograms(27.5)),
        ..sheets::Ask::default()
    }
}

fn every_choice() -> Job {
    let begun = DateTime::UNIX_EPOCH.fixed_offset();
    let mut job = Job::new("Sheets", begun, Units::Metres);
    job.add_room(storyrod::site::Room::rectangle("a"));
    job.add_task(None, Ask::Sheets(Box::new(sheets()), TileOn::Own));
    job.add_task(Some(0), Ask::Sheets(Box::default(), TileOn::Floor));
    let wall = Box::new(sheets::Ask::wall());
    job.add_task(Some(0), Ask::Sheets(wall, TileOn::Wall(3)));
    for material in [
        Material::Sheet {
            board: Board::Cement,
            long: Length::feet(5),
            short: Length::feet(3),
            thickness: Length::in_64(0, 16),
        },
        Material::SheetScrews {
            board: Board::Plywood,
            length: Length::in_64(1, 16),
        },
        Material::MeshTape,
    ] {
        job.buying.ticked.insert(LineKey::Material(material));
    }
    job
}

#[test]
fn every_choice_comes_back_from_the_disk_and_from_json() {
    let job = every_choice();
    let folder = tempfile::tempdir().unwrap();
    let path = create_job(folder.path(), &job).unwrap();
    let opened = open_job(&path).unwrap();
    assert_eq!(
        (&opened.job.tasks, &opened.job.buying),
        (&job.tasks, &job.buying)
    );
    let text = to_json(&Snapshot::of(job.clone())).unwrap();
    let read = from_json(&text).unwrap();
    assert_eq!(
        (&read.job.tasks, &read.job.buying),
        (&job.tasks, &job.buying)
    );
}

fn read(ask: &str) -> Result<Ask, String> {
    let text = format!(
        r#"{{"storyrod": 1, "name": "Sheets", "units": "metres", "figures": [{{"ask": {ask}}}]}}"#
    );
    match from_json(&text) {
        Ok(found) => Ok(found.job.tasks[0].ask.clone()),
        Err(why) => Err(format!("{why:?}")),
    }
}

#[test]
fn what_is_missing_is_as_in_a_new_figure_and_what_is_wrong_is_named() {
    let new = Ok(Ask::Sheets(Box::default(), TileOn::Own));
    assert_eq!(read(r#"{"sheets": {}}"#), new);
    for wrong in [
        r#"{"sheets": {"board": "cardboard"}}"#,
        r#"{"sheets": {"long_nm": 99999999999999999}}"#,
        r#"{"sheets": {"waste": -1}}"#,
        r#"{"sheets": {"weight_kg": -3}}"#,
    ] {
        let why = read(wrong).unwrap_err();
        assert!(why.contains("sheets"), "{why}");
    }
}
