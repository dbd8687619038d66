"""The pages of a specimen: each road's alphabets at one scale, what our styles can be, and all scales compared."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from heraldry.artwork import Artwork, Finding
from heraldry.errors import HeraldryError
from heraldry.pages.flow import Section, pages_of
from heraldry.pages.paper import Paper
from heraldry.specimen.catalogue import style_entries
from heraldry.specimen.entry import at_a_glance, letter_names
from heraldry.specimen.ranges import what_it_can_be
from heraldry.specimen.showing import USUAL_TITLE, Show
from heraldry.specimen.sizes import names_at
from heraldry.units import Scale


def specimen_pages(shows: Sequence[Show], scales: Sequence[Scale], paper: Paper) -> list[Artwork]:
    """The pages of a specimen: each show at the first scale, what our styles can be, and all scales compared.

    Raises HeraldryError where there is nothing to show or no scale.
    """
    if not shows or not scales:
        raise HeraldryError("a specimen shows at least one set of alphabets at one scale at least")
    return pages_of(_sections(shows, scales, paper), "specimen", paper, scales[0].name)


def _sections(shows: Sequence[Show], scales: Sequence[Scale], paper: Paper) -> Iterator[Section]:
    first, measure = scales[0], paper.measure_mm
    for show in shows:
        entries = tuple(at_a_glance(shown, show.text, first, measure) for shown in show.alphabets)
        yield Section(show.title, _scale_words(first), entries, tuple(_findings(show)), USUAL_TITLE)
    ranges = tuple(what_it_can_be(style, shows[0].text, measure) for style in style_entries())
    yield Section("What our alphabets can be", "", ranges)
    if len(scales) > 1:
        compared = tuple(names_at(scale, shows, measure) for scale in scales)
        yield Section("At the size of models", ", ".join(scale.name for scale in scales), compared)


def _scale_words(scale: Scale) -> str:
    ratio = f"1:{float(scale.ratio):.4g}"
    return ratio if "1:" in scale.name else f"{scale.name}, {ratio}"


def _findings(show: Show) -> Iterator[Finding]:
    for shown in show.alphabets:
        missing = shown.lacking(show.text)
        if missing:
            words = f"alphabet {shown.name} cannot letter '{show.text}', it has no {letter_names(missing)}"
            yield Finding("missing letter", words)
