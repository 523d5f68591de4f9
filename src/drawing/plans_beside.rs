//! Two rooms drawn side by side, to one scale, to see at a glance what they share.

use super::plan::plan;
use super::{Dimension, Edge, Hot, Scene};
use crate::geometry::Point;
use crate::measure::{Length, Units};
use crate::site::{self, Room};

/// Two plans beside each other with how far each reaches; a tap on one says which.
///
/// Their own dimensions are left out: a phone has no room for two rows of them.
#[must_use]
pub fn plans_beside(rooms: [&Room; 2], units: Units) -> Scene<usize> {
    let mut all = Scene::empty(format!("{} beside {}", rooms[0].name, rooms[1].name));
    let mut x = Length::ZERO;
    for (at, room) in rooms.into_iter().enumerate() {
        let Some((least, most)) = site::sketch(room).corners.bounds() else {
            continue;
        };
        let by = Point::new(x - least.x, -least.y);
        let moved = plan(room, units).with_points(|point| point + by);
        let (least, most) = (least + by, most + by);
        all.marks.extend(moved.marks);
        let right = (Point::new(most.x, least.y), most);
        let left = (Point::new(least.x, most.y), least);
        // A plan that is sketched from guesses has no size to tell.
        if site::surface::floor(room).is_some() {
            all.dimensions.extend([
                reach(room, (least, Point::new(most.x, least.y)), units),
                // Each on its outer side, so that the two keep clear of each other.
                reach(room, if at == 0 { left } else { right }, units),
            ]);
        }
        all.hot.push(Hot {
            min: least,
            max: most,
            tag: at,
            says: room.name.clone(),
        });
        x = most.x + (most.x - least.x).divided(4);
    }
    all
}

/// How far a plan reaches, from one side to the other; of four walls it is the wall there, as its own plan has it, for the
/// box of a room out of square is larger.
fn reach(room: &Room, (from, to): (Point, Point), units: Units) -> Dimension<usize> {
    let box_side = (to.x - from.x).abs().max((to.y - from.y).abs());
    let level = (to.x - from.x).abs() > (to.y - from.y).abs();
    let outline = site::sketch(room);
    let wall = (0..outline.walls.len()).find(|wall| {
        let corners = &outline.corners.points;
        let run = corners[(wall + 1) % corners.len()] - corners[*wall];
        (run.x.abs() > run.y.abs()) == level
    });
    let length = wall
        .filter(|_| outline.walls.len() == 4)
        .map_or(box_side, |wall| outline.walls[wall].0);
    let mut reach = Dimension::of((from, to), Edge::Left(1), length, None, units);
    reach.says = format!("{}, {}", room.name, reach.says);
    reach
}

#[cfg(test)]
mod tests {
    use super::*;

    const UNITS: Units = Units::FeetInches { marks: 16 };

    fn measured(name: &str, feet: [i64; 2]) -> Room {
        let mut room = Room::rectangle(name);
        for (wall, feet) in room.walls.iter_mut().zip(feet) {
            wall.length = Some(Length::feet(feet));
        }
        room
    }

    #[test]
    fn two_plans_keep_clear_and_each_can_be_tapped() {
        let (one, other) = (measured("One", [8, 5]), measured("Other", [6, 4]));
        let scene = plans_beside([&one, &other], UNITS);
        let tags: Vec<usize> = scene.hot.iter().map(|hot| hot.tag).collect();
        assert_eq!(tags, [0, 1]);
        assert_eq!(scene.hot[0].max.x - scene.hot[0].min.x, Length::feet(8));
        assert!(scene.hot[1].min.x > scene.hot[0].max.x);
        let said: Vec<&str> = scene.dimensions.iter().map(|d| d.says.as_str()).collect();
        assert_eq!(said, ["One, 8'", "One, 5'", "Other, 6'", "Other, 4'"]);
        let guessed = plans_beside([&one, &Room::rectangle("New")], UNITS);
        assert_eq!(guessed.dimensions.len(), 2);
    }
}
