"""Container numbers against published ones: each row of data/iso6346_numbers.csv names its source.

The rule by hand (ISO 6346, by way of public descriptions of it): letters from A = 10, passing over 11, 22 and
33; weights 1, 2, 4…; the sum modulo 11, and 10 is written 0.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from heraldry.diagrams.containers import container_number
from heraldry.errors import NumberError

LETTER_VALUES = [value for value in range(10, 39) if value % 11]
with (Path(__file__).parent / "data" / "iso6346_numbers.csv").open(encoding="utf-8", newline="") as file:
    NUMBERS = list(csv.DictReader(file))


def value(character: str) -> int:
    return int(character) if character.isdigit() else LETTER_VALUES[ord(character) - ord("A")]


def test_values_of_letters():
    """B 12, K 21, L 23, U 32, V 34, Z 38."""
    assert [value(letter) for letter in "ABKLUVZ"] == [10, 12, 21, 23, 32, 34, 38]
    assert len(LETTER_VALUES) == 26


@pytest.mark.parametrize("row", NUMBERS, ids=lambda row: row["number"])
def test_published_numbers(row):
    number = row["number"]
    assert sum(value(character) * 2**i for i, character in enumerate(number[:10])) == int(row["weighted_sum"])
    assert int(row["weighted_sum"]) % 11 % 10 == int(row["check"])
    assert container_number(number).check_digit == container_number(number[:10]).check_digit == row["check"]


@pytest.mark.parametrize("row", NUMBERS, ids=lambda row: row["number"])
@pytest.mark.parametrize("by", range(1, 10))
def test_other_check_digits_are_refused(row, by):
    wrong = row["number"][:10] + str((int(row["check"]) + by) % 10)
    with pytest.raises(NumberError, match=f"the check digit is wrong, .* {row['check']} would be right"):
        container_number(wrong)


def test_category_r_is_not_of_the_standard():
    """The library would take it; the standard has U, J and Z."""
    with pytest.raises(NumberError, match="the fourth letter is a category, found R"):
        container_number("CSQR305438")
