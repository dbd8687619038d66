"""From marks to areas of colour: each mark becomes an outline, and what lies on top hides what lies below.

An area belongs to the colour that is seen there. White on black is so a hole in black, and an area of white. All is
worked out near the finished size, centred, with y up, since the tolerances of geometry are millimetres on the model.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import Difference, SetExpression, Union, clean, combine, intersect
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import EMPTY, LINE, Bounds, Outline, arc_as_cubics
from heraldry.geometry.segments import Arc, Path, Segment
from heraldry.shapes.curves import moved
from heraldry.shapes.drawing.crowding import refuse_crowd, refuse_tangle
from heraldry.shapes.drawing.picture import Mark, Pen, Picture, Window
from heraldry.shapes.drawing.strokes import stroked, together
from heraldry.shapes.path_data import filled

LARGEST_MM = 1e6
"""Nothing on the way to the finished drawing may be larger, nor so far away: numbers would lose their last digits."""

SLIVER_MM = 0.0005
"""Half a micrometre: narrower parts are what two edges that are meant to be one differ by."""

TOO_FINE = 4.0
"""A drawing that is this much smaller than its marks promised, since windows hide most of it, is traced anew larger."""


@dataclass(frozen=True)
class Size:
    """The finished size asked for, in millimetres: a width, a height, both (it must fit), or the drawing's own."""

    width: float | None = None
    height: float | None = None

    def factor(self, box: Bounds) -> float | None:
        """What brings a box to the size; None where nothing is asked for."""
        pairs = ((self.width, box.width), (self.height, box.height))
        asked = [wanted / found for wanted, found in pairs if wanted is not None and found > 0]
        return min(asked, default=None)


@dataclass(frozen=True, eq=False)
class Tracing:
    """The areas of a drawing by colour, the first painted first: finished size, the middle of all at the origin."""

    areas: Mapping[str, Outline]
    onto_model: Affine
    """From the page of the file, in its own units, to the finished drawing."""

    @property
    def width_mm(self) -> float:
        """The finished width of all colours together."""
        return bounds(Outline.gather(self.areas.values())).width


def traced(picture: Picture, size: Size) -> Tracing:
    """The areas of colour of a picture at a finished size; raises GeometryError where there is nothing to be seen."""
    whole, seen = _reach(picture.marks)
    unit_mm = size.factor(seen) or picture.unit_mm
    tracing = _at(picture.marks, _onto_model(whole, seen, unit_mm), size)
    if tracing.onto_model.ratio > TOO_FINE * unit_mm:
        tracing = _at(picture.marks, _onto_model(whole, seen, tracing.onto_model.ratio), size)
    return tracing


def _at(marks: Sequence[Mark], onto_model: Affine, size: Size) -> Tracing:
    """The areas worked out on a model, then brought to the size to the last bit and to the middle."""
    areas = _areas(marks, onto_model)
    if not areas:
        raise GeometryError("nothing of the drawing can be seen")
    box = bounds(Outline.gather(areas.values()))
    home = Affine.scale(size.factor(box) or 1.0) @ Affine.move(-box.centre.x, -box.centre.y)
    placed = {colour: outline.transformed(home) for colour, outline in areas.items()}
    return Tracing(placed, home @ onto_model)


def _onto_model(whole: Bounds, seen: Bounds, unit_mm: float) -> Affine:
    """From the page, y down, to the model, y up, the middle of what is seen at the origin.

    Raises GeometryError where something, if only behind the edge of the page, is beyond all measure.
    """
    largest_mm = max(whole.width, whole.height) * unit_mm
    if largest_mm > LARGEST_MM:
        raise GeometryError(f"something in the drawing is {largest_mm / 1000:,.0f} m large at the finished size")
    return Affine.scale(unit_mm, -unit_mm) @ Affine.move(-seen.centre.x, -seen.centre.y)


def _reach(marks: Sequence[Mark]) -> tuple[Bounds, Bounds]:
    """The boxes on the page of all chains with their lines, and of what may be seen of them."""
    whole = [(mark, box) for mark in marks if (box := _whole_box(mark)) is not None]
    if not whole:
        raise GeometryError("the drawing has nothing that could be drawn")
    seen = [(mark.colour, box) for mark, all_of_it in whole if (box := _seen_box(mark, all_of_it)) is not None]
    if not seen:
        raise GeometryError("nothing of the drawing can be seen")
    refuse_crowd([box for _, box in seen], [colour for colour, _ in seen])
    return Bounds.round(box for _, box in whole), Bounds.round(box for _, box in seen)


def _whole_box(mark: Mark) -> Bounds | None:
    """The box of a mark on the page, its line counted; None where it has no chains."""
    paths = laid(mark.paths, mark.onto_page)
    if not paths:
        return None
    rows = Outline.of(paths)
    if not np.all(np.isfinite(rows.data)):
        raise GeometryError("the drawing has points without end")
    refuse_tangle(rows)
    return bounds(rows).grown(mark.pen.width / 2 * mark.onto_page.ratio if mark.pen else 0.0)


def _seen_box(mark: Mark, box: Bounds) -> Bounds | None:
    """The box of what may be seen of a mark through its windows; None where nothing can."""
    for window in mark.windows:
        within = _window_box(window)
        if within is None or not _overlap(box, within):
            return None
        left, bottom = max(box.left, within.left), max(box.bottom, within.bottom)
        box = Bounds(left, bottom, min(box.right, within.right), min(box.top, within.top))
    return box


@lru_cache(maxsize=64)
def _window_box(window: Window) -> Bounds | None:
    boxes = [box for mark in window.marks if (box := _whole_box(mark)) is not None]
    return Bounds.round(boxes) if boxes else None


def laid(paths: Sequence[Path], onto: Affine) -> list[Path]:
    """Chains under a map; arcs stay arcs where circles stay circles, else they become cubics."""
    return [Path(tuple(_laid(path, onto)), path.closed) for path in paths if path.segments]


def _laid(path: Path, onto: Affine) -> Iterator[Segment]:
    for segment in path:
        if isinstance(segment, Arc) and not onto.is_similarity:
            yield from (moved(cubic, onto) for cubic in arc_as_cubics(segment))
        else:
            yield moved(segment, onto)


def _areas(marks: Sequence[Mark], onto_model: Affine) -> dict[str, Outline]:
    """What is seen of each colour."""
    windows = _Windows(onto_model)
    painted: list[tuple[str, list[Outline]]] = []
    for mark in marks:
        outline = windows.cut(_outline(mark, onto_model), mark.windows)
        if outline.is_empty:
            continue
        if painted and painted[-1][0] == mark.colour:
            painted[-1][1].append(outline)
        else:
            painted.append((mark.colour, [outline]))
    return _seen(painted)


def _outline(mark: Mark, onto_model: Affine) -> Outline:
    """The area of a mark on the model, before windows cut it."""
    onto = onto_model @ mark.onto_page
    if not onto.ratio > 0:
        return EMPTY
    if mark.pen is None:
        return clean(Outline.of(filled(laid(mark.paths, onto))), mark.rule)
    if onto.is_similarity:
        return stroked(laid(mark.paths, onto), _scaled(mark.pen, onto.ratio))
    own_size = Affine.scale(onto.ratio)  # a line leans with its shape, so it is drawn first and leaned afterwards
    outline = stroked(laid(mark.paths, own_size), _scaled(mark.pen, onto.ratio))
    return outline.transformed(onto @ Affine.scale(1 / onto.ratio))


def _scaled(pen: Pen, ratio: float) -> Pen:
    dashes = tuple(length * ratio for length in pen.dashes)
    return replace(pen, width=pen.width * ratio, dashes=dashes, dash_offset=pen.dash_offset * ratio)


class _Windows:
    """Cuts outlines at windows; the area of each window is worked out once."""

    def __init__(self, onto_model: Affine) -> None:
        self.onto_model = onto_model
        self.known: dict[int, Outline] = {}

    def cut(self, outline: Outline, windows: Sequence[Window]) -> Outline:
        """What is seen of an outline through all windows."""
        for window in windows:
            if outline.is_empty:
                return outline
            if not self._shows_all(window, outline):
                outline = intersect(outline, self._area(window))
        return outline

    def _shows_all(self, window: Window, outline: Outline) -> bool:
        """Whether a window is an upright box with everything inside it, as the edge of a page mostly is."""
        area = self._area(window)
        if area.is_empty or area.node_count != 4 or np.any(area.kinds != LINE):
            return False
        sides = np.abs(area.data[:, 3] - area.data[:, 0]).min(axis=1)
        return bool(np.all(sides == 0.0)) and bounds(outline).reach_over(bounds(area)) <= 0.0

    def _area(self, window: Window) -> Outline:
        if id(window) not in self.known:
            parts = [self.cut(_outline(mark, self.onto_model), mark.windows) for mark in window.marks]
            self.known[id(window)] = together([part for part in parts if not part.is_empty])
        return self.known[id(window)]


def _seen(painted: Sequence[tuple[str, list[Outline]]]) -> dict[str, Outline]:
    """What is seen of each colour, when every layer hides those before it."""
    boxes = [bounds(Outline.gather(outlines)) for _, outlines in painted]
    shown: dict[str, list[SetExpression]] = {}
    for i, (colour, outlines) in enumerate(painted):
        above = range(i + 1, len(painted))
        hiding = [j for j in above if painted[j][0] != colour and _overlap(boxes[i], boxes[j])]
        cuts = tuple(outline for j in hiding for outline in painted[j][1])
        layer = Union(tuple(outlines))
        shown.setdefault(colour, []).append(Difference(layer, cuts) if cuts else layer)
    areas = {colour: combine(Union(tuple(parts)), sliver_width_mm=SLIVER_MM).outline for colour, parts in shown.items()}
    return {colour: area for colour, area in areas.items() if not area.is_empty}


def _overlap(one: Bounds, two: Bounds) -> bool:
    return one.left < two.right and two.left < one.right and one.bottom < two.top and two.bottom < one.top
