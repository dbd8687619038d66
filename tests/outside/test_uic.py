"""Twelve-digit wagon numbers, engine numbers and a load grid against published ones.

Sources: each row of data/uic_numbers.csv names its own; engine numbers: mec-bergheim.de (118 098-3, worked) and
published photographs; the two wrong wagon numbers stand so in public texts. The load grid: a Usenet posting of
1993 that gives tare and grid of one wagon.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from heraldry.diagrams.europe import engine_number, load_grid, wagon_number
from heraldry.errors import NumberError

with (Path(__file__).parent / "data" / "uic_numbers.csv").open(encoding="utf-8", newline="") as file:
    NUMBERS = list(csv.DictReader(file))


def luhn_by_hand(eleven: str) -> int:
    """The rule as it is published: 2, 1, 2… from the right, sum of the digits of the products, up to the next ten."""
    products = [int(digit) * (2 if i % 2 == 0 else 1) for i, digit in enumerate(reversed(eleven))]
    return -sum(int(digit) for product in products for digit in str(product)) % 10


def test_all_rows_are_there():
    assert len(NUMBERS) == 10 and all(row["source"] for row in NUMBERS)


@pytest.mark.parametrize("row", NUMBERS, ids=lambda row: row["digits"])
def test_published_wagons(row):
    digits = row["digits"]
    assert wagon_number(row["number"]).digits == digits
    assert wagon_number(digits[:11]).check_digit == digits[11] == str(luhn_by_hand(digits[:11]))


@pytest.mark.parametrize(("text", "right"), [("23 80 5123 456-7", "1"), ("31 80 495 6 123-4", "2")])
def test_wagons_published_wrong(text, right):
    with pytest.raises(NumberError, match=f"the check digit is wrong, found {text[-1]} in '{text}', {right} would"):
        wagon_number(text)


@pytest.mark.parametrize("text", ["118 098-3", "182 002-6", "220 071-5"])
def test_published_engines(text):
    assert str(engine_number(text)) == text == str(engine_number(text[:7]))


def test_how_a_wagon_carries_it():
    """Four pairs of groups and a hyphen: Wikipedia, UIC wagon numbers."""
    assert str(wagon_number("218124712173")) == "21 81 2471 217-3"


def test_a_published_load_grid():
    """Two axles, tare 11,100 kg: A 20.5, B 24.5, C 28.5 t (Usenet, 1993)."""
    assert {limit.line_class: str(limit) for limit in load_grid(11_100, 2)} == {"A": "20.5", "B": "24.5", "C": "28.5"}
