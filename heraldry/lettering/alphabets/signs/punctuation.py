"""Points, quotes, dashes and brackets."""

from __future__ import annotations

from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.contour import Bend, Knot, ball, bent, polygon, rectangle
from heraldry.lettering.alphabets.gothic.figures import hook_bend, hook_inside
from heraldry.lettering.alphabets.hook_end import HookEnd, balls
from heraldry.lettering.alphabets.ink import cut, join, mirrored, moved, turned
from heraldry.lettering.alphabets.pen import CHAMFER, Pen, slope_width
from heraldry.lettering.alphabets.signs.table import sign
from heraldry.lettering.alphabets.table import inked

FAR = 2.0

# A full stop is a trace wider than a stem, or it looks lost beside one.
POINT_OF_STEM = 1.08

# Inside the hook of ? stands at least this much white, in stems.
LEAST_WHITE_OF_HOOK = 0.45

# Height at which the hook of ? turns down into its stem.
NECK_OF_QUESTION = 0.40

# So much higher its outer edge turns up again, when it is a curve: the hook thins on its way down.
RISE_OF_NECK = 0.09

# Height of dashes: the middle of the capitals, since capitals and figures are what they join.
DASH_HEIGHT = 0.49

# Height of the low line: under the base line, where no letter but a descender is.
LOW_LINE_HEIGHT = -0.14

# From foot to head of brackets: they reach as far past the capitals below as descenders do, a little above.
BRACKET_FOOT, BRACKET_HEAD = -0.20, 1.08


def point(pen: Pen, left: float, bottom: float, size: float | None = None) -> Outline:
    """The point of stop, colon and the dotted letters: square, or round where the pen makes it so."""
    size = pen.stem * POINT_OF_STEM if size is None else size
    if pen.round_points:
        return ball(left, bottom, size)
    return rectangle(left, bottom, left + size, bottom + size)


def comma(pen: Pen, left: float, bottom: float) -> Outline:
    """A point whose right side runs down into a tail."""
    return moved(inked(_comma, pen), left, bottom)


def _comma(pen: Pen) -> Outline:
    size = pen.stem * POINT_OF_STEM
    root = size / 2.0 if pen.round_points else 0.0
    tail = polygon((size * 0.40, root), (size, root), (size * 0.62, -size * 0.78), (size * 0.10, -size * 0.78))
    return join(point(pen, 0.0, 0.0), tail)


@sign(".")
def draw_stop(pen: Pen) -> Outline:
    """A point on the base line."""
    return point(pen, 0.0, 0.0)


@sign(",")
def draw_comma(pen: Pen) -> Outline:
    """A point with a tail."""
    return comma(pen, 0.0, 0.0)


@sign(":")
def draw_colon(pen: Pen) -> Outline:
    """Two points, between the base line and the x-line."""
    return join(point(pen, 0.0, 0.0), point(pen, 0.0, upper_point(pen)))


def upper_point(pen: Pen) -> float:
    """Height of the upper point of colon and semicolon."""
    return pen.x_height - pen.stem * POINT_OF_STEM


@sign(";")
def draw_semicolon(pen: Pen) -> Outline:
    """A comma and a point."""
    return join(comma(pen, 0.0, 0.0), point(pen, 0.0, upper_point(pen)))


@sign("·")
def draw_middle_dot(pen: Pen) -> Outline:
    """A point in the middle of the height."""
    return point(pen, 0.0, DASH_HEIGHT - pen.stem * POINT_OF_STEM / 2.0)


@sign("'")
def draw_apostrophe(pen: Pen) -> Outline:
    """A wedge hung from the cap line."""
    return wedge(pen, 0.0)


@sign('"')
def draw_inches(pen: Pen) -> Outline:
    """Two wedges."""
    return join(wedge(pen, 0.0), wedge(pen, pen.stem * 1.02 + quote_white(pen)))


def wedge(pen: Pen, left: float) -> Outline:
    """The upright mark of apostrophe and inches."""
    size = pen.stem * 1.02
    return pen.slope(left + size * 0.14, size * 0.72, left, size, 0.665, 1.0)


def quote_white(pen: Pen) -> float:
    """White between the two halves of a double mark."""
    return max(pen.stem * 0.55, 0.075)


@sign("’")
def draw_quote(pen: Pen) -> Outline:
    """A comma raised to the cap line."""
    return comma(pen, 0.0, 1.0 - pen.stem * POINT_OF_STEM)


@sign("‘")
def draw_opening_quote(pen: Pen) -> Outline:
    """The raised comma upside down."""
    size = pen.stem * POINT_OF_STEM
    return turned(draw_quote(pen), size / 2.0, 1.0 - size * 0.89)


@sign("”")
def draw_double_quote(pen: Pen) -> Outline:
    """Two raised commas."""
    return doubled(pen, draw_quote(pen))


@sign("“")
def draw_double_opening_quote(pen: Pen) -> Outline:
    """Two raised commas upside down."""
    return doubled(pen, draw_opening_quote(pen))


@sign("„", spaced_as="”")
def draw_low_quote(pen: Pen) -> Outline:
    """Two commas on the base line."""
    return doubled(pen, comma(pen, 0.0, 0.0))


def doubled(pen: Pen, mark: Outline) -> Outline:
    """A mark and its twin."""
    return join(mark, moved(mark, pen.stem * POINT_OF_STEM + quote_white(pen)))


@sign("-")
def draw_hyphen(pen: Pen) -> Outline:
    """A short bar."""
    return dash(pen, pen.wide("-") * 0.92)


@sign("–")
def draw_dash(pen: Pen) -> Outline:
    """A bar as long as a figure is wide."""
    return dash(pen, pen.wide("–"))


@sign("—")
def draw_long_dash(pen: Pen) -> Outline:
    """A bar longer than any letter."""
    return dash(pen, pen.wide("—"))


@sign("_", spaced_as="–")
def draw_low_line(pen: Pen) -> Outline:
    """A bar under the base line, as names in files have it."""
    return dash(pen, pen.wide("–"), LOW_LINE_HEIGHT)


def dash(pen: Pen, wide: float, height: float = DASH_HEIGHT) -> Outline:
    """A bar about a height, that of the middle of the capitals unless another is said."""
    return pen.level(0.0, wide, height - pen.dash / 2.0, pen.dash)


@sign("/")
def draw_slash(pen: Pen) -> Outline:
    """A thin stroke from below the base line to above the cap line."""
    wide = pen.wide("/")
    across = slope_width(wide, 1.12, pen.stem * 0.72)
    return pen.slope(0.0, across, wide - across, across, -0.06, 1.06)


@sign("(")
def draw_bracket(pen: Pen) -> Outline:
    """The left end of a tall ring."""
    wide = pen.wide("(")
    side, level = pen.side * 0.92, pen.crown * 0.8
    ring = pen.bowl(
        0.0, BRACKET_FOOT, max(wide * 2.7, side * 4.0), BRACKET_HEAD, sides=(side, side), levels=(level, level)
    )
    return cut(ring, rectangle(wide, -FAR, FAR, FAR))


@sign(")")
def draw_closing_bracket(pen: Pen) -> Outline:
    """The bracket in a mirror."""
    return mirrored(draw_bracket(pen), pen.wide("(") / 2.0)


@sign("!")
def draw_exclamation(pen: Pen) -> Outline:
    """A wedge over a point."""
    size = pen.stem * POINT_OF_STEM
    foot = size + max(0.10, pen.stem * 0.55)
    return join(point(pen, 0.0, 0.0), pen.slope(size * 0.16, size * 0.68, 0.0, size, foot, 1.0))


@sign("¡", spaced_as="!")
def draw_opening_exclamation(pen: Pen) -> Outline:
    """The same upside down, hung from the x-line."""
    return turned(draw_exclamation(pen), pen.stem * POINT_OF_STEM / 2.0, pen.x_height / 2.0)


@sign("?")
def draw_question(pen: Pen) -> Outline:
    """A hook that turns down into a stem, over a point."""
    side, size = pen.side * 0.97, pen.stem * POINT_OF_STEM
    tip = side * pen.ending
    wide = max(pen.wide("?"), side + max(pen.serif.ball, tip) + pen.stem * LEAST_WHITE_OF_HOOK)
    thick = max(pen.hair, pen.stem * 0.5)
    left, end = (wide - thick) / 2.0, 0.5 + pen.opening * 0.5
    hook = question_hook(pen, wide, left, thick, end)
    return join(hook, point(pen, left + (thick - size) / 2.0, 0.0), *balls(pen, HookEnd(0.0, False, end)))


def question_hook(pen: Pen, wide: float, left: float, thick: float, end: float) -> Outline:
    """The hook of ? with its stem at ``left``; its open end is cut at the height ``end``."""
    side, top, roof = pen.side * 0.97, 1.0 + pen.over, 1.0 + pen.over - pen.crown
    tip, foot = side * pen.ending, pen.stem * POINT_OF_STEM + max(0.09, pen.stem * 0.5)
    under, over = NECK_OF_QUESTION, NECK_OF_QUESTION + max(pen.crown, thick * 0.8)
    outside = hook_bend(pen, wide, top - under)
    inside = hook_inside(pen, outside, side, wide - side - tip, roof - over)
    shoulder = under + RISE_OF_NECK if pen.corner == "round" else under
    outer, inner = _neck(pen, wide - left - thick, under - foot), _neck(pen, wide - side - left, under - foot)
    knots = (
        Knot(left, foot), Knot(left + thick, foot), Knot.upright_first(left + thick, under, outer),
        Knot(wide, shoulder, outer.across, (top - shoulder) - outside.along if pen.corner == "round" else outer.along),
        Knot.upright_first(wide, top, outside),
        Knot.level_first(0.0, top, pen.hook_end(outside, top - end), cut=end),
        Knot.upright_first(tip, roof, pen.hook_end(inside, top - end, pen.crown), cut=end),
        Knot.level_first(wide - side, roof, inside),
        Knot(wide - side, over, (roof - over) - inside.along if pen.corner == "round" else inner.along, inner.across),
        Knot.level_first(left, over, inner),
    )  # fmt: skip
    return Outline.of([bent(knots, pen.corner)])


def _neck(pen: Pen, run: float, rise: float) -> Bend:
    """The bend in which the hook of ? turns down: half of the way, or a small chamfer."""
    if pen.corner == "round":
        return Bend(run / 2.0, rise * 0.8)
    chamfer = min(run / 2.0, rise / 2.0, CHAMFER / 2.0)
    return Bend(chamfer, chamfer)


@sign("¿", spaced_as="?")
def draw_opening_question(pen: Pen) -> Outline:
    """The same upside down, hung from the x-line."""
    question = draw_question(pen)
    return turned(question, bounds(question).centre.x, pen.x_height / 2.0)


@sign("«")
def draw_guillemets(pen: Pen) -> Outline:
    """Two angles that point to the left."""
    wide, stroke = pen.wide("«"), pen.stem * 0.80
    step = wide * 0.5
    angle = chevron(stroke, step * 0.92, 0.14, 0.60)
    return join(angle, moved(angle, step))


@sign("»")
def draw_closing_guillemets(pen: Pen) -> Outline:
    """The same in a mirror."""
    return mirrored(draw_guillemets(pen), pen.wide("«") / 2.0)


def chevron(stroke: float, wide: float, bottom: float, top: float) -> Outline:
    """An angle that points to the left."""
    middle, across = (bottom + top) / 2.0, slope_width(wide, (top - bottom) / 2.0, stroke)
    back = wide - across
    knots = [(0.0, middle), (back, bottom), (wide, bottom), (across, middle), (wide, top), (back, top)]
    return Outline.of([bent([Knot(x, y) for x, y in knots], "square")])
