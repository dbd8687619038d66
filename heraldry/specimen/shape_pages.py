"""The pages of the catalogue of shapes: each kind drawn large, what else it can be, and the keys that it takes.

The first page shows them all at a glance. Each other page is rows of cells under the title of a family. A cell opens
with a hairline and the picture in ink. Under it stand a strip of small pictures, each with what makes it differ, the
name that a file writes, what the shape says of itself, and its keys with their units and with the values that they
have when left out.
"""

from __future__ import annotations

import inspect
import math
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields
from functools import cache
from typing import Any

from heraldry.artwork import Artwork, Ink
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.lettering.alphabet import SetLine
from heraldry.lettering.setting.lay import ink_width
from heraldry.pages.block import BLACK, GREY, HAIRLINE_MM, Block, Mark, beside, gap, into_room, rule, stacked
from heraldry.pages.flow import TITLE_ROOM_MM, Entry, Section, pages_of
from heraldry.pages.paper import Paper, up_to_grid
from heraldry.pages.writing import NAME_CAP_MM, broken, caption_line, lettered, sample
from heraldry.shapes.catalogue import ALSO, example, families
from heraldry.shapes.table import ShapeKind, choices, value_kind

COLUMNS, GUTTER_MM = 3, 8.0
PICTURE_WIDE_MM, PICTURE_HIGH_MM, PICTURE_AIR_MM = 48.0, 34.0, 3.0
"""The largest a picture becomes, and the white over and under it."""
THUMBS, THUMB_WIDE_MM, THUMB_HIGH_MM, THUMB_AIR_MM = 4, 11.0, 9.0, 2.0
"""Small pictures in a row, and their size."""
SMALL_CAP_MM, SMALL_LEADING_MM = 1.45, 3.0
"""Keys and what is said of a shape: as high as type of 6 points."""
SPACE_CAPS = 0.7
"""From word to word, where only the length of a line is wanted; a trace wider than any is set."""
THUMB_CAP_MM, THUMB_LEADING_MM = 1.15, 2.2
NAME_BASE_MM = 5.0
GLANCE_COLUMNS, GLANCE_GUTTER_MM, GLANCE_NAME_MM, GLANCE_MOST_MM, LEGEND_MM = 7, 6.0, 9.0, 30.0, 8.0
"""Of the page that shows all at a glance: room for a name, the highest row, and room for the words at its foot."""
KEY_COLUMN_MM, KEY_GAP_MM = 19.0, 2.0
ROW_GAP_MM = 6.0

UNITS = {"length": "mm", "angle": "degrees", "direction": "degrees or a side"}
"""What a value of a kind is measured in; the others are named as they are."""
LEFT_OPEN = "open"
RAISES = re.compile(r"Raises [^.]*\.")
LEGEND = (
    "Each table of a file that has one of these names as a key draws that shape. A key with a value has it when left "
    "out; one that is open follows from the others then, or plays no part. Small pictures say what differs."
)


def shape_pages(paper: Paper) -> list[Artwork]:
    """The pages of the catalogue: all kinds at a glance, then a family after another."""
    measure_mm = paper.measure_mm
    glance = Section("Shapes", "all at a glance", tuple(_at_a_glance(paper)))
    by_family = (Section(one.title, "shapes", tuple(_rows(one.kinds, measure_mm))) for one in families())
    return pages_of([glance, *by_family], "shapes", paper)


def _at_a_glance(paper: Paper) -> Iterator[Entry]:
    """Every kind small, with its name, in rows that fill the page, and how to read the pages that follow."""
    kinds = [kind for family in families() for kind in family.kinds]
    pitch = paper.measure_mm / GLANCE_COLUMNS
    room_mm = paper.depth_mm - TITLE_ROOM_MM - LEGEND_MM
    high_mm = min(GLANCE_MOST_MM, room_mm / math.ceil(len(kinds) / GLANCE_COLUMNS))
    for i in range(0, len(kinds), GLANCE_COLUMNS):
        row = [_glance(kind, pitch, high_mm) for kind in kinds[i : i + GLANCE_COLUMNS]]
        yield (beside(*((j * pitch, one) for j, one in enumerate(row))),)
    yield (_small(LEGEND, paper.measure_mm),)


def _glance(kind: ShapeKind, width_mm: float, high_mm: float) -> Block:
    picture_mm = high_mm - GLANCE_NAME_MM
    mark = _fitted(example(kind.name), width_mm - GLANCE_GUTTER_MM, picture_mm, Point(width_mm / 2, -picture_mm / 2))
    name = _small(kind.name, width_mm, leading_mm=NAME_BASE_MM, centred=True)
    return stacked([Block(picture_mm, (mark,)), name, gap(GLANCE_NAME_MM - name.height_mm)])


def _rows(kinds: Sequence[ShapeKind], measure_mm: float) -> Iterator[Entry]:
    """So many cells beside one another, their pictures, names and keys each on one height."""
    width_mm = (measure_mm - GUTTER_MM * (COLUMNS - 1)) / COLUMNS
    for i in range(0, len(kinds), COLUMNS):
        cells = [_cell(kind, width_mm) for kind in kinds[i : i + COLUMNS]]
        strips = [_side_by_side(parts, width_mm) for parts in zip(*cells, strict=True)]
        yield (stacked(strips), gap(ROW_GAP_MM))


def _side_by_side(parts: Sequence[Block], width_mm: float) -> Block:
    row = beside(*((i * (width_mm + GUTTER_MM), part) for i, part in enumerate(parts)))
    return Block(up_to_grid(row.height_mm), row.marks, row.base_mm)


def _cell(kind: ShapeKind, width_mm: float) -> tuple[Block, ...]:
    """The parts of a cell from its head to its foot."""
    picture = stacked([rule(width_mm, HAIRLINE_MM), _picture(example(kind.name), width_mm)])
    name = sample(_line(lettered(kind.name), NAME_CAP_MM, bold=True), BLACK, NAME_BASE_MM)
    keys = [_key(kind, key, width_mm) for key in kind.parameters]
    about = _small(_said_of(kind), width_mm)
    return picture, _thumbs(kind.name, width_mm), stacked([name, gap(1.0), about, gap(1.5), *keys])


def _picture(outline: Outline, width_mm: float) -> Block:
    high = PICTURE_HIGH_MM + 2 * PICTURE_AIR_MM
    return Block(high, (_fitted(outline, PICTURE_WIDE_MM, PICTURE_HIGH_MM, Point(width_mm / 2, -high / 2)),))


def _fitted(outline: Outline, wide_mm: float, high_mm: float, centre: Point) -> Mark:
    """A picture as large as a box allows, its middle at a place."""
    return Mark(BLACK, outline.transformed(into_room(bounds(outline), wide_mm, high_mm, centre)))


def _thumbs(name: str, width_mm: float) -> Block:
    """What else a kind can be, in rows of small pictures; nothing where it can be nothing else."""
    others = ALSO.get(name, ())
    rows = [_thumb_row(name, others[i : i + THUMBS], width_mm) for i in range(0, len(others), THUMBS)]
    return stacked(rows)


def _thumb_row(name: str, others: Sequence[Mapping[str, Any]], width_mm: float) -> Block:
    pitch = width_mm / THUMBS
    return beside(*((i * pitch, _thumb(name, other, pitch)) for i, other in enumerate(others)))


def _thumb(name: str, other: Mapping[str, Any], pitch_mm: float) -> Block:
    place = Point(pitch_mm / 2, -THUMB_HIGH_MM / 2)
    picture = Block(THUMB_HIGH_MM, (_fitted(example(name, **other), THUMB_WIDE_MM, THUMB_HIGH_MM, place),))
    label = _small(_difference(other), pitch_mm - 1.0, THUMB_CAP_MM, THUMB_LEADING_MM, centred=True)
    return stacked([picture, gap(0.8), label, gap(THUMB_AIR_MM)])


def _difference(other: Mapping[str, Any]) -> str:
    """What makes one differ, in words: numbers with their keys, words alone.

    >>> _difference({"ends": "round", "width": 2.0, "double": True, "radius": None})
    'round, width 2, double, no radius'
    """
    return ", ".join(_worded(key, value) for key, value in other.items())


def _worded(key: str, value: Any) -> str:
    if value is None:
        return f"no {key}"
    if isinstance(value, bool):
        return key if value else f"not {key}"
    if isinstance(value, float | int):
        return f"{key} {value:g}"
    return value if isinstance(value, str) else " ".join(value)


def _said_of(kind: ShapeKind) -> str:
    """What a shape says of itself to whoever writes a file; what it raises is for whoever writes a program."""
    return RAISES.sub("", inspect.getdoc(kind.draw) or "").replace("`", "")


def _key(kind: ShapeKind, key: str, width_mm: float) -> Block:
    """A key and what it takes."""
    takes = _takes(kind.annotations[key], kind.parameters[key].default)
    words = _small(takes, width_mm - KEY_COLUMN_MM)
    return beside((0.0, _small(key, KEY_COLUMN_MM - KEY_GAP_MM, ink=BLACK)), (KEY_COLUMN_MM, words))


def _takes(annotation: Any, default: Any) -> str:
    """What a key takes, and its value when it is left out."""
    kind, words = value_kind(annotation)
    if kind == "choice":
        return " or ".join(sorted(choices(words), key=lambda word: word != default))
    if kind == "flag":
        return "true or false" if default else "false or true"
    if kind == "table":
        return f"table of {', '.join(field.name for field in fields(words))}, {_default(default)}"
    unit = UNITS.get(kind, kind)
    if default is inspect.Parameter.empty:
        return unit
    return f"{unit}, {_default(default)}"


def _default(value: Any) -> str:
    if isinstance(value, float | int):
        return f"{value:g}"
    return "origin" if value == ORIGIN else LEFT_OPEN


def _small(
    text: str,
    width_mm: float,
    cap_mm: float = SMALL_CAP_MM,
    leading_mm: float = SMALL_LEADING_MM,
    ink: Ink = GREY,
    centred: bool = False,
) -> Block:
    """Small lettering on as many lines as it takes, from the left or about the middle of its width."""
    texts = broken(lettered(text), lambda line: _length(line, cap_mm) <= width_mm)
    lines = [_line(line, cap_mm) for line in texts]
    lefts = [(width_mm - ink_width(line)) / 2 if centred else 0.0 for line in lines]
    return stacked(beside((left, sample(line, ink, leading_mm))) for left, line in zip(lefts, lines, strict=True))


def _length(text: str, cap_mm: float) -> float:
    """About how long a line becomes, from its words, each of which is set only once."""
    words = text.split()
    return sum(_word_length(word, cap_mm) for word in words) + SPACE_CAPS * cap_mm * (len(words) - 1)


@cache
def _word_length(word: str, cap_mm: float) -> float:
    return ink_width(_line(word, cap_mm))


@cache
def _line(text: str, cap_mm: float, bold: bool = False) -> SetLine:
    return caption_line(text, cap_mm, bold)
