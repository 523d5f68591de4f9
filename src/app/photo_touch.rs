//! What a finger on the picture does: it draws, takes hold of points, snaps, and moves the picture.

use std::sync::{Arc, PoisonError};

use super::photo_surface::{Hand, Shown};
use super::{App, Here, PhotoSlot, Slot, Tool};
use crate::geometry::{Spot, distance, from_stretch};
use crate::photo::{What, edge_near};

/// A finger this near to a point takes hold of it, in pixels of the screen.
const REACH: f64 = 26.0;
/// What is drawn ends on another end, or on an edge, this near.
const SNAP: f64 = 10.0;
/// The same for what the plane is measured by: no farther than a finger under the glass is off anyway, on the screen and in
/// pixels of the working copy.
const SNAP_FINE: f64 = 3.0;
const HAIR: f64 = 5.0;
/// An outline ends by a tap this near to its first corner.
const CLOSES: f64 = 16.0;
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
        // While something is typed, and in two pictures together, a finger may look about and changes nothing.
        let looks = self.pad.is_some() || self.is_pair(at);
        let (_, wider) = self.in_cell(at, [0.0; 2]);
        let finger = [f64::from(x) * wider[0], f64::from(y) * wider[1]];
        let Some(shown) = self.shown(at, self.surface.size.get()) else {
            return;
        };
        match what {
            Touch::Down if looks => {
                self.surface.down = Some(finger);
                self.surface.hand = Some(Hand::Picture(finger));
            }
            Touch::Up if looks => self.surface.let_go(),
            Touch::Down => self.finger_down(at, finger, &shown),
            Touch::Move => self.finger_moves(at, finger, &shown),
            Touch::Up => self.finger_up(at, finger, &shown),
            Touch::Cancel => self.surface.let_go(),
        }
    }

    /// Nearer or farther about a place on the screen: a wheel, or two fingers.
    pub fn zoom_photo(&mut self, by: f32, (x, y): (f32, f32), moved: (f32, f32)) {
        let Here::Photo(at) = self.here else { return };
        self.surface.let_go();
        let (about, wider) = self.in_cell(at, [f64::from(x), f64::from(y)]);
        self.surface.nearer(f64::from(by), Some(about));
        let moved = [f64::from(moved.0) * wider[0], f64::from(moved.1) * wider[1]];
        self.surface.shift(moved);
    }

    fn finger_down(&mut self, at: usize, finger: Spot, shown: &Shown) {
        let reading = self.keeper.is_reading();
        let held = (!reading).then(|| match self.surface.tool {
            Tool::Look => self.point_near(at, finger, shown),
            Tool::Flatten if self.surface.draft.is_empty() => self.corner_near(at, finger, shown),
            _ => None,
        });
        let hand = held.flatten().unwrap_or(match self.surface.tool {
            Tool::Look => Hand::Picture(finger),
            _ => Hand::Drawing,
        });
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

    /// The point of the mark in hand that a finger takes hold of. One that is not in hand is not moved: a finger that shifts
    /// the picture comes down anywhere.
    fn point_near(&self, at: usize, finger: Spot, shown: &Shown) -> Option<Hand> {
        let photo = self.job.photos.get(at)?;
        let mark = photo.mark(self.surface.picked?)?;
        let points = (mark.what != What::Freehand).then_some(&mark.points)?;
        nearest(points, finger, shown).map(|n| Hand::Point(mark.number, n))
    }

    /// The corner of the reference that a finger takes hold of, with the tool that put it there.
    fn corner_near(&self, at: usize, finger: Spot, shown: &Shown) -> Option<Hand> {
        let flat = self.job.photos.get(at)?.flat.as_ref();
        let flat = flat.filter(|_| !self.surface.flat)?;
        nearest(&flat.corners, finger, shown).map(Hand::Corner)
    }

    /// Where what is drawn ends: on another end nearby, else on a straight edge, else under the finger.
    fn snapped(
        &self,
        at: usize,
        finger: Spot,
        shown: &Shown,
        but: Option<(u32, usize)>,
    ) -> Option<Spot> {
        self.placed(at, finger, shown, but).map(|(spot, _)| spot)
    }

    /// The same, and whether it snapped to something.
    ///
    /// What the plane is measured by snaps by a hair alone, and never to its own other corners: the glass shows it better.
    fn placed(
        &self,
        at: usize,
        finger: Spot,
        shown: &Shown,
        but: Option<(u32, usize)>,
    ) -> Option<(Spot, bool)> {
        let photo = self.job.photos.get(at)?;
        let surface = &self.surface;
        let near = |spot: &Spot, reach: f64| {
            let away = distance(shown.to_screen(*spot)?, finger);
            Some((away, *spot)).filter(|(away, _)| *away <= reach)
        };
        // An outline is closed on its first corner, also where nothing else snaps.
        if surface.tool == Tool::Area
            && surface.draft.len() >= 3
            && let Some((_, first)) = surface.draft.first().and_then(|spot| near(spot, CLOSES))
        {
            return Some((first, true));
        }
        let fine = matches!(surface.tool, Tool::Flatten | Tool::Edge | Tool::Anchor)
            || matches!(surface.hand, Some(Hand::Corner(_)));
        let reach = match (surface.loose || surface.tool == Tool::Freehand, fine) {
            (true, _) => 0.0,
            (false, true) => match shown {
                Shown::Taken { scale, .. } => SNAP_FINE.min(HAIR * scale / photo.working_scale()),
                Shown::Flat { .. } => SNAP_FINE,
            },
            (false, false) => SNAP,
        };
        let ends = photo
            .marks
            .iter()
            .filter(|mark| mark.what != What::Freehand)
            .flat_map(|mark| {
                let points = mark.points.iter().enumerate();
                points.map(|(n, spot)| ((mark.number, n), *spot))
            })
            .filter(|(of, _)| Some(*of) != but)
            .map(|(_, spot)| spot);
        let corners = photo.flat.iter().flat_map(|flat| flat.corners);
        let draft = surface.draft.iter().copied();
        let own = corners.chain(draft).filter(|_| !fine);
        let nearest = ends
            .chain(own)
            .filter(|_| reach > 0.0)
            .filter_map(|spot| near(&spot, reach))
            .min_by(|(a, _), (b, _)| a.total_cmp(b));
        if let Some((_, spot)) = nearest {
            return Some((spot, true));
        }
        let spot = shown.to_picture(finger)?;
        let (w, h) = (f64::from(photo.size.0), f64::from(photo.size.1));
        let spot = [spot[0].clamp(0.0, w), spot[1].clamp(0.0, h)];
        if reach == 0.0 {
            return Some((spot, false));
        }
        let copies = surface
            .copies
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        let copy = copies
            .ready
            .iter()
            .flatten()
            .find(|copy| copy.name == photo.picture);
        let edge = copy.and_then(|copy| edge_near(&copy.whole, spot, 5.0));
        let edge = edge.and_then(|edge| near(&edge, reach));
        Some(edge.map_or((spot, false), |(_, edge)| (edge, true)))
    }

    /// Where a point snapped that is being placed, to be shown under the glass.
    pub(super) fn snaps_now(&self, at: usize, shown: &Shown) -> Option<Spot> {
        let (finger, hand) = (self.surface.finger?, self.surface.hand.as_ref()?);
        let but = match hand {
            Hand::Picture(_) => return None,
            Hand::Point(number, n) => Some((*number, *n)),
            Hand::Corner(_) | Hand::Drawing => None,
        };
        let (spot, snaps) = self.placed(at, finger, shown, but)?;
        snaps.then_some(spot)
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
            Hand::Corner(_) if !still => {
                if let Some((n, spot)) = corner {
                    self.move_corner(at, n, spot);
                }
            }
            // One of four new corners may lie where an old one is.
            Hand::Corner(_) | Hand::Drawing => {
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
        let Some(spot) = moved else { return };
        // Nudges of one point in one go are one step to take back.
        let follows = self.surface.nudged.take().is_some_and(|(of, which, made)| {
            (of, which) == (number, n) && Arc::ptr_eq(&made, &self.now)
        });
        if self.move_point(at, number, n, spot) {
            if follows {
                self.done.pop();
            }
            self.surface.nudged = Some((number, n, Arc::clone(&self.now)));
        }
    }

    /// Puts the tool in hand down, if there is one on a picture; gives whether there was.
    pub(super) fn puts_tool_down(&mut self) -> bool {
        let holds = matches!(self.here, Here::Photo(_)) && self.surface.tool != Tool::Look;
        if holds {
            self.pad = None;
            self.surface.take(Tool::Look);
            self.said = match self.surface.shelved {
                Some((tool, ..)) => format!(
                    "Put down. What was begun waits: take {} again to go on.",
                    tool.name()
                ),
                None => String::new(),
            };
        }
        holds
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

/// Which of these places a finger is on.
fn nearest(places: &[Spot], finger: Spot, shown: &Shown) -> Option<usize> {
    let away = places.iter().enumerate().filter_map(|(n, spot)| {
        let away = distance(shown.to_screen(*spot)?, finger);
        (away <= REACH).then_some((away, n))
    });
    away.min_by(|(a, _), (b, _)| a.total_cmp(b)).map(|(_, n)| n)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::{Command, Keeper, PhotoCommand};
    use crate::measure::Units;
    use crate::photo::Photo;
    use crate::takeoff::Job;

    /// A picture of 4,000 by 3,000 pixels at 400 by 300: ten pixels to one of the screen.
    fn app() -> App {
        let when = chrono::DateTime::UNIX_EPOCH.fixed_offset();
        let mut job = Job::new("Cabin", when, Units::Millimetres);
        let mut photo = Photo::new("a.jpg".into(), (4000, 3000), when);
        photo.add_mark(
            What::Dimension(None),
            vec![[1000.0, 1000.0], [2000.0, 1000.0]],
        );
        job.photos.push(Arc::new(photo));
        let mut app = App::new(job, Keeper::nowhere());
        app.send(Command::Go(Here::Photo(0)));
        app.surface.size.set((400.0, 300.0));
        app
    }

    fn send(app: &mut App, command: PhotoCommand) {
        app.send(Command::Photo(command));
    }

    fn drag(app: &mut App, from: (f32, f32), to: (f32, f32)) {
        app.touch(Touch::Down, from.0, from.1);
        app.touch(Touch::Move, to.0, to.1);
        app.touch(Touch::Up, to.0, to.1);
    }

    fn marks(app: &App) -> usize {
        app.job.photos[0].marks.len()
    }

    #[test]
    fn ends_snap_within_reach_are_shown_so_and_can_be_refused() {
        let mut app = app();
        send(&mut app, PhotoCommand::Tool(Tool::Dimension));
        let shown = app.shown(0, (400.0, 300.0)).unwrap();
        // 8 px beside an end of the other dimension.
        app.touch(Touch::Down, 108.0, 100.0);
        assert_eq!(app.snaps_now(0, &shown), Some([1000.0, 1000.0]));
        app.touch(Touch::Move, 108.0, 180.0);
        assert_eq!(app.snaps_now(0, &shown), None);
        app.touch(Touch::Up, 108.0, 180.0);
        assert_eq!(app.job.photos[0].marks[1].points[0], [1000.0, 1000.0]);
        app.pad = None;
        send(&mut app, PhotoCommand::Snaps(false));
        drag(&mut app, (108.0, 100.0), (108.0, 180.0));
        assert_eq!(app.job.photos[0].marks[2].points[0], [1080.0, 1000.0]);
    }

    /// Of a reference's corner a hair is much: it stays where the finger put it, and its old place does not hold it.
    #[test]
    fn a_corner_of_the_reference_snaps_by_a_hair_alone() {
        let mut app = app();
        send(&mut app, PhotoCommand::Tool(Tool::Flatten));
        for (x, y) in [
            (106.0, 100.0),
            (300.0, 100.0),
            (300.0, 241.0),
            (102.0, 241.0),
        ] {
            drag(&mut app, (x, y), (x, y));
        }
        app.pad = None;
        let corner = |app: &App, n: usize| app.job.photos[0].flat.as_ref().unwrap().corners[n];
        assert_eq!(corner(&app, 0), [1060.0, 1000.0]);
        // A finger that shifts the picture moves no corner; with its tool it does.
        drag(&mut app, (300.0, 241.0), (309.0, 241.0));
        assert_eq!(corner(&app, 2), [3000.0, 2410.0]);
        send(&mut app, PhotoCommand::Nearer(-8));
        send(&mut app, PhotoCommand::Tool(Tool::Flatten));
        drag(&mut app, (300.0, 241.0), (309.0, 241.0));
        assert_eq!(corner(&app, 2), [3090.0, 2410.0]);
        // A hair beside another mark's end it takes that, farther off it does not.
        send(&mut app, PhotoCommand::Tool(Tool::Edge));
        for x in [200.5, 202.0] {
            drag(&mut app, (x, 100.0), (x, 100.0));
        }
        assert_eq!(app.surface.draft, [[2000.0, 1000.0], [2020.0, 1000.0]]);
    }

    #[test]
    fn nudges_of_one_point_in_one_go_are_one_step_back() {
        let mut app = app();
        send(&mut app, PhotoCommand::Select(Some(1)));
        let point = |app: &App, n: usize| app.job.photos[0].marks[0].points[n];
        let steps = app.done.len();
        for _ in 0..8 {
            send(&mut app, PhotoCommand::Nudge(1, 0));
        }
        assert_eq!(point(&app, 0), [1080.0, 1000.0]);
        assert_eq!(app.done.len(), steps + 1);
        send(&mut app, PhotoCommand::NextPoint);
        send(&mut app, PhotoCommand::Nudge(0, 1));
        assert_eq!(app.done.len(), steps + 2);
        app.send(Command::Undo);
        app.send(Command::Undo);
        assert_eq!(point(&app, 0), [1000.0, 1000.0]);
        // After it was taken back a nudge is a step of its own.
        send(&mut app, PhotoCommand::Select(Some(1)));
        send(&mut app, PhotoCommand::Nudge(1, 0));
        assert_eq!(app.done.len(), steps + 1);
    }

    #[test]
    fn back_puts_the_tool_down_first_and_what_was_begun_waits() {
        let mut app = app();
        app.trail.push(Here::Photos);
        send(&mut app, PhotoCommand::Tool(Tool::Area));
        for (x, y) in [(50.0, 50.0), (90.0, 50.0)] {
            drag(&mut app, (x, y), (x, y));
        }
        app.send(Command::Back);
        assert_eq!(app.here, Here::Photo(0));
        assert_eq!(app.surface.tool, Tool::Look);
        send(&mut app, PhotoCommand::Tool(Tool::Area));
        assert_eq!(app.surface.draft.len(), 2);
        for (x, y) in [(90.0, 90.0), (50.0, 50.0)] {
            drag(&mut app, (x, y), (x, y));
        }
        assert_eq!(marks(&app), 2);
        app.send(Command::Back);
        app.send(Command::Back);
        assert_eq!(app.here, Here::Photos);
    }

    #[test]
    fn while_something_is_typed_a_finger_changes_nothing_on_the_picture() {
        let mut app = app();
        send(&mut app, PhotoCommand::Tool(Tool::Dimension));
        app.ask_for(0, 1, PhotoSlot::MarkNote(1));
        drag(&mut app, (20.0, 20.0), (200.0, 200.0));
        drag(&mut app, (100.0, 100.0), (120.0, 150.0));
        assert_eq!(marks(&app), 1);
        assert!(app.surface.draft.is_empty());
        assert_eq!(app.surface.picked, Some(1));
        assert!(app.pad.is_some());
    }
}
