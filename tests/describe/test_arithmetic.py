"""What lengths and numbers come to, and which sums have no meaning."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.describe.arithmetic import (
    MAX_NAMES,
    Quantity,
    evaluate,
    evaluate_length,
    evaluate_let,
    evaluate_number,
)
from heraldry.describe.expression import MAX_NODES, names_in, parse
from heraldry.errors import ExpressionError, LetError
from heraldry.units import HO, Ruler

BOUNDED = settings(derandomize=True, deadline=None, max_examples=200)
GIVEN = {"width": Quantity(24.0, 1), "rim": Quantity(0.9), "half": Quantity(0.5)}


@pytest.mark.parametrize(
    ("text", "unit", "mm"),
    [
        ("width / 2 - rim", "mm", 11.1),
        ("width / 2 - 2.6", "mm", 9.4),
        ("width / 2 - 0.1", "in", 9.46),
        ("2.6", "mm", 2.6),
        ("1/8", "in", 3.175),
        ("1/8 in", "mm", 3.175),
        ("-width", "mm", -24.0),
        ("half * width + width * half", "mm", 24.0),
        ("width / (width / 3)", "mm", 3.0),
        ("max(rim, 1 cm, width / 6)", "mm", 10.0),
        ("min(1, 2)", "cm", 10.0),
        ("9 in full", "mm", 2.625),
        ("4' 3-1/2\" full + 1 mm", "mm", 1308.1 * 3.5 / 304.8 + 1),
    ],
)
def test_lengths_come_out_in_millimetres(text, unit, mm):
    quantity = evaluate_length(text, GIVEN, Ruler(unit, HO))
    assert quantity.value == pytest.approx(mm, rel=1e-14)
    assert quantity.power == 1
    assert quantity.full == ("full" in text)


def test_plain_numbers_of_the_file_are_lengths_where_a_length_is_wanted():
    assert evaluate_length(0.9, {}) == Quantity(0.9, 1)
    assert evaluate_length(2, {}, Ruler("in")) == Quantity(50.8, 1)
    assert evaluate_number(3, {}) == 3.0


def test_a_number_stays_a_number_until_it_meets_a_length():
    assert evaluate("rim * 2", GIVEN) == Quantity(1.8, 0)
    assert evaluate("rim * 2 + width", GIVEN) == Quantity(25.8, 1)
    assert evaluate("width / 1 mm", GIVEN) == Quantity(24.0, 0)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("width * width", "an area, found '*' between two lengths"),
        ("width * 2 * (width + 1)", "an area"),
        ("1 / width", "a number cannot be divided by a length"),
        ("1 / 8 in", "a fraction of an inch without spaces (1/8 in)"),
        ("width / 0", "division by zero"),
        ("width & rim", "'&' has no meaning between lengths"),
        ("widht", "unknown name, found 'widht', did you mean 'width'?"),
        ("sqrt(2)", "unknown function of lengths, found 'sqrt', known: max, min"),
        ("mim(1, 2)", "did you mean 'min'"),
        ("max()", "write max(a, b)"),
        ("999999999 * 999999999", "value out of range, found 1e+18"),
        ("9999999999 m", "value out of range"),
        ("9999999999", "value out of range"),
        ("9 in full", "without a scale"),
    ],
)
def test_sums_without_meaning_are_refused_in_words(text, said):
    with pytest.raises(ExpressionError) as refusal:
        evaluate_length(text, GIVEN)
    assert said in str(refusal.value)
    assert 0 <= refusal.value.position < len(text)


@pytest.mark.parametrize("number", [float("nan"), float("inf"), -float("inf"), 1e10, 10**400])
def test_numbers_that_cannot_be_drawn_are_refused(number):
    with pytest.raises(ExpressionError, match="value out of range"):
        evaluate_length(number, {})


def test_a_whole_number_too_long_to_print_is_refused_by_its_length():
    with pytest.raises(ExpressionError, match="found a number of some 7225 figures"):
        evaluate_length(16**6000, {})


def test_a_number_is_no_length():
    with pytest.raises(ExpressionError, match=r"a number is wanted, found a length \(24 mm\)"):
        evaluate_number("width", GIVEN)


def test_no_names_are_known_where_there_are_none():
    with pytest.raises(ExpressionError, match="unknown name, found 'a', no names are known here"):
        evaluate("a", {})


def test_the_longest_chain_the_parser_admits_is_evaluated():
    terms = (MAX_NODES + 1) // 2
    assert evaluate(" + ".join(["1"] * terms), {}).value == terms


@BOUNDED
@given(st.floats(-1000, 1000), st.floats(-1000, 1000), st.floats(0.1, 1000))
def test_arithmetic_is_that_of_numbers(a, b, c):
    names = {"a": Quantity(a, 1), "b": Quantity(b, 1), "c": Quantity(c)}
    assert evaluate("(a - b) * c + a / c", names).value == pytest.approx((a - b) * c + a / c)
    assert evaluate("max(a, b) + min(a, b)", names).value == a + b


def test_named_lengths_may_use_one_another_in_any_order():
    values = evaluate_let({"inner": "outer - rim", "rim": 0.9, "outer": "width / 2"}, {"width": GIVEN["width"]})
    assert list(values) == ["inner", "rim", "outer"]
    assert values["inner"] == Quantity(11.1, 1)
    assert values["rim"] == Quantity(0.9, 0)


@pytest.mark.parametrize(
    ("table", "said"),
    [
        ({"a": "b", "b": "a"}, {"a": "found a → b → a"}),
        ({"x": "1", "c": "a", "a": "b + x", "b": "c"}, {"c": "found c → a → b → c"}),
        ({"s": "s + 1"}, {"s": "found s → s"}),
        ({"a": "1 +", "b": "zz", "c": "a", "d": "b / 2"}, {"a": "found the end", "b": "found 'zz'"}),
        ({"a": "1 +", "b": "c", "c": "b"}, {"a": "found the end", "b": "b → c → b"}),
        ({"width": 3}, {"width": "this name is taken, found 'width'"}),
        ({"in": 3, "b-c": 4}, {"in": "a word of lengths", "b-c": "letters, digits and _"}),
        ({"a": float("nan")}, {"a": "out of range"}),
    ],
)
def test_every_name_without_a_value_is_told_and_no_other(table, said):
    with pytest.raises(LetError) as refusal:
        evaluate_let(table, {"width": GIVEN["width"]})
    assert refusal.value.errors.keys() == said.keys()
    for name, words in said.items():
        assert words in str(refusal.value.errors[name])
        assert f"{name}: " in str(refusal.value)


def test_a_long_chain_of_names_is_no_trouble_and_too_many_are_refused():
    chain = {f"n{i}": f"n{i + 1} + 1" for i in range(MAX_NAMES - 1)} | {f"n{MAX_NAMES - 1}": 1}
    assert evaluate_let(chain, {})["n0"].value == MAX_NAMES
    with pytest.raises(LetError, match=f"too many names, found {MAX_NAMES + 2}, give at most {MAX_NAMES}") as refusal:
        evaluate_let({**chain, "one_more": 1, "and_more": "zzz"}, {})
    assert list(refusal.value.errors) == ["one_more"]


def test_values_that_grow_from_name_to_name_stay_in_range():
    with pytest.raises(LetError, match="out of range") as refusal:
        evaluate_let({"a0": 10} | {f"a{i}": f"a{i - 1} * a{i - 1}" for i in range(1, 40)}, {})
    assert list(refusal.value.errors) == ["a4"]


@BOUNDED
@given(
    st.dictionaries(st.sampled_from("abcdef"), st.text("abcdef12+-*/() .", max_size=12) | st.integers() | st.floats())
)
def test_any_table_has_values_or_errors(table):
    try:
        values = evaluate_let(table, {})
    except LetError as refusal:
        assert refusal.errors.keys() <= table.keys()
    else:
        for name, raw in table.items():
            used = {used.name for used in names_in(parse(raw))} if isinstance(raw, str) else set()
            assert values[name] == evaluate(raw, {other: values[other] for other in used})
