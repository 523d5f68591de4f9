//! What a room leaves, piece by piece: rests of sticks and pipe, off-cuts of tile, what is left in packs.

use std::collections::BTreeMap;

use super::{App, Chip, Command, RoomChoice, Row};
use crate::measure::{Amount, Figures, Length};
use crate::takeoff::{self, Ask, Buying, Line, LineKey, Piece, Setup};
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

impl App {
    /// Piece by piece what the first room leaves for another.
    pub(super) fn leftover_rows(&self, first: usize, alone: &[Line]) -> Vec<Row> {
        let mut rows = vec![Row::Heading("What the first room leaves".into())];
        let least = self.rooms_view.least;
        rows.push(Row::choice(
            "Rests of sticks and pipe, at least",
            LEAST.map(|inches| {
                let of = Length::inches(inches);
                let command = Command::Of(first, RoomChoice::LeastRest(of));
                Chip::new(self.show(of), of == least, command)
            }),
        ));
        rows.extend(self.rests_of_sticks(first, least, alone));
        rows.extend(self.rests_of_tile(first));
        rows.extend(self.rests_of_packs(alone));
        if rows.len() == 2 {
            rows.push(Row::Text("Nothing that could be told.".into()));
        }
        rows
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

    /// Rests of sticks, each to be handed over as an off-cut on hand.
    fn rests_of_sticks(&self, first: usize, least: Length, alone: &[Line]) -> Vec<Row> {
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
        let mut rows = Vec::new();
        for cuts in takeoff::cutting(&self.pieces_in(first), &bare) {
            let is = |line: &&Line| line.key == LineKey::Material(cuts.material.clone());
            let name = alone.iter().find(is).map_or("", |line| &line.title);
            let handed = known.get(&cuts.material).map_or(&[][..], |s| &s.offcuts);
            let mut handed = handed.to_vec();
            for bar in &cuts.bars {
                if bar.rest < least {
                    continue;
                }
                let at = handed.iter().position(|length| *length == bar.rest);
                if let Some(at) = at {
                    handed.remove(at);
                }
                rows.push(Row::Check {
                    label: format!("{name}, {}", self.show(bar.rest)),
                    detail: if at.is_some() {
                        "on hand in the cutting plan".into()
                    } else {
                        "tick it to have it on hand in the cutting plan".into()
                    },
                    value: String::new(),
                    on: at.is_some(),
                    command: Command::HandOver(cuts.material.clone(), bar.rest, at.is_none()),
                    more: None,
                });
            }
        }
        let tasks = || {
            self.job
                .tasks
                .iter()
                .filter(|task| task.room == Some(first))
        };
        if !rows.is_empty() && tasks().any(|task| task.on_list) {
            rows.push(Row::Text(
                "The first room is still on the buying list. Take its runs and patches off it once they are cut, or their sticks are counted twice."
                    .into(),
            ));
        }
        rows
    }

    /// Off-cuts of tile by size, the largest first; tile has no off-cuts on hand, so they are told.
    fn rests_of_tile(&self, first: usize) -> Vec<Row> {
        let mut rows = Vec::new();
        for (at, task) in self.job.tasks.iter().enumerate() {
            if task.room != Some(first) || !matches!(task.ask, Ask::Tile(..)) {
                continue;
            }
            let Some(ask) = self.tile_ask(at) else {
                continue;
            };
            let known = self.tile_figure(&ask);
            let Ok(figure) = known.as_ref() else { continue };
            let (sizes, others) = rests(&ask, figure);
            for ((long, short), count) in sizes {
                rows.push(Row::Figure {
                    label: "Off-cut of tile".into(),
                    detail: self.task_name(at),
                    value: format!("{count} × {} by {}", self.show(long), self.show(short)),
                    command: None,
                });
            }
            if others > 0 {
                rows.push(Row::Figure {
                    label: "Off-cuts of other shapes".into(),
                    detail: self.task_name(at),
                    value: others.to_string(),
                    command: None,
                });
            }
        }
        rows
    }

    /// What is left in the packs that the first room opens.
    fn rests_of_packs(&self, alone: &[Line]) -> Vec<Row> {
        let rest = |line: &Line| {
            let bought = line.packs.iter();
            let all =
                bought.map(|(pack, count)| amount_of(&pack.holds).map(|n| n * f64::from(*count)));
            let all = all.sum::<Option<f64>>()?;
            let left = all - amount_of(&line.needed)?;
            (left > all * 1e-6).then(|| with_amount(&line.needed, left))?
        };
        let rows = alone.iter().filter_map(|line| {
            let left = rest(line)?;
            Some(Row::Figure {
                label: line.title.clone(),
                detail: format!("left of {}", self.packs(line)),
                value: self.job.units.amount(&left, Figures::Set),
                command: None,
            })
        });
        rows.collect()
    }

    /// A rest into the off-cuts on hand of its material, or out of them.
    pub(super) fn hand_over(&mut self, material: &Material, rest: Length, on: bool) {
        let said = if on {
            "On hand in the cutting plan"
        } else {
            "No longer on hand"
        };
        self.edit(said, |job| {
            let Buying { cutting, .. } = &mut job.buying;
            let setup = cutting
                .entry(material.clone())
                .or_insert_with(|| Setup::usual(material));
            if on {
                setup.offcuts.push(rest);
            } else if let Some(at) = setup.offcuts.iter().position(|length| *length == rest) {
                setup.offcuts.remove(at);
            }
        });
    }
}

/// What is left of the tiles that are cut: rectangles by size, the largest first, and how many of other shapes.
fn rests(ask: &tile::Ask, figure: &tile::Figure) -> (Vec<((Length, Length), usize)>, usize) {
    let size_of: BTreeMap<usize, (Length, Length)> = (figure.cuts.iter())
        .flat_map(|cut| cut.pieces.iter().map(|piece| (*piece, cut.size)))
        .collect();
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

/// A count, a mass, a volume or an area as a number.
fn amount_of(amount: &Amount) -> Option<f64> {
    match amount {
        Amount::Count(count) => Some(*count as f64),
        Amount::Mass(mass) => Some(mass.value),
        Amount::Volume(volume) => Some(volume.value),
        Amount::Length(length) => Some(length.metres()),
        _ => None,
    }
}

/// The same kind of amount, so much of it.
fn with_amount(like: &Amount, much: f64) -> Option<Amount> {
    Some(match like {
        Amount::Count(_) => Amount::Count(much.round() as i64),
        Amount::Mass(mass) => Amount::Mass(*mass * (much / mass.value)),
        Amount::Volume(volume) => Amount::Volume(*volume * (much / volume.value)),
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

    #[test]
    fn rests_of_the_first_room_are_handed_over_and_taken_back() {
        let begun = DateTime::parse_from_rfc3339("2026-03-14T09:00:00-05:00").unwrap();
        let mut app = App::new(demo_job(begun), Keeper::nowhere());
        app.send(Command::Of(0, RoomChoice::Second(true)));
        app.send(Command::Go(Here::SideBySide(0, 2)));
        let ticks = |app: &App| -> Vec<(String, bool, Command)> {
            let rows = app.screen().rows.into_iter();
            rows.filter_map(|row| match row {
                Row::Check {
                    label, on, command, ..
                } => Some((label, on, command)),
                _ => None,
            })
            .collect()
        };
        let before = ticks(&app);
        assert!(!before.is_empty() && before.iter().all(|(_, on, _)| !on));
        app.send(before[0].2.clone());
        let Command::HandOver(material, rest, true) = &before[0].2 else {
            unreachable!("a rest is handed over")
        };
        assert_eq!(app.job.buying.cutting[material].offcuts, [*rest]);
        let after = ticks(&app);
        assert_eq!(after[0].0, before[0].0);
        assert!(after[0].1);
        app.send(after[0].2.clone());
        assert!(app.job.buying.cutting[material].offcuts.is_empty());
        // Fewer are worth keeping from four feet on.
        app.send(Command::Of(0, RoomChoice::LeastRest(Length::feet(4))));
        assert!(ticks(&app).len() < before.len());
        // Tile and packs are told.
        let told = |label: &str| {
            let rows = app.screen().rows;
            rows.iter()
                .any(|row| matches!(row, Row::Figure { label: of, .. } if of.starts_with(label)))
        };
        assert!(told("Off-cut"));
    }
}
