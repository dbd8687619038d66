"""What the validator says of a file, in the words of the person who wrote it, each with its line.

A value may be of several forms (a place is a name, a pair or a table), and the validator complains once for
each form that did not fit; one line a key is kept.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from heraldry.describe.key_lines import KeyPath
from heraldry.describe.models import model_of
from heraldry.describe.read_toml import Source
from heraldry.describe.shape_models import kind_of, shape_models
from heraldry.errors import Fault, nearest

SHOWN_CHARACTERS = 60
"""How much of a wrong value is shown; enough to recognise it, not enough to fill a screen."""


def faults_of(source: Source, error: ValidationError) -> list[Fault]:
    """One fault for each key that does not fit, in the order of the validator's complaints."""
    by_key: dict[KeyPath, list[ErrorDetails]] = {}
    for detail in error.errors(include_url=False, include_context=True):
        by_key.setdefault(_key_path(source.data, detail), []).append(detail)
    return [_fault(source, path, details) for path, details in by_key.items()]


def _key_path(data: Any, detail: ErrorDetails) -> KeyPath:
    """The keys of the file in a validator's location, without the names of the forms that it tried."""
    path: list[str | int] = []
    here = data
    for step in detail["loc"]:
        if (isinstance(here, dict) and step in here) or (
            isinstance(here, list) and isinstance(step, int) and step < len(here)
        ):
            here = here[step]
        else:
            continue
        path.append(step)
    if detail["type"] == "missing":
        path.append(detail["loc"][-1])
    return tuple(path)


def _fault(source: Source, path: KeyPath, details: list[ErrorDetails]) -> Fault:
    first, key = details[0], ".".join(str(step) for step in path)
    kind, found = first["type"], shown(first["input"])
    if kind == "extra_forbidden":
        known = keys_beside(source.data, path)
        return source.fault(path, f"unknown key '{path[-1]}'", "", nearest(str(path[-1]), known))
    if kind == "missing":
        return source.fault(path, f"'{key}' is missing", "", "every table of this kind needs it")
    if kind == "union_tag_not_found":
        word = next(iter(first["input"]), "") if isinstance(first["input"], dict) else ""
        return source.fault(
            path,
            f"'{key}' names no kind of shape",
            found,
            f"one of its keys must be a kind; {nearest(word, shape_models())}",
        )
    return source.fault(
        path, f"'{key}' cannot be read", found, "it may be " + _or(_wanted(detail) for detail in details)
    )


def shown(value: object) -> str:
    """A wrong value as it may stand in one line."""
    text = repr(value) if isinstance(value, str) else str(value)
    text = " ".join(text.split())
    return text if len(text) <= SHOWN_CHARACTERS else text[: SHOWN_CHARACTERS - 1] + "…"


def keys_beside(data: Any, path: KeyPath) -> list[str]:
    """The keys that a table may hold, where ``path`` leads to one that it may not."""
    models: list[type[BaseModel]] = [model_of(str(data["kind"]))]
    here = data
    for step in path[:-1]:
        here = here[step]
        held = [model.model_fields[str(step)].annotation for model in models if step in model.model_fields]
        shape_kind = kind_of(here)
        if path[0] == "shape" and here is data["shape"].get(path[1]) and shape_kind:
            models = [shape_models()[shape_kind]]
        elif held:
            models = [model for annotation in held for model in _models_in(annotation)]
    return sorted({key for model in models for key in model.model_fields})


def _models_in(annotation: Any) -> Iterable[type[BaseModel]]:
    if isinstance(annotation, type) and get_origin(annotation) is None:
        return [annotation] if issubclass(annotation, BaseModel) else []
    return [model for part in get_args(annotation) for model in _models_in(part)]


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


def _wanted(detail: ErrorDetails) -> str:
    if detail["type"] in WANTED:
        return WANTED[detail["type"]]
    context = detail.get("ctx", {})
    if detail["type"] == "literal_error":
        return f"one of {context['expected']}"
    if detail["type"] == "string_pattern_mismatch":
        return "of the form " + _form(str(context["pattern"]))
    return detail["msg"][0].lower() + detail["msg"][1:]


FORMS = {
    r"^#[0-9A-Fa-f]{6}$": "#rrggbb, six hexadecimal digits",
    r"^[A-Za-z_][A-Za-z0-9_]*$": "a name of letters, digits and _",
    r"^[A-Z]{2,4}$": "2 to 4 capital letters",
}


def _form(pattern: str) -> str:
    return FORMS.get(pattern, pattern)


def _or(words: Iterable[str]) -> str:
    return " or ".join(dict.fromkeys(words))
