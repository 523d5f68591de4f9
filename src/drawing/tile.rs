//! The sketch of a tiled surface: every tile, what is cut, where to chalk.

use super::tile_things::things;
use super::{Align, Dimension, Edge, Fit, Key, Mark, Pen, Role, Scene, Stroke};
use crate::geometry::{Point, Region};
use crate::measure::{Length, Units};
use crate::trades::tile::{self, Ask, Chalk, Figure, Piece};

/// What can be tapped on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TileTag {
    /// The surface's width.
    Width,
    /// Its height, or its depth.
    Height,
    /// A measure of something in the way, counted from 0.
    Thing(usize, ThingPart),
}

/// A measure of something in the way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThingPart {
    /// Its width, or its diameter.
    Width,
    /// Its height.
    Height,
    /// From the left edge of the surface to its edge, or to its centre.
    Left,
    /// From the top edge, likewise.
    Top,
}

/// How a tiled surface is drawn.
#[derive(Clone, Copy, Debug)]
pub struct Look {
    /// Its width and height are measured by hand and can be tapped.
    pub own: bool,
    /// How joints are drawn, by the colour of their grout.
    pub joint: Role,
    /// The thing in the way whose measures are shown.
    pub picked: Option<usize>,
}

/// Most cut pieces whose numbers are written on them.
const NUMBERED: usize = 400;

/// Steps across a piece and down it in which a place for its number is sought.
const PLACES: i64 = 8;

/// A surface in tile; without a figure its outline alone.
#[must_use]
pub fn tile_sketch(ask: &Ask, figure: Option<&Figure>, look: Look, units: Units) -> Scene<TileTag> {
    let mut scene = Scene::empty("The tiles");
    if let Some(figure) = figure {
        tiles(&mut scene, figure, look.joint);
        for points in tile::seams(&figure.layout) {
            scene.marks.push(Mark::Path {
                points,
                closed: false,
                pen: Some(Pen::solid(Role::Soft, Stroke::Thin)),
                fill: None,
            });
        }
        for (from, to) in &figure.soft {
            scene.marks.push(Mark::Path {
                points: vec![*from, *to],
                closed: false,
                pen: Some(Pen::solid(Role::Amber, Stroke::Heavy)),
                fill: None,
            });
        }
        numbers(&mut scene, ask, figure);
        scene.says = format!(
            "{} whole tiles and {} cut ones",
            figure.layout.whole(),
            figure.layout.cut()
        );
    }
    for ring in ask.surface.rings() {
        scene.marks.push(Mark::Path {
            points: ring.points.clone(),
            closed: true,
            pen: Some(Pen::solid(Role::Ink, Stroke::Medium)),
            fill: None,
        });
    }
    things(&mut scene, ask, look.picked, units);
    scene.key = key(ask, figure, look.joint);
    sizes(&mut scene, ask, look.own, units);
    if let Some(lines) = figure.and_then(|figure| figure.chalk) {
        chalk_lines(&mut scene, ask, &lines, units);
    }
    scene
}

/// What the colours mean, of those that are there.
fn key(ask: &Ask, figure: Option<&Figure>, joint: Role) -> Vec<Key> {
    let Some(figure) = figure else {
        return Vec::new();
    };
    let fill = |role, says: &str| Key {
        fill: Some(role),
        pen: Pen::solid(joint, Stroke::Hair),
        says: says.to_owned(),
    };
    let line = |pen, says: &str| Key {
        fill: None,
        pen,
        says: says.to_owned(),
    };
    let (cut, small) = (figure.layout.cut(), figure.small.len());
    let thing = Key {
        pen: Pen::solid(Role::Ink, Stroke::Medium),
        ..fill(Role::Sheet, "in the way")
    };
    let chalk = Pen {
        stroke: Stroke::Thin,
        ..Pen::centre(Role::Chalk)
    };
    [
        (figure.layout.whole() > 0).then(|| fill(Role::Board, "whole")),
        (cut > small).then(|| fill(Role::ChalkWash, "cut")),
        (small > 0).then(|| fill(Role::RedWash, "under half a tile")),
        (!ask.things.is_empty()).then_some(thing),
        figure.chalk.map(|_| line(chalk, "chalk line")),
        (!figure.soft.is_empty())
            .then(|| line(Pen::solid(Role::Amber, Stroke::Heavy), "soft joint")),
        ask.sheet
            .map(|_| line(Pen::solid(Role::Soft, Stroke::Thin), "sheet")),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Every tile: whole ones, cut ones, those under half a tile, and the holes in them.
fn tiles(scene: &mut Scene<TileTag>, figure: &Figure, joint: Role) {
    let small: std::collections::BTreeSet<usize> = figure.small.iter().copied().collect();
    let [mut whole, mut cut, mut thin, mut holes] = [const { Vec::new() }; 4];
    for (at, laid) in figure.layout.tiles.iter().enumerate() {
        match &laid.piece {
            Piece::Whole => whole.push(laid.tile.points().to_vec()),
            Piece::Cut(pieces) => {
                let rings = if small.contains(&at) {
                    &mut thin
                } else {
                    &mut cut
                };
                for piece in pieces {
                    rings.push(piece.outer.points.clone());
                    holes.extend(piece.holes.iter().map(|hole| hole.points.clone()));
                }
            }
        }
    }
    for (rings, fill) in [
        (whole, Role::Board),
        (cut, Role::ChalkWash),
        (thin, Role::RedWash),
        (holes, Role::Paper),
    ] {
        if !rings.is_empty() {
            scene.marks.push(Mark::Rings {
                rings,
                pen: Some(Pen::solid(joint, Stroke::Hair)),
                fill: Some(fill),
            });
        }
    }
}

/// Each cut piece bears its number from the cut list, where it has the room.
fn numbers(scene: &mut Scene<TileTag>, ask: &Ask, figure: &Figure) {
    if figure.layout.cut() > NUMBERED {
        return;
    }
    let corner = ask.surface.bounds().map_or_else(Point::default, |b| b.0);
    let chalk = figure
        .chalk
        .map(|lines| corner + Point::new(lines.from_left, lines.from_top));
    for cut in &figure.cuts {
        for at in &cut.pieces {
            let Piece::Cut(pieces) = &figure.layout.tiles[*at].piece else {
                continue;
            };
            let Some((at, room)) = pieces.first().and_then(|p| clearest(p, chalk)) else {
                continue;
            };
            scene.marks.push(Mark::Text {
                at,
                text: cut.number.to_string(),
                role: Role::Soft,
                align: Align::Middle,
                bold: false,
                // Of mosaic there are too many to lead to each.
                fit: match ask.sheet {
                    Some(_) => Fit::Shrunk(room),
                    None => Fit::Led(room),
                },
            });
        }
    }
}

/// Where in a piece there is most room for its number, clear of its edges and of the chalk lines; and how much.
fn clearest(piece: &Region, chalk: Option<Point>) -> Option<(Point, Length)> {
    let (least, most) = piece.outer.bounds()?;
    let size = most - least;
    let middle = least + Point::new(size.x.half(), size.y.half());
    let room = |at: Point| {
        let edge = piece.clear_of_edges(at)?;
        let line = chalk.map(|chalk| (at.x - chalk.x).abs().min((at.y - chalk.y).abs()));
        Some(line.map_or(edge, |line| line.min(edge)))
    };
    // Of places with much the same room the one nearest the middle.
    let worth = |(at, room): &(Point, Length)| *room - at.distance(middle).divided(8);
    (1..PLACES)
        .flat_map(|x| (1..PLACES).map(move |y| (x, y)))
        .map(|(x, y)| {
            least + Point::new((size.x * x).divided(PLACES), (size.y * y).divided(PLACES))
        })
        .filter(|at| piece.contains(*at))
        .filter_map(|at| Some((at, room(at)? * 2)))
        .max_by_key(worth)
}

fn sizes(scene: &mut Scene<TileTag>, ask: &Ask, own: bool, units: Units) {
    let Some((least, most)) = ask.surface.bounds() else {
        return;
    };
    let size = most - least;
    let tag = |tag| own.then_some(tag);
    let top = (least, Point::new(most.x, least.y));
    scene.dimensions.push(Dimension::of(
        top,
        Edge::Left(1),
        size.x,
        tag(TileTag::Width),
        units,
    ));
    let right = (Point::new(most.x, least.y), most);
    scene.dimensions.push(Dimension::of(
        right,
        Edge::Left(1),
        size.y,
        tag(TileTag::Height),
        units,
    ));
}

/// The two lines to chalk, each with its distance from a wall.
fn chalk_lines(scene: &mut Scene<TileTag>, ask: &Ask, lines: &Chalk, units: Units) {
    let Some((least, most)) = ask.surface.bounds() else {
        return;
    };
    let (x, y) = (least.x + lines.from_left, least.y + lines.from_top);
    for points in [
        vec![Point::new(x, least.y), Point::new(x, most.y)],
        vec![Point::new(least.x, y), Point::new(most.x, y)],
    ] {
        scene.marks.push(Mark::Path {
            points,
            closed: false,
            pen: Some(Pen {
                stroke: Stroke::Thin,
                ..Pen::centre(Role::Chalk)
            }),
            fill: None,
        });
    }
    let bottom = (Point::new(least.x, most.y), Point::new(x, most.y));
    scene.dimensions.push(Dimension::of(
        bottom,
        Edge::Right(1),
        lines.from_left,
        None,
        units,
    ));
    let left = (least, Point::new(least.x, y));
    scene.dimensions.push(Dimension::of(
        left,
        Edge::Right(1),
        lines.from_top,
        None,
        units,
    ));
}

/// Sketches beside each other, to one scale, each on the floor of the sheet; what can be tapped on them is left out.
#[must_use]
pub fn side_by_side(sketches: Vec<Scene<TileTag>>) -> Scene<TileTag> {
    let mut all = Scene::empty("Specs side by side");
    let mut x = Length::ZERO;
    for sketch in sketches {
        let Some((least, most)) = bounds(&sketch.marks) else {
            continue;
        };
        let by = Point::new(x - least.x, -most.y);
        for key in sketch.key {
            if !all.key.contains(&key) {
                all.key.push(key);
            }
        }
        all.marks
            .extend(sketch.marks.into_iter().filter_map(|mark| moved(mark, by)));
        x = x + (most.x - least.x) + (most.x - least.x).divided(6);
    }
    all
}

fn bounds(marks: &[Mark]) -> Option<(Point, Point)> {
    let points = marks.iter().flat_map(|mark| match mark {
        Mark::Path { points, .. } => std::slice::from_ref(points),
        Mark::Rings { rings, .. } => &rings[..],
        _ => &[],
    });
    (points.flatten()).fold(None, |bounds: Option<(Point, Point)>, p| {
        let (least, most) = bounds.unwrap_or((*p, *p));
        Some((
            Point::new(least.x.min(p.x), least.y.min(p.y)),
            Point::new(most.x.max(p.x), most.y.max(p.y)),
        ))
    })
}

/// Outlines and fills moved; words are left out, since they would be too small.
fn moved(mut mark: Mark, by: Point) -> Option<Mark> {
    let all = |points: &mut Vec<Point>| points.iter_mut().for_each(|p| *p = *p + by);
    match &mut mark {
        Mark::Path { points, .. } => all(points),
        Mark::Rings { rings, .. } => rings.iter_mut().for_each(all),
        Mark::Circle { centre, .. } | Mark::Arc { centre, .. } => *centre = *centre + by,
        Mark::Dot { at, .. } => *at = *at + by,
        Mark::Text { .. } => return None,
    }
    Some(mark)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn corners(scene: &Scene<TileTag>) -> usize {
        let of = |mark: &Mark| match mark {
            Mark::Path { points, .. } => points.len(),
            Mark::Rings { rings, .. } => rings.iter().map(Vec::len).sum(),
            _ => 0,
        };
        scene.marks.iter().map(of).sum()
    }

    #[test]
    fn side_by_side_every_tile_is_drawn_and_none_over_another() {
        let ask = Ask::default();
        let figure = tile::figure(&ask).unwrap();
        let units = Units::FeetInches { marks: 16 };
        let look = Look {
            own: false,
            joint: Role::Rule,
            picked: None,
        };
        let one = tile_sketch(&ask, Some(&figure), look, units);
        let two = side_by_side(vec![one.clone(), one.clone()]);
        assert!(corners(&one) > 4 * figure.layout.tiles.len() / 2);
        assert_eq!(corners(&two), 2 * corners(&one));
        let width = |scene: &Scene<TileTag>| {
            let (least, most) = bounds(&scene.marks).unwrap();
            most.x - least.x
        };
        assert!(width(&two) > width(&one) * 2);
    }
}
