"""The published JSON Schema of each kind of file, made from the models that read it."""

from __future__ import annotations

from typing import Any

from heraldry.describe.kinds import KINDS, model_of
from heraldry.errors import HeraldryError, nearest

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def json_schema(kind: str) -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) of a kind of file; raises HeraldryError for an unknown kind."""
    if kind not in KINDS:
        raise HeraldryError(f"no kind of file is called '{kind}', {nearest(kind, KINDS)}")
    return {"$schema": DIALECT, **model_of(kind).model_json_schema()}
