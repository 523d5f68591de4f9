//! The figure, put together.

use super::{
    ArmFigure, Ask, Figure, Fixture, Problem, Through, carries, fall_in, findings, least_fall,
    limits, longest_arm, sizes, through, units,
};
use crate::handbook::{Cite, documents, drain as book};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Account, Material, Need, Step, Term};

/// A drain along its run: `fall = run · fall in a foot`, `height(x) = start − fall(x)`, and each hole against the limits of
/// its joist or stud.
///
/// # Inputs
/// [`Ask`]: within [`limits`]. The run is measured level. Heights are of the pipe's centre: above the lower edge of joists,
/// above the floor in studs.
/// # Gives
/// The fall, both ends, each hole from the upper end, how far the run may go, the trap arm's limits, the fixture units with
/// the least drain for them, and the flange from the bare studs. Limits are exact; shown, they are rounded down.
/// # Errors
/// [`Problem`]: a figure outside its limits, a hole smaller than the pipe, more than 200 joists or studs.
/// # Findings
/// Stop: less fall than the code chosen, a hole beyond its limits, an engineered joist, an arm too long or too short, a drain
/// too small. Caution: an arm that falls more than its diameter, studs to be plated. Notes: where codes differ.
/// # Source
/// Each figure of [`handbook::drain`](book) and of the framing limits by its own place.
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::drain::{Ask, figure}};
/// let shower = figure(&Ask::default()).unwrap();
/// assert_eq!(shower.total, Length::in_64(1, 32));
/// assert_eq!(shower.holes.len(), 5);
/// ```
pub fn figure(ask: &Ask) -> Result<Figure, Problem> {
    limits::checked(ask)?;
    let (least_fall, _) = least_fall(ask.code, ask.size, ask.eighth_approved);
    let fall = ask.fall.unwrap_or(least_fall);
    let total = fall_in(ask.run, fall);
    let start = through::start(ask, fall);
    let hole = through::hole(ask);
    let place = through::members(ask).and_then(|(member, _)| member.centres(hole));
    let (units, needs) = sizes::needed(ask);
    let arm = ask.arm.map(|arm| ArmFigure {
        most: longest_arm(ask.code, arm.size).0,
        least: arm.size.length() * book::ARM_LEAST.value,
        falls: fall_in(arm.length, fall),
    });
    let mut figure = Figure {
        fall,
        least_fall,
        total,
        sloped: ask.run.diagonal(total),
        start,
        end: start - total,
        hole,
        place,
        holes: through::holes(ask, start, fall),
        reach: through::reach(ask, start, fall),
        arm,
        units,
        needs,
        flange: ask.flange.map(|flange| flange.rough_in + flange.to_come),
        plates: through::plates(ask),
        order: Vec::new(),
        account: Account::default(),
    };
    figure.order = super::order::order(ask, &figure);
    figure.account = Account {
        working: working(ask, &figure),
        findings: findings::findings(ask, &figure),
        cautions: findings::cautions(ask),
        needs: needs_of(&figure),
    };
    Ok(figure)
}

fn working(ask: &Ask, figure: &Figure) -> Vec<Step> {
    let word = Term::Word;
    let slope = |fall: Length| Amount::Slope(fall.as_nm() as f64 / Length::feet(1).as_nm() as f64);
    let least = least_fall(ask.code, ask.size, ask.eighth_approved);
    let mut steps = vec![
        Step::of(
            "Least fall by the code chosen",
            Vec::new(),
            slope(least.0),
            least.1,
        ),
        Step::of(
            "Fall over the run",
            vec![ask.run.into(), word("×"), Term::Figure(slope(figure.fall))],
            figure.total,
            Cite::read(
                &documents::MODERN_PLUMBING,
                "fall of a branch, p. 325, worked",
            ),
        ),
        Step::of(
            "Pipe along the fall",
            vec![
                word("√("),
                ask.run.into(),
                word("² +"),
                figure.total.into(),
                word("²)"),
            ],
            figure.sloped,
            Cite::computed("the long side of a right triangle"),
        ),
        Step::of(
            "Height at the lower end",
            vec![figure.start.into(), word("−"), figure.total.into()],
            figure.end,
            Cite::computed("the upper end less the fall"),
        ),
    ];
    if let Some((member, _)) = through::members(ask) {
        if let (Some(most), Some(rule)) = (member.largest_hole(), member.hole_rule()) {
            let (over, under) = rule.value;
            steps.push(Step::of(
                "Largest hole",
                vec![
                    member.depth().into(),
                    word("×"),
                    Amount::Count(over).into(),
                    word("÷"),
                    Amount::Count(under).into(),
                ],
                most.rounded(Length::in_64(0, 4), crate::measure::Rounding::FitInside),
                rule.cite,
            ));
        }
        if let Some((from, to)) = figure.place {
            steps.push(Step::of(
                if matches!(ask.through, Through::Studs { .. }) {
                    "Its centre from a face"
                } else {
                    "Its centre above the lower edge"
                },
                vec![
                    figure.hole.into(),
                    word("÷ 2 +"),
                    member.edge_rule().value.into(),
                ],
                Amount::range(from, to),
                member.edge_rule().cite,
            ));
        }
    }
    if let Some(reach) = figure.reach {
        steps.push(Step::of(
            "Farthest hole within the limits",
            Vec::new(),
            reach,
            Cite::computed("the room below the upper end over the fall"),
        ));
    }
    if let (Some(arm), Some(asked)) = (figure.arm, ask.arm) {
        let cite = longest_arm(ask.code, asked.size).1;
        steps.push(Step::of("Longest trap arm", Vec::new(), arm.most, cite));
        steps.push(Step::of(
            "Fall of the trap arm",
            vec![
                asked.length.into(),
                word("×"),
                Term::Figure(slope(figure.fall)),
            ],
            arm.falls,
            Cite::computed("its length times its fall"),
        ));
    }
    units_steps(ask, figure, &mut steps);
    if let (Some(from_studs), Some(flange)) = (figure.flange, ask.flange) {
        steps.push(Step::of(
            "Bare studs to the centre of the flange",
            vec![flange.rough_in.into(), word("+"), flange.to_come.into()],
            from_studs,
            Cite::computed("what still comes onto the studs is added"),
        ));
    }
    steps
}

fn units_steps(ask: &Ask, figure: &Figure, steps: &mut Vec<Step>) {
    for (fixture, count) in Fixture::ALL
        .iter()
        .zip(&ask.fixtures)
        .filter(|(_, n)| **n > 0)
    {
        let (each, _, cite) = units(*fixture);
        steps.push(Step::of(
            match fixture {
                Fixture::Lavatory => "Fixture units, lavatories",
                Fixture::Tub => "Fixture units, tubs",
                Fixture::Shower => "Fixture units, showers",
                Fixture::Closet => "Fixture units, water closets to 1.6 gal",
                Fixture::LargeCloset => "Fixture units, water closets over 1.6 gal",
            },
            vec![
                Amount::Count(i64::from(*count)).into(),
                Term::Word("×"),
                Amount::Count(i64::from(each)).into(),
            ],
            Amount::Count(i64::from(count * each)),
            cite,
        ));
    }
    if let Some(size) = figure.needs {
        let (most, cite) = carries(ask.code, size);
        steps.push(Step::of(
            "Least drain for them",
            vec![
                Amount::Count(i64::from(figure.units)).into(),
                Term::Word("of at most"),
                Amount::Count(i64::from(most)).into(),
            ],
            size.length(),
            cite,
        ));
    }
}

fn needs_of(figure: &Figure) -> Vec<Need> {
    let plates = Need {
        material: Material::ShieldPlate,
        amount: Amount::Count(i64::from(figure.plates)),
        why: Phrase::plain("pipe near the face of a stud"),
    };
    (figure.plates > 0).then_some(plates).into_iter().collect()
}
