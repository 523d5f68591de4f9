//! Paint, for any room.

use proptest::prelude::*;
use storyrod::measure::Length;
use storyrod::measure::quantity::{
    in_square_feet_per_gallon, in_square_metres_per_litre, square_feet, square_feet_per_gallon,
};
use storyrod::trades::paint::{Ask, Field, Figure, Problem, Reach, Texture, figure, film, pole};

fn kinds() -> impl Strategy<Value = Texture> {
    prop_oneof![
        Just(Texture::Smooth),
        Just(Texture::BareBoard),
        Just(Texture::Textured),
        Just(Texture::Masonry),
        Just(Texture::HeavyTexture),
    ]
}

fn painted(area: f64, coats: u8, kind: Texture) -> Figure {
    let mut ask = Ask::default();
    ask.surfaces[0].area = square_feet(area);
    ask.surfaces[0].kind = kind;
    ask.finish.coats = coats;
    figure(&ask).unwrap()
}

proptest! {
    #[test]
    fn prop_more_coats_are_never_less_paint(area in 0.0..5_000.0, coats in 0u8..10, kind in kinds()) {
        let (fewer, more) = (painted(area, coats, kind), painted(area, coats + 1, kind));
        prop_assert!(more.walls >= fewer.walls);
        prop_assert_eq!(more.primer, fewer.primer);
    }

    #[test]
    fn prop_k_times_the_area_is_k_times_the_paint(area in 0.1..100.0f64, k in 0.1..100.0f64, kind in kinds()) {
        let (one, many) = (painted(area, 2, kind), painted(area * k, 2, kind));
        let off = (many.walls.value - one.walls.value * k).abs();
        prop_assert!(off <= 1e-12 * many.walls.value);
        let off = (many.primer.value - one.primer.value * k).abs();
        prop_assert!(off <= 1e-12 * many.primer.value.max(1e-9));
    }

    #[test]
    fn prop_gallons_and_litres_say_the_same(share in 0.01..1.0f64, nm in 2_540i64..2_540_000) {
        let rate = film::spread(share, Length::nm(nm)).unwrap();
        let customary = 231.0 / 0.144 * share / (nm as f64 / 25_400.0);
        let metric = 1_000.0 * share / (nm as f64 / 1_000.0);
        prop_assert!((in_square_feet_per_gallon(rate) / customary - 1.0).abs() < 1e-12);
        prop_assert!((in_square_metres_per_litre(rate) / metric - 1.0).abs() < 1e-12);
    }

    #[test]
    fn prop_the_figure_lies_within_its_range(area in 0.1..5_000.0, kind in kinds()) {
        for lot in painted(area, 2, kind).lots {
            prop_assert!(lot.range.0 <= lot.rate && lot.rate <= lot.range.1);
            prop_assert!(lot.volume_range.0 <= lot.volume && lot.volume <= lot.volume_range.1);
        }
    }

    #[test]
    fn prop_any_label_is_taken_or_named(rate in proptest::num::f64::ANY) {
        let mut ask = Ask::default();
        ask.finish.label_rate = Some(square_feet_per_gallon(rate));
        match figure(&ask) {
            Ok(figure) => prop_assert!(figure.walls.value.is_finite() && figure.walls.value > 0.0),
            Err(problem) => {
                let named = matches!(problem, Problem::Beyond { field: Field::LabelRate(_), .. });
                prop_assert!(named);
            }
        }
    }

    #[test]
    fn prop_a_higher_wall_never_takes_a_shorter_pole(inches in 1i64..400, stature in 48i64..84) {
        let reach = Reach { stature: Some(Length::inches(stature)), ..Reach::default() };
        let (low, high) = (pole(Length::inches(inches), &reach), pole(Length::inches(inches + 1), &reach));
        prop_assert!(low.reach <= high.reach);
        prop_assert!(low.pole <= high.pole);
    }
}
