//! Which method a hole calls for, and what is said when the person chose another.

use super::place::Place;
use super::{Ask, Method, Rect};
use crate::handbook::{Cite, gypsum};
use crate::measure::{Length, Phrase};
use crate::trades::{Finding, Weight};

/// Width of a backing strip, a dressed 1x3.
pub(super) const STRIP: (Length, Length) = (Length::in_64(0, 48), Length::in_64(2, 32));
/// Clear width between studs at 16 in.
const CLEAR_BAY: Length = Length::in_64(14, 32);

/// What was decided.
pub(super) struct Decision {
    pub method: Method,
    pub why: Phrase,
    pub also_possible: Vec<Method>,
    pub findings: Vec<Finding>,
}

/// The smallest self-adhesive patch that lies on sound board all round.
///
/// `side ≥ larger side of the hole + 2 × 1 1/2 in`, the next of 4, 6 and 8 in.
///
/// # Inputs
/// `width` and `height` of the hole.
///
/// # Gives
/// The side of the patch; `None` for a hole of more than 5 in.
///
/// # Source
/// [`gypsum::PATCH_OVERLAP`], [`gypsum::PATCH_SIDES`].
///
/// # Example
/// ```
/// use storyrod::{measure::Length, trades::patch::adhesive_patch};
/// let hole = Length::in_64(2, 32);
/// assert_eq!(adhesive_patch(hole, hole), Some(Length::inches(6)));
/// ```
#[must_use]
pub fn adhesive_patch(width: Length, height: Length) -> Option<Length> {
    let least = width.max(height) + gypsum::PATCH_OVERLAP.value * 2;
    let sides = gypsum::PATCH_SIDES.value;
    sides.into_iter().find(|side| *side >= least)
}

/// The method, why, and what else would do.
pub(super) fn decide(ask: &Ask, place: &Place) -> Decision {
    let possible = possible(place);
    let best = possible.first().copied().unwrap_or(Method::CutBack);
    let method = ask.method.unwrap_or(best);
    let mut findings = Vec::new();
    if !possible.contains(&method) {
        findings.push(Finding {
            weight: Weight::Stop,
            says: cannot_work(method, place),
            rule: rule(method),
        });
    }
    let why = if ask.method.is_some() {
        "You chose this way.".into()
    } else {
        why(best, place)
    };
    Decision {
        method,
        why,
        also_possible: possible.into_iter().filter(|m| *m != method).collect(),
        findings,
    }
}

/// Every method that works, the lightest first.
fn possible(place: &Place) -> Vec<Method> {
    let side = place.hole.width().max(place.hole.height());
    let mut ways = Vec::new();
    if side < gypsum::FILL_BELOW.value {
        ways.push(Method::Fill);
    }
    if adhesive_patch(place.hole.width(), place.hole.height()).is_some() && patch_lies_sound(place)
    {
        ways.push(Method::AdhesivePatch);
    }
    if fits_in_a_bay(place) {
        ways.push(Method::BackedPatch);
    }
    ways.push(Method::CutBack);
    ways
}

fn patch_lies_sound(place: &Place) -> bool {
    place.is_sound(&place.hole.inset(-gypsum::PATCH_OVERLAP.value))
}

/// Both strips go in beside the studs, and their ends have sound board.
pub(super) fn fits_in_a_bay(place: &Place) -> bool {
    let (side, end) = (STRIP.1.half(), gypsum::STRIP_LONGER.value.half());
    let room = Rect {
        left: place.hole.left - side,
        right: place.hole.right + side,
        bottom: place.hole.bottom - end,
        top: place.hole.top + end,
    };
    if room.width() > CLEAR_BAY && place.studs.is_empty() {
        return false;
    }
    place.is_sound(&room)
        && !place.studs.iter().any(|centre| {
            let (left, right) = place.wood(*centre);
            left < room.right && right > room.left
        })
}

fn rule(method: Method) -> Cite {
    match method {
        Method::Fill => gypsum::FILL_BELOW.cite,
        Method::AdhesivePatch => gypsum::PATCH_OVERLAP.cite,
        Method::BackedPatch => gypsum::STRIP_LONGER.cite,
        Method::CutBack => Cite::practice("cut back to the studs"),
    }
}

fn why(method: Method, place: &Place) -> Phrase {
    let side = place.hole.width().max(place.hole.height());
    match method {
        Method::Fill => Phrase::with(
            "The hole is {0} at its widest; below {1} compound alone holds.",
            [side.into(), gypsum::FILL_BELOW.value.into()],
        ),
        Method::AdhesivePatch => Phrase::with(
            "A self-adhesive patch lies on {0} of sound board all round this hole of {1}.",
            [gypsum::PATCH_OVERLAP.value.into(), side.into()],
        ),
        Method::BackedPatch => Phrase::with(
            "The hole of {0} is too large for a self-adhesive patch and lies inside one bay, with room for strips.",
            [side.into()],
        ),
        Method::CutBack => Phrase::with(
            "The hole of {0} is wider than its bay leaves room for, touches a stud, or is close to an edge: the piece needs the studs.",
            [side.into()],
        ),
    }
}

fn cannot_work(method: Method, place: &Place) -> Phrase {
    let side = place.hole.width().max(place.hole.height());
    match method {
        Method::Fill => Phrase::with(
            "The hole is {0} at its widest: compound alone cracks out from {1} on. Use a patch or a piece of board.",
            [side.into(), gypsum::FILL_BELOW.value.into()],
        ),
        Method::AdhesivePatch => Phrase::with(
            "No patch sold lies on {0} of sound board all round a hole of {1} here: at most 5 in, away from edges. Use a piece of board.",
            [gypsum::PATCH_OVERLAP.value.into(), side.into()],
        ),
        Method::BackedPatch | Method::CutBack => Phrase::with(
            "Strips do not go in beside a hole of {0} here: it is too wide for its bay, touches a stud, or lacks {1} of sound board past each end. Cut back to the studs.",
            [side.into(), gypsum::STRIP_LONGER.value.half().into()],
        ),
    }
}
