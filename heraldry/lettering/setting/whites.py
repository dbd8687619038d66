"""The white between neighbouring letters as they lie, and the tracking that keeps enough of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.geometry.flatten import flatten
from heraldry.geometry.outline import ARC, Outline
from heraldry.lettering.alphabet import SetLine
from heraldry.lettering.setting.block import Block

Floats = NDArray[np.float64]
Lay = Callable[[SetLine], Block]

LEAST_WHITE_CAPS = 0.06
"""Letters nearer than this run together in print: 0.14 mm at a cap height of 2.3 mm. In cap heights."""

MEASURED_MM = 0.001
"""Curves are flattened to a micrometre for measuring whites, so that a white is off by two at most."""

TRACKING_STEP_MM = 0.001
"""Tracking is found to a micrometre."""

CORNERS_A_SEGMENT = 4

_TURNS = np.arange(12) * np.pi / 12
_DIRECTIONS = np.stack((np.cos(_TURNS), np.sin(_TURNS)))


def whites(block: Block) -> Floats:
    """The distance from each letter with ink to the next one with ink, mm; 0 where they touch."""
    if block.outline.is_empty:
        return np.zeros(0)
    edges = _edges(block)
    return np.asarray(shapely.distance(edges[:-1], edges[1:]), dtype=np.float64)


def any_touch(block: Block) -> bool:
    """Whether a letter touches the next one.

    Nearly all pairs can be told apart by a straight line between them in one of a few directions; only the
    others are measured.
    """
    inked = [count for count in block.ring_counts if count]
    if len(inked) < 2:
        return False
    shadows = _control_corners(block.outline).reshape(-1, 2) @ _DIRECTIONS
    first = block.outline.rings[np.cumsum([0, *inked[:-1]])] * CORNERS_A_SEGMENT
    low, high = np.minimum.reduceat(shadows, first), np.maximum.reduceat(shadows, first)
    doubtful = np.flatnonzero(~np.any((low[1:] > high[:-1]) | (low[:-1] > high[1:]), axis=1))
    if len(doubtful) == 0:
        return False
    letters = [letter for letter in block.letters if not letter.is_empty]
    return any(whites(Block.of(letters[i : i + 2]))[0] <= 0.0 for i in doubtful.tolist())


def least_tracking(line: SetLine, lay: Lay, wanted: Floats, low: float, high: float) -> float:
    """The least tracking in [low, high] at which no white is below ``wanted``; ``high`` where none does."""

    def enough(tracking: float) -> bool:
        return bool(np.all(whites(lay(line.tracked(tracking))) >= wanted - MEASURED_MM))

    if enough(low):
        return low
    while high - low > TRACKING_STEP_MM:
        middle = (low + high) / 2
        low, high = (low, middle) if enough(middle) else (middle, high)
    return high


def opened_locally(line: SetLine, lay: Lay, wanted: Floats, room_mm: float) -> SetLine | None:
    """The line opened just where its letters come too near, step by step; None where the room runs out.

    On a curve that bends here and there only, tracking the whole line for one tight spot would tear it apart.
    """
    opened = line
    while opened.advance_mm - line.advance_mm <= room_mm:
        lacking = wanted - whites(lay(opened))
        if np.all(lacking <= MEASURED_MM):
            return opened
        opened = _widened(opened, np.where(lacking > MEASURED_MM, lacking, 0.0))
    return None


def wanted_whites(line: SetLine) -> Floats:
    """The white that each pair has to keep: the least that prints, or what it has when straight if less."""
    return np.minimum(whites(Block.straight(line)), LEAST_WHITE_CAPS * line.cap_height_mm)


def _widened(line: SetLine, extras: Floats) -> SetLine:
    """The line with extra white before each letter with ink but the first."""
    inked = [i for i, glyph in enumerate(line.glyphs) if not glyph.outline.is_empty]
    before = np.zeros(len(line.glyphs))
    before[inked[1:]] = extras
    shifts = np.cumsum(before).tolist()
    glyphs = tuple(replace(glyph, x_mm=glyph.x_mm + shift) for glyph, shift in zip(line.glyphs, shifts, strict=True))
    return replace(line, glyphs=glyphs, advance_mm=line.advance_mm + shifts[-1])


def _edges(block: Block) -> NDArray[np.object_]:
    """The edges of each letter with ink, as one geometry a letter."""
    rings = [np.concatenate((ring, ring[:1])) for ring in flatten(block.outline, MEASURED_MM)]
    which = np.repeat(np.arange(len(rings)), [len(ring) for ring in rings])
    loops = shapely.linestrings(np.concatenate(rings), indices=which)
    return np.asarray(shapely.multilinestrings(loops, indices=_inked(block)))


def _inked(block: Block) -> NDArray[np.int64]:
    """To which letter each ring belongs, counting letters with ink only."""
    counts = [count for count in block.ring_counts if count]
    return np.repeat(np.arange(len(counts)), counts)


def _control_corners(outline: Outline) -> Floats:
    """Points (n, 4, 2) whose box holds each segment: control points, and for arcs their whole circle's box."""
    arcs = outline.kinds == ARC
    if not np.any(arcs):
        return outline.data
    corners = outline.data.copy()
    radius = outline.data[arcs, 2, :1]
    corners[arcs, 1], corners[arcs, 2] = outline.data[arcs, 1] - radius, outline.data[arcs, 1] + radius
    return corners
