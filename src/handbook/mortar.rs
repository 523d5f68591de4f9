//! Mortar that tile is set in, and mortar of cement, lime and sand.

use super::{Cite, Sourced, documents};
use crate::measure::Length;

/// What a 50 lb bag covers with one square notch, in ft².
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BagRow {
    /// Width of the notch.
    pub width: Length,
    /// Depth of the notch.
    pub depth: Length,
    /// The least and the most that the articles give.
    pub covers: (f64, f64),
}

const fn row(width: i64, depth: i64, least: f64, most: f64) -> BagRow {
    BagRow {
        width: Length::in_64(0, width),
        depth: Length::in_64(0, depth),
        covers: (least, most),
    }
}

/// What a 50 lb bag covers by square notch. Low authority; no association gives such a table.
pub static BAG_TABLE: Sourced<[BagRow; 3]> = Sourced::new(
    [
        row(16, 16, 85.0, 95.0),
        row(16, 24, 60.0, 70.0),
        row(32, 32, 40.0, 50.0),
    ],
    Cite::read(
        &documents::BAG_TABLE,
        "ft² a 50 lb bag by square notch; low authority",
    ),
);
/// Litres of mortar that a kilogram of powder makes: 25 kg and 7 L weigh 32 kg, at 1.8 kg/L.
pub static YIELD: Sourced<f64> = Sourced::new(
    32.0 / 1.8 / 25.0,
    Cite::figured(
        &documents::MORTAR_MAKER,
        "25 kg and 7 L of water at 1.8 kg/L",
    ),
);
/// Sine of the angle at which a trowel is led: 45°.
pub static TROWEL_LEAN: Sourced<f64> = Sourced::new(
    std::f64::consts::FRAC_1_SQRT_2,
    Cite::computed("a trowel led at 45° leaves ridges of 0.707 of their notch"),
);
/// Share of the tile that mortar touches where it stays dry.
pub static CONTACT_DRY: Sourced<f64> = Sourced::new(
    0.80,
    Cite::read(
        &documents::CONTACT_PAGE,
        "80 % dry; average of 3 lifted tiles, corners borne",
    ),
);
/// Share of the tile that mortar touches outdoors and in a shower.
pub static CONTACT_WET: Sourced<f64> = Sourced::new(
    0.95,
    Cite::read(
        &documents::CONTACT_PAGE,
        "95 % exterior or shower; average of 3 lifted tiles, corners borne",
    ),
);
/// Share under natural stone.
pub static CONTACT_STONE: Sourced<f64> = Sourced::new(
    0.95,
    Cite::read(&documents::CONTACT_ANSWER, "natural stone 95 %"),
);
/// The bed after embedding, ordinary mortar.
pub static BED: Sourced<(Length, Length)> = Sourced::new(
    (Length::in_64(0, 6), Length::in_64(0, 16)),
    Cite::read(&documents::BED_TIP, "3/32 to 1/4 in after embedding"),
);
/// The thickest bed of mortar for large and heavy tile.
pub static BED_LARGE: Sourced<Length> = Sourced::new(
    Length::in_64(0, 32),
    Cite::read(&documents::BED_TIP, "large-and-heavy-tile mortar to 1/2 in"),
);
/// How far a tile is moved across the ridges.
pub static PRESS: Sourced<(Length, Length)> = Sourced::new(
    (Length::in_64(0, 8), Length::in_64(0, 16)),
    Cite::read(
        &documents::NTCA_MANUAL,
        "comb one way, press, move 1/8 to 1/4 in across the ridges",
    ),
);
/// The square notch that may leave too little contact without that.
pub static WIDE_NOTCH: Sourced<Length> = Sourced::new(
    Length::in_64(0, 32),
    Cite::read(
        &documents::NTCA_MANUAL,
        "p. 199: a 1/2 in square notch can fail 80 %",
    ),
);
/// Square notches by the longer side of the tile: from this side on, width and depth. Low authority.
pub static NOTCH_BY_TILE: Sourced<[(Length, Length, Length); 3]> = Sourced::new(
    [
        (
            Length::inches(4),
            Length::in_64(0, 16),
            Length::in_64(0, 16),
        ),
        (
            Length::inches(6),
            Length::in_64(0, 16),
            Length::in_64(0, 24),
        ),
        (
            Length::inches(12),
            Length::in_64(0, 32),
            Length::in_64(0, 32),
        ),
    ],
    Cite::read(
        &documents::TROWEL_PAGE,
        "notch by tile; low authority, contact decides",
    ),
);
/// The notch under backer board.
pub static UNDER_BOARD: Sourced<Length> = Sourced::new(
    Length::in_64(0, 16),
    Cite::read(
        &documents::BACKER_GUIDE,
        "bed of mortar by 1/4 in square notch, board embedded",
    ),
);
/// US quarts of water for 50 lb of setting mortar. Low authority.
pub static WATER_FOR_50_POUNDS: Sourced<f64> = Sourced::new(
    6.0,
    Cite::read(
        &documents::MORTAR_WATER,
        "6 qt for 50 lb; low authority, the bag governs",
    ),
);
/// Litres of water for 25 kg of a metric setting mortar.
pub static WATER_FOR_25_KILOGRAMS: Sourced<(f64, f64)> = Sourced::new(
    (6.8, 7.2),
    Cite::read(
        &documents::MORTAR_MAKER,
        "6.8 to 7.2 L for 25 kg; the bag governs",
    ),
);
/// Minutes that mixed mortar rests before it is stirred again. Low authority.
pub static SLAKE: Sourced<(f64, f64)> = Sourced::new(
    (5.0, 10.0),
    Cite::read(
        &documents::MIXING_PAGES,
        "rest 5 to 10 min, stir, no more water; low authority",
    ),
);
/// The fastest that a paddle turns, a minute. Low authority.
pub static MOST_TURNS: Sourced<i64> = Sourced::new(
    300,
    Cite::read(&documents::MIXING_PAGES, "300 rpm at most; low authority"),
);
/// Minutes of work in one batch. Low authority.
pub static BATCH_MINUTES: Sourced<(f64, f64)> = Sourced::new(
    (30.0, 60.0),
    Cite::read(
        &documents::MIXING_PAGES,
        "mix what is set in 30 to 60 min; low authority",
    ),
);
/// Hours that ordinary setting mortar can be used.
pub static POT_LIFE: Sourced<(f64, f64)> = Sourced::new(
    (2.0, 4.0),
    Cite::memory(&documents::MORTAR_BAGS, "pot life 2 to 4 h, ordinary"),
);
/// Minutes that mortar of cement, lime and sand can be used; said there of wall coats.
pub static SITE_MIX_MINUTES: Sourced<f64> = Sourced::new(
    60.0,
    Cite::read(
        &documents::NAVEDTRA_14044_TILE,
        "float coat used within 1 h; said of walls",
    ),
);

/// The least and the most slope of a shower floor, rise over run.
pub static SHOWER_SLOPE: Sourced<(f64, f64)> = Sourced::new(
    (0.25 / 12.0, 0.5 / 12.0),
    Cite::read(&documents::SHOWER_SLOPE, "P2709.1: 1/4 to 1/2 in a foot"),
);
/// Thickness of a mortar floor for tile.
pub static THICK_BED: Sourced<(Length, Length)> = Sourced::new(
    (Length::in_64(0, 48), Length::in_64(1, 16)),
    Cite::read(
        &documents::NAVEDTRA_14044_TILE,
        "thick bed of floors 3/4 to 1 1/4 in",
    ),
);
/// Parts of sand to one of cement in the bed of a tiled floor.
pub static FLOOR_SAND: Sourced<(f64, f64)> = Sourced::new(
    (3.0, 6.0),
    Cite::read(&documents::NAVEDTRA_14044_TILE, "floors 1:3 to 1:6"),
);
/// Parts of sand to one of cement in a sloped shower bed, packed damp.
pub static SHOWER_SAND: Sourced<(f64, f64)> = Sourced::new(
    (4.0, 5.0),
    Cite::memory(&documents::A108_1A, "dry-pack 1:4 or 1:5, damp"),
);
/// The most sand for each part of cement and lime together.
pub static MOST_SAND: Sourced<f64> = Sourced::new(
    3.0,
    Cite::read(
        &documents::EN5157,
        "sand never over 3 times cement and lime",
    ),
);
/// ft³ of cement and sand for 27 ft³ of mortar.
pub static RULE_38: Sourced<f64> = Sourced::new(
    38.0,
    Cite::read(&documents::NAVEDTRA_14043, "rule 38; small jobs only"),
);
/// Dry volume for one of wet mortar.
pub static DRY_FACTOR: Sourced<f64> = Sourced::new(
    1.33,
    Cite::read(
        &documents::DRY_FACTOR_PAGES,
        "wet volume × 1.33; some take 1.30",
    ),
);
/// Barrels of cement for a yd³ of mortar, measured by Sabin, by parts of dry loose sand.
pub static SABIN: Sourced<[(f64, f64); 3]> = Sourced::new(
    [(3.0, 2.06), (4.0, 1.62), (5.0, 1.33)],
    Cite::read(
        &documents::CONCRETE_1908,
        "Sabin: barrels of 380 lb for a yd³, dry loose sand",
    ),
);
/// Pounds in such a barrel, and the ft³ that it was counted for.
pub static BARREL: Sourced<(f64, f64)> = Sourced::new(
    (380.0, 3.65),
    Cite::read(&documents::CONCRETE_1908, "barrel of 380 lb, 3.65 ft³"),
);
/// How much damp sand swells.
pub static BULKING: Sourced<(f64, f64)> = Sourced::new(
    (0.15, 0.30),
    Cite::read(
        &documents::SAND_NOTE,
        "damp sand bulks 15 to 30 %; dry or flooded, not at all",
    ),
);
/// lb of loose Portland cement in a ft³.
pub static CEMENT: Sourced<f64> = Sourced::new(
    94.0,
    Cite::read(&documents::VOLUMES_ARTICLE, "94 lb/ft³ loose"),
);
/// ft³ without any voids of a ft³ of loose cement.
pub static CEMENT_SOLID: Sourced<f64> = Sourced::new(
    0.478,
    Cite::read(
        &documents::VOLUMES_ARTICLE,
        "94 lb of cement displace 0.478 ft³",
    ),
);
/// lb of water in a ft³.
pub static WATER: Sourced<f64> =
    Sourced::new(62.4, Cite::read(&documents::VOLUMES_ARTICLE, "62.4 lb/ft³"));
/// How much heavier than water the grains of sand are.
pub static SAND_GRAVITY: Sourced<f64> = Sourced::new(
    2.65,
    Cite::read(&documents::VOLUMES_ARTICLE, "2.60 to 2.75"),
);
/// lb of dry loose sand in a ft³.
pub static DRY_SAND: Sourced<f64> = Sourced::new(
    100.0,
    Cite::read(&documents::CONCRETE_1908, "dry loose sand, about"),
);
/// lb of sand, weighed dry, in a ft³ of damp loose sand.
pub static DAMP_SAND: Sourced<f64> = Sourced::new(
    80.0,
    Cite::memory(&documents::C270, "80 lb of dry sand in a damp loose ft³"),
);
/// lb of hydrated lime in a ft³.
pub static LIME: Sourced<f64> =
    Sourced::new(40.0, Cite::memory(&documents::C270, "lime 40 lb/ft³"));
/// lb of a bag of concrete or bed mix, and the ft³ that it makes. Low authority, but all agree.
pub static BAG_MAKES: Sourced<(f64, f64)> = Sourced::new(
    (80.0, 0.60),
    Cite::read(
        &documents::BAG_YIELDS,
        "40, 60, 80 lb make 0.30, 0.45, 0.60 ft³; low authority",
    ),
);
/// lb in a ft³ of loose powder, by which a batch is measured in a bucket.
pub static LOOSE_POWDER: Sourced<f64> = Sourced::new(
    94.0,
    Cite::practice("powder taken as heavy as loose cement; weigh a measure of yours"),
);
/// What is mixed beyond the need, where nothing else is chosen.
pub static WASTE: Sourced<f64> = Sourced::new(
    0.10,
    Cite::practice("one tenth for bucket, trowel and uneven floor; choose your own"),
);
/// How full a bucket is mixed.
pub static BUCKET_FILL: Sourced<f64> = Sourced::new(
    2.0 / 3.0,
    Cite::practice("a bucket two thirds full, so that the paddle does not throw"),
);
/// ft² that one person lays in an hour, where no pace is entered.
pub static PACE: Sourced<f64> = Sourced::new(
    20.0,
    Cite::practice("an assumed pace of 20 ft² an hour; enter your own after the first batch"),
);
/// How far a bag's coverage may stand over the comb at 45°: the articles' table stands 3 to 36 % over it.
pub static COMB_AGREES: Sourced<f64> = Sourced::new(
    0.36,
    Cite::figured(
        &documents::BAG_TABLE,
        "its coverage stands 3 to 36 % over the comb at 45°",
    ),
);
/// The largest void under a tile that gets wet.
pub static LARGEST_VOID: Cite = Cite::read(
    &documents::CONTACT_ANSWER,
    "no void over 2 in² in wet areas",
);
