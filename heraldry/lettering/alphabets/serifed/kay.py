"""K and k: a thin arm comes down to the stem, a thick leg springs from the arm."""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.contour import meet
from heraldry.lettering.alphabets.ink import join
from heraldry.lettering.alphabets.pen import Pen, slope_width
from heraldry.lettering.alphabets.serifed.forks import LEANING_SERIF, inset
from heraldry.lettering.alphabets.serifed.letters import letter
from heraldry.lettering.alphabets.serifed.strokes import Flank, Reach, limb, post
from heraldry.lettering.alphabets.small import small

# Where the arm meets the stem, in parts of the height; where the leg springs from it, in parts of the way out.
LOW, SPRING = 0.34, 0.20

# How much further in than the leg the arm ends, in insets of leaning strokes.
ARM_BACK = 0.15


@dataclass(frozen=True)
class _Frame:
    """The ruled lines of one K: its arm reaches ``top``, and x of the stem's right side is ``stem``."""

    pen: Pen
    wide: float
    top: float

    @property
    def stem(self) -> float:
        return self.pen.serif.natural + self.pen.stem

    @property
    def outer(self) -> float:
        """Length of the serifs that nothing stands beside."""
        return self.pen.serif.reach * LEANING_SERIF

    @property
    def low(self) -> Point:
        """Where the arm's lower edge meets the stem."""
        return Point(self.stem, self.top * LOW)

    @property
    def lower_edge(self) -> Flank:
        """Lower edge of the arm."""
        return Flank(self.low, Point(self.wide - inset(self.pen) * (1.0 + ARM_BACK), self.top))

    @property
    def upper_edge(self) -> Flank:
        """Upper edge of the arm."""
        run = self.lower_edge.head - self.low
        across = Point(slope_width(run.x, run.y, self.pen.climb), 0.0)
        return Flank(self.low - across, self.lower_edge.head - across)

    @property
    def head_white(self) -> float:
        """White between the heads of stem and arm, measured under their serifs."""
        return self.upper_edge.at(self.top - self.pen.serif.thick) - self.stem

    @property
    def foot_white(self) -> float:
        """White between the feet of stem and leg, measured over their serifs."""
        return self.leg[0].at(self.pen.serif.thick) - self.stem

    @property
    def leg(self) -> tuple[Flank, Flank]:
        """Inner and outer side of the leg, up to where it springs."""
        foot = self.wide - inset(self.pen)
        spring = self.low + (self.lower_edge.head - self.low) * SPRING
        across = Point(slope_width(foot - spring.x, spring.y, self.pen.fall), 0.0)
        inner = Flank(Point(foot, 0.0) - across, spring)
        return inner, Flank(inner.foot + across, inner.head + across)


@letter("K")
def draw_k(pen: Pen) -> Outline:
    """Arm and stem of one height."""
    frame = _Frame(pen, pen.wide("K"), 1.0)
    return kay(frame, 1.0, Reach(pen.serif.reach, pen.serif.between(frame.head_white)))


@letter("k")
def draw_small_k(pen: Pen) -> Outline:
    """The stem rises above the arm."""
    pen = small(pen)
    return kay(_Frame(pen, pen.wide("k"), pen.x_height), pen.ascender, Reach(pen.serif.reach))


def kay(frame: _Frame, stem_top: float, heads: Reach) -> Outline:
    """A K whose stem reaches ``stem_top`` and has ``heads`` there."""
    pen = frame.pen
    feet = pen.serif.between(frame.foot_white)
    stem = post(pen, pen.serif.natural, 0.0, stem_top, Reach(pen.serif.reach, feet), heads)
    return join(stem, _arm(frame), _leg(frame, min(feet, frame.outer)))


def _arm(frame: _Frame) -> Outline:
    """The thin stroke, led into the middle of the stem."""
    pen, lower, upper = frame.pen, frame.lower_edge, frame.upper_edge
    inside = frame.stem - pen.stem / 2.0
    run = upper.head - upper.foot
    ends = [
        frame.low,
        Point(inside, frame.low.y),
        Point(inside, upper.foot.y + (inside - upper.foot.x) * run.y / run.x),
    ]
    inner = min(pen.serif.between(frame.head_white), frame.outer)
    return limb(pen, upper, lower, ends, Reach(inner, frame.outer), down=True)


def _leg(frame: _Frame, left_serif: float) -> Outline:
    """The thick stroke, led up to the middle of the arm."""
    (inner, outer), along = frame.leg, frame.lower_edge.head - frame.low
    axis = (frame.low + frame.upper_edge.foot) * 0.5
    ends = [meet(side.foot, side.head - side.foot, axis, along) for side in (outer, inner)]
    return limb(frame.pen, inner, outer, ends, Reach(left_serif, frame.outer))
