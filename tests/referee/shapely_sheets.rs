//! Sheets on true shapes against shapely 2.2.0 (`shapely_sheets.py` wrote the areas, from courses said anew).

use storyrod::geometry::{Point, Polygon, Region};
use storyrod::measure::{Length, quantity::in_square_metres};
use storyrod::trades::sheets::{Ask, Thing, ThingShape, Way, figure};

/// Millimetres as they stand in the file, to the nanometre.
fn mm(text: &str) -> Length {
    Length::nm((text.parse::<f64>().unwrap() * 1e6).round() as i64)
}

fn numbers(text: &str) -> Vec<Length> {
    text.split_whitespace().map(mm).collect()
}

#[test]
fn the_pieces_of_sixty_rooms_have_the_areas_that_shapely_finds() {
    let mut rooms = 0;
    let mut tapered = 0;
    for line in include_str!("shapely_sheets.csv").lines().skip(1) {
        let [outer, things, rule, areas]: [&str; 4] =
            line.split(',').collect::<Vec<_>>().try_into().unwrap();
        let outer = numbers(outer);
        let points = outer.chunks_exact(2).map(|at| Point::new(at[0], at[1]));
        let (rule, way) = rule.rsplit_once(' ').unwrap();
        let rule = numbers(rule);
        let round = |text: &str| {
            let at = numbers(text);
            Thing {
                kind: None,
                shape: ThingShape::Round { across: at[2] },
                from_left: at[0],
                from_top: at[1],
                clear: Length::ZERO,
            }
        };
        let ask = Ask {
            surface: Region {
                outer: Polygon {
                    points: points.collect(),
                },
                holes: Vec::new(),
            },
            things: things
                .split(';')
                .filter(|t| !t.is_empty())
                .map(round)
                .collect(),
            sheet: (rule[0], rule[1]),
            gap: rule[2],
            edge: rule[3],
            stagger: Length::ZERO,
            way: if way == "up" { Way::Up } else { Way::Across },
            ..Ask::default()
        };
        let figure = figure(&ask).unwrap();
        let mut ours: Vec<f64> = (figure.pieces.iter())
            .map(|piece| in_square_metres(piece.region.area()) * 1e6)
            .collect();
        ours.sort_by(f64::total_cmp);
        let theirs: Vec<f64> = areas.split(' ').map(|a| a.parse().unwrap()).collect();
        assert_eq!(ours.len(), theirs.len(), "{line}");
        for (a, b) in ours.iter().zip(&theirs) {
            // Half the last printed digit, and corners on whole nanometres.
            assert!((a - b).abs() < 0.05, "{a} {b}: {line}");
        }
        rooms += 1;
        tapered += usize::from(
            figure
                .pieces
                .iter()
                .any(|p| p.cuts.iter().any(|c| c.taper().is_positive())),
        );
    }
    assert!(rooms == 60 && tapered > 30, "{rooms} {tapered}");
}
