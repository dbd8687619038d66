"""How light an ink is, from 0 (black) to 100 (white): what decides whether it stands out from its ground.

CIE 1976 lightness L* (ISO/CIE 11664-4) of an sRGB colour (IEC 61966-2-1), reckoned by coloraide.
"""

from __future__ import annotations

from collections.abc import Sequence

STANDS_OUT = 0.5
"""A plate is seen as drawn, and not as bare, if its lightness differs from the ground's at least by this share of
what differs most; common practice, no source."""


def lightness(colour_hex: str) -> float:
    """L* of a colour ``#rrggbb``.

    >>> [round(lightness(colour), 1) for colour in ("#000000", "#777777", "#ffffff")]
    [0.0, 50.0, 100.0]
    """
    from coloraide import Color  # imported where used: start-up time

    return float(Color(colour_hex).convert("lab-d65")["lightness"])


def standing_out(colours: Sequence[str], ground: str) -> list[bool]:
    """Which of some colours are seen as drawn on a ground, and not as bare ground; at least one is.

    >>> standing_out(["#1e4a36", "#ffffff", "#1a1816"], ground="#e3d9bd")
    [True, False, True]
    """
    differences = [abs(lightness(colour) - lightness(ground)) for colour in colours]
    return [difference >= STANDS_OUT * max(differences) for difference in differences]
