//! Where each sheet lies: course by course, with joints on framing and ends apart.

use super::ask::{Ask, Way};
use crate::geometry::{Clip, Inside, Point, Region, narrowest};
use crate::measure::Length;

/// A place in a course: along it, and across it; both grow from where the first sheet lies.
type Place = (Length, Length);

/// The frame of the courses on the surface.
pub(super) struct Frame {
    way: Way,
    right: bool,
    bottom: bool,
    least: Point,
    most: Point,
}

impl Frame {
    pub fn new(ask: &Ask, field: &[Region]) -> Frame {
        let (least, most) = Region::bounds_of(field).unwrap_or_default();
        Frame {
            way: ask.way,
            right: ask.begin.right,
            bottom: ask.begin.bottom,
            least,
            most,
        }
    }
    /// From a place on the surface.
    pub fn of(&self, point: Point) -> Place {
        let x = if self.right {
            self.most.x - point.x
        } else {
            point.x - self.least.x
        };
        let y = if self.bottom {
            self.most.y - point.y
        } else {
            point.y - self.least.y
        };
        match self.way {
            Way::Across => (x, y),
            Way::Up => (y, x),
        }
    }
    /// To a place on the surface.
    pub fn at(&self, (along, across): Place) -> Point {
        let (x, y) = match self.way {
            Way::Across => (along, across),
            Way::Up => (across, along),
        };
        Point::new(
            if self.right {
                self.most.x - x
            } else {
                self.least.x + x
            },
            if self.bottom {
                self.most.y - y
            } else {
                self.least.y + y
            },
        )
    }
    /// A box of the courses as a rectangle on the surface, clockwise.
    pub fn rectangle(&self, from: Place, to: Place) -> [Point; 4] {
        let (a, b) = (self.at(from), self.at(to));
        let (left, right) = (a.x.min(b.x), a.x.max(b.x));
        let (top, bottom) = (a.y.min(b.y), a.y.max(b.y));
        [
            Point::new(left, top),
            Point::new(right, top),
            Point::new(right, bottom),
            Point::new(left, bottom),
        ]
    }
    /// Where a part begins: along its course, and across it.
    pub fn first(&self, part: &Region) -> Place {
        let (least, most) = part.bounds().unwrap_or_default();
        let ((a, b), (c, d)) = (self.of(least), self.of(most));
        (a.min(c), b.min(d))
    }
    /// How far the field reaches along the courses and across them.
    pub fn size(&self) -> Place {
        let size = self.most - self.least;
        match self.way {
            Way::Across => (size.x, size.y),
            Way::Up => (size.y, size.x),
        }
    }
}

/// One sheet's place: which course, and what of the surface lies in it.
pub(super) struct Cell {
    /// Its course, from 0.
    pub course: usize,
    /// What is covered there: each part a piece.
    pub parts: Vec<Region>,
}

/// Every place, and the joints between them.
pub(super) struct Laid {
    /// In the order of laying.
    pub cells: Vec<Cell>,
    /// Joints between courses and between sheets of a course: the middle of each gap, within the field.
    pub joints: Vec<(Point, Point)>,
    /// Ends that land on no stud though they should, and courses likewise.
    pub off_framing: Vec<(Point, Point)>,
    /// Ends of neighbouring courses that are nearer than asked: how many, and the nearest.
    pub near: Option<(usize, Length)>,
    /// Places where four corners meet.
    pub crosses: Vec<Point>,
}

/// Middles of the framing in the frame, along the courses and across them: those that run across a course carry its
/// ends, those that run along it the joints between courses.
fn framing(ask: &Ask, frame: &Frame) -> (Option<Vec<Length>>, Option<Vec<Length>>) {
    let Some(framing) = ask.framing.as_ref().filter(|framing| framing.land) else {
        return (None, None);
    };
    let origin = ask.origin();
    let reach = frame.most - frame.least + Point::new(Length::feet(4), Length::feet(4));
    let far = if framing.upright { reach.x } else { reach.y };
    let centres = framing.studs.centres(far).into_iter();
    let in_frame = centres.map(|at| {
        let point = if framing.upright {
            Point::new(origin.x + at, frame.least.y)
        } else {
            Point::new(frame.least.x, origin.y + at)
        };
        frame.of(point)
    });
    let across_courses = framing.upright == (ask.way == Way::Across);
    let mut middles: Vec<Length> = in_frame
        .map(|(along, across)| if across_courses { along } else { across })
        .collect();
    middles.sort_unstable();
    if across_courses {
        (Some(middles), None)
    } else {
        (None, Some(middles))
    }
}

/// From where to where each course reaches across, and which of the joints after them are carried by nothing.
fn courses(
    ask: &Ask,
    deep: Length,
    members: Option<&[Length]>,
) -> (Vec<(Length, Length)>, Vec<usize>) {
    let (side, gap) = (ask.sheet.1, ask.gap);
    let mut all = Vec::new();
    let mut off = Vec::new();
    let mut from = Length::ZERO;
    loop {
        if deep - from <= side {
            all.push((from, deep));
            break;
        }
        let carried = members.and_then(|members| {
            let reach = |c: &&Length| **c - gap.half() - from <= side && **c - gap.half() > from;
            members.iter().rfind(reach).copied()
        });
        let to = carried.map_or(from + side, |c| c - gap.half());
        if members.is_some() && carried.is_none() {
            off.push(all.len());
        }
        all.push((from, to));
        from = to + gap;
        if from >= deep {
            break;
        }
    }
    // A strip at the end that is too narrow is shared with the first course.
    let least = crate::handbook::sheets::LEAST_STRIP.value;
    if members.is_none()
        && let [first, middle @ .., last] = &mut all[..]
        && (last.1 - last.0) < least
    {
        let both = first.1 - first.0 + (last.1 - last.0);
        let moved = side - both.half();
        first.1 = first.1 - moved;
        for course in middle {
            *course = (course.0 - moved, course.1 - moved);
        }
        last.0 = last.0 - moved;
    }
    (all, off)
}

/// The ends of one run, chosen among several first ends.
struct Run<'a> {
    ask: &'a Ask,
    members: Option<&'a [Length]>,
    /// Middles of the ends of the course before.
    before: &'a [Length],
}

impl Run<'_> {
    fn clear(&self, middle: Length) -> bool {
        let stagger = self.ask.stagger;
        self.before
            .iter()
            .all(|end| (*end - middle).abs() >= stagger)
    }

    /// The end of a sheet that begins at a place, as far on as it reaches: on a member where it is to land on one, and
    /// apart from the ends before where that can be.
    fn next(&self, from: Length) -> Length {
        let (long, half) = (self.ask.sheet.0, self.ask.gap.half());
        let Some(members) = self.members else {
            return from + long;
        };
        let reached = |c: &&Length| **c - half - from <= long && **c - half > from;
        let apart = |c: &&Length| reached(c) && self.clear(**c);
        let found = members.iter().rfind(apart);
        let found = found.or_else(|| members.iter().rfind(reached));
        found.map_or(from + long, |c| *c - half)
    }

    fn sheets(&self, first: Length, from: Length, to: Length) -> Vec<(Length, Length)> {
        let mut all = vec![(from, first.min(to))];
        let mut at = first + self.ask.gap;
        while at < to && all.len() < 1000 {
            let end = if to - at <= self.ask.sheet.0 {
                to
            } else {
                self.next(at)
            };
            all.push((at, end.min(to)));
            at = end + self.ask.gap;
        }
        all
    }

    /// The run whose ends clash least with those before, that has fewest thin ends, fewest sheets, and the longest first.
    fn best(
        &self,
        from: Length,
        to: Length,
        mut thin: impl FnMut(&[(Length, Length)]) -> usize,
    ) -> Vec<(Length, Length)> {
        let (long, gap) = (self.ask.sheet.0, self.ask.gap);
        if to - from <= long {
            return vec![(from, to)];
        }
        let mut firsts: Vec<Length> = Vec::new();
        if let Some(members) = self.members {
            let in_reach = |c: &&Length| **c - gap.half() > from && **c - gap.half() - from <= long;
            firsts.extend(members.iter().filter(in_reach).map(|c| *c - gap.half()));
        }
        if firsts.is_empty() {
            let part = |over: i64, of: i64| from + (long * over).divided(of);
            firsts.extend([
                part(1, 1),
                part(1, 2),
                part(2, 3),
                part(1, 3),
                part(3, 4),
                part(1, 4),
            ]);
            // So that the last is as long as the first.
            let whole = (to - from + gap).as_nm() / (long + gap).as_nm().max(1);
            let rest = to - from - (long + gap) * (whole - 1) - gap;
            firsts.push(from + rest.half());
            for end in self.before {
                let apart = self.ask.stagger.max(Length::mm(1));
                firsts.extend([*end - apart - gap.half(), *end + apart - gap.half()]);
            }
            firsts.retain(|first| *first > from && *first - from <= long);
        }
        let mut score = |sheets: &[(Length, Length)]| {
            let ends = sheets.iter().take(sheets.len() - 1);
            let clash = ends
                .filter(|sheet| !self.clear(sheet.1 + gap.half()))
                .count();
            let first = sheets[0].1 - sheets[0].0;
            (clash, thin(sheets), sheets.len(), -first)
        };
        let runs = firsts.into_iter().map(|first| self.sheets(first, from, to));
        runs.min_by_key(|run| score(run)).unwrap_or_default()
    }
}

/// How many pieces of a place are narrower than a strip should be.
fn thin_in(clip: &mut Clip, place: &[Point; 4]) -> usize {
    let least = crate::handbook::sheets::LEAST_STRIP.value;
    let wide = (place[1].x - place[0].x).min(place[2].y - place[1].y);
    match clip.of(place) {
        Inside::Nothing => 0,
        Inside::Whole => usize::from(wide < least),
        Inside::Part(parts) => {
            let outer = |part: &Region| Region {
                outer: part.outer.clone(),
                holes: Vec::new(),
            };
            let thin = |part: &&Region| narrowest(&outer(part)) < least;
            parts.iter().filter(thin).count()
        }
    }
}

/// Every sheet in its place.
pub(super) fn laid(ask: &Ask, field: &[Region]) -> Laid {
    let frame = Frame::new(ask, field);
    let (along, across) = frame.size();
    let (end_members, course_members) = framing(ask, &frame);
    let (courses, loose) = courses(ask, across, course_members.as_deref());
    let mut laid = Laid {
        cells: Vec::new(),
        joints: Vec::new(),
        off_framing: Vec::new(),
        near: None,
        crosses: Vec::new(),
    };
    let mut clip = Clip::new(field);
    let mut before: Vec<Length> = Vec::new();
    for (number, (from, to)) in courses.iter().enumerate() {
        let corners = frame.rectangle((Length::ZERO, *from), (along, *to));
        let mut bands = match clip.of(&corners) {
            Inside::Nothing => Vec::new(),
            Inside::Whole => vec![Region {
                outer: crate::geometry::Polygon {
                    points: corners.to_vec(),
                },
                holes: Vec::new(),
            }],
            Inside::Part(parts) => parts,
        };
        // In the order of laying, whichever way they were found.
        bands.sort_by_key(|band| frame.first(band));
        let mut ends: Vec<Length> = Vec::new();
        for band in bands {
            let Some((least, most)) = band.bounds() else {
                continue;
            };
            let (a, b) = (frame.of(least).0, frame.of(most).0);
            let run = Run {
                ask,
                members: end_members.as_deref(),
                before: &before,
            };
            let mut of_band = Clip::new(std::slice::from_ref(&band));
            // A leg beside a corner that juts in is as thin as an end.
            let sheets = run.best(a.min(b), a.max(b), |sheets| {
                let places = sheets
                    .iter()
                    .map(|(a, b)| frame.rectangle((*a, *from), (*b, *to)));
                places.map(|place| thin_in(&mut of_band, &place)).sum()
            });
            for (n, (begin, end)) in sheets.iter().enumerate() {
                let corners = frame.rectangle((*begin, *from), (*end, *to));
                let mut parts = match of_band.of(&corners) {
                    Inside::Nothing => continue,
                    Inside::Whole => vec![Region {
                        outer: crate::geometry::Polygon {
                            points: corners.to_vec(),
                        },
                        holes: Vec::new(),
                    }],
                    Inside::Part(parts) => parts,
                };
                parts.sort_by_key(|part| frame.first(part));
                laid.cells.push(Cell {
                    course: number,
                    parts,
                });
                if n + 1 == sheets.len() {
                    continue;
                }
                let middle = *end + ask.gap.half();
                let joint = (frame.at((middle, *from)), frame.at((middle, *to)));
                let inside = band.along(joint.0, joint.1);
                if inside.is_empty() {
                    continue;
                }
                let lands = |members: &Vec<Length>| members.contains(&middle);
                if end_members.as_ref().is_some_and(|members| !lands(members)) {
                    laid.off_framing.extend(inside.iter().copied());
                }
                laid.joints.extend(inside);
                ends.push(middle);
            }
        }
        if number > 0 {
            meet(ask, &frame, field, (&before, &ends), *from, &mut laid);
        }
        if number + 1 < courses.len() {
            let middle = *to + ask.gap.half();
            let (a, b) = (frame.at((Length::ZERO, middle)), frame.at((along, middle)));
            let lines: Vec<_> = field.iter().flat_map(|part| part.along(a, b)).collect();
            if loose.contains(&number) {
                laid.off_framing.extend(lines.iter().copied());
            }
            laid.joints.extend(lines);
        }
        before = ends;
    }
    laid
}

/// Ends of two neighbouring courses that meet, or come too near.
fn meet(
    ask: &Ask,
    frame: &Frame,
    field: &[Region],
    (before, ends): (&[Length], &[Length]),
    across: Length,
    laid: &mut Laid,
) {
    let middle = across - ask.gap.half();
    for end in ends {
        let Some(nearest) = before.iter().map(|other| (*other - *end).abs()).min() else {
            continue;
        };
        let at = frame.at((*end, middle));
        if !field
            .iter()
            .any(|part| part.clear_of_edges(at).is_some() && part.outer.contains(at))
        {
            continue;
        }
        if nearest < Length::inches(1) {
            laid.crosses.push(at);
        }
        if nearest < ask.stagger {
            let (count, least) = laid.near.unwrap_or((0, nearest));
            laid.near = Some((count + 1, least.min(nearest)));
        }
    }
}
