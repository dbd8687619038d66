"""Proof pictures: lettering in the colours it takes on its paint, to scale, one car or the whole class on a page."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from heraldry.artwork import Artwork
from heraldry.diagrams.captions import length_text
from heraldry.diagrams.class_of_cars import ClassOfCars
from heraldry.diagrams.proof import PAGE_HEIGHT_MM, PAGE_WIDTH_MM, contact_pages, proofs
from heraldry.errors import DescriptionError
from heraldry.geometry.measure import area, bounds
from heraldry.guard.colour import colour_on
from heraldry.press.proof_reading import proof_read
from heraldry.units import HO

AClass = Callable[..., ClassOfCars]
RED, GREY, YELLOW = "#6b2f24", "#b9bcc0", "#f2c200"
SIDE = """
kind = "diagram"
road = "road.toml"
scale = "HO"
[side.left]
width = "40 ft full"
height = "10 ft full"
paint = "red"
"""
NAME = '[item.name]\ntext = "{car.name}"\ncap_height = 2\nx = 20\ny = 10\nink = "white"\n'
CLASS = """
[side.left.area.band]
bottom = 20
paint = "grey"
[side.left.area.roof]
bottom = "height"
height = "5 mm"
paint = "black_roof"
[side.right]
mirrors = "left"
[paint.black_roof]
colour = "#202020"
[series]
numbers = "301-325"
[item.bar]
box = 10
height = 10
x = 30
y = 15
ink = "yellow"
[item.number]
text = "{car.number}"
cap_height = 3
x = 100
y = 5
ink = "white"
"""


def colours(picture: Artwork) -> dict[str, float]:
    """How much of each colour a picture shows, mm²."""
    shown: dict[str, float] = {}
    for plate in picture.plates:
        shown[plate.ink.colour_hex] = shown.get(plate.ink.colour_hex, 0.0) + area(plate.outline)
    return shown


def test_a_car_is_shown_with_all_its_sides_as_large_as_the_model(a_class: AClass) -> None:
    picture = next(proofs(a_class(CLASS), ["307"]))
    proof_read(picture)
    assert picture.name == "cars 307 proof"
    body, band = (next(plate for plate in picture.plates if plate.ink.colour_hex == paint) for paint in (RED, GREY))
    assert bounds(body.outline).width == pytest.approx(140.0)
    assert area(body.outline) == pytest.approx(2 * 140 * 35)  # both sides
    assert area(band.outline) == pytest.approx(2 * 140 * 15)  # over the upper part of them
    assert picture.plates.index(body) < picture.plates.index(band)
    assert colours(picture)["#202020"] == pytest.approx(2 * 140 * 5)  # the roof, beyond the side


def test_ends_stand_side_by_side_where_the_sides_are_long_enough(a_class: AClass) -> None:
    ends = "".join(f'[side.{end}_end]\nwidth = "12 ft full"\nheight = "10 ft full"\npaint = "grey"\n' for end in "ab")
    picture = next(proofs(a_class(CLASS.replace("x = 100", "x = 10") + ends), ["307"]))
    grey = next(
        plate
        for plate in picture.plates
        if plate.ink.colour_hex == GREY and bounds(plate.outline).height == pytest.approx(35)
    )
    assert bounds(grey.outline).width == pytest.approx(2 * 42 + 6)  # two ends of 12 ft, and a gap


def test_lettering_is_shown_in_the_colour_it_takes_on_each_paint(a_class: AClass) -> None:
    shown = colours(next(proofs(a_class(CLASS), ["307"])))
    # The bar stands from 15 to 25 mm, the band begins at 20: half of it on each paint, on both sides.
    assert shown[colour_on(RED, YELLOW)] == pytest.approx(2 * 10 * 5)
    assert shown[colour_on(GREY, YELLOW)] == pytest.approx(2 * 10 * 5)
    assert YELLOW not in shown


def test_white_film_keeps_the_colours(a_class: AClass) -> None:
    on_white = a_class(CLASS, head=SIDE.replace('scale = "HO"', 'scale = "HO"\nfilm = "white"'))
    assert colours(next(proofs(on_white, ["307"])))[YELLOW] == pytest.approx(2 * 10 * 10)


def test_a_contact_page_holds_the_class_and_fits_a_sheet_of_paper(a_class: AClass) -> None:
    cars = a_class(CLASS)
    (page,) = contact_pages(cars)
    proof_read(page)
    assert page.width_mm <= PAGE_WIDTH_MM
    assert page.height_mm <= PAGE_HEIGHT_MM
    body = area(next(plate for plate in page.plates if plate.ink.colour_hex == RED).outline)
    reduced = (25 * 140 * 35 / body) ** 0.5
    assert reduced == pytest.approx(round(reduced))  # to scale: a whole number
    title = next(plate for plate in page.plates if "writing" in plate.name)
    assert not title.outline.is_empty


def test_a_class_too_large_for_a_page_goes_on_to_the_next(a_class: AClass) -> None:
    pages = list(contact_pages(a_class(CLASS.replace("301-325", "1000-1240"))))
    assert len(pages) > 1
    shown = sum(area(next(p for p in page.plates if p.ink.colour_hex == RED).outline) for page in pages)
    per_car = 140 * 35 / 6**2  # eight across in 260 mm with gaps of 6 mm: a sixth of the model's size
    assert shown / per_car == pytest.approx(241)


def test_dimensions_add_guides_and_a_schedule_and_change_nothing_below(a_class: AClass) -> None:
    cars = a_class(CLASS)
    plain, dimensioned = next(proofs(cars, ["307"])), next(proofs(cars, ["307"], dimensions=True))
    proof_read(dimensioned)
    for colour_hex in (RED, GREY, "#202020"):
        assert colours(dimensioned)[colour_hex] == pytest.approx(colours(plain)[colour_hex])
    assert "#2b8ae6" in colours(dimensioned)
    assert "#2b8ae6" not in colours(plain)


def test_writing_wider_than_a_small_side_makes_the_paper_wider(a_class: AClass) -> None:
    head = SIDE.replace('"40 ft full"', '"2 ft full"')
    item = '[item.a_very_long_name_of_an_item]\nbox = 2\nheight = 1\nink = "white"\n'
    for picture in (*proofs(a_class(item, head=head), dimensions=True), *contact_pages(a_class(item, head=head))):
        proof_read(picture)
        assert picture.width_mm > 7 + 12  # the side and a gap on both sides of it


def test_a_car_that_cannot_be_lettered_does_not_keep_the_others_from_the_page(a_class: AClass) -> None:
    text = CLASS.replace('numbers = "301-325"', 'cars = "list.csv"') + NAME
    pages = contact_pages(a_class(text, list_csv="number,name\n1,ELM\n2,♞\n3,OAK\n"))
    page = next(pages)
    body = area(next(plate for plate in page.plates if plate.ink.colour_hex == RED).outline)
    assert body == pytest.approx(2 * 140 * 35)
    with pytest.raises(DescriptionError, match=r"list.csv:3: row 3: column name"):
        next(pages)


@pytest.mark.parametrize(
    ("mm", "text"),
    [(143.5, "41-0"), (2.625, "0-9"), (0.0, "0-0"), (1.4583333, "0-5"), (0.328125, "0-1 1/8"), (-3.5, "-1-0")],
)
def test_lengths_are_told_in_full_size_feet_and_inches(mm: float, text: str) -> None:
    assert length_text(mm, HO) == text  # 3.5 mm to the foot, worked by hand
    assert length_text(1.5, None) == "1.50 MM"
