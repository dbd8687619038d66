"""The one table of outputs: what can be written, and which writer writes it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from heraldry.artwork import Artwork
from heraldry.errors import PressError, nearest
from heraldry.press.dxf import DxfWriter
from heraldry.press.eps import EpsWriter
from heraldry.press.pdf import PdfWriter
from heraldry.press.png import PngWriter
from heraldry.press.svg import SvgWriter
from heraldry.press.writer import Writer, walk


@dataclass(frozen=True, slots=True)
class Output:
    """One row of the table: how a writer is begun for an artwork (and a resolution, if it is a raster)."""

    begin: Callable[[Artwork, int], Writer]
    summary: str
    is_raster: bool = False


OUTPUTS: Mapping[str, Output] = MappingProxyType(
    {
        "svg": Output(lambda artwork, _: SvgWriter.in_millimetres(artwork), "the master, curves in mm"),
        "pdf": Output(lambda artwork, _: PdfWriter(artwork), "spot plates that overprint, in layers"),
        "eps": Output(lambda artwork, _: EpsWriter(artwork), "spot plates that overprint, exact box"),
        "png": Output(PngWriter, "pixels on a transparent ground", is_raster=True),
        "dxf": Output(lambda artwork, _: DxfWriter(artwork), "outlines for cutters, a layer a plate"),
    }
)


def output_named(name: str) -> Output:
    """The row of a format or a file suffix; raises PressError with the nearest right word.

    >>> output_named(".SVG").summary
    'the master, curves in mm'
    """
    key = name.lower().removeprefix(".")
    if key not in OUTPUTS:
        raise PressError(f"an output '{key}' is unknown, {nearest(key, OUTPUTS)}")
    return OUTPUTS[key]


def made(artwork: Artwork, name: str, dpi: int) -> bytes:
    """The bytes of one output of a sound artwork; raises PressError when it cannot be made."""
    output = output_named(name)
    if output.is_raster and dpi <= 0:
        raise PressError(f"a resolution is a whole number of dots per inch above 0, found {dpi}")
    return walk(artwork, output.begin(artwork, dpi))
