"""A compact file form for map topology: every shared border is kept once, in whole numbers.

A topology file is one xz stream. Unpacked it begins with one line of JSON::

    {"scale": [dx, dy], "translate": [x0, y0], "codes": [...], "streams": {name: bytes, ...}}

and goes on with the streams it names, each a row of whole numbers written as zigzag varints (seven bits a
byte, low ones first, the top bit saying that more follow; zigzag folds the sign into the lowest bit).
The streams are:

=================  ==========================================================================
``arc_sizes``      how many points each arc has
``dx``, ``dy``     the arcs' points one after the other, first absolute, then as steps
``polygons``       how many polygons each coded area has
``rings``          how many rings each polygon has (the first bounds it, the others are holes)
``refs_per_ring``  how many arcs each ring is chained from
``refs``           those arcs by number; ``~n`` (so, negative) is arc n walked backwards
=================  ==========================================================================

Degrees are ``translate + scale · number``, longitude first.
"""

from __future__ import annotations

import json
import lzma
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import shapely
from numpy.typing import NDArray

Ints = NDArray[np.int64]

STREAMS = ("arc_sizes", "dx", "dy", "polygons", "rings", "refs_per_ring", "refs")


@dataclass(frozen=True, eq=False)
class Topology:
    """Coded areas that share their borders; see the module for what the streams hold."""

    scale: tuple[float, float]
    translate: tuple[float, float]
    codes: tuple[str, ...]
    streams: Mapping[str, Ints]

    def write(self, path: Path) -> None:
        """Write the file; the same topology gives the same bytes."""
        packed = {name: pack(self.streams[name]) for name in STREAMS}
        header = {
            "scale": self.scale,
            "translate": self.translate,
            "codes": self.codes,
            "streams": {name: len(data) for name, data in packed.items()},
        }
        line = json.dumps(header, separators=(",", ":")).encode() + b"\n"
        path.write_bytes(lzma.compress(line + b"".join(packed.values()), preset=9 | lzma.PRESET_EXTREME))

    @staticmethod
    def read(path: Path) -> Topology:
        """Read such a file."""
        line, _, body = lzma.decompress(path.read_bytes()).partition(b"\n")
        header = json.loads(line)
        streams, start = {}, 0
        for name, size in header["streams"].items():
            streams[name] = unpack(body[start : start + size])
            start += size
        scale, translate = header["scale"], header["translate"]
        return Topology(tuple(scale), tuple(translate), tuple(header["codes"]), streams)


def pack(numbers: Ints) -> bytes:
    """Whole numbers as zigzag varints.

    >>> pack(np.array([0, -1, 1, 64, -300])).hex()
    '0001028001d704'
    """
    values = (numbers.astype(np.int64) << 1) ^ (numbers.astype(np.int64) >> 63)
    sevens = values[:, None] >> (7 * np.arange(10))
    lengths = np.maximum(1, np.count_nonzero(sevens, axis=1))
    column = np.arange(10)
    more = column < lengths[:, None] - 1
    octets = ((sevens & 127) | (more << 7)).astype(np.uint8)
    return bytes(octets[column < lengths[:, None]])


def unpack(data: bytes) -> Ints:
    """The whole numbers of a row of zigzag varints.

    >>> unpack(bytes.fromhex('0001028001d704')).tolist()
    [0, -1, 1, 64, -300]
    """
    octets = np.frombuffer(data, dtype=np.uint8)
    if not len(octets):
        return np.zeros(0, np.int64)
    starts = np.concatenate(([0], np.flatnonzero(octets < 128)[:-1] + 1))
    sizes = np.diff(starts, append=len(octets))
    shift = 7 * (np.arange(len(octets)) - np.repeat(starts, sizes))
    values = np.add.reduceat((octets & 127).astype(np.int64) << shift, starts)
    return (values >> 1) ^ -(values & 1)


class Areas:
    """The areas of a topology as polygons in degrees, chained on demand."""

    def __init__(self, topology: Topology) -> None:
        streams = topology.streams
        self._arc_ends = _ends(streams["arc_sizes"])
        self._degrees = _absolute(topology, self._arc_ends)
        self._polygon_ends, self._ring_ends = _ends(streams["polygons"]), _ends(streams["rings"])
        self._ref_ends, self._refs = _ends(streams["refs_per_ring"]), streams["refs"]
        self._row = {code: row for row, code in enumerate(topology.codes)}
        self.grid_deg = topology.scale

    def __contains__(self, code: str) -> bool:
        return code in self._row

    def polygons(self, code: str) -> shapely.MultiPolygon:
        """The polygons of one area, as the map has them (they need not be valid); KeyError if unknown."""
        row = self._row[code]
        polygons = range(self._polygon_ends[row], self._polygon_ends[row + 1])
        return shapely.MultiPolygon([self._polygon(index) for index in polygons])

    def _polygon(self, index: int) -> shapely.Polygon:
        first, last = self._ring_ends[index], self._ring_ends[index + 1]
        shell, *holes = [self._ring(ring) for ring in range(first, last)]
        return shapely.Polygon(shell, holes)

    def _ring(self, index: int) -> NDArray[np.float64]:
        refs = self._refs[self._ref_ends[index] : self._ref_ends[index + 1]].tolist()
        arcs = [self._arc(ref) for ref in refs]
        return np.concatenate([arcs[0][:1], *(arc[1:] for arc in arcs)])

    def _arc(self, ref: int) -> NDArray[np.float64]:
        forward = ref if ref >= 0 else ~ref
        points = self._degrees[self._arc_ends[forward] : self._arc_ends[forward + 1]]
        return points if ref >= 0 else points[::-1]


def _ends(sizes: Ints) -> Ints:
    return np.concatenate(([0], np.cumsum(sizes)))


def _absolute(topology: Topology, arc_ends: Ints) -> NDArray[np.float64]:
    """All points in degrees: running sums of the steps, begun anew at each arc."""
    steps = np.stack((topology.streams["dx"], topology.streams["dy"]), axis=1)
    sums = np.concatenate((np.zeros((1, 2), np.int64), np.cumsum(steps, axis=0)))
    before = np.repeat(sums[arc_ends[:-1]], topology.streams["arc_sizes"], axis=0)
    return np.asarray((sums[1:] - before) * np.array(topology.scale) + np.array(topology.translate))
