//! How each material is cut, and what holds one back.

use super::{App, pipe_words};
use crate::measure::Amount;
use crate::site::Id;
use crate::takeoff::{self, Cuts, Piece};
use crate::trades::pipe::{self, Problem};
use crate::trades::{Material, Need};

impl App {
    /// The pieces of all figures on the buying list that are cut from sticks, each figure's numbered from 1.
    pub(super) fn pieces(&self) -> Vec<Piece> {
        let mut pieces = Vec::new();
        for (at, task) in self.job.tasks.iter().enumerate() {
            if !task.on_list {
                continue;
            }
            let account = self.account(at).unwrap_or_default();
            let lengths = account
                .needs
                .into_iter()
                .filter_map(|need: Need| match need.amount {
                    Amount::Length(length) if takeoff::is_cut(&need.material) => {
                        length.is_positive().then_some((need.material, length))
                    }
                    _ => None,
                });
            for ((material, length), number) in lengths.zip(1..) {
                pieces.push(Piece {
                    material,
                    length,
                    of: task.id,
                    number,
                });
            }
        }
        pieces
    }

    /// Materials that are cut from sticks, with how the buying list calls them.
    fn cut_materials(&self) -> Vec<(Material, String)> {
        let lines = self.buying_lines().into_iter();
        let cut = lines.filter_map(|line| match line.key {
            takeoff::LineKey::Material(material) if takeoff::is_cut(&material) => {
                Some((material, line.title))
            }
            _ => None,
        });
        cut.collect()
    }

    /// Every material that is cut from sticks with its plan, those held back without one.
    pub(super) fn cut_plans(&self) -> Vec<Plan> {
        let pieces = self.pieces();
        let plans = takeoff::cutting(&pieces, &self.buying_now().cutting);
        let held = self.held_runs();
        let mut all: Vec<Plan> = self
            .cut_materials()
            .into_iter()
            .filter_map(|(material, title)| {
                let cuts = plans.iter().find(|cuts| cuts.material == material)?;
                let mut held: Vec<Held> = held
                    .iter()
                    .filter(|held| held.material == material)
                    .cloned()
                    .collect();
                held.extend(cuts.too_long.iter().map(|piece| self.too_long(piece, cuts)));
                let own = pieces.iter().filter(|piece| piece.material == material);
                Some(Plan {
                    marks: Marks::of(own),
                    cuts: held.is_empty().then(|| cuts.clone()),
                    material,
                    title,
                    held,
                })
            })
            .collect();
        // A run that was refused for its length needs nothing yet: its material may be nobody else's.
        for one in &held {
            if all.iter().all(|plan| plan.material != one.material) {
                all.push(Plan {
                    marks: Marks::of([].iter()),
                    cuts: None,
                    material: one.material.clone(),
                    title: takeoff::title(&one.material),
                    held: held
                        .iter()
                        .filter(|held| held.material == one.material)
                        .cloned()
                        .collect(),
                });
            }
        }
        all
    }

    /// Runs on the buying list that have no figure, since a piece of theirs is longer than their sticks.
    fn held_runs(&self) -> Vec<Held> {
        let tasks = self.job.tasks.iter().enumerate();
        let refused = tasks
            .filter(|(_, task)| task.on_list)
            .filter_map(|(at, _)| {
                let ask = self.pipe_ask(at)?;
                let problem = pipe::figure(ask).err()?;
                let Problem::LongerThanStick { size, stick, .. } = problem else {
                    return None;
                };
                Some(Held {
                    material: Material::Pipe {
                        pipe: ask.pipe,
                        size,
                        stick,
                    },
                    at: Some(at),
                    with_run: true,
                    says: format!(
                        "{}: {}",
                        self.task_name(at),
                        pipe_words::problem(&problem, ask, self.job.units)
                    ),
                })
            });
        refused.collect()
    }

    /// A piece longer than every stick: whose it is, by its leg where it is of a run, and what would be right.
    fn too_long(&self, piece: &Piece, cuts: &Cuts) -> Held {
        let setup = self.setup(&cuts.material);
        let longest = setup.sticks.iter().chain(&setup.offcuts).copied().max();
        let at = self.job.tasks.iter().position(|task| task.id == piece.of);
        let leg = at.and_then(|at| self.leg_of(at, piece.number));
        let of = at.map_or_else(String::new, |at| self.task_name(at));
        let (name, join) = match leg {
            Some(leg) => (
                format!("{of}: leg {}, piece {},", leg + 1, piece.number),
                "put a coupling in it",
            ),
            None => (
                format!("{of}: piece {}", piece.number),
                "join it where something is behind the joint",
            ),
        };
        let usual = self.usual_lengths();
        let longer = usual.iter().find(|stick| piece.length <= **stick);
        let longer = longer.map_or_else(
            || "find longer sticks".to_owned(),
            |stick| format!("take sticks of {} below", self.show(*stick)),
        );
        Held {
            material: cuts.material.clone(),
            at,
            with_run: false,
            says: format!(
                "{name} is {}, longer than the sticks of {}: {longer}, or {join}.",
                self.show(piece.length),
                self.show(longest.unwrap_or_default())
            ),
        }
    }

    /// The leg of a piece of a run.
    pub(super) fn leg_of(&self, at: usize, number: u32) -> Option<usize> {
        let figure = pipe::figure(self.pipe_ask(at)?).ok()?;
        let piece = figure.pieces.iter().find(|piece| piece.number == number)?;
        Some(piece.leg)
    }
}

/// A material and how it is cut.
pub(super) struct Plan {
    /// The material.
    pub material: Material,
    /// How the buying list calls it.
    pub title: String,
    /// The marks of its pieces.
    pub marks: Marks,
    /// Its sticks; `None` where it is held back.
    pub cuts: Option<Cuts>,
    /// What holds it back.
    pub held: Vec<Held>,
}

/// A piece that comes out of no stick.
#[derive(Clone)]
pub(super) struct Held {
    /// Its material.
    material: Material,
    /// Its figure.
    pub at: Option<usize>,
    /// It is refused with its run, which says how long its sticks are.
    pub with_run: bool,
    /// Which piece of which figure, and what would be right.
    pub says: String,
}

/// A letter for each figure, and so a mark for each of its pieces: A1, A2, B1.
pub(super) struct Marks {
    /// Each figure once, in the order of the list.
    pub figures: Vec<Id>,
}

impl Marks {
    fn of<'a>(pieces: impl Iterator<Item = &'a Piece>) -> Marks {
        let mut figures: Vec<Id> = Vec::new();
        for piece in pieces {
            if !figures.contains(&piece.of) {
                figures.push(piece.of);
            }
        }
        Marks { figures }
    }
    pub(super) fn mark(&self, piece: &Piece) -> String {
        let at = self.figures.iter().position(|of| *of == piece.of);
        format!("{}{}", letter(at.unwrap_or(0)), piece.number)
    }
}

/// A, B … Z, then AA.
pub(super) fn letter(n: usize) -> String {
    let of = |n: usize| char::from(b'A' + (n % 26) as u8);
    if n < 26 {
        of(n).to_string()
    } else {
        format!("{}{}", of(n / 26 - 1), of(n))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::{Keeper, demo_job};
    use crate::measure::{Length, plain};
    use crate::takeoff::Setup;
    use crate::trades::pipe::{By, Mark};

    fn app() -> App {
        App::new(
            demo_job(chrono::DateTime::UNIX_EPOCH.fixed_offset()),
            Keeper::nowhere(),
        )
    }

    fn run_of(app: &App, name: &str) -> usize {
        let runs = (0..app.job.tasks.len()).find(|at| {
            app.pipe_ask(*at)
                .is_some_and(|ask| ask.name.starts_with(name))
        });
        runs.expect("a run of the demo")
    }

    fn csv(app: &mut App) -> String {
        let files = app.packet().expect("a packet");
        let (_, bytes) = files
            .into_iter()
            .find(|(name, _)| name == "cutting-plan.csv")
            .expect("it is in the packet");
        String::from_utf8(bytes).expect("text")
    }

    /// A leg of the drain that is 12 ft holds 2 in drain back and names the leg; the copper is planned all the same.
    #[test]
    fn a_run_longer_than_its_sticks_holds_only_its_material_back() {
        let mut app = app();
        let drain = run_of(&app, "Shower drain");
        if let takeoff::Ask::Pipe(ask, _) = &mut app.job.tasks[drain].ask {
            ask.legs[2].by = By::Tape {
                length: Length::feet(12),
                from: Mark::Shoulder,
                to: Mark::Shoulder,
            };
        }
        let plans = app.cut_plans();
        let held: Vec<&Plan> = plans.iter().filter(|plan| plan.cuts.is_none()).collect();
        assert_eq!((plans.len(), held.len()), (3, 1));
        let says = plain(&held[0].held[0].says);
        let right = "Leg 3 is cut 12', longer than the sticks of 10': take sticks of 20', or put a coupling in it.";
        assert!(says.ends_with(right), "{says}");
        let text = csv(&mut app);
        assert_eq!(text.matches("held back").count(), 1);
        assert_eq!(text.matches("Hot to the shower valve").count(), 3);
    }

    /// Sticks set on the page that are too short name the piece's leg, or for boards the piece.
    #[test]
    fn sticks_set_too_short_name_what_does_not_come_out_of_them() {
        let mut app = app();
        for (starts, says) in [
            (
                "Pipe",
                "leg 1, piece 1, is 1' 8 5/8\", longer than the sticks of 1'",
            ),
            ("Lumber", "piece 1 is 1', longer than the sticks of 6\""),
        ] {
            let plan = app.cut_plans().into_iter().find(|plan| {
                let lumber = matches!(plan.material, Material::Lumber { .. });
                lumber == (starts == "Lumber")
            });
            let material = plan.expect("in the demo").material;
            let short = Setup {
                sticks: vec![if starts == "Lumber" {
                    Length::inches(6)
                } else {
                    Length::feet(1)
                }],
                ..Setup::usual(&material)
            };
            app.job.buying.cutting.insert(material.clone(), short);
            let plans = app.cut_plans();
            let plan = plans.iter().find(|plan| plan.material == material);
            let held = plan
                .map(|plan| plain(&plan.held[0].says))
                .unwrap_or_default();
            assert!(held.contains(says), "{held}");
        }
    }

    /// Every piece is in the packet once, with its stick, its figure and its leg.
    #[test]
    fn the_packet_has_every_piece_with_its_stick() {
        let mut app = app();
        let text = csv(&mut app);
        let rows: Vec<&str> = text.lines().collect();
        assert_eq!(rows.len(), 1 + app.pieces().len());
        assert_eq!(
            rows[0],
            "Material,From,Its length,Piece,Cut,Figure,Leg,Left over"
        );
        assert!(rows[1..].iter().all(|row| row.contains(",stick 1,")));
    }
}
