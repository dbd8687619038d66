"""Places on a map that lie so far off its land that a sign of theirs is likely wrong; millimetres.

A town a little beyond the border, or a ferry's landing, is meant. One that lies farther from the land than the land is
large is on another continent: east for west, or a latitude for a longitude.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

from heraldry.artwork import Finding
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds
from heraldry.geometry.point import Point
from heraldry.plates.stage import Stage
from heraldry.resolve.resolved import MapSpot, ResolvedHerald
from heraldry.shapes.region import DrawnRegion

SIGNS = "degrees north and east are above 0, those south and west below"


def of_far_places(herald: ResolvedHerald, stage: Stage) -> Iterator[Finding]:
    """The named places of regions, and the spots by latitude and longitude, that lie far off the land."""
    regions = {name: drawn for name, drawn in stage.drawn.items() if isinstance(drawn, DrawnRegion)}
    for name, region in regions.items():
        for place, point in region.places.items():
            yield from _far(f"{name}.{place}", point, name, bounds(region.outline))
    for shape in herald.shapes:
        for spot in _spots(tuple(shape.arguments.values())):
            on = spot.on or next(iter(regions))
            words = f"{shape.name}: lat {spot.spot.lat:g}, lon {spot.spot.lon:g}"
            yield from _far(words, stage.place(spot), on, bounds(regions[on].outline))


def _spots(value: Any) -> Iterator[MapSpot]:
    """The spots on a map in an argument, be it one, several or a table."""
    if isinstance(value, MapSpot):
        yield value
    elif isinstance(value, tuple):
        for part in value:
            yield from _spots(part)
    elif is_dataclass(value) and not isinstance(value, type):
        for one in fields(value):
            yield from _spots(getattr(value, one.name))


def _far(words: str, point: Point, land: str, box: Bounds) -> Iterator[Finding]:
    right = max(box.left - point.x, point.x - box.right, 0.0)
    up = max(box.bottom - point.y, point.y - box.top, 0.0)
    off_mm, size_mm = math.hypot(right, up), max(box.width, box.height)
    if off_mm > size_mm:
        message = f"{words} lies {off_mm:.0f} mm off {land}, which is {size_mm:.0f} mm large: {SIGNS}"
        yield Finding("far place", message, "note", point, measured_mm=off_mm, limit_mm=size_mm)
