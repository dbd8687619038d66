"""Sides: edges from any two measures, sides taken over from others, faults in words."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from heraldry.diagrams.class_of_cars import ClassOfCars
from heraldry.diagrams.side import Side
from heraldry.errors import DescriptionError
from heraldry.units import parse_scale

AClass = Callable[..., ClassOfCars]
ITEM = '\n[item.n]\ntext = "7"\ncap_height = 2\nink = "white"\n'
FOOT_MM = 3.5
"""HO is 3.5 mm to the foot (NMRA S-1.2)."""


def sides(cars: ClassOfCars) -> dict[str, Side]:
    return {layout.side.name: layout.side for layout in cars.layouts}


def test_a_box_by_a_width_alone_is_centred_and_by_one_edge_reaches_to_the_end(a_class: AClass) -> None:
    side = sides(a_class(ITEM))["left"]
    # 40 ft − 6 ft, halved: 17 ft to the door; 17 ft · 3.5 mm = 59.5 mm, worked by hand.
    assert (side.boxes["door"].left, side.boxes["door"].right) == (17 * FOOT_MM, 23 * FOOT_MM)
    assert (side.panels["A"].left, side.panels["A"].right) == (0.0, 17 * FOOT_MM)
    assert (side.panels["A"].bottom, side.panels["A"].top) == (0.0, 10 * FOOT_MM)


@pytest.mark.parametrize(
    ("keys", "left", "right"),
    [
        ("left = 10\nright = 30", 10, 30),
        ("left = 10\nwidth = 5", 10, 15),
        ("right = 30\nwidth = 5", 25, 30),
        ("width = 20", 60, 80),
        ("left = 'door.right + 2'", 82.5, 140),
        ("", 0, 140),
    ],
)
def test_any_two_measures_give_a_box(a_class: AClass, keys: str, left: float, right: float) -> None:
    box = sides(a_class(f"[side.left.panel.B]\n{keys}\n{ITEM}"))["left"].boxes["B"]
    assert (box.left, box.right) == pytest.approx((left, right))


def test_parts_are_measured_by_one_another_wherever_they_stand(a_class: AClass) -> None:
    panel = "[side.left.panel.B]\nleft = 'post.right'\nbottom = 'sill.top'\ntop = 'hatch.bottom - 1'\n"
    rest = '[side.left.area.sill]\ntop = 4\npaint = "grey"\n[side.left.keepout.hatch]\nbottom = "sill.top + 20"\n'
    rest += '[side.left.panel.post]\nleft = "door.left - 5"\nwidth = 2\n'
    box = sides(a_class(panel + rest + ITEM))["left"].boxes["B"]
    assert (box.left, box.bottom, box.top) == pytest.approx((59.5 - 5 + 2, 4, 23))


@pytest.mark.parametrize(
    ("keys", "stands"),
    [
        ("at = [3, 'door.left']", [3, 59.5]),
        ("every = 40", [0, 40, 80, 120]),
        ("every = '10 ft full'\nfirst = 'door.left'", [59.5, 94.5, 129.5]),
        ("every = 7\nfirst = 3\ncount = 2", [3, 10]),
    ],
)
def test_ribs_stand_in_a_list_or_in_a_row(a_class: AClass, keys: str, stands: list[float]) -> None:
    (row,) = sides(a_class(f"[side.left.ribs.posts]\nwidth = 2\n{keys}\n{ITEM}"))["left"].ribs
    assert [strip.centre.x for strip in row.strips] == pytest.approx(stands)


def test_what_leans_on_a_fault_is_not_told_as_another_one(a_class: AClass) -> None:
    text = "[side.left.panel.B]\nleft = 'dor.left'\n[side.left.panel.C]\nleft = 'B.right'\nright = 'B.left'\n"
    with pytest.raises(DescriptionError) as refused:
        a_class(text + ITEM + 'panel = "C"\n[item.m]\nbox = 2\nheight = 2\nink = "whit"\n')
    told = [str(fault).partition(": ")[2] for fault in refused.value.faults]
    assert [one.partition(":")[0] for one in told] == ["side.left.panel.B.left", "item.m.ink"]


def test_a_mirrored_side_has_its_parts_the_other_way_round(a_class: AClass) -> None:
    text = '[side.left.keepout.window]\nleft = 5\nwidth = 10\n[side.right]\nmirrors = "left"\n'
    left, right = sides(a_class(text + ITEM)).values()
    assert (left.front, right.front) == ("left", "right")
    assert (right.boxes["window"].left, right.boxes["window"].right) == (125.0, 135.0)
    assert right.mirrored("left").edges() == left.edges()


def test_a_side_like_another_is_as_that(a_class: AClass) -> None:
    text = '[side.left.keepout.window]\nleft = 5\nwidth = 10\n[side.right]\nlike = "left"\npaint = "grey"\n'
    left, right = sides(a_class(text + ITEM)).values()
    assert right.edges() == left.edges()
    assert (left.paint_hex, right.paint_hex) == ("#6b2f24", "#b9bcc0")


def test_another_scale_brings_the_whole_side_along(a_class: AClass) -> None:
    ho, n = a_class(ITEM), a_class(ITEM, asked=parse_scale("N"))
    factor = 304.8 / 3.5 / 160  # HO's ratio over N's
    for name, mm in sides(ho)["left"].edges().items():
        assert sides(n)["left"].edges()[name] == pytest.approx(mm * factor, abs=2e-6)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("[side.left.panel.B]\nleft = 1\nright = 2\nwidth = 1\n", "one too many, give two of them"),
        ("[side.left.panel.B]\nleft = 9\nright = 2\n", "nothing is between them"),
        ("[side.left.panel.door]\nleft = 9\n", "the name 'door' is taken on this side"),
        ("[side.left.panel.B]\nleft = 'dor.left'\n", "panel.B.left: unknown name, found 'dor.left', did you mean"),
        ("[side.left.keepout.x]\ncircle = 'dor.left'\n", "keepout.x.circle: unknown name, found 'dor.left'"),
        (
            "[side.left.panel.B]\nleft = 'C.right'\n[side.left.panel.C]\nright = 'B.left'\n",
            "measured by one another, found",
        ),
        ("[side.left.panel.B]\nwidth = '15 ft'\n", "it is 4,572 mm wide on a side of 140.0 mm, a length is one on the"),
        (
            "[side.right]\nwidth = '40 ft'\nheight = 3\n",
            "no model has a side of 12,192 mm, found 40 ft, a length is one on",
        ),
        ("[side.right]\nwidth = 40\nheight = '9 ft'\n", "no model has a side of 2,743 mm, found 9 ft"),
        ("[side.right]\nmirrors = 'lift'\n", "did you mean 'left'?"),
        ("[side.right]\nmirrors = 'left'\nwidth = 3\n", "has everything from the other one"),
        ("[side.right]\nheight = 3\n", "'width' is missing"),
        ("[side.left.area.x]\nright = 9\npaint = 'rde'\n", "did you mean 'red'"),
        ("[side.left.ribs.seams]\nat = [3]\nwidth = -1\n", "both must be more than 0"),
        ("[side.left.ribs.seams]\nwidth = 1\n", "say where they stand by one of the two"),
        ("[side.left.ribs.seams]\nwidth = 1\nat = [3]\nevery = 4\n", "say where they stand by one of the two"),
        ("[side.left.ribs.seams]\nwidth = 1\nevery = 0\n", "from one to the next must be more than 0"),
        ("[side.left.ribs.seams]\nwidth = 1\nevery = 0.1\n", "a row holds 1 to 500 of them, found 1401"),
        ("[let]\nleft = 3\n", "every side has an edge of that name"),
        ("[side.left.keepout.window]\ncircle = 0\n", "it must be more than 0"),
    ],
)
def test_what_is_wrong_with_a_side_is_told_with_its_line(a_class: AClass, text: str, told: str) -> None:
    with pytest.raises(DescriptionError) as refused:
        a_class(text + ITEM)
    (fault,) = refused.value.faults
    assert told in str(fault)
    assert fault.line > 10


def test_full_and_model_lengths_may_be_mixed_but_full_ones_need_a_scale(a_class: AClass) -> None:
    mixed = a_class("[side.left.panel.B]\nleft = '10 ft full + 5 mm'\nwidth = '1/2 in'\n" + ITEM)
    assert sides(mixed)["left"].boxes["B"].left == pytest.approx(35 + 5)
    assert sides(mixed)["left"].boxes["B"].width == pytest.approx(12.7)
    head = 'kind = "diagram"\nroad = "road.toml"\n[side.left]\nwidth = "40 ft full"\nheight = 30\n'
    with pytest.raises(DescriptionError, match=r'a full-size length in a file without a scale.*add scale = "HO"'):
        a_class(ITEM, head=head)
