//! The packet of a job as files: names and bytes, written by whoever asked.

use super::{App, Command, Here};
use crate::drawing::{Canvas, Palette, Theme, lay_out, paint, png, svg};
use crate::measure::plain;
use crate::packet::{Cell, csv};
use crate::takeoff::{LineKey, State};

impl App {
    /// Every file of the packet: the buying list, and each sketch as SVG and PNG.
    ///
    /// # Errors
    /// Where a picture cannot be encoded.
    pub fn packet(&mut self) -> Result<Vec<(String, Vec<u8>)>, String> {
        let mut files = vec![
            ("buying-list.csv".to_owned(), self.buying_csv().into_bytes()),
            ("steps.csv".to_owned(), self.steps_csv().into_bytes()),
        ];
        let mut places = Vec::new();
        for (at, room) in self.job.rooms.iter().enumerate() {
            places.push((format!("room-{}", at + 1), Here::Room(at)));
            places.extend((0..room.walls.len()).map(|wall| {
                (
                    format!(
                        "room-{}-wall-{}",
                        at + 1,
                        crate::site::Wall::named(wall).to_lowercase()
                    ),
                    Here::Wall(at, wall),
                )
            }));
        }
        places.extend(
            (0..self.job.tasks.len()).map(|at| (format!("figure-{}", at + 1), Here::Task(at))),
        );
        for at in 0..self.job.tasks.len() {
            if let Some(text) = self.strip_file(at) {
                files.push((format!("figure-{}-strip.svg", at + 1), text.into_bytes()));
            }
        }
        let palette = Palette::of(Theme::Day);
        let canvas = Canvas {
            width: 1000.0,
            height: 720.0,
            text: 1.0,
            margin: 24.0,
        };
        for (name, here) in places {
            self.send(Command::Go(here));
            let screen = self.screen();
            let Some(scene) = &screen.picture else {
                continue;
            };
            let sheet = lay_out(scene, &canvas, None);
            files.push((
                format!("{name}.svg"),
                svg(&sheet, &palette, &scene.says).into_bytes(),
            ));
            let pixels = png(&paint(&sheet, &palette, 2.0)).map_err(|why| why.to_string())?;
            files.push((format!("{name}.png"), pixels));
        }
        // Pictures with what is marked on them; one that cannot be shown is no reason to hand over nothing.
        let marked = self.job.photos.iter().enumerate();
        let marked: Vec<usize> = marked
            .filter(|(_, photo)| !photo.marks.is_empty())
            .map(|(at, _)| at)
            .collect();
        for at in marked {
            if let Ok(bytes) = self.marked_photo(at, crate::photo::Format::Jpeg) {
                files.push((format!("photo-{}.jpg", at + 1), bytes));
            }
        }
        Ok(files)
    }

    /// The order of work, one step a row.
    fn steps_csv(&self) -> String {
        let now = chrono::Local::now().fixed_offset();
        let all = self.steps_at(now);
        let ours = |text: &str| Cell::Ours(plain(text));
        let head = [
            "Room",
            "Figure",
            "Step",
            "What is done",
            "Done",
            "Stands",
            "Source",
        ];
        let mut rows = vec![head.map(ours).to_vec()];
        for step in &all {
            let done = match step.state {
                State::Done(Some(when)) => when.format("%Y-%m-%d %H:%M").to_string(),
                State::Done(None) => "yes".to_owned(),
                _ => String::new(),
            };
            let stands = match step.state {
                State::Done(_) => String::new(),
                _ => self.step_says(step, &all, now),
            };
            let cite = step.cite.as_ref().map(super::words::cite);
            rows.push(vec![
                ours(&self.room_named(step.room)),
                ours(&self.step_figure(step)),
                Cell::ByHand(plain(&self.step_title(step))),
                Cell::ByHand(plain(&self.step_does(step))),
                ours(&done),
                ours(&stands),
                ours(&cite.unwrap_or_default()),
            ]);
        }
        csv(&rows)
    }

    fn buying_csv(&self) -> String {
        let ours = |text: &str| Cell::Ours(plain(text));
        let mut rows = vec![
            ["Shelf", "What", "To buy", "For", "Price", "Got"]
                .map(ours)
                .to_vec(),
        ];
        for line in self.buying_lines() {
            let what = if matches!(line.key, LineKey::ByHand(_)) {
                Cell::ByHand(plain(&line.title))
            } else {
                ours(&line.title)
            };
            let price = line
                .price
                .map(|price| format!("{}.{:02}", price.as_minor() / 100, price.as_minor() % 100))
                .unwrap_or_default();
            let packs = if line.packs.is_empty() {
                String::new()
            } else {
                self.packs(&line)
            };
            rows.push(vec![
                ours(line.shelf.title()),
                what,
                ours(&packs),
                ours(&line.detail),
                ours(&price),
                ours(if line.ticked { "yes" } else { "" }),
            ]);
        }
        csv(&rows)
    }
}
