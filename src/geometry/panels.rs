//! Pieces out of sheets, by cuts from edge to edge.
//!
//! Each piece is cut out of the least box round it. Boxes are put into what is left of the sheets in several orders, and
//! the plan of fewest sheets is kept. How few any plan takes is told from the areas, and from pieces of which no two
//! lie on one sheet.

use std::cmp::Reverse;

use super::{Covered, Point, Polygon, Region, cover};
use crate::measure::Length;

/// A piece to cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Item {
    /// The least box round it, across and down.
    pub size: (Length, Length),
    /// A box inside it; `None` where none is known.
    pub core: Option<(Length, Length)>,
    /// Twice its area, in square nanometres.
    pub doubled_area: i128,
}

/// Where a piece lies on its sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placed {
    /// Its place in the list of pieces.
    pub item: usize,
    /// The upper left corner of its box.
    pub at: Point,
    /// Turned by a quarter, clockwise.
    pub turned: bool,
}

/// A plan of sheets.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Panels {
    /// What comes out of each.
    pub sheets: Vec<Vec<Placed>>,
    /// No plan with pieces square to the sheet takes fewer.
    pub at_least: usize,
}

/// Orders that are tried beyond the usual ones.
const TRIES: u64 = 200;
/// What the slack of a line may add to the area that a sheet gives, twice, in square nanometres.
const AREA_SLACK: i128 = 100_000_000_000_000;

/// A box that is left of a sheet.
#[derive(Clone, Copy)]
struct Left {
    at: Point,
    size: (Length, Length),
}

struct Open {
    left: Vec<Left>,
    placed: Vec<Placed>,
}

/// How what is left beside a piece is parted.
#[derive(Clone, Copy, PartialEq)]
enum Part {
    /// The larger of the two boxes as large as can be.
    Large,
    /// The first cut goes up and down.
    Upright,
    /// The first cut goes across.
    Level,
}

fn area((w, h): (Length, Length)) -> i128 {
    i128::from(w.as_nm()) * i128::from(h.as_nm())
}

struct Packing<'a> {
    sheet: (Length, Length),
    items: &'a [Item],
    kerf: Length,
    quarter: bool,
}

impl Packing<'_> {
    fn ways(&self, item: usize) -> impl Iterator<Item = (bool, (Length, Length))> {
        let (w, h) = self.items[item].size;
        let turned = (self.quarter && w != h).then_some((true, (h, w)));
        std::iter::once((false, (w, h))).chain(turned)
    }

    fn put(&self, sheets: &mut Vec<Open>, item: usize, part: Part) {
        let mut best: Option<(Length, usize, usize, bool)> = None;
        for (n, open) in sheets.iter().enumerate() {
            for (at, left) in open.left.iter().enumerate() {
                for (turned, (w, h)) in self.ways(item) {
                    let (over, under) = (left.size.0 - w, left.size.1 - h);
                    if over < Length::ZERO || under < Length::ZERO {
                        continue;
                    }
                    let short = over.min(under);
                    if best.is_none_or(|best| short < best.0) {
                        best = Some((short, n, at, turned));
                    }
                }
            }
        }
        let (n, at, turned) = match best {
            Some((_, n, at, turned)) => (n, at, turned),
            None => {
                sheets.push(Open {
                    left: vec![Left {
                        at: Point::default(),
                        size: self.sheet,
                    }],
                    placed: Vec::new(),
                });
                let fits = |(_, (w, h)): &(bool, (Length, Length))| {
                    *w <= self.sheet.0 && *h <= self.sheet.1
                };
                let way = self.ways(item).find(fits);
                (sheets.len() - 1, 0, way.is_some_and(|way| way.0))
            }
        };
        let open = &mut sheets[n];
        let left = open.left.swap_remove(at);
        let size = self.items[item].size;
        let (w, h) = if turned { (size.1, size.0) } else { size };
        open.placed.push(Placed {
            item,
            at: left.at,
            turned,
        });
        let (over, under) = (left.size.0 - w - self.kerf, left.size.1 - h - self.kerf);
        let right = |high| Left {
            at: left.at + Point::new(w + self.kerf, Length::ZERO),
            size: (over, high),
        };
        let below = |wide| Left {
            at: left.at + Point::new(Length::ZERO, h + self.kerf),
            size: (wide, under),
        };
        let upright = [right(left.size.1), below(w)];
        let level = [right(h), below(left.size.0)];
        let largest = |pair: &[Left; 2]| pair.iter().map(|left| area(left.size)).max();
        let parts = match part {
            Part::Upright => upright,
            Part::Level => level,
            Part::Large if largest(&upright) >= largest(&level) => upright,
            Part::Large => level,
        };
        open.left.extend(
            parts
                .into_iter()
                .filter(|left| left.size.0.is_positive() && left.size.1.is_positive()),
        );
    }

    fn packed(&self, order: &[usize], part: Part) -> Vec<Open> {
        let mut sheets = Vec::new();
        for item in order {
            self.put(&mut sheets, *item, part);
        }
        sheets
    }
}

/// The largest box that is left of any sheet: the more, the better a plan of as many sheets.
fn rest(sheets: &[Open]) -> i128 {
    let left = sheets.iter().flat_map(|open| &open.left);
    left.map(|left| area(left.size)).max().unwrap_or(0)
}

/// A plan of sheets for some pieces, and how few any plan takes.
///
/// # Inputs
/// The size of a sheet, pieces whose boxes lie on it, what the saw takes, and whether a piece may be turned a quarter.
/// # Gives
/// Every piece once. `at_least` counts any plan in which pieces lie square to the sheet.
/// # Source
/// Geometry; the bound by areas, and by a linear program over the pieces that pairwise lie on one sheet.
/// # Example
/// ```
/// use storyrod::{geometry::{Item, panels}, measure::Length};
/// let half = Item { size: (Length::feet(2), Length::feet(8)), core: None, doubled_area: 2 * 609_600_000 * 2_438_400_000 };
/// let plan = panels((Length::feet(4), Length::feet(8)), &[half; 3], Length::ZERO, false);
/// assert_eq!((plan.sheets.len(), plan.at_least), (2, 2));
/// ```
#[must_use]
pub fn panels(sheet: (Length, Length), items: &[Item], kerf: Length, quarter: bool) -> Panels {
    let packing = Packing {
        sheet,
        items,
        kerf,
        quarter,
    };
    let at_least = at_least(sheet, items, quarter);
    let keys: [fn(&Item) -> (Length, Length); 4] = [
        |item| (item.size.0.max(item.size.1), item.size.0.min(item.size.1)),
        |item| (item.size.0.min(item.size.1), item.size.0.max(item.size.1)),
        |item| item.size,
        |item| (item.size.1, item.size.0),
    ];
    let mut orders: Vec<Vec<usize>> = Vec::new();
    let mut by_area: Vec<usize> = (0..items.len()).collect();
    by_area.sort_by_key(|n| (Reverse(area(items[*n].size)), *n));
    orders.push(by_area.clone());
    for key in keys {
        let mut order: Vec<usize> = (0..items.len()).collect();
        order.sort_by_key(|n| (Reverse(key(&items[*n])), *n));
        orders.push(order);
    }
    let parts = [Part::Large, Part::Upright, Part::Level];
    let mut best: Option<Vec<Open>> = None;
    let mut keep = |found: Vec<Open>| {
        let better = best.as_ref().is_none_or(|best| {
            (found.len(), Reverse(rest(&found))) < (best.len(), Reverse(rest(best)))
        });
        if better {
            best = Some(found);
        }
        best.as_ref().map_or(0, Vec::len)
    };
    let mut count = usize::MAX;
    for order in &orders {
        for part in parts {
            count = keep(packing.packed(order, part));
        }
    }
    // More orders, each two places off the one by area exchanged; the same ones for the same job.
    let mut state = 1u64;
    let mut drawn = |most: usize| {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((state >> 33) as usize) % most.max(1)
    };
    for round in 0..TRIES {
        if count <= at_least || items.len() < 3 {
            break;
        }
        let mut order = by_area.clone();
        for _ in 0..=round % 4 {
            let (a, b) = (drawn(order.len()), drawn(order.len()));
            order.swap(a, b);
        }
        count = keep(packing.packed(&order, parts[drawn(parts.len())]));
    }
    let sheets = best.unwrap_or_default();
    Panels {
        sheets: sheets.into_iter().map(|open| open.placed).collect(),
        at_least,
    }
}

fn at_least(sheet: (Length, Length), items: &[Item], quarter: bool) -> usize {
    // The same ones together, the largest first.
    let mut shapes: Vec<(Item, usize)> = Vec::new();
    for item in items {
        match shapes.iter_mut().find(|(known, _)| known == item) {
            Some((_, count)) => *count += 1,
            None => shapes.push((*item, 1)),
        }
    }
    shapes.sort_by_key(|(item, _)| Reverse(item.doubled_area));
    let counts: Vec<usize> = shapes.iter().map(|(_, count)| *count).collect();
    let areas: Vec<i128> = shapes.iter().map(|(item, _)| item.doubled_area).collect();
    let beside = |(wa, ha): (Length, Length), (wb, hb): (Length, Length)| {
        (wa + wb <= sheet.0 && ha.max(hb) <= sheet.1)
            || (ha + hb <= sheet.1 && wa.max(wb) <= sheet.0)
    };
    let together = |(a, _): (usize, usize), (b, _): (usize, usize)| {
        let (Some(one), Some(other)) = (shapes[a].0.core, shapes[b].0.core) else {
            return true;
        };
        let ways = |size: (Length, Length)| {
            let turned = quarter.then_some((size.1, size.0));
            std::iter::once(size).chain(turned)
        };
        ways(one).any(|one| ways(other).any(|other| beside(one, other)))
    };
    let Covered { at_least, .. } =
        cover(&counts, &areas, area(sheet) * 2 + AREA_SLACK, 1, &together);
    at_least
}

/// A box inside a piece: that of its box which its sides leave, each side taken where it stands furthest in.
///
/// # Gives
/// `None` where that box does not lie inside, or the piece has holes.
/// # Source
/// Geometry.
/// # Example
/// ```
/// use storyrod::{geometry::{Region, core}, measure::Length};
/// let piece = Region::rectangle(Length::feet(2), Length::feet(3));
/// assert_eq!(core(&piece), Some((Length::feet(2), Length::feet(3))));
/// ```
#[must_use]
pub fn core(piece: &Region) -> Option<(Length, Length)> {
    if !piece.holes.is_empty() {
        return None;
    }
    let (least, most) = piece.bounds()?;
    let quarter = Point::new((most.x - least.x).divided(4), (most.y - least.y).divided(4));
    let points = || piece.outer.points.iter();
    let left = points().map(|p| p.x).filter(|x| *x <= least.x + quarter.x);
    let right = points().map(|p| p.x).filter(|x| *x >= most.x - quarter.x);
    let top = points().map(|p| p.y).filter(|y| *y <= least.y + quarter.y);
    let bottom = points().map(|p| p.y).filter(|y| *y >= most.y - quarter.y);
    let (left, right) = (left.max()?, right.min()?);
    let (top, bottom) = (top.max()?, bottom.min()?);
    let inside = Polygon {
        points: vec![
            Point::new(left, top),
            Point::new(right, top),
            Point::new(right, bottom),
            Point::new(left, bottom),
        ],
    };
    let missing = inside.doubled_area() - inside.doubled_shared(&piece.outer);
    (missing <= AREA_SLACK / 100).then_some((right - left, bottom - top))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn item(w: i64, h: i64) -> Item {
        let size = (Length::inches(w), Length::inches(h));
        Item {
            size,
            core: Some(size),
            doubled_area: area(size) * 2,
        }
    }

    #[track_caller]
    fn check(items: &[Item], quarter: bool, sheets: usize, at_least: usize) {
        let sheet = (Length::inches(96), Length::inches(48));
        let plan = panels(sheet, items, Length::ZERO, quarter);
        assert_eq!((plan.sheets.len(), plan.at_least), (sheets, at_least));
        let mut seen = vec![0; items.len()];
        for placed in &plan.sheets {
            let boxes: Vec<_> = placed
                .iter()
                .map(|p| {
                    seen[p.item] += 1;
                    let (w, h) = items[p.item].size;
                    let (w, h) = if p.turned { (h, w) } else { (w, h) };
                    (p.at, p.at + Point::new(w, h))
                })
                .collect();
            for (n, (a, b)) in boxes.iter().enumerate() {
                assert!(b.x <= sheet.0 && b.y <= sheet.1);
                for (c, d) in &boxes[n + 1..] {
                    assert!(b.x <= c.x || d.x <= a.x || b.y <= c.y || d.y <= a.y);
                }
            }
        }
        assert!(seen.iter().all(|n| *n == 1));
    }

    #[test]
    fn strips_share_a_sheet_and_what_is_too_wide_does_not() {
        check(&[item(96, 20), item(96, 20), item(96, 20)], false, 2, 2);
        // Areas alone would let two of 50 by 30 share a sheet with a third; side by side none fits.
        check(&[item(50, 30), item(50, 30), item(50, 30)], false, 3, 3);
        // Turned, three of 40 by 30 stand beside each other.
        check(&[item(30, 40), item(40, 30), item(30, 40)], true, 1, 1);
        check(&[], false, 0, 0);
    }

    #[test]
    fn a_tapered_piece_has_a_box_inside() {
        let at = |x, y| Point::new(Length::inches(x), Length::inches(y));
        let piece = Region {
            outer: Polygon {
                points: vec![at(1, 0), at(40, 0), at(40, 30), at(0, 29)],
            },
            holes: Vec::new(),
        };
        assert_eq!(core(&piece), Some((Length::inches(39), Length::inches(29))));
    }
}
