"""The contact page: two dozen heralds with their numbers, on one sheet of paper, on the paint if there is one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from heraldry.artwork import Artwork, Ink
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds
from heraldry.ideas.brief import Brief
from heraldry.ideas.choosing import COUNT, Idea
from heraldry.lettering.setting.lay import ink_width
from heraldry.pages.block import BLACK, GREY, Block, Mark, beside, into_room
from heraldry.pages.flow import TITLE_ROOM_MM, Section, pages_of
from heraldry.pages.paper import Paper
from heraldry.pages.writing import caption_line, sample

COLUMNS = 4
ROWS = -(-COUNT // COLUMNS)
CAPTION_ROOM_MM, CAPTION_BASE_MM = 10.4, 3.4
"""Under each herald: its number, and what it is; the base line is so far below the herald's room."""
NUMBER_CAP_MM, WORDS_CAP_MM, BETWEEN_MM = 2.4, 1.5, 1.5
GUTTER_MM, TILE_MARGIN_MM = 7.0, 2.2
"""White between neighbouring heralds, and how far a tile of paint reaches round the room of one."""


def contact_page(ideas: Sequence[Idea], brief: Brief, paint_hex: str, paper: Paper) -> list[Artwork]:
    """The page of ideas as an artwork; each herald as large as its room."""
    row_mm = (paper.depth_mm - TITLE_ROOM_MM) / ROWS
    cells = [_cell(idea, number, paint_hex, paper.measure_mm / COLUMNS, row_mm) for number, idea in _numbered(ideas)]
    rows = [cells[start : start + COLUMNS] for start in range(0, len(cells), COLUMNS)]
    entries = tuple((_row(row, paper.measure_mm / COLUMNS),) for row in rows)
    note = f"{brief.scale}, {brief.width}, seed {brief.seed}"
    return pages_of(
        [Section(brief.words.name, note, entries, usual_title=f"Ideas for {brief.words.initials}")],
        "ideas",
        paper,
        brief.scale,
    )


def _numbered(ideas: Sequence[Idea]) -> list[tuple[int, Idea]]:
    return list(enumerate(ideas, start=1))


def _row(cells: Sequence[Block], column_mm: float) -> Block:
    return beside(*((i * column_mm, cell) for i, cell in enumerate(cells)))


def _cell(idea: Idea, number: int, paint_hex: str, column_mm: float, row_mm: float) -> Block:
    """A herald in the middle of its room, and under it what it is called."""
    wide, tall = column_mm - GUTTER_MM, row_mm - CAPTION_ROOM_MM
    room = Bounds((column_mm - wide) / 2, -tall, (column_mm + wide) / 2, 0.0)
    marks = [*_tile(room, paint_hex), *_herald(idea.artwork, room)]
    words = _caption(number, idea.sketch.caption, column_mm)
    return Block(row_mm, (*marks, *words.shifted(0.0, -tall)))


def _tile(room: Bounds, paint_hex: str) -> list[Mark]:
    if not paint_hex:
        return []
    return [Mark(Ink("paint", paint_hex, opaque=True, spot=False), room.grown(TILE_MARGIN_MM).outline)]


def _herald(artwork: Artwork, room: Bounds) -> list[Mark]:
    """Every plate, as large as the room, in the middle of it; its inks are told from those of the captions."""
    there = into_room(bounds(artwork.outline), room.width, room.height, room.centre)
    return [
        Mark(replace(plate.ink, name=f"{plate.ink.name} of the heralds", spot=False), plate.outline.transformed(there))
        for plate in artwork.plates
    ]


def _caption(number: int, words: str, column_mm: float) -> Block:
    """The number in black and the words in grey, both together in the middle of the column."""
    figure, text = caption_line(str(number), NUMBER_CAP_MM, bold=True), caption_line(words, WORDS_CAP_MM)
    whole = ink_width(figure) + BETWEEN_MM + ink_width(text)
    factor = min(1.0, (column_mm - BETWEEN_MM) / whole)
    text = caption_line(words, WORDS_CAP_MM * factor)
    left = (column_mm - ink_width(figure) - BETWEEN_MM - ink_width(text)) / 2
    base = CAPTION_BASE_MM + TILE_MARGIN_MM
    return beside(
        (left, sample(figure, BLACK, base)), (left + ink_width(figure) + BETWEEN_MM, sample(text, GREY, base))
    )
