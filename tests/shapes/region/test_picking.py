"""Features of a map file chosen by values and by conditions."""

from __future__ import annotations

import pytest

from heraldry.errors import RegionError
from heraldry.shapes.region.picking import Condition, Item, Pick, conditions, labels_of, picked

ROWS = (
    {"Name": "Öst", "kind": "river", "rank": 3},
    {"Name": "West", "kind": "canal", "rank": 5},
    {"Name": "Big Lake", "kind": "Lake", "rank": 1, "depth": 4.5},
)
ITEMS = [Item(row, labels_of(row, i), None) for i, row in enumerate(ROWS)]


def names(where=None, feature=None):
    return [item.properties["Name"] for item in picked(ITEMS, Pick(feature, where), "my.shp")]


@pytest.mark.parametrize(
    ("where", "found"),
    [
        ("kind = river", ["Öst"]),
        ("KIND=RIVER", ["Öst"]),
        ("kind = river | canal", ["Öst", "West"]),
        ("kind = river|lake and rank <= 2", ["Big Lake"]),
        ("rank < 5 AND rank > 1", ["Öst"]),
        ("rank >= 5", ["West"]),
        ("kind != river | lake", ["West"]),
        ("depth = 4.5", ["Big Lake"]),
        ("depth != 4", ["Öst", "West", "Big Lake"]),
        ("rank = 3.0", ["Öst"]),
        ("name = 'Big Lake'", ["Big Lake"]),
        ("name = ost", ["Öst"]),
        ("name != 'this or that' and kind = river", ["Öst"]),
    ],
)
def test_conditions_choose(where, found):
    assert names(where) == found


def test_a_feature_is_named_by_any_value_or_its_number():
    assert names(feature="canal") == ["West"]
    assert names(feature="2") == ["Big Lake"]
    assert names("rank > 1", "öst") == ["Öst"]
    assert names() == ["Öst", "West", "Big Lake"]


@pytest.mark.parametrize(
    ("where", "words"),
    [
        ("kind", "wanted conditions like: kind = river | canal and rank <= 4"),
        ("", "wanted conditions like"),
        ("kind = river and rank", "wanted conditions like"),
        ("kynd = river", r"my.shp has no property 'kynd'; did you mean 'kind'\?"),
        ("kind = sea", "no feature of my.shp has kind = sea; values of kind: river, canal, Lake"),
        ("rank > 9", "values of rank: 3, 5, 1"),
        ("kind = river or canal", "where has 'river or canal' for a value: others follow a |"),
        ("kind = river or kind = canal", "for a value"),
        ("kind == river", "where has '= river' for a value"),
        ("kind = river and", "where has 'river and' for a value"),
        ("kind = river |", "where has '' for a value"),
    ],
)
def test_what_chooses_nothing_is_said(where, words):
    with pytest.raises(RegionError, match=words):
        names(where)


def test_numbers_compare_as_numbers_and_words_as_words():
    assert Condition("n", "<", ("10",)).holds(Item({"n": 9}, (), None))
    assert Condition("n", "<", ("10",)).holds(Item({"n": "9"}, (), None))
    assert Condition("n", "<", ("b",)).holds(Item({"n": "a"}, (), None))
    assert conditions("a=1 and b = x|y") == (Condition("a", "=", ("1",)), Condition("b", "=", ("x", "y")))
