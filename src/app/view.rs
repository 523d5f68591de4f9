//! A screen as plain data: what stands where, and the command that each tap sends.

use super::{Command, Here};
use crate::drawing::Scene;

/// Everything that a window shows of one place.
#[derive(Clone, Debug, Default)]
pub struct Screen {
    /// Where this is, small, before the title.
    pub crumb: String,
    /// The title.
    pub title: String,
    /// Where Back goes.
    pub back: Option<Here>,
    /// Buttons at the right of the title.
    pub buttons: Vec<Chip>,
    /// The sketch, its dimensions tagged with what a tap asks for.
    pub picture: Option<Scene<Command>>,
    /// The sketch can be slid with a finger.
    pub slides: bool,
    /// Cards of the bench.
    pub cards: Vec<Card>,
    /// The labelled list.
    pub rows: Vec<Row>,
    /// The result strip: three to five figures.
    pub strip: Vec<Big>,
    /// The main button.
    pub main: Option<Chip>,
    /// The log of pictures stands where a sketch would.
    pub log: Option<Vec<crate::photo::Line>>,
    /// A picture under the finger stands there.
    pub photo: bool,
    /// The tools under it.
    pub tools: Vec<Chip>,
}

/// A small button, or one choice of several.
#[derive(Clone, Debug)]
pub struct Chip {
    /// What it says.
    pub label: String,
    /// Whether it is the one chosen.
    pub on: bool,
    /// What a tap sends.
    pub command: Command,
}

/// A card on the bench.
#[derive(Clone, Debug)]
pub struct Card {
    /// The trade.
    pub title: String,
    /// Its last answer, or what it is for.
    pub answer: String,
    /// Which icon.
    pub icon: Icon,
    /// What a tap sends.
    pub command: Command,
}

/// The sketch on a card.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Icon {
    /// A patch between studs.
    Patch,
    /// A roller.
    Paint,
    /// Tiles in bond.
    Tile,
    /// A float over joints.
    Grout,
    /// A bucket and its paddle.
    Mortar,
    /// An elbow between two pipes.
    Pipe,
    /// A tape.
    Tape,
    /// A pipe through joists.
    Drain,
    /// Sheets in courses.
    Sheets,
    /// Base in a corner.
    Trim,
}

/// A result in big figures.
#[derive(Clone, Debug)]
pub struct Big {
    /// The figure, as set.
    pub value: String,
    /// What it is.
    pub label: String,
}

/// How a note is washed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// Worth knowing.
    Note,
    /// Amber.
    Caution,
    /// Red.
    Stop,
    /// Green.
    Good,
}

/// One row of the list.
#[derive(Clone, Debug)]
pub enum Row {
    /// A heading.
    Heading(String),
    /// Running text.
    Text(String),
    /// A figure: the person's own with a command, ours without.
    Figure {
        /// What it is.
        label: String,
        /// More about it, small.
        detail: String,
        /// The figure, as set.
        value: String,
        /// What a tap asks for.
        command: Option<Command>,
    },
    /// One of several.
    Choice {
        /// What is chosen.
        label: String,
        /// The choices.
        chips: Vec<Chip>,
    },
    /// A line that is ticked off.
    Check {
        /// What it is.
        label: String,
        /// More about it, small.
        detail: String,
        /// Its figure.
        value: String,
        /// Ticked.
        on: bool,
        /// What a tap on it sends.
        command: Command,
        /// What a tap on its figure sends.
        more: Option<Command>,
    },
    /// A finding or a caution.
    Note {
        /// How it is washed.
        tone: Tone,
        /// What it says.
        text: String,
        /// Its source.
        detail: String,
        /// What would mend it.
        mend: Option<Chip>,
    },
    /// A button across the list.
    Button {
        /// What it says.
        label: String,
        /// The main one.
        main: bool,
        /// What a tap sends.
        command: Command,
    },
}

impl Screen {
    /// The same with a main button.
    #[must_use]
    pub fn with_main(self, main: Chip) -> Screen {
        Screen {
            main: Some(main),
            ..self
        }
    }
}

impl Row {
    /// A figure of ours.
    #[must_use]
    pub fn ours(label: impl Into<String>, value: impl Into<String>) -> Row {
        Row::Figure {
            label: label.into(),
            detail: String::new(),
            value: value.into(),
            command: None,
        }
    }
    /// A figure of the person's own.
    #[must_use]
    pub fn yours(label: impl Into<String>, value: impl Into<String>, command: Command) -> Row {
        Row::Figure {
            label: label.into(),
            detail: String::new(),
            value: value.into(),
            command: Some(command),
        }
    }
    /// A button across the list.
    #[must_use]
    pub fn button(label: impl Into<String>, command: Command) -> Row {
        Row::Button {
            label: label.into(),
            main: false,
            command,
        }
    }
    /// One of several, from pairs of word and command.
    #[must_use]
    pub fn choice(label: impl Into<String>, chips: impl IntoIterator<Item = Chip>) -> Row {
        Row::Choice {
            label: label.into(),
            chips: chips.into_iter().collect(),
        }
    }
}

impl Chip {
    /// A choice, on or not.
    #[must_use]
    pub fn new(label: impl Into<String>, on: bool, command: Command) -> Chip {
        Chip {
            label: label.into(),
            on,
            command,
        }
    }
}
