"""What each style of ours can be asked for: every parameter by the key a file writes, its default and sound range.

Lengths in cap heights. What a key means is said by the model of an alphabet's table, so that the schema, the list
of alphabets and the specimen say the same.
"""

from __future__ import annotations

from dataclasses import dataclass, fields

from heraldry.describe.models import AlphabetTable
from heraldry.lettering.alphabets import STYLES, LetterParameters, ParametricAlphabet, Style
from heraldry.lettering.alphabets.parametric import letter_gap, word_space
from heraldry.resolve.alphabets import PARAMETER_NAMES

KEYS_OF_PARAMETERS = {parameter: key for key, parameter in PARAMETER_NAMES.items()}


@dataclass(frozen=True)
class Choice:
    """A number that a style takes: its key, what it is when left out, and the range in which letters are sound."""

    key: str
    default: float
    least: float
    most: float
    about: str

    @property
    def parameter(self) -> str:
        """The name in ``LetterParameters``."""
        return PARAMETER_NAMES.get(self.key, self.key)


@dataclass(frozen=True)
class StyleEntry:
    """A style of ours with everything that can be asked of it; ``corners`` begins with the default."""

    style: Style
    choices: tuple[Choice, ...]
    corners: tuple[str, ...]

    def choice(self, key: str) -> Choice:
        """The choice of a key."""
        return next(choice for choice in self.choices if choice.key == key)


def style_entries() -> tuple[StyleEntry, ...]:
    """Every style of ours, in the order of the table of styles.

    >>> style_entries()[0].choice("width")
    Choice(key='width', default=1.0, least=0.55, most=1.8, about='1 is the usual width')
    """
    return tuple(style_entry(style) for style in STYLES.values())


def style_entry(style: Style) -> StyleEntry:
    """One style of ours."""
    usual = ParametricAlphabet(style.name, style, LetterParameters()).parameters
    found = (_choice(style, usual, field.name) for field in fields(LetterParameters))
    return StyleEntry(style, tuple(choice for choice in found if choice), _corners(style))


def _choice(style: Style, usual: LetterParameters, name: str) -> Choice | None:
    span = style.range_of(name, usual)
    if span is None:
        return None
    key = KEYS_OF_PARAMETERS.get(name, name)
    about = AlphabetTable.model_fields[key].description or ""
    return Choice(key, _default(style, usual, name), span.least, span.most, about)


def _default(style: Style, usual: LetterParameters, name: str) -> float:
    """A parameter of an alphabet that nobody asked for anything; some are left to the optical rules."""
    pen = style.make_pen(usual)
    by_rule = {
        "bar": pen.arm,
        "serif": pen.serif.reach,
        "bracket": pen.serif.bracket,
        "letter_gap": letter_gap(style, usual),
        "word_gap": word_space(style, usual) + letter_gap(style, usual),
    }
    value = getattr(usual, name)
    return float(by_rule[name] if value is None else value)


def _corners(style: Style) -> tuple[str, ...]:
    """The corners that a style can have, its own first; none where there is nothing to choose."""
    return tuple(sorted(style.corners, key=lambda corner: corner != style.defaults.corner))
