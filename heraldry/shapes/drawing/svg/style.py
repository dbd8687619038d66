"""The style of a shape: what it inherits, and the marks that its fill and its stroke make.

Only the properties that decide about outlines are followed. A property whose value makes no sense stays as it was
inherited, as CSS wants it.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, cast

from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import FillRule
from heraldry.geometry.segments import Path
from heraldry.shapes.drawing.picture import BLACK, Cap, Join, Mark, Pen, Window
from heraldry.shapes.drawing.svg.numbers import length_px
from heraldry.shapes.drawing.svg.paint import Palette, colour_of
from heraldry.shapes.drawing.svg.viewport import Frame

DASHES_MAX = 64
"""Numbers of one dash pattern; more are no pattern."""


@dataclass(frozen=True)
class Style:
    """Inherited properties, lengths in the units of the element (SVG 1.1, sections 11.3 and 11.4, initial values)."""

    fill: str = "black"
    fill_alpha: float = 1.0
    fill_rule: FillRule = "nonzero"
    clip_rule: FillRule = "nonzero"
    stroke: str = "none"
    stroke_alpha: float = 1.0
    width: float = 1.0
    cap: Cap = "butt"
    join: Join = "miter"
    miter_limit: float = 4.0
    dashes: tuple[float, ...] = ()
    dash_offset: float = 0.0
    colour: str = BLACK
    is_hidden: bool = False
    stroke_first: bool = False
    scales: bool = True
    """Whether the stroke grows with the drawing (``vector-effect``); the one property here that is not inherited."""
    is_clip: bool = False

    def as_clip(self) -> Style:
        """The style inside a clip path, where all shapes are filled and none is stroked."""
        return replace(self, is_clip=True)

    def inherited(self, own: Mapping[str, str], frame: Frame) -> Style:
        """The style of an element inside this one, with its own properties."""
        changes: dict[str, Any] = {"scales": True}
        for key, value in own.items():
            if key in _READERS and value != "inherit":
                changes |= _READERS[key](value, frame, self)
        return replace(self, **changes)

    def marks(
        self, paths: tuple[Path, ...], palette: Palette, onto_page: Affine, windows: tuple[Window, ...]
    ) -> Iterator[Mark]:
        """What a shape paints: its fill and over it its stroke, or the other way round."""
        if self.is_clip:
            yield Mark(paths, onto_page, "", self.clip_rule, windows=windows)
            return
        filled = self._fill(paths, palette, onto_page, windows)
        stroked = self._stroke(paths, palette, onto_page, windows)
        for mark in (stroked, filled) if self.stroke_first else (filled, stroked):
            if mark is not None:
                yield mark

    def _fill(
        self, paths: tuple[Path, ...], palette: Palette, onto_page: Affine, windows: tuple[Window, ...]
    ) -> Mark | None:
        colour = self._seen(palette, self.fill, self.fill_alpha)
        return None if colour is None else Mark(paths, onto_page, colour, self.fill_rule, windows=windows)

    def _stroke(
        self, paths: tuple[Path, ...], palette: Palette, onto_page: Affine, windows: tuple[Window, ...]
    ) -> Mark | None:
        colour = self._seen(palette, self.stroke, self.stroke_alpha) if self.width > 0 else None
        if colour is None:
            return None
        pen = Pen(self.width, self.cap, self.join, self.miter_limit, self.dashes, self.dash_offset)
        if self.scales:
            return Mark(paths, onto_page, colour, pen=pen, windows=windows)
        palette.notes.add("a stroke that does not grow with the drawing has the width that it has on the page")
        return Mark(paths, onto_page, colour, pen=replace(pen, width=self.width / onto_page.ratio), windows=windows)

    def _seen(self, palette: Palette, paint: str, alpha: float) -> str | None:
        """The colour of a paint, unless nothing of it is seen."""
        shown = palette.shown(paint, self.colour)
        if shown is None or shown.alpha * alpha <= 0.0:
            return None
        if shown.alpha * alpha < 1.0:
            palette.notes.add("transparency is passed over: ink is there or it is not")
        return shown.colour


def _word(name: str, words: tuple[str, ...]) -> Callable[[str, Frame, Style], dict[str, Any]]:
    return lambda value, _, __: {name: value} if value in words else {}


def _share(name: str) -> Callable[[str, Frame, Style], dict[str, Any]]:
    def read(value: str, _: Frame, __: Style) -> dict[str, Any]:
        found = length_px(value, 1.0)
        return {} if found is None else {name: min(max(found, 0.0), 1.0)}

    return read


def _length(name: str) -> Callable[[str, Frame, Style], dict[str, Any]]:
    def read(value: str, frame: Frame, _: Style) -> dict[str, Any]:
        found = length_px(value, _diagonal(frame))
        return {} if found is None else {name: found}

    return read


def _diagonal(frame: Frame) -> float:
    """What ``%`` is counted from for lengths that run neither across nor down (SVG 1.1, section 7.10)."""
    return math.hypot(frame.width, frame.height) / math.sqrt(2)


def _dashes(value: str, frame: Frame, _: Style) -> dict[str, Any]:
    """A dash pattern; an odd one is repeated, one of nothing or with negative lengths is none (section 11.4)."""
    if value == "none":
        return {"dashes": ()}
    found = [length_px(word, _diagonal(frame)) for word in value.replace(",", " ").split()[:DASHES_MAX]]
    lengths = tuple(length for length in found if length is not None)
    if len(lengths) < len(found) or any(length < 0 for length in lengths) or not sum(lengths) > 0:
        return {"dashes": ()}
    return {"dashes": lengths if len(lengths) % 2 == 0 else lengths * 2}


def _miter_limit(value: str, _: Frame, __: Style) -> dict[str, Any]:
    found = length_px(value, 1.0)
    return {} if found is None or found < 1 else {"miter_limit": found}


def _join(value: str, _: Frame, __: Style) -> dict[str, Any]:
    word = {"miter-clip": "miter", "arcs": "miter"}.get(value, value)
    return {"join": cast(Join, word)} if word in ("miter", "round", "bevel") else {}


def _current(value: str, _: Frame, outer: Style) -> dict[str, Any]:
    return {"colour": value} if colour_of(value) is not None else {"colour": outer.colour}


def _visibility(value: str, _: Frame, __: Style) -> dict[str, Any]:
    return {"is_hidden": value in ("hidden", "collapse")}


_RULES = ("nonzero", "evenodd")
_READERS: dict[str, Callable[[str, Frame, Style], dict[str, Any]]] = {
    "fill": lambda value, _, __: {"fill": value},
    "fill-opacity": _share("fill_alpha"),
    "fill-rule": _word("fill_rule", _RULES),
    "clip-rule": _word("clip_rule", _RULES),
    "stroke": lambda value, _, __: {"stroke": value},
    "stroke-opacity": _share("stroke_alpha"),
    "stroke-width": _length("width"),
    "stroke-linecap": _word("cap", ("butt", "round", "square")),
    "stroke-linejoin": _join,
    "stroke-miterlimit": _miter_limit,
    "stroke-dasharray": _dashes,
    "stroke-dashoffset": _length("dash_offset"),
    "color": _current,
    "visibility": _visibility,
    "paint-order": lambda value, _, __: {"stroke_first": value.split()[:1] == ["stroke"]},
    "vector-effect": lambda value, _, __: {"scales": value != "non-scaling-stroke"},
}
"""How each property changes the style."""
