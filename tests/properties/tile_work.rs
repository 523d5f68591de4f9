//! Grout and mortar: whatever the tile, the trowel, the pan and the bucket.

use proptest::prelude::*;
use storyrod::measure::Length;
use storyrod::measure::quantity::{in_litres, litres, pounds, square_feet, square_metres};
use storyrod::trades::grout::{self, JointOf, grid_fraction, product_fraction};
use storyrod::trades::mortar::{
    self, Batch, Bed, Drain, Fall, HeldBy, Mix, Notch, NotchShape, Parts, Setting, SpotKind, Wall,
    Work,
};

fn shape(n: u8) -> NotchShape {
    [NotchShape::Square, NotchShape::U, NotchShape::V][usize::from(n) % 3]
}

/// Every float there is, the wild ones often.
fn any_number() -> impl Strategy<Value = f64> {
    prop_oneof![
        any::<f64>(),
        Just(f64::NAN),
        Just(f64::INFINITY),
        Just(0.0),
        -1e3..1e3
    ]
}

proptest! {
    /// The referee counts whole nanometres squared: the cell less the tile.
    #[test]
    fn prop_joints_are_the_cell_less_the_tile(a in 3_000_000i64..3_000_000_000, b in 3_000_000i64..3_000_000_000, j in 100_000i64..50_000_000) {
        let share = grid_fraction(Length::nm(a), Length::nm(b), Length::nm(j));
        let (a, b, j) = (i128::from(a), i128::from(b), i128::from(j));
        let cell = (a + j) * (b + j);
        let exact = (cell - a * b) as f64 / cell as f64;
        prop_assert!((share - exact).abs() < 1e-12, "{share} {exact}");
        let common = product_fraction(Length::nm(a as i64), Length::nm(b as i64), Length::nm(j as i64));
        prop_assert!(common > share && share > 0.0 && share < 1.0);
    }

    #[test]
    fn prop_twice_the_floor_takes_twice_the_grout(feet in 1.0..5_000.0, side in 5i64..1_000, joint in 1i64..50, waste in 0.0..1.0) {
        let side = Length::mm(side);
        let floor = |feet| {
            let ask = grout::Ask {
                area: square_feet(feet),
                joints: JointOf::Grid { a: side, b: side },
                width: Length::mm(joint),
                waste,
                ..grout::Ask::default()
            };
            grout::figure(&ask).unwrap()
        };
        let (one, two) = (floor(feet), floor(2.0 * feet));
        prop_assert!(((two.mass / one.mass).value - 2.0).abs() < 1e-9);
        prop_assert!(((one.bag_covers / two.bag_covers).value - 1.0).abs() < 1e-9);
        prop_assert!(one.mass >= one.net && one.volume < one.net / one.density * 1.000_001);
    }

    #[test]
    fn prop_any_number_is_figured_or_refused(
        x in prop::array::uniform8(any_number()), n in prop::array::uniform6(any::<i64>()), k in any::<u8>(),
    ) {
        let length = |at: usize| Length::nm(n[at]);
        let mut ask = grout::Ask {
            area: square_feet(x[0]),
            joints: if k % 2 == 0 { JointOf::Area(square_feet(x[1])) } else { JointOf::Hexagon { flats: length(0) } },
            width: length(1),
            depth: length(2),
            waste: x[2],
            ..grout::Ask::default()
        };
        ask.label.covers = Some(square_feet(x[3]));
        ask.label.bag = Some(pounds(x[4]));
        if let Ok(figure) = grout::figure(&ask) {
            prop_assert!(figure.mass.value.is_finite());
        }
        let works = [
            Work::Setting(Setting {
                area: square_feet(x[0]),
                notch: Notch { shape: shape(k), width: length(0), depth: length(1), land: length(2) },
                back_butter: Some(length(3)),
                ..Setting::default()
            }),
            Work::Bed(
                Bed {
                    across: length(0),
                    up: length(1),
                    at_drain: length(2),
                    drain: Drain::At(length(3), length(4)),
                    fall: if k % 2 == 0 { Fall::OnShortest(x[1]) } else { Fall::Rise(length(5)) },
                },
                Mix::bags(),
            ),
            Work::Volume(litres(x[1]), Mix::Site(Parts { lime: x[5], ..Parts::sand(x[6]) })),
        ];
        for work in works {
            let batch = Batch { bucket: litres(x[7]), ..Batch::default() };
            if let Ok(figure) = mortar::figure(&mortar::Ask { work, waste: x[2], batch, old_floor: false }) {
                prop_assert!(figure.mixed.value.is_finite() && figure.batches.count > 0);
            }
        }
    }

    /// The referee cuts the pan into triangles from the drain to each side; each is as thick as the mean of its corners.
    #[test]
    fn prop_a_pan_is_its_triangles_and_falls_enough(
        across in 300i64..3_000, up in 300i64..3_000, x in 0.1..0.9, y in 0.1..0.9, drain in 0i64..100, slope in 0.001..0.2,
    ) {
        let part = |side: i64, share: f64| Length::mm((side as f64 * share) as i64);
        let ask = Bed {
            across: Length::mm(across),
            up: Length::mm(up),
            at_drain: Length::mm(drain),
            drain: Drain::At(part(across, x), part(up, y)),
            fall: Fall::OnLongest(slope),
        };
        let work = Work::Bed(ask, Mix::bags());
        let figure = mortar::figure(&mortar::Ask { work, ..mortar::Ask::default() }).unwrap();
        let bed = figure.bed.unwrap();
        let corners: Vec<_> = bed.spots.iter().filter(|spot| spot.what == SpotKind::Corner).collect();
        let centre = bed.spots.iter().find(|spot| spot.what == SpotKind::Drain).unwrap();
        let mut cubic = 0.0;
        for at in 0..4 {
            let (one, two) = (corners[at], corners[(at + 1) % 4]);
            let leg = |spot: &mortar::Spot| (
                (spot.across - centre.across).metres(),
                (spot.up - centre.up).metres(),
            );
            let ((ax, ay), (bx, by)) = (leg(one), leg(two));
            let triangle = (ax * by - ay * bx).abs() / 2.0;
            cubic += triangle * (one.depth + two.depth + centre.depth).metres() / 3.0;
        }
        prop_assert!((figure.volume.value / cubic - 1.0).abs() < 1e-6, "{cubic}");
        prop_assert!(bed.runs.iter().all(|run| run.slope > slope - 1e-6));
        let flattest = bed.runs.iter().map(|run| run.slope).fold(f64::MAX, f64::min);
        prop_assert!((flattest - slope).abs() < 1e-6);
    }

    #[test]
    fn prop_a_channel_falls_alike_everywhere(across in 300i64..3_000, up in 300i64..3_000, slope in 0.001..0.2, wall in 0usize..4) {
        let wall = [Wall::Left, Wall::Right, Wall::Near, Wall::Far][wall];
        let ask = Bed {
            across: Length::mm(across),
            up: Length::mm(up),
            drain: Drain::Along(wall),
            fall: Fall::OnShortest(slope),
            ..Bed::default()
        };
        let work = Work::Bed(ask, Mix::bags());
        let figure = mortar::figure(&mortar::Ask { work, ..mortar::Ask::default() }).unwrap();
        for run in &figure.bed.as_ref().unwrap().runs {
            prop_assert!((run.slope - slope).abs() < 1e-6);
        }
    }

    #[test]
    fn prop_batches_fit_and_are_all_of_it(
        metres in 0.1..200.0, bucket in 1.0..100.0, fill in 0.1..1.0, pace in 0.1..20.0, site in any::<bool>(),
    ) {
        let work = if site {
            Work::Bed(Bed { across: Length::mm(1_000), ..Bed::default() }, Mix::Site(Parts::sand(5.0)))
        } else {
            Work::Setting(Setting { area: square_metres(metres), ..Setting::default() })
        };
        let batch = Batch { bucket: litres(bucket), fill, pace: square_metres(pace) };
        let figure = mortar::figure(&mortar::Ask { work, batch, ..mortar::Ask::default() }).unwrap();
        let batches = &figure.batches;
        let all = batches.each * f64::from(batches.count - 1) + batches.last;
        prop_assert!(((all / figure.mixed).value - 1.0).abs() < 1e-9);
        prop_assert!(batches.last.value > 0.0 && batches.last <= batches.each * 1.000_001);
        prop_assert!(in_litres(batches.each) <= bucket * fill * 1.000_001);
        let loose: f64 = batches.dry.iter().map(|one| in_litres(one.volume)).sum();
        prop_assert!(!site || loose <= bucket * fill * 1.000_001);
        let hours = batches.area.unwrap().value / pace;
        prop_assert!(hours * 60.0 <= batches.minutes * 1.000_001);
        prop_assert_eq!(batches.held_by == HeldBy::All, batches.count == 1);
    }
}
