"""Texts that refer to other texts: ``"{road.name} — {number}"``.

A name between braces is replaced by what it stands for, once: what is put in is not searched again, so that a
name with braces in it stays as it is. ``{{`` and ``}}`` are the braces themselves.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from heraldry.describe.expression import refusal
from heraldry.errors import nearest

_PIECE = re.compile(r"\{\{|\}\}|\{[^{}]*\}|[{}]|[^{}]+")
_NAME = re.compile(r"[A-Za-z0-9_]+(?:\.[A-Za-z0-9_]+)*")


def fill(text: str, values: Mapping[str, object]) -> str:
    """The text with every reference replaced.

    Raises ExpressionError: a reference to nothing, a brace that is not closed or not opened.

    >>> fill("{road.name} {{{road.mark}}}", {"road.name": "Fern Hollow", "road.mark": "FH"})
    'Fern Hollow {FH}'
    """
    return "".join(str(values[piece]) if is_name else piece for piece, is_name in _pieces(text, values))


def references(text: str) -> tuple[str, ...]:
    """The names a text refers to, in order; raises ExpressionError for braces out of order.

    >>> references("{road.name} {{x}} {number}")
    ('road.name', 'number')
    """
    return tuple(piece for piece, is_name in _pieces(text, None) if is_name)


def _pieces(text: str, values: Mapping[str, object] | None) -> Iterator[tuple[str, bool]]:
    """Runs of plain text, and names (checked against ``values``, unless that is None)."""
    for piece in _PIECE.finditer(text):
        written = piece[0]
        if written in ("{{", "}}"):
            yield written[0], False
        elif written == "{":
            raise refusal("a brace is never closed, found '{', write {road.name}, or {{ for a brace", piece.start())
        elif written == "}":
            raise refusal("a brace is never opened, found '}', write }} for a brace", piece.start())
        elif written.startswith("{"):
            yield _name(written, piece.start(), values), True
        else:
            yield written, False


def _name(written: str, position: int, values: Mapping[str, object] | None) -> str:
    name = written[1:-1].strip()
    shown = f"'{written[:60]}'"
    if not _NAME.fullmatch(name):
        raise refusal(f"no name between braces, found {shown}, write {{road.name}}, or {{{{ for a brace", position)
    if values is not None and name not in values:
        wanted = nearest(name, values) if values else "no names are known here"
        raise refusal(f"a reference to nothing, found {shown}, {wanted}", position)
    return name
