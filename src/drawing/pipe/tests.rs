//! What is on the sketch of a run.

use super::*;
use crate::trades::pipe::{Direction, Leg, Mark as Held};

fn run() -> Ask {
    let leg = |way, inches, from, to, end| Leg {
        way: Way::Along(way),
        size: None,
        by: By::Tape {
            length: Length::inches(inches),
            from,
            to,
        },
        couplings: 0,
        end,
    };
    let elbow = Some(Fitting::of(Kind::Bend));
    Ask {
        legs: vec![
            leg(Direction::Up, 24, Held::End, Held::Shoulder, elbow),
            leg(Direction::Forward, 0, Held::Centre, Held::End, None),
        ],
        ..Ask::default()
    }
}

/// Up is up, and right and forward rise and fall at 30°.
#[test]
fn the_axes_are_where_a_fitter_draws_them() {
    let axis = |right, forward, up| {
        let place = Place::of([right, forward, up].map(Length::feet));
        let point = View::Isometric.of(place);
        (point.x.in_inches(), point.y.in_inches())
    };
    let cosine = 12.0 * 3f64.sqrt() / 2.0;
    for (found, should) in [
        (axis(1, 0, 0), (cosine, 6.0)),
        (axis(0, 1, 0), (cosine, -6.0)),
        (axis(0, 0, 1), (0.0, -12.0)),
    ] {
        assert!((found.0 - should.0).abs() < 1e-6 && (found.1 - should.1).abs() < 1e-6);
    }
}

#[test]
fn what_was_typed_is_yours_and_what_is_missing_is_asked() {
    let scene = pipe_sketch(&run(), None, View::Isometric, Units::DecimalInches);
    let standing: Vec<Standing> = scene.dimensions.iter().map(|d| d.standing).collect();
    // A leg of no length is sketched so long that it can be asked for.
    assert_eq!(standing, [Standing::Yours, Standing::Asked]);
    assert_eq!(scene.dimensions[0].tag, Some(PipeTag::Length(0)));
    assert_eq!(scene.dimensions[1].text, "?");
}

/// Three lines: two more than the run itself, an equal way apart, and a triangle for each hanger.
#[test]
fn every_line_and_every_hanger_is_drawn() {
    let level = Leg {
        way: Way::Along(Direction::Right),
        size: None,
        by: By::Tape {
            length: Length::inches(100),
            from: Held::End,
            to: Held::End,
        },
        couplings: 0,
        end: None,
    };
    let ask = Ask {
        legs: vec![level],
        lines: Some(crate::trades::pipe::Lines {
            count: 3,
            apart: Length::inches(4),
            to: Direction::Up,
        }),
        ..Ask::default()
    };
    let figure = crate::trades::pipe::figure(&ask).expect("right");
    let scene = pipe_sketch(&ask, Some(&figure), View::Front, Units::DecimalInches);
    let soft =
        |mark: &&Mark| matches!(mark, Mark::Path { pen: Some(pen), .. } if pen.role == Role::Soft);
    let beside: Vec<&Mark> = scene.marks.iter().filter(soft).collect();
    assert_eq!(beside.len(), 2);
    let Mark::Path { points, .. } = beside[1] else {
        unreachable!("a line");
    };
    assert_eq!(points[0].y, Length::inches(-8));
    let triangle = |mark: &&Mark| {
        matches!(
            mark,
            Mark::Path {
                pen: None,
                fill: Some(Role::Soft),
                ..
            }
        )
    };
    // 100 in level: copper every 6 ft takes three.
    assert_eq!(scene.marks.iter().filter(triangle).count(), 3);
    // Pieces 2 and 3 are those of the lines beside it.
    let said: Vec<&str> = scene
        .marks
        .iter()
        .filter_map(|mark| match mark {
            Mark::Text { text, .. } => Some(text.as_str()),
            _ => None,
        })
        .collect();
    assert_eq!(said, ["2", "3"]);
}

#[test]
fn from_the_front_a_leg_into_the_wall_is_a_ring() {
    let mut ask = run();
    if let By::Tape { length, .. } = &mut ask.legs[1].by {
        *length = Length::feet(1);
    }
    let rings = |view| {
        let scene = pipe_sketch(&ask, None, view, Units::DecimalInches);
        scene
            .marks
            .iter()
            .filter(|mark| matches!(mark, Mark::Circle { .. }))
            .count()
    };
    assert_eq!(rings(View::Front), rings(View::Isometric) + 1);
}
