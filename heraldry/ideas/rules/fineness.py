"""Nothing nearly touches and no line is lost: the printer's finest line and gap are kept."""

from __future__ import annotations

from heraldry.guard.judge import of_fineness
from heraldry.ideas.proofs import Proof
from heraldry.ideas.rules.rule import Rule
from heraldry.resolve.limits import USUAL_PRINTER

LOST = 0.12
"""A gap or line under this share of the limit is one that nobody meant."""
GRACE = 0.75
"""The notch of an ampersand, a bay of a coast: down to this share of the limit hardly counts."""


def finest(proof: Proof) -> float:
    """The finest line or gap there is, in the printer's limit; 1 where nothing is finer than that."""
    found = [one for plate in proof.artwork.plates for one in of_fineness(plate, USUAL_PRINTER)]
    return min((one.measured_mm / one.limit_mm for one in found if one.measured_mm and one.limit_mm), default=1.0)


def falls_short(proof: Proof) -> float:
    """From nothing at the grace to unsound where it is lost."""
    return min(1.0, max(0.0, (GRACE - finest(proof)) / (GRACE - LOST)))


RULE = Rule("fineness", falls_short)
