"""The arcs of a user's TopoJSON file, as degrees.

TopoJSON (The TopoJSON Format Specification, 1.0) keeps each border once, as an arc; a ring is a list of arc
numbers, ``~n`` meaning arc n walked backwards. A file with a ``transform`` holds its points as steps of
whole numbers on a grid.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from heraldry.errors import RegionError
from heraldry.shapes.region.positions import Array, degrees_checked, numbers


class Arcs:
    """Rings in degrees out of a topology's arcs, decoded on demand; RegionError where they are wrong."""

    member = "arcs"
    """Where a geometry keeps its rings."""

    def __init__(self, document: Mapping[str, Any], file: str) -> None:
        arcs = document.get("arcs")
        if not isinstance(arcs, list):
            raise RegionError(f"{file}: a Topology needs a list of arcs, found {type(arcs).__name__}")
        self._raw: Sequence[Any] = arcs
        self._file = file
        self._decoded: dict[int, Array] = {}
        self._transform = _transform(document.get("transform"), file)

    @property
    def grid_deg(self) -> tuple[float, float]:
        """The steps of the file's grid in degrees; 0 where it has none."""
        if self._transform is None:
            return 0.0, 0.0
        across, up = np.abs(self._transform[0]).tolist()
        return across, up

    def ring(self, refs: Any) -> Array:
        """The points of a ring or line that is given by its arcs' numbers."""
        whole = isinstance(refs, list) and refs and all(type(ref) is int for ref in refs)
        if not whole:
            raise RegionError(f"{self._file}: a ring of a Topology is a list of arc numbers, found {str(refs)[:40]}")
        arcs = [self._arc(ref) for ref in refs]
        return degrees_checked(np.concatenate([arcs[0][:1], *(arc[1:] for arc in arcs)]), self._file)

    def _arc(self, ref: int) -> Array:
        index = ref if ref >= 0 else ~ref
        if index >= len(self._raw):
            raise RegionError(f"{self._file}: arc {ref} is not there, the file has {len(self._raw)}")
        if index not in self._decoded:
            self._decoded[index] = self._decode(index)
        return self._decoded[index] if ref >= 0 else self._decoded[index][::-1]

    def _decode(self, index: int) -> Array:
        points = numbers(self._raw[index], self._file)
        if self._transform is None:
            return points
        scale, translate = self._transform
        return np.cumsum(points, axis=0) * scale + translate


def _transform(found: Any, file: str) -> tuple[Array, Array] | None:
    if found is None:
        return None
    if isinstance(found, Mapping) and {"scale", "translate"} <= set(found):
        pair = numbers([found["scale"], found["translate"]], file)
        return pair[0], pair[1]
    raise RegionError(f"{file}: a transform has scale and translate, found {str(found)[:40]}")
