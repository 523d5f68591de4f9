//! Runs of pipe and their fittings as records.

use crate::handbook::pipe::{Family, Kind, Pipe, Size, Turn};

pub(super) const PIPES: [Pipe; 9] = [
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
pub(super) const FAMILIES: [Family; 7] = [
    Family::Copper,
    Family::PvcDrain,
    Family::AbsDrain,
    Family::Pvc40,
    Family::Cpvc,
    Family::Pex,
    Family::Steel,
];
pub(super) const SIZES: [Size; 12] = [
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
/// None first.
pub(super) const TURNS: [Option<Turn>; 8] = [
    None,
    Some(Turn::ThirtySecond),
    Some(Turn::Sixteenth),
    Some(Turn::Twelfth),
    Some(Turn::Eighth),
    Some(Turn::Sixth),
    Some(Turn::Fifth),
    Some(Turn::Quarter),
];
pub(super) const KINDS: [Kind; 13] = [
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
