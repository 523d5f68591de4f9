//! The cutting plan: the pieces of all figures of one material, cut from as few sticks as can be.

use std::collections::BTreeMap;

use super::Pack;
use crate::geometry::stock::{self, Order, Origin, Stick};
use crate::handbook::{Sourced, cutting as book, pipe::Family};
use crate::measure::{Amount, Length};
use crate::site::Id;
use crate::trades::Material;

/// One piece that a figure needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// What it is cut from.
    pub material: Material,
    /// How long.
    pub length: Length,
    /// The figure that needs it.
    pub of: Id,
    /// Its number among the pieces of that figure, from 1.
    pub number: u32,
}

/// What cuts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Saw {
    /// A wheel cutter or shears.
    Cutter,
    /// A hand saw.
    Hand,
    /// A mitre or circular saw.
    #[default]
    Power,
    /// A saw of the person's own, by what it takes.
    Own(Length),
}

impl Saw {
    /// What it takes with each cut.
    #[must_use]
    pub fn kerf(self) -> Length {
        match self {
            Saw::Own(kerf) => kerf,
            _ => self.rule().map_or(Length::ZERO, |rule| rule.value),
        }
    }
    /// Where that stands; `None` for the person's own.
    #[must_use]
    pub fn rule(self) -> Option<&'static Sourced<Length>> {
        match self {
            Saw::Cutter => Some(&book::KERF_CUTTER),
            Saw::Hand => Some(&book::KERF_HAND),
            Saw::Power => Some(&book::KERF_POWER),
            Saw::Own(_) => None,
        }
    }
}

/// What a person set about cutting one material.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Setup {
    /// Lengths of the sticks that can be bought, rising.
    pub sticks: Vec<Length>,
    /// What cuts.
    pub saw: Saw,
    /// Offcuts on hand, in the order they were written down.
    pub offcuts: Vec<Length>,
}

impl Setup {
    /// Boards of 8 ft and a power saw; pipe in the sticks that its run names, and a cutter, or a hand saw for plastic
    /// that has none.
    #[must_use]
    pub fn usual(material: &Material) -> Setup {
        let (stick, saw) = match material {
            Material::Pipe { pipe, stick, .. } => match pipe.family() {
                Family::Copper | Family::Pex | Family::Cpvc => (*stick, Saw::Cutter),
                _ => (*stick, Saw::Hand),
            },
            _ => (Length::feet(8), Saw::Power),
        };
        Setup {
            sticks: vec![stick],
            saw,
            offcuts: Vec::new(),
        }
    }
}

/// One stick, cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// An offcut on hand, counted from 0; `None` where it is bought.
    pub offcut: Option<usize>,
    /// How long.
    pub length: Length,
    /// Its pieces, the longest first.
    pub pieces: Vec<Piece>,
    /// What the saw takes.
    pub sawn: Length,
    /// What remains.
    pub rest: Length,
}

/// One material, cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Cuts {
    /// The material.
    pub material: Material,
    /// Its sticks: offcuts first, the one with the longest rest last.
    pub bars: Vec<Bar>,
    /// Sticks to buy by length, rising.
    pub bought: Vec<(Length, u32)>,
    /// No plan buys fewer sticks.
    pub least: u32,
    /// As few sticks as can be: proven.
    pub proven: bool,
    /// No plan of as many sticks keeps a longer rest: proven.
    pub longest_rest: bool,
    /// Pieces longer than any stick. Where there are any the material is held back: it has no bars, and none is bought.
    pub too_long: Vec<Piece>,
}

impl Cuts {
    /// Nothing to cut.
    pub(super) fn none(material: &Material) -> Cuts {
        Cuts {
            material: material.clone(),
            bars: Vec::new(),
            bought: Vec::new(),
            least: 0,
            proven: true,
            longest_rest: true,
            too_long: Vec::new(),
        }
    }
    /// A piece is longer than every stick, and nothing of the material is planned until that is mended.
    #[must_use]
    pub fn is_held(&self) -> bool {
        !self.too_long.is_empty()
    }
    /// Sticks to buy.
    #[must_use]
    pub fn count(&self) -> u32 {
        self.bought.iter().map(|(_, count)| count).sum()
    }
    /// The longest rest of a bought stick.
    #[must_use]
    pub fn rest(&self) -> Length {
        let bought = self.bars.iter().filter(|bar| bar.offcut.is_none());
        bought.map(|bar| bar.rest).max().unwrap_or_default()
    }
}

/// Whether a material is cut from sticks.
#[must_use]
pub fn is_cut(material: &Material) -> bool {
    matches!(
        material,
        Material::Lumber { .. } | Material::Pipe { .. } | Material::Trim { .. }
    )
}

/// The cutting plan of all pieces, one material after the other.
///
/// # Inputs
/// Pieces of any material, and what was set for each; a material without has its usual sticks and saw.
///
/// # Gives
/// For each material the fewest sticks, then each stick the shortest that does, then the longest rest, as
/// [`stock::plan`] has them. A material with a piece longer than every stick is held back, and the others are planned.
///
/// # Example
/// ```
/// use storyrod::{measure::Length, site::Id, takeoff::{Piece, cutting}, trades::Material};
/// let stud = Material::Lumber { thickness: Length::in_64(1, 32), width: Length::in_64(3, 32) };
/// let piece = |number| Piece { material: stud.clone(), length: Length::inches(30), of: Id(1), number };
/// let plan = cutting(&[piece(1), piece(2), piece(3), piece(4)], &Default::default());
/// assert_eq!((plan[0].count(), plan[0].proven), (2, true));
/// ```
#[must_use]
pub fn cutting(pieces: &[Piece], setups: &BTreeMap<Material, Setup>) -> Vec<Cuts> {
    let mut by_material: BTreeMap<&Material, Vec<&Piece>> = BTreeMap::new();
    for piece in pieces {
        by_material.entry(&piece.material).or_default().push(piece);
    }
    let each = by_material.into_iter().map(|(material, pieces)| {
        let setup = setups.get(material).cloned();
        let setup = setup.unwrap_or_else(|| Setup::usual(material));
        cuts(material, &pieces, &setup)
    });
    each.collect()
}

fn cuts(material: &Material, pieces: &[&Piece], setup: &Setup) -> Cuts {
    let sticks = if setup.sticks.is_empty() {
        Setup::usual(material).sticks
    } else {
        setup.sticks.clone()
    };
    let longest = sticks.iter().chain(&setup.offcuts).copied().max();
    let longest = longest.unwrap_or_default();
    let mut cuts = Cuts::none(material);
    let long = pieces.iter().filter(|piece| piece.length > longest);
    cuts.too_long = long.map(|piece| (*piece).clone()).collect();
    if cuts.is_held() {
        return cuts;
    }
    let order = Order {
        pieces: pieces.iter().map(|piece| piece.length).collect(),
        kerf: setup.saw.kerf(),
        sticks: sticks
            .iter()
            .map(|length| Stick {
                length: *length,
                count: None,
                cost: 1,
            })
            .collect(),
        offcuts: setup.offcuts.clone(),
    };
    // Without pieces there is nothing to plan; no other problem is left.
    let Ok(plan) = stock::plan(&order) else {
        return cuts;
    };
    cuts.least = u32::try_from(plan.least).unwrap_or(0);
    cuts.proven = plan.is_proven();
    cuts.longest_rest = plan.longest_rest;
    for cut in plan.cuts {
        let offcut = match cut.from {
            Origin::Offcut(at) => Some(at),
            Origin::Stick(_) | Origin::Missing => None,
        };
        if offcut.is_none() {
            match cuts
                .bought
                .iter_mut()
                .find(|(length, _)| *length == cut.length)
            {
                Some((_, count)) => *count += 1,
                None => cuts.bought.push((cut.length, 1)),
            }
        }
        cuts.bars.push(Bar {
            offcut,
            length: cut.length,
            pieces: cut.pieces.iter().map(|at| pieces[*at].clone()).collect(),
            sawn: cut.sawn,
            rest: cut.rest,
        });
    }
    cuts.bought.sort_unstable();
    cuts
}

/// How the pieces of one material are cut.
pub(super) fn cut(
    material: &Material,
    amounts: &[&Amount],
    setups: &BTreeMap<Material, Setup>,
) -> Cuts {
    let lengths = amounts
        .iter()
        .zip(1..)
        .filter_map(|(amount, number)| match amount {
            Amount::Length(length) if length.is_positive() => Some(Piece {
                material: material.clone(),
                length: *length,
                of: Id::NONE,
                number,
            }),
            _ => None,
        });
    let pieces: Vec<Piece> = lengths.collect();
    let plan = cutting(&pieces, setups).pop();
    plan.unwrap_or_else(|| Cuts::none(material))
}

/// How many of each length on sale.
pub(super) fn to_buy(cuts: &Cuts, sale: &[Pack]) -> Vec<u32> {
    let count = |pack: &Pack| match pack.holds {
        Amount::Length(length) => {
            let bought = cuts.bought.iter().find(|(of, _)| *of == length);
            bought.map_or(0, |(_, count)| *count)
        }
        _ => 0,
    };
    sale.iter().map(count).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stud() -> Material {
        Material::Lumber {
            thickness: Length::in_64(1, 32),
            width: Length::in_64(3, 32),
        }
    }

    fn pieces(inches: &[i64]) -> Vec<Piece> {
        let each = inches.iter().zip(1..).map(|(inches, number)| Piece {
            material: stud(),
            length: Length::inches(*inches),
            of: Id(7),
            number,
        });
        each.collect()
    }

    /// A board of 100 in is in no stick of 8 ft: lumber is held back and names it, pipe is planned all the same.
    #[test]
    fn a_piece_longer_than_every_stick_holds_its_material_back() {
        let mut all = pieces(&[40, 100, 40]);
        let copper = Material::Pipe {
            pipe: crate::handbook::pipe::Pipe::CopperL,
            size: crate::handbook::pipe::Size::Half,
            stick: Length::feet(10),
        };
        all.push(Piece {
            material: copper.clone(),
            ..all[0].clone()
        });
        let plan = cutting(&all, &BTreeMap::new());
        let of = |material: &Material| plan.iter().find(|cuts| cuts.material == *material);
        let lumber = of(&stud()).expect("lumber");
        assert_eq!((lumber.too_long.len(), lumber.too_long[0].number), (1, 2));
        assert!(lumber.is_held() && lumber.bars.is_empty());
        assert_eq!(lumber.count(), 0);
        let pipe = of(&copper).expect("pipe");
        assert_eq!((pipe.is_held(), pipe.count()), (false, 1));
        // Longer boards, or an off-cut that is long enough, let it go.
        let longer = Setup {
            sticks: vec![Length::feet(8), Length::feet(10)],
            ..Setup::usual(&stud())
        };
        let plan = cutting(&pieces(&[40, 100, 40]), &BTreeMap::from([(stud(), longer)]));
        assert!(!plan[0].is_held() && plan[0].count() > 0);
    }

    #[test]
    fn an_offcut_and_the_shorter_stick_are_taken() {
        let setup = Setup {
            sticks: vec![Length::feet(8), Length::feet(12)],
            saw: Saw::Own(Length::in_64(0, 6)),
            offcuts: vec![Length::inches(50)],
        };
        let setups = BTreeMap::from([(stud(), setup)]);
        // 90 and 48 in come from a board and the offcut; by boards alone from one of 12 ft.
        let plan = cutting(&pieces(&[90, 48]), &setups);
        assert_eq!(plan[0].bought, [(Length::feet(12), 1)]);
        assert!(plan[0].bars.iter().all(|bar| bar.offcut.is_none()));
        let plan = cutting(&pieces(&[90, 90, 48, 48]), &setups);
        assert_eq!(plan[0].bought, [(Length::feet(12), 2)]);
        // With one more piece the offcut saves a board, and the one that is left may be shorter.
        let plan = cutting(&pieces(&[90, 90, 48, 48, 48]), &setups);
        assert_eq!(plan[0].count(), 2);
        assert_eq!(plan[0].bars[0].offcut, Some(0));
    }

    #[test]
    fn kerfs_by_saw() {
        let kerfs = [Saw::Cutter, Saw::Hand, Saw::Power].map(Saw::kerf);
        assert_eq!(kerfs, [0, 4, 8].map(|of_64| Length::in_64(0, of_64)));
    }
}
