"""The lands around a region: they fit it, neither overlapping nor parting, and are the right ones."""

from __future__ import annotations

import json

import numpy as np
import pytest
import shapely

from heraldry.errors import HeraldryError, RegionError
from heraldry.geometry import boolean
from heraldry.geometry.point import Point
from heraldry.shapes.region import atlas, region
from heraldry.shapes.region.coast import coast
from heraldry.shapes.region.map_features import map_areas, map_lines
from heraldry.shapes.region.meridian import without_jumps
from heraldry.shapes.region.neighbours import neighbours
from heraldry.shapes.rounds import circle
from heraldry.shapes.table import Drawn, LatLon


def area(drawn):
    return boolean.to_polygon(drawn.outline if isinstance(drawn, Drawn) else drawn)


def dot(land, lat, lon):
    return shapely.Point(*land.locate(LatLon(lat, lon)))


LANDS = (("US-VT",), ("US-NH", "US-ME"), ("US-WA",), ("CH",), ("NO",), ("33007",), ("GR",))


@pytest.mark.parametrize("codes", LANDS, ids="-".join)
@pytest.mark.parametrize("height", [8.0, 20.0])
def test_they_neither_overlap_nor_part(codes, height):
    land = region(codes, height=height)
    own, around = area(land), area(neighbours(land, reach=4.0))
    assert around.is_valid
    assert own.intersection(around).area < 1e-9
    together = shapely.union(own, around)
    cracks = [ring for part in shapely.get_parts(together) for ring in part.interiors]
    between = [ring for ring in cracks if min(ring.intersection(it.buffer(1e-6)).length for it in (own, around)) > 0.01]
    assert [ring for ring in between if shapely.Polygon(ring).buffer(-0.01).is_empty] == []
    shared = own.boundary.intersection(around.boundary.buffer(1e-7))
    inland = own.boundary.intersection(together.buffer(-0.02))
    assert inland.length > 0
    assert inland.difference(shared.buffer(1e-6)).length < 1e-6 * inland.length


def test_states_have_states_and_countries_around():
    land = region(("US-VT",), height=20.0)
    around = area(neighbours(land))
    assert around.contains(dot(land, 43.7, -71.5))
    assert around.contains(dot(land, 46.0, -72.5))
    assert not around.contains(dot(land, 42.4, -70.6))
    assert not around.intersects(dot(land, 44.0, -72.7))


def test_counties_have_counties_and_a_country_abroad_around():
    land = region(("33007",), height=12.0)
    around = area(neighbours(land, borders=0.3))
    assert around.contains(dot(land, 44.0, -71.4))
    assert around.contains(dot(land, 45.6, -71.3))
    assert len(shapely.get_parts(around)) > 10


def test_only_those_named():
    land = region(("US-VT",), height=20.0)
    around = area(neighbours(land, only=("US-NH",)))
    assert around.contains(dot(land, 43.7, -71.5))
    assert not around.intersects(dot(land, 43.0, -74.5))


def test_borders_between_two_maps_are_gaps_as_well():
    land = region(("US-VT",), height=20.0)
    whole, split = area(neighbours(land, reach=8.0)), area(neighbours(land, reach=8.0, borders=0.3))
    new_york, canada = dot(land, 44.7, -74.0), dot(land, 45.4, -73.0)
    assert sum(part.contains(shapely.MultiPoint([new_york, canada])) for part in shapely.get_parts(whole)) == 1
    assert sum(part.contains(shapely.MultiPoint([new_york, canada])) for part in shapely.get_parts(split)) == 0


def test_they_reach_as_far_as_asked():
    land = region(("CH",), height=10.0)
    left, bottom, right, top = area(neighbours(land, reach=3.0)).bounds
    own = area(land).bounds
    assert (left, bottom, right, top) == pytest.approx((own[0] - 3, own[1] - 3, own[2] + 3, own[3] + 3), abs=1e-9)


def test_a_turned_land_has_turned_neighbours():
    land = region(("US-VT",), height=20.0, turn=30.0)
    around = area(neighbours(land, reach=5.0))
    assert around.contains(dot(land, 43.9, -71.9))
    assert area(land).intersection(around).area < 1e-9


def test_a_file_has_its_other_features_around(tmp_path):
    collection = {
        "type": "FeatureCollection",
        "features": [
            {"type": "Feature", "properties": {"name": code}, "geometry": json.loads(shapely.to_geojson(polygons))}
            for code, polygons in ((code, atlas.outlines(code).polygons) for code in ("US-VT", "US-NH", "US-NY"))
        ],
    }
    file = tmp_path / "lands.geojson"
    file.write_text(json.dumps(collection))
    land = region(file=file, feature="US-VT", height=20.0)
    around = area(neighbours(land))
    assert around.contains(dot(land, 43.7, -71.5))
    assert not around.intersects(dot(land, 46.0, -72.5))
    alone = region(file=file, height=20.0)
    with pytest.raises(RegionError, match=r'lands.geojson holds no land beside the region; .* only = \["US-VT"\]'):
        neighbours(alone)


def test_an_island_has_none():
    with pytest.raises(RegionError, match="no other land lies around this region"):
        neighbours(region(("IS",), height=10.0), reach=0.5)


@pytest.mark.parametrize(
    ("asked", "said"), [({"islands": 50.0}, "finished smaller than islands"), ({"finest": -1.0}, "finest is -1")]
)
def test_what_leaves_nothing_is_said(asked, said):
    with pytest.raises(HeraldryError, match=said):
        neighbours(region(("US-NH",), height=12.0), **asked)


@pytest.mark.parametrize("call", [neighbours, lambda it: coast(it, 0.2)])
def test_a_region_is_wanted(call):
    with pytest.raises(RegionError, match="wants the name of a region of this file"):
        call(Drawn(circle(5.0)))


def test_coast_lines_follow_the_shore_alone():
    land = region(("US-ME",), height=20.0)
    lines = area(coast(land, 0.2, inside=-0.3))
    assert not lines.intersects(area(land))
    assert lines.distance(dot(land, 44.0, -68.0)) < 1.0
    assert lines.distance(dot(land, 45.3, -71.0)) > 2.0
    round_it = area(coast(land, 0.2, inside=-0.3, all_round=True))
    assert round_it.distance(dot(land, 45.3, -71.0)) < 0.6
    assert round_it.area > 1.5 * lines.area


@pytest.mark.parametrize("inside", [-0.4, 0.0, 0.4])
def test_coast_lines_lie_where_they_are_asked_for(inside):
    land = region(("IS",), height=20.0, finest=0.1)
    edge = area(land).boundary
    lines = shapely.get_coordinates(area(coast(land, 0.15, inside=inside, count=2, gap=0.3)))
    far = shapely.distance(shapely.points(lines), edge)
    assert far.min() == pytest.approx(abs(inside), abs=0.01)
    assert far.max() <= abs(inside) + 2 * 0.15 + 0.3 + 0.01


def test_a_land_without_a_shore_says_so():
    with pytest.raises(RegionError, match="has no shore at this size; all_round = true"):
        coast(region(("CH",), height=20.0), 0.2)


WATERS = {
    "type": "FeatureCollection",
    "features": [
        {
            "type": "Feature",
            "properties": {"kind": "river"},
            "geometry": {
                "type": "MultiLineString",
                "coordinates": [[[-73, 44.5], [-72.5, 44.4]], [[-72.5, 44.4], [-72, 44.5]]],
            },
        },
        {
            "type": "Feature",
            "properties": {"kind": "brook"},
            "geometry": {"type": "LineString", "coordinates": [[-72.6, 43.2], [-72.5, 43.2]]},
        },
        {
            "type": "Feature",
            "properties": {"kind": "lake"},
            "geometry": {
                "type": "Polygon",
                "coordinates": [[[-72.9, 43.5], [-72.6, 43.5], [-72.6, 43.8], [-72.9, 43.8], [-72.9, 43.5]]],
            },
        },
    ],
}


@pytest.fixture
def waters(tmp_path):
    file = tmp_path / "waters.geojson"
    file.write_text(json.dumps(WATERS))
    return file


@pytest.mark.parametrize("smooth", [False, True])
def test_lines_of_a_file_become_bands(waters, smooth):
    land = region(("US-VT",), height=20.0)
    band = area(map_lines(waters, land, 0.4, where="kind = river", smooth=smooth))
    assert band.geom_type == "Polygon"
    for lon, lat in ((-73, 44.5), (-72.5, 44.4), (-72, 44.5)):
        assert band.contains(dot(land, lat, lon).buffer(0.19))
    assert not band.intersects(dot(land, 43.2, -72.55))


def test_short_lines_are_left_out(waters):
    land = region(("US-VT",), height=20.0)
    assert len(shapely.get_parts(area(map_lines(waters, land, 0.4)))) == 2
    assert len(shapely.get_parts(area(map_lines(waters, land, 0.4, shortest=2.0)))) == 1
    with pytest.raises(RegionError, match="long enough to show"):
        map_lines(waters, land, 0.4, shortest=99.0)


def test_areas_of_a_file_are_cut_out_of_the_land(waters):
    land = region(("US-VT",), height=20.0)
    lake = area(map_areas(waters, land))
    assert lake.contains(dot(land, 43.65, -72.75))
    with pytest.raises(RegionError, match="finished smaller than islands, 9 mm"):
        map_areas(waters, land, islands=9.0)


def test_what_lies_elsewhere_is_said(waters):
    land = region(("IS",), height=20.0)
    with pytest.raises(RegionError, match=r"no area of waters.geojson lies on the map of this region"):
        map_areas(waters, land)
    with pytest.raises(RegionError, match=r"no line of waters.geojson lies on the map of this region"):
        map_lines(waters, land, 0.3)


def test_a_ring_that_jumps_over_the_meridian_runs_on():
    jumping = shapely.Polygon([(170, 60), (-170, 60), (-170, 70), (170, 70)], [[(175, 62), (-175, 62), (-175, 64)]])
    run = without_jumps(jumping)
    assert run.bounds == pytest.approx((170, 60, 190, 70))
    assert run.is_valid
    assert run.interiors[0].bounds == pytest.approx((175, 62, 185, 64))
    plain = shapely.box(0, 0, 10, 10)
    assert without_jumps(plain) is plain
    line = without_jumps(shapely.LineString([(179, 0), (-179, 1)]))
    assert shapely.get_coordinates(line) == pytest.approx(np.array([[179, 0], [181, 1]]))


def test_a_place_may_hold_the_land():
    town = LatLon(47.6, -122.33)
    land = region(("US-WA",), height=30.0, place={"town": town}, held_by="town", centre=Point(2.0, -1.0))
    assert tuple(land.places["town"]) == pytest.approx((2.0, -1.0), abs=1e-9)
    assert tuple(land.locate(town)) == pytest.approx((2.0, -1.0), abs=1e-9)
    with pytest.raises(
        RegionError, match=r"held_by names a place of the region's own, found 'twn'; did you mean 'town'"
    ):
        region(("US-WA",), height=30.0, place={"town": town}, held_by="twn")
    with pytest.raises(RegionError, match=r"give it: place.town = "):
        region(("US-WA",), height=30.0, held_by="town")
