"""Artworks written to a folder, and what is said of it."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

import typer

from heraldry.cli.say import as_json, findings_of

if TYPE_CHECKING:
    from heraldry.artwork import Artwork
    from heraldry.press import Manifest


def written(artworks: Iterable[Artwork], out: Path, formats: str, dpi: int) -> Manifest:
    """Write artworks in the formats named, parted by commas."""
    from heraldry.press import write_all  # imported where used: start-up time

    return write_all(artworks, out, [name.strip() for name in formats.split(",")], dpi)


def report(manifest: Manifest, out: Path, json: bool) -> None:
    """Say what was written, and what was found."""
    if json:
        as_json(manifest.as_dict())
        return
    for file in manifest.files:
        typer.echo(f"{out / file.file}  {file.width_mm:.2f} × {file.height_mm:.2f} mm")
    findings_of(manifest.artworks)
