"""Where letters that are to be interlaced stand: in the places where they cross most cleanly; in cap heights.

Two letters stand stepped down over each other, a joiner in the corner that is left; of three the middle one is the
largest, and its neighbours stand higher, lower or smaller beside it. Places are ranked roughly for a whole field of
them (``clash``), the better ones are looked at more closely, pair by pair (``cleanness``), and the finalists are
woven (``crossings``). What is chosen crosses cleanly and more than once, leaves no crumbs, and is compact and
symmetrical; letters that do not go together stand beside each other instead.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import product

import numpy as np
import shapely

from heraldry.errors import LetteringError
from heraldry.geometry.boolean import to_polygon
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.lettering.monogram.clash import ALONG, CROSSINGS, WORTH, Window, likely_places
from heraldry.lettering.monogram.cleanness import crumbs, looks, moved_to
from heraldry.lettering.monogram.crossings import woven
from heraldry.lettering.monogram.hand import JOINERS, Hand, moved

# The shares below are taken from the look of it: common practice, no source.


@dataclass(frozen=True)
class Composition:
    """Sizes of letters, and how far up or down beside the main one the others may stand, in cap heights.

    Widths are in those of the alphabet, ``wished`` and ``farthest`` across in mean widths of two letters.
    """

    size: float
    main_wide: float
    side_wide: float
    ups: tuple[float, ...]
    wished: float = 0.56
    farthest: float = 1.15


STEPPED = (
    Composition(1.0, 1.0, 1.0, (-0.18, -0.23, -0.28, -0.33, -0.40, -0.47), farthest=1.2),
    Composition(0.8, 1.3, 1.15, (0.0, -0.10, -0.17, -0.24, -0.31, -0.38), farthest=1.2),
    Composition(0.85, 1.3, 1.15, (-0.47, -0.38, -0.3, 0.3, 0.38), farthest=1.2),
)
JOINED = (Composition(1.0, 1.0, 1.0, (-0.40, -0.42, -0.46, -0.52), farthest=1.02),)
FLANKED = (
    Composition(0.72, 1.3, 1.15, (-0.2, -0.14, -0.07, 0.0, 0.07, 0.14, 0.2)),
    Composition(0.85, 1.15, 1.0, (-0.4, -0.34, -0.28, -0.22, -0.16, 0.16, 0.22, 0.28, 0.34, 0.4)),
    Composition(0.85, 1.4, 1.2, (-0.4, -0.3, -0.2, -0.1, -0.05, 0.0, 0.05, 0.1, 0.2, 0.3, 0.4)),
)

NEAREST = 0.3
"""No letter stands nearer than so many mean widths to the middle of another."""

UP_FREE = 0.3
"""Beyond so many cap heights up or down a letter is away from where it is wished."""

FLAT_STEMS = 0.06
"""Letters are flattened to so many stems to be looked at."""

PLACES, PAIRED, FINALISTS = 24, 20, 10
"""So many places of a letter are looked at closely, the best so many of them are tried with those of another letter, and
so many whole monograms are woven."""

OFTEN = 2
"""Finalists that have a letter in the same place: no more, so that they differ."""

UNTIDY, CRUMBS, LOST, APART = 5.0, 0.5, 0.1, 8.0
"""What a place costs for an untidy crossing, for a crumb that might be left, for a square stem of lost ink, and if the
letters do not come together."""

ASKEW, STEP_ASKEW, UNEVEN = 3.0, 8.0, 0.1
"""What it costs that one neighbour stands high and the other low; that they stand unevenly high, by the cap height; and
unevenly far, by the stem."""

RISING = 1.5
"""What it costs that the second of two letters stands higher than the first."""

LONG, LONG_FROM, PAIR_LONG_FROM = 8.0, 1.2, 1.1
"""What it costs that three letters, or two, are longer than so many times their height, for each height more."""

FREE_GAPS = 3.0
"""The outer two of three letters are at least so many gaps apart."""

LEFT_CRUMB, KEPT, FADED = 5.0, 0.87, 150.0
"""What a crumb costs that is left, and a letter of which less than this share is left, for all of it."""


@dataclass(frozen=True)
class Spot:
    """One letter of a layout: its size in cap heights, how much wider it is, the place of its middle in cap heights."""

    initial: str
    size: float
    wider: float = 1.0
    at: Point = ORIGIN

    def drawn(self, hand: Hand, cap_mm: float) -> Outline:
        """The letter where it stands."""
        return moved(hand.letter(self.initial, self.size * cap_mm, self.wider), self.at * cap_mm)


Layout = tuple[Spot, ...]


@dataclass(frozen=True)
class Task:
    """What is to be laid out: initials by a hand at a cap height of 1, with a gap between strokes that cross."""

    initials: Sequence[str]
    hand: Hand
    gap: float

    def drawn(self, spots: Iterable[Spot]) -> tuple[Drawn, ...]:
        """Letters that stand at the origin as yet."""
        letters = [self.hand.sketch(spot.initial, spot.size, spot.wider) for spot in spots]
        return tuple(Drawn(bounds(letter), to_polygon(letter, FLAT_STEMS * self.hand.stem_mm)) for letter in letters)


@dataclass(frozen=True, eq=False)
class Drawn:
    """A letter about the origin, its box, and the letter flattened."""

    box: Bounds
    flat: shapely.Geometry


@dataclass(frozen=True, eq=False)
class Candidate:
    """A layout, its letters about the origin, whole and flattened, and what speaks against it."""

    layout: Layout
    letters: Sequence[Drawn]
    cost: float


def laid_out(initials: Sequence[str], hand: Hand, gap: float) -> Layout:
    """Two letters stepped down over each other, or a middle letter crossed by one on either side.

    The stem of the hand and the gap are in cap heights. Raises LetteringError for more than three initials.
    """
    if len(initials) > 3:
        raise LetteringError(f"two or three initials are interlaced, found {len(initials)}: {' '.join(initials)}")
    if len(initials) == 1:
        return (Spot(initials[0], 1.0),)
    if len(initials) == 3 and initials[1] in JOINERS:
        return _joined(Task((initials[0], initials[2]), hand, gap), initials[1])
    task = Task(initials, hand, gap)
    return _best(task, _stepped(task, STEPPED) if len(initials) == 2 else _flanked(task)).layout


def _joined(pair: Task, joiner: str) -> Layout:
    """Two letters stepped down further, and the joiner small in the corner that the second leaves free."""
    best = _best(pair, _stepped(pair, JOINED))
    (first, second), step = best.layout, -best.layout[1].at.y
    size = step - 2 * pair.gap
    right = [letter.box.right + spot.at.x for letter, spot in zip(best.letters, best.layout, strict=True)]
    top = best.letters[0].box.top - bounds(pair.hand.letter(joiner, size)).height / 2
    return first, Spot(joiner, size, at=Point(sum(right) / 2, top)), second


def _stepped(task: Task, compositions: Iterable[Composition]) -> Iterator[Candidate]:
    for composition in compositions:
        spots = (
            Spot(task.initials[0], 1.0, composition.main_wide),
            Spot(task.initials[1], composition.size, composition.side_wide),
        )
        first, second = task.drawn(spots)
        for place, cost in _standings(task, composition, first, second, 1.0):
            wide = place.x + (first.box.width + second.box.width) / 2
            high = max(0.5 + composition.size / 2 + abs(place.y), 1.0)
            cost += RISING * (place.y > 0) + LONG * max(wide / high - PAIR_LONG_FROM, 0.0)
            yield Candidate((spots[0], replace(spots[1], at=place)), (first, second), cost)


def _flanked(task: Task) -> Iterator[Candidate]:
    for composition in FLANKED:
        sizes = (composition.size, 1.0, composition.size)
        widths = (composition.side_wide, composition.main_wide, composition.side_wide)
        spots = tuple(map(Spot, task.initials, sizes, widths))
        letters = left, middle, right = task.drawn(spots)
        here, there = (_standings(task, composition, middle, side, way) for side, way in ((left, -1), (right, 1)))
        half_widths = (left.box.width + right.box.width) / 2
        for (one, cost), (other, other_cost) in product(here[:PAIRED], there[:PAIRED]):
            if other.x - one.x > half_widths + FREE_GAPS * task.gap:
                layout = (replace(spots[0], at=one), spots[1], replace(spots[2], at=other))
                yield Candidate(layout, letters, cost + other_cost + _unbalanced(task, one, other, half_widths))


def _unbalanced(task: Task, left: Point, right: Point, half_widths: float) -> float:
    """What speaks against two places for neighbours of a middle letter, taken together."""
    askew = ASKEW * (left.y != right.y) + STEP_ASKEW * abs(abs(left.y) - abs(right.y))
    high = 1.0 + max(abs(left.y), abs(right.y)) / 2
    long = max((right.x - left.x + half_widths) / high - LONG_FROM, 0.0)
    return askew + UNEVEN * abs(left.x + right.x) / task.hand.stem_mm + LONG * long


def _standings(task: Task, composition: Composition, main: Drawn, side: Drawn, way: float) -> list[tuple[Point, float]]:
    """Places of a letter to the right (1) or left (-1) of the main one, and what speaks against each; the best first."""
    width, stem = (main.box.width + side.box.width) / 2, task.hand.stem_mm
    near, far = sorted((way * NEAREST * width, way * composition.farthest * width))
    wished = Point(way * composition.wished * width, UP_FREE)
    window = Window((near, far), composition.ups, wished, width)
    likely = likely_places(main.flat, side.flat, stem, window, PLACES)
    places = [place.at for place in likely]
    seen = looks(main.flat, side.flat, places, stem, task.gap)
    cost = (
        window.away(np.array([place.x for place in places]), np.array([place.y for place in places]))
        + ALONG * np.array([place.along for place in likely])
        - np.interp(seen.crossings, CROSSINGS, WORTH)
        + UNTIDY * seen.untidy
        + CRUMBS * seen.crumbs
        + LOST * seen.lost
        + APART * seen.apart
    )
    return sorted(zip(places, cost.tolist(), strict=True), key=lambda one: one[1])


def _best(task: Task, candidates: Iterable[Candidate]) -> Candidate:
    """The best of the finalists, once they are woven."""
    finalists = _various(sorted(candidates, key=lambda candidate: candidate.cost))
    return min(finalists, key=lambda candidate: candidate.cost + _spoilt(task, candidate))


def _various(candidates: Iterable[Candidate]) -> list[Candidate]:
    """The first few that differ from each other."""
    found: list[Candidate] = []
    often: Counter[tuple[int, Spot]] = Counter()
    for candidate in candidates:
        standing = [(i, spot) for i, spot in enumerate(candidate.layout) if spot.at != ORIGIN]
        if all(often[one] < OFTEN for one in standing):
            often.update(standing)
            found.append(candidate)
        if len(found) == FINALISTS:
            break
    return found


def _spoilt(task: Task, candidate: Candidate) -> float:
    """What the weaving costs: crumbs that are left, and letters that lose more ink than they can spare."""
    stem = task.hand.stem_mm
    whole = [
        moved_to(letter.flat, [spot.at])[0] for letter, spot in zip(candidate.letters, candidate.layout, strict=True)
    ]
    left = woven(whole, task.gap, stem)
    kept = shapely.area(left) / shapely.area(np.array(whole, dtype=object))
    return float(LEFT_CRUMB * crumbs(left, stem).sum() + FADED * np.maximum(KEPT - kept, 0.0).sum())
