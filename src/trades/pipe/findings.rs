//! What deserves a remark, and what can hurt.

use super::ask::Ask;
use super::figure::Figure;
use super::fitting::{Measured, Port};
use crate::handbook::cautions::{self, Caution};
use crate::handbook::pipe::{Family, GAUGE, least_socket, remembered, thread, tube};
use crate::handbook::{Cite, Known, documents};
use crate::measure::{Amount, Angle, Length, Phrase};
use crate::trades::{Finding, Weight};

fn count(number: usize) -> Amount {
    Amount::Count(number as i64)
}

/// Everything remarked, the heaviest first.
pub(super) fn findings(ask: &Ask, figure: &Figure) -> Vec<Finding> {
    let mut found = Vec::new();
    let mut say = |weight, says: Phrase, rule| found.push(Finding { weight, says, rule });
    lasts(figure, &mut say);
    pieces(ask, figure, &mut say);
    threads(ask, &mut say);
    printed(figure, &mut say);
    for own in &ask.fittings {
        measured(own, &mut say);
    }
    drains(ask, &mut say);
    tools(ask, figure, &mut say);
    cure(ask, figure, &mut say);
    found.sort_by_key(|finding: &Finding| std::cmp::Reverse(finding.weight));
    found
}

type Say<'a> = dyn FnMut(Weight, Phrase, Cite) + 'a;

fn lasts(figure: &Figure, say: &mut Say<'_>) {
    for last in &figure.last {
        say(
            Weight::Note,
            Phrase::with(
                "Cut leg {0} last and {1} long, and trim it in place: so far may the others along it be off.",
                [count(last.leg + 1), last.long.into()],
            ),
            Cite::computed("every cut off by what the tape may be off, all the same way"),
        );
    }
    if let Some(off) = figure.off {
        let most = off.axes().into_iter().map(Length::abs).max();
        say(
            Weight::Note,
            Phrase::with(
                "The run ends within {0} of where it has to, less than its cuts may be off.",
                [Amount::Length(most.unwrap_or_default())],
            ),
            Cite::computed("all legs added up, along each axis"),
        );
    }
}

fn pieces(ask: &Ask, figure: &Figure, say: &mut Say<'_>) {
    if !figure.fits() {
        say(
            Weight::Note,
            Phrase::with(
                "{0} of {1} pieces were fitted dry. Join nothing before all of them were.",
                [count(figure.dry.0), count(figure.dry.1)],
            ),
            super::order::DRY,
        );
    }
    if ask.pipe.family() == Family::Pex {
        say(
            Weight::Note,
            "PEX bends and wants slack, about 1/8 in a foot; cut it longer than these straight lengths.".into(),
            Cite::read(&documents::PEX_MANUAL, "slack of 1/8 in a foot"),
        );
    }
}

fn threads(ask: &Ask, say: &mut Say<'_>) {
    if ask.pipe.family() != Family::Steel {
        return;
    }
    if let Some(thread) = thread(ask.size) {
        say(
            Weight::Caution,
            Phrase::with(
                "Each thread may go in {0} more or less, two turns. Cut the last piece after the rest is made up.",
                [Amount::Length(thread.two_turns())],
            ),
            GAUGE,
        );
    }
}

/// A printed length that stands until a fitting is measured.
fn printed(figure: &Figure, say: &mut Say<'_>) {
    let mut told = Vec::new();
    for known in figure.legs.iter().flat_map(|leg| leg.ends).flatten() {
        let Some(take_off) = known.take_off else {
            continue;
        };
        if take_off.cite.known == Known::CommonPractice || told.contains(&known.shape) {
            continue;
        }
        told.push(known.shape);
        say(
            Weight::Caution,
            Phrase::with(
                "The take-off of the {0} fitting, {1}, is a printed figure; makers differ. Measure one of yours.",
                [known.shape.size.nominal().into(), take_off.value.into()],
            ),
            take_off.cite,
        );
    }
}

/// A measurement that can hardly be right.
fn measured(own: &Measured, say: &mut Say<'_>) {
    let shape = own.shape;
    let size = Amount::Length(shape.size.nominal());
    if let Some((depth, least)) = own.depth.zip(least_socket(shape.family, shape.size))
        && depth < least.value
    {
        say(
            Weight::Caution,
            Phrase::with(
                "A socket {0} deep at {1} is shallower than the standard's least, {2}. Measure it again.",
                [depth.into(), size.clone(), least.value.into()],
            ),
            least.cite,
        );
    }
    let about = remembered(shape.family, shape.kind, shape.turn, shape.size);
    let hub = shape.port != Port::Spigot && shape.size == shape.other;
    if let Some(((take_off, depth), _)) = about.take_off.zip(about.depth).zip(hub.then_some(())) {
        let face = take_off.value + depth.value;
        if (own.face - face).abs() > Length::in_64(0, 24) {
            say(
                Weight::Note,
                Phrase::with(
                    "Centre to face {0} at {1}: the usual one is about {2}. Look whether it is measured from the centre.",
                    [own.face.into(), size, face.into()],
                ),
                take_off.cite,
            );
        }
    }
}

fn drains(ask: &Ask, say: &mut Say<'_>) {
    if !ask.pipe.family().drains() {
        return;
    }
    say(
        Weight::Note,
        "Quarter bends for drains are made for a fall of 1/4 in a foot, a little more than 90°; sizes, fall and vents are the local code's.".into(),
        Cite::read(&documents::PLUMBING_1918, "fittings pitched for a fall"),
    );
    say(
        Weight::Note,
        Phrase::with(
            "The fittings themselves are made to {0} each; what the tape leaves is not all that moves the end.",
            [Amount::Length(Length::in_64(0, 4))],
        ),
        Cite::read(&documents::D3311, "section 3.1, laying lengths to 1/16 in"),
    );
}

fn tools(ask: &Ask, figure: &Figure, say: &mut Say<'_>) {
    let widest = figure.pieces.iter().map(|piece| piece.size).max();
    let outside = widest.and_then(|size| tube(ask.pipe, size));
    if let Some((jaw, outside)) = ask.jaw.zip(outside)
        && outside.outside.value > jaw
    {
        say(
            Weight::Note,
            Phrase::with(
                "A pipe {0} across is more than the cutter's {1}: mark it all round with the strip and saw it while you turn the pipe.",
                [outside.outside.value, jaw].map(Amount::Length),
            ),
            Cite::practice(
                "wider than a hand cutter's jaw: marked all round and sawn while the pipe is turned",
            ),
        );
    }
    if ask.mitre > Angle::ZERO {
        say(
            Weight::Caution,
            "A mitred joint is no plumbing fitting: the strip is for a sleeve or a guard, not for water or waste.".into(),
            Cite::practice("a mitred joint is no plumbing fitting"),
        );
    }
}

fn cure(ask: &Ask, figure: &Figure, say: &mut Say<'_>) {
    let family = ask.pipe.family();
    if family.cemented() && figure.cure.is_none() {
        say(
            Weight::Caution,
            Phrase::with(
                "No cure is printed for {0}. Follow the label, or wait for other weather.",
                [Amount::Temperature(crate::measure::quantity::fahrenheit(
                    ask.air,
                ))],
            ),
            Cite::read(&documents::PLASTICS_MANUAL, "p. 96, 0 to 100 °F"),
        );
    }
    if figure
        .grows
        .is_some_and(|grows| grows > Length::in_64(0, 8))
    {
        say(
            Weight::Note,
            Phrase::with(
                "Warmed, its longest leg grows by {0}: leave its end free and no strap tight.",
                [Amount::Length(figure.grows.unwrap_or_default())],
            ),
            Cite::computed("expansion by the length and the warming"),
        );
    }
}

/// What can hurt.
pub(super) fn cautions(ask: &Ask) -> Vec<&'static Caution> {
    let family = ask.pipe.family();
    let all: [(bool, &'static Caution); 7] = [
        (family == Family::Copper, &cautions::PIPE_FLAME),
        (family.cemented(), &cautions::PIPE_SOLVENT),
        (family.drains(), &cautions::OPEN_DRAIN),
        (family.plastic(), &cautions::PIPE_NO_AIR),
        (!family.drains(), &cautions::PIPE_LEAD),
        (!family.drains(), &cautions::PIPE_SCALD),
        (true, &cautions::PIPE_BURR),
    ];
    all.into_iter()
        .filter(|(says, _)| *says)
        .map(|(_, caution)| caution)
        .collect()
}
