//! A picture without what its camera wrote of the place: the pixels stay as they were encoded.
//!
//! All that a camera or a program wrote beside the picture is left out, and a short EXIF of our own is put in with which
//! way up it is, when it was taken and the focal length. What follows the end of the picture goes too: cameras hide
//! second pictures and films there, with notes of their own.

use std::io::{self, Read, Seek, SeekFrom, Write};

use super::{Facts, Kind, Problem, facts};

/// A piece of the new file: bytes of the old one, or bytes of ours.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Piece {
    Kept { from: u64, length: u64 },
    New(Vec<u8>),
}

/// How a picture is written without its place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stripped {
    pieces: Vec<Piece>,
}

/// Says how a picture is written without what was written beside it.
///
/// # Errors
/// [`Problem`]; [`Problem::Heic`] and [`Problem::NotAPicture`] where this cannot be done.
pub fn strip(file: &mut (impl Read + Seek)) -> Result<Stripped, Problem> {
    let kind = Kind::of_file(file).map_err(|why| Problem::of(&why))?;
    let facts = facts(&mut io::BufReader::new(&mut *file));
    file.seek(SeekFrom::Start(0))
        .map_err(|why| Problem::of(&why))?;
    let mut scan = Scan {
        file: io::BufReader::with_capacity(1 << 16, file),
        at: 0,
        pieces: Vec::new(),
    };
    match kind {
        Some(Kind::Jpeg) => scan.jpeg(&facts),
        Some(Kind::Png) => scan.png(&facts),
        Some(Kind::WebP) => scan.webp(&facts),
        Some(Kind::Heic) => return Err(Problem::Heic),
        None => return Err(Problem::NotAPicture),
    }
    .map_err(|why| match why.kind() {
        io::ErrorKind::InvalidData => Problem::Damaged,
        _ => Problem::of(&why),
    })?;
    Ok(Stripped {
        pieces: scan.pieces,
    })
}

impl Stripped {
    /// Writes the picture from the file that it was read from.
    ///
    /// # Errors
    /// Where either refuses.
    pub fn write(&self, from: &mut (impl Read + Seek), to: &mut impl Write) -> io::Result<()> {
        for piece in &self.pieces {
            match piece {
                Piece::New(bytes) => to.write_all(bytes)?,
                Piece::Kept { from: at, length } => {
                    from.seek(SeekFrom::Start(*at))?;
                    if io::copy(&mut (&mut *from).take(*length), to)? != *length {
                        return Err(io::ErrorKind::UnexpectedEof.into());
                    }
                }
            }
        }
        Ok(())
    }
}

struct Scan<R> {
    file: io::BufReader<R>,
    at: u64,
    pieces: Vec<Piece>,
}

fn odd() -> io::Error {
    io::ErrorKind::InvalidData.into()
}

impl<R: Read + Seek> Scan<R> {
    fn bytes<const N: usize>(&mut self) -> io::Result<[u8; N]> {
        let mut bytes = [0; N];
        self.file.read_exact(&mut bytes)?;
        self.at += N as u64;
        Ok(bytes)
    }
    fn skip(&mut self, by: u64) -> io::Result<()> {
        self.file.seek_relative(by as i64)?;
        self.at += by;
        Ok(())
    }
    /// Keeps what lies between a place and here.
    fn keep(&mut self, from: u64) {
        let length = self.at - from;
        match self.pieces.last_mut() {
            Some(Piece::Kept {
                from: start,
                length: long,
            }) if *start + *long == from => {
                *long += length;
            }
            _ if length > 0 => self.pieces.push(Piece::Kept { from, length }),
            _ => {}
        }
    }

    /// Segments up to the end of the picture; JFIF, colour profile and Adobe's transform stay of what applications wrote.
    fn jpeg(&mut self, facts: &Facts) -> io::Result<()> {
        self.bytes::<2>()?;
        self.keep(0);
        let mut own = Some(exif_segment(facts));
        loop {
            let from = self.at;
            let mut code = self.bytes::<2>()?;
            // A marker may be filled up before.
            while code == [0xFF, 0xFF] {
                code = [0xFF, self.bytes::<1>()?[0]];
            }
            let [0xFF, code] = code else {
                return Err(odd());
            };
            if code == 0xD9 {
                self.keep(from);
                return Ok(());
            }
            if matches!(code, 0x01 | 0xD0..=0xD7) {
                self.keep(from);
                continue;
            }
            let length = u64::from(u16::from_be_bytes(self.bytes()?));
            let mut name = [0; 12];
            let named = (length.saturating_sub(2)).min(12) as usize;
            self.file.read_exact(&mut name[..named])?;
            self.at += named as u64;
            let rest = (length.checked_sub(2).ok_or_else(odd)?) - named as u64;
            self.skip(rest)?;
            let ours = match code {
                0xE0 | 0xEE => true,
                0xE2 => name.starts_with(b"ICC_PROFILE\0"),
                0xE1..=0xEF | 0xFE => false,
                _ => true,
            };
            // Ours stands where readers look for it: after JFIF, before all that is needed to decode.
            if !matches!(code, 0xE0..=0xEF | 0xFE)
                && let Some(own) = own.take()
            {
                self.pieces.push(Piece::New(own));
            }
            if ours {
                self.keep(from);
            }
            if code == 0xDA {
                let from = self.at;
                self.scan_data()?;
                self.keep(from);
            }
        }
    }

    /// Runs through the data of a scan, up to the marker after it.
    fn scan_data(&mut self) -> io::Result<()> {
        use io::BufRead as _;
        let mut after_ff = false;
        loop {
            let held = self.file.fill_buf()?;
            if held.is_empty() {
                return Err(io::ErrorKind::UnexpectedEof.into());
            }
            let mut ends = None;
            for (n, byte) in held.iter().enumerate() {
                if after_ff && !matches!(byte, 0 | 0xD0..=0xD7 | 0xFF) {
                    ends = Some(n);
                    break;
                }
                after_ff = *byte == 0xFF;
            }
            let read = ends.unwrap_or(held.len());
            self.file.consume(read);
            self.at += read as u64;
            if ends.is_some() {
                // Back to the marker's first byte.
                self.file.seek_relative(-1)?;
                self.at -= 1;
                return Ok(());
            }
        }
    }

    /// Chunks up to `IEND`; of the ancillary ones those stay that are needed to show it.
    fn png(&mut self, facts: &Facts) -> io::Result<()> {
        const SHOWN: [&[u8; 4]; 9] = [
            b"tRNS", b"cHRM", b"gAMA", b"iCCP", b"sRGB", b"sBIT", b"bKGD", b"pHYs", b"cICP",
        ];
        self.bytes::<8>()?;
        self.keep(0);
        loop {
            let from = self.at;
            let length = u64::from(u32::from_be_bytes(self.bytes()?));
            let name: [u8; 4] = self.bytes()?;
            self.skip(length)?;
            self.bytes::<4>()?;
            let critical = name[0] & 0x20 == 0;
            if critical || SHOWN.contains(&&name) {
                self.keep(from);
            }
            if &name == b"IHDR" {
                self.pieces
                    .push(Piece::New(png_chunk(*b"eXIf", &tiff(facts))));
            }
            if &name == b"IEND" {
                return Ok(());
            }
        }
    }

    /// Chunks of the RIFF; the flags that said of EXIF and XMP say so no longer, and a plain picture stays plain.
    fn webp(&mut self, facts: &Facts) -> io::Result<()> {
        let [_, _, _, _, size @ ..] = self.bytes::<8>()?;
        let end = 8 + u64::from(u32::from_le_bytes(size));
        self.bytes::<4>()?;
        let mut extended = None;
        while self.at + 8 <= end {
            let from = self.at;
            let name: [u8; 4] = self.bytes()?;
            let length = u64::from(u32::from_le_bytes(self.bytes()?));
            if &name == b"VP8X" {
                let mut head: [u8; 10] = self.bytes()?;
                // Bit 3 says EXIF, bit 2 XMP.
                head[0] = (head[0] & !0b0000_0100) | 0b0000_1000;
                self.skip(length.checked_sub(10).ok_or_else(odd)?)?;
                extended = Some(head);
                continue;
            }
            self.skip(length + length % 2)?;
            if !matches!(&name, b"EXIF" | b"XMP ") {
                self.keep(from);
            }
        }
        let kept = std::mem::take(&mut self.pieces);
        let mut body = Vec::new();
        if let Some(head) = extended {
            body.push(Piece::New(webp_chunk(*b"VP8X", &head)));
        }
        body.extend(kept);
        if extended.is_some() {
            body.push(Piece::New(webp_chunk(*b"EXIF", &tiff(facts))));
        }
        let long: u64 = body.iter().map(Piece::length).sum::<u64>() + 4;
        let mut head = b"RIFF".to_vec();
        head.extend(u32::try_from(long).map_err(|_| odd())?.to_le_bytes());
        head.extend(b"WEBP");
        self.pieces.push(Piece::New(head));
        self.pieces.extend(body);
        Ok(())
    }
}

impl Piece {
    fn length(&self) -> u64 {
        match self {
            Piece::Kept { length, .. } => *length,
            Piece::New(bytes) => bytes.len() as u64,
        }
    }
}

fn png_chunk(name: [u8; 4], body: &[u8]) -> Vec<u8> {
    let mut chunk = (body.len() as u32).to_be_bytes().to_vec();
    chunk.extend(name);
    chunk.extend(body);
    let sum = crc32fast::hash(&chunk[4..]);
    chunk.extend(sum.to_be_bytes());
    chunk
}

fn webp_chunk(name: [u8; 4], body: &[u8]) -> Vec<u8> {
    let mut chunk = name.to_vec();
    chunk.extend((body.len() as u32).to_le_bytes());
    chunk.extend(body);
    if body.len() % 2 == 1 {
        chunk.push(0);
    }
    chunk
}

fn exif_segment(facts: &Facts) -> Vec<u8> {
    let tiff = tiff(facts);
    let mut segment = vec![0xFF, 0xE1];
    segment.extend((tiff.len() as u16 + 8).to_be_bytes());
    segment.extend(b"Exif\0\0");
    segment.extend(tiff);
    segment
}

/// One field of a directory: tag, type, count and its bytes.
type Field = (u16, u16, u32, Vec<u8>);

/// A directory that begins at a place of the file, and what does not fit in it behind it; the next one is none.
fn directory(fields: &[Field], at: usize) -> Vec<u8> {
    let mut bytes = (fields.len() as u16).to_be_bytes().to_vec();
    let mut behind = Vec::new();
    let start = at + 2 + 12 * fields.len() + 4;
    for (tag, kind, count, value) in fields {
        bytes.extend(tag.to_be_bytes());
        bytes.extend(kind.to_be_bytes());
        bytes.extend(count.to_be_bytes());
        if value.len() <= 4 {
            let mut value = value.clone();
            value.resize(4, 0);
            bytes.extend(value);
        } else {
            bytes.extend(((start + behind.len()) as u32).to_be_bytes());
            behind.extend(value);
            if behind.len() % 2 == 1 {
                behind.push(0);
            }
        }
    }
    bytes.extend([0; 4]);
    bytes.extend(behind);
    bytes
}

/// An EXIF of our own: which way up, when, the focal length. No place, no maker, no number of the camera.
fn tiff(facts: &Facts) -> Vec<u8> {
    const ASCII: u16 = 2;
    const SHORT: u16 = 3;
    const LONG: u16 = 4;
    const RATIONAL: u16 = 5;
    let text = |text: String| {
        let mut bytes = text.into_bytes();
        bytes.push(0);
        bytes
    };
    let mut more: Vec<Field> = Vec::new();
    if let Some(taken) = facts.taken {
        let when = text(taken.local.format("%Y:%m:%d %H:%M:%S").to_string());
        more.push((0x9003, ASCII, when.len() as u32, when));
        if let Some(offset) = taken.offset {
            let offset = text(offset.to_string());
            more.push((0x9011, ASCII, offset.len() as u32, offset));
        }
    }
    if let Some(focal) = facts.focal {
        let mut value = ((focal * 1000.0).round() as u32).to_be_bytes().to_vec();
        value.extend(1000u32.to_be_bytes());
        more.push((0x920A, RATIONAL, 1, value));
    }
    if let Some(focal) = facts.focal_35 {
        let value = (focal.round() as u16).to_be_bytes().to_vec();
        more.push((0xA405, SHORT, 1, value));
    }
    let turn = vec![0, facts.turn.number()];
    let mut first: Vec<Field> = vec![(0x0112, SHORT, 1, turn)];
    let mut bytes = b"MM\0*\0\0\0\x08".to_vec();
    if more.is_empty() {
        bytes.extend(directory(&first, 8));
    } else {
        let after = 8 + 2 + 12 * 2 + 4;
        first.push((0x8769, LONG, 1, (after as u32).to_be_bytes().to_vec()));
        bytes.extend(directory(&first, 8));
        bytes.extend(directory(&more, after));
    }
    bytes
}
