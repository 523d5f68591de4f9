//! Outside diameters and walls.
//!
//! An inside diameter is not given: a ½ in schedule 40 has three published ones (0.622, 0.602 and 0.615 in).

use super::{Pipe, Size, mils, tenths};
use crate::handbook::{Cite, Sourced, documents};
use crate::measure::Length;

/// Across and through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tube {
    /// Its outside diameter.
    pub outside: Sourced<Length>,
    /// Its wall, at least; `None` where no figure is to hand.
    pub wall: Option<Sourced<Length>>,
}

const B88: Cite = Cite::read(
    &documents::PIPE_DATA,
    "copper water tube, ASTM B88; a second and a third table agree",
);
/// One row of the data book prints the wall of 1 1/4 in type L as 0.050; three others and its neighbour say 0.055.
const B88_MENDED: Cite = Cite::read(
    &documents::TUBE_TABLES,
    "1 1/4 in; the data book has one bad row",
);
const D1785: Cite = Cite::read(
    &documents::PIPE_DATA,
    "PVC schedule 40, ASTM D1785; a maker's manual agrees",
);
const DRAIN: Cite = Cite::read(
    &documents::PIPE_DATA,
    "the outside of schedule 40, which drain pipe shares",
);
const CPVC: Cite = Cite::memory(&documents::D2846, "wall of SDR 11");
const CTS: Cite = Cite::read(
    &documents::F876,
    "the outside of copper tube size, the same for copper, CPVC and PEX",
);
const PEX: Cite = Cite::read(&documents::F876, "wall of SDR 9");
const STEEL: Cite = Cite::read(&documents::PIPE_DATA, "steel pipe, schedule 40");

/// Outside of copper tube size: always ⅛ in more than its name.
fn copper_size(size: Size) -> Length {
    Length::in_64(0, size.eighths() * 8 + 8)
}

/// Outside of iron pipe size, in thousandths of an inch.
fn iron_size(size: Size) -> Option<Length> {
    Some(mils(match size {
        Size::Half => 840,
        Size::ThreeQuarters => 1_050,
        Size::One => 1_315,
        Size::OneQuarter => 1_660,
        Size::OneHalf => 1_900,
        Size::Two => 2_375,
        Size::TwoHalf => 2_875,
        Size::Three => 3_500,
        Size::Four => 4_500,
        Size::Quarter | Size::ThreeEighths | Size::FiveEighths => return None,
    }))
}

/// Wall of a row of copper, K L M in thousandths; 0 where it is not made.
fn copper_walls(size: Size) -> Option<[i64; 3]> {
    Some(match size {
        Size::Quarter => [35, 30, 0],
        Size::ThreeEighths => [49, 35, 25],
        Size::Half => [49, 40, 28],
        Size::FiveEighths => [49, 42, 0],
        Size::ThreeQuarters => [65, 45, 32],
        Size::One => [65, 50, 35],
        Size::OneQuarter => [65, 55, 42],
        Size::OneHalf => [72, 60, 49],
        Size::Two => [83, 70, 58],
        Size::TwoHalf | Size::Three | Size::Four => return None,
    })
}

/// Wall of schedule 40, in thousandths.
fn schedule_40(size: Size) -> Option<i64> {
    Some(match size {
        Size::Half => 109,
        Size::ThreeQuarters => 113,
        Size::One => 133,
        Size::OneQuarter => 140,
        Size::OneHalf => 145,
        Size::Two => 154,
        Size::TwoHalf => 203,
        Size::Three => 216,
        Size::Four => 237,
        _ => return None,
    })
}

/// The tube of that size, where it is made and is of use in a bathroom.
#[must_use]
pub fn tube(pipe: Pipe, size: Size) -> Option<Tube> {
    let made = |outside, outside_cite, wall: Option<(i64, Cite)>| {
        Some(Tube {
            outside: Sourced::new(outside, outside_cite),
            wall: wall.map(|(wall, cite)| Sourced::new(mils(wall), cite)),
        })
    };
    match pipe {
        Pipe::CopperK | Pipe::CopperL | Pipe::CopperM => {
            let row = copper_walls(size)?;
            let wall = match pipe {
                Pipe::CopperK => row[0],
                Pipe::CopperL => row[1],
                _ => row[2],
            };
            let cite = if size == Size::OneQuarter {
                B88_MENDED
            } else {
                B88
            };
            (wall > 0).then_some(())?;
            made(copper_size(size), B88, Some((wall, cite)))
        }
        Pipe::Pvc40 => made(iron_size(size)?, D1785, Some((schedule_40(size)?, D1785))),
        Pipe::Steel => made(iron_size(size)?, STEEL, Some((schedule_40(size)?, STEEL))),
        Pipe::PvcDrain | Pipe::AbsDrain => {
            (size >= Size::OneQuarter && size != Size::TwoHalf).then_some(())?;
            // A wall of drain pipe was read for PVC alone.
            let wall = (pipe == Pipe::PvcDrain)
                .then(|| schedule_40(size))
                .flatten();
            made(iron_size(size)?, DRAIN, wall.map(|wall| (wall, DRAIN)))
        }
        Pipe::Cpvc => {
            let wall = match size {
                Size::Half => 68,
                Size::ThreeQuarters => 80,
                Size::One => 102,
                Size::OneQuarter => 125,
                Size::OneHalf => 148,
                Size::Two => 193,
                _ => return None,
            };
            made(copper_size(size), CTS, Some((wall, CPVC)))
        }
        Pipe::Pex => {
            let wall = match size {
                Size::ThreeEighths | Size::Half => 70,
                Size::FiveEighths => 83,
                Size::ThreeQuarters => 97,
                Size::One => 125,
                _ => return None,
            };
            made(copper_size(size), CTS, Some((wall, PEX)))
        }
    }
}

/// How far the outside of copper may be off, drawn tube, at most.
pub const fn drawn_tolerance() -> Sourced<Length> {
    Sourced::new(
        tenths(20),
        Cite::read(
            &documents::PIPE_DATA,
            "average outside of drawn tube, 0.001 to 0.002 in",
        ),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_wall_leaves_a_bore() {
        let mut rows = 0;
        for pipe in Pipe::ALL {
            for size in pipe.sizes() {
                let tube = tube(pipe, size).expect("a size it has");
                if let Some(wall) = tube.wall {
                    assert!(wall.value * 4 < tube.outside.value, "{pipe:?} {size:?}");
                }
                rows += 1;
            }
        }
        assert_eq!(rows, 9 + 9 + 7 + 5 + 5 + 9 + 6 + 5 + 9);
    }
    #[test]
    fn a_bore_that_three_tables_print() {
        let bore = |pipe, size| {
            let tube = tube(pipe, size).expect("made");
            tube.outside.value - tube.wall.expect("known").value * 2
        };
        assert_eq!(bore(Pipe::CopperK, Size::Half), mils(527));
        assert_eq!(bore(Pipe::CopperM, Size::ThreeQuarters), mils(811));
        assert_eq!(bore(Pipe::Pvc40, Size::Two), mils(2_067));
        assert_eq!(bore(Pipe::Pex, Size::Half), mils(485));
    }
    #[test]
    fn what_is_not_made_is_not_given() {
        assert!(tube(Pipe::CopperM, Size::FiveEighths).is_none());
        assert!(tube(Pipe::PvcDrain, Size::Half).is_none());
        assert!(tube(Pipe::Pex, Size::Two).is_none());
    }
}
