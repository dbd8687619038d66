"""What an item shows: a shape in one ink (lettering is one), a herald in its inks, or a marking of fixed form.

A subject says by its ``key`` which cars it looks alike on, so that it is drawn once for all of them.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Protocol

from heraldry.artwork import Ink
from heraldry.describe.text_references import fill, references
from heraldry.diagrams.cars import CAR, DATA, Car
from heraldry.diagrams.sketch import Hold, Layer, Sketch, held_by_ink
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds
from heraldry.plates.compose import Composed, compose
from heraldry.plates.turned_over import draw_shape, draw_to_be_turned_over
from heraldry.resolve.resolved import ResolvedHerald
from heraldry.shapes.table import ShapeKind
from heraldry.shapes.text import SHARE_UP


class Subject(Protocol):
    """What an item shows."""

    @property
    def depends_on_car(self) -> bool:
        """Whether it differs between the cars of the class."""
        ...

    @property
    def inks(self) -> tuple[Ink, ...]:
        """Its inks in printing order."""
        ...

    def key(self, car: Car) -> Hashable:
        """Cars with the same key show the same."""
        ...

    def sketch(self, car: Car, hold: Hold) -> Sketch:
        """The item about the point where it is held."""
        ...


@dataclass(frozen=True, eq=False)
class ShapeSubject:
    """A shape in one ink; ``templates`` are its texts, with their references still open."""

    kind: ShapeKind
    ink: Ink
    arguments: Mapping[str, Any]
    templates: Mapping[str, str]
    texts: Mapping[str, str]

    @cached_property
    def depends_on_car(self) -> bool:
        """Whether a text of it refers to the car."""
        return any(name.startswith((CAR, DATA)) for text in self.templates.values() for name in references(text))

    @property
    def inks(self) -> tuple[Ink, ...]:
        """The one ink."""
        return (self.ink,)

    def key(self, car: Car) -> tuple[str, ...]:
        """Its texts, filled in."""
        values = {**self.texts, **car.texts}
        return tuple(fill(text, values) for text in self.templates.values())

    def sketch(self, car: Car, hold: Hold) -> Sketch:
        """Drawn by the table of shapes; raises HeraldryError for what cannot be drawn."""
        arguments = {**self.arguments, **dict(zip(self.templates, self.key(car), strict=True))}
        if self.is_line:
            arguments |= {"anchor": hold.anchor, "level": hold.level}
        if hold.turned_over:
            drawn = draw_to_be_turned_over(self.kind, arguments)
            drawn = drawn.with_outline(drawn.outline.flipped())
        else:
            drawn = draw_shape(self.kind, arguments)
        layer = Layer(self.ink, drawn.outline)
        if not self.is_line:
            held = held_by_ink([layer], hold)
            return Sketch(held.layers, held.box, drawn.notes)
        ink = bounds(drawn.outline)
        return Sketch((layer,), self._line_box(ink, hold), drawn.notes)

    @property
    def is_line(self) -> bool:
        """Whether it is a line of lettering, which knows by itself where it is held."""
        return self.kind.name == "text"

    @property
    def cap_height_mm(self) -> float | None:
        """The height of its capitals, if it is lettering of one size."""
        return self.arguments.get("cap_height")

    def _line_box(self, ink: Bounds, hold: Hold) -> Bounds:
        """Across by ink, upright from the base line to the heads of the capitals, unless it is turned or bent."""
        cap_height = self.cap_height_mm
        if cap_height is None or self.arguments.get("turn") or self.arguments.get("round"):
            return ink
        foot = -SHARE_UP[hold.level] * cap_height
        return Bounds(ink.left, foot, ink.right, foot + cap_height)


@dataclass(frozen=True, eq=False)
class HeraldSubject:
    """A herald, enlarged to a width or a height if one is given."""

    herald: ResolvedHerald
    width_mm: float | None
    height_mm: float | None
    enlarge: float = 1.0
    depends_on_car: bool = False

    @property
    def inks(self) -> tuple[Ink, ...]:
        """The inks of its plates."""
        return self.herald.inks

    def key(self, car: Car) -> None:
        """The same on all cars."""

    def sketch(self, car: Car, hold: Hold) -> Sketch:  # noqa: ARG002 (all cars show the same)
        """Composed once for each way that it faces."""
        composed = self._turned_over if hold.turned_over else self._as_it_is
        plates = composed.plates
        box = held_by_ink([Layer(plate.ink, plate.outline) for plate in plates], hold).box
        factor = min(
            (
                wanted / drawn
                for wanted, drawn in ((self.width_mm, box.width), (self.height_mm, box.height))
                if wanted is not None
            ),
            default=self.enlarge,
        )
        layers = [Layer(plate.ink, plate.outline.transformed(Affine.scale(factor))) for plate in plates]
        held = held_by_ink(layers, hold)
        notes = tuple(note for drawn in composed.stage.drawn.values() for note in drawn.notes)
        return Sketch(held.layers, held.box, notes)

    @cached_property
    def _as_it_is(self) -> Composed:
        return compose(self.herald)

    @cached_property
    def _turned_over(self) -> Composed:
        return compose(self.herald, turned_over=True)
