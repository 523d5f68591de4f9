//! A gap along every edge of a region.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::{Overlay, ShapeType};
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::point::IntPoint;

use super::clip::{back, int};
use super::{LEAST_DOUBLED, Point, Polygon, Region};
use crate::measure::Length;

type Ring = Vec<IntPoint<i64>>;

impl Region {
    /// What is left with a gap along every edge, the largest part first: walls move in, holes grow, one that reaches a wall
    /// becomes a notch, and a neck narrower than two gaps parts what lies at its ends. Nothing where nothing is left.
    ///
    /// # Example
    /// ```
    /// use storyrod::{geometry::Region, measure::Length};
    /// let floor = Region::rectangle(Length::inches(60), Length::inches(96));
    /// let field = &floor.inset(Length::in_64(0, 16))[0];
    /// assert_eq!(field.bounds().unwrap().0.x, Length::in_64(0, 16));
    /// assert!(floor.inset(Length::inches(30)).is_empty());
    /// ```
    #[must_use]
    pub fn inset(&self, gap: Length) -> Vec<Region> {
        if gap == Length::ZERO {
            return vec![self.clone()];
        }
        match self.moved_in(gap) {
            Some(field) if field.is_apart() => vec![field],
            Some(field) => less(&[ring(&field.outer)], &rings(&field.holes)),
            None => worn_away(self, gap),
        }
    }

    /// Every ring moved; `None` where an edge is turned round by it, or a ring meets itself.
    fn moved_in(&self, gap: Length) -> Option<Region> {
        let whole = |ring: &Polygon, by: Length| {
            let moved = moved(ring, by)?;
            (moved.crossing().is_none() && same_ways(&moved, ring)).then_some(moved)
        };
        let holes = self.holes.iter().map(|hole| whole(hole, -gap));
        Some(Region {
            outer: whole(&self.outer, gap)?,
            holes: holes.collect::<Option<_>>()?,
        })
    }

    /// Whether its holes lie inside, clear of the outside and of each other.
    fn is_apart(&self) -> bool {
        let clear = |at: usize| {
            let mut others = self.holes[at + 1..].iter();
            others.all(|other| !self.holes[at].near(other))
        };
        let inside = |hole: &Polygon| hole.points.iter().all(|p| self.outer.contains(*p));
        (0..self.holes.len()).all(clear)
            && self.holes.iter().all(inside)
            && self.holes.iter().all(|hole| !self.outer.meets(hole))
    }
}

/// A ring, clockwise on the sheet.
fn ring(polygon: &Polygon) -> Ring {
    let mut ring: Ring = polygon.points.iter().map(|p| int(*p)).collect();
    if !polygon.clockwise() {
        ring.reverse();
    }
    ring
}

fn rings(polygons: &[Polygon]) -> Vec<Ring> {
    polygons.iter().map(ring).collect()
}

/// Rings less others, the largest part first; what is under 1 mm² is left out.
fn less(whole: &[Ring], taken: &[Ring]) -> Vec<Region> {
    let mut overlay = Overlay::new(64);
    overlay.add_source(whole, ShapeType::Subject);
    overlay.add_source(taken, ShapeType::Clip);
    let shapes = overlay.overlay(OverlayRule::Difference, FillRule::NonZero);
    let part = |shape: &Vec<Ring>| {
        let mut rings = shape.iter().map(|ring| Polygon {
            points: ring.iter().map(back).collect(),
        });
        Some(Region {
            outer: rings.next()?,
            holes: rings.collect(),
        })
    };
    let mut parts: Vec<Region> = shapes.iter().filter_map(part).collect();
    parts.retain(|part| part.doubled_area() >= LEAST_DOUBLED);
    parts.sort_by_key(|part| std::cmp::Reverse(part.doubled_area()));
    parts
}

/// A region less a strip along each of its edges, and less what lies between two strips at a corner that juts in.
fn worn_away(region: &Region, gap: Length) -> Vec<Region> {
    let mut strips = Vec::new();
    let walls = std::iter::once((&region.outer, 1.0));
    for (polygon, inside) in walls.chain(region.holes.iter().map(|hole| (hole, -1.0))) {
        let side = if polygon.clockwise() { inside } else { -inside };
        let corners = &polygon.points;
        let count = corners.len();
        let edge = |at: usize| {
            let (a, b) = (corners[at % count], corners[(at + 1) % count]);
            let (dx, dy) = (nm(b.x - a.x), nm(b.y - a.y));
            let shift = nm(gap) * side / dx.hypot(dy);
            let off = |p: Point| point(nm(p.x) - dy * shift, nm(p.y) + dx * shift);
            (a, b, off(a), off(b))
        };
        let miters = moved(polygon, if inside > 0.0 { gap } else { -gap });
        for at in 0..count {
            let (a, b, a_off, b_off) = edge(at);
            let (Some(a_off), Some(b_off)) = (a_off, b_off) else {
                continue;
            };
            strips.push(vec![a, b, b_off, a_off]);
            let (_, c, next_off, _) = edge(at + 1);
            let turn = nm(b.x - a.x) * nm(c.y - b.y) - nm(b.y - a.y) * nm(c.x - b.x);
            let miter = miters.as_ref().map(|m| m.points[(at + 1) % count]);
            if let (Some(next_off), Some(miter)) = (next_off, miter)
                && turn * side <= 0.0
            {
                strips.push(vec![b, b_off, miter, next_off]);
            }
        }
    }
    let strips = strips.into_iter().map(|points| ring(&Polygon { points }));
    let holes = region.holes.iter().map(ring);
    let taken: Vec<Ring> = strips.chain(holes).collect();
    less(&[ring(&region.outer)], &taken)
}

/// Whether every edge runs the way that it ran before it was moved.
fn same_ways(moved: &Polygon, before: &Polygon) -> bool {
    let way = |ring: &Polygon, at: usize| {
        let (a, b) = (ring.points[at], ring.points[(at + 1) % ring.points.len()]);
        (nm(b.x - a.x), nm(b.y - a.y))
    };
    (0..before.points.len()).all(|at| {
        let ((ax, ay), (bx, by)) = (way(moved, at), way(before, at));
        ax * bx + ay * by > 0.0
    })
}

/// Every edge moved to the inside by `by` (out, where it is less than nothing); corners where the moved edges meet.
fn moved(ring: &Polygon, by: Length) -> Option<Polygon> {
    let count = ring.points.len();
    if count < 3 {
        return None;
    }
    // Clockwise on the sheet the inside is to the right of the way.
    let side = if ring.clockwise() { 1.0 } else { -1.0 };
    let lines: Vec<_> = (0..count)
        .map(|at| {
            let (a, b) = (ring.points[at], ring.points[(at + 1) % count]);
            let (dx, dy) = (nm(b.x - a.x), nm(b.y - a.y));
            let long = dx.hypot(dy);
            let shift = by.as_nm() as f64 * side / long;
            (
                nm(a.x) - dy * shift,
                nm(a.y) + dx * shift,
                dx / long,
                dy / long,
            )
        })
        .collect();
    let points = (0..count).map(|at| {
        let (ax, ay, adx, ady) = lines[(at + count - 1) % count];
        let (bx, by, bdx, bdy) = lines[at];
        let across = adx * bdy - ady * bdx;
        if !across.is_finite() {
            return None;
        }
        if across.abs() < 1e-9 {
            // Two edges in line: the corner moves with them.
            return point(bx, by);
        }
        let along = ((bx - ax) * bdy - (by - ay) * bdx) / across;
        point(ax + adx * along, ay + ady * along)
    });
    Some(Polygon {
        points: points.collect::<Option<Vec<_>>>()?,
    })
}

fn nm(length: Length) -> f64 {
    length.as_nm() as f64
}

fn point(x: f64, y: f64) -> Option<Point> {
    Some(Point::new(
        Length::from_metres(x * 1e-9)?,
        Length::from_metres(y * 1e-9)?,
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_gap_is_left_along_walls_and_round_a_hole() {
        let inches = Length::inches;
        let mut floor = Region::rectangle(inches(60), inches(96));
        let square = |left: i64, top: i64, side: i64| Polygon {
            points: [(0, 0), (side, 0), (side, side), (0, side)]
                .map(|(x, y)| Point::new(inches(left + x), inches(top + y)))
                .to_vec(),
        };
        floor.holes.push(square(20, 20, 4));
        let field = &floor.inset(Length::in_64(0, 16))[0];
        let (least, most) = field.bounds().unwrap();
        assert_eq!(
            most - least,
            Point::new(Length::in_64(59, 32), Length::in_64(95, 32))
        );
        let (least, most) = field.holes[0].bounds().unwrap();
        assert_eq!(
            most - least,
            Point::new(Length::in_64(4, 32), Length::in_64(4, 32))
        );
        // A hole that comes within the gap of a wall is a notch in it.
        floor.holes[0] = square(1, 20, 5);
        floor.holes[0].points.reverse();
        let field = &floor.inset(Length::in_64(0, 32))[0];
        assert!(field.holes.is_empty());
        let whole = Region::rectangle(inches(59), inches(95)).doubled_area();
        let notch = Region::rectangle(inches(6), inches(6)).doubled_area();
        assert_eq!(field.doubled_area(), whole - notch);
        floor.holes[0] = square(20, 20, 4);
        for gap in [30, 40, 60, 100] {
            assert_eq!(floor.inset(inches(gap)), []);
        }
    }

    fn outline(corners: &[(i64, i64)]) -> Region {
        let at = |&(x, y): &(i64, i64)| Point::new(Length::mm(x), Length::mm(y));
        let points = corners.iter().map(at).collect();
        Region {
            outer: Polygon { points },
            holes: Vec::new(),
        }
    }

    fn squares(parts: &[Region]) -> Vec<i128> {
        let square = |part: &Region| part.doubled_area() / 2 / 1_000_000_000_000;
        parts.iter().map(square).collect()
    }

    #[test]
    fn a_neck_narrower_than_two_gaps_parts_what_lies_at_its_ends() {
        // Two rooms of 1000 by 800 and 600 by 800 mm, and a passage of 18 mm.
        let two = outline(&[
            (0, 0),
            (1_000, 0),
            (1_000, 391),
            (1_200, 391),
            (1_200, 0),
            (1_800, 0),
            (1_800, 800),
            (1_200, 800),
            (1_200, 409),
            (1_000, 409),
            (1_000, 800),
            (0, 800),
        ]);
        assert_eq!(two.inset(Length::mm(8)).len(), 1);
        assert_eq!(squares(&two.inset(Length::mm(10))), [980 * 780, 580 * 780]);
        // A jog less deep than the gap: its edge is gone, and the corner stands square a gap away from it.
        let jog = outline(&[
            (0, 0),
            (500, 0),
            (500, 6),
            (1_000, 6),
            (1_000, 400),
            (0, 400),
        ]);
        assert_eq!(squares(&jog.inset(Length::mm(10))), [480 * 380 + 500 * 374]);
    }

    #[test]
    fn a_hole_across_the_floor_parts_it() {
        let mut floor = Region::rectangle(Length::mm(1_000), Length::mm(600));
        let hole = outline(&[(400, 5), (500, 5), (500, 595), (400, 595)]);
        floor.holes.push(hole.outer);
        assert_eq!(
            squares(&floor.inset(Length::mm(10))),
            [480 * 580, 380 * 580]
        );
    }
}
