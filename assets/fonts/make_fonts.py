"""Makes the two faces that every screen and sheet is set in, from B612 (SIL OFL 1.1).

B612 has no stacked fractions, and a tape measure is full of them. This adds one glyph for each
n/d (numerator over a bar over denominator) at U+E000 + 64 d + n, so that a fraction is an ordinary
character: it wraps, aligns and prints wherever text does. Outlines become TrueType on the way.

    pip install fonttools==4.68.0 ; python3 make_fonts.py FOLDER_WITH_B612_OTF
"""
import math, pathlib, sys
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.cu2quPen import Cu2QuPen
from fontTools.pens.transformPen import TransformPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

DENOMINATORS = [2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64]
SCALE = 0.66          # digits of a fraction against digits of the line
TIGHT = 0.90          # their advance, closed up a little
BAR, GAP = 105, 75    # thickness of the bar, air above and below it (units of 2000 an em)


def fraction(source, cmap, n, d):
    """The outline and the advance of n over d, centred on the height of a figure."""
    glyphs = source.getGlyphSet()
    cap = source["OS/2"].sCapHeight
    advance = glyphs[cmap[ord("0")]].width * SCALE * TIGHT
    middle = cap / 2
    width = max(len(str(n)), len(str(d))) * advance + 120
    pen = TTGlyphPen(None)
    to = Cu2QuPen(pen, 1.0, reverse_direction=True)
    for text, base in ((str(n), middle + BAR / 2 + GAP), (str(d), middle - BAR / 2 - GAP - cap * SCALE)):
        x = (width - len(text) * advance) / 2
        for ch in text:
            glyph = glyphs[cmap[ord(ch)]]
            inset = (advance - glyph.width * SCALE) / 2
            glyph.draw(TransformPen(to, (SCALE, 0, 0, SCALE, x + inset, base)))
            x += advance
    box = [(30, middle - BAR / 2), (30, middle + BAR / 2), (width - 30, middle + BAR / 2), (width - 30, middle - BAR / 2)]
    pen.moveTo(box[0]); [pen.lineTo(p) for p in box[1:]]; pen.closePath()
    return pen.glyph(), round(width)


def make(path, style):
    source = TTFont(path)
    cmap, order = dict(source.getBestCmap()), list(source.getGlyphOrder())
    glyph_set, glyphs, metrics = source.getGlyphSet(), {}, {}
    for name in order:
        pen = TTGlyphPen(glyph_set)
        glyph_set[name].draw(Cu2QuPen(pen, 1.0, reverse_direction=True))
        glyphs[name], metrics[name] = pen.glyph(), (source["hmtx"][name][0], 0)
    for d in DENOMINATORS:
        for n in range(1, d):
            if math.gcd(n, d) == 1:
                name = f"fraction.{n}.{d}"
                glyph, advance = fraction(source, cmap, n, d)
                order.append(name); glyphs[name] = glyph; metrics[name] = (advance, 0)
                cmap[0xE000 + 64 * d + n] = name
    font = FontBuilder(source["head"].unitsPerEm, isTTF=True)
    font.setupGlyphOrder(order)
    font.setupCharacterMap(cmap)
    font.setupGlyf(glyphs)
    font.setupHorizontalMetrics({g: (a, font.font["glyf"][g].xMin if hasattr(font.font["glyf"][g], "xMin") else 0) for g, (a, _) in metrics.items()})
    font.setupHorizontalHeader(ascent=source["hhea"].ascent, descent=source["hhea"].descent)
    bold = style == "Bold"
    font.setupNameTable({
        "familyName": "Storyrod Sans", "styleName": style, "uniqueFontIdentifier": f"Storyrod Sans {style} 1",
        "fullName": f"Storyrod Sans {style}", "psName": f"StoryrodSans-{style}", "version": "Version 1.000",
        "copyright": "Copyright (c) 2012, AIRBUS; 2012-2019 Laurent Spaggiari; 2019 Thomas Paillot; 2026 the Storyrod authors (fractions)",
        "licenseDescription": "SIL Open Font License, Version 1.1. Made from B612 1.008.",
    })
    old = source["OS/2"]
    font.setupOS2(sTypoAscender=old.sTypoAscender, sTypoDescender=old.sTypoDescender, sTypoLineGap=old.sTypoLineGap,
                  usWinAscent=old.usWinAscent, usWinDescent=old.usWinDescent, sCapHeight=old.sCapHeight, sxHeight=old.sxHeight,
                  usWeightClass=700 if bold else 400, fsSelection=0x20 if bold else 0x40)
    font.setupPost()
    font.font["head"].macStyle = 1 if bold else 0
    font.font["head"].created = font.font["head"].modified = 3850000000  # fixed: the same input gives the same bytes
    font.font.recalcTimestamp = False
    if "GPOS" in source:
        font.font["GPOS"] = source["GPOS"]
    font.save(pathlib.Path(__file__).with_name(f"StoryrodSans-{style}.ttf"))


if __name__ == "__main__":
    for style in ("Regular", "Bold"):
        make(pathlib.Path(sys.argv[1]) / f"B612-{style}.otf", style)
