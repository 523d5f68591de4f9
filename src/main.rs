//! The `storyrod` program.

fn main() {}
