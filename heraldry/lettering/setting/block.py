"""Many letters held as one outline, so that a whole line is moved, bent and measured in one numpy call."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import ARC, Outline
from heraldry.lettering.alphabet import SetLine


@dataclass(frozen=True, eq=False)
class Block:
    """Letters in order: all their rings gathered, and how many of the rings belong to each letter."""

    outline: Outline
    ring_counts: tuple[int, ...]

    @staticmethod
    def of(letters: Iterable[Outline]) -> Block:
        """Letters as they are; one without ink has no rings."""
        known = tuple(letters)
        return Block(Outline.gather(known), tuple(len(letter.rings) - 1 for letter in known))

    @staticmethod
    def straight(line: SetLine) -> Block:
        """A set line on its own straight base line."""
        frames = [Affine.move(glyph.x_mm, glyph.y_mm) for glyph in line.glyphs]
        return Block.of(glyph.outline for glyph in line.glyphs).framed(frames)

    def framed(self, frames: Sequence[Affine]) -> Block:
        """Each letter moved and turned by a frame of its own; frames keep sizes and do not mirror."""
        if self.outline.is_empty:
            return self
        each = np.array([(f.a, f.b, f.c, f.d, f.e, f.f) for f in frames])
        a, b, c, d, e, f = each[self._letter_of_segment].T[:, :, None]
        source = self.outline.data
        x, y = source[..., 0], source[..., 1]
        data = np.stack((a * x + c * y + e, b * x + d * y + f), axis=-1)
        arcs = self.outline.kinds == ARC
        data[arcs, 2] = source[arcs, 2]  # radius and sweep, which frames keep
        return Block(Outline(self.outline.kinds, data, self.outline.rings), self.ring_counts)

    @cached_property
    def letters(self) -> tuple[Outline, ...]:
        """One outline a letter, empty where it has no ink."""
        parts, ring = [], 0
        for count in self.ring_counts:
            rings = self.outline.rings[ring : ring + count + 1]
            first, last = int(rings[0]), int(rings[-1])
            kinds, data = self.outline.kinds[first:last], self.outline.data[first:last]
            parts.append(Outline(kinds, data, rings - first))
            ring += count
        return tuple(parts)

    @property
    def letter_of_ring(self) -> NDArray[np.int64]:
        """To which letter each ring belongs."""
        return np.repeat(np.arange(len(self.ring_counts)), self.ring_counts)

    @property
    def _letter_of_segment(self) -> NDArray[np.int64]:
        return np.repeat(self.letter_of_ring, np.diff(self.outline.rings))
