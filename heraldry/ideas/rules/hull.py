"""What a herald takes up: the convex hull of its ink, mm²."""

from __future__ import annotations

import shapely

from heraldry.artwork import Artwork
from heraldry.geometry.flatten import flatten

COARSE_MM = 0.02
"""Curves are flattened as coarsely as that: a hundredth of the area is not wanted."""


def hull_area(artwork: Artwork) -> float:
    """The area of the convex hull of all plates."""
    points = [point for ring in flatten(artwork.outline, COARSE_MM) for point in ring]
    return float(shapely.convex_hull(shapely.MultiPoint(points)).area)
