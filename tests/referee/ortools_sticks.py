"""Writes ortools_sticks.csv: pieces cut from sticks, with the fewest sticks as CP-SAT of OR-Tools 9.15 proves it.

Run in this folder: python3 ortools_sticks.py > ortools_sticks.csv      (about half an hour on two cores)
The bench `pipe` runs it too:   python3 ortools_sticks.py --time < ortools_sticks.csv

The problem is said as its textbook says it: how many pieces of each size lie on each stick, a saw cut after each piece but
the last (a stick one saw cut longer, each piece one longer), sticks of one kind used in order. What CP-SAT does not prove
in its time is left out unless the plan was made first and its pieces from it; the first line says how many.

Columns: unit in nanometres; kerf; sticks on sale (length, or length x count); offcuts; pieces (length x count); fewest
sticks bought; how that is known. Lengths in whole units.
"""

import random
import sys
import time

from ortools.sat.python import cp_model

INCH_16, MM = 1_587_500, 1_000_000


def first_fit(sizes, counts, room):
    """Sticks that the longest first take: enough for a plan."""
    open_ = []
    for size, count in zip(sizes, counts):
        for _ in range(count):
            for at, left in enumerate(open_):
                if left >= size:
                    open_[at] -= size
                    break
            else:
                open_.append(room - size)
    return len(open_)


def fewest(kerf, sticks, offcuts, pieces, seconds, workers):
    """(fewest sticks, proven) or (None, False) where no plan was found."""
    sizes = [length + kerf for length, _ in pieces]
    counts = [count for _, count in pieces]
    total = sum(s * c for s, c in zip(sizes, counts))
    bins = [(length + kerf, 0, None) for length in offcuts]
    for kind, (length, count) in enumerate(sticks):
        room = length + kerf
        enough = first_fit(sizes, counts, room) if room >= max(sizes) else sum(counts)
        bins += [(room, 1, kind)] * (enough if count is None else min(count, sum(counts)))
    model = cp_model.CpModel()
    used = [model.new_bool_var("") for _ in bins]
    on = [[model.new_int_var(0, min(c, room // s), "") for room, _, _ in bins] for s, c in zip(sizes, counts)]
    for row, count in zip(on, counts):
        model.add(sum(row) == count)
    for at, (room, _, kind) in enumerate(bins):
        model.add(sum(s * row[at] for s, row in zip(sizes, on)) <= room * used[at])
        if at and kind is not None and bins[at - 1][2] == kind:
            model.add(used[at] <= used[at - 1])
            model.add(
                sum(s * row[at] for s, row in zip(sizes, on)) <= sum(s * row[at - 1] for s, row in zip(sizes, on))
            )
    bought = sum(u for u, (_, cost, _) in zip(used, bins) if cost)
    longest = max(room for room, _, _ in bins)
    model.add(bought >= -(-(total - sum(o + kerf for o in offcuts)) // longest))
    model.minimize(bought)
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = seconds
    solver.parameters.num_workers = workers
    solver.parameters.random_seed = 1
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return None, False
    return round(solver.objective_value), status == cp_model.OPTIMAL


def gathered(lengths):
    return sorted(((l, lengths.count(l)) for l in set(lengths)), reverse=True)


def jobs(dice):
    """(unit, kerf, sticks, offcuts, pieces, known or None)."""
    for n in range(80):
        # Pipe: any sixteenth of an inch, from sticks of 10 or 20 ft.
        stick = dice.choice([1_920, 3_840])
        lengths = [dice.randint(48, dice.choice([400, 800, 1_200])) for _ in range(5 + n * 55 // 79)]
        yield INCH_16, dice.choice([0, 1, 2]), [(stick, None)], [], lengths, None
    for n in range(80):
        # Blocking and trim: a few lengths again and again, from boards of 8 ft.
        few = [dice.randint(120, 900) for _ in range(dice.randint(2, 7))]
        lengths = [dice.choice(few) for _ in range(6 + n * 54 // 79)]
        yield INCH_16, 2, [(1_536, None)], [], lengths, None
    for n in range(60):
        lengths = [dice.randint(150, dice.choice([900, 1_800, 2_600])) for _ in range(8 + n * 52 // 59)]
        yield MM, dice.choice([2, 3]), [(6_000, None)], [], lengths, None
    for n in range(60):
        # Sticks cut to nothing: the plan was there first.
        count, stick, kerf = 2 + n * 18 // 59, dice.choice([1_536, 1_920, 6_000]), dice.choice([0, 1, 2])
        lengths = []
        for _ in range(count):
            parts = dice.choice([2, 3, 3, 3, 4]) if n % 2 else 3
            room = stick + kerf
            ends = sorted(dice.sample(range(room // 8, room, 1), parts - 1)) if parts > 1 else []
            sizes = [b - a for a, b in zip([0, *ends], [*ends, room])]
            while min(sizes) <= kerf + room // 12:
                ends = sorted(dice.sample(range(room // 8, room), parts - 1))
                sizes = [b - a for a, b in zip([0, *ends], [*ends, room])]
            lengths += [size - kerf for size in sizes]
        yield INCH_16, kerf, [(stick, None)], [], lengths[:60], count if len(lengths) <= 60 else None
    for n in range(80):
        # Offcuts on hand, and sticks of two lengths of which one is nearly sold out.
        lengths = [dice.randint(60, dice.choice([500, 900])) for _ in range(6 + n * 40 // 79)]
        offcuts = [dice.randint(200, 1_200) for _ in range(dice.randint(1, 5))]
        sticks = dice.choice([[(1_536, None)], [(1_536, None), (1_920, dice.randint(1, 3))]])
        yield INCH_16, dice.choice([0, 1, 2]), sticks, offcuts, lengths, None


def line(unit, kerf, sticks, offcuts, pieces, bought, how):
    one = lambda length, count: f"{length}" if count is None else f"{length}x{count}"
    return ",".join([
        str(unit), str(kerf), " ".join(one(*s) for s in sticks), " ".join(map(str, offcuts)),
        " ".join(one(*p) for p in pieces), str(bought), how,
    ])


def read(text):
    unit, kerf, sticks, offcuts, pieces, bought, _ = text.strip().split(",")
    two = lambda word: tuple(map(int, word.split("x"))) if "x" in word else (int(word), None)
    return (int(kerf), [two(w) for w in sticks.split()], [int(w) for w in offcuts.split()],
            [two(w) for w in pieces.split()], int(bought))


def write():
    dice = random.Random(20_261_126)
    rows, left_out = [], 0
    for unit, kerf, sticks, offcuts, lengths, known in jobs(dice):
        pieces = gathered(lengths)
        if known is None:
            bought, proven = fewest(kerf, sticks, offcuts, pieces, 20, 2)
            if not proven:
                left_out += 1
                continue
            rows.append(line(unit, kerf, sticks, offcuts, pieces, bought, "proven"))
        else:
            rows.append(line(unit, kerf, sticks, offcuts, pieces, known, "made"))
        print(len(rows), left_out, file=sys.stderr)
    print(f"# OR-Tools 9.15 CP-SAT; {len(rows)} jobs; not proven in 20 s and left out: {left_out}")
    print("\n".join(rows))


def timed():
    """One line a job: milliseconds to the proof or to the limit of 2 s, sticks, 1 where proven."""
    for text in sys.stdin:
        if text.startswith("#"):
            continue
        kerf, sticks, offcuts, pieces, _ = read(text)
        begun = time.perf_counter()
        bought, proven = fewest(kerf, sticks, offcuts, pieces, 2, 2)
        print((time.perf_counter() - begun) * 1e3, bought if bought is not None else -1, int(proven), flush=True)


if __name__ == "__main__":
    timed() if "--time" in sys.argv else write()
