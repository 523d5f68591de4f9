//! What a camera wrote beside a picture: which way up, when, with which lens, and whether it says where.

use std::io::{BufRead, Seek};

use chrono::{DateTime, FixedOffset, NaiveDateTime, TimeZone};
use exif::{Exif, In, Reader, Tag, Value};

use super::Turn;

/// What a camera wrote beside a picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Facts {
    /// How it has to be turned.
    pub turn: Turn,
    /// When it was taken.
    pub taken: Option<Taken>,
    /// The focal length in millimetres.
    pub focal: Option<f64>,
    /// The focal length of a 35 mm camera that sees as much.
    pub focal_35: Option<f64>,
    /// It says where it was taken.
    pub located: bool,
}

/// When a picture was taken: the camera's clock, and how far it is from universal time where the camera says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Taken {
    /// By the camera's clock.
    pub local: NaiveDateTime,
    /// How far that is ahead of universal time.
    pub offset: Option<FixedOffset>,
}

impl Taken {
    /// With its offset; `of_device` stands in for one that the camera did not write.
    #[must_use]
    pub fn at(&self, of_device: FixedOffset) -> Option<DateTime<FixedOffset>> {
        let offset = self.offset.unwrap_or(of_device);
        offset.from_local_datetime(&self.local).single()
    }
}

impl Default for Facts {
    /// Nothing is known, and it stands upright.
    fn default() -> Facts {
        Facts {
            turn: Turn::UPRIGHT,
            taken: None,
            focal: None,
            focal_35: None,
            located: false,
        }
    }
}

/// Reads what a camera wrote; nothing where there is nothing that reads, which is no fault of the picture.
///
/// Source: CIPA DC-008 (Exif): Orientation, `DateTimeOriginal`, `OffsetTimeOriginal`, `FocalLength`,
/// `FocalLengthIn35mmFilm`, GPS.
pub fn facts(file: &mut (impl BufRead + Seek)) -> Facts {
    match Reader::new().read_from_container(file) {
        Ok(exif) => read(&exif),
        Err(_) => Facts::default(),
    }
}

fn read(exif: &Exif) -> Facts {
    let number = |tag| field(exif, tag).and_then(number);
    let text = |tag| field(exif, tag).and_then(text);
    let local = [Tag::DateTimeOriginal, Tag::DateTimeDigitized, Tag::DateTime]
        .into_iter()
        .find_map(|tag| NaiveDateTime::parse_from_str(&text(tag)?, "%Y:%m:%d %H:%M:%S").ok());
    let offset = [
        Tag::OffsetTimeOriginal,
        Tag::OffsetTimeDigitized,
        Tag::OffsetTime,
    ]
    .into_iter()
    .find_map(|tag| text(tag)?.parse::<FixedOffset>().ok());
    let millimetres = |tag| number(tag).filter(|mm| (0.5..=3000.0).contains(mm));
    Facts {
        turn: number(Tag::Orientation).map_or(Turn::UPRIGHT, |n| Turn::exif(n as u32)),
        taken: local.map(|local| Taken { local, offset }),
        focal: millimetres(Tag::FocalLength),
        focal_35: millimetres(Tag::FocalLengthIn35mmFilm),
        located: [Tag::GPSLatitude, Tag::GPSLongitude, Tag::GPSDestLatitude]
            .into_iter()
            .any(|tag| field(exif, tag).is_some()),
    }
}

fn field(exif: &Exif, tag: Tag) -> Option<&Value> {
    exif.get_field(tag, In::PRIMARY).map(|field| &field.value)
}

/// A number, whatever type the camera gave it.
fn number(value: &Value) -> Option<f64> {
    match value {
        Value::Double(all) => all.first().copied(),
        Value::Float(all) => all.first().map(|n| f64::from(*n)),
        Value::Rational(all) => all.first().map(exif::Rational::to_f64),
        Value::SRational(all) => all.first().map(exif::SRational::to_f64),
        other => other.get_uint(0).map(f64::from),
    }
    .filter(|number| number.is_finite())
}

fn text(value: &Value) -> Option<String> {
    let Value::Ascii(all) = value else {
        return None;
    };
    let text = std::str::from_utf8(all.first()?).ok()?;
    Some(text.trim_matches(['\0', ' ']).to_owned())
}
