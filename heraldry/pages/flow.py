"""Blocks flow on pages, and pages become artworks: a white paper with a plate for each ink.

An entry stays whole where a page holds it; only one that is higher than a page is parted, between its blocks.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from heraldry.artwork import Artwork, Finding, Ink, Plate
from heraldry.geometry.outline import Bounds, Outline
from heraldry.lettering.setting.lay import ink_width
from heraldry.pages.block import BLACK, GREY, RULE_MM, Block, Mark, beside, gap, rule, stacked
from heraldry.pages.paper import HEAD_MM, PAPER_INK, SIDE_MM, Paper
from heraldry.pages.writing import caption_line, heading, held_right, lettered

TITLE_CAP_MM, TITLE_BASE_MM, TITLE_ROOM_MM = 3.4, 8.0, 16.0
NOTE_ROOM_MM = 62.0
"""Kept free for the note at the right of a title."""

Entry = Sequence[Block]
"""Blocks that stay together on a page where they can."""


@dataclass(frozen=True, eq=False)
class Section:
    """Entries under one title; ``note`` stands at the right of it, ``usual_title`` for one that cannot be lettered."""

    title: str
    note: str
    entries: tuple[Entry, ...]
    findings: tuple[Finding, ...] = ()
    usual_title: str = ""


def pages_of(sections: Iterable[Section], name: str, paper: Paper, scale_name: str = "") -> list[Artwork]:
    """Every section on pages of its own; the pages are numbered where there are several."""
    leaves = [(section, blocks) for section in sections for blocks in flowed(section, paper.depth_mm)]
    many = len(leaves) > 1
    return [
        _page(section, blocks, f"{name} {i}" if many else name, f"page {i} of {len(leaves)}", paper, scale_name)
        for i, (section, blocks) in enumerate(leaves, start=1)
    ]


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


def _page(section: Section, blocks: Iterable[Block], name: str, number: str, paper: Paper, scale_name: str) -> Artwork:
    page = stacked([_head(section, number, paper.measure_mm), *blocks])
    marks = page.shifted(SIDE_MM, paper.height_mm - HEAD_MM)
    box = Bounds(0.0, 0.0, paper.width_mm, paper.height_mm)
    ground = Plate("paper", PAPER_INK, box.outline)
    return Artwork(name, box, (ground, *_plates(marks)), scale_name, findings=section.findings)


def _plates(marks: Sequence[Mark]) -> list[Plate]:
    """A plate for each ink: captions first, then black, then every other ink in the order in which it comes."""
    together: dict[Ink, list[Outline]] = {GREY: [], BLACK: []}
    for mark in marks:
        together.setdefault(mark.ink, []).append(mark.outline)
    gathered = {ink: Outline.gather(outlines) for ink, outlines in together.items()}
    return [Plate(ink.name, ink, outline.quantised()) for ink, outline in gathered.items() if not outline.is_empty]


def _head(section: Section, number: str, measure_mm: float) -> Block:
    """A rule, the title, and at the right what the page is about and its number."""
    title = heading(_title(section, measure_mm - NOTE_ROOM_MM), measure_mm, TITLE_CAP_MM, TITLE_BASE_MM)
    note = held_right(" – ".join(filter(None, (section.note, number))), measure_mm, TITLE_BASE_MM)
    row = beside((0.0, title), (0.0, note))
    return stacked([rule(measure_mm, RULE_MM), row, gap(TITLE_ROOM_MM - row.height_mm)])


def _title(section: Section, width_mm: float) -> str:
    """The title, where our gothic has its letters and it is not too long for the head of a page."""
    whole = lettered(section.title) == section.title
    fits = whole and ink_width(caption_line(section.title, TITLE_CAP_MM, bold=True)) <= width_mm
    return section.title if fits else section.usual_title
