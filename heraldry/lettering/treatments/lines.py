"""Letters drawn as lines: an outline in place of the face, a second line round it, a clear margin; millimetres.

Corners stay sharp where the letters' are, as a sign writer rules them; only a margin that is cut into what lies
behind is rounded at the corners, since it is meant to be equally wide all round.
"""

from __future__ import annotations

from heraldry.errors import GeometryError
from heraldry.geometry.boolean import subtract, unite
from heraldry.geometry.offset import offset
from heraldry.geometry.outline import Outline
from heraldry.lettering.treatments.crotches import walled
from heraldry.lettering.treatments.measures import not_negative, positive


def outline(letters: Outline, width_mm: float) -> Outline:
    """The letters as a line along the inside of their edge, so that they keep their size and their fit.

    Raises GeometryError where the line would fill them.
    """
    face = walled(unite(letters), positive("an outline's width", width_mm))
    if face.is_empty:
        raise GeometryError(f"an outline of {width_mm:g} mm fills the letters, take a thinner line or larger letters")
    return subtract(letters, face)


def outer_line(letters: Outline, width_mm: float, gap_mm: float = 0.0) -> Outline:
    """A line round the letters, a gap away from them."""
    positive("an outer line's width", width_mm)
    inner = kept_off(letters, not_negative("the gap before an outer line", gap_mm), sharp=True)
    return subtract(offset(letters, gap_mm + width_mm, "sharp"), inner)


def double_outline(letters: Outline, width_mm: float, gap_mm: float) -> Outline:
    """Two lines of one width: the letters drawn as an outline, and a line round them a gap away."""
    positive("the gap of a double outline", gap_mm)
    return unite(outline(letters, width_mm), outer_line(letters, width_mm, gap_mm))


def halo(letters: Outline, width_mm: float) -> Outline:
    """The margin round the letters, equally wide all round, without the letters."""
    return subtract(kept_off(letters, positive("a halo's width", width_mm)), letters)


def kept_off(letters: Outline, gap_mm: float, sharp: bool = False) -> Outline:
    """The ground that a gap keeps clear: the letters grown by it, or as they are without a gap."""
    return offset(letters, gap_mm, "sharp" if sharp else "round") if gap_mm > 0 else letters
