//! What cannot stand as it was measured: openings and studs against their wall and each other.

use super::{OpeningKind, Room, Shape, Studs};
use crate::measure::Length;

/// A measure that clashes with another; openings count from 0 over the whole room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clash {
    /// An opening reaches past the right end of its wall.
    OpeningPastWall {
        /// The opening.
        opening: usize,
        /// By how much.
        by: Length,
    },
    /// An opening reaches above its wall.
    OpeningTooTall {
        /// The opening.
        opening: usize,
        /// By how much.
        by: Length,
    },
    /// Two openings of a wall lie over each other.
    OpeningsOverlap(usize, usize),
    /// The first stud of a wall stands beyond its right corner.
    StudBeyondCorner {
        /// The wall.
        wall: usize,
        /// Where the stud is said to stand.
        at: Length,
    },
}

/// Everything in a room that clashes, walls in order.
#[must_use]
pub fn clashes(room: &Room, shape: &Shape) -> Vec<Clash> {
    let mut found = Vec::new();
    for (wall, (length, _)) in shape.walls.iter().enumerate() {
        let height = room.walls[wall].height.or(room.ceiling);
        let here: Vec<usize> = (0..room.openings.len())
            .filter(|o| room.openings[*o].wall == wall)
            .collect();
        for (n, &opening) in here.iter().enumerate() {
            let Some([_, right, _, top]) = extent(room, opening) else {
                continue;
            };
            if right > *length {
                found.push(Clash::OpeningPastWall {
                    opening,
                    by: right - *length,
                });
            }
            if let Some(by) = height
                .map(|height| top - height)
                .filter(|by| by.is_positive())
            {
                found.push(Clash::OpeningTooTall { opening, by });
            }
            found.extend(
                here[n + 1..]
                    .iter()
                    .filter(|other| overlap(room, opening, **other))
                    .map(|other| Clash::OpeningsOverlap(opening, *other)),
            );
        }
        let stud = match &room.walls[wall].studs {
            Some(Studs::Spaced { first, .. }) => Some(*first),
            Some(Studs::Found { centres, .. }) => centres.iter().copied().max(),
            None => None,
        };
        found.extend(
            stud.filter(|at| at > length)
                .map(|at| Clash::StudBeyondCorner { wall, at }),
        );
    }
    found
}

/// Left, right, bottom and top of an opening, once it is measured.
fn extent(room: &Room, opening: usize) -> Option<[Length; 4]> {
    let opening = &room.openings[opening];
    let bottom = if opening.kind == OpeningKind::Door {
        Length::ZERO
    } else {
        opening.sill?
    };
    Some([
        opening.from_left?,
        opening.from_left? + opening.width?,
        bottom,
        bottom + opening.height?,
    ])
}

fn overlap(room: &Room, a: usize, b: usize) -> bool {
    let (Some([al, ar, ab, at]), Some([bl, br, bb, bt])) = (extent(room, a), extent(room, b))
    else {
        return false;
    };
    al < br && bl < ar && ab < bt && bb < at
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::{Opening, shape};

    fn window(from_left: i64, width: i64) -> Opening {
        let inches = |n| Some(Length::inches(n));
        Opening {
            kind: OpeningKind::Window,
            wall: 0,
            from_left: inches(from_left),
            width: inches(width),
            height: inches(30),
            sill: inches(48),
            hinge: None,
        }
    }

    #[track_caller]
    fn check(openings: Vec<Opening>, expected: &[Clash]) {
        let mut room = Room::rectangle("a");
        room.walls[0].length = Some(Length::inches(88));
        room.walls[1].length = Some(Length::inches(60));
        room.ceiling = Some(Length::inches(96));
        room.openings = openings;
        assert_eq!(clashes(&room, &shape(&room).unwrap()), expected);
    }

    #[test]
    fn an_opening_stays_in_its_wall_and_off_the_others() {
        check(vec![window(10, 24), window(34, 24)], &[]);
        check(
            vec![window(70, 24)],
            &[Clash::OpeningPastWall {
                opening: 0,
                by: Length::inches(6),
            }],
        );
        check(
            vec![window(10, 24), window(30, 24)],
            &[Clash::OpeningsOverlap(0, 1)],
        );
        let mut tall = window(10, 24);
        tall.sill = Some(Length::inches(70));
        check(
            vec![tall],
            &[Clash::OpeningTooTall {
                opening: 0,
                by: Length::inches(4),
            }],
        );
    }

    #[test]
    fn a_stud_beyond_the_corner_is_named() {
        let mut room = Room::rectangle("a");
        room.walls[0].length = Some(Length::inches(30));
        room.walls[1].length = Some(Length::inches(60));
        room.walls[0].studs = Some(Studs::Spaced {
            first: Length::inches(40),
            spacing: Length::inches(16),
            face: Length::in_64(1, 32),
        });
        let found = clashes(&room, &shape(&room).unwrap());
        assert_eq!(
            found,
            [Clash::StudBeyondCorner {
                wall: 0,
                at: Length::inches(40)
            }]
        );
    }
}
