//! One wall of a room, seen from inside: its openings, studs and finish.

use super::{
    App, Chip, Command, Here, RoomChoice, Row, Screen, Slot, StudsOf, room_page,
    room_page::finishes, view::Big, wall_place,
};
use crate::drawing::{WallTag, from_behind, wall as wall_sketch};
use crate::measure::Angle;
use crate::site::{self, OpeningKind, Wall};
use crate::takeoff::TileOn;
use crate::trades::sheets::Surface;

impl App {
    /// One wall of a room.
    pub(super) fn wall_page(&self, at: usize, index: usize) -> Screen {
        let Some((room, wall)) = self
            .job
            .rooms
            .get(at)
            .and_then(|r| Some((r, r.walls.get(index)?)))
        else {
            return self.rooms_page();
        };
        let on_it = |on: site::On| on == site::On::Wall(index);
        let (points, openings) = (
            room.fixed.iter().any(|point| on_it(point.on)),
            room.openings.iter().any(|opening| opening.wall == index),
        );
        // Figures of both would lie over each other.
        // Those that are being typed are shown.
        let typed = self.pad.as_ref().map(|pad| &pad.slot);
        let show_points = match typed {
            Some(Slot::Measure(_, site::What::Fixed(..))) => points,
            _ => points && (self.rooms_view.points || !openings),
        };
        let mut scene = wall_sketch(room, index, self.job.units);
        scene.dimensions.retain(|dimension| match dimension.tag {
            Some(WallTag::Fixed(..)) => show_points,
            Some(
                WallTag::OpeningFromLeft(_)
                | WallTag::OpeningWidth(_)
                | WallTag::OpeningHeight(_)
                | WallTag::OpeningSill(_),
            ) => !show_points,
            _ => true,
        });
        let mut scene = scene.map_tags(|tag| match tag {
            WallTag::Length => Command::Pad(Slot::WallLength(at, index)),
            WallTag::Height if wall.height.is_some() => Command::Pad(Slot::WallHeight(at, index)),
            WallTag::Height => Command::Pad(Slot::Ceiling(at)),
            WallTag::OpeningFromLeft(opening) => Command::Pad(Slot::OpeningFromLeft(at, opening)),
            WallTag::Opening(n) => Command::Walk(wall_place::all_of_opening(room, at, n)),
            WallTag::Point(n) => Command::Walk(wall_place::all_of_point(room, at, n)),
            WallTag::Fixture(n) => Command::Walk(wall_place::all_of_fixture(at, n)),
            WallTag::OpeningWidth(opening) => Command::Pad(Slot::OpeningWidth(at, opening)),
            WallTag::OpeningHeight(opening) => Command::Pad(Slot::OpeningHeight(at, opening)),
            WallTag::OpeningSill(opening) => Command::Pad(Slot::OpeningSill(at, opening)),
            WallTag::Fixed(point, size) => {
                Command::Pad(Slot::Measure(at, site::What::Fixed(point, size)))
            }
            WallTag::FirstStud | WallTag::StudSpacing => {
                Command::Pad(Slot::FirstStud(StudsOf::Wall(at, index)))
            }
        });
        self.runs_on_wall(at, index, &mut scene);
        self.traces_on_wall(at, index, &mut scene);
        let drawn = site::sketch(room).walls.get(index).copied();
        if let Some((long, _)) = drawn {
            self.pin_on_wall(&mut scene, room, index, long);
        }
        let placing = self.placing(at, index);
        if placing.is_some() {
            App::free_for_a_tap(&mut scene);
        }
        let behind = self.rooms_view.behind;
        let scene = match drawn {
            Some((long, _)) if behind => from_behind(scene, long),
            _ => scene,
        };
        let mut rows = vec![Row::choice(
            "Seen",
            [("From inside", false), ("From behind", true)].map(|(label, side)| {
                let command = Command::Of(at, RoomChoice::Behind(side));
                Chip::new(label, behind == side, command)
            }),
        )];
        let says = placing.and_then(|placing| self.placing_row(at, placing));
        rows.splice(0..0, says);
        if points && openings {
            rows.push(Row::choice(
                "Figures on the drawing",
                [("Openings", false), ("Fixed points", true)].map(|(label, side)| {
                    let command = Command::Of(at, RoomChoice::Points(side));
                    Chip::new(label, show_points == side, command)
                }),
            ));
        }
        rows.extend(self.clash_rows(room));
        rows.extend(self.near_on(room, site::Face::Wall(index)));
        rows.extend([
            self.wall_row(at, index, wall, drawn),
            Row::yours(
                "Ceiling height",
                self.show_or_ask(room.ceiling),
                Command::Pad(Slot::Ceiling(at)),
            ),
            Row::Figure {
                label: "Height of this wall alone".into(),
                detail: "only where it differs".into(),
                value: wall
                    .height
                    .map_or_else(|| "as the ceiling".to_owned(), |h| self.show(h)),
                command: Some(Command::Pad(Slot::WallHeight(at, index))),
            },
        ]);
        for (number, opening) in room
            .openings
            .iter()
            .enumerate()
            .filter(|(_, o)| o.wall == index)
        {
            rows.push(Row::Heading(kind_name(opening.kind).to_owned()));
            rows.push(Row::yours(
                "From left corner",
                self.show_or_ask(opening.from_left),
                Command::Pad(Slot::OpeningFromLeft(at, number)),
            ));
            rows.push(Row::yours(
                "Width",
                self.show_or_ask(opening.width),
                Command::Pad(Slot::OpeningWidth(at, number)),
            ));
            rows.push(Row::yours(
                "Height",
                self.show_or_ask(opening.height),
                Command::Pad(Slot::OpeningHeight(at, number)),
            ));
            if opening.kind != OpeningKind::Door {
                rows.push(Row::yours(
                    "Floor to its lower edge",
                    self.show_or_ask(opening.sill),
                    Command::Pad(Slot::OpeningSill(at, number)),
                ));
            }
            rows.extend(self.hinge_row(at, room, number));
            rows.push(Row::button(
                format!("Remove this {}", kind_name(opening.kind).to_lowercase()),
                Command::RemoveOpening(at, number),
            ));
        }
        rows.push(Row::choice(
            "Add an opening",
            [
                OpeningKind::Door,
                OpeningKind::Window,
                OpeningKind::Niche,
                OpeningKind::PassThrough,
            ]
            .map(|kind| Chip::new(kind_name(kind), false, Command::AddOpening(at, index, kind))),
        ));
        rows.extend(self.item_rows(at, room, index));
        rows.extend(self.stud_rows(StudsOf::Wall(at, index)));
        rows.push(Row::choice(
            "This wall gets",
            finishes(wall.finish, |finish| Command::WallFinish(at, index, finish)),
        ));
        rows.extend(self.wall_hidden_rows(at, index));
        rows.extend(corner_rows(at, index, wall));
        rows.push(Row::Button {
            label: "Patch a hole in this wall".into(),
            main: true,
            command: Command::NewPatch(Some((at, index))),
        });
        rows.push(Row::Button {
            label: "Tile this wall".into(),
            main: true,
            command: Command::NewTile(Some(at), TileOn::Wall(index)),
        });
        rows.push(Row::button(
            "Board this wall in sheets",
            Command::NewSheets(Some(at), TileOn::Wall(index), Surface::Wall),
        ));
        rows.push(Row::button(
            "Run pipe in this wall",
            Command::NewPipe(Some((at, index))),
        ));
        rows.push(Row::button(
            "Remove this wall",
            Command::RemoveWall(at, index),
        ));
        Screen {
            crumb: room.name.clone(),
            title: format!("Wall {}", Wall::named(index)),
            back: Some(Here::Room(at)),
            picture: Some(scene),
            slides: placing.is_some(),
            rows,
            strip: self.wall_strip(at, index),
            ..Screen::default()
        }
    }

    fn wall_strip(&self, at: usize, index: usize) -> Vec<Big> {
        let room = &self.job.rooms[at];
        let Ok(shape) = site::shape(room) else {
            return Vec::new();
        };
        let Ok(areas) = site::wall_areas(room, &shape, site::OpeningRule::Net) else {
            return Vec::new();
        };
        let Some(wall) = areas.get(index) else {
            return Vec::new();
        };
        vec![
            Big {
                value: self.amount(wall.net),
                label: "less openings".into(),
            },
            Big {
                value: self.amount(wall.gross),
                label: "with openings".into(),
            },
        ]
    }
}

/// The corner at a wall's right end, as it is measured inside the room.
fn corner_rows(at: usize, index: usize, wall: &Wall) -> Vec<Row> {
    let usual = [
        ("Inside, 90°", Angle::RIGHT),
        ("Inside, 135°", Angle::degrees(45)),
        ("Juts in, 90°", Angle::LEFT),
    ];
    vec![
        Row::choice(
            "Corner at its right end",
            usual.map(|(label, turn)| {
                Chip::new(
                    label,
                    wall.turn == turn,
                    Command::Corner(at, index, turn.as_microdegrees()),
                )
            }),
        ),
        Row::Figure {
            label: "That corner, inside the room".into(),
            detail: "more than 180° where it juts in".into(),
            value: format!("{}°", room_page::corner(wall.turn)),
            command: Some(Command::Pad(Slot::WallTurn(at, index))),
        },
        Row::choice(
            "More walls at that corner",
            [
                Chip::new("Cut it off, one wall", false, Command::CutCorner(at, index)),
                Chip::new("Let it jut in, two walls", false, Command::Jog(at, index)),
            ],
        ),
    ]
}

/// What an opening is called.
pub(super) fn kind_name(kind: OpeningKind) -> &'static str {
    match kind {
        OpeningKind::Door => "Door",
        OpeningKind::Window => "Window",
        OpeningKind::Niche => "Niche",
        OpeningKind::PassThrough => "Pass-through",
    }
}
