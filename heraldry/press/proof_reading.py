"""The last look before a byte is written: an artwork that is not sound is refused, and never mended here.

Each rule is a question with a sentence for its answer; all answers are given at once. Millimetres.
"""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.errors import PressError
from heraldry.geometry.boolean import to_polygon
from heraldry.geometry.flatten import FLATTEN_TOLERANCE_MM, flatten
from heraldry.geometry.measure import bounds, perimeter, ring_areas
from heraldry.geometry.outline import Bounds, Outline

# What sums of rounded lengths may reach over the edge of the page; a renderer cannot show a micrometre.
PAGE_TOLERANCE_MM = 1e-3
# Rings may overlap by a strip so thin, all along: where two curves touch, their chords may cross.
OVERLAP_WIDTH_MM = 1e-5
# All of a printer's separations, and none of them, in PDF and PostScript (ISO 32000-1, 8.6.6.4).
_RESERVED_INKS = frozenset({"All", "None"})
_COLOUR = re.compile(r"#[0-9a-f]{6}")


def proof_read(artwork: Artwork) -> None:
    """Raise PressError with one line for each thing that is wrong with an artwork."""
    faults = list(_faults(artwork))
    if faults:
        raise PressError("\n".join(f"{artwork.name}: {fault}" for fault in faults))


def _faults(artwork: Artwork) -> Iterator[str]:
    if not all(math.isfinite(side) and side > 0 for side in (artwork.width_mm, artwork.height_mm)):
        yield f"the page is {artwork.width_mm:g} × {artwork.height_mm:g} mm, both sides must be above 0"
        return
    if not artwork.plates:
        yield "there is no plate to print, an artwork needs at least one"
    yield from _name_faults([plate.name for plate in artwork.plates])
    yield from _ink_faults({plate.ink: None for plate in artwork.plates})
    for plate in artwork.plates:
        for fault in _plate_faults(plate, artwork.page):
            yield f"plate '{plate.name}' {fault}"


def _name_faults(names: list[str]) -> Iterator[str]:
    for name, times in Counter(names).items():
        if not name.strip() or not name.isprintable():
            yield f"a plate is called {name!r}, it needs a name that can be printed"
        if times > 1:
            yield f"{times} plates are called '{name}', each needs a name of its own"


def _ink_faults(inks: dict[Ink, None]) -> Iterator[str]:
    for name, times in Counter(ink.name for ink in inks).items():
        if not name.strip() or not name.isprintable():
            yield f"an ink is called {name!r}, it needs a name that can be printed"
        if times > 1:
            yield f"ink '{name}' has {times} different colours or ways to print, it can have one"
        if name in _RESERVED_INKS:
            yield f"an ink cannot be called '{name}', which means every plate or none in a PDF"
    for ink in inks:
        if not _COLOUR.fullmatch(ink.colour_hex):
            yield f"ink '{ink.name}' has the colour '{ink.colour_hex}', wanted is '#rrggbb' in small letters"


def _plate_faults(plate: Plate, page: Bounds) -> Iterator[str]:
    outline = plate.outline
    if outline.is_empty:
        yield "is empty, nothing would be printed"
    elif not np.all(np.isfinite(outline.data)):
        yield "has a coordinate that is not a number"
    else:
        over = bounds(outline).reach_over(page)
        if over > PAGE_TOLERANCE_MM:
            yield f"reaches {over:.3f} mm over the edge of the page"
        yield from _area_faults(outline)


def _area_faults(outline: Outline) -> Iterator[str]:
    """Three counts of one area must agree: by Green's theorem on curves and on chords, and as filled.

    The first two differ by the flattening alone. The last two are the same for clean rings, and
    only for them: an overlap counts twice when added up and not at all when filled by the even-odd rule.
    """
    edge_mm = perimeter(outline)
    on_curves = float(ring_areas(outline).sum())
    on_chords = sum(_shoelace(ring) for ring in flatten(outline))
    filled = float(to_polygon(outline).area)
    if filled <= OVERLAP_WIDTH_MM * edge_mm:
        yield f"covers {filled:g} mm², nothing would be printed"
    elif abs(on_curves - on_chords) > FLATTEN_TOLERANCE_MM * edge_mm:
        yield f"has a broken curve: it encloses {on_curves:.4f} mm², its chords {on_chords:.4f} mm²"
    elif abs(on_chords - filled) > OVERLAP_WIDTH_MM * edge_mm:
        yield (
            "has rings that overlap or run the wrong way round: "
            f"they add up to {on_chords:.4f} mm², but fill {filled:.4f} mm²"
        )


def _shoelace(ring: NDArray[np.float64]) -> float:
    """The signed area of a polygon, mm²; counted from its first corner, to lose no digits far out."""
    x, y = (ring - ring[0]).T
    return float(x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2
