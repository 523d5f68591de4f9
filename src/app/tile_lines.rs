//! Lines of the room that a floor's pattern may keep to: joints of its walls' tile, the middles of doors and windows.

use super::{App, Chip, Choice, Command, Row, TileChoice, wall_page::kind_name};
use crate::measure::Length;
use crate::site::{self, Wall, surface};
use crate::takeoff::{Ask, TileOn};
use crate::trades::tile::{self, Hold, Sight, Start, ThingShape};

/// A place along a wall, as a line on the floor: so far from its left edge, or from its top edge.
enum OnFloor {
    Across(Length),
    Along(Length),
}

impl App {
    /// A place along a wall on the floor; `None` along a wall at a slant.
    fn on_floor(&self, room: usize, wall: usize, from_left: Length) -> Option<OnFloor> {
        let room = self.job.rooms.get(room)?;
        let corners = site::shape(room).ok()?.corners.points;
        let least = surface::floor(room)?.bounds()?.0;
        let (a, b) = (*corners.get(wall)?, corners[(wall + 1) % corners.len()]);
        let (dx, dy) = (b.x - a.x, b.y - a.y);
        let on = |from: Length, way: Length| {
            if way.is_positive() {
                from + from_left
            } else {
                from - from_left
            }
        };
        let hair = Length::mm(1);
        if dy.abs() <= hair {
            Some(OnFloor::Across(on(a.x, dx) - least.x))
        } else if dx.abs() <= hair {
            Some(OnFloor::Along(on(a.y, dy) - least.y))
        } else {
            None
        }
    }

    /// What a pattern may be even about: the middle, the room's openings, what stands in the way.
    pub(super) fn sights_row(&self, at: usize, ask: &tile::Ask, now: Sight) -> Option<Row> {
        let mut sights = vec![("The middle".to_owned(), Sight::Middle)];
        let task = self.job.tasks.get(at)?;
        let openings = task.room.and_then(|room| self.job.rooms.get(room));
        for opening in openings.iter().flat_map(|room| &room.openings) {
            let (Some(left), Some(width)) = (opening.from_left, opening.width) else {
                continue;
            };
            let middle = left + width.half();
            let sight = match (&task.ask, task.room) {
                (Ask::Tile(_, TileOn::Floor), Some(room)) => {
                    match self.on_floor(room, opening.wall, middle) {
                        Some(OnFloor::Across(x)) => Sight::Across(x),
                        Some(OnFloor::Along(y)) => Sight::Along(y),
                        None => continue,
                    }
                }
                (Ask::Tile(_, TileOn::Wall(wall)), _) if *wall == opening.wall => {
                    Sight::Across(middle)
                }
                _ => continue,
            };
            let name = format!(
                "{}, wall {}",
                kind_name(opening.kind),
                Wall::named(opening.wall)
            );
            sights.push((name, sight));
        }
        for (n, thing) in ask.things.iter().enumerate() {
            let middle = match thing.shape {
                ThingShape::Round { .. } => thing.from_left,
                ThingShape::Rectangle { width, .. } => thing.from_left + width.half(),
            };
            sights.push((format!("No. {} in the way", n + 1), Sight::Across(middle)));
        }
        let chips = sights.into_iter().map(|(name, sight)| {
            let choice = Choice::Tile(TileChoice::Start(Start::Balanced(sight)));
            Chip::new(name, sight == now, Command::Set(at, choice))
        });
        let chips: Vec<Chip> = chips.collect();
        (chips.len() > 1).then(|| Row::choice("Even about", chips))
    }

    /// Joints of the walls' own layouts that the floor's joints may run on from.
    pub(super) fn wall_joints_row(&self, at: usize, ask: &tile::Ask) -> Option<Row> {
        let task = self.job.tasks.get(at)?;
        let Ask::Tile(_, TileOn::Floor) = task.ask else {
            return None;
        };
        let hold = |wall: usize, joint: Length| match self.on_floor(task.room?, wall, joint)? {
            OnFloor::Across(x) => Some(Hold::JointFromLeft(x)),
            OnFloor::Along(y) => Some(Hold::JointFromTop(y)),
        };
        let chips: Vec<Chip> = (self.job.tasks.iter().enumerate())
            .filter_map(|(n, other)| {
                let Ask::Tile(_, TileOn::Wall(wall)) = other.ask else {
                    return None;
                };
                if other.room != task.room {
                    return None;
                }
                let of_wall = self.tile_ask(n)?;
                let laid = self.tile_figure(&of_wall);
                let figure = laid.as_ref().as_ref().ok()?;
                let (from, to) = of_wall.surface.bounds()?;
                let middle = (to.x - from.x).half();
                let joints = tile::running(&of_wall, &figure.layout, true);
                let joint = joints.into_iter().min_by_key(|j| (*j - middle).abs())?;
                let hold = hold(wall, joint)?;
                let choice = Choice::Tile(TileChoice::Hold(Some(hold)));
                let label = format!("Wall {}", Wall::named(wall));
                Some(Chip::new(
                    label,
                    ask.hold == Some(hold),
                    Command::Set(at, choice),
                ))
            })
            .collect();
        (!chips.is_empty()).then(|| Row::choice("Joints run on from the tile of a wall", chips))
    }
}
