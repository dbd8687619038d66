"""All lettering can be read at the size it is drawn."""

from __future__ import annotations

from heraldry.guard.judge import READING_DISTANCE_MM
from heraldry.guard.reading import letter_height_mm
from heraldry.ideas.proofs import Proof
from heraldry.ideas.rules.rule import Rule, beyond

EASY = 1.8
"""So many times the lowest letter that sharp eyes make out is read by all. Common practice, no source."""


def lowest_mm(proof: Proof) -> float:
    """The lowest capitals of a herald, mm."""
    return min(
        (float(s.arguments["cap_height"]) for s in proof.herald.shapes if "cap_height" in s.arguments), default=100.0
    )


def falls_short(proof: Proof) -> float:
    """Unsound at what the sharpest eyes just make out, nothing at what is easy."""
    least = letter_height_mm(READING_DISTANCE_MM)
    return beyond(lowest_mm(proof), least * EASY, float("inf"), least * (EASY - 1.0))


RULE = Rule("reading", falls_short)
