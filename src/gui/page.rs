//! One screen of `app` onto the page: header, drawing, list, strip.

use std::rc::Rc;

use slint::{ComponentHandle, Image, ModelRc, SharedString, VecModel};

use super::generated::{Big, Card, Chip, Page, Row as RowData, RowKind, Spot, Tab};
use super::{Desk, theme};
use crate::app::{self, App, Command, Here, Icon, Kept, Row, Screen, Tone};
use crate::drawing::{Canvas, Palette, Role, lay_out, lay_out_at, paint_on};
use crate::measure::{plain, stacked, together};

/// Numbers commands as they are laid out.
#[derive(Default)]
pub(super) struct Numbered(Vec<Command>);

impl Numbered {
    pub(super) fn number(&mut self, command: Command) -> i32 {
        self.0.push(command);
        i32::try_from(self.0.len() - 1).unwrap_or(-1)
    }
    fn maybe(&mut self, command: Option<&Command>) -> i32 {
        command.map_or(-1, |command| self.number(command.clone()))
    }
    pub(super) fn commands(self) -> Vec<Command> {
        self.0
    }
    pub(super) fn chip(&mut self, chip: &app::Chip) -> Chip {
        Chip {
            label: chip.label.as_str().into(),
            on: chip.on,
            command: self.number(chip.command.clone()),
        }
    }
}

/// Taps and sizes of the page.
pub(super) fn connect(desk: &Rc<Desk>) {
    let page = desk.window.global::<Page<'_>>();
    let weak = Rc::downgrade(desk);
    page.on_send(move |number| {
        if let Some(desk) = weak.upgrade() {
            desk.send(number);
        }
    });
    let weak = Rc::downgrade(desk);
    page.on_picture_sized(move |width, height| {
        if let Some(desk) = weak.upgrade()
            && desk.picture.replace((width, height)) != (width, height)
        {
            desk.show();
        }
    });
    let weak = Rc::downgrade(desk);
    page.on_slid(move |x, y, across, down, done| {
        if let Some(desk) = weak.upgrade() {
            desk.slid((x, y), (across, down), done);
        }
    });
    let weak = Rc::downgrade(desk);
    page.on_poked(move |x, y| {
        if let Some(desk) = weak.upgrade() {
            desk.poked((x, y));
        }
    });
    let weak = Rc::downgrade(desk);
    desk.window.on_about_closed(move || {
        if let Some(desk) = weak.upgrade() {
            desk.act(|app| app.send(Command::About(false)));
        }
    });
}

/// Lays a screen out on the page; gives its commands by number.
pub(super) fn show(desk: &Rc<Desk>, app: &App, screen: &Screen) -> Numbered {
    let mut numbered = Numbered::default();
    let page = desk.window.global::<Page<'_>>();
    let palette = Palette::of(app.prefs.theme);
    theme::set(&desk.window, &palette, f32::from(app.prefs.text) / 100.0);
    page.set_crumb(screen.crumb.as_str().into());
    page.set_title(screen.title.as_str().into());
    page.set_back(match app.back() {
        Some(_) => numbered.number(Command::Back),
        None => -1,
    });
    page.set_undo(if app.can_undo() {
        numbered.number(Command::Undo)
    } else {
        -1
    });
    page.set_redo(if app.can_redo() {
        numbered.number(Command::Redo)
    } else {
        -1
    });
    page.set_buttons(model(screen.buttons.iter().map(|chip| numbered.chip(chip))));
    page.set_tabs(model(tabs(app.here(), &mut numbered)));
    page.set_cards(model(screen.cards.iter().map(|card| Card {
        title: card.title.as_str().into(),
        answer: card.answer.as_str().into(),
        icon: icon(card.icon),
        command: numbered.number(card.command.clone()),
    })));
    page.set_rows(model(
        screen.rows.iter().map(|row| row_data(row, &mut numbered)),
    ));
    page.set_strip(model(screen.strip.iter().map(|big| Big {
        value: together(&big.value).into(),
        label: big.label.as_str().into(),
        says: format!("{}, {}", plain(&big.value), big.label).into(),
    })));
    page.set_has_main(screen.main.is_some());
    if let Some(main) = &screen.main {
        page.set_main(numbered.chip(main));
    }
    page.set_said(app.said.as_str().into());
    page.set_says_an_edit(app.says_an_edit());
    kept(desk, app);
    desk.window.set_about_shown(app.about);
    page.set_has_picture(screen.picture.is_some() || screen.photo);
    page.set_slides(screen.slides);
    super::photo::show(desk, app, screen, &mut numbered);
    if screen.photo {
        page.set_picture_says(screen.title.as_str().into());
        super::photo::paint(desk, app, Some(&mut numbered));
    } else if screen.picture.is_some() {
        picture(desk, app, screen, &palette, &mut numbered);
    } else {
        page.set_spots(ModelRc::default());
    }
    numbered
}

/// Whether what is shown is on the disk.
pub(super) fn kept(desk: &Desk, app: &App) {
    let page = desk.window.global::<Page<'_>>();
    let (word, well) = match app.kept() {
        Kept::Yes => ("kept", true),
        Kept::Soon => ("keeping …", true),
        Kept::No(_) => ("not kept", false),
        Kept::Reading(_) => ("only read", false),
        Kept::Nowhere => ("", true),
    };
    page.set_kept(word.into());
    page.set_kept_well(well);
}

/// The sketch at the size that the page gives it, and its spots.
fn picture(desk: &Desk, app: &App, screen: &Screen, palette: &Palette, numbered: &mut Numbered) {
    let page = desk.window.global::<Page<'_>>();
    let Some(scene) = &screen.picture else { return };
    page.set_picture_says(plain(&scene.says).into());
    let (width, height) = desk.picture.get();
    if width < 40.0 || height < 40.0 {
        page.set_spots(ModelRc::default());
        return;
    }
    let canvas = Canvas {
        width,
        height,
        // Large words leave no room for the sketch on a small sheet; its figures stay at 14 px or more.
        text: (f32::from(app.prefs.text) / 100.0).min((height / 280.0).max(0.8)),
        margin: 12.0,
    };
    let lit = app.pad.as_ref().map(|pad| Command::Pad(pad.slot.clone()));
    // Above an open pad there is room for one figure: the one that is typed.
    let cramped = lit.is_some() && height < 260.0;
    let alone = cramped.then(|| {
        let mut alone = scene.clone();
        alone.dimensions.retain(|dimension| dimension.tag == lit);
        alone.key.clear();
        alone
    });
    let scene = alone.as_ref().unwrap_or(scene);
    // A finger that slides something keeps the sketch where it is, at its scale.
    let sheet = match desk.held.get() {
        Some(place) => lay_out_at(scene, &canvas, lit.as_ref(), place),
        None => lay_out(scene, &canvas, lit.as_ref()),
    };
    desk.place.set(Some(sheet.place));
    let factor = desk.window.window().scale_factor();
    let pixels = (
        (sheet.width * factor).ceil() as u32,
        (sheet.height * factor).ceil() as u32,
    );
    let board = palette.colour(Role::Board);
    let under = app.under_wall(
        &sheet.place,
        pixels,
        f64::from(factor),
        [board.r, board.g, board.b],
    );
    let pixels = paint_on(&sheet, palette, factor, under);
    let buffer = slint::SharedPixelBuffer::<slint::Rgba8Pixel>::clone_from_slice(
        &pixels.rgba,
        pixels.width,
        pixels.height,
    );
    page.set_picture(Image::from_rgba8_premultiplied(buffer));
    page.set_spots(model(sheet.hot.iter().map(|spot| Spot {
        x: spot.x,
        y: spot.y,
        width: spot.w,
        height: spot.h,
        says: plain(&spot.says).into(),
        command: numbered.number(spot.tag.clone()),
    })));
}

fn tabs(here: &Here, numbered: &mut Numbered) -> Vec<Tab> {
    let room = matches!(
        here,
        Here::Rooms
            | Here::Room(_)
            | Here::Wall(..)
            | Here::More
            | Here::Survey(_)
            | Here::Square(_)
            | Here::Outline(_)
            | Here::Profiles
            | Here::SideBySide(..)
    );
    let buy = matches!(here, Here::Buy | Here::Line(_) | Here::Cutting(_));
    let steps = matches!(here, Here::Steps | Here::Step(_));
    let photos = matches!(
        here,
        Here::Photos | Here::Photo(_) | Here::Camera | Here::Traced(..)
    );
    let icon = |bytes: &[u8]| Image::load_from_svg_data(bytes).unwrap_or_default();
    vec![
        Tab {
            label: "Room".into(),
            icon: icon(include_bytes!("../../assets/icons/room.svg")),
            on: room,
            command: numbered.number(Command::Go(Here::Rooms)),
        },
        Tab {
            label: "Figure".into(),
            icon: icon(include_bytes!("../../assets/icons/figure.svg")),
            on: !room && !buy && !photos && !steps,
            command: numbered.number(Command::Go(Here::Bench)),
        },
        Tab {
            label: "Photos".into(),
            icon: icon(include_bytes!("../../assets/icons/photos.svg")),
            on: photos,
            command: numbered.number(Command::Go(Here::Photos)),
        },
        Tab {
            label: "Buy".into(),
            icon: icon(include_bytes!("../../assets/icons/buy.svg")),
            on: buy,
            command: numbered.number(Command::Go(Here::Buy)),
        },
        Tab {
            label: "Steps".into(),
            icon: icon(include_bytes!("../../assets/icons/steps.svg")),
            on: steps,
            command: numbered.number(Command::Go(Here::Steps)),
        },
    ]
}

fn icon(icon: Icon) -> Image {
    let bytes: &[u8] = match icon {
        Icon::Patch => include_bytes!("../../assets/icons/card-patch.svg"),
        Icon::Paint => include_bytes!("../../assets/icons/card-paint.svg"),
        Icon::Tile => include_bytes!("../../assets/icons/card-tile.svg"),
        Icon::Grout => include_bytes!("../../assets/icons/card-grout.svg"),
        Icon::Mortar => include_bytes!("../../assets/icons/card-mortar.svg"),
        Icon::Pipe => include_bytes!("../../assets/icons/card-pipe.svg"),
        Icon::Tape => include_bytes!("../../assets/icons/card-tape.svg"),
        Icon::Drain => include_bytes!("../../assets/icons/card-drain.svg"),
        Icon::Sheets => include_bytes!("../../assets/icons/card-sheets.svg"),
        Icon::Trim => include_bytes!("../../assets/icons/card-trim.svg"),
    };
    Image::load_from_svg_data(bytes).unwrap_or_default()
}

fn row_data(row: &Row, numbered: &mut Numbered) -> RowData {
    let mut data = RowData {
        command: -1,
        more: -1,
        ..RowData::default()
    };
    match row {
        Row::Heading(text) => {
            data.kind = RowKind::Heading;
            data.label = together(&stacked(text)).into();
            data.says = spoken(&[text]);
        }
        Row::Text(text) => {
            data.kind = RowKind::Text;
            data.label = together(&stacked(text)).into();
            data.says = spoken(&[text]);
        }
        Row::Figure {
            label,
            detail,
            value,
            command,
        } => {
            data.kind = RowKind::Figure;
            (data.label, data.detail, data.value) = (
                stacked(label).into(),
                stacked(detail).into(),
                together(value).into(),
            );
            data.says = spoken(&[label, value, detail]);
            data.yours = super::slot_of(row).is_some();
            if !data.yours && command.is_some() {
                data.value = format!("{} ›", together(value)).into();
            }
            data.command = numbered.maybe(command.as_ref());
        }
        Row::Choice { label, chips } => {
            data.kind = RowKind::Choice;
            data.label = label.as_str().into();
            data.chips = model(chips.iter().map(|chip| numbered.chip(chip)));
        }
        Row::Check {
            label,
            detail,
            value,
            on,
            command,
            more,
        } => {
            data.kind = RowKind::Check;
            (data.label, data.detail, data.value) = (
                label.as_str().into(),
                detail.as_str().into(),
                together(value).into(),
            );
            data.says = spoken(&[label, value, detail]);
            data.on = *on;
            data.command = numbered.number(command.clone());
            data.more = numbered.maybe(more.as_ref());
            data.more_label = spoken(&["Change", label]);
        }
        Row::Note {
            tone,
            text,
            detail,
            mend,
        } => {
            data.kind = RowKind::Note;
            (data.label, data.detail) = (stacked(text).into(), stacked(detail).into());
            data.says = spoken(&[text, detail]);
            data.weight = match tone {
                Tone::Note => 0,
                Tone::Caution => 1,
                Tone::Stop => 2,
                Tone::Good => 3,
            };
            if let Some(mend) = mend {
                data.more = numbered.number(mend.command.clone());
                data.more_label = mend.label.as_str().into();
            }
        }
        Row::Button {
            label,
            main,
            command,
        } => {
            data.kind = RowKind::Button;
            data.label = label.as_str().into();
            data.on = *main;
            data.command = numbered.number(command.clone());
        }
    }
    data
}

/// Parts of a row in words, for a screen reader.
fn spoken(parts: &[&str]) -> SharedString {
    let parts: Vec<String> = parts
        .iter()
        .filter(|part| !part.is_empty())
        .map(|part| plain(part))
        .collect();
    parts.join(", ").into()
}

/// Rows for the page.
pub(super) fn model<T: Clone + 'static>(items: impl IntoIterator<Item = T>) -> ModelRc<T> {
    ModelRc::new(VecModel::from_iter(items))
}
