//! What holds for any order of pieces.

use proptest::prelude::*;
use storyrod::geometry::stock::{Order, Origin, Plan, Stick, plan};
use storyrod::measure::Length;

fn orders() -> impl Strategy<Value = Order> {
    let sixteenths = |n: i64| Length::in_64(0, 4 * n);
    let pieces = prop::collection::vec(20..1_500i64, 1..24);
    let offcuts = prop::collection::vec(100..1_200i64, 0..4);
    let short = prop::option::of(1..4u32);
    (pieces, offcuts, short, 0..4i64).prop_map(move |(pieces, offcuts, short, kerf)| {
        let mut sticks = vec![Stick {
            length: Length::feet(8),
            count: None,
            cost: 1,
        }];
        sticks.extend(short.map(|count| Stick {
            length: Length::feet(10),
            count: Some(count),
            cost: 1,
        }));
        Order {
            pieces: pieces.into_iter().map(sixteenths).collect(),
            kerf: sixteenths(kerf),
            sticks,
            offcuts: offcuts.into_iter().map(sixteenths).collect(),
        }
    })
}

fn lengths(order: &Order, cut: &Plan) -> Vec<Vec<Length>> {
    let on = |at: &usize| order.pieces[*at];
    cut.cuts
        .iter()
        .map(|cut| cut.pieces.iter().map(on).collect())
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(80))]

    #[test]
    fn prop_pieces_cuts_and_rests_make_up_the_sticks(order in orders()) {
        let cut = plan(&order).unwrap();
        let mut seen: Vec<usize> = Vec::new();
        let mut offcuts: Vec<usize> = Vec::new();
        let mut tens = 0;
        for stick in &cut.cuts {
            let pieces: Length = stick.pieces.iter().map(|at| order.pieces[*at]).sum();
            prop_assert_eq!(pieces + stick.sawn + stick.rest, stick.length);
            prop_assert!(stick.rest >= Length::ZERO);
            // As many cuts as pieces where something remains, and one less where nothing does.
            let count = stick.pieces.len() as i64;
            prop_assert!(stick.sawn <= order.kerf * count && stick.sawn >= order.kerf * (count - 1));
            prop_assert!(stick.rest == Length::ZERO || stick.sawn == order.kerf * count);
            seen.extend(&stick.pieces);
            match stick.from {
                Origin::Offcut(at) => {
                    prop_assert_eq!(order.offcuts[at], stick.length);
                    offcuts.push(at);
                }
                Origin::Stick(at) => {
                    prop_assert_eq!(order.sticks[at].length, stick.length);
                    tens += u32::from(at == 1);
                }
                Origin::Missing => prop_assert!(false, "8 ft boards are without end"),
            }
        }
        seen.sort_unstable();
        prop_assert_eq!(seen, (0..order.pieces.len()).collect::<Vec<_>>());
        offcuts.sort_unstable();
        let used = offcuts.len();
        offcuts.dedup();
        prop_assert_eq!(used, offcuts.len(), "an offcut is cut once");
        let there = order.sticks.get(1).and_then(|stick| stick.count).unwrap_or(0);
        prop_assert!(tens <= there);
    }

    #[test]
    fn prop_no_plan_is_below_what_its_lengths_need(order in orders()) {
        let cut = plan(&order).unwrap();
        prop_assert!(cut.least <= cut.cost);
        let needed: Length = order.pieces.iter().map(|piece| *piece + order.kerf).sum();
        let free: Length = order.offcuts.iter().map(|offcut| *offcut + order.kerf).sum();
        let longest = order.sticks.iter().map(|stick| stick.length).max().unwrap() + order.kerf;
        prop_assert!(longest * cut.least + longest > needed - free);
        prop_assert!(longest * cut.cost + free >= needed);
    }

    #[test]
    fn prop_a_wider_cut_never_takes_fewer_sticks(order in orders()) {
        let wide = Order { kerf: order.kerf + Length::in_64(0, 4), ..order.clone() };
        let (thin, wide) = (plan(&order).unwrap(), plan(&wide).unwrap());
        prop_assert!(wide.cost >= thin.least, "{} {}", wide.cost, thin.least);
    }

    #[test]
    fn prop_what_is_on_hand_never_makes_it_dearer(order in orders()) {
        let bare = Order { offcuts: Vec::new(), ..order.clone() };
        let (with, without) = (plan(&order).unwrap(), plan(&bare).unwrap());
        prop_assert!(with.least <= without.cost);
        // Offcuts are cut into where that saves a stick, and only there.
        let used = with.cuts.iter().any(|cut| matches!(cut.from, Origin::Offcut(_)));
        prop_assert!(!used || !without.is_proven() || with.cost < without.cost);
    }

    #[test]
    fn prop_the_order_of_the_pieces_does_not_matter(order in orders(), by in 1..20usize) {
        let mut turned = order.clone();
        let by = by % turned.pieces.len();
        turned.pieces.rotate_left(by);
        let (one, other) = (plan(&order).unwrap(), plan(&turned).unwrap());
        prop_assert_eq!(lengths(&order, &one), lengths(&turned, &other));
    }
}
