"""Which features of a map file are wanted: by a value, by conditions on their properties, by their layer.

A condition is ``property = value``, and ``where`` joins several with ``and``; other values may follow a ``|``.
Names and words are compared without regard to capitals and accents, numbers as numbers.
"""

from __future__ import annotations

import operator
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, TypeVar

from heraldry.errors import RegionError, nearest
from heraldry.shapes.region.names import folded

OFFERS_MAX = 12
"""How many names an error lists before it gives up."""

COMPARISONS: Mapping[str, Callable[[Any, Any], bool]] = {
    "<=": operator.le,
    ">=": operator.ge,
    "!=": operator.ne,
    "=": operator.eq,
    "<": operator.lt,
    ">": operator.gt,
}

_CONDITION = re.compile(r"\s*([^=<>!|]+?)\s*(<=|>=|!=|=|<|>)\s*(.+?)\s*", re.DOTALL)
_MORE_THAN_A_VALUE = re.compile(r"[=<>]|(^|\s)(or|and)(\s|$)|^\s*$", re.IGNORECASE)
_QUOTES = "'\""

Value = str | int | float


@dataclass(frozen=True)
class Pick:
    """What to take from a map file; None takes all."""

    feature: str | None = None
    """The id or any property's value of the features wanted."""
    where: str | None = None
    """Conditions on properties, such as ``kind = river | canal and rank <= 4``."""
    layer: str | None = None
    """One layer of a file that has several."""


@dataclass(frozen=True, eq=False)
class Item:
    """A feature as a file has it: properties, other labels that it may be picked by, its undecoded geometry."""

    properties: Mapping[str, Value]
    labels: tuple[str, ...]
    geometry: Any


def plain(properties: Mapping[str, Any]) -> dict[str, Value]:
    """The properties that are words or numbers; a number that is none (NaN) stands for one that is missing."""
    return {
        name: value
        for name, value in properties.items()
        if isinstance(value, str | int | float) and not isinstance(value, bool) and value == value
    }


@dataclass(frozen=True)
class Condition:
    """One property compared with one or more values, of which any will do (or, with ``!=``, none)."""

    name: str
    comparison: str
    values: tuple[str, ...]

    def holds(self, item: Item) -> bool:
        """Whether an item has the property, and it compares so."""
        found = {folded(name): value for name, value in item.properties.items()}.get(folded(self.name))
        if found is None:
            return self.comparison == "!="
        results = [_compared(found, self.comparison, value) for value in self.values]
        return all(results) if self.comparison == "!=" else any(results)


AnyItem = TypeVar("AnyItem", bound=Item)


def picked(items: Sequence[AnyItem], pick: Pick, file: str) -> list[AnyItem]:
    """The items wanted; raises RegionError, with what there is, when none is."""
    chosen = list(items)
    if pick.where is not None:
        chosen = _where(chosen, pick.where, file)
    if pick.feature is None:
        return chosen
    wanted = folded(pick.feature)
    named = [item for item in chosen if wanted in map(folded, item.labels)]
    if not named:
        raise RegionError(f"{file} has no feature '{pick.feature}'; {_offer(pick.feature, chosen)}")
    return named


def conditions(where: str) -> tuple[Condition, ...]:
    """The conditions of a ``where``; raises RegionError for what is none.

    >>> conditions("kind = river | canal and rank <= 4")[1]
    Condition(name='rank', comparison='<=', values=('4',))
    """
    return tuple(_condition(part, where) for part in re.split(r"\s+and\s+", where, flags=re.IGNORECASE))


def labels_of(properties: Mapping[str, Value], *also: Any) -> tuple[str, ...]:
    """The values of properties as texts, the name first, and other labels after them."""
    first = [value for name, value in properties.items() if folded(name) == "name"]
    texts = [value for value in (*first, *properties.values(), *also) if isinstance(value, str | int)]
    return tuple(dict.fromkeys(str(text) for text in texts if str(text).strip()))


def _condition(part: str, where: str) -> Condition:
    match = _CONDITION.fullmatch(part)
    if match is None:
        raise RegionError(f"where is '{where[:80]}', wanted conditions like: kind = river | canal and rank <= 4")
    name, comparison, values = match.groups()
    for value in values.split("|"):
        if not value.strip().startswith(("'", '"')) and _MORE_THAN_A_VALUE.search(value):
            raise RegionError(
                f"where has '{value.strip()[:80]}' for a value: others follow a |, as in kind = river | canal, "
                "conditions are joined with and; put quotation marks round a value with such words"
            )
    return Condition(
        name.strip(_QUOTES), comparison, tuple(value.strip().strip(_QUOTES) for value in values.split("|"))
    )


def _where(items: Sequence[AnyItem], where: str, file: str) -> list[AnyItem]:
    wanted = conditions(where)
    known = list(dict.fromkeys(name for item in items for name in item.properties))
    for condition in wanted:
        if folded(condition.name) not in map(folded, known):
            raise RegionError(f"{file} has no property '{condition.name}'; {_listed(condition.name, known)}")
    chosen = [item for item in items if all(condition.holds(item) for condition in wanted)]
    if not chosen:
        raise RegionError(f"no feature of {file} has {where}; {_values(items, wanted[0].name)}")
    return chosen


def _compared(found: Value, comparison: str, value: str) -> bool:
    one, other = _number(found), _number(value)
    if one is not None and other is not None:
        return COMPARISONS[comparison](one, other)
    return COMPARISONS[comparison](folded(str(found)), folded(value))


def _number(value: Value) -> float | None:
    try:
        return float(value)
    except ValueError:
        return None


def _values(items: Iterable[Item], name: str) -> str:
    found = dict.fromkeys(
        str(value)[:40] for item in items for key, value in item.properties.items() if folded(key) == folded(name)
    )
    return f"values of {name}: {', '.join(list(found)[:OFFERS_MAX])}{', …' if len(found) > OFFERS_MAX else ''}"


def _offer(feature: str, items: Iterable[Item]) -> str:
    labels = list(dict.fromkeys(label for item in items for label in item.labels if not label.isdigit()))
    return _listed(feature, labels) if labels else "its features have no names; leave feature out to take all of them"


def _listed(word: str, known: list[str]) -> str:
    offer = nearest(word, known)
    if len(known) <= OFFERS_MAX or offer.startswith("did"):
        return offer
    return "some of them: " + ", ".join(known[:OFFERS_MAX])
