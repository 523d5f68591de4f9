//! What a tape says of a room: every measurement by what it measures, how it stands, and how far it can be trusted.

mod ask;
mod carry;
mod face;
mod misread;
mod outline;
mod trust;

use std::collections::BTreeMap;

use super::{Room, Side};
use crate::measure::Length;

pub use ask::{Asked, to_ask};
pub use carry::{Difference, differences};
pub use face::{Bow, FaceCheck, Level, bow, floor_level, leans};
pub use misread::{How, Misread, Suspicion, misreads, suspicion, taken_for};
pub use outline::{
    Check, CornerFound, Surveyed, WallFound, floor_plus_minus, follows_plus_minus, surveyed,
};
pub use trust::{Trust, half_of, reading_sigma, tape_tolerance};

/// Something that is measured in a room. Walls count from 0; a corner has the number of the wall whose left end it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum What {
    /// A wall, corner to corner.
    Wall(usize),
    /// From one corner to another across the room, the lower number first.
    Diagonal(usize, usize),
    /// Floor to ceiling where nothing else is said.
    Ceiling,
    /// A wall's own height.
    WallHeight(usize),
    /// Floor to ceiling in a corner.
    Height(usize),
    /// How far the top of a wall leans into the room, at one of its ends; less than nothing where it leans out.
    Lean(usize, Side),
    /// From a line stretched along a wall to its face.
    Gap(usize, Third),
    /// From a level line down to the floor in a corner.
    Level(usize),
    /// A size of an opening.
    Opening(usize, Size),
    /// A size of a fixed point.
    Fixed(usize, Size),
    /// A size of a fixture.
    Fixture(usize, Size),
    /// Something hidden: it is there or not.
    Hidden(usize),
}

/// Where along a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Third {
    /// At its left end.
    Left,
    /// In the middle.
    Middle,
    /// At its right end.
    Right,
}

/// A size of something on a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Size {
    /// From the left corner of its wall.
    FromLeft,
    /// Up from the floor; on the floor, out from the wall.
    Up,
    /// Across.
    Width,
    /// High.
    Height,
    /// Deep, or behind the face.
    Depth,
}

/// Why something is not measured though it was asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Passed {
    /// Not now.
    Skipped,
    /// It is not there, or cannot be measured.
    NotThere,
}

/// How many earlier readings of one measurement are kept.
const MOST_EARLIER: usize = 8;

/// How a measurement stands beside its figure.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Mark {
    /// It was asked and passed over.
    pub passed: Option<Passed>,
    /// An estimate, so much more or less.
    pub estimate: Option<Length>,
    /// Carried over from another room, not measured in this one.
    pub carried: bool,
    /// What was read before it was measured again, the oldest first.
    pub earlier: Vec<Length>,
}

/// The survey of a room: what has no other place in it, and how each measurement stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Survey {
    /// Diagonals, heights in corners, leans, gaps and levels.
    pub figures: BTreeMap<What, Length>,
    /// How measurements stand, where there is something to say.
    pub marks: BTreeMap<What, Mark>,
    /// How close the person reads, one way or the other.
    pub reads_to: Length,
}

impl Default for Survey {
    /// Nothing measured; read to a sixteenth.
    fn default() -> Survey {
        Survey {
            figures: BTreeMap::new(),
            marks: BTreeMap::new(),
            reads_to: Length::in_64(0, 4),
        }
    }
}

impl What {
    /// A diagonal, its corners in order.
    #[must_use]
    pub const fn diagonal(a: usize, b: usize) -> What {
        if a < b {
            What::Diagonal(a, b)
        } else {
            What::Diagonal(b, a)
        }
    }

    /// The same after walls and corners got other numbers; `None` where one of them is gone.
    #[must_use]
    pub fn renumbered(
        self,
        wall: impl Fn(usize) -> Option<usize>,
        corner: impl Fn(usize) -> Option<usize>,
    ) -> Option<What> {
        Some(match self {
            What::Wall(at) => What::Wall(wall(at)?),
            What::WallHeight(at) => What::WallHeight(wall(at)?),
            What::Lean(at, side) => What::Lean(wall(at)?, side),
            What::Gap(at, third) => What::Gap(wall(at)?, third),
            What::Diagonal(a, b) => What::diagonal(corner(a)?, corner(b)?),
            What::Height(at) => What::Height(corner(at)?),
            What::Level(at) => What::Level(corner(at)?),
            What::Ceiling
            | What::Opening(..)
            | What::Fixed(..)
            | What::Fixture(..)
            | What::Hidden(_) => self,
        })
    }

    /// Whether nothing, or less, is a figure that it can have.
    #[must_use]
    pub const fn may_be_nothing(self) -> bool {
        matches!(
            self,
            What::Lean(..)
                | What::Gap(..)
                | What::Level(_)
                | What::Opening(_, Size::FromLeft | Size::Up)
                | What::Fixed(_, Size::FromLeft | Size::Up | Size::Depth)
                | What::Fixture(_, Size::FromLeft | Size::Up)
        )
    }
}

impl Room {
    /// What was measured; `None` where it was not.
    #[must_use]
    pub fn measured(&self, what: What) -> Option<Length> {
        match what {
            What::Wall(wall) => self.walls.get(wall)?.length,
            What::Ceiling => self.ceiling,
            What::WallHeight(wall) => self.walls.get(wall)?.height,
            What::Opening(at, size) => {
                let opening = self.openings.get(at)?;
                match size {
                    Size::FromLeft => opening.from_left,
                    Size::Up => opening.sill,
                    Size::Width => opening.width,
                    Size::Height => opening.height,
                    Size::Depth => None,
                }
            }
            What::Fixed(at, size) => {
                let point = self.fixed.get(at)?;
                match size {
                    Size::FromLeft => point.from_left,
                    Size::Up => point.up,
                    Size::Width => point.width,
                    Size::Height => point.height,
                    Size::Depth => point.depth,
                }
            }
            What::Fixture(at, size) => {
                let fixture = self.fixtures.get(at)?;
                match size {
                    Size::FromLeft => fixture.from_left,
                    Size::Up => fixture.out,
                    Size::Width => fixture.width,
                    Size::Height => fixture.height,
                    Size::Depth => fixture.depth,
                }
            }
            _ => self.survey.figures.get(&what).copied(),
        }
    }

    /// Where the figure of something stands, or is to stand; `None` where there is no such wall, opening or point.
    fn stands(&mut self, what: What) -> Option<&mut Option<Length>> {
        Some(match what {
            What::Wall(wall) => &mut self.walls.get_mut(wall)?.length,
            What::Ceiling => &mut self.ceiling,
            What::WallHeight(wall) => &mut self.walls.get_mut(wall)?.height,
            What::Opening(at, size) => {
                let opening = self.openings.get_mut(at)?;
                match size {
                    Size::FromLeft => &mut opening.from_left,
                    Size::Up => &mut opening.sill,
                    Size::Width => &mut opening.width,
                    Size::Height => &mut opening.height,
                    Size::Depth => return None,
                }
            }
            What::Fixed(at, size) => {
                let point = self.fixed.get_mut(at)?;
                match size {
                    Size::FromLeft => &mut point.from_left,
                    Size::Up => &mut point.up,
                    Size::Width => &mut point.width,
                    Size::Height => &mut point.height,
                    Size::Depth => &mut point.depth,
                }
            }
            What::Fixture(at, size) => {
                let fixture = self.fixtures.get_mut(at)?;
                match size {
                    Size::FromLeft => &mut fixture.from_left,
                    Size::Up => &mut fixture.out,
                    Size::Width => &mut fixture.width,
                    Size::Height => &mut fixture.height,
                    Size::Depth => &mut fixture.depth,
                }
            }
            _ => return None,
        })
    }

    /// Whether something of this room can be measured so: its wall, corner, opening or point is there.
    #[must_use]
    pub fn has(&self, what: What) -> bool {
        let (walls, corners) = (self.walls.len(), self.walls.len());
        match what {
            What::Ceiling => true,
            What::Wall(at) | What::WallHeight(at) | What::Lean(at, _) | What::Gap(at, _) => {
                at < walls
            }
            What::Height(at) | What::Level(at) => at < corners,
            What::Diagonal(a, b) => a + 1 < b && b < corners && (a, b + 1) != (0, corners),
            What::Opening(at, _) => at < self.openings.len(),
            What::Fixed(at, _) => at < self.fixed.len(),
            What::Fixture(at, _) => at < self.fixtures.len(),
            What::Hidden(at) => at < self.hidden.len(),
        }
    }

    /// Takes a measurement, or a better one: what was read before stays beside it, and it is neither passed over nor
    /// carried any more. With `None` it is not measured.
    pub fn measure(&mut self, what: What, length: Option<Length>, estimate: Option<Length>) {
        if !self.has(what) {
            return;
        }
        let before = self.measured(what);
        match self.stands(what) {
            Some(place) => *place = length,
            None => match length {
                Some(length) => {
                    self.survey.figures.insert(what, length);
                }
                None => {
                    self.survey.figures.remove(&what);
                }
            },
        }
        let mark = self.survey.marks.entry(what).or_default();
        if let Some(before) = before.filter(|before| Some(*before) != length && !mark.carried) {
            mark.earlier.push(before);
            if mark.earlier.len() > MOST_EARLIER {
                mark.earlier.remove(0);
            }
        }
        mark.passed = None;
        mark.carried = false;
        mark.estimate = estimate.filter(|_| length.is_some());
        self.tidy_mark(what);
    }

    /// Passes something over, now or for good.
    pub fn pass(&mut self, what: What, passed: Passed) {
        if self.has(what) {
            self.survey.marks.entry(what).or_default().passed = Some(passed);
        }
    }

    /// Says that what was carried over holds here as well.
    pub fn confirm(&mut self, what: What) {
        if let Some(mark) = self.survey.marks.get_mut(&what) {
            mark.carried = false;
        }
        self.tidy_mark(what);
    }

    /// How something stands, where there is something to say.
    #[must_use]
    pub fn mark(&self, what: What) -> Mark {
        self.survey.marks.get(&what).cloned().unwrap_or_default()
    }

    /// What was carried over and not confirmed, in order.
    pub fn carried(&self) -> impl Iterator<Item = What> + '_ {
        let marks = self.survey.marks.iter();
        marks
            .filter(|(_, mark)| mark.carried)
            .map(|(what, _)| *what)
    }

    /// A mark that says nothing is none.
    fn tidy_mark(&mut self, what: What) {
        if self.survey.marks.get(&what) == Some(&Mark::default()) {
            self.survey.marks.remove(&what);
        }
    }
}

impl Survey {
    /// The same after a list got other places; what has none goes.
    pub(in crate::site) fn renumber_items(&mut self, now: impl Fn(What) -> Option<What>) {
        let figures = std::mem::take(&mut self.figures).into_iter();
        self.figures = figures
            .filter_map(|(what, length)| Some((now(what)?, length)))
            .collect();
        let marks = std::mem::take(&mut self.marks).into_iter();
        self.marks = marks
            .filter_map(|(what, mark)| Some((now(what)?, mark)))
            .collect();
    }

    /// The same after walls and corners got other numbers.
    pub(in crate::site) fn renumber(
        &mut self,
        wall: impl Fn(usize) -> Option<usize>,
        corner: impl Fn(usize) -> Option<usize>,
    ) {
        self.renumber_items(|what| what.renumbered(&wall, &corner));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_measurement_taken_again_keeps_what_was_read_before() {
        let mut room = Room::rectangle("a");
        let inches = |n| Some(Length::inches(n));
        room.measure(What::Wall(0), inches(96), None);
        room.measure(What::Wall(0), inches(99), Some(Length::inches(1)));
        assert_eq!(room.measured(What::Wall(0)), inches(99));
        let mark = room.mark(What::Wall(0));
        assert_eq!(mark.earlier, [Length::inches(96)]);
        assert_eq!(mark.estimate, inches(1));
        room.pass(What::Wall(1), Passed::NotThere);
        room.measure(What::Wall(1), inches(60), None);
        assert_eq!(room.mark(What::Wall(1)), Mark::default());
        assert!(!room.survey.marks.contains_key(&What::Wall(1)));
    }

    #[test]
    fn a_diagonal_runs_between_corners_that_no_wall_joins() {
        let room = Room::rectangle("a");
        assert!(room.has(What::diagonal(2, 0)) && room.has(What::diagonal(1, 3)));
        for (a, b) in [(0, 1), (0, 3), (1, 1), (2, 9)] {
            assert!(!room.has(What::diagonal(a, b)), "{a} {b}");
        }
    }
}
