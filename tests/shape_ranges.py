"""What shapes promise of their size and form, and the ranges of their measures in which they must come out."""

from __future__ import annotations

from typing import Any, get_args

from hypothesis import strategies as st

from heraldry.geometry.corners import Corner
from heraldry.geometry.point import Point
from heraldry.shapes.bands import End
from heraldry.shapes.shield_outlines import CrestOutline

ZIGZAG = (Point(-10.0, -4.0), Point(-3.0, 4.0), Point(3.0, -4.0), Point(10.0, 4.0))

# Main measure first: width or radius, and what it promises to be: box width and height over it (None: not said).
PROPORTIONED = {
    "circle": (2.0, 2.0),
    "ring": (2.0, 2.0),
    "rings": (2.0, 2.0),
    "ellipse": (1.0, 0.62),
    "sector": (None, None),
    "broken_ring": (None, None),
    "box": (1.0, 1.0),
    "diamond": (1.0, 1.0),
    "trapezoid": (1.0, 0.4),
    "shield": (1.0, 1.18),
    "keystone": (1.0, 0.96),
    "band": (1.0, 0.12),
    "slants": (None, 0.16),
    "rope": (2.0, 2.0),
    "beads": (2.0, 2.0),
    "scallop": (2.0, 2.0),
    "seal": (2.0, 2.0),
    "oval": (1.0, 0.64),
    "octagon": (1.0, 1.0),
    "cartouche": (1.0, 0.4),
    "flag": (1.0, 0.6),
    "pennant": (1.0, 0.42),
    "ribbon": (1.0, None),
    "arrow": (1.0, 0.42),
    "chevron": (1.0, None),
    "wings": (1.0, None),
    "wing": (1.0, 0.56),
    "speed_wings": (1.0, 0.26),
    "gear": (2.0, 2.0),
    "wheel": (2.0, 2.0),
    "rail_section": (0.86, 1.0),
    "track": (1.0, None),
    "vanishing_track": (1.0, None),
    "crossed": (None, None),
    "sunrise": (2.0, 1.0),
    "mountains": (1.0, 0.52),
    "waves": (1.0, None),
    "pine": (0.56, 1.0),
    "compass_rose": (2.0, 2.0),
    "crest": (1.0, 1.2),
}
EVEN = {
    *("circle", "ring", "rings", "ellipse", "sector", "broken_ring", "box", "diamond", "trapezoid", "shield"),
    *("keystone", "band"),
    *("oval", "octagon", "cartouche", "ribbon", "chevron", "wings", "speed_wings", "gear", "wheel", "seal"),
    *("rail_section", "track", "vanishing_track", "sunrise", "pine", "crest", "scallop", "waves", "beads"),
}
"""Kinds whose left half is the mirror image of their right half."""

SHARE = st.floats(0.0, 1.0).map(lambda value: round(value, 3))


def between(low: float, high: float) -> st.SearchStrategy[float]:
    return SHARE.map(lambda share: low + share * (high - low))


# Ranges in which every combination has to come out; each main measure is 20 mm.
RANGES: dict[str, dict[str, st.SearchStrategy[Any]]] = {
    "circle": {},
    "ring": {"width": between(0.1, 19.9)},
    "rings": {"width": between(0.2, 2.0), "gap": between(0.2, 2.0), "count": st.integers(1, 5)},
    "ellipse": {"height": between(1.0, 60.0), "turn": between(-180, 180)},
    "sector": {"width": between(0.2, 20.0), "middle": between(-180, 180), "sweep": between(2, 358)},
    "box": {
        "height": between(6.0, 40.0),
        "corner": st.sampled_from(get_args(Corner)),
        "radius": between(0.0, 2.0),
        "slant": between(-40, 40),
    },
    "diamond": {"height": between(8.0, 40.0), "corner": st.sampled_from(get_args(Corner)), "radius": between(0, 1.5)},
    "regular": {"regular": st.integers(3, 60), "radius": between(8.0, 20.0), "corner_radius": between(0.0, 3.0)},
    "star": {"star": st.integers(3, 60), "radius": between(8.0, 20.0), "inner": between(2.0, 7.9)},
    "polyline": {"polyline": st.just(ZIGZAG), "width": between(0.2, 1.5), "round_ends": st.booleans()},
    "polygon": {"polygon": st.just(ZIGZAG), "corner": st.sampled_from(get_args(Corner)), "radius": between(0, 0.5)},
    "run": {"run": st.just(ZIGZAG), "width": between(0.2, 1.5), "radius": between(0.8, 1.5)},
    "route": {
        "route": st.just(ZIGZAG),
        "width": between(0.2, 1.5),
        "stops": between(0.0, 3.0),
        "smooth": st.booleans(),
        "ends": st.sampled_from(("flat", "round")),
    },
    "shield": {"height": between(21.0, 40.0), "top": st.sampled_from(("flat", "arched", "hollow"))},
    "keystone": {
        "height": between(10.0, 30.0),
        "foot": between(4.0, 17.0),
        "shoulder": between(1.0, 4.0),
        "lip": between(0.3, 1.4),
        "radius": between(0.0, 0.3),
    },
    "band": {
        "height": between(1.0, 6.0),
        "left": st.sampled_from(get_args(End)),
        "right": st.sampled_from(get_args(End)),
        "reach": between(0.2, 3.0),
    },
    "slants": {
        "height": between(1.0, 8.0),
        "stripe": between(1.0, 4.0),
        "slant": between(-60, 60),
        "meeting": st.booleans(),
    },
    "stripes": {
        "stripes": st.integers(1, 7),
        "length": between(12.0, 40.0),
        "width": between(0.3, 2.0),
        "gap": between(0.1, 1.0),
        "step": between(0.0, 1.5),
        "taper": between(0.6, 1.3),
        "tip": between(0.0, 1.0),
        "slant": between(-45, 45),
        "toward": st.sampled_from(("left", "right")),
    },
    "rays": {
        "rays": st.integers(2, 60),
        "outer": between(10.0, 20.0),
        "inner": between(0.5, 9.0),
        "share": between(0.1, 0.9),
        "short": between(0.3, 1.0),
    },
    "rope": {"width": between(0.6, 6.0), "gap": between(0.02, 0.12)},
    "beads": {"size": between(0.3, 4.0)},
    "broken_ring": {
        "width": between(0.3, 5.0),
        "count": st.integers(1, 12),
        "gap": between(0.1, 2.0),
        "ends": st.sampled_from(("flat", "round")),
    },
    "scallop": {
        "count": st.integers(6, 60),
        "width": between(9.0, 15.0),
        "lobes": st.sampled_from(("outward", "inward")),
    },
    "seal": {"count": st.integers(8, 120), "notch": st.sampled_from(("pointed", "square")), "width": between(8, 15)},
    "oval": {"height": between(8.0, 19.0), "width": between(0.1, 1.2)},
    "octagon": {"height": between(10.0, 30.0), "cut": between(0.5, 9.0), "rise": between(0.5, 4.5)},
    "trapezoid": {"height": between(2.0, 10.0), "left": between(-30, 40), "right": between(-40, 30)},
    "cartouche": {"height": between(6.0, 14.0), "ends": st.sampled_from(("hollow", "stepped", "round", "pointed"))},
    "flag": {"tip": between(4.0, 12.0), "notch": between(0.0, 12.0), "wave": between(-3, 3), "swings": between(0.2, 3)},
    "pennant": {"tip": between(0.0, 8.0), "notch": between(0.0, 9.0), "wave": between(-2, 2)},
    "ribbon": {
        "height": between(2.0, 4.0),
        "tail": between(1.5, 4.0),
        "drop": between(-1.0, 1.0),
        "radius": st.one_of(st.none(), between(8.0, 60.0)),
        "bends": st.sampled_from(("up", "down")),
    },
    "arrow": {"width": between(0.5, 3.0), "head": between(6.5, 14.0), "barb": between(0, 1.5), "double": st.booleans()},
    "chevron": {"rise": between(0.5, 20.0), "width": between(0.3, 6.0), "count": st.integers(1, 6)},
    "wings": {"height": between(4.0, 14.0), "feathers": st.integers(3, 12), "rows": st.integers(1, 3)},
    "wing": {"height": between(6.0, 20.0), "feathers": st.integers(3, 12), "rows": st.integers(1, 3)},
    "speed_wings": {"height": between(2.0, 6.0), "count": st.integers(1, 6), "taper": between(0.0, 1.0)},
    "gear": {"teeth": st.integers(8, 120), "bore": between(0.0, 12.0), "pressure": between(14.0, 22.0)},
    "wheel": {"spokes": st.integers(3, 24), "rim": between(1.0, 4.0), "weight": between(20.0, 120.0)},
    "rail_section": {"foot": between(8.0, 20.0), "head": between(5.0, 12.0), "web": between(1.0, 3.0)},
    "track": {"gauge": between(3.0, 8.0), "count": st.integers(1, 16), "gap": between(0.0, 0.4)},
    "vanishing_track": {"height": between(8, 40), "count": st.integers(1, 24), "reach": between(0.3, 0.93)},
    "crossed": {
        "width": between(0.5, 3.0),
        "angle": between(40.0, 140.0),
        "ends": st.sampled_from(("flat", "round")),
        "over": st.sampled_from(("rising", "falling")),
    },
    "sunrise": {"count": st.integers(2, 25), "share": between(0.1, 0.9), "short": between(0.3, 1.0)},
    "compass_rose": {"points": st.sampled_from((4, 8, 16)), "waist": between(3.0, 7.0), "line": between(0.0, 0.4)},
    "mountains": {"count": st.integers(1, 5), "snow": between(0.0, 0.6), "line": between(0.1, 0.5)},
    "waves": {
        "rows": st.integers(1, 5),
        "count": st.integers(1, 8),
        "form": st.sampled_from(("rolling", "crested")),
    },
    "pine": {"tiers": st.integers(1, 9), "trunk": between(0.0, 8.0), "count": st.integers(1, 5)},
    "crest": {"height": between(21.2, 39.8), "outline": st.sampled_from(get_args(CrestOutline))},
}
