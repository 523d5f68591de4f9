//! What is measured of a picture's reference: a rectangle by two lengths, or any four points by their sides.

use super::photo_change::slot;
use super::photo_page::command;
use super::{App, Chip, PhotoCommand, PhotoSlot, Row, Side};
use crate::geometry::{NoPlane, NoShape};
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
