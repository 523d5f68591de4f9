//! Holes, notches and plates in studs and joists.
//!
//! The code was read as other pages quote it, not in the book; each clause says so. Limits are shares of the member's
//! depth and are rounded down where they are shown, since a county's handout that rounds them up allows more than the rule.

use super::{Cite, Sourced, documents};
use crate::measure::Length;

const fn stud(clause: &'static str) -> Cite {
    Cite::read(&documents::IRC_R602_6, clause)
}

const fn joist(clause: &'static str) -> Cite {
    Cite::read(&documents::IRC_R502_8, clause)
}

/// A share, as a fraction.
pub type Share = (i64, i64);

/// The deepest notch in a stud of a bearing or outside wall.
pub static STUD_NOTCH_BEARING: Sourced<Share> =
    Sourced::new((1, 4), stud("notch to 25 % of its depth, bearing"));
/// The deepest notch in any other stud.
pub static STUD_NOTCH: Sourced<Share> =
    Sourced::new((2, 5), stud("notch to 40 % of its depth, not bearing"));
/// The largest hole in a stud of a bearing or outside wall.
pub static STUD_HOLE_BEARING: Sourced<Share> =
    Sourced::new((2, 5), stud("hole to 40 % of its depth, bearing"));
/// The largest hole in a stud that bears nothing, or in a doubled one; one early copy of the code has 40 % for any stud.
pub static STUD_HOLE: Sourced<Share> = Sourced::new(
    (3, 5),
    stud("hole to 60 %: not bearing, or doubled and no more than two in a row"),
);
/// How near a hole may come to the edge of a stud.
pub static STUD_EDGE: Sourced<Length> = Sourced::new(
    Length::in_64(0, 40),
    stud("5/8 in of wood beside a hole; no hole where a notch is"),
);
/// The deepest notch in a joist.
pub static JOIST_NOTCH: Sourced<Share> = Sourced::new(
    (1, 6),
    joist("notch to a sixth of its depth, none in the middle third of the span"),
);
/// The longest notch in a joist, as a share of its depth.
pub static JOIST_NOTCH_LENGTH: Sourced<Share> =
    Sourced::new((1, 3), joist("notch no longer than a third of the depth"));
/// The deepest notch at a joist's end.
pub static JOIST_END_NOTCH: Sourced<Share> =
    Sourced::new((1, 4), joist("notch at the end to a quarter of its depth"));
/// The largest hole in a joist.
pub static JOIST_HOLE: Sourced<Share> = Sourced::new((1, 3), joist("hole to a third of its depth"));
/// How near a hole may come to the edge of a joist, and to another hole or notch.
pub static JOIST_EDGE: Sourced<Length> = Sourced::new(
    Length::inches(2),
    joist("2 in from edges, other holes and notches"),
);
/// Room about a pipe in its hole.
pub static HOLE_ROOM: Sourced<Length> = Sourced::new(
    Length::in_64(0, 4),
    Cite::practice("a hole with 1/16 in of room at least, to the next bit or saw of 1/8 in"),
);
/// Pipe nearer to a face than this is shielded: the older and wider rule, taken because editions differ.
pub static PLATE_WITHIN: Sourced<Length> = Sourced::new(
    Length::in_64(1, 32),
    Cite::read(
        &documents::SHIELD_PLATES,
        "closer than 1 1/2 in up to 2009 and in a city's code; 1 1/4 in later",
    ),
);
/// The newer rule.
pub static PLATE_WITHIN_LATER: Sourced<Length> = Sourced::new(
    Length::in_64(1, 16),
    Cite::read(
        &documents::SHIELD_PLATES,
        "closer than 1 1/4 in, later editions",
    ),
);
/// Steel of 16 gauge.
pub static PLATE_THICKNESS: Sourced<Length> = Sourced::new(
    Length::nm(1_460_500),
    Cite::read(
        &documents::PLATE_THICKNESS,
        "16 gauge, 0.0575 in; one page rounds to 1/16",
    ),
);
/// How far plates reach past the sole plate and the top plate.
pub static PLATE_BEYOND: Sourced<Length> = Sourced::new(
    Length::inches(2),
    Cite::read(
        &documents::PLATE_THICKNESS,
        "2 in above the sole plate and below the top plate",
    ),
);
