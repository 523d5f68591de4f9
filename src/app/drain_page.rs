//! The drain screen.

use super::mix_page::big;
use super::{App, Chip, Command, Here, Row, Screen, Slot, Tone, drain_inputs, view::Big, words};
use crate::drawing::{drain_sketch, drain_stretch};
use crate::handbook::drain::{ROUGH_INS, Standing};
use crate::handbook::{Sourced, framing};
use crate::measure::{Amount, Length, Rounding};
use crate::site::{Fault, Member};
use crate::takeoff::Ask;
use crate::trades::Account;
use crate::trades::drain::{self, Figure, Problem, Through};

impl App {
    fn drain_ask(&self, at: usize) -> Option<&drain::Ask> {
        match &self.job.tasks.get(at)?.ask {
            Ask::Drain(ask) => Some(ask),
            _ => None,
        }
    }

    /// A drain's account.
    pub(super) fn drain_account(&self, at: usize) -> Option<Account> {
        let figure = drain::figure(self.drain_ask(at)?).ok()?;
        Some(figure.account)
    }

    /// A drain's last answer.
    pub(super) fn drain_answer(&self, at: usize) -> String {
        match self.drain_ask(at).map(drain::figure) {
            Some(Ok(figure)) => format!("falls {}", self.show(figure.total)),
            _ => "not figured yet".to_owned(),
        }
    }

    /// The drain screen.
    pub(super) fn drain_page(&self, at: usize) -> Screen {
        let Some(ask) = self.drain_ask(at) else {
            return self.bench_page();
        };
        let room = self.job.tasks[at]
            .room
            .and_then(|room| self.job.rooms.get(room));
        let figured = drain::figure(ask);
        let mut rows = Vec::new();
        let (mut strip, mut results, mut picture, mut main) = (Vec::new(), Vec::new(), None, None);
        match &figured {
            Err(problem) => rows.push(self.drain_problem(at, problem)),
            Ok(figure) => {
                strip = self.drain_strip(ask, figure);
                // What can hurt stands right under the result, before its details.
                rows.extend(self.warnings(&figure.account));
                results = self.drain_results(ask, figure);
                results.extend(self.remarks(&figure.account));
                if !figure.account.needs.is_empty() {
                    main = Some(self.list_button(at));
                }
                let sketch = drain_sketch(ask, figure, self.job.units);
                picture = Some(sketch.map_tags(|field| Command::Pad(Slot::Drain(at, field))));
            }
        }
        rows.extend(self.drain_inputs(at, ask, figured.as_ref().ok()));
        rows.extend(results);
        rows.extend(self.rough_ins());
        rows.extend(self.lay_rows(at));
        rows.extend(self.task_rows(at));
        Screen {
            crumb: room.map_or_else(|| "Quick, no room".to_owned(), |room| room.name.clone()),
            title: "Drain".into(),
            back: Some(Here::Bench),
            picture,
            rows,
            strip,
            main,
            ..Screen::default()
        }
    }

    fn drain_problem(&self, at: usize, problem: &Problem) -> Row {
        let change = |field| {
            let slot = Slot::Drain(at, field);
            Some(Chip::new("Change it", false, Command::Pad(slot)))
        };
        let (text, mend) = match problem {
            Problem::Beyond { field, least, most } => (
                format!(
                    "“{}” is out of range: it has to be from {} to {}.",
                    drain_inputs::asks(*field),
                    self.amount(least.clone()),
                    self.amount(most.clone())
                ),
                change(*field),
            ),
            Problem::HoleTooSmall(pipe) => (
                format!(
                    "The pipe does not go through this hole: it is {} wide outside.",
                    self.show(*pipe)
                ),
                change(drain::Field::Hole),
            ),
            Problem::TooManyMembers(most) => (
                format!(
                    "More than {most} joists or studs lie on the way. Shorten the run, or measure from one to the next again."
                ),
                change(drain::Field::Spacing),
            ),
        };
        Row::Note {
            tone: Tone::Stop,
            text,
            detail: String::new(),
            mend,
        }
    }

    fn drain_strip(&self, ask: &drain::Ask, figure: &Figure) -> Vec<Big> {
        let mut strip = vec![
            big(self.show(figure.total), "fall over the run"),
            big(self.show(figure.fall), "fall in a foot"),
        ];
        if let Some(member) = ask.through.member() {
            let wrong = figure.holes.iter().filter(|hole| !hole.faults.is_empty());
            let (all, wrong) = (
                figure.holes.iter().filter(|hole| !hole.clear).count(),
                wrong.count(),
            );
            let label = match (wrong, member.largest_hole()) {
                (0, _) => "holes, inside the limits named".to_owned(),
                (_, None) => "holes to ask the maker about".to_owned(),
                (wrong, Some(_)) => format!("holes, {wrong} beyond the limits"),
            };
            strip.push(big(all.to_string(), &label));
        }
        if let Some(needs) = figure.needs {
            strip.push(big(
                drain_inputs::size_name(needs).to_owned(),
                &format!("least for {} fixture units", figure.units),
            ));
        }
        strip
    }

    fn drain_results(&self, ask: &drain::Ask, figure: &Figure) -> Vec<Row> {
        let mut rows = vec![
            Row::Heading("Along the run".into()),
            Row::Text(format!(
                "On the sketch heights are drawn {} times as large as lengths.",
                drain_stretch(ask, figure)
            )),
            Row::ours("Height at the upper end", self.show(figure.start)),
            Row::ours("Height at the lower end", self.show(figure.end)),
            Row::ours("Pipe along the fall", self.show(figure.sloped)),
        ];
        let studs = matches!(ask.through, Through::Studs { .. });
        if let Some((from, to)) = figure.place {
            rows.push(Row::Figure {
                label: "Centre of a hole".into(),
                detail: if studs {
                    "from a face of the stud"
                } else {
                    "above the lower edge"
                }
                .into(),
                value: self.amount(Amount::range(from, to)),
                command: None,
            });
        }
        if let Some(reach) = figure.reach {
            rows.push(Row::ours("From here it goes as far as", self.show(reach)));
        }
        for (n, hole) in figure.holes.iter().enumerate() {
            let what = if studs { "Stud" } else { "Joist" };
            let fault = if hole.clear {
                ", clear of it".to_owned()
            } else {
                hole.faults.iter().map(|fault| self.fault(*fault)).collect()
            };
            rows.push(Row::Figure {
                label: format!("{what} {}", n + 1),
                detail: format!("{} along{fault}", self.show(hole.at)),
                value: self.show(hole.centre),
                command: None,
            });
        }
        rows.extend(self.limit_rows(ask));
        if let Some(arm) = figure.arm {
            rows.push(Row::Heading("The trap arm".into()));
            rows.push(Row::ours(
                "From the weir to the vent",
                self.amount(Amount::range(arm.least, arm.most)),
            ));
            rows.push(Row::ours("It falls", self.show(arm.falls)));
        }
        self.trap_rows(ask, &mut rows);
        if let Some(flange) = figure.flange {
            rows.push(Row::Heading("The closet flange".into()));
            rows.push(Row::ours("Bare studs to its centre", self.show(flange)));
        }
        rows
    }

    pub(super) fn fault(&self, fault: Fault) -> String {
        let down = |length: Length| {
            let shown = length.rounded(Length::in_64(0, 4), Rounding::FitInside);
            self.show(shown)
        };
        match fault {
            Fault::TooLarge(most) => format!(", more than {}", down(most)),
            Fault::NearEdge(least) => format!(", less than {} beside it", self.show(least)),
            Fault::AskMaker => ", ask the maker".to_owned(),
        }
    }

    /// What the member may have cut out of it, rounded down.
    fn limit_rows(&self, ask: &drain::Ask) -> Vec<Row> {
        let Some(member) = ask.through.member() else {
            return Vec::new();
        };
        let down =
            |limit: Length| self.show(limit.rounded(Length::in_64(0, 4), Rounding::FitInside));
        let share = |rule: &Sourced<framing::Share>| {
            let (over, under) = rule.value;
            Length::nm(member.depth().as_nm() * over / under)
        };
        let mut list = Vec::new();
        if let Some(rule) = member.hole_rule() {
            list.push(("Largest hole", share(rule), rule.cite));
        }
        if let Some(rule) = member.notch_rule() {
            list.push(("Deepest notch", share(rule), rule.cite));
        }
        if let Member::Joist { .. } = member {
            for (what, rule) in [
                ("Longest notch", &framing::JOIST_NOTCH_LENGTH),
                ("Deepest notch at its end", &framing::JOIST_END_NOTCH),
            ] {
                list.push((what, share(rule), rule.cite));
            }
        }
        if list.is_empty() {
            return Vec::new();
        }
        let edge = member.edge_rule();
        list.push(("Wood left beside a hole", edge.value, edge.cite));
        let rows = list.into_iter().map(|(what, limit, cite)| Row::Figure {
            label: what.into(),
            detail: words::cite(&cite),
            value: down(limit),
            command: None,
        });
        let heading = Row::Heading("Limits of the framing, rounded down".into());
        std::iter::once(heading).chain(rows).collect()
    }

    fn trap_rows(&self, ask: &drain::Ask, rows: &mut Vec<Row>) {
        let each = drain::Fixture::ALL
            .into_iter()
            .enumerate()
            .zip(ask.fixtures);
        let mut first = true;
        for ((n, fixture), count) in each.filter(|(_, count)| *count > 0) {
            if first {
                rows.push(Row::Heading("Traps and units".into()));
                first = false;
            }
            let (units, trap, cite) = drain::units(fixture);
            let slot = drain::Field::Fixtures(n);
            let trap = trap.map_or_else(
                || "trap in the fixture".to_owned(),
                |trap| format!("trap {} at least", self.show(trap)),
            );
            rows.push(Row::Figure {
                label: drain_inputs::asks(slot).into(),
                detail: format!("{trap}; {}", words::cite(&cite)),
                value: format!("{count} × {units}"),
                command: None,
            });
        }
    }

    /// Heights and clearances with what each stands on.
    fn rough_ins(&self) -> Vec<Row> {
        let mut rows = vec![
            Row::Heading("Rough-in, from finished floor and wall".into()),
            Row::Text("The fixture's own sheet goes before all of these.".into()),
        ];
        rows.extend(ROUGH_INS.iter().map(|each| {
            let standing = match each.standing {
                Standing::Code => "model code",
                Standing::Practice => "common practice, no code",
                Standing::Sheet => "by the fixture's sheet",
            };
            Row::Figure {
                label: each.what.into(),
                detail: format!("{standing}; {}", words::cite(&each.cite)),
                value: self.amount(Amount::range(each.from, each.to)),
                command: None,
            }
        }));
        rows
    }
}
