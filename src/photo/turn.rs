//! Which way up a picture is.

/// How a picture has to be turned to stand upright: one of the eight orientations of EXIF.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Turn(u8);

impl Turn {
    /// It stands upright.
    pub const UPRIGHT: Turn = Turn(1);

    /// By its number in EXIF, 1 to 8; anything else stands upright.
    ///
    /// Source: CIPA DC-008 (Exif), tag Orientation.
    #[must_use]
    pub fn exif(number: u32) -> Turn {
        match u8::try_from(number) {
            Ok(number @ 1..=8) => Turn(number),
            _ => Turn::UPRIGHT,
        }
    }
    /// Its number in EXIF.
    #[must_use]
    pub fn number(self) -> u8 {
        self.0
    }
    /// Whether width and height change places.
    #[must_use]
    pub fn lies(self) -> bool {
        self.0 >= 5
    }
    /// The size of the upright picture.
    #[must_use]
    pub fn size(self, (width, height): (u32, u32)) -> (u32, u32) {
        if self.lies() {
            (height, width)
        } else {
            (width, height)
        }
    }

    /// Pixels of three bytes turned upright, row by row.
    pub(super) fn apply(self, (width, height): (u32, u32), rgb: Vec<u8>) -> Vec<u8> {
        if self == Turn::UPRIGHT {
            return rgb;
        }
        let (w, h) = (width as usize, height as usize);
        let (across, down) = if self.lies() { (h, w) } else { (w, h) };
        let mut out = Vec::with_capacity(rgb.len());
        for y in 0..down {
            for x in 0..across {
                // Where the pixel of the upright picture stands in the file.
                let (sx, sy) = match self.0 {
                    2 => (w - 1 - x, y),
                    3 => (w - 1 - x, h - 1 - y),
                    4 => (x, h - 1 - y),
                    5 => (y, x),
                    6 => (y, h - 1 - x),
                    7 => (w - 1 - y, h - 1 - x),
                    _ => (w - 1 - y, x),
                };
                let at = 3 * (sy * w + sx);
                out.extend_from_slice(&rgb[at..at + 3]);
            }
        }
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_l_stands_upright_from_each_of_the_eight_ways() {
        // Upright it is 2 across and 3 down, 0 to 5 in reading order; below, what the sensor wrote for each number.
        let upright = [0, 1, 2, 3, 4, 5];
        let stored: [[u8; 6]; 8] = [
            [0, 1, 2, 3, 4, 5],
            [1, 0, 3, 2, 5, 4],
            [5, 4, 3, 2, 1, 0],
            [4, 5, 2, 3, 0, 1],
            [0, 2, 4, 1, 3, 5],
            [1, 3, 5, 0, 2, 4],
            [5, 3, 1, 4, 2, 0],
            [4, 2, 0, 5, 3, 1],
        ];
        for (number, stored) in (1..).zip(stored) {
            let turn = Turn::exif(number);
            let size = if turn.lies() { (3, 2) } else { (2, 3) };
            let rgb: Vec<u8> = stored.iter().flat_map(|v| [*v; 3]).collect();
            let turned = turn.apply(size, rgb);
            let seen: Vec<u8> = turned.chunks(3).map(|p| p[0]).collect();
            assert_eq!(seen, upright, "orientation {number}");
            assert_eq!(turn.size(size), (2, 3));
        }
        assert_eq!(Turn::exif(0), Turn::UPRIGHT);
        assert_eq!(Turn::exif(99), Turn::UPRIGHT);
    }
}
