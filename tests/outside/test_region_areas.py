"""The bundled outlines have the areas that the lands are said to have: like compared with like.

Areas are geodesic, on the WGS 84 ellipsoid, by pyproj. The Census outlines end at the shore, so of the states only
inland ones are compared by their total area, and Maine by its land and inland water. States: Census Bureau, State Area
Measurements, 2010, km²; Colorado as read there, Vermont and Maine's inland water (2,264 square miles) second-hand, the
others from memory. Countries: The World Factbook, total area, km²; Iceland and Lesotho read in the editions of 2016 and
2017, Ireland second-hand, the others from memory.
"""

from __future__ import annotations

import pytest
import shapely
from pyproj import Geod

from heraldry.shapes.region import atlas

SQUARE_MILE_KM2 = 2.589988110336

INLAND_STATES_KM2 = {
    "US-AR": 137_732,
    "US-AZ": 295_234,
    "US-CO": 269_601,
    "US-IA": 145_746,
    "US-ID": 216_443,
    "US-KS": 213_100,
    "US-KY": 104_656,
    "US-ME": (30_843 + 2_264) * SQUARE_MILE_KM2,
    "US-MO": 180_540,
    "US-MT": 380_831,
    "US-ND": 183_108,
    "US-NE": 200_330,
    "US-NM": 314_917,
    "US-NV": 286_380,
    "US-OK": 181_037,
    "US-SD": 199_729,
    "US-TN": 109_153,
    "US-UT": 219_882,
    "US-VT": 24_906,
    "US-WV": 62_756,
    "US-WY": 253_335,
}
COUNTRIES_KM2 = {
    "AT": 83_871,
    "BO": 1_098_581,
    "BW": 581_730,
    "CH": 41_285,
    "CZ": 78_867,
    "HU": 93_028,
    "IE": 70_273,
    "IS": 103_000,
    "LS": 30_355,
    "LU": 2_586,
    "MN": 1_564_116,
    "PY": 406_752,
    "TD": 1_284_000,
    "UY": 176_215,
    "ZM": 752_618,
}
STATE_TOLERANCE, COUNTRY_TOLERANCE = 0.001, 0.02


def area_km2(code: str) -> float:
    geod = Geod(ellps="WGS84")

    def ring_km2(ring: shapely.LinearRing) -> float:
        return abs(geod.geometry_area_perimeter(shapely.Polygon(ring))[0]) / 1e6

    parts = atlas.outlines(code).polygons.geoms
    return sum(ring_km2(part.exterior) - sum(map(ring_km2, part.interiors)) for part in parts)


@pytest.mark.parametrize("code", INLAND_STATES_KM2)
def test_inland_states(code):
    assert area_km2(code) == pytest.approx(INLAND_STATES_KM2[code], rel=STATE_TOLERANCE)


@pytest.mark.parametrize("code", COUNTRIES_KM2)
def test_countries(code):
    assert area_km2(code) == pytest.approx(COUNTRIES_KM2[code], rel=COUNTRY_TOLERANCE)


@pytest.mark.parametrize("state", ["US-VT", "US-CO", "US-IA"])
def test_counties_make_up_their_state(state):
    """The counties of a state and the state itself are two readings of one map: their areas agree."""
    from heraldry.shapes.region.names import all_names, by_code

    name = by_code()[state].name
    counties = [area.code for area in all_names() if area.kind == "county" and area.detail == name]
    assert sum(map(area_km2, counties)) == pytest.approx(area_km2(state), rel=1e-6)
