"""The inks of a page: the user's colours, the road's, or a pair that suits the era, all seen on the paint."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from random import Random
from typing import Any

from heraldry.errors import HeraldryError
from heraldry.guard.colour import ANOTHER_COLOUR, difference, judge
from heraldry.ideas.brief import Brief
from heraldry.ideas.eras import ERAS, LIGHT_COLOURS

NAMES = ("main", "accent")
DARK = 45.0
"""Paints nearer to black than this (CIEDE2000) want light colours."""
WHITE = "#ffffff"
MOST_COLOURS = 2


@dataclass(frozen=True)
class Inks:
    """One ink or two by name, where they are described, and the film and paint that they are for."""

    names: tuple[str, ...]
    colours: Mapping[str, Mapping[str, Any]]
    are_of_the_road: bool
    film: str
    paint_hex: str


def inks_of(brief: Brief) -> Inks:
    """The inks of a brief; raises HeraldryError for more colours than two, for what is none, for an unknown paint."""
    if len(brief.colours) > MOST_COLOURS:
        raise HeraldryError(f"a herald of this page has one colour or two, found {len(brief.colours)}")
    paint = _paint_hex(brief)
    if brief.colours:
        tables = dict(zip(NAMES, (_ink(colour) for colour in brief.colours), strict=False))
        return _inks(tables, False, paint)
    of_road = _of_road(brief, paint)
    if of_road:
        return _inks(of_road, True, paint)
    pair = Random(f"colours {brief.seed}").choice(_pairs(brief, paint))
    return _inks(dict(zip(NAMES, map(_ink, pair), strict=True)), False, paint)


def _inks(tables: Mapping[str, Mapping[str, Any]], are_of_the_road: bool, paint: str) -> Inks:
    return Inks(tuple(tables), tables, are_of_the_road, _film(tables, paint), paint)


def _ink(colour: str) -> dict[str, Any]:
    """An ink of a colour; white lies on the paint and has to hide it."""
    return {"colour": colour, "opaque": True} if difference(colour, WHITE) < ANOTHER_COLOUR else {"colour": colour}


def _pairs(brief: Brief, paint: str) -> tuple[tuple[str, str], ...]:
    if paint and difference(paint, "#000000") < DARK:
        return LIGHT_COLOURS
    eras = [brief.era] if brief.era else list(ERAS.values())
    return tuple(pair for era in eras for pair in era.colours)


def _paint_hex(brief: Brief) -> str:
    """The colour under the herald: a paint of the road by its name, or a colour; empty for none."""
    if not brief.on or brief.on.startswith("#"):
        return brief.on
    paints = brief.road.store("paint") if brief.road else {}
    if brief.on not in paints:
        known = ", ".join(sorted(paints)) or "none, there is no road file"
        raise HeraldryError(
            f"no paint is called '{brief.on}', write a colour like #6b2f24; paints of the road: {known}"
        )
    return str(paints[brief.on][1].colour)


def _of_road(brief: Brief, paint: str) -> dict[str, dict[str, Any]]:
    """The two inks of the road that stand out most there, the strongest first."""
    inks = brief.road.store("ink") if brief.road else {}
    ground = paint or WHITE
    seen = [(name, ink) for name, (_, ink) in inks.items() if _is_seen(ink.colour, ground, ink.opaque)]
    seen.sort(key=lambda pair: -difference(pair[1].colour, ground))
    return {name: {"colour": ink.colour, "opaque": ink.opaque} for name, ink in seen[:MOST_COLOURS]}


def _is_seen(colour: str, ground: str, opaque: bool) -> bool:
    return judge(colour, ground, "white", opaque).is_readable


def _film(tables: Mapping[str, Mapping[str, Any]], paint: str) -> str:
    """White film where the paint would spoil a colour on clear film."""
    if not paint:
        return "clear"
    verdicts = [judge(ink["colour"], paint, "clear", bool(ink.get("opaque"))) for ink in tables.values()]
    return "clear" if all(one.is_readable and one.is_true for one in verdicts) else "white"
