"""The picture of one side: its paints, its ribs and keep-outs as guides, and the lettering in the colours it will have.

A picture is a list of strokes of the brush, from the ground up; pictures side by side are painted stroke by stroke
together. Millimetres about the lower left corner of the side; areas such as roofs and trucks reach beyond it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.diagrams.grounds import Visible, grounds_of, in_printing_order
from heraldry.diagrams.pieces import Piece, unite_where_they_meet
from heraldry.diagrams.side import Side, rectangle
from heraldry.diagrams.sketch import box_round
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.offset import edge
from heraldry.geometry.outline import Bounds, Outline
from heraldry.guard.colour import Film, colour_on

PAINTS, RIBS, KEEPOUTS, LETTERING, GUIDES = range(5)
"""Which lies over which."""
GUIDE_SHADE = 0.78
"""How much of the light of a paint its ribs and the edges of its doors keep: seen, but not before the lettering."""
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
    """The side without its lettering, the same for all cars."""
    for paint in paints:
        if paint.name is not None:
            yield Stroke((PAINTS, 0), paint.name, paint.paint_hex, paint.outline)
    shade = shaded(side.paint_hex)
    strips = [rectangle(strip) for row in side.ribs for strip in row.strips]
    if strips:
        yield Stroke((RIBS, 0), "ribs", shade, Outline.gather(strips))
    for keepout in side.keepouts.values():
        yield Stroke((KEEPOUTS, 0), "keep-outs", shade, edge(keepout, GUIDE_MM))


def lettering_strokes(
    pieces: Sequence[Piece], inks: Sequence[str], paints: Sequence[Visible], film: Film
) -> Iterator[Stroke]:
    """Lettering as it comes out on what lies under it."""
    printed = in_printing_order(pieces, inks)
    for i, layer in enumerate(printed):
        for ground in grounds_of(layer, printed[:i], paints, film):
            seen = colour_on(ground.colour_hex, layer.ink.colour_hex, ground.film, layer.ink.opaque)
            rank = LETTERING, inks.index(layer.ink.name)
            yield Stroke(rank, f"{layer.ink.name} on {ground.colour_hex}", seen, ground.part)


def frame_of(side: Side) -> Bounds:
    """The box round a picture of a side."""
    return box_round([side.face, *(bounds(area.outline) for area in side.areas)])


def painted(name: str, page: Bounds, strokes: Iterable[Stroke], scale_name: str) -> Artwork:
    """A picture as an artwork on white paper: a plate for all strokes of one colour that lie equally high.

    The paper is a page, grown where something written reaches over its edge.
    """
    together: dict[tuple[tuple[int, int], str, str], list[Outline]] = {}
    for stroke in strokes:
        together.setdefault((stroke.rank, stroke.name, stroke.colour_hex), []).append(stroke.outline)
    page = box_round([page, *(bounds(Outline.gather(outlines)) for outlines in together.values())])
    plates = [Plate("paper", Ink("paper", "#ffffff", opaque=True), rectangle(page))]
    for i, key in enumerate(sorted(together, key=lambda key: key[0])):
        _, colour_name, colour_hex = key
        ink = Ink(f"{colour_name} {colour_hex}", colour_hex, opaque=True)
        gathered = unite_where_they_meet(together[key]) if key[0][0] == GUIDES else Outline.gather(together[key])
        plates.append(Plate(f"{i + 1} {colour_name}", ink, gathered.quantised()))
    return Artwork(name, page, tuple(plates), scale_name)


def shaded(colour_hex: str, share: float = GUIDE_SHADE) -> str:
    """A colour with less light.

    >>> shaded("#804020", 0.5)
    '#402010'
    """
    return "#" + "".join(f"{round(int(colour_hex[i : i + 2], 16) * share):02x}" for i in (1, 3, 5))
