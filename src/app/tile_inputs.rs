//! What tile asks for: the surface, the tile, the pattern, where it starts, how it is bought.

use super::{App, Chip, Choice, Command, Row, Slot, ThingField, TileChoice, TileSlot};
use crate::geometry::Point;
use crate::measure::{Amount, Angle, Figures, Length};
use crate::takeoff::{Ask, TileOn};
use crate::trades::tile::{
    self, BoxOf, Edge, Hold, Pattern, Problem, Run, Side, Sight, Start, Surface, Taken, ThingShape,
};

/// What would mend a layout that cannot be.
pub(super) fn mend(at: usize, problem: &Problem) -> Option<Chip> {
    let slot = match problem {
        Problem::LongSide { .. } | Problem::LargerThanSurface | Problem::TooMany { .. } => {
            TileSlot::Long
        }
        Problem::JointWiderThanTile => TileSlot::Joint,
        Problem::NothingLeft => TileSlot::Gap,
        Problem::NoSuchBox => TileSlot::Box,
        Problem::Overlap(_, Taken::Thing(n)) | Problem::Outside(Taken::Thing(n)) => {
            TileSlot::Thing(*n, ThingField::Left)
        }
        _ => return None,
    };
    Some(Chip::new(
        "Change it",
        false,
        Command::Pad(Slot::Tile(at, slot)),
    ))
}

/// A pattern in a word or two.
pub(super) fn pattern_name(pattern: Pattern) -> String {
    match pattern {
        Pattern::Grid => "grid".into(),
        Pattern::Bond { over, of } => format!("bond, {over}/{of}"),
        Pattern::Herringbone => "herringbone".into(),
        Pattern::Basketweave => "basketweave".into(),
        Pattern::TwoSquares { .. } => "two squares".into(),
        Pattern::Hexagon => "hexagon".into(),
        Pattern::Planks { .. } => "planks".into(),
    }
}

impl App {
    fn tile_choice<T: PartialEq + Copy>(
        at: usize,
        label: &str,
        now: T,
        all: &[(T, &str)],
        choice: impl Fn(T) -> TileChoice,
    ) -> Row {
        Row::choice(
            label,
            all.iter().map(|(each, word)| {
                Chip::new(
                    *word,
                    *each == now,
                    Command::Set(at, Choice::Tile(choice(*each))),
                )
            }),
        )
    }

    /// The rows in which tile is asked for.
    pub(super) fn tile_inputs(
        &self,
        at: usize,
        ask: &tile::Ask,
        stored: &tile::Ask,
        on: TileOn,
    ) -> Vec<Row> {
        let pad = |slot| Command::Pad(Slot::Tile(at, slot));
        let mut rows = Vec::new();
        if on == TileOn::Own {
            let size = stored.surface.bounds().map(|(least, most)| most - least);
            for (label, length, slot) in [
                ("Width", size.map(|s| s.x), TileSlot::Width),
                ("Length, or height", size.map(|s| s.y), TileSlot::Height),
            ] {
                rows.push(Row::yours(label, self.show_or_ask(length), pad(slot)));
            }
            let surfaces = [(Surface::Floor, "Floor"), (Surface::Wall, "Wall")];
            rows.push(App::tile_choice(
                at,
                "It is a",
                ask.on,
                &surfaces,
                TileChoice::On,
            ));
        }
        rows.push(Row::yours(
            "Tile, along the row",
            self.show(ask.tile.long),
            pad(TileSlot::Long),
        ));
        if ask.pattern != Pattern::Hexagon {
            rows.push(Row::yours(
                "Tile, across the row",
                self.show(ask.tile.short),
                pad(TileSlot::Short),
            ));
        }
        rows.extend(App::sheet_rows(at, ask));
        if let Pattern::TwoSquares { small } = ask.pattern {
            rows.push(Row::yours(
                "Small tile",
                self.show(small),
                pad(TileSlot::Small),
            ));
        }
        rows.push(Row::yours(
            "Joint",
            self.show(ask.joint),
            pad(TileSlot::Joint),
        ));
        rows.extend(self.pattern_rows(at, ask));
        rows.extend(self.start_rows(at, ask));
        rows.extend(self.box_rows(at, ask));
        rows.extend(self.thing_rows(at, ask));
        rows.extend(self.detail_rows(at, ask));
        rows
    }

    /// Tile by tile, or as mosaic on sheets.
    fn sheet_rows(at: usize, ask: &tile::Ask) -> Vec<Row> {
        let ways = [(false, "Tile by tile"), (true, "On sheets: mosaic")];
        let mut rows = vec![App::tile_choice(
            at,
            "It comes",
            ask.sheet.is_some(),
            &ways,
            TileChoice::OnSheets,
        )];
        if let Some(sheet) = ask.sheet {
            let pad = |slot| Command::Pad(Slot::Tile(at, slot));
            let along = sheet.along.to_string();
            rows.push(Row::yours(
                "Small tiles along a sheet",
                along,
                pad(TileSlot::SheetAlong),
            ));
            rows.push(Row::yours(
                "Rows of a sheet",
                sheet.rows.to_string(),
                pad(TileSlot::SheetRows),
            ));
        }
        rows
    }

    fn pattern_rows(&self, at: usize, ask: &tile::Ask) -> Vec<Row> {
        let small = match ask.pattern {
            Pattern::TwoSquares { small } => small,
            _ => ask.tile.long.half(),
        };
        let apart = ask.tile.long.divided(6);
        let seed = match ask.pattern {
            Pattern::Planks { seed, .. } => seed,
            _ => 1,
        };
        let patterns = [
            (Pattern::Grid, "Grid"),
            (Pattern::Bond { over: 1, of: 2 }, "Half bond"),
            (Pattern::Bond { over: 1, of: 3 }, "Third bond"),
            (Pattern::Herringbone, "Herringbone"),
            (Pattern::Basketweave, "Basketweave"),
            (Pattern::TwoSquares { small }, "Two squares"),
            (Pattern::Hexagon, "Hexagon"),
            (Pattern::Planks { seed, apart }, "Planks, random ends"),
        ];
        let mut rows = vec![App::tile_choice(
            at,
            "Pattern",
            ask.pattern,
            &patterns,
            TileChoice::Pattern,
        )];
        if let Pattern::Bond { over, of } = ask.pattern {
            let share = f64::from(over) / f64::from(of.max(1));
            rows.push(Row::yours(
                "Each row shifted by, of a tile",
                self.amount(Amount::Share(share)),
                Command::Pad(Slot::Tile(at, TileSlot::Shift)),
            ));
        }
        if let Pattern::Planks { seed, apart } = ask.pattern {
            let next = Pattern::Planks {
                seed: seed.wrapping_add(1),
                apart,
            };
            rows.push(Row::button(
                "Let the ends fall anew",
                Command::Set(at, Choice::Tile(TileChoice::Pattern(next))),
            ));
        }
        // A grid and hexagons are the same in a mirror.
        if !matches!(ask.pattern, Pattern::Grid | Pattern::Hexagon) || ask.other_hand {
            rows.push(App::tile_choice(
                at,
                "Its hand",
                ask.other_hand,
                &[(false, "As drawn"), (true, "Mirrored")],
                TileChoice::OtherHand,
            ));
        }
        let turns = [
            (Angle::ZERO, "Along"),
            (Angle::RIGHT, "Across"),
            (Angle::degrees(45), "Diagonal"),
        ];
        rows.push(App::tile_choice(
            at,
            "It runs",
            ask.turn,
            &turns,
            TileChoice::Turn,
        ));
        rows.push(Row::yours(
            "Turned by",
            ask.turn.show(Figures::Set),
            Command::Pad(Slot::Tile(at, TileSlot::Turn)),
        ));
        rows
    }

    fn start_rows(&self, at: usize, ask: &tile::Ask) -> Vec<Row> {
        let set = |start| Command::Set(at, Choice::Tile(TileChoice::Start(start)));
        let by_hand = matches!(ask.start, Start::ByHand(_));
        let mut chips: Vec<Chip> = [
            ("Best balance", Start::Balanced(Sight::Middle)),
            ("Fewest tiles", Start::Fewest),
            ("From the corner", Start::Corner),
        ]
        .map(|(label, start)| Chip::new(label, ask.start == start, set(start)))
        .to_vec();
        if let Start::ByHand(from) = ask.start {
            chips.push(Chip::new("By hand", by_hand, set(Start::ByHand(from))));
        }
        let mut rows = vec![Row::choice("Where it starts", chips)];
        let sight = match ask.start {
            Start::Balanced(sight) => sight,
            _ => Sight::Middle,
        };
        if matches!(ask.start, Start::Balanced(_)) {
            let across = match sight {
                Sight::Across(x) => self.show(x),
                _ => "the middle".to_owned(),
            };
            rows.push(Row::Figure {
                label: "Even about a line, from the left".into(),
                detail: "the middle of the door, the tub or the window".into(),
                value: across,
                command: Some(Command::Pad(Slot::Tile(at, TileSlot::Sight))),
            });
            let down = match sight {
                Sight::Along(y) => self.show(y),
                _ => "the middle".to_owned(),
            };
            rows.push(Row::yours(
                "Even about a line, from the top",
                down,
                Command::Pad(Slot::Tile(at, TileSlot::SightTop)),
            ));
            rows.extend(self.sights_row(at, ask, sight));
            let whole = [
                (None, "Nowhere"),
                (Some(Hold::Whole(Side::Left)), "Left"),
                (Some(Hold::Whole(Side::Right)), "Right"),
                (Some(Hold::Whole(Side::Top)), "Top"),
                (Some(Hold::Whole(Side::Bottom)), "Bottom"),
            ];
            rows.push(App::tile_choice(
                at,
                "A whole tile at an edge: threshold, tub",
                ask.hold,
                &whole,
                TileChoice::Hold,
            ));
            let joint = match ask.hold {
                Some(Hold::JointFromLeft(x)) => self.show(x),
                _ => "nowhere".to_owned(),
            };
            rows.push(Row::Figure {
                label: "A joint held, from the left".into(),
                detail: "a centre line, or a joint of the wall".into(),
                value: joint,
                command: Some(Command::Pad(Slot::Tile(at, TileSlot::Hold))),
            });
            let joint = match ask.hold {
                Some(Hold::JointFromTop(y)) => self.show(y),
                _ => "nowhere".to_owned(),
            };
            rows.push(Row::yours(
                "A joint held, from the top",
                joint,
                Command::Pad(Slot::Tile(at, TileSlot::HoldTop)),
            ));
            rows.extend(self.wall_joints_row(at, ask));
        }
        rows.push(Row::Text(
            "Or slide the tiles on the drawing with a finger, or step by step:".into(),
        ));
        let mark = super::pad::mark(self.job.units) * 4;
        let none = Length::ZERO;
        let nudges = [
            ("left", Point::new(-mark, none)),
            ("right", Point::new(mark, none)),
            ("up", Point::new(none, -mark)),
            ("down", Point::new(none, mark)),
        ];
        rows.push(Row::choice(
            "",
            nudges.map(|(way, by)| {
                let label = format!("{} {way}", self.show(mark));
                Chip::new(label, false, Command::Nudge(at, by))
            }),
        ));
        rows
    }

    fn box_rows(&self, at: usize, ask: &tile::Ask) -> Vec<Row> {
        let kind = match ask.box_of {
            None => 0u8,
            Some(BoxOf::Tiles(_)) => 1,
            Some(BoxOf::Faces(_)) => 2,
            Some(BoxOf::Laid(_)) => 3,
        };
        let sheets = ask.sheet.is_some();
        let kinds = [
            (0, "Not counted"),
            (
                1,
                if sheets {
                    "So many sheets"
                } else {
                    "So many tiles"
                },
            ),
            (2, "An area of faces"),
            (3, "An area laid, with joints"),
        ];
        let mut rows = vec![
            Row::Heading("How it is bought".into()),
            App::tile_choice(at, "A box holds", kind, &kinds, TileChoice::BoxKind),
        ];
        let pad = |slot| Command::Pad(Slot::Tile(at, slot));
        match ask.box_of {
            None => {}
            Some(BoxOf::Tiles(n)) => {
                rows.push(Row::yours(
                    if sheets {
                        "Sheets in a box"
                    } else {
                        "Tiles in a box"
                    },
                    n.to_string(),
                    pad(TileSlot::Box),
                ));
            }
            Some(BoxOf::Faces(area) | BoxOf::Laid(area)) => {
                rows.push(Row::yours(
                    "Area in a box",
                    self.amount(area),
                    pad(TileSlot::Box),
                ));
            }
        }
        let reuse = [(true, "Used again"), (false, "Thrown away")];
        rows.push(App::tile_choice(
            at,
            "Off-cuts are",
            ask.reuse,
            &reuse,
            TileChoice::Reuse,
        ));
        let grain = [(false, "None"), (true, "A direction")];
        rows.push(App::tile_choice(
            at,
            "The face has",
            ask.grain,
            &grain,
            TileChoice::Grain,
        ));
        rows.push(Row::Figure {
            label: "Breakage".into(),
            detail: "contractors say 3 to 12 %, sellers 10 to 30 %; pieces are counted apart"
                .into(),
            value: self.amount(Amount::Share(ask.breakage)),
            command: Some(pad(TileSlot::Breakage)),
        });
        rows.push(Row::yours(
            if sheets {
                "Whole sheets kept for later"
            } else {
                "Whole tiles kept for later"
            },
            ask.attic.to_string(),
            pad(TileSlot::Attic),
        ));
        rows
    }

    /// What stands in the way: a tub, a column, a flange, a drain.
    fn thing_rows(&self, at: usize, ask: &tile::Ask) -> Vec<Row> {
        let mut rows = vec![Row::Heading("In the way".into())];
        for (n, thing) in ask.things.iter().enumerate() {
            let mut field = |label: String, length, field| {
                let slot = Slot::Tile(at, TileSlot::Thing(n, field));
                rows.push(Row::yours(label, self.show(length), Command::Pad(slot)));
            };
            match thing.shape {
                ThingShape::Round { across } => {
                    field(format!("No. {}, across", n + 1), across, ThingField::Width);
                }
                ThingShape::Rectangle { width, height } => {
                    field(format!("No. {}, width", n + 1), width, ThingField::Width);
                    field(format!("No. {}, height", n + 1), height, ThingField::Height);
                }
            }
            let (left, top) = match thing.shape {
                ThingShape::Round { .. } => {
                    ("From the left to its centre", "From the top to its centre")
                }
                ThingShape::Rectangle { .. } => {
                    ("From the left to its edge", "From the top to its edge")
                }
            };
            field(left.into(), thing.from_left, ThingField::Left);
            field(top.into(), thing.from_top, ThingField::Top);
        }
        let set = |choice| Command::Set(at, Choice::Tile(choice));
        rows.push(Row::choice(
            "Something in the way",
            [
                Chip::new("Tub, column, box", false, set(TileChoice::AddThing(false))),
                Chip::new(
                    "Round: flange, drain",
                    false,
                    set(TileChoice::AddThing(true)),
                ),
            ],
        ));
        if !ask.things.is_empty() {
            rows.push(Row::choice(
                "Take away",
                (0..ask.things.len()).map(|n| {
                    let label = format!("No. {}", n + 1);
                    Chip::new(label, false, set(TileChoice::RemoveThing(n)))
                }),
            ));
        }
        rows
    }

    fn detail_rows(&self, at: usize, ask: &tile::Ask) -> Vec<Row> {
        let pad = |slot| Command::Pad(Slot::Tile(at, slot));
        let or_not = |length: Option<Length>| {
            length.map_or_else(|| "not measured".to_owned(), |length| self.show(length))
        };
        let edges = [
            (Edge::Unknown, "Not known"),
            (Edge::Rectified, "Rectified"),
            (Edge::Calibrated, "Calibrated"),
        ];
        let runs = [
            (Run::Dry, "Inside and dry"),
            (Run::SunOrWet, "Sun, wet or outside"),
        ];
        vec![
            Row::Heading("More of the tile and the saw".into()),
            Row::yours("Gap at the edges", self.show(ask.gap), pad(TileSlot::Gap)),
            Row::yours("Saw cut", self.show(ask.kerf), pad(TileSlot::Kerf)),
            Row::yours(
                "Thickness",
                self.show(ask.tile.thickness),
                pad(TileSlot::Thickness),
            ),
            Row::Figure {
                label: "Tiles differ by".into(),
                detail: "the longest less the shortest of a box".into(),
                value: or_not(ask.tile.spread),
                command: Some(pad(TileSlot::Spread)),
            },
            Row::yours(
                "An edge is bowed by",
                or_not(ask.tile.warp),
                pad(TileSlot::Warp),
            ),
            App::tile_choice(at, "Its edges are", ask.tile.edge, &edges, TileChoice::Edge),
            App::tile_choice(at, "It lies", ask.run, &runs, TileChoice::Run),
        ]
    }

    /// The length that stands in a field of tile.
    pub(super) fn tile_field(&self, at: usize, slot: TileSlot) -> Option<Length> {
        let Ask::Tile(ask, _) = &self.job.tasks.get(at)?.ask else {
            return None;
        };
        let size = ask.surface.bounds().map(|(least, most)| most - least);
        match slot {
            TileSlot::Width => size.map(|size| size.x),
            TileSlot::Height => size.map(|size| size.y),
            TileSlot::Long => Some(ask.tile.long),
            TileSlot::Short => Some(ask.tile.short),
            TileSlot::Small => match ask.pattern {
                Pattern::TwoSquares { small } => Some(small),
                _ => None,
            },
            TileSlot::Thickness => Some(ask.tile.thickness),
            TileSlot::Joint => Some(ask.joint),
            TileSlot::Gap => Some(ask.gap),
            TileSlot::Kerf => Some(ask.kerf),
            TileSlot::Spread => ask.tile.spread,
            TileSlot::Warp => ask.tile.warp,
            TileSlot::Sight => match ask.start {
                Start::Balanced(Sight::Across(x)) => Some(x),
                _ => None,
            },
            TileSlot::Thing(n, field) => {
                let thing = ask.things.get(n)?;
                Some(match (field, thing.shape) {
                    (ThingField::Left, _) => thing.from_left,
                    (ThingField::Top, _) => thing.from_top,
                    (_, ThingShape::Round { across }) => across,
                    (ThingField::Width, ThingShape::Rectangle { width, .. }) => width,
                    (_, ThingShape::Rectangle { height, .. }) => height,
                })
            }
            TileSlot::Hold => match ask.hold {
                Some(Hold::JointFromLeft(x)) => Some(x),
                _ => None,
            },
            TileSlot::SightTop => match ask.start {
                Start::Balanced(Sight::Along(y)) => Some(y),
                _ => None,
            },
            TileSlot::HoldTop => match ask.hold {
                Some(Hold::JointFromTop(y)) => Some(y),
                _ => None,
            },
            TileSlot::Turn
            | TileSlot::Box
            | TileSlot::Breakage
            | TileSlot::Attic
            | TileSlot::SheetAlong
            | TileSlot::SheetRows
            | TileSlot::Shift => None,
        }
    }
}
