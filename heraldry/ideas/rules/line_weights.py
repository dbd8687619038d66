"""Line weights come in two steps, a fine and a heavy one."""

from __future__ import annotations

from heraldry.ideas.proofs import Proof
from heraldry.ideas.rules.rule import Rule

LINED = ("ring", "broken_ring", "rings", "oval")
"""Kinds of shape that are lines where they are thin."""
LINE_OF_WIDTH = 0.05
"""Thinner than this share of the width is a line, thicker is a band."""
ALIKE = 1.15
"""Weights nearer than this to each other are one. Common practice, no source."""
MOST = 2


def weights(proof: Proof) -> tuple[float, ...]:
    """The different weights of the lines of a herald, mm, the finest first."""
    limit = LINE_OF_WIDTH * proof.artwork.width_mm
    thick = sorted(
        shape.arguments["width"]
        for shape in proof.herald.shapes
        if shape.kind is not None and shape.kind.name in LINED and shape.arguments.get("width")
    )
    steps: list[float] = []
    for one in thick:
        if one < limit and (not steps or one > steps[-1] * ALIKE):
            steps.append(one)
    return tuple(steps)


def falls_short(proof: Proof) -> float:
    """Half for each weight too many."""
    return min(1.0, 0.5 * max(len(weights(proof)) - MOST, 0))


RULE = Rule("line weights", falls_short)
