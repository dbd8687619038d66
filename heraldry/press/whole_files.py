"""Files that appear whole or not at all, several at once: either every one is new, or every one is as it was.

The bytes are first written to a hidden folder beside their place, on the same disk, and flushed. Only when
all of them are safe are they renamed into place; if a rename fails half-way, those already made are undone.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path
from tempfile import TemporaryDirectory

from heraldry.errors import PressError


def put_files(folder: Path, files: Mapping[str, bytes] | Iterable[tuple[str, bytes]]) -> None:
    """Write files into a folder, which is made if need be; raises PressError with the path and the reason.

    Files may come one by one, and are no longer held once they are safe; what making them raises is passed on.
    """
    pairs = files.items() if isinstance(files, Mapping) else files
    with _folder_made(folder):
        with _said_of(folder):
            desk = TemporaryDirectory(dir=folder, prefix=".heraldry-")
        with desk:
            new, old = Path(desk.name, "new"), Path(desk.name, "old")
            new.mkdir()
            old.mkdir()
            names = []
            for name, content in pairs:
                with _said_of(folder / name):
                    _stage(new / name, content)
                    _keep(folder / name, old / name)
                names.append(name)
            _exchange(folder, new, old, names)


@contextmanager
def _folder_made(folder: Path) -> Iterator[None]:
    """Make a folder and those above it; when nothing comes of it, leave none of them behind."""
    missing = [path for path in (folder, *folder.parents) if not path.exists()]
    with _said_of(folder):
        folder.mkdir(parents=True, exist_ok=True)
    try:
        yield
    except BaseException:
        for path in missing:
            with suppress(OSError):  # somebody else has put something in it
                path.rmdir()
        raise


@contextmanager
def _said_of(path: Path) -> Iterator[None]:
    """Turn what the system says of a path into a PressError."""
    try:
        yield
    except OSError as error:
        raise PressError(f"{path}: cannot be written: {error.strerror or error}") from error


def _stage(path: Path, content: bytes) -> None:
    with path.open("xb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


def _keep(place: Path, copy: Path) -> None:
    """Keep a good old file: a second link to it, or a copy where the disk knows no links."""
    if place.is_dir():
        raise IsADirectoryError(0, "a folder of that name is in the way")
    if not place.exists():
        return
    try:
        os.link(place, copy)
    except OSError:
        shutil.copy2(place, copy)


def _exchange(folder: Path, new: Path, old: Path, names: Sequence[str]) -> None:
    """Rename all new files into place, or undo the renames that were made."""
    placed: list[str] = []
    try:
        for name in names:
            with _said_of(folder / name):
                (new / name).replace(folder / name)
            placed.append(name)
    except BaseException:
        for name in placed:
            _restore(folder / name, old / name)
        raise


def _restore(place: Path, copy: Path) -> None:
    if copy.exists():
        copy.replace(place)
    else:
        place.unlink(missing_ok=True)
