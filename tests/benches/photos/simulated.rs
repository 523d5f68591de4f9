//! Walls before a camera of which everything is known, clicked by an unsteady hand.

use chrono::DateTime;
use storyrod::geometry::{
    Bent, Estimate, Known, Lens, PlaneView, Reference, Shape, Spot, distance,
};
use storyrod::measure::Length;
use storyrod::photo::{Anchor, Flat, Object, Photo, Taped, What};

/// Chance that is the same in every run (xorshift64*), and normal by Box and Muller.
pub struct Chance(pub u64);

impl Chance {
    /// Between 0 and 1.
    pub fn share(&mut self) -> f64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        (self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 11) as f64 / (1u64 << 53) as f64
    }
    /// Between two numbers.
    pub fn between(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * self.share()
    }
    /// Normal, one standard deviation being 1.
    pub fn normal(&mut self) -> f64 {
        let (a, b) = (self.share().max(1e-300), self.share());
        (-2.0 * a.ln()).sqrt() * (std::f64::consts::TAU * b).cos()
    }
}

/// A camera before a wall.
struct Camera {
    turn: [[f64; 3]; 3],
    shift: [f64; 3],
    focal: f64,
    lens: Lens,
}

impl Camera {
    fn seen(&self, place: Spot) -> Option<Spot> {
        let at: [f64; 3] = std::array::from_fn(|n| {
            self.turn[n][0] * place[0] + self.turn[n][1] * place[1] + self.shift[n]
        });
        let middle = self.lens.middle;
        let seen = [
            middle[0] + self.focal * at[0] / at[2],
            middle[1] + self.focal * at[1] / at[2],
        ];
        let seen = self.lens.seen(seen);
        let [w, h] = middle.map(|half| 2.0 * half);
        let inside = (0.0..w).contains(&seen[0]) && (0.0..h).contains(&seen[1]);
        (at[2] > 0.3 && inside).then_some(seen)
    }
}

/// About x, then y, then z, in degrees.
fn turned(by: [f64; 3]) -> [[f64; 3]; 3] {
    let [(a, b), (c, d), (e, f)] = by.map(|degrees: f64| degrees.to_radians().sin_cos());
    [
        [d * f, a * c * f - b * e, b * c * f + a * e],
        [d * e, a * c * e + b * f, b * c * e - a * f],
        [-c, a * d, b * d],
    ]
}

/// How one view came out.
pub struct Outcome {
    /// The true length, what was said of it, and one standard deviation of that.
    pub truth: f64,
    pub value: f64,
    pub spread: f64,
}

/// What is known of the four corners.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Form {
    Rectangle,
    /// Four sides and a right angle, half a degree off (one standard deviation).
    Cornered,
    /// Four sides and a diagonal.
    Braced,
}

/// One wall: four corners of known shape and two places somewhere in the picture, every click off by 1.5 pixels of a
/// working copy of 2,048, the measured sides off within its spread, the lens bent within `lens`; with `tapes` lengths
/// taped besides. `None` where the wall came to stand out of the picture.
pub fn simulated(chance: &mut Chance, form: Form, lens: f64, tapes: usize) -> Option<Outcome> {
    let click = 1.5;
    let middle = [1024.0, 768.0];
    let flat = Lens::straight(2.0 * middle[0], 2.0 * middle[1]);
    let size = [chance.between(0.3, 1.3), chance.between(0.3, 2.2)];
    let turn = turned([
        chance.between(-35.0, 35.0),
        chance.between(-50.0, 50.0),
        chance.between(-15.0, 15.0),
    ]);
    let away = chance.between(1.5, 5.0);
    let about = [size[0] / 2.0, size[1] / 2.0];
    let shift: [f64; 3] = std::array::from_fn(|n| {
        [0.0, 0.0, away][n] - turn[n][0] * about[0] - turn[n][1] * about[1]
    });
    let camera = Camera {
        turn,
        shift,
        focal: chance.between(1_400.0, 1_800.0),
        lens: Lens {
            bend: lens * chance.normal(),
            ..flat
        },
    };
    let places = |chance: &mut Chance| -> [Spot; 2] {
        let mut one = || [0, 1].map(|n: usize| chance.between(-0.6, size[n] + 0.6));
        [one(), one()]
    };
    let [w, h] = size;
    let mut truly = [[0.0, 0.0], [w, 0.0], [w, h], [0.0, h]];
    if form != Form::Rectangle {
        let mut aside = |by: f64| chance.between(-by, by);
        truly[2] = [w * (1.0 + aside(0.25)), h * (1.0 + aside(0.25))];
        truly[3][0] = match form {
            Form::Cornered => h * (0.5 * chance.normal()).to_radians().tan(),
            _ => w * aside(0.2),
        };
    }
    let corners = truly;
    let seen_corners = corners.map(|corner| camera.seen(corner));
    let clicked = |chance: &mut Chance, place: Option<Spot>| {
        place.map(|[x, y]| [x + click * chance.normal(), y + click * chance.normal()])
    };
    let mut corners = [[0.0; 2]; 4];
    for (corner, seen) in corners.iter_mut().zip(seen_corners) {
        *corner = clicked(chance, seen)?;
    }
    let spread = 0.000_8;
    let mut known = Vec::new();
    for _ in 0..tapes {
        let [a, b] = places(chance);
        known.push(Known {
            ends: [
                clicked(chance, camera.seen(a))?,
                clicked(chance, camera.seen(b))?,
            ],
            length: distance(a, b) + spread * chance.normal(),
            spread,
        });
    }
    let ends = places(chance);
    let truth = distance(ends[0], ends[1]);
    let reference = Reference {
        corners,
        shape: measured(chance, form, &truly, spread),
    };
    // What is shorter than a hand's breadth, or nearly end on, nobody measures.
    let short = truth < 0.1 || size.iter().any(|side| *side < 0.1);
    let bent = Bent {
        lens: flat,
        spread: lens,
    };
    let [a, b] = [
        clicked(chance, camera.seen(ends[0]))?,
        clicked(chance, camera.seen(ends[1]))?,
    ];
    let view = PlaneView::new(&reference, &known, bent, click).ok()?;
    let found = view.distance(a, b)?;
    (!short).then_some(Outcome {
        truth,
        value: found.value,
        spread: found.spread,
    })
}

/// What a tape says of four corners.
fn measured(chance: &mut Chance, form: Form, corners: &[Spot; 4], spread: f64) -> Shape {
    let mut read = |from: usize, to: usize| Estimate {
        value: distance(corners[from], corners[to]) + spread * chance.normal(),
        spread,
    };
    let sides = [read(0, 1), read(1, 2), read(2, 3), read(3, 0)];
    let [a, b, c, d] = sides;
    match form {
        Form::Rectangle => Shape::Rectangle([a, d]),
        Form::Braced => Shape::Braced([a, b, c, d, read(0, 2)]),
        Form::Cornered => {
            let square = Estimate {
                value: std::f64::consts::FRAC_PI_2,
                spread: 0.5_f64.to_radians(),
            };
            Shape::Cornered([a, b, c, d, square])
        }
    }
}

/// The share of so many views in which the truth lies within two standard deviations of what was said, and the median
/// of those two standard deviations over the length.
pub fn covered(views: usize, seed: u64, form: Form, lens: f64, tapes: usize) -> (f64, f64) {
    let mut chance = Chance(seed);
    let (mut done, mut within, mut stated) = (0, 0, Vec::new());
    while done < views {
        let Some(view) = simulated(&mut chance, form, lens, tapes) else {
            continue;
        };
        done += 1;
        within += usize::from((view.value - view.truth).abs() <= 2.0 * view.spread);
        stated.push(2.0 * view.spread / view.truth);
    }
    stated.sort_by(f64::total_cmp);
    (within as f64 / views as f64, stated[views / 2])
}

/// A sheet on a wall seen by a camera, a place whose distances are known, a hidden one elsewhere and, where it is asked for,
/// a level line: how far off the hidden one is said to be, and within what.
fn placed(chance: &mut Chance, level: bool, tapes: usize) -> Option<(f64, f64)> {
    let middle = [1024.0, 768.0];
    let flat = Lens::straight(2.0 * middle[0], 2.0 * middle[1]);
    let turn = turned([
        chance.between(-25.0, 25.0),
        chance.between(-40.0, 40.0),
        chance.between(-10.0, 10.0),
    ]);
    let away = chance.between(1.5, 3.0);
    let camera = Camera {
        turn,
        shift: [0.0, 0.0, away],
        focal: chance.between(1_400.0, 1_800.0),
        lens: flat,
    };
    let clicked = |chance: &mut Chance, place: Spot| {
        let [x, y] = camera.seen(place)?;
        Some([x + 1.5 * chance.normal(), y + 1.5 * chance.normal()])
    };
    let mut anywhere = || [chance.between(-1.2, 1.2), chance.between(-0.9, 0.9)];
    let (anchor, hidden, line) = (anywhere(), anywhere(), anywhere());
    let ends: Vec<[Spot; 2]> = (0..tapes).map(|_| [anywhere(), anywhere()]).collect();
    // A letter sheet, hung by eye.
    let (w, h) = (0.2159, 0.2794);
    let hung = (0.5 * chance.normal()).to_radians();
    let (sine, cosine) = hung.sin_cos();
    let on_sheet = [[0.0, 0.0], [w, 0.0], [w, h], [0.0, h]];
    let mut corners = [[0.0; 2]; 4];
    for (corner, [x, y]) in corners.iter_mut().zip(on_sheet) {
        *corner = clicked(chance, [x * cosine - y * sine, x * sine + y * cosine])?;
    }
    let mut photo = Photo::new(String::new(), (2048, 1536), DateTime::UNIX_EPOCH.into());
    let mut flat = Flat::new(corners, Object::Letter);
    let taped = |metres: f64| Length::from_metres(metres).map(Taped::read);
    (flat.width, flat.height) = (taped(w), taped(h));
    photo.flat = Some(flat);
    photo.anchor = Some(Anchor {
        spot: clicked(chance, anchor)?,
        from_left: Some(Length::ZERO),
        up: Some(Length::ZERO),
    });
    if level {
        let other = [line[0] + chance.between(0.2, 1.0), line[1]];
        let ends = vec![clicked(chance, line)?, clicked(chance, other)?];
        photo.add_mark(What::Level, ends);
    }
    for [a, b] in ends {
        let taped = taped(distance(a, b))?;
        let ends = vec![clicked(chance, a)?, clicked(chance, b)?];
        photo.add_mark(What::Dimension(Some(taped)), ends);
    }
    let spot = clicked(chance, hidden)?;
    photo.add_mark(What::Note, vec![spot]);
    let view = photo.view().ok()?;
    let (place, give) = photo.on_wall(&view, spot)?;
    let truth = [hidden[0] - anchor[0], anchor[1] - hidden[1]];
    Some((distance(place, truth), give))
}

/// The share of so many views in which a place on the wall is where it is said to be, within what is said.
pub fn placed_within(views: usize, seed: u64, level: bool, tapes: usize) -> f64 {
    let mut chance = Chance(seed);
    // Of most walls something comes to stand out of the picture.
    let tried = (0..200 * views).filter_map(|_| placed(&mut chance, level, tapes));
    let within: Vec<bool> = tried.take(views).map(|(off, give)| off <= give).collect();
    within.iter().filter(|within| **within).count() as f64 / within.len() as f64
}
