//! Beside a picture: what tells the scale of its plane, what is doubtful about it, and where it is on its wall.

use super::photo_change::slot;
use super::photo_page::{command, name, note};
use super::{App, Chip, PhotoCommand, PhotoSlot, Row, Tone, Tool};
use crate::photo::{Doubt, Object, Photo};

impl App {
    /// What tells the scale of the plane, and what is doubtful about it.
    pub(super) fn flat_rows(&self, at: usize, photo: &Photo) -> Vec<Row> {
        let Some(flat) = &photo.flat else {
            return Vec::new();
        };
        let mut rows = vec![Row::Heading("Flattened by".into())];
        let asked = flat.width.is_none() || flat.height.is_none();
        rows.push(Row::choice(
            if asked {
                "Say what it is, or how large"
            } else {
                ""
            },
            Object::ALL.map(|object| {
                Chip::new(
                    object.name(),
                    flat.object == object,
                    command(PhotoCommand::Object(at, object)),
                )
            }),
        ));
        rows.extend(self.side_rows(at, flat));
        match photo.view() {
            Err(why) => rows.push(note(Tone::Caution, self.no_view(photo, why))),
            Ok(view) => {
                rows.extend(
                    photo
                        .doubts(&view)
                        .into_iter()
                        // A tape that contradicts the picture is said where it stands, above.
                        .filter(|doubt| !matches!(doubt, Doubt::Disagrees { .. }))
                        .map(|doubt| note(Tone::Caution, self.doubt(photo, doubt))),
                );
                let on = self.surface.flat;
                rows.push(Row::choice(
                    "",
                    [
                        Chip::new("As it was taken", !on, command(PhotoCommand::Flat(false))),
                        Chip::new("Laid flat", on, command(PhotoCommand::Flat(true))),
                    ],
                ));
            }
        }
        let edges = match flat.edges.len() {
            0 => "Lens: mark three straight edges to take its bend out.".to_owned(),
            n @ 1..=2 => format!("Lens: {n} of 3 straight edges."),
            _ => format!(
                "Lens: bend {:+.2} % at the corners, from {} edges.",
                self.bend_percent(photo),
                flat.edges.len()
            ),
        };
        rows.push(Row::Text(edges));
        let mut chips = vec![Chip::new(
            "Mark a straight edge",
            self.surface.tool == Tool::Edge,
            command(PhotoCommand::Tool(Tool::Edge)),
        )];
        if !flat.edges.is_empty() {
            chips.push(Chip::new(
                "Forget the edges",
                false,
                command(PhotoCommand::ForgetEdges(at)),
            ));
        }
        chips.push(Chip::new(
            "Forget the reference",
            false,
            command(PhotoCommand::ForgetFlat(at)),
        ));
        rows.push(Row::choice("", chips));
        rows.extend(self.anchor_rows(at, photo));
        rows
    }

    fn bend_percent(&self, photo: &Photo) -> f64 {
        photo.lens().lens.bend * 100.0
    }

    /// Where the plane is on its wall.
    fn anchor_rows(&self, at: usize, photo: &Photo) -> Vec<Row> {
        let mut rows = vec![Row::Heading("On the wall".into())];
        let Some(anchor) = photo.anchor else {
            rows.push(Row::Text("Mark one place whose distance from the left corner and the floor you know; then everything in the picture has its place on the wall.".into()));
            rows.push(Row::button(
                "Mark that place",
                command(PhotoCommand::Tool(Tool::Anchor)),
            ));
            return rows;
        };
        rows.push(Row::yours(
            "Left corner to that place",
            self.show_or_ask(anchor.from_left),
            slot(at, PhotoSlot::AnchorLeft),
        ));
        rows.push(Row::yours(
            "Floor to that place",
            self.show_or_ask(anchor.up),
            slot(at, PhotoSlot::AnchorUp),
        ));
        rows.push(Row::button(
            "Mark another place",
            command(PhotoCommand::Tool(Tool::Anchor)),
        ));
        let ready = photo.wall.is_some()
            && photo.view().is_ok()
            && anchor.from_left.is_some()
            && anchor.up.is_some();
        if ready {
            let what = PhotoCommand::Lay(at, !photo.laid);
            let label = if photo.laid {
                "Take it off the wall's elevation"
            } else {
                "Lay it into the wall's elevation"
            };
            rows.push(Row::button(label, command(what)));
        }
        rows.extend(self.pin_rows(at, photo, None));
        rows
    }

    fn doubt(&self, photo: &Photo, doubt: Doubt) -> String {
        let of = |number: u32| photo.mark(number).map(name).unwrap_or_default();
        match doubt {
            Doubt::Small(pixels) => format!(
                "The reference is small in the picture: {pixels:.0} pixels on its short side. Mark something larger, or take the picture from nearer."
            ),
            Doubt::Oblique(tilt) => format!(
                "The wall is seen at a slant of {tilt:.0}°. Take the picture more from the front."
            ),
            Doubt::Beyond { number } => format!(
                "{} reaches farther from the reference than the reference is long, so its ± is wide. Mark a larger reference or put a tape on something near it.",
                of(number)
            ),
            Doubt::Disagrees {
                number,
                says,
                alone,
            } => self.contradiction(photo, number, says, alone),
            Doubt::EdgesTellLittle(_) => "The straight edges tell little of the lens. Mark long ones near the rim of the picture.".into(),
        }
    }
}
