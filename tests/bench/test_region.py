"""What a map costs, as ratios to plain work of a like kind in the same run."""

from __future__ import annotations

import json
import lzma
import time
from collections.abc import Callable

import pytest
import shapely

from heraldry.shapes.region import atlas, region
from heraldry.shapes.region.names import DATA_DIR, find
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
    assert seconds(lambda: region((code,), height=20.0)) < 4 * seconds(lambda: mended_and_simplified(code))


def test_a_word_is_found_sooner_than_a_state_is_drawn():
    find("coos")
    drawn = seconds(lambda: region(("US-VT",), height=20.0))
    assert seconds(lambda: find("coos")) < 2 * drawn
    assert seconds(lambda: find("vermnot")) < 10 * drawn
