"""The compact map files hold exactly what was put in."""

from __future__ import annotations

import json

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.shapes.region import atlas
from heraldry.shapes.region.bundle import bundle
from heraldry.shapes.region.names import DATA_DIR, read_names
from heraldry.shapes.region.packed import Areas, Topology, pack, unpack

WHOLE = st.lists(st.integers(-(2**62), 2**62 - 1), max_size=60)


@settings(derandomize=True, deadline=None, max_examples=60)
@given(WHOLE)
def test_numbers_come_back(numbers):
    array = np.array(numbers, dtype=np.int64)
    assert unpack(pack(array)).tolist() == numbers


def test_small_numbers_take_one_byte():
    assert len(pack(np.arange(-64, 64))) == 128


# Two squares side by side: arc 0 is the shared side, walked both ways.
SQUARES = {
    "type": "Topology",
    "transform": {"scale": [0.5, 0.25], "translate": [-10.0, 40.0]},
    "arcs": [
        [[4, 0], [0, 4]],
        [[4, 4], [-4, 0], [0, -4], [4, 0]],
        [[4, 4], [4, 0], [0, -4], [-4, 0]],
        [[0, 0], [1, 1]],
    ],
    "objects": {
        "countries": {
            "type": "GeometryCollection",
            "geometries": [
                {"type": "Polygon", "id": "352", "arcs": [[0, 1]], "properties": {"name": "Iceland"}},
                {
                    "type": "MultiPolygon",
                    "id": "756",
                    "arcs": [[[-1, -3]]],
                    "properties": {"name": "Switzerland"},
                },
                {"type": "Polygon", "id": "336", "arcs": [[3]], "properties": {"name": "Vatican"}},
            ],
        }
    },
}


@pytest.fixture
def sources(tmp_path):
    states = {**SQUARES, "objects": {}}
    for name, number in (("states", "50"), ("counties", "50001")):
        area = {"type": "Polygon", "id": number, "arcs": [[0, 1]], "properties": {"name": "Right"}}
        states["objects"][name] = {"type": "GeometryCollection", "geometries": [area]}
    for file, document in (
        ("us-atlas/counties-10m.json", states),
        ("world-atlas/countries-10m.json", SQUARES),
    ):
        (tmp_path / file).parent.mkdir()
        (tmp_path / file).write_text(json.dumps(document))
    return tmp_path


@pytest.fixture
def pycountry_stand_in(monkeypatch):
    """ISO letters of the two countries, so that the test needs no package that only bundling needs."""
    import sys
    from types import ModuleType, SimpleNamespace

    rows = {
        "352": SimpleNamespace(alpha_2="IS", alpha_3="ISL", name="Iceland"),
        "756": SimpleNamespace(alpha_2="CH", alpha_3="CHE", name="Switzerland"),
        "336": SimpleNamespace(alpha_2="VA", alpha_3="VAT", name="Holy See"),
    }
    module = ModuleType("pycountry")
    module.countries = SimpleNamespace(get=lambda numeric: rows[numeric])
    monkeypatch.setitem(sys.modules, "pycountry", module)


def test_bundling_keeps_points_and_shared_borders(sources, tmp_path, pycountry_stand_in):
    bundle(sources, tmp_path)
    areas = Areas(Topology.read(tmp_path / "world.topology.xz"))
    left, right = areas.polygons("IS"), areas.polygons("CH")
    assert left.bounds == (-10.0, 40.0, -8.0, 41.0)
    assert right.bounds == (-8.0, 40.0, -6.0, 41.0)
    assert left.is_valid and right.is_valid and shapely.coverage_is_valid([left, right])


def test_bundling_leaves_out_what_the_grid_has_crushed(sources, tmp_path, pycountry_stand_in):
    bundle(sources, tmp_path)
    assert {area.code for area in read_names(tmp_path / "names.tsv")} == {"IS", "CH", "US-VT", "50001"}
    assert "VA" not in Areas(Topology.read(tmp_path / "world.topology.xz"))


def test_bundling_gives_the_same_bytes(sources, tmp_path, pycountry_stand_in):
    written = []
    for folder in (tmp_path / "one", tmp_path / "two"):
        folder.mkdir()
        bundle(sources, folder)
        written.append([file.read_bytes() for file in sorted(folder.iterdir())])
    assert written[0] == written[1]


def test_the_bundle_is_small_and_says_where_it_comes_from():
    files = {file.name: file.stat().st_size for file in DATA_DIR.iterdir()}
    assert sum(files.values()) < 3_000_000
    text = (DATA_DIR / "SOURCES.txt").read_text()
    assert all(name in text for name in files if name != "SOURCES.txt")
    assert text.count("public domain") >= 2


@pytest.mark.parametrize(("code", "neighbour"), [("US-VT", "US-NH"), ("50001", "50007"), ("CH", "AT")])
def test_neighbours_share_their_border_to_the_last_bit(code, neighbour):
    one, other = (shapely.get_coordinates(atlas.outlines(name).polygons).tolist() for name in (code, neighbour))
    assert len(set(map(tuple, one)) & set(map(tuple, other))) > 3
