//! Rooms mirrored, turned and misread.

use proptest::prelude::*;
use storyrod::measure::{Angle, Length, Units};
use storyrod::site::*;

fn inches(range: std::ops::Range<i64>) -> impl Strategy<Value = Length> {
    range.prop_map(|sixteenths| Length::in_64(0, sixteenths * 4))
}

/// A template, measured but for two walls that follow, with something of everything on its walls.
fn full_room() -> impl Strategy<Value = Room> {
    let item = || (0usize..8, inches(1..600), inches(1..600), inches(16..400));
    let items = (
        prop::collection::vec(item(), 0..4),
        prop::collection::vec(item(), 0..4),
        prop::collection::vec(item(), 0..4),
    );
    let lengths = prop::collection::vec(inches(160..2400), 8);
    let studs = (inches(0..256), inches(128..384));
    (0u8..3, lengths, items, studs, 0u8..4, any::<bool>()).prop_map(
        |(shape, lengths, (openings, fixed, hidden), (first, spacing), facing, right)| {
            let mut room = match shape {
                0 => Room::rectangle("Any"),
                1 => Room::l_shape("Any"),
                _ => Room::alcove("Any"),
            };
            let count = room.walls.len();
            for (wall, length) in lengths.into_iter().take(count).enumerate() {
                // The last of each way follows.
                let follows = wall + 2 >= count;
                room.measure(What::Wall(wall), (!follows).then_some(length), None);
                room.walls[wall].studs = Some(Studs::Spaced {
                    first: first.min(spacing - Length::nm(1)),
                    spacing,
                    face: Length::in_64(1, 32),
                });
            }
            for (wall, from_left, up, size) in openings {
                room.openings.push(Opening {
                    kind: OpeningKind::Door,
                    wall: wall % count,
                    from_left: Some(from_left),
                    width: Some(size),
                    height: Some(up),
                    sill: Some(Length::ZERO),
                    hinge: Some(Hinge {
                        side: if right { Side::Right } else { Side::Left },
                        out: right,
                    }),
                });
            }
            for (wall, from_left, up, size) in fixed {
                let mut point = FixedPoint::new(FixedKind::Hot, On::Wall(wall % count));
                (point.from_left, point.up) = (Some(from_left), Some(up));
                room.fixed.push(point);
                let mut fixture = Fixture::new(FixtureKind::Basin, wall % count);
                (fixture.from_left, fixture.width) = (Some(from_left), Some(size));
                room.fixtures.push(fixture);
            }
            for (wall, from_left, up, size) in hidden {
                let mut item = Hidden::new(HiddenKind::Pipe, On::Floor(wall % count));
                item.line = vec![
                    Spot { from_left, up },
                    Spot {
                        from_left: size,
                        up,
                    },
                ];
                room.hidden.push(item);
                // Off by less than an inch, and no wall shorter than a foot: of walls and diagonals that have nothing to do
                // with each other, no one outline fits best.
                let (from, to) = (wall % count, (wall + 2) % count);
                let drawn = sketch(&room);
                let sound = drawn.walls.iter().all(|wall| wall.0 > Length::feet(1));
                let corners = drawn.corners.points;
                if let (true, Some(a), Some(b)) = (sound, corners.get(from), corners.get(to)) {
                    let off = Length::nm(size.as_nm() % 25_400_000);
                    let across = a.distance(*b) + off;
                    room.measure(What::diagonal(from, to), Some(across), None);
                }
                room.measure(What::Lean(wall % count, Side::Left), Some(-up), None);
                room.measure(What::Gap(wall % count, Third::Right), Some(up), Some(size));
                room.pass(What::Level(wall % count), Passed::NotThere);
            }
            room.facing = facing;
            room
        },
    )
}

proptest! {
    /// Nothing is lost and nothing is left behind.
    #[test]
    fn prop_a_room_mirrored_twice_is_the_same_room(room in full_room()) {
        prop_assert_eq!(room.mirrored().mirrored(), room);
    }

    #[test]
    fn prop_a_room_turned_four_times_is_the_same_room(room in full_room()) {
        let mut turned = room.clone();
        for _ in 0..4 {
            turned.turn();
        }
        prop_assert_eq!(turned, room);
    }

    /// Its plan is the mirror image: the same floor, the same way round; each wall as long.
    #[test]
    fn prop_a_mirrored_room_has_the_same_floor(room in full_room()) {
        prop_assume!(shape(&room).is_ok());
        let (here, there) = (sketch(&room), sketch(&room.mirrored()));
        let area = here.corners.area().value;
        prop_assert!((there.corners.area().value - area).abs() <= area * 1e-6 + 1e-9);
        let count = room.walls.len();
        for wall in 0..count {
            let (one, other) = (here.walls[wall].0, there.walls[(count - wall) % count].0);
            prop_assert!((one - other).abs() <= Length::nm(10), "wall {}: {:?} {:?}", wall, one, other);
        }
    }

    /// Turned on the sheet a room is the same size.
    #[test]
    fn prop_a_turned_room_is_drawn_turned(room in full_room()) {
        let mut turned = room.clone();
        turned.turn();
        let sides = |room: &Room| {
            let (min, max) = sketch(room).corners.bounds().unwrap();
            (max.x - min.x, max.y - min.y)
        };
        let ((w, h), (turned_w, turned_h)) = (sides(&room), sides(&turned));
        prop_assert!((w - turned_h).abs() <= Length::nm(10) && (h - turned_w).abs() <= Length::nm(10));
    }

    /// A square room of whole inches in which one wall or diagonal is a foot off: it is the one that is named.
    #[test]
    fn prop_a_foot_too_much_is_found(
        across in 60i64..140,
        along in 60i64..140,
        which in 0usize..6,
        more in any::<bool>(),
    ) {
        let mut room = Room::rectangle("Any");
        let diagonal = Length::inches(across).diagonal(Length::inches(along));
        let diagonal = diagonal.rounded(Length::in_64(0, 4), storyrod::measure::Rounding::Nearest);
        let whats = [
            (What::Wall(0), Length::inches(across)),
            (What::Wall(1), Length::inches(along)),
            (What::Wall(2), Length::inches(across)),
            (What::Wall(3), Length::inches(along)),
            (What::Diagonal(0, 2), diagonal),
            (What::Diagonal(1, 3), diagonal),
        ];
        for (at, (what, length)) in whats.iter().enumerate() {
            let off = Length::feet(if at != which { 0 } else if more { 1 } else { -1 });
            room.measure(*what, Some(*length + off), None);
        }
        let found = misreads(&room, Units::FeetInches { marks: 16 });
        prop_assert_eq!(found.first().map(|found| (found.what, found.how)), Some((whats[which].0, How::Foot)));
    }

    /// No survey, however wrong, ends in a panic or in an outline with a corner that is no place.
    #[test]
    fn prop_any_survey_is_figured_or_refused(
        lengths in prop::collection::vec(prop_oneof![inches(1..4000), any::<i64>().prop_map(Length::nm)], 6),
        turns in prop::collection::vec(-200i64..200, 6),
        across in prop::collection::vec((0usize..7, 0usize..7, prop_oneof![inches(0..9000), any::<i64>().prop_map(Length::nm)]), 0..5),
        guess in any::<i64>(),
    ) {
        let mut room = Room::l_shape("Any");
        for (wall, (length, turn)) in room.walls.iter_mut().zip(lengths.iter().zip(&turns)) {
            wall.length = Some(*length);
            if guess % 3 == 0 {
                wall.turn = Angle::degrees(*turn);
            }
        }
        for (a, b, length) in across {
            room.measure(What::diagonal(a, b), Some(length), (guess % 2 == 0).then_some(Length::nm(guess)));
        }
        let _ = misreads(&room, Units::Millimetres);
        let drawn = sketch(&room);
        prop_assert_eq!(drawn.corners.points.len(), 6);
        if let Some(found) = surveyed(&room) {
            prop_assert!(found.area.value.is_finite() && found.area_plus_minus.value >= 0.0);
        }
        let _ = (shape(&room), to_ask(&room, Asked::Everything), room.mirrored(), clearances(&room, &drawn));
        for wall in 0..room.walls.len() {
            let mut other = room.clone();
            other.remove_corner(wall);
            other.drag_wall(wall, lengths[0]);
            other.step_wall(wall, lengths[1], wall % 2 == 0);
            other.remove_wall(wall);
        }
    }
}
