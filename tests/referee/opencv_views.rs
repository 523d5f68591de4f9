//! Walls seen in pictures, and lenses, against `OpenCV` 5.0.0; `opencv_views.py` makes both tables.

use storyrod::geometry::{Bent, Estimate, Lens, PlaneView, Reference, Shape, bend_of, distance};

fn table(text: &str) -> Vec<Vec<f64>> {
    let rows = text.lines().skip(1);
    let numbers = |row: &str| row.split(',').map(|part| part.parse().unwrap()).collect();
    rows.map(numbers).collect()
}

/// With exact corners every distance is `OpenCV`'s within one in ten thousand.
#[test]
fn distances_in_200_views_are_those_of_opencv() {
    let rows = table(include_str!("opencv_views.csv"));
    assert_eq!(rows.len(), 200);
    let mut worst = 0.0_f64;
    for row in rows {
        let pair = |at: usize| [row[at], row[at + 1]];
        let reference = Reference {
            corners: [pair(0), pair(2), pair(4), pair(6)],
            shape: Shape::rectangle(pair(8), [0.0; 2]),
        };
        let lens = Bent {
            lens: Lens::straight(4032.0, 3024.0),
            spread: 0.0,
        };
        let view = PlaneView::new(&reference, &[], lens, 1.5).unwrap();
        let ours = view.distance(pair(10), pair(12)).unwrap();
        let off = (ours.value / row[14] - 1.0).abs();
        worst = worst.max(off);
        assert!(off <= 1e-4, "{ours:?} against {}", row[14]);
    }
    println!("worst: {worst:.2e} of the distance");
}

/// Four points that are no rectangle, by their sides and a diagonal; every other one by its right angle too.
#[test]
fn distances_beside_200_four_sided_shapes_are_those_of_opencv() {
    let rows = table(include_str!("opencv_quads.csv"));
    assert_eq!(rows.len(), 200);
    for (n, row) in rows.iter().enumerate() {
        let pair = |at: usize| [row[at], row[at + 1]];
        let sure = |value: f64| Estimate { value, spread: 0.0 };
        let [a, b, c, d, e] = [8, 9, 10, 11, 12].map(|at| sure(row[at]));
        let square = sure(std::f64::consts::FRAC_PI_2);
        let mut shapes = vec![Shape::Braced([a, b, c, d, e])];
        if n % 2 == 0 {
            shapes.push(Shape::Cornered([a, b, c, d, square]));
        }
        for shape in shapes {
            let reference = Reference {
                corners: [pair(0), pair(2), pair(4), pair(6)],
                shape,
            };
            let lens = Bent {
                lens: Lens::straight(4032.0, 3024.0),
                spread: 0.0,
            };
            let view = PlaneView::new(&reference, &[], lens, 1.5).unwrap();
            let ours = view.distance(pair(13), pair(15)).unwrap();
            let off = (ours.value / row[17] - 1.0).abs();
            assert!(off <= 1e-4, "{n}: {ours:?} against {}", row[17]);
        }
    }
}

/// Half a pixel in a thousand of what `OpenCV` straightens, where its rounds converge.
#[test]
fn a_straightened_place_is_that_of_opencv() {
    let rows = table(include_str!("opencv_lens.csv"));
    assert_eq!(rows.len(), 72);
    for row in rows {
        let lens = Lens {
            bend: row[0],
            ..Lens::straight(row[1], row[2])
        };
        let straight = lens.straightened([row[3], row[4]]);
        let off = distance(straight, [row[5], row[6]]);
        assert!(off < 5e-4, "{row:?}: {straight:?}");
        assert!(distance(lens.seen([row[5], row[6]]), [row[3], row[4]]) < 5e-4);
    }
}

/// Three edges that `OpenCV`'s lens bent tell its bend.
#[test]
fn three_straight_edges_tell_the_bend_of_opencvs_lens() {
    let rows = table(include_str!("opencv_lens.csv"));
    for k in [-0.12, -0.05, 0.05, 0.2] {
        // The points of the table are those of one lens; the edges run through pairs of them as they were straight.
        let of_lens: Vec<&Vec<f64>> = rows
            .iter()
            .filter(|row| row[0] == k && row[1] == 2048.0)
            .collect();
        let flat = Lens::straight(2048.0, 1536.0);
        let lens = Lens { bend: k, ..flat };
        let edge = |a: usize, b: usize| {
            let (a, b) = (of_lens[a], of_lens[b]);
            let middle = [f64::midpoint(a[5], b[5]), f64::midpoint(a[6], b[6])];
            vec![[a[3], a[4]], lens.seen(middle), [b[3], b[4]]]
        };
        let found = bend_of(&[edge(0, 1), edge(2, 3), edge(4, 5)], flat, 1.0).unwrap();
        assert!((found.lens.bend - k).abs() < 2e-3, "{k}: {found:?}");
    }
}
