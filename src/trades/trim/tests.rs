use super::*;
use crate::measure::{Angle, Length};
use crate::site::FixtureKind;
use crate::trades::Weight;

fn inches(n: i64) -> Length {
    Length::inches(n)
}

fn wall(long: i64, turn: i64) -> Wall {
    Wall {
        length: inches(long),
        turn: Angle::degrees(turn),
        gaps: Vec::new(),
        studs: Vec::new(),
    }
}

/// 96 by 60 in, a door of 30 in 12 in from the left corner of the first wall.
fn bath() -> Ask {
    let mut walls = vec![wall(96, 90), wall(60, 90), wall(96, 90), wall(60, 90)];
    walls[0].gaps.push(Gap {
        from: inches(12),
        to: inches(42),
        stop: Stop::Cased,
    });
    Ask {
        walls: Some(walls),
        casing: inches(2),
        reveal: Length::in_64(0, 16),
        ..Ask::default()
    }
}

fn lengths(figure: &Figure) -> Vec<f64> {
    figure
        .pieces
        .iter()
        .map(|piece| piece.long().in_inches())
        .collect()
}

/// From the door's casing, 42 + 1/4 + 2 in, to the right corner 51 3/4 in; round the room; 12 − 2 1/4 in to the casing.
#[test]
fn base_goes_round_from_one_casing_of_the_door_to_the_other() {
    let figure = figure(&bath()).unwrap();
    assert_eq!(lengths(&figure), [51.75, 60.0, 96.0, 60.0, 9.75]);
    let cuts: Vec<[Cut; 2]> = figure
        .pieces
        .iter()
        .map(|p| p.ends.map(|end| end.cut))
        .collect();
    let (square, coped) = (Cut::Square, Cut::Coped);
    assert_eq!(
        cuts,
        [
            [square, square],
            [coped, square],
            [coped, square],
            [coped, square],
            [coped, square]
        ]
    );
    // 1/2 in thick: in front it is half an inch shorter where it is coped.
    assert_eq!(figure.pieces[1].face(), Length::in_64(59, 32));
    assert_eq!(figure.open, Length::in_64(34, 32));
    assert_eq!(figure.copes, 4);
}

/// Walked the other way the same pieces come in the other order, coped at their other ends.
#[test]
fn walked_to_the_left_the_other_ends_are_coped() {
    let ask = Ask {
        backward: true,
        ..bath()
    };
    let figure = figure(&ask).unwrap();
    assert_eq!(lengths(&figure), [9.75, 60.0, 96.0, 60.0, 51.75]);
    assert!(
        figure.pieces[1..]
            .iter()
            .all(|piece| piece.ends[1].cut == Cut::Coped)
    );
    assert_eq!(
        figure.pieces[0].of,
        Of::Wall(0, Length::ZERO, Length::in_64(9, 48))
    );
}

/// Without a door the first piece goes in square and the last is coped at both ends; mitred, all corners are alike.
#[test]
fn a_room_without_a_door_closes() {
    let mut ask = bath();
    ask.walls.as_mut().unwrap()[0].gaps.clear();
    let figured = figure(&ask).unwrap();
    assert_eq!(lengths(&figured), [96.0, 60.0, 96.0, 60.0]);
    assert_eq!(figured.pieces[0].ends.map(|end| end.cut), [Cut::Square; 2]);
    assert_eq!(figured.pieces[3].ends.map(|end| end.cut), [Cut::Coped; 2]);
    ask.inside = Inside::Mitred;
    let figured = figure(&ask).unwrap();
    assert!(
        figured
            .pieces
            .iter()
            .all(|p| p.ends.map(|end| end.cut) == [Cut::Inside; 2])
    );
    // Long points at the wall, short points half an inch in at both ends.
    assert_eq!(figured.pieces[0].short(), inches(95));
    assert_eq!(figured.pieces[0].long(), inches(96));
}

/// Hand-computed: at an inside corner of 92° (turn 88°) the saw shows 44°, and 1/2 in reaches 0.5 × tan 44° = 0.48284 in;
/// at an outside corner that turns 45° it shows 22.5°, and 3/4 in reaches 0.75 × tan 22.5° = 0.31066 in.
#[test]
fn mitres_of_corners_off_square() {
    let reach = mitre_reach(Length::in_64(0, 32), saw_angle(Angle::degrees(88)));
    assert!((reach.in_inches() - 0.482_844).abs() < 1e-6, "{reach:?}");
    let reach = mitre_reach(Length::in_64(0, 48), saw_angle(Angle::degrees(-45)));
    assert!((reach.in_inches() - 0.310_660).abs() < 1e-6, "{reach:?}");
    // An L: the corner that juts in lengthens both of its pieces by the thickness.
    let walls = vec![
        wall(88, 90),
        wall(50, 90),
        wall(34, -90),
        wall(12, 90),
        wall(54, 90),
        wall(62, 90),
    ];
    let ask = Ask {
        walls: Some(walls),
        ..Ask::default()
    };
    let figured = figure(&ask).unwrap();
    assert_eq!(figured.pieces[2].ends[1].cut, Cut::Outside);
    assert_eq!(figured.pieces[2].long(), Length::in_64(34, 32));
    assert_eq!(figured.pieces[3].long(), Length::in_64(12, 32));
    // Coped to the left −1/2, mitred to the right +1/2: in front it is as long as at the wall.
    assert_eq!(figured.pieces[2].face(), inches(34));
}

/// The other wall of a corner of 45° comes 1 in back over a front of 1 in; of one wider than square it does not.
#[test]
fn a_square_piece_clears_a_sharp_corner() {
    let mut ask = bath();
    ask.thickness = inches(1);
    let walls = ask.walls.as_mut().unwrap();
    walls[0].turn = Angle::degrees(135);
    walls[2].turn = Angle::degrees(60);
    let figured = figure(&ask).unwrap();
    assert_eq!(figured.pieces[0].back, Length::in_64(50, 48));
    assert_eq!(figured.pieces[2].back, inches(96));
    // Half of 135° is beyond the saw; half of 60° is not, and it is said as off square.
    let weights: Vec<Weight> = figured.account.findings.iter().map(|f| f.weight).collect();
    assert_eq!(weights, [Weight::Caution, Weight::Note]);
}

/// A tub across the end of the room: base stops at it on three walls, and its ends are square.
#[test]
fn base_stops_at_a_tub() {
    let mut ask = bath();
    let tub = |from: i64, to: i64| Gap {
        from: inches(from),
        to: inches(to),
        stop: Stop::Fixture(FixtureKind::Tub),
    };
    let walls = ask.walls.as_mut().unwrap();
    walls[0].gaps.push(tub(66, 96));
    walls[1].gaps.push(tub(0, 60));
    walls[2].gaps.push(tub(0, 30));
    let figured = figure(&ask).unwrap();
    // 44 1/4 to 66; then from the tub on, coped to what came before it.
    assert_eq!(lengths(&figured), [21.75, 66.0, 60.0, 9.75]);
    assert_eq!(figured.pieces[1].ends.map(|end| end.cut), [Cut::Square; 2]);
    assert_eq!(figured.pieces[2].ends[0].cut, Cut::Coped);
}

/// A wall of 150 in out of sticks of 96: the slant lies over the last stud that a stick reaches, and the two pieces
/// together are as long as the wall.
#[test]
fn a_long_wall_is_joined_over_a_stud() {
    let mut ask = bath();
    let walls = ask.walls.as_mut().unwrap();
    walls[1].length = inches(150);
    walls[1].studs = (1..10).map(|n| inches(16 * n)).collect();
    let figured = figure(&ask).unwrap();
    let on_b: Vec<&Piece> = (figured.pieces.iter())
        .filter(|piece| matches!(piece.of, Of::Wall(1, ..)))
        .collect();
    assert_eq!(on_b.len(), 2);
    assert_eq!(
        on_b.iter().map(|piece| piece.back).sum::<Length>(),
        inches(150)
    );
    // 95 in of a stick reach past the stud at 80, not to the one at 96; half a slant of 1/2 in beyond its centre.
    assert_eq!(on_b[0].back, Length::in_64(80, 16));
    assert_eq!(on_b[1].long(), Length::in_64(70, 16));
    assert_eq!(figured.scarfs[0].at, inches(80));
    assert!(figured.scarfs[0].on_stud);
    assert!(figured.pieces.iter().all(|piece| piece.long() <= ask.stick));
    // Without studs a stick goes as far as it reaches.
    ask.walls.as_mut().unwrap()[1].studs.clear();
    let figured = figure(&ask).unwrap();
    assert!(!figured.scarfs[0].on_stud);
    assert!(figured.pieces.iter().all(|piece| piece.long() <= ask.stick));
}

/// A door 1 1/2 in from the corner has no room for casing of 2 in; a strip of 1/2 in between two mitres is all cut away.
#[test]
fn what_does_not_fit_is_said() {
    let mut ask = bath();
    ask.walls.as_mut().unwrap()[0].gaps[0].from = Length::in_64(1, 32);
    let figured = figure(&ask).unwrap();
    assert_eq!(figured.tight[0].room, Length::in_64(1, 16));
    assert_eq!(figured.account.findings[0].weight, Weight::Caution);
    let mut ask = bath();
    ask.inside = Inside::Mitred;
    ask.walls.as_mut().unwrap()[1].length = Length::in_64(0, 32);
    let figured = figure(&ask).unwrap();
    assert_eq!(figured.account.findings[0].weight, Weight::Stop);
}

/// A window of 24 by 36 in, reveal 1/4, casing 2 in: mitred all round, 24 1/2 and 36 1/2 inside, 28 1/2 and 40 1/2 outside.
#[test]
fn a_window_is_cased_like_a_picture() {
    let mut ask = Ask {
        width: inches(2),
        reveal: Length::in_64(0, 16),
        frames: vec![Frame {
            opening: Opening::Window,
            width: inches(24),
            height: inches(36),
            four: true,
            ..Frame::default()
        }],
        ..Ask::casing()
    };
    let figured = figure(&ask).unwrap();
    assert_eq!(lengths(&figured), [40.5, 28.5, 40.5, 28.5]);
    assert_eq!(figured.pieces[0].short(), Length::in_64(36, 32));
    assert_eq!(figured.pieces[1].short(), Length::in_64(24, 32));
    // Head and foot on the sides: these are square and as long as the opening with its reveals.
    ask.head = Head::Butted;
    assert_eq!(lengths(&figure(&ask).unwrap()), [36.5, 28.5, 36.5, 28.5]);
    ask.frames[0].four = false;
    assert_eq!(lengths(&figure(&ask).unwrap()), [36.25, 28.5, 36.25]);
}

#[test]
fn figures_out_of_range_are_named() {
    let refused = |change: fn(&mut Ask)| {
        let mut ask = bath();
        change(&mut ask);
        figure(&ask).err()
    };
    assert!(matches!(
        refused(|ask| ask.thickness = Length::ZERO),
        Some(Problem::Beyond {
            field: Field::Thickness,
            ..
        })
    ));
    assert!(matches!(
        refused(|ask| ask.stick = inches(20)),
        Some(Problem::StickTooShort { .. })
    ));
    assert!(matches!(
        refused(|ask| ask.walls.as_mut().unwrap()[3].turn = Angle::degrees(170)),
        Some(Problem::TooSharp { wall: 3, .. })
    ));
    assert_eq!(
        refused(|ask| (ask.walls, ask.pieces) = (None, Vec::new())),
        Some(Problem::Nothing)
    );
    assert!(matches!(
        refused(|ask| {
            ask.walls = None;
            ask.pieces[0].count = 100_000;
        }),
        Some(Problem::TooMany { .. })
    ));
}
