//! Tape arithmetic: spacing, centring, scales, squareness.
