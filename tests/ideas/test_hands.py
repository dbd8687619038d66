"""Lines of lettering are brought to a length by their width and tracking, and made lower only where they must be."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import HeraldryError
from heraldry.ideas.eras import ERAS, era_named
from heraldry.ideas.hands import EASY, MOST_TRACKING, Hand, caps_exactly, fitted, gaps_in

HANDS = tuple(dict.fromkeys(hand for era in ERAS.values() for hand in (*era.titles, *era.initials)))
TEXTS = ("FERN VALLEY", "UMBAGOG & MAGALLOWAY", "RY")


@settings(derandomize=True, deadline=None, max_examples=25)
@given(st.sampled_from(HANDS[:3]), st.sampled_from(TEXTS), st.floats(0.04, 0.2), st.floats(0.3, 1.0))
def test_a_line_never_is_longer_than_its_room(hand: Hand, text: str, cap: float, longest: float) -> None:
    line = fitted(hand, text, cap, longest)
    assert line.length <= longest + 1e-9
    assert line.cap <= cap
    drawn = line.cap * caps_exactly(hand, text, line.width) + line.tracking * gaps_in(text)
    assert drawn == pytest.approx(line.length)
    assert EASY - 1e-9 <= line.tracking / line.cap <= MOST_TRACKING + 1e-9


def test_a_short_line_is_not_torn_apart() -> None:
    line = fitted(HANDS[0], "FV", 0.1, 1.0)
    assert line.cap == 0.1
    assert line.length < 0.5


def test_a_long_line_becomes_narrow_before_it_becomes_low() -> None:
    hand = HANDS[0]
    at_its_widest = 0.1 * (caps_exactly(hand, TEXTS[1], hand.least) + 0.5)
    line = fitted(hand, TEXTS[1], 0.1, at_its_widest)
    assert line.cap == 0.1
    assert line.width < 1.0


@pytest.mark.parametrize(
    ("text", "name"), [("1850", "1880s"), ("1909", "1880s"), ("1910s", "1920s"), ("1950s", "1950s"), ("1999", "1970s")]
)
def test_a_year_lies_in_its_era(text: str, name: str) -> None:
    assert era_named(text).name == name


def test_there_is_no_era_before_railroads() -> None:
    with pytest.raises(HeraldryError, match="there was no railroad in 1066"):
        era_named("1066")
