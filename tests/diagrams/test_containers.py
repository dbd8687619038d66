"""Container numbers; the owner codes here are invented but for the standard's own example."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.diagrams.containers import container_number, size_and_type
from heraldry.errors import NumberError


def test_a_number_is_lettered_in_three_groups():
    number = container_number("CSQU 305438-3")
    assert str(number) == "CSQU 305438 3"
    assert (number.owner, number.category, number.serial, number.check_digit) == ("CSQ", "U", "305438", "3")
    assert number.kind == "freight container"


@pytest.mark.parametrize(("letter", "kind"), [("J", "detachable equipment"), ("Z", "trailer or chassis")])
def test_categories(letter, kind):
    assert container_number(f"QQQ{letter}000001").kind == kind


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "found nothing, write 3 letters"),
        ("QQU305438", "no container number, found 'QQU305438'"),
        ("QQQU30543", "no container number"),
        ("QQQU30543812", "no container number"),
        ("qqqu305438", "found 'qqqu305438'"),
        ("Q1QU305438", "no container number"),
        ("QQQR305438", "the fourth letter is a category, found R in 'QQQR305438', known: U freight container, J"),
        ("CSQU3054384", "the check digit is wrong, found 4 in 'CSQU3054384', 3 would be right"),
    ],
)
def test_what_is_no_container_number(text, said):
    with pytest.raises(NumberError) as caught:
        container_number(text)
    assert said in str(caught.value)


@settings(derandomize=True, deadline=None, max_examples=100)
@given(st.text("ABCDEFGHIJKLMNOPQRSTUVWXYZ", min_size=3, max_size=3), st.sampled_from("UJZ"), st.integers(0, 999_999))
def test_what_is_lettered_is_read_back(owner, category, serial):
    number = container_number(f"{owner}{category}{serial:06d}")
    assert container_number(str(number)) == number


def test_size_and_type_pass_through():
    assert size_and_type(" 22G1 ") == "22G1"


@pytest.mark.parametrize("text", ["", "22G", "22g1", "22G11", "22-1"])
def test_what_is_no_size_and_type(text):
    with pytest.raises(NumberError, match="a size and type code is 4 capital letters and digits"):
        size_and_type(text)
