use super::solve::solve;
use super::*;

fn inches(pieces: &[i64], sticks: &[(i64, Option<u32>, u32)]) -> Order {
    Order {
        pieces: pieces.iter().map(|n| Length::inches(*n)).collect(),
        kerf: Length::in_64(0, 8),
        sticks: sticks
            .iter()
            .map(|(length, count, cost)| Stick {
                length: Length::inches(*length),
                count: *count,
                cost: *cost,
            })
            .collect(),
        offcuts: Vec::new(),
    }
}

#[test]
fn sticks_that_do_not_suffice_are_missed_and_counted() {
    let cut = plan(&inches(&[60, 60, 60], &[(96, Some(1), 1)])).unwrap();
    assert_eq!((cut.missing(), cut.bought()), (2, 3));
    assert!(cut.is_proven());
    let cut = plan(&inches(&[60, 60, 30], &[(96, Some(2), 1)])).unwrap();
    assert_eq!((cut.missing(), cut.bought()), (0, 2));
}

#[test]
fn the_least_of_what_sticks_cost_is_found() {
    // By count one board of 12 ft or two of 8 ft; by feet 12 of 16.
    let by_feet = [(96, None, 8), (144, None, 12)];
    assert_eq!(plan(&inches(&[90, 48], &by_feet)).unwrap().cost, 12);
    // Two halves of 8 ft would be cheaper on one board, but the saw takes its part.
    assert_eq!(plan(&inches(&[48, 48], &by_feet)).unwrap().cost, 12);
    assert_eq!(plan(&inches(&[48, 47], &by_feet)).unwrap().cost, 8);
    // Two boards of 8 ft are cheaper than one of 16 ft at that price.
    let dear = [(96, None, 5), (192, None, 11)];
    assert_eq!(plan(&inches(&[90, 90], &dear)).unwrap().cost, 10);
}

#[test]
fn the_waste_is_gathered_into_one_rest() {
    // 60 and 30 on one board and 40 on the other leave 56 in; 60 and 40 do not go together.
    let cut = plan(&inches(&[60, 40, 30], &[(96, None, 1)])).unwrap();
    assert_eq!(cut.bought(), 2);
    assert!(cut.longest_rest);
    let rest = cut.cuts.last().unwrap().rest;
    assert_eq!(rest, Length::inches(56) - Length::in_64(0, 8));
}

#[test]
fn what_cannot_be_cut_is_named() {
    let usual = [(96, None, 1)];
    let is = |order: &Order, problem| assert_eq!(plan(order), Err(problem));
    is(&inches(&[], &usual), Problem::NoPieces);
    is(&inches(&[10], &[]), Problem::NoSticks);
    is(&inches(&[10, 0], &usual), Problem::NoLength(1));
    is(
        &inches(&[10, 97], &usual),
        Problem::TooLong(1, Length::inches(96)),
    );
    is(
        &inches(&[10], &[(0, None, 1)]),
        Problem::StickLength(Length::ZERO),
    );
    let wide = Order {
        kerf: Length::inches(96),
        ..inches(&[10], &usual)
    };
    is(&wide, Problem::Kerf);
    let many = inches(&vec![1; MOST_PIECES + 1], &usual);
    is(&many, Problem::TooMany(MOST_PIECES + 1));
}

/// Thirty pieces that were cut from ten sticks of 10 ft with nothing left: whenever the work is broken off, what was proven
/// by then is true. A search that ran out of steps and was taken for a proof once said eleven.
#[test]
fn a_search_that_is_cut_short_proves_nothing() {
    let sixteenths = [
        1383, 1056, 988, 972, 910, 901, 857, 819, 816, 803, 775, 759, 676, 663, 660, 636, 633, 595,
        485, 479, 468, 462, 377, 332, 331, 313, 286, 283, 258, 204,
    ];
    let order = Order {
        pieces: sixteenths.map(|n| Length::in_64(0, 4 * n)).to_vec(),
        kerf: Length::in_64(0, 4),
        ..inches(&[], &[(120, None, 1)])
    };
    let cut = plan(&order).unwrap();
    assert_eq!((cut.cost, cut.least), (10, 10));
    let work = stated(&order).unwrap().work;
    for steps in (0..60_000).step_by(2_503) {
        let solved = solve(&work, &mut Effort { left: steps });
        let cost = work.cost(&solved.plan);
        assert!(
            solved.least <= 10 && cost >= 10,
            "{steps}: {} {cost}",
            solved.least
        );
    }
}

/// Two thousand pieces of as many lengths, and prices far apart: an answer, and no overflow.
#[test]
fn thousands_of_lengths_have_an_answer() {
    let pieces: Vec<i64> = (0..2_000).collect();
    let order = Order {
        pieces: pieces
            .iter()
            .map(|n| Length::mm(500) + Length::nm(n * 150_011))
            .collect(),
        ..inches(&[], &[(96, None, u32::MAX), (240, None, 1)])
    };
    let cut = plan(&order).unwrap();
    assert!(cut.least <= cut.cost);
    let placed: usize = cut.cuts.iter().map(|cut| cut.pieces.len()).sum();
    assert_eq!(placed, 2_000);
}
