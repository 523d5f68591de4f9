//! The best start of a pattern: thousands of starts, each cut exactly, and left as soon as a better one is known.

use super::lay::{box_of, field};
use super::pattern::{Frame, domain, module, placed};
use super::{Ask, Hold, Layout, Pattern, Placed, Problem, Side, Sight, lay::lay_in};
use crate::geometry::hull::{facing, hull_width};
use crate::geometry::{Clip, Inside, Point, Polygon, Region};
use crate::measure::Length;

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

    /// Whether this start is better than one of which not every tile is known.
    fn surely_beats(&self, other: &Worth, fewest: bool) -> bool {
        let thin = |w: &Worth| (w.thin * 1_000.0).round() as i64;
        if fewest {
            self.tiles < other.tiles
        } else {
            thin(self) > thin(other)
        }
    }
}

/// A tile that an edge of the field may come into at some start, and its box.
struct Band {
    tile: Placed,
    least: Point,
    most: Point,
}

/// What is looked at for every start.
struct Search<'a> {
    ask: &'a Ask,
    sight: Sight,
    fewest: bool,
    clip: Clip,
    least: Point,
    most: Point,
    level: bool,
    /// Tiles at the edges, those that ruled a start out last in front.
    band: Vec<Band>,
    /// How many lie whole at every start.
    whole: usize,
    /// The starts, along and across, that these hold for.
    reach: (i64, i64),
    best: Option<(Worth, (i64, i64))>,
}

impl<'a> Search<'a> {
    fn new(ask: &'a Ask, field: &[Region], sight: Sight, fewest: bool) -> Search<'a> {
        let (least, size) = box_of(field);
        let (along, across) = domain(ask);
        let mut search = Search {
            ask,
            sight,
            fewest,
            clip: Clip::new(field),
            least,
            most: least + size,
            level: ask.turn.as_microdegrees() % 90_000_000 == 0,
            band: Vec::new(),
            whole: 0,
            reach: (along.as_nm(), across.as_nm()),
            best: None,
        };
        // A tile moves with the start, all its corners by as much: it is placed once, and where no edge can come near it
        // is settled once.
        let frame = Frame::of(ask, Point::default());
        let (u, v) = search.reach;
        let ends = [(0, 0), (u, 0), (0, v), (u, v)].map(|(u, v)| frame.out(u, v));
        let Some((low, high)) = (Polygon {
            points: ends.to_vec(),
        })
        .bounds() else {
            return search;
        };
        for tile in placed(ask, least, least - high, search.most - low) {
            let Some((from, to)) = (Polygon {
                points: tile.points().to_vec(),
            })
            .bounds() else {
                continue;
            };
            match search.clip.clear(from + low, to + high) {
                Some(true) => search.whole += 1,
                Some(false) => {}
                None => search.band.push(Band {
                    tile,
                    least: from,
                    most: to,
                }),
            }
        }
        search
    }

    /// Tries a start: it is the best where it beats the best.
    fn consider(&mut self, (u, v): (i64, i64)) {
        let by = Frame::of(self.ask, Point::default()).out(u, v);
        let mut worth = Worth {
            thin: 0.5,
            uneven: self.uneven(self.ask, self.least + by, self.sight),
            tiles: 0,
        };
        let within = (0..=self.reach.0).contains(&u) && (0..=self.reach.1).contains(&v);
        let lies = if within {
            worth.tiles = self.whole;
            self.band_at(by, &mut worth)
        } else {
            let tiles = placed(self.ask, self.least + by, self.least, self.most);
            tiles.iter().all(|tile| self.take(tile, &mut worth))
        };
        if lies
            && self
                .best
                .as_ref()
                .is_none_or(|(b, _)| worth.beats(b, self.fewest))
        {
            self.best = Some((worth, (u, v)));
        }
    }

    /// Looks at the tiles at the edges; not to the end where the start can no longer be the best.
    fn band_at(&mut self, by: Point, worth: &mut Worth) -> bool {
        for at in 0..self.band.len() {
            let Band { tile, least, most } = &self.band[at];
            match self.clip.clear(*least + by, *most + by) {
                Some(inside) => worth.tiles += usize::from(inside),
                None => {
                    let tile = tile.moved(by);
                    if !self.take(&tile, worth) {
                        // The next start is near: it is likely to be ruled out by the same tile.
                        self.band[..=at].rotate_right(1);
                        return false;
                    }
                }
            }
        }
        true
    }

    /// Takes a tile into what the start is worth; whether it can still be the best.
    fn take(&mut self, tile: &Placed, worth: &mut Worth) -> bool {
        match self.clip.of(tile.points()) {
            Inside::Nothing => return true,
            Inside::Whole => {}
            Inside::Part(pieces) => {
                for piece in &pieces {
                    worth.thin = worth.thin.min(thinness(self.ask, tile, piece, self.level));
                }
            }
        }
        worth.tiles += 1;
        // What is to come can only make it thinner and add tiles.
        (self.best.as_ref()).is_none_or(|(best, _)| !best.surely_beats(worth, self.fewest))
    }

    /// How far the sight line is from the middle of a tile or of a joint.
    fn uneven(&self, ask: &Ask, start: Point, sight: Sight) -> f64 {
        off_sight(ask, (self.least, self.most), start, sight)
    }
}

/// How far a start is from even about the sight line.
pub(super) fn uneven(ask: &Ask, field: &[Region], start: Point, sight: Sight) -> Length {
    let (least, size) = box_of(field);
    let off = off_sight(ask, (least, least + size), start, sight);
    Length::nm(off.round() as i64)
}

/// How far the sight line of a box is from the middle of a tile or of a joint, in nanometres.
fn off_sight(ask: &Ask, (least, most): (Point, Point), start: Point, sight: Sight) -> f64 {
    // A line is measured from the wall, not from the gap.
    let edge = ask.surface.bounds().map_or(least, |(edge, _)| edge);
    let middle = Point::new(
        least.x + (most.x - least.x).half(),
        least.y + (most.y - least.y).half(),
    );
    let (along, across) = module(ask);
    let frame = Frame::of(ask, start);
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
        Sight::Across(x) => off(Point::new(edge.x + x, middle.y), turned),
        Sight::Along(y) => off(Point::new(middle.x, edge.y + y), !turned),
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

fn doubled(points: &[P]) -> f64 {
    let Some(&(ox, oy)) = points.first() else {
        return 0.0;
    };
    points
        .windows(2)
        .map(|w| (w[0].0 - ox) * (w[1].1 - oy) - (w[1].0 - ox) * (w[0].1 - oy))
        .sum()
}

/// How thin a piece is, as a share of its tile's side.
fn thinness(ask: &Ask, tile: &Placed, piece: &Region, level: bool) -> f64 {
    let float = |p: &Point| (p.x.as_nm() as f64, p.y.as_nm() as f64);
    let rings: Vec<Vec<P>> = std::iter::once(&piece.outer)
        .chain(&piece.holes)
        .map(|ring| ring.points.iter().map(float).collect())
        .collect();
    let rings = &rings[..];
    let side = |length: Length| length.as_nm() as f64;
    let (mut long, mut short) = match ask.pattern {
        Pattern::TwoSquares { small } if tile.size == 1 => (side(small), side(small)),
        Pattern::TwoSquares { .. } => (side(ask.tile.long), side(ask.tile.long)),
        _ => (side(ask.tile.long), side(ask.tile.short)),
    };
    let least = long.min(short);
    let square_to_walls = level && tile.points().len() == 4;
    if !square_to_walls {
        return (hull_width(&rings[0]).min(facing(rings)) / least).min(1.0);
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
    share.min(hull_width(&rings[0]).min(facing(rings)) / least)
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
    if ask.other_hand {
        // Searched in the mirror, so that of two starts as good the mirrored one is taken.
        let mirrored = ask.mirrored();
        let best = balance(&mirrored, sight.mirrored(&ask.surface), fewest)?;
        let from = Point::new(box_of(&field).1.x - best.from.x, best.from.y);
        return Ok(Balance {
            from,
            layout: lay_in(ask, &field, from),
            tried: best.tried,
        });
    }
    let mut search = Search::new(ask, &field, sight, fewest);
    let (along, across) = search.reach;
    let mut starts = even_starts(ask, &field);
    for i in 0..TRIED {
        for j in 0..TRIED {
            starts.push((along * i / TRIED, across * j / TRIED));
        }
    }
    let tried = starts.len();
    for start in starts {
        search.consider(held(ask, &field, start, search.reach));
    }
    let mut step = (along / TRIED, across / TRIED);
    for _ in 0..ROUNDS {
        step = (step.0 / 2, step.1 / 2);
        let Some((_, (u, v))) = search.best else {
            break;
        };
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
            search.consider(held(ask, &field, start, search.reach));
        }
    }
    let frame = Frame::of(ask, Point::default());
    let from = (search.best).map_or_else(Point::default, |(_, (u, v))| frame.out(u, v));
    Ok(Balance {
        layout: lay_in(ask, &field, from),
        from,
        tried,
    })
}

/// A start moved so that it keeps to what is held; nothing is held in a pattern that lies at a slant.
fn held(ask: &Ask, field: &[Region], start: (i64, i64), reach: (i64, i64)) -> (i64, i64) {
    let Some(hold) = ask
        .hold
        .filter(|_| ask.turn.as_microdegrees() % 90_000_000 == 0)
    else {
        return start;
    };
    let frame = Frame::of(ask, Point::default());
    let from = frame.out(start.0, start.1);
    let (least, size) = box_of(field);
    let edge = ask.surface.bounds().map_or(least, |(edge, _)| edge);
    // Where a tile lies about its corner, once it is turned.
    let far = frame.out(ask.tile.long.as_nm(), ask.tile.short.as_nm());
    let none = Length::ZERO;
    let (left, top) = (far.x.min(none), far.y.min(none));
    let (wide, high) = (far.x.abs(), far.y.abs());
    let half = ask.joint.half();
    let kept = match hold {
        Hold::Whole(Side::Left) => Point::new(-left, from.y),
        Hold::Whole(Side::Right) => Point::new(size.x - wide - left, from.y),
        Hold::Whole(Side::Top) => Point::new(from.x, -top),
        Hold::Whole(Side::Bottom) => Point::new(from.x, size.y - high - top),
        Hold::JointFromLeft(x) => Point::new(edge.x + x - least.x + half - left, from.y),
        Hold::JointFromTop(y) => Point::new(from.x, edge.y + y - least.y + half - top),
    };
    // Back into the pattern's own repeat, where it lies the same.
    let (u, v) = frame.back(kept);
    (
        (u.round() as i64).rem_euclid(reach.0.max(1)),
        (v.round() as i64).rem_euclid(reach.1.max(1)),
    )
}

/// Starts with a tile or a joint on the middle, or a whole tile at an edge, both ways.
pub(super) fn even_starts(ask: &Ask, field: &[Region]) -> Vec<(i64, i64)> {
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
        let frame = Frame::of(ask, Point::default());
        let middle = frame.back(Point::new(size.x.half(), size.y.half()));
        let (u, v) = (middle.0.round() as i64, middle.1.round() as i64);
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
    use crate::geometry::narrowest;
    use crate::measure::Angle;
    use crate::trades::tile::{Piece, Tile};

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
