//! Small rooms whose answers are known.

use super::*;
use crate::handbook::cautions;
use crate::measure::quantity::{
    in_gallons, in_square_feet_per_gallon, square_feet, square_feet_per_gallon,
};
use crate::trades::{Material, Weight};

fn check(change: impl FnOnce(&mut Ask)) -> Figure {
    let mut ask = Ask::default();
    change(&mut ask);
    figure(&ask).unwrap()
}

fn near(volume: Volume, gallons: f64) {
    assert!((in_gallons(volume) - gallons).abs() < 1e-9, "{volume:?}");
}

fn weights(figure: &Figure) -> Vec<Weight> {
    figure.account.findings.iter().map(|f| f.weight).collect()
}

#[test]
fn one_wall_takes_no_primer_and_a_short_pole() {
    let wall = check(|_| {});
    near(wall.walls, 160.0 / 350.0);
    near(wall.primer, 0.0);
    assert_eq!(wall.pole.unwrap().pole, Pole::Short);
    assert!(weights(&wall).is_empty());
    assert_eq!(wall.account.needs.len(), 1);
    assert_eq!(wall.cut_in, Length::feet(36));
}

#[test]
fn bare_board_is_primed_at_300_and_painted_at_350() {
    let wall = check(|ask| ask.surfaces[0].kind = Texture::BareBoard);
    near(wall.primer, 80.0 / 300.0);
    near(wall.walls, 160.0 / 350.0);
    let primer = &wall.lots[0];
    assert!((in_square_feet_per_gallon(primer.range.0) - 200.0).abs() < 1e-9);
    near(primer.volume_range.1, 0.4);
}

#[test]
fn bare_board_without_primer_is_remarked() {
    let wall = check(|ask| {
        ask.surfaces[0].kind = Texture::BareBoard;
        ask.primer.coats = 0;
    });
    near(wall.walls, 160.0 / 300.0);
    assert_eq!(weights(&wall), [Weight::Caution]);
}

#[test]
fn patched_spots_are_primed_alone() {
    let wall = check(|ask| ask.patched = vec![square_feet(3.0), square_feet(6.0)]);
    near(wall.primer, 9.0 / 300.0);
    assert!(matches!(
        wall.account.needs[0].material,
        Material::Primer { .. }
    ));
}

#[test]
fn the_label_goes_before_everything() {
    let wall = check(|ask| {
        ask.surfaces[0].kind = Texture::HeavyTexture;
        ask.finish.label_rate = Some(square_feet_per_gallon(400.0));
    });
    near(wall.walls, 0.4);
    assert_eq!(wall.lots[0].range.0, wall.lots[0].range.1);
    assert!((wall.wet_film.unwrap().in_inches() - 231.0 / 57_600.0).abs() < 1e-7);
    assert_eq!(wall.dry_film, None);
}

#[test]
fn solids_and_film_make_the_spread_where_no_label_does() {
    let wall = check(|ask| {
        ask.finish.volume_solids = Some(0.35);
        ask.finish.dry_film = Some(Length::nm(50_800));
    });
    let rate = in_square_feet_per_gallon(wall.lots[0].rate);
    assert!((rate - 280.729).abs() < 0.001, "{rate}");
    assert_eq!(wall.dry_film, Some(Length::nm(50_800)));
}

#[test]
fn a_label_that_leaves_too_thin_a_film_is_remarked() {
    let wall = |label: f64| {
        check(|ask| {
            ask.finish.volume_solids = Some(0.35);
            ask.finish.dry_film = Some(Length::nm(50_800));
            ask.finish.label_rate = Some(square_feet_per_gallon(label));
        })
    };
    assert_eq!(weights(&wall(400.0)), [Weight::Caution]);
    assert_eq!(weights(&wall(290.0)), []);
    assert_eq!(weights(&wall(200.0)), [Weight::Note]);
}

#[test]
fn heavy_texture_is_bought_at_its_low_figure_and_shown_with_its_range() {
    let wall = check(|ask| ask.surfaces[0].kind = Texture::HeavyTexture);
    near(wall.walls, 1.6);
    near(wall.lots[0].volume_range.0, 0.8);
    near(wall.lots[0].volume_range.1, 1.6);
    assert_eq!(wall.nap, (Length::in_64(0, 48), Length::in_64(1, 16)));
    assert!(wall.account.cautions.contains(&&cautions::OLD_TEXTURE));
}

#[test]
fn gloss_over_level_4_is_noted_and_over_level_5_is_not() {
    let notes = |sheen, level| {
        weights(&check(|ask| {
            ask.sheen = sheen;
            ask.level = level;
        }))
    };
    assert_eq!(notes(Sheen::SemiGloss, Some(4)), [Weight::Note]);
    assert_eq!(notes(Sheen::Gloss, Some(5)), []);
    assert_eq!(notes(Sheen::Gloss, None), []);
    assert_eq!(notes(Sheen::Eggshell, Some(4)), []);
}

#[test]
fn old_paint_is_weighed_by_the_room() {
    let found = |built, disturbed: f64, paid_job| {
        weights(&check(|ask| {
            ask.built = built;
            ask.disturbed = square_feet(disturbed);
            ask.paid_job = paid_job;
        }))
    };
    assert_eq!(found(Built::Before1978, 9.0, true), [Weight::Stop]);
    assert_eq!(found(Built::Unknown, 9.0, true), [Weight::Stop]);
    assert_eq!(found(Built::Before1978, 9.0, false), [Weight::Caution]);
    assert_eq!(found(Built::Before1978, 6.0, true), [Weight::Note]);
    assert_eq!(found(Built::From1978, 9.0, true), []);
    assert_eq!(found(Built::Before1978, 0.0, true), []);
}

#[test]
fn alkyd_waits_longer_and_its_rags_are_minded() {
    let wall = check(|ask| ask.binder = Binder::Alkyd);
    let hours = |h| Box::new(Amount::Hours(h));
    assert_eq!(wall.recoat, Amount::Range(hours(16.0), hours(24.0)));
    assert!(wall.account.cautions.contains(&&cautions::OILY_RAGS));
    let latex = check(|_| {});
    assert_eq!(latex.recoat, Amount::Range(hours(2.0), hours(4.0)));
    assert!(!latex.account.cautions.contains(&&cautions::OILY_RAGS));
    assert!(latex.temperature.0 > wall.temperature.0);
}

#[test]
fn every_step_says_where_it_stands() {
    let wall = check(|ask| {
        ask.surfaces[0].kind = Texture::BareBoard;
        ask.finish.volume_solids = Some(0.4);
        ask.reach.stature = Some(Length::inches(70));
    });
    assert!(wall.account.working.len() >= 10);
    assert!(
        wall.account
            .working
            .iter()
            .all(|step| !step.cite.clause.is_empty())
    );
}
