//! Studs on the screen: at a spacing, or one by one as they were found.

use super::{App, Chip, Command, Row, Slot, StudsOf};
use crate::measure::{Figures, Length, Rounding, Units};
use crate::site::Studs;
use crate::takeoff::{Ask, Job};

impl App {
    /// Whose studs they are, as they stand.
    fn studs(&self, of: StudsOf) -> Option<&Studs> {
        match of {
            StudsOf::Wall(room, wall) => self.job.rooms.get(room)?.walls.get(wall)?.studs.as_ref(),
            StudsOf::Patch(task) => match &self.job.tasks.get(task)?.ask {
                Ask::Patch(ask, _) => ask.studs.as_ref(),
                Ask::Paint(..)
                | Ask::Tile(..)
                | Ask::Grout(..)
                | Ask::Mortar(..)
                | Ask::Pipe(..)
                | Ask::Drain(..)
                | Ask::Sheets(..)
                | Ask::Trim(..) => None,
            },
        }
    }

    /// The length that stands in a field of studs.
    pub(super) fn stud_field(&self, of: StudsOf, slot: &Slot) -> Option<Length> {
        match (slot, self.studs(of)?) {
            (Slot::FirstStud(_), Studs::Spaced { first, .. }) => Some(*first),
            (Slot::FoundStud(_, at), Studs::Found { centres, .. }) => centres.get(*at).copied(),
            (Slot::StudFace(_), Studs::Spaced { face, .. } | Studs::Found { face, .. }) => {
                Some(*face)
            }
            _ => None,
        }
    }

    /// The rows in which studs are said.
    pub(super) fn stud_rows(&self, of: StudsOf) -> Vec<Row> {
        let studs = self.studs(of);
        let mut rows = vec![Row::choice(
            "Studs, centre to centre",
            self.stud_chips(of, studs),
        )];
        match studs {
            None => return rows,
            Some(Studs::Spaced { .. }) => rows.push(Row::yours(
                "Left corner to first stud centre",
                self.show_or_ask(self.stud_field(of, &Slot::FirstStud(of))),
                Command::Pad(Slot::FirstStud(of)),
            )),
            Some(Studs::Found { centres, .. }) => {
                rows.extend(self.found_rows(of, centres));
            }
        }
        let face = Slot::StudFace(of);
        rows.push(Row::yours(
            "Face of a stud",
            self.show_or_ask(self.stud_field(of, &face)),
            Command::Pad(face),
        ));
        rows
    }

    fn stud_chips(&self, of: StudsOf, studs: Option<&Studs>) -> Vec<Chip> {
        let spacings: &[Length] = if self.job.units.is_metric() {
            &[Length::mm(300), Length::mm(400), Length::mm(600)]
        } else {
            &[
                Length::inches(12),
                Length::inches(16),
                Length::nm(487_680_000),
                Length::inches(24),
            ]
        };
        let now = match studs {
            Some(Studs::Spaced { spacing, .. }) => Some(*spacing),
            _ => None,
        };
        let mut chips = vec![Chip::new(
            "Not known",
            studs.is_none(),
            Command::StudSpacing(of, None),
        )];
        chips.extend(spacings.iter().map(|spacing| {
            Chip::new(
                self.spacing(*spacing),
                now == Some(*spacing),
                Command::StudSpacing(of, Some(*spacing)),
            )
        }));
        chips.push(Chip::new(
            "As found, one by one",
            matches!(studs, Some(Studs::Found { .. })),
            Command::StudsAsFound(of),
        ));
        chips
    }

    fn found_rows(&self, of: StudsOf, centres: &[Length]) -> Vec<Row> {
        let mut rows: Vec<Row> = centres
            .iter()
            .enumerate()
            .map(|(at, centre)| {
                let label = format!("Left corner to centre of stud {}", at + 1);
                Row::yours(
                    label,
                    self.show(*centre),
                    Command::Pad(Slot::FoundStud(of, at)),
                )
            })
            .collect();
        rows.push(Row::button(
            "Another stud",
            Command::Pad(Slot::FoundStud(of, centres.len())),
        ));
        if !centres.is_empty() {
            let chip = |at| Chip::new(format!("{}", at + 1), false, Command::RemoveStud(of, at));
            rows.push(Row::choice(
                "No stud after all",
                (0..centres.len()).map(chip),
            ));
        }
        rows
    }

    /// A stud spacing as the trade says it: 16″, 19.2″, 400 mm.
    pub(super) fn spacing(&self, spacing: Length) -> String {
        let units = if self.job.units.is_metric() {
            Units::Millimetres
        } else {
            Units::DecimalInches
        };
        units.length(spacing, Rounding::Nearest, Figures::Set)
    }
}

/// The place where studs are kept.
pub(super) fn place(job: &mut Job, of: StudsOf) -> Option<&mut Option<Studs>> {
    match of {
        StudsOf::Wall(room, wall) => Some(&mut job.rooms.get_mut(room)?.walls.get_mut(wall)?.studs),
        StudsOf::Patch(task) => match &mut job.tasks.get_mut(task)?.ask {
            Ask::Patch(ask, _) => Some(&mut ask.studs),
            Ask::Paint(..)
            | Ask::Tile(..)
            | Ask::Grout(..)
            | Ask::Mortar(..)
            | Ask::Pipe(..)
            | Ask::Drain(..)
            | Ask::Sheets(..)
            | Ask::Trim(..) => None,
        },
    }
}

/// A length into a field of studs, or why it cannot stand there.
pub(super) fn fill(job: &mut Job, of: StudsOf, slot: &Slot, length: Length) -> Result<(), String> {
    let metric = job.units.is_metric();
    let Some(studs) = place(job, of) else {
        return Ok(());
    };
    // A stud that is found where none is known is the first that is known.
    let studs = studs.get_or_insert_with(|| as_found(None, None, metric));
    if length < Length::ZERO {
        return Err("A stud stands right of the left corner: give its distance from there.".into());
    }
    match (slot, studs) {
        (Slot::FirstStud(_), Studs::Spaced { first, .. }) => *first = length,
        (Slot::FirstStud(_), Studs::Found { centres, .. }) if !centres.contains(&length) => {
            centres.push(length);
            centres.sort();
        }
        (Slot::FoundStud(_, at), Studs::Found { centres, .. }) => {
            if centres
                .iter()
                .enumerate()
                .any(|(n, c)| n != *at && *c == length)
            {
                return Err("A stud stands there already.".into());
            }
            match centres.get_mut(*at) {
                Some(centre) => *centre = length,
                None => centres.push(length),
            }
            centres.sort();
        }
        (Slot::StudFace(_), Studs::Spaced { face, .. } | Studs::Found { face, .. }) => {
            if !length.is_positive() || length > Length::inches(6) {
                return Err("The face of a stud is more than nothing and at most 6 in.".into());
            }
            *face = length;
        }
        _ => {}
    }
    Ok(())
}

/// The face of a stud until it is measured: 1 1/2 in, or 38 mm.
pub(super) fn usual_face(metric: bool) -> Length {
    if metric {
        Length::mm(38)
    } else {
        Length::in_64(1, 32)
    }
}

/// Studs at a spacing; where they start and their face are kept if they were measured.
pub(super) fn spaced(old: Option<&Studs>, spacing: Length, metric: bool) -> Studs {
    match old {
        Some(Studs::Spaced { first, face, .. }) => Studs::Spaced {
            first: *first,
            spacing,
            face: *face,
        },
        Some(Studs::Found { centres, face }) => Studs::Spaced {
            first: centres.first().copied().unwrap_or(spacing),
            spacing,
            face: *face,
        },
        None => Studs::Spaced {
            first: spacing,
            spacing,
            face: usual_face(metric),
        },
    }
}

/// Studs one by one, from those of a spacing where there are any up to the wall's end.
pub(super) fn as_found(old: Option<&Studs>, wall: Option<Length>, metric: bool) -> Studs {
    match old {
        None => Studs::Found {
            centres: Vec::new(),
            face: usual_face(metric),
        },
        Some(found @ Studs::Found { .. }) => found.clone(),
        Some(spaced @ Studs::Spaced { face, .. }) => Studs::Found {
            centres: wall.map_or_else(Vec::new, |wall| spaced.centres(wall)),
            face: *face,
        },
    }
}
