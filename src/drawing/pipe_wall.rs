//! A run of pipe on the elevation of its wall, between the studs.

use super::{Hot, Mark, Pen, Role, Scene, Stroke};
use crate::geometry::Point;
use crate::handbook::pipe::tube;
use crate::measure::Length;
use crate::trades::pipe::{Ask, Framed, Hole, Place};

/// Draws all lines of a run on a wall whose floor is at nothing: as wide as its pipe is, its holes ringed, red where one is
/// too large. A tap on a leg sends `tag`.
pub fn run_on_wall<T: Clone>(
    scene: &mut Scene<T>,
    (ask, lines): (&Ask, &[Vec<Place>]),
    (wall, holes): (&Framed, &[Hole]),
    tag: T,
) {
    let at = |place: &Place| Point::new(wall.start.0 + place.right, -(wall.start.1 + place.up));
    let legs: Vec<Vec<Point>> = lines
        .iter()
        .map(|places| places.iter().map(at).collect())
        .collect();
    pipes(scene, ask, &legs, &tag);
    for hole in holes {
        ring(
            scene,
            Point::new(hole.from_left, -hole.up),
            hole.across,
            hole.fits,
        );
    }
}

/// A hole, red where it is beyond its limits.
pub(super) fn ring<T>(scene: &mut Scene<T>, centre: Point, across: Length, fits: bool) {
    let role = if fits { Role::Ink } else { Role::Red };
    scene.marks.push(Mark::Circle {
        centre,
        radius: across.half(),
        pen: Some(Pen::solid(role, Stroke::Medium)),
        fill: None,
    });
}

/// The legs of each line as wide as they are, the later lines first so that the run itself lies on top.
pub(super) fn pipes<T: Clone>(scene: &mut Scene<T>, ask: &Ask, lines: &[Vec<Point>], tag: &T) {
    let each = lines.iter().enumerate().rev();
    let each = each.flat_map(|(line, at)| at.windows(2).enumerate().map(move |leg| (line, leg)));
    for (line, (leg, ends)) in each {
        let outside = tube(ask.pipe, ask.size_of(leg)).map(|tube| tube.outside.value);
        let half = outside.unwrap_or_default().half();
        let (from, to) = (ends[0], ends[1]);
        if from == to {
            // Into the wall or out of it.
            scene.marks.push(Mark::Circle {
                centre: from,
                radius: half,
                pen: Some(Pen::solid(Role::Ink, Stroke::Medium)),
                fill: Some(Role::ChalkWash),
            });
            continue;
        }
        let long = from.distance(to).metres();
        let part = |length: Length| {
            Length::from_metres(length.metres() / long * half.metres()).unwrap_or_default()
        };
        let side = Point::new(-part(to.y - from.y), part(to.x - from.x));
        scene.marks.push(Mark::Path {
            points: vec![from + side, to + side, to - side, from - side],
            closed: true,
            pen: Some(Pen::solid(Role::Ink, Stroke::Medium)),
            fill: Some(Role::ChalkWash),
        });
        let clear = Point::new(half, half);
        let (least, most) = (
            Point::new(from.x.min(to.x), from.y.min(to.y)) - clear,
            Point::new(from.x.max(to.x), from.y.max(to.y)) + clear,
        );
        let name = if ask.name.is_empty() {
            "Pipe"
        } else {
            &ask.name
        };
        scene.hot.push(Hot {
            min: least,
            max: most,
            tag: tag.clone(),
            says: if line > 0 {
                format!("{name}, leg {}, line {}", leg + 1, line + 1)
            } else {
                format!("{name}, leg {}", leg + 1)
            },
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handbook::pipe::{Pipe, Size};
    use crate::trades::pipe::{By, Direction, Leg, Mark as Held, Way, framed, sketch};

    /// A drain through two studs of a bearing wall: drawn as wide as it is, its holes red, and tapped as one leg.
    #[test]
    fn holes_that_are_too_large_are_red() {
        let level = Leg {
            way: Way::Along(Direction::Right),
            size: None,
            by: By::Tape {
                length: Length::inches(30),
                from: Held::End,
                to: Held::End,
            },
            couplings: 0,
            end: None,
        };
        let ask = Ask {
            pipe: Pipe::PvcDrain,
            size: Size::Two,
            legs: vec![level],
            ..Ask::default()
        };
        let wall = Framed {
            start: (Length::inches(10), Length::inches(12)),
            long: Length::feet(8),
            high: None,
            studs: vec![Length::inches(16), Length::inches(32)],
            face: Length::in_64(1, 32),
            depth: Length::in_64(3, 32),
            bearing: true,
        };
        let lines = [sketch(&ask)];
        let (holes, _) = framed(&ask, &lines, &wall);
        let mut scene = Scene::empty("a wall");
        run_on_wall(&mut scene, (&ask, &lines), (&wall, &holes), ());
        let red = |mark: &&Mark| matches!(mark, Mark::Circle { pen: Some(pen), .. } if pen.role == Role::Red);
        assert_eq!(scene.marks.iter().filter(red).count(), 2);
        assert_eq!(scene.hot.len(), 1);
        let Mark::Path { points, .. } = &scene.marks[0] else {
            unreachable!("a pipe");
        };
        // 2 3/8 in across.
        assert_eq!(points[0].distance(points[3]), Length::in_64(2, 24));
    }
}
