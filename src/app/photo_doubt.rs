//! A length typed on a picture that can hardly be: beyond what is common, or against the picture itself; asked about once.

use super::doubt::Doubt;
use super::{App, PhotoSlot};
use crate::measure::{Length, Units, read};
use crate::photo::{Photo, Taped};
use crate::site::taken_for;

/// The least and the most that a length on a picture commonly is; common practice, no published source.
fn common(field: PhotoSlot) -> Option<(Length, Length)> {
    let inches = Length::inches;
    Some(match field {
        PhotoSlot::Length(_) => (Length::in_64(0, 4), inches(720)),
        PhotoSlot::Ref(_) => (inches(1), inches(240)),
        PhotoSlot::Width(_) => (Length::in_64(0, 4), inches(48)),
        PhotoSlot::Depth(_) => (Length::ZERO, inches(36)),
        PhotoSlot::FromLeft(_) | PhotoSlot::AnchorLeft => (Length::ZERO, inches(720)),
        PhotoSlot::Up(_) | PhotoSlot::AnchorUp => (Length::ZERO, inches(240)),
        PhotoSlot::Give(_) | PhotoSlot::DepthGive(_) | PhotoSlot::RefGive(_) => {
            (Length::ZERO, inches(6))
        }
        PhotoSlot::Clear => (Length::ZERO, inches(24)),
        _ => return None,
    })
}

impl App {
    /// Why a length is asked about before it stands on a picture.
    ///
    /// A dimension is where it contradicts the picture and the other tapes on it; any length where it lies outside what is
    /// common. A number without a unit that fits in another unit is offered in that.
    pub(super) fn photo_doubt(
        &self,
        at: usize,
        field: PhotoSlot,
        typed: &str,
        length: Length,
    ) -> Option<Doubt> {
        let says = match field {
            PhotoSlot::Length(number) => self.job.photos.get(at).and_then(|photo| {
                let stands = photo.mark(number)?;
                photo.contradicted(number, super::photo_change::retaped_of(stands, length))
            }),
            _ => None,
        };
        let (least, most) = common(field)?;
        let fits = |length: Length| match says {
            Some(says) => (length - says.length).abs() <= says.give,
            None => length >= least && length <= most,
        };
        if says.is_none() && fits(length) {
            return None;
        }
        let other = self.in_another_unit(typed, fits);
        let mut text = match says {
            Some(says) => format!("{}.", self.against(length, says)),
            None => format!(
                "{} is very {} here: commonly it is {} to {}.",
                self.show(length),
                if length < least { "little" } else { "much" },
                self.show(least),
                self.show(most)
            ),
        };
        if let Some((text_of, is)) = other {
            text.push_str(&format!(
                " Is it {text_of}, {}? Enter takes that; to keep {}, type it again.",
                self.show(is),
                self.show(length)
            ));
            return Some(Doubt {
                text,
                instead: Some(text_of),
            });
        }
        let misread = says.and_then(|says| self.misread(length, says));
        text.push_str(&misread.unwrap_or_default());
        text.push_str(if says.is_some() {
            " Read the tape again; Enter once more keeps it."
        } else {
            " Enter once more keeps it."
        });
        Some(Doubt {
            text,
            instead: None,
        })
    }

    /// A number typed without a unit, in the unit in which it fits.
    fn in_another_unit(
        &self,
        typed: &str,
        fits: impl Fn(Length) -> bool,
    ) -> Option<(String, Length)> {
        typed.parse::<f64>().ok()?;
        ["mm", "in", "cm", "ft", "m"].into_iter().find_map(|unit| {
            let text = format!("{typed} {unit}");
            let is = read::length(&text, self.job.units).ok()?;
            fits(is).then_some((text, is))
        })
    }

    /// A tape against a picture, and by how much.
    fn against(&self, read: Length, says: Taped) -> String {
        let give = says.give.metres().max(1e-6);
        let times = (read - says.length).metres().abs() / give;
        let times = if times < 10.0 {
            format!("{times:.1}")
        } else {
            format!("{times:.0}")
        };
        format!(
            "The picture says {} ±{}, the tape {}: {times} times its ± off",
            self.near(says.length),
            self.give(says.give),
            self.show(read)
        )
    }

    /// What the tape may have shown instead.
    fn misread(&self, read: Length, says: Taped) -> Option<String> {
        let (instead, _) = taken_for(read, says.length, says.give, self.job.units)?;
        Some(format!(
            " Did you read {} for {}?",
            self.on_the_tape(read),
            self.on_the_tape(instead)
        ))
    }

    /// A length as it stands along a tape: inches run on past the foot.
    pub(super) fn on_the_tape(&self, length: Length) -> String {
        let whole = length.in_inches().floor() as i64;
        match self.job.units {
            Units::FeetInches { .. } if (12..=300).contains(&whole) => {
                let rest = self.show(length - Length::inches(whole));
                let rest = rest.strip_prefix('0').unwrap_or(&rest);
                format!("{whole}{rest}")
            }
            _ => self.show(length),
        }
    }

    /// What is said of a tape that contradicts its picture, where it stands.
    pub(super) fn contradiction(
        &self,
        photo: &Photo,
        number: u32,
        says: Taped,
        alone: bool,
    ) -> String {
        let taped = super::photo_change::taped(photo.mark(number));
        let read = taped.map_or(Length::ZERO, |taped| taped.length);
        let look = if alone {
            " Read it again; if it is right, look whether it lies in the plane of the wall and whether the reference's size is right."
        } else {
            " The other tapes agree with the picture, so read this one again."
        };
        format!(
            "{}. It stands as you read it, and nothing else is measured by it.{}{look}",
            self.against(read, says),
            self.misread(read, says).unwrap_or_default()
        )
    }
}

#[cfg(test)]
mod tests {
    use crate::app::{App, Command, Here, Keeper, PhotoSlot, Row, Slot};
    use crate::measure::{Length, Units};
    use crate::photo::{Flat, Object, Photo, Taped, What};
    use crate::takeoff::Job;

    /// A door of 36 by 80 in seen square on, 25 px an inch, and a dimension of 34 1/2 in on it.
    fn app() -> (App, u32) {
        let when = chrono::DateTime::UNIX_EPOCH.fixed_offset();
        let mut job = Job::new("Cabin", when, Units::FeetInches { marks: 16 });
        let mut photo = Photo::new("a.jpg".into(), (4000, 3000), when);
        let corner = |x: f64, y: f64| [1000.0 + 25.0 * x, 500.0 + 25.0 * y];
        let mut flat = Flat::new(
            [
                corner(0.0, 0.0),
                corner(36.0, 0.0),
                corner(36.0, 80.0),
                corner(0.0, 80.0),
            ],
            Object::Door,
        );
        flat.width = Some(Taped::read(Length::inches(36)));
        flat.height = Some(Taped::read(Length::inches(80)));
        photo.flat = Some(flat);
        let number = photo.add_mark(
            What::Dimension(None),
            vec![corner(2.0, 10.0), corner(2.0, 44.5)],
        );
        photo.add_mark(
            What::Dimension(None),
            vec![corner(4.0, 10.0), corner(30.0, 30.0)],
        );
        job.photos.push(std::sync::Arc::new(photo));
        let mut app = App::new(job, Keeper::nowhere());
        app.send(Command::Go(Here::Photo(0)));
        (app, number)
    }

    fn type_in(app: &mut App, field: PhotoSlot, typed: &str) -> String {
        app.send(Command::Pad(Slot::Photo(0, field)));
        enter(app, typed)
    }
    fn enter(app: &mut App, typed: &str) -> String {
        if let Some(pad) = &mut app.pad {
            pad.typed = typed.into();
            pad.fresh = false;
        }
        app.take();
        app.pad
            .as_ref()
            .map_or_else(String::new, |pad| pad.wrong.clone())
    }
    fn cautions(app: &App) -> Vec<String> {
        let rows = app.screen().rows.into_iter();
        rows.filter_map(|row| match row {
            Row::Note { text, .. } => Some(text),
            _ => None,
        })
        .collect()
    }

    #[test]
    fn a_tape_against_the_picture_is_asked_about_at_once_and_kept_if_typed_again() {
        let (mut app, number) = app();
        let other = |app: &App| app.job.photos[0].figure(2, app.view_of(0).as_deref());
        let before = other(&app);
        let wrong = type_in(&mut app, PhotoSlot::Length(number), "43 1/2");
        let plain = crate::measure::plain(&wrong);
        assert!(plain.contains("The picture says 2' 10 1/2"), "{plain}");
        assert!(plain.contains("times its ± off"), "{plain}");
        let read = plain.contains("Did you read 43 1/2\" for 34 1/2\"?");
        assert!(read, "{plain}");
        assert!(matches!(
            app.job.photos[0].mark(number).unwrap().what,
            What::Dimension(None)
        ));
        // Once more keeps it; it is named as what fits least, and the other figure is as it was.
        assert_eq!(enter(&mut app, "43 1/2"), "");
        app.pad = None;
        assert!(matches!(
            app.job.photos[0].mark(number).unwrap().what,
            What::Dimension(Some(Taped { length, .. })) if length == Length::in_64(43, 32)
        ));
        assert_eq!(other(&app), before);
        let said = cautions(&app);
        assert!(
            said.iter()
                .any(|text| text.contains("nothing else is measured by it")),
            "{said:?}"
        );
        // A tape that agrees is taken at once, and makes the caution go.
        app.send(Command::Undo);
        assert_eq!(type_in(&mut app, PhotoSlot::Length(number), "34 9/16"), "");
        let said = cautions(&app);
        assert!(
            !said.iter().any(|text| text.contains("times its ±")),
            "{said:?}"
        );
        assert_ne!(other(&app), before);
    }

    #[test]
    fn a_length_that_can_hardly_be_is_asked_about() {
        let (mut app, number) = app();
        for (field, typed, wanted) in [
            (PhotoSlot::Length(number), "9999'", "The picture says"),
            (PhotoSlot::Depth(number), "500", "very much here"),
            (PhotoSlot::Give(number), "30", "very much here"),
            (
                PhotoSlot::Ref(super::super::Side::Width),
                "9999'",
                "very much here",
            ),
            (PhotoSlot::Length(number), "876", "Is it 876 mm"),
        ] {
            let wrong = type_in(&mut app, field, typed);
            assert!(wrong.contains(wanted), "{typed}: {wrong}");
        }
        // Without a plane too.
        app.pad = None;
        app.edit("", |job| {
            std::sync::Arc::make_mut(&mut job.photos[0]).flat = None;
        });
        let wrong = type_in(&mut app, PhotoSlot::Length(number), "9999'");
        assert!(wrong.contains("very much here"), "{wrong}");
    }
}
