//! Hatching: what a colour means, said by lines as well, for whoever does not see the colour.

use tiny_skia::{Path, PathBuilder};

use super::Role;

/// How far apart its lines stand, across and down, in logical pixels.
const APART: f32 = 7.0;

/// The colour of the lines over a fill that says "look here"; none over any other.
pub(super) fn over(fill: Option<Role>) -> Option<Role> {
    (fill == Some(Role::RedWash)).then_some(Role::Red)
}

/// Lines rising to the right, all on one grid of the sheet, as far as they lie inside the rings.
pub(super) fn lines(rings: &[Vec<(f32, f32)>]) -> Option<Path> {
    let mut path = PathBuilder::new();
    for ring in rings {
        // Along a line x + y stays the same; where it meets the outline tells how it lies inside.
        let mut met: Vec<(i32, f32)> = Vec::new();
        for (at, &(ax, ay)) in ring.iter().enumerate() {
            let (bx, by) = ring[(at + 1) % ring.len()];
            let (a, b) = ((ax + ay) / APART, (bx + by) / APART);
            for line in (a.min(b).ceil() as i32)..(a.max(b).ceil() as i32) {
                let share = (line as f32 - a) / (b - a);
                met.push((line, ax + (bx - ax) * share));
            }
        }
        met.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
        for pair in met.chunks_exact(2) {
            let across = pair[0].0 as f32 * APART;
            path.move_to(pair[0].1, across - pair[0].1);
            path.line_to(pair[1].1, across - pair[1].1);
        }
    }
    path.finish()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// How many lines, and where they begin and end.
    fn drawn(rings: &[Vec<(f32, f32)>]) -> Vec<(f32, f32)> {
        let path = lines(rings);
        path.iter()
            .flat_map(Path::points)
            .map(|point| (point.x, point.y))
            .collect()
    }

    #[test]
    fn lines_stay_inside_what_they_hatch() {
        let square = vec![(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)];
        let all = drawn(std::slice::from_ref(&square));
        // 7, 14, 21, 28 and 35 of 0 to 40, and 0 in the corner itself.
        assert_eq!(all.len(), 2 * 6);
        assert!(
            all.iter()
                .all(|(x, y)| { (-0.01..=20.01).contains(x) && (-0.01..=20.01).contains(y) })
        );
        // An L: what is cut out of it stays clear.
        let ell = vec![
            (0.0, 0.0),
            (40.0, 0.0),
            (40.0, 10.0),
            (10.0, 10.0),
            (10.0, 40.0),
            (0.0, 40.0),
        ];
        let all = drawn(&[ell]);
        for pair in all.chunks_exact(2) {
            let (x, y) = ((pair[0].0 + pair[1].0) / 2.0, (pair[0].1 + pair[1].1) / 2.0);
            assert!(x <= 10.01 || y <= 10.01, "{x}, {y}");
        }
        assert!(drawn(&[Vec::new()]).is_empty());
    }

    #[test]
    fn only_what_asks_to_be_looked_at_is_hatched() {
        assert_eq!(over(Some(Role::RedWash)), Some(Role::Red));
        assert_eq!(over(Some(Role::ChalkWash)), None);
        assert_eq!(over(None), None);
    }
}
