//! The rows in which a run of pipe is asked for: its material, its legs, the leg in hand, its fittings, its end.

use super::pipe_choices::fitting_at;
use super::pipe_fittings::{fitting_choices, kind_chips};
use super::{App, Chip, Choice, Command, PipeChoice, PipeSlot, Row, Slot, pipe_words};
use crate::handbook::pipe::{Pipe, Turn};
use crate::measure::{Amount, Figures};
use crate::trades::pipe::{Ask, By, Direction, Mark, Side, Way};

/// With a capital to begin with.
pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(char::to_uppercase);
    first.map_or_else(String::new, |first| first.chain(letters).collect())
}

pub(super) fn set(at: usize, choice: PipeChoice) -> Command {
    Command::Set(at, Choice::Pipe(choice))
}

pub(super) fn pad(at: usize, slot: PipeSlot) -> Command {
    Command::Pad(Slot::Pipe(at, slot))
}

impl App {
    /// What is asked beside its legs.
    pub(super) fn pipe_begins(&self, at: usize, ask: &Ask) -> Vec<Row> {
        let mut rows = vec![Row::yours(
            "What it is called",
            if ask.name.is_empty() {
                "no name yet"
            } else {
                &ask.name
            },
            pad(at, PipeSlot::Name),
        )];
        rows.push(Row::choice(
            "Material",
            Pipe::ALL.map(|pipe| {
                Chip::new(
                    capital(pipe.name()),
                    pipe == ask.pipe,
                    set(at, PipeChoice::Pipe(pipe)),
                )
            }),
        ));
        rows.push(Row::choice(
            "Size at the start",
            ask.pipe.sizes().into_iter().map(|size| {
                Chip::new(
                    size.name(),
                    size == ask.size,
                    set(at, PipeChoice::Size(size)),
                )
            }),
        ));
        rows.extend(self.start_of_run(at, ask));
        rows
    }

    /// Its fittings, where it has to end, and what it is cut and joined with.
    pub(super) fn pipe_work(&self, at: usize, ask: &Ask) -> Vec<Row> {
        let mut rows = self.fitting_rows(at, ask);
        rows.extend(self.end_rows(at, ask));
        rows.extend(self.shop_rows(at, ask));
        rows
    }

    /// The legs, and the way of the next one.
    pub(super) fn leg_rows(&self, at: usize, ask: &Ask) -> Vec<Row> {
        let mut rows = vec![Row::Heading("The run".into())];
        rows.extend(self.leg_lengths(at, ask));
        rows.push(Row::choice(
            if ask.legs.is_empty() {
                "First leg goes"
            } else {
                "Next leg goes"
            },
            Direction::ALL.map(|way| {
                Chip::new(
                    pipe_words::direction(way),
                    false,
                    set(at, PipeChoice::Add(way)),
                )
            }),
        ));
        if let Some(leg) = ask.legs.last() {
            let (Way::Along(along) | Way::Offset { along, .. }) = leg.way;
            rows.push(Row::choice(
                "Or an offset, over to",
                Direction::ALL
                    .into_iter()
                    .filter(|to| to.across(along))
                    .map(|to| {
                        Chip::new(
                            pipe_words::direction(to),
                            false,
                            set(at, PipeChoice::AddOffset(to)),
                        )
                    }),
            ));
        }
        rows
    }

    /// Where the run starts.
    fn start_of_run(&self, at: usize, ask: &Ask) -> Vec<Row> {
        let mut rows = vec![Row::choice("Starts at", kind_chips(at, 0, ask))];
        rows.extend(fitting_choices(at, 0, ask));
        rows
    }

    /// What the tape said of each leg, in the order of the run.
    fn leg_lengths(&self, at: usize, ask: &Ask) -> Vec<Row> {
        let mut rows = Vec::new();
        for (leg, one) in ask.legs.iter().enumerate() {
            let label = format!("Leg {}, {}", leg + 1, pipe_words::way(one.way));
            let detail = pipe_words::by(one.by);
            let (value, slot) = match (one.by, one.way) {
                (By::Tape { length, .. }, _) if length.is_positive() => {
                    (self.show(length), Some(PipeSlot::Length(leg)))
                }
                (By::Tape { .. }, _) => ("?".to_owned(), Some(PipeSlot::Length(leg))),
                (By::Set, Way::Offset { set, .. }) => (self.show(set), Some(PipeSlot::Set(leg))),
                _ => (String::new(), None),
            };
            rows.push(Row::Figure {
                label,
                detail,
                value,
                command: slot.map(|slot| pad(at, slot)),
            });
            if let (
                By::Set,
                Way::Offset {
                    over: Some((_, roll)),
                    ..
                },
            ) = (one.by, one.way)
            {
                rows.push(Row::yours(
                    format!("Leg {}, rolled over", leg + 1),
                    self.show(roll),
                    pad(at, PipeSlot::Roll(leg)),
                ));
            }
        }
        rows
    }

    /// The leg that is chosen: its way, how it is measured, what is at its end.
    pub(super) fn leg_in_hand(&self, at: usize, ask: &Ask) -> Vec<Row> {
        let leg = self.leg.min(ask.legs.len().saturating_sub(1));
        let Some(one) = ask.legs.get(leg) else {
            return Vec::new();
        };
        let name = format!("Leg {}", leg + 1);
        let mut rows = vec![Row::Heading(name.clone())];
        if ask.legs.len() > 1 {
            rows.push(Row::choice(
                "Change leg",
                (0..ask.legs.len())
                    .map(|of| Chip::new((of + 1).to_string(), of == leg, Command::Leg(of))),
            ));
        }
        rows.extend(way_rows(at, leg, one.way));
        rows.extend(measured_rows(at, leg, ask));
        if let By::Tape { from, to, .. } = one.by {
            for (side, mark) in [(Side::Before, from), (Side::After, to)] {
                if let Mark::Wall(beyond) = mark {
                    rows.push(Row::yours(
                        format!("{name}, beyond the wall"),
                        self.show(beyond),
                        pad(at, PipeSlot::Beyond(leg, side)),
                    ));
                }
            }
        }
        rows.push(Row::choice(
            format!("{name} ends at"),
            kind_chips(at, leg + 1, ask),
        ));
        rows.extend(fitting_choices(at, leg + 1, ask));
        let size = ask.size_of(leg);
        rows.push(Row::choice(
            format!("{name} is"),
            ask.pipe
                .sizes()
                .into_iter()
                .map(|of| Chip::new(of.name(), of == size, set(at, PipeChoice::LegSize(leg, of)))),
        ));
        rows.push(Row::choice(
            "Couplings within it",
            (0..4).map(|count| {
                Chip::new(
                    count.to_string(),
                    count == one.couplings,
                    set(at, PipeChoice::Couplings(leg, count)),
                )
            }),
        ));
        rows.push(Row::button(
            format!("Remove leg {}", leg + 1),
            set(at, PipeChoice::Remove(leg)),
        ));
        rows
    }

    /// Where the run has to end, and lines beside it.
    fn end_rows(&self, at: usize, ask: &Ask) -> Vec<Row> {
        let mut rows = vec![Row::Heading("Where it has to end".into())];
        rows.push(Row::choice(
            "Its end is",
            [(false, "Wherever it comes"), (true, "At a place")].map(|(yes, word)| {
                Chip::new(
                    word,
                    ask.closes.is_some() == yes,
                    set(at, PipeChoice::Closes(yes)),
                )
            }),
        ));
        if let Some(place) = ask.closes {
            let words = [
                "To the right of its start",
                "Into the wall",
                "Above its start",
            ];
            for (axis, (word, length)) in words.into_iter().zip(place.axes()).enumerate() {
                rows.push(Row::yours(
                    word,
                    self.show(length),
                    pad(at, PipeSlot::Closes(axis)),
                ));
            }
        }
        let Some(first) = ask.legs.first() else {
            return rows;
        };
        let (Way::Along(along) | Way::Offset { along, .. }) = first.way;
        let beside = Direction::ALL.into_iter().filter(|to| to.across(along));
        let now = ask.lines.map(|lines| lines.to);
        let mut chips = vec![Chip::new(
            "None",
            now.is_none(),
            set(at, PipeChoice::Lines(None)),
        )];
        chips.extend(beside.map(|to| {
            Chip::new(
                pipe_words::direction(to),
                now == Some(to),
                set(at, PipeChoice::Lines(Some(to))),
            )
        }));
        rows.push(Row::choice("Lines beside it, to its", chips));
        if let Some(lines) = ask.lines {
            rows.push(Row::yours(
                "Lines in all",
                lines.count.to_string(),
                pad(at, PipeSlot::Lines),
            ));
            rows.push(Row::yours(
                "Apart",
                self.show(lines.apart),
                pad(at, PipeSlot::Apart),
            ));
        }
        rows
    }

    /// Tools and weather.
    fn shop_rows(&self, at: usize, ask: &Ask) -> Vec<Row> {
        let mut rows = vec![Row::Heading("Tools, sticks and air".into())];
        rows.push(Row::yours(
            "A cut may be off by",
            self.show(ask.tape),
            pad(at, PipeSlot::Tape),
        ));
        rows.push(Row::yours(
            "A stick is",
            self.show(ask.stick),
            pad(at, PipeSlot::Stick),
        ));
        rows.push(Row::yours(
            "Your cutter takes at most",
            ask.jaw
                .map_or_else(|| "not said".to_owned(), |jaw| self.show(jaw)),
            pad(at, PipeSlot::Jaw),
        ));
        if ask.pipe.family().cemented() {
            let air = Amount::Temperature(crate::measure::quantity::fahrenheit(ask.air));
            rows.push(Row::yours(
                "Air where joints are made",
                self.job.units.amount(&air, Figures::Set),
                pad(at, PipeSlot::Air),
            ));
            rows.push(Row::choice(
                "The air is",
                [(false, "Dry"), (true, "Damp")].map(|(damp, word)| {
                    Chip::new(word, ask.damp == damp, set(at, PipeChoice::Damp(damp)))
                }),
            ));
        }
        let metric = self.job.units.is_metric();
        let warms = match (ask.warms, metric) {
            (None, _) => "not said".to_owned(),
            (Some(warms), true) => format!("{:.0} °C", warms / 1.8),
            (Some(warms), false) => format!("{warms:.0} °F"),
        };
        rows.push(Row::yours(
            "Warmer in use by",
            warms,
            pad(at, PipeSlot::Warms),
        ));
        rows.push(Row::choice(
            "The strip marks",
            [
                (None, "A square cut"),
                (Some(Turn::Sixteenth), "A mitre of 22 1/2°"),
                (Some(Turn::Eighth), "A mitre of 45°"),
                (Some(Turn::Quarter), "A mitre of 90°"),
            ]
            .map(|(turn, word)| {
                let angle = turn.map_or(crate::measure::Angle::ZERO, Turn::angle);
                Chip::new(word, ask.mitre == angle, set(at, PipeChoice::Mitre(turn)))
            }),
        ));
        rows
    }
}

/// Which way a leg goes.
fn way_rows(at: usize, leg: usize, way: Way) -> Vec<Row> {
    let now = match way {
        Way::Along(to) => Some(to),
        Way::Offset { .. } => None,
    };
    let mut rows = vec![Row::choice(
        "Goes",
        Direction::ALL.map(|to| {
            Chip::new(
                pipe_words::direction(to),
                now == Some(to),
                set(at, PipeChoice::Way(leg, to)),
            )
        }),
    )];
    let Way::Offset {
        along,
        to,
        angle,
        over,
        ..
    } = way
    else {
        return rows;
    };
    rows.push(Row::choice(
        "Offset with fittings of",
        Turn::ALL.map(|turn| {
            Chip::new(
                turn.name(),
                turn.angle() == angle,
                set(at, PipeChoice::Angle(leg, turn)),
            )
        }),
    ));
    rows.push(Row::choice(
        "Over to",
        Direction::ALL
            .into_iter()
            .filter(|way| way.across(along))
            .map(|way| {
                Chip::new(
                    pipe_words::direction(way),
                    way == to,
                    set(at, PipeChoice::Aside(leg, way)),
                )
            }),
    ));
    let rolls = over.map(|(over, _)| over);
    let mut chips = vec![Chip::new(
        "No",
        rolls.is_none(),
        set(at, PipeChoice::Over(leg, None)),
    )];
    chips.extend(
        Direction::ALL
            .into_iter()
            .filter(|way| way.across(along) && way.across(to))
            .map(|way| {
                Chip::new(
                    pipe_words::direction(way),
                    rolls == Some(way),
                    set(at, PipeChoice::Over(leg, Some(way))),
                )
            }),
    );
    rows.push(Row::choice("Rolling, also over to", chips));
    rows
}

/// How a leg is measured.
fn measured_rows(at: usize, leg: usize, ask: &Ask) -> Vec<Row> {
    let one = &ask.legs[leg];
    let kind = |by: By| std::mem::discriminant(&by);
    let mut ways = vec![(
        By::Tape {
            length: crate::measure::Length::ZERO,
            from: Mark::End,
            to: Mark::End,
        },
        "The tape",
    )];
    if matches!(one.way, Way::Offset { .. }) {
        ways.push((By::Set, "Its set"));
    }
    ways.push((By::Fitted, "As short as its fittings allow"));
    if ask.closes.is_some() {
        ways.push((By::Rest, "What is left to the end"));
    }
    let mut rows = vec![Row::choice(
        "Measured by",
        ways.into_iter().map(|(by, word)| {
            Chip::new(
                word,
                kind(by) == kind(one.by),
                set(at, PipeChoice::By(leg, by)),
            )
        }),
    )];
    if let By::Tape { from, to, .. } = one.by {
        for (side, now, node, label) in [
            (Side::Before, from, leg, "Tape held to"),
            (Side::After, to, leg + 1, "Read at"),
        ] {
            let marks: &[Mark] = if fitting_at(ask, node).is_some() {
                &[Mark::Centre, Mark::Face, Mark::Shoulder, Mark::End]
            } else {
                &[Mark::End, Mark::Wall(crate::measure::Length::ZERO)]
            };
            rows.push(Row::choice(
                label,
                marks.iter().map(|mark| {
                    let same = std::mem::discriminant(mark) == std::mem::discriminant(&now);
                    Chip::new(
                        pipe_words::mark(*mark),
                        same,
                        set(at, PipeChoice::Held(leg, side, *mark)),
                    )
                }),
            ));
        }
    }
    rows
}
