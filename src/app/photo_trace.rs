//! An outline traced on a flattened picture: a template with its cut-outs in coordinates, an opening of the wall, the
//! outline of a tile figure, a line on the wall's elevation. Every point of it is an estimate and says so.

use super::photo_page::{command, name, note};
use super::photo_template::{Place, Template, is_outline, sketch, template, up};
use super::wall_page::kind_name;
use super::{App, Chip, Command, Here, PhotoCommand, Row, Screen, Tone};
use crate::drawing::{Align, Fit, Hot, Mark as Drawn, Pen, Role, Scene, Stroke};
use crate::geometry::{Point, Polygon, Region};
use crate::measure::{Length, plain};
use crate::site::{self, Opening, OpeningKind, Size};
use crate::takeoff::{Ask, TileOn, Traced};
use crate::trades::tile;

impl App {
    pub(super) fn template(&self, at: usize, number: u32) -> Option<Template> {
        template(self.job.photos.get(at)?, &*self.view_of(at)?, number)
    }

    /// The screen of a traced outline.
    pub(super) fn trace_page(&self, at: usize, number: u32) -> Screen {
        let Some(photo) = self.job.photos.get(at) else {
            return self.photos_page();
        };
        let base = Screen {
            crumb: self.place_of(photo),
            title: photo.mark(number).map_or_else(String::new, name),
            back: Some(Here::Photo(at)),
            ..Screen::default()
        };
        let Some(template) = self.template(at, number) else {
            let text = "This outline has no scale: it needs three corners or more, on a picture that is flattened.";
            return Screen {
                rows: vec![note(Tone::Caution, text.into())],
                ..base
            };
        };
        let mut rows = vec![note(
            Tone::Caution,
            format!(
                "Estimated from a picture, each point to ±{} or less. Put a tape on it before you cut.",
                self.give(template.give())
            ),
        )];
        let figures = |rows: &mut Vec<Row>, places: &[Place]| {
            for (n, (place, give)) in places.iter().enumerate() {
                let [x, y] = place.map(|m| Length::from_metres(m).unwrap_or_default());
                let give = Length::from_metres(*give).unwrap_or_default();
                rows.push(Row::Figure {
                    label: format!("Point {}: right, up", n + 1),
                    detail: format!("estimated, ±{}", self.give(give)),
                    value: format!("{}, {}", self.near(x), self.near(y)),
                    command: None,
                });
            }
        };
        rows.push(Row::Heading("Outline, from its lower left".into()));
        figures(&mut rows, &template.outline);
        for cut in &template.cuts {
            rows.push(Row::Heading(format!("Cut-out: {}", cut.name)));
            if let Some(round) = cut.round {
                rows.push(Row::ours("How wide", self.show(round)));
            }
            figures(&mut rows, &cut.places);
        }
        rows.push(Row::button(
            "Write it as a drawing in real size",
            command(PhotoCommand::Trace(at, number)),
        ));
        rows.push(Row::button(
            "Lay tile within this outline",
            command(PhotoCommand::TileTrace(at, number)),
        ));
        if self.on_its_wall(at, number).is_some() {
            let kinds = [
                OpeningKind::Door,
                OpeningKind::Window,
                OpeningKind::Niche,
                OpeningKind::PassThrough,
            ];
            rows.push(Row::choice(
                "It is an opening of its wall",
                kinds.map(|kind| {
                    Chip::new(
                        kind_name(kind),
                        false,
                        command(PhotoCommand::OpenTrace(at, number, kind)),
                    )
                }),
            ));
        } else {
            rows.push(Row::Text("Say which wall the picture shows and mark one place on it; then this outline stands on the elevation and can be an opening.".into()));
        }
        let (wide, high) = template.size();
        Screen {
            picture: Some(sketch(&template, [wide, high].map(|side| self.near(side)))),
            rows,
            ..base
        }
    }

    /// A traced outline on its wall: each point from the left corner and up from the floor, with its ±.
    fn on_its_wall(&self, at: usize, number: u32) -> Option<Vec<Place>> {
        let photo = self.job.photos.get(at)?;
        photo.wall?;
        let view = self.view_of(at)?;
        let mark = photo.mark(number).filter(|mark| is_outline(mark))?;
        let places = mark.points.iter();
        places.map(|spot| photo.on_wall(&view, *spot)).collect()
    }

    /// The outlines that were traced on pictures of a wall: picture, mark, points.
    fn traces(&self, room: usize, wall: usize) -> Vec<(usize, u32, Vec<Place>)> {
        let Some(room) = self.job.rooms.get(room) else {
            return Vec::new();
        };
        let photos = self.job.photos.iter().enumerate();
        let here = photos.filter(|(_, p)| p.room == Some(room.id) && p.wall == Some(wall));
        here.flat_map(|(at, photo)| photo.marks.iter().map(move |mark| (at, mark.number)))
            .filter_map(|(at, number)| Some((at, number, self.on_its_wall(at, number)?)))
            .collect()
    }

    /// Traced outlines on the elevation of their wall, dashed, each with its ±.
    pub(super) fn traces_on_wall(&self, room: usize, wall: usize, scene: &mut Scene<Command>) {
        for (at, number, places) in self.traces(room, wall) {
            let points: Vec<Point> = places.iter().filter_map(|(p, _)| up(*p)).collect();
            let (Some(min), Some(max)) = (corner(&points, false), corner(&points, true)) else {
                continue;
            };
            let give = places.iter().map(|(_, give)| *give).fold(0.0, f64::max);
            let give = self.give(Length::from_metres(give).unwrap_or_default());
            let pen = Some(Pen::dashed(Role::Ink, Stroke::Medium));
            scene.marks.push(Drawn::Path {
                points,
                closed: true,
                pen,
                fill: None,
            });
            scene.marks.push(Drawn::Text {
                at: Point::new((min.x + max.x).half(), (min.y + max.y).half()),
                text: format!("estimated ±{give}"),
                role: Role::Soft,
                align: Align::Middle,
                bold: false,
                fit: Fit::Shrunk(max.x - min.x),
            });
            scene.hot.push(Hot {
                min,
                max,
                tag: Command::Go(Here::Traced(at, number)),
                says: plain(&format!("Outline from a picture, estimated, ±{give}")),
            });
        }
    }

    /// An outline as an opening of its wall: the rectangle about it, each figure an estimate with its ±.
    pub(super) fn open_trace(&mut self, at: usize, number: u32, kind: OpeningKind) {
        let placed = self.on_its_wall(at, number);
        let photo = self.job.photos.get(at);
        let room = photo.and_then(|photo| {
            let mut rooms = self.job.rooms.iter();
            rooms.position(|room| Some(room.id) == photo.room)
        });
        let (Some(places), Some(room), Some(wall)) =
            (placed, room, photo.and_then(|photo| photo.wall))
        else {
            self.said = "Say first which wall the picture shows, and mark one place on it.".into();
            return;
        };
        let side = |axis: usize, most: bool| {
            let along = places.iter().map(|(place, _)| place[axis]);
            let found = if most {
                along.fold(f64::MIN, f64::max)
            } else {
                along.fold(f64::MAX, f64::min)
            };
            Length::from_metres(found).unwrap_or_default()
        };
        let (left, right, low, high) =
            (side(0, false), side(0, true), side(1, false), side(1, true));
        let give = places.iter().map(|(_, give)| *give).fold(0.0, f64::max);
        let give = Length::from_metres(give).unwrap_or_default();
        let door = kind == OpeningKind::Door;
        let low = if door { Length::ZERO } else { low };
        if !(right - left).is_positive()
            || !(high - low).is_positive()
            || left < Length::ZERO
            || low < Length::ZERO
        {
            self.said = "It reaches past the corner or the floor of its wall: look at the place that is marked, and at the scale.".into();
            return;
        }
        self.edit(format!("{} from the picture", kind_name(kind)), |job| {
            let room = &mut job.rooms[room];
            let number = room.openings.len();
            room.openings.push(Opening {
                kind,
                wall,
                from_left: None,
                width: None,
                height: None,
                sill: door.then_some(Length::ZERO),
                hinge: None,
            });
            for (size, length) in [
                (Size::FromLeft, left),
                (Size::Width, right - left),
                (Size::Height, high - low),
                (Size::Up, low),
            ] {
                if !(door && size == Size::Up) {
                    room.measure(site::What::Opening(number, size), Some(length), Some(give));
                }
            }
        });
    }

    /// A tile figure on an outline.
    pub(super) fn tile_trace(&mut self, at: usize, number: u32) {
        let (Some(template), Some(photo)) = (self.template(at, number), self.job.photos.get(at))
        else {
            self.said = "The outline has no scale yet: flatten the picture first.".to_owned();
            return;
        };
        let (id, room) = (photo.id, photo.room);
        let high = template.size().1.metres();
        // Laid out from the upper left, clockwise; a region that is not taken has one of its sides across another.
        let ring = |places: &[Place]| {
            let length = |m: f64| Length::from_metres(m).unwrap_or_default();
            let points = places
                .iter()
                .map(|(p, _)| Point::new(length(p[0]), length(high - p[1])));
            let mut ring = Polygon {
                points: points.collect(),
            };
            if !ring.clockwise() {
                ring.points.reverse();
            }
            ring
        };
        let cuts = template.cuts.iter().filter(|cut| cut.places.len() >= 3);
        let surface = Region {
            outer: ring(&template.outline),
            holes: cuts.map(|cut| ring(&cut.places)).collect(),
        };
        if surface.crossing().is_some() {
            self.said = "Sides of the outline cross each other. Drag its corners apart.".to_owned();
            return;
        }
        let ask = tile::Ask {
            surface,
            on: tile::Surface::Wall,
            ..tile::Ask::default()
        };
        let traced = Traced {
            photo: id,
            mark: number,
            give: template.give(),
        };
        self.edit("Tile within the outline", |job| {
            let room = job.rooms.iter().position(|other| Some(other.id) == room);
            job.add_task(room, Ask::Tile(Box::new(ask), TileOn::Own));
            if let Some(task) = job.tasks.last() {
                job.traced.insert(task.id, traced);
            }
        });
        self.go(Here::Task(self.job.tasks.len().saturating_sub(1)));
    }

    /// That a figure's outline is an estimate, where it was traced on a picture.
    pub(super) fn traced_rows(&self, task: usize) -> Vec<Row> {
        let note = self.traced_note(task);
        let taped = Row::button(
            "The outline is by tape now",
            command(PhotoCommand::TapedTrace(task)),
        );
        note.into_iter()
            .flat_map(|note| [note, taped.clone()])
            .collect()
    }

    pub(super) fn taped_trace(&mut self, task: usize) {
        let Some(id) = self.job.tasks.get(task).map(|task| task.id) else {
            return;
        };
        self.edit("By tape now", |job| {
            job.traced.remove(&id);
        });
    }

    fn traced_note(&self, task: usize) -> Option<Row> {
        let traced = self.job.traced.get(&self.job.tasks.get(task)?.id)?;
        let photo = self
            .job
            .photos
            .iter()
            .position(|photo| photo.id == traced.photo);
        Some(Row::Note {
            tone: Tone::Caution,
            text: format!(
                "Estimated: this outline was traced on a picture, its corners to ±{}. Put a tape on it before you cut or buy.",
                self.give(traced.give)
            ),
            detail: "Typing its width or its height makes it a rectangle.".into(),
            mend: photo.map(|at| {
                let here = Here::Traced(at, traced.mark);
                Chip::new("Show the outline", false, Command::Go(here))
            }),
        })
    }
}

/// The least of all points, or the most.
fn corner(points: &[Point], most: bool) -> Option<Point> {
    let pick = |a: Length, b: Length| if most { a.max(b) } else { a.min(b) };
    let points = points.iter().copied();
    points.reduce(|a, b| Point::new(pick(a.x, b.x), pick(a.y, b.y)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::Keeper;
    use crate::geometry::{Spot, distance};
    use crate::measure::Units;
    use crate::photo::{Anchor, Behind, Flat, Object, Photo, What};
    use crate::site::{HiddenKind, Id, Room};
    use crate::takeoff::Job;
    use std::sync::Arc;

    /// A wall seen straight on, a millimetre a pixel, with an A4 sheet on it; its lower left pixel is 300 mm from the
    /// corner and on the floor. An outline of 400 by 300 mm with a square of 100 and a pipe within.
    fn app() -> App {
        let begun = chrono::DateTime::parse_from_rfc3339("2026-05-04T09:00:00+02:00").unwrap();
        let mut job = Job::new("Cabin", begun, Units::Millimetres);
        let mut room = Room::rectangle("Washroom");
        room.id = Id::fresh();
        room.walls[0].length = Some(Length::mm(2_400));
        room.walls[1].length = Some(Length::mm(1_800));
        room.ceiling = Some(Length::mm(2_400));
        let mut photo = Photo::new("wall.jpg".into(), (2000, 1500), begun);
        photo.room = Some(room.id);
        photo.wall = Some(0);
        let (width, height) = Object::A4.size().unwrap();
        photo.flat = Some(Flat {
            corners: [
                [800.0, 600.0],
                [1010.0, 600.0],
                [1010.0, 897.0],
                [800.0, 897.0],
            ],
            object: Object::A4,
            width: Some(width),
            height: Some(height),
            edges: Vec::new(),
            sides: crate::photo::Sides::default(),
        });
        photo.anchor = Some(Anchor {
            spot: [0.0, 1500.0],
            from_left: Some(Length::mm(300)),
            up: Some(Length::ZERO),
        });
        let square =
            |x: f64, y: f64, w: f64, h: f64| vec![[x, y], [x + w, y], [x + w, y + h], [x, y + h]];
        photo.add_mark(What::Area(None), square(700.0, 700.0, 400.0, 300.0));
        photo.add_mark(What::Area(None), square(800.0, 800.0, 100.0, 100.0));
        let pipe = Behind {
            width: Some(Length::mm(22)),
            ..Behind::new(HiddenKind::Pipe)
        };
        photo.add_mark(What::Hidden(Box::new(pipe)), vec![[1000.0, 750.0]]);
        // One that lies outside is not cut out.
        photo.add_mark(What::Area(None), square(50.0, 50.0, 100.0, 100.0));
        job.rooms.push(room);
        job.photos.push(Arc::new(photo));
        App::new(job, Keeper::nowhere())
    }

    #[track_caller]
    fn check(place: &Place, wanted: Spot) {
        let off = distance(place.0, wanted);
        assert!(off < 1e-6, "{place:?}, not {wanted:?}");
    }

    #[test]
    fn a_template_is_told_from_its_lower_left_each_point_with_its_more_or_less() {
        let app = app();
        let template = app.template(0, 1).unwrap();
        let wanted = [[0.0, 0.3], [0.4, 0.3], [0.4, 0.0], [0.0, 0.0]];
        for (place, wanted) in template.outline.iter().zip(wanted) {
            check(place, wanted);
        }
        assert_eq!(template.outline[3].1, 0.0);
        assert!(template.outline[1].1 > template.outline[0].1);
        assert_eq!(template.cuts.len(), 2);
        check(&template.cuts[0].places[3], [0.1, 0.1]);
        check(&template.cuts[1].places[0], [0.3, 0.25]);
        assert_eq!(template.cuts[1].round, Some(Length::mm(22)));
        let page = app.trace_page(0, 1);
        let said = format!("{:?}", page.rows);
        assert!(said.contains("Estimated from a picture"), "{said}");
        assert_eq!(said.matches("estimated, ±").count(), 4 + 4 + 1, "{said}");
        assert!(app.template(0, 3).is_none());
        let svg = app.outline_svg(0, 1).unwrap();
        assert!(
            svg.contains("width=\"400.00mm\" height=\"300.00mm\""),
            "{svg}"
        );
        assert_eq!(svg.matches("<polygon").count(), 2, "{svg}");
        assert!(
            svg.contains("<circle cx=\"300.00\" cy=\"50.00\" r=\"11.00\""),
            "{svg}"
        );
        let mut bare = self::app();
        Arc::make_mut(&mut bare.job.photos[0]).flat = None;
        assert!(format!("{:?}", bare.trace_page(0, 1).rows).contains("no scale"));
    }

    #[test]
    fn an_outline_stands_on_its_wall_and_becomes_an_opening_of_estimates() {
        let mut app = app();
        app.go(Here::Wall(0, 0));
        let scene = app.screen().picture.unwrap();
        let said = format!("{:?}", scene.marks);
        assert!(said.contains("estimated ±"), "{said}");
        assert!(
            scene
                .hot
                .iter()
                .any(|hot| hot.says.contains("Outline from a picture"))
        );
        app.send(command(PhotoCommand::OpenTrace(0, 1, OpeningKind::Niche)));
        let opening = &app.job.rooms[0].openings[0];
        for (length, wanted) in [
            (opening.from_left, 1_000),
            (opening.width, 400),
            (opening.height, 300),
            (opening.sill, 500),
        ] {
            let off = (length.unwrap() - Length::mm(wanted)).metres();
            assert!(off.abs() < 1e-6, "{opening:?}");
        }
        for size in [Size::FromLeft, Size::Width, Size::Height, Size::Up] {
            let mark = app.job.rooms[0].mark(site::What::Opening(0, size));
            assert!(mark.estimate.is_some_and(Length::is_positive), "{size:?}");
        }
        // Beyond the left corner there is no wall.
        if let Some(anchor) = &mut Arc::make_mut(&mut app.job.photos[0]).anchor {
            anchor.from_left = Some(Length::mm(-900));
        }
        app.send(command(PhotoCommand::OpenTrace(0, 1, OpeningKind::Niche)));
        assert_eq!(app.job.rooms[0].openings.len(), 1);
        assert!(app.said.contains("past the corner"), "{}", app.said);
    }

    #[test]
    fn tile_within_an_outline_says_estimated_until_it_is_taped() {
        let mut app = app();
        app.send(command(PhotoCommand::TileTrace(0, 1)));
        let Ask::Tile(ask, TileOn::Own) = &app.job.tasks[0].ask else {
            panic!("{:?}", app.job.tasks[0].ask);
        };
        // 400 by 300 mm less a square of 100: 0.11 m².
        let off = ask.surface.area().get::<uom::si::area::square_meter>() - 0.11;
        assert!(off.abs() < 1e-6, "{off}");
        let said = |app: &App| format!("{:?}", app.screen().rows);
        assert!(said(&app).contains("Estimated: this outline was traced"));
        // A copy of it is as uncertain.
        app.send(Command::Twin(0));
        assert_eq!(app.here, Here::Task(1));
        assert!(said(&app).contains("Estimated: this outline was traced"));
        app.send(Command::Undo);
        app.go(Here::Task(0));
        app.send(command(PhotoCommand::TapedTrace(0)));
        assert!(!said(&app).contains("Estimated: this outline"));
        // What crosses itself is no surface.
        let photo = Arc::make_mut(&mut app.job.photos[0]);
        photo.mark_mut(1).unwrap().points.swap(1, 2);
        app.send(command(PhotoCommand::TileTrace(0, 1)));
        assert_eq!(app.job.tasks.len(), 1);
        assert!(app.said.contains("cross each other"), "{}", app.said);
    }
}
