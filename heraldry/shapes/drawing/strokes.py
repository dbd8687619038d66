"""Lines drawn along chains, as outlines: width, ends, corners and dashes as SVG 1.1, section 11.4, has them.

Where all corners are round, or pointed no farther than ``geometry.offset`` reaches, the line is drawn in one piece.
Else it is drawn run by run between its corners, with flat ends, and each corner is filled by a wedge of its own: cut
off, or drawn out to its point. The unit is the finished millimetre, or near it: tolerances are those of geometry.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from heraldry.errors import GeometryError
from heraldry.geometry.boolean import unite
from heraldry.geometry.offset import Ends, stroke
from heraldry.geometry.offsets.bands import SHARPEST
from heraldry.geometry.offsets.spine import REVERSAL_RAD, spine_of
from heraldry.geometry.outline import EMPTY, Bounds, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Cubic, Path, Segment
from heraldry.shapes.drawing.dashes import dashed
from heraldry.shapes.drawing.picture import Pen
from heraldry.shapes.drawing.plain_strokes import plain_stroke
from heraldry.shapes.rounds import circle_path

MOST_PIECES = 4_000
"""Chains and dashes that one shape may be drawn from."""

SMOOTH_RAD = 0.02
"""A corner that turns by less is none: cut off or pointed, it differs by 5e-5 of the line's half width."""

FINEST_MM = 1e-5
"""A line finer than this is no ink; it is below what the geometry can tell from nothing."""

OVERLAP_SHARE = 0.05
"""How far a wedge reaches back into the runs beside it, in half widths, so that no seam is left between them."""

_ENDS: dict[str, Ends] = {"butt": "flat", "round": "round", "square": "square"}


def stroked(paths: Sequence[Path], pen: Pen) -> Outline:
    """The outline of lines along chains; empty for lines of no width."""
    if pen.width < FINEST_MM:
        return EMPTY
    pieces = [
        piece for path in paths for piece in (dashed(path, pen.dashes, pen.dash_offset) if pen.dashes else [path])
    ]
    if len(pieces) > MOST_PIECES:
        raise GeometryError(f"a shape has {len(pieces):,} lines and dashes, at most {MOST_PIECES:,} are drawn")
    drawn = [outline for outline in (_line(piece, pen) for piece in pieces) if not outline.is_empty]
    return together(drawn)


def together(outlines: Sequence[Outline]) -> Outline:
    """Outlines as one; one alone is sound already and stays as it is."""
    if not outlines:
        return EMPTY
    return outlines[0] if len(outlines) == 1 else unite(*outlines)


def _line(path: Path, pen: Pen) -> Outline:
    segments = tuple(segment for segment in path if not _is_short(segment))
    if not segments:
        return _dot(path.segments[0].start, pen) if path.segments else EMPTY
    path = _whole(segments, path)
    plain = plain_stroke(path, pen.width, pen.cap)
    if plain is not None:
        return plain
    corners = _corners(path)
    if pen.join == "round" or not corners:
        return stroke(path, pen.width, _ENDS[pen.cap], "round")
    if pen.join == "miter" and _all_pointed(corners, pen):
        return stroke(path, pen.width, _ENDS[pen.cap], "sharp")
    return _in_runs(path, pen, corners)


def _is_short(segment: Segment) -> bool:
    """Whether a segment has no length that the geometry can tell."""
    if isinstance(segment, Arc):
        return segment.radius * abs(segment.sweep_rad) <= FINEST_MM
    controls = (segment.control1, segment.control2) if isinstance(segment, Cubic) else ()
    return all(abs(point - segment.start) <= FINEST_MM for point in (*controls, segment.end))


def _whole(segments: tuple[Segment, ...], path: Path) -> Path:
    """The segments that are left, made to meet where a short one has gone between them."""
    kept = [segments[0]]
    for segment in segments[1:]:
        kept.append(segment if segment.start == kept[-1].end else replace(segment, start=kept[-1].end))
    if path.closed and kept[-1].end != kept[0].start:
        kept[-1] = replace(kept[-1], end=kept[0].start)
    return Path(tuple(kept), path.closed)


def _dot(at: Point, pen: Pen) -> Outline:
    """What a line of no length leaves behind: a round or a square end alone."""
    half = pen.width / 2
    if pen.cap == "round":
        return Outline.of([circle_path(at, half)])
    if pen.cap == "square":
        return Bounds(at.x, at.y, at.x, at.y).grown(half).outline
    return EMPTY


@dataclass(frozen=True)
class _Corner:
    """A corner after a segment of a chain, with the directions before and after it."""

    after: int
    at: Point
    arriving: Point
    leaving: Point

    @property
    def turn(self) -> float:
        """How far the line turns, counter-clockwise."""
        return math.atan2(self.arriving.cross(self.leaving), self.arriving.dot(self.leaving))

    @property
    def reach(self) -> float:
        """How far its point would stand out, in half widths: 1 / sin(θ/2) of the angle between the lines."""
        return 1 / max(math.cos(self.turn / 2), math.ulp(1.0))


def _corners(path: Path) -> list[_Corner]:
    """The corners of a chain, the one at the start of a closed chain last."""
    segments = path.segments
    leaving, arriving = _tangents(path)
    last = len(segments) if path.closed else len(segments) - 1
    found = []
    for i in range(last):
        corner = _Corner(i, segments[i].end, arriving[i], leaving[(i + 1) % len(segments)])
        if abs(corner.turn) > SMOOTH_RAD:
            found.append(corner)
    return found


def _tangents(path: Path) -> tuple[list[Point], list[Point]]:
    """Directions at the starts and ends of all segments."""
    ends = []
    for segment in path:
        spine = spine_of(Outline.of([Path((segment,))]), is_open=True)
        ends.append((Point(*spine.leaving[0].tolist()), Point(*spine.arriving[-1].tolist())))
    return [one for one, _ in ends], [two for _, two in ends]


def _all_pointed(corners: Sequence[_Corner], pen: Pen) -> bool:
    """Whether ``geometry.offset`` draws every corner as asked: pointed within its own limit and the pen's."""
    limit = min(pen.miter_limit, SHARPEST) - 1e-9
    return all(corner.reach <= limit for corner in corners)


def _in_runs(path: Path, pen: Pen, corners: Sequence[_Corner]) -> Outline:
    parts = [stroke(run, pen.width, "flat", "round") for run in _runs(path, corners)]
    parts += [wedge for wedge in (_wedge(corner, pen) for corner in corners) if wedge is not None]
    if not path.closed and pen.cap != "butt":
        parts += _caps(path, pen)
    return unite(*parts)


def _runs(path: Path, corners: Sequence[_Corner]) -> Iterator[Path]:
    """The chain from corner to corner; on a closed one the last run goes on through the start."""
    segments = path.segments
    cuts = [corner.after + 1 for corner in corners]
    if path.closed:
        segments = (*segments[cuts[0] :], *segments[: cuts[0]])
        cuts = [cut - cuts[0] for cut in cuts]
    for first, last in zip(
        [0, *(cut for cut in cuts if cut)], [*(cut for cut in cuts if cut), len(segments)], strict=True
    ):
        yield Path(segments[first:last])


def _wedge(corner: _Corner, pen: Pen) -> Outline | None:
    """What fills a corner on its outer side; nothing where the line turns straight back."""
    if abs(corner.turn) >= math.pi - REVERSAL_RAD:
        return None
    half, side = pen.width / 2, -math.copysign(1.0, corner.turn)
    one, two = corner.at + corner.arriving.left * (side * half), corner.at + corner.leaving.left * (side * half)
    back = half * OVERLAP_SHARE
    ring = [corner.at - corner.arriving * back, one]
    if pen.join == "miter" and corner.reach <= pen.miter_limit:
        outward = (one - corner.at) + (two - corner.at)
        ring.append(corner.at + outward.unit * (half * corner.reach))
    ring += [two, corner.at + corner.leaving * back]
    return Outline.of([Path.through(ring, closed=True)])


def _caps(path: Path, pen: Pen) -> list[Outline]:
    """Round or square ends, each reaching back into the line a little."""
    half = pen.width / 2
    leaving, arriving = _tangents(path)
    found = []
    for at, outward in ((path.segments[0].start, -leaving[0]), (path.segments[-1].end, arriving[-1])):
        if pen.cap == "round":
            found.append(Outline.of([circle_path(at, half)]))
        else:
            across, back, front = outward.left * half, at - outward * (half * OVERLAP_SHARE), at + outward * half
            found.append(
                Outline.of([Path.through((back - across, front - across, front + across, back + across), closed=True)])
            )
    return found
