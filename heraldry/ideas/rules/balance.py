"""The centre of mass lies near the middle."""

from __future__ import annotations

from heraldry.geometry.measure import bounds, centroid
from heraldry.ideas.proofs import Proof
from heraldry.ideas.rules.rule import Rule, beyond

ASIDE, ABOVE = 0.025, 0.1
"""How far it may lie to the side and up or down, in widths and heights: a shield is heavy above, and looks right.

Common practice, no source."""
ALLOWANCE = 0.12


def offset(proof: Proof) -> tuple[float, float]:
    """How far the centre of mass is from the middle of the box, in widths and heights of it."""
    whole = proof.artwork.outline
    box, heavy = bounds(whole), centroid(whole)
    return (heavy.x - box.centre.x) / box.width, (heavy.y - box.centre.y) / box.height


def falls_short(proof: Proof) -> float:
    """How far the centre of mass is from where it may be."""
    aside, above = offset(proof)
    return max(beyond(abs(aside), 0.0, ASIDE, ALLOWANCE), beyond(abs(above), 0.0, ABOVE, ALLOWANCE))


RULE = Rule("balance", falls_short)
