//! NIST Handbook 44, section 10.3, read in a copy: exactly halfway goes to the even graduation.

use storyrod::measure::{Length, Rounding};

/// 10 1/32 and 10 3/32 to the sixteenth are 10 and 10 1/8; the examples are our own.
#[test]
fn halfway_goes_to_the_even_sixteenth() {
    let sixteenth = Length::in_64(0, 4);
    let read =
        |sixty_fourths| Length::in_64(10, sixty_fourths).rounded(sixteenth, Rounding::Nearest);
    assert_eq!(read(2), Length::inches(10));
    assert_eq!(read(6), Length::in_64(10, 8));
}
