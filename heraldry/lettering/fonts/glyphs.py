"""Glyphs become outlines, in font units: fontTools walks the glyph, our pen writes the segments down.

A quadratic Bézier with control q from a to b *is* the cubic with controls a + 2/3 (q − a) and b + 2/3 (q −
b): nothing is approximated. Fonts fill by the nonzero rule and let contours overlap (variable ones nearly
always); an ``Outline`` fills by the even-odd rule, so that overlapping contours are united first. Contours
that neither cross nor overlap stay as their designer drew them, node for node.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.errors import LetteringError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import clean
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import ring_areas
from heraldry.geometry.outline import CUBIC, EMPTY, LINE, Outline
from heraldry.lettering.fonts.files import Face

Place = tuple[float, float]

CLEANED_EM_MM = 16.0
"""Set operations work in millimetres; an em is about this large while contours are united."""

MEETING_CHECK_EM = 1 / 4000
"""How far chords stray that tell whether contours meet, in ems: finer than any joint that a font draws."""


class OutlinePen:
    """A pen in fontTools' sense that writes the contours of one glyph into the rows of an outline."""

    def __init__(self) -> None:
        self._kinds: list[int] = []
        self._rows: list[tuple[Place, Place, Place, Place]] = []
        self._rings = [0]
        self._start = self._here = (0.0, 0.0)

    @property
    def outline(self) -> Outline:
        """What was drawn: contours as they came, crossing or not."""
        rows = np.array(self._rows, dtype=np.float64).reshape(-1, 4, 2)
        return Outline(np.array(self._kinds, dtype=np.uint8), rows, np.array(self._rings, dtype=np.int64))

    def moveTo(self, place: Place) -> None:  # noqa: N802 (fontTools' pen protocol)
        """Begin a contour."""
        self._start = self._here = place

    def lineTo(self, place: Place) -> None:  # noqa: N802
        """A straight line; one without length is passed over."""
        if place != self._here:
            self._add(LINE, self._here, place, place)

    def curveTo(self, *places: Place) -> None:  # noqa: N802
        """A cubic; with more or fewer than two controls, fontTools' reading of them."""
        from fontTools.pens.basePen import decomposeSuperBezierSegment  # imported where used: start-up time

        for one, two, end in [places] if len(places) == 3 else decomposeSuperBezierSegment(places):
            if not self._here == one == two == end:
                self._add(CUBIC, one, two, end)

    def qCurveTo(self, *places: Place | None) -> None:  # noqa: N802
        """Quadratics, joints between controls implied; ``None`` last: a contour that has no joint at all."""
        from fontTools.pens.basePen import decomposeQuadraticSegment  # imported where used: start-up time

        given = [place for place in places if place is not None]
        if len(given) < len(places):
            joint = ((given[-1][0] + given[0][0]) / 2, (given[-1][1] + given[0][1]) / 2)
            self.moveTo(joint)
            given.append(joint)
        for control, end in decomposeQuadraticSegment(given):
            self.curveTo(_two_thirds(self._here, control), _two_thirds(end, control), end)

    def closePath(self) -> None:  # noqa: N802
        """End a contour, back at its start; one without length is passed over."""
        self.lineTo(self._start)
        if len(self._rows) > self._rings[-1]:
            self._rings.append(len(self._rows))

    endPath = closePath  # noqa: N815 (an open contour is filled like a closed one)

    def _add(self, kind: int, one: Place, two: Place, end: Place) -> None:
        self._kinds.append(kind)
        self._rows.append((self._here, self._here if kind == LINE else one, two, end))
        self._here = end


def _two_thirds(end: Place, control: Place) -> Place:
    return end[0] + (control[0] - end[0]) * 2 / 3, end[1] + (control[1] - end[1]) * 2 / 3


@dataclass(frozen=True, eq=False)
class Glyphs:
    """The outlines of a face at one place of its axes, each drawn once and kept."""

    face: Face
    location: tuple[tuple[str, float], ...] = ()

    @cached_property
    def _kept(self) -> dict[int, Outline]:
        return {}

    @cached_property
    def _set(self) -> Any:
        return self.face.tables.getGlyphSet(location=dict(self.location) or None)

    def outline(self, glyph: int) -> Outline:
        """A glyph's clean outline in font units; raises LetteringError where the font is broken there."""
        if glyph not in self._kept:
            self._kept[glyph] = united_where_overlapping(self._drawn(glyph), self.face.units_per_em)
        return self._kept[glyph]

    def joined(self, parts: Iterable[tuple[int, float, float]]) -> Outline:
        """Several glyphs that make one letter, a base with its marks: (glyph, x, y) in font units."""
        placed = [self.outline(glyph).transformed(Affine.move(x, y)) for glyph, x, y in parts]
        return united_where_overlapping(Outline.gather(placed), self.face.units_per_em)

    def _drawn(self, glyph: int) -> Outline:
        from fontTools.pens.recordingPen import DecomposingRecordingPen  # imported where used: start-up time

        pen = OutlinePen()
        try:
            recorded = DecomposingRecordingPen(self._set)
            self._set[self.face.tables.getGlyphName(glyph)].draw(recorded)
            recorded.replay(pen)
        except Exception as error:  # a broken glyph can fail anywhere in its interpreter
            raise LetteringError(self._broken_at(glyph)) from error
        outline = pen.outline
        if not np.isfinite(outline.data).all():
            raise LetteringError(self._broken_at(glyph))
        return outline

    def _broken_at(self, glyph: int) -> str:
        return f"the font {self.face.name} is broken at its glyph number {glyph}"


def united_where_overlapping(outline: Outline, units_per_em: int) -> Outline:
    """The nonzero region of contours as a clean outline; where it was clean, only turned to run ccw."""
    if outline.is_empty:
        return EMPTY
    areas = ring_areas(outline)
    turned, areas = (outline, areas) if areas.sum() >= 0 else (_reversed(outline), -areas[::-1])
    if _is_clean(turned, areas, units_per_em * MEETING_CHECK_EM):
        return turned
    reduce = 2.0 ** round(math.log2(CLEANED_EM_MM / units_per_em))  # a power of two costs no digits
    return clean(outline.transformed(Affine.scale(reduce))).transformed(Affine.scale(1 / reduce))


def _is_clean(outline: Outline, areas: NDArray[np.float64], tolerance: float) -> bool:
    """Whether contours neither cross nor touch, and alternate inward: outer ccw, holes cw, islands ccw."""
    rings = flatten(outline, tolerance)
    if any(len(ring) < 3 for ring in rings) or np.any(areas == 0):
        return False
    loops = np.array([shapely.linestrings(np.concatenate((ring, ring[:1]))) for ring in rings])
    if not shapely.is_simple(shapely.multilinestrings(loops)):
        return False
    return bool(np.all((_depths(rings) % 2 == 0) == (areas > 0)))


def _depths(rings: Sequence[NDArray[np.float64]]) -> NDArray[np.int64]:
    """In how many other contours each contour lies."""
    if len(rings) == 1:
        return np.zeros(1, dtype=np.int64)
    starts = np.array([ring[0] for ring in rings])
    faces = np.array([shapely.Polygon(ring) for ring in rings])
    inside = shapely.contains_xy(faces[:, None], starts[None, :, 0], starts[None, :, 1])
    return np.asarray(inside.sum(axis=0), dtype=np.int64)


def _reversed(outline: Outline) -> Outline:
    """The same region of lines and cubics with every ring walked the other way."""
    ends = outline.rings[-1] - outline.rings[::-1]
    return Outline(outline.kinds[::-1], outline.data[::-1, ::-1], ends)
