"""Small pictures by real encoders, and what Pillow shows of them.

Run: python3 pillow_pictures.py       (Pillow 13.0.0; writes pictures/ and pillow_pictures.csv beside itself)

A sheet of 6 by 4 blocks of 16 pixels, each of another colour, is stored in each of the eight ways of EXIF as JPEG, and
once as PNG, as lossless WebP, as grey, as progressive and as CMYK JPEG, and with an sRGB profile. All of EXIF have a date with its offset, a focal
length and a place. Two rough ones, 203 by 131 pixels, have colour at half the width and height, and at half the width with
restarts; they stand for planes alone and have no line. Each line of the CSV: file, size as Pillow's exif_transpose gives it, and the colour in the middle of
each block in reading order, RRGGBB.
"""

import pathlib

from PIL import Image, ImageCms, ImageOps

here = pathlib.Path(__file__).parent
folder = here / "pictures"
folder.mkdir(exist_ok=True)
BLOCK = 16
sheet = Image.new("RGB", (6 * BLOCK, 4 * BLOCK))
for n in range(24):
    colour = (40 + n * 37 % 200, 30 + n * 83 % 200, 20 + n * 131 % 200)
    sheet.paste(colour, (n % 6 * BLOCK, n // 6 * BLOCK, n % 6 * BLOCK + BLOCK, n // 6 * BLOCK + BLOCK))

STORED = {
    1: None,
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_90,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_270,
}


def exif(turn):
    exif = Image.Exif()
    exif[0x0112] = turn
    exif[0x010F] = "A maker"
    more = exif.get_ifd(0x8769)
    more[0x9003] = "2026:03:14 15:09:26"
    more[0x9011] = "-05:00"
    more[0x920A] = 4.25
    more[0xA405] = 26
    place = exif.get_ifd(0x8825)
    place[1], place[2], place[3], place[4] = "N", (44.0, 30.0, 15.25), "W", (73.0, 12.0, 30.5)
    return exif


lines = ["file,width,height,colours"]


def keep(name):
    shown = ImageOps.exif_transpose(Image.open(folder / name))
    if shown.mode != "RGB":
        shown = shown.convert("RGB")
    across, down = shown.width // BLOCK, shown.height // BLOCK
    middle = BLOCK // 2
    colours = [shown.getpixel((x * BLOCK + middle, y * BLOCK + middle)) for y in range(down) for x in range(across)]
    lines.append(f"{name},{shown.width},{shown.height}," + " ".join("%02x%02x%02x" % c for c in colours))


for turn, how in STORED.items():
    stored = sheet.transpose(how) if how is not None else sheet
    stored.save(folder / f"turned-{turn}.jpg", quality=95, subsampling=0, exif=exif(turn))
    keep(f"turned-{turn}.jpg")
lying = sheet.transpose(STORED[6])
lying.save(folder / "lying.png", exif=exif(6))
keep("lying.png")
lying.save(folder / "lying.webp", lossless=True, exif=exif(6))
keep("lying.webp")
sheet.save(folder / "plain.webp", lossless=True)
keep("plain.webp")
sheet.convert("L").save(folder / "grey.jpg", quality=95)
keep("grey.jpg")
sheet.save(folder / "progressive.jpg", quality=95, subsampling=0, progressive=True, exif=exif(1))
keep("progressive.jpg")
sheet.convert("CMYK").save(folder / "inks.jpg", quality=95)
keep("inks.jpg")
profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
sheet.save(folder / "profiled.jpg", quality=95, subsampling=0, icc_profile=profile)
keep("profiled.jpg")
rough = Image.new("RGB", (203, 131))
wave = lambda turn: abs(turn % 510 - 255)
rough.putdata([(wave(3 * x + y), wave(5 * y + 100), wave(2 * x + 4 * y + (x // 17 + y // 13) * 20)) for y in range(131) for x in range(203)])
rough.save(folder / "rough.jpg", quality=90, subsampling=2)
rough.save(folder / "restarts.jpg", quality=90, subsampling=1, restart_marker_blocks=5)
(here / "pillow_pictures.csv").write_text("\n".join(lines) + "\n")
