"""Nothing is nearly aligned: middles that are to stand over one another do so, or are clearly apart."""

from __future__ import annotations

from itertools import combinations

from heraldry.geometry.measure import bounds
from heraldry.ideas.proofs import Proof
from heraldry.ideas.rules.rule import Rule

EXACT, NEAR = 0.004, 0.02
"""In widths of the herald: less apart looks aligned, more looks meant; what lies between looks like a mistake.

Common practice, no source."""


def near_misses(proof: Proof) -> int:
    """Pairs of lines of lettering whose middles nearly stand over one another."""
    width = proof.artwork.width_mm
    lines = [shape.name for shape in proof.herald.shapes if shape.kind is not None and shape.kind.name == "text"]
    middles = [bounds(proof.composed.stage.drawn[name].outline).centre.x / width for name in lines]
    return sum(EXACT < abs(one - other) < NEAR for one, other in combinations(middles, 2))


def falls_short(proof: Proof) -> float:
    """A quarter for each near miss."""
    return min(1.0, 0.25 * near_misses(proof))


RULE = Rule("alignment", falls_short, 0.5)
