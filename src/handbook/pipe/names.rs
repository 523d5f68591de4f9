//! What pipe and fittings are called over the counter.

use super::{Family, Kind, Pipe, Turn};

impl Pipe {
    /// What it is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Pipe::CopperK => "copper tube, type K",
            Pipe::CopperL => "copper tube, type L",
            Pipe::CopperM => "copper tube, type M",
            Pipe::PvcDrain => "PVC drain pipe",
            Pipe::AbsDrain => "ABS drain pipe",
            Pipe::Pvc40 => "PVC pipe, schedule 40",
            Pipe::Cpvc => "CPVC pipe",
            Pipe::Pex => "PEX tube",
            Pipe::Steel => "steel pipe, threaded",
        }
    }
}

impl Family {
    /// What its fittings are called after.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Family::Copper => "copper",
            Family::PvcDrain => "PVC drain",
            Family::AbsDrain => "ABS drain",
            Family::Pvc40 => "PVC schedule 40",
            Family::Cpvc => "CPVC",
            Family::Pex => "PEX",
            Family::Steel => "threaded",
        }
    }
}

impl Turn {
    /// In degrees.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Turn::ThirtySecond => "11 1/4°",
            Turn::Sixteenth => "22 1/2°",
            Turn::Twelfth => "30°",
            Turn::Eighth => "45°",
            Turn::Sixth => "60°",
            Turn::Fifth => "72°",
            Turn::Quarter => "90°",
        }
    }
}

impl Kind {
    /// What it is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Kind::Bend => "elbow",
            Kind::LongBend => "long-sweep elbow",
            Kind::Tee => "tee",
            Kind::SanitaryTee => "sanitary tee",
            Kind::Wye => "wye",
            Kind::Coupling => "coupling",
            Kind::Reducer => "reducer",
            Kind::Union => "union",
            Kind::Valve => "valve",
            Kind::Trap => "trap",
            Kind::Flange => "flange",
            Kind::Cap => "cap",
            Kind::Adapter => "adapter",
        }
    }
    /// With how far it turns: `45° elbow`, `street 90° elbow`.
    #[must_use]
    pub fn called(self, turn: Option<Turn>, street: bool) -> String {
        let street = if street { "street " } else { "" };
        match turn {
            Some(turn) => format!("{street}{} {}", turn.name(), self.name()),
            None => format!("{street}{}", self.name()),
        }
    }
}

impl super::Size {
    /// Its name without its unit, where others follow that end in one.
    #[must_use]
    pub fn bare(self) -> &'static str {
        self.name().trim_end_matches(" in")
    }
    /// Its name and that of the smaller size that it reduces to.
    #[must_use]
    pub fn by(self, other: super::Size) -> String {
        if self == other {
            self.name().to_owned()
        } else {
            format!("{} × {}", self.bare(), other.name())
        }
    }
}
