"""A font file becomes a ``Face``: read whole, unpacked where it is woff or woff2, and checked before use.

Whatever is wrong with a file is said here, as a LetteringError with the file's name, so that the rooms behind
this one deal with sound faces only. What a face may be used for is read from its OS/2 table (OpenType
specification, OS/2, fsType).
"""

from __future__ import annotations

import io
import struct
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import Any

from heraldry.errors import LetteringError

FONT_FILE_MAX_BYTES = 96 * 2**20
"""Whole East Asian collections stay below; what is larger is a collection of pictures, or no font."""

UNITS_PER_EM_LIMITS = (16, 16384)
"""OpenType specification, head.unitsPerEm."""

# The first four bytes of a file, and what they promise (OpenType specification, "Font files"; W3C WOFF 1 and
# 2).
_OUTLINE_FONTS = {b"\0\1\0\0", b"OTTO", b"true"}
_PACKED = {b"wOFF", b"wOF2"}
_COLLECTION = b"ttcf"
_KNOWN_STRANGERS = {
    b"%!PS": "a PostScript Type 1 font; take the OpenType (.otf) edition of it",
    b"\x80\x01": "a PostScript Type 1 font; take the OpenType (.otf) edition of it",
    b"%PDF": "a PDF document",
    b"PK\x03\x04": "a zip archive; unpack it and name the font file inside",
    b"<svg": "an SVG drawing",
    b"\x89PNG": "a PNG picture",
}

# OS/2 fsType: bits 1 to 3 say how far a font may be embedded; bit 1 alone: not without the owner's leave.
# Of several bits the least restrictive holds (versions 0 to 2 of the table), hence the comparison of all
# three.
_USAGE_BITS = 0x000E
_RESTRICTED = 0x0002


@dataclass(frozen=True, eq=False)
class Face:
    """One face of a font file: its unpacked bytes, its tables as fontTools reads them, its name."""

    name: str
    data: bytes
    number: int
    tables: Any
    units_per_em: int

    @property
    def is_variable(self) -> bool:
        """Whether it has axes to move along."""
        return "fvar" in self.tables


def read_face(path: FilePath, number: int = 0, licensed: bool = False) -> Face:
    """The face of a font file; ``number`` chooses within a collection, from 0.

    ``licensed`` says that the user holds a licence for a font marked as restricted. Raises LetteringError for
    a file that is missing, too large, no font, broken, without outlines, or restricted.
    """
    data = _unpacked(_bytes_of(path), path)
    face = _opened(data, number, path)
    _check_outlines(face, path)
    if not licensed:
        _check_leave(face, path)
    return face


def _bytes_of(path: FilePath) -> bytes:
    try:
        if path.exists() and not path.is_file():  # a device never ends
            raise LetteringError(f"{path}: the font file cannot be read (it is no file)")
        size = path.stat().st_size
        if size > FONT_FILE_MAX_BYTES:
            raise LetteringError(
                f"{path}: a font file of {size / 2**20:.0f} MB, at most {FONT_FILE_MAX_BYTES / 2**20:.0f} MB are read"
            )
        return path.read_bytes()
    except OSError as error:
        raise LetteringError(f"{path}: the font file cannot be read ({error.strerror})") from error


def _unpacked(data: bytes, path: FilePath) -> bytes:
    """The plain font inside a woff or woff2 file, any other font as it is."""
    kind = data[:4]
    if kind in _OUTLINE_FONTS or kind == _COLLECTION:
        return data
    if kind not in _PACKED:
        raise LetteringError(f"{path}: no font file, it is {_stranger(data)}")
    _check_promised_size(data, path)
    from fontTools.ttLib import TTFont  # imported where used: start-up time

    plain = io.BytesIO()
    try:
        font = TTFont(io.BytesIO(data), recalcBBoxes=False, recalcTimestamp=False)
        font.flavor = None
        font.save(plain, reorderTables=None)
    except Exception as error:  # a broken archive can fail anywhere in its decoder
        raise LetteringError(f"{path}: a broken font file, it cannot be unpacked ({_words(error)})") from error
    return plain.getvalue()


def _check_promised_size(data: bytes, path: FilePath) -> None:
    """Both packed formats state the unpacked size at byte 16; believe it before unpacking, not after."""
    promised = struct.unpack(">I", data[16:20])[0] if len(data) >= 20 else 0
    if promised > FONT_FILE_MAX_BYTES:
        raise LetteringError(
            f"{path}: the font would unpack to {promised / 2**20:.0f} MB, "
            f"at most {FONT_FILE_MAX_BYTES / 2**20:.0f} MB are read"
        )


def _stranger(data: bytes) -> str:
    for start, meaning in _KNOWN_STRANGERS.items():
        if data.startswith(start):
            return meaning
    if not data:
        return "empty"
    beginning = ascii(data[:4].decode("latin-1"))
    return f"something that starts with {beginning}; wanted TTF, OTF, TTC, woff or woff2"


def _opened(data: bytes, number: int, path: FilePath) -> Face:
    from fontTools.ttLib import TTFont  # imported where used: start-up time

    count = _faces_in(data)
    if not 0 <= number < count:
        last = f"it has faces 0 to {count - 1}" if count > 1 else "it has one face, number 0"
        raise LetteringError(f"{path}: no face number {number}, {last}")
    try:
        tables = TTFont(io.BytesIO(data), fontNumber=number, lazy=True)
        units = int(tables["head"].unitsPerEm)
        name = tables["name"].getBestFullName() or path.stem
        if "glyf" in tables:
            # Glyphs are asked for by number: names, which are slow to read, need not be the font's own.
            tables.setGlyphOrder([f"glyph{glyph:05}" for glyph in range(tables["maxp"].numGlyphs)])
        tables["hmtx"]
    except Exception as error:  # a broken table can fail anywhere in its parser
        raise LetteringError(f"{path}: a broken font file ({_words(error)})") from error
    if not UNITS_PER_EM_LIMITS[0] <= units <= UNITS_PER_EM_LIMITS[1]:
        raise LetteringError(f"{path}: a broken font file, it says {units} units per em")
    return Face(name, data, number, tables, units)


def _faces_in(data: bytes) -> int:
    if data[:4] != _COLLECTION:
        return 1
    return int(struct.unpack(">I", data[8:12])[0]) if len(data) >= 12 else 0


def _check_outlines(face: Face, path: FilePath) -> None:
    if not {"glyf", "CFF ", "CFF2"} & set(face.tables.keys()):
        raise LetteringError(f"{path}: the font {face.name} holds pictures only, no outlines to draw")


def _check_leave(face: Face, path: FilePath) -> None:
    os2 = face.tables.get("OS/2")
    if os2 is not None and os2.fsType & _USAGE_BITS == _RESTRICTED:
        raise LetteringError(
            f"{path}: the font {face.name} is marked 'Restricted License' (OS/2 fsType {os2.fsType}): its "
            "owner's leave is wanted before its letters go into artwork. Where you hold it, say "
            "licensed = true; else take another font or one of the alphabets drawn here"
        )


def _words(error: Exception) -> str:
    """What a library said, on one line; a table that it looked for is a key that it did not find."""
    if isinstance(error, KeyError):
        return f"its table {error} is missing"
    return " ".join(str(error).split()) or "it ends too soon"
