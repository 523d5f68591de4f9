//! The log of pictures: what is in it, found and narrowed; how pictures come in.

use std::path::PathBuf;
use std::sync::Arc;

use super::photo_change::{room_name, slot};
use super::{App, Chip, Command, Here, PhotoCommand, PhotoSlot, Row, Screen};
use crate::photo::{Filter, Line, Photo, Stage, lines};
use crate::site::Wall;
use crate::store::pictures::copy_path;

/// A line of the log as it is shown.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct LogRow {
    /// A day, or a picture's title.
    pub title: String,
    /// When, where, how far the work was.
    pub detail: String,
    /// It is a day.
    pub day: bool,
    /// The small copy of the picture.
    pub small: Option<PathBuf>,
}

impl App {
    /// The log.
    pub(super) fn photos_page(&self) -> Screen {
        let log = self.log_lines();
        let command = |command| Command::Photo(command);
        let mut rows = self.taking_rows();
        if self.job.photos.is_empty() {
            rows.push(Row::Text(
                "Nothing is in the log yet. Take pictures of every wall before it is touched, when it is bare, and before it is closed up: what is behind the board is found again later.".into(),
            ));
        }
        rows.push(Row::Button {
            label: "Take a picture now".into(),
            main: true,
            command: command(PhotoCommand::Snap),
        });
        rows.extend(self.viewfinder_row());
        let ways: &[(&str, PhotoCommand)] = if self.has_activity() {
            &[("Pictures of this device …", PhotoCommand::Pick)]
        } else {
            &[
                ("Files …", PhotoCommand::Pick),
                ("A folder …", PhotoCommand::PickFolder),
                ("Paste", PhotoCommand::Paste),
            ]
        };
        let ways = ways.iter().cloned();
        rows.push(Row::choice(
            "Take in pictures",
            ways.map(|(label, what)| Chip::new(label, false, command(what))),
        ));
        if !self.job.photos.is_empty() {
            rows.extend(self.filter_rows(&log));
        }
        if !self.has_activity() {
            rows.extend(self.camera_rows());
        }
        rows.push(Row::yours(
            "Keep clear of what is hidden by",
            self.show(self.keeper.clear()),
            slot(0, PhotoSlot::Clear),
        ));
        Screen {
            crumb: self.job.name.clone(),
            title: "Photos".into(),
            rows,
            log: (!self.job.photos.is_empty()).then_some(log),
            ..Screen::default()
        }
    }

    /// The lines of the log that are shown.
    pub(super) fn log_lines(&self) -> Vec<Line> {
        let filter = &self.log_filter;
        lines(&self.job.photos, |photo| {
            filter.takes(photo, || self.searched(photo))
        })
    }

    /// What else of a picture is searched: its room, its wall, its figures as they are set and as they are typed.
    fn searched(&self, photo: &Photo) -> String {
        let mut all = self.place_of(photo);
        for mark in &photo.marks {
            if let Some(figure) = photo.figure(mark.number, None) {
                let set = self.figure_text(figure);
                all.push(' ');
                all.push_str(&crate::measure::plain(&set));
                all.push(' ');
                all.push_str(&set);
            }
            if let crate::photo::What::Dimension(Some(taped)) = mark.what {
                let units = self.job.units;
                let (round, figures) = (
                    crate::measure::Rounding::Nearest,
                    crate::measure::Figures::Plain,
                );
                all.push(' ');
                all.push_str(&units.length(taped.length, round, figures));
                // Also as it stood on the tape, and in the other units.
                for said in [self.on_the_tape(taped.length), units.other(taped.length)] {
                    all.push(' ');
                    all.push_str(&crate::measure::plain(&said));
                }
            }
        }
        all
    }

    /// The room and wall of a picture, in words.
    pub(super) fn place_of(&self, photo: &Photo) -> String {
        let room = room_name(&self.job, photo.room);
        let wall = photo.wall.map(|wall| format!("wall {}", Wall::named(wall)));
        let parts = [room.map(str::to_owned), wall];
        parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
    }

    /// The place of a picture and how far the work was, in words.
    fn shown_there(&self, photo: &Photo) -> String {
        let stage = photo.stage.map(|stage| stage.name().to_lowercase());
        let parts = [Some(self.place_of(photo)), stage].into_iter().flatten();
        let parts: Vec<String> = parts.filter(|part| !part.is_empty()).collect();
        parts.join(", ")
    }

    /// What a picture is called: its title, else its room, wall and stage, else by when it was taken.
    pub(super) fn photo_name(&self, photo: &Photo) -> String {
        if !photo.title.is_empty() {
            return photo.title.clone();
        }
        let shows = self.shown_there(photo);
        let mut letters = shows.chars();
        match letters.next() {
            Some(first) => first.to_uppercase().chain(letters).collect(),
            None => self.name_by_time(photo),
        }
    }

    /// When a picture was taken, and which of that minute it is where there are more that have no other name.
    fn name_by_time(&self, photo: &Photo) -> String {
        let minute = |photo: &Photo| photo.when.timestamp().div_euclid(60);
        let alike = |other: &&Arc<Photo>| {
            minute(other) == minute(photo)
                && other.title.is_empty()
                && self.shown_there(other).is_empty()
        };
        let mut alike: Vec<_> = self.job.photos.iter().filter(alike).collect();
        let name = photo.when.format("Picture of %H:%M").to_string();
        if alike.len() < 2 {
            return name;
        }
        alike.sort_by_key(|other| other.when);
        let at = alike.iter().position(|other| other.id == photo.id);
        at.map_or(name.clone(), |at| format!("{name}, no. {}", at + 1))
    }

    fn camera_rows(&self) -> [Row; 4] {
        [
            Row::Heading("The camera of this device".into()),
            Row::yours(
                "Its command",
                self.camera_said(),
                slot(0, PhotoSlot::Camera),
            ),
            Row::yours(
                "Its folder",
                self.watched_said(),
                slot(0, PhotoSlot::Watched),
            ),
            Row::Text(
                "Pictures that appear in that folder while it is watched are taken in by themselves. Drop pictures on the window as well.".into(),
            ),
        ]
    }

    /// A line of the log as it is shown.
    #[must_use]
    pub fn log_row(&self, line: Line) -> LogRow {
        let at = match line {
            Line::Day(day) => {
                return LogRow {
                    title: day.format("%A, %-d %B %Y").to_string(),
                    day: true,
                    ..LogRow::default()
                };
            }
            Line::Entry(at) => at,
        };
        let Some(photo) = self.job.photos.get(at) else {
            return LogRow::default();
        };
        let mut parts = vec![photo.when.format("%H:%M").to_string()];
        // What it is called by when it has no title is not said twice.
        if !photo.title.is_empty() {
            parts.extend(Some(self.shown_there(photo)).filter(|place| !place.is_empty()));
        }
        match photo.marks.len() {
            0 => {}
            1 => parts.push("1 mark".into()),
            n => parts.push(format!("{n} marks")),
        }
        LogRow {
            title: self.photo_name(photo),
            detail: parts.join(" · "),
            day: false,
            small: self
                .keeper
                .path()
                .and_then(|folder| copy_path(folder, &photo.picture, super::SMALL)),
        }
    }

    fn filter_rows(&self, log: &[Line]) -> Vec<Row> {
        let filter = &self.log_filter;
        let shown = log
            .iter()
            .filter(|line| matches!(line, Line::Entry(_)))
            .count();
        let found = match filter.words.as_str() {
            "" => "anything".to_owned(),
            words => words.to_owned(),
        };
        let all = self.job.photos.len();
        let heading = match shown {
            0 => format!("None of {all} is so"),
            _ => format!("{shown} of {all} shown"),
        };
        let mut rows = vec![
            Row::Heading(heading),
            Row::yours("Find", found, slot(0, PhotoSlot::Search)),
        ];
        rows.extend(self.place_chips());
        if filter.is_set() {
            let all = Command::Photo(PhotoCommand::Filter(Filter::default()));
            rows.push(Row::button("Show all", all));
        }
        rows
    }

    /// Room, wall and stage: of what is shown, and of what is taken in.
    pub(super) fn place_chips(&self) -> Vec<Row> {
        let filter = &self.log_filter;
        let of = |change: &dyn Fn(&mut Filter)| {
            let mut other = filter.clone();
            change(&mut other);
            Command::Photo(PhotoCommand::Filter(other))
        };
        let mut rows = Vec::new();
        if !self.job.rooms.is_empty() {
            let any = Chip::new(
                "Any room",
                filter.room.is_none(),
                of(&|f| (f.room, f.wall) = (None, None)),
            );
            let rooms = self.job.rooms.iter().map(|room| {
                let id = room.id;
                let on = filter.room == Some(id);
                Chip::new(&room.name, on, of(&|f| (f.room, f.wall) = (Some(id), None)))
            });
            rows.push(Row::choice("Room", std::iter::once(any).chain(rooms)));
        }
        if let Some(room) = self
            .job
            .rooms
            .iter()
            .find(|room| Some(room.id) == filter.room)
        {
            let any = Chip::new("Any wall", filter.wall.is_none(), of(&|f| f.wall = None));
            let walls = (0..room.walls.len()).map(|wall| {
                let on = filter.wall == Some(wall);
                Chip::new(Wall::named(wall), on, of(&|f| f.wall = Some(wall)))
            });
            rows.push(Row::choice("Wall", std::iter::once(any).chain(walls)));
        }
        let any = Chip::new("Any stage", filter.stage.is_none(), of(&|f| f.stage = None));
        let stages = Stage::ALL.map(|stage| {
            let on = filter.stage == Some(stage);
            Chip::new(stage.name(), on, of(&|f| f.stage = Some(stage)))
        });
        rows.push(Row::choice("Stage", std::iter::once(any).chain(stages)));
        rows
    }

    /// Where a tap on a line of the log leads.
    #[must_use]
    pub fn log_leads(&self, line: Line) -> Option<Command> {
        match line {
            Line::Entry(at) => Some(Command::Go(Here::Photo(at))),
            Line::Day(_) => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::Keeper;
    use crate::measure::Units;
    use crate::photo::What;
    use crate::site::Room;
    use crate::takeoff::Job;

    #[test]
    fn an_entry_is_called_by_its_title_else_its_place_else_its_time() {
        let when = chrono::DateTime::parse_from_rfc3339("2026-05-04T09:05:00+02:00").unwrap();
        let mut job = Job::new("Cabin", when, Units::Millimetres);
        job.rooms.push(Room::rectangle("Washroom"));
        let mut photo = Photo::new("a.jpg".into(), (40, 30), when);
        let mut app = App::new(job, Keeper::nowhere());
        let mut check = |photo: &Photo, title: &str, detail: &str| {
            app.job.photos = vec![Arc::new(photo.clone())];
            let row = app.log_row(Line::Entry(0));
            assert_eq!((row.title.as_str(), row.detail.as_str()), (title, detail));
        };
        check(&photo, "Picture of 09:05", "09:05");
        // Two of one minute are told apart, in the order that they were taken in.
        let mut second = Photo::new(
            "b.jpg".into(),
            (40, 30),
            when + chrono::TimeDelta::seconds(9),
        );
        app.job.photos = vec![second.clone().into(), photo.clone().into()];
        let title = |app: &App, at| app.log_row(Line::Entry(at)).title;
        assert_eq!(title(&app, 0), "Picture of 09:05, no. 2");
        assert_eq!(title(&app, 1), "Picture of 09:05, no. 1");
        second.title = "The drain".into();
        app.job.photos[0] = second.into();
        assert_eq!(title(&app, 1), "Picture of 09:05");
        let mut check = |photo: &Photo, title: &str, detail: &str| {
            app.job.photos = vec![Arc::new(photo.clone())];
            let row = app.log_row(Line::Entry(0));
            assert_eq!((row.title.as_str(), row.detail.as_str()), (title, detail));
        };
        photo.stage = Some(Stage::Stripped);
        check(&photo, "Stripped", "09:05");
        let point = vec![[0.0; 2]];
        photo.add_mark(What::Note, point.clone());
        check(&photo, "Stripped", "09:05 · 1 mark");
        photo.add_mark(What::Note, point);
        photo.title = "The leak".into();
        check(&photo, "The leak", "09:05 · stripped · 2 marks");
    }

    #[test]
    fn a_measure_is_found_as_it_is_shown_as_it_stood_on_the_tape_and_in_other_units() {
        let when = chrono::DateTime::UNIX_EPOCH.fixed_offset();
        let mut job = Job::new("Cabin", when, Units::FeetInches { marks: 16 });
        let mut photo = Photo::new("a.jpg".into(), (40, 30), when);
        let taped = crate::photo::Taped::read(crate::measure::Length::in_64(47, 48));
        photo.add_mark(What::Dimension(Some(taped)), vec![[0.0; 2], [9.0; 2]]);
        job.photos.push(Arc::new(photo));
        let mut app = App::new(job, Keeper::nowhere());
        for (words, found) in [("47 3/4", 1), ("3' 11 3/4", 1), ("1212", 1), ("48 3/4", 0)] {
            app.log_filter.words = words.into();
            let lines = app.log_lines();
            let entries = lines.iter().filter(|line| matches!(line, Line::Entry(_)));
            assert_eq!(entries.count(), found, "{words}");
        }
    }

    #[test]
    fn a_picture_without_a_title_has_its_room_wall_and_stage_for_a_name() {
        let when = chrono::DateTime::UNIX_EPOCH.fixed_offset();
        let mut job = Job::new("Cabin", when, Units::Millimetres);
        job.rooms.push(Room::rectangle("Washroom"));
        let mut photo = Photo::new("a.jpg".into(), (40, 30), when);
        (photo.room, photo.wall) = (Some(job.rooms[0].id), Some(1));
        photo.stage = Some(Stage::ClosedUp);
        let app = App::new(job, Keeper::nowhere());
        assert_eq!(app.photo_name(&photo), "Washroom, wall B, closed up");
    }
}
