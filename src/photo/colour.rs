//! Colours brought to sRGB, which is what every screen is sent.

use moxcms::{ColorProfile, Layout, TransformOptions};

/// Brings pixels of three bytes to sRGB by the profile that came with them; leaves them where there is none, where it
/// is sRGB already, and where it does not read.
pub(super) fn to_srgb(rgb: &mut [u8], profile: Option<&[u8]>) {
    let Some(profile) = profile.and_then(|bytes| ColorProfile::new_from_slice(bytes).ok()) else {
        return;
    };
    let options = TransformOptions::default();
    let Ok(change) =
        profile.create_transform_8bit(Layout::Rgb, &ColorProfile::new_srgb(), Layout::Rgb, options)
    else {
        return;
    };
    // A profile of sRGB itself changes a colour by a rounding at most; then none is touched.
    let cube: Vec<u8> = (0..125u8)
        .flat_map(|n| [n % 5, n / 5 % 5, n / 25].map(|part| (u16::from(part) * 255 / 4) as u8))
        .collect();
    let mut changed = vec![0; cube.len()];
    if change.transform(&cube, &mut changed).is_err()
        || cube.iter().zip(&changed).all(|(a, b)| a.abs_diff(*b) <= 2)
    {
        return;
    }
    let mut row = vec![0; 3 * 4096];
    for part in rgb.chunks_mut(3 * 4096) {
        let out = &mut row[..part.len()];
        if change.transform(part, out).is_ok() {
            part.copy_from_slice(out);
        }
    }
}
