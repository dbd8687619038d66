"""The finished artwork: what the press receives, and nothing else.

An artwork is a page and the plates printed on it, one over another, the first one first. Millimetres at
finished model size, y up; the page need not begin at 0. The values are immutable and printable; nothing here
draws.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import Point

Severity = Literal["note", "warning", "fault"]


def channels(colour_hex: str) -> tuple[int, int, int]:
    """Red, green and blue of a colour ``#rrggbb``, each from 0 to 255.

    >>> channels("#1e4a36")
    (30, 74, 54)
    """
    red, green, blue = (int(colour_hex[i : i + 2], 16) for i in (1, 3, 5))
    return red, green, blue


@dataclass(frozen=True, slots=True)
class Ink:
    """A printing ink.

    ``colour_hex`` (``#rrggbb``, sRGB) is what a screen shows in its place. An ``opaque`` ink (white,
    metallic) hides what is below and stays complete below other inks. A ``spot`` ink has a separation of its
    own; the others are mixed from the printer's process colours.

    >>> Ink("signal red", "#cc0000").rgb
    (0.8, 0.0, 0.0)
    """

    name: str
    colour_hex: str
    opaque: bool = False
    spot: bool = True

    @property
    def rgb(self) -> tuple[float, float, float]:
        """Red, green and blue of the screen colour, each in [0, 1]."""
        red, green, blue = channels(self.colour_hex)
        return red / 255, green / 255, blue / 255


@dataclass(frozen=True, slots=True)
class Plate:
    """The artwork of one ink: the region that it covers, by the even-odd rule."""

    name: str
    ink: Ink
    outline: Outline = field(repr=False)


@dataclass(frozen=True, slots=True)
class Finding:
    """Something that will not print as drawn, or ought to be known before it is printed.

    ``kind`` is a short fixed word (``fine line``, ``narrow gap``, ``low contrast``), ``message`` the whole
    sentence for a user; ``place`` is a point of the artwork, ``measured_mm`` what was found there,
    ``limit_mm`` what would do.
    """

    kind: str
    message: str
    severity: Severity = "warning"
    place: Point | None = None
    plate: str | None = None
    measured_mm: float | None = None
    limit_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Artwork:
    """One thing drawn, ready to be written: plates in printing order on a page of exact size.

    ``paint_hex`` is the colour of the model below, which is shown in proofs and never printed; ``variant`` says
    which form of a herald it is, nothing for the herald itself.

    >>> Artwork("herald", Bounds(-12, -8, 12, 8), ()).width_mm
    24
    """

    name: str
    page: Bounds
    plates: tuple[Plate, ...]
    scale_name: str = ""
    paint_hex: str | None = None
    findings: tuple[Finding, ...] = ()
    variant: str = ""

    @property
    def outline(self) -> Outline:
        """All plates together, unmixed."""
        return Outline.gather(plate.outline for plate in self.plates)

    @property
    def width_mm(self) -> float:
        """Width of the page."""
        return self.page.width

    @property
    def height_mm(self) -> float:
        """Height of the page."""
        return self.page.height
