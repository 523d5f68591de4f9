//! The buying list and the tape's bench in JSON.

use serde::{Deserialize, Serialize};

use super::drain::{CuttingJson, LeftJson, read_cutting, read_left, write_cutting, write_left};
use super::rooms::{length, nm};
use super::words::{Hex, Minor, Nm, Word};
use crate::handbook::pipe::{Family, Kind, Pipe, Size, Turn};
use crate::takeoff::{Buying, Choice, HandLine, LineKey, PackKey, TapeBench};
use crate::trades::tape::Ends;
use crate::trades::{Board, Compound, Grout, Material};

/// What is missing is as in a new job.
#[derive(Serialize, Deserialize)]
#[serde(default)]
pub(super) struct BuyingJson {
    pub by_hand: Vec<HandLineJson>,
    ticked: Vec<LineJson>,
    overrides: Vec<CountJson>,
    prices: Vec<PriceJson>,
    symbol: String,
    choice: Word<Choice>,
    metric_packs: bool,
    cutting: Vec<CuttingJson>,
    #[serde(default)]
    left: Vec<LeftJson>,
}

impl Default for BuyingJson {
    fn default() -> BuyingJson {
        write_buying(&Buying::default())
    }
}

#[derive(Serialize, Deserialize)]
pub(super) struct HandLineJson {
    #[serde(default = "Hex::fresh")]
    pub id: Hex,
    text: String,
    count: u32,
    price_minor: Option<Minor>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum LineJson {
    Material(MaterialJson),
    ByHand(Hex),
}

#[derive(Serialize, Deserialize)]
struct CountJson {
    material: MaterialJson,
    holds_millionths: i64,
    count: u32,
}

#[derive(Serialize, Deserialize)]
struct PriceJson {
    material: MaterialJson,
    holds_millionths: i64,
    price_minor: Minor,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum MaterialJson {
    Board {
        thickness_nm: Nm,
    },
    Screws {
        length_nm: Nm,
    },
    JointTape,
    Compound(Word<Compound>),
    AdhesivePatch {
        side_nm: Nm,
    },
    Lumber {
        thickness_nm: Nm,
        width_nm: Nm,
    },
    Primer {
        label: String,
    },
    Paint {
        label: String,
    },
    Tile {
        long_nm: Nm,
        short_nm: Nm,
        in_box: u32,
    },
    Grout {
        kind: GroutJson,
        color: String,
    },
    Sealant {
        color: String,
    },
    SettingMortar {
        large_tile: bool,
    },
    BedMix,
    Cement,
    Sand,
    Lime,
    MosaicSheet {
        long_nm: Nm,
        short_nm: Nm,
        in_box: u32,
    },
    ShieldPlate,
    Pipe {
        pipe: Word<Pipe>,
        size: Word<Size>,
        stick_nm: Nm,
    },
    PipeFitting {
        family: Word<Family>,
        kind: Word<Kind>,
        turn: Option<Word<Turn>>,
        size: Word<Size>,
        other: Word<Size>,
        street: bool,
    },
    Solder,
    Flux,
    PipeCement {
        family: Word<Family>,
    },
    PipePrimer,
    PipeHanger {
        family: Word<Family>,
        size: Word<Size>,
    },
    Sheet {
        board: Word<Board>,
        long_nm: Nm,
        short_nm: Nm,
        thickness_nm: Nm,
    },
    SheetScrews {
        board: Word<Board>,
        length_nm: Nm,
    },
    MeshTape,
    Trim {
        name: String,
        thickness_nm: Nm,
        width_nm: Nm,
    },
    FinishNails {
        length_nm: Nm,
    },
    Caulk,
}

#[derive(Serialize, Deserialize)]
#[serde(default)]
pub(super) struct TapeJson {
    sides_nm: [Option<Nm>; 2],
    diagonals_nm: [Option<Nm>; 2],
    run_nm: Option<Nm>,
    count: u32,
    width_nm: Option<Nm>,
    ends: Word<Ends>,
    scale_nm: Nm,
    on_paper_nm: Option<Nm>,
    on_site_nm: Option<Nm>,
}

impl Default for TapeJson {
    fn default() -> TapeJson {
        write_tape(&TapeBench::default())
    }
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum GroutJson {
    Unsanded,
    Sanded,
    HeavySand,
}

pub(super) fn write_material(material: &Material) -> MaterialJson {
    match material {
        Material::Board { thickness } => MaterialJson::Board {
            thickness_nm: Nm(*thickness),
        },
        Material::Screws { length } => MaterialJson::Screws {
            length_nm: Nm(*length),
        },
        Material::JointTape => MaterialJson::JointTape,
        Material::Compound(compound) => MaterialJson::Compound(Word(*compound)),
        Material::AdhesivePatch { side } => MaterialJson::AdhesivePatch { side_nm: Nm(*side) },
        Material::Lumber { thickness, width } => MaterialJson::Lumber {
            thickness_nm: Nm(*thickness),
            width_nm: Nm(*width),
        },
        Material::Tile {
            long,
            short,
            in_box,
        } => MaterialJson::Tile {
            long_nm: Nm(*long),
            short_nm: Nm(*short),
            in_box: *in_box,
        },
        Material::Grout { kind, color } => MaterialJson::Grout {
            kind: match kind {
                Grout::Unsanded => GroutJson::Unsanded,
                Grout::Sanded => GroutJson::Sanded,
                Grout::HeavySand => GroutJson::HeavySand,
            },
            color: color.clone(),
        },
        Material::Sealant { color } => MaterialJson::Sealant {
            color: color.clone(),
        },
        Material::SettingMortar { large_tile } => MaterialJson::SettingMortar {
            large_tile: *large_tile,
        },
        Material::BedMix => MaterialJson::BedMix,
        Material::Cement => MaterialJson::Cement,
        Material::Sand => MaterialJson::Sand,
        Material::Lime => MaterialJson::Lime,
        Material::MosaicSheet {
            long,
            short,
            in_box,
        } => MaterialJson::MosaicSheet {
            long_nm: Nm(*long),
            short_nm: Nm(*short),
            in_box: *in_box,
        },
        Material::ShieldPlate => MaterialJson::ShieldPlate,
        Material::Pipe { pipe, size, stick } => MaterialJson::Pipe {
            pipe: Word(*pipe),
            size: Word(*size),
            stick_nm: Nm(*stick),
        },
        Material::PipeFitting {
            family,
            kind,
            turn,
            size,
            other,
            street,
        } => MaterialJson::PipeFitting {
            family: Word(*family),
            kind: Word(*kind),
            turn: turn.map(Word),
            size: Word(*size),
            other: Word(*other),
            street: *street,
        },
        Material::Solder => MaterialJson::Solder,
        Material::Flux => MaterialJson::Flux,
        Material::PipeCement { family } => MaterialJson::PipeCement {
            family: Word(*family),
        },
        Material::PipePrimer => MaterialJson::PipePrimer,
        Material::PipeHanger { family, size } => MaterialJson::PipeHanger {
            family: Word(*family),
            size: Word(*size),
        },
        Material::Sheet {
            board,
            long,
            short,
            thickness,
        } => MaterialJson::Sheet {
            board: Word(*board),
            long_nm: Nm(*long),
            short_nm: Nm(*short),
            thickness_nm: Nm(*thickness),
        },
        Material::SheetScrews { board, length } => MaterialJson::SheetScrews {
            board: Word(*board),
            length_nm: Nm(*length),
        },
        Material::MeshTape => MaterialJson::MeshTape,
        Material::Trim {
            name,
            thickness,
            width,
        } => MaterialJson::Trim {
            name: name.clone(),
            thickness_nm: Nm(*thickness),
            width_nm: Nm(*width),
        },
        Material::FinishNails { length } => MaterialJson::FinishNails {
            length_nm: Nm(*length),
        },
        Material::Caulk => MaterialJson::Caulk,
        Material::Primer { label } => MaterialJson::Primer {
            label: label.clone(),
        },
        Material::Paint { label } => MaterialJson::Paint {
            label: label.clone(),
        },
    }
}

pub(super) fn read_material(material: MaterialJson) -> Material {
    match material {
        MaterialJson::Sheet {
            board,
            long_nm,
            short_nm,
            thickness_nm,
        } => Material::Sheet {
            board: board.0,
            long: long_nm.0,
            short: short_nm.0,
            thickness: thickness_nm.0,
        },
        MaterialJson::SheetScrews { board, length_nm } => Material::SheetScrews {
            board: board.0,
            length: length_nm.0,
        },
        MaterialJson::MeshTape => Material::MeshTape,
        MaterialJson::Trim {
            name,
            thickness_nm,
            width_nm,
        } => Material::Trim {
            name,
            thickness: thickness_nm.0,
            width: width_nm.0,
        },
        MaterialJson::FinishNails { length_nm } => Material::FinishNails {
            length: length_nm.0,
        },
        MaterialJson::Caulk => Material::Caulk,
        MaterialJson::Board { thickness_nm } => Material::Board {
            thickness: thickness_nm.0,
        },
        MaterialJson::Screws { length_nm } => Material::Screws {
            length: length_nm.0,
        },
        MaterialJson::JointTape => Material::JointTape,
        MaterialJson::Compound(compound) => Material::Compound(compound.0),
        MaterialJson::AdhesivePatch { side_nm } => Material::AdhesivePatch { side: side_nm.0 },
        MaterialJson::Lumber {
            thickness_nm,
            width_nm,
        } => Material::Lumber {
            thickness: thickness_nm.0,
            width: width_nm.0,
        },
        MaterialJson::Tile {
            long_nm,
            short_nm,
            in_box,
        } => Material::Tile {
            long: long_nm.0,
            short: short_nm.0,
            in_box,
        },
        MaterialJson::Grout { kind, color } => Material::Grout {
            kind: match kind {
                GroutJson::Unsanded => Grout::Unsanded,
                GroutJson::Sanded => Grout::Sanded,
                GroutJson::HeavySand => Grout::HeavySand,
            },
            color,
        },
        MaterialJson::Sealant { color } => Material::Sealant { color },
        MaterialJson::SettingMortar { large_tile } => Material::SettingMortar { large_tile },
        MaterialJson::BedMix => Material::BedMix,
        MaterialJson::Cement => Material::Cement,
        MaterialJson::Sand => Material::Sand,
        MaterialJson::Lime => Material::Lime,
        MaterialJson::MosaicSheet {
            long_nm,
            short_nm,
            in_box,
        } => Material::MosaicSheet {
            long: long_nm.0,
            short: short_nm.0,
            in_box,
        },
        MaterialJson::ShieldPlate => Material::ShieldPlate,
        MaterialJson::Pipe {
            pipe,
            size,
            stick_nm,
        } => Material::Pipe {
            pipe: pipe.0,
            size: size.0,
            stick: stick_nm.0,
        },
        MaterialJson::PipeFitting {
            family,
            kind,
            turn,
            size,
            other,
            street,
        } => Material::PipeFitting {
            family: family.0,
            kind: kind.0,
            turn: turn.map(|turn| turn.0),
            size: size.0,
            other: other.0,
            street,
        },
        MaterialJson::Solder => Material::Solder,
        MaterialJson::Flux => Material::Flux,
        MaterialJson::PipeCement { family } => Material::PipeCement { family: family.0 },
        MaterialJson::PipePrimer => Material::PipePrimer,
        MaterialJson::PipeHanger { family, size } => Material::PipeHanger {
            family: family.0,
            size: size.0,
        },
        MaterialJson::Primer { label } => Material::Primer { label },
        MaterialJson::Paint { label } => Material::Paint { label },
    }
}

pub(super) fn write_buying(buying: &Buying) -> BuyingJson {
    let hand_line = |line: &HandLine| HandLineJson {
        id: Hex(line.id.0),
        text: line.text.clone(),
        count: line.count,
        price_minor: line.price.map(Minor),
    };
    let ticked = |key: &LineKey| match key {
        LineKey::Material(material) => LineJson::Material(write_material(material)),
        LineKey::ByHand(id) => LineJson::ByHand(Hex(id.0)),
    };
    let counts = buying.overrides.iter().map(|(key, count)| CountJson {
        material: write_material(&key.material),
        holds_millionths: key.holds,
        count: *count,
    });
    let prices = buying.prices.iter().map(|(key, price)| PriceJson {
        material: write_material(&key.material),
        holds_millionths: key.holds,
        price_minor: Minor(*price),
    });
    BuyingJson {
        by_hand: buying.by_hand.iter().map(hand_line).collect(),
        ticked: buying.ticked.iter().map(ticked).collect(),
        overrides: counts.collect(),
        prices: prices.collect(),
        symbol: buying.symbol.clone(),
        choice: Word(buying.choice),
        metric_packs: buying.metric_packs,
        cutting: (buying.cutting.iter())
            .map(|(material, setup)| write_cutting(material, setup))
            .collect(),
        left: buying.left.iter().map(write_left).collect(),
    }
}

pub(super) fn read_buying(buying: BuyingJson) -> Buying {
    let hand_line = |line: HandLineJson| HandLine {
        id: line.id.id(),
        text: line.text,
        count: line.count,
        price: line.price_minor.map(|price| price.0),
    };
    let ticked = |line: LineJson| match line {
        LineJson::Material(material) => LineKey::Material(read_material(material)),
        LineJson::ByHand(id) => LineKey::ByHand(id.id()),
    };
    let pack = |material, holds| PackKey {
        material: read_material(material),
        holds,
    };
    let counts =
        (buying.overrides.into_iter()).map(|of| (pack(of.material, of.holds_millionths), of.count));
    let prices = (buying.prices.into_iter())
        .map(|of| (pack(of.material, of.holds_millionths), of.price_minor.0));
    Buying {
        by_hand: buying.by_hand.into_iter().map(hand_line).collect(),
        ticked: buying.ticked.into_iter().map(ticked).collect(),
        overrides: counts.collect(),
        prices: prices.collect(),
        symbol: buying.symbol,
        choice: buying.choice.0,
        metric_packs: buying.metric_packs,
        cutting: buying.cutting.into_iter().map(read_cutting).collect(),
        left: buying.left.into_iter().map(read_left).collect(),
    }
}

pub(super) fn write_tape(tape: &TapeBench) -> TapeJson {
    TapeJson {
        sides_nm: tape.sides.map(nm),
        diagonals_nm: tape.diagonals.map(nm),
        run_nm: nm(tape.run),
        count: tape.count,
        width_nm: nm(tape.width),
        ends: Word(tape.ends),
        scale_nm: Nm(tape.scale),
        on_paper_nm: nm(tape.on_paper),
        on_site_nm: nm(tape.on_site),
    }
}

pub(super) fn read_tape(tape: &TapeJson) -> TapeBench {
    TapeBench {
        sides: tape.sides_nm.map(length),
        diagonals: tape.diagonals_nm.map(length),
        run: length(tape.run_nm),
        count: tape.count,
        width: length(tape.width_nm),
        ends: tape.ends.0,
        scale: tape.scale_nm.0,
        on_paper: length(tape.on_paper_nm),
        on_site: length(tape.on_site_nm),
    }
}
