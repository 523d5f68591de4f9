//! A wall as it truly stands: the outline of its face, seen from inside.

use super::surface::standing;
use super::{Room, Side, Standing, Trust, What, follows_plus_minus, surveyed};
use crate::geometry::{Point, Polygon, Region};
use crate::measure::Length;

/// A wall's face laid flat.
///
/// Across is measured from the left corner at the floor, up from the higher end of the floor; the sheet begins at the
/// highest point of the ceiling.
#[derive(Clone, Debug, PartialEq)]
pub struct Elevation {
    /// Left corner: at the floor and at the ceiling, across and up.
    pub left: [(Length, Length); 2],
    /// Right corner, likewise.
    pub right: [(Length, Length); 2],
    /// What the outline was taken from, in the order of the working.
    pub taken: Vec<Taken>,
    /// How far the width can be trusted at any height.
    pub across: Trust,
    /// How far the height can be trusted.
    pub up: Trust,
    /// How much longer than plumb the face is, where the wall itself leans: the more of its two ends.
    pub longer: Length,
}

/// One measurement that an outline was taken from, and what it does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Taken {
    /// The measurement; a wall's length may follow from others.
    pub what: What,
    /// As read, or as it follows.
    pub length: Length,
    /// How far it can be trusted.
    pub trust: Trust,
    /// What it does to the outline.
    pub does: Does,
}

/// What a measurement does to the outline of a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Does {
    /// It is the width at the floor.
    Width,
    /// It is the height at an end.
    Height(Side),
    /// The floor lies so much lower at that end than at the other.
    Lower(Side, Length),
    /// A neighbour leans: the top of that edge lies so far to the right of its foot, or to the left where less.
    Slants(Side, Length),
    /// The wall itself leans: its face is so much longer than plumb at that end.
    Longer(Side, Length),
}

/// Corners nearer to straight than this do not hand a lean on: a sine of 10°.
const NEARLY_STRAIGHT: f64 = 0.173_648;

/// A hair of twice the nanometre grid: a difference that is no difference.
const NOTHING: Length = Length::ZERO;

impl Elevation {
    /// Where the left edge stands, at a height.
    #[must_use]
    pub fn left_at(&self, up: Length) -> Length {
        on_line(self.left.map(|(across, up)| (up, across)), up)
    }
    /// Where the right edge stands, at a height.
    #[must_use]
    pub fn right_at(&self, up: Length) -> Length {
        on_line(self.right.map(|(across, up)| (up, across)), up)
    }
    /// How high the floor lies, so far across.
    #[must_use]
    pub fn floor_at(&self, across: Length) -> Length {
        on_line([self.left[0], self.right[0]], across)
    }
    /// How high the ceiling lies, so far across.
    #[must_use]
    pub fn ceiling_at(&self, across: Length) -> Length {
        on_line([self.left[1], self.right[1]], across)
    }
    /// The highest point of the ceiling: where the sheet begins.
    #[must_use]
    pub fn top(&self) -> Length {
        self.left[1].1.max(self.right[1].1)
    }
    /// Where something is that was measured from the left corner, level, and up from the floor under it.
    #[must_use]
    pub fn place(&self, from_left: Length, up: Length) -> (Length, Length) {
        let level = self.floor_at(from_left) + up;
        let across = self.left_at(level) + from_left;
        (across, self.floor_at(across) + up)
    }
    /// A place as a point of the sheet.
    #[must_use]
    pub fn on_sheet(&self, (across, up): (Length, Length)) -> Point {
        Point::new(across, self.top() - up)
    }
    /// Whether it is a rectangle.
    #[must_use]
    pub fn is_rectangle(&self) -> bool {
        let [left, right] = [self.left, self.right];
        left[0].0 == left[1].0
            && right[0].0 == right[1].0
            && left[0].1 == right[0].1
            && left[1].1 == right[1].1
    }
}

/// A line through two places, given as (along, off), carried on beyond them: how far off it is, so far along.
fn on_line([a, b]: [(Length, Length); 2], along: Length) -> Length {
    if a.1 == b.1 || a.0 == b.0 {
        return a.1;
    }
    let share = (along - a.0).metres() / (b.0 - a.0).metres();
    a.1 + Length::from_metres((b.1 - a.1).metres() * share).unwrap_or_default()
}

/// How far the top of a corner lies from its foot, along the wall to the right.
///
/// Two faces that lean by `own` and `next` into the room meet, at the top, where both are moved in by that much:
/// `(next − own·cos t) ÷ sin t` at the left end, the negative at the right, `t` being the turn of the corner.
fn slant(own: Length, next: Length, turn: f64, end: Side) -> Option<Length> {
    let (sine, cosine) = turn.sin_cos();
    if sine.abs() < NEARLY_STRAIGHT {
        return None;
    }
    let right = (next.metres() - own.metres() * cosine) / sine;
    Length::from_metres(match end {
        Side::Left => right,
        Side::Right => -right,
    })
}

/// The true outline of a wall's face, seen from inside.
///
/// Across the floor it is as long as the wall. Each end is as high as its corner; the floor's level in both corners
/// slopes its lower edge; a neighbour that leans into the room by `a` moves the top of the edge they share by
/// `(a − b·cos t) ÷ sin t`, with `b` the wall's own lean there and `t` the turn; and a face that leans by `b` over `h`
/// is `√(h² + b²)` long.
///
/// # Inputs
/// A room with this wall, its length measured or following, and a height.
/// # Gives
/// `None` until length and height are known. Where neither level nor lean was measured, the rectangle, or the trapezoid
/// of the heights in its corners. A level of one end alone says nothing; without heights in the corners the ceiling runs
/// as the floor does.
/// # Source
/// Plane geometry.
/// # Example
/// ```
/// use storyrod::{measure::Length, site::{Room, Side, What, elevation}};
/// let mut room = Room::rectangle("Washroom");
/// for (wall, inches) in [96, 60, 96, 60].into_iter().enumerate() {
///     room.measure(What::Wall(wall), Some(Length::inches(inches)), None);
/// }
/// room.measure(What::Ceiling, Some(Length::inches(96)), None);
/// // Wall D, at the left of A, leans into the room by half an inch at the corner they share.
/// room.measure(What::Lean(3, Side::Right), Some(Length::in_64(0, 32)), None);
/// let wall = elevation(&room, 0).unwrap();
/// assert!((wall.left[1].0 - Length::in_64(0, 32)).abs() < Length::nm(10));
/// assert_eq!(wall.right[1].0, Length::inches(96));
/// ```
#[must_use]
pub fn elevation(room: &Room, index: usize) -> Option<Elevation> {
    let shape = standing(room)?;
    let (length, known) = *shape.walls.get(index)?;
    let count = room.walls.len();
    let (before, next) = ((index + count - 1) % count, (index + 1) % count);
    let corners = &shape.corners.points;
    let heading = |from: usize| {
        let (a, b) = (corners[from], corners[(from + 1) % count]);
        (b.y - a.y).metres().atan2((b.x - a.x).metres())
    };
    let mut taken = vec![Taken {
        what: What::Wall(index),
        length,
        trust: wall_trust(room, index, known),
        does: Does::Width,
    }];
    let (left_high, right_high) = room.heights_of(index)?;
    for (corner, high, end) in [
        (index, left_high, Side::Left),
        (next, right_high, Side::Right),
    ] {
        let what = height_what(room, index, corner);
        taken.push(Taken {
            what,
            length: high,
            trust: trust(room, what),
            does: Does::Height(end),
        });
    }
    let mut floors = [NOTHING; 2];
    if let (Some(left), Some(right)) = (
        room.measured(What::Level(index)),
        room.measured(What::Level(next)),
    ) {
        // Read down from a level line: the more, the lower.
        let highest = left.min(right);
        floors = [highest - left, highest - right];
        let lower = if right >= left {
            (next, right, Side::Right, right - left)
        } else {
            (index, left, Side::Left, left - right)
        };
        if lower.3.is_positive() {
            taken.push(Taken {
                what: What::Level(lower.0),
                length: lower.1,
                trust: trust(room, What::Level(lower.0)),
                does: Does::Lower(lower.2, lower.3),
            });
        }
    }
    let lean = |wall, end| room.measured(What::Lean(wall, end));
    let mut tops = [NOTHING; 2];
    let mut faces = [left_high, right_high];
    let ends = [
        (
            Side::Left,
            (before, Side::Right),
            heading(index) - heading(before),
        ),
        (
            Side::Right,
            (next, Side::Left),
            heading(next) - heading(index),
        ),
    ];
    for (n, (end, (neighbour, there), turn)) in ends.into_iter().enumerate() {
        let own = lean(index, end);
        let theirs = lean(neighbour, there);
        if theirs.is_some() || own.is_some() {
            let (b, a) = (own.unwrap_or_default(), theirs.unwrap_or_default());
            let moved = slant(b, a, turn, end).unwrap_or_default();
            tops[n] = moved;
            if let Some(length) = theirs {
                let what = What::Lean(neighbour, there);
                taken.push(Taken {
                    what,
                    length,
                    trust: trust(room, what),
                    does: Does::Slants(end, moved),
                });
            }
        }
        if let Some(own) = own {
            let longer = faces[n].diagonal(own) - faces[n];
            faces[n] = faces[n] + longer;
            let what = What::Lean(index, end);
            taken.push(Taken {
                what,
                length: own,
                trust: trust(room, what),
                does: Does::Longer(end, longer),
            });
        }
    }
    let of = |wanted: fn(&Does) -> bool| {
        let in_it = taken.iter().filter(|taken| wanted(&taken.does));
        together(in_it.map(|taken| taken.trust))
    };
    Some(Elevation {
        left: [(NOTHING, floors[0]), (tops[0], floors[0] + faces[0])],
        right: [
            (length, floors[1]),
            (length + tops[1], floors[1] + faces[1]),
        ],
        across: of(|does| matches!(does, Does::Width | Does::Slants(..))),
        up: widest(&taken),
        longer: (faces[0] - left_high).max(faces[1] - right_high),
        taken,
    })
}

/// Which measurement the height of a wall at one of its corners is.
fn height_what(room: &Room, wall: usize, corner: usize) -> What {
    if room.measured(What::Height(corner)).is_some() {
        What::Height(corner)
    } else if room.walls[wall].height.is_some() {
        What::WallHeight(wall)
    } else {
        What::Ceiling
    }
}

fn trust(room: &Room, what: What) -> Trust {
    room.trust(what).unwrap_or(Trust {
        plus_minus: Length::ZERO,
        estimated: false,
    })
}

/// How far a wall's length can be trusted: as measured, as adjusted, or as it follows from others.
fn wall_trust(room: &Room, wall: usize, known: Standing) -> Trust {
    let adjusted = surveyed(room).and_then(|found| found.walls.get(wall).copied());
    let measured = trust(room, What::Wall(wall));
    let estimated = measured.estimated
        || (known == Standing::Follows && follows_plus_minus(room, wall).is_some());
    let plus_minus = match (adjusted, known) {
        (Some(found), _) => found.plus_minus,
        (None, Standing::Follows) => follows_plus_minus(room, wall).unwrap_or_default(),
        (None, _) => measured.plus_minus,
    };
    Trust {
        plus_minus,
        estimated,
    }
}

/// Several ± that have nothing to do with each other: the root of the sum of their squares.
fn together(all: impl Iterator<Item = Trust>) -> Trust {
    let (mut sum, mut estimated) = (0.0, false);
    for one in all {
        sum += one.plus_minus.metres().powi(2);
        estimated |= one.estimated;
    }
    Trust {
        plus_minus: Length::from_metres(f64::sqrt(sum)).unwrap_or_default(),
        estimated,
    }
}

/// The wider of the two heights' ±.
fn widest(taken: &[Taken]) -> Trust {
    let heights = taken
        .iter()
        .filter(|taken| matches!(taken.does, Does::Height(_)));
    let estimated = heights.clone().any(|taken| taken.trust.estimated);
    let plus_minus = heights.map(|taken| taken.trust.plus_minus).max();
    Trust {
        plus_minus: plus_minus.unwrap_or_default(),
        estimated,
    }
}

/// A wall from the highest point of its ceiling down, its openings taken out: those that stand on the floor as notches,
/// the rest as holes. `None` until the wall, its height and its openings are known.
pub(super) fn region(room: &Room, index: usize) -> Option<Region> {
    let wall = elevation(room, index)?;
    let mut notches = Vec::new();
    let mut holes = Vec::new();
    for opening in room.openings.iter().filter(|o| o.wall == index) {
        let (from, width) = (opening.from_left?, opening.width?);
        let (sill, height) = (opening.sill?, opening.height?);
        // Its frame is plumb and level, and stands on the floor under its middle.
        let (_, bottom) = wall.place(from + width.half(), sill);
        let left = wall.left_at(bottom) + from;
        let top = bottom + height;
        // What reaches past an edge ends there.
        let right = (left + width)
            .min(wall.right_at(bottom))
            .min(wall.right_at(top));
        let top = top.min(wall.ceiling_at(left)).min(wall.ceiling_at(right));
        if sill.is_positive() {
            let corners = [(left, top), (right, top), (right, bottom), (left, bottom)];
            holes.push(Polygon {
                points: corners.map(|place| wall.on_sheet(place)).to_vec(),
            });
        } else {
            notches.push((left, right, top));
        }
    }
    notches.sort_by_key(|(left, ..)| std::cmp::Reverse(*left));
    let mut places = vec![wall.left[1], wall.right[1], wall.right[0]];
    for (left, right, top) in notches {
        places.extend([
            (right, wall.floor_at(right)),
            (right, top),
            (left, top),
            (left, wall.floor_at(left)),
        ]);
    }
    places.push(wall.left[0]);
    let mut points: Vec<Point> = places
        .into_iter()
        .map(|place| wall.on_sheet(place))
        .collect();
    points.dedup();
    Some(Region {
        outer: Polygon { points },
        holes,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::quantity::in_square_feet;
    use crate::site::surface;

    const HAIR: Length = Length::nm(20);

    fn room(walls: &[i64], high: i64) -> Room {
        let mut room = if walls.len() == 6 {
            Room::l_shape("a")
        } else {
            Room::rectangle("a")
        };
        for (wall, inches) in walls.iter().enumerate() {
            room.measure(What::Wall(wall), Some(Length::inches(*inches)), None);
        }
        room.measure(What::Ceiling, Some(Length::inches(high)), None);
        room
    }

    fn near(a: Length, b: Length) -> bool {
        (a - b).abs() < HAIR
    }

    #[test]
    fn a_wall_of_which_nothing_more_was_measured_is_the_rectangle() {
        let room = room(&[96, 60, 96, 60], 90);
        let wall = elevation(&room, 1).unwrap();
        assert!(wall.is_rectangle());
        assert_eq!(
            (wall.longer, wall.top()),
            (Length::ZERO, Length::inches(90))
        );
        assert_eq!(wall.taken.len(), 3);
        assert_eq!(
            surface::wall(&room, 1),
            Some(Region::rectangle(Length::inches(60), Length::inches(90)))
        );
    }

    #[test]
    fn the_lower_edge_slopes_with_the_floor() {
        let mut room = room(&[96, 60, 96, 60], 90);
        room.measure(What::Level(0), Some(Length::inches(40)), None);
        // One end alone says nothing.
        assert!(elevation(&room, 0).unwrap().is_rectangle());
        room.measure(What::Level(1), Some(Length::in_64(40, 48)), None);
        room.measure(What::Height(0), Some(Length::inches(90)), None);
        room.measure(What::Height(1), Some(Length::in_64(90, 48)), None);
        let wall = elevation(&room, 0).unwrap();
        // The ceiling is level, the floor 3/4 in lower at the right: 96 by 90 and a triangle of 96 by 3/4.
        assert_eq!(wall.left[1].1, wall.right[1].1);
        assert_eq!(wall.floor_at(Length::inches(96)), -Length::in_64(0, 48));
        let area = in_square_feet(surface::wall(&room, 0).unwrap().area());
        assert!((area - (96.0 * 90.0 + 36.0) / 144.0).abs() < 1e-9);
        // The wall behind sees neither.
        assert!(elevation(&room, 2).unwrap().is_rectangle());
    }

    /// Both neighbours lean in by half an inch: at the top the wall is an inch shorter.
    #[test]
    fn neighbours_that_lean_in_make_the_top_shorter_and_out_longer() {
        let mut room = room(&[96, 60, 96, 60], 90);
        let half = Length::in_64(0, 32);
        for sign in [1, -1] {
            room.measure(What::Lean(3, Side::Right), Some(half * sign), None);
            room.measure(What::Lean(1, Side::Left), Some(half * sign), None);
            let wall = elevation(&room, 0).unwrap();
            assert!(near(wall.left[1].0, half * sign));
            assert!(near(wall.right[1].0, Length::inches(96) - half * sign));
            let area = in_square_feet(surface::wall(&room, 0).unwrap().area());
            let exact = (96.0 - f64::from(i32::try_from(sign).unwrap()) * 0.5) * 90.0 / 144.0;
            assert!((area - exact).abs() < 1e-6);
        }
    }

    /// Where a corner juts into the room, a face that leans in stands further out on its neighbour.
    #[test]
    fn at_a_corner_that_juts_in_it_is_the_other_way_round() {
        let mut room = room(&[96, 48, 36, 36, 60, 84], 90);
        // Wall C ends at the corner that juts in; D begins there.
        room.measure(What::Lean(2, Side::Right), Some(Length::in_64(0, 32)), None);
        let wall = elevation(&room, 3).unwrap();
        assert!(near(wall.left[1].0, -Length::in_64(0, 32)));
    }

    /// 3, 4, 5: 36 in out over 48 in of height is a face of 60 in.
    #[test]
    fn a_face_that_leans_is_longer_than_plumb() {
        let mut room = room(&[96, 60, 96, 60], 48);
        for end in [Side::Left, Side::Right] {
            room.measure(What::Lean(0, end), Some(Length::inches(36)), None);
        }
        let wall = elevation(&room, 0).unwrap();
        assert_eq!(wall.longer, Length::inches(12));
        assert_eq!(wall.top(), Length::inches(60));
        // In a square corner its own lean moves its edges not at all.
        assert!(near(wall.left[1].0, Length::ZERO));
    }

    #[test]
    fn openings_stand_on_the_floor_and_keep_off_the_edges() {
        use crate::site::{Opening, OpeningKind};
        let mut room = room(&[96, 60, 96, 60], 90);
        room.measure(What::Lean(1, Side::Left), Some(Length::inches(2)), None);
        room.measure(What::Level(0), Some(Length::inches(40)), None);
        room.measure(What::Level(1), Some(Length::inches(41)), None);
        let opening = |kind, from: i64, sill: i64, wide: i64, high: i64| Opening {
            kind,
            wall: 0,
            from_left: Some(Length::inches(from)),
            width: Some(Length::inches(wide)),
            height: Some(Length::inches(high)),
            sill: Some(Length::inches(sill)),
            hinge: None,
        };
        room.openings = vec![
            opening(OpeningKind::Door, 64, 0, 32, 80),
            opening(OpeningKind::Window, 12, 40, 24, 24),
        ];
        let region = surface::wall(&room, 0).unwrap();
        assert_eq!(region.crossing(), None);
        assert_eq!(region.holes.len(), 1);
        // A whole window is out; the door ends at the leaning edge.
        let hole = in_square_feet(region.holes[0].area());
        assert!((hole - 4.0).abs() < 1e-6);
    }

    #[test]
    fn an_estimate_of_the_neighbours_lean_makes_the_width_uncertain() {
        let mut room = room(&[96, 60, 96, 60], 90);
        let sure = elevation(&room, 0).unwrap().across;
        let what = What::Lean(3, Side::Right);
        room.measure(what, Some(Length::inches(1)), Some(Length::in_64(0, 32)));
        let guessed = elevation(&room, 0).unwrap().across;
        assert!(!sure.estimated && guessed.estimated);
        assert!(guessed.plus_minus > Length::in_64(0, 32));
    }
}
