//! Job files: written whole, beside the old one, synced and renamed; never overwritten when they cannot be read.
