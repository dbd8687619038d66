"""The map of the land a railroad serves, as an outline.

The way of a map, each stage one file::

    codes ─▶ atlas ────┐
                       ├─▶ land ─▶ outlying ─▶ projection ─▶ plan ─▶ fitting ─▶ simplify ─▶ legible ─▶ outline
    file  ─▶ map_file ─┘           far parts   conformal     seams   scale,     fewer       what is
                                   left out    plane         closed  islands    points      too thin
                           degrees             kilometres                       millimetres

``map_file`` is the door to ``json_map`` (GeoJSON, TopoJSON) and ``vector_file`` (Shapefile, GeoPackage, KML);
``picking`` chooses among their features. What lies on the map of a drawn region (``land_map``), and around it, are
shapes of their own: ``neighbours``, ``coast``, ``map_features``, ``map_route``.

``shape`` is the list of calls: the shape ``region``. Degrees are WGS 84, longitude first in
arrays; planes are kilometres until the finished size is known, then millimetres, y up (north).
"""

from __future__ import annotations

from heraldry.shapes.region.land_map import DrawnRegion, LandMap
from heraldry.shapes.region.shape import region

__all__ = ["DrawnRegion", "LandMap", "region"]
