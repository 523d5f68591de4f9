//! What other programs put on the clipboard: files by their names, or the pixels of a picture.

use std::path::PathBuf;
use std::rc::Rc;

use super::Desk;
use crate::app::{Command, PhotoCommand};

/// What is on the clipboard.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Pasted {
    /// Files.
    Files(Vec<PathBuf>),
    /// Pixels of four bytes, across and down.
    Pixels((u32, u32), Vec<u8>),
    /// Neither.
    Neither,
    /// It does not answer, in the system's words.
    Mute(String),
}

/// Looks at the clipboard.
pub type Clipboard = Rc<dyn Fn() -> Pasted>;

/// The clipboard of the system.
pub(super) fn system() -> Clipboard {
    Rc::new(|| look().unwrap_or_else(|why| Pasted::Mute(why.to_string())))
}

/// There it holds text alone.
#[cfg(target_os = "android")]
fn look() -> Result<Pasted, std::convert::Infallible> {
    Ok(Pasted::Neither)
}

#[cfg(not(target_os = "android"))]
fn look() -> Result<Pasted, arboard::Error> {
    use arboard::Error::{ClipboardNotSupported, ContentNotAvailable, ConversionFailure};
    let absent = |why: &arboard::Error| {
        matches!(
            why,
            ContentNotAvailable | ConversionFailure | ClipboardNotSupported
        )
    };
    let mut board = match arboard::Clipboard::new() {
        Ok(board) => board,
        // Without a display there is no clipboard either.
        Err(ClipboardNotSupported) => return Ok(Pasted::Neither),
        Err(why) => return Err(why),
    };
    // A program may answer the one question with nonsense, and the other well.
    let files = board.get().file_list();
    if let Ok(files) = &files
        && !files.is_empty()
    {
        return Ok(Pasted::Files(files.clone()));
    }
    let why = match board.get_image() {
        Ok(image) => {
            let side = |side: usize| u32::try_from(side).unwrap_or_default();
            let size = (side(image.width), side(image.height));
            return Ok(Pasted::Pixels(size, image.bytes.into_owned()));
        }
        Err(why) => why,
    };
    match [Some(why), files.err()]
        .into_iter()
        .flatten()
        .find(|why| !absent(why))
    {
        Some(why) => Err(why),
        None => Ok(Pasted::Neither),
    }
}

/// Takes in the files that the clipboard names, or the picture that it holds.
pub(super) fn paste(desk: &Rc<Desk>) {
    let text = desk.window.invoke_clipboard();
    let named: Vec<PathBuf> = text.lines().filter_map(|line| named(line.trim())).collect();
    let pasted = if named.is_empty() {
        let clipboard = Rc::clone(&desk.clipboard.borrow());
        clipboard()
    } else {
        Pasted::Files(named)
    };
    desk.act(|app| match pasted {
        Pasted::Files(files) => app.send(Command::Photo(PhotoCommand::Take(files))),
        Pasted::Pixels(size, rgba) => app.take_pasted(size, rgba),
        Pasted::Neither => {
            app.said = "No picture and no file is on the clipboard. Copy one, then paste.".into();
        }
        Pasted::Mute(why) => {
            app.said = format!(
                "The clipboard does not answer: {why}. Copy the picture again, or choose its file."
            );
        }
    });
}

/// A file by its path or its `file://` address.
fn named(line: &str) -> Option<PathBuf> {
    let path = match line.strip_prefix("file://") {
        Some(address) => PathBuf::from(unescaped(address)),
        None => PathBuf::from(line),
    };
    (!line.is_empty() && path.is_absolute() && path.exists()).then_some(path)
}

/// An address with its escaped bytes written out.
fn unescaped(address: &str) -> String {
    let mut bytes = Vec::with_capacity(address.len());
    let mut rest = address.as_bytes();
    while let Some((first, more)) = rest.split_first() {
        let hex = more.get(..2).and_then(|two| std::str::from_utf8(two).ok());
        let escaped = hex
            .filter(|_| *first == b'%')
            .and_then(|hex| u8::from_str_radix(hex, 16).ok());
        match escaped {
            Some(byte) => {
                bytes.push(byte);
                rest = &more[2..];
            }
            None => {
                bytes.push(*first);
                rest = more;
            }
        }
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pasted_line_is_a_path_or_an_address() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a wall.jpg");
        std::fs::write(&path, b"x").unwrap();
        let text = path.to_str().unwrap();
        assert_eq!(named(text), Some(path.clone()));
        let address = format!("file://{}", text.replace(' ', "%20"));
        assert_eq!(named(&address), Some(path));
        for other in [
            "",
            "a wall.jpg",
            "/nowhere/a.jpg",
            "file:///nowhere",
            "100%",
        ] {
            assert_eq!(named(other), None, "{other}");
        }
    }
}
