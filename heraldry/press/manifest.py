"""The manifest: what was written, how large it is, what it is made of, and what was found wrong with it.

``manifest.json`` lies beside the files and names them relative to itself. ``files`` has one entry a file,
``artworks`` one a thing drawn, in the order in which they were drawn. Millimetres; areas in mm².
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from heraldry.artwork import Artwork, Finding, Plate
from heraldry.geometry.measure import area
from heraldry.press.number_format import MANIFEST_DECIMALS, rounded

MANIFEST_NAME = "manifest.json"


@dataclass(frozen=True, slots=True)
class WrittenFile:
    """One file: its name beside the manifest, and the size it really has (a PNG has whole pixels)."""

    file: str
    artwork: str
    format: str
    width_mm: float
    height_mm: float
    dpi: int | None = None

    def as_dict(self) -> dict[str, Any]:
        """The entry for JSON; ``dpi`` only where there are dots."""
        entry: dict[str, Any] = {
            "file": self.file,
            "artwork": self.artwork,
            "format": self.format,
            "width_mm": _mm(self.width_mm),
            "height_mm": _mm(self.height_mm),
        }
        return entry if self.dpi is None else entry | {"dpi": self.dpi}


@dataclass(frozen=True, slots=True)
class ArtworkRecord:
    """What is kept of an artwork once it is written: not its outlines, of which a class of cars has thousands."""

    name: str
    findings: tuple[Finding, ...]
    entry: Mapping[str, Any]

    @staticmethod
    def of(artwork: Artwork) -> ArtworkRecord:
        """The record of an artwork."""
        return ArtworkRecord(artwork.name, artwork.findings, artwork_entry(artwork))


@dataclass(frozen=True, slots=True)
class Manifest:
    """Everything that one run has written."""

    files: tuple[WrittenFile, ...]
    artworks: tuple[ArtworkRecord, ...]

    def as_dict(self) -> dict[str, Any]:
        """The manifest as plain values for JSON."""
        return {
            "files": [file.as_dict() for file in self.files],
            "artworks": [dict(artwork.entry) for artwork in self.artworks],
        }

    def to_json(self) -> str:
        """The text of ``manifest.json``."""
        return json.dumps(self.as_dict(), ensure_ascii=False, indent=2) + "\n"


def artwork_entry(artwork: Artwork) -> dict[str, Any]:
    """What the manifest says of an artwork."""
    return {
        "name": artwork.name,
        **({"variant": artwork.variant} if artwork.variant else {}),
        "scale": artwork.scale_name,
        "width_mm": _mm(artwork.width_mm),
        "height_mm": _mm(artwork.height_mm),
        "paint": artwork.paint_hex,
        "plates": [_plate_entry(plate) for plate in artwork.plates],
        "findings": [finding_entry(finding) for finding in artwork.findings],
    }


def _plate_entry(plate: Plate) -> dict[str, Any]:
    return {
        "name": plate.name,
        "ink": plate.ink.name,
        "colour": plate.ink.colour_hex,
        "opaque": plate.ink.opaque,
        "spot": plate.ink.spot,
        "nodes": plate.outline.node_count,
        "area_mm2": _mm(area(plate.outline)),
    }


def finding_entry(finding: Finding) -> dict[str, Any]:
    """What the manifest says of a finding; what is not known is left out."""
    entry: Mapping[str, Any] = {
        "kind": finding.kind,
        "severity": finding.severity,
        "message": finding.message,
        "plate": finding.plate,
        "place_mm": None if finding.place is None else [_mm(value) for value in finding.place],
        "measured_mm": None if finding.measured_mm is None else _mm(finding.measured_mm),
        "limit_mm": None if finding.limit_mm is None else _mm(finding.limit_mm),
    }
    return {key: value for key, value in entry.items() if value is not None}


def _mm(value: float) -> float:
    return rounded(value, MANIFEST_DECIMALS)
