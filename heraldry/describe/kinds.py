"""The kinds of file that there are, each with its model: the one table of them."""

from __future__ import annotations

from collections.abc import Callable

from heraldry.describe.diagram_model import diagram_model
from heraldry.describe.models import Printer, Road, herald_model
from heraldry.describe.values import Strict

KINDS: dict[str, Callable[[], type[Strict]]] = {
    "herald": herald_model,
    "diagram": diagram_model,
    "road": lambda: Road,
    "printer": lambda: Printer,
}
"""Every kind with what makes its model; models are made when they are first asked for."""


def model_of(kind: str) -> type[Strict]:
    """The model of a kind of file; raises KeyError for an unknown kind."""
    return KINDS[kind]()
