//! The hole in its wall, checked: no figure missing that must be there, none beyond its limits.

use super::{Ask, Field, Hole, HoleShape, Problem, Rect};
use crate::handbook::gypsum;
use crate::measure::Length;
use crate::site::Studs;

/// No side, wall or distance is longer: 100 ft.
const LONGEST: Length = Length::feet(100);
/// Studs stand no closer than this, centre to centre, where one spacing is given.
const CLOSEST_STUDS: Length = Length::inches(4);

/// The hole in its wall.
pub(super) struct Place {
    pub hole: Rect,
    pub others: Vec<Rect>,
    pub from_corner: bool,
    pub from_floor: bool,
    /// Centres, rising; empty where no stud is known.
    pub studs: Vec<Length>,
    pub face: Length,
    pub length: Option<Length>,
    pub height: Option<Length>,
    /// Only those that can be compared with the hole.
    pub obstacles: Vec<Rect>,
}

impl Place {
    /// The face of a stud, left and right.
    pub fn wood(&self, centre: Length) -> (Length, Length) {
        let left = centre - self.face.half();
        (left, left + self.face)
    }
    /// The widest step from one known stud to the next.
    pub fn widest_step(&self) -> Option<Length> {
        self.studs.windows(2).map(|pair| pair[1] - pair[0]).max()
    }
    /// A rectangle lies on the wall and over no opening.
    pub fn is_sound(&self, at: &Rect) -> bool {
        let across = !self.from_corner
            || (at.left >= Length::ZERO && self.length.is_none_or(|end| at.right <= end));
        let up = !self.from_floor
            || (at.bottom >= Length::ZERO && self.height.is_none_or(|end| at.top <= end));
        across && up && !self.obstacles.iter().any(|obstacle| obstacle.overlaps(at))
    }
}

/// Checks what was asked and puts it in its place.
pub(super) fn place(ask: &Ask) -> Result<Place, Problem> {
    check_sizes(ask)?;
    let (studs, face) = match &ask.studs {
        Some(studs) => centres(studs, ask.wall.length)?,
        None => (Vec::new(), gypsum::STUD_FACE.value),
    };
    let (hole, from_corner, from_floor) = rectangle(&ask.hole, &studs)?;
    let mut place = Place {
        hole,
        others: Vec::new(),
        from_corner,
        from_floor,
        studs: if from_corner { studs } else { Vec::new() },
        face,
        length: ask.wall.length.filter(|_| from_corner),
        height: ask.wall.height.filter(|_| from_floor),
        obstacles: Vec::new(),
    };
    check_in_wall(&place)?;
    if from_corner && from_floor {
        for (obstacle, at) in ask.wall.obstacles.iter().enumerate() {
            let at = Rect {
                left: at.left,
                right: at.right,
                bottom: at.bottom,
                top: at.top,
            };
            let reach = -LONGEST..=LONGEST * 3;
            let known = [at.left, at.right, at.bottom, at.top];
            let in_reach = known.iter().all(|edge| reach.contains(edge));
            if !in_reach || at.left >= at.right || at.bottom >= at.top {
                return Err(Problem::ObstacleInsideOut { obstacle });
            }
            if at.overlaps(&hole) {
                return Err(Problem::OverAnOpening { obstacle });
            }
            place.obstacles.push(at);
        }
        for other in &ask.other_holes {
            check_hole(other)?;
            let (other, across, up) = rectangle(other, &place.studs)?;
            if across && up && place.is_sound(&other) {
                place.others.push(other);
            }
        }
    }
    Ok(place)
}

/// Every size between nothing and its limit.
fn check_sizes(ask: &Ask) -> Result<(), Problem> {
    check_hole(&ask.hole)?;
    within(
        Field::Board,
        ask.board,
        Length::in_64(0, 16),
        Length::inches(2),
    )?;
    within(Field::Gap, ask.gap, Length::ZERO, Length::in_64(0, 48))?;
    within(
        Field::ScrewSpacing,
        ask.screw_spacing,
        Length::inches(2),
        Length::inches(24),
    )?;
    let least = Length::inches(1);
    for (field, value) in [
        (Field::WallLength, ask.wall.length),
        (Field::WallHeight, ask.wall.height),
    ] {
        value.map_or(Ok(()), |is| within(field, is, least, LONGEST))?;
    }
    Ok(())
}

/// The size and the place of one hole within their limits.
fn check_hole(hole: &Hole) -> Result<(), Problem> {
    let least = Length::in_64(0, 1);
    match hole.shape {
        HoleShape::Rectangle { width, height } => {
            within(Field::HoleWidth, width, least, LONGEST)?;
            within(Field::HoleHeight, height, least, LONGEST)?;
        }
        HoleShape::Round { across } => within(Field::HoleAcross, across, least, LONGEST)?,
    }
    for (field, value) in [
        (Field::FromLeft, hole.from_left),
        (Field::AboveFloor, hole.above_floor),
    ] {
        value.map_or(Ok(()), |is| within(field, is, Length::ZERO, LONGEST))?;
    }
    Ok(())
}

fn within(field: Field, is: Length, least: Length, most: Length) -> Result<(), Problem> {
    if is < least {
        Err(Problem::TooSmall { field, is, least })
    } else if is > most {
        Err(Problem::TooLarge { field, is, most })
    } else {
        Ok(())
    }
}

/// The rectangle of a hole, and whether its place across and up is known.
fn rectangle(hole: &Hole, studs: &[Length]) -> Result<(Rect, bool, bool), Problem> {
    let (width, height) = hole.shape.size();
    let left = match (hole.from_left, hole.from_stud) {
        (Some(left), _) => Some(left),
        (None, Some((named, along))) if !studs.is_empty() => {
            let known = studs.len();
            let centre = studs
                .get(named)
                .ok_or(Problem::NoSuchStud { named, known })?;
            within(Field::FromLeft, along, -LONGEST, LONGEST)?;
            let left = *centre + along;
            within(Field::FromLeft, left, Length::ZERO, LONGEST * 3)?;
            Some(left)
        }
        _ => None,
    };
    let bottom = hole.above_floor;
    let (x, y) = (left.unwrap_or(Length::ZERO), bottom.unwrap_or(Length::ZERO));
    let at = Rect {
        left: x,
        right: x + width,
        bottom: y,
        top: y + height,
    };
    Ok((at, left.is_some(), bottom.is_some()))
}

/// The hole ends before its wall does.
fn check_in_wall(place: &Place) -> Result<(), Problem> {
    for (field, reaches, clash, limit) in [
        (
            Field::FromLeft,
            place.hole.right,
            Field::WallLength,
            place.length,
        ),
        (
            Field::AboveFloor,
            place.hole.top,
            Field::WallHeight,
            place.height,
        ),
    ] {
        if let Some(limit) = limit.filter(|limit| reaches > *limit) {
            return Err(Problem::PastTheWall {
                field,
                reaches,
                clash,
                limit,
            });
        }
    }
    Ok(())
}

/// The centres of the studs up to the end of the wall, and the width of their faces.
fn centres(studs: &Studs, wall: Option<Length>) -> Result<(Vec<Length>, Length), Problem> {
    let face = match studs {
        Studs::Spaced { face, .. } | Studs::Found { face, .. } => *face,
    };
    within(
        Field::StudFace,
        face,
        Length::in_64(0, 32),
        Length::inches(12),
    )?;
    match studs {
        Studs::Spaced { first, spacing, .. } => {
            within(Field::FirstStud, *first, Length::ZERO, LONGEST)?;
            within(
                Field::StudSpacing,
                *spacing,
                face.max(CLOSEST_STUDS),
                LONGEST,
            )?;
            let end = wall.unwrap_or(LONGEST * 3);
            let count = (end - *first).as_nm() / spacing.as_nm();
            let centres = (0..=count).map(|n| *first + *spacing * n);
            Ok((centres.filter(|centre| *centre <= end).collect(), face))
        }
        Studs::Found { centres, .. } => {
            for centre in centres {
                within(Field::FirstStud, *centre, Length::ZERO, LONGEST * 3)?;
            }
            match centres.windows(2).position(|pair| pair[1] <= pair[0]) {
                Some(before) => Err(Problem::StudsOutOfOrder { at: before + 1 }),
                None => Ok((centres.clone(), face)),
            }
        }
    }
}
