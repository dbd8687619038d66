"""Variants of a herald: one file read as if it had been written anew for each of them.

What a ``[variant.NAME]`` table says goes over what the file says, key by key, and every key keeps the line on
which it stands. So whatever reads a herald reads a variant of it as well, and its faults name the right lines.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from heraldry.describe.key_lines import KeyPath
from heraldry.describe.read_toml import Source
from heraldry.describe.shape_models import kind_of
from heraldry.errors import Fault
from heraldry.shapes import SHAPES

VARIANT = "variant"
ITSELF = "herald"
"""What the herald itself is called among its variants."""
SINGLE_KEYS = ("width", "height", "on", "film")
"""Keys of a file that a variant may have otherwise."""


@dataclass(frozen=True, eq=False)
class VariedSource(Source):
    """A file as one of its variants has it; its faults say which."""

    variant: str = ""

    def fault(self, path: KeyPath, what: str, found: str = "", wanted: str = "") -> Fault:
        """A fault at the line of a key: the variant's own line, where the variant has it."""
        which = "" if what.startswith(f"{VARIANT}.{self.variant}.") else f"in variant {self.variant}: "
        return super().fault(path, which + what, found, wanted)


def varied(source: Source, name: str) -> VariedSource:
    """A herald file, its values well-formed, as one of its variants has it."""
    base, over = source.data, source.data[VARIANT][name]
    shapes = _shapes(base["shape"], over.get("shape", {}))
    data = {
        **{key: value for key, value in base.items() if key != VARIANT},
        **{key: over[key] for key in SINGLE_KEYS if key in over},
        "let": {**base.get("let", {}), **over.get("let", {})},
        "shape": shapes,
        "plate": over.get("plate") or base["plate"],
    }
    return VariedSource(source.path, data, _lines(source, name, over), name)


def _shapes(base: Mapping[str, Any], over: Mapping[str, Any]) -> dict[str, Any]:
    written = {name: {**base[name], **keys} for name, keys in over.items() if not _is_whole(base.get(name), keys)}
    return {**base, **over, **written}


def _is_whole(base: Any, over: Mapping[str, Any]) -> bool:
    """Whether a shape's table stands by itself: for a further shape, or one of another kind."""
    kind, own = kind_of(base) if isinstance(base, dict) else None, kind_of(over)
    if kind is None:
        return True
    is_key_of_kind = kind in SHAPES and own in SHAPES[kind].parameters
    return own is not None and own != kind and not is_key_of_kind


def _lines(source: Source, name: str, over: Mapping[str, Any]) -> dict[KeyPath, int]:
    """The lines of the file's keys, and over them those of the variant's, as if they stood where the file's do."""
    replaced: set[KeyPath] = {
        ("shape", shape)
        for shape, keys in over.get("shape", {}).items()
        if _is_whole(source.data["shape"].get(shape), keys)
    }
    if over.get("plate"):
        replaced.add(("plate",))
    kept = {path: line for path, line in source.lines.items() if not {path[:1], path[:2]} & replaced}
    own = {path[2:]: line for path, line in source.lines.items() if path[:2] == (VARIANT, name) and len(path) > 2}
    return {**kept, **own}
