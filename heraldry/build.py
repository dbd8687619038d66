"""The stages in order: a description goes in, finished artworks come out.

describe ─▶ resolve ─▶ shapes ─▶ plates ─▶ guard ─▶ Artwork

A class of cars goes the same way through ``diagrams``, once for what its cars share and then car by car.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from heraldry.artwork import Artwork
from heraldry.describe.description import Description, read
from heraldry.diagrams.class_of_cars import class_of_cars
from heraldry.diagrams.crew import Crew, artworks_by
from heraldry.diagrams.drawing import artworks
from heraldry.diagrams.free_space import Room, largest_room, mask
from heraldry.diagrams.proof import contact_pages, proofs
from heraldry.errors import DescriptionError, Fault
from heraldry.geometry.outline import Bounds
from heraldry.guard.judge import judge
from heraldry.plates.compose import Composed, compose
from heraldry.resolve.herald import resolve_herald
from heraldry.resolve.kept import Kept
from heraldry.resolve.limits import USUAL_PRINTER, PrinterLimits
from heraldry.resolve.printer import printer_of
from heraldry.resolve.resolved import ResolvedHerald
from heraldry.units import Scale, parse_scale


def draw(
    description: Description,
    scale: str | Scale | None = None,
    printer: PrinterLimits = USUAL_PRINTER,
    variants: Sequence[str] = (),
) -> list[Artwork]:
    """Draw everything that a description describes, at its own scale or another; of a herald, some variants or all.

    Raises DescriptionError for a file that cannot be drawn, LengthError for an unknown scale.
    """
    asked = parse_scale(scale) if isinstance(scale, str) else scale
    return list(draw_each(description, asked, printer, variants=variants))


def draw_each(
    description: Description,
    asked: Scale | None = None,
    printer: PrinterLimits = USUAL_PRINTER,
    numbers: Sequence[str] = (),
    crew: Crew | None = None,
    variants: Sequence[str] = (),
) -> Iterator[Artwork]:
    """The same, one thing at a time: of a herald, some variants; of a class, the cars of some numbers, or by a crew."""
    if description.kind == "herald":
        yield from _family(family(description, variants), asked, printer)
    elif description.kind == "diagram":
        yield from _class(description, asked, printer, numbers, crew)
    else:
        raise DescriptionError([_not_drawn(description)])


def family(description: Description, variants: Sequence[str] = ()) -> list[Description]:
    """A herald and all its variants, or those named; ``herald`` names the herald itself.

    Raises HeraldryError for a variant that the file has not.
    """
    if not variants:
        return [description, *description.variants.values()]
    return [description.variant(name) for name in dict.fromkeys(variants)]


def _family(family: Sequence[Description], asked: Scale | None, printer: PrinterLimits) -> Iterator[Artwork]:
    """All that can be drawn; then, raised together, the faults of the others, each place in the file once."""
    kept = Kept()
    faults: list[Fault] = []
    for description in family:
        try:
            yield _herald(description, asked, printer, kept)
        except DescriptionError as error:
            faults += _not_told(error.faults, faults)
    if faults:
        raise DescriptionError(faults)


def _herald(description: Description, asked: Scale | None, printer: PrinterLimits, kept: Kept) -> Artwork:
    herald = resolve_herald(description, asked, kept)
    composed = compose(herald, kept=kept)
    artwork = artwork_of(herald, composed)
    return replace(artwork, findings=judge(artwork, herald, composed, printer, kept))


def _not_told(faults: Iterable[Fault], told: Iterable[Fault]) -> list[Fault]:
    """Those of some faults that stand in other lines than what is told already."""
    lines = {(fault.file, fault.line) for fault in told}
    return [fault for fault in faults if (fault.file, fault.line) not in lines]


def _class(
    description: Description,
    asked: Scale | None,
    printer: PrinterLimits,
    numbers: Sequence[str],
    crew: Crew | None,
) -> Iterator[Artwork]:
    cars = class_of_cars(description, asked)
    return artworks_by(crew, cars, numbers, printer) if crew else artworks(cars, numbers, printer)


def draw_files(
    files: Sequence[Path],
    scales: Sequence[str],
    printer: Path | None,
    numbers: Sequence[str] = (),
    crew: Crew | None = None,
    variants: Sequence[str] = (),
) -> Iterator[Artwork]:
    """Draw several files, each at every scale named (or its own), one after another.

    Raises DescriptionError with the faults of every file that has any, before anything is drawn.
    """
    descriptions = load_all(files)
    for description in descriptions:
        family(description, variants)  # so that a variant that is not there is told before anything is drawn
    limits = printer_of(load(printer)) if printer else USUAL_PRINTER
    asked: list[Scale | None] = [parse_scale(name) for name in scales]
    for description in descriptions:
        for scale in asked or [None]:
            for one in draw_each(description, scale, limits, numbers, crew, variants):
                yield _with_scale_in_name(one, scale)


def proof_files(
    files: Sequence[Path],
    scales: Sequence[str],
    numbers: Sequence[str] = (),
    contact: bool = False,
    dimensions: bool = False,
) -> Iterator[Artwork]:
    """Pictures of the cars of several classes in their paints; ``contact`` pages show many cars on one.

    Raises DescriptionError for a file that is no class of cars, and what its own faults are.
    """
    asked: list[Scale | None] = [parse_scale(name) for name in scales]
    for description in load_all(files):
        for scale in asked or [None]:
            cars = class_of_cars(_diagram(description), scale)
            pictures = contact_pages(cars, numbers) if contact else proofs(cars, numbers, dimensions)
            yield from (_with_scale_in_name(one, scale) for one in pictures)


def free_space(file: Path, side: str, text: str, alphabet: str, clear: str) -> tuple[Room, Artwork]:
    """Where on a side of a class a text can be largest, and all that is free there; ``clear`` is a length.

    Raises DescriptionError for a file that is no class of cars, HeraldryError where no room is left.
    """
    cars = class_of_cars(_diagram(load(file)))
    clear_mm = cars.reader.yardstick.length_mm(clear)
    return largest_room(cars, side, text, alphabet, clear_mm), mask(cars, side, clear_mm)


def _diagram(description: Description) -> Description:
    if description.kind != "diagram":
        what = f"this is about a class of cars, the file is a {description.kind}"
        raise DescriptionError([description.fault(("kind",), what, "", 'name a file with kind = "diagram"')])
    return description


def load(path: str | Path) -> Description:
    """Read and validate a description file, and the road file it names.

    Raises DescriptionError with every fault that can be found without drawing, each with its file and line:
    those of form, and with them those of meaning in what could be read.
    """
    reading = read(path)
    if reading.description is None:
        raise DescriptionError(reading.faults)
    if not reading.faults:
        return reading.description
    faults = [*reading.faults]
    for description in family(reading.description):
        faults += _not_told(_faults_of_meaning(description), faults)
    raise DescriptionError(faults)


def _faults_of_meaning(description: Description) -> tuple[Fault, ...]:
    """What resolving complains of; not of a diagram, where one measure leans on another and a stand-in misleads."""
    resolve: dict[str, Callable[[Description], object]] = {"herald": resolve_herald, "printer": printer_of}
    try:
        if description.kind in resolve:
            resolve[description.kind](description)
    except DescriptionError as error:
        return error.faults
    return ()


def load_all(files: Sequence[Path]) -> list[Description]:
    """Load several files; the faults of all of them are told together."""
    descriptions: list[Description] = []
    faults: list[Fault] = []
    for file in files:
        try:
            descriptions.append(load(file))
        except DescriptionError as error:
            faults.extend(error.faults)
    if faults:
        raise DescriptionError(faults)
    return descriptions


def _with_scale_in_name(artwork: Artwork, asked: Scale | None) -> Artwork:
    """One thing drawn at several scales needs several names."""
    return replace(artwork, name=f"{artwork.name} {asked.name}") if asked else artwork


def _not_drawn(description: Description) -> Fault:
    return description.fault(
        ("kind",),
        f"a {description.kind} is referred to, not drawn",
        "",
        f'draw a herald that names it: {description.kind} = "…"',
    )


def artwork_of(herald: ResolvedHerald, composed: Composed) -> Artwork:
    """A composed herald on its page, not judged yet."""
    return Artwork(
        name=herald.name,
        page=_page_of(herald, composed),
        plates=composed.plates,
        scale_name=herald.scale.name if herald.scale else "",
        paint_hex=herald.paint_hex,
        variant=herald.variant,
    )


def _page_of(herald: ResolvedHerald, composed: Composed) -> Bounds:
    """The page: of the finished size that was asked for, about the middle of the ink; else just the ink's box."""
    ink = composed.box
    width = ink.width if herald.width_mm is None else herald.width_mm
    height = ink.height if herald.height_mm is None else herald.height_mm
    middle = ink.centre
    return Bounds(middle.x - width / 2, middle.y - height / 2, middle.x + width / 2, middle.y + height / 2)
