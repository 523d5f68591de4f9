//! Straight edges in a picture, for a fingertip to snap to.

use super::Picture;
use crate::geometry::Spot;

/// How far about a pixel the run of an edge is looked at, in pixels of the working copy.
const AROUND: i32 = 3;
/// Light has to change by so much, of 255 over two pixels.
const STEEP: f64 = 24.0;
/// How much more it has to change across an edge than along it: 0 alike, 1 only across.
const STRAIGHT: f64 = 0.75;

/// The straight edge nearest to a place of the original, no further than `reach` pixels of the working copy; `None`
/// where there is none, as at a corner or in a pattern.
///
/// The steepest pixel near the place, where light changes one way only (structure tensor); then between pixels, by the
/// parabola through the steepness on either side.
#[must_use]
pub fn edge_near(picture: &Picture, place: Spot, reach: f64) -> Option<Spot> {
    let scale = picture.scale();
    let at = place.map(|part| part * scale - 0.5);
    let grey = |x: i32, y: i32| -> f64 {
        let x = x.clamp(0, picture.width as i32 - 1) as usize;
        let y = y.clamp(0, picture.height as i32 - 1) as usize;
        let from = 3 * (y * picture.width as usize + x);
        let [r, g, b] = [0, 1, 2].map(|n| f64::from(picture.rgb[from + n]));
        0.299 * r + 0.587 * g + 0.114 * b
    };
    let slope = |x: i32, y: i32| {
        let part = |near: f64, far: f64| (far - near) / 2.0;
        [
            part(grey(x - 1, y), grey(x + 1, y)),
            part(grey(x, y - 1), grey(x, y + 1)),
        ]
    };
    let (mx, my, r) = (
        at[0].round() as i32,
        at[1].round() as i32,
        reach.ceil() as i32,
    );
    let mut best: Option<(f64, i32, i32)> = None;
    for y in my - r..=my + r {
        for x in mx - r..=mx + r {
            let away = (f64::from(x) - at[0]).hypot(f64::from(y) - at[1]);
            if away > reach {
                continue;
            }
            let [gx, gy] = slope(x, y);
            let steep = gx.hypot(gy);
            // What lies nearer counts more.
            let weight = steep * (1.0 - 0.5 * away / reach.max(1.0));
            if steep >= STEEP && best.is_none_or(|(most, ..)| weight > most) {
                best = Some((weight, x, y));
            }
        }
    }
    let (_, x, y) = best?;
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for v in y - AROUND..=y + AROUND {
        for u in x - AROUND..=x + AROUND {
            let [gx, gy] = slope(u, v);
            xx += gx * gx;
            xy += gx * gy;
            yy += gy * gy;
        }
    }
    let one_way = ((xx - yy) / 2.0).hypot(xy) / f64::midpoint(xx, yy).max(1e-9);
    if one_way < STRAIGHT {
        return None;
    }
    let (sine, cosine) = (0.5 * (2.0 * xy).atan2(xx - yy)).sin_cos();
    // Steepness across the edge, a pixel to either side, read at the nearest pixel.
    let steep = |by: f64| {
        let [gx, gy] = slope(
            (f64::from(x) + by * cosine).round() as i32,
            (f64::from(y) + by * sine).round() as i32,
        );
        (gx * cosine + gy * sine).abs()
    };
    let (less, most, more) = (steep(-1.0), steep(0.0), steep(1.0));
    let curve = less - 2.0 * most + more;
    let by = if curve < 0.0 {
        (0.5 * (less - more) / curve).clamp(-0.5, 0.5)
    } else {
        0.0
    };
    let found = [f64::from(x) + by * cosine, f64::from(y) + by * sine];
    // The nearest place of that edge, so that a finger keeps its place along it.
    let along = (at[0] - found[0]) * -sine + (at[1] - found[1]) * cosine;
    let along = along.clamp(-f64::from(AROUND), f64::from(AROUND));
    let near = [found[0] - along * sine, found[1] + along * cosine];
    Some(near.map(|part| (part + 0.5) / scale))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::distance;

    /// Dark left of a line through the middle that leans by a number of degrees.
    fn picture(lean: f64) -> Picture {
        let (sine, cosine) = lean.to_radians().sin_cos();
        let mut rgb = Vec::new();
        for y in 0..80u32 {
            for x in 0..100u32 {
                let (x, y) = (f64::from(x) + 0.5 - 50.0, f64::from(y) + 0.5 - 40.0);
                let off = x * cosine + y * sine;
                let light = 40.0 + 160.0 * (off + 0.5).clamp(0.0, 1.0);
                rgb.extend([light as u8; 3]);
            }
        }
        Picture {
            width: 100,
            height: 80,
            rgb,
            original: (200, 160),
        }
    }

    #[test]
    fn a_finger_beside_an_edge_snaps_to_it() {
        for lean in [0.0, 12.0, 30.0, 45.0, 90.0] {
            let picture = picture(lean);
            let (sine, cosine) = f64::to_radians(lean).sin_cos();
            let beside = [100.0 + 9.0 * cosine, 80.0 + 9.0 * sine];
            let found = edge_near(&picture, beside, 8.0).unwrap();
            let off = (found[0] - 100.0) * cosine + (found[1] - 80.0) * sine;
            assert!(off.abs() < 1.6, "{lean}: {found:?} is {off} off");
            assert!(distance(found, beside) < 12.0);
        }
    }

    #[test]
    fn nothing_snaps_where_there_is_no_edge() {
        assert_eq!(edge_near(&picture(0.0), [20.0, 80.0], 8.0), None);
        let mut noise = picture(0.0);
        let mut n = 1u32;
        for part in &mut noise.rgb {
            n = n.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            *part = (n >> 24) as u8;
        }
        let hits = (0..20).filter(|n| {
            let place = [30.0 + 7.0 * f64::from(*n), 60.0];
            edge_near(&noise, place, 6.0).is_some()
        });
        assert!(hits.count() <= 4, "noise is no edge");
    }
}
