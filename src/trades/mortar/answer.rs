//! The figure, put together.

use super::{
    Ask, BedFigure, Convention, CoverageBy, Figure, Ingredient, Measured, Mix, Parts, Problem,
    Setting, SettingFigure, Shrink, Work, batch, bed, comb, coverage, factor, findings, limits,
    mixed, ridge_bed, setting, water_for, yields,
};
use crate::handbook::{Cite, mortar as book};
use crate::measure::quantity::{
    Mass, Volume, kilograms, litres, pounds_per_cubic_foot, square_feet,
};
use crate::measure::{Amount, Phrase};
use crate::trades::{Account, Material, Need, Step, Term};

/// Mortar for setting tile, for a bed, or so much of it: what is mixed, with how much water, in how many batches.
///
/// Setting: area over the bag's coverage, the least of its range, and the skim on the backs. A bed: its volume by
/// [`super::point_bed`] or [`super::linear_bed`]. Site-mixed: wet volume times the convention's factor, by parts.
///
/// # Inputs
/// [`Ask`]: within [`limits`]. What the bag says goes first.
/// # Gives
/// Volumes and masses unrounded; a bed's depths as places and its falls; batches that fit the bucket and the time.
/// # Errors
/// [`Problem::Beyond`] for a figure outside its limits, [`Problem::NotMeasured`] where Sabin measured nothing.
/// # Findings
/// A fall under 1/4 or over 1/2 in a foot stops; a bed too thin or thick for its mortar, a bag that covers more than
/// its ridges hold, sand to be measured dry and masonry mortar too lean caution; the rest are notes.
/// # Source
/// Coverage: how-to articles, low authority. Yield: one maker's article. Contact, bed, slope: trade pages that quote the
/// standards. Bulk: Navy manual, teaching pages, Gillette and Hill.
/// # Example
/// ```
/// use storyrod::{measure::quantity::in_pounds, trades::mortar::{Ask, figure}};
/// let floor = figure(&Ask { waste: 0.0, ..Ask::default() }).unwrap();
/// // 40 ft² at 60 to 70 a bag of 50 lb: figured at 60.
/// assert!((in_pounds(floor.dry[0].mass) - 33.33).abs() < 0.005);
/// ```
pub fn figure(ask: &Ask) -> Result<Figure, Problem> {
    limits::checked(ask)?;
    let (mut figure, floor) = match &ask.work {
        Work::Setting(setting) => (set(setting, ask.waste), Some(setting.area)),
        Work::Bed(one, mix) => {
            let (volume, laid) = bed::bed(one);
            let floor = laid.area;
            let mut figure = from_mix(volume, mix, ask.waste).ok_or(Problem::NotMeasured)?;
            figure.bed = Some(laid);
            (figure, Some(floor))
        }
        Work::Volume(volume, mix) => (
            from_mix(*volume, mix, ask.waste).ok_or(Problem::NotMeasured)?,
            None,
        ),
    };
    figure.batches = batch::batches(ask, figure.mixed, &figure.dry, figure.water, floor);
    figure.order = super::order::order(ask);
    figure.account = Account {
        working: working(ask, &figure),
        findings: findings::findings(ask, &figure),
        cautions: findings::cautions(ask),
        needs: needs(ask, &figure),
    };
    Ok(figure)
}

/// A figure without batches and account yet.
fn bare(volume: Volume, waste: f64, dry: Vec<Measured>) -> Figure {
    Figure {
        volume,
        mixed: volume * (1.0 + waste),
        dry,
        water: None,
        setting: None,
        bed: None,
        conventions: Vec::new(),
        batches: super::Batches {
            count: 0,
            each: litres(0.0),
            last: litres(0.0),
            held_by: super::HeldBy::All,
            dry: Vec::new(),
            water: None,
            water_weighs: None,
            area: None,
            minutes: 0.0,
            slake: Amount::Minutes(0.0),
            most_turns: 0,
        },
        order: Vec::new(),
        account: Account::default(),
    }
}

/// Powder with its loose volume.
fn powder(what: Ingredient, mass: Mass) -> Measured {
    Measured {
        what,
        mass,
        volume: mass / pounds_per_cubic_foot(book::LOOSE_POWDER.value),
    }
}

fn set(ask: &Setting, waste: f64) -> Figure {
    let (upright, leaning) = (comb(&ask.notch), ridge_bed(&ask.notch));
    let makes = setting::makes(ask);
    let bag = ask.label.bag;
    let of = |mortar: Volume| bag * (mortar / makes).value;
    let by_comb = ask.area * (makes / setting::slab(ask.area, leaning)).value;
    let (covers, by) = match (ask.label.covers, coverage(&ask.notch, bag)) {
        (Some(label), _) => ((label, label), CoverageBy::Label),
        (None, Some(table)) => (table, CoverageBy::BagTable),
        (None, None) => ((by_comb, by_comb), CoverageBy::Comb),
    };
    let skim =
        findings::some(ask.back_butter).map_or(litres(0.0), |skim| setting::slab(ask.area, skim));
    let net = bag * (ask.area / covers.0).value + of(skim);
    let mixed = net * (1.0 + waste);
    let mut figure = bare(
        yields(net, &ask.label),
        waste,
        vec![powder(Ingredient::Powder, mixed)],
    );
    figure.water = Some(water_for(mixed, &ask.label));
    figure.setting = Some(SettingFigure {
        upright,
        leaning,
        covers,
        by,
        by_comb,
        powder_by_comb: bag * (ask.area / by_comb).value + of(skim),
        powder: net,
        skim,
        contact: setting::contact(ask).value,
    });
    figure
}

/// `None` where the convention was never measured for these parts.
fn from_mix(volume: Volume, mix: &Mix, waste: f64) -> Option<Figure> {
    let all = volume * (1.0 + waste);
    match mix {
        Mix::Bags { bag, makes, water } => {
            let bags = (all / *makes).value;
            let mut figure = bare(volume, waste, vec![powder(Ingredient::BedMix, *bag * bags)]);
            figure.water = water.map(|(from, to)| (from * bags, to * bags));
            Some(figure)
        }
        Mix::Site(parts) => {
            let dry = mixed(all, parts, parts.by)?;
            let cement = dry.first().map_or(kilograms(0.0), |cement| cement.mass);
            let mut figure = bare(volume, waste, dry);
            figure.water = parts.water.map(|share| {
                let water = litres(cement.value * share);
                (water, water)
            });
            figure.conventions = conventions(volume, parts);
            Some(figure)
        }
    }
}

/// The three ways of counting that can be had, and the one that is used where it is another.
fn conventions(volume: Volume, parts: &Parts) -> Vec<Convention> {
    let mut ways = vec![Shrink::Rule38, Shrink::Dry133, Shrink::DryLoose];
    if !ways.contains(&parts.by) {
        ways.push(parts.by);
    }
    ways.into_iter()
        .filter_map(|by| {
            Some(Convention {
                by,
                factor: factor(parts, by)?,
                dry: mixed(volume, parts, by)?,
                used: by == parts.by,
            })
        })
        .collect()
}

fn step(what: Phrase, sum: Vec<Term>, gives: impl Into<Amount>, cite: Cite) -> Step {
    Step {
        what,
        sum,
        gives: gives.into(),
        cite,
    }
}

/// One figure, or from one to another.
fn between<A: PartialEq + Into<Amount>>(from: A, to: A) -> Amount {
    if from == to {
        from.into()
    } else {
        Amount::range(from, to)
    }
}

fn times() -> Term {
    Term::Word("×")
}

fn working(ask: &Ask, figure: &Figure) -> Vec<Step> {
    let mut steps = match (&ask.work, &figure.setting, &figure.bed) {
        (Work::Setting(asked), Some(laid), _) => setting_steps(asked, laid),
        (Work::Bed(asked, _), _, Some(laid)) => bed_steps(asked, laid, figure.volume),
        _ => vec![step(
            "Mortar, as entered".into(),
            Vec::new(),
            Amount::Bulk(figure.volume),
            Cite::practice("as entered"),
        )],
    };
    steps.push(step(
        "Mortar with what is mixed beyond the need".into(),
        vec![
            Amount::Bulk(figure.volume).into(),
            times(),
            Amount::Share(1.0 + ask.waste).into(),
        ],
        Amount::Bulk(figure.mixed),
        if ask.waste == book::WASTE.value {
            book::WASTE.cite
        } else {
            Cite::practice("waste as chosen")
        },
    ));
    steps.extend(figure.conventions.iter().filter_map(convention_step));
    steps.extend(figure.dry.iter().map(|one| dry_step(ask, one)));
    steps.extend(batch_steps(ask, figure));
    steps
}

fn setting_steps(ask: &Setting, laid: &SettingFigure) -> Vec<Step> {
    let (least, most) = laid.covers;
    let cite = match laid.by {
        CoverageBy::Label => Cite::practice("the coverage on the bag, as entered"),
        CoverageBy::BagTable => book::BAG_TABLE.cite,
        CoverageBy::Comb => Cite::computed("what a bag makes over the bed at 45°"),
    };
    let makes = setting::makes(ask);
    let made = match ask.label.makes {
        Some(_) => Cite::practice("the yield on the bag, as entered"),
        None => book::YIELD.cite,
    };
    let mut steps = vec![
        step(
            "What a bag covers".into(),
            Vec::new(),
            between(least, most),
            cite,
        ),
        step(
            "What a bag makes".into(),
            Vec::new(),
            Amount::Bulk(makes),
            made,
        ),
        step(
            "Check: bed that the notches leave, trowel upright".into(),
            Vec::new(),
            Amount::Film(laid.upright),
            Cite::computed("area of a notch over notch and land"),
        ),
        step(
            "Check: the same with the trowel at 45°".into(),
            vec![
                Amount::Film(laid.upright).into(),
                times(),
                Amount::Number(book::TROWEL_LEAN.value).into(),
            ],
            Amount::Film(laid.leaning),
            book::TROWEL_LEAN.cite,
        ),
        step(
            "Check: what a bag would cover by that".into(),
            Vec::new(),
            laid.by_comb,
            Cite::computed(
                "what a bag makes over the bed at 45°; nothing is bought by it where a coverage is known",
            ),
        ),
    ];
    if laid.skim.value > 0.0 {
        steps.push(step(
            "Skim on the backs".into(),
            vec![
                ask.area.into(),
                times(),
                ask.back_butter.unwrap_or_default().into(),
            ],
            Amount::Bulk(laid.skim),
            Cite::computed("area times thickness"),
        ));
    }
    let mut sum: Vec<Term> = vec![
        ask.area.into(),
        Term::Word("÷"),
        least.into(),
        times(),
        ask.label.bag.into(),
    ];
    if laid.skim.value > 0.0 {
        let skim = ask.label.bag * (laid.skim / makes).value;
        sum.extend([Term::Word("+"), skim.into()]);
    }
    steps.push(step(
        "Powder, at the least coverage and with any skim".into(),
        sum,
        laid.powder,
        cite,
    ));
    let contact = setting::contact(ask);
    if setting::tile(ask).is_some() {
        steps.push(step(
            "Mortar touches the backs, at least".into(),
            Vec::new(),
            Amount::Share(contact.value),
            contact.cite,
        ));
    }
    steps
}

fn bed_steps(ask: &super::Bed, laid: &BedFigure, volume: Volume) -> Vec<Step> {
    let area = vec![ask.across.into(), times(), ask.up.into()];
    let mut steps = vec![step(
        "Area of the bed".into(),
        area,
        laid.area,
        Cite::computed("side times side"),
    )];
    let slopes = || laid.runs.iter().map(|run| run.slope);
    let longest = laid.runs.iter().map(|run| run.length).max();
    if let (Some(longest), Some(least), Some(most)) = (
        longest,
        slopes().reduce(f64::min),
        slopes().reduce(f64::max),
    ) {
        steps.push(step(
            "Longest run to the drain".into(),
            Vec::new(),
            longest,
            Cite::computed("the long side of a right triangle"),
        ));
        steps.push(step(
            "Rim above the drain".into(),
            Vec::new(),
            laid.rise,
            match ask.fall {
                super::Fall::Rise(_) => Cite::practice("as entered"),
                _ => Cite::computed("run times slope"),
            },
        ));
        steps.push(step(
            "Slope from the flattest to the steepest run".into(),
            Vec::new(),
            Amount::range(Amount::Slope(least), Amount::Slope(most)),
            book::SHOWER_SLOPE.cite,
        ));
    }
    let share = match ask.drain {
        super::Drain::None => Vec::new(),
        super::Drain::Along(_) => vec![Term::Word("+"), laid.rise.into(), Term::Word("÷ 2")],
        _ => vec![Term::Word("+"), laid.rise.into(), Term::Word("× 2 ÷ 3")],
    };
    let mut sum = vec![laid.area.into(), Term::Word("× ("), ask.at_drain.into()];
    sum.extend(share);
    sum.push(Term::Word(")"));
    steps.push(step(
        "Mortar in the bed".into(),
        sum,
        Amount::Bulk(volume),
        Cite::computed("a prism less a pyramid, or a wedge; the drain's own size is neglected"),
    ));
    steps
}

/// The cement of one convention, to be seen beside the others.
fn convention_step(way: &Convention) -> Option<Step> {
    let (text, cite) = match way.by {
        Shrink::Rule38 => (
            "Net cement by rule 38, sand damp and loose: dry volume {0} of the wet",
            book::RULE_38.cite,
        ),
        Shrink::Dry133 => (
            "Net cement by the factor 1.33, sand damp and loose: dry volume {0} of the wet",
            book::DRY_FACTOR.cite,
        ),
        Shrink::DryLoose => (
            "Net cement by Sabin's barrels, sand dry and loose: dry volume {0} of the wet",
            book::SABIN.cite,
        ),
        Shrink::SandFills => (
            "Net cement where the sand alone fills the mortar: dry volume {0} of the wet",
            Cite::computed("all parts over the sand's"),
        ),
        Shrink::Own(_) => (
            "Net cement by a factor of your own: dry volume {0} of the wet",
            Cite::practice("the factor as entered"),
        ),
    };
    let cement = way.dry.first()?;
    Some(step(
        Phrase::with(text, [Amount::Number(way.factor)]),
        vec![Amount::Bulk(cement.volume).into()],
        cement.mass,
        cite,
    ))
}

fn dry_step(ask: &Ask, one: &Measured) -> Step {
    let damp = match &ask.work {
        Work::Bed(_, Mix::Site(parts)) | Work::Volume(_, Mix::Site(parts)) => {
            parts.by != Shrink::DryLoose
        }
        _ => false,
    };
    let (text, cite) = match one.what {
        Ingredient::Powder => ("Powder to mix", book::LOOSE_POWDER.cite),
        Ingredient::BedMix => ("Bed mix", bag_cite(ask)),
        Ingredient::Cement => ("Cement to mix", book::CEMENT.cite),
        Ingredient::Lime => ("Lime to mix", book::LIME.cite),
        Ingredient::Sand if damp => ("Sand to mix, weighed dry", book::DAMP_SAND.cite),
        Ingredient::Sand => ("Sand to mix", book::DRY_SAND.cite),
    };
    step(
        text.into(),
        vec![Amount::Bulk(one.volume).into(), Term::Word("loose")],
        one.mass,
        cite,
    )
}

/// Where it stands that a bag makes so much.
fn bag_cite(ask: &Ask) -> Cite {
    let (mass, volume) = book::BAG_MAKES.value;
    let common = pounds_per_cubic_foot(mass / volume);
    match &ask.work {
        Work::Bed(_, Mix::Bags { bag, makes, .. })
        | Work::Volume(_, Mix::Bags { bag, makes, .. })
            if (((*bag / *makes) / common).value - 1.0).abs() < 1e-6 =>
        {
            book::BAG_MAKES.cite
        }
        _ => Cite::practice("what a bag makes, as entered"),
    }
}

fn water_cite(ask: &Ask) -> Cite {
    match &ask.work {
        // From this to 7.2 L for 25 kg; the weaker of the two sources is named.
        Work::Setting(setting) if setting.label.water.is_none() => book::WATER_FOR_50_POUNDS.cite,
        _ => Cite::practice("the water as entered"),
    }
}

fn batch_steps(ask: &Ask, figure: &Figure) -> Vec<Step> {
    let batches = &figure.batches;
    let (minutes, minutes_cite) = batch::minutes(ask);
    let mut steps = vec![
        step(
            "Time to lay a batch".into(),
            Vec::new(),
            Amount::Minutes(minutes),
            minutes_cite,
        ),
        step(
            "Area laid in an hour".into(),
            Vec::new(),
            ask.batch.pace,
            if ask.batch.pace == square_feet(book::PACE.value) {
                book::PACE.cite
            } else {
                Cite::practice("the pace as entered")
            },
        ),
        step(
            "A bucket mixed no fuller".into(),
            vec![
                ask.batch.bucket.into(),
                times(),
                Amount::Share(ask.batch.fill).into(),
            ],
            Amount::Bulk(ask.batch.bucket * ask.batch.fill),
            book::BUCKET_FILL.cite,
        ),
        step(
            "Mortar of a batch: what fits and what is laid in time".into(),
            Vec::new(),
            Amount::Bulk(batches.each),
            Cite::computed("the lesser of the two"),
        ),
        step(
            "Batches".into(),
            vec![
                Amount::Bulk(figure.mixed).into(),
                Term::Word("÷"),
                Amount::Bulk(batches.each).into(),
            ],
            Amount::Count(i64::from(batches.count)),
            Cite::computed("rounded up; the last is smaller"),
        ),
    ];
    steps.extend(batches.dry.iter().map(|one| {
        let what = match one.what {
            Ingredient::Powder => "Powder for a batch",
            Ingredient::BedMix => "Bed mix for a batch",
            Ingredient::Cement => "Cement for a batch",
            Ingredient::Lime => "Lime for a batch",
            Ingredient::Sand => "Sand for a batch, weighed dry",
        };
        step(
            what.into(),
            vec![Amount::Bulk(one.volume).into(), Term::Word("loose")],
            one.mass,
            Cite::computed("its share of the whole"),
        )
    }));
    if let Some(((least, most), (light, heavy))) = batches.water.zip(batches.water_weighs) {
        steps.push(step(
            "Water for a batch".into(),
            vec![between(light, heavy).into()],
            between(least, most),
            water_cite(ask),
        ));
    }
    if let Work::Setting(setting) = &ask.work {
        if setting.label.pot_life.is_none() {
            let (from, to) = book::POT_LIFE.value;
            steps.push(step(
                "Bags of ordinary mortar say it can be used for".into(),
                Vec::new(),
                Amount::range(Amount::Hours(from), Amount::Hours(to)),
                book::POT_LIFE.cite,
            ));
        }
        steps.push(step(
            "Rest, then stir again without more water".into(),
            Vec::new(),
            batches.slake.clone(),
            batch::slake(ask).1,
        ));
        steps.push(step(
            "Paddle, turns a minute at most".into(),
            Vec::new(),
            Amount::Count(batches.most_turns),
            book::MOST_TURNS.cite,
        ));
    }
    steps
}

fn needs(ask: &Ask, figure: &Figure) -> Vec<Need> {
    let why = match &ask.work {
        Work::Setting(_) => "Under the tile",
        Work::Bed(..) => "Bed",
        Work::Volume(..) => "Mortar",
    };
    let large = matches!(&ask.work, Work::Setting(setting) if setting.large_tile);
    figure
        .dry
        .iter()
        .map(|one| Need {
            material: match one.what {
                Ingredient::Powder => Material::SettingMortar { large_tile: large },
                Ingredient::BedMix => Material::BedMix,
                Ingredient::Cement => Material::Cement,
                Ingredient::Lime => Material::Lime,
                Ingredient::Sand => Material::Sand,
            },
            amount: one.mass.into(),
            why: Phrase::plain(why),
        })
        .collect()
}
