"""The roman's optical rules: how thick each stroke is when a stem of a given thickness is asked for.

Figures are those that the faces of the medians measure at stems of 0.136 and 0.216 cap heights (see ``medians``).
Thin strokes are a little thicker where they stand or lean than where they lie, and grow less than the stems do.
"""

from __future__ import annotations

from heraldry.lettering.alphabets.gothic.letters import GOTHIC
from heraldry.lettering.alphabets.medians.roman import ROMAN as ROMAN_ROWS
from heraldry.lettering.alphabets.parameters import LetterParameters
from heraldry.lettering.alphabets.pen import Pen
from heraldry.lettering.alphabets.proportions import Master, Proportions
from heraldry.lettering.alphabets.roman import ampersand
from heraldry.lettering.alphabets.roman.letters import ROMAN
from heraldry.lettering.alphabets.serif import Serif, length_at
from heraldry.lettering.alphabets.serifed import diagonal, figures, kay, ligatures, lower, round, straight
from heraldry.lettering.alphabets.serifed.letters import SERIFED
from heraldry.lettering.alphabets.signs.complete import complete
from heraldry.lettering.alphabets.style import Range, Style

# Importing these files enters their letters in the table.
LETTER_FILES = (straight, round, diagonal, kay, figures, lower, ligatures, ampersand)


# Widths in those of the medians, so that words look evenly grey: letters that are empty in the middle or at a side
# are drawn a trace narrower, crowded ones a trace wider.
EVENED = {"L": 0.96, "T": 0.97, **dict.fromkeys("OQU", 0.98), "R": 1.02}

REGULAR, BOLD = 0.136, 0.216
PROPORTIONS = Proportions(
    regular=Master(REGULAR, 1.012, 0.058),
    bold=Master(BOLD, 1.070, 0.048),
    condensed=None,
    rows={letter: row.drawn(EVENED.get(letter, 1.0)) for letter, row in ROMAN_ROWS.items()},
)

# Thin strokes that stand or lean, tops of rounds, serifs and beaks, in crossbars; thick strokes that fall, in stems.
HAIR_OF_ARM, CROWN_OF_ARM, SERIF_OF_ARM, TIP_OF_ARM = 1.15, 1.09, 0.88, 0.9
FALL = 1.05

# Length of beaks, and how much thicker they are at their root than at their tip.
BEAK, FLARE = 0.28, 0.045

OVERSHOOT = 0.018
OPENING = 0.36
X_HEIGHT = 0.69
ASCENDER = 1.05
DESCENDER = -0.30

# Thickness of the rounds of figures in those of capitals: they are as thick as stems.
SIDES_OF_FIGURES = 0.86

# Diameter of balls in stems, and at most in the inside of the narrowest hook, that of 3.
BALL_OF_STEM, BALL_OF_HOOK = 1.12, 0.62


def roman_pen(parameters: LetterParameters) -> Pen:
    """The pen for parameters that are complete and sound."""
    stem, width, between = parameters.stem, parameters.width, PROPORTIONS.between
    if stem is None or parameters.contrast is None:
        raise ValueError("a pen is made from completed parameters")
    arm = parameters.bar if parameters.bar is not None else stem * parameters.contrast * between(1.0, 0.84, stem)
    natural = length_at(width, between(0.141, 0.126, stem))
    reach = natural if parameters.serif is None else parameters.serif
    bracket = stem / 2.0 if parameters.bracket is None else parameters.bracket
    thick, side, widths = arm * SERIF_OF_ARM, stem * between(1.173, 1.147, stem), PROPORTIONS.widths(stem, width)
    ball = min(stem * BALL_OF_STEM, (widths["3"] - side * SIDES_OF_FIGURES) * BALL_OF_HOOK)
    return Pen(
        corner="round",
        stem=stem,
        hair=arm * HAIR_OF_ARM,
        arm=arm,
        side=side,
        crown=arm * CROWN_OF_ARM,
        fall=stem * FALL,
        climb=arm * HAIR_OF_ARM,
        joint=1.0,
        over=OVERSHOOT,
        opening=OPENING * parameters.aperture,
        x_height=X_HEIGHT,
        ascender=ASCENDER,
        descender=DESCENDER,
        widths=widths,
        serif=Serif(natural, reach, thick, bracket, beak=BEAK, tip=arm * TIP_OF_ARM, flare=FLARE, ball=ball),
        ending=0.42,
        sides_of_s=0.76,
        sides_of_figures=SIDES_OF_FIGURES,
        loop_of_and=0.55,
        rising_of_and=0.5,
        round_points=True,
        small_stem=0.905,
        small_side=0.85,
        spine_of_s=1.14,
    )


STYLE = Style(
    name="roman",
    summary="thick and thin, with bracketed serifs",
    letters=complete({**GOTHIC, **SERIFED, **ROMAN}),
    proportions=PROPORTIONS,
    make_pen=roman_pen,
    sound={
        "stem": Range(0.10, 0.20),
        "bar": Range(0.22, 0.52),
        "width": Range(0.55, 1.8),
        "contrast": Range(0.25, 0.6),
        "slant_deg": Range(-20.0, 20.0),
        "aperture": Range(0.7, 1.3),
        "serif": Range(0.04, 0.18),
        "bracket": Range(0.0, 0.12),
    },
    defaults=LetterParameters(stem=0.155, contrast=0.36),
)
