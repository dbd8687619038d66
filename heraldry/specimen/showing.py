"""What a specimen shows: alphabets with what is said of each, and the name that they letter.

Of a road: its own alphabets first, in the order of its file, then ours.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields

from heraldry.describe.description import Description
from heraldry.errors import DescriptionError, LetteringError
from heraldry.lettering.alphabet import Alphabet
from heraldry.lettering.alphabets import LetterParameters, ParametricAlphabet
from heraldry.lettering.alphabets.parametric import in_runs
from heraldry.lettering.fonts import FontAlphabet
from heraldry.resolve.alphabets import alphabet_finder
from heraldry.resolve.identity import texts_of
from heraldry.resolve.ledger import Ledger
from heraldry.resolve.yardstick import Yardstick
from heraldry.shapes.text import LONGEST_LINE
from heraldry.specimen.catalogue import KEYS_OF_PARAMETERS, StyleEntry, style_entries
from heraldry.units import MILLIMETRES

USUAL_TITLE = "Alphabets"
USUAL_TEXT = "Granite, Timber & Coal 1891"
"""Shown where nobody has given a name: capitals and small letters, round, straight and slanting ones, figures."""
SHOWN_CHOICES = ("stem", "width")
"""What is said of a style at a glance."""


@dataclass(frozen=True, eq=False)
class Shown:
    """One alphabet, its name and what is said of it, a sentence a line."""

    name: str
    alphabet: Alphabet
    facts: tuple[str, ...]

    @property
    def stem(self) -> float | None:
        """Thickness of an upright in cap heights; None where there is none to measure."""
        return stem_of(self.alphabet)

    def lacking(self, text: str) -> tuple[str, ...]:
        """The letters of a text that the alphabet cannot set, sorted."""
        letters = sorted(set(text))
        if _sets(self.alphabet, "".join(letters)):
            return ()
        return tuple(letter for letter in letters if not _sets(self.alphabet, letter))


@dataclass(frozen=True, eq=False)
class Show:
    """What pages are made of: a title, the text that is lettered, the alphabets of a road, and those of ours."""

    title: str
    text: str
    of_road: tuple[Shown, ...]
    ours: tuple[Shown, ...]

    @property
    def alphabets(self) -> tuple[Shown, ...]:
        """All of them, the road's own first."""
        return self.of_road + self.ours


def show_of(road: Description | None = None, text: str | None = None) -> Show:
    """What to show of a road, or of our own alphabets alone; the text is the road's name unless one is given.

    Raises DescriptionError for a file that is no road and for alphabets of it that cannot be made, LetteringError
    for a text of no letters or too many.
    """
    ours = tuple(shown_style(entry) for entry in style_entries())
    if road is None:
        return Show(USUAL_TITLE, _checked(USUAL_TEXT if text is None else text), (), ours)
    if road.kind != "road":
        what = f"a specimen shows the alphabets of a road, this file is a {road.kind}"
        raise DescriptionError([road.fault(("kind",), what, "", 'name the road file, which says kind = "road"')])
    ledger = Ledger()
    name = texts_of(road, ledger).get("road.name", "")
    of_road = tuple(_alphabets_of(road, ledger))
    ledger.settle()
    return Show(name, _checked(name if text is None else text), of_road, ours)


def _checked(text: str) -> str:
    words = " ".join(text.split())
    if not words:
        raise LetteringError('a specimen letters a text, found none, write for example --text "Fern Hollow"')
    if len(words) > LONGEST_LINE:
        raise LetteringError(f"a specimen letters a name, found {len(words)} letters, at most {LONGEST_LINE} are set")
    return words


def _alphabets_of(road: Description, ledger: Ledger) -> Iterator[Shown]:
    find = alphabet_finder(road, Yardstick({}, MILLIMETRES))
    for name in road.store("alphabet"):
        with ledger.at(road, ("alphabet", name)):
            alphabet = find(name)
            yield Shown(name, alphabet, facts_of(alphabet))


def shown_style(entry: StyleEntry) -> Shown:
    """One of our styles as it is when nothing is asked of it."""
    alphabet = ParametricAlphabet(entry.style.name, entry.style, LetterParameters())
    return Shown(entry.style.name, alphabet, (entry.style.summary, *_ranges(entry)))


def _ranges(entry: StyleEntry) -> Iterator[str]:
    for key in SHOWN_CHOICES:
        choice = entry.choice(key)
        yield f"{key} {choice.default:.3g}, from {choice.least:.3g} to {choice.most:.3g}"


def facts_of(alphabet: Alphabet) -> tuple[str, ...]:
    """What an alphabet of a road is: a style with what was asked of it, or a font and its stem."""
    if isinstance(alphabet, ParametricAlphabet):
        return alphabet.style.name, ", ".join(_asked(alphabet))
    stem = stem_of(alphabet)
    return alphabet.name, *([] if stem is None else [f"stem {stem:.3g}"])


def _asked(alphabet: ParametricAlphabet) -> Iterator[str]:
    """Stem and width, and everything else that differs from the style's own."""
    usual = alphabet.style.completed(LetterParameters())
    for field in fields(LetterParameters):
        value, key = getattr(alphabet.parameters, field.name), KEYS_OF_PARAMETERS.get(field.name, field.name)
        if value is True:
            yield key
        elif key in SHOWN_CHOICES or value != getattr(usual, field.name):
            yield f"{key} {value:.3g}" if isinstance(value, float | int) else f"{key} {value}"


def stem_of(alphabet: Alphabet) -> float | None:
    """Thickness of an upright in cap heights; None for a font that has no H to measure it on."""
    if isinstance(alphabet, ParametricAlphabet):
        return alphabet.parameters.stem
    try:
        return alphabet.stem if isinstance(alphabet, FontAlphabet) else None
    except LetteringError:
        return None


def without(shown: Shown, letters: str) -> str:
    """In words, which letters an alphabet lacks; nothing where it has them all."""
    lacking = shown.lacking(letters)
    return f"without {in_runs(lacking)}" if lacking else ""


def _sets(alphabet: Alphabet, letter: str) -> bool:
    try:
        alphabet.set_line(letter, 1.0)
    except LetteringError:
        return False
    return True
