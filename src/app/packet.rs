//! The packet of a job as files: names and bytes, written by whoever asked.

use super::cutting_plan::Plan;
use super::{App, Command, Here};
use crate::drawing::{Canvas, Palette, Theme, lay_out, paint, png, svg};
use crate::measure::plain;
use crate::packet::{Cell, csv};
use crate::takeoff::{LineKey, State};

impl App {
    /// Every file of the packet: the buying list and the cutting plan, and each sketch as SVG and PNG.
    ///
    /// # Errors
    /// Where a picture cannot be encoded.
    pub fn packet(&mut self) -> Result<Vec<(String, Vec<u8>)>, String> {
        let mut files = vec![
            ("buying-list.csv".to_owned(), self.buying_csv().into_bytes()),
            ("steps.csv".to_owned(), self.steps_csv().into_bytes()),
        ];
        let plans = self.cut_plans();
        if !plans.is_empty() {
            files.push((
                "cutting-plan.csv".to_owned(),
                self.cutting_csv(&plans).into_bytes(),
            ));
        }
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
        places.extend(plans.iter().enumerate().map(|(at, plan)| {
            let here = Here::Cutting(Some(plan.material.clone()));
            (format!("cutting-plan-{}", at + 1), here)
        }));
        for at in 0..self.job.tasks.len() {
            if let Some(text) = self.strip_file(at) {
                files.push((format!("figure-{}-strip.svg", at + 1), text.into_bytes()));
            }
        }
        for at in 0..self.job.tasks.len() {
            if let Some(text) = self.pieces_csv(at) {
                files.push((format!("figure-{}-pieces.csv", at + 1), text.into_bytes()));
                places.extend(self.pieces_of(at).map(|(n, number)| {
                    let name = format!("figure-{}-piece-{number}", at + 1);
                    (name, Here::Piece(at, n))
                }));
            }
        }
        for at in 0..self.job.tasks.len() {
            if let Some(text) = self.trim_csv(at) {
                files.push((format!("figure-{}-pieces.csv", at + 1), text.into_bytes()));
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
                let stem = self.picture_stem(&self.job.photos[at]);
                files.push((format!("photo-{}_{stem}.jpg", at + 1), bytes));
            }
        }
        Ok(files)
    }

    /// Every piece with the stick that it comes out of, in the order of the cuts; what is held back with its reason.
    fn cutting_csv(&self, plans: &[Plan]) -> String {
        let ours = |text: &str| Cell::Ours(plain(text));
        let mut rows = vec![
            [
                "Material",
                "From",
                "Its length",
                "Piece",
                "Cut",
                "Figure",
                "Leg",
                "Left over",
            ]
            .map(ours)
            .to_vec(),
        ];
        for plan in plans {
            let title = ours(&plan.title);
            for held in &plan.held {
                // A run's own name may be in it.
                let mut row = vec![
                    title.clone(),
                    ours("held back"),
                    Cell::ByHand(plain(&held.says)),
                ];
                row.resize(8, ours(""));
                rows.push(row);
            }
            for (n, bar) in plan
                .cuts
                .iter()
                .flat_map(|cuts| cuts.bars.iter().enumerate())
            {
                let from = match bar.offcut {
                    Some(offcut) => format!("off-cut {}", offcut + 1),
                    None => format!("stick {}", n + 1),
                };
                for (place, piece) in bar.pieces.iter().enumerate() {
                    let at = self.job.tasks.iter().position(|task| task.id == piece.of);
                    let leg = at.and_then(|at| self.leg_of(at, piece.number));
                    let last = place + 1 == bar.pieces.len();
                    rows.push(vec![
                        title.clone(),
                        ours(&from),
                        ours(&self.show(bar.length)),
                        ours(&plan.marks.mark(piece)),
                        ours(&self.show(piece.length)),
                        Cell::ByHand(plain(&at.map_or_else(String::new, |at| self.task_name(at)))),
                        ours(&leg.map_or_else(String::new, |leg| (leg + 1).to_string())),
                        ours(&if last {
                            self.show(bar.rest)
                        } else {
                            String::new()
                        }),
                    ]);
                }
            }
        }
        csv(&rows)
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
