"""The handful of numbers that an alphabet of ours is drawn from.

Every length is a ratio: stems, bars and serifs in cap heights, ``width`` in normal widths. What is left as None
the alphabet chooses itself, by its optical rules.
"""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.lettering.alphabets.contour import Corner


@dataclass(frozen=True)
class LetterParameters:
    """What a user may ask of an alphabet.

    ``stem``
        thickness of the upright of H, in cap heights.
    ``bar``
        thickness of the crossbar of H, in cap heights.
    ``width``
        1 is normal. It stretches the whites inside and beside the letters; the stems stay as asked.
    ``contrast``
        thin strokes in thick strokes: 1 is even to the eye.
    ``corner``
        ``round`` has true curves, ``cut`` one chamfer angle throughout, ``square`` plain corners.
    ``slant_deg``
        lean to the right in degrees.
    ``aperture``
        how far C, G, S and the figures stand open: 1 is the alphabet's own, more is wider.
    ``serif``, ``bracket``
        length of a serif beyond its stem and reach of its quarter curve, in cap heights.
    ``stencil``
        whether counters are opened by bridges, as a cut stencil needs.
    ``letter_gap``
        white between two H, in cap heights; more is added to all letters alike, less draws all whites in alike.
    ``word_gap``
        white between two words that end and begin with an upright stroke, in cap heights.

    Lettering of technical drawings by ISO 3098-0:1997, type B, has strokes of h/10, letters 2h/10 and words 6h/10
    apart. That is ``stem=0.1, bar=0.1, letter_gap=0.2, word_gap=0.6``: uprights and bars are then exactly h/10,
    while rounds and diagonals keep their optical corrections of a few hundredths of a stroke.
    """

    stem: float | None = None
    bar: float | None = None
    width: float = 1.0
    contrast: float | None = None
    corner: Corner | None = None
    slant_deg: float = 0.0
    aperture: float = 1.0
    serif: float | None = None
    bracket: float | None = None
    stencil: bool = False
    letter_gap: float | None = None
    word_gap: float | None = None
