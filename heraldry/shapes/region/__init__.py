"""The map of the land a railroad serves, as an outline.

The way of a map, each stage one file::

    codes ─▶ atlas ────┐
                       ├─▶ land ─▶ outlying ─▶ projection ─▶ plan ─▶ fitting ─▶ simplify ─▶ outline
    file  ─▶ map_file ─┘           far parts   conformal     seams   scale,     fewer
                                   left out    plane         closed  islands    points
                           degrees             kilometres                       millimetres

``shape`` is the list of calls: the shape ``region``. Degrees are WGS 84, longitude first in
arrays; planes are kilometres until the finished size is known, then millimetres, y up (north).
"""

from __future__ import annotations

from heraldry.shapes.region.shape import DrawnRegion, LandMap, region

__all__ = ["DrawnRegion", "LandMap", "region"]
