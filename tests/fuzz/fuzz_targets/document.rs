//! Any bytes as a document, a shared file, and JSON: read or refused, never a panic, never more memory than there is.
#![no_main]

use libfuzzer_sys::fuzz_target;
use storyrod::store::{Kind, document, json, share};

fuzz_target!(|bytes: &[u8]| {
    let _ = document::read(Kind::Job, bytes);
    let _ = document::salvage(bytes);
    let _ = share::read_share(bytes);
    if let Ok(text) = std::str::from_utf8(bytes) {
        let _ = json::from_json(text);
    }
});
