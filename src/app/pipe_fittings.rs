//! The fittings of a run: what stands where, what was measured of it, what is still to measure.

use super::pipe_choices::fitting_at;
use super::pipe_rows::{capital, pad, set};
use super::{App, Chip, PipeChoice, PipeSlot, Row, pipe_words};
use crate::handbook::pipe::{Family, Kind, NO_STANDARD_LENGTH, Turn, least_socket, remembered};
use crate::trades::pipe::{Ask, Known, Port, Shape, Side, known, openings};

/// Fittings that there are for a family, those within a run first.
fn kinds(family: Family) -> Vec<Kind> {
    let drains = family.drains();
    Kind::ALL
        .into_iter()
        .filter(|kind| match kind {
            Kind::LongBend | Kind::SanitaryTee | Kind::Wye | Kind::Trap | Kind::Flange => drains,
            Kind::Tee | Kind::Union | Kind::Valve => !drains,
            _ => true,
        })
        .collect()
}

impl App {
    /// Every opening of the run's fittings: what was measured, what is printed, what is still to measure.
    pub(super) fn fitting_rows(&self, at: usize, ask: &Ask) -> Vec<Row> {
        let openings = openings(ask).unwrap_or_default();
        if openings.is_empty() {
            return Vec::new();
        }
        let mut rows = vec![
            Row::Heading("Fittings, measured".into()),
            Row::Text(
                "Measure one of each, from its centre to its face and how deep its hub is. It is kept on your shelf for every job.".into(),
            ),
        ];
        for (_, shape) in openings {
            rows.extend(self.opening_rows(at, ask, shape));
        }
        rows
    }

    fn opening_rows(&self, at: usize, ask: &Ask, shape: Shape) -> Vec<Row> {
        let own = ask.fittings.iter().find(|own| own.shape == shape);
        let Known {
            take_off, depth, ..
        } = known(ask, shape);
        let name = pipe_words::shape(&shape);
        let spigot = shape.port == Port::Spigot;
        let face = match (own, take_off, depth) {
            (Some(own), ..) => self.show(own.face),
            (None, Some(take_off), Some(depth)) => self.show(take_off.value + depth.value),
            _ => "?".to_owned(),
        };
        let to = if spigot {
            "centre to its end"
        } else {
            "centre to face"
        };
        let mut rows = vec![Row::Figure {
            label: format!("{name}, {to}"),
            detail: self.about(shape, own.is_some(), take_off.is_some()),
            value: face,
            command: Some(pad(at, PipeSlot::Face(shape))),
        }];
        if !spigot {
            let printed = own.is_none_or(|own| own.depth.is_none());
            rows.push(Row::Figure {
                label: format!("{name}, depth of the hub"),
                detail: match (depth, printed) {
                    (Some(depth), true) => super::words::cite(&depth.cite),
                    _ => String::new(),
                },
                value: depth.map_or_else(|| "?".to_owned(), |depth| self.show(depth.value)),
                command: Some(pad(at, PipeSlot::Depth(shape))),
            });
        }
        rows
    }

    /// Where a fitting's length comes from, or what one is about; never taken by itself.
    fn about(&self, shape: Shape, measured: bool, printed: bool) -> String {
        if measured {
            return String::new();
        }
        if printed {
            return "printed for this fitting; makers differ, measure one of yours".into();
        }
        let about = remembered(shape.family, shape.kind, shape.turn, shape.size);
        let plain = shape.port != Port::Spigot && shape.size == shape.other;
        match about.take_off.zip(about.depth) {
            Some((take_off, depth)) if plain => format!(
                "about {}, {}; not taken until you measure one",
                self.show(take_off.value + depth.value),
                super::words::cite(&take_off.cite)
            ),
            _ => match least_socket(shape.family, shape.size) {
                Some(least) if plain => format!(
                    "no length is published; a hub is at least {} deep",
                    self.show(least.value)
                ),
                _ if shape.family == Family::Copper => super::words::cite(&NO_STANDARD_LENGTH),
                _ => "no length is published".into(),
            },
        }
    }
}

/// What can stand at a node, an open end first.
pub(super) fn kind_chips(at: usize, node: usize, ask: &Ask) -> Vec<Chip> {
    let now = fitting_at(ask, node).map(|fitting| fitting.kind);
    let ends = node == 0 || node == ask.legs.len();
    let mut chips = Vec::new();
    if ends {
        let open = set(at, PipeChoice::Fitting(node, None));
        chips.push(Chip::new("Open end", now.is_none(), open));
    }
    for kind in kinds(ask.pipe.family()) {
        if !ends && matches!(kind, Kind::Trap | Kind::Flange | Kind::Cap) && now != Some(kind) {
            continue;
        }
        let chip = set(at, PipeChoice::Fitting(node, Some(kind)));
        chips.push(Chip::new(capital(kind.name()), now == Some(kind), chip));
    }
    chips
}

/// What a fitting can be beside its kind: turned, gone through its branch, with a street end.
pub(super) fn fitting_choices(at: usize, node: usize, ask: &Ask) -> Vec<Row> {
    let Some(fitting) = fitting_at(ask, node) else {
        return Vec::new();
    };
    let ends = node == 0 || node == ask.legs.len();
    let mut rows = Vec::new();
    if fitting.kind == Kind::Bend && ends {
        let now = fitting.turn.unwrap_or(Turn::Quarter);
        rows.push(Row::choice(
            "It turns",
            Turn::ALL.map(|turn| {
                Chip::new(
                    turn.name(),
                    turn == now,
                    set(at, PipeChoice::Turn(node, turn)),
                )
            }),
        ));
    }
    let sides = [Side::Before, Side::After];
    let there = |side: &Side| match side {
        Side::Before => node > 0,
        Side::After => node < ask.legs.len(),
    };
    let leg = |side: Side| match side {
        Side::Before => node,
        Side::After => node + 1,
    };
    if fitting.kind.branches() {
        rows.push(Row::choice(
            "Where it turns, its branch holds",
            sides.into_iter().filter(there).map(|side| {
                Chip::new(
                    format!("Leg {}", leg(side)),
                    fitting.branch.unwrap_or(Side::After) == side,
                    set(at, PipeChoice::Branch(node, side)),
                )
            }),
        ));
    }
    if fitting.kind.bends() {
        let mut chips = vec![Chip::new(
            "None",
            fitting.street.is_none(),
            set(at, PipeChoice::Street(node, None)),
        )];
        chips.extend(sides.into_iter().filter(there).map(|side| {
            Chip::new(
                format!("Towards leg {}", leg(side)),
                fitting.street == Some(side),
                set(at, PipeChoice::Street(node, Some(side))),
            )
        }));
        rows.push(Row::choice("Street end", chips));
    }
    rows
}
