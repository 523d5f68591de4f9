//! The figure: every piece of the run, and what goes with it.

use std::collections::BTreeMap;

use super::ask::{Ask, By, Place, Way};
use super::close::{Last, Swing, closes, cuts, last, swing};
use super::cut::{LegCut, seated};
use super::fitting::Shape;
use super::hangers::{Hanger, hangers};
use super::joints::{
    Item, SolderNeed, cement_for, growth, items, joints, longest_cure, solder_for,
};
use super::lines::longer;
use super::offset::{Offset, offset};
use super::order::order;
use super::problem::Problem;
use super::template::{STATIONS, Template, template};
use super::walk::{along, walk};
use super::{findings, limits, needs, working};
use crate::handbook::pipe::{Cure, Family, Pipe, Size, tube};
use crate::measure::Length;
use crate::measure::quantity::Volume;
use crate::trades::{Account, Order};

/// One length of pipe to cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// Its number, from 1, on the drawing and in the list.
    pub number: u32,
    /// Its leg, from 0.
    pub leg: usize,
    /// Its line, from 0, where several run side by side.
    pub line: u32,
    /// What it is cut from.
    pub pipe: Pipe,
    /// Its size.
    pub size: Size,
    /// How long it is cut, exactly.
    pub cut: Length,
    /// How far each end goes into its hub: where the depth line is struck; `None` at an open end.
    pub marks: [Option<Length>; 2],
}

/// What a run comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Every piece, in the order of the run.
    pub pieces: Vec<Piece>,
    /// The pipe of each leg.
    pub legs: Vec<LegCut>,
    /// Where its fittings are, from the start; as far as they are known.
    pub places: Vec<Option<Place>>,
    /// How far its end is off from where it has to come, where that was said.
    pub off: Option<Place>,
    /// How far the end may move.
    pub swing: Swing,
    /// Legs to cut last and long.
    pub last: Vec<Last>,
    /// Offsets by the set, with their legs.
    pub offsets: Vec<(usize, Offset)>,
    /// Pipe by size, nothing lost to the saw.
    pub totals: Vec<(Size, Length)>,
    /// Fittings by kind, that at the start left out.
    pub fittings: Vec<(Item, u32)>,
    /// Joints by size.
    pub joints: Vec<(Size, u32)>,
    /// Solder and flux.
    pub solder: Option<SolderNeed>,
    /// Cement and primer.
    pub cement: Option<(Volume, Volume)>,
    /// The wait before a test of cemented joints.
    pub cure: Option<Cure>,
    /// Hangers, of all lines.
    pub hangers: Option<u32>,
    /// Where they hold the run itself, in its order; the lines beside it take as many.
    pub held_at: Vec<Hanger>,
    /// By how much its longest straight way grows.
    pub grows: Option<Length>,
    /// A strip to mark its largest pipe by.
    pub template: Option<Template>,
    /// What is done, in this order.
    pub order: Vec<Order>,
    /// Pieces fitted dry, of how many.
    pub dry: (usize, usize),
    /// Working, findings, cautions, needs.
    pub account: Account,
}

impl Figure {
    /// Every piece was fitted dry, so that joints may be made.
    #[must_use]
    pub fn fits(&self) -> bool {
        self.dry.0 == self.dry.1
    }
}

/// The openings of all fittings of a run with their legs, each once: what is known, or has to be measured.
///
/// # Errors
/// A [`Problem`] where the ways of the run do not fit together.
/// # Source
/// Follows from the run.
/// # Example
/// ```
/// use storyrod::trades::pipe::{Ask, Problem, openings};
/// assert_eq!(openings(&Ask::default()), Err(Problem::NoLegs));
/// ```
pub fn openings(ask: &Ask) -> Result<Vec<(usize, Shape)>, Problem> {
    limits::checked(ask)?;
    let walk = walk(ask)?;
    let mut found: Vec<(usize, Shape)> = Vec::new();
    for leg in 0..ask.legs.len() {
        let coupling = super::cut::Between::of(ask, &walk, leg).coupling;
        let ends = walk.ends(leg).into_iter().flatten();
        for shape in ends.chain(coupling.map(|known| known.shape)) {
            if found.iter().all(|(_, other)| *other != shape) {
                found.push((leg, shape));
            }
        }
    }
    Ok(found)
}

/// A run of pipe, every piece cut once: `cut = what the tape said − take-off of each centre + depth behind each face`.
///
/// A shoulder or the pipe's own end adds nothing, a wall what goes on beyond it; the stops of couplings come off.
///
/// # Inputs
/// [`Ask`]: within [`limits`].
/// # Gives
/// Pieces in the order of the run, exact to the nanometre; only what is printed is rounded.
/// # Errors
/// Each [`Problem`] names its leg: a fitting not measured, a leg shorter than its fittings, a size without a reducer, a
/// turn that no fitting makes, a run that does not close, a piece longer than a stick.
/// # Findings
/// The leg to cut last and long, a thread's two turns, a measurement that can hardly be
/// right, a pipe beyond the cutter's jaw.
/// # Source
/// Army plumbing course and textbooks (identities); take-offs as measured, else as printed for that fitting.
/// # Example
/// ```
/// use storyrod::handbook::pipe::{Kind, Pipe, Size};
/// use storyrod::measure::Length;
/// use storyrod::trades::pipe::{Ask, By, Direction, Fitting, Leg, Mark, Way, figure};
/// let tee = Some(Fitting::of(Kind::SanitaryTee));
/// let leg = Leg {
///     way: Way::Along(Direction::Up), size: None, couplings: 0, end: tee,
///     by: By::Tape { length: Length::inches(54), from: Mark::Face, to: Mark::Face },
/// };
/// let drain = Ask { pipe: Pipe::PvcDrain, size: Size::Two, start: tee, legs: vec![leg], ..Ask::default() };
/// // 4′ 6″ from face to face, and 3/4 in into each hub.
/// assert_eq!(figure(&drain).unwrap().pieces[0].cut, Length::in_64(55, 32));
/// ```
pub fn figure(ask: &Ask) -> Result<Figure, Problem> {
    limits::checked(ask)?;
    let walk = walk(ask)?;
    let (legs, end) = cuts(ask, &walk)?;
    let swing = swing(ask, &walk, &legs);
    let off = closes(ask, &walk, &legs, end, swing)?;
    let lines = ask.lines.map_or(1, |lines| lines.count);
    let longer = longer(ask, &walk)?;
    for (leg, cut) in legs.iter().enumerate() {
        seated(ask, leg, cut, -longer[leg] * i64::from(lines - 1))?;
    }
    let pieces = pieces(ask, &legs, &longer, lines);
    in_a_stick(ask, &pieces)?;
    let joints = joints(ask, &walk, lines);
    let family = ask.pipe.family();
    let largest = (0..legs.len()).map(|leg| ask.size_of(leg)).max();
    let largest = largest.unwrap_or(ask.size);
    let mut at = Some(Place::default());
    let mut places = vec![at];
    for (cut, heading) in legs.iter().zip(&walk.headings) {
        at = at
            .zip(cut.span)
            .map(|(at, span)| at.plus(along(span, *heading)));
        places.push(at);
    }
    let held_at = hangers(ask, &walk, &legs);
    let longest = legs.iter().filter_map(|leg| leg.span.or(leg.cut)).max();
    let outside = tube(ask.pipe, largest).map(|tube| tube.outside.value);
    let fitted = pieces
        .iter()
        .filter(|piece| ask.fitted.contains(&piece.number));
    let mut figure = Figure {
        dry: (fitted.count(), pieces.len()),
        totals: totals(&pieces),
        fittings: items(ask, &walk, lines),
        solder: (family == Family::Copper)
            .then(|| solder_for(&joints))
            .flatten(),
        cement: family.cemented().then(|| cement_for(&joints)).flatten(),
        cure: family
            .cemented()
            .then(|| longest_cure(largest, ask.air, ask.damp))
            .flatten(),
        hangers: held_at.as_ref().map(|held| held.len() as u32 * lines),
        held_at: held_at.unwrap_or_default(),
        grows: ask
            .warms
            .zip(longest)
            .and_then(|(warms, longest)| growth(ask.pipe, longest, warms)),
        template: outside.and_then(|outside| template(outside, ask.mitre, STATIONS)),
        last: last(ask, &walk, &legs),
        offsets: offsets(ask),
        order: Vec::new(),
        account: Account::default(),
        pieces,
        joints,
        places,
        legs,
        off,
        swing,
    };
    figure.order = order(ask, &figure);
    figure.account = Account {
        working: working::working(ask, &figure),
        findings: findings::findings(ask, &figure),
        cautions: findings::cautions(ask),
        needs: needs::needs(ask, &figure),
    };
    Ok(figure)
}

/// Pieces line by line, a leg with couplings in equal parts.
fn pieces(ask: &Ask, legs: &[LegCut], longer: &[Length], lines: u32) -> Vec<Piece> {
    let mut found = Vec::new();
    for line in 0..lines {
        for (leg, one) in legs.iter().enumerate() {
            let Some(cut) = one.cut else {
                continue;
            };
            let all = cut + longer[leg] * i64::from(line);
            let parts = i64::from(ask.legs[leg].couplings) + 1;
            let part = all.divided(parts);
            let seat = |end: usize| one.ends[end].and_then(|known| known.depth);
            let coupling = (one.seats
                - seat(0).map_or(Length::ZERO, |depth| depth.value)
                - seat(1).map_or(Length::ZERO, |depth| depth.value))
            .divided(2 * (parts - 1).max(1));
            for at in 0..parts {
                let first = at == 0;
                let rest = at == parts - 1;
                let mark = |end: usize, outer: bool| {
                    if outer {
                        seat(end).map(|depth| depth.value)
                    } else {
                        Some(coupling)
                    }
                };
                found.push(Piece {
                    number: found.len() as u32 + 1,
                    leg,
                    line,
                    pipe: ask.pipe,
                    size: ask.size_of(leg),
                    cut: if rest { all - part * (parts - 1) } else { part },
                    marks: [mark(0, first), mark(1, rest)],
                });
            }
        }
    }
    found
}

/// Every piece comes out of one stick.
fn in_a_stick(ask: &Ask, pieces: &[Piece]) -> Result<(), Problem> {
    let Some(long) = pieces.iter().find(|piece| piece.cut > ask.stick) else {
        return Ok(());
    };
    // The longest of that leg, line by line; with a coupling more it is parted once more.
    let of_leg = pieces.iter().filter(|piece| piece.leg == long.leg);
    let is = of_leg.map(|piece| piece.cut).max().unwrap_or(long.cut);
    let parts = i64::from(ask.legs[long.leg].couplings) + 1;
    let all = is.as_nm() * parts;
    let stick = ask.stick.as_nm().max(1);
    Err(Problem::LongerThanStick {
        leg: long.leg,
        size: long.size,
        is,
        stick: ask.stick,
        couplings: ((all + stick - 1) / stick - 1) as u32,
    })
}

fn totals(pieces: &[Piece]) -> Vec<(Size, Length)> {
    let mut found: BTreeMap<Size, Length> = BTreeMap::new();
    for piece in pieces {
        *found.entry(piece.size).or_default() += piece.cut;
    }
    found.into_iter().collect()
}

fn offsets(ask: &Ask) -> Vec<(usize, Offset)> {
    let legs = ask.legs.iter().enumerate();
    legs.filter_map(|(leg, one)| match (one.by, one.way) {
        (
            By::Set,
            Way::Offset {
                set, over, angle, ..
            },
        ) => {
            let roll = over.map_or(Length::ZERO, |(_, roll)| roll);
            Some((leg, offset(set, roll, angle)?))
        }
        _ => None,
    })
    .collect()
}
