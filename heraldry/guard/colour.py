"""How an ink looks on a model: the colour it takes on the paint below it, and whether that can be seen.

Colours are ``#rrggbb`` (sRGB, IEC 61966-2-1). Light passes a transparent ink twice, down to what lies under
it and back (Beer–Lambert), so an ink that shows as R_ink on white shows on a paint as

    R = R_paint · R_ink / R_white

in each channel of linear light. On clear film the paint lies under the ink; white film is white under the
ink and hides the paint. An opaque ink (white toner, a metallic) hides what is under it on either film.

Differences are CIEDE2000 (Sharma, Wu, Dalal, Color Res. Appl. 30 (2005) 21–30).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from heraldry.errors import ColourError

if TYPE_CHECKING:
    from coloraide import Color

Film = Literal["clear", "white"]

WHITE_REFLECTANCE = 1.0
"""R_white per channel in linear light: ink colours are given as they look on white paper."""

NOTICEABLE = 2.3
"""The just noticeable difference, ΔE*ab (Mahy et al. 1994), used for ΔE00 of neighbouring colours as well."""

ANOTHER_COLOUR = 5.0
"""Above this difference two colours are seen (Mokrzycki and Tatol 2011)."""

READABLE = 20.0
"""The least difference of lettering from its paint. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """How an ink fares on a paint.

    ``seen_hex`` is the colour it takes there, ``from_paint`` its difference (ΔE00) from the bare paint, and
    ``from_wanted`` from the ink's own colour.
    """

    seen_hex: str
    from_paint: float
    from_wanted: float

    @property
    def is_readable(self) -> bool:
        """Whether lettering in this ink stands out from the paint."""
        return self.from_paint >= READABLE

    @property
    def is_true(self) -> bool:
        """Whether the ink comes out as the colour that was asked for."""
        return self.from_wanted <= ANOTHER_COLOUR


def colour_on(paint: str, ink: str, film: Film = "clear", opaque: bool = False) -> str:
    """The colour of an ink printed on film that lies on a paint; raises ColourError for what is no colour.

    >>> colour_on(paint="#1f3b2d", ink="#e8b400")
    '#1b2700'
    >>> colour_on(paint="#1f3b2d", ink="#e8b400", film="white")
    '#e8b400'
    """
    below, above = _read(paint), _read(ink)
    if opaque or film == "white":
        return _written(above)
    light = (under * over / WHITE_REFLECTANCE for under, over in zip(_linear(below), _linear(above), strict=True))
    return _written(_color()("srgb-linear", list(light)))


def difference(one: str, other: str) -> float:
    """CIEDE2000 between two colours, with the D65 white of sRGB.

    >>> round(difference("#1f3b2d", "#24402f"), 1)
    2.0
    """
    return float(_lab(one).delta_e(_lab(other), method="2000"))


def judge(ink: str, paint: str, film: Film = "clear", opaque: bool = False) -> Verdict:
    """Two questions at once: can lettering in this ink be read on the paint, and does it keep its colour?

    >>> ochre_on_green = judge(ink="#e8b400", paint="#1f3b2d")
    >>> ochre_on_green.is_readable, ochre_on_green.is_true
    (False, False)
    """
    seen = colour_on(paint, ink, film, opaque)
    return Verdict(seen, difference(seen, paint), difference(seen, ink))


def _color() -> type[Color]:
    from coloraide import Color  # imported where used: start-up time

    return Color


def _read(colour: str) -> Color:
    if not re.fullmatch(r"#[0-9a-fA-F]{6}", colour):
        raise ColourError(f"a colour is '{colour}', it must be like '#1f3b2d': six hexadecimal digits after a #")
    return _color()(colour)


def _linear(colour: Color) -> list[float]:
    return list(colour.convert("srgb-linear").coords())


def _lab(colour: str) -> Color:
    """In CIELAB of D65: in plain ``lab`` the white point would be adapted to D50, and ΔE00 come out wrong."""
    return _read(colour).convert("lab-d65")


def _written(colour: Color) -> str:
    return str(colour.convert("srgb").to_string(hex=True, compress=False))
