//! What an entry is known by in every copy of a job.

use std::hash::{BuildHasher, Hasher};

/// The name of a room, a figure or a line, the same in every copy of the job, so that two copies can be brought
/// together entry by entry.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id(pub u64);

impl Id {
    /// Of an entry that belongs to no job yet.
    pub const NONE: Id = Id(0);

    /// One that no other entry has, on this device or another: 64 bits of chance.
    #[must_use]
    pub fn fresh() -> Id {
        // Each hasher of the standard library starts from random keys of the system.
        let drawn = std::collections::hash_map::RandomState::new()
            .build_hasher()
            .finish();
        Id(drawn.max(1))
    }
}
