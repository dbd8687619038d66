"""The room that is left on a side: found rectangles are empty and cannot grow, and the largest text fits."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.diagrams.class_of_cars import ClassOfCars
from heraldry.diagrams.drawing import artworks
from heraldry.diagrams.free_space import empty_rectangles, largest_room, mask
from heraldry.errors import HeraldryError
from heraldry.geometry.measure import area
from heraldry.geometry.outline import Bounds

AClass = Callable[..., ClassOfCars]
ROOM = Bounds(0, 0, 20, 12)
BOXES = st.lists(st.tuples(*[st.integers(0, 20), st.integers(0, 12), st.integers(1, 8), st.integers(1, 6)]), max_size=5)
ITEM = '[item.box]\nbox = 20\nheight = 10\nanchor = "start"\nx = 0\ny = 0\nink = "black"\n'


@settings(derandomize=True, deadline=None, max_examples=60)
@given(BOXES)
def test_the_largest_empty_square_is_among_them(boxes: list[tuple[int, int, int, int]]) -> None:
    obstacles = [Bounds(x, y, x + w, y + h) for x, y, w, h in boxes]
    found = list(empty_rectangles(ROOM, obstacles))
    cells = {
        (x, y)
        for x in range(20)
        for y in range(12)
        if not any(o.left <= x < o.right and o.bottom <= y < o.top for o in obstacles)
    }
    for box in found:
        inside = {(x, y) for x in range(int(box.left), int(box.right)) for y in range(int(box.bottom), int(box.top))}
        assert inside <= cells
    largest = max((min(box.width, box.height) for box in found), default=0)
    counted = max(
        (s for s in range(1, 13) for x, y in cells if {(x + i, y + j) for i in range(s) for j in range(s)} <= cells),
        default=0,
    )
    assert largest == counted


def test_the_text_of_that_size_fits_there_and_nothing_is_found(a_class: AClass) -> None:
    room = largest_room(a_class(ITEM), "left", "KENNEBAGO", "gothic", clear_mm=1.0)
    middle = room.box.centre
    text = (
        f'[item.t]\ntext = "KENNEBAGO"\ncap_height = {room.cap_height_mm:.4f}\nlevel = "middle"\nclear = 0.95\n'
        f'x = {middle.x}\ny = {middle.y}\nink = "white"\n'
    )
    (artwork,) = artworks(a_class(ITEM + text))
    kinds = {found.kind for found in artwork.findings}
    assert not kinds & {"off the side", "keep-out", "neighbour"}


def test_the_mask_is_the_side_without_what_is_taken(a_class: AClass) -> None:
    free = mask(a_class(ITEM), "left")
    # The side is 140 × 35 mm, the door 21 × 35 mm, the box 20 × 10 mm; worked by hand.
    assert area(free.plates[0].outline) == pytest.approx(140 * 35 - 21 * 35 - 20 * 10)
    assert (free.width_mm, free.height_mm) == (140, 35)


def test_a_full_side_and_an_unknown_one_are_told(a_class: AClass) -> None:
    with pytest.raises(HeraldryError, match="nothing of side left is left free"):
        largest_room(a_class(ITEM + "[side.left.keepout.all]\n"), "left", "X", "gothic")
    with pytest.raises(HeraldryError, match="did you mean 'left'"):
        largest_room(a_class(ITEM), "lift", "X", "gothic")


@pytest.mark.parametrize("text", ["", "  "])
def test_a_text_of_no_letters_has_no_room(a_class: Callable[[str], ClassOfCars], text: str) -> None:
    with pytest.raises(HeraldryError, match="has no letters; give the text"):
        largest_room(a_class(ITEM), "left", text, "gothic")
