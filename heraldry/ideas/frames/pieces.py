"""Pieces that several frames are made of: lined plates and discs, boards with the name, the second line."""

from __future__ import annotations

from heraldry.ideas.fields import Field
from heraldry.ideas.hands import fitted
from heraldry.ideas.kit import Kit, level_line, stack
from heraldry.ideas.sketch import NOTHING, Part, Tone, art, one, share

NAME_CAP = 0.11
"""The highest a name on one line becomes in most frames."""
LOWEST_ON_BOARD, BOARD_ROOM = 0.07, 0.9
"""A name on a board is broken into two lines where one would be lower, and fills so much of the board's length."""
TWO_ON_BOARD = 0.15
"""How high two lines on a board are together."""


def lined(name: str, tone: Tone) -> Part:
    """A hidden shape drawn as a plate with a light line let into it, near its edge."""
    return art(f"edge({name}, fine)", tone) + art(f"inset({name}, fine * 2)", tone)


def lined_disc(kit: Kit, radius: float) -> Part:
    """A disc in the first ink with a light line let into it, near its rim."""
    rim = one("rim", "first", ring=share(radius), width="fine")
    return rim + one("disc", "first", circle=share(radius - 2 * kit.fine))


def lines_for(kit: Kit, wide: float, lowest: float) -> int:
    """On how many lines a name stands: on two where it would be lower than the lowest on one."""
    return 2 if fitted(kit.title, kit.words.body, NAME_CAP, wide).cap < lowest else 1


def board_across(kit: Kit, tall: float, tone: Tone, over: Tone, one_line: float) -> tuple[Part, int]:
    """A board the whole width with the name on it, and white above and below it; and on how many lines it stands.

    ``one_line`` is how high the name may be on one.
    """
    margin = one("margin", "bare", over, box="width", height=share(tall + 2 * kit.fine))
    board = one("board", tone, box="width", height=share(tall))
    count = lines_for(kit, BOARD_ROOM, LOWEST_ON_BOARD)
    box = (0.0, 0.0, BOARD_ROOM, one_line if count == 1 else TWO_ON_BOARD)
    name, _ = stack("name", kit.words.lines(count), kit.title, "bare", tone, box)
    return margin + board + name, count


def second_line(kit: Kit, field: Field, cap: float, longest: float, wished: float, y: float) -> Part:
    """What stands second, in bare film on the first ink; nothing where it would repeat the initials of the field."""
    if field.says_initials and kit.words.second == kit.words.initials:
        return NOTHING
    line = fitted(kit.title, kit.words.second, cap, longest, wished)
    return level_line("second", line, "bare", "first", 0.0, y)
