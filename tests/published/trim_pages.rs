//! Casing and mitres: what pages print, and arithmetic on rules that they print.

use storyrod::measure::{Angle, Length};
use storyrod::trades::trim::{Ask, Corner, Frame, Listed, Piece, figure, saw_angle};

/// "What is the standard door trim height", a page of engineerfix.com, read: with a reveal of 1/4 in the side of an 80 in
/// jamb is 80 1/4 in to its short point, and the head of a 30 in jamb 30 1/2 in.
#[test]
fn casing_of_a_door_with_a_reveal_of_a_quarter() {
    let ask = Ask {
        reveal: Length::in_64(0, 16),
        frames: vec![Frame {
            width: Length::inches(30),
            height: Length::inches(80),
            ..Frame::default()
        }],
        ..Ask::casing()
    };
    let figured = figure(&ask).unwrap();
    let short: Vec<Length> = figured.pieces.iter().map(Piece::short).collect();
    let leg = Length::in_64(80, 16);
    assert_eq!(short, [leg, Length::in_64(30, 32), leg]);
}

/// "Installing Baseboard", thisiscarpentry.com, read: an outside corner is measured to the short point of its mitre, an
/// inside one to the long point; both lie on the wall. So along the wall a piece is what was measured, whatever its ends.
#[test]
fn the_measure_lies_on_the_wall_at_both_kinds_of_corner() {
    let listed = |ends| Listed {
        length: Length::inches(40),
        count: 1,
        ends,
    };
    let ask = Ask {
        inside: storyrod::trades::trim::Inside::Mitred,
        pieces: vec![
            listed([Corner::Inside, Corner::Inside]),
            listed([Corner::Outside, Corner::Outside]),
        ],
        ..Ask::default()
    };
    let figured = figure(&ask).unwrap();
    let forty = Length::inches(40);
    assert_eq!(figured.pieces[0].long(), forty);
    assert_eq!(figured.pieces[1].short(), forty);
    assert!(figured.pieces.iter().all(|piece| piece.back == forty));
}

/// "Running Baseboard", jlconline.com, read: a mitre is a corner cut at an evenly divided angle, 45° each as a rule.
#[test]
fn a_right_corner_is_divided_evenly() {
    assert_eq!(saw_angle(Angle::RIGHT), Angle::degrees(45));
    assert_eq!(saw_angle(Angle::LEFT), Angle::degrees(45));
}

/// "Perfect fits for baseboards", joneakes.com, read: 3/4 in into the stud behind board and trim, which usually comes to a
/// nail of 1 3/4 to 2 in.
#[test]
fn a_nail_through_half_an_inch_of_trim_and_of_board() {
    let figured = figure(&Ask::default()).unwrap();
    assert_eq!(figured.nail, Length::in_64(1, 48));
}
