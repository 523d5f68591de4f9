//! The outline changed with a finger: corners that come and go, steps, walls that are dragged.

use super::change::moved_up;
use super::shape::headings;
use super::{Room, Wall, sketch};
use crate::measure::{Angle, Length};

/// No wall is dragged shorter than this.
const LEAST: Length = Length::inches(1);

impl Room {
    /// How long a wall is, measured or drawn.
    #[must_use]
    pub fn drawn_length(&self, wall: usize) -> Option<Length> {
        let drawn = sketch(self).walls.get(wall)?.0;
        Some(if drawn.is_positive() {
            drawn
        } else {
            self.walls.get(wall)?.sketched
        })
    }

    /// Without a corner: its two walls are one straight one, which takes what is in and on both. A room keeps at least
    /// three walls.
    pub fn remove_corner(&mut self, corner: usize) {
        let count = self.walls.len();
        if count <= 3 || corner >= count {
            return;
        }
        let (first, second) = ((corner + count - 1) % count, corner);
        let (Some(a), Some(b)) = (self.drawn_length(first), self.drawn_length(second)) else {
            return;
        };
        let straight = self.walls[first].turn == Angle::ZERO;
        // The new way, by how much it turns from the first wall's.
        let (sine, cosine) = self.walls[first].turn.sin_cos();
        let (along, aside) = (a.metres() + b.metres() * cosine, b.metres() * sine);
        let bend = if straight {
            Angle::ZERO
        } else {
            Angle::from_degrees(aside.atan2(along).to_degrees()).unwrap_or_default()
        };
        let long = if straight {
            a + b
        } else {
            Length::from_metres(along.hypot(aside)).unwrap_or(a)
        };
        let known = self.walls[first].length.is_some() && self.walls[second].length.is_some();
        let gone = self.walls[second].clone();
        let before = (first + count - 1) % count;
        self.walls[before].turn = self.walls[before].turn + bend;
        let wall = &mut self.walls[first];
        wall.turn = wall.turn + gone.turn - bend;
        wall.length = (straight && known).then_some(long);
        wall.sketched = long;
        wall.studs = None;
        self.slide_along(second, a);
        self.walls.remove(second);
        let now = |at: usize| {
            if at == second {
                moved_up(first, second)
            } else {
                moved_up(at, second)
            }
        };
        self.renumber(now, |at| moved_up(at, second));
    }

    /// What is in or on a wall, further along it.
    fn slide_along(&mut self, wall: usize, by: Length) {
        let slide = |at: &mut Option<Length>| *at = at.map(|at| at + by);
        for opening in self.openings.iter_mut().filter(|o| o.wall == wall) {
            slide(&mut opening.from_left);
        }
        for point in self
            .fixed
            .iter_mut()
            .filter(|point| point.on.wall() == wall)
        {
            slide(&mut point.from_left);
        }
        for fixture in self
            .fixtures
            .iter_mut()
            .filter(|fixture| fixture.wall == wall)
        {
            slide(&mut fixture.from_left);
        }
        for hidden in self
            .hidden
            .iter_mut()
            .filter(|hidden| hidden.on.wall() == wall)
        {
            for spot in &mut hidden.line {
                spot.from_left += by;
            }
        }
    }

    /// A step in a wall, so far from its left corner: out of the room, or into it. What is beyond the step moves to the
    /// wall behind it; the lengths of both are to be measured anew.
    pub fn step_wall(&mut self, wall: usize, at: Length, into_the_room: bool) {
        let Some(long) = self.drawn_length(wall) else {
            return;
        };
        let at = at.max(LEAST).min(long - LEAST);
        if at < LEAST {
            return;
        }
        let (there, back) = if into_the_room {
            (Angle::RIGHT, Angle::LEFT)
        } else {
            (Angle::LEFT, Angle::RIGHT)
        };
        let turn = self.walls[wall].turn;
        let rest = Wall {
            length: None,
            sketched: long - at,
            turn,
            ..self.walls[wall].clone()
        };
        let step = Wall {
            finish: rest.finish,
            ..Wall::sketched(Length::inches(12), back)
        };
        self.walls[wall].turn = there;
        self.walls[wall].length = None;
        self.walls[wall].sketched = at;
        // The wall that the rest ends at is drawn longer by the step, or shorter, so that nothing else has to give.
        let by = Length::inches(if into_the_room == (turn == Angle::LEFT) {
            12
        } else {
            -12
        });
        let next = (wall + 1) % self.walls.len();
        if turn.as_microdegrees().abs() == 90_000_000 {
            let sketched = &mut self.walls[next].sketched;
            *sketched = (*sketched + by).max(LEAST);
        }
        self.insert_walls(wall + 1, [step, rest]);
        self.hand_on(wall, wall + 2, at);
    }

    /// What is on a wall beyond a place goes to another wall that begins there.
    fn hand_on(&mut self, wall: usize, to: usize, from: Length) {
        let beyond = |at: Option<Length>| at.is_some_and(|at| at >= from);
        for opening in self.openings.iter_mut().filter(|o| o.wall == wall) {
            if beyond(opening.from_left) {
                opening.wall = to;
                opening.from_left = opening.from_left.map(|at| at - from);
            }
        }
        for point in self.fixed.iter_mut().filter(|p| p.on.wall() == wall) {
            if beyond(point.from_left) {
                point.on = point.on.with_wall(to);
                point.from_left = point.from_left.map(|at| at - from);
            }
        }
        for fixture in self.fixtures.iter_mut().filter(|f| f.wall == wall) {
            if beyond(fixture.from_left) {
                fixture.wall = to;
                fixture.from_left = fixture.from_left.map(|at| at - from);
            }
        }
        for hidden in self.hidden.iter_mut().filter(|h| h.on.wall() == wall) {
            if beyond(hidden.line.first().map(|spot| spot.from_left)) {
                hidden.on = hidden.on.with_wall(to);
                for spot in &mut hidden.line {
                    spot.from_left -= from;
                }
            }
        }
    }

    /// Whether its outline is one of those that a room begins with: nobody has shaped it yet, and its lengths say little.
    #[must_use]
    pub fn is_as_begun(&self) -> bool {
        let same = |other: &Room| {
            let alike = |(a, b): (&Wall, &Wall)| (a.sketched, a.turn) == (b.sketched, b.turn);
            self.walls.len() == other.walls.len() && self.walls.iter().zip(&other.walls).all(alike)
        };
        [
            Room::rectangle(""),
            Room::l_shape(""),
            Room::alcove(""),
            Room::three_walls(""),
        ]
        .iter()
        .any(same)
    }

    /// Whether a corner of a wall juts into the room.
    #[must_use]
    pub fn juts_in(&self, wall: usize) -> bool {
        let count = self.walls.len().max(1);
        let in_at = |at: usize| {
            let turn = self.walls.get(at).map(|wall| wall.turn);
            turn.is_some_and(|turn| turn < Angle::ZERO)
        };
        in_at(wall) || in_at((wall + count - 1) % count)
    }

    /// Whether both neighbours of a wall stand square to it, so that it can be dragged.
    #[must_use]
    pub fn can_drag(&self, wall: usize) -> bool {
        let count = self.walls.len();
        wall < count && {
            let square = |at: usize| self.walls[at].turn.as_microdegrees().abs() == 90_000_000;
            square(wall) && square((wall + count - 1) % count)
        }
    }

    /// A wall dragged out of the room by a length, or into it (less than nothing): its two neighbours grow or shrink, but
    /// none below an inch. A neighbour that was measured is so no more: it is drawn as dragged and asked for again.
    ///
    /// Gives whether it went anywhere: where all the rest was measured the neighbours follow from that, and all stays as it
    /// was.
    pub fn drag_wall(&mut self, wall: usize, out: Length) -> bool {
        let mut dragged = self.clone();
        let Some(out) = dragged.move_out(wall, out) else {
            return false;
        };
        let beside = (wall + 1) % self.walls.len();
        let (now, before) = (dragged.drawn_length(beside), self.drawn_length(beside));
        // Figures that are off by a little move it by a little all the same.
        let grown = now.zip(before).map(|(now, before)| (now - before).abs());
        let went = out != Length::ZERO && grown.is_some_and(|grown| grown * 2 >= out.abs());
        if went {
            *self = dragged;
        }
        went
    }

    /// Gives how far it could be moved.
    fn move_out(&mut self, wall: usize, out: Length) -> Option<Length> {
        if !self.can_drag(wall) {
            return None;
        }
        let count = self.walls.len();
        let (before, after) = ((wall + count - 1) % count, (wall + 1) % count);
        let drawn: Vec<Length> = (0..count)
            .filter_map(|wall| self.drawn_length(wall))
            .collect();
        if drawn.len() != count {
            return None;
        }
        // A neighbour that turns into this wall at an inside corner grows as the wall goes out.
        let grows = |turn: Angle| if turn == Angle::RIGHT { 1 } else { -1 };
        let (with_before, with_after) =
            (grows(self.walls[before].turn), grows(self.walls[wall].turn));
        let mut out = out;
        for (neighbour, way) in [(before, with_before), (after, with_after)] {
            let most = drawn[neighbour] - LEAST;
            out = if way > 0 {
                out.max(-most)
            } else {
                out.min(most)
            };
        }
        for (neighbour, way) in [(before, with_before), (after, with_after)] {
            self.walls[neighbour].length = None;
            self.walls[neighbour].sketched = drawn[neighbour] + out * way;
        }
        // The rest is drawn as it was, not stretched to close again.
        for (at, length) in drawn.into_iter().enumerate() {
            if at != before && at != after {
                self.walls[at].sketched = length;
            }
        }
        Some(out)
    }
}

/// The way that points out of the room across a wall, as sine and cosine on the sheet.
#[must_use]
pub fn outward(room: &Room, wall: usize) -> Option<(f64, f64)> {
    let way = *headings(room).get(wall)?;
    let (sine, cosine) = way.sin_cos();
    // Inside is to the right of the way; out is to its left.
    Some((sine, -cosine))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::{FixedKind, FixedPoint, On, What, shape};

    fn lengths(room: &Room) -> Vec<i64> {
        let drawn = shape(room).unwrap();
        drawn
            .walls
            .iter()
            .map(|(length, _)| length.in_inches().round() as i64)
            .collect()
    }

    #[test]
    fn a_wall_is_dragged_and_its_neighbours_follow() {
        let mut room = Room::l_shape("a");
        room.drag_wall(0, Length::inches(12));
        assert_eq!(lengths(&room), [96, 60, 36, 36, 60, 96]);
        room.drag_wall(3, Length::inches(-500));
        assert_eq!(lengths(&room)[4], 1, "no wall below an inch");
    }

    #[test]
    fn a_wall_whose_neighbours_follow_from_the_tape_stays() {
        let mut room = Room::rectangle("a");
        for (wall, inches) in room.walls.iter_mut().zip([96, 60, 96, 60]) {
            wall.length = Some(Length::inches(inches));
        }
        // Without its neighbours the others no longer tell how deep the room is.
        assert!(room.drag_wall(0, Length::inches(12)));
        let mut room = Room::l_shape("a");
        for (wall, inches) in room.walls.iter_mut().zip([96, 60, 36, 24, 60, 84]) {
            wall.length = Some(Length::inches(inches));
        }
        // The tape across says where the corners are.
        for (what, inches) in [(What::Diagonal(0, 2), 113), (What::Diagonal(1, 4), 91)] {
            room.measure(what, Some(Length::inches(inches)), None);
        }
        let before = room.clone();
        assert!(!room.drag_wall(1, Length::inches(12)));
        assert_eq!(room, before, "and no figure is lost");
    }

    #[test]
    fn beside_a_new_corner_walls_are_measured_anew() {
        for change in [Room::cut_corner, Room::add_jog] {
            let mut room = Room::rectangle("a");
            for (wall, inches) in room.walls.iter_mut().zip([96, 60, 96, 60]) {
                wall.length = Some(Length::inches(inches));
            }
            change(&mut room, 0);
            let last = room.walls.len() - 3;
            assert_eq!(
                (room.walls[0].length, room.walls[last].length),
                (None, None)
            );
            assert!(room.walls[last + 1].length.is_some());
            assert!(shape(&room).is_ok(), "{:?}", shape(&room));
        }
    }

    #[test]
    fn a_step_takes_what_is_beyond_it() {
        let mut room = Room::rectangle("a");
        for from_left in [10, 70] {
            let mut point = FixedPoint::new(FixedKind::Outlet, On::Wall(0));
            point.from_left = Some(Length::inches(from_left));
            room.fixed.push(point);
        }
        room.step_wall(0, Length::inches(40), false);
        assert_eq!(lengths(&room), [40, 12, 56, 72, 96, 60]);
        assert_eq!(room.fixed[0].on, On::Wall(0));
        assert_eq!(
            (room.fixed[1].on, room.fixed[1].from_left),
            (On::Wall(2), Some(Length::inches(30)))
        );
        // The corner behind the step goes again: one slanted wall.
        room.remove_corner(2);
        assert_eq!(room.walls.len(), 5);
        assert!(shape(&room).is_ok());
    }

    /// In line, two walls become one of both lengths.
    #[test]
    fn a_corner_that_does_not_turn_is_taken_out() {
        let mut room = Room::l_shape("a");
        for (wall, inches) in room.walls.iter_mut().zip([96, 48, 36, 36, 60, 84]) {
            wall.length = Some(Length::inches(inches));
        }
        // Without the short wall of the L, its neighbours run on in line.
        room.remove_wall(2);
        assert_eq!(room.walls.len(), 4);
        assert_eq!(room.walls[1].length, Some(Length::inches(84)));
        assert_eq!(room.walls[1].turn, Angle::RIGHT);
    }
}
