"""How the command speaks: results to standard output, faults and findings to standard error, colour only for people."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Annotated, Any

import typer

from heraldry.errors import HeraldryError

if TYPE_CHECKING:
    from heraldry.artwork import Artwork, Finding
    from heraldry.press.manifest import ArtworkRecord

AsJson = Annotated[bool, typer.Option("--json", help="Print the result as JSON.")]

FOUND_SOMETHING = 1
FILE_IS_WRONG = 2


@contextmanager
def faults_told() -> Iterator[None]:
    """Say what is wrong with the input, a line a fault, and leave with exit code 2."""
    try:
        yield
    except HeraldryError as error:
        for line in str(error).splitlines():
            typer.secho(line, fg="red", err=True)
        raise typer.Exit(FILE_IS_WRONG) from None


def as_json(value: Any) -> None:
    """One JSON document on standard output."""
    typer.echo(json.dumps(value, ensure_ascii=False, indent=2))


def findings_of(artworks: Iterable[Artwork | ArtworkRecord]) -> None:
    """A line for each finding; what is found on many artworks alike, as on all cars of a class, is said once."""
    colours = {"fault": "red", "warning": "yellow", "note": "cyan"}
    found_on: dict[Finding, list[str]] = {}
    for artwork in artworks:
        for found in artwork.findings:
            found_on.setdefault(found, []).append(artwork.name)
    for found, names in found_on.items():
        where = f" at ({found.place.x:.2f}, {found.place.y:.2f}) mm" if found.place else ""
        plate = f" on plate {found.plate}" if found.plate else ""
        which = names[0] if len(names) == 1 else f"{names[0]} and {len(names) - 1} more"
        typer.secho(f"{which}: {found.kind}{plate}{where}: {found.message}", fg=colours[found.severity], err=True)


def looks_a_person() -> bool:
    """Whether a person watches the messages."""
    return sys.stderr.isatty()
