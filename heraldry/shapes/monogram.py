"""The initials of a railroad as one sign; millimetres."""

from __future__ import annotations

from heraldry.geometry.affine import Affine
from heraldry.geometry.point import ORIGIN
from heraldry.lettering import monogram as composing
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.monogram import FrameName, Style
from heraldry.shapes.checks import positive
from heraldry.shapes.table import Drawn, Length, Lettering, Place, Text, shape

SEPARATORS = " .·-"
"""What may stand between initials as they are written, and is not drawn."""


@shape
def monogram(
    monogram: Text,
    height: Length,
    alphabet: Lettering | None = None,
    style: Style = "interlaced",
    frame: FrameName = "none",
    gap: Length | None = None,
    stem: Length | None = None,
    centre: Place = ORIGIN,
) -> Drawn:
    """Initials interlaced, stacked, one large or in a row, in a ring or a diamond; `height` is that of the whole."""
    initials = [character for character in monogram if character not in SEPARATORS]
    drawn = composing.monogram(
        initials,
        alphabet or ours("gothic"),
        positive("height", height),
        style,
        frame,
        gap if gap is None else positive("gap", gap),
        stem if stem is None else positive("stem", stem),
    )
    return Drawn(drawn.outline.transformed(Affine.move(centre.x, centre.y)))
