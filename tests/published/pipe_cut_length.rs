//! Cut length by take-off: a plumbing textbook (2015 and 2022 editions, read), an army course (identities, read), and
//! figures that follow from a textbook's and a maker's take-offs.

use storyrod::handbook::pipe::{Family, Kind, Pipe, Size, Turn, least_socket, thread};
use storyrod::measure::Length;
use storyrod::trades::pipe::{Ask, Mark, Measured, Problem, figure};

use crate::asks::{inches, near};
use crate::pipe_asks::{between, cuts, fitting};

const BEND: Option<Turn> = Some(Turn::Quarter);

fn one(ask: &Ask) -> Length {
    let figure = figure(ask).unwrap();
    assert_eq!(figure.pieces.len(), 1);
    figure.pieces[0].cut
}

/// 2022 edition, p. 328: 2 in drain pipe, 4′ 6″ from face to face, 3/4 in into each hub, is cut 4′ 7 1/2″.
#[test]
fn face_to_face_adds_both_sockets() {
    let by = (Length::inches(54), Mark::Face, Mark::Face);
    for pipe in [Pipe::PvcDrain, Pipe::AbsDrain] {
        let ask = between(pipe, Size::Two, Kind::SanitaryTee, Kind::SanitaryTee, by);
        assert_eq!(one(&ask), inches(55, 32), "{pipe:?}");
    }
}

/// 2022 edition, p. 325: 3 in, 16 in from the centre of a quarter bend to the face of a hub; take-off 3, socket 1 1/2.
#[test]
fn centre_to_face_takes_one_off_and_adds_one() {
    let by = (Length::inches(16), Mark::Centre, Mark::Face);
    let mut ask = between(
        Pipe::PvcDrain,
        Size::Three,
        Kind::Bend,
        Kind::SanitaryTee,
        by,
    );
    assert_eq!(one(&ask), inches(14, 32));
    // Measured the other way round it is the same piece.
    let by = (Length::inches(16), Mark::Face, Mark::Centre);
    ask.legs = between(
        Pipe::PvcDrain,
        Size::Three,
        Kind::SanitaryTee,
        Kind::Bend,
        by,
    )
    .legs;
    ask.start = Some(storyrod::trades::pipe::Fitting::of(Kind::SanitaryTee));
    assert_eq!(one(&ask), inches(14, 32));
}

/// A heating forum's thread 91798: a travel of 16.92 in between two fittings with a take-off of 1 in leaves 14.92 in.
#[test]
fn a_travel_less_two_take_offs() {
    let travel = Length::from_inches(16.92).unwrap();
    let by = (travel, Mark::Centre, Mark::Centre);
    let mut ask = between(Pipe::CopperL, Size::One, Kind::Bend, Kind::Bend, by);
    ask.start = Some(storyrod::trades::pipe::Fitting {
        turn: Some(Turn::Eighth),
        ..storyrod::trades::pipe::Fitting::of(Kind::Bend)
    });
    ask.legs[0].end = ask.start;
    let bend = (Family::Copper, Kind::Bend, Some(Turn::Eighth));
    ask.fittings = vec![fitting(bend, Size::One, Length::inches(1), inches(0, 58))];
    assert_eq!(one(&ask), travel - Length::inches(2));
}

fn copper_24() -> Ask {
    let by = (Length::inches(24), Mark::Centre, Mark::Centre);
    let mut ask = between(Pipe::CopperM, Size::Half, Kind::Bend, Kind::Bend, by);
    let bend = (Family::Copper, Kind::Bend, BEND);
    ask.fittings = vec![fitting(bend, Size::Half, inches(0, 24), inches(0, 32))];
    ask
}

/// Half-inch copper, 24 in from centre to centre of two elbows whose take-off a textbook (2010, fig. 20-21) prints as
/// 3/8: 23 1/4 in, and the same by centre to face, 24 − 2 (7/8) + 2 (1/2).
#[test]
fn copper_between_two_elbows() {
    let ask = copper_24();
    assert_eq!(one(&ask), inches(23, 16));
    let face = ask.fittings[0].face;
    assert_eq!(face, inches(0, 56));
    assert_eq!(one(&ask), Length::inches(24) - face * 2 + inches(0, 32) * 2);
}

/// Two how-to pages take the depth of the sockets off from centre to centre: 23 in, a quarter of an inch short.
#[test]
fn the_socket_is_not_the_take_off() {
    let wrong = Length::inches(24) - inches(0, 32) * 2;
    assert_eq!(wrong, Length::inches(23));
    assert_eq!(one(&copper_24()) - wrong, inches(0, 16));
}

/// Wrought copper has no standard laying length (ASME B16.22, section 7, read): without a measurement there is no cut.
#[test]
fn wrought_copper_is_measured() {
    let ask = Ask {
        fittings: Vec::new(),
        ..copper_24()
    };
    let Err(Problem::NotMeasured { leg: 0, shape }) = figure(&ask) else {
        panic!("{:?}", figure(&ask));
    };
    assert_eq!(
        (shape.kind, shape.turn, shape.size),
        (Kind::Bend, BEND, Size::Half)
    );
}

fn schedule_40(depth_of: impl Fn(Length) -> Length) -> Ask {
    let by = (Length::inches(36), Mark::Centre, Mark::Centre);
    let mut ask = between(Pipe::Pvc40, Size::ThreeQuarters, Kind::Tee, Kind::Bend, by);
    // Centre to face and take-off of one maker's fittings, as an open table of dimensions prints them.
    let measured = |kind, turn, face: Length, take_off: Length| {
        let depth = depth_of(face - take_off);
        let own = fitting(
            (Family::Pvc40, kind, turn),
            Size::ThreeQuarters,
            face - depth,
            depth,
        );
        assert_eq!(own.face, face);
        own
    };
    ask.fittings = vec![
        measured(Kind::Tee, None, inches(1, 36), inches(0, 36)),
        measured(Kind::Bend, BEND, inches(1, 32), inches(0, 36)),
    ];
    ask
}

/// PVC schedule 40, 3/4 in, 36 in from the centre of a tee to that of an elbow, 9/16 off for each: 34 7/8 in.
#[test]
fn plastic_by_one_makers_fittings() {
    assert_eq!(one(&schedule_40(|depth| depth)), inches(34, 56));
}

/// The trap: the least socket of ASTM D2466 (0.719 in) taken for the real one makes the same piece half an inch short,
/// and the figure says that a measured socket is deeper.
#[test]
fn the_least_socket_is_no_make_up() {
    let least = least_socket(Family::Pvc40, Size::ThreeQuarters)
        .unwrap()
        .value;
    let short = one(&schedule_40(|_| least));
    near(short.in_inches(), 34.376, 0.001);
    let right = one(&schedule_40(|depth| depth));
    near((right - short).in_inches(), 0.5, 0.002);
    // Nothing in the program takes that least depth by itself.
    let mut bare = schedule_40(|depth| depth);
    bare.fittings.clear();
    assert!(matches!(figure(&bare), Err(Problem::NotMeasured { .. })));
}

/// Steel, 1/2 in, 20 in between two elbows of 1 1/8 in (that one from memory): 18.82 in by B1.20.1, about 18 13/16; by a
/// table that rounds the make-up to 7/16, 18 5/8.
#[test]
fn threaded_pipe_by_two_tables() {
    let by = (Length::inches(20), Mark::Centre, Mark::Centre);
    let mut ask = between(Pipe::Steel, Size::Half, Kind::Bend, Kind::Bend, by);
    let bend = (Family::Steel, Kind::Bend, BEND);
    let elbow = fitting(bend, Size::Half, inches(0, 44), inches(0, 28));
    assert_eq!(elbow.face, inches(1, 8));
    // Nobody measures how far a thread goes in: the standard's length stands.
    ask.fittings = vec![Measured {
        depth: None,
        ..elbow
    }];
    near(cuts(&ask)[0], 18.82, 0.005);
    ask.fittings = vec![elbow];
    assert_eq!(one(&ask), inches(18, 40));
    let thread = thread(Size::Half).unwrap();
    assert_eq!(thread.rounded.unwrap().value, inches(0, 28));
    near(thread.makeup().in_inches(), 0.534, 0.0005);
    near(thread.two_turns().in_inches(), 0.143, 0.0005);
}

/// ASME B1.20.1 as a distributor's page prints it: make-up and thread lengths; the page's 1.250 for the effective thread
/// of 3 in is a misprint, two others print 1.200.
#[test]
fn lengths_of_taper_threads() {
    for (size, makeup, effective) in [
        (Size::Half, 0.534, 0.5337),
        (Size::ThreeQuarters, 0.553, 0.5457),
        (Size::One, 0.661, 0.6828),
        (Size::OneQuarter, 0.681, 0.7068),
        (Size::OneHalf, 0.681, 0.7235),
        (Size::Two, 0.697, 0.7565),
        (Size::TwoHalf, 0.932, 1.1375),
        (Size::Three, 1.016, 1.200),
        (Size::Four, 1.094, 1.300),
    ] {
        let thread = thread(size).unwrap();
        near(thread.makeup().in_inches(), makeup, 0.0005);
        near(thread.effective.value.in_inches(), effective, 0.00005);
    }
    let three = thread(Size::Three).unwrap();
    assert_ne!(three.effective.value, Length::from_inches(1.250).unwrap());
    near(
        thread(Size::One).unwrap().two_turns().in_inches(),
        0.174,
        0.0005,
    );
}

/// Shoulder to shoulder and end to end are the pipe itself (textbook 2015, screen 312; army course).
#[test]
fn shoulders_and_ends_add_nothing() {
    for mark in [Mark::Shoulder, Mark::End] {
        let by = (Length::inches(30), mark, mark);
        let ask = between(
            Pipe::PvcDrain,
            Size::Two,
            Kind::SanitaryTee,
            Kind::SanitaryTee,
            by,
        );
        assert_eq!(one(&ask), Length::inches(30), "{mark:?}");
    }
}
