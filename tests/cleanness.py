"""Whether outlines of shapes are clean, and how much two of them differ."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
import shapely

from heraldry.geometry import boolean
from heraldry.geometry.affine import Affine
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import ring_areas
from heraldry.geometry.outline import ARC, Outline
from heraldry.shapes import SHAPES
from heraldry.shapes.table import Drawn

SIDEWAYS = Affine.mirror(90.0)
"""Left becomes right."""


def draw(kind: str, **arguments: Any) -> Outline:
    drawn = SHAPES[kind].draw(**arguments)
    return drawn.outline if isinstance(drawn, Drawn) else drawn


def assert_clean(outline: Outline) -> None:
    """Rings that neither cross nor overlap, outer ones counter-clockwise, holes clockwise, joints closed."""
    assert not outline.is_empty
    assert np.isfinite(outline.data).all()
    rings = [shapely.Polygon(ring) for ring in flatten(outline)]
    assert all(ring.is_valid for ring in rings)
    filled = boolean.to_polygon(outline)
    signed = sum(math.copysign(ring.area, turn) for ring, turn in zip(rings, ring_areas(outline), strict=True))
    assert filled.area == pytest.approx(signed, rel=1e-9)
    assert_arcs_round(outline)


def assert_arcs_round(outline: Outline) -> None:
    """Both ends of every arc lie on its circle, and its sweep leads from one to the other."""
    arcs = outline.data[outline.kinds == ARC]
    if not len(arcs):
        return
    start, end = arcs[:, 0] - arcs[:, 1], arcs[:, 3] - arcs[:, 1]
    radius, sweep = arcs[:, 2, 0], arcs[:, 2, 1]
    assert np.hypot(*start.T) == pytest.approx(radius, rel=1e-9)
    turned = np.stack((np.cos(sweep), np.sin(sweep)))
    swept = np.stack(
        (start[:, 0] * turned[0] - start[:, 1] * turned[1], start @ [0, 1] * turned[0] + start[:, 0] * turned[1])
    )
    assert np.abs(swept.T - end).max() <= 1e-7 * max(1.0, radius.max())


def differing_share(one: Outline, two: Outline) -> float:
    """The area that lies in only one of both, as a share of the first."""
    a, b = boolean.to_polygon(one), boolean.to_polygon(two)
    return a.symmetric_difference(b).area / a.area
