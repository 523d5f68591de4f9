//! Which piece comes out of which tile.
//!
//! A piece stays where it lies on its tile, and only the tile is turned: so its factory edges stay factory edges, and
//! every piece is cut with the face up. Two pieces come out of one tile where, so turned, they lie a saw cut apart.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use super::cuts::{OnTile, on_tile, sides};
use super::{Ask, Laid, Layout, Piece};
use crate::geometry::hull::{apart, hull};
use crate::geometry::{Covered, cover};

/// A tile that is cut, and the places in the layout that its pieces go to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Planned {
    /// Which of the layout's tiles, by their places in its list.
    pub pieces: Vec<usize>,
}

/// Every cut piece and the tile that it comes out of.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plan {
    /// The tiles that are cut.
    pub tiles: Vec<Planned>,
    /// No plan takes fewer tiles than this: as many as `tiles` where they are proven to be the fewest.
    pub at_least: usize,
}

/// What the slack of a line may add to the area that a tile gives, twice, in square nanometres.
const AREA_SLACK: i128 = 100_000_000_000_000;

type Hull = Vec<(f64, f64)>;

/// A piece as it may lie on a tile: its hulls, turned.
type Way = Vec<Hull>;

/// Pieces that are the same to 20 nm, what is lost in turning a pattern, however their tiles are turned.
struct Shape {
    /// The hulls, turned step by step about the middle of the tile.
    ways: Vec<Way>,
    /// Twice the area.
    area: i128,
    /// Places in the layout.
    pieces: Vec<usize>,
}

/// Turns about the middle of a tile, each a step from the one before: sixths of a hexagon, quarters of a square, halves
/// of any other and of a face with a direction.
fn ways(piece: &[OnTile], laid: &Laid, (long, short): (f64, f64), grain: bool) -> Vec<Way> {
    let six = laid.tile.points().len() == 6;
    let steps = match (six, grain) {
        (_, true) => 2,
        (true, false) => 6,
        (false, false) if (long - short).abs() > 1.0 => 2,
        (false, false) => 4,
    };
    // A hexagon stands on its tip.
    let high = if six { long * 2.0 / 3f64.sqrt() } else { short };
    let (x0, y0) = (long / 2.0, high / 2.0);
    let turned = |step: i32| {
        let (sine, cosine) = match (steps, step) {
            (_, 0) => (0.0, 1.0),
            (2, _) | (4, 2) | (6, 3) => (0.0, -1.0),
            (4, 1) => (1.0, 0.0),
            (4, _) => (-1.0, 0.0),
            _ => (f64::from(step) * std::f64::consts::FRAC_PI_3).sin_cos(),
        };
        move |&(x, y): &(f64, f64)| {
            let (dx, dy) = (x - x0, y - y0);
            (x0 + dx * cosine - dy * sine, y0 + dx * sine + dy * cosine)
        }
    };
    (0..steps)
        .map(|step| {
            let ring = |part: &OnTile| {
                let points: Vec<_> = part.rings[0].iter().map(turned(step)).collect();
                hull(&points)
            };
            piece.iter().map(ring).collect()
        })
        .collect()
}

/// The cut pieces, those of one shape together, the largest first; by the size of their tile.
fn shapes(ask: &Ask, layout: &Layout) -> BTreeMap<u8, Vec<Shape>> {
    let mut found: BTreeMap<(u8, Vec<(i64, i64)>), Shape> = BTreeMap::new();
    for (at, laid) in layout.tiles.iter().enumerate() {
        let Piece::Cut(pieces) = &laid.piece else {
            continue;
        };
        let parts: Vec<OnTile> = pieces.iter().map(|p| on_tile(laid, p)).collect();
        let mut ways = ways(&parts, laid, sides(ask, laid), ask.grain);
        let key = |way: &Way| {
            let near = |n: f64| (n / 20.0).round() as i64;
            let mut points: Vec<_> = way
                .iter()
                .flatten()
                .map(|p| (near(p.0), near(p.1)))
                .collect();
            points.sort_unstable();
            points.push((way.len() as i64, 0));
            points
        };
        let first = (0..ways.len()).min_by_key(|n| key(&ways[*n])).unwrap_or(0);
        ways.rotate_left(first);
        let key = (laid.tile.size, key(&ways[0]));
        let area = laid.doubled_area();
        let shape = found.entry(key).or_insert(Shape {
            ways,
            area,
            pieces: Vec::new(),
        });
        // Hulls may be the same where what they are drawn round is not.
        shape.area = shape.area.min(area);
        shape.pieces.push(at);
    }
    let mut sizes: BTreeMap<u8, Vec<Shape>> = BTreeMap::new();
    for ((size, _), shape) in found {
        sizes.entry(size).or_default().push(shape);
    }
    for shapes in sizes.values_mut() {
        shapes.sort_by_key(|shape| (Reverse(shape.area), shape.pieces[0]));
    }
    sizes
}

/// A plan of the tiles to cut, and how many any plan takes at least.
///
/// Shapes that lie on one tile together are found, and tiles are taken so that fewest are needed: exactly where there are
/// few enough shapes, else the largest piece first, each into the fullest tile that still takes it.
///
/// # Inputs
/// A layout of this ask.
/// # Gives
/// Every cut tile of the layout once; without reuse each on a tile of its own.
/// # Source
/// Geometry; the bound by linear programming over every set of shapes that fits on a tile, or by area.
/// # Example
/// ```
/// use storyrod::{geometry::Point, trades::tile::{Ask, lay, plan}};
/// let ask = Ask::default();
/// let layout = lay(&ask, Point::default()).unwrap();
/// // Each cut is wider than half a tile: no two come out of one.
/// let plan = plan(&ask, &layout);
/// assert_eq!((plan.tiles.len(), plan.at_least), (12, 12));
/// ```
#[must_use]
pub fn plan(ask: &Ask, layout: &Layout) -> Plan {
    if !ask.reuse {
        let cut = |(_, laid): &(usize, &Laid)| laid.piece != Piece::Whole;
        let tiles: Vec<Planned> = (layout.tiles.iter().enumerate().filter(cut))
            .map(|(at, _)| Planned { pieces: vec![at] })
            .collect();
        let at_least = tiles.len();
        return Plan { tiles, at_least };
    }
    let mut plan = Plan::default();
    // A hundredth of a millimetre is lost in the drawing of any line.
    let by = ask.kerf.as_nm() as f64 - 10_000.0;
    for shapes in shapes(ask, layout).into_values() {
        let whole = {
            let laid = &layout.tiles[shapes[0].pieces[0]];
            crate::geometry::Polygon {
                points: laid.tile.points().to_vec(),
            }
        };
        let counts: Vec<usize> = shapes.iter().map(|shape| shape.pieces.len()).collect();
        let areas: Vec<i128> = shapes.iter().map(|shape| shape.area).collect();
        let together = |(a, turned_a): (usize, usize), (b, turned_b): (usize, usize)| {
            let (one, other) = (&shapes[a].ways[turned_a], &shapes[b].ways[turned_b]);
            one.iter()
                .all(|hull| other.iter().all(|other| apart(hull, other, by)))
        };
        let Covered { tiles, at_least } = cover(
            &counts,
            &areas,
            whole.doubled_area().abs() + AREA_SLACK,
            shapes[0].ways.len(),
            &together,
        );
        plan.at_least += at_least;
        let mut left: Vec<_> = shapes.iter().map(|shape| shape.pieces.iter()).collect();
        plan.tiles.extend(tiles.into_iter().map(|on| Planned {
            pieces: on.iter().filter_map(|n| left[*n].next().copied()).collect(),
        }));
    }
    plan
}
