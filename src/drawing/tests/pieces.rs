//! What is marked on a piece.

use super::*;
use crate::geometry::{Point, Polygon, Region};
use crate::trades::sheets;

/// A floor of 100 by 70 in: each cut is straight, and its place is told once, not at both its ends.
#[test]
fn a_straight_cut_has_one_figure() {
    let corner = |(x, y): (i64, i64)| Point::new(Length::inches(x), Length::inches(y));
    let ask = sheets::Ask {
        surface: Region {
            outer: Polygon {
                points: [(0, 0), (100, 0), (100, 70), (0, 70)].map(corner).to_vec(),
            },
            holes: Vec::new(),
        },
        ..sheets::Ask::default()
    };
    let figure = sheets::figure(&ask).unwrap();
    let mut told = 0;
    for piece in &figure.pieces {
        let scene = piece_sketch(&ask, piece, UNITS);
        let mut seen = Vec::new();
        for figure in &scene.dimensions {
            let run = figure.to - figure.from;
            let what = (run.x.abs() > run.y.abs(), figure.text.clone());
            assert!(
                !seen.contains(&what),
                "{what:?} twice on piece {}",
                piece.number
            );
            seen.push(what);
            told += 1;
        }
    }
    assert!(told > figure.pieces.len());
}
