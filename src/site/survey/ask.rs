//! What is still to be measured, in the order in which a person walks round the room.

use super::{Passed, Room, Side, Size, Third, What};
use crate::geometry::{Point, Polygon};
use crate::measure::Length;
use crate::site::{OpeningKind, Standing, sketch};

/// How much of a room is to be measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Asked {
    /// Walls, openings, ceiling, what is fixed and what stands in it.
    Plan,
    /// And across, for the true corners.
    Square,
    /// And heights in the corners, plumb, flat and level.
    Everything,
}

impl Room {
    /// Everything that can be measured in the room, in walking order: each wall with what is in and on it, then the
    /// ceiling, then across, then plumb, flat and level.
    #[must_use]
    pub fn whats(&self) -> Vec<What> {
        let mut all = Vec::new();
        for wall in 0..self.walls.len() {
            all.push(What::Wall(wall));
            all.extend(self.on_wall(wall));
        }
        all.push(What::Ceiling);
        all.extend((0..self.walls.len()).map(What::WallHeight));
        all.extend((0..self.hidden.len()).map(What::Hidden));
        all.extend(self.across());
        let measured = self.survey.figures.keys().copied();
        let more: Vec<What> = measured
            .filter(|what| matches!(what, What::Diagonal(..)) && !all.contains(what))
            .collect();
        all.extend(more);
        for corner in 0..self.walls.len() {
            all.extend([What::Height(corner), What::Level(corner)]);
        }
        for wall in 0..self.walls.len() {
            all.extend([What::Lean(wall, Side::Left), What::Lean(wall, Side::Right)]);
            all.extend(
                [Third::Left, Third::Middle, Third::Right].map(|third| What::Gap(wall, third)),
            );
        }
        all
    }

    /// What is in and on a wall, from its left corner on.
    fn on_wall(&self, wall: usize) -> Vec<What> {
        let mut items: Vec<(Option<Length>, Vec<What>)> = Vec::new();
        for (at, opening) in self
            .openings
            .iter()
            .enumerate()
            .filter(|(_, o)| o.wall == wall)
        {
            let mut sizes = vec![Size::FromLeft, Size::Width, Size::Height];
            if opening.kind != OpeningKind::Door {
                sizes.push(Size::Up);
            }
            let whats = sizes.into_iter().map(|size| What::Opening(at, size));
            items.push((opening.from_left, whats.collect()));
        }
        for (at, point) in self
            .fixed
            .iter()
            .enumerate()
            .filter(|(_, p)| p.on.wall() == wall)
        {
            let whats = [Size::FromLeft, Size::Up].map(|size| What::Fixed(at, size));
            items.push((point.from_left, whats.to_vec()));
        }
        for (at, fixture) in self
            .fixtures
            .iter()
            .enumerate()
            .filter(|(_, f)| f.wall == wall)
        {
            let whats =
                [Size::FromLeft, Size::Width, Size::Depth].map(|size| What::Fixture(at, size));
            items.push((fixture.from_left, whats.to_vec()));
        }
        // Not measured yet comes last, in the order in which it was put in.
        items.sort_by_key(|(from_left, _)| from_left.unwrap_or(Length::LONGEST));
        items.into_iter().flat_map(|(_, whats)| whats).collect()
    }

    /// The diagonals that are worth measuring: across each corner that does not jut in, where nothing is in the way.
    #[must_use]
    pub fn across(&self) -> Vec<What> {
        let outline = sketch(self).corners;
        let count = outline.points.len();
        let mut all = Vec::new();
        for corner in 0..count {
            let what = What::diagonal((corner + count - 1) % count, (corner + 1) % count);
            if self.has(what) && !all.contains(&what) && seen(&outline, what) {
                all.push(what);
            }
        }
        all
    }
}

/// Whether a tape can be stretched between two corners inside the room.
fn seen(outline: &Polygon, what: What) -> bool {
    let What::Diagonal(a, b) = what else {
        return false;
    };
    let (from, to) = (outline.points[a], outline.points[b]);
    let place = |share: i64| {
        let part = |one: Length, other: Length| one + (other - one).divided(16) * share;
        Point::new(part(from.x, to.x), part(from.y, to.y))
    };
    (1..16).all(|share| outline.contains(place(share)))
}

/// What is still to be measured or confirmed, in walking order; what follows, was passed over or is not there is not
/// asked again.
///
/// # Inputs
/// A room, and how much of it is to be measured.
/// # Gives
/// The measurements one after another; the first is the next one to take.
/// # Source
/// The order is our own: round the room to the right, as the walls are lettered.
/// # Example
/// ```
/// use storyrod::{measure::Length, site::{Asked, Room, What, to_ask}};
/// let mut room = Room::rectangle("Washroom");
/// assert_eq!(to_ask(&room, Asked::Plan)[0], What::Wall(0));
/// for wall in 0..2 {
///     room.measure(What::Wall(wall), Some(Length::feet(8)), None);
/// }
/// // The other two follow.
/// assert_eq!(to_ask(&room, Asked::Plan), [What::Ceiling]);
/// ```
#[must_use]
pub fn to_ask(room: &Room, much: Asked) -> Vec<What> {
    let drawn = sketch(room);
    let follows = |wall: usize| {
        let standing = drawn.walls.get(wall).map(|wall| wall.1);
        standing == Some(Standing::Follows)
    };
    let wanted = |what: &What| match what {
        What::WallHeight(_) => false,
        What::Diagonal(..) => much >= Asked::Square,
        What::Height(_) | What::Level(_) | What::Lean(..) | What::Gap(..) => {
            much >= Asked::Everything
        }
        // Diagonals say more than a wall that closes the room anyway, but they need it.
        What::Wall(wall) => !follows(*wall) || much >= Asked::Square,
        _ => true,
    };
    let open = |what: &What| {
        let mark = room.mark(*what);
        if mark.carried {
            return true;
        }
        let passed = match mark.passed {
            Some(Passed::NotThere | Passed::Skipped) => true,
            None => false,
        };
        !passed && room.measured(*what).is_none() && !matches!(what, What::Hidden(_))
    };
    room.whats()
        .into_iter()
        .filter(|what| (wanted(what) || room.mark(*what).carried) && open(what))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::{FixedKind, FixedPoint, On};

    #[test]
    fn a_person_is_led_round_the_room_to_the_right() {
        let mut room = Room::rectangle("a");
        room.fixed
            .push(FixedPoint::new(FixedKind::Hot, On::Wall(1)));
        let asked = to_ask(&room, Asked::Plan);
        let start = [
            What::Wall(0),
            What::Wall(1),
            What::Fixed(0, Size::FromLeft),
            What::Fixed(0, Size::Up),
            What::Wall(2),
        ];
        assert_eq!(asked[..5], start);
        room.pass(What::Wall(0), Passed::Skipped);
        assert_eq!(to_ask(&room, Asked::Plan)[0], What::Wall(1));
        assert_eq!(room.across(), [What::Diagonal(1, 3), What::Diagonal(0, 2)]);
    }

    /// In an L the line across the corner that juts in runs outside.
    #[test]
    fn only_what_a_tape_can_reach_is_asked() {
        let room = Room::l_shape("a");
        assert!(!room.across().contains(&What::Diagonal(2, 4)));
        assert!(room.across().contains(&What::Diagonal(0, 2)));
    }
}
