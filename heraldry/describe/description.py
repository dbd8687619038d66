"""A description: one file the user wrote, validated, with the line of every key, and the road it names.

``load`` is the door: text in, a frozen ``Description`` out, or every fault of the file at once.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from pydantic import BaseModel, ValidationError

from heraldry.describe.faults import annotations_at, faults_of
from heraldry.describe.key_lines import KeyPath
from heraldry.describe.kinds import KINDS, model_of
from heraldry.describe.models import DrawnBase, HeraldBase, Identity, RoadHere, Stores, VariantTable
from heraldry.describe.read_toml import Source, read_toml
from heraldry.describe.stand_ins import with_stand_ins
from heraldry.describe.variants import ITSELF, VARIANT, varied
from heraldry.errors import DescriptionError, Fault, HeraldryError, key_named, nearest


@dataclass(frozen=True, eq=False)
class Variation:
    """What makes a description a variant of a herald: its name, its own table, and the herald that it varies."""

    name: str
    table: VariantTable
    herald: Description


@dataclass(frozen=True, eq=False)
class Description:
    """A validated file; ``road`` is the road description that it names, if it names one.

    A herald has ``variants``, each a description by itself, which says by its ``variation`` what it varies.
    """

    source: Source
    model: BaseModel
    road: Description | None = None
    variation: Variation | None = None
    variants: Mapping[str, Description] = field(default_factory=dict)

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

    def variant(self, name: str) -> Description:
        """One of the variants of a herald, or itself; raises HeraldryError where it has none of that name."""
        if name == ITSELF:
            return self
        if name not in self.variants:
            known = nearest(name, [ITSELF, *self.variants]) if self.variants else f"{self.source.path.name} has none"
            raise HeraldryError(f"no variant is called '{name}', {known}")
        return self.variants[name]

    def fault(self, path: KeyPath, what: str, found: str = "", wanted: str = "") -> Fault:
        """A fault at the line of a key (or of the table that the key should be in)."""
        return self.source.fault(path, what, found, wanted)

    def path_told(self, table: KeyPath, message: str) -> KeyPath:
        """What in a table a message is about: the key that it begins with, if the table has it; else the table."""
        keys = [str(path[-1]) for path in self.source.lines if path[:-1] == table]
        key = key_named(message, keys)
        return table if key is None else (*table, key)

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


@dataclass(frozen=True, eq=False)
class Reading:
    """A file as far as it can be read, and the faults of its form.

    Where there are faults, ``description`` holds stand-ins for what could not be read, so that the rest can be
    examined for faults of meaning; it is None where not even that can be.
    """

    description: Description | None
    faults: tuple[Fault, ...]


def load(path: str | Path) -> Description:
    """Read and validate a description file, and the road file it names.

    Raises DescriptionError with every fault of form, each with its file and line.
    """
    reading = read(path)
    if reading.faults or reading.description is None:
        raise DescriptionError(reading.faults)
    return reading.description


def read(path: str | Path) -> Reading:
    """The same, with the faults beside what could be read.

    Raises DescriptionError for a file that is no description at all: not there, no TOML, of no known kind.
    """
    source = read_toml(Path(path), KINDS)
    formed, faults = _formed(source)
    if formed is None:
        return Reading(None, tuple(faults))
    try:
        road, road_faults = _road_of(source, formed.model)
    except DescriptionError as error:
        return Reading(None, (*faults, *error.faults))
    variants, variant_faults = _variants(replace(formed, road=road))
    return Reading(replace(formed, road=road, variants=variants), (*faults, *road_faults, *variant_faults))


def _formed(source: Source) -> tuple[Description | None, list[Fault]]:
    """A file's values in their model, with stand-ins where there are faults; None where no model can be made."""
    model = model_of(str(source.data["kind"]))
    try:
        return Description(source, model.model_validate(source.data)), []
    except ValidationError as error:
        faults = faults_of(source, error)
    wrong = [(path, annotations_at(source.data, path)) for path in faults]
    mended = replace(source, data=with_stand_ins(dict(source.data), wrong))
    try:
        return Description(mended, model.model_validate(mended.data)), list(faults.values())
    except ValidationError:
        return None, list(faults.values())


def _variants(herald: Description) -> tuple[dict[str, Description], list[Fault]]:
    """The variants of a herald, and what is wrong with their form that is not wrong with the file's."""
    variants: dict[str, Description] = {}
    faults: list[Fault] = []
    tables = herald.model.variant if isinstance(herald.model, HeraldBase) else {}
    if ITSELF in tables:
        what = f"a variant cannot be called '{ITSELF}', for so the herald itself is called"
        faults.append(herald.fault((VARIANT, ITSELF), what))
    for name, table in tables.items():
        formed, found = _formed(varied(herald.source, name))
        faults += found
        if formed is not None:
            variants[name] = replace(formed, road=herald.road, variation=Variation(name, table, herald))
    return variants, faults


def _road_of(source: Source, model: BaseModel) -> tuple[Description | None, list[Fault]]:
    named = model.road if isinstance(model, DrawnBase) else None
    file = named.file if isinstance(named, RoadHere) else named
    if not isinstance(file, str):
        return None, []
    where: KeyPath = ("road", "file") if isinstance(named, RoadHere) else ("road",)
    path = source.path.parent / file
    if not path.is_file():
        fault = source.fault(where, "the road file is not there", f"'{file}'", f"looked for {path}")
        raise DescriptionError([fault])
    road = read_toml(path, KINDS)
    if road.data["kind"] != "road":
        found = f"kind '{road.data['kind']}' in {file}"
        raise DescriptionError([source.fault(where, "that file is no road", found, 'it must say kind = "road"')])
    formed, faults = _formed(road)
    if formed is None:
        raise DescriptionError(faults)
    return formed, faults
