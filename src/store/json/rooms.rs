//! Rooms in JSON.

use serde::{Deserialize, Serialize};

use super::fixed::{
    FixedJson, HiddenJson, HingeJson, read_fixed, read_hidden, read_hinge, write_fixed,
    write_hidden, write_hinge,
};
use super::survey::{
    FixtureJson, SurveyJson, read_fixture, read_survey, write_fixture, write_survey,
};
use super::words::{Hex, Nm, Udeg, Word};
use super::{JsonError, at};
use crate::measure::Length;
use crate::site::{Finish, Joists, Opening, OpeningKind, Room, Studs, Wall};

#[derive(Serialize, Deserialize)]
pub(super) struct RoomJson {
    #[serde(default = "Hex::fresh")]
    pub id: Hex,
    name: String,
    walls: Vec<WallJson>,
    ceiling_nm: Option<Nm>,
    #[serde(default)]
    openings: Vec<OpeningJson>,
    #[serde(default)]
    ceiling_finish: Word<Finish>,
    #[serde(default)]
    floor_finish: Word<Finish>,
    #[serde(default)]
    fixed: Vec<FixedJson>,
    #[serde(default)]
    hidden: Vec<HiddenJson>,
    #[serde(default)]
    fixtures: Vec<FixtureJson>,
    #[serde(default)]
    survey: SurveyJson,
    #[serde(default)]
    quarter_turns: u8,
    joists: Option<JoistsJson>,
}

/// The joists under its floor.
#[derive(Serialize, Deserialize)]
struct JoistsJson {
    /// Counted from 0.
    wall: usize,
    first_nm: Nm,
    spacing_nm: Nm,
    face_nm: Nm,
    depth_nm: Nm,
    deck_nm: Nm,
    #[serde(default)]
    engineered: bool,
}

fn write_joists(joists: Joists) -> JoistsJson {
    JoistsJson {
        wall: joists.wall,
        first_nm: Nm(joists.first),
        spacing_nm: Nm(joists.spacing),
        face_nm: Nm(joists.face),
        depth_nm: Nm(joists.depth),
        deck_nm: Nm(joists.deck),
        engineered: joists.engineered,
    }
}

fn read_joists(joists: &JoistsJson) -> Joists {
    Joists {
        wall: joists.wall,
        first: joists.first_nm.0,
        spacing: joists.spacing_nm.0,
        face: joists.face_nm.0,
        depth: joists.depth_nm.0,
        deck: joists.deck_nm.0,
        engineered: joists.engineered,
    }
}

#[derive(Serialize, Deserialize)]
struct WallJson {
    length_nm: Option<Nm>,
    sketched_nm: Nm,
    turn_udeg: Udeg,
    height_nm: Option<Nm>,
    studs: Option<StudsJson>,
    #[serde(default)]
    finish: Word<Finish>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum StudsJson {
    Spaced {
        first_nm: Nm,
        spacing_nm: Nm,
        face_nm: Nm,
    },
    Found {
        centres_nm: Vec<Nm>,
        face_nm: Nm,
    },
}

#[derive(Serialize, Deserialize)]
struct OpeningJson {
    kind: Word<OpeningKind>,
    /// Counted from 0.
    wall: usize,
    from_left_nm: Option<Nm>,
    width_nm: Option<Nm>,
    height_nm: Option<Nm>,
    sill_nm: Option<Nm>,
    hinge: Option<HingeJson>,
}

pub(super) fn nm(length: Option<Length>) -> Option<Nm> {
    length.map(Nm)
}
pub(super) fn length(nm: Option<Nm>) -> Option<Length> {
    nm.map(|nm| nm.0)
}

pub(super) fn write_studs(studs: &Studs) -> StudsJson {
    match studs {
        Studs::Spaced {
            first,
            spacing,
            face,
        } => StudsJson::Spaced {
            first_nm: Nm(*first),
            spacing_nm: Nm(*spacing),
            face_nm: Nm(*face),
        },
        Studs::Found { centres, face } => StudsJson::Found {
            centres_nm: centres.iter().copied().map(Nm).collect(),
            face_nm: Nm(*face),
        },
    }
}

pub(super) fn read_studs(studs: StudsJson) -> Studs {
    match studs {
        StudsJson::Spaced {
            first_nm,
            spacing_nm,
            face_nm,
        } => Studs::Spaced {
            first: first_nm.0,
            spacing: spacing_nm.0,
            face: face_nm.0,
        },
        StudsJson::Found {
            centres_nm,
            face_nm,
        } => Studs::Found {
            centres: centres_nm.into_iter().map(|at| at.0).collect(),
            face: face_nm.0,
        },
    }
}

pub(super) fn write_room(room: &Room) -> RoomJson {
    let wall = |wall: &Wall| WallJson {
        length_nm: nm(wall.length),
        sketched_nm: Nm(wall.sketched),
        turn_udeg: Udeg(wall.turn),
        height_nm: nm(wall.height),
        studs: wall.studs.as_ref().map(write_studs),
        finish: Word(wall.finish),
    };
    let opening = |opening: &Opening| OpeningJson {
        kind: Word(opening.kind),
        wall: opening.wall,
        from_left_nm: nm(opening.from_left),
        width_nm: nm(opening.width),
        height_nm: nm(opening.height),
        sill_nm: nm(opening.sill),
        hinge: opening.hinge.map(write_hinge),
    };
    RoomJson {
        id: Hex(room.id.0),
        name: room.name.clone(),
        walls: room.walls.iter().map(wall).collect(),
        ceiling_nm: nm(room.ceiling),
        openings: room.openings.iter().map(opening).collect(),
        ceiling_finish: Word(room.ceiling_finish),
        floor_finish: Word(room.floor_finish),
        fixed: room.fixed.iter().map(write_fixed).collect(),
        hidden: room.hidden.iter().map(write_hidden).collect(),
        fixtures: room.fixtures.iter().map(write_fixture).collect(),
        survey: write_survey(&room.survey),
        quarter_turns: room.facing,
        joists: room.joists.map(write_joists),
    }
}

/// Whether what a list of a room is on is there.
fn no_such_wall(
    place: usize,
    list: &str,
    mut walls: impl Iterator<Item = usize>,
    count: usize,
) -> Result<(), JsonError> {
    match walls.position(|wall| wall >= count) {
        None => Ok(()),
        Some(entry) => {
            let path = format!("rooms[{place}].{list}[{entry}].wall");
            Err(at(path, "no such wall"))
        }
    }
}

/// A room, the `place`th of its job.
pub(super) fn read_room(place: usize, room: RoomJson) -> Result<Room, JsonError> {
    let wall = |wall: WallJson| Wall {
        length: length(wall.length_nm),
        sketched: wall.sketched_nm.0,
        turn: wall.turn_udeg.0,
        height: length(wall.height_nm),
        studs: wall.studs.map(read_studs),
        finish: wall.finish.0,
    };
    let walls: Vec<Wall> = room.walls.into_iter().map(wall).collect();
    let openings = room.openings.iter().map(|o| o.wall);
    no_such_wall(place, "openings", openings, walls.len())?;
    let fixed = room.fixed.iter().map(|point| point.wall);
    no_such_wall(place, "fixed", fixed, walls.len())?;
    let hidden = room.hidden.iter().map(|hidden| hidden.wall);
    no_such_wall(place, "hidden", hidden, walls.len())?;
    let fixtures = room.fixtures.iter().map(|fixture| fixture.wall);
    no_such_wall(place, "fixtures", fixtures, walls.len())?;
    if room
        .joists
        .as_ref()
        .is_some_and(|joists| joists.wall >= walls.len())
    {
        return Err(at(format!("rooms[{place}].joists.wall"), "no such wall"));
    }
    let opening = |opening: OpeningJson| Opening {
        kind: opening.kind.0,
        wall: opening.wall,
        from_left: length(opening.from_left_nm),
        width: length(opening.width_nm),
        height: length(opening.height_nm),
        sill: length(opening.sill_nm),
        hinge: opening.hinge.map(read_hinge),
    };
    Ok(Room {
        id: room.id.id(),
        name: room.name,
        walls,
        ceiling: length(room.ceiling_nm),
        openings: room.openings.into_iter().map(opening).collect(),
        ceiling_finish: room.ceiling_finish.0,
        floor_finish: room.floor_finish.0,
        fixed: room.fixed.into_iter().map(read_fixed).collect(),
        hidden: room.hidden.into_iter().map(read_hidden).collect(),
        fixtures: room.fixtures.into_iter().map(read_fixture).collect(),
        survey: read_survey(room.survey),
        facing: room.quarter_turns % 4,
        joists: room.joists.as_ref().map(read_joists),
    })
}
