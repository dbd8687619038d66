"""The pages of a specimen: each road's alphabets at one scale, what our styles can be, and all scales compared."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import islice

from heraldry.artwork import Artwork, Finding
from heraldry.errors import HeraldryError
from heraldry.pages.flow import Entry, Section, pages_of
from heraldry.pages.paper import Paper
from heraldry.specimen.catalogue import style_entries
from heraldry.specimen.entry import at_a_glance, letter_names
from heraldry.specimen.ranges import what_it_can_be
from heraldry.specimen.showing import USUAL_TITLE, Show
from heraldry.specimen.sizes import names_at
from heraldry.units import Scale

Step = Callable[[], Entry]
Watch = Callable[[Sequence[Step]], Iterable[Step]]


def specimen_pages(
    shows: Sequence[Show], scales: Sequence[Scale], paper: Paper, watch: Watch | None = None
) -> list[Artwork]:
    """The pages of a specimen: each show at the first scale, what our styles can be, and all scales compared.

    Entries are drawn one by one as ``watch`` hands on what draws them. Raises HeraldryError where there is nothing to
    show or no scale.
    """
    if not shows or not scales:
        raise HeraldryError("a specimen shows at least one set of alphabets at one scale at least")
    plans = tuple(_plans(shows, scales, paper))
    steps = [step for plan in plans for step in plan.steps]
    drawn = (step() for step in (watch(steps) if watch else steps))
    sections = [replace(plan.section, entries=tuple(islice(drawn, len(plan.steps)))) for plan in plans]
    return pages_of(sections, "specimen", paper, scales[0].name)


@dataclass(frozen=True, eq=False)
class _Plan:
    """A section that is still without its entries, and what draws them."""

    section: Section
    steps: tuple[Step, ...]


def _plans(shows: Sequence[Show], scales: Sequence[Scale], paper: Paper) -> Iterator[_Plan]:
    first, measure = scales[0], paper.measure_mm
    for show in shows:
        steps = tuple(partial(at_a_glance, shown, show.text, first, measure) for shown in show.alphabets)
        yield _Plan(Section(show.title, _scale_words(first), (), tuple(_findings(show)), USUAL_TITLE), steps)
    ranges = tuple(partial(what_it_can_be, style, shows[0].text, measure) for style in style_entries())
    yield _Plan(Section("What our alphabets can be", "", ()), ranges)
    if len(scales) > 1:
        compared = tuple(partial(names_at, scale, shows, measure) for scale in scales)
        yield _Plan(Section("At the size of models", ", ".join(scale.name for scale in scales), ()), compared)


def _scale_words(scale: Scale) -> str:
    ratio = f"1:{float(scale.ratio):.4g}"
    return ratio if "1:" in scale.name else f"{scale.name}, {ratio}"


def _findings(show: Show) -> Iterator[Finding]:
    for shown in show.alphabets:
        missing = shown.lacking(show.text)
        if missing:
            words = f"alphabet {shown.name} cannot letter '{show.text}', it has no {letter_names(missing)}"
            yield Finding("missing letter", words)
