"""Drawings read in, against an independent renderer: each drawing and our outline of it, both drawn by resvg.

The drawings are icons and flags of npm packages (``tests/icon_sets.py``); resvg is the reference for what SVG means.
How far apart two pictures are is the share of the frame whose coverage differs.
"""

from __future__ import annotations

import json
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from numpy.typing import NDArray

from heraldry.shapes.drawing.opening import read_drawing
from heraldry.shapes.drawing.tracing import Size, traced
from tests.icon_sets import ICON_SETS, PACKAGES, IconSet, fetch, flags, icons
from tests.rendered import drawn_again, picture

ALLOWED_SHARE = 0.005
"""Of the frame; half of it can be the renderer's own, which counts coverage in few steps at edges of small pictures."""

PIXELS = 256
FINISHED_MM = 30.0

KNOWN_APART: dict[str, str] = {}
"""Icons that are farther apart, each with the reason; none is known."""


@pytest.fixture(scope="module")
def packages(request: pytest.FixtureRequest) -> Path:
    return fetch(request.config.cache.mkdir("icon_sets"))


def page_size(drawing: Path) -> tuple[float, float]:
    """Width and height of the page, as its root says."""
    root = ElementTree.fromstring(drawing.read_text())
    box = root.get("viewBox", "0 0 0 0").split()
    return float(root.get("width") or box[2]), float(root.get("height") or box[3])


def pictures(drawing: Path, width: int, height: int) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """A drawing as the renderer shows it, and our outline of it as the renderer shows that."""
    tracing = traced(read_drawing(drawing), Size(width=FINISHED_MM))
    return picture(drawing.read_text(), width, height), picture(
        drawn_again(tracing, *page_size(drawing)), width, height
    )


def test_all_sets_are_free_to_use(packages: Path) -> None:
    for package in PACKAGES:
        said = json.loads((packages / package.name / "package.json").read_text())
        assert (said["version"], said["license"]) == (package.version, package.licence)


def test_there_are_enough_icons(packages: Path) -> None:
    assert sum(len(icons(packages, icon_set)) for icon_set in ICON_SETS) >= 300


@pytest.mark.parametrize("icon_set", ICON_SETS, ids=lambda icon_set: icon_set.name)
def test_icons_cover_what_they_covered(packages: Path, icon_set: IconSet) -> None:
    """At least 99 of 100 icons within 0.5 % of the frame, every other one known by name and reason."""
    apart = {}
    chosen = icons(packages, icon_set)
    for drawing in chosen:
        original, ours = pictures(drawing, PIXELS, PIXELS)
        share = float(np.abs(original[..., 3] - ours[..., 3]).mean())
        if share > ALLOWED_SHARE:
            apart[drawing.stem] = round(share, 4)
    assert apart.keys() <= KNOWN_APART.keys(), apart
    assert len(apart) <= 0.01 * len(chosen), apart


def test_colours_lie_where_they_were_seen(packages: Path) -> None:
    """Flags: areas of each colour after what lies on top has hidden what lies below; mean difference of colours."""
    for drawing in flags(packages):
        original, ours = pictures(drawing, 4 * PIXELS // 3, PIXELS)
        assert float(np.abs(original - ours).mean()) <= ALLOWED_SHARE, drawing.name
