//! The pad: keys in, figure and tape out.

use std::rc::Rc;

use slint::{ComponentHandle, Image, ModelRc, SharedString};

use super::Desk;
use super::generated::{Chip, PadKeys};
use super::page::{Numbered, model};
use crate::app::{App, FRACTIONS, Kind};
use crate::drawing::{Palette, length_of_drag, tape};
use crate::measure::{Length, fraction_glyph};

/// Height of the tape on the pad.
const TAPE_HEIGHT: f32 = 90.0;

/// Keys, taps and drags of the pad.
pub(super) fn connect(desk: &Rc<Desk>) {
    let keys = desk.window.global::<PadKeys<'_>>();
    let on = |act: fn(&mut App)| {
        let weak = Rc::downgrade(desk);
        move || {
            if let Some(desk) = weak.upgrade() {
                desk.act(act);
            }
        }
    };
    keys.on_done(on(App::take));
    keys.on_next(on(|app| app.step_pad(true)));
    keys.on_previous(on(|app| app.step_pad(false)));
    keys.on_close(on(|app| app.pad = None));
    keys.on_again(on(|app| {
        if let Some((_, again)) = app.told() {
            app.send(again);
        }
    }));
    keys.on_tape_grabbed(on(|app| {
        let units = app.job.units;
        if let Some(pad) = &mut app.pad {
            pad.grab(units);
        }
    }));
    let weak = Rc::downgrade(desk);
    keys.on_key(move |key| {
        if let Some(desk) = weak.upgrade() {
            press(&desk, &key);
        }
    });
    let weak = Rc::downgrade(desk);
    desk.window
        .on_pad_key(move |key| weak.upgrade().is_some_and(|desk| press(&desk, &key)));
    let weak = Rc::downgrade(desk);
    keys.on_edited(move |text| {
        if let Some(desk) = weak.upgrade()
            && let Some(pad) = &mut desk.app.borrow_mut().pad
        {
            pad.typed = text.to_string();
            pad.fresh = false;
        }
    });
    let weak = Rc::downgrade(desk);
    keys.on_tape_dragged(move |px| {
        if let Some(desk) = weak.upgrade() {
            desk.act(|app| {
                let units = app.job.units;
                if let Some(pad) = &mut app.pad {
                    pad.drag(length_of_drag(-px, units.is_metric()), units);
                }
            });
        }
    });
    let weak = Rc::downgrade(desk);
    keys.on_tape_sized(move |width| {
        if let Some(desk) = weak.upgrade() {
            desk.tape.set(width);
            show_tape(&desk, &desk.app.borrow());
        }
    });
}

/// A key of the pad or the keyboard; gives whether the pad took it.
fn press(desk: &Rc<Desk>, key: &str) -> bool {
    if desk.with_app(|app| app.pad.is_none()) {
        let opened = desk.app.borrow_mut().type_ahead(key);
        if opened {
            desk.show();
        }
        return opened;
    }
    if key == "\n" || key == "\r" {
        desk.act(App::take);
        return true;
    }
    let taken = desk
        .app
        .borrow_mut()
        .pad
        .as_mut()
        .is_some_and(|pad| pad.key(key));
    if taken {
        desk.show();
    }
    taken
}

/// Shows the pad as it is, or closes it.
pub(super) fn show(desk: &Desk, app: &App, numbered: &mut Numbered) {
    let keys = desk.window.global::<PadKeys<'_>>();
    keys.set_open(app.pad.is_some());
    let Some(pad) = &app.pad else {
        // The field for words goes with its pad, so that the next one takes the keys anew.
        keys.set_is_text(false);
        return;
    };
    let choices = app.pad_choices();
    keys.set_is_choice(pad.kind == Kind::Choice);
    keys.set_choices(model(choices.iter().map(|chip| numbered.chip(chip))));
    let metric = app.job.units.is_metric();
    let length = pad.kind == Kind::Length;
    keys.set_asks(pad.asks.as_str().into());
    keys.set_shown(pad.shown().into());
    keys.set_other(pad.other(app.job.units).into());
    keys.set_wrong(pad.wrong.as_str().into());
    keys.set_told(app.told().map_or("", |(text, _)| text).into());
    keys.set_is_text(pad.kind == Kind::Words);
    keys.set_typed(pad.typed.as_str().into());
    keys.set_progress(app.pad_progress().into());
    keys.set_has_fractions(length && !metric);
    let typed = pad.typed.trim_end_matches(['"', ' ']);
    keys.set_fractions(model(FRACTIONS.iter().map(|(over, under)| {
        let face: SharedString = if *over == 0 {
            "none".into()
        } else {
            fraction_glyph(u32::from(*over), u32::from(*under)).into()
        };
        Chip {
            label: face,
            on: *over > 0 && typed.ends_with(&format!(" {over}/{under}")),
            command: -1,
        }
    })));
    let units: &[&str] = match (length, metric) {
        (false, _) => &[],
        (true, false) => &["ft", "in"],
        (true, true) => &["mm", "cm"],
    };
    keys.set_unit_keys(if units.is_empty() {
        ModelRc::default()
    } else {
        model(units.iter().map(|unit| SharedString::from(*unit)))
    });
    keys.set_has_tape(length);
    show_tape(desk, app);
}

fn show_tape(desk: &Desk, app: &App) {
    let Some(pad) = app.pad.as_ref().filter(|pad| pad.kind == Kind::Length) else {
        return;
    };
    let at = pad
        .length(app.job.units)
        .unwrap_or(Length::ZERO)
        .max(Length::ZERO);
    let width = desk.tape.get();
    if width < 40.0 {
        return;
    }
    let scale = desk.window.window().scale_factor();
    let pixels = tape(
        at,
        app.job.units.is_metric(),
        (width, TAPE_HEIGHT),
        scale,
        &Palette::of(app.prefs.theme),
    );
    let buffer = slint::SharedPixelBuffer::<slint::Rgba8Pixel>::clone_from_slice(
        &pixels.rgba,
        pixels.width,
        pixels.height,
    );
    desk.window
        .global::<PadKeys<'_>>()
        .set_tape(Image::from_rgba8_premultiplied(buffer));
}
