"""A class lettered alike: places, alignment between items, matched numbers, fitting, what faces the front."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.artwork import Artwork
from heraldry.describe.description import load
from heraldry.diagrams.class_of_cars import ClassOfCars, class_of_cars
from heraldry.diagrams.drawing import artworks, own_pieces, shared_sides
from heraldry.diagrams.layout import Place
from heraldry.errors import DescriptionError
from heraldry.geometry.boolean import intersect
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds, Outline
from heraldry.lettering.alphabets.named import ours
from heraldry.units import parse_scale

AClass = Callable[..., ClassOfCars]
CAP_MM = 2.625
"""9 in at 3.5 mm to the foot: 9 / 12 · 3.5, worked by hand."""
SIDE = """
kind = "diagram"
road = "road.toml"
scale = "HO"
[side.left]
width = "40 ft full"
height = "10 ft full"
[side.left.keepout.door]
width = "6 ft full"
"""
NUMBER = """
[item.number]
text = "{car.number}"
cap_height = "9 in full"
figures = "tabular"
x = "door.left - 12 in full"
anchor = "end"
y = "5 ft full"
ink = "white"
"""


def places(cars: ClassOfCars, side: str = "left") -> dict[str, Place]:
    layout = next(layout for layout in cars.layouts if layout.side.name == side)
    return {place.item.name: place for place in layout.places}


def drawn(cars: ClassOfCars) -> dict[str, Artwork]:
    return {artwork.name: artwork for artwork in artworks(cars)}


def ink_box(artwork: Artwork) -> Bounds:
    (plate,) = artwork.plates
    return bounds(plate.outline)


def test_each_side_of_each_car_is_one_artwork_on_a_page_of_the_side(a_class: AClass) -> None:
    made = drawn(a_class('[side.right]\nlike = "left"\n[series]\nnumbers = "301-303 skip 302"\n' + NUMBER))
    assert list(made) == ["cars 301 left", "cars 301 right", "cars 303 left", "cars 303 right"]
    assert made["cars 301 left"].page == Bounds(0.0, 0.0, 140.0, 35.0)
    assert made["cars 301 left"].paint_hex == "#6b2f24"


def test_spares_are_sets_of_what_all_cars_share(a_class: AClass) -> None:
    mark = '[item.mark]\ntext = "{road.mark}"\ncap_height = 2\nx = 20\ny = 20\nink = "white"\n'
    made = drawn(a_class('[series]\nnumbers = "1-2"\nspares = 2\n' + mark + NUMBER))
    spares = [f"cars spare {i} {what}" for i in (1, 2) for what in ("left", "figures of number")]
    assert list(made) == ["cars 1 left", "cars 2 left", *spares]
    assert ink_box(made["cars spare 1 left"]).right < 30 < ink_box(made["cars 1 left"]).right


def test_spares_hold_loose_figures_as_high_as_the_numbers_and_apart_from_each_other(a_class: AClass) -> None:
    twice = NUMBER + NUMBER.replace("item.number", "item.again").replace("5 ft", "2 ft")
    larger = NUMBER.replace("item.number", "item.large").replace("9 in", "18 in").replace("5 ft", "7 ft")
    made = drawn(a_class('[series]\nnumbers = "1-2"\nspares = 1\n' + twice + larger))
    row = made["cars spare 1 figures of number"]
    assert [name for name in made if "figures" in name] == [row.name, "cars spare 1 figures of large"]
    zero = bounds(ours("gothic").set_line("0", CAP_MM).glyphs[0].outline)
    assert row.height_mm == pytest.approx(zero.height, abs=2e-6)  # 0 reaches over and under the line
    boxes = sorted((bounds(ring) for ring in row.plates[0].outline.paths), key=lambda box: box.left)
    figures = [
        box
        for box in boxes
        if not any(box is not one and one.left < box.left and box.right < one.right for one in boxes)
    ]
    assert len(figures) == 10
    assert all(right.left - left.right > CAP_MM / 2 for left, right in zip(figures[:-1], figures[1:], strict=True))


def test_places_follow_edges_and_other_items(a_class: AClass) -> None:
    text = """
[item.herald]
herald = "herald.toml"
height = "3 ft full"
panel = "A"
[item.below]
box = 4
height = 1
x = "herald.centre_x"
y = "herald.bottom - 6 in full"
level = "head"
ink = "black"
[item.corner]
box = 4
height = 1
panel = "A"
anchor = "end"
level = "head"
ink = "black"
"""
    here = places(a_class(text))
    # The panel is 17 ft × 10 ft: its middle is at 8 ft 6 in and 5 ft; 3.5 mm to the foot, worked by hand.
    assert tuple(here["herald"].at) == (8.5 * 3.5, 17.5)
    assert here["herald"].box.height == pytest.approx(10.5)
    assert tuple(here["below"].at) == pytest.approx((29.75, 17.5 - 5.25 - 1.75))
    assert here["below"].box.top == pytest.approx(10.5)
    assert (here["corner"].box.right, here["corner"].box.top) == (17 * 3.5, 35.0)


def test_items_placed_by_one_another_in_a_circle_are_told(a_class: AClass) -> None:
    text = """
[item.a]
box = 4
height = 1
x = "b.left"
ink = "black"
[item.b]
box = 4
height = 1
x = "a.right"
ink = "black"
"""
    with pytest.raises(DescriptionError, match=r"items placed by one another, found [ab] → [ab] → [ab]"):
        a_class(text)


def test_what_faces_the_front_is_turned_over_and_its_lettering_is_not(a_class: AClass) -> None:
    text = '[side.right]\nmirrors = "left"\n'
    text += '[item.herald]\nherald = "herald.toml"\nfaces = "front"\nx = 30\ny = 10\nanchor = "start"\n'
    left, right = (one.plates[0].outline for one in drawn(a_class(text)).values())
    assert bounds(left).left == pytest.approx(30.0, abs=1e-6)
    assert bounds(right).right == pytest.approx(140.0 - 30.0, abs=1e-6)
    arrow, turned_arrow = (corners(side, is_arrow=True) for side in (left, right))
    assert sorted(140.0 - x for x in turned_arrow) == pytest.approx(sorted(arrow), abs=2e-6)
    letters, turned_letters = (corners(side, is_arrow=False) for side in (left, right))
    shifts = {round(after - before, 5) for before, after in zip(letters, turned_letters, strict=True)}
    assert len(shifts) == 1  # moved, and nothing else: K stands before N on both sides


def corners(outline: Outline, is_arrow: bool) -> list[float]:
    """Where the corners of the arrow (the ring of three lines) or of the letters are across."""
    rings = [path for path in outline.paths if (len(path.segments) == 3) == is_arrow]
    return [x for ring in sorted(rings, key=lambda ring: bounds(ring).left) for x in sorted(s.start.x for s in ring)]


def test_a_fitted_number_is_made_for_the_widest_of_the_class(a_class: AClass) -> None:
    text = """
[series]
numbers = "7, 88, 123456"
[item.number]
text = "{car.number}"
cap_height = 20
fit = true
panel = "A"
ink = "white"
"""
    cars = a_class(text)
    (place,) = places(cars).values()
    assert place.enlarge < 1.0
    widest = ink_box(drawn(cars)["cars 123456 left"])
    assert widest.width == pytest.approx(17 * 3.5, abs=1e-3)
    heights = {name: ink_box(one).height for name, one in drawn(a_class(text.replace("7, 88,", "717, 711,"))).items()}
    assert heights["cars 717 left"] == pytest.approx(heights["cars 711 left"], rel=1e-6)


def test_what_keeps_clear_of_its_panel_is_put_so_far_from_its_edges(a_class: AClass) -> None:
    item = '[item.m]\nbox = 4\nheight = 1\npanel = "A"\nanchor = "end"\nlevel = "head"\nclear = 2\nink = "black"\n'
    cars = a_class(item)
    box = places(cars)["m"].box
    assert (box.right, box.top) == pytest.approx((17 * 3.5 - 2, 35 - 2))
    assert next(artworks(cars)).findings == ()


def test_a_floor_stops_the_fitting_and_the_overflow_is_found(a_class: AClass) -> None:
    text = """
[series]
numbers = "1, 123456"
[item.number]
text = "{car.number}"
cap_height = 20
fit = true
floor = 18
panel = "A"
ink = "white"
"""
    cars = a_class(text)
    assert places(cars)["number"].enlarge == pytest.approx(0.9)
    found = {name: [f.kind for f in one.findings] for name, one in drawn(cars).items()}
    assert "off the panel" in found["cars 123456 left"]
    assert "off the panel" not in found["cars 1 left"]


def test_at_another_scale_the_class_is_the_same_drawing(a_class: AClass) -> None:
    text = '[series]\nnumbers = "301"\n' + NUMBER
    ho, n = (ink_box(next(iter(drawn(a_class(text, asked=scale)).values()))) for scale in (None, parse_scale("N")))
    factor = 304.8 / 3.5 / 160
    assert (n.left, n.top) == pytest.approx((ho.left * factor, ho.top * factor), abs=3e-6)


@settings(derandomize=True, deadline=None, max_examples=25)
@given(st.lists(st.integers(1, 999_999), min_size=2, max_size=6, unique=True), st.integers(-30, 30))
def test_whatever_the_numbers_cap_height_base_line_and_tracking_are_one(
    tmp_path_factory: pytest.TempPathFactory, numbers: list[int], inches: int
) -> None:
    folder = tmp_path_factory.mktemp("class")
    (folder / "road.toml").write_text('kind = "road"\nname = "X"\n[ink.white]\ncolour = "#ffffff"\nopaque = true\n')
    series = f'[series]\nnumbers = "{", ".join(map(str, numbers))}"\n'
    place = f"door.left + {inches} in full" if inches >= 0 else f"door.left - {-inches} in full"
    (folder / "cars.toml").write_text(SIDE + series + NUMBER.replace("door.left - 12 in full", place))
    cars = class_of_cars(load(folder / "cars.toml"))
    (side,) = shared_sides(cars)
    keepout = side.layout.side.keepouts["door"]
    zeros = ours("gothic").set_line("00", CAP_MM, "tabular")
    pitch, zero = zeros.advance_mm / 2, bounds(zeros.glyphs[0].outline)
    for car, artwork in zip(cars.roster.cars, artworks(cars), strict=True):
        (piece,) = [*side.pieces, *own_pieces(cars, side, car)]
        assert (piece.place.box.bottom, piece.place.box.height) == pytest.approx((17.5, CAP_MM))
        assert piece.place.enlarge == 1.0
        for figure in flat_figures(piece.outline, str(car.number)):
            assert (figure.bottom, figure.top) == pytest.approx((17.5, 17.5 + CAP_MM), abs=2e-6)
        for i, middle in enumerate(figure_middles(piece.outline, pitch, len(str(car.number)), piece.place.at.x)):
            from_end = len(str(car.number)) - 1 - i
            assert middle == pytest.approx(piece.place.at.x - zero.width / 2 - from_end * pitch, abs=2e-6)
        overlaps = not intersect(piece.outline, keepout).is_empty
        assert overlaps == any(found.kind == "keep-out" for found in artwork.findings)


def flat_figures(outline: Outline, number: str) -> list[Bounds]:
    """The boxes of the figures 1, 4 and 7, which stand flat between base line and cap height."""
    boxes = sorted((bounds(ring) for ring in outline.paths), key=lambda box: box.left)
    outer = [box for box in boxes if not any(one.left < box.left and box.right < one.right for one in boxes)]
    assert len(outer) == len(number)
    return [box for box, figure in zip(outer, number, strict=True) if figure in "147"]


@settings(derandomize=True, deadline=None, max_examples=20)
@given(
    st.integers(1, 999_999), st.integers(3, 36), st.integers(1, 7), st.integers(6, 60), st.sampled_from(["box", "disc"])
)
def test_nothing_lies_on_a_keep_out_unless_a_finding_says_so(
    tmp_path_factory: pytest.TempPathFactory, number: int, feet: int, up: int, inches: int, form: str
) -> None:
    folder = tmp_path_factory.mktemp("class")
    (folder / "road.toml").write_text('kind = "road"\nname = "X"\n[ink.white]\ncolour = "#ffffff"\nopaque = true\n')
    place = f'centre = ["{feet} ft full", "{up} ft full"]\n'
    size = f'"{inches} in full"'
    shape = f"circle = {size}\n" if form == "disc" else f"diamond = {size}\nheight = {size}\n"
    text = f'[side.left.keepout.hatch]\n{shape}{place}[side.right]\nmirrors = "left"\n[series]\nnumbers = "{number}"\n'
    star = '[item.star]\nstar = 5\nradius = 6\nx = "14 ft full"\ny = "2 ft full"\nfaces = "front"\nink = "white"\n'
    (folder / "cars.toml").write_text(SIDE + text + NUMBER + star)
    cars = class_of_cars(load(folder / "cars.toml"))
    for side, artwork in zip(shared_sides(cars), artworks(cars), strict=True):
        pieces = [*side.pieces, *own_pieces(cars, side, cars.roster.cars[0])]
        for name, keepout in side.layout.side.keepouts.items():
            for piece in pieces:
                said = f"{piece.name} lies on {name} " in "".join(found.message for found in artwork.findings)
                assert said != intersect(piece.outline, keepout).is_empty


def figure_middles(outline: Outline, pitch: float, count: int, end: float) -> Iterator[float]:
    """The middle of each figure's ink, from the left: that of all rings in its column."""
    boxes = [bounds(ring) for ring in outline.paths]
    for i in range(count):
        right = end - (count - 1 - i) * pitch + pitch / 8
        here = [box for box in boxes if right - pitch < box.centre.x < right]
        yield (min(box.left for box in here) + max(box.right for box in here)) / 2


def test_a_long_stripe_is_delivered_in_pieces_that_overlap(a_class: AClass) -> None:
    stripe = (
        '[item.stripe]\nbox = "width"\nheight = 2\nlongest = 60\noverlap = 2\nx = "centre_x"\ny = 4\nink = "black"\n'
    )
    made = drawn(a_class('[series]\nnumbers = "1-2"\n' + NUMBER + stripe))
    pieces = [one for name, one in made.items() if "stripe" in name]
    # 140 mm in three pieces with two joints of 2 mm: (140 + 4) / 3 = 48 mm, worked by hand.
    assert [name for name in made if "stripe" in name] == [f"cars left stripe {i} of 3" for i in (1, 2, 3)]
    assert [one.width_mm for one in pieces] == pytest.approx([48, 48, 48], abs=1e-5)
    assert [one.page.left for one in pieces] == pytest.approx([0, 46, 92], abs=1e-5)
    assert [plate.name for plate in made["cars 1 left"].plates] == ["white"]
    assert pieces[0].findings[0].kind == "joints"


@pytest.mark.parametrize("text", ["{car.number}", "WAY"])
def test_a_fault_of_an_item_is_told_once_at_its_key(a_class: AClass, text: str) -> None:
    item = f'[item.z]\ntext = "{text}"\ncap_height = 0\nx = 40\ny = 9\nink = "white"\n'
    with pytest.raises(DescriptionError, match=r"item.z: cap_height is 0, it must be more than 0") as refusal:
        drawn(a_class('[series]\nnumbers = "1-9"\n' + item))
    (fault,) = refusal.value.faults
    written = Path(fault.file).read_text(encoding="utf-8").splitlines()
    assert written[fault.line - 1] == "cap_height = 0"
