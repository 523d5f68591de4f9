//! What is asked of sheets, with what the room knows: its true shape, its studs, what stands out of it.

use std::rc::Rc;

use super::App;
use crate::geometry::Point;
use crate::measure::Length;
use crate::site::{self, FixedKind, FixedPoint, On, Room, elevation, surface};
use crate::takeoff::{Ask, TileOn};
use crate::trades::Account;
use crate::trades::sheets::{self, Figure, Framing, Problem, Surface, Thing, ThingShape};

/// A layout of sheets, or why there is none.
pub(super) type Sheeted = Rc<Result<Figure, Problem>>;

/// Layouts that are remembered, so that one screen figures each but once.
const REMEMBERED: usize = 6;

/// Left free round what stands out of board.
const CLEAR: Length = Length::in_64(0, 8);

impl App {
    /// The stored ask of a figure in sheets.
    pub(super) fn sheets_stored(&self, at: usize) -> Option<(&sheets::Ask, TileOn)> {
        match &self.job.tasks.get(at)?.ask {
            Ask::Sheets(ask, on) => Some((ask, *on)),
            _ => None,
        }
    }

    /// What is asked, with the surface that the room knows; `None` while the room does not know it.
    pub(super) fn sheets_ask(&self, at: usize) -> Option<sheets::Ask> {
        let (stored, on) = self.sheets_stored(at)?;
        let room = self.job.tasks[at].room;
        let room = room.and_then(|room| self.job.rooms.get(room));
        let mut ask = stored.clone();
        match (on, room) {
            (TileOn::Own, _) | (_, None) => {}
            (TileOn::Floor, Some(room)) => {
                ask.surface = surface::floor(room)?;
                if ask.on == Surface::Wall {
                    ask.on = Surface::Floor;
                }
                if ask.on == Surface::Floor {
                    ask.things.extend(on_floor(room, ask.origin()));
                }
            }
            (TileOn::Wall(wall), Some(room)) => {
                let stands = elevation(room, wall)?;
                ask.surface = surface::wall(room, wall)?;
                ask.on = Surface::Wall;
                ask.origin = Some(Point::default());
                ask.floor = Some((
                    stands.on_sheet(stands.left[0]),
                    stands.on_sheet(stands.right[0]),
                ));
                let land = ask.framing.as_ref().is_none_or(|framing| framing.land);
                ask.framing = room.walls[wall].studs.clone().map(|studs| Framing {
                    upright: true,
                    studs,
                    land,
                });
                ask.things.extend(on_wall(room, wall, &stands));
            }
        }
        Some(ask)
    }

    /// A layout, figured once for each ask.
    pub(super) fn sheets_figure(&self, ask: &sheets::Ask) -> Sheeted {
        let mut known = self.sheeted.borrow_mut();
        if let Some((_, figure)) = known.iter().find(|(known, _)| known == ask) {
            return Rc::clone(figure);
        }
        let figure = Rc::new(sheets::figure(ask));
        known.push((ask.clone(), Rc::clone(&figure)));
        if known.len() > REMEMBERED {
            known.remove(0);
        }
        figure
    }

    /// The account of a figure in sheets.
    pub(super) fn sheets_account(&self, at: usize) -> Option<Account> {
        match self.sheets_figure(&self.sheets_ask(at)?).as_ref() {
            Ok(figure) => Some(figure.account.clone()),
            Err(_) => None,
        }
    }

    /// Its last answer.
    pub(super) fn sheets_answer(&self, at: usize) -> String {
        let figure = self.sheets_ask(at).map(|ask| self.sheets_figure(&ask));
        match figure.as_deref() {
            Some(Ok(figure)) => super::sheets_page::counted(figure.to_buy),
            _ => "not figured yet".to_owned(),
        }
    }
}

/// The hole that a fixed point wants, where its size is known: round for what carries water, else a box.
fn hole(point: &FixedPoint, from_left: Length, from_top: Length) -> Option<Thing> {
    let shape = match (point.kind, point.width?, point.height) {
        (FixedKind::Blocking, ..) => return None,
        (FixedKind::Hot | FixedKind::Cold | FixedKind::Drain | FixedKind::Valve, across, None) => {
            ThingShape::Round { across }
        }
        (_, width, Some(height)) => ThingShape::Rectangle { width, height },
        (_, across, None) => ThingShape::Round { across },
    };
    Some(Thing {
        kind: Some(point.kind),
        shape,
        from_left,
        from_top,
        clear: CLEAR,
    })
}

/// What stands out of a wall, as it stands.
fn on_wall<'a>(
    room: &'a Room,
    wall: usize,
    stands: &'a site::Elevation,
) -> impl Iterator<Item = Thing> + 'a {
    let here = room
        .fixed
        .iter()
        .filter(move |point| point.on == On::Wall(wall));
    here.filter_map(|point| {
        let at = stands.on_sheet(stands.place(point.from_left?, point.up?));
        hole(point, at.x, at.y)
    })
}

/// What stands out of the floor, from the upper left corner of the plan.
fn on_floor(room: &Room, origin: Point) -> Vec<Thing> {
    let Ok(shape) = site::shape(room) else {
        return Vec::new();
    };
    let corners = &shape.corners.points;
    let placed = room.fixed.iter().filter_map(|point| {
        let On::Floor(wall) = point.on else {
            return None;
        };
        let (a, b) = (*corners.get(wall)?, corners[(wall + 1) % corners.len()]);
        let (dx, dy) = ((b.x - a.x).metres(), (b.y - a.y).metres());
        let long = dx.hypot(dy);
        let (along, out) = (point.from_left?.metres(), point.up?.metres());
        if long <= 0.0 {
            return None;
        }
        // Out from a wall is to its right, as the walls run clockwise.
        let x = (along * dx - out * dy) / long;
        let y = (along * dy + out * dx) / long;
        let at = a + Point::new(Length::from_metres(x)?, Length::from_metres(y)?) - origin;
        hole(point, at.x, at.y)
    });
    placed.collect()
}
