//! A picture to a working copy: upright, in sRGB, no larger than asked, in bounded memory.

use std::io::{BufReader, Read, Seek, SeekFrom};

use fast_image_resize::images::{Image, ImageRef};
use fast_image_resize::{FilterType, PixelType, ResizeAlg, ResizeOptions, Resizer};
use image::ImageDecoder;
use image::codecs::{png::PngDecoder, webp::WebPDecoder};
use jpeg_decoder::{CodingProcess, Decoder as JpegDecoder, ImageInfo, PixelFormat};

use super::{Facts, Kind, Problem, colour, facts, jpeg};

/// The longer side of a working copy.
pub const WORKING: u32 = 2048;
/// Most pixels of a baseline JPEG, of which an eighth of each side is decoded.
const BASELINE: u64 = 260_000_000;
/// Most of a progressive one, whose coefficients are all held at once: about three bytes a pixel.
const PROGRESSIVE: u64 = 50_000_000;
/// Most bytes of a PNG or WebP decoded whole.
const WHOLE: u64 = 128 << 20;
/// Most of a JPEG that `jpeg-decoder` may hold decoded.
const DECODED: usize = 160 << 20;

/// A picture in sRGB, upright.
#[derive(Clone, PartialEq, Eq)]
pub struct Picture {
    /// Across.
    pub width: u32,
    /// Down.
    pub height: u32,
    /// Three bytes a pixel, row by row.
    pub rgb: Vec<u8>,
    /// The size of the upright original.
    pub original: (u32, u32),
}

impl std::fmt::Debug for Picture {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let (width, height) = (self.width, self.height);
        write!(f, "Picture {width} x {height} of {:?}", self.original)
    }
}

impl Picture {
    /// Pixels of this copy to one of the original.
    #[must_use]
    pub fn scale(&self) -> f64 {
        f64::from(self.width) / f64::from(self.original.0.max(1))
    }
    /// A smaller copy, its longer side at most `long`.
    #[must_use]
    pub fn smaller(&self, long: u32) -> Picture {
        let raw = Raw {
            size: (self.width, self.height),
            pixels: self.rgb.clone(),
            kind: PixelType::U8x3,
        };
        let made = raw.fitted((self.width, self.height), long);
        made.map_or_else(
            |_| self.clone(),
            |(size, rgb)| Picture {
                width: size.0,
                height: size.1,
                rgb,
                original: self.original,
            },
        )
    }
}

/// Pixels as a decoder gives them.
struct Raw {
    size: (u32, u32),
    pixels: Vec<u8>,
    kind: PixelType,
}

/// Decodes a picture to a copy whose longer side is at most `long`, with what its camera wrote.
///
/// A JPEG is decoded at an eighth, a quarter or a half where that is still large enough. Transparent places become
/// white. At most about 200 MB are held, whatever the file says of itself.
///
/// # Errors
/// [`Problem`].
pub fn decode(file: &mut (impl Read + Seek), long: u32) -> Result<(Picture, Facts), Problem> {
    let kind = Kind::of_file(file).map_err(|why| Problem::of(&why))?;
    let Some(kind) = kind else {
        let length = file.seek(SeekFrom::End(0)).unwrap_or(1);
        return Err(if length == 0 {
            Problem::Empty
        } else {
            Problem::NotAPicture
        });
    };
    let mut file = BufReader::with_capacity(1 << 16, file);
    let facts = facts(&mut file);
    if kind == Kind::Heic {
        return Err(Problem::Heic);
    }
    file.seek(SeekFrom::Start(0))
        .map_err(|why| Problem::of(&why))?;
    let (raw, full, profile) = match kind {
        Kind::Jpeg => of_jpeg(file, long)?,
        Kind::Png => {
            // Before the decoder makes room for a row of it.
            not_too_many(png_size(&mut file)?, WHOLE)?;
            let decoder = PngDecoder::with_limits(file, limits()).map_err(|why| refused(&why))?;
            whole(decoder)?
        }
        Kind::WebP => whole(WebPDecoder::new(file).map_err(|why| refused(&why))?)?,
        Kind::Heic => return Err(Problem::Heic),
    };
    let (size, mut rgb) = raw.fitted(full, long)?;
    colour::to_srgb(&mut rgb, profile.as_deref());
    let (width, height) = facts.turn.size(size);
    let picture = Picture {
        width,
        height,
        rgb: facts.turn.apply(size, rgb),
        original: facts.turn.size(full),
    };
    Ok((picture, facts))
}

/// The size that the head of a PNG says, the file left at its start.
fn png_size(file: &mut (impl Read + Seek)) -> Result<(u32, u32), Problem> {
    let mut head = [0; 24];
    file.read_exact(&mut head)
        .and_then(|()| file.seek(SeekFrom::Start(0)))
        .map_err(|why| Problem::of(&why))?;
    let side = |at: usize| u32::from_be_bytes([head[at], head[at + 1], head[at + 2], head[at + 3]]);
    Ok((side(16), side(20)))
}

fn limits() -> image::Limits {
    let mut limits = image::Limits::default();
    limits.max_alloc = Some(WHOLE);
    limits
}

type Decoded = (Raw, (u32, u32), Option<Vec<u8>>);

/// The usual kind by [`jpeg::planes`], all others by the library.
fn of_jpeg<R: Read + Seek>(mut file: R, long: u32) -> Result<Decoded, Problem> {
    let (decoder, info, size) = begun(&mut file, long)?;
    let full = (u32::from(info.width), u32::from(info.height));
    let scaled = |eighths: &usize| (usize::from(info.width) * eighths).div_ceil(8);
    let eighths = [1, 2, 4]
        .into_iter()
        .find(|eighths| scaled(eighths) == usize::from(size.0));
    let usual = info.coding_process == CodingProcess::DctSequential
        && info.pixel_format == PixelFormat::RGB24;
    let profile = decoder.icc_profile();
    let start = |file: &mut R| {
        file.seek(SeekFrom::Start(0))
            .map_err(|why| Problem::of(&why))
    };
    start(&mut file)?;
    if let Some(eighths) = eighths.filter(|_| usual)
        && let Some(planes) = jpeg::planes(&mut file, eighths)
    {
        let size = fit(full, long);
        let pixels = jpeg::colours(&planes, size, SMALLER).ok_or(Problem::Damaged)?;
        let kind = PixelType::U8x3;
        return Ok((Raw { size, pixels, kind }, full, profile));
    }
    start(&mut file)?;
    by_library(file, long)
}

/// A JPEG as its library decodes it.
fn by_library<R: Read>(file: R, long: u32) -> Result<Decoded, Problem> {
    let (mut decoder, info, size) = begun(file, long)?;
    let full = (u32::from(info.width), u32::from(info.height));
    let pixels = decoder.decode().map_err(|why| jpeg_refused(&why))?;
    let profile = decoder.icc_profile();
    let (pixels, kind) = match info.pixel_format {
        PixelFormat::L8 => (pixels, PixelType::U8),
        PixelFormat::L16 => (high_bytes(&pixels), PixelType::U8),
        PixelFormat::RGB24 => (pixels, PixelType::U8x3),
        PixelFormat::CMYK32 => (from_cmyk(&pixels), PixelType::U8x3),
    };
    let size = (u32::from(size.0), u32::from(size.1));
    // The profile of a picture in other inks than these says nothing of it.
    let profile = profile.filter(|_| info.pixel_format == PixelFormat::RGB24);
    Ok((Raw { size, pixels, kind }, full, profile))
}

type Begun<R> = (JpegDecoder<R>, ImageInfo, (u16, u16));

/// The library before the scan of a JPEG, and the size that it decodes it to.
fn begun<R: Read>(file: R, long: u32) -> Result<Begun<R>, Problem> {
    let mut decoder = JpegDecoder::new(file);
    decoder.set_max_decoding_buffer_size(DECODED);
    decoder.read_info().map_err(|why| jpeg_refused(&why))?;
    let Some(info) = decoder.info() else {
        return Err(Problem::Damaged);
    };
    let full = (u32::from(info.width), u32::from(info.height));
    let most = match info.coding_process {
        CodingProcess::DctProgressive => PROGRESSIVE,
        CodingProcess::DctSequential => BASELINE,
        CodingProcess::Lossless => WHOLE / 6,
    };
    not_too_many(full, most)?;
    let wanted = fit(full, long);
    let side = |pixels: u32| u16::try_from(pixels).unwrap_or(u16::MAX);
    let size = decoder
        .scale(side(wanted.0), side(wanted.1))
        .map_err(|why| jpeg_refused(&why))?;
    Ok((decoder, info, size))
}

/// As fast as linear, and nearly as sharp as cubic where a picture is made smaller.
const SMALLER: ResizeAlg = ResizeAlg::Convolution(FilterType::Hamming);

fn jpeg_refused(why: &jpeg_decoder::Error) -> Problem {
    match why {
        jpeg_decoder::Error::Io(why) => Problem::of(why),
        jpeg_decoder::Error::Format(text) if text.contains("failed to fill whole buffer") => {
            Problem::CutShort
        }
        _ => Problem::Damaged,
    }
}

/// Of 16 bits the upper eight.
fn high_bytes(pixels: &[u8]) -> Vec<u8> {
    let wide = pixels.as_chunks::<2>().0.iter();
    wide.map(|pair| (u16::from_ne_bytes(*pair) >> 8) as u8)
        .collect()
}

/// Inks as they are in a file of four, where 255 is none of it.
fn from_cmyk(pixels: &[u8]) -> Vec<u8> {
    let mut rgb = Vec::with_capacity(pixels.len() / 4 * 3);
    for [c, m, y, k] in pixels.as_chunks::<4>().0 {
        let light = |ink: u8| (u16::from(255 - ink) * u16::from(255 - k) / 255) as u8;
        rgb.extend([light(*c), light(*m), light(*y)]);
    }
    rgb
}

fn whole(mut decoder: impl ImageDecoder) -> Result<Decoded, Problem> {
    use image::ColorType::{L8, L16, La8, La16, Rgb8, Rgb16, Rgba8, Rgba16};
    let (width, height) = decoder.dimensions();
    let colour = decoder.color_type();
    let each = u64::from(colour.bytes_per_pixel()).max(1);
    not_too_many((width, height), WHOLE / each)?;
    let profile = decoder.icc_profile().ok().flatten();
    let mut pixels = vec![0; decoder.total_bytes() as usize];
    decoder
        .read_image(&mut pixels)
        .map_err(|why| refused(&why))?;
    if matches!(colour, L16 | La16 | Rgb16 | Rgba16) {
        pixels = high_bytes(&pixels);
    }
    let kind = match colour {
        L8 | L16 => PixelType::U8,
        La8 | La16 => PixelType::U8x2,
        Rgb8 | Rgb16 => PixelType::U8x3,
        Rgba8 | Rgba16 => PixelType::U8x4,
        _ => return Err(Problem::Damaged),
    };
    let profile = profile.filter(|_| matches!(colour, Rgb8 | Rgb16 | Rgba8 | Rgba16));
    let size = (width, height);
    Ok((Raw { size, pixels, kind }, size, profile))
}

fn refused(why: &image::ImageError) -> Problem {
    if let image::ImageError::IoError(why) = why {
        return Problem::of(why);
    }
    // Decoders hide the reader's error within their own.
    let mut within = std::error::Error::source(why);
    while let Some(inner) = within {
        if let Some(why) = inner.downcast_ref::<std::io::Error>() {
            return Problem::of(why);
        }
        within = inner.source();
    }
    Problem::Damaged
}

fn not_too_many((width, height): (u32, u32), most: u64) -> Result<(), Problem> {
    if width == 0 || height == 0 {
        return Err(Problem::Damaged);
    }
    if u64::from(width) * u64::from(height) > most {
        return Err(Problem::TooManyPixels {
            width,
            height,
            most: (most / 1_000_000) as u32,
        });
    }
    Ok(())
}

/// A size within a longer side, never larger than it is.
fn fit((width, height): (u32, u32), long: u32) -> (u32, u32) {
    let longer = u64::from(width.max(height)).max(1);
    if longer <= u64::from(long) {
        return (width, height);
    }
    let side = |pixels: u32| {
        let scaled = (2 * u64::from(pixels) * u64::from(long) + longer) / (2 * longer);
        (scaled as u32).max(1)
    };
    (side(width), side(height))
}

impl Raw {
    /// Three bytes a pixel at the size that a picture of `full` has within a longer side.
    fn fitted(self, full: (u32, u32), long: u32) -> Result<((u32, u32), Vec<u8>), Problem> {
        let size = fit(full, long);
        let (pixels, kind) = if self.size == size {
            (self.pixels, self.kind)
        } else {
            let (w, h) = self.size;
            let source =
                ImageRef::new(w, h, &self.pixels, self.kind).map_err(|_| Problem::Damaged)?;
            let mut fitted = Image::new(size.0, size.1, self.kind);
            Resizer::new()
                .resize(
                    &source,
                    &mut fitted,
                    &ResizeOptions::new().resize_alg(SMALLER),
                )
                .map_err(|_| Problem::Damaged)?;
            (fitted.into_vec(), self.kind)
        };
        Ok((size, three(pixels, kind)))
    }
}

/// Three bytes a pixel, on white.
fn three(pixels: Vec<u8>, kind: PixelType) -> Vec<u8> {
    let over = |part: u8, alpha: u8| {
        let (part, alpha) = (u16::from(part), u16::from(alpha));
        ((part * alpha + 255 * (255 - alpha) + 127) / 255) as u8
    };
    match kind {
        PixelType::U8 => pixels.iter().flat_map(|grey| [*grey; 3]).collect(),
        PixelType::U8x2 => {
            let pairs = pixels.as_chunks::<2>().0.iter();
            pairs.flat_map(|[grey, a]| [over(*grey, *a); 3]).collect()
        }
        PixelType::U8x4 => {
            let fours = pixels.as_chunks::<4>().0.iter();
            fours
                .flat_map(|[r, g, b, a]| [over(*r, *a), over(*g, *a), over(*b, *a)])
                .collect()
        }
        _ => pixels,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Cursor;

    /// By planes fitted before they are colours or by the library's colours made fewer: the same to the eye. The library takes
    /// the half pixel at the right for a whole one; that much they differ.
    #[test]
    fn both_ways_through_a_jpeg_show_the_same_picture() {
        let bytes = include_bytes!("../../tests/referee/pictures/rough.jpg");
        for long in [101, 77, 40] {
            let (ours, full, _) = of_jpeg(Cursor::new(bytes), long).unwrap();
            let (theirs, _, _) = by_library(&bytes[..], long).unwrap();
            let (size, theirs) = theirs.fitted(full, long).unwrap();
            assert_eq!(ours.size, size);
            let off = |(a, b): (&u8, &u8)| u64::from(a.abs_diff(*b));
            let sum: u64 = ours.pixels.iter().zip(&theirs).map(off).sum();
            let mean = sum as f64 / theirs.len() as f64;
            assert!(mean < 4.0, "{long}: {mean}");
        }
    }
}
