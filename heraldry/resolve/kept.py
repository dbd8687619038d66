"""What has been made for one variant of a herald, kept for the others that are alike in it.

Something is made once for all that it is made from: shapes from their arguments, plates from their shapes. What it
is made from is compared by value, and what was drawn before by identity, so that likeness goes on from alphabets to
shapes to plates to findings.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

Made = TypeVar("Made")


class Kept:
    """What was made so far, under its name, with what it was made from.

    >>> kept = Kept()
    >>> kept.once("disc", (2, "mm"), lambda: "drawn"), kept.once("disc", (2, "mm"), lambda: "drawn again")
    ('drawn', 'drawn')
    """

    def __init__(self) -> None:
        self._made: dict[str, list[tuple[object, Any]]] = {}

    def once(self, name: str, source: object, make: Callable[[], Made]) -> Made:
        """What was made from an equal source before, or what is made now."""
        known = self._made.setdefault(name, [])
        for earlier, made in known:
            if earlier == source:
                return made  # type: ignore[no-any-return]
        made = make()
        known.append((source, made))
        return made
