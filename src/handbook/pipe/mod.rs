//! Pipe and tube: sizes, sockets, threads, joints, hangers and tests, each with how well it is known.
//!
//! Nothing here is a default for a fitting that was not measured: where no figure is published, none is given.

mod joints;
mod names;
mod sockets;
mod threads;
mod tubes;

pub use joints::{
    CURE_TEXTBOOK, Cure, DAMP, FLUX_SHARE, PVC_UPRIGHT, SOLDER_DENSITY, SOLDER_SLACK, SUPPLY_TEST,
    Solder, Support, TEST_HEAD, TEST_MINUTES, TEST_PRESSURE, cement_joints, cure_by, expansion,
    set_by, solder, support,
};
pub use sockets::{NO_STANDARD_LENGTH, Printed, least_socket, printed, remembered};
pub use threads::{GAUGE, Thread, thread};
pub use tubes::{Tube, drawn_tolerance, tube};

use crate::measure::Length;

/// Thousandths of an inch.
const fn mils(n: i64) -> Length {
    Length::nm(n * 25_400)
}
/// Ten-thousandths of an inch.
const fn tenths(n: i64) -> Length {
    Length::nm(n * 2_540)
}

/// What a run is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Pipe {
    /// Copper water tube, thick wall.
    CopperK,
    /// Copper water tube, middle wall.
    CopperL,
    /// Copper water tube, thin wall.
    CopperM,
    /// PVC for drains.
    PvcDrain,
    /// ABS for drains.
    AbsDrain,
    /// PVC schedule 40, for pressure.
    Pvc40,
    /// CPVC of copper tube size.
    Cpvc,
    /// PEX.
    Pex,
    /// Steel, threaded.
    Steel,
}

/// Whose fittings fit one another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Family {
    /// Soldered copper.
    Copper,
    /// PVC drain.
    PvcDrain,
    /// ABS drain.
    AbsDrain,
    /// PVC pressure.
    Pvc40,
    /// CPVC.
    Cpvc,
    /// PEX.
    Pex,
    /// Threaded.
    Steel,
}

impl Pipe {
    /// All of them.
    pub const ALL: [Pipe; 9] = [
        Pipe::CopperK,
        Pipe::CopperL,
        Pipe::CopperM,
        Pipe::PvcDrain,
        Pipe::AbsDrain,
        Pipe::Pvc40,
        Pipe::Cpvc,
        Pipe::Pex,
        Pipe::Steel,
    ];
    /// Whose fittings it takes.
    #[must_use]
    pub const fn family(self) -> Family {
        match self {
            Pipe::CopperK | Pipe::CopperL | Pipe::CopperM => Family::Copper,
            Pipe::PvcDrain => Family::PvcDrain,
            Pipe::AbsDrain => Family::AbsDrain,
            Pipe::Pvc40 => Family::Pvc40,
            Pipe::Cpvc => Family::Cpvc,
            Pipe::Pex => Family::Pex,
            Pipe::Steel => Family::Steel,
        }
    }
    /// Its sizes, the smallest first.
    #[must_use]
    pub fn sizes(self) -> Vec<Size> {
        Size::ALL
            .into_iter()
            .filter(|size| tube(self, *size).is_some())
            .collect()
    }
}

impl Family {
    /// Drains, that no pressure stands in.
    #[must_use]
    pub const fn drains(self) -> bool {
        matches!(self, Family::PvcDrain | Family::AbsDrain)
    }
    /// Joined with solvent cement.
    #[must_use]
    pub const fn cemented(self) -> bool {
        matches!(
            self,
            Family::PvcDrain | Family::AbsDrain | Family::Pvc40 | Family::Cpvc
        )
    }
    /// Plastic, that no compressed air is let into.
    #[must_use]
    pub const fn plastic(self) -> bool {
        !matches!(self, Family::Copper | Family::Steel)
    }
}

/// A nominal size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Size {
    /// 1/4.
    Quarter,
    /// 3/8.
    ThreeEighths,
    /// 1/2.
    Half,
    /// 5/8.
    FiveEighths,
    /// 3/4.
    ThreeQuarters,
    /// 1.
    One,
    /// 1 1/4.
    OneQuarter,
    /// 1 1/2.
    OneHalf,
    /// 2.
    Two,
    /// 2 1/2.
    TwoHalf,
    /// 3.
    Three,
    /// 4.
    Four,
}

impl Size {
    /// All of them, the smallest first.
    pub const ALL: [Size; 12] = [
        Size::Quarter,
        Size::ThreeEighths,
        Size::Half,
        Size::FiveEighths,
        Size::ThreeQuarters,
        Size::One,
        Size::OneQuarter,
        Size::OneHalf,
        Size::Two,
        Size::TwoHalf,
        Size::Three,
        Size::Four,
    ];
    /// What it is called, in eighths of an inch.
    #[must_use]
    pub const fn eighths(self) -> i64 {
        match self {
            Size::Quarter => 2,
            Size::ThreeEighths => 3,
            Size::Half => 4,
            Size::FiveEighths => 5,
            Size::ThreeQuarters => 6,
            Size::One => 8,
            Size::OneQuarter => 10,
            Size::OneHalf => 12,
            Size::Two => 16,
            Size::TwoHalf => 20,
            Size::Three => 24,
            Size::Four => 32,
        }
    }
    /// What it is called, as a length; no dimension of the pipe.
    #[must_use]
    pub const fn nominal(self) -> Length {
        Length::in_64(0, self.eighths() * 8)
    }
    /// What it is called, in print: `1 1/2 in`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Size::Quarter => "1/4 in",
            Size::ThreeEighths => "3/8 in",
            Size::Half => "1/2 in",
            Size::FiveEighths => "5/8 in",
            Size::ThreeQuarters => "3/4 in",
            Size::One => "1 in",
            Size::OneQuarter => "1 1/4 in",
            Size::OneHalf => "1 1/2 in",
            Size::Two => "2 in",
            Size::TwoHalf => "2 1/2 in",
            Size::Three => "3 in",
            Size::Four => "4 in",
        }
    }
}

/// How far a bend turns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Turn {
    /// 11 1/4°, a 1/32 bend.
    ThirtySecond,
    /// 22 1/2°, a 1/16 bend.
    Sixteenth,
    /// 30°, a 1/12 bend.
    Twelfth,
    /// 45°, a 1/8 bend.
    Eighth,
    /// 60°, a 1/6 bend.
    Sixth,
    /// 72°, a 1/5 bend.
    Fifth,
    /// 90°, a 1/4 bend.
    Quarter,
}

impl Turn {
    /// All of them, the least first.
    pub const ALL: [Turn; 7] = [
        Turn::ThirtySecond,
        Turn::Sixteenth,
        Turn::Twelfth,
        Turn::Eighth,
        Turn::Sixth,
        Turn::Fifth,
        Turn::Quarter,
    ];
    /// Its angle.
    #[must_use]
    pub const fn angle(self) -> crate::measure::Angle {
        crate::measure::Angle::microdegrees(match self {
            Turn::ThirtySecond => 11_250_000,
            Turn::Sixteenth => 22_500_000,
            Turn::Twelfth => 30_000_000,
            Turn::Eighth => 45_000_000,
            Turn::Sixth => 60_000_000,
            Turn::Fifth => 72_000_000,
            Turn::Quarter => 90_000_000,
        })
    }
}

/// What kind of fitting; how far a bend turns stands beside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Kind {
    /// An elbow or a bend.
    Bend,
    /// A bend of a long radius.
    LongBend,
    /// A tee.
    Tee,
    /// A tee whose branch is curved for drains.
    SanitaryTee,
    /// A branch at 45°.
    Wye,
    /// Two ends of a size with a stop between.
    Coupling,
    /// Two ends of different sizes.
    Reducer,
    /// Two ends that are screwed together.
    Union,
    /// A valve, its body as the centre.
    Valve,
    /// A trap, its outlet.
    Trap,
    /// A flange or a drain body.
    Flange,
    /// A closed end.
    Cap,
    /// Any change to another thread, hose or material.
    Adapter,
}

impl Kind {
    /// All of them.
    pub const ALL: [Kind; 13] = [
        Kind::Bend,
        Kind::LongBend,
        Kind::Tee,
        Kind::SanitaryTee,
        Kind::Wye,
        Kind::Coupling,
        Kind::Reducer,
        Kind::Union,
        Kind::Valve,
        Kind::Trap,
        Kind::Flange,
        Kind::Cap,
        Kind::Adapter,
    ];
    /// Turns by an angle of its own.
    #[must_use]
    pub const fn bends(self) -> bool {
        matches!(self, Kind::Bend | Kind::LongBend)
    }
    /// Has a branch.
    #[must_use]
    pub const fn branches(self) -> bool {
        matches!(self, Kind::Tee | Kind::SanitaryTee | Kind::Wye)
    }
}
