//! The real screens, without a display: each place at every size, and a journey from an empty start.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "screens/cuts.rs"]
mod cuts;
#[path = "screens/fingers.rs"]
mod fingers;
#[path = "screens/harness.rs"]
mod harness;
#[path = "screens/journey.rs"]
mod journey;
#[path = "screens/outlines.rs"]
mod outlines;
#[path = "screens/photos.rs"]
mod photos;
#[path = "screens/pipes.rs"]
mod pipes;
#[path = "screens/places.rs"]
mod places;
#[path = "screens/steps.rs"]
mod steps;
#[path = "screens/survey.rs"]
mod survey;
#[path = "screens/system.rs"]
mod system;
