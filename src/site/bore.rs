//! Holes and notches in studs and joists, against their limits.

use crate::handbook::{Cite, Sourced, framing as book};
use crate::measure::{Length, Rounding};

/// What is bored or notched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Member {
    /// A stud.
    Stud {
        /// From face to face of the wall.
        depth: Length,
        /// It bears, stands in an outside wall, or nobody knows.
        bearing: bool,
        /// There are two of them side by side, and no more than two such in a row are bored.
        doubled: bool,
    },
    /// A joist of sawn wood.
    Joist {
        /// From its lower to its upper edge.
        depth: Length,
    },
    /// An engineered joist or a truss: its maker or an engineer says what may be cut.
    Engineered {
        /// From its lower to its upper edge.
        depth: Length,
    },
}

/// What is wrong with a hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// It is larger than this.
    TooLarge(Length),
    /// Less wood than this is left at its edge.
    NearEdge(Length),
    /// Nothing may be cut without the maker or an engineer.
    AskMaker,
}

/// The hole that a pipe so far across is put through: with room, to the next 1/8 in on sale.
///
/// # Source
/// Common practice, no published source: [`HOLE_ROOM`](book::HOLE_ROOM).
/// # Example
/// ```
/// use storyrod::{measure::Length, site::hole_for};
/// assert_eq!(hole_for(Length::in_64(2, 24)), Length::in_64(2, 32));
/// ```
#[must_use]
pub fn hole_for(outside: Length) -> Length {
    (outside + book::HOLE_ROOM.value).rounded(Length::in_64(0, 8), Rounding::Cover)
}

impl Member {
    /// From face to face, or from edge to edge.
    #[must_use]
    pub fn depth(self) -> Length {
        match self {
            Member::Stud { depth, .. } | Member::Joist { depth } | Member::Engineered { depth } => {
                depth
            }
        }
    }

    /// The largest hole, exact; `None` where only the maker or an engineer says.
    ///
    /// # Source
    /// [`STUD_HOLE`](book::STUD_HOLE), [`STUD_HOLE_BEARING`](book::STUD_HOLE_BEARING), [`JOIST_HOLE`](book::JOIST_HOLE).
    ///
    /// # Example
    /// ```
    /// use storyrod::{measure::Length, site::Member};
    /// let stud = Member::Stud { depth: Length::in_64(3, 32), bearing: true, doubled: false };
    /// assert_eq!(stud.largest_hole(), Length::from_inches(1.4));
    /// ```
    #[must_use]
    pub fn largest_hole(self) -> Option<Length> {
        self.hole_rule().map(|rule| self.share(rule))
    }

    /// The rule of the largest hole.
    #[must_use]
    pub fn hole_rule(self) -> Option<&'static Sourced<book::Share>> {
        match self {
            Member::Stud {
                bearing: true,
                doubled: false,
                ..
            } => Some(&book::STUD_HOLE_BEARING),
            Member::Stud { .. } => Some(&book::STUD_HOLE),
            Member::Joist { .. } => Some(&book::JOIST_HOLE),
            Member::Engineered { .. } => None,
        }
    }

    /// The deepest notch, exact, in a joist outside the middle third of its span; `None` where only the maker or an
    /// engineer says.
    #[must_use]
    pub fn deepest_notch(self) -> Option<Length> {
        self.notch_rule().map(|rule| self.share(rule))
    }

    /// The rule of the deepest notch.
    #[must_use]
    pub fn notch_rule(self) -> Option<&'static Sourced<book::Share>> {
        match self {
            Member::Stud { bearing: true, .. } => Some(&book::STUD_NOTCH_BEARING),
            Member::Stud { .. } => Some(&book::STUD_NOTCH),
            Member::Joist { .. } => Some(&book::JOIST_NOTCH),
            Member::Engineered { .. } => None,
        }
    }

    fn share(self, rule: &Sourced<book::Share>) -> Length {
        let (over, under) = rule.value;
        Length::nm(self.depth().as_nm().saturating_mul(over) / under)
    }

    /// How much wood stays beside a hole.
    #[must_use]
    pub fn edge_rule(self) -> &'static Sourced<Length> {
        match self {
            Member::Stud { .. } => &book::STUD_EDGE,
            Member::Joist { .. } | Member::Engineered { .. } => &book::JOIST_EDGE,
        }
    }

    /// Where the centre of a hole may stand, from one face or from the lower edge; `None` where no place is within the
    /// limits.
    ///
    /// `from = edge + hole/2`, `to = depth − edge − hole/2`
    ///
    /// # Source
    /// [`STUD_EDGE`](book::STUD_EDGE), [`JOIST_EDGE`](book::JOIST_EDGE) and the largest hole.
    ///
    /// # Example
    /// ```
    /// use storyrod::{measure::Length, site::Member};
    /// let joist = Member::Joist { depth: Length::in_64(9, 16) };
    /// let place = joist.centres(Length::in_64(2, 32));
    /// assert_eq!(place, Some((Length::in_64(3, 16), Length::inches(6))));
    /// ```
    #[must_use]
    pub fn centres(self, hole: Length) -> Option<(Length, Length)> {
        let most = self.largest_hole()?;
        let from = self.edge_rule().value + hole.half();
        let to = self.depth() - from;
        (hole <= most && from <= to).then_some((from, to))
    }

    /// What is wrong with a hole whose centre stands so far from one face or from the lower edge.
    #[must_use]
    pub fn faults(self, hole: Length, centre: Length) -> Vec<Fault> {
        let Some(most) = self.largest_hole() else {
            return vec![Fault::AskMaker];
        };
        let mut faults = Vec::new();
        if hole > most {
            faults.push(Fault::TooLarge(most));
        }
        let least = self.edge_rule().value;
        let beside = (centre - hole.half()).min(self.depth() - centre - hole.half());
        if beside < least {
            faults.push(Fault::NearEdge(least));
        }
        faults
    }

    /// What is wrong with the hole that a level pipe of this outside diameter is put through, its centre so far above the
    /// member's lower edge; `None` where the pipe passes below it or above it, and nothing is bored.
    #[must_use]
    pub fn crossed(self, outside: Length, hole: Length, centre: Length) -> Option<Vec<Fault>> {
        let half = outside.half();
        let clear = centre + half <= Length::ZERO || centre - half >= self.depth();
        (!clear).then(|| self.faults(hole, centre))
    }

    /// Whether each face, the near one first, wants a plate over a pipe of this outside diameter whose centre stands so far
    /// from the near one.
    #[must_use]
    pub fn plates(self, outside: Length, centre: Length) -> [bool; 2] {
        let within = book::PLATE_WITHIN.value;
        let near = centre - outside.half();
        let far = self.depth() - centre - outside.half();
        [near < within, far < within]
    }

    /// Where its limits stand.
    #[must_use]
    pub fn cite(self) -> Cite {
        self.hole_rule()
            .map_or(book::JOIST_EDGE.cite, |rule| rule.cite)
    }
}
