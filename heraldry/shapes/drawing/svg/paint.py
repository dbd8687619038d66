"""The colour of a paint, as ``#rrggbb``: CSS colours, ``currentColor``, and gradients by their first colour."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from heraldry.shapes.drawing.notes import Notes
from heraldry.shapes.drawing.svg.style_sheet import StyleSheet
from heraldry.shapes.drawing.svg.tree import Element

MOST_LINKS = 10
"""Gradients that take their colours from one another, before the chain is given up."""

LONGEST_COLOUR = 80
"""Characters; no colour is longer."""

_HEX = re.compile(r"#([0-9a-fA-F]{3,4}|[0-9a-fA-F]{6}|[0-9a-fA-F]{8})")
_SERVER = re.compile(r"url\(\s*['\"]?\s*([^'\")]*?)\s*['\"]?\s*\)\s*(.*)", re.DOTALL)
_PROFILE = re.compile(r"\s+icc-color\(.*", re.DOTALL)


@dataclass(frozen=True)
class Shown:
    """What a paint comes to: a colour, or none; ``alpha`` is how much of it covers, 0 to 1."""

    colour: str
    alpha: float = 1.0


@lru_cache(maxsize=1024)
def colour_of(text: str) -> Shown | None:
    """A CSS colour; None for what is none.

    >>> colour_of("red"), colour_of("#abc").colour, colour_of("rgb(0, 128, 255)").colour, colour_of("rot")
    (Shown(colour='#ff0000', alpha=1.0), '#aabbcc', '#0080ff', None)
    """
    text = _PROFILE.sub("", text.strip())
    if _HEX.fullmatch(text):
        digits = text[1:] if len(text) > 5 else "".join(digit * 2 for digit in text[1:])
        return Shown(f"#{digits[:6].lower()}", int(digits[6:] or "ff", 16) / 255)
    if not text or len(text) > LONGEST_COLOUR:
        return None
    from coloraide import Color  # imported where used: start-up time

    try:
        colour = Color(text).convert("srgb").fit()
    except ValueError:
        return None
    return Shown(colour.to_string(hex=True, alpha=False), float(colour.alpha(nans=False)))


@dataclass(frozen=True)
class Palette:
    """Resolves the paints of one drawing."""

    by_id: Mapping[str, Element]
    sheet: StyleSheet
    notes: Notes

    def shown(self, text: str, current: str) -> Shown | None:
        """What a paint looks like; None for ``none`` and for what cannot be painted."""
        text = text.strip()
        if text.lower() in ("none", "transparent"):
            return None
        if text.lower() == "currentcolor":
            return colour_of(current)
        served = _SERVER.fullmatch(text)
        if served:
            return self._served(served.group(1), served.group(2), current)
        colour = colour_of(text)
        if colour is None:
            self.notes.add(f"the colour '{text[:40]}' is not known and is drawn black")
            return colour_of("#000000")
        return colour

    def _served(self, link: str, fallback: str, current: str) -> Shown | None:
        server = self.by_id.get(link.removeprefix("#")) if link.startswith("#") else None
        if server is not None and server.tag in ("linearGradient", "radialGradient"):
            colour = self._first_stop(server, current)
            if colour is not None:
                self.notes.add(f"a gradient is painted flat, in its first colour {colour.colour}")
            return colour
        if server is not None:
            self.notes.add(f"a {server.tag} as paint is left out")
            return None
        return self.shown(fallback, current) if fallback.strip() else None

    def _first_stop(self, gradient: Element, current: str) -> Shown | None:
        """The first colour of a gradient, or of the one it takes its colours from."""
        here: Element | None = gradient
        for _ in range(MOST_LINKS):
            if here is None:
                return None
            stops = [child for child in here.children if child.tag == "stop"]
            if stops:
                text = self.sheet.declared(stops[0]).get("stop-color", "#000000")
                return colour_of(current if text.lower() == "currentcolor" else text)
            here = self.by_id.get(here.attributes.get("href", "").removeprefix("#"))
        return None
