"""SVG 1.1, the master of all outputs: millimetres, one group a plate, one filled path an ink area.

Arcs are written as cubics of at most 30°. The format's own arc is given by its ends and radius, and near a
half circle that is ill-conditioned: rounded to 0.01 mm, a half circle of radius 12.5 mm is drawn 0.2 mm off,
and renderers turn it into curves of their own, some 3.5 µm off. A 30° cubic is off by 3.7e-7 of its radius.
"""

from __future__ import annotations

from collections.abc import Iterator
from xml.sax.saxutils import quoteattr

from heraldry.artwork import Artwork, Plate
from heraldry.geometry.affine import Affine
from heraldry.press.number_format import SVG_DECIMALS, fixed
from heraldry.press.path_text import SVG_WORDS, spell
from heraldry.press.writer import Ring, frame_y_down


class SvgWriter:
    """One SVG file; origin at the top left of the page, y down."""

    keeps_arcs = False

    def __init__(self, frame: Affine, width: float, height: float, unit: str, decimals: int) -> None:
        self.frame = frame
        self._decimals = decimals
        size = fixed(width, decimals), fixed(height, decimals)
        self._lines = [
            '<?xml version="1.0" encoding="UTF-8"?>',
            f'<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="{size[0]}{unit}" '
            f'height="{size[1]}{unit}" viewBox="0 0 {size[0]} {size[1]}">',
        ]

    @classmethod
    def in_millimetres(cls, artwork: Artwork) -> SvgWriter:
        """A file whose user unit is the millimetre."""
        return cls(frame_y_down(artwork.page), artwork.width_mm, artwork.height_mm, "mm", SVG_DECIMALS)

    def plate(self, plate: Plate, rings: Iterator[Ring]) -> None:
        """Write the group of one plate."""
        strokes = (stroke for ring in rings for stroke in spell(ring, SVG_WORDS, self._decimals))
        self._lines += [
            f"<g id={quoteattr(group_id(plate.name))}>",
            f'<path fill="{plate.ink.colour_hex}" fill-rule="evenodd" d="{"".join(strokes)}"/>',
            "</g>",
        ]

    def finish(self) -> bytes:
        """The file, in UTF-8."""
        return "\n".join([*self._lines, "</svg>", ""]).encode()


def group_id(plate_name: str) -> str:
    """The id of a plate's group; an XML id holds no blanks.

    >>> group_id("white under")
    'plate-white_under'
    """
    return "plate-" + "_".join(plate_name.split())
