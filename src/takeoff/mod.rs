//! From what the figures need to what is bought: merged, packed once over the whole job, priced.
