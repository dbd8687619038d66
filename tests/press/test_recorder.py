import math
from itertools import pairwise

import pytest

from heraldry.geometry.segments import Arc
from heraldry.press.recorder import record


def test_plates_come_in_printing_order_with_their_inks(artwork):
    told = record(artwork)
    assert [(plate.plate, plate.ink) for plate in told] == [
        ("under", "white"), ("ring", "signal red"), ("title", "navy"),
    ]  # fmt: skip


def test_arcs_are_kept_where_the_format_has_them(artwork):
    under, ring, _ = record(artwork)
    assert under.verbs == (("arc",),)
    assert ring.verbs == (("arc",), ("arc",))


def test_arcs_become_cubics_of_thirty_degrees_elsewhere(artwork):
    under, *_ = record(artwork, keeps_arcs=False)
    assert under.verbs == (("cubic",) * 12,)


def test_the_page_begins_at_its_lower_left_corner(artwork):
    (arc,) = record(artwork)[0].rings[0]
    assert isinstance(arc, Arc)
    assert (arc.centre.x, arc.centre.y, arc.radius) == (12.0, 10.0, 9.5)
    assert arc.sweep_rad == pytest.approx(math.tau)


def test_rings_are_closed_to_the_last_bit(artwork):
    for plate in record(artwork, keeps_arcs=False):
        for ring in plate.rings:
            assert ring[-1].end == ring[0].start
            assert all(one.end == following.start for one, following in pairwise(ring))
