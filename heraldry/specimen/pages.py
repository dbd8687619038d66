"""Entries flow on pages, and pages become artworks: a white paper with ink in two tones.

An entry stays whole where a page holds it; only one that is higher than a page is parted, between its blocks.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from heraldry.artwork import Artwork, Finding, Ink, Plate
from heraldry.errors import HeraldryError
from heraldry.geometry.outline import Bounds, Outline
from heraldry.lettering.alphabets.contour import rectangle
from heraldry.specimen.block import RULE_MM, Block, Tone, beside, gap, rule, stacked
from heraldry.specimen.catalogue import style_entries
from heraldry.specimen.entry import Entry, at_a_glance, letter_names
from heraldry.specimen.paper import HEAD_MM, SIDE_MM, Paper
from heraldry.specimen.ranges import what_it_can_be
from heraldry.specimen.showing import USUAL_TITLE, Show
from heraldry.specimen.sizes import names_at
from heraldry.specimen.writing import caption_line, heading, held_right, ink_width, lettered
from heraldry.units import Scale

PAPER_INK = Ink("paper", "#ffffff", opaque=True, spot=False)
INKS: dict[Tone, Ink] = {
    "grey": Ink("grey", "#6a6a6a", spot=False),
    "black": Ink("black", "#111111", spot=False),
}
"""Captions stand back behind the samples."""
TITLE_CAP_MM, TITLE_BASE_MM, TITLE_ROOM_MM = 3.4, 8.0, 16.0
NOTE_ROOM_MM = 62.0
"""Kept free for the note at the right of a title."""


@dataclass(frozen=True, eq=False)
class Section:
    """Entries under one title; ``note`` stands at the right of it."""

    title: str
    note: str
    entries: tuple[Entry, ...]
    findings: tuple[Finding, ...] = ()


def specimen_pages(shows: Sequence[Show], scales: Sequence[Scale], paper: Paper) -> list[Artwork]:
    """The pages of a specimen: each show at the first scale, what our styles can be, and all scales compared.

    Raises HeraldryError where there is nothing to show or no scale.
    """
    if not shows or not scales:
        raise HeraldryError("a specimen shows at least one set of alphabets at one scale at least")
    leaves = [
        (section, blocks) for section in _sections(shows, scales, paper) for blocks in flowed(section, paper.depth_mm)
    ]
    many = len(leaves) > 1
    return [
        _page(section, blocks, f"specimen {i}" if many else "specimen", f"page {i} of {len(leaves)}", paper, scales[0])
        for i, (section, blocks) in enumerate(leaves, start=1)
    ]


def _sections(shows: Sequence[Show], scales: Sequence[Scale], paper: Paper) -> Iterator[Section]:
    first, measure = scales[0], paper.measure_mm
    for show in shows:
        entries = tuple(at_a_glance(shown, show.text, first, measure) for shown in show.alphabets)
        yield Section(show.title, _scale_words(first), entries, tuple(_findings(show)))
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


def flowed(section: Section, depth_mm: float) -> list[list[Block]]:
    """Which blocks stand on which page."""
    pages: list[list[Block]] = [[]]
    room = depth_mm - TITLE_ROOM_MM
    left = room
    for entry in section.entries:
        height = _ink_height(entry)
        if pages[-1] and left < height <= room:
            pages.append([])
            left = room
        for block in entry:
            if pages[-1] and block.marks and block.height_mm > left:
                pages.append([])
                left = room
            pages[-1].append(block)
            left -= block.height_mm
    return pages


def _ink_height(entry: Entry) -> float:
    """How high an entry is without the white at its end."""
    return sum(block.height_mm for block in entry[:-1])


def _page(section: Section, blocks: Iterable[Block], name: str, number: str, paper: Paper, scale: Scale) -> Artwork:
    page = stacked([_head(section, number, paper.measure_mm), *blocks])
    marks = page.shifted(SIDE_MM, paper.height_mm - HEAD_MM)
    plates = [Plate("paper", PAPER_INK, rectangle(0.0, 0.0, paper.width_mm, paper.height_mm))]
    for tone, ink in INKS.items():
        inked = Outline.gather(mark.outline for mark in marks if mark.tone == tone)
        if not inked.is_empty:
            plates.append(Plate(tone, ink, inked.quantised()))
    box = Bounds(0.0, 0.0, paper.width_mm, paper.height_mm)
    return Artwork(name, box, tuple(plates), scale.name, findings=section.findings)


def _title(title: str, width_mm: float) -> str:
    """The title, where our gothic has its letters and it is not too long for the head of a page."""
    whole = lettered(title) == title
    return title if whole and ink_width(caption_line(title, TITLE_CAP_MM, bold=True)) <= width_mm else USUAL_TITLE


def _head(section: Section, number: str, measure_mm: float) -> Block:
    """A rule, the title, and at the right what the page is about and its number."""
    title = heading(_title(section.title, measure_mm - NOTE_ROOM_MM), measure_mm, TITLE_CAP_MM, TITLE_BASE_MM)
    note = held_right(" – ".join(filter(None, (section.note, number))), measure_mm, TITLE_BASE_MM)
    row = beside((0.0, title), (0.0, note))
    return stacked([rule(measure_mm, RULE_MM), row, gap(TITLE_ROOM_MM - row.height_mm)])
