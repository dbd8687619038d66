"""Whether mark, number and built date of a freight car are as high as rules of its year ask, on its long sides."""

from __future__ import annotations

from collections.abc import Iterator

from heraldry.artwork import Finding
from heraldry.diagrams.freight import DataLine, line_findings
from heraldry.diagrams.freight.years import Role
from heraldry.diagrams.layout import Layout, Place
from heraldry.diagrams.subjects import ShapeSubject
from heraldry.units import MM_PER_INCH, Scale

ROLE_OF_TEXT: dict[str, Role] = {"{road.mark}": "mark", "{car.number}": "number", "{data.built}": "built"}
"""Which lines of lettering the rules are about, by what they are written with."""
TENTH_IN = 10
"""Heights are told to a tenth of an inch; a model's rounding is far below it."""


def height_findings(layout: Layout, scale: Scale | None, year: int | None) -> tuple[Finding, ...]:
    """Lines that are lower than the year asks for; none where the scale or the year is not known."""
    if scale is None or year is None:
        return ()
    return line_findings(_lines(layout, scale), year)


def _lines(layout: Layout, scale: Scale) -> Iterator[DataLine]:
    for place in layout.places:
        subject = place.item.subject
        if isinstance(subject, ShapeSubject) and subject.cap_height_mm is not None:
            role = ROLE_OF_TEXT.get(subject.templates.get("text", ""))
            if role:
                yield DataLine(place.item.name, _inches(place, subject.cap_height_mm, scale), role)


def _inches(place: Place, cap_height_mm: float, scale: Scale) -> float:
    inches = scale.full_mm(cap_height_mm * place.enlarge) / float(MM_PER_INCH)
    return round(inches * TENTH_IN) / TENTH_IN
