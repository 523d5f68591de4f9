//! What the rules say of a cutting list of trim.

use super::ask::{Ask, Kind};
use super::ends::saw_angle;
use super::figure::Figure;
use super::runs::{Of, Piece};
use crate::handbook::{Cite, trim as book};
use crate::measure::{Amount, Angle, Length, Phrase};
use crate::site::Side;
use crate::trades::{Finding, Weight};

fn finding(weight: Weight, text: &'static str, amounts: Vec<Amount>, rule: Cite) -> Finding {
    Finding {
        weight,
        says: Phrase::with(text, amounts),
        rule,
    }
}

/// To a tenth of a degree, as a saw is set.
fn set(angle: Angle) -> Amount {
    let tenth = 100_000;
    let micro = angle.as_microdegrees();
    let rounded = (micro + micro.signum() * tenth / 2) / tenth * tenth;
    Amount::Angle(Angle::microdegrees(rounded))
}

/// Everything that the rules say, the heaviest first.
pub(super) fn findings(ask: &Ask, figure: &Figure) -> Vec<Finding> {
    let number = |piece: &Piece| Amount::Count(i64::from(piece.number));
    let mut all = Vec::new();
    for piece in &figure.pieces {
        if !piece.short().is_positive() {
            all.push(finding(
                Weight::Stop,
                "No. {0}, {1} long, is shorter than its two cuts: there is nothing left between them. Cut it as a filler from one block, or cope both ends.",
                vec![number(piece), piece.long().into()],
                book::POINTS,
            ));
        }
    }
    for tight in &figure.tight {
        let wide = if ask.kind == Kind::Casing {
            ask.width
        } else {
            ask.casing
        };
        let text = match tight.side {
            Side::Left => {
                "Wall {2}: to the left of the opening there is {0} for casing of {1}. Rip the casing to fit, or leave it out there."
            }
            Side::Right => {
                "Wall {2}: to the right of the opening there is {0} for casing of {1}. Rip the casing to fit, or leave it out there."
            }
        };
        all.push(finding(
            Weight::Caution,
            text,
            vec![tight.room.into(), wide.into(), letter(tight.wall)],
            Cite::computed("the opening as measured, less the reveal"),
        ));
    }
    if let (Kind::Base, Some(walls)) = (ask.kind, &ask.walls) {
        corners(walls, figure, &mut all);
    }
    for scarf in &figure.scarfs {
        let (text, mut amounts): (_, Vec<Amount>) = match (scarf.wall, scarf.on_stud) {
            (Some(_), true) => (
                "Wall {1} is longer than a stick: the base is joined on {0} from its left corner, over a stud, with glue.",
                vec![scarf.at.into()],
            ),
            (Some(_), false) => (
                "Wall {1} is longer than a stick: the base is joined on {0} from its left corner. No stud is known there; find one, or fasten both ends to the bottom plate.",
                vec![scarf.at.into()],
            ),
            (None, _) => (
                "A piece by hand is longer than a stick: it is joined on {0} from its left end. Move the joint over a stud.",
                vec![scarf.at.into()],
            ),
        };
        amounts.extend(scarf.wall.map(letter));
        all.push(finding(Weight::Note, text, amounts, book::SCARF.cite));
    }
    all.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    all
}

fn letter(wall: usize) -> Amount {
    Amount::Letter(wall)
}

/// Corners where base meets that are off a right angle, and those that no saw reaches.
fn corners(walls: &[super::Wall], figure: &Figure, all: &mut Vec<Finding>) {
    for (at, wall) in walls.iter().enumerate() {
        let saw = saw_angle(wall.turn);
        let meets = figure.pieces.iter().any(|piece| {
            let Of::Wall(of, _, to) = piece.of else {
                return false;
            };
            let end = piece.ends[1];
            of == at && to + end.off >= wall.length && end.saw > Angle::ZERO
                || of == (at + 1) % walls.len() && starts(piece) && piece.ends[0].saw > Angle::ZERO
        });
        if !meets {
            continue;
        }
        let off = Angle::microdegrees(wall.turn.as_microdegrees().abs()) - Angle::RIGHT;
        let corner = Angle::degrees(180) - Angle::microdegrees(wall.turn.as_microdegrees().abs());
        if saw > book::SAW_REACH.value {
            all.push(finding(
                Weight::Caution,
                "The corner at the right end of wall {2} is {0}: the saw would have to turn {1}, beyond most saws. Cut it against a block of the missing angle, or plane the mitre by hand.",
                vec![set(corner), set(saw), letter(at)],
                book::SAW_REACH.cite,
            ));
        } else if off > book::OFF_SQUARE.value || -off > book::OFF_SQUARE.value {
            all.push(finding(
                Weight::Note,
                "The corner at the right end of wall {2} is {0}, not square: set the saw at {1}. Try it on two short ends first.",
                vec![set(corner), set(saw), letter(at)],
                book::OFF_SQUARE.cite,
            ));
        }
    }
}

fn starts(piece: &Piece) -> bool {
    match piece.of {
        Of::Wall(_, from, _) => from - piece.ends[0].off <= Length::ZERO,
        _ => false,
    }
}
