//! Tiles slid by a finger, things in the way moved by one, and chalk lines that moved with an edit.

use super::tile_page::Laid;
use super::{App, Chip, Command, Here, Row, Tone, pad};
use crate::geometry::{Point, Region};
use crate::measure::{Length, Rounding};
use crate::takeoff::Ask;
use crate::trades::tile::{self, Start, Thing};

/// What a finger has taken hold of, and where it is now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Slide {
    task: usize,
    what: Slid,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Slid {
    /// The pattern: where it started, and where it starts now.
    Tiles { held: Point, now: Point },
    /// Something in the way; the pattern lies still, its corner on the surface.
    Thing {
        n: usize,
        held: Thing,
        now: Thing,
        corner: Point,
    },
}

/// Chalk lines that moved because the best start is another one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct MovedLines {
    task: usize,
    /// The pattern's corner on the surface before.
    corner: Point,
    /// How far they moved, to the right and down.
    by: Point,
}

/// A tile figure before an edit.
pub(super) struct Before {
    task: usize,
    ask: tile::Ask,
    laid: Laid,
}

impl App {
    /// The ask of a figure as a finger has it now.
    pub(super) fn as_slid(&self, at: usize, ask: &mut tile::Ask) {
        let Some(slide) = self.slide.filter(|slide| slide.task == at) else {
            return;
        };
        match slide.what {
            Slid::Tiles { now, .. } => ask.start = Start::ByHand(now),
            Slid::Thing { n, now, corner, .. } => {
                if let Some(thing) = ask.things.get_mut(n) {
                    *thing = now;
                }
                keep_corner(ask, corner);
            }
        }
    }

    /// The surface of a tile figure; `None` where it is none, or not measured far enough.
    #[must_use]
    pub fn tile_surface(&self, at: usize) -> Option<Region> {
        Some(self.tile_ask(at)?.surface)
    }

    /// The lines to chalk of a tile figure.
    #[must_use]
    pub fn chalk_lines(&self, at: usize) -> Option<tile::Chalk> {
        let ask = self.tile_ask(at)?;
        self.tile_figure(&ask).as_ref().as_ref().ok()?.chalk
    }

    /// Whether a finger is sliding something: the sketch keeps its scale.
    #[must_use]
    pub fn is_sliding(&self) -> bool {
        self.slide.is_some() || self.is_dragging()
    }

    /// What lies at a place of the sketch: the place of a thing in the way, within a finger's reach.
    fn thing_at(ask: &tile::Ask, at: Point, reach: Length) -> Option<usize> {
        let corner = ask.surface.bounds()?.0;
        let near = |thing: &Thing| {
            let (least, most) = thing.outline(corner).bounds()?;
            let short = |low: Length, high: Length| (reach - (high - low).half()).max(Length::ZERO);
            let (x, y) = (short(least.x, most.x), short(least.y, most.y));
            let inside = at.x >= least.x - x
                && at.x <= most.x + x
                && at.y >= least.y - y
                && at.y <= most.y + y;
            inside.then_some(())
        };
        ask.things.iter().rposition(|thing| near(thing).is_some())
    }

    /// A tap on the sketch, not on a figure of it: a thing in the way shows its measures.
    pub fn poke(&mut self, at: Point, reach: Length) {
        if let Here::Wall(room, wall) = self.here {
            self.place_by_tap(room, wall, at, reach);
            return;
        }
        let Here::Task(task) = self.here else { return };
        if let Some(ask) = self.tile_ask(task) {
            self.picked = App::thing_at(&ask, at, reach).map(|n| (task, n));
        }
    }

    /// The thing in the way whose measures are shown: the one that was tapped, or the only one.
    pub(super) fn picked_thing(&self, at: usize, ask: &tile::Ask) -> Option<usize> {
        let tapped = self.picked.filter(|(task, _)| *task == at).map(|p| p.1);
        let only = (ask.things.len() == 1).then_some(0);
        tapped.filter(|n| *n < ask.things.len()).or(only)
    }

    /// A finger that came down at `at` slides what lies there, so far from where it was: a thing in the way, else the
    /// tiles; `done` when it lifts.
    pub fn slide(&mut self, at: Point, reach: Length, by: Point, done: bool) {
        if matches!(self.here, Here::Outline(_)) {
            self.drag_wall(by, done);
            return;
        }
        let Here::Task(task) = self.here else { return };
        let begun = match self.slide.filter(|slide| slide.task == task) {
            Some(slide) => Some(slide),
            None => self.take_hold(task, at, reach),
        };
        let Some(mut slide) = begun else { return };
        match &mut slide.what {
            Slid::Tiles { held, now } => *now = *held + by,
            Slid::Thing { held, now, .. } => {
                let mark = pad::mark(self.job.units);
                let to = |from: Length, by: Length| (from + by).rounded(mark, Rounding::Nearest);
                (now.from_left, now.from_top) = (to(held.from_left, by.x), to(held.from_top, by.y));
            }
        }
        self.slide = Some(slide);
        if done {
            self.let_go(task, slide.what);
        }
    }

    /// Slides the tiles by so much.
    pub(super) fn nudge(&mut self, at: usize, by: Point) {
        let figure = self.tile_ask(at).map(|ask| self.tile_figure(&ask));
        let Some(Ok(figure)) = figure.as_deref() else {
            return;
        };
        let now = figure.from + by;
        self.let_go(at, Slid::Tiles { held: now, now });
    }

    fn take_hold(&mut self, task: usize, at: Point, reach: Length) -> Option<Slide> {
        let ask = self.tile_ask(task)?;
        let laid = self.tile_figure(&ask);
        let figure = laid.as_ref().as_ref().ok()?;
        let what = match App::thing_at(&ask, at, reach) {
            Some(n) => {
                self.picked = Some((task, n));
                Slid::Thing {
                    n,
                    held: ask.things[n],
                    now: ask.things[n],
                    corner: figure.layout.start,
                }
            }
            None => Slid::Tiles {
                held: figure.from,
                now: figure.from,
            },
        };
        Some(Slide { task, what })
    }

    fn let_go(&mut self, task: usize, what: Slid) {
        let stands = self.tile_ask(task).map(|ask| self.tile_figure(&ask));
        self.slide = None;
        let refused = matches!(stands.as_deref(), Some(Err(_)) | None);
        match what {
            Slid::Thing { n, .. } if refused => {
                self.said = format!("No. {} cannot lie there. It is back where it was.", n + 1);
            }
            Slid::Thing { n, now, .. } => {
                self.edit(format!("No. {} moved by hand", n + 1), |job| {
                    if let Some(Ask::Tile(ask, _)) = job.tasks.get_mut(task).map(|t| &mut t.ask)
                        && let Some(thing) = ask.things.get_mut(n)
                    {
                        *thing = now;
                    }
                });
            }
            Slid::Tiles { now, .. } => self.edit("Start slid by hand", |job| {
                if let Some(Ask::Tile(ask, _)) = job.tasks.get_mut(task).map(|t| &mut t.ask) {
                    ask.start = Start::ByHand(now);
                }
            }),
        }
    }

    /// The tile figure on the screen, before an edit of it.
    pub(super) fn before_edit(&self) -> Option<Before> {
        let Here::Task(task) = self.here else {
            return None;
        };
        let ask = self.tile_ask(task)?;
        let laid = self.tile_figure(&ask);
        Some(Before { task, ask, laid })
    }

    /// After an edit: whether the search for the best start moved the lines, though nothing of the tile was changed.
    pub(super) fn lines_moved(&self, before: Option<Before>) -> Option<MovedLines> {
        let Before { task, ask, laid } = before?;
        let now = self.tile_ask(task)?;
        let same = |a: &tile::Ask, b: &tile::Ask| {
            (&a.tile, a.joint, a.pattern, a.turn, a.start, a.hold)
                == (&b.tile, b.joint, b.pattern, b.turn, b.start, b.hold)
                && a.sheet == b.sheet
        };
        if !same(&ask, &now) || !matches!(now.start, Start::Balanced(_) | Start::Fewest) {
            return None;
        }
        let figure = self.tile_figure(&now);
        let (Ok(old), Ok(new)) = (laid.as_ref(), figure.as_ref()) else {
            return None;
        };
        let (was, is) = (old.chalk?, new.chalk?);
        let by = Point::new(is.from_left - was.from_left, is.from_top - was.from_top);
        let seen = |by: Length| by.abs() > Length::nm(100_000);
        (seen(by.x) || seen(by.y)).then_some(MovedLines {
            task,
            corner: old.layout.start,
            by,
        })
    }

    /// Says that the lines moved, and offers the old ones.
    pub(super) fn moved_lines_row(&self, at: usize) -> Option<Row> {
        let moved = self.moved_lines.filter(|moved| moved.task == at)?;
        let part = |by: Length, more: &str, less: &str| {
            let seen = by.abs() > Length::nm(100_000);
            let way = if by.is_positive() { more } else { less };
            seen.then(|| format!("{} {way}", self.show(by.abs())))
        };
        let parts = [
            part(moved.by.x, "to the right", "to the left"),
            part(moved.by.y, "down", "up"),
        ];
        let parts: Vec<String> = parts.into_iter().flatten().collect();
        Some(Row::Note {
            tone: Tone::Caution,
            text: format!(
                "The lines to chalk moved {}: another start is the best one now.",
                parts.join(" and ")
            ),
            detail: String::new(),
            mend: Some(Chip::new(
                "Keep the old lines",
                false,
                Command::KeepLines(at),
            )),
        })
    }

    /// Back to the lines as they were, by hand from now on.
    pub(super) fn keep_lines(&mut self, at: usize) {
        let Some(moved) = self.moved_lines.take().filter(|moved| moved.task == at) else {
            return;
        };
        let Some(mut now) = self.tile_ask(at) else {
            return;
        };
        keep_corner(&mut now, moved.corner);
        self.edit("The old lines, by hand", |job| {
            if let Some(Ask::Tile(ask, _)) = job.tasks.get_mut(at).map(|task| &mut task.ask) {
                ask.start = now.start;
            }
        });
    }
}

/// Starts a pattern by hand so that its corner stays at a place of the surface, whatever the field's own corner is now.
fn keep_corner(ask: &mut tile::Ask, corner: Point) {
    if let Some(field) = tile::field_corner(ask) {
        ask.start = Start::ByHand(corner - field);
    }
}
