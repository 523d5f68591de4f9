//! What the tape said of a room beyond its walls, how each measurement stands, and its fixtures, as a record of its own
//! beside the room.

use serde::{Deserialize, Serialize};

use super::record::{all, choice, code, length, maybe};
use crate::measure::Length;
use crate::site::{Fixture, FixtureKind, Id, Mark, Passed, Room, Side, Size, Survey, Third, What};

/// What is measured: its kind, the wall, corner or thing, and the other corner, end or size.
type WhatRecord = (u8, u32, u32);

#[derive(Serialize, Deserialize)]
pub(super) struct SurveyRecord {
    figures: Vec<(WhatRecord, i64)>,
    marks: Vec<(WhatRecord, MarkRecord)>,
    reads_to: i64,
    facing: u8,
    fixtures: Vec<FixtureRecord>,
}

#[derive(Serialize, Deserialize)]
struct MarkRecord {
    /// 0 not passed over, 1 skipped, 2 not there.
    passed: u8,
    estimate: Option<i64>,
    carried: bool,
    earlier: Vec<i64>,
}

#[derive(Serialize, Deserialize)]
struct FixtureRecord {
    id: u64,
    kind: u8,
    wall: u32,
    /// From the left, out, across, deep, high.
    sizes: [Option<i64>; 5],
    note: String,
}

const SIDES: [Side; 2] = [Side::Left, Side::Right];
const THIRDS: [Third; 3] = [Third::Left, Third::Middle, Third::Right];
const SIZES: [Size; 5] = [
    Size::FromLeft,
    Size::Up,
    Size::Width,
    Size::Height,
    Size::Depth,
];

fn number(at: usize) -> u32 {
    u32::try_from(at).unwrap_or(u32::MAX)
}

fn write_what(what: What) -> WhatRecord {
    let size = |size| u32::from(code(&SIZES, &size));
    match what {
        What::Wall(at) => (0, number(at), 0),
        What::Diagonal(a, b) => (1, number(a), number(b)),
        What::Ceiling => (2, 0, 0),
        What::WallHeight(at) => (3, number(at), 0),
        What::Height(at) => (4, number(at), 0),
        What::Lean(at, side) => (5, number(at), u32::from(code(&SIDES, &side))),
        What::Gap(at, third) => (6, number(at), u32::from(code(&THIRDS, &third))),
        What::Level(at) => (7, number(at), 0),
        What::Opening(at, of) => (8, number(at), size(of)),
        What::Fixed(at, of) => (9, number(at), size(of)),
        What::Fixture(at, of) => (10, number(at), size(of)),
        What::Hidden(at) => (11, number(at), 0),
    }
}

fn read_what((kind, at, other): WhatRecord) -> Option<What> {
    let at = usize::try_from(at).ok()?;
    let of = u8::try_from(other).ok();
    Some(match kind {
        0 => What::Wall(at),
        1 => What::diagonal(at, usize::try_from(other).ok()?),
        2 => What::Ceiling,
        3 => What::WallHeight(at),
        4 => What::Height(at),
        5 => What::Lean(at, choice(&SIDES, of?)?),
        6 => What::Gap(at, choice(&THIRDS, of?)?),
        7 => What::Level(at),
        8 => What::Opening(at, choice(&SIZES, of?)?),
        9 => What::Fixed(at, choice(&SIZES, of?)?),
        10 => What::Fixture(at, choice(&SIZES, of?)?),
        11 => What::Hidden(at),
        _ => return None,
    })
}

/// A room's; `None` where there is nothing to say, as in every file before there was this.
pub(super) fn write_survey(room: &Room) -> Option<SurveyRecord> {
    let nothing = room.survey == Survey::default() && room.fixtures.is_empty() && room.facing == 0;
    let mark = |(what, mark): (&What, &Mark)| {
        let record = MarkRecord {
            passed: match mark.passed {
                None => 0,
                Some(Passed::Skipped) => 1,
                Some(Passed::NotThere) => 2,
            },
            estimate: mark.estimate.map(Length::as_nm),
            carried: mark.carried,
            earlier: mark.earlier.iter().map(|read| read.as_nm()).collect(),
        };
        (write_what(*what), record)
    };
    let fixture = |fixture: &Fixture| FixtureRecord {
        id: fixture.id.0,
        kind: code(&FixtureKind::ALL, &fixture.kind),
        wall: number(fixture.wall),
        sizes: [
            fixture.from_left,
            fixture.out,
            fixture.width,
            fixture.depth,
            fixture.height,
        ]
        .map(|size| size.map(Length::as_nm)),
        note: fixture.note.clone(),
    };
    let figures = room.survey.figures.iter();
    (!nothing).then(|| SurveyRecord {
        figures: figures
            .map(|(what, read)| (write_what(*what), read.as_nm()))
            .collect(),
        marks: room.survey.marks.iter().map(mark).collect(),
        reads_to: room.survey.reads_to.as_nm(),
        facing: room.facing,
        fixtures: room.fixtures.iter().map(fixture).collect(),
    })
}

/// What a record says of a room.
pub(super) struct Said {
    survey: Survey,
    facing: u8,
    fixtures: Vec<Fixture>,
}

impl Said {
    /// Into its room.
    pub fn into_room(self, room: &mut Room) {
        room.survey = self.survey;
        room.facing = self.facing;
        room.fixtures = self.fixtures;
    }
}

pub(super) fn read_survey(record: SurveyRecord) -> Option<Said> {
    let figures = all(record.figures, |(what, read)| {
        Some((read_what(what)?, length(read)?))
    })?;
    let marks = all(record.marks, |(what, mark)| {
        let passed = match mark.passed {
            0 => None,
            1 => Some(Passed::Skipped),
            2 => Some(Passed::NotThere),
            _ => return None,
        };
        let mark = Mark {
            passed,
            estimate: maybe(mark.estimate)?,
            carried: mark.carried,
            earlier: all(mark.earlier, length)?,
        };
        Some((read_what(what)?, mark))
    })?;
    let fixtures = all(record.fixtures, |fixture| {
        let [from_left, out, width, depth, height] = fixture.sizes;
        Some(Fixture {
            id: Id(fixture.id),
            kind: choice(&FixtureKind::ALL, fixture.kind)?,
            wall: usize::try_from(fixture.wall).ok()?,
            from_left: maybe(from_left)?,
            out: maybe(out)?,
            width: maybe(width)?,
            depth: maybe(depth)?,
            height: maybe(height)?,
            note: fixture.note,
        })
    })?;
    Some(Said {
        survey: Survey {
            figures: figures.into_iter().collect(),
            marks: marks.into_iter().collect(),
            reads_to: length(record.reads_to)?,
        },
        facing: (record.facing < 4).then_some(record.facing)?,
        fixtures,
    })
}
