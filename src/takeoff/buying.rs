//! The buying list: needs of the same material added up, packed once, ticked off.

use std::collections::{BTreeMap, BTreeSet};

use super::cutting::{cut, to_buy};
use super::pieces::{on_a_sheet, sheets};
use super::{Cuts, Left, Pack, Setup, cover, is_cut, packs_on_sale, sticks_on_sale};
use crate::handbook::Cite;
use crate::measure::quantity::{gallons, kilograms, litres};
use crate::measure::{Amount, Figures, Length, Money, Phrase, Rounding, Units};
use crate::site::Id;
use crate::trades::{Compound, Grout, Material, Need, Step, Term};

/// A need, and the figure that it comes from.
#[derive(Clone, Debug)]
pub struct Asked<'a> {
    /// The figure's name.
    pub figure: String,
    /// What it needs.
    pub need: &'a Need,
}

/// Which packs are chosen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Choice {
    /// Least left over, then fewest packs.
    #[default]
    LeastLeftOver,
    /// Cheapest, where every size has its price.
    Cheapest,
}

/// What a person set about buying.
#[derive(Clone, Debug, PartialEq)]
pub struct Buying {
    /// Lines written by hand.
    pub by_hand: Vec<HandLine>,
    /// Lines ticked off.
    pub ticked: BTreeSet<LineKey>,
    /// Packs counted by hand; a line with one of these takes only what is counted.
    pub overrides: BTreeMap<PackKey, u32>,
    /// Prices of packs.
    pub prices: BTreeMap<PackKey, Money>,
    /// The sign of the currency.
    pub symbol: String,
    /// Which packs are chosen.
    pub choice: Choice,
    /// Packs in litres.
    pub metric_packs: bool,
    /// What was set about cutting, by material.
    pub cutting: BTreeMap<Material, Setup>,
    /// What a room left of a material and the others take.
    pub left: BTreeMap<(Material, Id), Left>,
}

impl Buying {
    /// What a material is sold in.
    #[must_use]
    pub fn packs(&self, material: &Material) -> Vec<Pack> {
        if is_cut(material) {
            let setup = self.cutting.get(material).cloned();
            let setup = setup.unwrap_or_else(|| Setup::usual(material));
            return sticks_on_sale(material, &setup.sticks);
        }
        packs_on_sale(material, self.metric_packs)
    }
}

impl Default for Buying {
    fn default() -> Buying {
        Buying {
            by_hand: Vec::new(),
            ticked: BTreeSet::new(),
            overrides: BTreeMap::new(),
            prices: BTreeMap::new(),
            symbol: "$".to_owned(),
            choice: Choice::default(),
            metric_packs: false,
            cutting: BTreeMap::new(),
            left: BTreeMap::new(),
        }
    }
}

/// A line written by hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HandLine {
    /// What it is known by in every copy of the job.
    pub id: Id,
    /// What to get.
    pub text: String,
    /// How many.
    pub count: u32,
    /// What one costs.
    pub price: Option<Money>,
}

/// What makes a line the same line tomorrow.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LineKey {
    /// A material.
    Material(Material),
    /// A line by hand.
    ByHand(Id),
}

/// A pack of a material, for its price and its count.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PackKey {
    /// The material.
    pub material: Material,
    /// What it holds, by which it stays the same pack when others come on sale: see [`Pack::millionths`].
    pub holds: i64,
}

impl PackKey {
    /// A pack of a material.
    #[must_use]
    pub fn new(material: &Material, pack: &Pack) -> PackKey {
        PackKey {
            material: material.clone(),
            holds: pack.millionths(),
        }
    }
}

/// Where in the store it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Shelf {
    /// Board, tape and compound.
    Board,
    /// Screws.
    Fasteners,
    /// Boards of wood.
    Lumber,
    /// Tile.
    Tile,
    /// Primer and paint.
    Paint,
    /// Grout and sealant.
    Grout,
    /// Mortar, and what it is mixed from.
    Mortar,
    /// Pipe and fittings.
    Pipe,
    /// Written by hand.
    Other,
}

impl Shelf {
    /// Its heading.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Shelf::Board => "Board and compound",
            Shelf::Fasteners => "Fasteners",
            Shelf::Lumber => "Lumber",
            Shelf::Tile => "Tile",
            Shelf::Paint => "Paint",
            Shelf::Grout => "Grout and sealant",
            Shelf::Mortar => "Mortar",
            Shelf::Pipe => "Pipe and fittings",
            Shelf::Other => "By hand",
        }
    }
}

/// One line of the list.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What makes it the same line tomorrow.
    pub key: LineKey,
    /// Where in the store it stands.
    pub shelf: Shelf,
    /// What to get.
    pub title: String,
    /// The figures that it is for.
    pub detail: String,
    /// How much is needed.
    pub needed: Amount,
    /// What to buy.
    pub packs: Vec<(Pack, u32)>,
    /// The count is the person's own.
    pub overridden: bool,
    /// What the packs come to.
    pub price: Option<Money>,
    /// Ticked off.
    pub ticked: bool,
    /// What the count of packs does not say.
    pub note: Option<&'static str>,
    /// How the packs were figured.
    pub working: Vec<Step>,
}

/// What the list comes to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Total {
    /// Of the lines that have a price.
    pub price: Option<Money>,
    /// Lines without one.
    pub unpriced: usize,
    /// Lines that are not ticked off.
    pub to_get: usize,
}

/// The buying list: needs of an equal material are added up over all figures, then packed once.
///
/// # Gives
/// Lines by shelf and title, lines by hand last.
#[must_use]
pub fn lines(needs: &[Asked<'_>], buying: &Buying) -> Vec<Line> {
    let mut merged: BTreeMap<&Material, Vec<&Asked<'_>>> = BTreeMap::new();
    for asked in needs {
        merged.entry(&asked.need.material).or_default().push(asked);
    }
    let mut list: Vec<Line> = merged
        .into_iter()
        .map(|(material, asked)| line(material, &asked, buying))
        .collect();
    list.extend(buying.by_hand.iter().map(|hand| {
        let key = LineKey::ByHand(hand.id);
        Line {
            shelf: Shelf::Other,
            title: hand.text.clone(),
            detail: String::new(),
            needed: Amount::Count(i64::from(hand.count)),
            packs: Vec::new(),
            overridden: false,
            price: hand.price.map(|price| price.times(i64::from(hand.count))),
            ticked: buying.ticked.contains(&key),
            note: None,
            working: Vec::new(),
            key,
        }
    }));
    list.sort_by(|a, b| (a.shelf, &a.title).cmp(&(b.shelf, &b.title)));
    list
}

/// What the list comes to.
#[must_use]
pub fn total(lines: &[Line]) -> Total {
    let priced: Vec<Money> = lines.iter().filter_map(|line| line.price).collect();
    Total {
        price: (!priced.is_empty()).then(|| priced.iter().copied().sum()),
        unpriced: lines.len() - priced.len(),
        to_get: lines.iter().filter(|line| !line.ticked).count(),
    }
}

fn line(material: &Material, asked: &[&Asked<'_>], buying: &Buying) -> Line {
    let key = LineKey::Material(material.clone());
    let sale = buying.packs(material);
    let keys: Vec<PackKey> = sale
        .iter()
        .map(|pack| PackKey::new(material, pack))
        .collect();
    let prices: Vec<Option<Money>> = keys
        .iter()
        .map(|key| buying.prices.get(key).copied())
        .collect();
    let amounts: Vec<&Amount> = asked.iter().map(|asked| &asked.need.amount).collect();
    let needed = sum(&amounts);
    let to_get = (number_of(&needed) - buying.on_hand(material)).max(0.0);
    let cuts = is_cut(material).then(|| cut(material, &amounts, &buying.cutting));
    let (counts, cite) = match material {
        Material::Board { .. } => (
            vec![sheets(&amounts)],
            Cite::practice(
                "pieces laid in rows across whole sheets; no more are needed, fewer may do",
            ),
        ),
        Material::Lumber { .. } | Material::Pipe { .. } | Material::Trim { .. } => (
            cuts.as_ref()
                .map_or_else(Vec::new, |cuts| to_buy(cuts, &sale)),
            match &cuts {
                Some(cuts) if !cuts.proven => Cite::computed(
                    "the cutting plan; one stick fewer may do, which was not settled",
                ),
                _ => Cite::computed("the cutting plan: no fewer sticks do"),
            },
        ),
        _ => {
            let sizes: Vec<f64> = sale.iter().map(|pack| number_of(&pack.holds)).collect();
            (
                cover(to_get, &sizes, &prices, buying.choice),
                Cite::computed("fewest packs with the least left over, or the cheapest"),
            )
        }
    };
    let mut packs: Vec<(usize, u32)> = counts
        .into_iter()
        .enumerate()
        .filter(|(_, count)| *count > 0)
        .collect();
    let overridden = keys.iter().any(|key| buying.overrides.contains_key(key));
    if overridden {
        let own = |key: &PackKey| buying.overrides.get(key).copied().unwrap_or(0);
        packs = keys.iter().map(own).enumerate().collect();
        packs.retain(|(_, count)| *count > 0);
    }
    let price = packs
        .iter()
        .map(|(pack, count)| prices[*pack].map(|price| price.times(i64::from(*count))))
        .sum::<Option<Money>>();
    let mut figures: Vec<&str> = asked.iter().map(|asked| asked.figure.as_str()).collect();
    figures.dedup();
    let (shelf, title) = named(material);
    Line {
        shelf,
        title,
        detail: figures.join("; "),
        note: note(material, &amounts, cuts.as_ref()),
        working: working(&amounts, &needed, &packs, cite),
        needed,
        overridden,
        price: price.filter(|_| !packs.is_empty()),
        ticked: buying.ticked.contains(&key),
        packs: packs
            .into_iter()
            .map(|(pack, count)| (sale[pack].clone(), count))
            .collect(),
        key,
    }
}

fn working(amounts: &[&Amount], needed: &Amount, packs: &[(usize, u32)], cite: Cite) -> Vec<Step> {
    let terms = amounts.iter().enumerate().flat_map(|(n, amount)| {
        let plus = (n > 0).then_some(Term::Word("+"));
        plus.into_iter().chain([Term::Figure((*amount).clone())])
    });
    let count: u32 = packs.iter().map(|(_, count)| count).sum();
    vec![
        Step {
            what: Phrase::plain("Needed by all figures"),
            sum: terms.collect(),
            gives: needed.clone(),
            cite: Cite::computed("added up before packs are rounded up"),
        },
        Step {
            what: Phrase::plain("Packs to buy"),
            sum: Vec::new(),
            gives: Amount::Count(i64::from(count)),
            cite,
        },
    ]
}

/// What the count of packs does not say.
fn note(material: &Material, amounts: &[&Amount], cuts: Option<&Cuts>) -> Option<&'static str> {
    let oversize = |amount: &&Amount| match amount {
        Amount::Size(a, b) => !on_a_sheet(*a.min(b), *a.max(b)),
        _ => false,
    };
    match material {
        Material::Board { .. } if amounts.iter().any(oversize) => Some(
            "A piece is larger than a sheet. It is counted by its area; plan where its joint falls, on a stud or on blocking, before you cut.",
        ),
        _ if cuts.is_some_and(Cuts::is_held) => Some(
            "A piece is longer than every stick, so none is counted yet. The cutting plan names it.",
        ),
        Material::Compound(Compound::Setting) => {
            Some("Sold as powder by weight. How much a bag makes stands on the bag.")
        }
        _ => None,
    }
}

/// What a material is called on the list.
#[must_use]
pub fn title(material: &Material) -> String {
    named(material).1
}

/// What a material is called, and where it stands.
fn named(material: &Material) -> (Shelf, String) {
    let inches = |length: Length| {
        Units::FeetInches { marks: 64 }.length(length, Rounding::Nearest, Figures::Set)
    };
    match material {
        Material::Board { thickness } => (
            Shelf::Board,
            format!("Gypsum board, {}", inches(*thickness)),
        ),
        Material::Screws { length } => (
            Shelf::Fasteners,
            format!("Board screws, coarse, {}", inches(*length)),
        ),
        Material::JointTape => (Shelf::Board, "Joint tape".to_owned()),
        Material::Compound(Compound::Drying) => {
            (Shelf::Board, "Joint compound, ready mixed".to_owned())
        }
        Material::Compound(Compound::Setting) => {
            (Shelf::Board, "Joint compound, setting".to_owned())
        }
        Material::AdhesivePatch { side } => (
            Shelf::Board,
            format!("Self-adhesive patch, {}", inches(*side)),
        ),
        Material::Lumber { thickness, width } => (
            Shelf::Lumber,
            format!("Lumber, {} × {}", inches(*thickness), inches(*width)),
        ),
        Material::Tile { long, short, .. } => (
            Shelf::Tile,
            format!("Tile, {} × {}", inches(*long), inches(*short)),
        ),
        Material::MosaicSheet { long, short, .. } => (
            Shelf::Tile,
            format!("Mosaic sheet, {} × {}", inches(*long), inches(*short)),
        ),
        Material::Primer { label } | Material::Paint { label } => (Shelf::Paint, label.clone()),
        Material::Grout { kind, color } => {
            let name = match kind {
                Grout::Unsanded => "Grout, unsanded",
                Grout::Sanded => "Grout, sanded",
                Grout::HeavySand => "Grout, heavier sand",
            };
            (Shelf::Grout, colored(name, color))
        }
        Material::Sealant { color } => (Shelf::Grout, colored("Sealant", color)),
        Material::SettingMortar { large_tile } => {
            let name = if *large_tile {
                "Setting mortar for large and heavy tile"
            } else {
                "Setting mortar"
            };
            (Shelf::Mortar, name.to_owned())
        }
        Material::BedMix => (Shelf::Mortar, "Bed mix, cement and sand".to_owned()),
        Material::Cement => (Shelf::Mortar, "Portland cement".to_owned()),
        Material::Sand => (Shelf::Mortar, "Sand for mortar".to_owned()),
        Material::Lime => (Shelf::Mortar, "Hydrated lime".to_owned()),
        Material::ShieldPlate => (Shelf::Fasteners, "Steel plate over pipe".to_owned()),
        other => super::pipe::named(other)
            .or_else(|| super::sheets::named(other))
            .or_else(|| super::trim::named(other))
            .unwrap_or((Shelf::Other, String::new())),
    }
}

/// A name and its colour, where one was chosen.
fn colored(name: &str, color: &str) -> String {
    if color.is_empty() {
        name.to_owned()
    } else {
        format!("{name}, {color}")
    }
}

/// An amount as a plain number in one unit of its kind.
#[must_use]
pub fn number_of(amount: &Amount) -> f64 {
    match amount {
        Amount::Volume(volume) => volume.value / gallons(1.0).value,
        Amount::Mass(mass) => mass.value,
        Amount::Length(length) => length.metres(),
        Amount::Count(count) => *count as f64,
        Amount::Size(across, up) => across.metres() * up.metres(),
        _ => 0.0,
    }
}

/// Amounts of one kind added up; pieces come to their count.
fn sum(amounts: &[&Amount]) -> Amount {
    match amounts.first() {
        Some(Amount::Volume(_)) => amounts
            .iter()
            .fold(litres(0.0), |all, amount| {
                if let Amount::Volume(v) = amount {
                    all + *v
                } else {
                    all
                }
            })
            .into(),
        Some(Amount::Mass(_)) => amounts
            .iter()
            .fold(kilograms(0.0), |all, amount| {
                if let Amount::Mass(m) = amount {
                    all + *m
                } else {
                    all
                }
            })
            .into(),
        Some(Amount::Length(_)) => amounts
            .iter()
            .map(|amount| {
                if let Amount::Length(l) = amount {
                    *l
                } else {
                    Length::ZERO
                }
            })
            .sum::<Length>()
            .into(),
        Some(Amount::Count(_)) => Amount::Count(
            amounts
                .iter()
                .map(|amount| if let Amount::Count(n) = amount { *n } else { 0 })
                .sum(),
        ),
        _ => Amount::Count(amounts.len() as i64),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::quantity::pounds;

    fn paint(litre: f64) -> Need {
        Need {
            material: Material::Paint {
                label: "Wall paint".into(),
            },
            amount: litres(litre).into(),
            why: Phrase::plain("walls"),
        }
    }

    #[test]
    fn two_figures_that_need_the_same_paint_buy_it_once() {
        let (a, b) = (paint(1.8), paint(1.9));
        let asked = [
            Asked {
                figure: "A".into(),
                need: &a,
            },
            Asked {
                figure: "B".into(),
                need: &b,
            },
        ];
        let list = lines(&asked, &Buying::default());
        assert_eq!(list.len(), 1);
        // 3.7 L is 0.98 gal: one gallon, where two quarts each would have been four.
        assert_eq!(
            list[0]
                .packs
                .iter()
                .map(|(pack, count)| (pack.name.text, *count))
                .collect::<Vec<_>>(),
            [("1 gal", 1)]
        );
        assert_eq!(list[0].detail, "A; B");
    }

    #[test]
    fn a_count_of_ones_own_is_shown_as_such_and_priced() {
        let need = paint(3.0);
        let asked = [Asked {
            figure: "A".into(),
            need: &need,
        }];
        let mut buying = Buying::default();
        let gallon = PackKey::new(&need.material, &packs_on_sale(&need.material, false)[1]);
        buying.overrides.insert(gallon.clone(), 2);
        buying.prices.insert(gallon, Money::minor(4_250));
        let list = lines(&asked, &buying);
        assert!(list[0].overridden);
        assert_eq!(list[0].price, Some(Money::minor(8_500)));
        assert_eq!(total(&list).price, Some(Money::minor(8_500)));
    }

    #[test]
    fn bags_are_bought_once_for_all_figures() {
        let bed = |lb: f64| Need {
            material: Material::SettingMortar { large_tile: false },
            amount: pounds(lb).into(),
            why: Phrase::plain("floor"),
        };
        let (a, b) = (bed(28.0), bed(21.0));
        let asked = [&a, &b].map(|need| Asked {
            figure: "A".into(),
            need,
        });
        let list = lines(&asked, &Buying::default());
        assert_eq!(list.len(), 1);
        assert_eq!(list[0].shelf, Shelf::Mortar);
        let (bag, count) = &list[0].packs[0];
        assert_eq!((bag.name.text, *count), ("50 lb bag", 1));
        // 50 lb are 22.6796185 kg exactly.
        assert_eq!(bag.millionths(), 22_679_619);
        let metric = packs_on_sale(&a.material, true);
        assert_eq!(metric[0].millionths(), 25_000_000);
    }
}
