"""What no shape can be drawn with is refused at once, and it is said what would be right."""

from __future__ import annotations

import math
import time
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError, HeraldryError
from heraldry.geometry.point import Point
from heraldry.shapes import SHAPES
from heraldry.shapes.catalogue import arguments_of
from heraldry.shapes.table import choices, value_kind
from tests.cleanness import assert_clean, draw
from tests.shape_ranges import RANGES, between

NONSENSE = [
    ("circle", {"circle": 0.0}, "circle is 0, it must be more than 0"),
    ("ring", {"ring": 10.0, "width": 10.0}, "less than the radius 10 mm"),
    ("rings", {"rings": 10.0, "width": 3.0, "gap": 1.0, "count": 3}, "need more than the radius 10 mm"),
    ("ellipse", {"ellipse": 10.0, "height": -1.0}, "height is -1"),
    ("sector", {"sector": 10.0, "sweep": 360.0}, "within 0 and 360"),
    ("box", {"box": 10.0, "slant": 85.0}, "between -80 and 80"),
    ("diamond", {"diamond": -2.0, "height": 3.0}, "diamond is -2"),
    ("regular", {"regular": 2, "radius": 5.0}, "regular is 2, it must be at least 3"),
    ("star", {"star": 5, "radius": 5.0, "inner": 6.0}, "less than the radius 5 mm"),
    ("polygon", {"polygon": (Point(0, 0), Point(1, 1))}, "needs at least 3"),
    ("polygon", {"polygon": (Point(0, 0), Point(1, 1), Point(3, 3))}, "nothing is left of this polygon"),
    ("polyline", {"polyline": (Point(1, 1), Point(1, 1)), "width": 1.0}, "at least 2 different points"),
    ("run", {"run": (Point(1, 1), Point(1, 1)), "width": 1.0}, "at least 2 different points"),
    ("route", {"route": (Point(1, 1),), "width": 1.0}, "at least 2 different places"),
    ("route", {"route": (Point(0.0, 0.0),) * 9000, "width": 1.0}, "9000 places, at most 5000"),
    ("shield", {"shield": 10.0, "height": 4.0}, "make it taller"),
    ("shield", {"shield": 10.0, "top": "hollow", "rise": 3.0}, "hollow by at most 2.5 mm"),
    ("keystone", {"keystone": 10.0, "lip": 1.0}, "shoulder and lip go together"),
    ("band", {"band": 4.0, "height": 1.0, "left": "point", "right": "point", "reach": 3.0}, "do not fit a band"),
    ("slants", {"slants": 10.0, "slant": 85.0}, "between -80 and 80"),
    ("stripes", {"stripes": 4, "length": 10.0, "step": 4.0}, "leaves nothing of the last"),
    ("stripes", {"stripes": 900, "length": 10.0, "taper": 0.5}, "a taper nearer to 1"),
    ("stripes", {"stripes": 900, "length": 10.0, "taper": 4.0}, "a taper nearer to 1"),
    ("stripes", {"stripes": 4, "length": 10.0, "tip": 1.5}, "within 0 to 4, 0 to 1"),
    ("rays", {"rays": 1, "outer": 10.0}, "rays is 1"),
    ("rays", {"rays": 8, "outer": 10.0, "short": 0.0}, "within 0 and 1"),
    ("arrow", {"arrow": 20.0, "width": 6.0, "head": 7.0, "barb": 2.0}, "reach through the head"),
    ("rope", {"rope": 10.0, "width": 8.0}, "at most 7 mm thick"),
    ("rope", {"rope": 10.0, "width": 0.01}, "at most 1000 are drawn"),
    ("beads", {"beads": 10.0, "size": 0.01}, "at most 1000 are drawn"),
    ("scallop", {"scallop": 10.0, "depth": 3.0}, "less than 1.2"),
    ("ribbon", {"ribbon": 24.0, "height": 0.2, "radius": 20.0, "fold": 2.0}, "closes the gap"),
    ("wing", {"wing": 10.0, "height": 30.0}, "1 to 20 mm high"),
    ("wheel", {"wheel": 10.0, "spokes": 500}, "3 to 120"),
    ("track", {"track": 100.0, "tie": 0.01}, "at most 1000 are drawn"),
    ("mountains", {"mountains": 90.0, "peaks": (Point(0.0, 9.0),) * 41}, "at most 40"),
    ("waves", {"waves": 10.0, "height": 4.0}, "at most 1.25 mm high"),
    ("waves", {"waves": 10.0, "rows": 900, "count": 900}, "at most 1000 are drawn"),
    ("waves", {"waves": 10.0, "gap": 0.05}, "run into one another"),
    ("pine", {"pine": 10.0, "width": 20.0}, "branches 8.8 mm high"),
    ("rope", {"rope": 10.0, "width": 12.0}, "width is 12 mm"),
    ("rope", {"rope": 10.0, "strands": 200, "gap": 1.0}, "leave nothing of the strands"),
    ("beads", {"beads": 1.0, "size": 3.0}, "need a radius of more than 1.5 mm"),
    ("broken_ring", {"broken_ring": 10.0, "width": 1.0, "count": 40, "gap": 2.0}, "40 gaps of 2 mm leave nothing"),
    ("broken_ring", {"broken_ring": 10.0, "width": 10.0}, "less than the radius 10 mm"),
    ("scallop", {"scallop": 10.0, "count": 2}, "count is 2, it must be at least 3"),
    ("scallop", {"scallop": 10.0, "depth": 10.0}, "depth is 10 mm"),
    ("scallop", {"scallop": 10.0, "width": 0.1}, "more than the depth"),
    ("seal", {"seal": 10.0, "depth": 11.0}, "less than the radius 10 mm"),
    ("oval", {"oval": 10.0, "height": 10.0}, "an oval lies"),
    ("oval", {"oval": 10.0, "width": 4.0}, "width is 4 mm"),
    ("octagon", {"octagon": 10.0, "cut": 5.0}, "cut less off"),
    ("trapezoid", {"trapezoid": 10.0, "height": 20.0, "left": 45.0, "right": -45.0}, "meet below the height"),
    ("trapezoid", {"trapezoid": 10.0, "height": 2.0, "left": 85.0}, "between -80 and 80"),
    ("cartouche", {"cartouche": 10.0, "height": 4.0, "ends": "hollow", "depth": 3.0}, "at most 2 mm do"),
    ("flag", {"flag": 10.0, "notch": 10.0}, "less than the length 10 mm"),
    ("flag", {"flag": 10.0, "wave": 1.0, "swings": 20.0}, "swings is 20"),
    ("pennant", {"pennant": 10.0, "tip": 6.0}, "between 0 and the height 4.2 mm"),
    ("ribbon", {"ribbon": 10.0, "tail": 5.0}, "has no room for tails of 5 mm"),
    ("ribbon", {"ribbon": 24.0, "radius": 3.0}, "bends round more than"),
    ("arrow", {"arrow": 10.0, "width": 6.0, "head": 5.0}, "more than the width of the shaft"),
    ("arrow", {"arrow": 10.0, "point": 9.0, "barb": 2.0}, "leave no shaft"),
    ("arrow", {"arrow": 10.0, "double": True, "notch": 1.0}, "a double arrow has no notch"),
    ("chevron", {"chevron": 10.0, "count": 0}, "count is 0"),
    ("wings", {"wings": 10.0, "apart": 12.0}, "less than the span 10 mm"),
    ("wing", {"wing": 10.0, "rows": 4}, "1 to 3 rows"),
    ("wing", {"wing": 10.0, "gap": 2.0}, "leave nothing of 7 feathers"),
    ("speed_wings", {"speed_wings": 10.0, "count": 9, "step": 3.0}, "make it longer"),
    ("gear", {"gear": 10.0, "teeth": 3}, "6 to 240"),
    ("gear", {"gear": 10.0, "bore": 9.5}, "less than the radius at the roots"),
    ("gear", {"gear": 10.0, "pressure": 35.0}, "between 10 and 30"),
    ("wheel", {"wheel": 10.0, "hub": 9.0}, "must grow in this order"),
    ("wheel", {"wheel": 10.0, "spokes": 60, "spoke": 1.0}, "leave no room"),
    ("wheel", {"wheel": 10.0, "weight": 200.0}, "to clear the hub"),
    ("rail_section", {"rail_section": 10.0, "web": 5.0}, "well below the head"),
    ("track", {"track": 10.0, "count": 30, "tie": 0.5}, "30 ties"),
    ("vanishing_track", {"vanishing_track": 10.0, "reach": 1.0}, "within 0 and 1"),
    ("vanishing_track", {"vanishing_track": 10.0, "gauge": 9.0}, "needs ties longer than"),
    ("crossed", {"crossed": 10.0, "angle": 5.0}, "15 to 165 degrees"),
    ("crossed", {"crossed": 10.0, "width": 6.0}, "too short to cross"),
    ("sunrise", {"sunrise": 10.0, "disc": 9.8}, "must be smaller than 10 mm"),
    ("mountains", {"mountains": 10.0, "count": 9}, "1 to 5 mountains"),
    ("mountains", {"mountains": 10.0, "peaks": (Point(9.0, 4.0),)}, "a peak at \\(9, 4\\) mm"),
    ("mountains", {"mountains": 10.0, "snow": 1.0}, "snow is 1"),
    ("waves", {"waves": 10.0, "count": 12, "width": 2.0, "height": 0.8}, "cannot follow waves"),
    ("pine", {"pine": 10.0, "tiers": 0}, "1 to 12 tiers"),
    ("pine", {"pine": 10.0, "count": 6}, "1 to 5 pines"),
    ("compass_rose", {"compass_rose": 10.0, "points": 6}, "4, 8 or 16"),
    ("compass_rose", {"compass_rose": 10.0, "line": 2.0}, "make it thinner"),
    ("crest", {"crest": 10.0, "height": 30.0}, "10.5 to 20 mm tall"),
]


@pytest.mark.parametrize(("kind", "arguments", "message"), NONSENSE, ids=lambda value: str(value)[:40])
def test_nonsense_is_told_what_would_be_right(kind, arguments, message):
    with pytest.raises(GeometryError, match=message):
        draw(kind, **arguments)


def test_every_family_has_had_nonsense():
    assert {kind for kind, _, _ in NONSENSE} == set(RANGES)


# ---- what no shape can be drawn with, whatever its kind

HOSTILE = {
    "length": (math.nan, math.inf, -math.inf, 1e300),
    "number": (math.nan, math.inf, 1e300),
    "angle": (math.nan, -math.inf, 1e300),
    "direction": (math.nan,),
    "count": (10**9, -(10**9)),
    "place": (Point(math.nan, 0.0), Point(0.0, math.inf), Point(1e300, 0.0)),
    "places": ((Point(math.nan, 0.0), Point(1.0, 1.0), Point(2.0, 0.0)),),
}
AT_ONCE_S = 1.0
"""Processor time in which a refusal must come."""


@pytest.mark.parametrize("kind", sorted(SHAPES))
def test_what_is_no_measure_is_refused_at_once(kind):
    for key in SHAPES[kind].parameters:
        for value in HOSTILE.get(value_kind(SHAPES[kind].annotations[key])[0], ()):
            begun = time.process_time()
            with pytest.raises(HeraldryError):
                draw(kind, **{**arguments_of(kind), key: value})
            assert time.process_time() - begun < AT_ONCE_S


ANY_LENGTH = st.one_of(st.sampled_from((0.0, 1e-9, -3.0, 20.0)), between(0.0, 0.5), between(0.0, 25.0))
WILD: dict[str, st.SearchStrategy[Any]] = {
    "length": ANY_LENGTH,
    "number": st.one_of(st.sampled_from((0.0, 1.0)), between(-1.0, 4.0)),
    "angle": st.one_of(st.sampled_from((0.0, 90.0)), between(-180.0, 360.0)),
    "count": st.one_of(st.integers(-1, 6), st.integers(7, 60)),
    "flag": st.booleans(),
}


def wildly(kind: str) -> st.SearchStrategy[dict[str, Any]]:
    """Any measures for any of the keys, far beyond what is sensible."""
    keys: dict[str, st.SearchStrategy[Any]] = {}
    for key, annotation in SHAPES[kind].annotations.items():
        of, words = value_kind(annotation) if key != "return" else ("", None)
        if of in WILD:
            keys[key] = WILD[of]
        elif of == "choice":
            keys[key] = st.sampled_from(choices(words))
    return st.fixed_dictionaries({}, optional=keys)


@pytest.mark.parametrize("kind", sorted(RANGES))
@settings(max_examples=40, deadline=None, derandomize=True)
@given(data=st.data())
def test_wild_measures_are_drawn_clean_or_refused(kind, data):
    try:
        drawn = draw(kind, **{**arguments_of(kind), **data.draw(wildly(kind))})
    except HeraldryError as refused:
        assert str(refused)
    else:
        assert_clean(drawn)
