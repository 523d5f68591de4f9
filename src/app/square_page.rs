//! The true shape of a room: how square, how plumb, how flat and how level, and each ±.

use super::survey_page::plan_command;
use super::{
    App, Chip, Command, Here, RoomChoice, Row, Screen, Slot, Tone, survey_words, view::Big,
};
use crate::drawing::{PlanLook, plan_seen};
use crate::measure::Length;
use crate::measure::quantity::{Area, in_square_feet, in_square_metres};
use crate::site::{self, Room, Side, Wall, What};

impl App {
    /// The true shape of one room.
    pub(super) fn square_page(&self, at: usize) -> Screen {
        let Some(room) = self.job.rooms.get(at) else {
            return self.rooms_page();
        };
        let times = self.rooms_view.exaggerated;
        let look = PlanLook {
            exaggerated: times.max(1),
            diagonals: false,
            ..PlanLook::default()
        };
        let picture =
            plan_seen(room, self.job.units, &look).map_tags(|tag| plan_command(at, room, tag));
        let mut rows = Vec::new();
        if site::surveyed(room).is_some() {
            rows.push(Row::choice(
                "Corners drawn out of square",
                [(1u8, "as they are"), (10, "10 times"), (20, "20 times")].map(|(n, label)| {
                    let command = Command::Of(at, RoomChoice::Exaggerate(n));
                    Chip::new(label, times == n, command)
                }),
            ));
        }
        let agreement = self.agreement_rows(at, room).into_iter();
        // What leads here is not shown here.
        rows.extend(agreement.map(|row| match row {
            Row::Note {
                tone,
                text,
                detail,
                mend: Some(mend),
            } if mend.command == Command::Go(Here::Square(at)) => Row::Note {
                tone,
                text,
                detail,
                mend: None,
            },
            other => other,
        }));
        rows.extend(self.corner_rows_found(at, room));
        rows.extend(self.check_rows(room));
        rows.extend(self.face_rows(at, room));
        Screen {
            crumb: room.name.clone(),
            title: "True shape".into(),
            back: Some(Here::Room(at)),
            picture: Some(picture),
            rows,
            strip: self.square_strip(room),
            ..Screen::default()
        }
    }

    fn square_strip(&self, room: &Room) -> Vec<Big> {
        let Some(found) = site::surveyed(room) else {
            return Vec::new();
        };
        let worst = found.corners.iter().map(|corner| corner.over.abs()).max();
        let mut strip = vec![
            Big {
                value: self.show(worst.unwrap_or_default()),
                label: "out of square at worst".into(),
            },
            Big {
                value: self.amount(found.area),
                label: format!("floor, ± {}", self.fine_area(found.area_plus_minus)),
            },
        ];
        if let Some(gap) = found.gap {
            // Set to the marks of the tape: under half of one the walls close.
            let open = self.show(gap) != self.show(Length::ZERO);
            strip.push(Big {
                value: if open {
                    self.show(gap)
                } else {
                    "The walls close".into()
                },
                label: if open {
                    "the walls miss each other by, were all corners square".into()
                } else {
                    "were all corners square".into()
                },
            });
        }
        strip
    }

    /// Each corner as the tape has it.
    fn corner_rows_found(&self, at: usize, room: &Room) -> Vec<Row> {
        let Some(found) = site::surveyed(room) else {
            return vec![Row::Note {
                tone: Tone::Note,
                text: "Measure across from corner to corner, and the room shows how square it is."
                    .into(),
                detail: String::new(),
                mend: Some(Chip::new(
                    "Measure across",
                    false,
                    Command::Of(at, RoomChoice::Much(site::Asked::Square)),
                )),
            }];
        };
        let mut rows = vec![Row::Heading("Corners, from inside".into())];
        for (corner, is) in found.corners.iter().enumerate() {
            let degrees = (180.0
                - room.walls[(corner + room.walls.len() - 1) % room.walls.len()]
                    .turn
                    .in_degrees())
                - is.off.in_degrees();
            let off = is.over.abs();
            let detail = if is.by_tape {
                format!(
                    "{} {} over the shorter wall, ± {:.2}°",
                    self.show(off),
                    if is.over > Length::ZERO {
                        "closed"
                    } else {
                        "open"
                    },
                    is.off_plus_minus.in_degrees()
                )
            } else {
                "as it was said; nothing measured across settles it".into()
            };
            rows.push(Row::Figure {
                label: capital(&survey_words::corner(room, corner)),
                detail,
                value: format!("{degrees:.2}°"),
                command: None,
            });
        }
        rows.push(Row::Heading(
            "Walls as they come out of all measurements".into(),
        ));
        let adjusted = self.adjusted_in(room);
        for (wall, is) in found.walls.iter().enumerate() {
            let taped = adjusted.iter().find(|(of, ..)| *of == wall);
            let taped = taped.map_or_else(String::new, |(_, _, read)| {
                format!("; the tape said {read}")
            });
            rows.push(Row::Figure {
                label: format!("Wall {}", Wall::named(wall)),
                detail: format!("± {}{taped}", self.show(is.plus_minus)),
                value: self.show(is.length),
                command: None,
            });
        }
        rows
    }

    /// Each measurement against what comes out.
    fn check_rows(&self, room: &Room) -> Vec<Row> {
        let Some(found) = site::surveyed(room) else {
            return Vec::new();
        };
        let mut rows = vec![Row::Heading("Each measurement against the rest".into())];
        for check in &found.checks {
            let off = check.comes_out - check.read;
            let value = if off.abs() < Length::nm(100_000) {
                "fits".to_owned()
            } else {
                format!(
                    "{} {}",
                    self.fine(off.abs()),
                    if off > Length::ZERO { "short" } else { "long" }
                )
            };
            let detail = if check.checked < 0.02 {
                "nothing checks it".to_owned()
            } else {
                format!(
                    "read {}, may be off {}",
                    self.show(check.read),
                    self.fine(check.plus_minus)
                )
            };
            rows.push(Row::Figure {
                label: survey_words::name(room, check.what),
                detail,
                value,
                command: None,
            });
        }
        rows
    }

    /// How far an area may be off, to a tenth of a square foot or a hundredth of a square metre; never as nothing.
    pub(super) fn fine_area(&self, area: Area) -> String {
        let (metres, feet) = (in_square_metres(area), in_square_feet(area));
        match self.job.units.is_metric() {
            true if metres < 0.005 => "less than 0.01 m²".to_owned(),
            true => format!("{metres:.2} m²"),
            false if feet < 0.05 => "less than 0.1 ft²".to_owned(),
            false => format!("{feet:.1} ft²"),
        }
    }

    /// A small length: to 1/64 in, or to 0.1 mm.
    fn fine(&self, length: Length) -> String {
        if self.job.units.is_metric() {
            format!("{:.1} mm", length.millimetres())
        } else {
            let units = crate::measure::Units::FeetInches { marks: 32 };
            units.length(
                length,
                crate::measure::Rounding::Nearest,
                crate::measure::Figures::Set,
            )
        }
    }

    /// Plumb, flat and level.
    fn face_rows(&self, at: usize, room: &Room) -> Vec<Row> {
        let mut rows = Vec::new();
        let leans = site::leans(room);
        if !leans.is_empty() {
            rows.push(Row::Heading("Plumb".into()));
        }
        for lean in &leans {
            let end = match lean.end {
                Side::Left => "left end",
                Side::Right => "right end",
            };
            let way = match lean.leans.as_nm().signum() {
                1 => "leans in",
                -1 => "leans out",
                _ => "plumb",
            };
            rows.push(Row::Figure {
                label: format!("Wall {}, {end}", Wall::named(lean.wall)),
                detail: lean
                    .over
                    .map_or_else(String::new, |over| format!("over {}", self.show(over))),
                value: if lean.leans == Length::ZERO {
                    way.into()
                } else {
                    format!("{} {way}", self.show(lean.leans.abs()))
                },
                command: Some(Command::Pad(Slot::Measure(
                    at,
                    What::Lean(lean.wall, lean.end),
                ))),
            });
        }
        let bows: Vec<site::Bow> = (0..room.walls.len())
            .filter_map(|wall| site::bow(room, wall))
            .collect();
        if !bows.is_empty() {
            rows.push(Row::Heading("Flat, from three points".into()));
        }
        for bow in bows {
            let way = match bow.hollow.as_nm().signum() {
                1 => "hollow",
                -1 => "belly",
                _ => "straight",
            };
            rows.push(Row::ours(
                format!("Wall {}", Wall::named(bow.wall)),
                if bow.hollow == Length::ZERO {
                    way.to_owned()
                } else {
                    format!("{} {way}", self.show(bow.hollow.abs()))
                },
            ));
        }
        if let Some(level) = site::floor_level(room) {
            rows.push(Row::Heading("Floor, below its highest corner".into()));
            for (corner, below) in &level.below {
                rows.push(Row::ours(
                    capital(&survey_words::corner(room, *corner)),
                    if *below == Length::ZERO {
                        "highest".into()
                    } else {
                        self.show(*below)
                    },
                ));
            }
        }
        rows.push(Row::choice(
            "Plumb, flat and level",
            [Chip::new(
                "Measure them",
                false,
                Command::Of(at, RoomChoice::Much(site::Asked::Everything)),
            )],
        ));
        rows
    }
}

fn capital(text: &str) -> String {
    survey_words::capital(text)
}
