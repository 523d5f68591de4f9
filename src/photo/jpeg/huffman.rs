//! The bits of a scan, and the codes in them.

use std::io::Read;

/// Bits of a code that are looked up at once.
const LOOK: u32 = 10;
/// A code that is longer than that.
const LONG: u32 = 0;
/// A code whose value has to be read behind it.
const READ: u32 = 0x80;
/// How far past the end of a block its end mark leads.
const END: u32 = 64;

/// A one in each of eight bytes.
const ONES: u64 = 0x0101_0101_0101_0101;

/// Codes of one table, its shortest with the values that follow them.
pub(super) struct Codes {
    /// What the next [`LOOK`] bits begin with: a value (upper half), how many places it skips (a byte) and how many bits
    /// it takes all in all; or [`READ`] with the length of the code, and its symbol in place of what is skipped.
    looked_up: Vec<u32>,
    /// By length: the code after its last, moved up to 16 bits; and what leads from a code to its place in `symbols`.
    longer: [(u32, i32); 17],
    symbols: Vec<u8>,
}

impl Codes {
    /// A table as a file has it: how many codes there are of each length from 1 to 16, and their symbols; `None` where
    /// there are more than fit.
    pub(super) fn new(counts: &[u8; 16], symbols: &[u8]) -> Option<Codes> {
        let mut codes = Codes {
            looked_up: vec![LONG; 1 << LOOK],
            longer: [(0, 0); 17],
            symbols: symbols.to_vec(),
        };
        let (mut code, mut at) = (0u32, 0usize);
        for (length, count) in (1u32..).zip(counts) {
            let first = at as i32 - code as i32;
            for _ in 0..*count {
                let symbol = *symbols.get(at)?;
                if code >> length != 0 {
                    return None;
                }
                if length <= LOOK {
                    codes.look_up(code, length, symbol);
                }
                code += 1;
                at += 1;
            }
            codes.longer[length as usize] = (code << (16 - length), first);
            code <<= 1;
        }
        Some(codes)
    }

    fn look_up(&mut self, code: u32, length: u32, symbol: u8) {
        let (skip, size) = (u32::from(symbol >> 4), u32::from(symbol & 15));
        let rest = LOOK - length;
        for below in 0..1 << rest {
            let entry = if size == 0 && skip == 0 {
                END << 8 | length
            } else if size > 0 && size <= rest {
                let value = extended(below >> (rest - size), size);
                u32::from(value as u16) << 16 | skip << 8 | (length + size)
            } else {
                u32::from(symbol) << 8 | READ | length
            };
            self.looked_up[(code << rest | below) as usize] = entry;
        }
    }
}

/// A value of so many bits as it is meant: the lower half of them stands for what is less than nothing.
fn extended(bits: u32, size: u32) -> i32 {
    let half = 1 << (size - 1);
    let bits = bits as i32;
    if bits < half {
        bits - 2 * half + 1
    } else {
        bits
    }
}

/// A file as bits; stuffed bytes are taken out, and nothing is read past a marker.
pub(super) struct Bits<R> {
    file: R,
    buffer: Box<[u8]>,
    at: usize,
    end: usize,
    /// The next bits, the first one uppermost, and how many of them are bits of the file.
    bits: u64,
    count: u32,
    /// The marker that ended them.
    marker: Option<u8>,
}

impl<R: Read> Bits<R> {
    pub(super) fn new(file: R) -> Bits<R> {
        Bits {
            file,
            buffer: vec![0; 1 << 16].into_boxed_slice(),
            at: 0,
            end: 0,
            bits: 0,
            count: 0,
            marker: None,
        }
    }

    /// The next byte of the file as it stands.
    pub(super) fn byte(&mut self) -> Option<u8> {
        if self.at == self.end {
            self.at = 0;
            self.end = loop {
                match self.file.read(&mut self.buffer) {
                    Ok(read) => break read,
                    Err(why) if why.kind() == std::io::ErrorKind::Interrupted => {}
                    Err(_) => break 0,
                }
            };
            if self.end == 0 {
                return None;
            }
        }
        let byte = self.buffer[self.at];
        self.at += 1;
        Some(byte)
    }

    /// Fills up the bits to 32 at least, or to what there is before the marker.
    #[inline]
    fn fill(&mut self) -> Option<()> {
        if self.count >= 32 {
            return Some(());
        }
        if self.marker.is_none()
            && let Some(eight) = self.buffer[self.at..self.end].first_chunk::<8>()
        {
            let eight = u64::from_be_bytes(*eight);
            // Where no byte of the eight has all its bits.
            if (!eight).wrapping_sub(ONES) & eight & (ONES << 7) == 0 {
                self.bits |= eight >> self.count;
                let whole = (64 - self.count) / 8;
                // Those of a byte that is not whole are read again, onto the same.
                self.count += 8 * whole;
                self.at += whole as usize;
                return Some(());
            }
        }
        self.fill_slowly()
    }

    #[cold]
    fn fill_slowly(&mut self) -> Option<()> {
        while self.count <= 56 && self.marker.is_none() {
            let byte = self.byte()?;
            if byte == 0xFF {
                match self.byte()? {
                    0 => {}
                    0xFF => return None,
                    marker => {
                        self.marker = Some(marker);
                        break;
                    }
                }
            }
            self.bits |= u64::from(byte) << (56 - self.count);
            self.count += 8;
        }
        Some(())
    }

    /// So many bits, at least one; `None` where they would be taken from behind a marker.
    #[inline]
    fn take(&mut self, size: u32) -> Option<u32> {
        let bits = (self.bits >> (64 - size)) as u32;
        self.drop(size)?;
        Some(bits)
    }

    #[inline]
    fn drop(&mut self, size: u32) -> Option<()> {
        self.count = self.count.checked_sub(size)?;
        self.bits <<= size;
        Some(())
    }

    /// The symbol of a code longer than is looked up.
    #[cold]
    fn long(&mut self, codes: &Codes) -> Option<u8> {
        let next = (self.bits >> 48) as u32;
        let lengths = LOOK + 1..=16;
        let length = lengths
            .into_iter()
            .find(|length| next < codes.longer[*length as usize].0)?;
        let code = self.take(length)? as i32;
        let at = code + codes.longer[length as usize].1;
        codes.symbols.get(usize::try_from(at).ok()?).copied()
    }

    /// The next value and how many places it skips; a value of nothing skips its own place too.
    #[inline]
    fn value(&mut self, codes: &Codes) -> Option<(i16, u32)> {
        self.fill()?;
        let entry = codes.looked_up[(self.bits >> (64 - LOOK)) as usize];
        if entry & READ == 0 && entry != LONG {
            self.drop(entry & 0x7F)?;
            return Some(((entry >> 16) as i16, entry >> 8 & 0xFF));
        }
        let symbol = if entry == LONG {
            self.long(codes)?
        } else {
            self.drop(entry & 0x7F)?;
            (entry >> 8) as u8
        };
        let (skip, size) = (u32::from(symbol >> 4), u32::from(symbol & 15));
        match (skip, size) {
            (0, 0) => Some((0, END)),
            (15, 0) => Some((0, 16)),
            (_, 0) => None,
            _ => Some((extended(self.take(size)?, size) as i16, skip)),
        }
    }

    /// One block: its first coefficient by what it differs from that of the block before, then those of the zigzag for
    /// which `places` has a place in `block`, which was nothing.
    #[inline]
    pub(super) fn block(
        &mut self,
        [first, rest]: [&Codes; 2],
        before: &mut i16,
        places: &[u8; 64],
        block: &mut [i16; 32],
    ) -> Option<()> {
        let (differs, skip) = self.value(first)?;
        // Its symbols have no upper half but that of the code for nothing.
        if skip != 0 && (skip != END || differs != 0) || differs.unsigned_abs() > 2047 {
            return None;
        }
        *before = before.wrapping_add(differs);
        block[0] = *before;
        let mut at = 1u32;
        while at < 64 {
            let (value, skip) = self.value(rest)?;
            at += skip;
            if value != 0 {
                // Past the end of the block there is no place: the file is damaged.
                let place = places.get(at as usize)?;
                block[usize::from(*place & 31)] = value;
                at += 1;
            }
        }
        Some(())
    }

    /// Whether a restart marker of a number stands here; the bits before it that fill up a byte are dropped.
    pub(super) fn restarts(&mut self, number: u8) -> Option<()> {
        self.marker_here()
            .filter(|marker| *marker == 0xD0 + number)?;
        (self.bits, self.count, self.marker) = (0, 0, None);
        Some(())
    }

    /// The marker that ends the bits, where less than a byte of them is left.
    pub(super) fn marker_here(&mut self) -> Option<u8> {
        if self.count < 8 {
            self.fill_slowly()?;
        }
        self.marker.filter(|_| self.count < 8)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Codes of 1, 2 and 12 bits: 0 for the end, 10 for a value of one bit, 111111111110 for one of two that skips 3.
    fn codes() -> Codes {
        let mut counts = [0; 16];
        (counts[0], counts[1], counts[11]) = (1, 1, 1);
        Codes::new(&counts, &[0x00, 0x01, 0x32]).unwrap()
    }

    #[test]
    fn values_are_read_and_nothing_from_behind_a_marker() {
        // 10 1, 10 0, 110000000000 10, 0, then ones to fill up.
        let mut bits = Bits::new(&[0b1011_0011, 0b0000_0000, 0b0010_0111, 0xFF, 0xD9][..]);
        let codes = codes();
        let mut values = Vec::new();
        while let Some(value) = bits.value(&codes) {
            values.push(value);
        }
        assert_eq!(values[..4], [(1, 0), (-1, 0), (2, 3), (0, END)]);
        let mut bits = Bits::new(&[0b1011_0011, 0xFF, 0xD9][..]);
        assert_eq!(bits.value(&codes), Some((1, 0)));
        assert_eq!(bits.value(&codes), Some((-1, 0)));
        assert_eq!(bits.value(&codes), None);
    }

    #[test]
    fn more_codes_than_there_are_is_no_table() {
        let mut counts = [0; 16];
        counts[0] = 3;
        assert!(Codes::new(&counts, &[1, 2, 3]).is_none());
        counts[0] = 2;
        assert!(Codes::new(&counts, &[1]).is_none());
        assert!(Codes::new(&counts, &[1, 2]).is_some());
    }

    #[test]
    fn the_lower_half_of_a_value_is_less_than_nothing() {
        let three = |bits| extended(bits, 3);
        assert_eq!([0, 3, 4, 7].map(three), [-7, -4, 4, 7]);
        assert_eq!([0, 1].map(|bits| extended(bits, 1)), [-1, 1]);
    }
}
