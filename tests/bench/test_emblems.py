"""Emblems as they are drawn: how near the truth, how few nodes, and how much longer than flattened polygons alone.

Deviation is measured against polygons of a fiftieth of the deviation allowed; nodes are counted beside those of
skia-pathops on the same cubics; time is a ratio against flattening and combining polygons in the same run.
"""

from __future__ import annotations

import math
import time
from collections.abc import Callable

import pytest

from heraldry.geometry.boolean import SetExpression, combine, to_polygon
from heraldry.geometry.flatten import FLATTEN_TOLERANCE_MM
from heraldry.geometry.offset import offset
from heraldry.geometry.outline import Outline
from tests.emblems import emblems, scaled, straight_text
from tests.reference import SKIA_ARC_RAD, as_polygons, farthest, skia, skia_node_count

NATIVE_DEVIATION_MM = 0.00002
CUBIC_DEVIATION_MM = 0.0001
REFERENCE_MM = 0.000002
NODES_PER_SKIA_NODE = 1.05
TIMES_POLYGONS_ALONE = 8.0
"""Measured 2 to 5; small emblems are dominated by the fixed cost of some hundred array calls."""

HALO_MM = 0.2
HALO_NODES_PER_NODE = 2.0
HALO_REFERENCE_MM = 0.00003
"""The polygons beside it are as fine as the halo is true."""
HALO_TIMES_POLYGONS_ALONE = 15.0
"""Measured 8; the polygons have some ten thousand nodes in place of the curves."""

NAMES = tuple(emblems())


def deviation(outline: Outline, expression: SetExpression, reference_mm: float) -> float:
    return farthest(to_polygon(outline, reference_mm), as_polygons(expression, reference_mm))


def times_as_long(work: Callable[[], object], other: Callable[[], object], rounds: int = 15) -> float:
    """The fastest run of one over the fastest run of the other, in turns, so that both meet the same load."""
    fastest = [math.inf, math.inf]
    for _ in range(rounds):
        for i, call in enumerate((work, other)):
            start = time.perf_counter()
            call()
            fastest[i] = min(fastest[i], time.perf_counter() - start)
    return fastest[0] / fastest[1]


@pytest.mark.parametrize("name", NAMES)
def test_curves_lie_where_they_should(name: str) -> None:
    expression = emblems()[name]
    result = combine(expression)
    assert deviation(result.outline, expression, REFERENCE_MM) <= NATIVE_DEVIATION_MM
    assert (result.kept_joints, result.straightened_rings) == (0, 0)
    assert result.tolerance_mm == FLATTEN_TOLERANCE_MM


@pytest.mark.parametrize("name", NAMES)
def test_curves_as_cubics_lie_where_they_should_at_100_mm(name: str) -> None:
    expression = scaled(emblems()[name], 4.0)
    cubics = combine(expression).outline.with_arcs_as_cubics()
    assert deviation(cubics, expression, 5 * REFERENCE_MM) <= CUBIC_DEVIATION_MM


@pytest.mark.parametrize("name", NAMES)
def test_no_more_nodes_than_the_reference(name: str) -> None:
    expression = emblems()[name]
    nodes = combine(expression).outline.with_arcs_as_cubics(SKIA_ARC_RAD).node_count
    assert nodes <= NODES_PER_SKIA_NODE * skia_node_count(skia(expression))


@pytest.mark.parametrize("name", NAMES)
def test_the_curves_cost_a_few_times_the_polygons(name: str) -> None:
    expression = emblems()[name]
    ratio = times_as_long(lambda: combine(expression), lambda: as_polygons(expression, FLATTEN_TOLERANCE_MM))
    assert ratio <= TIMES_POLYGONS_ALONE


def test_a_halo_round_letters() -> None:
    letters = straight_text("RIVERS & BRIDGES AND ROADS")
    halo = offset(letters, HALO_MM)
    assert halo.node_count <= HALO_NODES_PER_NODE * letters.node_count
    ratio = times_as_long(
        lambda: offset(letters, HALO_MM),
        lambda: to_polygon(letters, HALO_REFERENCE_MM).buffer(HALO_MM, quad_segs=64),
        rounds=5,
    )
    assert ratio <= HALO_TIMES_POLYGONS_ALONE
