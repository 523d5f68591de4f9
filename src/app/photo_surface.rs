//! The picture under the finger: how it is shown, what a finger on it does, and the marks drawn over it.

use std::cell::{Cell, RefCell};
use std::sync::{Arc, Mutex};

use super::photo_copy::{Copies, Loaded};
use super::{App, Command, Here, PhotoCommand, Tool};
use crate::drawing::{At, Glass, Loupe, Palette, Pixels, Role, annotate, ground};
use crate::geometry::{Homography, Lens, Plane, PlaneView, Spot};
use crate::photo::{Photo, Window, flatten};
use crate::takeoff::Job;

/// The plane of a picture, and the state of the picture that it is of.
type Laid = (usize, Arc<Photo>, Option<Arc<PlaneView>>);

/// What a finger holds.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Hand {
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
    /// What is placed stays under the finger: it snaps to nothing.
    pub loose: bool,
    /// Beside the one before.
    pub beside: bool,
    /// What was begun with a tool that was put down.
    pub shelved: Option<(Tool, Vec<Spot>, Option<Spot>)>,
    /// The last nudge: of which point, and the state of the job that it made.
    pub nudged: Option<(u32, usize, Arc<Job>)>,
    /// Points of what is being drawn, in pixels of the original.
    pub draft: Vec<Spot>,
    /// The first of two taps.
    pub first_tap: Option<Spot>,
    pub hand: Option<Hand>,
    /// Where the finger came down and is, on the screen.
    pub down: Option<Spot>,
    pub finger: Option<Spot>,
    /// A mark as it is while a point of it is moved.
    pub moved: Option<(u32, usize, Spot)>,
    pub moved_corner: Option<(usize, Spot)>,
    zoom: f64,
    /// What lies in the middle, in shares of what is shown whole.
    middle: Spot,
    pub size: Cell<(f64, f64)>,
    pub copies: Arc<Mutex<Copies>>,
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
    /// The same so many times larger, a place on the screen so far from its left and its top.
    fn about(&self, at: Spot, radius: f64, times: f64) -> Shown {
        match self {
            Shown::Taken { scale, from } => Shown::Taken {
                scale: scale * times,
                from: [0, 1].map(|axis| radius + (from[axis] - at[axis]) * times),
            },
            Shown::Flat { plane, window } => Shown::Flat {
                plane: *plane,
                window: Window {
                    from: window.place(at.map(|place| place - radius / times)),
                    scale: window.scale * times,
                    ..*window
                },
            },
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
            loose: self.loose,
            ..Surface::default()
        };
    }

    /// Another tool; what was begun with the last one waits until that is taken up again.
    pub fn take(&mut self, tool: Tool) {
        let begun = !self.draft.is_empty() || self.first_tap.is_some();
        if begun && self.tool != tool {
            let draft = std::mem::take(&mut self.draft);
            self.shelved = Some((self.tool, draft, self.first_tap));
        }
        self.drop_begun();
        self.tool = tool;
        self.hand = None;
        self.picked = None;
        if let Some((_, draft, first_tap)) = self.shelved.take_if(|(of, ..)| *of == tool) {
            (self.draft, self.first_tap) = (draft, first_tap);
        }
    }

    /// What was begun is dropped.
    pub fn drop_begun(&mut self) {
        self.draft.clear();
        self.first_tap = None;
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
    pub fn shift(&mut self, by: Spot) {
        let (w, h) = self.size.get();
        let zoom = self.zoom();
        self.middle[0] -= by[0] / (w.max(1.0) * zoom);
        self.middle[1] -= by[1] / (h.max(1.0) * zoom);
        self.hold_on();
    }

    /// The finger is not meant: what it held stays as it was, and what it had begun to drag is dropped.
    pub fn let_go(&mut self) {
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
    pub(super) fn shown(&self, at: usize, (w, h): (f64, f64)) -> Option<Shown> {
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
        if self.here == Here::Camera {
            let c = palette.colour(Role::Hole);
            let seen = self.paint_seen(pixels, [c.r, c.g, c.b]);
            return (seen.unwrap_or_else(nothing), Vec::new());
        }
        let Here::Photo(at) = self.here else {
            return (nothing(), Vec::new());
        };
        if let Some(pair) = self.side_by_side(at, pixels, f64::from(heft)) {
            return (pair, Vec::new());
        }
        let Some(shown) = self.shown(at, (w, h)) else {
            return (nothing(), Vec::new());
        };
        let heft = f64::from(heft);
        let base = self
            .copy_of(at)
            .map_or_else(nothing, |copy| base(&copy, &shown, pixels, heft, palette));
        let (notes, of) = self.photo_notes(at, &shown, heft);
        let glass = self.glass(at, &shown, (w, h), heft, palette);
        let (painted, plates) = annotate(base, &notes, glass, palette, heft as f32);
        if self.pad.is_some() {
            // What is typed belongs to the mark in hand: another is not taken up meanwhile.
            return (painted, Vec::new());
        }
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

    /// Whether a picture is looked at together with the one before.
    pub(super) fn is_pair(&self, at: usize) -> bool {
        let before = self.job.photos.get(at).and_then(|photo| photo.before);
        let known = |id| self.job.photos.iter().any(|other| other.id == id);
        self.surface.beside && before.is_some_and(known)
    }

    /// The room that each of two pictures has where they are looked at together: beside each other or one above the other,
    /// whichever shows more of them.
    fn cell(&self, at: usize, (w, h): (f64, f64)) -> (f64, f64) {
        let size = self.job.photos.get(at).map_or((1, 1), |photo| photo.size);
        let (pw, ph) = (f64::from(size.0), f64::from(size.1));
        let scale = |w: f64, h: f64| (w / pw).min(h / ph);
        if scale(w / 2.0, h) >= scale(w, h / 2.0) {
            (w / 2.0, h)
        } else {
            (w, h / 2.0)
        }
    }

    /// A place in one of two pictures that are looked at together as if that one had all the room, and by how much a way in
    /// it is longer then; the place itself where there is one picture.
    pub(super) fn in_cell(&self, at: usize, finger: Spot) -> (Spot, Spot) {
        let (w, h) = self.surface.size.get();
        if !self.is_pair(at) {
            return (finger, [1.0, 1.0]);
        }
        let (cw, ch) = self.cell(at, (w, h));
        let by = [w / cw.max(1.0), h / ch.max(1.0)];
        (
            [
                finger[0] % cw.max(1.0) * by[0],
                finger[1] % ch.max(1.0) * by[1],
            ],
            by,
        )
    }

    /// The picture before, then this one, both as near, where they are looked at together.
    fn side_by_side(&self, at: usize, (w, h): (u32, u32), heft: f64) -> Option<Pixels> {
        let photo = self.job.photos.get(at).filter(|_| self.surface.beside)?;
        let before = self
            .job
            .photos
            .iter()
            .position(|other| Some(other.id) == photo.before)?;
        let palette = Palette::of(self.prefs.theme);
        let (cw, ch) = self.cell(at, (f64::from(w), f64::from(h)));
        let (cw, ch) = (cw as u32, ch as u32);
        let surface = &self.surface;
        let one = |at: usize| {
            let photo = &self.job.photos[at];
            let zoom = surface.zoom();
            let place = |axis: usize, cell: u32, side: u32, scale: f64| {
                let cell = f64::from(cell) / heft;
                let corner = (cell - f64::from(side) * scale) / 2.0;
                corner * zoom + cell * (0.5 - (0.5 + surface.middle[axis]) * zoom)
            };
            let (pw, ph) = photo.size;
            let scale = (f64::from(cw) / f64::from(pw)).min(f64::from(ch) / f64::from(ph)) / heft;
            let shown = Shown::Taken {
                scale: scale * zoom,
                from: [place(0, cw, pw, scale), place(1, ch, ph, scale)],
            };
            self.copy_of(at).map_or_else(
                || ground(cw, ch, palette, Role::Hole),
                |copy| base(&copy, &shown, (cw, ch), heft, palette),
            )
        };
        let mut both = ground(w, h, palette, Role::Sheet);
        let (side, wide) = (4 * cw as usize, 4 * w as usize);
        for (picture, [x, y]) in [(one(before), [0, 0]), (one(at), [w - cw, h - ch])] {
            for (row, line) in picture.rgba.chunks(side).enumerate() {
                let from = (y as usize + row) * wide + 4 * x as usize;
                both.rgba[from..from + side].copy_from_slice(line);
            }
        }
        Some(both)
    }

    /// The glass over the finger, while one places a point.
    fn glass(
        &self,
        at: usize,
        shown: &Shown,
        (w, _): (f64, f64),
        heft: f64,
        palette: Palette,
    ) -> Option<Glass> {
        let surface = &self.surface;
        let places = match surface.hand.as_ref()? {
            Hand::Point(..) | Hand::Corner(_) => true,
            Hand::Drawing => surface.tool != Tool::Freehand,
            Hand::Picture(_) => false,
        };
        let finger = surface.finger.filter(|_| places)?;
        let radius: f64 = 62.0;
        // In the upper corner that the finger is not in.
        let x = if finger[0] < w / 2.0 {
            w - radius - 10.0
        } else {
            radius + 10.0
        };
        // So near that a pixel of the working copy, to which a point is taken to be placed, is seen.
        let photo = self.job.photos.get(at)?;
        let times = match shown {
            Shown::Taken { scale, .. } => (1.4 * photo.working_scale() / scale).clamp(2.6, 7.0),
            Shown::Flat { .. } => 3.0,
        };
        let copy = self.copy_of(at)?;
        let side = (2.0 * radius * heft).ceil() as u32;
        let near = shown.about(finger, radius, times);
        let on = |p: f64| (p * heft) as f32;
        Some(Glass {
            loupe: Loupe {
                at: (on(finger[0]), on(finger[1])),
                glass: (on(x), on(radius + 10.0)),
                radius: on(radius),
                times: times as f32,
            },
            pixels: base(&copy, &near, (side, side), heft, palette),
        })
    }
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

/// A place on the screen in pixels of the device.
pub(super) fn on_device(at: Spot, heft: f64) -> At {
    ((at[0] * heft) as f32, (at[1] * heft) as f32)
}
