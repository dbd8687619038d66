"""The slab's optical rules."""

from __future__ import annotations

from heraldry.lettering.alphabets.gothic.letters import GOTHIC
from heraldry.lettering.alphabets.medians.slab import SLAB as SLAB_ROWS
from heraldry.lettering.alphabets.parameters import LetterParameters
from heraldry.lettering.alphabets.pen import Pen
from heraldry.lettering.alphabets.proportions import Master, Proportions
from heraldry.lettering.alphabets.serif import Serif
from heraldry.lettering.alphabets.serifed import diagonal, figures, ligatures, lower, round, straight
from heraldry.lettering.alphabets.serifed.letters import SERIFED
from heraldry.lettering.alphabets.signs.complete import complete
from heraldry.lettering.alphabets.style import Range, Style

# Importing these files enters their letters in the table.
LETTER_FILES = (straight, round, diagonal, figures, lower, ligatures)


REGULAR, BOLD = 0.126, 0.205
PROPORTIONS = Proportions(
    regular=Master(REGULAR, 1.016, 0.064), bold=Master(BOLD, 1.036, 0.054), condensed=None, rows=SLAB_ROWS
)

OVERSHOOT = 0.015
OPENING = 0.36
X_HEIGHT = 0.716
ASCENDER = 1.05
DESCENDER = -0.30


def _line(at_regular: float, at_bold: float, stem: float) -> float:
    """A figure in a straight line through the two masters."""
    return at_regular + (at_bold - at_regular) * (stem - REGULAR) / (BOLD - REGULAR)


def slab_pen(parameters: LetterParameters) -> Pen:
    """The pen for parameters that are complete and sound."""
    stem, width = parameters.stem, parameters.width
    if stem is None or parameters.contrast is None or parameters.corner is None:
        raise ValueError("a pen is made from completed parameters")
    arm = parameters.bar if parameters.bar is not None else stem * parameters.contrast
    natural = _line(0.125, 0.106, stem) * min(width, 1.0 + 0.3 * (width - 1.0))
    reach = natural if parameters.serif is None else parameters.serif
    thick = arm * 0.97
    return Pen(
        corner=parameters.corner,
        stem=stem,
        hair=stem * 0.88,
        arm=arm,
        side=stem * 1.055,
        crown=arm * 1.09,
        fall=stem * 1.03,
        climb=stem * 0.94,
        joint=0.82,
        over=OVERSHOOT if parameters.corner == "round" else 0.0,
        opening=OPENING * parameters.aperture,
        x_height=X_HEIGHT,
        ascender=ASCENDER,
        descender=DESCENDER,
        widths=PROPORTIONS.widths(stem, width),
        serif=Serif(natural, reach, thick, parameters.bracket or 0.0, beak=0.19 + 0.6 * arm, tip=thick),
        ending=0.86,
        sides_of_s=0.95,
        spine_of_s=0.97,
    )


STYLE = Style(
    name="slab",
    summary="square serifs as thick as the bars",
    letters=complete({**GOTHIC, **SERIFED}),
    proportions=PROPORTIONS,
    make_pen=slab_pen,
    sound={
        "stem": Range(0.10, 0.20),
        "bar": Range(0.55, 0.85),
        "width": Range(0.55, 1.8),
        "contrast": Range(0.55, 0.85),
        "slant_deg": Range(-20.0, 20.0),
        "aperture": Range(0.7, 1.3),
        "serif": Range(0.03, 0.16),
        "bracket": Range(0.0, 0.08),
    },
    defaults=LetterParameters(stem=0.17, contrast=0.74, corner="round"),
    corners=("round", "cut"),
)
