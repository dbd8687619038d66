"""Proof pictures of a class: every car with all its sides, or the whole class on contact pages; to scale.

A picture of a car is as large as the model. A contact page shows one side of each car, reduced by a whole number so
that a row fits the width of a sheet of paper, and says by how much.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice

from heraldry.artwork import Artwork
from heraldry.diagrams.captions import writing
from heraldry.diagrams.cars import Car
from heraldry.diagrams.class_of_cars import ClassOfCars
from heraldry.diagrams.drawing import SharedSide, own_pieces, shared_sides
from heraldry.diagrams.picture import Stroke, frame_of, lettering_strokes, paint_strokes, painted
from heraldry.diagrams.schedule import dimension_strokes, schedule_strokes
from heraldry.errors import DescriptionError, Fault
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds
from heraldry.geometry.point import Point

PAGE_WIDTH_MM, PAGE_HEIGHT_MM = 260.0, 190.0
"""What A4 and Letter both hold across, with the edges that printers leave blank."""
GAP_MM = 6.0
"""Between pictures, and round them."""
CAPTION_MM, CAPTION_ROOM_MM = 2.0, 4.5
TITLE_MM, TITLE_ROOM_MM = 3.0, 9.0
MOST_COLUMNS = 8
"""Of a contact page: eight box cars in HO are each 26 mm long."""


@dataclass(frozen=True, eq=False)
class ProofRoom:
    """A class ready to be pictured: what all cars share is painted once."""

    cars: ClassOfCars
    sides: tuple[SharedSide, ...]
    painted_sides: tuple[tuple[Stroke, ...], ...]

    @staticmethod
    def of(cars: ClassOfCars) -> ProofRoom:
        """Paint what all cars of a class share."""
        sides = tuple(shared_sides(cars))
        painted_sides = tuple(tuple(paint_strokes(side.layout.side, side.reader.paints)) for side in sides)
        return ProofRoom(cars, sides, painted_sides)

    def strokes(self, i: int, car: Car) -> Iterator[Stroke]:
        """The picture of one side of a car; raises DescriptionError for a car that cannot be lettered."""
        side = self.sides[i]
        pieces = [*side.pieces, *own_pieces(self.cars, side, car)]
        yield from self.painted_sides[i]
        inks = [ink.name for ink in self.cars.inks]
        yield from lettering_strokes(pieces, inks, side.reader.paints, self.cars.film)


def proofs(cars: ClassOfCars, numbers: Sequence[str] = (), dimensions: bool = False) -> Iterator[Artwork]:
    """A picture of each car, one side over another, as large as the model; raises as ``drawing.artworks``."""
    room = ProofRoom.of(cars)
    faults: list[Fault] = list(() if numbers else cars.roster.faults)
    for car in cars.roster.named(tuple(numbers)) if numbers else cars.roster.cars:
        try:
            yield _car_picture(room, car, dimensions)
        except DescriptionError as error:
            faults += error.faults
    if faults:
        raise DescriptionError(faults)


@dataclass(frozen=True, eq=False)
class Block:
    """The picture of one side with what is written under it, on a box of its own."""

    strokes: tuple[Stroke, ...]
    box: Bounds


def _car_picture(room: ProofRoom, car: Car, dimensions: bool) -> Artwork:
    blocks = [_block(room, i, car, dimensions) for i in range(len(room.sides))]
    strokes: list[Stroke] = []
    top, width = 0.0, max(block.box.width for block in blocks)
    for row in reversed(in_rows(blocks, width)):
        left = GAP_MM
        for block in row:
            strokes += [
                stroke.moved(Affine.move(left - block.box.left, top - block.box.bottom)) for stroke in block.strokes
            ]
            left += block.box.width + GAP_MM
        top += max(block.box.height for block in row) + GAP_MM
    name = " ".join(filter(None, (room.cars.name, car.number, "proof")))
    return painted(name, Bounds(0.0, -GAP_MM, width + 2 * GAP_MM, top), strokes, room.cars.scale_name)


def in_rows(blocks: Sequence[Block], width_mm: float) -> list[list[Block]]:
    """Blocks in their order, as many in a row as are no wider together: two ends stand side by side."""
    rows: list[list[Block]] = [[]]
    for block in blocks:
        if rows[-1] and sum(one.box.width + GAP_MM for one in rows[-1]) + block.box.width > width_mm:
            rows.append([])
        rows[-1].append(block)
    return rows


def _block(room: ProofRoom, i: int, car: Car, dimensions: bool) -> Block:
    layout, strokes = room.sides[i].layout, list(room.strokes(i, car))
    frame = frame_of(layout.side)
    if dimensions:
        strokes += dimension_strokes(layout, room.cars.scale)
        top_left = Point(frame.left, frame.bottom - GAP_MM)
        strokes += schedule_strokes(layout, room.cars.scale, top_left, frame.width)
    else:
        under = Point(frame.centre.x, frame.bottom - CAPTION_ROOM_MM)
        strokes.append(writing(layout.side.name.upper(), under, CAPTION_MM))
    return Block(tuple(strokes), Bounds.round([frame, *(bounds(stroke.outline) for stroke in strokes)]))


def contact_pages(cars: ClassOfCars, numbers: Sequence[str] = ()) -> Iterator[Artwork]:
    """The first side of every car, row by row; raises as ``drawing.artworks``."""
    room = ProofRoom.of(cars)
    wanted = cars.roster.named(tuple(numbers)) if numbers else cars.roster.cars
    grid = Grid.holding(len(wanted), frame_of(room.sides[0].layout.side))
    faults: list[Fault] = list(() if numbers else cars.roster.faults)
    pictured = _pictured(room, wanted, faults)
    count = 0
    while page := list(islice(pictured, grid.columns * grid.rows)):
        count += 1
        yield _contact_page(room, page, count, grid)
    if faults:
        raise DescriptionError(faults)


def _pictured(room: ProofRoom, cars: Sequence[Car], faults: list[Fault]) -> Iterator[tuple[Car, list[Stroke]]]:
    for car in cars:
        try:
            yield car, list(room.strokes(0, car))
        except DescriptionError as error:
            faults += error.faults


@dataclass(frozen=True)
class Grid:
    """Where pictures of one size stand on a contact page, and by how much they are reduced."""

    frame: Bounds
    columns: int

    @staticmethod
    def holding(count: int, frame: Bounds) -> Grid:
        """As few columns as hold all pictures on one page; the most there may be where no page holds them."""
        grids = [Grid(frame, columns) for columns in range(1, MOST_COLUMNS + 1)]
        return next((grid for grid in grids if grid.columns * grid.rows >= count), grids[-1])

    @property
    def reduced(self) -> int:
        """By which whole number pictures are reduced to fit across."""
        return max(1, math.ceil(self.columns * self.frame.width / (PAGE_WIDTH_MM - (self.columns + 1) * GAP_MM)))

    @property
    def cell(self) -> Point:
        """From one picture to the next, across and down."""
        reduced = self.reduced
        return Point(self.frame.width / reduced + GAP_MM, self.frame.height / reduced + GAP_MM + CAPTION_ROOM_MM)

    @property
    def rows(self) -> int:
        """How many rows fit a page."""
        return max(1, int((PAGE_HEIGHT_MM - TITLE_ROOM_MM - GAP_MM) / self.cell.y))


def _contact_page(room: ProofRoom, pictured: Sequence[tuple[Car, list[Stroke]]], count: int, grid: Grid) -> Artwork:
    rows = math.ceil(len(pictured) / grid.columns)
    height = rows * grid.cell.y + GAP_MM + TITLE_ROOM_MM
    width = grid.columns * grid.cell.x + GAP_MM
    page = Bounds(0.0, 0.0, width, height)
    strokes = [writing(_title(room, grid), Point(width / 2, height - TITLE_ROOM_MM + TITLE_MM / 2), TITLE_MM)]
    for i, (car, picture) in enumerate(pictured):
        row, column = divmod(i, grid.columns)
        left = GAP_MM + column * grid.cell.x
        bottom = height - TITLE_ROOM_MM - (row + 1) * grid.cell.y + CAPTION_ROOM_MM + GAP_MM / 2
        origin = Affine.move(-grid.frame.left, -grid.frame.bottom)
        place = Affine.move(left, bottom) @ Affine.scale(1 / grid.reduced) @ origin
        strokes += [stroke.moved(place) for stroke in picture]
        under = Point(left + grid.frame.width / grid.reduced / 2, bottom - CAPTION_ROOM_MM)
        strokes.append(writing(car.number or room.cars.name.upper(), under, CAPTION_MM))
    suffix = f" {count}" if count > 1 else ""
    return painted(f"{room.cars.name} contact{suffix}", page, strokes, room.cars.scale_name)


def _title(room: ProofRoom, grid: Grid) -> str:
    size = "model size" if grid.reduced == 1 else f"1/{grid.reduced} of model size"
    return ", ".join(filter(None, (room.cars.name, room.cars.scale_name, size))).upper()
