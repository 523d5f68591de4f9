//! What is typed and chosen of tile, into its ask.

use super::{ThingField, TileChoice, TileSlot};
use crate::geometry::Region;
use crate::measure::quantity::{square_feet, square_metres};
use crate::measure::{Angle, Length};
use crate::takeoff::{Ask, Job};
use crate::trades::tile::{self, BoxOf, Hold, Pattern, Sheet, Sight, Start, Thing, ThingShape};

fn ask_of(job: &mut Job, task: usize) -> Option<&mut tile::Ask> {
    match &mut job.tasks.get_mut(task)?.ask {
        Ask::Tile(ask, _) => Some(ask),
        _ => None,
    }
}

/// A length into a field of tile.
pub(super) fn fill_length(job: &mut Job, task: usize, slot: TileSlot, length: Length) {
    let Some(ask) = ask_of(job, task) else { return };
    let size = ask.surface.bounds().map(|(least, most)| most - least);
    let (wide, high) = size.map_or((length, length), |size| (size.x, size.y));
    match slot {
        TileSlot::Width => ask.surface = Region::rectangle(length, high),
        TileSlot::Height => ask.surface = Region::rectangle(wide, length),
        TileSlot::Long => ask.tile.long = length,
        TileSlot::Short => ask.tile.short = length,
        TileSlot::Small => ask.pattern = Pattern::TwoSquares { small: length },
        TileSlot::Thickness => ask.tile.thickness = length,
        TileSlot::Joint => ask.joint = length,
        TileSlot::Gap => ask.gap = length,
        TileSlot::Kerf => ask.kerf = length,
        TileSlot::Spread => ask.tile.spread = Some(length),
        TileSlot::Warp => ask.tile.warp = Some(length),
        TileSlot::Sight => ask.start = Start::Balanced(Sight::Across(length)),
        TileSlot::Thing(n, field) => {
            if let Some(thing) = ask.things.get_mut(n) {
                let place = match (field, &mut thing.shape) {
                    (ThingField::Left, _) => &mut thing.from_left,
                    (ThingField::Top, _) => &mut thing.from_top,
                    (_, ThingShape::Round { across }) => across,
                    (ThingField::Width, ThingShape::Rectangle { width, .. }) => width,
                    (_, ThingShape::Rectangle { height, .. }) => height,
                };
                *place = length;
            }
        }
        TileSlot::Hold => ask.hold = Some(Hold::JointFromLeft(length)),
        TileSlot::SightTop => ask.start = Start::Balanced(Sight::Along(length)),
        TileSlot::HoldTop => ask.hold = Some(Hold::JointFromTop(length)),
        TileSlot::Turn
        | TileSlot::Box
        | TileSlot::Breakage
        | TileSlot::Attic
        | TileSlot::SheetAlong
        | TileSlot::SheetRows
        | TileSlot::Shift => {}
    }
}

/// A turn of the pattern.
pub(super) fn fill_angle(job: &mut Job, task: usize, turn: Angle) {
    if let Some(ask) = ask_of(job, task) {
        ask.turn = turn;
    }
}

/// A number into a field of tile, or why it cannot stand there.
pub(super) fn fill_number(
    job: &mut Job,
    task: usize,
    slot: TileSlot,
    number: f64,
    metric: bool,
) -> Result<(), String> {
    let Some(ask) = ask_of(job, task) else {
        return Ok(());
    };
    let area = |n| {
        if metric {
            square_metres(n)
        } else {
            square_feet(n)
        }
    };
    match slot {
        TileSlot::Box if number <= 0.0 => return Err("A box holds more than nothing.".into()),
        TileSlot::Box => {
            ask.box_of = Some(match ask.box_of {
                Some(BoxOf::Faces(_)) => BoxOf::Faces(area(number)),
                Some(BoxOf::Laid(_)) => BoxOf::Laid(area(number)),
                _ if number.fract() != 0.0 => return Err("Give a whole number of tiles.".into()),
                _ => BoxOf::Tiles(number as u32),
            });
        }
        TileSlot::Breakage if number > 100.0 => {
            return Err("Breakage is at most 100 %.".into());
        }
        TileSlot::Breakage => ask.breakage = number / 100.0,
        TileSlot::Attic if number.fract() != 0.0 || number > 10_000.0 => {
            return Err("Give a whole number of tiles, up to 10000.".into());
        }
        TileSlot::Attic => ask.attic = number as u32,
        TileSlot::Shift => {
            let part = (number * 2.0).round();
            if !(1.0..200.0).contains(&part) || part != number * 2.0 {
                return Err(
                    "Give a whole or a half per cent, more than 0 and less than 100.".into(),
                );
            }
            let divisor = gcd(part as u8, 200);
            ask.pattern = Pattern::Bond {
                over: part as u8 / divisor,
                of: 200 / divisor,
            };
        }
        TileSlot::SheetAlong | TileSlot::SheetRows => {
            if number.fract() != 0.0 || !(1.0..=100.0).contains(&number) {
                return Err("Give a whole number of small tiles, from 1 to 100.".into());
            }
            if let Some(sheet) = &mut ask.sheet {
                let place = if slot == TileSlot::SheetAlong {
                    &mut sheet.along
                } else {
                    &mut sheet.rows
                };
                *place = number as u16;
            }
        }
        _ => {}
    }
    Ok(())
}

/// The greatest whole number that divides both.
fn gcd(a: u8, b: u8) -> u8 {
    if b == 0 { a } else { gcd(b, a % b) }
}

/// A sheet of about 12 in by 12 in, as most are; where the tile is no small one, of 2 in tile.
fn usual_sheet(ask: &mut tile::Ask) -> Sheet {
    if ask.tile.long.max(ask.tile.short) > Length::inches(4) {
        let side = Length::inches(2) - ask.joint.min(Length::in_64(0, 16));
        (ask.tile.long, ask.tile.short) = (side, side);
    }
    if !matches!(
        ask.pattern,
        Pattern::Grid | Pattern::Bond { .. } | Pattern::Hexagon
    ) {
        ask.pattern = Pattern::Grid;
    }
    let of = match ask.pattern {
        Pattern::Bond { of, .. } => u16::from(of),
        Pattern::Hexagon => 2,
        _ => 1,
    };
    let fit = |module: Length| (12.0 * 0.0254 / module.metres()).round().clamp(1.0, 60.0) as u16;
    let (along, across) = tile::module(ask);
    let across = if ask.pattern == Pattern::Hexagon {
        Length::from_metres(along.metres() * 3f64.sqrt() / 2.0).unwrap_or(along)
    } else {
        across
    };
    Sheet {
        along: fit(along),
        rows: (fit(across) / of).max(1) * of,
    }
}

/// A choice of tile.
pub(super) fn choose(ask: &mut tile::Ask, choice: TileChoice) {
    match choice {
        TileChoice::On(on) => ask.on = on,
        TileChoice::Pattern(pattern) => ask.pattern = pattern,
        TileChoice::Turn(turn) => ask.turn = turn,
        TileChoice::Start(start) => ask.start = start,
        TileChoice::Edge(edge) => ask.tile.edge = edge,
        TileChoice::Run(run) => ask.run = run,
        TileChoice::OtherHand(other) => ask.other_hand = other,
        TileChoice::Grain(grain) => ask.grain = grain,
        TileChoice::Reuse(reuse) => ask.reuse = reuse,
        TileChoice::Hold(hold) => ask.hold = hold,
        TileChoice::AddThing(round) => ask.things.push(Thing {
            shape: if round {
                ThingShape::Round {
                    across: Length::inches(7),
                }
            } else {
                ThingShape::Rectangle {
                    width: Length::inches(12),
                    height: Length::inches(12),
                }
            },
            from_left: Length::inches(12),
            from_top: Length::inches(12),
        }),
        TileChoice::RemoveThing(n) if n < ask.things.len() => {
            ask.things.remove(n);
        }
        TileChoice::RemoveThing(_) => {}
        TileChoice::OnSheets(on) => ask.sheet = on.then(|| usual_sheet(ask)),
        TileChoice::BoxKind(kind) => {
            ask.box_of = match kind {
                1 => Some(BoxOf::Tiles(10)),
                2 => Some(BoxOf::Faces(square_feet(10.0))),
                3 => Some(BoxOf::Laid(square_feet(10.0))),
                _ => None,
            };
        }
    }
}
