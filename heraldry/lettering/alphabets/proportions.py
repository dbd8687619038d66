"""From the medians of the masters to the width and the whites of any letter at any stem and width.

Between the regular and the bold master figures go in a straight line with the stem. Narrowing adds what the
condensed master differs by, where there is one, in proportion to how far the whites are drawn in; widening adds
nothing, since wide type keeps the relations of the normal one. Lengths in cap heights.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from heraldry.lettering.alphabets.medians.row import Masters, Row

# How much of the white beside the letters a widening of the white inside them carries along: wide lettering set
# as open as its counters falls apart. Without a condensed master, narrowing does the same.
WIDENING_OUTSIDE = 0.45


@dataclass(frozen=True)
class Master:
    """What was measured at one master: stem, width of H and white beside H, in cap heights."""

    stem: float
    wide: float
    white: float


@dataclass(frozen=True, eq=False)
class Proportions:
    """The widths and whites of a style."""

    regular: Master
    bold: Master
    condensed: Master | None
    rows: Mapping[str, Row]

    def _weight(self, stem: float) -> float:
        """0 at the regular master, 1 at the bold one."""
        return (stem - self.regular.stem) / (self.bold.stem - self.regular.stem)

    def between(self, regular: float, bold: float, stem: float) -> float:
        """A figure in a straight line through what it is at the two masters."""
        return regular + (bold - regular) * self._weight(stem)

    def _condensed_width(self, condensed: Master) -> float:
        """The ``width`` at which H is as narrow as in the condensed master."""
        normal = self.between(self.regular.wide, self.bold.wide, condensed.stem)
        stems = 2.0 * condensed.stem
        return (condensed.wide - stems) / (normal - stems)

    def narrowing(self, width: float) -> float:
        """0 at normal width and beyond, 1 at the condensed master's."""
        if self.condensed is None:
            return 0.0
        return min(max((1.0 - width) / (1.0 - self._condensed_width(self.condensed)), 0.0), 1.0)

    def at(self, masters: Masters, stem: float, width: float) -> float:
        """One figure of a row at a stem and a width."""
        regular, bold, *condensed = masters
        figure = self.between(regular, bold, stem)
        if self.condensed is None:
            return figure
        shift = condensed[0] - self.between(regular, bold, self.condensed.stem)
        return figure + shift * self.narrowing(width)

    def wide_of_h(self, stem: float, width: float) -> float:
        """Width of H: its white is stretched, its stems are kept."""
        normal = self.between(self.regular.wide, self.bold.wide, stem)
        return 2.0 * stem + width * (normal - 2.0 * stem)

    def white_of_h(self, stem: float, width: float) -> float:
        """White at one side of H."""
        normal = self.between(self.regular.white, self.bold.white, stem)
        if width > 1.0 or self.condensed is None:
            return normal * (1.0 + WIDENING_OUTSIDE * (width - 1.0))
        drawn_in = (1.0 - width) / (1.0 - self._condensed_width(self.condensed))
        narrow = self.condensed.white / self.between(self.regular.white, self.bold.white, self.condensed.stem)
        return normal * (1.0 - (1.0 - narrow) * drawn_in)

    def widths(self, stem: float, width: float) -> dict[str, float]:
        """Width of every letter's ink."""
        wide = self.wide_of_h(stem, width)
        return {letter: wide * self.at(row.width, stem, width) for letter, row in self.rows.items()}

    def whites(self, letter: str, stem: float, width: float) -> tuple[float, float]:
        """White left and right of a letter's ink."""
        white, row = self.white_of_h(stem, width), self.rows[letter]
        return white * self.at(row.left, stem, width), white * self.at(row.right, stem, width)
