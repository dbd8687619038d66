"""Where items are sketched, each no more often than it looks different; and how large they are on any car of the class.

What all cars share is drawn once. What differs by car is kept for a while, since cars in a row often share a date or a
weight; so memory stays flat however many cars there are.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from heraldry.diagrams.cars import Car
from heraldry.diagrams.item import Item
from heraldry.diagrams.sketch import Hold, Sketch
from heraldry.errors import HeraldryError
from heraldry.geometry.outline import Bounds

SKETCHES_KEPT = 64
"""Of one item: more than the stations and dates that a class was weighed at."""


@dataclass(frozen=True, eq=False)
class Studio:
    """Sketches of the items of one class; ``cars`` are all of its cars, whichever of them are drawn."""

    cars: tuple[Car, ...]
    _kept: dict[object, Sketch] = field(default_factory=dict)
    _by_item: dict[str, list[object]] = field(default_factory=dict)
    _extents: dict[object, Bounds] = field(default_factory=dict)
    _differing: dict[str, bool] = field(default_factory=dict)

    def differs(self, item: Item) -> bool:
        """Whether an item shows something else on some car; what a ``{data.…}`` gives is often the same on all."""
        if item.name not in self._differing:
            looks = {item.subject.key(car) for car in self.cars} if item.subject.depends_on_car else set()
            self._differing[item.name] = len(looks) > 1 or (len(self.cars) == 1 and bool(looks))
        return self._differing[item.name]

    def sketch(self, item: Item, car: Car, hold: Hold) -> Sketch:
        """The item on one car; raises HeraldryError for what cannot be drawn."""
        key = (item.name, item.subject.key(car), hold)
        if key not in self._kept:
            self._make_room(item.name)
            self._kept[key] = item.subject.sketch(car, hold)
            self._by_item.setdefault(item.name, []).append(key)
        return self._kept[key]

    def _make_room(self, name: str) -> None:
        kept = self._by_item.get(name, [])
        if len(kept) >= SKETCHES_KEPT:
            del self._kept[kept.pop(0)]

    def extent(self, item: Item, hold: Hold) -> Bounds:
        """The box that holds the item on every car of the class, about the point where it is held.

        Cars that it cannot be drawn on are passed over, for their own fault tells of them; raises HeraldryError
        where there is no other.
        """
        key = (item.name, hold)
        if key not in self._extents:
            cars = self.cars if self.differs(item) else self.cars[:1]
            self._extents[key] = Bounds.round(self._boxes(item, cars or (Car(None),), hold))
        return self._extents[key]

    def _boxes(self, item: Item, cars: tuple[Car, ...], hold: Hold) -> Iterator[Bounds]:
        first_error = None
        drawn = 0
        for car in cars:
            try:
                box = self.sketch(item, car, hold).box
            except HeraldryError as error:
                first_error = first_error or error
            else:
                drawn += 1
                yield box
        if first_error and not drawn:
            raise first_error
