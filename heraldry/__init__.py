"""heraldry: lettering and heralds for railroads of your own invention, as exact vector artwork.

>>> import heraldry
>>> sorted(heraldry.__all__)
['Artwork', 'DescriptionError', 'Finding', 'HeraldryError', 'draw', 'load', 'press']
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

from heraldry.errors import DescriptionError, HeraldryError

if TYPE_CHECKING:
    from heraldry import press
    from heraldry.artwork import Artwork, Finding
    from heraldry.build import draw, load

__all__ = ["Artwork", "DescriptionError", "Finding", "HeraldryError", "draw", "load", "press"]

_HOMES = {
    "Artwork": "heraldry.artwork",
    "Finding": "heraldry.artwork",
    "draw": "heraldry.build",
    "load": "heraldry.build",
}


def __getattr__(name: str) -> Any:
    """Public names are imported when first asked for: start-up time."""
    if name == "press":
        return import_module("heraldry.press")
    if name in _HOMES:
        return getattr(import_module(_HOMES[name]), name)
    raise AttributeError(f"module 'heraldry' has no attribute {name!r}")
