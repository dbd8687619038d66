"""Draws the shapes of a herald and composes its plates; what cannot be drawn is a fault of its key."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from heraldry.artwork import Plate
from heraldry.describe.expression import Expression, names_in
from heraldry.describe.variants import VARIANT
from heraldry.errors import DescriptionError, Fault, HeraldryError, LengthError
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import EMPTY, Bounds, Outline
from heraldry.plates.art import ArtRoom
from heraldry.plates.forms import derived
from heraldry.plates.stage import Stage
from heraldry.plates.turned_over import draw_shape, draw_to_be_turned_over
from heraldry.resolve.kept import Kept
from heraldry.resolve.largest import LARGEST_EVER_MM, refuse_huge
from heraldry.resolve.resolved import ResolvedForm, ResolvedHerald, ResolvedPlate, ResolvedShape
from heraldry.shapes.table import Drawn

LEFT_OUT = Drawn(EMPTY)
"""A shape that a variant does not have: art goes on as if there were nothing in its place."""

PAGE_TOLERANCE_MM = 1e-3
"""What rounding may add to the ink; a renderer cannot show a micrometre."""

LARGEST_SHAPE_MM = 10 * LARGEST_EVER_MM
"""A shape may be larger than what is left of it when it is cut, but not without bounds."""


@dataclass(frozen=True, eq=False)
class Composed:
    """The plates of a herald, and the stage that its shapes stand on."""

    plates: tuple[Plate, ...]
    stage: Stage
    box: Bounds
    """What the herald takes up; a form that is derived from it may leave its edge bare."""


def compose(herald: ResolvedHerald, turned_over: bool = False, kept: Kept | None = None) -> Composed:
    """Draw every shape, then every plate; ``turned_over`` as in a mirror, but with its lettering still to be read.

    What is ``kept`` of other variants of the herald is not drawn again. Raises DescriptionError: a shape that cannot
    be drawn with its numbers, art that comes out empty.
    """
    kept = Kept() if kept is None else kept
    faults: list[Fault] = []
    stage = _set_up(herald, turned_over, kept, faults)
    room = ArtRoom(stage, herald)
    plates = [_plate(room, plate, kept, faults) for plate in herald.plates if _is_ready(plate, herald, stage)]
    if faults:
        raise DescriptionError(faults)
    _check_size(herald, plates)
    formed = [_formed(room, herald.form, plates, kept)] if herald.form else plates
    if turned_over:
        plates, formed = _in_mirror(plates), _in_mirror(formed)
    return Composed(tuple(formed), stage, bounds(Outline.gather(plate.outline for plate in plates)))


def _in_mirror(plates: list[Plate]) -> list[Plate]:
    return [replace(plate, outline=plate.outline.flipped()) for plate in plates]


def _set_up(herald: ResolvedHerald, turned_over: bool, kept: Kept, faults: list[Fault]) -> Stage:
    """The stage with every shape that can be drawn; those that need one that cannot are passed over."""
    stage = Stage()
    for shape in herald.shapes:
        if all(need in stage.drawn for need in shape.needs):
            try:
                stage = stage.with_shape(shape.name, _drawn(herald, shape, stage, turned_over, kept))
            except DescriptionError as error:
                faults.extend(error.faults)
    return stage


def _is_ready(plate: ResolvedPlate, herald: ResolvedHerald, stage: Stage) -> bool:
    """Whether all shapes that the art of a plate names are on the stage."""
    shapes = {shape.name for shape in herald.shapes}
    return all(name in stage.drawn for name in shapes_in(plate.art) if name in shapes)


def shapes_in(art: Expression) -> tuple[str, ...]:
    """The names in art that may be those of shapes, each once, by the alphabet."""
    return tuple(sorted({name.name.partition(".")[0] for name in names_in(art)}))


def shapes_on_plates(herald: ResolvedHerald) -> frozenset[str]:
    """The shapes that are seen on the plates, by themselves or as parts of others; not those that only place others."""
    arts = {shape.name: shape.art for shape in herald.shapes}
    found: set[str] = set()
    ahead = [plate.art for plate in herald.plates]
    while ahead:
        named = {name for name in shapes_in(ahead.pop()) if name in arts} - found
        found |= named
        ahead += [art for name in sorted(named) if (art := arts[name]) is not None]
    return frozenset(found)


def _check_shape_size(drawn: Drawn) -> None:
    box = bounds(drawn.outline)
    if max(box.width, box.height) > LARGEST_SHAPE_MM:
        raise HeraldryError(f"it comes out {max(box.width, box.height):,.0f} mm large, is that unit meant?")


def _check_size(herald: ResolvedHerald, plates: list[Plate]) -> None:
    box = bounds(Outline.gather(plate.outline for plate in plates))
    try:
        refuse_huge("wide", box.width, herald.scale)
        refuse_huge("high", box.height, herald.scale)
    except LengthError as error:
        raise DescriptionError([herald.description.fault(("width",), str(error))]) from None
    faults = [*_over_the_page(herald, "width", "wide", herald.width_mm, box.width)]
    faults += _over_the_page(herald, "height", "high", herald.height_mm, box.height)
    if faults:
        raise DescriptionError(faults)


def _over_the_page(
    herald: ResolvedHerald, key: str, word: str, asked_mm: float | None, drawn_mm: float
) -> Iterator[Fault]:
    """Ink has its middle in that of the page, so what is too large reaches over both edges."""
    if asked_mm is not None and drawn_mm - asked_mm > PAGE_TOLERANCE_MM:
        what = f"{key}: the ink is {drawn_mm:.3f} mm {word} and reaches over the finished {key} of {asked_mm:.3f} mm"
        yield herald.description.fault((key,), what, "", f"draw it smaller, or leave {key} out, which then follows it")


def _drawn(herald: ResolvedHerald, shape: ResolvedShape, stage: Stage, turned_over: bool, kept: Kept) -> Drawn:
    if shape.kind is None and shape.art is None:
        return LEFT_OUT
    needs = tuple(stage.drawn[need] for need in shape.needs)
    measures = _measures(herald, shape.art) if shape.art else None
    source = (turned_over, shape.kind, shape.arguments, shape.art, measures, needs)
    try:
        return kept.once("shape", source, lambda: _draw_sound(herald, shape, stage, turned_over))
    except DescriptionError:
        raise
    except HeraldryError as error:
        path = herald.description.path_told(("shape", shape.name), str(error))
        raise DescriptionError([herald.description.fault(path, f"shape.{shape.name}: {error}")]) from None


def _measures(herald: ResolvedHerald, art: Expression) -> tuple[object, ...]:
    """What lengths and numbers in art come from, besides its own words."""
    yardstick = herald.yardstick
    named = {name.name: yardstick.names[name.name] for name in names_in(art) if name.name in yardstick.names}
    return named, yardstick.ruler, yardstick.factor


def _draw_sound(herald: ResolvedHerald, shape: ResolvedShape, stage: Stage, turned_over: bool) -> Drawn:
    drawn = _draw(herald, shape, stage, turned_over)
    if drawn.outline.is_empty:
        raise HeraldryError("nothing is left of it")
    _check_shape_size(drawn)
    return drawn


def _draw(herald: ResolvedHerald, shape: ResolvedShape, stage: Stage, turned_over: bool) -> Drawn:
    if shape.art is not None:
        return Drawn(ArtRoom(stage, herald).outline(shape.art))
    assert shape.kind is not None
    arguments = {key: stage.settled(value) for key, value in shape.arguments.items()}
    draw = draw_to_be_turned_over if turned_over else draw_shape
    drawn = draw(shape.kind, arguments)
    return drawn.with_outline(drawn.outline.quantised())


def _plate(room: ArtRoom, plate: ResolvedPlate, kept: Kept, faults: list[Fault]) -> Plate:
    outline = EMPTY
    drawn = room.stage.drawn
    shapes = [drawn[name] for name in shapes_in(plate.art) if name in drawn]
    try:
        source = (plate.art, _measures(room.herald, plate.art), shapes)
        outline = kept.once("plate", source, lambda: room.outline(plate.art))
        if outline.is_empty:
            raise HeraldryError("nothing is left of this plate, its art cuts everything away")
    except HeraldryError as error:
        faults.append(room.herald.description.fault(("plate", plate.name, "art"), f"plate.{plate.name}.art: {error}"))
    return Plate(plate.name, plate.ink, outline)


def _formed(room: ArtRoom, form: ResolvedForm, plates: list[Plate], kept: Kept) -> Plate:
    """The one plate of a derived form; raises DescriptionError where nothing is left of it."""
    path = (VARIANT, room.herald.variant, "form")
    try:
        plate = derived(form, plates, kept, room.outline(form.field) if form.field else None)
        if plate.outline.is_empty:
            raise HeraldryError('nothing is left of this form, name the plates that become bare: bare = ["…"]')
    except HeraldryError as error:
        raise DescriptionError([room.herald.description.fault(path, f"{'.'.join(path)}: {error}")]) from None
    return plate
