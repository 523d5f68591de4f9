//! A wall as it stands: what its outline was taken from, and what that means for the figure on it.

use super::{App, Row, Tone, survey_words};
use crate::measure::Length;
use crate::site::{Does, Elevation, Room, Side, Taken, Trust, elevation};
use crate::takeoff::{Ask, TileOn};

/// From here on a face that leans is so much longer than plumb that a tape shows it.
const SHOWS: Length = Length::SIXTY_FOURTH;

/// From here on a ± is wide: it takes up a joint.
const WIDE: Length = Length::in_64(0, 16);

const fn end(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}

impl App {
    /// The wall that a figure stands on, with its room.
    pub(super) fn wall_of(&self, at: usize) -> Option<(&Room, usize)> {
        let task = self.job.tasks.get(at)?;
        let wall = match &task.ask {
            Ask::Tile(_, TileOn::Wall(wall))
            | Ask::Sheets(_, TileOn::Wall(wall))
            | Ask::Patch(_, Some(wall)) => *wall,
            _ => return None,
        };
        Some((self.job.rooms.get(task.room?)?, wall))
    }

    fn wall_stands(&self, at: usize) -> Option<(&Room, Elevation)> {
        let (room, wall) = self.wall_of(at)?;
        Some((room, elevation(room, wall)?))
    }

    /// ± in words, where there is one.
    fn trusted(&self, trust: Trust) -> String {
        let kind = if trust.estimated { ", an estimate" } else { "" };
        if trust.plus_minus.is_positive() {
            format!("± {}{kind}", self.show(trust.plus_minus))
        } else {
            String::new()
        }
    }

    fn does(&self, does: Does) -> String {
        let show = |length: Length| self.show(length.abs());
        match does {
            Does::Width => "the width at the floor".into(),
            Does::Height(side) => format!("the height at the {} end", end(side)),
            Does::Lower(side, by) => {
                format!("the floor is {} lower at the {} end", show(by), end(side))
            }
            Does::Slants(side, by) if by == Length::ZERO => {
                format!("the {} edge is plumb", end(side))
            }
            Does::Slants(side, by) => format!(
                "the top of the {} edge is {} further {}",
                end(side),
                show(by),
                if by.is_positive() { "right" } else { "left" }
            ),
            Does::Longer(side, by) if by < SHOWS => format!(
                "the face at the {} end is longer than plumb by less than a tape shows",
                end(side)
            ),
            Does::Longer(side, by) => format!(
                "the face at the {} end is {} longer than plumb",
                end(side),
                show(by)
            ),
        }
    }

    /// How the outline of a figure's wall was come by: each measurement and what it does.
    pub(super) fn outline_working(&self, at: usize) -> Vec<Row> {
        let Some((room, wall)) = self.wall_stands(at) else {
            return Vec::new();
        };
        let mut rows = vec![Row::Heading("The wall as it stands".into())];
        rows.extend(wall.taken.iter().map(|taken| self.taken_row(room, taken)));
        rows.push(Row::Text(
            "Plane geometry; an edge slants where the neighbour leans, and the lower edge follows the floor".into(),
        ));
        rows
    }

    fn taken_row(&self, room: &Room, taken: &Taken) -> Row {
        let trust = self.trusted(taken.trust);
        let does = self.does(taken.does);
        Row::Figure {
            label: survey_words::name(room, taken.what),
            detail: if trust.is_empty() {
                does
            } else {
                format!("{does}; {trust}")
            },
            value: self.show(taken.length),
            command: None,
        }
    }

    /// What a figure on a wall has to say of its outline: that it is no rectangle, that its face is longer than plumb,
    /// that it is not known well.
    pub(super) fn outline_notes(&self, at: usize) -> Vec<Row> {
        let Some((_, wall)) = self.wall_stands(at) else {
            return Vec::new();
        };
        let mut says: Vec<String> = Vec::new();
        let shows = |taken: &&Taken| match taken.does {
            Does::Slants(_, by) => by.abs() >= SHOWS,
            Does::Lower(_, by) | Does::Longer(_, by) => by >= SHOWS,
            Does::Width | Does::Height(_) => false,
        };
        let bent = wall.taken.iter().filter(shows);
        says.extend(bent.map(|taken| self.does(taken.does)));
        let mut rows = Vec::new();
        if !says.is_empty() {
            rows.push(Row::Note {
                tone: Tone::Note,
                text: format!("This wall is no rectangle: {}.", says.join("; ")),
                detail: "as measured; taken into this figure".into(),
                mend: None,
            });
        }
        let wide = |trust: Trust| trust.plus_minus >= WIDE && !trust.estimated;
        let unsure = [("width", wall.across), ("height", wall.up)];
        let unsure = unsure.into_iter().filter(|(_, trust)| wide(*trust));
        let unsure: Vec<String> = unsure
            .map(|(what, trust)| format!("its {what} to {}", self.trusted(trust)))
            .collect();
        if !unsure.is_empty() {
            rows.push(Row::Note {
                tone: Tone::Caution,
                text: format!(
                    "This wall is known only so far: {}. Measure again before you cut to it.",
                    unsure.join(", ")
                ),
                detail: String::new(),
                mend: None,
            });
        }
        rows
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::{Command, Here, Keeper, demo_job};
    use crate::measure::quantity::in_square_feet;
    use crate::site::What;
    use chrono::DateTime;

    /// Wall A downstairs, 88 by 97 in with a window of 24 by 30: tiled, and wall F at its left leans in by an inch.
    #[test]
    fn tile_on_a_wall_follows_the_lean_of_its_neighbour_and_says_so() {
        let job = demo_job(DateTime::UNIX_EPOCH.fixed_offset());
        let mut app = App::new(job, Keeper::nowhere());
        app.send(Command::NewTile(Some(0), TileOn::Wall(0)));
        let at = app.job.tasks.len() - 1;
        let feet = |app: &App| in_square_feet(app.tile_surface(at).unwrap().area());
        assert!((feet(&app) - (88.0 * 97.0 - 720.0) / 144.0).abs() < 1e-9);
        assert!(app.outline_notes(at).is_empty());
        app.edit("", |job| {
            let inch = Some(Length::inches(1));
            job.rooms[0].measure(What::Lean(5, Side::Right), inch, inch.map(|l| l.half()));
        });
        assert!((feet(&app) - (87.5 * 97.0 - 720.0) / 144.0).abs() < 1e-6);
        let notes = app.outline_notes(at);
        assert!(matches!(&notes[0], Row::Note { text, .. } if text.contains("left edge")));
        // An estimate: the screen says what it may come to, and the working what it was taken from.
        assert!(
            matches!(&app.screen().rows[0], Row::Note { text, .. } if text.contains("estimate"))
        );
        app.send(Command::Go(Here::Working(at)));
        let says = |row: &Row| matches!(row, Row::Figure { detail, .. } if detail.contains("±"));
        assert!(app.screen().rows.iter().any(says));
    }
}
