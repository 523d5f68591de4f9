"""The other side of the bench `photos`: pictures of so many megapixels, and what Pillow takes to fit one to 2,048 pixels.

make FOLDER: writes 12.jpg, 48.jpg and 200.jpg, 4:2:0, quality 90, noise over soft shapes, as a camera would.
time FILE TIMES: milliseconds from the file to a copy of at most 2,048 pixels a side, upright, by draft mode and thumbnail, the median.
"""

import statistics
import sys
import time

import numpy
from PIL import Image, ImageOps

Image.MAX_IMAGE_PIXELS = None


def make(folder):
    chance = numpy.random.default_rng(7)
    for name, (width, height) in {"12": (4000, 3000), "48": (8000, 6000), "200": (16320, 12240)}.items():
        small = Image.fromarray(chance.integers(30, 220, (45, 60, 3), dtype=numpy.uint8))
        soft = small.resize((width // 4, height // 4), Image.Resampling.BICUBIC)
        rough = numpy.asarray(soft, dtype=numpy.int16) + chance.integers(-18, 19, (height // 4, width // 4, 1))
        soft = Image.fromarray(rough.clip(0, 255).astype(numpy.uint8))
        soft.resize((width, height), Image.Resampling.BILINEAR).save(f"{folder}/{name}.jpg", quality=90)


def fit(path):
    begun = time.perf_counter()
    picture = Image.open(path)
    picture.draft("RGB", (2048, 2048))
    picture.thumbnail((2048, 2048))
    ImageOps.exif_transpose(picture, in_place=True)
    picture.load()
    return (time.perf_counter() - begun) * 1e3


if sys.argv[1] == "make":
    make(sys.argv[2])
else:
    print(statistics.median(fit(sys.argv[2]) for _ in range(int(sys.argv[3]))))
