//! A body of bytes between a header and a checksum.
//!
//! Little-endian: magic (8 bytes, damaged by any text-mode copy), format version `u16`, kind `u16`, body length `u64`,
//! CRC-32 `u32` over bytes 8 to 20 and the body, then the body.

use std::fmt;

pub(super) const MAGIC: [u8; 8] = *b"\x89ROD\r\n\x1a\n";
const HEADER: usize = 24;

/// The format that this program writes, and the newest that it reads.
pub const VERSION: u16 = 1;

/// What a file holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A job.
    Job = 1,
    /// The shelf of room profiles.
    Shelf = 2,
    /// How the program looks on a device.
    Prefs = 3,
    /// A job with its pictures, to be handed to another device.
    Share = 4,
    /// The shelf of fittings that were measured.
    Fittings = 5,
}

/// Why a file cannot be opened. It is left as it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OpenError {
    /// The file is of another program.
    NotOurs,
    /// The file ends too early, or goes on too long.
    CutShort,
    /// The file was written by a newer Storyrod.
    Newer {
        /// Its format.
        found: u16,
    },
    /// The file is ours and holds something else.
    WrongKind,
    /// The checksum or what it guards is damaged.
    Damaged,
    /// The system gives no access to it.
    Disk(String),
}

impl fmt::Display for OpenError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            OpenError::NotOurs => write!(f, "this is no Storyrod file; it is left as it is"),
            OpenError::CutShort => write!(f, "the file is cut short"),
            OpenError::Newer { found } => write!(
                f,
                "a newer Storyrod wrote this file (format {found}; this one reads up to {}); open it with the newer one",
                super::document::FORMAT
            ),
            OpenError::WrongKind => write!(f, "this Storyrod file holds something else"),
            OpenError::Damaged => write!(f, "the file is damaged"),
            OpenError::Disk(why) => write!(f, "the system gives no access to it: {why}"),
        }
    }
}

/// A body with its header.
#[must_use]
pub fn seal(kind: Kind, body: &[u8]) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(HEADER + body.len());
    bytes.extend_from_slice(&MAGIC);
    bytes.extend_from_slice(&VERSION.to_le_bytes());
    bytes.extend_from_slice(&(kind as u16).to_le_bytes());
    bytes.extend_from_slice(&(body.len() as u64).to_le_bytes());
    let sum = checksum(&bytes[8..20], body);
    bytes.extend_from_slice(&sum.to_le_bytes());
    bytes.extend_from_slice(body);
    bytes
}

/// The body of a sealed file.
///
/// # Errors
/// The first of: not ours, cut short, newer, of another kind, damaged.
pub fn unseal(kind: Kind, bytes: &[u8]) -> Result<&[u8], OpenError> {
    let begins = bytes.len().min(MAGIC.len());
    if bytes[..begins] != MAGIC[..begins] || bytes.is_empty() {
        return Err(OpenError::NotOurs);
    }
    let (Some(header), Some(body)) = (bytes.get(..HEADER), bytes.get(HEADER..)) else {
        return Err(OpenError::CutShort);
    };
    let number = |from: usize, to: usize| {
        header[from..to]
            .iter()
            .rev()
            .fold(0u64, |n, byte| n << 8 | u64::from(*byte))
    };
    let version = number(8, 10) as u16;
    if version > VERSION {
        return Err(OpenError::Newer { found: version });
    }
    if number(12, 20) != body.len() as u64 {
        return Err(OpenError::CutShort);
    }
    if version == 0 || number(20, 24) != u64::from(checksum(&header[8..20], body)) {
        return Err(OpenError::Damaged);
    }
    if number(10, 12) != kind as u64 {
        return Err(OpenError::WrongKind);
    }
    Ok(body)
}

fn checksum(header: &[u8], body: &[u8]) -> u32 {
    let mut sum = crc32fast::Hasher::new();
    sum.update(header);
    sum.update(body);
    sum.finalize()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_flipped_bit_and_every_cut_is_refused() {
        let whole = seal(Kind::Job, b"what the tape said");
        assert_eq!(unseal(Kind::Job, &whole), Ok(&b"what the tape said"[..]));
        for bit in 0..whole.len() * 8 {
            let mut bytes = whole.clone();
            bytes[bit / 8] ^= 1 << (bit % 8);
            assert!(unseal(Kind::Job, &bytes).is_err(), "bit {bit}");
        }
        for length in 0..whole.len() {
            assert!(
                unseal(Kind::Job, &whole[..length]).is_err(),
                "cut at {length}"
            );
        }
        let mut longer = whole.clone();
        longer.push(0);
        assert_eq!(unseal(Kind::Job, &longer), Err(OpenError::CutShort));
        assert_eq!(unseal(Kind::Shelf, &whole), Err(OpenError::WrongKind));
    }

    #[test]
    fn a_newer_file_is_refused_with_its_number() {
        let mut bytes = seal(Kind::Job, b"");
        bytes[8] = 7;
        assert_eq!(
            unseal(Kind::Job, &bytes),
            Err(OpenError::Newer { found: 7 })
        );
    }
}
