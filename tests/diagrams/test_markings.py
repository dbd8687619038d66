"""Markings of fixed form: as large as on the real thing, in the years that had them."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from heraldry.artwork import Artwork
from heraldry.diagrams.class_of_cars import ClassOfCars
from heraldry.diagrams.drawing import artworks
from heraldry.errors import DescriptionError
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.outline import Outline
from heraldry.press.proof_reading import proof_read

AClass = Callable[..., ClassOfCars]
IN_MM = 3.5 / 12
"""An inch in HO."""


def a_car(a_class: AClass, marking: str, year: int = 1976, more: str = "") -> Artwork:
    data = f'[data]\nyear = {year}\nbuilt = "1965-03"\njournal = "D"\nlight_weight = 60000\n{more}\n'
    item = f'[series]\nnumbers = "4711"\n[item.m]\nmarking = "{marking}"\nx = 20\ny = 10\n'
    artwork = next(artworks(a_class(data + item)))
    proof_read(artwork)
    return artwork


def test_a_colour_bar_plate_is_10_5_by_22_inches(a_class: AClass) -> None:
    plate = a_car(a_class, "colour bars", more='owner = "942"')
    box = bounds(Outline.gather(one.outline for one in plate.plates))
    # 10 1/2 × 22 in at full size (freightcars.nakina.net), at 3.5 mm to the foot.
    assert (box.width, box.height) == pytest.approx((10.5 * IN_MM, 22 * IN_MM), abs=2e-6)
    assert [one.name for one in plate.plates] == ["black", "blue", "red", "white"]


def test_a_wheel_dot_is_6_inches_in_a_square_of_12(a_class: AClass) -> None:
    dot = a_car(a_class, "wheel dot", 1978)
    by_name = {plate.name: plate.outline for plate in dot.plates}
    assert bounds(by_name["black"]).width == pytest.approx(12 * IN_MM, abs=2e-6)
    assert area(by_name["yellow"]) == pytest.approx(3.14159265 * (3 * IN_MM) ** 2, rel=1e-4)
    assert area(by_name["black"]) + area(by_name["yellow"]) == pytest.approx((12 * IN_MM) ** 2, rel=1e-4)


@pytest.mark.parametrize(("year", "count"), [(1976, 2), (1990, 3)])
def test_stencil_panels_follow_the_year(a_class: AClass, year: int, count: int) -> None:
    record = 'record = [{ work = "COTS", station = "BER", date = "1975-04" }]'
    panels = a_car(a_class, "stencil panels", year, record)
    black, white = (plate.outline for plate in panels.plates)
    assert bounds(black).width == pytest.approx((count * 14 + count - 1) * IN_MM, abs=2e-6)  # 14 in each, 1 in apart
    # The letters are spared from the ground, so that they come out whichever ink is printed first.
    assert area(black) + area(white) == pytest.approx(count * 14 * 18 * IN_MM**2, rel=1e-4)


@pytest.mark.parametrize(
    ("marking", "year", "told"),
    [
        ("stencil panels", 1966, "no stencil panels in 1966"),
        ("wheel dot", 1970, "no wheel dot in 1970"),
        ("colour bars", 1976, "its owner's code"),
    ],
)
def test_a_marking_out_of_its_years_is_refused(a_class: AClass, marking: str, year: int, told: str) -> None:
    with pytest.raises(DescriptionError, match=told):
        a_car(a_class, marking, year)


def test_a_plate_is_refused_before_its_years_and_says_the_kind_of_car(a_class: AClass) -> None:
    with pytest.raises(DescriptionError, match="wears a colour-bar plate in 1966"):
        a_car(a_class, "colour bars", 1966, 'owner = "942"')
    railroad, service = (a_car(a_class, "colour bars", 1976, f'owner = "942"\nequipment = {kind}') for kind in (0, 6))
    assert [a.outline != b.outline for a, b in zip(railroad.plates, service.plates, strict=True)].count(True) > 1


def test_a_marking_takes_inks_of_other_names(a_class: AClass) -> None:
    renamed = a_car(a_class, "wheel dot", 1978, 'dot = "white"\n[ink.sun]\ncolour = "#f2c200"')
    assert [plate.name for plate in renamed.plates] == ["black", "white"]
    item = '[series]\nnumbers = "1"\n[data]\nowner = "942"\n[item.m]\nmarking = "colour bars"\n'
    sea = '[ink.sea]\ncolour = "#1f4fa0"\n'
    plate = next(artworks(a_class(item + 'inks = { blue = "sea" }\nx = 20\ny = 10\n' + sea)))
    assert [one.name for one in plate.plates] == ["black", "sea", "red", "white"]
    for wrong, told in (('{ blu = "sea" }', "did you mean 'blue'"), ('{ blue = "see" }', "no such ink, found 'see'")):
        with pytest.raises(DescriptionError, match=told):
            a_class(item + f"inks = {wrong}\nx = 20\ny = 10\n" + sea)
