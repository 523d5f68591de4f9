//! Colours by what they mean, for three kinds of light.

use super::Role;

/// A colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Colour {
    /// Red.
    pub r: u8,
    /// Green.
    pub g: u8,
    /// Blue.
    pub b: u8,
}

/// The light that a screen is read in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Theme {
    /// In a room.
    #[default]
    Day,
    /// In the dark.
    Night,
    /// By a bright window: black on white, lines one step heavier.
    Sun,
}

/// The colours of one theme.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Palette {
    theme: Theme,
}

impl Palette {
    /// The colours of a theme.
    #[must_use]
    pub const fn of(theme: Theme) -> Palette {
        Palette { theme }
    }
    /// How thick a line is drawn that is so thick by day.
    #[must_use]
    pub fn line_width(self, by_day: f32) -> f32 {
        match self.theme {
            Theme::Day | Theme::Night => by_day,
            Theme::Sun => by_day * 1.4,
        }
    }
    /// The rail at the side.
    #[must_use]
    pub fn rail(self) -> Colour {
        rgb(match self.theme {
            Theme::Day => 0x26_2D33,
            Theme::Night => 0x0E_1215,
            Theme::Sun => 0x00_0000,
        })
    }
    /// The ground of the tape on the pad.
    #[must_use]
    pub fn tape(self) -> Colour {
        rgb(match self.theme {
            Theme::Day => 0xF4_DB99,
            Theme::Night => 0x6B_5724,
            Theme::Sun => 0xFF_FFFF,
        })
    }
    /// The colour of a role: day, night, sun.
    #[must_use]
    pub fn colour(self, role: Role) -> Colour {
        let [day, night, sun] = match role {
            Role::Paper => [0xF5_F2EA, 0x14_191D, 0xFF_FFFF],
            Role::Sheet => [0xFF_FDF8, 0x1C_2328, 0xFF_FFFF],
            Role::Ink => [0x20_262B, 0xEF_EADF, 0x00_0000],
            Role::Soft => [0x59_626A, 0xA5_ADB3, 0x00_0000],
            Role::Rule => [0xD8_D2C4, 0x38_424A, 0x00_0000],
            Role::Chalk => [0x0A_55A0, 0x86_BDF7, 0x00_2F6C],
            Role::ChalkWash => [0xDC_E9F6, 0x1F_3A55, 0xFF_FFFF],
            Role::Amber => [0x8A_5200, 0xF4_B95A, 0x00_0000],
            Role::AmberWash => [0xFF_F0D2, 0x3A_2D14, 0xFF_FFFF],
            Role::Red => [0xA3_2A1F, 0xFF_8F82, 0x8B_0000],
            Role::RedWash => [0xF7_D3CD, 0x4A_211C, 0xFF_D0C8],
            Role::Green => [0x27_663F, 0x7F_D09B, 0x00_3B16],
            Role::GreenWash => [0xD7_EBDD, 0x1B_3A27, 0xFF_FFFF],
            Role::Board => [0xEA_E4D6, 0x2C_343A, 0xEE_EEEE],
            Role::Hole => [0x3F_474D, 0x05_0709, 0x00_0000],
        };
        rgb(match self.theme {
            Theme::Day => day,
            Theme::Night => night,
            Theme::Sun => sun,
        })
    }
}

const fn rgb(hex: u32) -> Colour {
    Colour {
        r: (hex >> 16) as u8,
        g: (hex >> 8) as u8,
        b: hex as u8,
    }
}

/// How far two colours stand off one another, 1 to 21. Source: WCAG 2.2, definition "contrast ratio", from memory.
#[cfg(test)]
pub(super) fn contrast(a: Colour, b: Colour) -> f64 {
    let (a, b) = (tests::luminance(a), tests::luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Relative luminance. Source: WCAG 2.2, definition "relative luminance", from memory.
    pub(super) fn luminance(colour: Colour) -> f64 {
        let part = |value: u8| {
            let c = f64::from(value) / 255.0;
            if c <= 0.04045 {
                c / 12.92
            } else {
                ((c + 0.055) / 1.055).powf(2.4)
            }
        };
        0.2126 * part(colour.r) + 0.7152 * part(colour.g) + 0.0722 * part(colour.b)
    }

    #[test]
    fn every_text_stands_off_its_ground_by_4_5_to_1() {
        for theme in [Theme::Day, Theme::Night, Theme::Sun] {
            let palette = Palette::of(theme);
            for (text, grounds) in [
                (Role::Ink, [Role::Paper, Role::Sheet, Role::ChalkWash]),
                (Role::Soft, [Role::Paper, Role::Sheet, Role::Sheet]),
                (Role::Chalk, [Role::Paper, Role::Sheet, Role::ChalkWash]),
                (Role::Amber, [Role::Sheet, Role::Sheet, Role::AmberWash]),
                (Role::Red, [Role::Sheet, Role::Sheet, Role::RedWash]),
                (Role::Green, [Role::Sheet, Role::Sheet, Role::GreenWash]),
            ] {
                for ground in grounds {
                    let contrast = contrast(palette.colour(text), palette.colour(ground));
                    assert!(
                        contrast >= 4.5,
                        "{theme:?}: {text:?} on {ground:?} is {contrast:.2}"
                    );
                }
            }
        }
    }
}
