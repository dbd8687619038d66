"""The same artwork gives the same bytes, in any process, whatever the hash seed and the hour."""

import hashlib
import os
import subprocess
import sys

import pytest

from heraldry.press import OUTPUTS, render

PROGRAM = """
import hashlib, math
from heraldry.artwork import Artwork, Ink, Plate
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path
from heraldry.press import OUTPUTS, render

disc = Outline.of([Path((Arc.about(Point(0, 0), 4.0, 0.0, math.tau),), True)])
a, b = Point(-2, 0), Point(2, 0)
drop = Outline.of([Path((Cubic(a, Point(-2, -3), Point(2, -3), b), Line(b, a)), True)])
plates = tuple(Plate(f"p{i}", Ink(f"ink {i}", f"#00{i}0ff"), disc if i % 2 else drop) for i in range(6))
art = Artwork("same", Bounds(-5, -5, 5, 5), plates)
for name in OUTPUTS:
    print(name, hashlib.sha256(render(art, name)).hexdigest())
"""


@pytest.mark.parametrize("name", OUTPUTS)
def test_twice_in_one_process(artwork, name):
    one, two = (hashlib.sha256(render(artwork, name)).hexdigest() for _ in range(2))
    assert one == two


def test_in_processes_with_other_seeds_zones_and_hours():
    """One process after another, in other time zones, so that a clock would show."""
    told = []
    for seed, zone in (("0", "UTC"), ("1", "Asia/Tokyo"), ("4711", "America/Chicago")):
        environment = os.environ | {"PYTHONHASHSEED": seed, "TZ": zone}
        done = subprocess.run(
            [sys.executable, "-c", PROGRAM], env=environment, capture_output=True, text=True, check=True
        )
        told.append(done.stdout)
    assert len(told[0].splitlines()) == len(OUTPUTS)
    assert told[0] == told[1] == told[2]
