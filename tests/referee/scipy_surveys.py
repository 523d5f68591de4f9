"""Writes scipy_surveys.csv: 200 measured rooms adjusted by scipy.optimize.least_squares, their areas by shapely.

Run in this folder: python3 scipy_surveys.py > scipy_surveys.csv
"""

import random

import numpy
import scipy
import shapely
from scipy.optimize import least_squares
from shapely.geometry import Polygon

dice = random.Random(20_260_312)


def outline():
    """A room of right angles as walked clockwise on the sheet (y down), then each corner moved a little."""
    width, height = dice.uniform(1.2, 6), dice.uniform(1.2, 6)
    kind = dice.randrange(4)
    corners = [(0, 0), (width, 0), (width, height), (0, height)]
    if kind == 1:
        across, down = dice.uniform(0.3, 0.7) * width, dice.uniform(0.3, 0.7) * height
        corners = [(0, 0), (width, 0), (width, down), (across, down), (across, height), (0, height)]
    if kind == 2:
        left, right, deep = 0.3 * width, 0.7 * width, 0.4 * height
        corners = [(0, 0), (left, 0), (left, -deep), (right, -deep), (right, 0), (width, 0), (width, height), (0, height)]
    if kind == 3:
        steps = dice.randrange(2, 9)
        corners = [(0, 0)]
        for step in range(steps):
            x, y = (step + 1) * width / steps, step * height / steps
            corners += [(x, y), (x, y + height / steps)]
        corners.append((0, height))
    square = numpy.array(corners)
    moved = square + [[dice.gauss(0, 0.012), dice.gauss(0, 0.012)] for _ in corners]
    return square, moved


def turn(a, b, c):
    """From the way a to b to the way b to c, clockwise on the sheet."""
    (x1, y1), (x2, y2) = b - a, c - b
    return numpy.arctan2(x1 * y2 - y1 * x2, x1 * x2 + y1 * y2)


def model(observation, at):
    kind, *points = observation
    if kind == "far":
        a, b = points
        return numpy.hypot(*(at[b] - at[a]))
    a, b, c = points
    return turn(at[a], at[b], at[c])


def room(number):
    square, true = outline()
    count = len(true)
    observations = [("far", i, (i + 1) % count) for i in range(count)]
    observations += [("turn", (i - 1) % count, i, (i + 1) % count) for i in range(count)]
    crossing = [(i, j) for i in range(count) for j in range(i + 2, count) if (i, j) != (0, count - 1)]
    dice.shuffle(crossing)
    observations += [("far", i, j) for i, j in sorted(crossing[: dice.randrange(1, count)])]
    values, sigmas = [], []
    for observation in observations:
        if observation[0] == "far":
            sigma = dice.choice([0.0009, 0.0013, 0.004, 0.0127])
            values.append(model(observation, true) + dice.gauss(0, sigma))
        else:
            sigma = numpy.radians(0.5)
            values.append(model(observation, square))
        sigmas.append(sigma)
    values, sigmas = numpy.round(values, 6), numpy.round(sigmas, 9)
    # Turned and moved so that the first corner lies at nothing and the first wall runs to the right.
    way = numpy.arctan2(*(square[1] - square[0])[::-1])
    spin = numpy.array([[numpy.cos(way), numpy.sin(way)], [-numpy.sin(way), numpy.cos(way)]])
    start = numpy.round((square - square[0]) @ spin.T, 6)

    def places(free):
        return numpy.vstack([[0, 0], [free[0], 0], free[1:].reshape(-1, 2)])

    def off(free):
        at = places(free)
        return [(model(o, at) - value) / sigma for o, value, sigma in zip(observations, values, sigmas)]

    first = numpy.concatenate([[start[1, 0]], start[2:].ravel()])
    found = least_squares(off, first, method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15, max_nfev=100_000)
    at = places(found.x)
    covariance = numpy.linalg.inv(found.jac.T @ found.jac)
    spread = numpy.sqrt(numpy.diag(covariance))
    spread = numpy.concatenate([[0, 0, spread[0], 0], spread[1:]]).reshape(-1, 2)
    print(f"room,{number},{Polygon(at).area:.9f},{2 * found.cost:.6f}")
    for (x0, y0), (x, y), (sx, sy) in zip(start, at, spread):
        print(f"corner,{x0:.6f},{y0:.6f},{x:.8f},{y:.8f},{sx:.8f},{sy:.8f}")
    for o, value, sigma, residual in zip(observations, values, sigmas, numpy.array(off(found.x)) * sigmas):
        print(f"{','.join(map(str, o))},{value:.6f},{sigma:.9f},{residual:.9f}")


print(f"# numpy {numpy.__version__}, scipy {scipy.__version__}, shapely {shapely.__version__}; metres and radians")
print("# room,number,area,chi square; corner,guessed x,y,found x,y,sigma x,y; far,a,b and turn,a,b,c: value,sigma,residual")
for number in range(200):
    room(number)
