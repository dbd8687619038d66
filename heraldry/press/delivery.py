"""From artworks to files on disk: everything is made in memory first, and only then put in place, whole.

So a fault in the last of twenty artworks leaves the folder as it was, with every good old file in it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from heraldry.artwork import Artwork
from heraldry.errors import PressError
from heraldry.press.file_names import file_stems
from heraldry.press.manifest import MANIFEST_NAME, Manifest, WrittenFile
from heraldry.press.outputs import OUTPUTS, made, output_named
from heraldry.press.png import DEFAULT_DPI, size_px
from heraldry.press.proof_reading import proof_read
from heraldry.press.whole_files import put_files
from heraldry.press.writer import MM_PER_INCH


def render(artwork: Artwork, name: str, dpi: int = DEFAULT_DPI) -> bytes:
    """The bytes of one output (``svg``, ``pdf``, ``eps``, ``png``, ``dxf``); ``dpi`` is for rasters.

    The artwork is proof-read first: nothing is made of a plate that is empty, broken or off its page. Raises
    PressError with what is wrong.
    """
    proof_read(artwork)
    return made(artwork, name, dpi)


def write(artwork: Artwork, path: str | Path, dpi: int = DEFAULT_DPI) -> Path:
    """Write one file; its suffix says which output (``.svg``, ``.pdf``, ``.eps``, ``.png``, ``.dxf``).

    ``dpi`` is the resolution of a raster in dots per inch. Raises PressError when the suffix is unknown, the
    artwork is not sound, or the file cannot be written; an older file is lost in none of these cases.
    """
    path = Path(path)
    if not path.suffix:
        raise PressError(f"{path}: a suffix says what to write: {', '.join('.' + name for name in OUTPUTS)}")
    put_files(path.parent, {path.name: render(artwork, path.suffix, dpi)})
    return path


def write_all(
    artworks: Sequence[Artwork], out_dir: str | Path, formats: Iterable[str], dpi: int = DEFAULT_DPI
) -> Manifest:
    """Write every artwork in every format, and the manifest beside them; raises PressError as ``write``."""
    names = list(dict.fromkeys(name.lower().removeprefix(".") for name in formats))
    files: dict[str, bytes] = {}
    entries: list[WrittenFile] = []
    for artwork, stem in zip(artworks, file_stems(artwork.name for artwork in artworks), strict=True):
        proof_read(artwork)
        for name in names:
            files[f"{stem}.{name}"] = made(artwork, name, dpi)
            entries.append(_entry(artwork, f"{stem}.{name}", name, dpi))
    manifest = Manifest(tuple(entries), tuple(artworks))
    files[MANIFEST_NAME] = manifest.to_json().encode()
    put_files(Path(out_dir), files)
    return manifest


def _entry(artwork: Artwork, file: str, name: str, dpi: int) -> WrittenFile:
    if not output_named(name).is_raster:
        return WrittenFile(file, artwork.name, name, artwork.width_mm, artwork.height_mm)
    width, height = (side / dpi * MM_PER_INCH for side in size_px(artwork, dpi))
    return WrittenFile(file, artwork.name, name, width, height, dpi)
