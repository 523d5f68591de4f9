"""Writes shapely_outlines.csv: outlines of rooms by shapely 2.2.0, an independent library of plane geometry.

Run in this folder: python3 shapely_outlines.py > shapely_outlines.csv
"""

import random

import shapely
from shapely.geometry import LinearRing, Point, Polygon

dice = random.Random(20_260_101)


def ell():
    """An L: a rectangle with a corner cut out, turned by quarter turns and mirrored."""
    width, height = dice.randrange(1000, 6000), dice.randrange(1000, 6000)
    across, up = dice.randrange(100, width - 100), dice.randrange(100, height - 100)
    corners = [(0, 0), (width, 0), (width, up), (across, up), (across, height), (0, height)]
    for _ in range(dice.randrange(4)):
        corners = [(-y, x) for x, y in corners]
    return corners if dice.random() < 0.5 else [(-x, y) for x, y in corners]


def steps():
    """A staircase: right angles only, many corners."""
    corners, x, y = [(0, 0)], 0, 0
    for _ in range(dice.randrange(2, 6)):
        x += dice.randrange(200, 1500)
        corners.append((x, y))
        y += dice.randrange(200, 1500)
        corners.append((x, y))
    return corners + [(0, y)]


def any_corners():
    """Corners anywhere: as often crossing as not."""
    count = dice.randrange(3, 8)
    return [(dice.randrange(-3000, 3000), dice.randrange(-3000, 3000)) for _ in range(count)]


def on_a_coarse_grid():
    """Corners on a grid of five: edges that touch, lie on each other and fold back."""
    count, corners = dice.randrange(3, 9), []
    while len(corners) < count or corners[0] == corners[-1]:
        corner = (1000 * dice.randrange(5), 1000 * dice.randrange(5))
        if not corners or corners[-1] != corner:
            corners.append(corner)
    return corners


def places(corners):
    """Where to ask: corners, beside them, level with and plumb to them, middles of edges, and anywhere near."""
    x, y = dice.choice(corners)
    at = dice.randrange(len(corners))
    (a, b), (c, d) = corners[at], corners[(at + 1) % len(corners)]
    level = [(dice.randrange(-4000, 6000), y) for _, y in corners[:3]]
    plumb = [(x, dice.randrange(-4000, 6000))]
    anywhere = [(dice.randrange(-4000, 6000), dice.randrange(-4000, 6000)) for _ in range(2)]
    middle = [((a + c) // 2, (b + d) // 2)]
    return [(x, y), (x + dice.choice([-1, 1]), y + dice.choice([-1, 1]))] + middle + level + plumb + anywhere


def pairs(points):
    return " ".join(f"{x} {y}" for x, y in points)


print(f"# shapely {shapely.__version__}; millimetres: corners,simple,doubled area,asked,inside or on the outline")
for make, count in [(ell, 40), (steps, 30), (any_corners, 90), (on_a_coarse_grid, 90)]:
    for _ in range(count):
        corners = make()
        simple = LinearRing(corners).is_simple and Polygon(corners).is_valid
        outline = Polygon(corners)
        asked, inside, area = [], "", ""
        if simple:
            asked = places(corners)
            inside = "".join("1" if outline.covers(Point(at)) else "0" for at in asked)
            area = round(outline.area * 2)
            assert abs(outline.area * 2 - area) < 1e-6
        print(f"{pairs(corners)},{int(simple)},{area},{pairs(asked)},{inside}")
