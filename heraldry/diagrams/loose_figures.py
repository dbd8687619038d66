"""Loose figures: 0 to 9 in the lettering of a class's numbers, wide apart, to make up any number; millimetres."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from heraldry.artwork import Artwork
from heraldry.diagrams.cars import CAR, Car
from heraldry.diagrams.layout import Place
from heraldry.diagrams.sketch import Hold
from heraldry.diagrams.subjects import ShapeSubject

FIGURES = "0123456789"
NUMBER_ALONE = f"{{{CAR}number}}"
APART = 0.5
"""Film between two figures, in cap heights: room for a knife; common practice, no source."""
NOT_LOOSE = ("fit", "floor", "round", "along", "turn")
"""How a line is laid, which single figures are not."""


def numbers_alike(places: Iterable[Place]) -> tuple[Place, ...]:
    """Places of road numbers, one for each size and lettering."""
    found: dict[object, Place] = {}
    for place in places:
        subject = place.item.subject
        if isinstance(subject, ShapeSubject) and subject.templates.get("text") == NUMBER_ALONE:
            look = tuple((key, subject.arguments.get(key)) for key in ("alphabet", "cap_height", "stem"))
            found.setdefault((look, subject.ink, place.enlarge), place)
    return tuple(found.values())


def loose_figures(place: Place, name: str, scale_name: str, paint_hex: str) -> Artwork:
    """The figures of one number, on a page of their own; raises HeraldryError for a figure that cannot be drawn."""
    subject = place.item.subject
    assert isinstance(subject, ShapeSubject)
    laid = {key: value for key, value in subject.arguments.items() if key not in NOT_LOOSE}
    laid["tracking"] = APART * laid["cap_height"]
    loose = replace(subject, arguments=laid, templates={"text": FIGURES})
    sketch = loose.sketch(Car(None), Hold()).placed(place.enlarge, 0.0, 0.0)
    plates = tuple(layer.plate for layer in sketch.layers)
    return Artwork(f"{name} figures of {place.item.name}", sketch.ink_box, plates, scale_name, paint_hex)
