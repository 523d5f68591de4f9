//! What is measured of a picture's reference: a rectangle by two lengths, or any four points by their sides.

use super::photo_change::slot;
use super::photo_page::command;
use super::{App, Chip, PhotoCommand, PhotoSlot, Row, Side, Slot};
use crate::geometry::{NoPlane, NoShape, distance};
use crate::measure::Length;
use crate::photo::{Flat, KnownBy, NoView, Object, Photo, Taped};

impl Side {
    /// The sides by the corner that they begin at, clockwise from the upper left one.
    const ROUND: [Side; 4] = [Side::Width, Side::Right, Side::Lower, Side::Height];

    /// What was taped of it.
    pub(super) fn of(self, flat: &Flat) -> Option<Taped> {
        match self {
            Side::Width => flat.width,
            Side::Height => flat.height,
            Side::Right => flat.sides.right,
            Side::Lower => flat.sides.lower,
            Side::Diagonal => flat.sides.diagonal,
        }
    }

    /// The same, to be filled in.
    pub(super) fn of_mut(self, flat: &mut Flat) -> &mut Option<Taped> {
        match self {
            Side::Width => &mut flat.width,
            Side::Height => &mut flat.height,
            Side::Right => &mut flat.sides.right,
            Side::Lower => &mut flat.sides.lower,
            Side::Diagonal => &mut flat.sides.diagonal,
        }
    }

    /// What it is called beside the picture.
    const fn name(self, by: KnownBy) -> &'static str {
        match (self, by) {
            (Side::Width, KnownBy::Rectangle) => "Width",
            (Side::Height, KnownBy::Rectangle) => "Height",
            (Side::Width, _) => "Upper side",
            (Side::Height, _) => "Left side",
            (Side::Right, _) => "Right side",
            (Side::Lower, _) => "Lower side",
            (Side::Diagonal, _) => "Upper left to lower right",
        }
    }

    /// Those that are asked for.
    const fn asked(by: KnownBy) -> &'static [Side] {
        match by {
            KnownBy::Rectangle => &[Side::Width, Side::Height],
            KnownBy::Corner => &[Side::Width, Side::Right, Side::Lower, Side::Height],
            KnownBy::Diagonal => &[
                Side::Width,
                Side::Right,
                Side::Lower,
                Side::Height,
                Side::Diagonal,
            ],
        }
    }
}

impl App {
    /// What the pad offers to be tapped.
    #[must_use]
    pub fn pad_choices(&self) -> Vec<Chip> {
        let Some(Slot::Photo(at, PhotoSlot::Known)) = self.pad.as_ref().map(|pad| &pad.slot) else {
            return Vec::new();
        };
        let flat = self
            .job
            .photos
            .get(*at)
            .and_then(|photo| photo.flat.as_ref());
        let chips = Object::ALL.map(|object| {
            let on = flat.is_some_and(|flat| flat.object == object && flat.width.is_some());
            Chip::new(
                object.name(),
                on,
                command(PhotoCommand::Object(*at, object)),
            )
        });
        chips.to_vec()
    }

    /// What the four corners belong to; the pad then asks for what is not the same everywhere.
    pub(super) fn choose_object(&mut self, at: usize, object: Object) {
        self.edit("", |job| {
            if let Some(flat) = job.photo_mut(at).and_then(|photo| photo.flat.as_mut()) {
                belongs_to(flat, object);
            }
        });
        self.pad = None;
        let photo = self.job.photos.get(at);
        let flat = photo.and_then(|photo| photo.flat.as_ref());
        let Some(flat) = flat.filter(|flat| flat.object == object) else {
            return;
        };
        let sides = Side::asked(flat.known_by());
        if let Some(side) = sides.iter().find(|side| side.of(flat).is_none()) {
            self.open_pad(Slot::Photo(at, PhotoSlot::Ref(*side)));
        }
    }

    /// By what the four corners are known, and the lengths that it takes.
    pub(super) fn side_rows(&self, at: usize, flat: &Flat) -> Vec<Row> {
        let by = flat.known_by();
        let mut rows = Vec::new();
        if flat.object == Object::Taped {
            rows.push(Row::choice(
                "",
                KnownBy::ALL.map(|way| {
                    let on = way == by;
                    Chip::new(way.name(), on, command(PhotoCommand::KnownBy(at, way)))
                }),
            ));
            rows.push(Row::Text(
                match by {
                KnownBy::Rectangle => "Taken as a rectangle: all four corners square.",
                KnownBy::Corner => "The upper left corner is taken as square, as built: within half a degree. A diagonal makes it surer.",
                KnownBy::Diagonal => "No corner has to be square.",
            }.into()));
        }
        for side in Side::asked(by) {
            let (label, taped) = (side.name(by), side.of(flat));
            rows.push(Row::yours(
                label,
                self.show_or_ask(taped.map(|taped| taped.length)),
                slot(at, PhotoSlot::Ref(*side)),
            ));
            if let Some(Taped { give, .. }) = taped {
                rows.push(Row::yours(
                    format!("{label}, more or less by"),
                    self.give(give),
                    slot(at, PhotoSlot::RefGive(*side)),
                ));
            }
        }
        if by == KnownBy::Rectangle {
            rows.push(Row::button(
                "It lies on its side: swap them",
                command(PhotoCommand::Upright(at)),
            ));
        }
        rows
    }

    /// Why the picture shows no plane to measure in, and what would mend it.
    pub(super) fn no_view(&self, photo: &Photo, why: NoView) -> String {
        let by = photo.flat.as_ref().map(Flat::known_by).unwrap_or_default();
        match why {
            NoView::NoReference => "Mark the corners of something of known size.".into(),
            NoView::NotSized => match by {
                KnownBy::Rectangle => {
                    "Say how wide and how high it is; then the wall is measured in."
                }
                KnownBy::Corner => "Tape its four sides; then the wall is measured in.",
                KnownBy::Diagonal => {
                    "Tape its four sides and the diagonal; then the wall is measured in."
                }
            }
            .into(),
            NoView::Plane(NoPlane::InLine) => {
                "Three of the corners lie in a line. Drag them onto the corners.".into()
            }
            NoView::Plane(NoPlane::NotRound) => {
                "The corners do not go round: two sides cross. Drag them apart.".into()
            }
            NoView::Plane(NoPlane::NoSize | NoPlane::NoShape(NoShape::NoLength)) => {
                "Its lengths have to be more than nothing.".into()
            }
            NoView::Plane(NoPlane::NoShape(why)) => self.no_shape(by, why),
        }
    }

    /// Which of the lengths do not go together.
    fn no_shape(&self, by: KnownBy, why: NoShape) -> String {
        let show = |metres: f64| self.show(Length::from_metres(metres).unwrap_or_default());
        let named = |side: usize| Side::ROUND[side % 4].name(by).to_lowercase();
        match why {
            NoShape::NoLength => String::new(),
            NoShape::Inward(corner) => {
                let name = ["upper left", "upper right", "lower right", "lower left"][corner % 4];
                format!(
                    "With these lengths the {name} corner would point inward or lie in a line with its neighbours. Measure again the sides beside it{}.",
                    if by == KnownBy::Diagonal {
                        ", and the diagonal"
                    } else {
                        ""
                    }
                )
            }
            NoShape::Open {
                first_to_third,
                span,
                sides: [one, other],
                lengths: [long, short],
            } => {
                let over = if first_to_third {
                    format!("the diagonal of {}", show(span))
                } else {
                    format!(
                        "the {} from upper right to lower left that upper and left side leave",
                        show(span)
                    )
                };
                let most = long.max(short);
                let why = if span >= long + short {
                    format!("they reach {} together", show(long + short))
                } else {
                    format!(
                        "one of {} is longer than the rest together",
                        show(most.max(span))
                    )
                };
                format!(
                    "The {} of {} and the {} of {} do not close over {over}: {why}. Measure these again.",
                    named(one),
                    show(long),
                    named(other),
                    show(short)
                )
            }
        }
    }
}

/// A reference as something else: a sheet of paper lies as its corners do, and leaves its size to nothing else.
fn belongs_to(flat: &mut Flat, object: Object) {
    let side = |a: usize, b: usize| distance(flat.corners[a], flat.corners[b]);
    let lies = side(0, 1) + side(3, 2) > side(0, 3) + side(1, 2);
    if let Some((short, long)) = object.size() {
        let (width, height) = if lies { (long, short) } else { (short, long) };
        (flat.width, flat.height) = (Some(width), Some(height));
    } else if flat.object.size().is_some() {
        (flat.width, flat.height) = (None, None);
    }
    flat.object = object;
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::{Command, Here, Keeper, Tool, Touch};
    use crate::measure::Units;
    use crate::takeoff::Job;

    fn app() -> App {
        let when = chrono::DateTime::UNIX_EPOCH.fixed_offset();
        let mut job = Job::new("Cabin", when, Units::Millimetres);
        let photo = Photo::new("a.jpg".into(), (4000, 3000), when);
        job.photos.push(std::sync::Arc::new(photo));
        let mut app = App::new(job, Keeper::nowhere());
        app.send(Command::Go(Here::Photo(0)));
        app.surface.size.set((400.0, 300.0));
        app
    }

    fn tap(app: &mut App, x: f32, y: f32) {
        app.touch(Touch::Down, x, y);
        app.touch(Touch::Up, x, y);
    }

    /// A sheet that lies: 297 by 210 in the picture 200 by 141.
    fn corners(app: &mut App) {
        app.send(Command::Photo(PhotoCommand::Tool(Tool::Flatten)));
        for (x, y) in [
            (100.0, 100.0),
            (300.0, 100.0),
            (300.0, 241.0),
            (100.0, 241.0),
        ] {
            tap(app, x, y);
        }
    }

    #[test]
    fn after_the_fourth_corner_it_is_asked_what_it_is_and_then_how_large() {
        let mut app = app();
        corners(&mut app);
        let asks = |app: &App| {
            app.pad
                .as_ref()
                .map_or(String::new(), |pad| pad.asks.clone())
        };
        assert_eq!(asks(&app), "What are these the corners of?");
        let names: Vec<String> = app
            .pad_choices()
            .into_iter()
            .map(|chip| chip.label)
            .collect();
        assert_eq!(names.len(), 6, "{names:?}");
        let chosen = |app: &mut App, n: usize| {
            let command = app.pad_choices()[n].command.clone();
            app.send(command);
        };
        // A door: width, then height, and the plane is there.
        chosen(&mut app, 1);
        for (asked, typed) in [("Its width", "762"), ("Its height", "2032")] {
            assert_eq!(asks(&app), asked);
            app.pad.as_mut().unwrap().typed = typed.into();
            app.take();
        }
        assert_eq!(asks(&app), "");
        assert!(app.job.photos[0].view().is_ok());
        // Corners tapped anew keep the size and ask nothing.
        corners(&mut app);
        assert_eq!(asks(&app), "");
    }

    #[test]
    fn paper_is_taken_as_it_lies_and_leaves_its_size_to_nothing_else() {
        let mut app = app();
        corners(&mut app);
        app.send(Command::Photo(PhotoCommand::Object(0, Object::A4)));
        assert!(app.pad.is_none());
        let width = |app: &App| app.job.photos[0].flat.as_ref().unwrap().width;
        assert_eq!(width(&app).map(|taped| taped.length), Some(Length::mm(297)));
        app.send(Command::Photo(PhotoCommand::Object(0, Object::Tile)));
        assert_eq!(width(&app), None);
        assert!(app.pad.is_some());
    }
}
