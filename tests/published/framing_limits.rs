//! Holes, notches and plates in studs and joists.
//!
//! R602.6 and R502.8.1 as quoted on teaching pages, in a state's rule and in a magazine; 6a to 6e, W4.1 to W4.3 are
//! arithmetic on them, 6f is printed in the magazine.

use storyrod::handbook::framing;
use storyrod::measure::{Length, Rounding};
use storyrod::site::{Fault, Member};

fn stud(depth: Length, bearing: bool) -> Member {
    Member::Stud {
        depth,
        bearing,
        doubled: false,
    }
}

fn doubled(depth: Length) -> Member {
    Member::Stud {
        depth,
        bearing: true,
        doubled: true,
    }
}

const TWO_BY_4: Length = Length::in_64(3, 32);
const TWO_BY_6: Length = Length::in_64(5, 32);

/// In thousandths of an inch.
#[track_caller]
fn inches(length: Option<Length>, thousandths: i64) {
    assert_eq!(length, Some(Length::nm(thousandths * 25_400)));
}

#[test]
fn a_6a_6b_studs() {
    for (depth, notches, holes) in [
        (TWO_BY_4, [875, 1_400], [1_400, 2_100]),
        (TWO_BY_6, [1_375, 2_200], [2_200, 3_300]),
    ] {
        inches(stud(depth, true).deepest_notch(), notches[0]);
        inches(stud(depth, false).deepest_notch(), notches[1]);
        inches(stud(depth, true).largest_hole(), holes[0]);
        inches(stud(depth, false).largest_hole(), holes[1]);
        inches(doubled(depth).largest_hole(), holes[1]);
        // A doubled stud of a bearing wall is notched no deeper for it.
        inches(doubled(depth).deepest_notch(), notches[0]);
    }
}

#[test]
fn limits_are_rounded_down_where_a_countys_handout_rounds_them_up() {
    let shown = |member: Member| {
        let hole = member.largest_hole().unwrap();
        hole.rounded(Length::in_64(0, 4), Rounding::FitInside)
    };
    // The handout prints 2 1/8 and 3 5/16, which are more than 60 %.
    assert_eq!(shown(stud(TWO_BY_4, false)), Length::in_64(2, 4));
    assert_ne!(shown(stud(TWO_BY_4, false)), Length::in_64(2, 8));
    assert_eq!(shown(stud(TWO_BY_6, false)), Length::in_64(3, 16));
    assert_ne!(shown(stud(TWO_BY_6, false)), Length::in_64(3, 20));
    assert_eq!(shown(stud(TWO_BY_4, true)), Length::in_64(1, 24));
    assert_eq!(shown(stud(TWO_BY_6, true)), Length::in_64(2, 12));
}

#[test]
fn a_6c_1_1_2_in_drain_in_a_2_by_4() {
    let (hole, pipe) = (Length::inches(2), Length::nm(48_260_000));
    let middle = TWO_BY_4.half();
    // 57 %: only where the stud bears nothing, or is doubled; 3/4 in beside it.
    assert_eq!(stud(TWO_BY_4, false).faults(hole, middle), []);
    assert_eq!(doubled(TWO_BY_4).faults(hole, middle), []);
    let faults = stud(TWO_BY_4, true).faults(hole, middle);
    assert_eq!(faults, [Fault::TooLarge(Length::nm(35_560_000))]);
    // The pipe is 0.80 in from both faces.
    assert_eq!(middle - pipe.half(), Length::nm(800 * 25_400));
    assert_eq!(stud(TWO_BY_4, false).plates(pipe, middle), [true, true]);
}

#[test]
fn a_6d_2_in_drain_in_a_2_by_4_and_a_2_by_6() {
    let hole = Length::in_64(2, 32);
    for member in [
        stud(TWO_BY_4, false),
        doubled(TWO_BY_4),
        stud(TWO_BY_4, true),
    ] {
        assert!(!member.faults(hole, TWO_BY_4.half()).is_empty(), "71 %");
        assert_eq!(member.centres(hole), None);
    }
    assert_eq!(stud(TWO_BY_6, false).faults(hole, TWO_BY_6.half()), []);
    assert_eq!(doubled(TWO_BY_6).faults(hole, TWO_BY_6.half()), []);
    assert!(
        !stud(TWO_BY_6, true)
            .faults(hole, TWO_BY_6.half())
            .is_empty(),
        "45 %"
    );
}

#[test]
fn a_6e_joists() {
    let joist = |depth: Length| Member::Joist { depth };
    let depths = [
        Length::in_64(7, 16),
        Length::in_64(9, 16),
        Length::in_64(11, 16),
    ];
    for (depth, hundredths) in depths.into_iter().zip([242, 308, 375]) {
        let hole = joist(depth).largest_hole().unwrap().in_inches();
        assert!(
            (hole * 100.0 - f64::from(hundredths)).abs() <= 0.5,
            "{hole}"
        );
    }
    let two = Length::in_64(2, 32);
    let three = Length::in_64(3, 40);
    let takes = |hole| depths.map(|depth| joist(depth).centres(hole).is_some());
    assert_eq!(takes(two), [false, true, true]);
    assert_eq!(takes(three), [false, false, true]);
}

#[test]
fn a_6f_the_largest_hole_of_a_2_by_8_is_2_3_8() {
    // Printed of joists from 7 1/8 to 7 1/4 in, in eighths.
    for depth in [Length::in_64(7, 8), Length::in_64(7, 16)] {
        let hole = Member::Joist { depth }.largest_hole().unwrap();
        let eighths = hole.rounded(Length::in_64(0, 8), Rounding::FitInside);
        assert_eq!(eighths, Length::in_64(2, 24));
    }
}

#[test]
fn w4_1_a_notch_of_an_inch() {
    let notch = Length::inches(1);
    assert!(stud(TWO_BY_4, true).deepest_notch().unwrap() < notch);
    assert!(stud(TWO_BY_4, false).deepest_notch().unwrap() > notch);
}

#[test]
fn w4_2_which_pipe_wants_a_plate() {
    let middle = TWO_BY_4.half();
    let plated = |of_64: i64| stud(TWO_BY_4, false).plates(Length::in_64(0, of_64), middle);
    // By the older rule of 1 1/2 in more than half an inch wants one; by the later one more than an inch does.
    assert_eq!(plated(32), [false, false]);
    assert_eq!(plated(33), [true, true]);
    let later = framing::PLATE_WITHIN_LATER.value;
    assert_eq!(middle - Length::inches(1).half(), later);
    assert!(middle - Length::in_64(1, 8).half() < later);
}

#[test]
fn engineered_joists_and_trusses_are_left_to_their_maker() {
    let joist = Member::Engineered {
        depth: Length::in_64(9, 32),
    };
    assert_eq!(
        joist.faults(Length::inches(1), Length::inches(4)),
        [Fault::AskMaker]
    );
    assert_eq!((joist.largest_hole(), joist.deepest_notch()), (None, None));
    assert_eq!(joist.centres(Length::inches(1)), None);
}
