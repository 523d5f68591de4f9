//! Any true-shaped surface in sheets.

use proptest::prelude::*;
use storyrod::geometry::{LEAST_DOUBLED, Point, Polygon, Region};
use storyrod::measure::Length;
use storyrod::trades::sheets::{Ask, Begin, Figure, Thing, ThingShape, Way, figure};

fn mm(n: i64) -> Length {
    Length::mm(n)
}

/// Four corners out of square, or an L with a slanted leg.
fn surface() -> impl Strategy<Value = Region> {
    let off = || -40i64..40;
    let four = (900i64..3_500, 900i64..3_000, off(), off(), off(), off())
        .prop_map(|(w, h, a, b, c, d)| vec![(0, 0), (w + a, b), (w + c, h), (d, h + a)]);
    let ell = (
        2_000i64..3_500,
        2_000i64..3_000,
        700i64..1_300,
        700i64..1_300,
        off(),
    )
        .prop_map(|(w, h, x, y, a)| {
            vec![(0, 0), (w, a), (w + a, y), (x, y - a), (x + a, h), (0, h)]
        });
    prop_oneof![four, ell].prop_map(|corners| Region {
        outer: Polygon {
            points: corners
                .iter()
                .map(|(x, y)| Point::new(mm(*x), mm(*y)))
                .collect(),
        },
        holes: Vec::new(),
    })
}

fn ask() -> impl Strategy<Value = Ask> {
    let sheets = prop_oneof![Just((1524, 914)), Just((2438, 1219)), Just((2400, 1200))];
    (
        surface(),
        sheets,
        any::<[bool; 4]>(),
        0i64..7,
        0i64..7,
        0i64..400,
        prop::option::of((200i64..700, 200i64..600, 40i64..200)),
    )
        .prop_map(
            |(surface, (long, short), [up, right, bottom, quarter], gap, edge, stagger, hole)| {
                Ask {
                    surface,
                    sheet: (mm(long), mm(short)),
                    way: if up { Way::Up } else { Way::Across },
                    begin: Begin { right, bottom },
                    gap: mm(gap),
                    edge: mm(edge),
                    stagger: mm(stagger),
                    quarter,
                    things: hole
                        .map(|(x, y, across)| Thing {
                            kind: None,
                            shape: ThingShape::Round { across: mm(across) },
                            from_left: mm(x),
                            from_top: mm(y),
                            clear: mm(3),
                        })
                        .into_iter()
                        .collect(),
                    ..Ask::default()
                }
            },
        )
}

fn doubled(figure: &Figure) -> i128 {
    figure.pieces.iter().map(|p| p.region.doubled_area()).sum()
}

/// Left and right exchanged.
fn mirrored(ask: &Ask) -> Ask {
    let (least, most) = ask.surface.bounds().unwrap();
    let mut other = ask.clone();
    for point in &mut other.surface.outer.points {
        point.x = most.x - (point.x - least.x);
    }
    // It runs clockwise again.
    other.surface.outer.points.reverse();
    for thing in &mut other.things {
        thing.from_left = (most.x - least.x) - thing.from_left;
    }
    other.begin.right = !other.begin.right;
    other
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn prop_without_gaps_the_pieces_are_the_surface(mut ask in ask()) {
        (ask.gap, ask.edge) = (Length::ZERO, Length::ZERO);
        let figure = figure(&ask).unwrap();
        let mut whole = ask.surface.doubled_area();
        for thing in &ask.things {
            whole -= thing.outline(ask.origin()).doubled_shared(&ask.surface.outer);
        }
        // A nanometre along every edge of every piece, and what is too little for a piece.
        let slack: i64 = figure.pieces.iter().map(|p| p.region.outer.perimeter().as_nm()).sum();
        prop_assert!((doubled(&figure) - whole).abs() <= i128::from(slack) * 4 + LEAST_DOUBLED);
    }

    #[test]
    fn prop_every_piece_comes_out_of_its_sheet_and_none_lies_over_another(ask in ask()) {
        let figure = figure(&ask).unwrap();
        let (w, h) = if ask.way == Way::Up { (ask.sheet.1, ask.sheet.0) } else { ask.sheet };
        prop_assert!(figure.at_least <= figure.taken);
        let boxes: Vec<_> = figure.pieces.iter().map(|p| {
            let (wide, high) = if p.turned { (p.size.1, p.size.0) } else { p.size };
            (p.sheet, p.on_sheet, p.on_sheet + Point::new(wide, high))
        }).collect();
        for (n, (sheet, a, b)) in boxes.iter().enumerate() {
            prop_assert!(*sheet < figure.taken);
            prop_assert!(a.x >= Length::ZERO && a.y >= Length::ZERO);
            prop_assert!(b.x <= w && b.y <= h, "{:?} {:?}", b, (w, h));
            for (other, c, d) in &boxes[n + 1..] {
                let apart = b.x <= c.x || d.x <= a.x || b.y <= c.y || d.y <= a.y;
                prop_assert!(sheet != other || apart);
            }
        }
    }

    #[test]
    fn prop_more_waste_never_buys_fewer(ask in ask(), waste in 0.0f64..0.5, more in 0.0f64..0.5) {
        let count = |waste| figure(&Ask { waste, ..ask.clone() }).unwrap().to_buy;
        prop_assert!(count(waste + more) >= count(waste));
    }

    #[test]
    fn prop_a_mirrored_surface_has_mirrored_pieces(ask in ask()) {
        let (one, other) = (figure(&ask).unwrap(), figure(&mirrored(&ask)).unwrap());
        prop_assert_eq!(one.pieces.len(), other.pieces.len());
        let hair = Length::nm(50);
        for (a, b) in one.pieces.iter().zip(&other.pieces) {
            prop_assert!((a.size.0 - b.size.0).abs() < hair && (a.size.1 - b.size.1).abs() < hair);
            let off = (a.region.doubled_area() - b.region.doubled_area()).abs();
            prop_assert!(off < 4 * i128::from(a.region.outer.perimeter().as_nm() * 20));
            prop_assert_eq!(a.holes.len(), b.holes.len());
        }
        prop_assert_eq!(one.screws, other.screws);
    }
}
