//! A camera that is looked through in the window: where its frames come from, and why there are none.

/// What a camera sees now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Frame {
    /// A JPEG, as the camera made it.
    Jpeg(Vec<u8>),
    /// Pixels of three bytes, row by row.
    Pixels {
        /// Across and down.
        size: (u32, u32),
        /// Red, green and blue.
        rgb: Vec<u8>,
    },
}

/// Why a camera shows nothing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoCamera {
    /// There is none.
    None,
    /// Another program has it.
    InUse,
    /// This person may not open it.
    NotAllowed,
    /// It offers no pictures that are read here.
    NoFormat,
    /// It was taken off while it was open.
    Gone,
    /// Whatever else the system says.
    Other(String),
}

/// Something that gives frames, one after the other. It is used on a thread of its own and may wait there.
pub trait Camera: Send {
    /// The next frame.
    ///
    /// # Errors
    /// [`NoCamera`]; then it gives no more.
    fn frame(&mut self) -> Result<Frame, NoCamera>;
}

impl NoCamera {
    /// What the system says of a camera that does not open or stops.
    #[must_use]
    pub fn of(why: &std::io::Error, open: bool) -> NoCamera {
        // As Linux numbers them: EBUSY and ENODEV.
        match (why.kind(), why.raw_os_error()) {
            (std::io::ErrorKind::PermissionDenied, _) => NoCamera::NotAllowed,
            (std::io::ErrorKind::ResourceBusy, _) | (_, Some(16)) => NoCamera::InUse,
            (_, Some(19)) if open => NoCamera::Gone,
            (std::io::ErrorKind::NotFound, _) | (_, Some(19)) => NoCamera::None,
            _ => NoCamera::Other(why.to_string()),
        }
    }
}

/// Pixels out of the plainest way in which cameras send them: brightness of each pixel, colour of every two (YUYV).
///
/// R = 1.164 (Y − 16) + 1.596 (V − 128); G = 1.164 (Y − 16) − 0.392 (U − 128) − 0.813 (V − 128);
/// B = 1.164 (Y − 16) + 2.017 (U − 128).
///
/// # Inputs
/// Rows of `stride` bytes, at least twice as many as there are pixels across; an even number of them.
/// # Gives
/// Three bytes a pixel; `None` where there are fewer bytes than pixels want.
/// # Source
/// Recommendation ITU-R BT.601, brightness of 16 to 235 (from memory).
/// # Example
/// ```
/// use storyrod::photo::from_yuyv;
/// assert_eq!(from_yuyv((2, 1), 4, &[16, 128, 235, 128]), Some(vec![0, 0, 0, 255, 255, 255]));
/// ```
#[must_use]
pub fn from_yuyv(size: (u32, u32), stride: usize, bytes: &[u8]) -> Option<Vec<u8>> {
    let (wide, high) = (size.0 as usize & !1, size.1 as usize);
    if wide == 0 || stride < wide * 2 || bytes.len() < stride.checked_mul(high)? {
        return None;
    }
    let mut rgb = Vec::with_capacity(wide * high * 3);
    for row in bytes.chunks_exact(stride).take(high) {
        for pair in row[..wide * 2].chunks_exact(4) {
            let (u, v) = (f32::from(pair[1]) - 128.0, f32::from(pair[3]) - 128.0);
            for y in [pair[0], pair[2]] {
                let y = 1.164 * (f32::from(y) - 16.0);
                let parts = [y + 1.596 * v, y - 0.392 * u - 0.813 * v, y + 2.017 * u];
                rgb.extend(parts.map(|part| part.round().clamp(0.0, 255.0) as u8));
            }
        }
    }
    Some(rgb)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::{Error, ErrorKind};

    #[test]
    fn colours_come_out_of_brightness_and_their_two_differences() {
        // Full red, green and blue as that recommendation codes them, each twice; rows are padded.
        let bytes = [
            81, 90, 81, 240, 0, 0, 145, 54, 145, 34, 0, 0, 41, 240, 41, 110, 0, 0,
        ];
        let rgb = from_yuyv((2, 3), 6, &bytes).unwrap();
        for (pixel, wanted) in rgb.chunks(6).zip([[255, 0, 0], [0, 255, 0], [0, 0, 255]]) {
            for (part, wanted) in pixel.iter().zip(wanted.iter().cycle()) {
                assert!(part.abs_diff(*wanted) <= 2, "{pixel:?}, not {wanted:?}");
            }
        }
        assert_eq!(from_yuyv((2, 4), 6, &bytes), None);
        assert_eq!(from_yuyv((0, 4), 6, &bytes), None);
    }

    #[test]
    fn what_the_system_says_becomes_one_of_a_few_reasons() {
        for (code, open, wanted) in [
            (16, false, NoCamera::InUse),
            (19, false, NoCamera::None),
            (19, true, NoCamera::Gone),
            (13, false, NoCamera::NotAllowed),
            (2, false, NoCamera::None),
        ] {
            assert_eq!(NoCamera::of(&Error::from_raw_os_error(code), open), wanted);
        }
        let other = Error::new(ErrorKind::InvalidData, "odd");
        assert_eq!(NoCamera::of(&other, true), NoCamera::Other("odd".into()));
    }
}
