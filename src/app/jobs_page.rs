//! The jobs in the folder, and how the program looks.

use super::{App, Chip, Command, Here, Row, Screen};
use crate::drawing::Theme;
use crate::measure::Units;

impl App {
    /// Jobs, units, theme, text size, about.
    pub(super) fn more_page(&self) -> Screen {
        let mut rows = vec![Row::Heading("How figures are shown".into())];
        let units = [
            ("ft-in, 1/16", Units::FeetInches { marks: 16 }),
            ("ft-in, 1/32", Units::FeetInches { marks: 32 }),
            ("Decimal inches", Units::DecimalInches),
            ("mm", Units::Millimetres),
            ("cm", Units::Centimetres),
            ("m", Units::Metres),
        ];
        rows.push(Row::choice(
            "Units of this job",
            units.map(|(label, u)| Chip::new(label, self.job.units == u, Command::Units(u))),
        ));
        rows.push(Row::choice(
            "Light",
            [
                ("Day", Theme::Day),
                ("Night", Theme::Night),
                ("Sun", Theme::Sun),
            ]
            .map(|(label, t)| Chip::new(label, self.prefs.theme == t, Command::Theme(t))),
        ));
        rows.push(Row::choice(
            "Text size",
            [85u16, 100, 125, 150]
                .map(|n| Chip::new(format!("{n} %"), self.prefs.text == n, Command::TextSize(n))),
        ));
        rows.push(Row::Heading("Jobs".into()));
        rows.push(Row::ours("This job is kept at", self.keeper.place()));
        rows.extend(self.versions_row());
        rows.push(Row::button(
            "Hand this job over, or take one in",
            Command::Go(Here::Sharing),
        ));
        for (name, path) in self.keeper.jobs() {
            rows.push(Row::button(format!("Open {name}"), Command::OpenJob(path)));
        }
        rows.push(Row::Button {
            label: "New job".into(),
            main: true,
            command: Command::NewJob,
        });
        rows.push(Row::Heading("Program".into()));
        rows.push(Row::button("About Storyrod", Command::About(true)));
        Screen {
            crumb: self.job.name.clone(),
            title: "More".into(),
            back: Some(Here::Rooms),
            rows,
            ..Screen::default()
        }
    }
}
