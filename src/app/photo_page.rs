//! A picture of the log beside its list: what is in hand, its plane, its place, what becomes of it.

use super::photo_change::slot;
use super::photo_export::largest;
use super::photo_marks::degrees;
use super::{App, Chip, Command, Here, PhotoCommand, PhotoSlot, Row, Screen, Tone, Tool};
use crate::photo::{Doubt, Figure, Mark, Photo, Stage, WORKING, What, befores};
use crate::site::{HiddenKind, Wall};

impl App {
    /// A picture.
    pub(super) fn photo_page(&self, at: usize) -> Screen {
        let Some(photo) = self.job.photos.get(at) else {
            return self.photos_page();
        };
        let mut rows = Vec::new();
        if let Some(why) = self.copy_trouble() {
            rows.push(note(Tone::Stop, why));
        }
        let begun = !self.surface.draft.is_empty() || self.surface.first_tap.is_some();
        let of_mark = match self.picked() {
            Some((_, mark)) => self.mark_rows(at, photo, mark),
            None => self.figure_rows(at, photo),
        };
        let of_plane = self.flat_rows(at, photo);
        // Four corners of something of which nobody has said yet what it is: that comes first.
        let asked = self.picked().is_none()
            && (photo.flat.as_ref())
                .is_some_and(|flat| flat.width.is_none() || flat.height.is_none());
        // A mark that was just drawn is in hand with its tool: what there is to say of it comes before the tool.
        let parts = match (asked, self.picked().is_some() && !begun) {
            (true, _) => [self.drawing_rows(), of_plane, of_mark],
            (false, true) => [of_mark, self.drawing_rows(), of_plane],
            (false, false) => [self.drawing_rows(), of_mark, of_plane],
        };
        rows.extend(parts.into_iter().flatten());
        rows.extend(self.entry_rows(at, photo));
        let place = self.place_of(photo);
        // The year stands below, under "Taken": a phone has no room for it here.
        let when = photo.when.format("%-d %b, %H:%M").to_string();
        let title = match photo.title.as_str() {
            "" => when,
            title => title.to_owned(),
        };
        Screen {
            crumb: if place.is_empty() {
                self.job.name.clone()
            } else {
                place
            },
            title,
            back: Some(Here::Photos),
            rows,
            photo: true,
            tools: self.tools(photo),
            ..Screen::default()
        }
    }

    /// The tools; two pictures side by side are only looked at.
    fn tools(&self, photo: &Photo) -> Vec<Chip> {
        if self.surface.beside && photo.before.is_some() {
            return Vec::new();
        }
        Tool::BAR
            .map(|tool| {
                Chip::new(
                    tool.name(),
                    self.surface.tool == tool,
                    command(PhotoCommand::Tool(tool)),
                )
            })
            .to_vec()
    }

    /// What the tool in hand asks for.
    fn drawing_rows(&self) -> Vec<Row> {
        let tool = self.surface.tool;
        let mut rows = Vec::new();
        if tool != Tool::Look {
            let begun =
                (self.surface.draft.len()).max(usize::from(self.surface.first_tap.is_some()));
            let so_far = match begun {
                0 => String::new(),
                1 => " One point so far.".to_owned(),
                n => format!(" {n} points so far."),
            };
            rows.push(note(Tone::Note, format!("{}{so_far}", tool.asks())));
            let mut chips = Vec::new();
            if tool == Tool::Area && begun >= 3 {
                chips.push(Chip::new("Done", true, command(PhotoCommand::Done)));
            }
            if begun > 0 {
                chips.push(Chip::new(
                    "Drop what is begun",
                    false,
                    command(PhotoCommand::Drop),
                ));
            }
            chips.push(Chip::new(
                "Put the tool down",
                false,
                command(PhotoCommand::Tool(Tool::Look)),
            ));
            rows.push(Row::choice("", chips));
        }
        let look = [("Nearer", 1), ("Farther", -1), ("Whole", -8)];
        let look = look
            .map(|(label, steps)| Chip::new(label, false, command(PhotoCommand::Nearer(steps))));
        let snaps = !self.surface.loose;
        let snap = Chip::new("Snap", snaps, command(PhotoCommand::Snaps(!snaps)));
        rows.push(Row::choice("", look.into_iter().chain([snap])));
        rows
    }

    /// Every figure of the picture, each to be tapped.
    fn figure_rows(&self, at: usize, photo: &Photo) -> Vec<Row> {
        let view = self.view_of(at);
        let mut rows = self.contradiction_rows(at, photo, None);
        let before = rows.len();
        let mut estimates = false;
        for mark in &photo.marks {
            let figure = photo.figure(mark.number, view.as_deref());
            estimates |= figure.is_some_and(Figure::is_estimate);
            let value = match (figure, &mark.what) {
                (Some(figure), _) => self.figure_text(figure),
                (None, What::Dimension(_) | What::Angle(_) | What::Area(_)) => "?".into(),
                (None, What::Hidden(behind)) => behind.depth.map_or_else(
                    || "depth?".to_owned(),
                    |depth| format!("{} in", self.show(depth.length)),
                ),
                _ => String::new(),
            };
            rows.push(Row::Figure {
                label: name(mark),
                detail: match figure {
                    Some(figure) if figure.is_estimate() => "from the picture".into(),
                    Some(Figure::Taped(taped)) => format!("taped, ±{}", self.give(taped.give)),
                    _ => mark.note.clone(),
                },
                value,
                command: Some(command(PhotoCommand::Select(Some(mark.number)))),
            });
        }
        if rows.len() > before {
            rows.insert(0, Row::Heading("Marked".into()));
        } else if self.surface.tool == Tool::Look && !self.surface.beside {
            rows.push(Row::Text(
                "Choose a tool under the picture and mark what was measured.".into(),
            ));
        }
        if estimates {
            rows.push(note(
                Tone::Caution,
                "Dashed figures are estimates from the picture. Put a tape on them before you cut."
                    .into(),
            ));
        }
        rows
    }

    /// The tapes that contradict the picture; of one mark, or of all.
    fn contradiction_rows(&self, at: usize, photo: &Photo, of: Option<u32>) -> Vec<Row> {
        let view = self.view_of(at);
        let doubts = view.map_or_else(Vec::new, |view| photo.doubts(&view));
        let rows = doubts.into_iter().filter_map(|doubt| match doubt {
            Doubt::Disagrees {
                number,
                says,
                alone,
            } if of.is_none_or(|of| of == number) => Some(Row::Note {
                tone: Tone::Caution,
                text: self.contradiction(photo, number, says, alone),
                detail: String::new(),
                mend: Some(Chip::new(
                    "Type it again",
                    false,
                    slot(at, PhotoSlot::Length(number)),
                )),
            }),
            _ => None,
        });
        rows.collect()
    }

    /// The mark in hand.
    fn mark_rows(&self, at: usize, photo: &Photo, mark: &Mark) -> Vec<Row> {
        let number = mark.number;
        let figure = photo.figure(number, self.view_of(at).as_deref());
        let mut rows = vec![Row::Heading(name(mark))];
        rows.extend(self.contradiction_rows(at, photo, Some(number)));
        let said = |figure: Option<Figure>| {
            figure.map_or_else(|| "?".to_owned(), |figure| self.figure_text(figure))
        };
        let estimate = figure.filter(|figure| figure.is_estimate());
        if let Some(figure) = estimate {
            rows.push(Row::ours("From the picture", self.figure_text(figure)));
        }
        let measured = |value: Option<Figure>| said(value.filter(|figure| !figure.is_estimate()));
        match &mark.what {
            What::Dimension(taped) => {
                rows.push(Row::yours(
                    "By tape",
                    measured(figure),
                    slot(at, PhotoSlot::Length(number)),
                ));
                if let Some(taped) = taped {
                    rows.push(Row::yours(
                        "More or less by",
                        self.give(taped.give),
                        slot(at, PhotoSlot::Give(number)),
                    ));
                } else if estimate.is_some() {
                    rows.push(Row::Button {
                        label: "Put a tape on it".into(),
                        main: true,
                        command: slot(at, PhotoSlot::Length(number)),
                    });
                }
            }
            What::Angle(read) => {
                rows.push(Row::yours(
                    "Measured",
                    measured(figure),
                    slot(at, PhotoSlot::Angle(number)),
                ));
                if let Some((_, give)) = read {
                    rows.push(Row::yours(
                        "More or less by",
                        degrees(*give),
                        slot(at, PhotoSlot::AngleGive(number)),
                    ));
                }
            }
            What::Area(read) => {
                rows.push(Row::yours(
                    "Measured",
                    measured(figure),
                    slot(at, PhotoSlot::Area(number)),
                ));
                if let Some((_, give)) = read {
                    let give = super::photo_marks::area_amount(*give);
                    rows.push(Row::yours(
                        "More or less by",
                        self.amount(give),
                        slot(at, PhotoSlot::AreaGive(number)),
                    ));
                }
                if self.view_of(at).is_some() {
                    rows.push(Row::button(
                        "Use this outline",
                        Command::Go(Here::Traced(at, number)),
                    ));
                }
            }
            What::Hidden(_) => rows.extend(self.hidden_mark_rows(at, photo, mark)),
            _ => {}
        }
        if matches!(
            &mark.what,
            What::Dimension(Some(_)) | What::Angle(Some(_)) | What::Area(Some(_))
        ) {
            rows.push(Row::button(
                "An estimate again",
                command(PhotoCommand::Untape(at, number)),
            ));
        }
        let words = if mark.note.is_empty() {
            "none"
        } else {
            &mark.note
        };
        rows.push(Row::yours(
            "Words",
            words,
            slot(at, PhotoSlot::MarkNote(number)),
        ));
        if mark.what != What::Freehand {
            let point = format!("Point {} of {}", self.surface.point + 1, mark.points.len());
            let nudge =
                |label: &str, x, y| Chip::new(label, false, command(PhotoCommand::Nudge(x, y)));
            let mut chips = vec![
                nudge("Left", -1, 0),
                nudge("Right", 1, 0),
                nudge("Up", 0, -1),
                nudge("Down", 0, 1),
            ];
            if mark.points.len() > 1 {
                chips.insert(
                    0,
                    Chip::new("Other point", false, command(PhotoCommand::NextPoint)),
                );
            }
            rows.push(Row::choice(
                format!("{point}: nudge it, or drag it on the picture"),
                chips,
            ));
        }
        rows.push(Row::choice(
            "",
            [
                Chip::new("Put it down", false, command(PhotoCommand::Select(None))),
                Chip::new(
                    "Remove it",
                    false,
                    command(PhotoCommand::RemoveMark(at, number)),
                ),
            ],
        ));
        rows
    }

    /// Something behind the board.
    fn hidden_mark_rows(&self, at: usize, photo: &Photo, mark: &Mark) -> Vec<Row> {
        let What::Hidden(behind) = &mark.what else {
            return Vec::new();
        };
        let number = mark.number;
        let mut rows = vec![Row::choice(
            "What it is",
            HiddenKind::LIST.map(|kind| {
                Chip::new(
                    kind.name(),
                    behind.kind == kind,
                    command(PhotoCommand::Kind(at, number, kind)),
                )
            }),
        )];
        rows.push(Row::yours(
            "From the face to it",
            self.show_or_ask(behind.depth.map(|depth| depth.length)),
            slot(at, PhotoSlot::Depth(number)),
        ));
        if let Some(depth) = behind.depth {
            rows.push(Row::yours(
                "More or less by",
                self.give(depth.give),
                slot(at, PhotoSlot::DepthGive(number)),
            ));
        }
        rows.push(Row::yours(
            "How wide",
            self.show_or_ask(behind.width),
            slot(at, PhotoSlot::Width(number)),
        ));
        let material = if behind.material.is_empty() {
            "?"
        } else {
            &behind.material
        };
        rows.push(Row::yours(
            "Made of",
            material,
            slot(at, PhotoSlot::Material(number)),
        ));
        // Nothing hidden is in the corner or on the floor itself: that stands for "not taped".
        let taped = |n: usize| behind.at.map(|at| at[n]).filter(|at| at.is_positive());
        rows.push(Row::yours(
            "Left corner to it, by tape",
            self.show_or_ask(taped(0)),
            slot(at, PhotoSlot::FromLeft(number)),
        ));
        rows.push(Row::yours(
            "Floor to it, by tape",
            self.show_or_ask(taped(1)),
            slot(at, PhotoSlot::Up(number)),
        ));
        rows.extend(self.pin_rows(at, photo, Some(number)));
        rows
    }

    /// What there is to say of the picture itself.
    fn entry_rows(&self, at: usize, photo: &Photo) -> Vec<Row> {
        let mut rows = vec![Row::Heading("This picture".into())];
        let or = |text: &str, none: &str| {
            if text.is_empty() {
                none.to_owned()
            } else {
                text.to_owned()
            }
        };
        rows.push(Row::yours(
            "Title",
            or(&photo.title, "none"),
            slot(at, PhotoSlot::Title),
        ));
        rows.push(Row::yours(
            "Note",
            or(&photo.note, "none"),
            slot(at, PhotoSlot::Note),
        ));
        rows.push(Row::ours(
            "Taken",
            photo.when.format("%-d %b %Y, %H:%M %:z").to_string(),
        ));
        rows.push(Row::choice(
            "Stage",
            Stage::ALL.map(|stage| {
                let on = photo.stage == Some(stage);
                Chip::new(
                    stage.name(),
                    on,
                    command(PhotoCommand::Stage(at, (!on).then_some(stage))),
                )
            }),
        ));
        rows.extend(self.place_rows(at, photo));
        rows.extend(self.before_rows(at, photo));
        let lens = photo
            .focal_35
            .map_or_else(String::new, |focal| format!(", lens {focal:.0} mm (35 mm)"));
        rows.push(Row::ours(
            "Pixels",
            format!("{} by {}{lens}", photo.size.0, photo.size.1),
        ));
        if photo.located {
            rows.push(Row::Check {
                label: "Share where it was taken".into(),
                detail: "Its camera wrote the place into it. Off, the place is taken out of what is handed over.".into(),
                value: String::new(),
                on: photo.place_shared,
                command: command(PhotoCommand::SharePlace(at, !photo.place_shared)),
                more: None,
            });
        }
        rows.extend(export_rows(at, photo));
        rows.push(Row::button(
            "Take this picture off the log",
            command(PhotoCommand::Remove(at)),
        ));
        rows
    }

    /// Which room and wall it shows.
    pub(super) fn place_rows(&self, at: usize, photo: &Photo) -> Vec<Row> {
        let mut rows = Vec::new();
        if !self.job.rooms.is_empty() {
            let rooms = self.job.rooms.iter().map(|room| {
                let on = photo.room == Some(room.id);
                Chip::new(
                    &room.name,
                    on,
                    command(PhotoCommand::Room(at, (!on).then_some(room.id))),
                )
            });
            rows.push(Row::choice("Room", rooms));
        }
        if let Some(room) = self
            .job
            .rooms
            .iter()
            .find(|room| Some(room.id) == photo.room)
        {
            let walls = (0..room.walls.len()).map(|wall| {
                let on = photo.wall == Some(wall);
                Chip::new(
                    Wall::named(wall),
                    on,
                    command(PhotoCommand::Wall(at, (!on).then_some(wall))),
                )
            });
            rows.push(Row::choice("Wall", walls));
        }
        rows
    }

    /// The picture of the same place before.
    fn before_rows(&self, at: usize, photo: &Photo) -> Vec<Row> {
        let mut rows = Vec::new();
        let title = |at: usize| {
            let of = &self.job.photos[at];
            let day = of.when.format("%-d %b, %H:%M").to_string();
            format!("{}, {day}", self.photo_name(of))
        };
        // The place is the same, so it is not said.
        let said = |at: usize| {
            let of = &self.job.photos[at];
            let day = of.when.format("%-d %b, %H:%M").to_string();
            match (of.title.as_str(), of.stage) {
                ("", None) => day,
                ("", Some(stage)) => format!("{}, {day}", stage.name()),
                (title, _) => format!("{title}, {day}"),
            }
        };
        let place = |id| {
            self.job
                .photos
                .iter()
                .position(|other| Some(other.id) == id)
        };
        if let Some(before) = place(photo.before) {
            rows.push(Row::Figure {
                label: "Before it".into(),
                detail: String::new(),
                value: title(before),
                command: Some(Command::Go(Here::Photo(before))),
            });
            rows.push(Row::choice(
                "",
                [
                    Chip::new(
                        "Side by side",
                        self.surface.beside,
                        command(PhotoCommand::Beside(!self.surface.beside)),
                    ),
                    Chip::new("No pair", false, command(PhotoCommand::Before(at, None))),
                ],
            ));
        } else {
            let earlier = befores(&self.job.photos, at);
            if !earlier.is_empty() {
                let chips = earlier.iter().rev().take(4).map(|other| {
                    let id = self.job.photos[*other].id;
                    Chip::new(
                        said(*other),
                        false,
                        command(PhotoCommand::Before(at, Some(id))),
                    )
                });
                rows.push(Row::choice("The same place before", chips));
            }
        }
        let after = self
            .job
            .photos
            .iter()
            .position(|other| other.before == Some(photo.id));
        if let Some(after) = after {
            rows.push(Row::Figure {
                label: "After it".into(),
                detail: String::new(),
                value: title(after),
                command: Some(Command::Go(Here::Photo(after))),
            });
        }
        rows
    }
}

/// As what a picture is written, and how large.
fn export_rows(at: usize, photo: &Photo) -> Vec<Row> {
    let row = |label: String, large| {
        let kinds = [("JPEG", false), ("PNG", true)];
        let chips = kinds.map(|(kind, png)| {
            Chip::new(kind, false, command(PhotoCommand::Export(at, png, large)))
        });
        Row::choice(label, chips)
    };
    let (width, height) = photo.size;
    let long = width.max(height);
    let mut rows = vec![row("Write it with its marks".into(), false)];
    if long > WORKING {
        let (w, h) = largest(photo.size);
        rows[0] = row(
            format!("Write it with its marks, {WORKING} pixels long"),
            false,
        );
        rows.push(row(
            if (w, h) == photo.size {
                format!("The same as large as it came, {w} by {h} pixels")
            } else {
                format!("The same at {w} by {h} pixels: all {width} by {height} would take more memory than is set aside for it")
            },
            true,
        ));
    }
    rows
}

pub(super) fn command(command: PhotoCommand) -> Command {
    Command::Photo(command)
}

pub(super) fn note(tone: Tone, text: String) -> Row {
    Row::Note {
        tone,
        text,
        detail: String::new(),
        mend: None,
    }
}

/// What a mark is called in a list.
pub(super) fn name(mark: &Mark) -> String {
    let kind = match &mark.what {
        What::Dimension(_) => "Dimension",
        What::Angle(_) => "Angle",
        What::Area(_) => "Area",
        What::Level => "Level line",
        What::Arrow => "Arrow",
        What::Note => "Note",
        What::Freehand => "Freehand",
        What::Hidden(behind) => return format!("{} {}", mark.number, behind.kind.name()),
    };
    if mark.note.is_empty() {
        kind.to_owned()
    } else {
        mark.note.clone()
    }
}
