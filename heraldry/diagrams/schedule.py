"""The dimensions of a lettered side as they stand on a painting and lettering diagram: overall, and item by item.

Panels are outlined on the picture, the overall size stands beside it, and where each item is held is marked and
numbered; the schedule under the picture has a line for each of them.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from heraldry.diagrams.captions import length_text, writing
from heraldry.diagrams.layout import Layout, Place
from heraldry.diagrams.picture import GUIDES, Stroke, frame_of
from heraldry.diagrams.side import Side
from heraldry.geometry.boolean import unite
from heraldry.geometry.measure import bounds
from heraldry.geometry.offset import edge
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import Point
from heraldry.lettering.setting.lay import Anchor
from heraldry.units import Scale

GUIDE_HEX = "#2b8ae6"
"""A blue that is seen on white paper and on dark paint."""
LINE_MM = 0.12
MARK_MM = 0.5
"""How far the cross at a held point reaches."""
NUMBER_MM, ITEM_NUMBER_MM, SCHEDULE_MM, PITCH_MM = 1.3, 0.9, 1.6, 2.8
AWAY_MM = 2.0
"""How far a line of dimension stands off the picture."""
COLUMN_GAP_MM = 6.0
"""Between two columns of the schedule."""


def dimension_strokes(layout: Layout, scale: Scale | None) -> Iterator[Stroke]:
    """What is drawn on and round the picture, about the lower left corner of the side."""
    side, frame = layout.side, frame_of(layout.side)
    below, beside = frame.bottom - AWAY_MM, frame.left - AWAY_MM
    crosses = [line for place in layout.places for line in _cross(place)]
    panels = [edge(panel.outline, LINE_MM) for panel in side.panels.values()]
    yield Stroke((GUIDES, 1), "guides", GUIDE_HEX, unite(*_overall_lines(side, below, beside), *panels, *crosses))
    yield _written(length_text(side.width_mm, scale), Point(side.width_mm / 2, below - NUMBER_MM - LINE_MM * 4))
    yield _written(length_text(side.height_mm, scale), Point(beside - LINE_MM * 4, side.height_mm / 2), "end")
    for name, panel in side.panels.items():
        yield _written(name, Point(panel.left + AWAY_MM / 2, panel.top - AWAY_MM), "start")
    for i, place in enumerate(layout.places, start=1):
        beside_item = Point(place.box.left - MARK_MM, place.box.centre.y - ITEM_NUMBER_MM / 2)
        yield writing(str(i), beside_item, ITEM_NUMBER_MM, "end", GUIDE_HEX)


def schedule_strokes(layout: Layout, scale: Scale | None, top: Point, width_mm: float) -> Iterator[Stroke]:
    """The schedule from its top left corner down, in as many columns as are no wider together."""
    head, *lines = schedule_lines(layout, scale)
    first = top - Point(0.0, PITCH_MM)
    yield writing(head, first, SCHEDULE_MM, "start")
    widest = max((bounds(writing(line, first, SCHEDULE_MM, "start").outline).width for line in lines), default=0.0)
    columns = max(1, int((width_mm + COLUMN_GAP_MM) / (widest + COLUMN_GAP_MM)))
    rows = math.ceil(len(lines) / columns)
    for i, line in enumerate(lines):
        column, row = divmod(i, rows)
        at = first + Point(column * (widest + COLUMN_GAP_MM), -(row + 1) * PITCH_MM)
        yield writing(line, at, SCHEDULE_MM, "start")


def schedule_lines(layout: Layout, scale: Scale | None) -> Iterator[str]:
    """A line for each item: where it is held, from the left edge and from the bottom edge, and how high it is."""
    size = "full size" if scale else "model size"
    yield f"Side {layout.side.name}: height, from left, from bottom, {size}".upper()
    for i, place in enumerate(layout.places, start=1):
        across, up, high = (length_text(mm, scale) for mm in (place.at.x, place.at.y, place.box.height))
        yield f"{i}. {place.item.name}: {high}, {place.hold.anchor} {across}, {place.hold.level} {up}".upper()


def _overall_lines(side: Side, below: float, beside: float) -> Iterator[Outline]:
    """The lines of dimension under and left of a picture, with a tick at each end."""
    width, height, tick = side.width_mm, side.height_mm, MARK_MM / 2
    yield _line(0.0, below, width, below)
    yield _line(beside, 0.0, beside, height)
    yield from (_line(x, below - tick, x, below + tick) for x in (0.0, width))
    yield from (_line(beside - tick, y, beside + tick, y) for y in (0.0, height))


def _cross(place: Place) -> Iterator[Outline]:
    x, y = place.at
    yield _line(x - MARK_MM, y, x + MARK_MM, y)
    yield _line(x, y - MARK_MM, x, y + MARK_MM)


def _line(x1: float, y1: float, x2: float, y2: float) -> Outline:
    return Bounds(x1, y1, x2, y2).grown(LINE_MM / 2).outline


def _written(text: str, at: Point, anchor: Anchor = "middle") -> Stroke:
    return writing(text.upper(), at, NUMBER_MM, anchor, GUIDE_HEX)
