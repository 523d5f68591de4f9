//! What a picture tells of lengths in its plane, each with its ±; and where they stand on the wall.

use super::{Flat, KnownBy, Photo, Taped, WORKING, What};
use crate::geometry::{
    Bent, CONTRADICTS, Estimate, Known, Lens, NoPlane, PlaneView, Reference, Shape, Spot, bend_of,
    distance, turn,
};
use crate::handbook::tape::{CORNER_OFF, HUNG};
use crate::measure::{Angle, Length};

/// One standard deviation of a click on a working copy, in its pixels. Common practice, no published source: a
/// fingertip with a loupe or a mouse hits an edge to a pixel or two.
pub const CLICK: f64 = 1.5;
/// One standard deviation of the bend of a lens that nobody looked at. Common practice, no published source: cameras
/// straighten their pictures to well within a hundredth.
pub const LENS: f64 = 0.004;
/// Standard deviations in a stated ±: 19 of 20.
pub const STATED: f64 = 2.0;
/// A reference is small where its shorter side has fewer pixels of the working copy.
const SMALL: f64 = 80.0;
/// A plane is oblique where it is tilted by more, in degrees.
const OBLIQUE: f64 = 60.0;

/// Why a picture shows no plane to measure in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoView {
    /// Nothing of known size is marked.
    NoReference,
    /// Its width or its height is not known, or one of the sides that it is known by.
    NotSized,
    /// Its corners show none.
    Plane(NoPlane),
}

/// What is doubtful about a plane, though it can be measured in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Doubt {
    /// The reference is too small in the picture; its shorter side in pixels of the working copy.
    Small(f64),
    /// The plane is seen too obliquely; its tilt in degrees.
    Oblique(f64),
    /// A figure reaches further from the reference than the reference is long.
    Beyond {
        /// The mark.
        number: u32,
    },
    /// A tape contradicts the picture and the other tapes; nothing else is measured by it.
    Disagrees {
        /// The mark.
        number: u32,
        /// What the picture and the other tapes say of it.
        says: Taped,
        /// No other tape on the picture agrees with it: its size may be the one that is wrong.
        alone: bool,
    },
    /// The marked edges tell little of the lens; one standard deviation of its bend.
    EdgesTellLittle(f64),
}

/// The figure of a mark.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Figure {
    /// Measured: the length and its ±.
    Taped(Taped),
    /// From the picture: the length and its ±.
    Estimate(Taped),
    /// An angle that was measured, with its ±.
    Angle(Angle, Angle),
    /// An angle from the picture, with its ±.
    AngleEstimate(Angle, Angle),
    /// An area that was measured, with its ±, in square metres.
    Area(f64, f64),
    /// An area from the picture, with its ±, in square metres.
    AreaEstimate(f64, f64),
}

impl Figure {
    /// Whether it comes from the picture alone.
    #[must_use]
    pub fn is_estimate(self) -> bool {
        matches!(
            self,
            Figure::Estimate(_) | Figure::AngleEstimate(..) | Figure::AreaEstimate(..)
        )
    }
}

impl Photo {
    /// Pixels of the working copy to one of the original.
    #[must_use]
    pub fn working_scale(&self) -> f64 {
        let long = f64::from(self.size.0.max(self.size.1).max(1));
        (f64::from(WORKING) / long).min(1.0)
    }

    /// One standard deviation of a click, in pixels of the original.
    fn click(&self) -> f64 {
        CLICK / self.working_scale()
    }

    /// Its lens: by the marked edges where there are three, else straight, within what cameras leave.
    #[must_use]
    pub fn lens(&self) -> Bent {
        let lens = Lens::straight(f64::from(self.size.0), f64::from(self.size.1));
        let allowed = Bent { lens, spread: LENS };
        let edges = self.flat.as_ref().map_or(&[][..], |flat| &flat.edges);
        if edges.len() < 3 {
            return allowed;
        }
        match bend_of(edges, lens, self.click()) {
            Some(found) if found.spread < LENS * 10.0 => found,
            _ => allowed,
        }
    }

    /// The dimensions that were taped, in order: what the plane is fitted to besides its reference.
    fn taped(&self) -> Vec<(u32, Known)> {
        let marks = self.marks.iter();
        let known = marks.filter_map(|mark| match (&mark.what, &mark.points[..]) {
            (What::Dimension(Some(taped)), [a, b]) => Some((
                mark.number,
                Known {
                    ends: [*a, *b],
                    length: taped.length.metres(),
                    spread: taped.give.metres() / STATED,
                },
            )),
            _ => None,
        });
        known.take(60).collect()
    }

    /// The plane that its reference and its taped lengths show.
    ///
    /// # Errors
    /// [`NoView`].
    pub fn view(&self) -> Result<PlaneView, NoView> {
        let flat = self.flat.as_ref().ok_or(NoView::NoReference)?;
        let reference = Reference {
            corners: flat.corners,
            shape: shape(flat).ok_or(NoView::NotSized)?,
        };
        let known: Vec<Known> = self.taped().into_iter().map(|(_, known)| known).collect();
        PlaneView::new(&reference, &known, self.lens(), self.click()).map_err(NoView::Plane)
    }

    /// The figure of a mark: as it was measured, else as the plane shows it.
    #[must_use]
    pub fn figure(&self, number: u32, view: Option<&PlaneView>) -> Option<Figure> {
        let mark = self.mark(number)?;
        match (&mark.what, &mark.points[..]) {
            (What::Dimension(Some(taped)), _) => Some(Figure::Taped(*taped)),
            (What::Dimension(None), [a, b]) => {
                Some(Figure::Estimate(stated(view?.distance(*a, *b)?)?))
            }
            (What::Angle(Some((angle, give))), _) => Some(Figure::Angle(*angle, *give)),
            (What::Angle(None), points @ [_, _, _]) => {
                let found = view?.estimate(points, |p| angle(p[0], p[1], p[2]))?;
                let degrees =
                    |radians: f64| Angle::microdegrees((radians.to_degrees() * 1e6).round() as i64);
                let give = degrees((found.spread * STATED).min(std::f64::consts::PI));
                Some(Figure::AngleEstimate(degrees(found.value), give))
            }
            (What::Area(Some((area, give))), _) => Some(Figure::Area(*area, *give)),
            (What::Area(None), points) if points.len() >= 3 => {
                let found = view?.estimate(points, area)?;
                Some(Figure::AreaEstimate(found.value, found.spread * STATED))
            }
            _ => None,
        }
    }

    /// What is doubtful about the plane.
    #[must_use]
    pub fn doubts(&self, view: &PlaneView) -> Vec<Doubt> {
        let Some(flat) = &self.flat else {
            return Vec::new();
        };
        let mut doubts = Vec::new();
        let short = shortest(flat) * self.working_scale();
        if short < SMALL {
            doubts.push(Doubt::Small(short));
        }
        if let Some(tilt) = view.tilt(middle(flat)).filter(|tilt| *tilt > OBLIQUE) {
            doubts.push(Doubt::Oblique(tilt));
        }
        if flat.edges.len() >= 3 {
            let straight = self.lens().lens;
            let flat_lens = Lens {
                bend: 0.0,
                ..straight
            };
            let found = bend_of(&flat.edges, flat_lens, self.click());
            let spread = found.map_or(f64::INFINITY, |found| found.spread);
            if spread > LENS {
                doubts.push(Doubt::EdgesTellLittle(spread));
            }
        }
        doubts.extend(self.contradictions(view));
        let marks = self.marks.iter().filter(|mark| {
            self.figure(mark.number, Some(view))
                .is_some_and(Figure::is_estimate)
                && beyond(flat, view, &mark.points)
        });
        doubts.extend(marks.map(|mark| Doubt::Beyond {
            number: mark.number,
        }));
        doubts
    }

    /// The tapes that contradict the picture and the others, the one that fits least first.
    fn contradictions(&self, view: &PlaneView) -> Vec<Doubt> {
        let taped = self.taped();
        let alone = view.left_out().iter().all(|out| *out);
        let fits = taped.iter().zip(view.misfits()).zip(view.left_out());
        let mut worst: Vec<(f64, u32, [Spot; 2])> = fits
            .filter(|(_, out)| **out)
            .map(|(((number, known), by), _)| (by.abs(), *number, known.ends))
            .collect();
        worst.sort_by(|a, b| b.0.total_cmp(&a.0));
        let doubts = worst.into_iter().filter_map(|(_, number, [a, b])| {
            let says = stated(view.distance(a, b)?)?;
            Some(Doubt::Disagrees {
                number,
                says,
                alone,
            })
        });
        doubts.collect()
    }

    /// What the picture and the other tapes say of a dimension, where a tape that read this would contradict them.
    ///
    /// # Source
    /// [`CONTRADICTS`]: more standard deviations of both together than chance makes likely.
    #[must_use]
    pub fn contradicted(&self, number: u32, read: Taped) -> Option<Taped> {
        let mut without = self.clone();
        let mark = without.mark_mut(number)?;
        let (What::Dimension(_), [a, b]) = (&mark.what, &mark.points[..]) else {
            return None;
        };
        let ends = [*a, *b];
        mark.what = What::Dimension(None);
        let says = without.view().ok()?.distance(ends[0], ends[1])?;
        let both = says.spread.hypot(read.give.metres() / STATED);
        let off = (read.length.metres() - says.value).abs();
        stated(says).filter(|_| off >= CONTRADICTS * both)
    }

    /// Where a place of the picture is on its wall: from the left corner and up from the floor, with its ±.
    ///
    /// The plane is anchored at a place whose two lengths are known. It is turned by what is known to be level: the upper
    /// edge of the reference ([`HUNG`]) and a level line, each as far as it can be believed. The ± holds every way: what is
    /// uncertain of the plane and of the clicks, along and across, and of the turn.
    #[must_use]
    pub fn on_wall(&self, view: &PlaneView, spot: Spot) -> Option<(Spot, f64)> {
        let anchor = self.anchor?;
        let (left, up) = (anchor.from_left?.metres(), anchor.up?.metres());
        let level = self.level(view);
        let (x, y, spread) = level.beyond(view, anchor.spot, spot)?;
        let tape = Taped::read(Length::ZERO).give.metres();
        Some(([left + x, up - y], (spread * STATED).hypot(tape)))
    }

    /// Where a place of the wall is in the picture's plane, in metres.
    #[must_use]
    pub fn from_wall(&self, view: &PlaneView, [left, up]: Spot) -> Option<Spot> {
        let anchor = self.anchor?;
        let from = view.place(anchor.spot)?;
        let (x, y) = (left - anchor.from_left?.metres(), anchor.up?.metres() - up);
        let (sine, cosine) = self.level(view).turn(view).sin_cos();
        Some([
            from[0] + x * cosine - y * sine,
            from[1] + x * sine + y * cosine,
        ])
    }

    /// What is level in the plane: the first level line that is long enough to say so, believed so far that the farthest
    /// mark is known best.
    fn level(&self, view: &PlaneView) -> Level {
        let line = self.marks.iter().find_map(|mark| {
            let (What::Level, [a, b]) = (&mark.what, &mark.points[..]) else {
                return None;
            };
            let (from, to) = (view.place(*a)?, view.place(*b)?);
            let ends = if from[0] <= to[0] { [*a, *b] } else { [*b, *a] };
            (distance(from, to) > 1e-3).then_some(ends)
        });
        let by = |share: f64| Level { line, share };
        if line.is_none() {
            return by(0.0);
        }
        let far = self.anchor.and_then(|anchor| {
            let from = view.place(anchor.spot)?;
            let points = self.marks.iter().flat_map(|mark| &mark.points);
            let corners = self.flat.iter().flat_map(|flat| &flat.corners);
            let far = |spot: &Spot| view.place(*spot).map_or(0.0, |at| distance(from, at));
            let farthest = points
                .chain(corners)
                .max_by(|a, b| far(a).total_cmp(&far(b)))?;
            Some((anchor.spot, *farthest))
        });
        let Some((anchor, far)) = far else {
            return by(1.0);
        };
        // What is uncertain of the place is, squared, a parabola over the share: three of its points tell the lowest.
        let at = |share: f64| {
            let spread = by(share).beyond(view, anchor, far);
            spread.map_or(f64::INFINITY, |(_, _, spread)| spread * spread)
        };
        let (edge, half, whole) = (at(0.0), at(0.5), at(1.0));
        let bow = edge - 2.0 * half + whole;
        let share = if bow > 0.0 && bow.is_finite() {
            0.5 + (edge - whole) / (4.0 * bow)
        } else {
            f64::from(u8::from(whole < edge))
        };
        by(share.clamp(0.0, 1.0))
    }
}

/// What is level in the plane of a picture.
#[derive(Clone, Copy)]
struct Level {
    /// The ends of a level line, the left one first.
    line: Option<[Spot; 2]>,
    /// How far the line is believed; the rest is the upper edge of the reference.
    share: f64,
}

impl Level {
    /// By how much what is level is turned, in radians, for the ends of the line in the plane.
    fn turned(&self, a: Spot, b: Spot) -> f64 {
        self.share * (b[1] - a[1]).atan2(b[0] - a[0])
    }

    fn turn(&self, view: &PlaneView) -> f64 {
        let ends = self
            .line
            .and_then(|[a, b]| Some((view.place(a)?, view.place(b)?)));
        ends.map_or(0.0, |(a, b)| self.turned(a, b))
    }

    /// How far a place is to the right of another and below it, and one standard deviation of where that is.
    fn beyond(&self, view: &PlaneView, anchor: Spot, spot: Spot) -> Option<(f64, f64, f64)> {
        if spot == anchor {
            return Some((0.0, 0.0, 0.0));
        }
        let mut places = vec![anchor, spot];
        places.extend(self.line.iter().flatten());
        let along = |axis: usize, p: &[Spot]| {
            let [x, y] = [p[1][0] - p[0][0], p[1][1] - p[0][1]];
            let turn = p.get(3).map_or(0.0, |end| self.turned(p[2], *end));
            let (sine, cosine) = turn.sin_cos();
            [x * cosine + y * sine, y * cosine - x * sine][axis]
        };
        let x = view.estimate(&places, |p| along(0, p))?;
        let y = view.estimate(&places, |p| along(1, p))?;
        let hung = (1.0 - self.share) * HUNG.value.to_radians() * x.value.hypot(y.value);
        let spread = x.spread.hypot(y.spread).hypot(hung);
        Some((x.value, y.value, spread))
    }
}

/// An estimate as it is stated.
fn stated(estimate: Estimate) -> Option<Taped> {
    Some(Taped {
        length: Length::from_metres(estimate.value)?,
        give: Length::from_metres(estimate.spread * STATED)?,
    })
}

/// What was taped of the reference; `None` where something of it was not.
///
/// A right angle is one as built: [`CORNER_OFF`] either way, as one standard deviation.
fn shape(flat: &Flat) -> Option<Shape> {
    let of = |taped: Option<Taped>| -> Option<Estimate> {
        taped.map(|taped| Estimate {
            value: taped.length.metres(),
            spread: taped.give.metres() / STATED,
        })
    };
    let (upper, left) = (of(flat.width)?, of(flat.height)?);
    let sides = &flat.sides;
    let four = |last: Estimate| Some([upper, of(sides.right)?, of(sides.lower)?, left, last]);
    Some(match flat.known_by() {
        KnownBy::Rectangle => Shape::Rectangle([upper, left]),
        KnownBy::Corner => Shape::Cornered(four(Estimate {
            value: std::f64::consts::FRAC_PI_2,
            spread: CORNER_OFF.value.to_radians(),
        })?),
        KnownBy::Diagonal => Shape::Braced(four(of(sides.diagonal)?)?),
    })
}

/// The angle at the second of three places, in radians.
fn angle(a: Spot, at: Spot, b: Spot) -> f64 {
    let (u, v) = ([a[0] - at[0], a[1] - at[1]], [b[0] - at[0], b[1] - at[1]]);
    let cross = u[0] * v[1] - u[1] * v[0];
    let dot = u[0] * v[0] + u[1] * v[1];
    cross.abs().atan2(dot)
}

/// The area within places, in square metres.
fn area(places: &[Spot]) -> f64 {
    let Some((first, rest)) = places.split_first() else {
        return 0.0;
    };
    let sum: f64 = rest
        .windows(2)
        .map(|pair| turn(*first, pair[0], pair[1]))
        .sum();
    (sum / 2.0).abs()
}

fn shortest(flat: &Flat) -> f64 {
    let side = |n: usize| distance(flat.corners[n], flat.corners[(n + 1) % 4]);
    (0..4).map(side).fold(f64::INFINITY, f64::min)
}

fn middle(flat: &Flat) -> Spot {
    let mean = |axis: usize| flat.corners.iter().map(|p| p[axis]).sum::<f64>() / 4.0;
    [mean(0), mean(1)]
}

/// Whether one of these places lies further outside the reference than it is long.
fn beyond(flat: &Flat, view: &PlaneView, places: &[Spot]) -> bool {
    let Some(corners) = shape(flat).and_then(|shape| shape.corners().ok()) else {
        return false;
    };
    let reach = |axis: usize| {
        let parts = corners.map(|corner| corner[axis]);
        let least = parts.iter().copied().fold(f64::INFINITY, f64::min);
        let most = parts.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        [least, most]
    };
    let [across, down] = [reach(0), reach(1)];
    let long = (across[1] - across[0]).max(down[1] - down[0]);
    places.iter().any(|spot| {
        view.place(*spot).is_none_or(|[x, y]| {
            let off = |at: f64, [least, most]: [f64; 2]| (least - at).max(at - most).max(0.0);
            off(x, across).hypot(off(y, down)) > long
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::photo::{Object, Sides};

    /// A picture of 4,000 by 3,000 pixels that sees its wall square on, a pixel a millimetre.
    fn square_on() -> Photo {
        let when = chrono::DateTime::UNIX_EPOCH.fixed_offset();
        let mut photo = Photo::new("a.jpg".into(), (4000, 3000), when);
        let taped = |mm| Some(Taped::read(Length::mm(mm)));
        photo.flat = Some(Flat {
            corners: [
                [1000.0, 500.0],
                [1900.0, 500.0],
                [1900.0, 2500.0],
                [1000.0, 2500.0],
            ],
            object: Object::Door,
            width: taped(900),
            height: taped(2000),
            sides: Sides::default(),
            edges: Vec::new(),
        });
        photo
    }

    #[test]
    fn a_dimension_is_an_estimate_until_a_tape_is_put_on_it() {
        let mut photo = square_on();
        let number = photo.add_mark(
            What::Dimension(None),
            vec![[1100.0, 700.0], [1100.0, 1900.0]],
        );
        let view = photo.view().unwrap();
        let Some(Figure::Estimate(found)) = photo.figure(number, Some(&view)) else {
            panic!("no estimate");
        };
        assert_eq!(found.length, Length::mm(1200));
        assert!(
            found.give > Length::mm(2) && found.give < Length::mm(30),
            "{found:?}"
        );
        assert_eq!(photo.figure(number, None), None);
        let tape = Taped::read(Length::mm(1203));
        photo.mark_mut(number).unwrap().what = What::Dimension(Some(tape));
        let view = photo.view().unwrap();
        assert_eq!(photo.figure(number, Some(&view)), Some(Figure::Taped(tape)));
        assert!(photo.doubts(&view).is_empty(), "{:?}", photo.doubts(&view));
    }

    #[test]
    fn a_right_angle_and_an_area_are_found() {
        let mut photo = square_on();
        let corner = vec![[1100.0, 700.0], [1100.0, 1900.0], [1500.0, 1900.0]];
        let angle = photo.add_mark(What::Angle(None), corner.clone());
        let area = photo.add_mark(What::Area(None), corner);
        let view = photo.view().unwrap();
        let Some(Figure::AngleEstimate(found, give)) = photo.figure(angle, Some(&view)) else {
            panic!("no angle");
        };
        assert_eq!(found.as_microdegrees(), 90_000_000);
        assert!(give.in_degrees() > 0.1 && give.in_degrees() < 5.0);
        let Some(Figure::AreaEstimate(found, _)) = photo.figure(area, Some(&view)) else {
            panic!("no area");
        };
        assert!((found - 0.24).abs() < 1e-9, "{found}");
    }

    #[test]
    fn what_is_doubtful_is_said() {
        let mut photo = square_on();
        let far = photo.add_mark(
            What::Dimension(None),
            vec![[3700.0, 700.0], [3750.0, 2490.0]],
        );
        let view = photo.view().unwrap();
        assert!(photo.doubts(&view).is_empty());
        let before = photo.figure(far, Some(&view));
        let read = Taped::read(Length::mm(1300));
        let tape = Some(read);
        let wrong = photo.add_mark(
            What::Dimension(tape),
            vec![[1100.0, 700.0], [1100.0, 1900.0]],
        );
        let view = photo.view().unwrap();
        let doubts = photo.doubts(&view);
        assert!(
            matches!(doubts[..], [Doubt::Disagrees { number, .. }] if number == wrong),
            "{doubts:?}"
        );
        // It is asked about with what the picture says, a good one is not, and the rest is measured as before.
        let says = photo.contradicted(wrong, read).unwrap();
        assert_eq!(says.length, Length::mm(1200));
        assert_eq!(
            photo.contradicted(wrong, Taped::read(Length::mm(1203))),
            None
        );
        assert_eq!(photo.figure(far, Some(&view)), before);
        let flat = photo.flat.as_mut().unwrap();
        flat.corners = [
            [1000.0, 500.0],
            [1100.0, 500.0],
            [1100.0, 650.0],
            [1000.0, 650.0],
        ];
        photo.marks.retain(|mark| mark.number == far);
        let view = photo.view().unwrap();
        let doubts = photo.doubts(&view);
        assert!(matches!(doubts[0], Doubt::Small(_)), "{doubts:?}");
        assert!(
            doubts.contains(&Doubt::Beyond { number: far }),
            "{doubts:?}"
        );
    }

    #[test]
    fn a_place_of_the_picture_is_a_place_of_the_wall() {
        let mut photo = square_on();
        photo.anchor = Some(Anchor {
            spot: [1000.0, 2500.0],
            from_left: Some(Length::mm(300)),
            up: Some(Length::mm(50)),
        });
        let view = photo.view().unwrap();
        let (place, give) = photo.on_wall(&view, [1400.0, 1500.0]).unwrap();
        assert!(distance(place, [0.7, 1.05]) < 1e-9, "{place:?}");
        // Over 1.08 m half a degree is 9 mm, and twice that is stated.
        assert!(give > 0.019 && give < 0.03, "{give}");
        let back = photo.from_wall(&view, place).unwrap();
        assert!(distance(back, view.place([1400.0, 1500.0]).unwrap()) < 1e-9);
        // A level line that runs down to the right: the wall is turned under it.
        photo.add_mark(What::Level, vec![[1000.0, 1000.0], [2000.0, 1100.0]]);
        let (turned, _) = photo.on_wall(&view, [1400.0, 1500.0]).unwrap();
        assert!(turned[0] < place[0] && turned[1] > place[1], "{turned:?}");
        let back = photo.from_wall(&view, turned).unwrap();
        assert!(distance(back, view.place([1400.0, 1500.0]).unwrap()) < 1e-9);
    }

    use crate::photo::Anchor;

    #[test]
    fn without_a_reference_or_its_size_nothing_is_measured() {
        let mut photo = square_on();
        photo.flat.as_mut().unwrap().width = None;
        assert_eq!(photo.view().err(), Some(NoView::NotSized));
        photo.flat = None;
        assert_eq!(photo.view().err(), Some(NoView::NoReference));
    }
}
