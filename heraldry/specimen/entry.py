"""An entry of a specimen: one alphabet at a glance.

An entry is blocks that stay together on a page where they can. It opens with a hairline and the text as large as the
measure holds. Under it stand captions on the left and samples on the right: the letters in rows, and the text as large
as it will be on the model.
"""

from __future__ import annotations

import math
import unicodedata
from collections.abc import Sequence

from heraldry.lettering.alphabet import Alphabet
from heraldry.lettering.setting.lay import ink_width
from heraldry.pages.block import BLACK, GREY, HAIRLINE_MM, Block, beside, gap, rule, stacked
from heraldry.pages.flow import Entry
from heraldry.pages.paper import CAPTION_COLUMN_MM
from heraldry.pages.writing import (
    CAPTION_LEADING_MM,
    balanced,
    broken,
    caption,
    caption_line,
    heading,
    sample,
    samples,
)
from heraldry.specimen.showing import Shown, without
from heraldry.units import MM_PER_INCH, Scale

LETTER_ROWS = ("ABCDEFGHIJKLMNOPQRSTUVWXYZ", "abcdefghijklmnopqrstuvwxyz", "0123456789&")
COMMON_HEIGHTS_IN = (9, 7, 4)
"""Reporting marks, road numbers, data and ends of cars, full size; common practice, no source."""
LARGEST_DISPLAY_MM, SMALLEST_DISPLAY_MM = 13.0, 7.0
"""The text at the head of an entry: as large as the measure holds within these; below, it is broken into lines."""
MOST_DISPLAY_LINES, MOST_LINES_TO_SIZE = 3, 3
HIGHEST_TO_SIZE_MM = 60.0
"""A text at its true size that takes more of the page than this is told in words."""
MOST_NAMED_LETTERS = 4
LETTERS_CAP_MM, LETTERS_TRACKING_CAPS = 4.4, 0.16
"""Rows of letters are set open, so that each is seen alone."""
COLUMN_GAP_MM, ENTRY_GAP_MM = 5.0, 8.0
SIZE_TABS_MM = (0.0, 10.5, 25.0)
"""In a label of a size: full size, height of capitals on the model, stem there."""


def at_a_glance(shown: Shown, text: str, scale: Scale, measure_mm: float) -> Entry:
    """One alphabet: the text large, its letters, and the text at the size of models; in words where it cannot."""
    column_mm = measure_mm - CAPTION_COLUMN_MM
    letters = letter_rows(shown, column_mm)
    missing = shown.lacking(text)
    if missing:
        right = stacked([cannot_letter(missing, column_mm), gap(CAPTION_LEADING_MM / 2), letters])
        said = beside((0.0, captions(shown, right.base_mm)), (CAPTION_COLUMN_MM, right))
        return entry([gap(CAPTION_LEADING_MM), said], measure_mm)
    head = stacked([display(shown.alphabet, text, measure_mm), gap(CAPTION_LEADING_MM)])
    middle = beside((0.0, captions(shown, letters.base_mm)), (CAPTION_COLUMN_MM, letters))
    sizes = (at_size(shown, text, inches, scale, column_mm) for inches in COMMON_HEIGHTS_IN)
    return entry([head, middle, gap(CAPTION_LEADING_MM), *sizes], measure_mm)


def entry(blocks: Sequence[Block], measure_mm: float) -> Entry:
    """Blocks under a hairline, with white before the next entry."""
    first = stacked([rule(measure_mm, HAIRLINE_MM), blocks[0]])
    return (first, *blocks[1:], gap(ENTRY_GAP_MM))


def captions(shown: Shown, base_at_mm: float | None) -> Block:
    """The name of an alphabet, on the base line of what it stands beside, and what is said of it."""
    width_mm = CAPTION_COLUMN_MM - COLUMN_GAP_MM
    facts = [*shown.facts, without(shown, "".join(LETTER_ROWS))]
    name = heading(shown.name, width_mm, base_at_mm=base_at_mm or CAPTION_LEADING_MM)
    return stacked([name, *(caption(fact, width_mm) for fact in facts if fact)])


def cannot_letter(missing: Sequence[str], width_mm: float) -> Block:
    """In words, why an alphabet does not show the text."""
    return caption(f"cannot letter this name, without {letter_names(missing)}", width_mm, BLACK)


def letter_names(letters: Sequence[str]) -> str:
    """Letters by their numbers and names, as what says it may be unable to letter them too.

    >>> letter_names(["Ж"])
    'U+0416 (Cyrillic capital letter zhe)'
    """
    named = [
        f"U+{ord(letter):04X} ({unicodedata.name(letter, 'without a name').capitalize()})"
        for letter in letters[:MOST_NAMED_LETTERS]
    ]
    more = len(letters) - len(named)
    return ", ".join(named) + (f" and {more} more" if more else "")


def display(alphabet: Alphabet, text: str, width_mm: float) -> Block:
    """The text as large as the measure holds, on as few lines as keep it large."""
    lines, cap_mm = display_lines(alphabet, text, width_mm)
    return samples([alphabet.set_line(line, cap_mm) for line in lines])


def display_lines(alphabet: Alphabet, text: str, width_mm: float) -> tuple[list[str], float]:
    """How a text is broken for display, and its cap height: below the smallest only where words are so long."""
    words = text.split()
    widths = [ink_width(alphabet.set_line(word, 1.0)) for word in words]
    tried = []
    for count in range(1, min(MOST_DISPLAY_LINES, len(words)) + 1):
        lines = balanced(words, widths, count)
        widest = max(ink_width(alphabet.set_line(line, 1.0)) for line in lines)
        tried.append((lines, min(LARGEST_DISPLAY_MM, width_mm / widest)))
        if tried[-1][1] >= SMALLEST_DISPLAY_MM:
            return tried[-1]
    return max(tried, key=lambda one: one[1])


def letter_rows(shown: Shown, width_mm: float) -> Block:
    """Capitals, small letters and figures, as far as the alphabet has them."""
    lacking = shown.lacking("".join(LETTER_ROWS))
    rows = ["".join(letter for letter in row if letter not in lacking) for row in LETTER_ROWS]
    lines = [shown.alphabet.set_line(row, 1.0).tracked(LETTERS_TRACKING_CAPS) for row in rows if row]
    cap_mm = min([LETTERS_CAP_MM, *(width_mm / ink_width(line) for line in lines)])
    set_rows = [shown.alphabet.set_line(row, cap_mm).tracked(LETTERS_TRACKING_CAPS * cap_mm) for row in rows if row]
    return samples(set_rows) if set_rows else Block(0.0)


def at_size(shown: Shown, text: str, inches: int, scale: Scale, width_mm: float) -> Block:
    """The text as high as so many inches of the real thing are on the model, with its measures."""
    cap_mm = scale.model_mm(inches * MM_PER_INCH)
    lettering = to_size(shown.alphabet, text, cap_mm, width_mm)
    label = size_label(f"{inches} in", shown, cap_mm, lettering.base_mm)
    return beside((0.0, label), (CAPTION_COLUMN_MM, lettering))


def to_size(alphabet: Alphabet, text: str, cap_mm: float, width_mm: float) -> Block:
    """The text at its true size on a few lines; in words where it is too large for that."""
    too_large = caption("too large for this page", width_mm)

    def fits(line: str) -> bool:
        return ink_width(alphabet.set_line(line, cap_mm)) <= width_mm

    if not all(fits(word) for word in text.split()):
        return too_large
    lines = broken(text, fits)
    block = samples([alphabet.set_line(line, cap_mm) for line in lines])
    return block if len(lines) <= MOST_LINES_TO_SIZE and block.height_mm <= HIGHEST_TO_SIZE_MM else too_large


def millimetres(mm: float) -> str:
    """A height of capitals, to a hundredth, a half of it upward as on paper.

    >>> millimetres(2.625)
    '2.63 mm'
    """
    return f"{math.floor(mm * 100 + 0.5 + 1e-9) / 100:.2f} mm"


def size_label(size: str, shown: Shown, cap_mm: float, base_at_mm: float | None) -> Block:
    """What a line is at full size, how high its capitals are on the model and how thick its stems."""
    stem = shown.stem
    words = (size, millimetres(cap_mm), "" if stem is None else f"stem {stem * cap_mm:.2f}")
    columns = ((tab, word) for tab, word in zip(SIZE_TABS_MM, words, strict=True) if word)
    return beside(*((tab, sample(caption_line(word), GREY, base_at_mm)) for tab, word in columns))
