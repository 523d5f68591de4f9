//! Base round any room.

use proptest::prelude::*;
use storyrod::measure::{Angle, Length};
use storyrod::trades::trim::{Ask, Cut, Figure, Gap, Inside, Of, Piece, Stop, Wall, figure};

fn mm(n: i64) -> Length {
    Length::mm(n)
}

/// A gap of a wall: where it begins and how wide it is in thousandths of the wall, whether it is cased.
type Hole = (i64, i64, bool);

fn walls() -> impl Strategy<Value = Vec<Wall>> {
    let turn = prop_oneof![
        4 => Just(90_000_000i64),
        2 => 80_000_000i64..100_000_000,
        1 => 20_000_000i64..140_000_000,
        1 => -100_000_000i64..-20_000_000,
    ];
    let hole = (0i64..900, 50i64..500, any::<bool>());
    let wall = (
        300i64..6_000,
        turn,
        prop::collection::vec(hole, 0..3),
        any::<bool>(),
    );
    prop::collection::vec(wall, 3..9).prop_map(|all| {
        let gap = |long: i64, (from, wide, cased): Hole| Gap {
            from: mm(long * from / 1000),
            to: mm((long * (from + wide) / 1000).min(long)),
            stop: if cased {
                Stop::Cased
            } else {
                Stop::Fixture(storyrod::site::FixtureKind::Tub)
            },
        };
        let each = all.into_iter().map(|(long, turn, holes, studs)| Wall {
            length: mm(long),
            turn: Angle::microdegrees(turn),
            gaps: holes.into_iter().map(|hole| gap(long, hole)).collect(),
            studs: if studs {
                (1..=long / 400).map(|n| mm(400 * n)).collect()
            } else {
                Vec::new()
            },
        });
        each.collect()
    })
}

fn asks() -> impl Strategy<Value = Ask> {
    (
        walls(),
        any::<bool>(),
        any::<bool>(),
        8i64..30,
        0i64..90,
        prop_oneof![Just(2_400i64), Just(3_600)],
    )
        .prop_map(|(walls, mitred, backward, thick, casing, stick)| Ask {
            walls: Some(walls),
            inside: if mitred {
                Inside::Mitred
            } else {
                Inside::Coped
            },
            backward,
            thickness: mm(thick),
            casing: mm(casing),
            stick: mm(stick),
            ..Ask::default()
        })
}

/// The walls as the room behind a shared wall has them: told anew, not by the trade's own mirror.
fn behind(walls: &[Wall]) -> Vec<Wall> {
    let mut all: Vec<Wall> = Vec::new();
    let count = walls.len();
    for now in 0..count {
        let old = &walls[(count - now) % count];
        let before = &walls[(2 * count - now - 1) % count];
        let flip = |at: Length| old.length - at;
        all.push(Wall {
            length: old.length,
            turn: before.turn,
            gaps: (old.gaps.iter())
                .map(|gap| Gap {
                    from: flip(gap.to),
                    to: flip(gap.from),
                    ..*gap
                })
                .collect(),
            studs: old.studs.iter().rev().map(|stud| flip(*stud)).collect(),
        });
    }
    all
}

/// What a square end gives up so that it clears a sharp corner.
fn given_up(figure: &Figure) -> Length {
    let ends = figure.pieces.iter().flat_map(|piece| &piece.ends);
    ends.map(|end| end.off).sum()
}

proptest! {
    /// All that lies along the walls and all that is left open are the walls.
    #[test]
    fn prop_pieces_and_openings_are_the_perimeter(ask in asks()) {
        let Ok(figured) = figure(&ask) else { return Ok(()) };
        let round: Length = ask.walls.iter().flatten().map(|wall| wall.length).sum();
        prop_assert_eq!(figured.run + figured.open + given_up(&figured), round);
    }

    /// No piece is less than nothing, none longer than a stick; the long point is the longest of it, the short the least.
    #[test]
    fn prop_a_piece_is_something_and_comes_out_of_a_stick(ask in asks()) {
        let Ok(figured) = figure(&ask) else { return Ok(()) };
        for (n, piece) in figured.pieces.iter().enumerate() {
            prop_assert!(piece.back >= Length::ZERO && piece.long() >= piece.back);
            prop_assert!(piece.short() <= piece.back && piece.short() <= piece.face());
            prop_assert!(piece.long() >= piece.face());
            prop_assert!(piece.long() <= ask.stick, "{:?}", piece);
            prop_assert_eq!(piece.number as usize, n + 1);
        }
    }

    /// The mirrored room walked the other way round has the mirrored pieces, number by number.
    #[test]
    fn prop_a_mirrored_room_has_mirrored_pieces(ask in asks()) {
        let walls = ask.walls.clone().unwrap_or_default();
        let other = Ask {
            walls: Some(behind(&walls)),
            backward: !ask.backward,
            ..ask.clone()
        };
        let (Ok(one), Ok(two)) = (figure(&ask), figure(&other)) else { return Ok(()) };
        prop_assert_eq!(one.pieces.len(), two.pieces.len());
        let count = walls.len();
        for (a, b) in one.pieces.iter().zip(&two.pieces) {
            let (Of::Wall(wall, from, to), Of::Wall(now, now_from, now_to)) = (a.of, b.of) else {
                prop_assert!(false);
                return Ok(());
            };
            prop_assert_eq!((count - wall) % count, now);
            let long = walls[wall].length;
            prop_assert_eq!((long - to, long - from), (now_from, now_to));
            prop_assert_eq!(a.ends[0], b.ends[1]);
            prop_assert_eq!(a.ends[1], b.ends[0]);
        }
    }

    /// At a corner where base meets, one is square and the other coped, or both are mitred alike.
    #[test]
    fn prop_every_coped_end_has_a_square_one_to_meet(ask in asks()) {
        let Ok(figured) = figure(&ask) else { return Ok(()) };
        let walls = ask.walls.as_deref().unwrap_or_default();
        let starts = |wall: usize| figured.pieces.iter().find(move |piece: &&Piece| {
            matches!(piece.of, Of::Wall(of, from, _) if of == wall && from <= piece.ends[0].off)
        });
        for piece in &figured.pieces {
            let Of::Wall(wall, _, to) = piece.of else { continue };
            let end = piece.ends[1];
            if to + end.off < walls[wall].length {
                continue;
            }
            let Some(next) = starts((wall + 1) % walls.len()) else { continue };
            let pair = (end.cut, next.ends[0].cut);
            prop_assert!(
                matches!(
                    pair,
                    (Cut::Square, Cut::Coped | Cut::Square)
                        | (Cut::Coped, Cut::Square)
                        | (Cut::Inside, Cut::Inside)
                        | (Cut::Outside, Cut::Outside)
                ),
                "{:?}", pair
            );
            prop_assert_eq!(end.saw.max(next.ends[0].saw), if pair == (Cut::Square, Cut::Square) {
                Angle::ZERO
            } else {
                storyrod::trades::trim::saw_angle(walls[wall].turn)
            });
        }
    }
}

/// Four corners out of square, or an L with a slanted leg, in millimetres, clockwise on the sheet.
fn outline() -> impl Strategy<Value = Vec<(i64, i64)>> {
    let off = || -60i64..60;
    let four = (900i64..2_300, 900i64..2_300, off(), off(), off(), off())
        .prop_map(|(w, h, a, b, c, d)| vec![(0, 0), (w + a, b), (w + c, h), (d, h + a)]);
    let ell = (
        1_500i64..2_300,
        1_500i64..2_300,
        700i64..1_000,
        700i64..1_000,
        off(),
    )
        .prop_map(|(w, h, x, y, a)| {
            vec![(0, 0), (w, a), (w + a, y), (x, y - a), (x + a, h), (0, h)]
        });
    prop_oneof![four, ell]
}

proptest! {
    /// Mitred base fills what lies between the walls and the room less the thickness of the base, corner by corner: the
    /// trapezes of its pieces and that band have one area. The room less its base is drawn anew, wall line by wall line.
    #[test]
    fn prop_mitred_base_fills_its_band(corners in outline(), thick in 8i64..30) {
        let count = corners.len();
        let at = |n: usize| {
            let (x, y) = corners[n % count];
            (x as f64 / 1e3, y as f64 / 1e3)
        };
        let way = |n: usize| {
            let ((ax, ay), (bx, by)) = (at(n), at(n + 1));
            (by - ay).atan2(bx - ax)
        };
        let walls: Vec<Wall> = (0..count).map(|n| {
            let ((ax, ay), (bx, by)) = (at(n), at(n + 1));
            let turn = (way(n + 1) - way(n)).to_degrees();
            let turn = if turn <= -180.0 { turn + 360.0 } else if turn > 180.0 { turn - 360.0 } else { turn };
            Wall {
                length: Length::from_metres((bx - ax).hypot(by - ay)).unwrap(),
                turn: Angle::from_degrees(turn).unwrap(),
                gaps: Vec::new(),
                studs: Vec::new(),
            }
        }).collect();
        let ask = Ask {
            walls: Some(walls),
            inside: Inside::Mitred,
            thickness: mm(thick),
            stick: mm(6_000),
            ..Ask::default()
        };
        let figured = figure(&ask).unwrap();
        let t = thick as f64 / 1e3;
        let trapezes: f64 = (figured.pieces.iter())
            .map(|piece| (piece.back.metres() + piece.face().metres()) / 2.0 * t)
            .sum();
        // Where the lines of two neighbouring walls meet that stand so far inside.
        let inner: Vec<(f64, f64)> = (0..count).map(|n| {
            let before = (n + count - 1) % count;
            let (a, b) = (way(before), way(n));
            // Inside is a quarter turn to the right on the sheet.
            let line = |way: f64, (x, y): (f64, f64)| {
                let (nx, ny) = (-way.sin(), way.cos());
                (nx, ny, nx * x + ny * y + t)
            };
            let ((ax, ay, ac), (bx, by, bc)) = (line(a, at(n)), line(b, at(n)));
            let by_both = ax * by - ay * bx;
            ((ac * by - bc * ay) / by_both, (ax * bc - bx * ac) / by_both)
        }).collect();
        let area = |points: &[(f64, f64)]| -> f64 {
            let next = points.iter().cycle().skip(1);
            points.iter().zip(next).map(|((ax, ay), (bx, by))| ax * by - bx * ay).sum::<f64>() / 2.0
        };
        let outer: Vec<(f64, f64)> = (0..count).map(at).collect();
        let band = area(&outer).abs() - area(&inner).abs();
        prop_assert!((trapezes - band).abs() < 1e-8, "{trapezes} {band}");
    }
}
