"""Lettering that is not seen as it was set: cut off or covered, letters on one another, larger than the herald.

Millimetres. Lettering is whole when the edge of its letters is an edge of some plate all along, as ink or as bare
film. So its edge is looked at in short pieces, each of which lies on an edge of a plate or does not. What a function
of art makes of lettering (a shade, a margin, a stripe) has edges of its own, and is not judged.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import partial
from itertools import combinations

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.artwork import Finding
from heraldry.describe.expression import Binary, Call, Expression, Name
from heraldry.geometry.boolean import intersect, to_polygon
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import Point
from heraldry.plates.compose import Composed, shapes_on_plates
from heraldry.plates.turned_over import is_lettering
from heraldry.resolve.kept import Kept
from heraldry.resolve.largest import MODEL_SIZE
from heraldry.resolve.resolved import ResolvedHerald, ResolvedShape

ON_EDGE_MM = 0.002
"""Both edges are flattened, each to half a micrometre; farther apart than this they are two."""
SEEN_SHARE = 0.97
"""Of the edge of lettering that is whole: a serif that runs into a line is no cut."""
LOOKS_ACROSS = 100
"""The edge is looked at in pieces of its box's height by this, so that a cut lies within one of them."""
BEYOND_ASKED_MM = 0.01
"""Lettering that exceeds the finished size by less than this fits it."""
SETTING_KEYS = frozenset(
    {"text", "lines", "cap_height", "alphabet", "stem", "initials", "fractions", "superior_bar", "figures"}
)
"""What letters are and how large, but not how near one another, nor where."""


def of_lettering(herald: ResolvedHerald, composed: Composed, kept: Kept) -> Iterator[Finding]:
    """What is to be said of the lettering that is on the plates."""
    on_plates = shapes_on_plates(herald)
    shapes = [shape for shape in herald.shapes if shape.name in on_plates and shape.kind and is_lettering(shape.kind)]
    drawn = {shape.name: composed.stage.drawn[shape.name].outline for shape in shapes}
    yield from _on_one_another({shape.name: drawn[shape.name] for shape in shapes if _is_line(shape)}, kept)
    yield from _piled(shapes, composed)
    large = [found for name, outline in drawn.items() for found in _larger_than_asked(name, bounds(outline), herald)]
    yield from large
    if not large:
        plain = untreated(herald)
        yield from _cut({name: one for name, one in drawn.items() if name in plain}, composed, kept)


def _is_line(shape: ResolvedShape) -> bool:
    return shape.kind is not None and shape.kind.name == "text"


def _on_one_another(lines: Mapping[str, Outline], kept: Kept) -> Iterator[Finding]:
    """Lines of lettering that lie on one another, as two texts on one ring do when they are too long for it."""
    for (one, outline), (other, second) in combinations(lines.items(), 2):
        shared = kept.once("crowding", (outline, second), partial(intersect, outline, second))
        if not shared.is_empty:
            yield Finding("crowded lettering", f"{one} and {other} lie on one another", place=bounds(shared).centre)


def _piled(shapes: Iterable[ResolvedShape], composed: Composed) -> Iterator[Finding]:
    """Lettering whose letters stand apart by themselves, and run together by its tracking."""
    for shape in shapes:
        tracking_mm = shape.arguments.get("tracking", 0.0)
        if tracking_mm < 0 and "cap_height" in shape.arguments:
            drawn = composed.stage.drawn[shape.name].outline
            if _part_count(drawn) < _part_count(_untracked(shape)):
                message = f"letters of {shape.name} lie on one another: a tracking of {tracking_mm:g} mm is too tight"
                yield Finding("crowded lettering", message, place=bounds(drawn).centre)


def _untracked(shape: ResolvedShape) -> Outline:
    """The same letters on a straight line, as their alphabet spaces them."""
    assert shape.kind is not None
    drawn = shape.kind.draw(**{key: value for key, value in shape.arguments.items() if key in SETTING_KEYS})
    return drawn if isinstance(drawn, Outline) else drawn.outline


def _part_count(outline: Outline) -> int:
    return len(shapely.get_parts(to_polygon(outline)))


def _larger_than_asked(name: str, box: Bounds, herald: ResolvedHerald) -> Iterator[Finding]:
    """Lettering that is larger than the whole herald is to be."""
    for what, found_mm, asked_mm in (("wide", box.width, herald.width_mm), ("high", box.height, herald.height_mm)):
        if asked_mm is not None and found_mm > asked_mm + BEYOND_ASKED_MM:
            message = f"{name} is {found_mm:.2f} mm {what}, the whole herald is to be {asked_mm:.2f} mm: {MODEL_SIZE}"
            yield Finding("large lettering", message, place=box.centre, measured_mm=found_mm, limit_mm=asked_mm)


def untreated(herald: ResolvedHerald) -> frozenset[str]:
    """The shapes that some plate shows as they are, and not by a function of art as well."""
    if herald.form is not None:
        return frozenset()  # its plates are made anew from those of the herald, which is judged itself
    arts = {shape.name: shape.art for shape in herald.shapes if shape.art is not None}
    found: set[str] = set()
    for plate in herald.plates:
        mentioned = _mentioned(plate.art, arts)
        treated = {name for name, is_treated in mentioned if is_treated}
        found |= {name for name, is_treated in mentioned if not is_treated} - treated
    return frozenset(found)


def _mentioned(art: Expression, arts: Mapping[str, Expression]) -> set[tuple[str, bool]]:
    """The names in art and in the art of the shapes that it names, each with whether a function treats it."""
    found: set[tuple[str, bool]] = set()
    ahead = [(art, False)]
    while ahead:
        node, is_treated = ahead.pop()
        if isinstance(node, Binary):
            ahead += [(node.left, is_treated), (node.right, is_treated)]
        elif isinstance(node, Call):
            ahead += [(argument, True) for argument in node.arguments[:1]]
        elif isinstance(node, Name) and (node.name, is_treated) not in found:
            found.add((node.name, is_treated))
            ahead += [(arts[node.name], is_treated)] if node.name in arts else []
    return found


def _cut(lettering: Mapping[str, Outline], composed: Composed, kept: Kept) -> Iterator[Finding]:
    """Lettering whose edge is not seen all along: it reaches beyond what it is cut from, or other art cuts into it."""
    plates = tuple(plate.outline for plate in composed.plates)
    for name, outline in lettering.items():
        if not outline.is_empty:
            edges = [kept.once("edges of a plate", plate, partial(_edges, plate)) for plate in plates]
            lost, place = kept.once("whole lettering", (outline, plates), partial(_lost, outline, edges))
            if lost > 1 - SEEN_SHARE:
                message = f"{lost:.0%} of the edge of {name} is not seen: it is cut off, or runs into other art"
                yield Finding("cut lettering", message, place=place)


def _edges(plate: Outline) -> NDArray[np.float64]:
    return _chords(to_polygon(plate))


def _lost(outline: Outline, plates: Sequence[NDArray[np.float64]]) -> tuple[float, Point]:
    """The share of an outline's edge that is no edge of a plate, and the place of it that is most in its middle.

    ``plates`` are the chords (n, 2, 2) of each.
    """
    box = bounds(outline)
    looks = _looks(_edges(outline), box.height / LOOKS_ACROSS)
    is_lost = ~_on_edge(looks, plates)
    if not np.any(is_lost):
        return 0.0, box.centre
    lost = looks[is_lost]
    x, y = lost[np.argmin(np.hypot(*(lost - lost.mean(axis=0)).T))].tolist()
    return float(np.mean(is_lost)), Point(x, y)


def _looks(chords: NDArray[np.float64], apart_mm: float) -> NDArray[np.float64]:
    """Points (n, 2) on the chords (m, 2, 2), at even steps along all of them."""
    lengths = np.hypot(*(chords[:, 1] - chords[:, 0]).T)
    ends = np.cumsum(lengths)
    count = math.ceil(ends[-1] / apart_mm)
    along = (np.arange(count) + 0.5) * ends[-1] / count
    which = np.searchsorted(ends, along)
    share = 1.0 - (ends[which] - along) / lengths[which]
    return np.asarray(chords[which, 0] + share[:, None] * (chords[which, 1] - chords[which, 0]))


def _on_edge(looks: NDArray[np.float64], plates: Sequence[NDArray[np.float64]]) -> NDArray[np.bool_]:
    """Whether each point lies on an edge of a plate; only the chords round the points are looked at."""
    edges = np.concatenate(plates)
    low, high = looks.min(axis=0) - ON_EDGE_MM, looks.max(axis=0) + ON_EDGE_MM
    may_meet = np.all((edges.min(axis=1) <= high) & (edges.max(axis=1) >= low), axis=1)
    tree = shapely.STRtree(shapely.linestrings(edges[may_meet]))
    found = tree.query(shapely.points(looks), predicate="dwithin", distance=ON_EDGE_MM)
    return np.isin(np.arange(len(looks)), found[0])


def _chords(polygons: shapely.Geometry) -> NDArray[np.float64]:
    """The chords (n, 2, 2) of all edges, their two ends."""
    rings = shapely.get_rings(shapely.get_parts(polygons))
    xy, ring = shapely.get_coordinates(rings, return_index=True)
    goes_on = ring[1:] == ring[:-1]
    return np.stack((xy[:-1][goes_on], xy[1:][goes_on]), axis=1)
