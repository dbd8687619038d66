"""Letters on a path keep their arc length and stand on its normals: on a parabola, where both are known.

For y = x²/(2p) the arc length from the vertex is s(x) = (x·√(1 + (x/p)²) + p·asinh(x/p)) / 2, in any table of
integrals; the unit tangent is (1, x/p) over its length. A parabola is a cubic Bézier curve exactly, and its length
has no closed form that the package could use, since there cubics are measured by quadrature.

A base line lifted by d off it is its parallel curve, whose arc length is s(x) − d·φ(x) with φ = atan(x/p) the angle
of the tangent (differential geometry of plane curves: ds_d = (1 − κ d) ds, κ ds = dφ).
"""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from heraldry.geometry.outline import LINE, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Cubic, Path
from heraldry.lettering.alphabet import SetGlyph, SetLine
from heraldry.lettering.setting import along
from heraldry.lettering.setting.base_lines import raised

P_MM, LEFT_MM, RIGHT_MM = 18.0, -24.0, 30.0
THICK_MM, ADVANCE_MM, HEIGHT_MM, COUNT = 0.3, 1.6, 2.0, 20
MICROMETRE_MM = 1e-3

Floats = NDArray[np.float64]


def parabola() -> Path:
    """The arc as a quadratic Bézier curve, whose control is where the end tangents meet, raised to a cubic."""
    start, end = (Point(x, x * x / (2 * P_MM)) for x in (LEFT_MM, RIGHT_MM))
    middle = Point((LEFT_MM + RIGHT_MM) / 2, LEFT_MM * RIGHT_MM / (2 * P_MM))
    one = Point(start.x + (middle.x - start.x) * 2 / 3, start.y + (middle.y - start.y) * 2 / 3)
    two = Point(end.x + (middle.x - end.x) * 2 / 3, end.y + (middle.y - end.y) * 2 / 3)
    return Path((Cubic(start, one, two, end),))


def arc_length(x: Floats | float) -> Floats:
    u = np.asarray(x) / P_MM
    return np.asarray(P_MM / 2 * (u * np.sqrt(1 + u * u) + np.arcsinh(u)))


def at_length(s: Floats) -> tuple[Floats, Floats]:
    """Points and unit tangents at lengths from the left end, by Newton on the formula."""
    wanted, x = s + arc_length(LEFT_MM), np.array(s) + LEFT_MM
    for _ in range(60):
        x = x - (arc_length(x) - wanted) / np.sqrt(1 + (x / P_MM) ** 2)
    tangent = np.stack((np.ones_like(x), x / P_MM), axis=-1)
    return np.stack((x, x * x / (2 * P_MM)), axis=-1), tangent / np.hypot(*tangent.T)[:, None]


def bars() -> SetLine:
    """Plain upright bars, each begun at the middle of what is left of its advance."""
    left, right = (ADVANCE_MM - THICK_MM) / 2, (ADVANCE_MM + THICK_MM) / 2
    corners = [Point(left, 0), Point(right, 0), Point(right, HEIGHT_MM), Point(left, HEIGHT_MM)]
    bar = Outline.of([Path.through(corners, closed=True)])
    glyphs = tuple(SetGlyph("I", bar, i * ADVANCE_MM, ADVANCE_MM) for i in range(COUNT))
    return SetLine(glyphs, COUNT * ADVANCE_MM, HEIGHT_MM)


def middles(begin_mm: float) -> Floats:
    """How far along the path the middle of each bar is, where the ink of the first begins at a length."""
    return begin_mm + THICK_MM / 2 + ADVANCE_MM * np.arange(COUNT)


@pytest.mark.parametrize("begin_mm", [0.0, 11.0, 20.0])
@pytest.mark.parametrize("letters", ["turned", "upright", "bent"])
def test_feet_keep_their_arc_length(begin_mm: float, letters: str) -> None:
    laid = along(bars(), parabola(), "start", begin_mm, letters)
    feet = np.array([letter.data[0, [0, 3]] for letter in laid.letters])
    points, _ = at_length(middles(begin_mm))
    assert laid.notes == ()
    if letters == "bent":
        ends = [at_length(middles(begin_mm) + side * THICK_MM / 2)[0] for side in (-1, 1)]
        assert np.abs(feet - np.stack(ends, axis=1)).max() < MICROMETRE_MM
    else:
        assert np.abs(feet.mean(axis=1) - points).max() < MICROMETRE_MM


@pytest.mark.parametrize("begin_mm", [0.0, 11.0, 20.0])
def test_bent_letters_stand_on_the_normals(begin_mm: float) -> None:
    laid = along(bars(), parabola(), "start", begin_mm, "bent")
    sides = [letter.data[letter.kinds == LINE] for letter in laid.letters]  # the right one runs up, the left one down
    heads = {1: np.array([side[0, 3] for side in sides]), -1: np.array([side[1, 0] for side in sides])}
    for side, reached in heads.items():
        foot, tangent = at_length(middles(begin_mm) + side * THICK_MM / 2)
        head = foot + HEIGHT_MM * np.stack((-tangent[:, 1], tangent[:, 0]), axis=-1)
        assert np.abs(reached - head).max() < MICROMETRE_MM


@pytest.mark.parametrize("begin_mm", [1.0, 11.0, 20.0])
def test_turned_letters_stand_square_to_the_chord_of_their_advance(begin_mm: float) -> None:
    laid = along(bars(), parabola(), "start", begin_mm, "turned")
    rises = np.array([letter.data[1, 3] - letter.data[1, 0] for letter in laid.letters])
    (before, _), (after, _) = (at_length(middles(begin_mm) + half) for half in (-ADVANCE_MM / 2, ADVANCE_MM / 2))
    chord = after - before
    assert np.hypot(*rises.T) == pytest.approx(HEIGHT_MM, abs=1e-9)
    assert np.abs((rises * chord).sum(axis=1)).max() < MICROMETRE_MM * HEIGHT_MM
    _, tangent = at_length(middles(begin_mm))
    off_rad = np.abs((rises * tangent).sum(axis=1)) / HEIGHT_MM
    assert off_rad.max() < 0.002  # the chord of 1.6 mm and the tangent at its middle differ by a tenth of a degree


@pytest.mark.parametrize("lift_mm", [-2.0, 0.5, 3.0])
def test_a_lifted_line_keeps_arc_length_along_its_own_curve(lift_mm: float) -> None:
    laid = along(bars(), raised(parabola(), lift_mm), "start", 11.0)
    feet = np.array([letter.data[0, [0, 3]].mean(axis=0) for letter in laid.letters])
    x = _under(feet)
    tangent = np.stack((np.ones_like(x), x / P_MM), axis=-1) / np.sqrt(1 + (x / P_MM) ** 2)[:, None]
    curve = np.stack((x, x * x / (2 * P_MM)), axis=-1)
    normal = np.stack((-tangent[:, 1], tangent[:, 0]), axis=-1)
    assert np.abs(feet - curve - lift_mm * normal).max() < MICROMETRE_MM
    walked = arc_length(x) - lift_mm * np.arctan(x / P_MM)
    begun = arc_length(LEFT_MM) - lift_mm * np.arctan(LEFT_MM / P_MM)
    assert np.abs(walked - begun - middles(11.0)).max() < MICROMETRE_MM


def _under(feet: Floats) -> Floats:
    """The x of the parabola's nearest points: where (x − X)·1 + (x²/2p − Y)·x/p is zero, by Newton."""
    x = feet[:, 0].copy()
    for _ in range(60):
        off = x - feet[:, 0] + (x * x / (2 * P_MM) - feet[:, 1]) * x / P_MM
        x = x - off / (1 + 1.5 * (x / P_MM) ** 2 - feet[:, 1] / P_MM)
    return x
