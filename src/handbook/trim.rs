//! Trim: how base and casing meet, how they are measured, what holds them.

use super::{Cite, Sourced, documents as doc};
use crate::measure::{Angle, Length};

/// An outside mitre is measured to its short point, an inside one to its long point: both lie on the wall.
pub static POINTS: Cite = Cite::read(
    &doc::TRIM_LESSONS,
    "outside corners: short point at the wall; inside corners: long point at the wall",
);
/// An inside corner is coped: one piece runs square into it, the other is cut to its profile.
pub static COPED: Cite = Cite::read(
    &doc::RUNNING_BASE,
    "coped joint: the profile cut on the end of one piece so that it mates with the other",
);
/// A corner that turns less than this is mitred: there is no face to cope to.
pub static COPED_FROM: Sourced<Angle> = Sourced::new(
    Angle::degrees(45),
    Cite::practice("a shallow inside corner is mitred, not coped"),
);
/// Each of two mitred pieces takes half the turn of its corner.
pub static HALF: Cite = Cite::read(
    &doc::RUNNING_BASE,
    "mitre joint: a corner of two pieces cut at an evenly divided angle",
);
/// A joint along a wall is cut on the slant, over a stud, and glued.
pub static SCARF: Sourced<Angle> = Sourced::new(
    Angle::degrees(45),
    Cite::read(
        &doc::BASE_AND_DOORSTOPS,
        "bevel cut at 45° where two pieces join along a wall: over a stud, with glue",
    ),
);
/// The shortest piece that is joined on along a wall, so that it is nailed twice.
pub static LEAST_JOINED: Sourced<Length> = Sourced::new(
    Length::inches(16),
    Cite::practice("a piece that is joined on reaches from one stud to the next at least"),
);
/// What comes off both ends of a stick before it is measured.
pub static TRIMMED: Sourced<Length> = Sourced::new(
    Length::inches(1),
    Cite::practice("ends of a stick are cut fresh: about half an inch each"),
);
/// From the face of the jamb to the casing.
pub static REVEAL: Sourced<Length> = Sourced::new(
    Length::in_64(0, 12),
    Cite::read(
        &doc::CASING_PAGE,
        "casing set back about 3/16 to 1/4 in from the inside edge of the jamb",
    ),
);
/// A leg is measured from the floor to the reveal under the head: its short point.
pub static LEG: Cite = Cite::read(
    &doc::CASING_PAGE,
    "side casing: from the floor to the line of the head's reveal, the short point of the mitre",
);
/// The farthest that nails of trim are apart.
pub static NAILS_APART: Sourced<Length> = Sourced::new(
    Length::inches(16),
    Cite::read(
        &doc::CASING_PAGE,
        "base nailed into the bottom plate about every 16 in; wider trim into studs too",
    ),
);
/// Trim from this width on gets a second row of nails.
pub static TWO_ROWS: Sourced<Length> = Sourced::new(
    Length::inches(3),
    Cite::practice("from 3 in on one nail below and one above; casing along both its edges"),
);
/// How far a nail of trim goes into the stud.
pub static INTO_STUD: Sourced<Length> = Sourced::new(
    Length::in_64(0, 48),
    Cite::read(
        &doc::BASE_FITS,
        "a trim nail goes 3/4 in into the stud, behind board and trim",
    ),
);
/// Lengths in which finishing nails are sold.
pub static NAILS_SOLD: Sourced<[Length; 6]> = Sourced::new(
    [
        Length::in_64(1, 16),
        Length::in_64(1, 32),
        Length::in_64(1, 48),
        Length::inches(2),
        Length::in_64(2, 16),
        Length::in_64(2, 32),
    ],
    Cite::practice("finishing nails from 1 1/4 to 2 1/2 in by quarters"),
);
/// The top of painted base is closed with caulk.
pub static CAULK: Cite = Cite::read(
    &doc::CASING_PAGE,
    "where base is painted the gap to the wall is filled with paintable latex caulk",
);
/// The bead that is reckoned with.
pub static BEAD: Sourced<Length> = Sourced::new(
    Length::in_64(0, 8),
    Cite::practice("a bead of 1/8 in, half a square across"),
);
/// How far a corner is off square before that is said.
pub static OFF_SQUARE: Sourced<Angle> = Sourced::new(
    Angle::degrees(1),
    Cite::practice("half a degree on each piece opens a mitre that shows"),
);
/// Beyond this most saws do not turn.
pub static SAW_REACH: Sourced<Angle> = Sourced::new(
    Angle::degrees(50),
    Cite::practice("most mitre saws turn to about 50°"),
);
