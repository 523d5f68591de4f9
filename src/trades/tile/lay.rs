//! Lays a pattern on a surface and classes every piece exactly.

use super::ask::{MOST_TILES, checked};
use super::pattern::{module, placed};
use super::{Ask, Pattern, Placed, Problem, Sheets, sheets};
use crate::geometry::{Clip, Inside, Point, Region};
use crate::measure::quantity::{Area, in_square_metres, square_metres};

/// What of a tile is laid.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Piece {
    /// All of it.
    Whole,
    /// These pieces of it.
    Cut(Vec<Region>),
}

/// A tile that is laid, whole or cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Laid {
    /// Where the whole tile would lie.
    pub tile: Placed,
    /// What of it is laid.
    pub piece: Piece,
}

/// A pattern on a surface.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Layout {
    /// The surface less what stands in the way and the gap at its edges: one part, or several where it is cut apart.
    pub parts: Vec<Region>,
    /// The pattern's corner on the surface.
    pub start: Point,
    /// Every tile that is laid, row by row.
    pub tiles: Vec<Laid>,
    /// The sheets that they come on.
    pub sheets: Option<Sheets>,
}

impl Layout {
    /// The area of all parts.
    #[must_use]
    pub fn covered(&self) -> Area {
        let doubled: i128 = self.parts.iter().map(Region::doubled_area).sum();
        square_metres(doubled as f64 / 2e18)
    }
    /// How many tiles lie whole.
    #[must_use]
    pub fn whole(&self) -> usize {
        let whole = |laid: &&Laid| laid.piece == Piece::Whole;
        self.tiles.iter().filter(whole).count()
    }
    /// How many are cut.
    #[must_use]
    pub fn cut(&self) -> usize {
        self.tiles.len() - self.whole()
    }
    /// The faces of all pieces, joints not with them.
    #[must_use]
    pub fn faces(&self) -> Area {
        let doubled: i128 = self.tiles.iter().map(Laid::doubled_area).sum();
        square_metres(doubled as f64 / 2e18)
    }
}

impl Laid {
    /// Twice the area that is laid, in square nanometres.
    #[must_use]
    pub fn doubled_area(&self) -> i128 {
        match &self.piece {
            Piece::Whole => {
                let whole = crate::geometry::Polygon {
                    points: self.tile.points().to_vec(),
                };
                whole.doubled_area().abs()
            }
            Piece::Cut(pieces) => pieces.iter().map(Region::doubled_area).sum(),
        }
    }
}

/// The surface less what stands in the way, in one part or several.
pub(super) fn open(ask: &Ask) -> Vec<Region> {
    let Some((corner, _)) = ask.surface.bounds() else {
        return Vec::new();
    };
    if ask.things.is_empty() {
        return vec![ask.surface.clone()];
    }
    let taken: Vec<_> = ask
        .things
        .iter()
        .map(|thing| thing.outline(corner))
        .collect();
    ask.surface.without(&taken)
}

/// The field of an ask: the surface less what stands in the way and the gap, checked; every part of it.
pub(super) fn field(ask: &Ask) -> Result<Vec<Region>, Problem> {
    checked(ask)?;
    let parts = open(ask).into_iter().flat_map(|part| part.inset(ask.gap));
    let field: Vec<Region> = parts.collect();
    let (least, most) = Region::bounds_of(&field).ok_or(Problem::NothingLeft)?;
    let size = most - least;
    let (long, short) = (ask.tile.long, ask.tile.short);
    if long.min(short) > size.x.max(size.y) {
        return Err(Problem::LargerThanSurface);
    }
    let (along, across) = module(ask);
    let module = match ask.pattern {
        Pattern::Hexagon => along.metres().powi(2) * 3f64.sqrt() / 2.0,
        Pattern::TwoSquares { small } => {
            (along.metres().powi(2) + (small + ask.joint).metres().powi(2)) / 2.0
        }
        _ => along.metres() * across.metres(),
    };
    // The box round the field, since tiles are placed over all of it.
    let about = size.x.metres() * size.y.metres() / module;
    let area = field.iter().map(|part| in_square_metres(part.area()));
    let much = area.sum::<f64>() / module;
    if about.max(much) > MOST_TILES as f64 {
        return Err(Problem::TooMany {
            about: about.max(much),
            most: MOST_TILES,
        });
    }
    Ok(field)
}

/// Lays a pattern with its corner at a point, from the upper left corner of the field's box.
///
/// # Inputs
/// An ask whose figures are within their limits; `from` any point.
/// # Gives
/// Every tile that covers at least 1 mm² of the field, whole where less than 1 mm² is missing.
/// # Errors
/// [`Problem`], naming what is wrong.
/// # Source
/// Geometry: the tile less what lies outside the field, on the nanometre grid.
/// # Example
/// ```
/// use storyrod::{geometry::Point, trades::tile::{Ask, lay}};
/// let layout = lay(&Ask::default(), Point::default()).unwrap();
/// assert_eq!((layout.whole(), layout.cut()), (28, 12));
/// ```
pub fn lay(ask: &Ask, from: Point) -> Result<Layout, Problem> {
    Ok(lay_in(ask, &field(ask)?, from))
}

/// The same in a field that is known.
pub(super) fn lay_in(ask: &Ask, field: &[Region], from: Point) -> Layout {
    let (least, most) = Region::bounds_of(field).unwrap_or_default();
    let start = least + from;
    let mut clip = Clip::new(field);
    let tiles: Vec<Laid> = placed(ask, start, least, most)
        .into_iter()
        .filter_map(|tile| {
            let piece = match clip.of(tile.points()) {
                Inside::Nothing => return None,
                Inside::Whole => Piece::Whole,
                Inside::Part(pieces) => Piece::Cut(pieces),
            };
            Some(Laid { tile, piece })
        })
        .collect();
    Layout {
        parts: field.to_vec(),
        start,
        sheets: sheets(ask, &tiles),
        tiles,
    }
}

/// Where the field's box begins on the surface: what a start by hand is told from. `None` where there is no field.
///
/// # Source
/// Geometry.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::tile::{Ask, field_corner}};
/// assert_eq!(field_corner(&Ask::default()).unwrap().x, Length::in_64(0, 16));
/// ```
#[must_use]
pub fn field_corner(ask: &Ask) -> Option<Point> {
    field(ask).ok().map(|field| box_of(&field).0)
}

/// The field's box: its upper left corner and its size.
pub(super) fn box_of(field: &[Region]) -> (Point, Point) {
    let (least, most) = Region::bounds_of(field).unwrap_or_default();
    (least, most - least)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Length;
    use crate::trades::tile::{Thing, ThingShape, Tile};

    /// Foot tiles without joint or gap on 8 by 6 ft, with a box in the way.
    fn feet(size: (i64, i64), at: (i64, i64)) -> Ask {
        let inches = Length::inches;
        Ask {
            surface: Region::rectangle(inches(96), inches(72)),
            gap: Length::ZERO,
            joint: Length::ZERO,
            tile: Tile {
                long: inches(12),
                short: inches(12),
                ..Tile::default()
            },
            things: vec![Thing {
                shape: ThingShape::Rectangle {
                    width: inches(size.0),
                    height: inches(size.1),
                },
                from_left: inches(at.0),
                from_top: inches(at.1),
            }],
            ..Ask::default()
        }
    }

    #[test]
    fn a_box_in_the_corner_makes_an_l_and_a_flange_a_hole() {
        let mut ask = feet((36, 24), (60, 48));
        let layout = lay(&ask, Point::default()).unwrap();
        assert_eq!((layout.whole(), layout.cut()), (42, 0));
        assert_eq!(layout.parts[0].outer.points.len(), 6);
        ask.things.push(Thing {
            shape: ThingShape::Round {
                across: Length::inches(7),
            },
            from_left: Length::inches(24),
            from_top: Length::inches(24),
        });
        let layout = lay(&ask, Point::default()).unwrap();
        // About the corner of four tiles.
        assert_eq!((layout.whole(), layout.cut()), (38, 4));
        assert_eq!(layout.parts[0].holes.len(), 1);
    }

    #[test]
    fn what_cuts_the_floor_in_two_leaves_one_pattern_on_both_sides() {
        let mut ask = feet((18, 72), (30, 0));
        // 30 in left of it, 48 in right of it: two and a half tiles, and four.
        let layout = lay(&ask, Point::default()).unwrap();
        assert_eq!(layout.parts.len(), 2);
        assert_eq!((layout.whole(), layout.cut()), (12 + 24, 6));
        let square = crate::measure::quantity::in_square_feet(layout.covered());
        assert!((square - 39.0).abs() < 1e-9);
        // A gap takes the same off every edge of both.
        ask.gap = Length::inches(1);
        let layout = lay(&ask, Point::default()).unwrap();
        let square = crate::measure::quantity::in_square_feet(layout.covered());
        assert!((square - (28.0 + 46.0) * 70.0 / 144.0).abs() < 1e-9);
    }
}
