//! Saw lines on stud centres, and the wood that carries every edge.

use super::place::Place;
use super::{Field, Problem, Rect, Strip, StripKind};
use crate::handbook::gypsum;
use crate::measure::Length;

/// How far past the damage the upper and lower saw lines run; common practice, no published source.
pub const MARGIN: Length = Length::inches(1);
/// Thickness and width of a dressed 2x4.
pub(super) const TWO_BY_FOUR: (Length, Length) = (Length::in_64(1, 32), Length::in_64(3, 32));
/// A level edge is carried as it is across a bay this wide; common practice, no published source.
const BAY_WITHOUT_BLOCKING: Length = Length::in_64(14, 32);

/// Where to cut and what carries the piece.
pub(super) struct Cut {
    pub opening: Rect,
    pub damage: Rect,
    pub used: Vec<Length>,
    pub crossed: Vec<Length>,
    pub bearing: (Length, Length),
    pub backing: Vec<Strip>,
    /// Where screws at the left and the right edge stand.
    pub edges: (Length, Length),
    pub holes: usize,
}

/// The opening over the hole and over every other hole that it reaches.
pub(super) fn cut(place: &Place, gap: Length) -> Result<Cut, Problem> {
    let mut damage = place.hole;
    let mut opening = opening(place, &damage)?;
    let mut left: Vec<Rect> = place.others.clone();
    while let Some(at) = left.iter().position(|other| other.overlaps(&opening)) {
        let both = damage.with(&left.remove(at));
        if place.is_sound(&both) {
            damage = both;
            opening = self::opening(place, &damage)?;
        }
    }
    let holes = 1 + place
        .others
        .iter()
        .filter(|other| damage.covers(other))
        .count();
    Ok(carry(place, gap, opening, damage, holes))
}

/// The saw lines: the nearest stud centres outside the damage, [`MARGIN`] above and below it, short of any obstacle.
fn opening(place: &Place, damage: &Rect) -> Result<Rect, Problem> {
    let beside = |o: &&Rect| o.left < damage.right && damage.left < o.right;
    let floor = place.from_floor.then_some(Length::ZERO);
    let below = place.obstacles.iter().filter(beside).map(|o| o.top);
    let below = below.filter(|top| *top <= damage.bottom).chain(floor).max();
    let above = place.obstacles.iter().filter(beside).map(|o| o.bottom);
    let above = above.filter(|low| *low >= damage.top).chain(place.height);
    let bottom = (damage.bottom - MARGIN).max(below.unwrap_or(damage.bottom - MARGIN));
    let top = (damage.top + MARGIN).min(above.min().unwrap_or(damage.top + MARGIN));

    let level = |o: &&Rect| o.bottom < top && bottom < o.top;
    let stops = place.obstacles.iter().filter(level).map(|o| o.right);
    let stops = stops.filter(|at| *at <= damage.left);
    let studs = place.studs.iter().copied();
    let left = studs.clone().filter(|at| *at <= damage.left);
    let left = left.chain(stops).chain([Length::ZERO]).max();
    let stops = place.obstacles.iter().filter(level).map(|o| o.left);
    let stops = stops.filter(|at| *at >= damage.right);
    let right = studs.filter(|at| *at >= damage.right);
    let right = right.chain(stops).chain(place.length).min();
    Ok(Rect {
        left: left.unwrap_or(Length::ZERO),
        right: right.ok_or(Problem::Missing {
            field: Field::WallLength,
        })?,
        bottom,
        top,
    })
}

/// Wood behind each edge of the opening, with cleats and blocking where there is none.
fn carry(place: &Place, gap: Length, opening: Rect, damage: Rect, holes: usize) -> Cut {
    let need = gap + gypsum::SCREW_EDGE.value;
    let bearing = bearing(place, &opening);
    let mut backing = Vec::new();
    let mut edge = |bearing: Length, cleat_left: Length| {
        if bearing >= need {
            return need;
        }
        let at = Rect {
            left: cleat_left.max(opening.left),
            right: (cleat_left + TWO_BY_FOUR.0).min(opening.right),
            ..opening
        };
        backing.push(strip(StripKind::Cleat, at, true));
        // In a bay hardly wider than its studs the middle of the cleat is too near the other edge of the piece.
        need.max(bearing + TWO_BY_FOUR.0.half())
            .min(opening.width() - need)
    };
    let from_left = edge(bearing.0, opening.left + bearing.0);
    let from_right = edge(bearing.1, opening.right - bearing.1 - TWO_BY_FOUR.0);
    let inside = |at: &&Length| opening.left < **at && **at < opening.right;
    let crossed: Vec<Length> = place.studs.iter().filter(inside).copied().collect();
    let mut used: Vec<Length> = Vec::new();
    for (edge, bearing) in [(opening.left, bearing.0), (opening.right, bearing.1)] {
        let carries = |at: &&Length| {
            let (left, right) = place.wood(**at);
            bearing >= need && left <= edge && edge <= right
        };
        used.extend(place.studs.iter().filter(carries));
    }
    used.sort_unstable();
    used.dedup();
    backing.extend(level_edges(
        place,
        &opening,
        &crossed,
        (from_left, from_right),
    ));
    Cut {
        opening,
        damage,
        used,
        crossed,
        bearing,
        backing,
        edges: (opening.left + from_left, opening.right - from_right),
        holes,
    }
}

/// From the saw line to the far face of the stud there, at the left and at the right; doubled studs count as one.
fn bearing(place: &Place, opening: &Rect) -> (Length, Length) {
    let (mut left, mut right) = (opening.left, opening.right);
    for centre in &place.studs {
        let (near, far) = place.wood(*centre);
        if near <= left && far > left {
            left = far;
        }
    }
    for centre in place.studs.iter().rev() {
        let (near, far) = place.wood(*centre);
        if far >= right && near < right {
            right = near;
        }
    }
    (
        (left - opening.left).min(opening.width()),
        (opening.right - right).min(opening.width()),
    )
}

/// Blocking behind the upper and the lower edge where a bay is wide, a cleat where the edge stops at an opening.
fn level_edges(
    place: &Place,
    opening: &Rect,
    crossed: &[Length],
    inset: (Length, Length),
) -> Vec<Strip> {
    let half = place.face.half();
    let mut from = opening.left + inset.0.max(half);
    let mut bays = Vec::new();
    for centre in crossed {
        let (near, far) = place.wood(*centre);
        bays.push((from, near));
        from = from.max(far);
    }
    bays.push((from, opening.right - inset.1.max(half)));
    let mut strips = Vec::new();
    for (y, inwards) in [(opening.bottom, 1), (opening.top, -1)] {
        let near = Length::inches(1);
        let on_a_plate =
            (place.from_floor && y <= near) || place.height.is_some_and(|end| end - y <= near);
        let stopped = (place.obstacles.iter()).any(|o| {
            (o.top == y || o.bottom == y) && o.left < opening.right && opening.left < o.right
        });
        for (left, right) in bays.iter().filter(|(left, right)| right > left) {
            let (kind, low, high) = if stopped {
                let inner = y + TWO_BY_FOUR.0 * inwards;
                (StripKind::Cleat, y.min(inner), y.max(inner))
            } else {
                let half = TWO_BY_FOUR.1.half();
                let low = if place.from_floor {
                    (y - half).max(Length::ZERO)
                } else {
                    y - half
                };
                let high = place.height.map_or(y + half, |end| end.min(y + half));
                (StripKind::Blocking, low, high)
            };
            if on_a_plate || !(stopped || *right - *left > BAY_WITHOUT_BLOCKING) {
                continue;
            }
            let at = Rect {
                left: *left,
                right: *right,
                bottom: low,
                top: high,
            };
            strips.push(strip(kind, at, false));
        }
    }
    strips
}

fn strip(kind: StripKind, at: Rect, upright: bool) -> Strip {
    Strip {
        kind,
        at,
        length: if upright { at.height() } else { at.width() },
        upright,
        lumber: TWO_BY_FOUR,
    }
}
