//! Planes fitted to a size, and then made colours.

use fast_image_resize::images::{Image, ImageRef};
use fast_image_resize::{FilterType, PixelType, ResizeAlg, ResizeOptions, Resizer};

use super::Plane;

/// Three bytes a pixel of planes fitted to a size.
pub(in crate::photo) fn colours(
    planes: &[Plane; 3],
    (width, height): (u32, u32),
    how: ResizeAlg,
) -> Option<Vec<u8>> {
    let mut fitted = Vec::with_capacity(3);
    let mut resizer = Resizer::new();
    for (n, plane) in planes.iter().enumerate() {
        // Colour may have to be made more, where a sharper way would show its pixels.
        let how = match n {
            0 => how,
            _ => ResizeAlg::Convolution(FilterType::Bilinear),
        };
        let side = |pixels: usize| u32::try_from(pixels).ok();
        let (stride, rows) = (side(plane.stride)?, side(plane.rows)?);
        let all = ImageRef::new(stride, rows, &plane.bytes, PixelType::U8).ok()?;
        let mut small = Image::new(width, height, PixelType::U8);
        let [wide, high] = plane.size;
        resizer
            .resize(
                &all,
                &mut small,
                &ResizeOptions::new()
                    .resize_alg(how)
                    .crop(0.0, 0.0, wide, high),
            )
            .ok()?;
        fitted.push(small.into_vec());
    }
    let [bright, blue, red] = <[Vec<u8>; 3]>::try_from(fitted).ok()?;
    let mut rgb = vec![0; 3 * bright.len()];
    let parts = bright.iter().zip(&blue).zip(&red);
    for (((y, b), r), out) in parts.zip(rgb.as_chunks_mut::<3>().0) {
        *out = colour(*y, *b, *r);
    }
    Some(rgb)
}

/// A colour by its brightness and by how much bluer and redder than grey it is (JFIF 1.02: ITU-R BT.601, all 256 levels),
/// in 65,536ths.
fn colour(bright: u8, blue: u8, red: u8) -> [u8; 3] {
    let (y, b, r) = (
        i32::from(bright) << 16 | 1 << 15,
        i32::from(blue) - 128,
        i32::from(red) - 128,
    );
    let parts = [y + 91_881 * r, y - 22_554 * b - 46_802 * r, y + 116_130 * b];
    parts.map(|part| (part >> 16).clamp(0, 255) as u8)
}
