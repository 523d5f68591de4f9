//! The sketch of a surface in sheets, and of one piece as it is marked.

use super::{Align, Dimension, Edge, Fit, Hot, Key, Mark, Pen, Role, Scene, Stroke};
use crate::geometry::{Point, Region};
use crate::measure::{Length, Units};
use crate::trades::sheets::{Ask, CutWay, Figure, Piece, Surface, ThingShape, Way};

/// What can be tapped on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SheetsTag {
    /// The surface's width.
    Width,
    /// Its height, or its depth.
    Height,
    /// A piece, counted from 0.
    Piece(usize),
}

/// Where in a piece its number stands: of several places the one farthest from its edges; and how much room is there.
fn clearest(piece: &Region) -> Option<(Point, Length)> {
    let (least, most) = piece.bounds()?;
    let size = most - least;
    let middle = least + Point::new(size.x.half(), size.y.half());
    (1..8i64)
        .flat_map(|x| (1..8i64).map(move |y| (x, y)))
        .map(|(x, y)| least + Point::new((size.x * x).divided(8), (size.y * y).divided(8)))
        .filter(|at| piece.contains(*at))
        .filter_map(|at| Some((at, piece.clear_of_edges(at)? * 2)))
        .max_by_key(|(at, room)| *room - at.distance(middle).divided(4))
}

/// A surface in sheets; without a figure its outline alone.
#[must_use]
pub fn sheets_sketch(
    ask: &Ask,
    figure: Option<&Figure>,
    own: bool,
    units: Units,
) -> Scene<SheetsTag> {
    let mut scene = Scene::empty("The sheets");
    let Some((least, most)) = ask.surface.bounds() else {
        return scene;
    };
    if let Some(figure) = figure {
        scene.says = format!(
            "{} pieces out of {} sheets",
            figure.pieces.len(),
            figure.taken
        );
        pieces(&mut scene, figure);
    }
    for ring in ask.surface.rings() {
        scene.marks.push(Mark::Path {
            points: ring.points.clone(),
            closed: true,
            pen: Some(Pen::solid(Role::Ink, Stroke::Medium)),
            fill: None,
        });
    }
    framing(&mut scene, ask, (least, most));
    if let Some(figure) = figure {
        let red = Pen::solid(Role::Red, Stroke::Heavy);
        let lines = figure.off_framing.iter();
        scene
            .marks
            .extend(lines.map(|(a, b)| Mark::line(*a, *b, red)));
        for at in figure.crosses.iter().chain(&figure.at_openings) {
            scene.marks.push(Mark::Circle {
                centre: *at,
                radius: Length::inches(2),
                pen: Some(Pen::solid(Role::Red, Stroke::Medium)),
                fill: None,
            });
        }
    }
    let size = most - least;
    let top = (least, Point::new(most.x, least.y));
    let right = (Point::new(most.x, least.y), most);
    for (ends, length, tag) in [
        (top, size.x, SheetsTag::Width),
        (right, size.y, SheetsTag::Height),
    ] {
        let tag = own.then_some(tag);
        scene
            .dimensions
            .push(Dimension::of(ends, Edge::Left(2), length, tag, units));
    }
    if let Some(figure) = figure {
        joints(&mut scene, ask, figure, (least, most), units);
    }
    scene.key = key(ask, figure);
    scene
}

fn pieces(scene: &mut Scene<SheetsTag>, figure: &Figure) {
    for (n, piece) in figure.pieces.iter().enumerate() {
        scene.marks.push(Mark::Path {
            points: piece.region.outer.points.clone(),
            closed: true,
            pen: Some(Pen::solid(Role::Ink, Stroke::Thin)),
            fill: Some(if piece.whole {
                Role::Board
            } else {
                Role::ChalkWash
            }),
        });
        for hole in &piece.region.holes {
            scene.marks.push(Mark::Path {
                points: hole.points.clone(),
                closed: true,
                pen: Some(Pen::solid(Role::Ink, Stroke::Thin)),
                fill: Some(Role::Paper),
            });
        }
        if let Some((at, room)) = clearest(&piece.region) {
            scene.marks.push(Mark::Text {
                at,
                text: piece.number.to_string(),
                role: Role::Ink,
                align: Align::Middle,
                bold: true,
                fit: Fit::Led(room),
            });
        }
        if let Some((min, max)) = piece.region.bounds() {
            scene.hot.push(Hot {
                min,
                max,
                tag: SheetsTag::Piece(n),
                says: format!("Piece {}, as it is marked", piece.number),
            });
        }
    }
}

/// Studs and joists behind the board.
fn framing(scene: &mut Scene<SheetsTag>, ask: &Ask, (least, most): (Point, Point)) {
    let Some(framing) = &ask.framing else { return };
    let origin = ask.origin();
    let far = most - origin;
    let reach = if framing.upright { far.x } else { far.y };
    for at in framing.studs.centres(reach) {
        let (a, b) = if framing.upright {
            let x = origin.x + at;
            (Point::new(x, least.y), Point::new(x, most.y))
        } else {
            let y = origin.y + at;
            (Point::new(least.x, y), Point::new(most.x, y))
        };
        let inside = ask.surface.along(a, b).into_iter();
        let pen = Pen::centre(Role::Soft);
        scene
            .marks
            .extend(inside.map(|(a, b)| Mark::line(a, b, pen)));
    }
}

/// From the corner that the first sheet lies in to the joints between courses, and to the first ends.
fn joints(
    scene: &mut Scene<SheetsTag>,
    ask: &Ask,
    figure: &Figure,
    (least, most): (Point, Point),
    units: Units,
) {
    let (right, bottom) = (ask.begin.right, ask.begin.bottom);
    let from_x = |x: Length| if right { most.x - x } else { x - least.x };
    let from_y = |y: Length| if bottom { most.y - y } else { y - least.y };
    let side = if right { most.x } else { least.x };
    let shelf = if bottom { most.y } else { least.y };
    // Of the joints that begin nearest to the sides that are measured from, the first.
    let first = |all: Vec<(Length, Length)>| {
        let near = all
            .into_iter()
            .map(|(away, off)| (away > Length::feet(1), off));
        near.min().map(|(_, off)| off)
    };
    let level = figure.lines.iter().filter(|(a, b)| a.y == b.y);
    let rows = level.map(|(a, b)| (from_x(a.x).min(from_x(b.x)), from_y(a.y)));
    let upright = figure.lines.iter().filter(|(a, b)| a.x == b.x);
    let ends = upright.map(|(a, b)| (from_y(a.y).min(from_y(b.y)), from_x(a.x)));
    if let Some(off) = first(rows.collect()) {
        let y = if bottom { most.y - off } else { least.y + off };
        let (a, b) = (Point::new(side, shelf), Point::new(side, y));
        let edge = if right == bottom {
            Edge::Right(1)
        } else {
            Edge::Left(1)
        };
        scene
            .dimensions
            .push(Dimension::of((a, b), edge, off, None, units));
    }
    if let Some(off) = first(ends.collect()) {
        let x = if right { most.x - off } else { least.x + off };
        let (a, b) = (Point::new(side, shelf), Point::new(x, shelf));
        let edge = if right == bottom {
            Edge::Left(1)
        } else {
            Edge::Right(1)
        };
        scene
            .dimensions
            .push(Dimension::of((a, b), edge, off, None, units));
    }
}

fn key(ask: &Ask, figure: Option<&Figure>) -> Vec<Key> {
    let Some(figure) = figure else {
        return Vec::new();
    };
    let thin = Pen::solid(Role::Ink, Stroke::Thin);
    let fill = |role, says: &str| Key {
        fill: Some(role),
        pen: thin,
        says: says.to_owned(),
    };
    let line = |pen, says: &str| Key {
        fill: None,
        pen,
        says: says.to_owned(),
    };
    let carrier = if ask.on == Surface::Wall {
        "stud"
    } else {
        "stud or joist"
    };
    [
        (figure.whole > 0).then(|| fill(Role::Board, "whole sheet")),
        (figure.whole < figure.pieces.len()).then(|| fill(Role::ChalkWash, "cut")),
        (ask.framing.as_ref()).map(|_| line(Pen::centre(Role::Soft), carrier)),
        (!figure.off_framing.is_empty())
            .then(|| line(Pen::solid(Role::Red, Stroke::Heavy), "joint on nothing")),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Rows of measures beside a piece on one of its sides.
#[derive(Default)]
struct Rows {
    drawn: Vec<(Length, Length)>,
}

impl Rows {
    /// The next free row, for a measure that is not there yet.
    fn next(&mut self, ends: (Length, Length)) -> Option<u8> {
        if self.drawn.contains(&ends) || self.drawn.len() >= MOST_ROWS {
            return None;
        }
        self.drawn.push(ends);
        u8::try_from(self.drawn.len()).ok()
    }
}

/// Most rows of measures on one side of a piece, and holes that are measured on the drawing; the list has all.
const MOST_ROWS: usize = 3;

/// One piece as it is marked on its sheet: the sheet about it, its lines by the measures at their ends, its holes by two
/// edges. A tap goes on to the next.
#[must_use]
pub fn piece_sketch(ask: &Ask, piece: &Piece, units: Units) -> Scene<()> {
    let mut scene = Scene::empty(format!("Piece {}, as it is marked", piece.number));
    let Some((least, _)) = piece.region.bounds() else {
        return scene;
    };
    let none = Length::ZERO;
    let (wide, high) = piece.size;
    // The sheet about it, in the frame of the piece.
    let (w, h) = match ask.way {
        Way::Across => ask.sheet,
        Way::Up => (ask.sheet.1, ask.sheet.0),
    };
    let (x, y) = (piece.on_sheet.x, piece.on_sheet.y);
    let (a, b) = if piece.turned {
        (Point::new(-y, high + x - w), Point::new(h - y, high + x))
    } else {
        (Point::new(-x, -y), Point::new(w - x, h - y))
    };
    let dashed = Pen::dashed(Role::Soft, Stroke::Thin);
    scene
        .marks
        .push(Mark::rectangle(a, b, Some(dashed), Some(Role::Sheet)));
    let moved = |points: &[Point]| points.iter().map(|p| *p - least).collect::<Vec<Point>>();
    scene.marks.push(Mark::Path {
        points: moved(&piece.region.outer.points),
        closed: true,
        pen: Some(Pen::solid(Role::Ink, Stroke::Medium)),
        fill: Some(Role::Board),
    });
    for hole in &piece.region.holes {
        scene.marks.push(Mark::Path {
            points: moved(&hole.points),
            closed: true,
            pen: Some(Pen::solid(Role::Ink, Stroke::Medium)),
            fill: Some(Role::Paper),
        });
    }
    for cut in &piece.cuts {
        let at = |(x, y): (Length, Length)| Point::new(x, y);
        let pen = Pen::solid(Role::Chalk, Stroke::Medium);
        scene.marks.push(Mark::line(at(cut.from), at(cut.to), pen));
    }
    let mut sides: [Rows; 4] = Default::default();
    for cut in &piece.cuts {
        // A cut along a side has one figure for both its ends: at the top, at the left.
        let straight = match cut.way {
            CutWay::Upright => cut.from.0 == cut.to.0,
            CutWay::Level => cut.from.1 == cut.to.1,
        };
        let first = if (cut.from.0 + cut.from.1) <= (cut.to.0 + cut.to.1) {
            cut.from
        } else {
            cut.to
        };
        let ends = [cut.from, cut.to].into_iter();
        for end in ends.filter(|end| !straight || *end == first) {
            let (side, from, to, edge): (usize, Point, Point, fn(u8) -> Edge) = match cut.way {
                CutWay::Upright if end.1 <= high.half() => (
                    0,
                    Point::new(none, none),
                    Point::new(end.0, none),
                    Edge::Left,
                ),
                CutWay::Upright => (
                    1,
                    Point::new(none, high),
                    Point::new(end.0, high),
                    Edge::Right,
                ),
                CutWay::Level if end.0 <= wide.half() => (
                    2,
                    Point::new(none, none),
                    Point::new(none, end.1),
                    Edge::Right,
                ),
                CutWay::Level => (
                    3,
                    Point::new(wide, none),
                    Point::new(wide, end.1),
                    Edge::Left,
                ),
            };
            let length = from.distance(to);
            if length.is_positive()
                && let Some(row) = sides[side].next((to.x, to.y))
            {
                scene
                    .dimensions
                    .push(Dimension::of((from, to), edge(row), length, None, units));
            }
        }
    }
    // Its box, where no cut says it.
    if let Some(row) = sides[0].next((wide, none)) {
        let ends = (Point::default(), Point::new(wide, none));
        scene
            .dimensions
            .push(Dimension::of(ends, Edge::Left(row), wide, None, units));
    }
    if let Some(row) = sides[2].next((none, high)) {
        let ends = (Point::default(), Point::new(none, high));
        scene
            .dimensions
            .push(Dimension::of(ends, Edge::Right(row), high, None, units));
    }
    for hole in piece.holes.iter().take(MOST_ROWS) {
        let at = Point::new(hole.from_left, hole.from_top);
        let to = match hole.shape {
            ThingShape::Round { .. } => {
                scene.marks.push(Mark::Dot {
                    at,
                    role: Role::Chalk,
                });
                at
            }
            ThingShape::Rectangle { width, height } => at + Point::new(width.half(), height.half()),
        };
        let across = (Point::new(none, to.y), Point::new(at.x, to.y));
        let down = (Point::new(to.x, none), Point::new(to.x, at.y));
        if hole.from_left.is_positive() {
            let m = Dimension::of(across, Edge::Left(0), hole.from_left, None, units);
            scene.dimensions.push(m);
        }
        if hole.from_top.is_positive() {
            let m = Dimension::of(down, Edge::Left(0), hole.from_top, None, units);
            scene.dimensions.push(m);
        }
    }
    scene.hot.push(Hot {
        min: Point::default(),
        max: Point::new(wide, high),
        tag: (),
        says: "The next piece".to_owned(),
    });
    scene
}
