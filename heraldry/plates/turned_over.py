"""Art turned over, as in a mirror, with its lettering still to be read.

The whole art is mirrored at the very end, so lettering is drawn beforehand as its own mirror image: mirrored twice,
it reads again, at the mirrored place. A line of text is mirrored by its keys (place, anchor, turn, the angle that it
has on a circle), so that it also slants and bends as the art round it does; other lettering about its own middle.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from heraldry.geometry.measure import bounds
from heraldry.geometry.point import ORIGIN, Point
from heraldry.lettering.setting.lay import Anchor
from heraldry.shapes.table import Drawn, ShapeKind, as_drawn, value_kind

OTHER_ANCHOR: dict[Anchor, Anchor] = {"start": "end", "middle": "middle", "end": "start"}
STRAIGHT_UP_DEG = 90.0
"""Where a text round a circle stands by itself."""


def draw_shape(kind: ShapeKind, arguments: Mapping[str, Any]) -> Drawn:
    """A shape drawn as it is."""
    return as_drawn(kind.draw(**arguments))


def draw_to_be_turned_over(kind: ShapeKind, arguments: Mapping[str, Any]) -> Drawn:
    """A shape as it must be for art that will be mirrored: lettering as its own mirror image, all else as it is."""
    if not is_lettering(kind):
        return draw_shape(kind, arguments)
    if kind.name == "text":
        drawn = draw_shape(kind, _mirrored_line(arguments))
        return drawn.with_outline(drawn.outline.flipped())
    drawn = draw_shape(kind, arguments)
    return drawn.with_outline(drawn.outline.flipped(bounds(drawn.outline).centre))


def is_lettering(kind: ShapeKind) -> bool:
    """Whether a shape is made of letters: whether it takes an alphabet."""
    return any(value_kind(kind.annotations[key])[0] == "alphabet" for key in kind.parameters)


def _mirrored_line(arguments: Mapping[str, Any]) -> dict[str, Any]:
    mirrored = dict(arguments)
    at, circle = arguments.get("at", ORIGIN), arguments.get("round")
    mirrored["at"] = Point(-at.x, at.y)
    mirrored["anchor"] = OTHER_ANCHOR[arguments.get("anchor", "middle")]
    mirrored["turn"] = -arguments.get("turn", 0.0)
    if circle is not None:
        mirrored["round"] = replace(circle, middle=2 * STRAIGHT_UP_DEG - circle.middle)
    if arguments.get("along") is not None:
        mirrored["along"] = arguments["along"].in_mirror()
    return mirrored
