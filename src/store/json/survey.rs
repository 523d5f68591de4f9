//! What the tape said of a room beyond its walls, how each measurement stands, and its fixtures, in JSON.

use serde::{Deserialize, Serialize};

use super::rooms::{length, nm};
use super::words::{Hex, Nm, Word};
use crate::measure::Length;
use crate::site::{Fixture, FixtureKind, Mark, Passed, Side, Size, Survey, Third, What};

#[derive(Serialize, Deserialize)]
pub(super) struct SurveyJson {
    #[serde(default)]
    figures: Vec<FigureJson>,
    #[serde(default)]
    marks: Vec<MarkJson>,
    reads_to_nm: Option<Nm>,
}

impl Default for SurveyJson {
    fn default() -> SurveyJson {
        write_survey(&Survey::default())
    }
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum WhatJson {
    Wall(usize),
    Diagonal(usize, usize),
    Ceiling,
    WallHeight(usize),
    Height(usize),
    Lean(usize, Word<Side>),
    Gap(usize, Word<Third>),
    Level(usize),
    Opening(usize, Word<Size>),
    Fixed(usize, Word<Size>),
    Fixture(usize, Word<Size>),
    Hidden(usize),
}

#[derive(Serialize, Deserialize)]
struct FigureJson {
    what: WhatJson,
    length_nm: Nm,
}

#[derive(Serialize, Deserialize)]
struct MarkJson {
    what: WhatJson,
    passed: Option<Word<Passed>>,
    estimate_nm: Option<Nm>,
    #[serde(default)]
    carried: bool,
    #[serde(default)]
    earlier_nm: Vec<Nm>,
}

#[derive(Serialize, Deserialize)]
pub(super) struct FixtureJson {
    #[serde(default = "Hex::fresh")]
    id: Hex,
    kind: Word<FixtureKind>,
    pub wall: usize,
    from_left_nm: Option<Nm>,
    out_nm: Option<Nm>,
    width_nm: Option<Nm>,
    depth_nm: Option<Nm>,
    height_nm: Option<Nm>,
    #[serde(default)]
    note: String,
}

fn write_what(what: What) -> WhatJson {
    match what {
        What::Wall(at) => WhatJson::Wall(at),
        What::Diagonal(a, b) => WhatJson::Diagonal(a, b),
        What::Ceiling => WhatJson::Ceiling,
        What::WallHeight(at) => WhatJson::WallHeight(at),
        What::Height(at) => WhatJson::Height(at),
        What::Lean(at, side) => WhatJson::Lean(at, Word(side)),
        What::Gap(at, third) => WhatJson::Gap(at, Word(third)),
        What::Level(at) => WhatJson::Level(at),
        What::Opening(at, size) => WhatJson::Opening(at, Word(size)),
        What::Fixed(at, size) => WhatJson::Fixed(at, Word(size)),
        What::Fixture(at, size) => WhatJson::Fixture(at, Word(size)),
        What::Hidden(at) => WhatJson::Hidden(at),
    }
}
fn read_what(what: &WhatJson) -> What {
    match *what {
        WhatJson::Wall(at) => What::Wall(at),
        WhatJson::Diagonal(a, b) => What::diagonal(a, b),
        WhatJson::Ceiling => What::Ceiling,
        WhatJson::WallHeight(at) => What::WallHeight(at),
        WhatJson::Height(at) => What::Height(at),
        WhatJson::Lean(at, side) => What::Lean(at, side.0),
        WhatJson::Gap(at, third) => What::Gap(at, third.0),
        WhatJson::Level(at) => What::Level(at),
        WhatJson::Opening(at, size) => What::Opening(at, size.0),
        WhatJson::Fixed(at, size) => What::Fixed(at, size.0),
        WhatJson::Fixture(at, size) => What::Fixture(at, size.0),
        WhatJson::Hidden(at) => What::Hidden(at),
    }
}

pub(super) fn write_survey(survey: &Survey) -> SurveyJson {
    let figure = |(what, read): (&What, &Length)| FigureJson {
        what: write_what(*what),
        length_nm: Nm(*read),
    };
    let mark = |(what, mark): (&What, &Mark)| MarkJson {
        what: write_what(*what),
        passed: mark.passed.map(Word),
        estimate_nm: nm(mark.estimate),
        carried: mark.carried,
        earlier_nm: mark.earlier.iter().copied().map(Nm).collect(),
    };
    SurveyJson {
        figures: survey.figures.iter().map(figure).collect(),
        marks: survey.marks.iter().map(mark).collect(),
        reads_to_nm: Some(Nm(survey.reads_to)),
    }
}
pub(super) fn read_survey(survey: SurveyJson) -> Survey {
    let figure = |figure: FigureJson| (read_what(&figure.what), figure.length_nm.0);
    let mark = |mark: MarkJson| {
        let what = read_what(&mark.what);
        let mark = Mark {
            passed: mark.passed.map(|passed| passed.0),
            estimate: length(mark.estimate_nm),
            carried: mark.carried,
            earlier: mark.earlier_nm.into_iter().map(|read| read.0).collect(),
        };
        (what, mark)
    };
    Survey {
        figures: survey.figures.into_iter().map(figure).collect(),
        marks: survey.marks.into_iter().map(mark).collect(),
        reads_to: length(survey.reads_to_nm).unwrap_or(Survey::default().reads_to),
    }
}

pub(super) fn write_fixture(fixture: &Fixture) -> FixtureJson {
    FixtureJson {
        id: Hex(fixture.id.0),
        kind: Word(fixture.kind),
        wall: fixture.wall,
        from_left_nm: nm(fixture.from_left),
        out_nm: nm(fixture.out),
        width_nm: nm(fixture.width),
        depth_nm: nm(fixture.depth),
        height_nm: nm(fixture.height),
        note: fixture.note.clone(),
    }
}
pub(super) fn read_fixture(fixture: FixtureJson) -> Fixture {
    Fixture {
        id: fixture.id.id(),
        kind: fixture.kind.0,
        wall: fixture.wall,
        from_left: length(fixture.from_left_nm),
        out: length(fixture.out_nm),
        width: length(fixture.width_nm),
        depth: length(fixture.depth_nm),
        height: length(fixture.height_nm),
        note: fixture.note,
    }
}
