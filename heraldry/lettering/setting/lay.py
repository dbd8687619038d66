"""A line laid straight, round a circle or along a path, by its ink and with its letters kept apart."""

from __future__ import annotations

import math
from typing import Literal

from heraldry.errors import LetteringError
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path
from heraldry.lettering.alphabet import SetLine
from heraldry.lettering.setting.block import Block
from heraldry.lettering.setting.laid import Laid, angles_covered
from heraldry.lettering.setting.placing import Letters, put
from heraldry.lettering.setting.tracks import CircleTrack, PathTrack
from heraldry.lettering.setting.whites import (
    LEAST_WHITE_CAPS,
    Lay,
    least_tracking,
    opened_locally,
    wanted_whites,
    whites,
)

Anchor = Literal["start", "middle", "end"]
Reads = Literal["outside", "inside"]
Angle = float | Literal["top", "bottom", "left", "right"]

_NAMED_DEG = {"right": 0.0, "top": 90.0, "left": 180.0, "bottom": 270.0}
SHARE: dict[Anchor, float] = {"start": 0.0, "middle": 0.5, "end": 1.0}

OPENED_AT_MOST_CAPS = 1.0
"""Letters that want more tracking than this to clear each other are on the wrong curve, and it is said."""

NOTED_MM = 0.01
"""Opening by less than this is seen by nobody, and not worth a word."""

PATH_OVERRUN_MM = 1e-6
"""Ink may stick out of a path by rounding, and no more."""


def ink_reach(line: SetLine) -> tuple[float, float]:
    """Where the ink of a straight line begins and ends, mm from its origin; the advance when it has none."""
    return _reach_of(Block.straight(line), line)


def ink_width(line: SetLine) -> float:
    """How wide the ink of a straight line is, mm."""
    begin, end = ink_reach(line)
    return end - begin


def _reach_of(flat: Block, line: SetLine) -> tuple[float, float]:
    if flat.outline.is_empty:
        return 0.0, line.advance_mm
    box = bounds(flat.outline)
    return box.left, box.right


def straight(line: SetLine, at: Point, anchor: Anchor = "start", turn_deg: float = 0.0) -> Laid:
    """The line on a straight base line through ``at``, its ink starting, centred or ending there."""
    flat = Block.straight(line)
    begin, end = _reach_of(flat, line)
    held = begin + (end - begin) * SHARE[anchor]
    frame = Affine.move(at.x, at.y) @ Affine.turn(turn_deg) @ Affine.move(-held, 0.0)
    return Laid(Block(flat.outline.transformed(frame), flat.ring_counts), line)


def on_circle(
    line: SetLine,
    centre: Point,
    radius_mm: float,
    reads: Reads = "outside",
    middle: Angle | None = None,
    start: Angle | None = None,
    end: Angle | None = None,
    letters: Letters = "turned",
) -> Laid:
    """The line on a circular base line of a radius (mm), its ink centred, starting or ending at an angle.

    ``outside`` reads clockwise, the letters' feet toward the centre, and stands at the top unless told otherwise;
    ``inside`` reads counter-clockwise, their heads toward it, and stands at the bottom. Arc length along the base
    line is kept. Where letters would run into each other the tracking is opened, and a note says so.

    Raises LetteringError where the text is longer than the circle, or no tracking keeps its letters apart.
    """
    if not radius_mm > 0:
        raise LetteringError(f"text goes round a circle of a radius above zero, found {radius_mm:g} mm")
    anchor, angle_deg = _held_at(reads, middle, start, end)

    def lay_from(start_rad: float, tracked: SetLine) -> Block:
        return put(tracked, CircleTrack(centre, radius_mm, start_rad, reads == "outside"), 0.0, letters)

    _check_round(line, radius_mm)
    room_mm = math.tau * radius_mm - ink_width(line)
    opened, notes = _tracked_open(line, lambda tracked: lay_from(0.0, tracked), room_mm)
    trial = Laid(lay_from(0.0, opened), opened, notes)
    if trial.block.outline.is_empty:
        return trial
    ink = angles_covered(trial.block, centre)
    _check_gap(ink.span_deg, line, radius_mm)
    held_deg = ink.start_deg + (ink.end_deg - ink.start_deg) * SHARE[anchor]
    return Laid(lay_from(math.radians(angle_deg - held_deg), opened), opened, notes)


def along(
    line: SetLine,
    path: Path,
    anchor: Anchor = "middle",
    at_mm: float | None = None,
    letters: Letters = "turned",
) -> Laid:
    """The line along a path, its ink starting, centred or ending after ``at_mm`` of it.

    Left out, ``at_mm`` is the path's start, middle or end. Arc length along the path is kept. Where letters
    would run into each other the tracking is opened, and a note says so.

    Raises LetteringError where the ink would run beyond an open path or twice round a closed one, where bent
    letters would meet a corner, or no tracking keeps the letters apart; GeometryError for a path without
    length.
    """
    track = PathTrack(path)
    held_at = track.total_mm * SHARE[anchor] if at_mm is None else at_mm

    def offset(tracked: SetLine) -> float:
        begin, end = ink_reach(tracked)
        return held_at - begin - (end - begin) * SHARE[anchor]

    def lay(tracked: SetLine) -> Block:
        return put(tracked, track, offset(tracked), letters)

    _check_on_path(line, track, offset(line))
    if letters == "bent":
        track.check_smooth(*(offset(line) + reach for reach in ink_reach(line)))
    opened = opened_locally(line, lay, wanted_whites(line), _room(line, track, held_at, anchor))
    if opened is None:
        raise LetteringError(_no_room(line, lay(line)))
    wider = opened.advance_mm - line.advance_mm
    seen = wider >= NOTED_MM
    notes = (f"{_tight(line, lay(line))}: opened there, by {wider:.3f} mm in all",) if seen else ()
    return Laid(lay(opened), opened, notes)


def _room(line: SetLine, track: PathTrack, held_at: float, anchor: Anchor) -> float:
    """How much longer a line may become on its path before it runs beyond it, mm."""
    long_mm = ink_width(line)
    if track.path.closed:
        return track.total_mm - long_mm
    before, after = SHARE[anchor], 1.0 - SHARE[anchor]
    rooms = [
        held_at / before if before else math.inf,
        (track.total_mm - held_at) / after if after else math.inf,
    ]
    return max(min(rooms) - long_mm, 0.0)


def _held_at(reads: Reads, middle: Angle | None, start: Angle | None, end: Angle | None) -> tuple[Anchor, float]:
    """Which part of the line is held, and at which angle."""
    named: dict[Anchor, Angle | None] = {"start": start, "middle": middle, "end": end}
    given = [(anchor, angle) for anchor, angle in named.items() if angle is not None]
    if len(given) > 1:
        told = " and ".join(anchor for anchor, _ in given)
        raise LetteringError(f"text round a circle is held at one place, found {told}")
    anchor, angle = given[0] if given else ("middle", "top" if reads == "outside" else "bottom")
    return anchor, _NAMED_DEG[angle] if isinstance(angle, str) else angle


def _tracked_open(line: SetLine, lay: Lay, room_mm: float) -> tuple[SetLine, tuple[str, ...]]:
    """The line with as much tracking as keeps its letters apart where it is laid, and a note of it."""
    most = min(OPENED_AT_MOST_CAPS * line.cap_height_mm, room_mm / max(len(line.glyphs) - 1, 1))
    tracking = least_tracking(line, lay, wanted_whites(line), 0.0, most)
    if tracking == 0.0:
        return line, ()
    if tracking == most:
        raise LetteringError(_no_room(line, lay(line)))
    note = f"{_tight(line, lay(line))}: tracking opened by {tracking:.3f} mm"
    return line.tracked(tracking), (note,) if tracking >= NOTED_MM else ()


def _tight(line: SetLine, block: Block) -> str:
    white = whites(block).min()
    meeting = "touch" if white == 0.0 else f"stand {white:.3f} mm apart"
    return f"letters of {_text(line)!r} would {meeting} on this curve"


def _no_room(line: SetLine, block: Block) -> str:
    return (
        f"{_tight(line, block)}, and there is no room to set them wide enough; take a wider curve, "
        "a longer one, or smaller letters"
    )


def _check_round(line: SetLine, radius_mm: float) -> None:
    long_mm = ink_width(line)
    if long_mm > math.tau * radius_mm:
        raise LetteringError(
            f"{_text(line)!r} is {long_mm:.2f} mm long, the circle of radius {radius_mm:g} mm only "
            f"{math.tau * radius_mm:.2f} mm round; take a smaller cap height or a radius above "
            f"{long_mm / math.tau:.2f} mm"
        )


def _check_gap(span_deg: float, line: SetLine, radius_mm: float) -> None:
    least = math.degrees(LEAST_WHITE_CAPS * line.cap_height_mm / radius_mm)
    if span_deg > 360.0 - least:
        raise LetteringError(
            f"{_text(line)!r} covers {span_deg:.1f}° of its circle, its end would meet its start; "
            "take a smaller cap height or a larger radius"
        )


def _check_on_path(line: SetLine, track: PathTrack, offset_mm: float) -> None:
    begin, end = (offset_mm + reach for reach in ink_reach(line))
    beyond = end - begin - track.total_mm if track.path.closed else max(-begin, end - track.total_mm)
    if beyond > PATH_OVERRUN_MM:
        raise LetteringError(
            f"{_text(line)!r} is {end - begin:.2f} mm long and runs {beyond:.2f} mm beyond its path "
            f"of {track.total_mm:.2f} mm; take smaller or narrower letters, a longer path, or another place on it"
        )


def _text(line: SetLine) -> str:
    return "".join(glyph.text for glyph in line.glyphs)
