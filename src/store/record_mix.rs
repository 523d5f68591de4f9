//! What was asked of grout and of mortar, as records: new in format 2.
//!
//! Quantities stand in SI as they are in memory, so that they come back as just the same numbers.

use serde::{Deserialize, Serialize};

use super::record::{all, choice, code, length, maybe};
use super::record_figures::{GROUTS, area};
use crate::measure::Length;
use crate::measure::quantity::{
    Mass, MassDensity, Volume, cubic_metres, kilograms, kilograms_per_cubic_metre,
};
use crate::site::Id;
use crate::trades::grout::{self, JointOf, Meeting, Seam};
use crate::trades::mortar::{
    self, Batch, Bed, Drain, Fall, Mix, Notch, NotchShape, Parts, Place, Setting, Shrink, Under,
    Wall, Work,
};

#[derive(Serialize, Deserialize)]
pub(super) struct GroutRecord {
    /// The name of the tile figure.
    tile: Option<u64>,
    /// m².
    area: f64,
    joints: JointsRecord,
    width: i64,
    depth: i64,
    kind: Option<u8>,
    scratches: bool,
    color: String,
    label: GroutLabelRecord,
    /// A share.
    waste: f64,
    /// What meets; length, width, depth.
    seams: Vec<(u8, [i64; 3])>,
}

#[derive(Serialize, Deserialize)]
enum JointsRecord {
    Grid(i64, i64),
    Hexagon(i64),
    /// m².
    Area(f64),
}

#[derive(Serialize, Deserialize)]
struct GroutLabelRecord {
    /// kg.
    bag: Option<f64>,
    /// m².
    covers: Option<f64>,
    /// kg/m³.
    density: Option<f64>,
    /// m³.
    water: Option<(f64, f64)>,
    /// Minutes.
    slake: Option<(f64, f64)>,
    /// Hours.
    pot_life: Option<f64>,
    /// Hours.
    wait: Option<f64>,
}

#[derive(Serialize, Deserialize)]
pub(super) struct MortarRecord {
    /// The name of the tile figure.
    tile: Option<u64>,
    work: WorkRecord,
    /// A share.
    waste: f64,
    /// m³.
    bucket: f64,
    /// A share.
    fill: f64,
    /// m² an hour.
    pace: f64,
    old_floor: bool,
}

#[derive(Serialize, Deserialize)]
enum WorkRecord {
    Setting(Box<SettingRecord>),
    Bed(BedRecord, MixRecord),
    /// m³.
    Volume(f64, MixRecord),
}

#[derive(Serialize, Deserialize)]
struct SettingRecord {
    /// m².
    area: f64,
    /// The sides of the tile; nothing for board.
    under: Option<(i64, i64)>,
    /// Shape; width, depth, land.
    notch: (u8, [i64; 3]),
    place: u8,
    stone: bool,
    large_tile: bool,
    back_butter: Option<i64>,
    label: MortarLabelRecord,
}

#[derive(Serialize, Deserialize)]
struct MortarLabelRecord {
    /// kg.
    bag: f64,
    /// m².
    covers: Option<f64>,
    /// m³.
    makes: Option<f64>,
    /// m³.
    water: Option<(f64, f64)>,
    /// Minutes.
    slake: Option<(f64, f64)>,
    /// Hours.
    pot_life: Option<f64>,
}

#[derive(Serialize, Deserialize)]
struct BedRecord {
    /// Across, up.
    sides: (i64, i64),
    at_drain: i64,
    drain: DrainRecord,
    fall: FallRecord,
}

#[derive(Serialize, Deserialize)]
enum DrainRecord {
    None,
    Centre,
    At(i64, i64),
    Along(u8),
}

#[derive(Serialize, Deserialize)]
enum FallRecord {
    /// Rise over run.
    OnLongest(f64),
    /// Rise over run.
    OnShortest(f64),
    Rise(i64),
}

#[derive(Serialize, Deserialize)]
enum MixRecord {
    Site(PartsRecord),
    Bags {
        /// kg.
        bag: f64,
        /// m³.
        makes: f64,
        /// m³.
        water: Option<(f64, f64)>,
    },
}

#[derive(Serialize, Deserialize)]
struct PartsRecord {
    /// Cement, lime, sand: parts by loose volume.
    parts: [f64; 3],
    by: ShrinkRecord,
    /// kg/m³.
    cement_weighs: Option<f64>,
    /// Water to one of cement by mass.
    water: Option<f64>,
}

#[derive(Serialize, Deserialize)]
enum ShrinkRecord {
    Rule38,
    Dry133,
    DryLoose,
    SandFills,
    /// Dry to wet by volume.
    Own(f64),
}

const MEETINGS: [Meeting; 3] = [Meeting::PlaneChange, Meeting::Perimeter, Meeting::Movement];
const NOTCHES: [NotchShape; 3] = [NotchShape::Square, NotchShape::U, NotchShape::V];
const PLACES: [Place; 2] = [Place::Dry, Place::Wet];
const WALLS: [Wall; 4] = [Wall::Left, Wall::Right, Wall::Near, Wall::Far];

/// A figure that is a number and not less than nothing.
fn more(value: f64) -> Option<f64> {
    (value.is_finite() && value >= 0.0).then_some(value)
}
/// Out of m³.
fn volume(value: f64) -> Option<Volume> {
    more(value).map(cubic_metres)
}
/// Out of kg.
fn mass(value: f64) -> Option<Mass> {
    more(value).map(kilograms)
}
/// Out of kg/m³.
fn density(value: f64) -> Option<MassDensity> {
    more(value).map(kilograms_per_cubic_metre)
}
/// What may not be there.
fn opt<T, U>(value: Option<T>, read: impl Fn(T) -> Option<U>) -> Option<Option<U>> {
    value.map_or(Some(None), |value| read(value).map(Some))
}
/// From and to.
fn span<T>(read: impl Fn(f64) -> Option<T>) -> impl Fn((f64, f64)) -> Option<(T, T)> {
    move |(from, to)| Some((read(from)?, read(to)?))
}
fn lengths<const N: usize>(nm: [i64; N]) -> Option<[Length; N]> {
    let all: Vec<Length> = nm.into_iter().map(length).collect::<Option<_>>()?;
    all.try_into().ok()
}
fn write_water(water: Option<(Volume, Volume)>) -> Option<(f64, f64)> {
    water.map(|(from, to)| (from.value, to.value))
}

pub(super) fn write_grout(ask: &grout::Ask, tile: Option<Id>) -> GroutRecord {
    let seam = |seam: &Seam| {
        let lengths = [seam.length, seam.width, seam.depth].map(Length::as_nm);
        (code(&MEETINGS, &seam.at), lengths)
    };
    GroutRecord {
        tile: tile.map(|id| id.0),
        area: ask.area.value,
        joints: match ask.joints {
            JointOf::Grid { a, b } => JointsRecord::Grid(a.as_nm(), b.as_nm()),
            JointOf::Hexagon { flats } => JointsRecord::Hexagon(flats.as_nm()),
            JointOf::Area(area) => JointsRecord::Area(area.value),
        },
        width: ask.width.as_nm(),
        depth: ask.depth.as_nm(),
        kind: ask.kind.map(|kind| code(&GROUTS, &kind)),
        scratches: ask.scratches,
        color: ask.color.clone(),
        label: GroutLabelRecord {
            bag: ask.label.bag.map(|bag| bag.value),
            covers: ask.label.covers.map(|covers| covers.value),
            density: ask.label.density.map(|density| density.value),
            water: write_water(ask.label.water),
            slake: ask.label.slake,
            pot_life: ask.label.pot_life,
            wait: ask.label.wait,
        },
        waste: ask.waste,
        seams: ask.seams.iter().map(seam).collect(),
    }
}

pub(super) fn read_grout(record: GroutRecord) -> Option<(grout::Ask, Option<Id>)> {
    let seam = |(at, nm): (u8, [i64; 3])| {
        let [length, width, depth] = lengths(nm)?;
        Some(Seam {
            at: choice(&MEETINGS, at)?,
            length,
            width,
            depth,
        })
    };
    let label = record.label;
    let ask = grout::Ask {
        area: area(record.area)?,
        joints: match record.joints {
            JointsRecord::Grid(a, b) => JointOf::Grid {
                a: length(a)?,
                b: length(b)?,
            },
            JointsRecord::Hexagon(flats) => JointOf::Hexagon {
                flats: length(flats)?,
            },
            JointsRecord::Area(joints) => JointOf::Area(area(joints)?),
        },
        width: length(record.width)?,
        depth: length(record.depth)?,
        kind: opt(record.kind, |kind| choice(&GROUTS, kind))?,
        scratches: record.scratches,
        color: record.color,
        label: grout::Label {
            bag: opt(label.bag, mass)?,
            covers: opt(label.covers, area)?,
            density: opt(label.density, density)?,
            water: opt(label.water, span(volume))?,
            slake: opt(label.slake, span(more))?,
            pot_life: opt(label.pot_life, more)?,
            wait: opt(label.wait, more)?,
        },
        waste: more(record.waste)?,
        seams: all(record.seams, seam)?,
    };
    Some((ask, record.tile.map(Id)))
}

fn write_setting(setting: &Setting) -> SettingRecord {
    let (notch, label) = (&setting.notch, &setting.label);
    SettingRecord {
        area: setting.area.value,
        under: match setting.under {
            Under::Tile { a, b } => Some((a.as_nm(), b.as_nm())),
            Under::Board => None,
        },
        notch: (
            code(&NOTCHES, &notch.shape),
            [notch.width, notch.depth, notch.land].map(Length::as_nm),
        ),
        place: code(&PLACES, &setting.place),
        stone: setting.stone,
        large_tile: setting.large_tile,
        back_butter: setting.back_butter.map(Length::as_nm),
        label: MortarLabelRecord {
            bag: label.bag.value,
            covers: label.covers.map(|covers| covers.value),
            makes: label.makes.map(|makes| makes.value),
            water: write_water(label.water),
            slake: label.slake,
            pot_life: label.pot_life,
        },
    }
}

fn read_setting(record: SettingRecord) -> Option<Setting> {
    let (shape, notch) = record.notch;
    let [width, depth, land] = lengths(notch)?;
    let label = record.label;
    Some(Setting {
        area: area(record.area)?,
        under: match record.under {
            Some((a, b)) => Under::Tile {
                a: length(a)?,
                b: length(b)?,
            },
            None => Under::Board,
        },
        notch: Notch {
            shape: choice(&NOTCHES, shape)?,
            width,
            depth,
            land,
        },
        place: choice(&PLACES, record.place)?,
        stone: record.stone,
        large_tile: record.large_tile,
        back_butter: maybe(record.back_butter)?,
        label: mortar::Label {
            bag: mass(label.bag)?,
            covers: opt(label.covers, area)?,
            makes: opt(label.makes, volume)?,
            water: opt(label.water, span(volume))?,
            slake: opt(label.slake, span(more))?,
            pot_life: opt(label.pot_life, more)?,
        },
    })
}

fn write_bed(bed: &Bed) -> BedRecord {
    BedRecord {
        sides: (bed.across.as_nm(), bed.up.as_nm()),
        at_drain: bed.at_drain.as_nm(),
        drain: match bed.drain {
            Drain::None => DrainRecord::None,
            Drain::Centre => DrainRecord::Centre,
            Drain::At(across, up) => DrainRecord::At(across.as_nm(), up.as_nm()),
            Drain::Along(wall) => DrainRecord::Along(code(&WALLS, &wall)),
        },
        fall: match bed.fall {
            Fall::OnLongest(slope) => FallRecord::OnLongest(slope),
            Fall::OnShortest(slope) => FallRecord::OnShortest(slope),
            Fall::Rise(rise) => FallRecord::Rise(rise.as_nm()),
        },
    }
}

fn read_bed(record: BedRecord) -> Option<Bed> {
    let (across, up) = record.sides;
    Some(Bed {
        across: length(across)?,
        up: length(up)?,
        at_drain: length(record.at_drain)?,
        drain: match record.drain {
            DrainRecord::None => Drain::None,
            DrainRecord::Centre => Drain::Centre,
            DrainRecord::At(across, up) => Drain::At(length(across)?, length(up)?),
            DrainRecord::Along(wall) => Drain::Along(choice(&WALLS, wall)?),
        },
        fall: match record.fall {
            FallRecord::OnLongest(slope) => Fall::OnLongest(more(slope)?),
            FallRecord::OnShortest(slope) => Fall::OnShortest(more(slope)?),
            FallRecord::Rise(rise) => Fall::Rise(length(rise)?),
        },
    })
}

fn write_mix(mix: &Mix) -> MixRecord {
    match mix {
        Mix::Site(parts) => MixRecord::Site(PartsRecord {
            parts: [parts.cement, parts.lime, parts.sand],
            by: match parts.by {
                Shrink::Rule38 => ShrinkRecord::Rule38,
                Shrink::Dry133 => ShrinkRecord::Dry133,
                Shrink::DryLoose => ShrinkRecord::DryLoose,
                Shrink::SandFills => ShrinkRecord::SandFills,
                Shrink::Own(factor) => ShrinkRecord::Own(factor),
            },
            cement_weighs: parts.cement_weighs.map(|weighs| weighs.value),
            water: parts.water,
        }),
        Mix::Bags { bag, makes, water } => MixRecord::Bags {
            bag: bag.value,
            makes: makes.value,
            water: write_water(*water),
        },
    }
}

fn read_mix(record: MixRecord) -> Option<Mix> {
    Some(match record {
        MixRecord::Site(record) => {
            let [cement, lime, sand] = record.parts;
            Mix::Site(Parts {
                cement: more(cement)?,
                lime: more(lime)?,
                sand: more(sand)?,
                by: match record.by {
                    ShrinkRecord::Rule38 => Shrink::Rule38,
                    ShrinkRecord::Dry133 => Shrink::Dry133,
                    ShrinkRecord::DryLoose => Shrink::DryLoose,
                    ShrinkRecord::SandFills => Shrink::SandFills,
                    ShrinkRecord::Own(factor) => Shrink::Own(more(factor)?),
                },
                cement_weighs: opt(record.cement_weighs, density)?,
                water: opt(record.water, more)?,
            })
        }
        MixRecord::Bags { bag, makes, water } => Mix::Bags {
            bag: mass(bag)?,
            makes: volume(makes)?,
            water: opt(water, span(volume))?,
        },
    })
}

pub(super) fn write_mortar(ask: &mortar::Ask, tile: Option<Id>) -> MortarRecord {
    MortarRecord {
        tile: tile.map(|id| id.0),
        work: match &ask.work {
            Work::Setting(setting) => WorkRecord::Setting(Box::new(write_setting(setting))),
            Work::Bed(bed, mix) => WorkRecord::Bed(write_bed(bed), write_mix(mix)),
            Work::Volume(volume, mix) => WorkRecord::Volume(volume.value, write_mix(mix)),
        },
        waste: ask.waste,
        bucket: ask.batch.bucket.value,
        fill: ask.batch.fill,
        pace: ask.batch.pace.value,
        old_floor: ask.old_floor,
    }
}

pub(super) fn read_mortar(record: MortarRecord) -> Option<(mortar::Ask, Option<Id>)> {
    let ask = mortar::Ask {
        work: match record.work {
            WorkRecord::Setting(setting) => Work::Setting(read_setting(*setting)?),
            WorkRecord::Bed(bed, mix) => Work::Bed(read_bed(bed)?, read_mix(mix)?),
            WorkRecord::Volume(wet, mix) => Work::Volume(volume(wet)?, read_mix(mix)?),
        },
        waste: more(record.waste)?,
        batch: Batch {
            bucket: volume(record.bucket)?,
            fill: more(record.fill)?,
            pace: area(record.pace)?,
        },
        old_floor: record.old_floor,
    };
    Some((ask, record.tile.map(Id)))
}
