//! An estimate never enters a figure without saying so: the one gate through which every figure's estimates are found,
//! and the mark that its result, its working, its cuts, its line to buy and its sheets carry.
//!
//! The ways in: a length of its room that was estimated (a wall, the ceiling, an opening, a diagonal; for trim what stands
//! in the room, too); a fixed point that
//! a picture or a tap on the wall tells, where a run of pipe starts at it; and the tile figure whose layout grout or mortar is for.

use std::collections::BTreeMap;

use super::{App, Here, Keeper, Row, Screen, Tone, survey_words};
use crate::drawing::{Key, Pen, Role, Stroke};
use crate::measure::{Length, plain};
use crate::site::{self, Room, Size, What};
use crate::takeoff::{Ask, Job, Task};

/// A job, and of its figures what they come to with their estimates shorter and longer.
pub(super) type Known = (Job, BTreeMap<usize, Effect>);

/// What estimates do to a figure.
#[derive(Clone, Default)]
pub(super) struct Effect {
    /// Its results with all of them shorter, and longer.
    results: [Vec<String>; 2],
    /// Anything of its account changes with them.
    moves: bool,
}

/// Lengths that are estimates, each with its ±.
type Estimates = Vec<(What, Length)>;

/// The lengths of a room that are estimates; those of what stands in it where a figure stops at it.
fn estimates(room: &Room, fixtures: bool) -> Estimates {
    let marks = room.survey.marks.iter();
    marks
        .filter(|(what, _)| {
            let beside = matches!(what, What::Fixed(..) | What::Hidden(..))
                || matches!(what, What::Fixture(..)) && !fixtures;
            !beside && room.has(**what) && room.measured(**what).is_some()
        })
        .filter_map(|(what, mark)| Some((*what, mark.estimate?)))
        .collect()
}

impl App {
    /// The room of a figure, and what of it is an estimate.
    fn estimates_of(&self, task: &Task) -> Option<(usize, &Room, Estimates)> {
        let at = task.room?;
        let room = self.job.rooms.get(at)?;
        let found = estimates(room, matches!(task.ask, Ask::Trim(..)));
        (!found.is_empty()).then_some((at, room, found))
    }

    /// The ± of the point that a run of pipe starts at, where a picture or a tap on the wall tells it.
    fn start_unsure(&self, task: &Task) -> Option<Length> {
        let Ask::Pipe(_, Some(on)) = &task.ask else {
            return None;
        };
        let room = self.job.rooms.get(task.room?)?;
        let point = |point: &site::FixedPoint| Some(point.id) == on.point;
        let at = room.fixed.iter().position(point)?;
        let of = |size| room.mark(What::Fixed(at, size)).estimate;
        let placed = of(Size::FromLeft).max(of(Size::Up));
        match room.fixed[at].known {
            site::Known::Picture(give) => placed.max(Some(give)),
            site::Known::Tape => placed,
        }
    }

    /// The tile figure whose layout a figure is for.
    fn layout_of(&self, task: &Task) -> Option<usize> {
        let (Ask::Grout(_, Some(id)) | Ask::Mortar(_, Some(id))) = &task.ask else {
            return None;
        };
        self.job.tasks.iter().position(|task| task.id == *id)
    }

    /// The widest ± of what a figure stands on, where that changes anything of it: `estimated ±1/2"`.
    pub(super) fn estimated(&self, at: usize) -> Option<String> {
        let task = self.job.tasks.get(at)?;
        let own = self.estimates_of(task).map(|(_, _, found)| found);
        let lengths = own.into_iter().flatten().map(|(_, give)| give);
        let moves = lengths.max().filter(|_| self.effect(at).moves);
        let widest = moves.max(self.start_unsure(task));
        if let Some(give) = widest {
            return Some(format!("estimated ±{}", self.show(give)));
        }
        // A layout is a figure of its own and follows none.
        self.layout_of(task).and_then(|tile| self.estimated(tile))
    }

    /// What a figure is called wherever it is read, with the mark of the estimates that it stands on.
    pub(super) fn task_name(&self, at: usize) -> String {
        let name = self.bare_name(at);
        match self.estimated(at) {
            Some(mark) => format!("{name} ({mark})"),
            None => name,
        }
    }

    /// Says on a figure's screens that it stands on estimates, and what it may come to: all of them longer, and all of them
    /// shorter, by their ±.
    pub(super) fn tell_unsure(&self, screen: &mut Screen) {
        let (Here::Task(at) | Here::Working(at) | Here::Strip(at)) = self.here else {
            return;
        };
        let Some(task) = self.job.tasks.get(at) else {
            return;
        };
        if let Some(text) = self.unsure_lengths(at, task, screen) {
            screen.rows.insert(0, caution(text));
        }
        if let Some(give) = self.start_unsure(task) {
            let text = format!(
                "The point that it starts at is estimated ±{}, from a picture or by a tap. Its place and every hole are as unsure.",
                self.show(give)
            );
            screen.rows.insert(0, caution(text));
        }
        if let Some(mark) = self.layout_of(task).and_then(|tile| self.estimated(tile)) {
            let text = format!("The layout that it is for is {mark}.");
            screen.rows.insert(0, caution(text));
        }
        let Some(mark) = self.estimated(at) else {
            return;
        };
        if let Some(picture) = &mut screen.picture {
            picture.says = format!("{} ({})", picture.says, plain(&mark));
            picture.key.push(Key {
                fill: None,
                pen: Pen::solid(Role::Amber, Stroke::Hair),
                says: mark,
            });
        }
    }

    /// The lengths that are estimates, and what the figure may come to by them; its results are marked.
    fn unsure_lengths(&self, at: usize, task: &Task, screen: &mut Screen) -> Option<String> {
        let (_, room, unsure) = self.estimates_of(task)?;
        let effect = self.effect(at);
        let mut ranges = Vec::new();
        if matches!(self.here, Here::Task(_)) {
            let [shorter, longer] = &effect.results;
            for (n, big) in screen.strip.iter_mut().enumerate() {
                if let (Some(least), Some(most)) = (shorter.get(n), longer.get(n))
                    && (least != most || *least != big.value)
                {
                    ranges.push(format!("{}: {least} to {most}", big.label));
                    big.label.push_str(", estimated");
                }
            }
        }
        let names: Vec<String> = unsure
            .iter()
            .map(|(what, more_or_less)| {
                let name = survey_words::name(room, *what);
                format!(
                    "{name} is an estimate (estimated ±{})",
                    self.show(*more_or_less)
                )
            })
            .collect();
        let names = names.join("; ");
        Some(match (ranges.is_empty(), effect.moves) {
            (false, _) => format!("{names}. So {}.", ranges.join("; ")),
            (true, true) => format!("{names}."),
            (true, false) => format!("{names}. It changes nothing here."),
        })
    }

    /// What the estimates of a figure's room do to it.
    fn effect(&self, at: usize) -> Effect {
        let mut known = self.unsure.borrow_mut();
        if known.as_ref().is_none_or(|(job, _)| *job != self.job) {
            *known = Some((self.job.clone(), BTreeMap::new()));
        }
        if let Some(effect) = known.as_ref().and_then(|(_, effects)| effects.get(&at)) {
            return effect.clone();
        }
        drop(known);
        let effect = self.with_estimates(at).unwrap_or_default();
        if let Some((_, effects)) = &mut *self.unsure.borrow_mut() {
            effects.insert(at, effect.clone());
        }
        effect
    }

    fn with_estimates(&self, at: usize) -> Option<Effect> {
        let (place, _, unsure) = self.estimates_of(self.job.tasks.get(at)?)?;
        let now = self.account(at);
        let mut moves = false;
        let results = [-1, 1].map(|way| {
            let mut job = self.job.clone();
            let room = &mut job.rooms[place];
            for (what, more_or_less) in &unsure {
                let read = room.measured(*what).unwrap_or_default();
                room.measure(*what, Some(read + *more_or_less * way), None);
            }
            let mut other = App::new(job, Keeper::nowhere());
            other.here = Here::Task(at);
            let strip = other.page().strip;
            moves |= other.account(at) != now || other.pipe_holes(at) != self.pipe_holes(at);
            strip.into_iter().map(|big| big.value).collect()
        });
        Some(Effect { results, moves })
    }
}

fn caution(text: String) -> Row {
    Row::Note {
        tone: Tone::Caution,
        text,
        detail: String::new(),
        mend: None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::{Command, demo_job};
    use crate::site::{FixedKind, FixedPoint, Known as By, On};
    use crate::takeoff::TileOn;

    fn app(change: impl FnOnce(&mut Job)) -> App {
        let begun = chrono::DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
        let mut job = demo_job(begun);
        for task in &mut job.tasks {
            task.on_list = true;
        }
        change(&mut job);
        App::new(job, Keeper::nowhere())
    }

    /// All that a screen says.
    fn said(app: &mut App, here: Here) -> String {
        app.send(Command::Go(here));
        format!("{:?}", app.screen())
    }

    /// Where the mark of a figure has to stand: result, working, line to buy, cutting plan, and the packet's list and sketch.
    #[track_caller]
    fn check_marked(app: &mut App, at: usize, mark: &str) {
        let name = app.bare_name(at);
        assert!(said(app, Here::Task(at)).contains(mark), "{name}: result");
        assert!(
            said(app, Here::Working(at)).contains(mark),
            "{name}: working"
        );
        let needs = app
            .account(at)
            .map_or_else(Vec::new, |account| account.needs);
        if needs.is_empty() {
            return;
        }
        let marked = format!("{name} ({mark}");
        let all: Vec<String> = app
            .buying_lines()
            .into_iter()
            .map(|line| line.detail)
            .collect();
        assert!(
            all.iter().any(|detail| detail.contains(&marked)),
            "{name}: {all:?}"
        );
        let packet = app.packet().unwrap();
        let file = |end: &str| {
            let found = packet.iter().find(|(name, _)| name == end);
            found.map(|(_, bytes)| String::from_utf8_lossy(bytes).into_owned())
        };
        let list = file("buying-list.csv").unwrap();
        assert!(list.contains(&plain(&marked)), "{name}: {list}");
        if let Some(cuts) = file("cutting-plan.csv").filter(|cuts| cuts.contains(&name)) {
            assert!(cuts.contains(&plain(&marked)), "{name}: {cuts}");
        }
        if let Some(svg) = file(&format!("figure-{}.svg", at + 1)) {
            assert!(svg.contains(&plain(mark)), "{name}: sketch");
        }
        if needs
            .iter()
            .any(|need| crate::takeoff::is_cut(&need.material))
        {
            let cut = needs
                .iter()
                .filter(|need| crate::takeoff::is_cut(&need.material));
            for need in cut {
                let here = Here::Cutting(Some(need.material.clone()));
                assert!(said(app, here).contains(&marked), "{name}: cuts");
            }
        }
    }

    /// A room's wall that was estimated, through every figure of that room which changes with it.
    #[test]
    fn an_estimated_wall_marks_every_figure_that_stands_on_it() {
        let give = Length::inches(2);
        let mut app = app(|job| {
            let room = &mut job.rooms[0];
            let read = room.measured(What::Wall(0));
            room.measure(What::Wall(0), read, Some(give));
        });
        let mut marked = 0;
        for at in 0..app.job.tasks.len() {
            if app.effect(at).moves {
                check_marked(&mut app, at, "estimated ±2");
                marked += 1;
            } else {
                assert_eq!(app.task_name(at), app.bare_name(at));
            }
        }
        assert!(marked >= 2, "{marked}");
    }

    /// A run of pipe from a point that a picture tells; by tape it has no mark.
    #[test]
    fn a_fixed_point_from_a_picture_marks_the_pipe_that_starts_at_it() {
        for (known, marked) in [
            (Some(By::Tape), false),
            (Some(By::Picture(Length::inches(1))), true),
            (None, true),
        ] {
            let mut at = 0;
            let mut app = app(|job| {
                at = (0..job.tasks.len())
                    .find(|at| matches!(&job.tasks[*at].ask, Ask::Pipe(_, Some(on)) if matches!(on.on, On::Wall(_))))
                    .unwrap();
                let place = job.tasks[at].room.unwrap();
                let Ask::Pipe(_, Some(on)) = &mut job.tasks[at].ask else {
                    unreachable!()
                };
                let mut point = FixedPoint::new(FixedKind::Cold, on.on);
                (point.from_left, point.up) = (Some(Length::inches(52)), Some(Length::inches(8)));
                point.known = known.unwrap_or_default();
                on.point = Some(point.id);
                let room = &mut job.rooms[place];
                room.fixed.push(point);
                if known.is_none() {
                    // By a tap on the wall.
                    let what = What::Fixed(room.fixed.len() - 1, Size::FromLeft);
                    room.measure(what, Some(Length::inches(52)), Some(Length::inches(1)));
                }
            });
            if marked {
                check_marked(&mut app, at, "estimated ±1");
            } else {
                assert!(!said(&mut app, Here::Task(at)).contains("estimated ±"));
                assert_eq!(app.estimated(at), None);
            }
        }
    }

    /// Grout and mortar stand on what the tile figure stands on.
    #[test]
    fn what_follows_a_layout_takes_its_mark() {
        let mut app = app(|job| {
            let laid = |task: &&Task| matches!(task.ask, Ask::Tile(_, on) if on != TileOn::Own);
            let tile = job.tasks.iter().find(laid).unwrap().clone();
            let room = &mut job.rooms[tile.room.unwrap()];
            for wall in 0..room.walls.len() {
                let read = room.measured(What::Wall(wall));
                room.measure(What::Wall(wall), read, read.map(|_| Length::inches(3)));
            }
            job.tasks.push(Task {
                id: site::Id::fresh(),
                room: None,
                ask: Ask::Grout(Box::default(), Some(tile.id)),
                on_list: true,
            });
        });
        let follows: Vec<(usize, usize)> = (0..app.job.tasks.len())
            .filter_map(|at| Some((at, app.layout_of(&app.job.tasks[at])?)))
            .collect();
        assert!(!follows.is_empty());
        for (at, tile) in follows {
            assert!(app.estimated(tile).is_some());
            check_marked(&mut app, at, "estimated ±3");
        }
    }

    /// A length that is measured loses the mark.
    #[test]
    fn a_tape_takes_the_mark_off() {
        let mut app = app(|job| {
            let read = job.rooms[0].measured(What::Wall(0));
            job.rooms[0].measure(What::Wall(0), read, Some(Length::inches(2)));
        });
        let marked = |app: &App| (0..app.job.tasks.len()).any(|at| app.estimated(at).is_some());
        assert!(marked(&app));
        app.edit("", |job| {
            let read = job.rooms[0].measured(What::Wall(0));
            job.rooms[0].measure(What::Wall(0), read, None);
        });
        assert!(!marked(&app));
    }

    /// Wherever a figure that stands on estimates is named, in any list of any screen, its mark goes with its name.
    #[test]
    fn no_list_names_a_figure_without_its_mark() {
        let mut app = app(|job| {
            for room in &mut job.rooms {
                for what in [What::Wall(0), What::Wall(1), What::Ceiling] {
                    let read = room.measured(what);
                    room.measure(what, read, Some(Length::inches(2)));
                }
            }
        });
        let marked: Vec<usize> = (0..app.job.tasks.len())
            .filter(|at| app.estimated(*at).is_some())
            .collect();
        assert!(marked.len() >= 4, "{marked:?}");
        let mut places = vec![
            Here::Rooms,
            Here::Bench,
            Here::Buy,
            Here::More,
            Here::Sharing,
            Here::Photos,
            Here::Steps,
            Here::Cutting(None),
            Here::Profiles,
            Here::SideBySide(0, 1),
        ];
        for at in 0..app.job.tasks.len() {
            places.extend([
                Here::Task(at),
                Here::Working(at),
                Here::Compare(at),
                Here::Strip(at),
                Here::Piece(at, 0),
            ]);
            for need in app
                .account(at)
                .map_or_else(Vec::new, |account| account.needs)
            {
                places.push(Here::Line(crate::takeoff::LineKey::Material(
                    need.material.clone(),
                )));
                places.push(Here::Cutting(Some(need.material)));
            }
        }
        places.extend(app.steps().into_iter().map(|step| Here::Step(step.key)));
        for room in 0..app.job.rooms.len() {
            places.extend([Here::Room(room), Here::Survey(room), Here::Wall(room, 0)]);
        }
        let mut named = 0;
        for here in places {
            let text = said(&mut app, here.clone()).to_lowercase();
            for at in &marked {
                let name = app.bare_name(*at).to_lowercase();
                for (from, _) in text.match_indices(&name) {
                    let after = &text[from + name.len()..];
                    // A name that is the beginning of another is not that figure.
                    let other = (0..app.job.tasks.len()).any(|other| {
                        let longer = app.bare_name(other).to_lowercase();
                        longer.len() > name.len() && text[from..].starts_with(&longer)
                    });
                    let marked = after.starts_with(" (estimated") || other;
                    assert!(marked, "{here:?}: {name}{}", &after[..after.len().min(80)]);
                    named += 1;
                }
            }
        }
        assert!(named > 30, "{named}");
    }
}
