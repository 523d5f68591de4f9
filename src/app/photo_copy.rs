//! Working copies of pictures on the screen, decoded behind its back.

use std::collections::VecDeque;
use std::fs::File;
use std::path::Path;
use std::sync::{Arc, PoisonError};

use super::photo_take::keep_copies;
use super::{App, Here};
use crate::photo::{Photo, Picture, WORKING, decode};
use crate::store::pictures::{copy_path, picture_path};

/// A working copy, and one of half its size for when it is shown small.
pub(super) struct Loaded {
    pub name: String,
    pub whole: Arc<Picture>,
    pub half: Arc<Picture>,
}

/// Copies on the screen, and the one that is being decoded.
#[derive(Default)]
pub(super) struct Copies {
    pub ready: VecDeque<Result<Arc<Loaded>, String>>,
    pub loading: Option<String>,
}

impl App {
    /// The copy of a picture for the screen; where it is not there yet it is decoded behind the screen's back.
    pub(super) fn copy_of(&self, at: usize) -> Option<Arc<Loaded>> {
        let photo = self.job.photos.get(at)?;
        let mut copies = self
            .surface
            .copies
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        let ready = copies.ready.iter().flatten();
        if let Some(ready) = ready.clone().find(|ready| ready.name == photo.picture) {
            return Some(Arc::clone(ready));
        }
        if copies.loading.is_some() {
            return None;
        }
        let folder = self.keeper.path()?.to_owned();
        copies.loading = Some(photo.picture.clone());
        let (photo, wake) = (Arc::clone(photo), self.keeper.wake());
        let place = Arc::clone(&self.surface.copies);
        std::thread::spawn(move || {
            let loaded = load(&folder, &photo);
            let mut copies = place.lock().unwrap_or_else(PoisonError::into_inner);
            copies.loading = None;
            copies.ready.push_back(loaded.map(Arc::new));
            while copies.ready.len() > 3 {
                copies.ready.pop_front();
            }
            drop(copies);
            if let Some(wake) = &*wake.lock().unwrap_or_else(PoisonError::into_inner) {
                wake();
            }
        });
        None
    }

    /// Why the last copy could not be shown.
    pub(super) fn copy_trouble(&self) -> Option<String> {
        let copies = self
            .surface
            .copies
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        copies.ready.back().and_then(|last| last.clone().err())
    }

    /// Waits for the copy that is being decoded.
    pub(super) fn wait_for_copy(&self) {
        if let Here::Photo(at) = self.here {
            let _ = self.copy_of(at);
        }
        let loading = || {
            let copies = self
                .surface
                .copies
                .lock()
                .unwrap_or_else(PoisonError::into_inner);
            copies.loading.is_some()
        };
        while loading() {
            std::thread::sleep(std::time::Duration::from_millis(2));
        }
    }
}

/// The working copy from its file, or from the picture itself, whose copies are then made again.
pub(super) fn load(folder: &Path, photo: &Photo) -> Result<Loaded, String> {
    let open = |path: Option<std::path::PathBuf>| File::open(path?).ok();
    let copy = open(copy_path(folder, &photo.picture, WORKING));
    let picture = copy.and_then(|mut file| decode(&mut file, WORKING).ok());
    let picture = match picture {
        Some((picture, _)) => Picture {
            original: photo.size,
            ..picture
        },
        None => {
            // Of a job that was handed over the picture may be there without its place alone.
            let names = [&photo.picture, &photo.stripped];
            let file = names
                .into_iter()
                .find_map(|name| open(picture_path(folder, name)));
            let mut file = file.ok_or("The picture is not among the job's pictures.")?;
            let (picture, _) = decode(&mut file, WORKING)
                .map_err(|_| "The picture does not read any more; its file is damaged.")?;
            // Made again next time where they cannot be kept.
            let _ = keep_copies(folder, &photo.picture, &picture);
            picture
        }
    };
    Ok(Loaded {
        name: photo.picture.clone(),
        half: Arc::new(picture.smaller(WORKING / 2)),
        whole: Arc::new(picture),
    })
}

impl Loaded {
    /// The working copy.
    pub fn picture(&self) -> &Picture {
        &self.whole
    }
}
