//! What grout and mortar ask for, in and out of the pad.

use super::{App, Kind, MixChoice, MixSlot};
use crate::measure::quantity::{
    Area, Mass, Volume, cubic_feet, gallons, in_cubic_feet, in_gallons, in_kilograms, in_litres,
    in_pounds, in_square_feet, in_square_metres, kilograms, litres, pounds, square_feet,
    square_metres,
};
use crate::measure::{Figures, Length, Rounding};
use crate::takeoff::{Ask, Job};
use crate::trades::grout::{self, JointOf};
use crate::trades::mortar::{self, Bed, Mix, Parts, Setting, Under, Work};

/// Figures in the job's own units, in and out.
#[derive(Clone, Copy)]
struct Measure {
    metric: bool,
}

impl Measure {
    fn area(self, n: f64) -> Area {
        if self.metric {
            square_metres(n)
        } else {
            square_feet(n)
        }
    }
    fn in_area(self, area: Area) -> f64 {
        if self.metric {
            in_square_metres(area)
        } else {
            in_square_feet(area)
        }
    }
    fn mass(self, n: f64) -> Mass {
        if self.metric { kilograms(n) } else { pounds(n) }
    }
    fn in_mass(self, mass: Mass) -> f64 {
        if self.metric {
            in_kilograms(mass)
        } else {
            in_pounds(mass)
        }
    }
    /// Something liquid.
    fn liquid(self, n: f64) -> Volume {
        if self.metric { litres(n) } else { gallons(n) }
    }
    fn in_liquid(self, volume: Volume) -> f64 {
        if self.metric {
            in_litres(volume)
        } else {
            in_gallons(volume)
        }
    }
    /// Mortar and sand.
    fn bulk(self, n: f64) -> Volume {
        if self.metric {
            litres(n)
        } else {
            cubic_feet(n)
        }
    }
    fn in_bulk(self, volume: Volume) -> f64 {
        if self.metric {
            in_litres(volume)
        } else {
            in_cubic_feet(volume)
        }
    }
    fn unit(self, slot: MixSlot) -> &'static str {
        match (slot, self.metric) {
            (MixSlot::Area | MixSlot::Covers | MixSlot::Pace, true) => "m²",
            (MixSlot::Area | MixSlot::Covers | MixSlot::Pace, false) => "ft²",
            (MixSlot::Bag, true) => "kg",
            (MixSlot::Bag, false) => "lb",
            (MixSlot::Water | MixSlot::Bucket, true) => "L",
            (MixSlot::Water | MixSlot::Bucket, false) => "gal",
            (MixSlot::Volume | MixSlot::Makes, true) => "L",
            (MixSlot::Volume | MixSlot::Makes, false) => "ft³",
            (MixSlot::Waste | MixSlot::Fill, _) => "%",
            (MixSlot::PotLife | MixSlot::Wait, _) => "h",
            _ => "",
        }
    }
}

/// A field that holds a length, a number, or words.
enum Held {
    Length(Option<Length>),
    Number(Option<f64>),
    Words(String),
}

impl App {
    /// What a field of grout or mortar reads, and what stands there.
    pub(super) fn mix_stands(&self, task: usize, slot: MixSlot) -> (Kind, String) {
        let units = self.job.units;
        let measure = Measure {
            metric: units.is_metric(),
        };
        let held = match self.job.tasks.get(task).map(|task| &task.ask) {
            Some(Ask::Grout(ask, _)) => grout_held(ask, slot, measure),
            Some(Ask::Mortar(ask, _)) => mortar_held(ask, slot, measure),
            _ => Held::Length(None),
        };
        match held {
            Held::Length(length) => {
                let plain = length.map(|l| units.length(l, Rounding::Nearest, Figures::Plain));
                (Kind::Length, plain.unwrap_or_default())
            }
            Held::Number(number) => {
                let text = number.map(|n| format!("{}", (n * 1_000.0).round() / 1_000.0));
                (Kind::Number(measure.unit(slot)), text.unwrap_or_default())
            }
            Held::Words(text) => (Kind::Words, text),
        }
    }
}

fn grout_held(ask: &grout::Ask, slot: MixSlot, measure: Measure) -> Held {
    let side = |pick: fn(Length, Length) -> Length| match ask.joints {
        JointOf::Grid { a, b } => Some(pick(a, b)),
        _ => None,
    };
    let label = &ask.label;
    match slot {
        MixSlot::Area => Held::Number(Some(measure.in_area(ask.area))),
        MixSlot::TileA => Held::Length(side(|a, _| a)),
        MixSlot::TileB => Held::Length(side(|_, b| b)),
        MixSlot::Width => Held::Length(Some(ask.width)),
        MixSlot::Depth => Held::Length(Some(ask.depth)),
        MixSlot::Color => Held::Words(ask.color.clone()),
        MixSlot::Waste => Held::Number(Some(ask.waste * 100.0)),
        MixSlot::Bag => Held::Number(label.bag.map(|m| measure.in_mass(m))),
        MixSlot::Covers => Held::Number(label.covers.map(|a| measure.in_area(a))),
        MixSlot::Water => Held::Number(label.water.map(|w| measure.in_liquid(w.0))),
        MixSlot::PotLife => Held::Number(label.pot_life),
        MixSlot::Wait => Held::Number(label.wait),
        _ => Held::Length(None),
    }
}

fn mortar_held(ask: &mortar::Ask, slot: MixSlot, measure: Measure) -> Held {
    match (slot, &ask.work) {
        (MixSlot::Waste, _) => Held::Number(Some(ask.waste * 100.0)),
        (MixSlot::Bucket, _) => Held::Number(Some(measure.in_liquid(ask.batch.bucket))),
        (MixSlot::Fill, _) => Held::Number(Some(ask.batch.fill * 100.0)),
        (MixSlot::Pace, _) => Held::Number(Some(measure.in_area(ask.batch.pace))),
        (_, Work::Setting(setting)) => setting_held(setting, slot, measure),
        (MixSlot::BedAcross, Work::Bed(bed, _)) => Held::Length(Some(bed.across)),
        (MixSlot::BedUp, Work::Bed(bed, _)) => Held::Length(Some(bed.up)),
        (MixSlot::AtDrain, Work::Bed(bed, _)) => Held::Length(Some(bed.at_drain)),
        (MixSlot::Volume, Work::Volume(volume, _)) => Held::Number(Some(measure.in_bulk(*volume))),
        (_, Work::Bed(_, mix) | Work::Volume(_, mix)) => Held::Number(match (slot, mix) {
            (MixSlot::SandParts, Mix::Site(parts)) => Some(parts.sand),
            (MixSlot::Bag, Mix::Bags { bag, .. }) => Some(measure.in_mass(*bag)),
            (MixSlot::Makes, Mix::Bags { makes, .. }) => Some(measure.in_bulk(*makes)),
            _ => None,
        }),
    }
}

fn setting_held(setting: &Setting, slot: MixSlot, measure: Measure) -> Held {
    let side = |pick: fn(Length, Length) -> Length| match setting.under {
        Under::Tile { a, b } => Some(pick(a, b)),
        Under::Board => None,
    };
    match slot {
        MixSlot::Area => Held::Number(Some(measure.in_area(setting.area))),
        MixSlot::TileA => Held::Length(side(|a, _| a)),
        MixSlot::TileB => Held::Length(side(|_, b| b)),
        MixSlot::NotchWidth => Held::Length(Some(setting.notch.width)),
        MixSlot::NotchDepth => Held::Length(Some(setting.notch.depth)),
        MixSlot::Bag => Held::Number(Some(measure.in_mass(setting.label.bag))),
        MixSlot::Covers => Held::Number(setting.label.covers.map(|a| measure.in_area(a))),
        _ => Held::Length(None),
    }
}

/// A length into a field of grout or mortar.
pub(super) fn fill_length(job: &mut Job, task: usize, slot: MixSlot, length: Length) {
    match job.tasks.get_mut(task).map(|task| &mut task.ask) {
        Some(Ask::Grout(ask, _)) => match (slot, &mut ask.joints) {
            (MixSlot::Width, _) => ask.width = length,
            (MixSlot::Depth, _) => ask.depth = length,
            (MixSlot::TileA, JointOf::Grid { a, .. }) => *a = length,
            (MixSlot::TileB, JointOf::Grid { b, .. }) => *b = length,
            _ => {}
        },
        Some(Ask::Mortar(ask, _)) => match (slot, &mut ask.work) {
            (MixSlot::NotchWidth, Work::Setting(setting)) => {
                setting.notch.width = length;
                setting.notch.land = length;
            }
            (MixSlot::NotchDepth, Work::Setting(setting)) => setting.notch.depth = length,
            (MixSlot::TileA, Work::Setting(setting)) => {
                if let Under::Tile { a, .. } = &mut setting.under {
                    *a = length;
                }
            }
            (MixSlot::TileB, Work::Setting(setting)) => {
                if let Under::Tile { b, .. } = &mut setting.under {
                    *b = length;
                }
            }
            (MixSlot::BedAcross, Work::Bed(bed, _)) => bed.across = length,
            (MixSlot::BedUp, Work::Bed(bed, _)) => bed.up = length,
            (MixSlot::AtDrain, Work::Bed(bed, _)) => bed.at_drain = length,
            _ => {}
        },
        _ => {}
    }
}

/// Words into a field of grout.
pub(super) fn fill_words(job: &mut Job, task: usize, slot: MixSlot, text: String) {
    if let (MixSlot::Color, Some(Ask::Grout(ask, _))) =
        (slot, job.tasks.get_mut(task).map(|task| &mut task.ask))
    {
        ask.color = text;
    }
}

/// A number into a field of grout or mortar, or why it cannot stand there.
pub(super) fn fill_number(
    job: &mut Job,
    task: usize,
    slot: MixSlot,
    number: f64,
    metric: bool,
) -> Result<(), String> {
    let measure = Measure { metric };
    if matches!(slot, MixSlot::Waste | MixSlot::Fill) && number > 100.0 {
        return Err("This is at most 100 %.".into());
    }
    if number <= 0.0 && slot != MixSlot::Waste {
        return Err("This has to be more than nothing.".into());
    }
    match job.tasks.get_mut(task).map(|task| &mut task.ask) {
        Some(Ask::Grout(ask, _)) => {
            let label = &mut ask.label;
            match slot {
                MixSlot::Area => ask.area = measure.area(number),
                MixSlot::Waste => ask.waste = number / 100.0,
                MixSlot::Bag => label.bag = Some(measure.mass(number)),
                MixSlot::Covers => label.covers = Some(measure.area(number)),
                MixSlot::Water => {
                    label.water = Some((measure.liquid(number), measure.liquid(number)));
                }
                MixSlot::PotLife => label.pot_life = Some(number),
                MixSlot::Wait => label.wait = Some(number),
                _ => {}
            }
        }
        Some(Ask::Mortar(ask, _)) => fill_mortar(ask, slot, number, measure),
        _ => {}
    }
    Ok(())
}

fn fill_mortar(ask: &mut mortar::Ask, slot: MixSlot, number: f64, measure: Measure) {
    match (slot, &mut ask.work) {
        (MixSlot::Waste, _) => ask.waste = number / 100.0,
        (MixSlot::Bucket, _) => ask.batch.bucket = measure.liquid(number),
        (MixSlot::Fill, _) => ask.batch.fill = number / 100.0,
        (MixSlot::Pace, _) => ask.batch.pace = measure.area(number),
        (MixSlot::Area, Work::Setting(setting)) => setting.area = measure.area(number),
        (MixSlot::Bag, Work::Setting(setting)) => setting.label.bag = measure.mass(number),
        (MixSlot::Covers, Work::Setting(setting)) => {
            setting.label.covers = Some(measure.area(number));
        }
        (MixSlot::Volume, Work::Volume(volume, _)) => *volume = measure.bulk(number),
        (_, Work::Bed(_, mix) | Work::Volume(_, mix)) => match (slot, mix) {
            (MixSlot::SandParts, Mix::Site(parts)) => parts.sand = number,
            (MixSlot::Bag, Mix::Bags { bag, .. }) => *bag = measure.mass(number),
            (MixSlot::Makes, Mix::Bags { makes, .. }) => *makes = measure.bulk(number),
            _ => {}
        },
        _ => {}
    }
}

/// A choice of grout or mortar.
pub(super) fn choose(ask: &mut Ask, choice: MixChoice) {
    match (ask, choice) {
        (Ask::Grout(ask, _), MixChoice::Grout(kind)) => ask.kind = kind,
        (Ask::Grout(ask, _), MixChoice::Scratches(yes)) => ask.scratches = yes,
        (Ask::Mortar(ask, _), choice) => choose_mortar(ask, choice),
        _ => {}
    }
}

fn choose_mortar(ask: &mut mortar::Ask, choice: MixChoice) {
    let mix = || Mix::Site(Parts::sand(4.0));
    match (choice, &mut ask.work) {
        (MixChoice::OldFloor(yes), _) => ask.old_floor = yes,
        (MixChoice::Work(0), Work::Setting(setting)) if setting.under == Under::Board => {
            setting.under = Setting::default().under;
        }
        (MixChoice::Work(0), Work::Bed(..) | Work::Volume(..)) => {
            ask.work = Work::Setting(Setting::default());
        }
        (MixChoice::Work(1), Work::Setting(setting)) => setting.under = Under::Board,
        (MixChoice::Work(1), _) => {
            ask.work = Work::Setting(Setting {
                under: Under::Board,
                ..Setting::default()
            });
        }
        (MixChoice::Work(2), Work::Setting(_) | Work::Volume(..)) => {
            ask.work = Work::Bed(Bed::default(), mix());
        }
        (MixChoice::Work(3), Work::Setting(_) | Work::Bed(..)) => {
            ask.work = Work::Volume(cubic_feet(1.0), mix());
        }
        (MixChoice::Place(place), Work::Setting(setting)) => setting.place = place,
        (MixChoice::Drain(drain), Work::Bed(bed, _)) => bed.drain = drain,
        (MixChoice::Site(site), Work::Bed(_, now) | Work::Volume(_, now)) => {
            *now = if site { mix() } else { Mix::bags() };
        }
        (
            MixChoice::Shrink(by),
            Work::Bed(_, Mix::Site(parts)) | Work::Volume(_, Mix::Site(parts)),
        ) => {
            parts.by = by;
        }
        _ => {}
    }
}
