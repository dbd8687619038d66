"""One thing is large, the rest clearly smaller."""

from __future__ import annotations

from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.ideas.proofs import Proof
from heraldry.ideas.rules.rule import Rule, beyond

CLEARLY = 1.5
"""The large thing is higher than the next one by this at least. Common practice, no source."""
ALLOWANCE = 0.7


def dominance(proof: Proof) -> float:
    """The height of the large thing in that of the highest line of lettering beside it."""
    subject = proof.sketch.subject
    drawn = proof.composed.stage.drawn
    own = [one.outline for name, one in drawn.items() if _is_of(name, subject)]
    others = [
        shape.arguments["cap_height"]
        for shape in proof.herald.shapes
        if "cap_height" in shape.arguments and not _is_of(shape.name, subject)
    ]
    return bounds(Outline.gather(own)).height / max(others) if others else CLEARLY


def _is_of(name: str, subject: str) -> bool:
    """Whether a shape is the subject, or one line of it."""
    return name == subject or name.startswith(f"{subject}_")


def falls_short(proof: Proof) -> float:
    """How far the large thing is from being clearly larger."""
    return beyond(dominance(proof), CLEARLY, float("inf"), ALLOWANCE)


RULE = Rule("one large", falls_short)
