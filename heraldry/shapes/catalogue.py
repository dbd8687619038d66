"""Every kind of shape drawn for a page that shows them all: an example about 20 mm wide, and what else it can be."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.shapes.drawing.shape import LANTERN
from heraldry.shapes.region.examples import map_examples
from heraldry.shapes.table import SHAPES, ShapeKind, as_drawn

Arguments = Mapping[str, Any]

_ZIGZAG = (Point(-10, -4), Point(-3, 4), Point(3, -4), Point(10, 4))
_LINE_OF_TOWNS = (Point(-10, -3), Point(-4, 0), Point(2, -1), Point(10, 4))

EXAMPLES: dict[str, Arguments] = {
    "arrow": {"arrow": 20.0},
    "band": {"band": 20.0, "height": 4.0, "right": "point"},
    "beads": {"beads": 10.0},
    "box": {"box": 20.0, "height": 12.0},
    "broken_ring": {"broken_ring": 10.0},
    "cartouche": {"cartouche": 20.0},
    "chevron": {"chevron": 18.0, "count": 3, "rise": 6.0, "width": 2.0},
    "circle": {"circle": 10.0},
    "compass_rose": {"compass_rose": 10.0},
    "crest": {"crest": 17.0, "outline": "bellied"},
    "crossed": {"crossed": 22.0},
    "diamond": {"diamond": 20.0},
    "drawing": {"drawing": LANTERN, "width": 13.0},
    "ellipse": {"ellipse": 20.0},
    "flag": {"flag": 20.0, "notch": 4.0, "wave": 1.2},
    "gear": {"gear": 10.0},
    "keystone": {"keystone": 18.0},
    "lines": {"lines": "EVERY MILE\nON TIME", "cap_height": 3.0},
    "monogram": {"monogram": "UM", "height": 16.0},
    "mountains": {"mountains": 20.0},
    "octagon": {"octagon": 18.0},
    "oval": {"oval": 20.0, "width": 1.4},
    "path": {"path": "M 0 0 C 6 -9 14 -9 20 0 L 14 5 L 6 5 Z"},
    "pennant": {"pennant": 20.0},
    "pine": {"pine": 16.0, "count": 3},
    "polygon": {"polygon": (Point(-10, -5), Point(10, -5), Point(6, 5), Point(-2, 7))},
    "polyline": {"polyline": _ZIGZAG, "width": 1.2},
    "rail_section": {"rail_section": 18.0},
    "rays": {"rays": 24, "outer": 10.0, "short": 0.8},
    "region": {"region": ("US-VT", "US-NH"), "height": 20.0},
    "regular": {"regular": 6, "radius": 10.0},
    "ribbon": {"ribbon": 24.0, "radius": 22.0},
    "ring": {"ring": 10.0},
    "rings": {"rings": 10.0},
    "rope": {"rope": 10.0},
    "route": {"route": _LINE_OF_TOWNS, "width": 0.8, "stops": 2.0, "smooth": True},
    "run": {"run": (Point(-10, -3), Point(0, -3), Point(0, 3), Point(10, 3)), "width": 1.5, "radius": 2.0},
    "scallop": {"scallop": 10.0},
    "seal": {"seal": 10.0},
    "sector": {"sector": 12.0, "sweep": 110.0},
    "shield": {"shield": 17.0},
    "slants": {"slants": 20.0, "height": 4.0},
    "speed_wings": {"speed_wings": 22.0},
    "star": {"star": 5, "radius": 10.0},
    "stripes": {"stripes": 4, "length": 20.0, "step": 2.0, "slant": 30.0},
    "sunrise": {"sunrise": 10.0},
    "text": {"text": "NORTH", "cap_height": 5.0},
    "track": {"track": 20.0},
    "trapezoid": {"trapezoid": 20.0},
    "vanishing_track": {"vanishing_track": 18.0},
    "waves": {"waves": 20.0},
    "wheel": {"wheel": 10.0, "weight": 90.0},
    "wing": {"wing": 20.0},
    "wings": {"wings": 22.0},
}
"""Arguments of an example of each kind that stands by itself, in millimetres and degrees; places are points."""

ALSO: dict[str, tuple[Arguments, ...]] = {
    "arrow": ({"barb": 1.6}, {"double": True}, {"notch": 2.0}, {"width": 0.9, "head": 5.0}),
    "band": ({"right": "slant"}, {"right": "hollow"}, {"right": "round"}, {"left": "slant", "right": "backslant"}),
    "beads": ({"count": 24}, {"size": 1.6}, {"count": 12}, {"size": 2.8, "count": 8}),
    "box": ({"slant": 20.0}, {"corner": "round", "radius": 2.5}, {"height": 20.0}, {"height": 20.0, "slant": 15.0}),
    "broken_ring": ({"count": 2}, {"count": 3, "ends": "round"}, {"count": 8, "gap": 3.0}, {"width": 3.0, "gap": 0.9}),
    "cartouche": ({"ends": "hollow"}, {"ends": "round"}, {"ends": "pointed"}, {"ends": "bracket"}),
    "chevron": ({"count": 1}, {"count": 2, "rise": 9.0}, {"count": 5, "width": 0.9}, {"turn": -90.0}),
    "compass_rose": ({"points": 4}, {"points": 16}, {"line": 0.0}, {"waist": 1.4}),
    "crest": (
        *({"outline": "round"}, {"outline": "square"}, {"outline": "pointed"}, {"outline": "kite"}),
        *({"outline": "oval"}, {"outline": "eared"}, {"outline": "scooped"}, {"height": 24.0}),
    ),
    "crossed": ({"angle": 60.0}, {"ends": "round"}, {"over": "falling"}, {"width": 1.2}),
    "diamond": (
        {"height": 13.0},
        {"height": 26.0},
        {"corner": "round", "radius": 2.0},
        {"corner": "cut", "radius": 2.0},
    ),
    "drawing": ({"colour": "#a3242b"}, {"colour": "#1a1816"}, {"part": "fount"}, {"turn": 30.0}),
    "ellipse": ({"height": 6.0}, {"height": 17.0}, {"turn": 30.0}, {"turn": 90.0}),
    "flag": ({"wave": 0.0}, {"notch": 0.0}, {"tip": 6.0}, {"swings": 2.0}),
    "gear": ({"teeth": 12}, {"teeth": 60}, {"bore": 0.0}, {"bore": 7.0}),
    "keystone": ({"shoulder": 3.4, "lip": 1.1}, {"foot": 7.0}, {"height": 13.0}, {"radius": 1.5}),
    "lines": ({"align": "left"}, {"align": "right"}, {"leading": 6.0}, {"stem": 0.32}),
    "monogram": ({"style": "stacked"}, {"style": "large"}, {"style": "row"}, {"frame": "ring"}),
    "mountains": ({"count": 1}, {"count": 2}, {"count": 5}, {"snow": 0.0}),
    "octagon": ({"height": 12.0}, {"cut": 2.5}, {"cut": 4.0, "rise": 8.0}, {"height": 24.0}),
    "oval": ({"width": None}, {"width": 0.6}, {"height": 10.0}, {"height": 17.0}),
    "pennant": ({"tip": 2.0}, {"tip": 4.0, "notch": 4.0}, {"wave": 1.0}, {"height": 13.0}),
    "pine": ({"count": 1}, {"count": 2}, {"tiers": 6, "count": 1}, {"count": 5}),
    "polygon": ({"corner": "round", "radius": 1.5}, {"corner": "cut", "radius": 1.5}),
    "polyline": ({"width": 3.0}, {"round_ends": True}, {"closed": True}),
    "rail_section": ({"foot": 10.0}, {"head": 11.0}, {"web": 5.0}, {"turn": 90.0}),
    "rays": ({"short": 1.0}, {"inner": 0.0, "short": 1.0}, {"rays": 8, "share": 0.3}, {"rays": 48, "inner": 7.0}),
    "region": ({"region": ("US-ME",)}, {"region": ("US-CO",)}, {"region": ("IS",)}, {"region": ("US-VT",)}),
    "regular": ({"regular": 3}, {"regular": 5}, {"regular": 8}, {"corner": "round", "corner_radius": 2.0}),
    "ribbon": ({"radius": None}, {"bends": "down"}, {"drop": -1.4}, {"radius": 11.0}),
    "ring": ({"width": 0.4}, {"width": 2.5}, {"width": 5.0}, {"width": 8.0}),
    "rings": ({"count": 3}, {"width": 1.6, "gap": 0.5}, {"count": 5}, {"count": 2, "width": 0.4}),
    "rope": ({"width": 2.4}, {"width": 0.8}, {"strands": 24}, {"gap": 0.4}),
    "route": ({"smooth": False}, {"stops": 0.0}, {"ends": "round", "stops": 0.0}, {"width": 2.0, "stops": 0.0}),
    "run": ({"radius": 1.0}, {"radius": 3.0}, {"width": 3.0}),
    "scallop": ({"width": 3.0}, {"lobes": "inward"}, {"count": 12}, {"count": 40, "width": 2.0}),
    "seal": ({"notch": "square"}, {"count": 24}, {"count": 96}, {"width": 2.0}),
    "sector": ({"sweep": 60.0, "width": 12.0}, {"width": 1.5}, {"sweep": 180.0}, {"middle": 0.0}),
    "shield": ({"top": "arched"}, {"top": "hollow"}, {"shoulder": 1.0}, {"height": 26.0}),
    "slants": ({"slant": -45.0}, {"slant": 20.0}, {"meeting": True}, {"stripe": 1.2}),
    "speed_wings": ({"count": 3}, {"count": 6}, {"taper": 0.0}, {"taper": 1.0, "apart": 0.6}),
    "star": ({"star": 4}, {"star": 6}, {"star": 8}, {"inner": 6.0}),
    "stripes": ({"taper": 0.7}, {"tip": 0.0, "slant": 0.0}, {"step": 0.0}, {"toward": "left", "slant": 0.0}),
    "sunrise": ({"count": 7}, {"short": 0.7}, {"disc": 5.5, "gap": 0.4}, {"share": 0.7}),
    "text": ({"turn": 20.0}, {"tracking": 1.5}, {"stem": 1.0}, {"stem": 0.6}),
    "track": ({"gap": 0.4}, {"count": 5}, {"gauge": 6.0}, {"turn": 30.0}),
    "trapezoid": ({"left": 30.0, "right": 30.0}, {"left": -20.0, "right": 20.0}, {"left": 0.0}, {"left": 35.0}),
    "vanishing_track": ({"count": 8}, {"reach": 0.6}, {"height": 8.0}, {"tie": 0.7}),
    "waves": ({"form": "crested"}, {"rows": 1}, {"count": 2}, {"count": 8, "rows": 4}),
    "wheel": ({"weight": 0.0}, {"spokes": 6}, {"spokes": 20}, {"hub": 4.0}),
    "wing": ({"rows": 1}, {"rows": 3}, {"feathers": 4}, {"toward": "left"}),
    "wings": ({"rows": 1}, {"feathers": 4}, {"apart": 0.0}, {"height": 9.0}),
}
"""What else a kind can be: what differs from its example."""

FAMILIES: dict[str, tuple[str, ...]] = {
    "Rings and discs": ("rounds", "borders"),
    "Frames and shields": ("polygons", "frames", "shields", "shield_outlines"),
    "Stripes, arrows, ribbons, wings": ("stripes", "bands", "arrows", "ribbons", "wings"),
    "Wheels, rails, land and sky": ("wheels", "rails", "nature"),
    "Maps": ("region", "following", "routes"),
    "Lettering and your own drawings": ("text", "lines", "monogram"),
}
"""Titles of families, each with the files (or folders) of shapes that belong to it; the last takes all others too."""


@dataclass(frozen=True)
class Family:
    """Kinds that are shown together."""

    title: str
    kinds: tuple[ShapeKind, ...]


def families() -> tuple[Family, ...]:
    """Every kind of shape once, by families, in the order in which their files stand there.

    >>> [kind.name for kind in families()[0].kinds][:3]
    ['circle', 'ring', 'rings']
    """
    *_, last = FAMILIES
    rank = {room: (title, i) for title, rooms in FAMILIES.items() for i, room in enumerate(rooms)}
    others = (last, len(FAMILIES[last]))
    ranked = sorted(SHAPES.values(), key=lambda kind: rank.get(_room(kind), others)[1])
    grouped = {title: [kind for kind in ranked if rank.get(_room(kind), others)[0] == title] for title in FAMILIES}
    return tuple(Family(title, tuple(kinds)) for title, kinds in grouped.items())


def _room(kind: ShapeKind) -> str:
    """The file or folder of shapes that a kind comes from."""
    return kind.draw.__module__.split(".")[2]


def arguments_of(name: str) -> Arguments:
    """What the example of a kind is drawn with; raises KeyError for a kind that has none."""
    return EXAMPLES[name] if name in EXAMPLES else map_examples()[name]


def example(name: str, **otherwise: Any) -> Outline:
    """The example of a kind, or one that differs from it; raises KeyError for a kind that has none."""
    return _drawn(name, {**arguments_of(name), **otherwise}) if otherwise else _plain(name)


@cache
def _plain(name: str) -> Outline:
    return _drawn(name, arguments_of(name))


def _drawn(name: str, arguments: Arguments) -> Outline:
    return as_drawn(SHAPES[name].draw(**arguments)).outline
