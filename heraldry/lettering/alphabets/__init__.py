"""Our own alphabets, by name: drawn by code from a handful of parameters, needing no font file."""

from heraldry.lettering.alphabets.gothic.style import STYLE as GOTHIC
from heraldry.lettering.alphabets.parameters import LetterParameters
from heraldry.lettering.alphabets.parametric import ParametricAlphabet
from heraldry.lettering.alphabets.roman.style import STYLE as ROMAN
from heraldry.lettering.alphabets.slab.style import STYLE as SLAB
from heraldry.lettering.alphabets.style import Style

STYLES: dict[str, Style] = {style.name: style for style in (GOTHIC, SLAB, ROMAN)}

__all__ = ["STYLES", "LetterParameters", "ParametricAlphabet", "Style"]
