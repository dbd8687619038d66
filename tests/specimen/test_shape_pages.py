"""The catalogue of shapes: every kind is on it with all its keys, at a glance and large, inside the margins."""

from __future__ import annotations

from functools import cache
from itertools import combinations

import numpy as np
import pytest
from typer.testing import CliRunner

from heraldry.artwork import Artwork
from heraldry.cli.main import app
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.pages.block import BLACK, GREY
from heraldry.pages.paper import FOOT_MM, HEAD_MM, PAPERS, SIDE_MM, Paper, paper_named
from heraldry.press.proof_reading import proof_read
from heraldry.shapes import SHAPES
from heraldry.shapes.catalogue import ALSO, FAMILIES, Family, example, families
from heraldry.shapes.table import value_kind
from heraldry.specimen import shape_pages as catalogue
from heraldry.specimen.shape_pages import shape_pages
from tests.cleanness import assert_clean

WIDTH_MM = 52.0


@cache
def pages(paper: Paper) -> list[Artwork]:
    return shape_pages(paper)


def plate(page: Artwork, name: str) -> Outline:
    return next(one.outline for one in page.plates if one.name == name)


def shares(outline: Outline) -> list[np.ndarray]:
    """The rings of a picture, in shares of its larger side, its middle at the origin."""
    box = bounds(outline)
    middle = (box.centre.x, box.centre.y)
    return [(ring - middle) / max(box.width, box.height) for ring in flatten(outline)]


# ---- what is on the pages


@pytest.mark.parametrize("paper", PAPERS.values(), ids=lambda paper: paper.name)
def test_pages_are_sound_and_keep_their_margins(paper: Paper) -> None:
    for page in pages(paper):
        proof_read(page)
        assert (page.width_mm, page.height_mm) == (paper.width_mm, paper.height_mm)
        box = bounds(Outline.gather(one.outline for one in page.plates if one.name != "paper"))
        assert box.left >= SIDE_MM - 1e-6
        assert box.right <= paper.width_mm - SIDE_MM + 1e-6
        assert box.bottom >= FOOT_MM - 1e-6
        assert box.top <= paper.height_mm - HEAD_MM + 1e-6


@pytest.mark.parametrize("paper", PAPERS.values(), ids=lambda paper: paper.name)
def test_every_picture_stands_on_the_first_page(paper: Paper) -> None:
    """Pictures are the only ink of that page but its title and rule, which stand above them."""
    black = plate(pages(paper)[0], "black")
    ends = zip(black.rings[:-1].tolist(), black.rings[1:].tolist(), strict=True)
    tops = [black.data[first:last, 0, 1].max() for first, last in ends]
    head_mm = paper.height_mm - HEAD_MM - 12.0
    assert sum(top < head_mm for top in tops) == sum(len(example(name).rings) - 1 for name in SHAPES)


def test_every_kind_belongs_to_one_family() -> None:
    shown = [kind.name for family in families() for kind in family.kinds]
    assert sorted(shown) == sorted(SHAPES)
    assert [family.title for family in families()] == list(FAMILIES)


def test_every_title_is_on_its_pages_and_pages_are_numbered() -> None:
    names = [page.name for page in pages(paper_named("A4"))]
    assert names == [f"shapes {i}" for i in range(1, len(names) + 1)]
    assert len(names) > len(FAMILIES)


@pytest.mark.parametrize("name", sorted(ALSO))
def test_what_else_a_kind_can_be_is_clean_and_differs(name: str) -> None:
    drawn = [example(name), *(example(name, **other) for other in ALSO[name])]
    for other in drawn:
        assert_clean(other)
    for one, two in combinations(drawn, 2):
        a, b = shares(one), shares(two)
        alike = len(a) == len(b) and all(
            x.shape == y.shape and np.abs(x - y).max() < 1e-3 for x, y in zip(a, b, strict=True)
        )
        assert not alike


# ---- one cell


@pytest.mark.parametrize("name", sorted(set(SHAPES) - {"lines"}))
def test_a_picture_is_as_large_as_its_room_and_keeps_its_form(name: str) -> None:
    picture = catalogue._picture(example(name), WIDTH_MM)
    (mark,) = picture.marks
    box, whole = bounds(mark.outline), bounds(example(name))
    assert mark.ink == BLACK
    assert box.width == pytest.approx(catalogue.PICTURE_WIDE_MM) or box.height == pytest.approx(
        catalogue.PICTURE_HIGH_MM
    )
    assert box.width <= catalogue.PICTURE_WIDE_MM + 1e-9
    assert box.height <= catalogue.PICTURE_HIGH_MM + 1e-9
    assert box.width / box.height == pytest.approx(whole.width / whole.height)
    assert box.centre.x == pytest.approx(WIDTH_MM / 2)


@pytest.mark.parametrize("name", ["ribbon", "crest", "circle"])
def test_a_cell_has_a_line_for_each_key(name: str) -> None:
    kind = SHAPES[name]
    keys = [catalogue._key(kind, key, WIDTH_MM) for key in kind.parameters]
    assert all({mark.ink for mark in key.marks} == {BLACK, GREY} for key in keys)
    *_, words = catalogue._cell(kind, WIDTH_MM)
    assert words.height_mm >= sum(key.height_mm for key in keys)


@pytest.mark.parametrize(
    ("name", "key", "told"),
    [
        ("ring", "ring", "mm"),
        ("ring", "width", "mm, open"),
        ("box", "radius", "mm, 0"),
        ("rope", "strands", "count, open"),
        ("rope", "turn", "degrees, 0"),
        ("rope", "centre", "place, origin"),
        ("sunrise", "share", "number, 0.5"),
        ("arrow", "double", "false or true"),
        ("stripes", "toward", "right or left"),
        ("shield", "top", "flat or arched or hollow"),
        ("mountains", "peaks", "places, open"),
    ],
)
def test_a_key_is_told_with_its_unit_and_its_default(name: str, key: str, told: str) -> None:
    kind = SHAPES[name]
    assert catalogue._takes(kind.annotations[key], kind.parameters[key].default) == told


def test_every_key_of_every_kind_can_be_told() -> None:
    for kind in SHAPES.values():
        for key, parameter in kind.parameters.items():
            told = catalogue._takes(kind.annotations[key], parameter.default)
            assert told
            assert "object" not in told
            assert value_kind(kind.annotations[key])[0] not in ("length", "angle") or told.startswith(("mm", "degrees"))


@pytest.mark.parametrize("name", sorted(SHAPES))
def test_what_is_said_of_a_shape_is_for_those_who_write_files(name: str) -> None:
    said = catalogue._said_of(SHAPES[name])
    assert said.startswith(SHAPES[name].summary.replace("`", "")[:20])
    assert "Error" not in said
    assert "`" not in said


def test_a_table_is_told_by_its_keys() -> None:
    kind = SHAPES["text"]
    told = catalogue._takes(kind.annotations["round"], kind.parameters["round"].default)
    assert told.startswith("table of radius, reads")
    assert told.endswith(", open")


def test_names_keep_their_underscores() -> None:
    line = catalogue._line(catalogue.lettered("rail_section"), 2.0)
    (low,) = [glyph for glyph in line.glyphs if glyph.text == "_"]
    assert bounds(low.placed).top < 0.0
    assert len(line.glyphs) == len("rail_section")


# ---- the command


def test_the_command_lists_without_pages_and_writes_pages_when_asked(tmp_path, monkeypatch) -> None:
    few = Family("Rings and discs", families()[0].kinds[:2])
    monkeypatch.setattr(catalogue, "families", lambda: (few,))
    listed = CliRunner().invoke(app, ["shapes"])
    assert listed.exit_code == 0
    assert all(f"\n{name}: " in f"\n{listed.output}" for name in SHAPES)
    told = CliRunner().invoke(app, ["shapes", "--out", str(tmp_path), "--as", "svg", "--paper", "Letter"])
    assert told.exit_code == 0, told.output
    assert sorted(path.name for path in tmp_path.iterdir()) == ["manifest.json", "shapes-1.svg", "shapes-2.svg"]
    assert 'width="215.9mm"' in (tmp_path / "shapes-1.svg").read_text()
    again = tmp_path / "again"
    CliRunner().invoke(app, ["shapes", "--out", str(again), "--as", "svg", "--paper", "Letter"])
    assert (again / "shapes-2.svg").read_bytes() == (tmp_path / "shapes-2.svg").read_bytes()


def test_an_unknown_paper_is_told() -> None:
    told = CliRunner().invoke(app, ["shapes", "--paper", "A9"])
    assert told.exit_code == 2
    assert "no paper is called 'A9'" in told.output
