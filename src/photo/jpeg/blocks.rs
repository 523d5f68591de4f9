//! A block made smaller: what its lowest frequencies come to.

use std::num::Wrapping;

/// Where in a block of 8 by 8 the coefficients stand, in the order of a file.
const ZIGZAG: [u8; 64] = [
    0, 1, 8, 16, 9, 2, 3, 10, 17, 24, 32, 25, 18, 11, 4, 5, 12, 19, 26, 33, 40, 48, 41, 34, 27, 20,
    13, 6, 7, 14, 21, 28, 35, 42, 49, 56, 57, 50, 43, 36, 29, 22, 15, 23, 30, 37, 44, 51, 58, 59,
    52, 45, 38, 31, 39, 46, 53, 60, 61, 54, 47, 55, 62, 63,
];
/// The place of a coefficient that is not used.
const NOWHERE: u8 = 31;

/// What of a block is used, and how.
pub(super) struct Scale {
    /// Pixels across and down.
    side: usize,
    /// Where each coefficient goes in the order of a file.
    pub places: [u8; 64],
}

type Number = Wrapping<i32>;

impl Scale {
    /// So many eighths: 1, 2 or 4.
    pub(super) fn new(eighths: usize) -> Option<Scale> {
        let place = |n: usize| {
            let (row, column) = (usize::from(ZIGZAG[n] / 8), usize::from(ZIGZAG[n] % 8));
            if row < eighths && column < eighths {
                (row * eighths + column) as u8
            } else {
                NOWHERE
            }
        };
        matches!(eighths, 1 | 2 | 4).then(|| Scale {
            side: eighths,
            places: std::array::from_fn(place),
        })
    }

    /// The steps of the coefficients that are used, in their places.
    pub(super) fn steps(&self, steps: &[u16; 64]) -> [i32; 16] {
        let mut used = [0; 16];
        for (place, step) in self.places.iter().zip(steps) {
            if let Some(used) = used.get_mut(usize::from(*place)) {
                *used = i32::from(*step);
            }
        }
        used
    }

    /// Puts the pixels of a block where they belong.
    pub(super) fn put(&self, block: &[i16; 16], steps: &[i32; 16], to: &mut [u8], stride: usize) {
        let part = |n: usize| Wrapping(i32::from(block[n]) * steps[n]);
        match self.side {
            4 => {
                let pixels = four(&std::array::from_fn(part));
                for (line, pixels) in to.chunks_mut(stride).zip(pixels.as_chunks::<4>().0) {
                    if let Some(line) = line.first_chunk_mut() {
                        *line = *pixels;
                    }
                }
            }
            2 => {
                let pixels = two(&std::array::from_fn(part));
                for (line, pixels) in to.chunks_mut(stride).zip(pixels.as_chunks::<2>().0) {
                    if let Some(line) = line.first_chunk_mut() {
                        *line = *pixels;
                    }
                }
            }
            _ => {
                if let Some(pixel) = to.first_mut() {
                    *pixel = clamp((part(0) + Wrapping(128 * 8)) / Wrapping(8));
                }
            }
        }
    }
}

fn clamp(x: Number) -> u8 {
    x.0.clamp(0, 255) as u8
}

/// The odd half of four points: cosines in 4096ths.
fn odd(s1: Number, s3: Number) -> [Number; 2] {
    let both = (s1 + s3) * Wrapping(2217);
    [both + s3 * Wrapping(-7567), both + s1 * Wrapping(3135)]
}

fn four(part: &[Number; 16]) -> [u8; 16] {
    let mut half = [Wrapping(0); 16];
    for n in 0..4 {
        let [s0, s1, s2, s3] = [0, 4, 8, 12].map(|row| part[n + row]);
        let (outer, inner) = ((s0 + s2) << 2, (s0 - s2) << 2);
        let [t0, t2] = odd(s1, s3).map(|t| (t + Wrapping(512)) >> 10);
        half[n] = outer + t2;
        half[n + 4] = inner + t0;
        half[n + 8] = inner - t0;
        half[n + 12] = outer - t2;
    }
    let mut pixels = [0; 16];
    // Half a unit to round by, and grey in the middle.
    let middle = Wrapping((1 << 16) + (128 << 17));
    for (row, out) in half
        .as_chunks::<4>()
        .0
        .iter()
        .zip(pixels.as_chunks_mut::<4>().0)
    {
        let [s0, s1, s2, s3] = *row;
        let (outer, inner) = (((s0 + s2) << 12) + middle, ((s0 - s2) << 12) + middle);
        let [t0, t2] = odd(s1, s3);
        *out = [outer + t2, inner + t0, inner - t0, outer - t2].map(|x| clamp(x >> 17));
    }
    pixels
}

fn two(part: &[Number; 4]) -> [u8; 4] {
    let [s00, s01, s10, s11] = *part;
    let middle = Wrapping(4 + (128 << 3));
    let (above, below) = (s00 + s10 + middle, s00 - s10 + middle);
    let (right_above, right_below) = (s01 + s11, s01 - s11);
    [
        above + right_above,
        above - right_above,
        below + right_below,
        below - right_below,
    ]
    .map(|x| clamp(x >> 3))
}
