"""Inks on paints: the double pass of light, and what it leaves to be seen."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import ColourError
from heraldry.guard.colour import colour_on, difference, judge

CALM = settings(derandomize=True, deadline=None, max_examples=60)
COLOURS = st.integers(0, 0xFFFFFF).map("#{:06x}".format)


def linear(channel):
    """The decoding curve of sRGB, IEC 61966-2-1."""
    v = channel / 255
    return v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4


def encoded(light):
    return light * 12.92 if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055


def channels(colour):
    return [int(colour[i : i + 2], 16) for i in (1, 3, 5)]


@CALM
@given(COLOURS, COLOURS)
def test_a_transparent_ink_multiplies_the_light(paint, ink):
    """Beer-Lambert with the light passing twice: R = R_paint · R_ink / R_white, in linear light."""
    pairs = zip(channels(paint), channels(ink), strict=True)
    expected = [255 * encoded(linear(p) * linear(i)) for p, i in pairs]
    assert channels(colour_on(paint, ink)) == pytest.approx(expected, abs=0.51)


@CALM
@given(COLOURS, COLOURS)
def test_two_layers_are_the_same_in_either_order(one, other):
    assert colour_on(one, other) == colour_on(other, one)


@CALM
@given(COLOURS)
def test_white_lets_everything_through_and_black_nothing(colour):
    assert colour_on(colour, "#ffffff") == colour
    assert colour_on("#ffffff", colour) == colour
    assert colour_on(colour, "#000000") == "#000000"


@CALM
@given(COLOURS, COLOURS)
def test_white_film_and_opaque_ink_hide_the_paint(paint, ink):
    assert colour_on(paint, ink, film="white") == ink
    assert colour_on(paint, ink, film="clear", opaque=True) == ink


# The ochre and the grounds were reckoned by the same formula apart from this code, to the digits given.
@pytest.mark.parametrize(
    ("ink", "paint", "seen", "from_paint", "from_wanted"),
    [
        ("#e8b400", "#1f3b2d", "#1b2700", 11, 63),
        ("#e8b400", "#d9d4c5", "#c59500", 27, 9),
        ("#c8102e", "#3a4a5a", "#2b0109", None, None),
        ("#10306b", "#b9bcc0", None, 61, None),
    ],
)
def test_inks_on_paints(ink, paint, seen, from_paint, from_wanted):
    verdict = judge(ink, paint)
    assert seen in (None, verdict.seen_hex)
    assert from_paint is None or verdict.from_paint == pytest.approx(from_paint, abs=0.5)
    assert from_wanted is None or verdict.from_wanted == pytest.approx(from_wanted, abs=0.5)


def test_ochre_is_lost_on_dark_green_seen_on_cream_and_true_on_white_film():
    lost, seen = judge("#e8b400", "#1f3b2d"), judge("#e8b400", "#d9d4c5")
    assert not lost.is_readable
    assert not lost.is_true
    assert seen.is_readable
    assert not seen.is_true
    on_white = judge("#e8b400", "#1f3b2d", film="white")
    assert on_white.is_readable
    assert on_white.is_true
    assert on_white.from_wanted == 0.0


def test_white_lettering_needs_an_opaque_white():
    assert judge("#ffffff", "#202020").from_paint == 0.0
    assert not judge("#ffffff", "#202020").is_readable
    assert judge("#ffffff", "#202020", opaque=True).is_readable


def test_capital_digits_are_read_too():
    assert colour_on("#FFFFFF", "#C8102E") == "#c8102e"


@pytest.mark.parametrize("wrong", ["red", "#fff", "#12345g", "1f3b2d", "#1f3b2d ", "", "#1f3b2d00"])
def test_what_is_no_colour_is_refused(wrong):
    with pytest.raises(ColourError, match="must be like '#1f3b2d'"):
        colour_on(wrong, "#000000")
    with pytest.raises(ColourError, match="six hexadecimal digits"):
        difference("#000000", wrong)
