"""What a herald takes up: the convex hull of its ink, mm²."""

from __future__ import annotations

from heraldry.artwork import Artwork
from heraldry.geometry.outline import Outline

COARSE_MM = 0.02
"""Curves are flattened as coarsely as that: a hundredth of the area is not wanted."""


def hull_area(artwork: Artwork) -> float:
    """The area of the convex hull of all plates."""
    import shapely  # imported where used: start-up time

    from heraldry.geometry.flatten import flatten

    whole = Outline.gather(plate.outline for plate in artwork.plates)
    points = [point for ring in flatten(whole, COARSE_MM) for point in ring]
    return float(shapely.convex_hull(shapely.MultiPoint(points)).area)
