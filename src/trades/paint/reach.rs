//! How far the roller has to go from the hands, and which pole that takes.

use super::{Pole, PoleAnswer, Reach};
use crate::handbook::paint as book;
use crate::measure::Length;

/// The pole for a surface: `reach = √((height − hands)² + off²)`, `pole = reach − frame`.
///
/// # Inputs
/// `height`: the top of the surface above the floor. `reach`: who rolls; the hands stand at 0.818 of the stature, or
/// 52 1/2 in where none is given.
/// # Gives
/// Reach and pole to the nearest nanometre, the shortest common pole that is long enough (2 to 4 ft, 4 to 8 ft), and
/// whether a ladder is needed because none is. An arm and a frame need no pole. Below the hands the reach is the way
/// out to the wall.
/// # Source
/// Geometry; body sizes after Pheasant (arm, read) and Drillis and Contini (shoulder height, from memory); frame and
/// hands: common practice, no published source, like the rule it must agree with: 10 ft is rolled from the floor.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::paint::{Pole, Reach, pole}};
/// let ten_feet = pole(Length::feet(10), &Reach::default());
/// assert_eq!(ten_feet.pole, Pole::Long);
/// assert!(!ten_feet.ladder);
/// ```
#[must_use]
pub fn pole(height: Length, reach: &Reach) -> PoleAnswer {
    let hands = reach.stature.map_or(book::HANDS.value, shoulder);
    let up = if height > hands {
        height - hands
    } else {
        Length::ZERO
    };
    let way = up.diagonal(reach.standing_off);
    let needed = (way - book::FRAME.value).max(Length::ZERO);
    let pole = if way <= book::ARM.value + book::FRAME.value {
        Pole::None
    } else if needed <= book::SHORT_POLE.value {
        Pole::Short
    } else if needed <= book::LONG_POLE.value {
        Pole::Long
    } else {
        Pole::Beyond
    };
    PoleAnswer {
        height,
        hands,
        reach: way,
        needed,
        pole,
        ladder: pole == Pole::Beyond,
    }
}

/// Shoulder height: 0.818 of the stature, in whole nanometres.
fn shoulder(stature: Length) -> Length {
    Length::from_metres(stature.metres() * book::SHOULDER_SHARE.value).unwrap_or(book::HANDS.value)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(height: i64, stature: Option<i64>, pole_wanted: Pole) {
        let reach = Reach {
            stature: stature.map(Length::inches),
            ..Reach::default()
        };
        let answer = pole(Length::inches(height), &reach);
        assert_eq!(answer.pole, pole_wanted, "{height} {stature:?} {answer:?}");
        assert_eq!(answer.ladder, pole_wanted == Pole::Beyond);
    }

    #[test]
    fn a_pole_grows_with_the_wall() {
        check(40, None, Pole::None);
        check(78, None, Pole::None);
        check(96, None, Pole::Short);
        check(108, None, Pole::Long);
        check(120, None, Pole::Long);
        check(200, None, Pole::Beyond);
    }

    #[test]
    fn ten_feet_is_rolled_from_the_floor_by_short_and_tall() {
        for stature in [58, 60, 65, 70, 76] {
            check(120, Some(stature), Pole::Long);
        }
    }

    #[test]
    fn hands_follow_the_stature() {
        let reach = Reach {
            stature: Some(Length::mm(1625)),
            ..Reach::default()
        };
        assert_eq!(
            pole(Length::feet(8), &reach).hands,
            Length::nm(1_329_250_000)
        );
    }
}
