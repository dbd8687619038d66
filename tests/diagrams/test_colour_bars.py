"""The colour-bar plate: its lines, and its outlines at a scale."""

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.diagrams.colour_bars import bars, check_digit, draw_plate, is_worn_in
from heraldry.diagrams.colour_bars.code import START, STOP, VALUE_BARS
from heraldry.errors import NumberError
from heraldry.geometry.boolean import contains, to_polygon
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.point import Point
from heraldry.units import HO, parse_scale

BOUNDED = settings(derandomize=True, deadline=None, max_examples=40)
TENTH = parse_scale("1:10")
COLOURS = ("black", "blue", "red", "white")


def colour_at(plate, x_in: float, y_in: float) -> list[str]:
    """Every colour that covers a place of the plate, in full-size inches from its middle."""
    place = Point(x_in * 2.54, y_in * 2.54)
    return [colour for colour in COLOURS if contains(getattr(plate, colour), place)]


def test_thirteen_lines_from_the_bottom_up():
    lines = bars(0, "942", "301")
    assert lines == (
        START,
        *(VALUE_BARS[int(digit)] for digit in "0942000301"),
        STOP,
        VALUE_BARS[check_digit("0942000301")],
    )


def test_no_two_values_look_alike():
    assert len(set(VALUE_BARS)) == 11
    assert len({START, STOP, *VALUE_BARS}) == 13


@BOUNDED
@given(st.text("0123456789", min_size=10, max_size=10), st.integers(0, 9), st.integers(1, 9))
def test_any_one_wrong_digit_changes_the_check(digits, place, by):
    wrong = digits[:place] + str((int(digits[place]) + by) % 10) + digits[place + 1 :]
    assert check_digit(wrong) != check_digit(digits)


@pytest.mark.parametrize(
    ("equipment", "owner", "number", "said"),
    [
        (10, "942", "1", "one digit, found 10, known: 0 railroad owned, 1 privately owned, 6"),
        (-1, "942", "1", "found -1"),
        (0, "42", "1", "3 digits of your choice, found '42'"),
        (0, "9420", "1", "found '9420'"),
        (0, "UMG", "1", "found 'UMG'"),
        (0, "942", "", "no road number, found nothing"),
        (0, "942", "1234567", "7 digits"),
    ],
)
def test_what_cannot_be_coded(equipment, owner, number, said):
    with pytest.raises(NumberError) as caught:
        bars(equipment, owner, number)
    assert said in str(caught.value)


@pytest.mark.parametrize(("year", "worn"), [(1966, False), (1967, True), (1977, True), (1978, False)])
def test_years(year, worn):
    assert is_worn_in(year) is worn


def test_a_plate_stays_until_the_car_is_painted_again():
    assert is_worn_in(1985, last_painted=1972)
    assert not is_worn_in(1985, last_painted=1980)
    assert not is_worn_in(1960, last_painted=1957)


@pytest.mark.parametrize("white", ["plain", "checkered"])
@pytest.mark.parametrize("scale", ["1:1", "1:8", "O", "HO", "N"])
def test_colours_lie_apart_and_cover_the_plate(scale, white):
    plate = draw_plate(bars(1, "205", "746813"), parse_scale(scale), white)
    shapes = [to_polygon(getattr(plate, colour)) for colour in COLOURS]
    whole = plate.page.width * plate.page.height
    assert all(shape.is_valid for shape in shapes)
    assert sum(shape.area for shape in shapes) == pytest.approx(whole, rel=2e-6)
    assert shapely.union_all(shapes).area == pytest.approx(whole, rel=2e-6)


def test_sizes_at_scale():
    plate = draw_plate(bars(0, "942", "301"), HO)
    assert plate.page.width == pytest.approx(10.5 * 25.4 / HO.ratio)
    assert plate.page.height == pytest.approx(22 * 25.4 / HO.ratio)
    assert bounds(plate.blue).width <= 5.75 * 25.4 / float(HO.ratio) + 2e-6


@pytest.mark.parametrize(
    ("value", "upper", "lower"),
    [(0, "white", "blue"), (2, "red", "white"), (3, "black", "red"), (6, "blue", "white"), (9, "blue", "blue")],
)
def test_a_digit_on_the_drawn_plate(value, upper, lower):
    plate = draw_plate(bars(0, "942", str(value)), TENTH)
    last_digit_in = -17.5 / 2 + 10 * 1.375
    assert colour_at(plate, 0.1, last_digit_in + 0.75) == [upper]
    assert colour_at(plate, 0.1, last_digit_in + 0.25) == [lower]
    assert colour_at(plate, 0.1, last_digit_in + 1.2) == ["black"]


def test_start_and_stop_on_the_drawn_plate():
    plate = draw_plate(bars(0, "942", "301"), TENTH)
    start_in, stop_in = -17.5 / 2, -17.5 / 2 + 11 * 1.375
    across = (-2.5, 0.0, 2.5)
    assert [colour_at(plate, x, start_in + 0.75) for x in across] == [["blue"], ["blue"], ["black"]]
    assert [colour_at(plate, x, start_in + 0.25) for x in across] == [["black"], ["red"], ["red"]]
    assert [colour_at(plate, x, stop_in + 0.75) for x in across] == [["black"], ["red"], ["red"]]
    assert [colour_at(plate, x, stop_in + 0.25) for x in across] == [["blue"], ["blue"], ["black"]]


def test_checks_are_half_of_the_white():
    lines = bars(1, "111", "111111")
    plain, checkered = draw_plate(lines, TENTH), draw_plate(lines, TENTH, "checkered")
    stripes = area(plain.white) / (5.75 * 0.5 * 2.54**2)
    assert stripes == pytest.approx(round(stripes))
    assert area(checkered.white) == pytest.approx(area(plain.white) / 2, rel=1e-5)
    assert area(checkered.blue) == area(plain.blue)
