use super::*;
use crate::handbook::drain as book;
use crate::trades::{Material, Weight};

fn studs(depth: Length, bearing: bool) -> Ask {
    Ask {
        size: Size::OneAndHalf,
        start: Some(Length::inches(18)),
        through: Through::Studs {
            first: Length::inches(8),
            spacing: Length::inches(16),
            depth,
            across: None,
            bearing,
            doubled: false,
        },
        fixtures: [1, 0, 0, 0, 0],
        ..Ask::default()
    }
}

#[track_caller]
fn beyond(change: impl FnOnce(&mut Ask), field: Field) {
    let mut ask = studs(Length::in_64(3, 32), false);
    change(&mut ask);
    match figure(&ask) {
        Err(Problem::Beyond { field: named, .. }) => assert_eq!(named, field),
        other => panic!("{field:?}: {other:?}"),
    }
}

#[test]
fn a_figure_beyond_its_limit_is_named() {
    beyond(|a| a.run = Length::ZERO, Field::Run);
    beyond(|a| a.run = Length::LONGEST, Field::Run);
    beyond(|a| a.fall = Some(-Length::inches(1)), Field::Fall);
    beyond(|a| a.start = Some(Length::feet(21)), Field::Start);
    beyond(|a| a.hole = Some(Length::inches(13)), Field::Hole);
    beyond(|a| a.fixtures[2] = 51, Field::Fixtures(2));
    let arm = Arm {
        size: Size::Two,
        length: Length::ZERO,
    };
    beyond(|a| a.arm = Some(arm), Field::Arm);
    let flange = Flange {
        rough_in: Length::inches(12),
        to_come: Length::feet(1),
    };
    beyond(|a| a.flange = Some(flange), Field::ToCome);
    let joists = |first: i64, spacing: i64, depth: i64| Through::Joists {
        first: Length::inches(first),
        spacing: Length::inches(spacing),
        depth: Length::inches(depth),
        engineered: false,
    };
    beyond(|a| a.through = joists(-1, 16, 9), Field::First);
    beyond(|a| a.through = joists(8, 0, 9), Field::Spacing);
    beyond(|a| a.through = joists(8, 16, 0), Field::Depth);
}

#[test]
fn a_hole_smaller_than_the_pipe_is_none() {
    let ask = Ask {
        hole: Some(Length::inches(2)),
        ..Ask::default()
    };
    let pipe = book::OUTSIDE.value[2];
    assert_eq!(figure(&ask), Err(Problem::HoleTooSmall(pipe)));
}

#[test]
fn a_drain_in_studs_keeps_its_place_and_falls() {
    let drain = figure(&studs(Length::in_64(3, 32), false)).unwrap();
    assert_eq!(drain.holes.len(), 5);
    assert_eq!(drain.start, Length::inches(18));
    assert_eq!(
        drain.holes[3].centre,
        Length::inches(18) - fall_in(Length::inches(56), drain.fall)
    );
    // 0.80 in from both faces of five studs.
    assert_eq!(drain.plates, 10);
    assert_eq!(drain.account.needs[0].material, Material::ShieldPlate);
    let weights = |ask: &Ask| figure(ask).unwrap().account.findings[0].weight;
    assert_eq!(
        weights(&studs(Length::in_64(3, 32), false)),
        Weight::Caution
    );
    assert_eq!(weights(&studs(Length::in_64(3, 32), true)), Weight::Stop);
}

#[test]
fn a_pipe_hung_clear_below_the_joists_bores_nothing() {
    let ask = Ask {
        start: Some(-Length::inches(2)),
        ..Ask::default()
    };
    let drain = figure(&ask).unwrap();
    assert!(
        drain
            .holes
            .iter()
            .all(|hole| hole.clear && hole.faults.is_empty())
    );
    // Half in, half out is no hole within any limit.
    let half = figure(&Ask {
        start: Some(Length::inches(1)),
        ..Ask::default()
    });
    assert!(
        half.unwrap()
            .holes
            .iter()
            .all(|hole| !hole.clear && !hole.faults.is_empty())
    );
}

#[test]
fn less_fall_than_the_code_stops() {
    let ask = Ask {
        fall: Some(Length::in_64(0, 8)),
        ..Ask::default()
    };
    let found = figure(&ask).unwrap().account.findings;
    assert_eq!(found[0].weight, Weight::Stop);
    assert_eq!(found[0].rule, book::FALL_UPC.cite);
    let stops = |ask: &Ask| {
        let found = figure(ask).unwrap().account.findings;
        found.iter().filter(|f| f.weight == Weight::Stop).count()
    };
    assert_eq!(stops(&Ask::default()), 0);
}

#[test]
fn no_run_of_joists_is_counted_without_end() {
    let ask = Ask {
        run: Length::feet(200),
        through: Through::Joists {
            first: Length::ZERO,
            spacing: Length::inches(1),
            depth: Length::in_64(9, 16),
            engineered: false,
        },
        ..Ask::default()
    };
    assert_eq!(
        figure(&ask),
        Err(Problem::TooManyMembers(limits::MOST_MEMBERS))
    );
}
