"""How high letters must be to be read."""

import math

import pytest

from heraldry.errors import LengthError
from heraldry.guard.reading import can_be_read, letter_height_mm


# 8.73 mm at 6 m and 8.87 mm at 20 ft for a 20/20 letter: figures printed for acuity charts; the others are
# h = 2 d tan(2.5′), reckoned apart from this code.
@pytest.mark.parametrize(
    ("distance", "height"),
    [(300, 0.436), (400, 0.582), (500, 0.727), (600, 0.873), (1000, 1.454), (6000, 8.73), (20 * 304.8, 8.87)],
)
def test_the_smallest_letter_at_a_distance(distance, height):
    assert letter_height_mm(distance) == pytest.approx(height, abs=6e-3 if distance > 5000 else 6e-4)


# A full-size 1 in stencil is 0.29 mm in HO (25.4 × 3.5 / 304.8); a 9 in mark 2.625 mm.
def test_an_inch_stencil_in_ho_is_for_the_look_and_a_mark_for_reading():
    assert not can_be_read(25.4 * 3.5 / 304.8, distance_mm=300)
    assert can_be_read(2.625, distance_mm=300)


@pytest.mark.parametrize("wrong", [0.0, -3.0, math.nan, math.inf])
def test_what_is_no_length_is_refused(wrong):
    with pytest.raises(LengthError, match=r"viewing distance .* more than 0"):
        letter_height_mm(wrong)
    with pytest.raises(LengthError, match=r"cap height .* more than 0"):
        can_be_read(wrong, 300)
