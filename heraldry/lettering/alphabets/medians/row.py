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
