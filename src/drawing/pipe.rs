//! The sketch of a run of pipe: isometric or from the front, its pieces numbered, its fittings as symbols.

use super::{Align, Dimension, Edge, Fit, Mark, Pen, Role, Scene, Standing, Stroke};
use crate::geometry::Point;
use crate::handbook::pipe::Kind;
use crate::measure::{Figures, Length, Rounding, Units};
use crate::trades::pipe::{
    Ask, By, Figure, Fitting, LegCut, Mark as Held, Place, Way, beside, sketch,
};

/// How a run is looked at.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum View {
    /// Right and into the wall at 30° to the level, up straight up.
    #[default]
    Isometric,
    /// Facing the wall.
    Front,
    /// From above, the wall at the head of the sheet.
    Above,
}

/// What a tap on a run asks for; legs count from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PipeTag {
    /// What the tape said of a leg.
    Length(usize),
    /// How far its offset is set over.
    Set(usize),
}

impl View {
    /// From above where a run stays level, so that its angles are true; else isometric.
    #[must_use]
    pub fn usual(ask: &Ask) -> View {
        let places = sketch(ask);
        let level = places.windows(2).all(|ends| ends[0].up == ends[1].up);
        if level && places.len() > 1 {
            View::Above
        } else {
            View::Isometric
        }
    }

    /// Where a place is on the sheet.
    #[must_use]
    pub fn of(self, place: Place) -> Point {
        match self {
            View::Front => Point::new(place.right, -place.up),
            View::Above => Point::new(place.right, -place.forward),
            View::Isometric => {
                let [right, forward, up] = place.axes().map(Length::metres);
                let across = (right + forward) * 3f64.sqrt() / 2.0;
                let down = (right - forward) / 2.0 - up;
                let length = |metres| Length::from_metres(metres).unwrap_or_default();
                Point::new(length(across), length(down))
            }
        }
    }
}

/// A run by its legs, as far as it goes; without a figure by what the tape said alone.
#[must_use]
pub fn pipe_sketch(ask: &Ask, figure: Option<&Figure>, view: View, units: Units) -> Scene<PipeTag> {
    let places = places(ask, figure);
    let lines: Vec<Vec<Point>> = beside(ask, &places)
        .iter()
        .map(|line| line.iter().map(|place| view.of(*place)).collect())
        .collect();
    let at = &lines[0];
    let all: Vec<Point> = lines.iter().flatten().copied().collect();
    let unit = unit(&all);
    let mut scene = Scene::empty(match figure {
        Some(figure) => format!(
            "A run of {} legs, {} pieces to cut",
            ask.legs.len(),
            figure.pieces.len()
        ),
        None => format!("A run of {} legs, not figured yet", ask.legs.len()),
    });
    frame(&mut scene, &all, unit);
    for line in lines.iter().skip(1) {
        line_beside(&mut scene, line, unit);
    }
    for leg in 0..ask.legs.len() {
        let dry = figure.is_some_and(|figure| {
            let mut pieces = figure.pieces.iter().filter(|piece| piece.leg == leg);
            pieces.all(|piece| ask.fitted.contains(&piece.number))
        });
        pipe(&mut scene, [at[leg], at[leg + 1]], dry, unit);
        measures(&mut scene, (ask, figure), leg, (view, &places), units);
    }
    let ends = [ask.start]
        .into_iter()
        .chain(ask.legs.iter().map(|leg| leg.end));
    for (node, fitting) in ends.enumerate() {
        let before = node.checked_sub(1).map(|before| at[before]);
        let after = at.get(node + 1).copied();
        match fitting {
            Some(fitting) => symbol(&mut scene, fitting, at[node], [before, after], unit),
            None => open_end(&mut scene, at[node], unit),
        }
    }
    scene.bare = (lines.iter())
        .flat_map(|line| line.windows(2).map(|ends| [ends[0], ends[1]]))
        .collect();
    if let Some(figure) = figure {
        hangers(&mut scene, figure, at, unit);
        numbers(&mut scene, figure, at, units);
        numbers_beside(&mut scene, figure, &lines);
    }
    scene
}

/// A line beside the run.
fn line_beside(scene: &mut Scene<PipeTag>, at: &[Point], unit: Length) {
    line(scene, at.to_vec(), Pen::solid(Role::Soft, Stroke::Medium));
    for end in [at.first(), at.last()].into_iter().flatten() {
        scene.marks.push(Mark::Circle {
            centre: *end,
            radius: unit.divided(4),
            pen: Some(Pen::solid(Role::Soft, Stroke::Thin)),
            fill: Some(Role::Sheet),
        });
    }
}

/// The numbers of the pieces of the lines beside it, each on its leg where that has room.
fn numbers_beside(scene: &mut Scene<PipeTag>, figure: &Figure, lines: &[Vec<Point>]) {
    for piece in figure.pieces.iter().filter(|piece| piece.line > 0) {
        let ends = lines
            .get(piece.line as usize)
            .and_then(|line| line.get(piece.leg..piece.leg + 2));
        let Some(&[from, to]) = ends else {
            continue;
        };
        let alike = |other: &&crate::trades::pipe::Piece| {
            (other.line, other.leg) == (piece.line, piece.leg)
        };
        let parts = figure.pieces.iter().filter(alike);
        let (count, before) = parts.fold((0, 0), |(count, before), other| {
            (count + 1, before + i64::from(other.number < piece.number))
        });
        let part = |a: Length, b: Length| a + ((b - a) * (2 * before + 1)).divided(2 * count);
        scene.marks.push(Mark::Text {
            at: Point::new(part(from.x, to.x), part(from.y, to.y)),
            text: piece.number.to_string(),
            role: Role::Soft,
            align: Align::Middle,
            bold: true,
            fit: Fit::Whole(from.distance(to).divided(count)),
        });
    }
}

/// A small triangle with its point on the pipe, where a hanger holds it.
fn hangers(scene: &mut Scene<PipeTag>, figure: &Figure, at: &[Point], unit: Length) {
    for hanger in &figure.held_at {
        let Some(&[from, to]) = at.get(hanger.leg..hanger.leg + 2) else {
            continue;
        };
        let cut = figure.legs.get(hanger.leg);
        let long = cut.and_then(|leg| leg.span.or(leg.cut));
        let Some(long) = long.filter(|long| long.is_positive() && from != to) else {
            continue;
        };
        let share = hanger.at.metres() / long.metres();
        let part = |a: Length, b: Length| {
            a + Length::from_metres((b - a).metres() * share).unwrap_or_default()
        };
        let point = Point::new(part(from.x, to.x), part(from.y, to.y));
        let (along, across) = steps(from, to, unit.divided(3));
        let foot = point + across + across;
        scene.marks.push(Mark::Path {
            points: vec![point, foot - along, foot + along],
            closed: true,
            pen: None,
            fill: Some(Role::Soft),
        });
    }
}

/// Where its fittings are; from the figure, and from what the tape said where that does not know.
fn places(ask: &Ask, figure: Option<&Figure>) -> Vec<Place> {
    let known = figure.map(|figure| figure.places.iter().copied().collect::<Option<Vec<_>>>());
    match known.flatten() {
        Some(places) if places.len() == ask.legs.len() + 1 => places,
        _ => sketch(ask),
    }
}

/// A thirtieth of the run: how large a symbol is.
fn unit(at: &[Point]) -> Length {
    let span = |of: fn(&Point) -> Length| {
        let most = at.iter().map(of).max().unwrap_or_default();
        most - at.iter().map(of).min().unwrap_or_default()
    };
    let span = span(|p| p.x).max(span(|p| p.y)).max(Length::inches(6));
    span.divided(30)
}

/// Room for the figures beside slanted legs: a frame that is not drawn.
fn frame(scene: &mut Scene<PipeTag>, at: &[Point], unit: Length) {
    let clear = unit * 5;
    let xs = || at.iter().map(|p| p.x);
    let ys = || at.iter().map(|p| p.y);
    let least = Point::new(
        xs().min().unwrap_or_default(),
        ys().min().unwrap_or_default(),
    );
    let most = Point::new(
        xs().max().unwrap_or_default(),
        ys().max().unwrap_or_default(),
    );
    scene.marks.push(Mark::Path {
        points: vec![
            least - Point::new(clear, clear),
            most + Point::new(clear, clear),
        ],
        closed: false,
        pen: None,
        fill: None,
    });
}

fn line(scene: &mut Scene<PipeTag>, points: Vec<Point>, pen: Pen) {
    scene.marks.push(Mark::Path {
        points,
        closed: false,
        pen: Some(pen),
        fill: None,
    });
}

/// A leg; green once all its pieces were fitted dry, a ring where it goes away from the eye.
fn pipe(scene: &mut Scene<PipeTag>, [from, to]: [Point; 2], dry: bool, unit: Length) {
    let role = if dry { Role::Green } else { Role::Ink };
    let pen = Pen::solid(role, Stroke::Heavy);
    if from.distance(to) < unit.half() {
        scene.marks.push(Mark::Circle {
            centre: from,
            radius: unit.half(),
            pen: Some(pen),
            fill: Some(Role::Sheet),
        });
    } else {
        line(scene, vec![from, to], pen);
    }
}

/// A step from a point towards another, and one at right angles to it, so long.
fn steps(from: Point, to: Point, long: Length) -> (Point, Point) {
    let far = from.distance(to).metres();
    if far <= 0.0 {
        return (
            Point::new(long, Length::ZERO),
            Point::new(Length::ZERO, long),
        );
    }
    let part = |length: Length| {
        Length::from_metres(length.metres() / far * long.metres()).unwrap_or_default()
    };
    let (x, y) = (part(to.x - from.x), part(to.y - from.y));
    (Point::new(x, y), Point::new(-y, x))
}

/// A fitting: a tick at each hub, and what tells its kind.
fn symbol(
    scene: &mut Scene<PipeTag>,
    fitting: Fitting,
    at: Point,
    ways: [Option<Point>; 2],
    unit: Length,
) {
    let pen = Pen::solid(Role::Ink, Stroke::Medium);
    let half = unit.half();
    for way in ways.into_iter().flatten() {
        let (along, across) = steps(at, way, half);
        let hub = at + along + along;
        line(scene, vec![hub - across, hub + across], pen);
    }
    let Some(way) = ways.into_iter().flatten().next() else {
        return;
    };
    let (along, across) = steps(at, way, unit);
    let circle = |radius, fill| Mark::Circle {
        centre: at,
        radius,
        pen: Some(pen),
        fill,
    };
    match fitting.kind {
        Kind::Valve => {
            for closed in [
                [at - along - across, at - along + across],
                [at + along - across, at + along + across],
            ] {
                scene.marks.push(Mark::Path {
                    points: vec![at, closed[0], closed[1]],
                    closed: true,
                    pen: Some(pen),
                    fill: Some(Role::Sheet),
                });
            }
        }
        Kind::Union => scene.marks.push(circle(half, Some(Role::Sheet))),
        Kind::Trap => scene.marks.push(circle(unit, Some(Role::Sheet))),
        Kind::Reducer => scene.marks.push(Mark::Path {
            points: vec![at - along - across, at - along + across, at + along],
            closed: true,
            pen: Some(pen),
            fill: Some(Role::Sheet),
        }),
        Kind::Flange => {
            for step in [Point::default(), Point::new(along.x.half(), along.y.half())] {
                let at = at + step;
                line(
                    scene,
                    vec![at - across, at + across],
                    Pen::solid(Role::Ink, Stroke::Heavy),
                );
            }
        }
        Kind::Cap => line(
            scene,
            vec![at - across, at + across],
            Pen::solid(Role::Ink, Stroke::Heavy),
        ),
        Kind::Tee | Kind::SanitaryTee | Kind::Wye => {
            // The opening that this run does not use.
            let other = match ways {
                [Some(before), Some(after)] => stub(at, before, after, fitting, unit),
                _ => across,
            };
            line(scene, vec![at, at + other], pen);
        }
        Kind::Coupling | Kind::Adapter | Kind::Bend | Kind::LongBend => {}
    }
    scene.marks.push(Mark::Dot {
        at,
        role: Role::Ink,
    });
}

/// The way of a branch that is not gone through, or of the run beyond it.
fn stub(at: Point, before: Point, after: Point, fitting: Fitting, unit: Length) -> Point {
    let long = unit + unit.half();
    let (back, _) = steps(at, before, long);
    let (on, side) = steps(at, after, long);
    let none = Point::default();
    match fitting.branch {
        // Straight through: the branch at a side.
        None => side,
        Some(crate::trades::pipe::Side::After) => none - back,
        Some(crate::trades::pipe::Side::Before) => none - on,
    }
}

/// Where a pipe ends open.
fn open_end(scene: &mut Scene<PipeTag>, at: Point, unit: Length) {
    scene.marks.push(Mark::Circle {
        centre: at,
        radius: unit.divided(3),
        pen: Some(Pen::solid(Role::Ink, Stroke::Medium)),
        fill: Some(Role::Sheet),
    });
}

fn dimension(
    (from, to): (Point, Point),
    edge: Edge,
    (text, says): (String, String),
    (standing, tag): (Standing, Option<PipeTag>),
) -> Dimension<PipeTag> {
    Dimension {
        from,
        to,
        beyond: false,
        edge,
        text,
        standing,
        tag,
        says,
    }
}

/// From where to where on a leg the tape was held, as shares of the way from centre to centre.
fn held(by: By, cut: Option<&LegCut>) -> [f64; 2] {
    let whole = [0.0, 1.0];
    let (By::Tape { from, to, .. }, Some(cut)) = (by, cut) else {
        return whole;
    };
    let Some(span) = cut.span.filter(|span| span.is_positive()) else {
        return whole;
    };
    let inward = |end: usize, mark: Held| {
        let known = cut.ends[end];
        let take_off = known.and_then(|known| known.take_off);
        let take_off = take_off.map_or(Length::ZERO, |take_off| take_off.value);
        let depth = known.and_then(|known| known.depth);
        let length = match mark {
            Held::Centre => Length::ZERO,
            Held::Face => take_off + depth.map_or(Length::ZERO, |depth| depth.value),
            Held::Shoulder | Held::End => take_off,
            Held::Wall(beyond) => beyond,
        };
        length.metres() / span.metres()
    };
    let ends = [inward(0, from), 1.0 - inward(1, to)];
    // Fittings that overlap leave nothing to draw it along.
    if ends[0] < ends[1] { ends } else { whole }
}

/// What the tape said of a leg, or how far it comes to.
fn measures(
    scene: &mut Scene<PipeTag>,
    (ask, figure): (&Ask, Option<&Figure>),
    leg: usize,
    (view, places): (View, &[Place]),
    units: Units,
) {
    let (from, to) = (view.of(places[leg]), view.of(places[leg + 1]));
    let show = |length: Length, figures| units.length(length, Rounding::Nearest, figures);
    let says = |length: Length| format!("Leg {}, {}", leg + 1, show(length, Figures::Plain));
    let span = figure.and_then(|figure| figure.legs.get(leg)?.span);
    let ours = |length: Length| {
        (
            (show(length, Figures::Set), says(length)),
            (Standing::Ours, None),
        )
    };
    let flat = from.distance(to) == Length::ZERO;
    let what = match ask.legs[leg].by {
        By::Tape { length, .. } => {
            let tag = Some(PipeTag::Length(leg));
            if length.is_positive() {
                let text = show(length, Figures::Set);
                Some(((text, says(length)), (Standing::Yours, tag)))
            } else {
                let says = format!("Leg {}, not measured yet", leg + 1);
                Some((("?".to_owned(), says), (Standing::Asked, tag)))
            }
        }
        // An offset by its set has its set on the sketch, and its piece; its travel is among the results.
        By::Set => None,
        _ => span.map(ours),
    };
    if let Some((words, whose)) = what
        && !flat
    {
        let all: Vec<Point> = places.iter().map(|place| view.of(*place)).collect();
        // A figure beside a steep leg is wide: one row further out.
        let steep = (to.y - from.y).abs() > (to.x - from.x).abs();
        let row = if steep { 2 } else { 1 };
        let edge = if outward(&all, from, to) {
            Edge::Left(row)
        } else {
            Edge::Right(row)
        };
        let ends = held(
            ask.legs[leg].by,
            figure.and_then(|figure| figure.legs.get(leg)),
        );
        let at = ends.map(|share| {
            let part = |a: Length, b: Length| {
                a + Length::from_metres((b - a).metres() * share).unwrap_or_default()
            };
            Point::new(part(from.x, to.x), part(from.y, to.y))
        });
        scene
            .dimensions
            .push(dimension((at[0], at[1]), edge, words, whose));
    }
    if let (By::Set, Way::Offset { to: aside, set, .. }) = (ask.legs[leg].by, ask.legs[leg].way) {
        // From beside the end of the travel, back across the set.
        let corner = places[leg + 1].minus(Place::of(aside.vector().map(|part| set * part as i64)));
        let corner = view.of(corner);
        line(
            scene,
            vec![from, corner, to],
            Pen::dashed(Role::Soft, Stroke::Hair),
        );
        let words = (
            show(set, Figures::Set),
            format!("Leg {}, set over {}", leg + 1, show(set, Figures::Plain)),
        );
        let whose = (Standing::Yours, Some(PipeTag::Set(leg)));
        if corner.distance(to) > Length::ZERO {
            let dimension = dimension((corner, to), Edge::Right(1), words, whose);
            scene.dimensions.push(dimension);
        }
    }
}

/// Each piece of the first line with its number and its cut, on its part of the leg.
fn numbers(scene: &mut Scene<PipeTag>, figure: &Figure, at: &[Point], units: Units) {
    let first: Vec<_> = figure
        .pieces
        .iter()
        .filter(|piece| piece.line == 0)
        .collect();
    for piece in &first {
        let of_leg = first.iter().filter(|other| other.leg == piece.leg);
        let parts = of_leg.clone().count() as i64;
        let part = of_leg
            .take_while(|other| other.number != piece.number)
            .count() as i64;
        let (Some(from), Some(to)) = (at.get(piece.leg), at.get(piece.leg + 1)) else {
            continue;
        };
        if from.distance(*to) == Length::ZERO {
            continue;
        }
        let share = |a: Length, b: Length, n: i64| a + ((b - a) * n).divided(parts);
        let place = |n| Point::new(share(from.x, to.x, n), share(from.y, to.y, n));
        let show = |figures| units.length(piece.cut, Rounding::Nearest, figures);
        scene.dimensions.push(dimension(
            (place(part), place(part + 1)),
            // On the pipe; where that is too short, on the side away from what the tape said.
            if outward(at, *from, *to) {
                Edge::Right(0)
            } else {
                Edge::Left(0)
            },
            (
                format!("{}: {}", piece.number, show(Figures::Set)),
                format!("Piece {}, cut {}", piece.number, show(Figures::Plain)),
            ),
            (Standing::Piece(piece.number), None),
        ));
    }
}

/// Whether the left of the way from a point to another is the outside of the run.
fn outward(at: &[Point], from: Point, to: Point) -> bool {
    let count = at.len().max(1) as f64;
    let middle = |of: fn(&Point) -> Length| at.iter().map(|p| of(p).metres()).sum::<f64>() / count;
    let (x, y) = (
        middle(|p| p.x) - from.x.metres(),
        middle(|p| p.y) - from.y.metres(),
    );
    let (along, down) = ((to.x - from.x).metres(), (to.y - from.y).metres());
    // On a sheet whose y points down the left of a way is where this is less than nothing.
    along * y - down * x >= 0.0
}

#[cfg(test)]
mod tests;
