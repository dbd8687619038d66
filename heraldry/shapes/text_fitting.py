"""A line of lettering as long as it is to be: by tracking, by the width of its letters, then by its size; millimetres.

Tracking goes as far as it looks well, then letters are drawn wider or narrower, their stems as they were. Where even
the narrowest are too long and a floor is named, the line becomes smaller, and never smaller than the floor.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from heraldry.errors import LetteringError, SoundRangeError
from heraldry.lettering.alphabet import Alphabet, Figures, SetLine
from heraldry.lettering.setting import fit_to_angle
from heraldry.lettering.setting.lay import ink_width
from heraldry.lettering.stack import Fractions, Level, Manner, composed, justified
from heraldry.shapes.checks import positive
from heraldry.shapes.table import Number
from heraldry.shapes.text_on_curves import Round

TOO_LONG_SHARE = 1e-6
"""A line longer than asked by less than this share is as long as asked."""

SIZE_ROUNDS = 6
"""A line shrinks nearly in step with its cap height: each round leaves a tenth of what is too long, or less."""


@dataclass(frozen=True)
class Initials:
    """The first letter of each word `times` as high as the others, their `level` common."""

    times: Number
    level: Level = "feet"


def manner_of(initials: Initials | None, fractions: Fractions, superior_bar: bool, figures: Figures) -> Manner:
    """How a line is composed, from the keys that say so."""
    plain = Manner(fractions=fractions, superior_bar=superior_bar, figures=figures)
    return plain if initials is None else replace(plain, large_initials=initials.times, level=initials.level)


def with_stem_of(alphabet: Alphabet, stem_mm: float, cap_mm: float) -> Alphabet:
    """An alphabet whose uprights are so thick at a cap height; raises LetteringError where it has none so thick."""
    try:
        return alphabet.with_stem(stem_mm / cap_mm)
    except SoundRangeError as error:
        raise LetteringError(
            f"alphabet {alphabet.name} has no stem of {stem_mm:g} mm at a cap height of {cap_mm:g} mm, "
            f"it may be {error.least * cap_mm:.3g} to {error.most * cap_mm:.3g} mm"
        ) from None


@dataclass(frozen=True)
class Wording:
    """What is lettered, and in what manner, whatever its size."""

    text: str
    alphabet: Alphabet
    stem_mm: float | None
    manner: Manner
    tracking_mm: float

    def at(self, cap_mm: float) -> Alphabet:
        """The alphabet at a cap height, its stems as thick as was asked."""
        return self.alphabet if self.stem_mm is None else with_stem_of(self.alphabet, self.stem_mm, cap_mm)

    def line(self, alphabet: Alphabet, cap_mm: float) -> SetLine:
        """The text set in an alphabet at a cap height."""
        return composed(self.text, alphabet, cap_mm, self.manner).tracked(self.tracking_mm)


@dataclass(frozen=True, eq=False)
class Fitted:
    """A line at its cap height; ``too_long`` is its length in that asked for, 1 or less where it fits."""

    line: SetLine
    cap_mm: float
    too_long: float = 1.0
    notes: tuple[str, ...] = ()


def fitted(
    wording: Wording, cap_mm: float, length_mm: float | None, circle: Round | None, floor_mm: float | None
) -> Fitted:
    """The line at a cap height, and as long as it is to be; raises LetteringError where it cannot be that small."""
    found = _fitted_at(wording, cap_mm, length_mm, circle)
    if floor_mm is None:
        return found
    for _ in range(SIZE_ROUNDS):
        if found.too_long <= 1.0 + TOO_LONG_SHARE or found.cap_mm <= floor_mm:
            break
        smaller = max(found.cap_mm / found.too_long, positive("floor", floor_mm))
        found = _fitted_at(wording, smaller, length_mm, circle)
    if found.too_long > 1.0 + TOO_LONG_SHARE:
        raise LetteringError(
            f"'{wording.text}' is {found.too_long:.3g} times as long as its room at the floor of {floor_mm:g} mm; "
            "give it more room or fewer letters"
        )
    return found


def _fitted_at(wording: Wording, cap_mm: float, length_mm: float | None, circle: Round | None) -> Fitted:
    alphabet = wording.at(cap_mm)

    def setting(in_alphabet: Alphabet) -> SetLine:
        return wording.line(in_alphabet, cap_mm)

    if circle is not None and circle.fit is not None:
        if length_mm is not None:
            raise LetteringError("a line is fitted to a length or, round a circle, to an angle, found fit twice")
        radius, angle = positive("radius", circle.radius), positive("round.fit", circle.fit)
        arc_mm = radius * math.radians(angle)
        wide = justified(setting, alphabet, arc_mm)
        turned = fit_to_angle(wide.line, radius, angle, circle.reads)
        is_loose = ink_width(wide.line) <= arc_mm * (1.0 + TOO_LONG_SHARE)  # what was said then still holds
        notes = turned.notes or (wide.notes if is_loose else ())
        return Fitted(turned.line, cap_mm, turned.reached / angle, notes)
    if length_mm is None:
        return Fitted(setting(alphabet), cap_mm)
    straight = justified(setting, alphabet, positive("fit", length_mm))
    return Fitted(straight.line, cap_mm, ink_width(straight.line) / length_mm, straight.notes)
