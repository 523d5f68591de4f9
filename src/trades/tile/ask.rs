//! What is asked of a tiled surface, and what can be wrong with it.

use super::sheets::{self, Sheet};
use crate::geometry::{LEAST_DOUBLED, Point, Polygon, Region};
use crate::measure::quantity::Area;
use crate::measure::{Angle, Length};

/// Everything that a tile layout needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// The surface, wall to wall, with whatever is left out of it.
    pub surface: Region,
    /// What stands in the way: a tub, a column, a flange, a drain.
    pub things: Vec<Thing>,
    /// A floor or a wall.
    pub on: Surface,
    /// Left open along every edge.
    pub gap: Length,
    /// The tile.
    pub tile: Tile,
    /// Between two tiles.
    pub joint: Length,
    /// How they lie.
    pub pattern: Pattern,
    /// By the other hand: laid as in a mirror, before it is turned.
    pub other_hand: bool,
    /// The pattern, turned clockwise on the sheet.
    pub turn: Angle,
    /// Where it starts.
    pub start: Start,
    /// What a balanced start has to keep to.
    pub hold: Option<Hold>,
    /// What the saw takes away.
    pub kerf: Length,
    /// The face has a direction: a piece may be turned half round, never a quarter.
    pub grain: bool,
    /// Off-cuts serve again.
    pub reuse: bool,
    /// How boxes are counted; `None` where they are not.
    pub box_of: Option<BoxOf>,
    /// Broken and miscut tiles allowed for, as a share.
    pub breakage: f64,
    /// Whole tiles kept for later.
    pub attic: u32,
    /// Where it lies, for movement joints.
    pub run: Run,
    /// The tile comes on sheets: mosaic. `None` where it comes one by one.
    pub sheet: Option<Sheet>,
}

impl Default for Ask {
    /// A floor of 5 by 8 ft in 12 in tile.
    fn default() -> Ask {
        Ask {
            surface: Region::rectangle(Length::inches(60), Length::inches(96)),
            things: Vec::new(),
            on: Surface::Floor,
            gap: Length::in_64(0, 16),
            tile: Tile::default(),
            joint: Length::in_64(0, 8),
            pattern: Pattern::Grid,
            other_hand: false,
            turn: Angle::ZERO,
            start: Start::Balanced(Sight::Middle),
            hold: None,
            kerf: Length::in_64(0, 6),
            grain: false,
            reuse: true,
            box_of: None,
            breakage: 0.05,
            attic: 0,
            run: Run::Dry,
            sheet: None,
        }
    }
}

/// A tile as it comes out of the box.
#[derive(Clone, Debug, PartialEq)]
pub struct Tile {
    /// Along the rows; of a hexagon, flat to flat.
    pub long: Length,
    /// Across them.
    pub short: Length,
    /// How thick.
    pub thickness: Length,
    /// The most by which two tiles of the box differ, where that was measured.
    pub spread: Option<Length>,
    /// How far an edge is bowed, where that was measured.
    pub warp: Option<Length>,
    /// How its edges were made.
    pub edge: Edge,
}

impl Default for Tile {
    /// 11 7/8 in square, 3/8 in thick.
    fn default() -> Tile {
        Tile {
            long: Length::in_64(11, 56),
            short: Length::in_64(11, 56),
            thickness: Length::in_64(0, 24),
            spread: None,
            warp: None,
            edge: Edge::Unknown,
        }
    }
}

/// Something that no tile lies under.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Thing {
    /// Its shape and size.
    pub shape: ThingShape,
    /// From the left edge of the surface to its left edge, or to a round one's centre.
    pub from_left: Length,
    /// From the top edge of the surface to its top edge, or to a round one's centre.
    pub from_top: Length,
}

/// The shape of what stands in the way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThingShape {
    /// A flange, a drain, a pipe.
    Round {
        /// Its diameter.
        across: Length,
    },
    /// A tub, a column, a box.
    Rectangle {
        /// Across the sheet.
        width: Length,
        /// Down the sheet.
        height: Length,
    },
}

impl Thing {
    /// Its outline on a surface whose upper left corner is given; a round one as 64 chords of its circle.
    #[must_use]
    pub fn outline(&self, corner: Point) -> Polygon {
        let at = |x: Length, y: Length| corner + Point::new(self.from_left + x, self.from_top + y);
        let points = match self.shape {
            ThingShape::Rectangle { width, height } => vec![
                at(Length::ZERO, Length::ZERO),
                at(width, Length::ZERO),
                at(width, height),
                at(Length::ZERO, height),
            ],
            ThingShape::Round { across } => {
                return Polygon::round(at(Length::ZERO, Length::ZERO), across);
            }
        };
        Polygon { points }
    }
}

/// How the edges of a tile were made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// Not known.
    Unknown,
    /// Ground to size after firing.
    Rectified,
    /// Sorted by size.
    Calibrated,
}

/// A floor or a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surface {
    /// A floor.
    Floor,
    /// A wall.
    Wall,
}

/// Where it lies, for movement joints.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Run {
    /// Inside and dry.
    Dry,
    /// In the sun, wet, or outside.
    SunOrWet,
}

/// How tiles lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pattern {
    /// Joints in line both ways.
    Grid,
    /// Each row shifted by `over`/`of` of a tile.
    Bond {
        /// Parts shifted.
        over: u8,
        /// Parts of a tile.
        of: u8,
    },
    /// Two short sides against a long one, turning.
    Herringbone,
    /// Pairs, each at right angles to the next.
    Basketweave,
    /// A large square and a small one.
    TwoSquares {
        /// Side of the small one.
        small: Length,
    },
    /// Hexagons.
    Hexagon,
    /// Planks whose ends fall as they come, never nearer than `apart` to those of the next row.
    Planks {
        /// What the ends are drawn from; the same number gives the same floor.
        seed: u32,
        /// Least distance of ends in neighbouring rows.
        apart: Length,
    },
}

/// What a layout is centred for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sight {
    /// The middle of the surface.
    Middle,
    /// A line across the surface that the eye follows, so far from its left edge: the pattern is even to both sides.
    Across(Length),
    /// The same from its top edge.
    Along(Length),
}

/// Where the pattern starts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Start {
    /// So that the narrowest cut is as wide as can be, then even about the sight line, then fewest tiles.
    Balanced(Sight),
    /// So that fewest tiles are taken.
    Fewest,
    /// With the first whole tile in the upper left corner of the field.
    Corner,
    /// By hand: the pattern's own corner, from the upper left corner of the field.
    ByHand(Point),
}

/// What a balanced start keeps to, in a pattern that lies square to the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hold {
    /// A whole tile at an edge: the threshold, the tub.
    Whole(Side),
    /// The middle of a joint so far from the left edge of the surface: a line of the wall, a centre line.
    JointFromLeft(Length),
    /// The same from the top edge.
    JointFromTop(Length),
}

/// An edge of the surface.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The left one.
    Left,
    /// The right one.
    Right,
    /// The upper one.
    Top,
    /// The lower one.
    Bottom,
}

/// How a box is counted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BoxOf {
    /// So many tiles.
    Tiles(u32),
    /// An area of faces.
    Faces(Area),
    /// An area laid, joints with it.
    Laid(Area),
}

/// A figure of the [`Ask`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// A side of the tile along the rows.
    Long,
    /// A side across them.
    Short,
    /// The small square's side.
    Small,
    /// The joint.
    Joint,
    /// The gap at the edges.
    Gap,
    /// The saw's cut.
    Kerf,
    /// Ends of planks.
    Apart,
    /// Tiles or area in a box.
    Box,
    /// The allowance for breakage.
    Breakage,
}

/// What no tile lies under.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Taken {
    /// A hole of the surface: a window, a niche.
    Hole(usize),
    /// Something in the way.
    Thing(usize),
}

/// Why there is no layout.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// A figure is out of its range.
    Beyond {
        /// Which.
        field: Field,
        /// The least.
        least: Length,
        /// The most.
        most: Length,
    },
    /// The joint is wider than the tile.
    JointWiderThanTile,
    /// The pattern has an even joint only where the long side is twice the short one and a joint.
    LongSide {
        /// What the long side would have to be.
        wants: Length,
    },
    /// Edges of the outline cross: which ring (0 the outside), and which edges.
    Crosses(usize, usize, usize),
    /// Two lie over each other.
    Overlap(Taken, Taken),
    /// It lies outside the surface, or a hole reaches past its edge.
    Outside(Taken),
    /// The gap leaves nothing to tile.
    NothingLeft,
    /// The tile is larger than the surface both ways.
    LargerThanSurface,
    /// More tiles than are laid out: about so many.
    TooMany {
        /// About how many it would take.
        about: f64,
        /// The most that are laid out.
        most: usize,
    },
    /// A box holds nothing, or an allowance is no share.
    NoSuchBox,
    /// A pattern that does not come on sheets.
    NoSheets,
    /// A sheet has no tiles, or more than are counted: at most so many each way.
    SheetOutOfRange {
        /// The most.
        most: u16,
    },
    /// The rows of a sheet are no multiple of those after which the pattern repeats.
    RowsOfSheet {
        /// Rows of a repeat.
        of: u16,
    },
}

/// Most tiles that are laid out.
pub(super) const MOST_TILES: usize = 60_000;

/// Most small tiles of a sheet, each way.
const MOST_ON_SHEET: u16 = 100;

/// Every figure within its limits.
pub(super) fn checked(ask: &Ask) -> Result<(), Problem> {
    let range = |field, is: Length, least, most| {
        if is >= least && is <= most {
            Ok(())
        } else {
            Err(Problem::Beyond { field, least, most })
        }
    };
    let (least, most) = (Length::mm(5), Length::feet(20));
    range(Field::Long, ask.tile.long, least, most)?;
    range(Field::Short, ask.tile.short, least, most)?;
    range(Field::Joint, ask.joint, Length::ZERO, Length::inches(2))?;
    range(Field::Gap, ask.gap, Length::ZERO, Length::feet(2))?;
    range(Field::Kerf, ask.kerf, Length::ZERO, Length::inches(1))?;
    if let Pattern::TwoSquares { small } = ask.pattern {
        range(Field::Small, small, least, ask.tile.long)?;
    }
    if let Pattern::Planks { apart, .. } = ask.pattern {
        range(Field::Apart, apart, Length::ZERO, ask.tile.long.divided(3))?;
    }
    if ask.joint > ask.tile.short.min(ask.tile.long) {
        return Err(Problem::JointWiderThanTile);
    }
    if matches!(ask.pattern, Pattern::Herringbone | Pattern::Basketweave) {
        let wants = ask.tile.short * 2 + ask.joint;
        // A tenth of a millimetre is the tape's own; a joint takes it up unseen, as far as there is one.
        let off = ask.tile.long - wants;
        let tenth = Length::nm(100_000);
        if off < -tenth || off > tenth.min(ask.joint) {
            return Err(Problem::LongSide { wants });
        }
    }
    if let Some(sheet) = ask.sheet {
        let of = sheets::repeat(ask.pattern).ok_or(Problem::NoSheets)?;
        let most = MOST_ON_SHEET;
        if ![sheet.along, sheet.rows]
            .iter()
            .all(|n| (1..=most).contains(n))
        {
            return Err(Problem::SheetOutOfRange { most });
        }
        if sheet.rows % of != 0 {
            return Err(Problem::RowsOfSheet { of });
        }
    }
    if !(0.0..=1.0).contains(&ask.breakage) {
        return Err(Problem::NoSuchBox);
    }
    match ask.box_of {
        Some(BoxOf::Tiles(0)) => return Err(Problem::NoSuchBox),
        Some(BoxOf::Faces(area) | BoxOf::Laid(area))
            if !area.value.is_finite() || area.value <= 0.0 =>
        {
            return Err(Problem::NoSuchBox);
        }
        _ => {}
    }
    if let Some((ring, a, b)) = ask.surface.crossing() {
        return Err(Problem::Crosses(ring, a, b));
    }
    clear_of_each_other(ask)
}

/// Holes lie inside the surface, things at least partly, and none of them over another.
fn clear_of_each_other(ask: &Ask) -> Result<(), Problem> {
    let Some((corner, _)) = ask.surface.bounds() else {
        return Ok(());
    };
    let holes = ask.surface.holes.iter().cloned().enumerate();
    let things = ask.things.iter().map(|thing| thing.outline(corner));
    let taken: Vec<(Taken, Polygon)> = holes
        .map(|(n, hole)| (Taken::Hole(n), hole))
        .chain(things.enumerate().map(|(n, at)| (Taken::Thing(n), at)))
        .collect();
    for (n, (one, outline)) in taken.iter().enumerate() {
        let inside = outline.doubled_shared(&ask.surface.outer);
        let outside = match one {
            // A tub may reach into its wall by a hair; an opening of the wall may not.
            Taken::Thing(_) => inside < LEAST_DOUBLED,
            Taken::Hole(_) => outline.doubled_area().abs() - inside >= LEAST_DOUBLED,
        };
        if outside {
            return Err(Problem::Outside(*one));
        }
        let mut others = taken[n + 1..].iter();
        if let Some((other, _)) =
            others.find(|(_, other)| outline.doubled_shared(other) >= LEAST_DOUBLED)
        {
            return Err(Problem::Overlap(*one, *other));
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(left: i64, top: i64, side: i64) -> Thing {
        let side = Length::inches(side);
        Thing {
            shape: ThingShape::Rectangle {
                width: side,
                height: side,
            },
            from_left: Length::inches(left),
            from_top: Length::inches(top),
        }
    }

    #[track_caller]
    fn check(holes: &[Thing], things: &[Thing], expected: Result<(), Problem>) {
        for gap in [Length::ZERO, Length::in_64(0, 16)] {
            let mut ask = Ask {
                gap,
                things: things.to_vec(),
                ..Ask::default()
            };
            let holes = holes.iter().map(|hole| hole.outline(Point::default()));
            ask.surface.holes = holes.collect();
            assert_eq!(checked(&ask), expected, "{gap:?}");
        }
    }

    #[test]
    fn what_lies_over_another_or_outside_is_refused_by_name() {
        let (a, b, far) = (square(10, 10, 8), square(16, 16, 8), square(40, 60, 8));
        let beside = square(18, 10, 8);
        check(&[a, far], &[], Ok(()));
        check(&[a], &[beside], Ok(()));
        let over = |one, other| Err(Problem::Overlap(one, other));
        check(&[far, a, b], &[], over(Taken::Hole(1), Taken::Hole(2)));
        check(&[a], &[far, b], over(Taken::Hole(0), Taken::Thing(1)));
        check(&[], &[a, far, b], over(Taken::Thing(0), Taken::Thing(2)));
        // The surface is 60 by 96 in.
        let (past, away) = (square(56, 20, 8), square(80, 20, 8));
        check(&[a, past], &[], Err(Problem::Outside(Taken::Hole(1))));
        check(&[a, away], &[], Err(Problem::Outside(Taken::Hole(1))));
        check(&[], &[past], Ok(()));
        check(&[], &[a, away], Err(Problem::Outside(Taken::Thing(1))));
    }
}
