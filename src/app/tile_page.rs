//! The tile screen.

use std::rc::Rc;

use super::{
    App, Chip, Command, Here, Row, Screen, Slot, ThingField, TileSlot, Tone, tile_inputs,
    view::Big, wall_page::kind_name, words,
};
use crate::drawing::{Look, Role, ThingPart, TileTag, tile_sketch};
use crate::measure::{Amount, Length};
use crate::site::{Opening, Wall, surface};
use crate::takeoff::{Ask, TileOn};
use crate::trades::tile::{self, CutKind, Figure, Problem, Sheets, Taken};

/// Layouts that are remembered, so that one screen figures each but once.
const REMEMBERED: usize = 6;
/// Lines of the cut list that are shown.
const LISTED: usize = 60;

/// A layout, or why there is none.
pub(super) type Laid = Rc<Result<Figure, Problem>>;

/// Tiles, counted in words.
fn tiles(count: usize) -> String {
    counted(count, false)
}

/// What is bought, counted in words: tiles, or sheets of mosaic.
pub(super) fn counted(count: usize, sheets: bool) -> String {
    let one = if sheets { "sheet" } else { "tile" };
    let more = if count == 1 { "" } else { "s" };
    format!("{count} {one}{more}")
}

impl App {
    /// What is asked, with the surface that the room knows; `None` while the room does not know it.
    pub(super) fn tile_ask(&self, at: usize) -> Option<tile::Ask> {
        let task = self.job.tasks.get(at)?;
        let Ask::Tile(stored, on) = &task.ask else {
            return None;
        };
        let mut ask = (**stored).clone();
        let room = task.room.and_then(|room| self.job.rooms.get(room));
        match (on, room) {
            (TileOn::Own, _) | (_, None) => {}
            (TileOn::Floor, Some(room)) => {
                ask.surface = surface::floor(room)?;
                ask.on = tile::Surface::Floor;
            }
            (TileOn::Wall(wall), Some(room)) => {
                ask.surface = surface::wall(room, *wall)?;
                ask.on = tile::Surface::Wall;
            }
        }
        self.as_slid(at, &mut ask);
        Some(ask)
    }

    /// A layout, figured once for each ask.
    pub(super) fn tile_figure(&self, ask: &tile::Ask) -> Laid {
        let mut known = self.laid.borrow_mut();
        if let Some(at) = known.iter().position(|(known, _)| known == ask) {
            let found = known.remove(at);
            let figure = Rc::clone(&found.1);
            known.push(found);
            return figure;
        }
        let figure = Rc::new(tile::figure(ask));
        known.push((ask.clone(), Rc::clone(&figure)));
        if known.len() > REMEMBERED {
            known.remove(0);
        }
        figure
    }

    /// A tile figure's last answer.
    pub(super) fn tile_answer(&self, at: usize) -> String {
        let figure = self.tile_ask(at).map(|ask| self.tile_figure(&ask));
        match figure.as_deref() {
            Some(Ok(figure)) => counted(figure.to_buy, figure.layout.sheets.is_some()),
            _ => "not figured yet".to_owned(),
        }
    }

    /// The tile screen.
    pub(super) fn tile_page(&self, at: usize, stored: &tile::Ask, on: TileOn) -> Screen {
        let task = &self.job.tasks[at];
        let room = task.room.and_then(|room| self.job.rooms.get(room));
        let what = match (room, on) {
            (Some(room), TileOn::Wall(wall)) => {
                format!("Wall {}, {}", Wall::named(wall), room.name)
            }
            (Some(room), TileOn::Floor) => format!("Floor, {}", room.name),
            _ => "Quick, no room".to_owned(),
        };
        let base = Screen {
            crumb: what,
            title: "Tile".into(),
            back: Some(Here::Bench),
            ..Screen::default()
        };
        let Some(ask) = self.tile_ask(at) else {
            let mut rows = vec![Row::Note {
                tone: Tone::Caution,
                text: "The room is not measured far enough: this surface needs its walls, its height and its openings.".into(),
                detail: String::new(),
                mend: task.room.map(|room| Chip::new("Measure the room", false, Command::Go(Here::Room(room)))),
            }];
            rows.extend(self.task_rows(at));
            return Screen { rows, ..base };
        };
        let figured = self.tile_figure(&ask);
        let own = on == TileOn::Own;
        let picture = tile_sketch(
            &ask,
            figured.as_ref().as_ref().ok(),
            Look {
                own,
                joint: self.joint_role(at),
                picked: self.picked_thing(at, &ask),
            },
            self.job.units,
        )
        .map_tags(|tag| {
            let thing = |n, field| TileSlot::Thing(n, field);
            let slot = match tag {
                TileTag::Width => TileSlot::Width,
                TileTag::Height => TileSlot::Height,
                TileTag::Thing(n, ThingPart::Width) => thing(n, ThingField::Width),
                TileTag::Thing(n, ThingPart::Height) => thing(n, ThingField::Height),
                TileTag::Thing(n, ThingPart::Left) => thing(n, ThingField::Left),
                TileTag::Thing(n, ThingPart::Top) => thing(n, ThingField::Top),
            };
            Command::Pad(Slot::Tile(at, slot))
        });
        let mut rows = Vec::new();
        rows.extend(self.moved_lines_row(at));
        let (mut strip, mut main) = (Vec::new(), None);
        match figured.as_ref() {
            Err(problem) => rows.push(Row::Note {
                tone: Tone::Stop,
                text: words::tile_problem(
                    problem,
                    &|what| self.taken_name(at, what),
                    self.job.units,
                ),
                detail: String::new(),
                mend: tile_inputs::mend(at, problem),
            }),
            Ok(figure) => {
                main = Some(self.list_button(at));
                strip = self.tile_strip(&ask, figure);
                // What can hurt stands right under the result, before its details.
                rows.extend(self.near_hidden(at));
                rows.extend(self.warnings(&figure.account));
                rows.extend(self.outline_notes(at));
            }
        }
        rows.extend(self.tile_inputs(at, &ask, stored, on));
        if let Ok(figure) = figured.as_ref() {
            rows.extend(self.remarks(&figure.account));
            rows.extend(self.tile_results(&ask, figure));
        }
        let id = task.id;
        rows.push(Row::Heading("Another spec of this surface".into()));
        rows.push(Row::button(
            "Copy it and change the copy",
            Command::Twin(at),
        ));
        if self.has_rivals(at) {
            rows.push(Row::button("Side by side", Command::Go(Here::Compare(at))));
        }
        rows.push(Row::Heading("With these tiles".into()));
        rows.push(Row::button("Grout for them", Command::NewGrout(Some(id))));
        rows.push(Row::button(
            "Mortar under them",
            Command::NewMortar(Some(id)),
        ));
        rows.extend(self.task_rows(at));
        Screen {
            picture: Some(picture),
            slides: figured.is_ok() || self.is_sliding(),
            rows,
            strip,
            main,
            ..base
        }
    }

    /// What no tile lies under, by its name: an opening of the wall, or its number in the list.
    fn taken_name(&self, at: usize, what: Taken) -> String {
        let hole = match what {
            Taken::Thing(n) => return format!("no. {} in the way", n + 1),
            Taken::Hole(n) => n,
        };
        let task = self.job.tasks.get(at);
        let opening = task.and_then(|task| {
            let Ask::Tile(_, TileOn::Wall(wall)) = task.ask else {
                return None;
            };
            let openings = &self.job.rooms.get(task.room?)?.openings;
            // Those that stand on the floor are notches of the outline.
            let above = |o: &&Opening| o.wall == wall && o.sill.is_some_and(Length::is_positive);
            openings.iter().filter(above).nth(hole)
        });
        match opening {
            Some(opening) => format!(
                "the {} {} from the left",
                kind_name(opening.kind).to_lowercase(),
                self.show_or_ask(opening.from_left)
            ),
            None => format!("hole {} of the surface", hole + 1),
        }
    }

    /// How joints are drawn: dark, light or between, by what the grout of these tiles is called.
    pub(super) fn joint_role(&self, at: usize) -> Role {
        let id = self.job.tasks.get(at).map(|task| task.id);
        let color = self.job.tasks.iter().find_map(|task| match &task.ask {
            Ask::Grout(grout, of) if *of == id && id.is_some() => Some(grout.color.to_lowercase()),
            _ => None,
        });
        let named = |words: &[&str]| {
            let color = color.as_deref().unwrap_or_default();
            words.iter().any(|word| color.contains(word))
        };
        if named(&["black", "dark", "charcoal", "brown", "anthracite", "navy"]) {
            Role::Ink
        } else if named(&["white", "ivory", "cream"]) {
            Role::Sheet
        } else if named(&["gray", "grey", "silver", "slate"]) {
            Role::Soft
        } else {
            Role::Rule
        }
    }

    fn tile_strip(&self, ask: &tile::Ask, figure: &Figure) -> Vec<Big> {
        let mut strip = vec![Big {
            value: figure.to_buy.to_string(),
            label: match &figure.layout.sheets {
                Some(sheets) => format!("sheets, {} cut", sheets.cut.len()),
                None => format!("tiles, {} cut", figure.layout.cut()),
            },
        }];
        if let Some((boxes, spare)) = figure.boxes {
            strip.push(Big {
                value: boxes.to_string(),
                label: format!("boxes, {spare} spare"),
            });
        }
        strip.push(match figure.narrowest {
            Some(narrowest) => Big {
                value: self.show(narrowest),
                label: "narrowest cut".into(),
            },
            None => Big {
                value: "none".into(),
                label: "cut".into(),
            },
        });
        // Beside boxes a fourth figure has no room; it stands in the list.
        if figure.boxes.is_none() {
            strip.push(Big {
                value: self.amount(figure.covered),
                label: covered(ask.on).into(),
            });
        }
        strip
    }

    fn tile_results(&self, ask: &tile::Ask, figure: &Figure) -> Vec<Row> {
        let mut rows = vec![Row::Heading("Counts".into())];
        rows.push(Row::ours(covered(ask.on), self.amount(figure.covered)));
        rows.push(Row::ours("Whole tiles", figure.layout.whole().to_string()));
        rows.push(Row::ours("Cut pieces", figure.layout.cut().to_string()));
        if let Some(sheets) = &figure.layout.sheets {
            rows.extend(self.sheet_results(ask, sheets));
        } else {
            rows.push(Row::ours(
                "Tiles, each piece from its own",
                figure.without_reuse.to_string(),
            ));
            rows.push(Row::Figure {
                label: "Tiles, off-cuts used again".into(),
                detail: fewer(ask, figure),
                value: figure.with_reuse.to_string(),
                command: None,
            });
        }
        rows.push(Row::ours(
            "Under half a tile",
            figure.small.len().to_string(),
        ));
        rows.push(Row::ours(
            "Joints, of the field",
            self.amount(Amount::Share(figure.joints)),
        ));
        rows.push(Row::ours("Edges left open", self.show(figure.edges)));
        rows.extend(self.chalk_rows(ask, figure));
        rows.extend(self.cut_rows(figure));
        rows
    }

    /// Sheets of mosaic: whole ones, those that are cut along their joints, and the pieces they are cut into.
    fn sheet_results(&self, ask: &tile::Ask, sheets: &Sheets) -> Vec<Row> {
        let (wide, high) = tile::sheet_size(ask, sheets.sheet);
        let fewer = sheets.count() - sheets.at_least;
        let mut rows = vec![
            Row::ours("A sheet", self.amount(Amount::Size(wide, high))),
            Row::ours("Sheets laid whole", sheets.whole.to_string()),
            Row::Figure {
                label: "Sheets cut along their joints".into(),
                detail: if fewer == 0 {
                    "fewest possible".into()
                } else {
                    format!("at most {fewer} fewer may do")
                },
                value: sheets.cut.len().to_string(),
                command: None,
            },
            Row::ours(
                "Sheets, each piece from its own",
                sheets.blocks.len().to_string(),
            ),
        ];
        let mut cut: std::collections::BTreeMap<String, usize> = std::collections::BTreeMap::new();
        for sheet in &sheets.cut {
            let piece = |n: &usize| {
                let (along, rows) = sheets.blocks[*n].size;
                format!("{along} by {rows}")
            };
            let pieces: Vec<String> = sheet.iter().map(piece).collect();
            *cut.entry(pieces.join(", ")).or_default() += 1;
        }
        if !cut.is_empty() {
            rows.push(Row::Heading(
                "Sheets to cut, in small tiles along and rows".into(),
            ));
            for (pieces, count) in cut.into_iter().take(LISTED) {
                rows.push(Row::ours(pieces, counted(count, true)));
            }
        }
        rows
    }

    /// Lines to chalk from two walls, the triangle that proves them, and marks along a batten.
    fn chalk_rows(&self, ask: &tile::Ask, figure: &Figure) -> Vec<Row> {
        let mut rows = Vec::new();
        if let Some(lines) = figure.chalk {
            rows.push(Row::Heading("Lines to chalk, in a joint".into()));
            rows.push(Row::ours(
                "From the left, and from the right",
                format!(
                    "{} and {}",
                    self.show(lines.from_left),
                    self.show(lines.to_right)
                ),
            ));
            rows.push(Row::ours(
                "From the top, and from the bottom",
                format!(
                    "{} and {}",
                    self.show(lines.from_top),
                    self.show(lines.to_bottom)
                ),
            ));
            let (a, b, c) = lines.triangle;
            rows.push(Row::Figure {
                label: "Square, by a triangle on the lines".into(),
                detail: "along the one, along the other, and between the two marks".into(),
                value: format!("{}, {}, {}", self.show(a), self.show(b), self.show(c)),
                command: None,
            });
        }
        if let Some(first) = tile::running(ask, &figure.layout, false).first() {
            rows.push(Row::Figure {
                label: "Lay a row dry along the line first".into(),
                detail: "the row at the upper edge ends here; whole rows begin below it".into(),
                value: self.show(*first),
                command: None,
            });
        }
        for (across, label) in [
            (true, "Marks on a batten, from the left"),
            (false, "Marks on a batten, from the top"),
        ] {
            let marks = tile::running(ask, &figure.layout, across);
            if !marks.is_empty() {
                let marks: Vec<String> = marks.iter().take(60).map(|m| self.show(*m)).collect();
                rows.push(Row::Heading(label.into()));
                rows.push(Row::Text(marks.join("   ")));
            }
        }
        rows
    }

    fn cut_rows(&self, figure: &Figure) -> Vec<Row> {
        let mut rows = Vec::new();
        if figure.cuts.is_empty() {
            return rows;
        }
        rows.push(Row::Heading("Cut list, numbered as on the drawing".into()));
        for cut in figure.cuts.iter().take(LISTED) {
            let kind = match cut.kind {
                CutKind::Straight => "one straight cut",
                CutKind::Slant => "one cut at a slant",
                CutKind::Corner => "two cuts",
                CutKind::Curve => "cut round or more than twice",
                CutKind::Several => "more than one piece of the tile",
            };
            rows.push(Row::Figure {
                label: format!("No. {}, {} of them", cut.number, cut.pieces.len()),
                detail: format!("{kind}; {}", self.cut_lines(cut)),
                value: self.amount(Amount::Size(cut.size.0, cut.size.1)),
                command: None,
            });
        }
        let number: std::collections::HashMap<usize, u32> = figure
            .cuts
            .iter()
            .flat_map(|cut| cut.pieces.iter().map(|at| (*at, cut.number)))
            .collect();
        let mut shared: std::collections::BTreeMap<Vec<u32>, usize> =
            std::collections::BTreeMap::new();
        for planned in figure.plan.tiles.iter().filter(|p| p.pieces.len() > 1) {
            let mut numbers: Vec<u32> = planned.pieces.iter().map(|at| number[at]).collect();
            numbers.sort_unstable();
            *shared.entry(numbers).or_default() += 1;
        }
        if !shared.is_empty() {
            rows.push(Row::Heading("Pieces that come out of one tile".into()));
            for (numbers, count) in shared.into_iter().take(LISTED) {
                let numbers: Vec<String> = numbers.iter().map(u32::to_string).collect();
                rows.push(Row::ours(
                    format!("Nos. {}", numbers.join(" and ")),
                    tiles(count),
                ));
            }
        }
        rows
    }

    /// Where the lines of a cut run, for the first two.
    fn cut_lines(&self, cut: &tile::Cut) -> String {
        let rounds = cut.rounds.iter().map(|((x, y), radius)| {
            let place = |from: Length, near: &str, past: &str| {
                let way = if from < Length::ZERO { past } else { near };
                format!("{} {way}", self.show(from.abs()))
            };
            format!(
                "round, radius {}, about a centre {} and {}",
                self.show(*radius),
                place(*x, "from the left", "past the left edge"),
                place(*y, "from the top", "past the top edge")
            )
        });
        let rounds: Vec<String> = rounds.collect();
        let lines = cut.lines.iter().take(2).map(|[a, b]| {
            let close = |x: Length, y: Length| (x - y).abs() < Length::nm(100_000);
            if close(a.0, b.0) {
                format!("{} from the left", self.show(a.0))
            } else if close(a.1, b.1) {
                format!("{} from the top", self.show(a.1))
            } else {
                format!(
                    "from {} across, {} down to {} across, {} down",
                    self.show(a.0),
                    self.show(a.1),
                    self.show(b.0),
                    self.show(b.1)
                )
            }
        });
        rounds
            .into_iter()
            .chain(lines)
            .collect::<Vec<_>>()
            .join("; ")
    }
}

/// How sure it is that no plan takes fewer tiles.
fn fewer(ask: &tile::Ask, figure: &Figure) -> String {
    let fewer = figure.plan.tiles.len() - figure.plan.at_least;
    if !ask.reuse {
        "off-cuts are thrown away, as you chose".into()
    } else if fewer == 0 {
        "fewest possible; the plan below says which piece comes out of which tile".into()
    } else {
        format!(
            "at most {fewer} fewer may do; the plan below says which piece comes out of which tile"
        )
    }
}

/// What is covered.
fn covered(on: tile::Surface) -> &'static str {
    match on {
        tile::Surface::Floor => "floor covered",
        tile::Surface::Wall => "wall covered",
    }
}
