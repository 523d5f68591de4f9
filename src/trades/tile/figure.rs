//! The figure: a layout, its counts, its cut list, its lines and what the rules say of it.

use std::collections::BTreeMap;

use super::balance::balance;
use super::cuts::{kind, on_tile};
use super::findings::findings;
use super::lay::{field, lay_in};
use super::lines::{Chalk, chalk};
use super::{Ask, BoxOf, CutKind, Layout, Pattern, Piece, Plan, Problem, Start, plan, sheet_size};
use crate::geometry::{Point, narrowest};
use crate::handbook::{Cite, cautions};
use crate::measure::quantity::{Area, in_square_metres};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Account, Material, Need, Order, Step, Term};

/// A shape of which one or more pieces are cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// Its number, on the drawing and in the list, from 1.
    pub number: u32,
    /// Places of its pieces in the layout.
    pub pieces: Vec<usize>,
    /// How it is cut.
    pub kind: CutKind,
    /// How far it reaches along and across its tile.
    pub size: (Length, Length),
    /// How thin it is at its thinnest.
    pub thin: Length,
    /// The lines to cut, each from end to end, from the tile's upper left corner with its long side to the right.
    pub lines: Vec<[(Length, Length); 2]>,
    /// Round cuts, about what is round in the way: the centre, from the same corner, and the radius.
    pub rounds: Vec<((Length, Length), Length)>,
}

/// What a tile layout comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Every tile.
    pub layout: Layout,
    /// Where the pattern starts, from the upper left corner of the field.
    pub from: Point,
    /// Starts that were tried; nothing where it was set by hand.
    pub tried: usize,
    /// Shapes to cut, the most pieces first.
    pub cuts: Vec<Cut>,
    /// Which piece comes out of which tile.
    pub plan: Plan,
    /// Tiles without reuse of off-cuts: one a piece.
    pub without_reuse: usize,
    /// Tiles with reuse: what the plan takes.
    pub with_reuse: usize,
    /// Tiles to have: with reuse where that is chosen, breakage and attic stock on top.
    pub to_buy: usize,
    /// Boxes, and tiles left over in them.
    pub boxes: Option<(u32, u32)>,
    /// The thinnest cut.
    pub narrowest: Option<Length>,
    /// Cuts under half a tile, by place.
    pub small: Vec<usize>,
    /// The surface covered, joints with it.
    pub covered: Area,
    /// Joints as a share of the field.
    pub joints: f64,
    /// The length of every edge that is left open, for sealant.
    pub edges: Length,
    /// Movement joints inside the field: up and down, and across.
    pub movement: (u32, u32),
    /// Where those joints run, each in the joint of tiles that is nearest to an equal part of the field.
    pub soft: Vec<(Point, Point)>,
    /// Lines to chalk.
    pub chalk: Option<Chalk>,
    /// What is done, in this order.
    pub order: Vec<Order>,
    /// Working, findings, cautions, needs.
    pub account: Account,
}

/// A surface in tile: every piece, counted, numbered and planned.
///
/// # Inputs
/// What was asked, within its limits.
/// # Gives
/// The layout by the start that was chosen, and everything that follows from it.
/// # Errors
/// [`Problem`], naming what is wrong and what would be right.
/// # Findings
/// Joint, offset, smallest cut, lippage, flatness, movement joints.
/// # Source
/// Geometry for every count; the rules as their sources are quoted in `handbook::tile`.
/// # Example
/// ```
/// use storyrod::trades::tile::{Ask, figure};
/// let figure = figure(&Ask::default()).unwrap();
/// assert_eq!(figure.without_reuse, 40);
/// ```
pub fn figure(ask: &Ask) -> Result<Figure, Problem> {
    let (layout, from, tried) = started(ask)?;
    let cuts = cuts(ask, &layout);
    let (plan, without_reuse, with_reuse) = match &layout.sheets {
        Some(sheets) => (Plan::default(), sheets.blocks.len(), sheets.count()),
        None => {
            let plan = plan(ask, &layout);
            let with_reuse = layout.whole() + plan.tiles.len();
            (plan, layout.tiles.len(), with_reuse)
        }
    };
    let taken = if ask.reuse { with_reuse } else { without_reuse };
    // 7 % of 300 is 21 and no hair more, as a floating product has it.
    let broken = (taken as f64 * ask.breakage - 1e-6).ceil() as usize;
    let to_buy = taken + broken + ask.attic as usize;
    let field = in_square_metres(layout.covered());
    let joints = (1.0 - in_square_metres(layout.faces()) / field).max(0.0);
    let mut figure = Figure {
        from,
        tried,
        narrowest: cuts.iter().map(|cut| cut.thin).min(),
        small: small(ask, &layout),
        covered: layout.covered(),
        joints,
        edges: super::lay::open(ask)
            .iter()
            .flat_map(crate::geometry::Region::edges)
            .map(|(a, b)| a.distance(b))
            .sum(),
        movement: movement(ask, &layout),
        soft: soft(ask, &layout),
        chalk: chalk(ask, &layout),
        boxes: in_box(ask).map(|n| {
            let boxes = (to_buy as u32).div_ceil(n);
            (boxes, boxes * n - to_buy as u32)
        }),
        cuts,
        plan,
        without_reuse,
        with_reuse,
        to_buy,
        order: Vec::new(),
        account: Account::default(),
        layout,
    };
    figure.order = super::order::order(&figure);
    account(ask, &mut figure, broken);
    Ok(figure)
}

fn started(ask: &Ask) -> Result<(Layout, Point, usize), Problem> {
    let by = |from: Point| -> Result<_, Problem> { Ok((lay_in(ask, &field(ask)?, from), from, 0)) };
    match ask.start {
        Start::Corner if ask.other_hand => {
            let (_, size) = super::lay::box_of(&field(ask)?);
            by(Point::new(size.x, Length::ZERO))
        }
        Start::Corner => by(Point::default()),
        Start::ByHand(from) => by(from),
        Start::Balanced(sight) => {
            let best = balance(ask, sight, false)?;
            Ok((best.layout, best.from, best.tried))
        }
        Start::Fewest => {
            let best = balance(ask, super::Sight::Middle, true)?;
            Ok((best.layout, best.from, best.tried))
        }
    }
}

/// How many tiles a box holds; `None` where boxes are not counted.
fn in_box(ask: &Ask) -> Option<u32> {
    let (long, short, joint) = (
        ask.tile.long.metres(),
        ask.tile.short.metres(),
        ask.joint.metres(),
    );
    let tiles = |area: Area, one: f64| ((in_square_metres(area) / one).round() as u32).max(1);
    let (face, module) = match ask.pattern {
        Pattern::Hexagon => {
            let six = 3f64.sqrt() / 2.0;
            (six * long * long, six * (long + joint).powi(2))
        }
        _ => (long * short, (long + joint) * (short + joint)),
    };
    let on_sheet = (ask.sheet).map_or(1.0, |s| f64::from(s.along) * f64::from(s.rows));
    let (face, module) = (face * on_sheet, module * on_sheet);
    Some(match ask.box_of? {
        BoxOf::Tiles(n) => n,
        BoxOf::Faces(area) => tiles(area, face),
        BoxOf::Laid(area) => tiles(area, module),
    })
}

/// Shapes to cut, numbered; pieces of one shape share a number.
fn cuts(ask: &Ask, layout: &Layout) -> Vec<Cut> {
    let mut shapes: BTreeMap<Vec<(i64, i64)>, Vec<usize>> = BTreeMap::new();
    for (at, laid) in layout.tiles.iter().enumerate() {
        let Piece::Cut(pieces) = &laid.piece else {
            continue;
        };
        let points: Vec<(f64, f64)> = pieces
            .iter()
            .flat_map(|piece| on_tile(laid, piece).rings)
            .flatten()
            .collect();
        let mut key = shape_of(&points, super::cuts::sides(ask, laid), ask.grain);
        key.insert(0, (i64::from(laid.tile.size), pieces.len() as i64));
        shapes.entry(key).or_default().push(at);
    }
    let mut cuts: Vec<Cut> = shapes
        .into_values()
        .map(|at| cut(ask, layout, at))
        .collect();
    cuts.sort_by_key(|cut| (std::cmp::Reverse(cut.pieces.len()), cut.pieces[0]));
    for (number, cut) in (1..).zip(&mut cuts) {
        cut.number = number;
    }
    cuts
}

/// A shape by its corners, whichever way its tile is turned: half round, or a quarter where the tile is square and its
/// face has no direction. To a quarter of a millimetre two pieces are one shape.
fn shape_of(points: &[(f64, f64)], (long, short): (f64, f64), grain: bool) -> Vec<(i64, i64)> {
    let square = (long - short).abs() < 1.0 && !grain;
    let way = |turn: usize, &(x, y): &(f64, f64)| match turn {
        0 => (x, y),
        1 => (long - x, short - y),
        2 => (short - y, x),
        _ => (y, long - x),
    };
    let step = |n: f64| (n / 250_000.0).round() as i64;
    (0..if square { 4 } else { 2 })
        .map(|turn| {
            let turned = points.iter().map(|p| way(turn, p));
            let mut key: Vec<_> = turned.map(|(x, y)| (step(x), step(y))).collect();
            key.sort_unstable();
            key
        })
        .min()
        .unwrap_or_default()
}

fn cut(ask: &Ask, layout: &Layout, pieces: Vec<usize>) -> Cut {
    let laid = &layout.tiles[pieces[0]];
    let Piece::Cut(parts) = &laid.piece else {
        unreachable!("only cut pieces are given");
    };
    let on = on_tile(laid, &parts[0]);
    let nm = |n: f64| Length::nm(n.round() as i64);
    let mut rounds = Vec::new();
    let mut lines = Vec::new();
    let circles = circles(ask);
    for line in on.lines(laid) {
        let round = circles.iter().find_map(|(centre, radius)| {
            let middle = super::cuts::in_frame(laid)(centre);
            let off = |p: (f64, f64)| (p.0 - middle.0).hypot(p.1 - middle.1) - *radius;
            // Chords of 64 lie within a 800th of the circle's radius, and so do those moved out by the gap.
            let on_it = |p| off(p).abs() < radius / 400.0;
            let chord = (line[0].0 - line[1].0).hypot(line[0].1 - line[1].1);
            let is = line.iter().all(|p| on_it(*p)) && chord < radius / 8.0;
            is.then(|| ((nm(middle.0), nm(middle.1)), nm(*radius)))
        });
        match round {
            Some(round) if rounds.contains(&round) => {}
            Some(round) => rounds.push(round),
            None => lines.push(line.map(|(x, y)| (nm(x), nm(y)))),
        }
    }
    Cut {
        number: 0,
        kind: kind(laid),
        size: on.extents(),
        thin: parts.iter().map(narrowest).min().unwrap_or_default(),
        lines,
        rounds,
        pieces,
    }
}

/// What is round in the way, the gap with it: centre and radius in nanometres.
fn circles(ask: &Ask) -> Vec<(Point, f64)> {
    let Some((corner, _)) = ask.surface.bounds() else {
        return Vec::new();
    };
    let round = |thing: &super::Thing| match thing.shape {
        super::ThingShape::Round { across } => Some((
            corner + Point::new(thing.from_left, thing.from_top),
            (across.half() + ask.gap).as_nm() as f64,
        )),
        super::ThingShape::Rectangle { .. } => None,
    };
    ask.things.iter().filter_map(round).collect()
}

/// Pieces that reach less than half of their tile along one of its sides; of tiles at a slant, under half the area.
fn small(ask: &Ask, layout: &Layout) -> Vec<usize> {
    let level = ask.turn.as_microdegrees() % 90_000_000 == 0 && ask.pattern != Pattern::Hexagon;
    let under = |(at, laid): (usize, &super::Laid)| {
        let Piece::Cut(pieces) = &laid.piece else {
            return None;
        };
        let (long, short) = super::cuts::sides(ask, laid);
        let is = if level {
            pieces.iter().any(|piece| {
                let (across, up) = on_tile(laid, piece).extents();
                // A hair is no sliver: 0.1 mm.
                let half = |side: f64| Length::nm((side / 2.0) as i64 - 100_000);
                across < half(long) || up < half(short)
            })
        } else {
            (laid.doubled_area() as f64) < long * short * 0.999
        };
        is.then_some(at)
    };
    layout.tiles.iter().enumerate().filter_map(under).collect()
}

/// Movement joints inside the field, each way: every run is cut into parts no longer than the limit.
fn movement(ask: &Ask, layout: &Layout) -> (u32, u32) {
    use crate::handbook::tile::{MOVEMENT_DRY, MOVEMENT_SUN};
    let limit = match ask.run {
        super::Run::Dry => MOVEMENT_DRY.value,
        super::Run::SunOrWet => MOVEMENT_SUN.value,
    };
    let (_, size) = super::lay::box_of(&layout.parts);
    let joints = |run: Length| {
        let parts = run.as_nm().div_euclid(limit.as_nm())
            + i64::from(run.as_nm().rem_euclid(limit.as_nm()) > 0);
        (parts - 1).max(0) as u32
    };
    (joints(size.x), joints(size.y))
}

/// Movement joints inside the field, from edge to edge of it.
fn soft(ask: &Ask, layout: &Layout) -> Vec<(Point, Point)> {
    let (up, across) = movement(ask, layout);
    let (least, size) = super::lay::box_of(&layout.parts);
    let edge = ask.surface.bounds().map_or(least, |(edge, _)| edge);
    let most = least + size;
    let mut lines = Vec::new();
    for (parts, upright) in [(up, true), (across, false)] {
        let marks = super::running(ask, layout, upright);
        let (start, run) = if upright {
            (least.x - edge.x, size.x)
        } else {
            (least.y - edge.y, size.y)
        };
        for n in 1..=i64::from(parts) {
            let even = start + (run * n).divided(i64::from(parts) + 1);
            // In a pattern without straight joints it is cut where it falls.
            let nearest = marks.iter().min_by_key(|mark| (**mark - even).abs());
            let at = nearest.copied().unwrap_or(even);
            let (from, to) = if upright {
                (
                    Point::new(edge.x + at, least.y),
                    Point::new(edge.x + at, most.y),
                )
            } else {
                (
                    Point::new(least.x, edge.y + at),
                    Point::new(most.x, edge.y + at),
                )
            };
            // Of the line only what lies in the field is a joint.
            let inside = layout.parts.iter().flat_map(|part| part.along(from, to));
            lines.extend(inside);
        }
    }
    lines
}

/// What is bought: tile, or sheets of it.
fn material(ask: &Ask) -> Material {
    let in_box = in_box(ask).unwrap_or(0);
    match ask.sheet {
        Some(sheet) => {
            let (long, short) = sheet_size(ask, sheet);
            Material::MosaicSheet {
                long,
                short,
                in_box,
            }
        }
        None => Material::Tile {
            long: ask.tile.long,
            short: ask.tile.short,
            in_box,
        },
    }
}

fn account(ask: &Ask, figure: &mut Figure, broken: usize) {
    let count = |n: usize| Amount::Count(n as i64);
    let step = |what: &'static str, sum: Vec<Term>, gives: Amount, cite| Step {
        what: Phrase::plain(what),
        sum,
        gives,
        cite,
    };
    let whole = figure.layout.whole();
    let mut account = Account {
        working: vec![
            step(
                "Field, less the gap at its edges",
                vec![],
                figure.covered.into(),
                Cite::computed("the outline moved in by the gap"),
            ),
            step(
                "Tiles that lie whole",
                vec![],
                count(whole),
                Cite::computed(
                    "each tile less what lies outside the field; a piece counts from 1 mm²",
                ),
            ),
            match &figure.layout.sheets {
                Some(sheets) => step(
                    "Sheets, those cut along their joints with them",
                    vec![
                        count(sheets.whole).into(),
                        Term::Word("+"),
                        count(sheets.cut.len()).into(),
                    ],
                    count(sheets.count()),
                    Cite::computed("the largest piece first; fewer may do"),
                ),
                None => step(
                    "Tiles that the cut pieces come out of",
                    vec![
                        count(figure.layout.cut()).into(),
                        Term::Word("pieces out of"),
                    ],
                    count(figure.plan.tiles.len()),
                    Cite::computed(if figure.plan.tiles.len() == figure.plan.at_least {
                        "fewest possible, as every set of pieces that fits on a tile was tried"
                    } else {
                        "the best plan that was found; fewer may do"
                    }),
                ),
            },
            step(
                "Breakage",
                vec![Amount::Share(ask.breakage).into()],
                count(broken),
                Cite::practice("your own allowance; no standard fixes one"),
            ),
            step(
                if ask.sheet.is_some() {
                    "Sheets to have"
                } else {
                    "Tiles to have"
                },
                vec![
                    count(if ask.reuse {
                        figure.with_reuse
                    } else {
                        figure.without_reuse
                    })
                    .into(),
                    Term::Word("+"),
                    count(broken).into(),
                    Term::Word("+"),
                    count(ask.attic as usize).into(),
                ],
                count(figure.to_buy),
                Cite::computed("pieces, breakage, attic stock"),
            ),
            step(
                "Joints, as a share of the field",
                vec![],
                Amount::Share(figure.joints),
                Cite::computed("the field less every face"),
            ),
        ],
        cautions: vec![&cautions::TILE_SILICA, &cautions::HEAVY_BAG],
        ..Account::default()
    };
    if ask.on == super::Surface::Floor {
        account.cautions.push(&cautions::OLD_FLOORING);
    }
    account.needs.push(Need {
        material: material(ask),
        amount: count(figure.to_buy),
        why: "Every piece, breakage and attic stock".into(),
    });
    account.findings = findings(ask, figure);
    figure.account = account;
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Region;
    use crate::trades::tile::{Thing, ThingShape};

    #[test]
    fn a_round_cut_is_told_by_its_centre_and_radius() {
        let ask = Ask {
            things: vec![Thing {
                shape: ThingShape::Round {
                    across: Length::inches(7),
                },
                from_left: Length::inches(24),
                from_top: Length::inches(30),
            }],
            start: Start::Corner,
            ..Ask::default()
        };
        let figure = figure(&ask).unwrap();
        let round: Vec<_> = figure
            .cuts
            .iter()
            .filter(|c| !c.rounds.is_empty())
            .collect();
        // A joint runs 24 3/16 in from the left, and the row runs from 24 1/4 in to 36 1/8: the flange is cut out of two.
        let pieces: usize = round.iter().map(|cut| cut.pieces.len()).sum();
        assert_eq!(pieces, 2);
        let mut found = Vec::new();
        for cut in round {
            let [((x, y), radius)] = cut.rounds[..] else {
                panic!("{:?}", cut.rounds)
            };
            // The gap with it.
            assert_eq!(radius, Length::in_64(3, 48));
            assert!(cut.lines.is_empty(), "{:?}", cut.lines);
            let side = |at: Length| at.min(ask.tile.long - at);
            found.push((side(x).min(side(y)), side(x).max(side(y))));
        }
        // The tiles end 24 1/8 in and begin 24 1/4 in from the left, and begin 24 1/4 in from the top: the centre lies 1/8 in
        // within the one and 1/4 in outside the other, 5 3/4 in down both.
        found.sort_unstable();
        let down = Length::in_64(5, 48);
        let (outside, within) = (-Length::in_64(0, 16), Length::in_64(0, 8));
        assert_eq!(found, [(outside, down), (within, down)]);
    }

    #[test]
    fn a_strip_that_a_hair_would_take_is_named() {
        let named = |extra: i64| {
            let tile = Length::inches(12);
            let ask = Ask {
                surface: Region::rectangle(tile * 5 + Length::nm(extra), tile * 4),
                gap: Length::ZERO,
                joint: Length::ZERO,
                tile: super::super::Tile {
                    long: tile,
                    short: tile,
                    ..super::super::Tile::default()
                },
                start: Start::Corner,
                ..Ask::default()
            };
            let findings = figure(&ask).unwrap().account.findings;
            let hair = findings
                .iter()
                .find(|f| f.says.text.starts_with("By a hair"));
            hair.map(|finding| finding.says.amounts[0].clone())
        };
        assert_eq!(named(0), None);
        assert_eq!(named(200_000), Some(Amount::Count(4)));
        // A tile that lacks as little.
        assert_eq!(named(-200_000), Some(Amount::Count(0)));
        assert_eq!(named(30_000_000), None);
    }

    #[test]
    fn a_movement_joint_runs_in_the_field_alone() {
        let mut surface = Region::rectangle(Length::feet(60), Length::feet(10));
        surface.holes.push(crate::geometry::Polygon {
            points: [(20, 4), (40, 4), (40, 6), (20, 6)]
                .map(|(x, y)| Point::new(Length::feet(x), Length::feet(y)))
                .to_vec(),
        });
        let ask = Ask {
            surface,
            start: Start::Corner,
            ..Ask::default()
        };
        let figure = figure(&ask).unwrap();
        let gap = ask.gap;
        let long: Length = figure.soft.iter().map(|(a, b)| a.distance(*b)).sum();
        let lines = i64::from(figure.movement.0);
        assert!(lines > 0 && figure.movement.1 == 0);
        // Each from wall to wall less two gaps, and those that meet the column less it and two gaps more.
        let (free, met) = (Length::feet(10) - gap * 2, Length::feet(8) - gap * 4);
        let all = (0..=lines).map(|met_by| free * (lines - met_by) + met * met_by);
        let near = |a: Length| (a - long).abs() < Length::nm(100);
        assert!(all.clone().skip(1).any(near), "{long:?}");
    }
}
