"""Our own alphabets as ``Alphabet``: letters drawn by code, spaced by their whites, kept once drawn.

Letters are drawn in cap heights and enlarged when a line is set, so that one drawing serves every size and a
stem is as thick as asked at all of them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from functools import lru_cache
from itertools import pairwise
from unicodedata import category

from heraldry.errors import LetteringError
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import EMPTY, Bounds, Outline
from heraldry.lettering.alphabet import Figures, SetGlyph, SetLine
from heraldry.lettering.alphabets.crumbs import without_crumbs
from heraldry.lettering.alphabets.parameters import LetterParameters
from heraldry.lettering.alphabets.pen import Pen
from heraldry.lettering.alphabets.stencil import bridged
from heraldry.lettering.alphabets.style import Style
from heraldry.lettering.alphabets.table import inked
from heraldry.lettering.spacing import Spacing

# White of a word space, in widths of H: a space as wide as the white inside H holds words apart in capitals.
WORD_SPACE_OF_H = 0.44

SPACES = " \N{NO-BREAK SPACE}"
FIGURES = "0123456789"

# Alphabets whose kerning is remembered at once, and letters drawn: a job uses a few alphabets, fitting a line by
# its width some dozen more.
ALPHABETS_KEPT = 128
LETTERS_KEPT = 8192


@dataclass(frozen=True, eq=False)
class Glyph:
    """One letter about its own origin, in cap heights."""

    outline: Outline
    advance: float


@dataclass(frozen=True)
class ParametricAlphabet:
    """A style at one set of parameters; raises LetteringError for parameters that are not sound for it."""

    name: str
    style: Style
    parameters: LetterParameters = field(default_factory=LetterParameters)

    def __post_init__(self) -> None:
        object.__setattr__(self, "parameters", self.style.completed(self.parameters))
        if word_space(self.style, self.parameters) <= 0.0:
            raise LetteringError(
                f"alphabet {self.name}: word_gap {self.parameters.word_gap:g} holds no words apart, its letters "
                f"are {letter_gap(self.style, self.parameters):.3g} apart already"
            )

    @property
    def characters(self) -> str:
        """All letters there are, in order of their code points."""
        return "".join(sorted(self.style.letters))

    def with_stem(self, stem: float) -> ParametricAlphabet:
        """The same alphabet with uprights of another thickness, in cap heights; LetteringError out of range."""
        return replace(self, parameters=replace(self.parameters, stem=stem))

    def widened(self, factor: float) -> ParametricAlphabet:
        """The same alphabet, ``factor`` times as wide as it is now; LetteringError out of range."""
        return replace(self, parameters=replace(self.parameters, width=self.parameters.width * factor))

    def set_line(self, text: str, cap_height_mm: float, figures: Figures = "proportional") -> SetLine:
        """Set one line of text, kerned, at a cap height; raises LetteringError for a missing letter."""
        self._require(text)
        enlarge = Affine.scale(cap_height_mm)
        lean = enlarge @ Affine.slant(self.parameters.slant_deg)
        glyphs: list[SetGlyph] = []
        place = 0.0
        for character, kern in zip(text, [*self._kerning(text, figures), 0.0], strict=True):
            glyph = self._glyph(character, figures)
            x, advance = place * cap_height_mm, glyph.advance * cap_height_mm
            glyphs.append(SetGlyph(character, glyph.outline.transformed(lean), x, advance))
            place += glyph.advance + kern
        return SetLine(tuple(glyphs), place * cap_height_mm, cap_height_mm)

    def _glyph(self, character: str, figures: Figures) -> Glyph:
        if figures == "tabular" and character in FIGURES:
            return tabular_figure(self.style, self.parameters, character)
        return drawn(self.style, self.parameters, character)

    def _kerning(self, text: str, figures: Figures) -> list[float]:
        """What stands between each two letters besides their whites; tabular figures keep their columns."""
        pairs = spacing(self.style, self.parameters)
        return [
            0.0 if figures == "tabular" and one in FIGURES and other in FIGURES else pairs.kern(one, other)
            for one, other in pairwise(text)
        ]

    def _require(self, text: str) -> None:
        missing = sorted(set(text) - set(self.style.letters) - set(SPACES))
        if missing:
            names = ", ".join(f"'{character}' (U+{ord(character):04X})" for character in missing)
            plain = [letter for letter in self.style.letters if letter.isascii()]
            more = len(self.style.letters) - len(plain)
            has = f"it has {in_runs(plain)} and {more} more letters and signs of the Latin script"
            raise LetteringError(f"alphabet {self.name} has no letter {names}; {has}")


def in_runs(characters: Iterable[str]) -> str:
    """Characters in order; runs of three and more of one Unicode category are shortened.

    >>> in_runs("CBA012+")
    '+ 0–2 A–C'
    """
    runs: list[list[str]] = []
    for character in sorted(characters):
        if runs and _follows(runs[-1][-1], character):
            runs[-1].append(character)
        else:
            runs.append([character])
    return " ".join(f"{run[0]}–{run[-1]}" if len(run) > 2 else " ".join(run) for run in runs)


def _follows(one: str, other: str) -> bool:
    return ord(other) == ord(one) + 1 and category(other) == category(one)


@lru_cache(maxsize=LETTERS_KEPT)
def drawn(style: Style, parameters: LetterParameters, character: str) -> Glyph:
    """A letter with its whites, upright, in cap heights; ``parameters`` are complete."""
    stem, width = _measure(parameters)
    if character in SPACES:
        return Glyph(EMPTY, word_space(style, parameters))
    entry = style.letters[character]
    outline, box = shape(style, parameters, character)
    if entry.spaced_as != character:
        box = shape(style, parameters, entry.spaced_as)[1]
    drawn_in, added = _spaced(style, parameters)
    left, right = (white * drawn_in + added for white in style.proportions.whites(entry.spaced_as, stem, width))
    return Glyph(outline.transformed(Affine.move(left - box.left, 0.0)), left + box.width + right)


def letter_gap(style: Style, parameters: LetterParameters) -> float:
    """White between two H: as asked, or the style's own."""
    return parameters.letter_gap or 2.0 * style.proportions.white_of_h(*_measure(parameters))


def _spaced(style: Style, parameters: LetterParameters) -> tuple[float, float]:
    """How much of the whites is left and what is added to each: letters close up in proportion, and open evenly."""
    own, asked = letter_gap(style, replace(parameters, letter_gap=None)), letter_gap(style, parameters)
    return min(asked / own, 1.0), max(asked - own, 0.0) / 2.0


def word_space(style: Style, parameters: LetterParameters) -> float:
    """Advance of the space between two words, which has the whites of their last and first letter beside it."""
    if parameters.word_gap is None:
        return WORD_SPACE_OF_H * style.proportions.wide_of_h(*_measure(parameters))
    return parameters.word_gap - letter_gap(style, parameters)


@lru_cache(maxsize=LETTERS_KEPT)
def shape(style: Style, parameters: LetterParameters, character: str) -> tuple[Outline, Bounds]:
    """A letter's outline as it was drawn, and the box round its ink, in cap heights."""
    outline = inked(style.letters[character].draw, pen_of(style, parameters))
    if parameters.stencil:
        outline = bridged(outline, _measure(parameters)[0])
    outline = without_crumbs(outline)
    return outline, bounds(outline)


@lru_cache(maxsize=ALPHABETS_KEPT)
def pen_of(style: Style, parameters: LetterParameters) -> Pen:
    """The pen of an alphabet: one and the same for all its letters, which share drawings by it."""
    return style.make_pen(parameters)


@lru_cache(maxsize=LETTERS_KEPT)
def tabular_figure(style: Style, parameters: LetterParameters, figure: str) -> Glyph:
    """A figure in the middle of the advance that all figures share: that of 0."""
    advance = drawn(style, parameters, "0").advance
    outline, box = shape(style, parameters, figure)
    return Glyph(outline.transformed(Affine.move((advance - box.width) / 2.0 - box.left, 0.0)), advance)


@lru_cache(maxsize=ALPHABETS_KEPT)
def spacing(style: Style, parameters: LetterParameters) -> Spacing:
    """The optical kerning of an alphabet."""

    def draw(character: str) -> tuple[Outline, float]:
        glyph = drawn(style, parameters, character)
        return glyph.outline, glyph.advance

    return Spacing(draw, 1.0)


def _measure(parameters: LetterParameters) -> tuple[float, float]:
    if parameters.stem is None:
        raise ValueError("letters are drawn from completed parameters")
    return parameters.stem, parameters.width
