//! Spread, film, reach, nap, waits and limits of painting.

use super::{Cite, Sourced, documents};
use crate::measure::Length;

/// A spread in ft² a US gallon and coat: the figure that is used, and the least and the most that the source gives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// The figure that paint is bought by.
    pub used: f64,
    /// The least.
    pub least: f64,
    /// The most.
    pub most: f64,
}

const fn spread(used: f64, least: f64, most: f64) -> Spread {
    Spread { used, least, most }
}

/// A smooth wall or ceiling, or trim.
pub static SMOOTH: Sourced<Spread> = Sourced::new(
    spread(350.0, 350.0, 400.0),
    Cite::read(&documents::WALL_PAINT_GUIDE, "smooth wall"),
);
/// Rough or textured walls.
pub static ROUGH: Sourced<Spread> = Sourced::new(
    spread(300.0, 300.0, 300.0),
    Cite::read(
        &documents::WALL_PAINT_GUIDE,
        "rough, textured or bare wallboard",
    ),
);
/// Bare wallboard painted without a primer.
pub static BARE_BOARD: Sourced<Spread> = ROUGH;
/// Heavy texture: between these, and the low one is bought by.
pub static HEAVY_TEXTURE: Sourced<Spread> = Sourced::new(
    spread(100.0, 100.0, 200.0),
    Cite::practice("heavy texture takes 100 to 200 ft² a gallon"),
);
/// Primer on new drywall.
pub static PRIMER: Sourced<Spread> = Sourced::new(
    spread(300.0, 200.0, 300.0),
    Cite::read(&documents::PAINTER_PRIMER, "primer on new drywall"),
);

/// How far a label and its solids may differ before it is said; both are figures for a perfect surface.
pub static FILM_AGREES: Sourced<f64> = Sourced::new(
    0.10,
    Cite::practice("a label's spread is rounded; one tenth is let pass"),
);

/// Hands on the pole above the floor, for nobody in particular.
pub static HANDS: Sourced<Length> = Sourced::new(
    Length::in_64(52, 32),
    Cite::practice("hands at shoulder height of a person of middling build"),
);
/// Height of the shoulder as a share of stature.
pub static SHOULDER_SHARE: Sourced<f64> = Sourced::new(
    0.818,
    Cite::memory(&documents::BODY_SEGMENTS, "height of the acromion"),
);
/// Shoulder to grip, the male fifth percentile: most people reach it.
pub static ARM: Sourced<Length> = Sourced::new(
    Length::mm(610),
    Cite::read(&documents::BODY_SIZES, "shoulder to grip, British adults"),
);
/// The roller frame, from the end of the pole to the roller.
pub static FRAME: Sourced<Length> = Sourced::new(
    Length::inches(12),
    Cite::practice("a 9 in roller frame stands about 12 in beyond its pole"),
);
/// The longest short pole (2 to 4 ft).
pub static SHORT_POLE: Sourced<Length> = Sourced::new(
    Length::feet(4),
    Cite::read(&documents::POLE_PAGE, "2 to 4 ft for 8 ft walls"),
);
/// The longest long pole (4 to 8 ft).
pub static LONG_POLE: Sourced<Length> = Sourced::new(
    Length::feet(8),
    Cite::read(&documents::POLE_PAGE, "4 to 8 ft for ceilings"),
);
/// A wall this high is rolled from the floor.
pub static ROLLED_FROM_FLOOR: Sourced<Length> = Sourced::new(
    Length::feet(10),
    Cite::practice("a 10 ft wall is rolled from the floor with a pole and no ladder"),
);

/// Nap for smooth walls.
pub static NAP_SMOOTH: Sourced<(Length, Length)> = Sourced::new(
    (Length::in_64(0, 8), Length::in_64(0, 16)),
    Cite::read(&documents::NAP_PAGES, "smooth"),
);
/// Nap for a light texture.
pub static NAP_TEXTURED: Sourced<(Length, Length)> = Sourced::new(
    (Length::in_64(0, 24), Length::in_64(0, 32)),
    Cite::read(&documents::NAP_PAGES, "light texture"),
);
/// Nap for what is rough.
pub static NAP_ROUGH: Sourced<(Length, Length)> = Sourced::new(
    (Length::in_64(0, 48), Length::in_64(1, 16)),
    Cite::read(&documents::NAP_PAGES, "rough"),
);

/// Hours until latex takes the next coat.
pub static RECOAT_LATEX: Sourced<(f64, f64)> = Sourced::new(
    (2.0, 4.0),
    Cite::read(
        &documents::DRYING_PAGES,
        "latex, next coat; the label governs",
    ),
);
/// Hours until alkyd takes the next coat.
pub static RECOAT_ALKYD: Sourced<(f64, f64)> = Sourced::new(
    (16.0, 24.0),
    Cite::read(
        &documents::DRYING_PAGES,
        "alkyd, next coat; the label governs",
    ),
);
/// °F of air and surface, most paints.
pub static TEMPERATURE: Sourced<(f64, f64)> = Sourced::new(
    (45.0, 90.0),
    Cite::read(&documents::MIL_HDBK_1110, "air and surface, most paints"),
);
/// °F from which latex is put on.
pub static LATEX_LEAST: Sourced<f64> = Sourced::new(
    50.0,
    Cite::read(&documents::DRYING_PAGES, "latex, least temperature"),
);

/// ft² of painted surface a room that a paid job may disturb before the lead rule applies.
pub static LEAD_ROOM_LIMIT: Sourced<f64> = Sourced::new(
    6.0,
    Cite::read(
        &documents::EPA_LEAD,
        "40 CFR 745.83, minor repair, interior",
    ),
);
/// The drywall level under which a shining paint shows the joints.
pub static GLOSS_LEVEL: Sourced<u8> = Sourced::new(
    5,
    Cite::read(
        &documents::GA_214,
        "level 5 for gloss, semi-gloss and enamel; not level 4",
    ),
);
/// The least that a narrow thing counts, by the estimator's rule: a foot.
pub static NARROW_COUNTS: Sourced<Length> = Sourced::new(
    Length::feet(1),
    Cite::read(
        &documents::PCA_P10,
        "objects under 1 ft wide count 1 ft² a foot",
    ),
);
