"""Our own alphabets by the name of their style."""

from __future__ import annotations

from heraldry.errors import LetteringError, nearest
from heraldry.lettering.alphabets import STYLES
from heraldry.lettering.alphabets.parameters import LetterParameters
from heraldry.lettering.alphabets.parametric import ParametricAlphabet

USUAL = LetterParameters()
"""Every parameter left to the style."""


def ours(style: str, parameters: LetterParameters = USUAL, name: str | None = None) -> ParametricAlphabet:
    """An alphabet of ours; raises LetteringError for an unknown style or parameters out of its sound range.

    >>> ours("gothic").set_line("H", cap_height_mm=3).cap_height_mm
    3
    """
    if style not in STYLES:
        raise LetteringError(f"no style is called '{style}', {nearest(style, STYLES)}")
    return ParametricAlphabet(name or style, STYLES[style], parameters)
