//! Casing: legs, heads and the four sides of a window.

use super::ask::{Ask, Frame, Head, Opening};
use super::ends::End;
use super::runs::{Of, Part, Piece, Runs, Side, Tight};
use crate::measure::Length;

/// The pieces of every frame: left leg, head, right leg, foot.
pub(super) fn cased(ask: &Ask) -> Runs {
    let mut runs = Runs::default();
    let beside = ask.reveal + ask.width;
    for (n, frame) in ask.frames.iter().enumerate() {
        if let Some((wall, rooms)) = frame.on {
            for (side, room) in [(Side::Left, rooms[0]), (Side::Right, rooms[1])] {
                if room < beside {
                    let room = (room - ask.reveal).max(Length::ZERO);
                    runs.tight.push(Tight { wall, side, room });
                }
            }
        }
        for _ in 0..frame.count {
            for (part, ends, back) in parts(ask, frame) {
                if runs.pieces.len() >= super::ask::MOST_PIECES {
                    return runs;
                }
                let number = u32::try_from(runs.pieces.len() + 1).unwrap_or(u32::MAX);
                runs.pieces.push(Piece {
                    number,
                    of: Of::Frame(n, part),
                    ends,
                    back,
                });
            }
        }
    }
    runs
}

/// The parts of one frame, each with its ends and its length along the inner edge.
fn parts(ask: &Ask, frame: &Frame) -> Vec<(Part, [End; 2], Length)> {
    let (square, mitre) = (End::SQUARE, End::face(ask.width));
    let four = frame.four && frame.opening == Opening::Window;
    let inner = frame.width + ask.reveal * 2;
    let (leg, across, top) = match ask.head {
        Head::Mitred => (frame.height + ask.reveal, inner, mitre),
        // It lies over the legs.
        Head::Butted => (frame.height + ask.reveal, inner + ask.width * 2, square),
    };
    // Of a window both ends of a side are alike.
    let (leg, low) = if four {
        (leg + ask.reveal, top)
    } else {
        (leg, square)
    };
    let mut all = vec![
        (Part::Left, [low, top], leg),
        (Part::Head, [top, top], across),
        (Part::Right, [low, top], leg),
    ];
    if four {
        all.push((Part::Foot, [top, top], across));
    }
    all
}
