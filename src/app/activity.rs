//! The activity around the program on Android (`assets/android`): the camera, what lies on the device, and the way out. The
//! program asks it by files in folders that both know, and it answers by files.

use std::path::{Path, PathBuf};

use super::App;
use super::photo_import::pictures_in;

/// What the activity is asked for: a file of this name is the sign, which it takes away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Wish {
    /// A picture by the device's own camera.
    Picture,
    /// Pictures that lie on the device.
    Pictures,
    /// A file that was handed over.
    File,
}

impl Wish {
    const ALL: [Wish; 3] = [Wish::Picture, Wish::Pictures, Wish::File];

    const fn sign(self) -> &'static str {
        match self {
            Wish::Picture => "snap",
            Wish::Pictures => "pick",
            Wish::File => "fetch",
        }
    }

    pub(super) fn is_sign(name: &str) -> bool {
        Wish::ALL.iter().any(|wish| wish.sign() == name)
    }
}

/// The folders that the program shares with the activity.
#[derive(Clone, Debug)]
pub(super) struct Activity {
    /// Signs go in, pictures come back.
    camera: PathBuf,
    /// Files that were handed over to us.
    come: PathBuf,
    /// What is written there is put into the downloads of the device.
    go: PathBuf,
    /// How many files lay there that were handed over to us, when it was looked last.
    lay: usize,
}

impl App {
    /// Begins to work with the activity, whose folders are in this one. What it brought while the program was away is taken
    /// in: the system may end the program while the camera is open.
    pub fn use_activity(&mut self, files: &Path) {
        let activity = Activity {
            camera: files.join("camera"),
            come: files.join("in"),
            go: files.join("out"),
            lay: 0,
        };
        if let Err(why) = self.begin_with(&activity) {
            self.said = format!("The camera cannot be used: {why}");
        }
    }

    fn begin_with(&mut self, activity: &Activity) -> Result<(), String> {
        for folder in [&activity.camera, &activity.come, &activity.go] {
            std::fs::create_dir_all(folder).map_err(|why| why.to_string())?;
        }
        self.keeper.set_watched(Some(activity.camera.clone()))?;
        self.watch(&activity.camera)?;
        let lies = pictures_in(&activity.camera);
        if let Some(watching) = &mut self.watching {
            watching.brought = true;
            for path in lies {
                watching.notice(path);
            }
        }
        self.activity = Some(activity.clone());
        Ok(())
    }

    /// Whether there is an activity around the program: it has no folders of a person's then, and no commands.
    #[must_use]
    pub const fn has_activity(&self) -> bool {
        self.activity.is_some()
    }

    /// What belongs to the device goes on with the job that is open now.
    pub(super) fn take_devices(&mut self, from: &mut App) {
        self.camera = from.camera.take();
        self.watching = from.watching.take();
        self.activity = from.activity.take();
    }

    /// Whether another file was handed over to us since this was asked last.
    pub fn another_came_in(&mut self) -> bool {
        let Some(activity) = &mut self.activity else {
            return false;
        };
        let lies = std::fs::read_dir(&activity.come).map_or(0, Iterator::count);
        std::mem::replace(&mut activity.lay, lies) != lies
    }

    /// Asks the activity, where there is one.
    pub(super) fn ask_activity(&mut self, wish: Wish) -> bool {
        let Some(activity) = &self.activity else {
            return false;
        };
        if let Err(why) = std::fs::write(activity.camera.join(wish.sign()), b"1") {
            self.said = format!("This device was not asked: {why}.");
        }
        true
    }

    /// Where files go that are handed over, where the activity takes them on.
    pub(super) fn goes_out(&self) -> Option<&Path> {
        self.activity.as_ref().map(|activity| &*activity.go)
    }

    /// Where files come from that were handed over, where the activity brings them.
    pub(super) fn comes_in(&self) -> Option<&Path> {
        self.activity.as_ref().map(|activity| &*activity.come)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::photo_camera::is_of_its_own;
    use crate::app::photo_camera::tests::settle;
    use crate::app::{Command, Kept, PhotoCommand, Row, start};

    #[test]
    fn the_activity_is_asked_by_files_that_it_knows_and_that_are_no_pictures() {
        let folder = tempfile::tempdir().unwrap();
        let mut app = start(folder.path(), None, false).unwrap();
        assert!(!app.ask_activity(Wish::Picture));
        app.use_activity(folder.path());
        let camera = folder.path().join("camera");
        let java = include_str!("../../assets/android/java/app/storyrod/StoryrodActivity.java");
        for (wish, command) in [
            (Wish::Picture, Command::Photo(PhotoCommand::Snap)),
            (Wish::Pictures, Command::Photo(PhotoCommand::Pick)),
            (Wish::File, Command::Fetch),
        ] {
            app.send(command);
            let sign = camera.join(wish.sign());
            assert!(sign.exists(), "{wish:?}: {}", app.said);
            assert!(!is_of_its_own(&sign));
            assert!(java.contains(&format!("\"{}\"", wish.sign())));
        }
        for place in ["camera", "in", "out"] {
            assert!(java.contains(&format!("getFilesDir(), \"{place}\"")));
        }
    }

    #[test]
    fn nothing_is_offered_that_an_activity_does_not_have() {
        let folder = tempfile::tempdir().unwrap();
        let mut app = start(folder.path(), None, false).unwrap();
        let words = |app: &App| format!("{:?}", app.photos_page().rows);
        assert!(words(&app).contains("A folder …") && words(&app).contains("Its command"));
        app.use_activity(folder.path());
        let there = words(&app);
        for absent in [
            "A folder …",
            "Its command",
            "Its folder",
            "Drop pictures",
            "Paste",
        ] {
            assert!(!there.contains(absent), "{absent}");
        }
        assert!(there.contains("Pictures of this device …"));
    }

    #[test]
    fn what_was_brought_while_the_program_was_away_is_taken_in_and_goes_when_it_is_kept() {
        let folder = tempfile::tempdir().unwrap();
        let camera = folder.path().join("camera");
        std::fs::create_dir(&camera).unwrap();
        let png = crate::photo::pasted_png((30, 20), &[120; 30 * 20 * 4]).unwrap();
        let brought = camera.join("1764200000000.jpg");
        std::fs::write(&brought, &png).unwrap();
        let mut app = start(folder.path(), None, false).unwrap();
        app.use_activity(folder.path());
        settle(&mut app, |_| !brought.exists());
        assert_eq!(app.kept(), Kept::Yes);
        let name = &app.job.photos[0].picture;
        let job = app.keeper.path().unwrap();
        let kept = crate::store::pictures::picture_path(job, name);
        assert_eq!(std::fs::read(kept.unwrap()).unwrap(), png);
        // Brought once more, as after a stop before it was cleared away: it goes, and nothing is said.
        std::fs::write(&brought, &png).unwrap();
        drop(app);
        let mut app = start(folder.path(), None, false).unwrap();
        app.use_activity(folder.path());
        settle(&mut app, |_| !brought.exists());
        assert_eq!(app.job.photos.len(), 1);
        let told = app.taking_rows();
        assert!(
            !told.iter().any(|row| matches!(row, Row::Note { .. })),
            "{told:?}"
        );
    }

    #[test]
    fn a_job_goes_out_and_comes_in_by_the_folders_of_the_activity() {
        let folder = tempfile::tempdir().unwrap();
        let mut app = start(folder.path(), None, false).unwrap();
        app.use_activity(folder.path());
        app.send(Command::Share);
        let out: Vec<_> = std::fs::read_dir(folder.path().join("out"))
            .unwrap()
            .collect();
        let out = out[0].as_ref().unwrap().path();
        assert!(
            app.said.contains("downloads of this device"),
            "{}",
            app.said
        );
        let name = out.file_name().unwrap();
        assert!(!app.another_came_in());
        std::fs::rename(&out, folder.path().join("in").join(name)).unwrap();
        assert!(app.another_came_in() && !app.another_came_in());
        let shown = format!("{:?}", app.sharing_page().rows);
        assert!(shown.contains(&*name.to_string_lossy()), "{shown}");
    }
}
