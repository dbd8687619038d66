"""Letters of upright and level strokes alone: E F H I L T."""

from __future__ import annotations

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.gothic.letters import letter
from heraldry.lettering.alphabets.ink import join
from heraldry.lettering.alphabets.pen import Pen

# Heights of the crossbars' centres: true halves look low.
BAR_OF_H = 0.513
BAR_OF_E = 0.507
BAR_OF_F = 0.478


@letter("E")
def draw_e(pen: Pen) -> Outline:
    """The top arm a trace shorter than the foot, the middle one shorter still."""
    wide, arm = pen.wide("E"), pen.arm
    middle = pen.level(0.0, wide * 0.925, BAR_OF_E - arm / 2.0)
    return join(pen.upright(0.0), pen.level(0.0, wide * 0.98, 1.0 - arm), middle, pen.level(0.0, wide, 0.0))


@letter("F")
def draw_f(pen: Pen) -> Outline:
    """The second arm hangs lower than that of E, to fill the empty foot."""
    wide, arm = pen.wide("F"), pen.arm
    second = pen.level(0.0, wide * 0.91, BAR_OF_F - arm / 2.0)
    return join(pen.upright(0.0), pen.level(0.0, wide, 1.0 - arm), second)


@letter("H")
def draw_h(pen: Pen) -> Outline:
    """The measure of all others."""
    wide = pen.wide("H")
    bar = pen.level(0.0, wide, BAR_OF_H - pen.arm / 2.0)
    return join(pen.upright(0.0), pen.upright(wide - pen.stem), bar)


@letter("I")
def draw_i(pen: Pen) -> Outline:
    """The stem."""
    return pen.upright(0.0)


@letter("L")
def draw_l(pen: Pen) -> Outline:
    """Narrow, since its white is its own."""
    return join(pen.upright(0.0), pen.level(0.0, pen.wide("L"), 0.0))


@letter("T")
def draw_t(pen: Pen) -> Outline:
    """A stem hung in the middle of its bar."""
    wide = pen.wide("T")
    return join(pen.upright((wide - pen.stem) / 2.0), pen.level(0.0, wide, 1.0 - pen.arm))
