//! How far shapes are apart against shapely 2.2.0 (`shapely_apart.py` wrote the pairs).

use storyrod::geometry::{Form, Spot};

fn form(text: &str) -> Form {
    let mut words = text.split(' ');
    let kind = words.next().unwrap();
    let numbers: Vec<f64> = words.map(|word| word.parse().unwrap()).collect();
    let places: Vec<Spot> = numbers[1..].chunks(2).map(|at| [at[0], at[1]]).collect();
    Form {
        places,
        area: kind == "area",
        out: numbers[0],
    }
}

#[test]
fn four_hundred_pairs_are_as_far_apart_as_shapely_finds() {
    let (mut touching, mut apart) = (0, 0);
    for line in include_str!("shapely_apart.csv").lines().skip(1) {
        let [one, other, wanted]: [&str; 3] =
            line.split(',').collect::<Vec<_>>().try_into().unwrap();
        let (one, other) = (form(one), form(other));
        let wanted: f64 = wanted.parse().unwrap();
        for found in [one.apart(&other), other.apart(&one)] {
            assert!(
                (found - wanted).abs() < 1e-9,
                "{found}, not {wanted}: {line}"
            );
        }
        if wanted == 0.0 {
            touching += 1;
        } else {
            apart += 1;
        }
    }
    assert!(
        touching > 50 && apart > 200,
        "{touching} touch, {apart} do not"
    );
}
