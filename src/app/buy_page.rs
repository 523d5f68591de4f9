//! The buying list.

use super::{App, Chip, Command, Here, Row, Screen, Slot, fill::is_by_hand, view::Big, words};
use crate::measure::Figures;
use crate::takeoff::{self, Asked, Line, LineKey, PackKey};
use crate::trades::Need;

impl App {
    /// Every need of the figures on the list, with the figure's name.
    fn needs(&self) -> Vec<(String, Need)> {
        (0..self.job.tasks.len())
            .filter(|&at| self.job.tasks[at].on_list)
            .filter_map(|at| Some((self.task_name(at), self.account(at)?)))
            .flat_map(|(name, account)| {
                account
                    .needs
                    .into_iter()
                    .map(move |need| (name.clone(), need))
            })
            .collect()
    }

    /// The lines of the buying list.
    #[must_use]
    pub fn buying_lines(&self) -> Vec<Line> {
        let needs = self.needs();
        let asked: Vec<Asked<'_>> = needs
            .iter()
            .map(|(figure, need)| Asked {
                figure: figure.clone(),
                need,
            })
            .collect();
        takeoff::lines(&asked, &self.job.buying)
    }

    /// The buying list.
    pub(super) fn buy_page(&self) -> Screen {
        let lines = self.buying_lines();
        let mut rows = Vec::new();
        if lines.is_empty() {
            rows.push(Row::Text("Nothing to buy yet. Figure a patch or some paint and tap Add to buying list; or write a line by hand.".into()));
        }
        let mut shelf = None;
        for line in &lines {
            if shelf != Some(line.shelf) {
                shelf = Some(line.shelf);
                rows.push(Row::Heading(line.shelf.title().to_owned()));
            }
            rows.push(Row::Check {
                label: line.title.clone(),
                detail: line.detail.clone(),
                value: self.packs(line),
                on: line.ticked,
                command: Command::Tick(line.key.clone()),
                more: Some(Command::Go(Here::Line(line.key.clone()))),
            });
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
        let text = if packs.is_empty() {
            "change".to_owned()
        } else {
            packs.join(" + ")
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
        let mut rows = Vec::new();
        if is_by_hand(key) {
            if let LineKey::ByHand(id) = key {
                rows.push(Row::button(
                    "Remove this line",
                    Command::RemoveHandLine(*id),
                ));
            }
        } else {
            rows.push(Row::ours("Needed", self.amount(line.needed.clone())));
            rows.push(Row::ours("To buy", self.packs(line)));
            rows.push(Row::Heading("Prices".into()));
            let LineKey::Material(material) = key else {
                return self.buy_page();
            };
            for (at, pack) in takeoff::packs_on_sale(material, self.job.buying.metric_packs)
                .iter()
                .enumerate()
            {
                let price = PackKey {
                    material: material.clone(),
                    pack: at,
                };
                let shown = self.job.buying.prices.get(&price).map_or_else(
                    || "no price".to_owned(),
                    |p| p.show(&self.job.buying.symbol),
                );
                rows.push(Row::Figure {
                    label: self.job.units.phrase(&pack.name, Figures::Set),
                    detail: words::cite(&pack.cite),
                    value: shown,
                    command: Some(Command::Pad(Slot::Price(price))),
                });
            }
            rows.push(Row::Heading("Your own count".into()));
            let own = self
                .job
                .buying
                .overrides
                .get(key)
                .map_or_else(|| "as figured".to_owned(), u32::to_string);
            rows.push(Row::yours(
                "Packs to buy",
                own,
                Command::Pad(Slot::Packs(key.clone())),
            ));
            if line.overridden {
                rows.push(Row::button(
                    "Back to what was figured",
                    Command::Unpack(key.clone()),
                ));
            }
            rows.push(Row::Heading("How it was figured".into()));
            for step in &line.working {
                rows.push(Row::ours(
                    self.job.units.phrase(&step.what, Figures::Set),
                    self.amount(step.gives.clone()),
                ));
                rows.push(Row::Text(words::cite(&step.cite)));
            }
        }
        Screen {
            crumb: "Buying list".into(),
            title: line.title.clone(),
            back: Some(Here::Buy),
            rows,
            ..Screen::default()
        }
    }
}
