//! The real screens, without a display: each place at every size, and a journey from an empty start.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "screens/harness.rs"]
mod harness;
#[path = "screens/journey.rs"]
mod journey;
#[path = "screens/photos.rs"]
mod photos;
#[path = "screens/places.rs"]
mod places;
