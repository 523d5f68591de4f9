//! Popular guide to estimating wall paint, read: 350 for smooth walls, 300 for bare board, door 20 and window 15 ft².

use storyrod::measure::Length;
use storyrod::measure::quantity::{in_gallons, square_feet};
use storyrod::trades::paint::{Ask, Figure, Part, Surface, Texture, figure};

/// A bath of 5 by 8 ft, 8 ft high; the sums are our own, from the guide's figures.
fn bath(openings: f64, kind: Texture) -> Figure {
    let mut walls = Surface::wall(Length::feet(26), Length::feet(8));
    walls.area -= square_feet(openings);
    walls.kind = kind;
    let mut ceiling = Surface::wall(Length::feet(5), Length::feet(8));
    ceiling.part = Part::Ceiling;
    figure(&Ask {
        surfaces: vec![walls, ceiling],
        ..Ask::default()
    })
    .unwrap()
}

#[test]
fn a_small_bath_takes_a_gallon_on_its_walls_and_a_quart_above() {
    let net = bath(35.0, Texture::BareBoard);
    assert!((in_gallons(net.walls) - 0.989).abs() < 0.0005);
    assert!((in_gallons(net.primer) - 0.577).abs() < 0.0005);
    assert!((in_gallons(net.ceiling) - 0.229).abs() < 0.0005);
}

#[test]
fn measured_solid_it_takes_a_fifth_more() {
    let (net, solid) = (bath(35.0, Texture::Smooth), bath(0.0, Texture::Smooth));
    assert!((in_gallons(solid.walls) - 1.189).abs() < 0.0005);
    let more = in_gallons(solid.walls) / in_gallons(net.walls);
    assert!((more - 1.20).abs() < 0.005);
}
