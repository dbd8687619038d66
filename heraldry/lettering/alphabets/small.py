"""What small letters are built of: their own lighter pen, bowls that lean on stems, arches that spring from them.

Three strokes have to share the height between base line and x-line that the capitals have a third more of, so
the small letters are drawn a trace lighter than the capitals.
"""

from __future__ import annotations

from dataclasses import replace

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.pen import CHAMFER, Pen

# Level strokes of the small letters in those of the capitals: they lie closer, and the more so the heavier.
SMALL_ARM, ARM_BY_STEM = 0.97, 0.75

# Serifs of the small letters in those of the capitals.
SMALL_SERIF = 0.84

# Where a bowl or an arch springs from a stem, its outer edge starts inside the stem by this much of it, and its
# counter keeps a fuller corner: so the joint is thin and shows a clear notch.
SPRING, JOINT_BEND = 0.38, 0.62

# A counter keeps less of that fuller corner where its crown is thinner than this, in sides: it would break through.
EVEN_JOINT = 0.6

# How deep the notch over a chamfered joint may be, in level strokes.
JOINT_CUT = 0.5

# A bent stem and the white beside it, in stems: narrower, the hook would close.
LEAST_HOOK = 2.17

# A bent stem is cut this far past its crest, in half stems.
PAST_THE_CREST = 0.5


def small(pen: Pen) -> Pen:
    """The pen of the small letters."""
    level = SMALL_ARM - ARM_BY_STEM * max(pen.stem - 0.10, 0.0)
    return replace(
        pen,
        stem=pen.stem * pen.small_stem,
        hair=pen.hair * pen.small_stem,
        side=pen.side * pen.small_side,
        fall=pen.fall * pen.small_stem,
        climb=pen.climb * pen.small_stem,
        arm=pen.arm * level,
        crown=pen.crown * level,
        serif=pen.serif.scaled(SMALL_SERIF),
    )


def small_ring(pen: Pen, wide: float) -> Outline:
    """The o."""
    return pen.bowl(0.0, -pen.over, wide, pen.x_height + pen.over)


def side_bowl(pen: Pen, wide: float, top: float) -> Outline:
    """A bowl that leans on a stem at its right: there its counter is squarer, so that the joint thins."""
    bottom = -pen.over
    right = wide - pen.stem * SPRING
    outer = pen.bend(right, top - bottom)
    inner = pen.inner_bend(outer, pen.side, pen.crown)
    full, joint = inner, outer
    if pen.corner == "round":
        fuller = min(pen.crown / pen.side / EVEN_JOINT, 1.0)
        full = replace(inner, along=inner.along * (1.0 - (1.0 - JOINT_BEND) * fuller))
    elif pen.corner == "cut":
        depth = min(outer.along, pen.stem * (1.0 - SPRING) + pen.crown * JOINT_CUT)
        joint = replace(outer, across=depth, along=depth)
    shell = pen.shell(0.0, bottom, right, top, {"tl": outer, "bl": outer, "tr": joint, "br": joint})
    bends = {"tl": inner, "bl": inner, "tr": full, "br": full}
    room = min(wide - pen.side - pen.stem, top - bottom - 2.0 * pen.crown)
    fitted = {name: pen.fitted(bend, room) for name, bend in bends.items()}
    counter = pen.shell(pen.side, bottom + pen.crown, wide - pen.stem, top - pen.crown, fitted)
    return Outline.of([shell, counter.reversed()])


def shoulder(pen: Pen, left: float, right: float) -> Outline:
    """An arch that springs from a stem at its left and comes down as a stem at its right."""
    spring = pen.stem * SPRING
    return pen.arch(left + spring, 0.0, right, pen.x_height + pen.over, (pen.stem - spring, pen.stem))


def hook_wide(pen: Pen, character: str) -> float:
    """Width of a letter whose stem is bent over and cut: wide enough that its other side is all cut away."""
    return max(pen.wide(character), pen.stem * LEAST_HOOK)


def crest_end(pen: Pen, left: float, end: float) -> float:
    """Where a bend from a stem at ``left`` would come down, if it were not cut just past its crest at ``end``.

    A chamfered or square bend is flat there and has its crest drawn out, so that the cut meets no corner.
    """
    flat = 0.0 if pen.corner == "round" else CHAMFER
    return 2.0 * end - left - pen.stem * PAST_THE_CREST + 2.0 * flat


def bar_left(pen: Pen, wide: float) -> float:
    """How far the bar of f and t stands out to the left of their stem."""
    return max(pen.stem * 0.42, min(wide * 0.25, wide - pen.stem * 1.8))
