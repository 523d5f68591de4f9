//! A room's surfaces as regions: the floor as it is walked, a wall as it is seen from inside.

use super::{Room, Shape, Standing, shape};
use crate::geometry::Region;

/// The floor, wall to wall; `None` until every wall is known.
#[must_use]
pub fn floor(room: &Room) -> Option<Region> {
    Some(Region {
        outer: standing(room)?.corners,
        holes: Vec::new(),
    })
}

/// The outline, once nothing of it is a guess.
pub(super) fn standing(room: &Room) -> Option<Shape> {
    let shape = shape(room).ok()?;
    let guessed = (shape.walls.iter()).any(|(_, standing)| *standing == Standing::NotYet);
    (!guessed).then_some(shape)
}

/// A wall as it truly stands, from the highest point of its ceiling down and from its left corner at the floor, its
/// openings taken out: those that stand on the floor as notches, the rest as holes. `None` until the wall, its height and
/// its openings are known. See [`elevation`](super::elevation).
#[must_use]
pub fn wall(room: &Room, index: usize) -> Option<Region> {
    super::elevation::region(room, index)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Length;
    use crate::measure::quantity::in_square_feet;
    use crate::site::{Opening, OpeningKind, OpeningRule, What, wall_areas};

    /// 8 ft wide, 7 ft high at its left end and 8 at its right: 60 ft², and so in the list of areas.
    #[test]
    fn a_wall_is_as_high_as_its_corners() {
        let mut room = Room::rectangle("a");
        for (wall, feet) in room.walls.iter_mut().zip([8, 5]) {
            wall.length = Some(Length::feet(feet));
        }
        room.ceiling = Some(Length::feet(8));
        room.measure(What::Height(0), Some(Length::feet(7)), None);
        let region = wall(&room, 0).unwrap();
        assert!((in_square_feet(region.area()) - 60.0).abs() < 1e-9);
        let shape = shape(&room).unwrap();
        let areas = wall_areas(&room, &shape, OpeningRule::Net).unwrap();
        assert!((in_square_feet(areas[0].net) - 60.0).abs() < 1e-9);
    }

    #[test]
    fn a_door_is_a_notch_and_a_window_a_hole() {
        let mut room = Room::rectangle("a");
        for (wall, feet) in room.walls.iter_mut().zip([8, 5]) {
            wall.length = Some(Length::feet(feet));
        }
        room.ceiling = Some(Length::feet(8));
        let opening = |kind, from_left: i64, sill: i64, width: i64, height: i64| Opening {
            kind,
            wall: 0,
            from_left: Some(Length::feet(from_left)),
            width: Some(Length::feet(width)),
            height: Some(Length::feet(height)),
            sill: Some(Length::feet(sill)),
            hinge: None,
        };
        room.openings = vec![
            opening(OpeningKind::Door, 1, 0, 3, 7),
            opening(OpeningKind::Window, 5, 4, 2, 3),
        ];
        let wall = wall(&room, 0).unwrap();
        assert_eq!((wall.outer.points.len(), wall.holes.len()), (8, 1));
        assert!((in_square_feet(wall.area()) - (64.0 - 21.0 - 6.0)).abs() < 1e-9);
        assert_eq!(wall.crossing(), None);
        assert!((in_square_feet(floor(&room).unwrap().area()) - 40.0).abs() < 1e-9);
    }
}
