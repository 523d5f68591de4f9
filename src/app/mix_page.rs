//! The grout and mortar screens.

use super::{
    App, Chip, Choice, Command, Here, MixChoice, MixSlot, Row, Screen, Slot, Tone, view::Big,
};
use crate::drawing::bed_sketch;
use crate::measure::Amount;
use crate::measure::quantity::Volume;
use crate::site::Id;
use crate::takeoff::Ask;
use crate::trades::grout::{self, JointOf, Meeting, Seam};
use crate::trades::mortar::{self, Drain, HeldBy, Ingredient, Mix, Shrink, Under, Work};
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
            if tile.gap.is_positive() {
                ask.seams = vec![Seam {
                    at: Meeting::Perimeter,
                    length: figure.edges,
                    width: tile.gap,
                    depth: tile.gap.half(),
                }];
            }
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

    fn mix_base(&self, at: usize, title: &str, of: Option<Id>) -> Screen {
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
                    big(format!("{:.2}", figure.bags), "bags, before rounding up"),
                    big(
                        self.amount(Amount::Share(figure.fraction)),
                        "of the area is joint",
                    ),
                ];
                results = self.notes(&figure.account);
                results.extend(self.grout_results(at, &figure));
            }
        }
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

    fn out_of_range(&self, least: &Amount, most: &Amount) -> Row {
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
        let mut rows = vec![
            Row::Heading("Mixing and waiting".into()),
            Row::button("A batch is mixed now: time it", Command::Mixed(at)),
        ];
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

    fn range(&self, least: Volume, most: Volume) -> String {
        self.amount(Amount::Range(Box::new(least.into()), Box::new(most.into())))
    }

    fn mix_row(&self, at: usize, label: &str, value: String, slot: MixSlot) -> Row {
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
            or_not(label.bag.map(Amount::Mass)),
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
                results = self.notes(&figure.account);
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
        let mut rows = vec![
            Row::Heading("Batch by batch".into()),
            Row::button("A batch is mixed now: time it", Command::Mixed(at)),
        ];
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
                label: format!("{} in a batch", ingredient(part.what)),
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

fn big(value: String, label: &str) -> Big {
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
