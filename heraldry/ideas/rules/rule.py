"""A rule of design: what it is called, and how far a proof falls short of it, from 0 (not at all) to 1 (unsound)."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from heraldry.ideas.proofs import Proof

UNSOUND = 1.0


@dataclass(frozen=True)
class Rule:
    """A rule; ``weight`` is how much it counts among those that are kept."""

    name: str
    falls_short: Callable[[Proof], float]
    weight: float = 1.0


def beyond(value: float, low: float, high: float, allowance: float) -> float:
    """How far a value lies outside a range, in allowances, at most 1.

    >>> beyond(0.5, 0.4, 0.6, 0.1), round(beyond(0.65, 0.4, 0.6, 0.1), 3), beyond(0.9, 0.4, 0.6, 0.1)
    (0.0, 0.5, 1.0)
    """
    return min(1.0, max(low - value, value - high, 0.0) / allowance)
