"""Names at several scales: every alphabet as high as common lettering is on models of each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from heraldry.pages.block import GREY, Block, beside, gap
from heraldry.pages.flow import Entry
from heraldry.pages.paper import CAPTION_COLUMN_MM
from heraldry.pages.writing import CAPTION_LEADING_MM, caption_line, heading, sample
from heraldry.specimen.entry import SIZE_TABS_MM, entry, millimetres, to_size
from heraldry.specimen.showing import Show, Shown
from heraldry.units import MM_PER_INCH, Scale

LARGE_IN, SMALL_IN = 9, 4
"""Reporting marks; data and the ends of cars. Common practice, no source."""
SCALE_BASE_MM, SCALE_ROOM_MM = 6.0, 8.0


def names_at(scale: Scale, shows: Sequence[Show], measure_mm: float) -> Entry:
    """The names of roads at one scale: large in every alphabet of theirs (else in ours), small in the first."""
    named = [list(_named(show)) for show in shows]
    name = heading(scale.name, CAPTION_COLUMN_MM, base_at_mm=SCALE_BASE_MM)
    large = _group([one for of_show in named for one in of_show], LARGE_IN, scale, measure_mm)
    small = _group([one for of_show in named for one in of_show[:1]], SMALL_IN, scale, measure_mm)
    return entry([name, gap(SCALE_ROOM_MM - name.height_mm), *large, gap(CAPTION_LEADING_MM), *small], measure_mm)


def _named(show: Show) -> Iterator[tuple[str, Shown]]:
    for shown in show.of_road or show.ours:
        if not shown.lacking(show.text):
            yield show.text, shown


def _group(named: Sequence[tuple[str, Shown]], inches: int, scale: Scale, measure_mm: float) -> list[Block]:
    cap_mm = scale.model_mm(inches * MM_PER_INCH)
    first = (f"{inches} in", millimetres(cap_mm))
    width_mm = measure_mm - CAPTION_COLUMN_MM
    rows = []
    for i, (text, shown) in enumerate(named):
        lettering = to_size(shown.alphabet, text, cap_mm, width_mm)
        words = (*(first if i == 0 else ("", "")), shown.name)
        columns = [(tab, word) for tab, word in zip(SIZE_TABS_MM, words, strict=True) if word]
        label = [(tab, sample(caption_line(word), GREY, lettering.base_mm)) for tab, word in columns]
        rows.append(beside(*label, (CAPTION_COLUMN_MM, lettering)))
    return rows
