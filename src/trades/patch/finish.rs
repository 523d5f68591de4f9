//! Tape, compound, coats and the waits between them.

use super::{Air, Ask, Figure, Method, Wait};
use crate::handbook::{Cite, cautions, gypsum};
use crate::measure::quantity::{Volume, fahrenheit, gallons, litres};
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Compound, Finding, Material, Need, Step, Term, Weight};

/// The tape along a joint.
///
/// `tape = 2 (width + height)`
///
/// # Inputs
/// `width` and `height` of the opening.
///
/// # Gives
/// The perimeter, exact.
///
/// # Source
/// Geometry.
///
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::patch::tape_round};
/// assert_eq!(tape_round(Length::inches(32), Length::inches(12)), Length::inches(88));
/// ```
#[must_use]
pub fn tape_round(width: Length, height: Length) -> Length {
    (width + height) * 2
}

/// The ready-mixed compound that a length of taped joint takes, from the least to the most.
///
/// `V = tape ÷ 380 ft × 5 gal … 10 gal`: the joints of 1000 ft² of board take 380 ft of tape and, in the same table,
/// 5 gal of compound; a maker's figure comes to almost 10 gal. The two are not averaged.
///
/// # Inputs
/// `tape`: length of the taped joint.
///
/// # Gives
/// The least and the most.
///
/// # Source
/// [`gypsum::COMPOUND_LEAST`], [`gypsum::COMPOUND_MOST`] (from memory), [`gypsum::TAPE_PER_1000_SQUARE_FEET`].
///
/// # Example
/// ```
/// use storyrod::{measure::{Length, quantity::in_gallons}, trades::patch::compound_for};
/// let (least, most) = compound_for(Length::feet(38));
/// assert!((in_gallons(least) - 0.5).abs() < 1e-9 && (in_gallons(most) - 1.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn compound_for(tape: Length) -> (Volume, Volume) {
    let share = tape.metres() / gypsum::TAPE_PER_1000_SQUARE_FEET.value.metres();
    (
        gallons(gypsum::COMPOUND_LEAST.value * share),
        gallons(gypsum::COMPOUND_MOST.value * share),
    )
}

/// Adds tape, compound, coats and waits to a figure.
pub(super) fn finish(figure: &mut Figure, ask: &Ask) {
    let joint = match (figure.method, figure.patch_side) {
        (Method::Fill, _) => None,
        (Method::AdhesivePatch, side) => side.map(|side| (side, side)),
        _ => figure.opening.map(|o| (o.width(), o.height())),
    };
    if let Some((width, height)) = joint {
        joint_compound(figure, width, height);
    }
    if figure.method == Method::Fill {
        fill(figure, ask);
    }
    figure.coats = 3;
    waits(figure, ask.air);
    figure.account.cautions.extend([
        &cautions::WALL_SANDING_DUST,
        &cautions::WALL_ASBESTOS,
        &cautions::WALL_LEAD,
    ]);
}

fn joint_compound(figure: &mut Figure, width: Length, height: Length) {
    let round = tape_round(width, height);
    if figure.method != Method::AdhesivePatch {
        figure.tape = round;
        figure.account.needs.push(Need {
            material: Material::JointTape,
            amount: round.into(),
            why: "All round the piece".into(),
        });
    }
    figure.account.working.push(Step {
        what: "Joint round the piece".into(),
        sum: vec![
            Amount::Count(2).into(),
            Term::Word("× ("),
            width.into(),
            Term::Word("+"),
            height.into(),
            Term::Word(")"),
        ],
        gives: round.into(),
        cite: Cite::computed("perimeter of the joint"),
    });
    let (least, most) = compound_for(round);
    figure.account.working.push(Step {
        what: "Compound, by the joint's share of what 1000 square feet of board take".into(),
        sum: vec![
            round.into(),
            Term::Word("÷"),
            gypsum::TAPE_PER_1000_SQUARE_FEET.value.into(),
            Term::Word("×"),
            Amount::Range(
                Box::new(gallons(gypsum::COMPOUND_LEAST.value).into()),
                Box::new(gallons(gypsum::COMPOUND_MOST.value).into()),
            )
            .into(),
        ],
        gives: Amount::Range(Box::new(least.into()), Box::new(most.into())),
        cite: gypsum::COMPOUND_LEAST.cite,
    });
    figure.account.findings.push(Finding {
        weight: Weight::Note,
        says: Phrase::with(
            "The sources give {0} and {1} of compound for the same area. Buy for the larger.",
            [
                gallons(gypsum::COMPOUND_LEAST.value).into(),
                gallons(gypsum::COMPOUND_MOST.value).into(),
            ],
        ),
        rule: gypsum::COMPOUND_MOST.cite,
    });
    need_compound(figure, (least, most), Compound::Drying);
}

/// The hole itself, as deep as the board.
fn fill(figure: &mut Figure, ask: &Ask) {
    let (width, height) = (figure.damage.width(), figure.damage.height());
    let volume = litres(width.metres() * height.metres() * ask.board.metres() * 1000.0);
    figure.account.working.push(Step {
        what: "Compound that fills the hole".into(),
        sum: vec![
            width.into(),
            Term::Word("×"),
            height.into(),
            Term::Word("×"),
            ask.board.into(),
        ],
        gives: volume.into(),
        cite: Cite::computed("volume of the hole"),
    });
    need_compound(figure, (volume, volume), Compound::Setting);
}

fn need_compound(figure: &mut Figure, range: (Volume, Volume), kind: Compound) {
    figure.compound = Some(range);
    figure.account.needs.push(Need {
        material: Material::Compound(kind),
        amount: range.1.into(),
        why: "Three coats, by the larger of the figures".into(),
    });
}

fn waits(figure: &mut Figure, air: Air) {
    figure.waits.push(Wait {
        what: Phrase::with(
            "Keep the room at {0} or warmer before the first coat and until the last is dry.",
            [Amount::Temperature(fahrenheit(
                gypsum::COLDEST_FAHRENHEIT.value,
            ))],
        ),
        hours: gypsum::WARM_BEFORE_HOURS.value,
        cite: gypsum::COLDEST_FAHRENHEIT.cite,
    });
    let Some(hours) = gypsum::drying_hours(air.fahrenheit, air.humidity) else {
        figure.account.findings.push(Finding {
            weight: Weight::Caution,
            says: Phrase::with(
                "How long compound dries at {0} and {1} humidity is not known: the table runs from {2} to {3} and to {4}. Wait until it is dry and white all over.",
                [
                    Amount::Temperature(fahrenheit(air.fahrenheit)),
                    Amount::Share(air.humidity / 100.0),
                    Amount::Temperature(fahrenheit(gypsum::DRYING_FAHRENHEIT[0])),
                    Amount::Temperature(fahrenheit(gypsum::DRYING_FAHRENHEIT[4])),
                    Amount::Share(gypsum::DRYING_HUMIDITY[0] / 100.0),
                ],
            ),
            rule: gypsum::DRYING_HOURS.cite,
        });
        return;
    };
    let first = Phrase::with(
        "Let the first coat dry, in air of {0} and {1} humidity.",
        [
            Amount::Temperature(fahrenheit(air.fahrenheit)),
            Amount::Share(air.humidity / 100.0),
        ],
    );
    let texts = [
        first,
        "Let the second coat dry.".into(),
        "Let the third coat dry before you sand and prime.".into(),
    ];
    figure.waits.extend(texts.map(|what| Wait {
        what,
        hours,
        cite: gypsum::DRYING_HOURS.cite,
    }));
}
