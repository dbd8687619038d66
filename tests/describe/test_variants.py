"""Variants of a herald: what they change, what they share to the last bit, and how their faults are told."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import heraldry
from heraldry.build import family
from heraldry.errors import DescriptionError, HeraldryError
from heraldry.geometry.measure import area, bounds
from heraldry.plates import turned_over
from heraldry.resolve.herald import resolve_herald

FILE = """kind = "herald"
width = 20
on = "#e3d9bd"
[ink.black]
colour = "#101010"
[ink.white]
colour = "#ffffff"
opaque = true
[let]
radius = "width / 2"
fine = 1
[shape.rim]
ring = "radius"
width = "fine"
[shape.star]
star = 5
radius = "radius * 0.5"
[shape.word]
text = "HO"
cap_height = 3
at = [0, 0]
[plate.black]
ink = "black"
art = "rim + (star - word)"
"""
VARIANTS_START = FILE.count("\n") + 1


def loaded(folder: Path, variants: str) -> heraldry.build.Description:  # type: ignore[name-defined]
    path = folder / "one.toml"
    path.write_text(FILE + variants, encoding="utf-8")
    return heraldry.load(path)


def drawn(folder: Path, variants: str) -> dict[str, heraldry.Artwork]:
    return {artwork.variant: artwork for artwork in heraldry.draw(loaded(folder, variants))}


def faults(folder: Path, variants: str) -> list[str]:
    """The faults of reading and drawing, each with its line counted from the first of the variants."""
    with pytest.raises(DescriptionError) as caught:
        drawn(folder, variants)
    return [f"{fault.line - VARIANTS_START + 1}: {fault.what}, {fault.wanted}" for fault in caught.value.faults]


def test_a_variant_changes_what_it_says_and_nothing_else(tmp_path: Path) -> None:
    made = drawn(
        tmp_path,
        """[variant.small]
width = 10
[variant.heavy]
let = { fine = 2 }
[variant.dark]
on = "#101010"
film = "white"
""",
    )
    assert [artwork.name for artwork in made.values()] == ["one", "one small", "one heavy", "one dark"]
    assert [artwork.width_mm for artwork in made.values()] == [20, 10, 20, 20]
    assert [artwork.paint_hex for artwork in made.values()] == ["#e3d9bd", "#e3d9bd", "#e3d9bd", "#101010"]
    # Two rings of 19 and of 18 mm middle, 1 and 2 mm wide: π · 38 − π · 19 mm² more.
    grown = area(made["heavy"].plates[0].outline) - area(made[""].plates[0].outline)
    assert grown == pytest.approx((100 - 64) * 3.141592653589793 - (100 - 81) * 3.141592653589793, rel=1e-6)


def test_keys_of_a_shape_are_replaced_one_by_one_and_another_kind_as_a_whole(tmp_path: Path) -> None:
    description = loaded(
        tmp_path,
        """[variant.v]
shape.star = { radius = 2 }
shape.rim = { circle = "radius" }
shape.dot = { circle = 1 }
""",
    )
    shapes = {shape.name: shape for shape in resolve_herald(description.variant("v")).shapes}
    assert shapes["star"].arguments == {"star": 5, "radius": 2.0}
    assert shapes["rim"].kind is not None
    assert (shapes["rim"].kind.name, shapes["rim"].arguments) == ("circle", {"circle": 10.0})
    assert "dot" in shapes


def test_what_is_left_out_is_as_if_it_were_not_in_the_art(tmp_path: Path) -> None:
    plain = FILE.replace("rim + (star - word)", "rim + star")
    (tmp_path / "plain.toml").write_text(plain, encoding="utf-8")
    (wanted,) = heraldry.draw(heraldry.load(tmp_path / "plain.toml"))
    made = drawn(tmp_path, '[variant.v]\nleave_out = ["word"]\n')["v"]
    assert made.plates[0].outline.data.tobytes() == wanted.plates[0].outline.data.tobytes()


def test_plates_of_a_variant_stand_in_place_of_the_files(tmp_path: Path) -> None:
    made = drawn(tmp_path, '[variant.v.plate.field]\nink = "white"\nart = "star"\n')["v"]
    assert [plate.name for plate in made.plates] == ["field"]


SAYINGS = {
    "on": 'on = "#203040"',
    "film": 'film = "white"',
    "plate": 'plate.white = { ink = "white", art = "rim" }',
    "word": "shape.word = { cap_height = 2 }",
    "star": 'leave_out = ["star"]',
    "rim": 'let = { fine = "1.5" }',
}
"""What a variant may say, by the shape that it changes (or by what else it changes)."""


@settings(derandomize=True, deadline=None, max_examples=20, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(said=st.lists(st.sets(st.sampled_from(sorted(SAYINGS))), min_size=1, max_size=3))
def test_variants_share_to_the_bit_what_they_do_not_change(tmp_path: Path, said: list[set[str]]) -> None:
    tables = [f"[variant.v{i}]\n" + "\n".join(SAYINGS[one] for one in sorted(words)) for i, words in enumerate(said)]
    description = loaded(tmp_path, "\n".join(tables))
    resolved = [resolve_herald(one) for one in family(description)]
    for one, other, words, others in combinations_of(resolved, [set(), *said]):
        for shape in ("rim", "star", "word"):
            same = arguments_of(one, shape) == arguments_of(other, shape)
            assert same == ((shape in words) == (shape in others))
    artworks = heraldry.draw(description)
    for one, other, words, others in combinations_of(artworks, [set(), *said]):
        changes = (words ^ others) - {"on", "film"}
        if not changes:
            assert one.plates[0].outline is other.plates[0].outline


def combinations_of(drawings, said):  # type: ignore[no-untyped-def]
    pairs = combinations(zip(drawings, said, strict=True), 2)
    return ((one, other, words, others) for (one, words), (other, others) in pairs)


def arguments_of(herald, name):  # type: ignore[no-untyped-def]
    shape = next(one for one in herald.shapes if one.name == name)
    return shape.kind, dict(shape.arguments)


def test_each_shape_is_drawn_once_for_the_family(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    kinds: list[str] = []
    draw = turned_over.draw_shape
    monkeypatch.setattr(
        "heraldry.plates.compose.draw_shape", lambda kind, arguments: kinds.append(kind.name) or draw(kind, arguments)
    )
    drawn(
        tmp_path,
        """[variant.dark]
on = "#101010"
[variant.one_ink]
form = "one ink"
ink = "white"
[variant.reversed]
form = "reversed"
ink = "white"
[variant.heavy]
shape.word = { cap_height = 4 }
""",
    )
    assert sorted(kinds) == ["ring", "star", "text", "text"]


@pytest.mark.parametrize(
    ("variants", "told"),
    [
        ('[variant.v]\nfrom = "outline"', "2: unknown key 'from', did you mean 'form'"),
        ("[variant.v]\nshape.star = { raduis = 2 }", "2: in variant v: unknown key 'raduis', did you mean 'radius'"),
        ("[variant.v.shape.star]\nradius = '2 mn'", "2: in variant v: shape.star.radius: unknown unit, found 'mn'"),
        ("[variant.v]\nshape.dot = { radius = 2 }", "2: in variant v: 'shape.dot' names no kind of shape"),
        ("[variant.v]\nlet = { fine = 'finee' }", "2: in variant v: let.fine:"),
        ("[variant.v]\non = 'cream'", "2: in variant v: on: no such paint"),
        ("[variant.v]\nwidth = 0", "2: in variant v: width: a finished size must be more than 0"),
        ("[variant.v]\nleave_out = ['stra']", "2: variant.v.leave_out: no such shape"),
        ("[variant.v]\nform = 'one ink'", "2: variant.v.form: a form that is derived"),
        ("[variant.v]\nform = 'one ink'\nink = 'blakc'", "3: variant.v.ink: no such ink"),
        ("[variant.v]\nform = 'mono'\nink = 'black'", "2: 'variant.v.form' cannot be read"),
        ("[variant.v]\nform = 'outline'\nink = 'black'\ngap = 1", "4: variant.v.gap: is no key of form"),
        ("[variant.v]\nline = 1", "2: variant.v.line: is a key of derived forms, and no form is named"),
        ("[variant.v]\nform = 'outline'\nink = 'black'\nline = 0", "4: variant.v.line: a thickness"),
        ("[variant.v]\nform = 'one ink'\nink = 'black'\ngap = '1 m'", "4: variant.v.gap: a thickness"),
        ("[variant.v]\nform = 'one ink'\nink = 'black'\nbare = ['blck']", "4: variant.v.bare: no such"),
        ("[variant.v]\nform = 'reversed'\nink = 'black'\nfield = 'dsic'", "4: variant.v.field: no shape"),
        ("[variant.v.plate.p]\nink = 'black'\nart = 'rom'", "3: in variant v: plate.p.art: no shape is called 'rom'"),
        ("[variant.v.plate.p]\nink = 'black'\nart = 'rim - rim'", "3: in variant v: plate.p.art: nothing is left"),
        ("[variant.v]\nshape.star = { radius = -2 }", "2: in variant v: shape.star: "),
        ("[variant.herald]\nwidth = 3", "1: a variant cannot be called 'herald'"),
    ],
)
def test_faults_of_a_variant_are_told_with_its_own_lines(tmp_path: Path, variants: str, told: str) -> None:
    (fault,) = faults(tmp_path, variants)
    assert fault.startswith(told)


def test_a_fault_that_all_have_is_told_once_and_those_of_all_variants_together(tmp_path: Path) -> None:
    variants = (
        "[variant.a]\nwidth = 10\n[variant.b]\nshape.star = { radius = 'x' }\n[variant.c]\nlet = { fine = 'y' }\n"
    )
    path = tmp_path / "one.toml"
    path.write_text(FILE.replace("cap_height = 3", 'cap_height = "3 mn"') + variants, encoding="utf-8")
    with pytest.raises(DescriptionError) as caught:
        heraldry.draw(heraldry.load(path))
    assert [fault.what.partition(":")[0] for fault in caught.value.faults] == [
        "shape.word.cap_height",
        "in variant b",
        "in variant c",
    ]


def test_faults_of_form_and_of_meaning_in_variants_are_told_in_one_run(tmp_path: Path) -> None:
    told = faults(tmp_path, "[variant.a]\nshape.star = { raduis = 2 }\n[variant.b]\nwidth = '3 mn'\n")
    assert [fault.partition(":")[0] for fault in told] == ["2", "4"]


def test_what_stands_by_a_shape_that_is_left_out_is_told(tmp_path: Path) -> None:
    path = tmp_path / "one.toml"
    text = FILE.replace("at = [0, 0]", 'at = "star.top"') + '[variant.v]\nleave_out = ["star"]\n'
    path.write_text(text, encoding="utf-8")
    with pytest.raises(DescriptionError, match=r"in variant v: shape\.word: 'star' is left out here"):
        heraldry.draw(heraldry.load(path))


def test_only_the_variants_that_are_asked_for(tmp_path: Path) -> None:
    description = loaded(tmp_path, "[variant.a]\nwidth = 10\n[variant.b]\nwidth = 30\n")
    assert [one.width_mm for one in heraldry.draw(description, variants=["b", "herald"])] == [30, 20]
    with pytest.raises(HeraldryError, match="no variant is called 'c'"):
        heraldry.draw(description, variants=["c"])


def test_a_derived_form_keeps_to_its_own_paint_for_what_is_dark(tmp_path: Path) -> None:
    made = drawn(
        tmp_path,
        '[variant.day]\nform = "one ink"\nink = "black"\n'
        '[variant.night]\nform = "one ink"\nink = "white"\non = "#000000"\n',
    )
    assert made["day"].plates[0].outline is made["night"].plates[0].outline
    assert bounds(made["night"].plates[0].outline).width == pytest.approx(20.0)
