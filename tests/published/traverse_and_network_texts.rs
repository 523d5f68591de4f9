//! Surveys adjusted in texts: a traverse by the compass rule, and a figure of distances by least squares.

use super::asks::near;
use storyrod::geometry::{Leg, Network, Observation, Sight, adjust, balance};

/// The closed traverse of an engineering course's teaching page (ASM 215, Purdue: traverse calculations), read: five
/// lines, −0.71 up and +0.53 to the right off, 1 in 2,771, and the balanced corners, printed to 0.01.
#[test]
fn a_closed_traverse_by_the_compass_rule() {
    let legs = [
        (26, 10, 285.10),
        (104, 35, 610.45),
        (195, 30, 720.48),
        (358, 18, 203.00),
        (306, 54, 647.02),
    ]
    .map(|(degrees, minutes, length)| Leg {
        length,
        bearing: (f64::from(degrees) + f64::from(minutes) / 60.0).to_radians(),
    });
    let round = balance(&legs);
    // Each is printed as the sum of five figures rounded to 0.01, and 1 in 2,771 from 0.89 in 2466.05.
    near(round.misses[1], -0.71, 0.025);
    near(round.misses[0], 0.53, 0.025);
    near(round.one_in.unwrap(), 2771.0, 2771.0 * 0.03 / 0.89);
    let printed = [
        (10_000.00, 10_000.00),
        (10_255.96, 10_125.66),
        (10_102.44, 10_716.31),
        (9_408.37, 10_523.62),
        (9_611.34, 10_517.55),
    ];
    // Each is a sum of rounded latitudes and departures: half a hundredth for every line on the way.
    for (at, ((up, right), corner)) in printed.into_iter().zip(&round.corners).enumerate() {
        let slack = 0.005 * (1.0 + at as f64);
        near(corner[1] + 10_000.0, up, slack);
        near(corner[0] + 10_000.0, right, slack);
    }
}

/// Four points, one side held, five distances of 10 mm each, the two diagonals among them: Benning (2011), example 8-2,
/// as in Krumm, *Geodetic Network Adjustment Examples*, rev. 3.5 (2020), 3.1.1, read in a public copy of its
/// figures. Printed: coordinates to 0.1 mm, residuals (observed less adjusted) and uncertainties to 0.01 mm, these
/// scaled by s₀ = 6.882 / 10.
#[test]
fn a_figure_of_distances_with_both_diagonals() {
    let far = |a, b, value| Observation {
        sight: Sight::Distance(a, b),
        value,
        sigma: 0.010,
    };
    // y grows up in the print and down here; nothing in the figure knows.
    let found = adjust(&Network {
        start: vec![[0.0, 1000.0], [1000.0, 1000.0], [0.0, 0.0], [1000.0, 0.0]],
        held: vec![[true, true], [true, true], [false, false], [false, false]],
        observations: vec![
            far(0, 2, 1000.02),
            far(0, 3, 1414.20),
            far(1, 2, 1414.24),
            far(1, 3, 999.98),
            far(2, 3, 1000.00),
        ],
    })
    .unwrap();
    for (point, [x, y]) in [(2, [-0.0096, -0.0226]), (3, [999.9930, 0.0174])] {
        near(found.points[point][0], x, 0.000_05);
        near(found.points[point][1], y, 0.000_05);
    }
    let printed = [-0.002_60, 0.003_68, 0.003_68, -0.002_60, -0.002_60];
    for (residual, observed_less_adjusted) in found.residuals.iter().zip(printed) {
        near(*residual, -observed_less_adjusted, 0.000_005);
    }
    let scale = (found.chi_square / found.freedom as f64).sqrt();
    near(scale * 10.0, 6.882, 0.0005);
    for (axis, printed) in [(0, 0.009_01), (1, 0.006_37)] {
        let sigma = found.covariance((2, axis), (2, axis)).sqrt() * scale;
        near(sigma, printed, 0.000_005);
    }
}
