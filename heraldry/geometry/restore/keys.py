"""Numbers that stand for points and edges: equal floats give equal keys, and both ways along an edge one key.

The overlays hand vertices back bit for bit, so a key of the bits finds an edge in a sorted table. Keys may
collide (two in 2**64), so a match is always verified by comparing the floats.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

MULTIPLIERS = (
    np.uint64(0x9E3779B97F4A7C15),  # 2**64 / golden ratio, odd: Knuth's multiplicative hashing
    np.uint64(0xD6E8FEB86659FD93),  # odd, its bits well mixed; from memory
)
FOLD = np.uint64(32)


def point_keys(points: NDArray[np.float64]) -> NDArray[np.uint64]:
    """Keys (n,) of points (n, 2); 0.0 and -0.0 count as the same."""
    bits = np.ascontiguousarray(points + 0.0).view(np.uint64)
    mixed = bits[..., 0] * MULTIPLIERS[0]
    mixed = ((mixed >> FOLD) ^ mixed) * MULTIPLIERS[1] + bits[..., 1]
    mixed = ((mixed >> FOLD) ^ mixed) * MULTIPLIERS[0]
    return ((mixed >> FOLD) ^ mixed) * MULTIPLIERS[1]


def edge_keys(start: NDArray[np.float64], end: NDArray[np.float64]) -> NDArray[np.uint64]:
    """Keys (n,) of edges, the same either way along."""
    return point_keys(start) + point_keys(end)
