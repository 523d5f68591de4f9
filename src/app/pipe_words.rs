//! Runs of pipe in words.

use super::{Chip, Choice, Command, JoistSlot, PipeChoice, PipeSlot, Slot};
use crate::handbook::cutting::{LENGTHS, LENGTHS_METRIC};
use crate::handbook::pipe::{Family, Kind, Size};
use crate::measure::{Figures, Length, Rounding, Units};
use crate::trades::pipe::{
    Ask, By, Direction, Field, Mark, Place, Port, Problem, Shape, Side, Way,
};

pub(super) fn direction(way: Direction) -> &'static str {
    match way {
        Direction::Left => "Left",
        Direction::Right => "Right",
        Direction::Forward => "Into the wall",
        Direction::Back => "Towards you",
        Direction::Up => "Up",
        Direction::Down => "Down",
    }
}

/// The way of a leg, small: "up", "offset to the right, 45°".
pub(super) fn way(way: Way) -> String {
    match way {
        Way::Along(to) => direction(to).to_lowercase(),
        Way::Offset {
            along,
            to,
            angle,
            over,
            ..
        } => {
            let rolls = over.map_or(String::new(), |(over, _)| {
                format!(" and {}", direction(over).to_lowercase())
            });
            format!(
                "{} and over {}{rolls}, {}",
                direction(along).to_lowercase(),
                direction(to).to_lowercase(),
                angle.show(Figures::Set)
            )
        }
    }
}

pub(super) fn mark(mark: Mark) -> &'static str {
    match mark {
        Mark::Centre => "Centre",
        Mark::Face => "Face of the hub",
        Mark::Shoulder => "Shoulder",
        Mark::End => "End of the pipe",
        Mark::Wall(_) => "Wall",
    }
}

/// How a leg is measured, small.
pub(super) fn by(by: By) -> String {
    match by {
        By::Tape { from, to, .. } => {
            format!(
                "{} to {}",
                mark(from).to_lowercase(),
                mark(to).to_lowercase()
            )
        }
        By::Set => "by its set".into(),
        By::Fitted => "as short as its fittings allow".into(),
        By::Rest => "what is left to the end".into(),
    }
}

/// A fitting's opening: "1/2 in copper 90° elbow", "2 in PVC drain sanitary tee, branch".
pub(super) fn shape(shape: &Shape) -> String {
    let port = match shape.port {
        Port::Run => "",
        Port::Branch => ", its branch",
        Port::Spigot => ", its street end",
    };
    let size = if shape.size == shape.other {
        shape.size.name().to_owned()
    } else {
        format!("{} (to {})", shape.size.name(), shape.other.name())
    };
    format!(
        "{size} {} {}{port}",
        shape.family.name(),
        shape.kind.called(shape.turn, shape.port == Port::Spigot)
    )
}

/// A place off another, in words: "1/4″ too far right and 1″ too low".
fn off(off: Place, units: Units) -> String {
    let words = [
        ("too far right", "too far left"),
        ("too far into the wall", "too far towards you"),
        ("too high", "too low"),
    ];
    axes(off, words, " and ", units)
}

/// A place from the start, in words: "6″ right, 3′ up".
pub(super) fn place(place: Place, units: Units) -> String {
    axes(
        place,
        [("right", "left"), ("in", "out"), ("up", "down")],
        ", ",
        units,
    )
}

/// How far along each axis that it is off, with a word for more and for less.
fn axes(place: Place, words: [(&str, &str); 3], between: &str, units: Units) -> String {
    let parts: Vec<String> = place
        .axes()
        .into_iter()
        .zip(words)
        .filter(|(length, _)| *length != Length::ZERO)
        .map(|(length, (more, less))| {
            let word = if length.is_positive() { more } else { less };
            format!("{} {word}", show(length.abs(), units))
        })
        .collect();
    parts.join(between)
}

fn show(length: Length, units: Units) -> String {
    units.length(length, Rounding::Nearest, Figures::Set)
}

fn field(field: Field) -> String {
    match field {
        Field::Length(leg) => format!("The length of leg {}", leg + 1),
        Field::Beyond(leg) => format!("How far leg {} goes on beyond the wall", leg + 1),
        Field::Set(leg) => format!("The set of leg {}", leg + 1),
        Field::Roll(leg) => format!("The roll of leg {}", leg + 1),
        Field::Angle(leg) => format!("The angle of leg {}", leg + 1),
        Field::Couplings(leg) => format!("The couplings in leg {}", leg + 1),
        Field::Face(_) => "Centre to face of a fitting".into(),
        Field::Depth(_) => "The depth of a hub".into(),
        Field::Tape => "How far off a cut may be".into(),
        Field::Jaw => "The cutter's jaw".into(),
        Field::Stick => "The length of a stick".into(),
        Field::Air => "The air".into(),
        Field::Warms => "The warming".into(),
        Field::Apart => "How far lines are apart".into(),
        Field::Lines => "The number of lines".into(),
        Field::Mitre => "The turn of the mitre".into(),
        Field::Legs => "The number of legs".into(),
    }
}

/// Why a run has no figure: the leg, and what would be right.
pub(super) fn problem(problem: &Problem, ask: &Ask, units: Units) -> String {
    let set = |amount| units.amount(amount, Figures::Set);
    match problem {
        Problem::NoLegs => "No leg is there yet. Choose its material and its size, then which way its first leg goes.".into(),
        Problem::Beyond {
            field: Field::Length(leg),
            ..
        } if matches!(
            ask.legs.get(*leg).map(|leg| leg.by),
            Some(By::Tape {
                length: Length::ZERO,
                ..
            })
        ) =>
        {
            format!("Leg {} is not measured yet. Tap its blue figure.", leg + 1)
        }
        Problem::Beyond {
            field: of,
            least,
            most,
        } => format!(
            "{} has to be from {} to {}.",
            field(*of),
            set(least),
            set(most)
        ),
        Problem::NoSuchSize { leg, pipe, size } => {
            let sizes: Vec<&str> = pipe.sizes().into_iter().map(Size::bare).collect();
            format!(
                "Leg {}: {} is not made in {}. It is made in {} in.",
                leg + 1,
                pipe.name(),
                size.name(),
                sizes.join(", ")
            )
        }
        Problem::NoFitting { leg } => format!(
            "Legs {} and {} meet without a fitting. Say what stands at the end of leg {}.",
            leg + 1,
            leg + 2,
            leg + 1
        ),
        Problem::NoReducer { leg, from, to } => format!(
            "Leg {} is {} and the one before it {}. Put a reducer at the end of leg {leg}, or a tee whose branch is {}.",
            leg + 1,
            to.name(),
            from.name(),
            to.name()
        ),
        Problem::NoSuchTurn {
            leg,
            angle,
            nearest,
        } => {
            let fitting = ask.legs.get(leg.wrapping_sub(1)).and_then(|leg| leg.end);
            let name = fitting.map_or("fitting", |fitting| fitting.kind.name());
            if nearest.as_microdegrees() == 0 {
                format!(
                    "Leg {} turns {} at a {name}, which goes straight on. Put an elbow or a tee there.",
                    leg + 1,
                    angle.show(Figures::Set)
                )
            } else {
                format!(
                    "Leg {} turns {}, and no {name} does. The nearest turns {}. Choose another fitting at the end of leg {leg}, or turn by that.",
                    leg + 1,
                    angle.show(Figures::Set),
                    nearest.show(Figures::Set)
                )
            }
        }
        Problem::NoTurn { leg } => format!(
            "Leg {} goes straight on after an elbow. Put a coupling, a union or a tee at the end of leg {leg}, or turn it.",
            leg + 1
        ),
        Problem::EndsRun { leg, kind } => format!(
            "A {} ends the run, but leg {} goes on after it. Remove that leg, or put another fitting at the end of leg {}.",
            kind.name(),
            leg + 2,
            leg + 1
        ),
        Problem::NotAside { leg } => format!(
            "Leg {}: an offset goes over to a side of the way that it keeps. Choose a side at right angles to it.",
            leg + 1
        ),
        Problem::WrongMark { leg, end, fitting } => {
            let end = if *end == Side::Before {
                "starts"
            } else {
                "ends"
            };
            if *fitting {
                format!(
                    "Leg {} {end} at a fitting, not at a wall. Hold the tape to its centre, face or shoulder.",
                    leg + 1
                )
            } else {
                format!(
                    "Leg {} {end} open: there is no fitting to hold the tape to. Hold it to the end of the pipe or to a wall.",
                    leg + 1
                )
            }
        }
        Problem::NotMeasured { leg, shape: of } => format!(
            "Leg {}: no length of the {} is known, and makers differ. Measure one of yours, centre to face and depth of the hub, below.",
            leg + 1,
            shape(of)
        ),
        Problem::TooShort {
            leg,
            is,
            least,
            set,
        } => format!(
            "Leg {} is shorter than its fittings: {} is {}, and both ends seat from {} on. Make it longer, or put a street fitting there.",
            leg + 1,
            if *set { "its set" } else { "it" },
            show(*is, units),
            units.length(*least, Rounding::Cover, Figures::Set)
        ),
        Problem::NoHub { leg } => format!(
            "Leg {}: a street end goes into a hub, and there is none at its other end. Put a fitting with a hub there.",
            leg + 1
        ),
        Problem::StreetWithPipe { leg, by_fittings } => {
            let long = by_fittings.map_or(String::new(), |long| {
                format!(" It is {} from centre to centre.", show(long, units))
            });
            format!(
                "Leg {} has a street end, which takes no pipe. Measure it as short as its fittings allow.{long}",
                leg + 1
            )
        }
        Problem::DoesNotClose {
            off: by,
            leg,
            is,
            would_be,
        } => format!(
            "The run ends {}. Leg {} is {}; with {} it would close. Measure it again, or where the run has to end.",
            off(*by, units),
            leg + 1,
            show(*is, units),
            show(*would_be, units)
        ),
        Problem::NothingToClose { leg } => format!(
            "Leg {} is to be what is left, but nothing says where the run ends, or another leg along it is left open as well. Say where it has to end, or measure this leg.",
            leg + 1
        ),
        Problem::LongerThanStick {
            leg,
            is,
            stick,
            couplings,
            ..
        } => {
            let now = ask.legs.get(*leg).map_or(0, |leg| leg.couplings);
            let coupling = match (couplings.saturating_sub(now), now) {
                (1, 0) => "put a coupling in it".to_owned(),
                (1, _) => "put one more coupling in it".to_owned(),
                (more, 0) => format!("put {more} couplings in it"),
                (more, _) => format!("put {more} more couplings in it"),
            };
            let longer = match longer_stick(*is, units) {
                _ if ask.pipe.family() == Family::Pex => "take a longer coil".to_owned(),
                Some(longer) => format!("take sticks of {}", show(longer, units)),
                None => "find longer sticks".to_owned(),
            };
            let piece = if now > 0 { "has a piece of" } else { "is cut" };
            format!(
                "Leg {} {piece} {}, longer than the sticks of {}: {longer}, or {coupling}.",
                leg + 1,
                show(*is, units),
                show(*stick, units)
            )
        }
        Problem::CannotClose { leg, off: by } => format!(
            "The run ends {}, and no leg of it can make that up. Check the way of each leg up to leg {}.",
            off(*by, units),
            leg + 1
        ),
    }
}

/// The shortest stick commonly on sale that a piece comes out of.
pub(super) fn longer_stick(piece: Length, units: Units) -> Option<Length> {
    let sale = if units.is_metric() {
        LENGTHS_METRIC.value
    } else {
        LENGTHS.value
    };
    // Pipe comes in the second and the last of them.
    [sale[1], sale[5]].into_iter().find(|stick| piece <= *stick)
}

/// What would mend it.
pub(super) fn mend(at: usize, problem: &Problem) -> Option<Chip> {
    let pad = |slot| Command::Pad(Slot::Pipe(at, slot));
    let set = |choice| Command::Set(at, Choice::Pipe(choice));
    let (words, command) = match problem {
        Problem::Beyond {
            field: Field::Length(leg),
            ..
        } => ("Measure it", pad(PipeSlot::Length(*leg))),
        Problem::NotMeasured { shape, .. } => ("Measure one", pad(PipeSlot::Face(*shape))),
        Problem::TooShort {
            leg, set: false, ..
        } => ("Measure it again", pad(PipeSlot::Length(*leg))),
        Problem::TooShort { leg, set: true, .. } => ("Change its set", pad(PipeSlot::Set(*leg))),
        Problem::DoesNotClose { leg, .. } => ("Measure it again", pad(PipeSlot::Length(*leg))),
        Problem::StreetWithPipe { leg, .. } => (
            "As its fittings allow",
            set(PipeChoice::By(*leg, By::Fitted)),
        ),
        Problem::NoReducer { leg, .. } => (
            "Put a reducer there",
            set(PipeChoice::Fitting(*leg, Some(Kind::Reducer))),
        ),
        Problem::NoFitting { leg } => (
            "Put an elbow there",
            set(PipeChoice::Fitting(leg + 1, Some(Kind::Bend))),
        ),
        Problem::NoTurn { leg } => (
            "Put a coupling there",
            set(PipeChoice::Fitting(*leg, Some(Kind::Coupling))),
        ),
        Problem::LongerThanStick { leg, couplings, .. } => (
            "Put couplings in it",
            set(PipeChoice::Couplings(*leg, *couplings)),
        ),
        _ => return None,
    };
    Some(Chip::new(words, false, command))
}

/// A length of the joists.
pub(super) fn joist(of: JoistSlot) -> &'static str {
    match of {
        JoistSlot::First => "That wall to the first joist's centre",
        JoistSlot::Spacing => "Joists, centre to centre",
        JoistSlot::Face => "A joist is thick",
        JoistSlot::Depth => "A joist is deep",
        JoistSlot::Deck => "Finished floor down to the joists",
    }
}

/// What the pad asks for.
pub(super) fn asks(slot: PipeSlot, ask: Option<&Ask>) -> String {
    match slot {
        PipeSlot::Name => "What the run is called".into(),
        PipeSlot::Length(leg) => {
            let how = ask.and_then(|ask| ask.legs.get(leg));
            let how = how.map_or(String::new(), |leg| {
                format!(", {}, {}", way(leg.way), by(leg.by))
            });
            format!("Leg {}{how}", leg + 1)
        }
        PipeSlot::Beyond(leg, _) => format!("Leg {}, beyond the wall", leg + 1),
        PipeSlot::Set(leg) => format!("Leg {}, set over", leg + 1),
        PipeSlot::Roll(leg) => format!("Leg {}, rolled over", leg + 1),
        PipeSlot::Face(of) if of.port == Port::Spigot => {
            format!("{}: centre to its end", shape(&of))
        }
        PipeSlot::Face(of) => format!("{}: centre to face", shape(&of)),
        PipeSlot::Depth(of) => format!("{}: depth of the hub", shape(&of)),
        PipeSlot::Tape => "A cut may be off by".into(),
        PipeSlot::Jaw => "The cutter takes at most".into(),
        PipeSlot::Stick => "A stick is".into(),
        PipeSlot::Air => "Air where joints are made".into(),
        PipeSlot::Warms => "Warmer in use by".into(),
        PipeSlot::Apart => "Lines apart, centre to centre".into(),
        PipeSlot::Lines => "Lines in all".into(),
        PipeSlot::Closes(0) => "Ends to the right of its start by".into(),
        PipeSlot::Closes(1) => "Ends into the wall from its start by".into(),
        PipeSlot::Closes(_) => "Ends above its start by".into(),
        PipeSlot::FromLeft => "Left corner to its start".into(),
        PipeSlot::UpFromFloor => "Floor to its start".into(),
        PipeSlot::Below => "Finished floor down to its start".into(),
        PipeSlot::Joists(of) => joist(of).into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handbook::pipe::{Pipe, Turn};
    use crate::measure::{Angle, plain};
    use crate::trades::pipe::{Fitting, Leg, Measured, figure};

    fn straight(way: Direction, inches: i64) -> Leg {
        Leg {
            way: Way::Along(way),
            size: None,
            by: By::Tape {
                length: Length::inches(inches),
                from: Mark::Centre,
                to: Mark::Centre,
            },
            couplings: 0,
            end: Some(Fitting::of(Kind::Bend)),
        }
    }

    /// Up 24, right 36, up 12 between elbows that were measured.
    fn run() -> Ask {
        let elbow = |turn| Measured {
            shape: Shape {
                family: Family::Copper,
                kind: Kind::Bend,
                turn: Some(turn),
                size: Size::Half,
                other: Size::Half,
                port: Port::Run,
            },
            face: Length::in_64(0, 56),
            depth: Some(Length::in_64(0, 32)),
        };
        Ask {
            start: Some(Fitting::of(Kind::Bend)),
            legs: vec![
                straight(Direction::Up, 24),
                straight(Direction::Right, 36),
                straight(Direction::Up, 12),
            ],
            fittings: Turn::ALL.map(elbow).to_vec(),
            ..Ask::default()
        }
    }

    /// What is wrong says which leg, why, and what would be right.
    #[track_caller]
    fn check(change: impl FnOnce(&mut Ask), says: &str) {
        let mut ask = run();
        change(&mut ask);
        let wrong = figure(&ask).expect_err("it is wrong");
        let units = Units::FeetInches { marks: 16 };
        assert_eq!(plain(&problem(&wrong, &ask, units)), says);
    }

    #[test]
    fn what_is_wrong_with_a_run_names_its_leg_and_what_would_be_right() {
        check(
            |ask| ask.closes = Some(Place::of([38, 0, 36].map(Length::inches))),
            "The run ends 2\" too far left. Leg 2 is 3'; with 3' 2\" it would close. Measure it again, or where the run has to end.",
        );
        check(
            |ask| ask.closes = Some(Place::of([36, 5, 36].map(Length::inches))),
            "The run ends 5\" too far towards you, and no leg of it can make that up. Check the way of each leg up to leg 3.",
        );
        check(
            |ask| ask.legs[1] = straight(Direction::Right, 1),
            "Leg 2 is shorter than its fittings: it is 1\", and both ends seat from 1 3/4\" on. Make it longer, or put a street fitting there.",
        );
        check(
            |ask| ask.legs[1].size = Some(Size::ThreeQuarters),
            "Leg 2 is 3/4 in and the one before it 1/2 in. Put a reducer at the end of leg 1, or a tee whose branch is 3/4 in.",
        );
        check(
            |ask| ask.legs[1].end = None,
            "Legs 2 and 3 meet without a fitting. Say what stands at the end of leg 2.",
        );
        check(
            |ask| {
                ask.legs[1].way = Way::Offset {
                    along: Direction::Up,
                    to: Direction::Right,
                    angle: Angle::degrees(40),
                    set: Length::inches(10),
                    over: None,
                };
            },
            "Leg 2 turns 40°, and no elbow does. The nearest turns 45°. Choose another fitting at the end of leg 1, or turn by that.",
        );
        check(
            |ask| ask.legs[0].end = Some(Fitting::of(Kind::Coupling)),
            "Leg 2 turns 90° at a coupling, which goes straight on. Put an elbow or a tee there.",
        );
        check(
            |ask| ask.fittings.clear(),
            "Leg 1: no length of the 1/2 in copper 90° elbow is known, and makers differ. Measure one of yours, centre to face and depth of the hub, below.",
        );
        check(
            |ask| {
                ask.pipe = Pipe::CopperL;
                ask.legs[2].size = Some(Size::Four);
            },
            "Leg 3: copper tube, type L is not made in 4 in. It is made in 1/4, 3/8, 1/2, 5/8, 3/4, 1, 1 1/4, 1 1/2, 2 in.",
        );
    }

    #[test]
    fn a_piece_longer_than_its_sticks_says_how_it_is_cut_all_the_same() {
        let long = |inches, couplings| {
            move |ask: &mut Ask| {
                ask.legs[2] = Leg {
                    couplings,
                    end: None,
                    by: By::Tape {
                        length: Length::inches(inches),
                        from: Mark::Shoulder,
                        to: Mark::End,
                    },
                    ..straight(Direction::Up, 0)
                };
            }
        };
        check(
            long(134, 0),
            "Leg 3 is cut 11' 2\", longer than the sticks of 10': take sticks of 20', or put a coupling in it.",
        );
        check(
            long(500, 0),
            "Leg 3 is cut 41' 8\", longer than the sticks of 10': find longer sticks, or put 4 couplings in it.",
        );
    }
}
