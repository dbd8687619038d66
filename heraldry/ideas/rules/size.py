"""The ink fills the finished width: nothing hangs over it, and nothing of it is left blank."""

from __future__ import annotations

from heraldry.geometry.measure import bounds
from heraldry.ideas.proofs import Proof
from heraldry.ideas.rules.rule import Rule

OVER_MM, SHORT = 0.0005, 0.03
"""How far ink may reach over, and what share of the width may stay blank."""


def falls_short(proof: Proof) -> float:
    """Unsound where the ink has another width than was asked for."""
    ink = bounds(proof.artwork.outline).width
    asked = proof.artwork.width_mm
    return 1.0 if ink > asked + OVER_MM or ink < asked * (1 - SHORT) else 0.0


RULE = Rule("size", falls_short)
