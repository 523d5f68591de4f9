"""The other side of the bench `tile`: the same tiles on the same field, counted by shapely as fast as it can.

Reads JSON {"outer", "holes", "tiles"} of millimetres; prints the median of milliseconds, whole tiles and cut ones. Built
before the clock runs: the tiles as shapes. Within it: the field prepared, the tiles that lie in it and that meet it found
by prepared predicates over the whole array, the rest of them cut by one vectorised intersection, the areas, the classes.
"""

import json
import statistics
import sys
import time

import numpy
import shapely

given = json.load(sys.stdin)
tiles = shapely.polygons(numpy.array(given["tiles"]))


def count():
    field = shapely.Polygon(given["outer"], given["holes"])
    shapely.prepare(field)
    inside = shapely.covers(field, tiles)
    rest = tiles[~inside]
    rest = rest[shapely.intersects(field, rest)]
    pieces = shapely.intersection(rest, field)
    missing = shapely.area(rest) - shapely.area(pieces)
    whole = missing < 1.0
    parts, of = shapely.get_parts(pieces[~whole], return_index=True)
    cut = numpy.unique(of[shapely.area(parts) >= 1.0]).size
    return int(inside.sum() + whole.sum()), cut


times = []
for _ in range(21):
    begun = time.perf_counter()
    found = count()
    times.append((time.perf_counter() - begun) * 1e3)
print(statistics.median(times), *found)
