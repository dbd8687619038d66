"""A field keeps clear of its frame: all round it, a fine line wide, there is nothing but its own ground."""

from __future__ import annotations

import shapely

from heraldry.geometry.boolean import to_polygon
from heraldry.ideas.proofs import Proof
from heraldry.ideas.rules.rule import Rule

COARSE_MM = 0.01
"""Curves are flattened as coarsely as that, far below a fine line."""
ROUND = 0.9
"""How far round the field is looked, in fine lines."""
STRAY, UNSOUND_STRAY = 0.004, 0.03
"""The share of what lies round a field that may be something else than its ground, and where it is unsound.

Common practice, no source."""


def stray(proof: Proof) -> float:
    """The share of the margin round a field that is not like most of it: bare in ink, or ink on bare film."""
    drawn = proof.composed.stage.drawn
    field = shapely.union_all([to_polygon(drawn[name].outline, COARSE_MM) for name in proof.sketch.inside])
    reach = ROUND * proof.sketch.fine * proof.artwork.width_mm
    margin = field.buffer(reach, quad_segs=4).difference(field)
    ink = shapely.union_all([to_polygon(plate.outline, COARSE_MM) for plate in proof.artwork.plates])
    inked = float(margin.intersection(ink).area / margin.area)
    return min(inked, 1.0 - inked)


def falls_short(proof: Proof) -> float:
    """How much of something else there is, up to where it is unsound."""
    if not proof.sketch.inside:
        return 0.0
    return min(1.0, max(0.0, stray(proof) - STRAY) / (UNSOUND_STRAY - STRAY))


RULE = Rule("clear", falls_short)
