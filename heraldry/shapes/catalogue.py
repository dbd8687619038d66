"""Every kind of shape drawn once, about 20 mm wide, for a page that shows them all."""

from __future__ import annotations

from typing import Any

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.shapes.table import SHAPES, Drawn

_ZIGZAG = (Point(-10, -4), Point(-3, 4), Point(3, -4), Point(10, 4))
_LINE_OF_TOWNS = (Point(-10, -3), Point(-4, 0), Point(2, -1), Point(10, 4))

EXAMPLES: dict[str, dict[str, Any]] = {
    "arrow": {"arrow": 20.0, "barb": 1.0},
    "beads": {"beads": 10.0},
    "box": {"box": 20.0, "height": 9.0, "slant": 20.0},
    "broken_ring": {"broken_ring": 10.0, "width": 1.2, "count": 6},
    "cartouche": {"cartouche": 20.0},
    "chevron": {"chevron": 18.0, "rise": 6.0, "width": 2.0, "count": 3},
    "circle": {"circle": 10.0},
    "compass_rose": {"compass_rose": 10.0},
    "crest": {"crest": 17.0, "outline": "bellied"},
    "crossed": {"crossed": 22.0},
    "diamond": {"diamond": 20.0, "height": 14.0},
    "ellipse": {"ellipse": 20.0, "height": 12.0},
    "flag": {"flag": 20.0, "notch": 4.0, "wave": 1.2},
    "gear": {"gear": 10.0},
    "keystone": {"keystone": 18.0, "height": 18.0, "shoulder": 4.0, "lip": 1.5},
    "band": {"band": 20.0, "height": 3.0, "right": "point"},
    "slants": {"slants": 20.0, "height": 4.0, "stripe": 2.0},
    "run": {"run": (Point(-10, -3), Point(0, -3), Point(0, 3), Point(10, 3)), "width": 1.5, "radius": 2.0},
    "lines": {"lines": "EVERY MILE\nON TIME", "cap_height": 3.0},
    "monogram": {"monogram": "UM", "height": 16.0},
    "mountains": {"mountains": 20.0},
    "octagon": {"octagon": 18.0},
    "oval": {"oval": 20.0, "width": 1.2},
    "path": {"path": "M 0 0 C 6 -9 14 -9 20 0 L 14 5 L 6 5 Z"},
    "pennant": {"pennant": 20.0, "wave": 0.8},
    "pine": {"pine": 16.0, "count": 3},
    "polygon": {"polygon": (Point(-10, -5), Point(10, -5), Point(6, 5), Point(-2, 7))},
    "polyline": {"polyline": _ZIGZAG, "width": 1.2},
    "rail_section": {"rail_section": 18.0},
    "rays": {"rays": 16, "inner": 3.0, "outer": 10.0},
    "region": {"region": ("US-VT",), "height": 20.0},
    "regular": {"regular": 6, "radius": 10.0},
    "ribbon": {"ribbon": 22.0, "radius": 20.0},
    "ring": {"ring": 10.0, "width": 1.5},
    "rings": {"rings": 10.0, "width": 1.0, "gap": 0.8, "count": 3},
    "rope": {"rope": 10.0},
    "route": {"route": _LINE_OF_TOWNS, "width": 0.8, "stops": 2.0, "smooth": True},
    "scallop": {"scallop": 10.0, "width": 3.0},
    "seal": {"seal": 10.0},
    "sector": {"sector": 12.0, "width": 4.0, "sweep": 110.0},
    "shield": {"shield": 17.0, "height": 20.0, "top": "hollow"},
    "speed_wings": {"speed_wings": 22.0},
    "star": {"star": 5, "radius": 10.0},
    "stripes": {"stripes": 4, "length": 20.0, "width": 1.4, "gap": 0.9, "step": 2.5, "slant": 20.0},
    "sunrise": {"sunrise": 10.0},
    "text": {"text": "NORTH", "cap_height": 5.0},
    "track": {"track": 20.0},
    "trapezoid": {"trapezoid": 20.0, "height": 8.0},
    "vanishing_track": {"vanishing_track": 18.0},
    "waves": {"waves": 20.0},
    "wheel": {"wheel": 10.0, "weight": 90.0},
    "wing": {"wing": 20.0},
    "wings": {"wings": 22.0},
}
"""Arguments of an example of each kind, in millimetres and degrees; places are points."""


def examples() -> tuple[tuple[str, str, Outline], ...]:
    """The name, the summary and an example of every kind of shape, in the order of their names."""
    return tuple((kind.name, kind.summary, example(kind.name)) for _, kind in sorted(SHAPES.items()))


def example(name: str) -> Outline:
    """The example of a kind; raises KeyError for a kind that has none."""
    drawn = SHAPES[name].draw(**EXAMPLES[name])
    return drawn.outline if isinstance(drawn, Drawn) else drawn
