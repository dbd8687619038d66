"""The slab's optical rules: how thick each stroke is when a stem of a given thickness is asked for.

Figures are those that the faces of the medians measure at stems of 0.126 and 0.205 cap heights (see ``medians``):
bars of three quarters of the stem, serifs as thick as bars and a little longer than a bar is thick. Its rounds may
be cut, as on the sides of freight cars and on jerseys.
"""

from __future__ import annotations

from heraldry.lettering.alphabets.gothic.letters import GOTHIC
from heraldry.lettering.alphabets.medians.slab import SLAB as SLAB_ROWS
from heraldry.lettering.alphabets.parameters import LetterParameters
from heraldry.lettering.alphabets.pen import Pen
from heraldry.lettering.alphabets.proportions import Master, Proportions
from heraldry.lettering.alphabets.serif import Serif, length_at
from heraldry.lettering.alphabets.serifed import diagonal, figures, kay, ligatures, lower, round, straight
from heraldry.lettering.alphabets.serifed.letters import SERIFED
from heraldry.lettering.alphabets.signs.complete import complete
from heraldry.lettering.alphabets.style import Range, Style

# Importing these files enters their letters in the table.
LETTER_FILES = (straight, round, diagonal, kay, figures, lower, ligatures)


# Widths in those of the medians, so that words look evenly grey: letters that are empty in the middle or at a side
# are drawn a trace narrower, crowded ones a trace wider.
EVENED = {
    **dict.fromkeys("LTOQU", 0.945), **dict.fromkeys("CG", 0.96), **dict.fromkeys("DY", 0.98), "A": 0.98, "V": 0.99,
    **dict.fromkeys("NR", 1.04), "M": 1.02,
}  # fmt: skip

REGULAR, BOLD = 0.126, 0.205
PROPORTIONS = Proportions(
    regular=Master(REGULAR, 1.016, 0.064),
    bold=Master(BOLD, 1.036, 0.054),
    condensed=None,
    rows={letter: row.drawn(EVENED.get(letter, 1.0)) for letter, row in SLAB_ROWS.items()},
)

# What is thinner than a stem: uprights of M, N and U; strokes that fall and rise, which clot where they meet.
HAIR, FALL, CLIMB = 0.85, 0.99, 0.90
SIDE, CROWN_OF_ARM, SERIF_OF_ARM = 1.055, 1.09, 0.97

# A beak is this much longer than it would be on an arm without thickness, so that it always shows.
BEAK, BEAK_BY_ARM = 0.205, 0.6

OVERSHOOT = 0.015
OPENING = 0.36
X_HEIGHT = 0.716
ASCENDER = 1.05
DESCENDER = -0.30


def slab_pen(parameters: LetterParameters) -> Pen:
    """The pen for parameters that are complete and sound."""
    stem, width, between = parameters.stem, parameters.width, PROPORTIONS.between
    if stem is None or parameters.contrast is None or parameters.corner is None:
        raise ValueError("a pen is made from completed parameters")
    arm = parameters.bar if parameters.bar is not None else stem * parameters.contrast
    natural = length_at(width, between(0.120, 0.102, stem))
    reach = natural if parameters.serif is None else parameters.serif
    thick = arm * SERIF_OF_ARM
    return Pen(
        corner=parameters.corner,
        stem=stem,
        hair=stem * HAIR,
        arm=arm,
        side=stem * SIDE,
        crown=arm * CROWN_OF_ARM,
        fall=stem * FALL,
        climb=stem * CLIMB,
        joint=0.82,
        over=OVERSHOOT if parameters.corner == "round" else 0.0,
        opening=OPENING * parameters.aperture,
        x_height=X_HEIGHT,
        ascender=ASCENDER,
        descender=DESCENDER,
        widths=PROPORTIONS.widths(stem, width),
        serif=Serif(natural, reach, thick, parameters.bracket or 0.0, beak=BEAK + BEAK_BY_ARM * arm, tip=thick),
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
    defaults=LetterParameters(stem=0.17, contrast=0.75, corner="round"),
    corners=("round", "cut"),
)
