"""The functions of set arithmetic: what they take, and what they do to an outline; millimetres and degrees.

One table names them all; a new one is a row of it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Literal

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import unite
from heraldry.geometry.measure import bounds
from heraldry.geometry.offset import edge, inset, offset
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.lettering import treatments

ArgumentKind = Literal["length", "angle", "count", "place"]
Wants = tuple[tuple[str, ArgumentKind], ...]

MOST_COPIES = 360
"""Copies that ``around`` makes at most: one a degree."""


@dataclass(frozen=True)
class ArtFunction:
    """A function on art; its first argument is always art, ``wants`` are those after it."""

    name: str
    wants: Wants
    optional: int
    apply: Callable[..., Outline]
    summary: str

    @property
    def usage(self) -> str:
        """How it is written: ``turn(art, angle, about)``."""
        return f"{self.name}({', '.join(['art', *(name for name, _ in self.wants)])})"


def _turn(art: Outline, angle_deg: float, about: Point | None = None) -> Outline:
    return art.transformed(Affine.turn(angle_deg, about or bounds(art).centre))


def _move(art: Outline, right: float, up: float) -> Outline:
    return art.transformed(Affine.move(right, up))


def _mirror(art: Outline, axis_deg: float = 90.0, about: Point | None = None) -> Outline:
    return art.transformed(Affine.mirror(axis_deg, about or bounds(art).centre)).reversed()


def _around(art: Outline, count: int, about: Point = ORIGIN) -> Outline:
    if not 1 <= count <= MOST_COPIES:
        raise GeometryError(f"around makes 1 to {MOST_COPIES} copies, found {count}")
    copies = [art.transformed(Affine.turn(360.0 * i / count, about)) for i in range(count)]
    return unite(*copies)


def filled(art: Outline) -> Outline:
    """Every ring by itself, so that no hole is left."""
    rings = [Outline.of([path]) for path in art.paths]
    return unite(*rings)


def _edge(art: Outline, width: float) -> Outline:
    return edge(art, width)


def _shade_uprights(art: Outline, *how: float) -> Outline:
    return treatments.split_shade(art, *how).uprights


def _shade_levels(art: Outline, *how: float) -> Outline:
    return treatments.split_shade(art, *how).levels


SHADE: Wants = (("length", "length"), ("angle", "angle"), ("gap", "length"))
STRIPE: Wants = (("height", "length"), ("width", "length"), ("gap", "length"), ("beyond", "length"))

ART_FUNCTIONS: dict[str, ArtFunction] = {
    function.name: function
    for function in (
        ArtFunction("offset", (("by", "length"),), 0, lambda art, by: offset(art, by), "grown on all sides"),
        ArtFunction("inset", (("by", "length"),), 0, lambda art, by: inset(art, by), "shrunk on all sides"),
        ArtFunction("edge", (("width", "length"),), 0, _edge, "a line along the inside of its edge"),
        ArtFunction("turn", (("angle", "angle"), ("about", "place")), 1, _turn, "turned counter-clockwise"),
        ArtFunction("move", (("right", "length"), ("up", "length")), 0, _move, "moved"),
        ArtFunction("mirror", (("axis", "angle"), ("about", "place")), 2, _mirror, "turned over in a line"),
        ArtFunction("around", (("count", "count"), ("about", "place")), 1, _around, "copies round a place"),
        ArtFunction("filled", (), 0, filled, "with its holes filled"),
        ArtFunction(
            "outline",
            (("width", "length"),),
            0,
            treatments.outline,
            "a line along the inside of its edge, corners sharp",
        ),
        ArtFunction(
            "outer_line", (("width", "length"), ("gap", "length")), 1, treatments.outer_line, "a line round it"
        ),
        ArtFunction(
            "double_outline",
            (("width", "length"), ("gap", "length")),
            0,
            treatments.double_outline,
            "outline and line round it",
        ),
        ArtFunction("inline", (("width", "length"),), 0, treatments.inline, "with a thin line let into each stroke"),
        ArtFunction("inline_line", (("width", "length"),), 0, treatments.inline_line, "that thin line alone"),
        ArtFunction("halo", (("width", "length"),), 0, treatments.halo, "the margin round it, without it"),
        ArtFunction("drop_shade", SHADE, 1, treatments.drop_shade, "a copy laid behind it, where it is seen"),
        ArtFunction("shade", SHADE, 1, treatments.block_shade, "the sides of a block receding at an angle"),
        ArtFunction("shade_uprights", SHADE, 1, _shade_uprights, "of that block, the faces of upright edges"),
        ArtFunction("shade_levels", SHADE, 1, _shade_levels, "of that block, the faces of level edges"),
        ArtFunction(
            "in_band", (("margin", "length"), ("ends", "length")), 1, treatments.in_band, "a band with it cut out"
        ),
        ArtFunction("stripe_through", STRIPE, 1, treatments.stripe_through, "cut by a level stripe"),
        ArtFunction("stripe_behind", STRIPE, 1, treatments.stripe_behind, "a level stripe behind it, a gap away"),
    )
}


def call(function: ArtFunction, art: Outline, arguments: list[Any]) -> Outline:
    """Apply a function; of nothing comes nothing."""
    return art if art.is_empty else function.apply(art, *arguments)
