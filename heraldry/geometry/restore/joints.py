"""Where two runs meet: the crossing of the two true curves instead of the crossing of their chords.

Millimetres. All joints of a result are solved in one batch by Newton's method on the two parameters. A joint
that will not be solved (curves that run almost along each other, or whose chords cross where they do not)
keeps the flattened point: each run ends at its nearest place, and a short line goes between.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.restore.chord_table import SAME_PLACE_MM, ring_successors
from heraldry.geometry.restore.curves import Curves, Floats, Ints, distances
from heraldry.geometry.restore.trace import Runs

NEWTON_STEPS = 16
"""Newton doubles the digits each step, and six are enough; curves that barely overlap first halve the way."""

MEETING_MM = 1e-10
"""What may be left between the two curves at a solved joint."""

SETTLED_MM = 1e-13
"""What rounding leaves between two curves that meet."""

MOVE_IN_TOLERANCES = 4.0
"""A true crossing is within some tolerances over the sine of the angle from the crossing of the chords."""

BRIDGE_MM = 1e-6
"""Ends of runs nearer than this are pulled together; farther apart they get a line between them."""


@dataclass(frozen=True, eq=False)
class RunEnds:
    """Where each run really starts and ends."""

    start: Floats
    t_start: Floats
    end: Floats
    t_end: Floats
    following: Ints
    """The run that each run leads into; it starts where this one ends, but for a kept joint with a gap."""
    kept: NDArray[np.bool_]
    """Runs whose joint with the following one was not solved."""

    @property
    def gaps(self) -> Floats:
        """What is missing between the end of each run and the start of the following one, mm."""
        return distances(self.end, self.start[self.following])


def solve_joints(runs: Runs, tolerance_mm: float) -> RunEnds:
    """Find the true ends of all runs."""
    edges, following = runs.edges, ring_successors(runs.rings)
    leaving, entering = runs.last, runs.first[following]
    one, two = edges.curves[edges.curve[leaving]], edges.curves[edges.curve[entering]]
    leave, s, t = edges.end[leaving], edges.t1[leaving], edges.t0[entering]
    off = np.maximum(distances(one.points(s), leave), distances(two.points(t), leave))
    open_ = np.flatnonzero(off > 2 * SAME_PLACE_MM)
    flattened = leave[open_]
    leave[open_], s[open_], t[open_], solved = _meet(
        one[open_], two[open_], flattened, s[open_], t[open_], tolerance_mm
    )
    turned = _turned_back(runs, leave, s, t, following)
    kept = open_[~solved | turned[open_] | turned[following[open_]]]
    enter = leave.copy()
    leave[kept], s[kept] = _nearest(one[kept], edges.end[leaving[kept]], edges.t1[leaving[kept]])
    enter[kept], t[kept] = _nearest(two[kept], edges.end[leaving[kept]], edges.t0[entering[kept]])
    close = kept[distances(leave[kept], enter[kept]) <= BRIDGE_MM]
    leave[close] = enter[close] = (leave[close] + enter[close]) / 2
    is_kept = np.zeros(len(leave), dtype=bool)
    is_kept[kept] = True
    return RunEnds(_moved_on(enter, following), _moved_on(t, following), leave, s, following, is_kept)


def _moved_on(values: Floats, following: Ints) -> Floats:
    """What is known of the run after each run, in the order of the runs themselves."""
    found = np.empty_like(values)
    found[following] = values
    return found


def _meet(
    one: Curves, two: Curves, place: Floats, s: Floats, t: Floats, tolerance_mm: float
) -> tuple[Floats, Floats, Floats, NDArray[np.bool_]]:
    """Newton's method on one(s) = two(t) from a guess: points, parameters, and which are sound."""
    for _ in range(NEWTON_STEPS):
        gap = two.points(t) - one.points(s)
        if np.all(np.abs(gap) <= SETTLED_MM):
            break
        u, v = one.velocities(s), two.velocities(t)
        det = _cross(u, v)
        det = np.where(det == 0.0, np.inf, det)
        s, t = s + _cross(gap, v) / det, t + _cross(gap, u) / det
        s, t = np.clip(s, -1.0, 2.0), np.clip(t, -1.0, 2.0)
    met, u, v = one.points(s), one.velocities(s), two.velocities(t)
    speed_u, speed_v = np.hypot(*u.T), np.hypot(*v.T)
    with np.errstate(invalid="ignore", divide="ignore"):
        sine = np.abs(_cross(u, v)) / (speed_u * speed_v)
        near = distances(met, place) <= MOVE_IN_TOLERANCES * tolerance_mm / sine
        inside = _within(s, MEETING_MM / speed_u) & _within(t, MEETING_MM / speed_v)
    return met, s, t, near & inside & (distances(met, two.points(t)) <= MEETING_MM)


def _cross(a: Floats, b: Floats) -> Floats:
    return a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]


def _within(t: Floats, slack: Floats) -> NDArray[np.bool_]:
    return (t >= -slack) & (t <= 1 + slack)


def _turned_back(runs: Runs, leave: Floats, s: Floats, t: Floats, following: Ints) -> NDArray[np.bool_]:
    """Runs that moved joints would turn round; one that shrinks to a point has no direction to lose."""
    edges = runs.edges
    pace = edges.pace
    whole = runs.sums(edges.length)
    left = whole + (s - edges.t1[runs.last]) * pace[runs.last]
    left -= (_moved_on(t, following) - edges.t0[runs.first]) * pace[runs.first]
    is_point = distances(_moved_on(leave, following), leave) <= SAME_PLACE_MM
    return (left * whole <= 0) & ~is_point


def _nearest(curves: Curves, points: Floats, guess: Floats) -> tuple[Floats, Floats]:
    t = np.clip(curves.nearest(points, guess), 0.0, 1.0)
    return curves.points(t), t
