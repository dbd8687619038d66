"""The grammar: what binds how, what is refused and in which words, and that nothing hangs or breaks."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.describe.expression import (
    MAX_CHARACTERS,
    MAX_DEPTH,
    MAX_NODES,
    Binary,
    Call,
    LengthLiteral,
    Name,
    Negative,
    Number,
    check_name,
    names_in,
    operands,
    parse,
    walk,
)
from heraldry.errors import ExpressionError
from heraldry.units import Length

BOUNDED = settings(derandomize=True, deadline=None, max_examples=300)
NAMES = ("a", "rim", "land.junction", "_x1", "inner", "m", "in_2")


def written(node, full_brackets):
    """An expression as text that means the same; with ``full_brackets`` no rule of binding is needed."""
    match node:
        case Number(value):
            return f"{value.numerator}" if value.denominator == 1 else str(float(value))
        case LengthLiteral(length):
            return str(length)
        case Name(name):
            return name
        case Negative(operand):
            return "-" + bracketed(operand, full_brackets or isinstance(operand, Binary), full_brackets)
        case Call(function, arguments):
            return f"{function}({', '.join(written(argument, full_brackets) for argument in arguments)})"
        case Binary(operator, left, right):
            mixed = isinstance(left, Binary) and ("&" in (operator, left.operator)) and left.operator != operator
            loose_left = isinstance(left, Binary) and (operator in "*/" or mixed) and left.operator not in "*/"
            loose_right = isinstance(right, Binary) and (operator in "*/" or right.operator in "+-&")
            return " ".join(
                (
                    bracketed(left, full_brackets or loose_left, full_brackets),
                    operator,
                    bracketed(right, full_brackets or loose_right, full_brackets),
                )
            )


def bracketed(node, brackets, full_brackets):
    text = written(node, full_brackets)
    return f"({text})" if brackets else text


def without_positions(node):
    match node:
        case Number(value):
            return Number(value)
        case LengthLiteral(length):
            return LengthLiteral(length)
        case Name(name):
            return Name(name)
        case Negative(operand):
            return Negative(without_positions(operand))
        case Call(function, arguments):
            return Call(function, tuple(without_positions(argument) for argument in arguments))
        case Binary(operator, left, right):
            return Binary(operator, without_positions(left), without_positions(right))


leaves = (
    st.builds(Number, st.integers(0, 999).map(lambda n: Fraction(n, 8)))
    | st.builds(LengthLiteral, st.builds(Length, st.integers(0, 999).map(lambda n: Fraction(n, 16)), st.booleans()))
    | st.builds(Name, st.sampled_from(NAMES))
)
trees = st.recursive(
    leaves,
    lambda below: (
        st.builds(Binary, st.sampled_from("+-*/&"), below, below)
        | st.builds(Negative, below)
        | st.builds(Call, st.sampled_from(("max", "offset", "land.turn")), st.lists(below, max_size=3).map(tuple))
    ),
    max_leaves=20,
)


@BOUNDED
@given(trees)
def test_what_is_written_is_parsed_as_it_was_meant(tree):
    assert without_positions(parse(written(tree, full_brackets=False))) == tree
    assert without_positions(parse(written(tree, full_brackets=True))) == tree


@BOUNDED
@given(trees)
def test_positions_point_at_what_they_say(tree):
    text = written(tree, full_brackets=False)
    for node in walk(parse(text)):
        match node:
            case Name(name, position) | Call(name, _, position) | Binary(name, _, _, position):
                assert text.startswith(name, position)
            case Negative(_, position):
                assert text[position] == "-"
            case Number(_, position) | LengthLiteral(_, position):
                assert text[position].isdigit()


def test_a_fraction_of_an_inch_is_a_length_and_a_division_is_not():
    assert parse("1/8 in") == LengthLiteral(Length(Fraction("3.175")))
    assert without_positions(parse("width / 2 - rim")) == Binary(
        "-", Binary("/", Name("width"), Number(Fraction(2))), Name("rim")
    )
    assert without_positions(parse("1/8")) == Binary("/", Number(Fraction(1)), Number(Fraction(8)))


@pytest.mark.parametrize("text", ["3 1/2 in", "3-1/2 in", "3½ in", '3½"', "3.5in"])
def test_mixed_numbers_are_one_length(text):
    assert parse(text) == LengthLiteral(Length(Fraction("88.9")))


def test_a_bare_mixed_number_is_one_number():
    assert parse("3 1/2") == parse("3½") == Number(Fraction(7, 2))


def test_a_minus_sign_between_lengths_has_spaces_and_a_joining_hyphen_has_none():
    assert parse("4' - 3\"").operator == "-"
    assert parse("4'-3\"") == LengthLiteral(Length(Fraction("1295.4")))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("width/2-1/8 in", "'2-1/8 in' can be read in two ways, write '2 1/8 in' or '2 - 1/8 in'"),
        ("width - 4'-3\"", "write '4' 3\"' or '4' - 3\"'"),
        ("10-1/2", "write '10 1/2' for the sum or '10 - 1/2' for the difference"),
    ],
)
def test_what_could_be_a_hyphen_or_a_minus_is_not_guessed(text, said):
    with pytest.raises(ExpressionError) as refusal:
        parse(text)
    assert said in str(refusal.value)


def test_signs_bind_as_in_arithmetic():
    assert without_positions(parse("a - b - c")) == without_positions(parse("(a - b) - c"))
    assert without_positions(parse("-a * b + c / d")) == without_positions(parse("((-a) * b) + (c / d)"))
    assert without_positions(parse("a & b & c")) == without_positions(parse("(a & b) & c"))


@pytest.mark.parametrize(
    ("text", "first", "second"),
    [
        ("a & b + c", "(a & b) + c", "a & (b + c)"),
        ("disc - land & line", "(disc - land) & line", "disc - (land & line)"),
        ("a & b & c - d * 2 - e", "(a & b & c) - d * 2", "a & b & (c - d * 2)"),
        ("x - f(a + b & c, d)", "(a + b) & c", "a + (b & c)"),
    ],
)
def test_common_to_both_beside_plus_or_minus_wants_brackets(text, first, second):
    with pytest.raises(ExpressionError) as refusal:
        parse(text)
    assert f"want brackets, write {first} or {second}" in str(refusal.value)
    assert text[refusal.value.position] in "&+-"
    parse(first)
    parse(second)


@pytest.mark.parametrize(
    ("text", "position", "said"),
    [
        ("", 0, "found an empty text"),
        ("   ", 0, "found an empty text"),
        ("a +", 3, "after '+' an expression wants a name, a number or a bracket, found the end"),
        ("+ a", 0, "at the start an expression wants a name"),
        ("a * * b", 4, "after '*' an expression wants a name, a number or a bracket, found '*'"),
        ("(a", 0, "a bracket is never closed"),
        ("f(a, b", 1, "a bracket is never closed"),
        ("a)", 1, "a bracket too many"),
        ("()", 1, "found ')'"),
        ("f(a,)", 4, "found ')'"),
        ("a b", 2, "two values without a sign between them, found 'b'"),
        ("2 (a)", 2, "two values without a sign between them, found '('"),
        ("a, b", 1, "a comma outside a function's brackets"),
        ("66 inches full", 3, "unknown unit, found 'inches' after a number, did you mean 'in'?"),
        ("5 ft 6 full", 5, "inches want their unit, found '6' after feet, write 6 in"),
        ("5 furlong", 2, "unknown unit, found 'furlong' after a number, known: cm, ft"),
        ("2 width", 2, "to multiply, write '*' between"),
        ("9 full", 2, "without its unit, found 'full', write 9 in full"),
        ("width full", 6, "write 9 in full"),
        ("2,5", 0, "write 2.5 with a decimal point (between two values: 2, 5 with a space)"),
        ("f(2,5)", 2, "write 2.5 with a decimal point"),
        ("1/0 in", 0, "a fraction over zero"),
        ("a − b", 2, "found '−', write '-'"),
        ("a × b", 2, "found '×', write '*'"),
        ("a ÷ b", 2, "write '/'"),
        ("a ∩ b", 2, "write '&'"),
        ("a ** b", 3, "found '*'"),
        ("a % b", 2, "found '%', write names, numbers and + - * / & ( ) ,"),
        ("a = b", 2, "found '='"),
        ("a.", 1, "found '.'"),
        ("__import__('os')", 11, "found '''"),
        ("a\x00", 1, "found U+0000"),
        ("größe", 2, "found 'ö'"),
        ("9" * 61, 0, "a number is too long"),
    ],
)
def test_faults_are_told_with_their_place(text, position, said):
    with pytest.raises(ExpressionError) as refusal:
        parse(text)
    assert said in str(refusal.value)
    assert refusal.value.position == position
    assert f"(character {position + 1})" in str(refusal.value)


def test_limits_are_reached_and_not_passed():
    assert parse("(" * (MAX_DEPTH - 1) + "a" + ")" * (MAX_DEPTH - 1)) == Name("a", MAX_DEPTH - 1)
    terms = (MAX_NODES + 1) // 2
    assert sum(1 for _ in walk(parse(" + ".join(["a"] * terms)))) == 2 * terms - 1
    for text, said in (
        ("(" * MAX_DEPTH + "a" + ")" * MAX_DEPTH, f"write at most {MAX_DEPTH}"),
        (" + ".join(["a"] * (terms + 1)), f"more than {MAX_NODES}"),
        ("f(" + ", ".join(["a"] * MAX_NODES) + ")", f"more than {MAX_NODES}"),
        ("a" + " " * MAX_CHARACTERS, f"found {MAX_CHARACTERS + 1} characters"),
    ):
        with pytest.raises(ExpressionError, match=said):
            parse(text)


@pytest.mark.parametrize("piece", ["(", "-", "f(", "a+", "a&", "1/", "1 1/2 ", "((a)", "1 ", "4' 3-", "f(a, ", "¼"])
def test_nothing_repeated_hangs_or_overflows(piece):
    with pytest.raises(ExpressionError):
        parse(piece * (MAX_CHARACTERS // len(piece)))


@BOUNDED
@given(st.text(max_size=80) | st.text("ab.129/ ½'\"-+*&(),infultm", max_size=80))
def test_any_text_is_parsed_or_refused(text):
    try:
        assert sum(1 for _ in walk(parse(text))) <= MAX_NODES
    except ExpressionError as refusal:
        assert 0 <= refusal.position <= len(text)
        assert str(refusal)


def test_walkers_see_every_node_once_and_names_in_reading_order():
    tree = parse("max(a, -b.c) & (rim + 2 mm)")
    assert [name.name for name in names_in(tree)] == ["a", "b.c", "rim"]
    assert sum(1 for _ in walk(tree)) == 8
    assert operands(Name("a")) == ()


@pytest.mark.parametrize("name", ["a", "_1", "Inner_2", "inner", "mmm"])
def test_names_are_letters_digits_and_underscores(name):
    check_name(name)
    assert parse(name) == Name(name)


@pytest.mark.parametrize("name", ["", "2a", "a-b", "a.b", "größe", "a b", "mm", "full"])
def test_other_names_are_refused(name):
    with pytest.raises(ExpressionError, match="name"):
        check_name(name)
