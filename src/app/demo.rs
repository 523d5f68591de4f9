//! The demo job: a lakeside cabin with two washrooms. Its figures are invented.

use chrono::{DateTime, FixedOffset};

use crate::measure::{Length, Units};
use crate::site::{Finish, Opening, OpeningKind, OpeningRule, Room, Studs};
use crate::takeoff::{Ask, Job, TileOn, TrimOn};
use crate::trades::patch::{self, Hole, HoleShape};
use crate::trades::{drain, sheets, tile};

/// The demo job, begun `now`.
#[must_use]
pub fn demo_job(now: DateTime<FixedOffset>) -> Job {
    let mut job = Job::new("Lakeside cabin, demo", now, Units::FeetInches { marks: 16 });
    job.add_room(downstairs());
    job.add_room(upstairs());
    let hole = Hole {
        shape: HoleShape::Rectangle {
            width: Length::in_64(9, 32),
            height: Length::inches(11),
        },
        from_left: Some(Length::in_64(33, 16)),
        from_stud: None,
        above_floor: Some(Length::inches(30)),
    };
    let hole = patch::Ask {
        hole,
        ..patch::Ask::default()
    };
    job.add_task(Some(0), Ask::Patch(Box::new(hole), Some(5)));
    job.add_task(Some(0), Ask::Paint(Box::default(), OpeningRule::Net));
    let mut floor = tile::Ask {
        pattern: tile::Pattern::Bond { over: 1, of: 3 },
        box_of: Some(tile::BoxOf::Tiles(10)),
        ..tile::Ask::default()
    };
    floor.tile.spread = Some(Length::in_64(0, 2));
    job.add_task(Some(0), Ask::Tile(Box::new(floor), TileOn::Floor));
    super::demo_pipes::floor_of(&mut job.rooms[0]);
    for (run, on) in super::demo_pipes::runs(&job.rooms[0]) {
        job.add_task(Some(0), Ask::Pipe(Box::new(run), on));
    }
    for task in &mut job.tasks {
        task.on_list = true;
    }
    // From the shower upstairs to the stack, across the joists.
    let shower = drain::Ask {
        code: drain::Code::Irc,
        run: Length::in_64(76, 32),
        through: drain::Through::Joists {
            first: Length::in_64(9, 32),
            spacing: Length::inches(16),
            depth: Length::in_64(9, 16),
            engineered: false,
        },
        arm: Some(drain::Arm {
            size: drain::Size::Two,
            length: Length::inches(52),
        }),
        ..drain::Ask::default()
    };
    job.add_task(Some(1), Ask::Drain(Box::new(shower)));
    // Two old boxes taken out of the wall, closed with board on backing strips.
    let box_hole = |from_left: i64| Hole {
        shape: HoleShape::Rectangle {
            width: Length::in_64(10, 16),
            height: Length::inches(8),
        },
        from_left: Some(Length::inches(from_left)),
        from_stud: None,
        above_floor: Some(Length::inches(44)),
    };
    let boxes = patch::Ask {
        hole: box_hole(20),
        other_holes: vec![box_hole(66)],
        method: Some(patch::Method::BackedPatch),
        ..patch::Ask::default()
    };
    job.add_task(Some(1), Ask::Patch(Box::new(boxes), Some(0)));
    if let Some(task) = job.tasks.last_mut() {
        task.on_list = true;
    }
    // Cement board under the tile downstairs, and gypsum board on the wall of which the studs are known.
    let under = sheets::Ask::default();
    job.add_task(Some(0), Ask::Sheets(Box::new(under), TileOn::Floor));
    let board = sheets::Ask {
        sheet: (Length::feet(10), Length::feet(4)),
        way: sheets::Way::Up,
        ..sheets::Ask::wall()
    };
    job.add_task(Some(0), Ask::Sheets(Box::new(board), TileOn::Wall(5)));
    // Base round the downstairs washroom, from one side of its door to the other.
    job.add_task(Some(0), Ask::Trim(Box::default(), TrimOn::default()));
    job
}

fn downstairs() -> Room {
    let mut room = Room::l_shape("Washroom, downstairs");
    let lengths = [
        Length::inches(88),
        Length::inches(50),
        Length::inches(34),
        Length::in_64(12, 32),
        Length::inches(54),
        Length::in_64(62, 32),
    ];
    for (wall, length) in room.walls.iter_mut().zip(lengths) {
        wall.length = Some(length);
    }
    room.ceiling = Some(Length::inches(97));
    if let Some(wall) = room.walls.get_mut(5) {
        wall.studs = Some(Studs::Spaced {
            first: Length::inches(16),
            spacing: Length::inches(16),
            face: Length::in_64(1, 32),
        });
    }
    room.openings = vec![
        opening(OpeningKind::Door, 4, [12, 30, 80, 0]),
        opening(OpeningKind::Window, 0, [48, 24, 30, 48]),
    ];
    room.floor_finish = Finish::Tile;
    room
}

fn upstairs() -> Room {
    let mut room = Room::rectangle("Washroom, upstairs");
    for (wall, length) in room
        .walls
        .iter_mut()
        .zip([Length::inches(96), Length::inches(60)])
    {
        wall.length = Some(length);
    }
    room.ceiling = Some(Length::inches(92));
    room
}

fn opening(kind: OpeningKind, wall: usize, [from_left, width, height, sill]: [i64; 4]) -> Opening {
    let inches = |n| Some(Length::inches(n));
    Opening {
        kind,
        wall,
        from_left: inches(from_left),
        width: inches(width),
        height: inches(height),
        sill: inches(sill),
        hinge: None,
    }
}
