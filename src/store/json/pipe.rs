//! Runs of pipe in JSON.

use super::words::Words;
use crate::handbook::pipe::{Family, Kind, Pipe, Size, Turn};

impl Words for Pipe {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("copper-k", Pipe::CopperK),
        ("copper-l", Pipe::CopperL),
        ("copper-m", Pipe::CopperM),
        ("pvc-drain", Pipe::PvcDrain),
        ("abs-drain", Pipe::AbsDrain),
        ("pvc-40", Pipe::Pvc40),
        ("cpvc", Pipe::Cpvc),
        ("pex", Pipe::Pex),
        ("steel", Pipe::Steel),
    ];
}
impl Words for Family {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("copper", Family::Copper),
        ("pvc-drain", Family::PvcDrain),
        ("abs-drain", Family::AbsDrain),
        ("pvc-40", Family::Pvc40),
        ("cpvc", Family::Cpvc),
        ("pex", Family::Pex),
        ("steel", Family::Steel),
    ];
}
impl Words for Size {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("1/4", Size::Quarter),
        ("3/8", Size::ThreeEighths),
        ("1/2", Size::Half),
        ("5/8", Size::FiveEighths),
        ("3/4", Size::ThreeQuarters),
        ("1", Size::One),
        ("1-1/4", Size::OneQuarter),
        ("1-1/2", Size::OneHalf),
        ("2", Size::Two),
        ("2-1/2", Size::TwoHalf),
        ("3", Size::Three),
        ("4", Size::Four),
    ];
}
impl Words for Turn {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("11.25", Turn::ThirtySecond),
        ("22.5", Turn::Sixteenth),
        ("30", Turn::Twelfth),
        ("45", Turn::Eighth),
        ("60", Turn::Sixth),
        ("72", Turn::Fifth),
        ("90", Turn::Quarter),
    ];
}
impl Words for Kind {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("bend", Kind::Bend),
        ("long-bend", Kind::LongBend),
        ("tee", Kind::Tee),
        ("sanitary-tee", Kind::SanitaryTee),
        ("wye", Kind::Wye),
        ("coupling", Kind::Coupling),
        ("reducer", Kind::Reducer),
        ("union", Kind::Union),
        ("valve", Kind::Valve),
        ("trap", Kind::Trap),
        ("flange", Kind::Flange),
        ("cap", Kind::Cap),
        ("adapter", Kind::Adapter),
    ];
}
