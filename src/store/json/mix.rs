//! What was asked of grout and of mortar, in JSON.

use serde::{Deserialize, Serialize};

use super::rooms::{length, nm};
use super::words::{Hex, Kg, KgPerM3, M2, M3, More, Nm, Word};
use crate::measure::quantity::Volume;
use crate::site::Id;
use crate::trades::Grout;
use crate::trades::grout::{self, JointOf, Meeting, Seam};
use crate::trades::mortar::{
    self, Batch, Bed, Drain, Fall, Mix, Notch, NotchShape, Parts, Place, Setting, Shrink, Under,
    Wall, Work,
};

/// What is missing is as in a new figure.
#[derive(Serialize, Deserialize)]
#[serde(default)]
pub(super) struct GroutJson {
    /// The id of the tile figure whose layout it is for.
    tile_figure: Option<Hex>,
    area_m2: M2,
    joints: JointsJson,
    width_nm: Nm,
    depth_nm: Nm,
    kind: Option<Word<Grout>>,
    scratches: bool,
    color: String,
    label: GroutLabelJson,
    waste: More,
    seams: Vec<SeamJson>,
}

impl Default for GroutJson {
    fn default() -> GroutJson {
        write_grout(&grout::Ask::default(), None)
    }
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum JointsJson {
    Grid { a_nm: Nm, b_nm: Nm },
    Hexagon { flats_nm: Nm },
    AreaM2(M2),
}

#[derive(Default, Serialize, Deserialize)]
#[serde(default)]
struct GroutLabelJson {
    bag_kg: Option<Kg>,
    covers_m2: Option<M2>,
    density_kg_per_m3: Option<KgPerM3>,
    /// From and to, as all pairs here.
    water_m3: Option<(M3, M3)>,
    slake_minutes: Option<(More, More)>,
    pot_life_hours: Option<More>,
    wait_hours: Option<More>,
}

#[derive(Serialize, Deserialize)]
struct SeamJson {
    at: Word<Meeting>,
    length_nm: Nm,
    width_nm: Nm,
    depth_nm: Nm,
}

/// What is missing is as in a new figure.
#[derive(Serialize, Deserialize)]
#[serde(default)]
pub(super) struct MortarJson {
    /// The id of the tile figure whose layout it is for.
    tile_figure: Option<Hex>,
    work: WorkJson,
    waste: More,
    bucket_m3: M3,
    fill: More,
    pace_m2_per_hour: M2,
    old_floor: bool,
}

impl Default for MortarJson {
    fn default() -> MortarJson {
        write_mortar(&mortar::Ask::default(), None)
    }
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum WorkJson {
    Setting(Box<SettingJson>),
    Bed(Box<BedJson>),
    Volume { volume_m3: M3, mix: MixJson },
}

#[derive(Serialize, Deserialize)]
#[serde(default)]
struct SettingJson {
    area_m2: M2,
    under: UnderJson,
    notch: NotchJson,
    place: Word<Place>,
    stone: bool,
    large_tile: bool,
    back_butter_nm: Option<Nm>,
    label: MortarLabelJson,
}

impl Default for SettingJson {
    fn default() -> SettingJson {
        write_setting(&Setting::default())
    }
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum UnderJson {
    Tile { a_nm: Nm, b_nm: Nm },
    Board,
}

#[derive(Serialize, Deserialize)]
struct NotchJson {
    shape: Word<NotchShape>,
    width_nm: Nm,
    depth_nm: Nm,
    land_nm: Nm,
}

#[derive(Serialize, Deserialize)]
#[serde(default)]
struct MortarLabelJson {
    bag_kg: Kg,
    covers_m2: Option<M2>,
    makes_m3: Option<M3>,
    water_m3: Option<(M3, M3)>,
    slake_minutes: Option<(More, More)>,
    pot_life_hours: Option<More>,
}

impl Default for MortarLabelJson {
    fn default() -> MortarLabelJson {
        write_mortar_label(&mortar::Label::default())
    }
}

/// A bed and its mix; bags where no mix is said.
#[derive(Serialize, Deserialize)]
#[serde(default)]
struct BedJson {
    across_nm: Nm,
    up_nm: Nm,
    at_drain_nm: Nm,
    drain: DrainJson,
    fall: FallJson,
    mix: MixJson,
}

impl Default for BedJson {
    fn default() -> BedJson {
        write_bed(&Bed::default(), &Mix::bags())
    }
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum DrainJson {
    None,
    Centre,
    At { from_left_nm: Nm, from_near_nm: Nm },
    Along(Word<Wall>),
}

/// A slope is rise over run.
#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum FallJson {
    OnLongest(More),
    OnShortest(More),
    RiseNm(Nm),
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum MixJson {
    Site {
        /// Parts by loose volume.
        cement: More,
        lime: More,
        sand: More,
        by: ShrinkJson,
        cement_kg_per_m3: Option<KgPerM3>,
        /// To one of cement by mass.
        water_to_cement: Option<More>,
    },
    Bags {
        bag_kg: Kg,
        makes_m3: M3,
        water_m3: Option<(M3, M3)>,
    },
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum ShrinkJson {
    #[serde(rename = "rule-38")]
    Rule38,
    #[serde(rename = "dry-1.33")]
    Dry133,
    DryLoose,
    SandFills,
    Own(More),
}

fn write_water(water: Option<(Volume, Volume)>) -> Option<(M3, M3)> {
    water.map(|(from, to)| (M3(from), M3(to)))
}
fn read_water(water: Option<(M3, M3)>) -> Option<(Volume, Volume)> {
    water.map(|(from, to)| (from.0, to.0))
}
fn write_slake(slake: Option<(f64, f64)>) -> Option<(More, More)> {
    slake.map(|(from, to)| (More(from), More(to)))
}
fn read_slake(slake: Option<(More, More)>) -> Option<(f64, f64)> {
    slake.map(|(from, to)| (from.0, to.0))
}
fn figure(more: Option<More>) -> Option<f64> {
    more.map(|more| more.0)
}

pub(super) fn write_grout(ask: &grout::Ask, tile: Option<Id>) -> GroutJson {
    let seam = |seam: &Seam| SeamJson {
        at: Word(seam.at),
        length_nm: Nm(seam.length),
        width_nm: Nm(seam.width),
        depth_nm: Nm(seam.depth),
    };
    let label = &ask.label;
    GroutJson {
        tile_figure: tile.map(|id| Hex(id.0)),
        area_m2: M2(ask.area),
        joints: match ask.joints {
            JointOf::Grid { a, b } => JointsJson::Grid {
                a_nm: Nm(a),
                b_nm: Nm(b),
            },
            JointOf::Hexagon { flats } => JointsJson::Hexagon {
                flats_nm: Nm(flats),
            },
            JointOf::Area(area) => JointsJson::AreaM2(M2(area)),
        },
        width_nm: Nm(ask.width),
        depth_nm: Nm(ask.depth),
        kind: ask.kind.map(Word),
        scratches: ask.scratches,
        color: ask.color.clone(),
        label: GroutLabelJson {
            bag_kg: label.bag.map(Kg),
            covers_m2: label.covers.map(M2),
            density_kg_per_m3: label.density.map(KgPerM3),
            water_m3: write_water(label.water),
            slake_minutes: write_slake(label.slake),
            pot_life_hours: label.pot_life.map(More),
            wait_hours: label.wait.map(More),
        },
        waste: More(ask.waste),
        seams: ask.seams.iter().map(seam).collect(),
    }
}

pub(super) fn read_grout(grout: GroutJson) -> (grout::Ask, Option<Id>) {
    let seam = |seam: SeamJson| Seam {
        at: seam.at.0,
        length: seam.length_nm.0,
        width: seam.width_nm.0,
        depth: seam.depth_nm.0,
    };
    let label = grout.label;
    let ask = grout::Ask {
        area: grout.area_m2.0,
        joints: match grout.joints {
            JointsJson::Grid { a_nm, b_nm } => JointOf::Grid {
                a: a_nm.0,
                b: b_nm.0,
            },
            JointsJson::Hexagon { flats_nm } => JointOf::Hexagon { flats: flats_nm.0 },
            JointsJson::AreaM2(area) => JointOf::Area(area.0),
        },
        width: grout.width_nm.0,
        depth: grout.depth_nm.0,
        kind: grout.kind.map(|kind| kind.0),
        scratches: grout.scratches,
        color: grout.color,
        label: grout::Label {
            bag: label.bag_kg.map(|bag| bag.0),
            covers: label.covers_m2.map(|covers| covers.0),
            density: label.density_kg_per_m3.map(|density| density.0),
            water: read_water(label.water_m3),
            slake: read_slake(label.slake_minutes),
            pot_life: figure(label.pot_life_hours),
            wait: figure(label.wait_hours),
        },
        waste: grout.waste.0,
        seams: grout.seams.into_iter().map(seam).collect(),
    };
    (ask, grout.tile_figure.map(Hex::id))
}

fn write_mortar_label(label: &mortar::Label) -> MortarLabelJson {
    MortarLabelJson {
        bag_kg: Kg(label.bag),
        covers_m2: label.covers.map(M2),
        makes_m3: label.makes.map(M3),
        water_m3: write_water(label.water),
        slake_minutes: write_slake(label.slake),
        pot_life_hours: label.pot_life.map(More),
    }
}

fn write_setting(setting: &Setting) -> SettingJson {
    SettingJson {
        area_m2: M2(setting.area),
        under: match setting.under {
            Under::Tile { a, b } => UnderJson::Tile {
                a_nm: Nm(a),
                b_nm: Nm(b),
            },
            Under::Board => UnderJson::Board,
        },
        notch: NotchJson {
            shape: Word(setting.notch.shape),
            width_nm: Nm(setting.notch.width),
            depth_nm: Nm(setting.notch.depth),
            land_nm: Nm(setting.notch.land),
        },
        place: Word(setting.place),
        stone: setting.stone,
        large_tile: setting.large_tile,
        back_butter_nm: nm(setting.back_butter),
        label: write_mortar_label(&setting.label),
    }
}

fn read_setting(setting: SettingJson) -> Setting {
    let (notch, label) = (setting.notch, setting.label);
    Setting {
        area: setting.area_m2.0,
        under: match setting.under {
            UnderJson::Tile { a_nm, b_nm } => Under::Tile {
                a: a_nm.0,
                b: b_nm.0,
            },
            UnderJson::Board => Under::Board,
        },
        notch: Notch {
            shape: notch.shape.0,
            width: notch.width_nm.0,
            depth: notch.depth_nm.0,
            land: notch.land_nm.0,
        },
        place: setting.place.0,
        stone: setting.stone,
        large_tile: setting.large_tile,
        back_butter: length(setting.back_butter_nm),
        label: mortar::Label {
            bag: label.bag_kg.0,
            covers: label.covers_m2.map(|covers| covers.0),
            makes: label.makes_m3.map(|makes| makes.0),
            water: read_water(label.water_m3),
            slake: read_slake(label.slake_minutes),
            pot_life: figure(label.pot_life_hours),
        },
    }
}

fn write_bed(bed: &Bed, mix: &Mix) -> BedJson {
    BedJson {
        across_nm: Nm(bed.across),
        up_nm: Nm(bed.up),
        at_drain_nm: Nm(bed.at_drain),
        drain: match bed.drain {
            Drain::None => DrainJson::None,
            Drain::Centre => DrainJson::Centre,
            Drain::At(across, up) => DrainJson::At {
                from_left_nm: Nm(across),
                from_near_nm: Nm(up),
            },
            Drain::Along(wall) => DrainJson::Along(Word(wall)),
        },
        fall: match bed.fall {
            Fall::OnLongest(slope) => FallJson::OnLongest(More(slope)),
            Fall::OnShortest(slope) => FallJson::OnShortest(More(slope)),
            Fall::Rise(rise) => FallJson::RiseNm(Nm(rise)),
        },
        mix: write_mix(mix),
    }
}

fn read_bed(bed: BedJson) -> (Bed, Mix) {
    let read = Bed {
        across: bed.across_nm.0,
        up: bed.up_nm.0,
        at_drain: bed.at_drain_nm.0,
        drain: match bed.drain {
            DrainJson::None => Drain::None,
            DrainJson::Centre => Drain::Centre,
            DrainJson::At {
                from_left_nm,
                from_near_nm,
            } => Drain::At(from_left_nm.0, from_near_nm.0),
            DrainJson::Along(wall) => Drain::Along(wall.0),
        },
        fall: match bed.fall {
            FallJson::OnLongest(slope) => Fall::OnLongest(slope.0),
            FallJson::OnShortest(slope) => Fall::OnShortest(slope.0),
            FallJson::RiseNm(rise) => Fall::Rise(rise.0),
        },
    };
    (read, read_mix(bed.mix))
}

fn write_mix(mix: &Mix) -> MixJson {
    match mix {
        Mix::Site(parts) => MixJson::Site {
            cement: More(parts.cement),
            lime: More(parts.lime),
            sand: More(parts.sand),
            by: match parts.by {
                Shrink::Rule38 => ShrinkJson::Rule38,
                Shrink::Dry133 => ShrinkJson::Dry133,
                Shrink::DryLoose => ShrinkJson::DryLoose,
                Shrink::SandFills => ShrinkJson::SandFills,
                Shrink::Own(factor) => ShrinkJson::Own(More(factor)),
            },
            cement_kg_per_m3: parts.cement_weighs.map(KgPerM3),
            water_to_cement: parts.water.map(More),
        },
        Mix::Bags { bag, makes, water } => MixJson::Bags {
            bag_kg: Kg(*bag),
            makes_m3: M3(*makes),
            water_m3: write_water(*water),
        },
    }
}

fn read_mix(mix: MixJson) -> Mix {
    match mix {
        MixJson::Site {
            cement,
            lime,
            sand,
            by,
            cement_kg_per_m3,
            water_to_cement,
        } => Mix::Site(Parts {
            cement: cement.0,
            lime: lime.0,
            sand: sand.0,
            by: match by {
                ShrinkJson::Rule38 => Shrink::Rule38,
                ShrinkJson::Dry133 => Shrink::Dry133,
                ShrinkJson::DryLoose => Shrink::DryLoose,
                ShrinkJson::SandFills => Shrink::SandFills,
                ShrinkJson::Own(factor) => Shrink::Own(factor.0),
            },
            cement_weighs: cement_kg_per_m3.map(|weighs| weighs.0),
            water: figure(water_to_cement),
        }),
        MixJson::Bags {
            bag_kg,
            makes_m3,
            water_m3,
        } => Mix::Bags {
            bag: bag_kg.0,
            makes: makes_m3.0,
            water: read_water(water_m3),
        },
    }
}

pub(super) fn write_mortar(ask: &mortar::Ask, tile: Option<Id>) -> MortarJson {
    MortarJson {
        tile_figure: tile.map(|id| Hex(id.0)),
        work: match &ask.work {
            Work::Setting(setting) => WorkJson::Setting(Box::new(write_setting(setting))),
            Work::Bed(bed, mix) => WorkJson::Bed(Box::new(write_bed(bed, mix))),
            Work::Volume(volume, mix) => WorkJson::Volume {
                volume_m3: M3(*volume),
                mix: write_mix(mix),
            },
        },
        waste: More(ask.waste),
        bucket_m3: M3(ask.batch.bucket),
        fill: More(ask.batch.fill),
        pace_m2_per_hour: M2(ask.batch.pace),
        old_floor: ask.old_floor,
    }
}

pub(super) fn read_mortar(mortar: MortarJson) -> (mortar::Ask, Option<Id>) {
    let ask = mortar::Ask {
        work: match mortar.work {
            WorkJson::Setting(setting) => Work::Setting(read_setting(*setting)),
            WorkJson::Bed(bed) => {
                let (bed, mix) = read_bed(*bed);
                Work::Bed(bed, mix)
            }
            WorkJson::Volume { volume_m3, mix } => Work::Volume(volume_m3.0, read_mix(mix)),
        },
        waste: mortar.waste.0,
        batch: Batch {
            bucket: mortar.bucket_m3.0,
            fill: mortar.fill.0,
            pace: mortar.pace_m2_per_hour.0,
        },
        old_floor: mortar.old_floor,
    };
    (ask, mortar.tile_figure.map(Hex::id))
}
