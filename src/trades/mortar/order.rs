//! The order of mortar work: a bed, and its cure; tile or board into a combed bed.

use super::{Ask, Under, Work as For};
use crate::handbook::Cite;
use crate::trades::{Order, Work};

/// Beds and mixes differ.
static CURE: Cite =
    Cite::practice("how long a bed cures stands on its bag; a mix of your own has no figure here");

/// The steps of the work.
pub(super) fn order(ask: &Ask) -> Vec<Order> {
    match &ask.work {
        For::Setting(setting) => match setting.under {
            Under::Tile { .. } => vec![Order::of(
                Work::SetTile,
                "Comb the mortar and set the tile, batch by batch; lift one now and then and look at its back.",
                setting_cite(setting.place, setting.stone),
            )],
            Under::Board => vec![Order::of(
                Work::Bed,
                "Comb the mortar and bed the backer board in it while it is wet, then screw it.",
                crate::handbook::mortar::UNDER_BOARD.cite,
            )],
        },
        For::Bed(..) => vec![
            Order::of(
                Work::Bed,
                "Pack the bed and screed it to its fall.",
                Cite::practice("a bed is packed and screeded in one go"),
            ),
            Order::wait("Let the bed cure as long as its bag says.", None, CURE),
        ],
        For::Volume(..) => Vec::new(),
    }
}

/// Where the contact that is looked for stands.
fn setting_cite(place: super::Place, stone: bool) -> Cite {
    use crate::handbook::mortar::{CONTACT_DRY, CONTACT_STONE, CONTACT_WET};
    match (stone, place) {
        (true, _) => CONTACT_STONE.cite,
        (false, super::Place::Wet) => CONTACT_WET.cite,
        (false, super::Place::Dry) => CONTACT_DRY.cite,
    }
}
