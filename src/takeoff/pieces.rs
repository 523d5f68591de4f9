//! Pieces laid out on sheets, to count what has to be bought.

use crate::measure::{Amount, Length};

/// A saw cut.
const KERF: Length = Length::in_64(0, 8);

/// A sheet of board.
const SHEET: (Length, Length) = (Length::feet(4), Length::feet(8));

/// Whether a piece, its short side first, comes out of one sheet.
pub(super) fn on_a_sheet(across: Length, up: Length) -> bool {
    across <= SHEET.0 && up <= SHEET.1
}

/// Sheets of 4 by 8 ft that hold the pieces, laid in rows, tallest first; a piece larger than a sheet takes as many
/// sheets as its area fills.
pub(super) fn sheets(amounts: &[&Amount]) -> u32 {
    let (wide, high) = SHEET;
    let mut pieces: Vec<(Length, Length)> = amounts
        .iter()
        .filter_map(|amount| {
            if let Amount::Size(a, b) = amount {
                Some((*a.min(b), *a.max(b)))
            } else {
                None
            }
        })
        .collect();
    pieces.sort_by_key(|(_, tall)| std::cmp::Reverse(*tall));
    let mut full = 0;
    // Each sheet: its rows (width used, height), and the height used.
    let mut open: Vec<(Vec<(Length, Length)>, Length)> = Vec::new();
    for (across, up) in pieces {
        if !on_a_sheet(across, up) {
            full += ((across.metres() * up.metres()) / (wide.metres() * high.metres()))
                .ceil()
                .max(2.0) as u32;
            continue;
        }
        let placed = open.iter_mut().any(|(rows, used)| {
            if let Some(row) = rows
                .iter_mut()
                .find(|(taken, tall)| *tall >= up && *taken + KERF + across <= wide)
            {
                row.0 = row.0 + KERF + across;
                return true;
            }
            let fits = *used + KERF + up <= high;
            if fits {
                rows.push((across, up));
                *used = *used + KERF + up;
            }
            fits
        });
        if !placed {
            open.push((vec![(across, up)], up));
        }
    }
    full + open.len() as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_share_sheets() {
        let piece = Amount::Size(Length::inches(32), Length::inches(12));
        assert_eq!(sheets(&[&piece; 6]), 1);
    }
}
