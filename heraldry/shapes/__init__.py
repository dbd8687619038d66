"""Every kind of shape, one family a file, entered in one table.

>>> "ring" in SHAPES and "region" in SHAPES and "text" in SHAPES
True
"""

from heraldry.shapes import (
    arrows,
    bands,
    borders,
    following,
    frames,
    lines,
    monogram,
    nature,
    path_data,
    polygons,
    rails,
    ribbons,
    rounds,
    routes,
    shield_outlines,
    shields,
    stripes,
    text,
    wheels,
    wings,
)
from heraldry.shapes.drawing import shape as drawing_shape
from heraldry.shapes.region import coast, map_features, map_route, neighbours
from heraldry.shapes.region import shape as region_shape
from heraldry.shapes.table import SHAPES, Drawn, ShapeKind

FAMILIES = (
    rounds, borders, polygons, frames, shields, shield_outlines, stripes, bands, arrows, ribbons, wings, wheels, rails,
    nature, path_data, drawing_shape, region_shape, neighbours, coast, map_features, map_route, following, routes, text,
    lines, monogram,
)  # fmt: skip
"""The families, named so that importing this package is what enters them in the table."""

__all__ = ["FAMILIES", "SHAPES", "Drawn", "ShapeKind"]
