//! How the ends of trim are cut, and how far that reaches.

use crate::handbook::trim as book;
use crate::measure::{Angle, Length};

/// How an end is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cut {
    /// Straight across.
    Square,
    /// Mitred as for an inside corner, then cut along the profile that this lays bare.
    Coped,
    /// The long point at the wall: an inside corner.
    Inside,
    /// The short point at the wall: an outside corner.
    Outside,
    /// Joined on along the wall, its long point at the back.
    ScarfUnder,
    /// Joined on along the wall, its long point in front.
    ScarfOver,
    /// Across the face, the long point at the outer edge: casing.
    Face,
}

/// One end of a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct End {
    /// How it is cut.
    pub cut: Cut,
    /// What the saw shows: how far it is turned from a square cut.
    pub saw: Angle,
    /// Half the angle between the two pieces that meet: what lies between the cut and the back.
    pub half: Angle,
    /// How much longer it is in front than at the wall; of casing, at the outer edge than at the inner one.
    pub more: Length,
    /// What comes off the back so that a square end clears a corner sharper than a right one.
    pub off: Length,
}

/// How far the saw is turned from a square cut at a corner: half of what the corner turns.
///
/// # Inputs
/// The turn of the corner, either way.
/// # Gives
/// Half of it, never less than nothing; 90° less half the angle between the walls comes to the same.
/// # Source
/// [`book::HALF`].
/// # Example
/// ```
/// use storyrod::{measure::Angle, trades::trim::saw_angle};
/// assert_eq!(saw_angle(Angle::RIGHT), Angle::degrees(45));
/// assert_eq!(saw_angle(Angle::degrees(-45)), Angle::microdegrees(22_500_000));
/// ```
#[must_use]
pub fn saw_angle(turn: Angle) -> Angle {
    Angle::microdegrees(turn.as_microdegrees().abs() / 2)
}

/// How far a mitre reaches along the piece: `thickness × tan(angle)`.
///
/// # Inputs
/// What the saw cuts through, more than nothing; how far it is turned from square, less than 90°.
/// # Gives
/// From the short point to the long point, to the nearest nanometre.
/// # Source
/// Plane geometry: the two pieces meet on the line that halves their corner.
/// # Example
/// ```
/// use storyrod::{measure::{Angle, Length}, trades::trim::mitre_reach};
/// let half_inch = Length::in_64(0, 32);
/// assert_eq!(mitre_reach(half_inch, Angle::degrees(45)), half_inch);
/// ```
#[must_use]
pub fn mitre_reach(thickness: Length, angle: Angle) -> Length {
    if angle == Angle::degrees(45) {
        return thickness;
    }
    let (sine, cosine) = angle.sin_cos();
    if cosine <= 0.0 {
        return Length::ZERO;
    }
    Length::from_metres(thickness.metres() * sine / cosine).unwrap_or_default()
}

/// How much shorter the square piece of a coped corner is than its wall: `−thickness × cot(turn)` where the corner turns
/// more than a right angle, nothing else.
///
/// # Inputs
/// The thickness; the turn of an inside corner.
/// # Gives
/// What its front would else stand into the other wall.
/// # Source
/// Plane geometry: the other wall comes back over the front of the piece.
/// # Example
/// ```
/// use storyrod::{measure::{Angle, Length}, trades::trim::cope_shortens};
/// let inch = Length::inches(1);
/// assert_eq!(cope_shortens(inch, Angle::RIGHT), Length::ZERO);
/// assert_eq!(cope_shortens(inch, Angle::degrees(135)), inch);
/// ```
#[must_use]
pub fn cope_shortens(thickness: Length, turn: Angle) -> Length {
    if turn <= Angle::RIGHT {
        return Length::ZERO;
    }
    // cot(90° + a) = −tan(a).
    mitre_reach(thickness, turn - Angle::RIGHT)
}

impl End {
    /// Straight across.
    pub(super) const SQUARE: End = End {
        cut: Cut::Square,
        saw: Angle::ZERO,
        half: Angle::RIGHT,
        more: Length::ZERO,
        off: Length::ZERO,
    };
    /// A square end that runs into an inside corner.
    pub(super) fn into_corner(thickness: Length, turn: Angle) -> End {
        End {
            off: cope_shortens(thickness, turn),
            ..End::SQUARE
        }
    }
    fn mitre(cut: Cut, saw: Angle, more: Length) -> End {
        End {
            cut,
            saw,
            half: Angle::RIGHT - saw,
            more,
            off: Length::ZERO,
        }
    }
    /// Mitred at a corner, inside or outside.
    pub(super) fn corner(thickness: Length, turn: Angle) -> End {
        let saw = saw_angle(turn);
        let reach = mitre_reach(thickness, saw);
        if turn >= Angle::ZERO {
            End::mitre(Cut::Inside, saw, -reach)
        } else {
            End::mitre(Cut::Outside, saw, reach)
        }
    }
    /// Coped at an inside corner.
    pub(super) fn coped(thickness: Length, turn: Angle) -> End {
        End {
            cut: Cut::Coped,
            ..End::corner(thickness, turn)
        }
    }
    /// One side of a joint along the wall: the piece that lies under it, or the one over it.
    pub(super) fn scarf(thickness: Length, over: bool) -> End {
        let saw = book::SCARF.value;
        let reach = mitre_reach(thickness, saw);
        if over {
            End::mitre(Cut::ScarfOver, saw, reach)
        } else {
            End::mitre(Cut::ScarfUnder, saw, -reach)
        }
    }
    /// Casing, mitred across its face.
    pub(super) fn face(width: Length) -> End {
        let saw = Angle::degrees(45);
        End::mitre(Cut::Face, saw, mitre_reach(width, saw))
    }
}
