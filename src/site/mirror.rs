//! A room mirrored left to right, as back-to-back rooms are, and turned on the sheet.

use super::survey::{Survey, Third, What};
use super::{Hinge, Joists, Room, Side, Studs, Wall};
use crate::measure::Length;

impl Room {
    /// The room as its neighbour behind a shared wall has it: left and right exchanged, with door swings, fixed points,
    /// fixtures, studs, what is hidden and what was measured.
    ///
    /// The first wall stays the first. Twice is the same room again, but that studs that do not begin within one
    /// spacing of the left corner are listed one by one.
    ///
    /// # Inputs
    /// Any room. A wall not measured counts as long as it follows from the others, or as it was sketched; an opening
    /// whose width is not known loses its place, for its other edge is not known either.
    /// # Gives
    /// The mirrored room, under the same name and id.
    /// # Source
    /// Plane geometry.
    /// # Example
    /// ```
    /// use storyrod::{measure::Length, site::{FixedKind, FixedPoint, On, Room}};
    /// let mut room = Room::rectangle("Washroom");
    /// room.walls[0].length = Some(Length::inches(96));
    /// room.fixed.push(FixedPoint::new(FixedKind::Hot, On::Wall(0)));
    /// room.fixed[0].from_left = Some(Length::inches(30));
    /// let mirrored = room.mirrored();
    /// assert_eq!(mirrored.fixed[0].from_left, Some(Length::inches(66)));
    /// assert_eq!(mirrored.mirrored(), room);
    /// ```
    #[must_use]
    pub fn mirrored(&self) -> Room {
        let count = self.walls.len();
        if count == 0 {
            return self.clone();
        }
        let long: Vec<Length> = (0..count)
            .map(|wall| self.drawn_length(wall).unwrap_or_default())
            .collect();
        let wall = |at: usize| (count - at % count) % count;
        // A wall's left corner is its right one then, which is the left one of the next.
        let corner = |at: usize| (count + 1 - at % count) % count;
        let mut room = self.clone();
        room.walls = (0..count)
            .map(|now| {
                let old = &self.walls[wall(now)];
                let before = &self.walls[(wall(now) + count - 1) % count];
                Wall {
                    turn: before.turn,
                    studs: old
                        .studs
                        .as_ref()
                        .map(|studs| mirrored_studs(studs, long[wall(now)])),
                    ..old.clone()
                }
            })
            .collect();
        for opening in &mut room.openings {
            let long = long.get(opening.wall).copied().unwrap_or_default();
            opening.from_left = match (opening.from_left, opening.width) {
                (Some(from_left), Some(width)) => Some(long - from_left - width),
                _ => None,
            };
            opening.wall = wall(opening.wall);
            opening.hinge = opening.hinge.map(|hinge| Hinge {
                side: hinge.side.other(),
                ..hinge
            });
        }
        let place = |on: usize, at: Option<Length>| {
            at.map(|at| long.get(on).copied().unwrap_or_default() - at)
        };
        for point in &mut room.fixed {
            point.from_left = place(point.on.wall(), point.from_left);
            point.on = point.on.with_wall(wall(point.on.wall()));
        }
        for fixture in &mut room.fixtures {
            fixture.from_left = place(fixture.wall, fixture.from_left);
            fixture.wall = wall(fixture.wall);
        }
        for hidden in &mut room.hidden {
            let long = long.get(hidden.on.wall()).copied().unwrap_or_default();
            for spot in &mut hidden.line {
                spot.from_left = long - spot.from_left;
            }
            hidden.on = hidden.on.with_wall(wall(hidden.on.wall()));
        }
        // Out from its wall nothing changes.
        room.joists = self.joists.map(|joists| Joists {
            wall: wall(joists.wall),
            ..joists
        });
        room.survey = mirrored_survey(&self.survey, wall, corner);
        room.facing = (4 - self.facing % 4) % 4;
        room
    }

    /// The plan a quarter turn further round on the sheet, clockwise; nothing in the room changes. Four are none.
    pub fn turn(&mut self) {
        self.facing = (self.facing + 1) % 4;
    }

    /// Nothing in the room was measured in it: every figure, and all that is hidden, is carried over until it is
    /// confirmed.
    pub fn carry_all(&mut self) {
        for what in self.whats() {
            if self.measured(what).is_some() || matches!(what, What::Hidden(_)) {
                let mark = self.survey.marks.entry(what).or_default();
                mark.carried = true;
                mark.earlier.clear();
            }
        }
    }
}

/// Studs from the other corner.
pub(super) fn mirrored_studs(studs: &Studs, long: Length) -> Studs {
    let centres = studs.centres(long);
    if centres.is_empty() {
        return studs.clone();
    }
    let back = |centres: &[Length]| centres.iter().rev().map(|at| long - *at).collect();
    match studs {
        Studs::Spaced {
            first,
            spacing,
            face,
        } if *first < *spacing => Studs::Spaced {
            first: long - centres.last().copied().unwrap_or_default(),
            spacing: *spacing,
            face: *face,
        },
        Studs::Spaced { face, .. } | Studs::Found { face, .. } => Studs::Found {
            centres: back(&centres),
            face: *face,
        },
    }
}

fn mirrored_survey(
    survey: &Survey,
    wall: impl Fn(usize) -> usize,
    corner: impl Fn(usize) -> usize,
) -> Survey {
    let mut mirrored = survey.clone();
    mirrored.renumber(|at| Some(wall(at)), |at| Some(corner(at)));
    mirrored.renumber_items(|what| {
        Some(match what {
            What::Lean(wall, Side::Left) => What::Lean(wall, Side::Right),
            What::Lean(wall, Side::Right) => What::Lean(wall, Side::Left),
            What::Gap(wall, Third::Left) => What::Gap(wall, Third::Right),
            What::Gap(wall, Third::Right) => What::Gap(wall, Third::Left),
            other => other,
        })
    });
    mirrored
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Angle;
    use crate::site::{Opening, OpeningKind, shape};

    #[test]
    fn a_door_hangs_on_the_other_side_and_studs_count_from_the_other_corner() {
        let mut room = Room::l_shape("a");
        for (wall, inches) in room.walls.iter_mut().zip([96, 48, 36, 36, 60, 84]) {
            wall.length = Some(Length::inches(inches));
        }
        room.openings = vec![Opening {
            kind: OpeningKind::Door,
            wall: 1,
            from_left: Some(Length::inches(4)),
            width: Some(Length::inches(30)),
            height: Some(Length::inches(80)),
            sill: Some(Length::ZERO),
            hinge: Some(Hinge::default()),
        }];
        room.walls[1].studs = Some(Studs::Spaced {
            first: Length::inches(15),
            spacing: Length::inches(16),
            face: Length::in_64(1, 32),
        });
        room.measure(What::Diagonal(0, 2), Some(Length::inches(107)), None);
        let mirrored = room.mirrored();
        let door = &mirrored.openings[0];
        assert_eq!((door.wall, door.from_left), (5, Some(Length::inches(14))));
        assert_eq!(door.hinge.map(|hinge| hinge.side), Some(Side::Right));
        // 15, 31, 47 from the left of 48 in are 1, 17, 33 from the right.
        let studs = mirrored.walls[5].studs.as_ref().unwrap();
        let wanted = [1, 17, 33].map(Length::inches);
        assert_eq!(studs.centres(Length::inches(48)), wanted);
        assert_eq!(mirrored.walls[3].turn, Angle::LEFT);
        // Corners 0 and 2 are the ends of walls A and B; those walls are A and F then: corners 1 and 5.
        assert_eq!(
            mirrored.measured(What::Diagonal(1, 5)),
            Some(Length::inches(107))
        );
        let (here, there) = (shape(&room).unwrap(), shape(&mirrored).unwrap());
        assert!((here.corners.area().value - there.corners.area().value).abs() < 1e-9);
        assert!(there.corners.clockwise());
        assert_eq!(mirrored.mirrored(), room);
    }
}
