//! `handbook::pipe` against two tables of other programs: fluids 1.3.1 and `bd_warehouse` 0.4.0 (`pipe_tubes.py` wrote the
//! figures).

use storyrod::handbook::pipe::{Pipe, Size, tube};

const PIPES: [(&str, Pipe); 8] = [
    ("copper-k", Pipe::CopperK),
    ("copper-l", Pipe::CopperL),
    ("copper-m", Pipe::CopperM),
    ("pvc-drain", Pipe::PvcDrain),
    ("abs-drain", Pipe::AbsDrain),
    ("pvc-40", Pipe::Pvc40),
    ("cpvc", Pipe::Cpvc),
    ("steel", Pipe::Steel),
];

fn rows() -> impl Iterator<Item = (&'static str, Pipe, Size, f64, f64)> {
    let lines = include_str!("pipe_tubes.csv").lines();
    lines.filter(|line| !line.starts_with('#')).map(|line| {
        let [referee, pipe, size, outside, wall]: [&str; 5] =
            line.split(',').collect::<Vec<_>>().try_into().unwrap();
        let pipe = PIPES.iter().find(|(name, _)| *name == pipe).unwrap().1;
        let size = Size::ALL
            .into_iter()
            .find(|own| own.bare() == size)
            .unwrap();
        (
            referee,
            pipe,
            size,
            outside.parse().unwrap(),
            wall.parse().unwrap(),
        )
    })
}

/// Copper to 2 in, PVC to 4 in, CPVC and steel, as far as both have the size: the same to a thousandth of an inch. Steel
/// there is rounded to metric, up to 0.0016 in. DIFFERENCE: 1/2 in CPVC there is D2241, 0.060; tube of copper size is
/// D2846, 0.068 (that one from memory).
#[test]
fn outside_and_wall_agree() {
    let (mut same, mut differ) = (0, 0);
    for (referee, pipe, size, outside, wall) in rows() {
        let Some(ours) = tube(pipe, size) else {
            // Larger than a bathroom has, or of a size that is not sold for drains.
            assert!(
                size >= Size::TwoHalf || size < Size::Half || pipe == Pipe::PvcDrain,
                "{pipe:?} {size:?}"
            );
            continue;
        };
        let most = if pipe == Pipe::Steel { 0.0016 } else { 0.0005 };
        let off = (ours.outside.value.in_inches() - outside).abs();
        assert!(off <= most, "{referee} {pipe:?} {size:?}: {off}");
        if let Some(own) = ours.wall {
            let off = (own.value.in_inches() - wall).abs();
            if (pipe, size) == (Pipe::Cpvc, Size::Half) {
                assert!((off - 0.008).abs() < 0.0005);
                differ += 1;
            } else {
                assert!(off <= most, "{referee} {pipe:?} {size:?}: {off}");
                same += 1;
            }
        }
    }
    // 25 rows of copper; 9 and 5 of PVC and of fluids' again 9 and 5; 5 of CPVC beside the one; 9 of steel.
    assert_eq!((same, differ), (25 + 14 + 14 + 5 + 9, 1));
}
