"""What a map costs, as ratios to plain work of a like kind in the same run."""

from __future__ import annotations

import json
import lzma
import time
from collections.abc import Callable

import pytest
import shapely

from heraldry.geometry import boolean
from heraldry.shapes.region import atlas, region
from heraldry.shapes.region.legible import legible
from heraldry.shapes.region.names import DATA_DIR, find
from heraldry.shapes.region.neighbours import neighbours
from heraldry.shapes.region.packed import Areas, Topology


def seconds(work: Callable[[], object], rounds: int = 5) -> float:
    """The least time of several rounds."""
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def test_reading_a_bundle_costs_little_more_than_unpacking_it():
    path = DATA_DIR / "world.topology.xz"
    unpacking = seconds(lambda: lzma.decompress(path.read_bytes()))
    assert seconds(lambda: Areas(Topology.read(path))) < 5 * unpacking


def test_a_state_is_read_sooner_than_its_geojson():
    land = atlas.outlines("US-CA")
    text = shapely.to_geojson(land.polygons)
    assert seconds(lambda: atlas.outlines("US-CA")) < 2 * seconds(lambda: json.loads(text))


def mended_and_simplified(code: str) -> object:
    """The least that any way must do: make the map's polygons valid and take points away."""
    parts = shapely.get_parts(shapely.make_valid(atlas.outlines(code).polygons))
    return shapely.coverage_simplify(parts[shapely.get_dimensions(parts) == 2], 0.02)


@pytest.mark.parametrize("code", ["IS", "NO"])
def test_a_map_costs_little_more_than_mending_and_simplifying_it(code):
    plain = seconds(lambda: region((code,), height=20.0, finest=0.0))
    assert plain < 4 * seconds(lambda: mended_and_simplified(code))


def opened_and_closed(land: shapely.Geometry) -> object:
    """The least that finding what is too thin or too narrow must do, at two sizes."""
    for width in (0.06, 0.05):
        thin = land.difference(land.buffer(-width, quad_segs=4).buffer(width, quad_segs=4))
        narrow = land.buffer(2 * width, quad_segs=4).buffer(-2 * width, quad_segs=4).difference(land)
        land = land.difference(thin).union(narrow)
    return land


@pytest.mark.parametrize("code", ["IS", "NO"])
def test_a_coast_that_prints_costs_little_more_than_opening_and_closing_it(code):
    land = boolean.to_polygon(region((code,), height=20.0, finest=0.0).outline)
    parts = shapely.get_parts(land)
    assert seconds(lambda: legible(parts)) < 6 * seconds(lambda: opened_and_closed(land))


def test_neighbours_cost_little_more_than_a_large_region():
    land = region(("US-VT",), height=20.0)
    large = seconds(lambda: region(("US-ME", "US-NH", "US-VT", "US-MA", "US-NY", "CA"), height=20.0))
    assert seconds(lambda: neighbours(land)) < 2 * large


def test_a_word_is_found_sooner_than_a_state_is_drawn():
    find("coos")
    drawn = seconds(lambda: region(("US-VT",), height=20.0))
    assert seconds(lambda: find("coos")) < 2 * drawn
    assert seconds(lambda: find("vermnot")) < 10 * drawn
