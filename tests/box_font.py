"""A font of boxes, fixed or variable, all of whose measures are known."""

from __future__ import annotations

from pathlib import Path

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib.tables.TupleVariation import TupleVariation


def box(pen: TTGlyphPen, left: float, bottom: float, right: float, top: float) -> None:
    pen.moveTo((left, bottom))
    for corner in ((left, top), (right, top), (right, bottom)):
        pen.lineTo(corner)
    pen.closePath()


def built_font(tmp_path: Path, letters: str = "HIX", variable: bool = True, cap_stated: int = 0) -> Path:
    """A font of boxes, with stems of 100 and an H of 600 in 700: weight adds 120, width adds 200 at most.

    X is two bars across each other, drawn as overlapping contours.
    """
    boxes = {
        "H": [(80, 0, 180, 700), (580, 0, 680, 700), (130, 300, 630, 400)],
        "I": [(80, 0, 180, 700)],
        "X": [(300, 0, 400, 700), (100, 300, 600, 400)],
    }
    builder = FontBuilder(1000, isTTF=True)
    order = [".notdef", "space", *letters]
    builder.setupGlyphOrder(order)
    builder.setupCharacterMap({32: "space", **{ord(letter): letter for letter in letters}})
    glyphs = {}
    for name in order:
        pen = TTGlyphPen(None)
        for corners in boxes.get(name, []):
            box(pen, *corners)
        glyphs[name] = pen.glyph()
    builder.setupGlyf(glyphs)
    builder.setupHorizontalMetrics(dict.fromkeys(order, (760, 80)))
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable({"familyName": "Test Boxes", "styleName": "Regular", "fullName": "Test Boxes"})
    builder.setupOS2(sCapHeight=cap_stated)
    builder.setupPost()
    if variable:
        builder.setupFvar([("wght", 100, 400, 900, "Weight"), ("wdth", 75, 100, 125, "Width")], [])
        builder.setupGvar({name: _variations(name) for name in order})
    path = tmp_path / "boxes.ttf"
    builder.save(path)
    return path


def _variations(name: str) -> list[TupleVariation]:
    """Points go bottom left, top left, top right, bottom right for each box; four metric points follow."""
    if name != "H":
        return []
    still = [(0, 0)]
    thicker = [*still * 2, (120, 0), (120, 0), (-120, 0), (-120, 0), *still * 2, *still * 4, *still * 4]
    wider = [*still * 4, *[(200, 0)] * 4, *still * 2, (200, 0), (200, 0), *still * 4]
    return [TupleVariation({"wght": (0, 1, 1)}, thicker), TupleVariation({"wdth": (0, 1, 1)}, wider)]
