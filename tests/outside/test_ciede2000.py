"""CIEDE2000 against the published test pairs.

Source: G. Sharma, W. Wu, E. N. Dalal, Color Res. Appl. 30 (2005) 21-30, Table 1: all 34 pairs, carried over
in data/ciede2000.txt.
"""

from pathlib import Path

import numpy as np
import pytest
from coloraide import Color

from heraldry.guard import colour

PAIRS = np.loadtxt(Path(__file__).parent / "data" / "ciede2000.txt").tolist()
FOUR_DECIMALS = 5e-5
# Pair 14 lies on the jump of the mean hue: the last bit of the arithmetic decides between two values.
ON_THE_JUMP = 13
EITHER = (4.8045, 4.7461)


def test_all_pairs_of_the_table_are_there():
    assert len(PAIRS) == 34


@pytest.mark.parametrize("number", range(34))
def test_a_pair_of_the_table(number, monkeypatch):
    *values, expected = PAIRS[number]
    lab = {"one": Color("lab-d65", values[:3]), "other": Color("lab-d65", values[3:])}
    monkeypatch.setattr(colour, "_lab", lab.__getitem__)
    found = colour.difference("one", "other")
    wanted = EITHER if number == ON_THE_JUMP else (expected,)
    assert any(found == pytest.approx(value, abs=FOUR_DECIMALS) for value in wanted)
    assert colour.difference("other", "one") == pytest.approx(found, abs=FOUR_DECIMALS) or number == ON_THE_JUMP


def test_our_colours_are_measured_under_the_white_of_srgb():
    """White is L* = 100, a* = b* = 0 under D65 (IEC 61966-2-1); adapted to another white it would not be."""
    assert colour._lab("#ffffff").coords() == pytest.approx([100, 0, 0], abs=0.01)
    assert colour._lab("#ffffff").space() == "lab-d65"
