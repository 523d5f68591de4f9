//! A picture laid flat: its plane seen square on, to scale.

use super::Picture;
use crate::geometry::{Plane, Spot};

/// What of the plane is shown, and how large.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// Its upper left corner in the plane, in metres.
    pub from: Spot,
    /// Pixels a metre.
    pub scale: f64,
    /// Pixels across and down.
    pub size: (u32, u32),
}

impl Window {
    /// A window of so many pixels that shows all between two corners of the plane, in its middle.
    #[must_use]
    pub fn around(min: Spot, max: Spot, size: (u32, u32)) -> Window {
        let (wide, high) = ((max[0] - min[0]).max(1e-6), (max[1] - min[1]).max(1e-6));
        let (w, h) = (f64::from(size.0.max(1)), f64::from(size.1.max(1)));
        let scale = (w / wide).min(h / high);
        let part = |from: f64, long: f64, pixels: f64| from - (pixels / scale - long) / 2.0;
        Window {
            from: [part(min[0], wide, w), part(min[1], high, h)],
            scale,
            size,
        }
    }
    /// Where a place of the plane is shown, in pixels.
    #[must_use]
    pub fn shows(&self, place: Spot) -> Spot {
        [
            (place[0] - self.from[0]) * self.scale,
            (place[1] - self.from[1]) * self.scale,
        ]
    }
    /// What place of the plane is shown at a pixel.
    #[must_use]
    pub fn place(&self, pixel: Spot) -> Spot {
        [
            pixel[0] / self.scale + self.from[0],
            pixel[1] / self.scale + self.from[1],
        ]
    }
}

/// The plane of a picture seen square on: RGBA, row by row; where the picture shows nothing, `ground`.
///
/// Each pixel is led back through the plane and the lens and read between the four pixels about it.
#[must_use]
pub fn flatten(picture: &Picture, plane: &Plane, window: &Window, ground: [u8; 3]) -> Vec<u8> {
    let (wide, high) = (window.size.0 as usize, window.size.1 as usize);
    let mut out = vec![0; 4 * wide * high];
    if wide == 0 || high == 0 || picture.width < 2 || picture.height < 2 {
        return out;
    }
    let sampler = Sampler::new(picture, plane, window, ground);
    let hands = std::thread::available_parallelism()
        .map_or(1, usize::from)
        .min(8);
    let rows = high.div_ceil(4 * hands).max(1);
    // Every hand takes the next strip that is free, so that none waits for a slow one.
    let strips = std::sync::Mutex::new(out.chunks_mut(4 * wide * rows).enumerate());
    std::thread::scope(|scope| {
        for _ in 0..hands {
            scope.spawn(|| {
                let mut places = vec![Place::default(); wide];
                loop {
                    let next = strips.lock().ok().and_then(|mut strips| strips.next());
                    let Some((strip, bytes)) = next else { return };
                    for (row, line) in bytes.chunks_mut(4 * wide).enumerate() {
                        sampler.row(strip * rows + row, &mut places, line);
                    }
                }
            });
        }
    });
    out
}

/// What a row needs: the way from a pixel of the window to one of the picture, as nine numbers and a bend.
struct Sampler<'a> {
    picture: &'a Picture,
    rows: [[f64; 3]; 3],
    middle: [f32; 2],
    /// The bend over the square of the lens's unit.
    bend: f32,
    scale: f32,
    ground: [u8; 4],
}

impl Sampler<'_> {
    fn new<'a>(
        picture: &'a Picture,
        plane: &Plane,
        window: &Window,
        [r, g, b]: [u8; 3],
    ) -> Sampler<'a> {
        let back = plane.there.back().rows();
        let step = 1.0 / window.scale;
        // The middle of a pixel, then to metres.
        let at = |axis: usize| window.from[axis] + step / 2.0;
        let rows = back.map(|[x, y, one]| [x * step, y * step, x * at(0) + y * at(1) + one]);
        let lens = plane.lens;
        Sampler {
            picture,
            rows,
            middle: lens.middle.map(|part| part as f32),
            bend: (lens.bend / (lens.unit * lens.unit)) as f32,
            scale: picture.scale() as f32,
            ground: [r, g, b, 255],
        }
    }

    /// Where each pixel of a row lies in the picture; less than nothing behind the plane.
    fn places(&self, y: usize, places: &mut [Place]) {
        let start = self
            .rows
            .map(|[_, down, one]| (down * y as f64 + one) as f32);
        let step = self.rows.map(|[across, ..]| across as f32);
        let [mx, my] = self.middle;
        let scale = self.scale * 256.0;
        for (x, place) in places.iter_mut().enumerate() {
            // By way of i32, which goes four at a time.
            let x = x as i32 as f32;
            let ahead = start[2] + step[2] * x;
            let share = 1.0 / ahead;
            let u = (start[0] + step[0] * x) * share - mx;
            let v = (start[1] + step[1] * x) * share - my;
            let bent = 1.0 + self.bend * (u * u + v * v);
            let shown = if ahead > 0.0 { -128.0 } else { -1e9 };
            place.x = whole((u * bent + mx) * scale + shown);
            place.y = whole((v * bent + my) * scale + shown);
        }
    }

    fn row(&self, y: usize, places: &mut [Place], line: &mut [u8]) {
        self.places(y, places);
        let side = |pixels: u32| (pixels - 1) * 256;
        let (right, foot) = (side(self.picture.width), side(self.picture.height));
        let rgb = &self.picture.rgb;
        let stride = 3 * self.picture.width as usize;
        for (place, out) in places.iter().zip(line.as_chunks_mut::<4>().0) {
            // Less than nothing is more than any place as a number without a sign.
            let (x, y) = (place.x as u32, place.y as u32);
            if x >= right || y >= foot {
                *out = self.ground;
                continue;
            }
            let at = (y >> 8) as usize * stride + 3 * (x >> 8) as usize;
            let pair = |at: usize| rgb.get(at..at + 6);
            let (Some(above), Some(below)) = (pair(at), pair(at + stride)) else {
                *out = self.ground;
                continue;
            };
            let (fx, fy) = (x & 255, y & 255);
            let shares = [
                (256 - fx) * (256 - fy),
                fx * (256 - fy),
                (256 - fx) * fy,
                fx * fy,
            ];
            let part = |n: usize| {
                let four = [above[n], above[n + 3], below[n], below[n + 3]];
                let sum: u32 = four
                    .iter()
                    .zip(shares)
                    .map(|(part, share)| u32::from(*part) * share)
                    .sum();
                (sum >> 16) as u8
            };
            *out = [part(0), part(1), part(2), 255];
        }
    }
}

/// A number as the nearest whole one, -4 for what is less or none, 2²¹ for what is more; without a branch, unlike `as`.
#[allow(clippy::manual_clamp)] // It would leave a number that is none as it is.
fn whole(number: f32) -> i32 {
    // Here a step of the last bit is one.
    const BASE: f32 = 12_582_912.0;
    let near = number.max(-4.0).min(2_097_152.0);
    (near + BASE).to_bits() as i32 - BASE.to_bits() as i32
}

/// In 256ths of a pixel.
#[derive(Clone, Copy, Default)]
struct Place {
    x: i32,
    y: i32,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{Bent, Lens, PlaneView, Reference, Shape};

    /// A wall of squares of 100 mm seen askew through a bent lens, in grey; laid flat it is squares again.
    #[test]
    fn squares_seen_askew_are_squares_again() {
        let (width, height) = (640u32, 480u32);
        let lens = Lens {
            bend: -0.05,
            ..Lens::straight(f64::from(width), f64::from(height))
        };
        let corners = [[120.0, 90.0], [520.0, 60.0], [560.0, 430.0], [90.0, 400.0]];
        let reference = Reference {
            corners: corners.map(|corner| lens.seen(corner)),
            shape: Shape::rectangle([0.8, 0.6], [0.0; 2]),
        };
        let bent = Bent { lens, spread: 0.0 };
        let view = PlaneView::new(&reference, &[], bent, 1.0).unwrap();
        let plane = view.plane_of().unwrap();
        let dark = |[x, y]: Spot| ((x / 0.1).floor() + (y / 0.1).floor()).rem_euclid(2.0) == 0.0;
        let mut rgb = Vec::new();
        for y in 0..height {
            for x in 0..width {
                let place = plane.of([f64::from(x) + 0.5, f64::from(y) + 0.5]);
                rgb.extend([place.map_or(128, |place| if dark(place) { 20 } else { 230 }); 3]);
            }
        }
        let picture = Picture {
            width,
            height,
            rgb,
            original: (width, height),
        };
        let window = Window::around([0.0, 0.0], [0.8, 0.6], (400, 300));
        assert_eq!(window.shows([0.4, 0.3]), [200.0, 150.0]);
        let flat = flatten(&picture, &plane, &window, [1, 2, 3]);
        for y in 0..6 {
            for x in 0..8 {
                let place = [f64::from(x) * 0.1 + 0.05, f64::from(y) * 0.1 + 0.05];
                let [u, v] = window.shows(place);
                let at = 4 * (v as usize * 400 + u as usize);
                let expected = if dark(place) { 20 } else { 230 };
                assert_eq!(flat[at], expected, "{place:?}");
            }
        }
        assert_eq!(
            [-9.0, 0.4, 7.6, f32::NAN, 1e30].map(whole),
            [-4, 0, 8, -4, 1 << 21]
        );
        let beyond = Window::around([50.0, 50.0], [60.0, 60.0], (8, 8));
        let nothing = flatten(&picture, &plane, &beyond, [1, 2, 3]);
        assert_eq!(nothing[..4], [1, 2, 3, 255]);
    }
}
