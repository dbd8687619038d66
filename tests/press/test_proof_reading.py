import math
from dataclasses import replace

import numpy as np
import pytest

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.errors import PressError
from heraldry.geometry.outline import EMPTY, Bounds, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Path
from heraldry.press import OUTPUTS, render
from heraldry.press.proof_reading import proof_read

PAGE = Bounds(0.0, 0.0, 10.0, 10.0)
BLACK = Ink("black", "#000000")


def box(left, bottom, right, top) -> Path:
    corners = [Point(left, bottom), Point(right, bottom), Point(right, top), Point(left, top)]
    return Path.through(corners, closed=True)


def of(*rings: Path, page: Bounds = PAGE, ink: Ink = BLACK, name: str = "plate") -> Artwork:
    return Artwork("art", page, (Plate(name, ink, Outline.of(rings)),))


SOUND = of(box(1, 1, 9, 9), box(2, 2, 4, 4).reversed())
BOW_TIE = Path.through([Point(1, 1), Point(9, 9), Point(9, 1), Point(1, 5)], closed=True)
TWO_BLACKS = (
    Plate("a", BLACK, SOUND.plates[0].outline),
    Plate("b", Ink("black", "#111111"), SOUND.plates[0].outline),
)

FAULTS = {
    "no plate": (replace(SOUND, plates=()), "there is no plate to print"),
    "no page": (replace(SOUND, page=Bounds(0, 0, 0, 10)), "the page is 0 × 10 mm"),
    "page not a number": (replace(SOUND, page=Bounds(0, 0, math.nan, 10)), "the page is nan × 10 mm"),
    "empty": (Artwork("art", PAGE, (Plate("p", BLACK, EMPTY),)), "plate 'p' is empty"),
    "over the edge": (of(box(1, 1, 10.25, 9)), "plate 'plate' reaches 0.250 mm over the edge of the page"),
    "hole outside in": (of(box(1, 1, 9, 9), box(2, 2, 4, 4)), "add up to 68.0000 mm², but fill 60.0000 mm²"),
    "overlap": (of(box(1, 1, 5, 5), box(4, 4, 8, 8)), "add up to 32.0000 mm², but fill 30.0000 mm²"),
    "clockwise": (of(box(1, 1, 9, 9).reversed()), "run the wrong way round"),
    "bow tie": (of(BOW_TIE), "rings that overlap"),
    "no width": (of(Path.through([Point(1, 1), Point(9, 9), Point(5, 5)], True)), "covers 0 mm²"),
    "bad colour": (of(box(1, 1, 9, 9), ink=Ink("red", "red")), "the colour 'red', wanted is '#rrggbb'"),
    "reserved ink": (of(box(1, 1, 9, 9), ink=Ink("All", "#000000")), "an ink cannot be called 'All'"),
    "nameless ink": (of(box(1, 1, 9, 9), ink=Ink(" ", "#000000")), "an ink is called ' '"),
    "nameless plate": (of(box(1, 1, 9, 9), name="a\nb"), "a plate is called 'a\\nb'"),
    "twice": (replace(SOUND, plates=SOUND.plates * 2), "2 plates are called 'plate'"),
    "two colours": (replace(SOUND, plates=TWO_BLACKS), "ink 'black' has 2 different colours"),
}  # fmt: skip


@pytest.mark.parametrize(("art", "message"), FAULTS.values(), ids=FAULTS)
def test_what_is_not_sound_is_refused_with_its_reason(art, message):
    with pytest.raises(PressError) as caught:
        proof_read(art)
    assert message in str(caught.value)
    assert str(caught.value).startswith("art: ")


def test_sound_artwork_passes(artwork):
    proof_read(artwork)
    proof_read(SOUND)


def test_all_faults_are_told_at_once():
    art = Artwork("art", PAGE, (Plate("a", Ink("x", "x"), EMPTY), Plate("a", BLACK, Outline.of([box(-1, 1, 5, 5)]))))
    with pytest.raises(PressError) as caught:
        proof_read(art)
    assert len(str(caught.value).splitlines()) == 4


@pytest.mark.parametrize("name", OUTPUTS)
def test_no_output_is_made_of_unsound_artwork(name):
    with pytest.raises(PressError, match="is empty"):
        render(FAULTS["empty"][0], name)


def test_ink_may_fill_the_page_to_its_edge():
    proof_read(of(box(0, 0, 10, 10)))
    proof_read(of(box(-0.0009, 0, 10, 10.0009)))


def test_an_arc_that_is_not_what_it_says_is_found():
    """Its centre disagrees with its ends: chords are drawn by the one, the area counted by the other."""
    good = Arc.about(Point(5, 5), 4.0, 0.0, math.pi)
    bad = replace(good, centre=Point(5, 6))
    ring = Path((bad, *Path.through([good.end, good.start]).segments), closed=True)
    with pytest.raises(PressError, match="broken curve"):
        proof_read(of(ring))


def test_touching_rings_are_no_overlap():
    """A hole that touches its outer circle from within, and two discs that touch."""
    outer = Path((Arc.about(Point(5, 5), 4.0, 0.0, math.tau),), closed=True)
    inner = Path((Arc.about(Point(7, 5), 2.0, 0.0, -math.tau),), closed=True)
    proof_read(of(outer, inner))
    left = Path((Arc.about(Point(3, 5), 2.0, 0.0, math.tau),), closed=True)
    right = Path((Arc.about(Point(7, 5), 2.0, 0.0, math.tau),), closed=True)
    proof_read(of(left, right))


def test_coordinates_are_numbers():
    outline = SOUND.plates[0].outline
    data = outline.data.copy()
    data[2, 3, 0] = np.nan
    broken = Plate("p", BLACK, Outline(outline.kinds, data, outline.rings))
    with pytest.raises(PressError, match="a coordinate that is not a number"):
        proof_read(replace(SOUND, plates=(broken,)))
