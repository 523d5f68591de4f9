//! Runs, leg by leg.
