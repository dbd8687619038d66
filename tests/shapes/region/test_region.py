"""The shape ``region``: the right land, at the right size, clean."""

from __future__ import annotations

import json
from functools import cache
from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import HeraldryError, RegionError
from heraldry.geometry import boolean
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import LINE
from heraldry.geometry.point import Point
from heraldry.shapes.region import region
from heraldry.shapes.region.names import all_names
from heraldry.shapes.table import LatLon

SIZES_MM = (8.0, 20.0, 60.0)
STATES = [area.code for area in all_names() if area.kind == "state"]
COUNTRIES = [area.code for area in all_names() if area.kind == "country"]
COUNTIES = [area.code for area in all_names() if area.kind == "county"][::32]


def rings(drawn):
    return [np.array([(line.start.x, line.start.y) for line in path]) for path in drawn.outline.paths]


def signed_area(ring):
    x, y = ring.T
    return float(x @ np.roll(y, -1) - np.roll(x, -1) @ y) / 2


def polygons(drawn):
    """The outline's polygons, put together from its rings by their direction alone."""
    shells = [ring for ring in rings(drawn) if signed_area(ring) > 0]
    holes = [shapely.Polygon(ring) for ring in rings(drawn) if signed_area(ring) < 0]
    parts = [shapely.Polygon(shell) for shell in shells]
    owner = [[hole for hole in holes if part.contains(hole.representative_point())] for part in parts]
    return [shapely.Polygon(p.exterior, [h.exterior for h in own]) for p, own in zip(parts, owner, strict=True)]


def box(drawn):
    left, bottom, right, top = shapely.MultiPolygon(polygons(drawn)).bounds
    return left, bottom, right, top


@pytest.mark.parametrize("height", SIZES_MM)
@pytest.mark.parametrize("codes", [STATES, COUNTRIES, COUNTIES], ids=["states", "countries", "counties"])
def test_every_land_is_clean_at_every_size(codes, height):
    for code in codes if codes is not COUNTRIES else codes[SIZES_MM.index(height) :: 2]:
        drawn = region((code,), height=height)
        land = shapely.MultiPolygon(polygons(drawn))
        assert land.is_valid, code
        assert np.all(drawn.outline.kinds == LINE)
        assert np.isfinite(drawn.outline.data).all()
        assert land.bounds[3] - land.bounds[1] == pytest.approx(height, abs=1e-9), code
        lengths = np.hypot(*(drawn.outline.data[:, 3] - drawn.outline.data[:, 0]).T)
        assert lengths.min() > 1e-6, code


@pytest.mark.parametrize("code", ["US-VT", "NO", "FJ", "33007"])
def test_an_outline_is_closed_rings_of_lines(code):
    drawn = region((code,), width=20.0)
    for path in drawn.outline.paths:
        assert path.closed
        assert all(one.end == two.start for one, two in pairwise(path.segments))


@pytest.mark.parametrize("code", ["US-VT", "US-TN", "US-FL"])
@pytest.mark.parametrize("turn", [0.0, 30.0, -90.0])
def test_a_land_fits_its_box_without_distortion(code, turn):
    drawn = region((code,), width=20.0, height=10.0, turn=turn, centre=Point(3.0, -4.0))
    left, bottom, right, top = box(drawn)
    assert max((right - left) / 20.0, (top - bottom) / 10.0) == pytest.approx(1.0, abs=1e-12)
    assert (left + right) / 2 == pytest.approx(3.0, abs=1e-9)
    assert (bottom + top) / 2 == pytest.approx(-4.0, abs=1e-9)


def test_one_side_may_be_left_free():
    assert box(region(("US-TN",), width=30.0))[2] == pytest.approx(15.0, abs=1e-9)
    assert box(region(("US-TN",), height=5.0))[3] == pytest.approx(2.5, abs=1e-9)


def test_north_is_up_and_east_is_right():
    north, south, east = LatLon(44.9, -72.6), LatLon(42.8, -72.6), LatLon(43.9, -71.6)
    drawn = region(("US-VT",), height=20.0)
    up = drawn.locate(north) - drawn.locate(south)
    assert abs(up.x) < 0.02 * up.y
    assert (drawn.locate(east) - drawn.locate(south)).x > 0


def test_a_turn_goes_counter_clockwise():
    straight, turned = (region(("US-VT",), height=20.0, turn=turn) for turn in (0.0, 90.0))
    up = turned.locate(LatLon(44.9, -72.6)) - turned.locate(LatLon(42.8, -72.6))
    assert up.x < 0 and abs(up.y) < 0.02 * -up.x
    left, bottom, right, top = box(straight)
    assert box(turned)[2] - box(turned)[0] == pytest.approx((top - bottom) * 20.0 / (right - left), rel=0.01)


def test_places_become_points_of_the_drawing():
    drawn = region(("US-VT",), height=20.0, place={"junction": LatLon(43.65, -72.32)}, centre=Point(5, 5))
    assert drawn.places["junction"] == drawn.locate(LatLon(43.65, -72.32))
    assert shapely.MultiPolygon(polygons(drawn)).buffer(0.3).contains(shapely.Point(*drawn.places["junction"]))


@pytest.mark.parametrize(
    ("code", "lat", "lon"),
    [("US-CO", 41.0, -109.05), ("US-CO", 37.0, -102.042), ("US-WY", 45.0, -104.057)],
)
def test_corners_lie_where_the_law_has_them(code, lat, lon):
    """Colorado lies between 37 and 41 degrees north, Wyoming between 41 and 45 (their enabling acts)."""
    drawn = region((code,), width=60.0)
    corner = shapely.Point(*drawn.locate(LatLon(lat, lon)))
    assert shapely.MultiPolygon(polygons(drawn)).boundary.distance(corner) < 0.1


def test_a_border_along_a_parallel_is_curved():
    """The 49th parallel sags: between its ends the middle lies below the chord by Δλ²·sin 2φ/16 of the radius."""
    drawn = region(("US-WA", "US-ID", "US-MT", "US-ND"), width=60.0)
    west, middle, east = (drawn.locate(LatLon(49.0, lon)) for lon in (-122.75, -110.0, -97.25))
    land = shapely.MultiPolygon(polygons(drawn))
    assert land.boundary.distance(shapely.Point(*middle)) < 0.1
    chord = (west.y + east.y) / 2 - middle.y
    ratio = abs(east - west) / (6371.0 * np.cos(np.radians(49)) * np.radians(25.5))
    assert chord == pytest.approx(6371.0 * ratio * np.radians(25.5) ** 2 * np.sin(np.radians(98)) / 16, rel=0.1)


@pytest.mark.parametrize(
    ("codes", "parts"),
    [
        (("US-NH", "US-ME"), 1),
        (("33007", "23017"), 1),
        (("NO", "SE"), 1),
        (("AT", "CH"), 1),
        (("US-MI",), 2),
    ],
)
def test_inner_borders_dissolve(codes, parts):
    drawn = region(codes, height=40.0, islands=5.0)
    assert len(polygons(drawn)) == parts
    assert all(not polygon.interiors for polygon in polygons(drawn))


@pytest.mark.parametrize("width", [0.1, 0.3, 1.0])
def test_borders_are_gaps_of_their_width(width):
    codes = ("US-VT", "US-NH")
    whole, split = (
        region(codes, height=20.0, islands=1.0, finest=0.0),
        region(codes, height=20.0, islands=1.0, finest=0.0, borders=width),
    )
    one, two = polygons(split)
    near = shapely.points(shapely.get_coordinates(shapely.segmentize(one, width / 10)))
    gap = shapely.distance(near, two)
    beside = gap[gap < 1.2 * width]
    assert np.median(beside) == pytest.approx(width, rel=0.01)
    assert beside.min() > 0.9 * width
    assert box(split) == pytest.approx(box(whole), abs=0.1)


def test_three_lands_make_three_parts():
    drawn = region(("50019", "50005", "33007"), height=20.0, borders=0.3)
    assert len(polygons(drawn)) == 3


def test_gaps_that_leave_no_land_are_said():
    with pytest.raises(RegionError, match="borders of 40 mm leave no land"):
        region(("US-VT", "US-NH"), height=10.0, borders=40.0)


def test_overlapping_lands_keep_no_borders_and_say_so():
    drawn = region(("US-VT", "50019"), height=20.0, borders=0.3)
    assert "pieces of the land overlap, so no borders between them are kept" in drawn.notes
    assert len(polygons(drawn)) == 1


def test_a_code_twice_is_one_land():
    one, two = region(("us-vt", "US-VT "), height=9.0), region(("US-VT",), height=9.0)
    assert np.array_equal(one.outline.data, two.outline.data)


def test_islands_too_small_to_print_are_left_out_and_said():
    few, many = region(("US-HI",), width=20.0, islands=2.0), region(("US-HI",), width=20.0, islands=0.0)
    assert len(polygons(few)) < len(polygons(many))
    assert any("islands smaller than 2 mm across left out:" in note for note in few.notes)
    assert min(part.area for part in polygons(few)) >= 0.98 * np.pi
    assert not any("islands" in note for note in many.notes)


@settings(derandomize=True, deadline=None, max_examples=40)
@given(st.sampled_from(["US-HI", "JP", "FJ", "GR", "IS"]), st.floats(0.0, 4.0), st.floats(5.0, 60.0))
def test_no_island_is_smaller_than_asked_and_none_was_dropped_too_soon(code, islands, width):
    drawn = region((code,), width=width, islands=islands)
    areas = sorted(part.area for part in polygons(drawn))
    least = np.pi / 4 * islands**2
    assert len(areas) == 1 or areas[0] >= 0.98 * least


def test_far_parts_are_left_out_unless_wanted():
    near, all_of_it = region(("FR",), height=20.0), region(("FR",), height=20.0, outlying=True)
    assert any("outlying = true keeps them" in note for note in near.notes)
    guiana = LatLon(4.0, -53.0)
    assert shapely.MultiPolygon(polygons(all_of_it)).contains(shapely.Point(*all_of_it.locate(guiana)))
    assert not shapely.MultiPolygon(polygons(near)).contains(shapely.Point(*near.locate(guiana)))
    assert not any("outlying" in note for note in all_of_it.notes)


@pytest.mark.parametrize(
    ("code", "inside"),
    [
        ("FR", LatLon(42.2, 9.1)),  # Corsica
        ("GB", LatLon(54.6, -6.7)),
        ("MY", LatLon(4.5, 102.0)),  # both halves of a country in two
        ("MY", LatLon(3.0, 114.0)),
        ("NZ", LatLon(-39.0, 175.5)),
        ("US-MI", LatLon(46.3, -87.5)),
        ("US-HI", LatLon(22.05, -159.5)),
        ("US", LatLon(64.0, -150.0)),
        ("JP", LatLon(43.5, 142.8)),
        ("ID", LatLon(-4.0, 138.0)),
        ("RU", LatLon(66.5, -173.5)),  # beyond the 180th meridian
        ("RU", LatLon(54.7, 21.2)),
        ("FJ", LatLon(-16.6, 179.2)),
        ("FJ", LatLon(-16.85, -179.97)),
        ("AQ", LatLon(-90.0, 0.0)),
        ("AQ", LatLon(-85.0, 180.0)),
        ("AQ", LatLon(-85.0, -180.0)),
        ("CV", LatLon(15.1, -23.6)),
    ],
)
def test_the_land_that_belongs_is_there(code, inside):
    drawn = region((code,), height=60.0, width=60.0, islands=0.0)
    assert shapely.MultiPolygon(polygons(drawn)).contains(shapely.Point(*drawn.locate(inside)))


@pytest.mark.parametrize("code", ["RU", "FJ"])
def test_the_cut_at_the_180th_meridian_is_closed(code):
    drawn = region((code,), width=60.0, islands=0.0)
    inner = shapely.MultiPolygon(polygons(drawn)).buffer(-1e-3)
    north = {"RU": 64.0, "FJ": -17.5}[code]
    spots = [drawn.locate(LatLon(north + i / 100, 180.0)) for i in range(801)]
    on_land = shapely.contains_xy(inner, [point.x for point in spots], [point.y for point in spots])
    assert np.count_nonzero(on_land) > 20


def test_a_land_within_another_is_a_hole():
    drawn = region(("ZA",), height=20.0)
    (hole,) = [ring for part in polygons(drawn) for ring in part.interiors]
    assert shapely.Polygon(hole).contains(shapely.Point(*drawn.locate(LatLon(-29.6, 28.2))))
    assert not any(part.interiors for part in polygons(region(("ZA",), height=20.0, lakes=False)))


def test_maps_of_two_sources_join_without_a_seam():
    drawn = region(("US-ME", "CA"), width=60.0, detail=0.0)
    west, east = LatLon(45.5, -69.0), LatLon(46.5, -66.5)
    border = [LatLon(lat, -67.79) for lat in np.arange(46.2, 46.9, 0.05).tolist()]
    spots = shapely.MultiPoint([tuple(drawn.locate(place)) for place in (west, *border, east)])
    assert sum(part.contains(spots) for part in polygons(drawn)) == 1


def test_a_file_and_codes_make_one_land(tmp_path):
    ring = [[-73.6, 42.73], [-72.4, 42.73], [-72.4, 42.0], [-73.6, 42.0], [-73.6, 42.73]]
    file = tmp_path / "south.geojson"
    file.write_text(json.dumps({"type": "Polygon", "coordinates": [ring]}))
    drawn = region(("US-VT",), file=file, height=20.0)
    (land,) = polygons(drawn)
    assert land.contains(shapely.Point(*drawn.locate(LatLon(42.3, -73.0))))
    assert land.contains(shapely.Point(*drawn.locate(LatLon(44.0, -72.8))))


def test_coarse_maps_say_how_coarse():
    assert any("the map shows no more than" in note for note in region(("MT",), height=60.0).notes)
    assert region(("US-VT",), height=20.0).notes == ()


def test_detail_decides_how_many_points():
    counts = [
        region(("NO",), height=20.0, detail=detail, finest=0.0).outline.node_count
        for detail in (0.0, 0.02, 0.05, 0.2, 1.0)
    ]
    assert counts == sorted(counts, reverse=True)
    assert counts[0] > 5 * counts[2] > 10 * counts[4]


@pytest.mark.parametrize("code", ["US-VT", "NO", "IS", "US-HI"])
def test_a_smooth_coast_is_curves_near_the_plain_one(code):
    plain, smooth = region((code,), height=20.0), region((code,), height=20.0, smooth=True)
    assert np.any(smooth.outline.kinds != LINE)
    one, two = boolean.to_polygon(plain.outline), boolean.to_polygon(smooth.outline)
    assert two.is_valid
    assert bounds(smooth.outline).height == pytest.approx(20.0, abs=1e-6)
    assert shapely.symmetric_difference(one, two).area < 0.05 * one.length
    assert two.area == pytest.approx(one.area, rel=0.02)


@cache
def _drawn_twice():
    return [region(("NO",), height=20.0, borders=0.0) for _ in range(2)]


def test_the_same_words_give_the_same_bits():
    one, two = _drawn_twice()
    assert one.outline.data.tobytes() == two.outline.data.tobytes()


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ({}, "a region needs land: give codes"),
        ({"region": ("US-VT",)}, "give height, width or both"),
        ({"region": ("US-VT",), "height": 0.0}, "height of a region is 0 mm, it must be more than 0"),
        ({"region": ("US-VT",), "width": float("nan")}, "width"),
        (
            {"region": ("US-VT",), "height": 9.0, "feature": "x"},
            "feature picks from a map file, but no file is given",
        ),
        ({"region": ("US-VT",), "height": 9.0, "detail": -1.0}, "detail is -1, it must be at least 0"),
        ({"region": ("US-VT",), "height": 9.0, "islands": -1.0}, "islands is -1, it must be at least 0"),
        ({"region": ("US-VT",), "height": 9.0, "borders": -1.0}, "borders is -1, it must be at least 0"),
        (
            {"region": ("US-VT",), "height": 9.0, "place": {"a": LatLon(91.0, 0.0)}},
            "lat 91, lon 0 is no place",
        ),
        ({"region": ("US-VT",), "height": 9.0, "place": {"a": LatLon(float("nan"), 0.0)}}, "is no place"),
        ({"region": ("US-VT", "XX-1"), "height": 9.0}, "no region has the code 'XX-1'"),
    ],
)
def test_wrong_numbers_are_said(arguments, words):
    with pytest.raises(HeraldryError) as fault:
        region(**{"height": None, **arguments} if arguments else {"height": 9.0})
    assert words in str(fault.value)


@pytest.mark.parametrize("codes", [("US-VA", "US-NC"), ("US-OR", "US-WA"), ("NO", "SE"), ("FR", "ES")])
def test_borders_part_the_lands_from_coast_to_coast(codes):
    """A coast that prints is filled here and there, and borders are drawn out so far that they still reach the sea."""
    drawn = region(codes, height=15.0, borders=0.25)
    middles = {
        "US-VA": LatLon(37.5, -78.5),
        "US-NC": LatLon(35.5, -79.0),
        "US-OR": LatLon(44.0, -120.5),
        "US-WA": LatLon(47.3, -120.0),
        "NO": LatLon(61.0, 9.0),
        "SE": LatLon(61.0, 14.5),
        "FR": LatLon(46.5, 2.5),
        "ES": LatLon(40.0, -3.5),
    }
    one, two = (shapely.Point(*drawn.locate(middles[code])) for code in codes)
    held = [part.contains(one) + part.contains(two) for part in polygons(drawn)]
    assert sorted(held, reverse=True)[:2] == [1, 1]
