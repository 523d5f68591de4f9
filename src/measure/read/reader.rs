//! Walks a typed length: sums, products, brackets, quantities, numbers.

use std::ops::Range;

use super::ratio::Ratio;
use super::{Unreadable, Why};
use crate::measure::Units;

/// What joins feet to inches and a whole number to its fraction where no space stands beside it: hyphens, the figure
/// dash and the en dash. The minus sign is not among them.
const JOINS: [char; 5] = ['-', '‐', '‑', '‒', '–'];
/// What subtracts.
pub(super) const MINUS: [char; 6] = ['-', '‐', '‑', '‒', '–', '−'];

/// The names of the units, a longer one before one that it begins with; letters in any case.
const UNITS: [(&str, i128); 35] = [
    ("feet", FOOT),
    ("foot", FOOT),
    ("ft.", FOOT),
    ("ft", FOOT),
    ("''", INCH),
    ("'", FOOT),
    ("′′", INCH),
    ("′", FOOT),
    ("’’", INCH),
    ("’", FOOT),
    ("‘‘", INCH),
    ("‘", FOOT),
    ("inches", INCH),
    ("inch", INCH),
    ("in.", INCH),
    ("in", INCH),
    ("\"", INCH),
    ("″", INCH),
    ("”", INCH),
    ("“", INCH),
    ("millimetres", MILLIMETRE),
    ("millimeters", MILLIMETRE),
    ("millimetre", MILLIMETRE),
    ("millimeter", MILLIMETRE),
    ("mm", MILLIMETRE),
    ("centimetres", CENTIMETRE),
    ("centimeters", CENTIMETRE),
    ("centimetre", CENTIMETRE),
    ("centimeter", CENTIMETRE),
    ("cm", CENTIMETRE),
    ("metres", METRE),
    ("meters", METRE),
    ("metre", METRE),
    ("meter", METRE),
    ("m", METRE),
];

const INCH: i128 = 25_400_000;
const FOOT: i128 = 12 * INCH;
const MILLIMETRE: i128 = 1_000_000;
const CENTIMETRE: i128 = 10_000_000;
const METRE: i128 = 1_000_000_000;

/// Nanometres in the unit of a bare number.
pub(super) fn bare_unit(units: Units) -> i128 {
    match units {
        Units::FeetInches { .. } | Units::DecimalInches => INCH,
        Units::Millimetres => MILLIMETRE,
        Units::Centimetres => CENTIMETRE,
        Units::Metres => METRE,
    }
}

/// What a part of the text comes to.
#[derive(Clone, Copy, Debug)]
pub(super) enum Value {
    /// A plain number, whose unit is still open.
    Number(Ratio),
    /// Nanometres.
    Length(Ratio),
}

/// Walks a text from left to right.
pub(super) struct Reader<'a> {
    pub(super) text: &'a str,
    pub(super) at: usize,
    depth: u32,
    /// Nanometres in the unit of a bare number.
    bare: i128,
    /// The first number whose comma can be read in two ways, until its unit is known.
    unclear: Option<Range<usize>>,
}

impl Reader<'_> {
    /// At the start of a text; `bare` is the unit of a bare number, in nanometres.
    pub(super) fn new(text: &str, bare: i128) -> Reader<'_> {
        Reader {
            text,
            at: 0,
            depth: 0,
            bare,
            unclear: None,
        }
    }
    pub(super) fn rest(&self) -> &str {
        &self.text[self.at..]
    }
    pub(super) fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }
    pub(super) fn skip(&mut self) {
        while let Some(c) = self.peek().filter(|c| c.is_whitespace()) {
            self.at += c.len_utf8();
        }
    }
    pub(super) fn take(&mut self, signs: &[char]) -> Option<char> {
        let sign = self.peek().filter(|c| signs.contains(c))?;
        self.at += sign.len_utf8();
        Some(sign)
    }
    pub(super) fn wrong(&self, why: Why) -> Unreadable {
        Unreadable {
            at: self.at..self.at + self.peek().map_or(0, char::len_utf8),
            why,
        }
    }
    pub(super) fn starts_number(&self) -> bool {
        self.peek()
            .is_some_and(|c| c.is_ascii_digit() || fraction_of(c).is_some() || c == '.' || c == ',')
    }

    pub(super) fn sum(&mut self) -> Result<Value, Unreadable> {
        let mut value = self.product()?;
        loop {
            self.skip();
            let start = self.at;
            let Some(sign) = self.take(&['+', '-', '‐', '‑', '‒', '–', '−']) else {
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
                .times(Ratio::whole(self.bare))
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
        if self.take(&MINUS).is_some() {
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
        let unit = self.unit();
        self.comma_clear(unit.unwrap_or(self.bare))?;
        let Some(unit) = unit else {
            return Ok(Value::Number(number));
        };
        let mut length = number
            .times(Ratio::whole(unit))
            .ok_or_else(|| self.too_long(start))?;
        if unit == FOOT
            && let Some(inches) = self.inches_after_feet()?
        {
            length = inches
                .times(Ratio::whole(INCH))
                .and_then(|inches| length.plus(inches))
                .ok_or_else(|| self.too_long(start))?;
        }
        Ok(Value::Length(length))
    }

    /// The inches that belong to the feet just read: `9' 10`, `9'-10`.
    ///
    /// A hyphen or a dash with nothing on either side joins feet to inches, as on a drawing. With a space it subtracts,
    /// and so it does before anything that cannot be the inches of a foot: `10'-4'`.
    fn inches_after_feet(&mut self) -> Result<Option<Ratio>, Unreadable> {
        let back = self.at;
        self.skip();
        let joined = self.at == back && self.take(&JOINS).is_some();
        let starts = if joined {
            self.peek()
                .is_some_and(|c| c.is_ascii_digit() || fraction_of(c).is_some())
        } else {
            self.starts_number()
        };
        if !starts {
            self.at = back;
            return Ok(None);
        }
        let inches = self.number()?;
        match self.unit() {
            None | Some(INCH) => {
                self.comma_clear(INCH)?;
                Ok(Some(inches))
            }
            Some(_) if joined => {
                self.at = back;
                self.unclear = None;
                Ok(None)
            }
            Some(_) => Err(Unreadable {
                at: back..self.at,
                why: Why::SignMissing,
            }),
        }
    }

    fn too_long(&self, start: usize) -> Unreadable {
        Unreadable {
            at: start..self.at,
            why: Why::TooLong,
        }
    }

    /// Refuses a number that a comma leaves open, unless it is in metres: thousands of them are no wall,
    /// and three places of a metre are how a millimetre is written.
    fn comma_clear(&mut self, unit: i128) -> Result<(), Unreadable> {
        match self.unclear.take() {
            Some(at) if unit != METRE && at.end <= self.at => Err(Unreadable {
                at,
                why: Why::CommaUnclear,
            }),
            _ => Ok(()),
        }
    }

    /// The unit that follows, in capitals or not.
    fn unit(&mut self) -> Option<i128> {
        let back = self.at;
        self.skip();
        let found = UNITS.iter().find(|(name, _)| self.take_name(name));
        if found.is_none() {
            self.at = back;
        }
        found.map(|(_, unit)| *unit)
    }

    /// Goes past a name, in capitals or not, if it stands here.
    pub(super) fn take_name(&mut self, name: &str) -> bool {
        let here = self.rest().as_bytes().get(..name.len());
        let stands = here.is_some_and(|start| start.eq_ignore_ascii_case(name.as_bytes()));
        if stands {
            self.at += name.len();
        }
        stands
    }

    /// `88`, `88.5`, `88 1/2`, `4-1/2`, `1/2`, `½`, `3½`.
    pub(super) fn number(&mut self) -> Result<Ratio, Unreadable> {
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
            if self.take(&JOINS).is_none() {
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

    /// Figures with at most one point or comma.
    fn decimal(&mut self) -> Result<Ratio, Unreadable> {
        let start = self.at;
        let number = scan(self.rest());
        self.at += number.bytes;
        let at = start..self.at;
        if number.digits == 0 {
            let why = if self.at == self.text.len() || self.at > start {
                Why::NumberMissing
            } else {
                Why::NotKnown
            };
            self.at = start;
            return Err(self.wrong(why));
        }
        if number.parted {
            return Err(Unreadable {
                at,
                why: Why::CommaUnclear,
            });
        }
        if number.unclear {
            self.unclear.get_or_insert(at);
        }
        number.value.ok_or_else(|| self.too_long(start))
    }
}

/// Figures as they stand at the start of a text.
pub(super) struct Scan {
    /// How many bytes they take.
    pub(super) bytes: usize,
    /// How many digits there are.
    pub(super) digits: usize,
    /// How many of them stand behind the point or comma.
    pub(super) places: usize,
    /// What they come to; `None` where there are too many, or none.
    pub(super) value: Option<Ratio>,
    /// Like `10,000`: ten to the millimetre or the hundredth of one, or ten thousand.
    pub(super) unclear: bool,
    /// Like `1,234.5`: more than one point or comma between figures.
    pub(super) parted: bool,
}

/// Most digits of a number.
const MOST_DIGITS: usize = 15;

/// Reads figures with a point or a comma.
///
/// A comma with one to three figures before it, the first of them no nought, and exactly three behind it can part
/// thousands as well as be a decimal comma: `unclear`. `0,125`, `,125` and `1234,567` cannot.
pub(super) fn scan(text: &str) -> Scan {
    let is_sign = |c: u8| c == b'.' || c == b',';
    let bytes = text.as_bytes();
    let (mut at, mut digits, mut places, mut value) = (0, 0, 0, Some(0i128));
    let mut sign = None;
    let mut parted = false;
    while let Some(&c) = bytes.get(at) {
        match c {
            b'0'..=b'9' => {
                digits += 1;
                places += usize::from(sign.is_some());
                value = value
                    .filter(|_| digits <= MOST_DIGITS)
                    .map(|value| value * 10 + i128::from(c - b'0'));
            }
            _ if is_sign(c) && sign.is_none() => sign = Some(c),
            _ if is_sign(c) && places > 0 && bytes.get(at + 1).is_some_and(u8::is_ascii_digit) => {
                parted = true;
            }
            _ => break,
        }
        at += 1;
    }
    let before = digits - places;
    Scan {
        bytes: at,
        digits,
        places,
        value: value.filter(|_| digits > 0).and_then(|value| {
            Ratio::new(Some(value), 10i128.checked_pow(u32::try_from(places).ok()?))
        }),
        unclear: sign == Some(b',') && places == 3 && (1..=3).contains(&before) && bytes[0] != b'0',
        parted,
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
