"""What the validator says of a file, in the words of the person who wrote it, each with its line.

A value may be of several forms (a place is a name, a pair or a table), and the validator complains once for
each form that did not fit; one line a key is kept.
"""

from __future__ import annotations

from collections.abc import Iterable
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic import BaseModel, Discriminator, Tag, ValidationError
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from heraldry.describe.diagram_model import item_models
from heraldry.describe.key_lines import KeyPath
from heraldry.describe.kinds import model_of
from heraldry.describe.read_toml import Source
from heraldry.describe.shape_models import shape_models
from heraldry.errors import Fault, nearest

ANY = "*"
TOLD_APART: tuple[tuple[str, ...], ...] = (
    ("shape", ANY),
    ("item", ANY),
    ("side", ANY, "area", ANY),
    ("side", ANY, "keepout", ANY),
)
"""Where tables stand that are told apart by their kind; the validator puts that into its locations after them."""

SHOWN_CHARACTERS = 60
"""How much of a wrong value is shown; enough to recognise it, not enough to fill a screen."""


def faults_of(source: Source, error: ValidationError) -> dict[KeyPath, Fault]:
    """One fault for each key that does not fit, in the order of the validator's complaints."""
    by_key: dict[KeyPath, list[ErrorDetails]] = {}
    for detail in error.errors(include_url=False, include_context=True):
        by_key.setdefault(_key_path(source.data, detail), []).append(detail)
    told_inside = {path[:-1] for path in by_key if path}
    return {path: _fault(source, path, details) for path, details in by_key.items() if path not in told_inside}


def _key_path(data: Any, detail: ErrorDetails) -> KeyPath:
    """The keys of the file in a validator's location, without the names of the forms that it tried."""
    path: list[str | int] = []
    here: Any = data
    loc = _without_kind(detail["loc"])
    for step in loc:
        if _holds(here, step):
            here = here[step]
            path.append(step)
    if detail["type"] == "missing":
        path.append(loc[-1])
    return tuple(path)


def _holds(value: Any, step: int | str) -> bool:
    """Whether a table has such a key, or a list such an item."""
    if isinstance(value, list):
        return isinstance(step, int) and step < len(value)
    return isinstance(value, dict) and step in value


def _without_kind(loc: tuple[int | str, ...]) -> tuple[int | str, ...]:
    for place in TOLD_APART:
        if _stands_at(loc[: len(place)], place):
            return (*loc[: len(place)], *loc[len(place) + 1 :])
    return loc


def _stands_at(path: KeyPath, place: tuple[str, ...]) -> bool:
    return len(path) == len(place) and all(want in (ANY, step) for step, want in zip(path, place, strict=True))


def _fault(source: Source, path: KeyPath, details: list[ErrorDetails]) -> Fault:
    first, key = details[0], ".".join(str(step) for step in path)
    kind, found = first["type"], shown(first["input"])
    if kind == "extra_forbidden":
        known = keys_beside(source.data, path)
        return source.fault(path, f"unknown key '{path[-1]}'", "", nearest(str(path[-1]), known))
    if kind == "missing":
        return source.fault(path, f"'{key}' is missing", "", "every table of this kind needs it")
    if kind == "union_tag_not_found":
        kinds = item_models() if path[0] == "item" else shape_models()
        return source.fault(
            path,
            f"'{key}' names no kind of shape",
            found,
            f"one of its keys must be a kind; {_kind_meant(first['input'], kinds)}",
        )
    return source.fault(
        path, f"'{key}' cannot be read", found, "it may be " + _or(_wanted(detail) for detail in details)
    )


def _kind_meant(table: object, known: Iterable[str]) -> str:
    """Say which kind of shape a table without one may be meant to be, by the first of its keys."""
    word = next(iter(table), "") if isinstance(table, dict) else ""
    kinds = [kind for kind in KINDS_BY_MEASURE.get(word, ()) if kind in known]
    return f"did you mean {_or(repr(kind) for kind in kinds)}?" if kinds else nearest(word, known)


def shown(value: object) -> str:
    """A wrong value as it may stand in one line."""
    text = repr(value) if isinstance(value, str) else str(value)
    text = " ".join(text.split())
    return text if len(text) <= SHOWN_CHARACTERS else text[: SHOWN_CHARACTERS - 1] + "…"


def keys_beside(data: Any, path: KeyPath) -> list[str]:
    """The keys that a table may hold, where ``path`` leads to one that it may not."""
    held, here = _held_at(data, path[:-1])
    models = [form for one in held for form in _forms(one, here) if _is_model(form)]
    return sorted({key for model in models for key in model.model_fields})


def annotations_at(data: Any, path: KeyPath) -> list[Any]:
    """What the key at the end of a path is let be; nothing for a key that its table may not hold."""
    held, here = _held_at(data, path[:-1])
    return [inner for one in held for form in _forms(one, here) for inner in _inside(form, path[-1])]


def _held_at(data: Any, path: KeyPath) -> tuple[list[Any], Any]:
    """What the models let a value be, and the value itself."""
    here = data
    held: list[Any] = [model_of(str(data["kind"]))]
    for step in path:
        held = [inner for one in held for form in _forms(one, here) for inner in _inside(form, step)]
        here = here[step]
    return held, here


def _forms(annotation: Any, value: Any) -> list[Any]:
    """What an annotation lets a value be; where forms are told apart by a key, the form of that value."""
    if get_origin(annotation) is Annotated:
        inner, *about = get_args(annotation)
        told_apart = next((one for one in about if isinstance(one, Discriminator)), None)
        if told_apart is None:
            return _forms(inner, value)
        kind = told_apart.discriminator
        tag = Tag(str(kind(value))) if callable(kind) else None
        return [get_args(form)[0] for form in get_args(inner) if tag in get_args(form)] or _forms(inner, value)
    if get_origin(annotation) in (Union, UnionType):
        return [form for part in get_args(annotation) for form in _forms(part, value)]
    return [annotation]


def _inside(form: Any, step: str | int) -> list[Any]:
    """What is held at a key of a table, or in a list."""
    if _is_model(form):
        field = form.model_fields.get(step)
        return [] if field is None else [_with_limits(field)]
    return [get_args(form)[-1]] if get_origin(form) in (dict, list) else []


def _with_limits(field: FieldInfo) -> Any:
    """A key's annotation with what limits it (a pattern, a length), which the validator keeps beside it."""
    return Annotated[field.annotation, *field.metadata] if field.metadata else field.annotation


def _is_model(form: Any) -> bool:
    return isinstance(form, type) and get_origin(form) is None and issubclass(form, BaseModel)


KINDS_BY_MEASURE = {
    "radius": ("circle", "ring"),
    "diameter": ("circle", "ring"),
    "width": ("box",),
    "height": ("box",),
    "points": ("polygon",),
    "letters": ("text",),
    "cap_height": ("text", "lines"),
}
"""What people measure first, and the kinds of shape that are told by another key: circle = 3 is one of radius 3."""

WANTED = {
    "string_type": "text in quotation marks",
    "int_type": "a whole number",
    "float_type": "a number",
    "bool_type": "true or false",
    "list_type": "a list in [ ]",
    "tuple_type": "a list in [ ]",
    "dict_type": "a table",
    "model_type": "a table",
    "model_attributes_type": "a table",
    "finite_number": "a number that is not endless",
}


LIMITS = {
    "string_too_short": "text that is not empty",
    "string_too_long": "text of at most {max_length} letters",
    "greater_than_equal": "a number of at least {ge}",
    "greater_than": "a number above {gt}",
    "less_than_equal": "a number of at most {le}",
    "less_than": "a number below {lt}",
}


def _wanted(detail: ErrorDetails) -> str:
    if detail["type"] in WANTED:
        return WANTED[detail["type"]]
    context = detail.get("ctx", {})
    if detail["type"] in LIMITS:
        return LIMITS[detail["type"]].format(**context)
    if detail["type"] == "literal_error":
        return f"one of {context['expected']}"
    if detail["type"] in ("too_short", "too_long"):
        what = "a table" if isinstance(detail["input"], dict) else "a list"
        limit = f"least {context['min_length']}" if "min_length" in context else f"most {context['max_length']}"
        return f"{what} of at {limit}"
    if detail["type"] == "string_pattern_mismatch":
        return "of the form " + _form(str(context["pattern"]))
    return detail["msg"][0].lower() + detail["msg"][1:]


FORMS = {
    r"^#[0-9A-Fa-f]{6}$": "#rrggbb, six hexadecimal digits",
    r"^[A-Za-z_][A-Za-z0-9_]*$": "a name of letters, digits and _",
    r"^[A-Z]{2,4}$": "2 to 4 capital letters",
    r"^[0-9]{4}-[0-9]{2}$": "1957-04, a year and a month",
    r"^[0-9]{3}$": "017, three digits in quotation marks",
}


def _form(pattern: str) -> str:
    return FORMS.get(pattern, pattern)


def _or(words: Iterable[str]) -> str:
    return " or ".join(dict.fromkeys(words))
