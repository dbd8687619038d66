"""Forms derived from plates, random and real: what is drawn, what is bare, and what is one another's rest."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

import heraldry
from heraldry.artwork import Ink, Plate
from heraldry.describe.models import Form
from heraldry.errors import DescriptionError
from heraldry.geometry.boolean import clean, to_polygon, unite
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.outline import EMPTY, Outline
from heraldry.plates.art_functions import filled
from heraldry.plates.forms import derived, seen_areas
from heraldry.plates.tones import lightness, standing_out
from heraldry.resolve.kept import Kept
from heraldry.resolve.resolved import ResolvedForm
from tests.strategies import box, circle, ring, shapes

BLACK, RED, YELLOW = Ink("black", "#101010"), Ink("red", "#a02020"), Ink("yellow", "#f0d020")
WHITE = Ink("white", "#ffffff", opaque=True)
INKS = (BLACK, RED, YELLOW, WHITE)
PRINTED = Ink("mono", "#000000")
GAP_MM, LINE_MM = 0.2, 0.1
ROUNDING_MM2 = 2e-3
"""What areas of outlines some 100 mm round may be off when worked out on chords."""

PROPERTY = settings(derandomize=True, deadline=None, max_examples=25)


def form(
    word: Form, ground: str = "#e3d9bd", gap_mm: float = GAP_MM, bare: frozenset[str] | None = None
) -> ResolvedForm:
    return ResolvedForm(word, PRINTED, ground, LINE_MM if word == "outline" else 0.0, gap_mm, bare, None)


def plates_of(*parts: tuple[Ink, Outline]) -> list[Plate]:
    return [Plate(f"plate{i}", ink, outline) for i, (ink, outline) in enumerate(parts)]


def formed(plates: list[Plate], **words: object) -> Outline:
    return derived(form(**words), plates, Kept()).outline  # type: ignore[arg-type]


random_plates = st.lists(st.tuples(st.sampled_from(INKS), shapes().map(clean)), min_size=1, max_size=3).map(
    lambda parts: plates_of(*parts)
)


@PROPERTY
@given(plates=random_plates)
def test_what_is_seen_parts_the_herald(plates: list[Plate]) -> None:
    seen = [to_polygon(one.outline) for one in seen_areas(plates)]
    whole = shapely.union_all([to_polygon(plate.outline) for plate in plates])
    assert sum(one.area for one in seen) == pytest.approx(whole.area, abs=ROUNDING_MM2)
    assert shapely.union_all(seen).symmetric_difference(whole).area < ROUNDING_MM2


@PROPERTY
@given(plates=random_plates)
def test_in_one_ink_and_reversed_are_each_others_rest(plates: list[Plate]) -> None:
    one_ink, reverse = (to_polygon(formed(plates, word=word)) for word in ("one ink", "reversed"))
    whole = to_polygon(filled(unite(*(plate.outline for plate in plates))))
    assert one_ink.intersection(reverse).area < ROUNDING_MM2
    assert one_ink.union(reverse).symmetric_difference(whole).area < ROUNDING_MM2


@PROPERTY
@given(plates=random_plates)
def test_in_one_ink_nothing_is_drawn_that_was_bare_and_all_that_stands_out_is(plates: list[Plate]) -> None:
    areas = seen_areas(plates)
    stands = standing_out([one.plate.ink.colour_hex for one in areas], "#e3d9bd")
    drawn = [to_polygon(one.outline) for one, is_drawn in zip(areas, stands, strict=True) if is_drawn]
    alike = to_polygon(formed(plates, word="one ink"))
    wanted = shapely.union_all(drawn)
    assert alike.difference(wanted).area < ROUNDING_MM2
    # What is missing lies in the gap between two inks, and nowhere else.
    borders = shapely.union_all([one.buffer(GAP_MM + 0.01) for one in drawn[1:]])
    assert wanted.difference(alike).difference(borders).area < ROUNDING_MM2


@settings(PROPERTY, max_examples=12)
@given(plates=random_plates)
def test_an_outline_is_drawn_inside_and_covers_every_border(plates: list[Plate]) -> None:
    lines = to_polygon(formed(plates, word="outline"))
    areas = [to_polygon(one.outline) for one in seen_areas(plates)]
    assert lines.difference(shapely.union_all(areas)).area < ROUNDING_MM2
    borders = shapely.union_all([one.boundary for one in areas])
    assert borders.difference(lines.buffer(0.001)).length < 0.01
    # A sharp corner reaches as far as four thicknesses from where two borders meet.
    assert lines.difference(borders.buffer(4 * LINE_MM)).area < ROUNDING_MM2


@PROPERTY
@given(outline=shapes().map(clean))
def test_one_plate_is_the_same_in_one_ink(outline: Outline) -> None:
    plates = plates_of((RED, outline))
    assert formed(plates, word="one ink").data.tobytes() == outline.data.tobytes()


def test_reversed_of_a_ring_is_its_hole() -> None:
    hole = formed(plates_of((BLACK, ring(0, 0, 5, 3))), word="reversed")
    assert area(hole) == pytest.approx(9 * math.pi, rel=1e-6)


def test_two_dark_inks_that_meet_stay_a_gap_apart() -> None:
    field, bar = box(0, 0, 10, 4), box(4, 0, 6, 4)
    together = formed(plates_of((RED, field), (BLACK, bar)), word="one ink")
    # The bar stays whole, 0.2 mm on either side of it are taken from the field: 40 − 2 · 0.2 · 4.
    assert area(together) == pytest.approx(38.4, abs=1e-6)
    assert area(formed(plates_of((BLACK, field), (BLACK, bar)), word="one ink")) == pytest.approx(40.0, abs=1e-6)


def test_the_later_plate_is_seen_where_two_lie_on_one_another() -> None:
    below, above = seen_areas(plates_of((BLACK, box(0, 0, 4, 4)), (YELLOW, box(2, 0, 6, 4))))
    assert (area(below.outline), area(above.outline)) == pytest.approx((8, 16))


def test_white_over_black_becomes_bare_on_light_paint_and_is_all_there_is_on_dark() -> None:
    plates = plates_of((BLACK, box(0, 0, 4, 4)), (WHITE, box(1, 1, 2, 2)))
    assert area(formed(plates, word="one ink")) == pytest.approx(15.0)
    assert area(formed(plates, word="one ink", ground="#23402f")) == pytest.approx(1.0)


def test_the_user_may_say_which_plates_become_bare() -> None:
    plates = plates_of((BLACK, box(0, 0, 4, 4)), (RED, box(5, 0, 6, 4)))
    assert area(formed(plates, word="one ink", bare=frozenset({"plate0"}))) == pytest.approx(4.0)
    assert formed(plates, word="one ink", bare=frozenset({"plate0", "plate1"})).is_empty


def test_a_border_that_two_areas_share_is_drawn_once() -> None:
    lines = formed(plates_of((RED, box(0, 0, 2, 2)), (BLACK, box(2, 0, 4, 2))), word="outline")
    # A frame of 4 × 2 with lines of 0.1 mm inside it, and one line of 0.1 mm between its halves.
    assert area(lines) == pytest.approx(4 * 2 - 3.8 * 1.8 + 0.1 * 1.8, abs=1e-6)


def test_a_reversed_herald_may_have_a_line_round_it() -> None:
    plates = plates_of((BLACK, circle(0, 0, 5)))
    assert formed(plates, word="reversed").is_empty
    lined = ResolvedForm("reversed", PRINTED, "#ffffff", 0.5, GAP_MM, None, None)
    outline = derived(lined, plates, Kept()).outline
    assert area(outline) == pytest.approx((25 - 20.25) * math.pi, rel=1e-6)
    assert bounds(outline).width == pytest.approx(10.0)


def test_lightness_at_known_greys() -> None:
    # L* of sRGB greys: 0 and 100 by definition; #777777 is 50.03 (from memory; Y = 0.1845 by hand, 116·Y^(1/3) − 16).
    assert lightness("#000000") == 0.0
    assert lightness("#ffffff") == pytest.approx(100.0)
    assert lightness("#777777") == pytest.approx(116 * 0.18447 ** (1 / 3) - 16, abs=0.01)
    assert standing_out(["#26221f"], "#15130f") == [True]  # something always stands out


FILE = """kind = "herald"
on = "#e3d9bd"
[ink.black]
colour = "#101010"
[ink.white]
colour = "#ffffff"
opaque = true
[shape.disc]
circle = 10
[shape.hole]
circle = 4
[plate.black]
ink = "black"
art = "disc - hole"
"""


def family(folder: Path, variants: str) -> list[heraldry.Artwork]:
    path = folder / "one.toml"
    path.write_text(FILE + variants, encoding="utf-8")
    return heraldry.draw(heraldry.load(path))


@pytest.mark.parametrize(
    ("keys", "expected"),
    [
        ('form = "one ink"\nink = "white"', 84 * math.pi),
        ('form = "reversed"\nink = "white"', 16 * math.pi),
        ('form = "reversed"\nink = "white"\nfield = "offset(disc, 2)"', (44 + 16) * math.pi),
        ('form = "reversed"\nink = "white"\nline = 1', (19 + 16) * math.pi),
        ('form = "outline"\nink = "white"\nline = 0.5', (9.75 + 4.25) * math.pi),
    ],
)
def test_forms_of_a_file(tmp_path: Path, keys: str, expected: float) -> None:
    itself, variant = family(tmp_path, f"[variant.v]\n{keys}\n")
    assert [(plate.name, plate.ink.name) for plate in variant.plates] == [("white", "white")]
    assert area(variant.plates[0].outline) == pytest.approx(expected, rel=1e-6)
    assert variant.page == itself.page  # whatever is bare at its edge, a form takes up the same room


def test_a_form_of_which_nothing_is_left_is_told(tmp_path: Path) -> None:
    with pytest.raises(DescriptionError, match=r"one.toml:16: variant.v.form: nothing is left of this form"):
        family(tmp_path, '[variant.v]\nform = "one ink"\nink = "white"\nbare = ["black"]\n')


def test_nothing_gathers_to_nothing() -> None:
    assert (
        derived(form("one ink", bare=frozenset({"plate0"})), plates_of((RED, circle(0, 0, 1))), Kept()).outline is EMPTY
    )
