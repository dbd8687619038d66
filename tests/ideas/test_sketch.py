"""Parts laid over one another, and the text that is made of them."""

from __future__ import annotations

import tomllib

from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.describe.expression import parse
from heraldry.ideas.sketch import Layer, Part, art, hidden, in_one_ink, one, plate_art, share
from heraldry.ideas.writing import road_toml, value_toml

DISC = one("disc", "first", circle="width / 2")
NAME = one("name", "bare", "first", text="FERN")
STAR = one("star", "second", "first", star=5, radius=share(0.1))


def test_what_is_laid_over_an_ink_is_cut_out_of_it() -> None:
    part = DISC + NAME + STAR
    assert plate_art(part.layers, "first") == "disc - name - star"
    assert plate_art(part.layers, "second") == "star"
    assert list(part.shapes) == ["disc", "name", "star"]


def test_what_comes_first_is_not_cut_by_what_was_there_before() -> None:
    assert plate_art((NAME + DISC).layers, "first") == "disc"


def test_a_sum_is_put_in_brackets() -> None:
    part = hidden("box", box="width") + DISC + art("box + star", "bare", "first")
    assert plate_art(part.layers, "first") == "disc - (box + star)"
    parse(plate_art(part.layers, "first"))


def test_in_one_ink_nothing_is_left_in_the_second() -> None:
    part = in_one_ink(DISC + NAME + STAR)
    assert plate_art(part.layers, "second") == ""
    assert plate_art(part.layers, "first") == "disc - name + star"


def test_layers_keep_their_order() -> None:
    layers = (Part() + DISC + NAME).layers
    assert layers == (Layer("disc", "first"), Layer("name", "bare", ("first",)))


VALUES = st.recursive(
    st.one_of(
        st.booleans(), st.integers(-99, 99), st.text(st.characters(exclude_categories=["Cc", "Cs"]), max_size=20)
    ),
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(st.sampled_from("abc"), inner, max_size=3)),
    max_leaves=6,
)


@settings(derandomize=True, deadline=None, max_examples=80)
@given(VALUES)
def test_a_value_is_read_back_as_it_was(value: object) -> None:
    assert tomllib.loads(f"key = {value_toml(value)}")["key"] == value


@settings(derandomize=True, deadline=None, max_examples=60)
@given(st.floats(-2, 2))
def test_a_share_is_the_width_times_a_number(part: float) -> None:
    text = share(part)
    value = text if isinstance(text, float) else float(text.replace("width * ", ""))
    assert abs(value - part) <= 1e-5


def test_a_road_file_reads_back() -> None:
    text = road_toml('Fern "Hollow" & Co', "FH", {"main": {"colour": "#112233"}})
    data = tomllib.loads(text)
    assert data["name"] == 'Fern "Hollow" & Co'
    assert data["ink"]["main"]["colour"] == "#112233"
