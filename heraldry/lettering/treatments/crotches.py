"""Letters made smaller all round, with their crotches kept sharp; millimetres.

Offsets round a corner off that is sharper than about 29°, lest a spike reach far out of what is drawn. In the crotch of
an M or a W the spike runs between two strokes and is what a sign painter rules: so it is taken away as well.
"""

from __future__ import annotations

import numpy as np

from heraldry.geometry import bezier
from heraldry.geometry.boolean import subtract, unite
from heraldry.geometry.offset import inset
from heraldry.geometry.offsets.bands import SHARPEST
from heraldry.geometry.offsets.spine import spine_of
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path

LONGEST = 24.0
"""A spike reaches at most so many walls: in a crotch of less than 5° two strokes are one."""


def walled(letters: Outline, wall_mm: float) -> Outline:
    """What is left of clean letters when a wall is taken off all round, corners and crotches mitred."""
    core = inset(letters, wall_mm, "sharp")
    spikes = _spikes(letters, wall_mm)
    return subtract(core, spikes) if not (spikes.is_empty or core.is_empty) else core


def _spikes(letters: Outline, wall_mm: float) -> Outline:
    """The ground between a wall's two sides at each crotch that an offset would round off."""
    spine = spine_of(letters)
    opening = np.cos(spine.turns / 2)  # the mitre reaches a wall over this
    crotches = np.flatnonzero((spine.turns < 0) & (opening * SHARPEST < 1) & (opening * LONGEST > 1))
    corner = spine.curves.data[spine.after[crotches], 0]
    one = corner + wall_mm * _left(spine.arriving[spine.before[crotches]])
    two = corner + wall_mm * _left(spine.leaving[spine.after[crotches]])
    tip = corner + bezier.unit(one + two - 2 * corner) * (wall_mm / opening[crotches])[:, None]
    rings = np.stack((corner, one, tip, two), axis=1).tolist()
    return unite(*(Outline.of([Path.through((Point(*xy) for xy in ring), closed=True)]) for ring in rings))


def _left(vectors: bezier.Floats) -> bezier.Floats:
    return np.stack((-vectors[:, 1], vectors[:, 0]), axis=1)
