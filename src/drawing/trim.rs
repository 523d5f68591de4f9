//! Trim: the plan with its base in numbered pieces, pieces by hand one under the other, casing seen from the room.

use super::plan::{PlanTag, plan};
use super::{Align, Dimension, Edge, Fit, Key, Mark, Pen, Role, Scene, Stroke};
use crate::geometry::Point;
use crate::measure::{Length, Units};
use crate::site::{self, Room, off_wall};
use crate::trades::trim::{Ask, Cut, End, Figure, Frame, Of, Opening, Part, Piece, Stop};

/// What can be tapped on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TrimTag {
    /// Something of the room's plan.
    Plan(PlanTag),
    /// A piece by hand, counted from 0.
    Piece(usize),
    /// The width of a frame.
    FrameWidth(usize),
    /// Its height.
    FrameHeight(usize),
}

/// How thick a piece is drawn, that a mitre can be seen: a part of what is shown.
fn drawn_thick(across: Length) -> Length {
    across.divided(45).max(Length::in_64(0, 32))
}

/// How far an end is drawn from its corner at the back and in front, where a piece is drawn `thick`.
fn drawn_end(end: &End, thickness: Length, thick: Length) -> (Length, Length) {
    let scale = thick.metres() / thickness.metres().max(1e-9);
    let shown = |length: Length| Length::from_metres(length.metres() * scale).unwrap_or_default();
    let front = -shown(end.more);
    let back = match end.cut {
        // The back is cut away along the profile: it ends at the face of the other piece.
        Cut::Coped => {
            let (sine, _) = (end.saw + end.saw).sin_cos();
            shown(thickness)
                .max(Length::ZERO)
                .min(Length::from_metres(thick.metres() / sine.max(0.2)).unwrap_or_default())
        }
        _ => Length::ZERO,
    };
    (back, front)
}

/// The four corners of a piece as `(along, out)`: back left, back right, front right, front left.
fn outline(piece: &Piece, from: Length, thickness: Length, thick: Length) -> [(Length, Length); 4] {
    let to = from + piece.back;
    let (left_back, left_front) = drawn_end(&piece.ends[0], thickness, thick);
    let (right_back, right_front) = drawn_end(&piece.ends[1], thickness, thick);
    [
        (from + left_back, Length::ZERO),
        (to - right_back, Length::ZERO),
        (to - right_front, thick),
        (from + left_front, thick),
    ]
}

fn number(at: Point, piece: &Piece, room: Length) -> Mark {
    Mark::Text {
        at,
        text: piece.number.to_string(),
        role: Role::Ink,
        align: Align::Middle,
        bold: true,
        fit: Fit::Led(room),
    }
}

fn filled(points: Vec<Point>, fill: Role) -> Mark {
    Mark::Path {
        points,
        closed: true,
        pen: Some(Pen::solid(Role::Ink, Stroke::Thin)),
        fill: Some(fill),
    }
}

/// The plan of a room with its base; without a figure the plan alone.
#[must_use]
pub fn base_on_plan(
    room: &Room,
    ask: &Ask,
    figure: Option<&Figure>,
    units: Units,
) -> Scene<TrimTag> {
    let mut scene = plan(room, units).map_tags(TrimTag::Plan);
    let shape = site::sketch(room);
    let Some((least, most)) = shape.corners.bounds() else {
        return scene;
    };
    let thick = drawn_thick((most.x - least.x).max(most.y - least.y));
    let mut marks = Vec::new();
    for (wall, one) in ask.walls.iter().flatten().enumerate() {
        for gap in one.gaps.iter().filter(|gap| gap.stop == Stop::Cased) {
            let (left, right) = (gap.from - ask.reveal, gap.to + ask.reveal);
            for (from, to) in [(left - ask.casing, left), (right, right + ask.casing)] {
                let (from, to) = (from.max(Length::ZERO), to.min(one.length));
                let at = |along, out| off_wall(&shape, wall, along, out);
                let points = [
                    (from, Length::ZERO),
                    (to, Length::ZERO),
                    (to, thick),
                    (from, thick),
                ];
                let points: Option<Vec<Point>> = points
                    .into_iter()
                    .map(|(along, out)| at(along, out))
                    .collect();
                if to > from
                    && let Some(points) = points
                {
                    marks.push(filled(points, Role::Rule));
                }
            }
        }
    }
    let Some(figure) = figure else {
        scene.marks.extend(marks);
        return scene;
    };
    let mut cased = !marks.is_empty();
    for piece in &figure.pieces {
        let Of::Wall(wall, from, to) = piece.of else {
            continue;
        };
        let at = |along, out| off_wall(&shape, wall, along, out);
        let corners: Option<Vec<Point>> = outline(piece, from, ask.thickness, thick)
            .into_iter()
            .map(|(along, out)| at(along, out))
            .collect();
        if let Some(points) = corners {
            marks.push(filled(points, Role::ChalkWash));
        }
        // Beside the wall's letter, not on it.
        let long = shape.walls.get(wall).map_or(to, |(length, _)| *length);
        let middle = (from + to).half();
        let beside = (middle - long.half()).abs() < thick * 3;
        let middle = if beside {
            from + (to - from).divided(4)
        } else {
            middle
        };
        // A short one is led to its number, which would else meet that of the next wall.
        let (out, room) = if to - from < thick * 9 {
            (thick.half(), thick)
        } else {
            (thick * 3, to - from)
        };
        if let Some(place) = at(middle, out) {
            marks.push(number(place, piece, room));
        }
    }
    scene.marks.extend(marks);
    scene.says = format!("Base in {} pieces: {}", figure.pieces.len(), scene.says);
    let thin = Pen::solid(Role::Ink, Stroke::Thin);
    let fill = |role, says: &str| Key {
        fill: Some(role),
        pen: thin,
        says: says.to_owned(),
    };
    cased &= ask.casing.is_positive();
    scene.key = vec![fill(Role::ChalkWash, "base, drawn thicker than it is")];
    if cased {
        scene.key.push(fill(Role::Rule, "casing"));
    }
    scene
}

/// Pieces by hand, seen from above with the wall at the top, one under the other.
#[must_use]
pub fn base_by_hand(ask: &Ask, figure: Option<&Figure>, units: Units) -> Scene<TrimTag> {
    let mut scene = Scene::empty("Pieces of base");
    let longest = ask.pieces.iter().map(|piece| piece.length).max();
    let longest = longest.unwrap_or(Length::feet(8));
    let (thick, pitch) = (longest.divided(24), longest.divided(3));
    for (n, listed) in ask.pieces.iter().enumerate() {
        let down = pitch * n as i64;
        let at = |along: Length, out: Length| Point::new(along, down + out);
        let first = figure.and_then(|figure| {
            let of = |piece: &&Piece| piece.of == Of::Hand(n);
            figure.pieces.iter().find(of)
        });
        if let Some(piece) = first {
            let many: Vec<&Piece> = figure
                .iter()
                .flat_map(|figure| &figure.pieces)
                .filter(|piece| piece.of == Of::Hand(n))
                .collect();
            // Those of the first of its count, one after the other where it is joined.
            let mut from = Length::ZERO;
            for part in &many {
                if from + part.back > listed.length + Length::nm(10) {
                    break;
                }
                let corners = outline(part, from, ask.thickness, thick);
                let points = corners.into_iter().map(|(along, out)| at(along, out));
                scene.marks.push(filled(points.collect(), Role::ChalkWash));
                from += part.back;
            }
            let last = many.last().map_or(piece.number, |piece| piece.number);
            let text = if last == piece.number {
                piece.number.to_string()
            } else {
                format!("{}–{last}", piece.number)
            };
            scene.marks.push(Mark::Text {
                at: at(listed.length.half(), thick.half()),
                text,
                role: Role::Ink,
                align: Align::Middle,
                bold: true,
                fit: Fit::Always,
            });
        }
        let ends = (
            at(Length::ZERO, Length::ZERO),
            at(listed.length, Length::ZERO),
        );
        let tag = Some(TrimTag::Piece(n));
        scene.marks.push(Mark::line(
            ends.0,
            ends.1,
            Pen::solid(Role::Ink, Stroke::Medium),
        ));
        scene.dimensions.push(Dimension::of(
            ends,
            Edge::Left(1),
            listed.length,
            tag,
            units,
        ));
    }
    if let Some(figure) = figure {
        scene.says = format!("{} pieces of base", figure.pieces.len());
    }
    scene
}

/// Most frames that are drawn; the list has all.
const MOST_FRAMES: usize = 4;

/// Casing as it is seen from the room, frame beside frame.
#[must_use]
pub fn casing_sketch(ask: &Ask, figure: Option<&Figure>, units: Units) -> Scene<TrimTag> {
    let mut scene = Scene::empty("Casing");
    let (mut left, room) = (Length::ZERO, Length::inches(30));
    for (n, frame) in ask.frames.iter().take(MOST_FRAMES).enumerate() {
        let numbers: Vec<&Piece> = figure
            .iter()
            .flat_map(|figure| &figure.pieces)
            .filter(|piece| matches!(piece.of, Of::Frame(of, _) if of == n))
            .collect();
        one_frame(&mut scene, ask, (n, frame), left, &numbers, units);
        left += frame.width + (ask.width + ask.reveal) * 2 + room;
    }
    if let Some(figure) = figure {
        scene.says = format!("{} pieces of casing", figure.pieces.len());
    }
    scene
}

fn one_frame(
    scene: &mut Scene<TrimTag>,
    ask: &Ask,
    (n, frame): (usize, &Frame),
    left: Length,
    pieces: &[&Piece],
    units: Units,
) {
    let (r, w) = (ask.reveal, ask.width);
    let none = Length::ZERO;
    let four = frame.four && frame.opening == Opening::Window;
    let foot = if four { r + w } else { none };
    // The opening's head at 0, its floor or sill below.
    let at = |x: Length, y: Length| Point::new(left + w + r + x, y);
    let mitred = ask.head == crate::trades::trim::Head::Mitred;
    let (out, inner) = (r + w, r);
    let (wide, high) = (frame.width, frame.height);
    let base = high + if four { r } else { none };
    let top_out = if mitred { -out } else { -inner };
    let low_out = match (four, mitred) {
        (true, true) => base + w,
        (true, false) | (false, _) => base,
    };
    let leg = |outer: Length, edge: Length| {
        vec![
            at(outer, top_out),
            at(edge, -inner),
            at(edge, base),
            at(outer, low_out),
        ]
    };
    let head = |y_out: Length, y_in: Length| {
        let inset = if mitred { inner } else { out };
        vec![
            at(-out, y_out),
            at(wide + out, y_out),
            at(wide + inset, y_in),
            at(-inset, y_in),
        ]
    };
    let mut drawn = vec![
        (Part::Left, leg(-out, -inner)),
        (Part::Head, head(-out, -inner)),
        (Part::Right, leg(wide + out, wide + inner)),
    ];
    if four {
        drawn.push((Part::Foot, head(base + w, base)));
    }
    for (part, points) in drawn {
        scene.marks.push(filled(points, Role::ChalkWash));
        let piece = pieces
            .iter()
            .find(|piece| matches!(piece.of, Of::Frame(_, of) if of == part));
        if let Some(piece) = piece {
            let off = (w.half() + r, high.half());
            let place = match part {
                Part::Left => at(-off.0, off.1),
                Part::Right => at(wide + off.0, off.1),
                Part::Head => at(wide.half(), -off.0),
                Part::Foot => at(wide.half(), base + w.half()),
            };
            scene.marks.push(number(place, piece, w));
        }
    }
    scene.marks.push(Mark::rectangle(
        at(none, none),
        at(wide, high),
        Some(Pen::solid(Role::Ink, Stroke::Thin)),
        Some(Role::Paper),
    ));
    if frame.opening == Opening::Door {
        let ends = (at(-out - w, high), at(wide + out + w, high));
        scene.marks.push(Mark::line(
            ends.0,
            ends.1,
            Pen::solid(Role::Ink, Stroke::Heavy),
        ));
    }
    let width = Some(TrimTag::FrameWidth(n));
    let height = Some(TrimTag::FrameHeight(n));
    // Inside the opening: its own size; outside: what is cut.
    let middle = high.divided(3);
    scene.dimensions.push(Dimension::of(
        (at(none, middle), at(wide, middle)),
        Edge::Left(0),
        wide,
        width,
        units,
    ));
    let across = wide.divided(3);
    scene.dimensions.push(Dimension::of(
        (at(across, high), at(across, none)),
        Edge::Right(0),
        high,
        height,
        units,
    ));
    let long = |part: Part| {
        let of = |piece: &&&Piece| matches!(piece.of, Of::Frame(_, of) if of == part);
        pieces.iter().find(of).map(|piece| piece.long())
    };
    if let Some(length) = long(Part::Head) {
        let ends = (at(-out, -out), at(wide + out, -out));
        scene
            .dimensions
            .push(Dimension::of(ends, Edge::Left(1), length, None, units));
    }
    if let Some(length) = long(Part::Left) {
        let ends = (at(-out, high + foot), at(-out, top_out));
        scene
            .dimensions
            .push(Dimension::of(ends, Edge::Left(1), length, None, units));
    }
}
