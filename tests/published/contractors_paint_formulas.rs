//! A contractor's estimating formulas, paint page, read.

use storyrod::measure::Length;
use storyrod::measure::quantity::{area, in_gallons, square_feet, square_feet_per_gallon};
use storyrod::trades::paint::{Ask, Surface, figure};

/// Worked room: 12 by 14 ft, 9 ft high, 45 ft² of openings, two coats at 350: 2.417, bought as 2.5 gallons.
#[test]
fn a_room_of_12_by_14_takes_2_417_gallons() {
    let mut walls = Surface::wall(Length::feet(52), Length::feet(9));
    assert_eq!(walls.area, area(Length::feet(52), Length::feet(9)));
    walls.area -= square_feet(45.0);
    let mut ask = Ask {
        surfaces: vec![walls],
        ..Ask::default()
    };
    ask.finish.label_rate = Some(square_feet_per_gallon(350.0));
    let gallons = in_gallons(figure(&ask).unwrap().walls);
    assert!((gallons - 2.417).abs() < 0.0005, "{gallons}");
    assert!(gallons > 2.25 && gallons <= 2.5);
}
