"""No letter has an edge that only a set operation could have meant."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.geometry.boolean import to_polygon
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Cubic, Line, Path
from heraldry.lettering.alphabets import STYLES, LetterParameters
from heraldry.lettering.alphabets.contour import rectangle
from heraldry.lettering.alphabets.crumbs import CRUMB, without_crumbs
from heraldry.lettering.alphabets.parametric import shape

CROSSED = "69&23$sæ@"
"""Letters of strokes that cross at slight angles, where crumbs come from."""


def edges(outline: Outline) -> np.ndarray:
    return np.hypot(*(outline.data[:, 3] - outline.data[:, 0]).T)


def closed(outline: Outline) -> bool:
    """Whether each edge begins where the one before it ends."""
    return all(
        one.end == other.start
        for path in outline.paths
        for one, other in zip(path.segments, (*path.segments[1:], path.segments[0]), strict=True)
    )


def through(*points: tuple[float, float]) -> Path:
    return Path.through([Point(*point) for point in points], closed=True)


def test_an_outline_without_crumbs_is_left_alone() -> None:
    letter = rectangle(0.0, 0.0, 0.2, 1.0)
    assert without_crumbs(letter) is letter


@pytest.mark.parametrize("first", range(6))
def test_a_crumb_between_straight_edges_is_taken_out(first: int) -> None:
    """Wherever in its ring it stands, also where the ring begins; and a second ring is not touched."""
    corners = [(0.0, 0.0), (0.5, 0.0), (0.5, 0.3), (0.5 - CRUMB / 3, 0.3 + CRUMB / 3), (0.5, 1.0), (0.0, 1.0)]
    hole = through((0.1, 0.1), (0.1, 0.2), (0.2, 0.2))
    crumbly = Outline.of([through(*corners[first:], *corners[:first]), hole])
    clean = without_crumbs(crumbly)
    assert [len(path.segments) for path in clean.paths] == [5, 3]
    assert edges(clean).min() >= CRUMB and closed(clean)
    assert clean.paths[1] == hole
    assert to_polygon(clean).symmetric_difference(to_polygon(crumbly)).area < CRUMB


def test_a_curve_follows_the_straight_edge_beside_it() -> None:
    """The stem keeps its place to the last bit, the bend gives way by less than the crumb."""
    foot, head, crumb = Point(0.0, 0.0), Point(0.0, 0.5), Point(CRUMB / 2, 0.5)
    bend = Cubic(crumb, Point(0.0, 0.8), Point(0.2, 1.0), Point(0.5, 1.0))
    ring = Path((Line(foot, head), Line(head, crumb), bend, Line(bend.end, foot)), closed=True)
    stem, moved, back = without_crumbs(Outline.of([ring])).paths[0].segments
    assert stem == Line(foot, head) and back == ring.segments[3]
    assert moved == Cubic(head, bend.control1, bend.control2, bend.end)


@given(
    style=st.sampled_from(sorted(STYLES)),
    places=st.tuples(*[st.floats(0.0, 1.0)] * 3),
    character=st.sampled_from(CROSSED),
)
@settings(max_examples=150, deadline=None, derandomize=True)
def test_letters_have_no_crumbs_anywhere_in_their_range(
    style: str, places: tuple[float, float, float], character: str
) -> None:
    sound = STYLES[style].sound
    asked = {
        name: sound[name].least + place * (sound[name].most - sound[name].least)
        for name, place in zip(("stem", "width", "contrast"), places, strict=True)
    }
    outline, _ = shape(STYLES[style], STYLES[style].completed(LetterParameters(**asked)), character)
    assert edges(outline).min() >= CRUMB * 0.9  # an edge gives up a little where its neighbour was a crumb
    assert closed(outline)
