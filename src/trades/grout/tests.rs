//! Joints whose answers are computed: exact geometry beside the form in common use.

use super::*;
use crate::handbook::Known;
use crate::measure::quantity::{
    in_cubic_feet, in_gallons, in_kilograms, in_pounds, in_square_feet, kilograms_per_litre,
    litres, pounds, pounds_per_cubic_foot, square_feet, square_metres,
};
use crate::trades::{Material, Weight};

fn check(change: impl FnOnce(&mut Ask)) -> Figure {
    let mut ask = Ask {
        waste: 0.0,
        ..Ask::default()
    };
    change(&mut ask);
    figure(&ask).unwrap()
}

#[track_caller]
fn near(value: f64, printed: f64, half_a_digit: f64) {
    assert!((value - printed).abs() <= half_a_digit, "{value} {printed}");
}

fn weights(figure: &Figure) -> Vec<Weight> {
    figure.account.findings.iter().map(|f| f.weight).collect()
}

/// Inches and sixty-fourths: tile, depth, joint, area, then ft³, lb, lb by the common form and how far that is over.
#[track_caller]
fn customary(tile: [i64; 2], depth: i64, joint: i64, feet: f64, answers: [f64; 4]) {
    let [a, b] = tile.map(Length::inches);
    let joint = Length::in_64(0, joint);
    let floor = check(|ask| {
        ask.area = square_feet(feet);
        ask.joints = JointOf::Grid { a, b };
        ask.depth = Length::in_64(0, depth);
        ask.width = joint;
        ask.label.density = Some(pounds_per_cubic_foot(98.7));
    });
    let [volume, mass, common, over] = answers;
    near(in_cubic_feet(floor.volume), volume, 5e-6);
    near(in_pounds(floor.net), mass, 0.005);
    let by_common = in_pounds(floor.net) * floor.product_fraction.unwrap() / floor.fraction;
    near(by_common, common, 0.005);
    near(overstatement(a, b, joint), over, 0.0005);
}

/// Computed, at 98.7 lb/ft³: floor, mosaic and wall tile.
#[test]
fn three_customary_areas() {
    customary([12, 12], 24, 8, 40.0, [0.025_64, 2.53, 2.57, 0.016]);
    customary([2, 2], 16, 8, 15.0, [0.035_68, 3.52, 3.86, 0.095]);
    customary([3, 6], 20, 4, 60.0, [0.047_67, 4.705, 4.82, 0.024]);
}

/// Computed, at 1.6 kg/L: kg in a square metre, by the common form and exactly.
#[test]
fn three_metric_areas() {
    for (side, depth, joint, common, exact) in [
        (300, 10, 3, 0.320, 0.3153),
        (100, 6, 3, 0.576, 0.5511),
        (20, 4, 2, 1.280, 1.1107),
    ] {
        let (a, b) = (Length::mm(side), Length::mm(side));
        let floor = check(|ask| {
            ask.area = square_metres(1.0);
            ask.joints = JointOf::Grid { a, b };
            ask.depth = Length::mm(depth);
            ask.width = Length::mm(joint);
            ask.label.density = Some(kilograms_per_litre(1.6));
        });
        let exactly = in_kilograms(floor.net);
        near(exactly, exact, 5e-5);
        let by_common = exactly * floor.product_fraction.unwrap() / floor.fraction;
        near(by_common, common, 5e-4);
        // Never bought by the common form.
        assert!((exactly - common).abs() > 0.004);
    }
}

/// Computed: hexagons of 2 in flats with 1/8 in joints are 11.419 % joint.
#[test]
fn hexagons_are_figured_by_their_cells() {
    let floor = check(|ask| {
        ask.joints = JointOf::Hexagon {
            flats: Length::inches(2),
        }
    });
    near(floor.fraction, 0.114_19, 5e-6);
}

#[test]
fn joints_measured_in_a_layout_need_no_tile() {
    let floor = check(|ask| ask.joints = JointOf::Area(square_feet(1.0)));
    near(floor.fraction, 1.0 / 40.0, 1e-12);
    assert_eq!(floor.product_fraction, None);
    let none = check(|ask| ask.joints = JointOf::Area(square_feet(0.0)));
    assert!(none.account.needs.is_empty());
    near(none.bags, 0.0, 0.0);
}

#[test]
fn the_kind_follows_the_joint() {
    let kind = |sixty_fourths, scratches| kind_for(Length::in_64(0, sixty_fourths), scratches);
    assert_eq!(kind(7, false), Grout::Unsanded);
    assert_eq!(kind(8, false), Grout::Sanded);
    assert_eq!(kind(8, true), Grout::Unsanded);
    assert_eq!(kind(9, true), Grout::Sanded);
    assert_eq!(kind(24, false), Grout::Sanded);
    assert_eq!(kind(25, false), Grout::HeavySand);
    let mix = |sixty_fourths| job_mix(Length::in_64(0, sixty_fourths));
    assert_eq!([8, 9, 32, 33].map(mix), [1, 2, 2, 3]);
}

#[test]
fn the_wrong_kind_and_a_scratched_face_are_remarked() {
    let wide = |kind, width| {
        check(|ask| {
            ask.kind = Some(kind);
            ask.width = Length::in_64(0, width);
            ask.seams = vec![seam(8, 8)];
        })
    };
    let first = |figure: &Figure| figure.account.findings.first().map(|f| f.weight);
    assert_eq!(first(&wide(Grout::Unsanded, 12)), Some(Weight::Caution));
    assert_eq!(first(&wide(Grout::Sanded, 6)), Some(Weight::Caution));
    assert_eq!(first(&wide(Grout::Sanded, 28)), Some(Weight::Caution));
    assert_eq!(first(&wide(Grout::Sanded, 12)), Some(Weight::Note));
    assert_eq!(first(&wide(Grout::Unsanded, 3)), Some(Weight::Stop));
    let marked = check(|ask| {
        ask.scratches = true;
        ask.width = Length::in_64(0, 12);
    });
    assert_eq!(first(&marked), Some(Weight::Caution));
}

fn seam(width: i64, depth: i64) -> Seam {
    Seam {
        at: Meeting::PlaneChange,
        length: Length::feet(20),
        width: Length::in_64(0, width),
        depth: Length::in_64(0, depth),
    }
}

#[test]
fn seams_are_sealed_and_bought_by_volume() {
    let floor = check(|ask| ask.seams = vec![seam(16, 8)]);
    // 240 × 1/4 × 1/8 in = 7.5 in³.
    near(in_gallons(floor.sealant), 7.5 / 231.0, 1e-12);
    assert!(matches!(
        floor.account.needs[1].material,
        Material::Sealant { .. }
    ));
    // Either kind at 1/8 in, and sealant in place of grout.
    assert_eq!(weights(&floor), [Weight::Note; 2]);
    let deep = check(|ask| ask.seams = vec![seam(16, 16)]);
    assert_eq!(weights(&deep)[0], Weight::Caution);
}

#[test]
fn the_bag_goes_before_every_other_figure() {
    let floor = check(|ask| {
        ask.label = Label {
            bag: Some(pounds(10.0)),
            covers: Some(square_feet(160.0)),
            density: None,
            water: Some((litres(1.0), litres(1.2))),
            slake: Some((3.0, 3.0)),
            pot_life: Some(1.0),
            wait: Some(16.0),
        }
    });
    near(in_pounds(floor.net), 2.5, 1e-9);
    near(floor.bags, 0.25, 1e-12);
    near(in_square_feet(floor.bag_covers), 160.0, 1e-9);
    assert_eq!(floor.water, Some((litres(1.0), litres(1.2))));
    assert_eq!(floor.wait, Amount::Hours(16.0));
    assert!(!weights(&floor).contains(&Weight::Caution));
    let far = check(|ask| ask.label.covers = Some(square_feet(700.0)));
    assert_eq!(weights(&far)[0], Weight::Caution);
}

/// The remembered water is for 25 lb of sanded grout; for the rest the bag alone tells.
#[test]
fn water_is_not_guessed_for_unsanded_grout() {
    let sanded = check(|_| {});
    let (least, most) = sanded.water.unwrap();
    near(in_gallons(least) * 4.0, 2.0, 1e-9);
    near(in_gallons(most) * 4.0, 2.75, 1e-9);
    assert_eq!(check(|ask| ask.scratches = true).water, None);
    let step = |figure: &Figure, text| {
        let mut steps = figure.account.working.iter();
        steps
            .find(|step| step.what.text == text)
            .unwrap()
            .cite
            .known
    };
    assert_eq!(step(&sanded, "Water for a bag"), Known::FromMemory);
    assert_eq!(step(&sanded, "Wait after setting, at least"), Known::Read);
}

#[test]
fn two_thirds_of_the_joint_are_left_open() {
    assert_eq!(check(|_| {}).open, Length::in_64(0, 16));
}
