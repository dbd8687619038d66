from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.press.number_format import fixed, rounded

COORDINATES = st.floats(-2000.0, 2000.0)
DECIMALS = st.integers(0, 6)


@settings(derandomize=True, deadline=None)
@given(COORDINATES, DECIMALS)
def test_a_spelled_number_is_off_by_half_its_last_place_at_most(value, decimals):
    assert abs(float(fixed(value, decimals)) - value) <= 0.5 * 10**-decimals + 1e-12


@settings(derandomize=True, deadline=None)
@given(COORDINATES, DECIMALS)
def test_no_exponent_no_trailing_zero_no_minus_zero(value, decimals):
    text = fixed(value, decimals)
    assert set(text) <= set("-.0123456789")
    assert text != "-0"
    assert "." not in text or text[-1] not in "0."


@settings(derandomize=True, deadline=None)
@given(COORDINATES, DECIMALS)
def test_number_and_spelling_are_rounded_alike(value, decimals):
    assert rounded(value, decimals) == float(fixed(value, decimals))
    assert str(rounded(value, decimals)) != "-0.0"


def test_whole_numbers_keep_their_zeros():
    assert fixed(1200.0, 5) == "1200"
    assert fixed(100.0, 0) == "100"
