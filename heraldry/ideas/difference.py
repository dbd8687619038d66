"""How different two heralds are: their ink on a coarse raster, as an eye sees them from far away."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from heraldry.artwork import Artwork
from heraldry.geometry.flatten import flatten
from heraldry.geometry.outline import Bounds

CELLS, DOTS = 20, 6
"""Cells along a side of the raster, and dots along a side of a cell."""
COARSE_SHARE = 0.004
"""Curves are flattened to this share of the herald's size: less than a dot."""

Raster = NDArray[np.float64]
"""Shape (inks, cells, cells): the share of each cell that an ink covers."""


def raster_of(artwork: Artwork) -> Raster:
    """The raster of an artwork in a square round its page: all ink, and that of every plate but the first."""
    side = max(artwork.width_mm, artwork.height_mm)
    planes = [_plane(artwork, i, side) for i in range(len(artwork.plates))]
    second = sum(planes[1:], np.zeros((CELLS, CELLS)))
    return np.stack([sum(planes, np.zeros((CELLS, CELLS))), second])


def _plane(artwork: Artwork, index: int, side: float) -> Raster:
    """One plate by the even-odd rule: every ring turns over what it encloses."""
    from PIL import Image, ImageChops, ImageDraw  # imported where used: start-up time

    size = CELLS * DOTS
    whole = Image.new("1", (size, size))
    for ring in flatten(artwork.plates[index].outline, side * COARSE_SHARE):
        one = Image.new("1", (size, size))
        ImageDraw.Draw(one).polygon(_dots(ring, artwork.page, side, size), fill=1)
        whole = ImageChops.logical_xor(whole, one)
    dots: Raster = np.asarray(whole, dtype=np.float64)
    shares: Raster = dots.reshape(CELLS, DOTS, CELLS, DOTS).mean(axis=(1, 3))
    return shares


def _dots(ring: NDArray[np.float64], page: Bounds, side: float, size: int) -> list[tuple[float, float]]:
    middle = page.centre
    x = (ring[:, 0] - middle.x) / side + 0.5
    y = 0.5 - (ring[:, 1] - middle.y) / side
    return list(zip((x * size).tolist(), (y * size).tolist(), strict=True))


def difference(one: Raster, other: Raster) -> float:
    """The mean difference of the cells of two rasters; the second ink counts half.

    >>> blank, full = np.zeros((2, CELLS, CELLS)), np.ones((2, CELLS, CELLS))
    >>> difference(blank, blank), difference(blank, full)
    (0.0, 1.5)
    """
    planes = np.abs(one - other).mean(axis=(1, 2))
    return float(planes[0] + planes[1] / 2)
