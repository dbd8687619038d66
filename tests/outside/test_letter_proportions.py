"""Our alphabets against good type: widths, bars, overshoots and whites.

Two sources. The figures written down here are medians over open typefaces measured on their outlines: for the gothic
regular and bold over roboto, archivo, barlow, libre-franklin, public-sans and work-sans, condensed over oswald and
saira-condensed; for the slab over roboto-slab, zilla-slab, bitter and rokkitt; for the roman over libre-caslon-text,
old-standard-tt, libre-bodoni, libre-baskerville, playfair-display and source-serif-4 (npm ``@fontsource`` packages
5.x, latin subsets). And five families are measured again here, at the stems they have: from the pip packages
font-roboto, font-hanken-grotesk, font-manrope and font-source-sans-pro beside the gothic, and from
font-source-serif-pro beside the roman. No slab face was found among pip packages.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from statistics import median

import pytest

from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets import STYLES, LetterParameters, ParametricAlphabet
from heraldry.lettering.fonts import font_from_file
from heraldry.lettering.scan import ink_spans

CAP = 100.0
CONDENSED_WIDTH = 0.55

# stem, width of H, crossbar of H, height of its centre, bar of A, side and crown of O in stems, white left of H
MASTERS = {
    "regular": (0.129, 1.0, 0.777, 0.110, 0.514, 0.324, 1.042, 0.861, 0.131),
    "bold": (0.212, 1.0, 0.833, 0.177, 0.512, 0.303, 1.028, 0.806, 0.102),
    "condensed": (0.169, CONDENSED_WIDTH, 0.580, 0.129, 0.510, 0.297, 1.016, 0.835, 0.078),
}

# Width of the ink in widths of H: regular, bold, condensed.
WIDTHS = {
    "A": (1.16, 1.15, 1.11), "B": (0.95, 0.98, 0.98), "C": (1.05, 1.03, 0.89), "D": (1.01, 1.00, 0.97),
    "E": (0.91, 0.89, 0.78), "F": (0.86, 0.85, 0.75), "G": (1.07, 1.04, 0.98), "J": (0.80, 0.82, None),
    "K": (1.01, 1.04, 1.03), "L": (0.82, 0.83, 0.75), "M": (1.22, 1.26, 1.30), "N": (1.00, 1.01, 0.96),
    "O": (1.13, 1.09, 1.03), "P": (0.96, 0.95, 0.95), "Q": (1.13, 1.09, 1.06), "R": (0.99, 1.00, 1.00),
    "S": (1.00, 0.99, 0.93), "T": (1.02, 1.00, 0.92), "U": (0.99, 0.98, 0.99), "V": (1.11, 1.11, 1.09),
    "W": (1.66, 1.59, 1.62), "X": (1.07, 1.09, 1.10), "Y": (1.07, 1.08, 1.08), "Z": (0.98, 0.95, 0.87),
    "0": (0.90, 0.92, 0.94), "1": (0.51, 0.55, 0.57), "2": (0.89, 0.88, 0.91), "3": (0.89, 0.89, 0.91),
    "4": (0.95, 0.96, 1.01), "5": (0.86, 0.88, 0.90), "6": (0.88, 0.90, 0.94), "7": (0.88, 0.89, 0.85),
    "8": (0.89, 0.90, 0.96), "9": (0.88, 0.89, 0.94), "&": (1.10, 1.13, 1.16),
}  # fmt: skip
# A condensed J is left out: in those faces its hook has no counter, ours keeps one open at any stem.

# White left and right of the ink in whites beside H, at the regular master.
WHITES = {
    "A": (0.31, 0.31), "B": (1.00, 0.63), "C": (0.65, 0.54), "E": (1.00, 0.55), "L": (1.00, 0.35),
    "O": (0.65, 0.65), "S": (0.52, 0.58), "T": (0.30, 0.28), "V": (0.25, 0.25), "Y": (0.12, 0.12),
}  # fmt: skip

# The same for letters with serifs, at the stem of the medians: stem, width of H, bar, its height, bar of A, side and
# crown of O in stems, white left of H, overshoot, x-height.
SERIFED = {
    "slab": (0.171, 1.027, 0.126, 0.508, 0.342, 1.055, 0.812, 0.059, 0.015, 0.718),
    "roman": (0.136, 1.013, 0.048, 0.513, 0.375, 1.173, 0.388, 0.058, 0.018, 0.688),
}
SERIFED_WIDTHS = {
    "A": (0.99, 0.95), "B": (0.82, 0.81), "C": (0.82, 0.80), "D": (0.91, 0.93), "E": (0.77, 0.77), "F": (0.76, 0.74),
    "G": (0.92, 0.91), "I": (0.39, 0.40), "K": (0.93, 0.93), "L": (0.73, 0.78), "M": (1.18, 1.17), "N": (1.01, 0.96),
    "O": (0.94, 0.92), "P": (0.80, 0.76), "Q": (0.99, 0.94), "R": (0.86, 0.91), "S": (0.71, 0.63), "T": (0.87, 0.85),
    "U": (0.99, 0.94), "V": (0.98, 0.96), "W": (1.43, 1.40), "X": (0.95, 0.95), "Y": (0.93, 0.92), "Z": (0.76, 0.77),
    "0": (0.72, 0.71), "1": (0.49, 0.49), "2": (0.67, 0.61), "3": (0.67, 0.60), "4": (0.74, 0.67), "5": (0.66, 0.60),
    "6": (0.67, 0.63), "7": (0.69, 0.59), "8": (0.67, 0.62), "9": (0.67, 0.63), "&": (0.83, 0.98),
}  # fmt: skip
# J is left out: in most of those faces it hangs below the line, ours stands on it.

# White left and right of the ink in whites beside H. The right of R is left out: those romans throw its leg out.
SERIFED_WHITES = {
    "slab": {
        "A": (0.08, 0.07), "B": (1.00, 1.01), "C": (1.04, 1.11), "D": (1.00, 1.10), "E": (1.00, 1.30), "F": (1.00, 0.65),
        "G": (1.04, 0.99), "L": (1.00, 0.64), "O": (1.12, 1.09), "P": (1.00, 0.70), "S": (1.43, 1.08), "T": (0.56, 0.56),
        "U": (0.76, 0.74), "V": (0.11, 0.10), "Y": (0.07, 0.08), "Z": (1.03, 1.04),
    },
    "roman": {
        "A": (-0.15, -0.17), "B": (1.00, 1.18), "C": (1.26, 1.50), "D": (1.00, 1.27), "E": (1.00, 1.17), "F": (1.00, 0.79),
        "G": (1.27, 0.67), "L": (1.00, 0.82), "O": (1.26, 1.25), "P": (1.00, 0.81), "S": (1.41, 1.25), "T": (0.61, 0.61),
        "U": (0.69, 0.65), "V": (-0.16, -0.17), "Y": (-0.09, -0.01), "Z": (0.84, 1.05),
    },
}  # fmt: skip

FACES = (
    ("font_roboto", "Roboto-Regular.ttf"),
    ("font_roboto", "Roboto-Bold.ttf"),
    ("font_hanken_grotesk", "HankenGrotesk-Regular.otf"),
    ("font_hanken_grotesk", "HankenGrotesk-Bold.otf"),
    ("font_manrope", "Manrope-Regular.ttf"),
    ("font_manrope", "Manrope-Bold.ttf"),
    ("font_source_sans_pro", "SourceSansPro-Regular.otf"),
    ("font_source_sans_pro", "SourceSansPro-Bold.otf"),
)
SERIF_FACES = (
    ("font_source_serif_pro", "SourceSerifPro-Regular.otf"),
    ("font_source_serif_pro", "SourceSerifPro-Semibold.otf"),
)


@cache
def ours(stem: float, width: float = 1.0, style: str = "gothic") -> ParametricAlphabet:
    return ParametricAlphabet(style, STYLES[style], LetterParameters(stem=stem, width=width))


def glyph(alphabet, character: str) -> Outline:
    return alphabet.set_line(character, CAP).glyphs[0].outline


def wide(alphabet, character: str) -> float:
    return bounds(glyph(alphabet, character)).width / CAP


def stem_of(alphabet) -> float:
    left, right = ink_spans(glyph(alphabet, "H"), 0.25 * CAP)[0]
    return (right - left) / CAP


def levels(alphabet, character: str, place: float) -> list[tuple[float, float]]:
    """The stretches of ink on an upright line through a letter, at a part of its width, from below."""
    outline = glyph(alphabet, character)
    box = bounds(outline)
    across = outline.data[..., ::-1].copy()
    turned = Outline(outline.kinds, across, outline.rings)
    return [(low / CAP, high / CAP) for low, high in ink_spans(turned, box.left + place * box.width)]


def strokes(alphabet, stem):
    """Thickness and height of bars in cap heights, and how thick O is in stems."""
    ((foot, head),) = levels(alphabet, "H", 0.5)
    (foot_of_a, head_of_a), _ = levels(alphabet, "A", 0.5)
    left, right = ink_spans(glyph(alphabet, "O"), CAP / 2)[0]
    (low, high), _ = levels(alphabet, "O", 0.5)
    return {
        "bar": head - foot,
        "bar of H": (foot + head) / 2,
        "bar of A": (foot_of_a + head_of_a) / 2,
        "side of O": (right - left) / CAP / stem,
        "crown of O": (high - low) / stem,
    }


@pytest.mark.parametrize("master", MASTERS)
def test_widths_stand_within_a_tenth_of_the_medians(master):
    stem, width, wide_of_h, *_ = MASTERS[master]
    alphabet = ours(stem, width)
    assert wide(alphabet, "H") == pytest.approx(wide_of_h, rel=0.05)
    for character, figures in WIDTHS.items():
        median_width = figures[list(MASTERS).index(master)]
        if median_width is not None:
            assert wide(alphabet, character) / wide_of_h == pytest.approx(median_width, rel=0.10), character


@pytest.mark.parametrize("master", MASTERS)
def test_bars_and_rounds_are_as_thick_and_high_as_the_medians(master):
    stem, width, _, bar, bar_of_h, bar_of_a, side, crown, white = MASTERS[master]
    alphabet = ours(stem, width)
    assert strokes(alphabet, stem) == {
        "bar": pytest.approx(bar, abs=0.01),
        "bar of H": pytest.approx(bar_of_h, abs=0.02),
        "bar of A": pytest.approx(bar_of_a, abs=0.02),
        "side of O": pytest.approx(side, abs=0.03),
        "crown of O": pytest.approx(crown, abs=0.08),
    }
    assert bounds(glyph(alphabet, "H")).left / CAP == pytest.approx(white, rel=0.15)


def test_rounds_pass_both_lines_by_the_median():
    box = bounds(glyph(ours(0.17), "O"))
    assert (-box.bottom / CAP, box.top / CAP - 1) == pytest.approx((0.014, 0.014), abs=0.006)
    assert bounds(glyph(ours(0.17), "8")).height / CAP - 1 == pytest.approx(0.028, abs=0.012)
    assert bounds(glyph(ours(0.17), "x")).top / CAP == pytest.approx(0.735, abs=0.02)


def test_whites_stand_within_reach_of_the_medians():
    alphabet = ours(0.129)
    unit = bounds(glyph(alphabet, "H")).left
    for character, (left, right) in WHITES.items():
        line = alphabet.set_line(character, CAP)
        box = bounds(line.outline)
        found = (box.left / unit, (line.advance_mm - box.right) / unit)
        assert found == pytest.approx((left, right), abs=0.15), character


@pytest.mark.parametrize("style", SERIFED)
def test_letters_with_serifs_are_as_wide_as_the_medians(style):
    stem, wide_of_h, *_ = SERIFED[style]
    alphabet = ours(stem, style=style)
    assert wide(alphabet, "H") == pytest.approx(wide_of_h, rel=0.02)
    for character, medians in SERIFED_WIDTHS.items():
        expected = medians[list(SERIFED).index(style)]
        assert wide(alphabet, character) / wide_of_h == pytest.approx(expected, rel=0.10), character


@pytest.mark.parametrize("style", SERIFED)
def test_letters_with_serifs_are_as_thick_and_high_as_the_medians(style):
    stem, _, bar, bar_of_h, bar_of_a, side, crown, white, over, x_height = SERIFED[style]
    alphabet = ours(stem, style=style)
    assert strokes(alphabet, stem) == {
        "bar": pytest.approx(bar, abs=0.006),
        "bar of H": pytest.approx(bar_of_h, abs=0.02),
        "bar of A": pytest.approx(bar_of_a, abs=0.02),
        "side of O": pytest.approx(side, abs=0.03),
        "crown of O": pytest.approx(crown, abs=0.03),
    }
    assert bounds(glyph(alphabet, "H")).left / CAP == pytest.approx(white, rel=0.10)
    assert -bounds(glyph(alphabet, "O")).bottom / CAP == pytest.approx(over, abs=0.006)
    assert bounds(glyph(alphabet, "x")).top / CAP == pytest.approx(x_height, abs=0.02)


@pytest.mark.parametrize("style", SERIFED)
def test_whites_of_letters_with_serifs_stand_within_reach_of_the_medians(style):
    alphabet = ours(SERIFED[style][0], style=style)
    unit = bounds(glyph(alphabet, "H")).left
    for character, medians in SERIFED_WHITES[style].items():
        line = alphabet.set_line(character, CAP)
        box = bounds(line.outline)
        found = (box.left / unit, (line.advance_mm - box.right) / unit)
        assert found == pytest.approx(medians, abs=0.15), character


@cache
def measured(faces_of: tuple[tuple[str, str], ...] = FACES) -> list[tuple[float, object]]:
    faces = [font_from_file(files(package) / "files" / file) for package, file in faces_of]
    return [(stem_of(face), face) for face in faces]


@pytest.mark.parametrize("character", "ABCDEFGKLMNOPRSTUVWXYZ0235689")
def test_widths_stand_among_those_of_four_families(character):
    """Beside each face our letter is drawn at its stem; the median of the ratios says how we stand."""
    ratios = []
    for stem, face in measured():
        alphabet = ours(min(max(stem, 0.10), 0.222))
        beside_h = wide(alphabet, character) / wide(alphabet, "H")
        ratios.append(beside_h / (wide(face, character) / wide(face, "H")))
    assert median(ratios) == pytest.approx(1.0, abs=0.12)


def test_strokes_stand_among_those_of_four_families():
    """Bar of H, crown of O and side of O in stems, and the overshoot in cap heights: our figure beside the median."""

    def figures(alphabet, stem: float) -> tuple[float, float, float, float]:
        ((low, high),) = levels(alphabet, "H", 0.5)
        (foot, crown), _ = levels(alphabet, "O", 0.5)
        left, right = ink_spans(glyph(alphabet, "O"), CAP / 2)[0]
        return (
            (high - low) / stem,
            (crown - foot) / stem,
            (right - left) / CAP / stem,
            -bounds(glyph(alphabet, "O")).bottom / CAP,
        )

    theirs = [figures(face, stem) for stem, face in measured()]
    mine = [figures(ours(stem), stem) for stem, _ in measured() if 0.10 <= stem <= 0.222]
    bar, crown, side, over = (median(column) for column in zip(*theirs, strict=True))
    our_bar, our_crown, our_side, our_over = (median(column) for column in zip(*mine, strict=True))
    assert our_bar == pytest.approx(bar, abs=0.06)
    assert our_crown == pytest.approx(crown, abs=0.08)
    assert our_side == pytest.approx(side, abs=0.08)
    assert our_over == pytest.approx(over, abs=0.006)


@pytest.mark.parametrize("character", "ABCDEFGIKLMNOPRSTUVWXYZ")
def test_roman_widths_stand_among_those_of_source_serif(character):
    """Its figures are left out: they are all of one width there."""
    ratios = []
    for stem, face in measured(SERIF_FACES):
        beside_h = wide(ours(stem, style="roman"), character) / wide(ours(stem, style="roman"), "H")
        ratios.append(beside_h / (wide(face, character) / wide(face, "H")))
    assert median(ratios) == pytest.approx(1.0, abs=0.15)


def test_roman_rounds_are_stressed_like_those_of_source_serif():
    """Thick sides and thin crowns; ours thinner, as those of the medians are."""
    for stem, face in measured(SERIF_FACES):
        for alphabet in (face, ours(stem, style="roman")):
            (foot, crown), _ = levels(alphabet, "O", 0.5)
            left, right = ink_spans(glyph(alphabet, "O"), CAP / 2)[0]
            assert 1.0 < (right - left) / CAP / stem < 1.25
            assert 0.2 < (crown - foot) / stem < 0.6
