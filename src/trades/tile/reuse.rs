//! Which piece comes out of which tile.
//!
//! A piece stays where it lies on its tile, and only the tile is turned: so its factory edges stay factory edges, and
//! every piece is cut with the face up. Two pieces come out of one tile where, so turned, they lie a saw cut apart.

use super::cuts::{OnTile, hull, on_tile, sides};
use super::{Ask, Laid, Layout, Piece};

/// A tile that is cut, and the places in the layout that its pieces go to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Planned {
    /// Which of the layout's tiles, by their places in its list.
    pub pieces: Vec<usize>,
}

/// A tile that is cut, and what has come out of it so far.
struct Opened {
    planned: Planned,
    size: u8,
    /// Twice the area that is taken.
    taken: i128,
    hulls: Vec<Hull>,
}

type Hull = Vec<(f64, f64)>;

/// A piece as it may lie on a tile: its hull, turned.
struct Way {
    hulls: Vec<Hull>,
}

/// Turns about the middle of a tile; quarter turns only of a square.
fn ways(piece: &[OnTile], (long, short): (f64, f64), grain: bool) -> Vec<Way> {
    let quarters: &[u8] = if grain || (long - short).abs() > 1.0 {
        &[0, 2]
    } else {
        &[0, 1, 2, 3]
    };
    quarters
        .iter()
        .map(|quarter| {
            let turn = |&(x, y): &(f64, f64)| match quarter {
                0 => (x, y),
                1 => (short - y, x),
                2 => (long - x, short - y),
                _ => (y, long - x),
            };
            Way {
                hulls: piece
                    .iter()
                    .map(|part| hull(&part.rings[0].iter().map(turn).collect::<Vec<_>>()))
                    .collect(),
            }
        })
        .collect()
}

/// How far two hulls lie apart along the best line between them; less than nothing where they overlap.
fn apart(a: &[(f64, f64)], b: &[(f64, f64)]) -> f64 {
    let mut best = f64::NEG_INFINITY;
    for (one, other) in [(a, b), (b, a)] {
        for at in 0..one.len() {
            let (p, q) = (one[at], one[(at + 1) % one.len()]);
            let long = (q.0 - p.0).hypot(q.1 - p.1);
            if long < 1.0 {
                continue;
            }
            let off =
                |r: &(f64, f64)| ((q.0 - p.0) * (r.1 - p.1) - (q.1 - p.1) * (r.0 - p.0)) / long;
            // A hull runs one way round: its own points are on the one side.
            let own = one.iter().map(off).sum::<f64>().signum();
            let gap = other
                .iter()
                .map(|r| -off(r) * own)
                .fold(f64::INFINITY, f64::min);
            best = best.max(gap);
        }
    }
    best
}

fn fits(new: &Way, placed: &[Hull], kerf: f64) -> bool {
    // A hundredth of a millimetre is lost in the drawing of any line.
    let slack = 10_000.0;
    new.hulls.iter().all(|hull| {
        placed
            .iter()
            .all(|other| apart(hull, other) + slack >= kerf)
    })
}

/// A plan of the tiles to cut: the largest piece first, each into the fullest tile that still takes it.
///
/// # Inputs
/// A layout of this ask.
/// # Gives
/// Every cut tile of the layout once; without reuse each on a tile of its own.
/// # Source
/// Geometry; the largest first is a rule of thumb: no more tiles are taken than this, fewer may do.
/// # Example
/// ```
/// use storyrod::{geometry::Point, trades::tile::{Ask, lay, plan}};
/// let ask = Ask::default();
/// let layout = lay(&ask, Point::default()).unwrap();
/// // Each cut is wider than half a tile: no two come out of one.
/// assert_eq!(plan(&ask, &layout).len(), 12);
/// ```
#[must_use]
pub fn plan(ask: &Ask, layout: &Layout) -> Vec<Planned> {
    let cut = |(at, laid): (usize, &Laid)| match &laid.piece {
        Piece::Whole => None,
        Piece::Cut(pieces) => {
            let parts: Vec<OnTile> = pieces.iter().map(|p| on_tile(laid, p)).collect();
            Some((
                at,
                laid.tile.size,
                laid.doubled_area(),
                parts,
                sides(ask, laid),
            ))
        }
    };
    let mut pieces: Vec<_> = layout.tiles.iter().enumerate().filter_map(cut).collect();
    pieces.sort_by_key(|(at, _, area, ..)| (std::cmp::Reverse(*area), *at));
    let kerf = ask.kerf.as_nm() as f64;
    let mut open: Vec<Opened> = Vec::new();
    for (at, size, area, parts, sides) in pieces {
        let ways = ways(&parts, sides, ask.grain);
        let six = layout.tiles[at].tile.points().len() == 6;
        let found = (ask.reuse && !six)
            .then(|| {
                open.iter()
                    .enumerate()
                    .filter(|(_, tile)| tile.size == size)
                    .filter_map(|(n, tile)| {
                        let way = ways.iter().find(|way| fits(way, &tile.hulls, kerf))?;
                        Some((n, tile.taken, way))
                    })
                    .max_by_key(|(n, taken, _)| (*taken, std::cmp::Reverse(*n)))
                    .map(|(n, _, way)| (n, way.hulls.clone()))
            })
            .flatten();
        match found {
            Some((n, hulls)) => {
                open[n].planned.pieces.push(at);
                open[n].taken += area;
                open[n].hulls.extend(hulls);
            }
            None => {
                let first = ways
                    .into_iter()
                    .next()
                    .map_or_else(Vec::new, |way| way.hulls);
                open.push(Opened {
                    planned: Planned { pieces: vec![at] },
                    size,
                    taken: area,
                    hulls: first,
                });
            }
        }
    }
    open.into_iter().map(|tile| tile.planned).collect()
}
