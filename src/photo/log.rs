//! The log: entries by day, found by words, narrowed by room, wall and stage, before beside after.

use std::sync::Arc;

use chrono::NaiveDate;

use super::{Photo, Stage, What};
use crate::site::Id;

/// What of the log is shown.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Filter {
    /// Words that all have to be there, in any order.
    pub words: String,
    /// Of one room.
    pub room: Option<Id>,
    /// Of one wall of it.
    pub wall: Option<usize>,
    /// At one stage.
    pub stage: Option<Stage>,
}

impl Filter {
    /// Whether it narrows anything.
    #[must_use]
    pub fn is_set(&self) -> bool {
        *self != Filter::default()
    }

    /// Whether a picture is shown. `also` gives what else is searched: names of its room and wall, its figures as set.
    pub fn takes(&self, photo: &Photo, also: impl FnOnce() -> String) -> bool {
        let of = self.room.is_none_or(|room| photo.room == Some(room))
            && self.wall.is_none_or(|wall| photo.wall == Some(wall))
            && self.stage.is_none_or(|stage| photo.stage == Some(stage));
        if !of || self.words.trim().is_empty() {
            return of;
        }
        let text = folded(&format!("{} {}", said(photo), also()));
        folded(&self.words)
            .split_whitespace()
            .all(|word| text.contains(word))
    }
}

/// Everything that a person wrote on a picture.
fn said(photo: &Photo) -> String {
    let stage = photo.stage.map_or("", Stage::name);
    let mut all = format!("{} {} {stage}", photo.title, photo.note);
    for mark in &photo.marks {
        all.push(' ');
        all.push_str(&mark.note);
        if let What::Hidden(behind) = &mark.what {
            all.push(' ');
            all.push_str(behind.kind.name());
            all.push(' ');
            all.push_str(&behind.material);
        }
    }
    all
}

/// Without capitals, signs of inches and feet as they are typed.
fn folded(text: &str) -> String {
    let plain = text.chars().map(|c| match c {
        '″' | '”' | '“' => '"',
        '′' | '’' => '\'',
        '±' => ' ',
        c => c,
    });
    plain.flat_map(char::to_lowercase).collect()
}

/// A line of the log.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// A day, in the local time of its pictures.
    Day(NaiveDate),
    /// A picture by its place in the job.
    Entry(usize),
}

/// The log as lines: the newest day first, within a day the newest picture first.
#[must_use]
pub fn lines(photos: &[Arc<Photo>], shown: impl Fn(&Photo) -> bool) -> Vec<Line> {
    let mut at: Vec<usize> = (0..photos.len()).filter(|at| shown(&photos[*at])).collect();
    // By the day on the wall clock where it was taken, then by the moment.
    at.sort_by_key(|at| {
        let when = photos[*at].when;
        std::cmp::Reverse((when.date_naive(), when))
    });
    let mut lines = Vec::with_capacity(at.len() + at.len() / 4);
    let mut day = None;
    for at in at {
        let of = photos[at].when.date_naive();
        if day.replace(of) != Some(of) {
            lines.push(Line::Day(of));
        }
        lines.push(Line::Entry(at));
    }
    lines
}

/// Pictures that may be the one before: of the same room and wall, taken earlier, the nearest last.
#[must_use]
pub fn befores(photos: &[Arc<Photo>], at: usize) -> Vec<usize> {
    let Some(photo) = photos.get(at) else {
        return Vec::new();
    };
    let same = |other: &Photo| {
        other.id != photo.id
            && other.room == photo.room
            && other.wall == photo.wall
            && other.when <= photo.when
    };
    let mut all: Vec<usize> = (0..photos.len()).filter(|at| same(&photos[*at])).collect();
    all.sort_by_key(|at| photos[*at].when);
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use chrono::DateTime;

    fn photo(title: &str, when: &str, stage: Option<Stage>) -> Arc<Photo> {
        let when = DateTime::parse_from_rfc3339(when).unwrap();
        Arc::new(Photo {
            title: title.to_owned(),
            stage,
            ..Photo::new("a.jpg".into(), (4, 3), when)
        })
    }

    #[test]
    fn a_day_is_that_of_the_clock_where_the_picture_was_taken() {
        // 23:30 in New York is the next day in London.
        let photos = [
            photo("late", "2026-03-14T23:30:00-04:00", None),
            photo("next", "2026-03-15T08:00:00-04:00", None),
            photo("abroad", "2026-03-15T04:00:00+01:00", None),
        ];
        let day = |d| Line::Day(NaiveDate::from_ymd_opt(2026, 3, d).unwrap());
        let entry = Line::Entry;
        assert_eq!(
            lines(&photos, |_| true),
            [day(15), entry(1), entry(2), day(14), entry(0)]
        );
        assert_eq!(lines(&photos, |p| p.title == "late"), [day(14), entry(0)]);
        assert_eq!(lines(&[], |_| true), []);
    }

    #[test]
    fn words_are_found_in_any_order_and_measures_as_they_are_typed() {
        let mut one = (*photo(
            "Before closing up",
            "2026-03-14T10:00:00Z",
            Some(Stage::Stripped),
        ))
        .clone();
        one.note = "Hot left".into();
        let found = |words: &str| {
            let filter = Filter {
                words: words.into(),
                ..Filter::default()
            };
            filter.takes(&one, || "Cabin washroom wall B 3′ 7 5/16″".into())
        };
        for words in [
            "closing before",
            "HOT",
            "3' 7 5/16\"",
            "wall b",
            "stripped",
            "  ",
        ] {
            assert!(found(words), "{words}");
        }
        assert!(!found("cold") && !found("before cold"));
    }

    #[test]
    fn a_filter_asks_for_all_that_it_names() {
        let one = photo("a", "2026-03-14T10:00:00Z", Some(Stage::Finished));
        let of = |stage| Filter {
            stage,
            ..Filter::default()
        };
        assert!(of(Some(Stage::Finished)).takes(&one, String::new));
        assert!(!of(Some(Stage::AsFound)).takes(&one, String::new));
        let wall = Filter {
            wall: Some(1),
            ..Filter::default()
        };
        assert!(!wall.takes(&one, String::new));
    }

    /// 5,000 pictures of two years: each day once, newest first, and every filter takes what a count takes.
    #[test]
    fn a_long_log_is_in_order_and_is_searched_whole() {
        let begun = DateTime::parse_from_rfc3339("2025-01-01T07:00:00-05:00").unwrap();
        let photos: Vec<Arc<Photo>> = (0..5_000u64)
            .map(|n| {
                // Not in the order in which they were taken.
                let when = begun + chrono::Duration::minutes((n * 2_677 % 5_000 * 211) as i64);
                let mut photo = Photo::new("a.jpg".into(), (4, 3), when);
                photo.room = Some(Id(n % 2));
                photo.wall = Some((n % 4) as usize);
                photo.stage = Some(Stage::ALL[(n % 5) as usize]);
                photo.title = format!("Picture {n}");
                Arc::new(photo)
            })
            .collect();
        let all = lines(&photos, |_| true);
        let entries: Vec<usize> = all
            .iter()
            .filter_map(|line| match line {
                Line::Entry(at) => Some(*at),
                Line::Day(_) => None,
            })
            .collect();
        assert_eq!(entries.len(), 5_000);
        assert!(
            entries
                .windows(2)
                .all(|pair| photos[pair[0]].when >= photos[pair[1]].when)
        );
        let days: std::collections::BTreeSet<NaiveDate> =
            photos.iter().map(|photo| photo.when.date_naive()).collect();
        assert_eq!(all.len(), 5_000 + days.len());
        let count = |filter: Filter| {
            let taken = lines(&photos, |photo| filter.takes(photo, String::new));
            taken
                .iter()
                .filter(|line| matches!(line, Line::Entry(_)))
                .count()
        };
        let of = Filter::default;
        assert_eq!(
            count(Filter {
                room: Some(Id(1)),
                ..of()
            }),
            2_500
        );
        assert_eq!(
            count(Filter {
                room: Some(Id(1)),
                wall: Some(3),
                ..of()
            }),
            1_250
        );
        assert_eq!(
            count(Filter {
                room: Some(Id(1)),
                wall: Some(2),
                ..of()
            }),
            0
        );
        assert_eq!(
            count(Filter {
                stage: Some(Stage::Stripped),
                ..of()
            }),
            1_000
        );
        assert_eq!(
            count(Filter {
                words: "picture 4999".into(),
                ..of()
            }),
            1
        );
        assert_eq!(
            count(Filter {
                words: "cellar".into(),
                ..of()
            }),
            0
        );
    }

    #[test]
    fn before_is_earlier_and_of_the_same_place() {
        let photos = [
            photo("after", "2026-03-16T10:00:00Z", None),
            photo("first", "2026-03-01T10:00:00Z", None),
            photo("second", "2026-03-02T10:00:00Z", None),
            photo("later", "2026-03-20T10:00:00Z", None),
        ];
        assert_eq!(befores(&photos, 0), [1, 2]);
        assert!(befores(&photos, 9).is_empty());
    }
}
