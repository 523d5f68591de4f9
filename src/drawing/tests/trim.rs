//! Trim on sheets of every size.

use super::*;

/// Base round a room with a door, pieces by hand, and casing of a door and two windows.
#[test]
fn trim_is_clean() {
    use crate::trades::trim::{self, Corner, Frame, Gap, Head, Listed, Opening as Cased, Stop};
    let room = measured();
    let shape = site::shape(&room).unwrap();
    let turns = site::true_turns(&room);
    let mut walls: Vec<trim::Wall> = (shape.walls.iter().zip(&turns))
        .map(|((length, _), turn)| trim::Wall {
            length: *length,
            turn: *turn,
            gaps: Vec::new(),
            studs: Vec::new(),
        })
        .collect();
    walls[4].gaps.push(Gap {
        from: Length::in_64(12, 12),
        to: Length::in_64(42, 24),
        stop: Stop::Cased,
    });
    let base = trim::Ask {
        walls: Some(walls),
        ..trim::Ask::default()
    };
    let figure = trim::figure(&base).unwrap();
    clean(
        "trim-base",
        &base_on_plan(&room, &base, Some(&figure), UNITS),
    );
    let listed = |inches, count, ends| Listed {
        length: Length::inches(inches),
        count,
        ends,
    };
    let hand = trim::Ask {
        pieces: vec![
            listed(120, 1, [Corner::Inside, Corner::Outside]),
            listed(40, 3, [Corner::Square, Corner::Inside]),
            listed(12, 1, [Corner::Outside, Corner::Outside]),
        ],
        ..trim::Ask::default()
    };
    let figure = trim::figure(&hand).unwrap();
    clean("trim-hand", &base_by_hand(&hand, Some(&figure), UNITS));
    let window = Frame {
        opening: Cased::Window,
        width: Length::inches(24),
        height: Length::inches(30),
        four: true,
        ..Frame::default()
    };
    for (name, head) in [("mitred", Head::Mitred), ("butted", Head::Butted)] {
        let casing = trim::Ask {
            head,
            frames: vec![Frame::default(), window],
            ..trim::Ask::casing()
        };
        let figure = trim::figure(&casing).unwrap();
        let scene = casing_sketch(&casing, Some(&figure), UNITS);
        clean(&format!("trim-casing-{name}"), &scene);
    }
}
