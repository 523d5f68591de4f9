//! Fall, trap arms, fixture units and rough-in heights of drains.
//!
//! The codes were read as other pages quote them, not in the books; where they differ each stands by its name, and none
//! is mixed with another.

use super::{Cite, Sourced, documents};
use crate::measure::Length;

/// Sizes of drain that figures stand for here, in sixty-fourths of an inch: 1 1/4, 1 1/2, 2, 3 and 4 in.
pub const SIZES: [Length; 5] = [
    Length::in_64(1, 16),
    Length::in_64(1, 32),
    Length::inches(2),
    Length::inches(3),
    Length::inches(4),
];
/// One figure for each of [`SIZES`].
pub type BySize<T> = [T; 5];

/// Outside diameters of plastic drain pipe.
pub static OUTSIDE: Sourced<BySize<Length>> = Sourced::new(
    [
        Length::nm(42_164_000),
        Length::nm(48_260_000),
        Length::nm(60_325_000),
        Length::nm(88_900_000),
        Length::nm(114_300_000),
    ],
    Cite::read(
        &documents::HI_PIPE_TABLES,
        "outside diameters, the same in two libraries of pipe sizes",
    ),
);

const EIGHTH: Length = Length::in_64(0, 8);
const QUARTER: Length = Length::in_64(0, 16);

/// The least fall in a foot by the residential code.
pub static FALL_IRC: Sourced<BySize<Length>> = Sourced::new(
    [QUARTER, QUARTER, QUARTER, EIGHTH, EIGHTH],
    Cite::read(
        &documents::IRC_P3005_3,
        "1/4 in/ft to 2 1/2 in, 1/8 from 3 in; a page on 2024 has 1/4 for 3 in as well",
    ),
);
/// The least fall in a foot by the plumbing code.
pub static FALL_IPC: Sourced<BySize<Length>> = Sourced::new(
    [QUARTER, QUARTER, QUARTER, EIGHTH, EIGHTH],
    Cite::read(
        &documents::IPC_704_1,
        "1/4 in/ft to 2 1/2 in, 1/8 from 3 to 6 in",
    ),
);
/// The least fall in a foot by the uniform code.
pub static FALL_UPC: Sourced<BySize<Length>> = Sourced::new(
    [QUARTER; 5],
    Cite::read(
        &documents::UPC_708,
        "1/4 in/ft; 1/8 from 3 or 4 in only where the official approves it",
    ),
);
/// A page on the newest residential code asks as much of 3 in, against all others.
pub static FALL_3_IN: Sourced<Length> = Sourced::new(
    QUARTER,
    Cite::read(
        &documents::IRC_P3005_3,
        "a page on 2024: 1/4 in/ft for 3 in and smaller; others have 1/8",
    ),
);

/// The longest trap arm by the residential and the plumbing code, from the weir to the vent.
pub static ARM: Sourced<BySize<Length>> = Sourced::new(
    [
        Length::feet(5),
        Length::feet(6),
        Length::feet(8),
        Length::feet(12),
        Length::feet(16),
    ],
    Cite::read(
        &documents::VENT_DISTANCE,
        "5, 6, 8, 12, 16 ft; IPC table 909.1, and IRC from memory",
    ),
);
/// The longest trap arm by the uniform code.
pub static ARM_UPC: Sourced<BySize<Length>> = Sourced::new(
    [
        Length::inches(30),
        Length::inches(42),
        Length::inches(60),
        Length::inches(72),
        Length::inches(120),
    ],
    Cite::read(
        &documents::UPC_1002_2,
        "30, 42, 60, 72, 120 in, as copied on how-to pages",
    ),
);
/// The shortest trap arm, in pipe diameters.
pub static ARM_LEAST: Sourced<i64> = Sourced::new(
    2,
    Cite::read(&documents::VENT_DISTANCE, "no shorter than two diameters"),
);
/// A trap arm falls no more than this many diameters from the weir to the vent.
pub static ARM_FALL: Sourced<i64> = Sourced::new(
    1,
    Cite::read(
        &documents::IRC_P3105_2,
        "total fall no more than one diameter",
    ),
);

/// Units that a level pipe carries by the uniform code.
pub static CARRIES_UPC: Sourced<BySize<u32>> = Sourced::new(
    [1, 1, 8, 35, 216],
    Cite::read(
        &documents::UPC_702_703,
        "horizontal: 1, 1, 8, 35, 216; no more than 3 water closets on 3 in",
    ),
);
/// Units that a branch carries by the residential code.
pub static CARRIES_IRC: Sourced<BySize<u32>> = Sourced::new(
    [0, 3, 6, 20, 160],
    Cite::memory(&documents::IRC_P3005_4, "branch: 3, 6, 20, 160"),
);
/// Water closets on a level pipe of 3 in by the uniform code.
pub static CLOSETS_ON_3: Sourced<u32> = Sourced::new(
    3,
    Cite::read(&documents::UPC_702_703, "no more than 3 on 3 in"),
);
/// The least drain of a water closet.
pub static CLOSET_DRAIN: Sourced<Length> = Sourced::new(
    Length::inches(3),
    Cite::read(
        &documents::UPC_702_703,
        "integral trap, 3 in drain; never less downstream",
    ),
);
/// Units of a lavatory, and its least trap.
pub static LAVATORY: Sourced<(u32, Length)> = Sourced::new(
    (1, SIZES[0]),
    Cite::read(&documents::UPC_702_703, "lavatory 1, trap 1 1/4 in"),
);
/// Units of a tub, with or without a shower, and its least trap.
pub static TUB: Sourced<(u32, Length)> = Sourced::new(
    (2, SIZES[1]),
    Cite::read(
        &documents::UPC_702_703,
        "tub or tub and shower 2, trap 1 1/2 in",
    ),
);
/// Units of a shower, and its least trap.
pub static SHOWER: Sourced<(u32, Length)> = Sourced::new(
    (2, SIZES[2]),
    Cite::read(
        &documents::UPC_702_703,
        "shower 2, trap 2 in; IRC and IPC let 1 1/2 pass for one low-flow head, from memory",
    ),
);
/// Units of a water closet of no more than 1.6 gal.
pub static CLOSET: Sourced<u32> = Sourced::new(
    3,
    Cite::read(&documents::UPC_702_703, "water closet of 1.6 gal, 3"),
);
/// Units of a water closet that takes more.
pub static CLOSET_LARGE: Sourced<u32> = Sourced::new(
    4,
    Cite::read(
        &documents::IRC_P3004_1,
        "water closet over 1.6 gal, 4, as quoted",
    ),
);

/// What a height or a clearance stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// A model code.
    Code,
    /// What is commonly done.
    Practice,
    /// The fixture's own sheet; what stands here is only where it often is.
    Sheet,
}

/// A height or a clearance, from and to; equal where one figure stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoughIn {
    /// What is measured, and from where.
    pub what: &'static str,
    /// The least, or the usual from.
    pub from: Length,
    /// The usual to.
    pub to: Length,
    /// What it stands on.
    pub standing: Standing,
    /// Where it was read.
    pub cite: Cite,
}

const fn row(
    what: &'static str,
    from: Length,
    to: Length,
    standing: Standing,
    cite: Cite,
) -> RoughIn {
    RoughIn {
        what,
        from,
        to,
        standing,
        cite,
    }
}

const fn clearance(what: &'static str, least: i64, clause: &'static str) -> RoughIn {
    let least = Length::inches(least);
    let cite = Cite::read(&documents::IRC_R305, clause);
    row(what, least, least, Standing::Code, cite)
}

const fn common(what: &'static str, from: Length, to: Length, clause: &'static str) -> RoughIn {
    let cite = Cite::read(&documents::ROUGH_IN_TABLE, clause);
    row(what, from, to, Standing::Practice, cite)
}

/// From the finished wall to the centre of a closet flange, as most water closets are made.
pub static FLANGE: Sourced<Length> = Sourced::new(
    Length::inches(12),
    Cite::read(
        &documents::FLANGE_PAGES,
        "12 in from the finished wall; 10 and 14 exist; no code has it",
    ),
);

/// Clearances and heights, from the finished wall and the finished floor.
pub static ROUGH_INS: [RoughIn; 13] = [
    row(
        "Finished wall to the centre of the closet flange",
        Length::inches(12),
        Length::inches(12),
        Standing::Sheet,
        Cite::read(&documents::FLANGE_PAGES, "12 in; 10 and 14 in exist"),
    ),
    row(
        "Top of the closet flange above the finished floor",
        QUARTER,
        Length::in_64(0, 24),
        Standing::Practice,
        Cite::read(
            &documents::FLANGE_PAGES,
            "its underside flush with the floor",
        ),
    ),
    clearance(
        "Centre of a water closet to a side wall or fixture, at least",
        15,
        "15 in",
    ),
    clearance(
        "Clear in front of a water closet, lavatory or tub, at least",
        21,
        "21 in; UPC 24 in for a water closet",
    ),
    clearance(
        "Clear in front of a shower's opening, at least",
        24,
        "24 in, R307.1 as quoted",
    ),
    row(
        "A shower inside, each way, at least",
        Length::inches(30),
        Length::inches(30),
        Standing::Code,
        Cite::read(
            &documents::CODE_CHECK,
            "30 by 30 in and 900 in²; UPC 1,024 in²",
        ),
    ),
    common(
        "Lavatory drain above the floor",
        Length::inches(16),
        Length::inches(20),
        "16 to 20 in, 18 as a rule; a textbook's kitchen has 14",
    ),
    common(
        "Lavatory supplies above the floor, 4 in each side of the centre",
        Length::inches(20),
        Length::inches(23),
        "2 to 3 in above the drain",
    ),
    common(
        "Lavatory rim above the floor",
        Length::inches(31),
        Length::inches(31),
        "about 31 in",
    ),
    common(
        "Water closet supply above the floor, 6 in left of the centre",
        Length::in_64(8, 16),
        Length::in_64(8, 16),
        "8 1/4 in; 5 to 10 in",
    ),
    common(
        "Tub valve above the floor",
        Length::inches(20),
        Length::inches(22),
        "20 to 22 in; the spout 4 in above the rim",
    ),
    row(
        "Shower valve above the floor",
        Length::inches(38),
        Length::inches(48),
        Standing::Practice,
        Cite::memory(&documents::ROUGH_IN_TABLE, "38 to 48 in"),
    ),
    common(
        "Shower arm above the floor",
        Length::inches(80),
        Length::inches(80),
        "about 80 in",
    ),
];
