//! Single figures and choices as they stand in JSON; each says what is wrong with it, and the reader says where.

use std::fmt;

use chrono::{DateTime, FixedOffset};
use serde::de::{Deserializer, Error};
use serde::ser::Serializer;
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;
use uom::si::reciprocal_length::reciprocal_meter;

use crate::measure::quantity::{
    Area, Mass, MassDensity, SpreadRate, Volume, cubic_metres, kilograms,
    kilograms_per_cubic_metre, square_metres,
};
use crate::measure::{Angle, Length, Money, Units};
use crate::site::{
    Finish, FixedKind, FixtureKind, HiddenKind, Id, OpeningKind, Passed, Side, Size, Third,
};
use crate::store::record;
use crate::takeoff::{Choice, EntryKind};
use crate::trades::drain::{self, Code};
use crate::trades::grout::Meeting;
use crate::trades::mortar::{self, NotchShape, Place};
use crate::trades::paint::{Binder, Built, Part, Sheen, Texture};
use crate::trades::patch::Method;
use crate::trades::tape::Ends;
use crate::trades::{Board, Compound, Grout};
use crate::trades::{sheets, trim};

/// A figure that is one number or text: what it is written as, and what it is read from.
macro_rules! figures {
    ($($name:ident($of:ty) as $raw:ty: $write:expr, $read:expr, $wrong:literal;)*) => {$(
        #[doc = concat!("Reads, or is ", $wrong, ".")]
        #[derive(Clone, Copy)]
        pub struct $name(pub $of);

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                let write: fn($of) -> $raw = $write;
                write(self.0).serialize(to)
            }
        }

        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(from: D) -> Result<$name, D::Error> {
                let read: fn($raw) -> Option<$of> = $read;
                let figure = read(<$raw>::deserialize(from)?);
                figure.map($name).ok_or_else(|| D::Error::custom($wrong))
            }
        }
    )*};
}

figures! {
    Nm(Length) as i64: Length::as_nm, record::length, "a length beyond 10 km";
    Udeg(Angle) as i64: Angle::as_microdegrees, angle, "a turn beyond 3600 degrees";
    M2(Area) as f64: |area| area.value, area, "an area that is less than nothing";
    M3(Volume) as f64: |volume| volume.value, |v| more(v).map(cubic_metres), "a volume that is less than nothing";
    Kg(Mass) as f64: |mass| mass.value, |v| more(v).map(kilograms), "a mass that is less than nothing";
    KgPerM3(MassDensity) as f64: |density| density.value, |v| more(v).map(kilograms_per_cubic_metre),
        "a density that is less than nothing";
    More(f64) as f64: |figure| figure, more, "a figure that is less than nothing";
    Parts(f64) as f64: |share| share, |share| within(share, 0.0, 1.0), "a share that is not from 0 to 1";
    Fahrenheit(f64) as f64: |air| air, |air| within(air, -100.0, 200.0), "a temperature that is not from -100 to 200";
    Percent(f64) as f64: |air| air, |air| within(air, 0.0, 100.0), "a share that is not from 0 to 100 per cent";
    Minor(Money) as i64: Money::as_minor, |minor| Some(Money::minor(minor)), "no sum of money";
    Hex(u64) as String: |id| format!("{id:016x}"), |text| hex(&text), "no name of up to 16 hex digits";
    When(DateTime<FixedOffset>) as String: |when| when.to_rfc3339(), |text| DateTime::parse_from_rfc3339(&text).ok(), "no time as of RFC 3339";
}

impl Hex {
    /// Of an entry that has none yet.
    pub fn fresh() -> Hex {
        Hex(Id::fresh().0)
    }
    /// As the name of an entry.
    pub fn id(self) -> Id {
        Id(self.0)
    }
}

fn angle(micro: i64) -> Option<Angle> {
    (micro.unsigned_abs() <= 3_600_000_000).then(|| Angle::microdegrees(micro))
}
fn within(value: f64, least: f64, most: f64) -> Option<f64> {
    (least..=most).contains(&value).then_some(value)
}
fn more(value: f64) -> Option<f64> {
    (value.is_finite() && value >= 0.0).then_some(value)
}
fn area(value: f64) -> Option<Area> {
    more(value).map(square_metres)
}
fn hex(text: &str) -> Option<u64> {
    let digits = (1..=16).contains(&text.len()) && text.bytes().all(|b| b.is_ascii_hexdigit());
    digits.then(|| u64::from_str_radix(text, 16).ok()).flatten()
}

/// A rate in m² a litre. In the program it is kept per metre, a thousand times as much: the decimal point is moved
/// three places in its digits, so that it comes back as just the same number.
#[derive(Clone, Copy)]
pub struct Rate(pub SpreadRate);

impl Serialize for Rate {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let raw = RawValue::from_string(thousandth(self.0.value));
        raw.map_err(serde::ser::Error::custom)?.serialize(to)
    }
}

impl<'de> Deserialize<'de> for Rate {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Rate, D::Error> {
        let raw = Box::<RawValue>::deserialize(from)?;
        let rate = thousandfold(raw.get()).filter(|rate| rate.is_finite() && *rate > 0.0);
        rate.map(|rate| Rate(SpreadRate::new::<reciprocal_meter>(rate)))
            .ok_or_else(|| D::Error::custom("no rate of more than nothing"))
    }
}

/// A number's digits with the point moved three places to the left.
fn thousandth(value: f64) -> String {
    if !value.is_finite() {
        return "null".to_owned();
    }
    let text = format!("{value:e}");
    let (digits, exponent) = text.split_once('e').unwrap_or((&text, "0"));
    let exponent = exponent.parse::<i32>().unwrap_or(0) - 3;
    let (sign, digits) = match digits.strip_prefix('-') {
        Some(digits) => ("-", digits.replace('.', "")),
        None => ("", digits.replace('.', "")),
    };
    let Ok(before) = usize::try_from(exponent + 1) else {
        return format!("{sign}{}e{exponent}", pointed(&digits, 1));
    };
    if before == 0 || before > 17 {
        return format!("{sign}{}e{exponent}", pointed(&digits, 1));
    }
    format!("{sign}{}", pointed(&format!("{digits:0<before$}"), before))
}

/// Digits with a point after the first so many, where any follow.
fn pointed(digits: &str, before: usize) -> String {
    match digits.split_at_checked(before) {
        Some((whole, rest)) if !rest.is_empty() => format!("{whole}.{rest}"),
        _ => digits.to_owned(),
    }
}

/// A number out of its digits with the point moved three places to the right.
fn thousandfold(text: &str) -> Option<f64> {
    let text = text.trim();
    if !text.starts_with(|c: char| c == '-' || c.is_ascii_digit()) {
        return None;
    }
    let (digits, exponent) = text.split_once(['e', 'E']).unwrap_or((text, "0"));
    let exponent = exponent.parse::<i32>().ok()?.checked_add(3)?;
    format!("{digits}e{exponent}").parse().ok()
}

/// A choice that is one of a few words.
pub trait Words: Copy + PartialEq + 'static {
    /// Each word, and what it stands for.
    const WORDS: &'static [(&'static str, Self)];
}

/// A choice by its word.
#[derive(Clone, Copy, Default)]
pub struct Word<T>(pub T);

impl<T: Words> Serialize for Word<T> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let word = T::WORDS.iter().find(|(_, choice)| *choice == self.0);
        match word {
            Some((word, _)) => to.serialize_str(word),
            None => Err(serde::ser::Error::custom("a choice without a word")),
        }
    }
}

impl<'de, T: Words> Deserialize<'de> for Word<T> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Word<T>, D::Error> {
        let said = String::deserialize(from)?;
        let found = T::WORDS.iter().find(|(word, _)| *word == said);
        found
            .map(|(_, choice)| Word(*choice))
            .ok_or_else(|| D::Error::custom(OneOf(T::WORDS.iter().map(|(word, _)| *word))))
    }
}

/// What could have been said.
struct OneOf<I>(I);

impl<I: Iterator<Item = &'static str> + Clone> fmt::Display for OneOf<I> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let words: Vec<&str> = self.0.clone().collect();
        write!(f, "none of: {}", words.join(", "))
    }
}

macro_rules! words {
    ($($of:ty: $($word:literal = $choice:expr),+;)*) => {$(
        impl Words for $of {
            const WORDS: &'static [(&'static str, Self)] = &[$(($word, $choice)),+];
        }
    )*};
}

words! {
    Units: "feet-inches/2" = Units::FeetInches { marks: 2 },
        "feet-inches/4" = Units::FeetInches { marks: 4 },
        "feet-inches/8" = Units::FeetInches { marks: 8 },
        "feet-inches/16" = Units::FeetInches { marks: 16 },
        "feet-inches/32" = Units::FeetInches { marks: 32 },
        "feet-inches/64" = Units::FeetInches { marks: 64 },
        "decimal-inches" = Units::DecimalInches,
        "millimetres" = Units::Millimetres,
        "centimetres" = Units::Centimetres,
        "metres" = Units::Metres;
    Finish: "paint" = Finish::Paint, "tile" = Finish::Tile, "boards" = Finish::Boards, "leave" = Finish::Leave;
    OpeningKind: "door" = OpeningKind::Door, "window" = OpeningKind::Window, "niche" = OpeningKind::Niche,
        "pass-through" = OpeningKind::PassThrough;
    Part: "wall" = Part::Wall, "ceiling" = Part::Ceiling;
    Texture: "smooth" = Texture::Smooth, "bare-board" = Texture::BareBoard, "textured" = Texture::Textured,
        "masonry" = Texture::Masonry, "heavy-texture" = Texture::HeavyTexture;
    Built: "unknown" = Built::Unknown, "before-1978" = Built::Before1978, "from-1978" = Built::From1978;
    Sheen: "flat" = Sheen::Flat, "eggshell" = Sheen::Eggshell, "semi-gloss" = Sheen::SemiGloss, "gloss" = Sheen::Gloss;
    Binder: "latex" = Binder::Latex, "alkyd" = Binder::Alkyd;
    Method: "fill" = Method::Fill, "adhesive-patch" = Method::AdhesivePatch, "backed-patch" = Method::BackedPatch,
        "cut-back" = Method::CutBack;
    Compound: "drying" = Compound::Drying, "setting" = Compound::Setting;
    Grout: "unsanded" = Grout::Unsanded, "sanded" = Grout::Sanded, "heavy-sand" = Grout::HeavySand;
    Meeting: "plane-change" = Meeting::PlaneChange, "perimeter" = Meeting::Perimeter, "movement" = Meeting::Movement;
    NotchShape: "square" = NotchShape::Square, "u" = NotchShape::U, "v" = NotchShape::V;
    Place: "dry" = Place::Dry, "wet" = Place::Wet;
    mortar::Wall: "left" = mortar::Wall::Left, "right" = mortar::Wall::Right, "near" = mortar::Wall::Near,
        "far" = mortar::Wall::Far;
    Choice: "least-left-over" = Choice::LeastLeftOver, "cheapest" = Choice::Cheapest;
    Code: "unknown" = Code::Unknown, "irc" = Code::Irc, "ipc" = Code::Ipc, "upc" = Code::Upc;
    drain::Size: "1 1/4" = drain::Size::OneAndQuarter, "1 1/2" = drain::Size::OneAndHalf, "2" = drain::Size::Two, "3" = drain::Size::Three,
        "4" = drain::Size::Four;
    Ends: "open" = Ends::Open, "taken" = Ends::Taken;
    EntryKind: "head" = EntryKind::Head, "room" = EntryKind::Room, "figure" = EntryKind::Figure,
        "hand-line" = EntryKind::HandLine, "buying" = EntryKind::Buying, "tape" = EntryKind::Tape,
        "photo" = EntryKind::Photo, "step" = EntryKind::Step;
    Side: "left" = Side::Left, "right" = Side::Right;
    FixedKind: "hot" = FixedKind::Hot, "cold" = FixedKind::Cold, "drain" = FixedKind::Drain, "valve" = FixedKind::Valve,
        "outlet" = FixedKind::Outlet, "switch" = FixedKind::Switch, "niche" = FixedKind::Niche,
        "blocking" = FixedKind::Blocking, "vent" = FixedKind::Vent, "light" = FixedKind::Light, "heat" = FixedKind::Heat,
        "other" = FixedKind::Other;
    FixtureKind: "basin" = FixtureKind::Basin, "toilet" = FixtureKind::Toilet, "tub" = FixtureKind::Tub,
        "shower" = FixtureKind::Shower, "heater" = FixtureKind::Heater;
    Third: "left" = Third::Left, "middle" = Third::Middle, "right" = Third::Right;
    Size: "from-left" = Size::FromLeft, "up" = Size::Up, "width" = Size::Width, "height" = Size::Height,
        "depth" = Size::Depth;
    Board: "gypsum" = Board::Gypsum, "cement" = Board::Cement, "plywood" = Board::Plywood;
    trim::Kind: "base" = trim::Kind::Base, "casing" = trim::Kind::Casing;
    trim::Inside: "coped" = trim::Inside::Coped, "mitred" = trim::Inside::Mitred;
    trim::Head: "mitred" = trim::Head::Mitred, "butted" = trim::Head::Butted;
    trim::Corner: "square" = trim::Corner::Square, "inside" = trim::Corner::Inside, "outside" = trim::Corner::Outside;
    trim::Opening: "door" = trim::Opening::Door, "window" = trim::Opening::Window;
    sheets::Surface: "floor" = sheets::Surface::Floor, "wall" = sheets::Surface::Wall,
        "ceiling" = sheets::Surface::Ceiling;
    sheets::Way: "across" = sheets::Way::Across, "up" = sheets::Way::Up;
    Passed: "skipped" = Passed::Skipped, "not-there" = Passed::NotThere;
    HiddenKind: "pipe" = HiddenKind::Pipe, "cable" = HiddenKind::Cable, "stud" = HiddenKind::Stud,
        "blocking" = HiddenKind::Blocking, "valve" = HiddenKind::Valve, "duct" = HiddenKind::Duct,
        "other" = HiddenKind::Other, "electric-box" = HiddenKind::ElectricBox;
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_point_moves_three_places() {
        for (value, text) in [
            (8589.3, "8.5893"),
            (12_000.0, "12"),
            (1e6, "1000"),
            (5.0, "5e-3"),
            (1e300, "1e297"),
            (1234.0, "1.234"),
        ] {
            assert_eq!(thousandth(value), text);
            assert_eq!(thousandfold(text), Some(value));
        }
        for text in ["null", "\"8\"", "[1]", "true", ""] {
            assert_eq!(thousandfold(text), None, "{text}");
        }
    }

    proptest! {
        #[test]
        fn prop_any_rate_comes_back_as_it_was(value in any::<f64>()) {
            prop_assume!(value.is_finite());
            prop_assert_eq!(thousandfold(&thousandth(value)), Some(value));
        }
    }
}
