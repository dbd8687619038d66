"""Several lines of lettering as one shape, or one with large initials, fractions and superior letters; millimetres."""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.errors import LetteringError
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.point import ORIGIN, Point
from heraldry.lettering.alphabet import Alphabet, Figures
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.stack import Align, Fractions, Stacked, fit_into, set_stack, upright_stack
from heraldry.lettering.stack.box import SetStack
from heraldry.shapes.checks import positive
from heraldry.shapes.table import Drawn, Flag, Length, Lettering, Place, Text, shape
from heraldry.shapes.text import LONGEST_LINE
from heraldry.shapes.text_fitting import Initials, manner_of, with_stem_of

MOST_LINES = 40
"""More is a text, and no lettering."""


@dataclass(frozen=True)
class Box:
    """Room to be filled: the lettering is as large as `width` and `height` allow, and never below `floor`."""

    width: Length
    height: Length
    floor: Length


@shape
def lines(
    lines: Text,
    cap_height: Length | None = None,
    alphabet: Lettering | None = None,
    stem: Length | None = None,
    align: Align = "centre",
    leading: Length | None = None,
    width: Length | None = None,
    room: Box | None = None,
    tracking: Length = 0.0,
    initials: Initials | None = None,
    fractions: Fractions = "signs",
    superior_bar: Flag = True,
    figures: Figures = "proportional",
    upright: Flag = False,
    centre: Place = ORIGIN,
) -> Drawn:
    """Lines of lettering one over another (or, upright, letters), the middle of their ink at `centre`."""
    texts = _texts(lines)
    letters = alphabet or ours("gothic")
    manner = manner_of(initials, fractions, superior_bar, figures)

    def setting(in_alphabet: Alphabet, cap_mm: float) -> Stacked:
        thick = in_alphabet if stem is None else with_stem_of(in_alphabet, positive("stem", stem), cap_mm)
        if upright:
            return upright_stack(" ".join(texts), thick, cap_mm, None if leading is None else leading - cap_mm)
        return set_stack(texts, thick, cap_mm, align, leading, width, tracking, manner)

    return _centred(_sized(setting, letters, cap_height, room), centre)


def _sized(setting: SetStack, alphabet: Alphabet, cap_height: float | None, room: Box | None) -> Stacked:
    """Set at a cap height, or as large as a box allows."""
    if (cap_height is None) == (room is None):
        raise LetteringError(f"lines have a cap_height or a room, found {'neither' if room is None else 'both'}")
    if room is not None:
        return fit_into(setting, alphabet, room.width, room.height, room.floor).stack
    return setting(alphabet, positive("cap_height", cap_height or 0.0))


def _centred(stack: Stacked, centre: Point) -> Drawn:
    middle = bounds(stack.outline).centre
    home = Affine.move(centre.x - middle.x, centre.y - middle.y)
    return Drawn(stack.outline.transformed(home), notes=stack.notes)


def _texts(lines: str) -> list[str]:
    texts = [line.strip() for line in lines.strip().splitlines()]
    if not texts:
        raise LetteringError("lines of lettering have no letters")
    if len(texts) > MOST_LINES or any(len(line) > LONGEST_LINE for line in texts):
        raise LetteringError(
            f"lettering has at most {MOST_LINES} lines of {LONGEST_LINE} letters, "
            f"found {len(texts)}, the longest of {max(map(len, texts))}"
        )
    return texts
