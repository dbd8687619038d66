"""Resolves the form that a variant of a herald asks for: its ink, its measures, and which plates become bare."""

from __future__ import annotations

from collections.abc import Mapping
from typing import cast

from heraldry.describe.description import Variation
from heraldry.describe.expression import Expression, parse
from heraldry.describe.models import Form, HeraldBase, VariantTable
from heraldry.describe.variants import VARIANT
from heraldry.errors import GeometryError, nearest
from heraldry.resolve.argument import Reader
from heraldry.resolve.drawn_file import DrawnFile
from heraldry.resolve.resolved import ResolvedForm
from heraldry.resolve.shapes import needed_shapes

WHITE = "#ffffff"
"""White film, and what a herald that names no paint is taken to lie on."""
USUAL_LINE_MM = 0.2
"""Twice what a usual laser printer prints whole."""
USUAL_GAP_MM = 0.2
"""A little more than such a printer keeps open."""
THICKEST_MM = 100.0
"""Thicker than any line on a model, and a slip of a unit where it is met."""

FORM_KEYS: Mapping[Form, tuple[str, ...]] = {
    "one ink": ("ink", "gap", "bare"),
    "reversed": ("ink", "gap", "bare", "line", "field"),
    "outline": ("ink", "line"),
}
"""What each form may say about itself."""


def resolve_form(file: DrawnFile, reader: Reader) -> ResolvedForm | None:
    """The form that a variant asks for, if it does; what is wrong with it goes to the file's ledger."""
    variation = file.description.variation
    return None if variation is None else _Forming(file, reader, variation).form()


class _Forming:
    """One form on its way from words to values."""

    def __init__(self, file: DrawnFile, reader: Reader, variation: Variation) -> None:
        self.file, self.reader, self.variation = file, reader, variation

    @property
    def table(self) -> VariantTable:
        return self.variation.table

    def form(self) -> ResolvedForm | None:
        word = self.table.form
        self.refuse_other_keys(word)
        if word is None:
            return None
        if self.table.ink is None:
            self.add(
                "form", "a form that is derived from the plates needs its one ink", f"form = '{word}'", 'ink = "…"'
            )
            return None
        ink = self.file.ink((VARIANT, self.variation.name, "ink"), self.table.ink)
        bare, field = self.bare(), self.field()
        line_mm = self.length("line", USUAL_LINE_MM if word == "outline" else 0.0)
        gap_mm = self.length("gap", USUAL_GAP_MM)
        return None if ink is None else ResolvedForm(word, ink, self.ground_hex(), line_mm, gap_mm, bare, field)

    def refuse_other_keys(self, word: Form | None) -> None:
        """A key that the form cannot follow is a fault, not a wish."""
        if word is None and (VARIANT, self.variation.name, "form") in self.file.description.source.lines:
            return  # it is there but cannot be read, which is told already
        known = FORM_KEYS[word] if word else ()
        about = (
            f"of form '{word}', which knows {', '.join(known)}" if word else "of derived forms, and no form is named"
        )
        for key in dict.fromkeys(key for keys in FORM_KEYS.values() for key in keys):
            if getattr(self.table, key) is not None and key not in known:
                self.add(key, f"is no key {about}" if word else f"is a key {about}", "", "leave it out")

    def bare(self) -> frozenset[str] | None:
        plates = cast(HeraldBase, self.file.model).plate
        for i, name in enumerate(self.table.bare or ()):
            if name not in plates:
                path = (VARIANT, self.variation.name, "bare", i)
                self.file.ledger.add(self.file.description, path, "no such plate", f"'{name}'", nearest(name, plates))
        return None if self.table.bare is None else frozenset(self.table.bare)

    def field(self) -> Expression | None:
        if self.table.field is None:
            return None
        with self.file.ledger.at(self.file.description, (VARIANT, self.variation.name, "field")):
            field = parse(self.table.field)
            needed_shapes(field, self.reader)
            return field
        return None

    def length(self, key: str, usual_mm: float) -> float:
        """A measure of the form; what is usual is a matter of printing, and the same at every scale."""
        raw = getattr(self.table, key)
        if raw is None:
            return usual_mm
        with self.file.ledger.at(self.file.description, (VARIANT, self.variation.name, key)):
            length_mm = self.reader.yardstick.length_mm(raw)
            if not 0 < length_mm <= THICKEST_MM:
                raise GeometryError(
                    f"a thickness above 0 and up to {THICKEST_MM:g} mm is wanted, found {length_mm:g} mm"
                )
            return length_mm
        return usual_mm

    def ground_hex(self) -> str:
        """What the herald itself lies on: the variant's own paint says nothing of what is light in it and what dark."""
        herald = cast(HeraldBase, self.variation.herald.model)
        if herald.film == "white" or herald.on is None:
            return WHITE
        return self.file.paint_hex(("on",), herald.on) or WHITE

    def add(self, key: str, what: str, found: str, wanted: str) -> None:
        self.file.ledger.add(self.file.description, (VARIANT, self.variation.name, key), what, found, wanted)
