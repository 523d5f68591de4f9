//! Comma-separated values, as RFC 4180 has them.

/// A cell: ours, or typed by hand and so not to be taken for a formula.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Cell {
    /// Written by the program.
    Ours(String),
    /// Typed by a person.
    ByHand(String),
}

/// Rows of cells as CSV, each row ended by CR LF.
///
/// A cell typed by hand that a spreadsheet would take for a formula gets an apostrophe before it.
///
/// # Source
/// RFC 4180, section 2, from memory.
///
/// # Example
/// ```
/// use storyrod::packet::{Cell, csv};
/// let row = vec![Cell::Ours("Board, 1/2\"".into()), Cell::ByHand("=1+1".into())];
/// assert_eq!(csv(&[row]), "\"Board, 1/2\"\"\",'=1+1\r\n");
/// ```
#[must_use]
pub fn csv(rows: &[Vec<Cell>]) -> String {
    let mut text = String::new();
    for row in rows {
        let cells: Vec<String> = row.iter().map(cell).collect();
        text.push_str(&cells.join(","));
        text.push_str("\r\n");
    }
    text
}

fn cell(cell: &Cell) -> String {
    let text = match cell {
        Cell::Ours(text) => text.clone(),
        Cell::ByHand(text) if text.starts_with(['=', '+', '-', '@', '\t', '\r']) => {
            format!("'{text}")
        }
        Cell::ByHand(text) => text.clone(),
    };
    if text.contains(['"', ',', '\n', '\r']) {
        format!("\"{}\"", text.replace('"', "\"\""))
    } else {
        text
    }
}
