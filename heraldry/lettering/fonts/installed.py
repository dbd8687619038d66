"""The fonts of this computer: which file holds a family and a style.

fontconfig is asked where it is there (``fc-list``), since it knows every folder that the system knows; else
the usual font folders of Linux, macOS and Windows are read through.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path as FilePath

from heraldry.errors import LetteringError, nearest

FONT_SUFFIXES = frozenset({".ttf", ".otf", ".ttc", ".otc", ".woff", ".woff2"})

FC_LIST_SECONDS = 30
"""fontconfig builds its cache on the first call, which takes seconds; more than this means that it hangs."""

# What different makers call the upright face of normal weight, the one meant when no style is named.
_PLAIN_STYLES = ("regular", "book", "roman", "normal", "medium")


@dataclass(frozen=True, order=True)
class InstalledFace:
    """One face of one installed file; ``variable`` files answer for all styles of their family."""

    family: str
    style: str
    path: FilePath
    number: int = 0
    variable: bool = False


def installed_families() -> tuple[str, ...]:
    """The names of all installed families, sorted."""
    return tuple(sorted({face.family for face in _installed()}))


def find_installed(family: str, style: str = "") -> InstalledFace:
    """The face of a family; without a style the plain upright one.

    Raises LetteringError naming the nearest family or the styles there are.
    """
    return choose_face(_installed(), family, style)


def choose_face(faces: Iterable[InstalledFace], family: str, style: str = "") -> InstalledFace:
    """The face among ``faces`` that bears a family and a style, upper and lower case alike."""
    known = tuple(faces)
    if not known:
        raise LetteringError(f"no font family {family!r}: this computer has no fonts, name a font file")
    relatives = [face for face in known if face.family.casefold() == family.casefold()]
    if not relatives:
        raise LetteringError(f"no font family {family!r} is installed, {_some(family, known)}")
    if not style:
        return min(relatives, key=_plainness)
    named = [face for face in relatives if face.style.casefold() == style.casefold()]
    if not named:
        styles = nearest(style, (face.style for face in relatives))
        raise LetteringError(f"the family {relatives[0].family} has no style {style!r}, {styles}")
    return min(named)


def _some(family: str, known: Iterable[InstalledFace]) -> str:
    """The nearest family; a list of hundreds would be no help."""
    names = sorted({face.family for face in known})
    advice = nearest(family, names)
    return advice if advice.startswith("did") or len(names) <= 12 else f"{len(names)} others are"


def _plainness(face: InstalledFace) -> tuple[int, bool, InstalledFace]:
    style = face.style.casefold()
    rank = _PLAIN_STYLES.index(style) if style in _PLAIN_STYLES else len(_PLAIN_STYLES)
    return rank, face.variable, face


@cache
def _installed() -> tuple[InstalledFace, ...]:
    lister = shutil.which("fc-list")
    listed = _from_fontconfig(lister) if lister else ()
    return listed or tuple(sorted(faces_in_folders(font_folders(sys.platform, os.environ))))


def _from_fontconfig(lister: str) -> tuple[InstalledFace, ...]:
    form = "%{family[0]}\\t%{style[0]}\\t%{file}\\t%{index}\\t%{variable}\\n"
    try:
        answer = subprocess.run(
            [lister, "--format", form], capture_output=True, text=True, timeout=FC_LIST_SECONDS, check=True
        )
    except (OSError, subprocess.SubprocessError):
        return ()  # a fontconfig that fails is as good as none: the folders are read instead
    return tuple(sorted(set(parse_fontconfig(answer.stdout))))


def parse_fontconfig(listing: str) -> Iterator[InstalledFace]:
    """Faces out of tab-separated lines: family, style, file, index, variable.

    The upper half of fontconfig's index numbers the named instances of a variable font, which are no faces.
    """
    for line in listing.splitlines():
        family, style, file, index, variable = (line.split("\t") + [""] * 5)[:5]
        path = FilePath(file)
        if family and path.suffix.lower() in FONT_SUFFIXES and int(index or 0) < 0x10000:
            yield InstalledFace(family, style, path, int(index or 0), variable == "True")


def font_folders(platform: str, environment: os._Environ[str] | dict[str, str]) -> tuple[FilePath, ...]:
    """Where a system keeps its fonts, as its makers document it; ``platform`` as in ``sys.platform``."""
    home = FilePath(environment.get("HOME") or environment.get("USERPROFILE") or ".")
    if platform == "darwin":
        return home / "Library/Fonts", FilePath("/Library/Fonts"), FilePath("/System/Library/Fonts")
    if platform == "win32":
        local = FilePath(environment.get("LOCALAPPDATA") or home / "AppData/Local")
        windows = FilePath(environment.get("WINDIR") or "C:/Windows")
        return windows / "Fonts", local / "Microsoft/Windows/Fonts"
    data = FilePath(environment.get("XDG_DATA_HOME") or home / ".local/share")
    return FilePath("/usr/share/fonts"), FilePath("/usr/local/share/fonts"), data / "fonts", home / ".fonts"


def faces_in_folders(folders: Iterable[FilePath]) -> Iterator[InstalledFace]:
    """Every readable face below some folders; files that are no sound font are passed over."""
    for folder in folders:
        for path in sorted(folder.rglob("*")) if folder.is_dir() else ():
            if path.suffix.lower() in FONT_SUFFIXES and path.is_file():
                yield from _faces_of(path)


def _faces_of(path: FilePath) -> Iterator[InstalledFace]:
    from fontTools.ttLib import TTCollection, TTFont  # imported where used: start-up time

    collected = path.suffix.lower() in {".ttc", ".otc"}
    try:
        fonts = TTCollection(path, lazy=True).fonts if collected else [TTFont(path, lazy=True)]
        named = [(font["name"].getBestFamilyName(), font["name"].getBestSubFamilyName(), font) for font in fonts]
    except Exception:  # a folder may hold anything; a broken file is told of when it is named, not here
        return
    for number, (family, style, font) in enumerate(named):
        if family:
            yield InstalledFace(family, style or "Regular", path, number, "fvar" in font)
