"""The spine: the double turn of S, which is also the crossing of the ampersand seen in a mirror.

Two hooks are joined by a stroke that falls from the upper left to the lower right. Its two edges are ruled
straight between the hooks and bent over half their length at each end, so that each edge is two curves that
meet in the middle of the stroke, where the turn changes its sense.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.contour import INNER_TENSION, Bend, Knot, bent
from heraldry.lettering.alphabets.pen import Pen


@dataclass(frozen=True)
class Hook:
    """One half of a spine: its sides, the height of its round, and the height at which its open end is cut."""

    left: float
    right: float
    extreme: float
    end: float


@dataclass(frozen=True)
class DoubleTurn:
    """The boxes of the two hooks, the height of the waist, and how far the spine falls for each unit of run.

    ``side`` and ``crown`` are the thicknesses of the bowls, ``thick`` that of the spine on an upright line,
    ``tip`` that of the open ends.
    """

    upper: Hook
    lower: Hook
    waist: float
    fall: float
    side: float
    crown: float
    thick: float
    tip: float

    @property
    def turned(self) -> DoubleTurn:
        """The same figure seen upside down, about the origin."""
        upper = Hook(-self.lower.right, -self.lower.left, -self.lower.extreme, -self.lower.end)
        lower = Hook(-self.upper.right, -self.upper.left, -self.upper.extreme, -self.upper.end)
        return DoubleTurn(upper, lower, -self.waist, self.fall, self.side, self.crown, self.thick, self.tip)

    def edge_height(self, x: float) -> float:
        """Height of the spine's lower edge, ruled straight, at ``x``."""
        middle = (min(self.upper.left, self.lower.left) + max(self.upper.right, self.lower.right)) / 2.0
        return self.waist - self.fall * (x - middle) - self.thick / 2.0


def spine(pen: Pen, turn: DoubleTurn) -> Outline:
    """The whole double turn, in one contour, its ends cut level."""
    upper_edge = [
        replace(k, x=-k.x, y=-k.y, cut_before=_negative(k.cut_before), cut_after=_negative(k.cut_after))
        for k in _lower_edge(pen, turn.turned)
    ]
    return Outline.of([bent((*_lower_edge(pen, turn), *upper_edge), pen.corner)])


def _negative(height: float | None) -> float | None:
    return None if height is None else -height


def _lower_edge(pen: Pen, turn: DoubleTurn) -> list[Knot]:
    """From the open end above, round the upper hook, along the spine's lower edge, inside the lower hook."""
    upper, lower = turn.upper, turn.lower
    inner_left, inner_right = lower.left + turn.tip, lower.right - turn.side
    floor = lower.extreme + turn.crown
    high, low = turn.edge_height(upper.left), turn.edge_height(inner_right)
    outer = _outer_bend(pen, upper, high)
    inner = _inner_bend(pen, turn, inner_right - inner_left, low - floor)
    shoulder, elbow = _spine_bends(pen, turn, outer, inner)
    outer_end = pen.hook_end(outer, upper.extreme - upper.end)
    inner_end = pen.hook_end(inner, lower.end - lower.extreme, turn.crown)
    return [
        Knot.upright_first(upper.right, upper.extreme, outer_end, cut=upper.end),
        Knot.level_first(upper.left, upper.extreme, outer),
        Knot(upper.left, high, *shoulder),
        Knot(inner_right, low, *elbow, inner.tension),
        Knot.upright_first(inner_right, floor, inner),
        Knot.level_first(inner_left, floor, inner_end, cut=lower.end),
    ]


def _outer_bend(pen: Pen, hook: Hook, spine_edge: float) -> Bend:
    if pen.corner != "round":
        return pen.bend(hook.right - hook.left, hook.extreme - spine_edge)
    return Bend((hook.right - hook.left) / 2.0, (hook.extreme - spine_edge) / 2.0)


def _inner_bend(pen: Pen, turn: DoubleTurn, width: float, height: float) -> Bend:
    if pen.corner != "round":
        hook = turn.turned.upper
        outer = _outer_bend(pen, hook, turn.turned.edge_height(hook.left))
        return pen.fitted(pen.inner_bend(outer, turn.side, turn.crown), min(width, height))
    return Bend(width / 2.0, height / 2.0, INNER_TENSION)


def _spine_bends(
    pen: Pen, turn: DoubleTurn, outer: Bend, inner: Bend
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Reach of the bends at both ends of the spine's edge: outside above, inside below."""
    if pen.corner != "round":
        return (outer.along, outer.across), (inner.across, inner.along)
    run = turn.lower.right - turn.side - turn.upper.left
    half = run * math.hypot(1.0, turn.fall) / 2.0
    return (outer.along, half), (half, inner.along)
