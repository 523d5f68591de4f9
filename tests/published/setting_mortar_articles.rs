//! How-to articles on mortar quantity (low authority) and one maker's article on a C1T mortar, read.

use storyrod::handbook::{Known, mortar as book};
use storyrod::measure::Length;
use storyrod::measure::quantity::{
    in_litres, in_pounds, in_square_feet, kilograms, litres, pounds, square_feet,
};
use storyrod::takeoff::{Choice, cover};
use storyrod::trades::mortar::{
    Ask, CoverageBy, Label, Notch, Setting, Work, coverage, figure, ridge_bed, water_for, yields,
};

/// Articles: 200 ft² with a 1/4 by 3/8 in notch at 65 ft² a bag: 3.07, so four bags.
#[test]
fn two_hundred_square_feet_take_four_bags() {
    let mut setting = Setting {
        area: square_feet(200.0),
        ..Setting::default()
    };
    setting.label.covers = Some(square_feet(65.0));
    let ask = Ask {
        work: Work::Setting(setting),
        waste: 0.0,
        ..Ask::default()
    };
    let floor = figure(&ask).unwrap();
    let mass = in_pounds(floor.dry[0].mass);
    assert!((mass / 50.0 - 3.08).abs() < 0.01, "{mass}");
    let bags = cover(mass, &[50.0], &[None], Choice::LeastLeftOver);
    assert_eq!(bags, [4]);
}

/// Articles: a 50 lb bag covers 85 to 95, 60 to 70 and 40 to 50 ft² with the three square notches.
///
/// DIFFERENCE: the ridges at 45° hold 3 to 36 % more mortar than these figures allow, upright ridges 50 to 90 % more. The
/// articles' figure is bought by and said to be of low authority; the geometry stands beside it as a check.
#[test]
fn the_articles_stand_over_the_geometry() {
    let bag = pounds(50.0);
    let mut over = Vec::new();
    for (width, depth, (least, most)) in [
        (16, 16, (85.0, 95.0)),
        (16, 24, (60.0, 70.0)),
        (32, 32, (40.0, 50.0)),
    ] {
        let notch = Notch::square(Length::in_64(0, width), Length::in_64(0, depth));
        let (from, to) = coverage(&notch, bag).unwrap();
        assert!((in_square_feet(from) - least).abs() < 1e-9);
        assert!((in_square_feet(to) - most).abs() < 1e-9);
        let made = in_litres(yields(bag, &Label::default())) / 28.316_846_592;
        let comb = made / (ridge_bed(&notch).in_inches() / 12.0);
        over.extend([least / comb - 1.0, most / comb - 1.0]);
    }
    let least = over.iter().copied().fold(f64::MAX, f64::min);
    let most = over.iter().copied().fold(0.0, f64::max);
    assert!((0.03..0.04).contains(&least), "{least}");
    assert!((most - book::COMB_AGREES.value).abs() < 0.005, "{most}");
    assert!(book::BAG_TABLE.cite.clause.contains("low authority"));
    let by = figure(&Ask::default()).unwrap().setting.unwrap().by;
    assert_eq!(by, CoverageBy::BagTable);
}

/// Maker: 25 kg with 6.8 to 7.2 L, 1.8 kg/L. With 7.0 L it is 17.8 L; half of it takes 3.5 L, makes 8.9 L and does
/// 2.5 m² with a 10 mm notch at 45°.
///
/// DIFFERENCE: the article prints the density in "g/l"; 1.8 g/L is lighter than a feather, kg/L is meant.
#[test]
fn half_a_bag_of_25_kilograms() {
    let label = Label {
        bag: kilograms(25.0),
        water: Some((litres(7.0), litres(7.0))),
        ..Label::default()
    };
    let half = kilograms(12.5);
    assert!((in_litres(yields(half * 2.0, &label)) - 17.8).abs() < 0.05);
    assert!((in_litres(water_for(half, &label).0) - 3.5).abs() < 1e-9);
    let mortar = yields(half, &label);
    assert!((in_litres(mortar) - 8.9).abs() < 0.05);
    let side = Length::mm(10);
    let bed = ridge_bed(&Notch {
        land: side,
        ..Notch::square(side, side)
    });
    let square_metres = in_litres(mortar) / bed.millimetres();
    assert!((square_metres - 2.5).abs() < 0.05, "{square_metres}");
    let (_, most) = water_for(kilograms(25.0), &Label::default());
    assert!((in_litres(most) - 7.2).abs() < 1e-9);
    assert_eq!(book::YIELD.cite.known, Known::Computed);
}
