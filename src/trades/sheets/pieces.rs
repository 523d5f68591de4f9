//! The pieces: each with its shape, its number, and the sheet that it comes out of.

use super::ask::Ask;
use super::courses::{Laid, laid};
use super::marks::{Cut, Hole, cuts, holes};
use crate::geometry::{Item, Panels, Point, Region, core, narrowest, panels};
use crate::measure::Length;

/// One piece of board.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Its number in the order of laying, from 1.
    pub number: usize,
    /// Its course, from 0.
    pub course: usize,
    /// Its shape on the surface.
    pub region: Region,
    /// The box round it: across and down.
    pub size: (Length, Length),
    /// A sheet as it comes.
    pub whole: bool,
    /// The sheet that it comes out of, from 0.
    pub sheet: usize,
    /// Where its box lies on that sheet: from the left and from the top edge of the sheet as it lies with its long side
    /// running as it is laid.
    pub on_sheet: Point,
    /// It is turned by a quarter on that sheet.
    pub turned: bool,
    /// Its corners, from the left and the top edge of its box, clockwise.
    pub corners: Vec<(Length, Length)>,
    /// The lines to cut.
    pub cuts: Vec<Cut>,
    /// The holes in it and at its edges.
    pub holes: Vec<Hole>,
    /// How thin it is at its thinnest, holes left out.
    pub thin: Length,
}

/// Twice square nanometres of the box.
fn doubled((w, h): (Length, Length)) -> i128 {
    2 * i128::from(w.as_nm()) * i128::from(h.as_nm())
}

/// The sheet as it is laid: across and down.
pub(super) fn sheet_laid(ask: &Ask) -> (Length, Length) {
    match ask.way {
        super::Way::Across => ask.sheet,
        super::Way::Up => (ask.sheet.1, ask.sheet.0),
    }
}

/// Every piece, and the plan of sheets: the whole ones first, then those that are cut.
pub(super) struct Cutting {
    pub pieces: Vec<Piece>,
    pub laid: Laid,
    pub plan: Panels,
    pub whole: usize,
}

pub(super) fn cutting(ask: &Ask, field: &[Region]) -> Cutting {
    let laid = laid(ask, field);
    let sheet = sheet_laid(ask);
    let mut pieces: Vec<Piece> = Vec::new();
    for cell in &laid.cells {
        for region in &cell.parts {
            let (least, most) = region.bounds().unwrap_or_default();
            let size = (most.x - least.x, most.y - least.y);
            let whole = size == sheet && region.doubled_area() == doubled(sheet);
            let plain = Region {
                outer: region.outer.clone(),
                holes: Vec::new(),
            };
            let corner = |p: &Point| (p.x - least.x, p.y - least.y);
            pieces.push(Piece {
                number: pieces.len() + 1,
                course: cell.course,
                size,
                whole,
                sheet: 0,
                on_sheet: Point::default(),
                turned: false,
                corners: region.outer.points.iter().map(corner).collect(),
                cuts: Vec::new(),
                holes: holes(ask, region, least),
                thin: narrowest(&plain),
                region: region.clone(),
            });
        }
    }
    let whole = pieces.iter().filter(|piece| piece.whole).count();
    for (n, piece) in pieces.iter_mut().filter(|piece| piece.whole).enumerate() {
        piece.sheet = n;
    }
    let cut: Vec<usize> = (0..pieces.len()).filter(|n| !pieces[*n].whole).collect();
    let items: Vec<Item> = cut
        .iter()
        .map(|n| Item {
            size: pieces[*n].size,
            core: core(&pieces[*n].region),
            doubled_area: pieces[*n].region.doubled_area(),
        })
        .collect();
    let plan = if ask.reuse {
        panels(sheet, &items, ask.kerf, ask.quarter)
    } else {
        alone(items.len())
    };
    for (n, placed) in plan.sheets.iter().enumerate() {
        for one in placed {
            let piece = &mut pieces[cut[one.item]];
            piece.sheet = whole + n;
            piece.on_sheet = one.at;
            piece.turned = one.turned;
        }
    }
    for piece in pieces.iter_mut().filter(|piece| !piece.whole) {
        piece.cuts = cuts(ask, piece);
    }
    Cutting {
        pieces,
        laid,
        plan,
        whole,
    }
}

/// Each piece on a sheet of its own.
fn alone(count: usize) -> Panels {
    let one = |item| {
        vec![crate::geometry::Placed {
            item,
            at: Point::default(),
            turned: false,
        }]
    };
    Panels {
        sheets: (0..count).map(one).collect(),
        at_least: count,
    }
}
