//! Marks on the picture: what each says, how it is drawn, and what becomes of what a finger drew.

use super::photo_surface::{Shown, on_device};
use super::{App, Here, PhotoSlot, Tool};
use crate::drawing::{Ends, Note, Role};
use crate::geometry::{PlaneView, Spot, distance, turn};
use crate::measure::quantity::square_metres;
use crate::measure::{Amount, Angle, Length};
use crate::photo::{Anchor, Behind, Figure, Flat, Mark, Object, Photo, What};
use crate::site::HiddenKind;

impl App {
    /// A figure as it is set: the value, then its ± where it is an estimate or has one worth saying.
    pub(super) fn figure_text(&self, figure: Figure) -> String {
        match figure {
            Figure::Taped(taped) => self.show(taped.length),
            Figure::Estimate(taped) => {
                format!("{} ±{}", self.near(taped.length), self.give(taped.give))
            }
            Figure::Angle(angle, _) => degrees(angle),
            Figure::AngleEstimate(angle, give) => format!("{} ±{}", degrees(angle), degrees(give)),
            Figure::Area(area, _) => self.amount(square_metres(area)),
            Figure::AreaEstimate(area, give) => self.rough_area(area, give),
        }
    }

    /// An area that is not sure, in square metres, with its ±: a small one in the small unit, the ± never shown smaller
    /// than it is.
    fn rough_area(&self, area: f64, give: f64) -> String {
        let (of, unit) = match (self.job.units.is_metric(), area) {
            (true, ..0.1) => (1e4, "cm²"),
            (true, _) => (1.0, "m²"),
            (false, ..0.092_903_04) => (1.0 / 0.000_645_16, "in²"),
            (false, _) => (1.0 / 0.092_903_04, "ft²"),
        };
        let digits = if unit == "m²" { 100.0 } else { 10.0 };
        let up = (give * of * digits).ceil() / digits;
        let near = (area * of * digits).round() / digits;
        format!("{near} ±{up} {unit}")
    }

    /// A length that is not sure: to an eighth, or a millimetre.
    pub(super) fn near(&self, length: Length) -> String {
        let mark = if self.job.units.is_metric() {
            Length::mm(1)
        } else {
            Length::in_64(0, 8)
        };
        self.show(length.rounded(mark, crate::measure::Rounding::Nearest))
    }

    /// A ±, never shown smaller than it is: up to the next 1/16 in, or tenth of a millimetre.
    pub(super) fn give(&self, give: Length) -> String {
        let mark = if self.job.units.is_metric() {
            Length::mm(1)
        } else {
            Length::in_64(0, 4)
        };
        self.show(give.rounded(mark, crate::measure::Rounding::Cover))
    }

    /// What stands on a mark's plate.
    fn plate_text(&self, photo: &Photo, mark: &Mark, view: Option<&PlaneView>) -> String {
        let said = |text: &str| -> String {
            let mut short: String = text.chars().take(36).collect();
            if short.len() < text.len() {
                short.push('…');
            }
            short
        };
        match &mark.what {
            What::Dimension(_) | What::Angle(_) | What::Area(_) => photo
                .figure(mark.number, view)
                .map_or_else(|| "?".to_owned(), |figure| self.figure_text(figure)),
            What::Level => "level".to_owned(),
            What::Arrow | What::Note => said(&mark.note),
            What::Freehand => String::new(),
            What::Hidden(behind) => {
                let depth = behind
                    .depth
                    .map(|depth| format!(", {} in", self.show(depth.length)));
                let depth = depth.unwrap_or_default();
                format!("{} {}{depth}", mark.number, behind.kind.name())
            }
        }
    }

    /// Everything drawn over a picture, and which mark each is.
    pub(super) fn photo_notes(
        &self,
        at: usize,
        shown: &Shown,
        heft: f64,
    ) -> (Vec<Note>, Vec<Option<u32>>) {
        let Some(photo) = self.job.photos.get(at) else {
            return (Vec::new(), Vec::new());
        };
        let view = self.view_of(at);
        let (mut notes, mut of) = (Vec::new(), Vec::new());
        let on = |points: &[Spot]| -> Vec<(f32, f32)> {
            let places = points.iter().filter_map(|spot| shown.to_screen(*spot));
            places.map(|place| on_device(place, heft)).collect()
        };
        if let Some(flat) = &photo.flat {
            notes.push(Note {
                points: on(&self.corners_now(flat.corners)),
                closed: true,
                ends: Ends::Plain,
                dashed: true,
                role: Role::Amber,
                label: String::new(),
                picked: matches!(self.surface.tool, Tool::Flatten)
                    || self.surface.moved_corner.is_some(),
                held: self.surface.moved_corner.map(|(n, _)| n % 4),
            });
            of.push(None);
            for edge in &flat.edges {
                notes.push(plain(
                    on(edge),
                    Role::Amber,
                    self.surface.tool == Tool::Edge,
                ));
                of.push(None);
            }
        }
        if let Some(anchor) = photo.anchor {
            let picked = self.surface.tool == Tool::Anchor;
            notes.push(plain(on(&[anchor.spot]), Role::Green, picked));
            of.push(None);
        }
        for mark in &photo.marks {
            let points = self.points_now(mark.number, &mark.points);
            let estimate = photo
                .figure(mark.number, view.as_deref())
                .is_none_or(Figure::is_estimate);
            let (ends, role) = match mark.what {
                What::Dimension(_) => (Ends::Ticks, Role::Chalk),
                What::Arrow => (Ends::Arrow, Role::Chalk),
                What::Level => (Ends::Plain, Role::Green),
                What::Hidden(_) => (Ends::Plain, Role::Red),
                _ => (Ends::Plain, Role::Chalk),
            };
            let figured = matches!(
                mark.what,
                What::Dimension(_) | What::Angle(_) | What::Area(_)
            );
            notes.push(Note {
                points: on(&points),
                closed: matches!(mark.what, What::Area(_)),
                ends,
                dashed: figured && estimate,
                role,
                label: self.plate_text(photo, mark, view.as_deref()),
                picked: self.surface.picked == Some(mark.number),
                held: (self.surface.moved)
                    .and_then(|(number, n, _)| (number == mark.number).then_some(n)),
            });
            of.push(Some(mark.number));
        }
        let draft = self.draft_now(at, shown);
        if !draft.is_empty() {
            let placing = self.surface.hand.is_some() && self.surface.tool != Tool::Freehand;
            notes.push(Note {
                held: placing.then_some(draft.len() - 1),
                ends: match self.surface.tool {
                    Tool::Dimension => Ends::Ticks,
                    Tool::Arrow => Ends::Arrow,
                    _ => Ends::Plain,
                },
                ..plain(on(&draft), Role::Chalk, self.surface.tool != Tool::Freehand)
            });
            of.push(None);
        }
        if let Some(spot) = self.snaps_now(at, shown) {
            notes.push(Note {
                ends: Ends::Ring,
                ..plain(on(&[spot]), Role::Green, false)
            });
            of.push(None);
        }
        (notes, of)
    }

    /// The finger lifted while something was drawn; `end` is where, `still` whether it only tapped.
    pub(super) fn drawn(&mut self, at: usize, end: Option<Spot>, still: bool) {
        let tool = self.surface.tool;
        let Some(end) = end else {
            self.surface.draft.clear();
            return;
        };
        match tool {
            Tool::Look => {}
            Tool::Dimension | Tool::Level | Tool::Arrow => {
                // The first point was put down with the finger; a tap leaves it there for the second.
                if still {
                    self.second_tap(at, end);
                } else {
                    self.surface.draft.push(end);
                    self.finish_drawing(at);
                }
            }
            Tool::Hidden => {
                if !still {
                    self.surface.draft.push(end);
                }
                self.finish_drawing(at);
            }
            Tool::Freehand | Tool::Note => {
                if tool == Tool::Note {
                    self.surface.draft = vec![end];
                }
                self.finish_drawing(at);
            }
            Tool::Anchor => self.put_anchor(at, end),
            Tool::Angle | Tool::Area | Tool::Flatten | Tool::Edge => {
                let first = self.surface.draft.first().copied();
                let closes =
                    tool == Tool::Area && self.surface.draft.len() >= 3 && first == Some(end);
                if !closes {
                    self.surface.draft.push(end);
                }
                let enough = match tool {
                    Tool::Angle | Tool::Edge => self.surface.draft.len() >= 3,
                    Tool::Flatten => self.surface.draft.len() >= 4,
                    _ => closes,
                };
                if enough {
                    self.finish_drawing(at);
                }
            }
        }
    }

    /// A tap with a tool that takes two: the first stays in the draft, the second ends it.
    fn second_tap(&mut self, at: usize, end: Spot) {
        if let Some(first) = self.surface.first_tap.take() {
            self.surface.draft = vec![first, end];
            self.finish_drawing(at);
        } else {
            self.surface.first_tap = Some(end);
        }
    }

    /// What was drawn becomes a mark.
    pub(super) fn finish_drawing(&mut self, at: usize) {
        let points = std::mem::take(&mut self.surface.draft);
        self.surface.first_tap = None;
        let long = points
            .windows(2)
            .map(|pair| distance(pair[0], pair[1]))
            .sum::<f64>();
        let tool = self.surface.tool;
        let what = match (tool, points.len()) {
            (Tool::Dimension, 2) if long > 0.0 => What::Dimension(None),
            (Tool::Level, 2) if long > 0.0 => What::Level,
            (Tool::Arrow, 2) if long > 0.0 => What::Arrow,
            (Tool::Angle, 3) => What::Angle(None),
            (Tool::Area, 3..) => What::Area(None),
            (Tool::Note, 1) => What::Note,
            (Tool::Freehand, 2..) => What::Freehand,
            (Tool::Hidden, 1 | 2) => What::Hidden(Box::new(Behind::new(self.hidden_kind(at)))),
            (Tool::Flatten, 4) => return self.put_corners(at, &points),
            (Tool::Edge, 3..) => return self.put_edge(at, points),
            _ => return,
        };
        let asks = match &what {
            What::Dimension(_) => self.view_of(at).is_none(),
            What::Arrow | What::Note => true,
            _ => false,
        };
        let field = match &what {
            What::Dimension(_) => PhotoSlot::Length,
            _ => PhotoSlot::MarkNote,
        };
        let mut number = 0;
        let drawn = self.edited("Marked", |job| {
            if let Some(photo) = job.photo_mut(at) {
                number = photo.add_mark(what, points);
            }
        });
        if drawn {
            self.surface.picked = (tool != Tool::Freehand).then_some(number);
            self.surface.point = 0;
            if asks {
                self.ask_for(at, number, field(number));
            }
        }
    }

    fn put_anchor(&mut self, at: usize, spot: Spot) {
        let put = self.edited("Marked", |job| {
            if let Some(photo) = job.photo_mut(at) {
                let (from_left, up) = photo.anchor.map_or((None, None), |a| (a.from_left, a.up));
                photo.anchor = Some(Anchor {
                    spot,
                    from_left,
                    up,
                });
            }
        });
        if put {
            self.surface.take(Tool::Look);
            self.open_pad(super::Slot::Photo(at, PhotoSlot::AnchorLeft));
        }
    }

    /// Four corners, in any order, become the reference; the size of what stood there before stays.
    fn put_corners(&mut self, at: usize, points: &[Spot]) {
        let Some(corners) = in_order(points) else {
            self.said =
                "Those four points make no rectangle: three lie in a line. Tap its corners again."
                    .into();
            return;
        };
        let put = self.edited("Marked", |job| {
            if let Some(photo) = job.photo_mut(at) {
                match &mut photo.flat {
                    Some(flat) => flat.corners = corners,
                    none => {
                        *none = Some(Flat::new(corners, Object::Taped));
                    }
                }
            }
        });
        if put {
            self.surface.take(Tool::Look);
            self.said.clear();
            let photo = self.job.photos.get(at);
            let flat = photo.and_then(|photo| photo.flat.as_ref());
            if flat.is_some_and(|flat| flat.width.is_none() || flat.height.is_none()) {
                self.open_pad(super::Slot::Photo(at, PhotoSlot::Known));
            }
        }
    }

    fn put_edge(&mut self, at: usize, points: Vec<Spot>) {
        let put = self.edited("Marked", |job| {
            if let Some(flat) = job.photo_mut(at).and_then(|photo| photo.flat.as_mut()) {
                flat.edges.push(points);
            }
        });
        let edges = self
            .job
            .photos
            .get(at)
            .and_then(|photo| photo.flat.as_ref());
        let edges = edges.map_or(0, |flat| flat.edges.len());
        if put && edges >= 3 {
            self.surface.take(Tool::Look);
        }
    }

    /// What something hidden is taken for: what the last one was.
    fn hidden_kind(&self, at: usize) -> HiddenKind {
        let marks = self
            .job
            .photos
            .get(at)
            .map_or(&[][..], |photo| &photo.marks);
        let last = marks.iter().rev().find_map(|mark| match &mark.what {
            What::Hidden(behind) => Some(behind.kind),
            _ => None,
        });
        last.unwrap_or(HiddenKind::Pipe)
    }

    /// A point of a mark somewhere else.
    /// Gives whether that changed anything.
    pub(super) fn move_point(&mut self, at: usize, number: u32, n: usize, spot: Spot) -> bool {
        self.edited("Moved", |job| {
            let mark = job.photo_mut(at).and_then(|photo| photo.mark_mut(number));
            if let Some(place) = mark.and_then(|mark| mark.points.get_mut(n)) {
                *place = spot;
            }
        })
    }

    /// A corner of the reference somewhere else.
    pub(super) fn move_corner(&mut self, at: usize, n: usize, spot: Spot) {
        self.edit("Moved", |job| {
            if let Some(flat) = job.photo_mut(at).and_then(|photo| photo.flat.as_mut()) {
                flat.corners[n % 4] = spot;
            }
        });
    }

    /// The mark in hand.
    pub(super) fn picked(&self) -> Option<(usize, &Mark)> {
        let Here::Photo(at) = self.here else {
            return None;
        };
        let mark = self.job.photos.get(at)?.mark(self.surface.picked?)?;
        Some((at, mark))
    }
}

fn plain(points: Vec<(f32, f32)>, role: Role, picked: bool) -> Note {
    Note {
        points,
        closed: false,
        ends: Ends::Plain,
        dashed: false,
        role,
        label: String::new(),
        picked,
        held: None,
    }
}

pub(super) fn degrees(angle: Angle) -> String {
    format!("{:.1}°", angle.in_degrees())
}

/// Four points clockwise from the upper left one; `None` where three lie in a line.
fn in_order(points: &[Spot]) -> Option<[Spot; 4]> {
    let mut corners: [Spot; 4] = points.try_into().ok()?;
    let mean = |axis: usize| corners.iter().map(|p| p[axis]).sum::<f64>() / 4.0;
    let middle = [mean(0), mean(1)];
    let around = |p: &Spot| (p[1] - middle[1]).atan2(p[0] - middle[0]);
    corners.sort_by(|a, b| around(a).total_cmp(&around(b)));
    let first = (0..4).min_by(|a, b| {
        let sum = |n: usize| corners[n][0] + corners[n][1];
        sum(*a).total_cmp(&sum(*b))
    })?;
    corners.rotate_left(first);
    let turns = |n: usize| turn(corners[n], corners[(n + 1) % 4], corners[(n + 2) % 4]);
    (0..4).all(|n| turns(n) > 0.0).then_some(corners)
}

/// An area as it is shown, for whoever needs it as an amount.
pub(super) fn area_amount(area: f64) -> Amount {
    Amount::Area(square_metres(area))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn corners_tapped_in_any_order_go_round_from_the_upper_left() {
        let (a, b, c, d) = ([10.0, 12.0], [90.0, 8.0], [95.0, 70.0], [5.0, 75.0]);
        let sorted = Some([a, b, c, d]);
        for order in [[a, b, c, d], [c, a, d, b], [d, c, b, a], [b, d, a, c]] {
            assert_eq!(in_order(&order), sorted);
        }
        assert_eq!(in_order(&[a, b, [50.0, 10.0], d]), None);
        assert_eq!(in_order(&[a, b, c]), None);
    }
}
