"""A thin line let into each stroke; millimetres.

The line is what is left of the letters when the same wall is taken off all round. Level strokes are thinner
than upright ones in nearly all lettering, and one wall would leave them hardly a line: so the letters are first
stretched upward until their level strokes are as thick as the uprights, and the line is brought back after, when
it is of one width in both. Its corners are mitred, and it stops a wall short of every end.
"""

from __future__ import annotations

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import pieces, subtract, unite
from heraldry.geometry.measure import area
from heraldry.geometry.outline import Outline
from heraldry.lettering.treatments.crotches import walled
from heraldry.lettering.treatments.measures import positive
from heraldry.lettering.treatments.strokes import strokes

LEAST_LENGTH = 3.0
"""A piece of the line is at least so many widths long: shorter ones are crumbs where strokes meet."""

WIDEST_SHARE = 0.6
"""The line takes at most this share of a stroke: beyond, the letters are an outline and not let into."""


def inline(letters: Outline, width_mm: float) -> Outline:
    """The letters with a line of a width let into each stroke.

    Raises GeometryError where the strokes are too thin for it.
    """
    return subtract(letters, inline_line(letters, width_mm))


def inline_line(letters: Outline, width_mm: float) -> Outline:
    """The line alone, for an ink of its own; errors as for ``inline``."""
    positive("an inline's width", width_mm)
    found = strokes(letters)
    thinnest = min(found.upright_mm, found.level_mm)
    if width_mm > WIDEST_SHARE * thinnest:
        raise GeometryError(
            f"an inline of {width_mm:g} mm is too wide for strokes of {thinnest:.3g} mm, "
            f"at most {WIDEST_SHARE * thinnest:.3g} mm can be let in"
        )
    wall = (found.upright_mm - width_mm) / 2
    stretch = (found.upright_mm - width_mm) / (found.level_mm - width_mm)
    core = walled(unite(letters).transformed(Affine.scale(1.0, stretch)), wall)
    line = core.transformed(Affine.scale(1.0, 1.0 / stretch))
    long = LEAST_LENGTH * width_mm**2
    return Outline.gather(piece for piece in pieces(line) if area(piece) >= long)
