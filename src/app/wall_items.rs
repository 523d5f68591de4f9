//! What is on and behind a wall, as rows: fixed points, fixtures, hidden things, and how a door hangs.

use super::{App, Chip, Command, NoteOf, Placing, RoomChoice, Row, Slot};
use crate::measure::Length;
use crate::site::{
    FixedKind, FixtureKind, HiddenKind, Hinge, Known, On, OpeningKind, Room, Side, Size, What,
};
use crate::takeoff::Job;

impl App {
    /// A figure of something in a room, with how it stands.
    fn item_row(&self, at: usize, room: &Room, label: &str, what: What) -> Row {
        let mark = room.mark(what);
        let detail = match (mark.carried, mark.estimate) {
            (true, _) => "carried over".to_owned(),
            (false, Some(more_or_less)) => format!("± {}", self.show(more_or_less)),
            _ => String::new(),
        };
        Row::Figure {
            label: label.into(),
            detail,
            value: self.show_or_ask(room.measured(what)),
            command: Some(Command::Pad(Slot::Measure(at, what))),
        }
    }

    /// A size that need not be known.
    fn maybe_row(&self, at: usize, room: &Room, label: &str, what: What) -> Row {
        let value = room.measured(what).map(|length| self.show(length));
        Row::yours(
            label,
            value.unwrap_or_else(|| "not given".into()),
            Command::Pad(Slot::Measure(at, what)),
        )
    }

    /// Fixed points, fixtures and hidden things of one wall, and of the floor before it.
    pub(super) fn item_rows(&self, at: usize, room: &Room, wall: usize) -> Vec<Row> {
        let of = |choice| Command::Of(at, choice);
        let mut rows = Vec::new();
        let fixed = room.fixed.iter().enumerate();
        for (n, point) in fixed.filter(|(_, point)| point.on.wall() == wall) {
            let floor = matches!(point.on, On::Floor(_));
            let place = if floor { ", on the floor" } else { "" };
            rows.push(Row::Heading(format!("{}{place}", point.kind.name())));
            rows.extend(self.place_row(at, room, Placing::Fixed(n)));
            let across = "Left corner to its centre";
            rows.push(self.item_row(at, room, across, What::Fixed(n, Size::FromLeft)));
            let up = if floor {
                "Wall to its centre"
            } else {
                "Floor to its centre"
            };
            rows.push(self.item_row(at, room, up, What::Fixed(n, Size::Up)));
            rows.push(self.maybe_row(at, room, "Width", What::Fixed(n, Size::Width)));
            rows.push(self.maybe_row(at, room, "Height", What::Fixed(n, Size::Height)));
            rows.push(self.maybe_row(at, room, "Behind the face", What::Fixed(n, Size::Depth)));
            if let Known::Picture(more_or_less) = point.known {
                rows.push(Row::ours(
                    "From a picture",
                    format!("± {}", self.show(more_or_less)),
                ));
            }
            rows.push(self.note_row(at, &point.note, NoteOf::Fixed(n)));
            rows.push(Row::button(
                format!("Remove this {}", point.kind.name().to_lowercase()),
                of(RoomChoice::RemoveFixed(n)),
            ));
        }
        rows.push(Row::choice(
            "Add a fixed point on this wall",
            FixedKind::ALL.map(|kind| {
                Chip::new(
                    kind.name(),
                    false,
                    of(RoomChoice::AddFixed(On::Wall(wall), kind)),
                )
            }),
        ));
        rows.push(Row::choice(
            "Add one on the floor before it",
            [
                FixedKind::Drain,
                FixedKind::Hot,
                FixedKind::Cold,
                FixedKind::Heat,
                FixedKind::Other,
            ]
            .map(|kind| {
                Chip::new(
                    kind.name(),
                    false,
                    of(RoomChoice::AddFixed(On::Floor(wall), kind)),
                )
            }),
        ));
        let fixtures = room.fixtures.iter().enumerate();
        for (n, fixture) in fixtures.filter(|(_, fixture)| fixture.wall == wall) {
            rows.push(Row::Heading(fixture.kind.name().into()));
            for (label, size) in [
                ("Left corner to its middle", Size::FromLeft),
                ("Its width", Size::Width),
                ("Back to front", Size::Depth),
            ] {
                rows.push(self.item_row(at, room, label, What::Fixture(n, size)));
            }
            rows.push(self.maybe_row(at, room, "Its height", What::Fixture(n, Size::Height)));
            rows.push(self.maybe_row(at, room, "Gap behind it", What::Fixture(n, Size::Up)));
            rows.push(self.note_row(at, &fixture.note, NoteOf::Fixture(n)));
            rows.push(Row::button(
                format!("Remove this {}", fixture.kind.name().to_lowercase()),
                of(RoomChoice::RemoveFixture(n)),
            ));
        }
        rows.push(Row::choice(
            "Add a fixture against it",
            FixtureKind::ALL
                .map(|kind| Chip::new(kind.name(), false, of(RoomChoice::AddFixture(wall, kind)))),
        ));
        rows.extend(self.hidden_rows(at, room, wall));
        rows
    }

    /// What is behind the board of one wall.
    fn hidden_rows(&self, at: usize, room: &Room, wall: usize) -> Vec<Row> {
        let of = |choice| Command::Of(at, choice);
        let mut rows = Vec::new();
        let hidden = room.hidden.iter().enumerate();
        for (n, item) in hidden.filter(|(_, item)| item.on.wall() == wall) {
            let place = match item.on {
                On::Wall(_) => "Hidden",
                On::Floor(_) => "Under the floor",
            };
            rows.push(Row::Heading(format!(
                "{place}: {}",
                item.kind.name().to_lowercase()
            )));
            rows.extend(self.place_row(at, room, Placing::Hidden(n)));
            for (place, spot) in item.line.iter().enumerate() {
                let label = |what| format!("Place {}, {what}", place + 1);
                rows.push(Row::yours(
                    label("from left corner"),
                    self.show(spot.from_left),
                    Command::Pad(Slot::Spot(at, n, place, Size::FromLeft)),
                ));
                rows.push(Row::yours(
                    label("up from the floor"),
                    self.show(spot.up),
                    Command::Pad(Slot::Spot(at, n, place, Size::Up)),
                ));
            }
            rows.push(Row::yours(
                "Behind the face",
                item.depth
                    .map_or_else(|| "not given".into(), |depth| self.show(depth)),
                Command::Pad(Slot::HiddenDepth(at, n)),
            ));
            rows.push(self.note_row(at, &item.material, NoteOf::Material(n)));
            rows.push(self.note_row(at, &item.note, NoteOf::Hidden(n)));
            if let Known::Picture(more_or_less) = item.known {
                rows.push(Row::ours(
                    "From a picture",
                    format!("± {}", self.show(more_or_less)),
                ));
            }
            rows.push(Row::choice(
                "This line",
                [
                    Chip::new("One place more", false, of(RoomChoice::AddSpot(n))),
                    Chip::new("Remove it", false, of(RoomChoice::RemoveHidden(n))),
                ],
            ));
        }
        rows.push(Row::choice(
            "Add something under the floor before it",
            [HiddenKind::Pipe, HiddenKind::Duct, HiddenKind::Cable].map(|kind| {
                let command = of(RoomChoice::AddHidden(On::Floor(wall), kind));
                Chip::new(format!("{} below", kind.name()), false, command)
            }),
        ));
        rows.push(Row::choice(
            "Add something behind it",
            HiddenKind::LIST.map(|kind| {
                Chip::new(
                    kind.name(),
                    false,
                    of(RoomChoice::AddHidden(On::Wall(wall), kind)),
                )
            }),
        ));
        rows
    }

    fn note_row(&self, at: usize, text: &str, of: NoteOf) -> Row {
        let label = match of {
            NoteOf::Material(_) => "Made of",
            _ => "Note",
        };
        let value = if text.is_empty() { "not given" } else { text };
        Row::yours(label, value, Command::Pad(Slot::RoomNote(at, of)))
    }

    /// How a door hangs.
    pub(super) fn hinge_row(&self, at: usize, room: &Room, opening: usize) -> Option<Row> {
        let door = room.openings.get(opening)?;
        (door.kind == OpeningKind::Door).then(|| {
            let chip = |label: &str, side, out| {
                let hinge = Hinge { side, out };
                let command = Command::Of(at, RoomChoice::Hinge(opening, hinge));
                Chip::new(label, door.hinge == Some(hinge), command)
            };
            Row::choice(
                "Hinges, seen from inside",
                [
                    chip("Left, opens in", Side::Left, false),
                    chip("Right, opens in", Side::Right, false),
                    chip("Left, opens out", Side::Left, true),
                    chip("Right, opens out", Side::Right, true),
                ],
            )
        })
    }

    /// Words about something in a room.
    pub(super) fn room_note(&self, at: usize, of: NoteOf) -> String {
        let note = self.job.rooms.get(at).and_then(|room| match of {
            NoteOf::Fixed(n) => room.fixed.get(n).map(|point| point.note.clone()),
            NoteOf::Hidden(n) => room.hidden.get(n).map(|item| item.note.clone()),
            NoteOf::Material(n) => room.hidden.get(n).map(|item| item.material.clone()),
            NoteOf::Fixture(n) => room.fixtures.get(n).map(|fixture| fixture.note.clone()),
        });
        note.unwrap_or_default()
    }

    /// A figure of something hidden.
    pub(super) fn hidden_field(&self, slot: &Slot) -> Option<Length> {
        match slot {
            Slot::Spot(at, n, place, size) => {
                let spot = self.job.rooms.get(*at)?.hidden.get(*n)?.line.get(*place)?;
                Some(if *size == Size::FromLeft {
                    spot.from_left
                } else {
                    spot.up
                })
            }
            Slot::HiddenDepth(at, n) => self.job.rooms.get(*at)?.hidden.get(*n)?.depth,
            _ => None,
        }
    }
}

/// A length into something hidden.
pub(super) fn fill(job: &mut Job, slot: &Slot, length: Length) {
    match slot {
        Slot::Spot(at, n, place, size) => {
            let item = job
                .rooms
                .get_mut(*at)
                .and_then(|room| room.hidden.get_mut(*n));
            if let Some(spot) = item.and_then(|item| item.line.get_mut(*place)) {
                if *size == Size::FromLeft {
                    spot.from_left = length;
                } else {
                    spot.up = length;
                }
            }
        }
        Slot::HiddenDepth(at, n) => {
            if let Some(item) = job
                .rooms
                .get_mut(*at)
                .and_then(|room| room.hidden.get_mut(*n))
            {
                item.depth = Some(length);
            }
        }
        _ => {}
    }
}

/// Words about something in a room.
pub(super) fn fill_words(job: &mut Job, at: usize, of: NoteOf, text: String) {
    let Some(room) = job.rooms.get_mut(at) else {
        return;
    };
    let place = match of {
        NoteOf::Fixed(n) => room.fixed.get_mut(n).map(|point| &mut point.note),
        NoteOf::Hidden(n) => room.hidden.get_mut(n).map(|item| &mut item.note),
        NoteOf::Material(n) => room.hidden.get_mut(n).map(|item| &mut item.material),
        NoteOf::Fixture(n) => room.fixtures.get_mut(n).map(|fixture| &mut fixture.note),
    };
    if let Some(place) = place {
        *place = text;
    }
}
