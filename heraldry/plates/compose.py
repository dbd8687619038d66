"""Draws the shapes of a herald and composes its plates; what cannot be drawn is a fault of its key."""

from __future__ import annotations

from dataclasses import dataclass, replace

from heraldry.artwork import Plate
from heraldry.describe.expression import names_in
from heraldry.errors import DescriptionError, Fault, HeraldryError
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.plates.art import ArtRoom
from heraldry.plates.stage import Stage
from heraldry.plates.turned_over import draw_shape, draw_to_be_turned_over, in_mirror
from heraldry.resolve.resolved import ResolvedHerald, ResolvedPlate, ResolvedShape
from heraldry.shapes.table import Drawn

LARGEST_MM = 2000.0
"""Two metres: longer than any sheet, and a slip of a unit where it is met."""


LARGEST_SHAPE_MM = 10 * LARGEST_MM
"""A shape may be larger than what is left of it when it is cut, but not without bounds."""


@dataclass(frozen=True, eq=False)
class Composed:
    """The plates of a herald, and the stage that its shapes stand on."""

    plates: tuple[Plate, ...]
    stage: Stage


def compose(herald: ResolvedHerald, turned_over: bool = False) -> Composed:
    """Draw every shape, then every plate; ``turned_over`` as in a mirror, but with its lettering still to be read.

    Raises DescriptionError: a shape that cannot be drawn with its numbers, art that comes out empty.
    """
    faults: list[Fault] = []
    stage = _set_up(herald, turned_over, faults)
    room = ArtRoom(stage, herald)
    plates = [_plate(room, plate, faults) for plate in herald.plates if _is_ready(plate, herald, stage)]
    if faults:
        raise DescriptionError(faults)
    _check_size(herald, plates)
    if turned_over:
        plates = [replace(plate, outline=in_mirror(plate.outline)) for plate in plates]
    return Composed(tuple(plates), stage)


def _set_up(herald: ResolvedHerald, turned_over: bool, faults: list[Fault]) -> Stage:
    """The stage with every shape that can be drawn; those that need one that cannot are passed over."""
    stage = Stage()
    for shape in herald.shapes:
        if all(need in stage.drawn for need in shape.needs):
            try:
                stage = stage.with_shape(shape.name, _drawn(herald, shape, stage, turned_over))
            except DescriptionError as error:
                faults.extend(error.faults)
    return stage


def _is_ready(plate: ResolvedPlate, herald: ResolvedHerald, stage: Stage) -> bool:
    """Whether all shapes that the art of a plate names are on the stage."""
    shapes = {shape.name for shape in herald.shapes}
    named = {name.name.partition(".")[0] for name in names_in(plate.art)}
    return all(name in stage.drawn for name in named & shapes)


def _check_shape_size(drawn: Drawn) -> None:
    box = bounds(drawn.outline)
    if max(box.width, box.height) > LARGEST_SHAPE_MM:
        raise HeraldryError(f"it comes out {max(box.width, box.height):,.0f} mm large, is that unit meant?")


def _check_size(herald: ResolvedHerald, plates: list[Plate]) -> None:
    box = bounds(Outline.gather(plate.outline for plate in plates))
    largest = max(box.width, box.height, herald.width_mm or 0.0, herald.height_mm or 0.0)
    if largest > LARGEST_MM:
        what = f"the herald comes out {largest:,.0f} mm large, at most {LARGEST_MM:,.0f} mm can be printed"
        raise DescriptionError([herald.description.fault(("width",), what)])


def _drawn(herald: ResolvedHerald, shape: ResolvedShape, stage: Stage, turned_over: bool) -> Drawn:
    try:
        drawn = _draw(herald, shape, stage, turned_over)
        if drawn.outline.is_empty:
            raise HeraldryError("nothing is left of it")
        _check_shape_size(drawn)
        return drawn
    except DescriptionError:
        raise
    except HeraldryError as error:
        fault = herald.description.fault(("shape", shape.name), f"shape.{shape.name}: {error}")
        raise DescriptionError([fault]) from None


def _draw(herald: ResolvedHerald, shape: ResolvedShape, stage: Stage, turned_over: bool) -> Drawn:
    if shape.art is not None:
        return Drawn(ArtRoom(stage, herald).outline(shape.art))
    assert shape.kind is not None
    arguments = {key: stage.settled(value) for key, value in shape.arguments.items()}
    draw = draw_to_be_turned_over if turned_over else draw_shape
    drawn = draw(shape.kind, arguments)
    return drawn.with_outline(drawn.outline.quantised())


def _plate(room: ArtRoom, plate: ResolvedPlate, faults: list[Fault]) -> Plate:
    outline = Outline.gather(())
    try:
        outline = room.outline(plate.art)
        if outline.is_empty:
            raise HeraldryError("nothing is left of this plate, its art cuts everything away")
    except HeraldryError as error:
        faults.append(room.herald.description.fault(("plate", plate.name, "art"), f"plate.{plate.name}.art: {error}"))
    return Plate(plate.name, plate.ink, outline)
