"""The pen: the measures of one alphabet at one set of parameters, and the strokes that letters are built of.

Everything is in cap heights, base line at y = 0, cap line at y = 1, the left of each letter's ink at x = 0.
The vocabulary: ``upright`` and ``level`` (straight strokes), ``slope`` (a stroke that leans and may taper),
``bowl`` (a closed round), ``cup`` and ``arch`` (a round open at the top or at the foot), ``hook`` (a bowl open at
the left). How a round turns its corners is the alphabet's corner: curve, chamfer or plain.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from heraldry.geometry.outline import Outline
from heraldry.geometry.segments import Path
from heraldry.lettering.alphabets.contour import INNER_TENSION, Bend, Corner, Knot, bent, polygon, rectangle
from heraldry.lettering.alphabets.ink import cut
from heraldry.lettering.alphabets.serif import NO_SERIF, Serif

# A curved bend may be longer than wide, or wider than long, by this much; beyond, the side runs straight. It
# keeps condensed bowls from becoming ellipses: straight sides are what makes them match the stems.
LONGEST_BEND = 1.3

# The same inside a bowl: there the stem eats the width and leaves the height, and a longer bend still looks round.
LONGEST_INNER_BEND = 1.8

# And at the closed end of U and J, whose sides run straight anyway.
LONGEST_CUP = 1.12

# How much of a bowl's width its bend may take when only one of its sides is round (D, P, R, B).
ONE_SIDED_REACH = 0.60

# A chamfer in cap heights, and the most of a bowl's width or height that it may take.
CHAMFER = 0.20
CHAMFER_OF_BOWL = 0.36

# Depth of the nick that tells square B, 3 and 8 from boxes, in stems; and how far its wedge starts outside.
NICK_OF_STEM = 0.42
SAME_SIDE = 0.05

# The bend of a round hook's open end is drawn longer than the end by this, and then cut: an end that stopped
# where its bend stops would look stunted.
LONG_END = 1.35

# An inner bend shorter than this (cap heights) would clot in print: the corner is left plain.
LEAST_INNER_BEND = 0.012

# Figures are narrower than the round capitals: their sides are as thick as a stem and no thicker.
SIDES_OF_FIGURES = 0.975

# Dashes are no thinner than this, in stems.
LEAST_DASH = 0.5

# Strokes of the small letters in those of the capitals.
SMALL_STEM = 0.955

# Corners are named by top or bottom, left or right.
ALL = "tl tr br bl"
RIGHT = "tr br"
Bends = Mapping[str, Bend]


def chamfer_inside(outer: float, side: float, level: float) -> float:
    """The inner chamfer that leaves a 45° stroke as thick as the mean of its neighbours.

    Offsetting the chamfer's line by t and measuring it from the inner corner gives outer + √2·t − side − level.

    >>> round(chamfer_inside(0.2, 0.1, 0.1), 4)
    0.1414
    """
    return outer + math.sqrt(2.0) * (side + level) / 2.0 - side - level


def slope_width(run: float, rise: float, thick: float) -> float:
    """Horizontal width of a stroke ``thick`` across that covers ``run`` over ``rise``, its own width included.

    With h the width, the stroke leans by (run − h) / rise and h = thick·√(1 + lean²): a quadratic in h.

    >>> round(slope_width(0.1, 1.0, 0.1), 6)
    0.1
    """
    t2 = (thick / rise) ** 2
    a, half_b, c = 1.0 - t2, t2 * run, -(thick**2) - t2 * run**2
    return (-half_b + math.sqrt(half_b**2 - a * c)) / a


@dataclass(frozen=True, eq=False)
class Pen:
    """Thicknesses and heights of one alphabet, and the strokes drawn with them.

    ``stem`` upright, ``hair`` the thin uprights of M, N and U, ``arm`` crossbar, ``side`` and ``crown`` the
    thickest and thinnest of a round, ``fall`` and ``climb`` the strokes of a diagonal letter that fall and rise to
    the right, ``joint`` what is left of their thickness where they meet, ``over`` the overshoot of rounds.
    ``ending`` is the thickness of a hook's open end in sides; ``sides_of_s`` and ``sides_of_figures`` are the
    thickness of their sides in those of other rounds, ``spine_of_s`` that of the spine of S in stems.
    """

    corner: Corner
    stem: float
    hair: float
    arm: float
    side: float
    crown: float
    fall: float
    climb: float
    joint: float
    over: float
    opening: float
    x_height: float
    ascender: float
    descender: float
    widths: dict[str, float]
    serif: Serif = NO_SERIF
    ending: float = 1.0
    sides_of_s: float = 1.0
    sides_of_figures: float = SIDES_OF_FIGURES
    spine_of_s: float = 1.0
    loop_of_and: float = 1.0
    rising_of_and: float = 1.0
    round_points: bool = False
    small_stem: float = SMALL_STEM
    small_side: float = SMALL_STEM

    def wide(self, letter: str) -> float:
        """Width of a letter's ink."""
        return self.widths[letter]

    @property
    def dash(self) -> float:
        """Thickness of dashes and of the signs of reckoning: an arm, but never a hairline."""
        return max(self.arm, self.stem * LEAST_DASH)

    # ---- straight strokes

    def upright(self, left: float, bottom: float = 0.0, top: float = 1.0, thick: float | None = None) -> Outline:
        """A stem standing at ``left``."""
        return rectangle(left, bottom, left + (self.stem if thick is None else thick), top)

    def level(self, left: float, right: float, bottom: float, thick: float | None = None) -> Outline:
        """A crossbar lying on ``bottom``."""
        return rectangle(left, bottom, right, bottom + (self.arm if thick is None else thick))

    def slope(self, foot: float, foot_wide: float, head: float, head_wide: float,
              bottom: float = 0.0, top: float = 1.0) -> Outline:  # fmt: skip
        """A leaning stroke between two heights; its ends are level and as wide as they are told."""
        return polygon((foot, bottom), (foot + foot_wide, bottom), (head + head_wide, top), (head, top))

    # ---- rounds

    def bend(self, width: float, height: float, across: int = 2, along: int = 2) -> Bend:
        """The outer bend of a bowl; ``across`` and ``along`` say how many of its ends are round."""
        if self.corner == "square":
            return Bend()
        if self.corner == "cut":
            chamfer = min(CHAMFER, CHAMFER_OF_BOWL * width, CHAMFER_OF_BOWL * height)
            return Bend(chamfer, chamfer)
        reach = width / 2.0 if across == 2 else ONE_SIDED_REACH * width
        rise = height / 2.0 if along == 2 else ONE_SIDED_REACH * height
        return Bend(min(reach, LONGEST_BEND * rise), min(rise, LONGEST_BEND * reach))

    def inner_bend(self, outer: Bend, side: float, level: float) -> Bend:
        """The bend inside a stroke that is ``side`` thick upright and ``level`` thick lying."""
        if self.corner == "cut":
            inside = max(chamfer_inside(outer.across, side, level), 0.0)
            return Bend(inside, inside)
        across, along = outer.across - side, outer.along - level
        if min(across, along) < LEAST_INNER_BEND:
            return Bend()
        return Bend(across, min(along, LONGEST_INNER_BEND * across), INNER_TENSION)

    def fitted(self, bend: Bend, room: float) -> Bend:
        """An inner chamfer that leaves its neighbour as much of an edge as it takes."""
        if self.corner != "cut":
            return bend
        chamfer = min(bend.across, room / 2.0)
        return Bend(chamfer, chamfer)

    def shell(self, left: float, bottom: float, right: float, top: float, bends: Bends) -> Path:
        """The edge of a box whose corners have the bends they are given."""
        knots = (
            Knot.upright_first(left, bottom, bends.get("bl", Bend())),
            Knot.level_first(right, bottom, bends.get("br", Bend())),
            Knot.upright_first(right, top, bends.get("tr", Bend())),
            Knot.level_first(left, top, bends.get("tl", Bend())),
        )
        return bent(knots, self.corner)

    def bowl(self, left: float, bottom: float, right: float, top: float, corners: str = ALL,
             sides: tuple[float, float] | None = None, levels: tuple[float, float] | None = None,
             tight: Mapping[str, float] | None = None) -> Outline:  # fmt: skip
        """A closed round: sides (left, right) and levels (bottom, top) are its thicknesses.

        ``corners`` names the round corners, ``tight`` those whose bend is only a part as long.
        """
        one, other = sides or (self.side, self.side)
        foot, head = levels or (self.crown, self.crown)
        names, tight = corners.split(), (tight or {}) if self.corner == "round" else {}
        across = max(sum(name[0] == end for name in names) for end in "tb")
        along = max(sum(name[1] == end for name in names) for end in "lr")
        whole = self.bend(right - left, top - bottom, across, along)
        outer = {name: replace(whole, along=whole.along * tight.get(name, 1.0)) for name in names}
        room = min((right - left - one - other) * (3 - across), (top - bottom - foot - head) * (3 - along))
        inner = {
            name: self.fitted(self.inner_bend(bend, (one + other) / 2.0, (foot + head) / 2.0), room)
            for name, bend in outer.items()
        }
        shell = self.shell(left, bottom, right, top, outer)
        counter = self.shell(left + one, bottom + foot, right - other, top - head, inner)
        return Outline.of([shell, counter.reversed()])

    def cup(self, left: float, bottom: float, right: float, top: float,
            sides: tuple[float, float] | None = None, level: float | None = None,
            ends: tuple[float | None, float | None] = (None, None)) -> Outline:  # fmt: skip
        """A round open at the top: two uprights joined by a bend below.

        ``ends`` gives the heights at which the left and the right upright are cut as ends of a hook.
        """
        return self._horseshoe((left, right), bottom, top, sides, level, ends)

    def arch(self, left: float, bottom: float, right: float, top: float,
             sides: tuple[float, float] | None = None, level: float | None = None,
             ends: tuple[float | None, float | None] = (None, None)) -> Outline:  # fmt: skip
        """A round open at the foot: two uprights joined by a bend above; ``ends`` as for ``cup``."""
        return self._horseshoe((left, right), top, bottom, sides, level, ends)

    def _horseshoe(self, outside: tuple[float, float], closed: float, opened: float,
                   sides: tuple[float, float] | None, level: float | None,
                   ends: tuple[float | None, float | None]) -> Outline:  # fmt: skip
        """Two uprights and the bend between them; ``closed`` and ``opened`` are heights."""
        left, right = outside
        one, other = sides or (self.side, self.side)
        thick = self.crown if level is None else level
        inside = closed + math.copysign(thick, opened - closed)
        outer = self.bend(right - left, abs(opened - closed), 2, 1)
        if self.corner == "round":
            outer = Bend(outer.across, min(outer.along, LONGEST_CUP * outer.across))
        inner = self.fitted(self.inner_bend(outer, (one + other) / 2.0, thick), right - left - one - other)
        (left_outer, left_inner, left_end), (right_outer, right_inner, right_end) = (
            (outer, inner, opened) if end is None
            else (self.hook_end(outer, abs(end - closed)), self.hook_end(inner, abs(end - closed), thick), end)
            for end in ends
        )  # fmt: skip
        knots = (
            Knot.upright_first(left, closed, left_outer, cut=left_end),
            Knot.level_first(right, closed, right_outer, cut=right_end),
            Knot.upright_first(right - other, inside, right_inner, cut=right_end),
            Knot.level_first(left + one, inside, left_inner, cut=left_end),
        )
        return Outline.of([bent(knots, self.corner)])

    def hook(
        self, left: float, right: float, crest: float, bar: float, bar_left: float, end: float, side: float
    ) -> Outline:
        """A bowl open at the left, as 3 has two: its round reaches ``crest`` and is cut at ``end``.

        Its other level stroke is a bar that has its outer edge at ``bar`` and starts at ``bar_left``.
        """
        tip = side * self.ending
        sense = math.copysign(1.0, bar - crest)
        outer = self.bend(right - left, abs(bar - crest))
        room = min(right - left - side - tip, abs(bar - crest) - 2.0 * self.crown)
        inner, end_inner = (self.fitted(self.inner_bend(outer, thick, self.crown), room) for thick in (side, tip))
        height, roof, floor = abs(end - crest), crest + sense * self.crown, bar - sense * self.crown
        knots = (
            Knot(bar_left, bar),
            Knot.level_first(right, bar, outer),
            Knot.upright_first(right, crest, outer),
            Knot.level_first(left, crest, self.hook_end(outer, height), cut=end),
            Knot.upright_first(left + tip, roof, self.hook_end(end_inner, height, self.crown), cut=end),
            Knot.level_first(right - side, roof, inner),
            Knot.upright_first(right - side, floor, inner),
            Knot(bar_left, floor),
        )
        return Outline.of([bent(knots, self.corner)])

    def hook_end(self, bend: Bend, height: float, crown: float = 0.0) -> Bend:
        """The bend next to a hook's end ``height`` from its extreme; ``crown`` is given for the inner edge."""
        if self.corner == "round":
            return replace(bend, along=LONG_END * height - crown)
        chamfer = min(bend.along, height - crown)
        return Bend(chamfer, chamfer)

    @property
    def standing_back(self) -> float:
        """How far the upper half of B stands back, in widths; square sides stay in line and are nicked."""
        return 0.0 if self.corner == "square" else 0.05

    def nicked(self, stroke: Outline, height: float, *sides: float) -> Outline:
        """A square letter with a small wedge cut into its sides at the waist, where others have their notch."""
        if self.corner != "square":
            return stroke
        depth, centre = self.stem * NICK_OF_STEM, self.wide("H") / 2.0
        wedges = []
        for x in sides:
            inward, outward = math.copysign(depth, centre - x), math.copysign(SAME_SIDE, x - centre)
            half = depth + SAME_SIDE
            wedges.append(polygon((x + outward, height - half), (x + inward, height), (x + outward, height + half)))
        return cut(stroke, *wedges)
