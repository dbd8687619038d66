"""Encapsulated PostScript, Level 2: exact box, curves kept, each spot ink a Separation that overprints.

The file follows the Document Structuring Conventions 3.0 and EPSF 3.0 (Adobe Technical Notes 5001 and 5002):
an integer ``%%BoundingBox`` that holds the page, and the exact page in ``%%HiResBoundingBox``. It holds no
date, and only 7-bit characters. Points of 1/72 in; origin at the lower left of the page.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.press.number_format import COLOUR_DECIMALS, POINT_DECIMALS, fixed
from heraldry.press.path_text import POSTFIX_WORDS, spell
from heraldry.press.writer import POINTS_PER_MM, Ring, frame_y_up

_PROLOG = """\
%%BeginProlog
/m {moveto} bind def
/l {lineto} bind def
/c {curveto} bind def
/h {closepath} bind def
/f* {eofill} bind def
%%EndProlog"""


class EpsWriter:
    """One EPS file."""

    keeps_arcs = False

    def __init__(self, artwork: Artwork) -> None:
        self.frame = frame_y_up(artwork.page, POINTS_PER_MM)
        self._lines = [*_head(artwork), _PROLOG, "gsave", "true setoverprint"]

    def plate(self, plate: Plate, rings: Iterator[Ring]) -> None:
        """Write one plate: its ink, its path, filled by the even-odd rule."""
        self._lines += [f"% plate {_ascii(plate.name)}", _ink(plate.ink)]
        for ring in rings:
            self._lines += spell(ring, POSTFIX_WORDS, POINT_DECIMALS)
        self._lines.append("f*")

    def finish(self) -> bytes:
        """The file, in ASCII."""
        return "\n".join([*self._lines, "grestore", "showpage", "%%EOF", ""]).encode("ascii")


def _head(artwork: Artwork) -> list[str]:
    width, height = artwork.width_mm * POINTS_PER_MM, artwork.height_mm * POINTS_PER_MM
    exact = f"0 0 {fixed(width, POINT_DECIMALS)} {fixed(height, POINT_DECIMALS)}"
    return [
        "%!PS-Adobe-3.0 EPSF-3.0",
        f"%%BoundingBox: 0 0 {math.ceil(width)} {math.ceil(height)}",
        f"%%HiResBoundingBox: {exact}",
        f"%%Title: {_ascii(artwork.name)}",
        "%%LanguageLevel: 2",
        "%%DocumentData: Clean7Bit",
        "%%Pages: 1",
        "%%EndComments",
    ]


def _ink(ink: Ink) -> str:
    """Colour operators for full strength of an ink."""
    rgb = " ".join(fixed(value, COLOUR_DECIMALS) for value in ink.rgb)
    if not ink.spot:
        return f"{rgb} setrgbcolor"
    return f"[/Separation {_text(ink.name)} cvn /DeviceRGB {{{_tint(ink)}}}] setcolorspace 1 setcolor"


def _tint(ink: Ink) -> str:
    """A procedure body from tint to red, green, blue: each is 1 + tint·(colour − 1)."""
    red, green, blue = (fixed(value - 1, COLOUR_DECIMALS) for value in ink.rgb)
    return f"dup {red} mul 1 add exch dup {green} mul 1 add exch {blue} mul 1 add"


def _text(text: str) -> str:
    """A PostScript string; bytes that are not plain ASCII letters, digits or blanks as octal escapes."""
    plain = (
        chr(byte) if (byte < 0x80 and chr(byte).isalnum()) or byte == 0x20 else f"\\{byte:03o}"
        for byte in text.encode()
    )
    return "(" + "".join(plain) + ")"


def _ascii(text: str) -> str:
    """A text for a comment line, from which no line break can lead out."""
    return "".join(letter if letter.isascii() and letter.isprintable() else "?" for letter in text)
