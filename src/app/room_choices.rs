//! What becomes of a room when something of it is chosen.

use super::{App, Command, Here, Outline, RoomChoice, Row, Tone, outline_page};
use crate::drawing::PlanTag;
use crate::measure::quantity::square_metres;
use crate::site::{
    self, Clearance, FixedPoint, Fixture, Hidden, OpeningRule, Room, Spot, Wall, Wants,
};

impl App {
    /// Does what was chosen in a room.
    pub(super) fn choose_in_room(&mut self, at: usize, choice: RoomChoice) {
        if at >= self.job.rooms.len() {
            return;
        }
        match choice {
            RoomChoice::Much(much) => {
                self.rooms_view.much = much;
                if self.here != Here::Survey(at) {
                    self.go(Here::Survey(at));
                }
            }
            RoomChoice::Short(short) => self.rooms_view.short = short,
            RoomChoice::Exaggerate(times) => self.rooms_view.exaggerated = times,
            RoomChoice::Behind(behind) => self.rooms_view.behind = behind,
            RoomChoice::Points(points) => self.rooms_view.points = points,
            RoomChoice::LeastRest(least) => self.rooms_view.least = least,
            RoomChoice::Place(placing) => self.place(at, placing),
            RoomChoice::Choose(tag) => {
                if self.here != Here::Outline(at) {
                    self.go(Here::Outline(at));
                }
                self.rooms_view.chosen = tag;
            }
            RoomChoice::Second(mirrored) => {
                let done = self.edited("A second room; confirm what usually differs", |job| {
                    job.second_room(at, mirrored);
                });
                if done {
                    let said = std::mem::take(&mut self.said);
                    let second = self.job.rooms.len() - 1;
                    // Back from its survey is the room itself, and then where one came from.
                    self.go(Here::Room(second));
                    self.go(Here::Survey(second));
                    self.said = said;
                }
            }
            RoomChoice::Outline(outline) => {
                let Some(chosen) = self.rooms_view.chosen else {
                    return;
                };
                let walls = self.job.rooms[at].walls.len();
                let changed = self.edited("Outline changed", |job| {
                    outline_page::change(job, at, chosen, outline);
                });
                if let (false, Outline::Drag(_), PlanTag::WallBody(wall)) =
                    (changed, outline, chosen)
                {
                    self.said = outline_page::stays(wall);
                }
                // What was chosen may be another wall now; a drag keeps it.
                if self.job.rooms[at].walls.len() != walls {
                    self.rooms_view.chosen = None;
                }
                self.leave_what_is_gone();
            }
            RoomChoice::Mirror => self.edit("Mirrored", |job| job.mirror_room(at)),
            other => {
                let said = match other {
                    RoomChoice::RemoveFixed(_)
                    | RoomChoice::RemoveFixture(_)
                    | RoomChoice::RemoveHidden(_) => "Removed",
                    _ => "",
                };
                let done = self.edited(said, |job| in_room(&mut job.rooms[at], &other));
                self.place_what_is_new(at, &other, done);
            }
        }
    }

    /// A room from the shelf, mirrored; its figures are carried over until they are confirmed.
    pub(super) fn take_mirrored(&mut self, profile: usize) {
        if let Some(room) = self.keeper.shelf().get(profile) {
            let mut room = room.mirrored();
            room.carry_all();
            room.name = format!("{}, mirrored", room.name);
            if self.edited("", |job| job.add_room(room)) {
                self.go(Here::Room(self.job.rooms.len() - 1));
            }
        }
    }

    /// A profile off the shelf.
    pub(super) fn drop_profile(&mut self, profile: usize) {
        match self.keeper.drop_room(profile) {
            Ok(gone) => {
                self.said = "Off the shelf".to_owned();
                self.rooms_view.dropped = gone;
            }
            Err(why) => self.said = why,
        }
    }

    /// The profile that was taken off the shelf last, back on it.
    pub(super) fn put_profile_back(&mut self) {
        if let Some(room) = self.rooms_view.dropped.take() {
            self.said = match self.keeper.keep_room(&room) {
                Ok(()) => "Back on the shelf".to_owned(),
                Err(why) => why,
            };
        }
    }

    /// That figures of a room are carried over.
    pub(super) fn carried_row(&self, at: usize, room: &Room) -> Option<Row> {
        let count = room.carried().count();
        (count > 0).then(|| Row::Note {
            tone: Tone::Caution,
            text: match count {
                1 => "1 figure is carried over from another room and not confirmed.".to_owned(),
                n => format!("{n} figures are carried over from another room and not confirmed."),
            },
            detail: String::new(),
            mend: Some(super::Chip::new(
                "Confirm them",
                false,
                Command::Go(Here::Survey(at)),
            )),
        })
    }

    /// Where a fixture has less room than is commonly asked for.
    pub(super) fn clearance_rows(&self, room: &Room) -> Vec<Row> {
        let Ok(shape) = site::shape(room) else {
            return Vec::new();
        };
        let found = site::clearances(room, &shape);
        found
            .iter()
            .map(|clearance| Row::Note {
                tone: if clearance.rule.is_some() {
                    Tone::Caution
                } else {
                    Tone::Stop
                },
                text: self.clearance(room, clearance),
                detail: clearance.rule.as_ref().map_or_else(String::new, |rule| {
                    format!("{}; your local code rules", super::words::cite(rule))
                }),
                mend: None,
            })
            .collect()
    }

    fn clearance(&self, room: &Room, found: &Clearance) -> String {
        let fixture = &room.fixtures[found.fixture];
        let name = format!(
            "{} at wall {}",
            fixture.kind.name(),
            Wall::named(fixture.wall)
        );
        let (has, asks) = (self.show(found.has), self.show(found.asks));
        match found.wants {
            Wants::Beside => format!(
                "{name}: {has} from its centre line to what is beside it; {asks} is commonly asked for."
            ),
            Wants::Before => {
                format!("{name}: {has} clear before it; {asks} is commonly asked for.")
            }
            Wants::Inside => format!("{name}: {has} inside; {asks} is commonly asked for."),
            Wants::InItsWall => format!(
                "{name} reaches past the end of its wall ({has}). Check its place and its width."
            ),
            Wants::OfItsOwn => format!("{name} stands in another fixture. Check their places."),
        }
    }

    /// What all rooms come to together.
    pub(super) fn total_rows(&self) -> Vec<Row> {
        if self.job.rooms.len() < 2 {
            return Vec::new();
        }
        let none = square_metres(0.0);
        let (mut floor, mut walls, mut missing) = (none, none, 0);
        for room in &self.job.rooms {
            let known = site::shape(room).ok().filter(|shape| {
                let open =
                    |(_, standing): &(_, site::Standing)| *standing == site::Standing::NotYet;
                !shape.walls.iter().any(open)
            });
            let areas = known
                .as_ref()
                .and_then(|shape| site::wall_areas(room, shape, OpeningRule::Net).ok());
            match (known, areas) {
                (Some(shape), Some(areas)) => {
                    floor += shape.corners.area();
                    for area in areas {
                        walls += area.net;
                    }
                }
                _ => missing += 1,
            }
        }
        let detail = match missing {
            0 => String::new(),
            1 => "1 room is not measured far enough".to_owned(),
            n => format!("{n} rooms are not measured far enough"),
        };
        vec![
            Row::Heading("All rooms together".into()),
            Row::Figure {
                label: "Floors".into(),
                detail: detail.clone(),
                value: self.amount(floor),
                command: None,
            },
            Row::Figure {
                label: "Walls, less openings".into(),
                detail,
                value: self.amount(walls),
                command: None,
            },
        ]
    }
}

/// One choice within a room.
fn in_room(room: &mut Room, choice: &RoomChoice) {
    match *choice {
        RoomChoice::Pass(what, Some(passed)) => room.pass(what, passed),
        RoomChoice::Pass(what, None) => {
            let stands = room.measured(what);
            room.measure(what, stands, None);
        }
        RoomChoice::Confirm(what) => room.confirm(what),
        RoomChoice::ConfirmAll => {
            let carried: Vec<site::What> = room.carried().collect();
            for what in carried {
                room.confirm(what);
            }
        }
        RoomChoice::Estimate(what, more_or_less) => {
            let stands = room.measured(what);
            room.measure(what, stands, more_or_less);
        }
        RoomChoice::ReadsTo(close) => room.survey.reads_to = close,
        RoomChoice::Turn => room.turn(),
        RoomChoice::AddFixed(on, kind) => room.fixed.push(FixedPoint::new(kind, on)),
        RoomChoice::RemoveFixed(at) => room.remove_fixed(at),
        RoomChoice::AddFixture(wall, kind) => room.fixtures.push(Fixture::new(kind, wall)),
        RoomChoice::RemoveFixture(at) => room.remove_fixture(at),
        RoomChoice::AddHidden(on, kind) => {
            let mut hidden = Hidden::new(kind, on);
            hidden.line.push(Spot::default());
            room.hidden.push(hidden);
        }
        RoomChoice::RemoveHidden(at) => room.remove_hidden(at),
        RoomChoice::AddSpot(at) => {
            if let Some(hidden) = room.hidden.get_mut(at) {
                let last = hidden.line.last().copied().unwrap_or_default();
                hidden.line.push(last);
            }
        }
        RoomChoice::Hinge(at, hinge) => {
            if let Some(opening) = room.openings.get_mut(at) {
                opening.hinge = Some(hinge);
            }
        }
        RoomChoice::Much(_)
        | RoomChoice::Short(_)
        | RoomChoice::Exaggerate(_)
        | RoomChoice::Behind(_)
        | RoomChoice::Points(_)
        | RoomChoice::Place(_)
        | RoomChoice::LeastRest(_)
        | RoomChoice::Choose(_)
        | RoomChoice::Outline(_)
        | RoomChoice::Mirror
        | RoomChoice::Second(_) => {}
    }
}
