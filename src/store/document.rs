//! Format 2: a job as parts, each with a checksum of its own, so that damage to one loses that one alone.
//!
//! Little-endian throughout. The header, 32 bytes:
//!
//! | bytes | what |
//! |---|---|
//! | 0 to 8 | magic, as in format 1 |
//! | 8 to 10 | format version, 2 |
//! | 10 to 12 | kind of file |
//! | 12 to 16 | number of parts |
//! | 16 to 24 | length of the file |
//! | 24 to 28 | CRC-32 over the header checksums of all parts, in order |
//! | 28 to 32 | CRC-32 over bytes 8 to 28 |
//!
//! Then the parts, one directly after another. The header of a part, 32 bytes, and its stored body:
//!
//! | bytes | what |
//! |---|---|
//! | 0 to 4 | marker |
//! | 4 to 6 | kind of part |
//! | 6 to 8 | 1 where the body is deflated, else 0 |
//! | 8 to 16 | id |
//! | 16 to 20 | stored length |
//! | 20 to 24 | plain length |
//! | 24 to 28 | CRC-32 over the stored body |
//! | 28 to 32 | CRC-32 over bytes 4 to 28 |

use std::sync::Arc;

use miniz_oxide::deflate::core::{
    CompressorOxide, TDEFLFlush, TDEFLStatus, compress, create_comp_flags_from_zip_params,
};
use miniz_oxide::inflate::decompress_to_vec_with_limit;

use super::container::{Kind, MAGIC, OpenError};
use super::keep::SaveError;

/// The format that is written here, and the newest that is read.
pub const FORMAT: u16 = 2;
/// The longest body of a part, and the longest of all bodies together.
const LONGEST_BODY: usize = 64 << 20;
const LONGEST_TOGETHER: usize = 256 << 20;

const HEADER: usize = 32;
const PART_HEADER: usize = 32;
const MARKER: [u8; 4] = *b"\xF3pt\x16";
const DEFLATED: u16 = 1;
/// The most parts that a header is believed to count where they are not there.
const MOST_COUNTED: usize = 1 << 20;
/// A body shorter than this is stored as it is: deflating it takes longer than writing what that would spare.
const SMALL: usize = 192;
/// Deflate with no header of its own: at its quickest, and as it pays where a part is long and stays as it is.
const QUICKEST: u8 = 1;
const THOROUGH: u8 = 6;
const RAW: i32 = -15;

/// A part of a document: what kind, which one, and its bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// What it holds; the meaning is the caller's.
    pub kind: u16,
    /// Which of its kind.
    pub id: u64,
    /// Its bytes.
    pub body: Vec<u8>,
}

/// A part that is damaged, as far as it is known which.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lost {
    /// Its kind, where its header is whole.
    pub kind: Option<u16>,
    /// Its id, where its header is whole.
    pub id: Option<u64>,
}

/// What is whole in a damaged document.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Salvage {
    /// Every whole part, in its order.
    pub parts: Vec<Part>,
    /// The others. Where the document's header is whole none is missing here.
    pub lost: Vec<Lost>,
    /// Whether the document's own header is whole.
    pub header_whole: bool,
}

/// The format version of a file of ours, whatever else is in it.
#[must_use]
pub fn format_of(bytes: &[u8]) -> Option<u16> {
    bytes
        .starts_with(&MAGIC)
        .then(|| number(bytes, 8, 2))?
        .map(|n| n as u16)
}

/// A document of these parts.
///
/// # Errors
/// [`SaveError::TooLarge`], where it would not be opened again.
pub fn write(kind: Kind, parts: &[Part]) -> Result<Vec<u8>, SaveError> {
    let mut press = Press::default();
    let parts: Vec<_> = parts.iter().map(|part| press.part(part)).collect();
    join(kind, &parts)
}

/// A part as it stands in a document, header and all, so that it is pressed but once.
#[derive(Clone)]
pub(super) struct Pressed {
    kind: u16,
    bytes: Arc<[u8]>,
    /// How long its body is.
    plain: usize,
}

impl Pressed {
    /// What it holds.
    pub fn kind(&self) -> u16 {
        self.kind
    }
}

/// A document of these parts.
///
/// # Errors
/// [`SaveError::TooLarge`], where it would not be opened again.
pub(super) fn join(kind: Kind, parts: &[Pressed]) -> Result<Vec<u8>, SaveError> {
    let together = parts
        .iter()
        .fold(0usize, |n, part| n.saturating_add(part.plain));
    let longest = parts.iter().map(|part| part.plain).max().unwrap_or(0);
    let count = u32::try_from(parts.len()).map_err(|_| SaveError::TooLarge)?;
    if together > LONGEST_TOGETHER || longest > LONGEST_BODY {
        return Err(SaveError::TooLarge);
    }
    let length = parts.iter().fold(HEADER, |n, part| n + part.bytes.len());
    let mut bytes = Vec::with_capacity(length);
    bytes.resize(HEADER, 0);
    let mut sums = crc32fast::Hasher::new();
    for part in parts {
        sums.update(&part.bytes[28..PART_HEADER]);
        bytes.extend_from_slice(&part.bytes);
    }
    let mut header = [0; HEADER];
    header[..8].copy_from_slice(&MAGIC);
    header[8..10].copy_from_slice(&FORMAT.to_le_bytes());
    header[10..12].copy_from_slice(&(kind as u16).to_le_bytes());
    header[12..16].copy_from_slice(&count.to_le_bytes());
    header[16..24].copy_from_slice(&(length as u64).to_le_bytes());
    header[24..28].copy_from_slice(&sums.finalize().to_le_bytes());
    let sum = crc32fast::hash(&header[8..28]);
    header[28..].copy_from_slice(&sum.to_le_bytes());
    bytes[..HEADER].copy_from_slice(&header);
    Ok(bytes)
}

/// Presses one part after another with the same tables, which cost more than a small body.
pub(super) struct Press {
    tables: Box<CompressorOxide>,
    out: Vec<u8>,
}

impl Default for Press {
    fn default() -> Press {
        let flags = create_comp_flags_from_zip_params(QUICKEST.into(), RAW, 0);
        Press {
            tables: Box::new(CompressorOxide::new(flags)),
            out: Vec::new(),
        }
    }
}

impl Press {
    /// A part as it stands in a document, made quickly.
    pub fn part(&mut self, part: &Part) -> Pressed {
        self.at_level(QUICKEST, part)
    }

    /// A part that will stay as it is, made smaller than it is made quickly.
    pub fn lasting(&mut self, part: &Part) -> Pressed {
        self.at_level(THOROUGH, part)
    }

    fn at_level(&mut self, level: u8, part: &Part) -> Pressed {
        self.tables.set_compression_level_raw(level);
        let (flags, body) = match self.smaller(&part.body) {
            Some(body) => (DEFLATED, body),
            None => (0, &part.body[..]),
        };
        let mut header = [0; PART_HEADER];
        header[..4].copy_from_slice(&MARKER);
        header[4..6].copy_from_slice(&part.kind.to_le_bytes());
        header[6..8].copy_from_slice(&flags.to_le_bytes());
        header[8..16].copy_from_slice(&part.id.to_le_bytes());
        header[16..20].copy_from_slice(&(body.len() as u32).to_le_bytes());
        header[20..24].copy_from_slice(&(part.body.len() as u32).to_le_bytes());
        header[24..28].copy_from_slice(&crc32fast::hash(body).to_le_bytes());
        let sum = crc32fast::hash(&header[4..28]);
        header[28..].copy_from_slice(&sum.to_le_bytes());
        Pressed {
            kind: part.kind,
            bytes: [&header[..], body].concat().into(),
            plain: part.body.len(),
        }
    }

    /// The body deflated, where that makes it smaller by enough to be worth it.
    fn smaller(&mut self, body: &[u8]) -> Option<&[u8]> {
        if body.len() < SMALL {
            return None;
        }
        self.tables.reset();
        self.out.resize(body.len() - 1, 0);
        let (status, _, length) =
            compress(&mut self.tables, body, &mut self.out, TDEFLFlush::Finish);
        (status == TDEFLStatus::Done)
            .then(|| self.out.get(..length))
            .flatten()
    }
}

/// A document's own header, found whole.
struct Header {
    kind: u16,
    parts: u32,
    length: u64,
    sums: u32,
}

fn header_of(bytes: &[u8]) -> Option<Header> {
    if format_of(bytes)? != FORMAT
        || number(bytes, 28, 4)? != u64::from(crc32fast::hash(bytes.get(8..28)?))
    {
        return None;
    }
    Some(Header {
        kind: number(bytes, 10, 2)? as u16,
        parts: number(bytes, 12, 4)? as u32,
        length: number(bytes, 16, 8)?,
        sums: number(bytes, 24, 4)? as u32,
    })
}

/// A part's header, found whole; its lengths are claims all the same.
struct PartHeader {
    kind: u16,
    flags: u16,
    id: u64,
    stored: usize,
    plain: usize,
    body_sum: u32,
    sum: u32,
}

/// The part's header at the start of these bytes.
fn part_header_of(bytes: &[u8]) -> Option<PartHeader> {
    if !bytes.starts_with(&MARKER)
        || number(bytes, 28, 4)? != u64::from(crc32fast::hash(bytes.get(4..28)?))
    {
        return None;
    }
    Some(PartHeader {
        kind: number(bytes, 4, 2)? as u16,
        flags: number(bytes, 6, 2)? as u16,
        id: number(bytes, 8, 8)?,
        stored: usize::try_from(number(bytes, 16, 4)?).ok()?,
        plain: usize::try_from(number(bytes, 20, 4)?).ok()?,
        body_sum: number(bytes, 24, 4)? as u32,
        sum: number(bytes, 28, 4)? as u32,
    })
}

impl PartHeader {
    /// The stored body, where there are as many bytes as are claimed.
    fn stored<'a>(&self, bytes: &'a [u8]) -> Option<&'a [u8]> {
        bytes.get(PART_HEADER..)?.get(..self.stored)
    }
    /// The plain body out of a stored one, no longer than `room`.
    fn plain(&self, stored: &[u8], room: usize) -> Option<Vec<u8>> {
        if self.plain > room.min(LONGEST_BODY) || crc32fast::hash(stored) != self.body_sum {
            return None;
        }
        let body = match self.flags {
            0 => stored.to_vec(),
            DEFLATED => decompress_to_vec_with_limit(stored, self.plain).ok()?,
            _ => return None,
        };
        (body.len() == self.plain).then_some(body)
    }
}

/// The parts of a whole document.
///
/// # Errors
/// The first of: not ours, cut short, newer, damaged, of another kind.
pub fn read(kind: Kind, bytes: &[u8]) -> Result<Vec<Part>, OpenError> {
    let begins = bytes.len().min(MAGIC.len());
    if bytes.is_empty() || bytes[..begins] != MAGIC[..begins] {
        return Err(OpenError::NotOurs);
    }
    let found = format_of(bytes).ok_or(OpenError::CutShort)?;
    if found > FORMAT {
        return Err(OpenError::Newer { found });
    }
    if bytes.len() < HEADER {
        return Err(OpenError::CutShort);
    }
    let header = header_of(bytes).ok_or(OpenError::Damaged)?;
    if header.length != bytes.len() as u64 {
        return Err(OpenError::CutShort);
    }
    if header.kind != kind as u16 {
        return Err(OpenError::WrongKind);
    }
    read_parts(&header, &bytes[HEADER..]).ok_or(OpenError::Damaged)
}

fn read_parts(header: &Header, mut rest: &[u8]) -> Option<Vec<Part>> {
    let (mut parts, mut room) = (Vec::new(), LONGEST_TOGETHER);
    let mut sums = crc32fast::Hasher::new();
    for _ in 0..header.parts {
        let head = part_header_of(rest)?;
        let body = head.plain(head.stored(rest)?, room)?;
        sums.update(&head.sum.to_le_bytes());
        room -= body.len();
        rest = &rest[PART_HEADER + head.stored..];
        parts.push(Part {
            kind: head.kind,
            id: head.id,
            body,
        });
    }
    (rest.is_empty() && sums.finalize() == header.sums).then_some(parts)
}

/// Every whole part of a document that may be damaged anywhere, cut, or longer than it was.
#[must_use]
pub fn salvage(bytes: &[u8]) -> Salvage {
    let header = header_of(bytes);
    let mut search = Search {
        parts: Vec::new(),
        lost: Vec::new(),
        room: LONGEST_TOGETHER,
        // A whole file is gone through once; only one made on purpose would take longer and longer.
        effort: bytes.len().saturating_mul(8),
    };
    // A whole header holds no part; a damaged one may not even have its length.
    let mut at = if header.is_some() { HEADER } else { 0 };
    let mut in_gap = header.is_none();
    while at < bytes.len() {
        let rest = &bytes[at..];
        if let Some(head) = part_header_of(rest) {
            let (length, whole) = search.take(&head, rest);
            at += length;
            in_gap = !whole;
        } else {
            if !in_gap {
                search.lost.push(Lost {
                    kind: None,
                    id: None,
                });
                in_gap = true;
            }
            at += 1;
        }
    }
    if let Some(header) = &header {
        search.count(header.parts as usize);
    }
    Salvage {
        parts: search.parts,
        lost: search.lost,
        header_whole: header.is_some(),
    }
}

/// What a walk through a damaged document has found so far.
struct Search {
    parts: Vec<Part>,
    lost: Vec<Lost>,
    room: usize,
    effort: usize,
}

impl Search {
    /// Takes the part with this header, or notes it as lost; gives how far to go on, and whether the next stands there.
    fn take(&mut self, head: &PartHeader, rest: &[u8]) -> (usize, bool) {
        let stored = head
            .stored(rest)
            .filter(|stored| stored.len() <= self.effort);
        if let Some(stored) = stored {
            self.effort -= stored.len();
            if let Some(body) = head.plain(stored, self.room) {
                self.room -= body.len();
                self.parts.push(Part {
                    kind: head.kind,
                    id: head.id,
                    body,
                });
                return (PART_HEADER + stored.len(), true);
            }
        }
        self.lost.push(Lost {
            kind: Some(head.kind),
            id: Some(head.id),
        });
        match stored {
            // The next part stands where it should: what lies between is this one's.
            Some(stored)
                if rest[PART_HEADER + stored.len()..].starts_with(&MARKER)
                    || rest.len() == PART_HEADER + stored.len() =>
            {
                (PART_HEADER + stored.len(), true)
            }
            _ => (PART_HEADER, false),
        }
    }

    /// Makes the number of parts lost right by what the header says of all of them.
    fn count(&mut self, parts: usize) {
        let found = self.parts.len() + self.lost.len();
        let missing = parts
            .min(found.max(MOST_COUNTED))
            .saturating_sub(self.parts.len());
        self.lost.sort_by_key(|lost| lost.kind.is_none());
        self.lost.resize(
            missing,
            Lost {
                kind: None,
                id: None,
            },
        );
    }
}

/// A number of `length` bytes, at most eight, from `at`; none where the bytes end before it does.
fn number(bytes: &[u8], at: usize, length: usize) -> Option<u64> {
    let bytes = bytes.get(at..at.checked_add(length)?)?;
    Some(
        bytes
            .iter()
            .rev()
            .fold(0, |n, byte| n << 8 | u64::from(*byte)),
    )
}
