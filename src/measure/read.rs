//! Reads what was typed: a length in any unit, sums of lengths, and plain numbers.
//!
//! Exact: every number is a fraction of whole numbers until the end, then rounded once to the nanometre.
//! A hyphen that joins a whole number to a fraction (`4-1/2`) belongs to the number; anywhere else it subtracts.
//! A slash between two whole numbers is a fraction; `÷` divides.

use std::ops::Range;

use super::{Length, Units};

/// Why a text could not be read, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    /// The bytes of the text that are in the way; empty at the end where something is missing.
    pub at: Range<usize>,
    /// What is wrong there.
    pub why: Why,
}

/// What is wrong with a typed text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Why {
    /// Nothing was typed.
    Empty,
    /// This is no number, unit or sign.
    NotKnown,
    /// A number is missing here.
    NumberMissing,
    /// A bracket is opened and not closed.
    BracketOpen,
    /// A sign is missing before this.
    SignMissing,
    /// A fraction over nothing, or a division by nothing.
    DivideByZero,
    /// A length times a length is no length.
    LengthTimesLength,
    /// A length over a length is no length.
    DivideByLength,
    /// A length and a plain number cannot be added.
    NumberAndLength,
    /// Longer than 10 km.
    TooLong,
    /// Longer than anyone types.
    TooMuch,
}

/// The longest text that is read.
const LONGEST_TEXT: usize = 200;

/// A length, or a sum of lengths; a bare number takes the unit of `units`.
///
/// # Errors
/// [`Unreadable`] with the place and the reason.
///
/// # Example
/// ```
/// use storyrod::measure::{Length, Units, read};
/// let tape = Units::FeetInches { marks: 16 };
/// assert_eq!(read::length("3' 7 5/16\" - 3/4", tape), Ok(Length::in_64(42, 36)));
/// assert_eq!(read::length("224,5cm", tape), Ok(Length::mm(2245)));
/// ```
pub fn length(text: &str, units: Units) -> Result<Length, Unreadable> {
    if text.trim().is_empty() {
        return Err(Unreadable {
            at: 0..text.len(),
            why: Why::Empty,
        });
    }
    if text.len() > LONGEST_TEXT {
        return Err(Unreadable {
            at: 0..text.len(),
            why: Why::TooMuch,
        });
    }
    let mut reader = Reader {
        text,
        at: 0,
        depth: 0,
        bare: bare_unit(units),
    };
    let value = reader.sum()?;
    reader.skip();
    if reader.at < text.len() {
        let why = if reader.starts_number() || text[reader.at..].starts_with('(') {
            Why::SignMissing
        } else {
            Why::NotKnown
        };
        return Err(reader.wrong(why));
    }
    let whole = 0..text.len();
    let nm = match value {
        Value::Length(nm) => nm,
        Value::Number(number) => number.times(reader.bare).ok_or(Unreadable {
            at: whole.clone(),
            why: Why::TooLong,
        })?,
    };
    let nm = nm.rounded();
    if nm.abs() > i128::from(Length::LONGEST.as_nm()) {
        return Err(Unreadable {
            at: whole,
            why: Why::TooLong,
        });
    }
    Ok(Length::nm(nm as i64))
}

/// A plain number, with a decimal point or comma.
///
/// # Errors
/// [`Unreadable`] with the place and the reason.
pub fn number(text: &str) -> Result<f64, Unreadable> {
    let trimmed = text.trim();
    if trimmed.is_empty() {
        return Err(Unreadable {
            at: 0..text.len(),
            why: Why::Empty,
        });
    }
    let good = trimmed.len() <= 15
        && trimmed
            .chars()
            .all(|c| c.is_ascii_digit() || c == '.' || c == ',');
    match trimmed.replace(',', ".").parse::<f64>() {
        Ok(value) if good => Ok(value),
        _ => Err(Unreadable {
            at: 0..text.len(),
            why: Why::NotKnown,
        }),
    }
}

/// Nanometres in the unit of a bare number.
fn bare_unit(units: Units) -> Ratio {
    Ratio::whole(match units {
        Units::FeetInches { .. } | Units::DecimalInches => INCH,
        Units::Millimetres => 1_000_000,
        Units::Centimetres => 10_000_000,
        Units::Metres => 1_000_000_000,
    })
}

const INCH: i128 = 25_400_000;
const FOOT: i128 = 12 * INCH;

/// An exact fraction; the lower number is more than nothing.
#[derive(Clone, Copy, Debug)]
struct Ratio(i128, i128);

impl Ratio {
    const fn whole(n: i128) -> Ratio {
        Ratio(n, 1)
    }
    /// In lowest terms, or `None` where the numbers outgrow any length.
    fn new(over: Option<i128>, under: Option<i128>) -> Option<Ratio> {
        let (mut over, mut under) = (over?, under?);
        if under == 0 {
            return None;
        }
        if under < 0 {
            (over, under) = (-over, -under);
        }
        let (mut a, mut b) = (over.unsigned_abs(), under.unsigned_abs());
        while b > 0 {
            (a, b) = (b, a % b);
        }
        let by = i128::try_from(a.max(1)).ok()?;
        let ratio = Ratio(over / by, under / by);
        (ratio.0.unsigned_abs() < 1 << 62 && ratio.1 < 1 << 62).then_some(ratio)
    }
    fn plus(self, other: Ratio) -> Option<Ratio> {
        let over = self
            .0
            .checked_mul(other.1)?
            .checked_add(other.0.checked_mul(self.1)?);
        Ratio::new(over, self.1.checked_mul(other.1))
    }
    fn times(self, other: Ratio) -> Option<Ratio> {
        Ratio::new(self.0.checked_mul(other.0), self.1.checked_mul(other.1))
    }
    fn over(self, other: Ratio) -> Option<Ratio> {
        Ratio::new(self.0.checked_mul(other.1), self.1.checked_mul(other.0))
    }
    fn minus_sign(self) -> Ratio {
        Ratio(-self.0, self.1)
    }
    /// To the nearest whole number, halfway to even.
    fn rounded(self) -> i128 {
        let (whole, rest) = (self.0.div_euclid(self.1), self.0.rem_euclid(self.1));
        whole + i128::from(rest * 2 > self.1 || (rest * 2 == self.1 && whole % 2 != 0))
    }
}

/// What a part of the text comes to.
#[derive(Clone, Copy, Debug)]
enum Value {
    /// A plain number, whose unit is still open.
    Number(Ratio),
    /// Nanometres.
    Length(Ratio),
}

struct Reader<'a> {
    text: &'a str,
    at: usize,
    depth: u32,
    bare: Ratio,
}

impl Reader<'_> {
    fn rest(&self) -> &str {
        &self.text[self.at..]
    }
    fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }
    fn skip(&mut self) {
        while let Some(c) = self.peek().filter(|c| c.is_whitespace()) {
            self.at += c.len_utf8();
        }
    }
    fn take(&mut self, signs: &[char]) -> Option<char> {
        let sign = self.peek().filter(|c| signs.contains(c))?;
        self.at += sign.len_utf8();
        Some(sign)
    }
    fn wrong(&self, why: Why) -> Unreadable {
        Unreadable {
            at: self.at..self.at + self.peek().map_or(0, char::len_utf8),
            why,
        }
    }
    fn starts_number(&self) -> bool {
        self.peek()
            .is_some_and(|c| c.is_ascii_digit() || fraction_of(c).is_some() || c == '.' || c == ',')
    }

    fn sum(&mut self) -> Result<Value, Unreadable> {
        let mut value = self.product()?;
        loop {
            self.skip();
            let start = self.at;
            let Some(sign) = self.take(&['+', '-', '−', '–']) else {
                return Ok(value);
            };
            let next = self.product()?;
            let next = if sign == '+' { next } else { negative(next) };
            value = self.add(value, next, start)?;
        }
    }

    /// A bare number beside a length takes the job's unit.
    fn add(&self, a: Value, b: Value, start: usize) -> Result<Value, Unreadable> {
        let too_long = Unreadable {
            at: start..self.at,
            why: Why::TooLong,
        };
        let sum = match (a, b) {
            (Value::Number(a), Value::Number(b)) => a.plus(b).map(Value::Number),
            (Value::Length(a), Value::Length(b)) => a.plus(b).map(Value::Length),
            (Value::Length(length), Value::Number(number))
            | (Value::Number(number), Value::Length(length)) => number
                .times(self.bare)
                .and_then(|number| number.plus(length))
                .map(Value::Length),
        };
        sum.ok_or(too_long)
    }

    fn product(&mut self) -> Result<Value, Unreadable> {
        let mut value = self.factor()?;
        loop {
            self.skip();
            let start = self.at;
            let Some(sign) = self.take(&['*', '×', 'x', 'X', '÷', '/']) else {
                return Ok(value);
            };
            let next = self.factor()?;
            let span = start..self.at;
            let fail = |why| Unreadable {
                at: span.clone(),
                why,
            };
            let product = match (value, next, matches!(sign, '÷' | '/')) {
                (_, Value::Length(_), true) => return Err(fail(Why::DivideByLength)),
                (_, Value::Number(Ratio(0, _)), true) => return Err(fail(Why::DivideByZero)),
                (Value::Length(_), Value::Length(_), _) => {
                    return Err(fail(Why::LengthTimesLength));
                }
                (Value::Number(a), Value::Number(b), true) => a.over(b).map(Value::Number),
                (Value::Length(a), Value::Number(b), true) => a.over(b).map(Value::Length),
                (Value::Number(a), Value::Number(b), false) => a.times(b).map(Value::Number),
                (Value::Number(n), Value::Length(l), false)
                | (Value::Length(l), Value::Number(n), false) => l.times(n).map(Value::Length),
            };
            value = product.ok_or_else(|| fail(Why::TooLong))?;
        }
    }

    fn factor(&mut self) -> Result<Value, Unreadable> {
        self.skip();
        if self.take(&['-', '−', '–']).is_some() {
            self.depth += 1;
            if self.depth > 20 {
                return Err(self.wrong(Why::TooMuch));
            }
            let value = self.factor()?;
            self.depth -= 1;
            return Ok(negative(value));
        }
        let start = self.at;
        if self.take(&['(']).is_some() {
            self.depth += 1;
            if self.depth > 20 {
                return Err(self.wrong(Why::TooMuch));
            }
            let value = self.sum()?;
            self.skip();
            if self.take(&[')']).is_none() {
                return Err(Unreadable {
                    at: start..start + 1,
                    why: Why::BracketOpen,
                });
            }
            self.depth -= 1;
            return Ok(value);
        }
        self.quantity()
    }

    /// A number with its unit, or feet and inches: `7' 4 1/2"`.
    fn quantity(&mut self) -> Result<Value, Unreadable> {
        let start = self.at;
        let number = self.number()?;
        let Some(unit) = self.unit() else {
            return Ok(Value::Number(number));
        };
        let too_long = |reader: &Self| Unreadable {
            at: start..reader.at,
            why: Why::TooLong,
        };
        let mut length = number
            .times(Ratio::whole(unit))
            .ok_or_else(|| too_long(self))?;
        if unit == FOOT {
            let back = self.at;
            self.skip();
            // `9'-10` joins feet to inches, as on a drawing; with a space before it, it subtracts.
            if self.at == back
                && self.peek() == Some('-')
                && self.rest()[1..]
                    .starts_with(|c: char| c.is_ascii_digit() || fraction_of(c).is_some())
            {
                self.at += 1;
            }
            if self.starts_number() {
                let inches = self.number()?;
                match self.unit() {
                    None | Some(INCH) => {}
                    Some(_) => {
                        return Err(Unreadable {
                            at: back..self.at,
                            why: Why::SignMissing,
                        });
                    }
                }
                let inches = inches
                    .times(Ratio::whole(INCH))
                    .ok_or_else(|| too_long(self))?;
                length = length.plus(inches).ok_or_else(|| too_long(self))?;
            } else {
                self.at = back;
            }
        }
        Ok(Value::Length(length))
    }

    fn unit(&mut self) -> Option<i128> {
        const UNITS: [(&str, i128); 24] = [
            ("feet", FOOT),
            ("foot", FOOT),
            ("ft.", FOOT),
            ("ft", FOOT),
            ("FT", FOOT),
            ("Ft", FOOT),
            ("''", INCH),
            ("'", FOOT),
            ("′′", INCH),
            ("′", FOOT),
            ("’’", INCH),
            ("’", FOOT),
            ("inches", INCH),
            ("inch", INCH),
            ("in.", INCH),
            ("in", INCH),
            ("IN", INCH),
            ("\"", INCH),
            ("″", INCH),
            ("”", INCH),
            ("mm", 1_000_000),
            ("cm", 10_000_000),
            ("m", 1_000_000_000),
            ("MM", 1_000_000),
        ];
        let back = self.at;
        self.skip();
        let found = UNITS.iter().find(|(name, _)| self.rest().starts_with(name));
        match found {
            Some((name, unit)) => {
                self.at += name.len();
                Some(*unit)
            }
            None => {
                self.at = back;
                None
            }
        }
    }

    /// `88`, `88.5`, `88 1/2`, `4-1/2`, `1/2`, `½`, `3½`.
    fn number(&mut self) -> Result<Ratio, Unreadable> {
        if let Some(fraction) = self.glyph() {
            return Ok(fraction);
        }
        let start = self.at;
        let whole = self.decimal()?;
        if whole.1 == 1 {
            if let Some(fraction) = self.slash(whole, start)? {
                return Ok(fraction);
            }
            let back = self.at;
            if self.peek() == Some('-') {
                self.at += 1;
            } else {
                self.skip();
            }
            if let Some(fraction) = self.glyph() {
                return whole.plus(fraction).ok_or_else(|| self.wrong(Why::TooLong));
            }
            if self.at > back && self.peek().is_some_and(|c| c.is_ascii_digit()) {
                let over_at = self.at;
                let over = self.decimal()?;
                if over.1 == 1
                    && let Some(fraction) = self.slash(over, over_at)?
                {
                    return whole.plus(fraction).ok_or_else(|| self.wrong(Why::TooLong));
                }
            }
            self.at = back;
        }
        Ok(whole)
    }

    /// The lower half of a fraction, if a slash and a whole number follow.
    fn slash(&mut self, over: Ratio, start: usize) -> Result<Option<Ratio>, Unreadable> {
        let back = self.at;
        if self.take(&['/', '⁄']).is_none() || !self.peek().is_some_and(|c| c.is_ascii_digit()) {
            self.at = back;
            return Ok(None);
        }
        let under = self.decimal()?;
        if under.0 == 0 {
            return Err(Unreadable {
                at: start..self.at,
                why: Why::DivideByZero,
            });
        }
        over.over(under).map(Some).ok_or(Unreadable {
            at: start..self.at,
            why: Why::TooLong,
        })
    }

    fn glyph(&mut self) -> Option<Ratio> {
        let c = self.peek()?;
        let (over, under) = fraction_of(c)?;
        self.at += c.len_utf8();
        Some(Ratio(over, under))
    }

    fn decimal(&mut self) -> Result<Ratio, Unreadable> {
        let start = self.at;
        let (mut value, mut scale, mut digits, mut point) = (0i128, 1i128, 0, false);
        while let Some(c) = self.peek() {
            match c {
                '0'..='9' => {
                    digits += 1;
                    value = value * 10 + i128::from(u32::from(c) - u32::from('0'));
                    if point {
                        scale *= 10;
                    }
                }
                '.' | ',' if !point => point = true,
                _ => break,
            }
            self.at += 1;
            if digits > 15 {
                return Err(Unreadable {
                    at: start..self.at,
                    why: Why::TooLong,
                });
            }
        }
        if digits == 0 {
            let why = if self.at == self.text.len() || self.at > start {
                Why::NumberMissing
            } else {
                Why::NotKnown
            };
            self.at = start;
            return Err(self.wrong(why));
        }
        Ratio::new(Some(value), Some(scale)).ok_or(Unreadable {
            at: start..self.at,
            why: Why::TooLong,
        })
    }
}

fn negative(value: Value) -> Value {
    match value {
        Value::Number(number) => Value::Number(number.minus_sign()),
        Value::Length(length) => Value::Length(length.minus_sign()),
    }
}

/// A fraction that is one character: of Unicode, or stacked in the embedded face.
fn fraction_of(c: char) -> Option<(i128, i128)> {
    Some(match c {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '\u{E042}'..='\u{F03F}' => {
            let code = i128::from(u32::from(c) - 0xE000);
            let (over, under) = (code % 64, code / 64);
            if over == 0 || over >= under {
                return None;
            }
            (over, under)
        }
        _ => return None,
    })
}

#[cfg(test)]
mod tests;
