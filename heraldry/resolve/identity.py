"""The texts of a railroad that ``{road.…}`` may stand for."""

from __future__ import annotations

from collections.abc import Iterator

from heraldry.describe.description import Description
from heraldry.describe.key_lines import KeyPath
from heraldry.describe.models import Identity
from heraldry.describe.text_references import fill
from heraldry.resolve.ledger import Ledger


def texts_of(description: Description, ledger: Ledger) -> dict[str, str]:
    """Every text by its full name; a text may use those that stand before it."""
    texts: dict[str, str] = {}
    for path, raw in _raw_texts(description.identity):
        with ledger.at(description, path):
            texts[".".join(map(str, path))] = fill(raw, texts)
    return texts


def _raw_texts(identity: Identity) -> Iterator[tuple[KeyPath, str]]:
    for key in Identity.model_fields:
        value = getattr(identity, key)
        if isinstance(value, dict):
            yield from ((("road", key, name), text) for name, text in value.items())
        elif value is not None:
            yield ("road", key), str(value)
