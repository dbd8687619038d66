"""Stand-ins for values that cannot be read, so that the rest of a file is examined in the same run.

Nothing is drawn from a file with faults; a stand-in only keeps its key's place. What the file may leave out is
left out; what it needs gets the first value that its annotation takes.
"""

from __future__ import annotations

from collections.abc import Iterable
from copy import deepcopy
from typing import Any

from pydantic import TypeAdapter, ValidationError

from heraldry.describe.key_lines import KeyPath

STAND_INS: tuple[Any, ...] = (1, True, "A", "#000000", "AA", [], ["A"], [[0, 0], [1, 0], [0, 1]], {}, {"circle": 1})
"""Plain values of every form; a table stands in by a shape, or by whatever it is without any key."""


def with_stand_ins(data: dict[str, Any], wrong: Iterable[tuple[KeyPath, list[Any]]]) -> dict[str, Any]:
    """A copy of a file's values in which each wrong key is left out, or holds a stand-in for its annotations."""
    mended = deepcopy(data)
    for path, forms in sorted(wrong, key=lambda one: len(one[0]), reverse=True):
        table = _table(mended, path)
        if table is not None:
            _stand_in(table, path[-1], forms)
    return mended


def _table(data: Any, path: KeyPath) -> dict[Any, Any] | None:
    """The table that a key stands in; None where that is no table (any more)."""
    here = data
    for step in path[:-1]:
        if not isinstance(here, dict) or step not in here:
            return None
        here = here[step]
    return here if isinstance(here, dict) and path else None


def _stand_in(table: dict[Any, Any], key: int | str, forms: list[Any]) -> None:
    table.pop(key, None)
    for form in forms:
        adapter = TypeAdapter(form)
        for value in (None, *STAND_INS):
            try:
                adapter.validate_python(value, strict=True)
            except ValidationError:
                continue
            if value is not None:
                table[key] = deepcopy(value)
            return
