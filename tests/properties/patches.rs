//! Any hole, any studs: the cut covers the hole and the piece is carried.

use proptest::prelude::*;
use storyrod::handbook::gypsum;
use storyrod::measure::Length;
use storyrod::site::Studs;
use storyrod::trades::patch::*;

fn sixteenths(n: i64) -> Length {
    Length::in_64(0, n * 4)
}

fn obstacle() -> impl Strategy<Value = Obstacle> {
    (0i64..2400, 16i64..800, 0i64..1500, 16i64..1300).prop_map(|(left, width, bottom, height)| {
        Obstacle {
            left: sixteenths(left),
            right: sixteenths(left + width),
            bottom: sixteenths(bottom),
            top: sixteenths(bottom + height),
        }
    })
}
fn hole() -> impl Strategy<Value = Hole> {
    (0i64..1800, 1i64..600, 0i64..1400, 1i64..400).prop_map(|(left, width, bottom, height)| Hole {
        shape: HoleShape::Rectangle {
            width: sixteenths(width),
            height: sixteenths(height),
        },
        from_left: Some(sixteenths(left)),
        from_stud: None,
        above_floor: Some(sixteenths(bottom)),
    })
}
fn ask() -> impl Strategy<Value = Ask> {
    let studs = prop::collection::vec(8i64..420, 0..12);
    let walls = (
        prop::option::of(2400i64..3000),
        prop::option::of(1800i64..2000),
    );
    (
        hole(),
        studs,
        walls,
        prop::collection::vec(obstacle(), 0..3),
        prop::collection::vec(hole(), 0..3),
        (0i64..=12, 32i64..=384),
    )
        .prop_map(
            |(hole, steps, (length, height), obstacles, other_holes, (gap, spacing))| Ask {
                hole,
                wall: WallFacts {
                    length: length.map(sixteenths),
                    height: height.map(sixteenths),
                    obstacles,
                },
                studs: Some(Studs::Found {
                    centres: (steps.iter())
                        .scan(0, |at, step| {
                            *at += step;
                            Some(sixteenths(*at))
                        })
                        .collect(),
                    face: Length::in_64(1, 32),
                }),
                gap: sixteenths(gap),
                screw_spacing: sixteenths(spacing),
                method: Some(Method::CutBack),
                other_holes,
                ..Ask::default()
            },
        )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn prop_the_cut_covers_the_hole_and_the_piece_is_carried(ask in ask()) {
        let answer = figure(&ask);
        prop_assume!(answer.is_ok());
        let figure = answer.unwrap();
        prop_assume!(figure.opening.is_some());
        let opening = figure.opening.unwrap();
        let (width, height) = figure.piece.unwrap();
        prop_assert!(opening.covers(&figure.damage));
        prop_assert_eq!(width + ask.gap * 2, opening.width());
        prop_assert_eq!(height + ask.gap * 2, opening.height());
        for obstacle in &ask.wall.obstacles {
            let at = Rect { left: obstacle.left, right: obstacle.right, bottom: obstacle.bottom, top: obstacle.top };
            prop_assert!(!opening.overlaps(&at), "over {:?}", at);
        }
        let (left, right) = figure.bearing.unwrap();
        let cleat = figure.backing.iter().any(|s| s.kind == StripKind::Cleat && s.upright);
        prop_assert!((left.is_positive() && right.is_positive()) || cleat);
        let piece = opening.inset(ask.gap);
        let edge = gypsum::SCREW_EDGE.value;
        for (x, y) in &figure.screws {
            let inside = piece.inset(edge);
            let well_in = inside.left <= *x && *x <= inside.right && inside.bottom <= *y && *y <= inside.top;
            let out = opening.inset(-edge);
            let well_out = *x <= out.left || *x >= out.right || *y <= out.bottom || *y >= out.top;
            let Some(Studs::Found { centres, face }) = &ask.studs else { unreachable!() };
            let on_stud = centres.iter().any(|c| (*x - *c).abs() <= face.half());
            let on_strip = figure.backing.iter().any(|s| s.at.left <= *x && *x <= s.at.right && s.at.bottom <= *y && *y <= s.at.top);
            prop_assert!(on_stud || on_strip, "no wood at {:?} {:?}: {:?}", x, y, figure);
            prop_assert!(well_in || well_out, "screw at {:?} {:?}, piece {:?}", x, y, piece);
        }
        prop_assert!(figure.screws.len() >= 2);
    }

    #[test]
    fn prop_any_method_on_any_figures_answers_or_names_the_problem(
        mut ask in ask(),
        pick in 0usize..5,
        nm in prop::array::uniform6(any::<i64>()),
        which in 0usize..9,
    ) {
        ask.method = [None, Some(Method::Fill), Some(Method::AdhesivePatch), Some(Method::BackedPatch), Some(Method::CutBack)][pick];
        let any = Length::nm(nm[0]);
        match which {
            0 => ask.gap = any,
            1 => ask.board = any,
            2 => ask.screw_spacing = any,
            3 => ask.hole.from_left = Some(any),
            4 => ask.hole.above_floor = Some(any),
            5 => ask.hole.shape = HoleShape::Round { across: any },
            6 => ask.studs = Some(Studs::Spaced { first: any, spacing: Length::nm(nm[1]), face: Length::nm(nm[2]) }),
            7 => {
                ask.hole.from_left = None;
                ask.hole.from_stud = Some((pick, any));
            }
            _ => ask.wall.obstacles.push(Obstacle { left: any, right: Length::nm(nm[1]), bottom: Length::nm(nm[2]), top: Length::nm(nm[3]) }),
        }
        if let Ok(figure) = figure(&ask) {
            prop_assert!(figure.coats == 3);
        }
    }
}
