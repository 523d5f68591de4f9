//! Layouts of tile against shapely 2.2.0 (`shapely_tiles.py` wrote the figures, from patterns said anew as geometry).

use storyrod::geometry::{Point, Polygon, Region};
use storyrod::measure::{Angle, Length, quantity::in_square_metres};
use storyrod::trades::tile::{Ask, Pattern, Start, Tile, figure};

/// Millimetres as they stand in the file, to the nanometre.
fn mm(text: &str) -> Length {
    Length::nm((text.parse::<f64>().unwrap() * 1e6).round() as i64)
}

fn points(text: &str) -> Vec<Point> {
    let numbers: Vec<Length> = text.split_whitespace().map(mm).collect();
    numbers
        .chunks_exact(2)
        .map(|at| Point::new(at[0], at[1]))
        .collect()
}

fn hole(text: &str) -> Polygon {
    let [kind, x, y, size]: [&str; 4] = text.split(' ').collect::<Vec<_>>().try_into().unwrap();
    let [x, y, size] = [x, y, size].map(mm);
    let points = match kind {
        "s" => [(0, 0), (1, 0), (1, 1), (0, 1)]
            .map(|(right, down)| Point::new(x + size * right, y + size * down))
            .to_vec(),
        _ => (0..64)
            .map(|k| {
                let (sine, cosine) = (f64::from(k) / 64.0 * std::f64::consts::TAU).sin_cos();
                let off = |share: f64| Length::nm((size.as_nm() as f64 * share).round() as i64);
                Point::new(x + off(cosine), y + off(sine))
            })
            .collect(),
    };
    Polygon { points }
}

fn pattern(text: &str) -> Pattern {
    let mut words = text.split(' ');
    let name = words.next().unwrap();
    let mut number = || words.next().unwrap();
    match name {
        "grid" => Pattern::Grid,
        "bond" => Pattern::Bond {
            over: number().parse().unwrap(),
            of: number().parse().unwrap(),
        },
        "herringbone" => Pattern::Herringbone,
        "basketweave" => Pattern::Basketweave,
        "two-squares" => Pattern::TwoSquares {
            small: mm(number()),
        },
        "hexagon" => Pattern::Hexagon,
        "planks" => Pattern::Planks {
            seed: number().parse().unwrap(),
            apart: mm(number()),
        },
        other => panic!("{other}"),
    }
}

/// Within a share of what is asked for.
#[track_caller]
fn near(what: &str, ours: f64, theirs: f64, within: f64, line: &str) {
    let off = ours - theirs;
    assert!(
        off.abs() <= within,
        "{what}: {ours} against {theirs}, off by {off:e}: {line}"
    );
}

#[test]
fn every_room_is_tiled_as_shapely_tiles_it() {
    let mut kinds = std::collections::BTreeMap::<String, usize>::new();
    for line in include_str!("shapely_tiles.csv")
        .lines()
        .filter(|line| !line.starts_with('#'))
    {
        let fields: [&str; 14] = line.split(',').collect::<Vec<_>>().try_into().unwrap();
        let [outline, holes, gap, long, short, joint, name, turn, from] = fields[..9] else {
            unreachable!()
        };
        let ask = Ask {
            surface: Region {
                outer: Polygon {
                    points: points(outline),
                },
                holes: holes.split_terminator(';').map(hole).collect(),
            },
            gap: mm(gap),
            tile: Tile {
                long: mm(long),
                short: mm(short),
                ..Tile::default()
            },
            joint: mm(joint),
            pattern: pattern(name),
            turn: Angle::from_degrees(turn.parse().unwrap()).unwrap(),
            start: Start::ByHand(points(from)[0]),
            reuse: false,
            ..Ask::default()
        };
        let figure = figure(&ask).unwrap_or_else(|problem| panic!("{problem:?}: {line}"));
        let layout = &figure.layout;
        let [whole, cut] = [fields[9], fields[10]].map(|n| n.parse::<usize>().unwrap());
        assert_eq!((layout.whole(), layout.cut()), (whole, cut), "{line}");
        let [pieces, joints, field] =
            [fields[11], fields[12], fields[13]].map(|n| n.parse::<f64>().unwrap() / 1e6);
        let faces = in_square_metres(layout.faces());
        near("pieces", faces, pieces, 1e-9 * pieces, line);
        let all = in_square_metres(layout.covered());
        near("field", all, field, 1e-9 * field, line);
        // What is no piece is joint, but for slivers under 1 mm² at the edges.
        let slivers = 1e-6 * (whole + cut) as f64;
        near("pieces and joints", faces + joints, field, slivers, line);
        near(
            "share",
            figure.joints,
            joints / field,
            slivers / field,
            line,
        );
        let kind = name.split(' ').next().unwrap().to_owned();
        *kinds.entry(kind).or_default() += 1;
    }
    assert_eq!(kinds.len(), 7, "{kinds:?}");
    assert!(kinds.values().sum::<usize>() >= 500, "{kinds:?}");
}
