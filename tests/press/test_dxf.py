"""The DXF, read and audited by ezdxf; areas counted again from bulges and splines."""

import io
import math

import ezdxf
import numpy as np
import pytest
from ezdxf.math import bulge_center, bulge_radius
from ezdxf.path import make_path

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path
from heraldry.press import render


def opened(artwork: Artwork):
    return ezdxf.read(io.StringIO(render(artwork, "dxf").decode()))


@pytest.fixture(scope="module")
def drawing(artwork):
    return opened(artwork)


def on_layer(drawing, name):
    return list(drawing.modelspace().query(f'*[layer=="{name}"]'))


def bulged_area(vertices) -> float:
    """Signed: the polygon, and r²(θ − sin θ)/2 for each bulge tan(θ/4) on a chord of 2r sin(θ/2)."""
    total = 0.0
    for (x0, y0, bulge), (x1, y1, _) in zip(vertices, vertices[1:] + vertices[:1], strict=True):
        total += (x0 * y1 - x1 * y0) / 2
        if bulge:
            angle = 4 * math.atan(bulge)
            radius = math.hypot(x1 - x0, y1 - y0) / 2 / math.sin(angle / 2)
            total += radius**2 * (angle - math.sin(angle)) / 2
    return total


def chained_rings(entities):
    """Open entities joined into rings by their ends, which must be the same to the last digit."""
    rings, ring = [], []
    for entity in entities:
        vertices = [(v.x, v.y) for v in make_path(entity).flattening(1e-4, segments=16)]
        if ring:
            assert vertices[0] == ring[-1]
        ring += vertices[1:] if ring else vertices
        if ring[0] == ring[-1]:
            rings.append(np.array(ring))
            ring = []
    assert not ring, "a ring is left open"
    return rings


def test_the_audit_is_clean(drawing):
    audit = drawing.audit()
    assert (audit.errors, audit.fixes) == ([], [])


def test_release_and_unit(drawing):
    assert drawing.dxfversion == "AC1024"  # R2010
    assert drawing.header["$INSUNITS"] == 4  # millimetres
    assert tuple(drawing.header["$EXTMIN"]) == (0.0, 0.0, 0.0)
    assert tuple(drawing.header["$EXTMAX"]) == (24.0, 20.0, 0.0)
    assert tuple(drawing.header["$LIMMAX"]) == (24.0, 20.0)


def test_a_layer_a_plate_in_the_colour_of_its_ink(drawing):
    assert {e.dxf.layer for e in drawing.modelspace()} == {"under", "ring", "title"}
    assert tuple(drawing.layers.get("ring").rgb) == (200, 16, 46)


def test_circles_are_two_bulged_halves_of_exact_area(drawing, areas):
    for name in ("under", "ring"):
        rings = [list(e.get_points("xyb")) for e in on_layer(drawing, name)]
        assert all(e.dxftype() == "LWPOLYLINE" and e.closed for e in on_layer(drawing, name))
        assert [len(ring) for ring in rings] == [2] * len(rings)
        assert sum(map(bulged_area, rings)) == pytest.approx(areas[name], rel=1e-9)


def test_bulges_bend_the_right_way(drawing):
    (disc,) = on_layer(drawing, "under")
    (x0, y0, bulge), (x1, y1, _) = disc.get_points("xyb")
    assert bulge_radius((x0, y0), (x1, y1), bulge) == pytest.approx(9.5)
    assert tuple(bulge_center((x0, y0), (x1, y1), bulge)) == pytest.approx((12.0, 10.0))


def test_letters_are_splines_and_lines_that_meet(drawing, areas):
    entities = on_layer(drawing, "title")
    assert {e.dxftype() for e in entities} == {"SPLINE", "LWPOLYLINE"}
    total = 0.0
    for ring in chained_rings(entities):
        x, y = ring.T
        total += float(x[:-1] @ y[1:] - x[1:] @ y[:-1]) / 2
    assert total == pytest.approx(areas["title"], rel=1e-4)


def test_a_spline_is_the_cubic_itself():
    p = [Point(1, 1), Point(1, 9), Point(9, 9), Point(9, 1)]
    cubic = Cubic(*p)
    backwards = Path((Line(p[0], p[3]), cubic.reversed()), closed=True)
    art = Artwork("x", Bounds(0, 0, 10, 10), (Plate("p", Ink("k", "#000000"), Outline.of([backwards])),))
    (spline,) = on_layer(opened(art), "p")[:1]
    tool = spline.construction_tool()
    for t in np.linspace(0, 1, 21):
        at = tool.point(t * tool.max_t)
        assert (at.x, at.y) == pytest.approx(tuple(cubic.reversed().at(t)), abs=1e-9)


@pytest.mark.parametrize("sweep_deg", [30, 180, 200, 300, 359])
@pytest.mark.parametrize("way", [1, -1])
def test_arcs_of_any_sweep(sweep_deg, way):
    """A sector of a circle: two radii and an arc, either way round, its area r²θ/2 in closed form."""
    centre = Point(5, 5)
    arc = Arc.about(centre, 4.0, 0.3, math.radians(sweep_deg))
    ring = Path((Line(centre, arc.start), arc, Line(arc.end, centre)), closed=True)
    hole = ring if way > 0 else ring.reversed()
    frame = Path.through([Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)], closed=True)
    outline = Outline.of([hole] if way > 0 else [frame, hole])
    art = Artwork("x", Bounds(0, 0, 10, 10), (Plate("p", Ink("k", "#000000"), outline),))
    total = sum(bulged_area(list(e.get_points("xyb"))) for e in on_layer(opened(art), "p"))
    sector = 8.0 * math.radians(sweep_deg)
    assert total == pytest.approx(sector if way > 0 else 100 - sector, rel=1e-7)


def test_names_that_the_format_forbids_are_changed(artwork):
    odd = Artwork("x", artwork.page, (Plate("a/b: c?", Ink("k", "#000000"), artwork.plates[0].outline),))
    drawing = opened(odd)
    assert [e.dxf.layer for e in drawing.modelspace()] == ["a_b_ c_"]
    assert drawing.audit().errors == []


def test_the_library_is_left_as_it_was(artwork):
    before = ezdxf.options.write_fixed_meta_data_for_testing
    render(artwork, "dxf")
    assert ezdxf.options.write_fixed_meta_data_for_testing == before
