"""Writes shapely_sheets.csv: true-shaped rooms in sheets, the area of every piece by shapely 2.2.0.

Run in this folder: python3 shapely_sheets.py > shapely_sheets.csv

Rooms are rectangles, trapezoids, Ls and walls with a door, their corners moved by up to two inches, with round holes.
Courses run from the upper left corner of the field; each part of a course begins anew at its own left edge with a whole
sheet. Rooms in which the last strip of a course, or the last course, is under five inches are left out: the program shares
such strips. A piece counts from 1 mm2. Lengths in millimetres, y down the sheet.
"""

import math
import random

import shapely
from shapely.geometry import Polygon, box

dice = random.Random(20_261_126)
INCH = 25.4
LEAST = 5 * INCH


def nm(x):
    return round(x * 1e6) / 1e6


def moved(points, by):
    return [(nm(x + dice.uniform(-by, by)), nm(y + dice.uniform(-by, by))) for x, y in points]


def outline():
    w, h = dice.uniform(1500, 3400), dice.uniform(1400, 3000)
    kind = dice.randrange(3)
    if kind == 0:
        points = [(0, 0), (w, 0), (w, h), (0, h)]
    elif kind == 1:
        x, y = w * dice.uniform(0.4, 0.7), h * dice.uniform(0.4, 0.7)
        points = [(0, 0), (w, 0), (w, y), (x, y), (x, h), (0, h)]
    else:
        a = dice.uniform(0.15, 0.5) * w
        points = [(0, 0), (w, 0), (w, h), (a + 780, h), (a + 780, h * 0.25), (a, h * 0.25), (a, h), (0, h)]
        if a + 780 > w - 150:
            return outline()
    return moved(points, dice.choice([0, 12.7, 50.8]))


def circle(x, y, across):
    steps = [k / 64 * math.tau for k in range(64)]
    return Polygon([(nm(x + across / 2 * math.cos(t)), nm(y + across / 2 * math.sin(t))) for t in steps])


def parts(shape):
    return [p for p in shapely.get_parts(shape) if isinstance(p, Polygon) and p.area >= 1.0]


def pieces(field, sheet, gap, up):
    """The areas, or None where a strip is thin."""
    if up:
        field = shapely.transform(field, lambda at: at[:, ::-1])
    long, short = sheet
    left, top, right, bottom = field.bounds
    areas = []
    y = top
    while y < bottom:
        low = min(y + short, bottom)
        if bottom - y <= short and bottom - y < LEAST:
            return None
        for band in parts(field & box(left - 1, y, right + 1, low)):
            x, end = band.bounds[0], band.bounds[2]
            while x < end:
                if end - x < LEAST:
                    return None
                areas += [p.area for p in parts(band & box(x, y, min(x + long, end), low))]
                x += long + gap
        y += short + gap
    return areas


rows = []
while len(rows) < 60:
    corners = outline()
    shape = Polygon(corners)
    if not shape.is_valid:
        continue
    long, short = dice.choice([(1524, 914.4), (2438.4, 1219.2), (2400, 1200)])
    gap, edge = dice.choice([0, 3.175]), dice.choice([0, 3.175, 6.35])
    up = dice.random() < 0.5
    left, top, right, bottom = shape.bounds
    things = []
    for _ in range(dice.randrange(3)):
        x, y, across = (nm(dice.uniform(200, 1200)), nm(dice.uniform(200, 1200)), dice.choice([38.1, 101.6, 177.8]))
        if shape.buffer(-across).contains(shapely.Point(left + x, top + y)):
            things.append((x, y, across))
    field = shape.buffer(-edge, join_style="mitre", mitre_limit=20) if edge else shape
    for x, y, across in things:
        field = field - circle(left + x, top + y, across)
    areas = pieces(field, (long, short), gap, up)
    # An area at the very least would be counted by a hair.
    if not areas or min(areas) < 100:
        continue
    said = [
        " ".join(f"{c:.6f}" for p in corners for c in p),
        ";".join(f"{x:.6f} {y:.6f} {across}" for x, y, across in things),
        f"{long} {short} {gap} {edge} {'up' if up else 'across'}",
        " ".join(f"{a:.3f}" for a in sorted(areas)),
    ]
    rows.append(",".join(said))

print(f"# shapely {shapely.__version__}: outline; round holes; long short gap edge way; areas of the pieces in mm2")
print("\n".join(rows))
