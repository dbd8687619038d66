"""A writer that only remembers: the strokes of an artwork, without a file format in between."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from heraldry.artwork import Artwork, Plate
from heraldry.geometry.affine import Affine
from heraldry.press.writer import Ring, frame_y_up, walk


@dataclass(frozen=True, slots=True)
class PlateRecord:
    """The strokes of one plate, in millimetres from the page's lower left corner."""

    plate: str
    ink: str
    rings: tuple[Ring, ...]

    @property
    def verbs(self) -> tuple[tuple[str, ...], ...]:
        """The kinds of the strokes, ring by ring: ``line``, ``arc``, ``cubic``."""
        return tuple(tuple(type(segment).__name__.lower() for segment in ring) for ring in self.rings)


class Recorder:
    """A writer whose file is its own record, printed."""

    def __init__(self, frame: Affine, keeps_arcs: bool = True) -> None:
        self.frame = frame
        self.keeps_arcs = keeps_arcs
        self.plates: list[PlateRecord] = []

    def plate(self, plate: Plate, rings: Iterator[Ring]) -> None:
        """Remember one plate."""
        self.plates.append(PlateRecord(plate.name, plate.ink.name, tuple(rings)))

    def finish(self) -> bytes:
        """The record as text, one stroke a line."""
        strokes = (repr(segment) for plate in self.plates for ring in plate.rings for segment in ring)
        return "\n".join(strokes).encode()


def record(artwork: Artwork, keeps_arcs: bool = True) -> tuple[PlateRecord, ...]:
    """What a writer is told of an artwork."""
    recorder = Recorder(frame_y_up(artwork.page), keeps_arcs)
    walk(artwork, recorder)
    return tuple(recorder.plates)
