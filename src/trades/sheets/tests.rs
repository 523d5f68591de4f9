//! Sheets: each rule by itself.

use super::*;
use crate::geometry::{Point, Polygon, Region};
use crate::measure::Length;
use crate::site::Studs;

fn bare(wide: i64, high: i64) -> Ask {
    Ask {
        surface: Region::rectangle(Length::inches(wide), Length::inches(high)),
        gap: Length::ZERO,
        edge: Length::ZERO,
        ..Ask::default()
    }
}

fn studs(first: i64, spacing: i64) -> Option<Framing> {
    Some(Framing {
        upright: true,
        studs: Studs::Spaced {
            first: Length::inches(first),
            spacing: Length::inches(spacing),
            face: Length::in_64(1, 32),
        },
        land: true,
    })
}

/// The box of each piece in whole inches: left, top, width, height.
fn boxes(figure: &Figure) -> Vec<(f64, f64, f64, f64)> {
    let of = |piece: &Piece| {
        let (least, _) = piece.region.bounds().unwrap();
        let inches = |n: Length| (n.in_inches() * 100.0).round() / 100.0;
        (
            inches(least.x),
            inches(least.y),
            inches(piece.size.0),
            inches(piece.size.1),
        )
    };
    figure.pieces.iter().map(of).collect()
}

#[test]
fn courses_follow_each_other_and_the_second_is_shifted() {
    let figure = figure(&bare(100, 60)).unwrap();
    let boxes = boxes(&figure);
    assert_eq!(boxes[0], (0.0, 0.0, 60.0, 36.0));
    assert_eq!(boxes[1], (60.0, 0.0, 40.0, 36.0));
    assert_eq!(boxes[2].1, 36.0);
    assert!((boxes[2].2 - 60.0).abs() >= 8.0, "{boxes:?}");
    assert!(figure.crosses.is_empty() && figure.near.is_none());
}

#[test]
fn a_last_strip_that_is_too_narrow_is_shared_with_the_first_course() {
    // 74 in: 36 + 36 + 2, so 19 + 36 + 19.
    let figure = figure(&bare(60, 74)).unwrap();
    let heights: Vec<f64> = boxes(&figure).iter().map(|b| b.3).collect();
    assert_eq!(heights, [19.0, 36.0, 19.0]);
    // The two strips come out of one sheet only where both fit: 38 in are more than 36.
    assert_eq!((figure.taken, figure.at_least), (3, 3));
}

#[test]
fn ends_land_on_studs_and_say_so_where_none_is_there() {
    let mut ask = Ask {
        framing: studs(15, 16),
        edge: Length::ZERO,
        off_floor: Length::ZERO,
        surface: Region::rectangle(Length::inches(140), Length::inches(96)),
        ..Ask::wall()
    };
    let found = figure(&ask).unwrap();
    assert!(found.off_framing.is_empty());
    for (from, to) in &found.lines {
        if from.x == to.x {
            // 15, 31, 47 …
            let n = (from.x.in_inches() - 15.0) / 16.0;
            assert!((n - n.round()).abs() < 1e-9, "{}", from.x.in_inches());
        }
    }
    ask.framing = studs(110, 96);
    assert!(!figure(&ask).unwrap().off_framing.is_empty());
}

#[test]
fn a_hole_is_measured_from_the_edges_of_its_piece() {
    let mut ask = bare(60, 60);
    ask.things = vec![Thing {
        kind: None,
        shape: ThingShape::Round {
            across: Length::inches(7),
        },
        from_left: Length::inches(20),
        from_top: Length::inches(46),
        clear: Length::in_64(0, 32),
    }];
    let figure = figure(&ask).unwrap();
    let hole = figure.pieces[1].holes[0];
    assert_eq!(
        (hole.from_left, hole.from_top),
        (Length::inches(20), Length::inches(10))
    );
    let eight = ThingShape::Round {
        across: Length::inches(8),
    };
    assert_eq!(hole.shape, eight);
    assert!(figure.pieces[0].holes.is_empty());
    // One cut across, and no chords of the hole.
    assert_eq!(figure.pieces[1].cuts.len(), 1);
}

#[test]
fn a_scribed_side_has_a_measure_at_both_ends() {
    let at = |x, y: i64| Point::new(x, Length::inches(y));
    let mut ask = bare(60, 36);
    ask.surface = Region {
        outer: Polygon {
            points: vec![
                at(Length::ZERO, 0),
                at(Length::in_64(34, 8), 0),
                at(Length::in_64(34, 24), 36),
                at(Length::ZERO, 36),
            ],
        },
        holes: Vec::new(),
    };
    let figure = figure(&ask).unwrap();
    let cut = figure.pieces[0].cuts[0];
    assert_eq!(cut.way, CutWay::Upright);
    assert_eq!(
        cut.measures(),
        (Length::in_64(34, 8), Length::in_64(34, 24))
    );
    assert_eq!(cut.taper(), Length::in_64(0, 16));
}

#[test]
fn a_wall_board_stands_off_the_floor() {
    let mut ask = Ask::wall();
    ask.surface = Region::rectangle(Length::inches(96), Length::inches(96));
    let figure = figure(&ask).unwrap();
    let low = figure.pieces.iter().map(|p| p.region.bounds().unwrap().1.y);
    assert_eq!(
        low.max().unwrap(),
        Length::inches(96) - crate::handbook::sheets::OFF_FLOOR.value
    );
}

#[track_caller]
fn refused(change: impl Fn(&mut Ask), expected: &Problem) {
    let mut ask = bare(60, 96);
    change(&mut ask);
    assert_eq!(&figure(&ask).unwrap_err(), expected);
}

#[test]
fn what_cannot_be_laid_is_named() {
    let beyond = |field, least, most| Problem::Beyond { field, least, most };
    let feet = Length::feet;
    refused(
        |ask| ask.sheet.0 = Length::ZERO,
        &beyond(Field::Long, Length::inches(6), feet(20)),
    );
    refused(
        |ask| ask.gap = -Length::mm(1),
        &beyond(Field::Gap, Length::ZERO, Length::inches(1)),
    );
    refused(
        |ask| ask.sheet = (feet(3), feet(5)),
        &Problem::SidesExchanged,
    );
    refused(|ask| ask.waste = f64::NAN, &Problem::NoSuchWaste);
    refused(
        |ask| {
            ask.surface = Region::rectangle(Length::inches(4), feet(1));
            ask.edge = Length::inches(2);
        },
        &Problem::NothingLeft,
    );
    refused(
        |ask| {
            ask.things = vec![Thing {
                kind: None,
                shape: ThingShape::Round { across: feet(1) },
                from_left: feet(30),
                from_top: feet(1),
                clear: Length::ZERO,
            }];
        },
        &Problem::Outside(0),
    );
    refused(
        |ask| {
            ask.framing = Some(Framing {
                upright: true,
                studs: Studs::Found {
                    centres: Vec::new(),
                    face: Length::inches(1),
                },
                land: true,
            });
        },
        &Problem::NoFraming,
    );
}
