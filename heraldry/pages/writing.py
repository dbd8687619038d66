"""Text in blocks: captions in our own gothic, samples in any alphabet, long texts broken at their words.

Samples begin with their ink at the left edge, whatever the bearing of their first letter is.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import combinations, pairwise

from heraldry.artwork import Ink
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.point import ORIGIN
from heraldry.lettering.alphabet import Alphabet, SetLine
from heraldry.lettering.alphabets import LetterParameters
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.setting import straight
from heraldry.lettering.setting.lay import Anchor, ink_width
from heraldry.pages.block import BLACK, GREY, Block, Mark, stacked
from heraldry.pages.paper import up_to_grid

CAPTION_CAP_MM, CAPTION_LEADING_MM = 1.8, 4.0
"""Captions are as high as type of 7 points, on twice the grid."""
NAME_CAP_MM = 2.8
CAPTION_TRACKING_CAPS = 0.04
"""Small letters are set a trace more open."""
LEAST_AIR_MM, AIR_CAPS = 1.8, 0.8
"""White over the capitals of a sample: at least, and in cap heights."""
LEADING_CAPS, LEAST_WHITE_MM = 1.55, 0.8
"""From base line to base line of lines that belong together, and the white that is left between their ink."""
USUAL_SPACE_CAPS = 0.6
"""White between two words, near enough to see which way of breaking a text is the most even."""
HANGING_MM = 1.0
"""What may hang under a base line without more room being made; less than the least air of what follows."""

Fits = Callable[[str], bool]


def broken(text: str, fits: Fits) -> list[str]:
    """Lines of whole words, each as long as fits; a word that is too long for a line is cut between letters.

    >>> broken("one two three", lambda line: len(line) <= 7)
    ['one two', 'three']
    """
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and fits(longer):
            lines[-1] = longer
        else:
            lines.extend([word] if fits(word) else _cut(word, fits))
    return lines


def _cut(word: str, fits: Fits) -> list[str]:
    pieces = [word[0]]
    for letter in word[1:]:
        if fits(pieces[-1] + letter):
            pieces[-1] += letter
        else:
            pieces.append(letter)
    return pieces


def balanced(words: Sequence[str], widths: Sequence[float], count: int, space: float = USUAL_SPACE_CAPS) -> list[str]:
    """Words, of widths in cap heights, on so many lines, the longest of them as short as can be.

    >>> balanced(["a", "long", "way"], [1.0, 4.0, 3.0], 2)
    ['a long', 'way']
    """

    def longest(breaks: tuple[int, ...]) -> float:
        return max(sum(widths[a:b]) + space * (b - a - 1) for a, b in pairwise((0, *breaks, len(words))))

    best = min(combinations(range(1, len(words)), count - 1), key=longest)
    return [" ".join(words[a:b]) for a, b in pairwise((0, *best, len(words)))]


def sample(line: SetLine, ink: Ink = BLACK, base_at_mm: float | None = None) -> Block:
    """One line; its base line lies on the grid, with air over its capitals, or as low as it is told."""
    return _placed(line, ink, "start", 0.0, base_at_mm)


def _placed(line: SetLine, ink: Ink, anchor: Anchor, x_mm: float, base_at_mm: float | None) -> Block:
    outline = straight(line, ORIGIN, anchor).outline
    if outline.is_empty:
        return Block(CAPTION_LEADING_MM)
    box = bounds(outline)
    air = max(LEAST_AIR_MM, AIR_CAPS * line.cap_height_mm)
    drop = up_to_grid(max(box.top, line.cap_height_mm) + air) if base_at_mm is None else base_at_mm
    below = up_to_grid(max(-box.bottom - HANGING_MM, 0.0))
    return Block(drop + below, (Mark(ink, outline.transformed(Affine.move(x_mm, -drop))),), drop)


def samples(lines: Sequence[SetLine]) -> Block:
    """Lines of one size, one under another, all base lines equally far apart."""
    pitch = _pitch(lines)
    blocks: list[Block] = []
    for line in lines:
        hangs = blocks[-1].height_mm - (blocks[-1].base_mm or 0.0) if blocks else 0.0
        blocks.append(sample(line, base_at_mm=pitch - hangs if blocks else None))
    return stacked(blocks)


def _pitch(lines: Sequence[SetLine]) -> float:
    """From base line to base line, so that no line reaches into the next."""
    boxes = [bounds(line.outline) for line in lines if not line.outline.is_empty]
    nearest = max((next_.top - one.bottom for one, next_ in pairwise(boxes)), default=0.0)
    return up_to_grid(max(LEADING_CAPS * max(line.cap_height_mm for line in lines), nearest + LEAST_WHITE_MM))


# ---- captions


def _caption_alphabet(bold: bool) -> Alphabet:
    return ours("gothic", LetterParameters(stem=0.19 if bold else 0.14))


def lettered(text: str) -> str:
    """The text with blanks for what our gothic has no letter for, as some names of fonts and roads have it."""
    known = set(ours("gothic").characters)
    return " ".join("".join(sign if sign in known else " " for sign in text).split())


def caption_line(text: str, cap_mm: float = CAPTION_CAP_MM, bold: bool = False) -> SetLine:
    """A line of a caption, set but not placed."""
    line = _caption_alphabet(bold).set_line(lettered(text), cap_mm)
    return line if bold else line.tracked(CAPTION_TRACKING_CAPS * cap_mm)


def caption(text: str, width_mm: float, ink: Ink = GREY, base_at_mm: float | None = CAPTION_LEADING_MM) -> Block:
    """A caption of as many lines as it takes; its first base line may be lower than its leading."""
    lines = broken(lettered(text), lambda line: ink_width(caption_line(line)) <= width_mm)
    bases = [base_at_mm, *[CAPTION_LEADING_MM] * len(lines)]
    return stacked(sample(caption_line(line), ink, base) for line, base in zip(lines, bases, strict=False))


def heading(text: str, width_mm: float, cap_mm: float = NAME_CAP_MM, base_at_mm: float | None = None) -> Block:
    """A name in black, made smaller where it would not fit."""
    line = caption_line(text, cap_mm, bold=True)
    fitting = min(1.0, width_mm / max(ink_width(line), 1e-9))
    return sample(caption_line(text, cap_mm * fitting, bold=True), BLACK, base_at_mm)


def held_right(text: str, right_mm: float, base_at_mm: float) -> Block:
    """A caption that ends at a distance from the left."""
    return _placed(caption_line(text), GREY, "end", right_mm, base_at_mm)
