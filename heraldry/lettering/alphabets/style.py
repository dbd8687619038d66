"""A style: a family of letter shapes, the optical rules that make its pen, and the range in which it is sound."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields, replace

from heraldry.errors import LetteringError, SoundRangeError
from heraldry.lettering.alphabets.contour import Corner
from heraldry.lettering.alphabets.parameters import LetterParameters
from heraldry.lettering.alphabets.pen import Pen
from heraldry.lettering.alphabets.proportions import Proportions
from heraldry.lettering.alphabets.table import Letters

# Slack for ranges that are ratios such as 1:4.5, which no short decimal writes exactly.
RATIO_SLACK = 5e-4


@dataclass(frozen=True)
class Range:
    """From least to most, both allowed."""

    least: float
    most: float

    def __contains__(self, value: float) -> bool:
        return self.least - RATIO_SLACK <= value <= self.most + RATIO_SLACK

    def __str__(self) -> str:
        return f"{self.least:.3g} to {self.most:.3g}"


# What every style can be asked for: nearer, letters touch in print; farther, they are no longer read as words.
GAPS = {"letter_gap": Range(0.10, 0.8), "word_gap": Range(0.25, 2.0)}


@dataclass(frozen=True, eq=False)
class Style:
    """One entry of the table of alphabets.

    ``sound`` gives the range of each numeric parameter, in the units of ``LetterParameters``; a parameter that
    is not in it means nothing to the style. ``bar`` is given in stems there, since it is sound beside its stem.
    ``corners`` are those that can be asked for; a style whose rounds are always curves has none to choose.
    """

    name: str
    summary: str
    letters: Letters
    proportions: Proportions
    make_pen: Callable[[LetterParameters], Pen]
    sound: dict[str, Range]
    defaults: LetterParameters
    corners: tuple[Corner, ...] = ()

    def completed(self, asked: LetterParameters) -> LetterParameters:
        """The parameters with everything left open filled in; raises LetteringError for what is not sound."""
        given = {field.name: getattr(asked, field.name) for field in fields(asked)}
        chosen = replace(self.defaults, **{name: value for name, value in given.items() if value is not None})
        self._check_corner(asked.corner)
        for name in given:
            value = getattr(chosen, name)
            if isinstance(value, float | int) and not isinstance(value, bool):
                self._check(name, float(value), chosen)
        return chosen

    def range_of(self, name: str, chosen: LetterParameters) -> Range | None:
        """The sound range of a parameter beside the others chosen, in cap heights; None where it means nothing."""
        span = (GAPS | self.sound).get(name)
        stems = chosen.stem if name == "bar" and chosen.stem else 1.0
        return span and Range(span.least * stems, span.most * stems)

    def _check_corner(self, corner: Corner | None) -> None:
        if corner is not None and corner not in self.corners:
            has = f"its corners are {', '.join(self.corners)}" if self.corners else "it has no corners to choose"
            raise LetteringError(f"alphabet {self.name}: corner '{corner}' was asked, {has}")

    def _check(self, name: str, value: float, chosen: LetterParameters) -> None:
        span = self.range_of(name, chosen)
        if span is None:
            raise LetteringError(f"alphabet {self.name}: {name} {value:g} was asked, but it has no {name}")
        if value not in span:
            message = f"alphabet {self.name}: {name} {value:g} was asked, its sound range is {span}"
            raise SoundRangeError(message, span.least, span.most)
