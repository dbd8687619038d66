"""The colour-bar plate against published plates and descriptions.

Sources: data/colour_bar_examples.csv says where each number stood with its check digit. Colour pairs of
data/colour_bar_digits.csv: freightcars.nakina.net, and an encyclopedia's article on automatic car
identification, which agree on every entry; which stripe is the upper one, and the three zones of start and
stop, from one general barcode library that checked them against a drawing. Sizes: freightcars.nakina.net
(another public description has lines of about 3/4 × 6 in).
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from heraldry.diagrams.colour_bars import bars, check_digit, draw_plate
from heraldry.diagrams.colour_bars.code import START, STOP, VALUE_BARS
from heraldry.geometry.measure import bounds
from heraldry.units import parse_scale

DATA = Path(__file__).parent / "data"
FULL_SIZE = parse_scale("1:1")
INCH_MM = 25.4


def rows(name: str) -> list[dict[str, str]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@pytest.mark.parametrize("row", rows("colour_bar_examples.csv"), ids=lambda row: row["digits"])
def test_published_plates(row):
    digits = row["digits"]
    assert sum(int(digit) * 2**i for i, digit in enumerate(digits)) == int(row["sum"])
    assert check_digit(digits) == int(row["check"])
    lines = bars(int(digits[0]), digits[1:4], digits[4:])
    assert len(lines) == 13
    assert lines[0] == START and lines[11] == STOP
    assert lines[12] == VALUE_BARS[int(row["check"])]
    assert [VALUE_BARS.index(line) for line in lines[1:11]] == [int(digit) for digit in digits]


@pytest.mark.parametrize(("digits", "wrong"), [("8350199918", 8), ("1631029621", 5), ("0550012905", 1)])
def test_other_check_digits_do_not_belong_to_them(digits, wrong):
    assert check_digit(digits) != wrong


@pytest.mark.parametrize("row", rows("colour_bar_digits.csv"), ids=lambda row: row["value"])
def test_colour_pairs(row):
    bar = VALUE_BARS[int(row["value"])]
    assert [stripe.colour for stripe in bar.upper] == [row["upper_stripe"]]
    assert [stripe.colour for stripe in bar.lower] == [row["lower_stripe"]]


def test_leading_zeros_fill_the_number():
    """Car 12905 of owner 550: 0550012905 (a railroad historical society's list)."""
    assert bars(0, "550", "12905") == bars(0, "550", "012905")


def test_start_has_three_zones_and_stop_is_start_turned_over():
    assert [stripe.colour for stripe in START.upper] == ["blue", "blue", "black"]
    assert [stripe.colour for stripe in START.lower] == ["black", "red", "red"]
    assert (STOP.upper, STOP.lower) == (START.lower, START.upper)
    widths = [float(stripe.end - stripe.start) for stripe in START.upper]
    assert widths == pytest.approx([0.23, 0.54, 0.23])


def test_full_size():
    """Lines 5 3/4 × 1 in, 3/8 in apart, on 10 1/2 × 22 in: thirteen lines and twelve gaps are 17 1/2 in."""
    plate = draw_plate(bars(1, "111", "111111"), FULL_SIZE)
    assert (plate.page.width / INCH_MM, plate.page.height / INCH_MM) == (pytest.approx(10.5), pytest.approx(22))
    ink = bounds(plate.white)
    assert ink.width / INCH_MM == pytest.approx(5.75)
    lines = [bounds(one) for one in (plate.blue, plate.red, plate.white)]
    stack = max(box.top for box in lines) - min(box.bottom for box in lines)
    assert check_digit("1111111111") == 0  # white over blue on top, red at the bottom: the stack's ends are coloured
    assert stack / INCH_MM == pytest.approx(17.5)
