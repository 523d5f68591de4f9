//! What a balanced start gave up for its narrowest cut: beside it lie starts that are even, that take fewer tiles, or that
//! need not keep to what is held.

use super::balance::{balance, even_starts, uneven};
use super::lay::lay_in;
use super::pattern::Frame;
use super::{Ask, Figure, Layout, Piece, Sight, Start};
use crate::geometry::{Point, narrowest};
use crate::handbook::Cite;
use crate::measure::{Amount, Length, Phrase};
use crate::trades::{Finding, Weight};

/// A hair: under it nothing was given up.
const HAIR: Length = Length::nm(500_000);

/// The thinnest cut of a layout; as long as can be where nothing is cut.
fn thinnest(layout: &Layout) -> Length {
    let cuts = layout.tiles.iter().filter_map(|laid| match &laid.piece {
        Piece::Whole => None,
        Piece::Cut(pieces) => pieces.iter().map(narrowest).min(),
    });
    cuts.min().unwrap_or(Length::LONGEST)
}

fn note(text: &'static str, amounts: Vec<Amount>) -> Finding {
    Finding {
        weight: Weight::Note,
        says: Phrase::with(text, amounts),
        rule: Cite::computed("the same pattern laid from that start"),
    }
}

/// What the search gave up, in words.
pub(super) fn traded(ask: &Ask, figure: &Figure) -> Vec<Finding> {
    let Start::Balanced(sight) = ask.start else {
        return Vec::new();
    };
    let Some(ours) = figure.narrowest else {
        return Vec::new();
    };
    let parts = &figure.layout.parts;
    let mut all = Vec::new();
    if ask.hold.is_some() {
        let free = Ask {
            hold: None,
            ..ask.clone()
        };
        if let Ok(best) = balance(&free, sight, false) {
            let theirs = thinnest(&best.layout);
            if theirs != Length::LONGEST && theirs > ours + HAIR {
                all.push(note(
                    "What is held costs width: without it the narrowest cut would be {0}, with it {1}.",
                    vec![theirs.into(), ours.into()],
                ));
            }
        }
    }
    let off = uneven(ask, parts, figure.layout.start, sight);
    if off > HAIR {
        let frame = Frame::of(ask, Point::default());
        let even = even_starts(ask, parts).into_iter().filter_map(|(u, v)| {
            let layout = lay_in(ask, parts, frame.out(u, v));
            (uneven(ask, parts, layout.start, sight) <= HAIR).then(|| thinnest(&layout))
        });
        if let Some(even) = even.max()
            && even + HAIR < ours
        {
            let text = match sight {
                Sight::Middle => {
                    "The pattern lies {0} off the middle, both ways together: even about it the narrowest cut would be {1}, now it is {2}."
                }
                _ => {
                    "The pattern lies {0} off the line you chose: even about it the narrowest cut would be {1}, now it is {2}."
                }
            };
            all.push(note(text, vec![off.into(), even.into(), ours.into()]));
        }
    }
    let corner = lay_in(ask, parts, Point::default());
    let (theirs, count) = (thinnest(&corner), corner.tiles.len());
    let laid = figure.layout.tiles.len();
    if count < laid && theirs + HAIR < ours {
        all.push(note(
            "From the corner {0} fewer tiles would be laid, with a narrowest cut of {1}; now it is {2}.",
            vec![
                Amount::Count((laid - count) as i64),
                theirs.into(),
                ours.into(),
            ],
        ));
    }
    all
}

#[cfg(test)]
mod tests {
    use super::super::{Hold, Side, figure};
    use super::*;

    fn said(ask: &Ask) -> Vec<&'static str> {
        let findings = figure(ask).unwrap().account.findings.into_iter();
        findings.map(|finding| finding.says.text).collect()
    }

    #[test]
    fn what_is_held_is_said_to_cost_width_where_it_does() {
        // 59 1/2 in between gaps, in a module of 12: a whole tile at the left leaves 11 1/2 at the right, the best 11 11/16.
        let mut ask = Ask::default();
        let costs = |ask: &Ask| {
            said(ask)
                .iter()
                .any(|text| text.starts_with("What is held"))
        };
        assert!(!costs(&ask));
        ask.hold = Some(Hold::Whole(Side::Left));
        // A cut of more than half a tile is as good as any.
        ask.surface = crate::geometry::Region::rectangle(Length::inches(64), Length::inches(96));
        // 63 1/2 in: from the left a strip of 3 1/2 in is left over; balanced two of more than half a tile.
        assert!(costs(&ask));
    }
}
