//! How a job shows its figures.

use super::{Amount, Length, Phrase, Rounding};

/// The units that a job shows and in which a bare number is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Units {
    /// Feet, inches and a fraction; a bare number is inches.
    FeetInches {
        /// Marks to an inch: 2, 4, 8, 16, 32 or 64.
        marks: u8,
    },
    /// Decimal inches; a bare number is inches.
    DecimalInches,
    /// Whole or decimal millimetres.
    Millimetres,
    /// Centimetres.
    Centimetres,
    /// Metres.
    Metres,
}

/// How a fraction is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figures {
    /// `3' 7 5/16"`: for files, the clipboard and a screen reader.
    Plain,
    /// `3′ 7` and the stacked glyph of the embedded face: for screens and sheets.
    Set,
}

impl Units {
    /// A length as this job shows it, to the mark that it shows.
    #[must_use]
    pub fn length(self, length: Length, rounding: Rounding, figures: Figures) -> String {
        let _ = (length, rounding, figures);
        String::new()
    }
    /// Any figure as this job shows it, lengths to the nearest mark.
    #[must_use]
    pub fn amount(self, amount: &Amount, figures: Figures) -> String {
        let _ = (amount, figures);
        String::new()
    }
    /// A sentence with its figures filled in.
    #[must_use]
    pub fn phrase(self, phrase: &Phrase, figures: Figures) -> String {
        let _ = figures;
        phrase.text.to_owned()
    }
}
