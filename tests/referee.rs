//! Other people's programs, against what is figured here.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

#[path = "referee/opencv_views.rs"]
mod opencv_views;
#[path = "referee/ortools_sticks.rs"]
mod ortools_sticks;
#[path = "referee/pillow_pictures.rs"]
mod pillow_pictures;
#[path = "referee/pint_units.rs"]
mod pint_units;
#[path = "referee/pipe_tubes.rs"]
mod pipe_tubes;
#[path = "referee/scipy_surveys.rs"]
mod scipy_surveys;
#[path = "referee/shapely_outlines.rs"]
mod shapely_outlines;
#[path = "referee/shapely_sheets.rs"]
mod shapely_sheets;
#[path = "referee/shapely_tiles.rs"]
mod shapely_tiles;
#[path = "referee/stick_jobs.rs"]
mod stick_jobs;
