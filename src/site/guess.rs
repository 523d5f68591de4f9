//! Walls that are not measured yet, drawn as near to their sketched length as lets the room close.

use super::shape::end;
use super::{Room, Standing};
use crate::measure::{Angle, Length};

/// No guess is drawn shorter than this share of its sketched length while another can give.
const LEAST_SHARE: f64 = 0.2;
/// A wall that was sketched as nothing.
const LEAST_SKETCHED: Length = Length::inches(1);

/// Every wall runs across or up and down.
pub(super) fn right_angled(ways: &[Angle]) -> bool {
    ways.iter()
        .all(|way| way.as_microdegrees() % 90_000_000 == 0)
}

/// Quarter turns from the first wall's way: 0 right, 1 down, 2 left, 3 up.
pub(super) fn quarter(way: Angle) -> i64 {
    way.as_microdegrees().rem_euclid(360_000_000) / 90_000_000
}

/// Changes the walls not yet measured so that the room closes, each in proportion to its sketched length.
///
/// One that cannot be more than nothing, whatever the others are, is left at nothing or less.
pub(super) fn close(walls: &mut [(Length, Standing)], ways: &[Angle]) {
    let open: Vec<usize> = (0..walls.len())
        .filter(|&wall| walls[wall].1 == Standing::NotYet)
        .collect();
    for &wall in &open {
        walls[wall].0 = walls[wall].0.max(LEAST_SKETCHED);
    }
    if right_angled(ways) {
        for axis in [0, 1] {
            let on_axis = |wall: &usize| quarter(ways[*wall]) % 2 == axis;
            close_axis(
                walls,
                ways,
                &open.iter().copied().filter(on_axis).collect::<Vec<_>>(),
            );
        }
    } else {
        close_any(walls, ways, open);
    }
}

/// Closes a right-angled room along the one axis of the `open` walls, to the nanometre.
fn close_axis(walls: &mut [(Length, Standing)], ways: &[Angle], open: &[usize]) {
    let Some(&first) = open.first() else { return };
    let axis = quarter(ways[first]) % 2;
    let forward = |wall: usize| quarter(ways[wall]) < 2;
    let on_axis = |wall: usize| quarter(ways[wall]) % 2 == axis;
    let left = |walls: &[(Length, Standing)], counts: &dyn Fn(usize) -> bool| {
        let left = end(walls, ways, |wall| on_axis(wall) && counts(wall));
        if axis == 0 { left.x } else { left.y }
    };
    // What the open walls have to come to, and what they come to as sketched, there and back.
    let target = -left(walls, &|wall| !open.contains(&wall)).metres();
    let sum = |ahead: bool| -> f64 {
        let these = open.iter().filter(|&&wall| forward(wall) == ahead);
        these.map(|&wall| walls[wall].0.metres()).sum()
    };
    let (there, back) = (sum(true), sum(false));
    let share = (target - there + back) / (there + back);
    let most = 1.0 - LEAST_SHARE;
    let (grow_there, grow_back) = if back == 0.0 {
        (target / there, 0.0)
    } else if there == 0.0 {
        (0.0, -target / back)
    } else if share > most {
        ((target + LEAST_SHARE * back) / there, LEAST_SHARE)
    } else if share < -most {
        (LEAST_SHARE, (LEAST_SHARE * there - target) / back)
    } else {
        (1.0 + share, 1.0 - share)
    };
    for &wall in open {
        let grow = if forward(wall) { grow_there } else { grow_back };
        walls[wall].0 = scaled(walls[wall].0, grow);
    }
    let over = left(walls, &|_| true);
    if let Some(&longest) = open.iter().max_by_key(|&&wall| walls[wall].0) {
        let length = &mut walls[longest].0;
        *length = if forward(longest) {
            *length - over
        } else {
            *length + over
        };
    }
}

/// Closes a room of any angles with the least change, Σ change² / sketched length; leaves it open where that fails.
fn close_any(walls: &mut [(Length, Standing)], ways: &[Angle], mut open: Vec<usize>) {
    let sketched: Vec<Length> = walls.iter().map(|wall| wall.0).collect();
    while open.len() >= 2 {
        for &wall in &open {
            walls[wall].0 = sketched[wall];
        }
        let over = end(walls, ways, |_| true);
        let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
        for &wall in &open {
            let ((sine, cosine), weight) = (ways[wall].sin_cos(), sketched[wall].metres());
            xx += weight * cosine * cosine;
            xy += weight * cosine * sine;
            yy += weight * sine * sine;
        }
        let whole = xx * yy - xy * xy;
        if whole <= (xx + yy).powi(2) * 1e-9 {
            return;
        }
        let (x, y) = (-over.x.metres(), -over.y.metres());
        let pull = ((x * yy - y * xy) / whole, (y * xx - x * xy) / whole);
        let grow = |wall: usize| {
            let (sine, cosine) = ways[wall].sin_cos();
            1.0 + cosine * pull.0 + sine * pull.1
        };
        let (short, fine): (Vec<usize>, Vec<usize>) =
            open.iter().partition(|&&wall| grow(wall) < LEAST_SHARE);
        for wall in open {
            let grow = grow(wall).max(LEAST_SHARE);
            walls[wall].0 = scaled(sketched[wall], grow);
        }
        if short.is_empty() {
            return;
        }
        open = fine;
    }
}

/// The lengths to draw a right-angled room that cannot close: along an axis on which a wall would run backwards, both
/// ways are scaled to the same sum; walls elsewhere as they are.
pub(super) fn forced(
    room: &Room,
    walls: &[(Length, Standing)],
    ways: &[Angle],
) -> Vec<(Length, Standing)> {
    let mut drawn = walls.to_vec();
    if !right_angled(ways) {
        return drawn;
    }
    for axis in [0, 1] {
        let here = |wall: &usize| quarter(ways[*wall]) % 2 == axis;
        let these: Vec<usize> = (0..walls.len()).filter(here).collect();
        if these.iter().all(|&wall| walls[wall].0.is_positive()) {
            continue;
        }
        for &wall in &these {
            if !drawn[wall].0.is_positive() {
                drawn[wall].0 = room.walls[wall].sketched.max(LEAST_SKETCHED);
            }
        }
        let sum = |ahead: bool| -> f64 {
            let way = these
                .iter()
                .filter(|&&wall| (quarter(ways[wall]) < 2) == ahead);
            way.map(|&wall| drawn[wall].0.metres()).sum()
        };
        let (there, back) = (sum(true), sum(false));
        if there == 0.0 || back == 0.0 {
            continue;
        }
        let middle = f64::midpoint(there, back);
        for &wall in &these {
            let way = if quarter(ways[wall]) < 2 { there } else { back };
            drawn[wall].0 = scaled(drawn[wall].0, middle / way);
        }
    }
    drawn
}

/// A length so many times, to the nearest nanometre.
fn scaled(length: Length, times: f64) -> Length {
    Length::nm((length.metres() * times * 1e9).round() as i64)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::shape::headings;
    use crate::site::{Problem, Wall, shape, sketch};

    /// Every wall of the sketch runs the way that was typed, to a hundredth of a millimetre.
    #[track_caller]
    fn square(room: &Room) {
        let corners = sketch(room).corners.points;
        for (wall, from) in corners.iter().enumerate() {
            let run = corners[(wall + 1) % corners.len()] - *from;
            let off = run.x.abs().min(run.y.abs());
            assert!(off <= Length::nm(10), "wall {wall} is off by {off:?}");
        }
    }

    fn typed(mut room: Room, lengths: &[(usize, i64)]) -> Room {
        for &(wall, inches) in lengths {
            room.walls[wall].length = Some(Length::inches(inches));
        }
        room
    }

    #[test]
    fn a_room_half_measured_is_drawn_square() {
        let l = || Room::l_shape("a");
        for lengths in [
            &[(0, 88)][..],
            &[(0, 88), (1, 50)],
            &[(0, 30), (5, 200)],
            &[(1, 400)],
            &[(3, 400), (2, 7)],
        ] {
            square(&typed(l(), lengths));
        }
        square(&typed(Room::alcove("a"), &[(0, 300), (5, 20)]));
        square(&typed(Room::rectangle("a"), &[(2, 14)]));
    }

    /// 88 in are to be made of 36 and 60; 36 less 84 is to come to −50. By hand.
    #[test]
    fn guesses_give_in_proportion_to_their_sketched_length() {
        let room = typed(Room::l_shape("a"), &[(0, 88), (1, 50)]);
        let found = shape(&room).unwrap();
        let inches: Vec<f64> = found.walls.iter().map(|wall| wall.0.in_inches()).collect();
        for (is, wanted) in inches.iter().zip([88.0, 50.0, 33.0, 35.4, 55.0, 85.4]) {
            assert!((is - wanted).abs() < 1e-6, "{inches:?}");
        }
        let open = found.walls.iter().filter(|w| w.1 == Standing::NotYet);
        assert_eq!(open.count(), 4);
    }

    #[test]
    fn measured_walls_that_leave_no_room_are_told_and_still_drawn_square() {
        // 30 in one way and 20 in back leave less than nothing for the two that are open.
        let room = typed(Room::alcove("a"), &[(0, 30), (6, 20)]);
        assert_eq!(shape(&room), Err(Problem::ClosesBackwards { wall: 2 }));
        square(&room);
        // The same with one wall open.
        let room = typed(Room::l_shape("a"), &[(0, 30), (2, 40)]);
        assert_eq!(shape(&room), Err(Problem::ClosesBackwards { wall: 4 }));
        square(&room);
    }

    #[test]
    fn a_room_with_a_cut_corner_closes_with_the_least_change() {
        let wall = |inches, turn| Wall::sketched(Length::inches(inches), Angle::degrees(turn));
        let mut room = Room::rectangle("a");
        room.walls = vec![
            wall(60, 45),
            wall(50, 45),
            wall(60, 90),
            wall(90, 90),
            wall(90, 90),
        ];
        room.walls[0].length = Some(Length::inches(70));
        let found = shape(&room).unwrap();
        let over = end(&found.walls, &headings(&room), |_| true);
        assert!(over.x.abs() < Length::nm(10) && over.y.abs() < Length::nm(10));
        for (wall, drawn) in room.walls.iter().zip(&found.walls).skip(1) {
            let share = drawn.0.metres() / wall.sketched.metres();
            assert!((0.8..1.2).contains(&share), "{share}");
        }
    }
}
