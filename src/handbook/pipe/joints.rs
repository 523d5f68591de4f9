//! Solder, cement, cure, hangers, tests and growth.

use super::{Family, Pipe, Size, printed, tube};
use crate::handbook::pipe::Kind;
use crate::handbook::{Cite, Sourced, documents};
use crate::measure::Length;

/// Solder of one joint, as wire of 1/8 in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Solder {
    /// Wire in a joint with the gap of middling work, 0.005 in.
    pub wire: Sourced<Length>,
}

/// Wire of ⅛ in for one joint: `π · outside · depth · 0.005 in ÷ (π/4 · (⅛ in)²)`; every row of the table comes out so.
///
/// `None` where no cup is printed.
#[must_use]
pub fn solder(size: Size) -> Option<Solder> {
    let outside = tube(Pipe::CopperL, size)?.outside.value.in_inches();
    let depth = printed(Family::Copper, Kind::Coupling, None, size).depth?;
    let wire = 256.0 * outside * depth.value.in_inches() * 0.005;
    let cite = Cite::figured(
        &documents::COPPER_HANDBOOK,
        "wire of 1/8 in for a joint with a gap of 0.005 in, average use",
    );
    Some(Solder {
        wire: Sourced::new(Length::from_inches(wire)?, cite),
    })
}

/// Bought for each used: the table's column for a gap of 0.010 in, which holds the waste already.
pub static SOLDER_SLACK: Sourced<i64> = Sourced::new(
    2,
    Cite::read(
        &documents::COPPER_HANDBOOK,
        "the column for a gap of 0.010 in; its doubling is the waste, and is not added again",
    ),
);
/// lb of solder in an in³.
pub static SOLDER_DENSITY: Sourced<f64> = Sourced::new(
    0.266,
    Cite::figured(
        &documents::COPPER_HANDBOOK,
        "the column of pounds over that of wire",
    ),
);
/// Flux by the mass of solder: 2 oz to the pound.
pub static FLUX_SHARE: Sourced<f64> = Sourced::new(
    2.0 / 16.0,
    Cite::read(&documents::COPPER_HANDBOOK, "about 2 oz of flux a pound"),
);

/// Joints that a quart of cement makes; a quart of primer makes twice as many.
#[must_use]
pub fn cement_joints(size: Size) -> Option<Sourced<f64>> {
    let read = |joints| {
        let cite = Cite::read(&documents::PLASTICS_MANUAL, "p. 96, joints a quart, PVC");
        Some(Sourced::new(joints, cite))
    };
    match size {
        Size::Half => read(300.0),
        Size::ThreeQuarters => read(200.0),
        Size::One => read(125.0),
        Size::OneQuarter => Some(Sourced::new(
            105.0,
            Cite::memory(
                &documents::PLASTICS_MANUAL,
                "p. 96 leaves 1 1/4 in out; between its neighbours",
            ),
        )),
        Size::OneHalf => read(90.0),
        Size::Two => read(60.0),
        Size::Three => read(40.0),
        Size::Four => read(30.0),
        _ => None,
    }
}

/// Hours of one source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cure {
    /// How long.
    pub hours: f64,
    /// By whom.
    pub cite: Cite,
}

const MAKER: Cite = Cite::read(
    &documents::PLASTICS_MANUAL,
    "p. 96, set and cure to 180 psi",
);
const OTHER: Cite = Cite::read(&documents::CEMENT_PAGE, "set and cure to 160 psi");

/// A textbook's wait before a test.
pub static CURE_TEXTBOOK: Cure = Cure {
    hours: 24.0,
    cite: Cite::read(&documents::PLUMBING_2022, "p. 330, 24 h before the test"),
};
/// Longer in damp air, as a share.
pub static DAMP: Sourced<f64> = Sourced::new(
    0.5,
    Cite::read(&documents::PLASTICS_MANUAL, "p. 96, over 60 % humidity"),
);

/// The column of a temperature: warm, cool, cold; `None` outside 0 to 100 °F.
fn band(fahrenheit: f64) -> Option<usize> {
    match fahrenheit {
        f if (60.0..=100.0).contains(&f) => Some(0),
        f if (40.0..60.0).contains(&f) => Some(1),
        f if (0.0..40.0).contains(&f) => Some(2),
        _ => None,
    }
}

/// By two makers, one whose sizes part at 1 1/4 and 3 in and one at 1 1/4 and 2 in.
fn by_two(
    size: Size,
    fahrenheit: f64,
    one: [[f64; 3]; 3],
    other: [[f64; 3]; 3],
) -> Option<[Cure; 2]> {
    let at = band(fahrenheit)?;
    let row = |to: Size| match size {
        size if size <= Size::OneQuarter => 0,
        size if size <= to => 1,
        _ => 2,
    };
    Some([
        Cure {
            hours: one[row(Size::Three)][at],
            cite: MAKER,
        },
        Cure {
            hours: other[row(Size::Two)][at] / 60.0,
            cite: OTHER,
        },
    ])
}

/// Hours until a joint may be handled, by two makers, in dry air.
#[must_use]
pub fn set_by(size: Size, fahrenheit: f64) -> Option<[Cure; 2]> {
    by_two(
        size,
        fahrenheit,
        [[0.25, 1.0, 3.0], [0.5, 2.0, 6.0], [1.0, 4.0, 12.0]],
        [[2.0, 5.0, 10.0], [5.0, 10.0, 15.0], [30.0, 120.0, 720.0]],
    )
}

/// Hours until a joint may be tested, by two makers, in dry air.
#[must_use]
pub fn cure_by(size: Size, fahrenheit: f64) -> Option<[Cure; 2]> {
    by_two(
        size,
        fahrenheit,
        [[1.0, 2.0, 8.0], [2.0, 4.0, 16.0], [6.0, 12.0, 48.0]],
        [
            [15.0, 20.0, 30.0],
            [30.0, 45.0, 60.0],
            [90.0, 240.0, 4_320.0],
        ],
    )
}

/// How far apart hangers are at most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Support {
    /// Along a level run.
    pub level: Sourced<Length>,
    /// Up a wall.
    pub upright: Sourced<Length>,
}

const HANGERS: Cite = Cite::read(&documents::IRC_P2605, "hangers");
/// The upright spacing of PVC, whose row was cut off in the scan.
pub static PVC_UPRIGHT: Cite = Cite::memory(
    &documents::IRC_P2605,
    "upright: that row was cut off in the scan; with a guide at mid-storey up to 2 in",
);

/// How far apart its hangers are; `None` for steel, whose row was not read.
#[must_use]
pub fn support(pipe: Pipe, size: Size) -> Option<Support> {
    let small = size <= Size::One;
    let feet = |feet| Sourced::new(Length::feet(feet), HANGERS);
    let guided = Sourced::new(
        Length::feet(10),
        Cite::read(
            &documents::IRC_P2605,
            "with a guide at mid-storey up to 2 in",
        ),
    );
    let (level, upright) = match pipe.family() {
        Family::Copper if size <= Size::OneQuarter => (feet(6), feet(10)),
        Family::Copper => (feet(10), feet(10)),
        Family::Cpvc => (feet(if small { 3 } else { 4 }), guided),
        Family::Pex if small => (Sourced::new(Length::inches(32), HANGERS), guided),
        Family::Pex => (feet(4), guided),
        Family::AbsDrain => (feet(4), guided),
        Family::PvcDrain | Family::Pvc40 => (
            Sourced::new(
                Length::feet(4),
                Cite::read(&documents::CODE_CHECK, "level, 4 ft"),
            ),
            Sourced::new(Length::feet(10), PVC_UPRIGHT),
        ),
        Family::Steel => return None,
    };
    Some(Support { level, upright })
}

/// Water stands so high above the highest fitting of a drain that is tested.
pub static TEST_HEAD: Sourced<Length> = Sourced::new(
    Length::feet(10),
    Cite::read(
        &documents::IRC_P2503,
        "P2503.5.1: 10 ft above the highest fitting, or to the top of the system; some editions say 5 ft",
    ),
);
/// psi under [`TEST_HEAD`]: 0.433 a foot.
pub static TEST_PRESSURE: Sourced<f64> =
    Sourced::new(4.33, Cite::computed("0.433 psi a foot of water"));
/// Minutes that a test holds.
pub static TEST_MINUTES: Sourced<f64> = Sourced::new(
    15.0,
    Cite::read(&documents::IRC_P2503, "15 minutes without a leak"),
);
/// How a supply is tested.
pub static SUPPLY_TEST: Cite = Cite::read(
    &documents::SUPPLY_TEST,
    "water, no less than the working pressure, 15 minutes",
);

/// How much it grows by a °F, as a share of its length; `None` for steel, which was not looked up.
#[must_use]
pub fn expansion(pipe: Pipe) -> Option<Sourced<f64>> {
    // Plastic is published as inches in 100 ft for 10 °F.
    let plastic = |inches: f64, clause| {
        let cite = Cite::read(&documents::PLASTIC_GROWTH, clause);
        Some(Sourced::new(inches / 12_000.0, cite))
    };
    match pipe.family() {
        Family::Copper => Some(Sourced::new(
            9.4e-6,
            Cite::read(&documents::COPPER_GROWTH, "9.4 millionths a °F"),
        )),
        Family::PvcDrain | Family::Pvc40 => plastic(0.36, "PVC, 0.36 in in 100 ft for 10 °F"),
        Family::AbsDrain => plastic(0.66, "ABS, 0.66 in in 100 ft for 10 °F"),
        Family::Cpvc => plastic(
            0.408,
            "CPVC, 0.408 in in 100 ft for 10 °F; an older guide says 0.456",
        ),
        Family::Pex => Some(Sourced::new(
            1.1 / 12_000.0,
            Cite::read(
                &documents::PEX_MANUAL,
                "PEX, 1.1 in in 100 ft for 10 °F; another maker says 1.0",
            ),
        )),
        Family::Steel => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn temperatures_beyond_the_tables_have_no_cure() {
        for fahrenheit in [-1.0, 100.5, f64::NAN] {
            assert!(cure_by(Size::Two, fahrenheit).is_none());
        }
        assert!(set_by(Size::Two, 0.0).is_some());
    }
    #[test]
    fn cold_and_size_never_shorten_a_cure() {
        for pair in Size::ALL.windows(2) {
            for fahrenheit in [70.0, 50.0, 30.0] {
                let hours = |size| cure_by(size, fahrenheit).map(|by| by.map(|cure| cure.hours));
                let (less, more) = (
                    hours(pair[0]).expect("listed"),
                    hours(pair[1]).expect("listed"),
                );
                assert!(more[0] >= less[0] && more[1] >= less[1]);
            }
            let warm = cure_by(pair[0], 70.0).expect("listed");
            let cold = cure_by(pair[0], 30.0).expect("listed");
            assert!(cold[0].hours > warm[0].hours && cold[1].hours > warm[1].hours);
        }
    }
}
