"""What is written on proofs: lines of our own alphabet, and lengths as a diagram gives them."""

from __future__ import annotations

from fractions import Fraction

from heraldry.diagrams.picture import GUIDES, Stroke
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.setting import straight
from heraldry.lettering.setting.lay import Anchor
from heraldry.units import MM_PER_INCH, Scale

WRITING_HEX = "#333333"
FINEST_INCH = 8
"""Full-size lengths are given to an eighth of an inch, which is 0.04 mm in HO."""


def writing(text: str, at: Point, height_mm: float, anchor: Anchor = "middle", colour_hex: str = WRITING_HEX) -> Stroke:
    """A line on a proof; names of files and items may have signs in them that no alphabet letters, such as ``_``."""
    alphabet = ours("gothic")
    known = set(alphabet.characters)
    lettered = "".join(sign if sign in known else " " for sign in text)
    line = straight(alphabet.set_line(lettered, height_mm), at, anchor)
    return Stroke((GUIDES, 0), "writing", colour_hex, line.outline)


def length_text(mm: float, scale: Scale | None) -> str:
    """A length of the model: in full-size feet and inches where the scale is known, else in millimetres.

    >>> from heraldry.units import HO
    >>> length_text(143.5, HO), length_text(2.625, HO), length_text(1.5, None)
    ('41-0', '0-9', '1.50 MM')
    """
    if scale is None:
        return f"{mm:.2f} MM"
    eighths = round(scale.full_mm(mm) / float(MM_PER_INCH) * FINEST_INCH)
    feet, rest = divmod(abs(eighths), 12 * FINEST_INCH)
    inches, part = divmod(rest, FINEST_INCH)
    sign = "-" if eighths < 0 else ""
    return f"{sign}{feet}-{inches}" + (f" {Fraction(part, FINEST_INCH)}" if part else "")
