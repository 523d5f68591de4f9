"""Writes shapely_apart.csv: 400 pairs of shapes and how far they are apart, by shapely 2.2.0.

Run in this folder: python3 shapely_apart.py > shapely_apart.csv

A shape is a kind (area, line, place), by how much it stands out all round, and its places; metres. Of a shape that stands
out the referee measures to its places and lines and takes that off.
"""

import math
import random

from shapely.geometry import LineString, Point, Polygon

dice = random.Random(20_261_126)


def shape():
    x, y = dice.uniform(0, 1.2), dice.uniform(0, 0.9)
    out = dice.choice([0, 0, round(dice.uniform(0.005, 0.06), 6)])
    kind = dice.choice(["area", "line", "place"])
    count = {"area": dice.randint(3, 7), "line": dice.randint(2, 4), "place": 1}[kind]
    long = dice.uniform(0.05, 0.9)
    # Areas go round a middle, so that no side crosses another; some are deeply notched.
    turns = sorted(dice.uniform(0, 2 * math.pi) for _ in range(count))
    if kind == "area":
        places = [(x + r * math.cos(t), y + r * math.sin(t)) for t in turns for r in [long * dice.uniform(0.15, 1)]]
    else:
        places = [(x + dice.uniform(-long, long), y + dice.uniform(-long, long)) for _ in range(count)]
    places = [(round(a, 6), round(b, 6)) for a, b in places]
    of = {"area": Polygon, "line": LineString, "place": lambda p: Point(p[0])}[kind](places)
    if not of.is_valid:
        return shape()
    return kind, out, places, of


print("one,other,apart_m")
for _ in range(400):
    pair = [shape(), shape()]
    apart = max(0, pair[0][3].distance(pair[1][3]) - pair[0][1] - pair[1][1])
    texts = [" ".join([kind, str(out)] + [f"{a} {b}" for a, b in places]) for kind, out, places, _ in pair]
    print(*texts, repr(float(apart)), sep=",")
