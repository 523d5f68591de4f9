//! What paint asks for: surfaces, trim, coats, labels, and who paints.

use super::stands::{coats, measured};
use super::{App, Chip, Choice, Command, PaintSlot, Row, Slot};
use crate::measure::quantity::{
    Area, SpreadRate, square_feet, square_feet_per_gallon, square_metres, square_metres_per_litre,
};
use crate::measure::{Amount, Length};
use crate::site::OpeningRule;
use crate::takeoff::{Ask, Job};
use crate::trades::paint::{self, Binder, Built, Coats, Part, Product, Sheen, Surface, Texture};

impl App {
    /// The rows in which paint is asked for; with a room its walls are the room's.
    pub(super) fn paint_inputs(
        &self,
        at: usize,
        ask: &paint::Ask,
        stored: &paint::Ask,
        rule: Option<OpeningRule>,
    ) -> Vec<Row> {
        let mut rows = match rule {
            Some(rule) => self.room_surfaces(at, ask, rule),
            None => self.own_surfaces(at, stored),
        };
        let texture = stored
            .surfaces
            .first()
            .map_or(Texture::Smooth, |surface| surface.kind);
        let textures = [
            (Texture::BareBoard, "Bare board"),
            (Texture::Smooth, "Smooth"),
            (Texture::Textured, "Textured"),
            (Texture::HeavyTexture, "Heavy texture"),
            (Texture::Masonry, "Masonry"),
        ];
        rows.push(one_of(
            at,
            "How it feels",
            texture,
            &textures,
            Choice::Texture,
        ));
        rows.extend(self.trim_rows(at, stored));
        rows.push(Row::Heading("Coats".into()));
        let counts = [(1, "1"), (2, "2"), (3, "3")];
        rows.push(one_of(
            at,
            "Coats of paint",
            ask.finish.coats,
            &counts,
            Choice::Coats,
        ));
        rows.push(one_of(
            at,
            "Coats of primer on bare board",
            ask.primer.coats,
            &counts[..2],
            Choice::PrimerCoats,
        ));
        rows.extend(house_rows(at, ask));
        for (product, what) in [
            (Product::Finish, "The wall paint"),
            (Product::Primer, "The primer"),
            (Product::Trim, "The trim paint"),
        ] {
            if product == Product::Trim && stored.trim.is_empty() {
                continue;
            }
            rows.extend(self.product_rows(at, coats(ask, product), product, what));
        }
        rows.extend(self.person_rows(at, ask));
        rows
    }

    fn room_surfaces(&self, at: usize, ask: &paint::Ask, rule: OpeningRule) -> Vec<Row> {
        let mut rows: Vec<Row> = ask
            .surfaces
            .iter()
            .map(|surface| Row::Figure {
                label: surface.name.clone(),
                detail: "from the room".into(),
                value: self.amount(surface.area),
                command: None,
            })
            .collect();
        let under = match rule {
            OpeningRule::SmallNotDeducted(least) => least,
            _ => square_feet(100.0),
        };
        let rules = [
            ("Taken off".to_owned(), OpeningRule::Net),
            ("Measured solid".to_owned(), OpeningRule::Solid),
            (
                format!("Under {} not taken off", self.amount(under)),
                OpeningRule::SmallNotDeducted(under),
            ),
        ];
        rows.push(Row::choice(
            "Openings",
            rules.map(|(label, r)| {
                Chip::new(label, r == rule, Command::Set(at, Choice::Openings(r)))
            }),
        ));
        if matches!(rule, OpeningRule::SmallNotDeducted(_)) {
            rows.push(Row::yours(
                "Openings under",
                self.amount(under),
                Command::Pad(Slot::Paint(at, PaintSlot::SmallOpening)),
            ));
        }
        rows
    }

    fn own_surfaces(&self, at: usize, stored: &paint::Ask) -> Vec<Row> {
        let mut rows = Vec::new();
        let pad = |slot| Command::Pad(Slot::Paint(at, slot));
        for (n, surface) in stored.surfaces.iter().enumerate() {
            let (one, other) = match surface.part {
                Part::Wall => ("width", "height"),
                Part::Ceiling => ("one side", "other side"),
            };
            let name = format!("{} {}", surface.name, n + 1);
            rows.push(Row::yours(
                format!("{name}, {one}"),
                self.show_or_ask(surface.width),
                pad(PaintSlot::Width(n)),
            ));
            rows.push(Row::yours(
                format!("{name}, {other}"),
                self.show_or_ask(surface.height),
                pad(PaintSlot::Height(n)),
            ));
        }
        let add = |label, part| Chip::new(label, false, Command::Set(at, Choice::AddSurface(part)));
        rows.push(Row::choice(
            "Another surface",
            [add("Wall", Part::Wall), add("Ceiling", Part::Ceiling)],
        ));
        if stored.surfaces.len() > 1 {
            let chip = |(n, surface): (usize, &Surface)| {
                Chip::new(
                    format!("{} {}", surface.name, n + 1),
                    false,
                    Command::Set(at, Choice::RemoveSurface(n)),
                )
            };
            rows.push(Row::choice(
                "One surface fewer",
                stored.surfaces.iter().enumerate().map(chip),
            ));
        }
        rows
    }

    fn trim_rows(&self, at: usize, stored: &paint::Ask) -> Vec<Row> {
        let mut rows = vec![Row::Heading("Trim".into())];
        let pad = |slot| Command::Pad(Slot::Paint(at, slot));
        for (n, trim) in stored.trim.iter().enumerate() {
            rows.push(Row::yours(
                format!("{}, length", trim.name),
                self.show_or_ask(measured(Some(trim.length))),
                pad(PaintSlot::TrimLength(n)),
            ));
            rows.push(Row::yours(
                format!("{}, painted face", trim.name),
                self.show_or_ask(measured(Some(trim.face))),
                pad(PaintSlot::TrimFace(n)),
            ));
        }
        rows.push(Row::choice(
            "Add a run of trim",
            ["Base", "Casing", "Other trim"]
                .map(|name| Chip::new(name, false, Command::Set(at, Choice::AddTrim(name)))),
        ));
        if !stored.trim.is_empty() {
            rows.push(Row::choice(
                "One run fewer",
                stored.trim.iter().enumerate().map(|(n, trim)| {
                    let remove = Command::Set(at, Choice::RemoveTrim(n));
                    Chip::new(trim.name.clone(), false, remove)
                }),
            ));
        }
        rows
    }

    fn product_rows(&self, at: usize, coats: &Coats, product: Product, what: &str) -> Vec<Row> {
        let pad = |slot| Command::Pad(Slot::Paint(at, slot));
        let not_given = || "not given".to_owned();
        let film = coats
            .dry_film
            .map_or_else(not_given, |film| self.amount(Amount::Film(film)));
        vec![
            Row::Heading(what.into()),
            Row::yours("Called", &coats.label, pad(PaintSlot::Label(product))),
            Row::Figure {
                label: "Spread on its label".into(),
                detail: "goes before the handbook's".into(),
                value: coats
                    .label_rate
                    .map_or_else(not_given, |rate| self.amount(rate)),
                command: Some(pad(PaintSlot::Rate(product))),
            },
            Row::yours(
                "Solids by volume",
                coats
                    .volume_solids
                    .map_or_else(not_given, |share| self.amount(Amount::Share(share))),
                pad(PaintSlot::Solids(product)),
            ),
            Row::yours(
                "Dry film wanted of a coat",
                film,
                pad(PaintSlot::DryFilm(product)),
            ),
        ]
    }

    fn person_rows(&self, at: usize, ask: &paint::Ask) -> Vec<Row> {
        let pad = |slot| Command::Pad(Slot::Paint(at, slot));
        let stature = ask
            .reach
            .stature
            .map_or_else(|| "not given".to_owned(), |stature| self.show(stature));
        let disturbed = if ask.disturbed.value > 0.0 {
            self.amount(ask.disturbed)
        } else {
            "none".to_owned()
        };
        let paid = [(false, "My own home"), (true, "Paid, or rented out")];
        vec![
            Row::Heading("Who paints, and where".into()),
            Row::yours("How tall you are", stature, pad(PaintSlot::Stature)),
            Row::yours(
                "How far off the wall you stand",
                self.show(ask.reach.standing_off),
                pad(PaintSlot::StandingOff),
            ),
            one_of(at, "Whose home", ask.paid_job, &paid, Choice::Paid),
            Row::Figure {
                label: "Old paint scraped, sanded or cut".into(),
                detail: "in this room, all of it together".into(),
                value: disturbed,
                command: Some(pad(PaintSlot::Disturbed)),
            },
        ]
    }
}

/// One of several, each with its word.
fn one_of<T: Copy + PartialEq>(
    at: usize,
    label: &str,
    now: T,
    all: &[(T, &str)],
    choice: impl Fn(T) -> Choice,
) -> Row {
    Row::choice(
        label,
        all.iter()
            .map(|(each, word)| Chip::new(*word, *each == now, Command::Set(at, choice(*each)))),
    )
}

fn house_rows(at: usize, ask: &paint::Ask) -> Vec<Row> {
    let sheens = [
        (Sheen::Flat, "Flat"),
        (Sheen::Eggshell, "Eggshell"),
        (Sheen::SemiGloss, "Semi-gloss"),
        (Sheen::Gloss, "Gloss"),
    ];
    let binders = [
        (Binder::Latex, "Water, latex"),
        (Binder::Alkyd, "Solvent, alkyd"),
    ];
    let levels = [
        (None, "Not known"),
        (Some(3), "3"),
        (Some(4), "4"),
        (Some(5), "5"),
    ];
    let built = [
        (Built::Unknown, "Not known"),
        (Built::Before1978, "Before 1978"),
        (Built::From1978, "1978 or later"),
    ];
    vec![
        one_of(at, "Sheen", ask.sheen, &sheens, Choice::Sheen),
        one_of(at, "Thinned with", ask.binder, &binders, Choice::Binder),
        one_of(
            at,
            "Finish level of the board",
            ask.level,
            &levels,
            Choice::Level,
        ),
        one_of(at, "House built", ask.built, &built, Choice::Built),
    ]
}

fn ask_of(job: &mut Job, task: usize) -> Option<(&mut paint::Ask, &mut OpeningRule)> {
    match &mut job.tasks.get_mut(task)?.ask {
        Ask::Paint(ask, rule) => Some((ask, rule)),
        Ask::Patch(..)
        | Ask::Tile(..)
        | Ask::Grout(..)
        | Ask::Mortar(..)
        | Ask::Pipe(..)
        | Ask::Drain(..)
        | Ask::Sheets(..)
        | Ask::Trim(..) => None,
    }
}

fn coats_of(ask: &mut paint::Ask, product: Product) -> &mut Coats {
    match product {
        Product::Primer => &mut ask.primer,
        Product::Finish => &mut ask.finish,
        Product::Trim => &mut ask.trim_finish,
    }
}

/// A length into a field of paint.
pub(super) fn fill_length(job: &mut Job, task: usize, field: PaintSlot, length: Length) {
    let Some((ask, _)) = ask_of(job, task) else {
        return;
    };
    match field {
        PaintSlot::Stature => ask.reach.stature = Some(length),
        PaintSlot::StandingOff => ask.reach.standing_off = length,
        PaintSlot::TrimLength(at) => {
            if let Some(trim) = ask.trim.get_mut(at) {
                trim.length = length;
            }
        }
        PaintSlot::TrimFace(at) => {
            if let Some(trim) = ask.trim.get_mut(at) {
                trim.face = length;
            }
        }
        PaintSlot::Width(at) => {
            if let Some(surface) = ask.surfaces.get_mut(at) {
                surface.width = Some(length);
                size_up(surface);
            }
        }
        PaintSlot::Height(at) => {
            if let Some(surface) = ask.surfaces.get_mut(at) {
                surface.height = Some(length);
                size_up(surface);
            }
        }
        _ => {}
    }
}

/// Area and edges of a surface by hand, once both its sides are measured.
fn size_up(surface: &mut Surface) {
    if let (Some(width), Some(height)) = (surface.width, surface.height) {
        let whole = Surface::wall(width, height);
        surface.area = whole.area;
        surface.cut_in = whole.cut_in;
    }
}

/// Words into a field of paint.
pub(super) fn fill_words(job: &mut Job, task: usize, field: PaintSlot, text: String) {
    if let (PaintSlot::Label(product), Some((ask, _))) = (field, ask_of(job, task)) {
        coats_of(ask, product).label = text;
    }
}

/// A number into a field of paint, or why it cannot stand there.
pub(super) fn fill_number(
    job: &mut Job,
    task: usize,
    field: PaintSlot,
    number: f64,
    metric: bool,
) -> Result<(), String> {
    let Some((ask, rule)) = ask_of(job, task) else {
        return Ok(());
    };
    let area = |number| -> Area {
        if metric {
            square_metres(number)
        } else {
            square_feet(number)
        }
    };
    match field {
        PaintSlot::Disturbed => ask.disturbed = area(number),
        PaintSlot::SmallOpening => *rule = OpeningRule::SmallNotDeducted(area(number)),
        _ if number == 0.0 => return Err("This has to be more than nothing.".into()),
        PaintSlot::Rate(product) => {
            let rate: SpreadRate = if metric {
                square_metres_per_litre(number)
            } else {
                square_feet_per_gallon(number)
            };
            coats_of(ask, product).label_rate = Some(rate);
        }
        PaintSlot::Solids(product) => {
            if number > 100.0 {
                return Err(
                    "Solids by volume are at most 100 %; the data sheet says how much.".into(),
                );
            }
            coats_of(ask, product).volume_solids = Some(number / 100.0);
        }
        PaintSlot::DryFilm(product) => {
            let metres = number * if metric { 1e-6 } else { 25.4e-6 };
            coats_of(ask, product).dry_film = Length::from_metres(metres);
        }
        _ => {}
    }
    Ok(())
}
