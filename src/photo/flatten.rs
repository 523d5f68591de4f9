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
        for (x, place) in places.iter_mut().enumerate() {
            let x = x as f32;
            let ahead = start[2] + step[2] * x;
            let share = 1.0 / ahead;
            let u = (start[0] + step[0] * x) * share - mx;
            let v = (start[1] + step[1] * x) * share - my;
            let bent = 1.0 + self.bend * (u * u + v * v);
            let shown = if ahead > 0.0 { 0.0 } else { -1e9 };
            // In 256ths of a pixel; a number that is none becomes 0, far ones the largest there is.
            place.x = (((u * bent + mx) * self.scale - 0.5 + shown) * 256.0) as i32;
            place.y = (((v * bent + my) * self.scale - 0.5 + shown) * 256.0) as i32;
        }
    }

    fn row(&self, y: usize, places: &mut [Place], line: &mut [u8]) {
        self.places(y, places);
        let (wide, high) = (self.picture.width as i32, self.picture.height as i32);
        let (right, foot) = ((wide - 1) * 256, (high - 1) * 256);
        let rgb = &self.picture.rgb;
        let stride = 3 * wide as usize;
        for (place, out) in places.iter().zip(line.as_chunks_mut::<4>().0) {
            let inside = (0..right).contains(&place.x) && (0..foot).contains(&place.y);
            if !inside {
                *out = self.ground;
                continue;
            }
            let at = (place.y >> 8) as usize * stride + 3 * (place.x >> 8) as usize;
            let pair = |at: usize| -> Option<[u64; 2]> {
                let six = rgb.get(at..at + 6)?;
                Some([lanes(six[0], six[1], six[2]), lanes(six[3], six[4], six[5])])
            };
            let (Some(above), Some(below)) = (pair(at), pair(at + stride)) else {
                *out = self.ground;
                continue;
            };
            let (fx, fy) = ((place.x & 255) as u64, (place.y & 255) as u64);
            let between = |a: u64, b: u64, share: u64| {
                ((a * (256 - share) + b * share) >> 8) & 0x00FF_00FF_00FF
            };
            let found = between(
                between(above[0], above[1], fx),
                between(below[0], below[1], fx),
                fy,
            );
            *out = [found as u8, (found >> 16) as u8, (found >> 32) as u8, 255];
        }
    }
}

/// In 256ths of a pixel.
#[derive(Clone, Copy, Default)]
struct Place {
    x: i32,
    y: i32,
}

/// Three parts of a colour side by side, each with room to be multiplied by 256.
fn lanes(r: u8, g: u8, b: u8) -> u64 {
    u64::from(r) | u64::from(g) << 16 | u64::from(b) << 32
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{Bent, Lens, PlaneView, Reference};

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
            size: [0.8, 0.6],
            spread: [0.0; 2],
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
        let beyond = Window::around([50.0, 50.0], [60.0, 60.0], (8, 8));
        let nothing = flatten(&picture, &plane, &beyond, [1, 2, 3]);
        assert_eq!(nothing[..4], [1, 2, 3, 255]);
    }
}
