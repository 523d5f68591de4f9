//! A do-it-yourself table of grout by the square metre, hausjournal.net, read: wrong by ten.

use storyrod::measure::Length;
use storyrod::measure::quantity::{in_kilograms, in_litres, kilograms_per_litre, square_metres};
use storyrod::trades::grout::{Ask, JointOf, figure, product_fraction};

/// DIFFERENCE: it prints 8.1 kg and 4.76 L for a m² of 10 × 10 cm tile, joints 5 mm wide and 5 mm deep, and
/// 5.19 L for its 30 × 30 row; the joints hold 0.465 L and about 0.75 kg, a tenth. The decimal point has slipped.
#[test]
fn a_table_that_is_ten_times_too_high() {
    let side = Length::mm(100);
    let floor = |joints| {
        let mut ask = Ask {
            area: square_metres(1.0),
            joints,
            width: Length::mm(5),
            depth: Length::mm(5),
            ..Ask::default()
        };
        ask.label.density = Some(kilograms_per_litre(1.6));
        figure(&ask).unwrap()
    };
    let real = floor(JointOf::Grid { a: side, b: side });
    let litres = in_litres(real.volume);
    assert!((litres - 0.465).abs() < 0.0005, "{litres}");
    let common = product_fraction(side, side, Length::mm(5)) * 5.0;
    assert!((common - 0.500).abs() < 1e-9, "{common}");
    let kilograms = in_kilograms(real.net);
    assert!((0.7..0.85).contains(&kilograms), "{kilograms}");
    for (printed, ours) in [(4.76, litres), (8.1, kilograms)] {
        assert!(printed / ours > 9.0 && printed / ours < 11.5, "{ours}");
    }
}
