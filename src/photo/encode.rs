//! A picture as the bytes of a file, with the profile of sRGB.

use image::codecs::jpeg::JpegEncoder;
use image::codecs::png::PngEncoder;
use image::{ExtendedColorType, ImageEncoder};

/// A format that pictures are written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Format {
    /// JPEG of good quality.
    Jpeg,
    /// PNG, every pixel as it is.
    Png,
}

/// Pixels of three bytes as a file of sRGB.
///
/// # Errors
/// What the encoder says; it takes every picture that is made here.
pub fn encode(size: (u32, u32), rgb: &[u8], format: Format) -> Result<Vec<u8>, String> {
    let mut bytes = Vec::new();
    let profile = moxcms::ColorProfile::new_srgb().encode().ok();
    let (width, height) = size;
    let colour = ExtendedColorType::Rgb8;
    let written = match format {
        Format::Jpeg => {
            let mut encoder = JpegEncoder::new_with_quality(&mut bytes, 90);
            if let Some(profile) = profile {
                // One without is shown as sRGB all the same.
                let _ = encoder.set_icc_profile(profile);
            }
            encoder.write_image(rgb, width, height, colour)
        }
        Format::Png => {
            let mut encoder = PngEncoder::new(&mut bytes);
            if let Some(profile) = profile {
                let _ = encoder.set_icc_profile(profile);
            }
            encoder.write_image(rgb, width, height, colour)
        }
    };
    written.map_err(|why| why.to_string())?;
    Ok(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::photo::decode;
    use std::io::Cursor;

    #[test]
    fn what_is_written_is_srgb_and_comes_back() {
        let rgb: Vec<u8> = (0..16 * 16 * 3).map(|n| (n * 7 % 256) as u8).collect();
        let png = encode((16, 16), &rgb, Format::Png).unwrap();
        assert!(png.windows(4).any(|name| name == b"iCCP"));
        let (picture, _) = decode(&mut Cursor::new(png), 2048).unwrap();
        assert_eq!(picture.rgb, rgb);
        let grey = vec![119; 16 * 16 * 3];
        let jpeg = encode((16, 16), &grey, Format::Jpeg).unwrap();
        assert!(jpeg.windows(11).any(|name| name == b"ICC_PROFILE"));
        let (picture, _) = decode(&mut Cursor::new(jpeg), 2048).unwrap();
        assert!(picture.rgb.iter().all(|part| part.abs_diff(119) <= 1));
    }
}
