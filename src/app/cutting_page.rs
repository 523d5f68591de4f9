//! The cutting plan: sticks drawn as bars, what they are cut from, and what remains.

use super::cutting_plan::{Marks, letter};
use super::{
    App, Chip, Command, CutChoice, CutSlot, Here, Kind, Row, Screen, Slot, Tone, view::Big, words,
};
use crate::drawing::{MOST_STICKS, Stick, bars_sketch};
use crate::handbook::cutting as book;
use crate::measure::{Figures, Length, Rounding};
use crate::takeoff::{Cuts, Job, Saw, Setup};
use crate::trades::Material;

impl App {
    /// Lengths commonly on sale.
    pub(super) fn usual_lengths(&self) -> [Length; 6] {
        if self.job.units.is_metric() {
            book::LENGTHS_METRIC.value
        } else {
            book::LENGTHS.value
        }
    }

    /// The cutting plan of a material; of the first one where none is named.
    pub(super) fn cutting_page(&self, of: Option<&Material>) -> Screen {
        let plans = self.cut_plans();
        let now = plans
            .iter()
            .find(|plan| Some(&plan.material) == of)
            .or(plans.first());
        let base = Screen {
            crumb: "Buying list".into(),
            title: "Cutting plan".into(),
            back: Some(Here::Buy),
            ..Screen::default()
        };
        let Some(plan) = now else {
            return Screen {
                rows: vec![Row::Text(
                    "Nothing on the buying list is cut from sticks.".into(),
                )],
                ..base
            };
        };
        let material = &plan.material;
        let mut rows = Vec::new();
        if plans.len() > 1 {
            rows.push(Row::choice(
                "Material",
                plans.iter().map(|each| {
                    let here = Here::Cutting(Some(each.material.clone()));
                    let on = each.material == *material;
                    Chip::new(each.title.clone(), on, Command::Go(here))
                }),
            ));
        }
        rows.extend(plan.held.iter().map(|held| {
            Row::Note {
                tone: Tone::Stop,
                text: held.says.clone(),
                detail: if held.with_run {
                "Its sticks are set with the run. This material is held back until then; the others are planned."
            } else {
                "This material is held back until then; the others are planned."
            }
            .into(),
                mend: held
                    .at
                    .map(|at| Chip::new("Look at it", false, Command::Go(Here::Task(at)))),
            }
        }));
        let setup = self.setup(material);
        let (mut picture, mut strip) = (None, Vec::new());
        if let Some(cuts) = &plan.cuts {
            rows.extend(self.cuts_rows(cuts));
            strip = self.cuts_strip(cuts);
            picture = Some(self.bars(cuts, setup.saw.kerf(), &plan.marks));
        }
        // Other sticks here would not help a run that was refused for its own.
        if plan.held.iter().all(|held| !held.with_run) {
            rows.extend(self.setup_rows(material, &setup));
        }
        if let Some(cuts) = &plan.cuts {
            rows.extend(self.stick_rows(cuts, &plan.marks));
        }
        Screen {
            crumb: plan.title.clone(),
            picture,
            rows,
            strip,
            ..base
        }
    }

    pub(super) fn setup(&self, material: &Material) -> Setup {
        let setup = self.job.buying.cutting.get(material);
        setup.cloned().unwrap_or_else(|| Setup::usual(material))
    }

    fn cuts_strip(&self, cuts: &Cuts) -> Vec<Big> {
        let big = |value: String, label: &str| Big {
            value,
            label: label.to_owned(),
        };
        let count = cuts.count();
        let mut strip = vec![big(
            count.to_string(),
            match (count, cuts.proven) {
                (1, true) => "stick: fewest, proven",
                (_, true) => "sticks: fewest, proven",
                (_, false) => "sticks to buy",
            },
        )];
        if !cuts.proven {
            strip.push(big(cuts.least.to_string(), "no plan takes fewer"));
        }
        if cuts.rest().is_positive() {
            strip.push(big(
                self.show(cuts.rest()),
                if cuts.longest_rest {
                    "longest rest there can be"
                } else {
                    "longest rest"
                },
            ));
        }
        strip
    }

    fn cuts_rows(&self, cuts: &Cuts) -> Vec<Row> {
        let note = |tone, text: String| Row::Note {
            tone,
            text,
            detail: String::new(),
            mend: None,
        };
        let mut rows = Vec::new();
        if !cuts.proven {
            rows.push(note(
                Tone::Note,
                format!(
                    "This plan takes {}; that none takes fewer than {} is proven, what lies between is not settled.",
                    cuts.count(),
                    cuts.least
                ),
            ));
        }
        rows
    }

    fn bars(&self, cuts: &Cuts, kerf: Length, marks: &Marks) -> crate::drawing::Scene<Command> {
        let name = |n: usize, offcut: Option<usize>| match offcut {
            Some(offcut) => format!("Off-cut {}", offcut + 1),
            None => format!("{}", n + 1),
        };
        let sticks: Vec<Stick> = cuts
            .bars
            .iter()
            .enumerate()
            .map(|(n, bar)| Stick {
                name: name(n, bar.offcut),
                length: bar.length,
                kerf,
                pieces: bar
                    .pieces
                    .iter()
                    .map(|p| (marks.mark(p), p.length))
                    .collect(),
                rest: bar.rest,
            })
            .collect();
        let tasks = &self.job.tasks;
        bars_sketch(&sticks, self.job.units).map_tags(|(stick, place): (usize, usize)| {
            let piece = cuts.bars.get(stick).and_then(|bar| bar.pieces.get(place));
            let at = piece.and_then(|piece| tasks.iter().position(|task| task.id == piece.of));
            Command::Go(at.map_or(Here::Buy, Here::Task))
        })
    }

    fn setup_rows(&self, material: &Material, setup: &Setup) -> Vec<Row> {
        let set = |choice| Command::Cut(material.clone(), choice);
        let pad = |slot| Command::Pad(Slot::Cut(material.clone(), slot));
        let usual = self.usual_lengths();
        let mut lengths = usual.to_vec();
        lengths.extend(setup.sticks.iter().filter(|own| !usual.contains(own)));
        let mut rows = vec![
            Row::choice(
                "Sticks on sale",
                lengths.into_iter().map(|length| {
                    let on = setup.sticks.contains(&length);
                    Chip::new(self.show(length), on, set(CutChoice::Stick(length)))
                }),
            ),
            Row::button("Another length on sale", pad(CutSlot::Stick)),
            Row::choice(
                "Cut with",
                [
                    (Saw::Cutter, "Wheel or shears"),
                    (Saw::Hand, "Hand saw"),
                    (Saw::Power, "Power saw"),
                ]
                .map(|(saw, label)| Chip::new(label, setup.saw == saw, set(CutChoice::Saw(saw)))),
            ),
            Row::Figure {
                label: "The saw takes with each cut".into(),
                detail: setup.saw.rule().map_or_else(
                    || "as you measured it".to_owned(),
                    |rule| words::cite(&rule.cite),
                ),
                value: self.show(setup.saw.kerf()),
                command: Some(pad(CutSlot::Kerf)),
            },
            Row::Heading("Off-cuts on hand".into()),
        ];
        for (n, offcut) in setup.offcuts.iter().enumerate() {
            rows.push(Row::yours(
                format!("Off-cut {}", n + 1),
                self.show(*offcut),
                pad(CutSlot::Offcut(n)),
            ));
            rows.push(Row::button(
                format!("Remove off-cut {}", n + 1),
                set(CutChoice::RemoveOffcut(n)),
            ));
        }
        rows.push(Row::button(
            "Write down an off-cut",
            pad(CutSlot::NewOffcut),
        ));
        rows
    }

    fn stick_rows(&self, cuts: &Cuts, marks: &Marks) -> Vec<Row> {
        let mut rows = vec![Row::Heading(
            "Stick by stick, in the order of the cuts".into(),
        )];
        if cuts.bars.len() > MOST_STICKS {
            rows.push(Row::Text(format!(
                "The first {MOST_STICKS} of {} are drawn; all of them are listed.",
                cuts.bars.len()
            )));
        }
        for (n, bar) in cuts.bars.iter().enumerate() {
            let pieces: Vec<String> = bar
                .pieces
                .iter()
                .map(|piece| format!("{} {}", marks.mark(piece), self.show(piece.length)))
                .collect();
            let label = match bar.offcut {
                Some(offcut) => format!("Off-cut {}, {}", offcut + 1, self.show(bar.length)),
                None => format!("Stick {}, {}", n + 1, self.show(bar.length)),
            };
            rows.push(Row::Figure {
                label,
                detail: format!(
                    "{}; the saw takes {}",
                    pieces.join(", "),
                    self.show(bar.sawn)
                ),
                value: if bar.rest.is_positive() {
                    format!("{} left", self.show(bar.rest))
                } else {
                    "nothing left".to_owned()
                },
                command: None,
            });
        }
        rows.push(Row::Heading("Whose pieces they are".into()));
        for (n, of) in marks.figures.iter().enumerate() {
            let at = self.job.tasks.iter().position(|task| task.id == *of);
            let Some(at) = at else { continue };
            rows.push(Row::Figure {
                label: format!("{}, {}", letter(n), self.task_name(at)),
                detail: String::new(),
                value: "its figure".into(),
                command: Some(Command::Go(Here::Task(at))),
            });
        }
        rows
    }

    /// What a field of the cutting plan reads, and what stands there.
    pub(super) fn cut_stands(&self, material: &Material, slot: CutSlot) -> (Kind, String) {
        let setup = self.setup(material);
        let length = match slot {
            CutSlot::Kerf => Some(setup.saw.kerf()),
            CutSlot::Offcut(at) => setup.offcuts.get(at).copied(),
            CutSlot::NewOffcut | CutSlot::Stick => None,
        };
        let plain = length.map(|l| self.job.units.length(l, Rounding::Nearest, Figures::Plain));
        (Kind::Length, plain.unwrap_or_default())
    }
}

/// What is asked of a field.
pub(super) fn asks(slot: CutSlot) -> String {
    match slot {
        CutSlot::Kerf => "The saw takes".into(),
        CutSlot::Offcut(at) => format!("Length of off-cut {}", at + 1),
        CutSlot::NewOffcut => "Length of the off-cut".into(),
        CutSlot::Stick => "Length on sale".into(),
    }
}

/// A length into the cutting plan, or why it cannot stand there.
pub(super) fn fill(
    job: &mut Job,
    material: &Material,
    slot: CutSlot,
    length: Length,
) -> Result<(), String> {
    let setup = job
        .buying
        .cutting
        .entry(material.clone())
        .or_insert_with(|| Setup::usual(material));
    match slot {
        CutSlot::Kerf if length > Length::inches(1) => {
            return Err("No saw takes more than 1 in with a cut. Measure one of yours.".into());
        }
        CutSlot::Stick if length > Length::feet(1_000) => {
            return Err("No stick is longer than 1,000 ft. Check the unit.".into());
        }
        CutSlot::Kerf => setup.saw = Saw::Own(length),
        CutSlot::Offcut(at) => {
            if let Some(offcut) = setup.offcuts.get_mut(at) {
                *offcut = length;
            }
        }
        CutSlot::NewOffcut if setup.offcuts.len() >= 100 => {
            return Err("A hundred off-cuts are written down. Remove one first.".into());
        }
        CutSlot::NewOffcut => setup.offcuts.push(length),
        CutSlot::Stick => add_stick(setup, length),
    }
    Ok(())
}

fn add_stick(setup: &mut Setup, length: Length) {
    if !setup.sticks.contains(&length) {
        setup.sticks.push(length);
        setup.sticks.sort_unstable();
    }
}

/// A choice of the cutting plan.
pub(super) fn choose(job: &mut Job, material: &Material, choice: CutChoice) {
    let setup = job
        .buying
        .cutting
        .entry(material.clone())
        .or_insert_with(|| Setup::usual(material));
    match choice {
        CutChoice::Saw(saw) => setup.saw = saw,
        CutChoice::RemoveOffcut(at) if at < setup.offcuts.len() => {
            setup.offcuts.remove(at);
        }
        CutChoice::RemoveOffcut(_) => {}
        // One length always stays.
        CutChoice::Stick(length) if setup.sticks.contains(&length) => {
            if setup.sticks.len() > 1 {
                setup.sticks.retain(|stick| *stick != length);
            }
        }
        CutChoice::Stick(length) => add_stick(setup, length),
    }
}
