"""Art turned over with its lettering still to be read: straight, slanted, round a circle, and inside set arithmetic."""

from __future__ import annotations

from pathlib import Path

import pytest

from heraldry.describe.description import load
from heraldry.geometry.boolean import Difference, combine, subtract, unite
from heraldry.geometry.measure import area, bounds, ring_areas
from heraldry.geometry.outline import Outline
from heraldry.plates.compose import compose
from heraldry.resolve.herald import resolve_herald

HEAD = 'kind = "herald"\nscale = "HO"\n[ink.black]\ncolour = "#000000"\n'
PLATE = '[plate.black]\nink = "black"\nart = "{art}"\n'
ARROW = "[shape.arrow]\npolygon = [[-9, 0], [2, -5], [2, 5]]\n"
LETTERS = '[shape.letters]\ntext = "FEN"\ncap_height = 1.5\n'


def both_ways(tmp_path: Path, text: str) -> tuple[Outline, Outline]:
    path = tmp_path / "herald.toml"
    path.write_text(HEAD + text)
    herald = resolve_herald(load(path))
    return compose(herald).plates[0].outline, compose(herald, turned_over=True).plates[0].outline


def difference_area(one: Outline, other: Outline) -> float:
    parts = [combine(Difference(a, (b,))).outline for a, b in ((one, other), (other, one))]
    return sum(area(part) for part in parts if not part.is_empty)


def test_what_is_no_lettering_is_mirrored(tmp_path: Path) -> None:
    plain, turned = both_ways(tmp_path, ARROW + PLATE.format(art="arrow"))
    assert difference_area(plain.flipped(), turned) < 1e-6
    assert ring_areas(turned).sum() > 0  # still a clean outline: outer rings counter-clockwise


@pytest.mark.parametrize(
    ("keys", "mirrored_keys"),
    [
        ("at = [4, 1]\nanchor = 'start'\n", "at = [-4, 1]\nanchor = 'end'\n"),
        ("at = [4, 1]\nturn = 20\n", "at = [-4, 1]\nturn = -20\n"),
        ("round = { radius = 8, middle = 60 }\n", "round = { radius = 8, middle = 120 }\n"),
        (
            "along = { arc = [[-3, 0], [2, 2], [7, 4]], lift = 1 }\n",
            "along = { arc = [[-7, 4], [-2, 2], [3, 0]], lift = 1 }\n",
        ),
        (
            "anchor = 'start'\nat = [1, 0]\nalong = { path = 'M 0 0 L 4 0 C 6 0 8 -2 9 -4' }\n",
            "anchor = 'end'\nat = [-1, 0]\nalong = { path = 'M -9 -4 C -8 -2 -6 0 -4 0 L 0 0' }\n",
        ),
    ],
)
def test_a_line_reads_on_at_the_mirrored_place(tmp_path: Path, keys: str, mirrored_keys: str) -> None:
    _, turned = both_ways(tmp_path, LETTERS + keys + PLATE.format(art="letters"))
    wanted, _ = both_ways(tmp_path, LETTERS + mirrored_keys + PLATE.format(art="letters"))
    assert difference_area(wanted, turned) < 1e-4


def test_a_line_along_a_shape_reads_on_its_mirror_image(tmp_path: Path) -> None:
    keys = "along = { shape = 'edge', lift = 0.5, hold = [3, 4] }\n"
    edge = "[shape.edge]\npolygon = [[-9, 0], [2, -5], [2, 5]]\n"
    _, turned = both_ways(tmp_path, edge + LETTERS + keys + PLATE.format(art="letters"))
    other = "[shape.edge]\npolygon = [[9, 0], [-2, 5], [-2, -5]]\n"
    wanted, _ = both_ways(tmp_path, other + LETTERS + keys.replace("[3", "[-3") + PLATE.format(art="letters"))
    assert difference_area(wanted, turned) < 1e-4


def test_lettering_cut_out_of_art_reads_as_well(tmp_path: Path) -> None:
    cut = PLATE.format(art="arrow - letters")
    _, turned = both_ways(tmp_path, ARROW + LETTERS + "at = [-2, -0.75]\n" + cut)
    arrow, _ = both_ways(tmp_path, ARROW + PLATE.format(art="arrow"))
    letters, _ = both_ways(tmp_path, LETTERS + "at = [2, -0.75]\n" + PLATE.format(art="letters"))
    assert difference_area(turned, subtract(arrow.flipped(), letters)) < 1e-4
    assert bounds(turned).right == pytest.approx(9.0)


def test_turning_a_symmetrical_herald_over_changes_nothing(tmp_path: Path) -> None:
    ring = "[shape.r]\nring = 9\nwidth = 1\n" + LETTERS + "at = [0, -0.75]\n"
    plain, turned = both_ways(tmp_path, ring + PLATE.format(art="r + letters"))
    assert difference_area(plain, turned) < 1e-4
    assert difference_area(unite(plain, turned), plain) < 1e-4
