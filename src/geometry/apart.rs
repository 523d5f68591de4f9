//! How far two shapes in a plane are apart, as far as a saw or a bit would have to go from one to the other.

use super::{Spot, distance, from_stretch};

/// A shape: a place, a line through places, or the area within them; with what stands out from it all round.
#[derive(Clone, Debug, PartialEq)]
pub struct Form {
    /// Its places, in metres.
    pub places: Vec<Spot>,
    /// They go round, and what is within belongs to it.
    pub area: bool,
    /// So far out from its places and lines, in metres: the radius of a hole, half the width of a pipe.
    pub out: f64,
}

impl Form {
    /// A round thing: its middle and how far it reaches from there.
    #[must_use]
    pub fn round(middle: Spot, out: f64) -> Form {
        Form {
            places: vec![middle],
            area: false,
            out,
        }
    }

    /// A rectangle, by two corners that face each other.
    #[must_use]
    pub fn rectangle([left, bottom]: Spot, [right, top]: Spot) -> Form {
        Form {
            places: vec![[left, bottom], [right, bottom], [right, top], [left, top]],
            area: true,
            out: 0.0,
        }
    }

    /// A line through places.
    #[must_use]
    pub fn line(places: Vec<Spot>, out: f64) -> Form {
        Form {
            places,
            area: false,
            out,
        }
    }

    /// Its lines; of a place alone the one from it to itself.
    fn stretches(&self) -> impl Iterator<Item = [Spot; 2]> + '_ {
        let count = self.places.len();
        let lines = match (count, self.area) {
            (0..=2, _) | (_, false) => count.saturating_sub(1).max(usize::from(count == 1)),
            _ => count,
        };
        (0..lines).map(move |n| [self.places[n], self.places[(n + 1) % count]])
    }

    fn holds(&self, at: Spot) -> bool {
        let mut inside = false;
        if self.area {
            for [a, b] in self.stretches() {
                if (a[1] > at[1]) != (b[1] > at[1])
                    && at[0] < a[0] + (at[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
                {
                    inside = !inside;
                }
            }
        }
        inside
    }

    /// How far it is from this shape to another; nothing where they touch, and infinite where one has no place.
    ///
    /// # Inputs
    /// Metres, on any axes that both share.
    /// # Gives
    /// Metres: the least distance of their lines, less what stands out from each; 0 where lines cross, or one lies
    /// within the other's area.
    /// # Source
    /// The least distance of two stretches that do not cross lies at an end of one: plane geometry.
    /// # Example
    /// ```
    /// use storyrod::geometry::Form;
    /// let cut = Form::rectangle([1.0, 1.0], [2.0, 1.5]);
    /// let pipe = Form::line(vec![[0.75, 0.0], [0.75, 3.0]], 0.0);
    /// assert_eq!(cut.apart(&pipe), 0.25);
    /// ```
    #[must_use]
    pub fn apart(&self, other: &Form) -> f64 {
        let within = |one: &Form, two: &Form| one.places.first().is_some_and(|p| two.holds(*p));
        if within(self, other) || within(other, self) {
            return 0.0;
        }
        let mut least = f64::INFINITY;
        for [a, b] in self.stretches() {
            for [c, d] in other.stretches() {
                if cross(a, b, c, d) {
                    return 0.0;
                }
                let ends = [
                    from_stretch(a, b, c),
                    from_stretch(a, b, d),
                    from_stretch(c, d, a),
                    from_stretch(c, d, b),
                ];
                least = ends.into_iter().fold(least, f64::min);
            }
        }
        (least - self.out - other.out).max(0.0)
    }
}

/// Whether two stretches cross between their ends.
fn cross(a: Spot, b: Spot, c: Spot, d: Spot) -> bool {
    if distance(a, b) == 0.0 || distance(c, d) == 0.0 {
        return false;
    }
    let side = |p: Spot, q: Spot, at: Spot| {
        (q[0] - p[0]) * (at[1] - p[1]) - (q[1] - p[1]) * (at[0] - p[0])
    };
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(one: &Form, other: &Form, wanted: f64) {
        for apart in [one.apart(other), other.apart(one)] {
            assert!(
                (apart - wanted).abs() < 1e-12 || apart == wanted,
                "{apart}, not {wanted}"
            );
        }
    }

    #[test]
    fn a_pipe_through_beside_or_within_a_cut_is_that_far_from_it() {
        let cut = Form::rectangle([1.0, 1.0], [2.0, 1.5]);
        let pipe = |x: f64, out: f64| Form::line(vec![[x, 0.0], [x, 3.0]], out);
        check(&cut, &pipe(1.5, 0.0), 0.0);
        check(&cut, &pipe(0.9, 0.0), 0.1);
        check(&cut, &pipe(0.9, 0.025), 0.075);
        check(&cut, &pipe(0.9, 0.2), 0.0);
        // A short piece that lies wholly within the cut, and a point in it.
        check(&cut, &Form::line(vec![[1.2, 1.2], [1.3, 1.3]], 0.0), 0.0);
        check(&cut, &Form::round([1.5, 1.25], 0.0), 0.0);
        check(&cut, &Form::round([2.3, 1.9], 0.0), 0.5);
        check(&cut, &Form::line(Vec::new(), 0.0), f64::INFINITY);
    }

    #[test]
    fn points_and_slanted_lines_are_measured_at_right_angles() {
        let line = Form::line(vec![[0.0, 0.0], [4.0, 3.0]], 0.0);
        // 3 across and 4 down from its middle is 5 away at a right angle.
        check(&line, &Form::round([2.0 + 3.0, 1.5 - 4.0], 0.0), 5.0);
        check(&line, &Form::round([7.0, 7.0], 1.0), 4.0);
        check(&line, &Form::line(vec![[0.0, 3.0], [4.0, 0.0]], 0.0), 0.0);
        check(
            &Form::round([0.0, 0.0], 0.5),
            &Form::round([3.0, 4.0], 0.5),
            4.0,
        );
    }
}
