//! Why a picture cannot be taken in.

use std::io;

/// Why a picture cannot be taken in; the file it came from is left as it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Problem {
    /// There is nothing in it.
    Empty,
    /// It is none of the formats that are read here.
    NotAPicture,
    /// Its pixels are in a format that is not decoded here.
    Heic,
    /// It ends before the picture does.
    CutShort,
    /// What is in it is no picture of its format.
    Damaged,
    /// It has more pixels than are decoded.
    TooManyPixels {
        /// Across.
        width: u32,
        /// Down.
        height: u32,
        /// Most millions of pixels of such a file.
        most: u32,
    },
    /// The file is larger than is kept.
    TooLarge {
        /// Its length.
        bytes: u64,
        /// Most that is kept.
        most: u64,
    },
    /// It was written to while it was read.
    Changing,
    /// It was stopped.
    Stopped,
    /// The system refused.
    Disk(String),
}

impl Problem {
    /// A reader's error: a file that ends too soon is cut short.
    pub(super) fn of(why: &io::Error) -> Problem {
        match why.kind() {
            io::ErrorKind::UnexpectedEof => Problem::CutShort,
            // `Interrupted` would be tried again by whoever reads.
            io::ErrorKind::ConnectionAborted => Problem::Stopped,
            _ => Problem::Disk(why.to_string()),
        }
    }
}
