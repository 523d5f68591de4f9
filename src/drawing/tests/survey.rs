//! The plan of a survey, and the outline under a finger.

use super::*;

/// In a notch of a foot, drawn on a phone, every wall and every corner is hit by a tap on its own middle, and a wall by its
/// figure as well.
#[test]
fn walls_and_corners_of_a_notch_are_told_apart_by_a_finger() {
    let mut room = Room::rectangle("Washroom");
    room.add_jog(0);
    room.step_wall(4, Length::inches(40), true);
    let look = PlanLook {
        handles: true,
        ..PlanLook::default()
    };
    let scene = plan_seen(&room, UNITS, &look);
    for (width, height, text) in SHEETS {
        let canvas = Canvas {
            width,
            height,
            text,
            margin: 12.0,
        };
        let sheet = lay_out(&scene, &canvas, None);
        let figures: Vec<_> = scene.dimensions.iter().filter_map(|d| d.tag).collect();
        for wall in 0..room.walls.len() {
            assert!(figures.contains(&PlanTag::WallBody(wall)));
        }
        let at = |x: f32, y: f32| {
            let here =
                |s: &&HotSpot<PlanTag>| s.x <= x && x <= s.x + s.w && s.y <= y && y <= s.y + s.h;
            sheet.hot.iter().rev().find(here).map(|s| s.tag)
        };
        for hot in &scene.hot {
            let ((a, b), (c, d)) = (sheet.place.of(hot.min), sheet.place.of(hot.max));
            let found = at(f32::midpoint(a, c), f32::midpoint(b, d));
            assert_eq!(found, Some(hot.tag), "on {width} by {height}");
        }
    }
}

/// A room measured across both ways, with what stands in it, on a phone: every figure readable, and where a diagonal's has
/// no room on its own line it is left to the list. The one that is asked always has its figure.
#[test]
fn the_plan_of_a_survey_is_clean() {
    use crate::site::{Fixture, FixtureKind, What};
    let look = |asked| PlanLook {
        diagonals: true,
        asked,
        ..PlanLook::default()
    };
    let inches = |n| Some(Length::inches(n));
    let mut both = measured();
    let across = both.across();
    for what in &across {
        let What::Diagonal(a, b) = *what else {
            continue;
        };
        let corners = site::sketch(&both).corners.points;
        let long = corners[a].distance(corners[b]);
        both.measure(
            *what,
            Some(long.rounded(Length::in_64(0, 4), crate::measure::Rounding::Nearest)),
            None,
        );
    }
    let mut square = Room::rectangle("Washroom");
    for (wall, n) in [96, 60, 96, 60].into_iter().enumerate() {
        square.measure(What::Wall(wall), inches(n), None);
    }
    for (what, n) in [(What::Diagonal(0, 2), 40), (What::Diagonal(1, 3), 56)] {
        square.measure(what, Some(Length::in_64(113, n)), None);
    }
    for (kind, wall, from_left, width, depth) in [
        (FixtureKind::Basin, 0, 24, 24, 20),
        (FixtureKind::Toilet, 1, 40, 18, 28),
    ] {
        let mut fixture = Fixture::new(kind, wall);
        (fixture.from_left, fixture.width) = (inches(from_left), inches(width));
        fixture.depth = inches(depth);
        square.fixtures.push(fixture);
    }
    for (name, room) in [
        ("l", both),
        ("square", square),
        ("bare-l", Room::l_shape("Washroom")),
        ("bare-alcove", Room::alcove("Washroom")),
    ] {
        for (n, asked) in [None, room.across().first().copied()]
            .into_iter()
            .enumerate()
        {
            let scene = plan_seen(&room, UNITS, &look(asked));
            clean(&format!("survey-{name}-{n}"), &scene);
            let Some(What::Diagonal(a, b)) = asked else {
                continue;
            };
            let canvas = Canvas {
                width: 412.0,
                height: 314.0,
                text: 1.0,
                margin: 12.0,
            };
            let sheet = lay_out(&scene, &canvas, None);
            let tag = Some(PlanTag::Diagonal(a, b));
            let at = scene.dimensions.iter().position(|d| d.tag == tag).unwrap();
            assert!(sheet.boxes[at][2] > 0.0, "{name}");
        }
    }
}
