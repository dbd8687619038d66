"""A series of road numbers in one line."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.diagrams.numbers import parse_series
from heraldry.diagrams.numbers.series import MAX_NUMBERS, MAX_TEXT
from heraldry.errors import NumberError

BOUNDED = settings(derandomize=True, deadline=None, max_examples=150)


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("301", "301"),
        ("301-304", "301 302 303 304"),
        ("301–304", "301 302 303 304"),
        ("301 - 304", "301 302 303 304"),
        ("301-309 by 2", "301 303 305 307 309"),
        ("301-308 BY 3", "301 304 307"),
        ("301, 305, 310-312", "301 305 310 311 312"),
        ("310-312,301", "310 311 312 301"),
        ("301-306 skip 303", "301 302 304 305 306"),
        ("301-306 Skip 303, 305-306", "301 302 304"),
        ("301-309 by 2 skip 300-304 by 1", "305 307 309"),
        ("0098-0101", "0098 0099 0100 0101"),
        ("098, 99-101", "098 99 100 101"),
        ("8-11", "8 9 10 11"),
        ("0-2", "0 1 2"),
        ("999998-999999", "999998 999999"),
        ("301-301", "301"),
        ("301-304 skip 0-999999 by 2", "301 303"),
    ],
)
def test_the_one_clear_way(text, numbers):
    assert parse_series(text) == tuple(numbers.split())


@pytest.mark.parametrize(
    ("text", "position", "said"),
    [
        ("", 0, "found nothing"),
        ("   ", 3, "found nothing"),
        ("301,,302", 4, "found nothing between two commas"),
        ("301-305,", 8, "found nothing between two commas or at an end"),
        ("skip 301", 0, "found nothing"),
        ("301 skip", 8, "found nothing"),
        ("301..305", 0, "a range is written with a hyphen, found '301..305', write 301-305"),
        ("12, 301 to 305", 4, "found '301 to 305', write 301-305"),
        ("301—305", 0, "found '301—305', write 301-305"),
        ("301−305", 0, "found '301−305', write 301-305"),
        ("301:305", 0, "write 301-305"),
        ("301 305", 0, "neither a number nor a range, found '301 305'"),
        ("301-", 0, "neither a number nor a range, found '301-'"),
        ("301-303-305", 0, "found '301-303-305'"),
        ("301-30A", 0, "no road number, found '30A'"),
        ("305-301", 0, "a range runs upwards, found 305-301, write 301-305"),
        ("301-305 by 0", 0, "a step is a whole number from 1, found 'by 0'"),
        ("301-305 by -2", 0, "found 'by -2', write by 2"),
        ("301-305 by two", 0, "found 'by two'"),
        ("01-100", 0, "as many digits, found 01-100, write 001-100"),
        ("1-010", 0, "write 001-010"),
        ("1, 1234567", 3, "7 digits, found 1234567, at most 6"),
        ("301-303, 302-305", 9, "no number is given twice, found 302, 303 again"),
        ("301, 0301", 5, "found 301 again"),
        ("1-20, 1-20", 6, "found 1, 2, 3, 4, 5 and 15 more again"),
        ("301-310 skip 305, 311", 18, "only numbers of the series are skipped, found 311"),
        ("301-309 by 2 skip 302", 18, "found 302, which is not in it"),
        ("301-303 skip 301-303", 13, "every number of the series is skipped"),
        ("301 skip 301 skip 302", 13, "'skip' stands twice"),
        ("1-999999", 0, f"a series of 999,999 numbers, at most {MAX_NUMBERS:,}"),
        ("1," * MAX_TEXT, 0, f"at most {MAX_TEXT:,}: put the numbers in a table"),
    ],
)
def test_every_slip_says_where_and_what_would_be_right(text, position, said):
    with pytest.raises(NumberError) as caught:
        parse_series(text)
    assert said in str(caught.value)
    assert caught.value.position == position


@BOUNDED
@given(st.integers(0, 900_000), st.integers(0, 300), st.integers(1, 9), st.integers(1, 6))
def test_a_range_is_what_counting_gives(first, length, step, digits):
    last = first + length
    digits = max(digits, len(str(last)))
    painted = [f"{value:0{digits}d}" for value in range(first, last + 1, step)]
    assert parse_series(f"{first:0{digits}d}-{last:0{digits}d} by {step}") == tuple(painted)


@BOUNDED
@given(st.lists(st.integers(0, 99_999), min_size=2, max_size=40, unique=True), st.data())
def test_a_list_without_what_is_skipped(values, data):
    gone = data.draw(st.lists(st.sampled_from(values), max_size=len(values) - 1, unique=True))
    text = ", ".join(map(str, values)) + (" skip " + ", ".join(map(str, gone)) if gone else "")
    assert parse_series(text) == tuple(str(value) for value in values if value not in gone)


@BOUNDED
@given(st.text(alphabet="0123456789 -–,.byskipto٣\n", max_size=40))
def test_any_text_gives_road_numbers_or_says_why_not(text):
    try:
        numbers = parse_series(text)
    except NumberError as error:
        assert 0 <= error.position <= len(text)
        assert len(str(error)) > 20
    else:
        assert numbers and len(set(map(int, numbers))) == len(numbers)
        assert all(re.fullmatch("[0-9]{1,6}", number) for number in numbers)


def test_the_table_in_the_module_is_true():
    """Every form that the module names can be read."""
    import heraldry.diagrams.numbers.series as room

    forms = re.findall(r"^``(.+?)``", room.__doc__, re.MULTILINE)
    assert len(forms) == 5
    assert all(parse_series(form) for form in forms)
