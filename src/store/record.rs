//! Rooms, the shelf and the settings as records: the same in formats 1 and 2.
//!
//! Fields are only ever appended in a new format; codes of choices are only ever added.

use std::path::PathBuf;

use serde::{Deserialize, Serialize, de::DeserializeOwned};

use super::record_fixed::{FixedRecord, read_fixed, write_fixed};
use super::record_joists::{JoistsRecord, read_joists, write_joists};
use super::record_survey::{SurveyRecord, read_survey, write_survey};
use super::{PhotoPrefs, Prefs};
use crate::measure::{Angle, Length, Units};
use crate::site::{Finish, Id, Opening, OpeningKind, Room, Studs, Survey, Wall};

#[derive(Serialize, Deserialize)]
pub(super) struct RoomRecord {
    name: String,
    walls: Vec<WallRecord>,
    ceiling: Option<i64>,
    openings: Vec<OpeningRecord>,
    ceiling_finish: u8,
    floor_finish: u8,
}

#[derive(Serialize, Deserialize)]
struct WallRecord {
    length: Option<i64>,
    sketched: i64,
    turn: i64,
    height: Option<i64>,
    studs: Option<StudsRecord>,
    finish: u8,
}

#[derive(Serialize, Deserialize)]
pub(super) enum StudsRecord {
    Spaced { first: i64, spacing: i64, face: i64 },
    Found { centres: Vec<i64>, face: i64 },
}

#[derive(Serialize, Deserialize)]
struct OpeningRecord {
    kind: u8,
    wall: u32,
    from_left: Option<i64>,
    width: Option<i64>,
    height: Option<i64>,
    sill: Option<i64>,
}

pub(super) fn write<T: Serialize>(record: &T) -> Vec<u8> {
    postcard::to_stdvec(record)
        .expect("records hold nothing that postcard cannot write: no maps of unknown length")
}

pub(super) fn read<T: DeserializeOwned>(bytes: &[u8]) -> Option<T> {
    let (record, rest) = postcard::take_from_bytes(bytes).ok()?;
    rest.is_empty().then_some(record)
}

/// A length within what is measured on a site.
pub(super) fn length(nm: i64) -> Option<Length> {
    (nm.unsigned_abs() <= Length::LONGEST.as_nm().unsigned_abs()).then(|| Length::nm(nm))
}

/// A length that may not be there.
pub(super) fn maybe(nm: Option<i64>) -> Option<Option<Length>> {
    nm.map_or(Some(None), |nm| length(nm).map(Some))
}

/// A list of which every part reads.
pub(super) fn all<T, U>(list: Vec<T>, read: impl Fn(T) -> Option<U>) -> Option<Vec<U>> {
    list.into_iter().map(read).collect()
}

/// The place of a choice in its list of codes.
pub(super) fn code<T: PartialEq>(choices: &[T], choice: &T) -> u8 {
    choices
        .iter()
        .position(|c| c == choice)
        .and_then(|at| u8::try_from(at).ok())
        .unwrap_or(u8::MAX)
}

/// The choice that stands at a place in its list of codes.
pub(super) fn choice<T: Copy>(choices: &[T], code: u8) -> Option<T> {
    choices.get(usize::from(code)).copied()
}

const FINISHES: [Finish; 4] = [Finish::Paint, Finish::Tile, Finish::Boards, Finish::Leave];
const OPENINGS: [OpeningKind; 4] = [
    OpeningKind::Door,
    OpeningKind::Window,
    OpeningKind::Niche,
    OpeningKind::PassThrough,
];

pub(super) fn write_studs(studs: &Studs) -> StudsRecord {
    match studs {
        Studs::Spaced {
            first,
            spacing,
            face,
        } => StudsRecord::Spaced {
            first: first.as_nm(),
            spacing: spacing.as_nm(),
            face: face.as_nm(),
        },
        Studs::Found { centres, face } => StudsRecord::Found {
            centres: centres.iter().map(|c| c.as_nm()).collect(),
            face: face.as_nm(),
        },
    }
}

pub(super) fn read_studs(record: StudsRecord) -> Option<Studs> {
    Some(match record {
        StudsRecord::Spaced {
            first,
            spacing,
            face,
        } => Studs::Spaced {
            first: length(first)?,
            spacing: length(spacing)?,
            face: length(face)?,
        },
        StudsRecord::Found { centres, face } => Studs::Found {
            centres: all(centres, length)?,
            face: length(face)?,
        },
    })
}

pub(super) fn write_room(room: &Room) -> RoomRecord {
    let nm = |length: Option<Length>| length.map(Length::as_nm);
    RoomRecord {
        name: room.name.clone(),
        walls: room
            .walls
            .iter()
            .map(|wall| WallRecord {
                length: nm(wall.length),
                sketched: wall.sketched.as_nm(),
                turn: wall.turn.as_microdegrees(),
                height: nm(wall.height),
                studs: wall.studs.as_ref().map(write_studs),
                finish: code(&FINISHES, &wall.finish),
            })
            .collect(),
        ceiling: nm(room.ceiling),
        openings: room
            .openings
            .iter()
            .map(|o| OpeningRecord {
                kind: code(&OPENINGS, &o.kind),
                wall: u32::try_from(o.wall).unwrap_or(u32::MAX),
                from_left: nm(o.from_left),
                width: nm(o.width),
                height: nm(o.height),
                sill: nm(o.sill),
            })
            .collect(),
        ceiling_finish: code(&FINISHES, &room.ceiling_finish),
        floor_finish: code(&FINISHES, &room.floor_finish),
    }
}

pub(super) fn read_room(record: RoomRecord) -> Option<Room> {
    let finish = |code: u8| FINISHES.get(usize::from(code)).copied();
    let walls = all(record.walls, |wall| {
        Some(Wall {
            length: maybe(wall.length)?,
            sketched: length(wall.sketched)?,
            turn: (wall.turn.unsigned_abs() <= 3_600_000_000)
                .then(|| Angle::microdegrees(wall.turn))?,
            height: maybe(wall.height)?,
            studs: match wall.studs {
                Some(studs) => Some(read_studs(studs)?),
                None => None,
            },
            finish: finish(wall.finish)?,
        })
    })?;
    let openings = all(record.openings, |o| {
        Some(Opening {
            kind: OPENINGS.get(usize::from(o.kind)).copied()?,
            wall: usize::try_from(o.wall)
                .ok()
                .filter(|wall| *wall < walls.len())?,
            from_left: maybe(o.from_left)?,
            width: maybe(o.width)?,
            height: maybe(o.height)?,
            sill: maybe(o.sill)?,
            hinge: None,
        })
    })?;
    Some(Room {
        id: Id::NONE,
        name: record.name,
        walls,
        ceiling: maybe(record.ceiling)?,
        openings,
        ceiling_finish: finish(record.ceiling_finish)?,
        floor_finish: finish(record.floor_finish)?,
        fixed: Vec::new(),
        hidden: Vec::new(),
        fixtures: Vec::new(),
        survey: Survey::default(),
        facing: 0,
        joists: None,
    })
}

pub(super) fn write_units(units: Units) -> (u8, u8) {
    match units {
        Units::FeetInches { marks } => (0, marks),
        Units::DecimalInches => (1, 0),
        Units::Millimetres => (2, 0),
        Units::Centimetres => (3, 0),
        Units::Metres => (4, 0),
    }
}

pub(super) fn read_units(record: (u8, u8)) -> Option<Units> {
    Some(match record {
        (0, marks) if [2, 4, 8, 16, 32, 64].contains(&marks) => Units::FeetInches { marks },
        (1, _) => Units::DecimalInches,
        (2, _) => Units::Millimetres,
        (3, _) => Units::Centimetres,
        (4, _) => Units::Metres,
        _ => return None,
    })
}

/// Rooms as the body of a file: their records, and what is fixed in each.
pub(super) fn write_rooms(rooms: &[Room]) -> Vec<u8> {
    let records: Vec<_> = rooms.iter().map(write_room).collect();
    let fixed: Vec<_> = rooms.iter().map(write_fixed).collect();
    let said: Vec<_> = rooms.iter().map(write_survey).collect();
    let joists: Vec<_> = rooms.iter().map(write_joists).collect();
    write(&(records, fixed, said, joists))
}

/// Rooms from the body of a file; the first files ended with the rooms, later ones before their joists.
pub(super) fn read_rooms(bytes: &[u8]) -> Option<Vec<Room>> {
    type Fixed = Vec<Option<FixedRecord>>;
    type Said = Vec<Option<SurveyRecord>>;
    type Now = (Vec<RoomRecord>, Fixed, Said, Vec<Option<JoistsRecord>>);
    type Before = (Vec<RoomRecord>, Fixed, Said);
    let before = || {
        let (rooms, fixed, said) = read::<Before>(bytes)?;
        Some((rooms, fixed, said, Vec::new()))
    };
    let Some((rooms, fixed, said, joists)) = read::<Now>(bytes).or_else(before) else {
        return all(read::<Vec<RoomRecord>>(bytes)?, read_room);
    };
    let mut rooms = all(rooms, read_room)?;
    for (room, joists) in rooms.iter_mut().zip(joists) {
        room.joists = match joists {
            Some(joists) => Some(read_joists(joists)?),
            None => None,
        };
    }
    for (room, (fixed, said)) in rooms.iter_mut().zip(fixed.into_iter().zip(said)) {
        if let Some(fixed) = fixed {
            read_fixed(fixed)?.into_room(room);
        }
        if let Some(said) = said {
            read_survey(said)?.into_room(room);
        }
    }
    Some(rooms)
}

/// A path as bytes: on Unix any path, elsewhere as text.
fn write_path(path: &std::path::Path) -> Vec<u8> {
    #[cfg(unix)]
    return std::os::unix::ffi::OsStrExt::as_bytes(path.as_os_str()).to_vec();
    #[cfg(not(unix))]
    return path.to_string_lossy().into_owned().into_bytes();
}

fn read_path(bytes: Vec<u8>) -> PathBuf {
    #[cfg(unix)]
    return PathBuf::from(<std::ffi::OsString as std::os::unix::ffi::OsStringExt>::from_vec(bytes));
    #[cfg(not(unix))]
    return PathBuf::from(String::from_utf8_lossy(&bytes).into_owned());
}

/// How the program looks as the body of a file.
pub(super) fn write_prefs(prefs: &Prefs) -> Vec<u8> {
    let last = prefs.last.as_deref().map(write_path);
    let photos = &prefs.photos;
    let more: PhotoPrefsRecord = (
        photos.camera.clone(),
        photos.watched.as_deref().map(write_path),
        photos.clear.map(Length::as_nm),
    );
    write(&(prefs.theme, prefs.text, last, prefs.device, more))
}

/// The camera's command, its folder, how near is too near.
type PhotoPrefsRecord = (String, Option<Vec<u8>>, Option<i64>);

/// How the program looks from the body of a file; format 1 had no number of the device, and none had a camera.
pub(super) fn read_prefs(bytes: &[u8]) -> Option<Prefs> {
    type Now = (u8, u16, Option<Vec<u8>>, u64, PhotoPrefsRecord);
    type Second = (u8, u16, Option<Vec<u8>>, u64);
    type First = (u8, u16, Option<String>);
    let second = || {
        let (theme, text, last, device) = read::<Second>(bytes)?;
        Some((theme, text, last, device, PhotoPrefsRecord::default()))
    };
    let first = || {
        let (theme, text, last) = read::<First>(bytes)?;
        let last = last.map(String::into_bytes);
        Some((theme, text, last, 0, PhotoPrefsRecord::default()))
    };
    let now = read::<Now>(bytes).or_else(second).or_else(first)?;
    let (theme, text, last, device, (camera, watched, clear)) = now;
    Some(Prefs {
        theme,
        text,
        last: last.map(read_path),
        device,
        photos: PhotoPrefs {
            camera,
            watched: watched.map(read_path),
            clear: maybe(clear)?,
        },
    })
}
