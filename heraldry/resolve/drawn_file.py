"""What every drawn file says, whatever it draws: its scale, its named lengths, its texts, its paints and inks.

Each part is asked for by the room that resolves a kind of file; what is wrong goes to the ledger that they share.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from heraldry.artwork import Ink
from heraldry.describe.arithmetic import Quantity, evaluate_let
from heraldry.describe.description import Description
from heraldry.describe.key_lines import KeyPath
from heraldry.describe.models import DrawnBase
from heraldry.describe.text_references import fill
from heraldry.errors import LetError, nearest
from heraldry.resolve.alphabets import alphabet_finder
from heraldry.resolve.argument import Reader
from heraldry.resolve.identity import texts_of
from heraldry.resolve.ledger import Ledger
from heraldry.resolve.yardstick import Yardstick
from heraldry.units import HO, Ruler, Scale, parse_scale

COLOUR = re.compile(r"#[0-9A-Fa-f]{6}")


@dataclass(frozen=True)
class DrawnFile:
    """One drawn file on its way from words to values."""

    description: Description
    model: DrawnBase
    asked: Scale | None
    ledger: Ledger = field(default_factory=Ledger)

    def own_scale(self) -> Scale | None:
        """The scale that the file is drawn for."""
        own = None if self.model.scale is None else HO  # which stands in for one that cannot be read
        with self.ledger.at(self.description, ("scale",)):
            own = parse_scale(str(self.model.scale)) if self.model.scale is not None else None
        if self.asked and self.model.scale is None:
            self.ledger.add(
                self.description,
                ("scale",),
                f"the scale {self.asked.name} is asked for, but the file does not say which scale it is drawn for",
                wanted='write for example scale = "HO"',
            )
        return own

    def yardstick(self, own: Scale | None, given: Mapping[str, Quantity]) -> Yardstick:
        """The names of ``[let]`` on top of those given, and the factor to the scale asked for."""
        ruler = Ruler(self.model.unit, own)
        names = dict(given)
        try:
            names |= evaluate_let(self.model.let, names, ruler)
        except LetError as error:
            for name, one in error.errors.items():
                self.ledger.add(self.description, ("let", name), str(one))
            names |= self._with_stand_ins(error, names, ruler)
        factor = float(own.ratio / self.asked.ratio) if own and self.asked else 1.0
        return Yardstick(names, ruler, factor)

    def _with_stand_ins(self, error: LetError, given: Mapping[str, Quantity], ruler: Ruler) -> dict[str, Quantity]:
        """The names of ``[let]`` with a stand-in for each that has no value, so that the rest can be examined."""
        stand_ins = dict.fromkeys(error.errors, 1)
        try:
            return evaluate_let({**self.model.let, **stand_ins}, given, ruler)
        except LetError:
            return {name: Quantity(1.0) for name in self.model.let}

    def reader(self, yardstick: Yardstick, shapes: frozenset[str] = frozenset()) -> Reader:
        """What the values of the file are read with; ``shapes`` are those that others may name."""
        return Reader(
            yardstick,
            texts_of(self.description, self.ledger),
            alphabet_finder(self.description, yardstick),
            self.description.folder,
            shapes,
        )

    def named(self, reader: Reader) -> str:
        """The name of what is drawn: as written, else that of the file."""
        with self.ledger.at(self.description, ("name",)):
            return fill(self.model.name, reader.texts) if self.model.name else self.description.stem
        return self.description.stem

    def paint_hex(self, path: KeyPath, name: str) -> str | None:
        """The colour of a paint that a key names or writes as #rrggbb; None, and a fault, where there is none."""
        if COLOUR.fullmatch(name):
            return name.lower()
        paints = self.description.store("paint")
        if name not in paints:
            wanted = f"{nearest(name, paints)} or a colour #rrggbb" if paints else "no paint is known, write #rrggbb"
            self.ledger.add(self.description, path, "no such paint", f"'{name}'", wanted)
            return None
        return str(paints[name][1].colour).lower()

    def ink(self, path: KeyPath, name: str) -> Ink | None:
        """The ink that a key names; None, and a fault, where there is none."""
        inks = self.description.store("ink")
        if name not in inks:
            wanted = nearest(name, inks) if inks else 'write [ink.NAME] with colour = "#rrggbb"'
            self.ledger.add(self.description, path, "no such ink", f"'{name}'", wanted)
            return None
        ink = inks[name][1]
        return Ink(name, ink.colour.lower(), ink.opaque)
