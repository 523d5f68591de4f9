use super::*;
use crate::measure::Length;
use crate::site::Studs;

fn inches(n: i64) -> Length {
    Length::inches(n)
}
fn spaced(first: i64, spacing: i64) -> Studs {
    Studs::Spaced {
        first: inches(first),
        spacing: inches(spacing),
        face: Length::in_64(1, 32),
    }
}
fn ask(left: i64, bottom: i64, width: i64, height: i64) -> Ask {
    Ask {
        hole: Hole {
            shape: HoleShape::Rectangle {
                width: inches(width),
                height: inches(height),
            },
            from_left: Some(inches(left)),
            from_stud: None,
            above_floor: Some(inches(bottom)),
        },
        wall: WallFacts {
            length: Some(inches(96)),
            height: Some(inches(96)),
            obstacles: Vec::new(),
        },
        studs: Some(spaced(0, 16)),
        ..Ask::default()
    }
}
/// Left and right saw line in inches, or `None` where there are none.
fn check(ask: &Ask, method: Method, lines: Option<(i64, i64)>) -> Figure {
    let figure = figure(ask).unwrap();
    assert_eq!(figure.method, method);
    let expected = lines.map(|(left, right)| (inches(left), inches(right)));
    assert_eq!(figure.opening.map(|o| (o.left, o.right)), expected);
    figure
}

#[test]
fn a_hole_wider_than_a_bay_is_cut_back_to_stud_centres() {
    let figure = check(&ask(41, 40, 12, 10), Method::CutBack, Some((32, 64)));
    assert_eq!(
        figure.bearing,
        Some((Length::in_64(0, 48), Length::in_64(0, 48)))
    );
    assert_eq!(
        figure.piece,
        Some((Length::in_64(31, 48), Length::in_64(11, 48)))
    );
    assert_eq!(figure.studs_crossed, [inches(48)]);
    assert_eq!(figure.tape, inches(88));
}
#[test]
fn an_opening_of_sixteen_takes_a_piece_of_fifteen_and_three_quarters() {
    let mut ask = ask(33, 40, 14, 12);
    ask.method = Some(Method::CutBack);
    let figure = check(&ask, Method::CutBack, Some((32, 48)));
    assert_eq!(figure.piece.unwrap().0, Length::in_64(15, 48));
}
#[test]
fn a_small_hole_is_filled_and_a_middle_one_patched() {
    check(&ask(40, 40, 1, 1), Method::Fill, None);
    let figure = check(&ask(40, 40, 2, 2), Method::AdhesivePatch, None);
    assert_eq!(figure.patch_side, Some(inches(6)));
    check(&ask(37, 40, 6, 6), Method::BackedPatch, Some((37, 43)));
}
#[test]
fn without_studs_a_wide_hole_says_what_to_find_and_how_to_look() {
    let mut ask = ask(40, 40, 20, 10);
    ask.studs = None;
    let figure = check(&ask, Method::CutBack, None);
    assert_eq!(figure.missing, [Field::FirstStud]);
    assert_eq!(figure.inspection.unwrap().looks.len(), 2);
}
#[test]
fn an_edge_at_a_door_gets_a_cleat() {
    let mut ask = ask(36, 40, 14, 10);
    ask.wall.obstacles.push(Obstacle {
        left: inches(52),
        right: inches(84),
        bottom: inches(0),
        top: inches(80),
    });
    let figure = check(&ask, Method::CutBack, Some((32, 52)));
    assert_eq!(figure.bearing.unwrap().1, Length::ZERO);
    assert!(
        figure
            .backing
            .iter()
            .any(|s| s.kind == StripKind::Cleat && s.upright)
    );
}
#[test]
fn two_holes_in_one_bay_get_one_piece() {
    let mut one = ask(41, 40, 12, 10);
    one.other_holes.push(ask(56, 45, 4, 10).hole);
    let figure = check(&one, Method::CutBack, Some((32, 64)));
    assert_eq!(figure.opening.unwrap().top, inches(56));
}
#[test]
fn a_chosen_fill_of_a_large_hole_is_stopped() {
    let mut ask = ask(37, 40, 6, 6);
    ask.method = Some(Method::Fill);
    let figure = check(&ask, Method::Fill, None);
    assert_eq!(
        figure.account.findings[0].weight,
        crate::trades::Weight::Stop
    );
}
#[test]
fn a_hole_over_a_door_or_past_the_wall_is_refused() {
    assert!(matches!(
        figure(&ask(90, 40, 12, 10)),
        Err(Problem::PastTheWall { .. })
    ));
    assert!(matches!(
        figure(&ask(9, 40, 0, 10)),
        Err(Problem::TooSmall { .. })
    ));
}
#[test]
fn a_quick_patch_needs_no_room() {
    let figure = figure(&Ask::default()).unwrap();
    assert!(!figure.from_corner && !figure.from_floor);
    assert_eq!(
        figure.piece,
        Some((Length::in_64(9, 48), Length::in_64(7, 48)))
    );
    assert_eq!(figure.backing.len(), 2);
    assert_eq!(figure.backing[0].length, inches(12));
}
#[test]
fn a_hole_at_the_corner_gets_a_cleat_where_no_stud_stands() {
    let mut ask = ask(2, 40, 20, 10);
    ask.studs = Some(spaced(16, 16));
    let figure = check(&ask, Method::CutBack, Some((0, 32)));
    assert_eq!(figure.bearing.unwrap().0, Length::ZERO);
    assert_eq!(figure.backing[0].kind, StripKind::Cleat);
    assert_eq!(figure.studs_used, [inches(32)]);
}
#[test]
fn wide_bays_get_blocking_behind_both_level_edges() {
    let mut ask = ask(30, 40, 20, 10);
    ask.studs = Some(spaced(0, 24));
    let figure = check(&ask, Method::CutBack, Some((24, 72)));
    assert_eq!(figure.backing.len(), 4);
    assert!(
        figure
            .backing
            .iter()
            .all(|s| s.kind == StripKind::Blocking && !s.upright)
    );
    assert_eq!(figure.backing[0].length, Length::in_64(22, 32));
}
#[test]
fn a_hole_measured_from_a_stud_lands_where_the_tape_said() {
    let mut ask = ask(0, 40, 12, 10);
    ask.hole.from_left = None;
    ask.hole.from_stud = Some((2, inches(9)));
    check(&ask, Method::CutBack, Some((32, 64)));
    ask.hole.from_stud = Some((20, inches(9)));
    assert_eq!(
        figure(&ask),
        Err(Problem::NoSuchStud {
            named: 20,
            known: 7
        })
    );
}
#[test]
fn a_fire_rated_wall_stops_whatever_the_hole() {
    let mut ask = ask(40, 40, 2, 2);
    ask.fire_rated = true;
    let figure = check(&ask, Method::AdhesivePatch, None);
    assert_eq!(
        figure.account.findings[0].weight,
        crate::trades::Weight::Stop
    );
}
#[test]
fn a_hole_over_an_opening_is_refused() {
    let mut ask = ask(36, 40, 14, 10);
    ask.wall.obstacles.push(Obstacle {
        left: inches(40),
        right: inches(70),
        bottom: inches(0),
        top: inches(80),
    });
    assert_eq!(figure(&ask), Err(Problem::OverAnOpening { obstacle: 0 }));
}
#[test]
fn a_piece_between_studs_that_almost_touch_is_screwed_all_the_same() {
    let hole = Ask {
        hole: Hole {
            shape: HoleShape::Rectangle {
                width: Length::in_64(0, 4),
                height: inches(3),
            },
            from_left: Some(Length::in_64(64, 44)),
            from_stud: None,
            above_floor: Some(inches(40)),
        },
        studs: Some(Studs::Found {
            centres: vec![Length::in_64(62, 20), Length::in_64(64, 48)],
            face: Length::in_64(1, 32),
        }),
        gap: Length::in_64(0, 40),
        method: Some(Method::CutBack),
        ..ask(0, 0, 1, 1)
    };
    let figure = figure(&hole).unwrap();
    assert!(figure.screws.len() >= 2, "{figure:?}");
}
