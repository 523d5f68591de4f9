//! The bench of trades, and the working of a figure.

use super::trim_page::trim_name;
use super::{App, Card, Chip, Command, Here, Icon, Row, Screen, Tone, words};
use crate::measure::Figures;
use crate::takeoff::{Ask, TileOn};
use crate::trades::sheets::Surface;
use crate::trades::{Account, Weight, trim};

impl App {
    /// The bench: each trade a card, then the figures of this job.
    pub(super) fn bench_page(&self) -> Screen {
        let last = |of: fn(&Ask) -> bool| {
            let task = self.job.tasks.iter().rposition(|task| of(&task.ask));
            task.map(|at| self.answer(at))
        };
        let roll = self.job.roll.last().map(|line| self.show(line.length));
        let card = |title: &str, answer: Option<String>, otherwise: &str, icon, command| Card {
            title: title.to_owned(),
            answer: answer.unwrap_or_else(|| otherwise.to_owned()),
            icon,
            command,
        };
        let cards = vec![
            card(
                "Patch",
                last(|ask| matches!(ask, Ask::Patch(..))),
                "a hole in the wall",
                Icon::Patch,
                Command::NewPatch(None),
            ),
            card(
                "Paint",
                last(|ask| matches!(ask, Ask::Paint(..))),
                "walls, ceiling, trim",
                Icon::Paint,
                Command::NewPaint(None),
            ),
            card(
                "Tile",
                last(|ask| matches!(ask, Ask::Tile(..))),
                "every piece before the first cut",
                Icon::Tile,
                Command::NewTile(None, TileOn::Own),
            ),
            card(
                "Sheets",
                last(|ask| matches!(ask, Ask::Sheets(..))),
                "board and underlayment, cut to the true shape",
                Icon::Sheets,
                Command::NewSheets(None, TileOn::Own, Surface::Floor),
            ),
            card(
                "Trim",
                last(|ask| matches!(ask, Ask::Trim(..))),
                "base and casing, cut to the true corners",
                Icon::Trim,
                Command::NewTrim(None, trim::Kind::Base),
            ),
            card(
                "Grout",
                last(|ask| matches!(ask, Ask::Grout(..))),
                "joints, bags, sealant",
                Icon::Grout,
                Command::NewGrout(None),
            ),
            card(
                "Mortar",
                last(|ask| matches!(ask, Ask::Mortar(..))),
                "beds, mixes, batches",
                Icon::Mortar,
                Command::NewMortar(None),
            ),
            card(
                "Pipe",
                last(|ask| matches!(ask, Ask::Pipe(..))),
                "runs, offsets, cut lengths",
                Icon::Pipe,
                Command::NewPipe(None),
            ),
            card(
                "Drain",
                last(|ask| matches!(ask, Ask::Drain(..))),
                "fall, holes, traps",
                Icon::Drain,
                Command::NewDrain(None),
            ),
            card(
                "Tape",
                roll,
                "sums, spacing, square",
                Icon::Tape,
                Command::Go(Here::Tape),
            ),
        ];
        let mut rows = Vec::new();
        if !self.job.tasks.is_empty() {
            rows.push(Row::Heading("Figures of this job".into()));
        }
        for at in 0..self.job.tasks.len() {
            rows.push(Row::Figure {
                label: self.task_name(at),
                detail: String::new(),
                value: self.answer(at),
                command: Some(Command::Go(Here::Task(at))),
            });
        }
        Screen {
            crumb: self.job.name.clone(),
            title: "Figure".into(),
            cards,
            rows,
            ..Screen::default()
        }
    }

    /// A figure's screen.
    pub(super) fn task_page(&self, at: usize) -> Screen {
        match self.job.tasks.get(at).map(|task| &task.ask) {
            Some(Ask::Patch(ask, wall)) => self.patch_page(at, ask, *wall),
            Some(Ask::Paint(ask, rule)) => self.paint_page(at, ask, *rule),
            Some(Ask::Tile(ask, on)) => self.tile_page(at, ask, *on),
            Some(Ask::Grout(_, of)) => self.grout_page(at, *of),
            Some(Ask::Mortar(_, of)) => self.mortar_page(at, *of),
            Some(Ask::Pipe(ask, _)) => self.pipe_page(at, ask),
            Some(Ask::Drain(_)) => self.drain_page(at),
            Some(Ask::Sheets(..)) => self.sheets_page(at),
            Some(Ask::Trim(ask, on)) => self.trim_page(at, ask, on),
            None => self.bench_page(),
        }
    }

    /// What a figure is called, without the mark of what it stands on: for whatever a figure is figured from, and for words
    /// that are looked for in it. All that is read says [`App::task_name`].
    pub(super) fn bare_name(&self, at: usize) -> String {
        let Some(task) = self.job.tasks.get(at) else {
            return String::new();
        };
        let room = task
            .room
            .and_then(|room| self.job.rooms.get(room))
            .map(|room| room.name.as_str());
        let (trade, wall) = match &task.ask {
            Ask::Patch(_, wall) => ("Patch", wall.map(crate::site::Wall::named)),
            Ask::Paint(..) => ("Paint", None),
            Ask::Tile(_, TileOn::Wall(wall)) => ("Tile", Some(crate::site::Wall::named(*wall))),
            Ask::Tile(..) => ("Tile", None),
            Ask::Grout(..) => ("Grout", None),
            Ask::Mortar(..) => ("Mortar", None),
            Ask::Pipe(ask, _) if ask.name.is_empty() => ("Pipe", None),
            Ask::Pipe(ask, _) => (ask.name.as_str(), None),
            Ask::Drain(..) => ("Drain", None),
            Ask::Sheets(_, TileOn::Wall(wall)) => ("Sheets", Some(crate::site::Wall::named(*wall))),
            Ask::Sheets(..) => ("Sheets", None),
            Ask::Trim(ask, _) => (trim_name(ask), None),
        };
        match (room, wall) {
            (Some(room), Some(wall)) => format!("{trade}, wall {wall}, {room}"),
            (Some(room), None) => format!("{trade}, {room}"),
            _ => trade.to_owned(),
        }
    }

    /// A figure's account, if it can be figured.
    pub(super) fn account(&self, at: usize) -> Option<Account> {
        let task = self.job.tasks.get(at)?;
        match &task.ask {
            Ask::Patch(..) => crate::trades::patch::figure(&self.patch_ask(at)?)
                .ok()
                .map(|figure| figure.account),
            Ask::Tile(..) => match self.tile_figure(&self.tile_ask(at)?).as_ref() {
                Ok(figure) => Some(figure.account.clone()),
                Err(_) => None,
            },
            Ask::Grout(..) | Ask::Mortar(..) => self.mix_account(at),
            Ask::Pipe(ask, _) => crate::trades::pipe::figure(ask)
                .ok()
                .map(|figure| figure.account),
            Ask::Drain(..) => self.drain_account(at),
            Ask::Sheets(..) => self.sheets_account(at),
            Ask::Trim(..) => self.trim_figure(at).map(|figure| figure.account),
            Ask::Paint(..) => crate::trades::paint::figure(&self.paint_ask(at)?)
                .ok()
                .map(|figure| figure.account),
        }
    }

    /// A figure's last answer, short.
    fn answer(&self, at: usize) -> String {
        match &self.job.tasks[at].ask {
            Ask::Patch(..) => self.patch_answer(at),
            Ask::Paint(..) => self.paint_answer(at),
            Ask::Tile(..) => self.tile_answer(at),
            Ask::Grout(..) | Ask::Mortar(..) => self.mix_answer(at),
            Ask::Pipe(..) => self.pipe_answer(at),
            Ask::Drain(..) => self.drain_answer(at),
            Ask::Sheets(..) => self.sheets_answer(at),
            Ask::Trim(..) => self.trim_answer(at),
        }
    }

    /// How a figure was figured.
    pub(super) fn working_page(&self, at: usize) -> Screen {
        let units = self.job.units;
        let mut rows = Vec::new();
        if let Some(account) = self.account(at) {
            rows.extend(self.outline_working(at));
            for step in &account.working {
                let sum = words::sum(&step.sum, units);
                let gives = units.amount(&step.gives, Figures::Set);
                rows.push(Row::Heading(units.phrase(&step.what, Figures::Set)));
                rows.push(Row::ours(
                    if sum.is_empty() {
                        "taken as".to_owned()
                    } else {
                        sum
                    },
                    gives,
                ));
                rows.push(Row::Text(words::cite(&step.cite)));
            }
        }
        if rows.is_empty() {
            rows.push(Row::Text(
                "Nothing is figured yet: fill in the blue figures first.".into(),
            ));
        }
        Screen {
            crumb: self.task_name(at),
            title: "How it was figured".into(),
            back: Some(Here::Task(at)),
            rows,
            ..Screen::default()
        }
    }

    /// What stops or warns, then what can hurt, then what is worth knowing.
    pub(super) fn notes(&self, account: &Account) -> Vec<Row> {
        let mut rows = self.warnings(account);
        rows.extend(self.remarks(account));
        rows
    }

    /// What stops or warns, then what can hurt.
    pub(super) fn warnings(&self, account: &Account) -> Vec<Row> {
        let mut rows = self.findings(account, |weight| weight != Weight::Note);
        rows.extend(account.cautions.iter().map(|caution| Row::Note {
            tone: Tone::Caution,
            text: format!("{}: {}", caution.danger, caution.says),
            detail: words::cite(&caution.cite),
            mend: None,
        }));
        rows
    }

    /// What is worth knowing.
    pub(super) fn remarks(&self, account: &Account) -> Vec<Row> {
        self.findings(account, |weight| weight == Weight::Note)
    }

    fn findings(&self, account: &Account, of: impl Fn(Weight) -> bool) -> Vec<Row> {
        let found = account.findings.iter().filter(|finding| of(finding.weight));
        found
            .map(|finding| Row::Note {
                tone: match finding.weight {
                    Weight::Note => Tone::Note,
                    Weight::Caution => Tone::Caution,
                    Weight::Stop => Tone::Stop,
                },
                text: self.job.units.phrase(&finding.says, Figures::Set),
                detail: words::cite(&finding.rule),
                mend: None,
            })
            .collect()
    }

    /// The rows that end every figure's list.
    pub(super) fn task_rows(&self, at: usize) -> Vec<Row> {
        vec![
            Row::button("How it was figured", Command::Go(Here::Working(at))),
            Row::button("Remove this figure", Command::RemoveTask(at)),
        ]
    }

    /// The main button of a figure: onto the buying list, or to it.
    pub(super) fn list_button(&self, at: usize) -> Chip {
        if self.job.tasks.get(at).is_some_and(|task| task.on_list) {
            Chip::new("Take off buying list", true, Command::OnList(at, false))
        } else {
            Chip::new("Add to buying list", false, Command::OnList(at, true))
        }
    }
}
