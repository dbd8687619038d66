"""A conformal map of the land, north up: angles are those on the ground, so shapes look right.

Four conformal projections stand for election, all centred on the land: stereographic for round lands,
transverse Mercator for tall ones, Lambert's conic for broad ones, Mercator for broad ones at the equator. The
one whose scale varies least over the land is taken. The election uses the formulas for the sphere (Snyder,
Map Projections: A Working Manual, USGS Professional Paper 1395, 1987; equation numbers below); the map
itself is computed on the WGS 84 ellipsoid by PROJ. Planes are kilometres, y up.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.errors import RegionError
from heraldry.shapes.region.land import EARTH_RADIUS_KM

Array = NDArray[np.float64]

# The election's winner must beat the stereographic by this share of scale: near a draw the choice must not
# hang on the last vertex of the coast.
WIN_BY = 0.002

# Only the stereographic projection holds more than this of the globe in one piece without a cut.
NEAR_DEG = 60.0

# A stereographic map shows what lies this far from its middle 15 times as large as there: that is no shape.
REACH_MAX_DEG = 150.0

# A land that reaches farther round than this from its middle meridian comes near the cut of the others.
CUT_CLEAR_DEG = 150.0

# The standard parallels lie a sixth of the range of latitude inside its ends (an old rule of thumb that
# Snyder gives for conic projections).
STANDARD_PARALLEL_INSET = 1 / 6

# A cone whose constant is less than this is so nearly a cylinder that PROJ's formula loses its digits.
CONE_CONSTANT_MIN = 0.05

_CENTRE_ROUNDS = 3


@dataclass(frozen=True)
class Projection:
    """A conformal projection by its PROJ words, kilometres north up."""

    words: str

    def forward(self, degrees: Array) -> Array:
        """Kilometres of points in degrees, both (n, 2); points it cannot show come out infinite."""
        from pyproj import Proj  # imported where used: start-up time

        x, y = Proj(self.words)(degrees[:, 0], degrees[:, 1])
        return np.column_stack((x, y))

    def backward(self, plane: Array) -> Array:
        """Degrees of points in kilometres, both (n, 2); points off the globe come out infinite."""
        from pyproj import Proj  # imported where used: start-up time

        lon, lat = Proj(self.words)(plane[:, 0], plane[:, 1], inverse=True)
        return np.column_stack((lon, lat))

    @property
    def name(self) -> str:
        """PROJ's word for the kind of projection."""
        return self.words.split()[0].removeprefix("+proj=")


def choose(degrees: Array) -> Projection:
    """The projection that suits land with these vertices, (n, 2) in degrees.

    Raises RegionError for land that reaches round the globe.
    """
    centre = middle(degrees)
    steps, reach = _from_centre(degrees, centre), _angles(degrees, centre).max()
    if reach > np.radians(REACH_MAX_DEG):
        raise RegionError("the region spans too much of the globe for one map")
    stereographic = f"+proj=stere +lat_0={centre[1]:.6f} +lon_0={centre[0]:.6f} +units=km +ellps=WGS84"
    least, words = _spread(_stereographic_scale(degrees, centre)) - WIN_BY, stereographic
    if reach < np.radians(NEAR_DEG) and np.abs(steps[:, 0]).max() < CUT_CLEAR_DEG:
        for rival in (_transverse, _conic, _mercator):
            spread, rival_words = rival(steps, centre)
            if spread < least:
                least, words = spread, rival_words
    return Projection(words)


def middle(degrees: Array) -> Array:
    """The middle of the land's box as longitude and latitude, found in a stereographic view of it."""
    centre = _degrees_of(_vectors(degrees).mean(axis=0))
    for _ in range(_CENTRE_ROUNDS):
        view = stereographic_km(degrees, centre)
        centre = _stereographic_back((view.min(axis=0) + view.max(axis=0)) / 2, centre)
    return np.round(centre, 6)


def stereographic_km(degrees: Array, centre: Array) -> Array:
    """A quick look at the sphere from above ``centre`` (Snyder 21-2 to 21-4), kilometres.

    The centre is one for all points, shape (2,), or one for each, shape (n, 2).
    """
    vectors = _vectors(degrees)
    east, north, up = (np.sum(vectors * axis, axis=-1) for axis in _frame(centre))
    k = 2.0 * EARTH_RADIUS_KM / np.maximum(1.0 + up, 1e-9)
    return np.column_stack((k * east, k * north))


def _stereographic_back(xy: Array, centre: Array) -> Array:
    east, north, up = _frame(centre)
    half = xy / (2.0 * EARTH_RADIUS_KM)
    squared = float(half @ half)
    return _degrees_of((2.0 * (half[0] * east + half[1] * north) + (1.0 - squared) * up) / (1.0 + squared))


def _stereographic_scale(degrees: Array, centre: Array) -> Array:
    return 2.0 / np.maximum(1.0 + np.cos(_angles(degrees, centre)), 1e-9)


def _transverse(steps: Array, centre: Array) -> tuple[float, str]:
    """Snyder 8-4: k = 1 / √(1 − B²), B = cos φ sin(λ − λ0)."""
    if np.abs(steps[:, 0]).max() > NEAR_DEG:
        return np.inf, ""
    b = np.cos(np.radians(steps[:, 1])) * np.sin(np.radians(steps[:, 0]))
    words = f"+proj=tmerc +lat_0={centre[1]:.6f} +lon_0={centre[0]:.6f} +units=km +ellps=WGS84"
    return _spread(1.0 / np.sqrt(1.0 - b * b)), words


def _conic(steps: Array, centre: Array) -> tuple[float, str]:
    """Snyder 15-3 and 15-4: k = cos φ1 tanⁿ(π/4 + φ1/2) / (cos φ tanⁿ(π/4 + φ/2))."""
    low, high = steps[:, 1].min(), steps[:, 1].max()
    inset = (high - low) * STANDARD_PARALLEL_INSET
    one, two = np.round(low + inset, 6), np.round(high - inset, 6)
    constant = _cone_constant(np.radians(one), np.radians(max(two, one + 0.01)))
    if abs(constant) < CONE_CONSTANT_MIN or max(abs(low), abs(high)) > 89.0:
        return np.inf, ""
    steepness = np.cos(np.radians(steps[:, 1])) * _tangent(np.radians(steps[:, 1])) ** constant
    words = (
        f"+proj=lcc +lat_1={one:.6f} +lat_2={two:.6f} +lat_0={centre[1]:.6f} +lon_0={centre[0]:.6f} "
        "+units=km +ellps=WGS84"
    )
    return _spread(steepness), words


def _mercator(steps: Array, centre: Array) -> tuple[float, str]:
    """Snyder 7-3: k = 1 / cos φ; the parallel of the land's middle latitude is true."""
    words = f"+proj=merc +lat_ts={abs(centre[1]):.6f} +lon_0={centre[0]:.6f} +units=km +ellps=WGS84"
    return _spread(np.cos(np.radians(steps[:, 1]))), words


def _cone_constant(one: float, two: float) -> float:
    return float(np.log(np.cos(one) / np.cos(two)) / np.log(_tangent(np.array(two)) / _tangent(np.array(one))))


def _tangent(latitude_rad: Array) -> Array:
    return np.asarray(np.tan(np.pi / 4 + latitude_rad / 2))


def _spread(scale: Array) -> float:
    """How much larger the largest scale is than the smallest."""
    return float(scale.max() / scale.min() - 1.0)


def _from_centre(degrees: Array, centre: Array) -> Array:
    """Longitudes counted from the centre, in (−180, 180], with latitudes as they are."""
    east = (degrees[:, 0] - centre[0] + 180.0) % 360.0 - 180.0
    return np.column_stack((east, degrees[:, 1]))


def _angles(degrees: Array, centre: Array) -> Array:
    """Angles at the Earth's centre between points and the centre, radians."""
    return np.asarray(np.arccos(np.clip(_vectors(degrees) @ _frame(centre)[2], -1.0, 1.0)))


def _vectors(degrees: Array) -> Array:
    lon, lat = np.radians(degrees[..., 0]), np.radians(degrees[..., 1])
    return np.stack((np.cos(lat) * np.cos(lon), np.cos(lat) * np.sin(lon), np.sin(lat)), axis=-1)


def _degrees_of(vector: Array) -> Array:
    x, y, z = vector
    return np.asarray(np.degrees([np.arctan2(y, x), np.arctan2(z, np.hypot(x, y))]))


def _frame(centre: Array) -> tuple[Array, Array, Array]:
    """Unit vectors east, north and up at places in degrees."""
    lon, lat = np.radians(centre[..., 0]), np.radians(centre[..., 1])
    east = np.stack((-np.sin(lon), np.cos(lon), np.zeros_like(lon)), axis=-1)
    north = np.stack((-np.sin(lat) * np.cos(lon), -np.sin(lat) * np.sin(lon), np.cos(lat)), axis=-1)
    return east, north, _vectors(centre)
