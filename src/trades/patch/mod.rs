//! A hole in gypsum board: how to mend it, where to cut, what to screw the piece to, and what it takes.
//!
//! Everything is measured in the wall's own coordinates: across from the left corner, up from the floor. Where the
//! place of the hole is not known, the hole's own lower left corner is the zero instead and [`Figure`] says so.

mod ask;
mod cut_back;
mod decide;
mod figure;
mod finish;
mod mend;
mod order;
mod place;
mod screws;
mod sheets;
#[cfg(test)]
mod tests;

pub use ask::{Air, Ask, Field, Hole, HoleShape, Method, Obstacle, Problem, WallFacts};
pub use cut_back::MARGIN;
pub use decide::adhesive_patch;
pub use figure::{Figure, Inspection, Look, Rect, Strip, StripKind, Wait};
pub use finish::{compound_for, tape_round};
pub use screws::{screws_in_a_sheet, screws_on_a_support};
pub use sheets::sheets_to_hang;

/// How to mend the hole: the method, the saw lines, the piece, what carries it, screws, tape, compound and waits.
///
/// A hole below 1 1/2 in is filled; up to 5 in a self-adhesive patch has its overlap; a larger one inside a bay gets a
/// piece on strips; any other is cut back to the nearest stud centres outside it, so that
/// `piece = opening − 2 × gap` lies on half of each stud's face.
///
/// # Inputs
/// `ask`: sizes up to 100 ft, gap up to 3/4 in, screw spacing 2 to 24 in.
///
/// # Gives
/// A [`Figure`]; findings the heaviest first. Where studs are not known, a cut back has no saw lines but tells what is
/// missing and how to look.
///
/// # Errors
/// Each [`Problem`] names the figure that no answer can be given for.
///
/// # Findings
/// A chosen method that cannot work and a fire-rated wall stop; wide screws, wide gaps, wide studs and cleats caution.
///
/// # Source
/// Tables in [`crate::handbook::gypsum`]; cutting to stud centres is common practice.
///
/// # Example
/// ```
/// use storyrod::trades::patch::{Ask, Method, figure};
/// assert_eq!(figure(&Ask::default()).map(|f| f.method), Ok(Method::BackedPatch));
/// ```
pub fn figure(ask: &Ask) -> Result<Figure, Problem> {
    mend::mend(ask, &place::place(ask)?)
}
