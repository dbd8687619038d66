"""DXF R2010 for cutters and drafting programs: outlines in millimetres, one layer a plate, arcs kept as arcs.

A ring of lines and arcs is one closed LWPOLYLINE, whose bulges are tan(sweep / 4). A ring with cubics is a
chain of entities that share their ends to the last digit: an LWPOLYLINE for each run of lines and arcs, and a
clamped SPLINE of degree 3 for each cubic, which is that Bézier curve exactly. Origin at the lower left of the
page, y up.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from contextlib import contextmanager
from io import StringIO
from typing import TYPE_CHECKING

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Cubic, Line
from heraldry.press.number_format import DXF_BULGE_DECIMALS, DXF_DECIMALS, rounded
from heraldry.press.writer import Ring, frame_y_up

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts.layout import Modelspace

_DXF_VERSION = "R2010"
_MILLIMETRES = 4  # of $INSUNITS, the DXF header variable for the drawing's unit
_FORBIDDEN_IN_LAYER_NAMES = '<>/\\":;?*|=`,'
# A bulge grows without bound toward a full turn; up to a half turn it lies in [-1, 1].
_MAX_SWEEP_RAD = math.pi

Run = list[Line | Arc]
"""Neighbouring strokes that one polyline can hold."""

Vertex = tuple[float, float, float]
"""x, y and the bulge of the stroke that leaves the vertex."""


class DxfWriter:
    """One DXF file."""

    keeps_arcs = True

    def __init__(self, artwork: Artwork) -> None:
        self.frame = frame_y_up(artwork.page)
        self._plates: list[tuple[Plate, tuple[Ring, ...]]] = []
        width, height = rounded(artwork.width_mm, DXF_DECIMALS), rounded(artwork.height_mm, DXF_DECIMALS)
        self._size = width, height

    def plate(self, plate: Plate, rings: Iterator[Ring]) -> None:
        """Keep one plate for the end, since the library looks at the clock when a drawing is begun."""
        self._plates.append((plate, tuple(rings)))

    def finish(self) -> bytes:
        """The file, without dates."""
        from ezdxf.filemanagement import new  # imported where used: start-up time

        with _without_clock():
            drawing = new(_DXF_VERSION, units=_MILLIMETRES)
            _set_page(drawing, *self._size)
            for plate, rings in self._plates:
                layer = drawing.layers.add(layer_name(plate.name))
                layer.rgb = _rgb_bytes(plate.ink)
                for ring in rings:
                    _draw_ring(drawing.modelspace(), ring, layer.dxf.name)
            text = StringIO()
            drawing.write(text)
        return text.getvalue().encode(drawing.output_encoding)


def _set_page(drawing: Drawing, width_mm: float, height_mm: float) -> None:
    """The page as the limits and extents of the drawing.

    They are set twice, since the library takes a corner at the origin for one that is not set, and would
    then write the header without looking at the layout.
    """
    low, high = (0.0, 0.0, 0.0), (width_mm, height_mm, 0.0)
    drawing.modelspace().reset_limits(low[:2], high[:2])
    drawing.modelspace().reset_extents(low, high)
    drawing.header["$EXTMIN"], drawing.header["$EXTMAX"] = low, high


@contextmanager
def _without_clock() -> Iterator[None]:
    """Keep dates and random identifiers out of the file; the library's own setting is put back."""
    import ezdxf  # imported where used: start-up time

    options = ezdxf.options  # type: ignore[attr-defined]  # public, but not in the list of its package
    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _rgb_bytes(ink: Ink) -> tuple[int, int, int]:
    red, green, blue = (round(value * 255) for value in ink.rgb)
    return red, green, blue


def layer_name(plate_name: str) -> str:
    """A plate's name as a layer's name: characters that DXF forbids there become ``_``.

    >>> layer_name("white: under")
    'white_ under'
    """
    return "".join("_" if c in _FORBIDDEN_IN_LAYER_NAMES else c for c in plate_name)


def _draw_ring(space: Modelspace, ring: Ring, layer: str) -> None:
    runs = tuple(_runs(ring))
    for run in runs:
        if isinstance(run, Cubic):
            _draw_spline(space, run, layer)
        else:
            _draw_polyline(space, run, layer, closed=len(runs) == 1)


def _runs(ring: Ring) -> Iterator[Cubic | Run]:
    """The cubics one by one, and what lies between them; begun at a cubic, so that no run is cut in two."""
    first = next((i for i, segment in enumerate(ring) if isinstance(segment, Cubic)), 0)
    run: Run = []
    for segment in ring[first:] + ring[:first]:
        if not isinstance(segment, Cubic):
            run.append(segment)
            continue
        if run:
            yield run
        run = []
        yield segment
    if run:
        yield run


def _draw_polyline(space: Modelspace, run: Run, layer: str, closed: bool) -> None:
    vertices = [vertex for segment in run for vertex in _vertices(segment)]
    if not closed:
        vertices.append(_vertex(run[-1].end))
    space.add_lwpolyline(vertices, format="xyb", close=closed, dxfattribs={"layer": layer})


def _draw_spline(space: Modelspace, cubic: Cubic, layer: str) -> None:
    from ezdxf.math import Vec3  # imported where used: start-up time

    points = (cubic.start, cubic.control1, cubic.control2, cubic.end)
    controls = Vec3.list([_vertex(point)[:2] for point in points])
    space.add_open_spline(controls, degree=3, dxfattribs={"layer": layer})


def _vertices(segment: Line | Arc) -> Iterator[Vertex]:
    """The vertices that a stroke begins: one, or more where an arc is longer than a half turn."""
    if isinstance(segment, Line):
        yield _vertex(segment.start)
        return
    count = max(1, math.ceil(abs(segment.sweep_rad) / _MAX_SWEEP_RAD - 1e-9))
    bulge = math.tan(segment.sweep_rad / count / 4)
    for i in range(count):
        yield _vertex(segment.at(i / count), bulge)


def _vertex(point: Point, bulge: float = 0.0) -> Vertex:
    x, y = (rounded(value, DXF_DECIMALS) for value in point)
    return x, y, rounded(bulge, DXF_BULGE_DECIMALS)
