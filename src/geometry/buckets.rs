//! The edges of regions, found by place.

use super::clip::side;
use super::{Point, Polygon, Region};

/// Cells each way over the region's box.
const CELLS: usize = 32;

/// An edge of a region, which lies to its right as seen on the sheet.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bound {
    pub from: Point,
    pub to: Point,
    /// Place of the next edge of the ring.
    pub next: usize,
}

/// What is known of a cell that no edge comes into.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Known {
    Edges,
    Inside,
    Outside,
    Nothing,
}

/// Edges in a grid of cells.
pub(super) struct Buckets {
    pub edges: Vec<Bound>,
    least: Point,
    most: Point,
    /// Sides of a cell.
    cell: (i64, i64),
    /// Where the edges of each cell begin in `listed`; one more at the end.
    begin: Vec<u32>,
    listed: Vec<u32>,
    known: Vec<Known>,
    /// When each edge was last found, so that none is found twice.
    seen: Vec<u32>,
    turn: u32,
}

impl Buckets {
    pub fn new(parts: &[Region]) -> Buckets {
        let mut edges = Vec::new();
        for region in parts {
            ring(&mut edges, &region.outer, true);
            for hole in &region.holes {
                ring(&mut edges, hole, false);
            }
        }
        let (least, most) = Region::bounds_of(parts).unwrap_or_default();
        let side = |length: i64| length / CELLS as i64 + 1;
        let mut buckets = Buckets {
            seen: vec![0; edges.len()],
            edges,
            least,
            most,
            cell: (
                side((most.x - least.x).as_nm()),
                side((most.y - least.y).as_nm()),
            ),
            begin: vec![0; CELLS * CELLS + 1],
            listed: Vec::new(),
            known: vec![Known::Nothing; CELLS * CELLS],
            turn: 0,
        };
        buckets.fill();
        buckets
    }

    /// Lists every edge in each cell that it comes into.
    fn fill(&mut self) {
        let mut pairs = Vec::with_capacity(self.edges.len() * 8);
        for (at, edge) in self.edges.iter().enumerate() {
            let low = Point::new(edge.from.x.min(edge.to.x), edge.from.y.min(edge.to.y));
            let high = Point::new(edge.from.x.max(edge.to.x), edge.from.y.max(edge.to.y));
            let ((x0, y0), (x1, y1)) = (self.cell_of(low), self.cell_of(high));
            for y in y0..=y1 {
                for x in x0..=x1 {
                    // Of an edge in one row or column every cell is met; of a slanted one those that its line divides.
                    if x0 == x1 || y0 == y1 || self.divides(edge, x, y) {
                        pairs.push((y * CELLS + x, at as u32));
                    }
                }
            }
        }
        for (cell, _) in &pairs {
            self.begin[cell + 1] += 1;
            self.known[*cell] = Known::Edges;
        }
        for cell in 0..CELLS * CELLS {
            self.begin[cell + 1] += self.begin[cell];
        }
        let mut next = self.begin.clone();
        self.listed = vec![0; pairs.len()];
        for (cell, edge) in pairs {
            self.listed[next[cell] as usize] = edge;
            next[cell] += 1;
        }
    }

    /// Whether corners of a cell lie on both sides of an edge, or on it.
    fn divides(&self, edge: &Bound, x: usize, y: usize) -> bool {
        let corner = |right: usize, down: usize| {
            Point::new(
                self.least.x + crate::measure::Length::nm(self.cell.0 * (x + right) as i64),
                self.least.y + crate::measure::Length::nm(self.cell.1 * (y + down) as i64),
            )
        };
        let sides = [(0, 0), (1, 0), (1, 1), (0, 1)]
            .map(|(right, down)| side(edge.from, edge.to, corner(right, down)).signum());
        !(sides.iter().all(|s| *s > 0) || sides.iter().all(|s| *s < 0))
    }

    /// The cell of a place, the nearest where it lies outside.
    fn cell_of(&self, p: Point) -> (usize, usize) {
        let at = |n: i64, side: i64| (n.max(0) / side).min(CELLS as i64 - 1) as usize;
        (
            at((p.x - self.least.x).as_nm(), self.cell.0),
            at((p.y - self.least.y).as_nm(), self.cell.1),
        )
    }

    /// Whether a box lies inside or outside, where no edge is in its cells.
    pub fn clear(&mut self, least: Point, most: Point) -> Option<bool> {
        if most.x <= self.least.x
            || least.x >= self.most.x
            || most.y <= self.least.y
            || least.y >= self.most.y
        {
            return Some(false);
        }
        // Past the region's box a cell says nothing.
        if least.x < self.least.x
            || most.x > self.most.x
            || least.y < self.least.y
            || most.y > self.most.y
        {
            return None;
        }
        let ((x0, y0), (x1, y1)) = (self.cell_of(least), self.cell_of(most));
        for y in y0..=y1 {
            let row = &self.known[y * CELLS + x0..=y * CELLS + x1];
            if row.contains(&Known::Edges) {
                return None;
            }
        }
        Some(self.inside(x0, y0))
    }

    /// The edges that may come into a box.
    pub fn near(&mut self, least: Point, most: Point, found: &mut Vec<usize>) {
        found.clear();
        let ((x0, y0), (x1, y1)) = (self.cell_of(least), self.cell_of(most));
        self.turn = self.turn.wrapping_add(1);
        for y in y0..=y1 {
            for cell in y * CELLS + x0..=y * CELLS + x1 {
                let (from, to) = (self.begin[cell] as usize, self.begin[cell + 1] as usize);
                for at in &self.listed[from..to] {
                    let at = *at as usize;
                    if self.seen[at] != self.turn {
                        self.seen[at] = self.turn;
                        found.push(at);
                    }
                }
            }
        }
    }

    /// Whether a cell without edges lies inside; asked of its neighbour, where that is known.
    fn inside(&mut self, x: usize, y: usize) -> bool {
        let cell = y * CELLS + x;
        if self.known[cell] == Known::Nothing {
            let clear = |at: usize| {
                Some(self.known[at]).filter(|k| matches!(k, Known::Inside | Known::Outside))
            };
            let left = (x > 0).then(|| clear(cell - 1)).flatten();
            let above = (y > 0).then(|| clear(cell - CELLS)).flatten();
            self.known[cell] = match left.or(above) {
                Some(known) => known,
                None => {
                    let middle = |n: usize, side: i64| {
                        crate::measure::Length::nm(side * n as i64 + side / 2)
                    };
                    let middle =
                        self.least + Point::new(middle(x, self.cell.0), middle(y, self.cell.1));
                    if self.holds(middle) {
                        Known::Inside
                    } else {
                        Known::Outside
                    }
                }
            };
        }
        self.known[cell] == Known::Inside
    }

    /// Whether a point lies inside, by the number of edges to its right.
    pub fn holds(&self, p: Point) -> bool {
        let right = |edge: &&Bound| {
            let (a, b) = (edge.from, edge.to);
            (a.y > p.y) != (b.y > p.y) && (side(a, b, p) > 0) == (b.y < a.y)
        };
        self.edges.iter().filter(right).count() % 2 == 1
    }
}

/// Adds a ring, clockwise on the sheet or against it.
fn ring(edges: &mut Vec<Bound>, polygon: &Polygon, clockwise: bool) {
    let (first, count) = (edges.len(), polygon.points.len());
    let along = polygon.clockwise() == clockwise;
    let at = |n: usize| {
        let n = n % count;
        polygon.points[if along { n } else { count - 1 - n }]
    };
    edges.extend((0..count).map(|n| Bound {
        from: at(n),
        to: at(n + 1),
        next: first + (n + 1) % count,
    }));
}
