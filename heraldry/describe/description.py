"""A description: one file the user wrote, validated, with the line of every key, and the road it names.

``load`` is the door: text in, a frozen ``Description`` out, or every fault of the file at once.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import BaseModel, ValidationError

from heraldry.describe.faults import faults_of
from heraldry.describe.key_lines import KeyPath
from heraldry.describe.kinds import KINDS, model_of
from heraldry.describe.models import DrawnBase, Identity, RoadHere, Stores
from heraldry.describe.read_toml import Source, read_toml
from heraldry.errors import DescriptionError, Fault


@dataclass(frozen=True, eq=False)
class Description:
    """A validated file; ``road`` is the road description that it names, if it names one."""

    source: Source
    model: BaseModel
    road: Description | None = None

    @property
    def kind(self) -> str:
        """The kind of file."""
        return str(self.source.data["kind"])

    @property
    def folder(self) -> Path:
        """Where files that it names are looked for."""
        return self.source.path.parent

    @property
    def stem(self) -> str:
        """The file's name without its ending, which names what is drawn from it."""
        return self.source.path.stem

    def fault(self, path: KeyPath, what: str, found: str = "", wanted: str = "") -> Fault:
        """A fault at the line of a key (or of the table that the key should be in)."""
        return self.source.fault(path, what, found, wanted)

    @property
    def identity(self) -> Identity:
        """What the railroad is called: the road's texts, with those of this file put over them."""
        own = self.model if isinstance(self.model, Identity) else getattr(self.model, "road", None)
        base = self.road.identity.model_dump(exclude_none=True) if self.road else {}
        over = own.model_dump(exclude_none=True) if isinstance(own, Identity) else {}
        texts = {**base, **over, "word": {**base.get("word", {}), **over.get("word", {})}}
        return Identity.model_validate({key: texts[key] for key in Identity.model_fields if key in texts})

    def store(self, name: str) -> dict[str, tuple[Description, Any]]:
        """All paints, inks or alphabets by name, each with the description it stands in; this file's own win."""
        inherited = self.road.store(name) if self.road else {}
        own = getattr(self.model, name) if isinstance(self.model, Stores) else {}
        return {**inherited, **{key: (self, value) for key, value in own.items()}}


def load(path: str | Path) -> Description:
    """Read and validate a description file, and the road file it names.

    Raises DescriptionError with every fault found, each with its file and line.
    """
    source = read_toml(Path(path), KINDS)
    model = _validated(source)
    return Description(source, model, _road_of(source, model))


def _validated(source: Source) -> BaseModel:
    try:
        return model_of(str(source.data["kind"])).model_validate(source.data)
    except ValidationError as error:
        raise DescriptionError(faults_of(source, error)) from None


def _road_of(source: Source, model: BaseModel) -> Description | None:
    named = model.road if isinstance(model, DrawnBase) else None
    file = named.file if isinstance(named, RoadHere) else named
    if not isinstance(file, str):
        return None
    where: KeyPath = ("road", "file") if isinstance(named, RoadHere) else ("road",)
    path = source.path.parent / file
    if not path.is_file():
        fault = source.fault(where, "the road file is not there", f"'{file}'", f"looked for {path}")
        raise DescriptionError([fault])
    road = read_toml(path, KINDS)
    if road.data["kind"] != "road":
        found = f"kind '{road.data['kind']}' in {file}"
        raise DescriptionError([source.fault(where, "that file is no road", found, 'it must say kind = "road"')])
    return Description(road, _validated(road))
