//! Where every tile of a pattern lies, joints exact.
//!
//! A pattern is laid in a frame of its own, in whole nanometres; then the frame is turned and moved onto the surface.
//! At quarter turns nothing is rounded; otherwise each corner goes to the nearest nanometre.

use super::{Ask, Pattern};
use crate::geometry::Point;
use crate::measure::Length;

/// A tile in its place, before it is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placed {
    points: [Point; 6],
    count: u8,
    /// 0 the tile, 1 the small square of two.
    pub size: u8,
    /// It lies a quarter turn round from the rows.
    pub upright: bool,
    /// Its column and row, in a pattern of rows.
    pub cell: (i32, i32),
}

impl Placed {
    /// Its corners.
    #[must_use]
    pub fn points(&self) -> &[Point] {
        &self.points[..usize::from(self.count)]
    }
}

impl Placed {
    /// The same tile, which stands in a column and a row.
    fn in_cell(self, column: i64, row: i64) -> Placed {
        let cell = |n: i64| i32::try_from(n).unwrap_or(i32::MAX);
        Placed {
            cell: (cell(column), cell(row)),
            ..self
        }
    }

    /// The same tile, moved.
    pub(super) fn moved(&self, by: Point) -> Placed {
        Placed {
            points: self.points.map(|p| p + by),
            ..*self
        }
    }
}

/// From the pattern's own frame to the surface.
#[derive(Clone, Copy)]
pub(super) struct Frame {
    start: Point,
    sine: f64,
    cosine: f64,
    /// Its rows run to the left.
    mirrored: bool,
}

impl Frame {
    /// The frame of an ask's pattern whose corner lies at a point.
    pub(super) fn of(ask: &Ask, start: Point) -> Frame {
        let (sine, cosine) = ask.turn.sin_cos();
        Frame {
            start,
            sine,
            cosine,
            mirrored: ask.other_hand,
        }
    }

    /// A place of the frame on the surface.
    pub(super) fn out(&self, x: i64, y: i64) -> Point {
        let (dx, dy) = self.turned(x, y);
        Point::new(self.start.x + Length::nm(dx), self.start.y + Length::nm(dy))
    }

    /// The same for a place between whole nanometres: it goes to the nearest once, on the surface.
    fn out_near(&self, x: f64, y: f64) -> Point {
        let x = if self.mirrored { -x } else { x };
        let near = |n: f64| Length::nm(n.round() as i64);
        Point::new(
            self.start.x + near(x * self.cosine - y * self.sine),
            self.start.y + near(x * self.sine + y * self.cosine),
        )
    }

    fn turned(&self, x: i64, y: i64) -> (i64, i64) {
        let x = if self.mirrored { -x } else { x };
        // Quarter turns by hand: exact.
        let whole = |share: f64| (share.abs() == 1.0 || share == 0.0).then_some(share as i64);
        if let (Some(s), Some(c)) = (whole(self.sine), whole(self.cosine)) {
            return (x * c - y * s, x * s + y * c);
        }
        let (x, y) = (x as f64, y as f64);
        (
            (x * self.cosine - y * self.sine).round() as i64,
            (x * self.sine + y * self.cosine).round() as i64,
        )
    }

    /// A place of the surface in the frame.
    pub(super) fn back(&self, p: Point) -> (f64, f64) {
        let (x, y) = (
            (p.x - self.start.x).as_nm() as f64,
            (p.y - self.start.y).as_nm() as f64,
        );
        let along = x * self.cosine + y * self.sine;
        (
            if self.mirrored { -along } else { along },
            y * self.cosine - x * self.sine,
        )
    }
}

/// A tile and a joint: along the rows, and across them.
///
/// # Source
/// Arithmetic; "module" as in specifications of tile.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::tile::{Ask, module}};
/// assert_eq!(module(&Ask::default()), (Length::inches(12), Length::inches(12)));
/// ```
#[must_use]
pub fn module(ask: &Ask) -> (Length, Length) {
    (ask.tile.long + ask.joint, ask.tile.short + ask.joint)
}

/// A box of starts, along and across the rows, that holds every way in which the pattern can lie.
///
/// It is no pair of moves that leave the pattern as it was: half bond moved by one row lies half a tile off. Planks never
/// repeat; their box holds the starts of one row.
///
/// # Source
/// Geometry: the repeat of each pattern.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::tile::{Ask, domain}};
/// assert_eq!(domain(&Ask::default()), (Length::inches(12), Length::inches(12)));
/// ```
#[must_use]
pub fn domain(ask: &Ask) -> (Length, Length) {
    let (along, across) = module(ask);
    match ask.pattern {
        Pattern::Grid | Pattern::Bond { .. } | Pattern::Planks { .. } => (along, across),
        Pattern::Herringbone => (across * 4, across),
        Pattern::Basketweave => (across * 4, across * 2),
        Pattern::TwoSquares { small } => {
            let both = along + small + ask.joint;
            (both, both)
        }
        Pattern::Hexagon => (along, Length::nm(rows_of_hexagons(along))),
    }
}

/// Row to row of hexagons that stand `along` apart: √3/2 of it.
fn rows_of_hexagons(along: Length) -> i64 {
    (along.as_nm() as f64 * 3f64.sqrt() / 2.0).round() as i64
}

/// A rectangle of the frame.
fn rectangle(frame: &Frame, (x, y): (i64, i64), (w, h): (i64, i64), upright: bool) -> Placed {
    let mut points = [Point::default(); 6];
    // Corners go round the same way by either hand, from the upper left one where nothing is turned.
    let (near, far) = if frame.mirrored {
        (x + w, x)
    } else {
        (x, x + w)
    };
    points[0] = frame.out(near, y);
    points[1] = frame.out(far, y);
    points[2] = frame.out(far, y + h);
    points[3] = frame.out(near, y + h);
    Placed {
        points,
        count: 4,
        size: 0,
        upright,
        cell: (0, 0),
    }
}

/// A hexagon round its middle, corners up and down: the flats stand left and right.
fn hexagon(frame: &Frame, (x, y): (f64, f64), flats: i64) -> Placed {
    let (half, tip) = (flats as f64 / 2.0, flats as f64 / 3f64.sqrt());
    let half = if frame.mirrored { -half } else { half };
    let at = [
        (0.0, -tip),
        (half, -tip / 2.0),
        (half, tip / 2.0),
        (0.0, tip),
        (-half, tip / 2.0),
        (-half, -tip / 2.0),
    ];
    Placed {
        points: at.map(|(dx, dy)| frame.out_near(x + dx, y + dy)),
        count: 6,
        size: 0,
        upright: false,
        cell: (0, 0),
    }
}

/// A number from a seed and a row, the same for ever.
fn drawn(seed: u32, row: i64) -> u64 {
    let mut n = (u64::from(seed) << 32) ^ (row as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    n = (n ^ (n >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    n = (n ^ (n >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    n ^ (n >> 31)
}

/// Where the first end of a row of planks falls: drawn, and then kept away from the row before it by `apart`.
///
/// Rows are drawn in pairs from the row's own number, so that a row can be asked for alone: even rows in the first half
/// of a plank, odd rows in the second, each at least `apart` from either neighbour.
fn end_of(seed: u32, row: i64, along: i64, apart: i64) -> i64 {
    let half = along / 2;
    let room = (half - apart).max(1);
    let drawn = (drawn(seed, row) % room as u64) as i64;
    if row.rem_euclid(2) == 0 {
        drawn
    } else {
        half + drawn
    }
}

/// Every tile of the pattern that may meet a box of the surface, started at a point of it.
///
/// # Source
/// Geometry of each pattern, joints even.
/// # Example
/// ```
/// use storyrod::{geometry::Point, measure::Length, trades::tile::{Ask, placed}};
/// let far = Point::new(Length::inches(24), Length::inches(36));
/// assert_eq!(placed(&Ask::default(), Point::default(), Point::default(), far).len(), 12);
/// ```
#[must_use]
pub fn placed(ask: &Ask, start: Point, least: Point, most: Point) -> Vec<Placed> {
    let frame = Frame::of(ask, start);
    let corners = [
        least,
        Point::new(most.x, least.y),
        most,
        Point::new(least.x, most.y),
    ]
    .map(|corner| frame.back(corner));
    let over = |pick: fn(&(f64, f64)) -> f64| {
        let values = corners.iter().map(pick);
        (
            values.clone().fold(f64::INFINITY, f64::min),
            values.fold(f64::NEG_INFINITY, f64::max),
        )
    };
    let (xs, ys) = (over(|c| c.0), over(|c| c.1));
    let mut all = Vec::new();
    cells(ask, xs, ys, |tile| all.push(tile(&frame)));
    all
}

/// Goes through the cells of a pattern that meet a box of its frame.
fn cells(
    ask: &Ask,
    xs: (f64, f64),
    ys: (f64, f64),
    mut lay: impl FnMut(&dyn Fn(&Frame) -> Placed),
) {
    let (long, short) = (ask.tile.long.as_nm(), ask.tile.short.as_nm());
    let joint = ask.joint.as_nm();
    let (along, across) = (long + joint, short + joint);
    // Cells from the one before the box to the one after it.
    let span = |(low, high): (f64, f64), step: i64, margin: i64| {
        let step = step as f64;
        let (first, last) = ((low / step).floor() as i64, (high / step).ceil() as i64);
        first - margin..=last + margin
    };
    match ask.pattern {
        Pattern::Grid => {
            for row in span(ys, across, 0) {
                for column in span(xs, along, 0) {
                    let at = (column * along, row * across);
                    lay(&|f| rectangle(f, at, (long, short), false).in_cell(column, row));
                }
            }
        }
        Pattern::Bond { over, of } => {
            let of = i64::from(of.max(1));
            for row in span(ys, across, 0) {
                let parts = (row * i64::from(over)).rem_euclid(of);
                let shift = (along as f64 * parts as f64 / of as f64).round() as i64;
                for column in span(xs, along, 1) {
                    let at = (column * along + shift, row * across);
                    lay(&|f| rectangle(f, at, (long, short), false).in_cell(column, row));
                }
            }
        }
        Pattern::Planks { seed, apart } => {
            for row in span(ys, across, 0) {
                let shift = end_of(seed, row, along, apart.as_nm());
                for column in span(xs, along, 1) {
                    let at = (column * along + shift, row * across);
                    lay(&|f| rectangle(f, at, (long, short), false).in_cell(column, row));
                }
            }
        }
        Pattern::Herringbone => {
            // On a board of squares, one short side and a joint wide: a lying tile where x − y is a multiple of four,
            // a standing one three further.
            for row in span(ys, across, 2) {
                for column in span(xs, across, 2) {
                    let at = (column * across, row * across);
                    match (column - row).rem_euclid(4) {
                        0 => lay(&|f| rectangle(f, at, (long, short), false)),
                        3 => lay(&|f| rectangle(f, at, (short, long), true)),
                        _ => {}
                    }
                }
            }
        }
        Pattern::Basketweave => {
            let block = across * 2;
            for row in span(ys, block, 0) {
                for column in span(xs, block, 0) {
                    let (x, y) = (column * block, row * block);
                    if (column + row).rem_euclid(2) == 0 {
                        lay(&|f| rectangle(f, (x, y), (long, short), false));
                        lay(&|f| rectangle(f, (x, y + across), (long, short), false));
                    } else {
                        lay(&|f| rectangle(f, (x, y), (short, long), true));
                        lay(&|f| rectangle(f, (x + across, y), (short, long), true));
                    }
                }
            }
        }
        Pattern::TwoSquares { small } => two_squares(ask, small, xs, ys, &mut lay),
        Pattern::Hexagon => {
            let step = rows_of_hexagons(Length::nm(along));
            for row in span(ys, step, 1) {
                let shift = if row.rem_euclid(2) == 0 { 0.0 } else { 0.5 };
                let y = row as f64 * (along as f64 * 3f64.sqrt() / 2.0);
                for column in span(xs, along, 1) {
                    let at = ((column as f64 + shift) * along as f64, y);
                    lay(&|f| hexagon(f, at, long).in_cell(column, row));
                }
            }
        }
    }
}

/// A large square and a small one to its right: moved by (large, small) and by (−small, large) they fill the plane.
fn two_squares(
    ask: &Ask,
    small: Length,
    (x0, x1): (f64, f64),
    (y0, y1): (f64, f64),
    lay: &mut impl FnMut(&dyn Fn(&Frame) -> Placed),
) {
    let (large, joint, small) = (ask.tile.long.as_nm(), ask.joint.as_nm(), small.as_nm());
    let (p, q) = (large + joint, small + joint);
    let square = (p as f64).powi(2) + (q as f64).powi(2);
    let (pf, qf) = (p as f64, q as f64);
    let corners = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)];
    let first = corners.map(|(x, y)| (x * pf + y * qf) / square);
    let second = corners.map(|(x, y)| (y * pf - x * qf) / square);
    let range = |values: [f64; 4]| {
        let low = values.iter().copied().fold(f64::INFINITY, f64::min);
        let high = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        (low.floor() as i64 - 2)..=(high.ceil() as i64 + 1)
    };
    for m in range(first) {
        for n in range(second) {
            let (x, y) = (m * p - n * q, m * q + n * p);
            lay(&|f| rectangle(f, (x, y), (large, large), false));
            lay(&|f| Placed {
                size: 1,
                ..rectangle(f, (x + p, y), (small, small), false)
            });
        }
    }
}
