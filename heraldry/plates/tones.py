"""How light an ink is, from 0 (black) to 100 (white): what decides whether it stands out from its ground.

CIE 1976 lightness L* (ISO/CIE 11664-4) of the luminance of an sRGB colour (IEC 61966-2-1).
"""

from __future__ import annotations

from collections.abc import Sequence

from heraldry.artwork import channels

STANDS_OUT = 0.5
"""A plate is seen as drawn, and not as bare, if its lightness differs from the ground's at least by this share of
what differs most; common practice, no source."""

LUMINANCE = (0.2126, 0.7152, 0.0722)
"""Shares of red, green and blue in linear light (IEC 61966-2-1)."""


def lightness(colour_hex: str) -> float:
    """L* of a colour ``#rrggbb``.

    >>> [round(lightness(colour), 1) for colour in ("#000000", "#777777", "#ffffff")]
    [0.0, 50.0, 100.0]
    """
    luminance = sum(share * _linear(one / 255) for share, one in zip(LUMINANCE, channels(colour_hex), strict=True))
    if luminance <= (6 / 29) ** 3:
        return float(luminance * (29 / 3) ** 3)
    return float(116 * luminance ** (1 / 3) - 16)


def standing_out(colours: Sequence[str], ground: str) -> list[bool]:
    """Which of some colours are seen as drawn on a ground, and not as bare ground; at least one is.

    >>> standing_out(["#1e4a36", "#ffffff", "#1a1816"], ground="#e3d9bd")
    [True, False, True]
    """
    differences = [abs(lightness(colour) - lightness(ground)) for colour in colours]
    return [difference >= STANDS_OUT * max(differences) for difference in differences]


def _linear(channel: float) -> float:
    """A channel of sRGB (0 to 1) in linear light."""
    return float(channel / 12.92) if channel <= 0.04045 else float(((channel + 0.055) / 1.055) ** 2.4)
