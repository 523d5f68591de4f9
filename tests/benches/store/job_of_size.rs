//! A job as people keep it, of any size, and the edits that they make to it.

use std::collections::VecDeque;
use std::sync::Arc;

use chrono::{DateTime, Duration, FixedOffset};
use storyrod::app::demo_job;
use storyrod::measure::{Length, Money};
use storyrod::site::{Finish, Id, OpeningRule};
use storyrod::store::Snapshot;
use storyrod::takeoff::{Ask, HandLine, Job, Stamps};
use storyrod::trades::patch::HoleShape;

use super::json;

/// As many as the program keeps.
const UNDO_STEPS: usize = 200;
const DEVICE: u64 = 0x1d0c_77e4_9a30_5b21;
/// What the pad asks for, and so what stands beside a line.
const LABELS: [&str; 12] = [
    "Wall A, corner to corner",
    "Wall B, corner to corner",
    "Wall C, corner to corner",
    "Wall D, corner to corner",
    "Floor to ceiling",
    "Wall B, door, from left corner",
    "Wall B, door, width",
    "Wall A, window, floor to lower edge",
    "Wall A, left corner to first stud centre",
    "Width of the hole",
    "Left corner to the hole",
    "Tape",
];

/// An entry as a row of a database has it.
#[cfg_attr(not(feature = "sqlite"), allow(dead_code))]
pub struct Row {
    pub kind: &'static str,
    pub id: Id,
    pub body: String,
}

/// A job with its history, edited again and again.
pub struct Edited {
    pub job: Arc<Job>,
    done: VecDeque<Arc<Job>>,
    stamps: Arc<Stamps>,
    edits: usize,
    chance: u64,
}

impl Edited {
    /// Two rooms, three figures, `lines` lines of the roll, and a full history of edits behind them.
    pub fn of(lines: usize) -> Edited {
        let mut job = demo_job(start());
        job.tasks.truncate(3);
        job.add_task(None, Ask::Paint(Box::default(), OpeningRule::Net));
        let mut edited = Edited {
            job: Arc::new(job),
            done: VecDeque::new(),
            stamps: Arc::default(),
            edits: 0,
            chance: 0x9e37_79b9_7f4a_7c15,
        };
        let mut job = (*edited.job).clone();
        // Every fourth edit of the history adds one.
        for _ in 0..lines.saturating_sub(UNDO_STEPS / 4) {
            edited.measure(&mut job);
        }
        edited.job = Arc::new(job);
        for _ in 0..UNDO_STEPS {
            edited.edit();
        }
        edited
    }

    /// A number below `below`, the same in every run.
    fn below(&mut self, below: i64) -> i64 {
        self.chance = self
            .chance
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.chance >> 33) as i64 % below
    }

    /// A measure, onto the roll as it was typed.
    fn measure(&mut self, job: &mut Job) -> Length {
        let label = LABELS[self.below(LABELS.len() as i64) as usize];
        let (feet, inches, marks) = (self.below(14), self.below(12), 1 + self.below(15));
        let (mut over, mut under) = (marks, 16);
        while over % 2 == 0 {
            (over, under) = (over / 2, under / 2);
        }
        let length = Length::inches(feet * 12 + inches) + Length::in_64(0, marks * 4);
        let typed = match feet {
            0 => format!("{inches} {over}/{under}"),
            _ => format!("{feet}' {inches} {over}/{under}"),
        };
        job.add_to_roll(label.to_owned(), typed, length);
        length
    }

    /// One edit, as the program takes it; gives the entries that it touched.
    pub fn edit(&mut self) -> Vec<Row> {
        let mut job = (*self.job).clone();
        let n = self.edits;
        self.edits += 1;
        let rows = match n % 4 {
            0 => {
                let length = self.measure(&mut job);
                job.rooms[1].walls[n / 4 % 4].length = Some(length);
                let line = &job.roll[job.roll.len() - 1];
                vec![row("line", line.id, json::line(line)), room(&job, 1)]
            }
            1 => {
                let wall = &mut job.rooms[0].walls[n / 4 % 6];
                wall.finish = match wall.finish {
                    Finish::Paint => Finish::Tile,
                    _ => Finish::Paint,
                };
                vec![room(&job, 0)]
            }
            2 => {
                if let Ask::Patch(ask, _) = &mut job.tasks[0].ask {
                    ask.hole.shape = HoleShape::Rectangle {
                        width: Length::in_64(6 + self.below(12), 8),
                        height: Length::in_64(5 + self.below(12), 1 + self.below(60)),
                    };
                }
                let task = &job.tasks[0];
                vec![row("figure", task.id, json::task(task))]
            }
            _ => {
                match job.buying.by_hand.first_mut() {
                    Some(line) => line.count = 1 + (n as u32 / 4) % 9,
                    None => job.buying.by_hand.push(HandLine {
                        id: Id::fresh(),
                        text: "Drop cloth".to_owned(),
                        count: 1,
                        price: Some(Money::minor(1_299)),
                    }),
                }
                vec![row("buying", Id::NONE, json::buying(&job.buying))]
            }
        };
        Arc::make_mut(&mut self.stamps).mark(DEVICE, &self.job, &job);
        self.done
            .push_back(std::mem::replace(&mut self.job, Arc::new(job)));
        if self.done.len() > UNDO_STEPS {
            self.done.pop_front();
        }
        rows
    }

    /// Every entry.
    #[cfg_attr(not(feature = "sqlite"), allow(dead_code))]
    pub fn rows(&self) -> Vec<Row> {
        let job = &self.job;
        let mut rows = vec![row("buying", Id::NONE, json::buying(&job.buying))];
        rows.extend((0..job.rooms.len()).map(|at| room(job, at)));
        rows.extend(
            job.tasks
                .iter()
                .map(|task| row("figure", task.id, json::task(task))),
        );
        rows.extend(
            job.roll
                .iter()
                .map(|line| row("line", line.id, json::line(line))),
        );
        rows
    }

    /// What is saved.
    pub fn snapshot(&self) -> Snapshot {
        Snapshot {
            job: Arc::clone(&self.job),
            done: self.done.iter().cloned().collect(),
            undone: Vec::new(),
            stamps: Arc::clone(&self.stamps),
        }
    }

    /// When the last edit was made: one every twenty seconds.
    pub fn now(&self) -> DateTime<FixedOffset> {
        start() + Duration::seconds(20 * self.edits as i64)
    }
}

fn row(kind: &'static str, id: Id, body: String) -> Row {
    Row { kind, id, body }
}

fn room(job: &Job, at: usize) -> Row {
    row("room", job.rooms[at].id, json::room(&job.rooms[at]))
}

fn start() -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap()
}
