"""Examples of the shapes that are drawn on the map of a region, for pages that show every kind of shape.

``data/example.geojson`` holds waters that are not on the Earth, made for this.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any

from heraldry.shapes.region.names import DATA_DIR
from heraldry.shapes.region.shape import region
from heraldry.shapes.table import Drawn, LatLon, as_drawn

WATERS = DATA_DIR / "example.geojson"
TOWNS = (LatLon(44.9, -73.1), LatLon(44.3, -72.6), LatLon(43.6, -72.7), LatLon(42.9, -72.6))


@cache
def map_examples() -> Mapping[str, Mapping[str, Any]]:
    """Arguments of an example of each kind that stands on a region, which is drawn for it; about 20 mm wide."""
    inland, island = _land("US-VT", 20.0), _land("IS", 13.0)
    return {
        "coast": {"coast": island, "width": 0.3, "inside": -0.5, "count": 3, "gap": 0.6},
        "follow": {"follow": island, "by": 1.0, "width": 0.6},
        "map_areas": {"map_areas": WATERS, "on": inland, "where": "kind = lake"},
        "map_lines": {"map_lines": WATERS, "on": inland, "width": 0.5, "smooth": True},
        "map_route": {"map_route": TOWNS, "on": inland, "width": 0.6, "stops": 1.6, "smooth": True},
        "neighbours": {"neighbours": _land("US-VT", 9.0), "reach": 6.0, "borders": 0.2},
    }


def _land(code: str, height_mm: float) -> Drawn:
    return as_drawn(region(region=(code,), height=height_mm))
