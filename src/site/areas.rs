//! Areas of a room: walls gross and net of openings, by the rule chosen.

use super::{Opening, Room, Shape};
use crate::handbook::{Cite, documents};
use crate::measure::Length;
use crate::measure::quantity::{Area, area, square_metres};

/// How openings are taken off the walls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OpeningRule {
    /// Every opening is taken off.
    Net,
    /// Walls are measured solid, whatever is in them.
    Solid,
    /// Openings smaller than this are not taken off.
    SmallNotDeducted(Area),
}

impl OpeningRule {
    /// Where the rule stands.
    #[must_use]
    pub fn cite(self) -> Cite {
        match self {
            OpeningRule::Net => Cite::practice("openings taken off at their measured size"),
            OpeningRule::Solid => Cite::read(
                &documents::CYCLOPEDIA_OF_PAINTING,
                "Estimating, p. 125: walls measured solid",
            ),
            OpeningRule::SmallNotDeducted(_) => Cite::memory(
                &documents::PCA_P10,
                "openings under 100 square feet not deducted; not found in any page read",
            ),
        }
    }
}

/// One wall's areas.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WallAreas {
    /// Length times height.
    pub gross: Area,
    /// What the rule takes off.
    pub openings: Area,
    /// What is left.
    pub net: Area,
}

/// What is missing for an area.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoArea {
    /// The height of a wall, counted from 0.
    Height(usize),
    /// A size of an opening, counted from 0.
    Opening(usize),
}

/// The areas of every wall of a room, in order: `net = length × height − openings`, the height in the mean where it was
/// measured in the corners.
///
/// # Errors
/// [`NoArea`] names the first height or opening that is not measured.
///
/// # Source
/// Arithmetic; each [`OpeningRule`] says where it stands.
///
/// # Example
/// ```
/// use storyrod::{measure::{Length, quantity::in_square_feet}, site::{OpeningRule, Room, shape, wall_areas}};
/// let mut room = Room::rectangle("Washroom");
/// room.walls[0].length = Some(Length::feet(8));
/// room.walls[1].length = Some(Length::feet(5));
/// room.ceiling = Some(Length::feet(8));
/// let areas = wall_areas(&room, &shape(&room).unwrap(), OpeningRule::Net).unwrap();
/// assert_eq!(in_square_feet(areas[0].net).round(), 64.0);
/// ```
pub fn wall_areas(room: &Room, shape: &Shape, rule: OpeningRule) -> Result<Vec<WallAreas>, NoArea> {
    shape
        .walls
        .iter()
        .enumerate()
        .map(|(index, (length, _))| {
            // A ceiling that slopes along the wall: half of both heights.
            let (left, right) = room.heights_of(index).ok_or(NoArea::Height(index))?;
            let gross = area(*length, (left + right).half());
            let mut openings = square_metres(0.0);
            for (number, opening) in room
                .openings
                .iter()
                .enumerate()
                .filter(|(_, o)| o.wall == index)
            {
                openings += deducted(opening, rule).ok_or(NoArea::Opening(number))?;
            }
            let net = if openings > gross {
                square_metres(0.0)
            } else {
                gross - openings
            };
            Ok(WallAreas {
                gross,
                openings,
                net,
            })
        })
        .collect()
}

fn deducted(opening: &Opening, rule: OpeningRule) -> Option<Area> {
    let size = area(opening.width?, opening.height?);
    Some(match rule {
        OpeningRule::Net => size,
        OpeningRule::SmallNotDeducted(least) if size >= least => size,
        OpeningRule::Solid | OpeningRule::SmallNotDeducted(_) => square_metres(0.0),
    })
}

/// Length of baseboard: round the room less its doors.
///
/// # Source
/// *Estimating in Building Construction*, Example 13-25: perimeter less door openings.
///
/// # Example
/// ```
/// use storyrod::site::{Room, baseboard, sketch};
/// use storyrod::measure::Length;
/// let room = Room::rectangle("Washroom");
/// assert_eq!(baseboard(&room, &sketch(&room)), Length::inches(312));
/// ```
#[must_use]
pub fn baseboard(room: &Room, shape: &Shape) -> Length {
    let round: Length = shape.walls.iter().map(|(length, _)| *length).sum();
    let doors: Length = room
        .openings
        .iter()
        .filter(|o| o.kind == super::OpeningKind::Door)
        .filter_map(|o| o.width)
        .sum();
    (round - doors).max(Length::ZERO)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::quantity::{in_square_feet, square_feet};
    use crate::site::{OpeningKind, shape};

    /// A 5 by 8 ft room, 8 ft high, with a door of 20 and a window of 15 square feet.
    fn bath() -> Room {
        let mut room = Room::rectangle("Bath");
        room.walls[0].length = Some(Length::feet(8));
        room.walls[1].length = Some(Length::feet(5));
        room.ceiling = Some(Length::feet(8));
        let opening = |kind, wall, height: i64, width: i64| Opening {
            kind,
            wall,
            from_left: Some(Length::feet(1)),
            width: Some(Length::inches(width)),
            height: Some(Length::inches(height)),
            sill: None,
            hinge: None,
        };
        room.openings = vec![
            opening(OpeningKind::Door, 0, 80, 36),
            opening(OpeningKind::Window, 2, 60, 36),
        ];
        room
    }

    #[track_caller]
    fn check(rule: OpeningRule, expected: f64) {
        let room = bath();
        let areas = wall_areas(&room, &shape(&room).unwrap(), rule).unwrap();
        let net: f64 = areas.iter().map(|wall| in_square_feet(wall.net)).sum();
        assert!((net - expected).abs() < 1e-9, "{rule:?}: {net}");
    }

    /// 208 square feet of wall, 35 of openings: arithmetic of our own.
    #[test]
    fn openings_come_off_as_the_rule_says() {
        check(OpeningRule::Net, 173.0);
        check(OpeningRule::Solid, 208.0);
        check(OpeningRule::SmallNotDeducted(square_feet(100.0)), 208.0);
        check(OpeningRule::SmallNotDeducted(square_feet(20.0)), 188.0);
    }

    #[test]
    fn what_is_not_measured_is_named() {
        let mut room = bath();
        room.openings[1].width = None;
        let drawn = shape(&room).unwrap();
        assert_eq!(
            wall_areas(&room, &drawn, OpeningRule::Net),
            Err(NoArea::Opening(1))
        );
        room.ceiling = None;
        assert_eq!(
            wall_areas(&room, &drawn, OpeningRule::Net),
            Err(NoArea::Height(0))
        );
    }
}
