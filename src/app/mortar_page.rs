//! The mortar screen.

use super::mix_page::big;
use super::{App, Chip, Choice, Command, MixChoice, MixSlot, Row, Screen, Slot, Tone, view::Big};
use crate::drawing::bed_sketch;
use crate::measure::Amount;
use crate::site::Id;
use crate::trades::mortar::{self, Drain, HeldBy, Ingredient, Mix, Shrink, Under, Work};

impl App {
    /// The mortar screen.
    pub(super) fn mortar_page(&self, at: usize, of: Option<Id>) -> Screen {
        let base = self.mix_base(at, "Mortar", of);
        let Some(ask) = self.mortar_ask(at) else {
            return self.bench_page();
        };
        let figured = mortar::figure(&ask);
        let mut rows = Vec::new();
        let (mut strip, mut results, mut main) = (Vec::new(), Vec::new(), base.main.clone());
        let mut picture = None;
        match &figured {
            Err(problem) => {
                main = None;
                rows.push(match problem {
                    mortar::Problem::Beyond { least, most, .. } => self.out_of_range(least, most),
                    mortar::Problem::NotMeasured => Row::Note {
                        tone: Tone::Stop,
                        text: "Something is not measured yet. Fill in the blue figures.".into(),
                        detail: String::new(),
                        mend: None,
                    },
                });
            }
            Ok(figure) => {
                strip = self.mortar_strip(figure);
                // What can hurt stands right under the result, before its details.
                rows.extend(self.warnings(&figure.account));
                results = self.remarks(&figure.account);
                results.extend(self.mortar_results(at, figure));
                if let (Some(bed), Work::Bed(asked, _)) = (&figure.bed, &ask.work) {
                    let sketch = bed_sketch((asked.across, asked.up), bed, self.job.units);
                    picture = Some(sketch.map_tags(|on: u8| match on {
                        0 => Command::Pad(Slot::Mix(at, MixSlot::BedAcross)),
                        _ => Command::Pad(Slot::Mix(at, MixSlot::BedUp)),
                    }));
                }
            }
        }
        if matches!(ask.work, Work::Setting(_)) {
            rows.extend(self.tile_offers(at, of));
        }
        rows.extend(self.mortar_inputs(at, &ask, of.is_some()));
        rows.extend(results);
        rows.extend(self.task_rows(at));
        Screen {
            rows,
            strip,
            main,
            picture,
            ..base
        }
    }

    fn mortar_strip(&self, figure: &mortar::Figure) -> Vec<Big> {
        let mut strip: Vec<Big> = figure
            .dry
            .iter()
            .take(3)
            .map(|part| big(self.amount(part.mass), ingredient(part.what)))
            .collect();
        strip.push(big(
            figure.batches.count.to_string(),
            if figure.batches.count == 1 {
                "batch"
            } else {
                "batches"
            },
        ));
        strip
    }

    fn mortar_results(&self, at: usize, figure: &mortar::Figure) -> Vec<Row> {
        let mut rows = vec![Row::Heading("Batch by batch".into())];
        rows.extend(self.batch_begun(at));
        let batches = &figure.batches;
        let held = match batches.held_by {
            HeldBy::Bucket => "as much as the bucket takes",
            HeldBy::Time => "as much as is laid before it stiffens",
            HeldBy::All => "all of it at once",
        };
        rows.push(Row::Figure {
            label: "A batch".into(),
            detail: held.into(),
            value: self.amount(Amount::Bulk(batches.each)),
            command: None,
        });
        for part in &batches.dry {
            rows.push(Row::Figure {
                label: format!("In a batch: {}", ingredient(part.what)),
                detail: format!("{} loose", self.amount(Amount::Bulk(part.volume))),
                value: self.amount(part.mass),
                command: None,
            });
        }
        if let Some((least, most)) = batches.water {
            rows.push(Row::ours("Water in a batch", self.range(least, most)));
        }
        if let Some(area) = batches.area {
            rows.push(Row::ours("A batch does", self.amount(area)));
        }
        rows.push(Row::ours(
            "Rest, then stir again",
            self.amount(batches.slake.clone()),
        ));
        rows.push(Row::ours(
            "Time to lay a batch",
            self.amount(Amount::Minutes(batches.minutes)),
        ));
        rows.push(Row::ours(
            "Paddle, at most",
            format!("{} turns a minute", batches.most_turns),
        ));
        rows.push(Row::ours(
            "Mortar in place",
            self.amount(Amount::Bulk(figure.volume)),
        ));
        if let Some(setting) = &figure.setting {
            rows.push(Row::Heading("Under the tile".into()));
            let (low, high) = setting.covers;
            rows.push(Row::ours(
                "A bag covers",
                self.amount(Amount::Range(Box::new(low.into()), Box::new(high.into()))),
            ));
            rows.push(Row::Figure {
                label: "By the ridges at 45°, a bag covers".into(),
                detail: "a cross-check by geometry".into(),
                value: self.amount(setting.by_comb),
                command: None,
            });
            rows.push(Row::ours(
                "Contact to reach",
                self.amount(Amount::Share(setting.contact)),
            ));
        }
        if let Some(bed) = &figure.bed {
            rows.push(Row::Heading("The bed".into()));
            rows.push(Row::ours("Rim above the drain", self.show(bed.rise)));
            rows.push(Row::ours("Thick on the whole", self.show(bed.mean)));
            for run in &bed.runs {
                let spot = bed.spots.get(run.from);
                let depth = spot.map_or_else(String::new, |s| {
                    format!("{} deep there", self.show(s.depth))
                });
                rows.push(Row::Figure {
                    label: format!("Fall over {}", self.show(run.length)),
                    detail: depth,
                    value: self.amount(Amount::Slope(run.slope)),
                    command: None,
                });
            }
        }
        if !figure.conventions.is_empty() {
            rows.push(Row::Heading("Dry for wet, by each way of counting".into()));
            for way in &figure.conventions {
                let parts: Vec<String> = way
                    .dry
                    .iter()
                    .map(|part| {
                        format!(
                            "{} {}",
                            self.amount(Amount::Bulk(part.volume)),
                            ingredient(part.what)
                        )
                    })
                    .collect();
                rows.push(Row::Figure {
                    label: shrink_name(way.by).into(),
                    detail: parts.join(", "),
                    value: format!("{:.2}{}", way.factor, if way.used { ", used" } else { "" }),
                    command: None,
                });
            }
        }
        rows
    }

    fn mortar_inputs(&self, at: usize, ask: &mortar::Ask, linked: bool) -> Vec<Row> {
        let row = |label: &str, value, slot| self.mix_row(at, label, value, slot);
        let set = |choice| Command::Set(at, Choice::Mix(choice));
        let kind = match &ask.work {
            Work::Setting(setting) if setting.under == Under::Board => 1u8,
            Work::Setting(_) => 0,
            Work::Bed(..) => 2,
            Work::Volume(..) => 3,
        };
        let kinds = [
            (0, "Under tile"),
            (1, "Under board"),
            (2, "Sloped bed"),
            (3, "By volume"),
        ];
        let mut rows = vec![Row::choice(
            "What it is for",
            kinds.map(|(k, label)| Chip::new(label, k == kind, set(MixChoice::Work(k)))),
        )];
        match &ask.work {
            Work::Setting(setting) => {
                if linked {
                    rows.push(Row::Figure {
                        label: "Area".into(),
                        detail: "from the tile figure".into(),
                        value: self.amount(setting.area),
                        command: None,
                    });
                } else {
                    rows.push(row("Area", self.amount(setting.area), MixSlot::Area));
                    if let Under::Tile { a, b } = setting.under {
                        rows.push(row("Tile, one side", self.show(a), MixSlot::TileA));
                        rows.push(row("Tile, the other", self.show(b), MixSlot::TileB));
                    }
                }
                rows.push(row(
                    "Notch, wide",
                    self.show(setting.notch.width),
                    MixSlot::NotchWidth,
                ));
                rows.push(row(
                    "Notch, deep",
                    self.show(setting.notch.depth),
                    MixSlot::NotchDepth,
                ));
                rows.push(Row::choice(
                    "It gets wet",
                    [
                        (mortar::Place::Dry, "No"),
                        (mortar::Place::Wet, "Shower, or outside"),
                    ]
                    .map(|(place, label)| {
                        Chip::new(label, setting.place == place, set(MixChoice::Place(place)))
                    }),
                ));
                rows.push(Row::Heading("What the bag says goes first".into()));
                let covers = setting
                    .label
                    .covers
                    .map_or_else(|| "not given".to_owned(), |a| self.amount(a));
                rows.push(row(
                    "A bag holds",
                    self.amount(setting.label.bag),
                    MixSlot::Bag,
                ));
                rows.push(row("A bag covers", covers, MixSlot::Covers));
            }
            Work::Bed(bed, mix) => {
                rows.push(row("Across", self.show(bed.across), MixSlot::BedAcross));
                rows.push(row("Up", self.show(bed.up), MixSlot::BedUp));
                rows.push(row(
                    "Thick at the drain",
                    self.show(bed.at_drain),
                    MixSlot::AtDrain,
                ));
                rows.push(Row::choice(
                    "Drain",
                    [
                        (Drain::None, "None, level"),
                        (Drain::Centre, "In the middle"),
                        (Drain::Along(mortar::Wall::Near), "Along the near wall"),
                    ]
                    .map(|(drain, label)| {
                        Chip::new(label, bed.drain == drain, set(MixChoice::Drain(drain)))
                    }),
                ));
                rows.extend(self.mix_of(at, mix));
            }
            Work::Volume(volume, mix) => {
                rows.push(row(
                    "Mortar in place",
                    self.amount(Amount::Bulk(*volume)),
                    MixSlot::Volume,
                ));
                rows.extend(self.mix_of(at, mix));
            }
        }
        rows.push(Row::Heading("Bucket and pace".into()));
        rows.push(row(
            "The bucket holds",
            self.amount(ask.batch.bucket),
            MixSlot::Bucket,
        ));
        rows.push(row(
            "Filled to",
            self.amount(Amount::Share(ask.batch.fill)),
            MixSlot::Fill,
        ));
        rows.push(row(
            "You lay in an hour",
            self.amount(ask.batch.pace),
            MixSlot::Pace,
        ));
        rows.push(row(
            "Mixed beyond what is laid",
            self.amount(Amount::Share(ask.waste)),
            MixSlot::Waste,
        ));
        rows.push(Row::choice(
            "An old floor is under it",
            [(false, "No"), (true, "Yes")].map(|(yes, label)| {
                Chip::new(label, ask.old_floor == yes, set(MixChoice::OldFloor(yes)))
            }),
        ));
        rows
    }

    fn mix_of(&self, at: usize, mix: &Mix) -> Vec<Row> {
        let set = |choice| Command::Set(at, Choice::Mix(choice));
        let site = matches!(mix, Mix::Site(_));
        let mut rows = vec![Row::choice(
            "Mixed from",
            [(true, "Cement and sand"), (false, "Bags")]
                .map(|(yes, label)| Chip::new(label, yes == site, set(MixChoice::Site(yes)))),
        )];
        match mix {
            Mix::Site(parts) => {
                rows.push(self.mix_row(
                    at,
                    "Sand to one of cement",
                    format!("{}", parts.sand),
                    MixSlot::SandParts,
                ));
                rows.push(Row::choice(
                    "Sand is measured",
                    [
                        (Shrink::Rule38, "Damp and loose, 1.41"),
                        (Shrink::Dry133, "1.33"),
                        (Shrink::DryLoose, "Dry and loose, 1.10"),
                    ]
                    .map(|(by, label)| {
                        Chip::new(label, parts.by == by, set(MixChoice::Shrink(by)))
                    }),
                ));
            }
            Mix::Bags { bag, makes, .. } => {
                rows.push(self.mix_row(at, "A bag holds", self.amount(*bag), MixSlot::Bag));
                rows.push(self.mix_row(
                    at,
                    "A bag makes",
                    self.amount(Amount::Bulk(*makes)),
                    MixSlot::Makes,
                ));
            }
        }
        rows
    }
}

fn ingredient(what: Ingredient) -> &'static str {
    match what {
        Ingredient::Powder => "mortar powder",
        Ingredient::BedMix => "bed mix",
        Ingredient::Cement => "cement",
        Ingredient::Lime => "lime",
        Ingredient::Sand => "sand",
    }
}

fn shrink_name(by: Shrink) -> &'static str {
    match by {
        Shrink::Rule38 => "Rule 38, sand damp and loose",
        Shrink::Dry133 => "1.33 of dry for wet",
        Shrink::DryLoose => "Sand dry and loose",
        Shrink::SandFills => "As much sand as mortar",
        Shrink::Own(_) => "Your own factor",
    }
}
