"""Resolves a herald: every word of the description gets its value at the scale that is asked for.

All faults of the file are collected before any is raised, so that one run tells them all.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import cast

from pydantic import BaseModel

from heraldry.describe.arithmetic import Quantity, evaluate_length
from heraldry.describe.description import Description
from heraldry.describe.expression import parse
from heraldry.describe.models import HeraldBase
from heraldry.resolve.argument import Reader
from heraldry.resolve.drawn_file import DrawnFile
from heraldry.resolve.form import resolve_form
from heraldry.resolve.kept import Kept
from heraldry.resolve.largest import refuse_huge
from heraldry.resolve.ledger import Ledger
from heraldry.resolve.resolved import ResolvedHerald, ResolvedPlate
from heraldry.resolve.shapes import needed_shapes, resolve_shapes
from heraldry.resolve.yardstick import Yardstick
from heraldry.units import Ruler, Scale

PAGE_SIDES = {"width": "wide", "height": "high"}
"""The keys of a herald's finished size, and the words for it."""


def resolve_herald(description: Description, asked: Scale | None = None, kept: Kept | None = None) -> ResolvedHerald:
    """A herald with all its values, at the scale asked for (or its own); alphabets are ``kept`` for its variants.

    Raises DescriptionError with every fault that can be found without drawing.
    """
    model = cast(HeraldBase, description.model)
    return _Resolving(DrawnFile(description, model, asked), model, Kept() if kept is None else kept).herald()


@dataclass(frozen=True)
class _Resolving:
    """One herald on its way from words to values."""

    file: DrawnFile
    model: HeraldBase
    kept: Kept

    @property
    def description(self) -> Description:
        return self.file.description

    @property
    def ledger(self) -> Ledger:
        return self.file.ledger

    def herald(self) -> ResolvedHerald:
        own = self.file.own_scale()
        scale = self.file.asked or own
        yardstick = self.file.yardstick(own, self.page_names(Ruler(self.model.unit, own)))
        reader = self.reader(yardstick)
        shapes = resolve_shapes(self.description, self.shape_tables, reader, self.ledger)
        resolved = ResolvedHerald(
            description=self.description,
            name=self.name(reader),
            scale=scale,
            yardstick=yardstick,
            width_mm=self.page_length("width", yardstick, scale),
            height_mm=self.page_length("height", yardstick, scale),
            film=self.model.film,
            paint_hex=self.file.paint_hex(("on",), self.model.on) if self.model.on is not None else None,
            shapes=shapes,
            plates=self.plates(reader),
            form=resolve_form(self.file, reader),
        )
        self.ledger.settle()
        return resolved

    def name(self, reader: Reader) -> str:
        """The herald's name, and after it that of the variant."""
        named, variation = self.file.named(reader), self.description.variation
        return f"{named} {variation.name}" if variation else named

    @property
    def shape_tables(self) -> Mapping[str, BaseModel]:
        """The shape tables by name; the key is added to the model when the table of shapes is known."""
        return cast(Mapping[str, BaseModel], vars(self.model)["shape"])

    def page_names(self, ruler: Ruler) -> dict[str, Quantity]:
        """The page's lengths are named first, so that ``[let]`` may use them."""
        names: dict[str, Quantity] = {}
        for key in PAGE_SIDES:
            raw = getattr(self.model, key)
            if raw is not None:
                names[key] = Quantity(1.0, 1)  # stands in for a length that cannot be read
                with self.ledger.at(self.description, (key,)):
                    others = {name: value for name, value in names.items() if name != key}
                    names[key] = evaluate_length(raw, others, ruler)
        return names

    def page_length(self, key: str, yardstick: Yardstick, scale: Scale | None) -> float | None:
        length_mm = yardstick.length_mm(key) if key in yardstick.names else None
        if length_mm is not None and length_mm <= 0:
            self.ledger.add(self.description, (key,), "a finished size must be more than 0", f"{length_mm:g} mm")
        if length_mm is not None:
            with self.ledger.at(self.description, (key,)):
                refuse_huge(PAGE_SIDES[key], length_mm, scale)
        return length_mm

    def reader(self, yardstick: Yardstick) -> Reader:
        for name in sorted(set(self.shape_tables) & set(yardstick.names)):
            self.ledger.add(self.description, ("shape", name), "the name is a length already, give the shape another")
        reader = self.file.reader(yardstick, frozenset(self.shape_tables))
        # All variants have the same tables of alphabets, which mean the same where their named numbers are the same.
        return replace(reader, alphabet=self.kept.once("alphabets", yardstick, lambda: reader.alphabet))

    def plates(self, reader: Reader) -> tuple[ResolvedPlate, ...]:
        plates = []
        for name, plate in self.model.plate.items():
            ink = self.file.ink(("plate", name, "ink"), plate.ink)
            with self.ledger.at(self.description, ("plate", name, "art")):
                art = parse(plate.art)
                needed_shapes(art, reader)
                if ink is not None:
                    plates.append(ResolvedPlate(name, ink, art))
        return tuple(plates)
