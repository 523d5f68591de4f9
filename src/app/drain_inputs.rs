//! What a drain asks for, in rows and in and out of the pad.

use super::{App, Chip, Choice, Command, DrainChoice, Kind, Row, Slot};
use crate::handbook::drain as book;
use crate::measure::{Figures, Length, Rounding, stacked};
use crate::takeoff::{Ask, Job};
use crate::trades::drain::{self, Arm, Code, Field, Figure, Fixture, Flange, Size, Through};

/// What a field is called on the pad and in its row.
pub(super) fn asks(slot: Field) -> &'static str {
    match slot {
        Field::Run => "Run, level, from end to end",
        Field::Fall => "Fall in a foot",
        Field::Start => "Centre of the pipe at the upper end",
        Field::First => "Upper end to the centre of the first",
        Field::Spacing => "From centre to centre",
        Field::Depth => "Depth",
        Field::Across => "Face of the stud to the centre of the pipe",
        Field::Hole => "Hole",
        Field::Arm => "Trap weir to the vent",
        Field::Fixtures(at) => fixture(Fixture::ALL.get(at).copied()),
        Field::RoughIn => "Finished wall to the centre of the flange",
        Field::ToCome => "Still to come onto the studs",
    }
}

fn fixture(fixture: Option<Fixture>) -> &'static str {
    match fixture {
        Some(Fixture::Lavatory) => "Lavatories",
        Some(Fixture::Tub) => "Tubs, with or without a shower",
        Some(Fixture::Shower) => "Showers",
        Some(Fixture::Closet) => "Water closets, 1.6 gal or less",
        Some(Fixture::LargeCloset) => "Water closets over 1.6 gal",
        None => "Fixtures",
    }
}

/// The name of a size, as it is stamped on the pipe.
pub(super) fn size_name(size: Size) -> &'static str {
    match size {
        Size::OneAndQuarter => "1 1/4 in",
        Size::OneAndHalf => "1 1/2 in",
        Size::Two => "2 in",
        Size::Three => "3 in",
        Size::Four => "4 in",
    }
}

/// Which of four ways a run goes.
fn way(through: Through) -> u8 {
    match through {
        Through::Open => 0,
        Through::Joists {
            engineered: false, ..
        } => 1,
        Through::Joists { .. } => 2,
        Through::Studs { .. } => 3,
    }
}

impl App {
    /// The rows in which a drain is asked for.
    pub(super) fn drain_inputs(
        &self,
        at: usize,
        ask: &drain::Ask,
        figure: Option<&Figure>,
    ) -> Vec<Row> {
        let row = |slot: Field, value: String| {
            Row::yours(asks(slot), value, Command::Pad(Slot::Drain(at, slot)))
        };
        let set = |choice| Command::Set(at, Choice::Drain(choice));
        let sizes = |now: Size, choice: fn(Size) -> DrainChoice| {
            Size::ALL.map(move |size| {
                Chip::new(stacked(size_name(size)), size == now, set(choice(size)))
            })
        };
        let yes_no = |now: bool, choice: fn(bool) -> DrainChoice| {
            [(false, "No"), (true, "Yes")]
                .map(move |(yes, label)| Chip::new(label, now == yes, set(choice(yes))))
        };
        let codes = [
            (Code::Unknown, "Not known"),
            (Code::Irc, "Residential (IRC)"),
            (Code::Ipc, "Plumbing (IPC)"),
            (Code::Upc, "Uniform (UPC)"),
        ];
        let mut rows = vec![
            Row::choice(
                "Code of your place",
                codes.map(|(code, label)| {
                    Chip::new(label, code == ask.code, set(DrainChoice::Code(code)))
                }),
            ),
            Row::choice("Drain", sizes(ask.size, DrainChoice::Size)),
        ];
        if ask.size >= Size::Three {
            rows.push(Row::choice(
                "The building office lets it fall 1/8 in a foot",
                yes_no(ask.eighth_approved, DrainChoice::Eighth),
            ));
        }
        rows.push(row(Field::Run, self.show(ask.run)));
        let fall = ask.fall.or(figure.map(|figure| figure.fall));
        rows.push(row(
            Field::Fall,
            self.or_usual(fall, ask.fall.is_none(), "least"),
        ));
        if ask.fall.is_some() {
            rows.push(Row::button(
                "Back to the least fall",
                set(DrainChoice::LeastFall),
            ));
        }
        rows.extend(self.through_rows(at, ask, figure));
        rows.push(Row::Heading("Trap arm".into()));
        rows.push(Row::choice(
            "Check a trap arm",
            yes_no(ask.arm.is_some(), DrainChoice::Arm),
        ));
        if let Some(arm) = ask.arm {
            rows.push(Row::choice(
                "Its size",
                sizes(arm.size, DrainChoice::ArmSize),
            ));
            rows.push(row(Field::Arm, self.show(arm.length)));
        }
        rows.push(Row::Heading("Fixtures on this drain".into()));
        for (n, count) in ask.fixtures.iter().enumerate() {
            rows.push(row(Field::Fixtures(n), count.to_string()));
        }
        rows.push(Row::Heading("Closet flange".into()));
        rows.push(Row::choice(
            "Set one before the wall is finished",
            yes_no(ask.flange.is_some(), DrainChoice::Flange),
        ));
        if let Some(flange) = ask.flange {
            rows.push(row(Field::RoughIn, self.show(flange.rough_in)));
            rows.push(row(Field::ToCome, self.show(flange.to_come)));
        }
        rows
    }

    fn through_rows(&self, at: usize, ask: &drain::Ask, figure: Option<&Figure>) -> Vec<Row> {
        let row = |slot: Field, label: &str, value: String| {
            Row::yours(label, value, Command::Pad(Slot::Drain(at, slot)))
        };
        let set = |choice| Command::Set(at, Choice::Drain(choice));
        let ways = [
            (0, "Open, or along a bay"),
            (1, "Joists"),
            (2, "Engineered joists"),
            (3, "Studs"),
        ];
        let mut rows = vec![Row::choice(
            "It passes through",
            ways.map(|(n, label)| {
                Chip::new(label, n == way(ask.through), set(DrainChoice::Through(n)))
            }),
        )];
        let above = match ask.through {
            Through::Open => "Centre of the pipe at the upper end, from any level",
            Through::Joists { .. } => {
                "Centre of the pipe at the upper end, above the joists' lower edge"
            }
            Through::Studs { .. } => "Centre of the pipe at the upper end, above the floor",
        };
        let start = ask.start.or(figure.map(|figure| figure.start));
        let highest = ask.start.is_none() && way(ask.through) == 1;
        let start = self.or_usual(start, highest, "highest");
        rows.push(row(Field::Start, above, start));
        if ask.start.is_some() && way(ask.through) == 1 {
            rows.push(Row::button(
                "As high as it may stand",
                set(DrainChoice::Highest),
            ));
        }
        let Some((first, spacing, depth)) = ask.through.spaced() else {
            return rows;
        };
        let studs = matches!(ask.through, Through::Studs { .. });
        let (one, each, deep) = if studs {
            (
                "Upper end to the centre of the first stud",
                "Stud to stud",
                "Stud, face to face",
            )
        } else {
            (
                "Upper end to the centre of the first joist",
                "Joist to joist",
                "Joist, edge to edge",
            )
        };
        rows.push(row(Field::First, one, self.show(first)));
        rows.push(row(Field::Spacing, each, self.show(spacing)));
        rows.push(row(Field::Depth, deep, self.show(depth)));
        let hole = ask
            .hole
            .unwrap_or_else(|| crate::site::hole_for(ask.size.of(&book::OUTSIDE.value)));
        let hole = self.or_usual(Some(hole), ask.hole.is_none(), "usual");
        rows.push(row(Field::Hole, "Hole", hole));
        if ask.hole.is_some() {
            rows.push(Row::button(
                "Back to the usual hole",
                set(DrainChoice::UsualHole),
            ));
        }
        if let Through::Studs {
            across,
            bearing,
            doubled,
            ..
        } = ask.through
        {
            let middle = across.unwrap_or_else(|| depth.half());
            let middle = self.or_usual(Some(middle), across.is_none(), "the middle");
            rows.push(row(Field::Across, asks(Field::Across), middle));
            rows.push(Row::choice(
                "The wall bears",
                [(true, "Yes, or not known"), (false, "No")].map(|(yes, label)| {
                    Chip::new(label, bearing == yes, set(DrainChoice::Bearing(yes)))
                }),
            ));
            rows.push(Row::choice(
                "Each stud is doubled",
                [(false, "No"), (true, "Yes, two at most")].map(|(yes, label)| {
                    Chip::new(label, doubled == yes, set(DrainChoice::Doubled(yes)))
                }),
            ));
        }
        rows
    }

    /// A figure, and by what it stands where it is not the person's own.
    fn or_usual(&self, length: Option<Length>, usual: bool, by: &str) -> String {
        let shown = self.show_or_ask(length);
        if usual {
            format!("{shown}, {by}")
        } else {
            shown
        }
    }

    /// What a field of a drain reads, and what stands there.
    pub(super) fn drain_stands(&self, task: usize, slot: Field) -> (Kind, String) {
        let units = self.job.units;
        let Some(Ask::Drain(ask)) = self.job.tasks.get(task).map(|task| &task.ask) else {
            return (Kind::Length, String::new());
        };
        if let Field::Fixtures(at) = slot {
            let count = ask.fixtures.get(at).map(u32::to_string);
            return (Kind::Number(""), count.unwrap_or_default());
        }
        let length = match slot {
            Field::Run => Some(ask.run),
            Field::Fall => ask.fall,
            Field::Start => ask.start,
            Field::Hole => ask.hole,
            Field::Arm => ask.arm.map(|arm| arm.length),
            Field::RoughIn => ask.flange.map(|flange| flange.rough_in),
            Field::ToCome => ask.flange.map(|flange| flange.to_come),
            Field::First | Field::Spacing | Field::Depth | Field::Across => {
                member_field(&mut ask.through.clone(), slot).map(|field| *field)
            }
            Field::Fixtures(_) => None,
        };
        let plain = length.map(|l| units.length(l, Rounding::Nearest, Figures::Plain));
        (Kind::Length, plain.unwrap_or_default())
    }
}

/// A figure of what the run passes through; a middle that was not said begins as said.
fn member_field(through: &mut Through, slot: Field) -> Option<&mut Length> {
    match (slot, through) {
        (Field::First, Through::Joists { first, .. } | Through::Studs { first, .. }) => Some(first),
        (Field::Spacing, Through::Joists { spacing, .. } | Through::Studs { spacing, .. }) => {
            Some(spacing)
        }
        (Field::Depth, Through::Joists { depth, .. } | Through::Studs { depth, .. }) => Some(depth),
        (Field::Across, Through::Studs { across, depth, .. }) => {
            Some(across.get_or_insert(depth.half()))
        }
        _ => None,
    }
}

fn ask_of(job: &mut Job, task: usize) -> Option<&mut drain::Ask> {
    match &mut job.tasks.get_mut(task)?.ask {
        Ask::Drain(ask) => Some(ask),
        _ => None,
    }
}

/// A length into a field of a drain.
pub(super) fn fill_length(job: &mut Job, task: usize, slot: Field, length: Length) {
    let Some(ask) = ask_of(job, task) else {
        return;
    };
    match slot {
        Field::Run => ask.run = length,
        Field::Fall => ask.fall = Some(length),
        Field::Start => ask.start = Some(length),
        Field::Hole => ask.hole = Some(length),
        Field::Arm => {
            if let Some(arm) = &mut ask.arm {
                arm.length = length;
            }
        }
        Field::RoughIn => {
            if let Some(flange) = &mut ask.flange {
                flange.rough_in = length;
            }
        }
        Field::ToCome => {
            if let Some(flange) = &mut ask.flange {
                flange.to_come = length;
            }
        }
        Field::First | Field::Spacing | Field::Depth | Field::Across => {
            if let Some(field) = member_field(&mut ask.through, slot) {
                *field = length;
            }
        }
        Field::Fixtures(_) => {}
    }
}

/// A count into a field of a drain.
pub(super) fn fill_count(job: &mut Job, task: usize, slot: Field, count: u32) {
    if let (Some(ask), Field::Fixtures(at)) = (ask_of(job, task), slot)
        && let Some(field) = ask.fixtures.get_mut(at)
    {
        *field = count;
    }
}

/// A choice of a drain.
pub(super) fn choose(ask: &mut drain::Ask, choice: DrainChoice) {
    match choice {
        DrainChoice::Code(code) => ask.code = code,
        DrainChoice::Eighth(yes) => ask.eighth_approved = yes,
        DrainChoice::Size(size) => {
            ask.size = size;
            // A hole for another pipe is no longer one for this.
            ask.hole = None;
        }
        DrainChoice::LeastFall => ask.fall = None,
        DrainChoice::Highest => ask.start = None,
        DrainChoice::UsualHole => ask.hole = None,
        DrainChoice::Through(n) => pass_through(ask, n),
        DrainChoice::Bearing(yes) => {
            if let Through::Studs { bearing, .. } = &mut ask.through {
                *bearing = yes;
            }
        }
        DrainChoice::Doubled(yes) => {
            if let Through::Studs { doubled, .. } = &mut ask.through {
                *doubled = yes;
            }
        }
        DrainChoice::Arm(on) => {
            ask.arm = on.then_some(Arm {
                size: ask.size.min(Size::Two),
                length: Length::feet(3),
            });
        }
        DrainChoice::ArmSize(size) => {
            if let Some(arm) = &mut ask.arm {
                arm.size = size;
            }
        }
        DrainChoice::Flange(on) => {
            ask.flange = on.then_some(Flange {
                rough_in: book::FLANGE.value,
                to_come: Length::in_64(0, 32),
            });
        }
    }
}

/// What the run passes through, keeping what was measured of another.
fn pass_through(ask: &mut drain::Ask, n: u8) {
    let usual = (Length::inches(8), Length::inches(16), Length::ZERO);
    let (first, spacing, _) = ask.through.spaced().unwrap_or(usual);
    let joist = match ask.through {
        Through::Joists { depth, .. } => depth,
        _ => Length::in_64(9, 16),
    };
    if way(ask.through) == n {
        return;
    }
    // A height above joists is none above a floor.
    if n == 3 || n == 0 || way(ask.through) == 3 {
        ask.start = None;
    }
    ask.through = match n {
        0 => Through::Open,
        3 => Through::Studs {
            first,
            spacing,
            depth: Length::in_64(3, 32),
            across: None,
            bearing: true,
            doubled: false,
        },
        _ => Through::Joists {
            first,
            spacing,
            depth: joist,
            engineered: n == 2,
        },
    };
}
