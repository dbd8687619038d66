"""The only place that rounds: how many decimals each output carries, and how a number is spelled.

A decimal place too few bends the drawing, one too many only makes the file longer. Half of the last place is
the most that rounding moves a coordinate:

==========  ===========  ========  =================
output      unit         decimals  moved by at most
==========  ===========  ========  =================
SVG         millimetre   5         0.005 µm
PNG         pixel        4         0.003 µm (at 600 dpi)
PDF, EPS    point        4         0.018 µm
DXF         millimetre   6         0.0005 µm
==========  ===========  ========  =================

PDF and PostScript interpreters hold numbers in single precision, which at the edge of a Letter page is good
for 0.01 µm; a fifth decimal of a point would be lost in them.
"""

from __future__ import annotations

SVG_DECIMALS = 5
PIXEL_DECIMALS = 4
POINT_DECIMALS = 4
COLOUR_DECIMALS = 5
DXF_DECIMALS = 6
# A bulge is a pure number: at twelve places the middle of a half circle of 1 m radius keeps to a nanometre.
DXF_BULGE_DECIMALS = 12
MANIFEST_DECIMALS = 4


def fixed(value: float, decimals: int) -> str:
    """A number with at most so many decimals: no exponent, no trailing zeros, no minus zero.

    >>> fixed(2.50000049, 6), fixed(-0.0000001, 6), fixed(1200.0, 2)
    ('2.5', '0', '1200')
    """
    text = f"{value:.{decimals}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def rounded(value: float, decimals: int) -> float:
    """The same rounding as a number, for libraries that spell numbers themselves.

    >>> rounded(-1e-9, 6)
    0.0
    """
    return round(float(value), decimals) + 0.0
