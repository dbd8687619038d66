"""The gothic's optical rules: how thick each stroke is when a stem of a given thickness is asked for.

The rules are straight lines through what open typefaces measure at stems of 0.129 and 0.212 cap heights (see
``medians``): strokes drawn all alike would look heavy on top and clotted at the joints.
"""

from __future__ import annotations

from heraldry.lettering.alphabets.gothic import ampersand, diagonal, figures, ligatures, lower, round, straight
from heraldry.lettering.alphabets.gothic.letters import GOTHIC
from heraldry.lettering.alphabets.medians.gothic import GOTHIC as GOTHIC_ROWS
from heraldry.lettering.alphabets.parameters import LetterParameters
from heraldry.lettering.alphabets.pen import Pen
from heraldry.lettering.alphabets.proportions import Master, Proportions
from heraldry.lettering.alphabets.signs.complete import complete
from heraldry.lettering.alphabets.style import Range, Style

# Importing these files enters their letters in the table.
LETTER_FILES = (straight, round, diagonal, figures, lower, ligatures, ampersand)

REGULAR, BOLD = 0.129, 0.212
PROPORTIONS = Proportions(
    regular=Master(REGULAR, 0.777, 0.131),
    bold=Master(BOLD, 0.833, 0.102),
    condensed=Master(0.169, 0.580, 0.078),
    rows=GOTHIC_ROWS,
)

# The bar of condensed type is thinner still (0.76 of its stem): the height is crowded as before.
NARROW_BAR = 0.90
OVERSHOOT = 0.014
OPENING = 0.36
X_HEIGHT = 0.735
ASCENDER = 1.035
DESCENDER = -0.27


def gothic_pen(parameters: LetterParameters) -> Pen:
    """The pen for parameters that are complete and sound."""
    stem, width, between = parameters.stem, parameters.width, PROPORTIONS.between
    if stem is None or parameters.contrast is None or parameters.corner is None:
        raise ValueError("a pen is made from completed parameters")
    narrow = 1.0 - (1.0 - NARROW_BAR) * PROPORTIONS.narrowing(width)
    contrast = parameters.contrast * narrow
    arm = parameters.bar if parameters.bar is not None else stem * between(0.853, 0.835, stem) * contrast
    crown = arm * between(0.861, 0.806, stem) / between(0.853, 0.835, stem)
    return Pen(
        corner=parameters.corner,
        stem=stem,
        hair=stem,
        arm=arm,
        side=stem * between(1.042, 1.028, stem),
        crown=crown,
        fall=stem * 0.975,
        climb=stem * 0.975 * parameters.contrast,
        joint=between(0.95, 0.87, stem),
        over=OVERSHOOT if parameters.corner == "round" else 0.0,
        opening=OPENING * parameters.aperture,
        x_height=X_HEIGHT,
        ascender=ASCENDER,
        descender=DESCENDER,
        widths=PROPORTIONS.widths(stem, width),
    )


STYLE = Style(
    name="gothic",
    summary="block letters, their strokes even to the eye",
    letters=complete(GOTHIC),
    proportions=PROPORTIONS,
    make_pen=gothic_pen,
    sound={
        "stem": Range(0.10, 1 / 4.5),
        "bar": Range(0.6, 1.0),
        "width": Range(0.55, 1.8),
        "contrast": Range(0.75, 1.0),
        "slant_deg": Range(-20.0, 20.0),
        "aperture": Range(0.7, 1.3),
    },
    defaults=LetterParameters(stem=0.17, contrast=1.0, corner="round"),
    corners=("round", "cut", "square"),
)
