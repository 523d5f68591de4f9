//! A wall as it stands: what its outline was taken from, and what that means for the figure on it.

use super::{App, Row, Tone, survey_words};
use crate::measure::Length;
use crate::site::{Does, Elevation, Room, Side, Taken, Trust, Wall, What, elevation, surveyed};
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

    /// The walls of a figure's floor that come out otherwise than the tape said, as both are set: wall, as it comes out, as
    /// the tape said.
    fn walls_adjusted(&self, at: usize) -> Vec<(usize, String, String)> {
        let of = self.floor_of(at);
        of.map_or_else(Vec::new, |room| self.adjusted_in(room))
    }

    /// That the box of a floor of four walls is larger than its walls, for its corners are out of square.
    fn box_of_floor(&self, at: usize) -> Option<String> {
        let room = self.floor_of(at)?;
        let found = surveyed(room).filter(|found| found.walls.len() == 4)?;
        let (least, most) = found.outline.bounds()?;
        let sides = [most.x - least.x, most.y - least.y].map(|side| self.show(side));
        let walls: Vec<String> = found.walls.iter().map(|is| self.show(is.length)).collect();
        sides.iter().any(|side| !walls.contains(side)).then(|| {
            format!(
                "Its corners are out of square: the box that the drawing measures, {} by {}, is a little more than its walls.",
                sides[0], sides[1]
            )
        })
    }

    /// The room whose floor a figure lies on.
    fn floor_of(&self, at: usize) -> Option<&Room> {
        let task = self.job.tasks.get(at)?;
        let floor = matches!(
            task.ask,
            Ask::Tile(_, TileOn::Floor) | Ask::Sheets(_, TileOn::Floor)
        );
        self.job.rooms.get(task.room.filter(|_| floor)?)
    }

    /// The same of a room.
    pub(super) fn adjusted_in(&self, room: &Room) -> Vec<(usize, String, String)> {
        let Some(found) = surveyed(room) else {
            return Vec::new();
        };
        let walls = found.walls.iter().enumerate();
        let both = walls.filter_map(|(wall, is)| {
            let read = room.measured(What::Wall(wall))?;
            Some((wall, self.show(is.length), self.show(read)))
        });
        both.filter(|(_, is, read)| is != read).collect()
    }

    /// How a floor's sides were come by, where the tape said otherwise.
    fn floor_working(&self, at: usize) -> Vec<Row> {
        let walls = self.walls_adjusted(at);
        if walls.is_empty() {
            return Vec::new();
        }
        let mut rows = vec![Row::Heading("The floor as it comes out".into())];
        rows.extend(walls.into_iter().map(|(wall, is, read)| Row::Figure {
            label: format!("Wall {}", Wall::named(wall)),
            detail: format!("the tape said {read}"),
            value: is,
            command: None,
        }));
        rows.push(Row::Text(
            "As figured from all that was measured of the room: walls and diagonals by least squares, each by how far a tape may be off".into(),
        ));
        rows
    }

    /// How the outline of a figure's wall was come by: each measurement and what it does.
    pub(super) fn outline_working(&self, at: usize) -> Vec<Row> {
        let Some((room, wall)) = self.wall_stands(at) else {
            return self.floor_working(at);
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
            let first = self.walls_adjusted(at).into_iter().next();
            let first = first.map(|(wall, is, read)| {
                format!(
                    "Sides as figured from all measurements: wall {} comes out {is}, the tape said {read}. The working has them all.",
                    Wall::named(wall)
                )
            });
            let says = first.or_else(|| self.box_of_floor(at));
            return Vec::from_iter(says.map(Row::Text));
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

    /// A floor that is figured from walls and diagonals says where a side is not what the tape said, and the working each.
    #[test]
    fn a_side_that_comes_out_otherwise_than_taped_says_so() {
        let job = demo_job(DateTime::UNIX_EPOCH.fixed_offset());
        let mut app = App::new(job, Keeper::nowhere());
        let mut room = Room::rectangle("Bath");
        for (wall, inches) in [96, 60, 96, 60].into_iter().enumerate() {
            room.measure(What::Wall(wall), Some(Length::inches(inches)), None);
        }
        for what in [What::Diagonal(0, 2), What::Diagonal(1, 3)] {
            room.measure(what, Some(Length::in_64(113, 22)), None);
        }
        app.edit("", |job| job.add_room(room));
        let room = app.job.rooms.len() - 1;
        app.send(Command::NewTile(Some(room), TileOn::Floor));
        let at = app.job.tasks.len() - 1;
        let notes = app.outline_notes(at);
        assert!(
            matches!(&notes[..], [Row::Text(text)] if text.contains("the tape said")),
            "{notes:?}"
        );
        app.send(Command::Go(Here::Working(at)));
        let taped = |row: &&Row| matches!(row, Row::Figure { detail, .. } if detail.starts_with("the tape said"));
        assert_eq!(app.screen().rows.iter().filter(taped).count(), 2);
        app.send(Command::Go(Here::Square(room)));
        let taped = |row: &&Row| matches!(row, Row::Figure { detail, .. } if detail.contains("; the tape said"));
        assert_eq!(app.screen().rows.iter().filter(taped).count(), 2);
    }

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
            job.rooms[0].measure(What::Lean(5, Side::Right), inch, inch.map(Length::half));
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
