//! The figure, put together.

use super::{
    Ask, Figure, JointOf, Meeting, Problem, findings, grid_fraction, hexagon_fraction, job_mix,
    kind_for, limits, mass_for, overstatement, product_fraction, sealant_for,
};
use crate::handbook::{Cite, documents, grout as book};
use crate::measure::quantity::{
    Mass, MassDensity, Volume, gallons, litres, pounds, pounds_per_cubic_foot,
};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Account, Grout, Material, Need, Step, Term};

/// The grout of a tiled area: `m = A · (1 − ab / ((a + j)(b + j))) · depth · density`, and sealant by the seam.
///
/// The common form `(a + b) j / (ab)` stands in the working as a check, with how far it is over; nothing is bought by it.
///
/// # Inputs
/// [`Ask`]: within [`limits`]. What the bag says goes first: its coverage, density, water, rest and wait.
/// # Gives
/// Powder net and with waste, bags unrounded, water a bag, rests and waits, open depth, sealant.
/// # Errors
/// [`Problem::Beyond`] for a figure outside its limits.
/// # Findings
/// A joint under 1/16 in stops; the wrong grout for the joint, sand on a face that scratches, sealant too thin or too
/// deep, and a bag that covers far more than the joints allow caution; the rest are notes.
/// # Source
/// Kind: tile council, trade magazine, household page. Density: figured back from a maker's sheet. Water, rest and pot
/// life: bags, from memory.
/// # Example
/// ```
/// use storyrod::{measure::quantity::in_pounds, trades::grout::{Ask, figure}};
/// let floor = figure(&Ask::default()).unwrap();
/// assert!((in_pounds(floor.net) - 2.53).abs() < 0.005);
/// ```
pub fn figure(ask: &Ask) -> Result<Figure, Problem> {
    limits::checked(ask)?;
    let kind = ask
        .kind
        .unwrap_or_else(|| kind_for(ask.width, ask.scratches));
    let (fraction, product_fraction) = shares(ask);
    let density = density(ask, kind).0;
    let volume = (ask.area * fraction) * metres(ask.depth);
    let by_joints = mass_for(ask.area, fraction, ask.depth, density);
    let bag = ask.label.bag.unwrap_or_else(|| usual_bag(kind));
    // The bag's own coverage goes first.
    let net = ask
        .label
        .covers
        .map_or(by_joints, |covers| bag * (ask.area / covers));
    let mass = net * (1.0 + ask.waste);
    let seams: Vec<Volume> = ask
        .seams
        .iter()
        .map(|seam| sealant_for(seam.length, seam.width, seam.depth))
        .collect();
    let all_seams = seams.iter().fold(litres(0.0), |sum, one| sum + *one);
    let mut figure = Figure {
        kind,
        fraction,
        product_fraction,
        volume,
        density,
        net,
        mass,
        bag,
        bag_covers: if net.value > 0.0 {
            ask.area * (bag / net)
        } else {
            ask.area
        },
        bags: (mass / bag).value,
        water: water(ask, kind, bag).map(|(range, _)| range),
        slake: slake(ask).0,
        pot_life: pot_life(ask).0,
        wait: wait(ask).0,
        open: open(ask.depth),
        job_mix: job_mix(ask.width),
        sealant: all_seams * (1.0 + ask.waste),
        seams,
        order: Vec::new(),
        account: Account::default(),
    };
    figure.order = super::order::order(ask, &figure);
    figure.account = Account {
        working: working(ask, &figure),
        findings: findings::findings(ask, &figure),
        cautions: findings::cautions(&figure),
        needs: needs(ask, &figure),
    };
    Ok(figure)
}

fn metres(length: Length) -> uom::si::f64::Length {
    uom::si::f64::Length::new::<uom::si::length::meter>(length.metres())
}

/// The exact share of joint, and the one in common use where it has a form.
fn shares(ask: &Ask) -> (f64, Option<f64>) {
    match ask.joints {
        JointOf::Grid { a, b } => (
            grid_fraction(a, b, ask.width),
            Some(product_fraction(a, b, ask.width)),
        ),
        JointOf::Hexagon { flats } => (
            hexagon_fraction(flats, ask.width),
            Some(product_fraction(flats, flats, ask.width)),
        ),
        JointOf::Area(joints) => ((joints / ask.area).value, None),
    }
}

/// Heavier sand has no figure of its own; it is taken as sanded.
fn density(ask: &Ask, kind: Grout) -> (MassDensity, Cite) {
    if let Some(label) = ask.label.density {
        return (label, Cite::practice("the density on the bag, as entered"));
    }
    let by_kind = match kind {
        Grout::Unsanded => book::UNSANDED_DENSITY,
        Grout::Sanded | Grout::HeavySand => book::SANDED_DENSITY,
    };
    (pounds_per_cubic_foot(by_kind.value), by_kind.cite)
}

fn usual_bag(kind: Grout) -> Mass {
    match kind {
        Grout::Unsanded => pounds(10.0),
        Grout::Sanded | Grout::HeavySand => pounds(25.0),
    }
}

/// Water for a bag; the remembered figure is for sanded grout alone.
fn water(ask: &Ask, kind: Grout, bag: Mass) -> Option<((Volume, Volume), Cite)> {
    if let Some(label) = ask.label.water {
        let cite = Cite::practice("the water on the bag, as entered");
        return Some((label, cite));
    }
    let (least, most) = book::WATER_FOR_25_POUNDS.value;
    let share = (bag / pounds(25.0)).value / 4.0;
    (kind != Grout::Unsanded).then(|| {
        (
            (gallons(least * share), gallons(most * share)),
            book::WATER_FOR_25_POUNDS.cite,
        )
    })
}

fn slake(ask: &Ask) -> (Amount, Cite) {
    let (range, cite) = match ask.label.slake {
        Some(label) => (label, Cite::practice("the rest on the bag, as entered")),
        None => (book::SLAKE.value, book::SLAKE.cite),
    };
    let (least, most) = range;
    (
        Amount::range(Amount::Minutes(least), Amount::Minutes(most)),
        cite,
    )
}

fn pot_life(ask: &Ask) -> (Amount, Cite) {
    match ask.label.pot_life {
        Some(label) => (
            Amount::Hours(label),
            Cite::practice("the pot life on the bag, as entered"),
        ),
        None => (Amount::Hours(book::POT_LIFE.value), book::POT_LIFE.cite),
    }
}

/// Hours between setting and grouting, and where they stand.
pub(super) fn wait(ask: &Ask) -> (Amount, Cite) {
    match ask.label.wait {
        Some(label) => (
            Amount::Hours(label),
            Cite::practice("the wait on the mortar's bag, as entered"),
        ),
        None => (Amount::Hours(book::WAIT.value), book::WAIT.cite),
    }
}

/// The hours of a wait.
pub(super) fn longest_wait(wait: &Amount) -> Option<f64> {
    match wait {
        Amount::Hours(hours) => Some(*hours),
        _ => None,
    }
}

/// Two thirds of the joint's depth.
fn open(depth: Length) -> Length {
    (depth * 2).divided(3)
}

fn working(ask: &Ask, figure: &Figure) -> Vec<Step> {
    let mut steps = share_steps(ask, figure);
    let times = || Term::Word("×");
    steps.push(Step::of(
        "Volume of the joints",
        vec![
            ask.area.into(),
            times(),
            Amount::Number(figure.fraction).into(),
            times(),
            ask.depth.into(),
        ],
        Amount::Bulk(figure.volume),
        Cite::computed("area times share times depth"),
    ));
    steps.push(match ask.label.covers {
        Some(covers) => Step::of(
            "Powder, by the bag's own coverage",
            vec![
                ask.area.into(),
                Term::Word("÷"),
                covers.into(),
                times(),
                figure.bag.into(),
            ],
            figure.net,
            Cite::practice("the coverage on the bag, as entered"),
        ),
        None => Step::of(
            "Powder in the joints",
            vec![
                Amount::Bulk(figure.volume).into(),
                times(),
                figure.density.into(),
            ],
            figure.net,
            density(ask, figure.kind).1,
        ),
    });
    steps.push(Step::of(
        "Powder with waste",
        vec![
            figure.net.into(),
            times(),
            Amount::Share(1.0 + ask.waste).into(),
        ],
        figure.mass,
        if ask.waste == book::WASTE.value {
            book::WASTE.cite
        } else {
            Cite::practice("waste as chosen")
        },
    ));
    steps.push(Step::of(
        "What a bag covers, nothing wasted",
        Vec::new(),
        figure.bag_covers,
        Cite::computed("the area times the bag over the powder"),
    ));
    steps.push(Step::of(
        "Bags of this size",
        vec![figure.mass.into(), Term::Word("÷"), figure.bag.into()],
        Amount::Number(figure.bags),
        Cite::computed("rounded up when bought, over the whole job"),
    ));
    steps.extend(mixing_steps(ask, figure));
    steps.extend(seam_steps(ask, figure));
    steps
}

fn share_steps(ask: &Ask, figure: &Figure) -> Vec<Step> {
    let (a, b, what, rule) = match ask.joints {
        JointOf::Grid { a, b } => (
            a,
            b,
            "Share of joint, exact",
            "each tile's face over its cell, which is one joint wider both ways",
        ),
        JointOf::Hexagon { flats } => (
            flats,
            flats,
            "Share of joint between hexagons, exact",
            "flats over flats and one joint, squared",
        ),
        JointOf::Area(joints) => {
            return vec![Step::of(
                "Share of joint, measured in the layout",
                vec![joints.into(), Term::Word("÷"), ask.area.into()],
                Amount::Number(figure.fraction),
                Cite::computed("joints over the whole area"),
            )];
        }
    };
    let word = Term::Word;
    let exact = vec![
        word("1 −"),
        a.into(),
        word("×"),
        b.into(),
        word("÷ ("),
        (a + ask.width).into(),
        word("×"),
        (b + ask.width).into(),
        word(")"),
    ];
    let product = vec![
        word("("),
        a.into(),
        word("+"),
        b.into(),
        word(") ×"),
        ask.width.into(),
        word("÷ ("),
        a.into(),
        word("×"),
        b.into(),
        word(")"),
    ];
    let over = Amount::Share(overstatement(a, b, ask.width));
    let mut steps = vec![Step::of(
        what,
        exact,
        Amount::Number(figure.fraction),
        Cite::computed(rule),
    )];
    if let Some(share) = figure.product_fraction {
        steps.push(Step {
            what: Phrase::with(
                "Check: the form in common use is {0} over; it divides by the tile's face, not by the tile with its joint",
                [over],
            ),
            sum: product,
            gives: Amount::Number(share),
            cite: Cite::memory(&documents::GROUT_BAGS, "trade formula on makers' sheets"),
        });
    }
    steps
}

/// Water, rest, pot life, wait, open depth, and what a job mix is.
fn mixing_steps(ask: &Ask, figure: &Figure) -> Vec<Step> {
    let mut steps = Vec::new();
    if let Some(((least, most), cite)) = water(ask, figure.kind, figure.bag) {
        steps.push(Step::of(
            "Water for a bag",
            Vec::new(),
            Amount::range(least, most),
            cite,
        ));
    }
    let taken = |what, (gives, cite): (Amount, Cite)| Step::of(what, Vec::new(), gives, cite);
    steps.push(taken("Rest, then stir again", slake(ask)));
    steps.push(taken("Use a mix within", pot_life(ask)));
    steps.push(taken("Wait after setting, at least", wait(ask)));
    if ask.label.wait.is_none() {
        let many = Amount::Hours(book::WAIT_ON_BAGS.value);
        steps.push(taken(
            "Many bags of mortar say",
            (many, book::WAIT_ON_BAGS.cite),
        ));
    }
    steps.push(Step::of(
        "Depth of joint left open, at least",
        vec![ask.depth.into(), Term::Word("× 2 ÷ 3")],
        figure.open,
        book::OPEN_SHARE.cite,
    ));
    steps.push(Step::of(
        "Mixed on the job: parts of fine sand to 1 of cement",
        Vec::new(),
        Amount::Count(i64::from(figure.job_mix)),
        book::JOB_MIX.cite,
    ));
    steps
}

fn seam_steps(ask: &Ask, figure: &Figure) -> Vec<Step> {
    let mut steps: Vec<Step> = ask
        .seams
        .iter()
        .zip(&figure.seams)
        .map(|(seam, volume)| {
            let what = match seam.at {
                Meeting::PlaneChange => "Sealant at a change of plane",
                Meeting::Perimeter => "Sealant along the perimeter",
                Meeting::Movement => "Sealant in a movement joint",
            };
            Step::of(
                what,
                vec![
                    seam.length.into(),
                    Term::Word("×"),
                    seam.width.into(),
                    Term::Word("×"),
                    seam.depth.into(),
                ],
                *volume,
                Cite::computed("the seam filled square"),
            )
        })
        .collect();
    if !steps.is_empty() {
        steps.push(Step::of(
            "Sealant with waste",
            vec![Amount::Share(1.0 + ask.waste).into()],
            figure.sealant,
            Cite::practice("the same waste as for grout"),
        ));
    }
    steps
}

fn needs(ask: &Ask, figure: &Figure) -> Vec<Need> {
    let grout = Need {
        material: Material::Grout {
            kind: figure.kind,
            color: ask.color.clone(),
        },
        amount: figure.mass.into(),
        why: Phrase::plain("Joints"),
    };
    let sealant = Need {
        material: Material::Sealant {
            color: ask.color.clone(),
        },
        amount: figure.sealant.into(),
        why: Phrase::plain("Changes of plane and edges"),
    };
    [
        (figure.mass.value > 0.0, grout),
        (figure.sealant.value > 0.0, sealant),
    ]
    .into_iter()
    .filter(|(wanted, _)| *wanted)
    .map(|(_, need)| need)
    .collect()
}
