"""What a style of ours can be: a word at both ends of every number it takes, in its corners, as a stencil."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from heraldry.lettering.alphabets import LetterParameters, ParametricAlphabet
from heraldry.lettering.setting.lay import ink_width
from heraldry.pages.block import Block, beside
from heraldry.pages.flow import Entry
from heraldry.pages.paper import CAPTION_COLUMN_MM
from heraldry.pages.writing import CAPTION_LEADING_MM, caption, heading, sample
from heraldry.specimen.catalogue import Choice, StyleEntry
from heraldry.specimen.entry import COLUMN_GAP_MM, entry
from heraldry.specimen.showing import shown_style

LARGEST_CAP_MM = 5.0
MOST_LETTERS = 12
"""Letters of the word that shows the ends of a range: two of them stand side by side, at their widest too."""
USUAL_WORD = "Railroad"


@dataclass(frozen=True, eq=False)
class Variation:
    """One thing that can be asked of a style, and one or two alphabets that show it."""

    label: str
    alphabets: tuple[ParametricAlphabet, ...]


def what_it_can_be(style: StyleEntry, text: str, measure_mm: float) -> Entry:
    """A style of ours in all its variations, all in one size."""
    column_mm = measure_mm - CAPTION_COLUMN_MM
    half_mm = (column_mm - COLUMN_GAP_MM) / 2
    plain = ParametricAlphabet(style.style.name, style.style, LetterParameters())
    word = shown_word(style, text)
    rows = [Variation("", (plain,)), *variations(style, plain, word)]
    widest = max(ink_width(alphabet.set_line(word, 1.0)) for row in rows for alphabet in row.alphabets)
    cap_mm = min(LARGEST_CAP_MM, half_mm / widest)
    blocks = [_row(row, word, cap_mm, half_mm + COLUMN_GAP_MM) for row in rows]
    name = heading(style.style.name, CAPTION_COLUMN_MM - COLUMN_GAP_MM, base_at_mm=blocks[0].base_mm)
    return entry([beside((0.0, name), (0.0, blocks[0])), *blocks[1:]], measure_mm)


def shown_word(style: StyleEntry, text: str) -> str:
    """The longest word of a text that is not too long and that the style can letter."""
    known = shown_style(style)
    words = [word for word in text.split() if 1 < len(word) <= MOST_LETTERS and not known.lacking(word)]
    return max(words, key=len, default=USUAL_WORD)


def variations(style: StyleEntry, plain: ParametricAlphabet, word: str) -> Iterator[Variation]:
    """Everything that can be asked of a style and is to be seen in a word."""
    for choice in style.choices:
        ends = _ends(plain, choice)
        if not _alike(ends, word):
            yield Variation(f"{choice.key} {choice.least:.3g} and {choice.most:.3g}", ends)
    if style.corners:
        others = style.corners[1:]
        cornered = tuple(_asked(plain, corner=corner) for corner in others)
        yield Variation(f"corner {' and '.join(others)}", cornered)
    yield Variation("stencil", (_asked(plain, stencil=True),))


def _ends(plain: ParametricAlphabet, choice: Choice) -> tuple[ParametricAlphabet, ...]:
    return tuple(_asked(plain, **{choice.parameter: end}) for end in (choice.least, choice.most))


def _asked(plain: ParametricAlphabet, **parameters: object) -> ParametricAlphabet:
    return replace(plain, parameters=replace(plain.parameters, **parameters))  # type: ignore[arg-type]


def _alike(alphabets: Sequence[ParametricAlphabet], word: str) -> bool:
    first, last = (alphabet.set_line(word, 1.0).outline.data.tobytes() for alphabet in alphabets)
    return first == last


def _row(row: Variation, word: str, cap_mm: float, step_mm: float) -> Block:
    columns = [
        (CAPTION_COLUMN_MM + i * step_mm, sample(alphabet.set_line(word, cap_mm)))
        for i, alphabet in enumerate(row.alphabets)
    ]
    base_mm = columns[0][1].base_mm or CAPTION_LEADING_MM
    label = caption(row.label, CAPTION_COLUMN_MM - COLUMN_GAP_MM, base_at_mm=base_mm)
    return beside((0.0, label), *columns)
