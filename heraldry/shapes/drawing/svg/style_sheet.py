"""Style sheets inside a drawing, and the cascade: what each element says of itself after all its sources are weighed.

Selectors are names of elements, classes and ids, alone, together, below (``a b``) and directly below (``a > b``) each
other. Everything else that a style sheet may hold is passed over with a note. The order of weight is that of CSS 2.1,
section 6.4: attributes, rules by specificity and place, the style attribute, and what is marked important.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from heraldry.errors import GeometryError
from heraldry.shapes.drawing.notes import Notes
from heraldry.shapes.drawing.svg.tree import Element

PROPERTIES = frozenset(
    [
        "clip-path",
        "clip-rule",
        "color",
        "display",
        "fill",
        "fill-opacity",
        "fill-rule",
        "filter",
        "marker-end",
        "marker-mid",
        "marker-start",
        "mask",
        "opacity",
        "overflow",
        "paint-order",
        "stop-color",
        "stroke",
        "stroke-dasharray",
        "stroke-dashoffset",
        "stroke-linecap",
        "stroke-linejoin",
        "stroke-miterlimit",
        "stroke-opacity",
        "stroke-width",
        "transform",
        "vector-effect",
        "visibility",
    ]
)
"""What is asked for; every other property says nothing about outlines."""

MOST_RULES = 1_000
MOST_MATCHES = 100_000
"""Steps of rules times elements that are compared before a style sheet is refused: some tenths of a second's work."""

_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_COMPOUND = re.compile(r"([A-Za-z][\w-]*|\*)?((?:[.#][\w-]+)*)")
_IMPORTANT = re.compile(r"\s*!\s*important\s*$", re.IGNORECASE)


@dataclass(frozen=True)
class Compound:
    """One step of a selector: a name (or any), with an id and classes."""

    tag: str
    ids: tuple[str, ...]
    classes: frozenset[str]

    def fits(self, element: Element) -> bool:
        """Whether an element is one of these."""
        return (
            self.tag in ("*", element.tag)
            and all(name == element.id for name in self.ids)
            and (not self.classes or self.classes <= set(element.attributes.get("class", "").split()))
        )


@dataclass(frozen=True)
class Rule:
    """A selector, its last step first, with what it declares; ``direct[i]`` says that step i + 1 is the very parent."""

    steps: tuple[Compound, ...]
    direct: tuple[bool, ...]
    weight: tuple[int, int, int, int]
    """Ids, classes, names, and the place in the file."""
    declared: Mapping[str, tuple[str, bool]]

    def fits(self, element: Element) -> bool:
        """Whether an element is meant: step by step, all ancestors that a step can stand for, the nearest first."""
        here = [element] if self.steps[0].fits(element) else []
        for step, is_direct in zip(self.steps[1:], self.direct, strict=True):
            if not here:
                return False
            above = [one.parent for one in here if one.parent] if is_direct else _ancestors(here[0])
            here = [one for one in above if step.fits(one)]
        return bool(here)


@dataclass
class StyleSheet:
    """All rules of a drawing, and the cascade over them."""

    rules: dict[str, list[Rule]] = field(default_factory=dict)
    """By the rarest thing that their last step asks for: an id, else a class, else a name."""
    compared: int = 0

    @staticmethod
    def of(root: Element, notes: Notes) -> StyleSheet:
        """The sheet of all ``style`` elements in a tree."""
        sheet, place = StyleSheet(), 0
        for element in _all_of(root):
            if element.tag == "style" and element.text:
                for rule in _rules(element.text, place, notes):
                    place += 1
                    if place > MOST_RULES:
                        raise GeometryError(f"the drawing has more than {MOST_RULES:,} rules in its style sheets")
                    sheet.rules.setdefault(_rarest(rule.steps[0]), []).append(rule)
        return sheet

    def declared(self, element: Element) -> dict[str, str]:
        """The properties that an element has by itself, not by inheritance."""
        own = {key: value.strip() for key, value in element.attributes.items() if key in PROPERTIES}
        rules = sorted(self._matching(element), key=lambda rule: rule.weight)
        style = declarations(element.attributes.get("style", ""))
        sources = [*(rule.declared for rule in rules), style]
        for important in (False, True):
            for source in sources:
                own.update({key: value for key, (value, is_marked) in source.items() if is_marked == important})
        return own

    def _matching(self, element: Element) -> list[Rule]:
        if not self.rules:
            return []
        keys = [
            f"#{element.id}",
            *(f".{name}" for name in element.attributes.get("class", "").split()),
            element.tag,
            "*",
        ]
        candidates = [rule for key in dict.fromkeys(keys) for rule in self.rules.get(key, ())]
        self.compared += sum(len(rule.steps) for rule in candidates)
        if self.compared > MOST_MATCHES:
            raise GeometryError("the style sheets of the drawing are too large for its elements")
        return [rule for rule in candidates if rule.fits(element)]


def declarations(text: str) -> dict[str, tuple[str, bool]]:
    """The properties of a declaration block that are asked for, each with whether it is marked important.

    >>> declarations("fill: red !important; font-size: 3px")
    {'fill': ('red', True)}
    """
    found = {}
    for part in _COMMENT.sub(" ", text).split(";"):
        name, colon, value = part.partition(":")
        key = name.strip().lower()
        if colon and key in PROPERTIES:
            marked = _IMPORTANT.search(value)
            found[key] = ((value[: marked.start()] if marked else value).strip(), marked is not None)
    return found


def _ancestors(element: Element) -> list[Element]:
    found = []
    while element.parent is not None:
        element = element.parent
        found.append(element)
    return found


def _all_of(root: Element) -> Iterator[Element]:
    waiting = [root]
    while waiting:
        element = waiting.pop()
        yield element
        waiting.extend(reversed(element.children))


def _rules(text: str, place: int, notes: Notes) -> Iterator[Rule]:
    for selectors, block in _blocks(_COMMENT.sub(" ", text), notes):
        declared = declarations(block)
        for selector in selectors.split(",") if declared else ():
            rule = _rule(selector, declared, place)
            place += 1
            if rule is None:
                notes.add(f"a style rule for '{selector.strip()[:40]}' is passed over")
            else:
                yield rule


def _blocks(text: str, notes: Notes) -> Iterator[tuple[str, str]]:
    """Selectors and their blocks; at-rules are passed over whole."""
    if "@import" in text.lower():
        raise GeometryError("the drawing takes colours from a style sheet elsewhere (@import): put them into the file")
    place = 0
    while (opening := text.find("{", place)) >= 0:
        head = text[place:opening].replace("<!--", "").replace("-->", "").strip()
        head = head.rpartition(";")[2].strip()
        closing = text.find("}", opening)
        if head.startswith("@"):
            closing = _end_of_block(text, opening)
            if not head.startswith("@font-face"):
                notes.add(f"the style rules under '{head[:40]}' are passed over")
        else:
            yield head, text[opening + 1 : closing if closing >= 0 else len(text)]
        if closing < 0:
            return
        place = closing + 1


def _end_of_block(text: str, opening: int) -> int:
    """The brace that closes the one at a place; -1 where none does."""
    depth = 0
    for brace in re.finditer(r"[{}]", text[opening:]):
        depth += 1 if brace.group() == "{" else -1
        if depth == 0:
            return opening + brace.start()
    return -1


def _rule(selector: str, declared: Mapping[str, tuple[str, bool]], place: int) -> Rule | None:
    words = selector.replace(">", " > ").split()
    steps: list[Compound] = []
    direct: list[bool] = []
    for word in words:
        if word == ">":
            if not steps or len(direct) == len(steps):
                return None
            direct.append(True)
            continue
        compound = _compound(word)
        if compound is None:
            return None
        if steps and len(direct) < len(steps):
            direct.append(False)
        steps.append(compound)
    if not steps or len(direct) != len(steps) - 1:
        return None
    return Rule(tuple(reversed(steps)), tuple(reversed(direct)), _weight(steps, place), declared)


def _compound(word: str) -> Compound | None:
    found = _COMPOUND.fullmatch(word)
    if not found or not word:
        return None
    marks = re.findall(r"[.#][\w-]+", found.group(2))
    ids = tuple(mark[1:] for mark in marks if mark[0] == "#")
    return Compound(found.group(1) or "*", ids, frozenset(mark[1:] for mark in marks if mark[0] == "."))


def _weight(steps: Iterable[Compound], place: int) -> tuple[int, int, int, int]:
    steps = tuple(steps)
    named = sum(step.tag != "*" for step in steps)
    return sum(len(step.ids) for step in steps), sum(len(step.classes) for step in steps), named, place


def _rarest(step: Compound) -> str:
    if step.ids:
        return f"#{step.ids[0]}"
    return f".{min(step.classes)}" if step.classes else step.tag
