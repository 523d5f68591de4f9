//! A retailer's weblog grout chart (generic), February 2010, read.

use storyrod::measure::quantity::{
    in_cubic_feet, in_pounds, pounds, pounds_per_cubic_foot, square_feet,
};
use storyrod::measure::{Amount, Length};
use storyrod::takeoff::{Choice, cover, packs_on_sale};
use storyrod::trades::grout::{Ask, Figure, JointOf, figure, overstatement, product_fraction};

/// 3/8 × 3/8 × 3/8 in mosaic with 1/16 in joints.
fn mosaic(feet: f64, density: f64, waste: f64) -> Figure {
    let side = Length::in_64(0, 24);
    let mut ask = Ask {
        area: square_feet(feet),
        joints: JointOf::Grid { a: side, b: side },
        width: Length::in_64(0, 4),
        depth: side,
        waste,
        ..Ask::default()
    };
    ask.label.density = Some(pounds_per_cubic_foot(density));
    ask.label.bag = Some(pounds(25.0));
    figure(&ask).unwrap()
}

/// 0.94 lb a ft², joints full and 10 % on top; 8 × 12 ft is 96 ft², 90 lb, four bags of 25 lb.
#[test]
fn ninety_pounds_for_96_square_feet() {
    let pounds_needed: f64 = 96.0 * 0.94;
    assert_eq!(pounds_needed.round(), 90.0);
    assert_eq!(
        cover(pounds_needed, &[25.0], &[None], Choice::LeastLeftOver),
        [4]
    );
    let bags = mosaic(96.0, 103.07, 0.10);
    assert!((in_pounds(bags.mass) - pounds_needed).abs() < 0.05);
    assert_eq!(bags.bags.ceil(), 4.0);
    let grout = &bags.account.needs[0];
    assert_eq!(grout.amount, Amount::Mass(bags.mass));
    assert!(!packs_on_sale(&grout.material, false).is_empty());
}

/// What that figure implies: 0.0082908 ft³ of joint a ft², so 103 lb/ft³ net; by the form in common use 0.0104167, so 82.
#[test]
fn the_chart_fits_the_exact_share() {
    let exact = in_cubic_feet(mosaic(1.0, 100.0, 0.0).volume);
    assert!((exact - 0.008_290_8).abs() < 5e-8, "{exact}");
    let side = Length::in_64(0, 24);
    let common = product_fraction(side, side, Length::in_64(0, 4)) * 0.375 / 12.0;
    assert!((common - 0.010_416_7).abs() < 5e-8, "{common}");
    let over = overstatement(side, side, Length::in_64(0, 4));
    assert!((over - 0.256).abs() < 0.0005, "{over}");
    let net = 0.94 / 1.1;
    assert_eq!((net / exact).round(), 103.0);
    assert_eq!((net / common).round(), 82.0);
}
