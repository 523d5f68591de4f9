//! A job as compact JSON, every field under its name: what its size is measured against. Written by hand, as the
//! program writes no JSON.

use storyrod::measure::quantity::{Area, in_square_metres, in_square_metres_per_litre};
use storyrod::measure::{Length, Units};
use storyrod::site::{Opening, OpeningRule, Room, Studs, Wall};
use storyrod::takeoff::{Ask, Buying, Job, LineKey, PackKey, RollLine, TapeBench, Task};
use storyrod::trades::{Material, paint, patch, tape};

fn object<const N: usize>(fields: [(&str, String); N]) -> String {
    let fields = fields.map(|(name, value)| format!("\"{name}\":{value}"));
    format!("{{{}}}", fields.join(","))
}

fn list<T>(items: impl IntoIterator<Item = T>, write: impl Fn(T) -> String) -> String {
    let items: Vec<_> = items.into_iter().map(write).collect();
    format!("[{}]", items.join(","))
}

fn text(text: &str) -> String {
    let mut out = String::from("\"");
    for c in text.chars() {
        match c {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            c if u32::from(c) < 32 => out.push_str(&format!("\\u{:04x}", u32::from(c))),
            c => out.push(c),
        }
    }
    out + "\""
}

fn maybe<T>(value: Option<T>, write: impl Fn(T) -> String) -> String {
    value.map_or_else(|| "null".to_owned(), write)
}

fn nm(length: Length) -> String {
    length.as_nm().to_string()
}

fn square(area: &Area) -> String {
    in_square_metres(*area).to_string()
}

/// A choice by its name.
fn name(choice: impl std::fmt::Debug) -> String {
    text(&format!("{choice:?}"))
}

/// A whole job.
pub fn job(job: &Job) -> String {
    let units = match job.units {
        Units::FeetInches { marks } => object([("FeetInches", marks.to_string())]),
        other => name(other),
    };
    object([
        ("id", job.id.0.to_string()),
        ("name", text(&job.name)),
        ("begun", text(&job.begun.to_rfc3339())),
        ("units", units),
        ("rooms", list(&job.rooms, room)),
        ("tasks", list(&job.tasks, task)),
        ("roll", list(&job.roll, |l| line(l))),
        ("buying", buying(&job.buying)),
        ("tape", bench(&job.tape)),
    ])
}

/// A room.
pub fn room(room: &Room) -> String {
    object([
        ("id", room.id.0.to_string()),
        ("name", text(&room.name)),
        ("walls", list(&room.walls, wall)),
        ("ceiling", maybe(room.ceiling, nm)),
        ("openings", list(&room.openings, opening)),
        ("ceiling_finish", name(room.ceiling_finish)),
        ("floor_finish", name(room.floor_finish)),
    ])
}

fn wall(wall: &Wall) -> String {
    object([
        ("length", maybe(wall.length, nm)),
        ("sketched", nm(wall.sketched)),
        ("turn", wall.turn.as_microdegrees().to_string()),
        ("height", maybe(wall.height, nm)),
        ("studs", maybe(wall.studs.as_ref(), studs)),
        ("finish", name(wall.finish)),
    ])
}

fn studs(studs: &Studs) -> String {
    match studs {
        Studs::Spaced {
            first,
            spacing,
            face,
        } => object([
            ("first", nm(*first)),
            ("spacing", nm(*spacing)),
            ("face", nm(*face)),
        ]),
        Studs::Found { centres, face } => {
            object([("centres", list(centres, |l| nm(*l))), ("face", nm(*face))])
        }
    }
}

fn opening(opening: &Opening) -> String {
    object([
        ("kind", name(opening.kind)),
        ("wall", opening.wall.to_string()),
        ("from_left", maybe(opening.from_left, nm)),
        ("width", maybe(opening.width, nm)),
        ("height", maybe(opening.height, nm)),
        ("sill", maybe(opening.sill, nm)),
    ])
}

/// A figure.
pub fn task(task: &Task) -> String {
    let ask = match &task.ask {
        Ask::Paint(ask, rule) => {
            let rule = match rule {
                OpeningRule::SmallNotDeducted(area) => object([("SmallNotDeducted", square(area))]),
                other => name(other),
            };
            object([("paint", paint_ask(ask)), ("rule", rule)])
        }
        // The job of the bench has no tile, grout, mortar, drain or pipe.
        Ask::Pipe(ask, on) => object([("pipe", name(ask)), ("on", name(on))]),
        Ask::Drain(ask) => object([("drain", name(ask))]),
        Ask::Sheets(ask, on) => object([("sheets", name(ask)), ("on", name(on))]),
        Ask::Trim(ask, on) => object([("trim", name(ask)), ("on", name(on))]),
        Ask::Grout(ask, tile) => object([("grout", name(ask)), ("tile", name(tile))]),
        Ask::Mortar(ask, tile) => object([("mortar", name(ask)), ("tile", name(tile))]),
        Ask::Tile(ask, on) => object([("tile", name(ask)), ("on", name(on))]),
        Ask::Patch(ask, wall) => object([
            ("patch", patch_ask(ask)),
            ("wall", maybe(*wall, |w| w.to_string())),
        ]),
    };
    object([
        ("id", task.id.0.to_string()),
        ("room", maybe(task.room, |r| r.to_string())),
        ("ask", ask),
        ("on_list", task.on_list.to_string()),
    ])
}

fn paint_ask(ask: &paint::Ask) -> String {
    let surface = |s: &paint::Surface| {
        object([
            ("name", text(&s.name)),
            ("part", name(s.part)),
            ("area", square(&s.area)),
            ("height", maybe(s.height, nm)),
            ("width", maybe(s.width, nm)),
            ("kind", name(s.kind)),
            ("cut_in", nm(s.cut_in)),
        ])
    };
    let trim = |t: &paint::Trim| {
        object([
            ("name", text(&t.name)),
            ("length", nm(t.length)),
            ("face", nm(t.face)),
        ])
    };
    let coats = |c: &paint::Coats| {
        let rate = maybe(c.label_rate, |r| in_square_metres_per_litre(r).to_string());
        object([
            ("coats", c.coats.to_string()),
            ("label_rate", rate),
            ("volume_solids", maybe(c.volume_solids, |v| v.to_string())),
            ("dry_film", maybe(c.dry_film, nm)),
            ("label", text(&c.label)),
        ])
    };
    let reach = object([
        ("stature", maybe(ask.reach.stature, nm)),
        ("standing_off", nm(ask.reach.standing_off)),
    ]);
    object([
        ("surfaces", list(&ask.surfaces, surface)),
        ("trim", list(&ask.trim, trim)),
        ("primer", coats(&ask.primer)),
        ("finish", coats(&ask.finish)),
        ("trim_finish", coats(&ask.trim_finish)),
        ("reach", reach),
        ("built", name(ask.built)),
        ("sheen", name(ask.sheen)),
        ("level", maybe(ask.level, |l| l.to_string())),
        ("binder", name(ask.binder)),
        ("patched", list(&ask.patched, square)),
        ("disturbed", square(&ask.disturbed)),
        ("paid_job", ask.paid_job.to_string()),
    ])
}

fn hole(hole: &patch::Hole) -> String {
    let shape = match hole.shape {
        patch::HoleShape::Rectangle { width, height } => {
            object([("width", nm(width)), ("height", nm(height))])
        }
        patch::HoleShape::Round { across } => object([("across", nm(across))]),
    };
    let from_stud = maybe(hole.from_stud, |(stud, length)| {
        object([("stud", stud.to_string()), ("length", nm(length))])
    });
    object([
        ("shape", shape),
        ("from_left", maybe(hole.from_left, nm)),
        ("from_stud", from_stud),
        ("above_floor", maybe(hole.above_floor, nm)),
    ])
}

fn patch_ask(ask: &patch::Ask) -> String {
    let obstacle = |o: &patch::Obstacle| {
        object([
            ("left", nm(o.left)),
            ("right", nm(o.right)),
            ("bottom", nm(o.bottom)),
            ("top", nm(o.top)),
        ])
    };
    let facts = object([
        ("length", maybe(ask.wall.length, nm)),
        ("height", maybe(ask.wall.height, nm)),
        ("obstacles", list(&ask.wall.obstacles, obstacle)),
    ]);
    let air = object([
        ("fahrenheit", ask.air.fahrenheit.to_string()),
        ("humidity", ask.air.humidity.to_string()),
    ]);
    object([
        ("hole", hole(&ask.hole)),
        ("board", nm(ask.board)),
        ("wall", facts),
        ("studs", maybe(ask.studs.as_ref(), studs)),
        ("gap", nm(ask.gap)),
        ("method", maybe(ask.method, name)),
        ("screw_spacing", nm(ask.screw_spacing)),
        ("fire_rated", ask.fire_rated.to_string()),
        ("other_holes", list(&ask.other_holes, hole)),
        ("air", air),
    ])
}

/// A line of the roll.
pub fn line(line: &RollLine) -> String {
    object([
        ("id", line.id.0.to_string()),
        ("label", text(&line.label)),
        ("typed", text(&line.typed)),
        ("length", nm(line.length)),
    ])
}

/// What is bought.
pub fn buying(buying: &Buying) -> String {
    let material = |m: &Material| name(m);
    let pack = |key: &PackKey, what: &str, value: String| {
        object([
            ("material", material(&key.material)),
            ("holds", key.holds.to_string()),
            (what, value),
        ])
    };
    let by_hand = list(&buying.by_hand, |line| {
        object([
            ("id", line.id.0.to_string()),
            ("text", text(&line.text)),
            ("count", line.count.to_string()),
            ("price", maybe(line.price, |p| p.as_minor().to_string())),
        ])
    });
    let ticked = list(&buying.ticked, |key| match key {
        LineKey::Material(m) => object([("material", material(m))]),
        LineKey::ByHand(id) => object([("by_hand", id.0.to_string())]),
    });
    let overrides = list(&buying.overrides, |(key, count)| {
        pack(key, "count", count.to_string())
    });
    let prices = list(&buying.prices, |(key, price)| {
        pack(key, "price", price.as_minor().to_string())
    });
    object([
        ("by_hand", by_hand),
        ("ticked", ticked),
        ("overrides", overrides),
        ("prices", prices),
        ("symbol", text(&buying.symbol)),
        ("choice", name(buying.choice)),
        ("metric_packs", buying.metric_packs.to_string()),
    ])
}

fn bench(tape: &TapeBench) -> String {
    object([
        ("sides", list(tape.sides, |l| maybe(l, nm))),
        ("diagonals", list(tape.diagonals, |l| maybe(l, nm))),
        ("run", maybe(tape.run, nm)),
        ("count", tape.count.to_string()),
        ("width", maybe(tape.width, nm)),
        ("ends_taken", (tape.ends == tape::Ends::Taken).to_string()),
        ("scale", nm(tape.scale)),
        ("on_paper", maybe(tape.on_paper, nm)),
        ("on_site", maybe(tape.on_site, nm)),
    ])
}
