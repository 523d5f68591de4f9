//! Mosaic: small tiles on sheets. The pattern is laid by the small tile; which of them come on one sheet is told here.
//!
//! A sheet that is not laid whole is cut along the joints of its backing; the pieces come out of as few sheets as the
//! packing finds, and a bound says how many fewer there could be.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use super::{Ask, Laid, Layout, Pattern};
use crate::measure::Length;

/// How many small tiles are on a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// Along the rows.
    pub along: u16,
    /// Rows.
    pub rows: u16,
}

/// A place of the layout that one sheet is meant for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Block {
    /// The layout's tiles that lie in it.
    pub tiles: Vec<usize>,
    /// Columns and rows of small tiles that are needed of its sheet.
    pub size: (u16, u16),
}

/// The sheets of a layout.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheets {
    /// How many small tiles are on one.
    pub sheet: Sheet,
    /// The first column and row of the pattern that a sheet begins at; others follow a sheet apart.
    pub first: (i32, i32),
    /// Every place that a sheet or a piece of one is laid.
    pub blocks: Vec<Block>,
    /// Sheets that are laid whole, edge tiles cut where they have to be.
    pub whole: usize,
    /// The sheets that are cut along their joints, each with the places its pieces go to.
    pub cut: Vec<Vec<usize>>,
    /// No plan takes fewer than so many sheets in all.
    pub at_least: usize,
}

impl Sheets {
    /// Sheets, pieces of one sheet used in several places.
    #[must_use]
    pub fn count(&self) -> usize {
        self.whole + self.cut.len()
    }
    /// The block that a column and row of the pattern belong to.
    #[must_use]
    pub fn place(&self, (column, row): (i32, i32)) -> (i32, i32) {
        place(self.sheet, self.first, (column, row))
    }
}

fn place(sheet: Sheet, first: (i32, i32), (column, row): (i32, i32)) -> (i32, i32) {
    (
        (column - first.0).div_euclid(i32::from(sheet.along.max(1))),
        (row - first.1).div_euclid(i32::from(sheet.rows.max(1))),
    )
}

/// Rows after which a pattern repeats: a sheet begins at one of these.
pub(super) fn repeat(pattern: Pattern) -> Option<u16> {
    match pattern {
        Pattern::Grid => Some(1),
        Pattern::Bond { of, .. } => Some(of.max(1).into()),
        Pattern::Hexagon => Some(2),
        _ => None,
    }
}

/// A sheet's own size, its outer joints not with it; of hexagons as far as its rows reach.
///
/// # Source
/// Arithmetic: small tiles and the joints between them.
/// # Example
/// ```
/// use storyrod::measure::Length;
/// use storyrod::trades::tile::{Ask, Sheet, Tile, sheet_size};
/// let tile = Tile { long: Length::in_64(1, 56), short: Length::in_64(1, 56), ..Tile::default() };
/// let sheet = Sheet { along: 6, rows: 6 };
/// let ask = Ask { tile, sheet: Some(sheet), ..Ask::default() };
/// // Six of 1 7/8 in and five joints of 1/8.
/// assert_eq!(sheet_size(&ask, sheet).0, Length::in_64(11, 56));
/// ```
#[must_use]
pub fn sheet_size(ask: &Ask, sheet: Sheet) -> (Length, Length) {
    let (along, rows) = (i64::from(sheet.along), i64::from(sheet.rows));
    let wide = (ask.tile.long + ask.joint) * along - ask.joint;
    let high = if ask.pattern == Pattern::Hexagon {
        let row = (ask.tile.long + ask.joint).metres() * 3f64.sqrt() / 2.0;
        let tips = ask.tile.long.metres() * 2.0 / 3f64.sqrt();
        Length::from_metres(row * (rows - 1) as f64 + tips).unwrap_or_default()
    } else {
        (ask.tile.short + ask.joint) * rows - ask.joint
    };
    (wide, high)
}

/// The sheets of a layout: where each is laid, and which pieces come out of one.
///
/// Sheets begin where fewest are taken, out of the first and the last columns and rows of the field.
///
/// # Inputs
/// A layout of this ask; nothing is told where it comes tile by tile.
/// # Gives
/// Every small tile in one block; without reuse each block on a sheet of its own.
/// # Source
/// Geometry; the largest piece first is a rule of thumb, and `at_least` is the cells that are needed by those of a sheet.
/// # Example
/// ```
/// use storyrod::{geometry::Point, measure::Length};
/// use storyrod::trades::tile::{Ask, Sheet, Tile, lay};
/// let tile = Tile { long: Length::in_64(1, 56), short: Length::in_64(1, 56), ..Tile::default() };
/// let ask = Ask { tile, gap: Length::ZERO, sheet: Some(Sheet { along: 6, rows: 6 }), ..Ask::default() };
/// // A floor of 5 by 8 ft in sheets of a foot.
/// let sheets = lay(&ask, Point::default()).unwrap().sheets.unwrap();
/// assert_eq!((sheets.whole, sheets.count()), (40, 40));
/// ```
#[must_use]
pub fn sheets(ask: &Ask, tiles: &[Laid]) -> Option<Sheets> {
    let sheet = ask.sheet?;
    let step = i32::from(repeat(ask.pattern)?);
    let cells = || tiles.iter().map(|laid| laid.tile.cell);
    let (columns, rows) = (cells().map(|c| c.0), cells().map(|c| c.1));
    let (left, right) = (columns.clone().min()?, columns.max()?);
    let (top, bottom) = (rows.clone().min()?, rows.max()?);
    let (along, high) = (i32::from(sheet.along), i32::from(sheet.rows));
    let mut best: Option<Sheets> = None;
    for x in [left, right + 1 - along, left + 1, right - along] {
        for y in [top, bottom + 1 - high, top + 1, bottom - high] {
            let found = from(ask, sheet, (x, y.div_euclid(step) * step), tiles);
            let worth = |s: &Sheets| (s.count(), s.blocks.len());
            if best.as_ref().is_none_or(|b| worth(&found) < worth(b)) {
                best = Some(found);
            }
        }
    }
    best
}

/// Sheets that begin at a column and row.
fn from(ask: &Ask, sheet: Sheet, first: (i32, i32), tiles: &[Laid]) -> Sheets {
    let mut places: BTreeMap<(i32, i32), Vec<usize>> = BTreeMap::new();
    for (at, laid) in tiles.iter().enumerate() {
        let place = place(sheet, first, laid.tile.cell);
        places.entry(place).or_default().push(at);
    }
    let all = usize::from(sheet.along) * usize::from(sheet.rows);
    let blocks: Vec<Block> = places
        .into_values()
        .map(|tiles_in| Block {
            size: extent(&tiles_in, tiles),
            tiles: tiles_in,
        })
        .collect();
    let is_whole = |block: &Block| block.tiles.len() == all;
    let whole = blocks.iter().filter(|block| is_whole(block)).count();
    let mut parts: Vec<usize> = (0..blocks.len())
        .filter(|n| !is_whole(&blocks[*n]))
        .collect();
    let cells = |n: usize| u32::from(blocks[n].size.0) * u32::from(blocks[n].size.1);
    parts.sort_by_key(|n| (Reverse(cells(*n)), *n));
    let (cut, at_least) = if ask.reuse {
        let step = repeat(ask.pattern).unwrap_or(1);
        let needed: u32 = parts.iter().map(|n| blocks[*n].tiles.len() as u32).sum();
        (
            packed(sheet, step, &parts, &blocks),
            whole + (needed as usize).div_ceil(all.max(1)),
        )
    } else {
        let alone: Vec<Vec<usize>> = parts.iter().map(|n| vec![*n]).collect();
        let count = whole + alone.len();
        (alone, count)
    };
    Sheets {
        sheet,
        first,
        blocks,
        whole,
        cut,
        at_least,
    }
}

/// Columns and rows that some of the tiles take.
fn extent(some: &[usize], tiles: &[Laid]) -> (u16, u16) {
    let over = |pick: fn((i32, i32)) -> i32| {
        let values = some.iter().map(|at| pick(tiles[*at].tile.cell));
        let (low, high) = (values.clone().min(), values.max());
        let span = low.zip(high).map_or(0, |(low, high)| high - low + 1);
        u16::try_from(span).unwrap_or(u16::MAX)
    };
    (over(|c| c.0), over(|c| c.1))
}

/// A rectangle of a sheet that is still free: column, row, across, down.
type Free = (u16, u16, u16, u16);

/// Blocks out of sheets, cut from edge to edge along the joints; rows that are left begin at a repeat of the pattern.
fn packed(sheet: Sheet, step: u16, parts: &[usize], blocks: &[Block]) -> Vec<Vec<usize>> {
    let mut sheets: Vec<(Vec<usize>, Vec<Free>)> = Vec::new();
    for part in parts {
        let (w, h) = blocks[*part].size;
        // What is cut off below begins at a repeat, so that the rows of what is left run as in a whole sheet.
        let h = h.div_ceil(step) * step;
        let fits = |free: &Free| free.2 >= w && free.3 >= h.min(sheet.rows);
        let found = sheets.iter().enumerate().find_map(|(n, (_, free))| {
            let room = |at: &usize| u32::from(free[*at].2) * u32::from(free[*at].3);
            let at = (0..free.len())
                .filter(|at| fits(&free[*at]))
                .min_by_key(room)?;
            Some((n, at))
        });
        let (n, at) = found.unwrap_or_else(|| {
            sheets.push((Vec::new(), vec![(0, 0, sheet.along, sheet.rows)]));
            (sheets.len() - 1, 0)
        });
        let (pieces, free) = &mut sheets[n];
        pieces.push(*part);
        let (x, y, wide, high) = free.swap_remove(at);
        let (right, below) = (wide.saturating_sub(w), high.saturating_sub(h));
        // The longer cut first leaves the larger rest in one piece.
        let rests = if u32::from(right) * u32::from(high) >= u32::from(below) * u32::from(wide) {
            [(x + w, y, right, high), (x, y + h, w, below)]
        } else {
            [(x, y + h, wide, below), (x + w, y, right, h)]
        };
        free.extend(rests.into_iter().filter(|rest| rest.2 > 0 && rest.3 > 0));
    }
    sheets.into_iter().map(|(pieces, _)| pieces).collect()
}

/// The joints between sheets, each along a side of a tile that lies whole.
#[must_use]
pub fn seams(layout: &Layout) -> Vec<Vec<crate::geometry::Point>> {
    let Some(sheets) = &layout.sheets else {
        return Vec::new();
    };
    let mut lines = Vec::new();
    for laid in &layout.tiles {
        if laid.piece != super::Piece::Whole {
            continue;
        }
        let (column, row) = laid.tile.cell;
        let here = sheets.place((column, row));
        let points = laid.tile.points();
        let six = points.len() == 6;
        if sheets.place((column + 1, row)) != here {
            lines.push(points[1..3].to_vec());
        }
        if sheets.place((column, row + 1)) != here {
            lines.push(if six {
                points[2..5].to_vec()
            } else {
                points[2..4].to_vec()
            });
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::super::Problem::{NoSheets, RowsOfSheet, SheetOutOfRange};
    use super::super::{Tile, figure, lay};
    use super::*;
    use crate::geometry::{Point, Region};

    /// 24 mm tiles and joints of 1 mm: a module of 25, and sheets of 12 by 12 in 300 mm.
    fn mosaic(wide: i64, high: i64) -> Ask {
        let side = Length::mm(24);
        Ask {
            surface: Region::rectangle(Length::mm(wide), Length::mm(high)),
            gap: Length::ZERO,
            joint: Length::mm(1),
            tile: Tile {
                long: side,
                short: side,
                ..Tile::default()
            },
            sheet: Some(Sheet {
                along: 12,
                rows: 12,
            }),
            start: super::super::Start::Corner,
            breakage: 0.0,
            ..Ask::default()
        }
    }

    #[track_caller]
    fn check(wide: i64, high: i64, blocks: usize, whole: usize, count: usize, at_least: usize) {
        let ask = mosaic(wide, high);
        let layout = lay(&ask, Point::default()).unwrap();
        let sheets = layout.sheets.as_ref().unwrap();
        let found = (
            sheets.blocks.len(),
            sheets.whole,
            sheets.count(),
            sheets.at_least,
        );
        assert_eq!(found, (blocks, whole, count, at_least));
        let laid: usize = sheets.blocks.iter().map(|block| block.tiles.len()).sum();
        assert_eq!(laid, layout.tiles.len());
        assert_eq!(figure(&ask).unwrap().to_buy, count);
    }

    #[test]
    fn sheets_are_cut_along_their_joints_and_their_pieces_used_again() {
        check(1_200, 900, 12, 12, 12, 12);
        // Strips of 4 columns: three out of one sheet.
        check(1_300, 900, 15, 12, 13, 13);
        // Seven columns more: three strips of 7 would take three sheets; of 6 at one side and 1 at the other they take two.
        check(1_375, 900, 18, 12, 14, 14);
        // A strip of 6 at the right and of 6 below, and a corner of 6 by 6: eight halves and a quarter.
        check(1_350, 1_050, 20, 12, 16, 16);
    }

    #[test]
    fn sheets_meet_only_after_a_whole_repeat_of_the_pattern() {
        let refused = |pattern, rows| {
            let mut ask = mosaic(1_200, 900);
            ask.pattern = pattern;
            ask.sheet = Some(Sheet { along: 12, rows });
            lay(&ask, Point::default()).err()
        };
        assert_eq!(refused(Pattern::Grid, 11), None);
        assert_eq!(refused(Pattern::Bond { over: 1, of: 2 }, 12), None);
        let three = Pattern::Bond { over: 1, of: 3 };
        assert_eq!(refused(three, 11), Some(RowsOfSheet { of: 3 }));
        assert_eq!(refused(Pattern::Hexagon, 11), Some(RowsOfSheet { of: 2 }));
        let planks = Pattern::Planks {
            seed: 1,
            apart: Length::ZERO,
        };
        assert_eq!(refused(planks, 12), Some(NoSheets));
        assert_eq!(
            refused(Pattern::Grid, 0),
            Some(SheetOutOfRange { most: 100 })
        );
    }

    #[test]
    fn grout_is_figured_over_every_small_joint() {
        let share = figure(&mosaic(1_200, 900)).unwrap().joints;
        let exact = 1.0 - 24.0 * 24.0 / (25.0 * 25.0);
        // The last joints lie outside the field: the share is a little less than a module's.
        assert!((share - exact).abs() < 2e-3, "{share} {exact}");
    }
}
