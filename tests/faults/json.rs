//! A job as JSON: every number comes back as it was, and what is wrong is said with its place.

use std::sync::Arc;

use chrono::{DateTime, FixedOffset};
use proptest::prelude::*;
use proptest::{collection::vec, option, sample::select};
use storyrod::measure::quantity::{SpreadRate, square_feet_per_gallon, square_metres};
use storyrod::measure::{Angle, Length, Money, Units};
use storyrod::site::{
    self, Finish, FixedKind, FixedPoint, Fixture, FixtureKind, Hidden, HiddenKind, Hinge, Id,
    Joists, Known, On, Opening, OpeningKind, OpeningRule, Passed, Room, Side, Size, Spot, Studs,
    Survey, Third, Wall, What,
};
use storyrod::store::Snapshot;
use storyrod::store::json::{JsonError, from_json, to_json};
use storyrod::takeoff::{
    Ask, Choice, EntryKind, HandLine, Job, LineKey, Mark, PackKey, RollLine, Stamps, StepNote,
    TapeBench, Task,
};
use storyrod::trades::paint::{self, Binder, Built, Coats, Part, Sheen, Surface, Texture, Trim};
use storyrod::trades::patch::{self, Air, Hole, HoleShape, Method, Obstacle, WallFacts};
use storyrod::trades::tape::Ends;
use storyrod::trades::{Compound, Material, Work};

use super::job_file::full_snapshot;

#[test]
fn a_job_with_everything_comes_back_as_it_was() {
    let full = full_snapshot();
    let text = to_json(&full).unwrap();
    let back = from_json(&text).unwrap();
    assert_eq!(back.job, full.job);
    assert_eq!(back.stamps, full.stamps);
    assert!(back.done.is_empty() && back.undone.is_empty());
    assert_eq!(to_json(&back).unwrap(), text);
}

#[test]
fn it_reads_as_what_it_means() {
    let text = to_json(&full_snapshot()).unwrap();
    for part in [
        "\"storyrod\": 1,",
        "\"begun\": \"2026-03-14T09:00:00-05:00\"",
        "\"units\": \"centimetres\"",
        "\"ceiling_nm\": 2463800000",
        "\"turn_udeg\": 90000000",
        "\"floor_finish\": \"tile\"",
        "\"price_minor\": 4250",
        "\"typed\": \"3' 7 5/16\\\" - 3/4\"",
        "\"label_rate_m2_per_l\": 8.58",
        "\"below_m2\": 9.290304",
    ] {
        assert!(text.contains(part), "{part} in\n{text}");
    }
}

#[test]
fn keys_not_known_are_passed_over_and_missing_ones_are_as_in_a_new_job() {
    let text = r#"{"storyrod": 1, "name": "Cabin", "units": "metres", "mood": ["good", {"a": 1}],
        "rooms": [{"name": "Bath", "tub": true, "walls": [{"sketched_nm": 1, "turn_udeg": 90000000}]}],
        "figures": [{"ask": {"paint": {}}}], "buying": {"symbol": "kr"}}"#;
    let job = from_json(text).unwrap().job;
    let new = Job::new("Cabin", DateTime::UNIX_EPOCH.fixed_offset(), Units::Metres);
    assert_ne!(job.id, Id::NONE);
    assert_eq!(
        (&job.name, job.begun, &job.tape),
        (&new.name, new.begun, &new.tape)
    );
    assert_eq!(
        (&job.buying.symbol[..], job.buying.choice),
        ("kr", Choice::LeastLeftOver)
    );
    assert_eq!(job.rooms[0].floor_finish, Finish::Paint);
    let usual = paint::Ask {
        surfaces: Vec::new(),
        ..paint::Ask::default()
    };
    assert_eq!(
        job.tasks[0].ask,
        Ask::Paint(Box::new(usual), OpeningRule::Net)
    );
}

/// The full job with one piece of its text changed.
fn changed(from: &str, to: &str) -> JsonError {
    let text = to_json(&full_snapshot()).unwrap();
    assert!(text.contains(from), "{from}");
    from_json(&text.replacen(from, to, 1)).unwrap_err()
}

fn path_of(why: &JsonError) -> &str {
    match why {
        JsonError::At { path, .. } => path,
        _ => "",
    }
}

#[test]
fn what_is_out_of_range_is_said_with_its_place() {
    for (from, to, path) in [
        (
            "\"length_nm\": 2235200000",
            "\"length_nm\": 10000000000001",
            "rooms[0].walls[0].length_nm",
        ),
        (
            "\"length_nm\": 2235200000",
            "\"length_nm\": 1e99",
            "rooms[0].walls[0].length_nm",
        ),
        (
            "\"length_nm\": 2235200000",
            "\"length_nm\": \"88\"",
            "rooms[0].walls[0].length_nm",
        ),
        (
            "\"turn_udeg\": 90000000",
            "\"turn_udeg\": 3600000001",
            "rooms[0].walls[0].turn_udeg",
        ),
        (
            "\"finish\": \"paint\"",
            "\"finish\": \"gold\"",
            "rooms[0].walls[0].finish",
        ),
        ("\"wall\": 4", "\"wall\": 6", "rooms[0].openings[0].wall"),
        (
            "\"volume_solids\": 0.38",
            "\"volume_solids\": 1.01",
            "figures[1].ask.paint.finish.volume_solids",
        ),
        (
            "\"label_rate_m2_per_l\": 8.5",
            "\"label_rate_m2_per_l\": -8.5",
            "figures[1].ask.paint.finish.label_rate_m2_per_l",
        ),
        (
            "\"label_rate_m2_per_l\": 8.5",
            "\"label_rate_m2_per_l\": 1e999, \"x\": 8.5",
            "figures[1].ask.paint.finish.label_rate_m2_per_l",
        ),
        (
            "\"area_m2\": ",
            "\"area_m2\": -",
            "figures[1].ask.paint.surfaces[0].area_m2",
        ),
        (
            "\"humidity_percent\": 71.0",
            "\"humidity_percent\": 101",
            "figures[0].ask.patch.humidity_percent",
        ),
        (
            "\"fahrenheit\": 62.5",
            "\"fahrenheit\": 201",
            "figures[0].ask.patch.fahrenheit",
        ),
        (
            "\"coats\": 1",
            "\"coats\": 256",
            "figures[1].ask.paint.primer.coats",
        ),
        (
            "\"units\": \"centimetres\"",
            "\"units\": \"cubits\"",
            "units",
        ),
        ("\"begun\": \"2026", "\"begun\": \"20x6", "begun"),
        ("\"scale_nm\": ", "\"scale_nm\": 99999999", "tape.scale_nm"),
        (
            "\"price_minor\": 499",
            "\"price_minor\": 4.99",
            "buying.by_hand[0].price_minor",
        ),
        (
            "\"device\": \"0",
            "\"device\": \"+",
            "stamps[0].changes[0].device",
        ),
    ] {
        let why = changed(from, to);
        assert_eq!(path_of(&why), path, "{to}: {why}");
        assert!(why.to_string().starts_with(path));
    }
}

#[test]
fn a_room_that_is_not_there_and_a_name_borne_twice_are_said_with_their_place() {
    let full = full_snapshot();
    let hex = |id: Id| format!("\"{:016x}\"", id.0);
    let (first, second) = (full.job.rooms[0].id, full.job.rooms[1].id);
    let text = to_json(&full).unwrap();
    let room = format!("\"room\": {}", hex(first));
    let lost = text.replacen(&room, "\"room\": \"1\"", 1);
    assert_eq!(path_of(&from_json(&lost).unwrap_err()), "figures[0].room");
    let twice = text.replacen(&hex(second), &hex(first), 1);
    assert_eq!(path_of(&from_json(&twice).unwrap_err()), "rooms[1].id");
}

#[test]
fn what_is_no_json_or_not_ours_or_newer_is_told_apart() {
    assert_eq!(
        changed("\"storyrod\": 1", "\"storyrod\": 2"),
        JsonError::Newer { found: 2 }
    );
    assert_eq!(
        changed("\"storyrod\": 1", "\"storyrod\": \"x\""),
        JsonError::NotOurs
    );
    for text in ["{}", "[]", "7", "\"storyrod\"", "null"] {
        assert_eq!(from_json(text), Err(JsonError::NotOurs), "{text}");
    }
    let deep = "[".repeat(100_000);
    for text in [
        "",
        "{",
        "{\"storyrod\": 1,",
        "nul",
        &deep,
        &format!("{{\"storyrod\": {deep}"),
    ] {
        let refused = from_json(text).unwrap_err();
        assert!(
            matches!(refused, JsonError::NotJson { .. } | JsonError::NotOurs),
            "{refused}"
        );
    }
    let whole = to_json(&full_snapshot()).unwrap();
    assert!(from_json(&format!("{whole} x")).is_err());
    for cut in (0..whole.len())
        .step_by(7)
        .filter(|at| whole.is_char_boundary(*at))
    {
        assert!(from_json(&whole[..cut]).is_err(), "cut at {cut}");
    }
}

fn length() -> impl Strategy<Value = Length> {
    let longest = Length::LONGEST.as_nm();
    prop_oneof![(-longest..=longest), (0..10_000_000_000i64)].prop_map(Length::nm)
}

fn text() -> impl Strategy<Value = String> {
    vec(any::<char>(), 0..6).prop_map(|chars| chars.into_iter().collect())
}

fn studs() -> impl Strategy<Value = Studs> {
    prop_oneof![
        (length(), length(), length()).prop_map(|(first, spacing, face)| Studs::Spaced {
            first,
            spacing,
            face
        }),
        (vec(length(), 0..3), length()).prop_map(|(centres, face)| Studs::Found { centres, face }),
    ]
}

fn finish() -> impl Strategy<Value = Finish> {
    select(vec![
        Finish::Paint,
        Finish::Tile,
        Finish::Boards,
        Finish::Leave,
    ])
}

fn wall() -> impl Strategy<Value = Wall> {
    let turn = (-3_600_000_000i64..=3_600_000_000).prop_map(Angle::microdegrees);
    let lengths = (option::of(length()), length(), option::of(length()));
    (lengths, turn, option::of(studs()), finish()).prop_map(
        |((length, sketched, height), turn, studs, finish)| Wall {
            length,
            sketched,
            turn,
            height,
            studs,
            finish,
        },
    )
}

/// On the first wall, which every room has.
fn on() -> impl Strategy<Value = On> {
    select(vec![On::Wall(0), On::Floor(0)])
}
fn known() -> impl Strategy<Value = Known> {
    prop_oneof![Just(Known::Tape), length().prop_map(Known::Picture)]
}

fn fixed() -> impl Strategy<Value = FixedPoint> {
    let size = || option::of(length());
    let kinds = select(FixedKind::ALL.to_vec());
    let sizes = (size(), size(), size(), size(), size());
    (kinds, on(), sizes, text(), known()).prop_map(
        |(kind, on, (from_left, up, width, height, depth), note, known)| FixedPoint {
            from_left,
            up,
            width,
            height,
            depth,
            note,
            known,
            ..FixedPoint::new(kind, on)
        },
    )
}

fn hidden() -> impl Strategy<Value = Hidden> {
    let spot = (length(), length()).prop_map(|(from_left, up)| Spot { from_left, up });
    let sizes = (option::of(length()), option::of(length()));
    let kinds = select(HiddenKind::ALL.to_vec());
    let texts = (text(), text(), option::of(text()));
    (kinds, on(), vec(spot, 0..4), sizes, texts, known()).prop_map(
        |(kind, on, line, (width, depth), (material, note, picture), known)| Hidden {
            line,
            width,
            depth,
            material,
            note,
            known,
            picture,
            ..Hidden::new(kind, on)
        },
    )
}

fn fixture() -> impl Strategy<Value = Fixture> {
    let size = || option::of(length());
    let kinds = select(FixtureKind::ALL.to_vec());
    let sizes = (size(), size(), size(), size(), size());
    (kinds, sizes, text()).prop_map(|(kind, (from_left, out, width, depth, height), note)| {
        Fixture {
            from_left,
            out,
            width,
            depth,
            height,
            note,
            ..Fixture::new(kind, 0)
        }
    })
}

fn what() -> impl Strategy<Value = What> {
    let sides = select(vec![Side::Left, Side::Right]);
    let thirds = select(vec![Third::Left, Third::Middle, Third::Right]);
    let sizes = select(vec![
        Size::FromLeft,
        Size::Up,
        Size::Width,
        Size::Height,
        Size::Depth,
    ]);
    (0u8..12, 0usize..9, 0usize..9, sides, thirds, sizes).prop_map(
        |(kind, a, b, side, third, size)| match kind {
            0 => What::Wall(a),
            1 => What::diagonal(a, b),
            2 => What::Ceiling,
            3 => What::WallHeight(a),
            4 => What::Height(a),
            5 => What::Lean(a, side),
            6 => What::Gap(a, third),
            7 => What::Level(a),
            8 => What::Opening(a, size),
            9 => What::Fixed(a, size),
            10 => What::Fixture(a, size),
            _ => What::Hidden(a),
        },
    )
}

fn survey() -> impl Strategy<Value = Survey> {
    let passed = option::of(select(vec![Passed::Skipped, Passed::NotThere]));
    let mark = (
        passed,
        option::of(length()),
        any::<bool>(),
        vec(length(), 0..3),
    )
        .prop_map(|(passed, estimate, carried, earlier)| site::Mark {
            passed,
            estimate,
            carried,
            earlier,
        });
    let figures = vec((what(), length()), 0..4);
    (figures, vec((what(), mark), 0..4), length()).prop_map(|(figures, marks, reads_to)| Survey {
        figures: figures.into_iter().collect(),
        marks: marks.into_iter().collect(),
        reads_to,
    })
}

fn room() -> impl Strategy<Value = Room> {
    let kinds = vec![
        OpeningKind::Door,
        OpeningKind::Window,
        OpeningKind::Niche,
        OpeningKind::PassThrough,
    ];
    let opening = (
        select(kinds),
        any::<usize>(),
        option::of(length()),
        option::of(length()),
        option::of((select(vec![Side::Left, Side::Right]), any::<bool>())),
    );
    (
        text(),
        vec(wall(), 1..4),
        option::of(length()),
        vec(opening, 0..3),
        finish(),
        finish(),
        (
            vec(fixed(), 0..3),
            vec(hidden(), 0..3),
            vec(fixture(), 0..3),
            survey(),
            0u8..4,
            option::of(joists()),
        ),
    )
        .prop_map(
            |(
                name,
                walls,
                ceiling,
                openings,
                ceiling_finish,
                floor_finish,
                (fixed, hidden, fixtures, survey, facing, joists),
            )| {
                let joists = joists.map(|joists| Joists {
                    wall: joists.wall % walls.len(),
                    ..joists
                });
                Room {
                    id: Id::fresh(),
                    name,
                    ceiling,
                    openings: (openings.into_iter())
                        .map(|(kind, wall, width, height, hinge)| Opening {
                            kind,
                            wall: wall % walls.len(),
                            from_left: height,
                            width,
                            height,
                            sill: width,
                            hinge: hinge.map(|(side, out)| Hinge { side, out }),
                        })
                        .collect(),
                    walls,
                    ceiling_finish,
                    floor_finish,
                    fixed,
                    hidden,
                    fixtures,
                    survey,
                    facing,
                    joists,
                }
            },
        )
}

fn joists() -> impl Strategy<Value = Joists> {
    (
        0usize..9,
        length(),
        length(),
        length(),
        length(),
        any::<bool>(),
    )
        .prop_map(|(wall, first, spacing, depth, deck, engineered)| Joists {
            wall,
            first,
            spacing,
            face: deck,
            depth,
            deck,
            engineered,
        })
}

/// Any number that a rate may be.
fn rate() -> impl Strategy<Value = SpreadRate> {
    prop_oneof![
        (1.0..600.0f64).prop_map(square_feet_per_gallon),
        any::<f64>()
            .prop_filter("a rate", |v| v.is_finite() && *v > 0.0)
            .prop_map(|v| square_feet_per_gallon(1.0) * v)
            .prop_filter("a rate", |v| v.value.is_finite() && v.value > 0.0),
    ]
}

fn coats() -> impl Strategy<Value = Coats> {
    let all = (
        any::<u8>(),
        option::of(rate()),
        option::of(0.0..=1.0f64),
        option::of(length()),
        text(),
    );
    all.prop_map(
        |(coats, label_rate, volume_solids, dry_film, label)| Coats {
            coats,
            label_rate,
            volume_solids,
            dry_film,
            label,
        },
    )
}

fn square() -> impl Strategy<Value = f64> {
    any::<f64>()
        .prop_map(f64::abs)
        .prop_filter("an area", |v| v.is_finite())
}

fn paint_ask() -> impl Strategy<Value = Ask> {
    let kinds = (
        select(vec![Part::Wall, Part::Ceiling]),
        select(vec![
            Texture::Smooth,
            Texture::BareBoard,
            Texture::Textured,
            Texture::Masonry,
            Texture::HeavyTexture,
        ]),
        select(vec![Built::Unknown, Built::Before1978, Built::From1978]),
        select(vec![
            Sheen::Flat,
            Sheen::Eggshell,
            Sheen::SemiGloss,
            Sheen::Gloss,
        ]),
        select(vec![Binder::Latex, Binder::Alkyd]),
        option::of(any::<u8>()),
    );
    let rule = prop_oneof![
        Just(OpeningRule::Net),
        Just(OpeningRule::Solid),
        square().prop_map(|v| OpeningRule::SmallNotDeducted(square_metres(v))),
    ];
    let sizes = (
        vec(square(), 0..3),
        vec((text(), length(), length()), 0..3),
        option::of(length()),
    );
    (
        (coats(), coats(), coats()),
        kinds,
        rule,
        sizes,
        any::<bool>(),
    )
        .prop_map(
            |(
                (primer, finish, trim_finish),
                (part, kind, built, sheen, binder, level),
                rule,
                (areas, trim, tall),
                paid,
            )| {
                let surfaces = areas.iter().map(|area| Surface {
                    name: format!("{area}"),
                    part,
                    area: square_metres(*area),
                    height: tall,
                    width: None,
                    kind,
                    cut_in: Length::mm(5),
                });
                let trim = trim
                    .into_iter()
                    .map(|(name, length, face)| Trim { name, length, face });
                let ask = paint::Ask {
                    surfaces: surfaces.collect(),
                    trim: trim.collect(),
                    primer,
                    finish,
                    trim_finish,
                    built,
                    sheen,
                    binder,
                    level,
                    patched: areas.iter().copied().map(square_metres).collect(),
                    disturbed: square_metres(areas.first().copied().unwrap_or(0.0)),
                    paid_job: paid,
                    reach: paint::Reach {
                        stature: tall,
                        standing_off: Length::mm(7),
                    },
                };
                Ask::Paint(Box::new(ask), rule)
            },
        )
}

fn hole() -> impl Strategy<Value = Hole> {
    let shape = prop_oneof![
        (length(), length()).prop_map(|(width, height)| HoleShape::Rectangle { width, height }),
        length().prop_map(|across| HoleShape::Round { across }),
    ];
    let stud = option::of((0usize..u32::MAX as usize, length()));
    (shape, option::of(length()), stud, option::of(length())).prop_map(
        |(shape, from_left, from_stud, above_floor)| Hole {
            shape,
            from_left,
            from_stud,
            above_floor,
        },
    )
}

fn patch_ask() -> impl Strategy<Value = Ask> {
    let methods = vec![
        Method::Fill,
        Method::AdhesivePatch,
        Method::BackedPatch,
        Method::CutBack,
    ];
    let lengths = (length(), length(), length(), option::of(length()));
    let air = (-100.0..=200.0f64, 0.0..=100.0f64);
    (
        vec(hole(), 1..3),
        lengths,
        option::of(studs()),
        option::of(select(methods)),
        air,
        option::of(any::<u32>()),
        any::<bool>(),
    )
        .prop_map(
            |(
                mut holes,
                (board, gap, screws, tall),
                studs,
                method,
                (fahrenheit, humidity),
                wall,
                rated,
            )| {
                let obstacle = Obstacle {
                    left: board,
                    right: gap,
                    bottom: screws,
                    top: board,
                };
                let ask = patch::Ask {
                    hole: holes.remove(0),
                    other_holes: holes,
                    board,
                    wall: WallFacts {
                        length: tall,
                        height: None,
                        obstacles: vec![obstacle; usize::from(rated)],
                    },
                    studs,
                    gap,
                    method,
                    screw_spacing: screws,
                    fire_rated: rated,
                    air: Air {
                        fahrenheit,
                        humidity,
                    },
                };
                Ask::Patch(Box::new(ask), wall.map(|wall| wall as usize))
            },
        )
}

fn material() -> impl Strategy<Value = Material> {
    prop_oneof![
        length().prop_map(|thickness| Material::Board { thickness }),
        length().prop_map(|length| Material::Screws { length }),
        Just(Material::JointTape),
        select(vec![Compound::Drying, Compound::Setting]).prop_map(Material::Compound),
        length().prop_map(|side| Material::AdhesivePatch { side }),
        (length(), length()).prop_map(|(thickness, width)| Material::Lumber { thickness, width }),
        text().prop_map(|label| Material::Primer { label }),
        text().prop_map(|label| Material::Paint { label }),
    ]
}

fn stamps() -> impl Strategy<Value = Stamps> {
    let kinds = vec![
        EntryKind::Head,
        EntryKind::Room,
        EntryKind::Figure,
        EntryKind::HandLine,
        EntryKind::Buying,
        EntryKind::Tape,
        EntryKind::Photo,
        EntryKind::Step,
    ];
    let mark =
        (vec((any::<u64>(), any::<u32>()), 0..3), any::<bool>()).prop_map(|(changes, gone)| Mark {
            changes: changes.into_iter().collect(),
            gone,
        });
    vec(((select(kinds), any::<u64>().prop_map(Id)), mark), 0..4).prop_map(|marks| Stamps {
        marks: marks.into_iter().collect(),
    })
}

fn units() -> impl Strategy<Value = Units> {
    let marks = [2, 4, 8, 16, 32, 64].map(|marks| Units::FeetInches { marks });
    let mut all = vec![
        Units::DecimalInches,
        Units::Millimetres,
        Units::Centimetres,
        Units::Metres,
    ];
    all.extend(marks);
    select(all)
}

fn when() -> impl Strategy<Value = DateTime<FixedOffset>> {
    (
        0i64..4_000_000_000,
        0u32..1_000_000_000,
        -18i32 * 60..=18 * 60,
    )
        .prop_map(|(second, nano, minutes)| {
            let zone = FixedOffset::east_opt(minutes * 60).unwrap();
            DateTime::from_timestamp(second, nano)
                .unwrap()
                .with_timezone(&zone)
        })
}

type Prices = Vec<(Material, i64, u32, i64)>;

fn snapshot() -> impl Strategy<Value = Snapshot> {
    let tasks = vec(
        (
            prop_oneof![paint_ask(), patch_ask()],
            option::of(any::<usize>()),
            any::<bool>(),
        ),
        0..3,
    );
    let roll = vec((text(), text(), length()), 0..3);
    let prices = vec((material(), any::<i64>(), any::<u32>(), any::<i64>()), 0..4);
    (
        text(),
        when(),
        units(),
        vec(room(), 0..3),
        tasks,
        roll,
        prices,
        stamps(),
    )
        .prop_map(|(name, begun, units, rooms, tasks, roll, prices, stamps)| {
            let mut job = Job::new(name, begun, units);
            let seat = |at: usize| (!rooms.is_empty()).then(|| at % rooms.len());
            let tasks = tasks.into_iter().map(|(ask, room, on_list)| Task {
                id: Id::fresh(),
                room: room.and_then(seat),
                ask,
                on_list,
            });
            job.tasks = tasks.collect();
            job.rooms = rooms;
            for (label, typed, length) in roll {
                job.tape = bench(length, &job.tape);
                job.roll.push(Arc::new(RollLine {
                    id: Id::fresh(),
                    label,
                    typed,
                    length,
                }));
            }
            buy(&mut job, prices);
            for (at, room) in job.rooms.iter().enumerate() {
                job.steps.push(StepNote {
                    done: (at > 0).then_some(job.begun),
                    rank: (at == 0).then_some(-7),
                    ..StepNote::own(Some(room.id), format!("Do {at}"))
                });
            }
            for (at, task) in job.tasks.iter().enumerate() {
                job.steps.push(StepNote {
                    done: Some(job.begun),
                    rank: (at > 0).then_some(i64::MAX),
                    ..StepNote::figure(task.id, Work::ALL[at % Work::ALL.len()], at as u8)
                });
            }
            Snapshot {
                stamps: Arc::new(stamps),
                ..Snapshot::of(job)
            }
        })
}

fn bench(length: Length, before: &TapeBench) -> TapeBench {
    TapeBench {
        sides: [before.run, Some(length)],
        diagonals: [Some(length), before.sides[1]],
        run: Some(length),
        count: length.as_nm() as u32,
        width: before.run,
        ends: if length.is_positive() {
            Ends::Open
        } else {
            Ends::Taken
        },
        scale: length,
        on_paper: before.on_site,
        on_site: Some(length),
    }
}

fn buy(job: &mut Job, prices: Prices) {
    for (material, holds, count, price) in prices {
        let pack = PackKey {
            material: material.clone(),
            holds,
        };
        let line = HandLine {
            id: Id::fresh(),
            text: format!("{count}"),
            count,
            price: (price > 0).then(|| Money::minor(price)),
        };
        job.buying
            .ticked
            .extend([LineKey::Material(material), LineKey::ByHand(line.id)]);
        job.buying.prices.insert(pack.clone(), Money::minor(price));
        job.buying.overrides.insert(pack, count);
        job.buying.by_hand.push(line);
        job.buying.metric_packs = price > 0;
        job.buying.choice = if holds > 0 {
            Choice::Cheapest
        } else {
            Choice::LeastLeftOver
        };
        job.buying.symbol = format!("{price}");
    }
}

proptest! {
    #[test]
    fn prop_any_job_comes_back_as_it_was(snapshot in snapshot()) {
        let text = to_json(&snapshot).unwrap();
        let back = from_json(&text).unwrap();
        prop_assert_eq!(&back, &snapshot);
        prop_assert_eq!(to_json(&back).unwrap(), text);
    }

    #[test]
    fn prop_any_text_is_refused(text in ".{0,200}") {
        prop_assert!(from_json(&text).is_err());
    }

    #[test]
    fn prop_any_piece_of_a_job_changed_is_read_or_refused(at in any::<usize>(), by in "[0-9a-z\"{}\\[\\],:.-]{0,3}") {
        let mut text = to_json(&full_snapshot()).unwrap();
        let at = at % text.len();
        if text.is_char_boundary(at) && text.is_char_boundary(at + 1) {
            text.replace_range(at..=at, &by);
            if let Ok(read) = from_json(&text) {
                prop_assert_eq!(from_json(&to_json(&read).unwrap()).unwrap(), read);
            }
        }
    }
}
