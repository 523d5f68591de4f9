//! The grout and mortar screens.

use super::{
    App, Chip, Choice, Command, Here, MixChoice, MixSlot, Row, Screen, Slot, Tone, view::Big,
};
use crate::measure::quantity::Volume;
use crate::measure::{Amount, Length};
use crate::site::Id;
use crate::takeoff::{Ask, Task};
use crate::trades::grout::{self, JointOf, Meeting, Seam};
use crate::trades::mortar::{self, Under, Work};
use crate::trades::tile::{self, Pattern};
use crate::trades::{Account, Grout};

impl App {
    /// The tile figure of a name, as it is asked and laid.
    fn tile_of(&self, id: Id) -> Option<(tile::Ask, super::tile_page::Laid)> {
        let at = self.job.tasks.iter().position(|task| task.id == id)?;
        let ask = self.tile_ask(at)?;
        let laid = self.tile_figure(&ask);
        laid.is_ok().then_some((ask, laid))
    }

    /// What is asked of grout, with what its tile figure knows.
    pub(super) fn grout_ask(&self, at: usize) -> Option<grout::Ask> {
        let Ask::Grout(stored, of) = &self.job.tasks.get(at)?.ask else {
            return None;
        };
        let mut ask = (**stored).clone();
        if let Some((tile, laid)) = of.and_then(|of| self.tile_of(of))
            && let Ok(figure) = laid.as_ref()
        {
            ask.area = figure.covered;
            ask.joints = match tile.pattern {
                Pattern::Grid | Pattern::Bond { .. } => JointOf::Grid {
                    a: tile.tile.long,
                    b: tile.tile.short,
                },
                Pattern::Hexagon => JointOf::Hexagon {
                    flats: tile.tile.long,
                },
                _ => JointOf::Area(figure.covered * figure.joints),
            };
            ask.width = tile.joint;
            ask.depth = tile.tile.thickness;
            let seam = |at, length, width: Length| Seam {
                at,
                length,
                width,
                depth: width.half(),
            };
            let soft: Length = figure.soft.iter().map(|(a, b)| a.distance(*b)).sum();
            ask.seams = [
                seam(Meeting::Perimeter, figure.edges, tile.gap),
                seam(
                    Meeting::Movement,
                    soft,
                    tile.joint.max(Length::in_64(0, 16)),
                ),
            ]
            .into_iter()
            .filter(|seam| seam.length.is_positive() && seam.width.is_positive())
            .collect();
        }
        Some(ask)
    }

    /// What is asked of mortar, with what its tile figure knows.
    pub(super) fn mortar_ask(&self, at: usize) -> Option<mortar::Ask> {
        let Ask::Mortar(stored, of) = &self.job.tasks.get(at)?.ask else {
            return None;
        };
        let mut ask = (**stored).clone();
        if let Some((tile, laid)) = of.and_then(|of| self.tile_of(of))
            && let Ok(figure) = laid.as_ref()
            && let Work::Setting(setting) = &mut ask.work
        {
            setting.area = figure.covered;
            if matches!(setting.under, Under::Tile { .. }) {
                setting.under = Under::Tile {
                    a: tile.tile.long,
                    b: tile.tile.short,
                };
            }
        }
        Some(ask)
    }

    /// A grout or mortar figure's account.
    pub(super) fn mix_account(&self, at: usize) -> Option<Account> {
        if let Some(ask) = self.grout_ask(at) {
            return grout::figure(&ask).ok().map(|figure| figure.account);
        }
        let figure = mortar::figure(&self.mortar_ask(at)?).ok()?;
        Some(figure.account)
    }

    /// A grout or mortar figure's last answer.
    pub(super) fn mix_answer(&self, at: usize) -> String {
        if let Some(Ok(figure)) = self.grout_ask(at).map(|ask| grout::figure(&ask)) {
            return self.amount(figure.mass);
        }
        match self.mortar_ask(at).map(|ask| mortar::figure(&ask)) {
            Some(Ok(figure)) => self.amount(Amount::Bulk(figure.mixed)),
            _ => "not figured yet".to_owned(),
        }
    }

    pub(super) fn mix_base(&self, at: usize, title: &str, of: Option<Id>) -> Screen {
        let named = of.and_then(|of| self.job.tasks.iter().position(|task| task.id == of));
        Screen {
            crumb: named.map_or_else(
                || "Quick, by hand".to_owned(),
                |tile| format!("For {}", self.task_name(tile).to_lowercase()),
            ),
            title: title.to_owned(),
            back: Some(named.map_or(Here::Bench, Here::Task)),
            ..Screen::default()
        }
        .with_main(self.list_button(at))
    }

    /// Where it is for no tile figure yet, those that there are.
    pub(super) fn tile_offers(&self, at: usize, of: Option<Id>) -> Option<Row> {
        let tile = |(n, task): (usize, &Task)| {
            let named = matches!(task.ask, Ask::Tile(..)).then(|| self.task_name(n))?;
            let laid = self.tile_of(task.id).is_some();
            laid.then(|| Chip::new(named, false, Command::MixFor(at, task.id)))
        };
        let chips: Vec<Chip> = self.job.tasks.iter().enumerate().filter_map(tile).collect();
        (of.is_none() && !chips.is_empty())
            .then(|| Row::choice("For tile that is figured already", chips))
    }

    /// The grout screen.
    pub(super) fn grout_page(&self, at: usize, of: Option<Id>) -> Screen {
        let base = self.mix_base(at, "Grout", of);
        let Some(ask) = self.grout_ask(at) else {
            return self.bench_page();
        };
        let mut rows = Vec::new();
        let mut strip = Vec::new();
        let mut results = Vec::new();
        let mut main = base.main.clone();
        match grout::figure(&ask) {
            Err(grout::Problem::Beyond { least, most, .. }) => {
                main = None;
                rows.push(self.out_of_range(&least, &most));
            }
            Ok(figure) => {
                strip = vec![
                    big(self.amount(figure.mass), grout_name(figure.kind)),
                    big(
                        format!("{:.2}", figure.bags),
                        &format!("bags of {}", self.amount(figure.bag)),
                    ),
                    big(
                        self.amount(Amount::Share(figure.fraction)),
                        "of the area is joint",
                    ),
                ];
                // What can hurt stands right under the result, before its details.
                rows.extend(self.warnings(&figure.account));
                results = self.remarks(&figure.account);
                results.extend(self.grout_results(at, &figure));
            }
        }
        rows.extend(self.tile_offers(at, of));
        rows.extend(self.grout_inputs(at, &ask, of.is_some()));
        rows.extend(results);
        rows.extend(self.task_rows(at));
        Screen {
            rows,
            strip,
            main,
            ..base
        }
    }

    pub(super) fn out_of_range(&self, least: &Amount, most: &Amount) -> Row {
        Row::Note {
            tone: Tone::Stop,
            text: format!(
                "A figure is out of range: it has to be from {} to {}.",
                self.amount(least.clone()),
                self.amount(most.clone())
            ),
            detail: String::new(),
            mend: None,
        }
    }

    fn grout_results(&self, at: usize, figure: &grout::Figure) -> Vec<Row> {
        let mut rows = vec![Row::Heading("Mixing and waiting".into())];
        rows.extend(self.batch_begun(at));
        if let Some((least, most)) = figure.water {
            rows.push(Row::ours("Water for all of it", self.range(least, most)));
        }
        rows.push(Row::ours(
            "Rest, then stir again",
            self.amount(figure.slake.clone()),
        ));
        rows.push(Row::ours(
            "Good in the bucket for",
            self.amount(figure.pot_life.clone()),
        ));
        rows.push(Row::ours("Grout after", self.amount(figure.wait.clone())));
        rows.push(Row::ours(
            "Joint to be open to at least",
            self.show(figure.open),
        ));
        rows.push(Row::ours("A bag covers", self.amount(figure.bag_covers)));
        if figure.sealant.value > 0.0 {
            rows.push(Row::ours(
                "Sealant, where no grout goes",
                self.amount(figure.sealant),
            ));
        }
        rows
    }

    pub(super) fn range(&self, least: Volume, most: Volume) -> String {
        self.amount(Amount::Range(Box::new(least.into()), Box::new(most.into())))
    }

    pub(super) fn mix_row(&self, at: usize, label: &str, value: String, slot: MixSlot) -> Row {
        Row::yours(label, value, Command::Pad(Slot::Mix(at, slot)))
    }

    fn grout_inputs(&self, at: usize, ask: &grout::Ask, linked: bool) -> Vec<Row> {
        let row = |label, value, slot| self.mix_row(at, label, value, slot);
        let mut rows = Vec::new();
        if linked {
            for (label, value) in [
                ("Area", self.amount(ask.area)),
                ("Joint", self.show(ask.width)),
                ("Depth", self.show(ask.depth)),
            ] {
                rows.push(Row::Figure {
                    label: label.into(),
                    detail: "from the tile figure".into(),
                    value,
                    command: None,
                });
            }
        } else {
            rows.push(row("Tiled area", self.amount(ask.area), MixSlot::Area));
            if let JointOf::Grid { a, b } = ask.joints {
                rows.push(row("Tile, one side", self.show(a), MixSlot::TileA));
                rows.push(row("Tile, the other", self.show(b), MixSlot::TileB));
            }
            rows.push(row("Joint", self.show(ask.width), MixSlot::Width));
            rows.push(row(
                "Depth of the joint",
                self.show(ask.depth),
                MixSlot::Depth,
            ));
        }
        let set = |choice| Command::Set(at, Choice::Mix(choice));
        rows.push(Row::choice(
            "Which grout",
            [
                (None, "By the joint"),
                (Some(Grout::Unsanded), "Unsanded"),
                (Some(Grout::Sanded), "Sanded"),
            ]
            .map(|(kind, label)| Chip::new(label, ask.kind == kind, set(MixChoice::Grout(kind)))),
        ));
        rows.push(Row::choice(
            "Sand scratches the face",
            [(false, "No"), (true, "Yes")].map(|(yes, label)| {
                Chip::new(label, ask.scratches == yes, set(MixChoice::Scratches(yes)))
            }),
        ));
        let color = if ask.color.is_empty() {
            "not said"
        } else {
            &ask.color
        };
        rows.push(row("Colour", color.to_owned(), MixSlot::Color));
        rows.push(row(
            "Bought beyond the joints",
            self.amount(Amount::Share(ask.waste)),
            MixSlot::Waste,
        ));
        rows.push(Row::Heading("What the bag says goes first".into()));
        let or_not = |amount: Option<Amount>| {
            amount.map_or_else(|| "not given".to_owned(), |a| self.amount(a))
        };
        let label = &ask.label;
        rows.push(row(
            "A bag holds",
            match label.bag {
                Some(bag) => self.amount(bag),
                // A usual bag is counted where none is given.
                None => grout::figure(ask).map_or_else(
                    |_| "not given".to_owned(),
                    |figure| format!("{}, as usual", self.amount(figure.bag)),
                ),
            },
            MixSlot::Bag,
        ));
        rows.push(row(
            "A bag covers",
            or_not(label.covers.map(Amount::Area)),
            MixSlot::Covers,
        ));
        rows.push(row(
            "Water for a bag",
            or_not(label.water.map(|w| Amount::Volume(w.0))),
            MixSlot::Water,
        ));
        rows.push(row(
            "Good in the bucket for",
            or_not(label.pot_life.map(Amount::Hours)),
            MixSlot::PotLife,
        ));
        rows.push(row(
            "Grout after",
            or_not(label.wait.map(Amount::Hours)),
            MixSlot::Wait,
        ));
        rows
    }
}

pub(super) fn big(value: String, label: &str) -> Big {
    Big {
        value,
        label: label.to_owned(),
    }
}

fn grout_name(kind: Grout) -> &'static str {
    match kind {
        Grout::Unsanded => "unsanded grout",
        Grout::Sanded => "sanded grout",
        Grout::HeavySand => "grout with coarse sand",
    }
}
