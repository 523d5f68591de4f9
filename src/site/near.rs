//! What comes too near to something that is hidden behind a wall or under a floor.

use super::{
    FixedKind, FixedPoint, Hidden, HiddenKind, Known, On, Opening, OpeningKind, Room, off_wall,
    shape,
};
use crate::geometry::{Form, Spot};
use crate::measure::Length;

/// A surface that is cut or screwed into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Face {
    /// A wall, counted from 0; its places are from the left corner and up from the floor.
    Wall(usize),
    /// The floor; its places are those of the plan.
    Floor,
}

/// A piece of work that goes through the face of a surface.
#[derive(Clone, Debug, PartialEq)]
pub struct Work {
    /// What it is called: "the cut-out", "a screw".
    pub what: String,
    /// Where it goes through, in metres on its surface.
    pub form: Form,
    /// By how much its own place is uncertain.
    pub give: Length,
    /// What it is cut out for, where it is a fixed point.
    pub serves: Option<FixedKind>,
}

impl Work {
    /// Work whose place is as the tape has it.
    #[must_use]
    pub fn new(what: impl Into<String>, form: Form) -> Work {
        Work {
            what: what.into(),
            form,
            give: Length::ZERO,
            serves: None,
        }
    }
}

/// Work that comes too near.
#[derive(Clone, Debug, PartialEq)]
pub struct Near {
    /// Which work, by its place in what was asked.
    pub work: usize,
    /// Which hidden thing of the room, counted from 0.
    pub hidden: usize,
    /// From one to the other as known; nothing where one lies over the other.
    pub apart: Length,
    /// By how much that may be less.
    pub give: Length,
    /// It may be what the work is made for: a supply's hole is over its own pipe.
    pub own: bool,
}

impl Hidden {
    /// Whether it is hurt, or hurts, where a saw or a screw meets it; wood is not.
    #[must_use]
    pub fn is_guarded(&self) -> bool {
        !matches!(self.kind, HiddenKind::Stud | HiddenKind::Blocking)
    }

    /// By how much its place is uncertain.
    #[must_use]
    pub fn give(&self) -> Length {
        match self.known {
            Known::Tape => Length::ZERO,
            Known::Picture(give) => give,
        }
    }
}

/// What is cut for a fixed point that is measured: its outline, where it has one.
#[must_use]
pub fn cut_out(room: &Room, point: &FixedPoint) -> Option<Work> {
    let (left, up) = (point.from_left?, point.up?);
    let (left, up) = match point.on {
        On::Wall(_) => (left, up),
        On::Floor(wall) => {
            let place = off_wall(&shape(room).ok()?, wall, left, up)?;
            (place.x, place.y)
        }
    };
    let middle = [left, up].map(Length::metres);
    let half = |length: Option<Length>| length.unwrap_or_default().metres() / 2.0;
    let form = match (point.on, point.width, point.height) {
        (On::Wall(_), Some(_), Some(_)) => {
            let (across, tall) = (half(point.width), half(point.height));
            Form::rectangle(
                [middle[0] - across, middle[1] - tall],
                [middle[0] + across, middle[1] + tall],
            )
        }
        // On a floor its sides may lie anyhow: the larger is taken all round.
        (_, width, height) => Form::round(middle, half(width).max(half(height))),
    };
    let name = point.kind.name().to_lowercase();
    Some(Work {
        what: match point.kind {
            FixedKind::Blocking => "the blocking".to_owned(),
            FixedKind::Niche => "the niche that is planned".to_owned(),
            FixedKind::Other => "the hole for a fixed point".to_owned(),
            _ => format!("the hole for the {name}"),
        },
        form,
        give: match point.known {
            Known::Tape => Length::ZERO,
            Known::Picture(give) => give,
        },
        serves: Some(point.kind),
    })
}

fn opening(opening: &Opening) -> Option<Form> {
    let (left, sill) = (opening.from_left?, opening.sill?);
    let corner = |x: Length, y: Length| [x.metres(), y.metres()];
    Some(Form::rectangle(
        corner(left, sill),
        corner(left + opening.width?, sill + opening.height?),
    ))
}

/// All that a room says is cut through a face, or screwed into it: fixed points, openings, and board along the studs.
///
/// # Inputs
/// Points, openings and studs that are not measured yet are passed over.
/// # Gives
/// Fixed points, then openings, then studs from the left; each in the room's order.
/// # Source
/// The room's own figures; board is screwed along the middle of every stud, from floor to ceiling (common practice, no
/// published source).
/// # Example
/// ```
/// use storyrod::{measure::Length, site::{Face, FixedKind, FixedPoint, On, Room, works}};
/// let mut room = Room::rectangle("Washroom");
/// let mut outlet = FixedPoint::new(FixedKind::Outlet, On::Wall(0));
/// outlet.from_left = Some(Length::inches(20));
/// outlet.up = Some(Length::inches(42));
/// room.fixed.push(outlet);
/// assert_eq!(works(&room, Face::Wall(0))[0].what, "the hole for the outlet");
/// ```
#[must_use]
pub fn works(room: &Room, face: Face) -> Vec<Work> {
    let here = |on: On| match (on, face) {
        (On::Wall(wall), Face::Wall(asked)) => wall == asked,
        (On::Floor(_), Face::Floor) => true,
        _ => false,
    };
    let fixed = room.fixed.iter().filter(|point| here(point.on));
    let mut all: Vec<Work> = fixed.filter_map(|point| cut_out(room, point)).collect();
    let Face::Wall(wall) = face else { return all };
    for hole in room.openings.iter().filter(|hole| hole.wall == wall) {
        if let Some(form) = opening(hole) {
            let name = match hole.kind {
                OpeningKind::Door => "the door",
                OpeningKind::Window => "the window",
                OpeningKind::Niche => "the niche",
                OpeningKind::PassThrough => "the pass-through",
            };
            all.push(Work::new(name, form));
        }
    }
    let studs = room.walls.get(wall).and_then(|wall| wall.studs.as_ref());
    if let (Some(studs), Some((left, right))) = (studs, room.heights_of(wall)) {
        let long = shape(room)
            .ok()
            .and_then(|shape| Some(shape.walls.get(wall)?.0));
        let long = long.unwrap_or_default();
        let high = left.max(right).metres();
        for (n, centre) in studs.centres(long).into_iter().enumerate() {
            let x = centre.metres();
            all.push(Work::new(
                format!("the line of board screws in stud {}", n + 1),
                Form::line(vec![[x, 0.0], [x, high]], 0.0),
            ));
        }
    }
    all
}

/// Something hidden as it lies behind a face; `None` where it lies behind another.
fn behind(room: &Room, hidden: &Hidden, face: Face) -> Option<Form> {
    let out = hidden.width.map_or(0.0, |width| width.metres() / 2.0);
    let places: Option<Vec<Spot>> = match (hidden.on, face) {
        (On::Wall(wall), Face::Wall(asked)) if wall == asked => {
            let places = hidden.line.iter();
            Some(
                places
                    .map(|spot| [spot.from_left, spot.up].map(Length::metres))
                    .collect(),
            )
        }
        (On::Floor(wall), Face::Floor) => {
            let shape = shape(room).ok()?;
            let places = hidden.line.iter();
            places
                .map(|spot| {
                    let at = off_wall(&shape, wall, spot.from_left, spot.up)?;
                    Some([at.x, at.y].map(Length::metres))
                })
                .collect()
        }
        _ => None,
    };
    Some(Form::line(places?, out))
}

/// Work that comes nearer to something hidden than is wanted, or may by what is not certain of either place.
///
/// # Inputs
/// The work, in metres on its face; how near is too near.
/// # Gives
/// One for each work and hidden thing whose distance, less the ± of both, is under that; in the room's order, then that
/// of the work. Studs and blocking are wood, and pass.
/// # Source
/// [`Form::apart`]; how near is too near is the person's, common practice, no published source.
/// # Example
/// ```
/// use storyrod::geometry::Form;
/// use storyrod::measure::Length;
/// use storyrod::site::{Face, Hidden, HiddenKind, On, Room, Spot, Work, near};
/// let mut room = Room::rectangle("Washroom");
/// let mut pipe = Hidden::new(HiddenKind::Pipe, On::Wall(0));
/// let at = |left, up| Spot { from_left: Length::inches(left), up: Length::inches(up) };
/// pipe.line = vec![at(20, 0), at(20, 96)];
/// room.hidden.push(pipe);
/// let screw = Work::new("a screw", Form::round([Length::inches(21).metres(), 1.0], 0.0));
/// let found = near(&room, Face::Wall(0), &[screw], Length::in_64(1, 32));
/// assert_eq!(found[0].apart, Length::inches(1));
/// ```
#[must_use]
pub fn near(room: &Room, face: Face, works: &[Work], clear: Length) -> Vec<Near> {
    let mut found = Vec::new();
    for (number, hidden) in room.hidden.iter().enumerate() {
        let Some(line) = behind(room, hidden, face).filter(|_| hidden.is_guarded()) else {
            continue;
        };
        for (at, work) in works.iter().enumerate() {
            let apart = Length::from_metres(work.form.apart(&line));
            // Two places, each off by chance, are off together by less than their sum; the sum errs on the wary side.
            let give = hidden.give() + work.give;
            if let Some(apart) = apart.filter(|apart| *apart - give < clear) {
                found.push(Near {
                    work: at,
                    hidden: number,
                    apart,
                    give,
                    own: apart <= give && may_serve(work.serves, hidden.kind),
                });
            }
        }
    }
    found
}

/// Whether a fixed point of a kind is commonly fed by such a thing.
fn may_serve(serves: Option<FixedKind>, kind: HiddenKind) -> bool {
    use FixedKind::{Cold, Drain, Heat, Hot, Light, Outlet, Switch, Valve, Vent};
    matches!(
        (serves, kind),
        (
            Some(Hot | Cold | Drain | Valve | Heat),
            HiddenKind::Pipe | HiddenKind::Valve
        ) | (
            Some(Outlet | Switch | Light | Vent),
            HiddenKind::Cable | HiddenKind::ElectricBox
        ) | (Some(Vent | Heat), HiddenKind::Duct)
    )
}

#[cfg(test)]
mod tests {
    use super::super::{Spot as At, Studs};
    use super::*;

    const fn inches(n: i64) -> Length {
        Length::inches(n)
    }

    /// A wall of 96 in with a pipe of 1 in upright at 20 in, known to so many inches.
    fn room(kind: HiddenKind, give: i64) -> Room {
        let mut room = Room::rectangle("a");
        room.walls[0].length = Some(inches(96));
        room.walls[1].length = Some(inches(60));
        room.ceiling = Some(inches(96));
        let at = |left, up| At {
            from_left: inches(left),
            up: inches(up),
        };
        room.hidden.push(Hidden {
            line: vec![at(20, 0), at(20, 96)],
            width: Some(inches(1)),
            known: if give == 0 {
                Known::Tape
            } else {
                Known::Picture(inches(give))
            },
            ..Hidden::new(kind, On::Wall(0))
        });
        room
    }

    fn point(kind: FixedKind, on: On, left: i64, up: i64, size: Option<(i64, i64)>) -> FixedPoint {
        FixedPoint {
            from_left: Some(inches(left)),
            up: Some(inches(up)),
            width: size.map(|(width, _)| inches(width)),
            height: size.map(|(_, height)| inches(height)),
            ..FixedPoint::new(kind, on)
        }
    }

    /// What is near, each with its distance in sixty-fourths of an inch.
    fn found(room: &Room, face: Face) -> Vec<(String, i64, bool)> {
        let works = works(room, face);
        let near = near(room, face, &works, Length::in_64(1, 32));
        near.iter()
            .map(|near| {
                let sixty_fourths = (near.apart.in_inches() * 64.0).round() as i64;
                (works[near.work].what.clone(), sixty_fourths, near.own)
            })
            .collect()
    }

    #[test]
    fn a_cut_out_near_a_pipe_is_found_and_one_farther_off_is_not() {
        let mut room = room(HiddenKind::Cable, 0);
        let outlet = |left| point(FixedKind::Outlet, On::Wall(0), left, 42, Some((2, 4)));
        // From the edge of the box, 1 in from its middle, to the cable's, 1/2 in from its.
        room.fixed = vec![outlet(24), outlet(22), outlet(20)];
        let near = found(&room, Face::Wall(0));
        let what = "the hole for the outlet".to_owned();
        assert_eq!(near, vec![(what.clone(), 32, false), (what, 0, true)]);
        assert_eq!(found(&room, Face::Wall(1)), vec![]);
    }

    #[test]
    fn the_more_or_less_of_a_picture_and_of_the_point_count_against_it() {
        let mut room = room(HiddenKind::Pipe, 1);
        // 2 in of clear to the pipe's side: one of them may not be there.
        room.fixed = vec![point(FixedKind::Switch, On::Wall(0), 22, 42, None)];
        assert_eq!(found(&room, Face::Wall(0)).len(), 1);
        room.hidden[0].known = Known::Tape;
        room.fixed[0].from_left = Some(Length::in_64(22, 1));
        assert_eq!(found(&room, Face::Wall(0)).len(), 0);
        room.fixed[0].known = Known::Picture(inches(1));
        assert_eq!(found(&room, Face::Wall(0)).len(), 1);
    }

    #[test]
    fn board_screws_and_openings_warn_and_wood_does_not() {
        let mut room = room(HiddenKind::Pipe, 0);
        room.walls[0].studs = Some(Studs::Found {
            centres: vec![inches(4), inches(21), inches(37)],
            face: Length::in_64(1, 32),
        });
        room.openings = vec![Opening {
            kind: OpeningKind::Niche,
            wall: 0,
            from_left: Some(inches(12)),
            width: Some(inches(14)),
            height: Some(inches(12)),
            sill: Some(inches(40)),
            hinge: None,
        }];
        let names: Vec<String> = found(&room, Face::Wall(0))
            .into_iter()
            .map(|near| near.0)
            .collect();
        assert_eq!(names, ["the niche", "the line of board screws in stud 2"]);
        room.hidden[0].kind = HiddenKind::Blocking;
        assert_eq!(found(&room, Face::Wall(0)).len(), 0);
    }

    /// 30 in along wall A and 20 out is 30 from wall D's corner as well, measured from wall B at its right end.
    #[test]
    fn a_floor_is_one_face_whichever_wall_it_is_measured_from() {
        let mut room = room(HiddenKind::Pipe, 0);
        room.hidden[0].on = On::Floor(0);
        room.hidden[0].line = vec![At {
            from_left: inches(30),
            up: inches(20),
        }];
        // Wall B begins at the right end of A: 20 along it and 66 out is the same place.
        room.fixed = vec![point(FixedKind::Drain, On::Floor(1), 20, 66, None)];
        let near = found(&room, Face::Floor);
        assert_eq!(near, vec![("the hole for the drain".to_owned(), 0, true)]);
        assert_eq!(found(&room, Face::Wall(0)), vec![]);
    }
}
