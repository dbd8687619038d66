"""``draw``, ``proof``, ``check`` and ``demo``: from description files to artwork."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from heraldry.cli.options import (
    ALL_FORMATS,
    PRINT_DPI,
    PROOF_DPI,
    USUAL_FORMATS,
    USUAL_OUT,
    Cars,
    Dpi,
    Files,
    Formats,
    Jobs,
    Out,
    PrinterFile,
    Scales,
    Variants,
)
from heraldry.cli.progress import watched
from heraldry.cli.say import FOUND_SOMETHING, AsJson, as_json, faults_told, findings_of
from heraldry.cli.starting import template_diagrams, template_heralds
from heraldry.cli.writing import report, written
from heraldry.errors import HeraldryError

if TYPE_CHECKING:
    from heraldry.artwork import Artwork
    from heraldry.diagrams.crew import Crew
    from heraldry.press import Manifest

DEMO_SCALES = ("N", "HO", "O")


def draw(
    files: Files,
    out: Out = USUAL_OUT,
    scale: Scales = None,
    formats: Formats = USUAL_FORMATS,
    printer: PrinterFile = None,
    dpi: Dpi = PRINT_DPI,
    cars: Cars = None,
    variant: Variants = None,
    jobs: Jobs = 1,
    json: AsJson = False,
) -> None:
    """Draw heralds and classes of cars into files of exact size, with a manifest of what was written."""
    with faults_told(), crew_of(jobs) as crew:
        manifest = written(_drawn(files, scale, printer, cars, crew, variant), out, formats, dpi)
        report(manifest, out, json)


def proof(
    files: Files,
    out: Out = USUAL_OUT,
    scale: Scales = None,
    formats: Formats = USUAL_FORMATS,
    dpi: Dpi = PROOF_DPI,
    cars: Cars = None,
    contact: Annotated[bool, typer.Option("--contact", help="Many cars on a page, reduced.")] = False,
    dimensions: Annotated[bool, typer.Option("--dimensions", help="With panels, sizes and places.")] = False,
    json: AsJson = False,
) -> None:
    """Picture the cars of a class in their paints, to scale, before a sheet is printed."""
    with faults_told():
        from heraldry.build import proof_files  # imported where used: start-up time

        pictures = proof_files(files, scale or [], _numbers(cars), contact, dimensions)
        report(written(watched(pictures, "proofing", None), out, formats, dpi), out, json)


def check(
    files: Files,
    scale: Scales = None,
    printer: PrinterFile = None,
    cars: Cars = None,
    variant: Variants = None,
    jobs: Jobs = 1,
    json: AsJson = False,
) -> None:
    """Say what will not print, and write nothing: exit 0 nothing or only notes, 1 findings, 2 the file is wrong."""
    artworks: list[Artwork] = []
    with faults_told(), crew_of(jobs) as crew:
        try:
            artworks.extend(_drawn(files, scale, printer, cars, crew, variant))
        except HeraldryError:
            if artworks:  # what is wrong with one car does not keep the others from being looked at
                _checked(artworks, json)
            raise
        _checked(artworks, json)
    if any(found.severity != "note" for artwork in artworks for found in artwork.findings):
        raise typer.Exit(FOUND_SOMETHING)


def _checked(artworks: list[Artwork], json: bool) -> None:
    if json:
        from heraldry.press import artwork_entry  # imported where used: start-up time

        as_json({"artworks": [artwork_entry(artwork) for artwork in artworks]})
    else:
        findings_of(artworks)


def demo(out: Out = USUAL_OUT, dpi: Dpi = PRINT_DPI, json: AsJson = False) -> None:
    """Draw every herald of the invented railroads that come with the program, and picture every class of cars."""
    jobs: list[tuple[Path, str | None]] = [(path, scale) for path in template_heralds() for scale in DEMO_SCALES]
    jobs += [(path, None) for path in template_diagrams()]
    manifests = []
    with faults_told():
        for path, scale in watched(jobs, "drawing", len(jobs)):
            folder = out / path.parent.name / path.stem / (scale or "")
            manifests.append(_demo_herald(path, scale, folder, dpi) if scale else _demo_class(path, folder, dpi))
            if not json:
                report(manifests[-1], folder, json)
    if json:
        as_json([manifest.as_dict() for manifest in manifests])


def _demo_herald(path: Path, scale: str, folder: Path, dpi: int) -> Manifest:
    return written(_drawn([path], [scale], None), folder, ALL_FORMATS, dpi)


def _demo_class(path: Path, folder: Path, dpi: int) -> Manifest:
    """All cars of a class as artwork, and contact pages of them at a lower resolution."""
    from heraldry.build import proof_files  # imported where used: start-up time

    written(proof_files([path], [], contact=True), folder / "contact", USUAL_FORMATS, min(dpi, PROOF_DPI))
    return written(_drawn([path], None, None), folder, "svg,pdf", dpi)


def _drawn(
    files: list[Path],
    scales: list[str] | None,
    printer: Path | None,
    cars: str | None = None,
    crew: Crew | None = None,
    variants: list[str] | None = None,
) -> Iterator[Artwork]:
    from heraldry.build import draw_files  # imported where used: start-up time

    return watched(draw_files(files, scales or [], printer, _numbers(cars), crew, variants or ()), "drawing", None)


def _numbers(cars: str | None) -> list[str]:
    return [number.strip() for number in cars.split(",")] if cars else []


@contextmanager
def crew_of(jobs: int) -> Iterator[Crew | None]:
    """So many processes, or none where one job is asked for."""
    if jobs == 1:
        yield None
        return
    from concurrent.futures import ProcessPoolExecutor  # imported where used: start-up time

    from heraldry.diagrams.crew import Crew

    with ProcessPoolExecutor(jobs) as executor:
        yield Crew(executor, jobs)
