"""A monogram of initials: arranged in a style, enclosed in a frame, brought to its height; millimetres."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from heraldry.errors import LetteringError, nearest
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabet import Alphabet
from heraldry.lettering.monogram.arrangements import ARRANGEMENTS, Style
from heraldry.lettering.monogram.crossings import interlaced
from heraldry.lettering.monogram.frames import FRAME, FrameName
from heraldry.lettering.monogram.hand import Hand, Letters
from heraldry.lettering.monogram.interlacing import Layout, laid_out

MOST_INITIALS = 4
"""More initials are a word, and no monogram."""

GAP_OF_STEM = 0.5
"""The gap at a crossing in stems: narrower prints badly, wider takes letters apart. Common practice, no source."""

AIR_OF_GAP = 1.6
"""The white between letters and frame, in gaps."""

ENCLOSED_ASPECT = 1.2
"""Letters in a frame are narrowed until together they are at most so many times as wide as high: merely made smaller, a
row of them would leave a frame half empty."""

NARROWEST = 0.7
"""And no narrower than so many times their width, lest they look squeezed. Both common practice, no source."""

SHARE_DIGITS = 9
"""Stems and gaps in cap heights that are alike to so many digits are the same."""

LAYOUTS = 2
"""Interlaced letters are laid out so often at most, for two cap heights."""

ROUNDS = 8
"""A cap height is corrected in so many rounds at most. Letters grow in step with it but for their stems and gaps, so
that each round leaves a tenth of the error or less."""

SCALED_AWAY = 1e-3
"""What is left of the error when it is below this is scaled away, stems and all: a stem loses a tenth of a per cent."""


@dataclass(frozen=True, eq=False)
class Monogram:
    """The letters, apart where they cross, and the frame round them; the middle lies at the origin."""

    letters: Letters
    frame: Outline

    @property
    def outline(self) -> Outline:
        """Letters and frame together; they nowhere touch."""
        return Outline.gather([*self.letters, self.frame])


def monogram(
    initials: Sequence[str],
    alphabet: Alphabet,
    height_mm: float,
    style: Style = "interlaced",
    frame: FrameName = "none",
    gap_mm: float | None = None,
    stem_mm: float | None = None,
) -> Monogram:
    """Initials as one sign, ``height_mm`` high with its frame.

    Every stroke has the same stem, which the style chooses unless one is asked for, and so has the frame's line; where
    the alphabet does not go so far its stem is the nearest it has. The gap is half a stem unless told otherwise.

    Raises LetteringError for more initials than the style takes, for an unknown style or frame, and where stem and
    gap leave no room for letters.
    """
    _check(initials, height_mm, style, frame)
    arrangement, enclosed = ARRANGEMENTS[style], FRAME[frame]
    woven = arrangement.place is None
    cap, wide, free = height_mm, 1.0, enclosed.room(height_mm, 0.0, 0.0)
    arranged = _Arranged(style, initials, alphabet)
    for turn in range(ROUNDS):
        stem = arrangement.stem_caps * cap if stem_mm is None else stem_mm
        gap = stem * GAP_OF_STEM if gap_mm is None else gap_mm
        letters = arranged.letters(cap, stem, gap, wide)
        room = enclosed.room(height_mm, stem, AIR_OF_GAP * gap)
        if not room > 0:
            raise LetteringError(f"a {frame} of {stem:g} mm and its gap leave no room in {height_mm:g} mm")
        reach = enclosed.reach(Outline.gather(letters))
        ratio = room / reach
        if turn == 0 and frame != "none" and not woven:
            wide = _narrowed(letters)
        elif abs(ratio - 1.0) < SCALED_AWAY:
            break
        cap *= free / (reach + free - room) if stem_mm is None else ratio  # line and air grow with the stem, if it does
    apart = interlaced(letters, gap, stem) if woven else letters
    return Monogram(tuple(letter.transformed(Affine.scale(ratio)) for letter in apart), enclosed.draw(height_mm, stem))


class _Arranged:
    """Letters of one size after another: with stem and gap in step they are arranged once, and then scaled.

    Where they are not in step interlaced letters are laid out anew for the second size, which is nearly the last, and
    then keep their places, lest they jump to and fro.
    """

    def __init__(self, style: Style, initials: Sequence[str], alphabet: Alphabet) -> None:
        self._style, self._initials, self._alphabet = style, initials, alphabet
        self._known: dict[tuple[float, float, float], Letters] = {}
        self._layouts: list[Layout] = []

    def letters(self, cap_mm: float, stem_mm: float, gap_mm: float, wide: float) -> Letters:
        """The letters at a cap height, about the origin."""
        stem, gap = round(stem_mm / cap_mm, SHARE_DIGITS), round(gap_mm / cap_mm, SHARE_DIGITS)
        if (stem, gap, wide) not in self._known:
            self._known[stem, gap, wide] = _centred(self._placed(Hand(self._alphabet, stem, wide), gap))
        return tuple(letter.transformed(Affine.scale(cap_mm)) for letter in self._known[stem, gap, wide])

    def _placed(self, hand: Hand, gap: float) -> Letters:
        place = ARRANGEMENTS[self._style].place
        if place is not None:
            return place(self._initials, hand, 1.0, gap)
        if len(self._layouts) < LAYOUTS:
            self._layouts.append(laid_out(self._initials, hand, gap))
        return tuple(spot.drawn(hand, 1.0) for spot in self._layouts[-1])


def _check(initials: Sequence[str], height_mm: float, style: str, frame: str) -> None:
    if not height_mm > 0:
        raise LetteringError(f"a monogram's height is {height_mm:g} mm, it must be more than 0")
    if not 1 <= len(initials) <= MOST_INITIALS:
        raise LetteringError(f"a monogram has 1 to {MOST_INITIALS} initials, found {len(initials)}")
    if style not in ARRANGEMENTS:
        raise LetteringError(f"no style of monogram is called '{style}', {nearest(style, ARRANGEMENTS)}")
    if frame not in FRAME:
        raise LetteringError(f"no frame of a monogram is called '{frame}', {nearest(frame, FRAME)}")


def _narrowed(letters: Letters) -> float:
    """How many times as wide letters are drawn that they may be high in a frame about as high as wide.

    Interlaced letters are not narrowed: they are compact, and need the room to cross."""
    box = bounds(Outline.gather(letters))
    return min(max(ENCLOSED_ASPECT * box.height / box.width, NARROWEST), 1.0)


def _centred(letters: Letters) -> Letters:
    middle = bounds(Outline.gather(letters)).centre
    return tuple(letter.transformed(Affine.move(-middle.x, -middle.y)) for letter in letters)
