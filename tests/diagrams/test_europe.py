"""European numbers and the load grid."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.diagrams.europe import LINE_CLASSES, engine_number, load_grid, wagon_number
from heraldry.errors import DataError, NumberError

BOUNDED = settings(derandomize=True, deadline=None, max_examples=100)


def test_the_parts_of_a_wagon_number():
    number = wagon_number("218124712173")
    parts = (number.exchange, number.country, number.type, number.serial, number.check_digit)
    assert parts == ("21", "81", "2471", "217", "3")


@pytest.mark.parametrize("text", ["21 81 2471 217-3", "21-81-2471217-3", " 21 81 247 1 217–3 ", "21 81 2471 217"])
def test_ways_to_write_it(text):
    assert str(wagon_number(text)) == "21 81 2471 217-3"


@pytest.mark.parametrize(
    ("arguments", "lines"),
    [
        ((), ("21", "81", "2471 217-3")),
        (("RIV",), ("21 RIV", "81", "2471 217-3")),
        (("TEN", "A"), ("21 TEN", "81 A", "2471 217-3")),
        (("RIV", "A", "UMR"), ("21 RIV", "81 A-UMR", "2471 217-3")),
    ],
)
def test_three_lines_on_the_side(arguments, lines):
    assert wagon_number("21 81 2471 217").lines(*arguments) == lines


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("", "AUST"), "a country is 1 to 3 capital letters, found 'AUST'"),
        (("", "a"), "found 'a'"),
        (("", "A", "U"), "a keeper is 2 to 5 capital letters, found 'U'"),
        (("", "", "UMR"), "found 'UMR' alone, give country_letters"),
    ],
)
def test_letters_that_are_none(arguments, said):
    with pytest.raises(NumberError) as caught:
        wagon_number("21 81 2471 217").lines(*arguments)
    assert said in str(caught.value)


@pytest.mark.parametrize(
    ("read", "text", "said"),
    [
        (wagon_number, "", "a wagon number is digits, spaces and a hyphen, found nothing"),
        (wagon_number, "21 81 2471 21X-3", "found '21 81 2471 21X-3'"),
        (wagon_number, "21 81 2471 21", "11 digits and a check digit, found 10 digits in"),
        (wagon_number, "2181247121734", "found 13 digits"),
        (wagon_number, "٢١٨١٢٤٧١٢١٧", "is digits"),
        (engine_number, "118 098-4", "the check digit is wrong, found 4 in '118 098-4', 3 would be right"),
        (engine_number, "118 09", "an engine number has 6 digits and a check digit, found 5"),
    ],
)
def test_what_is_no_number(read, text, said):
    with pytest.raises(NumberError) as caught:
        read(text)
    assert said in str(caught.value)


@BOUNDED
@given(st.text("0123456789", min_size=11, max_size=11), st.integers(0, 11), st.integers(1, 9))
def test_any_one_wrong_digit_is_caught(digits, place, by):
    right = wagon_number(digits).digits
    wrong = right[:place] + str((int(right[place]) + by) % 10) + right[place + 1 :]
    with pytest.raises(NumberError, match="the check digit is wrong"):
        wagon_number(wrong)


@BOUNDED
@given(st.integers(5_000, 30_000), st.integers(2, 8))
def test_no_axle_is_overloaded_and_no_half_tonne_is_lost(tare, axles):
    for limit in load_grid(tare, axles, classes=tuple(LINE_CLASSES)):
        spare = axles * LINE_CLASSES[limit.line_class] - tare - limit.load_kg
        assert 0 <= spare < 500 and limit.load_kg % 500 == 0


def test_the_wagon_itself_may_carry_less():
    assert [str(limit) for limit in load_grid(11_100, 2, capacity_kg=26_300)] == ["20.5", "24.5", "26.0"]


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ({"tare_kg": 0, "axles": 2}, "a tare of 0 kg is on no wagon"),
        ({"tare_kg": 900_000, "axles": 4}, "a tare of 900,000 kg"),
        ({"tare_kg": 11_100, "axles": 1}, "2 to 32 axles, found 1"),
        ({"tare_kg": 11_100, "axles": 2, "classes": ("E",)}, "unknown class of line, found 'E', known: A, B, C, D"),
        ({"tare_kg": 11_100, "axles": 2, "capacity_kg": 0}, "found a capacity of 0 kg"),
        ({"tare_kg": 31_700, "axles": 2}, "too heavy for class A, which allows 32,000 kg"),
    ],
)
def test_wagons_that_cannot_be(arguments, said):
    with pytest.raises(DataError) as caught:
        load_grid(**arguments)
    assert said in str(caught.value)
