"""Stencil letters: every counter is joined to the outside by bridges, or it would fall out of a cut stencil.

A bridge is an upright white through the ink just over and just under a counter, in the counter's middle.
Counters that stand one over the other (B, 8) share their bridges. Lengths in cap heights.
"""

from __future__ import annotations

from collections.abc import Sequence

from heraldry.geometry.measure import bounds, ring_areas
from heraldry.geometry.outline import Bounds, Outline
from heraldry.lettering.alphabets.contour import rectangle
from heraldry.lettering.alphabets.ink import cut
from heraldry.lettering.scan import ink_columns

# Width of a bridge in stems, and at least: what still holds in brass or card, and what still prints.
BRIDGE_OF_STEM, LEAST_BRIDGE = 0.45, 0.055

# Ink thicker than this many stems is not bridged (the tip of A) while the other side of the counter is.
BRIDGED_OF_STEM = 1.2

# How far a bridge passes the ink on its axis, so that it is open at both sides of a curved stroke.
PASSES = 0.035

# Chords along curves while the ink on an axis is looked for.
FLATTENED = 1e-4


def bridged(outline: Outline, stem: float) -> Outline:
    """A letter whose counters are opened by bridges; letters without a counter stay as they are."""
    paths = outline.paths
    counters = [bounds(path) for path, area in zip(paths, ring_areas(outline).tolist(), strict=True) if area < 0.0]
    bridges = {bridge for counter in counters for bridge in _bridges(outline, counter, counters, stem)}
    return cut(outline, *(rectangle(*bridge) for bridge in sorted(bridges))) if bridges else outline


def _axis(counter: Bounds, counters: Sequence[Bounds]) -> float:
    """The middle of what a counter shares with those over and under it."""
    over = [other for other in counters if other.left < counter.centre.x < other.right]
    return (max(other.left for other in over) + min(other.right for other in over)) / 2.0


def _bridges(
    outline: Outline, counter: Bounds, counters: Sequence[Bounds], stem: float
) -> list[tuple[float, float, float, float]]:
    """The boxes that open one counter."""
    axis, middle = _axis(counter, counters), counter.centre.y
    spans = ink_columns(outline, axis, FLATTENED)
    below = [span for span in spans if span[1] <= middle][-1:]
    above = [span for span in spans if span[0] >= middle][:1]
    found = sorted(below + above, key=lambda span: span[1] - span[0])
    thin = [span for span in found if span[1] - span[0] <= BRIDGED_OF_STEM * stem] or found[:1]
    half = max(BRIDGE_OF_STEM * stem, LEAST_BRIDGE) / 2.0
    return [(axis - half, foot - PASSES, axis + half, head + PASSES) for foot, head in thin]
