"""A page of ideas: two dozen sound heralds, no two alike, the same for the same seed, each an ordinary file."""

from __future__ import annotations

from itertools import combinations, islice
from pathlib import Path
from random import Random

import numpy as np
import pytest

import heraldry
from heraldry.artwork import Artwork
from heraldry.describe.kinds import KINDS
from heraldry.describe.read_toml import parse_toml
from heraldry.errors import ColourError, DescriptionError, HeraldryError
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.ideas import COUNT, Desk, Idea, brief_of, chosen, contact_page, desk_of, sound_ideas, take
from heraldry.ideas.choosing import ALIKE, MOST_SHORTFALL, SPARE, _inked, _kit
from heraldry.ideas.difference import difference, raster_of
from heraldry.ideas.eras import ERAS
from heraldry.ideas.frames import ALL, Frame
from heraldry.ideas.proofs import described
from heraldry.ideas.queue import choices, fields_of, in_turn
from heraldry.ideas.rules import RULES
from heraldry.ideas.writing import herald_toml
from heraldry.pages.paper import PAPERS, SIDE_MM, Paper
from heraldry.press import render

NAME = "Kettle Rock & Western Railroad"


def fresh_desk(seed: int = 3) -> Desk:
    return desk_of(brief_of(NAME, region=("US-VT",), era="1920s", seed=seed))


@pytest.fixture(scope="module")
def desk() -> Desk:
    return fresh_desk()


@pytest.fixture(scope="module")
def page(desk: Desk) -> tuple[Idea, ...]:
    return chosen(sound_ideas(desk))


def test_there_are_two_dozen_and_all_are_sound(page: tuple[Idea, ...]) -> None:
    assert len(page) == COUNT == 24
    for idea in page:
        shorts = [rule.falls_short(idea.proof) for rule in RULES]
        assert all(0.0 <= short < 1.0 for short in shorts)
        assert sum(rule.weight * short for rule, short in zip(RULES, shorts, strict=True)) == pytest.approx(
            idea.shortfall
        )
        assert idea.shortfall <= MOST_SHORTFALL


def test_no_two_are_alike(page: tuple[Idea, ...]) -> None:
    made = [(idea.sketch.frame, idea.sketch.field, idea.sketch.lettering) for idea in page]
    assert len(set(made)) == COUNT
    assert min(difference(one.raster, other.raster) for one, other in combinations(page, 2)) >= ALIKE
    assert len({idea.sketch.frame.split()[0] for idea in page}) >= 10
    assert len({idea.sketch.field for idea in page}) >= 8


def test_some_are_in_two_inks_that_never_lie_on_one_another(page: tuple[Idea, ...]) -> None:
    from heraldry.geometry.boolean import intersect
    from heraldry.geometry.measure import area

    in_two = [idea.artwork for idea in page if len(idea.artwork.plates) == 2]
    assert 6 <= len(in_two) < COUNT
    for artwork in in_two:
        one, other = (plate.outline for plate in artwork.plates)
        assert area(intersect(one, other)) < 1e-6


def test_the_land_is_on_the_page(page: tuple[Idea, ...]) -> None:
    assert sum("land" in idea.sketch.part.shapes for idea in page) >= 2


def test_the_same_seed_gives_the_same_page(page: tuple[Idea, ...], desk: Desk) -> None:
    again = chosen(sound_ideas(fresh_desk()))
    assert [idea.proof.text for idea in again] == [idea.proof.text for idea in page]
    pictures = [contact_page(ideas, desk.brief, "", PAPERS["a4"])[0] for ideas in (page, again)]
    assert render(pictures[0], "svg") == render(pictures[1], "svg")


def test_another_seed_gives_another_order() -> None:
    orders = [[(one.frame.name, one.field.name) for one in choices(ERAS["1920s"], Random(seed))] for seed in "ab"]
    assert orders[0] != orders[1]
    assert set(orders[0]) == set(orders[1])


def test_families_come_in_turn() -> None:
    first = [choice.frame.family for choice in islice(in_turn(choices(None, Random(1))), COUNT + SPARE)]
    assert len(set(first)) >= 10
    assert first.count("round") <= 9


@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
def test_the_contact_page_holds_all_within_its_margins(page: tuple[Idea, ...], desk: Desk, paper: Paper) -> None:
    pages = contact_page(page, desk.brief, "#6b2f24", paper)
    assert len(pages) == 1
    assert (pages[0].width_mm, pages[0].height_mm) == (paper.width_mm, paper.height_mm)
    ink = bounds(Outline.gather(plate.outline for plate in pages[0].plates if plate.name != "paper"))
    assert ink.left >= SIDE_MM - 3.0
    assert ink.right <= paper.width_mm - SIDE_MM + 3.0
    assert ink.bottom >= 10.0
    names = [plate.ink.name for plate in pages[0].plates]
    assert names.index("paint") < names.index("main of the heralds")


def same_artwork(one: Artwork, other: Artwork) -> bool:
    return len(one.plates) == len(other.plates) and all(
        a.ink == b.ink and np.array_equal(a.outline.data, b.outline.data)
        for a, b in zip(one.plates, other.plates, strict=True)
    )


@pytest.mark.parametrize("number", [1, 7, 24])
def test_an_idea_that_is_taken_draws_to_the_same_artwork(
    page: tuple[Idea, ...], desk: Desk, tmp_path: Path, number: int
) -> None:
    path = take(page, number, desk, tmp_path / "mine")
    assert path == tmp_path / "mine" / f"idea-{number}.toml"
    (drawn,) = heraldry.draw(heraldry.load(path))
    assert same_artwork(drawn, page[number - 1].artwork)
    assert take(page, number, desk, tmp_path / "mine") == path  # once more does no harm


def test_what_is_there_already_is_kept(page: tuple[Idea, ...], desk: Desk, tmp_path: Path) -> None:
    road = tmp_path / "road.toml"
    road.write_text('kind = "road"\nname = "Mine"\n')
    with pytest.raises(HeraldryError, match=r"road\.toml is there already, a road of its own: name it with --road"):
        take(page, 1, desk, tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == ["road.toml"]
    road.unlink()
    path = take(page, 1, desk, tmp_path)
    path.write_text(path.read_text() + "# mine\n")
    with pytest.raises(HeraldryError, match="another file of that name"):
        take(page, 1, desk, tmp_path)


@pytest.mark.parametrize("number", [0, 25, -1])
def test_a_number_that_is_not_on_the_page_is_told(
    page: tuple[Idea, ...], desk: Desk, tmp_path: Path, number: int
) -> None:
    with pytest.raises(HeraldryError, match=f"the page has ideas 1 to 24, found {number}"):
        take(page, number, desk, tmp_path)


def test_too_few_are_told() -> None:
    with pytest.raises(HeraldryError, match="only 0 of 24 heralds came out sound"):
        chosen([])


# ---- with a road of one's own


ROAD = """kind = "road"
name = "Hekla Valley Railway"
initials = "HVR"
founded = 1903
[paint.night]
colour = "#1d2733"
[ink.cream]
colour = "#efe3bd"
opaque = true
[ink.sun]
colour = "#e2b33c"
opaque = true
[ink.coal]
colour = "#1a1816"
[alphabet.side]
style = "gothic"
stem = 0.2
corner = "cut"
"""


@pytest.fixture
def road(tmp_path: Path) -> Path:
    path = tmp_path / "road.toml"
    path.write_text(ROAD)
    return path


def test_a_road_lends_its_name_inks_and_alphabets(road: Path, tmp_path: Path) -> None:
    desk = desk_of(brief_of(region=("IS",), on="night", road=heraldry.load(road), road_file="../road.toml"))
    assert desk.brief.words.initials == "HVR"
    assert desk.inks.names == ("cream", "sun")  # coal is lost on that paint
    idea = next(sound_ideas(desk))
    assert {plate.ink.name for plate in idea.artwork.plates} <= {"cream", "sun"}
    path = take([idea], 1, desk, tmp_path / "mine")
    assert 'road  = "../road.toml"' in path.read_text()
    assert all(
        table["style"] == "gothic" for table in parse_toml(path.read_text(), path, KINDS).data["alphabet"].values()
    )
    (drawn,) = heraldry.draw(heraldry.load(path))
    assert same_artwork(drawn, idea.artwork)
    assert not [found for found in drawn.findings if found.kind == "lost colour"]


def test_inks_of_a_road_may_be_called_as_those_of_captions(road: Path) -> None:
    road.write_text(ROAD.replace("ink.coal", "ink.black").replace("ink.cream", "ink.paper"))
    own = desk_of(brief_of(road=heraldry.load(road)))
    assert own.inks.names == ("black", "sun")  # the strongest first; paper is lost on paper
    (page,) = contact_page([next(sound_ideas(own))], own.brief, "", PAPERS["a4"])
    assert b"plate-black" in render(page, "svg")


def test_colours_go_before_the_inks_of_a_road(road: Path, tmp_path: Path) -> None:
    desk = desk_of(brief_of(colours=("#c02020",), road=heraldry.load(road), road_file="../road.toml"))
    idea = next(sound_ideas(desk))
    path = take([idea], 1, desk, tmp_path / "mine")
    (drawn,) = heraldry.draw(heraldry.load(path))
    assert [plate.ink.colour_hex for plate in drawn.plates] == ["#c02020"]


# ---- what cannot be meant


@pytest.mark.parametrize(
    ("said", "answer"),
    [
        ({}, "want the name of a railroad"),
        ({"name": "Fern", "era": "old"}, "an era is a year or a decade, found 'old'"),
        ({"name": "Fern", "region": ("Vermont",)}, r"no land has the code 'Vermont', did you mean US-VT \(Vermont\)"),
        ({"name": "Fern", "width": "2 mm"}, "a herald is 6 to 500 mm wide, found 2 mm"),
        ({"name": "Fern", "width": "wide"}, "the width 'wide' is no length"),
        ({"name": "Fern", "scale": "ZZ"}, "ZZ"),
    ],
)
def test_a_brief_that_cannot_be_meant_is_told(said: dict[str, object], answer: str) -> None:
    with pytest.raises(HeraldryError, match=answer):
        brief_of(**said)  # type: ignore[arg-type]


def test_colours_and_paints_that_are_none_are_told() -> None:
    with pytest.raises(ColourError, match="'red'"):
        desk_of(brief_of("Fern", colours=("red",)))
    with pytest.raises(HeraldryError, match="one colour or two, found 3"):
        desk_of(brief_of("Fern", colours=("#111111", "#222222", "#333333")))
    with pytest.raises(HeraldryError, match="no paint is called 'night', write a colour"):
        desk_of(brief_of("Fern", on="night"))
    with pytest.raises(ColourError, match="'#12'"):
        desk_of(brief_of("Fern", on="#12"))


def test_a_file_that_is_no_road_is_told(road: Path) -> None:
    printer = road.with_name("printer.toml")
    printer.write_text('kind = "printer"\nname = "p"\nfinest_line = "0.1 mm"\nfinest_gap = "0.2 mm"\n')
    with pytest.raises(DescriptionError, match="want a road file, the file is a printer"):
        brief_of(road=heraldry.load(printer))


def test_a_railroad_named_after_a_land_gets_it() -> None:
    assert brief_of("Vermont & Northern Railroad").region == ("US-VT",)
    assert brief_of("Fern Valley").region == ()


# ---- every frame with every field


@pytest.mark.parametrize("frame", ALL, ids=lambda frame: frame.name)
@pytest.mark.parametrize("name", ["Io", "Fern Valley Railway", "Umbagog, Magalloway & Northern Railroad Company"])
def test_every_frame_makes_a_description_of_any_name_or_passes(frame: Frame, name: str) -> None:
    desk = desk_of(brief_of(name, region=("US-VT",)))
    era = next(era for era in ERAS.values() if frame.suits(era.name))
    for field in fields_of(frame):
        chance = Random(1)
        sketch = frame.compose(_kit(desk, era, chance), field)
        if sketch is not None:
            text = herald_toml(*_inked(desk, sketch, chance), "title")
            assert described(text, Path("x.toml"), desk.road).kind == "herald"


def test_a_herald_looks_like_itself_and_not_like_another(page: tuple[Idea, ...]) -> None:
    one, other = page[0].artwork, page[1].artwork
    assert difference(raster_of(one), raster_of(one)) == 0.0
    assert difference(raster_of(one), raster_of(other)) > ALIKE
    assert raster_of(one)[0].max() <= 1.0 + 1e-9
