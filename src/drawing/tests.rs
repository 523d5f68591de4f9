//! Every sketch on sheets of every size: no figure over another, none off the sheet, every target a fingertip wide.

use super::*;
use crate::geometry::Point;
use crate::measure::{Length, Units};
use crate::site::{self, Opening, OpeningKind, Room, Studs};
use crate::trades::{drain, paint as painting, patch};

mod rooms;
mod survey;
mod trim;

const UNITS: Units = Units::FeetInches { marks: 16 };
/// A phone, a tablet, a small phone held across, with the words as designed; a phone and a tablet with larger ones.
const SHEETS: [(f32, f32, f32); 6] = [
    (412.0, 420.0, 1.0),
    (700.0, 700.0, 1.0),
    (360.0, 300.0, 1.0),
    (411.0, 314.0, 1.0),
    (413.0, 420.0, 1.3),
    (701.0, 700.0, 1.5),
];

fn opening(kind: OpeningKind, wall: usize, sizes: [i64; 4]) -> Opening {
    let [from_left, width, height, sill] = sizes.map(|n| Some(Length::in_64(n, 12)));
    Opening {
        kind,
        wall,
        from_left,
        width,
        height,
        sill,
        hinge: None,
    }
}

/// Six walls, measured, with a door, a window and studs.
fn measured() -> Room {
    let mut room = Room::l_shape("Washroom");
    let lengths = [
        Length::inches(88),
        Length::in_64(50, 20),
        Length::inches(34),
        Length::in_64(12, 32),
        Length::inches(54),
        Length::in_64(62, 52),
    ];
    for (wall, length) in room.walls.iter_mut().zip(lengths) {
        wall.length = Some(length);
        wall.studs = Some(Studs::Spaced {
            first: Length::inches(16),
            spacing: Length::inches(16),
            face: Length::in_64(1, 32),
        });
    }
    room.ceiling = Some(Length::in_64(97, 4));
    room.openings = vec![
        opening(OpeningKind::Door, 4, [12, 30, 80, 0]),
        opening(OpeningKind::Window, 0, [48, 24, 30, 48]),
    ];
    room
}

/// A wall with a door, a window and a niche.
fn three_openings(from_left: [Option<i64>; 3]) -> Room {
    let mut room = measured();
    room.walls[0].length = Some(Length::in_64(143, 36));
    room.openings = vec![
        opening(OpeningKind::Door, 0, [4, 30, 80, 0]),
        opening(OpeningKind::Window, 0, [50, 36, 30, 40]),
        opening(OpeningKind::Niche, 0, [100, 14, 20, 30]),
    ];
    for (opening, left) in room.openings.iter_mut().zip(from_left) {
        if left.is_none() {
            *opening = Opening {
                from_left: None,
                width: None,
                height: None,
                sill: None,
                ..*opening
            };
        }
    }
    room
}

fn patch_ask(place: Option<(i64, i64)>) -> patch::Ask {
    let mut ask = patch::Ask::default();
    ask.hole.from_left = place.map(|(left, _)| Length::in_64(left, 20));
    ask.hole.above_floor = place.map(|(_, up)| Length::in_64(up, 20));
    if place.is_some() {
        ask.studs = measured().walls[0].studs.clone();
        ask.wall.length = Some(Length::inches(100));
        ask.wall.height = Some(Length::inches(96));
    }
    ask
}

/// By how much two boxes lie over each other, the lesser way.
fn over(a: &[f32; 4], b: &[f32; 4]) -> f32 {
    let across = (a[0] + a[2]).min(b[0] + b[2]) - a[0].max(b[0]);
    let down = (a[1] + a[3]).min(b[1] + b[3]) - a[1].max(b[1]);
    across.min(down)
}

/// The box of a line of text.
fn extent(piece: &Piece) -> Option<(String, [f32; 4])> {
    let Piece::Text {
        text,
        at,
        size,
        bold,
        ..
    } = piece
    else {
        return None;
    };
    let ink = face::outline(text, *at, *size, *bold)?.bounds();
    Some((text.clone(), [ink.x(), ink.y(), ink.width(), ink.height()]))
}

/// Whether a box lies on a sheet.
fn lies_on([x, y, w, h]: [f32; 4], canvas: &Canvas) -> bool {
    x >= 0.0 && y >= 0.0 && x + w <= canvas.width && y + h <= canvas.height
}

/// Whether a box lies over some of a line.
fn hides<T>([x, y, w, h]: &[f32; 4], [from, to]: &[Point; 2], sheet: &Sheet<T>) -> bool {
    let (a, b) = (sheet.place.of(*from), sheet.place.of(*to));
    (0u8..=200).map(|n| f32::from(n) / 200.0).any(|share| {
        let (px, py) = (a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share);
        *x < px && px < x + w && *y < py && py < y + h
    })
}

/// Words and figures that leave the sheet, hide a line that has to be seen, or lie over each other.
fn faults_of_text<T>(scene: &Scene<T>, sheet: &Sheet<T>, canvas: &Canvas) -> Vec<String> {
    let mut faults = Vec::new();
    let texts: Vec<_> = sheet.pieces.iter().filter_map(extent).collect();
    for (n, (text, at)) in texts.iter().enumerate() {
        if !lies_on(*at, canvas) {
            faults.push(format!("{text} leaves the sheet"));
        }
        let covered = texts[n + 1..].iter().filter(|(_, t)| over(at, t) > 0.0);
        faults.extend(covered.map(|(other, _)| format!("{text} lies over {other}")));
    }
    for (n, (at, dimension)) in sheet.boxes.iter().zip(&scene.dimensions).enumerate() {
        if !lies_on(*at, canvas) {
            faults.push(format!("figure {n} leaves the sheet"));
        }
        let number =
            |text: &str| matches!(dimension.standing, Standing::Piece(n) if text == n.to_string());
        let others = (texts.iter()).filter(|(text, _)| *text != dimension.text && !number(text));
        let covered = others.filter(|(_, there)| over(at, there) > 0.5);
        faults.extend(covered.map(|(text, _)| format!("figure {n} covers {text}")));
        if sheet.boxes[n + 1..].iter().any(|b| over(at, b) > 0.0) {
            faults.push(format!("figure {n} lies over another"));
        }
        let hidden = scene.bare.iter().filter(|line| hides(at, line, sheet));
        // A piece stands on its own leg.
        let may = usize::from(matches!(dimension.standing, Standing::Piece(_)));
        if hidden.count() > may {
            faults.push(format!("figure {n} hides a line"));
        }
    }
    faults
}

/// Targets that are too small, leave the sheet, or take another's tap.
fn faults_of_taps<T: PartialEq + std::fmt::Debug>(
    scene: &Scene<T>,
    sheet: &Sheet<T>,
    canvas: &Canvas,
) -> Vec<String> {
    let mut faults = Vec::new();
    for spot in &sheet.hot {
        // Only where the next is closer than a fingertip.
        let middle = |s: &HotSpot<T>| (s.x + s.w / 2.0, s.y + s.h / 2.0);
        let here = middle(spot);
        let near = sheet.hot.iter().any(|other| {
            let there = middle(other);
            here != there && (here.0 - there.0).abs() < 48.0 && (here.1 - there.1).abs() < 48.0
        });
        if (spot.w < 48.0 || spot.h < 48.0) && !near {
            faults.push(format!("{:?} is no fingertip wide", spot.tag));
        }
        if !lies_on([spot.x, spot.y, spot.w, spot.h], canvas) {
            faults.push(format!("{:?} leaves the sheet", spot.tag));
        }
    }
    // A tap in the middle of a figure is the figure's: the topmost spot there.
    for (dimension, [x, y, w, h]) in scene.dimensions.iter().zip(&sheet.boxes) {
        let (x, y) = (x + w / 2.0, y + h / 2.0);
        let here = |s: &&HotSpot<T>| s.x <= x && x <= s.x + s.w && s.y <= y && y <= s.y + s.h;
        let hit = sheet.hot.iter().rev().find(here).map(|s| &s.tag);
        // A line across that has no room for a fingertip is in the list.
        let listed = dimension.edge == Edge::Across
            && sheet
                .hot
                .iter()
                .all(|spot| Some(&spot.tag) != dimension.tag.as_ref());
        if dimension.tag.is_some() && hit != dimension.tag.as_ref() && !listed {
            faults.push(format!("a tap on {} hits {hit:?}", dimension.says));
        }
    }
    faults
}

/// What is wrong with a scene on every sheet; written to the folder `STORYROD_LOOK`, where it is given, to look at.
fn faults<T: Clone + PartialEq + std::fmt::Debug>(name: &str, scene: &Scene<T>) -> Vec<String> {
    let mut faults = Vec::new();
    for (width, height, text) in SHEETS {
        let canvas = Canvas {
            width,
            height,
            text,
            margin: 12.0,
        };
        let sheet = lay_out(scene, &canvas, None);
        if let Ok(folder) = std::env::var("STORYROD_LOOK") {
            let picture = png(&paint(&sheet, &Palette::of(Theme::Day), 2.0)).unwrap();
            std::fs::write(format!("{folder}/{name}-{width}.png"), picture).unwrap();
        }
        let found = faults_of_text(scene, &sheet, &canvas).into_iter();
        let found = found.chain(faults_of_taps(scene, &sheet, &canvas));
        faults.extend(found.map(|what| format!("{name} on {width} by {height}: {what}")));
    }
    faults
}

#[track_caller]
fn clean<T: Clone + PartialEq + std::fmt::Debug>(name: &str, scene: &Scene<T>) {
    let found = faults(name, scene);
    assert!(found.is_empty(), "\n{}", found.join("\n"));
}

#[test]
fn a_plan_is_clean_measured_or_not() {
    clean("plan-measured", &plan(&measured(), UNITS));
    clean("plan-bare", &plan(&Room::l_shape("Washroom"), UNITS));
    clean("plan-alcove", &plan(&Room::alcove("Washroom"), UNITS));
    let mut half = Room::l_shape("Washroom");
    half.walls[0].length = Some(Length::inches(88));
    half.walls[1].length = Some(Length::inches(50));
    clean("plan-half", &plan(&half, UNITS));
}

#[test]
fn a_wall_with_three_openings_is_clean_measured_or_not() {
    let all = three_openings([Some(0); 3]);
    clean("wall-measured", &wall(&all, 0, UNITS));
    clean("wall-bare", &wall(&three_openings([None; 3]), 0, UNITS));
    clean("wall-one", &wall(&measured(), 4, UNITS));
}

#[test]
fn a_patch_is_clean_in_its_place_or_not() {
    for (name, ask) in [
        ("patch-placed", patch_ask(Some((33, 30)))),
        ("patch-corner", patch_ask(Some((2, 1)))),
        ("patch-asked", patch_ask(None)),
    ] {
        let figure = patch::figure(&ask).unwrap();
        clean(name, &patch_sketch(&ask, Some(&figure), &[], UNITS));
    }
}

/// Walls of these widths in inches and ceilings of so many feet a side.
fn paint_ask(walls: &[i64], ceilings: &[i64]) -> painting::Ask {
    let wall = |(n, &inches): (usize, &i64)| painting::Surface {
        name: format!("Wall {}", site::Wall::named(n)),
        ..painting::Surface::wall(Length::inches(inches), Length::inches(97))
    };
    let ceiling = |&feet: &i64| painting::Surface {
        name: "Ceiling".into(),
        part: painting::Part::Ceiling,
        ..painting::Surface::wall(Length::feet(feet), Length::feet(feet))
    };
    let walls = walls.iter().enumerate().map(wall);
    painting::Ask {
        surfaces: walls.chain(ceilings.iter().map(ceiling)).collect(),
        ..painting::Ask::default()
    }
}

#[test]
fn what_is_painted_is_clean_however_many_walls() {
    for (name, walls, ceilings) in [
        ("paint-one", &[120][..], &[][..]),
        ("paint-six", &[88, 50, 34, 12, 54, 62], &[6]),
        ("paint-eight", &[30, 24, 36, 24, 30, 60, 96, 60], &[7]),
        (
            "paint-twelve",
            &[96, 12, 12, 12, 60, 4, 96, 60, 12, 30, 12, 96],
            &[4, 8],
        ),
        ("paint-ceiling", &[], &[8]),
    ] {
        let scene = paint_sketch(&paint_ask(walls, ceilings), true, UNITS);
        clean(name, &scene);
    }
}

#[test]
fn a_large_surface_says_its_name_and_area() {
    let scene = paint_sketch(&paint_ask(&[120, 96], &[8]), true, UNITS);
    let canvas = Canvas {
        width: 700.0,
        height: 700.0,
        text: 1.0,
        margin: 12.0,
    };
    let sheet = lay_out(&scene, &canvas, None);
    // Two lines each and the figures of the walls.
    assert_eq!(
        sheet.pieces.iter().filter_map(extent).count(),
        6 + scene.dimensions.len()
    );
}

fn drain_of(ask: &drain::Ask) -> Scene<drain::Field> {
    drain_sketch(ask, &drain::figure(ask).unwrap(), UNITS)
}

#[test]
fn a_drain_is_clean_through_joists_studs_and_nothing() {
    let joists = drain::Ask::default();
    let long = drain::Ask {
        run: Length::feet(14),
        ..joists.clone()
    };
    let hung = drain::Ask {
        start: Some(-Length::inches(3)),
        ..joists.clone()
    };
    let open = drain::Ask {
        through: drain::Through::Open,
        run: Length::feet(9),
        ..joists.clone()
    };
    let studs = drain::Ask {
        size: drain::Size::OneAndHalf,
        start: Some(Length::inches(18)),
        run: Length::feet(5),
        through: drain::Through::Studs {
            first: Length::inches(7),
            spacing: Length::inches(16),
            depth: Length::in_64(3, 32),
            across: None,
            bearing: true,
            doubled: false,
        },
        ..joists.clone()
    };
    for (name, ask) in [
        ("drain-joists", joists),
        ("drain-long", long),
        ("drain-hung", hung),
        ("drain-open", open),
        ("drain-studs", studs),
    ] {
        clean(name, &drain_of(&ask));
    }
}

/// Sticks with as many pieces as said.
fn sticks(pieces: &[&[i64]]) -> Vec<Stick> {
    let each = pieces.iter().enumerate().map(|(n, inches)| {
        let used: i64 = inches.iter().sum();
        Stick {
            name: (n + 1).to_string(),
            length: Length::feet(8),
            kerf: Length::in_64(0, 8),
            pieces: (inches.iter().zip(1..))
                .map(|(inches, number)| (format!("A{number}"), Length::inches(*inches)))
                .collect(),
            rest: Length::inches(96 - used) - Length::in_64(0, 8) * inches.len() as i64,
        }
    });
    each.collect()
}

#[test]
fn sticks_are_clean_however_many() {
    let one: &[&[i64]] = &[&[40, 30, 20]];
    let some: &[&[i64]] = &[&[40, 30, 20], &[14, 14, 14, 14, 14, 14], &[95]];
    let many = vec![&[30, 30, 30][..]; 18];
    for (name, of) in [("bars-one", one), ("bars-some", some), ("bars-many", &many)] {
        let scene = bars_sketch(&sticks(of), UNITS);
        let drawn = of.iter().take(MOST_STICKS);
        let pieces: usize = drawn.map(|stick| stick.len()).sum();
        assert_eq!(scene.hot.len(), pieces);
        clean(name, &scene);
    }
}

#[test]
fn a_planted_overlap_is_found() {
    let word = |text: &str| Mark::Text {
        at: Point::default(),
        text: text.into(),
        role: Role::Ink,
        align: Align::Middle,
        bold: true,
        // Words that may go elsewhere are set apart; these stay.
        fit: Fit::Shrunk(Length::feet(9)),
    };
    let mut scene: Scene<u8> = Scene::empty("a");
    scene.marks = vec![word("One"), word("Two")];
    assert_eq!(faults("planted", &scene).len(), SHEETS.len());
}

#[test]
fn a_door_shows_its_swing_and_its_threshold() {
    let dashed = |room: &Room, index| {
        let scene = wall(room, index, UNITS);
        let swing = scene.marks.iter().filter(|mark| {
            matches!(mark, Mark::Path { points, closed: false, pen: Some(pen), .. }
                if points.len() == 3 && pen.line == Line::Dashed)
        });
        swing.count()
    };
    assert_eq!(dashed(&measured(), 4), 1, "the wall with the door");
    assert_eq!(dashed(&measured(), 0), 0, "the wall with the window");
}

#[test]
fn a_plan_fills_its_sheet_one_way() {
    let (width, height) = (1000.0, 720.0);
    let canvas = Canvas {
        width,
        height,
        text: 1.0,
        margin: 12.0,
    };
    let sheet = lay_out(&plan(&measured(), UNITS), &canvas, None);
    let edge = |side: fn(&[f32; 4]) -> f32| sheet.boxes.iter().map(side);
    let (left, top) = (
        edge(|b| b[0]).fold(width, f32::min),
        edge(|b| b[1]).fold(height, f32::min),
    );
    let (right, bottom) = (
        edge(|b| b[0] + b[2]).fold(0.0, f32::max),
        edge(|b| b[1] + b[3]).fold(0.0, f32::max),
    );
    let free = (left + width - right).min(top + height - bottom);
    assert!(free < 40.0, "{free} is left free");
}

/// Up, over, up; then the same with an offset, and with a leg that is not measured yet.
#[test]
fn a_run_of_pipe_is_clean_from_either_side() {
    use crate::handbook::pipe::{Family, Kind, Pipe, Size, Turn};
    use crate::trades::pipe::{
        Ask, By, Direction, Fitting, Leg, Mark as Held, Measured, Port, Shape, Way, figure,
    };
    let elbow = Some(Fitting::of(Kind::Bend));
    let leg = |way, inches| Leg {
        way: Way::Along(way),
        size: None,
        by: By::Tape {
            length: Length::in_64(inches, 24),
            from: Held::Centre,
            to: Held::Centre,
        },
        couplings: 0,
        end: elbow,
    };
    let bend = |turn| Measured {
        shape: Shape {
            family: Family::PvcDrain,
            kind: Kind::Bend,
            turn: Some(turn),
            size: Size::Two,
            other: Size::Two,
            port: Port::Run,
        },
        face: Length::in_64(2, 16),
        depth: None,
    };
    let run = |legs| Ask {
        pipe: Pipe::PvcDrain,
        size: Size::Two,
        start: elbow,
        legs,
        fittings: vec![bend(Turn::Quarter), bend(Turn::Eighth)],
        ..Ask::default()
    };
    let travel = Leg {
        way: Way::Offset {
            along: Direction::Left,
            to: Direction::Forward,
            angle: Turn::Eighth.angle(),
            set: Length::inches(9),
            over: None,
        },
        by: By::Set,
        ..leg(Direction::Left, 0)
    };
    let unknown = Leg {
        by: By::Tape {
            length: Length::ZERO,
            from: Held::Centre,
            to: Held::Centre,
        },
        ..leg(Direction::Back, 0)
    };
    for (name, legs) in [
        (
            "run-supply",
            vec![
                leg(Direction::Up, 21),
                leg(Direction::Right, 6),
                leg(Direction::Up, 15),
            ],
        ),
        (
            "run-offset",
            vec![leg(Direction::Left, 22), travel, leg(Direction::Left, 30)],
        ),
        (
            "run-unknown",
            vec![leg(Direction::Up, 21), unknown, leg(Direction::Up, 30)],
        ),
        (
            "run-long",
            (0..4)
                .flat_map(|_| [leg(Direction::Up, 20), leg(Direction::Forward, 24)])
                .collect(),
        ),
    ] {
        let ask = run(legs);
        let figured = figure(&ask).ok();
        assert_eq!(figured.is_none(), name == "run-unknown");
        for view in [View::Isometric, View::Front, View::Above] {
            let scene = pipe_sketch(&ask, figured.as_ref(), view, UNITS);
            clean(&format!("{name}-{view:?}"), &scene);
        }
    }
}

/// A wall out of plumb with a window, and a floor out of square with a flange, in sheets.
#[test]
fn sheets_and_their_pieces_are_clean() {
    use crate::geometry::{Polygon, Region};
    use crate::trades::sheets::{self, Framing, Thing, ThingShape};
    let at = |x: i64, y: i64| Point::new(Length::in_64(x, 12), Length::in_64(y, 20));
    let outline = |corners: &[(i64, i64)]| Polygon {
        points: corners.iter().map(|(x, y)| at(*x, *y)).collect(),
    };
    let floor = sheets::Ask {
        surface: Region {
            outer: outline(&[(0, 0), (89, 1), (88, 50), (54, 51), (53, 62), (0, 63)]),
            holes: Vec::new(),
        },
        things: vec![Thing {
            kind: None,
            shape: ThingShape::Round {
                across: Length::inches(7),
            },
            from_left: Length::inches(30),
            from_top: Length::inches(14),
            clear: Length::in_64(0, 16),
        }],
        ..sheets::Ask::default()
    };
    let wall = sheets::Ask {
        surface: Region {
            outer: outline(&[(1, 0), (95, 1), (96, 97), (0, 96)]),
            holes: vec![outline(&[(40, 20), (64, 20), (64, 50), (40, 50)])],
        },
        origin: Some(Point::default()),
        framing: Some(Framing {
            upright: true,
            studs: Studs::Spaced {
                first: Length::inches(16),
                spacing: Length::inches(16),
                face: Length::in_64(1, 32),
            },
            land: true,
        }),
        ..sheets::Ask::wall()
    };
    for (name, ask) in [("sheets-floor", floor), ("sheets-wall", wall)] {
        let figure = sheets::figure(&ask).unwrap();
        clean(name, &sheets_sketch(&ask, Some(&figure), true, UNITS));
        for piece in &figure.pieces {
            let name = format!("{name}-piece-{}", piece.number);
            clean(&name, &piece_sketch(&ask, piece, UNITS));
        }
    }
}
