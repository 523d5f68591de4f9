//! `geometry::adjust` against scipy 1.17.1 (Levenberg and Marquardt, from MINPACK) and areas against shapely 2.2.0
//! (`scipy_surveys.py` wrote the figures).

use storyrod::geometry::{Network, Observation, Point, Polygon, Sight, adjust};
use storyrod::measure::Length;

#[derive(Default)]
struct Room {
    area: f64,
    chi_square: f64,
    guessed: Vec<[f64; 2]>,
    found: Vec<[f64; 2]>,
    sigmas: Vec<[f64; 2]>,
    observations: Vec<Observation>,
    residuals: Vec<f64>,
}

fn rooms() -> Vec<Room> {
    let mut rooms = Vec::new();
    for line in include_str!("scipy_surveys.csv")
        .lines()
        .filter(|line| !line.starts_with('#'))
    {
        let (kind, rest) = line.split_once(',').unwrap();
        let figures: Vec<f64> = rest.split(',').map(|n| n.parse().unwrap()).collect();
        if kind == "room" {
            rooms.push(Room {
                area: figures[1],
                chi_square: figures[2],
                ..Room::default()
            });
            continue;
        }
        let room = rooms.last_mut().unwrap();
        let at = |n: usize| figures[n] as usize;
        let (sight, rest) = match kind {
            "corner" => {
                room.guessed.push([figures[0], figures[1]]);
                room.found.push([figures[2], figures[3]]);
                room.sigmas.push([figures[4], figures[5]]);
                continue;
            }
            "far" => (Sight::Distance(at(0), at(1)), &figures[2..]),
            "turn" => (Sight::Turn(at(0), at(1), at(2)), &figures[3..]),
            other => panic!("{other}"),
        };
        room.observations.push(Observation {
            sight,
            value: rest[0],
            sigma: rest[1],
        });
        room.residuals.push(rest[2]);
    }
    rooms
}

/// Corners to 0.05 mm, residuals to 0.01 mm and to 0.01 mm over 1 m, sigmas to the hundredth, areas to 10 mm².
#[test]
fn every_survey_comes_out_as_by_scipy() {
    let rooms = rooms();
    let mut most_corners = 0;
    for (number, room) in rooms.iter().enumerate() {
        let mut held = vec![[false, false]; room.guessed.len()];
        held[0] = [true, true];
        held[1][1] = true;
        let found = adjust(&Network {
            start: room.guessed.clone(),
            held,
            observations: room.observations.clone(),
        })
        .unwrap();
        most_corners = most_corners.max(room.found.len());
        for (at, (is, wanted)) in found.points.iter().zip(&room.found).enumerate() {
            let off = (is[0] - wanted[0]).hypot(is[1] - wanted[1]);
            assert!(off < 0.000_05, "room {number}, corner {at}: {off} m off");
            for axis in 0..2 {
                let sigma = found.covariance((at, axis), (at, axis)).sqrt();
                let wanted = room.sigmas[at][axis];
                assert!(
                    (sigma - wanted).abs() <= wanted * 0.01 + 1e-6,
                    "room {number}"
                );
            }
        }
        for (is, wanted) in found.residuals.iter().zip(&room.residuals) {
            assert!(
                (is - wanted).abs() < 0.000_01,
                "room {number}: {is}, {wanted}"
            );
        }
        assert!((found.chi_square - room.chi_square).abs() < 1e-3 + room.chi_square * 1e-4);
        let place = |at: &[f64; 2]| {
            let length = |metres| Length::from_metres(metres).unwrap();
            Point::new(length(at[0]), length(at[1]))
        };
        let outline = Polygon {
            points: found.points.iter().map(place).collect(),
        };
        assert!(
            (outline.area().value - room.area).abs() < 1e-5,
            "room {number}"
        );
    }
    assert_eq!(rooms.len(), 200);
    assert!(most_corners >= 16, "{most_corners}");
}
