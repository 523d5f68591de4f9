//! The paint screen.

use super::{App, Chip, Command, Here, PaintSlot, Row, Screen, Slot, Tone, view::Big, words};
use crate::drawing::{PaintTag, Scene, paint_sketch};
use crate::measure::quantity::Area;
use crate::measure::{Amount, Length};
use crate::site::{self, Finish, OpeningRule, Wall};
use crate::takeoff::Ask;
use crate::trades::paint::{self, Part, Surface, Texture};
use crate::trades::patch;

impl App {
    /// What is asked, with what the room knows filled in.
    pub(super) fn paint_ask(&self, at: usize) -> Option<paint::Ask> {
        let task = self.job.tasks.get(at)?;
        let Ask::Paint(ask, rule) = &task.ask else {
            return None;
        };
        let mut ask = (**ask).clone();
        if let Some(number) = task.room {
            let room = self.job.rooms.get(number)?;
            let shape = site::shape(room).ok()?;
            let areas = site::wall_areas(room, &shape, *rule).ok()?;
            let texture = ask.surfaces.first().map_or(Texture::Smooth, |s| s.kind);
            ask.surfaces = areas
                .iter()
                .enumerate()
                .filter(|(index, _)| room.walls[*index].finish == Finish::Paint)
                .map(|(index, areas)| {
                    let (length, height) = (
                        shape.walls[index].0,
                        room.walls[index]
                            .height
                            .or(room.ceiling)
                            .unwrap_or(Length::ZERO),
                    );
                    let mut wall = Surface::wall(length, height);
                    wall.name = format!("Wall {}", Wall::named(index));
                    wall.area = areas.net;
                    wall.kind = texture;
                    wall
                })
                .collect();
            if room.ceiling_finish == Finish::Paint {
                ask.surfaces.push(Surface {
                    name: "Ceiling".into(),
                    part: Part::Ceiling,
                    area: shape.corners.area(),
                    height: room.ceiling,
                    width: None,
                    kind: texture,
                    cut_in: shape.walls.iter().map(|(length, _)| *length).sum(),
                });
            }
            ask.patched = self.patched_areas(number);
        } else {
            ask.surfaces.retain(|surface| surface.area.value > 0.0);
        }
        ask.trim
            .retain(|trim| trim.length.is_positive() && trim.face.is_positive());
        Some(ask)
    }

    /// What the patches of a room leave bare, to be primed.
    fn patched_areas(&self, room: usize) -> Vec<Area> {
        (0..self.job.tasks.len())
            .filter(|&at| self.job.tasks[at].room == Some(room))
            .filter_map(|at| patch::figure(&self.patch_ask(at)?).ok())
            .filter_map(|figure| figure.piece)
            .map(|(across, up)| crate::measure::quantity::area(across, up))
            .collect()
    }

    /// A paint figure's last answer.
    pub(super) fn paint_answer(&self, at: usize) -> String {
        let figure = self.paint_ask(at).and_then(|ask| paint::figure(&ask).ok());
        figure.map_or_else(
            || "not figured yet".to_owned(),
            |figure| self.amount(figure.walls + figure.ceiling + figure.trim),
        )
    }

    /// The paint screen.
    pub(super) fn paint_page(&self, at: usize, stored: &paint::Ask, rule: OpeningRule) -> Screen {
        let task = &self.job.tasks[at];
        let room = task.room.and_then(|room| self.job.rooms.get(room));
        let base = Screen {
            crumb: room.map_or_else(|| "Quick, no room".to_owned(), |room| room.name.clone()),
            title: "Paint".into(),
            back: Some(Here::Bench),
            ..Screen::default()
        };
        let Some(ask) = self.paint_ask(at) else {
            let mut rows = vec![Row::Note {
                tone: Tone::Caution,
                text: "The room is not measured far enough: it needs its walls and its ceiling height.".into(),
                detail: String::new(),
                mend: task.room.map(|room| Chip::new("Measure the room", false, Command::Go(Here::Room(room)))),
            }];
            rows.extend(self.task_rows(at));
            return Screen { rows, ..base };
        };
        let picture = self.paint_picture(at, &ask, stored);
        let mut rows = Vec::new();
        let (mut strip, mut main) = (Vec::new(), None);
        match paint::figure(&ask) {
            Err(problem) => rows.push(Row::Note {
                tone: Tone::Stop,
                text: words::paint_problem(&problem, self.job.units),
                detail: String::new(),
                mend: None,
            }),
            Ok(figure) => {
                main = Some(self.list_button(at));
                for (volume, label) in [
                    (figure.walls, "wall paint"),
                    (figure.ceiling, "ceiling paint"),
                    (figure.trim, "trim paint"),
                    (figure.primer, "primer"),
                ] {
                    if volume.value > 0.0 {
                        strip.push(Big {
                            value: self.amount(volume),
                            label: label.into(),
                        });
                    }
                }
                // What can hurt stands right under the result, before its details.
                rows.extend(self.notes(&figure.account));
                rows.extend(self.paint_results(&figure));
            }
        }
        rows.push(Row::Heading("What is painted".into()));
        rows.extend(self.paint_inputs(at, &ask, stored, room.is_some().then_some(rule)));
        rows.extend(self.lay_rows(at));
        rows.extend(self.task_rows(at));
        Screen {
            picture: Some(picture),
            rows,
            strip,
            main,
            ..base
        }
    }

    /// The sketch: of surfaces by hand with their figures, of a room's walls each leading to its wall.
    fn paint_picture(&self, at: usize, ask: &paint::Ask, stored: &paint::Ask) -> Scene<Command> {
        let units = self.job.units;
        let pad = |slot| Command::Pad(Slot::Paint(at, slot));
        let Some(room) = self.job.tasks[at].room else {
            return paint_sketch(stored, true, units).map_tags(|tag| match tag {
                PaintTag::Width(n) | PaintTag::Surface(n) => pad(PaintSlot::Width(n)),
                PaintTag::Height(n) => pad(PaintSlot::Height(n)),
            });
        };
        let walls: Vec<usize> = self.job.rooms.get(room).map_or_else(Vec::new, |room| {
            let walls = room.walls.iter().enumerate();
            walls
                .filter(|(_, wall)| wall.finish == Finish::Paint)
                .map(|(index, _)| index)
                .collect()
        });
        paint_sketch(ask, false, units).map_tags(|tag| match tag {
            PaintTag::Height(_) => Command::Pad(Slot::Ceiling(room)),
            PaintTag::Width(n) | PaintTag::Surface(n) => match walls.get(n) {
                Some(wall) => Command::Go(Here::Wall(room, *wall)),
                None => Command::Go(Here::Room(room)),
            },
        })
    }

    fn paint_results(&self, figure: &paint::Figure) -> Vec<Row> {
        let mut rows = Vec::new();
        if let Some(pole) = figure.pole {
            let pole = match pole.pole {
                paint::Pole::None => "none needed",
                paint::Pole::Short => "2 to 4 ft, from the floor",
                paint::Pole::Long => "4 to 8 ft, from the floor",
                paint::Pole::Beyond => "longer than 8 ft: a platform",
            };
            rows.push(Row::ours("Pole", pole));
        }
        rows.push(Row::ours("Cut in with a brush", self.show(figure.cut_in)));
        rows.push(Row::ours(
            "Roller nap",
            self.amount(Amount::Range(
                Box::new(figure.nap.0.into()),
                Box::new(figure.nap.1.into()),
            )),
        ));
        rows.push(Row::ours(
            "Next coat after",
            self.amount(figure.recoat.clone()),
        ));
        let (low, high) = figure.temperature;
        rows.push(Row::ours(
            "Air and surface",
            self.amount(Amount::Range(
                Box::new(Amount::Temperature(low)),
                Box::new(Amount::Temperature(high)),
            )),
        ));
        if let Some(wet) = figure.wet_film {
            rows.push(Row::ours(
                "Wet film of a coat",
                self.amount(Amount::Film(wet)),
            ));
        }
        if let Some(dry) = figure.dry_film {
            rows.push(Row::ours(
                "Dry film of a coat",
                self.amount(Amount::Film(dry)),
            ));
        }
        rows
    }
}
