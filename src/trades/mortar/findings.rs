//! What deserves a remark, and what can hurt.

use super::{
    Ask, BedFigure, CoverageBy, Figure, Mix, NotchShape, Parts, Setting, SettingFigure, Shrink,
    Under, Work, setting, suggested_notch,
};
use crate::handbook::{
    Cite,
    cautions::{self, Caution},
    mortar as book,
};
use crate::measure::quantity::{Mass, pounds};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Finding, Weight};

/// Everything remarked, the heaviest first.
pub(super) fn findings(ask: &Ask, figure: &Figure) -> Vec<Finding> {
    let mut found = Vec::new();
    if let (Work::Setting(setting), Some(laid)) = (&ask.work, &figure.setting) {
        found.extend(
            [
                touching(setting),
                voids(setting),
                thin(setting, laid),
                thick(setting, laid),
                wide_notch(setting),
                small_notch(setting),
                under_board(setting),
                low_authority(laid),
                far_over_comb(setting, laid),
            ]
            .into_iter()
            .flatten(),
        );
    }
    if let (Work::Bed(..), Some(bed)) = (&ask.work, &figure.bed) {
        found.extend([too_flat(bed), too_steep(bed)].into_iter().flatten());
        found.extend(bed_parts(ask));
    }
    if let Work::Bed(_, Mix::Site(parts)) | Work::Volume(_, Mix::Site(parts)) = &ask.work {
        found.extend(
            [damp_or_dry(parts), too_much_sand(ask, parts)]
                .into_iter()
                .flatten(),
        );
    }
    found.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    found
}

fn finding(weight: Weight, says: Phrase, rule: Cite) -> Option<Finding> {
    Some(Finding { weight, says, rule })
}

fn touching(setting: &Setting) -> Option<Finding> {
    setting::tile(setting)?;
    let contact = setting::contact(setting);
    finding(
        Weight::Note,
        Phrase::with(
            "Lift at least three tiles while the mortar is fresh: it has to touch {0} of their backs on average, with every corner borne. The trowel that does so is the right one.",
            [Amount::Share(contact.value)],
        ),
        contact.cite,
    )
}

fn voids(setting: &Setting) -> Option<Finding> {
    setting::tile(setting)?;
    (setting.place == super::Place::Wet)
        .then(|| {
            finding(
                Weight::Note,
                Phrase::plain(
                    "Where it gets wet, no void under a tile may be larger than 2 square inches.",
                ),
                book::LARGEST_VOID,
            )
        })
        .flatten()
}

fn thin(setting: &Setting, laid: &SettingFigure) -> Option<Finding> {
    setting::tile(setting)?;
    let bed = laid.leaning + setting.back_butter.unwrap_or_default();
    let least = book::BED.value.0;
    if bed >= least {
        return None;
    }
    finding(
        Weight::Caution,
        Phrase::with(
            "With the trowel at 45° this notch leaves a bed of {0}, under the {1} that tile wants after embedding. Hold the trowel steeper, take a larger notch, or skim the backs.",
            // In thousandths: 0.088 in and 3/32 in are the same mark on a tape.
            [Amount::Film(bed), Amount::Film(least)],
        ),
        book::BED.cite,
    )
}

fn thick(setting: &Setting, laid: &SettingFigure) -> Option<Finding> {
    let bed = laid.upright + setting.back_butter.unwrap_or_default();
    let (most, cite) = if setting.large_tile {
        (book::BED_LARGE.value, book::BED_LARGE.cite)
    } else {
        (book::BED.value.1, book::BED.cite)
    };
    if bed <= most {
        return None;
    }
    let says = if setting.large_tile {
        "This notch can leave a bed of {0}; mortar for large and heavy tile stands up to {1}. Level the floor first."
    } else {
        "This notch can leave a bed of {0}; ordinary setting mortar stands up to {1}. Take mortar for large and heavy tile, or a smaller notch."
    };
    finding(
        Weight::Caution,
        Phrase::with(says, [bed, most].map(Amount::Length)),
        cite,
    )
}

fn wide_notch(setting: &Setting) -> Option<Finding> {
    setting::tile(setting)?;
    let notch = &setting.notch;
    if notch.shape != NotchShape::Square || notch.width < book::WIDE_NOTCH.value {
        return None;
    }
    let (from, to) = book::PRESS.value;
    finding(
        Weight::Note,
        Phrase::with(
            "A square notch of {0} can leave too little contact. Comb one way, along the short side; press each tile and move it {1} across the ridges.",
            [notch.width.into(), Amount::range(from, to)],
        ),
        book::WIDE_NOTCH.cite,
    )
}

fn small_notch(setting: &Setting) -> Option<Finding> {
    let (a, b) = setting::tile(setting)?;
    let (width, depth) = suggested_notch(a, b)?;
    let notch = &setting.notch;
    let small = notch.width.metres() * notch.depth.metres() < width.metres() * depth.metres();
    if !small || notch.shape != NotchShape::Square {
        return None;
    }
    finding(
        Weight::Note,
        Phrase::with(
            "A how-to article takes a {0} notch for this tile. The associations give no such table: lift tiles and look.",
            [Amount::Size(width, depth)],
        ),
        book::NOTCH_BY_TILE.cite,
    )
}

fn under_board(setting: &Setting) -> Option<Finding> {
    let side = book::UNDER_BOARD.value;
    let notch = &setting.notch;
    let fits = notch.shape == NotchShape::Square && notch.width == side && notch.depth == side;
    if setting.under != Under::Board || fits {
        return None;
    }
    finding(
        Weight::Note,
        Phrase::with(
            "Backer board is bedded with a square notch of {0}, and pressed in while the mortar is fresh.",
            [Amount::Length(side)],
        ),
        book::UNDER_BOARD.cite,
    )
}

fn low_authority(laid: &SettingFigure) -> Option<Finding> {
    let (says, rule) = match laid.by {
        CoverageBy::Label => return None,
        CoverageBy::BagTable => (
            "What a bag covers comes from how-to articles; no association gives a figure. Enter what your bag says.",
            book::BAG_TABLE.cite,
        ),
        CoverageBy::Comb => (
            "No coverage is known for this notch; it is figured from the ridges at 45°, on the safe side. Enter what your bag says.",
            book::TROWEL_LEAN.cite,
        ),
    };
    finding(Weight::Note, Phrase::plain(says), rule)
}

/// A bag that is said to cover far more than its ridges hold.
fn far_over_comb(setting: &Setting, laid: &SettingFigure) -> Option<Finding> {
    let label = setting.label.covers?;
    let over = (label / laid.by_comb).value - 1.0;
    if over.is_nan() || over <= book::COMB_AGREES.value + 0.005 {
        return None;
    }
    finding(
        Weight::Caution,
        Phrase::with(
            "The bag is said to cover {0}, but the ridges of this notch come to {1} a bag at 45°. Look whether its figure is for this notch.",
            [label, laid.by_comb].map(Amount::Area),
        ),
        book::COMB_AGREES.cite,
    )
}

/// A hair, for a rise in whole nanometres.
const HAIR: f64 = 1e-6;

fn slopes(bed: &BedFigure) -> Option<(f64, f64)> {
    let all = || bed.runs.iter().map(|run| run.slope);
    let least = all().reduce(f64::min)?;
    Some((least, all().reduce(f64::max)?))
}

fn too_flat(bed: &BedFigure) -> Option<Finding> {
    let (least, _) = slopes(bed)?;
    let rule = book::SHOWER_SLOPE;
    if least >= rule.value.0 - HAIR {
        return None;
    }
    finding(
        Weight::Stop,
        Phrase::with(
            "A run falls only {0}; a shower floor falls at least {1} on every run. Set the slope on the longest run, to the corner.",
            [least, rule.value.0].map(Amount::Slope),
        ),
        rule.cite,
    )
}

fn too_steep(bed: &BedFigure) -> Option<Finding> {
    let (_, most) = slopes(bed)?;
    let rule = book::SHOWER_SLOPE;
    if most <= rule.value.1 + HAIR {
        return None;
    }
    finding(
        Weight::Stop,
        Phrase::with(
            "A run falls {0}; a shower floor falls no more than {1}. With a level rim one run is too steep here: let the rim fall with the floor, move the drain, or set a channel along a wall.",
            [most, rule.value.1].map(Amount::Slope),
        ),
        rule.cite,
    )
}

/// A bed that is leaner or richer, or thinner, than beds under tile are.
fn bed_parts(ask: &Ask) -> Vec<Finding> {
    let Work::Bed(bed, mix) = &ask.work else {
        return Vec::new();
    };
    let mut found = Vec::new();
    if let Mix::Site(parts) = mix {
        let sand = parts.sand / parts.cement;
        let (from, to) = book::FLOOR_SAND.value;
        if sand < from || sand > to {
            found.extend(finding(
                Weight::Note,
                Phrase::with(
                    "Beds of tiled floors are mixed with {0} parts of sand to 1 of cement; this one has {1}.",
                    [
                        Amount::range(Amount::Number(from), Amount::Number(to)),
                        Amount::Number(sand),
                    ],
                ),
                book::FLOOR_SAND.cite,
            ));
        }
        let (from, to) = book::SHOWER_SAND.value;
        if sand < from || sand > to {
            found.extend(finding(
                Weight::Note,
                Phrase::with(
                    "A sloped shower bed is packed damp, with {0} parts of sand to 1 of cement.",
                    [Amount::range(Amount::Number(from), Amount::Number(to))],
                ),
                book::SHOWER_SAND.cite,
            ));
        }
    }
    let (least, most) = book::THICK_BED.value;
    if bed.at_drain < least {
        found.extend(finding(
            Weight::Note,
            Phrase::with(
                "Mortar floors for tile are {0} thick; this one starts at {1}.",
                [Amount::range(least, most), bed.at_drain.into()],
            ),
            book::THICK_BED.cite,
        ));
    }
    found
}

fn damp_or_dry(parts: &Parts) -> Option<Finding> {
    let (from, to) = book::BULKING.value;
    let bulk = Amount::range(Amount::Share(from), Amount::Share(to));
    match parts.by {
        Shrink::Rule38 | Shrink::Dry133 => finding(
            Weight::Note,
            Phrase::with(
                "The sand is counted damp and loose, as it lies on a pile: it takes {0} more room than dry. Measured dry, less is needed.",
                [bulk],
            ),
            book::BULKING.cite,
        ),
        Shrink::DryLoose => finding(
            Weight::Caution,
            Phrase::with(
                "The sand is counted dry and loose. Damp sand takes {0} more room, and so much would be missing if it were measured damp.",
                [bulk],
            ),
            book::BULKING.cite,
        ),
        Shrink::SandFills | Shrink::Own(_) => None,
    }
}

/// Masonry mortar is never leaner than 3 to 1; beds packed damp are.
fn too_much_sand(ask: &Ask, parts: &Parts) -> Option<Finding> {
    let most = book::MOST_SAND;
    let sand = parts.sand / (parts.cement + parts.lime);
    if !matches!(ask.work, Work::Volume(..)) || parts.lime == 0.0 || sand <= most.value + 1e-9 {
        return None;
    }
    finding(
        Weight::Caution,
        Phrase::with(
            "Masonry mortar has at most {0} parts of sand to each of cement and lime together; this one has {1}.",
            [most.value, sand].map(Amount::Number),
        ),
        most.cite,
    )
}

/// What can hurt, the heaviest first.
pub(super) fn cautions(ask: &Ask) -> Vec<&'static Caution> {
    let heavy = |bag: Mass| bag >= pounds(50.0);
    let heavy = match &ask.work {
        Work::Setting(setting) => heavy(setting.label.bag),
        Work::Bed(_, Mix::Bags { bag, .. }) | Work::Volume(_, Mix::Bags { bag, .. }) => heavy(*bag),
        // Cement and sand come in 94 and 50 lb.
        Work::Bed(..) | Work::Volume(..) => true,
    };
    let all: [(bool, &'static Caution); 4] = [
        (ask.old_floor, &cautions::OLD_FLOORING),
        (true, &cautions::CEMENT_BURNS),
        (true, &cautions::SILICA),
        (heavy, &cautions::HEAVY_BAG),
    ];
    all.into_iter()
        .filter(|(says, _)| *says)
        .map(|(_, caution)| caution)
        .collect()
}

/// Whether a length is more than nothing.
pub(super) fn some(length: Option<Length>) -> Option<Length> {
    length.filter(|length| length.is_positive())
}
