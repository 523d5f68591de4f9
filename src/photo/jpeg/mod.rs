//! The usual picture of a camera, baseline JPEG in colour, at a half, a quarter or an eighth of its size.
//!
//! Its library spends most of its time on coefficients that a smaller picture never uses, and on the colours of pixels
//! that are then made fewer. Here a coefficient that is not used is passed over, and the three planes stay apart, so that
//! they can be fitted before they become colours. Whatever is unusual about a file is `None` and left to the library.

mod blocks;
mod colours;
mod huffman;

use std::io::Read;
use std::sync::mpsc;
use std::thread;

use blocks::Scale;
pub(super) use colours::colours;
use huffman::{Bits, Codes};

/// One of brightness and two of colour, as the file has them.
pub(super) struct Plane {
    /// Bytes of a row; more than the picture is wide.
    pub stride: usize,
    /// Rows of it.
    pub rows: usize,
    /// What of it is the picture, not all in whole bytes.
    pub size: [f64; 2],
    /// Row by row.
    pub bytes: Vec<u8>,
    /// Pixels of a block, across and down.
    side: usize,
}

/// What is said of a plane before it begins.
#[derive(Clone, Copy, Default)]
struct Part {
    id: u8,
    /// Blocks across and down in a unit of the scan.
    blocks: [usize; 2],
    table: usize,
    codes: [usize; 2],
}

/// What is said before the scan.
#[derive(Default)]
struct Head {
    size: [usize; 2],
    parts: Vec<Part>,
    steps: [Option<[u16; 64]>; 4],
    first: [Option<Codes>; 4],
    rest: [Option<Codes>; 4],
    restart: usize,
}

/// The three planes of a file at so many eighths of its size, 1, 2 or 4; `None` where the file is not of the usual kind,
/// or damaged.
///
/// As the library does it: blocks of 4 by 4 and 2 by 2 by the reduced transform of Dugad and Ahuja (A Fast Scheme for
/// Image Size Change in the Compressed Domain, 2001), an eighth by the mean of a block. Tables and codes: ITU-T T.81.
pub(super) fn planes(file: impl Read, eighths: usize) -> Option<[Plane; 3]> {
    let scale = Scale::new(eighths)?;
    let mut bits = Bits::new(file);
    let head = head(&mut bits)?;
    let parts: &[Part; 3] = head.parts.as_slice().try_into().ok()?;
    let unit = parts[0].blocks;
    let units = [0, 1].map(|axis| head.size[axis].div_ceil(8 * unit[axis]));
    let mut planes = parts.map(|part| {
        let stride = units[0] * part.blocks[0] * eighths;
        let rows = units[1] * part.blocks[1] * eighths;
        let size = [0, 1].map(|axis| {
            let share = part.blocks[axis] as f64 / unit[axis] as f64;
            head.size[axis] as f64 * share * eighths as f64 / 8.0
        });
        Plane {
            stride,
            rows,
            size,
            bytes: vec![0; stride * rows],
            side: eighths,
        }
    });
    let mut codes = Vec::with_capacity(3);
    for part in parts {
        let codes_of = [
            head.first[part.codes[0]].as_ref()?,
            head.rest[part.codes[1]].as_ref()?,
        ];
        codes.push((codes_of, scale.steps(head.steps[part.table].as_ref()?)));
    }
    // One core takes the codes apart, another makes pixels of them, so many rows of units behind.
    thread::scope(|scope| {
        let (rows, given) = mpsc::sync_channel::<Vec<Used>>(AHEAD);
        let (back, spare) = mpsc::channel();
        let (codes, scale) = (&codes, &scale);
        let pixels = scope.spawn(move || {
            for (down, row) in given.iter().enumerate() {
                put_row(&mut planes, parts, down, &row, |n, block, to, stride| {
                    scale.put(block, &codes[n].1, to, stride);
                })?;
                // Nobody waits for it after the last one.
                let _ = back.send(row);
            }
            Some(planes)
        });
        let mut place = Place::new(head.restart);
        for _ in 0..units[1] {
            let mut row = spare.try_recv().unwrap_or_default();
            row.clear();
            for _ in 0..units[0] {
                place.next(&mut bits)?;
                for (n, part) in parts.iter().enumerate() {
                    for _ in 0..part.blocks[0] * part.blocks[1] {
                        let mut block = [0; 32];
                        bits.block(codes[n].0, &mut place.before[n], &scale.places, &mut block)?;
                        row.push(*block.first_chunk()?);
                    }
                }
            }
            rows.send(row).ok()?;
        }
        drop(rows);
        let whole = bits.marker_here()? == 0xD9;
        let planes = pixels.join().ok()??;
        whole.then_some(planes)
    })
}

/// The coefficients of a block that are used.
type Used = [i16; 16];

/// Rows of units that may wait for their pixels.
const AHEAD: usize = 8;

/// How far a scan is: what the first coefficients count on from, and when that begins anew.
struct Place {
    before: [i16; 3],
    restart: usize,
    left: usize,
    number: u8,
}

impl Place {
    fn new(restart: usize) -> Place {
        Place {
            before: [0; 3],
            restart,
            left: restart,
            number: 0,
        }
    }

    /// On to the next unit.
    fn next(&mut self, bits: &mut Bits<impl Read>) -> Option<()> {
        if self.restart > 0 {
            if self.left == 0 {
                bits.restarts(self.number)?;
                (self.before, self.left) = ([0; 3], self.restart);
                self.number = (self.number + 1) % 8;
            }
            self.left -= 1;
        }
        Some(())
    }
}

/// The pixels of a row of units, block by block as they stand in the file.
fn put_row(
    planes: &mut [Plane; 3],
    parts: &[Part; 3],
    down: usize,
    row: &[Used],
    put: impl Fn(usize, &Used, &mut [u8], usize),
) -> Option<()> {
    let unit: usize = parts
        .iter()
        .map(|part| part.blocks[0] * part.blocks[1])
        .sum();
    for (across, unit) in row.chunks_exact(unit).enumerate() {
        let mut blocks = unit.iter();
        for (n, part) in parts.iter().enumerate() {
            let plane = &mut planes[n];
            for y in 0..part.blocks[1] {
                for x in 0..part.blocks[0] {
                    let line = (down * part.blocks[1] + y) * plane.side;
                    let column = (across * part.blocks[0] + x) * plane.side;
                    let to = plane.bytes.get_mut(line * plane.stride + column..)?;
                    put(n, blocks.next()?, to, plane.stride);
                }
            }
        }
    }
    Some(())
}

/// What stands before the scan; `None` where it is of another kind.
fn head(bits: &mut Bits<impl Read>) -> Option<Head> {
    let mut head = Head::default();
    if [bits.byte()?, bits.byte()?] != [0xFF, 0xD8] {
        return None;
    }
    loop {
        if bits.byte()? != 0xFF {
            return None;
        }
        let marker = bits.byte()?;
        let length = usize::from(u16::from_be_bytes([bits.byte()?, bits.byte()?]));
        let mut segment = Vec::new();
        for _ in 0..length.checked_sub(2)? {
            segment.push(bits.byte()?);
        }
        match marker {
            0xC0 => frame(&segment, &mut head)?,
            0xC4 => tables_of_codes(&segment, &mut head)?,
            0xDA => return scan(&segment, &mut head).map(|()| head),
            0xDB => tables_of_steps(&segment, &mut head)?,
            0xDD => head.restart = usize::from(u16::from_be_bytes(*segment.first_chunk()?)),
            0xE0..=0xEF | 0xFE => {}
            _ => return None,
        }
    }
}

/// Eight bits, three planes, brightness in one or two blocks either way, colour in one.
fn frame(segment: &[u8], head: &mut Head) -> Option<()> {
    let [8, h1, h0, w1, w0, 3, parts @ ..] = segment else {
        return None;
    };
    let side = |high: u8, low: u8| usize::from(u16::from_be_bytes([high, low]));
    head.size = [side(*w1, *w0), side(*h1, *h0)];
    if head.size.contains(&0) || !head.parts.is_empty() {
        return None;
    }
    let parts: &[u8; 9] = parts.try_into().ok()?;
    for (n, [id, blocks, table]) in parts.as_chunks::<3>().0.iter().enumerate() {
        let blocks = [blocks >> 4, blocks & 15].map(usize::from);
        let most = if n == 0 { 2 } else { 1 };
        // These three names say that they are brightness and two of colour.
        let usual = usize::from(*id) == n + 1 && *table < 4;
        if !usual || blocks.iter().any(|count| !(1..=most).contains(count)) {
            return None;
        }
        head.parts.push(Part {
            id: *id,
            blocks,
            table: usize::from(*table),
            codes: [0; 2],
        });
    }
    Some(())
}

fn tables_of_steps(mut segment: &[u8], head: &mut Head) -> Option<()> {
    while let [which, rest @ ..] = segment {
        let wide = which >> 4;
        let bytes = 64 * (usize::from(wide) + 1);
        let (table, rest) = rest.split_at_checked(bytes).filter(|_| wide < 2)?;
        let step = |n: usize| match wide {
            0 => u16::from(table[n]),
            _ => u16::from_be_bytes([table[2 * n], table[2 * n + 1]]),
        };
        let steps = std::array::from_fn(step);
        let held = head.steps.get_mut(usize::from(which & 15))?;
        *held = (!steps.contains(&0)).then_some(steps);
        held.as_ref()?;
        segment = rest;
    }
    Some(())
}

fn tables_of_codes(mut segment: &[u8], head: &mut Head) -> Option<()> {
    while let [which, rest @ ..] = segment {
        let (counts, rest) = rest.split_first_chunk::<16>()?;
        let many = counts.iter().map(|count| usize::from(*count)).sum();
        let (symbols, rest) = rest.split_at_checked(many)?;
        let tables = match which >> 4 {
            0 => &mut head.first,
            1 => &mut head.rest,
            _ => return None,
        };
        *tables.get_mut(usize::from(which & 15))? = Some(Codes::new(counts, symbols)?);
        segment = rest;
    }
    Some(())
}

/// One scan of all three planes, whole.
fn scan(segment: &[u8], head: &mut Head) -> Option<()> {
    let [3, parts @ .., 0, 63, 0] = segment else {
        return None;
    };
    let chosen: &[u8; 6] = parts.try_into().ok()?;
    if head.parts.len() != 3 {
        return None;
    }
    for (part, [id, codes]) in head.parts.iter_mut().zip(chosen.as_chunks::<2>().0) {
        part.codes = [codes >> 4, codes & 15].map(usize::from);
        if part.id != *id || part.codes.iter().any(|table| *table > 3) {
            return None;
        }
    }
    Some(())
}

#[cfg(test)]
mod tests;
