"""Set arithmetic on outlines: together, cut away, common to both. The one door to shapely's overlays.

Millimetres. shapely sees straight segments only, so all outlines of an expression are cut into chords, and one
table remembers the curve of each chord. The overlays keep vertices to the last bit; so the edges of the result
are found in the table again, and runs of edges become the curves they were cut from. Curves are recovered once,
at the end of the expression. Between operations nothing may round or simplify: the bits are the memory.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.geometry.flatten import FLATTEN_TOLERANCE_MM, flatten
from heraldry.geometry.outline import EMPTY, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.polygons import Ring, RingsOfPolygons, linear_rings, nested, ring_length, rings_of, signed_area
from heraldry.geometry.restore.chord_table import SAME_PLACE_MM, ChordTable, tabulate
from heraldry.geometry.restore.recover import Recovered, recover
from heraldry.geometry.straighten import straightened

REFINEMENTS = (1.0, 1 / 5, 1 / 25)
"""Shares of the tolerance that are tried in turn while curves do not meet where their chords do."""

WIDEST_GAP_MM = 0.00005
"""What two curves may miss each other by at a joint: half of the 0.1 µm that a set operation may be off."""

SPECK_MM = 0.0001
"""Narrower parts than this are no parts of an offset, which is only known to 0.2 µm."""

FillRule = Literal["evenodd", "nonzero"]
Filled = Mapping[int, shapely.Geometry]
"""The polygon of each outline of an expression, by its identity."""


@dataclass(frozen=True, eq=False)
class Union:
    """All parts together."""

    parts: tuple[SetExpression, ...]


@dataclass(frozen=True, eq=False)
class Difference:
    """The base with every cut taken away from it."""

    base: SetExpression
    cuts: tuple[SetExpression, ...]


@dataclass(frozen=True, eq=False)
class Intersection:
    """What all parts have in common."""

    parts: tuple[SetExpression, ...]


SetExpression = Outline | Union | Difference | Intersection


@dataclass(frozen=True, eq=False)
class Combined:
    """A result, and what has to be said about it."""

    outline: Outline
    kept_joints: int = 0
    """Joints where the true curves do not cross though their chords do: they touch, or nearly so."""
    slivers_dropped: int = 0
    straightened_rings: int = 0
    """Rings that stayed polylines, since with their curves they would have crossed themselves."""
    tolerance_mm: float = FLATTEN_TOLERANCE_MM
    """The tolerance the flattening ended with; finer than asked where curves nearly touch."""


def combine(
    expression: SetExpression,
    tolerance_mm: float = FLATTEN_TOLERANCE_MM,
    sliver_width_mm: float = 0.0,
) -> Combined:
    """Work out a whole expression, nested as deep as you like, with its curves.

    ``tolerance_mm`` decides how fine the chords are that crossings are looked for on, not how true the curves
    are: they are exact. Rings with area < ``sliver_width_mm`` × length are dropped and counted. Raises
    GeometryError for a ring that is not closed.
    """
    leaves = list({id(leaf): leaf for leaf in _leaves(expression)}.values())
    return _with_curves(leaves, lambda filled: _evaluated(expression, filled), "evenodd", tolerance_mm, sliver_width_mm)


def unite(*outlines: Outline) -> Outline:
    """All outlines together.

    >>> from heraldry.geometry.segments import Path
    >>> def box(x):
    ...     return Outline.of([Path.through([Point(x, 0), Point(x + 2, 0), Point(x + 2, 1), Point(x, 1)], closed=True)])
    >>> unite(box(0), box(2)).node_count
    4
    """
    return combine(Union(outlines)).outline


def subtract(base: Outline, *cuts: Outline) -> Outline:
    """The base without the cuts."""
    return combine(Difference(base, cuts)).outline


def intersect(*outlines: Outline) -> Outline:
    """What all outlines have in common."""
    return combine(Intersection(outlines)).outline


def clean(outline: Outline, rule: FillRule = "nonzero") -> Outline:
    """The region that rings enclose under a fill rule, with rings that neither cross nor overlap."""
    plain = straightened(outline)
    return _with_curves([plain], lambda filled: filled[id(plain)], rule, FLATTEN_TOLERANCE_MM, 0.0).outline


def pieces(outline: Outline) -> tuple[Outline, ...]:
    """The connected parts, each with its holes."""
    if outline.is_empty:
        return ()
    table = tabulate(outline, FLATTEN_TOLERANCE_MM)
    parts = shapely.get_parts(fill(table.ring_vertices(), "evenodd"))
    return tuple(recover(rings_of(part).rings, table, FLATTEN_TOLERANCE_MM).outline for part in parts)


def contains(outline: Outline, point: Point) -> bool:
    """Whether a point lies inside (to the flattening tolerance of the edge)."""
    return bool(shapely.contains_xy(to_polygon(outline), point.x, point.y))


def with_rims(core: shapely.Geometry, rims: Outline, tolerance_mm: float, taken_away: bool = False) -> Outline:
    """A core with curved rims added all along its edge, or taken away: what remains visible are the rims' curves.

    A rim may fold over itself; then all that it covers counts.
    """
    return _refined(rims, lambda table: _rimmed(core, table, taken_away), tolerance_mm, SPECK_MM).outline


def _rimmed(core: shapely.Geometry, table: ChordTable, taken_away: bool) -> shapely.Geometry:
    bands = shapely.polygons(linear_rings([ring for ring in table.ring_vertices() if len(ring) > 2]))
    folded = ~shapely.is_valid(bands)
    bands[folded] = shapely.make_valid(bands[folded], method="structure", keep_collapsed=False)
    return shapely.difference(core, shapely.union_all(bands)) if taken_away else shapely.union_all([core, *bands])


def to_polygon(outline: Outline, tolerance_mm: float = FLATTEN_TOLERANCE_MM) -> shapely.Geometry:
    """The region as a valid shapely (multi)polygon, by the even-odd rule, for measuring."""
    return fill(flatten(outline, tolerance_mm), "evenodd")


def fill(rings: Sequence[Ring], rule: FillRule) -> shapely.Geometry:
    """The valid (multi)polygon that rings enclose under a fill rule."""
    solid = [ring for ring in rings if len(ring) > 2]
    if not solid:
        return shapely.MultiPolygon()
    return nested(solid) or _faces_filled(solid, rule)


def _faces_filled(rings: Sequence[Ring], rule: FillRule) -> shapely.Geometry:
    """Node all edges, and unite the faces whose winding number the rule fills."""
    loops = [np.concatenate((ring, ring[:1])) for ring in rings]
    noded = shapely.union_all(shapely.linestrings(np.concatenate(loops), indices=_owners(loops)))
    faces = shapely.get_parts(shapely.polygonize(shapely.get_parts(noded)))
    if len(faces) == 0:
        return shapely.MultiPolygon()
    inner = shapely.get_coordinates(shapely.point_on_surface(faces))
    winding = np.zeros(len(faces), dtype=np.int64)
    for loop in loops:
        near = np.flatnonzero(np.all((inner >= loop.min(axis=0)) & (inner <= loop.max(axis=0)), axis=1))
        winding[near] += _winding(loop, inner[near])
    return shapely.union_all(faces[winding % 2 == 1 if rule == "evenodd" else winding != 0])


def _owners(arrays: Sequence[Ring]) -> NDArray[np.int64]:
    return np.repeat(np.arange(len(arrays)), [len(array) for array in arrays])


def _winding(loop: Ring, points: NDArray[np.float64]) -> NDArray[np.int64]:
    """Winding numbers of a closed loop round points, by signed crossings of a ray to the right."""
    a, b = loop[:-1], loop[1:]
    y = points[:, 1, None]
    up = (a[:, 1] <= y) & (b[:, 1] > y)
    down = (a[:, 1] > y) & (b[:, 1] <= y)
    side = (b[:, 0] - a[:, 0]) * (y - a[:, 1]) - (points[:, 0, None] - a[:, 0]) * (b[:, 1] - a[:, 1])
    return np.asarray(np.sum(up & (side > 0), axis=1) - np.sum(down & (side < 0), axis=1))


def _leaves(expression: SetExpression) -> Iterator[Outline]:
    if isinstance(expression, Outline):
        yield expression
        return
    parts = (expression.base, *expression.cuts) if isinstance(expression, Difference) else expression.parts
    for part in parts:
        yield from _leaves(part)


def _evaluated(expression: SetExpression, filled: Filled) -> shapely.Geometry:
    if isinstance(expression, Outline):
        return filled[id(expression)]
    if isinstance(expression, Difference):
        return shapely.difference(_evaluated(expression.base, filled), _together(expression.cuts, filled))
    if isinstance(expression, Union):
        return _together(expression.parts, filled)
    return shapely.intersection_all([_evaluated(part, filled) for part in expression.parts])


def _together(parts: Iterable[SetExpression], filled: Filled) -> shapely.Geometry:
    polygons = [_evaluated(part, filled) for part in parts]
    return polygons[0] if len(polygons) == 1 else shapely.union_all(polygons)


def _with_curves(
    leaves: Sequence[Outline],
    evaluate: Callable[[Filled], shapely.Geometry],
    rule: FillRule,
    tolerance_mm: float,
    sliver_width_mm: float,
) -> Combined:
    """Flatten all leaves into one table, evaluate, and recover the curves."""
    return _refined(
        Outline.gather(leaves), lambda table: evaluate(_filled(leaves, table, rule)), tolerance_mm, sliver_width_mm
    )


def _refined(
    sources: Outline, evaluate: Callable[[ChordTable], shapely.Geometry], tolerance_mm: float, sliver_width_mm: float
) -> Combined:
    """Evaluate on chords of the sources and recover their curves; on finer chords where curves do not meet."""
    if sources.is_empty:
        return Combined(EMPTY, tolerance_mm=tolerance_mm)
    for tolerance in (tolerance_mm * share for share in REFINEMENTS):
        table = tabulate(sources, tolerance)
        found, dropped = _without_slivers(rings_of(evaluate(table)), sliver_width_mm)
        recovered = recover(found.rings, table, tolerance)
        sound = _sound(found, recovered)
        if np.all(sound) and recovered.widest_gap_mm <= WIDEST_GAP_MM:
            break
    if not np.all(sound):
        recovered = recover(found.rings, table, tolerance, as_lines=~sound)
    return Combined(recovered.outline, recovered.kept_joints, dropped, int(np.sum(~sound)), tolerance)


def _filled(leaves: Sequence[Outline], table: ChordTable, rule: FillRule) -> dict[int, shapely.Geometry]:
    """The polygon of each leaf; the table holds their rings one after another."""
    rings = iter(table.ring_vertices())
    return {id(leaf): fill([next(rings) for _ in leaf.rings[1:]], rule) for leaf in leaves}


def _without_slivers(found: RingsOfPolygons, width_mm: float) -> tuple[RingsOfPolygons, int]:
    if width_mm <= 0.0 or not found.rings:
        return found, 0
    broad = [abs(signed_area(ring)) >= width_mm * ring_length(ring) for ring in found.rings]
    kept = found.picked(np.array(broad))
    return kept, len(found.rings) - len(kept.rings)


def _sound(found: RingsOfPolygons, recovered: Recovered) -> NDArray[np.bool_]:
    """For each ring whether it is still part of a sound polygon now that its joints have moved."""
    moved = RingsOfPolygons(recovered.rings, found.polygon).solid()
    parts = moved.polygons()
    if _is_sound(shapely.multipolygons(parts)):
        return np.ones(len(found.rings), dtype=bool)
    sound = np.array([_is_sound(part) for part in parts])
    if np.all(sound):  # then the parts overlap each other
        return np.zeros(len(found.rings), dtype=bool)
    return ~np.isin(found.polygon, np.unique(moved.polygon)[~sound])


def _is_sound(polygons: shapely.Geometry) -> bool:
    """Whether polygons are valid, or merely pinch themselves at points where several curves meet."""
    if shapely.is_valid(polygons):
        return True
    untangled = shapely.make_valid(polygons, method="structure", keep_collapsed=False)
    return bool(abs(shapely.area(untangled) - shapely.area(polygons)) <= SAME_PLACE_MM * shapely.length(polygons))
