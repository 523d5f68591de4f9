//! The best start of a pattern: tried on thousands of starts with rough geometry, then laid exactly.

use super::cuts::facing;
use super::lay::{box_of, field};
use super::pattern::{Frame, domain, module, placed};
use super::{Ask, Hold, Layout, Pattern, Piece, Placed, Problem, Side, Sight, lay::lay_in};
use crate::geometry::{Point, Region};
use crate::measure::{Angle, Length};

/// Starts tried each way over the pattern's own repeat.
const TRIED: i64 = 48;
/// Rounds of halving the step round the best start.
const ROUNDS: u32 = 7;

type P = (f64, f64);

/// A start and what it gives.
#[derive(Clone, Debug, PartialEq)]
pub struct Balance {
    /// Where the pattern's corner lies, from the upper left corner of the field.
    pub from: Point,
    /// The layout there.
    pub layout: Layout,
    /// How many starts were tried.
    pub tried: usize,
}

/// What a start is worth.
#[derive(Clone, Copy, Debug)]
struct Worth {
    /// The thinnest cut as a share of its tile's side, at most a half.
    thin: f64,
    /// How far the pattern is from even about the sight line.
    uneven: f64,
    tiles: usize,
}

impl Worth {
    /// Whether this start is better: by a thousandth of a tile in the thinnest cut, else more even, else fewer tiles.
    fn beats(&self, other: &Worth, fewest: bool) -> bool {
        let key = |w: &Worth| {
            let thin = -(w.thin * 1_000.0).round() as i64;
            let uneven = (w.uneven / 100_000.0).round() as i64;
            if fewest {
                (w.tiles as i64, thin, uneven)
            } else {
                (thin, uneven, w.tiles as i64)
            }
        };
        let (a, b) = (key(self), key(other));
        a < b || (a == b && (self.thin, -self.uneven) > (other.thin, -other.uneven))
    }
}

/// The field in plain numbers, for many quick looks.
struct Quick {
    rings: Vec<Vec<P>>,
    least: Point,
    most: Point,
}

impl Quick {
    fn new(field: &Region) -> Quick {
        let (least, size) = box_of(field);
        let ring = |polygon: &crate::geometry::Polygon| {
            let float = |p: &Point| (p.x.as_nm() as f64, p.y.as_nm() as f64);
            let mut ring: Vec<P> = polygon.points.iter().map(float).collect();
            if !polygon.clockwise() {
                ring.reverse();
            }
            ring
        };
        Quick {
            rings: std::iter::once(&field.outer)
                .chain(&field.holes)
                .map(ring)
                .collect(),
            least,
            most: least + size,
        }
    }

    /// What a start is worth.
    fn worth(&self, ask: &Ask, from: Point, sight: Sight) -> Worth {
        let start = self.least + from;
        let (mut thin, mut tiles) = (0.5f64, 0);
        let level = ask.turn.as_microdegrees() % 90_000_000 == 0;
        for tile in placed(ask, start, self.least, self.most) {
            if let Some(share) = self.look(ask, &tile, level) {
                tiles += 1;
                thin = thin.min(share);
            }
        }
        Worth {
            thin,
            uneven: self.uneven(ask, start, sight),
            tiles,
        }
    }

    /// How thin the piece of a tile is, as a share of its side; one for a whole tile, `None` for no piece.
    fn look(&self, ask: &Ask, tile: &Placed, level: bool) -> Option<f64> {
        let points = tile.points();
        let mut corners = [(0.0, 0.0); 6];
        for (corner, p) in corners.iter_mut().zip(points) {
            *corner = (p.x.as_nm() as f64, p.y.as_nm() as f64);
        }
        let corners = &corners[..points.len()];
        let bounds = bounds(corners);
        let near = |ring: &Vec<P>| {
            (0..ring.len()).any(|at| touches(bounds, ring[at], ring[(at + 1) % ring.len()]))
        };
        let (outer, holes) = self.rings.split_first()?;
        if !self.rings.iter().any(near) {
            let inside = holds(outer, corners[0]) && !holes.iter().any(|h| holds(h, corners[0]));
            return inside.then_some(1.0);
        }
        let whole = doubled(corners).abs();
        let piece = clipped(outer, corners);
        let mut left = doubled(&piece).abs();
        let mut rings = vec![piece];
        for hole in holes.iter().filter(|hole| near(hole)) {
            let part = clipped(hole, corners);
            let taken = doubled(&part).abs();
            if taken > 1.0 {
                left -= taken;
                rings.push(part);
            }
        }
        if left < 2e12 {
            return None;
        }
        if whole - left < 2e12 {
            return Some(1.0);
        }
        Some(thinness(ask, tile, &rings, level))
    }

    /// How far the sight line is from the middle of a tile or of a joint.
    fn uneven(&self, ask: &Ask, start: Point, sight: Sight) -> f64 {
        let middle = Point::new(
            self.least.x + (self.most.x - self.least.x).half(),
            self.least.y + (self.most.y - self.least.y).half(),
        );
        let (along, across) = module(ask);
        let frame = Frame::new(ask.turn, start);
        let off = |p: Point, rows: bool| {
            let (u, v) = frame.back(p);
            let half = ask.joint.as_nm() as f64 / 2.0;
            let (value, step) = if rows {
                (v + half, across.as_nm() as f64 / 2.0)
            } else {
                (u + half, along.as_nm() as f64 / 2.0)
            };
            let rest = value.rem_euclid(step);
            rest.min(step - rest)
        };
        // At a quarter turn the rows run the other way.
        let turned = ask.turn.as_microdegrees().rem_euclid(180_000_000) == 90_000_000;
        match sight {
            Sight::Middle => off(middle, false) + off(middle, true),
            Sight::Across(x) => off(Point::new(self.least.x + x, middle.y), turned),
            Sight::Along(y) => off(Point::new(middle.x, self.least.y + y), !turned),
        }
    }
}

fn bounds(points: &[P]) -> [f64; 4] {
    points.iter().fold(
        [
            f64::INFINITY,
            f64::INFINITY,
            f64::NEG_INFINITY,
            f64::NEG_INFINITY,
        ],
        |b, p| [b[0].min(p.0), b[1].min(p.1), b[2].max(p.0), b[3].max(p.1)],
    )
}

fn touches(b: [f64; 4], p: P, q: P) -> bool {
    p.0.min(q.0) <= b[2] && p.0.max(q.0) >= b[0] && p.1.min(q.1) <= b[3] && p.1.max(q.1) >= b[1]
}

fn doubled(points: &[P]) -> f64 {
    let Some(&(ox, oy)) = points.first() else {
        return 0.0;
    };
    points
        .windows(2)
        .map(|w| (w[0].0 - ox) * (w[1].1 - oy) - (w[1].0 - ox) * (w[0].1 - oy))
        .sum()
}

fn holds(ring: &[P], p: P) -> bool {
    let mut inside = false;
    for at in 0..ring.len() {
        let (a, b) = (ring[at], ring[(at + 1) % ring.len()]);
        if (a.1 > p.1) != (b.1 > p.1) {
            let x = a.0 + (p.1 - a.1) / (b.1 - a.1) * (b.0 - a.0);
            inside ^= p.0 < x;
        }
    }
    inside
}

/// A ring less everything outside a convex tile, edge by edge; parts of it may hang together by edges of no width.
fn clipped(ring: &[P], tile: &[P]) -> Vec<P> {
    let way = doubled(tile).signum();
    let mut rest = ring.to_vec();
    let mut next = Vec::with_capacity(rest.len() + 4);
    for at in 0..tile.len() {
        let (a, b) = (tile[at], tile[(at + 1) % tile.len()]);
        let side = |p: P| ((b.0 - a.0) * (p.1 - a.1) - (b.1 - a.1) * (p.0 - a.0)) * way;
        next.clear();
        for i in 0..rest.len() {
            let (p, q) = (rest[i], rest[(i + 1) % rest.len()]);
            let (sp, sq) = (side(p), side(q));
            if sp >= 0.0 {
                next.push(p);
            }
            if (sp > 0.0 && sq < 0.0) || (sp < 0.0 && sq > 0.0) {
                let t = sp / (sp - sq);
                next.push((p.0 + (q.0 - p.0) * t, p.1 + (q.1 - p.1) * t));
            }
        }
        std::mem::swap(&mut rest, &mut next);
        if rest.is_empty() {
            break;
        }
    }
    rest
}

/// How thin a piece is, as a share of its tile's side.
fn thinness(ask: &Ask, tile: &Placed, rings: &[Vec<P>], level: bool) -> f64 {
    let side = |length: Length| length.as_nm() as f64;
    let (mut long, mut short) = match ask.pattern {
        Pattern::TwoSquares { small } if tile.size == 1 => (side(small), side(small)),
        Pattern::TwoSquares { .. } => (side(ask.tile.long), side(ask.tile.long)),
        _ => (side(ask.tile.long), side(ask.tile.short)),
    };
    let least = long.min(short);
    let square_to_walls = level && tile.points().len() == 4;
    if !square_to_walls {
        return (super::cuts::hull_width(&rings[0]).min(facing(rings)) / least).min(1.0);
    }
    let sideways = ask.turn.as_microdegrees().rem_euclid(180_000_000) == 90_000_000;
    if sideways != tile.upright {
        std::mem::swap(&mut long, &mut short);
    }
    let b = bounds(&rings[0]);
    let share = ((b[2] - b[0]) / long).min((b[3] - b[1]) / short);
    let rectangle = 2.0 * (b[2] - b[0]) * (b[3] - b[1]);
    if rings.len() == 1 && rectangle - doubled(&rings[0]).abs() < 2e12 {
        return share;
    }
    share.min(super::cuts::hull_width(&rings[0]).min(facing(rings)) / least)
}

/// The best start by the ask's own wish.
///
/// The narrowest cut is made as wide as it can be, though no wider than half a tile counts; then the pattern is even
/// about the sight line; then it takes fewest tiles. [`super::Start::Fewest`] asks for the last first.
///
/// # Inputs
/// An ask whose figures are within their limits.
/// # Gives
/// The start, and the exact layout there.
/// # Errors
/// [`Problem`], naming what is wrong.
/// # Source
/// ANSI A108.02: centre and balance where possible, no cut under half a tile; a search of our own.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::tile::{Ask, Sight, balance}};
/// let ask = Ask::default();
/// let best = balance(&ask, Sight::Middle, false).unwrap();
/// // Side cuts of 11 11/16 in all round, where the corner start leaves 11 1/2 in on two sides.
/// assert_eq!((best.layout.whole(), best.layout.cut()), (18, 22));
/// ```
pub fn balance(ask: &Ask, sight: Sight, fewest: bool) -> Result<Balance, Problem> {
    let field = field(ask)?;
    let quick = Quick::new(&field);
    let (along, across) = domain(ask);
    let frame = Frame::new(ask.turn, Point::default());
    let out = |u: i64, v: i64| held(ask, &field, frame.out(u, v));
    let mut starts: Vec<(i64, i64)> = Vec::new();
    for i in 0..TRIED {
        for j in 0..TRIED {
            starts.push((along.as_nm() * i / TRIED, across.as_nm() * j / TRIED));
        }
    }
    starts.extend(even_starts(ask, &field));
    let tried = starts.len();
    let mut best: Option<(Worth, (i64, i64))> = None;
    let mut consider = |(u, v): (i64, i64)| {
        let worth = quick.worth(ask, out(u, v), sight);
        if best.as_ref().is_none_or(|(b, _)| worth.beats(b, fewest)) {
            best = Some((worth, (u, v)));
        }
    };
    for start in starts {
        consider(start);
    }
    let mut step = (along.as_nm() / TRIED, across.as_nm() / TRIED);
    for _ in 0..ROUNDS {
        step = (step.0 / 2, step.1 / 2);
        let Some((_, (u, v))) = best else { break };
        for (du, dv) in [
            (-1, 0),
            (1, 0),
            (0, -1),
            (0, 1),
            (-1, -1),
            (1, 1),
            (-1, 1),
            (1, -1),
        ] {
            let start = (u + du * step.0, v + dv * step.1);
            let worth = quick.worth(ask, out(start.0, start.1), sight);
            if best.as_ref().is_none_or(|(b, _)| worth.beats(b, fewest)) {
                best = Some((worth, start));
            }
        }
    }
    let from = best.map_or_else(Point::default, |(_, (u, v))| out(u, v));
    let found = |from: Point| Balance {
        layout: lay_in(ask, &field, from),
        from,
        tried,
    };
    let best = found(from);
    if fewest {
        return Ok(best);
    }
    // The quick looks are rough where a tile comes in several pieces: the corner is the start to beat, exactly.
    let corner = found(out(0, 0));
    let better = thinnest(ask, &corner.layout) > thinnest(ask, &best.layout) + 0.001;
    Ok(if better { corner } else { best })
}

/// The thinnest cut of a layout as a share of its tile's side, at most a half.
fn thinnest(ask: &Ask, layout: &Layout) -> f64 {
    let level = ask.turn.as_microdegrees() % 90_000_000 == 0;
    let float = |p: &Point| (p.x.as_nm() as f64, p.y.as_nm() as f64);
    let mut least = 0.5f64;
    for laid in &layout.tiles {
        let Piece::Cut(pieces) = &laid.piece else {
            continue;
        };
        for piece in pieces {
            let rings: Vec<Vec<P>> = std::iter::once(&piece.outer)
                .chain(&piece.holes)
                .map(|ring| ring.points.iter().map(float).collect())
                .collect();
            least = least.min(thinness(ask, &laid.tile, &rings, level));
        }
    }
    least
}

/// A start moved so that it keeps to what is held; nothing is held in a pattern that lies at a slant.
fn held(ask: &Ask, field: &Region, from: Point) -> Point {
    let Some(hold) = ask
        .hold
        .filter(|_| ask.turn.as_microdegrees() % 90_000_000 == 0)
    else {
        return from;
    };
    let (least, size) = box_of(field);
    let edge = ask.surface.bounds().map_or(least, |(edge, _)| edge);
    // Where a tile lies about its corner, once it is turned.
    let far =
        Frame::new(ask.turn, Point::default()).out(ask.tile.long.as_nm(), ask.tile.short.as_nm());
    let none = Length::ZERO;
    let (left, top) = (far.x.min(none), far.y.min(none));
    let (wide, high) = (far.x.abs(), far.y.abs());
    let half = ask.joint.half();
    match hold {
        Hold::Whole(Side::Left) => Point::new(-left, from.y),
        Hold::Whole(Side::Right) => Point::new(size.x - wide - left, from.y),
        Hold::Whole(Side::Top) => Point::new(from.x, -top),
        Hold::Whole(Side::Bottom) => Point::new(from.x, size.y - high - top),
        Hold::JointFromLeft(x) => Point::new(edge.x + x - least.x + half - left, from.y),
        Hold::JointFromTop(y) => Point::new(from.x, edge.y + y - least.y + half - top),
    }
}

/// Starts with a tile or a joint on the middle, or a whole tile at an edge, both ways.
fn even_starts(ask: &Ask, field: &Region) -> Vec<(i64, i64)> {
    let (_, size) = box_of(field);
    let (along, across) = module(ask);
    let turned = ask.turn.as_microdegrees().rem_euclid(180_000_000) == 90_000_000;
    let (wide, high) = if turned {
        (size.y, size.x)
    } else {
        (size.x, size.y)
    };
    if ask.turn.as_microdegrees() % 90_000_000 != 0 {
        // About the middle of the field: a corner of the pattern there, or the middle of a tile.
        let frame = Frame::new(
            Angle::microdegrees(-ask.turn.as_microdegrees()),
            Point::default(),
        );
        let middle = frame.out(size.x.half().as_nm(), size.y.half().as_nm());
        let (u, v) = (middle.x.as_nm(), middle.y.as_nm());
        let (a, b) = (ask.tile.long.half().as_nm(), ask.tile.short.half().as_nm());
        return vec![(u, v), (u - a, v - b)];
    }
    let at = |length: Length, tile: Length, module: Length| {
        let middle = length.half();
        [
            Length::ZERO,
            middle - tile.half(),
            middle + ask.joint.half(),
            length - tile,
        ]
        .map(|start| start.as_nm().rem_euclid(module.as_nm().max(1)))
    };
    let us = at(wide, ask.tile.long, along);
    let vs = at(high, ask.tile.short, across);
    us.iter()
        .flat_map(|u| vs.iter().map(|v| (*u, *v)))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Polygon;
    use crate::trades::tile::{Tile, narrowest};

    /// The thinnest cut of a start by the measure that is shown.
    fn thinnest_from(ask: &Ask, from: Point) -> f64 {
        let layout = super::super::lay(ask, from).unwrap();
        let cuts = layout.tiles.iter().filter_map(|laid| match &laid.piece {
            Piece::Whole => None,
            Piece::Cut(pieces) => pieces.iter().map(narrowest).min(),
        });
        let least = cuts.min().unwrap_or(ask.tile.short);
        (least.metres() / ask.tile.short.metres()).min(0.5)
    }

    #[test]
    fn the_search_is_no_worse_than_every_start_of_a_fine_grid() {
        let room = |points: &[(i64, i64)]| Region {
            outer: Polygon {
                points: (points.iter())
                    .map(|(x, y)| Point::new(Length::mm(*x), Length::mm(*y)))
                    .collect(),
            },
            holes: Vec::new(),
        };
        let rooms = [
            room(&[(0, 0), (1_370, 0), (1_370, 930), (0, 930)]),
            room(&[
                (0, 0),
                (1_500, 0),
                (1_500, 700),
                (900, 700),
                (900, 1_150),
                (0, 1_150),
            ]),
            room(&[
                (0, 0),
                (1_200, 0),
                (1_200, 400),
                (700, 400),
                (700, 800),
                (1_200, 800),
                (1_200, 1_200),
                (0, 1_200),
            ]),
        ];
        for (n, surface) in rooms.into_iter().enumerate() {
            let ask = Ask {
                surface,
                gap: Length::mm(5),
                joint: Length::mm(3),
                tile: Tile {
                    long: Length::mm(297),
                    short: Length::mm(297),
                    ..Tile::default()
                },
                ..Ask::default()
            };
            let best = balance(&ask, Sight::Middle, false).unwrap();
            let found = thinnest_from(&ask, best.from);
            for i in 0..60 {
                for j in 0..60 {
                    let from = Point::new(Length::mm(i * 5), Length::mm(j * 5));
                    let brute = thinnest_from(&ask, from);
                    assert!(
                        found >= brute - 0.002,
                        "room {n}: {found} against {brute} at {from:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn what_is_held_is_kept_to_whatever_is_balanced() {
        let gap = Length::in_64(0, 16);
        for turn in [0, 90] {
            for side in [Side::Left, Side::Right, Side::Top, Side::Bottom] {
                let ask = Ask {
                    hold: Some(Hold::Whole(side)),
                    turn: Angle::degrees(turn),
                    ..Ask::default()
                };
                let best = balance(&ask, Sight::Middle, false).unwrap();
                // Whole tiles touch the gap at that edge.
                let (least, most) = ask.surface.bounds().unwrap();
                let touches = |p: &Point| match side {
                    Side::Left => p.x == least.x + gap,
                    Side::Right => p.x == most.x - gap,
                    Side::Top => p.y == least.y + gap,
                    Side::Bottom => p.y == most.y - gap,
                };
                let whole = best.layout.tiles.iter().filter(|laid| {
                    laid.piece == Piece::Whole && laid.tile.points().iter().any(touches)
                });
                assert!(whole.count() >= 3, "{turn} {side:?}");
            }
        }
        let ask = Ask {
            hold: Some(Hold::JointFromLeft(Length::inches(30))),
            ..Ask::default()
        };
        let best = balance(&ask, Sight::Middle, false).unwrap();
        let marks = crate::trades::tile::running(&ask, &best.layout, true);
        assert!(marks.contains(&Length::inches(30)), "{marks:?}");
    }
}
