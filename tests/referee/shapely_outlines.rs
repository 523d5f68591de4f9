//! `geometry::Polygon` against shapely 2.2.0, which figures outlines its own way (`shapely_outlines.py` wrote the figures).

use storyrod::geometry::{Point, Polygon};
use storyrod::measure::Length;

fn points(text: &str) -> Vec<Point> {
    let numbers: Vec<i64> = text
        .split_whitespace()
        .map(|number| number.parse().unwrap())
        .collect();
    numbers
        .chunks_exact(2)
        .map(|at| Point::new(Length::mm(at[0]), Length::mm(at[1])))
        .collect()
}

#[test]
fn every_outline_is_judged_as_shapely_judges_it() {
    let (mut simple_ones, mut crossing_ones, mut asked_points) = (0, 0, 0);
    for line in include_str!("shapely_outlines.csv")
        .lines()
        .filter(|line| !line.starts_with('#'))
    {
        let [corners, simple, doubled_area, asked, inside]: [&str; 5] =
            line.split(',').collect::<Vec<_>>().try_into().unwrap();
        let mut outline = Polygon {
            points: points(corners),
        };
        assert_eq!(outline.crossing().is_none(), simple == "1", "{line}");
        if simple == "0" {
            crossing_ones += 1;
            continue;
        }
        simple_ones += 1;
        for _ in 0..2 {
            let area = outline.doubled_area().unsigned_abs();
            let expected: u128 = doubled_area.parse().unwrap();
            assert_eq!(area, expected * 1_000_000_000_000, "{line}");
            for (at, expected) in points(asked).into_iter().zip(inside.chars()) {
                assert_eq!(outline.contains(at), expected == '1', "{at:?} of {line}");
                asked_points += 1;
            }
            // The other way round nothing may change but the sign.
            outline.points.reverse();
        }
    }
    assert_eq!(
        simple_ones + crossing_ones,
        250,
        "40, 30, 90 and 90 outlines"
    );
    assert!(simple_ones > 100 && crossing_ones > 80);
    assert_eq!(asked_points, simple_ones * 18);
}
