//! What commands of pictures change, and what the pad fills in there.

use std::sync::Arc;

use super::activity::Wish;
use super::fill::Value;
use super::{App, Command, Here, Kind, PhotoCommand, PhotoSlot, Side, Slot, Tool};
use crate::measure::quantity::{in_square_feet, in_square_metres, square_feet, square_metres};
use crate::measure::{Angle, Figures, Length, Rounding};
use crate::photo::{Behind, Mark, Photo, Taped, What};
use crate::site::Id;
use crate::takeoff::Job;

impl App {
    /// What a tap on a picture or the log asks for.
    pub(super) fn photo_command(&mut self, command: PhotoCommand) {
        match command {
            PhotoCommand::Take(files) => self.take_pictures(&files),
            // These need the window, or another program; whoever owns the window does them.
            PhotoCommand::PickFolder | PhotoCommand::Paste => {}
            PhotoCommand::Pick => {
                self.ask_activity(Wish::Pictures);
            }
            PhotoCommand::Snap => self.snap(),
            PhotoCommand::Viewfinder => self.open_viewfinder(),
            PhotoCommand::Shutter => self.shutter(),
            PhotoCommand::Stop => self.stop_taking(),
            PhotoCommand::Seen => self.not_taken.clear(),
            PhotoCommand::Filter(filter) => self.log_filter = filter,
            PhotoCommand::Beside(on) => {
                self.surface.take(Tool::Look);
                self.surface.beside = on;
            }
            PhotoCommand::Tool(tool) => {
                self.said.clear();
                self.surface.take(tool);
                // What it asks stands at the top.
                self.top = self.top.wrapping_add(1);
            }
            PhotoCommand::Select(mark) => {
                (self.surface.picked, self.surface.point) = (mark, 0);
                self.surface.tool = Tool::Look;
            }
            PhotoCommand::Snaps(on) => self.surface.loose = !on,
            PhotoCommand::NextPoint => {
                let points = self
                    .picked()
                    .map_or(1, |(_, mark)| mark.points.len().max(1));
                self.surface.point = (self.surface.point + 1) % points;
            }
            PhotoCommand::Nudge(across, down) => self.nudge_mark(across, down),
            PhotoCommand::Done => {
                if let Here::Photo(at) = self.here {
                    self.finish_drawing(at);
                }
            }
            PhotoCommand::Drop => self.surface.drop_begun(),
            PhotoCommand::Flat(flat) => {
                self.surface.reset();
                self.surface.flat = flat;
            }
            PhotoCommand::Nearer(steps) => {
                self.surface.nearer(1.4_f64.powi(steps.clamp(-8, 8)), None);
            }
            PhotoCommand::Pin(at, number) => self.pin(at, Some(number)),
            PhotoCommand::PinAll(at) => self.pin(at, None),
            PhotoCommand::Lay(at, laid) => self.lay_photo(at, laid),
            PhotoCommand::Export(at, png, large) => self.export_photo(at, png, large),
            PhotoCommand::Trace(at, number) => self.trace(at, number),
            PhotoCommand::TapedTrace(task) => self.taped_trace(task),
            PhotoCommand::TileTrace(at, number) => self.tile_trace(at, number),
            PhotoCommand::OpenTrace(at, number, kind) => self.open_trace(at, number, kind),
            PhotoCommand::Remove(at) => self.remove_photo(at),
            PhotoCommand::Object(at, object) => self.choose_object(at, object),
            other => self.edit("", |job| change(job, other)),
        }
    }

    fn remove_photo(&mut self, at: usize) {
        let removed = self.edited("Picture taken off the log", |job| {
            if at < job.photos.len() {
                let id = job.photos.remove(at).id;
                for photo in &mut job.photos {
                    if photo.before == Some(id) {
                        Arc::make_mut(photo).before = None;
                    }
                }
            }
        });
        if removed {
            self.trail.clear();
            self.here = Here::Photos;
        }
    }

    /// What a field of a picture reads, and what stands there now.
    pub(super) fn photo_stands(&self, at: usize, field: PhotoSlot) -> (Kind, String) {
        let units = self.job.units;
        let length = |length: Option<Length>| {
            let plain = length.map(|l| units.length(l, Rounding::Nearest, Figures::Plain));
            (Kind::Length, plain.unwrap_or_default())
        };
        let number = |unit: &'static str, value: Option<f64>| {
            let text = value.map(|value| format!("{}", (value * 1e4).round() / 1e4));
            (Kind::Number(unit), text.unwrap_or_default())
        };
        let words = |text: &str| (Kind::Words, text.to_owned());
        match field {
            PhotoSlot::Search => return words(&self.log_filter.words),
            PhotoSlot::Camera => return words(self.keeper.camera()),
            PhotoSlot::Watched => {
                let watched = self.keeper.watched();
                return words(&watched.map_or_else(String::new, |p| p.display().to_string()));
            }
            PhotoSlot::Clear => return length(Some(self.keeper.clear())),
            PhotoSlot::Known => return (Kind::Choice, String::new()),
            _ => {}
        }
        let Some(photo) = self.job.photos.get(at) else {
            return words("");
        };
        let taped = |mark: u32| taped(photo.mark(mark));
        let behind = |mark: u32| behind(photo.mark(mark));
        let flat = photo.flat.as_ref();
        let area = |area: f64| {
            let area = square_metres(area);
            if units.is_metric() {
                in_square_metres(area)
            } else {
                in_square_feet(area)
            }
        };
        let foot = if units.is_metric() { "m²" } else { "ft²" };
        match field {
            PhotoSlot::Title => words(&photo.title),
            PhotoSlot::Note => words(&photo.note),
            PhotoSlot::MarkNote(mark) => words(photo.mark(mark).map_or("", |mark| &mark.note)),
            PhotoSlot::Length(mark) => length(taped(mark).map(|taped| taped.length)),
            PhotoSlot::Give(mark) => length(taped(mark).map(|taped| taped.give)),
            PhotoSlot::Angle(mark) => {
                number("°", angle(photo.mark(mark)).map(|(a, _)| a.in_degrees()))
            }
            PhotoSlot::AngleGive(mark) => number(
                "°",
                angle(photo.mark(mark)).map(|(_, give)| give.in_degrees()),
            ),
            PhotoSlot::Area(mark) => {
                number(foot, read_area(photo.mark(mark)).map(|(a, _)| area(a)))
            }
            PhotoSlot::AreaGive(mark) => number(
                foot,
                read_area(photo.mark(mark)).map(|(_, give)| area(give)),
            ),
            PhotoSlot::Depth(mark) => length(behind(mark).and_then(|b| b.depth).map(|d| d.length)),
            PhotoSlot::DepthGive(mark) => {
                length(behind(mark).and_then(|b| b.depth).map(|d| d.give))
            }
            PhotoSlot::Width(mark) => length(behind(mark).and_then(|b| b.width)),
            PhotoSlot::Material(mark) => words(behind(mark).map_or("", |b| &b.material)),
            PhotoSlot::FromLeft(mark) => length(behind(mark).and_then(|b| b.at).map(|at| at[0])),
            PhotoSlot::Up(mark) => length(behind(mark).and_then(|b| b.at).map(|at| at[1])),
            PhotoSlot::Ref(side) => length(flat.and_then(|f| side.of(f)).map(|t| t.length)),
            PhotoSlot::RefGive(side) => length(flat.and_then(|f| side.of(f)).map(|t| t.give)),
            PhotoSlot::AnchorLeft => length(photo.anchor.and_then(|a| a.from_left)),
            PhotoSlot::AnchorUp => length(photo.anchor.and_then(|a| a.up)),
            PhotoSlot::Search
            | PhotoSlot::Camera
            | PhotoSlot::Watched
            | PhotoSlot::Clear
            | PhotoSlot::Known => words(""),
        }
    }

    /// What the pad read into a picture, the log or the settings; or why it cannot stand there.
    pub(super) fn fill_photo(
        &mut self,
        at: usize,
        field: PhotoSlot,
        value: Value,
        typed: (String, String),
    ) -> Result<(), String> {
        match (field, &value) {
            (PhotoSlot::Search, Value::Words(words)) => {
                self.log_filter.words.clone_from(words);
                return Ok(());
            }
            (PhotoSlot::Camera, Value::Words(command)) => return self.set_camera(command),
            (PhotoSlot::Watched, Value::Words(folder)) => return self.set_watched(folder),
            (PhotoSlot::Clear, Value::Length(length)) => {
                return self.keeper.set_clear(length.abs());
            }
            _ => {}
        }
        let metric = self.job.units.is_metric();
        let mut job = self.job.clone();
        if let Value::Length(length) = value {
            job.add_to_roll(typed.0, typed.1, length);
        }
        let photo = job
            .photo_mut(at)
            .ok_or("That picture is no longer in the log.")?;
        match value {
            Value::Length(length) => fill_length(photo, field, length)?,
            Value::Number(number) => fill_number(photo, field, number, metric)?,
            Value::Words(text) => fill_words(photo, field, text),
            Value::Angle(_) | Value::Price(_) => {}
        }
        self.edit("", |open| *open = job);
        Ok(())
    }
}

fn change(job: &mut Job, command: PhotoCommand) {
    let mut with = |at: usize, change: &dyn Fn(&mut Photo)| {
        if let Some(photo) = job.photo_mut(at) {
            change(photo);
        }
    };
    match command {
        PhotoCommand::Stage(at, stage) => with(at, &|photo| photo.stage = stage),
        PhotoCommand::Room(at, room) => with(at, &|photo| {
            if photo.room != room {
                photo.wall = None;
            }
            photo.room = room;
        }),
        PhotoCommand::Wall(at, wall) => with(at, &|photo| photo.wall = wall),
        PhotoCommand::Before(at, before) => with(at, &|photo| photo.before = before),
        PhotoCommand::SharePlace(at, shared) => with(at, &|photo| photo.place_shared = shared),
        PhotoCommand::RemoveMark(at, number) => {
            with(at, &|photo| {
                photo.marks.retain(|mark| mark.number != number);
            });
        }
        PhotoCommand::Untape(at, number) => with(at, &|photo| {
            if let Some(mark) = photo.mark_mut(number) {
                mark.what = match &mark.what {
                    What::Dimension(_) => What::Dimension(None),
                    What::Angle(_) => What::Angle(None),
                    What::Area(_) => What::Area(None),
                    other => other.clone(),
                };
            }
        }),
        PhotoCommand::Kind(at, number, kind) => with(at, &|photo| {
            if let Some(behind) = behind_mut(photo, number) {
                behind.kind = kind;
            }
        }),
        PhotoCommand::KnownBy(at, by) => with(at, &|photo| {
            if let Some(flat) = &mut photo.flat {
                flat.sides.by = by;
            }
        }),
        PhotoCommand::Upright(at) => with(at, &|photo| {
            if let Some(flat) = &mut photo.flat {
                std::mem::swap(&mut flat.width, &mut flat.height);
            }
        }),
        PhotoCommand::ForgetFlat(at) => with(at, &|photo| photo.flat = None),
        PhotoCommand::ForgetEdges(at) => with(at, &|photo| {
            if let Some(flat) = &mut photo.flat {
                flat.edges.clear();
            }
        }),
        _ => {}
    }
}

pub(super) fn taped(mark: Option<&Mark>) -> Option<Taped> {
    match mark?.what {
        What::Dimension(taped) => taped,
        _ => None,
    }
}
fn angle(mark: Option<&Mark>) -> Option<(Angle, Angle)> {
    match mark?.what {
        What::Angle(read) => read,
        _ => None,
    }
}
fn read_area(mark: Option<&Mark>) -> Option<(f64, f64)> {
    match mark?.what {
        What::Area(read) => read,
        _ => None,
    }
}
fn behind(mark: Option<&Mark>) -> Option<&Behind> {
    match &mark?.what {
        What::Hidden(behind) => Some(behind),
        _ => None,
    }
}
fn behind_mut(photo: &mut Photo, number: u32) -> Option<&mut Behind> {
    match &mut photo.mark_mut(number)?.what {
        What::Hidden(behind) => Some(behind),
        _ => None,
    }
}

const MORE: &str = "This has to be more than nothing. Measure it again.";

fn more(length: Length) -> Result<Length, String> {
    if length.is_positive() {
        Ok(length)
    } else {
        Err(MORE.to_owned())
    }
}
fn not_less(length: Length) -> Result<Length, String> {
    if length < Length::ZERO {
        Err("A ± is nothing or more.".to_owned())
    } else {
        Ok(length)
    }
}

/// A length on a mark, with the ± that stood there.
pub(super) fn retaped_of(mark: &Mark, length: Length) -> Taped {
    Taped {
        length,
        give: taped(Some(mark)).map_or(Taped::read(length).give, |old| old.give),
    }
}

/// A length with the ± that stood there.
fn retaped(old: Option<Taped>, length: Length) -> Option<Taped> {
    let give = old.map_or(Taped::read(length).give, |old| old.give);
    Some(Taped { length, give })
}
fn regiven(old: &mut Option<Taped>, give: Length) -> Result<(), String> {
    let old = old.as_mut().ok_or("Give the length first, then its ±.")?;
    old.give = not_less(give)?;
    Ok(())
}

fn fill_length(photo: &mut Photo, field: PhotoSlot, length: Length) -> Result<(), String> {
    match field {
        PhotoSlot::Length(number) | PhotoSlot::Give(number) => {
            let Some(What::Dimension(taped)) = photo.mark_mut(number).map(|mark| &mut mark.what)
            else {
                return Ok(());
            };
            if matches!(field, PhotoSlot::Give(_)) {
                return regiven(taped, length);
            }
            *taped = retaped(*taped, more(length)?);
        }
        PhotoSlot::Depth(number)
        | PhotoSlot::DepthGive(number)
        | PhotoSlot::Width(number)
        | PhotoSlot::FromLeft(number)
        | PhotoSlot::Up(number) => {
            let Some(behind) = behind_mut(photo, number) else {
                return Ok(());
            };
            match field {
                PhotoSlot::Depth(_) => behind.depth = retaped(behind.depth, not_less(length)?),
                PhotoSlot::DepthGive(_) => regiven(&mut behind.depth, length)?,
                PhotoSlot::Width(_) => behind.width = Some(more(length)?),
                PhotoSlot::FromLeft(_) => {
                    behind.at = Some([length, behind.at.map_or(Length::ZERO, |at| at[1])]);
                }
                _ => behind.at = Some([behind.at.map_or(Length::ZERO, |at| at[0]), length]),
            }
        }
        PhotoSlot::Ref(side) | PhotoSlot::RefGive(side) => {
            let no_flat = "Mark the corners of something of known size first.";
            let taped = side.of_mut(photo.flat.as_mut().ok_or(no_flat)?);
            if matches!(field, PhotoSlot::RefGive(_)) {
                return regiven(taped, length);
            }
            *taped = retaped(*taped, more(length)?);
        }
        PhotoSlot::AnchorLeft | PhotoSlot::AnchorUp => {
            let anchor = photo.anchor.as_mut();
            let anchor = anchor.ok_or("Mark a place whose position you know first.")?;
            if field == PhotoSlot::AnchorLeft {
                anchor.from_left = Some(length);
            } else {
                anchor.up = Some(length);
            }
        }
        _ => {}
    }
    Ok(())
}

fn fill_number(
    photo: &mut Photo,
    field: PhotoSlot,
    number: f64,
    metric: bool,
) -> Result<(), String> {
    let micro = |degrees: f64| Angle::microdegrees((degrees * 1e6).round() as i64);
    let area = |number: f64| {
        in_square_metres(if metric {
            square_metres(number)
        } else {
            square_feet(number)
        })
    };
    let what = |photo: &mut Photo, mark: u32| photo.mark(mark).map(|mark| mark.what.clone());
    let now = match field {
        PhotoSlot::Angle(mark) => {
            if number > 180.0 {
                return Err("An angle between two legs is at most 180°.".to_owned());
            }
            let give =
                angle(photo.mark(mark)).map_or(Angle::microdegrees(500_000), |(_, give)| give);
            Some((mark, What::Angle(Some((micro(number), give)))))
        }
        PhotoSlot::AngleGive(mark) => {
            let (angle, _) = angle(photo.mark(mark)).ok_or("Give the angle first, then its ±.")?;
            Some((mark, What::Angle(Some((angle, micro(number.min(180.0)))))))
        }
        PhotoSlot::Area(mark) => {
            let give = read_area(photo.mark(mark)).map_or(0.0, |(_, give)| give);
            Some((mark, What::Area(Some((area(number), give)))))
        }
        PhotoSlot::AreaGive(mark) => {
            let (read, _) =
                read_area(photo.mark(mark)).ok_or("Give the area first, then its ±.")?;
            Some((mark, What::Area(Some((read, area(number))))))
        }
        _ => None,
    };
    if let Some((mark, now)) = now
        && what(photo, mark).is_some()
        && let Some(mark) = photo.mark_mut(mark)
    {
        mark.what = now;
    }
    Ok(())
}

fn fill_words(photo: &mut Photo, field: PhotoSlot, text: String) {
    match field {
        PhotoSlot::Title => photo.title = text,
        PhotoSlot::Note => photo.note = text,
        PhotoSlot::MarkNote(number) => {
            if let Some(mark) = photo.mark_mut(number) {
                mark.note = text;
            }
        }
        PhotoSlot::Material(number) => {
            if let Some(behind) = behind_mut(photo, number) {
                behind.material = text;
            }
        }
        _ => {}
    }
}

impl App {
    /// What the pad asks for: of a length also which it is, and what the picture says, for the pad may lie over it.
    pub(super) fn photo_asks(&self, at: usize, field: PhotoSlot) -> String {
        let PhotoSlot::Length(number) = field else {
            return asks(field).to_owned();
        };
        let photo = self.job.photos.get(at);
        let note = photo.and_then(|photo| photo.mark(number));
        let note = note.map_or("", |mark| mark.note.as_str());
        let name = match note {
            "" => asks(field).to_owned(),
            note => format!("“{note}”, by tape"),
        };
        let view = self.view_of(at);
        let estimate = photo.and_then(|photo| photo.figure(number, view.as_deref()));
        match estimate.filter(|figure| figure.is_estimate()) {
            Some(figure) => format!("{name}; the picture says {}", self.figure_text(figure)),
            None => name,
        }
    }
}

/// What a field of a picture asks for, in words.
fn asks(field: PhotoSlot) -> &'static str {
    match field {
        PhotoSlot::Title => "Title of the picture",
        PhotoSlot::Note => "What there is to say of it",
        PhotoSlot::MarkNote(_) => "Words at this mark",
        PhotoSlot::Length(_) => "This length, by tape",
        PhotoSlot::Angle(_) => "This angle, measured",
        PhotoSlot::Area(_) => "This area, measured",
        PhotoSlot::Give(_)
        | PhotoSlot::AngleGive(_)
        | PhotoSlot::AreaGive(_)
        | PhotoSlot::DepthGive(_)
        | PhotoSlot::RefGive(_) => "More or less by",
        PhotoSlot::Depth(_) => "From the finished face to it",
        PhotoSlot::Width(_) => "How wide it is",
        PhotoSlot::Material(_) => "What it is made of",
        PhotoSlot::FromLeft(_) => "Left corner to it, by tape",
        PhotoSlot::Up(_) => "Floor to it, by tape",
        PhotoSlot::Known => "What are these the corners of?",
        PhotoSlot::Ref(Side::Width) => "Its width",
        PhotoSlot::Ref(Side::Height) => "Its height",
        PhotoSlot::Ref(Side::Right) => "Its right side",
        PhotoSlot::Ref(Side::Lower) => "Its lower side",
        PhotoSlot::Ref(Side::Diagonal) => "Upper left to lower right",
        PhotoSlot::AnchorLeft => "Left corner to that place",
        PhotoSlot::AnchorUp => "Floor to that place",
        PhotoSlot::Search => "Words to find in the log",
        PhotoSlot::Camera => "Command that opens the camera",
        PhotoSlot::Watched => "Folder that the camera saves in",
        PhotoSlot::Clear => "Keep clear of what is hidden by",
    }
}

/// Whether nothing may stand there, or less.
pub(super) fn may_be_nothing(field: PhotoSlot) -> bool {
    !matches!(
        field,
        PhotoSlot::Length(_) | PhotoSlot::Width(_) | PhotoSlot::Ref(_)
    )
}

/// The slot of a field.
pub(super) fn slot(at: usize, field: PhotoSlot) -> Command {
    Command::Pad(Slot::Photo(at, field))
}

/// The name of a room for a picture's list.
pub(super) fn room_name(job: &Job, id: Option<Id>) -> Option<&str> {
    let room = job.rooms.iter().find(|room| Some(room.id) == id)?;
    Some(&room.name)
}
