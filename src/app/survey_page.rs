//! The survey of a room: what is to be measured next, one question at a time, and all that was measured.

use super::rooms_view::{RoomChoice, Told};
use super::{App, Chip, Command, Here, Row, Screen, Slot, Tone, survey_words as words, view::Big};
use crate::drawing::{PlanLook, PlanTag, plan_seen};
use crate::measure::{Length, Units};
use crate::site::{self, Asked, Passed, Room, What};
use crate::takeoff::Job;

/// What a slot of a room measures.
pub(super) fn what_of(slot: &Slot) -> Option<(usize, What)> {
    use site::Size;
    Some(match slot {
        Slot::WallLength(room, at) => (*room, What::Wall(*at)),
        Slot::Ceiling(room) => (*room, What::Ceiling),
        Slot::WallHeight(room, at) => (*room, What::WallHeight(*at)),
        Slot::OpeningFromLeft(room, at) => (*room, What::Opening(*at, Size::FromLeft)),
        Slot::OpeningWidth(room, at) => (*room, What::Opening(*at, Size::Width)),
        Slot::OpeningHeight(room, at) => (*room, What::Opening(*at, Size::Height)),
        Slot::OpeningSill(room, at) => (*room, What::Opening(*at, Size::Up)),
        Slot::Measure(room, what) => (*room, *what),
        _ => return None,
    })
}

/// A length into what a slot of a room measures.
pub(super) fn fill(job: &mut Job, slot: &Slot, length: Length) {
    if let Slot::PlusMinus(room, what) = slot {
        if let Some(room) = job.rooms.get_mut(*room) {
            let read = room.measured(*what);
            room.measure(*what, read, length.is_positive().then_some(length));
        }
    } else if let Some((room, what)) = what_of(slot)
        && let Some(room) = job.rooms.get_mut(room)
    {
        room.measure_here(what, Some(length), None);
    }
}

impl App {
    /// The survey of one room.
    pub(super) fn survey_page(&self, at: usize) -> Screen {
        let Some(room) = self.job.rooms.get(at) else {
            return self.rooms_page();
        };
        let units = self.job.units;
        let much = self.rooms_view.much;
        let asked = self.asked(room);
        let look = PlanLook {
            diagonals: much >= Asked::Square,
            asked: asked.first().copied(),
            ..PlanLook::default()
        };
        let picture = plan_seen(room, units, &look).map_tags(|tag| plan_command(at, room, tag));
        // What contradicts comes before the next question, what agrees after it.
        let agreement = self.agreement_rows(at, room);
        let bad = |row: &Row| {
            matches!(
                row,
                Row::Note {
                    tone: Tone::Stop | Tone::Caution,
                    ..
                }
            )
        };
        let (mut rows, good): (Vec<Row>, Vec<Row>) = agreement.into_iter().partition(bad);
        rows.extend(self.question_rows(at, room, asked.first().copied()));
        rows.extend(self.last_rows(at, room));
        rows.extend(self.short_row(at, room));
        rows.push(Row::choice(
            "Measure",
            [
                ("Walls and openings", Asked::Plan),
                ("And across", Asked::Square),
                ("And plumb, flat, level", Asked::Everything),
            ]
            .map(|(label, choice)| {
                let command = Command::Of(at, RoomChoice::Much(choice));
                Chip::new(label, much == choice, command)
            }),
        ));
        rows.extend(good);
        let all = room.whats();
        let listed = all
            .iter()
            .filter(|what| asked.contains(what) || is_said(room, **what));
        let listed: Vec<What> = listed.copied().collect();
        rows.push(Row::Heading("Round the room, to the right".into()));
        rows.extend(
            listed
                .iter()
                .map(|what| measured_row(at, room, *what, units)),
        );
        rows.push(Row::choice(
            "You read your tape to",
            [(16, "1/16″"), (8, "1/8″"), (4, "1/4″")].map(|(marks, label)| {
                let close = Length::inches(1).divided(marks);
                let command = Command::Of(at, RoomChoice::ReadsTo(close));
                Chip::new(label, room.survey.reads_to == close, command)
            }),
        ));
        let done = listed.len() - asked.len();
        let mut strip = Vec::new();
        if let Some(next) = asked.first() {
            strip.push(Big {
                value: words::short(room, *next),
                label: "next".into(),
            });
        }
        strip.push(Big {
            value: format!("{done} of {}", listed.len()),
            label: match room.carried().count() {
                0 => "measured".into(),
                carried => format!("measured, {carried} of them carried over"),
            },
        });
        Screen {
            crumb: room.name.clone(),
            title: "Survey".into(),
            back: Some(Here::Room(at)),
            picture: Some(picture),
            rows,
            strip,
            main: asked
                .first()
                .map(|what| Chip::new("Measure it", false, Command::Pad(Slot::Measure(at, *what)))),
            ..Screen::default()
        }
    }

    /// What is asked: in a room that was carried over, what usually differs, or everything.
    fn asked(&self, room: &Room) -> Vec<What> {
        let asked = site::to_ask(room, self.rooms_view.much);
        if room.carried().next().is_none() || !self.rooms_view.short {
            return asked;
        }
        // A diagonal that went with a wall is asked again as well.
        let differs = room.usually_differs();
        let short = |what: &What| differs.contains(what) || !room.mark(*what).carried;
        let mut short: Vec<What> = asked.into_iter().filter(short).collect();
        let open =
            |what: &What| room.measured(*what).is_none() && room.mark(*what).passed.is_none();
        let across: Vec<What> = differs
            .into_iter()
            .filter(|what| open(what) && !short.contains(what))
            .collect();
        short.extend(across);
        short
    }

    /// A short survey or all of it, where a room was carried over.
    fn short_row(&self, at: usize, room: &Room) -> Option<Row> {
        let carried = room.carried().count();
        let short = room
            .usually_differs()
            .into_iter()
            .filter(|what| room.mark(*what).carried)
            .count();
        let chip = |label: String, on| {
            let command = Command::Of(at, RoomChoice::Short(on));
            Chip::new(label, self.rooms_view.short == on, command)
        };
        (carried > 0).then(|| {
            let mut chips = vec![
                chip(format!("Short survey, {short} to confirm"), true),
                chip(format!("All {carried}"), false),
            ];
            if short == 0 {
                let all = Command::Of(at, RoomChoice::ConfirmAll);
                chips.push(Chip::new("The rest is alike", false, all));
            }
            Row::choice("Carried over from another room", chips)
        })
    }

    /// The one question, and what can be said instead of a figure.
    fn question_rows(&self, at: usize, room: &Room, next: Option<What>) -> Vec<Row> {
        let Some(what) = next else {
            let carried = room.carried().count();
            return vec![Row::Note {
                tone: if carried > 0 { Tone::Note } else { Tone::Good },
                text: if carried > 0 {
                    format!(
                        "What usually differs is measured; {carried} figures are carried over and not confirmed."
                    )
                } else {
                    "All that was asked is measured.".into()
                },
                detail: String::new(),
                mend: None,
            }];
        };
        let of = |choice| Command::Of(at, choice);
        let carried = room.mark(what).carried;
        let mut chips = Vec::new();
        if carried {
            let label = match room.measured(what) {
                Some(length) => format!("Still {}", self.show(length)),
                None => "Here as well".into(),
            };
            chips.push(Chip::new(label, false, of(RoomChoice::Confirm(what))));
        }
        if !matches!(what, What::Hidden(_)) {
            let measure = Command::Pad(Slot::Measure(at, what));
            chips.push(Chip::new("Type it", false, measure));
        }
        for (label, passed) in [("Skip", Passed::Skipped), ("Not there", Passed::NotThere)] {
            chips.push(Chip::new(
                label,
                false,
                of(RoomChoice::Pass(what, Some(passed))),
            ));
        }
        vec![
            Row::Heading(words::asks(room, what)),
            Row::choice(if carried { "Carried over" } else { "Answer" }, chips),
        ]
    }

    /// Whether what was typed last was read or guessed.
    fn last_rows(&self, at: usize, room: &Room) -> Vec<Row> {
        let last = self.rooms_view.last.filter(|(in_room, _)| *in_room == at);
        let Some(((_, what), length)) = last.and_then(|last| Some((last, room.measured(last.1)?)))
        else {
            return Vec::new();
        };
        let stands = room.mark(what).estimate;
        let metric = self.job.units.is_metric();
        let steps = if metric {
            [5, 10, 25].map(Length::mm)
        } else {
            [16, 32, 64].map(|n| Length::in_64(0, n))
        };
        let mut chips = vec![Chip::new(
            "as read",
            stands.is_none(),
            Command::Of(at, RoomChoice::Estimate(what, None)),
        )];
        chips.extend(steps.map(|step| {
            let command = Command::Of(at, RoomChoice::Estimate(what, Some(step)));
            Chip::new(
                format!("± {}", self.show(step)),
                stands == Some(step),
                command,
            )
        }));
        let own = Command::Pad(Slot::PlusMinus(at, what));
        chips.push(Chip::new("own ±", false, own));
        vec![Row::choice(
            format!("{}, {}, is", words::name(room, what), self.show(length)),
            chips,
        )]
    }

    /// What the measurements say of each other.
    pub(super) fn agreement_rows(&self, at: usize, room: &Room) -> Vec<Row> {
        let units = self.job.units;
        let found = site::suspicion(room, units);
        let if_square = found.as_ref().is_some_and(|found| found.if_square);
        let mut rows: Vec<Row> = Vec::new();
        let found = found.map_or_else(Vec::new, |found| found.found);
        for (place, misread) in found.iter().take(2).enumerate() {
            let says = words::misread(room, misread, if_square, units);
            rows.push(Row::Note {
                tone: if place == 0 && !if_square {
                    Tone::Stop
                } else {
                    Tone::Caution
                },
                text: if place == 0 {
                    says
                } else {
                    format!("Or: {says}")
                },
                detail: if if_square {
                    "The corners would be further out of square than rooms are built."
                } else {
                    "The measurements contradict each other by more than a tape may be off."
                }
                .into(),
                mend: Some(Chip::new(
                    "Measure it again",
                    false,
                    Command::Pad(Slot::Measure(at, misread.what)),
                )),
            });
        }
        if let (true, Some(survey)) = (rows.is_empty(), site::surveyed(room)) {
            let text = if survey.spare == 0 {
                "The diagonals settle the corners. One more across would check them.".to_owned()
            } else {
                let worst = survey
                    .checks
                    .iter()
                    .map(|check| (check.comes_out - check.read).abs());
                let worst = self.show(worst.max().unwrap_or_default());
                if worst == self.show(Length::ZERO) {
                    "The measurements agree: none is off by as much as the tape is read to.".into()
                } else {
                    format!("The measurements agree: none is off by more than {worst}.")
                }
            };
            rows.push(Row::Note {
                tone: if survey.spare == 0 {
                    Tone::Note
                } else {
                    Tone::Good
                },
                text,
                detail: String::new(),
                mend: Some(Chip::new(
                    "See how square it is",
                    false,
                    Command::Go(Here::Square(at)),
                )),
            });
        }
        rows
    }

    /// After a wall or a diagonal was taken: whether it makes the survey contradict itself, to be said under the next
    /// question. The same figure typed once more is not asked about again.
    pub(super) fn tell_at_once(&mut self, (at, what): (usize, What), again: bool) {
        if !matches!(what, What::Wall(_) | What::Diagonal(..)) {
            return;
        }
        self.rooms_view.told = None;
        let (Some(room), units) = (self.job.rooms.get(at), self.job.units) else {
            return;
        };
        let told = |what, text| Some(Told { at, what, text });
        let told = match site::suspicion(room, units) {
            Some(found) => found.of(what).and_then(|first| {
                let here = (what, found.if_square);
                let text = words::misread_here(room, first, here, units);
                told(first.what, text).filter(|told| !(again && told.what == what))
            }),
            None => site::shape(room)
                .err()
                .and_then(|problem| told(what, super::words::room_problem(&problem, room, units))),
        };
        self.rooms_view.told = told;
    }

    /// What is said under the question on the pad, and how that is measured again.
    #[must_use]
    pub fn told(&self) -> Option<(&str, Command)> {
        let told = self.rooms_view.told.as_ref()?;
        self.pad.as_ref()?;
        let again = Command::Pad(Slot::Measure(told.at, told.what));
        Some((&told.text, again))
    }

    /// A key on the survey without a pad: the pad opens on the next question, as a laser meter wants it.
    pub fn type_ahead(&mut self, key: &str) -> bool {
        let (Here::Survey(at), true) = (
            &self.here,
            self.pad.is_none() && key.len() == 1 && key.chars().all(|c| c.is_ascii_digit()),
        ) else {
            return false;
        };
        let at = *at;
        let Some(room) = self.job.rooms.get(at) else {
            return false;
        };
        let asked = self.asked(room);
        let next = asked
            .into_iter()
            .find(|what| !matches!(what, What::Hidden(_)));
        let Some(what) = next else { return false };
        self.send(Command::Pad(Slot::Measure(at, what)));
        self.pad.as_mut().is_some_and(|pad| pad.key(key))
    }
}

/// What a tap on a plan measures.
pub(super) fn plan_command(at: usize, room: &Room, tag: PlanTag) -> Command {
    let measure = |what| Command::Pad(Slot::Measure(at, what));
    match tag {
        PlanTag::Wall(wall) | PlanTag::WallFace(wall) => measure(What::Wall(wall)),
        PlanTag::Ceiling => measure(What::Ceiling),
        PlanTag::Diagonal(a, b) => measure(What::diagonal(a, b)),
        PlanTag::Opening(opening) => Command::Go(Here::Wall(
            at,
            room.openings.get(opening).map_or(0, |o| o.wall),
        )),
        PlanTag::Fixed(point) => Command::Go(Here::Wall(
            at,
            room.fixed.get(point).map_or(0, |point| point.on.wall()),
        )),
        PlanTag::Fixture(fixture) => Command::Go(Here::Wall(
            at,
            room.fixtures.get(fixture).map_or(0, |fixture| fixture.wall),
        )),
        PlanTag::WallBody(_) | PlanTag::Corner(_) => Command::Of(at, RoomChoice::Choose(Some(tag))),
    }
}

/// Whether a room has something to say of a measurement.
fn is_said(room: &Room, what: What) -> bool {
    room.measured(what).is_some() || room.survey.marks.contains_key(&what)
}

/// One measurement: its figure and how it stands.
fn measured_row(at: usize, room: &Room, what: What, units: Units) -> Row {
    let mark = room.mark(what);
    let set = |length: Length| {
        units.length(
            length,
            crate::measure::Rounding::Nearest,
            crate::measure::Figures::Set,
        )
    };
    let mut detail = Vec::new();
    if mark.carried {
        detail.push("carried over".to_owned());
    }
    if let Some(more_or_less) = mark.estimate {
        detail.push(format!("an estimate, ± {}", set(more_or_less)));
    }
    if let Some(before) = mark.earlier.last() {
        detail.push(format!("before, {}", set(*before)));
    }
    let value = match (room.measured(what), mark.passed) {
        (Some(length), _) => set(length),
        (None, Some(Passed::Skipped)) => "skipped".into(),
        (None, Some(Passed::NotThere)) => "not there".into(),
        (None, None) if matches!(what, What::Hidden(_)) => "here?".into(),
        (None, None) => "?".into(),
    };
    Row::Figure {
        label: words::name(room, what),
        detail: detail.join(", "),
        value,
        command: Some(if matches!(what, What::Hidden(_)) {
            Command::Of(at, RoomChoice::Confirm(what))
        } else {
            Command::Pad(Slot::Measure(at, what))
        }),
    }
}
