//! A wall's drawing under a finger: fixed points and hidden things placed by a tap, and pictures that open by one.

use super::{App, Chip, Command, Here, RoomChoice, Row, Slot, Tone, pad};
use crate::drawing::{Pinned, Scene, pin_photos};
use crate::geometry::Point;
use crate::measure::{Length, Rounding};
use crate::site::{self, Known, On, Room, Size, Spot, What};

/// What the next tap on a wall's drawing places.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Placing {
    /// A fixed point, counted from 0.
    Fixed(usize),
    /// The next place of something hidden, counted from 0.
    Hidden(usize),
}

impl Placing {
    /// The surface that it is on, and what it is called.
    fn of(self, room: &Room) -> Option<(On, &'static str)> {
        match self {
            Placing::Fixed(n) => room.fixed.get(n).map(|point| (point.on, point.kind.name())),
            Placing::Hidden(n) => room.hidden.get(n).map(|item| (item.on, item.kind.name())),
        }
    }
}

/// A line that has no place yet: it was begun at the corner, at the floor.
fn unplaced(line: &[Spot]) -> bool {
    matches!(
        line,
        [] | [Spot {
            from_left: Length::ZERO,
            up: Length::ZERO
        }]
    )
}

/// All that is asked of a fixed point: its place, and its size where it has one of its own.
pub(super) fn all_of_point(room: &Room, at: usize, n: usize) -> Vec<Slot> {
    let mut sizes = vec![Size::FromLeft, Size::Up];
    let pipe = room.fixed.get(n).is_none_or(|point| point.kind.is_pipe());
    if !pipe {
        sizes.extend([Size::Width, Size::Height]);
    }
    let slot = |size| Slot::Measure(at, What::Fixed(n, size));
    sizes.into_iter().map(slot).collect()
}

/// All that is asked of a fixture.
pub(super) fn all_of_fixture(at: usize, n: usize) -> Vec<Slot> {
    [Size::FromLeft, Size::Width, Size::Depth, Size::Height]
        .map(|size| Slot::Measure(at, What::Fixture(n, size)))
        .to_vec()
}

/// All that is asked of an opening; a door stands on the floor.
pub(super) fn all_of_opening(room: &Room, at: usize, n: usize) -> Vec<Slot> {
    let mut slots = vec![
        Slot::OpeningFromLeft(at, n),
        Slot::OpeningWidth(at, n),
        Slot::OpeningHeight(at, n),
    ];
    let door = |opening: &site::Opening| opening.kind == site::OpeningKind::Door;
    if !room.openings.get(n).is_some_and(door) {
        slots.push(Slot::OpeningSill(at, n));
    }
    slots
}

impl App {
    /// What is placed on this wall by the next tap.
    pub(super) fn placing(&self, at: usize, wall: usize) -> Option<Placing> {
        let (room, placing) = self.rooms_view.placing?;
        let (on, _) = placing.of(self.job.rooms.get(at)?)?;
        (room == at && on == On::Wall(wall)).then_some(placing)
    }

    /// The next tap on a wall's drawing places this, or nothing.
    pub(super) fn place(&mut self, at: usize, placing: Option<Placing>) {
        self.rooms_view.placing = placing.map(|placing| (at, placing));
        self.pad = None;
        self.said.clear();
    }

    /// After something was added to a wall the next tap on its drawing places it; what else was to be placed no longer is.
    pub(super) fn place_what_is_new(&mut self, at: usize, choice: &RoomChoice, done: bool) {
        let room = &self.job.rooms[at];
        let new = match choice {
            RoomChoice::AddFixed(On::Wall(_), _) => {
                room.fixed.len().checked_sub(1).map(Placing::Fixed)
            }
            RoomChoice::AddHidden(On::Wall(_), _) => {
                room.hidden.len().checked_sub(1).map(Placing::Hidden)
            }
            RoomChoice::RemoveFixed(_) | RoomChoice::RemoveHidden(_) => None,
            _ => return,
        };
        self.rooms_view.placing = new.filter(|_| done).map(|new| (at, new));
    }

    /// While something is placed a tap is for it alone: figures stay, but are not tapped.
    pub(super) fn free_for_a_tap(scene: &mut Scene<Command>) {
        scene.hot.clear();
        for dimension in &mut scene.dimensions {
            dimension.tag = None;
        }
    }

    /// What the next tap does, in words.
    pub(super) fn placing_row(&self, at: usize, placing: Placing) -> Option<Row> {
        let (_, name) = placing.of(self.job.rooms.get(at)?)?;
        let name = name.to_lowercase();
        let text = match placing {
            Placing::Fixed(_) => format!(
                "Tap the drawing where the {name} is. It stands there as an estimate until you type its figures."
            ),
            Placing::Hidden(_) => format!(
                "Tap the drawing along the {name}, place by place. Each stands as tapped until you type its figures."
            ),
        };
        Some(Row::Note {
            tone: Tone::Note,
            text,
            detail: String::new(),
            mend: Some(Chip::new(
                "No more taps",
                false,
                Command::Of(at, RoomChoice::Place(None)),
            )),
        })
    }

    /// The choice to place something by a tap; of what is on the floor the drawing shows nothing.
    pub(super) fn place_row(&self, at: usize, room: &Room, placing: Placing) -> Option<Row> {
        let (on, _) = placing.of(room)?;
        let On::Wall(wall) = on else { return None };
        let on = self.placing(at, wall) == Some(placing);
        Some(Row::choice(
            "Its place",
            [Chip::new(
                "Tap it on the drawing",
                on,
                Command::Of(at, RoomChoice::Place((!on).then_some(placing))),
            )],
        ))
    }

    /// A tap on a wall's drawing: what is placed stands there, within half a fingertip.
    pub(super) fn place_by_tap(&mut self, at: usize, wall: usize, tap: Point, reach: Length) {
        let Some(placing) = self.placing(at, wall) else {
            return;
        };
        let room = &self.job.rooms[at];
        let Some((long, _)) = site::sketch(room).walls.get(wall).copied() else {
            return;
        };
        let mark = pad::mark(self.job.units);
        let from_left = if self.rooms_view.behind {
            long - tap.x
        } else {
            tap.x
        };
        let high = room.heights_of(wall).map(|(a, b)| a.max(b));
        let on_wall = |length: Length, most: Length| {
            length
                .max(Length::ZERO)
                .min(most)
                .rounded(mark, Rounding::Nearest)
        };
        let spot = Spot {
            from_left: on_wall(from_left, long),
            up: on_wall(-tap.y, high.unwrap_or(Length::inches(96))),
        };
        let give = reach.rounded(mark, Rounding::Cover);
        let said = format!(
            "Placed by a tap, ± {}: type what the tape says",
            self.show(give)
        );
        match placing {
            Placing::Fixed(n) => {
                self.edit(said, |job| {
                    let room = &mut job.rooms[at];
                    for (size, length) in [(Size::FromLeft, spot.from_left), (Size::Up, spot.up)] {
                        room.measure(What::Fixed(n, size), Some(length), Some(give));
                    }
                });
                self.rooms_view.placing = None;
                self.walk(all_of_point(&self.job.rooms[at], at, n));
            }
            Placing::Hidden(n) => self.edit(said, |job| {
                let Some(item) = job.rooms[at].hidden.get_mut(n) else {
                    return;
                };
                if unplaced(&item.line) {
                    item.line = vec![spot];
                } else {
                    item.line.push(spot);
                }
                if item.note.is_empty() && item.known == Known::Tape {
                    item.note = "placed by a tap, not measured".into();
                }
            }),
        }
    }

    /// The pictures of a wall on its drawing, so long.
    pub(super) fn pin_on_wall(
        &self,
        scene: &mut Scene<Command>,
        room: &Room,
        wall: usize,
        long: Length,
    ) {
        let of = self.job.photos.iter().enumerate();
        let of = of.filter(|(_, photo)| photo.room == Some(room.id) && photo.wall == Some(wall));
        let pinned: Vec<Pinned<Command>> = of
            .map(|(at, photo)| {
                let place = photo.anchor.and_then(|a| Some((a.from_left?, a.up?)));
                let title = if photo.title.is_empty() {
                    "of this wall"
                } else {
                    photo.title.as_str()
                };
                Pinned {
                    number: at + 1,
                    at: place.filter(|(from_left, _)| *from_left <= long),
                    tag: Command::Go(Here::Photo(at)),
                    says: format!("Picture {}, {title}", at + 1),
                }
            })
            .collect();
        pin_photos(scene, long, &pinned);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::{Keeper, demo_job};
    use crate::photo::{Anchor, Photo};
    use crate::site::{FixedKind, HiddenKind};
    use chrono::DateTime;

    fn demo() -> App {
        let begun = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
        let mut app = App::new(demo_job(begun), Keeper::nowhere());
        app.send(Command::Go(Here::Wall(0, 0)));
        app
    }

    fn tap_at(app: &mut App, x: i64, up: i64) {
        let at = Point::new(Length::inches(x), -Length::inches(up));
        app.poke(at, Length::inches(3));
    }

    #[test]
    fn a_fixed_point_is_placed_by_a_tap_from_either_side_and_refined_on_the_pad() {
        for (behind, x) in [(false, 20), (true, 68)] {
            let mut app = demo();
            let n = app.job.rooms[0].fixed.len();
            app.send(Command::Of(0, RoomChoice::Behind(behind)));
            // Nothing is placed unless it is asked for.
            tap_at(&mut app, 30, 30);
            assert_eq!(app.job.rooms[0].fixed.len(), n);
            app.send(Command::Of(
                0,
                RoomChoice::AddFixed(On::Wall(0), FixedKind::Hot),
            ));
            assert!(app.screen().slides);
            tap_at(&mut app, x, 21);
            let point = &app.job.rooms[0].fixed[n];
            assert_eq!(point.from_left, Some(Length::inches(20)));
            assert_eq!(point.up, Some(Length::inches(21)));
            let what = What::Fixed(n, Size::FromLeft);
            assert_eq!(
                app.job.rooms[0].mark(what).estimate,
                Some(Length::inches(3))
            );
            let pad = app.pad.as_mut().unwrap();
            assert_eq!(pad.slot, Slot::Measure(0, what));
            (pad.typed, pad.fresh) = ("20 1/4".into(), false);
            app.take();
            // Its height is asked in the same go; Enter alone leaves it the estimate that it is.
            let up = What::Fixed(n, Size::Up);
            assert_eq!(
                app.pad.as_ref().map(|pad| pad.slot.clone()),
                Some(Slot::Measure(0, up))
            );
            app.take();
            assert!(app.pad.is_none(), "a supply has no size of its own");
            assert_eq!(app.job.rooms[0].mark(up).estimate, Some(Length::inches(3)));
            assert_eq!(app.job.rooms[0].mark(what).estimate, None);
            let point = &app.job.rooms[0].fixed[n];
            assert_eq!(point.from_left, Some(Length::in_64(20, 16)));
        }
    }

    /// A tap on the window itself goes over all its figures; on one of its figures, over that one.
    #[test]
    fn a_tap_on_a_thing_asks_all_its_figures_in_one_go() {
        let mut app = demo();
        let window = (app.job.rooms[0].openings.iter())
            .position(|opening| opening.wall == 0)
            .unwrap();
        let scene = app.screen().picture.unwrap();
        let all = all_of_opening(&app.job.rooms[0], 0, window);
        let tap = scene
            .hot
            .iter()
            .find(|hot| hot.tag == Command::Walk(all.clone()));
        app.send(tap.unwrap().tag.clone());
        for (n, slot) in all.iter().enumerate() {
            assert_eq!(app.pad.as_ref().map(|pad| &pad.slot), Some(slot), "{n}");
            app.take();
        }
        assert!(app.pad.is_none());
        // An outlet has a size, which may be left out.
        app.send(Command::Of(
            0,
            RoomChoice::AddFixed(On::Wall(0), FixedKind::Outlet),
        ));
        let n = app.job.rooms[0].fixed.len() - 1;
        tap_at(&mut app, 30, 40);
        for size in [Size::FromLeft, Size::Up, Size::Width, Size::Height] {
            let slot = Slot::Measure(0, What::Fixed(n, size));
            assert_eq!(app.pad.as_ref().map(|pad| &pad.slot), Some(&slot));
            app.take();
        }
        assert!(app.pad.is_none());
        assert_eq!(app.job.rooms[0].fixed[n].width, None);
        // Closed half way, another figure is asked alone.
        app.send(Command::Walk(all_of_point(&app.job.rooms[0], 0, n)));
        app.pad = None;
        app.send(Command::Pad(Slot::Ceiling(0)));
        app.take();
        assert!(app.pad.is_none());
    }

    #[test]
    fn a_hidden_line_is_tapped_place_by_place_and_stays_on_the_wall() {
        let mut app = demo();
        let n = app.job.rooms[0].hidden.len();
        app.send(Command::Of(
            0,
            RoomChoice::AddHidden(On::Wall(0), HiddenKind::Cable),
        ));
        for (x, up) in [(10, 12), (10, 44), (200, -9)] {
            tap_at(&mut app, x, up);
        }
        let spots: Vec<(Length, Length)> = (app.job.rooms[0].hidden[n].line.iter())
            .map(|spot| (spot.from_left, spot.up))
            .collect();
        let inches = |(a, b)| (Length::inches(a), Length::inches(b));
        assert_eq!(spots, [(10, 12), (10, 44), (88, 0)].map(inches));
        app.send(Command::Of(0, RoomChoice::Place(None)));
        tap_at(&mut app, 30, 30);
        assert_eq!(app.job.rooms[0].hidden[n].line.len(), 3);
        app.send(Command::Undo);
        assert_eq!(app.job.rooms[0].hidden[n].line.len(), 2);
    }

    #[test]
    fn pictures_of_a_wall_stand_on_it_and_open_by_a_tap() {
        let mut app = demo();
        let room = app.job.rooms[0].id;
        let when = app.job.begun;
        for (wall, anchored) in [(0, true), (0, false), (1, false)] {
            let mut photo = Photo::new("a.jpg".into(), (40, 30), when);
            (photo.room, photo.wall) = (Some(room), Some(wall));
            photo.anchor = anchored.then_some(Anchor {
                spot: [1.0, 1.0],
                from_left: Some(Length::inches(20)),
                up: Some(Length::inches(30)),
            });
            app.job.photos.push(std::sync::Arc::new(photo));
        }
        for behind in [false, true] {
            app.send(Command::Of(0, RoomChoice::Behind(behind)));
            let scene = app.screen().picture.unwrap();
            let middle = |n: usize| {
                let hot = scene
                    .hot
                    .iter()
                    .find(|h| h.tag == Command::Go(Here::Photo(n)));
                hot.map(|h| ((h.min.x + h.max.x).half(), (h.min.y + h.max.y).half()))
            };
            let x = if behind { 68 } else { 20 };
            assert_eq!(middle(0), Some((Length::inches(x), -Length::inches(30))));
            assert!(
                middle(1).is_some_and(|(_, y)| y.is_positive()),
                "under the floor"
            );
            assert_eq!(middle(2), None, "of another wall");
        }
    }
}
