//! The patch screen.

use super::{App, Chip, Choice, Command, Here, Row, Screen, Tone, view::Big, words};
use crate::drawing::patch_sketch;
use crate::measure::{Amount, Figures, Length, Rounding};
use crate::site::{Studs, Wall};
use crate::takeoff::Ask;
use crate::trades::patch::{self, Field, Hole, HoleShape, Method, Obstacle};

impl App {
    /// What is asked, with what the room knows filled in.
    pub(super) fn patch_ask(&self, at: usize) -> Option<patch::Ask> {
        let task = self.job.tasks.get(at)?;
        let Ask::Patch(ask, wall) = &task.ask else {
            return None;
        };
        let mut ask = (**ask).clone();
        if let Some((room, index)) = task
            .room
            .and_then(|room| self.job.rooms.get(room))
            .zip(*wall)
            && let Some(wall) = room.walls.get(index)
        {
            let drawn = crate::site::shape(room)
                .ok()
                .and_then(|shape| shape.walls.get(index).copied());
            ask.wall.length = wall.length.or_else(|| {
                drawn
                    .filter(|(_, s)| *s == crate::site::Standing::Follows)
                    .map(|(l, _)| l)
            });
            ask.wall.height = wall.height.or(room.ceiling);
            if let Some(stands) = crate::site::elevation(room, index) {
                // As it stands where the hole is: across at its height, up where it is across.
                let up = ask.hole.above_floor.unwrap_or_default();
                let across = ask.hole.from_left.unwrap_or_default();
                let (across, up) = stands.place(across, up);
                ask.wall.length = Some(stands.right_at(up) - stands.left_at(up));
                ask.wall.height = Some(stands.ceiling_at(across) - stands.floor_at(across));
            }
            ask.studs = wall.studs.clone().or(ask.studs);
            ask.wall.obstacles = room
                .openings
                .iter()
                .filter(|opening| opening.wall == index)
                .filter_map(|opening| {
                    let (left, bottom) = (opening.from_left?, opening.sill.unwrap_or(Length::ZERO));
                    Some(Obstacle {
                        left,
                        right: left + opening.width?,
                        bottom,
                        top: bottom + opening.height?,
                    })
                })
                .collect();
        }
        Some(ask)
    }

    /// The figure that stands in a field.
    pub(super) fn patch_field(&self, at: usize, field: Field) -> Option<Length> {
        let ask = self.patch_ask(at)?;
        match field {
            Field::Board => Some(ask.board),
            Field::Gap => Some(ask.gap),
            Field::ScrewSpacing => Some(ask.screw_spacing),
            Field::FirstStud => match ask.studs {
                Some(Studs::Spaced { first, .. }) => Some(first),
                _ => None,
            },
            Field::StudSpacing => match ask.studs {
                Some(Studs::Spaced { spacing, .. }) => Some(spacing),
                _ => None,
            },
            Field::StudFace => match ask.studs {
                Some(Studs::Spaced { face, .. } | Studs::Found { face, .. }) => Some(face),
                None => None,
            },
            Field::WallLength => ask.wall.length,
            Field::WallHeight => ask.wall.height,
            _ => self.hole_field(at, None, field),
        }
    }

    /// One of a patch's holes: the first, or another counted from 0.
    pub(super) fn hole(&self, at: usize, other: Option<usize>) -> Option<&Hole> {
        let Ask::Patch(ask, _) = &self.job.tasks.get(at)?.ask else {
            return None;
        };
        match other {
            None => Some(&ask.hole),
            Some(other) => ask.other_holes.get(other),
        }
    }

    /// The figure that stands in a field of a hole.
    pub(super) fn hole_field(
        &self,
        at: usize,
        other: Option<usize>,
        field: Field,
    ) -> Option<Length> {
        let hole = self.hole(at, other)?;
        match (field, &hole.shape) {
            (Field::HoleWidth, HoleShape::Rectangle { width, .. }) => Some(*width),
            (Field::HoleHeight, HoleShape::Rectangle { height, .. }) => Some(*height),
            (Field::HoleAcross, HoleShape::Round { across }) => Some(*across),
            (Field::FromLeft, _) => hole.from_left,
            (Field::AboveFloor, _) => hole.above_floor,
            _ => None,
        }
    }

    /// From a stud's centre to a hole, where it was measured from that stud.
    pub(super) fn hole_from_stud(
        &self,
        at: usize,
        other: Option<usize>,
        stud: usize,
    ) -> Option<Length> {
        let (from, length) = self.hole(at, other)?.from_stud?;
        (from == stud).then_some(length)
    }

    /// The air that compound dries in.
    pub(super) fn air(&self, at: usize) -> Option<patch::Air> {
        match &self.job.tasks.get(at)?.ask {
            Ask::Patch(ask, _) => Some(ask.air),
            Ask::Paint(..)
            | Ask::Tile(..)
            | Ask::Grout(..)
            | Ask::Mortar(..)
            | Ask::Pipe(..)
            | Ask::Drain(..)
            | Ask::Sheets(..)
            | Ask::Trim(..) => None,
        }
    }

    /// A patch's last answer.
    pub(super) fn patch_answer(&self, at: usize) -> String {
        let figure = self.patch_ask(at).and_then(|ask| patch::figure(&ask).ok());
        figure.map_or_else(
            || "not figured yet".to_owned(),
            |figure| match figure.piece {
                Some((across, up)) => self.amount(Amount::Size(across, up)),
                None => method_name(figure.method).to_owned(),
            },
        )
    }

    /// The patch screen.
    pub(super) fn patch_page(&self, at: usize, stored: &patch::Ask, wall: Option<usize>) -> Screen {
        let Some(ask) = self.patch_ask(at) else {
            return self.bench_page();
        };
        let figured = patch::figure(&ask);
        let picture = patch_sketch(
            &ask,
            figured.as_ref().ok(),
            &self.behind_patch(at),
            self.job.units,
        )
        .map_tags(|field| Command::Pad(self.patch_slot(at, field)));
        let mut rows = Vec::new();
        let (mut strip, mut main) = (Vec::new(), None);
        match &figured {
            Err(problem) => rows.push(Row::Note {
                tone: Tone::Stop,
                text: words::patch_problem(problem, self.job.units),
                detail: String::new(),
                mend: None,
            }),
            Ok(figure) => {
                strip = self.patch_strip(figure);
                main = Some(self.list_button(at));
                rows.push(Row::Text(self.job.units.phrase(&figure.why, Figures::Set)));
                // What can hurt stands right under the result, before its details.
                rows.extend(self.near_hidden(at));
                rows.extend(self.notes(&figure.account));
                rows.extend(self.outline_notes(at));
                rows.extend(self.missing_rows(at, figure));
                rows.extend(self.patch_results(figure));
            }
        }
        rows.push(Row::Heading("The hole".into()));
        rows.extend(self.patch_inputs(at, &ask, wall));
        rows.push(Row::choice(
            "How to mend it",
            method_chips(at, stored.method),
        ));
        rows.extend(self.lay_rows(at));
        rows.extend(self.task_rows(at));
        let room = self.job.tasks[at]
            .room
            .and_then(|room| self.job.rooms.get(room));
        Screen {
            crumb: match (room, wall) {
                (Some(room), Some(wall)) => format!("Wall {}, {}", Wall::named(wall), room.name),
                _ => "Quick, no room".to_owned(),
            },
            title: "Patch".into(),
            back: Some(Here::Bench),
            picture: Some(picture),
            rows,
            strip,
            main,
            ..Screen::default()
        }
    }

    /// What would make the figure better, one tap away.
    fn missing_rows(&self, at: usize, figure: &patch::Figure) -> Vec<Row> {
        let mend = |field: &Field| Row::Note {
            tone: Tone::Note,
            text: format!("{} would make this exact.", words::patch_field(*field)),
            detail: String::new(),
            mend: Some(Chip::new(
                "Measure it",
                false,
                Command::Pad(self.patch_slot(at, *field)),
            )),
        };
        figure.missing.iter().map(mend).collect()
    }

    fn patch_strip(&self, figure: &patch::Figure) -> Vec<Big> {
        let mut strip = Vec::new();
        if let Some((across, up)) = figure.piece {
            strip.push(Big {
                value: self.amount(Amount::Size(across, up)),
                label: format!(
                    "piece to cut, {}",
                    method_name(figure.method).to_lowercase()
                ),
            });
        } else if let Some(side) = figure.patch_side {
            strip.push(Big {
                value: self.amount(Amount::Size(side, side)),
                label: "self-adhesive patch".into(),
            });
        } else {
            strip.push(Big {
                value: method_name(figure.method).to_owned(),
                label: "how to mend it".into(),
            });
        }
        if !figure.screws.is_empty() {
            strip.push(Big {
                value: figure.screws.len().to_string(),
                label: figure.screw_length.map_or_else(
                    || "screws".to_owned(),
                    |l| format!("screws, {}", self.show(l)),
                ),
            });
        }
        strip
    }

    fn patch_results(&self, figure: &patch::Figure) -> Vec<Row> {
        let mut rows = Vec::new();
        let across = |length: Length| {
            self.job
                .units
                .length(length, Rounding::Nearest, Figures::Set)
        };
        if let Some(opening) = figure.opening {
            let from = if figure.from_corner {
                "from the left corner"
            } else {
                "from the left edge of the hole"
            };
            rows.push(Row::Figure {
                label: "Saw lines, left and right".into(),
                detail: from.into(),
                value: format!("{} and {}", across(opening.left), across(opening.right)),
                command: None,
            });
            let from = if figure.from_floor {
                "above the floor"
            } else {
                "from the lower edge of the hole"
            };
            rows.push(Row::Figure {
                label: "Saw lines, bottom and top".into(),
                detail: from.into(),
                value: format!("{} and {}", across(opening.bottom), across(opening.top)),
                command: None,
            });
        }
        if let Some((left, right)) = figure.bearing {
            rows.push(Row::ours(
                "Bearing on the studs",
                format!("{} and {}", across(left), across(right)),
            ));
        }
        for strip in &figure.backing {
            let what = match strip.kind {
                patch::StripKind::Backing => "Backing strip",
                patch::StripKind::Blocking => "Blocking",
                patch::StripKind::Cleat => "Cleat",
            };
            rows.push(Row::Figure {
                label: what.into(),
                detail: self.amount(Amount::Size(strip.lumber.0, strip.lumber.1)),
                value: across(strip.length),
                command: None,
            });
        }
        if figure.tape.is_positive() {
            rows.push(Row::ours("Tape", across(figure.tape)));
        }
        if let Some((least, most)) = figure.compound {
            rows.push(Row::Figure {
                label: "Compound".into(),
                detail: format!("{} coats", figure.coats),
                value: self.amount(Amount::Range(Box::new(least.into()), Box::new(most.into()))),
                command: None,
            });
        }
        for wait in &figure.waits {
            rows.push(Row::Figure {
                label: self.job.units.phrase(&wait.what, Figures::Set),
                detail: words::cite(&wait.cite),
                value: self.amount(Amount::Hours(wait.hours)),
                command: None,
            });
        }
        if let Some(inspection) = &figure.inspection {
            rows.push(Row::Heading(
                "Look before you cut, small before large".into(),
            ));
            for look in &inspection.looks {
                rows.push(Row::ours(
                    self.job.units.phrase(&look.says, Figures::Set),
                    across(look.across),
                ));
            }
        }
        rows
    }
}

fn method_chips(at: usize, now: Option<Method>) -> Vec<Chip> {
    let mut chips = vec![Chip::new(
        "Let it decide",
        now.is_none(),
        Command::Set(at, Choice::Method(None)),
    )];
    chips.extend(
        [
            Method::Fill,
            Method::AdhesivePatch,
            Method::BackedPatch,
            Method::CutBack,
        ]
        .map(|method| {
            Chip::new(
                method_name(method),
                now == Some(method),
                Command::Set(at, Choice::Method(Some(method))),
            )
        }),
    );
    chips
}

/// What a way to mend is called.
fn method_name(method: Method) -> &'static str {
    match method {
        Method::Fill => "Fill",
        Method::AdhesivePatch => "Self-adhesive patch",
        Method::BackedPatch => "Board on backing strips",
        Method::CutBack => "Cut back to stud centres",
    }
}
