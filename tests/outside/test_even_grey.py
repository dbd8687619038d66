"""Words in our alphabets are as evenly grey as in good type.

The words are blurred by a quarter of their cap height, as ``tests/greyness`` says; the faces are fourteen of seven
open families, from the pip packages named here. Black faces stand tighter and look more even, light ones less, so
that our usual letters are held against the median of all, and at each face's own stem against that face.
"""

from __future__ import annotations

from functools import cache
from statistics import mean, median

import numpy as np
import pytest

from heraldry.lettering.alphabet import Alphabet
from heraldry.lettering.alphabets import STYLES, LetterParameters
from heraldry.lettering.alphabets.named import ours
from tests.faces import GOTHIC_FACES, SERIF_FACES, face
from tests.greyness import WORDS, darkness, greyness

NO_WORSE_AT_ONE_STEM = 1.05
"""Beside a face of the same stem ours is drawn wider than most (its H is that of six families), and so less even."""


# Thick and thin letters, and wide round ones between serifs, are never as even as block letters: serifed faces are held
# against their own kind, regular and bold of each as this measure found them (npm @fontsource packages 5.x, latin
# subsets): roboto-slab, zilla-slab, bitter, rokkitt; libre-caslon-text, old-standard-tt, libre-bodoni,
# libre-baskerville, playfair-display, source-serif-4.
KINDS = {
    "slab": (0.1807, 0.1576, 0.1782, 0.1513, 0.1697, 0.1440, 0.1949, 0.1677),
    "roman": (0.2108, 0.2109, 0.2083, 0.2093, 0.2129, 0.2171, 0.2264, 0.2261, 0.2052, 0.2076, 0.1854, 0.1814),
}


def grey_of(alphabet: Alphabet) -> float:
    return mean(greyness(alphabet.set_line(word, 1.0)) for word in WORDS)


@cache
def grey_of_face(package: str, file: str) -> float:
    return grey_of(face(package, file))


def test_there_are_two_hundred_different_words() -> None:
    assert len(WORDS) == len(set(WORDS)) == 200


def test_the_usual_gothic_is_no_worse_than_the_median_of_all_faces() -> None:
    assert grey_of(ours("gothic")) <= median(grey_of_face(*name) for name in GOTHIC_FACES + SERIF_FACES)


@pytest.mark.parametrize("style", ["slab", "roman"])
def test_serifed_letters_are_no_worse_than_the_median_of_their_kind(style: str) -> None:
    assert grey_of(ours(style)) <= median(KINDS[style])


def test_the_figures_of_serifed_faces_are_by_this_measure() -> None:
    """A serifed face that pip carries too, measured again, stands among those written down."""
    low, high = min(KINDS["roman"]), max(KINDS["roman"])
    for name in SERIF_FACES:
        assert low * 0.95 <= grey_of_face(*name) <= high


def test_the_gothic_stands_beside_each_face_at_its_stem() -> None:
    ratios = []
    for name in GOTHIC_FACES:
        stem = face(*name).stem
        if stem in STYLES["gothic"].sound["stem"]:
            ratios.append(grey_of(ours("gothic", LetterParameters(stem=stem))) / grey_of_face(*name))
    assert len(ratios) >= 6
    assert median(ratios) <= NO_WORSE_AT_ONE_STEM


def test_darkness_of_a_bar_and_of_a_stem_is_their_share() -> None:
    """The measure itself, on letters whose ink is known: I is all ink in its stem, a level bar its height's share."""
    gothic = ours("gothic", LetterParameters(stem=0.2, bar=0.15))
    stem = gothic.set_line("I", 10.0).glyphs[0].outline
    middle = np.array([float(stem.data[..., 0].mean())])
    assert darkness(stem, middle, 10.0) == pytest.approx(1.0)
    h = gothic.set_line("H", 10.0).glyphs[0].outline
    middle = np.array([float((h.data[..., 0].max() + h.data[..., 0].min()) / 2)])
    # The weight of a bell of 0.25 cut off at ±0.5, over 0.15 about a middle 0.013 off: 0.2467 by erf.
    assert darkness(h, middle, 10.0) == pytest.approx(0.2467, abs=0.001)
