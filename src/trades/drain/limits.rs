//! What is taken, declared once for the check, the message and the tests.

use super::{Ask, Field, Problem, Through};
use crate::handbook::drain as book;
use crate::measure::{Amount, Length};
use crate::trades::limits::{Limited, length, within};

/// The run.
pub const RUN: (Length, Length) = (Length::in_64(0, 1), Length::feet(200));
/// The fall in a foot.
pub const FALL: (Length, Length) = (Length::ZERO, Length::inches(12));
/// The height of the upper end.
pub const START: (Length, Length) = (Length::feet(-20), Length::feet(20));
/// From the upper end to the first joist or stud.
pub const FIRST: (Length, Length) = (Length::ZERO, Length::feet(200));
/// From centre to centre.
pub const SPACING: (Length, Length) = (Length::inches(1), Length::feet(20));
/// A joist or a stud.
pub const DEPTH: (Length, Length) = (Length::inches(1), Length::inches(30));
/// A hole.
pub const HOLE: (Length, Length) = (Length::in_64(0, 32), Length::inches(12));
/// The trap arm.
pub const ARM: (Length, Length) = (Length::in_64(0, 1), Length::feet(40));
/// Most of one fixture.
pub const MOST_FIXTURES: u32 = 50;
/// From the finished wall to the flange.
pub const ROUGH_IN: (Length, Length) = (Length::inches(4), Length::inches(30));
/// What still comes onto the studs.
pub const TO_COME: (Length, Length) = (Length::ZERO, Length::inches(6));
/// Most joists or studs on the way.
pub const MOST_MEMBERS: usize = 200;

pub(super) fn checked(ask: &Ask) -> Result<(), Problem> {
    length(Field::Run, ask.run, RUN)?;
    if let Some(fall) = ask.fall {
        length(Field::Fall, fall, FALL)?;
    }
    if let Some(start) = ask.start {
        length(Field::Start, start, START)?;
    }
    if let Some((first, spacing, depth)) = ask.through.spaced() {
        length(Field::First, first, FIRST)?;
        length(Field::Spacing, spacing, SPACING)?;
        length(Field::Depth, depth, DEPTH)?;
        let on_the_way = (ask.run - first).as_nm() / spacing.as_nm();
        if on_the_way >= MOST_MEMBERS as i64 {
            return Err(Problem::TooManyMembers(MOST_MEMBERS));
        }
        if let Through::Studs {
            across: Some(across),
            ..
        } = ask.through
        {
            length(Field::Across, across, (Length::ZERO, depth))?;
        }
    }
    if let Some(hole) = ask.hole {
        length(Field::Hole, hole, HOLE)?;
        let pipe = ask.size.of(&book::OUTSIDE.value);
        if hole < pipe {
            return Err(Problem::HoleTooSmall(pipe));
        }
    }
    if let Some(arm) = ask.arm {
        length(Field::Arm, arm.length, ARM)?;
    }
    for (at, count) in ask.fixtures.iter().enumerate() {
        let count_of = |n: u32| Amount::Count(i64::from(n));
        let inside = *count <= MOST_FIXTURES;
        within(
            inside,
            Field::Fixtures(at),
            count_of(0),
            count_of(MOST_FIXTURES),
        )?;
    }
    if let Some(flange) = ask.flange {
        length(Field::RoughIn, flange.rough_in, ROUGH_IN)?;
        length(Field::ToCome, flange.to_come, TO_COME)?;
    }
    Ok(())
}

impl Limited for Field {
    type Problem = Problem;
    fn beyond(self, least: Amount, most: Amount) -> Problem {
        Problem::Beyond {
            field: self,
            least,
            most,
        }
    }
}
