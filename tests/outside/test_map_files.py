"""Map files of other kinds, written by GDAL (through pyogrio) from the bundled map, are read as the same land.

The references are other libraries' doing: GDAL writes the files, PROJ turns positions into map grids (UTM zone 18N,
EPSG:26918; the web's Mercator, EPSG:3857), pyproj's geodesics measure what comes back.
"""

from __future__ import annotations

import json

import numpy as np
import pyogrio.raw as raw
import pytest
import shapely
from pyproj import Geod, Transformer

from heraldry.errors import RegionError
from heraldry.geometry import boolean
from heraldry.shapes.region import atlas, map_file, region, vector_file
from heraldry.shapes.region.map_features import map_areas, map_lines
from heraldry.shapes.region.picking import Pick
from heraldry.shapes.table import LatLon

CODES = ("US-VT", "US-NH", "US-MA")
RANKS = np.array([1, 2, 3])
RIVER = shapely.LineString([(-72.9, 44.9), (-72.5, 44.3), (-72.6, 43.6), (-72.3, 43.0)])
LAKE = shapely.box(-72.8, 43.9, -72.5, 44.1)
KINDS = {".shp": "ESRI Shapefile", ".gpkg": "GPKG", ".kml": "KML"}
POSITION_TOLERANCE_DEG = {".shp": 1e-12, ".gpkg": 1e-12, ".kml": 1e-9}
"""KML is text, of which GDAL writes 15 figures."""

GEOD = Geod(ellps="WGS84")


def write(path, geometries, names, layer="lands", crs="EPSG:4326", kind="MultiPolygon", **more):
    extra = {"rank": RANKS[: len(names)], **more}
    raw.write(
        path,
        geometry=np.array(shapely.to_wkb(geometries), dtype=object),
        field_data=[np.array(names, dtype=object), *extra.values()],
        fields=np.array(["name", *extra]),
        crs=crs,
        geometry_type=kind,
        driver=KINDS[path.suffix],
        layer=layer,
        **({"append": True} if path.exists() else {}),
    )
    return path


def lands():
    return [atlas.outlines(code).polygons for code in CODES]


def area_km2(polygons):
    parts = shapely.get_parts(polygons)
    return sum(abs(GEOD.geometry_area_perimeter(part)[0]) for part in parts) / 1e6


@pytest.mark.parametrize("suffix", KINDS)
def test_every_kind_of_file_gives_the_land_back(tmp_path, suffix):
    path = write(tmp_path / f"my{suffix}", lands(), CODES)
    found = map_file.read(path)
    assert [land.name for land in found] == list(CODES)
    for land, there in zip(found, lands(), strict=True):
        here = shapely.get_coordinates(land.polygons)
        assert here == pytest.approx(shapely.get_coordinates(there), abs=POSITION_TOLERANCE_DEG[suffix])


@pytest.mark.parametrize("suffix", KINDS)
def test_it_draws_as_the_bundled_land_does(tmp_path, suffix):
    path = write(tmp_path / f"my{suffix}", lands(), CODES)
    ours = boolean.to_polygon(region(("US-NH",), height=20.0).outline)
    for pick in ({"feature": "us-nh"}, {"where": "name = US-NH"}) + (
        () if suffix == ".kml" else ({"where": "rank = 2"},)
    ):
        theirs = boolean.to_polygon(region(file=path, height=20.0, **pick).outline)
        assert shapely.symmetric_difference(ours, theirs).area < 0.002 * ours.area


@pytest.mark.parametrize("suffix", [".shp", ".gpkg"])
@pytest.mark.parametrize("crs", ["EPSG:26918", "EPSG:3857", "EPSG:5070"])
def test_map_grids_are_turned_into_degrees(tmp_path, suffix, crs):
    into = Transformer.from_crs("EPSG:4326", crs, always_xy=True)
    grid = [shapely.transform(land, lambda xy: np.column_stack(into.transform(*xy.T))) for land in lands()]
    found = map_file.read(write(tmp_path / f"grid{suffix}", grid, CODES, crs=crs))
    for land, there in zip(found, lands(), strict=True):
        assert shapely.get_coordinates(land.polygons) == pytest.approx(shapely.get_coordinates(there), abs=1e-7)
        assert area_km2(land.polygons) == pytest.approx(area_km2(there), rel=1e-7)


def test_neighbours_in_a_map_grid_still_share_their_border(tmp_path):
    into = Transformer.from_crs("EPSG:4326", "EPSG:26918", always_xy=True)
    grid = [shapely.transform(land, lambda xy: np.column_stack(into.transform(*xy.T))) for land in lands()]
    path = write(tmp_path / "grid.shp", grid, CODES, crs="EPSG:26918")
    assert shapely.coverage_is_valid([land.polygons for land in map_file.read(path)[:2]])
    split = region(file=path, where="name = US-VT | US-NH", height=20.0, borders=0.4, islands=1.0)
    assert len(split.outline.rings) == 3


def test_geojson_may_name_its_map_grid(tmp_path):
    into = Transformer.from_crs("EPSG:4326", "EPSG:26918", always_xy=True)
    grid = shapely.transform(lands()[0], lambda xy: np.column_stack(into.transform(*xy.T)))
    named = {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::26918"}}
    path = tmp_path / "grid.geojson"
    path.write_text(json.dumps({**json.loads(shapely.to_geojson(grid)), "crs": named}))
    (land,) = map_file.read(path)
    assert shapely.get_coordinates(land.polygons) == pytest.approx(shapely.get_coordinates(lands()[0]), abs=1e-7)


@pytest.fixture
def waters(tmp_path):
    path = write(tmp_path / "waters.gpkg", [RIVER], ["Long River"], "rivers", kind="LineString")
    return write(path, [LAKE, shapely.box(-72.3, 44.5, -72.2, 44.6)], ["Big Lake", "Pond"], "lakes", kind="Polygon")


def test_a_layer_is_chosen_by_name(waters):
    assert [line.length for line in map_file.read_lines(waters, Pick(layer="rivers"))] == pytest.approx([RIVER.length])
    assert [land.name for land in map_file.read(waters, Pick(layer="lakes"))] == ["Big Lake", "Pond"]
    with pytest.raises(RegionError, match=r'several layers, choose with layer = "…": lakes, rivers'):
        map_file.read(waters)
    with pytest.raises(RegionError, match=r"no layer 'lake', did you mean 'lakes'\?"):
        map_file.read(waters, Pick(layer="lake"))
    with pytest.raises(RegionError, match="holds no area, wanted Polygon or MultiPolygon, found LineString"):
        map_file.read(waters, Pick(layer="rivers"))
    with pytest.raises(RegionError, match="holds no lines, wanted LineString or MultiLineString, found Polygon"):
        map_file.read_lines(waters, Pick(layer="lakes"))


def test_rivers_and_lakes_lie_on_the_map_of_the_region(waters):
    land = region(("US-VT",), height=20.0)
    river = boolean.to_polygon(map_lines(waters, land, 0.3, layer="rivers").outline)
    spots = [land.locate(LatLon(lat, lon)) for lon, lat in RIVER.coords]
    assert all(river.contains(shapely.Point(*spot)) for spot in spots)
    assert river.area == pytest.approx(0.3 * shapely.LineString([tuple(spot) for spot in spots]).length, rel=0.03)
    lakes = boolean.to_polygon(map_areas(waters, land, layer="lakes", where="rank <= 1").outline)
    assert lakes.contains(shapely.Point(*land.locate(LatLon(44.0, -72.65))))
    assert not lakes.contains(shapely.Point(*land.locate(LatLon(44.55, -72.25))))


def test_a_line_far_off_is_left_out_and_said(tmp_path):
    path = write(tmp_path / "far.gpkg", [shapely.LineString([(10, 50), (11, 51)])], ["far"], kind="LineString")
    with pytest.raises(RegionError, match=r"no line of far.gpkg lies on the map of this region"):
        map_lines(path, region(("US-VT",), height=20.0), 0.3)


def test_without_a_coordinate_system_degrees_are_taken_for_granted_and_metres_refused(tmp_path):
    path = write(tmp_path / "plain.shp", lands(), CODES)
    path.with_suffix(".prj").unlink()
    assert len(map_file.read(path)) == 3
    grid = write(tmp_path / "grid.shp", [shapely.box(5e5, 4.8e6, 6e5, 4.9e6)], ["a"], crs="EPSG:26918")
    grid.with_suffix(".prj").unlink()
    with pytest.raises(RegionError, match=r"does not say its coordinate system, .* it stands in grid.prj beside it"):
        map_file.read(grid)


def test_a_shapefile_without_its_other_files(tmp_path):
    path = write(tmp_path / "my.shp", lands(), CODES)
    path.with_suffix(".dbf").unlink()
    with pytest.raises(RegionError, match=r"my.shp needs my.dbf beside it"):
        map_file.read(path)


@pytest.mark.parametrize(
    ("name", "content", "words"),
    [
        ("my.shp", b"<OGRVRTDataSource/>", "is no Shapefile: it does not begin as one"),
        ("my.gpkg", b"not a database", "is no GeoPackage: it does not begin as one"),
        ("my.kml", b"<OGRVRTDataSource><OGRVRTLayer/></OGRVRTDataSource>", "is no KML file"),
        ("my.kml", b"<?xml version='1.0'?><kml><broken", "my.kml"),
        ("my.gpkg", b"SQLite format 3\x00" + b"\x00" * 2000, "my.gpkg cannot be read"),
        ("my.shp", b"\x00\x00\x27\x0a", "my.shp needs my.shx and .dbf beside it"),
        ("my.zip", b"PK", r"my.zip is packed: unpack it and name the .shp"),
        ("my.kmz", b"PK", r"my.kmz is packed"),
    ],
)
def test_files_that_are_none_are_refused_in_words(tmp_path, name, content, words):
    path = tmp_path / name
    path.write_bytes(content)
    with pytest.raises(RegionError, match=words) as fault:
        map_file.read(path)
    assert len(str(fault.value)) < 300


def test_an_entity_bomb_is_refused(tmp_path):
    levels = "".join(f'<!ENTITY e{i} "{f"&e{i - 1};" * 10}">' for i in range(1, 12))
    path = tmp_path / "bomb.kml"
    head = f'<?xml version="1.0"?><!DOCTYPE kml [<!ENTITY e0 "ha">{levels}]>'
    path.write_text(head + '<kml xmlns="http://www.opengis.net/kml/2.2"><Document><name>&e11;</name></Document></kml>')
    with pytest.raises(RegionError, match=r"bomb.kml"):
        map_file.read(path)


def test_the_missing_extra_is_named(tmp_path, monkeypatch):
    path = write(tmp_path / "my.shp", lands(), CODES)

    def missing(name):
        raise ImportError(name)

    monkeypatch.setattr(vector_file, "import_module", missing)
    with pytest.raises(RegionError, match=r"pip install 'heraldry\[maps\]'; GeoJSON and TopoJSON files need none"):
        map_file.read(path)
