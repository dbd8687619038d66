"""Names are parted as heralds use them."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import HeraldryError
from heraldry.ideas.words import LONGEST_NAME, MOST_INITIALS, parted, words_of


@pytest.mark.parametrize(
    ("name", "body", "kind", "initials"),
    [
        ("Fern Valley", "FERN VALLEY", "", "FV"),
        ("Fern Valley Railway", "FERN VALLEY", "RAILWAY", "FVR"),
        ("Umbagog & Magalloway Railroad", "UMBAGOG & MAGALLOWAY", "RAILROAD", "U&M"),
        (
            "Umbagog, Magalloway & Northern Railroad Company",
            "UMBAGOG, MAGALLOWAY & NORTHERN",
            "RAILROAD COMPANY",
            "UMN",
        ),
        ("Coös Line", "COÖS", "LINE", "CL"),
        ("Railroad", "RAILROAD", "", "R"),
        ("Kettle Rock and Western Ry. Co.", "KETTLE ROCK AND WESTERN", "RY. CO.", "KRW"),
    ],
)
def test_a_name_has_a_body_a_kind_and_initials(name: str, body: str, kind: str, initials: str) -> None:
    words = words_of(name)
    assert (words.body, words.kind, words.initials) == (body, kind, initials)


def test_what_stands_second_is_never_empty() -> None:
    assert words_of("Fern Valley Railway").second == "RAILWAY"
    assert words_of("Fern Valley", founded=1891).second == "SINCE 1891"
    assert words_of("Fern Valley").second == "FV"


def test_an_ampersand_goes_with_what_follows_where_halves_stand_apart() -> None:
    words = words_of("Umbagog & Magalloway Railroad")
    assert words.lines(2) == ("UMBAGOG &", "MAGALLOWAY")
    assert words.halves == ("UMBAGOG", "& MAGALLOWAY")


def test_given_initials_hold() -> None:
    assert words_of("Fern Valley Railway", "f v").initials == "FV"


@pytest.mark.parametrize("name", ["", "  ", "12", "&", "x" * (LONGEST_NAME + 1), "Fern {road.name}"])
def test_what_is_no_name_is_refused(name: str) -> None:
    with pytest.raises(HeraldryError, match="a railroad's name has"):
        words_of(name)


@pytest.mark.parametrize("initials", ["&", "ABCDEFGHI"])
def test_what_are_no_initials_are_refused(initials: str) -> None:
    with pytest.raises(HeraldryError, match="initials are 1 to"):
        words_of("Fern Valley", initials)


WORDS = st.lists(st.sampled_from(["FERN", "VALLEY", "&", "WESTERN", "OF", "THE", "LAKE"]), min_size=1, max_size=8)


@settings(derandomize=True, deadline=None, max_examples=60)
@given(WORDS, st.integers(1, 4))
def test_lines_hold_all_words_in_order_and_none_ends_small(words: list[str], count: int) -> None:
    lines = parted(" ".join(words), count)
    assert " ".join(lines).split() == words
    assert 1 <= len(lines) <= count
    assert all(not line.endswith((" OF", " THE")) for line in lines[:-1])


@settings(derandomize=True, deadline=None, max_examples=60)
@given(st.text(min_size=1, max_size=LONGEST_NAME))
def test_any_name_gives_words_or_a_reason(name: str) -> None:
    try:
        words = words_of(name)
    except HeraldryError as error:
        assert "a railroad's name has" in str(error)
    else:
        assert words.body
        assert 1 <= len(words.initials) <= MOST_INITIALS + 2
