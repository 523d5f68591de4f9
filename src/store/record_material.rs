//! Materials as records.

use serde::{Deserialize, Serialize};

use super::record::{choice, code, length};
use super::record_figures::GROUTS;
use super::record_pipe::{FAMILIES, KINDS, PIPES, SIZES, TURNS};
use super::record_sheets::BOARDS;
use crate::measure::Length;
use crate::trades::{Compound, Material};

#[derive(Serialize, Deserialize)]
pub(super) enum MaterialRecord {
    Board(i64),
    Screws(i64),
    JointTape,
    Compound(bool),
    AdhesivePatch(i64),
    Lumber(i64, i64),
    Primer(String),
    Paint(String),
    Grout(u8, String),
    Sealant(String),
    SettingMortar(bool),
    BedMix,
    Cement,
    Sand,
    Lime,
    Tile(i64, i64, u32),
    MosaicSheet(i64, i64, u32),
    ShieldPlate,
    /// Material, size, stick.
    Pipe(u8, u8, i64),
    /// Family, kind, turn, sizes, street.
    PipeFitting(u8, u8, u8, [u8; 2], bool),
    Solder,
    Flux,
    PipeCement(u8),
    PipePrimer,
    PipeHanger(u8, u8),
    /// Board, long, short, thickness.
    Sheet(u8, [i64; 3]),
    SheetScrews(u8, i64),
    MeshTape,
    /// Name, thickness, width.
    Trim(String, i64, i64),
    FinishNails(i64),
    Caulk,
}

pub(super) fn material(material: &Material) -> MaterialRecord {
    match material {
        Material::Board { thickness } => MaterialRecord::Board(thickness.as_nm()),
        Material::Screws { length } => MaterialRecord::Screws(length.as_nm()),
        Material::JointTape => MaterialRecord::JointTape,
        Material::Compound(compound) => MaterialRecord::Compound(*compound == Compound::Setting),
        Material::AdhesivePatch { side } => MaterialRecord::AdhesivePatch(side.as_nm()),
        Material::Lumber { thickness, width } => {
            MaterialRecord::Lumber(thickness.as_nm(), width.as_nm())
        }
        Material::Tile {
            long,
            short,
            in_box,
        } => MaterialRecord::Tile(long.as_nm(), short.as_nm(), *in_box),
        Material::Primer { label } => MaterialRecord::Primer(label.clone()),
        Material::Paint { label } => MaterialRecord::Paint(label.clone()),
        Material::Grout { kind, color } => {
            MaterialRecord::Grout(code(&GROUTS, kind), color.clone())
        }
        Material::Sealant { color } => MaterialRecord::Sealant(color.clone()),
        Material::SettingMortar { large_tile } => MaterialRecord::SettingMortar(*large_tile),
        Material::BedMix => MaterialRecord::BedMix,
        Material::Cement => MaterialRecord::Cement,
        Material::Sand => MaterialRecord::Sand,
        Material::Lime => MaterialRecord::Lime,
        Material::MosaicSheet {
            long,
            short,
            in_box,
        } => MaterialRecord::MosaicSheet(long.as_nm(), short.as_nm(), *in_box),
        Material::ShieldPlate => MaterialRecord::ShieldPlate,
        Material::Pipe { pipe, size, stick } => {
            MaterialRecord::Pipe(code(&PIPES, pipe), code(&SIZES, size), stick.as_nm())
        }
        Material::PipeFitting {
            family,
            kind,
            turn,
            size,
            other,
            street,
        } => MaterialRecord::PipeFitting(
            code(&FAMILIES, family),
            code(&KINDS, kind),
            code(&TURNS, turn),
            [code(&SIZES, size), code(&SIZES, other)],
            *street,
        ),
        Material::Solder => MaterialRecord::Solder,
        Material::Flux => MaterialRecord::Flux,
        Material::PipeCement { family } => MaterialRecord::PipeCement(code(&FAMILIES, family)),
        Material::PipePrimer => MaterialRecord::PipePrimer,
        Material::PipeHanger { family, size } => {
            MaterialRecord::PipeHanger(code(&FAMILIES, family), code(&SIZES, size))
        }
        Material::Sheet {
            board,
            long,
            short,
            thickness,
        } => MaterialRecord::Sheet(
            code(&BOARDS, board),
            [*long, *short, *thickness].map(Length::as_nm),
        ),
        Material::SheetScrews { board, length } => {
            MaterialRecord::SheetScrews(code(&BOARDS, board), length.as_nm())
        }
        Material::MeshTape => MaterialRecord::MeshTape,
        Material::Trim {
            name,
            thickness,
            width,
        } => MaterialRecord::Trim(name.clone(), thickness.as_nm(), width.as_nm()),
        Material::FinishNails { length } => MaterialRecord::FinishNails(length.as_nm()),
        Material::Caulk => MaterialRecord::Caulk,
    }
}

pub(super) fn read_material(record: MaterialRecord) -> Option<Material> {
    Some(match record {
        MaterialRecord::Board(nm) => Material::Board {
            thickness: length(nm)?,
        },
        MaterialRecord::Screws(nm) => Material::Screws {
            length: length(nm)?,
        },
        MaterialRecord::JointTape => Material::JointTape,
        MaterialRecord::Compound(setting) => Material::Compound(if setting {
            Compound::Setting
        } else {
            Compound::Drying
        }),
        MaterialRecord::AdhesivePatch(nm) => Material::AdhesivePatch { side: length(nm)? },
        MaterialRecord::Lumber(thickness, width) => Material::Lumber {
            thickness: length(thickness)?,
            width: length(width)?,
        },
        MaterialRecord::Tile(long, short, in_box) => Material::Tile {
            long: length(long)?,
            short: length(short)?,
            in_box,
        },
        MaterialRecord::Primer(label) => Material::Primer { label },
        MaterialRecord::Paint(label) => Material::Paint { label },
        MaterialRecord::Grout(kind, color) => Material::Grout {
            kind: choice(&GROUTS, kind)?,
            color,
        },
        MaterialRecord::Sealant(color) => Material::Sealant { color },
        MaterialRecord::SettingMortar(large_tile) => Material::SettingMortar { large_tile },
        MaterialRecord::BedMix => Material::BedMix,
        MaterialRecord::Cement => Material::Cement,
        MaterialRecord::Sand => Material::Sand,
        MaterialRecord::Lime => Material::Lime,
        MaterialRecord::MosaicSheet(long, short, in_box) => Material::MosaicSheet {
            long: length(long)?,
            short: length(short)?,
            in_box,
        },
        MaterialRecord::ShieldPlate => Material::ShieldPlate,
        MaterialRecord::Pipe(pipe, size, stick) => Material::Pipe {
            pipe: choice(&PIPES, pipe)?,
            size: choice(&SIZES, size)?,
            stick: length(stick)?,
        },
        MaterialRecord::PipeFitting(family, kind, turn, [size, other], street) => {
            Material::PipeFitting {
                family: choice(&FAMILIES, family)?,
                kind: choice(&KINDS, kind)?,
                turn: choice(&TURNS, turn)?,
                size: choice(&SIZES, size)?,
                other: choice(&SIZES, other)?,
                street,
            }
        }
        MaterialRecord::Solder => Material::Solder,
        MaterialRecord::Flux => Material::Flux,
        MaterialRecord::PipeCement(family) => Material::PipeCement {
            family: choice(&FAMILIES, family)?,
        },
        MaterialRecord::PipePrimer => Material::PipePrimer,
        MaterialRecord::PipeHanger(family, size) => Material::PipeHanger {
            family: choice(&FAMILIES, family)?,
            size: choice(&SIZES, size)?,
        },
        MaterialRecord::Sheet(board, [long, short, thickness]) => Material::Sheet {
            board: choice(&BOARDS, board)?,
            long: length(long)?,
            short: length(short)?,
            thickness: length(thickness)?,
        },
        MaterialRecord::SheetScrews(board, nm) => Material::SheetScrews {
            board: choice(&BOARDS, board)?,
            length: length(nm)?,
        },
        MaterialRecord::MeshTape => Material::MeshTape,
        MaterialRecord::Trim(name, thickness, width) => Material::Trim {
            name,
            thickness: length(thickness)?,
            width: length(width)?,
        },
        MaterialRecord::FinishNails(nm) => Material::FinishNails {
            length: length(nm)?,
        },
        MaterialRecord::Caulk => Material::Caulk,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trades::Grout;

    /// The bytes of a material must stay what they are: its place in the record is its number.
    #[test]
    fn materials_sold_by_weight_come_back_and_keep_their_number() {
        let color = || "Gray".to_owned();
        let all = [
            Material::Grout {
                kind: Grout::Sanded,
                color: color(),
            },
            Material::Sealant { color: color() },
            Material::SettingMortar { large_tile: true },
            Material::BedMix,
            Material::Cement,
            Material::Sand,
            Material::Lime,
        ];
        for (at, one) in all.iter().enumerate() {
            let bytes = postcard::to_stdvec(&material(one)).unwrap();
            assert_eq!(usize::from(bytes[0]), 8 + at);
            let record: MaterialRecord = postcard::from_bytes(&bytes).unwrap();
            assert_eq!(read_material(record).as_ref(), Some(one));
        }
        assert_eq!(read_material(MaterialRecord::Grout(3, color())), None);
    }
}
