"""Ink covers a third to two thirds of what a herald takes up."""

from __future__ import annotations

from heraldry.geometry.measure import area
from heraldry.ideas.proofs import Proof
from heraldry.ideas.rules.hull import hull_area
from heraldry.ideas.rules.rule import Rule, beyond

LEAST, MOST = 1 / 3, 2 / 3
"""Common practice, no source."""
ALLOWANCE = 0.2
"""A solid plate with its letters reversed out may go so far beyond."""


def inked(proof: Proof) -> float:
    """The share of the convex hull of a herald that is ink."""
    return sum(area(plate.outline) for plate in proof.artwork.plates) / hull_area(proof.artwork)


def falls_short(proof: Proof) -> float:
    """How far too much or too little ink there is."""
    return beyond(inked(proof), LEAST, MOST, ALLOWANCE)


RULE = Rule("coverage", falls_short)
