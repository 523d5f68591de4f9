//! What is still to be measured in a room, and walls that come and go.

use std::cmp::Ordering;

use super::shape::headings;
use super::{Joists, Room, Shape, Standing, Wall, What, sketch};
use crate::measure::{Angle, Length};

/// Something that is still to be measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// A wall's length.
    Wall(usize),
    /// The ceiling's height.
    Ceiling,
    /// A size of an opening.
    Opening(usize),
}

/// What is still to be measured, in walking order; a wall that follows from the others is not asked for.
#[must_use]
pub fn still_to_measure(room: &Room) -> Vec<Missing> {
    let drawn = sketch(room);
    let walls = room.walls.iter().zip(&drawn.walls).enumerate();
    let mut missing: Vec<Missing> = walls
        .filter(|(_, (wall, (_, standing)))| {
            wall.length.is_none() && *standing != Standing::Follows
        })
        .map(|(index, _)| Missing::Wall(index))
        .collect();
    if room.ceiling.is_none() {
        missing.push(Missing::Ceiling);
    }
    let open = room.openings.iter().enumerate();
    missing.extend(
        open.filter(|(_, o)| {
            o.from_left.is_none() || o.width.is_none() || o.height.is_none() || o.sill.is_none()
        })
        .map(|(number, _)| Missing::Opening(number)),
    );
    missing
}

/// In a room of square corners, the wall that is drawn furthest out of square, and by how much over its length;
/// `None` where every wall is within 1 mm, or where a corner is not square.
#[must_use]
pub fn slant(room: &Room, shape: &Shape) -> Option<(usize, Length)> {
    let square = |wall: &Wall| [Angle::RIGHT, Angle::LEFT].contains(&wall.turn);
    if !room.walls.iter().all(square) {
        return None;
    }
    let corners = &shape.corners.points;
    let off = |wall: usize| {
        let run = corners[(wall + 1) % corners.len()] - corners[wall];
        run.x.abs().min(run.y.abs())
    };
    (0..corners.len())
        .map(|wall| (wall, off(wall)))
        .max_by_key(|(_, off)| *off)
        .filter(|(_, off)| *off > Length::mm(1))
}

/// A wall that closes the room another way than its corners were said to turn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bend {
    /// The wall.
    pub wall: usize,
    /// By how much its left corner turns more than was said (less than nothing: less).
    pub left: Angle,
    /// The same of its right corner.
    pub right: Angle,
    /// How far its right end lies off the way it was said to run.
    pub off: Length,
}

/// The wall that is drawn furthest off its way, and what that does to its two corners; `None` where every wall is
/// within 1 mm.
///
/// A wall that runs `δ` further round than it was said to turns its left corner `δ` more and its right corner `δ`
/// less, since its neighbours stay as they are.
///
/// # Source
/// Plane geometry.
#[must_use]
pub fn bend(room: &Room, shape: &Shape) -> Option<Bend> {
    let corners = &shape.corners.points;
    let ways = headings(room);
    let of = |wall: usize| {
        let run = corners[(wall + 1) % corners.len()] - corners[wall];
        let ((sine, cosine), (x, y)) = (ways[wall].sin_cos(), (run.x.metres(), run.y.metres()));
        let (along, aside) = (x * cosine + y * sine, y * cosine - x * sine);
        let more = Angle::from_degrees(aside.atan2(along).to_degrees()).unwrap_or_default();
        Some(Bend {
            wall,
            left: more,
            right: -more,
            off: Length::from_metres(if along < 0.0 { x.hypot(y) } else { aside.abs() })?,
        })
    };
    (0..corners.len().min(ways.len()))
        .filter_map(of)
        .max_by_key(|bend| bend.off)
        .filter(|bend| bend.off > Length::mm(1))
}

impl Room {
    /// Eight walls with a bay on one side, nothing measured.
    #[must_use]
    pub fn alcove(name: &str) -> Room {
        let mut room = Room::rectangle(name);
        room.walls = [
            (30, -90),
            (24, 90),
            (36, 90),
            (24, -90),
            (30, 90),
            (60, 90),
            (96, 90),
            (60, 90),
        ]
        .map(|(inches, turn)| Wall::sketched(Length::inches(inches), Angle::degrees(turn)))
        .to_vec();
        room
    }

    /// Three walls that turn 120° each, nothing measured: an outline to which walls are added.
    #[must_use]
    pub fn three_walls(name: &str) -> Room {
        let mut room = Room::rectangle(name);
        room.walls = vec![Wall::sketched(Length::inches(96), Angle::degrees(120)); 3];
        room
    }

    /// A jog at the right end of a wall: two more walls, and the corner between them juts in; the turns still close. The
    /// lengths of the walls beside it are to be measured anew.
    pub fn add_jog(&mut self, wall: usize) {
        let Some(corner) = self.walls.get(wall).map(|wall| wall.turn) else {
            return;
        };
        let wide = Length::inches(12);
        self.shorten([wall, (wall + 1) % self.walls.len()], wide);
        let foot = |turn| Wall::sketched(wide, turn);
        let back = Angle::microdegrees(-corner.as_microdegrees());
        // In at the old corner, back against it where it juts in, and on.
        self.insert_walls(wall + 1, [foot(back), foot(corner)]);
    }

    /// One more wall across the corner at the right end of a wall; its two corners share the turn. The lengths of the walls
    /// beside it are to be measured anew.
    pub fn cut_corner(&mut self, wall: usize) {
        let Some(turn) = self.walls.get(wall).map(|wall| wall.turn.as_microdegrees()) else {
            return;
        };
        let half = turn / 2;
        let wide = Length::inches(24);
        let (_, cosine) = Angle::microdegrees(half).sin_cos();
        let taken = Length::from_metres(wide.half().metres() / cosine.max(0.1)).unwrap_or(wide);
        self.shorten([wall, (wall + 1) % self.walls.len()], taken);
        self.walls[wall].turn = Angle::microdegrees(half);
        let across = Wall::sketched(wide, Angle::microdegrees(turn - half));
        self.insert_walls(wall + 1, [across]);
    }

    /// Two walls drawn shorter by what a change of their corner takes of them; both are to be measured anew.
    fn shorten(&mut self, walls: [usize; 2], by: Length) {
        let drawn = walls.map(|wall| self.drawn_length(wall));
        for (wall, drawn) in walls.into_iter().zip(drawn) {
            if let Some(drawn) = drawn {
                self.walls[wall].sketched = (drawn - by).max(Length::inches(1));
            }
            self.walls[wall].length = None;
        }
    }

    /// Walls into the outline; what is in or on a wall stays in or on it.
    pub(super) fn insert_walls<const N: usize>(&mut self, at: usize, walls: [Wall; N]) {
        let corner = at % self.walls.len();
        self.walls.splice(at..at, walls);
        let now = |place: usize| if place >= at { place + N } else { place };
        self.renumber(|wall| Some(now(wall)), |of| (of != corner).then(|| now(of)));
    }

    /// Puts what is in or on each wall onto the wall that it has become, and what was measured to each corner likewise;
    /// what has none goes.
    pub(super) fn renumber(
        &mut self,
        wall: impl Fn(usize) -> Option<usize>,
        corner: impl Fn(usize) -> Option<usize>,
    ) {
        for at in (0..self.openings.len()).rev() {
            match wall(self.openings[at].wall) {
                Some(now) => self.openings[at].wall = now,
                None => self.remove_opening(at),
            }
        }
        for at in (0..self.fixed.len()).rev() {
            let on = self.fixed[at].on;
            match wall(on.wall()) {
                Some(now) => self.fixed[at].on = on.with_wall(now),
                None => self.remove_fixed(at),
            }
        }
        for at in (0..self.fixtures.len()).rev() {
            match wall(self.fixtures[at].wall) {
                Some(now) => self.fixtures[at].wall = now,
                None => self.remove_fixture(at),
            }
        }
        for at in (0..self.hidden.len()).rev() {
            let on = self.hidden[at].on;
            match wall(on.wall()) {
                Some(now) => self.hidden[at].on = on.with_wall(now),
                None => self.remove_hidden(at),
            }
        }
        self.joists = self.joists.and_then(|joists| {
            let wall = wall(joists.wall)?;
            Some(Joists { wall, ..joists })
        });
        self.survey.renumber(wall, corner);
    }

    /// Without an opening, and without what was noted of it.
    pub fn remove_opening(&mut self, at: usize) {
        if at < self.openings.len() {
            self.openings.remove(at);
            self.survey.renumber_items(|what| match what {
                What::Opening(of, size) => Some(What::Opening(moved_up(of, at)?, size)),
                other => Some(other),
            });
        }
    }

    /// Without a fixed point, and without what was noted of it.
    pub fn remove_fixed(&mut self, at: usize) {
        if at < self.fixed.len() {
            self.fixed.remove(at);
            self.survey.renumber_items(|what| match what {
                What::Fixed(of, size) => Some(What::Fixed(moved_up(of, at)?, size)),
                other => Some(other),
            });
        }
    }

    /// Without something hidden, and without what was noted of it.
    pub fn remove_hidden(&mut self, at: usize) {
        if at < self.hidden.len() {
            self.hidden.remove(at);
            self.survey.renumber_items(|what| match what {
                What::Hidden(of) => Some(What::Hidden(moved_up(of, at)?)),
                other => Some(other),
            });
        }
    }

    /// Without a fixture, and without what was noted of it.
    pub fn remove_fixture(&mut self, at: usize) {
        if at < self.fixtures.len() {
            self.fixtures.remove(at);
            self.survey.renumber_items(|what| match what {
                What::Fixture(of, size) => Some(What::Fixture(moved_up(of, at)?, size)),
                other => Some(other),
            });
        }
    }

    /// Without one wall: its neighbours meet, and what is in or on it goes with it. A room keeps at least three walls.
    pub fn remove_wall(&mut self, index: usize) {
        let count = self.walls.len();
        if count <= 3 || index >= count {
            return;
        }
        let gone = self.walls.remove(index);
        let before = (index + count - 2) % (count - 1);
        self.walls[before].turn = self.walls[before].turn + gone.turn;
        // Both its corners go, and what was measured to them.
        let corner =
            |at: usize| (at != index && at != (index + 1) % count).then(|| moved_up(at, index))?;
        self.renumber(|wall| moved_up(wall, index), corner);
        if self.walls[before].turn == Angle::ZERO && self.walls.len() > 3 {
            self.remove_corner((before + 1) % self.walls.len());
        }
    }
}

/// A place in a list after another is gone; `None` for the one that is.
pub(super) fn moved_up(at: usize, gone: usize) -> Option<usize> {
    match at.cmp(&gone) {
        Ordering::Less => Some(at),
        Ordering::Equal => None,
        Ordering::Greater => Some(at - 1),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::{FixedKind, FixedPoint, Hidden, HiddenKind, On, shape};

    #[test]
    fn every_template_closes_and_asks_for_its_walls() {
        for (room, walls) in [
            (Room::rectangle("a"), 4),
            (Room::l_shape("a"), 6),
            (Room::alcove("a"), 8),
        ] {
            let turns: i64 = room
                .walls
                .iter()
                .map(|wall| wall.turn.as_microdegrees())
                .sum();
            assert_eq!(turns, Angle::FULL.as_microdegrees());
            assert_eq!(room.walls.len(), walls);
            assert_eq!(still_to_measure(&room).len(), walls + 1);
        }
    }

    /// What is on wall C stays on it when a jog comes before it, and goes with it.
    #[test]
    fn what_is_on_a_wall_follows_it() {
        let mut room = Room::rectangle("a");
        room.fixed = vec![FixedPoint::new(FixedKind::Drain, On::Floor(2))];
        room.hidden = vec![Hidden::new(HiddenKind::Pipe, On::Wall(2))];
        room.add_jog(0);
        assert_eq!(
            (room.fixed[0].on, room.hidden[0].on),
            (On::Floor(4), On::Wall(4))
        );
        room.remove_wall(0);
        assert_eq!(
            (room.fixed[0].on, room.hidden[0].on),
            (On::Floor(3), On::Wall(3))
        );
        room.remove_wall(3);
        assert!(room.fixed.is_empty() && room.hidden.is_empty());
    }

    #[test]
    fn a_misread_wall_shows_as_a_slant() {
        let mut room = Room::l_shape("a");
        let lengths = [88, 50, 34, 12, 97];
        for (wall, inches) in room.walls.iter_mut().zip(lengths) {
            wall.length = Some(Length::inches(inches));
        }
        let found = slant(&room, &shape(&room).unwrap());
        assert_eq!(found, Some((5, Length::inches(43))));
        room.walls[4].length = Some(Length::inches(54));
        assert_eq!(slant(&room, &shape(&room).unwrap()), None);
    }

    /// A room of these walls (feet, turn at the end in degrees), each 0 ft not measured.
    fn of(walls: &[(i64, i64)]) -> Room {
        let mut room = Room::rectangle("a");
        let wall = |&(feet, turn): &(i64, i64)| {
            let mut wall = Wall::sketched(Length::feet(5), Angle::degrees(turn));
            wall.length = (feet > 0).then_some(Length::feet(feet));
            wall
        };
        room.walls = walls.iter().map(wall).collect();
        room
    }

    #[track_caller]
    fn check_bend(room: &Room, wanted: Option<(usize, f64)>) {
        let found = bend(room, &shape(room).unwrap());
        assert_eq!(found.map(|b| b.wall), wanted.map(|(wall, _)| wall));
        if let (Some(found), Some((_, degrees))) = (found, wanted) {
            assert!((found.left.in_degrees() - degrees).abs() < 1e-5);
            assert_eq!(found.right, -found.left);
        }
    }

    #[test]
    fn the_wall_that_closes_says_how_its_corners_differ() {
        // 3, 4, 5: the third wall runs at 180° + atan(4/3) = 233.1301°, and was said to run at 225°.
        check_bend(&of(&[(3, 90), (4, 135), (0, 135)]), Some((2, 8.130_102)));
        // A cut corner 4 ft across and 2 ft down runs at atan(1/2) = 26.565°, and was said to run at 45°.
        let cut = of(&[(6, 45), (0, 45), (6, 90), (10, 90), (8, 90)]);
        check_bend(&cut, Some((1, -18.434_949)));
        assert_eq!(
            shape(&cut).unwrap().walls[1].1,
            Standing::Follows,
            "a single wall follows"
        );
        // 4 ft across and 4 ft down are 45°, as was said.
        check_bend(&of(&[(6, 45), (0, 45), (4, 90), (10, 90), (8, 90)]), None);
        // Equal sides, equal corners.
        check_bend(&of(&[(10, 120), (10, 120), (0, 120)]), None);
        // Walls of 12 and 11 ft opposite each other, 10 ft apart: atan(1/10) = 5.7106°.
        let skew = of(&[(12, 90), (10, 90), (11, 90), (10, 90)]);
        check_bend(&skew, Some((3, -5.710_593)));
    }

    #[test]
    fn two_walls_of_a_rectangle_leave_only_the_ceiling_to_measure() {
        let mut room = Room::rectangle("a");
        room.walls[0].length = Some(Length::feet(8));
        room.walls[1].length = Some(Length::feet(5));
        assert_eq!(still_to_measure(&room), [Missing::Ceiling]);
        assert!(shape(&room).is_ok());
    }
}
