//! What can hurt, said beside the result that it belongs to.
//!
//! A caution names the danger, says what to do, and leaves the ruling to the local code and to licensed people.

use super::{Cite, documents};

/// One or two sentences that stand beside a result.
#[derive(Debug, PartialEq)]
pub struct Caution {
    /// The danger, in one word or two.
    pub danger: &'static str,
    /// What can hurt and what to do.
    pub says: &'static str,
    /// Where that stands.
    pub cite: Cite,
}

/// Dust of a saw in tile.
pub static TILE_SILICA: Caution = Caution {
    danger: "Silica",
    says: "Cut tile wet, with the water that the saw's maker asks for and no visible dust, and draw the air out of the room. Dry dust of tile and mortar harms the lungs for good.",
    cite: Cite::read(&documents::OSHA_SILICA, "Table 1, stationary masonry saws"),
};
/// Cement board that is cut.
pub static BOARD_SILICA: Caution = Caution {
    danger: "Silica",
    says: "Score cement board with a carbide point and snap it, or use shears. A power saw goes outdoors only, with its dust collector; holes are drilled with a shroud and a vacuum. Never sweep its dust dry.",
    cite: Cite::read(
        &documents::OSHA_SILICA,
        "Table 1, fiber-cement: outdoors, with dust collection",
    ),
};
/// A sheet lifted by hand.
pub static HEAVY_BOARD: Caution = Caution {
    danger: "Heavy sheets",
    says: "One person in the best posture should lift no more than 51 lb (23 kg), and less when reaching. Take two people, or a panel lift for a ceiling, and carry a sheet on its edge.",
    cite: Cite::read(&documents::NIOSH_LIFTING, "load constant"),
};
/// Screws that meet pipes and wires.
pub static BOARD_SCREWS: Caution = Caution {
    danger: "Pipes and wires",
    says: "Know what lies behind before you drive a screw: no longer than needed, none where a pipe or a cable crosses a stud without its plate. Breaker off and water shut while you cut round boxes and stubs.",
    cite: Cite::practice("look before driving screws"),
};
/// Wires in a wall that is cut.
pub static WALL_POWER: Caution = Caution {
    danger: "Live wires",
    says: "Turn the breaker off and prove it dead: try the tester on a live outlet, then in the wall, then on the live outlet again. Set the saw no deeper than the board and 1/8 in, and score by hand beside boxes.",
    cite: Cite::memory(&documents::NFPA_70E, "1926.416"),
};
/// Pipes in a wall that is cut.
pub static WALL_PIPES: Caution = Caution {
    danger: "Pipes",
    says: "Look into the bay before you cut and before you drive a screw. Pipes are drilled through studs and lie behind wet walls; know where the water is shut off.",
    cite: Cite::practice("look before cutting"),
};
/// A wall that may carry the floor above.
pub static WALL_BEARING: Caution = Caution {
    danger: "Bearing wall",
    says: "Cut board, never a stud. No sign seen from the room proves that a wall carries nothing; only an engineer or the building official can tell.",
    cite: Cite::read(&documents::BEARING_CLUES, "clues to a bearing wall"),
};
/// A wall that keeps fire back.
pub static WALL_FIRE_RATED: Caution = Caution {
    danger: "Fire-rated wall",
    says: "A wall to a garage, to a neighbour or round a shaft is a tested assembly. Mend it with the same board and as a tested repair says, and ask the building official.",
    cite: Cite::memory(&documents::GA_225, "repairs"),
};
/// Dust of sanding.
pub static WALL_SANDING_DUST: Caution = Caution {
    danger: "Dust",
    says: "Dry sanding of compound was measured at up to ten times the limit for total dust. Wet-sand or sand with a vacuum, and wear a respirator.",
    cite: Cite::read(&documents::NIOSH_99_113, "summary"),
};
/// Asbestos in old compound and texture.
pub static WALL_ASBESTOS: Caution = Caution {
    danger: "Asbestos",
    says: "Compound and texture from before 1978, or of unknown age, can hold asbestos. Have it tested before you cut, scrape or sand; patching compound with it was banned from 16 January 1978.",
    cite: Cite::read(&documents::ASBESTOS_BAN, "effective dates"),
};
/// Lead in old paint.
pub static WALL_LEAD: Caution = Caution {
    danger: "Lead paint",
    says: "In a home built before 1978 take the paint for lead until it is tested. The exception for minor repairs ends at 6 square feet of painted surface in a room; the dust is as harmful below that.",
    cite: Cite::read(&documents::EPA_RRP, "minor repair and maintenance"),
};
/// Lead in old paint.
pub static LEAD: Caution = Caution {
    danger: "Lead",
    says: "Paint from before 1978 may hold lead. Test it before you sand, scrape or cut, keep the dust wet or in a HEPA vacuum, and keep children out.",
    cite: Cite::read(&documents::EPA_LEAD, "target housing, built before 1978"),
};
/// Asbestos in old texture.
pub static OLD_TEXTURE: Caution = Caution {
    danger: "Asbestos",
    says: "Texture and joint compound from before 1978, or of unknown age, may hold asbestos. Have it tested before you scrape or sand it; otherwise leave it whole.",
    cite: Cite::memory(
        &documents::EPA_ASBESTOS,
        "test before disturbing; the ban took effect 16 January 1978",
    ),
};
/// Air while painting.
pub static PAINT_FUMES: Caution = Caution {
    danger: "Fumes",
    says: "Open a window and keep air moving while you paint and while it dries, and follow the pictures on the label.",
    cite: Cite::memory(&documents::OSHA_1200, "section 2 of the safety data sheet"),
};
/// Solvent and a flame.
pub static SOLVENT_FIRE: Caution = Caution {
    danger: "Fire",
    says: "Solvent vapour catches fire. Put out pilot lights and flames, and make no sparks until the smell is gone.",
    cite: Cite::memory(&documents::OSHA_1200, "flame pictogram"),
};
/// Rags that heat themselves.
pub static OILY_RAGS: Caution = Caution {
    danger: "Oily rags",
    says: "Rags with oil or alkyd paint heat up by themselves and can catch fire. Keep them in a closed metal can filled with water.",
    cite: Cite::memory(
        &documents::OSHA_1200,
        "sections 5 and 13 of the safety data sheet",
    ),
};
/// Standing on a stepladder.
pub static STEPLADDER: Caution = Caution {
    danger: "Ladder",
    says: "Open and lock a stepladder, and do not stand on its top or top step. Do not lean it closed against the wall.",
    cite: Cite::read(&documents::OSHA_1053, "(b)(13) and (b)(4)"),
};
/// A long pole and live parts.
pub static METAL_POLE: Caution = Caution {
    danger: "Electricity",
    says: "Keep a metal pole clear of light fixtures, open boxes and wires; switch them off at the breaker first.",
    cite: Cite::memory(&documents::OSHA_1053, "(b)(12)"),
};
/// Wet cement on the skin.
pub static CEMENT_BURNS: Caution = Caution {
    danger: "Caustic cement",
    says: "Wet cement burns skin and eyes, to the third degree after a short time, and may not hurt at first. Wear waterproof gloves, long sleeves, knee pads and glasses; wash it off at once, and take off what is soaked.",
    cite: Cite::read(&documents::OSHA_CEMENT, "skin contact"),
};
/// Dust of powder and of cut tile.
pub static SILICA: Caution = Caution {
    danger: "Silica dust",
    says: "Sand and cement dust scar the lungs; the limit at work is 50 millionths of a gram in a cubic metre of air over 8 hours. Pour slowly, mix in the open air with a respirator on, cut wet, and never sweep dry.",
    cite: Cite::read(&documents::OSHA_1153, "permissible exposure limit"),
};
/// A bag lifted by hand.
pub static HEAVY_BAG: Caution = Caution {
    danger: "Heavy bags",
    says: "One person in the best posture should lift no more than 51 lb (23 kg), and less in a real lift. A 50 lb bag is at that limit and larger ones are beyond it: take two people or a cart, or split the bag.",
    cite: Cite::read(&documents::NIOSH_LIFTING, "load constant"),
};
/// Old floor covering.
pub static OLD_FLOORING: Caution = Caution {
    danger: "Asbestos",
    says: "Floor tile up to the late 1970s, above all of 9 by 9 in, commonly holds asbestos, and so may its adhesive. Have a sample tested before you take it up or cover it; never sand, scrape dry, sweep dry, drill, saw or blast it.",
    cite: Cite::read(&documents::NAVEDTRA_14045, "old floor tile; sample first"),
};
/// A drain that stands open.
pub static OPEN_DRAIN: Caution = Caution {
    danger: "Sewer gas",
    says: "Gas from an open drain can burn, takes the place of air, and poisons. Cap every open end at once, and keep traps filled with water.",
    cite: Cite::read(&documents::SEWER_GAS, "what is in it"),
};
/// Framing that is bored or notched.
pub static CUT_FRAMING: Caution = Caution {
    danger: "Framing",
    says: "A hole or a notch weakens what carries the floor or the roof. Stop before a bearing wall, an engineered joist or a truss, and ask an engineer or the building official; the code that your place adopted goes before these figures.",
    cite: Cite::read(
        &documents::IRC_R502_8,
        "as quoted; no cuts in engineered members but by their maker",
    ),
};
/// A drain that falls or vents wrongly.
pub static DRAIN_CODE: Caution = Caution {
    danger: "Local code",
    says: "These are figures of model codes as other pages quote them. Your place may have another edition or its own rule: ask the building office, and have a licensed plumber look at drain and vent before you close the floor.",
    cite: Cite::practice("the adopted code and its official decide"),
};
/// A flame in a house.
pub static PIPE_FLAME: Caution = Caution {
    danger: "Fire",
    says: "Drain the line, shield what burns within reach, clear 35 ft as far as you can and keep an extinguisher at hand. Stay for at least 60 minutes after the last flame and feel behind the wall; where you cannot, use a joint without a flame.",
    cite: Cite::read(
        &documents::NFPA_51B,
        "fire watch of 60 minutes; 30 in older editions",
    ),
};
/// Lead in what carries water to drink.
pub static PIPE_LEAD: Caution = Caution {
    danger: "Lead",
    says: "Solder and flux hold no more than 0.2 % lead, and pipe and fittings that water is drunk from no more than 0.25 %. Old rolls of 50-50 are for nothing here.",
    cite: Cite::read(&documents::EPA_LEAD_FREE, "lead-free since 4 January 2014"),
};
/// Cement and primer.
pub static PIPE_SOLVENT: Caution = Caution {
    danger: "Solvent vapour",
    says: "Cement and primer give off vapour that burns and harms. Air the room, keep flames and sparks out, wear gloves and goggles, close the can, and never solder beside it.",
    cite: Cite::read(&documents::F402, "safe handling"),
};
/// Compressed air in plastic.
pub static PIPE_NO_AIR: Caution = Caution {
    danger: "Bursting pipe",
    says: "Never test plastic pipe with compressed air: it can shatter. Test it with water, bled of air.",
    cite: Cite::read(&documents::PLASTICS_MANUAL, "p. 18, testing"),
};
/// Hot water.
pub static PIPE_SCALD: Caution = Caution {
    danger: "Scalds",
    says: "Water of 140 °F burns deep in 6 seconds, of 120 °F in 5 minutes. Set the limit stop of the shower valve on site to 120 °F or less, whatever the heater is set to.",
    cite: Cite::read(
        &documents::SCALDS,
        "seconds to a third-degree burn; P2708.4 asks for the stop",
    ),
};
/// A sharp edge inside.
pub static PIPE_BURR: Caution = Caution {
    danger: "Burrs",
    says: "Wear gloves and eye protection when you cut. Ream every cut to the full bore, and see that each pipe bottoms in its hub: too short has no full joint, too long strains it.",
    cite: Cite::read(&documents::COPPER_STEPS, "measure, cut square, ream, clean"),
};
/// A mitre saw.
pub static TRIM_SAW: Caution = Caution {
    danger: "Saw",
    says: "Wear eye and hearing protection, hold the piece against the fence with your hand well away from the blade, and let the blade stop before you lift it. Catch the dust; dust of wood and fibreboard harms nose and lungs.",
    cite: Cite::read(
        &documents::OSHA_WOODWORKING,
        "machine hazards, flying chips, noise, wood dust",
    ),
};
/// A nail gun.
pub static NAIL_GUN: Caution = Caution {
    danger: "Nail gun",
    says: "Use a full sequential trigger, wear eye and hearing protection, and keep your other hand well away from where the nail goes in. Know what pipes and cables lie in the wall and in its bottom plate before you drive a nail.",
    cite: Cite::read(
        &documents::NAIL_GUN_SAFETY,
        "hand and finger injuries; full sequential trigger; protection of eyes and ears",
    ),
};
/// Old trim that comes off.
pub static OLD_TRIM: Caution = Caution {
    danger: "Lead",
    says: "Trim painted before 1978, or at an unknown time, may be painted with lead. Have it tested before you pry, cut or sand it; local and federal rules say who may take it off and how.",
    cite: Cite::read(&documents::EPA_LEAD, "target housing, built before 1978"),
};
