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

/// Pixels of four bytes, the last how opaque, as a PNG that keeps every one of them. Their colours are taken as sRGB, as
/// what other programs put on the clipboard is.
///
/// # Errors
/// Where there are fewer bytes than the size says, or more; and what the encoder says.
pub fn pasted_png(size: (u32, u32), rgba: &[u8]) -> Result<Vec<u8>, String> {
    let (width, height) = size;
    let wanted = (u64::from(width) * u64::from(height)).saturating_mul(4);
    if wanted == 0 || rgba.len() as u64 != wanted {
        return Err(format!(
            "{width} by {height} pixels do not fit {} bytes",
            rgba.len()
        ));
    }
    let mut bytes = Vec::new();
    let opaque = rgba.chunks_exact(4).all(|pixel| pixel[3] == 255);
    let encoder = PngEncoder::new(&mut bytes);
    let written = if opaque {
        let rgb: Vec<u8> = rgba
            .chunks_exact(4)
            .flat_map(|p| [p[0], p[1], p[2]])
            .collect();
        encoder.write_image(&rgb, width, height, ExtendedColorType::Rgb8)
    } else {
        encoder.write_image(rgba, width, height, ExtendedColorType::Rgba8)
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
    fn pasted_pixels_are_kept_every_one() {
        let rgba: Vec<u8> = (0..20 * 10)
            .flat_map(|n| [(n % 251) as u8, (n * 3 % 256) as u8, 7, 255])
            .collect();
        let png = pasted_png((20, 10), &rgba).unwrap();
        let back = image::load_from_memory(&png).unwrap();
        assert_eq!(back.color(), image::ColorType::Rgb8);
        assert_eq!(back.to_rgba8().into_raw(), rgba);
        let mut clear = rgba.clone();
        clear[7] = 100;
        let png = pasted_png((20, 10), &clear).unwrap();
        assert_eq!(
            image::load_from_memory(&png).unwrap().to_rgba8().into_raw(),
            clear
        );
        for (size, bytes) in [
            ((20, 11), &rgba[..]),
            ((0, 10), &[]),
            ((u32::MAX, u32::MAX), &rgba),
        ] {
            assert!(pasted_png(size, bytes).is_err());
        }
    }

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
