"""How the units of a drawing fit its frame: ``viewBox`` and ``preserveAspectRatio`` (SVG 1.1, sections 7.7 and 7.8)."""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.geometry.affine import IDENTITY, Affine
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path
from heraldry.shapes.drawing.svg.numbers import length_px, numbers
from heraldry.shapes.drawing.svg.tree import Element

_SHARES = {"Min": 0.0, "Mid": 0.5, "Max": 1.0}
_USUAL_ALIGN = "xMidYMid"


@dataclass(frozen=True)
class Frame:
    """An upright box, in the units around it."""

    x: float
    y: float
    width: float
    height: float

    @property
    def ring(self) -> Path:
        """Its edge."""
        right, bottom = self.x + self.width, self.y + self.height
        corners = (Point(self.x, self.y), Point(right, self.y), Point(right, bottom), Point(self.x, bottom))
        return Path.through(corners, closed=True)


@dataclass(frozen=True)
class Viewport:
    """A frame with units of its own: what ``%`` is counted from, and the map from the inner units outward."""

    frame: Frame
    inner: Frame
    outward: Affine

    @property
    def is_empty(self) -> bool:
        """Whether nothing can be seen in it."""
        return not (self.frame.width > 0 and self.frame.height > 0 and self.inner.width > 0 and self.inner.height > 0)


def view_box(element: Element) -> Frame | None:
    """The units that an element wants to fill its frame with."""
    found = numbers(element.attributes.get("viewBox", ""))
    return Frame(*found) if len(found) == 4 else None


def page(root: Element) -> Viewport | None:
    """The page of a file in pixels; None where it gives itself no size."""
    box = view_box(root)
    width = length_px(root.attributes.get("width", ""), 0.0) or None
    height = length_px(root.attributes.get("height", ""), 0.0) or None
    if box is None:
        return Viewport(Frame(0, 0, width, height), Frame(0, 0, width, height), IDENTITY) if width and height else None
    if width is None and height is None:
        width, height = box.width, box.height
    if box.width > 0 and box.height > 0:
        width = width if width is not None else (height or 0.0) * box.width / box.height
        height = height if height is not None else width * box.height / box.width
    frame = Frame(0, 0, width or 0.0, height or 0.0)
    return Viewport(frame, box, fitted(box, frame, root.attributes.get("preserveAspectRatio", "")))


def within(element: Element, outer: Frame, sizes: dict[str, str]) -> Viewport:
    """The viewport of an ``svg`` or ``symbol`` inside a drawing; ``sizes`` are a use's own width and height."""

    def length(key: str, whole: float, usual: str) -> float:
        text = sizes.get(key) or element.attributes.get(key) or usual
        found = length_px(text, whole)
        return whole if found is None else found

    is_symbol = element.tag == "symbol"
    x = 0.0 if is_symbol else length("x", outer.width, "0")
    y = 0.0 if is_symbol else length("y", outer.height, "0")
    frame = Frame(x, y, length("width", outer.width, "100%"), length("height", outer.height, "100%"))
    box = view_box(element)
    if box is None:
        return Viewport(frame, Frame(0, 0, frame.width, frame.height), Affine.move(x, y))
    return Viewport(frame, box, fitted(box, frame, element.attributes.get("preserveAspectRatio", "")))


def fitted(box: Frame, frame: Frame, how: str) -> Affine:
    """The map that lays a box of inner units into a frame: stretched, as large as fits, or as large as covers."""
    if not (box.width > 0 and box.height > 0):
        return IDENTITY
    words = [word for word in how.split() if word != "defer"]
    align = words[0] if words else _USUAL_ALIGN
    across, down = frame.width / box.width, frame.height / box.height
    if align == "none":
        return Affine.move(frame.x, frame.y) @ Affine.scale(across, down) @ Affine.move(-box.x, -box.y)
    scale = max(across, down) if "slice" in words[1:] else min(across, down)
    spare_x, spare_y = frame.width - box.width * scale, frame.height - box.height * scale
    share_x, share_y = _SHARES.get(align[1:4], 0.5), _SHARES.get(align[5:8], 0.5)
    move = Affine.move(frame.x + spare_x * share_x, frame.y + spare_y * share_y)
    return move @ Affine.scale(scale) @ Affine.move(-box.x, -box.y)
