//! What a slot reads, and what stands there now, as it could be typed again.

use super::{App, Kind, PaintSlot, Slot, TapeSlot, TileSlot, room_page};
use crate::measure::quantity::{
    Area, SpreadRate, in_square_feet, in_square_feet_per_gallon, in_square_metres,
    in_square_metres_per_litre,
};
use crate::measure::{Figures, Length, Money, Rounding};
use crate::site::{Opening, OpeningRule, Wall};
use crate::takeoff::Ask;
use crate::trades::paint::{self, Product};
use crate::trades::tile::{BoxOf, Pattern};

/// The kind of a slot, and what stands there.
type Stands = (Kind, String);

impl App {
    /// What a slot reads, and what stands there now.
    pub(super) fn stands(&self, slot: &Slot) -> Stands {
        let job = &self.job;
        match slot {
            Slot::JobName => words(&job.name),
            Slot::RoomName(room) => words(job.rooms.get(*room).map_or("", |room| &room.name)),
            Slot::HandLine | Slot::NewStep(_) => words(""),
            Slot::StepText(id) => words(&self.own_step(*id)),
            Slot::Search => words(&self.rooms_view.search),
            Slot::RoomNote(room, of) => words(&self.room_note(*room, *of)),
            Slot::Measure(room, what) => {
                self.length(job.rooms.get(*room).and_then(|room| room.measured(*what)))
            }
            Slot::PlusMinus(room, what) => self.length(
                job.rooms
                    .get(*room)
                    .and_then(|room| room.mark(*what).estimate),
            ),
            Slot::Spot(..) | Slot::HiddenDepth(..) => self.length(self.hidden_field(slot)),
            Slot::WallLength(..)
            | Slot::WallTurn(..)
            | Slot::WallHeight(..)
            | Slot::Ceiling(_)
            | Slot::OpeningFromLeft(..)
            | Slot::OpeningWidth(..)
            | Slot::OpeningHeight(..)
            | Slot::OpeningSill(..) => self.room_stands(slot),
            Slot::FirstStud(of) | Slot::FoundStud(of, _) | Slot::StudFace(of) => {
                self.length(self.stud_field(*of, slot))
            }
            Slot::Patch(task, field) => self.length(self.patch_field(*task, *field)),
            Slot::OtherHole(task, hole, field) => {
                self.length(self.hole_field(*task, Some(*hole), *field))
            }
            Slot::FromStud(task, hole, stud) => {
                self.length(self.hole_from_stud(*task, *hole, *stud))
            }
            Slot::AirWarmth(task) => {
                let unit = if job.units.is_metric() { "°C" } else { "°F" };
                let warmth = self.air(*task).map(|air| {
                    if job.units.is_metric() {
                        (air.fahrenheit - 32.0) / 1.8
                    } else {
                        air.fahrenheit
                    }
                });
                number(unit, warmth)
            }
            Slot::AirHumidity(task) => number("%", self.air(*task).map(|air| air.humidity)),
            Slot::Paint(task, field) => self.paint_stands(*task, *field),
            Slot::Tile(task, field) => self.tile_stands(*task, *field),
            Slot::Mix(task, field) => self.mix_stands(*task, *field),
            Slot::Pipe(task, field) => self.pipe_stands(*task, *field),
            Slot::Drain(task, field) => self.drain_stands(*task, *field),
            Slot::Sheets(task, field) => self.sheets_stands(*task, *field),
            Slot::Trim(task, field) => self.trim_stands(*task, *field),
            Slot::Cut(material, field) => self.cut_stands(material, *field),
            Slot::Roll => self.length(None),
            Slot::Photo(at, field) => self.photo_stands(*at, *field),
            Slot::Tape(field) => self.tape_stands(*field),
            Slot::Price(key) => money(job.buying.prices.get(key).copied()),
            Slot::Packs(key) => count(job.buying.overrides.get(key).copied()),
            Slot::HandText(id) | Slot::HandCount(id) | Slot::HandPrice(id) => {
                let line = job.buying.by_hand.iter().find(|line| line.id == *id);
                match slot {
                    Slot::HandText(_) => words(line.map_or("", |line| &line.text)),
                    Slot::HandCount(_) => count(line.map(|line| line.count)),
                    _ => money(line.and_then(|line| line.price)),
                }
            }
        }
    }

    /// A length as it could be typed again.
    fn length(&self, length: Option<Length>) -> Stands {
        let units = self.job.units;
        let plain = length.map(|l| units.length(l, Rounding::Nearest, Figures::Plain));
        (Kind::Length, plain.unwrap_or_default())
    }

    fn room_stands(&self, slot: &Slot) -> Stands {
        let rooms = &self.job.rooms;
        let wall = |room: &usize, wall: &usize| -> Option<&Wall> {
            rooms.get(*room).and_then(|r| r.walls.get(*wall))
        };
        let opening = |room: &usize, at: &usize| -> Option<&Opening> {
            rooms.get(*room).and_then(|r| r.openings.get(*at))
        };
        self.length(match slot {
            Slot::WallTurn(room, at) => {
                return number("°", wall(room, at).map(|w| room_page::corner(w.turn)));
            }
            Slot::WallLength(room, at) => wall(room, at).and_then(|w| w.length),
            Slot::Ceiling(room) => rooms.get(*room).and_then(|r| r.ceiling),
            Slot::WallHeight(room, at) => wall(room, at).and_then(|w| w.height),
            Slot::OpeningFromLeft(room, at) => opening(room, at).and_then(|o| o.from_left),
            Slot::OpeningWidth(room, at) => opening(room, at).and_then(|o| o.width),
            Slot::OpeningHeight(room, at) => opening(room, at).and_then(|o| o.height),
            Slot::OpeningSill(room, at) => opening(room, at).and_then(|o| o.sill),
            _ => None,
        })
    }

    fn tile_stands(&self, task: usize, field: TileSlot) -> Stands {
        let metric = self.job.units.is_metric();
        let Some(Ask::Tile(ask, _)) = self.job.tasks.get(task).map(|t| &t.ask) else {
            return self.length(None);
        };
        match field {
            TileSlot::Turn => number("°", Some(ask.turn.in_degrees())),
            TileSlot::Breakage => number("%", Some(ask.breakage * 100.0)),
            TileSlot::Attic => count(Some(ask.attic)),
            TileSlot::Shift => match ask.pattern {
                Pattern::Bond { over, of } => {
                    number("%", Some(f64::from(over) / f64::from(of.max(1)) * 100.0))
                }
                _ => number("%", None),
            },
            TileSlot::SheetAlong => count(ask.sheet.map(|sheet| sheet.along.into())),
            TileSlot::SheetRows => count(ask.sheet.map(|sheet| sheet.rows.into())),
            TileSlot::Box => match ask.box_of {
                Some(BoxOf::Faces(size) | BoxOf::Laid(size)) => area(Some(size), metric),
                Some(BoxOf::Tiles(n)) => count(Some(n)),
                None => count(None),
            },
            _ => self.length(self.tile_field(task, field)),
        }
    }

    fn tape_stands(&self, field: TapeSlot) -> Stands {
        let tape = &self.job.tape;
        self.length(match field {
            TapeSlot::Side(at) => tape.sides[at % 2],
            TapeSlot::Diagonal(at) => tape.diagonals[at % 2],
            TapeSlot::Run => tape.run,
            TapeSlot::Width => tape.width,
            TapeSlot::Scale => Some(tape.scale),
            TapeSlot::OnPaper => tape.on_paper,
            TapeSlot::OnSite => tape.on_site,
            TapeSlot::Count => return count(Some(tape.count)),
        })
    }

    fn paint_stands(&self, task: usize, field: PaintSlot) -> Stands {
        let Some(Ask::Paint(ask, rule)) = self.job.tasks.get(task).map(|t| &t.ask) else {
            return self.length(None);
        };
        let metric = self.job.units.is_metric();
        match field {
            PaintSlot::Rate(product) => rate(coats(ask, product).label_rate, metric),
            PaintSlot::Solids(product) => {
                let share = coats(ask, product).volume_solids;
                number("%", share.map(|share| share * 100.0))
            }
            PaintSlot::DryFilm(product) => film(coats(ask, product).dry_film, metric),
            PaintSlot::Label(product) => words(&coats(ask, product).label),
            PaintSlot::Disturbed => area(Some(ask.disturbed).filter(|a| a.value > 0.0), metric),
            PaintSlot::SmallOpening => match rule {
                OpeningRule::SmallNotDeducted(least) => area(Some(*least), metric),
                _ => area(None, metric),
            },
            PaintSlot::Width(at) => self.length(ask.surfaces.get(at).and_then(|s| s.width)),
            PaintSlot::Height(at) => self.length(ask.surfaces.get(at).and_then(|s| s.height)),
            PaintSlot::TrimLength(at) => self.length(measured(ask.trim.get(at).map(|t| t.length))),
            PaintSlot::TrimFace(at) => self.length(measured(ask.trim.get(at).map(|t| t.face))),
            PaintSlot::Stature => self.length(ask.reach.stature),
            PaintSlot::StandingOff => self.length(Some(ask.reach.standing_off)),
        }
    }
}

/// A length that is there only when it is more than nothing.
pub(super) fn measured(length: Option<Length>) -> Option<Length> {
    length.filter(|length| length.is_positive())
}

/// One of paint's products.
pub(super) fn coats(ask: &paint::Ask, product: Product) -> &paint::Coats {
    match product {
        Product::Primer => &ask.primer,
        Product::Finish => &ask.finish,
        Product::Trim => &ask.trim_finish,
    }
}

fn words(text: &str) -> Stands {
    (Kind::Words, text.to_owned())
}

/// A number to two places, without its trailing noughts.
fn number(unit: &'static str, value: Option<f64>) -> Stands {
    let text = value.map(|n| format!("{}", (n * 100.0).round() / 100.0));
    (Kind::Number(unit), text.unwrap_or_default())
}

fn count(count: Option<u32>) -> Stands {
    let text = count.map(|count| count.to_string());
    (Kind::Number(""), text.unwrap_or_default())
}

fn money(price: Option<Money>) -> Stands {
    let text = price.map(|price| {
        let minor = price.as_minor();
        format!("{}.{:02}", minor / 100, minor % 100)
    });
    (Kind::Number("each"), text.unwrap_or_default())
}

fn rate(rate: Option<SpreadRate>, metric: bool) -> Stands {
    if metric {
        number("m²/L", rate.map(in_square_metres_per_litre))
    } else {
        number("ft²/gal", rate.map(in_square_feet_per_gallon))
    }
}

fn area(area: Option<Area>, metric: bool) -> Stands {
    if metric {
        number("m²", area.map(in_square_metres))
    } else {
        number("ft²", area.map(in_square_feet))
    }
}

/// A film in mils (thousandths of an inch) or micrometres.
fn film(film: Option<Length>, metric: bool) -> Stands {
    if metric {
        number("µm", film.map(|film| film.metres() * 1e6))
    } else {
        number("mil", film.map(|film| film.metres() / 25.4e-6))
    }
}
