"""Where an item may not lie is found, with the distance; where it may, nothing is said."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from heraldry.artwork import Finding
from heraldry.diagrams.class_of_cars import ClassOfCars
from heraldry.diagrams.drawing import artworks

AClass = Callable[..., ClassOfCars]
BOX = '[item.box]\nbox = 10\nheight = 4\nink = "black"\nlevel = "foot"\nanchor = "start"\ny = 10\n'
OTHER = '[item.other]\nbox = 10\nheight = 4\nink = "{ink}"\nanchor = "start"\nx = {x}\ny = {y}\n'


def found(cars: ClassOfCars, *kinds: str) -> list[Finding]:
    (artwork,) = artworks(cars)
    return [one for one in artwork.findings if one.kind in kinds]


# The door is from 59.5 to 80.5 mm, panel A from 0 to 59.5, the side 140 × 35 mm; distances worked by hand.
@pytest.mark.parametrize(
    ("keys", "kind", "measured"),
    [
        ("x = 133", "off the side", 3.0),
        ("x = -2", "off the side", 2.0),
        ("x = 48\npanel = 'A'\nclear = 2", "off the panel", 0.5),
        ("x = 51\npanel = 'A'", "off the panel", 1.5),
        ("x = 51", "keep-out", -1.5),
        ("x = 49\nclear = 1", "keep-out", 0.5),
        ("x = 81.5\nclear = '1.2 mm'", "keep-out", 1.0),
    ],
)
def test_what_lies_where_it_may_not_is_found_with_the_distance(
    a_class: AClass, keys: str, kind: str, measured: float
) -> None:
    (one,) = found(a_class(BOX + keys), kind)
    assert one.measured_mm == pytest.approx(measured, abs=1e-4)
    assert one.place is not None


@pytest.mark.parametrize("keys", ["x = 49.4", "x = 49.4\nclear = 0.1", "x = 80.6", "x = 0\npanel = 'A'", "x = 130"])
def test_what_lies_where_it_may_is_not_found(a_class: AClass, keys: str) -> None:
    assert found(a_class(BOX + keys), "off the side", "off the panel", "keep-out", "neighbour", "rib") == []


def test_neighbours_are_told_with_how_far_they_overlap_or_stand_apart(a_class: AClass) -> None:
    (lies_on,) = found(a_class(BOX + "x = 10\n" + OTHER.format(ink="black", x=18.5, y=10)), "neighbour")
    assert lies_on.measured_mm == pytest.approx(-1.5)
    apart = a_class(BOX + "x = 10\n" + OTHER.format(ink="black", x=20.4, y=10) + "clear = 0.5\n")
    assert found(apart, "neighbour")[0].measured_mm == pytest.approx(0.4, abs=1e-4)


def test_what_lies_wholly_on_another_ink_is_meant_to(a_class: AClass) -> None:
    inside = OTHER.replace("box = 10", "box = 4").replace("height = 4", "height = 2")
    assert found(a_class(BOX + "x = 10\n" + inside.format(ink="white", x=12, y=11)), "neighbour") == []
    assert found(a_class(BOX + "x = 10\n" + inside.format(ink="white", x=18, y=11)), "neighbour") != []
    assert found(a_class(BOX + "x = 10\n" + inside.format(ink="black", x=12, y=11)), "neighbour") != []


def test_round_keep_outs_are_measured_along_their_curve(a_class: AClass) -> None:
    window = "[side.left.keepout.window]\ncircle = 3\ncentre = [100, 20]\n"
    corner = OTHER.format(ink="black", x=103, y=23) + "clear = 2\n"
    (one,) = found(a_class(window + corner), "keep-out")
    assert one.measured_mm == pytest.approx(3 * 2**0.5 - 3, abs=1e-4)  # from the corner to the circle


def test_ribs_are_crossed_by_ink_and_not_by_the_white_between_letters(a_class: AClass) -> None:
    ribs = "[side.left.ribs.posts]\nat = [20]\nwidth = 0.2\n"
    text = '[item.t]\ntext = "I I"\ncap_height = 4\nx = {x}\ny = 5\nink = "white"\n'
    assert found(a_class(ribs + text.format(x=20)), "rib") == []
    (one,) = found(a_class(ribs + '[item.t]\ntext = "I"\ncap_height = 4\nx = 20\ny = 5\nink = "white"\n'), "rib")
    assert "crosses 1 of the posts" in one.message
    assert found(a_class(ribs + text.format(x=21) + "over_ribs = true\n"), "rib") == []
    seams = ribs + "may_be_crossed = true\n"
    assert found(a_class(seams + '[item.t]\ntext = "I"\ncap_height = 4\nx = 20\ny = 5\nink = "white"\n'), "rib") == []


def test_the_swing_of_round_letters_over_a_panel_is_no_overflow(a_class: AClass) -> None:
    text = "[side.left.panel.B]\nleft = 100\nwidth = 30\nbottom = 5\nheight = 4\n"
    text += '[item.t]\ntext = "OQO"\ncap_height = 4\npanel = "B"\nink = "white"\n'
    assert found(a_class(text), "off the panel") == []


def test_lost_colours_are_found_on_the_paint_that_an_item_lies_on(a_class: AClass) -> None:
    area = '[side.left.area.band]\nbottom = 25\npaint = "grey"\n'
    on_band, on_body = (OTHER.format(ink="yellow", x=100, y=y) for y in (28, 5))
    assert found(a_class(area + on_band), "lost colour") == []
    (one,) = found(a_class(area + on_body), "lost colour")
    assert "#6b2f24" in one.message
    both = OTHER.format(ink="yellow", x=100, y=23)
    assert len(found(a_class(area + both), "lost colour")) == 1


def test_a_colour_over_an_opaque_ink_is_judged_on_that(a_class: AClass) -> None:
    under = '[item.ground]\nbox = 20\nheight = 10\nink = "white"\nanchor = "start"\nx = 98\ny = 3\n'
    assert found(a_class(under + OTHER.format(ink="yellow", x=100, y=5)), "lost colour", "changed colour") == []
    assert found(a_class(OTHER.format(ink="yellow", x=100, y=5)), "changed colour", "lost colour") != []


def test_fine_lines_and_small_lettering_of_numbers_are_found_at_their_item(a_class: AClass) -> None:
    text = '[item.n]\ntext = "{car.number}"\ncap_height = 0.35\nx = 9\ny = 5\nink = "white"\n'
    text += '[series]\nnumbers = "180-182"\n'
    for artwork in artworks(a_class(text)):
        kinds = {one.kind: one for one in artwork.findings}
        assert {"fine line", "narrow gap", "small lettering"} <= set(kinds)
        assert kinds["fine line"].message.startswith("n: ")
        assert kinds["small lettering"].measured_mm == 0.35


def test_the_finest_place_of_a_line_is_told_of_the_whole_class_alike(a_class: AClass) -> None:
    text = '[item.n]\ntext = "{car.number}"\ncap_height = 0.9\nx = 9\ny = 5\nink = "white"\n'
    alone = a_class(text + '[series]\nnumbers = "88"\n')
    together = a_class(text + '[series]\nnumbers = "17, 88"\n')

    def fineness(cars: ClassOfCars) -> list[list[str]]:
        kinds = ("fine line", "narrow gap")
        return [[one.message for one in artwork.findings if one.kind in kinds] for artwork in artworks(cars)]

    (only,), (first, second) = fineness(alone), fineness(together)
    assert first == second != only
