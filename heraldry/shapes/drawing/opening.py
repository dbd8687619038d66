"""The door to drawing files: what a file is, told by its content, and who reads it.

SVG (plain or compressed) and DXF hold outlines. Pictures made of dots are refused with what to do instead, whatever
their name says.
"""

from __future__ import annotations

import zlib
from functools import lru_cache
from pathlib import Path

from heraldry.errors import GeometryError
from heraldry.shapes.drawing.picture import Picture

LARGEST_BYTES = 16 * 2**20
"""A herald has some kilobytes; a larger file holds pictures, or a map."""

_DOTS = (
    (b"\x89PNG", "PNG"),
    (b"\xff\xd8\xff", "JPEG"),
    (b"GIF8", "GIF"),
    (b"BM", "BMP"),
    (b"II*\x00", "TIFF"),
    (b"MM\x00*", "TIFF"),
    (b"\x00\x00\x01\x00", "ICO"),
)
"""How the formats of pictures made of dots begin."""

_OTHERS = ((b"%PDF", "PDF"), (b"%!PS", "PostScript"), (b"PK\x03\x04", "ZIP"))
"""Formats that may hold outlines among much else, and are not read."""

_TRACE = (
    "a picture is made of dots and has no outlines: draw it anew with shapes, "
    "or trace it in a drawing program for vectors and save that as SVG"
)
_BINARY_DXF = b" Binary DXF\r\n\x1a\x00"  # how the first line of the binary form ends, after the name of a program
_SENTINEL = 22
"""Bytes of that line (DXF reference, "Binary DXF Files")."""
_GZIP = b"\x1f\x8b"
_HEAD = 1024
"""Bytes that tell what a text is."""


def read_drawing(path: Path, part: str | None = None) -> Picture:
    """The picture in a file, or the named part of it; raises GeometryError that says why not."""
    return _read(_content(path), path.name, part)


@lru_cache(maxsize=8)
def _read(content: bytes, file: str, part: str | None) -> Picture:
    """Kept for the next colour of the same drawing."""
    _refuse_others(content, file)
    if content[:_SENTINEL].endswith(_BINARY_DXF) or _looks_like_dxf(content):
        from heraldry.shapes.drawing.dxf import read_dxf  # imported where used: start-up time

        return read_dxf(content, file, part)
    from heraldry.shapes.drawing.svg.walk import read_svg

    return read_svg(content, file, part)


def _content(path: Path) -> bytes:
    try:
        if not path.is_file():  # a device never ends
            raise GeometryError(f"{path.name} is no file that can be read")
        size = path.stat().st_size
        if size > LARGEST_BYTES:
            raise GeometryError(f"{path.name} has {size / 2**20:,.0f} MB, a drawing may have {LARGEST_BYTES >> 20} MB")
        content = path.read_bytes()
    except OSError as error:
        raise GeometryError(f"{path.name} cannot be read: {error.strerror}") from None
    if content.startswith(_GZIP):
        content = _unpacked(content, path.name)
    if not content.strip():
        raise GeometryError(f"{path.name} is empty")
    return content


def _unpacked(content: bytes, file: str) -> bytes:
    """What a compressed file holds, as long as that is of a sound size."""
    unpacking = zlib.decompressobj(wbits=31)
    try:
        found = unpacking.decompress(content, LARGEST_BYTES)
    except zlib.error as error:
        raise GeometryError(f"{file} is compressed and broken: {error}") from None
    if unpacking.unconsumed_tail or not unpacking.eof:
        raise GeometryError(f"{file} is compressed and broken, or holds more than {LARGEST_BYTES >> 20} MB")
    return found


def _refuse_others(content: bytes, file: str) -> None:
    for start, name in _DOTS:
        if content.startswith(start):
            raise GeometryError(f"{file} is a {name} picture; {_TRACE}")
    if content[:4] == b"RIFF" and content[8:12] == b"WEBP":
        raise GeometryError(f"{file} is a WebP picture; {_TRACE}")
    for start, name in _OTHERS:
        if content.startswith(start):
            raise GeometryError(f"{file} is a {name} file; open it in a drawing program for vectors and save it as SVG")


def _looks_like_dxf(content: bytes) -> bool:
    """Whether a text begins with the group code 0 and a SECTION, after comments (group code 999)."""
    lines = content[:_HEAD].decode("latin-1").split("\n")
    words = [line.strip() for line in lines]
    while words[:1] == ["999"]:
        words = words[2:]
    return words[:2] == ["0", "SECTION"]
