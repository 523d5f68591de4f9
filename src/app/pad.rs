//! The pad: what is typed into it and what it comes to.

use super::Slot;
use crate::measure::{Figures, Length, Rounding, Units, fraction_glyph, read};

/// What kind of thing the pad reads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A length or a sum of lengths.
    Length,
    /// A plain number with a unit that stands beside it.
    Number(&'static str),
    /// Words.
    Words,
    /// One of a few things, each a tap: [`App::pad_choices`](super::App::pad_choices).
    Choice,
}

/// The open pad.
#[derive(Clone, Debug)]
pub struct Pad {
    /// What it fills in.
    pub slot: Slot,
    /// What it asks for, in words.
    pub asks: String,
    /// What it reads.
    pub kind: Kind,
    /// As typed so far.
    pub typed: String,
    /// The figure that stood there is replaced by the first key.
    pub fresh: bool,
    /// What is wrong with it, after it was refused.
    pub wrong: String,
    /// What was typed and asked about: typed again it is taken.
    pub(super) doubted: Option<String>,
    /// Where the tape stood when it was taken hold of.
    grabbed: Option<Length>,
}

/// The fraction keys: sixteenths in order, then nothing.
pub const FRACTIONS: [(u8, u8); 16] = [
    (1, 16),
    (1, 8),
    (3, 16),
    (1, 4),
    (5, 16),
    (3, 8),
    (7, 16),
    (1, 2),
    (9, 16),
    (5, 8),
    (11, 16),
    (3, 4),
    (13, 16),
    (7, 8),
    (15, 16),
    (0, 1),
];

impl Pad {
    /// A pad that opens on what stands there already.
    #[must_use]
    pub fn open(slot: Slot, asks: String, kind: Kind, stands: String) -> Pad {
        Pad {
            slot,
            asks,
            kind,
            typed: stands,
            fresh: true,
            wrong: String::new(),
            doubted: None,
            grabbed: None,
        }
    }

    /// Whether something was typed that is not taken yet.
    #[must_use]
    pub fn is_typed(&self) -> bool {
        !self.fresh && !self.typed.trim().is_empty()
    }

    /// The length typed so far, if it reads as one.
    #[must_use]
    pub fn length(&self, units: Units) -> Option<Length> {
        (self.kind == Kind::Length)
            .then(|| read::length(&self.typed, units).ok())
            .flatten()
    }

    /// The entry as it is shown: fractions stacked, signs set.
    #[must_use]
    pub fn shown(&self) -> String {
        match self.kind {
            Kind::Length => set_typed(&self.typed),
            Kind::Number(unit) if !self.typed.is_empty() => format!("{} {unit}", self.typed),
            _ => self.typed.clone(),
        }
    }

    /// The same length in the other units.
    #[must_use]
    pub fn other(&self, units: Units) -> String {
        self.length(units)
            .map(|length| units.other(length))
            .unwrap_or_default()
    }

    /// A key of the pad or of a keyboard. Gives whether it was one of ours.
    pub fn key(&mut self, key: &str) -> bool {
        if self.kind == Kind::Choice {
            return false;
        }
        let typed = match key {
            "erase" | "\u{8}" => {
                if self.fresh {
                    self.typed.clear();
                } else {
                    self.typed.pop();
                    while self.typed.ends_with(' ') {
                        self.typed.pop();
                    }
                }
                self.fresh = false;
                self.wrong.clear();
                return true;
            }
            "ft" => "' ",
            "in" => "\"",
            "(" if self.typed.matches('(').count() > self.typed.matches(')').count()
                && self
                    .typed
                    .ends_with(|c: char| c.is_ascii_digit() || c == '"' || c == '\'') =>
            {
                ")"
            }
            "+" => " + ",
            "-" | "−" if self.kind == Kind::Length => " - ",
            "*" | "×" => " × ",
            "÷" => " ÷ ",
            "mm" | "cm" | "m" => key,
            _ if key.starts_with("frac:") => return self.fraction(&key[5..]),
            _ if key
                .chars()
                .all(|c| c.is_ascii_digit() || " .,'\"/()mcftin½¼¾⅛⅜⅝⅞".contains(c)) =>
            {
                key
            }
            // Any other letter stands there too, so that what is said of it is said of what was typed.
            _ if self.kind == Kind::Length
                && key
                    .chars()
                    .all(|c| c.is_alphabetic() || "±%&=?!;:".contains(c)) =>
            {
                key
            }
            _ => return false,
        };
        let continues = matches!(typed, " + " | " - " | " × " | " ÷ ");
        if self.fresh && !continues {
            self.typed.clear();
        }
        self.fresh = false;
        self.wrong.clear();
        self.typed.push_str(typed);
        true
    }

    /// A fraction key: it replaces the fraction that the last figure ends with, if it has one.
    fn fraction(&mut self, index: &str) -> bool {
        let Some(&(over, under)) = index.parse::<usize>().ok().and_then(|i| FRACTIONS.get(i))
        else {
            return false;
        };
        if self.fresh {
            self.typed.clear();
            self.fresh = false;
        }
        self.wrong.clear();
        let kept = self.typed.trim_end_matches(['"', ' ']).to_owned();
        let cut = kept.rfind(' ').map_or(0, |i| i + 1);
        let whole = if kept[cut..].contains('/') {
            kept[..cut].trim_end().to_owned()
        } else {
            kept
        };
        self.typed = whole;
        if over > 0 {
            if !self.typed.is_empty() {
                self.typed.push(' ');
            }
            self.typed.push_str(&format!("{over}/{under}"));
        }
        true
    }

    /// The tape is taken hold of where it stands.
    pub fn grab(&mut self, units: Units) {
        self.grabbed = Some(self.length(units).unwrap_or(Length::ZERO));
    }

    /// The tape is pulled by a length; the figure snaps to the marks.
    pub fn drag(&mut self, by: Length, units: Units) {
        let Some(start) = self.grabbed else { return };
        let at = (start + by)
            .max(Length::ZERO)
            .rounded(mark(units), Rounding::Nearest);
        self.typed = units.length(at, Rounding::Nearest, Figures::Plain);
        self.fresh = false;
        self.wrong.clear();
    }
}

/// From one mark of a tape to the next.
pub(super) fn mark(units: Units) -> Length {
    match units {
        Units::FeetInches { marks } => Length::inches(1).divided(i64::from(marks)),
        Units::DecimalInches => Length::in_64(0, 4),
        _ => Length::mm(1),
    }
}

/// What was typed with its fractions stacked and its primes set.
#[must_use]
pub fn set_typed(typed: &str) -> String {
    let mut set = String::new();
    for word in typed.split_inclusive(' ') {
        let bare = word.trim_end();
        let end = bare
            .find(|c: char| !(c.is_ascii_digit() || c == '/'))
            .unwrap_or(bare.len());
        let stacked = bare[..end].split_once('/').and_then(|(over, under)| {
            let (over, under) = (over.parse::<u32>().ok()?, under.parse::<u32>().ok()?);
            (over < under && matches!(under, 2 | 3 | 4 | 8 | 16 | 32 | 64))
                .then(|| fraction_glyph(over, under))
        });
        match stacked {
            Some(glyph) => {
                if set.ends_with(' ') && set.trim_end().ends_with(|c: char| c.is_ascii_digit()) {
                    set.pop();
                }
                set.push(glyph);
                set.push_str(&word[end..]);
            }
            None => set.push_str(word),
        }
    }
    set.replace('\'', "′")
        .replace('"', "″")
        .replace(" - ", " − ")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn typed(keys: &[&str]) -> String {
        let mut pad = Pad::open(Slot::Roll, String::new(), Kind::Length, "12\"".into());
        for key in keys {
            assert!(pad.key(key), "{key}");
        }
        pad.typed
    }

    #[test]
    fn the_first_key_replaces_what_stood_there_and_a_sign_goes_on_from_it() {
        assert_eq!(typed(&["7", "ft", "4", "frac:7"]), "7' 4 1/2");
        assert_eq!(typed(&["+", "3"]), "12\" + 3");
        assert_eq!(typed(&["4", "frac:0", "frac:3"]), "4 1/4");
        assert_eq!(typed(&["4", "frac:0", "frac:15"]), "4");
        assert_eq!(typed(&["erase", "5", "erase", "6"]), "6");
    }

    #[test]
    fn what_is_no_figure_stands_there_as_it_was_typed() {
        assert_eq!(typed(&["b", "a", "n"]), "ban");
        assert_eq!(typed(&["7", "±", "1"]), "7±1");
        // Keys that bear no sign are not the pad's.
        let mut pad = Pad::open(Slot::Ceiling(0), String::new(), Kind::Length, String::new());
        assert!(!pad.key("\u{f700}") && !pad.key("\u{1b}"));
    }

    #[test]
    fn fractions_are_stacked_as_they_are_typed() {
        assert_eq!(
            set_typed("3' 7 5/16\" - 3/4"),
            format!("3′ 7{}″ − {}", fraction_glyph(5, 16), fraction_glyph(3, 4))
        );
    }
}
