"""Letters with marks: the marks are drawn here, and set over, under or beside their bare letters.

Which letters there are is not written down: every letter of the Latin-1, Latin Extended-A and Additional blocks
whose canonical decomposition (Unicode) is a letter of ours and one of these marks is entered in the table.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable
from itertools import chain

from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds, Outline
from heraldry.lettering.alphabets.contour import Bend, Knot, bent, polygon, rectangle
from heraldry.lettering.alphabets.ink import cut, join, mirrored, moved, turned
from heraldry.lettering.alphabets.pen import Pen
from heraldry.lettering.alphabets.signs.punctuation import POINT_OF_STEM, comma, point, wedge
from heraldry.lettering.alphabets.table import Draw, Entry, Letters, inked
from heraldry.lettering.scan import ink_spans

FAR = 2.0

# White between a letter and the mark over it, and the height of a mark over capitals and over small letters:
# flatter over capitals, so that lines need not be set wider apart for them.
WHITE_UNDER_MARK = 0.075
HIGH_OVER_CAPITAL, HIGH_OVER_SMALL = 0.175, 0.205

# Marks are no thinner than this, in stems, where an alphabet's arms are.
LEAST_OF_STEM = 0.40

# White between the stem of L and its caron.
WHITE_BESIDE_CARON = 0.075

# Chords along curves while the ink of a letter is looked for.
FLATTENED = 1e-4

# How far a mark hangs below the base line.
MARK_FOOT = -0.275

MarkOver = Callable[[Pen, float, float, float], Outline]
"""Pen, middle of the letter, foot of the mark, its height."""


def acute(pen: Pen, middle: float, foot: float, high: float) -> Outline:
    """A stroke that rises to the right, heavier at its head."""
    thick, run = pen.stem * 0.85, 0.12
    left = middle - (run + thick) / 2.0 + 0.02
    return pen.slope(left, thick * 0.85, left + run, thick * 1.2, foot, foot + high)


def grave(pen: Pen, middle: float, foot: float, high: float) -> Outline:
    """The acute in a mirror."""
    return mirrored(acute(pen, middle, foot, high), middle)


def double_acute(pen: Pen, middle: float, foot: float, high: float) -> Outline:
    """Two strokes side by side."""
    step = pen.stem * 0.62 + 0.065
    strokes = (acute(pen, middle + shift, foot, high) for shift in (-step, step))
    return join(*strokes)


def circumflex(pen: Pen, middle: float, foot: float, high: float) -> Outline:
    """A roof."""
    half, top, thick = pen.stem * 0.75 + 0.14, pen.stem * 0.42, pen.stem * 0.95
    return polygon(
        (middle - half, foot), (middle - half + thick, foot), (middle, foot + high * 0.56),
        (middle + half - thick, foot), (middle + half, foot), (middle + top, foot + high),
        (middle - top, foot + high),
    )  # fmt: skip


def caron(pen: Pen, middle: float, foot: float, high: float) -> Outline:
    """The roof upside down."""
    return turned(circumflex(pen, middle, foot, high), middle, foot + high / 2.0)


def dots(pen: Pen, middle: float, foot: float, high: float) -> Outline:
    """Two points."""
    size = pen.stem * POINT_OF_STEM * 0.92
    gap = max(size * 0.62, 0.09) / 2.0
    low = foot + (high - size) / 2.0 if size < high else foot
    return join(point(pen, middle - gap - size, low, size), point(pen, middle + gap, low, size))


def one_dot(pen: Pen, middle: float, foot: float, high: float) -> Outline:
    """One point."""
    size = pen.stem * POINT_OF_STEM
    return point(pen, middle - size / 2.0, foot + max(high - size, 0.0) / 2.0, size)


def ring_mark(pen: Pen, middle: float, foot: float, high: float) -> Outline:
    """A small thin ring, a little higher than other marks and a little nearer its letter."""
    radius, thick = high * 0.62, min(max(pen.crown * 0.55, pen.stem * 0.30), high * 0.36)
    low = foot - 0.03
    return pen.bowl(
        middle - radius, low, middle + radius, low + 2.0 * radius, sides=(thick, thick), levels=(thick, thick)
    )


def macron(pen: Pen, middle: float, foot: float, high: float) -> Outline:
    """A bar."""
    half, thick = pen.stem * 0.7 + 0.12, max(pen.arm * 0.78, pen.stem * LEAST_OF_STEM)
    return pen.level(middle - half, middle + half, foot + (high - thick) / 2.0, thick)


def breve(pen: Pen, middle: float, foot: float, high: float) -> Outline:
    """A shallow bowl, thinner at its foot; where corners are not round, a cup."""
    half, thick, level = pen.stem * 0.75 + 0.12, pen.stem * 0.62, min(pen.crown * 0.72, high * 0.48)
    left, right, top = middle - half, middle + half, foot + high
    if pen.corner != "round":
        return pen.cup(left, foot, right, top, (thick, thick), level)
    outer, inner = Bend(half, high), Bend(half - thick, high - level)
    knots = (
        Knot.upright_first(left, foot, outer, cut=top),
        Knot.level_first(right, foot, outer, cut=top),
        Knot.upright_first(right - thick, foot + level, inner, cut=top),
        Knot.level_first(left + thick, foot + level, inner, cut=top),
    )
    return Outline.of([bent(knots, pen.corner)])


def tilde(pen: Pen, middle: float, foot: float, high: float) -> Outline:
    """A wave, ruled as a zigzag."""
    half, thick = pen.stem * 0.75 + 0.16, min(max(pen.arm * 0.85, pen.stem * LEAST_OF_STEM), high * 0.62)
    xs = [middle - half, middle - half * 0.42, middle + half * 0.42, middle + half]
    lows = [foot + high * 0.10, foot + high - thick, foot, foot + high * 0.90 - thick]
    reach = half * 0.34
    bends = [0.0, reach, reach, 0.0]
    lower = [Knot(x, y, bend, bend) for x, y, bend in zip(xs, lows, bends, strict=True)]
    upper = [Knot(k.x, k.y + thick, k.before, k.after) for k in reversed(lower)]
    return Outline.of([bent([*lower, *upper], pen.corner)])


def cedilla(pen: Pen, middle: float) -> Outline:
    """A hook below the letter, open to the left."""
    thick = min(pen.stem * 0.5, 0.068)
    right, left, high, low = middle + 0.115, middle - 0.10, -0.07, MARK_FOOT
    stem = middle - thick / 2.0
    outer = pen.bend(2.0 * (right - stem - thick), high - low)
    inner = pen.inner_bend(outer, thick, thick)
    knots = (
        Knot(stem, pen.crown / 2.0), Knot(stem + thick, pen.crown / 2.0), Knot(stem + thick, high),
        Knot.level_first(right, high, outer), Knot.upright_first(right, low, outer),
        Knot(left, low), Knot(left, low + thick),
        Knot.level_first(right - thick, low + thick, inner), Knot.upright_first(right - thick, high - thick, inner),
        Knot(stem, high - thick),
    )  # fmt: skip
    return Outline.of([bent(knots, pen.corner)])


def ogonek(pen: Pen, left: float) -> Outline:
    """A hook below a letter, open to the right."""
    thick = thick_of_ogonek(pen)
    low, right = MARK_FOOT, left + 0.15 + thick * 0.5
    sides, level = (thick, thick), thick * 0.9
    cup = pen.cup(left, low, 2.0 * right - left, thick * 0.4, sides, level)
    return cut(cup, rectangle(right, -FAR, FAR, FAR))


def thick_of_ogonek(pen: Pen) -> float:
    """Thickness of its stroke."""
    return min(pen.stem * 0.62, 0.10)


def under_ink(pen: Pen, base: Outline, left: float, right: float) -> float:
    """How far a stroke between ``left`` and ``right`` has to be moved to hang from the ink on the base line."""
    spans = [span for span in ink_spans(base, pen.crown / 2.0, FLATTENED) if span[1] - span[0] >= right - left]
    shifts = [max(foot - left, 0.0) + min(head - right, 0.0) for foot, head in spans]
    return min(shifts, key=abs, default=0.0)


def comma_below(pen: Pen, middle: float) -> Outline:
    """A small comma under the letter."""
    size = pen.stem * POINT_OF_STEM
    small = comma(pen, middle - size / 2.0, 0.0)
    return moved(small, 0.0, -0.075 - size)


OVER: dict[str, MarkOver] = {
    "\N{COMBINING GRAVE ACCENT}": grave,
    "\N{COMBINING ACUTE ACCENT}": acute,
    "\N{COMBINING CIRCUMFLEX ACCENT}": circumflex,
    "\N{COMBINING TILDE}": tilde,
    "\N{COMBINING MACRON}": macron,
    "\N{COMBINING BREVE}": breve,
    "\N{COMBINING DOT ABOVE}": one_dot,
    "\N{COMBINING DIAERESIS}": dots,
    "\N{COMBINING RING ABOVE}": ring_mark,
    "\N{COMBINING DOUBLE ACUTE ACCENT}": double_acute,
    "\N{COMBINING CARON}": caron,
}
CARON, CEDILLA, OGONEK, COMMA = (
    "\N{COMBINING CARON}", "\N{COMBINING CEDILLA}", "\N{COMBINING OGONEK}", "\N{COMBINING COMMA BELOW}",
)  # fmt: skip

# Tall letters carry their caron as a wedge at the right; these take a comma where Unicode says cedilla (the Latvian
# letters, and the Romanian ones by their older names); g has no room below and wears its comma turned, above.
CARON_BESIDE = "dtlL"
COMMA_FOR_CEDILLA = "GKLNRgklnr"
TALL = "bdfhklt"
UNDOTTED = {"i": "ı", "j": "ȷ"}


def _foot(pen: Pen, bare: str) -> tuple[float, float]:
    """Foot and height of a mark over a letter."""
    if bare.isupper():
        return 1.0 + WHITE_UNDER_MARK, HIGH_OVER_CAPITAL
    return (pen.ascender if bare in TALL else pen.x_height) + WHITE_UNDER_MARK, HIGH_OVER_SMALL


def _beside(pen: Pen, base: Outline, bare: str) -> Outline:
    """The caron of tall letters; that of L stands in its white, clear of the serif."""
    top, box = 1.0 if bare.isupper() else pen.ascender, bounds(base)
    if bare != "L":
        return moved(wedge(pen, 0.0), box.right + pen.stem * 0.35, top - 1.0)
    (_, head), *_ = ink_spans(base, top - pen.serif.thick / 2.0 - FLATTENED, FLATTENED)
    return moved(wedge(pen, 0.0), max(box.right - box.width * 0.45, head + WHITE_BESIDE_CARON), 0.0)


def _stem_for_ogonek(pen: Pen, box: Bounds, bare: str) -> float:
    """Where the ogonek leaves its letter: under a last stem, under the last leg, else in the middle."""
    if bare in "aA":
        return box.right - pen.stem * 0.9
    if bare in "Ee":
        return box.right - pen.stem * 0.4 - 0.20
    return (box.left + box.right) / 2.0 - pen.stem * 0.3


def _marked(pen: Pen, bare: str, mark: str, base: Outline) -> Outline:
    """The mark alone, where it belongs on a letter."""
    box = bounds(base)
    middle = (box.left + box.right) / 2.0
    if mark == OGONEK:
        left = _stem_for_ogonek(pen, box, bare)
        return ogonek(pen, left + under_ink(pen, base, left, left + thick_of_ogonek(pen)))
    if mark == COMMA or (mark == CEDILLA and bare in COMMA_FOR_CEDILLA and bare != "g"):
        return comma_below(pen, middle)
    if mark == CEDILLA and bare == "g":
        size = pen.stem * POINT_OF_STEM
        return turned(comma(pen, middle - size / 2.0, 0.0), middle, (pen.x_height + 0.09 + size) / 2.0)
    if mark == CEDILLA:
        half = pen.stem / 4.0
        return cedilla(pen, middle + under_ink(pen, base, middle - half, middle + half))
    if mark == CARON and bare in CARON_BESIDE:
        return _beside(pen, base, bare)
    return OVER[mark](pen, middle, *_foot(pen, bare))


def composed(letters: Letters, bare: str, mark: str) -> Draw:
    """The drawing of a letter with a mark."""
    over = mark in OVER and not (mark == CARON and bare in CARON_BESIDE)
    base = letters[UNDOTTED.get(bare, bare) if over else bare]

    def draw(pen: Pen) -> Outline:
        outline = inked(base.draw, pen)
        return join(outline, _marked(pen, bare, mark, outline))

    return draw


def marked(letters: Letters) -> Letters:
    """Every letter that letters and our marks can make."""
    found: Letters = {}
    for code in chain(range(0xC0, 0x180), range(0x218, 0x21C), range(0x1E80, 0x1E86), range(0x1EF2, 0x1EF4)):
        parts = unicodedata.normalize("NFD", chr(code))
        if len(parts) == 2 and parts[0] in letters and (parts[1] in OVER or parts[1] in (CEDILLA, OGONEK, COMMA)):
            found[chr(code)] = Entry(composed(letters, *parts), parts[0])
    return found
