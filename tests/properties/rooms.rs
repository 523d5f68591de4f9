//! Any room, however wrongly measured, is drawn without a panic.

use proptest::prelude::*;
use storyrod::drawing::{Canvas, HotSpot, lay_out, plan, wall};
use storyrod::measure::{Angle, Length, Units};
use storyrod::site::*;

fn length() -> impl Strategy<Value = Length> {
    let longest = Length::LONGEST.as_nm();
    prop_oneof![
        (-longest..=longest).prop_map(Length::nm),
        (1i64..600).prop_map(Length::inches),
        (0i64..4).prop_map(Length::nm),
        any::<i64>().prop_map(Length::nm),
        Just(Length::LONGEST),
    ]
}
fn turn() -> impl Strategy<Value = Angle> {
    prop_oneof![
        Just(Angle::RIGHT),
        Just(Angle::RIGHT),
        Just(Angle::LEFT),
        Just(Angle::degrees(45)),
        (-180i64..=180).prop_map(Angle::degrees),
        any::<i64>().prop_map(Angle::microdegrees),
    ]
}
fn one_wall() -> impl Strategy<Value = Wall> {
    (prop::option::of(length()), length(), turn()).prop_map(|(length, sketched, turn)| Wall {
        length,
        ..Wall::sketched(sketched, turn)
    })
}
fn opening() -> impl Strategy<Value = Opening> {
    let size = || prop::option::of(length());
    (0usize..10, size(), size(), size(), size(), any::<bool>()).prop_map(
        |(wall, from_left, width, height, sill, door)| Opening {
            kind: if door {
                OpeningKind::Door
            } else {
                OpeningKind::Window
            },
            wall,
            from_left,
            width,
            height,
            sill,
            hinge: None,
        },
    )
}
fn room(walls: impl Strategy<Value = Vec<Wall>>) -> impl Strategy<Value = Room> {
    let openings = prop::collection::vec(opening(), 0..3);
    (walls, openings, prop::option::of(length())).prop_map(|(walls, openings, ceiling)| Room {
        walls,
        openings,
        ceiling,
        ..Room::rectangle("Any")
    })
}
/// A template with some of its walls measured, as any room is on the way.
fn half_measured() -> impl Strategy<Value = Room> {
    let lengths = prop::collection::vec(prop::option::of(1i64..400), 8);
    (0usize..3, lengths).prop_map(|(which, lengths)| {
        let mut room = [Room::rectangle, Room::l_shape, Room::alcove][which]("Any");
        for (wall, length) in room.walls.iter_mut().zip(lengths) {
            wall.length = length.map(Length::inches);
        }
        room
    })
}

/// Whether a target is as large as a fingertip, or is cut off because another is nearer than that.
fn is_fingertip<T>(hot: &[HotSpot<T>], n: usize) -> bool {
    let middle = |s: &HotSpot<T>| (s.x + s.w / 2.0, s.y + s.h / 2.0);
    let (spot, (a, b)) = (&hot[n], middle(&hot[n]));
    let crowded = hot.iter().enumerate().any(|(other, near)| {
        let (c, d) = middle(near);
        other != n && (a - c).abs() < 48.0 && (b - d).abs() < 48.0
    });
    spot.w > 0.0 && spot.h > 0.0 && (crowded || spot.w >= 48.0 && spot.h >= 48.0)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn prop_any_room_is_drawn(room in room(prop::collection::vec(one_wall(), 0..9))) {
        let drawn = sketch(&room);
        prop_assert_eq!(drawn.corners.points.len(), room.walls.len());
        prop_assert_eq!(drawn.walls.len(), room.walls.len());
        let (_, _, _) = (shape(&room), slant(&room, &drawn), bend(&room, &drawn));
        let (_, _) = (clashes(&room, &drawn), still_to_measure(&room));
        let units = Units::FeetInches { marks: 16 };
        let canvas = Canvas { width: 412.0, height: 420.0, text: 1.0, margin: 12.0 };
        let sheet = lay_out(&plan(&room, units), &canvas, None);
        for (n, spot) in sheet.hot.iter().enumerate() {
            prop_assert!(spot.x >= 0.0 && spot.y >= 0.0 && is_fingertip(&sheet.hot, n));
            prop_assert!(spot.x + spot.w <= 412.5 && spot.y + spot.h <= 420.5);
        }
        for index in 0..=room.walls.len() {
            let drawn = lay_out(&wall(&room, index, units), &canvas, None);
            prop_assert!((0..drawn.hot.len()).all(|n| is_fingertip(&drawn.hot, n)));
        }
    }

    /// While an axis has a wall that is not measured, every wall along it is drawn along it.
    #[test]
    fn prop_a_room_half_measured_is_drawn_square(room in half_measured()) {
        let drawn = sketch(&room);
        let corners = &drawn.corners.points;
        let count = corners.len();
        let run = |wall: usize| corners[(wall + 1) % count] - corners[wall];
        let mut way = Angle::ZERO;
        let mut across = Vec::new();
        for wall in &room.walls {
            across.push(way.as_microdegrees() % 180_000_000 == 0);
            way = way + wall.turn;
        }
        for axis in [true, false] {
            let here = |wall: &usize| across[*wall] == axis;
            if !(0..count).filter(here).any(|wall| room.walls[wall].length.is_none()) {
                continue;
            }
            // A wall of the other axis goes nowhere along this one.
            for wall in (0..count).filter(|wall| across[*wall] != axis) {
                let off = if axis { run(wall).x } else { run(wall).y };
                prop_assert!(off.abs() < Length::nm(50), "wall {wall}: {off:?}");
            }
        }
        for (wall, (_, standing)) in drawn.walls.iter().enumerate() {
            prop_assert_eq!(room.walls[wall].length.is_some(), *standing == Standing::Measured);
        }
    }
}
