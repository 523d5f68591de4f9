//! Walls with points a few inches apart, plans with short jogs, rooms out of square: no word over another.

use super::{UNITS, clean, measured};
use crate::drawing::{PlanLook, PlanTag, from_behind, plan, plan_seen, wall};
use crate::measure::{Angle, Length};
use crate::site::{FixedKind, FixedPoint, On, Room, Wall, What};

/// Supplies, a drain and a box a few inches from each other, and what is hidden behind them.
fn with_points(at: &[(FixedKind, i64, i64)]) -> Room {
    let mut room = measured();
    room.openings.clear();
    for (kind, from_left, up) in at {
        let mut point = FixedPoint::new(*kind, On::Wall(0));
        point.from_left = Some(Length::inches(*from_left));
        point.up = Some(Length::in_64(*up, 20));
        room.fixed.push(point);
    }
    room
}

const POINTS: [&[(FixedKind, i64, i64)]; 3] = [
    &[
        (FixedKind::Hot, 20, 21),
        (FixedKind::Cold, 28, 21),
        (FixedKind::Drain, 24, 18),
        (FixedKind::Outlet, 44, 44),
    ],
    &[
        (FixedKind::Hot, 40, 21),
        (FixedKind::Cold, 42, 21),
        (FixedKind::Drain, 41, 19),
    ],
    &[
        (FixedKind::Valve, 84, 40),
        (FixedKind::Hot, 86, 20),
        (FixedKind::Cold, 2, 20),
        (FixedKind::Outlet, 3, 22),
        (FixedKind::Switch, 5, 46),
    ],
];

#[test]
fn fixed_points_a_few_inches_apart_are_clean_from_either_side() {
    for (n, points) in POINTS.into_iter().enumerate() {
        let room = with_points(points);
        let scene = wall(&room, 0, UNITS);
        clean(&format!("points-{n}"), &scene);
        clean(
            &format!("points-behind-{n}"),
            &from_behind(scene, Length::inches(88)),
        );
    }
}

/// A room whose corners jut in and are cut off, by a few numbers.
fn jogged(seed: usize) -> Room {
    let mut room = match seed % 3 {
        0 => Room::rectangle("Washroom"),
        1 => Room::l_shape("Washroom"),
        _ => Room::alcove("Washroom"),
    };
    for n in 0..seed % 4 {
        let wall = (seed * 5 + n * 3) % room.walls.len();
        if (seed + n).is_multiple_of(2) {
            room.add_jog(wall);
        } else {
            room.cut_corner(wall);
        }
    }
    room
}

#[test]
fn plans_of_jogged_rooms_are_clean() {
    let mut short = measured();
    short.walls[3].length = Some(Length::inches(4));
    short.walls[5].length = Some(Length::inches(54));
    clean("plan-short-jog", &plan(&short, UNITS));
    for seed in 0..24 {
        clean(&format!("plan-jogged-{seed}"), &plan(&jogged(seed), UNITS));
    }
}

#[test]
fn a_room_out_of_square_is_clean() {
    let mut room = Room::rectangle("Washroom");
    for (wall, sixteenths) in [1536, 963, 1534, 960].into_iter().enumerate() {
        let length = Some(Length::in_64(0, sixteenths * 4));
        room.measure(What::Wall(wall), length, None);
    }
    room.measure(What::Diagonal(0, 2), Some(Length::in_64(113, 40)), None);
    room.measure(What::Diagonal(1, 3), Some(Length::in_64(112, 56)), None);
    for exaggerated in [0, 10] {
        let look = PlanLook {
            diagonals: true,
            exaggerated,
            ..PlanLook::default()
        };
        clean(
            &format!("square-{exaggerated}"),
            &plan_seen(&room, UNITS, &look),
        );
    }
}

/// A hall with notches along its upper wall, so many walls in all.
fn notched(notches: i64) -> Room {
    let mut room = Room::rectangle("Hall");
    let one = room.walls[0].clone();
    let notch = [(12, 90), (6, -90), (12, -90), (6, 90)];
    let mut walls: Vec<(i64, i64)> = notch.repeat(notches as usize);
    walls.extend([(12, 90), (60, 90), (12 + 24 * notches, 90), (60, 90)]);
    room.walls = walls
        .into_iter()
        .map(|(inches, turn)| Wall {
            length: Some(Length::inches(inches)),
            turn: Angle::degrees(turn),
            ..one.clone()
        })
        .collect();
    room
}

#[test]
fn of_many_walls_a_plan_tells_those_that_have_room_and_the_chosen_one() {
    let few = notched(3);
    assert_eq!(plan(&few, UNITS).dimensions.len(), 16);
    let many = notched(11);
    let told = |look: &PlanLook| {
        let scene = plan_seen(&many, UNITS, look);
        clean("hall", &scene);
        scene.dimensions.len()
    };
    // The three long walls; the chosen notch beside them.
    assert_eq!(told(&PlanLook::default()), 3);
    let chosen = PlanLook {
        handles: true,
        chosen: Some(PlanTag::WallBody(1)),
        ..PlanLook::default()
    };
    assert_eq!(told(&chosen), 4);
}
