"""A user's own map: read when it is one, refused in words when it is not."""

from __future__ import annotations

import json
import time

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import HeraldryError, RegionError
from heraldry.shapes.region import map_file, region
from heraldry.shapes.region.picking import Pick

SQUARE = [[[-72.0, 44.0], [-71.0, 44.0], [-71.0, 45.0], [-72.0, 45.0], [-72.0, 44.0]]]
EAST = [[[-71.0, 44.0], [-70.0, 44.0], [-70.0, 45.0], [-71.0, 45.0], [-71.0, 44.0]]]
HOLE = [[-71.7, 44.3], [-71.3, 44.3], [-71.3, 44.7], [-71.7, 44.7], [-71.7, 44.3]]
SECONDS_MAX = 5.0
"""What a hostile file may cost; all of these take a small part of it."""


def polygon(rings=SQUARE):
    return {"type": "Polygon", "coordinates": rings}


def feature(geometry, **properties):
    return {"type": "Feature", "properties": properties, "geometry": geometry}


def collection(*features):
    return {"type": "FeatureCollection", "features": list(features)}


TWO = collection(feature(polygon(), name="West", number=7), {**feature(polygon(EAST), name="Öst"), "id": "E1"})

TOPOLOGY = {
    "type": "Topology",
    "transform": {"scale": [0.01, 0.01], "translate": [-72.0, 44.0]},
    "arcs": [
        [[100, 0], [0, 100]],
        [[100, 100], [-100, 0], [0, -100], [100, 0]],
        [[100, 100], [100, 0], [0, -100], [-100, 0]],
    ],
    "objects": {
        "lands": {
            "type": "GeometryCollection",
            "geometries": [
                {"type": "Polygon", "arcs": [[0, 1]], "properties": {"name": "West"}},
                {"type": "Polygon", "arcs": [[-1, -3]], "id": "E1", "properties": {"name": "Öst"}},
            ],
        }
    },
}


@pytest.fixture
def written(tmp_path):
    def write(document, name="my.geojson"):
        path = tmp_path / name
        path.write_text(document if isinstance(document, str) else json.dumps(document))
        return path

    return write


@pytest.mark.parametrize(
    "document",
    [
        polygon(),
        feature(polygon()),
        collection(feature(polygon())),
        {"type": "MultiPolygon", "coordinates": [SQUARE]},
        {"type": "GeometryCollection", "geometries": [{"type": "Point", "coordinates": [0, 0]}, polygon()]},
        collection(feature(None), feature(polygon())),
        polygon([[[*point, 120.5] for point in SQUARE[0]]]),
        polygon([[SQUARE[0][0] + [3], *SQUARE[0][1:]]]),
        feature({**polygon(), "bbox": [0, 0, 1, 1]}, odd={"deep": [1]}),
    ],
)
def test_every_form_of_geojson_is_read(written, document):
    (land,) = map_file.read(written(document))
    assert land.polygons.equals(shapely.MultiPolygon([shapely.box(-72, 44, -71, 45)]))


@pytest.mark.parametrize("document", [TWO, TOPOLOGY])
@pytest.mark.parametrize(("picked", "west"), [("West", -72), ("öst", -71), ("ost", -71), ("E1", -71)])
def test_a_feature_is_picked_by_a_property_or_its_id(written, document, picked, west):
    (land,) = map_file.read(written(document), Pick(picked))
    assert land.polygons.bounds == pytest.approx((west, 44, west + 1, 45))


def test_an_unknown_feature_offers_the_nearest(written):
    with pytest.raises(RegionError, match=r"my.geojson has no feature 'Wets'; did you mean 'West'\?"):
        map_file.read(written(TWO), Pick("Wets"))


def test_topojson_without_a_transform_is_in_degrees(written):
    document = {
        "type": "Topology",
        "arcs": [SQUARE[0]],
        "objects": {"one": {"type": "Polygon", "arcs": [[0]]}},
    }
    (land,) = map_file.read(written(document))
    assert land.polygons.equals(shapely.MultiPolygon([shapely.box(-72, 44, -71, 45)]))
    assert land.grid_km == 0.0


def test_topojson_and_geojson_draw_the_same(written):
    one = region(file=written(TWO), height=10.0, detail=0.0)
    other = region(file=written(TOPOLOGY, "my.topojson"), height=10.0, detail=0.0)
    corners = [sorted((s.start.x, s.start.y) for s in path) for drawn in (one, other) for path in drawn.outline.paths]
    assert corners[0] == [pytest.approx(corner, abs=1e-9) for corner in corners[1]]


def test_neighbours_of_a_file_dissolve_into_one(written):
    drawn = region(file=written(TWO), height=10.0)
    assert len(drawn.outline.rings) == 2


def test_lakes_are_kept_or_filled(written):
    file = written(polygon([*SQUARE, HOLE]))
    assert len(region(file=file, height=10.0).outline.rings) == 3
    assert len(region(file=file, height=10.0, lakes=False).outline.rings) == 2


def test_a_polygon_that_crosses_itself_is_mended_and_said(written):
    bow = [[[-72.0, 44.0], [-71.0, 45.0], [-71.0, 44.0], [-72.0, 45.0], [-72.0, 44.0]]]
    drawn = region(file=written(polygon(bow)), height=10.0, finest=0.0)
    assert "areas of the map file that were not valid have been mended: my" in drawn.notes
    assert len(drawn.outline.rings) == 3


DEEP = '{"type":"GeometryCollection","geometries":[' * 5000 + "]}" * 5000
WRONG = {
    "no JSON": ("{", "is no JSON"),
    "empty": ("", "is no JSON"),
    "no object": ("[1, 2]", "is no map"),
    "number": ("7", "is no map"),
    "NaN": ('{"type":"Polygon","coordinates":[[[NaN,1],[1,2],[2,1],[0,0]]]}', "NaN is no number"),
    "infinite": ('{"type":"Polygon","coordinates":[[[1e999,1],[1,2],[2,1],[0,0]]]}', "not a finite number"),
    "deep": (DEEP, "deep"),
    "deep brackets": ("[" * 200_000, "deep"),
    "long number": ('{"type":"Polygon","coordinates":[[[' + "9" * 6000 + ",1]]]}", "is no JSON"),
    "nothing in it": (collection(), "holds no area"),
    "a point": (feature({"type": "Point", "coordinates": [1, 2]}), "found Point"),
    "no type": ({"coordinates": SQUARE}, "wanted a geometry with its type"),
    "type of a list": ({"type": ["Polygon"]}, "wanted a geometry with its type"),
    "features no list": ({"type": "FeatureCollection", "features": {}}, "needs a list of features"),
    "feature of a text": ({"type": "FeatureCollection", "features": ["x"]}, "holds Features"),
    "coordinates missing": ({"type": "Polygon"}, "needs a list of coordinates"),
    "coordinates text": ({"type": "Polygon", "coordinates": "x"}, "needs a list of coordinates"),
    "rings of numbers": ({"type": "Polygon", "coordinates": [1, 2]}, "wanted a list of positions"),
    "positions of texts": (
        polygon([[["1", "2"], ["2", "3"], ["3", "1"], ["1", "2"]]]),
        "wanted a list of positions",
    ),
    "positions of truths": (polygon([[[True, False]] * 4]), "wanted a list of positions"),
    "positions of one": (polygon([[[1], [2], [3], [1]]]), "wanted a list of positions"),
    "positions of null": (polygon([[[None, 1], [2, 2], [3, 1], [0, 0]]]), "wanted a list of positions"),
    "positions of objects": (polygon([[{}, {}, {}, {}]]), "wanted a list of positions"),
    "mixed positions": (polygon([[[1, 2], "x", [3, 4], [1, 2]]]), "wanted a list of positions"),
    "huge whole numbers": (polygon([[[10**30, 1], [2, 2], [3, 1], [0, 0]]]), "wanted a list of positions"),
    "metres": (
        polygon([[[512000, 4900000], [513000, 4900000], [513000, 4901000], [512000, 4900000]]]),
        "in degrees",
    ),
    "beyond the pole": (polygon([[[0, 89], [1, 91], [2, 89], [0, 89]]]), "in degrees"),
    "two corners": (polygon([[[0, 0], [1, 1], [0, 0]]]), "holds no area"),
    "no width": (polygon([[[0, 0], [1, 0], [2, 0], [0, 0]]]), "no area"),
    "one point": (polygon([[[5, 5]] * 5]), "no area"),
    "topology without arcs": ({"type": "Topology", "objects": {}}, "needs a list of arcs"),
    "topology without objects": ({"type": "Topology", "arcs": []}, "needs objects"),
    "arc out of reach": ({**TOPOLOGY, "arcs": []}, "arc 0 is not there"),
    "arc below reach": (
        {**TOPOLOGY, "objects": {"one": {"type": "Polygon", "arcs": [[-99]]}}},
        "arc -99 is not there, the file has 3",
    ),
    "arc of a text": (
        {**TOPOLOGY, "objects": {"one": {"type": "Polygon", "arcs": [["x"]]}}},
        "list of arc numbers",
    ),
    "arc of a truth": (
        {**TOPOLOGY, "objects": {"one": {"type": "Polygon", "arcs": [[True]]}}},
        "list of arc numbers",
    ),
    "arcs of nothing": (
        {**TOPOLOGY, "objects": {"one": {"type": "Polygon", "arcs": [[]]}}},
        "list of arc numbers",
    ),
    "transform of a text": ({**TOPOLOGY, "transform": "x"}, "transform has scale and translate"),
    "transform of texts": (
        {**TOPOLOGY, "transform": {"scale": ["a", "b"], "translate": [0, 0]}},
        "positions",
    ),
    "transform too large": (
        {**TOPOLOGY, "transform": {"scale": [1e300, 1e300], "translate": [0, 0]}},
        "degrees",
    ),
}


@pytest.mark.filterwarnings("error::RuntimeWarning")
@pytest.mark.parametrize("name", WRONG)
def test_what_is_wrong_is_said_and_soon(written, name):
    document, words = WRONG[name]
    path, start = written(document), time.perf_counter()
    with pytest.raises(RegionError) as fault:
        region(file=path, height=10.0)
    assert words in str(fault.value)
    assert len(str(fault.value)) < 300
    assert time.perf_counter() - start < SECONDS_MAX


def test_a_file_that_is_not_there_or_not_text(tmp_path):
    with pytest.raises(RegionError, match=r"none.geojson cannot be read: No such file"):
        map_file.read(tmp_path / "none.geojson")
    with pytest.raises(RegionError, match="cannot be read"):
        map_file.read(tmp_path)
    (tmp_path / "raw.geojson").write_bytes(b"\xff\xfe\x00{")
    with pytest.raises(RegionError, match="is no JSON"):
        map_file.read(tmp_path / "raw.geojson")


def test_a_file_too_large_is_refused_unread(tmp_path):
    path = tmp_path / "large.geojson"
    with path.open("wb") as file:
        file.truncate(map_file.SIZE_MAX_BYTES + 1)
    with pytest.raises(RegionError, match="a map file may have 64 MB"):
        map_file.read(path)


def test_a_hundred_thousand_points_are_drawn_in_time(written):
    turns = [i / 100_000 * 6.283185307179586 for i in range(100_000)]
    import math

    ring = [
        [10 + (2 + 0.1 * math.sin(500 * t)) * math.cos(t), 50 + (1 + 0.1 * math.sin(500 * t)) * math.sin(t)]
        for t in turns
    ]
    path, start = written(polygon([[*ring, ring[0]]])), time.perf_counter()
    drawn = region(file=path, height=10.0)
    assert drawn.outline.node_count < 10_000
    assert time.perf_counter() - start < 2 * SECONDS_MAX


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(max_size=5),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(st.sampled_from(["type", "coordinates", "geometry", "features", "arcs", "objects"]), inner)
    ),
    max_leaves=12,
)
KINDS = st.sampled_from(["Polygon", "MultiPolygon", "Feature", "FeatureCollection", "GeometryCollection", "Topology"])


@settings(derandomize=True, deadline=None, max_examples=150)
@given(
    st.fixed_dictionaries(
        {"type": KINDS},
        optional=dict.fromkeys(
            ["coordinates", "geometry", "features", "geometries", "arcs", "objects", "transform"], JSON
        ),
    )
)
def test_nothing_but_our_own_errors_comes_out(tmp_path_factory, document):
    path = tmp_path_factory.mktemp("any") / "any.geojson"
    path.write_text(json.dumps(document))
    try:
        lands = map_file.read(path)
    except HeraldryError as fault:
        assert "any.geojson" in str(fault)
    else:
        assert all(isinstance(land.polygons, shapely.MultiPolygon) for land in lands)
