"""What only the gothic has: chamfered letters of one angle, their strokes as thick as the others."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
import shapely

from heraldry.geometry.flatten import flatten
from heraldry.lettering.alphabets import STYLES, LetterParameters, ParametricAlphabet
from heraldry.lettering.alphabets.parametric import shape

GOTHIC = STYLES["gothic"]


def gothic(**parameters) -> ParametricAlphabet:
    return ParametricAlphabet("gothic", GOTHIC, LetterParameters(**parameters))


def test_chamfers_share_one_angle():
    """Every edge of the octagonal rounds is level, upright or at 45 degrees, inside as outside."""
    alphabet = gothic(corner="cut", stem=0.17)
    for character in "OCDGJUBPS03689":
        outline, _ = shape(GOTHIC, alphabet.parameters, character)
        run = np.abs(outline.data[:, 3] - outline.data[:, 0])
        slanting = run[(run > 1e-9).all(axis=1)]
        assert len(slanting) >= 2, character
        assert slanting[:, 0] == pytest.approx(slanting[:, 1], abs=1e-9), character


def test_chamfered_stroke_keeps_its_thickness():
    """Between the outer and the inner chamfer of O lies the mean of its side and its crown."""
    alphabet = gothic(corner="cut", stem=0.15)
    pen = GOTHIC.make_pen(alphabet.parameters)
    outer, inner = (shapely.LinearRing(ring) for ring in flatten(shape(GOTHIC, alphabet.parameters, "O")[0], 1e-4))
    corner = outer.interpolate(0.5, normalized=True)
    slanting = [
        shapely.LineString(edge)
        for edge in itertools.pairwise(outer.coords)
        if abs(edge[1][0] - edge[0][0]) > 1e-9 and abs(edge[1][1] - edge[0][1]) > 1e-9
    ]
    assert len(slanting) == 4 and corner is not None
    for edge in slanting:
        thick = edge.interpolate(0.5, normalized=True).distance(inner)
        assert thick == pytest.approx((pen.side + pen.crown) / 2, rel=1e-6)
