//! How deep a socket is and how long a fitting, where someone printed it.

use super::{Family, Kind, Size, Turn, mils, tenths, thread};
use crate::handbook::{Cite, Sourced, documents};
use crate::measure::Length;

/// A fitting's figures as printed: from its centre to where the pipe stops, and how deep the pipe goes in.
///
/// Each may be printed without the other.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Printed {
    /// From the centre to the stop.
    pub take_off: Option<Sourced<Length>>,
    /// From the face to the stop.
    pub depth: Option<Sourced<Length>>,
}

const CUP: Cite = Cite::read(
    &documents::COPPER_HANDBOOK,
    "joint depth, which the solder is figured by",
);
const DRAIN_2: Cite = Cite::read(&documents::PLUMBING_2022, "p. 328, 2 in");
const DRAIN_3: Cite = Cite::read(
    &documents::PLUMBING_2022,
    "p. 325, the example in 3 in; patterns are made to 1/16 in",
);
const DRAIN_MEMORY: Cite = Cite::memory(&documents::D2665, "socket depth and bends");
const TEXT_ROWS: Cite = Cite::read(
    &documents::PLUMBING_2010,
    "which row is which fitting was told by its size; wrought copper has no standard length",
);
const SOCKET: Cite = Cite::read(
    &documents::PLASTICS_MANUAL,
    "least socket of ASTM D2466; real ones are deeper by 1/16 to 1/4 in",
);
const CPVC_SOCKET: Cite = Cite::memory(&documents::D2846, "least socket");
const MAKEUP: Cite = Cite::figured(
    &documents::B1_20_1,
    "by hand and by wrench; two turns either way",
);

/// What is printed for a fitting and may stand until one is measured.
///
/// Wrought copper, sanitary tees, wyes and everything else without a published length have none: they are measured.
/// The depth of a minimum socket is no depth of a real one and is not given here.
#[must_use]
pub fn printed(family: Family, kind: Kind, turn: Option<Turn>, size: Size) -> Printed {
    let bend = (kind, turn) == (Kind::Bend, Some(Turn::Quarter));
    let depth = match (family, size) {
        (Family::Copper, _) => cup(size),
        (Family::PvcDrain | Family::AbsDrain, Size::Two) => {
            Some(Sourced::new(Length::in_64(0, 48), DRAIN_2))
        }
        (Family::PvcDrain | Family::AbsDrain, Size::Three) => {
            Some(Sourced::new(Length::in_64(1, 32), DRAIN_3))
        }
        (Family::Steel, _) => thread(size).map(|thread| Sourced::new(thread.makeup(), MAKEUP)),
        _ => None,
    };
    let take_off = match (family, size) {
        (Family::PvcDrain | Family::AbsDrain, Size::Three) if bend => {
            Some(Sourced::new(Length::inches(3), DRAIN_3))
        }
        _ => None,
    };
    Printed { take_off, depth }
}

/// Why wrought copper is measured.
pub static NO_STANDARD_LENGTH: Cite = Cite::read(
    &documents::B16_22,
    "section 7: laying lengths of wrought copper are not standardised; ask the maker",
);

/// Depth of a copper cup.
fn cup(size: Size) -> Option<Sourced<Length>> {
    let hundredths = match size {
        Size::Quarter => 31,
        Size::ThreeEighths => 38,
        Size::Half => 50,
        Size::ThreeQuarters => 75,
        Size::One => 91,
        Size::OneQuarter => 97,
        Size::OneHalf => 109,
        Size::Two => 134,
        _ => return None,
    };
    Some(Sourced::new(mils(hundredths * 10), CUP))
}

/// What a textbook prints or someone remembers of a fitting that has to be measured: to see whether a measurement can be
/// right, and never taken by itself.
#[must_use]
pub fn remembered(family: Family, kind: Kind, turn: Option<Turn>, size: Size) -> Printed {
    let of_64 = |inches, of_64, cite| Some(Sourced::new(Length::in_64(inches, of_64), cite));
    match family {
        Family::Copper => {
            let row = match size {
                Size::Half => [24, 22, 18],
                Size::ThreeQuarters => [34, 32, 22],
                Size::One => [46, 44, 24],
                _ => return Printed::default(),
            };
            let take_off = match (kind, turn) {
                (Kind::Bend, Some(Turn::Quarter)) => of_64(0, row[0], TEXT_ROWS),
                (Kind::Tee, _) => of_64(0, row[1], TEXT_ROWS),
                (Kind::Bend, Some(Turn::Eighth)) => of_64(0, row[2], TEXT_ROWS),
                // The stop between two ends is 3/32 in, half of it on either side.
                (Kind::Coupling, _) => of_64(0, 3, TEXT_ROWS),
                _ => None,
            };
            Printed {
                take_off,
                depth: cup(size),
            }
        }
        Family::PvcDrain | Family::AbsDrain => {
            let (socket, quarter, eighth) = match size {
                Size::OneQuarter => ((0, 44), (1, 40), (1, 0)),
                Size::OneHalf => ((0, 44), (1, 48), (1, 8)),
                Size::Two => ((0, 48), (2, 20), (1, 32)),
                Size::Three => ((1, 32), (3, 4), (1, 48)),
                Size::Four => ((1, 48), (3, 56), (2, 12)),
                _ => return Printed::default(),
            };
            let take_off = match (kind, turn) {
                (Kind::Bend, Some(Turn::Quarter)) => of_64(quarter.0, quarter.1, DRAIN_MEMORY),
                (Kind::Bend, Some(Turn::Eighth)) => of_64(eighth.0, eighth.1, DRAIN_MEMORY),
                _ => None,
            };
            Printed {
                take_off,
                depth: of_64(socket.0, socket.1, DRAIN_MEMORY),
            }
        }
        _ => Printed {
            take_off: None,
            depth: least_socket(family, size),
        },
    }
}

/// The shallowest socket that the standard lets pass: a check of a measurement, no make-up.
#[must_use]
pub fn least_socket(family: Family, size: Size) -> Option<Sourced<Length>> {
    match family {
        Family::Pvc40 => {
            let mils_deep = match size {
                Size::Half => 688,
                Size::ThreeQuarters => 719,
                Size::One => 875,
                Size::OneQuarter => 938,
                Size::OneHalf => 1_094,
                Size::Two => 1_156,
                Size::TwoHalf => 1_750,
                Size::Three => 1_875,
                Size::Four => 2_000,
                _ => return None,
            };
            Some(Sourced::new(mils(mils_deep), SOCKET))
        }
        Family::Cpvc => {
            let deep = match size {
                Size::Half => 5_000,
                Size::ThreeQuarters => 7_000,
                Size::One => 9_000,
                Size::OneQuarter => 11_000,
                Size::OneHalf => 13_000,
                Size::Two => 17_000,
                _ => return None,
            };
            Some(Sourced::new(tenths(deep), CPVC_SOCKET))
        }
        _ => None,
    }
}
