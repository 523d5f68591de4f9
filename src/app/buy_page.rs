//! The buying list.

use super::{App, Chip, Command, Here, Row, Screen, Slot, view::Big, words};
use crate::measure::Figures;
use crate::site::Id;
use crate::takeoff::{self, Asked, Buying, Line, LineKey, PackKey, Task};
use crate::trades::{Material, Need};

impl App {
    /// Every need of some figures, with the figure's name.
    pub(super) fn needs(&self, counts: impl Fn(&Task) -> bool) -> Vec<(String, Need)> {
        (0..self.job.tasks.len())
            .filter(|&at| counts(&self.job.tasks[at]))
            .filter_map(|at| Some((self.task_name(at), self.account(at)?)))
            .flat_map(|(name, account)| {
                account
                    .needs
                    .into_iter()
                    .map(move |need| (name.clone(), need))
            })
            .collect()
    }

    /// The lines that some figures come to.
    pub(super) fn lines_of(&self, counts: impl Fn(&Task) -> bool, buying: &Buying) -> Vec<Line> {
        let needs = self.needs(counts);
        let asked: Vec<Asked<'_>> = needs
            .iter()
            .map(|(figure, need)| Asked {
                figure: figure.clone(),
                need,
            })
            .collect();
        takeoff::lines(&asked, buying)
    }

    /// The lines of the buying list.
    #[must_use]
    pub fn buying_lines(&self) -> Vec<Line> {
        self.lines_of(|task| task.on_list, &self.buying_now())
    }

    /// The buying list.
    pub(super) fn buy_page(&self) -> Screen {
        let lines = self.buying_lines();
        let mut rows = Vec::new();
        if lines.is_empty() {
            rows.push(Row::Text("Nothing to buy yet. Figure something and tap Add to buying list; or write a line by hand.".into()));
        }
        let mut shelf = None;
        for line in &lines {
            if shelf != Some(line.shelf) {
                shelf = Some(line.shelf);
                rows.push(Row::Heading(line.shelf.title().to_owned()));
            }
            rows.push(Row::Check {
                label: line.title.clone(),
                detail: self.less_on_hand(line),
                value: self.packs(line),
                on: line.ticked,
                command: Command::Tick(line.key.clone()),
                more: Some(Command::Go(Here::Line(line.key.clone()))),
            });
        }
        let cut = |line: &Line| match &line.key {
            LineKey::Material(material) => takeoff::is_cut(material),
            LineKey::ByHand(_) => false,
        };
        if lines.iter().any(cut) {
            rows.push(Row::button(
                "Cutting plan",
                Command::Go(Here::Cutting(None)),
            ));
        }
        rows.push(Row::button(
            "Write a line by hand",
            Command::Pad(Slot::HandLine),
        ));
        let buying = &self.job.buying;
        rows.push(Row::choice(
            "Containers",
            [
                Chip::new(
                    "Least left over",
                    buying.choice == takeoff::Choice::LeastLeftOver,
                    Command::Cheapest(false),
                ),
                Chip::new(
                    "Cheapest",
                    buying.choice == takeoff::Choice::Cheapest,
                    Command::Cheapest(true),
                ),
            ],
        ));
        rows.push(Row::choice(
            "Sizes on sale",
            [
                Chip::new(
                    "Quart and gallon",
                    !buying.metric_packs,
                    Command::MetricPacks(false),
                ),
                Chip::new("Litres", buying.metric_packs, Command::MetricPacks(true)),
            ],
        ));
        let total = takeoff::total(&lines);
        let mut strip = Vec::new();
        if !lines.is_empty() {
            let label = if total.unpriced > 0 {
                format!("{} without a price", total.unpriced)
            } else {
                "all priced".to_owned()
            };
            strip.push(Big {
                value: total.price.map_or_else(
                    || "no prices".to_owned(),
                    |price| price.show(&buying.symbol),
                ),
                label,
            });
            strip.push(Big {
                value: total.to_get.to_string(),
                label: "still to get".into(),
            });
        }
        Screen {
            crumb: self.job.name.clone(),
            title: "Buying list".into(),
            rows,
            strip,
            ..Screen::default()
        }
    }

    /// "1 gal + 1 qt".
    pub(super) fn packs(&self, line: &Line) -> String {
        let packs: Vec<String> = line
            .packs
            .iter()
            .map(|(pack, count)| {
                let name = self.job.units.phrase(&pack.name, Figures::Set);
                if *count == 1 && name.starts_with("1 ") {
                    name
                } else {
                    format!("{count} × {name}")
                }
            })
            .collect();
        let text = match (&line.key, packs.is_empty()) {
            (LineKey::ByHand(_), _) => self.amount(line.needed.clone()),
            // Sold by no size that is known: how much it takes.
            (LineKey::Material(material), true)
                if !line.overridden && takeoff::is_cut(material) =>
            {
                "off-cuts on hand do".to_owned()
            }
            (_, true) if !line.overridden => self.amount(line.needed.clone()),
            (_, true) => "none".to_owned(),
            (_, false) => packs.join(" + "),
        };
        if line.overridden {
            format!("{text} (yours)")
        } else {
            text
        }
    }

    /// One line: its packs, prices and working.
    pub(super) fn line_page(&self, key: &LineKey) -> Screen {
        let lines = self.buying_lines();
        let Some(line) = lines.iter().find(|line| line.key == *key) else {
            return self.buy_page();
        };
        let rows = match key {
            LineKey::ByHand(id) => self.hand_rows(*id),
            LineKey::Material(material) => self.material_rows(line, material),
        };
        Screen {
            crumb: "Buying list".into(),
            title: line.title.clone(),
            back: Some(Here::Buy),
            rows,
            ..Screen::default()
        }
    }

    /// What a pack is called.
    pub(super) fn pack_name(&self, key: &PackKey) -> String {
        (self.job.buying.packs(&key.material))
            .iter()
            .find(|pack| pack.millionths() == key.holds)
            .map_or_else(String::new, |pack| {
                self.job.units.phrase(&pack.name, Figures::Set)
            })
    }

    /// A line by hand: what, how many, what one costs.
    fn hand_rows(&self, id: Id) -> Vec<Row> {
        let Some(line) = self.job.buying.by_hand.iter().find(|line| line.id == id) else {
            return Vec::new();
        };
        let symbol = &self.job.buying.symbol;
        let price = line
            .price
            .map_or_else(|| "no price".to_owned(), |price| price.show(symbol));
        vec![
            Row::yours("What to get", &line.text, Command::Pad(Slot::HandText(id))),
            Row::yours(
                "How many",
                line.count.to_string(),
                Command::Pad(Slot::HandCount(id)),
            ),
            Row::yours("Price of one", price, Command::Pad(Slot::HandPrice(id))),
            Row::button("Remove this line", Command::RemoveHandLine(id)),
        ]
    }

    /// A line of the figures: needed, packs with price and own count, working.
    fn material_rows(&self, line: &Line, material: &Material) -> Vec<Row> {
        let buying = &self.job.buying;
        let mut rows = vec![
            Row::ours("Needed", self.amount(line.needed.clone())),
            Row::ours("To buy", self.packs(line)),
        ];
        if let Some(note) = line.note {
            rows.push(Row::Note {
                tone: super::Tone::Caution,
                text: note.to_owned(),
                detail: String::new(),
                mend: None,
            });
        }
        if takeoff::is_cut(material) {
            rows.push(Row::button(
                "Cutting plan",
                Command::Go(Here::Cutting(Some(material.clone()))),
            ));
        }
        for pack in buying.packs(material) {
            let key = PackKey::new(material, &pack);
            let price = buying
                .prices
                .get(&key)
                .map_or_else(|| "no price".to_owned(), |p| p.show(&buying.symbol));
            let figured = line
                .packs
                .iter()
                .find(|(bought, _)| *bought == pack)
                .map_or(0, |(_, count)| *count);
            let own = match buying.overrides.get(&key) {
                Some(own) => format!("{own}, yours"),
                None => format!("{figured}"),
            };
            rows.push(Row::Heading(
                self.job.units.phrase(&pack.name, Figures::Set),
            ));
            rows.push(Row::yours(
                "Price of one",
                price,
                Command::Pad(Slot::Price(key.clone())),
            ));
            rows.push(Row::yours(
                "How many to buy",
                own,
                Command::Pad(Slot::Packs(key)),
            ));
        }
        if line.overridden {
            rows.push(Row::button(
                "Back to what was figured",
                Command::Unpack(line.key.clone()),
            ));
        }
        rows.push(Row::Heading("How it was figured".into()));
        if let Some(pack) = buying.packs(material).first() {
            rows.push(Row::Text(format!("Sizes: {}", words::cite(&pack.cite))));
        }
        for step in &line.working {
            let sum = words::sum(&step.sum, self.job.units);
            rows.push(Row::Figure {
                label: self.job.units.phrase(&step.what, Figures::Set),
                detail: sum,
                value: self.amount(step.gives.clone()),
                command: None,
            });
            rows.push(Row::Text(words::cite(&step.cite)));
        }
        rows
    }
}
