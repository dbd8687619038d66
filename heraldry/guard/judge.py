"""What to know before printing: everything about an artwork that the printer, the eye or the paint will not allow."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace

from heraldry.artwork import Artwork, Finding, Plate
from heraldry.geometry.boolean import intersect
from heraldry.geometry.measure import area
from heraldry.geometry.outline import Bounds, Outline
from heraldry.guard import colour
from heraldry.guard.far_places import of_far_places
from heraldry.guard.finest import Spot, narrow_gaps, thin_lines
from heraldry.guard.lettering import of_lettering
from heraldry.guard.reading import can_be_read, letter_height_mm
from heraldry.plates.compose import Composed, shapes_on_plates
from heraldry.resolve.kept import Kept
from heraldry.resolve.limits import PrinterLimits
from heraldry.resolve.resolved import ResolvedHerald, ResolvedShape

READING_DISTANCE_MM = 300.0
"""A model in the hand; common practice, no source."""
SIZE_TOLERANCE_MM = 0.01
"""Ink that misses the finished size by less than this is as asked."""
COVERED = 0.9
"""The share of a plate that must lie on an opaque ink for that ink to be its ground."""


def judge(
    artwork: Artwork, herald: ResolvedHerald, composed: Composed, printer: PrinterLimits, kept: Kept | None = None
) -> tuple[Finding, ...]:
    """All findings, plate by plate, then those of the whole; plates ``kept`` of another variant are known already."""
    known = Kept() if kept is None else kept
    plates = range(len(artwork.plates))
    on_plates = shapes_on_plates(herald)
    seen = [shape for shape in herald.shapes if shape.name in on_plates]
    return (
        *(found for i in plates for found in _of_plate(artwork, i, herald.film, printer, known)),
        *_of_size(herald, composed.box),
        *_of_small_lettering(seen),
        *of_lettering(herald, composed, known),
        *of_far_places(herald, composed.stage),
        *_of_notes(composed),
    )


def _of_plate(artwork: Artwork, i: int, film: colour.Film, printer: PrinterLimits, kept: Kept) -> Iterator[Finding]:
    plate = artwork.plates[i]
    fineness = kept.once("fineness", (plate.outline, printer), lambda: tuple(of_fineness(plate, printer)))
    yield from (replace(found, plate=plate.name) for found in fineness)
    if artwork.paint_hex:
        ground, under = _ground(artwork, i, film)
        yield from of_colour(plate, ground, under)
    yield from of_whiteness(plate)


def of_fineness(plate: Plate, printer: PrinterLimits) -> Iterator[Finding]:
    """Lines and gaps of a plate that are finer than the printer can do."""
    yield from _narrow(plate, thin_lines, printer.finest_line_mm, "fine line", f"{printer.name} loses lines")
    yield from _narrow(plate, narrow_gaps, printer.finest_gap_mm, "narrow gap", f"{printer.name} fills gaps")


def of_whiteness(plate: Plate) -> Iterator[Finding]:
    """A white that is not opaque, which no home printer lays."""
    if not plate.ink.opaque and colour.difference(plate.ink.colour_hex, "#ffffff") < colour.NOTICEABLE:
        yield Finding(
            "white ink",
            f"{plate.ink.name} is white, which home printers do not lay: leave it out on white film, "
            "or have it printed and say opaque = true",
            plate=plate.name,
        )


def _narrow(
    plate: Plate,
    search: Callable[[Outline, float], tuple[Spot, ...]],
    limit_mm: float,
    kind: str,
    why: str,
) -> Iterator[Finding]:
    """The worst place of its kind, and how many more there are."""
    spots = search(plate.outline, limit_mm)
    if spots:
        worst = spots[0]
        more = f", and {len(spots) - 1} more places" if len(spots) > 1 else ""
        message = f"{worst.width_mm:.3f} mm, {why} under {limit_mm:g} mm{more}"
        yield Finding(kind, message, "warning", worst.place, plate.name, worst.width_mm, limit_mm)


def _ground(artwork: Artwork, i: int, film: colour.Film) -> tuple[str, colour.Film]:
    """What lies under a plate: an opaque plate below most of it, else the paint seen through the film."""
    plate = artwork.plates[i]
    for below in reversed(artwork.plates[:i]):
        if below.ink.opaque and area(intersect(plate.outline, below.outline)) >= COVERED * area(plate.outline):
            return below.ink.colour_hex, "clear"
    return artwork.paint_hex or "#ffffff", film


def of_colour(plate: Plate, ground: str, film: colour.Film) -> Iterator[Finding]:
    """An ink that is lost on its ground, or changed by it."""
    ink = plate.ink
    verdict = colour.judge(ink.colour_hex, ground, film, ink.opaque)
    if not verdict.is_readable:
        yield Finding(
            "lost colour",
            f"{ink.name} comes out as {verdict.seen_hex} on {ground}, a difference of {verdict.from_paint:.0f} "
            f"where {colour.READABLE:g} is wanted: print on white film or over white, or take another ink",
            plate=plate.name,
        )
    elif not verdict.is_true:
        yield Finding(
            "changed colour",
            f"{ink.name} {ink.colour_hex} comes out as {verdict.seen_hex} on {ground}: white film keeps it",
            "note",
            plate=plate.name,
        )


def _of_size(herald: ResolvedHerald, ink: Bounds) -> Iterator[Finding]:
    for side, asked, drawn in (
        ("width", herald.width_mm, ink.width),
        ("height", herald.height_mm, ink.height),
    ):
        if asked is not None and asked - drawn > SIZE_TOLERANCE_MM:
            yield Finding(
                "size",
                f"the finished {side} is {asked:.2f} mm, the ink is {drawn:.2f} mm",
                "note",
                measured_mm=drawn,
                limit_mm=asked,
            )


def _of_small_lettering(shapes: Iterable[ResolvedShape]) -> Iterator[Finding]:
    for shape in shapes:
        cap_height_mm = shape.arguments.get("cap_height")
        if cap_height_mm is not None:
            yield from of_reading(shape.name, cap_height_mm)


def of_reading(name: str, cap_height_mm: float) -> Iterator[Finding]:
    """Lettering that is too small to be read in the hand."""
    if not can_be_read(cap_height_mm, READING_DISTANCE_MM):
        least = letter_height_mm(READING_DISTANCE_MM)
        yield Finding(
            "small lettering",
            f"{name} is {cap_height_mm:.2f} mm high; sharp eyes read {least:.2f} mm at "
            f"{READING_DISTANCE_MM:g} mm: it can be printed for the look, not for reading",
            measured_mm=cap_height_mm,
            limit_mm=least,
        )


def _of_notes(composed: Composed) -> Iterator[Finding]:
    """What shapes say of themselves; what several say, such as the colours of one drawing, is told once."""
    names: dict[str, list[str]] = {}
    for name, drawn in composed.stage.drawn.items():
        for note in drawn.notes:
            names.setdefault(note, []).append(name)
    for note, of in names.items():
        yield Finding("note", f"{', '.join(of)}: {note}", "note")
