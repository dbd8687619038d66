"""The picture of one side: its paints, its ribs and keep-outs as guides, and the lettering in the colours it will have.

A picture is a list of strokes of the brush, from the ground up; pictures side by side are painted stroke by stroke
together. Millimetres about the lower left corner of the side; areas such as roofs and trucks reach beyond it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from heraldry.artwork import Artwork, Ink, Plate, channels
from heraldry.diagrams.grounds import Ground, Visible, grounds_of, in_printing_order
from heraldry.diagrams.pieces import Piece, unite_where_they_meet
from heraldry.diagrams.side import Side
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import intersect, unite
from heraldry.geometry.measure import bounds
from heraldry.geometry.offset import edge
from heraldry.geometry.outline import Bounds, Outline
from heraldry.guard.colour import Film, colour_on
from heraldry.pages.paper import PAPER_INK

PAINTS, RIBS, KEEPOUTS, LETTERING, GUIDES = range(5)
"""Which lies over which."""
GUIDE_SHADE = 0.75
"""How much of the light of a paint its ribs and the edges of its doors keep: seen, but not before the lettering."""
DARK, GUIDE_LIGHT = 0x48, 0.14
"""On a paint with no channel above this they are lighter instead, by this share of white."""
GUIDE_MM = 0.12
"""How wide the edge of a keep-out is drawn: a fine pencil line."""


@dataclass(frozen=True, eq=False)
class Stroke:
    """One colour on a picture; ``rank`` says over which others it lies."""

    rank: tuple[int, int]
    name: str
    colour_hex: str
    outline: Outline

    def moved(self, affine: Affine) -> Stroke:
        """The stroke somewhere else, or of another size."""
        return Stroke(self.rank, self.name, self.colour_hex, self.outline.transformed(affine))


def paint_strokes(side: Side, paints: Sequence[Visible]) -> Iterator[Stroke]:
    """The side without its lettering, the same for all cars.

    Paints lie whole over one another, as they are sprayed: where two meet edge to edge, a screen shows a seam.
    """
    if side.paint is not None:
        yield Stroke((PAINTS, 0), side.paint, side.paint_hex, side.face.outline)
    for i, area in enumerate(side.areas, start=1):
        yield Stroke((PAINTS, i), area.paint, area.paint_hex, area.outline)
    strips = [strip.outline for row in side.ribs for strip in row.strips]
    if strips:
        yield from _guides((RIBS, 0), "ribs", unite(*strips), paints)
    for keepout in side.keepouts.values():
        yield from _guides((KEEPOUTS, 0), "keep-outs", edge(keepout, GUIDE_MM), paints)


def _guides(rank: tuple[int, int], name: str, outline: Outline, paints: Sequence[Visible]) -> Iterator[Stroke]:
    """Guides in a shade of each paint that they lie on."""
    for paint in paints:
        part = intersect(outline, paint.outline)
        if not part.is_empty:
            yield Stroke(rank, name, guide_hex(paint.paint_hex), part)


def lettering_strokes(
    pieces: Sequence[Piece], inks: Sequence[str], paints: Sequence[Visible], film: Film
) -> Iterator[Stroke]:
    """Lettering as it comes out on what lies under it."""
    printed = in_printing_order(pieces, inks)
    for i, layer in enumerate(printed):
        rank = LETTERING, inks.index(layer.ink.name)
        by_colour: dict[str, list[Ground]] = {}
        for ground in grounds_of(layer, printed[:i], paints, film):
            seen = colour_on(ground.colour_hex, layer.ink.colour_hex, ground.film, layer.ink.opaque)
            by_colour.setdefault(seen, []).append(ground)
        for seen, grounds in by_colour.items():
            name = f"{layer.ink.name} on {grounds[0].colour_hex}"
            parts = [ground.part for ground in grounds]
            yield Stroke(rank, name, seen, parts[0] if len(parts) == 1 else unite(*parts))


def frame_of(side: Side) -> Bounds:
    """The box round a picture of a side."""
    return Bounds.round([side.face, *(bounds(area.outline) for area in side.areas)])


def painted(name: str, page: Bounds, strokes: Iterable[Stroke], scale_name: str) -> Artwork:
    """A picture as an artwork on white paper: a plate for all strokes of one colour that lie equally high.

    The paper is a page, grown where something written reaches over its edge.
    """
    together: dict[tuple[tuple[int, int], str, str], list[Outline]] = {}
    for stroke in strokes:
        together.setdefault((stroke.rank, stroke.name, stroke.colour_hex), []).append(stroke.outline)
    page = Bounds.round([page, *(bounds(Outline.gather(outlines)) for outlines in together.values())])
    plates = [Plate(PAPER_INK.name, PAPER_INK, page.outline)]
    for i, key in enumerate(sorted(together, key=lambda key: key[0])):
        _, colour_name, colour_hex = key
        ink = Ink(f"{colour_name} {colour_hex}", colour_hex, opaque=True, spot=False)
        gathered = unite_where_they_meet(together[key]) if key[0][0] == GUIDES else Outline.gather(together[key])
        plates.append(Plate(f"{i + 1} {colour_name}", ink, gathered.quantised()))
    return Artwork(name, page, tuple(plates), scale_name)


def guide_hex(paint_hex: str) -> str:
    """The colour of guides on a paint.

    >>> guide_hex("#804020"), guide_hex("#202020")
    ('#603018', '#3f3f3f')
    """
    paint = channels(paint_hex)
    if max(paint) > DARK:
        return _hex(one * GUIDE_SHADE for one in paint)
    return _hex(one + (255 - one) * GUIDE_LIGHT for one in paint)


def _hex(paint: Iterable[float]) -> str:
    return "#" + "".join(f"{round(one):02x}" for one in paint)
