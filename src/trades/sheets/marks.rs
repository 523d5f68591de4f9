//! What is marked on the face of a sheet: lines by the measures at both ends, holes by two edges.

use super::ask::{Ask, ThingShape};
use super::pieces::{Piece, sheet_laid};
use crate::geometry::{Point, Region};
use crate::measure::Length;
use crate::site::FixedKind;

/// Which way a line to cut runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutWay {
    /// Up and down: both measures are from the left edge.
    Upright,
    /// Across: both are from the top edge.
    Level,
}

/// A line to cut, from end to end, measured from the left and the top edge of the piece's box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    /// Which way it mostly runs.
    pub way: CutWay,
    /// Its upper end, or its left one.
    pub from: (Length, Length),
    /// Its other end.
    pub to: (Length, Length),
}

impl Cut {
    /// The two measures to mark: from the left edge at the top and at the bottom, or from the top edge at the left and at
    /// the right.
    #[must_use]
    pub fn measures(&self) -> (Length, Length) {
        match self.way {
            CutWay::Upright => (self.from.0, self.to.0),
            CutWay::Level => (self.from.1, self.to.1),
        }
    }
    /// How far one end is off the other.
    #[must_use]
    pub fn taper(&self) -> Length {
        let (a, b) = self.measures();
        (b - a).abs()
    }
}

/// A hole to cut, as seen on the face of the piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hole {
    /// What it is for: a thing cut out for, by its place; an opening of the surface where it is nothing.
    pub thing: Option<usize>,
    /// What that is, where the room says so.
    pub kind: Option<FixedKind>,
    /// Its size with what is left free.
    pub shape: ThingShape,
    /// From the left edge of the piece's box to its centre; of a rectangle to its left edge.
    pub from_left: Length,
    /// From the top edge likewise.
    pub from_top: Length,
}

/// A tenth of a millimetre: on the edge.
const ON_EDGE: Length = Length::nm(100_000);

/// Round holes: centre and radius on the surface.
fn circles(ask: &Ask) -> Vec<(Point, Length)> {
    let origin = ask.origin();
    let round = |thing: &super::Thing| match thing.hole() {
        ThingShape::Round { across } => Some((thing.centre(origin), across.half())),
        ThingShape::Rectangle { .. } => None,
    };
    ask.things.iter().filter_map(round).collect()
}

/// The lines of a piece that are no edge of its sheet, round ones left out.
pub(super) fn cuts(ask: &Ask, piece: &Piece) -> Vec<Cut> {
    let Some((least, _)) = piece.region.bounds() else {
        return Vec::new();
    };
    let (wide, high) = sheet_laid(ask);
    let circles = circles(ask);
    let hair = |n: Length| n.abs() <= ON_EDGE;
    // On the sheet, where a quarter turn takes what runs down to the left.
    let on_sheet = |(x, y): (Length, Length)| {
        let (x, y) = if piece.turned {
            (piece.size.1 - y, x)
        } else {
            (x, y)
        };
        (piece.on_sheet.x + x, piece.on_sheet.y + y)
    };
    let factory = |a: (Length, Length), b: (Length, Length)| {
        let ((ax, ay), (bx, by)) = (on_sheet(a), on_sheet(b));
        (hair(ax) && hair(bx))
            || (hair(ay) && hair(by))
            || (hair(ax - wide) && hair(bx - wide))
            || (hair(ay - high) && hair(by - high))
    };
    let arc = |p: Point, q: Point| {
        circles.iter().any(|(centre, radius)| {
            let off = |at: Point| (at.distance(*centre) - *radius).abs();
            let slack = radius.divided(400) + ON_EDGE;
            off(p) < slack && off(q) < slack && p.distance(q) < radius.divided(8)
        })
    };
    let ring = &piece.region.outer.points;
    let next = ring.iter().cycle().skip(1);
    let lines = ring
        .iter()
        .copied()
        .zip(next.copied())
        .filter_map(|(p, q)| {
            let frame = |at: Point| (at.x - least.x, at.y - least.y);
            let (a, b) = (frame(p), frame(q));
            if factory(a, b) || arc(p, q) {
                return None;
            }
            let upright = (b.1 - a.1).abs() >= (b.0 - a.0).abs();
            let turned = if upright { a.1 > b.1 } else { a.0 > b.0 };
            let (from, to) = if turned { (b, a) } else { (a, b) };
            Some(Cut {
                way: if upright {
                    CutWay::Upright
                } else {
                    CutWay::Level
                },
                from,
                to,
            })
        });
    lines.collect()
}

/// The holes in a piece: things that reach into it, and openings inside it.
pub(super) fn holes(ask: &Ask, piece: &Region, least: Point) -> Vec<Hole> {
    let origin = ask.origin();
    let mut all = Vec::new();
    let mut taken: Vec<crate::geometry::Polygon> = Vec::new();
    for (n, thing) in ask.things.iter().enumerate() {
        let outline = thing.outline(origin);
        let (Some((a, b)), Some((c, d))) = (outline.bounds(), piece.bounds()) else {
            continue;
        };
        let apart = b.x <= c.x || d.x <= a.x || b.y <= c.y || d.y <= a.y;
        // It is cut out of this piece where its outline is part of the piece's.
        let circle = |p: &Point| outline.points.iter().any(|q| p.distance(*q) <= ON_EDGE);
        let on_it = piece.rings().flat_map(|ring| &ring.points).any(circle);
        let crosses = outline.points.iter().any(|p| piece.outer.contains(*p));
        if apart || !(on_it || crosses) {
            continue;
        }
        let centre = thing.centre(origin);
        let (shape, corner) = match thing.hole() {
            round @ ThingShape::Round { .. } => (round, centre),
            rectangle @ ThingShape::Rectangle { width, height } => {
                (rectangle, centre - Point::new(width.half(), height.half()))
            }
        };
        all.push(Hole {
            thing: Some(n),
            kind: thing.kind,
            shape,
            from_left: corner.x - least.x,
            from_top: corner.y - least.y,
        });
        taken.push(outline);
    }
    let openings = piece.holes.iter().filter(|hole| {
        let of_thing = |outline: &crate::geometry::Polygon| {
            hole.doubled_shared(outline) * 10 > hole.doubled_area().abs() * 9
        };
        !taken.iter().any(of_thing)
    });
    for hole in openings {
        if let Some((a, b)) = hole.bounds() {
            all.push(Hole {
                thing: None,
                kind: None,
                shape: ThingShape::Rectangle {
                    width: b.x - a.x,
                    height: b.y - a.y,
                },
                from_left: a.x - least.x,
                from_top: a.y - least.y,
            });
        }
    }
    all
}
