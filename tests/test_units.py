"""Lengths as modellers write them, and what is refused; scales by name and ratio."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import HeraldryError, LengthError
from heraldry.units import (
    HO,
    MM_PER_UNIT,
    SCALES,
    Length,
    Ruler,
    Scale,
    match_length,
    parse_length,
    parse_scale,
    unit_mm,
)

BOUNDED = settings(derandomize=True, deadline=None, max_examples=300)

fractions = st.fractions(min_value=-10_000, max_value=10_000, max_denominator=10_000)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("2.6 mm", "2.6"),
        ("2.6mm", "2.6"),
        (".5 mm", "0.5"),
        ("1.5 cm", "15"),
        ("2 m", "2000"),
        ("1/8 in", "3.175"),
        ("3 1/2 in", "88.9"),
        ("3-1/2 in", "88.9"),
        ("3½ in", "88.9"),
        ("3 ½″", "88.9"),
        ("⅛ in", "3.175"),
        ("1⁄8 in", "3.175"),
        ('5"', "127"),
        ("5''", "127"),
        ("5”", "127"),
        ("4 ft", "1219.2"),
        ("4'", "1219.2"),
        ("4 ft 3 1/2 in", "1308.1"),
        ("4ft3.5in", "1308.1"),
        ("4' 3-1/2\"", "1308.1"),
        ("4'-3½\"", "1308.1"),
        ("4′ 3½″", "1308.1"),
        ("4’ 3½”", "1308.1"),
        ("72 pt", "25.4"),
        ("-2 mm", "-2"),
        ("- 4 ft 6 in", "-1371.6"),
        ("  7\u00a0mm  ", "7"),
    ],
)
def test_lengths_as_they_are_written(text, mm):
    assert parse_length(text) == Length(Fraction(mm))


@pytest.mark.parametrize("text", ["9 in full", '9" full', "¾ ft full"])
def test_full_size_is_said_by_a_word(text):
    assert parse_length(text) == Length(Fraction("228.6"), full=True)


@pytest.mark.parametrize(
    ("text", "unit", "mm"),
    [
        ("2.6", "mm", "2.6"),
        ("1/8", "in", "3.175"),
        ("3 1/2", "in", "88.9"),
        ("½", "ft", "152.4"),
        ("7", "cm", "70"),
    ],
)
def test_a_bare_number_is_in_the_unit_of_the_file(text, unit, mm):
    assert parse_length(text, unit) == Length(Fraction(mm))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "found nothing, write 2.6 mm"),
        ("wide", "no length, found 'wide'"),
        ("2,5 mm", "found 2,5, write 2.5 with a decimal point"),
        ("-2,5", "write 2.5"),
        ("5 furlong", "unknown unit, found 'furlong'"),
        ("5 inn", "did you mean 'in'?"),
        ("9 full", "without its unit, found '9 full', write 9 in full"),
        ("3-1/2", "write '3 1/2' for the sum or '3 - 1/2' for the difference"),
        ("1/0 in", "over zero, found 1/0"),
        ("4 ft 3", "no length, found '4 ft 3'"),
        ("4 ft - 3 in", "no length"),
        ("1.5.2 mm", "no length"),
        ("1e3 mm", "unknown unit, found 'e3'"),
        ("٣ mm", "no length"),
        ("9" * 5000 + " mm", "too long, found 99999999999999999999…"),
    ],
)
def test_what_is_no_length_is_refused_in_words(text, said):
    with pytest.raises(LengthError) as refusal:
        parse_length(text)
    assert said in str(refusal.value)
    assert len(str(refusal.value)) < 300


def test_an_unknown_unit_of_a_file_is_refused():
    with pytest.raises(LengthError, match="unknown unit, found 'inch', did you mean 'in'"):
        unit_mm("inch")
    with pytest.raises(LengthError, match="unknown unit, found 'inch'"):
        parse_length("3", "inch")


@BOUNDED
@given(fractions, st.booleans())
def test_a_length_is_read_as_it_was_printed(mm, full):
    assert parse_length(str(Length(mm, full))) == Length(mm, full)


@BOUNDED
@given(st.integers(0, 99), st.integers(0, 11), st.integers(0, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_feet_inches_and_fractions_add_up(feet, inches, part, whole):
    expected = Length(Fraction("304.8") * feet + Fraction("25.4") * (inches + Fraction(part, whole)))
    assert parse_length(f"{feet} ft {inches} {part}/{whole} in") == expected
    assert parse_length(f"{feet}'-{inches} {part}/{whole}\"") == expected
    assert parse_length(f"{feet}′{inches}-{part}/{whole}″") == expected


@BOUNDED
@given(st.decimals(0, 10_000, places=4), st.sampled_from(sorted(MM_PER_UNIT)))
def test_units_convert_exactly(number, unit):
    assert parse_length(f"{number:f} {unit}").mm == Fraction(number) * MM_PER_UNIT[unit]
    assert parse_length(f"{number:f}", unit) == parse_length(f"{number:f}{unit}")


@BOUNDED
@given(st.text(max_size=40) | st.text("0123456789 ./-,'\"½⁄mftinul′″", max_size=40))
def test_any_text_is_read_or_refused(text):
    try:
        assert isinstance(parse_length(text), Length)
    except HeraldryError as refusal:
        assert str(refusal)


def test_a_length_in_arithmetic_ends_where_its_unit_ends():
    assert match_length("1/8 in + rim") == (Length(Fraction("3.175")), 6)
    assert match_length("5 inner") == (Fraction(5), 1)
    assert match_length("rim") is None


@pytest.mark.parametrize("scale", SCALES, ids=lambda scale: scale.name)
def test_every_scale_is_found_by_its_name_however_it_is_typed(scale):
    assert parse_scale(scale.name) is scale
    assert parse_scale(f"  {scale.name.lower().replace(' ', '  ')} ") is scale


def test_scale_names_are_spelled_with_letters_or_zeros():
    assert parse_scale("H0").name == "HO"
    assert parse_scale("00").name == "OO"


def test_the_table_runs_from_small_models_to_large_and_names_nothing_twice():
    ratios = [scale.ratio for scale in SCALES if scale.name != "OO"]
    assert len({scale.name for scale in SCALES}) == len(SCALES)
    assert ratios == sorted(ratios, reverse=True)
    assert all(scale.standard for scale in SCALES)


@BOUNDED
@given(st.decimals(1, 1000, places=2))
def test_ratios_are_exact(ratio):
    scale = parse_scale(f"1:{ratio:f}")
    assert scale.ratio == Fraction(ratio)
    assert parse_scale(scale.name) == scale


def test_a_ratio_may_do_without_its_one():
    assert parse_scale("48") == parse_scale("1:48") == parse_scale("1 : 48") == Scale("1:48", Fraction(48))
    assert parse_scale("1:1").ratio == 1


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1", "write 'Scale 1' for 1:32 or '1:1' for full size"),
        ("1.0", "write 'Scale 1'"),
        ("0", "write O or O 1:45 or O 1:43.5"),
        ("G", "write G 1:29 or G 1:24 or G 1:22.5 or G 1:20.3"),
        ("Britsh N", "did you mean 'British N'"),
        ("", "found nothing"),
        ("2:1", "a ratio (1:48)"),
        ("1:0", "out of range"),
        ("0.5", "out of range"),
        ("1:1001", "a ratio from 1:1 to 1:1000"),
        ("1:" + "9" * 9999, "unknown scale"),
    ],
)
def test_what_is_no_scale_is_refused_in_words(text, said):
    with pytest.raises(LengthError) as refusal:
        parse_scale(text)
    assert said in str(refusal.value)
    assert len(str(refusal.value)) < 500


@BOUNDED
@given(st.text(max_size=20))
def test_any_text_is_a_scale_or_refused(text):
    try:
        assert 1 <= parse_scale(text).ratio <= 1000
    except HeraldryError as refusal:
        assert str(refusal)


@BOUNDED
@given(st.sampled_from(SCALES), fractions)
def test_model_size_times_the_ratio_is_full_size(scale, full_mm):
    assert scale.full_mm(scale.model_mm(full_mm)) == pytest.approx(float(full_mm), rel=1e-15, abs=1e-12)
    assert scale.model_mm(float(full_mm)) == pytest.approx(float(full_mm / scale.ratio), rel=1e-15, abs=1e-12)


def test_a_ruler_turns_full_size_into_model_size_and_leaves_model_size_alone():
    ruler = Ruler("in", HO)
    assert ruler.model_mm(parse_length("9 in full")) == 2.625
    assert ruler.model_mm(parse_length("9 in")) == 228.6
    assert ruler.mm_per_unit == 25.4


def test_full_size_wants_a_scale():
    with pytest.raises(LengthError, match=r"without a scale, found 228.6 mm full, add scale = \"HO\""):
        Ruler().model_mm(parse_length("9 in full"))
