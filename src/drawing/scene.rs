//! What is on a sketch, before anyone decides how large to draw it.

use super::Key;
use crate::geometry::Point;
use crate::measure::{Angle, Figures, Length, Rounding, Units};

/// A sketch. `T` says what a tap on a dimension or a spot asks for.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene<T> {
    /// What is drawn, lowest first.
    pub marks: Vec<Mark>,
    /// Dimension lines.
    pub dimensions: Vec<Dimension<T>>,
    /// Places that can be tapped besides the dimensions.
    pub hot: Vec<Hot<T>>,
    /// The sketch in one sentence, for a screen reader and for the title of a file.
    pub says: String,
    /// Half the marks may run past this window (min, max) and are cut off there; `None` shows all.
    pub window: Option<(Point, Point)>,
    /// What its colours mean.
    pub key: Vec<Key>,
    /// Lines that no figure may hide as long as there is room elsewhere: beside another line it would be taken for that
    /// one's.
    pub bare: Vec<[Point; 2]>,
}

/// A colour by what it means; a palette turns it into a colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Role {
    /// The ground of the window.
    Paper,
    /// Panels.
    Sheet,
    /// Computed figures, walls, text.
    Ink,
    /// Labels.
    Soft,
    /// Hairlines.
    Rule,
    /// What is yours: inputs, selection.
    Chalk,
    /// A wash behind what is yours.
    ChalkWash,
    /// A caution.
    Amber,
    /// A wash behind a caution.
    AmberWash,
    /// Wrong.
    Red,
    /// A wash behind what is wrong.
    RedWash,
    /// Done, closes.
    Green,
    /// A wash behind what is done.
    GreenWash,
    /// Board and tile.
    Board,
    /// A hole: dark in every theme.
    Hole,
}

/// How thick a line is drawn, whatever the scale.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stroke {
    /// Hairline.
    Hair,
    /// Dimension and hidden lines.
    Thin,
    /// Edges.
    Medium,
    /// Walls and cut edges.
    Heavy,
    /// What is cut out of a heavy line: a little wider, so that nothing of it is left at the edges.
    Gap,
}

/// How a line runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Line {
    /// Unbroken.
    Solid,
    /// Hidden, or estimated.
    Dashed,
    /// A centre line or a snap line.
    DashDot,
}

/// A pen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Pen {
    /// Its colour.
    pub role: Role,
    /// Its thickness.
    pub stroke: Stroke,
    /// Its run.
    pub line: Line,
}

/// Where a text stands to its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Align {
    /// Starts there.
    Start,
    /// Centred on it.
    Middle,
    /// Ends there.
    End,
}

/// What becomes of a word where room is short.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// It is set all the same.
    Always,
    /// Left out where it would be wider than this.
    Whole(Length),
    /// Set smaller where it would be wider or higher than this, and left out where it could not be read.
    Shrunk(Length),
    /// The same, but where it could not be read it stands near by, at the end of a line that leads there.
    Led(Length),
}

/// One thing drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A line through points, closed or not, filled or not.
    Path {
        /// The points.
        points: Vec<Point>,
        /// Whether the last is joined to the first.
        closed: bool,
        /// Its outline.
        pen: Option<Pen>,
        /// Its inside.
        fill: Option<Role>,
    },
    /// Many closed lines of one look that do not overlap, drawn at once.
    Rings {
        /// The points of each.
        rings: Vec<Vec<Point>>,
        /// Their outline.
        pen: Option<Pen>,
        /// Their inside.
        fill: Option<Role>,
    },
    /// A circle.
    Circle {
        /// Its centre.
        centre: Point,
        /// Its radius.
        radius: Length,
        /// Its outline.
        pen: Option<Pen>,
        /// Its inside.
        fill: Option<Role>,
    },
    /// A part of a circle, clockwise on the sheet; 0° points right.
    Arc {
        /// Its centre.
        centre: Point,
        /// Its radius.
        radius: Length,
        /// Where it starts.
        from: Angle,
        /// How far it runs, clockwise.
        sweep: Angle,
        /// Its line.
        pen: Pen,
    },
    /// A dot of a fixed size on the sheet: a screw, a centre.
    Dot {
        /// Where.
        at: Point,
        /// Its colour.
        role: Role,
    },
    /// A word on the sketch, level whatever the scale.
    Text {
        /// Where.
        at: Point,
        /// What it says.
        text: String,
        /// Its colour.
        role: Role,
        /// How it stands to `at`; always centred up and down.
        align: Align,
        /// Bold.
        bold: bool,
        /// What becomes of it where room is short.
        fit: Fit,
    },
}

/// Whose figure a dimension is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Standing {
    /// Measured or chosen: chalk blue, in a box.
    Yours,
    /// Computed: ink, plain.
    Ours,
    /// A piece and its cut, on its own line; where that has no room for it, its number alone in a ring.
    Piece(u32),
    /// An estimate: dashed.
    Estimate,
    /// Still to measure: a dashed chalk box.
    Asked,
}

/// On which side of what it measures a dimension line stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Edge {
    /// To the left of the way from `from` to `to` (above a line drawn left to right), so many rows out; 0 is on the line.
    Left(u8),
    /// To the right of that way.
    Right(u8),
    /// On the line, one of many that cross the drawing: its figure stands on its line where it has room there; else the line
    /// is pale and bears none, and a tap on it asks for it.
    Across,
}

/// A dimension: extension lines, slash ticks, the figure on the line.
#[derive(Clone, Debug, PartialEq)]
pub struct Dimension<T> {
    /// One end of what it measures.
    pub from: Point,
    /// The other end.
    pub to: Point,
    /// It begins beyond what is shown: an arrow at `from` in place of a tick.
    pub beyond: bool,
    /// Where its line stands.
    pub edge: Edge,
    /// The figure, as it is set.
    pub text: String,
    /// Whose figure it is.
    pub standing: Standing,
    /// What a tap on it asks for; `None` for a figure of ours.
    pub tag: Option<T>,
    /// The figure and what it measures, for a screen reader: "Wall B, 5 feet 2 1/2 inches".
    pub says: String,
}

impl<T> Dimension<T> {
    /// A length that is known: yours where a tap can change it, else ours.
    pub(super) fn of(
        (from, to): (Point, Point),
        edge: Edge,
        length: Length,
        tag: Option<T>,
        units: Units,
    ) -> Dimension<T> {
        let figure = |figures| units.length(length, Rounding::Nearest, figures);
        Dimension {
            from,
            to,
            beyond: false,
            edge,
            text: figure(Figures::Set),
            standing: if tag.is_some() {
                Standing::Yours
            } else {
                Standing::Ours
            },
            tag,
            says: figure(Figures::Plain),
        }
    }
}

/// A place on the sketch that can be tapped.
#[derive(Clone, Debug, PartialEq)]
pub struct Hot<T> {
    /// One corner.
    pub min: Point,
    /// The opposite corner.
    pub max: Point,
    /// What a tap asks for.
    pub tag: T,
    /// What it is, for a screen reader.
    pub says: String,
}

impl<T> Scene<T> {
    /// A scene with nothing on it.
    #[must_use]
    pub fn empty(says: impl Into<String>) -> Scene<T> {
        Scene {
            marks: Vec::new(),
            dimensions: Vec::new(),
            hot: Vec::new(),
            says: says.into(),
            window: None,
            key: Vec::new(),
            bare: Vec::new(),
        }
    }

    /// The same scene whose taps ask for something else.
    #[must_use]
    pub fn map_tags<U>(self, tag: impl Fn(T) -> U) -> Scene<U> {
        let dimensions = self.dimensions.into_iter().map(|d| Dimension {
            from: d.from,
            to: d.to,
            beyond: d.beyond,
            edge: d.edge,
            text: d.text,
            standing: d.standing,
            tag: d.tag.map(&tag),
            says: d.says,
        });
        let hot = self.hot.into_iter().map(|h| Hot {
            min: h.min,
            max: h.max,
            tag: tag(h.tag),
            says: h.says,
        });
        Scene {
            dimensions: dimensions.collect(),
            hot: hot.collect(),
            marks: self.marks,
            says: self.says,
            window: self.window,
            key: self.key,
            bare: self.bare,
        }
    }
}

impl Mark {
    /// A straight line.
    #[must_use]
    pub fn line(from: Point, to: Point, pen: Pen) -> Mark {
        Mark::Path {
            points: vec![from, to],
            closed: false,
            pen: Some(pen),
            fill: None,
        }
    }
    /// An upright rectangle between two corners.
    #[must_use]
    pub fn rectangle(from: Point, to: Point, pen: Option<Pen>, fill: Option<Role>) -> Mark {
        Mark::Path {
            points: vec![from, Point::new(to.x, from.y), to, Point::new(from.x, to.y)],
            closed: true,
            pen,
            fill,
        }
    }
}

impl Pen {
    /// An unbroken line.
    #[must_use]
    pub const fn solid(role: Role, stroke: Stroke) -> Pen {
        Pen {
            role,
            stroke,
            line: Line::Solid,
        }
    }
    /// A dashed line.
    #[must_use]
    pub const fn dashed(role: Role, stroke: Stroke) -> Pen {
        Pen {
            role,
            stroke,
            line: Line::Dashed,
        }
    }
    /// A centre line.
    #[must_use]
    pub const fn centre(role: Role) -> Pen {
        Pen {
            role,
            stroke: Stroke::Hair,
            line: Line::DashDot,
        }
    }
}

impl<T> Scene<T> {
    /// The same sketch with each of its points somewhere else.
    #[must_use]
    pub fn with_points(mut self, to: impl Fn(Point) -> Point) -> Scene<T> {
        for mark in &mut self.marks {
            match mark {
                Mark::Path { points, .. } => points.iter_mut().for_each(|at| *at = to(*at)),
                Mark::Rings { rings, .. } => {
                    rings.iter_mut().flatten().for_each(|at| *at = to(*at));
                }
                Mark::Circle { centre: at, .. }
                | Mark::Arc { centre: at, .. }
                | Mark::Dot { at, .. }
                | Mark::Text { at, .. } => *at = to(*at),
            }
        }
        for dimension in &mut self.dimensions {
            (dimension.from, dimension.to) = (to(dimension.from), to(dimension.to));
        }
        for hot in &mut self.hot {
            (hot.min, hot.max) = (to(hot.min), to(hot.max));
        }
        self.window = self.window.map(|(min, max)| (to(min), to(max)));
        self
    }
}
