"""The load grid on a wagon's side: what it may load on lines of each class.

load = axles × axle load of the class − tare, rounded down to half a tonne, and never above what the wagon itself
carries. Axle loads A 16 t, B 18 t, C 20 t, D 22.5 t are from memory; the rounding fits a grid that was published
with its wagon's tare (see the tests). Classes also limit the load per metre of wagon: that is not weighed here.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from heraldry.errors import DataError, nearest

LINE_CLASSES: Mapping[str, int] = MappingProxyType({"A": 16_000, "B": 18_000, "C": 20_000, "D": 22_500})
"""Axle load of each class of line, kg."""
STEP_KG = 500
USUAL_CLASSES = ("A", "B", "C")
MOST_AXLES = 32
"""The heaviest transformer wagons have as many."""
HEAVIEST_TARE_KG = 500_000


@dataclass(frozen=True, slots=True)
class LoadLimit:
    """One column of the grid; ``str()`` is the figure as lettered, in tonnes.

    >>> str(LoadLimit("A", 20_500)), str(LoadLimit("C", 29_000))
    ('20.5', '29.0')
    """

    line_class: str
    load_kg: int

    def __str__(self) -> str:
        return f"{self.load_kg // 1000}.{self.load_kg % 1000 // 100}"


def load_grid(
    tare_kg: int, axles: int, capacity_kg: int | None = None, classes: Sequence[str] = USUAL_CLASSES
) -> tuple[LoadLimit, ...]:
    """The grid of a wagon: a limit for each class of line, in the order asked for.

    ``capacity_kg`` is what the wagon's own body and springs carry. Raises DataError: an unknown class, a tare
    or a number of axles that no wagon has, a wagon that is too heavy for a class when empty.

    >>> [str(limit) for limit in load_grid(11_100, 2)]
    ['20.5', '24.5', '28.5']
    """
    if not 0 < tare_kg <= HEAVIEST_TARE_KG:
        raise DataError(f"a tare of {tare_kg:,} kg is on no wagon, write 1 to {HEAVIEST_TARE_KG:,} kg")
    if not 2 <= axles <= MOST_AXLES:
        raise DataError(f"a wagon has 2 to {MOST_AXLES} axles, found {axles}")
    if capacity_kg is not None and capacity_kg <= 0:
        raise DataError(f"a wagon carries more than nothing, found a capacity of {capacity_kg:,} kg")
    return tuple(_limit(tare_kg, axles, capacity_kg, name) for name in classes)


def _limit(tare_kg: int, axles: int, capacity_kg: int | None, name: str) -> LoadLimit:
    if name not in LINE_CLASSES:
        raise DataError(f"unknown class of line, found '{name[:20]}', {nearest(name[:20], LINE_CLASSES)}")
    on_axles = axles * LINE_CLASSES[name] - tare_kg
    load = on_axles if capacity_kg is None else min(on_axles, capacity_kg)
    if load < STEP_KG:
        raise DataError(
            f"an empty wagon of {tare_kg:,} kg on {axles} axles is too heavy for class {name}, "
            f"which allows {axles * LINE_CLASSES[name]:,} kg"
        )
    return LoadLimit(name, load // STEP_KG * STEP_KG)
