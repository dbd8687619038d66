"""Variable fonts: axes chosen by name, and the places on them where a stem or a width comes out as wished.

An axis has a tag of four letters and a name (OpenType specification, fvar). Stem and width are measured on
the H as it is drawn there, and their places are closed in until they fit: no font says what its weights measure.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from heraldry.errors import LetteringError, SoundRangeError, nearest
from heraldry.lettering.fonts.files import Face

Location = dict[str, float]

# The registered axes by the word a user would say (OpenType specification, "Design-variation axis tag
# registry").
_REGISTERED = {"weight": "wght", "width": "wdth", "slant": "slnt", "italic": "ital", "optical size": "opsz"}

STEPS = 20
"""Measures grow nearly in step with an axis, so that three or four are enough; a font file knows a place on it to
1/16384 of its half (F2DOT14), and where that is too coarse for the measure nothing is gained by more."""

FITS = 1e-6
"""A measure that is off by no more than this (cap heights, or normal widths) is as it was wished."""

ROUNDS = 8
"""Weight and width each change what the other measures a little; a round of both shrinks the rest tenfold."""


@dataclass(frozen=True)
class Axis:
    """One axis of a variable font."""

    tag: str
    name: str
    least: float
    normal: float
    most: float


def axes_of(face: Face) -> dict[str, Axis]:
    """The axes of a face by tag; none when it is not variable."""
    if not face.is_variable:
        return {}
    names = face.tables["name"]
    return {
        axis.axisTag: Axis(
            axis.axisTag,
            names.getDebugName(axis.axisNameID) or axis.axisTag,
            axis.minValue,
            axis.defaultValue,
            axis.maxValue,
        )
        for axis in face.tables["fvar"].axes
    }


def place_on_axes(face: Face, asked: Mapping[str, float]) -> Location:
    """A place on the axes from axis names or tags, upper and lower case alike.

    Raises LetteringError for an axis that the font lacks, or a value beyond its ends.
    """
    axes = axes_of(face)
    place = {tag: axis.normal for tag, axis in axes.items()}
    for name, value in asked.items():
        axis = _named(name, axes, face)
        if not axis.least <= value <= axis.most:
            raise LetteringError(
                f"the axis {axis.name} ({axis.tag}) of {face.name} runs from {axis.least:g} "
                f"to {axis.most:g}, found {value:g}"
            )
        place[axis.tag] = float(value)
    return place


def _named(name: str, axes: Mapping[str, Axis], face: Face) -> Axis:
    if not axes:
        raise LetteringError(f"the font {face.name} has no axes, it is not variable; found axis {name!r}")
    wanted = _REGISTERED.get(name.casefold(), name.casefold())
    for axis in axes.values():
        if wanted in (axis.tag.casefold(), axis.name.casefold()):
            return axis
    raise LetteringError(f"the font {face.name} has no axis {name!r}, {nearest(name, axes)}")


@dataclass(frozen=True)
class Wish:
    """A measure that an axis is to bring about: its name, its axis, how much is wanted, how it is taken."""

    what: str
    tag: str
    wanted: float
    measure: Callable[[Location], float]

    def holds(self, place: Location) -> bool:
        """Whether it is fulfilled at a place."""
        return abs(self.measure(place) - self.wanted) <= FITS


def solve(face: Face, place: Location, wishes: tuple[Wish, ...]) -> Location:
    """The place where all wishes hold.

    Raises LetteringError where the font has no such axis, or the axis does not reach so far: with its reach.
    """
    axes = axes_of(face)
    for wish in wishes:
        if wish.tag not in axes and not wish.holds(place):
            raise LetteringError(
                f"the font {face.name} cannot take a {wish.what} of {wish.wanted:.3g}, "
                f"it has no axis {wish.tag!r}; its own is {wish.measure(place):.3g}"
            )
    wishes = tuple(wish for wish in wishes if wish.tag in axes)
    for _ in range(ROUNDS if len(wishes) > 1 else 1):
        before = dict(place)
        for wish in wishes:
            place = {**place, wish.tag: _found(face, place, wish, axes[wish.tag])}
        if place == before:
            break
    return place


def _found(face: Face, place: Location, wish: Wish, axis: Axis) -> float:
    def measured(value: float) -> float:
        return wish.measure({**place, axis.tag: value})

    if wish.holds(place):
        return place[axis.tag]
    low, high = axis.least, axis.most
    at_low, at_high = measured(low), measured(high)
    least, most = min(at_low, at_high), max(at_low, at_high)
    if not least <= wish.wanted <= most:
        message = f"the font {face.name} reaches a {wish.what} from {least:.3g} to {most:.3g}, found {wish.wanted:.3g}"
        raise SoundRangeError(message, least, most)
    return _between(
        lambda value: measured(value) - wish.wanted, (low, at_low - wish.wanted), (high, at_high - wish.wanted)
    )


def _between(off: Callable[[float], float], one: tuple[float, float], other: tuple[float, float]) -> float:
    """Where a measure is off by nothing, between two places with what it is off by there: the Illinois method.

    False position that halves what counts of an end which stays (Dowell and Jarratt, A modified regula falsi method for
    computing the root of an equation, BIT 11, 1971).
    """
    (fixed, fixed_off), (last, last_off) = one, other
    for _ in range(STEPS):
        if fixed_off == last_off:
            return last
        tried = (fixed * last_off - last * fixed_off) / (last_off - fixed_off)
        here = off(tried)
        if abs(here) <= FITS:
            return tried
        if (here < 0) == (last_off < 0):
            fixed_off /= 2  # that end has stayed: let it count for less
        else:
            fixed, fixed_off = last, last_off
        last, last_off = tried, here
    return last
