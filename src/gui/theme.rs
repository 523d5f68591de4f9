//! The colours of `drawing::Palette` onto the screens.

use slint::{Color, ComponentHandle};

use super::generated::{MainWindow, Theme as Colours};
use crate::drawing::{Colour, Palette, Role};

/// Sets every colour and the text size.
pub(super) fn set(window: &MainWindow, palette: &Palette, text: f32) {
    let colours = window.global::<Colours<'_>>();
    let of = |role| slint_colour(palette.colour(role));
    colours.set_paper(of(Role::Paper));
    colours.set_sheet(of(Role::Sheet));
    colours.set_ink(of(Role::Ink));
    colours.set_soft(of(Role::Soft));
    colours.set_rule(of(Role::Rule));
    colours.set_chalk(of(Role::Chalk));
    colours.set_chalk_wash(of(Role::ChalkWash));
    colours.set_amber(of(Role::Amber));
    colours.set_amber_wash(of(Role::AmberWash));
    colours.set_red(of(Role::Red));
    colours.set_red_wash(of(Role::RedWash));
    colours.set_green(of(Role::Green));
    colours.set_green_wash(of(Role::GreenWash));
    colours.set_rail(slint_colour(palette.rail()));
    colours.set_text(text);
}

fn slint_colour(colour: Colour) -> Color {
    Color::from_rgb_u8(colour.r, colour.g, colour.b)
}
