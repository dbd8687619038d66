"""From artworks to files on disk: everything is made beside its place first, and only then put in place, whole.

So a fault in the last of twenty artworks leaves the folder as it was, with every good old file in it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from heraldry.artwork import Artwork
from heraldry.errors import PressError
from heraldry.press.file_names import FileStems
from heraldry.press.manifest import MANIFEST_NAME, ArtworkRecord, Manifest, WrittenFile
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
    artworks: Iterable[Artwork], out_dir: str | Path, formats: Iterable[str], dpi: int = DEFAULT_DPI
) -> Manifest:
    """Write every artwork in every format, and the manifest beside them; raises PressError as ``write``.

    Artworks may come one by one, and are not held once they are written.
    """
    names = list(dict.fromkeys(name.lower().removeprefix(".") for name in formats))
    for name in names:
        output_named(name)
    run = _Run(names, dpi)
    put_files(Path(out_dir), run.files(artworks))
    return run.manifest


class _Run:
    """One run of the press: makes files from artworks as they come, and remembers what it has made."""

    def __init__(self, formats: Sequence[str], dpi: int) -> None:
        self.formats, self.dpi = formats, dpi
        self.stems = FileStems()
        self.written: list[WrittenFile] = []
        self.records: list[ArtworkRecord] = []

    def files(self, artworks: Iterable[Artwork]) -> Iterator[tuple[str, bytes]]:
        """Each file with its bytes; the manifest last."""
        for artwork in artworks:
            proof_read(artwork)
            stem = self.stems.next(artwork.name)
            for name in self.formats:
                yield f"{stem}.{name}", made(artwork, name, self.dpi)
                self.written.append(_entry(artwork, f"{stem}.{name}", name, self.dpi))
            self.records.append(ArtworkRecord.of(artwork))
        yield MANIFEST_NAME, self.manifest.to_json().encode()

    @property
    def manifest(self) -> Manifest:
        """What has been written so far."""
        return Manifest(tuple(self.written), tuple(self.records))


def _entry(artwork: Artwork, file: str, name: str, dpi: int) -> WrittenFile:
    if not output_named(name).is_raster:
        return WrittenFile(file, artwork.name, name, artwork.width_mm, artwork.height_mm)
    width, height = (side / dpi * MM_PER_INCH for side in size_px(artwork, dpi))
    return WrittenFile(file, artwork.name, name, width, height, dpi)
