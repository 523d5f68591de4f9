//! What a finger on the picture does: it draws, takes hold of points, snaps, and moves the picture.

use std::sync::PoisonError;

use super::photo_surface::{Hand, Shown};
use super::{App, Here, PhotoSlot, Slot, Tool};
use crate::geometry::{Spot, distance, from_stretch};
use crate::photo::{What, edge_near};

/// A finger this near to a point takes hold of it, in pixels of the screen.
const REACH: f64 = 26.0;
/// What is drawn ends on another end this near.
const SNAP: f64 = 14.0;
/// A finger that moves less has only tapped.
const STILL: f64 = 7.0;

/// What a finger does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Touch {
    /// Comes down.
    Down,
    /// Moves.
    Move,
    /// Lifts.
    Up,
    /// Is not meant: a second finger came, or the system took it away.
    Cancel,
}

impl App {
    /// What a finger on the picture does: comes down, moves, lifts.
    pub fn touch(&mut self, what: Touch, x: f32, y: f32) {
        let Here::Photo(at) = self.here else { return };
        if self.surface.beside {
            return;
        }
        let finger = [f64::from(x), f64::from(y)];
        let Some(shown) = self.shown(at, self.surface.size.get()) else {
            return;
        };
        match what {
            Touch::Down => self.finger_down(at, finger, &shown),
            Touch::Move => self.finger_moves(at, finger, &shown),
            Touch::Up => self.finger_up(at, finger, &shown),
            Touch::Cancel => self.surface.let_go(),
        }
    }

    /// Nearer or farther about a place on the screen: a wheel, or two fingers.
    pub fn zoom_photo(&mut self, by: f32, (x, y): (f32, f32), moved: (f32, f32)) {
        self.surface.let_go();
        self.surface
            .nearer(f64::from(by), Some([f64::from(x), f64::from(y)]));
        self.surface.shift([f64::from(moved.0), f64::from(moved.1)]);
    }

    fn finger_down(&mut self, at: usize, finger: Spot, shown: &Shown) {
        let reading = self.keeper.is_reading();
        let hand = if self.surface.tool == Tool::Look {
            let held = (!reading)
                .then(|| self.point_near(at, finger, shown))
                .flatten();
            held.unwrap_or(Hand::Picture(finger))
        } else {
            Hand::Drawing
        };
        let snapped = self.snapped(at, finger, shown, None);
        let surface = &mut self.surface;
        surface.down = Some(finger);
        surface.finger = Some(finger);
        if hand == Hand::Drawing
            && matches!(
                surface.tool,
                Tool::Dimension | Tool::Level | Tool::Arrow | Tool::Hidden | Tool::Freehand
            )
            && let Some(spot) = snapped
        {
            surface.draft = vec![spot];
        }
        surface.hand = Some(hand);
    }

    /// What a finger takes hold of: a point of the mark in hand first, then of any, then a corner of the reference.
    fn point_near(&self, at: usize, finger: Spot, shown: &Shown) -> Option<Hand> {
        let photo = self.job.photos.get(at)?;
        let near = |spot: &Spot| {
            let on = shown.to_screen(*spot)?;
            Some(distance(on, finger)).filter(|away| *away <= REACH)
        };
        let mut best: Option<(f64, Hand)> = None;
        let mut offer = |away: f64, hand: Hand| {
            if best.as_ref().is_none_or(|(least, _)| away < *least) {
                best = Some((away, hand));
            }
        };
        for mark in photo
            .marks
            .iter()
            .filter(|mark| mark.what != What::Freehand)
        {
            let bonus = if Some(mark.number) == self.surface.picked {
                12.0
            } else {
                0.0
            };
            for (n, spot) in mark.points.iter().enumerate() {
                if let Some(away) = near(spot) {
                    offer(away - bonus, Hand::Point(mark.number, n));
                }
            }
        }
        if let Some(flat) = photo.flat.as_ref().filter(|_| !self.surface.flat) {
            for (n, corner) in flat.corners.iter().enumerate() {
                if let Some(away) = near(corner) {
                    offer(away + 4.0, Hand::Corner(n));
                }
            }
        }
        best.map(|(_, hand)| hand)
    }

    /// Where what is drawn ends: on another end nearby, else on a straight edge, else under the finger.
    fn snapped(
        &self,
        at: usize,
        finger: Spot,
        shown: &Shown,
        but: Option<(u32, usize)>,
    ) -> Option<Spot> {
        let photo = self.job.photos.get(at)?;
        let ends = photo
            .marks
            .iter()
            .filter(|mark| mark.what != What::Freehand);
        let ends = ends.flat_map(|mark| {
            let points = mark.points.iter().enumerate();
            points.map(|(n, spot)| ((mark.number, n), *spot))
        });
        let corners = photo.flat.iter().flat_map(|flat| flat.corners);
        let all = ends
            .filter(|(of, _)| Some(*of) != but)
            .map(|(_, spot)| spot)
            .chain(corners)
            .chain(
                self.surface
                    .draft
                    .iter()
                    .copied()
                    .filter(|_| self.surface.tool != Tool::Freehand),
            );
        let nearest = all
            .filter_map(|spot| Some((distance(shown.to_screen(spot)?, finger), spot)))
            .filter(|(away, _)| *away <= SNAP)
            .min_by(|(a, _), (b, _)| a.total_cmp(b));
        if let Some((_, spot)) = nearest {
            return Some(spot);
        }
        let spot = shown.to_picture(finger)?;
        let (w, h) = (f64::from(photo.size.0), f64::from(photo.size.1));
        let spot = [spot[0].clamp(0.0, w), spot[1].clamp(0.0, h)];
        if self.surface.tool == Tool::Freehand {
            return Some(spot);
        }
        let copies = self
            .surface
            .copies
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        let copy = copies
            .ready
            .iter()
            .flatten()
            .find(|copy| copy.name == photo.picture);
        let edge = copy.and_then(|copy| edge_near(&copy.whole, spot, 5.0));
        let near = |edge: &Spot| {
            shown
                .to_screen(*edge)
                .is_some_and(|on| distance(on, finger) <= SNAP)
        };
        Some(edge.filter(near).unwrap_or(spot))
    }

    fn finger_moves(&mut self, at: usize, finger: Spot, shown: &Shown) {
        let Some(hand) = self.surface.hand.clone() else {
            return;
        };
        self.surface.finger = Some(finger);
        match hand {
            Hand::Picture(from) => {
                self.surface
                    .shift([finger[0] - from[0], finger[1] - from[1]]);
                self.surface.hand = Some(Hand::Picture(finger));
            }
            Hand::Point(number, n) => {
                if let Some(spot) = self.snapped(at, finger, shown, Some((number, n))) {
                    self.surface.moved = Some((number, n, spot));
                }
            }
            Hand::Corner(n) => {
                if let Some(spot) = self.snapped(at, finger, shown, None) {
                    self.surface.moved_corner = Some((n, spot));
                }
            }
            Hand::Drawing if self.surface.tool == Tool::Freehand => {
                if let Some(spot) = shown.to_picture(finger) {
                    let far = self
                        .surface
                        .draft
                        .last()
                        .and_then(|last| shown.to_screen(*last));
                    if far.is_none_or(|last| distance(last, finger) >= 3.0) {
                        self.surface.draft.push(spot);
                    }
                }
            }
            Hand::Drawing => {}
        }
    }

    fn finger_up(&mut self, at: usize, finger: Spot, shown: &Shown) {
        let Some(hand) = self.surface.hand.take() else {
            return;
        };
        let down = self.surface.down.take().unwrap_or(finger);
        let still = distance(down, finger) < STILL;
        self.surface.finger = None;
        let moved = self.surface.moved.take();
        let corner = self.surface.moved_corner.take();
        match hand {
            Hand::Picture(_) if still => {
                let found = self.mark_near(at, finger, shown);
                self.surface.picked = found;
                self.surface.point = 0;
            }
            Hand::Picture(_) => {}
            Hand::Point(number, n) => {
                (self.surface.picked, self.surface.point) = (Some(number), n);
                if let Some((number, n, spot)) = moved.filter(|_| !still) {
                    self.move_point(at, number, n, spot);
                }
            }
            Hand::Corner(_) => {
                if let Some((n, spot)) = corner.filter(|_| !still) {
                    self.move_corner(at, n, spot);
                }
            }
            Hand::Drawing => {
                let end = self.snapped(at, finger, shown, None);
                self.drawn(at, end, still);
            }
        }
    }

    /// The mark whose line or point is nearest to a finger.
    fn mark_near(&self, at: usize, finger: Spot, shown: &Shown) -> Option<u32> {
        let photo = self.job.photos.get(at)?;
        let marks = photo.marks.iter().filter_map(|mark| {
            let mut on: Vec<Spot> = mark
                .points
                .iter()
                .filter_map(|spot| shown.to_screen(*spot))
                .collect();
            if matches!(mark.what, What::Area(_)) {
                on.extend(on.first().copied());
            }
            let single = on.first().map(|only| distance(*only, finger));
            let lines = on
                .windows(2)
                .map(|pair| from_stretch(pair[0], pair[1], finger));
            let away = lines.chain(single).fold(f64::INFINITY, f64::min);
            (away <= REACH).then_some((away, mark.number))
        });
        marks
            .min_by(|(a, _), (b, _)| a.total_cmp(b))
            .map(|(_, number)| number)
    }

    /// A mark's points as they are now, one of them perhaps in the hand.
    pub(super) fn points_now(&self, number: u32, points: &[Spot]) -> Vec<Spot> {
        let mut points = points.to_vec();
        if let Some((moved, n, spot)) = self.surface.moved
            && moved == number
            && let Some(place) = points.get_mut(n)
        {
            *place = spot;
        }
        points
    }

    /// The reference's corners as they are now.
    pub(super) fn corners_now(&self, corners: [Spot; 4]) -> [Spot; 4] {
        let mut corners = corners;
        if let Some((n, spot)) = self.surface.moved_corner {
            corners[n % 4] = spot;
        }
        corners
    }

    /// What is being drawn, with the end that is under the finger.
    pub(super) fn draft_now(&self, at: usize, shown: &Shown) -> Vec<Spot> {
        let mut draft = self.surface.draft.clone();
        let drags = matches!(
            self.surface.tool,
            Tool::Dimension | Tool::Level | Tool::Arrow | Tool::Hidden
        );
        if self.surface.hand == Some(Hand::Drawing)
            && self.surface.tool != Tool::Freehand
            && let (Some(finger), Some(down)) = (self.surface.finger, self.surface.down)
            && (!drags || draft.len() > 1 || distance(down, finger) >= STILL)
        {
            draft.extend(self.snapped(at, finger, shown, None));
        }
        draft
    }

    /// The point in hand moved by pixels of the screen.
    pub(super) fn nudge_mark(&mut self, across: i32, down: i32) {
        let Here::Photo(at) = self.here else { return };
        let Some(shown) = self.shown(at, self.surface.size.get()) else {
            return;
        };
        let (Some(number), n) = (self.surface.picked, self.surface.point) else {
            return;
        };
        let spot = self
            .job
            .photos
            .get(at)
            .and_then(|photo| photo.mark(number)?.points.get(n).copied());
        let on = spot.and_then(|spot| shown.to_screen(spot));
        // A pixel of the screen, but never more than one of the working copy where it is shown large.
        let moved =
            on.and_then(|[x, y]| shown.to_picture([x + f64::from(across), y + f64::from(down)]));
        if let Some(spot) = moved {
            self.move_point(at, number, n, spot);
        }
    }

    /// Whether keys nudge a point.
    #[must_use]
    pub fn nudges(&self) -> bool {
        matches!(self.here, Here::Photo(_)) && self.surface.picked.is_some() && self.pad.is_none()
    }

    /// Opens the pad on what was just drawn, where a figure or words are missing.
    pub(super) fn ask_for(&mut self, at: usize, number: u32, field: PhotoSlot) {
        self.surface.picked = Some(number);
        self.surface.point = 0;
        self.open_pad(Slot::Photo(at, field));
    }
}
