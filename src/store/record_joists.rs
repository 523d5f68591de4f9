//! The joists under a room's floor as a record of its own beside the room.

use serde::{Deserialize, Serialize};

use super::record::length;
use crate::site::{Joists, Room};

#[derive(Serialize, Deserialize)]
pub(super) struct JoistsRecord {
    wall: u32,
    /// First, spacing, face, depth, deck.
    lengths: [i64; 5],
    engineered: bool,
}

/// A room's; `None` where they are not known, as in every file before there was this.
pub(super) fn write_joists(room: &Room) -> Option<JoistsRecord> {
    let joists = room.joists?;
    Some(JoistsRecord {
        wall: u32::try_from(joists.wall).unwrap_or(u32::MAX),
        lengths: [
            joists.first,
            joists.spacing,
            joists.face,
            joists.depth,
            joists.deck,
        ]
        .map(crate::measure::Length::as_nm),
        engineered: joists.engineered,
    })
}

pub(super) fn read_joists(record: JoistsRecord) -> Option<Joists> {
    let [first, spacing, face, depth, deck] = record.lengths;
    Some(Joists {
        wall: record.wall as usize,
        first: length(first)?,
        spacing: length(spacing)?,
        face: length(face)?,
        depth: length(depth)?,
        deck: length(deck)?,
        engineered: record.engineered,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Length;
    use crate::store::record::{read, write};

    #[test]
    fn joists_come_back_as_they_were() {
        let mut room = Room::rectangle("a");
        assert!(write_joists(&room).is_none());
        room.joists = Some(Joists {
            engineered: true,
            first: Length::mm(77),
            ..Joists::along(3)
        });
        let bytes = write(&write_joists(&room).expect("known"));
        assert_eq!(read(&bytes).and_then(read_joists), room.joists);
        let mut record = write_joists(&room).expect("known");
        record.lengths[3] = i64::MAX;
        assert!(read_joists(record).is_none());
    }
}
