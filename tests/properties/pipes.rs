//! Runs of pipe, for any legs.

use proptest::prelude::*;
use storyrod::handbook::pipe::{Family, Kind, Pipe, Size, Turn};
use storyrod::measure::{Angle, Length};
use storyrod::trades::pipe::{
    Ask, By, Direction, Fitting, Leg, Lines, Mark, Measured, Place, Port, Shape, Side, Way, figure,
    offset, openings, sketch, template,
};

fn ways() -> impl Strategy<Value = Direction> {
    (0..Direction::ALL.len()).prop_map(|at| Direction::ALL[at])
}
fn marks() -> impl Strategy<Value = Mark> {
    prop_oneof![Just(Mark::Centre), Just(Mark::Face), Just(Mark::Shoulder)]
}

fn bend(take_off: Length, depth: Length) -> Measured {
    Measured {
        shape: Shape {
            family: Family::Copper,
            kind: Kind::Bend,
            turn: Some(Turn::Quarter),
            size: Size::Half,
            other: Size::Half,
            port: Port::Run,
        },
        face: take_off + depth,
        depth: Some(depth),
    }
}

fn leg(way: Direction, length: Length, from: Mark, to: Mark) -> Leg {
    Leg {
        way: Way::Along(way),
        size: None,
        by: By::Tape { length, from, to },
        couplings: 0,
        end: Some(Fitting::of(Kind::Bend)),
    }
}

/// Elbow to elbow, each leg at right angles to the one before.
fn runs() -> impl Strategy<Value = Ask> {
    let length = 200_000_000i64..3_000_000_000;
    let one = (ways(), length, marks(), marks());
    let elbow = (1_000_000i64..40_000_000, 1_000_000i64..40_000_000);
    (prop::collection::vec(one, 1..9), elbow).prop_map(|(legs, (take_off, depth))| {
        let mut found: Vec<Leg> = Vec::new();
        let mut before: Option<Direction> = None;
        for (way, nm, from, to) in legs {
            let turns = before.is_none_or(|before| way.across(before));
            if turns {
                found.push(leg(way, Length::nm(nm), from, to));
                before = Some(way);
            }
        }
        Ask {
            start: Some(Fitting::of(Kind::Bend)),
            legs: found,
            fittings: vec![bend(Length::nm(take_off), Length::nm(depth))],
            // Longer than any piece here: sticks are not what is tried.
            stick: Length::feet(1_000),
            ..Ask::default()
        }
    })
}

/// The same run from its end to its start.
fn reversed(ask: &Ask) -> Ask {
    let nodes: Vec<Option<Fitting>> = [ask.start]
        .into_iter()
        .chain(ask.legs.iter().map(|leg| leg.end))
        .collect();
    let legs = ask.legs.iter().enumerate().rev().map(|(at, leg)| {
        let Way::Along(way) = leg.way else { panic!() };
        let By::Tape { length, from, to } = leg.by else {
            panic!()
        };
        Leg {
            way: Way::Along(way.reversed()),
            by: By::Tape {
                length,
                from: to,
                to: from,
            },
            end: nodes[at],
            ..*leg
        }
    });
    Ask {
        start: nodes[ask.legs.len()],
        legs: legs.collect(),
        ..ask.clone()
    }
}

fn cuts(ask: &Ask) -> Vec<Length> {
    figure(ask)
        .unwrap()
        .pieces
        .iter()
        .map(|piece| piece.cut)
        .collect()
}

/// Anything at all, most of it wrong.
fn wild() -> impl Strategy<Value = Ask> {
    let nm = prop_oneof![Just(0i64), any::<i64>(), -1_000_000_000i64..10_000_000_000];
    let fitting = (0usize..13, 0u8..3, 0u8..3).prop_map(|(kind, street, branch)| {
        let side = |at| [None, Some(Side::Before), Some(Side::After)][usize::from(at)];
        Fitting {
            street: side(street),
            branch: side(branch),
            ..Fitting::of(Kind::ALL[kind])
        }
    });
    let by = (nm.clone(), 0u8..8, -300_000_000i64..300_000_000).prop_map(|(nm, by, beyond)| {
        let tape = |from, to| By::Tape {
            length: Length::nm(nm),
            from,
            to,
        };
        match by {
            0 => By::Set,
            1 => By::Fitted,
            2 => By::Rest,
            3 => tape(Mark::Centre, Mark::Face),
            4 => tape(Mark::Wall(Length::nm(beyond)), Mark::Centre),
            5 => tape(Mark::End, Mark::End),
            6 => tape(Mark::Shoulder, Mark::Face),
            _ => tape(Mark::Centre, Mark::Centre),
        }
    });
    let way = (ways(), ways(), ways(), nm.clone(), any::<i64>(), 0u8..4).prop_map(
        |(along, to, over, set, micro, kind)| {
            if kind == 0 {
                return Way::Along(along);
            }
            let roll = (kind == 3).then_some((over, Length::nm(set / 2)));
            Way::Offset {
                along,
                to,
                angle: Angle::microdegrees(micro % 100_000_000),
                set: Length::nm(set),
                over: roll,
            }
        },
    );
    let leg = (
        way,
        by,
        0u32..3,
        prop::option::of(fitting.clone()),
        prop::option::of(0usize..12),
    );
    let legs = prop::collection::vec(leg, 0..6);
    (
        legs,
        prop::option::of(fitting),
        0usize..9,
        nm,
        any::<bool>(),
        any::<f64>(),
    )
        .prop_map(|(legs, start, pipe, nm, closed, air)| Ask {
            pipe: Pipe::ALL[pipe],
            start,
            legs: legs
                .into_iter()
                .map(|(way, by, couplings, end, size)| Leg {
                    way,
                    by,
                    couplings,
                    end,
                    size: size.map(|at| Size::ALL[at]),
                })
                .collect(),
            closes: closed.then_some(Place {
                up: Length::nm(nm),
                ..Place::default()
            }),
            lines: closed.then_some(Lines {
                count: 3,
                apart: Length::inches(4),
                to: Direction::Right,
            }),
            air,
            fittings: vec![bend(Length::mm(9), Length::mm(12))],
            // Longer than any piece here: sticks are not what is tried.
            stick: Length::feet(1_000),
            ..Ask::default()
        })
}

proptest! {
    #[test]
    fn prop_cuts_and_fittings_are_the_run(ask in runs()) {
        let found = figure(&ask).unwrap();
        let take_off = ask.fittings[0].face - ask.fittings[0].depth.unwrap();
        let mut along = [Length::ZERO; 3];
        for (leg, cut) in ask.legs.iter().zip(&found.legs) {
            let Way::Along(way) = leg.way else { panic!() };
            let span = cut.cut.unwrap() + take_off * 2;
            prop_assert_eq!(cut.span, Some(span));
            for (sum, part) in along.iter_mut().zip(way.vector()) {
                *sum += span * part as i64;
            }
        }
        prop_assert_eq!(found.places[ask.legs.len()].unwrap().axes(), along);
    }

    #[test]
    fn prop_a_run_backwards_has_the_same_pieces(ask in runs()) {
        let mut back = cuts(&reversed(&ask));
        back.reverse();
        prop_assert_eq!(cuts(&ask), back);
    }

    #[test]
    fn prop_a_mirrored_run_has_the_same_pieces(ask in runs()) {
        let mirrored = ask.mirrored();
        prop_assert_eq!(cuts(&ask), cuts(&mirrored));
        prop_assert_eq!(mirrored.mirrored(), ask);
    }

    #[test]
    fn prop_every_way_to_measure_gives_one_piece(ask in runs()) {
        let expected = cuts(&ask);
        let own = ask.fittings[0];
        let (face, take_off) = (own.face, own.face - own.depth.unwrap());
        let found = figure(&ask).unwrap();
        let from_centre = |mark: Mark| match mark {
            Mark::Face => face,
            Mark::Shoulder => take_off,
            _ => Length::ZERO,
        };
        for from in [Mark::Centre, Mark::Face, Mark::Shoulder] {
            for to in [Mark::Centre, Mark::Face, Mark::Shoulder] {
                let mut same = ask.clone();
                for (leg, cut) in same.legs.iter_mut().zip(&found.legs) {
                    let length = cut.span.unwrap() - from_centre(from) - from_centre(to);
                    leg.by = By::Tape { length, from, to };
                }
                prop_assert_eq!(&cuts(&same), &expected);
            }
        }
    }

    #[test]
    fn prop_a_leg_longer_by_so_much_is_cut_longer_by_it(ask in runs(), more in 0i64..500_000_000) {
        let mut longer = ask.clone();
        if let By::Tape { length, .. } = &mut longer.legs[0].by {
            *length += Length::nm(more);
        }
        let (before, after) = (cuts(&ask), cuts(&longer));
        prop_assert_eq!(after[0] - before[0], Length::nm(more));
        prop_assert_eq!(&before[1..], &after[1..]);
    }

    #[test]
    fn prop_parts_with_couplings_and_their_stops_are_the_piece(ask in runs(), couplings in 1u32..4, stop in 0i64..5_000_000) {
        let mut coupled = ask.clone();
        coupled.legs[0].couplings = couplings;
        let mut own = bend(Length::nm(stop), Length::mm(1));
        own.shape.kind = Kind::Coupling;
        own.shape.turn = None;
        coupled.fittings.push(own);
        let (whole, parts) = (cuts(&ask)[0], figure(&coupled));
        // Too short for so many couplings is said, not cut.
        if let Ok(parts) = parts {
            let all: Length = parts.pieces.iter().filter(|piece| piece.leg == 0).map(|piece| piece.cut).sum();
            prop_assert_eq!(all + Length::nm(stop) * (2 * i64::from(couplings)), whole);
        }
    }

    #[test]
    fn prop_a_leg_that_is_left_closes_the_run(ask in runs()) {
        let found = figure(&ask).unwrap();
        let last = ask.legs.len() - 1;
        let mut closed = ask.clone();
        closed.closes = found.places[last + 1];
        closed.legs[last].by = By::Rest;
        let again = figure(&closed).unwrap();
        prop_assert_eq!(again.off, Some(Place::default()));
        prop_assert_eq!(&again.pieces, &found.pieces);
    }

    #[test]
    fn prop_the_likely_swing_is_never_more_than_the_worst(ask in runs()) {
        let swing = figure(&ask).unwrap().swing;
        for (likely, worst) in swing.likely.axes().into_iter().zip(swing.worst.axes()) {
            prop_assert!(likely <= worst + Length::nm(1));
        }
    }

    #[test]
    fn prop_set_and_roll_are_one_offset(set in 1i64..3_000_000_000, roll in 0i64..3_000_000_000, at in 0usize..7) {
        let angle = Turn::ALL[at].angle();
        let (set, roll) = (Length::nm(set), Length::nm(roll));
        let one = offset(set, roll, angle).unwrap();
        let other = offset(roll, set, angle).unwrap();
        prop_assert_eq!((one.travel, one.run, one.true_offset), (other.travel, other.run, other.true_offset));
        prop_assert!(one.travel >= one.true_offset && one.true_offset >= set.max(roll));
        // Travel, run and true offset are a triangle with a right angle.
        prop_assert!((one.run.diagonal(one.true_offset) - one.travel).abs() <= Length::nm(5));
    }

    #[test]
    fn prop_a_rolling_offset_ends_where_it_is_set(set in 100_000_000i64..1_000_000_000, roll in 100_000_000i64..1_000_000_000, at in 0usize..6) {
        let (set, roll) = (Length::nm(set), Length::nm(roll));
        let turn = Turn::ALL[at];
        let mut elbow = bend(Length::mm(1), Length::mm(10));
        elbow.shape.turn = Some(turn);
        let stem = leg(Direction::Up, Length::feet(1), Mark::Centre, Mark::Centre);
        let travel = Leg {
            way: Way::Offset {
                along: Direction::Up,
                to: Direction::Right,
                angle: turn.angle(),
                set,
                over: Some((Direction::Forward, roll)),
            },
            by: By::Set,
            ..stem
        };
        let ask = Ask {
            start: Some(Fitting { turn: Some(turn), ..Fitting::of(Kind::Bend) }),
            legs: vec![stem, travel, Leg { end: None, by: By::Tape { length: Length::feet(1), from: Mark::Centre, to: Mark::End }, ..stem }],
            fittings: vec![elbow],
            // Longer than any piece here: sticks are not what is tried.
            stick: Length::feet(1_000),
            ..Ask::default()
        };
        let end = figure(&ask).unwrap().places[2].unwrap();
        let run = offset(set, roll, turn.angle()).unwrap().run;
        for (is, should) in end.axes().into_iter().zip([set, roll, Length::feet(1) + run]) {
            prop_assert!((is - should).abs() <= Length::nm(5), "{is:?} {should:?}");
        }
    }

    #[test]
    fn prop_a_strip_is_even_and_ends_as_it_begins(across in 1_000_000i64..300_000_000, micro in 0i64..90_000_000) {
        let strip = template(Length::nm(across), Angle::microdegrees(micro), 16).unwrap();
        prop_assert_eq!(strip.ordinates.len(), 17);
        for at in 0..=16 {
            let (along, up) = strip.ordinates[at];
            prop_assert!((up - strip.ordinates[16 - at].1).abs() <= Length::nm(1));
            prop_assert!(up >= Length::ZERO && up <= strip.cut_back + Length::nm(1));
            prop_assert!(along <= strip.around + Length::nm(1));
        }
    }

    #[test]
    fn prop_nothing_that_is_asked_panics(ask in wild()) {
        let _ = openings(&ask);
        prop_assert_eq!(sketch(&ask).len(), ask.legs.len() + 1);
        if let Ok(found) = figure(&ask) {
            for piece in &found.pieces {
                prop_assert!(piece.cut.is_positive());
            }
        }
    }
}
