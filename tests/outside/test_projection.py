"""The drawing keeps the angles and the proportions of the ground, measured there by pyproj's geodesics.

What is right does not come from the projection's own formulas: a short geodesic is walked on the WGS 84 ellipsoid in
two directions, and its ends are looked up on the drawing.
"""

from __future__ import annotations

import numpy as np
import pytest
from pyproj import Geod, Transformer

from heraldry.shapes.region import DrawnRegion, region
from heraldry.shapes.region.atlas import outlines
from heraldry.shapes.region.projection import choose
from heraldry.shapes.table import LatLon

GEOD = Geod(ellps="WGS84")
STEP_M = 100.0
POINTS = 1000
ANGLE_TOLERANCE_DEG = 0.1
STATES = ("US-VT", "US-TX", "US-CA", "US-TN", "US-AK", "US-HI", "US-FL", "US-MT")
COUNTRIES = ("IS", "LS", "NO", "CL", "JP", "CH", "NZ", "KZ", "ID", "FJ")


def spots(code: str, count: int) -> np.ndarray:
    """Vertices of the land as drawn, spread evenly over its coasts, longitude and latitude."""
    import shapely

    from heraldry.shapes.region.outlying import near_parts

    land, _ = near_parts(outlines(code))
    vertices = shapely.get_coordinates(land.polygons)
    vertices = vertices[np.abs(vertices[:, 1]) < 89.9]
    return vertices[np.linspace(0, len(vertices) - 1, count).astype(int)]


def walked(drawn: DrawnRegion, places: np.ndarray, azimuth: float) -> np.ndarray:
    """Where a step from each place in a direction leads on the drawing, mm, shape (n, 2)."""
    lon, lat, _ = GEOD.fwd(places[:, 0], places[:, 1], np.full(len(places), azimuth), np.full(len(places), STEP_M))
    to = on_drawing(drawn, np.column_stack((lon, lat)))
    return to - on_drawing(drawn, places)


def on_drawing(drawn: DrawnRegion, places: np.ndarray) -> np.ndarray:
    return np.array([tuple(drawn.locate(LatLon(lat, lon))) for lon, lat in places.tolist()])


@pytest.mark.parametrize("code", [*STATES, *COUNTRIES])
def test_angles_are_those_on_the_ground(code):
    drawn = region((code,), height=20.0)
    places = spots(code, POINTS // 10)
    north = walked(drawn, places, 0.0)
    for azimuth in (37.0, 90.0, 160.0, -120.0):
        there = walked(drawn, places, azimuth)
        turned = np.arctan2(north[:, 0] * there[:, 1] - north[:, 1] * there[:, 0], np.sum(north * there, axis=1))
        assert np.abs((np.degrees(-turned) - azimuth + 180.0) % 360.0 - 180.0).max() < ANGLE_TOLERANCE_DEG


@pytest.mark.parametrize(
    ("code", "tolerance"), [*((code, 0.01) for code in STATES), *((code, 0.02) for code in COUNTRIES)]
)
def test_the_scale_is_the_same_all_over(code, tolerance):
    drawn = region((code,), height=20.0)
    step = np.hypot(*walked(drawn, spots(code, POINTS // 10), 45.0).T)
    middle = (step.max() + step.min()) / 2
    assert (step.max() - step.min()) / 2 < tolerance * middle


@pytest.mark.parametrize("code", ["US-VT", "NO", "KZ", "ID"])
def test_positions_are_those_of_the_projection_named(code):
    """All kinds of projection, by pyproj's other door, which takes a coordinate system and not a formula."""
    drawn = region((code,), height=20.0)
    places = spots(code, POINTS)
    words = drawn.land_map.projection.words
    there = Transformer.from_crs("EPSG:4326", f"{words} +type=crs", always_xy=True).transform(*places.T)
    affine = drawn.land_map.onto_drawing
    expected = affine.on_array(np.column_stack(there))
    assert on_drawing(drawn, places) == pytest.approx(expected, abs=1e-9)


def test_every_kind_of_projection_is_chosen_where_it_suits():
    kinds = {code: choose(spots(code, POINTS)).name for code in ("US-VT", "CL", "KZ", "ID", "AQ", "RU")}
    assert kinds == {"US-VT": "stere", "CL": "tmerc", "KZ": "lcc", "ID": "merc", "AQ": "stere", "RU": "lcc"}


@pytest.mark.parametrize("code", ["US-VT", "NO", "KZ", "ID", "NZ"])
def test_distances_between_far_places_agree_with_the_ground(code):
    drawn = region((code,), height=20.0)
    places = spots(code, 40)
    one, two = places[:20], places[20:]
    ground = np.array(GEOD.inv(*one.T, *two.T)[2])
    drawn_mm = np.hypot(*(on_drawing(drawn, one) - on_drawing(drawn, two)).T)
    ratio = drawn_mm / ground
    assert (ratio.max() - ratio.min()) / (ratio.max() + ratio.min()) < 0.02
