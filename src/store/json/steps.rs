//! Ticks, moves and own steps of the order of work in JSON.

use serde::{Deserialize, Serialize};

use super::words::{Hex, When, Word, Words};
use crate::takeoff::{StepNote, StepOf};
use crate::trades::Work;

#[derive(Serialize, Deserialize)]
pub(super) struct StepJson {
    #[serde(default = "Hex::fresh")]
    pub id: Hex,
    of: StepOfJson,
    done: Option<When>,
    rank: Option<i64>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum StepOfJson {
    Figure {
        figure: Hex,
        work: Word<Work>,
        #[serde(default)]
        nth: u8,
    },
    Own {
        room: Option<Hex>,
        text: String,
    },
}

impl Words for Work {
    const WORDS: &'static [(&'static str, Work)] = &[
        ("shut-off", Work::ShutOff),
        ("cut-pipe", Work::CutPipe),
        ("fit-dry", Work::FitDry),
        ("mark", Work::Mark),
        ("take-apart", Work::TakeApart),
        ("join", Work::Join),
        ("wait", Work::Wait),
        ("test", Work::Test),
        ("close", Work::Close),
        ("lay-drain", Work::LayDrain),
        ("open-up", Work::OpenUp),
        ("board", Work::Board),
        ("coat", Work::Coat),
        ("sand", Work::Sand),
        ("prime", Work::Prime),
        ("ceiling", Work::Ceiling),
        ("walls", Work::Walls),
        ("trim", Work::Trim),
        ("bed", Work::Bed),
        ("chalk", Work::Chalk),
        ("set-tile", Work::SetTile),
        ("grout", Work::Grout),
        ("seal", Work::Seal),
        ("photograph", Work::Photograph),
        ("cut-sheets", Work::CutSheets),
        ("fasten-sheets", Work::FastenSheets),
        ("strip-trim", Work::StripTrim),
        ("cut-trim", Work::CutTrim),
        ("nail-casing", Work::NailCasing),
        ("nail-base", Work::NailBase),
        ("caulk-trim", Work::CaulkTrim),
    ];
}

pub(super) fn write_step(note: &StepNote) -> StepJson {
    StepJson {
        id: Hex(note.id.0),
        of: match &note.of {
            StepOf::Figure(figure, work, nth) => StepOfJson::Figure {
                figure: Hex(figure.0),
                work: Word(*work),
                nth: *nth,
            },
            StepOf::Own(room, text) => StepOfJson::Own {
                room: room.map(|room| Hex(room.0)),
                text: text.clone(),
            },
        },
        done: note.done.map(When),
        rank: note.rank,
    }
}

/// A note of a figure's step has the name that follows from the figure, whatever was written.
pub(super) fn read_step(json: StepJson) -> StepNote {
    let note = match json.of {
        StepOfJson::Figure { figure, work, nth } => StepNote::figure(figure.id(), work.0, nth),
        StepOfJson::Own { room, text } => StepNote {
            id: json.id.id(),
            ..StepNote::own(room.map(Hex::id), text)
        },
    };
    StepNote {
        done: json.done.map(|done| done.0),
        rank: json.rank,
        ..note
    }
}
