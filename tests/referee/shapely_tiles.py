"""Writes shapely_tiles.csv: tiled rooms counted by shapely 2.2.0, an independent library of plane geometry.

Run in this folder: python3 shapely_tiles.py > shapely_tiles.csv

Each pattern is said as geometry says it: two moves that leave it as it was (a lattice), and the shapes that are repeated.
Corners of tiles go to the nearest nanometre, as the program keeps them; nothing else is rounded. A piece counts from 1 mm2, and a tile of which less is missing is whole. Where a shift of a
thousandth of a millimetre would change a count, the case is left out; how many were is in the CSV's first line.

Lengths in millimetres, y down the sheet, a turn clockwise on it; `from` is where the pattern starts, from the upper left
corner of the field's box.
"""

import itertools
import math
import random
import sys

import numpy
import shapely
from shapely.geometry import Polygon, box

dice = random.Random(20_260_202)
LEAST, HAIR = 1.0, 0.001
# The ends of planks are given, not figured: by (seed, plank and joint, least distance), for rows -44 to 67.
ENDS = {
    (1, 600, 3, 150): [
        145.017486, 313.55519, 73.130108, 389.095403, 151.110974, 412.563039, 144.715286, 429.065596,
        121.211908, 406.95104, 12.141266, 444.289295, 20.929738, 413.755309, 29.136321, 416.509806, 11.103687,
        447.636852, 83.478, 325.180098, 0.633382, 341.654344, 19.090244, 353.411998, 103.488857, 450.426989,
        99.716489, 437.671563, 150.886502, 438.409742, 64.293013, 355.293768, 40.806783, 366.774503, 140.850123,
        331.327091, 128.987642, 391.333848, 43.974112, 395.511557, 3.226861, 366.943549, 1.263262, 320.007283,
        18.971743, 385.899797, 20.693437, 341.014069, 0.657583, 328.313755, 59.949408, 311.055124, 39.021361,
        367.649622, 88.320952, 349.539735, 145.7237, 307.25436, 104.50399, 427.945745, 23.197801, 437.92366,
        87.979211, 389.046844, 132.649472, 418.364426, 3.979573, 450.01027, 51.071324, 432.030724, 147.586237,
        317.76633, 19.220606, 443.353216, 62.931594, 446.720072, 17.633045, 369.570214, 14.491321, 304.946139,
        18.694603, 316.945492, 45.838936, 403.396211, 85.698739, 307.679078, 38.225076, 382.343073, 77.873117,
        418.383357, 16.768896, 336.830639, 116.830052, 435.283229, 138.677431, 416.994192, 99.882219,
        379.901574, 6.961617, 333.91215, 31.336248, 427.77645, 140.196232, 423.935129, 27.695195, 409.675236,
        106.090232, 383.852977, 116.778955, 323.107891, 27.011471, 395.283201
    ],
    (7, 900, 2, 300): [
        121.416189, 489.672564, 137.428947, 560.14364, 17.721929, 514.875419, 122.671972, 532.827414, 0.852109,
        461.35498, 101.312706, 476.163605, 38.990648, 518.07093, 39.458408, 588.048636, 49.213591, 483.746777,
        104.350812, 543.355391, 30.019176, 546.698199, 33.981789, 560.124111, 36.327619, 532.042365, 35.717922,
        521.311269, 106.782239, 497.446856, 112.360817, 546.36398, 88.785755, 523.613334, 73.94641, 522.741238,
        7.11658, 468.822004, 61.204207, 511.45196, 133.632447, 496.092851, 62.086005, 514.285215, 64.972267,
        518.775146, 117.793508, 537.560224, 78.237521, 588.915822, 93.669225, 544.563671, 67.259526, 599.158557,
        24.11894, 598.601982, 100.635696, 481.315568, 124.055308, 567.731341, 77.597439, 470.399294, 49.466688,
        561.756372, 90.968635, 456.649116, 16.695608, 466.144564, 7.984692, 476.753793, 57.682756, 462.335784,
        119.283542, 573.080529, 79.371434, 597.541174, 48.198311, 552.893152, 82.881222, 534.377439, 90.104206,
        577.814122, 88.893807, 500.115044, 113.972184, 484.705637, 12.688934, 528.458979, 31.740934, 531.531311,
        25.603339, 514.519225, 58.984192, 498.146656, 95.020419, 492.355103, 129.040001, 565.573437, 42.812674,
        589.857421, 49.38489, 510.973087, 100.814203, 510.805543, 112.407686, 467.340104, 143.741923,
        523.852893, 60.294041, 461.175317, 123.326077, 570.088677
    ],
    (42, 900, 0, 200): [
        213.866792, 479.371099, 159.979238, 600.323454, 171.602041, 631.367669, 197.898899, 535.605581,
        46.205814, 551.625606, 43.131304, 459.381683, 226.367608, 474.039529, 182.043006, 549.497806,
        191.238393, 665.848393, 20.936904, 497.929702, 179.722212, 520.262965, 243.301523, 625.96045,
        167.641039, 582.525963, 9.799009, 558.452874, 150.500855, 641.727158, 142.734816, 564.096706, 56.984138,
        636.573602, 124.506569, 595.283165, 52.887794, 622.383771, 158.306044, 582.152295, 125.458885,
        635.956164, 54.151067, 622.901171, 41.428396, 629.194422, 110.754736, 529.436759, 208.756716,
        513.949196, 245.465901, 605.722559, 154.710349, 623.259458, 111.625497, 699.83767, 215.926422,
        477.678059, 213.180087, 637.051696, 30.631889, 683.133826, 73.364341, 538.135927, 125.366104,
        640.710181, 79.952369, 501.242116, 84.138811, 574.801423, 55.418956, 567.310361, 152.678342, 585.481229,
        200.471477, 657.436383, 88.955608, 667.187248, 150.339506, 477.304235, 163.83769, 656.958618, 59.397538,
        456.191705, 224.360721, 626.545857, 60.141701, 640.114783, 11.667854, 581.276151, 226.01745, 546.155849,
        31.273961, 568.198482, 105.242185, 481.960027, 87.032496, 619.692376, 144.284807, 523.858685,
        175.772516, 468.813162, 53.705504, 698.475135, 195.029853, 684.659106, 96.578813, 626.055882, 63.90879,
        544.536462, 239.582689, 521.724729
    ],
}


# --- Rooms ---------------------------------------------------------------------------------------------------------

def rectangle():
    width, height = dice.randrange(900, 3600), dice.randrange(900, 3600)
    return [(0, 0), (width, 0), (width, height), (0, height)]


def whole_rectangle():
    """Round figures, so that tiles end on walls."""
    width, height = 300 * dice.randrange(3, 11), 300 * dice.randrange(3, 11)
    return [(0, 0), (width, 0), (width, height), (0, height)]


def ell():
    width, height = dice.randrange(1500, 3600), dice.randrange(1500, 3600)
    across, down = dice.randrange(500, width - 500), dice.randrange(500, height - 500)
    return [(0, 0), (width, 0), (width, down), (across, down), (across, height), (0, height)]


def you():
    width, height = dice.randrange(2100, 3600), dice.randrange(1500, 3000)
    left, right, down = dice.randrange(500, 900), dice.randrange(500, 900), dice.randrange(500, height - 400)
    return [(0, 0), (left, 0), (left, down), (width - right, down), (width - right, 0), (width, 0),
            (width, height), (0, height)]


def alcove():
    width, height = dice.randrange(1500, 3300), dice.randrange(1500, 3300)
    top, bottom, out = dice.randrange(200, 600), dice.randrange(800, 1300), dice.randrange(150, 900)
    return [(0, 0), (width, 0), (width, top), (width + out, top), (width + out, bottom), (width, bottom),
            (width, height), (0, height)]


def quad():
    """Four walls, none square to the next."""
    width, height = dice.randrange(1300, 3300), dice.randrange(1300, 3300)
    off = lambda: dice.randrange(-120, 121)
    return [(off(), off()), (width + off(), off()), (width + off(), height + off()), (off(), height + off())]


def twenty():
    """Twenty corners at any angle round a middle."""
    corners = []
    for n in range(20):
        way, far = math.tau * (n + dice.uniform(-0.3, 0.3)) / 20, dice.uniform(900, 1900)
        corners.append((round(2000 + far * math.cos(way)), round(2000 + far * math.sin(way))))
    return corners


def twenty_square():
    """Twenty corners at right angles: piers along two walls."""
    x, corners = 0, []
    for n in range(5):
        y = 0 if n % 2 == 0 else dice.randrange(100, 500)
        step = dice.randrange(300, 800)
        corners += [(x, y), (x + step, y)]
        x += step
    low, back = dice.randrange(1500, 2600), []
    for n in range(5):
        y = low if n % 2 == 0 else low + dice.randrange(100, 500)
        right = corners[9 - 2 * n][0]
        left = corners[8 - 2 * n][0]
        back += [(right, y), (left, y)]
    return corners + back


ROOMS = [rectangle, whole_rectangle, ell, you, alcove, quad, twenty, twenty_square]


def flange(x, y, radius):
    """A round flange as 64 corners, each on a whole nanometre as the program keeps them."""
    at = lambda k: (round((x + radius * math.cos(math.tau * k / 64)) * 1e6) / 1e6,
                    round((y + radius * math.sin(math.tau * k / 64)) * 1e6) / 1e6)
    return [at(k) for k in range(64)]


def holes_in(outline, gap):
    """Up to two holes, well inside and apart: a square drain, a round flange."""
    room, found, words = Polygon(outline).buffer(-gap - 20), [], []
    x0, y0, x1, y1 = room.bounds
    for kind in dice.choice(["", "", "s", "c", "sc"]):
        for _ in range(40):
            x, y = dice.randrange(int(x0), int(x1)), dice.randrange(int(y0), int(y1))
            size = dice.randrange(80, 300) if kind == "s" else dice.randrange(40, 90)
            ring = [(x, y), (x + size, y), (x + size, y + size), (x, y + size)] if kind == "s" else flange(x, y, size)
            hole = Polygon(ring)
            if room.contains(hole) and all(hole.distance(other) > 2 * gap + 20 for other in found):
                found.append(hole)
                words.append(f"{kind} {x} {y} {size}")
                break
    return found, words


# --- Patterns: (moves that repeat it, the shapes that are repeated) -------------------------------------------------

def bar(x, y, width, height):
    return [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]


def grid(a, b, j):
    return [(a + j, 0), (0, b + j)], [bar(0, 0, a, b)]


def bond(a, b, j, over, of):
    # Down a row is along by a part of a tile; so many rows down it is back in line.
    return [(a + j, 0), ((a + j) * over / of, b + j)], [bar(0, 0, a, b)]


def herringbone(b, j):
    # Against the end of each lying tile stands one, a row higher; the next pair lies a row down and a row's height along.
    a, m = 2 * b + j, b + j
    return [(m, m), (4 * m, 0)], [bar(0, 0, a, b), bar(2 * m, -m, b, a)]


def basketweave(b, j):
    a, m = 2 * b + j, b + j
    two = [bar(0, 0, a, b), bar(0, m, a, b)]
    return [(2 * m, 2 * m), (-2 * m, 2 * m)], two + [bar(2 * m, 0, b, a), bar(3 * m, 0, b, a)]


def two_squares(a, s, j):
    p, q = a + j, s + j
    return [(p, q), (-q, p)], [bar(0, 0, a, a), bar(p, 0, s, s)]


def hexagon(f, j):
    m, tip = f + j, f / math.sqrt(3)
    ring = [(tip * math.sin(math.tau * k / 6), tip * math.cos(math.tau * k / 6)) for k in range(6)]
    return [(m, 0), (m / 2, m * math.sqrt(3) / 2)], [ring]


def over_the_plane(pattern, reach):
    """All shapes of a pattern whose lattice point lies within reach of the start."""
    (ux, uy), (vx, vy) = pattern[0]
    area = abs(ux * vy - uy * vx)
    # In a box of this reach no more than so many of either move.
    most_u = math.ceil(reach * math.hypot(vx, vy) * 1.5 / area) + 2
    most_v = math.ceil(reach * math.hypot(ux, uy) * 1.5 / area) + 2
    for n, m in itertools.product(range(-most_u, most_u + 1), range(-most_v, most_v + 1)):
        dx, dy = n * ux + m * vx, n * uy + m * vy
        if max(abs(dx), abs(dy)) <= reach * 1.5:
            for shape in pattern[1]:
                yield [(x + dx, y + dy) for x, y in shape]


def planks(a, b, j, ends, reach):
    for row, end in ends.items():
        for n in range(-math.ceil(reach / a) - 2, math.ceil(reach / a) + 3):
            yield bar(n * (a + j) + end, row * (b + j), a, b)


def nearest(n):
    return round(n * 1e6) / 1e6


def turned(points, degrees, start):
    quarter = {0: (1, 0), 90: (0, 1), 180: (-1, 0), 270: (0, -1)}
    c, s = quarter.get(degrees) or (math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))
    return [(nearest(start[0] + x * c - y * s), nearest(start[1] + x * s + y * c)) for x, y in points]


# --- Counting ------------------------------------------------------------------------------------------------------

def parts_of(shape):
    return [part for part in shapely.get_parts(shape) if part.geom_type == "Polygon"]


def counted(field, tiles):
    """Whole, cut, area of pieces, area of joints; None where a hair would change a count."""
    shapely.prepare(field)
    shapes = shapely.polygons(tiles) if len({len(t) for t in tiles}) == 1 else numpy.array([Polygon(t) for t in tiles])
    shapes = shapes[shapely.intersects(field, shapes)]
    whole, cut, area, hair = 0, 0, 0.0, False
    for shape, piece in zip(shapes, shapely.intersection(shapes, field)):
        missing = shape.area - piece.area
        sides = numpy.diff(numpy.array(shape.exterior.coords), axis=0)
        length = numpy.hypot(sides[:, 0], sides[:, 1]).max()
        if missing > HAIR:
            length = max(length, shape.difference(field).length / 2)
        hair |= abs(missing - LEAST) < HAIR * length
        if missing < LEAST:
            whole += 1
            area += shape.area
            continue
        parts = parts_of(piece)
        hair |= any(abs(part.area - LEAST) < HAIR * part.length / 2 for part in parts)
        large = [part.area for part in parts if part.area >= LEAST]
        if large:
            cut += 1
            area += sum(large)
    joints = field.difference(shapely.union_all(shapes, grid_size=1e-6)).area
    return None if hair else (whole, cut, area, joints)


PATTERNS = ["grid", "grid", "bond 1 2", "bond 1 3", "bond 2 5", "herringbone", "basketweave", "two-squares", "hexagon",
            "planks"]
TURNS = [0, 0, 0, 90, 180, 270, 45, 45, 30, 22.5, 7.125, 135, 301.5]


def case(room, name):
    """A case as its words and its shapes."""
    outline = room()
    gap = dice.choice([0, 0, 5, 6.35]) if room not in (quad, twenty) else 0
    holes, hole_words = holes_in(outline, gap)
    field = Polygon(outline)
    if gap:
        field = field.buffer(-gap, join_style="mitre", mitre_limit=50)
    for hole in holes:
        field = field.difference(hole.buffer(gap, join_style="mitre", mitre_limit=50) if gap else hole)
    joint = dice.choice([0, 1.5875, 2, 3, 3.175, 5])
    turn = dice.choice(TURNS)
    x0, y0, x1, y1 = field.bounds
    reach = math.hypot(x1 - x0, y1 - y0) + 1400
    start = dice.choice([(0, 0), (dice.randrange(-300, 300), dice.randrange(-300, 300)),
                         (round((x1 - x0) / 2), round((y1 - y0) / 2)), (round((x1 - x0) / 2), round((y1 - y0) / 2))])
    kind, *numbers = name.split()
    long, short = dice.choice([(297, 297), (298.45, 298.45), (150, 150), (597, 297), (300, 200), (200, 100)])
    if kind == "planks":
        (seed, long, joint, apart), ends = dice.choice(list(ENDS.items()))
        short = 147
        name = f"planks {seed} {apart}"
        rows = {row: end for row, end in zip(range(-44, 68), ends)}
        shapes = planks(long, short, joint, rows, reach)
    elif kind in ("herringbone", "basketweave"):
        short = dice.choice([75, 98, 148.5])
        long = 2 * short + joint
        shapes = over_the_plane((herringbone if kind == "herringbone" else basketweave)(short, joint), reach)
    elif kind == "two-squares":
        long = short = dice.choice([297, 200])
        small = dice.choice([97, 147, 60])
        name = f"two-squares {small}"
        shapes = over_the_plane(two_squares(long, small, joint), reach)
    elif kind == "hexagon":
        long = short = dice.choice([200, 100, 257.5])
        shapes = over_the_plane(hexagon(long, joint), reach)
    elif kind == "bond":
        long, short = dice.choice([(300, 100), (600, 300), (200, 100), (150, 75), (450, 225)])
        # A whole number of nanometres along: the part of a module is the same number for both.
        joint = dice.choice([0, 3, 6])
        shapes = over_the_plane(bond(long, short, joint, int(numbers[0]), int(numbers[1])), reach)
    else:
        shapes = over_the_plane(grid(long, short, joint), reach)
    at = (x0 + start[0], y0 + start[1])
    view = box(x0, y0, x1, y1).bounds
    tiles = []
    for shape in shapes:
        points = turned(shape, turn, at)
        xs, ys = [x for x, _ in points], [y for _, y in points]
        if max(xs) >= view[0] and min(xs) <= view[2] and max(ys) >= view[1] and min(ys) <= view[3]:
            tiles.append(points)
    words = [" ".join(f"{x} {y}" for x, y in outline), ";".join(hole_words), gap, long, short, joint, name, turn,
             f"{start[0]} {start[1]}"]
    return words, field, tiles


def main():
    rows, left_out = [], []
    for round_ in range(8):
        for room, name in itertools.product(ROOMS, PATTERNS):
            words, field, tiles = case(room, name)
            found = counted(field, tiles)
            if found is None:
                left_out.append(f"{round_} {room.__name__} {name}")
                continue
            whole, cut, area, joints = found
            rows.append(",".join(map(str, [*words, whole, cut, f"{area:.6f}", f"{joints:.6f}", f"{field.area:.6f}"])))
    print(f"# shapely {shapely.__version__}; mm, degrees, mm2; {len(rows)} cases, {len(left_out)} left out for a hair: "
          "outline,holes,gap,long,short,joint,pattern,turn,from,whole,cut,pieces,joints,field")
    print("\n".join(rows))
    print("\n".join(["left out:", *left_out]), f"\n{len(rows)} kept, {len(left_out)} left out", file=sys.stderr)


main()
