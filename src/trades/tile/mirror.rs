//! A layout in the mirror: left for right, whatever its pattern is.

use super::lay::{box_of, field};
use super::{Ask, Hold, Side, Sight, Start, Thing, ThingShape};
use crate::geometry::{Point, Polygon, Region};
use crate::measure::Length;

impl Ask {
    /// The same layout in a mirror that stands upright beside it: the surface and what stands in the way, the pattern by
    /// the other hand and turned the other way, its start, what it is even about and what it keeps to.
    ///
    /// # Source
    /// Geometry.
    /// # Example
    /// ```
    /// use storyrod::trades::tile::{Ask, Pattern, figure};
    /// let ask = Ask { pattern: Pattern::Bond { over: 1, of: 3 }, ..Ask::default() };
    /// let (one, other) = (figure(&ask).unwrap(), figure(&ask.mirrored()).unwrap());
    /// assert_eq!((one.layout.whole(), one.layout.cut()), (other.layout.whole(), other.layout.cut()));
    /// assert_eq!(ask.mirrored().mirrored(), ask);
    /// ```
    #[must_use]
    pub fn mirrored(&self) -> Ask {
        let Some((least, most)) = self.surface.bounds() else {
            return self.clone();
        };
        let wide = most.x - least.x;
        let mut other = Ask {
            surface: flipped(&self.surface, least.x + most.x),
            things: self
                .things
                .iter()
                .map(|thing| thing.mirrored(wide))
                .collect(),
            other_hand: !self.other_hand,
            turn: -self.turn,
            hold: self.hold.map(|hold| hold.mirrored(wide)),
            ..self.clone()
        };
        other.start = match self.start {
            Start::ByHand(from) => {
                let field = field(self).map(|field| box_of(&field).1.x);
                let field = field.unwrap_or(wide - self.gap * 2);
                Start::ByHand(Point::new(field - from.x, from.y))
            }
            Start::Balanced(sight) => Start::Balanced(sight.mirrored(&self.surface)),
            same @ (Start::Fewest | Start::Corner) => same,
        };
        other
    }
}

/// A region in the mirror: a place `x` goes to `sum − x`. Its corners go round the same way as before.
fn flipped(region: &Region, sum: Length) -> Region {
    let ring = |ring: &Polygon| Polygon {
        points: (ring.points.iter().rev())
            .map(|point| Point::new(sum - point.x, point.y))
            .collect(),
    };
    Region {
        outer: ring(&region.outer),
        holes: region.holes.iter().map(ring).collect(),
    }
}

impl Thing {
    fn mirrored(&self, wide: Length) -> Thing {
        let across = match self.shape {
            ThingShape::Round { .. } => Length::ZERO,
            ThingShape::Rectangle { width, .. } => width,
        };
        Thing {
            from_left: wide - self.from_left - across,
            ..*self
        }
    }
}

impl Sight {
    /// The same line of the mirrored surface.
    pub(super) fn mirrored(self, surface: &Region) -> Sight {
        match (self, surface.bounds()) {
            (Sight::Across(from_left), Some((least, most))) => {
                Sight::Across(most.x - least.x - from_left)
            }
            (same, _) => same,
        }
    }
}

impl Hold {
    fn mirrored(self, wide: Length) -> Hold {
        match self {
            Hold::Whole(Side::Left) => Hold::Whole(Side::Right),
            Hold::Whole(Side::Right) => Hold::Whole(Side::Left),
            Hold::JointFromLeft(from_left) => Hold::JointFromLeft(wide - from_left),
            same @ (Hold::Whole(_) | Hold::JointFromTop(_)) => same,
        }
    }
}
