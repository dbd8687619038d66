"""One road number."""

import pytest

from heraldry.diagrams.numbers import road_number
from heraldry.errors import NumberError


@pytest.mark.parametrize(("text", "number"), [("301", "301"), (" 0301\t", "0301"), ("0", "0"), ("999999", "999999")])
def test_digits_are_kept_as_they_are_painted(text, number):
    assert road_number(text) == number


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "found nothing"),
        ("30A", "found '30A', write digits only"),
        ("-301", "found '-301'"),
        ("30 1", "found '30 1'"),
        ("٣٠١", "found '٣٠١'"),
        ("²", "found '²'"),
        ("1234567", "7 digits, found 1234567, at most 6"),
        ("9" * 500, "500 digits, found 999999999999999999999999999999…, at most 6"),
        ("x" * 500, "found '" + "x" * 30 + "', write"),
    ],
)
def test_anything_else_is_refused(text, said):
    with pytest.raises(NumberError) as caught:
        road_number(text)
    assert said in str(caught.value)


def test_other_registers_take_more_digits():
    assert road_number("12345678", max_digits=8) == "12345678"
