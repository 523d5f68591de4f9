//! Two or three specs of one surface side by side.

use super::{App, Command, Here, Row, Screen};
use crate::drawing::{Look, Scene, TileTag, side_by_side, tile_sketch};
use crate::takeoff::{Ask, Job, PackKey, packs_on_sale};
use crate::trades::tile::Figure;
use crate::trades::{Material, grout, mortar};

/// Specs that stand beside each other.
const MOST: usize = 3;

impl App {
    /// The tile figures of the same surface as one of them, the asked one first.
    fn rivals(&self, at: usize) -> Vec<usize> {
        let surface = |n: usize| match &self.job.tasks.get(n)?.ask {
            Ask::Tile(ask, on) => Some((self.job.tasks[n].room, *on, ask.surface.clone())),
            _ => None,
        };
        let Some(ours) = surface(at) else {
            return Vec::new();
        };
        // A surface of the room is the same whatever rectangle was typed before.
        let same = |n: &usize| {
            surface(*n).is_some_and(|theirs| {
                (theirs.0, theirs.1) == (ours.0, ours.1) && (ours.0.is_some() || theirs.2 == ours.2)
            })
        };
        let mut all = vec![at];
        all.extend((0..self.job.tasks.len()).filter(|n| *n != at).filter(same));
        all.truncate(MOST);
        all
    }

    /// Whether there is another spec to stand beside this one.
    pub(super) fn has_rivals(&self, at: usize) -> bool {
        self.rivals(at).len() > 1
    }

    /// Another spec of the same surface, as a copy to be changed.
    pub(super) fn twin(&mut self, at: usize) {
        let Some(task) = self.job.tasks.get(at) else {
            return;
        };
        let (room, ask) = (task.room, task.ask.clone());
        // An outline that was an estimate is one in the copy too.
        let traced = self.job.traced.get(&task.id).copied();
        let second = |job: &mut Job| {
            job.add_task(room, ask);
            if let (Some(task), Some(traced)) = (job.tasks.last(), traced) {
                job.traced.insert(task.id, traced);
            }
        };
        if self.edited("A second spec of the same surface", second) {
            self.go(super::fill::last_task(&self.job));
        }
    }

    /// The specs of one surface, side by side: drawings, then each figure in a row.
    pub(super) fn compare_page(&self, at: usize) -> Screen {
        let rivals = self.rivals(at);
        let mut sketches: Vec<Scene<TileTag>> = Vec::new();
        let mut figures = Vec::new();
        for rival in &rivals {
            let Some(ask) = self.tile_ask(*rival) else {
                continue;
            };
            let laid = self.tile_figure(&ask);
            if let Ok(figure) = laid.as_ref() {
                sketches.push(tile_sketch(
                    &ask,
                    Some(figure),
                    Look {
                        own: false,
                        joint: self.joint_role(*rival),
                        picked: None,
                    },
                    self.job.units,
                ));
                figures.push((*rival, ask, figure.clone()));
            }
        }
        let row = |label: &str, values: Vec<String>| Row::ours(label, values.join("  |  "));
        let each = |of: &dyn Fn(&Figure) -> String| -> Vec<String> {
            figures.iter().map(|(_, _, figure)| of(figure)).collect()
        };
        let mut rows = vec![Row::Heading("Left to right as drawn".into())];
        rows.push(row(
            "Tile",
            figures
                .iter()
                .map(|(_, ask, _)| {
                    format!(
                        "{} × {}",
                        self.show(ask.tile.long),
                        self.show(ask.tile.short)
                    )
                })
                .collect(),
        ));
        rows.push(row(
            "Joint",
            figures
                .iter()
                .map(|(_, ask, _)| self.show(ask.joint))
                .collect(),
        ));
        rows.push(row(
            "Pattern",
            figures
                .iter()
                .map(|(_, ask, _)| super::tile_inputs::pattern_name(ask.pattern))
                .collect(),
        ));
        rows.push(row(
            "Turned by",
            figures
                .iter()
                .map(|(_, ask, _)| ask.turn.show(crate::measure::Figures::Set))
                .collect(),
        ));
        rows.push(row(
            "Tiles to have",
            each(&|f| super::tile_page::counted(f.to_buy, f.layout.sheets.is_some())),
        ));
        rows.push(row(
            "Boxes",
            each(&|f| {
                f.boxes
                    .map_or_else(|| "not counted".into(), |(boxes, _)| boxes.to_string())
            }),
        ));
        rows.push(row("Cut pieces", each(&|f| f.layout.cut().to_string())));
        rows.push(row(
            "Under half a tile",
            each(&|f| f.small.len().to_string()),
        ));
        rows.push(row(
            "Narrowest cut",
            each(&|f| {
                f.narrowest
                    .map_or_else(|| "none".into(), |cut| self.show(cut))
            }),
        ));
        rows.push(row(
            "Grout",
            figures
                .iter()
                .map(|(_, ask, figure)| {
                    let ask = grout::Ask {
                        area: figure.covered,
                        joints: grout::JointOf::Area(figure.covered * figure.joints),
                        width: ask.joint,
                        depth: ask.tile.thickness,
                        ..grout::Ask::default()
                    };
                    grout::figure(&ask).map_or_else(|_| "?".into(), |g| self.amount(g.mass))
                })
                .collect(),
        ));
        rows.push(row(
            "Mortar powder",
            figures
                .iter()
                .map(|(_, ask, figure)| {
                    let setting = mortar::Setting {
                        area: figure.covered,
                        under: mortar::Under::Tile {
                            a: ask.tile.long,
                            b: ask.tile.short,
                        },
                        ..mortar::Setting::default()
                    };
                    let ask = mortar::Ask {
                        work: mortar::Work::Setting(setting),
                        ..mortar::Ask::default()
                    };
                    let powder = mortar::figure(&ask)
                        .ok()
                        .and_then(|m| m.dry.first().copied());
                    powder.map_or_else(|| "?".into(), |part| self.amount(part.mass))
                })
                .collect(),
        ));
        rows.push(row(
            "Price of the tile",
            figures
                .iter()
                .map(|(_, _, figure)| self.tile_price(figure))
                .collect(),
        ));
        rows.push(Row::Heading("Open one".into()));
        for (n, (rival, ask, _)) in figures.iter().enumerate() {
            rows.push(Row::Figure {
                label: format!("Spec {}", n + 1),
                detail: format!(
                    "{} × {}",
                    self.show(ask.tile.long),
                    self.show(ask.tile.short)
                ),
                value: self.tile_answer(*rival),
                command: Some(Command::Go(Here::Task(*rival))),
            });
        }
        Screen {
            crumb: self.task_name(at),
            title: "Side by side".into(),
            back: Some(Here::Task(at)),
            picture: Some(side_by_side(sketches).map_tags(|_| Command::Go(Here::Task(at)))),
            rows,
            ..Screen::default()
        }
    }

    /// What the boxes of a figure cost, where their price is on the buying list.
    fn tile_price(&self, figure: &Figure) -> String {
        let Some(need) = figure.account.needs.first() else {
            return "no price".to_owned();
        };
        let (Material::Tile { in_box, .. } | Material::MosaicSheet { in_box, .. }) = need.material
        else {
            return "no price".to_owned();
        };
        let packs = match figure.boxes {
            Some((boxes, _)) if in_box > 0 => i64::from(boxes),
            _ => figure.to_buy as i64,
        };
        packs_on_sale(&need.material, false)
            .first()
            .and_then(|pack| {
                self.job
                    .buying
                    .prices
                    .get(&PackKey::new(&need.material, pack))
            })
            .map_or_else(
                || "no price".to_owned(),
                |price| price.times(packs).show(&self.job.buying.symbol),
            )
    }
}
