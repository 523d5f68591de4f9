//! Four points of a plane from what was measured between them.

use super::homography::{Spot, distance, turn};
use super::plane_view::Estimate;

/// What is known of four points that go round from the origin, clockwise where y runs down: lengths in metres, angles in
/// radians, each with one standard deviation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// All four corners square: width and height.
    Rectangle([Estimate; 2]),
    /// The four sides (first to second, second to third, third to fourth, fourth to first), and the angle at the first.
    Cornered([Estimate; 5]),
    /// The four sides in that order, and the diagonal from the first to the third.
    Braced([Estimate; 5]),
}

/// Why no four points have such sides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoShape {
    /// A length is none.
    NoLength,
    /// Two sides do not close over the length that they have to span.
    Open {
        /// What they have to span: the diagonal from the first point to the third, or else the one from the second to
        /// the fourth.
        first_to_third: bool,
        /// How long that is.
        span: f64,
        /// Which sides, counted from 0.
        sides: [usize; 2],
        /// How long they are.
        lengths: [f64; 2],
    },
    /// They close, but a corner of theirs points inward or lies in a line with its neighbours; which, counted from 0.
    Inward(usize),
}

impl Shape {
    /// A rectangle of a width and a height, each with one standard deviation.
    #[must_use]
    pub fn rectangle(size: [f64; 2], spread: [f64; 2]) -> Shape {
        let side = |at: usize| Estimate {
            value: size[at],
            spread: spread[at],
        };
        Shape::Rectangle([side(0), side(1)])
    }

    /// What was measured.
    #[must_use]
    pub fn figures(&self) -> &[Estimate] {
        match self {
            Shape::Rectangle(figures) => figures,
            Shape::Cornered(figures) | Shape::Braced(figures) => figures,
        }
    }

    /// The four points: the first at the origin, the second to its right, y running down.
    ///
    /// With sides a, b, c, d and the angle A, the fourth is (d cos A, d sin A) and the third is where circles of b about
    /// the second and of c about the fourth meet; with a diagonal e the third lies from the first at the angle whose
    /// cosine is (a² + e² − b²) / 2ae, and the fourth beyond it by the angle whose cosine is (d² + e² − c²) / 2de.
    ///
    /// # Errors
    /// [`NoShape`].
    pub fn corners(&self) -> Result<[Spot; 4], NoShape> {
        let values: Vec<f64> = self.figures().iter().map(|figure| figure.value).collect();
        let found = self.with(&values)?;
        let inward = (0..4).find(|n| {
            let [before, at, after] = [3, 0, 1].map(|step| found[(n + step) % 4]);
            let long = distance(before, at).max(distance(at, after));
            turn(before, at, after) <= 1e-3 * long * long
        });
        inward.map_or(Ok(found), |n| Err(NoShape::Inward(n)))
    }

    /// The same with other figures in place of its own; whether they go round is not asked.
    pub(super) fn with(&self, figures: &[f64]) -> Result<[Spot; 4], NoShape> {
        if !figures
            .iter()
            .all(|figure| figure.is_finite() && *figure > 0.0)
        {
            return Err(NoShape::NoLength);
        }
        match (self, figures) {
            (Shape::Rectangle(_), [w, h]) => Ok([[0.0, 0.0], [*w, 0.0], [*w, *h], [0.0, *h]]),
            (Shape::Cornered(_), [a, b, c, d, angle]) => {
                let (second, fourth) = ([*a, 0.0], [d * angle.cos(), d * angle.sin()]);
                let span = distance(second, fourth);
                let cosine = corner([1, 2], [*b, *c], span, false)?;
                let along = [
                    (fourth[0] - second[0]) / span,
                    (fourth[1] - second[1]) / span,
                ];
                let sine = (1.0 - cosine * cosine).max(0.0).sqrt();
                // Away from the first point, which lies to the left of the way from the second to the fourth.
                let third = [
                    second[0] + b * (along[0] * cosine + along[1] * sine),
                    second[1] + b * (along[1] * cosine - along[0] * sine),
                ];
                Ok([[0.0, 0.0], second, third, fourth])
            }
            (Shape::Braced(_), [a, b, c, d, e]) => {
                let first = corner([0, 1], [*a, *b], *e, true)?.acos();
                let both = first + corner([3, 2], [*d, *c], *e, true)?.acos();
                let at = |long: f64, angle: f64| [long * angle.cos(), long * angle.sin()];
                Ok([[0.0, 0.0], [*a, 0.0], at(*e, first), at(*d, both)])
            }
            _ => Err(NoShape::NoLength),
        }
    }
}

/// The cosine of the angle between the first of two sides and what both span.
fn corner(
    sides: [usize; 2],
    lengths: [f64; 2],
    span: f64,
    first_to_third: bool,
) -> Result<f64, NoShape> {
    let [from, other] = lengths;
    let cosine = (from * from + span * span - other * other) / (2.0 * from * span);
    if cosine.abs() < 1.0 {
        return Ok(cosine);
    }
    Err(NoShape::Open {
        first_to_third,
        span,
        sides,
        lengths,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::FRAC_PI_2;

    fn sure(value: f64) -> Estimate {
        Estimate { value, spread: 0.0 }
    }

    /// Sides and diagonal of four points, and the points found again from them.
    fn check(points: [Spot; 4]) {
        let side = |n: usize| sure(distance(points[n], points[(n + 1) % 4]));
        let sides = [side(0), side(1), side(2), side(3)];
        let [a, b, c, d] = sides;
        let braced = Shape::Braced([a, b, c, d, sure(distance(points[0], points[2]))]);
        let angle = (points[3][1]).atan2(points[3][0]);
        let cornered = Shape::Cornered([a, b, c, d, sure(angle)]);
        for shape in [braced, cornered] {
            let found = shape.corners().unwrap();
            for (found, point) in found.iter().zip(points) {
                assert!(
                    distance(*found, point) < 1e-9,
                    "{shape:?}: {found:?} {point:?}"
                );
            }
        }
    }

    #[test]
    fn four_points_are_found_from_what_is_between_them() {
        check([[0.0, 0.0], [3.0, 0.0], [3.0, 4.0], [0.0, 4.0]]);
        check([[0.0, 0.0], [3.0, 0.0], [5.0, 4.5], [0.0, 2.0]]);
        check([[0.0, 0.0], [1.2, 0.0], [0.9, 0.8], [-0.3, 0.7]]);
        let rectangle = Shape::rectangle([3.0, 4.0], [0.0; 2]);
        let square = [3.0, 4.0, 3.0, 4.0, FRAC_PI_2].map(sure);
        let found = Shape::Cornered(square).corners().unwrap();
        for (a, b) in found.iter().zip(rectangle.corners().unwrap()) {
            assert!(distance(*a, b) < 1e-12);
        }
    }

    #[test]
    fn sides_that_cannot_close_say_which() {
        let open = |shape: Shape| shape.corners().unwrap_err();
        // 3 by 4 with a right angle leaves 5 to span; 2 and 2.5 do not.
        let short = Shape::Cornered([3.0, 2.0, 2.5, 4.0, FRAC_PI_2].map(sure));
        let expected = NoShape::Open {
            first_to_third: false,
            span: 5.0,
            sides: [1, 2],
            lengths: [2.0, 2.5],
        };
        assert_eq!(open(short), expected);
        let long = Shape::Braced([3.0, 4.0, 3.0, 4.0, 7.5].map(sure));
        assert!(matches!(
            open(long),
            NoShape::Open {
                first_to_third: true,
                sides: [0, 1],
                ..
            }
        ));
        let apart = Shape::Braced([3.0, 4.0, 9.0, 2.0, 5.0].map(sure));
        assert!(matches!(open(apart), NoShape::Open { sides: [3, 2], .. }));
        // They close, but only with the third corner inward.
        let dart = Shape::Braced([3.0, 2.0, 2.0, 3.0, 1.2].map(sure));
        assert_eq!(open(dart), NoShape::Inward(2));
        for wrong in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            let shape = Shape::Braced([3.0, wrong, 3.0, 4.0, 5.0].map(sure));
            assert_eq!(open(shape), NoShape::NoLength);
        }
    }
}
