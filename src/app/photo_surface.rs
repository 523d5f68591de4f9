//! The picture under the finger: how it is shown, what a finger on it does, and the marks drawn over it.

use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::fs::File;
use std::path::Path;
use std::sync::{Arc, Mutex, PoisonError};

use super::photo_take::keep_copies;
use super::{App, Command, Here, PhotoCommand, PhotoSlot, Slot, Tool};
use crate::drawing::{At, Loupe, Palette, Pixels, Role, annotate, ground};
use crate::geometry::{Homography, Lens, Plane, PlaneView, Spot, distance};
use crate::photo::{Photo, Picture, WORKING, What, Window, decode, edge_near, flatten};
use crate::store::pictures::{copy_path, picture_path};

/// A finger this near to a point takes hold of it, in pixels of the screen.
const REACH: f64 = 26.0;
/// What is drawn ends on another end this near.
const SNAP: f64 = 14.0;
/// A finger that moves less has only tapped.
const STILL: f64 = 7.0;

/// A working copy, and one of half its size for when it is shown small.
pub(super) struct Loaded {
    name: String,
    whole: Arc<Picture>,
    half: Arc<Picture>,
}

/// Copies on the screen, and the one that is being decoded.
#[derive(Default)]
pub(super) struct Copies {
    ready: VecDeque<Result<Arc<Loaded>, String>>,
    loading: Option<String>,
}

/// The plane of a picture, and the state of the picture that it is of.
type Laid = (usize, Arc<Photo>, Option<Arc<PlaneView>>);

/// What a finger holds.
#[derive(Clone, Debug, PartialEq)]
enum Hand {
    /// A point of a mark, and the picture's marks before.
    Point(u32, usize),
    /// A corner of the reference.
    Corner(usize),
    /// The picture itself, from where it was taken hold of.
    Picture(Spot),
    /// What is being drawn.
    Drawing,
}

/// The state of the picture under the finger.
#[derive(Default)]
pub(super) struct Surface {
    pub tool: Tool,
    pub picked: Option<u32>,
    pub point: usize,
    /// Laid flat.
    pub flat: bool,
    /// Beside the one before.
    pub beside: bool,
    /// Points of what is being drawn, in pixels of the original.
    pub draft: Vec<Spot>,
    /// The first of two taps.
    pub first_tap: Option<Spot>,
    hand: Option<Hand>,
    /// Where the finger came down and is, on the screen.
    down: Option<Spot>,
    finger: Option<Spot>,
    /// A mark as it is while a point of it is moved.
    moved: Option<(u32, usize, Spot)>,
    moved_corner: Option<(usize, Spot)>,
    zoom: f64,
    /// What lies in the middle, in shares of what is shown whole.
    middle: Spot,
    size: Cell<(f64, f64)>,
    copies: Arc<Mutex<Copies>>,
    laid: RefCell<Option<Laid>>,
}

/// How places of the picture come onto the screen.
pub(super) enum Shown {
    /// As it was taken: pixels of the screen to one of the original, and where its corner is.
    Taken { scale: f64, from: Spot },
    /// Laid flat.
    Flat { plane: Plane, window: Window },
}

impl Shown {
    pub fn to_screen(&self, spot: Spot) -> Option<Spot> {
        match self {
            Shown::Taken { scale, from } => {
                Some([spot[0] * scale + from[0], spot[1] * scale + from[1]])
            }
            Shown::Flat { plane, window } => plane.of(spot).map(|place| window.shows(place)),
        }
    }
    pub fn to_picture(&self, at: Spot) -> Option<Spot> {
        match self {
            Shown::Taken { scale, from } => {
                Some([(at[0] - from[0]) / scale, (at[1] - from[1]) / scale])
            }
            Shown::Flat { plane, window } => {
                let straight = plane.there.back().of(window.place(at))?;
                Some(plane.lens.seen(straight))
            }
        }
    }
}

impl Surface {
    /// A new picture under the finger: whole, with nothing in hand.
    pub fn reset(&mut self) {
        let (copies, size) = (Arc::clone(&self.copies), self.size.get());
        *self = Surface {
            copies,
            size: Cell::new(size),
            ..Surface::default()
        };
    }

    /// Another tool: what was begun is dropped.
    pub fn take(&mut self, tool: Tool) {
        self.tool = tool;
        self.draft.clear();
        self.first_tap = None;
        self.hand = None;
        self.picked = None;
    }

    fn zoom(&self) -> f64 {
        self.zoom.max(1.0)
    }

    /// Nearer by a factor, about a place on the screen that stays where it is.
    pub fn nearer(&mut self, by: f64, about: Option<Spot>) {
        let (w, h) = self.size.get();
        let before = self.zoom();
        let after = (before * by).clamp(1.0, 12.0);
        let about = about.unwrap_or([w / 2.0, h / 2.0]);
        let off = [(about[0] / w.max(1.0)) - 0.5, (about[1] / h.max(1.0)) - 0.5];
        for (middle, off) in self.middle.iter_mut().zip(off) {
            *middle += off * (1.0 / before - 1.0 / after);
        }
        self.zoom = after;
        self.hold_on();
    }

    /// Moves the picture by pixels of the screen.
    fn shift(&mut self, by: Spot) {
        let (w, h) = self.size.get();
        let zoom = self.zoom();
        self.middle[0] -= by[0] / (w.max(1.0) * zoom);
        self.middle[1] -= by[1] / (h.max(1.0) * zoom);
        self.hold_on();
    }

    /// The finger is not meant: what it held stays as it was, and what it had begun to drag is dropped.
    fn let_go(&mut self) {
        let drags = matches!(
            self.tool,
            Tool::Dimension | Tool::Level | Tool::Arrow | Tool::Hidden | Tool::Freehand
        );
        if self.hand == Some(Hand::Drawing) && drags {
            self.draft.clear();
        }
        (self.hand, self.down, self.finger) = (None, None, None);
        (self.moved, self.moved_corner) = (None, None);
    }

    /// Keeps something of the picture on the screen.
    fn hold_on(&mut self) {
        let most = (1.0 - 1.0 / self.zoom()) / 2.0;
        self.middle = self.middle.map(|part| part.clamp(-most, most));
    }
}

impl App {
    /// The plane of a picture, figured once for each state of it.
    pub(super) fn view_of(&self, at: usize) -> Option<Arc<PlaneView>> {
        let photo = self.job.photos.get(at)?;
        let mut laid = self.surface.laid.borrow_mut();
        if let Some((of, known, view)) = &*laid
            && *of == at
            && Arc::ptr_eq(known, photo)
        {
            return view.clone();
        }
        let view = photo.view().ok().map(Arc::new);
        *laid = Some((at, Arc::clone(photo), view.clone()));
        view
    }

    /// How a picture is shown on so many pixels.
    fn shown(&self, at: usize, (w, h): (f64, f64)) -> Option<Shown> {
        let photo = self.job.photos.get(at)?;
        let surface = &self.surface;
        let zoom = surface.zoom();
        let shift = |side: f64, axis: usize| side * (0.5 - (0.5 + surface.middle[axis]) * zoom);
        if surface.flat
            && let Some(view) = self.view_of(at)
            && let Some(plane) = view.plane_of()
        {
            let (min, max) = self.flat_extent(photo, &view)?;
            let mut window = Window::around(min, max, (w as u32, h as u32));
            let from = [shift(w, 0), shift(h, 1)];
            window.from = window.place([-from[0] / zoom, -from[1] / zoom]);
            window.scale *= zoom;
            return Some(Shown::Flat { plane, window });
        }
        let (pw, ph) = (f64::from(photo.size.0), f64::from(photo.size.1));
        let scale = (w / pw).min(h / ph);
        let corner = [(w - pw * scale) / 2.0, (h - ph * scale) / 2.0];
        Some(Shown::Taken {
            scale: scale * zoom,
            from: [
                corner[0] * zoom + shift(w, 0),
                corner[1] * zoom + shift(h, 1),
            ],
        })
    }

    /// What of the plane is shown: the reference and what is marked, with some of the wall around.
    fn flat_extent(&self, photo: &Photo, view: &PlaneView) -> Option<(Spot, Spot)> {
        let flat = photo.flat.as_ref()?;
        let marks = photo.marks.iter().flat_map(|mark| &mark.points);
        let (mut min, mut max) = ([f64::MAX; 2], [f64::MIN; 2]);
        for spot in flat.corners.iter().chain(marks) {
            let Some(place) = view.place(*spot) else {
                continue;
            };
            for axis in 0..2 {
                min[axis] = min[axis].min(place[axis]);
                max[axis] = max[axis].max(place[axis]);
            }
        }
        let room = 0.35 * (max[0] - min[0]).max(max[1] - min[1]);
        (min[0] < max[0]).then(|| {
            (
                [min[0] - room, min[1] - room],
                [max[0] + room, max[1] + room],
            )
        })
    }

    /// The copy of a picture for the screen; where it is not there yet it is decoded behind the screen's back.
    pub(super) fn copy_of(&self, at: usize) -> Option<Arc<Loaded>> {
        let photo = self.job.photos.get(at)?;
        let mut copies = self
            .surface
            .copies
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        let ready = copies.ready.iter().flatten();
        if let Some(ready) = ready.clone().find(|ready| ready.name == photo.picture) {
            return Some(Arc::clone(ready));
        }
        if copies.loading.is_some() {
            return None;
        }
        let folder = self.keeper.path()?.to_owned();
        copies.loading = Some(photo.picture.clone());
        let (photo, wake) = (Arc::clone(photo), self.keeper.wake());
        let place = Arc::clone(&self.surface.copies);
        std::thread::spawn(move || {
            let loaded = load(&folder, &photo);
            let mut copies = place.lock().unwrap_or_else(PoisonError::into_inner);
            copies.loading = None;
            copies.ready.push_back(loaded.map(Arc::new));
            while copies.ready.len() > 3 {
                copies.ready.pop_front();
            }
            drop(copies);
            if let Some(wake) = &*wake.lock().unwrap_or_else(PoisonError::into_inner) {
                wake();
            }
        });
        None
    }

    /// Why the last copy could not be shown.
    pub(super) fn copy_trouble(&self) -> Option<String> {
        let copies = self
            .surface
            .copies
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        copies.ready.back().and_then(|last| last.clone().err())
    }

    /// Waits for the copy that is being decoded.
    pub(super) fn wait_for_copy(&self) {
        if let Here::Photo(at) = self.here {
            let _ = self.copy_of(at);
        }
        let loading = || {
            let copies = self
                .surface
                .copies
                .lock()
                .unwrap_or_else(PoisonError::into_inner);
            copies.loading.is_some()
        };
        while loading() {
            std::thread::sleep(std::time::Duration::from_millis(2));
        }
    }

    /// Paints the picture of this screen with its marks; gives the plates that can be tapped, with what a tap asks for.
    #[must_use]
    pub fn paint_photo(
        &self,
        size: (f32, f32),
        heft: f32,
    ) -> (Pixels, Vec<([f32; 4], Command, String)>) {
        let palette = Palette::of(self.prefs.theme);
        let (w, h) = (f64::from(size.0), f64::from(size.1));
        self.surface.size.set((w, h));
        let pixels = (
            (size.0 * heft).ceil().max(1.0) as u32,
            (size.1 * heft).ceil().max(1.0) as u32,
        );
        let nothing = || ground(pixels.0, pixels.1, palette, Role::Hole);
        let Here::Photo(at) = self.here else {
            return (nothing(), Vec::new());
        };
        let Some(shown) = self.shown(at, (w, h)) else {
            return (nothing(), Vec::new());
        };
        let heft = f64::from(heft);
        let base = self
            .copy_of(at)
            .map_or_else(nothing, |copy| base(&copy, &shown, pixels, heft, palette));
        let (notes, of) = self.photo_notes(at, &shown, heft);
        let loupe = self.loupe((w, h), heft);
        let (painted, plates) = annotate(base, &notes, loupe.as_ref(), palette, heft as f32);
        let taps = plates
            .into_iter()
            .zip(of)
            .zip(&notes)
            .filter_map(|((plate, of), note)| {
                let heft = heft as f32;
                let plate = plate?.map(|side| side / heft);
                let command = Command::Photo(PhotoCommand::Select(Some(of?)));
                Some((plate, command, note.label.clone()))
            });
        (painted, taps.collect())
    }

    /// The glass over the finger, while one places a point.
    fn loupe(&self, (w, _): (f64, f64), heft: f64) -> Option<Loupe> {
        let surface = &self.surface;
        let places = match surface.hand.as_ref()? {
            Hand::Point(..) | Hand::Corner(_) => true,
            Hand::Drawing => surface.tool != Tool::Freehand,
            Hand::Picture(_) => false,
        };
        let finger = surface.finger.filter(|_| places)?;
        let radius = 62.0;
        // In the upper corner that the finger is not in.
        let x = if finger[0] < w / 2.0 {
            w - radius - 10.0
        } else {
            radius + 10.0
        };
        let on = |p: f64| (p * heft) as f32;
        Some(Loupe {
            at: (on(finger[0]), on(finger[1])),
            glass: (on(x), on(radius + 10.0)),
            radius: on(radius),
            times: 2.6,
        })
    }

    /// What a finger on the picture does: comes down, moves, lifts.
    pub fn touch(&mut self, what: Touch, x: f32, y: f32) {
        let Here::Photo(at) = self.here else { return };
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
                .map(|pair| from_line(pair[0], pair[1], finger));
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

/// How far a place is from a stretch.
fn from_line(a: Spot, b: Spot, at: Spot) -> f64 {
    let along = [b[0] - a[0], b[1] - a[1]];
    let long = along[0] * along[0] + along[1] * along[1];
    let share = if long > 0.0 {
        (((at[0] - a[0]) * along[0] + (at[1] - a[1]) * along[1]) / long).clamp(0.0, 1.0)
    } else {
        0.0
    };
    distance([a[0] + share * along[0], a[1] + share * along[1]], at)
}

/// The pixels of the picture itself.
fn base(copy: &Loaded, shown: &Shown, size: (u32, u32), heft: f64, palette: Palette) -> Pixels {
    let c = palette.colour(Role::Hole);
    let (plane, window) = match shown {
        Shown::Flat { plane, window } => {
            let window = Window {
                scale: window.scale * heft,
                size,
                ..*window
            };
            (*plane, window)
        }
        Shown::Taken { scale, from } => {
            let Some(plane) = as_taken(copy.whole.original) else {
                return ground(size.0, size.1, palette, Role::Hole);
            };
            let window = Window {
                from: [-from[0] / scale, -from[1] / scale],
                scale: scale * heft,
                size,
            };
            (plane, window)
        }
    };
    let small = match shown {
        Shown::Taken { scale, .. } => scale * heft < 0.6 * copy.whole.scale(),
        Shown::Flat { .. } => false,
    };
    let picture = if small { &copy.half } else { &copy.whole };
    Pixels {
        width: size.0,
        height: size.1,
        rgba: flatten(picture, &plane, &window, [c.r, c.g, c.b]),
    }
}

/// A plane that is the picture itself, a pixel of the original a metre.
pub(super) fn as_taken((width, height): (u32, u32)) -> Option<Plane> {
    let (w, h) = (f64::from(width), f64::from(height));
    let corners = [[0.0, 0.0], [w, 0.0], [w, h], [0.0, h]];
    Some(Plane {
        lens: Lens::straight(w, h),
        there: Homography::between(&corners, &corners)?,
    })
}

/// The working copy from its file, or from the picture itself, whose copies are then made again.
pub(super) fn load(folder: &Path, photo: &Photo) -> Result<Loaded, String> {
    let open = |path: Option<std::path::PathBuf>| File::open(path?).ok();
    let copy = open(copy_path(folder, &photo.picture, WORKING));
    let picture = copy.and_then(|mut file| decode(&mut file, WORKING).ok());
    let picture = match picture {
        Some((picture, _)) => Picture {
            original: photo.size,
            ..picture
        },
        None => {
            // Of a job that was handed over the picture may be there without its place alone.
            let names = [&photo.picture, &photo.stripped];
            let file = names
                .into_iter()
                .find_map(|name| open(picture_path(folder, name)));
            let mut file = file.ok_or("The picture is not among the job's pictures.")?;
            let (picture, _) = decode(&mut file, WORKING)
                .map_err(|_| "The picture does not read any more; its file is damaged.")?;
            // Made again next time where they cannot be kept.
            let _ = keep_copies(folder, &photo.picture, &picture);
            picture
        }
    };
    Ok(Loaded {
        name: photo.picture.clone(),
        half: Arc::new(picture.smaller(WORKING / 2)),
        whole: Arc::new(picture),
    })
}

impl Loaded {
    /// The working copy.
    pub fn picture(&self) -> &Picture {
        &self.whole
    }
}

/// A place on the screen in pixels of the device.
pub(super) fn on_device(at: Spot, heft: f64) -> At {
    ((at[0] * heft) as f32, (at[1] * heft) as f32)
}
