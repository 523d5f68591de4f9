//! A second room from the first: what is carried over, what usually differs, and what does differ.

use super::{Mark, Room, Size, What};
use crate::measure::Length;
use crate::site::{OpeningKind, Standing, shape, sketch};

/// Something in which two rooms differ, or that only one of them has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Difference {
    /// What was measured; in the numbers of the second room.
    pub what: What,
    /// In the first.
    pub first: Option<Length>,
    /// In the second.
    pub second: Option<Length>,
}

impl Room {
    /// The few measurements in which a room built like another usually differs: one wall each way, the ceiling, and
    /// across or to the door.
    #[must_use]
    pub fn usually_differs(&self) -> Vec<What> {
        let mut whats = Vec::new();
        let measured = |what: &What| self.measured(*what).is_some();
        let ways = shape::headings(self);
        let walls: Vec<usize> = (0..self.walls.len())
            .filter(|wall| measured(&What::Wall(*wall)))
            .collect();
        // The longest measured wall of each way.
        let level = |wall: &usize| {
            let (sine, cosine) = ways[*wall].sin_cos();
            cosine.abs() >= sine.abs()
        };
        for across in [true, false] {
            let these = walls.iter().filter(|wall| level(wall) == across);
            // Of two as long, the first.
            let longest = these.rev().max_by_key(|wall| self.walls[**wall].length);
            whats.extend(longest.map(|wall| What::Wall(*wall)));
        }
        whats.sort_unstable();
        if self.ceiling.is_some() {
            whats.push(What::Ceiling);
        }
        let (figures, marks) = (&self.survey.figures, &self.survey.marks);
        let known = figures.keys().chain(marks.keys()).copied();
        let diagonal = known
            .filter(|what| matches!(what, What::Diagonal(..)))
            .min();
        let door = self
            .openings
            .iter()
            .position(|o| o.kind == OpeningKind::Door);
        let door = door.map(|door| What::Opening(door, Size::FromLeft));
        whats.extend(diagonal.or(door.filter(measured)));
        whats
    }

    /// Takes a measurement in a room that was carried over. Where walls contradict it that were only carried, the
    /// longest of them follow again; a diagonal that was only carried goes, for it was of the other room's walls.
    pub fn measure_here(&mut self, what: What, length: Option<Length>, estimate: Option<Length>) {
        let before = self.measured(what);
        self.measure(what, length, estimate);
        let (What::Wall(wall), true) = (what, before != length) else {
            return;
        };
        let stale: Vec<What> = self
            .carried()
            .filter(|what| matches!(what, What::Diagonal(..)))
            .collect();
        for what in stale {
            // It is to be measured anew: what it was in the other room stands beside it.
            let before = self.survey.figures.remove(&what);
            let mark = Mark {
                earlier: before.into_iter().collect(),
                ..Mark::default()
            };
            self.survey.marks.insert(what, mark);
        }
        let ways = shape::headings(self);
        let along = |other: usize| {
            let ((s1, c1), (s2, c2)) = (ways[wall].sin_cos(), ways[other].sin_cos());
            (c1 * c2 + s1 * s2).abs()
        };
        while self.contradicts() {
            let carried: Vec<usize> = self
                .carried()
                .filter_map(|what| match what {
                    What::Wall(other) if other != wall => Some(other),
                    _ => None,
                })
                .collect();
            let longest = carried.into_iter().max_by(|a, b| {
                let weight = |other: usize| {
                    along(other) * self.walls[other].length.unwrap_or_default().metres()
                };
                weight(*a).total_cmp(&weight(*b)).then(b.cmp(a))
            });
            let Some(longest) = longest else { break };
            let drawn = self.walls[longest].length.unwrap_or_default();
            self.measure(What::Wall(longest), None, None);
            self.walls[longest].sketched = drawn;
        }
    }

    /// Whether the walls as they stand miss each other, or leave no room.
    fn contradicts(&self) -> bool {
        match shape(self) {
            Ok(shape) => {
                shape.misfit.is_some()
                    || crate::site::slant(self, &shape).is_some()
                    || crate::site::bend(self, &shape).is_some()
            }
            Err(_) => sketch(self)
                .walls
                .iter()
                .all(|(_, standing)| *standing != Standing::NotYet),
        }
    }
}

/// What differs between a room and another that was made from it (mirrored or not: the first room's numbers are those of
/// its mirror then), and what only one of them has; walking order of the second.
#[must_use]
pub fn differences(first: &Room, second: &Room) -> Vec<Difference> {
    let length = |room: &Room, what: What| match what {
        // A wall that follows is as long as one that was measured.
        What::Wall(wall) => room.measured(what).or_else(|| {
            let (length, standing) = *sketch(room).walls.get(wall)?;
            (standing == Standing::Follows).then_some(length)
        }),
        _ => room.measured(what),
    };
    let mut whats = second.whats();
    for what in first.whats() {
        if !whats.contains(&what) {
            whats.push(what);
        }
    }
    whats
        .into_iter()
        .map(|what| Difference {
            what,
            first: length(first, what),
            second: length(second, what),
        })
        .filter(|found| found.first != found.second)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn four_measurements_make_a_second_room_of_the_first() {
        let mut first = Room::rectangle("a");
        for (wall, inches) in [96, 60, 96, 60].into_iter().enumerate() {
            first.measure(What::Wall(wall), Some(Length::inches(inches)), None);
        }
        first.measure(What::Ceiling, Some(Length::inches(92)), None);
        first.measure(What::Diagonal(0, 2), Some(Length::in_64(113, 13)), None);
        let mut second = first.mirrored();
        second.carry_all();
        assert_eq!(second.carried().count(), 6);
        let short = second.usually_differs();
        assert_eq!(
            short,
            [
                What::Wall(0),
                What::Wall(1),
                What::Ceiling,
                What::Diagonal(1, 3)
            ]
        );
        second.measure_here(What::Wall(0), Some(Length::inches(95)), None);
        // The opposite wall was only carried: it follows now. The diagonal was of the other room.
        let drawn = shape(&second).unwrap();
        assert_eq!(drawn.walls[2], (Length::inches(95), Standing::Follows));
        assert_eq!(second.measured(What::Diagonal(1, 3)), None);
        second.confirm(What::Wall(1));
        let found = differences(&first.mirrored(), &second);
        let walls: Vec<_> = found.iter().map(|d| d.what).collect();
        assert_eq!(walls, [What::Wall(0), What::Wall(2), What::Diagonal(1, 3)]);
        assert_eq!(second.carried().count(), 2);
    }
}
