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
