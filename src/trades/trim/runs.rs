//! Base along walls: where it runs, how its ends meet, and the pieces of each stretch.

use super::ask::{Ask, Corner, Gap, Inside, Stop, Wall};
use super::ends::{Cut, End};
use crate::handbook::trim as book;
use crate::measure::{Angle, Length};

/// Left or right, as seen facing the trim.
pub use crate::site::Side;

/// A piece of trim.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Its number, in the order of walking, from 1.
    pub number: u32,
    /// What it is of.
    pub of: Of,
    /// Its left and right end, as seen facing it; of a leg its lower and upper one.
    pub ends: [End; 2],
    /// Along the wall; of casing along its inner edge.
    pub back: Length,
}

/// What a piece is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of {
    /// A wall of the room, and where it begins and ends there, from the left corner.
    Wall(usize, Length, Length),
    /// A piece by hand, counted from 0.
    Hand(usize),
    /// A frame, counted from 0, and what of it.
    Frame(usize, Part),
}

/// A part of a casing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The left leg or side.
    Left,
    /// Over the opening.
    Head,
    /// The right leg or side.
    Right,
    /// Under a window.
    Foot,
}

impl Piece {
    /// In front; of casing along its outer edge.
    #[must_use]
    pub fn face(&self) -> Length {
        self.back + self.ends[0].more + self.ends[1].more
    }
    /// From its farthest point at one end to its farthest at the other: what it takes of a stick.
    #[must_use]
    pub fn long(&self) -> Length {
        let over = |end: &End| end.more.max(Length::ZERO);
        self.back + over(&self.ends[0]) + over(&self.ends[1])
    }
    /// From its nearest point at one end to its nearest at the other; less than nothing where its cuts cross.
    #[must_use]
    pub fn short(&self) -> Length {
        let under = |end: &End| end.more.min(Length::ZERO);
        self.back + under(&self.ends[0]) + under(&self.ends[1])
    }
}

/// Where base is joined on along a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Scarf {
    /// The wall; nothing of a piece by hand.
    pub wall: Option<usize>,
    /// The middle of the joint, from the wall's left corner.
    pub at: Length,
    /// It lies over a stud.
    pub on_stud: bool,
}

/// A door or an opening with less room beside it than its casing is wide.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tight {
    /// The wall.
    pub wall: usize,
    /// At its left or its right end.
    pub side: Side,
    /// From the corner to the reveal.
    pub room: Length,
}

/// All of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Runs {
    pub pieces: Vec<Piece>,
    pub scarfs: Vec<Scarf>,
    pub tight: Vec<Tight>,
    /// Walls without base, or what of them.
    pub open: Length,
}

/// A stretch of base, from its left end to its right one.
#[derive(Clone, Copy)]
struct Stretch {
    wall: usize,
    from: Length,
    to: Length,
    left: End,
    right: End,
}

/// A strip narrower than this is left to the caulk.
const NOTHING: Length = Length::in_64(0, 4);

/// The stretches of a wall that gaps leave, and the gaps at its ends that are tight.
fn left_over(ask: &Ask, at: usize, wall: &Wall) -> (Vec<(Length, Length)>, Vec<Tight>) {
    let beside = ask.reveal + ask.casing;
    let mut tight = Vec::new();
    let mut gaps: Vec<(Length, Length)> = Vec::new();
    for gap in &wall.gaps {
        let Gap { from, to, stop } = *gap;
        if stop == Stop::Cased {
            for (side, room) in [(Side::Left, from), (Side::Right, wall.length - to)] {
                if room < beside {
                    let room = (room - ask.reveal).max(Length::ZERO);
                    tight.push(Tight {
                        wall: at,
                        side,
                        room,
                    });
                }
            }
            gaps.push((from - beside, to + beside));
        } else {
            gaps.push((from, to));
        }
    }
    gaps.sort_unstable();
    let mut stretches = Vec::new();
    let mut begun = Length::ZERO;
    for (from, to) in gaps {
        let from = from.min(wall.length);
        if from - begun >= NOTHING {
            stretches.push((begun, from));
        }
        begun = begun.max(to);
    }
    if wall.length - begun >= NOTHING {
        stretches.push((begun, wall.length));
    }
    (stretches, tight)
}

/// The walls as they are walked the other way round, in a mirror.
fn mirrored(walls: &[Wall]) -> Vec<Wall> {
    let count = walls.len();
    let turned = |now: usize| {
        let (at, before) = (
            (count - now) % count,
            ((count - now) % count + count - 1) % count,
        );
        let wall = &walls[at];
        let mut studs: Vec<Length> = wall.studs.iter().map(|stud| wall.length - *stud).collect();
        studs.reverse();
        Wall {
            length: wall.length,
            turn: walls[before].turn,
            gaps: wall
                .gaps
                .iter()
                .map(|gap| Gap {
                    from: wall.length - gap.to,
                    to: wall.length - gap.from,
                    stop: gap.stop,
                })
                .collect(),
            studs,
        }
    };
    (0..count).map(turned).collect()
}

/// Base round a room: every piece in the order of walking.
pub(super) fn round(ask: &Ask, walls: &[Wall]) -> Runs {
    if !ask.backward {
        return clockwise(ask, walls);
    }
    let count = walls.len();
    let mut runs = clockwise(ask, &mirrored(walls));
    let back = |wall: usize| (count - wall) % count;
    for piece in &mut runs.pieces {
        piece.ends.reverse();
        if let Of::Wall(wall, from, to) = piece.of {
            let wall = back(wall);
            let long = walls[wall].length;
            piece.of = Of::Wall(wall, long - to, long - from);
        }
    }
    for scarf in &mut runs.scarfs {
        if let Some(wall) = scarf.wall {
            let wall = back(wall);
            scarf.wall = Some(wall);
            scarf.at = walls[wall].length - scarf.at;
        }
    }
    for tight in &mut runs.tight {
        tight.wall = back(tight.wall);
        tight.side = tight.side.other();
    }
    runs
}

fn clockwise(ask: &Ask, walls: &[Wall]) -> Runs {
    let mut runs = Runs::default();
    let mut all: Vec<Stretch> = Vec::new();
    for (wall, one) in walls.iter().enumerate() {
        let (stretches, tight) = left_over(ask, wall, one);
        runs.tight.extend(tight);
        let based: Length = stretches.iter().map(|(from, to)| *to - *from).sum();
        runs.open += one.length - based;
        all.extend(stretches.into_iter().map(|(from, to)| Stretch {
            wall,
            from,
            to,
            left: End::SQUARE,
            right: End::SQUARE,
        }));
    }
    let count = all.len();
    if count == 0 {
        return runs;
    }
    let begins_at_corner = |s: &Stretch| s.from == Length::ZERO;
    let ends_at_corner = |s: &Stretch| s.to == walls[s.wall].length;
    // Walking begins beside a door or a fixture; in a room without one at the first wall.
    let first = all.iter().position(|s| !begins_at_corner(s)).unwrap_or(0);
    all.rotate_left(first);
    for at in 0..count {
        let next = (at + 1) % count;
        let here = all[at];
        if !ends_at_corner(&here) {
            continue;
        }
        let turn = walls[here.wall].turn;
        let follows = all[next].wall == (here.wall + 1) % walls.len();
        let joined = follows && begins_at_corner(&all[next]) && (count > 1);
        let closes = next == 0;
        let (right, left) = meet(ask, turn, joined, closes);
        all[at].right = right;
        if joined {
            all[next].left = left;
        }
    }
    // A stretch that begins at a corner where nothing comes before it.
    for at in 0..count {
        let here = all[at];
        let before = all[(at + count - 1) % count];
        let wall_before = (here.wall + walls.len() - 1) % walls.len();
        let joined = before.wall == wall_before && ends_at_corner(&before) && count > 1;
        if begins_at_corner(&here) && !joined {
            all[at].left = alone(ask, walls[wall_before].turn);
        }
    }
    for stretch in all {
        cut(ask, &walls[stretch.wall], stretch, &mut runs);
    }
    runs
}

/// A square end at a corner that has base on one of its walls alone.
fn alone(ask: &Ask, turn: Angle) -> End {
    if turn > Angle::ZERO {
        End::into_corner(ask.thickness, turn)
    } else {
        End::SQUARE
    }
}

/// How two stretches meet at a corner: the right end of the one walked first, the left end of the other.
fn meet(ask: &Ask, turn: Angle, joined: bool, closes: bool) -> (End, End) {
    let t = ask.thickness;
    if !joined {
        return (alone(ask, turn), End::SQUARE);
    }
    let coped = ask.inside == Inside::Coped && turn >= book::COPED_FROM.value;
    match (coped, closes) {
        (false, _) => (End::corner(t, turn), End::corner(t, turn)),
        // The first piece went in square at both ends.
        (true, true) => (End::coped(t, turn), End::into_corner(t, turn)),
        (true, false) => (End::into_corner(t, turn), End::coped(t, turn)),
    }
}

/// The pieces of a stretch, joined on where it is longer than the longest stick.
fn cut(ask: &Ask, wall: &Wall, stretch: Stretch, runs: &mut Runs) {
    let Stretch {
        from,
        to,
        left,
        right,
        ..
    } = stretch;
    let mut piece = |from: Length, to: Length, ends: [End; 2]| {
        let number = u32::try_from(runs.pieces.len() + 1).unwrap_or(u32::MAX);
        // Beside a sharp corner a sliver may give up no more than it is.
        let [mut left, mut right] = ends;
        left.off = left.off.min(to - from);
        right.off = right.off.min(to - from - left.off);
        let (from, to, ends) = (from + left.off, to - right.off, [left, right]);
        runs.pieces.push(Piece {
            number,
            of: Of::Wall(stretch.wall, from, to),
            ends,
            back: (to - from).max(Length::ZERO),
        });
    };
    let (joints, on_stud) = joints(ask, &wall.studs, (from, to), [left, right]);
    let mut begun = (from, left);
    for (n, at) in joints.iter().enumerate() {
        piece(begun.0, *at, [begun.1, End::scarf(ask.thickness, false)]);
        begun = (*at, End::scarf(ask.thickness, true));
        let half = begun.1.more.half();
        runs.scarfs.push(Scarf {
            wall: Some(stretch.wall),
            at: *at - half,
            on_stud: on_stud[n],
        });
    }
    piece(begun.0, to, [begun.1, right]);
}

/// Where a stretch is joined on, at the wall, from left to right, and whether each joint lies over a stud.
///
/// Each piece reaches as far as a stick does, back to the last stud; what is left is no shorter than from stud to stud.
fn joints(
    ask: &Ask,
    studs: &[Length],
    (from, to): (Length, Length),
    ends: [End; 2],
) -> (Vec<Length>, Vec<bool>) {
    let over = |end: End| end.more.max(Length::ZERO);
    let scarf = End::scarf(ask.thickness, true);
    let reach = ask.stick - book::TRIMMED.value;
    let (mut joints, mut on_stud) = (Vec::new(), Vec::new());
    let (mut begun, mut lead) = (from, over(ends[0]));
    while to - begun + lead + over(ends[1]) > ask.stick && joints.len() < super::ask::MOST_PIECES {
        let least = book::LEAST_JOINED.value;
        let far = (begun + reach - lead).min(to - least);
        // The middle of the slant lies over the stud.
        let centres = studs.iter().map(|stud| *stud + scarf.more.half());
        let stud = centres
            .filter(|at| *at <= far && *at >= begun + least)
            .max();
        let at = stud.unwrap_or(far);
        if at <= begun {
            break;
        }
        joints.push(at);
        on_stud.push(stud.is_some());
        (begun, lead) = (at, over(scarf));
    }
    (joints, on_stud)
}

/// Pieces of base by hand.
pub(super) fn by_hand(ask: &Ask) -> Runs {
    let mut runs = Runs::default();
    let t = ask.thickness;
    for (n, one) in ask.pieces.iter().enumerate() {
        let ends = one.ends.map(|end| match (end, ask.inside) {
            (Corner::Square, _) => End::SQUARE,
            (Corner::Inside, Inside::Coped) => End::coped(t, Angle::RIGHT),
            (Corner::Inside, Inside::Mitred) => End::corner(t, Angle::RIGHT),
            (Corner::Outside, _) => End::corner(t, Angle::LEFT),
        });
        for _ in 0..one.count {
            if runs.pieces.len() >= super::ask::MOST_PIECES {
                break;
            }
            let wall = Wall {
                length: one.length,
                turn: Angle::RIGHT,
                gaps: Vec::new(),
                studs: Vec::new(),
            };
            let stretch = Stretch {
                wall: 0,
                from: Length::ZERO,
                to: one.length,
                left: ends[0],
                right: ends[1],
            };
            let (pieces, scarfs) = (runs.pieces.len(), runs.scarfs.len());
            cut(ask, &wall, stretch, &mut runs);
            for piece in &mut runs.pieces[pieces..] {
                piece.of = Of::Hand(n);
            }
            for scarf in &mut runs.scarfs[scarfs..] {
                scarf.wall = None;
            }
        }
    }
    runs
}

impl Piece {
    /// It is joined on at an end.
    #[must_use]
    pub fn is_joined(&self) -> bool {
        let scarf = |end: &End| matches!(end.cut, Cut::ScarfOver | Cut::ScarfUnder);
        self.ends.iter().any(scarf)
    }
}
