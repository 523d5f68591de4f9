//! How long the pipe of each leg is, from whatever the tape was held to.

use super::ask::{Ask, By, Mark, Way};
use super::fitting::{Known, Port, Shape, Side, known};
use super::offset::{multipliers, offset};
use super::problem::Problem;
use super::walk::Walk;
use crate::handbook::pipe::Kind;
use crate::measure::{Angle, Length, Rounding};

/// The pipe of a leg.
#[derive(Clone, Debug, PartialEq)]
pub struct LegCut {
    /// All the pipe in it; `None` where a street end leaves none.
    pub cut: Option<Length>,
    /// From centre to centre, or to an open end; `None` where a take-off of it is not known.
    pub span: Option<Length>,
    /// What is known of the openings at its ends.
    pub ends: [Option<Known>; 2],
    /// What the stops of its couplings add.
    pub stops: Length,
    /// What goes into all its hubs.
    pub seats: Length,
}

/// What a leg has at its ends and within.
pub(super) struct Between {
    pub leg: usize,
    pub ends: [Option<Known>; 2],
    pub coupling: Option<Known>,
    pub couplings: i64,
}

impl Between {
    pub(super) fn of(ask: &Ask, walk: &Walk, leg: usize) -> Between {
        let size = ask.size_of(leg);
        let couplings = i64::from(ask.legs[leg].couplings);
        let coupling = Shape {
            family: ask.pipe.family(),
            kind: Kind::Coupling,
            turn: None,
            size,
            other: size,
            port: Port::Run,
        };
        Between {
            leg,
            ends: walk.ends(leg).map(|end| end.map(|shape| known(ask, shape))),
            coupling: (couplings > 0).then(|| known(ask, coupling)),
            couplings,
        }
    }
    fn street(&self) -> Option<usize> {
        (0..2).find(|end| self.ends[*end].is_some_and(|known| known.shape.port == Port::Spigot))
    }
    fn not_measured(&self, shape: Shape) -> Problem {
        Problem::NotMeasured {
            leg: self.leg,
            shape,
        }
    }
    /// What the stops of all couplings add; each stands twice its take-off between its pipes.
    fn stops(&self) -> Result<Length, Problem> {
        let Some(coupling) = self.coupling else {
            return Ok(Length::ZERO);
        };
        let stop = coupling
            .take_off
            .ok_or_else(|| self.not_measured(coupling.shape))?;
        Ok(stop.value * (2 * self.couplings))
    }
    /// From the centre to the stop at an end; nothing at an open one.
    fn take_off(&self, end: usize) -> Result<Length, Problem> {
        self.ends[end].map_or(Ok(Length::ZERO), |known| {
            let take_off = known
                .take_off
                .ok_or_else(|| self.not_measured(known.shape))?;
            Ok(take_off.value)
        })
    }
    /// How deep the pipe goes in at an end; nothing where that is not known.
    fn seat(&self, end: usize) -> Length {
        let depth = self.ends[end].and_then(|known| known.depth);
        depth.map_or(Length::ZERO, |depth| depth.value)
    }
    fn depth(&self, end: usize) -> Result<Length, Problem> {
        self.ends[end].map_or(Ok(Length::ZERO), |known| {
            let depth = known.depth.ok_or_else(|| self.not_measured(known.shape))?;
            Ok(depth.value)
        })
    }
    /// Everything that has to go into hubs.
    fn seats(&self) -> Length {
        let coupling = self.coupling.and_then(|coupling| coupling.depth);
        let in_couplings =
            coupling.map_or(Length::ZERO, |depth| depth.value * (2 * self.couplings));
        self.seat(0) + self.seat(1) + in_couplings
    }
    fn both_take_offs(&self) -> Result<Length, Problem> {
        Ok(self.take_off(0)? + self.take_off(1)?)
    }

    /// What the mark at an end adds to what the tape said.
    fn mark(&self, end: usize, mark: Mark) -> Result<Length, Problem> {
        let fitting = self.ends[end].is_some();
        let wrong = Err(Problem::WrongMark {
            leg: self.leg,
            end: [Side::Before, Side::After][end],
            fitting,
        });
        match mark {
            Mark::Centre if fitting => Ok(-self.take_off(end)?),
            Mark::Face if fitting => self.depth(end),
            Mark::Shoulder if fitting => Ok(Length::ZERO),
            Mark::End => Ok(Length::ZERO),
            Mark::Wall(beyond) if !fitting => Ok(beyond),
            _ => wrong,
        }
    }

    fn done(&self, cut: Length) -> Result<LegCut, Problem> {
        let stops = self.stops()?;
        Ok(LegCut {
            cut: Some(cut),
            span: self.both_take_offs().ok().map(|both| cut + both + stops),
            ends: self.ends,
            stops,
            seats: self.seats(),
        })
    }

    /// The pipe where the leg is so long from centre to centre.
    pub fn spanning(&self, span: Length) -> Result<LegCut, Problem> {
        self.done(span - self.both_take_offs()? - self.stops()?)
    }

    /// A street end in the hub across.
    fn street_leg(&self, street: usize, by: By) -> Result<LegCut, Problem> {
        let leg = self.leg;
        let across = self.ends[1 - street].ok_or(Problem::NoHub { leg })?;
        if across.shape.port == Port::Spigot {
            return Err(Problem::NoHub { leg });
        }
        let span = self.both_take_offs();
        if by != By::Fitted || self.couplings > 0 {
            return Err(Problem::StreetWithPipe {
                leg,
                by_fittings: span.ok(),
            });
        }
        Ok(LegCut {
            cut: None,
            span: Some(span?),
            ends: self.ends,
            stops: Length::ZERO,
            seats: Length::ZERO,
        })
    }
}

/// The pipe of a leg; `None` where it is whatever is left.
pub(super) fn leg_cut(ask: &Ask, walk: &Walk, leg: usize) -> Result<Option<LegCut>, Problem> {
    let between = Between::of(ask, walk, leg);
    let one = ask.legs[leg];
    if let Some(street) = between.street() {
        return between.street_leg(street, one.by).map(Some);
    }
    let cut = match one.by {
        By::Rest => return Ok(None),
        By::Tape { length, from, to } => {
            let marks = between.mark(0, from)? + between.mark(1, to)?;
            between.done(length + marks - between.stops()?)?
        }
        By::Set => {
            let Way::Offset {
                set, over, angle, ..
            } = one.way
            else {
                return Err(Problem::NotAside { leg });
            };
            let roll = over.map_or(Length::ZERO, |(_, roll)| roll);
            let offset = offset(set, roll, angle).ok_or(Problem::NotAside { leg })?;
            between.spanning(offset.travel)?
        }
        By::Fitted => {
            for end in 0..2 {
                between.depth(end)?;
            }
            between.done(between.seats())?
        }
    };
    seated(ask, leg, &cut, Length::ZERO)?;
    Ok(Some(cut))
}

/// Both ends have to seat, also where a line beside it is shorter by `less`.
pub(super) fn seated(ask: &Ask, leg: usize, cut: &LegCut, less: Length) -> Result<(), Problem> {
    let Some(pipe) = cut.cut.map(|pipe| pipe - less) else {
        return Ok(());
    };
    if pipe >= cut.seats && pipe.is_positive() {
        return Ok(());
    }
    let missing = cut.seats.max(Length::SIXTY_FOURTH) - pipe;
    let up = |length: Length| length.rounded(Length::SIXTY_FOURTH, Rounding::Cover);
    Err(match (ask.legs[leg].by, ask.legs[leg].way) {
        (By::Tape { length, .. }, _) => Problem::TooShort {
            leg,
            is: length,
            least: up(length + missing),
            set: false,
        },
        (
            By::Set,
            Way::Offset {
                set, over, angle, ..
            },
        ) => Problem::TooShort {
            leg,
            is: set,
            least: up(least_set(
                set,
                over.map_or(Length::ZERO, |(_, roll)| roll),
                angle,
                missing,
            )),
            set: true,
        },
        _ => {
            let span = cut.span.unwrap_or_default();
            Problem::TooShort {
                leg,
                is: span,
                least: up(span + missing),
                set: false,
            }
        }
    })
}

/// The set, the roll staying in proportion, whose travel is longer by what is missing.
fn least_set(set: Length, roll: Length, angle: Angle, missing: Length) -> Length {
    let travel = set.metres().hypot(roll.metres()) * multipliers(angle).0;
    let times = (travel + missing.metres()) / travel;
    Length::from_metres(set.metres() * times).unwrap_or(set)
}
