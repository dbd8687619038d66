"""What a description may say, as plain rows for lists and pages: shape kinds with their keys, functions of art."""

from __future__ import annotations

import inspect
from typing import Any

from heraldry.plates.art_functions import ART_FUNCTIONS
from heraldry.shapes import SHAPES


def shape_kinds() -> list[dict[str, Any]]:
    """A row for each kind of shape: its name, what it is, and its keys, those that may be left out in brackets."""
    return [
        {
            "shape": kind.name,
            "about": kind.summary,
            "keys": [_key(name, parameter) for name, parameter in kind.parameters.items()],
        }
        for kind in sorted(SHAPES.values(), key=lambda kind: kind.name)
    ]


def art_functions() -> list[dict[str, str]]:
    """A row for each function of set arithmetic: how it is written, and what comes of it."""
    return [{"usage": function.usage, "about": function.summary} for function in ART_FUNCTIONS.values()]


def _key(name: str, parameter: inspect.Parameter) -> str:
    return name if parameter.default is inspect.Parameter.empty else f"[{name}]"
