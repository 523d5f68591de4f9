"""200 walls before a camera: what OpenCV makes of them.

Run: python3 opencv_views.py > opencv_views.csv       (opencv-python-headless 5.0.0, numpy; seed 20261126)

Each line: eight pixel coordinates of a rectangle's corners, its width and height in metres, four pixel coordinates of two
points in its plane, and the distance between them in metres by cv2.findHomography (double precision) and
cv2.perspectiveTransform. The corners come from cv2.projectPoints.

    python3 opencv_views.py quads > opencv_quads.csv

Each line: the same of four points that are no rectangle, in every other line with a right angle at the first; in place of
width and height their four sides and the diagonal from the first to the third.

    python3 opencv_views.py lens > opencv_lens.csv

Each line: the radial term k of a lens without other faults (f = half the diagonal, so that r is in halves of it), a
picture's width and height, a point as it is seen and the same point by cv2.undistortPoints (20 rounds, 1e-12).
"""

import sys

import cv2
import numpy

chance = numpy.random.default_rng(20261126)


def view(flat):
    """Four points of a wall and two more as a camera sees them, and how far apart the two are; None where they are behind it."""
    turned = numpy.radians(chance.uniform([-35, -57, -30], [35, 57, 30]))
    about, _ = cv2.Rodrigues(turned)
    f = chance.uniform(1400, 3400)
    away = chance.uniform(1.5, 6.0)
    camera = numpy.array([[f, 0, 2016], [0, f, 1512], [0, 0, 1]])
    corners = numpy.hstack([flat, numpy.zeros((4, 1))])
    ends = numpy.zeros((2, 3))
    width, height = flat[2]
    ends[:, :2] = chance.uniform([-1, -1], [width + 1, height + 1], (2, 2))
    shift = numpy.array([0, 0, away]) - about @ numpy.array([width / 2, height / 2, 0])
    behind = ((about @ ends.T).T + shift)[:, 2].min() < 0.3
    if behind or ((about @ corners.T).T + shift)[:, 2].min() < 0.3:
        return None
    seen, _ = cv2.projectPoints(numpy.vstack([corners, ends]), about, shift, camera, None)
    seen = seen.reshape(-1, 2)
    found, _ = cv2.findHomography(seen[:4], flat, 0)
    p, q = cv2.perspectiveTransform(seen[4:].reshape(-1, 1, 2), found).reshape(2, 2)
    metres = numpy.hypot(*(q - p))
    return None if metres < 0.05 else (seen, metres)


def views():
    print("ax,ay,bx,by,cx,cy,dx,dy,width,height,px,py,qx,qy,metres")
    done = 0
    while done < 200:
        width, height = chance.uniform(0.2, 1.3), chance.uniform(0.2, 2.5)
        found = view(numpy.array([[0, 0], [width, 0], [width, height], [0, height]]))
        if found is not None:
            seen, metres = found
            print(",".join(f"{v:.17g}" for v in [*seen[:4].ravel(), width, height, *seen[4:].ravel(), metres]))
            done += 1


def quads():
    print("ax,ay,bx,by,cx,cy,dx,dy,upper,right,lower,left,diagonal,px,py,qx,qy,metres")
    done = 0
    while done < 200:
        width, height = chance.uniform(0.2, 1.3), chance.uniform(0.2, 2.5)
        flat = numpy.array([[0, 0], [width, 0], [width, height], [0, height]])
        flat[2] *= chance.uniform(0.75, 1.25, 2)
        if done % 2:
            flat[3, 0] = chance.uniform(-0.2, 0.2) * width
        found = view(flat)
        if found is not None:
            seen, metres = found
            sides = numpy.hypot(*(numpy.roll(flat, -1, 0) - flat).T)
            line = [*seen[:4].ravel(), *sides, numpy.hypot(*flat[2]), *seen[4:].ravel(), metres]
            print(",".join(f"{v:.17g}" for v in line))
            done += 1


def lens():
    print("k,width,height,seen_x,seen_y,straight_x,straight_y")
    for k in [-0.12, -0.05, -0.01, 0.01, 0.05, 0.2]:
        for width, height in [(2048, 1536), (4000, 3000)]:
            f = numpy.hypot(width, height) / 2
            camera = numpy.array([[f, 0, width / 2], [0, f, height / 2], [0, 0, 1]])
            seen = chance.uniform([0, 0], [width, height], (6, 2))
            term = (cv2.TERM_CRITERIA_COUNT | cv2.TERM_CRITERIA_EPS, 2000, 1e-14)
            faults = numpy.array([k, 0, 0, 0.0])
            straight = cv2.undistortPoints(seen.reshape(-1, 1, 2), camera, faults, None, None, camera, term)
            for (x, y), (u, v) in zip(seen, straight.reshape(-1, 2)):
                print(f"{k},{width},{height},{x:.17g},{y:.17g},{u:.17g},{v:.17g}")


{"lens": lens, "quads": quads}.get("".join(sys.argv[1:]), views)()
