"""Letters and signs that are another letter with a stroke across it: Ð Đ Ħ Ø Ł and their small ones, $ and №."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.contour import polygon, rectangle
from heraldry.lettering.alphabets.ink import join
from heraldry.lettering.alphabets.pen import Pen, slope_width
from heraldry.lettering.alphabets.signs.reckoning import lighter
from heraldry.lettering.alphabets.small import small
from heraldry.lettering.alphabets.table import Entry, Letters
from heraldry.lettering.scan import ink_columns

# Chords along curves while the ink of S is looked for.
FLATTENED = 1e-4

# No bar across a letter is thicker than this (cap heights): across capitals, across ascenders.
THICKEST_BAR, THICKEST_SMALL_BAR = 0.15, 0.11

# How far a bar passes the outer edge of its stem, in stems.
PASSES = 0.45

# A bar stands this much lower under the serif of its stem, in that serif's thickness.
CLEAR_OF_SERIF = 0.55

# The small o of № is at least so many times as wide as its sides are thick.
LEAST_OF_RAISED = 3.1

# How far the stroke of $ shows above and below its S.
STROKE_OF_DOLLAR = 0.115

# What the S of $ loses with each stem more: less than other signs, for its stroke leaves its inside free.
LIGHTER_DOLLAR = 0.7


def barred(pen: Pen, bare: Outline, left: float, right: float, middle: float, thick: float) -> Outline:
    """A letter with a bar across its stem."""
    return join(bare, pen.level(left, right, middle - thick / 2.0, thick))


def draw_eth(letters: Letters, pen: Pen) -> Outline:
    """D with a bar through its stem."""
    left, thick = pen.serif.natural - pen.stem * 0.55, min(pen.arm, THICKEST_BAR)
    return barred(pen, letters["D"].draw(pen), left, pen.wide("D") * 0.52, 0.507, thick)


def draw_crossed_h(letters: Letters, pen: Pen) -> Outline:
    """H with a second bar that passes both stems."""
    out, wide = pen.stem * 0.4 - pen.serif.natural, pen.wide("H")
    return barred(
        pen,
        letters["H"].draw(pen),
        -out,
        wide + out,
        0.80 - pen.serif.thick * CLEAR_OF_SERIF,
        min(pen.arm, THICKEST_BAR),
    )


def _ascender_bar(pen: Pen) -> tuple[float, float]:
    """Thickness of a bar across an ascender, and the height of its middle."""
    middle = (pen.x_height + pen.ascender - pen.serif.thick) / 2.0 + 0.02
    return min(pen.arm * 0.8, THICKEST_SMALL_BAR), middle


def draw_small_crossed_d(letters: Letters, pen: Pen) -> Outline:
    """d with a bar through its ascender."""
    thick, middle = _ascender_bar(pen)
    wide = pen.wide("d")
    right = wide + pen.stem * PASSES - small(pen).serif.natural
    return barred(pen, letters["d"].draw(pen), wide * 0.42, right, middle, thick)


def draw_small_crossed_h(letters: Letters, pen: Pen) -> Outline:
    """h with a bar through its ascender."""
    thick, middle = _ascender_bar(pen)
    left = small(pen).serif.natural - pen.stem * PASSES
    return barred(pen, letters["h"].draw(pen), left, pen.wide("h") * 0.62, middle + 0.01, thick)


def slashed(pen: Pen, ring: Outline, wide: float, top: float) -> Outline:
    """A ring with a thin stroke across it that shows at both ends."""
    out = min(pen.stem * 0.30, 0.05)
    across = slope_width(wide * 0.8, top, pen.stem * 0.5)
    low, high = wide * 0.12, wide * 0.88
    return join(ring, pen.slope(low - across / 2.0, across, high - across / 2.0, across, -out, top + out))


def draw_slashed_o(letters: Letters, pen: Pen) -> Outline:
    """O with a stroke across it."""
    return slashed(pen, letters["O"].draw(pen), pen.wide("O"), 1.0)


def draw_small_slashed_o(letters: Letters, pen: Pen) -> Outline:
    """o with a stroke across it."""
    return slashed(small(pen), letters["o"].draw(pen), pen.wide("o"), pen.x_height)


def stroked(pen: Pen, bare: Outline, middle: float, height: float) -> Outline:
    """A stem with a short stroke rising across it."""
    reach, thick = pen.stem * 1.05 + 0.03, min(max(pen.arm, pen.stem * 0.45) * 0.9, 0.14)
    half, rise = thick / 2.0, reach * 0.55
    left, right = middle - reach, middle + reach
    corners = [(left, height - rise - half), (right, height + rise - half)]
    corners += [(right, height + rise + half), (left, height - rise + half)]
    return join(bare, polygon(*corners))


def draw_stroked_l(letters: Letters, pen: Pen) -> Outline:
    """L with a stroke across its stem."""
    return stroked(pen, letters["L"].draw(pen), pen.serif.natural + pen.stem / 2.0, 0.50)


def draw_small_stroked_l(letters: Letters, pen: Pen) -> Outline:
    """l with a stroke across it."""
    thin = small(pen)
    return stroked(thin, letters["l"].draw(pen), thin.serif.natural + thin.stem / 2.0, 0.53)


def draw_dollar(letters: Letters, pen: Pen) -> Outline:
    """S with a stroke that shows above and below it."""
    thin, wide = lighter(pen, by_stem=LIGHTER_DOLLAR), pen.wide("$") * 0.96
    stroke = max(thin.hair, thin.stem * 0.45) * 0.9
    ess = letters["S"].draw(replace(thin, widths={**pen.widths, "S": wide}))
    left, levels = (wide - stroke) / 2.0, ink_columns(ess, wide / 2.0, FLATTENED)
    below = thin.upright(left, -STROKE_OF_DOLLAR, sum(levels[0]) / 2.0, stroke)
    above = thin.upright(left, sum(levels[-1]) / 2.0, 1.0 + STROKE_OF_DOLLAR, stroke)
    return join(ess, below, above)


def draw_numero(letters: Letters, pen: Pen) -> Outline:
    """N and a small raised o over a bar."""
    capital, thin = pen.wide("N"), lighter(pen, 0.84)
    left = capital + max(pen.stem * 0.6, pen.wide("H") * 0.14)
    wide = max(pen.wide("№"), left + thin.side * LEAST_OF_RAISED)
    raised = thin.bowl(left, 0.40, wide, 1.0 + pen.over)
    return join(letters["N"].draw(pen), raised, rectangle(left, 0.17, wide, 0.17 + thin.crown))


CROSSED: dict[str, tuple[Callable[[Letters, Pen], Outline], str]] = {
    "Ð": (draw_eth, "D"),
    "Đ": (draw_eth, "D"),
    "Ħ": (draw_crossed_h, "H"),
    "đ": (draw_small_crossed_d, "d"),
    "ħ": (draw_small_crossed_h, "h"),
    "Ø": (draw_slashed_o, "O"),
    "ø": (draw_small_slashed_o, "o"),
    "Ł": (draw_stroked_l, "L"),
    "ł": (draw_small_stroked_l, "l"),
    "$": (draw_dollar, "$"),
    "№": (draw_numero, "№"),
}


def crossed(letters: Letters) -> Letters:
    """The crossed letters of an alphabet, made from its own."""
    return {character: Entry(partial(draw, letters), white) for character, (draw, white) in CROSSED.items()}
