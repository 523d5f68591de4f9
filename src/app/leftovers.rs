//! What a room leaves, piece by piece: rests of sticks and pipe, off-cuts of tile, what is left in packs.

use std::collections::BTreeMap;

use super::{App, Chip, Command, Leftover, RoomChoice, Row, Tone};
use crate::measure::{Amount, Figures, Length};
use crate::site::Id;
use crate::takeoff::{self, Ask, Buying, Left, Line, LineKey, Piece, Setup, Sides, Task};
use crate::trades::{Material, tile};

/// The least rests of sticks that are worth keeping, to choose from.
const LEAST: [i64; 4] = [6, 12, 24, 48];

/// The sides of what is left of a tile after one piece was cut across the whole of it; `None` where that leaves no
/// rectangle.
///
/// `side − piece − kerf` along the side that is cut, whole along the other.
///
/// # Source
/// Arithmetic.
pub(super) fn rest_of(
    (long, short): (Length, Length),
    (across, up): (Length, Length),
    kerf: Length,
) -> Option<(Length, Length)> {
    // A hair is no cut: 0.1 mm.
    let whole = |piece: Length, side: Length| piece >= side - Length::nm(100_000);
    let rest = match (whole(across, long), whole(up, short)) {
        (false, true) => (long - across - kerf, short),
        (true, false) => (long, short - up - kerf),
        _ => return None,
    };
    (rest.0.is_positive() && rest.1.is_positive()).then_some(rest)
}

/// Something that a room left, as a row.
struct Rest {
    material: Material,
    left: Leftover,
    label: String,
    detail: String,
    value: String,
}

impl App {
    /// Whether a room has a figure on the buying list that needs a material.
    fn still_needs(&self, room: Id, material: &Material) -> bool {
        let Some(room) = self.job.rooms.iter().position(|of| of.id == room) else {
            return false;
        };
        let listed = |task: &&(usize, &Task)| task.1.on_list && task.1.room == Some(room);
        let tasks: Vec<(usize, &Task)> = self.job.tasks.iter().enumerate().collect();
        tasks.iter().filter(listed).any(|(at, _)| {
            let needs = self.account(*at).unwrap_or_default().needs;
            needs.iter().any(|need| need.material == *material)
        })
    }

    /// The buying list with what rooms left over, where that counts: rests among the off-cuts on hand, and off-cuts of tile as
    /// the tiles that they save.
    pub(super) fn buying_now(&self) -> Buying {
        let buying = &self.job.buying;
        if buying.left.is_empty() {
            return buying.clone();
        }
        let mut now = buying.with_left(|material, room| !self.still_needs(room, material));
        let offcuts = now.left.iter().flat_map(|((material, _), left)| {
            let pieces = left.pieces.iter();
            pieces.map(move |piece| (material.clone(), *piece))
        });
        let mut by_material: BTreeMap<Material, Vec<(Sides, u32)>> = BTreeMap::new();
        for (material, piece) in offcuts {
            by_material.entry(material).or_default().push(piece);
        }
        for (material, offcuts) in by_material {
            let saved = self.tiles_saved(&material, &offcuts) as f64;
            let of = now.left.iter_mut().find(|((of, _), _)| *of == material);
            if let Some((_, left)) = of {
                left.part += saved;
            }
        }
        now
    }

    /// The tiles that need not be cut out of new ones, over all figures on the list.
    fn tiles_saved(&self, material: &Material, offcuts: &[(Sides, u32)]) -> usize {
        let (mut tiles, mut turns) = (Vec::new(), true);
        for (at, task) in self.job.tasks.iter().enumerate() {
            let ask = self.tile_ask(at).filter(|_| task.on_list);
            let Some(ask) = ask else { continue };
            let known = self.tile_figure(&ask);
            let Ok(figure) = known.as_ref() else { continue };
            let ours = figure
                .account
                .needs
                .iter()
                .any(|need| need.material == *material);
            if !ours {
                continue;
            }
            turns &= !ask.grain;
            let size_of = sizes(figure);
            tiles.extend(figure.plan.tiles.iter().map(|planned| {
                let pieces = planned.pieces.iter();
                pieces
                    .filter_map(|piece| size_of.get(piece).copied())
                    .collect()
            }));
        }
        takeoff::tiles_saved(&tiles, offcuts, turns)
    }

    /// What a line is for, and what of it is on hand already.
    pub(super) fn less_on_hand(&self, line: &Line) -> String {
        let LineKey::Material(material) = &line.key else {
            return line.detail.clone();
        };
        let hand = self.buying_now().on_hand(material);
        let hand = hand.min(takeoff::number_of(&line.needed));
        match with_amount(&line.needed, hand).filter(|_| hand > 0.0) {
            Some(hand) => format!(
                "{}; {} of it left over from another room",
                line.detail,
                self.job.units.amount(&hand, Figures::Set)
            ),
            None => line.detail.clone(),
        }
    }

    /// Piece by piece what the first room leaves for another.
    pub(super) fn leftover_rows(&self, first: usize, alone: &[Line]) -> Vec<Row> {
        let mut rows = vec![Row::Heading("What the first room leaves".into())];
        let least = self.rooms_view.least;
        let Some(room) = self.job.rooms.get(first) else {
            return rows;
        };
        let listed = |task: &Task| task.room == Some(first) && task.on_list;
        if self.job.tasks.iter().any(listed) {
            rows.push(Row::Note {
                tone: Tone::Note,
                text: format!(
                    "While {} is on the buying list, its packs are figured together with the others', and what is handed over does not count. Take it off once it is bought and cut.",
                    room.name
                ),
                detail: String::new(),
                mend: Some(Chip::new("Off the list", false, Command::Bought(first))),
            });
        }
        rows.push(Row::choice(
            "Rests of sticks and pipe, at least",
            LEAST.map(|inches| {
                let of = Length::inches(inches);
                let command = Command::Of(first, RoomChoice::LeastRest(of));
                Chip::new(self.show(of), of == least, command)
            }),
        ));
        let before = rows.len();
        let mut all = self.rests_of_sticks(first, least, alone);
        let (tile, others) = self.rests_of_tile(first);
        all.extend(tile);
        all.extend(self.rests_of_packs(alone));
        let mut handed = self.job.buying.left.clone();
        for rest in all {
            rows.push(self.rest_row(first, room.id, rest, &mut handed));
        }
        rows.extend(others);
        if rows.len() == before {
            rows.push(Row::Text("Nothing that could be told.".into()));
        }
        rows
    }

    /// Something left, to be ticked for the other rooms.
    fn rest_row(&self, first: usize, room: Id, rest: Rest, handed: &mut Handed) -> Row {
        let entry = handed.get_mut(&(rest.material.clone(), room));
        // Each is found once, so that of two alike both can be handed over.
        let on = entry.is_some_and(|left| take(left, rest.left));
        let waits = self.still_needs(room, &rest.material);
        let says = match (on, waits) {
            (true, false) => "on hand for the other rooms",
            (true, true) => "counts once this room is off the list",
            (false, true) => "still on the list",
            (false, false) => "tick it to have it on hand for the other rooms",
        };
        let detail = [rest.detail.as_str(), says];
        let detail: Vec<&str> = detail.into_iter().filter(|part| !part.is_empty()).collect();
        Row::Check {
            label: rest.label,
            detail: detail.join("; "),
            value: rest.value,
            on,
            command: Command::HandOver(first, rest.material, rest.left, !on),
            more: None,
        }
    }

    /// Pieces that a room's figures need, by material.
    fn pieces_in(&self, room: usize) -> Vec<Piece> {
        let tasks = self.job.tasks.iter().enumerate();
        let here = tasks.filter(|(_, task)| task.room == Some(room));
        here.flat_map(|(at, task)| {
            let needs = self.account(at).unwrap_or_default().needs;
            let lengths = needs.into_iter().filter_map(|need| match need.amount {
                Amount::Length(length) if takeoff::is_cut(&need.material) => {
                    length.is_positive().then_some((need.material, length))
                }
                _ => None,
            });
            let of = task.id;
            let pieces = lengths.zip(1..).map(|((material, length), number)| Piece {
                material,
                length,
                of,
                number,
            });
            pieces.collect::<Vec<_>>()
        })
        .collect()
    }

    /// Rests of sticks.
    fn rests_of_sticks(&self, first: usize, least: Length, alone: &[Line]) -> Vec<Rest> {
        // Figured as if nothing had been handed over yet.
        let known = &self.job.buying.cutting;
        let bare = known.iter().map(|(material, setup)| {
            let setup = Setup {
                offcuts: Vec::new(),
                ..setup.clone()
            };
            (material.clone(), setup)
        });
        let bare: BTreeMap<Material, Setup> = bare.collect();
        let mut rests = Vec::new();
        for cuts in takeoff::cutting(&self.pieces_in(first), &bare) {
            let is = |line: &&Line| line.key == LineKey::Material(cuts.material.clone());
            let name = alone.iter().find(is).map_or("", |line| &line.title);
            for bar in cuts.bars.iter().filter(|bar| bar.rest >= least) {
                rests.push(Rest {
                    material: cuts.material.clone(),
                    left: Leftover::Stick(bar.rest),
                    label: format!("{name}, {}", self.show(bar.rest)),
                    detail: String::new(),
                    value: String::new(),
                });
            }
        }
        rests
    }

    /// Off-cuts of tile by size, the largest first; those of other shapes are only told.
    fn rests_of_tile(&self, first: usize) -> (Vec<Rest>, Vec<Row>) {
        let (mut all, mut told) = (Vec::new(), Vec::new());
        for (at, task) in self.job.tasks.iter().enumerate() {
            if task.room != Some(first) || !matches!(task.ask, Ask::Tile(..)) {
                continue;
            }
            let Some(ask) = self.tile_ask(at) else {
                continue;
            };
            let known = self.tile_figure(&ask);
            let Ok(figure) = known.as_ref() else { continue };
            let Some(need) = figure.account.needs.first() else {
                continue;
            };
            let (sizes, others) = rests(&ask, figure);
            for ((long, short), count) in sizes {
                let count = u32::try_from(count).unwrap_or(u32::MAX);
                all.push(Rest {
                    material: need.material.clone(),
                    left: Leftover::Pieces((long, short), count),
                    label: "Off-cuts of tile".into(),
                    detail: self.task_name(at),
                    value: format!("{count} × {} by {}", self.show(long), self.show(short)),
                });
            }
            if others > 0 {
                told.push(Row::Figure {
                    label: "Off-cuts of other shapes".into(),
                    detail: self.task_name(at),
                    value: others.to_string(),
                    command: None,
                });
            }
        }
        (all, told)
    }

    /// What is left in the packs that the first room opens.
    fn rests_of_packs(&self, alone: &[Line]) -> Vec<Rest> {
        let rest = |line: &Line| {
            let LineKey::Material(material) = &line.key else {
                return None;
            };
            if takeoff::is_cut(material) || matches!(line.needed, Amount::Size(..)) {
                return None;
            }
            let bought = line.packs.iter();
            let all: f64 = bought
                .map(|(pack, count)| takeoff::number_of(&pack.holds) * f64::from(*count))
                .sum();
            let left = all - takeoff::number_of(&line.needed);
            let amount = with_amount(&line.needed, left).filter(|_| left > all * 1e-6)?;
            Some(Rest {
                material: material.clone(),
                left: Leftover::Part(left),
                label: line.title.clone(),
                detail: format!("left of {}", self.packs(line)),
                value: self.job.units.amount(&amount, Figures::Set),
            })
        };
        alone.iter().filter_map(rest).collect()
    }

    /// What a room left on hand for the others, or no longer.
    pub(super) fn hand_over(&mut self, room: usize, material: &Material, of: Leftover, on: bool) {
        let said = if on {
            "On hand for the other rooms"
        } else {
            "No longer on hand"
        };
        let Some(room) = self.job.rooms.get(room).map(|room| room.id) else {
            return;
        };
        self.edit(said, |job| {
            let key = (material.clone(), room);
            let left = job.buying.left.entry(key.clone()).or_default();
            if on {
                match of {
                    Leftover::Stick(rest) => left.sticks.push(rest),
                    Leftover::Pieces(sides, count) => left.pieces.push((sides, count)),
                    Leftover::Part(part) => left.part = part,
                }
            } else {
                take(left, of);
            }
            if left.is_empty() {
                job.buying.left.remove(&key);
            }
        });
    }
}

/// What was handed over, by material and room.
type Handed = BTreeMap<(Material, Id), Left>;

/// Takes something out of what is left; gives whether it was there.
fn take(left: &mut Left, of: Leftover) -> bool {
    match of {
        Leftover::Stick(rest) => {
            let at = left.sticks.iter().position(|length| *length == rest);
            at.map(|at| left.sticks.remove(at)).is_some()
        }
        Leftover::Pieces(sides, _) => {
            let at = left.pieces.iter().position(|(of, _)| *of == sides);
            at.map(|at| left.pieces.remove(at)).is_some()
        }
        // An opened pack was handed over as it stood then.
        Leftover::Part(_) => std::mem::take(&mut left.part) > 0.0,
    }
}

/// The box of each cut piece of a layout, by its place in the list of tiles.
fn sizes(figure: &tile::Figure) -> BTreeMap<usize, Sides> {
    let cuts = figure.cuts.iter();
    cuts.flat_map(|cut| cut.pieces.iter().map(|piece| (*piece, cut.size)))
        .collect()
}

/// What is left of the tiles that are cut: rectangles by size, the largest first, and how many of other shapes.
fn rests(ask: &tile::Ask, figure: &tile::Figure) -> (Vec<(Sides, usize)>, usize) {
    let size_of = sizes(figure);
    let (mut sizes, mut others) = (BTreeMap::<(Length, Length), usize>::new(), 0);
    for planned in &figure.plan.tiles {
        let one = match planned.pieces.as_slice() {
            [piece] => size_of.get(piece),
            _ => None,
        };
        let sides = (ask.tile.long, ask.tile.short);
        match one.and_then(|size| rest_of(sides, *size, ask.kerf)) {
            Some(rest) => *sizes.entry(rest).or_default() += 1,
            None => others += 1,
        }
    }
    let mut sizes: Vec<_> = sizes.into_iter().collect();
    let area = |(a, b): (Length, Length)| a.metres() * b.metres();
    sizes.sort_by(|a, b| area(b.0).total_cmp(&area(a.0)));
    (sizes, others)
}

/// The same kind of amount, so much of it.
fn with_amount(like: &Amount, much: f64) -> Option<Amount> {
    Some(match like {
        Amount::Count(_) => Amount::Count(much.round() as i64),
        Amount::Mass(mass) => Amount::Mass(*mass * (much / mass.value)),
        Amount::Volume(volume) => Amount::Volume(*volume * (much / takeoff::number_of(like))),
        Amount::Length(_) => Amount::Length(Length::from_metres(much)?),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::{Here, Keeper, demo_job};
    use chrono::DateTime;

    #[test]
    fn what_a_cut_leaves_is_the_tile_less_the_piece_and_the_saw() {
        let inches = Length::inches;
        let check = |piece: (i64, i64), rest: Option<(i64, i64)>| {
            let piece = (inches(piece.0), inches(piece.1));
            let rest = rest.map(|(a, b)| (inches(a), inches(b)));
            assert_eq!(rest_of((inches(12), inches(6)), piece, inches(1)), rest);
        };
        check((4, 6), Some((7, 6)));
        check((12, 2), Some((12, 3)));
        check((12, 6), None);
        check((4, 2), None);
        check((11, 6), None);
    }

    /// A copy of the first room in the demo beside it, and what of it can be handed over: label, ticked, what a tap sends.
    fn beside() -> App {
        let begun = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
        let mut app = App::new(demo_job(begun), Keeper::nowhere());
        app.send(Command::Of(0, RoomChoice::Second(true)));
        for task in &mut app.job.tasks {
            task.on_list = true;
        }
        app.send(Command::Go(Here::SideBySide(0, 2)));
        app
    }

    fn ticks(app: &App) -> Vec<(String, bool, Command)> {
        let rows = app.screen().rows.into_iter();
        let checks = rows.filter_map(|row| match row {
            Row::Check {
                label, on, command, ..
            } => Some((label, on, command)),
            _ => None,
        });
        checks.collect()
    }

    /// How many packs of each material are bought.
    fn bought(app: &App) -> BTreeMap<String, u32> {
        let lines = app.buying_lines().into_iter();
        let count = |line: &Line| line.packs.iter().map(|(_, count)| count).sum();
        lines
            .map(|line| (line.title.clone(), count(&line)))
            .collect()
    }

    #[test]
    fn what_the_first_room_leaves_is_taken_off_what_is_bought_and_counts_once() {
        let mut app = beside();
        let both = bought(&app);
        let rests = ticks(&app);
        assert!(!rests.is_empty() && rests.iter().all(|(_, on, _)| !on));
        for (_, _, command) in rests {
            app.send(command);
        }
        let now = ticks(&app);
        assert!(now.iter().all(|(_, on, _)| *on), "{now:?}");
        // Its own figures are still on the list: what is left of their packs is in there already.
        assert_eq!(bought(&app), both);
        app.send(Command::Bought(0));
        let less = bought(&app);
        let mut bare = app.job.clone();
        bare.buying.left.clear();
        let mut without = App::new(bare, Keeper::nowhere());
        let full = bought(&without);
        assert_eq!(less.len(), full.len());
        assert!(full.iter().all(|(title, count)| less[title] <= *count));
        assert!(
            full.iter().any(|(title, count)| less[title] < *count),
            "{less:?} {full:?}"
        );
        // Both rooms together took as much as the first bought and the second now buys, but for what was spoiled by cutting.
        let first: BTreeMap<String, u32> = {
            let lines = app.lines_in(&[0]).into_iter();
            lines
                .map(|line| (line.title.clone(), line.packs.iter().map(|p| p.1).sum()))
                .collect()
        };
        for (title, count) in &less {
            let had = first.get(title).copied().unwrap_or(0);
            assert!(
                had + count >= both[title],
                "{title}: {had} + {count} < {}",
                both[title]
            );
        }
        // Back on the list it counts no more; and each tick can be taken back.
        app.send(Command::Undo);
        assert_eq!(bought(&app), both);
        app.send(Command::Bought(0));
        for (_, on, command) in ticks(&app) {
            assert!(on);
            app.send(command);
        }
        assert!(app.job.buying.left.is_empty());
        assert_eq!(bought(&app), full);
        without.send(Command::Undo);
        app.send(Command::Undo);
        assert!(!app.job.buying.left.is_empty());
    }

    #[test]
    fn rests_of_sticks_are_on_hand_in_the_cutting_plan_and_tile_saves_tiles() {
        let mut app = beside();
        app.send(Command::Bought(0));
        let all = ticks(&app);
        let of = |wanted: fn(&Leftover) -> bool| {
            let mut found = all.iter().filter_map(|(_, _, command)| match command {
                Command::HandOver(_, material, left, true) if wanted(left) => {
                    Some((material.clone(), *left, command.clone()))
                }
                _ => None,
            });
            found.next().unwrap()
        };
        let (stick, left, command) = of(|left| matches!(left, Leftover::Stick(_)));
        app.send(command);
        let offcuts = app.buying_now().cutting[&stick].offcuts.clone();
        assert!(matches!(left, Leftover::Stick(rest) if offcuts == [rest]));
        // The person's own off-cuts stay what they were.
        let own = app.job.buying.cutting.get(&stick);
        assert!(own.is_none_or(|own| own.offcuts.is_empty()));
        let (tile, left, command) = of(|left| matches!(left, Leftover::Pieces(..)));
        app.send(command);
        let saved = app.buying_now().on_hand(&tile);
        let Leftover::Pieces(_, count) = left else {
            return;
        };
        assert!(saved <= f64::from(count));
        // Fewer rests are worth keeping from four feet on.
        app.send(Command::Of(0, RoomChoice::LeastRest(Length::feet(4))));
        assert!(ticks(&app).len() < all.len());
    }
}
