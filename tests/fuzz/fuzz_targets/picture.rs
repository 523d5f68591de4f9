//! Any bytes as a picture: shown or refused, never a panic, never more memory than there is.
#![no_main]

use libfuzzer_sys::fuzz_target;
use std::io::Cursor;
use storyrod::photo::decode;

fuzz_target!(|bytes: &[u8]| {
    for long in [64, 2048] {
        let _ = decode(&mut Cursor::new(bytes), long);
    }
});
