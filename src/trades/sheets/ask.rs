//! What is asked of board in sheets, and what can be wrong with it.

use crate::geometry::{LEAST_DOUBLED, Point, Polygon, Region};
use crate::handbook::{gypsum, sheets as book};
use crate::measure::Length;
use crate::measure::quantity::Mass;
use crate::site::{FixedKind, Studs};
use crate::trades::Board;

/// Everything that a layout of sheets needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// The surface, wall to wall, openings taken out.
    pub surface: Region,
    /// Where framing and things are measured from: the left corner at the floor of a wall, across, and the top of the
    /// sheet; the surface's own upper left corner where it is nothing.
    pub origin: Option<Point>,
    /// The floor's line under a wall, from left to right; nothing where the surface's lower edge is it.
    pub floor: Option<(Point, Point)>,
    /// A floor, a wall or a ceiling.
    pub on: Surface,
    /// What it is.
    pub board: Board,
    /// The sheet's long side and its short one.
    pub sheet: (Length, Length),
    /// How thick.
    pub thickness: Length,
    /// Which way its long side runs.
    pub way: Way,
    /// The corner that the first sheet lies in.
    pub begin: Begin,
    /// Left between sheets.
    pub gap: Length,
    /// Left at walls and openings.
    pub edge: Length,
    /// Left over the floor, on a wall.
    pub off_floor: Length,
    /// How far the ends of neighbouring courses are apart, at least.
    pub stagger: Length,
    /// What carries it, where that is known.
    pub framing: Option<Framing>,
    /// What it is cut out for.
    pub things: Vec<Thing>,
    /// The farthest that screws are apart: along the edges of a piece, and inside it.
    pub screws: (Length, Length),
    /// What the saw takes; nothing where it is scored and snapped.
    pub kerf: Length,
    /// Off-cuts serve again.
    pub reuse: bool,
    /// An off-cut may be turned by a quarter.
    pub quarter: bool,
    /// Sheets spoiled that are allowed for, as a share.
    pub waste: f64,
    /// What a sheet weighs by its label.
    pub weight: Option<Mass>,
}

impl Default for Ask {
    /// A floor of 5 by 8 ft under cement board of 3 by 5 ft.
    fn default() -> Ask {
        Ask {
            surface: Region::rectangle(Length::inches(60), Length::inches(96)),
            origin: None,
            floor: None,
            on: Surface::Floor,
            board: Board::Cement,
            sheet: (Length::feet(5), Length::feet(3)),
            thickness: Length::in_64(0, 16),
            way: Way::Across,
            begin: Begin::default(),
            gap: book::CEMENT_GAP.value,
            edge: book::CEMENT_EDGE.value,
            off_floor: Length::ZERO,
            stagger: book::STAGGER.value,
            framing: None,
            things: Vec::new(),
            screws: (book::CEMENT_SCREWS.value, book::CEMENT_SCREWS.value),
            kerf: book::SCORED.value,
            reuse: true,
            quarter: true,
            waste: 0.0,
            weight: None,
        }
    }
}

impl Ask {
    /// The usual board of a wall: gypsum in 4 by 8 ft, level, on its studs.
    #[must_use]
    pub fn wall() -> Ask {
        Ask {
            surface: Region::rectangle(Length::inches(96), Length::inches(96)),
            on: Surface::Wall,
            ..Ask::default()
        }
        .of(Board::Gypsum)
    }

    /// The same in another board, with the sizes and gaps that are usual for it.
    #[must_use]
    pub fn of(self, board: Board) -> Ask {
        let screws = match self.on {
            Surface::Ceiling => gypsum::CEILING_SCREWS.value,
            _ => gypsum::WALL_SCREWS.value,
        };
        let wall = self.on == Surface::Wall;
        match board {
            Board::Cement => Ask {
                board,
                sheet: (Length::feet(5), Length::feet(3)),
                thickness: Length::in_64(0, if self.on == Surface::Floor { 16 } else { 32 }),
                gap: book::CEMENT_GAP.value,
                edge: book::CEMENT_EDGE.value,
                screws: (book::CEMENT_SCREWS.value, book::CEMENT_SCREWS.value),
                quarter: true,
                ..self
            },
            Board::Gypsum => Ask {
                board,
                sheet: (Length::feet(8), Length::feet(4)),
                thickness: Length::in_64(0, 32),
                gap: Length::ZERO,
                edge: Length::ZERO,
                off_floor: if wall {
                    book::OFF_FLOOR.value
                } else {
                    Length::ZERO
                },
                screws: (screws, screws),
                quarter: false,
                ..self
            },
            Board::Plywood => Ask {
                board,
                sheet: (Length::feet(8), Length::feet(4)),
                thickness: Length::in_64(0, 24),
                gap: Length::in_64(0, 8),
                edge: Length::in_64(0, 8),
                screws: (Length::inches(6), Length::inches(8)),
                quarter: false,
                ..self
            },
        }
    }

    /// Where framing and things are measured from.
    #[must_use]
    pub fn origin(&self) -> Point {
        let corner = || self.surface.bounds().map(|(least, _)| least);
        self.origin.or_else(corner).unwrap_or_default()
    }
}

/// A floor, a wall or a ceiling.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surface {
    /// A floor.
    Floor,
    /// A wall.
    Wall,
    /// A ceiling, drawn as seen from below the floor plan: the plan itself.
    Ceiling,
}

/// Which way the long side of a sheet runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// From left to right.
    Across,
    /// Up and down the drawing.
    Up,
}

/// The corner that the first sheet lies in: the upper left one unless said.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Begin {
    /// At the right.
    pub right: bool,
    /// At the bottom.
    pub bottom: bool,
}

/// Studs or joists behind the board.
#[derive(Clone, Debug, PartialEq)]
pub struct Framing {
    /// They stand up and down the drawing; else they run across it.
    pub upright: bool,
    /// Where, from the origin.
    pub studs: Studs,
    /// Joints that run with them land on them.
    pub land: bool,
}

/// Something that board is cut out for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Thing {
    /// What it is, where the room says so.
    pub kind: Option<FixedKind>,
    /// Its shape and size.
    pub shape: ThingShape,
    /// From the origin to its centre.
    pub from_left: Length,
    /// Down from the origin to its centre.
    pub from_top: Length,
    /// Left free all round.
    pub clear: Length,
}

/// The shape of what board is cut out for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThingShape {
    /// A drain, a stub, a valve.
    Round {
        /// Its diameter.
        across: Length,
    },
    /// A box.
    Rectangle {
        /// Across the sheet.
        width: Length,
        /// Down the sheet.
        height: Length,
    },
}

impl Thing {
    /// Its centre.
    #[must_use]
    pub fn centre(&self, origin: Point) -> Point {
        origin + Point::new(self.from_left, self.from_top)
    }
    /// The size of its hole: with what is left free.
    #[must_use]
    pub fn hole(&self) -> ThingShape {
        let more = self.clear * 2;
        match self.shape {
            ThingShape::Round { across } => ThingShape::Round {
                across: across + more,
            },
            ThingShape::Rectangle { width, height } => ThingShape::Rectangle {
                width: width + more,
                height: height + more,
            },
        }
    }
    /// The outline of its hole.
    #[must_use]
    pub fn outline(&self, origin: Point) -> Polygon {
        let centre = self.centre(origin);
        match self.hole() {
            ThingShape::Round { across } => Polygon::round(centre, across),
            ThingShape::Rectangle { width, height } => {
                let (x, y) = (width.half(), height.half());
                let at = |x, y| centre + Point::new(x, y);
                Polygon {
                    points: vec![at(-x, -y), at(x, -y), at(x, y), at(-x, y)],
                }
            }
        }
    }
}

/// A figure of the [`Ask`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// The long side of a sheet.
    Long,
    /// Its short side.
    Short,
    /// Its thickness.
    Thickness,
    /// Between sheets.
    Gap,
    /// At walls.
    Edge,
    /// Over the floor.
    OffFloor,
    /// Between the ends of neighbouring courses.
    Stagger,
    /// Between screws at the edges.
    EdgeScrews,
    /// Between screws inside.
    FieldScrews,
    /// The saw's cut.
    Kerf,
    /// A size of something cut out for, counted from 0.
    Thing(usize),
    /// What is left free round it.
    Clear(usize),
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
    /// The long side is shorter than the short one.
    SidesExchanged,
    /// Edges of the outline cross: which ring (0 the outside), and which edges.
    Crosses(usize, usize, usize),
    /// Something cut out for lies off the surface, counted from 0.
    Outside(usize),
    /// The gaps leave nothing to cover.
    NothingLeft,
    /// More sheets than are laid out: about so many.
    TooMany {
        /// About how many it would take.
        about: f64,
        /// The most that are laid out.
        most: usize,
    },
    /// Joints are to land on framing that stands nowhere.
    NoFraming,
    /// The allowance is no share.
    NoSuchWaste,
    /// The weight of a sheet is nothing, or more than a tonne.
    NoSuchWeight,
}

/// Most sheets that are laid out.
const MOST_SHEETS: usize = 400;

/// Every figure within its limits.
pub(super) fn checked(ask: &Ask) -> Result<(), Problem> {
    let range = |field, is: Length, least, most| {
        if is >= least && is <= most {
            Ok(())
        } else {
            Err(Problem::Beyond { field, least, most })
        }
    };
    let (small, large) = (Length::inches(6), Length::feet(20));
    range(Field::Long, ask.sheet.0, small, large)?;
    range(Field::Short, ask.sheet.1, small, large)?;
    if ask.sheet.0 < ask.sheet.1 {
        return Err(Problem::SidesExchanged);
    }
    let inches = Length::inches;
    range(Field::Thickness, ask.thickness, Length::mm(2), inches(2))?;
    range(Field::Gap, ask.gap, Length::ZERO, inches(1))?;
    range(Field::Edge, ask.edge, Length::ZERO, inches(2))?;
    range(Field::OffFloor, ask.off_floor, Length::ZERO, inches(12))?;
    range(
        Field::Stagger,
        ask.stagger,
        Length::ZERO,
        ask.sheet.0.half(),
    )?;
    range(Field::EdgeScrews, ask.screws.0, inches(1), inches(24))?;
    range(Field::FieldScrews, ask.screws.1, inches(1), inches(24))?;
    range(Field::Kerf, ask.kerf, Length::ZERO, inches(1))?;
    for (n, thing) in ask.things.iter().enumerate() {
        let (ThingShape::Round { across: width } | ThingShape::Rectangle { width, .. }) =
            thing.shape;
        range(Field::Thing(n), width, Length::mm(1), large)?;
        if let ThingShape::Rectangle { height, .. } = thing.shape {
            range(Field::Thing(n), height, Length::mm(1), large)?;
        }
        range(Field::Clear(n), thing.clear, Length::ZERO, inches(6))?;
    }
    if !(0.0..=1.0).contains(&ask.waste) {
        return Err(Problem::NoSuchWaste);
    }
    if (ask.weight).is_some_and(|weight| !(0.1..=1000.0).contains(&weight.value)) {
        return Err(Problem::NoSuchWeight);
    }
    if let Some((ring, a, b)) = ask.surface.crossing() {
        return Err(Problem::Crosses(ring, a, b));
    }
    let origin = ask.origin();
    for (n, thing) in ask.things.iter().enumerate() {
        if thing.outline(origin).doubled_shared(&ask.surface.outer) < LEAST_DOUBLED {
            return Err(Problem::Outside(n));
        }
    }
    Ok(())
}

/// What is covered: the surface less its gaps and what it is cut out for, checked; every part of it.
pub(super) fn field(ask: &Ask) -> Result<Vec<Region>, Problem> {
    checked(ask)?;
    let (_, most) = ask.surface.bounds().ok_or(Problem::NothingLeft)?;
    let mut taken: Vec<Polygon> = Vec::new();
    let lift = ask.off_floor - ask.edge;
    if ask.on == Surface::Wall && lift.is_positive() {
        let (a, b) = ask.floor.unwrap_or_else(|| {
            let left = ask.surface.bounds().map_or(most, |(least, _)| least);
            (Point::new(left.x, most.y), most)
        });
        // A band over the floor, well beyond both ends of it.
        let far = Point::new((b.x - a.x) * 2, (b.y - a.y) * 2);
        let (a, b) = (a - far, b + far);
        let up = Point::new(Length::ZERO, ask.off_floor);
        let down = Point::new(Length::ZERO, Length::feet(20));
        taken.push(Polygon {
            points: vec![a - up, b - up, b + down, a + down],
        });
    }
    let origin = ask.origin();
    taken.extend(ask.things.iter().map(|thing| thing.outline(origin)));
    let parts = ask.surface.inset(ask.edge);
    let field: Vec<Region> = if taken.is_empty() {
        parts
    } else {
        parts.iter().flat_map(|part| part.without(&taken)).collect()
    };
    let area: i128 = field.iter().map(Region::doubled_area).sum();
    if area < LEAST_DOUBLED {
        return Err(Problem::NothingLeft);
    }
    let (least, most) = Region::bounds_of(&field).ok_or(Problem::NothingLeft)?;
    let size = most - least;
    let sheet = ask.sheet.0.metres() * ask.sheet.1.metres();
    let about = size.x.metres() * size.y.metres() / sheet;
    if about > MOST_SHEETS as f64 {
        return Err(Problem::TooMany {
            about,
            most: MOST_SHEETS,
        });
    }
    if let Some(framing) = ask.framing.as_ref().filter(|framing| framing.land)
        && framing.studs.centres(Length::feet(60)).is_empty()
    {
        return Err(Problem::NoFraming);
    }
    Ok(field)
}
