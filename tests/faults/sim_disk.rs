//! A disk of which the power may go at any step, and which may fill up or fail at any call.

use std::collections::BTreeMap;
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard};

use storyrod::store::{Disk, Entry};

/// Bytes under one or more names: as they are, and as they are certain to be after a power cut.
#[derive(Clone, Debug, Default)]
struct File {
    live: Vec<u8>,
    synced: Vec<u8>,
    certain: bool,
}

/// A change of names that a power cut may undo.
#[derive(Clone, Debug)]
enum Pending {
    Name(PathBuf, usize),
    Renamed(PathBuf, PathBuf, usize),
    Gone(PathBuf),
}

impl Pending {
    fn folder(&self) -> &Path {
        let (Pending::Name(path, _) | Pending::Renamed(_, path, _) | Pending::Gone(path)) = self;
        path.parent().unwrap()
    }
    fn apply(&self, names: &mut BTreeMap<PathBuf, usize>) {
        match self {
            Pending::Name(path, file) => {
                names.insert(path.clone(), *file);
            }
            Pending::Renamed(from, to, file) => {
                names.remove(from);
                names.insert(to.clone(), *file);
            }
            Pending::Gone(path) => {
                names.remove(path);
            }
        }
    }
}

/// What becomes of bytes that were not synced.
#[derive(Clone, Copy, Debug)]
pub enum Unsynced {
    Kept,
    Dropped,
    Zeros,
}
pub const UNSYNCED: [Unsynced; 3] = [Unsynced::Kept, Unsynced::Dropped, Unsynced::Zeros];

#[derive(Clone, Debug, Default)]
struct Inside {
    files: Vec<File>,
    live: BTreeMap<PathBuf, usize>,
    synced: BTreeMap<PathBuf, usize>,
    pending: Vec<Pending>,
    folders: Vec<PathBuf>,
    /// Steps until the power goes: one for a call, and one for each byte written.
    left: Option<usize>,
    stopped: bool,
    steps: usize,
    calls: usize,
    /// The call that fails, how, and whether all after it do.
    fails: Option<(usize, ErrorKind, bool)>,
}

#[derive(Debug, Default)]
pub struct SimDisk(Mutex<Inside>);

impl SimDisk {
    pub fn new() -> SimDisk {
        SimDisk::default()
    }
    fn inside(&self) -> MutexGuard<'_, Inside> {
        self.0.lock().unwrap()
    }
    /// The same disk once more, everything on it certain, with nothing to fail.
    pub fn settled(&self) -> SimDisk {
        let mut inside = self.inside().clone();
        for file in &mut inside.files {
            file.synced.clone_from(&file.live);
            file.certain = true;
        }
        inside.synced = inside.live.clone();
        inside.pending.clear();
        inside.heal();
        SimDisk(Mutex::new(inside))
    }
    /// The same disk once more, with what is uncertain on it.
    pub fn same(&self) -> SimDisk {
        let mut inside = self.inside().clone();
        inside.heal();
        SimDisk(Mutex::new(inside))
    }
    pub fn stop_after(&self, steps: usize) {
        self.inside().left = Some(steps);
    }
    pub fn fail(&self, call: usize, how: ErrorKind, for_good: bool) {
        let mut inside = self.inside();
        let first = inside.calls + call;
        inside.fails = Some((first, how, for_good));
    }
    pub fn heal(&self) {
        self.inside().heal();
    }
    pub fn stopped(&self) -> bool {
        self.inside().stopped
    }
    pub fn steps(&self) -> usize {
        self.inside().steps
    }
    pub fn calls(&self) -> usize {
        self.inside().calls
    }
    pub fn names(&self) -> Vec<PathBuf> {
        self.inside().live.keys().cloned().collect()
    }
    pub fn damage(&self, path: &Path) {
        let mut inside = self.inside();
        let file = inside.live[path];
        inside.files[file].live[0] ^= 1;
    }
    /// How many names are uncertain.
    pub fn uncertain(&self) -> usize {
        self.inside().pending.len()
    }
    /// The disk after a power cut: of the uncertain names those are kept whose bit is set in `kept`.
    pub fn after_a_cut(&self, kept: usize, unsynced: Unsynced) -> SimDisk {
        let mut inside = self.inside().clone();
        let mut names = inside.synced.clone();
        for (at, change) in inside.pending.iter().enumerate() {
            if kept >> at & 1 == 1 {
                change.apply(&mut names);
            }
        }
        for file in &mut inside.files {
            if !file.certain {
                match unsynced {
                    Unsynced::Kept => {}
                    Unsynced::Dropped => file.live.clone_from(&file.synced),
                    Unsynced::Zeros => file.live.fill(0),
                }
            }
        }
        inside.live = names;
        SimDisk(Mutex::new(inside)).settled()
    }
}

impl Inside {
    fn heal(&mut self) {
        (self.left, self.stopped, self.fails) = (None, false, None);
    }
    /// Counts a call of so many steps; gives how many of them the power lasts for.
    fn begin(&mut self, steps: usize) -> io::Result<usize> {
        if self.stopped {
            return Err(ErrorKind::Other.into());
        }
        let call = self.calls;
        self.calls += 1;
        if let Some((first, how, for_good)) = self.fails
            && (call == first || for_good && call > first)
        {
            // Half of it was done.
            return if steps > 1 {
                Ok(steps / 2)
            } else {
                Err(how.into())
            };
        }
        let done = self.left.map_or(steps, |left| left.min(steps));
        if let Some(left) = &mut self.left {
            *left -= done;
        }
        self.steps += done;
        self.stopped = done < steps;
        if done == 0 {
            return Err(ErrorKind::Other.into());
        }
        Ok(done)
    }
    fn why(&self) -> io::Error {
        let how = self.fails.map_or(ErrorKind::Other, |(_, how, _)| how);
        how.into()
    }
    fn file(&self, path: &Path) -> io::Result<usize> {
        let file = self.live.get(path).copied();
        file.ok_or_else(|| ErrorKind::NotFound.into())
    }
    fn there(&self, folder: &Path) -> io::Result<()> {
        let there = self.folders.iter().any(|known| known == folder);
        there.then_some(()).ok_or(ErrorKind::NotFound.into())
    }
    fn change(&mut self, change: Pending) {
        change.apply(&mut self.live);
        self.pending.push(change);
    }
}

impl Disk for SimDisk {
    fn read(&self, path: &Path, most: u64) -> io::Result<Vec<u8>> {
        let mut inside = self.inside();
        inside.begin(1)?;
        let bytes = inside.files[inside.file(path)?].live.clone();
        if bytes.len() as u64 > most {
            return Err(ErrorKind::FileTooLarge.into());
        }
        Ok(bytes)
    }
    fn write_new(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        let mut inside = self.inside();
        let done = inside.begin(1 + bytes.len())?;
        inside.there(path.parent().unwrap())?;
        if inside.live.contains_key(path) {
            return Err(ErrorKind::AlreadyExists.into());
        }
        let file = inside.files.len();
        inside.files.push(File {
            live: bytes[..done - 1].to_vec(),
            ..File::default()
        });
        inside.change(Pending::Name(path.to_owned(), file));
        if done <= bytes.len() {
            return Err(inside.why());
        }
        Ok(())
    }
    fn sync_file(&self, path: &Path) -> io::Result<()> {
        let mut inside = self.inside();
        inside.begin(1)?;
        let file = inside.file(path)?;
        let file = &mut inside.files[file];
        file.synced.clone_from(&file.live);
        file.certain = true;
        Ok(())
    }
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        let mut inside = self.inside();
        inside.begin(1)?;
        assert_eq!(from.parent(), to.parent(), "a rename stays in its folder");
        let file = inside.file(from)?;
        inside.change(Pending::Renamed(from.to_owned(), to.to_owned(), file));
        Ok(())
    }
    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        let mut inside = self.inside();
        inside.begin(1)?;
        inside.there(to.parent().unwrap())?;
        if inside.live.contains_key(to) {
            return Err(ErrorKind::AlreadyExists.into());
        }
        let file = inside.file(from)?;
        inside.change(Pending::Name(to.to_owned(), file));
        Ok(())
    }
    fn remove(&self, path: &Path) -> io::Result<()> {
        let mut inside = self.inside();
        inside.begin(1)?;
        inside.file(path)?;
        inside.change(Pending::Gone(path.to_owned()));
        Ok(())
    }
    fn list(&self, folder: &Path) -> io::Result<Vec<Entry>> {
        let mut inside = self.inside();
        inside.begin(1)?;
        inside.there(folder)?;
        let names = inside.live.iter();
        Ok(names
            .filter(|(path, _)| path.parent() == Some(folder))
            .map(|(path, file)| Entry {
                name: path.file_name().unwrap().to_str().unwrap().to_owned(),
                bytes: inside.files[*file].live.len() as u64,
                modified: None,
            })
            .collect())
    }
    fn make_folder(&self, path: &Path) -> io::Result<()> {
        let mut inside = self.inside();
        inside.begin(1)?;
        for folder in path.ancestors() {
            if inside.there(folder).is_err() {
                inside.folders.push(folder.to_owned());
            }
        }
        Ok(())
    }
    fn sync_folder(&self, path: &Path) -> io::Result<()> {
        let mut inside = self.inside();
        inside.begin(1)?;
        inside.there(path)?;
        let pending = std::mem::take(&mut inside.pending);
        for change in pending {
            if change.folder() == path {
                change.apply(&mut inside.synced);
            } else {
                inside.pending.push(change);
            }
        }
        Ok(())
    }
    fn exists(&self, path: &Path) -> io::Result<bool> {
        let mut inside = self.inside();
        inside.begin(1)?;
        Ok(inside.live.contains_key(path) || inside.there(path).is_ok())
    }
}
