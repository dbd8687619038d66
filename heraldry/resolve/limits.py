"""What a printer can do; millimetres."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class PrinterLimits:
    """The finest line that prints whole, and the finest gap that stays open between ink."""

    name: str
    finest_line_mm: float
    finest_gap_mm: float


# Dry toner, positive and reversed lines of 0.25 and 0.5 pt: common practice, no source. What a home inkjet
# does on film nobody has published: a printer file holds what was measured on one's own.
USUAL_PRINTER = PrinterLimits("a usual laser printer", 0.09, 0.18)
