"""Lettering round a circle and along a path, as the keys of a text in a herald file ask for it."""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path as FilePath

import pytest

from heraldry.describe.description import load
from heraldry.errors import DescriptionError
from heraldry.geometry.measure import bounds, ring_areas
from heraldry.geometry.point import Point
from heraldry.plates.compose import compose
from heraldry.resolve.herald import resolve_herald
from heraldry.shapes.table import Drawn

HEAD = """kind = "herald"
scale = "HO"
[ink.black]
colour = "#000000"
[shape.box]
polygon = [[-15, -10], [15, -10], [15, 10], [-15, 10]]
[shape.dot]
circle = 1
centre = [4, -10]
[plate.black]
ink = "black"
art = "box + text"
[shape.text]
text = "FEN HOLLOW"
cap_height = 1.5
"""

DrawText = Callable[[str], Drawn]


@pytest.fixture
def drawn(tmp_path: FilePath) -> DrawText:
    def draw(keys: str) -> Drawn:
        path = tmp_path / "herald.toml"
        path.write_text(HEAD + keys)
        return compose(resolve_herald(load(path))).stage.shape("text")

    return draw


def test_along_an_arc_through_three_places(drawn: DrawText) -> None:
    text = drawn("along = { arc = [[-8, 0], 'box.top', [8, 0]] }")
    circle = Point(0, 1.8)  # equally far from all three: sqrt(64 + 1.8²) is 8.2 is 10 − 1.8
    for end in ("start", "end"):
        assert abs(text.places[end] - circle) == pytest.approx(8.2)
    assert text.places["start"].x == pytest.approx(-text.places["end"].x)
    assert text.places["start"].x < 0 < text.places["start"].y


def test_an_arc_is_read_inside_from_its_other_end(drawn: DrawText) -> None:
    text = drawn("along = { arc = [[-8, 0], [0, 10], [8, 0]], reads = 'inside' }")
    assert text.places["start"].x > 0 > text.places["end"].x


@pytest.mark.parametrize(
    ("keys", "middle"),
    [
        ("reads = 'outside'", Point(0, 10)),
        ("reads = 'inside'", Point(0, -10)),
        ("reads = 'outside', lift = -4", Point(0, 6)),
        ("reads = 'inside', lift = 2", Point(0, -8)),
        ("hold = 'box.right'", Point(15, 0)),
        ("reads = 'inside', hold = 'dot'", Point(4, -10)),
    ],
)
def test_along_the_edge_of_a_shape(drawn: DrawText, keys: str, middle: Point) -> None:
    text = drawn(f"along = {{ shape = 'box', {keys} }}")
    half = (text.places["start"] + text.places["end"]) / 2
    assert abs(half - middle) < 1e-6


def test_the_anchor_says_what_of_the_line_is_held(drawn: DrawText) -> None:
    starts = drawn("anchor = 'start'\nalong = { shape = 'box', hold = [0, 10] }")
    assert abs(starts.places["start"] - Point(0, 10)) < 1e-6
    ends = drawn("anchor = 'end'\nalong = { path = 'M 0 0 L 20 0 L 20 20' }\nat = [-3, 2]")
    assert abs(ends.places["end"] - Point(17, -18)) < 1e-6  # the field's y points down in path data


def test_path_data_have_their_origin_at_the_place_and_their_width(drawn: DrawText) -> None:
    text = drawn("at = [5, 1]\nfit = 20\nalong = { path = 'M 0 0 H 1', width = 20 }")
    assert abs(text.places["start"] - Point(5, 1)) < 1e-6
    assert abs(text.places["end"] - Point(25, 1)) < 1e-6
    assert bounds(text.outline).bottom == pytest.approx(1.0, abs=0.05)  # O reaches a little below


@pytest.mark.parametrize("letters", ["turned", "bent"])
def test_a_circle_and_an_arc_lay_letters_alike(drawn: DrawText, letters: str) -> None:
    box = bounds(drawn(f"along = {{ arc = [[-9, 0], [0, 9], [9, 0]], letters = '{letters}' }}").outline)
    other = bounds(drawn(f"round = {{ radius = 9, letters = '{letters}' }}").outline)
    # Round a circle ink is centred by its angle, along a path by its length: a twentieth of a cap height apart at most.
    assert (box.left, box.right, box.top, box.bottom) == pytest.approx(
        (other.left, other.right, other.top, other.bottom), abs=0.05 * 1.5
    )


def test_upright_letters_stand_as_they_are_drawn(drawn: DrawText) -> None:
    upright, flat = drawn("round = { radius = 40, letters = 'upright' }"), drawn("tracking = 0")
    rings, others = (sorted(abs(area) for area in ring_areas(text.outline)) for text in (upright, flat))
    assert rings == pytest.approx(others, abs=1e-4)
    assert sum(upright.outline.data[:, 0, 0] == upright.outline.data[:, 3, 0]) == pytest.approx(
        sum(flat.outline.data[:, 0, 0] == flat.outline.data[:, 3, 0])
    )


@pytest.mark.parametrize(("level", "radius"), [("foot", 9.0), ("middle", 8.25), ("head", 7.5)])
@pytest.mark.parametrize("reads", ["outside", "inside"])
def test_the_level_lies_on_the_circle(drawn: DrawText, level: str, radius: float, reads: str) -> None:
    text = drawn(f"level = '{level}'\nround = {{ radius = 9, reads = '{reads}' }}")
    base = radius if reads == "outside" else 18 - radius
    assert abs(text.places["start"]) == pytest.approx(base)


def test_a_line_round_a_circle_is_fitted_by_the_width_of_its_letters(drawn: DrawText) -> None:
    text = drawn("round = { radius = 9, fit = 140 }")
    start, end = text.places["start"].direction_rad, text.places["end"].direction_rad
    assert math.degrees(start - end) == pytest.approx(140, abs=0.05)
    assert text.notes == ()
    assert "they hardly read as a word" in drawn("round = { radius = 9, fit = 340 }").notes[0]


def test_a_straight_line_is_fitted_and_keeps_its_stems(drawn: DrawText) -> None:
    usual, wide = drawn("tracking = 0"), drawn("fit = 26")
    assert bounds(wide.outline).width == pytest.approx(26, abs=1e-6)
    assert bounds(wide.outline).height == pytest.approx(bounds(usual.outline).height, abs=0.02)
    narrow = drawn("fit = 11")
    assert bounds(narrow.outline).width == pytest.approx(11, abs=1e-6)
    assert narrow.notes == ()


def test_letters_that_would_collide_are_opened_and_it_is_said(drawn: DrawText) -> None:
    text = drawn("along = { arc = [[-6, 0], [0, -5], [6, 0]] }")
    assert any("on this curve: opened there, by" in note for note in text.notes)


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ("stem = 0.1", "has no stem of 0.1 mm at a cap height of 1.5 mm, it may be 0.15 to 0.333 mm"),
        ("along = {}", "along has one of path, shape or arc, found none of them"),
        ("along = { shape = 'box', path = 'M 0 0 H 9' }", "found path and shape"),
        ("along = { shape = 'bax' }", "no shape is called 'bax', did you mean 'box'?"),
        ("along = { arc = [[0, 0], [5, 5]] }", "goes through three places, found 2"),
        ("along = { path = 'M 0 0 H 9 M 0 2 H 9' }", "the path data draw 2 lines apart"),
        ("along = { path = 'M 0 0 H 9' }", "runs"),
        ("along = { path = 'M 0 0 H 30', smooth = 2 }", "smooth is for the edge of a shape"),
        ("along = { path = 'M 0 0 V 30', width = 2 }", "have no width"),
        ("at = [1, 1]\nalong = { shape = 'box' }", "leave them out here"),
        ("turn = 5\nalong = { shape = 'box' }", "turn is for straight lines"),
        ("round = { radius = 9 }\nalong = { shape = 'box' }", "round a circle or along a path, found both"),
        ("fit = 9\nround = { radius = 9, fit = 90 }", "found fit twice"),
        ("along = { shape = 'box', letters = 'bent', hold = [15, 10] }", "bent letters want a smooth path"),
    ],
)
def test_what_cannot_be_done_is_said(drawn: DrawText, keys: str, said: str) -> None:
    with pytest.raises(DescriptionError) as raised:
        drawn(keys)
    assert said in str(raised.value)
    assert "herald.toml:" in str(raised.value)


def test_a_text_of_two_lines_is_sent_to_lines(tmp_path: FilePath) -> None:
    path = tmp_path / "herald.toml"
    path.write_text(HEAD.replace('"FEN HOLLOW"', '"""FEN\nHOLLOW"""'))
    with pytest.raises(DescriptionError, match='several lines are a shape with lines = "…"'):
        compose(resolve_herald(load(path)))


def test_a_line_becomes_smaller_where_its_narrowest_letters_are_too_long(drawn: DrawText) -> None:
    straight = drawn("fit = 7\nfloor = 0.6")
    assert bounds(straight.outline).width == pytest.approx(7, abs=1e-5)
    assert bounds(straight.outline).height < 1.3
    turned = drawn("round = { radius = 9, fit = 40 }\nfloor = 0.6\nstem = 0.2")
    start, end = turned.places["start"].direction_rad, turned.places["end"].direction_rad
    assert math.degrees(start - end) == pytest.approx(40, abs=0.2)
    with pytest.raises(DescriptionError, match=r"is 1\.\d+ times as long as its room at the floor of 1\.4 mm"):
        drawn("fit = 7\nfloor = 1.4")


@pytest.mark.parametrize("how", ["", "round = { radius = 12 }\n", "along = { shape = 'box' }\n"])
@pytest.mark.parametrize(
    ("words", "keys", "rings"),
    [
        ("N^o 7", "", 5),  # N, an o with its counter, the bar under it, 7
        ("N^o 7", "superior_bar = false\n", 4),
        ("Nᵒ 7", "superior_bar = false\n", 4),
        ("I 1½", "", 5),  # I, 1, and 1 over a bar over 2
        ("I 1/2", "", 4),
        ("I 1/2", "fractions = 'built'\n", 4),
    ],
)
def test_fractions_and_superiors_go_anywhere(
    tmp_path: FilePath, drawn: DrawText, how: str, words: str, keys: str, rings: int
) -> None:
    drawn(f"{how}{keys}# {words}")
    path = tmp_path / "herald.toml"
    path.write_text(path.read_text().replace("FEN HOLLOW", words))
    text = compose(resolve_herald(load(path))).stage.shape("text")
    assert len(text.outline.rings) - 1 == rings


def test_large_initials_go_round_a_circle(drawn: DrawText) -> None:
    usual, large = (drawn(f"round = {{ radius = 12 }}\n{keys}") for keys in ("", "initials = { times = 1.4 }"))
    reach = [max(math.hypot(*point) for point in text.outline.data[:, 0]) for text in (usual, large)]
    assert reach[1] - 12 == pytest.approx(1.4 * (reach[0] - 12), rel=0.02)
