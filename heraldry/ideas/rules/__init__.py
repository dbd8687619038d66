"""The rules of design that a herald is measured by, one a file; cheap ones first."""

from heraldry.ideas.rules import (
    alignment,
    balance,
    clear,
    coverage,
    fineness,
    line_weights,
    one_large,
    reading,
    ring_letters,
    size,
)
from heraldry.ideas.rules.rule import UNSOUND, Rule

RULES: tuple[Rule, ...] = (
    size.RULE,
    reading.RULE,
    ring_letters.RULE,
    line_weights.RULE,
    one_large.RULE,
    alignment.RULE,
    balance.RULE,
    coverage.RULE,
    clear.RULE,
    fineness.RULE,
)

__all__ = ["RULES", "UNSOUND", "Rule"]
