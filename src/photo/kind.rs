//! What a file is, by its first bytes and not by its name.

use std::io::{self, Read, Seek, SeekFrom};

/// A format of pictures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// JPEG, baseline or progressive.
    Jpeg,
    /// PNG.
    Png,
    /// WebP, lossy or lossless.
    WebP,
    /// HEIC, HEIF or AVIF: its facts are read, its pixels are not.
    Heic,
}

impl Kind {
    /// What bytes begin as; `None` where it is no picture that is read here.
    #[must_use]
    pub fn of(first: &[u8]) -> Option<Kind> {
        let brand = || first.get(8..12);
        match first {
            [0xFF, 0xD8, 0xFF, ..] => Some(Kind::Jpeg),
            [0x89, b'P', b'N', b'G', 0x0D, 0x0A, 0x1A, 0x0A, ..] => Some(Kind::Png),
            [b'R', b'I', b'F', b'F', ..] if brand() == Some(b"WEBP") => Some(Kind::WebP),
            [_, _, _, _, b'f', b't', b'y', b'p', ..] => {
                let known: [&[u8]; 7] = [
                    b"heic", b"heix", b"hevc", b"mif1", b"msf1", b"heim", b"avif",
                ];
                known.contains(&brand()?).then_some(Kind::Heic)
            }
            _ => None,
        }
    }

    /// What an open file is; it is left at its start.
    ///
    /// # Errors
    /// Where it cannot be read.
    pub fn of_file(file: &mut (impl Read + Seek)) -> io::Result<Option<Kind>> {
        file.seek(SeekFrom::Start(0))?;
        let mut first = Vec::with_capacity(16);
        file.take(16).read_to_end(&mut first)?;
        file.seek(SeekFrom::Start(0))?;
        Ok(Kind::of(&first))
    }

    /// How the names of such files end.
    #[must_use]
    pub fn extension(self) -> &'static str {
        match self {
            Kind::Jpeg => "jpg",
            Kind::Png => "png",
            Kind::WebP => "webp",
            Kind::Heic => "heic",
        }
    }

    /// Whether the end of a name is one of this kind's.
    #[must_use]
    pub fn is_called(self, extension: &str) -> bool {
        let lower = extension.to_ascii_lowercase();
        let also: &[&str] = match self {
            Kind::Jpeg => &["jpg", "jpeg", "jpe", "jfif"],
            Kind::Png => &["png"],
            Kind::WebP => &["webp"],
            Kind::Heic => &["heic", "heif", "hif", "avif"],
        };
        also.contains(&lower.as_str())
    }

    /// What it is called.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Kind::Jpeg => "JPEG",
            Kind::Png => "PNG",
            Kind::WebP => "WebP",
            Kind::Heic => "HEIC",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_what_it_begins_as() {
        let is = |first: &[u8]| Kind::of(first);
        assert_eq!(is(b"\xFF\xD8\xFF\xE1"), Some(Kind::Jpeg));
        assert_eq!(is(b"\x89PNG\r\n\x1a\n"), Some(Kind::Png));
        assert_eq!(is(b"RIFF\x10\0\0\0WEBPVP8 "), Some(Kind::WebP));
        assert_eq!(is(b"\0\0\0\x18ftypheic\0\0\0\0"), Some(Kind::Heic));
        assert_eq!(is(b"RIFF\x10\0\0\0WAVEfmt "), None);
        assert_eq!(is(b"\0\0\0\x18ftypmp42"), None);
        assert_eq!(is(b"%PDF-1.7"), None);
        assert_eq!(is(b""), None);
    }
}
