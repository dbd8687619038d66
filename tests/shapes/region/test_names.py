"""A word finds the lands it may mean, whichever way it is written."""

from __future__ import annotations

import pytest

from heraldry.errors import RegionError
from heraldry.shapes.region import atlas
from heraldry.shapes.region.names import all_names, by_code, find


def codes(word: str) -> list[str]:
    return [area.code for area in find(word)]


@pytest.mark.parametrize("word", ["Coos", "coös", "COOS", " coos "])
def test_namesakes_are_told_apart_by_their_state(word):
    found = find(word)[:2]
    assert [(area.code, area.kind, area.detail) for area in found] == [
        ("33007", "county", "New Hampshire"),
        ("41011", "county", "Oregon"),
    ]


@pytest.mark.parametrize(
    ("word", "code"),
    [
        ("vermont", "US-VT"),
        ("VT", "US-VT"),
        ("us-vt", "US-VT"),
        ("vermnot", "US-VT"),
        ("ISL", "IS"),
        ("iceland", "IS"),
        ("aland islands", "AX"),
        ("dona ana", "35013"),
        ("33007", "33007"),
        ("turkiye", "TR"),
        ("Bosnia and Herz.", "BA"),
    ],
)
def test_the_best_answer_comes_first(word, code):
    assert codes(word)[0] == code


def test_a_beginning_comes_before_an_inside():
    found = [area.name for area in find("ber")]
    assert found.index("Bertie") < found.index("Cumberland")


@pytest.mark.parametrize("word", ["", "   ", "xqzwv"])
def test_nothing_is_found_for_nonsense(word):
    assert find(word) == []


def test_every_code_is_its_own_and_has_land():
    codes = [area.code for area in all_names()]
    assert len(codes) == len(set(codes))
    assert all(atlas.outlines(code).polygons.area > 0 for code in codes)


def test_the_index_holds_all_states_and_counties_of_their_year():
    """50 states, the District of Columbia and 5 territories; 3,142 counties and equivalents in 2017, 78 in
    Puerto Rico, 11 in the other four (Census Bureau, from memory). The map's grid has crushed the city of
    Falls Church, Virginia, so it is not there."""
    kinds = [area.kind for area in all_names()]
    assert kinds.count("state") == 56
    assert kinds.count("county") == 3142 + 78 + 11 - 1
    assert kinds.count("country") > 240


def test_a_long_code_is_the_short_one():
    assert by_code()["NZL"] is by_code()["NZ"]
    assert atlas.outlines("nzl").name == atlas.outlines("NZ").name == "New Zealand"


@pytest.mark.parametrize(
    ("code", "offer"),
    [
        ("vermont", "'US-VT' (Vermont, United States)"),
        ("US-VX", "'US-V"),
        ("Coos", "'33007' (Coos, New Hampshire), '41011' (Coos, Oregon)"),
        ("", "wanted are ISO 3166 codes"),
        ("?!", "wanted are ISO 3166 codes"),
        ("99999", "no region has the code '99999'"),
    ],
)
def test_an_unknown_code_offers_what_it_may_have_meant(code, offer):
    with pytest.raises(RegionError) as fault:
        atlas.outlines(code)
    assert offer in str(fault.value)
    assert len(str(fault.value)) < 300
