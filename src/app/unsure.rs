//! What a figure comes to where a wall that it stands on is only an estimate.

use super::{App, Here, Keeper, Row, Screen, Tone, survey_words};
use crate::measure::Length;
use crate::site::{Room, What, elevation};
use crate::takeoff::Job;

/// A job, the figure, and its results with the uncertain walls shorter and longer.
pub(super) type Known = (Job, usize, [Vec<String>; 2]);

/// The walls and the ceiling that are estimates, each with its ±; of a figure on a wall whatever its outline was taken
/// from besides.
fn estimates(room: &Room, wall: Option<usize>) -> Vec<(What, Length)> {
    let whats = (0..room.walls.len()).map(What::Wall).chain([What::Ceiling]);
    let mut whats: Vec<What> = whats.collect();
    let stands = wall.and_then(|wall| elevation(room, wall));
    for taken in stands.iter().flat_map(|stands| &stands.taken) {
        if !whats.contains(&taken.what) {
            whats.push(taken.what);
        }
    }
    whats
        .into_iter()
        .filter(|what| room.measured(*what).is_some())
        .filter_map(|what| Some((what, room.mark(what).estimate?)))
        .collect()
}

impl App {
    /// Says on a figure's screen what it may come to, where its room has walls that are estimates: all of them longer,
    /// and all of them shorter, by their ±.
    pub(super) fn tell_unsure(&self, screen: &mut Screen) {
        let Here::Task(at) = self.here else { return };
        let room = self.job.tasks.get(at).and_then(|task| task.room);
        let Some((place, room)) = room.and_then(|room| Some((room, self.job.rooms.get(room)?)))
        else {
            return;
        };
        let unsure = estimates(room, self.wall_of(at).map(|(_, wall)| wall));
        if unsure.is_empty() || screen.strip.is_empty() {
            return;
        }
        let [shorter, longer] = self.with_estimates(at, place, &unsure);
        let mut ranges = Vec::new();
        for (n, big) in screen.strip.iter().enumerate() {
            if let (Some(least), Some(most)) = (shorter.get(n), longer.get(n))
                && (least != most || *least != big.value)
            {
                ranges.push(format!("{}: {least} to {most}", big.label));
            }
        }
        let names: Vec<String> = unsure
            .iter()
            .map(|(what, more_or_less)| {
                let name = survey_words::name(room, *what);
                format!("{name} is an estimate, ± {}", self.show(*more_or_less))
            })
            .collect();
        let text = if ranges.is_empty() {
            format!("{}. It changes nothing here.", names.join("; "))
        } else {
            format!("{}. So {}.", names.join("; "), ranges.join("; "))
        };
        screen.rows.insert(
            0,
            Row::Note {
                tone: Tone::Caution,
                text,
                detail: String::new(),
                mend: None,
            },
        );
    }

    /// The results of a figure with the uncertain walls shorter, and longer.
    fn with_estimates(
        &self,
        at: usize,
        place: usize,
        unsure: &[(What, Length)],
    ) -> [Vec<String>; 2] {
        let mut known = self.unsure.borrow_mut();
        if let Some((job, task, results)) = &*known
            && (job, *task) == (&self.job, at)
        {
            return results.clone();
        }
        let results = [-1, 1].map(|way| {
            let mut job = self.job.clone();
            let room = &mut job.rooms[place];
            for (what, more_or_less) in unsure {
                let read = room.measured(*what).unwrap_or_default();
                room.measure(*what, Some(read + *more_or_less * way), None);
            }
            let mut other = App::new(job, Keeper::nowhere());
            other.here = Here::Task(at);
            let strip = other.page().strip;
            strip.into_iter().map(|big| big.value).collect()
        });
        *known = Some((self.job.clone(), at, results.clone()));
        results
    }
}
