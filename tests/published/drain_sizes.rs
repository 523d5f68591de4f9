//! Trap arms, fixture units and rough-in of drains.
//!
//! Arms: a trade magazine on vents (5, 6, 8, 12, 16 ft), how-to pages on the uniform code (30 to 120 in). Units and what a
//! drain carries: a county's print of the uniform code. 3f, 3g, 3j: arithmetic on them. 3i: P2709.1 as reprinted.

use storyrod::measure::Length;
use storyrod::trades::drain::{
    Arm, Ask, Code, Fixture, Flange, Size, Through, carries, figure, longest_arm, units,
};
use storyrod::trades::{Weight, mortar};

fn drain(code: Code, size: Size, fixtures: [u32; 5]) -> Ask {
    Ask {
        code,
        size,
        fixtures,
        through: Through::Open,
        ..Ask::default()
    }
}

#[track_caller]
fn stops(ask: &Ask, count: usize) {
    let findings = figure(ask).unwrap().account.findings;
    let stops = findings
        .iter()
        .filter(|finding| finding.weight == Weight::Stop);
    assert_eq!(stops.count(), count, "{findings:?}");
}

#[test]
fn a_3f_a_full_bath_takes_3_in_and_never_2_with_a_water_closet() {
    let bath = drain(Code::Upc, Size::Three, [1, 0, 1, 1, 0]);
    let full = figure(&bath).unwrap();
    assert_eq!((full.units, full.needs), (6, Some(Size::Three)));
    assert_eq!(carries(Code::Upc, Size::Three).0, 35);
    stops(&bath, 0);
    // 2 in carries eight units, but no water closet.
    assert!(carries(Code::Upc, Size::Two).0 >= full.units);
    stops(&drain(Code::Upc, Size::Two, [1, 0, 1, 1, 0]), 1);
}

#[test]
fn a_3g_a_tub_and_a_lavatory_take_2_in() {
    let two = figure(&drain(Code::Upc, Size::Two, [1, 1, 0, 0, 0])).unwrap();
    assert_eq!((two.units, two.needs), (3, Some(Size::Two)));
    assert_eq!(carries(Code::Upc, Size::Two).0, 8);
    assert_eq!(carries(Code::Upc, Size::OneAndHalf).0, 1);
    stops(&drain(Code::Upc, Size::OneAndHalf, [1, 1, 0, 0, 0]), 1);
}

#[test]
fn units_of_each_fixture() {
    let of = |fixture| (units(fixture).0, units(fixture).1);
    assert_eq!(of(Fixture::Lavatory), (1, Some(Length::in_64(1, 16))));
    assert_eq!(of(Fixture::Tub), (2, Some(Length::in_64(1, 32))));
    assert_eq!(of(Fixture::Shower), (2, Some(Length::inches(2))));
    assert_eq!(of(Fixture::Closet), (3, None));
    // Conflict carried on: the residential code counts 4 where more than 1.6 gal are flushed.
    assert_eq!(of(Fixture::LargeCloset), (4, None));
}

#[test]
fn where_the_code_is_not_known_the_stricter_table_stands() {
    // 1 1/2 in: 1 unit by the uniform code, 3 by the residential one; 2 in: 8 and 6.
    assert_eq!(carries(Code::Unknown, Size::OneAndHalf).0, 1);
    assert_eq!(carries(Code::Unknown, Size::Two).0, 6);
    assert_eq!(carries(Code::Unknown, Size::Three).0, 20);
}

#[test]
fn trap_arms_by_code() {
    let feet = [5, 6, 8, 12, 16].map(Length::feet);
    let inches = [30, 42, 60, 72, 120].map(Length::inches);
    for (at, size) in Size::ALL.into_iter().enumerate() {
        assert_eq!(longest_arm(Code::Irc, size).0, feet[at]);
        assert_eq!(longest_arm(Code::Ipc, size).0, feet[at]);
        assert_eq!(longest_arm(Code::Upc, size).0, inches[at]);
        assert_eq!(longest_arm(Code::Unknown, size).0, inches[at]);
    }
    // To 2 in the longer column is where an arm at 1/4 in a foot has fallen one diameter.
    for size in [Size::OneAndQuarter, Size::OneAndHalf, Size::Two] {
        let falls = longest_arm(Code::Irc, size).0.as_nm() / 48;
        assert_eq!(Length::nm(falls), size.length());
    }
}

#[test]
fn an_arm_of_six_feet_is_long_by_one_code_and_not_by_the_other() {
    let arm = |code, length| Ask {
        arm: Some(Arm {
            size: Size::OneAndHalf,
            length,
        }),
        ..drain(code, Size::Two, [0; 5])
    };
    stops(&arm(Code::Ipc, Length::feet(6)), 0);
    stops(&arm(Code::Upc, Length::feet(6)), 1);
    stops(&arm(Code::Unknown, Length::feet(6)), 1);
    // Shorter than two diameters.
    stops(&arm(Code::Ipc, Length::in_64(2, 63)), 1);
    stops(&arm(Code::Ipc, Length::inches(3)), 0);
}

#[test]
fn a_3i_a_pan_of_36_in_rises_53_100_to_its_corners() {
    // A corner is 25.46 in from the drain; the side, 18 in away, is as high as the corner.
    let mix = mortar::Mix::Site(mortar::Parts::sand(4.0));
    let pan = mortar::Bed {
        across: Length::inches(36),
        up: Length::inches(36),
        ..mortar::Bed::default()
    };
    let bed = mortar::Ask {
        work: mortar::Work::Bed(pan, mix),
        ..mortar::Ask::default()
    };
    let figure = mortar::figure(&bed).unwrap();
    let bed = figure.bed.unwrap();
    assert!(
        (bed.rise.in_inches() - 0.53).abs() < 0.005,
        "{}",
        bed.rise.in_inches()
    );
    let side = bed.rise.in_inches() / 18.0 * 12.0;
    assert!((side - 0.354).abs() < 0.0005 && side <= 0.5, "{side}");
}

#[test]
fn a_3j_a_flange_12_from_the_finish_is_12_3_4_from_the_studs() {
    let ask = Ask {
        flange: Some(Flange {
            rough_in: Length::inches(12),
            to_come: Length::in_64(0, 32) + Length::in_64(0, 16),
        }),
        ..drain(Code::Unknown, Size::Three, [0, 0, 0, 1, 0])
    };
    assert_eq!(figure(&ask).unwrap().flange, Some(Length::in_64(12, 48)));
}
