//! Where the plates of marks on a picture stand: on the middle of their own line, or beside it and led to it; off the ends
//! of every mark, off the lines of the others, off each other.

use super::face;
use super::photo::{At, Ends, Note};

/// The size of what stands on a plate.
pub(super) const FIGURE: f32 = 18.0;
/// From what a plate belongs to to its rim; the nearest first.
const OFF: [f32; 6] = [13.0, 30.0, 52.0, 80.0, 115.0, 160.0];
/// Farther off than this a line leads to it.
const LED: f32 = 20.0;
/// Ways that are tried about a place.
const WAYS: u8 = 16;
/// About a point as much is kept free of plates, either way.
const POINT: f32 = 9.0;

/// Left, top, width, height.
type Box4 = [f32; 4];

/// Where a plate stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Plate {
    pub at: Box4,
    /// From what it belongs to to its rim, where it stands off.
    pub leader: Option<(At, At)>,
}

impl Plate {
    /// The same on rows that begin so far down.
    pub fn moved(self, up: f32) -> Plate {
        let off = |(x, y): At| (x, y - up);
        let [x, y, w, h] = self.at;
        Plate {
            at: [x, y - up, w, h],
            leader: self.leader.map(|(from, to)| (off(from), off(to))),
        }
    }
}

/// Where the plate of each note stands; nothing where it says nothing.
pub(super) fn plates(notes: &[Note], size: (f32, f32), heft: f32) -> Vec<Option<Plate>> {
    let mut placed: Vec<Option<Plate>> = Vec::with_capacity(notes.len());
    for (number, note) in notes.iter().enumerate() {
        let taken: Vec<Box4> = placed.iter().flatten().map(|plate| plate.at).collect();
        let plate = wishes(note, size, heft).into_iter().min_by(|a, b| {
            let worse = |wish: &Wish| wish.far + trouble(wish, notes, number, &taken, heft);
            worse(a).total_cmp(&worse(b))
        });
        placed.push(plate.map(|wish| wish.plate));
    }
    placed
}

/// A place that a plate may take, and how far it is from the best.
struct Wish {
    plate: Plate,
    far: f32,
    /// On its own line, which then is no trouble.
    on_line: bool,
}

/// All places for a plate, the best first.
fn wishes(note: &Note, (w, h): (f32, f32), heft: f32) -> Vec<Wish> {
    if note.label.is_empty() || note.points.is_empty() {
        return Vec::new();
    }
    let wide = face::width(&note.label, FIGURE * heft, true) + 22.0 * heft;
    let high = 38.0 * heft;
    let about = |(x, y): At| [x - wide / 2.0, y - high / 2.0, wide, high];
    // What is larger than the picture begins at its edge; all else stays on it.
    let inside = |at: Box4| {
        let fits = |from: f32, long: f32, side: f32| {
            from >= 2.0 && from + long <= side - 2.0 || long > side - 4.0
        };
        fits(at[0], wide, w) && fits(at[1], high, h)
    };
    let mut all = Vec::new();
    let (from, on_line) = belongs(note, (wide, high), heft);
    for (rank, at) in on_line.into_iter().enumerate() {
        let plate = Plate {
            at: about(at),
            leader: None,
        };
        let far = 0.5 * rank as f32;
        all.push(Wish {
            plate,
            far,
            on_line: true,
        });
    }
    for (rank, from) in from.into_iter().enumerate() {
        for (step, off) in OFF.iter().enumerate() {
            for way in 0..WAYS {
                // Upward first, then to the right, to the left, and below.
                let turn = f32::from(way.div_ceil(2)) * if way % 2 == 0 { -1.0 } else { 1.0 };
                let angle = turn * std::f32::consts::TAU / f32::from(WAYS);
                let (ux, uy) = (angle.sin(), -angle.cos());
                let half = (wide / 2.0 / ux.abs().max(1e-3)).min(high / 2.0 / uy.abs().max(1e-3));
                let out = half + off * heft;
                let at = about((from.0 + ux * out, from.1 + uy * out));
                let rim = (from.0 + ux * off * heft, from.1 + uy * off * heft);
                let leader = (*off > LED).then_some((from, rim));
                let far = 2.0
                    + 0.12 * off
                    + 0.15 * f32::from(way)
                    + 3.0 * rank as f32
                    + if step > 0 { 6.0 } else { 0.0 };
                all.push(Wish {
                    plate: Plate { at, leader },
                    far,
                    on_line: false,
                });
            }
        }
    }
    let near = all.first().map(|wish| wish.plate.at);
    all.retain(|wish| inside(wish.plate.at));
    if let Some(at) = near.filter(|_| all.is_empty()) {
        let clamped =
            |from: f32, long: f32, side: f32| from.clamp(2.0, (side - long - 2.0).max(2.0));
        let at = [clamped(at[0], wide, w), clamped(at[1], high, h), wide, high];
        all.push(Wish {
            plate: Plate { at, leader: None },
            far: 0.0,
            on_line: false,
        });
    }
    all
}

/// The places that a plate belongs to, the best first; and those right on its line where that is long enough to be seen
/// on either side of it.
fn belongs(note: &Note, (wide, high): (f32, f32), heft: f32) -> (Vec<At>, Vec<At>) {
    match note.points[..] {
        [only] => (vec![only], Vec::new()),
        // An arrow's words are where it comes from.
        [first, _] if note.ends == Ends::Arrow => (vec![first], Vec::new()),
        [a, b] => {
            let part = |share: f32| (a.0 + share * (b.0 - a.0), a.1 + share * (b.1 - a.1));
            let (dx, dy) = ((b.0 - a.0).abs(), (b.1 - a.1).abs());
            let long = dx.hypot(dy).max(1e-3);
            // How much of the line a plate on it hides.
            let hides = (wide / (dx / long).max(1e-3)).min(high / (dy / long).max(1e-3));
            let shares = [0.5, 0.35, 0.65];
            let ends = 24.0 * heft;
            let seen = |share: &f32| share.min(1.0 - share) * long - hides / 2.0 >= ends;
            let on_line = shares.iter().filter(|share| seen(share));
            (
                shares.map(part).to_vec(),
                on_line.map(|share| part(*share)).collect(),
            )
        }
        // An angle's is by its corner.
        [_, corner, _] if !note.closed => (vec![corner], Vec::new()),
        ref points => {
            let n = points.len() as f32;
            let sum = |part: fn(&At) -> f32| points.iter().map(part).sum::<f32>() / n;
            let middle = (sum(|p| p.0), sum(|p| p.1));
            (vec![middle], vec![middle])
        }
    }
}

/// What a plate there would hide or touch.
fn trouble(wish: &Wish, notes: &[Note], own: usize, taken: &[Box4], heft: f32) -> f32 {
    let at = wish.plate.at;
    let mut sum = 0.0;
    let gap = grown(at, 3.0 * heft);
    sum += 1000.0 * taken.iter().filter(|other| clash(&gap, other)).count() as f32;
    if let Some(leader) = wish.plate.leader {
        sum += 60.0 * taken.iter().filter(|other| crosses(other, leader)).count() as f32;
    }
    let point = grown(at, POINT * heft);
    for (number, note) in notes.iter().enumerate() {
        // A line by hand has no ends that matter.
        let drawn = note.points.len() <= 40;
        let ends = note.points.iter().filter(|_| drawn);
        let hidden = ends.filter(|(x, y)| {
            *x > point[0] && *x < point[0] + point[2] && *y > point[1] && *y < point[1] + point[3]
        });
        sum += 40.0 * hidden.count() as f32;
        let lines = note.points.windows(2).map(|pair| (pair[0], pair[1]));
        let last = note
            .closed
            .then(|| Some((*note.points.last()?, *note.points.first()?)));
        let lines = lines.chain(last.flatten()).take(200);
        let crossed = lines.filter(|line| crosses(&at, *line)).count().min(3) as f32;
        sum += match (number == own, wish.on_line) {
            (true, true) => 0.0,
            (true, false) => 12.0 * crossed,
            (false, _) => 14.0 * crossed,
        };
    }
    sum
}

fn grown([x, y, w, h]: Box4, by: f32) -> Box4 {
    [x - by, y - by, w + 2.0 * by, h + 2.0 * by]
}

fn clash(a: &Box4, b: &Box4) -> bool {
    a[0] < b[0] + b[2] && b[0] < a[0] + a[2] && a[1] < b[1] + b[3] && b[1] < a[1] + a[3]
}

/// Whether a line goes through a box: what is left of it between each pair of sides.
fn crosses(at: &Box4, (a, b): (At, At)) -> bool {
    let (mut from, mut to) = (0.0_f32, 1.0_f32);
    for (start, end, low, high) in [
        (a.0, b.0, at[0], at[0] + at[2]),
        (a.1, b.1, at[1], at[1] + at[3]),
    ] {
        let run = end - start;
        if run.abs() < 1e-6 {
            if start <= low || start >= high {
                return false;
            }
            continue;
        }
        let (first, second) = ((low - start) / run, (high - start) / run);
        from = from.max(first.min(second));
        to = to.min(first.max(second));
    }
    from < to
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Role;

    fn note(points: &[At], label: &str) -> Note {
        Note {
            points: points.to_vec(),
            closed: false,
            ends: Ends::Ticks,
            dashed: false,
            role: Role::Chalk,
            label: label.into(),
            picked: false,
            held: None,
        }
    }

    /// Whether a plate hides a place, with the tick that is drawn there.
    fn hides(plate: &Plate, (x, y): At) -> bool {
        let [left, top, w, h] = grown(plate.at, 6.0);
        x > left && x < left + w && y > top && y < top + h
    }

    #[track_caller]
    fn check(notes: &[Note], size: (f32, f32)) -> Vec<Plate> {
        let placed = plates(notes, size, 1.0);
        let found: Vec<Plate> = placed.iter().flatten().copied().collect();
        for (n, plate) in found.iter().enumerate() {
            let [x, y, w, h] = plate.at;
            assert!(
                x >= 0.0 && y >= 0.0 && x + w <= size.0 && y + h <= size.1,
                "{plate:?}"
            );
            for other in &found[n + 1..] {
                assert!(!clash(&plate.at, &other.at), "{plate:?} {other:?}");
            }
            for note in notes {
                for end in &note.points {
                    assert!(
                        !hides(plate, *end),
                        "{plate:?} hides {end:?} of {}",
                        note.label
                    );
                }
            }
        }
        found
    }

    #[test]
    fn a_long_line_bears_its_plate_and_a_short_one_has_it_beside_its_ends() {
        let long = check(
            &[note(&[(20.0, 150.0), (380.0, 150.0)], "7′ 4″")],
            (400.0, 300.0),
        );
        assert!(crosses(&long[0].at, ((20.0, 150.0), (380.0, 150.0))));
        assert_eq!(long[0].leader, None);
        let short = check(
            &[note(&[(180.0, 150.0), (230.0, 150.0)], "7′ 4″ ±1″")],
            (400.0, 300.0),
        );
        assert!(!crosses(&short[0].at, ((180.0, 150.0), (230.0, 150.0))));
    }

    /// Dimensions from one corner, an angle there and a hidden pipe through: the ends of all stay in sight.
    #[test]
    fn in_a_crowd_no_plate_hides_an_end_and_what_stands_off_is_led() {
        let mut crowd = vec![
            note(&[(150.0, 150.0), (230.0, 150.0)], "2′ 10″ ±1/2″"),
            note(&[(150.0, 150.0), (150.0, 220.0)], "1′ 8″"),
            note(&[(230.0, 150.0), (230.0, 220.0)], "1′ 8 1/16″"),
            note(&[(150.0, 220.0), (230.0, 220.0)], "2′ 10 1/4″"),
            note(
                &[(230.0, 150.0), (150.0, 150.0), (150.0, 220.0)],
                "90.0° ±0.5°",
            ),
            note(&[(190.0, 185.0)], "6 Pipe, 1 1/2″ in"),
            note(&[(200.0, 195.0)], "7 Valve body"),
        ];
        crowd[4].ends = Ends::Plain;
        let found = check(&crowd, (412.0, 401.0));
        assert_eq!(found.len(), 7);
        let led: Vec<&Plate> = found
            .iter()
            .filter(|plate| plate.leader.is_some())
            .collect();
        assert!(!led.is_empty());
        for plate in led {
            let (_, (x, y)) = plate.leader.unwrap();
            let [left, top, w, h] = grown(plate.at, 1.0);
            assert!(
                x >= left && x <= left + w && y >= top && y <= top + h,
                "{plate:?}"
            );
        }
    }

    #[test]
    fn a_plate_wider_than_the_picture_is_placed_all_the_same() {
        let wide = note(&[(50.0, 50.0)], "the leak behind the old tub, still damp");
        assert!(plates(&[wide], (120.0, 100.0), 1.0)[0].is_some());
    }
}
