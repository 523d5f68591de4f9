//! Which piece comes out of which tile.
//!
//! A piece stays where it lies on its tile, and only the tile is turned: so its factory edges stay factory edges, and
//! every piece is cut with the face up. Two pieces come out of one tile where, so turned, they lie a saw cut apart.

use std::cmp::Reverse;

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

/// What the slack of a line may add to the area that a tile gives, twice, in square nanometres.
const AREA_SLACK: i128 = 100_000_000_000_000;

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

/// Whether a straight band so wide lies between two hulls, along a side of either.
fn apart(a: &[(f64, f64)], b: &[(f64, f64)], by: f64) -> bool {
    [(a, b), (b, a)].iter().any(|(one, other)| {
        (0..one.len()).any(|at| {
            let (p, q) = (one[at], one[(at + 1) % one.len()]);
            let (dx, dy) = (q.0 - p.0, q.1 - p.1);
            let long = dx.hypot(dy);
            // A hull runs so that its own points are on the side where this is more than nothing.
            let off = |r: &(f64, f64)| dx * (r.1 - p.1) - dy * (r.0 - p.0);
            long >= 1.0 && other.iter().all(|r| -off(r) >= by * long)
        })
    })
}

fn fits(new: &Way, placed: &[Hull], kerf: f64) -> bool {
    // A hundredth of a millimetre is lost in the drawing of any line.
    let by = kerf - 10_000.0;
    new.hulls
        .iter()
        .all(|hull| placed.iter().all(|other| apart(hull, other, by)))
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
    pieces.sort_by_key(|(at, _, area, ..)| (Reverse(*area), *at));
    let kerf = ask.kerf.as_nm() as f64;
    let mut open: Vec<Opened> = Vec::new();
    for (at, size, area, parts, sides) in pieces {
        let ways = ways(&parts, sides, ask.grain);
        let six = layout.tiles[at].tile.points().len() == 6;
        let mut fullest: Vec<(i128, Reverse<usize>)> = Vec::new();
        if ask.reuse && !six {
            // What is taken and what is new lie apart: together they are no more than a tile.
            let most = (sides.0 * sides.1 * 2.0) as i128 + AREA_SLACK;
            let room = |tile: &Opened| tile.size == size && tile.taken + area <= most;
            let open = open.iter().enumerate().filter(|(_, tile)| room(tile));
            fullest.extend(open.map(|(n, tile)| (tile.taken, Reverse(n))));
            fullest.sort_unstable_by(|a, b| b.cmp(a));
        }
        let found = fullest.into_iter().find_map(|(_, Reverse(n))| {
            let way = ways.iter().find(|way| fits(way, &open[n].hulls, kerf))?;
            Some((n, way.hulls.clone()))
        });
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
