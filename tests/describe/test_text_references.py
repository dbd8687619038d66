"""Texts with names between braces."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.describe.text_references import fill, references
from heraldry.errors import ExpressionError

BOUNDED = settings(derandomize=True, deadline=None, max_examples=200)
VALUES = {"road.name": "Fern Hollow", "road.mark": "FH", "number": 4711, "odd": "{road.mark}"}


@pytest.mark.parametrize(
    ("text", "filled"),
    [
        ("", ""),
        ("plain", "plain"),
        ("{road.name}", "Fern Hollow"),
        ("{ road.name } & {road.mark}{number}", "Fern Hollow & FH4711"),
        ("{{road.name}}", "{road.name}"),
        ("{{{road.mark}}}", "{FH}"),
        ("{{}}", "{}"),
        ("100 % {odd}", "100 % {road.mark}"),
    ],
)
def test_references_are_filled_in_once(text, filled):
    assert fill(text, VALUES) == filled


@pytest.mark.parametrize(
    ("text", "position", "said"),
    [
        ("to {road.nam}", 3, "found '{road.nam}', did you mean 'road.name'"),
        ("a {road.name", 2, "a brace is never closed, found '{', write {road.name}, or {{ for a brace"),
        ("a } b", 2, "a brace is never opened, found '}', write }} for a brace"),
        ("{a{number}}", 0, "never closed"),
        ("{}", 0, "no name between braces, found '{}'"),
        ("{number:04}", 0, "no name between braces"),
        ("{number!r}", 0, "no name between braces"),
        ("{number.__class__}", 0, "a reference to nothing, found '{number.__class__}'"),
        ("{road . name}", 0, "no name between braces"),
    ],
)
def test_faults_are_told_with_their_place(text, position, said):
    with pytest.raises(ExpressionError) as refusal:
        fill(text, VALUES)
    assert said in str(refusal.value)
    assert refusal.value.position == position


def test_nothing_to_refer_to():
    with pytest.raises(ExpressionError, match="no names are known here"):
        fill("{x}", {})


def test_the_names_of_a_text_in_order():
    assert references("{b} {{c}} {a.b} {b}") == ("b", "a.b", "b")


@BOUNDED
@given(st.text())
def test_a_text_with_doubled_braces_comes_back(text):
    assert fill(text.replace("{", "{{").replace("}", "}}"), {}) == text


@BOUNDED
@given(st.lists(st.sampled_from(["{", "}", "{{", "}}", "number", "{number}", " ", ".", "ß"])).map("".join))
def test_any_text_is_filled_or_refused(text):
    try:
        assert "number" in VALUES and isinstance(fill(text, VALUES), str)
    except ExpressionError as refusal:
        assert text[refusal.position] in "{}"
