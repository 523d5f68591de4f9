//! A run as the room on the other side of the wall has it.

use super::{Ask, Direction, Lines, Way};

impl Direction {
    /// The same way in a mirror that exchanges left and right.
    #[must_use]
    pub const fn mirrored(self) -> Direction {
        match self {
            Direction::Left | Direction::Right => self.reversed(),
            other => other,
        }
    }
}

impl Way {
    /// The same way in a mirror that exchanges left and right.
    #[must_use]
    pub fn mirrored(self) -> Way {
        match self {
            Way::Along(way) => Way::Along(way.mirrored()),
            Way::Offset {
                along,
                to,
                angle,
                set,
                over,
            } => Way::Offset {
                along: along.mirrored(),
                to: to.mirrored(),
                angle,
                set,
                over: over.map(|(way, far)| (way.mirrored(), far)),
            },
        }
    }
}

impl Ask {
    /// The run with left and right exchanged, every length as it was: its pieces are cut the same.
    ///
    /// # Gives
    /// The mirrored run; twice is the same run again.
    /// # Source
    /// Plane geometry.
    /// # Example
    /// ```
    /// use storyrod::trades::pipe::{Ask, Direction};
    /// assert_eq!(Direction::Left.mirrored(), Direction::Right);
    /// assert_eq!(Ask::default().mirrored(), Ask::default());
    /// ```
    #[must_use]
    pub fn mirrored(&self) -> Ask {
        let mut run = self.clone();
        for leg in &mut run.legs {
            leg.way = leg.way.mirrored();
        }
        if let Some(place) = &mut run.closes {
            place.right = -place.right;
        }
        run.lines = run.lines.map(|lines| Lines {
            to: lines.to.mirrored(),
            ..lines
        });
        run
    }
}
