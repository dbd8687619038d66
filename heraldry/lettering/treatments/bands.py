"""Letters and bands: cut out of a band, crossed by a stripe, or with a stripe that stops short of them; millimetres.

Bands and stripes lie level. Their heights are told from the foot of the ink.
"""

from __future__ import annotations

from heraldry.errors import GeometryError
from heraldry.geometry.boolean import Difference, Union, combine, pieces, subtract
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds, Outline
from heraldry.lettering.treatments.lines import kept_off
from heraldry.lettering.treatments.measures import not_negative, positive


def in_band(letters: Outline, margin_mm: float, ends_mm: float | None = None) -> Outline:
    """A band with the letters cut out of it; it reaches beyond their ink by a margin, at its ends by another."""
    margin = positive("a band's margin", margin_mm)
    ends = margin if ends_mm is None else positive("a band's margin at its ends", ends_mm)
    ink = bounds(letters)
    band = Bounds(ink.left - ends, ink.bottom - margin, ink.right + ends, ink.top + margin)
    return subtract(band.outline, letters)


def stripe_through(
    letters: Outline, height_mm: float, width_mm: float, gap_mm: float, beyond_mm: float = 0.0
) -> Outline:
    """The letters cut by a level stripe, with a gap above and below it.

    ``height_mm`` is that of the stripe's middle, ``beyond_mm`` how far it runs on past the ink on both sides.
    Raises GeometryError for a stripe that misses the letters.
    """
    stripe = _stripe(letters, height_mm, width_mm, 0.0, beyond_mm)
    slot = _stripe(letters, height_mm, width_mm, positive("the gap of a stripe", gap_mm), beyond_mm + gap_mm)
    return combine(Union((Difference(letters, (slot,)), stripe))).outline


def stripe_behind(
    letters: Outline, height_mm: float, width_mm: float, gap_mm: float, beyond_mm: float = 0.0
) -> Outline:
    """The letters whole, and a level stripe that passes behind them and stops a gap short of each.

    What is seen of it between two letters is left out where it would be shorter than the stripe is wide.
    Measures and errors as for ``stripe_through``.
    """
    stripe = _stripe(letters, height_mm, width_mm, 0.0, beyond_mm)
    around = kept_off(letters, positive("the gap of a stripe", gap_mm), sharp=True)
    seen = [piece for piece in pieces(subtract(stripe, around)) if bounds(piece).width >= width_mm]
    return Outline.gather([letters, *seen])


def _stripe(letters: Outline, height_mm: float, width_mm: float, more_mm: float, beyond_mm: float) -> Outline:
    """The stripe, wider by ``more_mm`` above and below."""
    ink = bounds(letters)
    half = positive("a stripe's width", width_mm) / 2 + more_mm
    beyond = not_negative("how far a stripe runs on", beyond_mm)
    if not -half < height_mm < ink.height + half:
        raise GeometryError(
            f"a stripe at {height_mm:g} mm misses the letters, their ink reaches from 0 to {ink.height:.4g} mm"
        )
    middle = ink.bottom + height_mm
    return Bounds(ink.left - beyond, middle - half, ink.right + beyond, middle + half).outline
