"""Forms of a herald that are derived from its finished plates: in one ink, reversed, as an outline; millimetres.

First it is worked out what is seen of each plate, which is what no later one covers: so it is drawn and looked at,
though a light ink that is not opaque would be lost on a dark one. This parts the herald into areas that do not
overlap. From these:

- in one ink, the areas that stand out from the ground are drawn and the others are bare; where two inks become one,
  a fine gap keeps them apart;
- reversed, all is drawn that is bare in one ink, within all that the plates enclose: the two are each other's rest;
- as an outline, the border of every area is drawn, once where two areas share it, and nowhere outside the herald.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

from heraldry.artwork import Plate
from heraldry.geometry.boolean import intersect, subtract, unite
from heraldry.geometry.distance import come_near
from heraldry.geometry.offset import edge, offset
from heraldry.geometry.outline import Outline
from heraldry.plates.art_functions import filled
from heraldry.plates.tones import standing_out
from heraldry.resolve.kept import Kept
from heraldry.resolve.resolved import ResolvedForm

TOUCHING_MM = 0.002
"""Areas that are no farther apart are taken to share a border: what they may be off where their nearness is tested."""


@dataclass(frozen=True, eq=False)
class Area:
    """What is seen of a plate."""

    plate: Plate
    outline: Outline


def derived(form: ResolvedForm, plates: Sequence[Plate], kept: Kept, field: Outline | None = None) -> Plate:
    """The one plate of a form; a reversed herald stands on the field, or on all that its plates enclose.

    What several forms of a herald need is ``kept`` for them. The plate may come out empty.
    """
    areas = kept.once("areas", tuple(plates), lambda: seen_areas(plates))
    whole = kept.once("whole", areas, lambda: _together([area.outline for area in areas]))
    if form.word == "outline":
        outline = outlined(whole, areas, form.line_mm)
    else:
        source = (areas, form.ground_hex, form.gap_mm, form.bare)
        outline = kept.once("one ink", source, lambda: in_one_ink(form, areas))
    if form.word == "reversed":
        outline = reversed_on(field or filled(whole), outline, form.line_mm)
    return Plate(form.ink.name, form.ink, outline)


def seen_areas(plates: Sequence[Plate]) -> tuple[Area, ...]:
    """What is seen of each plate, in printing order; areas of which nothing is seen are left away."""
    areas = []
    for i, plate in enumerate(plates):
        over = [later.outline for later in plates[i + 1 :]]
        cover = [outline for outline in over if come_near(plate.outline, outline, TOUCHING_MM)]
        areas.append(Area(plate, _without(plate.outline, cover)))
    return tuple(area for area in areas if not area.outline.is_empty)


def in_one_ink(form: ResolvedForm, areas: Sequence[Area]) -> Outline:
    """The areas that stand out, drawn alike, those of different inks a gap apart."""
    drawn = _standing_out(form, areas)
    cut = [_without(area.outline, _kept_off(area, drawn[i + 1 :], form.gap_mm)) for i, area in enumerate(drawn)]
    return _together(cut)


def reversed_on(field: Outline, drawn: Outline, line_mm: float = 0.0) -> Outline:
    """The field without what is drawn in one ink; with a line along the inside of its edge, if one is asked for."""
    rest = subtract(field, drawn)
    return unite(rest, edge(field, line_mm, "inside", "sharp")) if line_mm > 0 else rest


def outlined(whole: Outline, areas: Sequence[Area], line_mm: float) -> Outline:
    """Lines along the borders of all areas: inside those of the whole, and half and half where two areas meet."""
    rim = edge(whole, line_mm, "inside", "sharp")
    pairs = combinations([area.outline for area in areas], 2)
    meeting = {id(other): other for one, other in pairs if come_near(one, other, TOUCHING_MM)}
    borders = [intersect(edge(area, line_mm, "middle", "sharp"), whole) for area in meeting.values()]
    return _together([rim, *borders])


def _standing_out(form: ResolvedForm, areas: Sequence[Area]) -> list[Area]:
    if form.bare is not None:
        return [area for area in areas if area.plate.name not in form.bare]
    stands_out = standing_out([area.plate.ink.colour_hex for area in areas], form.ground_hex)
    return [area for area, stands in zip(areas, stands_out, strict=True) if stands]


def _kept_off(area: Area, later: Sequence[Area], gap_mm: float) -> list[Outline]:
    """What an area stays away from: those near it in another ink that come later, and a gap round them."""
    others = [other.outline for other in later if other.plate.ink != area.plate.ink]
    return [offset(other, gap_mm) for other in others if come_near(area.outline, other, gap_mm)]


def _without(outline: Outline, cuts: Sequence[Outline]) -> Outline:
    return subtract(outline, *cuts) if cuts else outline


def _together(outlines: Sequence[Outline]) -> Outline:
    """All of some outlines in one: just gathered where none comes near another."""
    apart = not any(come_near(one, other, TOUCHING_MM) for one, other in combinations(outlines, 2))
    return Outline.gather(outlines) if apart else unite(*outlines)
