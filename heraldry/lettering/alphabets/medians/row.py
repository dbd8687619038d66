"""One letter of a table of medians."""

from __future__ import annotations

from typing import NamedTuple

Masters = tuple[float, ...]
"""One figure for each master: regular, bold and, where it was measured, condensed."""


class Row(NamedTuple):
    """One letter: ink width in widths of H; white left and right in whites beside H."""

    width: Masters
    left: Masters
    right: Masters

    def drawn(self, factor: float) -> Row:
        """A letter that is drawn wider or narrower than its median.

        >>> Row((0.5, 1.0), (1.0, 1.0), (1.0, 1.0)).drawn(0.9).width
        (0.45, 0.9)
        """
        return self._replace(width=tuple(wide * factor for wide in self.width))
