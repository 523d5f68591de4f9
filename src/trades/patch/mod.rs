//! A hole in gypsum board: how to mend it, where to cut, what to screw the piece to, and what it takes.
//!
//! Everything is measured in the wall's own coordinates: across from the left corner, up from the floor. Where the
//! place of the hole is not known, the hole's own lower left corner is the zero instead and [`Figure`] says so.

mod ask;
mod figure;

pub use ask::{Ask, Field, Hole, HoleShape, Method, Obstacle, Problem, WallFacts};
pub use figure::{Figure, Inspection, Look, Rect, Strip, StripKind, Wait};

/// How to mend the hole.
///
/// # Errors
/// Each [`Problem`] names the figure that no answer can be given for.
pub fn figure(ask: &Ask) -> Result<Figure, Problem> {
    let _ = ask;
    Err(Problem::Missing {
        field: Field::HoleWidth,
    })
}
